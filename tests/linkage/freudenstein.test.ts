import { describe, expect, it } from "vitest"
import { fourBar, freudenstein } from "../../src/linkage/index.js"
import { apart, lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

describe("freudenstein", () => {
  it("recovers random linkages from three of their own poses", () => {
    const random = lehmer(67)
    let [met, worst] = [0, 0]
    for (let k = 0; k < 800; k++) {
      const links = { ground: 0.1, input: random.real(0.02, 0.1), coupler: random.real(0.04, 0.15), output: random.real(0.04, 0.12) }
      const assembly = random.sign() > 0 ? ("open" as const) : ("crossed" as const)
      const inputAngles = [random.real(0.2, 0.9), random.real(1.1, 1.8), random.real(2, 2.9)]
      const poses = inputAngles.map((inputAngle) => fourBar.attempt({ ...links, inputAngle, assembly }))
      const outputAngles = poses.map((p) => (p.ok ? p.value.outputAngle : Number.NaN))
      if (outputAngles.some(Number.isNaN)) continue
      const out = freudenstein.attempt({ ground: 0.1, inputAngles, outputAngles })
      if (!out.ok) continue
      met++
      const v = out.value
      // three nearly dependent pairs blow rounding up; links that long tell it
      const blow = Math.max(1, (Math.abs(v.k1) + Math.abs(v.k2) + Math.abs(v.k3)) ** 2)
      worst = Math.max(
        worst,
        Math.abs(v.input - links.input) / blow,
        Math.abs(v.output - links.output) / blow,
        Math.abs(v.coupler - links.coupler) / blow,
      )
      expect(v.assembly).toBe(assembly)
    }
    expect(met).toBeGreaterThan(200)
    expect(worst).toBeLessThan(1e-10)
  })

  it("builds linkages that take random pairs of angles, in the branch it names", () => {
    const random = lehmer(71)
    let [met, split] = [0, 0]
    for (let k = 0; k < 600; k++) {
      const inputAngles = [random.real(0.3, 0.8), random.real(1, 1.5), random.real(1.8, 2.4)]
      const outputAngles = [random.real(0.5, 1), random.real(1.1, 1.6), random.real(1.8, 2.4)]
      const out = freudenstein.attempt({ ground: 0.1, inputAngles, outputAngles })
      if (!out.ok || out.value.linkRatio < 0.05) continue
      const { input, coupler, output, assembly } = out.value
      const half = (length: number) => (length < 0 ? Math.PI : 0)
      const reached = inputAngles.map((t2, i) =>
        (["open", "crossed"] as const).filter((side) => {
          const pose = fourBar.attempt({
            ground: 0.1,
            input: Math.abs(input),
            coupler,
            output: Math.abs(output),
            inputAngle: t2 + half(input),
            assembly: side,
          })
          return pose.ok && apart(pose.value.outputAngle, (outputAngles[i] as number) + half(output)) < 1e-6
        }),
      )
      if (reached.some((sides) => sides.length !== 1)) continue
      met++
      const sides = new Set(reached.flat())
      expect(assembly).toBe(sides.size === 1 ? [...sides][0] : "none")
      if (sides.size === 2) {
        split++
        expect(out.value.cautions.map((c) => c.code)).toContain("branch-defect")
      }
    }
    expect(met).toBeGreaterThan(140)
    expect(split).toBeGreaterThan(6)
  })

  it("refuses pairs that decide nothing", () => {
    const same = refusalOf(freudenstein.attempt({ ground: 0.1, inputAngles: [1, 1, 1], outputAngles: [1.2, 1.2, 1.2] }))
    expect(same.noSolution).toBe("undecided")
  })
})
