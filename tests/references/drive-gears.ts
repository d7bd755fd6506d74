// Published values of gear trains: how each row is put to gearTrain.
import {
  type GearStage,
  type GearTrainInput,
  gearTrain,
  type PlanetaryPath,
  type PlanetaryStage,
  type SpurStage,
  type WormStage,
} from "../../src/drive/index.js"
import type { Check } from "../helpers/references.js"

const DEG = Math.PI / 180
const RPM = Math.PI / 30
const [INCH, LBF] = [0.0254, 4.4482216152605]
const LBF_IN = INCH * LBF
/** Pairs without loss, as books on kinematics take them. */
const free = { meshEfficiency: 1 }
const train = (stages: readonly GearStage[], more: Partial<GearTrainInput> = {}) => gearTrain({ stages, torque: 1, ...more })
const spur = (drivingTeeth: number, drivenTeeth: number, more: Partial<SpurStage> = {}): SpurStage => ({
  type: "spur",
  drivingTeeth,
  drivenTeeth,
  ...free,
  ...more,
})
const planetary = (sun: number, ring: number, path: PlanetaryPath, more: Partial<PlanetaryStage> = {}): PlanetaryStage => ({
  type: "planetary",
  drivingTeeth: sun,
  drivenTeeth: ring,
  path,
  ...free,
  ...more,
})
/** Signed turns of the output for one of the input. */
const turns = (stage: GearStage) => {
  const { ratio, reverses } = train([stage])
  return (reverses ? -1 : 1) / ratio
}
const worm = (leadAngle: number, friction: number, more: Partial<WormStage> = {}): WormStage => ({
  type: "worm",
  drivingTeeth: 1,
  drivenTeeth: 30,
  leadAngle,
  friction,
  pressureAngle: 0,
  ...more,
})

