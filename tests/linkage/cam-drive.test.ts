import { describe, expect, it } from "vitest"
import { type CamDriveInput, type CamLaw, camDrive, camDrivePicture, poseSvg, poseText } from "../../src/linkage/index.js"
import { derivative } from "./difference.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

const g = 9.80665
const LAWS: readonly CamLaw[] = ["uniform", "parabolic", "harmonic", "cycloidal", "polynomial-345", "polynomial-4567"]
const base = { lift: 0.012, riseAngle: 2, camAngle: 0.6, primeRadius: 0.06 }
const at = (input: CamDriveInput, camAngle: number) => camDrive({ ...input, camAngle })

describe("motion", () => {
  it.each(LAWS)("%s: lever arm and its slope are the derivatives of the rise, which is whole at its end", (law) => {
    const cam = { ...base, law }
    for (const angle of [0.3, 0.7, 1.3, 1.7]) {
      const out = at(cam, angle)
      const [lever] = derivative((d) => [at(cam, angle + d).displacement], 1e-4) as [number]
      const [slope] = derivative((d) => [at(cam, angle + d).lever], 1e-4) as [number]
      expect(out.lever).toBeCloseTo(lever, 10)
      expect(out.leverSlope).toBeCloseTo(slope, 9)
    }
    expect(at(cam, 0).displacement).toBe(0)
    expect(at(cam, 1).displacement).toBeCloseTo(0.006, 12)
    expect(at(cam, 2).displacement).toBeCloseTo(0.012, 12)
    // the same rise seen from its other end
    for (const angle of [0.2, 0.9]) expect(at(cam, 2 - angle).displacement).toBeCloseTo(0.012 - at(cam, angle).displacement, 12)
  })

  it("has a lever arm that stays the same under the uniform law alone", () => {
    const levers = (law: CamLaw) => [0.2, 1, 1.8].map((angle) => at({ ...base, law }, angle).lever)
    expect(levers("uniform")).toEqual([0.006, 0.006, 0.006])
    expect(new Set(levers("cycloidal").map((x) => x.toFixed(6))).size).toBe(2)
  })
})

/** Path of the roller's centre in the cam's axes, from the rise alone. */
function pathOf(cam: Required<Pick<CamDriveInput, "offset" | "primeRadius">> & CamDriveInput, angle: number): [number, number] {
  const height = Math.sqrt((cam.primeRadius as number) ** 2 - (cam.offset as number) ** 2) + at(cam, angle).displacement
  const [x, y] = [cam.offset as number, height]
  return [x * Math.cos(angle) + y * Math.sin(angle), y * Math.cos(angle) - x * Math.sin(angle)]
}

describe("shape, by the path of the roller's centre", () => {
  it("pushes along the normal of that path, and bends as three of its points do", () => {
    for (const law of ["harmonic", "cycloidal", "polynomial-4567"] as const)
      for (const offset of [-0.008, 0.008]) {
        const cam = { ...base, law, offset }
        let least = Number.POSITIVE_INFINITY
        let steepest = 0
        for (let k = 1; k < 24; k++) {
          const angle = (2 * k) / 24
          const [dx, dy] = derivative((d) => pathOf(cam, angle + d), 1e-4) as [number, number]
          // the slide in the cam's axes
          const [sx, sy] = [Math.sin(angle), Math.cos(angle)]
          const turned = Math.atan2(dx * sx + dy * sy, dx * sy - dy * sx)
          expect(at(cam, angle).pressureAngle).toBeCloseTo(turned, 7)
          steepest = Math.max(steepest, Math.abs(turned))
          const [p, q, r] = [angle - 2e-3, angle, angle + 2e-3].map((a) => pathOf(cam, a)) as [
            [number, number],
            [number, number],
            [number, number],
          ]
          const twiceArea = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
          const sides = [Math.hypot(q[0] - p[0], q[1] - p[1]), Math.hypot(r[0] - q[0], r[1] - q[1]), Math.hypot(p[0] - r[0], p[1] - r[1])]
          const radius = -((sides[0] as number) * (sides[1] as number) * (sides[2] as number)) / (2 * twiceArea)
          if (radius > 0) least = Math.min(least, radius)
        }
        const { rise } = at(cam, 1)
        // the ends of the rise are not among the places
        expect(rise.minRadius).toBeLessThanOrEqual(least * (1 + 1e-4))
        expect(rise.minRadius).toBeGreaterThan(least * 0.95)
        expect(rise.maxPressureAngle).toBeGreaterThanOrEqual(steepest - 1e-7)
        expect(rise.maxPressureAngle).toBeLessThan(steepest + 0.04)
      }
  })
})

