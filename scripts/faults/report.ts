import { type Equivalent, MOST } from "./equivalents.js"
import { type FaultKind, kinds, mustDie } from "./fault.js"
import { interval } from "./interval.js"
import type { Outcome } from "./trial.js"

/** How a set of faults fared. */
export interface Tally {
  readonly tried: number
  readonly killed: number
  /** Survivors argued to be equivalent, as far as they count. */
  readonly equivalent: number
  /** Survivors argued to be equivalent beyond what counts. */
  readonly beyond: number
  readonly share: number
  readonly interval: readonly [number, number]
}

const isKilled = ({ end }: Outcome) => end === "killed" || end === "hung" || end === "crashed"

/** Counts; argued equivalents leave the base, up to their limit. */
export function tally(outcomes: readonly Outcome[], argued: readonly Equivalent[], most = MOST): Tally {
  const keys = new Set(argued.map((one) => one.fault))
  const tried = outcomes.length
  const killed = outcomes.filter(isKilled).length
  const claimed = outcomes.filter((one) => !isKilled(one) && keys.has(one.fault.key)).length
  const equivalent = Math.min(claimed, Math.floor(most * tried))
  const base = tried - equivalent
  return { tried, killed, equivalent, beyond: claimed - equivalent, share: base ? killed / base : 1, interval: interval(killed, base) }
}

export interface ModuleReport {
  readonly module: string
  /** Faults that could be planted. */
  readonly possible: number
  readonly sampled: readonly Outcome[]
  /** Every fault of the kinds asked for with `--all`. */
  readonly all: readonly Outcome[]
  readonly argued: readonly Equivalent[]
  readonly stale: readonly string[]
  /** Tests set aside because they fail without any fault. */
  readonly red: readonly string[]
  /** Tests left out because they start other programs. */
  readonly outside: readonly string[]
  readonly seconds: number
}

const percent = (x: number) => `${(100 * x).toFixed(1)} %`

/** The report of one module in words. */
export function text(report: ModuleReport): string {
  const { module, possible, sampled, all, argued } = report
  const lines: string[] = []
  const whole = tally(sampled, argued)
  if (sampled.length) {
    lines.push(
      `${module}: ${percent(whole.share)} noticed (95 % interval ${percent(whole.interval[0])} to ${percent(whole.interval[1])}); ` +
        `${whole.killed} of ${whole.tried} drawn from ${possible} faults` +
        `${whole.equivalent ? `, ${whole.equivalent} argued equivalent` : ""}; ${Math.round(report.seconds)} s`,
    )
    if (whole.beyond)
      lines.push(
        `  ${whole.equivalent + whole.beyond} survivors are argued equivalent: more than 5 %, so ${whole.beyond} of them count as survivors`,
      )
    lines.push(`  ${"kind".padEnd(12)} tried noticed hung`)
    for (const kind of Object.keys(kinds) as FaultKind[]) {
      const of = sampled.filter((one) => one.fault.kind === kind)
      if (!of.length) continue
      const hung = of.filter(({ end }) => end === "hung" || end === "crashed").length
      lines.push(
        `  ${kind.padEnd(12)} ${String(of.length).padStart(5)} ${String(of.filter(isKilled).length).padStart(7)} ${String(hung || "").padStart(4)}`,
      )
    }
  }
  for (const kind of Object.keys(kinds) as FaultKind[]) {
    const of = all.filter((one) => one.fault.kind === kind)
    if (of.length) lines.push(`${module}: every ${kind}: ${of.filter(isKilled).length} of ${of.length} noticed`)
  }
  const keys = new Set(argued.map((one) => one.fault))
  const everyone = [...new Map([...sampled, ...all].map((one) => [one.fault.id, one])).values()]
  const survivors = everyone.filter((one) => !isKilled(one))
  if (survivors.length) lines.push("", `Not noticed in ${module}:`)
  const places = survivors.sort((a, b) => a.fault.file.localeCompare(b.fault.file) || a.fault.line - b.fault.line)
  for (const { fault, end } of places) {
    const note = [
      end === "unreached" ? "no test goes where it would make a difference" : "",
      keys.has(fault.key) ? "argued equivalent" : "",
    ]
      .filter(Boolean)
      .join(", ")
    lines.push(`  ${fault.id} ${fault.file}:${fault.line} ${fault.kind}: ${fault.before}  ->  ${fault.after}${note ? `  (${note})` : ""}`)
    lines.push(`           key: ${fault.key}`)
  }
  const disproved = everyone.filter((one) => isKilled(one) && keys.has(one.fault.key))
  for (const { fault, by } of disproved) lines.push(`  argued equivalent, yet noticed (take the entry out): ${fault.key} by ${by}`)
  for (const key of report.stale) lines.push(`  argued equivalent, no longer there (take the entry out): ${key}`)
  if (report.outside.length) lines.push(`  tests left out, since they start other programs: ${report.outside.join("; ")}`)
  if (report.red.length) lines.push(`  tests set aside, since they fail without any fault: ${report.red.join("; ")}`)
  return lines.join("\n")
}

/** The report as data, for other programs. */
export function data(reports: readonly ModuleReport[], seed: number): object {
  const plain = ({ fault: { edits: _, n: __, ...fault }, ...rest }: Outcome) => ({ ...fault, ...rest })
  return {
    seed,
    modules: reports.map(({ sampled, all, argued, ...rest }) => ({
      ...rest,
      ...tally(sampled, argued),
      sampled: sampled.map(plain),
      all: all.map(plain),
    })),
  }
}

/** What `--at-least` fails for. */
export function shortfalls(reports: readonly ModuleReport[], atLeast: number): string[] {
  return reports.flatMap((report) => {
    const { share } = tally(report.sampled, report.argued)
    const keys = new Set(report.argued.map((one) => one.fault))
    const alive = [...report.sampled, ...report.all].filter((one) => !isKilled(one) && !keys.has(one.fault.key))
    const wrong = mustDie.filter((kind) => alive.some((one) => one.fault.kind === kind))
    return [
      ...(report.sampled.length && share < atLeast / 100 ? [`${report.module}: ${percent(share)} noticed, ${atLeast} % wanted`] : []),
      ...(report.red.length ? [`${report.module}: ${report.red.length} tests fail without any fault`] : []),
      ...(wrong.length ? [`${report.module}: a removed ${wrong.join(", ")} survives`] : []),
    ]
  })
}
