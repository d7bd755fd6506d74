import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type BodyRegion, contactRegions } from "../../src/worn/contact/data-contact.js"
import { contactSeverity } from "../../src/worn/index.js"
import { between, log } from "./draws.js"

const regions = Object.keys(contactRegions) as BodyRegion[]

const blows = fc.record({
  region: fc.constantFrom(...regions),
  movingMass: log(0.01, 1000),
  movingSpeed: log(0.01, 50),
  paddingStiffness: log(10, 1e6),
  paddingThickness: log(1e-3, 1),
  usablePaddingShare: between(0.1, 1),
})

/**
 * Collision integrated in time: part and body region as two free masses with the body's spring and the padding (hard once
 * used up) between them; velocity Verlet until the force falls again.
 */
function collide(i: typeof blows extends fc.Arbitrary<infer T> ? T : never): number {
  const { mass, stiffness } = contactRegions[i.region]
  // no more than the published 60 % of a foam counts, whatever is given
  const travel = Math.min(0.6, i.usablePaddingShare) * i.paddingThickness
  const series = 1 / (1 / stiffness + 1 / i.paddingStiffness)
  const hard = i.paddingStiffness * travel
  // force for a shortening x of padding and flesh together
  const force = (x: number) => (x <= 0 ? 0 : series * x <= hard ? series * x : stiffness * (x - travel))
  const step = Math.sqrt(1 / (1 / mass + 1 / i.movingMass) / stiffness) / 2000
  let [xp, vp, xb, vb, most] = [0, i.movingSpeed, 0, 0, 0]
  let f = 0
  for (let n = 0; n < 5e6; n++) {
    vp -= (f / i.movingMass) * (step / 2)
    vb += (f / mass) * (step / 2)
    xp += vp * step
    xb += vb * step
    f = force(xp - xb)
    vp -= (f / i.movingMass) * (step / 2)
    vb += (f / mass) * (step / 2)
    most = Math.max(most, f)
    if (vp <= vb) return most
  }
  throw new Error("the collision did not end")
}

