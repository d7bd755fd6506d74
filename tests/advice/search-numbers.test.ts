// Numbers that a search changes beside its parts: each combination is put into the document by hand and assessed whole.
import { describe, expect, it } from "vitest"
import { type SearchRequest, search } from "../../src/advice/index.js"
import { assessRig, type Rig } from "../../src/rig/index.js"
import type { InputError } from "../../src/solver/index.js"
import { moth, shelfOf, vary } from "./search-shelf.js"

const shelf = shelfOf(1)
const [byDrive, byCell] = vary([3])
const holding = { ...shelf, parts: shelf.parts.filter(({ family, writes }) => family !== "drive" || "holdingForce" in writes) }
const parts = (rig: Rig) => rig.parts ?? []
const priceOf = (rig: Rig) => parts(rig).reduce((sum, part) => sum + (part.count ?? 1) * (part.price ?? 0), 0)

describe("numbers of a search", () => {
  it("counts what a listed part weighs and costs where that is what is changed", async () => {
    const harness = [
      { at: "parts[0].mass", values: [1.4, 0.9] },
      { at: "parts[0].price", values: [40, 20] },
    ]
    const asked = { catalogue: holding, vary: [byDrive, ...harness] } as unknown as SearchRequest
    const { front } = await search(moth, asked)
    // a lighter and cheaper harness is never beaten by a heavier or dearer one
    for (const { values } of front) expect(values.map(({ value }) => value)).toEqual([0.9, 20])
    const mass = Math.max(...front.map((one) => one.mass)) + 0.1
    const price = Math.max(...front.map((one) => one.price)) + 1
    expect((await search(moth, { ...asked, keep: { mass, price } })).front).toHaveLength(front.length)
  })

  it("takes a single value that the document does not have, for what hangs on it and for how many are bought", async () => {
    const series = (n: number) => {
      const [pack, ...rest] = moth.power?.sources ?? []
      return { ...moth, power: { ...moth.power, sources: [{ ...pack, series: n }, ...rest] } } as unknown as Rig
    }
    const vary = [byDrive, byCell] as unknown as SearchRequest["vary"]
    const one = { at: "power.sources[0].series", values: [3] }
    const found = await search(series(1), { catalogue: holding, vary: [...vary, one] })
    const wanted = await search(series(3), { catalogue: holding, vary })
    const told = ({ front }: typeof found) => front.map(({ price, mass, duration }) => [price, mass, duration])
    expect(told(found)).toEqual(told(wanted))
    for (const { price, rig } of found.front) expect(price).toBeCloseTo(priceOf(rig), 9)
  })

  it("finds what holds where the document itself is stopped, whatever it says nothing of", async () => {
    // so weak that nothing moves: what else the document lacks is then told of no motion
    const [pack, ...rest] = moth.power?.sources ?? []
    const weak = { ...moth, power: { ...moth.power, sources: [{ ...pack, cellResistance: 5 }, ...rest] } } as unknown as Rig
    const silent = (rig: Rig) => ({ ...rig, motions: rig.motions.map((one) => ({ ...one, duty: null })) }) as Rig
    const asked = { catalogue: holding, vary: [byDrive, byCell] } as unknown as SearchRequest
    const [found, wanted] = [await search(silent(weak), asked), await search(silent(moth), asked)]
    expect(wanted.front.length).toBeGreaterThan(0)
    expect(found.front.map(({ price, mass }) => [price, mass])).toEqual(wanted.front.map(({ price, mass }) => [price, mass]))
  })

  it("moves the figure of the part that is named, wherever others stand in for theirs", async () => {
    const mass = { at: "parts[2].mass", from: 0.2, to: 0.4, steps: 2 }
    const { front } = await search(moth, { catalogue: holding, vary: [byDrive, mass], goals: ["mass"] } as unknown as SearchRequest)
    const [
      {
        rig,
        reached,
        parts: [drive],
      } = {} as never,
    ] = front
    const massOf = (name: string) => rig.parts?.find((part) => part.name.endsWith(name))?.mass
    expect(massOf("pack")).toBeCloseTo(0.2, 12)
    expect(massOf(drive?.name as string)).toBe(holding.parts.find(({ name }) => name === drive?.name)?.mass)
    expect(reached[0]?.gap).toBe(0)
  })

  it("keeps a supply on that more resistance keeps below its limit", async () => {
    const [line] = moth.power?.buses ?? []
    // a warming pad takes what it is given: through thick wire more than the bank gives, through thin wire less
    const heated = {
      ...moth,
      power: {
        sources: [{ type: "bank", name: "bank", voltage: 12, currentLimit: 3, resistance: 0.05, energy: 360_000 }],
        buses: [{ ...line, from: "bank", run: { ...line?.run, dropLimit: 0.5 } }],
        loads: [{ type: "resistive", name: "warming pad", bus: line?.name, resistance: 6 }],
      },
      motions: moth.motions.map((one) => ({ ...one, wanted: {} })),
    } as unknown as Rig
    const values = Array.from({ length: 27 }, (_, i) => i / 5)
    const at = "power.buses[0].switchResistance"
    const by = values.filter((switchResistance) => {
      const rig = { ...heated, power: { ...heated.power, buses: [{ ...heated.power?.buses[0], switchResistance }] } } as unknown as Rig
      return !assessRig(rig).findings.some(({ verdict }) => verdict === "falls short")
    })
    const unmade = [...new Set(assessRig(heated).findings.map(({ id }) => id))]
    const found = await search(heated, { catalogue: holding, vary: [{ at, values }], keep: { unmade } }).catch((e: Error) => e.message)
    expect(by.length).toBeGreaterThan(2)
    expect(by).not.toContain(0)
    expect(typeof found === "string" ? found : found.front.map(({ values: [one] }) => one?.value)).toEqual(by)
  })

  it("refuses a number of a part that is exchanged", async () => {
    const request = { catalogue: holding, vary: [byDrive, { at: "parts[1].mass", values: [0.3] }] } as unknown as SearchRequest
    const error: unknown = await search(moth, request).catch((thrown: unknown) => thrown)
    expect((error as InputError).issues.map(({ path }) => path.join("."))).toEqual(["vary.1.at"])
  })
})
