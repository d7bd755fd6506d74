// What the supply does while it is performed: thresholds from both sides, limits, charge.
import { describe, expect, it } from "vitest"
import { openCircuitVoltage } from "../../../src/pack/index.js"
import { armRig, last, play } from "./kit.js"

const motor = {
  type: "shaft-motor",
  turn: "20 rev",
  torqueConstant: 0.2,
  backEmfConstant: 0.2,
  windingResistance: 1.5,
  frictionCurrent: 0.2,
  inertia: 0.004,
}
const resistance = 4 * 0.06
const pack = { type: "cells", name: "pack", chemistry: "nmc", series: 4, parallel: 1, cellCapacity: "1 Ah", cellResistance: "60 mohm" }
const controller = (resetVoltage: number) => ({ type: "controller", name: "receiver", bus: "line", current: 0.05, resetVoltage })
const fedRig = (power: object, more: object = {}) => {
  const rig = armRig(motor, {}, more) as { motions: object[] }
  return { ...rig, motions: rig.motions.map((m) => ({ ...m, bus: "line" })), power }
}
const packRig = (resetVoltage: number, more: object = {}) =>
  fedRig({ sources: [pack], buses: [{ name: "line", from: "pack" }], loads: [controller(resetVoltage)] }, more)
const limited = (more: object) =>
  fedRig({
    sources: [{ type: "bank", name: "bank", voltage: 12, currentLimit: 3, resistance: 0.1, energy: "40 Wh" }],
    buses: [{ name: "line", from: "bank", ...more }],
    loads: [],
  })
const types = (out: ReturnType<typeof play>) => out.events.map((e) => e.type)

const once = { programme: [{ at: 0, motion: "arm", to: 1 }] }

describe("a controller that starts anew", () => {
  const open = 4 * openCircuitVoltage("nmc", 0.8)
  // at rest under full voltage: E − R·(I + V/R_w) = V
  const dip = (open - resistance * 0.05) / (1 + resistance / 1.5)
  it("falls to the voltage that source and standing motor share, and no further", () => {
    const out = play(packRig(0, once))
    expect((out.buses[0]?.minVoltage ?? 0) / dip).toBeCloseTo(1, 9)
    expect(types(out)).not.toContain("restarts")
  })
  it("starts anew a hair above that voltage and not a hair below, and stops everything meanwhile", () => {
    expect(types(play(packRig(dip * (1 - 1e-6), once)))).not.toContain("restarts")
    const out = play(packRig(dip * (1 + 1e-6), { ...once, stage: { duration: 5, restartTime: 2 } }))
    const restarts = out.events.filter((e) => e.type === "restarts")
    expect(restarts.map((e) => e.time)).toEqual([0, 2, 4])
    expect((restarts[0]?.voltage ?? 0) / dip).toBeCloseTo(1, 9)
    expect(last(out.motions[0]?.travel ?? [])).toBe(0)
    expect(restarts[0]?.sentence).toMatch(/^At 0 s the bus of receiver falls to .*all that moves on pack stops for 2 s\.$/)
  })
  it("stops what hangs on its own source, and nothing on another", () => {
    const rig = packRig(dip * 1.001, {
      programme: [
        { at: 0, motion: "arm", to: 1 },
        { at: 0, motion: "tail", to: 1 },
      ],
      stage: { duration: 3, restartTime: 2 },
    }) as { motions: object[]; power: { sources: object[]; buses: object[] } }
    const out = play({
      ...rig,
      motions: [rig.motions[0], { ...rig.motions[0], name: "tail", bus: "tail line" }],
      power: {
        ...rig.power,
        sources: [...rig.power.sources, { ...pack, name: "tail pack" }],
        buses: [...rig.power.buses, { name: "tail line", from: "tail pack" }],
      },
    })
    expect(out.events.filter((e) => e.type === "restarts").map((e) => e.time)).toEqual([0, 2])
    expect(last(out.motions[0]?.travel ?? [])).toBe(0)
    // alone on its pack it has the same start as where no controller is below its voltage
    const alone = play(packRig(0, { ...once, stage: { duration: 3 } }))
    expect(last(out.motions[1]?.travel ?? [])).toBeGreaterThan(0.1)
    expect(last(out.motions[1]?.travel ?? [])).toBeCloseTo(last(alone.motions[0]?.travel ?? []), 2)
  })
  it("starts anew however slowly its voltage falls, at once", () => {
    // a small pack empties through a lamp: by the steps of time, hundreds of them share one voltage to the last digit
    for (let k = 0; k < 16; k++) {
      const power = (resetVoltage: number) => ({
        sources: [{ ...pack, cellCapacity: "5 Ah" }],
        buses: [{ name: "line", from: "pack" }],
        loads: [{ type: "lights", name: "lamps", bus: "line", current: 0.2 }, controller(resetVoltage)],
      })
      const start = open - resistance * 0.25
      const least = start - 1e-5 * (1 + k / 7)
      const out = play(fedRig(power(least), { programme: [{ at: 5, motion: "arm", to: 0 }], stage: { duration: 5, restartTime: 10 } }))
      const [first] = out.events.filter((e) => e.type === "restarts")
      expect(first?.voltage ?? 0, `${k}`).toBeCloseTo(least, 9)
    }
  })
  it("starts anew where two motions begin together, and not where they begin one after the other", () => {
    const both = (second: number, resetVoltage: number) => {
      const rig = packRig(resetVoltage, {
        programme: [
          { at: 0, motion: "arm", to: 1 },
          { at: second, motion: "tail", to: 1 },
        ],
      }) as { motions: object[] }
      return { ...rig, motions: [rig.motions[0], { ...rig.motions[0], name: "tail" }] }
    }
    const together = (open - resistance * 0.05) / (1 + (2 * resistance) / 1.5)
    expect(types(play(both(0, together * (1 - 1e-9))))).not.toContain("restarts")
    expect(play(both(0, together * (1 + 1e-9))).events.find((e) => e.type === "restarts")?.time).toBe(0)
    // one that runs already gives current back while the other one pulls their bus down
    expect(types(play(both(0.5, dip * 0.999)))).not.toContain("restarts")
  })
})

