// Flaps and scissor arrays of version 1 brought to version 2: the first edition's numbers, and models that share nothing with either.
import { describe, expect, it } from "vitest"
import { type HobbyServoInput, hobbyServo } from "../../src/drive/index.js"
import { type ScissorInput, type ServoPushrodInput, scissor, servoPushrod } from "../../src/linkage/index.js"
import { si } from "../../src/quantity/index.js"
import { assessRig, move, type Rig, rigWith } from "../../src/rig/index.js"
import type { Mechanism } from "../../src/rig/mechanisms/mechanism.js"
import { pushrod } from "../../src/rig/mechanisms/pushrod.js"
import { fromVersion1 } from "../../src/rig/whole/migrate.js"
import { demo } from "../helpers/rigs.js"
import { randomNumbers } from "./mechanisms/draw.js"
import { stateAt } from "./mechanisms/second-route.js"

/** Flaps as a document of version 1 states them. */
interface Flaps {
  readonly linkage: ServoPushrodInput
  readonly servo: Omit<HobbyServoInput, "terminalVoltage" | "torque" | "angle">
  readonly voltage: HobbyServoInput["terminalVoltage"]
}

const g = 9.80665
const degree = Math.PI / 180
const brought = (document: object) => fromVersion1(document as Record<string, unknown>)
const rigOf = (document: object) => rigWith().read(document)

/** Simpson's rule. */
function integral(f: (x: number) => number, from: number, to: number, n = 400): number {
  const h = (to - from) / n
  let sum = f(from) + f(to)
  for (let i = 1; i < n; i++) sum += (i % 2 ? 4 : 2) * f(from + i * h)
  return (sum * h) / 3
}

/** A flap's angle from neutral over the servo's, by where two circles meet. */
function flapAngle(d: number, a: number, c: number): (servo: number) => number {
  const neutral = [0, a] as const
  const rod = Math.hypot(d - neutral[0], c - neutral[1])
  return (servo) => {
    const p = [a * Math.cos(Math.PI / 2 + servo), a * Math.sin(Math.PI / 2 + servo)] as const
    const [ex, ey] = [d - p[0], -p[1]]
    const apart = Math.hypot(ex, ey)
    const along = (apart ** 2 + rod ** 2 - c ** 2) / (2 * apart)
    const off = Math.sqrt(rod ** 2 - along ** 2)
    const pins = [1, -1].map((s) => [p[0] + (along * ex - s * off * ey) / apart - d, p[1] + (along * ey + s * off * ex) / apart] as const)
    // both horns stand upright at neutral: the pin stays above the line of shaft and hinge
    const [x, y] = pins.reduce((one, other) => (other[1] > one[1] ? other : one))
    return Math.atan2(y, x) - Math.PI / 2
  }
}

