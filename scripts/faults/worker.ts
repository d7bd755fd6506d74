import { readFileSync } from "node:fs"
import { Script } from "node:vm"
import { parentPort, workerData } from "node:worker_threads"
import { collector, type Test } from "./tests.js"

/** What a worker is started with. */
export interface Start {
  readonly stable: string
  readonly switches: string
  readonly marks: string
  readonly packages: readonly string[]
  /** Faults, and marks in all: those of faults, then those of constants. */
  readonly faults: number
  readonly marksInAll: number
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
  /** It would start another program, and so is left out. */
  readonly isOutside: boolean
  readonly reached: readonly number[]
}

export type Report =
  | { readonly recorded: readonly Recorded[]; readonly atLoad: readonly number[]; readonly loadTime: number }
  | { readonly killedBy: number | null; readonly ran: number; readonly failure: string | null; readonly time: number }

const start = workerData as Start
const beat = new Int32Array(start.beat)
/** Tests that start programs or threads of their own have no place here: thousands of them would be started. */
const startsPrograms = /^(?:node:)?(?:child_process|worker_threads)$|^(?:piscina|esbuild|tsup)$/
const STARTS = "starts another program"
function stub(name: string): object {
  const refuse = () => {
    throw new Error(`${name} ${STARTS}`)
  }
  return new Proxy(class {}, { get: (_, key) => (key === "then" ? undefined : stub(name)), apply: refuse, construct: refuse })
}

let marks = new Uint8Array(0)
const { interface: vitest, collected, begin } = collector(traced)
const modules: Record<string, unknown> = { vitest, ...((await import(start.stable)) as { modules: object }).modules }
for (const name of start.packages) modules[name] = startsPrograms.test(name) ? stub(name) : await import(name)
interface Checks {
  readonly default: {
    configureGlobal(to: object): void
    readConfigureGlobal(): object
  }
}
const checks = modules["fast-check"] as Checks | undefined

/** What was marked since last asked, marks wiped. */
function taken(): number[] {
  const found: number[] = []
  marks.forEach((mark, n) => {
    if (mark) found.push(n)
  })
  marks.fill(0)
  return found
}

function traced(body: () => void): readonly number[] {
  const outer = taken()
  body()
  const inner = taken()
  for (const n of outer) marks[n] = 1
  return inner
}

/** What the making of each watched constant reached: faults, and other constants read. */
const madeOf = new Map<number, readonly number[]>()

function watch(n: number, make: () => unknown): unknown {
  let value: unknown
  const reached = traced(() => {
    value = make()
  })
  const isPlain =
    typeof value === "object" && value !== null && [Object.prototype, Array.prototype, null].includes(Object.getPrototypeOf(value))
  if (!isPlain && typeof value !== "function") {
    // who reads a number or a word cannot be seen: as if everyone did
    for (const one of reached) marks[one] = 1
    return value
  }
  madeOf.set(n, reached)
  const seen = () => {
    marks[n] = 1
  }
  return new Proxy(value as object, {
    get(target, key, receiver) {
      seen()
      return Reflect.get(target, key, receiver)
    },
    apply(target, self, args) {
      seen()
      return Reflect.apply(target as never, self, args)
    },
  })
}

/** Faults among marks, those that the constants read were made of too. */
function faultsIn(reached: readonly number[], seen = new Set<number>()): number[] {
  for (const n of reached) {
    if (seen.has(n)) continue
    seen.add(n)
    if (n > start.faults) faultsIn(madeOf.get(n) ?? [], seen)
  }
  return [...seen].filter((n) => n <= start.faults)
}

interface Bundled {
  readonly sources: readonly (() => Promise<unknown>)[]
  readonly files: Readonly<Record<string, () => Promise<unknown>>>
}
type Make = (n: number, marks: Uint8Array, env: object) => Bundled
const compiled = new Map<string, Make>()
function make(path: string): Make {
  const known = compiled.get(path)
  if (known) return known
  const text = `(function ($n, $h, $env) { ${readFileSync(path, "utf8")}\nreturn bundled })`
  const made = new Script(text, { filename: path }).runInThisContext() as Make
  compiled.set(path, made)
  return made
}

/** One evaluation of the script, with its own copy of every planted file. */
function instance(path: string, n: number): { readonly bundled: Bundled; readonly load: (file: string) => Promise<readonly Test[]> } {
  const bundled = make(path)(n, marks, { modules, watch })
  // shrinking a failed property would only say how it failed
  checks?.default.configureGlobal({ ...checks.default.readConfigureGlobal(), endOnFailure: true })
  const loaded = new Map<string, readonly Test[]>()
  const load = async (file: string) => {
    const known = loaded.get(file)
    if (known) return known
    begin()
    await bundled.files[file]?.()
    const rule = start.filtered.find((one) => one.file === file)
    const tests = collected().filter((test) => !rule || new RegExp(rule.name).test(test.name))
    loaded.set(file, tests)
    return tests
  }
  return { bundled, load }
}

/** The innermost cause in a line: of a failed property, the expectation in it. */
function message(error: unknown): string {
  if (error instanceof Error && error.cause !== undefined) return message(error.cause)
  return (error instanceof Error ? error.message : String(error)).split("\n").slice(0, 2).join(" ").slice(0, 200)
}

async function record(files: readonly string[]): Promise<Report> {
  marks = new Uint8Array(start.marksInAll + 1)
  const began = performance.now()
  const { bundled, load } = instance(start.marks, 0)
  for (const source of bundled.sources) await source()
  const atLoad = taken()
  const recorded: Recorded[] = []
  const all: { file: string; index: number; test: Test; before: readonly number[] }[] = []
  for (const file of files) {
    Atomics.add(beat, 0, 1)
    const tests = await load(file).catch((error: unknown) => {
      if (!message(error).endsWith(STARTS)) throw error
      recorded.push({ file, index: 0, name: "(the whole file)", time: 0, failure: message(error), isOutside: true, reached: [] })
      return []
    })
    const before = taken()
    all.push(...tests.map((test, index) => ({ file, index, test, before })))
  }
  const loadTime = performance.now() - began
  for (const { file, index, test, before } of all) {
    Atomics.add(beat, 0, 1)
    const from = performance.now()
    let failure: string | null = null
    try {
      await test.run()
    } catch (error) {
      failure = message(error)
    }
    const time = performance.now() - from
    const isOutside = failure?.endsWith(STARTS) ?? false
    recorded.push({ file, index, name: test.name, time, failure, isOutside, reached: faultsIn([...before, ...test.before(), ...taken()]) })
  }
  return { recorded, atLoad: faultsIn(atLoad), loadTime }
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
    const { load } = instance(start.switches, fault)
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
