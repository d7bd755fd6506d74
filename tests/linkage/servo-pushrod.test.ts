import { describe, expect, it } from "vitest"
import { flapDragMoment, planarLinkage, servoPushrod } from "../../src/linkage/index.js"
import { integrate } from "../../src/numeric/index.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

const DEG = Math.PI / 180
const G = 9.80665

/** The same linkage as data for planarLinkage, with the moment on the flap. */
function asMechanism(
  si: Readonly<Record<"pivotDistance" | "servoHorn" | "flapHorn" | "servoHornAngle" | "flapHornAngle" | "hingeMoment", number>>,
  servoAngle: number,
) {
  const { pivotDistance: d, servoHorn: a, flapHorn: c, servoHornAngle: t, flapHornAngle: p } = si
  return planarLinkage({
    pivots: [
      { name: "servo", x: 0, y: 0 },
      { name: "hinge", x: d, y: 0 },
    ],
    points: [
      { name: "A", x: a * Math.cos(t), y: a * Math.sin(t) },
      { name: "B", x: d + c * Math.cos(p), y: c * Math.sin(p) },
    ],
    bars: [
      { name: "horn", from: "servo", to: "A" },
      { name: "rod", from: "A", to: "B" },
      { name: "flap", from: "hinge", to: "B" },
    ],
    cranks: [{ name: "shaft", from: "servo", to: "A", end: t + servoAngle, speed: 1 }],
    torques: [{ from: "hinge", to: "B", torque: -si.hingeMoment }],
  })
}

