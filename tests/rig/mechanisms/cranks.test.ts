import { describe, expect, it } from "vitest"
import { fourBar, servoPushrod, standardGravity } from "../../../src/linkage/index.js"
import { fourBarMechanism } from "../../../src/rig/mechanisms/four-bar.js"
import type { Mechanism, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { pushrod } from "../../../src/rig/mechanisms/pushrod.js"
import { type CrankRoute, crankRoute, heldEffort } from "./crank-route.js"
import { type Drawn, drawMechanisms, placesIn, randomNumbers } from "./draw.js"
import { type ArmPart, holdsMechanism, type Point, stateAt } from "./second-route.js"

type FourBarPart = ArmPart & {
  inputPivot: Point
  input: number
  coupler: number
  movingPivot: { radius: number; angle: number }
  assembly: "open" | "crossed"
  startAngle: number
}
const fourBarRoute = (si: Drawn): CrankRoute => {
  const { inputPivot, input, coupler, assembly } = si as unknown as FourBarPart
  return crankRoute(si, { pivot: inputPivot, crank: input, coupler, side: assembly === "open" ? 1 : -1, zero: 0 })
}
type PushrodPart = ArmPart & {
  servoPivot: Point
  servoHorn: number
  servoHornAngle: number
  neutralAngle: number
  movingPivot: { radius: number; angle: number }
  rodMass: number
  hingeMoment: number
}
/** Rod and side as the two pins stand at neutral. */
const pushrodRoute = (si: Drawn): CrankRoute => {
  const { servoPivot: s, servoHorn, servoHornAngle, neutralAngle, movingPivot, hinge, rodMass, hingeMoment } = si as unknown as PushrodPart
  const pin = [s.x + servoHorn * Math.cos(servoHornAngle), s.y + servoHorn * Math.sin(servoHornAngle)] as const
  const turned = neutralAngle + movingPivot.angle
  const held = [hinge.x + movingPivot.radius * Math.cos(turned), hinge.y + movingPivot.radius * Math.sin(turned)] as const
  const left = (hinge.x - pin[0]) * (held[1] - pin[1]) - (hinge.y - pin[1]) * (held[0] - pin[0])
  const coupler = Math.hypot(held[0] - pin[0], held[1] - pin[1])
  const route = crankRoute(si, { pivot: s, crank: servoHorn, coupler, side: left >= 0 ? 1 : -1, zero: servoHornAngle, rodMass })
  // what a steady moment takes is moment times turn
  return { ...route, energy: (q) => (route.energy?.(q) ?? 0) + hingeMoment * (route.rubs?.(q)[0]?.turn as number) }
}

const kinds = [
  ["four-bar", fourBarMechanism, fourBarRoute],
  ["pushrod", pushrod, pushrodRoute],
] as const

const stepOf = ({ low, high }: Mechanism) => (Number.isFinite(high - low) ? Math.min(1e-3, 2e-4 * (high - low)) : 1e-3)
const changesForm = (mechanism: Mechanism, q: number, h: number) =>
  new Set([-10, -2, 0, 2, 10].map((k) => stateAt(mechanism, q + k * h).form)).size > 1

describe.each(kinds)("%s", (_, member, routeOf) => {
  const drawn = drawMechanisms(member as typeof pushrod, 20, 51).found
  it("moves masses, springs and panels as circles intersected say", () => {
    const random = randomNumbers(8)
    for (const { mechanism, si } of drawn) {
      const route = routeOf(si)
      for (const q of placesIn(mechanism, 3, random)) {
        const h = stepOf(mechanism)
        if (!changesForm(mechanism, q, h)) holdsMechanism(mechanism, route, q, h, 3e-6)
      }
    }
  })
  it("ends where the circles no longer meet, and nowhere before", () => {
    for (const { mechanism, si } of drawn) {
      const { pins } = routeOf(si)
      const meets = (q: number) => pins(q)[2].every(Number.isFinite)
      for (const [end, way] of [
        [mechanism.low, -1],
        [mechanism.high, 1],
      ] as const)
        if (Number.isFinite(end)) {
          expect(meets(end + way * 1e-6)).toBe(false)
          expect(meets(end - way * 1e-6)).toBe(true)
        }
      const from = Math.max(mechanism.low, (mechanism.start as number) - 7)
      const to = Math.min(mechanism.high, (mechanism.start as number) + 7)
      for (let k = 1; k < 200; k++) expect(meets(from + ((to - from) * k) / 200)).toBe(true)
    }
  })
  it("pins: crank, coupler and arm each in balance where the drive holds them, and all of it on the frame", () => {
    const random = randomNumbers(9)
    for (const { mechanism, si } of drawn) {
      const route = routeOf(si)
      const arm = si as unknown as ArmPart
      for (const q of placesIn(mechanism, 2, random)) {
        const down: Triple = [2 * random() - 1, -standardGravity, 2 * random() - 1]
        const effort = heldEffort(stateAt(mechanism, q), down)
        const force = new Map(mechanism.reactions(q, effort, down).map((r) => [r.name, r.force]))
        const [pivot, crankPin, pin, hinge] = route.pins(q)
        const names = mechanism.pose(q).pins.map((p) => p.name) as [string, string, string, string]
        const [onHinge, onPivot, atPin, onArm] = names.map((name) => force.get(name) as Triple) as [Triple, Triple, Triple, Triple]
        const masses = route.masses(q)
        const ofArm = masses.slice(0, arm.masses.length)
        const inputs = ((si.inputMasses as unknown[]) ?? []).length
        const ofCrank = masses.slice(arm.masses.length, arm.masses.length + inputs)
        const ofCoupler = masses.slice(arm.masses.length + inputs)
        const weight = masses.reduce((sum, m) => sum + m.mass, 0) * standardGravity + Math.hypot(...onHinge) + Math.hypot(...onArm)
        const turning = (list: readonly { at: readonly number[]; force: readonly number[] }[], about: readonly [number, number]) =>
          list.reduce(
            (sum, l) =>
              sum + ((l.at[0] as number) - about[0]) * (l.force[1] as number) - ((l.at[1] as number) - about[1]) * (l.force[0] as number),
            0,
          )
        const weights = (list: typeof masses) => list.map((m) => ({ at: m.at, force: down.map((g) => g * m.mass) }))
        const minus = (f: Triple) => f.map((v) => -v)
        const cords = arm.springs.map((s) => {
          const [tip] = mechanism.pose(q).parts[0]?.points.slice(1) ?? []
          const angle = Math.atan2((tip?.[1] as number) - hinge[1], (tip?.[0] as number) - hinge[0]) + s.angle
          const at = [hinge[0] + s.radius * Math.cos(angle), hinge[1] + s.radius * Math.sin(angle)] as const
          const [dx, dy] = [s.fixedPivot.x - at[0], s.fixedPivot.y - at[1]]
          const length = Math.hypot(dx, dy)
          const pull = Math.max(0, s.stiffness * (length - s.freeLength)) / length
          return { at, force: [pull * dx, pull * dy, 0] }
        })
        const crank = [...weights(ofCrank), { at: crankPin, force: atPin }, { at: pivot, force: minus(onPivot) }]
        const coupler = [...weights(ofCoupler), { at: crankPin, force: minus(atPin) }, { at: pin, force: minus(onArm) }]
        const armLoads = [...weights(ofArm), ...cords, { at: pin, force: onArm }, { at: hinge, force: minus(onHinge) }]
        for (const body of [crank, coupler, armLoads])
          for (const axis of [0, 1, 2])
            expect(Math.abs(body.reduce((sum, l) => sum + (l.force[axis] as number), 0))).toBeLessThanOrEqual(1e-8 * weight)
        expect(Math.abs(turning(crank, pivot) + effort)).toBeLessThanOrEqual(1e-7 * weight)
        expect(Math.abs(turning(coupler, crankPin))).toBeLessThanOrEqual(1e-8 * weight)
        const steady = (si as { hingeMoment?: number }).hingeMoment ?? 0
        expect(Math.abs(turning(armLoads, hinge) - steady)).toBeLessThanOrEqual(1e-8 * weight)
        // an effort beyond what holds it still leaves forces, and the crank's own moment, in balance
        const more = new Map(mechanism.reactions(q, effort + 1, down).map((r) => [r.name, r.force]))
        const [pushed, reacted] = [more.get(names[2]) as Triple, more.get(names[1]) as Triple]
        const hard = [...weights(ofCrank), { at: crankPin, force: pushed }, { at: pivot, force: minus(reacted) }]
        expect(Math.abs(turning(hard, pivot) + effort + 1)).toBeLessThanOrEqual(1e-7 * (weight + Math.hypot(...pushed)))
      }
    }
  })
})

describe("against the domain's own solvers", () => {
  it("four-bar: output speed and acceleration of fourBar make inertia, its slope and the arm's angle", () => {
    for (const assembly of ["open", "crossed"] as const)
      for (const degrees of [10, 70, 130, 250, 330]) {
        const links = { ground: 0.1, input: 0.03, coupler: 0.12, output: 0.08 }
        const angle = (degrees * Math.PI) / 180
        const out = fourBar({ ...links, inputAngle: angle, assembly, inputSpeed: 1 })
        const mechanism = fourBarMechanism.build({
          type: "four-bar",
          hinge: { x: 0.1, y: 0 },
          length: 0.4,
          masses: [{ name: "wing", mass: 0.5, radius: 0.3, angle: 0 }],
          panels: [],
          springs: [],
          hingeFriction: 0,
          inputPivot: { x: 0, y: 0 },
          input: 0.03,
          coupler: 0.12,
          movingPivot: { radius: 0.08, angle: 0 },
          assembly,
          startAngle: angle,
          inputMasses: [],
          couplerMasses: [],
        }) as Mechanism
        const state = stateAt(mechanism, angle)
        const inertia = 0.5 * 0.3 ** 2
        expect(state.inertia).toBeCloseTo(inertia * out.outputSpeed ** 2, 12)
        expect(state.inertiaSlope).toBeCloseTo(2 * inertia * out.outputSpeed * out.outputAcceleration, 12)
        expect(Math.sin(mechanism.pose(angle).shown - out.outputAngle)).toBeCloseTo(0, 12)
      }
  })
  it("pushrod: the servo's torque over its travel is that of servoPushrod", () => {
    const out = servoPushrod({
      pivotDistance: "60 mm",
      servoHorn: "18 mm",
      flapHorn: "22 mm",
      servoHornAngle: "80 deg",
      flapHornAngle: "100 deg",
      flapMass: "120 g",
      flapCentre: "90 mm",
      flapLevel: "20 deg",
      hingeMoment: "30 mN m",
      steps: 6,
    })
    const degree = Math.PI / 180
    // the flap's centre stands 20° above level at neutral, and its horn 100° round from it
    const mechanism = pushrod.build({
      type: "pushrod",
      hinge: { x: 0.06, y: 0 },
      length: 0.2,
      masses: [{ name: "flap", mass: 0.12, radius: 0.09, angle: 0 }],
      panels: [],
      springs: [],
      hingeFriction: 0,
      servoPivot: { x: 0, y: 0 },
      servoHorn: 0.018,
      servoHornAngle: 80 * degree,
      movingPivot: { radius: 0.022, angle: 80 * degree },
      neutralAngle: 20 * degree,
      startAngle: -45 * degree,
      rodMass: 0,
      hingeMoment: 0.03,
    }) as Mechanism
    for (const { servoAngle, torque, flapAngle } of out.map) {
      const state = stateAt(mechanism, servoAngle)
      expect(heldEffort(state, [0, -standardGravity, 0])).toBeCloseTo(torque, 10)
      expect(mechanism.pose(servoAngle).shown).toBeCloseTo(20 * degree + flapAngle, 10)
    }
  })
})
