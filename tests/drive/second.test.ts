import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { dcMotor, dutyCycle, hobbyServo, linearActuator, powerScrew } from "../../src/drive/index.js"
import { isNoSolution, type NoSolution } from "../../src/solver/index.js"

/** Every result a second time, over random inputs, from the equations of each machine rather than its solved formulae. */
const seeded = { seed: 28, numRuns: 150 }
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const some = <Out>(out: Out | NoSolution): Out | null => (isNoSolution(out) ? null : (out as Out))
const near = (a: number | null, b: number, size = Math.abs(b)) =>
  expect(Math.abs((a as number) - b)).toBeLessThanOrEqual(1e-9 * size + 1e-12)
/** Copper: 0.00393 for each kelvin, referred to 20 °C (IEC 60028). */
const copper = (hot: number, sheet: number) => (1 + 0.00393 * (hot - 20)) / (1 + 0.00393 * (sheet - 20))

const sheets = fc.record({
  v: between(3, 48),
  n0: between(0.01, 3),
  n1: between(0.1, 0.95),
  i0: between(0, 0.5),
  di: between(0.1, 8),
  eta: between(0.1, 0.95),
  u: between(0.3, 1.3),
  load: between(0, 1.3),
  hot: between(-20, 150),
  cold: between(10, 30),
})
/** Back-emf and resistance through both points by elimination, and the load of the second point at an efficiency. */
const machine = (s: { v: number; n0: number; n1: number; i0: number; di: number; eta: number }) => {
  const [slow, i1] = [s.n0 * s.n1, s.i0 + s.di]
  // V = I0·R + k·n0 and V = I1·R + k·n1
  const k = (s.v * (i1 - s.i0)) / (s.n0 * i1 - slow * s.i0)
  const r = (s.v - k * s.n0) / s.i0
  return { k, r: s.i0 > 1e-3 ? r : (s.v - k * slow) / i1, slow, i1, load: s.eta * k * s.di }
}