describe("the flapping collar of version 1", () => {
  const document = demo("ember-lizard-collar")
  const flaps = document.flaps as Flaps
  const rig = rigOf(document)
  const answer = move(rig)
  const phi = flapAngle(0.07, 0.014, 0.02)
  // a steady 20 mN·m and the flap's weight at 90 mm, brought to the servo by the slope of the flap's angle
  const torque = (servo: number) => (0.02 + 0.045 * g * 0.09 * Math.cos(phi(servo))) * ((phi(servo + 1e-4) - phi(servo - 1e-4)) / 2e-4)
  const kgfcm = g / 100
  // the datasheet's straight lines between 4.8 V and 6 V, at the 5 V of the converter
  const stall = (9 + (11 - 9) * (0.2 / 1.2)) * kgfcm
  const free = (60 * degree) / 0.2 + (((60 * degree) / 0.16 - (60 * degree) / 0.2) * 0.2) / 1.2

  it("asks of each servo what the first edition's linkage asks, and what two circles and the flap's weight do", () => {
    const before = servoPushrod(flaps.linkage)
    // the crest is flat: places a millionth of a turn apart stand for it
    expect(answer.out.peakTorque).toBeCloseTo(before.peakTorque, 8)
    for (const p of answer.out.curve) expect(p.torque).toBeCloseTo(torque(-40 * degree + (p.turned as number)), 7)
  })
  it("swings as far", () => {
    const before = servoPushrod(flaps.linkage)
    const angles = answer.out.curve.map((p) => p.angle as number)
    expect(Math.max(...angles) - Math.min(...angles)).toBeCloseTo(before.flapSwing, 9)
    expect(Math.max(...angles) - Math.min(...angles)).toBeCloseTo(phi(40 * degree) - phi(-40 * degree), 9)
  })
  it("takes the time of the servo's own line, and between the first edition's times without and with the worst torque", () => {
    const time = integral((x) => 1 / (free * (1 - torque(x) / stall)), -40 * degree, 40 * degree)
    expect(answer.outDuration / time).toBeCloseTo(1, 7)
    const servo = (load: number) =>
      hobbyServo({ ...flaps.servo, terminalVoltage: flaps.voltage, torque: load, angle: "80 deg" }).moveDuration as number
    expect(answer.outDuration).toBeGreaterThan(servo(0))
    expect(answer.outDuration).toBeLessThan(servo(servoPushrod(flaps.linkage).peakTorque))
    // on the way back the flap's weight helps, and helps a servo that takes nothing back no further than to run free
    expect(answer.backDuration).toBeCloseTo((80 * degree) / free, 9)
  })
  it("has the flap's inertia about its hinge by its radius of gyration", () => {
    const part = move.read(rig).motions[0]?.mechanisms[0] as Parameters<typeof pushrod.build>[0]
    const mechanism = pushrod.build(part) as Mechanism
    const slope = (phi(1e-4) - phi(-1e-4)) / 2e-4
    expect(stateAt(mechanism, 0).inertia).toBeCloseTo(0.045 * 0.11 ** 2 * slope ** 2, 10)
    expect(mechanism.pose(0).mass).toBeCloseTo(0.045, 12)
  })
  it("says what it left, what to look at, and which limit of current it took", () => {
    expect(rig.note).toContain("flaps.voltage")
    expect(rig.note).toContain("take out of the parts")
    expect(rig.power?.buses[0]?.converter?.outputCurrentLimit).toBe("8 A")
    // 9 W all day had the 6 W of the lights in it
    expect(rig.power?.loads).toContainEqual({ type: "constant-power", name: "standing power", bus: "line", power: 3 })
  })
  it("is assessed: its time and effort told, no promise beside so much inertia, and coming down without power", () => {
    const { findings } = assessRig(rig)
    const of = (id: string) => findings.find((f) => f.id === id && f.subject === "flaps")
    expect(of("duration-out")?.value).toBeCloseTo(answer.outDuration, 8)
    expect((of("rated-effort")?.value as number) / servoPushrod(flaps.linkage).peakTorque).toBeCloseTo(1, 2)
    expect(of("rated-effort")).toMatchObject({ verdict: "cannot be judged", because: "inertia: flaps" })
    expect(of("inertia")?.verdict).toBe("cannot be judged")
    expect(of("holds-unpowered")?.verdict).toBe("falls short")
  })
})

