// Drum, cable and antagonist against turn-by-turn winding, slices of sheath, and the domain's winch and quadrant.
import { describe, expect, it } from "vitest"
import { winch } from "../../../src/drive/index.js"
import { cableQuadrant } from "../../../src/linkage/index.js"
import { antagonist } from "../../../src/rig/transmissions/antagonist.js"
import { cable } from "../../../src/rig/transmissions/cable.js"
import { type DrumElement, drum } from "../../../src/rig/transmissions/drum.js"
import type { Transmission } from "../../../src/rig/transmissions/transmission.js"
import { isNoSolution, type SiOf } from "../../../src/solver/index.js"
import { built, readMember, samples, seeded } from "../members.js"

const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)

// the winch that lifts the lantern moth's wings; figures invented
const small = { drumDiameter: "20 mm", lineDiameter: "2 mm", turnsPerLayer: 5, lineLength: "1.6 m", travel: "1.4 m" }

describe("drum", () => {
  it("winds turn upon turn: length and radius by counting circles", () => {
    const made = built<Transmission>(drum, { ...small, layerRise: 0.9 })
    const radius = (turn: number) => 0.011 + 0.0018 * Math.floor(turn / 5)
    // line on the drum at the start, wound a thousandth of a turn at a time
    let turns = 0
    for (let length = 0; length < 0.2 - 1e-9; turns++) length += (2 * Math.PI * radius(turns / 1000)) / 1000
    const start = turns / 1000
    const wound = (from: number, to: number) => {
      let length = 0
      for (let k = Math.round(from * 1000); k < Math.round(to * 1000); k++) length += (2 * Math.PI * radius(k / 1000)) / 1000
      return length
    }
    for (const more of [1, 3, 6, 9, 12]) expect(Math.abs(made.out(2 * Math.PI * more) - wound(start, start + more))).toBeLessThan(4e-4)
    expect(made.kinks.map((angle) => angle / (2 * Math.PI) + start).map((turn) => Math.round(turn * 100) / 100)).toEqual([5, 10, 15])
    for (const [k, kink] of made.kinks.entries()) {
      expect(made.ratio(kink - 1e-6)).toBeCloseTo(0.011 + 0.0018 * k, 12)
      expect(made.ratio(kink + 1e-6)).toBeCloseTo(0.011 + 0.0018 * (k + 1), 12)
    }
    expect(made.out(made.high)).toBeCloseTo(1.4, 9)
    expect(made.out(made.low)).toBeCloseTo(-0.2, 9)
  })

  it("has turns, layers, torque and strength of the domain's winch", () => {
    let judged = 0
    for (const { si, made } of samples<Transmission>(drum, 120, seeded(11))) {
      const given = si as SiOf<DrumElement>
      const { lineLength, travel, lineType } = given
      if (lineLength === null || travel === null || travel < 1e-3) continue
      const { type: _, inertia: __, ...same } = given
      const asked = { ...same, lineLength, travel, lineType: lineType ?? ("fibre-rope" as const), pull: 30, lineFriction: 0.1 }
      const out = winch.si({ ...asked, torque: null, speed: null, holdingTorque: null })
      if (isNoSolution(out)) throw new Error(out.message)
      judged++
      expect(off(made.high / (2 * Math.PI), out.drumTurns)).toBeLessThan(1e-9)
      expect(made.kinks.filter((kink) => kink > 1e-6).length).toBe(out.outerLayer - out.innerLayer)
      const [first, last] = [made.ratio(1e-9 * made.high), made.ratio(made.high * (1 - 1e-9))]
      expect(off(first, out.paidOut.radius)).toBeLessThan(1e-9)
      expect(off(last, out.woundIn.radius)).toBeLessThan(1e-9)
      expect(off(made.drag + (30 * last) / made.forward, out.raiseTorque)).toBeLessThan(1e-9)
      expect(off(made.drag - 30 * last * made.backward, out.lowerTorque)).toBeLessThan(1e-9)
      if (made.strength !== null) expect(off(made.strength / 30, out.lineSafetyFactor as number)).toBeLessThan(1e-9)
    }
    expect(judged).toBeGreaterThan(20)
  })

  it("pulls less layer by layer at one torque, as published of an electric winch (8000, 6777, 5878, 5189 pounds)", () => {
    // its second layer tells how much each adds: 18.05 % of the first radius
    const step = 8000 / 6777 - 1
    const lineDiameter = 0.006
    const made = built<Transmission>(drum, {
      drumDiameter: (2 * lineDiameter) / step - lineDiameter,
      lineDiameter,
      turnsPerLayer: 8,
      lineLength: 10,
      travel: 10,
      efficiency: 1,
    })
    const radii = [made.low, ...made.kinks].map((at) => made.ratio(at + 1e-6))
    for (const [layer, pull] of [8000, 6777, 5878, 5189].entries())
      expect(off((8000 * radii[0]!) / radii[layer]!, pull)).toBeLessThan(0.001)
  })

  it("takes all of the line for one layer where nothing says how it lies", () => {
    const made = built<Transmission>(drum, { drumDiameter: "40 mm", lineDiameter: "2 mm" })
    expect(made.out(10)).toBeCloseTo(0.21, 12)
    expect([made.kinks, made.low, made.high, made.strength]).toEqual([[], Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, null])
  })

  it("is refused where the line does not fit below the flanges, and tells what has to go together", () => {
    expect(() => built(drum, { ...small, flangeDiameter: "26 mm" })).toThrow(/drum is full/)
    const paths = (more: object) => readMember(drum, { ...small, ...more }).issues.map((one) => one.path.join("."))
    expect(paths({ travel: "1.7 m" })).toEqual(["travel"])
    expect(paths({ travel: null })).toEqual(["travel"])
    expect(paths({ drumWidth: "12 mm" })).toEqual(["turnsPerLayer"])
    expect(paths({ turnsPerLayer: null })).toEqual(["lineLength"])
    expect(paths({ lineStrength: "600 N" })).toEqual(["lineStrength"])
    expect(paths({ lineStrength: "600 N", lineType: "wire-rope" })).toEqual([])
    // wire rope bent to eleven diameters keeps about 87 % (sheave tables: 0.86 at 10, 0.89 at 15)
    const bent = built<Transmission>(drum, { ...small, drumDiameter: "22 mm", lineStrength: "600 N", lineType: "wire-rope" })
      .strength as number
    expect(bent / 600).toBeCloseTo(0.86 + (0.89 - 0.86) / 5, 9)
    expect(built<Transmission>(drum, { ...small, lineStrength: "600 N", lineType: "fibre-rope" }).strength).toBe(600)
  })
})