export const gearChecks: Record<string, Check> = {
  "gear-khurmi-13-1": ({ driver_teeth, driven_teeth, input_speed_rpm }) => ({
    output_speed_rpm:
      (train(
        (driver_teeth as number[]).map((z: number, k: number) => spur(z, driven_teeth[k])),
        { inputSpeed: input_speed_rpm * RPM },
      ).outputSpeed as number) / RPM,
  }),
  "gear-wentzell-11-5": (row) => {
    const motorTorque = ((63000 * row.motor_power_hp) / row.motor_speed_rpm) * LBF_IN
    const stages = [spur(row.teeth_1, row.teeth_2), spur(row.teeth_3, row.teeth_4)]
    const { ratio } = train(stages)
    const out = train(stages, { torque: motorTorque * ratio, inputSpeed: row.motor_speed_rpm * RPM })
    return {
      ratio,
      motor_torque_lbf_in: out.inputTorque / LBF_IN,
      output_torque_lbf_in: (out.stages[1]?.drivenTorque as number) / LBF_IN,
      output_speed_rpm: (out.outputSpeed as number) / RPM,
    }
  },
  "gear-wentzell-12-1": (row) => {
    const module = INCH / row.diametral_pitch_per_in
    const torque = (row.power_hp * 745.6998715822702) / (row.speed_rpm * RPM)
    // the pinion's force is that of a wheel of its size with its torque
    const [stage] = train([spur(row.pinion_teeth, row.pinion_teeth, { module, pressureAngle: row.pressure_angle_deg * DEG })], {
      torque,
    }).stages
    const { toothForce, shaftForce } = stage as { toothForce: number; shaftForce: number }
    return {
      pitch_diameter_in: (2 * torque) / toothForce / INCH,
      tangential_force_lbf: toothForce / LBF,
      separating_force_lbf: Math.sqrt(shaftForce ** 2 - toothForce ** 2) / LBF,
      resultant_force_lbf: shaftForce / LBF,
    }
  },
  "gear-bevan-10-4": ({ gear_ratio, pressure_angle_deg }) => {
    const fewest = (ratio: number) => train([spur(1, ratio, { pressureAngle: pressure_angle_deg * DEG })]).stages[0]?.fewestTeeth as number
    const equal = train([spur(20, 20, { pressureAngle: pressure_angle_deg * DEG })]).stages[0]?.fewestTeeth
    const three = train([spur(20, 20 * gear_ratio, { pressureAngle: pressure_angle_deg * DEG })]).stages[0]?.fewestTeeth
    // a wheel of a thousand times the teeth is a rack to the last tooth
    return { teeth_rack: fewest(1000), teeth_equal: equal, teeth_ratio: three }
  },
  "gear-backlash-arcmin": (row) => {
    const play = (tip: number) =>
      (train([spur(20, 40, { backlash: (row.backlash_arcmin / 60) * DEG })], { tipRadius: tip / 1000 }).tipPlay as number) * 1000
    return { play_far_mm: play(row.radius_far_mm), play_near_mm: play(row.radius_near_mm) }
  },
  "gear-backlash-stages-numeric": ({ mesh_play_mm, driven_pitch_radius_mm, stage_ratio }) => ({
    output_play_deg:
      train(
        (stage_ratio as number[]).map((r: number, k: number) =>
          spur(20, 20 * r, { backlash: mesh_play_mm[k] / driven_pitch_radius_mm[k] }),
        ),
      ).backlash / DEG,
  }),
  "planetary-khurmi-13-6": ({ sun_teeth, ring_teeth, carrier_speed_rpm }) => ({
    sun_speed_rpm: carrier_speed_rpm * turns(planetary(sun_teeth, ring_teeth, "carrier-to-sun", { planets: 1 })),
  }),
  // both inputs at once add: each turned with the other held
  "planetary-khurmi-13-7": (row) => {
    const both = (ring: number) =>
      row.sun_turns * turns(planetary(row.sun_teeth, row.ring_teeth, "sun-to-carrier")) +
      ring * turns(planetary(row.sun_teeth, row.ring_teeth, "ring-to-carrier"))
    return { carrier_turns_case1: both(row.ring_turns_case1), carrier_turns_case2: both(row.ring_turns_case2) }
  },
  "planetary-khurmi-13-9": ({ ring_pitch_diameter_mm, module_mm, ratio }) => {
    const ring = ring_pitch_diameter_mm / module_mm
    // the sun that gives the ratio, among all
    const sun = Array.from({ length: ring - 9 }, (_, k) => k + 6).find(
      (z) => Math.abs(train([planetary(z, ring, "sun-to-carrier", { planets: 1 })]).ratio - ratio) < 1e-9,
    ) as number
    return { ring_teeth: ring, sun_teeth: sun, planet_teeth: (ring - sun) / 2 }
  },
  "planetary-khurmi-13-20": ({ ratio, sun_teeth, sun_torque_N_m }) => {
    const ring = Array.from({ length: 200 }, (_, k) => k + sun_teeth + 3).find(
      (z) => Math.abs(train([planetary(sun_teeth, z, "sun-to-carrier")]).ratio - ratio) < 1e-9,
    ) as number
    const [stage] = train([planetary(sun_teeth, ring, "sun-to-carrier")], { torque: sun_torque_N_m * ratio }).stages
    return { ring_teeth: ring, holding_torque_N_m: stage?.heldTorque }
  },
  "worm-forward-reverse-numeric": ({ lead_angle_low_deg, lead_angle_high_deg, friction }) => {
    const [low, high] = [lead_angle_low_deg, lead_angle_high_deg].map((angle) => train([worm(angle * DEG, friction)]).stages[0])
    return {
      forward_low: low?.efficiency,
      reverse_low: low?.backwardEfficiency,
      forward_high: high?.efficiency,
      reverse_high: high?.backwardEfficiency,
    }
  },
  "worm-jindal-28-4": (row) => {
    const stage = worm(Math.atan(row.starts / row.diameter_quotient), row.friction, {
      drivingTeeth: row.starts,
      drivenTeeth: row.wheel_teeth,
      pressureAngle: row.pressure_angle_deg * DEG,
    })
    // run at a torque of 1 N·m, and scaled to the power that goes in
    const out = train([stage], { inputSpeed: 100 })
    const scale = row.input_power_kW / (out.inputPower as number)
    return { output_power_kW: (out.outputPower as number) * scale, loss_kW: (out.heat as number) * scale }
  },
  "worm-mott-8-geometry": ({ worm_starts, wheel_teeth, input_speed_rpm }) => {
    const out = train([worm(0.245, 0.05, { drivingTeeth: worm_starts, drivenTeeth: wheel_teeth })], { inputSpeed: input_speed_rpm * RPM })
    return { ratio: out.ratio, output_speed_rpm: (out.outputSpeed as number) / RPM }
  },
  "worm-wentzell-13-6": ({ lead_angle_deg, friction, power_hp, speed_rpm, ratio }) => {
    const stage = worm(lead_angle_deg * DEG, friction, { drivenTeeth: ratio })
    const { efficiency } = train([stage])
    const printed = Number(efficiency.toPrecision(2))
    const input = ((63000 * power_hp) / speed_rpm) * LBF_IN
    const out = train([{ ...stage, friction: null, wormEfficiency: printed }], { torque: input * printed * ratio })
    return {
      efficiency,
      input_torque_lbf_in: out.inputTorque / LBF_IN,
      output_torque_lbf_in: (out.stages[0]?.drivenTorque as number) / LBF_IN,
    }
  },
}

const notGeometry = "gearTrain takes the lead angle; it lays out no worm"
/** Keys that a check leaves out, and why. */
export const gearWithout: Record<string, Record<string, string>> = {
  "planetary-khurmi-13-6": { planet_speed_rpm: "gearTrain answers shafts, not planets" },
  "worm-mott-8-geometry": Object.fromEntries(
    ["axial_pitch_in", "lead_in", "lead_angle_deg", "wheel_diameter_in", "centre_distance_in"].map((key) => [key, notGeometry]),
  ),
}
