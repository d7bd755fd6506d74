import { format } from "node:util"
import { ASYMMETRIC_MATCHERS_OBJECT, JestAsymmetricMatchers, JestChaiExpect, JestExtend, setState } from "@vitest/expect"
import * as chai from "chai"

/** A test as it was collected. */
export interface Test {
  /** Names of its suites and its own. */
  readonly name: string
  readonly run: () => Promise<void>
  /** What the bodies of its suites reached, where that is traced. */
  readonly before: () => readonly number[]
}

type Body = (...args: never[]) => unknown
interface Suite {
  readonly name: string
  readonly parent: Suite | null
  readonly before: Body[]
  readonly beforeEach: Body[]
  readonly afterEach: Body[]
  started: boolean
  reached: readonly number[]
}

chai.use(JestExtend)
chai.use(JestChaiExpect)
chai.use(JestAsymmetricMatchers)
const matchers = (globalThis as unknown as Record<symbol, object>)[ASYMMETRIC_MATCHERS_OBJECT]
const expect = Object.assign((value: unknown, message?: string) => chai.expect(value, message), chai.expect, matchers, {
  unreachable: (message?: string): never => chai.assert.fail(`unreachable${message ? `: ${message}` : ""}`),
})
setState({ assertionCalls: 0, isExpectingAssertions: false }, expect as never)

/**
 * The part of the test runner's interface that this project's tests use, collecting into a list.
 *
 * @param traced - runs a suite's body and tells what it reached
 */
export function collector(traced: (body: () => void) => readonly number[]): {
  readonly interface: object
  readonly collected: () => Test[]
  readonly begin: () => void
} {
  const root = (): Suite => ({ name: "", parent: null, before: [], beforeEach: [], afterEach: [], started: false, reached: [] })
  let suite = root()
  let tests: Test[] = []

  const describe = (name: string, body: Body) => {
    const outer = suite
    suite = { ...root(), name: [outer.name, name].filter(Boolean).join(" > "), parent: outer }
    suite.reached = traced(() => body())
    suite = outer
  }
  // a test may state a time of its own between its name and its body
  const it = (name: string, second?: Body | object, third?: Body) => {
    const body = typeof second === "function" ? (second as Body) : third
    if (!body) return
    const home = suite
    const line = (from: Suite | null): Suite[] => (from ? [...line(from.parent), from] : [])
    tests.push({
      name: [home.name, name].filter(Boolean).join(" > "),
      before: () => line(home).flatMap((one) => one.reached),
      run: async () => {
        const suites = line(home)
        for (const one of suites) {
          if (one.started) continue
          one.started = true
          for (const hook of one.before) await hook()
        }
        for (const one of suites) for (const hook of one.beforeEach) await hook()
        // a plain test is not made to wait
        const outcome = body()
        if (outcome instanceof Promise) await outcome
        for (const one of suites.reverse()) for (const hook of one.afterEach) await hook()
      },
    })
  }
  const each = (make: (name: string, body: Body) => void) => (rows: readonly unknown[]) => (name: string, body: Body) => {
    rows.forEach((row, i) => {
      const values = Array.isArray(row) ? row : [row]
      make(named(name, values, i), (() => (body as (...args: unknown[]) => unknown)(...values)) as Body)
    })
  }
  const nothing = () => undefined
  const withForms = (make: (name: string, body: Body) => void) =>
    Object.assign(make, {
      each: each(make),
      skip: nothing,
      todo: nothing,
      skipIf: (off: unknown) => (off ? nothing : make),
      runIf: (on: unknown) => (on ? make : nothing),
    })
  return {
    interface: {
      expect,
      describe: withForms(describe),
      it: withForms(it),
      test: withForms(it),
      beforeAll: (hook: Body) => suite.before.push(hook),
      beforeEach: (hook: Body) => suite.beforeEach.push(hook),
      afterEach: (hook: Body) => suite.afterEach.push(hook),
      afterAll: nothing,
    },
    begin: () => {
      suite = root()
      tests = []
    },
    collected: () => tests,
  }
}

/** A name with a row's values put in: `$id`, `$a.b`, `%s` and the like. */
function named(name: string, values: readonly unknown[], index: number): string {
  const [first] = values
  const filled = name.replace(/\$(#|[\w.]+)/g, (place, path: string) => {
    if (path === "#") return String(index)
    if (typeof first !== "object" || first === null) return place
    const value = path.split(".").reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], first)
    return value === undefined ? place : String(value)
  })
  const holes = filled.match(/%[sdifjo]/g)?.length ?? 0
  return holes ? format(filled, ...values.slice(0, holes)) : filled
}
