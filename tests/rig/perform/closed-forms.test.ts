// Performances against what can be written down: pendulums, motors, friction, stops.
import { describe, expect, it } from "vitest"
import { agrees, referenceRows } from "../../helpers/references.js"
import { armRig, feather, kit, last, play } from "./kit.js"

const rows = new Map(referenceRows("perform").map((row) => [row.id, row]))
const row = (id: string) => {
  const found = rows.get(id)
  if (!found) throw new Error(`no row ${id}`)
  return found
}
const G = 9.80665
const turn = (degrees: number) => (degrees * Math.PI) / 180
const title = (id: string) => `${row(id).what} (${row(id).source.title}, ${row(id).basis})`

/** A pendulum of a point mass let go at an amplitude: it hangs at −90°, and its drive neither holds nor drives it. */
const pendulum = (length: number, amplitude: number, duration: number, more: object = {}) =>
  armRig(
    { ...feather, turn: 2 * amplitude },
    { startAngle: -Math.PI / 2 - amplitude, length, masses: [{ name: "bob", mass: 40, radius: length }], ...more },
    { programme: [{ at: 0, motion: "arm", to: 0 }], stage: { duration } },
  )

describe("a pendulum", () => {
  it(title("pendulum-state"), () => {
    const { inputs, expected } = row("pendulum-state")
    // the row's gravity is not ours: the same ratio to the length
    const length = inputs.length_m * (G / inputs.g_m_s2)
    const amplitude = turn(inputs.amplitude_deg)
    const out = play(pendulum(length, amplitude, inputs.t_s), 1e-12, 1e-13)
    const arm = out.motions[0]
    if (!arm?.turning) throw new Error("a shaft turns")
    // the row counts from hanging, let go on the positive side
    agrees(-(last(arm.travel) * 2 * amplitude - amplitude), expected.angle_rad, row("pendulum-state"), "angle")
    agrees(-last(arm.turning), expected.rate_rad_s, row("pendulum-state"), "rate")
    const fastest = play(pendulum(length, amplitude, 3), 1e-10, 1e-12).motions[0]?.turning ?? []
    expect(Math.max(...fastest.map(Math.abs))).toBeLessThanOrEqual((expected.bottom_rate_rad_s as number) * (1 + 1e-9))
    expect(Math.max(...fastest.map(Math.abs))).toBeGreaterThan((expected.bottom_rate_rad_s as number) * 0.99)
  })
  it(title("pendulum-period-table"), () => {
    const { inputs, expected } = row("pendulum-period-table")
    inputs.amplitude_deg.forEach((degrees: number, k: number) => {
      const amplitude = turn(degrees)
      const period = (expected.period_s as number[])[k] as number
      const out = play(pendulum(G / inputs.g_m_s2, amplitude, 0.75 * period), 1e-11, 1e-13)
      // after three quarters of a period it hangs straight down
      expect(last(out.motions[0]?.travel ?? []), `${degrees}°`).toBeCloseTo(0.5, 8)
    })
  })
  it("loses to a hinge that rubs what the hinge takes, and stays where that holds it", () => {
    const [mass, length, friction] = [40, 0.5, 16]
    const out = play(pendulum(length, turn(80), 60, { hingeFriction: friction }), 1e-10, 1e-12)
    expect(Math.abs(out.energy.residual)).toBeLessThan(1e-9)
    const lost = -out.energy.lifting
    expect(out.energy.friction / lost).toBeCloseTo(1, 8)
    const travel = out.motions[0]?.travel ?? []
    const way = travel.reduce((sum, x, i) => sum + Math.abs(x - (travel[i - 1] ?? x)), 0) * turn(160)
    expect(out.energy.friction / (friction * way)).toBeCloseTo(1, 9)
    const rests = turn(160) * last(travel) - turn(80)
    expect(Math.abs(mass * G * length * Math.sin(rests))).toBeLessThanOrEqual(friction)
  })
})

