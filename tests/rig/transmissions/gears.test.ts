// Gears, worm, screw, belt and chain against free bodies, published figures and the domain's own torques.
import { describe, expect, it } from "vitest"
import { gearTrain } from "../../../src/drive/index.js"
import { belt } from "../../../src/rig/transmissions/belt.js"
import { chain } from "../../../src/rig/transmissions/chain.js"
import { type GearElement, gear } from "../../../src/rig/transmissions/gear.js"
import { screw } from "../../../src/rig/transmissions/screw.js"
import type { Transmission } from "../../../src/rig/transmissions/transmission.js"
import { worm } from "../../../src/rig/transmissions/worm.js"
import { isNoSolution, type SiOf } from "../../../src/solver/index.js"
import { between, built, readMember, samples, seeded, spread } from "../members.js"

const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)
/** Effort at an element's input for one against the motion at its output. */
const inputOf = (t: Transmission, effort: number) => {
  const through = effort * Math.abs(t.ratio(0))
  return t.drag + (effort > 0 ? through / t.forward : through * (t.backward - t.unlocking))
}

describe("without friction", () => {
  it("lets through all that it is given and not a digit more: screws and trains of every size", () => {
    const random = seeded(1)
    const [broken, sizes]: [string[], number] = [[], 400]
    for (let k = 0; k < sizes; k++) {
      const thread = { majorDiameter: between(random, 0.004, 0.1), pitch: between(random, 0.0005, 0.0035), starts: 1 + (k % 6) }
      const stages = Array.from({ length: 1 + (k % 4) }, () => ({
        ...{ type: "spur", drivingTeeth: 11 + Math.floor(20 * random()), drivenTeeth: 20 + Math.floor(70 * random()), meshEfficiency: 1 },
      }))
      const still = built<Transmission>(screw, { ...thread, threadFriction: 0 })
      const rolling = built<Transmission>(screw, { ...thread, screwEfficiency: 1 })
      for (const made of [still, rolling, built<Transmission>(gear, { stages })])
        if (made.backward !== 1 || made.unlocking !== 0 || made.forward !== 1) broken.push(JSON.stringify({ thread, stages, ...made }))
    }
    expect(broken).toEqual([])
  })
})

describe("gears", () => {
  it("have torque, play and inertia of the domain's train, lifting and letting down", () => {
    let [worst, locked] = [0, 0]
    for (const { si, made } of samples<Transmission>(gear, 80, seeded(13))) {
      const { stages, dragTorque, inputInertia } = si as SiOf<GearElement>
      for (const torque of [5, -5]) {
        const train = gearTrain.si({ stages, dragTorque, inputInertia, torque, inputSpeed: 1, loadInertia: 0, tipRadius: null })
        if (isNoSolution(train)) throw new Error("a train always answers")
        worst = Math.max(worst, off(inputOf(made, torque), train.inputTorque), off(Math.abs(made.ratio(1)), train.outputSpeed as number))
        worst = Math.max(worst, Math.abs(made.backlash - train.backlash), Math.abs(made.inertia - train.inertiaAtInput))
        expect(made.selfLocking).toBe(train.selfLocking)
        expect(made.ratio(1) < 0).toBe(train.reverses === true)
      }
      if (made.unlocking > 0) locked++
    }
    expect(worst).toBeLessThan(1e-9)
    expect(locked).toBeGreaterThan(5)
  })

  it("turn 975 to 52 revolutions in three pairs, the other way (Khurmi and Gupta, Theory of Machines, example 13.1)", () => {
    const pairs = [
      [20, 50],
      [25, 75],
      [26, 65],
    ] as const
    const stages = pairs.map(([drivingTeeth, drivenTeeth]) => ({ type: "spur", drivingTeeth, drivenTeeth }))
    expect(built<Transmission>(gear, { stages }).out(975)).toBeCloseTo(-52, 9)
  })

  it("twist by what their stiffness says, and tell a planet that does not fit at its place", () => {
    const stages = [{ type: "spur", drivingTeeth: 20, drivenTeeth: 40 }]
    expect(built<Transmission>(gear, { stages, rotationalStiffness: 250, maxTorque: "4 N m" })).toMatchObject({
      compliance: 0.004,
      strength: 4,
    })
    const wrong = readMember(gear, { stages: [...stages, { type: "planetary", drivingTeeth: 20, drivenTeeth: 22 }] })
    expect(wrong.issues.map((one) => one.path.join("."))).toEqual(["stages.1.drivenTeeth"])
  })
})

