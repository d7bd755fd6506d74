import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type BeltDriveInput, beltDrive, drawBeltDrive } from "../../src/drive/index.js"
import { integrate } from "../../src/numeric/index.js"

const near = (a: number | null, b: number, size = Math.abs(b), within = 1e-9) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(within * size + 1e-12)
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 23, numRuns: 60 }

const onFriction = { drivingDiameter: between(0.01, 0.2), drivenDiameter: between(0.01, 0.2), friction: between(0.1, 0.6) }
const belts = fc.oneof(
  fc.record({ type: fc.constant("flat" as const), ...onFriction, crossed: fc.boolean() }),
  fc.record({ type: fc.constant("v" as const), ...onFriction, grooveAngle: between(0.5, 1.2) }),
  fc.record({ type: fc.constant("round" as const), ...onFriction, grooveAngle: between(0.6, Math.PI), crossed: fc.boolean() }),
  fc.record({
    type: fc.constant("toothed" as const),
    pitch: between(0.002, 0.005),
    drivingTeeth: fc.integer({ min: 8, max: 60 }),
    drivenTeeth: fc.integer({ min: 8, max: 60 }),
  }),
)
const drives = fc.record({
  belt: belts,
  centreDistance: between(0.21, 0.8),
  pretension: between(50, 300),
  inputSpeed: between(1, 300),
  linearDensity: between(0, 0.05),
  efficiency: between(0.8, 1),
  backwardEfficiency: between(0.7, 1),
  creep: between(0, 0.03),
  /** Part of the torque that it carries at most, signed. */
  part: between(-0.99, 0.99),
})
/** The drive with a torque that it carries. */
function loaded({ part, ...rest }: { part: number } & Omit<BeltDriveInput, "torque">): BeltDriveInput {
  return { ...rest, torque: part * beltDrive({ ...rest, torque: 0 }).maxTorque }
}
const radii = (belt: BeltDriveInput["belt"]): readonly [number, number] =>
  belt.type === "toothed"
    ? [((belt.pitch as number) * belt.drivingTeeth) / (2 * Math.PI), ((belt.pitch as number) * belt.drivenTeeth) / (2 * Math.PI)]
    : [(belt.drivingDiameter as number) / 2, (belt.drivenDiameter as number) / 2]

/** Corners of a fine polygon on a circle. */
const ring = (x: number, r: number, corners: number) =>
  Array.from(
    { length: corners },
    (_, k) => [x + r * Math.cos((2 * Math.PI * k) / corners), r * Math.sin((2 * Math.PI * k) / corners)] as const,
  )
/** Length of a thread drawn tight round points: the rim of their convex hull. */
function hull(points: readonly (readonly [number, number])[]): number {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (list: typeof sorted) => {
    const chain: (readonly [number, number])[] = []
    for (const p of list) {
      while (chain.length > 1) {
        const [a, b] = [chain.at(-2), chain.at(-1)] as [readonly [number, number], readonly [number, number]]
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break
        chain.pop()
      }
      chain.push(p)
    }
    return chain.slice(1).reduce((sum, p, k) => sum + Math.hypot(p[0] - (chain[k]?.[0] as number), p[1] - (chain[k]?.[1] as number)), 0)
  }
  return half(sorted) + half(sorted.reverse())
}

