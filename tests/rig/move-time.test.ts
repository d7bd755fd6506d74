import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { moveTime, type RigDocument } from "../../src/rig/index.js"
import type { ArmModel } from "../../src/rig/motion/arms.js"
import { constantsOf, solveMove } from "../../src/rig/move/move.js"
import { stiff } from "../../src/rig/power/circuit.js"
import { type AnyFields, InputError, isNoSolution, NoSolutionError } from "../../src/solver/index.js"
import { inputs } from "../helpers/arbitrary.js"
import { demo, stiffRig } from "../helpers/rigs.js"
import { timeByStepping } from "./time-domain.js"

const cells = demo("lantern-moth-cells")
const bank = demo("lantern-moth-bank")
const hinged = cells.hinged!

/** Rigs that differ in what bends the curve: limits part of the way, springs, lean, axis offset, the other side. */
const variants: Readonly<Record<string, RigDocument>> = {
  cells,
  bank,
  "limit that binds part of the way": {
    ...bank,
    bank: { ...bank.bank!, currentLimit: "3 A" },
    converter: { ...bank.converter!, outputVoltage: "9 V" },
  },
  "spring that goes slack": {
    ...cells,
    hinged: {
      ...hinged,
      spring: { stiffness: "300 N/m", freeLength: "270 mm", fixedPivot: { x: "60 mm", y: "150 mm" }, radius: "180 mm" },
    },
  },
  "leaning, axis offset": { ...cells, hinged: { ...hinged, frameTilt: "14 deg", axisOffset: "12 mm" } },
  "drawn in to raise": {
    ...cells,
    hinged: {
      ...hinged,
      fixedPivot: { x: 0, y: "190 mm" },
      movingPivot: { ...hinged.movingPivot, angle: "25 deg" },
      assembly: "clockwise",
      raised: "retracted",
      actuator: { ...hinged.actuator },
    },
  },
}

describe("moveTime against time stepping (second route: Runge–Kutta in time, other geometry, other circuit)", () => {
  it.each(Object.entries(variants))("%s", (_, rig) => {
    const si = moveTime.read(rig)
    const move = moveTime(rig)
    const up = si.hinged!.raised === "extended" ? 1 : -1
    for (const [time, direction] of [
      [move.raiseTime, up],
      [move.lowerTime, -up],
    ] as [number, 1 | -1][]) {
      const stepped = timeByStepping(si, direction)
      expect(Math.abs(time / stepped - 1), `${time} s, stepping ${stepped} s`).toBeLessThan(1e-6)
    }
  })
  it("meets a limit that binds only part of the way in one of them", () => {
    const share = moveTime(variants["limit that binds part of the way"]!).raise.limitedShare
    expect(share).toBeGreaterThan(0.05)
    expect(share).toBeLessThan(0.95)
  })
})

describe("moveTime against closed forms", () => {
  it("constant force on a stiff supply: t = S·kV / (V − I·R)", () => {
    const arms = moveTime.read(cells).hinged!
    const constants = constantsOf(arms)
    const lever = 0.05
    for (const moment of [0, 1, 2.5]) {
      const arm: ArmModel = {
        geometry: { hinge: { x: 0, y: 0 }, fixedPivot: { x: 0, y: -1 }, movingPivot: { radius: 1, angle: 0 }, axisOffset: 0 },
        angleAt: (stroke) => stroke / lever,
        leverAt: () => lever,
        momentAt: () => moment,
        energyAt: (angle) => moment * angle,
        springStretchAt: () => 0,
        inertia: 0,
      }
      const solved = solveMove({ arms: { ...arms, hingeFriction: 0 }, arm, constants, circuit: stiff(11), breaks: [] }, 1)
      if (isNoSolution(solved)) throw new Error(solved.message)
      const current =
        arms.actuator.noLoadCurrent +
        (moment / lever) * ((arms.actuator.ratedCurrent - arms.actuator.noLoadCurrent) / arms.actuator.ratedForce)
      const time = (arms.actuator.stroke * constants.backEmfConstant) / (11 - current * constants.windingResistance)
      expect(Math.abs(solved.totals.time / time - 1)).toBeLessThan(1e-12)
    }
  })
  it("rated force at rated voltage takes the rated time", () => {
    const { actuator } = moveTime.read(cells).hinged!
    const { windingResistance, backEmfConstant } = constantsOf(moveTime.read(cells).hinged!)
    expect((actuator.ratedVoltage - actuator.ratedCurrent * windingResistance) / backEmfConstant).toBeCloseTo(actuator.ratedSpeed, 15)
    expect((actuator.ratedVoltage - actuator.noLoadCurrent * windingResistance) / backEmfConstant).toBeCloseTo(actuator.noLoadSpeed, 15)
  })
})

