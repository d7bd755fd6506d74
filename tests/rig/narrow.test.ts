// A jam so narrow that no look meets it: told as what stops the motion, by every verb, wherever it lies.
import { describe, expect, it } from "vitest"
import type { Length } from "../../src/quantity/index.js"
import { type MechanismMember, rigWith } from "../../src/rig/index.js"
import { NoSolutionError } from "../../src/solver/index.js"

interface Gate {
  type: "gate"
  mass: number
  /** Where it jams, from the start, and how wide the jam is. */
  from: Length
  wide: Length
}

const gate: MechanismMember<Gate> = {
  type: "gate",
  label: "weight in a guide that binds at one place",
  fields: {
    mass: { kind: "number", symbol: "m", label: "mass in kg", min: 0.001, max: 20 },
    from: { kind: "length", symbol: "f", label: "where it binds", min: 0, max: 1 },
    wide: { kind: "length", symbol: "w", label: "how far", min: 0, max: 1 },
  },
  build: ({ mass, from, wide }) => ({
    travel: "length",
    start: 0,
    low: 0,
    high: 10,
    deadPoints: [],
    shows: "length",
    at(q, state) {
      state.massY += mass
      state.inertia += mass
      if (q >= from && q <= from + wide) state.frictionShare = 1
    },
    pose: (q) => ({
      parts: [],
      pins: [{ name: "hook", at: [0, q, 0] }],
      tip: [0, q, 0],
      tipRate: [0, 1, 0],
      mass,
      centre: [0, q, 0],
      shown: q,
    }),
    reactions: () => [],
  }),
}

const kit = rigWith({ mechanisms: [gate] })
const [wings] = kit.move.example.motions
const rig = (from: number, wide: number) =>
  ({
    version: 2,
    name: "gate",
    motions: [{ name: "lift", drive: wings?.drive, mechanisms: [{ type: "gate", name: "gate", mass: 2, from, wide }] }],
  }) as Parameters<typeof kit.assess>[0]

// the fitting nodes of a piece lie at its cosines: (1 − cos((i + ½)·π/24))/2 of the way; 48 and 160 looks lie elsewhere
const stroke = 0.1
const nodes = Array.from({ length: 24 }, (_, i) => (stroke * (1 - Math.cos(((i + 0.5) * Math.PI) / 24))) / 2)
const unseen = nodes.filter((x) =>
  [48, 160].every((looks) => Math.abs((x / stroke) * looks - Math.round((x / stroke) * looks)) > 0.01 * looks * 0.2),
)

describe("a jam a thousandth of the travel wide, between all looks", () => {
  it("has such places", () => {
    expect(unseen.length).toBeGreaterThan(3)
  })
  it.each(unseen)("stops move, quickMove and the assessment at %d m", (x) => {
    const document = rig(x - 0.00005, 0.0001)
    const outcome = kit.move.attempt(document)
    if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("it passes")
    expect(outcome.error.noSolution).toBe("jammed")
    expect(outcome.error.at.travel).toBeCloseTo(x - 0.00005, 6)
    expect(kit.quickMove(kit.move.read(document))).toBeNull()
    const { findings } = kit.assess(document)
    expect(findings.find((f) => f.id === "passes")?.verdict).toBe("falls short")
    expect(findings.filter((f) => f.id.startsWith("duration")).map((f) => f.verdict)).toEqual(["cannot be judged", "cannot be judged"])
  })
})