describe("flaps of any make", () => {
  const between = (random: () => number, low: number, high: number) => low + (high - low) * random()
  it("ask at every place what the first edition's linkage asks there: 12 drawn", () => {
    const random = randomNumbers(17)
    let seen = 0
    for (let i = 0; i < 40 && seen < 12; i++) {
      const linkage = {
        pivotDistance: between(random, 0.05, 0.12),
        servoHorn: between(random, 0.008, 0.016),
        flapHorn: between(random, 0.02, 0.035),
        servoHornAngle: between(random, 70, 110) * degree,
        flapHornAngle: between(random, 70, 110) * degree,
        minServoAngle: -between(random, 5, 40) * degree,
        maxServoAngle: between(random, 5, 40) * degree,
        hingeMoment: between(random, -0.02, 0.05),
        flapMass: between(random, 0.01, 0.1),
        flapCentre: between(random, 0.02, 0.15),
        flapLevel: between(random, -60, 60) * degree,
      }
      if (!servoPushrod.attempt(linkage).ok) continue
      const servo = { firstVoltage: 6, firstStallTorque: 3, firstTime: 0.15, stallCurrent: 25 }
      const document = { version: 1, name: "drawn", flaps: { count: 1, linkage, servo, voltage: 6, flapTime: 1 } }
      const answer = move.attempt(brought(document).rig as unknown as Rig)
      if (!answer.ok) throw answer.error
      seen++
      for (const { turned, torque } of answer.value.out.curve) {
        const servoAngle = linkage.minServoAngle + (turned as number)
        const end = servoAngle <= 0 ? { minServoAngle: servoAngle } : { maxServoAngle: servoAngle }
        const before = servoPushrod({ ...linkage, ...end })
        expect(torque).toBeCloseTo(servoAngle <= 0 ? before.minServoTorque : before.maxServoTorque, 8)
      }
    }
    expect(seen).toBe(12)
  })
  const document = (linkage: object, more: object = {}) => ({
    version: 1,
    name: "flaps",
    flaps: {
      count: 3,
      linkage: { pivotDistance: "70 mm", servoHorn: "14 mm", flapHorn: "20 mm", ...linkage },
      servo: { firstVoltage: "6 V", firstStallTorque: "1 N m", firstTime: "0.2 s", stallCurrent: "9 A" },
      voltage: "6 V",
      supplyCurrent: "5 A",
      flapTime: "0.5 s",
    },
    ...more,
  })
  it("stand on the supply that was said of them where there is no other", () => {
    expect(rigOf(document({ flapMass: "50 g", flapCentre: "60 mm" })).power?.sources).toEqual([
      { type: "mains-supply", name: "servo supply", voltage: "6 V", currentLimit: "5 A" },
    ])
  })
  it("without a mass or with a depth are read too", () => {
    const [bare] = rigOf(document({})).motions[0]?.mechanisms ?? []
    expect(bare).toMatchObject({ masses: [{ name: "flap, its mass not stated", mass: "0.1 g" }] })
    const [broad] =
      rigOf(document({ flapMass: "50 g", flapCentre: "60 mm", flapWidth: "0.2 m", flapDepth: "0.15 m" })).motions[0]?.mechanisms ?? []
    expect(broad).toMatchObject({ length: "0.15 m", panels: [{ area: 0.2 * 0.15, radius: 0.075 }] })
  })
  it("whose servo states no stall current are asked for it at its place", () => {
    const { stallCurrent: _, ...servo } = document({}).flaps.servo
    const silent = document({})
    expect(() => rigOf({ ...silent, flaps: { ...silent.flaps, servo } })).toThrow(/stallCurrent/)
  })
})

