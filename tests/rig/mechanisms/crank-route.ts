// A crank, a coupler and an arm, placed by intersecting circles with vectors.
import type { MechanismState, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import type { Drawn } from "./draw.js"
import { type ArmPart, armRoute, type PlacedMass, type Point, type SecondRoute } from "./second-route.js"

type V = readonly [number, number]
const along = (from: V, to: V, by: number): V => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return [from[0] + (by * (to[0] - from[0])) / length, from[1] + (by * (to[1] - from[1])) / length]
}

/** Where two circles meet: left of the line from the first centre to the second, or right of it. */
export function meeting(a: V, ra: number, b: V, rb: number, side: 1 | -1): V {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const d2 = dx * dx + dy * dy
  const u = (ra ** 2 - rb ** 2 + d2) / (2 * d2)
  const v = side * Math.sqrt(ra ** 2 / d2 - u ** 2)
  return [a[0] + u * dx - v * dy, a[1] + u * dy + v * dx]
}

/** A point beside a line: so far along it from its first end, so far to its left. */
export function beside(from: V, to: V, forward: number, left: number): V {
  const end = along(from, to, 1)
  const [ux, uy] = [end[0] - from[0], end[1] - from[1]]
  return [from[0] + forward * ux - left * uy, from[1] + forward * uy + left * ux]
}

const triple = ([x, y]: V): Triple => [x, y, 0]
const polar = (masses: readonly { mass: number; radius: number; angle: number }[], from: V, to: V): PlacedMass[] =>
  masses.map((m) => ({ mass: m.mass, at: triple(beside(from, to, m.radius * Math.cos(m.angle), m.radius * Math.sin(m.angle))) }))

/** Masses of an even rod that have its mass, centre and inertia: a sixth at each end, two thirds in the middle. */
export const rodMasses = (mass: number, from: V, to: V): PlacedMass[] => [
  { mass: mass / 6, at: triple(from) },
  { mass: (2 * mass) / 3, at: triple([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]) },
  { mass: mass / 6, at: triple(to) },
]

/** Pins and masses of a crank, a coupler and an arm. */
export interface CrankRoute extends SecondRoute {
  /** Crank pivot, crank pin, pin on the arm, hinge. */
  pins(q: number): readonly [V, V, V, V]
}

export function crankRoute(
  si: Drawn,
  part: { pivot: Point; crank: number; coupler: number; side: 1 | -1; zero: number; rodMass?: number },
): CrankRoute {
  const arm = si as unknown as ArmPart & { movingPivot: { radius: number; angle: number } }
  const { inputMasses = [], couplerMasses = [] } = si as { inputMasses?: ArmPart["masses"]; couplerMasses?: ArmPart["masses"] }
  const hinge: V = [arm.hinge.x, arm.hinge.y]
  const pivot: V = [part.pivot.x, part.pivot.y]
  const pins = (q: number): readonly [V, V, V, V] => {
    const crankPin: V = [pivot[0] + part.crank * Math.cos(q + part.zero), pivot[1] + part.crank * Math.sin(q + part.zero)]
    return [pivot, crankPin, meeting(crankPin, part.coupler, hinge, arm.movingPivot.radius, part.side), hinge]
  }
  const direction = (q: number): V => {
    const [, , pin] = pins(q)
    const [c, s] = [Math.cos(arm.movingPivot.angle), Math.sin(arm.movingPivot.angle)]
    const [x, y] = [(pin[0] - hinge[0]) / arm.movingPivot.radius, (pin[1] - hinge[1]) / arm.movingPivot.radius]
    return [x * c + y * s, y * c - x * s]
  }
  const from = { value: 0 }
  const own = armRoute(arm, direction, (q) => {
    const turn = Math.atan2(direction(q)[1], direction(q)[0])
    return turn - 2 * Math.PI * Math.round((turn - from.value) / (2 * Math.PI))
  })
  return {
    ...own,
    pins,
    // turns are counted near the last place asked for masses
    masses: (q) => {
      const [a, b, c] = pins(q)
      from.value = Math.atan2(direction(q)[1], direction(q)[0])
      return [
        ...own.masses(q),
        ...polar(inputMasses, a, b),
        ...polar(couplerMasses, b, c),
        ...(part.rodMass ? rodMasses(part.rodMass, b, c) : []),
      ]
    },
  }
}

/** Effort that holds a mechanism at rest under gravity. */
export const heldEffort = (state: MechanismState, down: Triple): number =>
  state.springs - down[0] * state.massX - down[1] * state.massY - down[2] * state.massZ