describe("a fact of the trade (common practice, no source)", () => {
  // a pair rated 10 s per stroke took about 20 s from a 5 V bank through a step-up and about 12 s from 3S2P cells
  it.each([
    ["rated supply", 10, stiffRig()],
    ["5 V battery bank through a step-up to 12 V", 20, bank],
    ["two parallel strings of three 18650 cells in series", 12, cells],
  ] as const)("%s: about %d s", (_, seconds, rig) => {
    const { raiseTime } = moveTime(rig)
    expect(Math.abs(raiseTime / seconds - 1), `${raiseTime} s against ${seconds} s`).toBeLessThan(0.15)
  })
})

describe("energy account", () => {
  it("closes to 1e-9 for random rigs, and what is lifted is the rise of potential energy", () => {
    for (const rig of [cells, bank]) {
      let closed = 0
      fc.assert(
        fc.property(inputs(moveTime.input as unknown as AnyFields, rig as unknown as Record<string, unknown>), (input) => {
          const outcome = moveTime.attempt(input)
          if (!outcome.ok) return
          closed++
          const { raise, lower } = outcome.value
          expect(Math.abs(raise.energy.residual)).toBeLessThan(1e-9)
          expect(Math.abs(lower.energy.residual)).toBeLessThan(1e-9)
          expect(Math.abs(raise.energy.lifted + lower.energy.lifted)).toBeLessThan(1e-9 * Math.max(1, Math.abs(raise.energy.lifted)))
        }),
        { numRuns: 60 },
      )
      expect(closed).toBeGreaterThan(10)
    }
  })
  it("reports an error estimate and how many points it took", () => {
    const move = moveTime(bank)
    expect(move.errorEstimate).toBeLessThan(1e-6 * move.cycleTime)
    expect(move.evaluations).toBeGreaterThan(0)
  })
})

describe("waterfall", () => {
  it.each(Object.entries(variants))("%s: ends at the move's own time and its parts add up", (_, rig) => {
    const { raise, lower } = moveTime(rig)
    for (const move of [raise, lower]) {
      expect(move.waterfall.at(-1)!.time).toBe(move.time)
      expect(move.waterfall.reduce((sum, s) => sum + s.added, 0)).toBeCloseTo(move.time, 9)
    }
  })
  it("names the bank's limit where that costs most, and adds nothing for wires on a stiff supply", () => {
    expect(moveTime(bank).limit).toBe("the converter's or bank's current limit")
    expect(
      moveTime(stiffRig())
        .raise.waterfall.slice(2)
        .every((s) => Math.abs(s.added) < 1e-9),
    ).toBe(true)
  })
})