describe("the scissor tail of version 1", () => {
  const document = demo("reed-dragon-tail")
  const { array } = document.scissor as { readonly array: ScissorInput }
  const rig = rigOf(document)
  const answer = move(rig)
  const before = scissor(array)
  const [n, arm] = [6, 0.16]
  /** Energy of weight over the spread of the base, every arm's middle and the tip placed one by one. */
  const energy = (spread: number) => {
    const step = Math.sqrt(arm ** 2 - spread ** 2)
    let raised = 0.2 * n * step
    for (let cell = 0; cell < n; cell++) raised += 2 * (0.42 / (2 * n)) * (cell + 0.5) * step
    return g * raised * Math.sin(20 * degree)
  }
  const [wide, narrow] = [arm * Math.cos(18 * degree), arm * Math.cos(62 * degree)]
  const force = (travel: number) => (energy(wide - travel - 1e-6) - energy(wide - travel + 1e-6)) / 2e-6

  it("reaches as far, with the same travel", () => {
    const spans = answer.out.curve.map((p) => p.span as number)
    expect(spans[0]).toBeCloseTo(before.spanFolded, 9)
    expect(spans[spans.length - 1]).toBeCloseTo(before.spanExtended, 9)
    expect(Math.max(...answer.out.curve.map((p) => p.stroke as number))).toBeCloseTo(before.driverStroke, 12)
    expect(before.driverStroke).toBeCloseTo(wide - narrow, 12)
  })
  it("asks the first edition's force, which is the slope of the energy of every arm's weight", () => {
    expect(answer.out.peakForce).toBeCloseTo(before.peakForce, 8)
    for (const p of answer.out.curve) expect(p.force).toBeCloseTo(force(p.stroke as number), 5)
  })
  it("takes the time of a straight line of speed over force, its stand-ins taken", () => {
    // 10 mm/s without load, 8 mm/s at the 120 N that were stated
    const time = integral((x) => 1 / (0.01 - (0.002 * force(x)) / 120), 0, wide - narrow)
    expect(answer.outDuration / time).toBeCloseTo(1, 6)
  })
  it("says that speed and currents are stand-ins, and judges nothing by its currents", () => {
    expect(rig.note).toContain("stand-ins")
    for (const path of ["scissor.droopLimit", "scissor.array.screwLead", "scissor.array.driverStiffness", "scissor.array.pinPlay"])
      expect(brought(document).left).toContain(path)
    const { findings } = assessRig(rig)
    for (const id of ["supply-carries", "source-current", "day-energy"])
      for (const f of findings.filter((one) => one.id === id)) expect(f.verdict, f.id).toBe("not enough data")
    const span = findings.find((f) => f.id === "span")
    // within a tenth of what is wanted
    expect([span?.verdict, span?.limit]).toEqual(["marginal", 0.8])
    expect(span?.value).toBeCloseTo(before.spanExtended, 9)
    const short = { ...rig, motions: rig.motions.map((m) => ({ ...m, wanted: { span: "848 mm" as const } })) }
    expect(assessRig(short).findings.find((f) => f.id === "span")?.verdict).toBe("falls short")
  })
  it.each(["lower", "upper"] as const)("held at its %s joint asks the first edition's force", (fixedJoint) => {
    const held = { ...document, scissor: { ...(document.scissor as object), array: { ...array, fixedJoint } } }
    const { forceFolded, forceExtended } = scissor({ ...array, fixedJoint })
    const { curve } = move(rigOf(held)).out
    expect(curve[0]?.force).toBeCloseTo(forceFolded, 7)
    expect(curve[curve.length - 1]?.force).toBeCloseTo(forceExtended, 7)
  })
  it("reaches back from behind the hips, up or down as it was tilted", () => {
    const [mechanism] = rig.motions[0]?.mechanisms ?? []
    expect(mechanism).toMatchObject({ direction: "20 deg", mount: { forward: "-150 mm", heading: "180 deg" } })
    expect(si("length", (mechanism as { startLength?: unknown }).startLength)).toBeCloseTo(wide, 12)
  })
})

describe("arms of version 1", () => {
  const document = demo("lantern-moth-cells")
  const arms = (more: object) => brought({ ...document, hinged: { ...(document.hinged as object), ...more } }).rig as unknown as Rig
  it("in pairs stand on both sides, but not on a frame that leans in their plane, nor one alone", () => {
    const mirrored = (more: object) => arms(more).motions[0]?.mechanisms[0]?.mirrored
    expect(mirrored({})).toBe(true)
    expect(mirrored({ frameTilt: "4 deg" })).toBeUndefined()
    expect(mirrored({ count: 1 })).toBeUndefined()
    const balance = assessRig(arms({})).findings.find((f) => f.id === "side-balance")
    expect(balance?.value).toBeCloseTo(0.5, 9)
  })
  it("that rise as the rods retract may take the time up on the way back", () => {
    expect(arms({ raised: "retracted" }).motions[0]?.wanted).toEqual({ backDuration: "15 s", swing: "80 deg" })
    expect(arms({}).motions[0]?.wanted).toEqual({ duration: "15 s", swing: "80 deg" })
  })
})
