import { describe, expect, it } from "vitest"
import type { WayStep } from "../../../src/rig/run/move-types.js"
import { move } from "./kit.js"

/** What these documents have of a power tree, as far as it is mended. */
interface Power {
  sources: readonly ({ type: string; name: string } & Record<string, unknown>)[]
  buses: readonly {
    name: string
    from: string
    converter?: object
    run?: object | null
    switchResistance?: number
    fuseResistance?: number
  }[]
  loads: readonly object[]
}
interface Doc {
  version: 2
  name: string
  motions: readonly object[]
  power: Power
}

const wing = {
  name: "wing",
  type: "hinge",
  count: 2,
  mirrored: true,
  length: 0.9,
  hinge: { x: 0.06, y: 0 },
  fixedPivot: { x: 0, y: -0.19 },
  movingPivot: { radius: 0.072, angle: -0.436 },
  masses: [
    { name: "spar", mass: 0.26, radius: 0.45 },
    { name: "lanterns", mass: 0.3, radius: 0.6 },
  ],
  springs: [{ stiffness: 60, freeLength: 0.2, fixedPivot: { x: 0, y: 0.35 }, radius: 0.2 }],
  hingeFriction: 0.15,
} as const

const wings = {
  name: "wings",
  bus: "actuators",
  drive: {
    type: "linear-actuator",
    count: 2,
    retractedLength: 0.155,
    stroke: 0.1,
    ratedVoltage: 12,
    noLoadSpeed: 0.0116,
    noLoadCurrent: 0.35,
    ratedForce: 75,
    ratedSpeed: 0.0095,
    ratedCurrent: 0.8,
  },
  mechanisms: [wing],
}
const jaw = {
  name: "jaw",
  bus: "side",
  drive: { type: "shaft-motor", turn: 1, torqueConstant: 1, backEmfConstant: 1.4, windingResistance: 2, frictionCurrent: 0.1 },
  mechanisms: [
    { name: "jaw", type: "turned-arm", startAngle: -0.5, length: 0.2, masses: [{ name: "lower jaw", mass: 0.4, radius: 0.15 }] },
  ],
}
const efficiency = [
  { outputCurrent: 0.1, efficiency: 0.8 },
  { outputCurrent: 1, efficiency: 0.9 },
]

/** A moth on a bank with a step-up that its limit holds down, beside a jaw and lights. */
const onBank: Doc = {
  version: 2,
  name: "Lantern moth and jaw",
  motions: [wings, jaw],
  power: {
    sources: [{ type: "bank", name: "bank", voltage: 5, currentLimit: 4, resistance: 0.06, energy: 120000 }],
    buses: [
      { name: "lead", from: "bank", run: { length: 0.3, awg: 22, contacts: 2 }, switchResistance: 0.02 },
      {
        name: "box",
        from: "lead",
        converter: {
          outputVoltage: 12,
          inputCurrentLimit: 2.2,
          outputCurrentLimit: 5,
          efficiency,
          minInputVoltage: 3.5,
          maxInputVoltage: 11,
        },
      },
      { name: "actuators", from: "box", run: { length: 1.1, awg: 24, contacts: 6 }, fuseResistance: 0.05 },
      { name: "side", from: "lead", switchResistance: 0.01 },
    ],
    loads: [
      { type: "lights", name: "eyes", bus: "side", current: 0.1 },
      { type: "constant-power", name: "sound", bus: "actuators", power: 0.5 },
    ],
  },
}
/** The same on cells, without a converter. */
const onCells: Doc = {
  ...onBank,
  power: {
    sources: [
      {
        type: "cells",
        name: "bank",
        chemistry: "nmc",
        series: 4,
        parallel: 1,
        cellCapacity: 9360,
        cellResistance: 0.07,
        extraResistance: 0.05,
      },
    ],
    buses: [
      { name: "lead", from: "bank", run: { length: 0.3, awg: 22, contacts: 2 }, switchResistance: 0.02 },
      { name: "actuators", from: "lead", run: { length: 1.1, awg: 24, contacts: 6 }, fuseResistance: 0.05 },
      { name: "side", from: "lead", switchResistance: 0.01 },
    ],
    loads: [
      { type: "lights", name: "eyes", bus: "side", current: 0.1 },
      { type: "resistive", name: "warmer", bus: "actuators", resistance: 40 },
    ],
  },
}

const withPower = (doc: Doc, power: Partial<Power>): Doc => ({ ...doc, power: { ...doc.power, ...power } })

/** A document in which one thing is mended by hand, by the label of the step that tells of it. */
const mends: Readonly<Record<string, (doc: Doc) => Doc>> = {
  // a mass at its hinge asks nothing
  "its load": (doc) => ({
    ...doc,
    motions: [
      { ...wings, mechanisms: [{ ...wing, springs: [], hingeFriction: 0, masses: [{ name: "none", mass: 0.1, radius: 0 }] }] },
      jaw,
    ],
  }),
  "sag inside the source": (doc) =>
    withPower(doc, {
      sources: doc.power.sources.map((s) =>
        s.type === "cells" ? { ...s, cellResistance: 0, extraResistance: 0 } : { ...s, resistance: 0 },
      ),
    }),
  "wires and contacts": (doc) =>
    withPower(doc, { buses: doc.power.buses.map((b) => ({ ...b, run: null, switchResistance: 0, fuseResistance: 0 })) }),
  "what else draws at the same time": (doc) => withPower({ ...doc, motions: [wings] }, { loads: [] }),
  "limits of source and converter": (doc) =>
    withPower(doc, {
      sources: doc.power.sources.map((s) => (s.type === "bank" ? { ...s, currentLimit: 50 } : s)),
      buses: doc.power.buses.map((b) =>
        b.converter ? { ...b, converter: { ...b.converter, inputCurrentLimit: null, outputCurrentLimit: null } } : b,
      ),
    }),
}

describe.each([
  ["on a bank with a step-up", onBank],
  ["on cells", onCells],
])("where the seconds go, %s", (_, doc) => {
  const whole = move(doc)
  it.each(["out", "back"] as const)("%s: steps add up, and each saves what mending it by hand saves", (way) => {
    const { waterfall, duration } = whole[way]
    const sum = waterfall.reduce((total, s: WayStep) => total + s.added, 0)
    expect(Math.abs(sum - duration)).toBeLessThan(1e-9 * duration)
    expect(waterfall[0]?.added).toBe(waterfall[0]?.duration)
    const told = waterfall.filter((s) => s.saved !== null)
    expect(told.map((s) => s.label)).toEqual(Object.keys(mends))
    for (const step of told) {
      const mended = move((mends[step.label] as (doc: Doc) => Doc)(doc))[way].duration
      expect(
        Math.abs((step.saved as number) - (duration - mended)),
        `${step.label}: ${step.saved} against ${duration - mended}`,
      ).toBeLessThan(1e-7 * duration)
    }
  })
  it("where the energy goes adds up to what the sources give", () => {
    for (const way of ["out", "back"] as const) expect(Math.abs(whole[way].energy.residual)).toBeLessThan(1e-9)
  })
})

it("a limit that binds costs seconds: the step is not idle in this test", () => {
  expect(move(onBank).out.limitedBy).toBe("input-current")
  expect(move(onBank).out.waterfall.at(-1)?.added).toBeGreaterThan(0.1)
})
