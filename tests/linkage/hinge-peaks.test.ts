import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { hingeSlopesAt, slackAngles } from "../../src/linkage/hinge/slopes.js"
import { hingeActuator, hingeAngleAt, hingeLengthRange, hingeStaticsAt, springAt } from "../../src/linkage/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { geometries, lengthOf, loads } from "./hinge-arms.js"
import { between } from "./uniform.js"

describe("hingeActuator's peaks", () => {
  it("peaks are those of scans of 801 poses, sharpened by scans round the best, with gusts from either side and steps", () => {
    let worst = 0
    let kinks = 0
    fc.assert(
      fc.property(
        geometries,
        loads,
        between(0.05, 0.4),
        fc.record({ loadFactor: between(1, 2.5), gustForce: fc.oneof(fc.constant(0), between(0, 20)), sideForce: between(0, 10) }),
        ({ g, share, branch }, load, part, air) => {
          const { shortest, longest } = hingeLengthRange(g)
          const stroke = part * (longest - shortest)
          const retractedLength = shortest + 0.02 * (longest - shortest) + share * (0.9 * (longest - shortest) - stroke)
          const out = hingeActuator.si({
            ...g,
            retractedLength,
            stroke,
            extension: null,
            assembly: branch === 1 ? "counter-clockwise" : "clockwise",
            masses: load.masses,
            frameTilt: load.frameTilt,
            springs: load.springs.length ? load.springs : null,
            pinFriction: 0.2,
            hingePinDiameter: load.frictionRadius,
            endPinDiameter: 0,
            ...air,
            gustRadius: 0.4,
            sideForceRadius: 0.3,
            bearingSpan: 0.05,
            holdingForce: null,
          })
          if (isNoSolution(out)) return
          if (load.springs.some((spring) => spring.pullsOnly)) kinks++
          const forces = (extension: number) => {
            const most = { raising: 0, lowering: 0, holding: 0 }
            const angle = hingeAngleAt(g, retractedLength + extension, branch) as number
            for (const loadFactor of [air.loadFactor, Math.max(0, 2 - air.loadFactor)])
              for (const way of [1, -1]) {
                const s = hingeStaticsAt(
                  g,
                  {
                    ...load,
                    frictionRadius: 0.1 * load.frictionRadius,
                    loadFactor,
                    gust: { force: way * air.gustForce, radius: 0.4 },
                    bearingLoad: (2 * air.sideForce * 0.3) / 0.05,
                  },
                  angle,
                )
                const [up, down] = branch === 1 ? [s.extendForce, s.retractForce] : [s.retractForce, s.extendForce]
                most.raising = Math.max(most.raising, Math.abs(up))
                most.lowering = Math.max(most.lowering, Math.abs(down))
                most.holding = Math.max(most.holding, Math.abs(s.force))
              }
            return most
          }
          const scan = (which: "raising" | "lowering" | "holding", from: number, to: number, poses: number, rounds: number): number => {
            let [most, where] = [0, from]
            for (let i = 0; i <= poses; i++) {
              const extension = from + ((to - from) * i) / poses
              const here = forces(extension)[which]
              if (here > most) [most, where] = [here, extension]
            }
            const step = (to - from) / poses
            return rounds === 0
              ? most
              : Math.max(most, scan(which, Math.max(0, where - step), Math.min(stroke, where + step), 40, rounds - 1))
          }
          for (const [which, said] of [
            ["raising", out.peakRaisingForce],
            ["lowering", out.peakLoweringForce],
            ["holding", out.requiredHoldingForce],
          ] as const) {
            const found = scan(which, 0, stroke, 400, 3)
            worst = Math.max(worst, Math.abs(found - said) / (found + 1))
          }
          expect(out.peakForce).toBe(Math.max(out.peakRaisingForce, out.peakLoweringForce))
          const there = forces(out.peakRaisingExtension).raising
          expect(Math.abs(there - out.peakRaisingForce) / (there + 1)).toBeLessThan(1e-6)
        },
      ),
      { numRuns: 40, seed: 7 },
    )
    expect(kinks).toBeGreaterThan(8)
    expect(worst).toBeLessThan(1e-7)
  })

  it("gives slopes that are the central differences of its forces, and the angles at which a cord goes slack", () => {
    let worst = 0
    let slack = 0
    fc.assert(
      fc.property(geometries, loads, ({ g, share, branch }, load) => {
        const angle = hingeAngleAt(g, lengthOf(g, share), branch) as number
        const at = hingeStaticsAt(g, load, angle)
        if (at.locked || Math.abs(at.lever) < 2 * load.frictionRadius || Math.abs(at.lever) < 0.02) return
        const slopes = hingeSlopesAt(g, load, angle, at)
        const step = 1e-6
        const [after, before] = [hingeStaticsAt(g, load, angle + step), hingeStaticsAt(g, load, angle - step)]
        for (const which of ["force", "extendForce", "retractForce"] as const) {
          const slope = (after[which] - before[which]) / (2 * step)
          // a jump inside the step is no slope
          if (Math.abs(after[which] - 2 * at[which] + before[which]) > 1e-5 * (1 + Math.abs(at[which]))) continue
          worst = Math.max(worst, Math.abs(slope - slopes[which]) / (1 + Math.abs(slope) + Math.abs(at[which]) / 0.01))
        }
        for (const jump of slackAngles(g, load, -3, 3)) {
          const near = load.springs.map((spring) => Math.abs(springAt(g.hinge, spring, jump).length - spring.freeLength))
          expect(Math.min(...near)).toBeLessThan(1e-9)
          slack++
        }
      }),
      { numRuns: 400, seed: 3 },
    )
    expect(worst).toBeLessThan(1e-6)
    expect(slack).toBeGreaterThan(50)
  })

  it("counts no less friction than two bearings have under a force and a couple in any direction, and at most 41 % more", () => {
    fc.assert(
      fc.property(between(0, 100), between(0, 100), between(-3, 3), (force, couple, direction) => {
        const [fx, fy] = [couple * Math.cos(direction), couple * Math.sin(direction)]
        const both = Math.hypot(force / 2 + fx, fy) + Math.hypot(force / 2 - fx, -fy)
        const counted = Math.hypot(force, 2 * couple)
        expect(counted).toBeGreaterThanOrEqual(both * (1 - 1e-12))
        expect(counted).toBeLessThanOrEqual(Math.SQRT2 * both + 1e-12)
      }),
    )
    const arm = { ...hingeActuator.example, sideForce: 5, sideForceRadius: 0.6, bearingSpan: 0.03 }
    const out = hingeActuator(arm)
    // couple 5 N · 0.6 m over 30 mm: 100 N on each bearing
    expect(out.bearingLoad).toBeCloseTo(Math.hypot(out.reaction, 200), 9)
    expect(out.frictionMoment).toBeCloseTo(0.15 * 0.004 * out.bearingLoad, 12)
    expect(hingeActuator({ ...arm, sideForce: 0 }).extendForce).toBeLessThan(out.extendForce)
  })
})
