import { describe, expect, it } from "vitest"
import type { Mechanism, MechanismPose } from "../../../src/rig/mechanisms/mechanism.js"
import { derivative } from "../../linkage/difference.js"
import { drawMechanisms, members, placesIn, randomNumbers } from "./draw.js"
import { stateAt } from "./second-route.js"

/** Step for differences: a small share of the range, or of a radian. */
function stepOf({ low, high }: Mechanism): number {
  const range = high - low
  return Number.isFinite(range) ? 1e-4 * range : 1e-4
}

/** Whether a cord comes taut, or a joint to its stop, within the steps of a difference: the slopes leap there. */
function changesForm(mechanism: Mechanism, q: number): boolean {
  const h = stepOf(mechanism)
  return new Set([-2, -1, 0, 1, 2].map((k) => stateAt(mechanism, q + k * h).form)).size > 1
}

/** Sum of every mass in a document part. */
function massIn(value: unknown, key = ""): number {
  if (typeof value === "number") return /mass/i.test(key) ? value : 0
  if (typeof value !== "object" || value === null) return 0
  return Object.entries(value).reduce((sum, [name, part]) => sum + massIn(part, Array.isArray(value) ? key : name), 0)
}

const numbersIn = (value: unknown): number[] =>
  typeof value === "number" ? [value] : typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : []

const placesOf = (pose: MechanismPose) => [...pose.parts.flatMap((p) => p.points.flat()), ...pose.pins.flatMap((p) => p.at), ...pose.tip]

describe.each(members)("law of every mechanism: %s", (type, member) => {
  const { found, draws } = drawMechanisms(member, 15, 11)
  const each = (hold: (mechanism: Mechanism, q: number, si: Record<string, unknown>) => void) => {
    const random = randomNumbers(5)
    for (const { mechanism, si } of found) for (const q of placesIn(mechanism, 3, random)) hold(mechanism, q, si)
  }

  it("is listed under its own type, and typical parts stand", () => {
    expect(member.type).toBe(type)
    expect(found.length, `${draws} draws`).toBe(15)
    expect(draws).toBeLessThan(150)
  })
  it("names a range with its start inside and dead points at places it reaches", () => {
    for (const { mechanism } of found) {
      expect(mechanism.low).toBeLessThan(mechanism.high)
      for (const q of mechanism.deadPoints) {
        expect(q).toBeGreaterThanOrEqual(mechanism.low)
        expect(q).toBeLessThanOrEqual(mechanism.high)
      }
    }
  })
  it("answers finite numbers wherever it can be posed, the same at every call, and only adds to the state", () => {
    each((mechanism, q) => {
      const state = stateAt(mechanism, q)
      for (const value of Object.values(state)) expect(Number.isFinite(value)).toBe(true)
      expect(state.inertia).toBeGreaterThanOrEqual(0)
      expect(state.frictionDry).toBeGreaterThanOrEqual(0)
      expect(state.frictionShare).toBeGreaterThanOrEqual(0)
      expect(stateAt(mechanism, q)).toEqual(state)
      const twice = { ...state }
      mechanism.at(q, twice)
      for (const key of ["springs", "massX", "massY", "massZ", "windX", "windY", "windZ", "frictionDry", "inertia"] as const)
        expect(twice[key]).toBeCloseTo(2 * state[key], 9)
    })
  })
  it("poses finitely, its tip moving as tipRate says and its shown travel without a leap", () => {
    each((mechanism, q) => {
      const h = stepOf(mechanism)
      const pose = mechanism.pose(q)
      for (const value of numbersIn(pose)) expect(Number.isFinite(value)).toBe(true)
      const speed = derivative((t) => mechanism.pose(q + t).tip, h)
      const size = Math.hypot(...speed)
      pose.tipRate.forEach((rate, axis) => {
        expect(Math.abs(rate - (speed[axis] as number)), `axis ${axis}`).toBeLessThanOrEqual(1e-5 * size + 1e-9)
      })
      // a line that leaps or changes over to another branch would move by its own size in any step
      const wide = (step: number) => {
        const [a, b] = [mechanism.pose(q - step), mechanism.pose(q + step)]
        return Math.max(Math.abs(a.shown - b.shown), ...placesOf(a).map((v, i) => Math.abs(v - (placesOf(b)[i] as number))))
      }
      expect(wide(h / 8)).toBeLessThanOrEqual(0.3 * wide(h) + 1e-12)
    })
  })
  it("stands somewhere at both ends of its range", () => {
    for (const { mechanism } of found)
      for (const end of [mechanism.low, mechanism.high].filter(Number.isFinite)) {
        const pose = mechanism.pose(end)
        for (const value of [...placesOf(pose), ...pose.centre, pose.shown]) expect(Number.isFinite(value)).toBe(true)
      }
  })
  it("moves its masses' centre as its momentum says", () => {
    each((mechanism, q, si) => {
      const { massX, massY, massZ } = stateAt(mechanism, q)
      const { mass } = mechanism.pose(q)
      if (changesForm(mechanism, q)) return
      const speed = derivative((t) => mechanism.pose(q + t).centre, stepOf(mechanism))
      // no mass of the document is lost; a fan has its own on every vane
      expect(massIn(si)).toBeGreaterThan(0)
      expect(mass).toBeGreaterThanOrEqual(massIn(si) * (1 - 1e-12))
      for (const [axis, momentum] of [massX, massY, massZ].entries())
        expect(Math.abs(momentum - mass * (speed[axis] as number))).toBeLessThanOrEqual(
          1e-6 * (Math.hypot(massX, massY, massZ) + mass * 1e-6),
        )
    })
  })
  it("gives the slope of its inertia", () => {
    each((mechanism, q) => {
      const h = stepOf(mechanism)
      const state = stateAt(mechanism, q)
      if (changesForm(mechanism, q)) return
      const [slope] = derivative((t) => [stateAt(mechanism, q + t).inertia], h)
      expect(Math.abs(state.inertiaSlope - (slope as number))).toBeLessThanOrEqual(
        1e-5 * Math.abs(slope as number) + 1e-8 * (state.inertia / h),
      )
    })
  })
  it("carries no more momentum than its masses can have (Cauchy and Schwarz)", () => {
    each((mechanism, q) => {
      const { massX, massY, massZ, inertia } = stateAt(mechanism, q)
      expect(massX ** 2 + massY ** 2 + massZ ** 2).toBeLessThanOrEqual(mechanism.pose(q).mass * inertia * (1 + 1e-9))
    })
  })
  it("gives pin forces in all three directions that are finite and grow in step with gravity", () => {
    each((mechanism, q) => {
      const forces = (down: number) => mechanism.reactions(q, 0, [0.3 * down, -down, 0.2 * down])
      const plain = forces(0)
      for (const value of numbersIn(plain)) expect(Number.isFinite(value)).toBe(true)
      forces(2).forEach((reaction, i) => {
        const [none, one] = [plain[i]?.force, forces(1)[i]?.force]
        reaction.force.forEach((f, axis) => {
          const [a, b] = [none?.[axis] as number, one?.[axis] as number]
          expect(Math.abs(f - a - 2 * (b - a))).toBeLessThanOrEqual(1e-7 * (Math.abs(a) + Math.abs(b)) + 1e-12)
        })
      })
    })
  })
})
