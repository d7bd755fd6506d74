import { describe, expect, it } from "vitest"
import { scissor, sliderCrank, standardGravity } from "../../../src/linkage/index.js"
import type { Mechanism, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { scissorMechanism } from "../../../src/rig/mechanisms/scissor.js"
import { sliderCrankMechanism } from "../../../src/rig/mechanisms/slider-crank.js"
import { built } from "../members.js"
import { beside, heldEffort, meeting, rodMasses } from "./crank-route.js"
import { drawMechanisms, placesIn, randomNumbers } from "./draw.js"
import { changesForm, type Load, minus, sizeOf, stepOf, total, triple, turning, type V, weights } from "./loads.js"
import { type ArmPart, cordEnergy, holdsMechanism, type Point, type SecondRoute, stateAt } from "./second-route.js"

interface SliderPart {
  readonly crankPivot: Point
  readonly slideAngle: number
  readonly crank: number
  readonly coupler: number
  readonly offset: number
  readonly assembly: string
  readonly sliderMass: number
  readonly couplerMass: number
  readonly crankMasses: ArmPart["masses"]
  readonly frontArea: number
  readonly springs: readonly { stiffness: number; freeLength: number; fixedPivot: Point }[]
  readonly guideFriction: number
}

/** Crank pivot, crank pin and slider pin: the line of the slide met with the circle of the rod, as a quadratic. */
function sliderPins(si: SliderPart, q: number): readonly [V, V, V] {
  const [ux, uy] = [Math.cos(si.slideAngle), Math.sin(si.slideAngle)]
  const pivot: V = [si.crankPivot.x, si.crankPivot.y]
  const pin: V = [pivot[0] + si.crank * Math.cos(q + si.slideAngle), pivot[1] + si.crank * Math.sin(q + si.slideAngle)]
  const foot: V = [pivot[0] - si.offset * uy, pivot[1] + si.offset * ux]
  const [dx, dy] = [foot[0] - pin[0], foot[1] - pin[1]]
  const half = dx * ux + dy * uy
  const root = Math.sqrt(half * half - (dx * dx + dy * dy - si.coupler ** 2))
  const run = -half + (si.assembly === "open" ? root : -root)
  return [pivot, pin, [foot[0] + run * ux, foot[1] + run * uy]]
}

function sliderRoute(si: SliderPart): SecondRoute {
  const [ux, uy] = [Math.cos(si.slideAngle), Math.sin(si.slideAngle)]
  return {
    masses: (q) => {
      const [pivot, crankPin, pin] = sliderPins(si, q)
      return [
        ...si.crankMasses.map((m) => ({
          mass: m.mass,
          at: triple(beside(pivot, crankPin, m.radius * Math.cos(m.angle), m.radius * Math.sin(m.angle))),
        })),
        ...rodMasses(si.couplerMass, crankPin, pin),
        { mass: si.sliderMass, at: triple(pin) },
      ]
    },
    energy: (q) =>
      si.springs.reduce(
        (sum, s) => sum + cordEnergy(s.stiffness, s.freeLength, triple(sliderPins(si, q)[2]), [s.fixedPivot.x, s.fixedPivot.y, 0]),
        0,
      ),
    panels: (q) => [{ area: si.frontArea, at: triple(sliderPins(si, q)[2]), normal: [ux, uy, 0] }],
    rubs: (q) => [{ moment: si.guideFriction, turn: sliderPins(si, q)[2][0] * ux + sliderPins(si, q)[2][1] * uy }],
  }
}

describe("slider-crank", () => {
  const drawn = drawMechanisms(sliderCrankMechanism, 20, 71).found
  it("moves masses and springs as a quadratic for the slide says, up to where it has no root", () => {
    const random = randomNumbers(15)
    for (const { mechanism, si } of drawn) {
      const part = si as unknown as SliderPart
      for (const q of placesIn(mechanism, 3, random)) {
        const h = stepOf(mechanism)
        if (!changesForm(mechanism, q, h)) holdsMechanism(mechanism, sliderRoute(part), q, h, 3e-6)
      }
      const reaches = (q: number) => sliderPins(part, q)[2].every(Number.isFinite)
      for (const [end, way] of [
        [mechanism.low, -1],
        [mechanism.high, 1],
      ] as const)
        if (Number.isFinite(end)) {
          expect(reaches(end + way * 1e-6)).toBe(false)
          expect(reaches(end - way * 1e-6)).toBe(true)
        }
      const [from, to] = [Math.max(mechanism.low, -7), Math.min(mechanism.high, 7)]
      for (let k = 1; k < 200; k++) expect(reaches(from + ((to - from) * k) / 200)).toBe(true)
      expect(mechanism.start).toBeGreaterThan(mechanism.low)
      expect(mechanism.start).toBeLessThan(mechanism.high)
    }
  })
  it("stands at the very ends of what its rod reaches, at the height of a rod square to the slide", () => {
    const document = { crank: "30 mm", startAngle: "180 deg", sliderMass: "1 kg" }
    for (let coupler = 0.003; coupler < 0.03; coupler += 2e-4)
      for (const offset of [-0.0013, 0, 0.0017]) {
        const mechanism = built<Mechanism>(sliderCrankMechanism, { ...document, coupler, offset })
        for (const end of [mechanism.low, mechanism.high]) {
          // there the slider is beside the crank pin
          expect(mechanism.pose(end).shown).toBeCloseTo(0.03 * Math.cos(end), 8)
          expect(Math.abs(0.03 * Math.sin(end) - offset)).toBeCloseTo(coupler, 12)
        }
      }
  })
  it("ends where its rod, just long enough, stands square to the slide: the slider could go either way from there", () => {
    const document = { crank: "30 mm", sliderMass: "1 kg" }
    const as = (more: object) => built<Mechanism>(sliderCrankMechanism, { ...document, ...more })
    const quarter = Math.PI / 2
    // the pin is a rod away from the slide line at a quarter turn: both ways where the rod is as long as the crank
    const like = as({ coupler: "30 mm", startAngle: "10 deg" })
    expect([like.low, like.high]).toEqual([expect.closeTo(-quarter, 12), expect.closeTo(quarter, 12)])
    const above = as({ coupler: 0.04, offset: -0.01, startAngle: "10 deg" })
    expect([above.low, above.high]).toEqual([expect.closeTo(-3 * quarter, 12), expect.closeTo(quarter, 12)])
    const below = as({ coupler: 0.04, offset: 0.01, startAngle: "10 deg" })
    expect([below.low, below.high]).toEqual([expect.closeTo(-quarter, 12), expect.closeTo(3 * quarter, 12)])
  })
  it("pins and guide: crank, rod and slider each in balance", () => {
    const random = randomNumbers(16)
    for (const { mechanism, si } of drawn) {
      const part = si as unknown as SliderPart
      const [q] = placesIn(mechanism, 1, random) as [number]
      const down: Triple = [2 * random() - 1, -standardGravity, 2 * random() - 1]
      const effort = heldEffort(stateAt(mechanism, q), down)
      const [pivot, crankPin, pin] = sliderPins(part, q)
      const masses = sliderRoute(part).masses(q)
      const cranked = part.crankMasses.length
      for (const beyond of [0, 0.5]) {
        const force = new Map(mechanism.reactions(q, effort + beyond, down).map((r) => [r.name, r.force]))
        const of = (name: string) => force.get(name) as Triple
        const crank = [
          ...weights(masses.slice(0, cranked), down),
          { at: crankPin, force: of("crank pin") },
          { at: pivot, force: minus(of("crank pivot")) },
        ]
        const rod = [
          ...weights(masses.slice(cranked, -1), down),
          { at: crankPin, force: minus(of("crank pin")) },
          { at: pin, force: minus(of("slider pin")) },
        ]
        const cords = part.springs.map((s) => {
          const [dx, dy] = [s.fixedPivot.x - pin[0], s.fixedPivot.y - pin[1]]
          const length = Math.hypot(dx, dy)
          const pull = Math.max(0, s.stiffness * (length - s.freeLength)) / length
          return { at: pin, force: [pull * dx, pull * dy, 0] }
        })
        const slider = [
          ...weights(masses.slice(-1), down),
          ...cords,
          { at: pin, force: of("slider pin") },
          { at: pin, force: minus(of("guide")) },
        ]
        for (const body of [crank, rod, slider])
          for (const axis of [0, 1, 2]) expect(Math.abs(total(body, axis))).toBeLessThanOrEqual(1e-8 * (1 + sizeOf(body)))
        expect(Math.abs(turning(crank, pivot) + effort + beyond)).toBeLessThanOrEqual(1e-7 * (1 + sizeOf(crank)))
        expect(Math.abs(turning(rod, crankPin))).toBeLessThanOrEqual(1e-8 * (1 + sizeOf(rod)))
        // nothing but the guide's side takes the slider's rest, unless the drive pushes harder than it moves
        const along = of("guide")[0] * Math.cos(part.slideAngle) + of("guide")[1] * Math.sin(part.slideAngle)
        if (beyond === 0) expect(Math.abs(along)).toBeLessThanOrEqual(1e-8 * (1 + sizeOf(slider)))
        else expect(Math.abs(along)).toBeGreaterThan(1e-3)
      }
    }
  })
  it("agrees with sliderCrank: position, torque against a load, acceleration", () => {
    const crankAngle = 1.05
    const out = sliderCrank({ crank: 0.04, coupler: 0.12, offset: -0.02, crankAngle, crankSpeed: 1, load: standardGravity })
    const mechanism = sliderCrankMechanism.build({
      type: "slider-crank",
      crankPivot: { x: 0, y: 0 },
      slideAngle: Math.PI / 2,
      crank: 0.04,
      coupler: 0.12,
      offset: -0.02,
      assembly: "open",
      startAngle: crankAngle,
      sliderMass: 1,
      couplerMass: 0,
      crankMasses: [],
      reach: 0,
      frontArea: 0,
      springs: [],
      guideFriction: 0,
    }) as Mechanism
    const state = stateAt(mechanism, crankAngle)
    expect(mechanism.pose(crankAngle).shown).toBeCloseTo(out.position, 12)
    expect(heldEffort(state, [0, -standardGravity, 0])).toBeCloseTo(out.torque, 10)
    expect(state.inertiaSlope).toBeCloseTo(2 * out.lever * out.acceleration, 12)
  })
})

interface ScissorPart {
  readonly base: Point
  readonly direction: number
  readonly cells: number
  readonly armLength: number
  readonly fixedJoint: "centre" | "left" | "right"
  readonly rod: string
  readonly drivenCells: number | null
  readonly tipMass: number
  readonly armsMass: number
  readonly frontArea: number
  readonly springs: readonly { stiffness: number; freeLength: number }[]
  readonly friction: number
}

/** Joints of every level, left and right: each cell's middle pin by two circles, its far ends straight on through it. */
function scissorJoints(si: ScissorPart, q: number): readonly (readonly [left: V, right: V])[] {
  const { armLength: l, direction } = si
  const spread = si.rod === "across" ? q : Math.sqrt(l ** 2 - (q / (si.drivenCells ?? si.cells)) ** 2)
  const left: V = [-Math.sin(direction), Math.cos(direction)]
  const at = (across: number): V => [si.base.x + across * left[0], si.base.y + across * left[1]]
  const from = { centre: -spread / 2, left: -spread, right: 0 }[si.fixedJoint]
  const levels: (readonly [V, V])[] = [[at(from + spread), at(from)]]
  for (let i = 0; i < si.cells; i++) {
    const [a, b] = levels[i] as readonly [V, V]
    // seen from the left joint to the right one, the array extends to the left
    const middle = meeting(a, l / 2, b, l / 2, 1)
    levels.push([
      [2 * middle[0] - b[0], 2 * middle[1] - b[1]],
      [2 * middle[0] - a[0], 2 * middle[1] - a[1]],
    ])
  }
  return levels
}

function scissorRoute(si: ScissorPart): SecondRoute {
  const tip = (q: number): Triple => {
    const [a, b] = scissorJoints(si, q)[si.cells] as readonly [V, V]
    return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, 0]
  }
  return {
    masses: (q) => {
      const levels = scissorJoints(si, q)
      const arm = si.armsMass / (2 * si.cells)
      return [
        ...levels.slice(1).flatMap(([left, right], i) => {
          const [a, b] = levels[i] as readonly [V, V]
          return [...rodMasses(arm, a, right), ...rodMasses(arm, b, left)]
        }),
        { mass: si.tipMass, at: tip(q) },
      ]
    },
    energy: (q) => {
      const [[a, b]] = scissorJoints(si, q) as [readonly [V, V]]
      return si.springs.reduce((sum, s) => sum + cordEnergy(s.stiffness, s.freeLength, triple(a), triple(b)), 0)
    },
    panels: (q) => [{ area: si.frontArea, at: tip(q), normal: [Math.cos(si.direction), Math.sin(si.direction), 0] }],
    rubs: (q) => [{ moment: si.friction, turn: q }],
  }
}

