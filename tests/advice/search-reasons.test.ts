import { describe, expect, it } from "vitest"
import { type Catalogue, type CatalogueConverter, type SearchGoals, search } from "../../src/advice/index.js"
import type { RigDocument } from "../../src/rig/index.js"
import { openRig } from "./search-brute.js"
import { shelf } from "./search-shelf.js"

const [actuator, cell, wire, converter] = [shelf.actuators[0]!, shelf.cells[1]!, shelf.wires[2]!, shelf.converters![0]!]
const one: Catalogue = { version: 1, name: "one of each", actuators: [actuator], cells: [cell], wires: [wire] }
const single: SearchGoals = { series: [3], parallel: [1], rodAngle: 0 }

/** A search with a single combination, and the one thing that must stand in its way. */
const cases: readonly (readonly [
  reason: string,
  family: string,
  parts: Partial<Catalogue>,
  goals: SearchGoals,
  rig?: Partial<RigDocument>,
])[] = [
  ["cannot-close", "mechanical", { actuators: [{ ...actuator, retractedLength: "300 mm" }] }, {}],
  [
    "dead-point",
    "mechanical",
    { actuators: [{ ...actuator, retractedLength: "100 mm", stroke: "50 mm" }] },
    { placements: [{ name: "on the line", fixedPivot: { x: "200 mm", y: 0 }, movingPivot: { radius: "100 mm", angle: 0 } }] },
    { hinged: { ...openRig().hinged!, hinge: { x: 0, y: 0 } } },
  ],
  ["swing", "mechanical", {}, { swing: "120 deg" }],
  ["rod-angle", "mechanical", {}, { rodAngle: "60 deg" }],
  ["force", "mechanical", {}, { forceFactor: 0.4 }],
  ["holding", "mechanical", { actuators: [{ ...actuator, holdingForce: "10 N" }] }, { holds: true }],
  ["voltage", "supply", {}, { series: [4] }],
  ["stall", "supply", { cells: [{ ...cell, chemistry: "nimh" }] }, { series: [1] }],
  ["stall", "supply", {}, { stallFactor: 8 }],
  ["too-slow", "supply", {}, { raiseTime: "8 s" }],
  ["stage-time", "supply", {}, { raiseTime: "15 s", stageTime: "16 s" }],
  ["cell-current", "supply", { cells: [{ ...cell, current: "0.9 A" }] }, {}],
  ["energy", "supply", {}, { moves: 5000 }],
  ["wire-current", "wire", { wires: [{ ...wire, current: "0.9 A" }] }, {}],
  ["fuse", "wire", {}, {}, { wiring: { ...openRig().wiring!, fuseRating: "0.9 A" } }],
  ["unprotected", "wire", {}, {}, { wiring: { ...openRig().wiring!, fuseRating: "12 A" } }],
  ["switch", "wire", {}, {}, { wiring: { ...openRig().wiring!, switchRating: "0.9 A" } }],
  ["price", "budget", {}, { price: 20 }],
  ["mass", "budget", {}, { mass: "100 g" }],
]

describe("why families fail", () => {
  it.each(cases.map(([reason, family, parts, goals, rig = {}]) => ({ reason, family, parts, goals, rig })))(
    "$reason ($family)",
    async ({ reason, family, parts, goals, rig }) => {
      const found = await search(openRig(rig), { ...one, ...parts }, { ...single, ...goals })
      expect(found.front).toEqual([])
      expect([found.cheapest, found.lightest, found.fastest]).toEqual([null, null, null])
      expect(found.rejected).toMatchObject([{ reason, family, combinations: 1, members: family === "budget" ? null : 1 }])
      expect(found.why).toContain(found.rejected[0]!.why)
      expect(found.ruledOut).toBe(1)
    },
  )
  it("and nothing stands in the way of the same parts otherwise", async () => {
    const found = await search(openRig(), one, single)
    expect(found.front).toHaveLength(1)
    expect(found.rejected).toEqual([])
  })
  // with and without the converter: two combinations
  it.each<[string, CatalogueConverter, Partial<Catalogue>?]>([
    ["converter-input", { ...converter, maxInputVoltage: "12 V" }],
    ["no-supply", { ...converter, minInputVoltage: "12.4 V", maxInputVoltage: "20 V" }],
    ["voltage", { ...converter, outputVoltage: "15 V", maxInputVoltage: "20 V" }],
    ["stall", { ...converter, outputVoltage: "2 V", maxInputVoltage: "20 V" }],
    ["stall", { ...converter, inputCurrentLimit: "0.3 A", maxInputVoltage: "20 V" }],
    ["cell-current", { ...converter, maxInputVoltage: "20 V" }, { cells: [{ ...cell, current: "1.6 A" }] }],
  ])("%s, of a converter", async (reason, step, parts = {}) => {
    const found = await search(openRig(), { ...one, ...parts, converters: [step] }, { ...single, raiseTime: null })
    expect(found.front.map((choice) => choice.converter)).toEqual([null])
    expect(found.rejected.map((r) => [r.reason, r.combinations])).toEqual([[reason, 1]])
  })
  it("says how near the nearest came, and with what", async () => {
    const found = await search(openRig(), { ...one, actuators: shelf.actuators.slice(0, 3) }, { ...single, raiseTime: "6.5 s" })
    const slow = found.rejected.find((r) => r.reason === "too-slow")!
    expect(slow.combinations).toBe(3)
    expect(slow.why).toMatch(/^the raise takes too long; nearest: [\d.]+ s against 6\.5 s \(dawn 100 brisk at as drawn, 3S1P plain lamp/)
  })
  it("a limit met exactly is met", async () => {
    const { front } = await search(openRig(), one, single)
    const [choice] = front
    const exact = { ...single, raiseTime: choice!.raiseTime, swing: choice!.swing, price: choice!.price, mass: choice!.mass }
    expect((await search(openRig(), one, exact)).front).toHaveLength(1)
  })
  it("shows a near miss with the digits it takes", async () => {
    const [choice] = (await search(openRig(), one, single)).front
    const missed = await search(openRig(), one, { ...single, raiseTime: choice!.raiseTime * (1 - 1e-7) })
    const [, got, limit] = /nearest: ([\d.]+) s against ([\d.]+) s/.exec(missed.rejected[0]!.why)!
    expect(Number(got)).toBeGreaterThan(Number(limit))
  })
})
