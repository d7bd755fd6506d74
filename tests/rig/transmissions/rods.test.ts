// Crank and lever against closure solved by Newton, limits found by marching, and turned vectors.
import { describe, expect, it } from "vitest"
import { type CrankElement, crank } from "../../../src/rig/transmissions/crank.js"
import { type LeverElement, lever } from "../../../src/rig/transmissions/lever.js"
import type { Transmission } from "../../../src/rig/transmissions/transmission.js"
import type { SiOf } from "../../../src/solver/index.js"
import { between, built, samples, seeded } from "../members.js"

/** Where the slide stands by Newton on |pin − slide|² = rod², from far out on its side; null where it does not close. */
function slideAt(si: SiOf<CrankElement>, angle: number): number | null {
  const pin = [si.crank * Math.cos(angle), si.crank * Math.sin(angle)] as const
  if (Math.abs(pin[1] - si.offset) >= si.coupler) return null
  let x = pin[0] + (si.assembly === "open" ? 2 : -2) * si.coupler
  for (let k = 0; k < 60; k++) {
    const gap = (x - pin[0]) ** 2 + (si.offset - pin[1]) ** 2 - si.coupler ** 2
    x -= gap / (2 * (x - pin[0]))
  }
  return x
}

describe("crank", () => {
  const random = seeded(360)
  const drawn = samples<Transmission>(crank, 60, random).map(({ si, made }) => ({ si: si as SiOf<CrankElement>, made }))

  it("moves its slide as its rod closes, and as fast", () => {
    for (const { si, made } of drawn) {
      const start = slideAt(si, si.startAngle) as number
      const size = si.crank + si.coupler
      for (const share of [0.2, 0.5, 0.8]) {
        const travel = made.low + share * (made.high - made.low)
        const at = (turn: number) => slideAt(si, si.startAngle + turn) as number
        expect(Math.abs(made.out(travel) - (at(travel) - start))).toBeLessThan(1e-9 * size)
        const step = 1e-5 * (made.high - made.low)
        const slope = (at(travel - 2 * step) - 8 * at(travel - step) + 8 * at(travel + step) - at(travel + 2 * step)) / (12 * step)
        expect(Math.abs(made.ratio(travel) - slope)).toBeLessThan(1e-6 * (Math.abs(slope) + size))
      }
    }
  })

  it("ends where marching on finds that its slide turns back, or that its rod no longer reaches", () => {
    const ends = { turns: 0, parts: 0 }
    for (const { si, made } of drawn) {
      const step = 2e-3
      for (const way of [1, -1]) {
        const end = way > 0 ? made.high : made.low
        if (Math.abs(end) < 3 * step) continue
        let [travel, last] = [0, slideAt(si, si.startAngle) as number]
        let sense = 0
        for (;;) {
          travel += way * step
          const now = slideAt(si, si.startAngle + travel)
          if (now === null) {
            ends.parts++
            break
          }
          const moves = Math.sign(now - last)
          if (sense !== 0 && moves !== sense) {
            ends.turns++
            break
          }
          ;[sense, last] = [moves, now]
        }
        expect(Math.abs(travel - end)).toBeLessThan(2.01 * step)
      }
    }
    expect(ends.turns).toBeGreaterThan(20)
    expect(ends.parts).toBeGreaterThan(3)
  })

  it("may start at a dead point and only goes on from it", () => {
    const made = built<Transmission>(crank, { crank: "30 mm", coupler: "90 mm", startAngle: 0, efficiency: 0.9 })
    expect([made.low, made.high]).toEqual([0, Math.PI])
    // drawn in by twice the crank
    expect(made.out(Math.PI)).toBeCloseTo(-0.06, 12)
    expect(made.ratio(1)).toBeLessThan(0)
    const back = built<Transmission>(crank, { crank: "30 mm", coupler: "90 mm", startAngle: "180 deg", efficiency: 0.9 })
    expect(back.out(back.high)).toBeCloseTo(0.06, 12)
  })

  it("starts and ends at either dead point alike: hardly any lever there, of the sense that it has inside", () => {
    const like = { crank: "30 mm", coupler: "90 mm", efficiency: 0.9 }
    // drawn in from 0°, let out from 180°, and the same the other way
    for (const [startAngle, sense] of [
      ["0 deg", -1],
      ["180 deg", 1],
      ["-180 deg", 1],
      ["360 deg", -1],
    ] as const) {
      const made = built<Transmission>(crank, { ...like, startAngle })
      for (const end of [made.low, made.high]) {
        expect(Math.sign(made.ratio(end)), startAngle).toBe(sense)
        expect(Math.abs(made.ratio(end)), startAngle).toBeLessThan(1e-12)
      }
      const half = built<Transmission>(crank, { ...like, startAngle: startAngle === "0 deg" ? "-90 deg" : "90 deg" })
      for (const end of [half.low, half.high]) expect(Math.abs(half.ratio(end))).toBeGreaterThan(0)
    }
  })

  it("gives a travel at the very places where its rod stands square to the slide", () => {
    for (let coupler = 0.003; coupler < 0.03; coupler += 2e-4) {
      const made = built<Transmission>(crank, { crank: 0.03, coupler, startAngle: "170 deg", efficiency: 0.9, offset: 0.0052 })
      for (const end of [made.low, made.high]) {
        const angle = (170 * Math.PI) / 180 + end
        const square = Math.abs(Math.abs(0.03 * Math.sin(angle) - 0.0052) - coupler) < 1e-12
        const from =
          0.03 * Math.cos((170 * Math.PI) / 180) + Math.sqrt(coupler ** 2 - (0.03 * Math.sin((170 * Math.PI) / 180) - 0.0052) ** 2)
        expect(Number.isFinite(made.out(end))).toBe(true)
        if (square) expect(made.out(end)).toBeCloseTo(0.03 * Math.cos(angle) - from, 8)
      }
    }
  })

  it("is a fault where rod and crank of one length lie folded: the slide would stay at the shaft", () => {
    const like = { crank: "30 mm", coupler: "30 mm", efficiency: 0.9 }
    for (const [startAngle, assembly] of [
      ["120 deg", "open"],
      ["-150 deg", "open"],
      ["30 deg", "crossed"],
    ])
      expect(() => built(crank, { ...like, startAngle, assembly })).toThrow(/moves the slide/)
    // unfolded it is twice the crank's own reach
    expect(built<Transmission>(crank, { ...like, startAngle: "80 deg" }).out(-1.3)).toBeCloseTo(
      0.06 * (Math.cos((80 * Math.PI) / 180 - 1.3) - Math.cos((80 * Math.PI) / 180)),
      12,
    )
  })
  it("is refused where its rod does not reach the slide", () => {
    const short = { crank: "60 mm", coupler: "40 mm", startAngle: "90 deg", efficiency: 0.9 }
    expect(() => built(crank, short)).toThrow(/from the slide line/)
  })
})