describe("a source past its limit", () => {
  it("switches off after the time that it lets pass, and tries again", () => {
    const out = play({ ...limited({ limitAction: "hiccup", onTime: 0.004, offTime: 0.25 }), stage: { duration: 1 } })
    const first = (type: string) => out.events.find((e) => e.type === type)
    expect(first("overload")?.time).toBe(0)
    expect(first("overload")?.current).toBeCloseTo(12 / 1.6, 9)
    expect(first("switches-off")?.time).toBeCloseTo(0.004, 12)
    expect(first("tries-again")?.time).toBeCloseTo(0.254, 12)
    expect(Math.abs(out.energy.residual)).toBeLessThan(1e-6)
  })
  it("lets a start pass that is over sooner: the current is below its limit by then", () => {
    // I(t) falls with τ = J·R/k²: from 7.5 A to 3 A over the whole way of its fall
    const tau = (0.004 * 1.6) / 0.2 ** 2
    const rest = 0.2
    const passes = tau * Math.log((12 / 1.6 - rest) / (3 - rest))
    const played = (onTime: number) => types(play({ ...limited({ limitAction: "hiccup", onTime }), stage: { duration: 0.3 } }))
    expect(played(passes * 1.001)).not.toContain("switches-off")
    expect(played(passes * 0.999)).toContain("switches-off")
  })
  it("stays off where it latches", () => {
    const out = play(limited({ limitAction: "latch", onTime: 0.001 }))
    expect(types(out)).toContain("switches-off")
    expect(types(out)).not.toContain("tries-again")
    expect(out.steps[0]?.duration).toBeNull()
  })
  it("holds its current where it does that, and the motion takes longer", () => {
    const out = play(limited({ limitAction: "hold" }))
    expect(out.sources[0]?.peakCurrent).toBeLessThanOrEqual(3 * (1 + 1e-9))
    expect(out.sources[0]?.peakCurrent).toBeCloseTo(3, 6)
    expect(out.events.find((e) => e.type === "limited")).toMatchObject({ time: 0, subject: "bank" })
    const free = play({
      ...limited({ limitAction: "hold" }),
      power: {
        ...(limited({}).power as object),
        sources: [{ type: "bank", name: "bank", voltage: 12, currentLimit: 30, resistance: 0.1, energy: "40 Wh" }],
      },
    })
    expect(out.steps[0]?.duration ?? 0).toBeGreaterThan(free.steps[0]?.duration ?? 1e9)
    expect(Math.abs(out.energy.residual)).toBeLessThan(1e-6)
  })
})