describe("contactSeverity", () => {
  it("agrees with the collision integrated in time", () => {
    let [worst, hard, soft] = [0, 0, 0]
    fc.assert(
      fc.property(blows, (i) => {
        const out = contactSeverity(i)
        if (out.bottomed) hard++
        else soft++
        worst = Math.max(worst, Math.abs(collide(i) / out.peakForce - 1))
      }),
      { numRuns: 80 },
    )
    expect(hard).toBeGreaterThan(5)
    expect(soft).toBeGreaterThan(5)
    // half a step of 1/2000 of the period's radian misses the peak by at most about 1e-6, a kink by more
    expect(worst).toBeLessThan(1e-4)
  })

  it("law: thicker padding never more force; slower, lighter, softer never worse", () => {
    fc.assert(
      fc.property(blows, between(1, 10), (i, more) => {
        const now = contactSeverity(i)
        const thicker = contactSeverity({ ...i, paddingThickness: Math.min(1, i.paddingThickness * more) })
        expect(thicker.peakForce).toBeLessThanOrEqual(now.peakForce * (1 + 1e-12))
        expect(thicker.speedLimit).toBeGreaterThanOrEqual(now.speedLimit * (1 - 1e-12))
        expect(now.peakForce).toBeLessThanOrEqual(now.peakBareForce * (1 + 1e-12))
        for (const easier of [
          { ...i, movingSpeed: i.movingSpeed / more },
          { ...i, movingMass: i.movingMass / more },
        ])
          expect(contactSeverity(easier).utilisation).toBeLessThanOrEqual(now.utilisation * (1 + 1e-12))
        // an area of foam grown by the same factor is as much stiffer as it is not thicker: thickness at constant modulus
        const stack = contactSeverity({
          ...i,
          paddingStiffness: i.paddingStiffness / more,
          paddingThickness: Math.min(1, i.paddingThickness * more),
        })
        if (i.paddingThickness * more <= 1) expect(stack.peakForce).toBeLessThanOrEqual(now.peakForce * (1 + 1e-12))
      }),
      { numRuns: 300 },
    )
  })

  it("speedLimit and requiredPaddingThickness come back: at that speed the force is the limit; that thick a pad is just enough", () => {
    fc.assert(
      fc.property(blows, (i) => {
        const out = contactSeverity(i)
        if (out.speedLimit <= 50) {
          const at = contactSeverity({ ...i, movingSpeed: out.speedLimit })
          expect(Math.abs(at.peakForce / out.forceLimit - 1)).toBeLessThan(1e-9)
        }
        const needed = out.requiredPaddingThickness as number
        if (needed * (1 + 1e-9) <= 1 && needed >= 1e-4)
          expect(contactSeverity({ ...i, paddingThickness: needed * (1 + 1e-9) }).bottomed).toBe(false)
        if (needed * 0.999 <= 1 && needed * 0.999 >= 1e-4)
          expect(contactSeverity({ ...i, paddingThickness: needed * 0.999 }).bottomed).toBe(true)
      }),
      { numRuns: 200 },
    )
  })

  it("keeps the energy of a swinging arm: effective mass at the strike carries ½·I·ω²", () => {
    fc.assert(
      fc.property(log(0.01, 100), log(0.05, 10), log(0.01, 50), between(0.2, 1), (armMass, armLength, swing, share) => {
        const out = contactSeverity({ region: "pelvis", armMass, armLength, swingSpeed: swing, strikeRadius: share * armLength })
        const rod = (0.5 * armMass * armLength ** 2 * swing ** 2) / 3
        expect(Math.abs(out.kineticEnergy / rod - 1)).toBeLessThan(1e-12)
      }),
    )
  })

  it("permits no contact with head, face or neck, at any speed, and elsewhere just up to the limits", () => {
    for (const region of regions) {
      const gentle = contactSeverity({ region, movingMass: 0.01, movingSpeed: 0.01 })
      const barred = ["face", "skull-forehead", "neck"].includes(region)
      expect(gentle.utilisation).toBeLessThan(0.1)
      expect([gentle.forbidden, gentle.withinLimits]).toEqual([barred, !barred])
      expect(gentle.verdict.startsWith("nothing may strike")).toBe(barred)
      expect(gentle.transientLimit === null).toBe(barred && region !== "neck")
      const codes = gentle.cautions.map((c) => c.code)
      expect(codes.includes("head-contact") || codes.includes("neck-contact")).toBe(barred)
      expect(contactSeverity({ region, movingMass: 100, movingSpeed: 50 }).withinLimits).toBe(false)
    }
    const at = (speed: number) => contactSeverity({ region: "chest", movingMass: 1, movingSpeed: speed })
    const { speedLimit } = at(1)
    expect([at(speedLimit * 0.999).withinLimits, at(speedLimit * 1.001).withinLimits]).toEqual([true, false])
    expect(at(speedLimit * 0.999).verdict).toMatch(/no clearance/)
    // a limit of pressure or of clamping counts as much as that of force
    expect(contactSeverity({ region: "chest", movingMass: 0.1, movingSpeed: 0.1, contactArea: "0.01 cm2" }).withinLimits).toBe(false)
    expect(
      contactSeverity({ region: "chest", movingMass: 0.1, movingSpeed: 0.1, peakDriveMoment: 141, strikeRadius: 1 }).withinLimits,
    ).toBe(false)
    expect(
      contactSeverity({ region: "chest", movingMass: 0.1, movingSpeed: 0.1, peakDriveMoment: 139, strikeRadius: 1 }).withinLimits,
    ).toBe(true)
  })

  it("counts no more of a pad than is published, however much is claimed", () => {
    const pad = (usablePadding: number) =>
      contactSeverity({
        ...contactSeverity.example,
        paddingStiffness: "4 N/mm",
        paddingThickness: "20 mm",
        usablePaddingShare: usablePadding,
      })
    expect(pad(1).peakForce).toBe(pad(0.6).peakForce)
    expect(pad(0.5).peakForce).toBeGreaterThan(pad(0.6).peakForce)
  })

  it("judges pressure and clamping where it can, and says where it cannot", () => {
    const blind = contactSeverity(contactSeverity.example).cautions.map((c) => c.code)
    expect(blind).toEqual(expect.arrayContaining(["no-area", "no-clamping", "not-a-clearance"]))
    const out = contactSeverity({ ...contactSeverity.example, contactArea: "0.5 cm2", peakDriveMoment: "180 N m" })
    expect(out.clampingForce).toBeCloseTo(200, 9)
    expect(out.utilisation).toBe(Math.max(out.forceUtilisation, out.pressureUtilisation as number, out.clampingUtilisation as number))
    expect(out.cautions.map((c) => c.code)).toEqual(expect.arrayContaining(["over-limit", "door-limit"]))
    expect(out.verdict).toMatch(/above a published limit/)
    const thin = contactSeverity({ ...contactSeverity.example, paddingStiffness: "1 N/mm", paddingThickness: "5 mm" })
    expect(thin.bottomed).toBe(true)
    expect(thin.contactDuration).toBeNull()
    expect(thin.cautions.map((c) => c.code)).toContain("padding-used-up")
  })

  it("takes an arm or a mass, not half of each", () => {
    expect(() => contactSeverity({ region: "chest", armMass: 1, armLength: 1 })).toThrow(/swingSpeed together with armMass and armLength/)
    expect(() => contactSeverity({ region: "chest", movingMass: 1, movingSpeed: 1, swingSpeed: 1 })).toThrow(
      /movingMass with movingSpeed, not both/,
    )
    expect(() => contactSeverity({ region: "chest", movingMass: 1, movingSpeed: 1, paddingStiffness: 100 })).toThrow(
      /paddingThickness together with paddingStiffness/,
    )
    expect(() => contactSeverity({ region: "chest", movingMass: 1, movingSpeed: 1, peakDriveMoment: 10 })).toThrow(/strikeRadius/)
    expect(() => contactSeverity({ ...contactSeverity.example, strikeRadius: 2 })).toThrow(/beyond the tip/)
  })
})