describe("forces", () => {
  it("balances the follower as a free body in its guide, lifting and letting down", () => {
    const random = lehmer(3)
    for (let k = 0; k < 60; k++) {
      const cam = {
        ...base,
        law: LAWS[k % 6] as CamLaw,
        offset: random.real(-0.01, 0.01),
        camAngle: random.real(0.05, 1.95),
        load: random.real(0, 30),
        preload: random.real(0, 5),
        springRate: random.real(0, 500),
        followerMass: random.real(0, 0.5),
        camSpeed: random.real(0, 5),
        guideFriction: random.real(0, 0.4),
        guideLength: random.real(0.02, 0.06),
        overhang: random.real(0, 0.03),
      }
      const out = camDrive(cam)
      const force = cam.load + cam.preload + cam.springRate * out.displacement + cam.followerMass * (g + out.leverSlope * cam.camSpeed ** 2)
      expect(out.followerForce).toBeCloseTo(force, 10)
      // side force N at the roller; guide reactions by moments about either end
      for (const [moment, way] of [
        [out.risingEffort, 1],
        [out.returningEffort, -1],
      ] as const) {
        const along = out.lever === 0 ? 0 : moment / out.lever
        const side = Math.abs(along * Math.tan(out.pressureAngle))
        const near = (side * (cam.guideLength + cam.overhang)) / cam.guideLength
        const far = (side * cam.overhang) / cam.guideLength
        expect(along - way * cam.guideFriction * (near + far)).toBeCloseTo(force, 9)
      }
      expect(out.effort).toBeCloseTo(force * out.lever, 12)
      expect(out.contactForce * Math.cos(out.pressureAngle) * out.lever).toBeCloseTo(out.risingEffort, 10)
      expect(out.contactForce * Math.sin(out.pressureAngle)).toBeCloseTo(out.sideForce, 10)
      // moment of the contact force about the cam centre
      const height = Math.sqrt(cam.primeRadius ** 2 - cam.offset ** 2) + out.displacement
      const arm = cam.offset * Math.cos(out.pressureAngle) + height * Math.sin(out.pressureAngle)
      expect(out.contactForce * arm).toBeCloseTo(out.risingEffort, 10)
      expect(out.inertia).toBeCloseTo(cam.followerMass * out.lever ** 2, 14)
      expect(out.inertiaSlope).toBeCloseTo(2 * cam.followerMass * out.lever * out.leverSlope, 14)
      expect([out.speed, out.acceleration]).toEqual([out.lever * cam.camSpeed, out.leverSlope * cam.camSpeed ** 2])
    }
  })

  it("gives out as work what lifting took, less what the guide took both ways", () => {
    const cam = { ...base, load: 10, springRate: 300, guideFriction: 0.2, overhang: 0.02 }
    let [up, down, lost, most] = [0, 0, 0, 0]
    for (let k = 0; k < 100; k++) {
      const out = at(cam, (2 * (k + 0.5)) / 100)
      up += out.risingEffort / 50
      down += out.returningEffort / 50
      lost += (out.risingEffort - out.effort + out.effort - out.returningEffort) / 50
      most = Math.max(most, out.risingEffort)
    }
    expect((10 * 0.012 + (300 * 0.012 ** 2) / 2) / ((up + down) / 2)).toBeGreaterThan(0.98)
    expect(up - down).toBeCloseTo(lost, 12)
    expect(up).toBeGreaterThan(10 * 0.012 + (300 * 0.012 ** 2) / 2)
    expect(at(cam, 1).rise.maxEffort).toBeCloseTo(most, 3)
  })

  it("mirrors: an offset to the one side rising is an offset to the other side in a cam turned the other way", () => {
    // the return of a mirrored cam is this rise run backward: same lever arm, pressure angle by the offset's side
    const [one, other] = [at({ ...base, offset: 0.01 }, 1), at({ ...base, offset: -0.01 }, 1)]
    expect(other.lever).toBe(one.lever)
    const height = Math.sqrt(0.06 ** 2 - 0.01 ** 2) + 0.006
    expect(Math.tan(one.pressureAngle)).toBeCloseTo((one.lever - 0.01) / height, 12)
    expect(Math.tan(other.pressureAngle)).toBeCloseTo((one.lever + 0.01) / height, 12)
  })
})

it("refuses a roller too large for its path and a guide that takes the whole push, and names what would do", () => {
  const sharp = { ...base, lift: 0.05, riseAngle: 1.2, primeRadius: 0.05, rollerRadius: 0.045 }
  const cut = refusalOf(camDrive.attempt(sharp))
  expect(cut.noSolution).toBe("undercut")
  expect(camDrive.attempt({ ...sharp, ...cut.nearest }).ok).toBe(true)
  const stuck = { ...base, lift: 0.03, primeRadius: 0.03, guideFriction: 0.9, overhang: 0.05 }
  const jam = refusalOf(camDrive.attempt(stuck))
  expect(jam.noSolution).toBe("jammed")
  expect(camDrive.attempt({ ...stuck, ...jam.nearest }).ok).toBe(true)
})

it("draws the cam touching its roller", () => {
  const si = camDrive.read(camDrive.example)
  const picture = camDrivePicture(si)
  const [cam, roller] = picture.lines
  const middle = { x: si.offset, y: Math.sqrt(si.primeRadius ** 2 - si.offset ** 2) + camDrive(camDrive.example).displacement }
  const gaps = (cam?.points ?? []).map((p) => Math.hypot(p.x - middle.x, p.y - middle.y))
  expect(Math.min(...gaps)).toBeCloseTo(si.rollerRadius, 6)
  expect(roller?.points).toHaveLength(33)
  expect(poseSvg(picture)).toContain("Cam and follower")
  expect(poseText(picture)).toContain("~")
})
