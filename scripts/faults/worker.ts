import { readFileSync } from "node:fs"
import { Script } from "node:vm"
import { parentPort, workerData } from "node:worker_threads"
import { collector, type Test } from "./tests.ts"

/** What a worker is started with. */
export interface Start {
  readonly stable: string
  readonly switches: string
  readonly marks: string
  readonly packages: readonly string[]
  /** How many marks there are. */
  readonly count: number
  /** Tests of these files are taken only where their name matches. */
  readonly filtered: readonly { readonly file: string; readonly name: string }[]
  /** Counts up with every test begun: by this the watchdog knows that something still moves. */
  readonly beat: SharedArrayBuffer
}

/** Which test: its file and its place in it. */
export interface Which {
  readonly file: string
  readonly index: number
}

export type Order = { readonly record: readonly string[] } | { readonly fault: number; readonly tests: readonly Which[] }

export interface Recorded extends Which {
  readonly name: string
  readonly time: number
  readonly failure: string | null
  readonly reached: readonly number[]
}

export type Report =
  | { readonly recorded: readonly Recorded[]; readonly atLoad: readonly number[]; readonly loadTime: number }
  | { readonly killedBy: number | null; readonly ran: number; readonly failure: string | null; readonly time: number }

const start = workerData as Start
const beat = new Int32Array(start.beat)
const { interface: vitest, collected, begin } = collector()
const modules: Record<string, unknown> = { vitest, ...((await import(start.stable)) as { modules: object }).modules }
for (const name of start.packages) modules[name] = await import(name)
interface Checks {
  readonly default: {
    configureGlobal(to: object): void
    readConfigureGlobal(): object
  }
}
const checks = modules["fast-check"] as Checks | undefined

type Make = (n: number, marks: Uint8Array, env: object) => Record<string, () => Promise<unknown>>
const compiled = new Map<string, Make>()
function make(path: string): Make {
  const known = compiled.get(path)
  if (known) return known
  const text = `(function ($n, $h, $env) { ${readFileSync(path, "utf8")}\nreturn bundled.files })`
  const made = new Script(text, { filename: path }).runInThisContext() as Make
  compiled.set(path, made)
  return made
}

/** One evaluation of the script, with its own copy of every planted file. */
function instance(path: string, n: number, marks: Uint8Array): (file: string) => Promise<readonly Test[]> {
  const files = make(path)(n, marks, { modules })
  // shrinking a failed property would only say how it failed
  checks?.default.configureGlobal({ ...checks.default.readConfigureGlobal(), endOnFailure: true })
  const loaded = new Map<string, readonly Test[]>()
  return async (file) => {
    const known = loaded.get(file)
    if (known) return known
    begin()
    await files[file]?.()
    const rule = start.filtered.find((one) => one.file === file)
    const tests = collected().filter((test) => !rule || new RegExp(rule.name).test(test.name))
    loaded.set(file, tests)
    return tests
  }
}

const message = (error: unknown) => (error instanceof Error ? error.message : String(error)).split("\n").slice(0, 2).join(" ").slice(0, 200)

async function record(files: readonly string[]): Promise<Report> {
  const marks = new Uint8Array(start.count + 1)
  const reachedNow = () => {
    const found: number[] = []
    marks.forEach((mark, n) => {
      if (mark) found.push(n)
    })
    marks.fill(0)
    return found
  }
  const began = performance.now()
  const load = instance(start.marks, 0, marks)
  const recorded: Recorded[] = []
  const all: { file: string; index: number; test: Test }[] = []
  for (const file of files) {
    Atomics.add(beat, 0, 1)
    all.push(...(await load(file)).map((test, index) => ({ file, index, test })))
  }
  const atLoad = reachedNow()
  const loadTime = performance.now() - began
  for (const { file, index, test } of all) {
    Atomics.add(beat, 0, 1)
    const from = performance.now()
    let failure: string | null = null
    try {
      await test.run()
    } catch (error) {
      failure = message(error)
    }
    recorded.push({ file, index, name: test.name, time: performance.now() - from, failure, reached: reachedNow() })
  }
  return { recorded, atLoad, loadTime }
}

async function tryFault(fault: number, tests: readonly Which[]): Promise<Report> {
  const from = performance.now()
  const done = (killedBy: number | null, ran: number, failure: string | null): Report => ({
    killedBy,
    ran,
    failure,
    time: performance.now() - from,
  })
  let ran = 0
  try {
    const load = instance(start.switches, fault, new Uint8Array(0))
    for (const { file, index } of tests) {
      Atomics.add(beat, 0, 1)
      const test = (await load(file))[index]
      if (test) await test.run()
      ran++
    }
  } catch (error) {
    return done(ran, ran + 1, message(error))
  }
  return done(null, ran, null)
}

parentPort?.on("message", async (order: Order) => {
  parentPort?.postMessage("record" in order ? await record(order.record) : await tryFault(order.fault, order.tests))
})
