import type { Fault } from "./fault.js"
import type { Runner } from "./pool.js"
import type { Recorded } from "./worker.js"

/** What became of a fault. */
export interface Outcome {
  readonly fault: Fault
  /** `unreached`: no test runs the place, or none with a value that it changes. `hung` and `crashed` are noticed too, but not by an expectation. */
  readonly end: "killed" | "hung" | "crashed" | "survived" | "unreached"
  readonly by: string | null
  readonly failure: string | null
  readonly time: number
}

/** What the recording run tells: which tests reach which faults. */
export class Reach {
  readonly tests: readonly Recorded[]
  readonly #byFault = new Map<number, Set<number>>()
  /** Kills and tries of each test on each file: what noticed one slip there is likely to notice the next. */
  readonly #luck = new Map<string, { killed: number; tried: number }>()

  /** @param atLoad - faults in what loads before any test, with readers that cannot be told: any test may notice them */
  constructor(tests: readonly Recorded[], atLoad: readonly number[]) {
    this.tests = tests
    const reach = (n: number, i: number) => this.#byFault.set(n, (this.#byFault.get(n) ?? new Set()).add(i))
    tests.forEach((test, i) => {
      for (const n of [...test.reached, ...atLoad]) reach(n, i)
    })
  }

  /** Tests that may notice a fault, the most promising for their time first. */
  order(fault: Fault): number[] {
    const cost = (i: number) => {
      const luck = this.#luck.get(`${fault.file} ${i}`) ?? { killed: 0, tried: 0 }
      return ((this.tests[i] as Recorded).time + 1) / ((luck.killed + 0.2) / (luck.tried + 1))
    }
    const found = [...(this.#byFault.get(fault.n) ?? [])]
    return found
      .map((i) => [cost(i), i] as const)
      .sort((a, b) => a[0] - b[0])
      .map(([, i]) => i)
  }

  /** Learns from a trial: the tests that ran, and the one that noticed. */
  learn(fault: Fault, ran: readonly number[], killer: number | null): void {
    for (const i of ran) {
      const key = `${fault.file} ${i}`
      const luck = this.#luck.get(key) ?? { killed: 0, tried: 0 }
      this.#luck.set(key, { killed: luck.killed + (i === killer ? 1 : 0), tried: luck.tried + 1 })
    }
  }
}

/** Tries one fault. */
export async function attempt(fault: Fault, reach: Reach, runner: Runner, limit: number): Promise<Outcome> {
  const order = reach.order(fault)
  if (order.length === 0) return { fault, end: "unreached", by: null, failure: null, time: 0 }
  const tests = order.map((i) => reach.tests[i] as Recorded)
  const from = performance.now()
  // each test by its own usual time: one that is slow by nature does not make the others' hangs dear
  const limitOf = (begun: number) => Math.max(limit, 20 * (tests[begun - 1]?.time ?? 0))
  const ending = await runner.run({ fault: fault.n, tests: tests.map(({ file, index }) => ({ file, index })) }, limitOf)
  const time = performance.now() - from
  if ("lost" in ending) return { fault, end: ending.lost === "time" ? "hung" : "crashed", by: null, failure: ending.why, time }
  if (!("killedBy" in ending.report)) throw new Error("the thread answered another question")
  const { killedBy, ran, failure } = ending.report
  const killer = killedBy === null ? null : (order[killedBy] as number)
  reach.learn(fault, order.slice(0, ran), killer)
  const by = killer === null ? null : (reach.tests[killer] as Recorded)
  return { fault, end: by ? "killed" : "survived", by: by && `${by.file}: ${by.name}`, failure, time }
}