const wire = { length: "1.2 m", diameter: "1.5 mm", construction: "7x7-stainless", breakingForce: "1500 N" }
const sheathed = {
  ...wire,
  route: {
    type: "sheath",
    bends: [
      { angle: "90 deg", radius: "80 mm" },
      { angle: "50 deg", radius: "60 mm" },
    ],
    friction: 0.12,
    sheathRate: 2e5,
    sheathBore: "2 mm",
  },
}

describe("cable", () => {
  it("loses tension slice by slice along its sheath, both ways", () => {
    const made = built<Transmission>(cable, sheathed)
    const slices = 100_000
    const turned = (140 * Math.PI) / 180
    let [pulled, paidOut] = [1, 1]
    for (let k = 0; k < slices; k++) {
      pulled += (0.12 * pulled * turned) / slices
      paidOut -= (0.12 * paidOut * turned) / slices
    }
    expect(off(made.forward, 1 / pulled)).toBeLessThan(1e-5)
    expect(off(made.backward, paidOut)).toBeLessThan(1e-5)
    // the play of the bore in the bends
    expect(made.backlash).toBeCloseTo(turned * 0.0005, 12)
  })

  it("brings 36 pounds into a bend of 90° at 0.5 out as 79 (conduit manual, p. 69)", () => {
    const route = { type: "sheath", bends: [{ angle: "90 deg", radius: "100 mm" }], friction: 0.5 }
    expect(off(36 / built<Transmission>(cable, { ...wire, route }).forward, 79)).toBeLessThan(0.0065)
  })

  it("stretches by the mean of both tensions along cable and sheath, and breaks where it is pulled most", () => {
    const made = built<Transmission>(cable, { ...sheathed, construction: undefined, area: "1 mm2", modulus: "80 GPa" })
    const mean = (1 + 1 / made.forward) / 2
    expect(off(made.compliance, mean * (1.2 / (1e-6 * 80e9) + 1 / 2e5))).toBeLessThan(1e-9)
    // 60 mm of radius are 80 cable diameters: the sheave tables end at 95 %
    expect(off(made.strength as number, 0.95 * 1500 * made.forward)).toBeLessThan(1e-9)
  })

  it("is refused where its bends leave next to nothing, and tells bends tighter than the cable", () => {
    const bends = Array.from({ length: 12 }, () => ({ angle: "1000 deg", radius: "80 mm" }))
    expect(() => built(cable, { ...wire, route: { type: "sheath", bends, friction: 0.5 } })).toThrow(/breaks/)
    const tight = { type: "sheath", bends: [{ angle: "90 deg", radius: "0.6 mm" }], friction: 0.1 }
    expect(readMember(cable, { ...wire, route: tight }).issues.map((one) => one.path.join("."))).toEqual(["route.bends.0.radius"])
  })
})

