import { describe, expect, it } from "vitest"
import { type ScissorInput, scissor } from "../../src/linkage/index.js"
import { brent } from "../../src/numeric/index.js"
import { derivative } from "./difference.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

const G = 9.80665

/** Potential energy of the array by summing joints and arms one by one, the still joint as origin. */
function energy(
  si: Required<Pick<ScissorInput, "cells">> & Readonly<Record<"arm" | "tilt" | "tip" | "arms" | "push" | "side", number>>,
  t: number,
): number {
  const [rise, spread] = [si.arm * Math.sin(t), si.arm * Math.cos(t)]
  const height = (u: number) => u * rise * Math.sin(si.tilt) + (si.side * spread * Math.cos(si.tilt)) / 2
  let u = si.tip * height(si.cells) + si.push * si.cells * rise
  for (let i = 0; i < si.cells; i++) u += (si.arms / si.cells) * height(i + 0.5)
  return u
}

describe("scissor (its joints are held to planarLinkage in planar-linkage.test.ts)", () => {
  it("has force and torque equal to the slope of the energy, and peaks found by brute force", () => {
    const random = lehmer(23)
    let [worst, worstPeak] = [0, 0]
    for (let k = 0; k < 90; k++) {
      const side = ([0, 1, -1] as const)[k % 3] as number
      const fixedJoint = (["centre", "lower", "upper"] as const)[k % 3] as "centre"
      const [t0, t1] = [random.real(0.05, 0.7), random.real(0.75, 1.5)]
      const s = {
        cells: 1 + (k % 9),
        arm: random.real(0.02, 0.5),
        tilt: random.real(-Math.PI / 2, Math.PI / 2),
        tip: random.real(0, 20),
        arms: random.real(0, 20),
        push: random.real(-20, 20),
        side,
      }
      const out = scissor({
        cells: s.cells,
        armLength: s.arm,
        foldedAngle: t0,
        extendedAngle: t1,
        tilt: s.tilt,
        fixedJoint,
        tipMass: s.tip / G,
        armsMass: s.arms / G,
        push: s.push,
      })
      const torque = (t: number) => derivative((h) => [energy(s, t + h)], 1e-4)[0] as number
      const force = (t: number) => torque(t) / (s.arm * Math.sin(t))
      const scale = 1 + out.peakForce
      worst = Math.max(
        worst,
        Math.abs(out.forceFolded - force(t0)) / scale,
        Math.abs(out.forceExtended - force(t1)) / scale,
        Math.abs(out.torqueFolded - torque(t0)) / scale,
        Math.abs(out.torqueExtended - torque(t1)) / scale,
      )
      const grid = Array.from({ length: 101 }, (_, i) => t0 + ((t1 - t0) * i) / 100)
      const [peakForce, peakTorque] = [Math.max(...grid.map((t) => Math.abs(force(t)))), Math.max(...grid.map((t) => Math.abs(torque(t))))]
      worstPeak = Math.max(
        worstPeak,
        Math.abs(out.peakForce - peakForce) / (1 + peakForce),
        Math.abs(out.peakTorque - peakTorque) / (1 + peakTorque),
      )
      // never below what the scan finds
      expect(out.peakTorque).toBeGreaterThan(peakTorque - 1e-8 * scale)
    }
    expect(worst).toBeLessThan(1e-8)
    expect(worstPeak).toBeLessThan(2e-5)
  })

  it("adds up droop cell by cell, and sag by the driver's give", () => {
    const out = scissor({
      cells: 5,
      armLength: 0.2,
      foldedAngle: 0.4,
      extendedAngle: 1.1,
      tipMass: 1,
      armsMass: 0.5,
      screwLead: 0.002,
      screwEfficiency: 0.4,
      driverStiffness: 1e5,
      pinPlay: 2e-4,
    })
    const [cell, spread] = [0.2 * Math.sin(1.1), 0.2 * Math.cos(1.1)]
    const droop = [5, 4, 3, 2, 1].reduce((sum, cells) => sum + (2e-4 / spread) * cells * cell, 0)
    expect(out.droop).toBeCloseTo(droop, 14)
    // the tip's span where driver spring and load come to rest, with a driver stiff enough for a first-order figure
    for (const stiffness of [1e6, 1e7, 1e8]) {
      const stiff = scissor({
        cells: 5,
        armLength: 0.2,
        foldedAngle: 0.4,
        extendedAngle: 1.1,
        tipMass: 1,
        armsMass: 0.5,
        driverStiffness: stiffness,
      })
      const pull = (angle: number) => (1.25 * G * 5) / Math.tan(angle)
      const rest = brent((angle) => stiffness * 0.2 * (Math.cos(angle) - Math.cos(0.4)) - pull(angle), 0.3, 0.4)
      const sag = stiff.spanFolded - 5 * 0.2 * Math.sin(rest?.x as number)
      expect(Math.abs((stiff.sagFolded as number) / sag - 1)).toBeLessThan(0.02 * (1e6 / stiffness) + 1e-5)
    }
    expect(
      scissor({ cells: 5, armLength: 0.2, foldedAngle: 0.4, extendedAngle: 1.1, tipMass: 1, driverStiffness: 1e4 }).cautions.map(
        (c) => c.code,
      ),
    ).toContain("soft-driver")
    expect(out.rootForce).toBeCloseTo(0, 12)
    // work of the screw against work on the load, an eighth of a turn at a time
    expect((out.screwTorque as number) * 2 * Math.PI * 0.4).toBeCloseTo(out.peakForce * 0.002, 12)
    expect(out.screwTurns).toBeCloseTo((out.spreadFolded - out.spreadExtended) / 0.002, 9)
  })

  it("stalls by name and offers a starting angle that works", () => {
    const input = {
      cells: 6,
      armLength: 0.16,
      foldedAngle: 0.2,
      extendedAngle: 1.1,
      tilt: 0.5,
      tipMass: 0.5,
      armsMass: 0.4,
      fixedJoint: "lower",
      driverForce: 30,
    } as const
    const refusal = refusalOf(scissor.attempt(input))
    expect(refusal.noSolution).toBe("insufficient-force")
    const { driverForce: _, ...free } = input
    expect(refusal.shortBy).toBeCloseTo(scissor(free).peakForce - 30, 9)
    const works = scissor({ ...input, foldedAngle: (refusal.nearest.foldedAngle as number) * (1 + 1e-12) })
    expect(works.peakForce).toBeCloseTo(30, 6)
  })

  it("warns of pinching, falling and a screw that runs back", () => {
    const codes = scissor({
      cells: 6,
      armLength: 0.16,
      foldedAngle: 0.2,
      extendedAngle: 1,
      tipMass: 1,
      screwLead: 0.02,
      screwEfficiency: 0.8,
    }).cautions.map((c) => c.code)
    expect(codes).toEqual(["pinch", "falls-unpowered", "flat-scissor", "thin-holding-margin"])
    const screw = (screwEfficiency: number) =>
      scissor({ cells: 3, armLength: 0.16, foldedAngle: 0.5, extendedAngle: 1, tipMass: 1, screwLead: 0.02, screwEfficiency })
        .cautions.filter((c) => c.code === "thin-holding-margin")
        .map((c) => /small margin/.test(c.message))
    expect([screw(0.39), screw(0.45), screw(0.5)]).toEqual([[], [true], [false]])
  })
})
