import { describe, expect, it } from "vitest"
import { type OverCentreLatchInput, overCentreLatch, overCentreLatchPicture, poseSvg, poseText } from "../../src/linkage/index.js"
import { derivative } from "./difference.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

type Latch = { readonly [K in keyof OverCentreLatchInput]-?: number }

function latchOf(random: ReturnType<typeof lehmer>): Latch {
  const movingPivotRadius = random.real(0.01, 0.03)
  const fixedPivotDistance = movingPivotRadius + random.real(0.02, 0.06)
  return {
    movingPivotRadius,
    fixedPivotDistance,
    freeLength: random.real(0.2, 0.9) * (fixedPivotDistance + movingPivotRadius),
    springRate: random.real(200, 3000),
    preload: random.real(0, 5),
    clockwiseStop: random.real(0.2, 1.2),
    counterStop: random.real(0.2, 1.2),
    loadMoment: random.real(-0.02, 0.02),
    handleRadius: random.real(0.04, 0.12),
    leverMass: random.real(0.02, 0.2),
    leverCentre: random.real(0.01, 0.05),
    pinFriction: random.real(0, 0.3),
    pinDiameter: random.real(0.002, 0.006),
  }
}

/** Energy of spring and load by the places of pin and anchor; the pin is past the dead centre, away from the anchor. */
function energyAt(si: Latch, angle: number): number {
  const stretch = stretchAt(si, angle)
  return (stretch > 0 ? si.preload * stretch + (si.springRate * stretch ** 2) / 2 : 0) - si.loadMoment * angle
}
function stretchAt(si: Latch, angle: number): number {
  const [x, y] = [-si.movingPivotRadius * Math.cos(angle), -si.movingPivotRadius * Math.sin(angle)]
  return Math.hypot(x - si.fixedPivotDistance, y) - si.freeLength
}
const tension = (si: Latch, angle: number) => (stretchAt(si, angle) > 0 ? si.preload + si.springRate * stretchAt(si, angle) : 0)
const friction = (si: Latch, angle: number) => ((si.pinFriction * si.pinDiameter) / 2) * tension(si, angle)
const slope = (si: Latch, angle: number) => -(derivative((d) => [energyAt(si, angle + d)], 1e-5)[0] as number)

describe("against energies", () => {
  it("snaps over at the top of the energy, holds by its slope, and is tripped by the work up to the top and friction", () => {
    const random = lehmer(21)
    let met = 0
    for (let k = 0; k < 120; k++) {
      const si = latchOf(random)
      const outcome = overCentreLatch.attempt(si)
      const [low, high] = [-si.clockwiseStop, si.counterStop]
      const holds = slope(si, low) < 0 && slope(si, high) > 0
      expect(outcome.ok).toBe(holds)
      if (!outcome.ok) continue
      met++
      const out = outcome.value
      const steps = 3000
      let top = low
      for (let i = 0; i <= steps; i++) {
        const angle = low + ((high - low) * i) / steps
        if (energyAt(si, angle) > energyAt(si, top)) top = angle
      }
      expect(Math.abs(out.snapAngle - top)).toBeLessThanOrEqual(((high - low) / steps) * 1.01)
      for (const side of [out.clockwise, out.counter]) {
        const sense = Math.sign(side.angle)
        expect(side.angle).toBe(sense < 0 ? low : high)
        expect(side.holdingMoment).toBeCloseTo(sense * slope(si, side.angle), 6)
        expect(side.holdingForce).toBeCloseTo(side.holdingMoment / si.handleRadius, 12)
        expect(side.releaseForce).toBeCloseTo((side.holdingMoment + friction(si, side.angle)) / si.handleRadius, 12)
        // work against friction by a sum of fine steps
        let [rubbed, most] = [0, 0]
        const fine = 400
        for (let i = 0; i < fine; i++) {
          const angle = side.angle + ((out.snapAngle - side.angle) * (i + 0.5)) / fine
          rubbed += (friction(si, angle) * Math.abs(out.snapAngle - side.angle)) / fine
          most = Math.max(most, sense * slope(si, angle) + friction(si, angle))
        }
        expect(side.tripWork).toBeCloseTo(energyAt(si, out.snapAngle) - energyAt(si, side.angle) + rubbed, 6)
        expect(side.tripForce * si.handleRadius).toBeGreaterThan(most * 0.9999)
        expect(side.tripForce * si.handleRadius).toBeLessThan(Math.max(most, side.releaseForce * si.handleRadius) * 1.01)
      }
      // within the band friction alone holds, just outside it does not
      for (const [edge, way] of [
        [out.band.low, -1],
        [out.band.high, 1],
      ] as const) {
        if (edge === low || edge === high) continue
        expect(way * slope(si, edge + way * 1e-4) - friction(si, edge + way * 1e-4)).toBeGreaterThan(-1e-9)
        if (out.band.high - out.band.low > 1e-3)
          expect(Math.abs(slope(si, edge - way * 1e-4)) - friction(si, edge - way * 1e-4)).toBeLessThan(1e-9)
      }
      expect(out.storedEnergy).toBeCloseTo(energyAt(si, out.snapAngle) + si.loadMoment * out.snapAngle, 10)
      expect(out.maxSpringForce).toBeCloseTo(tension(si, 0), 10)
      expect(out.minHoldingForce).toBe(Math.min(out.clockwise.holdingForce, out.counter.holdingForce))
      expect(Math.max(...out.poses.map((p) => p.springForce))).toBeLessThanOrEqual(out.maxSpringForce + 1e-12)
      expect(out.poses[40]?.moment).toBeCloseTo(slope(si, out.poses[40]?.angle as number), 6)
    }
    expect(met).toBeGreaterThan(40)
  })
})