describe("beltDrive", () => {
  it("is as long as a thread drawn tight round both pulleys, and fits where it says", () => {
    fc.assert(
      fc.property(drives, (raw) => {
        const { part: _, ...drive } = raw
        const out = beltDrive({ ...drive, torque: 0 })
        const [r1, r2] = radii(raw.belt)
        if (!out.reverses) near(out.length, hull([...ring(0, r1, 3000), ...ring(raw.centreDistance, r2, 3000)]), out.length, 2e-6)
        else {
          // crossed: each strand is the leg of a right triangle over both radii, seen from the middle of one pulley
          const strand = Math.sqrt(raw.centreDistance ** 2 - (r1 + r2) ** 2)
          const wrap = 2 * Math.PI - 2 * Math.atan2(strand, r1 + r2)
          near(out.length, 2 * strand + (r1 + r2) * wrap)
          near(out.drivingWrap, wrap)
        }
        if (raw.belt.type !== "toothed") return
        const belt = raw.belt
        const there = beltDrive({ belt, centreDistance: out.fittingDistance as number, pretension: 1, torque: 0 })
        near(there.length, (out.beltTeeth as number) * (belt.pitch as number))
        expect((out.beltTeeth as number) * (belt.pitch as number) - out.length).toBeLessThan(belt.pitch as number)
        expect(out.fittingDistance).toBeGreaterThanOrEqual(raw.centreDistance * (1 - 1e-9))
        near(out.teethInMesh, Math.min(belt.drivingTeeth * out.drivingWrap, belt.drivenTeeth * out.drivenWrap) / (2 * Math.PI), 100, 1)
      }),
      seeded,
    )
  })

  it("slips where small pieces of belt slip, one after the other round the smaller wrap", () => {
    fc.assert(
      fc.property(drives, (raw) => {
        const { belt, part: _, ...rest } = raw
        if (belt.type === "toothed") return
        const out = beltDrive({ ...rest, belt, torque: 0 })
        const wrap = Math.min(out.drivingWrap, out.drivenWrap)
        const [pieces, v] = [4000, out.beltSpeed as number]
        const step = wrap / pieces
        // two flanks press with N/(2·sin(β/2)) each
        const flanks = belt.type === "flat" ? 1 : 1 / Math.sin((belt.grooveAngle as number) / 2)
        const tightFrom = (slack: number) => {
          let tension = slack
          for (let k = 0; k < pieces; k++) {
            const pressing = (t: number) => (t - raw.linearDensity * v ** 2) * step
            const mid = tension + ((belt.friction as number) * flanks * pressing(tension)) / 2
            tension += (belt.friction as number) * flanks * pressing(mid)
          }
          return tension
        }
        // the slack strand that keeps the sum of both: the march is linear in it
        const off = raw.linearDensity * v ** 2
        if (raw.pretension <= off) return near(out.maxPull, 0)
        const gain = (tightFrom(off + 1) - off) / 1
        const slack = off + (2 * (raw.pretension - off)) / (1 + gain)
        near(out.maxPull, tightFrom(slack) - slack, out.maxPull, 2e-6)
      }),
      seeded,
    )
  })

  it("loads each shaft as its belt presses on the pulley, piece by piece", () => {
    fc.assert(
      fc.property(drives, (raw) => {
        const input = loaded(raw)
        const out = beltDrive(input)
        const [tight, slack] = [out.tightTension - out.centrifugalTension, out.slackTension - out.centrifugalTension]
        if (slack < 0) return
        for (const wrap of [out.drivingWrap, out.drivenWrap]) {
          // the tension goes over from strand to strand in any way: the shaft feels the same
          const tension = (a: number) => slack + (tight - slack) * (a / wrap) ** 2
          const rate = (a: number) => (2 * (tight - slack) * a) / wrap ** 2
          const part = (f: (a: number) => number) => integrate(f, 0, wrap, 1e-12).value
          const x = part((a) => tension(a) * Math.cos(a) + rate(a) * Math.sin(a))
          const y = part((a) => tension(a) * Math.sin(a) - rate(a) * Math.cos(a))
          near(out.shaftForce, Math.hypot(x, y), tight + slack)
        }
        near(out.tightTension + out.slackTension, 2 * raw.pretension)
      }),
      seeded,
    )
  })

  it("puts as much in as comes out and is lost, with the load against it and driving", () => {
    const met = [0, 0]
    fc.assert(
      fc.property(drives, (raw) => {
        const input = loaded(raw)
        const out = beltDrive(input)
        const torque = input.torque as number
        const [r1, r2] = radii(raw.belt)
        // bending and bearings take a share of the belt's power, creep its own share of the speed
        const carried = (Math.abs(torque) / r2) * (raw.inputSpeed * r1)
        const bending = torque >= 0 ? carried / raw.efficiency - carried : carried - carried * raw.backwardEfficiency
        const creeping = torque >= 0 ? carried * raw.creep : (carried * raw.creep) / (1 - raw.creep)
        near(out.heat, bending + creeping, carried)
        near(out.inputPower, (out.outputPower as number) + (out.heat as number), carried)
        near(out.inputPower, out.inputTorque * raw.inputSpeed, carried)
        near(out.outputPower, torque * (out.outputSpeed as number), carried)
        // reversed, the same load drives where it was against the motion
        near(out.returnTorque, beltDrive({ ...input, torque: -torque }).inputTorque)
        expect(out.heat).toBeGreaterThanOrEqual(-1e-12 * carried)
        const sense = torque < 0 ? 0 : 1
        met[sense] = (met[sense] as number) + 1
        expect(out.transmits).toBe("both-ways")
      }),
      seeded,
    )
    expect(Math.min(...met)).toBeGreaterThan(15)
  })

  it("carries its largest torque and no more, at the pretension that it says is needed", () => {
    fc.assert(
      fc.property(drives, (raw) => {
        const input = loaded(raw)
        const out = beltDrive(input)
        if (Math.abs(input.torque as number) < 1e-6) return
        const just = beltDrive({ ...input, pretension: out.requiredPretension * (1 + 1e-9) })
        near(just.utilisation, 1, 1, 1e-5)
        near(just.slipMargin, 0, just.pull, 1e-5)
        expect(beltDrive.attempt({ ...input, pretension: out.requiredPretension * (1 - 1e-6) }).ok).toBe(false)
      }),
      seeded,
    )
  })

  it("draws its strands square to the pulleys that they leave, open and crossed", () => {
    for (const crossed of [false, true]) {
      const si = beltDrive.read({
        belt: { type: "flat", drivingDiameter: 0.05, drivenDiameter: 0.12, crossed },
        centreDistance: 0.3,
        pretension: 50,
        torque: 0.5,
      })
      const picture = drawBeltDrive(si) as string
      const scale = 500 / (0.3 + 0.025 + 0.06)
      const circles = [...picture.matchAll(/<circle[^>]*cx="([\d.]+)"[^>]*cy="([\d.]+)"[^>]*r="([\d.]+)"[^>]*stroke/g)].map((m) =>
        m.slice(1).map(Number),
      )
      const strands = [...picture.matchAll(/<path[^>]*d="M([\d.]+)[ ,]([\d.]+) ?L([\d.]+)[ ,]([\d.]+)"/g)].map((m) =>
        m.slice(1).map(Number),
      )
      expect([circles.length, strands.length]).toEqual([2, 2])
      for (const [x0, y0, x1, y1] of strands as [number, number, number, number][]) {
        const length = Math.hypot(x1 - x0, y1 - y0)
        for (const [cx, cy, r] of circles as [number, number, number][])
          expect(Math.abs(Math.abs((cx - x0) * (y1 - y0) - (cy - y0) * (x1 - x0)) / length - r)).toBeLessThan(0.2)
        // open strands stay on their side of the shafts, crossed ones change it
        const [a, b] = [Math.sign(y0 - (circles[0]?.[1] as number)), Math.sign(y1 - (circles[0]?.[1] as number))]
        expect(a * b).toBe(crossed ? -1 : 1)
      }
      expect(Math.abs((circles[1]?.[2] as number) - 0.06 * scale)).toBeLessThan(0.1)
    }
    expect(drawBeltDrive(beltDrive.read({ ...beltDrive.example, torque: 50 }))).toBeNull()
  })
})
