import { openCircuitVoltage } from "../../src/pack/index.js"
import type { RigDocument } from "../../src/rig/index.js"
import type { SiOf } from "../../src/solver/index.js"

type Si = SiOf<RigDocument>

/**
 * The same move reckoned another way: stepping time, not stroke, with geometry by intersecting circles,
 * moment by differencing the energy, and the supply by bisection on its own balance. Nothing of src/rig.
 */
export function timeByStepping(rig: Si, direction: 1 | -1, step = 2e-3): number {
  const arms = rig.hinged!
  const { hinge, fixedPivot, actuator, masses } = arms
  const side = arms.assembly === "counter-clockwise" ? 1 : -1
  // moving anchor: intersection of the circle round the hinge with that round the fixed anchor
  const pinAt = (rod: number) => {
    const reach = Math.hypot(rod, arms.axisOffset)
    const [dx, dy] = [hinge.x - fixedPivot.x, hinge.y - fixedPivot.y]
    const apart = Math.hypot(dx, dy)
    const along = (reach ** 2 - arms.movingPivot.radius ** 2 + apart ** 2) / (2 * apart)
    const off = Math.sqrt(Math.max(0, reach ** 2 - along ** 2))
    return {
      x: fixedPivot.x + (along * dx) / apart + (side * off * dy) / apart,
      y: fixedPivot.y + (along * dy) / apart - (side * off * dx) / apart,
    }
  }
  let last: number | null = null
  const angleAt = (stroke: number) => {
    const pin = pinAt(actuator.retractedLength + stroke)
    let angle = Math.atan2(pin.y - hinge.y, pin.x - hinge.x) - arms.movingPivot.angle
    if (last !== null) angle += 2 * Math.PI * Math.round((last - angle) / (2 * Math.PI))
    return angle
  }
  last = angleAt(actuator.stroke / 2)
  const energy = (angle: number) => {
    let sum = 0
    for (const m of masses) sum += m.mass * 9.80665 * m.radius * Math.sin(angle + m.angle + arms.frameTilt)
    if (arms.spring) {
      const s = arms.spring
      const length = Math.hypot(
        hinge.x + s.radius * Math.cos(angle + s.angle) - s.fixedPivot.x,
        hinge.y + s.radius * Math.sin(angle + s.angle) - s.fixedPivot.y,
      )
      sum += (s.stiffness * Math.max(0, length - s.freeLength) ** 2) / 2
    }
    return sum
  }
  const a = actuator
  // the datasheet points as two linear equations in R and kV
  const det = a.noLoadCurrent * a.ratedSpeed - a.ratedCurrent * a.noLoadSpeed
  const winding = (a.ratedVoltage * (a.ratedSpeed - a.noLoadSpeed)) / det
  const emf = (a.ratedVoltage * (a.noLoadCurrent - a.ratedCurrent)) / det
  const run = (r: NonNullable<Si["wiring"]>["source"] | null) =>
    r
      ? (2 * r.length * (1 + 0.00393 * (r.temperature - 20))) /
          58e6 /
          (r.area ?? (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - r.awg!) / 39)) ** 2) +
        r.contacts * r.contactResistance
      : 0
  const { pack, bank, converter, wiring } = rig
  const open = pack ? pack.series * openCircuitVoltage(pack.chemistry, pack.stateOfCharge) : bank!.voltage
  const inner = pack ? (pack.series / pack.parallel) * pack.cellResistance + pack.extraResistance : bank!.resistance
  const line = inner + run(wiring!.source) + wiring!.switchResistance + wiring!.fuseResistance
  const far = run(wiring!.load)
  const voltage = (total: number): number => {
    if (!converter) return open - total * (line + far)
    const curve = converter.efficiency
    const k = Math.max(
      0,
      curve.findIndex((p) => p.outputCurrent >= total),
    )
    const [p, q] =
      total >= curve.at(-1)!.outputCurrent ? [curve.at(-1)!, curve.at(-1)!] : k === 0 ? [curve[0]!, curve[0]!] : [curve[k - 1]!, curve[k]!]
    const eta =
      p === q
        ? p.efficiency
        : p.efficiency + ((q.efficiency - p.efficiency) * (total - p.outputCurrent)) / (q.outputCurrent - p.outputCurrent)
    const most = Math.min(converter.inputCurrentLimit ?? 1e9, bank?.currentLimit ?? 1e9)
    const power = (current: number) => (open - current * line) * (current - converter.quiescentCurrent) * eta
    const wanted = converter.outputVoltage * total
    if (power(most) <= wanted) return power(most) / total - total * far
    return converter.outputVoltage - total * far
  }
  const speed = (stroke: number): number => {
    const h = 1e-5
    const [s0, s1] = [stroke - h, stroke + h]
    const [a0, a1] = [angleAt(s0), angleAt(s1)]
    const rise = (energy(a1) - energy(a0)) / (2 * h)
    const force = direction * rise + arms.hingeFriction * Math.abs((a1 - a0) / (2 * h))
    const each = a.noLoadCurrent + (Math.max(0, force) * (a.ratedCurrent - a.noLoadCurrent)) / a.ratedForce
    return (voltage(each * arms.count) - each * winding) / emf
  }
  // classical Runge–Kutta in time; the last step is cut so that the stroke is met exactly
  let [done, time] = [0, 0]
  const at = (travelled: number) => (direction === 1 ? travelled : a.stroke - travelled)
  for (;;) {
    const advance = (h: number) => {
      const k1 = speed(at(done))
      const k2 = speed(at(done + (h * k1) / 2))
      const k3 = speed(at(done + (h * k2) / 2))
      const k4 = speed(at(done + h * k3))
      return (h * (k1 + 2 * k2 + 2 * k3 + k4)) / 6
    }
    const gained = advance(step)
    if (done + gained >= a.stroke) {
      let [low, high] = [0, step]
      for (let i = 0; i < 60; i++) {
        const mid = (low + high) / 2
        if (done + advance(mid) < a.stroke) low = mid
        else high = mid
      }
      return time + (low + high) / 2
    }
    done += gained
    time += step
  }
}
