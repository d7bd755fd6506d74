import { describe, expect, it } from "vitest"
import { type Catalogue, type Choice, type SearchRequest, search, searchSize } from "../../src/advice/index.js"
import searchWorker from "../../src/advice/search/worker.js"
import { assessRig, type Rig } from "../../src/rig/index.js"
import { InputError, NoSolutionError } from "../../src/solver/index.js"
import type { StudyPool } from "../../src/study/index.js"
import { hand, moth, shelfOf, vary } from "./search-shelf.js"

/** Every combination, put into the document by hand and assessed whole: what the search must agree with. */
function brute(catalogue: Catalogue, series: readonly number[], goals: (rig: Rig) => number[] | null) {
  const of = (family: string) => catalogue.parts.filter((part) => part.family === family)
  const all: { names: string; values: number[] }[] = []
  for (const drive of of("drive"))
    for (const cell of of("cell"))
      for (const n of series)
        for (const wire of of("wire"))
          for (const fuse of of("fuse")) {
            const rig = hand({ drive, cell, wire, fuse, series: n })
            const found = assessRig.attempt(rig)
            if (!found.ok || found.value.fallsShort || found.value.findings.some(unasked)) continue
            const values = goals(rig)
            if (values) all.push({ names: `${drive.name} ${cell.name} ${wire.name} ${fuse.name} ${n}`, values })
          }
  const beaten = (a: number[], b: number[]) =>
    b.every((v, k) => v <= (a[k] as number) + 1e-9) && b.some((v, k) => v < (a[k] as number) - 1e-9)
  return { all, front: all.filter(({ values }) => !all.some((other) => beaten(values, other.values))) }
}

/** A check that was not made for another reason than what the moth itself lacks. */
const lacking = new Set(assessRig(moth).findings.flatMap(({ id, missing }) => (missing ? [`${id} ${missing}`] : [])))
const unasked = ({ id, verdict, missing, because }: ReturnType<typeof assessRig>["findings"][number]) =>
  (verdict === "not enough data" || verdict === "cannot be judged") && because === null && !lacking.has(`${id} ${missing}`)

const priceOf = (rig: Rig) => (rig.parts ?? []).reduce((sum, part) => sum + (part.count ?? 1) * (part.price ?? 0), 0)
const massOf = (rig: Rig) => (rig.parts ?? []).reduce((sum, part) => sum + (part.count ?? 1) * (part.mass as number), 0)
const namesOf = ({ parts, values }: Choice) => `${parts.map(({ name }) => name).join(" ")} ${values[0]?.value}`

/** Time out and back at its worst, by the assessment's own findings: both ways are slowest under the same condition here. */
function cycleOf(rig: Rig): number {
  const { findings } = assessRig(rig)
  const way = (id: string) => findings.find((one) => one.id === id)
  const [out, back] = [way("duration-out"), way("duration-back")]
  expect(out?.condition.replace("out, ", "")).toBe(back?.condition.replace("back, ", ""))
  return Math.round(((out?.value ?? 0) + (back?.value ?? 0)) * 1e6) / 1e6
}

const soon = (milliseconds = 0) => new Promise<void>((resolve) => setTimeout(resolve, milliseconds))

/** A pool in this thread: tasks and answers copied as between threads, answers out of order. */
function crookedPool(): StudyPool & { started: number } {
  const pool = {
    started: 0,
    async run(task: object) {
      const nth = pool.started++
      const part = structuredClone(searchWorker(structuredClone(task) as never))
      await soon((nth * 7) % 5)
      return part
    },
  }
  return pool
}

const shelf = shelfOf(1)
const plain: SearchRequest = { catalogue: shelf, vary: vary([2, 3]) }

