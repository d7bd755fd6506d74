import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type ChainDriveInput, chainDrive, drawChainDrive } from "../../src/drive/index.js"

const near = (a: number | null, b: number, size = Math.abs(b), within = 1e-9) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(within * size + 1e-12)
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 29, numRuns: 80 }
const drives = fc.record({
  pitch: between(0.004, 0.02),
  drivingTeeth: fc.integer({ min: 9, max: 40 }),
  drivenTeeth: fc.integer({ min: 9, max: 80 }),
  apart: between(30, 80),
  torque: between(-40, 60),
  inputSpeed: between(0.5, 60),
  shockFactor: between(1, 2),
  linearDensity: between(0, 1),
  breakingForce: between(1000, 20000),
  efficiency: between(0.8, 1),
  backwardEfficiency: between(0.7, 1),
})
const solved = ({ apart, ...rest }: Omit<ChainDriveInput, "centreDistance"> & { readonly apart: number; readonly pitch: number }) =>
  chainDrive({ ...rest, centreDistance: apart * rest.pitch })

/**
 * A sprocket as the polygon of its pins, turned in small steps: the pin that has last come on carries the tight strand, which runs
 * level; the strand's lever about the shaft at each step.
 */
function levers(pitch: number, teeth: number, steps = 20_000): number[] {
  const radius = pitch / 2 / Math.sin(Math.PI / teeth)
  const angle = (2 * Math.PI) / teeth
  // each pin is at its highest in the middle of its turn
  return Array.from({ length: steps + 1 }, (_, k) => radius * Math.cos(-angle / 2 + (angle * k) / steps))
}

describe("chainDrive", () => {
  it("takes as many links as its exact run over both pitch polygons, within a tenth, and fits where it says", () => {
    fc.assert(
      fc.property(drives, (raw) => {
        const out = solved(raw)
        const [r1, r2, c] = [out.drivingDiameter / 2, out.drivenDiameter / 2, raw.apart * raw.pitch]
        // straight strands square to both radii, and the teeth that lie under the wrap
        const strand = Math.sqrt(c ** 2 - (r2 - r1) ** 2)
        const lean = Math.atan2(r2 - r1, strand)
        const links = (2 * strand) / raw.pitch + raw.drivingTeeth * (0.5 - lean / Math.PI) + raw.drivenTeeth * (0.5 + lean / Math.PI)
        expect(Math.abs(out.exactLinks - links)).toBeLessThan(0.1)
        near(out.smallWrap, Math.PI - 2 * Math.abs(lean))
        expect(out.links % 2).toBe(0)
        expect(out.links - out.exactLinks).toBeGreaterThan(-1e-6)
        expect(out.links - out.exactLinks).toBeLessThan(2)
        near(solved({ ...raw, apart: out.fittingDistance / raw.pitch }).exactLinks, out.links)
      }),
      seeded,
    )
  })

  it("runs as unevenly, and pulls as hard, as the polygons of its sprockets make it", () => {
    fc.assert(
      fc.property(drives, (raw) => {
        const out = solved(raw)
        const [a, b] = [levers(raw.pitch, raw.drivingTeeth), levers(raw.pitch, raw.drivenTeeth)]
        const mean = a.slice(1).reduce((sum, r, k) => sum + (r + (a[k] as number)) / 2, 0) / (a.length - 1)
        near(out.speedRipple, (Math.max(...a) - Math.min(...a)) / mean, 1, 1e-7)
        near(out.chainSpeed, mean * raw.inputSpeed, mean * raw.inputSpeed, 1e-6)
        near(out.peakPull, Math.abs(raw.torque) / Math.min(...b))
        near(out.workingTension, out.shaftForce + raw.linearDensity * (out.chainSpeed as number) ** 2)
        near(out.shaftForce, (raw.shockFactor * Math.abs(raw.torque)) / Math.min(...b))
        if (out.safetyFactor !== null) near(out.safetyFactor * out.workingTension, raw.breakingForce)
      }),
      { ...seeded, numRuns: 25 },
    )
  })

  it("puts as much in as comes out and is lost, with the load against it and driving", () => {
    const met = [0, 0]
    fc.assert(
      fc.property(drives, (raw) => {
        const out = solved(raw)
        // work as force along the chain: the mean pull along its mean way
        const carried = out.pull * (out.chainSpeed as number)
        const lost = raw.torque >= 0 ? carried / raw.efficiency - carried : carried - carried * raw.backwardEfficiency
        near(out.outputPower, Math.sign(raw.torque) * carried)
        near(out.heat, lost, carried)
        near(out.inputPower, (out.outputPower as number) + lost, carried)
        near(out.inputPower, out.inputTorque * raw.inputSpeed, carried)
        near(out.returnTorque, solved({ ...raw, torque: -raw.torque }).inputTorque)
        near(out.outputSpeed, (raw.inputSpeed * raw.drivingTeeth) / raw.drivenTeeth)
        expect(out.transmits).toBe("both-ways")
        const sense = raw.torque < 0 ? 0 : 1
        met[sense] = (met[sense] as number) + 1
      }),
      seeded,
    )
    expect(Math.min(...met)).toBeGreaterThan(20)
  })

  it("judges no strength without a breaking force, nor where next to nothing pulls", () => {
    const { breakingForce: _, ...bare } = chainDrive.example
    expect(chainDrive(bare).safetyFactor).toBeNull()
    expect(chainDrive({ ...chainDrive.example, torque: 0, inputSpeed: 0 }).safetyFactor).toBeNull()
  })

  it("is drawn at the distance that fits", () => {
    const picture = drawChainDrive(chainDrive.read(chainDrive.example))
    const centres = [...picture.matchAll(/<circle[^>]*cx="([\d.]+)"[^>]*stroke/g)].map((m) => Number(m[1]))
    const out = chainDrive(chainDrive.example)
    const scale = 500 / (out.fittingDistance + (out.drivingDiameter + out.drivenDiameter) / 2)
    near((centres[1] as number) - (centres[0] as number), out.fittingDistance * scale, 1, 0.2)
    expect(picture).toContain("Chain drive")
  })
})