describe("scissor", () => {
  const drawn = drawMechanisms(scissorMechanism, 20, 81).found
  it("moves arms and tip as its joints do, each placed by two circles", () => {
    const random = randomNumbers(17)
    for (const { mechanism, si } of drawn) {
      const route = scissorRoute(si as unknown as ScissorPart)
      for (const q of placesIn(mechanism, 3, random)) {
        const h = stepOf(mechanism)
        if (!changesForm(mechanism, q, h)) holdsMechanism(mechanism, route, q, h, 3e-6)
      }
    }
  })
  it("base joints carry its weight, and the couple of what hangs out sideways", () => {
    const random = randomNumbers(18)
    for (const { mechanism, si } of drawn) {
      const part = si as unknown as ScissorPart
      const [q] = placesIn(mechanism, 1, random) as [number]
      const down: Triple = [3 * random() - 1, -standardGravity, 1]
      const effort = heldEffort(stateAt(mechanism, q), down)
      const force = new Map(mechanism.reactions(q, effort, down).map((r) => [r.name, r.force]))
      const [[left, right]] = scissorJoints(part, q) as [readonly [V, V]]
      const root: V = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2]
      const loads: Load[] = [
        ...weights(scissorRoute(part).masses(q), down),
        { at: left, force: minus(force.get("left base joint") as Triple) },
        { at: right, force: minus(force.get("right base joint") as Triple) },
        ...(part.rod === "along" ? [{ at: root, force: minus(force.get("rod's base") as Triple) }] : []),
      ]
      const size = sizeOf(loads)
      for (const axis of [0, 1, 2]) expect(Math.abs(total(loads, axis))).toBeLessThanOrEqual(1e-9 * size)
      expect(Math.abs(turning(loads, root))).toBeLessThanOrEqual(1e-9 * size)
      // the joint that slides is held along the array only
      const sliding = part.fixedJoint === "left" ? "right base joint" : "left base joint"
      if (part.fixedJoint !== "centre") {
        const f = force.get(sliding) as Triple
        expect(Math.abs(-f[0] * Math.sin(part.direction) + f[1] * Math.cos(part.direction))).toBeLessThanOrEqual(1e-9 * size)
      }
    }
  })
  it("agrees with the scissor solver: the force between the base joints, folded and extended", () => {
    const degree = Math.PI / 180
    for (const [fixedJoint, held] of [
      ["centre", "centre"],
      ["lower", "right"],
      ["upper", "left"],
    ] as const) {
      const out = scissor({
        cells: 6,
        armLength: 0.16,
        foldedAngle: 18 * degree,
        extendedAngle: 62 * degree,
        tilt: 20 * degree,
        fixedJoint,
        tipMass: 0.25,
        armsMass: 0.48,
      })
      // it extends to the right, so that the left of its way is above
      const mechanism = scissorMechanism.build({
        type: "scissor",
        base: { x: 0, y: 0 },
        direction: 20 * degree,
        cells: 6,
        armLength: 0.16,
        fixedJoint: held,
        rod: "across",
        drivenCells: null,
        tipMass: 0.25,
        armsMass: 0.48,
        frontArea: 0,
        springs: [],
        friction: 0,
        startLength: null,
      }) as Mechanism
      for (const [spread, force, span] of [
        [out.spreadFolded, out.forceFolded, out.spanFolded],
        [out.spreadExtended, out.forceExtended, out.spanExtended],
      ] as const) {
        expect(heldEffort(stateAt(mechanism, spread), [0, -standardGravity, 0])).toBeCloseTo(-force, 9)
        expect(mechanism.pose(spread).shown).toBeCloseTo(span, 12)
      }
    }
  })
})