describe("what a move grows with", () => {
  const time = (change: (rig: RigDocument) => RigDocument, rig = cells) => moveTime(change(rig)).raiseTime
  it("heavier arms, thinner wire, weaker cells and a lower bank limit never make it faster", () => {
    const mass = [0.5, 1, 1.3].map((f) =>
      time((r) => ({ ...r, hinged: { ...r.hinged!, masses: [{ name: "all", mass: 0.5 * f, radius: 0.55 }] } })),
    )
    const wire = [16, 20, 24].map((awg) => time((r) => ({ ...r, wiring: { ...r.wiring!, source: { ...r.wiring!.source, awg } } })))
    const charge = [0.9, 0.5, 0.2].map((stateOfCharge) => time((r) => ({ ...r, pack: { ...r.pack!, stateOfCharge } })))
    const limit = [4, 3, 2.2].map((currentLimit) => time((r) => ({ ...r, bank: { ...r.bank!, currentLimit } }), bank))
    for (const row of [mass, wire, charge, limit]) expect(row).toEqual([...row].sort((a, b) => a - b))
  })
})

describe("refusals", () => {
  it("a stall says at which angle, what force it needs and what it gets", () => {
    const heavy: RigDocument = { ...bank, hinged: { ...hinged, masses: [{ name: "far too much", mass: "3 kg", radius: "700 mm" }] } }
    const outcome = moveTime.attempt(heavy)
    if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    const { error } = outcome
    expect(error.noSolution).toBe("insufficient-force")
    expect(error.message).toMatch(/stalls at -?[\d.]+°.*needs [\d.]+ N.*give [\d.]+ N/)
    expect(error.at.force! - error.at.available!).toBeCloseTo(error.shortBy, 9)
    // the nearest weight that would work does, and a little more does not
    const scaled = (factor: number) =>
      moveTime.attempt({
        ...heavy,
        hinged: { ...heavy.hinged!, hingeFriction: 0, masses: [{ name: "less", mass: 3 * factor, radius: 0.7 }] },
      })
    const withoutFriction = moveTime.attempt({ ...heavy, hinged: { ...heavy.hinged!, hingeFriction: 0 } })
    const factor = (withoutFriction as { error: NoSolutionError }).error.nearest.massFactor!
    expect(scaled(factor * 0.97).ok).toBe(true)
    expect(scaled(factor * 1.05).ok).toBe(false)
  })
  it.each([
    ["cannot-close", { ...cells, hinged: { ...hinged, actuator: { ...hinged.actuator, stroke: "180 mm" } } }],
    ["no-supply", { ...bank, converter: { ...bank.converter!, minInputVoltage: "5.5 V" } }],
  ] as [string, RigDocument][])("%s", (code, rig) => {
    const outcome = moveTime.attempt(rig)
    expect(
      !outcome.ok && outcome.error instanceof NoSolutionError && outcome.error.noSolution,
      outcome.ok ? "answered" : outcome.error.message,
    ).toBe(code)
  })
})

describe("bad documents", () => {
  it("lists every fault with its path and computes nothing", () => {
    const bad = {
      version: 2,
      name: "bad",
      hinged: { ...hinged, hinge: { x: "60 kg", y: 0 }, movingPivt: 1, masses: [{ name: "a", mass: -1, radius: 1 }] },
      pack: { ...cells.pack, chemistry: "coal" },
      wiring: { source: { length: Number.NaN, awg: 20 } },
    }
    const outcome = moveTime.attempt(bad)
    if (outcome.ok || !(outcome.error instanceof InputError)) throw new Error("expected an InputError")
    const paths = outcome.error.issues.map((i) => i.path.join("."))
    expect(paths.sort()).toEqual([
      "hinged.hinge.x",
      "hinged.masses.0.mass",
      "hinged.movingPivt",
      "pack.chemistry",
      "version",
      "wiring.source.length",
    ])
    expect(outcome.error.message).toContain("did you mean 'movingPivot'?")
  })
  it("says which sections a move needs", () => {
    const outcome = moveTime.attempt({ version: 1, name: "bare" })
    if (outcome.ok || !(outcome.error instanceof InputError)) throw new Error("expected an InputError")
    expect(outcome.error.issues.map((i) => [i.code, i.path.join(".")])).toEqual([
      ["missing", "hinged"],
      ["missing", "pack"],
      ["missing", "wiring"],
    ])
  })
})