describe("a motor", () => {
  const { inputs, expected } = row("motor-spin-up")
  const [k, r, j] = [inputs.K_N_m_A, inputs.resistance_ohm, inputs.inertia_kg_m2]
  const motor = {
    type: "shaft-motor",
    turn: "36000 deg",
    torqueConstant: k,
    backEmfConstant: k,
    windingResistance: r,
    frictionCurrent: inputs.friction_N_m / k,
    inertia: j,
  }
  it(title("motor-spin-up"), () => {
    const tau = expected.tau_s as number
    const at = (duration: number) => play(armRig(motor, {}, { stage: { duration } }), 1e-12, 1e-14)
    const three = at(3 * tau)
    agrees(last(three.motions[0]?.travel ?? []) * turn(36000), expected.angle_3tau_rad, row("motor-spin-up"), "angle")
    agrees(three.energy.winding, expected.heat_3tau_J, row("motor-spin-up"), "heat")
    const rate = (out: typeof three) => last(out.motions[0]?.turning ?? [])
    agrees(rate(at(tau)) / (1 - Math.exp(-1)), expected.final_rad_s, row("motor-spin-up"), "final speed by the rate after one tau")
    agrees(rate(at(expected.t90_s as number)) / 0.9, expected.final_rad_s, row("motor-spin-up"), "final speed by the rate at 90 %")
  })
  it("cut at its place it runs on until its friction has taken its energy", () => {
    const out = play(armRig(motor, {}, { programme: [{ at: 0, motion: "arm", to: 0.3 }] }))
    const cut = out.events.find((e) => e.type === "arrives")?.time ?? Number.NaN
    const at = out.times.lastIndexOf(cut)
    const arm = out.motions[0]
    const speed = arm?.turning?.[at] ?? Number.NaN
    const overrun = (last(arm?.travel ?? []) - (arm?.travel[at] ?? 0)) * turn(36000)
    expect(overrun / ((j * speed ** 2) / 2 / inputs.friction_N_m)).toBeCloseTo(1, 7)
    expect((last(out.times) - cut) / ((j * speed) / inputs.friction_N_m)).toBeCloseTo(1, 7)
  })
  it("comes back from its stop with the share of its speed that is stated, and the stop takes the rest", () => {
    const rig = (restitution: number) =>
      play(
        armRig(
          { ...motor, turn: 20, frictionCurrent: 0 },
          {},
          { programme: [{ at: 0, motion: "arm", to: 1 }], stage: { restitution, duration: 0.2 } },
        ),
      )
    const out = rig(0.5)
    const strike = out.events.find((e) => e.type === "strikes")
    const at = out.times.indexOf(strike?.time ?? -1)
    const turning = out.motions[0]?.turning ?? []
    const before = turning[at] ?? Number.NaN
    expect(Math.min(...turning) / before).toBeCloseTo(-0.5, 9)
    expect(strike?.energy).toBeCloseTo((j * before ** 2) / 2, 9)
    expect(out.energy.stops).toBeCloseTo(((j * before ** 2) / 2) * 0.75, 9)
    expect(rig(0).energy.stops).toBeCloseTo((j * before ** 2) / 2, 9)
  })
})

describe("friction that sticks", () => {
  const [e, r, idle, friction] = [0.5, 2, 0.3, 1.6]
  it("lets go exactly when a ramped motor passes it", () => {
    // V·d = R·(I₀ + M/k): the ramp begins at 30 % and takes 4 s for the next 100 %
    const gearmotor = {
      type: "gearmotor",
      travel: "100 rev",
      ratedVoltage: "12 V",
      backEmfConstant: e,
      windingResistance: r,
      noLoadCurrent: idle,
      control: "ramp",
      rotorInertia: 0.01,
    }
    const out = play(
      armRig(gearmotor, { hingeFriction: friction }, { programme: [{ at: 0, motion: "arm", to: 1 }], stage: { rampTime: 4 } }),
    )
    const travel = out.motions[0]?.travel ?? []
    const still = out.times[travel.findIndex((x) => x > 0) - 1] ?? Number.NaN
    // constants given as such: the torque constant is that of the back-EMF
    const expected = 4 * ((r * (idle + friction / e)) / 12 - 0.3)
    expect(still / expected).toBeCloseTo(1, 9)
  })
  it("holds a vane in a gust until the pressure passes it, and never where the gust stays below", () => {
    const [area, radius, held] = [0.2, 0.4, 0.5]
    // a vane that hangs straight down in a wind from ahead turns back, the way its angle falls: its travel the other way round
    const rig = (windSpeed: number) => ({
      ...armRig(
        { ...feather, turn: 1 },
        {
          startAngle: -Math.PI / 2 - 1,
          hingeFriction: held,
          panels: [{ area, radius }],
          masses: [{ name: "vane", mass: 0.05, radius: 0 }],
        },
        { programme: [{ at: 0, motion: "arm", to: 0 }], stage: { gust: { at: 0.5, duration: 2, windSpeed, from: Math.PI } } },
      ),
    })
    // pressure on the vane as it stands, square to it with the sine of its slope: M = ½·ρ·(v·s)²·A·r·sin
    const lever = area * radius * Math.abs(Math.sin(-Math.PI / 2 - 1))
    const least = Math.sqrt(held / (0.5 * 1.225 * lever))
    const slips = (v: number) => play(rig(v)).events.find((event) => event.type === "slips")
    expect(slips(least * 0.999)).toBeUndefined()
    const v = 1.3 * least
    const share = least / v
    expect(slips(v)?.time).toBeCloseTo(0.5 + (2 * Math.acos(1 - 2 * share)) / (2 * Math.PI), 8)
  })
  it("does not hold a cut motor's load that is heavier, and holds one that is lighter", () => {
    const slips = (mass: number) =>
      play(
        armRig(
          {
            type: "shaft-motor",
            turn: 2,
            torqueConstant: 0.5,
            backEmfConstant: 0.5,
            windingResistance: 2,
            frictionCurrent: 0.4,
            backwardEfficiency: 1,
            inertia: 0.01,
          },
          { startAngle: -2, masses: [{ name: "head", mass, radius: 0.3 }] },
          { programme: [{ at: 0, motion: "arm", to: 0 }] },
        ),
      ).events.some((e) => e.type === "slips")
    // friction 0.5·0.4 N·m against m·g·r·cos
    const limit = 0.2 / (G * 0.3 * Math.abs(Math.cos(-2)))
    expect([slips(limit * (1 - 1e-6)), slips(limit * (1 + 1e-6))]).toEqual([false, true])
  })
})

describe("the public verb", () => {
  it("answers as its kernel does, through the kit and members of one's own", () => {
    const rig = pendulum(0.5, 1, 1)
    const out = (kit.perform as unknown as (rig: object) => ReturnType<typeof play>)(rig)
    expect(last(out.motions[0]?.travel ?? [])).toBe(last(play(rig).motions[0]?.travel ?? []))
  })
})
