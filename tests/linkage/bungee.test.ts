import { describe, expect, it } from "vitest"
import { bungee, drawBungee } from "../../src/linkage/index.js"
import { readXml } from "../drawing/xml.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

/** Readings of a cord whose force follows a smooth curve, soft in the middle and stiff at its end. */
const smooth = (e: number) => 40 * e - 25 * e ** 2 + 12 * e ** 3

describe("bungee", () => {
  it("follows a smooth curve read in fine steps: its force, its slope and the area under it", () => {
    const random = lehmer(51)
    const readings = Array.from({ length: 40 }, (_, k) => ({ elongation: (k + 1) * 0.03, force: smooth((k + 1) * 0.03) }))
    for (let k = 0; k < 60; k++) {
      const slackLength = random.real(0.2, 1)
      const e = random.real(0.02, 1.19)
      const out = bungee({ slackLength, length: slackLength * (1 + e), readings, cords: 3, lossShare: 0.25, elongationLimit: 0.8 })
      expect(out.elongation).toBeCloseTo(e, 12)
      expect(Math.abs(out.force - 3 * smooth(e))).toBeLessThan(0.02)
      expect(Math.abs(out.stiffness * slackLength - 3 * (40 - 50 * e + 36 * e ** 2))).toBeLessThan(3)
      expect(Math.abs(out.storedEnergy - 3 * slackLength * (20 * e ** 2 - (25 / 3) * e ** 3 + 3 * e ** 4))).toBeLessThan(0.02 * slackLength)
      expect(out.returnedEnergy as number).toBeCloseTo(0.75 * out.storedEnergy, 12)
      expect(out.returningForce as number).toBeCloseTo(0.75 * out.force, 12)
      expect(out.utilisation).toBeCloseTo(e / 0.8, 12)
      expect(out.lengthLimit).toBeCloseTo(1.8 * slackLength, 12)
    }
  })

  it("holds the energy that letting it back in small steps gives, less the loss", () => {
    const random = lehmer(52)
    for (let k = 0; k < 20; k++) {
      const si = bungee.read(bungee.example)
      const length = random.real(0.42, 0.83)
      const steps = 4000
      const at = (l: number) => bungee({ ...si, length: l })
      let energy = 0
      for (let i = 0; i < steps; i += 40) {
        // Gauss points of each of a hundred slices, exact for straight pieces but where a reading lies within
        const [a, h] = [0.4 + ((length - 0.4) * i) / steps, ((length - 0.4) * 40) / steps]
        for (const x of [-1, 1]) energy += (at(a + (h / 2) * (1 + x / Math.sqrt(3))).returningForce as number) * (h / 2)
      }
      expect(Math.abs((at(length).returnedEnergy as number) - energy)).toBeLessThan(1e-3 * energy)
    }
  })

  it("is slack at and below its slack length, and gives nothing back unless told", () => {
    const slack = bungee({ ...bungee.example, length: "380 mm" })
    expect([slack.elongation, slack.force, slack.stiffness, slack.storedEnergy]).toEqual([0, 0, 0, 0])
    const untold = bungee({ ...bungee.example, lossShare: null })
    expect([untold.returningForce, untold.returnedEnergy]).toEqual([null, null])
    // between 20 and 60 % two cords gain 40 N over 160 mm
    expect(untold.stiffness).toBeCloseTo(250, 9)
  })

  it("refuses beyond its last reading, by how much, and names lengths that answer", () => {
    const far = { ...bungee.example, length: "900 mm" }
    const refusal = refusalOf(bungee.attempt(far))
    expect(refusal.noSolution).toBe("beyond-curve")
    expect(refusal.shortBy).toBeCloseTo(0.15, 12)
    expect(Object.keys(refusal.nearest)).toEqual(["length", "slackLength"])
    for (const [key, value] of Object.entries(refusal.nearest)) expect(bungee.attempt({ ...far, [key]: value }).ok, key).toBe(true)
  })

  it("draws the curve out, and back where its loss is known", () => {
    const picture = drawBungee(bungee.read(bungee.example))
    expect(readXml(picture).name).toBe("svg")
    expect(picture).toContain("unloading")
    expect(drawBungee(bungee.read({ ...bungee.example, lossShare: null }))).not.toContain("unloading")
  })
})
