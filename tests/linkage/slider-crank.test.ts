import { describe, expect, it } from "vitest"
import { sliderCrank } from "../../src/linkage/index.js"
import { derivative } from "./difference.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

describe("sliderCrank", () => {
  it("closes its loop and has speeds and accelerations that central differences confirm, both branches", () => {
    const random = lehmer(13)
    let [met, worstLoop, worstSpeed, worstChange] = [0, 0, 0, 0]
    for (let k = 0; k < 500; k++) {
      const [w, al] = [random.real(-5, 5), random.real(-10, 10)]
      const input = {
        crank: random.real(0.01, 0.1),
        coupler: random.real(0.05, 0.3),
        offset: random.real(-0.1, 0.1),
        crankAngle: random.real(-Math.PI, Math.PI),
        assembly: random.sign() > 0 ? ("open" as const) : ("crossed" as const),
        crankSpeed: w,
        crankAcceleration: al,
      }
      const now = sliderCrank.attempt(input)
      if (!now.ok) continue
      met++
      const v = now.value
      const pins = [
        [v.position, v.couplerAngle],
        [v.otherPosition, v.otherCouplerAngle],
      ] as const
      for (const [x, angle] of pins)
        worstLoop = Math.max(
          worstLoop,
          Math.hypot(
            input.crank * Math.cos(input.crankAngle) - input.coupler * Math.cos(angle) - x,
            input.crank * Math.sin(input.crankAngle) - input.coupler * Math.sin(angle) - input.offset,
          ),
        )
      expect((v.position - input.crank * Math.cos(input.crankAngle)) * (input.assembly === "open" ? 1 : -1)).toBeGreaterThan(0)
      if (Math.sin(v.transmissionAngle) < 0.2) continue
      const at = (t: number) => sliderCrank({ ...input, crankAngle: input.crankAngle + w * t + (al * t * t) / 2, crankSpeed: w + al * t })
      const [dx, dt] = derivative((t) => [at(t).position, at(t).couplerAngle], 2e-5) as [number, number]
      const [dv, dw] = derivative((t) => [at(t).speed, at(t).couplerSpeed], 2e-5) as [number, number]
      const off = (a: number, b: number) => Math.abs(a - b) / (1 + w * w + Math.abs(al) + Math.abs(a))
      worstSpeed = Math.max(worstSpeed, off(v.speed, dx), off(v.couplerSpeed, dt))
      worstChange = Math.max(worstChange, off(v.acceleration, dv), off(v.couplerAcceleration, dw))
    }
    expect(met).toBeGreaterThan(250)
    expect(worstLoop).toBeLessThan(1e-15 * 1e3)
    expect(worstSpeed).toBeLessThan(1e-7)
    expect(worstChange).toBeLessThan(1e-6)
  })

  it("refuses a rod that does not reach, and one that stands square to the slide", () => {
    const short = refusalOf(sliderCrank.attempt({ crank: 0.1, coupler: 0.06, crankAngle: Math.PI / 2 }))
    expect(short.noSolution).toBe("cannot-close")
    expect(short.shortBy).toBeCloseTo(0.04, 12)
    expect(sliderCrank.attempt({ crank: 0.1, coupler: short.nearest.coupler as number, crankAngle: Math.PI / 2 }).ok).toBe(true)
    expect(refusalOf(sliderCrank.attempt({ crank: 0.1, coupler: 0.1, crankAngle: Math.PI / 2 })).noSolution).toBe("dead-point")
  })

  it("gives the load as much power as the crank takes, and its guide what the rod pushes across", () => {
    for (const assembly of ["open", "crossed"] as const)
      for (let degrees = -170; degrees <= 170; degrees += 20) {
        const input = {
          crank: 0.04,
          coupler: 0.12,
          offset: -0.02,
          crankAngle: (degrees * Math.PI) / 180,
          crankSpeed: 3,
          load: 25,
          assembly,
        }
        const out = sliderCrank(input)
        expect(out.torque * 3, `${assembly} ${degrees}°`).toBeCloseTo(25 * out.speed, 10)
        // the rod is a two-force member: what it pushes across goes with its slope
        const rise = 0.04 * Math.sin(input.crankAngle) + 0.02
        expect(out.sideForce).toBeCloseTo((-25 * rise) / (out.position - 0.04 * Math.cos(input.crankAngle)), 10)
      }
  })
})
