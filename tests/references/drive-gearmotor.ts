// Published values of geared starts and of rotors: how each row is put to gearmotor and gearTrain.
import { type Gearmotor, type GearmotorInput, gearmotor, gearTrain } from "../../src/drive/index.js"
import type { Check } from "../helpers/references.js"

const RPM = Math.PI / 30
/** A motor that gives one torque at standstill, behind a pair of gears of one ratio. */
function pair(teeth: readonly [number, number], meshEfficiency: number, standstill: number, more: Partial<GearmotorInput>): Gearmotor {
  return gearmotor({
    backEmfConstant: 1,
    windingResistance: 1,
    terminalVoltage: standstill,
    stages: [{ type: "spur", drivingTeeth: teeth[0], drivenTeeth: teeth[1], meshEfficiency }],
    torque: 0,
    ...more,
  })
}

/** A motor's sheet by its slope: any torque constant gives the same line. */
const rotor: Check = (row) => {
  const k = 0.01
  const windingResistance = ((row.slope_rpm_per_mN_m * RPM) / 1e-3) * k ** 2
  const out = pair([20, 20], 1, 1, {
    backEmfConstant: k,
    windingResistance,
    terminalVoltage: (windingResistance * row.stall_torque_mN_m * 1e-3) / k,
    rotorInertia: row.rotor_inertia_g_cm2 * 1e-7,
  })
  return { time_constant_ms: out.timeConstant * 1000, acceleration_1000rad_per_s2: (out.startAcceleration as number) / 1000 }
}
const taus = ["08x16-3v", "08x16-6v", "08x16-9v", "08x16-12v", "13x31-6v", "13x31-12v"].map((size) => `motor-tau-coreless-${size}`)

export const gearmotorChecks: Record<string, Check> = {
  ...Object.fromEntries(taus.map((id) => [id, rotor])),
  "inertia-khurmi-3-17": (row) => {
    const torque = row.load_torque_N_m
    const out = pair([20, 20 * row.gear_ratio], row.efficiency, row.motor_torque_start_N_m, {
      rotorInertia: row.motor_inertia_kg_m2,
      loadInertia: row.load_inertia_kg_m2,
      torque,
    })
    const steady = gearTrain({
      stages: [{ type: "spur", drivingTeeth: 20, drivenTeeth: 20 * row.gear_ratio, meshEfficiency: row.efficiency }],
      torque,
      inputSpeed: row.load_speed_steady_rpm * row.gear_ratio * RPM,
    })
    return { start_time_s: (row.load_speed_final_rpm * RPM) / (out.startAcceleration as number), motor_power_W: steady.inputPower }
  },
  "inertia-khurmi-3-13": (row) => {
    // the drum drives a wheel that turns faster: all inertia felt at the drum, which the mass pulls
    const felt = (efficiency: number) => {
      const out = pair([10 * row.gear_ratio, 10], efficiency, 1, {
        rotorInertia: row.drum_inertia_kg_m2,
        loadInertia: row.second_inertia_kg_m2,
      })
      return 1 / ((out.startAcceleration as number) * out.ratio)
    }
    const falls = (inertia: number) => (row.mass_kg * 9.81) / (row.mass_kg + inertia / row.drum_radius_m ** 2)
    return { acceleration_lossless_m_per_s2: falls(felt(1)), acceleration_lossy_m_per_s2: falls(felt(row.efficiency)) }
  },
  "inertia-tooth-and-belt-numeric": (row) => {
    const out = pair([20, 20 * row.gear_ratio], row.efficiency, 1, {
      rotorInertia: row.motor_inertia_kg_m2,
      loadInertia: row.pulley_inertia_kg_m2 + row.moved_mass_kg * row.pulley_radius_m ** 2,
    })
    return { total_inertia_kg_m2: 1 / ((out.startAcceleration as number) * out.ratio) }
  },
  "inertia-dubey-2-1": (row) => {
    const motor = row.motor_speed_rpm * RPM
    const lift = row.lift_speed_m_per_s / motor
    const geared = gearTrain({
      stages: [{ type: "spur", drivingTeeth: 10, drivenTeeth: 10 / row.speed_ratio_load_over_motor, meshEfficiency: row.gear_efficiency }],
      torque: row.load_torque_N_m,
      inputInertia: row.motor_inertia_kg_m2 + row.mass_kg * lift ** 2,
      loadInertia: row.load_inertia_kg_m2,
    })
    // the hoist as a pair of gears of its own, one to one
    const hoist = gearTrain({
      stages: [{ type: "spur", drivingTeeth: 20, drivenTeeth: 20, meshEfficiency: row.hoist_efficiency }],
      torque: row.mass_kg * 9.81 * lift,
    })
    return { equivalent_inertia_kg_m2: geared.inertiaAtInput, equivalent_torque_N_m: geared.inputTorque + hoist.inputTorque }
  },
}