describe("several limits that hold", () => {
  it("are all kept at once, those of converters and of what feeds them", () => {
    const out = play(
      fedRig(
        {
          sources: [{ type: "bank", name: "bank", voltage: 12, currentLimit: 1.5, resistance: 0.1, energy: "40 Wh" }],
          buses: [
            { name: "before", from: "bank", limitAction: "hold" },
            {
              name: "line",
              from: "before",
              limitAction: "hold",
              converter: {
                outputVoltage: 9,
                outputCurrentLimit: 1,
                efficiency: [{ outputCurrent: 1, efficiency: 0.9 }],
                minInputVoltage: 3,
                maxInputVoltage: 20,
              },
            },
          ],
          loads: [{ type: "resistive", name: "lamp", bus: "before", resistance: 9 }],
        },
        { ...once, stage: { duration: 0.05 } },
      ),
    )
    expect(out.sources[0]?.peakCurrent).toBeLessThanOrEqual(1.5 * (1 + 1e-9))
    expect(out.motions[0]?.peakCurrent).toBeLessThanOrEqual(1 + 1e-9)
    expect(Math.abs(out.energy.residual)).toBeLessThan(1e-6)
  })
})

describe("a converter that folds back", () => {
  const inputCurrentLimit = 1.2
  const converter = {
    outputVoltage: 9,
    inputCurrentLimit,
    efficiency: [{ outputCurrent: 1, efficiency: 0.9 }],
    minInputVoltage: 5,
    maxInputVoltage: 20,
  }
  const lamp = (resistance: number) =>
    play(
      fedRig(
        {
          sources: [{ type: "bank", name: "bank", voltage: 12, currentLimit: 30, resistance: 0, energy: "40 Wh" }],
          buses: [{ name: "line", from: "bank", converter }],
          loads: [{ type: "resistive", name: "lamp", bus: "line", resistance }],
        },
        { programme: [{ at: 0.1, motion: "arm", to: 1 }], stage: { duration: 0.3 } },
      ),
    ).events.filter((e) => e.type === "limited")
  // what it can bring: 12 V · 1.2 A · 90 % into a resistance at 9 V
  const least = 9 ** 2 / (12 * inputCurrentLimit * 0.9)
  it("is told when it does, with the voltage that is left", () => {
    expect(lamp(least * 1.001).map((e) => e.time)).toEqual([0.1])
    const [from] = lamp(least * 0.9)
    expect(from?.time).toBe(0)
    expect(from?.voltage).toBeCloseTo(Math.sqrt(12 * inputCurrentLimit * 0.9 * least * 0.9), 6)
    expect(from?.sentence).toMatch(/^At 0 s line is at its limit: it gives 1\.\d+ A and no more, and its voltage sinks to 8\.\d+ V\.$/)
  })
})

describe("the charge of a pack", () => {
  it("gives nothing once it is used up, from the instant on at which it is", () => {
    const empties = (stateOfCharge: number) =>
      play(
        fedRig(
          {
            sources: [{ ...pack, stateOfCharge }],
            buses: [{ name: "line", from: "pack" }],
            loads: [{ type: "lights", name: "lamps", bus: "line", current: 0.9 }],
          },
          { programme: [{ at: 3, motion: "arm", to: 1 }], stage: { duration: 4 } },
        ),
      )
    const out = empties(0.0005)
    const [empty] = out.events.filter((e) => e.type === "empty")
    // 0.05 % of 3600 A·s at 0.9 A
    expect(empty?.time).toBeCloseTo(2, 9)
    expect(last(out.motions[0]?.travel ?? [])).toBe(0)
    expect(last(out.sources[0]?.current ?? [])).toBe(0)
    expect(empties(0).events[0]).toMatchObject({ type: "empty", time: 0 })
    expect(empties(0).energy.source).toBe(0)
  })
  it("falls by the current over its capacity", () => {
    const out = play(packRig(0, { stage: { duration: 3 } }))
    const { times } = out
    const amps = out.sources[0]?.current ?? []
    const area = times.reduce((sum, t, i) => sum + ((t - (times[i - 1] ?? 0)) * ((amps[i] ?? 0) + (amps[i - 1] ?? 0))) / 2, 0)
    const charge = out.sources[0]?.charge ?? []
    expect(((charge[0] ?? 0) - last(charge)) / (area / 3600)).toBeCloseTo(1, 2)
    expect(last(charge)).toBeLessThan(0.8)
  })
})