describe("servoPushrod", () => {
  it("agrees with planarLinkage in flap angle, ratio, torque and rod force over random linkages and travels", () => {
    const random = lehmer(19)
    let [met, worst] = [0, 0]
    for (let k = 0; k < 80; k++) {
      const si = {
        pivotDistance: random.real(0.04, 0.15),
        servoHorn: random.real(0.008, 0.025),
        flapHorn: random.real(0.012, 0.035),
        servoHornAngle: random.real(50, 130) * DEG,
        flapHornAngle: random.real(50, 130) * random.sign() * DEG,
        minServoAngle: random.real(-50, -10) * DEG,
        maxServoAngle: random.real(10, 50) * DEG,
        hingeMoment: random.real(-0.3, 0.3),
        steps: 4,
      }
      const out = servoPushrod.attempt(si)
      if (!out.ok || out.value.minTransmissionAngle < 0.15) continue
      met++
      for (const which of [0, out.value.map.length - 1]) {
        const here = out.value.map[which] as (typeof out.value.map)[number]
        const same = asMechanism(si, here.servoAngle)
        const [, rod, flap] = same.bars as [(typeof same.bars)[number], (typeof same.bars)[number], (typeof same.bars)[number]]
        const turned = flap.angle - si.flapHornAngle - here.flapAngle
        const rodForce = same.pins.find((p) => p.bar === "rod" && p.point === "B")?.force as number
        worst = Math.max(
          worst,
          2 * Math.abs(Math.sin(turned / 2)),
          Math.abs(flap.speed - here.ratio),
          Math.abs((same.drivers[0]?.torque as number) - here.torque),
          Math.abs(rodForce - Math.abs(here.rodForce)) / (1 + rodForce),
          Math.abs(rod.length - out.value.rod),
        )
      }
    }
    expect(met).toBeGreaterThan(38)
    expect(worst).toBeLessThan(1e-9)
  })

  it("spends at the servo what the load takes up, weight and moment, by summing work over the travel", () => {
    const si = {
      pivotDistance: 0.09,
      servoHorn: 0.014,
      flapHorn: 0.022,
      hingeMoment: 0.1,
      flapMass: 0.08,
      flapCentre: 0.12,
      flapLevel: 0.3,
      steps: 1000,
    }
    const out = servoPushrod(si)
    const work = out.map.slice(1).reduce((sum, s, i) => {
      const last = out.map[i] as (typeof out.map)[number]
      return sum + ((s.torque + last.torque) / 2) * (s.servoAngle - last.servoAngle)
    }, 0)
    const lift = 0.08 * G * 0.12 * (Math.sin(0.3 + out.maxServoFlapAngle) - Math.sin(0.3 + out.minServoFlapAngle))
    expect(work).toBeCloseTo(0.1 * (out.maxServoFlapAngle - out.minServoFlapAngle) + lift, 6)
  })

  it("takes the air's moment as quadrature over the flap does, and adds it the worse way in either direction", () => {
    const random = lehmer(61)
    let worst = 0
    for (let k = 0; k < 60; k++) {
      const [width, depth, speed, windSpeed] = [random.real(0.05, 0.5), random.real(0.05, 0.9), random.real(0, 6), random.real(0, 12)]
      const [density, coefficient] = [random.real(1, 1.3), random.real(1, 2)]
      const air = integrate((x) => (density * coefficient * width * (speed * x + windSpeed) ** 2 * x) / 2, 0, depth).value
      worst = Math.max(worst, Math.abs(flapDragMoment(density, coefficient, width, depth, speed, windSpeed) - air) / (1e-12 + air))
      // on a parallelogram of horns flap and servo turn alike, so moments are torques
      const flap = {
        pivotDistance: 0.1,
        servoHorn: 0.02,
        flapHorn: 0.02,
        flapWidth: width,
        flapDepth: depth,
        servoSpeed: speed,
        windSpeed,
        dragCoefficient: coefficient,
        airDensity: density,
      }
      for (const hingeMoment of [0.5, -0.5]) expect(servoPushrod({ ...flap, hingeMoment }).peakTorque).toBeCloseTo(0.5 + air, 9)
    }
    expect(worst).toBeLessThan(1e-10)
  })

  it("reads no peak too low, however few settings are asked for", () => {
    const random = lehmer(59)
    let [met, crests] = [0, 0]
    for (let k = 0; k < 60; k++) {
      const si = {
        pivotDistance: random.real(0.05, 0.12),
        servoHorn: random.real(0.008, 0.02),
        flapHorn: random.real(0.015, 0.035),
        servoHornAngle: random.real(60, 120) * DEG,
        hingeMoment: random.real(-0.2, 0.2),
        flapMass: random.real(0, 0.2),
        flapCentre: random.real(0, 0.2),
        flapLevel: random.real(-1, 1),
      }
      const [few, many] = [3, 300].map((steps) => servoPushrod.attempt({ ...si, steps }))
      if (!few?.ok || !many?.ok) continue
      met++
      if (few.value.map.length > 7) crests++
      for (const key of ["peakTorque", "peakRodForce"] as const) expect(few.value[key]).toBeGreaterThan(many.value[key] * (1 - 1e-9))
    }
    expect(met).toBeGreaterThan(30)
    expect(crests).toBeGreaterThan(6)
  })

  it("finds the least transmission angle that a fine scan finds, never a larger one", () => {
    const random = lehmer(53)
    let met = 0
    for (let k = 0; k < 60; k++) {
      const out = servoPushrod.attempt({
        pivotDistance: random.real(0.03, 0.1),
        servoHorn: random.real(0.01, 0.03),
        flapHorn: random.real(0.01, 0.04),
        servoHornAngle: random.real(20, 160) * DEG,
        flapHornAngle: random.real(40, 140) * DEG,
        minServoAngle: random.real(-100, 0) * DEG,
        maxServoAngle: random.real(0, 100) * DEG,
        steps: 200,
      })
      if (!out.ok) continue
      met++
      const scanned = Math.min(...out.value.map.map((s) => s.transmissionAngle))
      expect(out.value.minTransmissionAngle).toBeLessThanOrEqual(scanned + 1e-9)
      expect(scanned - out.value.minTransmissionAngle).toBeLessThan(0.05)
      // the flap never jumps from one setting to the next
      const jumps = out.value.map.slice(1).map((s, i) => Math.abs(s.flapAngle - (out.value.map[i] as typeof s).flapAngle))
      expect(Math.max(...jumps)).toBeLessThan(0.5)
    }
    expect(met).toBeGreaterThan(18)
  })

  it("follows a flap whose horn points away from the servo across half a turn, however its angle is written", () => {
    const away = {
      pivotDistance: 0.05,
      servoHorn: 0.05,
      flapHorn: 0.02,
      minServoAngle: -0.1,
      maxServoAngle: 0.1,
      hingeMoment: 0.1,
      steps: 10,
    }
    for (const horn of [175 * DEG, -175 * DEG]) {
      const out = servoPushrod({ ...away, flapHornAngle: horn })
      const angles = out.map.map((s) => horn + s.flapAngle)
      expect(Math.min(...angles.map(Math.abs))).toBeLessThan(Math.PI)
      expect(Math.max(...angles.map(Math.abs))).toBeGreaterThan(Math.PI)
      out.map.forEach((s, i) => {
        const [t, p] = [Math.PI / 2 + s.servoAngle, horn + s.flapAngle]
        const rod = Math.hypot(0.05 + 0.02 * Math.cos(p) - 0.05 * Math.cos(t), 0.02 * Math.sin(p) - 0.05 * Math.sin(t))
        expect(rod).toBeCloseTo(out.rod, 12)
        if (i > 0) expect(Math.abs(s.flapAngle - (out.map[i - 1] as typeof s).flapAngle)).toBeLessThan(0.4)
      })
      const other = servoPushrod({ ...away, flapHornAngle: horn - Math.sign(horn) * 2 * Math.PI })
      other.map.forEach((s, i) => {
        expect(s.flapAngle).toBeCloseTo(out.map[i]?.flapAngle as number, 9)
      })
    }
  })

  it("refuses a travel that binds and a servo that stalls, with what would do", () => {
    const long = { pivotDistance: 0.05, servoHorn: 0.03, flapHorn: 0.012, minServoAngle: -80 * DEG, maxServoAngle: 80 * DEG }
    const binds = refusalOf(servoPushrod.attempt(long))
    expect(binds.noSolution).toBe("binding")
    expect(binds.shortBy).toBeGreaterThan(0)
    // a flap horn of up to five times the length is offered, and none beyond
    const { nearest } = refusalOf(servoPushrod.attempt({ pivotDistance: 0.08, servoHorn: 0.03, flapHorn: 0.002 }))
    expect(nearest).not.toHaveProperty("flapHorn")
    const longer = refusalOf(servoPushrod.attempt({ pivotDistance: 0.08, servoHorn: 0.03, flapHorn: 0.015 })).nearest.flapHorn as number
    expect(longer).toBeGreaterThan(0.015)
    expect(longer).toBeLessThan(0.075)
    const weak = { pivotDistance: 0.08, servoHorn: 0.015, flapHorn: 0.02, hingeMoment: 0.5, servoTorque: 0.2 }
    const stalls = refusalOf(servoPushrod.attempt(weak))
    expect(stalls.noSolution).toBe("insufficient-torque")
    expect(servoPushrod.attempt({ ...weak, servoTorque: stalls.nearest.servoTorque as number }).ok).toBe(true)
  })

  it("says when the flap turns back within the travel", () => {
    const out = servoPushrod({
      pivotDistance: 0.12,
      servoHorn: 0.01,
      flapHorn: 0.03,
      servoHornAngle: 150 * DEG,
      minServoAngle: -10 * DEG,
      maxServoAngle: 70 * DEG,
    })
    expect(out.reverses).toBe(true)
    expect(out.cautions.map((c) => c.code)).toContain("reverses")
    const angles = out.map.map((s) => s.flapAngle)
    const steps = angles.slice(1).map((a, i) => Math.sign(a - (angles[i] as number)))
    expect(new Set(steps).size).toBe(2)
  })
})
