import { describe, expect, it } from "vitest"
import { type Catalogue, readCatalogue, type SearchGoals, search } from "../../src/advice/index.js"
import { moveTime } from "../../src/rig/index.js"
import { InputError } from "../../src/solver/index.js"
import { goals, shelf, short, wings } from "./search-shelf.js"

/** Faults of a call that must fail with an InputError: code and path of each. */
async function faults(call: () => unknown): Promise<string[]> {
  try {
    await call()
  } catch (error) {
    if (error instanceof InputError) return error.issues.map(({ code, path }) => `${code} ${path.join(".")}`)
    throw error
  }
  throw new Error("nothing was wrong")
}

const [actuator, cell, wire, converter] = [shelf.actuators[0]!, shelf.cells[0]!, shelf.wires[0]!, shelf.converters![0]!]
const changed = (change: Record<string, unknown>): Catalogue => ({ ...short, ...change }) as Catalogue

describe("a catalogue at the door", () => {
  it("is read into SI, defaults filled, in any unit", () => {
    const read = readCatalogue(shelf)
    expect(read.actuators[0]).toMatchObject({ name: "dusk 100", mass: 0.41, stroke: 0.1, noLoadSpeed: 0.0116 })
    expect(read.cells[0]).toMatchObject({ capacity: 3.4 * 3600, resistance: 0.075, current: 5 })
    expect(read.springs[0]).toMatchObject({ stiffness: 120, angle: 0 })
    expect(read.wires[0]).toMatchObject({ awg: 14, area: null })
    const { stroke: _stroke, ...rest } = actuator
    const inches = readCatalogue({ ...shelf, actuators: [{ ...rest, stroke: "4 in" }] })
    expect(inches.actuators[0]!.stroke).toBeCloseTo(0.1016, 12)
    const least = readCatalogue({ version: 1, name: "least", actuators: [actuator], cells: [cell], wires: [wire] })
    expect([least.placements, least.springs, least.converters, least.note, least.currency]).toEqual([[], [], [], "", ""])
  })
  it.each<[string, Record<string, unknown>, string[]]>([
    ["missing", { name: undefined, cells: undefined }, ["missing name", "missing cells"]],
    ["unknown-key", { wirse: [], cells: [{ ...cell, colour: "amber" }] }, ["unknown-key cells.0.colour", "unknown-key wirse"]],
    ["wrong-type", { name: 7, wires: "thin", cells: [3] }, ["wrong-type name", "wrong-type cells.0", "wrong-type wires"]],
    ["wrong-unit", { cells: [{ ...cell, capacity: "3 kg" }] }, ["wrong-unit cells.0.capacity"]],
    ["not-a-number", { cells: [{ ...cell, capacity: "much" }] }, ["not-a-number cells.0.capacity"]],
    [
      "not-finite",
      { cells: [{ ...cell, price: Number.NaN, mass: Number.POSITIVE_INFINITY }] },
      ["not-finite cells.0.mass", "not-finite cells.0.price"],
    ],
    ["too-small", { cells: [{ ...cell, price: -1 }] }, ["too-small cells.0.price"]],
    ["too-large", { actuators: [{ ...actuator, stroke: "3 m" }] }, ["too-large actuators.0.stroke"]],
    ["not-whole", { wires: [{ ...wire, awg: 20.5 }] }, ["not-whole wires.0.awg"]],
    ["not-a-choice", { version: 2, cells: [{ ...cell, chemistry: "cheese" }] }, ["not-a-choice version", "not-a-choice cells.0.chemistry"]],
    ["too-few", { cells: [], converters: [{ ...converter, efficiency: [] }] }, ["too-few cells", "too-few converters.0.efficiency"]],
    ["too-many", { wires: Array.from({ length: 1001 }, (_, i) => ({ ...wire, name: `wire ${i}` })) }, ["too-many wires"]],
    [
      "inconsistent",
      {
        actuators: [{ ...actuator, ratedSpeed: actuator.noLoadSpeed }, actuator],
        cells: [cell, { ...cell, mass: "heavy" }],
        converters: [{ ...converter, maxInputVoltage: converter.minInputVoltage }],
        wires: [{ ...wire, area: "1 mm2" }],
      },
      [
        "inconsistent actuators.0.ratedSpeed",
        "inconsistent actuators.1.name",
        "not-a-number cells.1.mass",
        "inconsistent cells.1.name",
        "inconsistent converters.0.maxInputVoltage",
        "inconsistent wires.0.area",
      ],
    ],
  ])("names every fault, each in its own place: %s", async (_, change, expected) => {
    expect((await faults(() => readCatalogue(changed(change)))).sort()).toEqual([...expected].sort())
    // search says the same, with where it was found in front
    const inSearch = await faults(() => search(wings, changed(change), goals))
    expect(inSearch.sort()).toEqual(expected.map((fault) => fault.replace(" ", " catalogue.")).sort())
  })
  it("asks whether another name was meant", () => {
    expect(() =>
      readCatalogue({ ...short, wries: [], converters: [{ ...converter, efficiency: [{ outputCurrent: 0, efficency: 0.9 }] }] }),
    ).toThrow(/did you mean 'wires'.*|did you mean 'efficiency'/s)
  })
  it.each([null, undefined, 3, "parts", [], () => 3])("is no %s", async (value) => {
    expect((await faults(() => readCatalogue(value))).length).toBeGreaterThan(0)
  })
})

describe("rig and goals at the door", () => {
  it("are checked together with the catalogue: one error names all", async () => {
    const call = () =>
      search({ ...wings, wiring: null, nmae: "x" } as never, changed({ cells: [] }), { series: [3, 3], raiseTime: "soon" } as never)
    expect(await faults(call)).toEqual(["unknown-key rig.nmae", "too-few catalogue.cells", "not-a-number goals.raiseTime"])
    const { hinged: _hinged, ...bare } = wings
    expect(await faults(() => search({ ...bare, wiring: null }, short, { series: [3, 3] }))).toEqual([
      "missing rig.hinged",
      "missing rig.wiring",
      "inconsistent goals.series.1",
    ])
  })
  it("a place on the hinge itself is none", async () => {
    const place = { ...shelf.placements![0]!, fixedPivot: wings.hinged!.hinge }
    expect(await faults(() => search(wings, changed({ placements: [place] }), goals))).toEqual([
      "inconsistent catalogue.placements.0.fixedPivot",
    ])
    expect(await faults(() => search(wings, short, { ...goals, placements: [place] }))).toEqual([
      "inconsistent goals.placements.0.fixedPivot",
    ])
  })
})

describe("what is left out", () => {
  it("of the goals is taken from the rig: its brief, its day, its charge and its own place", async () => {
    const parts = changed({ placements: [] })
    const own = { name: "as drawn", fixedPivot: wings.hinged!.fixedPivot, movingPivot: wings.hinged!.movingPivot }
    const { brief, day, pack } = moveTime.read(wings)
    const said: SearchGoals = {
      ...goals,
      moves: goals.moves ?? day?.moves ?? null,
      raiseTime: brief!.raiseTime,
      stageTime: brief!.stageTime,
      swing: brief!.swing,
      stateOfCharge: pack!.stateOfCharge,
      placements: [own],
    }
    const { front } = await search(wings, parts, goals)
    expect(front.length).toBeGreaterThan(0)
    expect((await search({ ...wings, brief: null }, parts, said)).front.map((c) => c.raiseTime)).toEqual(front.map((c) => c.raiseTime))
    expect(front[0]!.placement).toBe("as drawn")
  })
})
