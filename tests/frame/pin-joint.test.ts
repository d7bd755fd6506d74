import { describe, expect, it } from "vitest"
import { type BoltSize, beamCurve, bolts, frameMaterials, pinJoint, threadStressArea, throughHole } from "../../src/frame/index.js"
import { integrate } from "../../src/numeric/index.js"

const tube = { outsideDiameter: 0.02, wall: 0.0015 }

/** Area and second moment of a round tube with a real round hole right through it, cell by cell. */
function holedCells(D: number, wall: number, d: number, place: "outer-fibre" | "neutral-axis", n = 1500) {
  const step = D / n
  let [area, second] = [0, 0]
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [x, y] = [(i + 0.5) * step - D / 2, (j + 0.5) * step - D / 2]
      const r = Math.hypot(x, y)
      if (r > D / 2 || r < D / 2 - wall) continue
      if (Math.abs(place === "outer-fibre" ? x : y) < d / 2) continue
      area += step ** 2
      second += y ** 2 * step ** 2
    }
  return { area, second }
}

describe("pinJoint against other routes", () => {
  it("stress area of a thread: circle of the mean of pitch and root diameters (ISO 724 profile)", () => {
    for (const name of Object.keys(bolts) as BoltSize[]) {
      const { diameter, pitch } = bolts[name]
      const height = (Math.sqrt(3) / 2) * pitch
      const pitchDiameter = diameter - (3 / 4) * height
      const root = diameter - (17 / 12) * height
      const area = (Math.PI / 4) * ((pitchDiameter + root) / 2) ** 2
      expect(Math.abs(threadStressArea(bolts[name]) / area - 1), name).toBeLessThan(2e-5)
      // the standard prints 3 figures
      expect(Number(threadStressArea(bolts[name]).toPrecision(3)), name).toBeCloseTo(bolts[name].stressArea, 10)
    }
  })

  it("what a cross hole leaves of a tube, cell by cell", () => {
    let [mostArea, mostSecond] = [0, 0]
    for (const place of ["outer-fibre", "neutral-axis"] as const)
      for (const d of [0.002, 0.004, 0.006]) {
        const shape = { pipe: null, width: null, height: null, ...tube }
        const out = throughHole(shape, d, place)
        const cells = holedCells(tube.outsideDiameter, tube.wall, d, place)
        mostArea = Math.max(mostArea, Math.abs(out.netArea / cells.area - 1))
        mostSecond = Math.max(mostSecond, Math.abs(out.netSecondMoment / cells.second - 1))
      }
    // straight strips for curved walls: good to 2 % up to a third of the width
    expect(mostArea).toBeLessThan(0.02)
    expect(mostSecond).toBeLessThan(0.02)
  })

  it("what a cross hole leaves of a flat bar is exact", () => {
    const bar = { pipe: null, outsideDiameter: null, width: 0.02, height: 0.03, wall: null }
    const [b, h, d] = [0.02, 0.03, 0.005]
    expect(throughHole(bar, d, "outer-fibre").netSecondMoment).toBeCloseTo(((b - d) * h ** 3) / 12, 15)
    expect(throughHole(bar, d, "neutral-axis").netSecondMoment).toBeCloseTo((b * (h ** 3 - d ** 3)) / 12, 15)
  })

  it("squeezed ring: greatest moment by Castigliano's theorem, integrated", () => {
    // half of each force runs down each side; the moment at the sides follows from no turning there
    const [F, R, wall, width] = [100, 0.009, 0.001, 0.02]
    const along = (redundant: number) => integrate((phi) => redundant - (F / 2) * R * (1 - Math.cos(phi)), 0, Math.PI / 2).value
    const side = -along(0) / (Math.PI / 2)
    const top = Math.abs(side - (F / 2) * R)
    const stress = (6 * top) / (width * wall ** 2)
    const out = pinJoint({
      force: 10,
      pinDiameter: 0.004,
      tube: { outsideDiameter: 2 * R + wall, wall },
      strength: stress,
      clampWidth: width,
      clampForce: F,
    })
    expect(out.crushForce).toBeCloseTo(F, 8)
    expect(out.crushSafetyFactor).toBeCloseTo(1, 8)
  })
})

