// How long work is run: here at a stretch with rests, or spread over a pool; a stop is heard and progress told on the way.

/** What tells a study to stop: an `AbortSignal`, or anything of its shape. */
export interface StudySignal {
  readonly aborted: boolean
  readonly reason?: unknown
  /** Called by the study, to hear of a stop. */
  addEventListener(type: "abort", listener: () => void): void
  /** Called once the study has ended. */
  removeEventListener(type: "abort", listener: () => void): void
}

/** Worker threads that have loaded a file whose default export is {@link studyWorker}: most pool libraries fit as they are. */
export interface StudyPool {
  /**
   * Hands one task, plain data, to a worker, and its answer back. A pool that knows signals may drop what
   * has not begun; one that does not may go on with at most sixteen tasks after a stop.
   */
  run(task: object, options?: { readonly signal?: StudySignal }): Promise<unknown>
}

// timers are everywhere this runs, but not in the language's own types
declare function setTimeout(call: () => void, milliseconds: number): unknown

/** Milliseconds worked at a stretch, and between two reports. */
const STRETCH = 25
const REPORT = 100
/** Most tasks that a pool has at a time: what it may still work on after a stop. */
const AT_ONCE = 16

/** Lets others run now and then, hears a stop, and tells how far the work is at most ten times a second. */
export class Pace<P> {
  #reported = Date.now()
  #rested = Date.now()

  constructor(
    readonly signal: StudySignal | undefined,
    private readonly onProgress: ((progress: P) => void) | undefined,
    private readonly progress: () => P,
  ) {
    this.heed()
  }

  /** Throws the signal's reason where it says stop. */
  heed(): void {
    if (this.signal?.aborted) throw this.signal.reason
  }

  /** Tells how far it is, where it is time to; the last one always. */
  report(isLast = false): void {
    if (!this.onProgress || (!isLast && Date.now() - this.#reported < REPORT)) return
    this.#reported = Date.now()
    this.onProgress(this.progress())
  }

  /** Lets others run where it has worked for a while. */
  async rest(): Promise<void> {
    if (Date.now() - this.#rested < STRETCH) return
    this.report()
    await new Promise<void>((resolve) => setTimeout(resolve, 0))
    this.#rested = Date.now()
    this.heed()
  }

  /** Hands tasks to a pool, some at a time, and each answer on as it comes; the answers in the order of the tasks. */
  async spread<Part>(pool: StudyPool, tasks: readonly object[], arrived: (part: Part) => void): Promise<readonly Part[]> {
    const { signal } = this
    const parts: Part[] = []
    let [next, isOver] = [0, false]
    const hand = async (): Promise<void> => {
      while (next < tasks.length && !isOver) {
        const i = next++
        const part = (await pool.run(tasks[i] as object, signal ? { signal } : undefined)) as Part
        if (isOver) return
        parts[i] = part
        arrived(part)
        this.report()
      }
    }
    try {
      await untilStopped(Promise.all(Array.from({ length: AT_ONCE }, hand)), signal)
    } finally {
      // stopped or failed: nothing more is handed over or told
      isOver = true
    }
    return parts
  }
}

/** A promise that is also rejected as soon as the signal says stop. */
function untilStopped<T>(work: Promise<T>, signal: StudySignal | undefined): Promise<T> {
  if (!signal) return work
  return new Promise<T>((resolve, reject) => {
    const stop = () => reject(signal.reason)
    signal.addEventListener("abort", stop)
    work
      .then(resolve, (error: unknown) => reject(signal.aborted ? signal.reason : error))
      .finally(() => signal.removeEventListener("abort", stop))
    if (signal.aborted) stop()
  })
}
