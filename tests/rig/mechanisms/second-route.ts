// Holds a mechanism to places of its masses and energies of its springs that were found by another geometry.
import { expect } from "vitest"
import type { Mechanism, MechanismState, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { emptyState } from "../../../src/rig/mechanisms/mechanism.js"
import { derivative } from "../../linkage/difference.js"

/** A point mass, where it is at a coordinate. */
export interface PlacedMass {
  readonly mass: number
  readonly at: Triple
}

/** What stands behind a mechanism, by another route. */
export interface SecondRoute {
  /** Point masses at a coordinate, always in the same order. */
  masses(q: number): readonly PlacedMass[]
  /** Energy in its springs. */
  energy?(q: number): number
  /** Panels: area, place of the centre and normal. */
  panels?(q: number): readonly { readonly area: number; readonly at: Triple; readonly normal: Triple }[]
  /** Turn of whatever has dry friction, each with its moment (or travel with its force). */
  rubs?(q: number): readonly { readonly moment: number; readonly turn: number }[]
}

export const stateAt = (mechanism: Mechanism, q: number): MechanismState => {
  const state = emptyState()
  mechanism.at(q, state)
  return state
}

const near = (got: number, wanted: number, scale: number, within: number, what: string) =>
  expect(Math.abs(got - wanted), `${what}: ${got} against ${wanted}`).toBeLessThanOrEqual(within * (scale + Math.abs(wanted)))

/** Every number of `at` but its friction share against differences of the second route, h the step of q. */
export function holdsMechanism(mechanism: Mechanism, route: SecondRoute, q: number, h: number, within = 1e-6): void {
  const state = stateAt(mechanism, q)
  const rates = (at: number) => derivative((t) => route.masses(at + t).flatMap((m) => m.at), h)
  const masses = route.masses(q).map((m) => m.mass)
  const sum = (list: readonly number[], axis: number) => masses.reduce((total, m, i) => total + m * (list[3 * i + axis] as number), 0)
  const inertiaOf = (list: readonly number[]) =>
    masses.reduce((total, m, i) => total + m * [0, 1, 2].reduce((s, axis) => s + (list[3 * i + axis] as number) ** 2, 0), 0)
  const pose = mechanism.pose(q)
  near(
    pose.mass,
    sum(
      masses.flatMap(() => [1, 1, 1]),
      0,
    ),
    0,
    1e-12,
    "mass",
  )
  const places = route.masses(q).flatMap((m) => m.at)
  for (const axis of [0, 1, 2] as const) near(pose.mass * pose.centre[axis], sum(places, axis), pose.mass, 1e-9, "centre")
  const here = rates(q)
  const inertia = inertiaOf(here)
  const scale = Math.sqrt(inertia * masses.reduce((a, b) => a + b, 0))
  near(state.massX, sum(here, 0), scale, within, "massX")
  near(state.massY, sum(here, 1), scale, within, "massY")
  near(state.massZ, sum(here, 2), scale, within, "massZ")
  near(state.inertia, inertia, 0, within, "inertia")
  const [slope] = derivative((t) => [inertiaOf(rates(q + t))], 4 * h)
  near(state.inertiaSlope, slope as number, (1e-3 * inertia) / h, 10 * within, "inertiaSlope")
  if (route.energy) {
    const energy = route.energy
    const [force] = derivative((t) => [energy(q + t)], h)
    near(state.springs, force as number, 1e-6 * (1 + Math.abs(energy(q)) / h), within, "springs")
  } else expect(state.springs, "no springs").toBe(0)
  const panels = route.panels?.(q) ?? []
  const speeds = derivative((t) => route.panels?.(q + t).flatMap((p) => p.at) ?? [], h)
  const wind = [0, 0, 0]
  panels.forEach((p, i) => {
    const across = [0, 1, 2].reduce((s, axis) => s + (p.normal[axis] as number) * (speeds[3 * i + axis] as number), 0)
    // the wind pushes along the normal by its own share of it; that is held against
    for (const axis of [0, 1, 2]) wind[axis] = (wind[axis] as number) - p.area * (p.normal[axis] as number) * across
  })
  const windScale = Math.hypot(...wind)
  near(state.windX, wind[0] as number, windScale, within, "windX")
  near(state.windY, wind[1] as number, windScale, within, "windY")
  near(state.windZ, wind[2] as number, windScale, within, "windZ")
  const turns = derivative((t) => route.rubs?.(q + t).map((r) => r.turn) ?? [], h)
  const dry = (route.rubs?.(q) ?? []).reduce((total, r, i) => total + r.moment * Math.abs(turns[i] as number), 0)
  near(state.frictionDry, dry, 0, within, "frictionDry")
}

/** Energy of a cord that only pulls, its length found from two places. */
export function cordEnergy(stiffness: number, freeLength: number, a: Triple, b: Triple): number {
  const stretch = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) - freeLength
  return stretch > 0 ? (stiffness * stretch ** 2) / 2 : 0
}

/** A point of the plane. */
export interface Point {
  readonly x: number
  readonly y: number
}
/** What an arm carries, SI. */
export interface ArmPart {
  readonly hinge: Point
  readonly masses: readonly { mass: number; radius: number; angle: number }[]
  readonly panels: readonly { area: number; radius: number }[]
  readonly springs: readonly { stiffness: number; freeLength: number; fixedPivot: Point; radius: number; angle: number }[]
  readonly hingeFriction: number
}

/** What an arm carries, placed by the direction (cos, sin) of the arm: a rotation matrix. */
export function armRoute(si: ArmPart, direction: (q: number) => readonly [number, number], turn: (q: number) => number): SecondRoute {
  const placed = (q: number, radius: number, angle: number): Triple => {
    const [c, s] = direction(q)
    const [u, v] = [radius * Math.cos(angle), radius * Math.sin(angle)]
    return [si.hinge.x + c * u - s * v, si.hinge.y + s * u + c * v, 0]
  }
  return {
    masses: (q) => si.masses.map((m) => ({ mass: m.mass, at: placed(q, m.radius, m.angle) })),
    energy: (q) =>
      si.springs.reduce(
        (sum, s) => sum + cordEnergy(s.stiffness, s.freeLength, placed(q, s.radius, s.angle), [s.fixedPivot.x, s.fixedPivot.y, 0]),
        0,
      ),
    panels: (q) => {
      const [c, s] = direction(q)
      return si.panels.map((p) => ({ area: p.area, at: placed(q, p.radius, 0), normal: [-s, c, 0] }))
    },
    rubs: (q) => [{ moment: si.hingeFriction, turn: turn(q) }],
  }
}
