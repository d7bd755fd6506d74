import { describe, expect, it } from "vitest"
import { powerScrew } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const solved = (input: Parameters<typeof powerScrew>[0]) => {
  const out = powerScrew.si(powerScrew.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const base = { force: 1000, majorDiameter: 0.016, pitch: 0.004 }

/** Forces on the inclined plane of the unrolled thread, resolved with the friction angle instead of the formula. */
function byFrictionAngle(force: number, meanDiameter: number, lead: number, friction: number) {
  const [lambda, phi] = [Math.atan(lead / (Math.PI * meanDiameter)), Math.atan(friction)]
  return { raise: ((force * meanDiameter) / 2) * Math.tan(phi + lambda), lower: ((force * meanDiameter) / 2) * Math.tan(phi - lambda) }
}

describe("powerScrew", () => {
  it("puts as much work in as it lifts and loses in a turn, raising and lowering, thread and collar as bodies with friction", () => {
    let [driven, held] = [0, 0]
    for (const friction of [0, 0.05, 0.1, 0.2, 0.4])
      for (const starts of [1, 3, 6])
        for (const collarFriction of [0, 0.12]) {
          const out = solved({ ...base, starts, flankAngle: 0.5, threadFriction: friction, collarFriction, collarDiameter: 0.03 })
          const slope = Math.atan(out.lead / (Math.PI * out.meanDiameter))
          const rubs = friction / Math.cos(0.25)
          // the flank's normal force bears the load with its friction against it or helping; it slides the thread's length a turn
          const slides = out.lead / Math.sin(slope)
          const lost = (sense: number) => (rubs * 1000 * slides) / (Math.cos(slope) - sense * rubs * Math.sin(slope))
          const collar = collarFriction * 1000 * Math.PI * 0.03
          const lifted = 1000 * out.lead
          const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * (lifted + lost(1) + collar))
          near(2 * Math.PI * out.raiseTorque, lifted + lost(1) + collar)
          near(2 * Math.PI * out.lowerTorque + lifted, lost(-1) + collar)
          if (out.lowerTorque < 0) driven++
          else held++
          expect(out.transmits).toBe("both-ways")
        }
    expect(Math.min(driven, held)).toBeGreaterThan(5)
  })

  it("agrees with the inclined plane and its friction angle over the range", () => {
    let worst = 0
    for (const friction of [0, 0.05, 0.1, 0.15, 0.25, 0.5])
      for (const starts of [1, 2, 4, 8])
        for (const flank of [0, 29, 30, 60]) {
          const flankAngle = (flank * Math.PI) / 180
          const out = solved({ ...base, starts, flankAngle, threadFriction: friction })
          const other = byFrictionAngle(1000, 0.014, 0.004 * starts, friction / Math.cos(flankAngle / 2))
          worst = Math.max(
            worst,
            Math.abs(out.threadRaiseTorque - other.raise) / other.raise,
            Math.abs(out.threadLowerTorque - other.lower) / (Math.abs(other.lower) + 1e-9),
          )
        }
    expect(worst).toBeLessThan(1e-9)
  })

  it("does not lose energy without friction, and turns at the self-locking limit f = tan λ", () => {
    expect(solved({ ...base, threadFriction: 0 }).efficiency).toBeCloseTo(1, 12)
    const limit = 0.004 / (Math.PI * 0.014)
    expect(solved({ ...base, threadFriction: limit * 1.001 }).threadSelfLocking).toBe(true)
    expect(solved({ ...base, threadFriction: limit * 0.999 }).threadSelfLocking).toBe(false)
    // at that limit a square thread lifts with (1 − tan²λ)/2
    expect(solved({ ...base, threadFriction: limit }).efficiency).toBeCloseTo((1 - limit ** 2) / 2, 12)
  })

  it("tells the thread's self-locking from that of thread and collar", () => {
    const out = solved({ ...base, starts: 4, threadFriction: 0.1, collarFriction: 0.3, collarDiameter: 0.05 })
    expect([out.threadSelfLocking, out.selfLocking, out.lowerTorque > 0]).toEqual([false, false, true])
    const codes = (more: object) => powerScrew({ ...base, starts: 4, threadFriction: 0.1, ...more }).cautions.map((c) => c.code)
    expect(codes({ collarFriction: 0.3, collarDiameter: 0.05 })).toContain("held-by-collar")
    expect(codes({ collarFriction: 0.3, collarDiameter: 0.05 })).not.toContain("thread-not-self-locking")
    expect(codes({})).toContain("thread-not-self-locking")
    expect(codes({})).not.toContain("held-by-collar")
  })

  it("goes back by the ball-screw rule 2 − 1/η", () => {
    const out = solved({ ...base, screwEfficiency: 0.9 })
    const backwards = -out.lowerTorque / ((1000 * 0.004) / (2 * Math.PI))
    expect(backwards).toBeCloseTo(2 - 1 / 0.9, 12)
  })

  it("jams where friction times slope reaches 1, and names a friction that works", () => {
    const input = { ...base, starts: 20, threadFriction: 0.9 }
    const refusal = powerScrew.si(powerScrew.read(input))
    if (!isNoSolution(refusal)) throw new Error("should jam")
    expect(refusal.noSolution).toBe("jammed")
    expect(isNoSolution(powerScrew.si(powerScrew.read({ ...input, threadFriction: refusal.nearest.threadFriction as number })))).toBe(false)
  })

  it("calls self-locking only what half of the friction still holds, and warns of all else", () => {
    const unsafe = ["thread-not-self-locking", "held-by-collar", "thin-holding-margin"]
    for (const starts of [1, 2])
      for (const flankAngle of [0, 0.5])
        for (const threadFriction of [0.05, 0.085, 0.1, 0.17, 0.19, 0.3, 0.4])
          for (const collarFriction of [0, 0.3]) {
            const input = { ...base, starts, flankAngle, threadFriction, collarFriction, collarDiameter: 0.03 }
            const out = powerScrew(input)
            // what is left of the friction, by its angle on the inclined plane
            const { lower } = byFrictionAngle(1000, 0.014, 0.004 * starts, threadFriction / 2 / Math.cos(flankAngle / 2))
            expect(out.selfLocking).toBe(lower > 0)
            expect(out.cautions.some((c) => unsafe.includes(c.code))).toBe(!out.selfLocking)
          }
    // by efficiency: friction takes 1/η − 1 of the work lifted, and half of that has to outweigh it
    const byEfficiency = (threadEfficiency: number) => solved({ ...base, screwEfficiency: threadEfficiency }).selfLocking
    expect([byEfficiency(0.33), byEfficiency(0.335), byEfficiency(0.9)]).toEqual([true, false, false])
  })

  it("warns of self-locking by little, of slippery and of steep threads", () => {
    const codes = (more: object) => powerScrew({ ...base, ...more }).cautions.map((c) => c.code)
    const slope = solved({ ...base, threadFriction: 0.2 }).leadAngle
    expect(codes({ threadFriction: Math.tan(slope) * 1.05 })).toContain("thin-holding-margin")
    expect(codes({ threadFriction: Math.tan(slope) * 4 })).not.toContain("thin-holding-margin")
    expect(codes({ threadFriction: 0.04 })).toContain("low-friction")
    expect(codes({ threadFriction: 0.2, starts: 4, flankAngle: 0.5 })).toContain("steep-thread")
    expect(codes({ threadFriction: 0.2, flankAngle: 0.5 })).not.toContain("steep-thread")
    expect(codes({ screwEfficiency: 0.97 })).toContain("very-efficient")
  })
})