describe("lever", () => {
  it("turns about its pivot: both pins' heights over its middle, between the places where it points along what pulls it", () => {
    const random = seeded(77)
    for (const { si, made } of samples<Transmission>(lever, 40, random)) {
      const { drivingArm, drivenArm, startAngle, arms } = si as SiOf<LeverElement>
      const turn = (radius: number, angle: number) => {
        // a unit vector turned by steps of its own rotation matrix
        const [c, s] = [Math.cos(angle / 64), Math.sin(angle / 64)]
        let [x, y] = [radius, 0]
        for (let k = 0; k < 64; k++) [x, y] = [c * x - s * y, s * x + c * y]
        return y
      }
      const side = arms === "same-side" ? 1 : -1
      for (const angle of [between(random, -1.5, 1.5), 0]) {
        const driven = turn(drivingArm, angle) - turn(drivingArm, startAngle)
        expect(made.out(driven)).toBeCloseTo(turn(side * drivenArm, angle) - turn(side * drivenArm, startAngle), 10)
        expect(driven).toBeGreaterThan(made.low)
        expect(driven).toBeLessThan(made.high)
      }
      expect(made.high).toBeCloseTo(turn(drivingArm, Math.PI / 2) - turn(drivingArm, startAngle), 10)
      expect(made.low).toBeCloseTo(turn(drivingArm, -Math.PI / 2) - turn(drivingArm, startAngle), 10)
    }
  })
})
