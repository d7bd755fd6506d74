import { mkdtempSync, rmSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { build } from "esbuild"
import { Piscina } from "piscina"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { type SearchPool, type SearchProgress, search } from "../../src/advice/index.js"
import searchWorker from "../../src/advice/search/worker.js"
import { root } from "../helpers/packed.js"
import { goals, shelf, short, wings } from "./search-shelf.js"

const longGoals = { series: [1, 2, 3, 4, 5, 6, 7], parallel: [1, 2, 3, 4] }
const soon = (milliseconds = 0) => new Promise<void>((resolve) => setTimeout(resolve, milliseconds))

/** A pool in this thread: tasks and answers copied as between threads, answers out of order, so many at a time. */
function crookedPool(atOnce: number): SearchPool & { started: number } {
  let running = 0
  const pool = {
    started: 0,
    async run(task: Parameters<typeof searchWorker>[0]) {
      while (running >= atOnce) await soon(1)
      running++
      const nth = pool.started++
      const part = structuredClone(searchWorker(structuredClone(task)))
      await soon((nth * 7) % 5)
      running--
      return part
    },
  }
  return pool
}

describe("search over workers", () => {
  it.each([1, 3, 8])("answers and counts alike with %d at a time, in whatever order they end", async (atOnce) => {
    const pool = crookedPool(atOnce)
    expect(await search(wings, short, goals, { pool })).toEqual(await search(wings, short, goals))
    expect(pool.started).toBeGreaterThan(8)
  })

  describe("on threads", () => {
    const folder = mkdtempSync(join(tmpdir(), "search-"))
    const filename = join(folder, "search-worker.mjs")
    const pools: Piscina[] = []
    const threads = (maxThreads: number) => {
      const pool = new Piscina({ filename, minThreads: maxThreads, maxThreads })
      pools.push(pool)
      return pool
    }
    beforeAll(async () => {
      await build({
        entryPoints: [join(root, "src/advice/search/worker.ts")],
        bundle: true,
        format: "esm",
        platform: "node",
        outfile: filename,
      })
    })
    afterAll(async () => {
      await Promise.all(pools.map((pool) => pool.destroy()))
      rmSync(folder, { recursive: true })
    })
    it("answers alike on one thread and on two", async () => {
      const here = await search(wings, short, goals)
      for (const count of [1, 2]) expect(await search(wings, short, goals, { pool: threads(count) })).toEqual(here)
    })
    it("stops when told: nothing is left to do in the pool", async () => {
      const pool = threads(2)
      const stop = new AbortController()
      const why = new Error("the parade has started")
      const running = search(wings, shelf, longGoals, { pool, signal: stop.signal })
      setTimeout(() => stop.abort(why), 300)
      await expect(running).rejects.toBe(why)
      expect(pool.queueSize).toBe(0)
      const done = pool.completed
      await soon(300)
      expect(pool.queueSize).toBe(0)
      expect(pool.completed - done).toBeLessThanOrEqual(2)
    })
  })
  it("passes a worker's failure on", async () => {
    const pool: SearchPool = { run: () => Promise.reject(new Error("no such thread")) }
    await expect(search(wings, short, goals, { pool })).rejects.toThrow("no such thread")
  })
})

describe("a running search", () => {
  it("reports how far it is, rising to the end, and no oftener than ten times a second", async () => {
    const seen: (SearchProgress & { at: number })[] = []
    const found = await search(wings, short, goals, { onProgress: (progress) => seen.push({ ...progress, at: Date.now() }) })
    expect(seen.at(-1)).toMatchObject({ considered: found.combinations, combinations: found.combinations, evaluated: found.evaluated })
    for (const [i, { considered, at }] of seen.entries()) {
      if (i === 0) continue
      expect(considered).toBeGreaterThanOrEqual(seen[i - 1]!.considered)
      if (i < seen.length - 1) expect(at - seen[i - 1]!.at).toBeGreaterThanOrEqual(100)
    }
  })
  it("stops when told, with the reason given, and does nothing more", async () => {
    const stop = new AbortController()
    let reports = 0
    const running = search(wings, shelf, longGoals, {
      signal: stop.signal,
      onProgress: ({ considered, combinations }) => {
        reports++
        expect(considered).toBeLessThan(combinations)
        stop.abort("enough")
      },
    })
    await expect(running).rejects.toBe("enough")
    await soon(250)
    expect(reports).toBe(1)
  })
  it("lets other work in between: a timer stops it", async () => {
    const stop = new AbortController()
    setTimeout(() => stop.abort(), 50)
    await expect(search(wings, shelf, longGoals, { signal: stop.signal })).rejects.toMatchObject({ name: "AbortError" })
  })
  it("stops in the middle of a share too: one actuator, one place, very many supplies", async () => {
    const one = { ...shelf, actuators: shelf.actuators.slice(0, 1), placements: shelf.placements!.slice(0, 1), springs: [] }
    const many = { series: longGoals.series, parallel: Array.from({ length: 50 }, (_, i) => i + 1) }
    const stop = new AbortController()
    setTimeout(() => stop.abort("enough"), 0)
    await expect(search(wings, one, many, { signal: stop.signal })).rejects.toBe("enough")
  })
  it("does not begin when already told to stop", async () => {
    const pool = crookedPool(1)
    await expect(search(wings, short, goals, { pool, signal: AbortSignal.abort("never mind") })).rejects.toBe("never mind")
    expect(pool.started).toBe(0)
  })
  it("starts no further shares in a pool once stopped", async () => {
    const stop = new AbortController()
    const pool = crookedPool(1)
    const running = search(wings, short, goals, { pool, signal: stop.signal })
    await soon(20)
    stop.abort("enough")
    await expect(running).rejects.toBe("enough")
    const { started } = pool
    await soon(200)
    // what was queued in this pool, which knows no signal, is one round at most
    expect(pool.started - started).toBeLessThanOrEqual(8)
    const settled = pool.started
    await soon(200)
    expect(pool.started).toBe(settled)
  })
})
