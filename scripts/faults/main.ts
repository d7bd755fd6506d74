import { execFileSync } from "node:child_process"
import { existsSync, mkdirSync, writeFileSync } from "node:fs"
import { join, relative, resolve } from "node:path"
import { bundle } from "./bundle.js"
import { equivalentsIn, stale } from "./equivalents.js"
import type { Fault } from "./fault.js"
import { sample } from "./interval.js"
import { help, type Options, optionsOf } from "./options.js"
import { plant, watchesIn } from "./plant.js"
import { Runner } from "./pool.js"
import { filesOf, projectOf, testsOf } from "./program.js"
import { data, type ModuleReport, shortfalls, text } from "./report.js"
import { rules } from "./rules.js"
import { attempt, type Outcome, Reach } from "./trial.js"

/** Runs the command; gives the exit code. */
export async function main(
  args: readonly string[],
  home: string,
  cache: string,
  say: (line: string) => void = console.log,
): Promise<number> {
  const options = optionsOf(args)
  const root = resolve(home, options.root ?? "")
  const chosen = options.changed === null ? options.modules : changedSince(options.changed, root)
  if (options.help || (chosen.length === 0 && options.changed === null)) {
    say(help)
    return options.help ? 0 : 1
  }
  if (chosen.length === 0) say(`no source differs from ${options.changed}`)
  const groups = new Map<string, string[]>()
  for (const name of chosen) {
    const module = name.replace(/^src\//, "").split("/")[0] as string
    const files = filesOf(join(root, "src", name.replace(/^src\//, "")))
    if (!existsSync(join(root, "src", module)) || files.length === 0) throw new Error(`no sources in src/${name.replace(/^src\//, "")}`)
    groups.set(module, [...(groups.get(module) ?? []), ...files])
  }
  const reports: ModuleReport[] = []
  for (const [module, files] of groups) {
    const report = await runModule(module, files, root, cache, options, say)
    if (!report) continue
    reports.push(report)
    say(`\n${text(report)}\n`)
  }
  if (options.json) writeFileSync(options.json, `${JSON.stringify(data(reports, options.seed), null, 2)}\n`)
  const short = options.atLeast === null ? [] : shortfalls(reports, options.atLeast)
  for (const line of short) say(line)
  return short.length ? 1 : 0
}

/** Sources that differ from a revision, uncommitted ones too. */
function changedSince(revision: string, root: string): string[] {
  const git = (...args: string[]) => execFileSync("git", args, { cwd: root, encoding: "utf8" }).split("\n")
  const base = git("merge-base", revision, "HEAD")[0] as string
  return [
    ...git("diff", "--name-only", "--diff-filter=d", base, "--", "src"),
    ...git("ls-files", "--others", "--exclude-standard", "src"),
  ].filter((name) => name.endsWith(".ts") && name.split("/").length > 2)
}

async function runModule(
  module: string,
  files: readonly string[],
  root: string,
  cache: string,
  options: Options,
  say: (line: string) => void,
): Promise<ModuleReport | null> {
  const began = performance.now()
  const project = projectOf(root, files)
  const faults = plant(project.program, files, root, rules)
  if (options.list) {
    for (const { id, file, line, kind, before, after } of faults) say(`${id} ${file}:${line} ${kind}: ${before}  ->  ${after}`)
    return null
  }
  const tests = testsOf(root, module)
  const watches = watchesIn(project.program, files, root, faults.length + 1)
  const built = await bundle(project, module, tests, { faults, watches })
  const folder = join(cache, module)
  mkdirSync(folder, { recursive: true })
  const place = (name: string, contents: string) => {
    writeFileSync(join(folder, name), contents)
    return join(folder, name)
  }
  const start = {
    stable: place("stable.mjs", built.stable),
    switches: place("switches.js", built.switches),
    marks: place("marks.js", built.marks),
    packages: built.packages,
    faults: faults.length,
    marksInAll: faults.length + watches.length,
    // suites that walk every solver are asked for this module's only
    filtered: tests
      .filter((path) => path.startsWith(join(root, "tests/laws")))
      .map((path) => ({ file: relative(root, path), name: `\\b${module}\\b` })),
  }
  const runners = Array.from({ length: options.jobs }, () => new Runner(join(cache, "worker.mjs"), start))
  const [first] = runners as [Runner]
  try {
    const ending = await first.run({ record: tests.map((path) => relative(root, path)) }, () => 600_000)
    if ("lost" in ending || !("recorded" in ending.report))
      throw new Error(`${module}: the tests could not be run: ${"why" in ending ? ending.why : ""}`)
    const { atLoad, loadTime } = ending.report
    const outside = ending.report.recorded.filter((test) => test.isOutside)
    const red = ending.report.recorded.filter((test) => test.failure !== null && !test.isOutside)
    const recorded = ending.report.recorded.filter((test) => test.failure === null)
    if (red.length && !options.asideRed)
      throw new Error(
        `${module}: ${red.length} tests fail without any fault:\n${red.map((t) => `  ${t.file}: ${t.name}\n    ${t.failure}`).join("\n")}`,
      )
    const all = recorded.reduce((sum, test) => sum + test.time, 0)
    const setUp = (performance.now() - began) / 1000
    say(
      `${module}: ${faults.length} faults, ${recorded.length} tests (${(all / 1000).toFixed(1)} s, loading ${Math.round(loadTime)} ms); ready after ${setUp.toFixed(0)} s`,
    )
    const { drawn, every } = draw(faults, options)
    const wanted = [...new Set([...drawn, ...every])]
    const outcomes = await tryAll(wanted, new Reach(recorded, atLoad), runners, options, say)
    const of = (list: readonly Fault[]) => list.map((fault) => outcomes.get(fault.n) as Outcome)
    const argued = equivalentsIn(join(root, "tests/faults"))
    const names = files.map((path) => relative(root, path))
    return {
      module,
      possible: faults.length,
      sampled: of(drawn),
      all: of(every),
      argued,
      stale: stale(argued, faults, names),
      red: red.map((test) => `${test.file}: ${test.name}`),
      outside: outside.map((test) => `${test.file}: ${test.name}`),
      seconds: (performance.now() - began) / 1000,
    }
  } finally {
    for (const runner of runners) runner.close()
  }
}

/** The faults asked for: drawn at random, and every one of some kinds. */
function draw(faults: readonly Fault[], { ids, kinds, sample: count, seed, all }: Options): { drawn: Fault[]; every: Fault[] } {
  if (ids.length) return { drawn: faults.filter((fault) => ids.includes(fault.id)), every: [] }
  const from = kinds.length ? faults.filter((fault) => kinds.includes(fault.kind)) : faults
  return { drawn: sample(from, count, seed), every: faults.filter((fault) => all.includes(fault.kind)) }
}

async function tryAll(
  faults: readonly Fault[],
  reach: Reach,
  runners: readonly Runner[],
  { limit, ids }: Options,
  say: (line: string) => void,
): Promise<Map<number, Outcome>> {
  const outcomes = new Map<number, Outcome>()
  // one file after another, so that what is learnt of its tests is used
  const queue = [...faults].sort((a, b) => a.n - b.n)
  await Promise.all(
    runners.map(async (runner) => {
      for (let fault = queue.shift(); fault; fault = queue.shift()) {
        const outcome = await attempt(fault, reach, runner, 1000 * limit)
        outcomes.set(fault.n, outcome)
        if (outcomes.size % 50 === 0) say(`${outcomes.size} of ${faults.length} tried`)
        if (ids.length)
          say(`${fault.id} ${fault.file}:${fault.line} ${outcome.end}${outcome.by ? ` by ${outcome.by}\n         ${outcome.failure}` : ""}`)
      }
    }),
  )
  return outcomes
}