describe("worm", () => {
  // published as wedge force balance, the pressure angle left out: references row worm-forward-reverse-numeric
  const at = (leadAngle: string, friction = 0.08) =>
    built<Transmission>(worm, { drivingTeeth: 1, drivenTeeth: 30, leadAngle, friction, pressureAngle: 0 })

  it("drives and is driven by the wedge's force balance", () => {
    expect(at("4 deg").forward).toBeCloseTo(0.4637971709, 9)
    expect(at("14.04 deg").forward).toBeCloseTo(0.7424701616, 8)
    expect(at("14.04 deg").backward).toBeCloseTo(0.6667504193, 8)
    // backward it is below zero: nothing comes back, and so much has to be put in
    expect(at("4 deg").backward).toBe(0)
    expect(at("4 deg").unlocking).toBeCloseTo(0.1432519285, 9)
  })

  it("is counted on to hold only where half of its friction still does", () => {
    // tan 4° = 0.0699
    expect([at("4 deg", 0.08).selfLocking, at("4 deg", 0.139).selfLocking, at("4 deg", 0.141).selfLocking]).toEqual([false, false, true])
  })

  it("takes friction or efficiency, and one of them", () => {
    const paths = (more: object) =>
      readMember(worm, { drivingTeeth: 1, drivenTeeth: 30, leadAngle: "4 deg", ...more }).issues.map((one) => one.path.join("."))
    expect(paths({ wormEfficiency: 0.5 })).toEqual([])
    expect(paths({}).length).toBeGreaterThan(0)
    expect(paths({ wormEfficiency: 0.5, friction: 0.1 }).length).toBeGreaterThan(0)
  })
})

describe("screw", () => {
  it("raises and lowers 6.4 kN as published (Shigley, example 8-1)", () => {
    const jack = { majorDiameter: "32 mm", pitch: "4 mm", starts: 2, threadFriction: 0.08, collarFriction: 0.08, collarDiameter: "40 mm" }
    const made = built<Transmission>(screw, jack)
    expect(off(inputOf(made, 6400), 26.18)).toBeLessThan(0.004)
    // the collar alone holds it: it has to be turned down with 9.77 N·m, and nobody counts on the collar
    expect(off(inputOf(made, -6400), 9.77)).toBeLessThan(0.004)
    expect([made.backward, made.selfLocking]).toEqual([0, false])
    expect(made.out(2 * Math.PI)).toBeCloseTo(0.008, 12)
  })

  it("is a wedge wound up: forces on a square thread's flank, resolved along and across the axis", () => {
    const random = seeded(82)
    let locked = 0
    for (let k = 0; k < 60; k++) {
      const [majorDiameter, threadFriction, dragTorque] = [
        spread(random, 0.004, 0.05),
        spread(random, 0.02, 0.4),
        spread(random, 1e-4, 0.1),
      ]
      const [pitch, starts] = [majorDiameter * spread(random, 0.08, 0.4), 1 + Math.floor(3 * random())]
      const { issues } = readMember(screw, { majorDiameter, pitch, starts, threadFriction, dragTorque })
      expect(issues).toEqual([])
      const made = built<Transmission>(screw, { majorDiameter, pitch, starts, threadFriction, dragTorque })
      const mean = majorDiameter - pitch / 2
      const slope = Math.atan((pitch * starts) / (Math.PI * mean))
      // normal force N and friction on the flank carry an axial load of 1: N·(cos ∓ µ·sin) = 1; round the axis N·(sin ± µ·cos)
      const up = 1 / (Math.cos(slope) - threadFriction * Math.sin(slope))
      const down = 1 / (Math.cos(slope) + threadFriction * Math.sin(slope))
      const raise = (up * (Math.sin(slope) + threadFriction * Math.cos(slope)) * mean) / 2
      const lower = (down * (threadFriction * Math.cos(slope) - Math.sin(slope)) * mean) / 2
      expect(off(inputOf(made, 100), dragTorque + 100 * raise)).toBeLessThan(1e-10)
      expect(off(inputOf(made, -100), dragTorque + 100 * lower)).toBeLessThan(1e-9)
      if (lower > 0) locked++
      expect(made.backward === 0).toBe(lower > 0)
      expect(made.selfLocking).toBe(threadFriction / 2 > Math.tan(slope))
    }
    expect(locked).toBeGreaterThan(10)
    expect(locked).toBeLessThan(55)
  })

  it("is refused where its thread jams, and tells a pitch that leaves no core", () => {
    const steep = { majorDiameter: "10 mm", pitch: "8 mm", starts: 10, threadFriction: 0.9 }
    expect(() => built(screw, steep)).toThrow(/jams/)
    expect(readMember(screw, { ...steep, pitch: "9.5 mm" }).issues.map((one) => one.path)).toEqual([["pitch"]])
  })
})