describe("pins that bend between cheeks", () => {
  const pin = { force: 900, pinDiameter: 0.006, pinStrength: 235e6, thickness: 0.008, cheekThickness: 0.005, gap: 0.002 } as const

  it("bend as a beam that both cheeks and the middle press on evenly", () => {
    for (const [t, a, c] of [
      [0.008, 0.005, 0.002],
      [0.02, 0.003, 0],
      [0.001, 0.012, 0.006],
    ] as const) {
      const length = t + 2 * c + 2 * a
      const even = (load: number, start: number, end: number) => ({
        startLoad: load / (end - start),
        endLoad: load / (end - start),
        start,
        end,
      })
      const curve = beamCurve({
        length,
        span: length,
        stiffness: 1,
        forces: [],
        distributedLoads: [even(-450, 0, a), even(900, a + c, a + c + t), even(-450, length - a, length)],
        couples: [],
      })
      expect(Math.abs(curve.reactionStart)).toBeLessThan(1e-9)
      const out = pinJoint({ ...pin, thickness: t, cheekThickness: a, gap: c })
      expect(out.pinMoment).toBeCloseTo(Math.abs(curve.greatest("moment").value), 9)
      expect(out.pinBendingStress).toBeCloseTo(((out.pinMoment as number) * 32) / Math.PI / 0.006 ** 3, 3)
    }
  })

  it("give way in bending and shear together: an ellipse through both strengths alone", () => {
    const out = pinJoint(pin)
    const bent = (1.5 * 235e6) / (out.pinBendingStress as number)
    const both = out.pinBendingSafetyFactor as number
    expect((both / bent) ** 2 + (both / out.pinShearSafetyFactor) ** 2).toBeCloseTo(1, 12)
    // next to no lever: shear alone is left
    const near = pinJoint({ ...pin, thickness: 5e-5, cheekThickness: 5e-5, gap: 0 })
    expect(near.pinBendingSafetyFactor as number).toBeCloseTo(near.pinShearSafetyFactor, 2)
    expect(pinJoint({ ...pin, gap: 0.02 }).governedBy).toBe("pin bending")
  })

  it("threads in the shear planes bend as a rod of their stress area, with the bolt's proof stress", () => {
    const bolt = { force: 500, bolt: "M6", boltClass: "8.8", thickness: 0.008, cheekThickness: 0.004 } as const
    const thread = pinJoint(bolt)
    const equal = Math.sqrt((4 * bolts.M6.stressArea) / Math.PI)
    expect(thread.pinBendingStress).toBeCloseTo(((thread.pinMoment as number) * 32) / Math.PI / equal ** 3, 3)
    expect(pinJoint({ ...bolt, threadSheared: false }).pinBendingStress as number).toBeLessThan(thread.pinBendingStress as number)
    expect(pinJoint({ ...bolt, cheekThickness: null }).pinBendingSafetyFactor).toBeNull()
  })

  it("bend no less where a tube's two walls pass the force on at its sides: its wall counts twice", () => {
    const out = pinJoint({ force: 900, pinDiameter: 0.006, tube, material: "steel", cheekThickness: 0.005 })
    // half of the force at half a wall plus half a cheek
    expect(out.pinMoment).toBeCloseTo(450 * (0.0015 / 2 + 0.005 / 2), 9)
  })
})