describe("the drives a second time", () => {
  it("dcMotor: voltages, torques and powers balance at the shaft speed, at stall and at the best torque", () => {
    let answered = 0
    fc.assert(
      fc.property(sheets, (s) => {
        const m = machine(s)
        const r = m.r * copper(s.hot, s.cold)
        const kT = m.load / s.di
        const terminalVoltage = s.u * s.v
        const input = {
          ...{ ratedVoltage: s.v, noLoadSpeed: s.n0, noLoadCurrent: s.i0, loadTorque: m.load, loadSpeed: m.slow, loadCurrent: m.i1 },
          ...{ terminalVoltage, torque: s.load * m.load, windingTemperature: s.hot, datasheetTemperature: s.cold },
        }
        const out = some(dcMotor.si(dcMotor.read(input)))
        if (!out) return
        answered++
        const torque = s.load * m.load
        near(terminalVoltage, out.current * r + m.k * out.speed)
        near(torque, kT * (out.current - s.i0), m.load)
        near(out.electricalPower, terminalVoltage * out.current)
        near(out.mechanicalPower, torque * out.speed)
        near(out.windingHeat, out.current ** 2 * r)
        near(out.frictionHeat, out.electricalPower - out.windingHeat - out.mechanicalPower, out.electricalPower)
        near(out.efficiency, (torque * out.speed) / (terminalVoltage * out.current), 1)
        near(out.torqueConstant, kT)
        near(out.backEmfConstant, m.k, m.k * 100)
        near(out.windingResistance, r, r * 100)
        near(terminalVoltage, s.i0 * r + m.k * out.noLoadSpeed, terminalVoltage * 100)
        near(terminalVoltage, out.stallCurrent * r, terminalVoltage * 100)
        near(out.stallTorque, kT * (terminalVoltage / r - s.i0), kT * (terminalVoltage / r) * 100)
        // efficiency at a torque: T·(V − I·R)/k over V·I, no better either side of the best
        const efficiency = (t: number) => (t * (terminalVoltage - (s.i0 + t / kT) * r)) / (m.k * terminalVoltage * (s.i0 + t / kT))
        if (s.i0 > 1e-3) {
          near(out.maxEfficiency, efficiency(out.maxEfficiencyTorque), 100)
          expect(efficiency(out.maxEfficiencyTorque * 1.01)).toBeLessThan(out.maxEfficiency + 1e-9)
          expect(efficiency(out.maxEfficiencyTorque * 0.99)).toBeLessThan(out.maxEfficiency + 1e-9)
        }
        const shaft = (t: number) => (t * (terminalVoltage - (s.i0 + t / kT) * r)) / m.k
        near(out.maxPower, shaft(out.stallTorque / 2), out.maxPower * 100)
      }),
      seeded,
    )
    expect(answered).toBeGreaterThan(60)
  })

  it("linearActuator: pushing and helping loads, driven back, and what is taken and given", () => {
    let [pushed, helped, back] = [0, 0, 0]
    fc.assert(
      fc.property(sheets, fc.boolean(), between(0.01, 2), (s, helps, stroke) => {
        const m = machine(s)
        const r = m.r * copper(s.hot, s.cold)
        const kF = m.load / s.di
        const force = (helps ? -1 : 1) * s.load * m.load
        const terminalVoltage = s.u * s.v
        const input = {
          ...{ ratedVoltage: s.v, noLoadSpeed: s.n0, noLoadCurrent: s.i0, ratedForce: m.load, ratedSpeed: m.slow, ratedCurrent: m.i1 },
          ...{ terminalVoltage, force, stroke, windingTemperature: s.hot, datasheetTemperature: s.cold },
        }
        const out = some(linearActuator.si(linearActuator.read(input)))
        if (!out) return
        near(terminalVoltage, out.current * r + m.k * out.speed, terminalVoltage * 100)
        // an ampere beyond friction gives k newtons at the screw; the screw loses F/η − F of a load that it raises, and as much of one
        // that it lets down, which gives back F less that loss
        const loss = Math.abs(force) / s.eta - Math.abs(force)
        const atScrew = helps ? loss - Math.abs(force) : Math.abs(force) + loss
        near(out.current, s.i0 + atScrew / m.k, 100 * (s.i0 + s.di))
        near(out.mechanicalPower, force * out.speed)
        near(out.electricalPower, terminalVoltage * out.current)
        near(out.windingHeat, out.current ** 2 * r, 100 * out.windingHeat)
        near(out.frictionHeat, out.electricalPower - out.windingHeat - out.mechanicalPower, terminalVoltage * (s.i0 + s.di) * 100)
        near(out.strokeDuration, stroke / out.speed)
        near(out.screwEfficiency, s.eta, 100)
        near(out.forceConstant, kF, 100 * kF)
        near(out.backEmfConstant, m.k, 100 * m.k)
        near(out.windingResistance, r, 100 * r)
        near(out.frictionCurrent, s.i0)
        near(out.stallCurrent, terminalVoltage / r, (100 * terminalVoltage) / r)
        near(out.stallForce, kF * (terminalVoltage / r - s.i0), 100 * kF * (terminalVoltage / r + s.i0))
        if (helps) helped++
        else {
          pushed++
          near(out.efficiency, out.mechanicalPower / (terminalVoltage * out.current), 1)
        }
        // without power the load has to overcome the screw's loss and then the motor's own friction
        const left = Math.abs(force) - loss - s.i0 * m.k
        if (s.eta <= 0.5) expect(out.backDriveForce).toBeNull()
        else near(out.backDriveForce, (s.i0 * m.k) / (2 - 1 / s.eta), 1000 * (m.load + s.i0 * m.k))
        if (left > 1e-6) {
          back++
          near(out.shortedBackDriveSpeed, (left / m.k / m.k) * r, 1000 * out.shortedBackDriveSpeed + ((m.load / m.k / m.k) * r) / 100)
        } else if (left < -1e-6) expect(out.shortedBackDriveSpeed).toBe(0)
      }),
      { ...seeded, numRuns: 600 },
    )
    expect(Math.min(pushed, helped, back)).toBeGreaterThan(10)
  })

  it("hobbyServo: both columns, current at rest and held torque", () => {
    let answered = 0
    fc.assert(
      fc.property(
        fc.record({
          ...{ v1: between(3, 7), dv: between(0.5, 3), t1: between(0.1, 3), t2: between(1, 1.6), s1: between(0.08, 0.4) },
          ...{ s2: between(0.6, 1), i: between(0.5, 4), idle: between(0, 0.2), u: between(0.7, 1.5), x: between(0, 1), y: between(0.1, 1) },
          ...{ angle: between(0.1, 3), two: fc.boolean() },
        }),
        (s) => {
          const [v2, terminalVoltage] = [s.v1 + s.dv, s.u * s.v1]
          // through both columns, or through nothing at no voltage: beside them whichever is less
          const line = (a: number, b: number) => {
            const through = (a * (v2 - terminalVoltage) + b * (terminalVoltage - s.v1)) / s.dv
            if (!s.two) return (a / s.v1) * terminalVoltage
            if (terminalVoltage < s.v1) return Math.min(through, (a / s.v1) * terminalVoltage)
            return terminalVoltage > v2 ? Math.min(through, (b / v2) * terminalVoltage) : through
          }
          const stall = line(s.t1, s.t1 * s.t2)
          const free = line(Math.PI / 3 / s.s1, Math.PI / 3 / (s.s1 * s.s2))
          const torque = s.x * stall
          if (!(stall > 0.01 && free > 0.01)) return
          const second = s.two ? { secondVoltage: v2, secondStallTorque: s.t1 * s.t2, secondTime: s.s1 * s.s2 } : {}
          const out = some(
            hobbyServo.si(
              hobbyServo.read({
                ...{ firstVoltage: s.v1, firstStallTorque: s.t1, firstTime: s.s1, ...second, stallCurrent: s.i, idleCurrent: s.idle },
                ...{ terminalVoltage, torque, angle: s.angle, holdingShare: s.y },
              }),
            ),
          )
          if (!out) return
          answered++
          near(out.stallTorque, stall)
          near(out.noLoadSpeed, free)
          near(out.torqueUtilisation, s.x, 1)
          // speed falls straight from free at no torque to nothing at stall, current rises from rest to stall
          near(out.speed, free - (free / stall) * torque, free)
          near(out.sixtyTime * out.speed, Math.PI / 3)
          near((out.moveDuration as number) * out.speed, s.angle)
          near(out.holdingTorque, s.y * stall)
          if (Math.abs(s.x - s.y) > 1e-6) expect(out.holds).toBe(s.x < s.y)
          // what its circuit draws, and its winding's current in proportion
          const wound = ((s.i - s.idle) / s.v1) * terminalVoltage
          const stalled = s.idle + wound
          near(out.stallCurrent, stalled)
          near(out.movingCurrent, s.idle * (1 - s.x) + stalled * s.x, stalled)
          // held still, the winding's current is x of stall at a duty of x
          near(out.holdingCurrent, s.idle + s.x * (s.x * wound), stalled)
          near(out.holdingHeat, terminalVoltage * (s.idle + s.x * (s.x * wound)), terminalVoltage * stalled)
        },
      ),
      seeded,
    )
    expect(answered).toBeGreaterThan(60)
  })

  it("powerScrew: work in and out, and the stresses of core and first thread", () => {
    fc.assert(
      fc.property(
        fc.record({
          ...{
            F: between(10, 5000),
            d: between(0.005, 0.03),
            p: between(0.08, 0.3),
            n: fc.integer({ min: 1, max: 3 }),
            f: between(0.02, 0.4),
          },
          ...{ flank: between(0, 1), fc: between(0, 0.3), dc: between(0, 0.05), v: between(0.001, 0.1), eta: between(0.2, 0.95) },
          byEfficiency: fc.boolean(),
        }),
        (s) => {
          const pitch = s.p * s.d
          const thread = s.byEfficiency ? { screwEfficiency: s.eta } : { threadFriction: s.f }
          const out = some(
            powerScrew.si(
              powerScrew.read({
                ...{ force: s.F, majorDiameter: s.d, pitch, starts: s.n, flankAngle: s.flank, ...thread },
                ...{ collarFriction: s.fc, collarDiameter: s.dc, speed: s.v },
              }),
            ),
          )
          if (!out) return
          const [lead, mean, core] = [pitch * s.n, s.d - pitch / 2, s.d - pitch]
          near(out.lead, lead)
          near(out.meanDiameter, mean)
          near(Math.tan(out.leadAngle) * Math.PI * mean, lead)
          const lift = s.F * lead
          if (s.byEfficiency) {
            near(lift, s.eta * 2 * Math.PI * out.threadRaiseTorque)
            // the work lost in the thread is the same both ways
            near(
              2 * Math.PI * out.threadRaiseTorque - lift,
              lift + 2 * Math.PI * out.threadLowerTorque,
              2 * Math.PI * out.threadRaiseTorque,
            )
          } else {
            const phi = Math.atan(s.f / Math.cos(s.flank / 2))
            near(out.threadRaiseTorque, (s.F * mean * Math.tan(phi + out.leadAngle)) / 2, s.F * mean)
            near(out.threadLowerTorque, (s.F * mean * Math.tan(phi - out.leadAngle)) / 2, s.F * mean)
          }
          const collar = s.fc * s.F * (s.dc / 2)
          near(out.collarTorque, collar)
          near(out.raiseTorque, out.threadRaiseTorque + collar)
          near(out.lowerTorque, out.threadLowerTorque + collar, out.raiseTorque)
          near(out.efficiency, lift / (2 * Math.PI * out.raiseTorque))
          expect(out.threadSelfLocking).toBe(out.threadLowerTorque > 0)
          near((out.rotation as number) * lead, 2 * Math.PI * s.v)
          near(out.power, (s.F * s.v) / out.efficiency)
          // twisted round core: T = ∫τ·r dA = τ·π·r³/2; pushed: F over its area
          near(out.raiseTorque, (out.torsionStress * Math.PI * (core / 2) ** 3) / 2)
          near(-s.F, out.axialStress * Math.PI * (core / 2) ** 2)
          // the first thread takes 0.38 of the load (Shigley, section 8-2) on a ring half a pitch deep, and bends as a cantilever of
          // the core's circumference, half a pitch thick, loaded a quarter of a pitch out
          near(out.bearingStress, (-0.38 * s.F) / (Math.PI * mean * (pitch / 2)))
          near(out.bendingStress, (0.38 * s.F * (pitch / 4)) / ((Math.PI * core * (pitch / 2) ** 2) / 6))
        },
      ),
      seeded,
    )
  })

  it("dutyCycle: its rest, longest run and temperatures close the cycle they stand for", () => {
    let [rested, hot] = [0, 0]
    fc.assert(
      fc.property(
        fc.record({
          ...{ D: between(0.05, 0.6), tr: between(30, 600), tau: between(60, 3000), tau0: between(60, 3000), run: between(5, 400) },
          ...{ rest: between(5, 2000), i: between(0.5, 1.6), lim: between(70, 120), a0: between(10, 40), a: between(-10, 45) },
        }),
        (s) => {
          const input = {
            ...{
              ratedDuty: s.D,
              ratedRunDuration: s.tr,
              timeConstant: s.tau,
              restTimeConstant: s.tau0,
              runDuration: s.run,
              restDuration: s.rest,
            },
            ...{ currentUtilisation: s.i, temperatureLimit: s.lim, ratedAmbientTemperature: s.a0, ambientTemperature: s.a },
          }
          const out = some(dutyCycle.si(dutyCycle.read(input)))
          if (!out) throw new Error("always answers")
          // rises a run from one temperature towards the long-run one, falls towards the surroundings at rest
          const run = (from: number, rise: number, t: number) => rise + (from - rise) * Math.exp(-t / s.tau)
          const rest = (from: number, t: number) => from * Math.exp(-t / s.tau0)
          near(out.duty * (s.run + s.rest), s.run)
          near(out.allowedRise, s.lim - s.a)
          const rated = s.lim - s.a0
          near(run(rest(rated, s.tr / s.D - s.tr), out.ratedContinuousRise, s.tr), rated, 1e3 * out.ratedContinuousRise)
          near(out.continuousRise, out.ratedContinuousRise * s.i * s.i)
          near(out.firstRunTemperature, s.a + run(0, out.continuousRise, s.run), 1e3 * out.continuousRise)
          const peak = out.peakTemperature - s.a
          near(run(rest(peak, s.rest), out.continuousRise, s.run), peak, 1e3 * out.continuousRise)
          expect(out.maxRunDuration).toBeLessThanOrEqual(s.tr)
          const ends = run(0, out.continuousRise, out.maxRunDuration)
          if (out.maxRunDuration < s.tr) near(ends, out.allowedRise, 1e3 * out.continuousRise)
          else expect(ends).toBeLessThanOrEqual(out.allowedRise * (1 + 1e-9))
          if (out.requiredRestDuration === null) expect(s.run > s.tr || out.firstRunTemperature > s.lim - 1e-6).toBe(true)
          else if (out.requiredRestDuration > 0) {
            rested++
            near(run(rest(out.allowedRise, out.requiredRestDuration), out.continuousRise, s.run), out.allowedRise, 1e3 * out.continuousRise)
          } else expect(run(out.allowedRise, out.continuousRise, s.run)).toBeLessThanOrEqual(out.allowedRise * (1 + 1e-9))
          // cycles counted one by one
          let [theta, n] = [0, 0]
          while (n < 400) {
            theta = run(theta, out.continuousRise, s.run)
            if (theta > out.allowedRise) break
            n++
            theta = rest(theta, s.rest)
          }
          if (s.run > s.tr) expect(out.runsBeforeRest).toBe(0)
          else if (n < 400) {
            hot++
            expect(out.runsBeforeRest).toBe(n)
          } else expect(out.runsBeforeRest ?? 400).toBeGreaterThanOrEqual(400)
          expect(out.sustained).toBe(out.runsBeforeRest === null)
        },
      ),
      seeded,
    )
    expect(Math.min(rested, hot)).toBeGreaterThan(20)
  })
})