describe("belt", () => {
  const drive = { centreDistance: "200 mm", pretension: "60 N" }
  const smooth = { drivingDiameter: "30 mm", drivenDiameter: "60 mm", friction: 0.3 }

  it("carries what its pretension grips, slice by slice round the smaller pulley", () => {
    for (const [one, groove] of [
      [{ type: "flat", ...smooth }, Math.PI],
      [{ type: "flat", ...smooth, crossed: true }, Math.PI],
      [{ type: "round", ...smooth, grooveAngle: "60 deg" }, Math.PI / 3],
      [{ type: "v", ...smooth, grooveAngle: "38 deg" }, (38 * Math.PI) / 180],
    ] as const) {
      const made = built<Transmission>(belt, { ...drive, belt: one })
      const crossed = "crossed" in one
      const wrap = crossed ? Math.PI + 2 * Math.asin(0.045 / 0.2) : Math.PI - 2 * Math.asin(0.015 / 0.2)
      // each slice is pressed by both flanks: dT = µ·T·dθ / sin(β/2)
      let tension = 1
      const slices = 200_000
      for (let k = 0; k < slices; k++) tension *= 1 + (0.3 * wrap) / slices / Math.sin(groove / 2)
      const pull = (2 * 60 * (tension - 1)) / (tension + 1)
      expect(off(made.strength as number, pull * 0.03)).toBeLessThan(1e-4)
      expect(made.ratio(0)).toBeCloseTo(crossed ? -0.5 : 0.5, 12)
    }
  })

  it("on teeth carries until its slack strand hangs loose, twice the pretension", () => {
    const made = built<Transmission>(belt, { ...drive, belt: { type: "toothed", pitch: "2 mm", drivingTeeth: 20, drivenTeeth: 50 } })
    expect(made.strength).toBeCloseTo((2 * 60 * 0.002 * 50) / (2 * Math.PI), 10)
    expect(made.out(5)).toBeCloseTo(2, 12)
    expect([made.forward, made.backward]).toEqual([0.95, 0.95])
  })

  it("tells pulleys that touch", () => {
    const wrong = readMember(belt, { belt: { type: "flat", ...smooth }, centreDistance: "45 mm", pretension: "60 N" })
    expect(wrong.issues.map((one) => one.path)).toEqual([["centreDistance"]])
  })
})

describe("chain", () => {
  const links = { pitch: "9.525 mm", drivingTeeth: 15, drivenTeeth: 45, centreDistance: "300 mm" }

  it("turns by its teeth and breaks where a link, nearest to the shaft, is pulled with its jolts", () => {
    const made = built<Transmission>(chain, { ...links, breakingForce: "8 kN", shockFactor: 1.4, backwardEfficiency: 0.9 })
    expect(made.out(3)).toBeCloseTo(1, 12)
    // corners of a regular polygon of 45 sides of one pitch; halfway along a side the chain is nearest to the shaft
    const corner = [0, 1].map((k) => (2 * Math.PI * k) / 45)
    const radius = 0.009525 / Math.hypot(Math.cos(corner[1]!) - 1, Math.sin(corner[1]!))
    const nearest = (radius * Math.hypot(1 + Math.cos(corner[1]!), Math.sin(corner[1]!))) / 2
    expect(off(made.strength as number, (8000 / 1.4) * nearest)).toBeLessThan(1e-10)
    expect([made.forward, made.backward]).toEqual([0.96, 0.9])
    expect(built<Transmission>(chain, links).strength).toBe(null)
  })

  it("tells sprockets whose teeth touch", () => {
    expect(readMember(chain, { ...links, centreDistance: "90 mm" }).issues.map((one) => one.path)).toEqual([["centreDistance"]])
  })
})
