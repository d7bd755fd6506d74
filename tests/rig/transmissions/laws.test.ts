// Laws that every element of a transmission keeps, whatever its file: the index is walked.
import { describe, expect, it } from "vitest"
import { transmissions } from "../../../src/rig/transmissions/index.js"
import type { AnyTransmissionMember, Transmission } from "../../../src/rig/transmissions/transmission.js"
import { between, descriptionFaults, type Random, samples, seeded } from "../members.js"

const SAMPLES = 60

/** A stretch of input travel to look at: its range, or as far as many turns or metres go. */
function stretch({ low, high, takes }: Transmission): readonly [number, number] {
  const far = takes === "angle" ? 40 : 1
  return [Math.max(low, -far), Math.min(high, far)]
}

/** ∫ of its ratio by Gauss's five points on pieces between its kinks and in 64 parts each. */
function integral(t: Transmission, from: number, to: number): number {
  const cuts = [from, ...t.kinks.filter((k) => k > from && k < to), to]
  const nodes = [0, Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3]
  const weights = [128 / 225, (322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900]
  let sum = 0
  for (let c = 1; c < cuts.length; c++) {
    const [a, b] = [cuts[c - 1] as number, cuts[c] as number]
    for (let k = 0; k < 64; k++) {
      const [mid, half] = [a + ((b - a) * (k + 0.5)) / 64, (b - a) / 128]
      sum += half * (weights[0] as number) * t.ratio(mid)
      for (const n of [1, 2])
        sum += half * (weights[n] as number) * (t.ratio(mid - half * (nodes[n] as number)) + t.ratio(mid + half * (nodes[n] as number)))
    }
  }
  return sum
}

/** Effort that its input needs against an effort at its output: the seam's own words, once more. */
function inputEffort(t: Transmission, ratio: number, effort: number): number {
  const through = effort * Math.abs(ratio)
  return t.drag + (effort >= 0 ? through / t.forward : through * t.backward - through * t.unlocking)
}

describe.each(Object.entries(transmissions) as [string, AnyTransmissionMember][])("transmission %s", (key, member) => {
  const random: Random = seeded(20261129)
  const drawn = samples<Transmission>(member as never, SAMPLES, random)

  it("is described in full", () => expect(descriptionFaults(key, member as never)).toEqual([]))

  it("stands at 0 at the start, within a range that holds the start", () => {
    for (const { made } of drawn) {
      expect(made.out(0)).toBeCloseTo(0, 12)
      expect(made.low).toBeLessThanOrEqual(0)
      expect(made.high).toBeGreaterThanOrEqual(0)
      expect(made.high).toBeGreaterThan(made.low)
      expect(["length", "angle"]).toContain(made.takes)
      expect(["length", "angle"]).toContain(made.gives)
      expect(["both-ways", "pull-only", "push-only"]).toContain(made.transmits)
    }
  })

  it("gives a travel at both ends of its range", () => {
    for (const { made, document } of drawn)
      for (const end of [made.low, made.high].filter(Number.isFinite))
        expect(Number.isFinite(made.out(end)), JSON.stringify(document)).toBe(true)
  })

  it("has losses that take, never give", () => {
    for (const { made, document } of drawn) {
      const label = JSON.stringify(document)
      expect(made.forward, label).toBeGreaterThan(0)
      expect(made.forward, label).toBeLessThanOrEqual(1)
      expect(made.backward, label).toBeGreaterThanOrEqual(0)
      expect(made.backward, label).toBeLessThanOrEqual(1)
      for (const name of ["unlocking", "drag", "backlash", "compliance", "inertia"] as const) {
        expect(made[name], `${name} of ${label}`).toBeGreaterThanOrEqual(0)
        expect(made[name], `${name} of ${label}`).toBeLessThan(Number.POSITIVE_INFINITY)
      }
      if (made.strength !== null) expect(made.strength, label).toBeGreaterThan(0)
      // what is put in to let a load down is put in because nothing comes back
      expect(made.unlocking * made.backward, label).toBe(0)
      if (made.selfLocking) expect(made.backward, label).toBe(0)
    }
  })

  it("has the slope of its travel, and keeps its way", () => {
    for (const { made, document } of drawn) {
      const [low, high] = stretch(made)
      const label = JSON.stringify(document)
      const sign = Math.sign(made.ratio(between(random, low, high)))
      expect(sign, label).not.toBe(0)
      for (let k = 0; k < 6; k++) {
        const [from, to] = [between(random, low, high), between(random, low, high)].sort((a, b) => a - b) as [number, number]
        const moved = made.out(to) - made.out(from)
        expect(Math.sign(moved), label).toBe(sign)
        const size = Math.abs(made.out(high)) + Math.abs(made.out(low))
        expect(Math.abs(integral(made, from, to) - moved), label).toBeLessThanOrEqual(1e-9 * size)
        expect(made.ratio(from)).toBe(made.ratio(from))
      }
    }
  })

  it("names its kinks in order, inside its range, each with a ratio of its own on either side", () => {
    for (const { made } of drawn) {
      expect([...made.kinks].sort((a, b) => a - b)).toEqual(made.kinks)
      for (const kink of made.kinks) {
        expect(kink).toBeGreaterThan(made.low)
        expect(kink).toBeLessThan(made.high)
        const step = 1e-7 * (Math.abs(kink) + 1)
        expect(Math.abs(made.ratio(kink + step) / made.ratio(kink - step) - 1)).toBeGreaterThan(1e-6)
      }
    }
  })

  it("gives no more work than it is given, both ways", () => {
    for (const { made, document } of drawn) {
      const [low, high] = stretch(made)
      const from = between(random, low, high)
      const slope = made.ratio(from)
      for (const effort of [-1000, -1, -1e-3, 0, 1e-3, 1, 1000]) {
        const lost = inputEffort(made, slope, effort) - effort * Math.abs(slope)
        expect(lost, JSON.stringify(document)).toBeGreaterThanOrEqual(-1e-12 * Math.abs(effort * slope))
      }
    }
  })
})