describe("search", () => {
  it.each([
    { seed: 1, goals: ["price", "mass"] as const },
    { seed: 2, goals: ["price", "mass", "duration"] as const },
  ])("finds what assessing every combination finds: catalogue $seed, $goals", async ({ seed, goals }) => {
    const catalogue = shelfOf(seed)
    const limit = 190
    const { all, front } = brute(catalogue, [2, 3], (rig) =>
      priceOf(rig) > limit ? null : [priceOf(rig), massOf(rig), ...(goals.length > 2 ? [cycleOf(rig)] : [])],
    )
    const found = await search(moth, { catalogue, vary: vary([2, 3]), goals, keep: { price: limit } })
    const { front: offered, combinations, byCheck, byBound, assessed } = found
    expect(all.length).toBeGreaterThanOrEqual(goals.length)
    expect(offered.map(namesOf).sort()).toEqual(front.map(({ names }) => names).sort())
    expect(combinations).toBe(3 * 2 * 2 * 2 * 2)
    expect(byCheck + byBound + assessed).toBe(combinations)
    expect(found.ruledOut.reduce((sum, one) => sum + one.combinations, 0)).toBe(combinations - byBound - assessed)
    for (const { rig, price, mass } of offered) {
      // offered as data: written out, read again, it holds
      expect(assessRig(JSON.parse(JSON.stringify(rig)) as Rig).fallsShort).toBe(0)
      expect(price).toBeCloseTo(priceOf(rig), 9)
      expect(mass).toBeGreaterThan(massOf(rig))
    }
  })

  it("answers alike over a pool that hands tasks and answers on as copies, out of order", async () => {
    const pool = crookedPool()
    expect(await search(moth, plain, { pool })).toEqual(await search(moth, plain))
    expect(pool.started).toBeGreaterThan(5)
  })

  it("tells the size before it begins and how far it is, and stops when told to", async () => {
    expect(searchSize(moth, plain)).toBe(48)
    const told: number[][] = []
    await search(moth, plain, { onProgress: ({ decided, combinations }) => told.push([decided, combinations]) })
    expect(told[0]).toEqual([0, 48])
    expect(told.at(-1)).toEqual([48, 48])
    const stop = new AbortController()
    const why = new Error("the parade has started")
    const running = search(moth, { ...plain, goals: ["duration"] }, { signal: stop.signal, onProgress: () => stop.abort(why) })
    await expect(running).rejects.toBe(why)
  })

  it("takes a part whole: none inherits what the one before it held without power", async () => {
    const [strong] = shelf.parts.filter((part) => part.family === "drive" && "holdingForce" in part.writes)
    if (!strong) throw new Error("the shelf has a drive that holds")
    const { holdingForce: _, ...writes } = strong.writes
    const weak = { ...strong, name: "weak", price: 1, writes }
    const catalogue = { ...shelf, parts: [strong, weak, ...shelf.parts.filter((part) => part.family !== "drive")] }
    const { front, ruledOut } = await search(moth, { ...plain, catalogue })
    expect(new Set(front.map(({ parts }) => parts[0]?.name))).toEqual(new Set([strong.name]))
    const held = ruledOut.find(({ check }) => check === "holds-unpowered")
    expect(held).toMatchObject({ nearest: "weak", combinations: 16 })
  })

  it("moves numbers within their ranges, and no try in the range beats the limit it proves", async () => {
    const length = { at: "power.buses[0].run.length", from: "0.8 m", to: "1.6 m", steps: 2 }
    const pivot = { at: "motions[0].mechanisms[0].fixedPivot.y", from: "-195 mm", to: "-185 mm", steps: 2 }
    const drives = { ...shelf, parts: shelf.parts.slice(0, 3) }
    const [drive] = vary([3])
    const { front } = await search(moth, { catalogue: drives, vary: [drive as never, length, pivot], goals: ["duration"] })
    const [best] = front
    if (!best) throw new Error("there is a best")
    expect(best.values.map(({ at }) => at)).toEqual(["power.buses.0.run.length", "motions.0.mechanisms.0.fixedPivot.y"])
    expect(best.values[0]?.value).toBeCloseTo(0.8, 12)
    // the pivot is not known to speed it up one way: found, no limit proven
    expect(best.reached[0]?.bound).toBeNull()
    const shorter = await search(moth, { catalogue: drives, vary: [drive as never, length], goals: ["duration"] })
    const [reached] = shorter.front[0]?.reached ?? []
    expect(reached?.gap).toBe(0)
    expect(best.duration as number).toBeLessThanOrEqual((shorter.front[0]?.duration as number) + 1e-6)
  })

  it.each<[string, Readonly<Record<string, unknown>>, string[]]>([
    ["a path that is not there", { vary: [{ at: "motions[0].engine", family: "drive", part: "actuators" }] }, ["vary[0].at"]],
    ["an entry that is not there", { vary: [{ at: "power.sources[3].series", values: [2] }] }, ["vary[0].at"]],
    ["a family of which there is none", { vary: [{ at: "motions[0].drive", family: "drives", part: "actuators" }] }, ["vary[0].family"]],
    [
      "a part without a price",
      { catalogue: { ...shelf, parts: shelf.parts.map((p, i) => (i ? p : { ...p, price: null })) } },
      ["catalogue.parts[0].price"],
    ],
    [
      "a part without a mass",
      { catalogue: { ...shelf, parts: shelf.parts.map((p, i) => (i ? p : { ...p, mass: undefined })) } },
      ["catalogue.parts[0].mass"],
    ],
    [
      "fields that a part cannot write",
      {
        catalogue: {
          ...shelf,
          parts: shelf.parts.map((p, i) => (i ? p : { ...p, writes: { ...p.writes, colour: "amber", stroke: "-1 mm" } })),
        },
      },
      ["catalogue.parts[0].writes.colour", "catalogue.parts[0].writes.stroke"],
    ],
    ["a part of the rig that is not listed", { vary: [{ at: "motions[0].drive", family: "drive", part: "motors" }] }, ["vary[0].part"]],
    ["one place twice", { vary: [...vary([2]), { at: "power.sources[0].series", values: [3] }] }, ["vary[5].at"]],
    ["values that repeat", { vary: [{ at: "power.sources[0].series", values: [2, 2] }] }, ["vary[0].values[1]"]],
    ["a value beyond its field", { vary: [{ at: "power.sources[0].series", values: [0] }] }, ["vary[0].values[0]"]],
    ["a range of whole numbers", { vary: [{ at: "power.sources[0].series", from: 1, to: 4 }] }, ["vary[0]"]],
    ["a range of no width", { vary: [{ at: "power.buses[0].run.length", from: "1 m", to: "1 m" }] }, ["vary[0].to"]],
    ["nothing to try, and a name unknown", { vary: [{ at: "motions[0].drive" }], goal: [] }, ["goal", "vary[0]"]],
    ["a goal that is none", { goals: ["beauty", { duration: "tail" }] }, ["goals[0]", "goals[1].duration"]],
    ["two gauges in one run", { vary: [{ at: "power.buses[0].run.area", values: ["0.5 mm2"] }] }, ["vary[0]"]],
  ])("refuses %s", async (_, change, paths) => {
    const error: unknown = await search(moth, { ...plain, ...change } as unknown as SearchRequest).catch((thrown: unknown) => thrown)
    expect(error).toBeInstanceOf(InputError)
    const told = (error as InputError).issues.map(({ path }) =>
      path.map((p, i) => (typeof p === "number" ? `[${p}]` : i ? `.${p}` : p)).join(""),
    )
    expect(told.toSorted()).toEqual(paths)
  })

  it("says which check stands in the way, and what came nearest, where no choice holds", async () => {
    const wanted = { ...moth, motions: moth.motions.map((one) => ({ ...one, wanted: { ...one.wanted, duration: 4 } })) }
    const error: unknown = await search(wanted, plain).catch((thrown: unknown) => thrown)
    expect(error).toBeInstanceOf(NoSolutionError)
    const { noSolution, message, shortBy, at } = error as NoSolutionError
    expect(noSolution).toBe("no-candidate")
    expect(at.combinations).toBe(48)
    expect(shortBy).toBeGreaterThan(0)
    expect(message).toMatch(/None of 48 combinations .*Nearest: .*drive \d/)
  })
})
