import { Worker } from "node:worker_threads"
import type { Order, Report, Start } from "./worker.js"

/** How an order ended: with the worker's report, or because nothing moved any more or the thread died. */
export type Ending = { readonly report: Report } | { readonly lost: "time" | "crash"; readonly why: string }

/** A thread that is started again when it hangs or dies. */
export class Runner {
  #worker: Worker | null = null
  readonly #path: string
  readonly #start: Start
  readonly #beat: Int32Array

  constructor(path: string, start: Omit<Start, "beat">) {
    const beat = new SharedArrayBuffer(4)
    this.#path = path
    this.#start = { ...start, beat }
    this.#beat = new Int32Array(beat)
  }

  /** Carries out an order; `limitOf` tells how long, ms, may pass after that many tests were begun until the next one is. */
  run(order: Order, limitOf: (begun: number) => number): Promise<Ending> {
    // what tests print is of no interest here
    this.#worker ??= new Worker(this.#path, {
      workerData: this.#start,
      stdout: true,
      stderr: true,
      resourceLimits: { maxOldGenerationSizeMb: 2048 },
    })
    const worker = this.#worker
    return new Promise((resolve) => {
      const before = Atomics.load(this.#beat, 0)
      let [seen, since] = [before, performance.now()]
      const watch = setInterval(() => {
        const now = Atomics.load(this.#beat, 0)
        if (now !== seen) [seen, since] = [now, performance.now()]
        const limit = limitOf(now - before)
        if (performance.now() - since > limit) end({ lost: "time", why: `no test ended within ${Math.round(limit / 1000)} s` })
      }, 100)
      const onMessage = (report: Report) => end({ report })
      const onError = (error: Error) => end({ lost: "crash", why: error.message })
      const onExit = (code: number) => end({ lost: "crash", why: `exit ${code}` })
      const end = (ending: Ending) => {
        clearInterval(watch)
        worker.off("message", onMessage).off("error", onError).off("exit", onExit)
        if ("lost" in ending) this.close()
        resolve(ending)
      }
      worker.on("message", onMessage).on("error", onError).on("exit", onExit)
      worker.postMessage(order)
    })
  }

  close(): void {
    this.#worker?.on("error", () => undefined)
    void this.#worker?.terminate()
    this.#worker = null
  }
}