describe("antagonist", () => {
  const pair = { ...sheathed, drivingDiameter: "40 mm", drivenDiameter: "100 mm", pretension: "25 N" }

  it("turns against friction of both cables: the tight one pulled, the slack one paid out at its pretension", () => {
    const made = built<Transmission>(antagonist, pair)
    const strain = Math.exp((0.12 * 140 * Math.PI) / 180)
    for (const moment of [0, 0.4, -0.4]) {
      const load = moment / 0.05
      // far end: what pulls on less what pulls back is the load, the slack one of them at its pretension
      const [onward, backward] = load >= 0 ? [25 + load, 25] : [25, 25 - load]
      const torque = 0.02 * (onward * strain - backward / strain)
      const through = moment * made.ratio(0)
      const effort = made.drag + (moment >= 0 ? through / made.forward : through * made.backward)
      expect(off(effort, torque)).toBeLessThan(1e-9)
    }
    expect([made.takes, made.gives, made.transmits, made.backlash]).toEqual(["angle", "angle", "both-ways", 0])
    expect(made.ratio(0)).toBeCloseTo(0.4, 12)
  })

  it("goes slack and twists as the domain's quadrant does", () => {
    const single = built<Transmission>(cable, sheathed)
    const made = built<Transmission>(antagonist, pair)
    const load = 1.5
    const quadrant = cableQuadrant.attempt({
      radius: 0.05,
      startAngle: 0,
      travel: "20 deg",
      wrap: "90 deg",
      cableStiffness: 1 / single.compliance,
      pretension: 200,
      returnedBy: { type: "cable", radius: 0.05, stiffness: 1 / single.compliance, wrap: "90 deg", rimAngle: "300 deg" },
      masses: [{ mass: "0.1 g", radius: 0 }],
      loadMoment: load,
    })
    if (!quadrant.ok) throw quadrant.error
    expect(off(made.compliance, 1 / quadrant.value.rotationalStiffness)).toBeLessThan(1e-9)
    // the load that makes this pair go slack, asked as the pretension that a load needs
    const needed = quadrant.value.requiredPretension
    expect(off(built<Transmission>(antagonist, { ...pair, pretension: needed }).strength as number, load)).toBeLessThan(1e-9)
  })

  it("may move a slide instead, and bears its pretension only while the cable does", () => {
    const slide = built<Transmission>(antagonist, { ...pair, drivenDiameter: null })
    expect([slide.gives, slide.out(2), slide.strength]).toEqual(["length", 0.04, 50])
    const strength = built<Transmission>(cable, sheathed).strength as number
    const near = built<Transmission>(antagonist, { ...pair, drivenDiameter: null, pretension: 0.9 * strength }).strength as number
    expect(off(near, 0.1 * strength)).toBeLessThan(1e-9)
    expect(() => built(antagonist, { ...pair, pretension: 1.01 * strength })).toThrow(/more than the cable bears/)
    const thick = { ...pair, diameter: "6 mm", drivingDiameter: "5 mm", route: { ...pair.route, sheathBore: "7 mm" } }
    expect(readMember(antagonist, thick).issues.map((one) => one.path)).toEqual([["drivingDiameter"]])
  })
})
