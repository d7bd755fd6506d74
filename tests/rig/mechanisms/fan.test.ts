import { describe, expect, it } from "vitest"
import { standardGravity, tetheredFan } from "../../../src/linkage/index.js"
import { fan } from "../../../src/rig/mechanisms/fan.js"
import type { Mechanism, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { heldEffort } from "./crank-route.js"
import { type Drawn, drawMechanisms, placesIn, randomNumbers } from "./draw.js"
import { changesForm, minus, sizeOf, total, turning, type V, weights } from "./loads.js"
import { type ArmPart, holdsMechanism, type Point, type SecondRoute, stateAt } from "./second-route.js"

interface FanPart {
  readonly hinge: Point
  readonly vanes: number
  readonly masses: ArmPart["masses"]
  readonly area: number
  readonly areaRadius: number
  readonly pitch: number
  readonly pitchAngle: number
  readonly attachRadius: number
  readonly foldedAngle: number
  readonly foldedStep: number
  readonly openAngle: number
  readonly span: number
  readonly threads: readonly number[] | null
  readonly returnMoment: number
  readonly hingeFriction: number
}
const pivotOf = (si: FanPart, i: number): V => [
  si.hinge.x + i * si.pitch * Math.cos(si.pitchAngle),
  si.hinge.y + i * si.pitch * Math.sin(si.pitchAngle),
]
const endOf = (si: FanPart, i: number, angle: number): V => {
  const [x, y] = pivotOf(si, i)
  return [x + si.attachRadius * Math.cos(angle), y + si.attachRadius * Math.sin(angle)]
}
const gap = (a: V, b: V) => Math.hypot(a[0] - b[0], a[1] - b[1])

/** Vane angles by bisection: each follower as low as its stop or its thread lets it. */
function vaneAngles(si: FanPart, q: number): number[] {
  const step = si.span / (si.vanes - 1)
  const angles = [q]
  for (let i = 1; i < si.vanes; i++) {
    const open = (k: number) => endOf(si, k, si.openAngle - k * step)
    const thread = si.threads?.[i - 1] ?? gap(open(i - 1), open(i))
    const leader = endOf(si, i - 1, angles[i - 1] as number)
    const rest = si.foldedAngle - i * si.foldedStep
    const isFree = (angle: number) => gap(leader, endOf(si, i, angle)) <= thread
    let [low, high] = [rest, angles[i - 1] as number]
    if (isFree(rest)) {
      angles.push(rest)
      continue
    }
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2
      if (isFree(middle)) high = middle
      else low = middle
    }
    angles.push(high)
  }
  return angles
}

function fanRoute(si: FanPart): SecondRoute {
  const spot = (i: number, angle: number, radius: number): Triple => {
    const [x, y] = pivotOf(si, i)
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle), 0]
  }
  return {
    masses: (q) =>
      vaneAngles(si, q).flatMap((angle, i) => si.masses.map((m) => ({ mass: m.mass, at: spot(i, angle + m.angle, m.radius) }))),
    energy: (q) => vaneAngles(si, q).reduce((sum, angle, i) => sum + (i ? si.returnMoment * angle : 0), 0),
    panels: (q) =>
      vaneAngles(si, q).map((angle, i) => ({
        area: si.area,
        at: spot(i, angle, si.areaRadius),
        normal: [-Math.sin(angle), Math.cos(angle), 0] as Triple,
      })),
    rubs: (q) => vaneAngles(si, q).map((turn) => ({ moment: si.hingeFriction, turn })),
  }
}

describe("fan", () => {
  const drawn: { mechanism: Mechanism; si: Drawn }[] = drawMechanisms(fan, 12, 91).found
  it("moves every vane as its thread and stop let it, found by bisection", () => {
    const random = randomNumbers(19)
    let held = 0
    for (const { mechanism, si } of drawn)
      for (const q of placesIn(mechanism, 3, random)) {
        const h = 1e-3
        if (changesForm(mechanism, q, h)) continue
        held++
        holdsMechanism(mechanism, fanRoute(si as unknown as FanPart), q, h, 1e-5)
      }
    expect(held).toBeGreaterThan(20)
  })
  it("pivots carry the fan's whole weight, and threads balance each vane", () => {
    const random = randomNumbers(20)
    for (const { mechanism, si } of drawn) {
      const part = si as unknown as FanPart
      const q = mechanism.high - 1e-3 * random()
      const down: Triple = [1, -standardGravity, 0.5]
      const reactions = mechanism.reactions(q, 0, down)
      const loads = [
        ...weights(fanRoute(part).masses(q), down),
        ...reactions.map((r, i) => ({ at: pivotOf(part, i), force: minus(r.force) })),
      ]
      for (const axis of [0, 1, 2]) expect(Math.abs(total(loads, axis))).toBeLessThanOrEqual(1e-9 * sizeOf(loads))
      // the whole fan about its first pivot: weights, pivots, elastic, and the shaft's moment
      const moved = vaneAngles(part, q).length - 1
      const effort = heldEffort(stateAt(mechanism, q), down)
      const isOpen = vaneAngles(part, q).every((angle, i) => i === 0 || angle > part.foldedAngle - i * part.foldedStep + 1e-9)
      if (isOpen)
        expect(Math.abs(turning(loads, pivotOf(part, 0)) + effort - moved * part.returnMoment)).toBeLessThanOrEqual(1e-7 * sizeOf(loads))
    }
  })
  it("agrees with tetheredFan: the driven vane's moment over its sweep", () => {
    const out = tetheredFan(tetheredFan.example as Parameters<typeof tetheredFan>[0])
    const degree = Math.PI / 180
    const mechanism = fan.build({
      type: "fan",
      hinge: { x: 0, y: 0 },
      vanes: 6,
      length: 0.6,
      masses: [{ name: "vane", mass: 0.06, radius: 0.25, angle: 0 }],
      area: 0,
      areaRadius: 0,
      pitch: 0.006,
      pitchAngle: -60 * degree,
      attachRadius: 0.1,
      foldedAngle: -70 * degree,
      foldedStep: degree,
      openAngle: 60 * degree,
      span: 80 * degree,
      threads: null,
      returnMoment: 0.02,
      hingeFriction: 0,
    }) as Mechanism
    const lean = 5 * degree
    const down: Triple = [-standardGravity * Math.sin(lean), -standardGravity * Math.cos(lean), 0]
    for (const pose of out.sweep.filter((_, k) => k % 7 === 3))
      expect(heldEffort(stateAt(mechanism, pose.driverAngle), down)).toBeCloseTo(pose.driverMoment, 9)
    expect(out.sweep.length).toBeGreaterThan(20)
  })
})