/** Kinetic energy with which a lever let go strikes a stop, by small steps in time. */
function struck(si: Latch, from: number, stop: number): number {
  const inertia = si.leverMass * si.leverCentre ** 2
  const sense = Math.sign(stop - from)
  // the motion in closed slope form: steps of the spring's own moment, not of its energy
  const pull = (angle: number) => {
    const [x, y] = [-si.movingPivotRadius * Math.cos(angle), -si.movingPivotRadius * Math.sin(angle)]
    const [dx, dy] = [si.fixedPivotDistance - x, -y]
    const share = tension(si, angle) / Math.hypot(dx, dy)
    return (x * dy - y * dx) * share + si.loadMoment - sense * friction(si, angle)
  }
  let [angle, speed] = [from, 0]
  const dt = 2e-5
  // a nudge off the place where everything cancels
  angle += sense * 1e-6
  for (let i = 0; i < 200000; i++) {
    const before = angle
    const a = pull(angle) / inertia
    const middle = pull(angle + (speed * dt) / 2 + (a * dt * dt) / 8) / inertia
    angle += speed * dt + (middle * dt * dt) / 2
    speed += middle * dt
    if (sense * (angle - stop) >= 0) {
      const over = (angle - stop) / (angle - before || 1)
      return (inertia * (speed - middle * dt * over) ** 2) / 2
    }
  }
  throw new Error("the lever did not arrive")
}

it("strikes its stops with the energy told, by stepping the motion in time", () => {
  const random = lehmer(22)
  let met = 0
  for (let k = 0; k < 40 && met < 6; k++) {
    const si = latchOf(random)
    const outcome = overCentreLatch.attempt(si)
    if (!outcome.ok || outcome.value.band.low === -si.clockwiseStop || outcome.value.band.high === si.counterStop) continue
    met++
    for (const [side, edge] of [
      [outcome.value.counter, outcome.value.band.high],
      [outcome.value.clockwise, outcome.value.band.low],
    ] as const) {
      const energy = struck(si, edge, side.angle)
      expect(Math.abs(energy - side.releasedEnergy)).toBeLessThan(2e-3 * side.releasedEnergy + 1e-8)
      const speed = Math.sqrt((2 * side.releasedEnergy) / (si.leverMass * si.leverCentre ** 2)) * si.handleRadius
      expect(side.strikeSpeed).toBeCloseTo(speed, 10)
    }
  }
  expect(met).toBe(6)
})

describe("sides", () => {
  const si = overCentreLatch.read(overCentreLatch.example) as unknown as Latch

  it("change places in the mirror", () => {
    const one = overCentreLatch(si)
    const other = overCentreLatch({ ...si, clockwiseStop: si.counterStop, counterStop: si.clockwiseStop, loadMoment: -si.loadMoment })
    expect(other.snapAngle).toBeCloseTo(-one.snapAngle, 12)
    for (const key of ["holdingMoment", "releaseForce", "tripForce", "tripWork", "releasedEnergy", "strikeSpeed"] as const) {
      expect(other.counter[key], key).toBeCloseTo(one.clockwise[key] as number, 10)
      expect(other.clockwise[key], key).toBeCloseTo(one.counter[key] as number, 10)
    }
  })

  it("snap over on the dead centre without a load, and have no band without friction", () => {
    const plain = overCentreLatch({ ...si, loadMoment: 0, pinFriction: 0, leverMass: 0 })
    expect(plain.snapAngle).toBeCloseTo(0, 12)
    expect(plain.band.high - plain.band.low).toBeCloseTo(0, 12)
    expect(plain.counter.strikeSpeed).toBeNull()
    const rough = overCentreLatch({ ...si, loadMoment: 0, pinFriction: 1, pinDiameter: 0.1 })
    expect([rough.band.low, rough.band.high]).toEqual([-si.clockwiseStop, si.counterStop])
    expect(rough.counter.releasedEnergy).toBe(0)
  })

  it("are refused where one does not hold, by how much, and with a load that it would hold", () => {
    for (const sign of [1, -1]) {
      const heavy = { ...si, loadMoment: sign * 0.35 }
      const refusal = refusalOf(overCentreLatch.attempt(heavy))
      const stop = sign > 0 ? -si.clockwiseStop : si.counterStop
      expect(refusal.shortBy).toBeCloseTo(sign * slope(heavy, stop), 7)
      expect(overCentreLatch.attempt({ ...heavy, ...refusal.nearest }).ok).toBe(true)
      expect(Object.keys(refusal.nearest)).toEqual(["loadMoment"])
    }
  })
})

it("draws the lever on both stops and the spring", () => {
  const si = overCentreLatch.read(overCentreLatch.example)
  const picture = overCentreLatchPicture(si)
  const [spring] = picture.lines.filter((line) => line.style === "element").map((line) => line.points)
  const [anchor, pin] = spring as unknown as [{ x: number; y: number }, { x: number; y: number }]
  expect(Math.hypot(pin.x - anchor.x, pin.y - anchor.y) - si.freeLength).toBeCloseTo(stretchAt(si as unknown as Latch, si.counterStop), 12)
  expect(poseSvg(picture).match(/<circle /g)).toHaveLength(2)
  expect(poseText(picture)).toContain("~")
})
