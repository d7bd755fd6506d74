import { describe, expect, it } from "vitest"
import { beam, beamCurve, bendingRod, column, naturalFrequency, pinJoint, tubeSection } from "../../src/frame/index.js"
import { referenceRows } from "../helpers/references.js"
import { assemble, elementMass, elementStiffness, evenNodes, leastEigenvalue, without } from "./elements.js"

describe("what an answer spans and says", () => {
  it("frequency: the band holds every member of the density and stiffness it names, by finite elements", () => {
    // softwood, 310 to 420 kg/m³ and 5.4 to 11 GPa (EN 338, C16 and C24), with and without a lump at the tip
    for (const tipMass of [0, 0.1]) {
      const [length, width, height] = [0.8, 0.02, 0.03]
      const out = naturalFrequency({ length, section: { width, height }, material: "softwood", tipMass })
      const n = 12
      const by = (density: number, modulus: number) => {
        const mass = assemble(evenNodes(n), elementMass)
        const perLength = density * width * height
        mass[2 * n]![2 * n]! += tipMass / (perLength * length)
        const square = leastEigenvalue(without(assemble(evenNodes(n), elementStiffness), [0, 1]), without(mass, [0, 1]))
        return Math.sqrt((square * ((modulus * width * height ** 3) / 12)) / (perLength * length ** 4)) / (2 * Math.PI)
      }
      expect(out.frequency.low / by(420, 5.4e9)).toBeCloseTo(1, 5)
      expect(out.frequency.high / by(310, 11e9)).toBeCloseTo(1, 5)
      expect(out.massPerLength.low / out.massPerLength.high).toBeCloseTo(310 / 420, 12)
    }
  })

  it("frequency: says that a yielding root lowers it, a sixth at ten times its stiffness", () => {
    const row = referenceRows("frame").find((r) => r.id === "root-spring-frequency")
    if (!row) throw new Error("the row is gone")
    const { stiffness_ratio } = row.inputs as { stiffness_ratio: number[] }
    const { frequency_fraction } = row.expected as { frequency_fraction: number[] }
    expect(1 - (frequency_fraction[stiffness_ratio.indexOf(10)] as number)).toBeCloseTo(1 / 6, 1)
    const { cautions } = naturalFrequency(naturalFrequency.example)
    expect(cautions.find((c) => c.code === "rigid-root")?.message).toContain("a sixth")
  })

  it("column: clamped ends say that they are counted as turning, and give the published constants", () => {
    for (const [ends, theory] of [
      ["fixed-pinned", "2.05"],
      ["fixed-fixed", "4"],
    ] as const) {
      const out = column({ ...column.example, ends })
      expect(out.endConstant).toBe(1)
      expect(out.criticalLoad).toEqual(column({ ...column.example, ends: "pinned-pinned" }).criticalLoad)
      const note = out.cautions.find((c) => c.code === "counted-as-turning")?.message
      for (const figure of ["1.2", theory]) expect(note).toContain(figure)
    }
    for (const ends of ["pinned-pinned", "fixed-free"] as const)
      expect(column({ ...column.example, ends }).cautions.map((c) => c.code)).not.toContain("counted-as-turning")
  })

  it("a strength typed in does not silence what is published: the warning stands beside the margin", () => {
    const out = beam({ ...beam.example, strength: "10 GPa" })
    expect(out.cautions.map((c) => c.code)).not.toContain("thin-margin")
    expect(out.cautions.find((c) => c.code === "strength-above-published")?.severity).toBe("warning")
  })

  it("loads too small to multiply find the same places as loads of a newton", () => {
    const curve = (load: number) =>
      beamCurve({
        length: 1,
        span: 0.8,
        stiffness: 1,
        forces: [{ force: load, position: 0.3 }],
        distributedLoads: [{ startLoad: 0, endLoad: load, start: 0.1, end: 0.7 }],
        couples: [],
      })
    for (const what of ["deflection", "moment"] as const) {
      const [one, tiny] = [curve(1).greatest(what), curve(1e-200).greatest(what)]
      expect(tiny.at).toBeCloseTo(one.at, 9)
      expect(tiny.value * 1e200).toBeCloseTo(one.value, 9)
    }
  })

  it("a beam turned end for end, and one with every load reversed, is the same beam", () => {
    const [length, span] = [0.9, 0.9]
    const base = { length, support: "simple", span, section: { secondMoment: "4000 mm4", fibre: "10 mm" }, modulus: "69 GPa" } as const
    const loads = {
      forces: [
        { force: 12, position: 0.2 },
        { force: -5, position: 0.7 },
      ],
      distributedLoads: [{ startLoad: 20, endLoad: 5, start: 0.1, end: 0.5 }],
      moments: [{ moment: 1.5, position: 0.4 }],
    }
    const out = beam({ ...base, ...loads })
    const mirrored = beam({
      ...base,
      forces: loads.forces.map((f) => ({ ...f, position: length - f.position })),
      distributedLoads: loads.distributedLoads.map((s) => ({
        startLoad: s.endLoad,
        endLoad: s.startLoad,
        start: length - s.end,
        end: length - s.start,
      })),
      moments: loads.moments.map((m) => ({ moment: -m.moment, position: length - m.position })),
    })
    const reversed = beam({
      ...base,
      forces: loads.forces.map((f) => ({ ...f, force: -f.force })),
      distributedLoads: loads.distributedLoads.map((s) => ({ ...s, startLoad: -s.startLoad, endLoad: -s.endLoad })),
      moments: loads.moments.map((m) => ({ ...m, moment: -m.moment })),
    })
    expect(mirrored.reactionStart).toBeCloseTo(out.reactionEnd as number, 9)
    for (const end of ["low", "high"] as const) expect(mirrored.maxDeflection[end]).toBeCloseTo(out.maxDeflection[end], 12)
    expect(mirrored.maxDeflectionPosition).toBeCloseTo(length - out.maxDeflectionPosition, 7)
    expect(mirrored.maxMoment).toBeCloseTo(out.maxMoment, 9)
    expect(reversed.maxDeflection.high).toBeCloseTo(-out.maxDeflection.low, 12)
    expect(reversed.maxDeflection.low).toBeCloseTo(-out.maxDeflection.high, 12)
    expect(reversed.bendingStress as number).toBeCloseTo(out.bendingStress as number, 3)
  })

  it("stresses and wall buckling do not ask which way a moment, torque or force points", () => {
    const input = { ...tubeSection.example, moment: 15, torque: 9, shearForce: 20, axialForce: 100 }
    const { twist, cautions, ...out } = tubeSection(input)
    for (const key of ["moment", "torque", "shearForce", "axialForce"] as const) {
      const { twist: turned, cautions: same, ...other } = tubeSection({ ...input, [key]: -input[key] })
      expect(other).toEqual(out)
      expect(same.map((c) => c.code)).toEqual(cautions.map((c) => c.code))
      expect(turned).toBe(key === "torque" ? -(twist as number) : twist)
    }
  })

  it("every refusal falls short by a positive amount, and what it offers answers", () => {
    for (const materialTemperature of [20, 81, 140, 200])
      for (const force of [150, 400, 9000])
        for (const handling of ["still", "stumble"] as const) {
          const input = { ...bendingRod.example, temperature: materialTemperature, force, motion: handling }
          const outcome = bendingRod.attempt(input)
          if (outcome.ok || !("noSolution" in outcome.error)) continue
          expect(outcome.error.shortBy).toBeGreaterThan(0)
          for (const [key, value] of Object.entries(outcome.error.nearest))
            expect(bendingRod.attempt({ ...input, [key]: value }).ok, key).toBe(true)
        }
    const tube = { outsideDiameter: 0.02, wall: 0.0015 }
    for (const hole of ["outer-fibre", "neutral-axis"] as const)
      for (const pinDiameter of [0.015, 0.02, 0.05, 0.1]) {
        const outcome = pinJoint.attempt({ force: 10, pinDiameter, tube, hole })
        if (outcome.ok || !("noSolution" in outcome.error)) continue
        expect(outcome.error.shortBy).toBeGreaterThan(0)
        expect(Object.keys(outcome.error.nearest)).toEqual(["pinDiameter"])
        expect(pinJoint.attempt({ force: 10, tube, hole, pinDiameter: outcome.error.nearest.pinDiameter }).ok).toBe(true)
      }
  })
})