describe("laws of joints", () => {
  const joint = { force: 900, bolt: "M6", tube, material: "aluminium-6061", edgeDistance: 0.018 } as const

  it("twice the force halves every margin; twice the pins doubles them", () => {
    const [one, two, pair] = [pinJoint(joint), pinJoint({ ...joint, force: 1800 }), pinJoint({ ...joint, pins: 2 })]
    for (const key of ["pinShearSafetyFactor", "bearingSafetyFactor", "tearOutSafetyFactor"] as const) {
      expect((two[key] as number) / (one[key] as number)).toBeCloseTo(0.5, 12)
      expect((pair[key] as number) / (one[key] as number)).toBeCloseTo(2, 12)
    }
  })

  it("the least margin governs, and is named", () => {
    expect(pinJoint(joint).governedBy).toBe("bearing")
    expect(pinJoint({ ...joint, edgeDistance: 0.0045 }).governedBy).toBe("tear-out")
    expect(pinJoint({ ...joint, boltClass: "4.6", shearPlanes: 1, thickness: 0.02 }).governedBy).toBe("pin shear")
    expect(pinJoint({ ...joint, clampWidth: 0.002, clampForce: 3000 }).governedBy).toBe("crushing")
    expect(pinJoint({ ...joint, force: 1, tighteningTorque: 30 }).governedBy).toBe("tightening")
    for (const out of [pinJoint(joint), pinJoint({ ...joint, tighteningTorque: 2, clampWidth: 0.02 })]) {
      const all = [
        out.pinShearSafetyFactor,
        out.pinBendingSafetyFactor,
        out.bearingSafetyFactor,
        out.tearOutSafetyFactor,
        out.crushSafetyFactor,
        out.tighteningSafetyFactor,
      ].filter((x) => x !== null)
      expect(out.safetyFactor).toBe(Math.min(...all))
    }
  })

  it("threads in the shear plane are weaker than the shank, and a hole on the neutral axis costs less", () => {
    expect(pinJoint({ ...joint, threadSheared: false }).pinShearSafetyFactor).toBeGreaterThan(pinJoint(joint).pinShearSafetyFactor)
    const [outer, inner] = [pinJoint(joint), pinJoint({ ...joint, hole: "neutral-axis" })]
    expect(inner.netSecondMoment).toBeGreaterThan(1.5 * (outer.netSecondMoment as number))
    expect(inner.netArea).toBeCloseTo(outer.netArea as number, 15)
  })

  it("says nothing reassuring of fibre tubes: no bearing, no crushing, a warning", () => {
    for (const material of ["carbon-pultruded", "carbon-wrapped", "glass-pultruded"] as const) {
      const out = pinJoint({ ...joint, material, clampWidth: 0.02, clampForce: 100 })
      expect([out.bearingSafetyFactor, out.tearOutSafetyFactor, out.crushSafetyFactor]).toEqual([null, null, null])
      expect(out.cautions.map((c) => c.code)).toContain("fibres-split")
      expect(frameMaterials[material].splits).toBe(true)
    }
  })

  it("refuses a hole that leaves nothing, and names one that would do", () => {
    const outcome = pinJoint.attempt({ force: 10, pinDiameter: 0.017, tube })
    expect(outcome.ok).toBe(false)
    if (!outcome.ok) expect(outcome.error.toJSON()).toMatchObject({ noSolution: "does-not-fit", nearest: { pinDiameter: 0.02 / 3 } })
    expect(pinJoint.attempt({ force: 10, pinDiameter: 0.02 / 3, tube }).ok).toBe(true)
  })

  it("wants one pin and one member, and a ring to clamp", () => {
    const paths = (input: object) => {
      const outcome = pinJoint.attempt({ force: 10, ...input })
      return !outcome.ok && "issues" in outcome.error ? outcome.error.issues.map((i) => i.path.join(".")) : []
    }
    expect(paths({})).toEqual(["bolt", "thickness"])
    expect(paths({ bolt: "M6", pinDiameter: 0.006, thickness: 0.003 })).toEqual(["pinDiameter"])
    expect(paths({ bolt: "M6", thickness: 0.003, clampWidth: 0.01 })).toEqual(["clampWidth"])
    expect(paths({ pinDiameter: 0.006, thickness: 0.003, tighteningTorque: 1 })).toEqual(["tighteningTorque"])
    expect(paths({ bolt: "M6", thickness: 0.003, edgeDistance: 0.003 })).toEqual(["edgeDistance"])
    expect(paths({ bolt: "M6", tube, clampForce: 1, tighteningTorque: 1 })).toEqual(["clampForce"])
  })
})
