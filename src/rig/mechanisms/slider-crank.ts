// A slider pushed along its guide by a crank and a rod: a jaw, a tongue, a plate of shutters.
import { type Assembly, type SliderCrankGeometry, sliderAt, springTension, wrapAngle } from "../../linkage/index.js"
import type { Angle, Area, Force, ForcePerLength, Length, Mass } from "../../quantity/index.js"
import { type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { type MassOnArm, massList, type PlanePoint, planePoint } from "./arm.js"
import { addBody, bodyOf, effortBeyond, massCentre, type PlaneBody, rodBody, weightMoment } from "./body.js"
import { cordFields, cordOf } from "./cord.js"
import { emptyState, type Mechanism, type MechanismMember, type MechanismState, type Triple } from "./mechanism.js"

/** An extension spring or elastic cord between the frame and the slider's pin. */
export interface SpringOnSlider {
  /** Stiffness [k_s; 0.01 N/m to 1000 N/mm] */
  stiffness: ForcePerLength
  /** Free length [L_s; 0 to 5 m] */
  freeLength: Length
  /** Spring's fixed end [group] */
  fixedPivot: PlanePoint
}

/** A slider moved by a crank. */
export interface SliderCrankMechanism {
  type: "slider-crank"
  /** Crank pivot [group; optional, with a default of its own] */
  crankPivot?: PlanePoint
  /** Direction in which the slider runs, counter-clockwise from outward. [beta; −360° to 360°; default 0] */
  slideAngle?: Angle
  /** Crank, pivot to pin. [a; 1 mm to 2 m] */
  crank: Length
  /** Connecting rod, pin to pin. [b; 1 mm to 4 m] */
  coupler: Length
  /** Distance of the slide line from the crank pivot; positive to the left of the direction in which it runs. [c; −2 to 2 m; default 0] */
  offset?: Length
  /** Side of the crank the slider is on: `open` towards the direction in which it runs. [open or crossed; default open] */
  assembly?: Assembly
  /** Angle of the crank at the start, from the direction of the slide. [theta_1; −360° to 360°] */
  startAngle: Angle
  /** Mass of the slider [m_s; 0.1 g to 50 kg] */
  sliderMass: Mass
  /** Mass of the rod [m_b; 0 to 20 kg; default 0] */
  couplerMass?: Mass
  /** Masses on the crank, from its pivot. [list of 0 to 60; default none] */
  crankMasses?: readonly MassOnArm[]
  /** From the slider's pin to its foremost point. [l_s; 0 to 5 m; default 0] */
  reach?: Length
  /** Area that the slider holds square to its way. [A_f; 0 to 4 m²; default 0] */
  frontArea?: Area
  /** Helper springs [list of 0 to 10; default none] */
  springs?: readonly SpringOnSlider[]
  /** Friction of the guide, whichever way it slides. [F_g; 0 to 1000 N; default 0] */
  guideFriction?: Force
}

/**
 * Angles of the crank around `start` between which the rod reaches the slide; infinite where it does all the way round. Where it
 * just does, it stands square to the slide: the slider can go either way from there.
 */
function crankRange(crank: number, coupler: number, offset: number, start: number): readonly [low: number, high: number] {
  const top = (offset + coupler) / crank
  const bottom = (offset - coupler) / crank
  if (top > 1 && bottom < -1) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  const highest = Math.asin(Math.min(1, top))
  const lowest = Math.asin(Math.max(-1, bottom))
  // both sines bound the crank: it stays on its own side of them
  if (top <= 1 && bottom >= -1) {
    const within = wrapAngle(start)
    if (Math.cos(within) >= 0) return [start - within + lowest, start - within + highest]
    const other = wrapAngle(Math.PI - within)
    return [start + other - highest, start + other - lowest]
  }
  // one does: it swings to and fro about straight down, or straight up
  const middle = top <= 1 ? -Math.PI / 2 : Math.PI / 2
  const half = top <= 1 ? highest + Math.PI / 2 : Math.PI / 2 - lowest
  const from = start - wrapAngle(start - middle)
  return [from - half, from + half]
}

/** Coordinate: the angle of the crank from the direction of the slide. */
function build(si: SiOf<SliderCrankMechanism>): Mechanism | NoSolution {
  const { crankPivot, slideAngle, crank, coupler, offset, assembly, sliderMass, couplerMass, frontArea } = si
  const miss = Math.abs(crank * Math.sin(si.startAngle) - offset) - coupler
  if (!(miss < 0))
    return refuse(
      "cannot-close",
      "At the start the rod misses the slide by {shortBy length}: lengthen it, or start the crank elsewhere.",
      miss || 1e-6,
      {
        startAngle: si.startAngle,
      },
    )
  const geometry: SliderCrankGeometry = { crank, coupler, offset, side: assembly === "open" ? 1 : -1 }
  const [ux, uy] = [Math.cos(slideAngle), Math.sin(slideAngle)]
  const [low, high] = crankRange(crank, coupler, offset, si.startAngle)
  const crankBody = bodyOf(si.crankMasses)
  const rod = rodBody(couplerMass, coupler)
  const slider: PlaneBody = { mass: sliderMass, along: 0, across: 0, inertia: 0 }
  const springs = si.springs.map(cordOf)
  // the slide line's point beside the crank pivot
  const [x0, y0] = [crankPivot.x - offset * uy, crankPivot.y + offset * ux]
  const at = (q: number, state: MechanismState) => {
    const { couplerAngle, position, couplerRate, couplerBend, lever, leverSlope } = sliderAt(geometry, q)
    const [vx, vy, ax, ay] = [lever * ux, lever * uy, leverSlope * ux, leverSlope * uy]
    addBody(state, crankBody, q + slideAngle, 0, 0, 0, 0, 1, 0)
    addBody(state, rod, couplerAngle + slideAngle, vx, vy, ax, ay, couplerRate, couplerBend)
    addBody(state, slider, 0, vx, vy, ax, ay, 0, 0)
    state.windX -= frontArea * lever * ux
    state.windY -= frontArea * lever * uy
    for (const spring of springs) {
      const [dx, dy] = [x0 + position * ux - spring.fixedPivot.x, y0 + position * uy - spring.fixedPivot.y]
      const length = Math.sqrt(dx * dx + dy * dy)
      if (length > 0) state.springs += (springTension(spring, length) * (dx * vx + dy * vy)) / length
      state.form = 2 * state.form + (length > spring.freeLength ? 1 : 0)
    }
    state.frictionDry += si.guideFriction * Math.abs(lever)
  }
  const pinsAt = (q: number, position: number): readonly [crankPin: Triple, pin: Triple] => [
    [crankPivot.x + crank * Math.cos(q + slideAngle), crankPivot.y + crank * Math.sin(q + slideAngle), 0],
    [x0 + position * ux, y0 + position * uy, 0],
  ]
  return {
    travel: "angle",
    start: si.startAngle,
    low,
    high,
    deadPoints: [low, high].filter(Number.isFinite),
    shows: "length",
    at,
    pose(q) {
      const { couplerAngle, position, lever } = sliderAt(geometry, q)
      const base: Triple = [crankPivot.x, crankPivot.y, 0]
      const [crankPin, pin] = pinsAt(q, position)
      const tip: Triple = [pin[0] + si.reach * ux, pin[1] + si.reach * uy, 0]
      return {
        parts: [
          { name: "crank", points: [base, crankPin], closed: false },
          { name: "rod", points: [crankPin, pin], closed: false },
          { name: "slider", points: [pin, tip], closed: false },
        ],
        pins: [
          { name: "crank pivot", at: base },
          { name: "crank pin", at: crankPin },
          { name: "slider pin", at: pin },
        ],
        tip,
        tipRate: [lever * ux, lever * uy, 0],
        ...massCentre([
          { body: crankBody, x: base[0], y: base[1], angle: q + slideAngle },
          { body: rod, x: pin[0], y: pin[1], angle: couplerAngle + slideAngle },
          { body: slider, x: pin[0], y: pin[1], angle: 0 },
        ]),
        shown: position,
      }
    },
    reactions(q, effort, down) {
      const { couplerAngle, position, lever } = sliderAt(geometry, q)
      const [crankPin, pin] = pinsAt(q, position)
      const [bx, by] = [pin[0] - crankPin[0], pin[1] - crankPin[1]]
      let [sx, sy] = [sliderMass * down[0], sliderMass * down[1]]
      for (const spring of springs) {
        const [dx, dy] = [spring.fixedPivot.x - pin[0], spring.fixedPivot.y - pin[1]]
        const length = Math.hypot(dx, dy)
        if (length === 0) continue
        const share = springTension(spring, length) / length
        sx += share * dx
        sy += share * dy
      }
      // what the rod gives the slider: it balances the slider along its way, and the rod about the crank pin
      const along = -(sx * ux + sy * uy)
      const turned = weightMoment(rod, couplerAngle + slideAngle, down) + couplerMass * (bx * down[1] - by * down[0])
      const across = (turned - along * (bx * uy - by * ux)) / (bx * ux + by * uy)
      let [fx, fy] = [along * ux - across * uy, along * uy + across * ux]
      // an effort beyond what holds everything pushes along the rod
      const state = emptyState()
      at(q, state)
      const beyond = effortBeyond(effort, state, down)
      if (beyond !== 0) {
        // by the lever that gave friction and wind their share of it: at a dead centre both come to nothing together
        const thrust = beyond / (lever * (bx * ux + by * uy))
        fx += thrust * bx
        fy += thrust * by
      }
      const half = (couplerMass / 2) * down[2]
      const given: Triple = [couplerMass * down[0] - fx, couplerMass * down[1] - fy, half]
      const pushed: Triple = [fx, fy, half]
      return [
        {
          name: "crank pivot",
          force: [given[0] + crankBody.mass * down[0], given[1] + crankBody.mass * down[1], half + crankBody.mass * down[2]],
        },
        { name: "crank pin", force: given },
        { name: "slider pin", force: pushed },
        { name: "guide", force: [fx + sx, fy + sy, half + sliderMass * down[2]] },
      ]
    },
  }
}

/** A slider moved by a crank. */
export const sliderCrankMechanism: MechanismMember<SliderCrankMechanism> = {
  type: "slider-crank",
  label: "slider moved by a crank and a rod",
  fields: {
    crankPivot: { ...planePoint("crank pivot", "x_a", "y_a"), default: { x: 0, y: 0 } },
    slideAngle: {
      kind: "angle",
      symbol: "beta",
      label: "direction of the slide",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-90 deg", "90 deg"],
      default: 0,
    },
    crank: { kind: "length", symbol: "a", label: "crank", min: "1 mm", max: 2, typical: ["10 mm", "60 mm"] },
    coupler: { kind: "length", symbol: "b", label: "connecting rod", min: "1 mm", max: 4, typical: ["60 mm", "200 mm"] },
    offset: {
      kind: "length",
      symbol: "c",
      label: "offset of the slide line",
      min: -2,
      max: 2,
      typical: ["-40 mm", "40 mm"],
      default: 0,
    },
    assembly: {
      kind: "choice",
      label: "side of the slider",
      options: { open: "open: the way the slide runs from the crank", crossed: "crossed: against the way the slide runs" },
      default: "open",
    },
    startAngle: {
      kind: "angle",
      symbol: "theta_1",
      label: "angle of the crank at the start",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-180 deg", "180 deg"],
    },
    sliderMass: { kind: "mass", symbol: "m_s", label: "mass of the slider", min: "0.1 g", max: 50, typical: ["50 g", "1 kg"] },
    couplerMass: { kind: "mass", symbol: "m_b", label: "mass of the rod", min: 0, max: 20, typical: [0, "0.2 kg"], default: 0 },
    crankMasses: { ...massList("masses on the crank", "m_a", "distance from the crank pivot"), default: [] },
    reach: { kind: "length", symbol: "l_s", label: "slider pin to its foremost point", min: 0, max: 5, typical: [0, "0.3 m"], default: 0 },
    frontArea: { kind: "area", symbol: "A_f", label: "area square to its way", min: 0, max: 4, typical: [0, "0.1 m2"], default: 0 },
    springs: {
      kind: "list",
      label: "helper springs",
      min: 0,
      max: 10,
      default: [],
      of: {
        kind: "group",
        label: "helper spring",
        fields: {
          ...cordFields,
          fixedPivot: planePoint("spring's fixed end", "x_s", "y_s"),
        },
      },
    },
    guideFriction: { kind: "force", symbol: "F_g", label: "friction of the guide", min: 0, max: 1000, typical: [0, "5 N"], default: 0 },
  },
  build,
}
