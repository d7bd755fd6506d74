import { hingeLeverAt } from "../../src/linkage/index.js"
import { moveTime } from "../../src/rig/index.js"
import { armModel } from "../../src/rig/motion/arms.js"
import { windLoad } from "../../src/worn/index.js"
import { referenceTests } from "../helpers/references.js"
import { demo } from "../helpers/rigs.js"

const rad = (degrees: number) => (degrees * Math.PI) / 180

referenceTests("rig", {
  "coupled-hinge-load": (given) => {
    const { hinged } = moveTime.read(demo("lantern-moth-cells"))
    // one mass on the rig's own arm, leaning; its moment is dU/dθ
    const arm = armModel({
      ...hinged!,
      hinge: { x: given.hinge_x_mm / 1e3, y: given.hinge_y_mm / 1e3 },
      fixedPivot: { x: given.base_x_mm / 1e3, y: given.base_y_mm / 1e3 },
      movingPivot: { radius: given.rod_pin_radius_mm / 1e3, angle: rad(given.rod_pin_offset_deg) },
      frameTilt: rad(given.tilt_deg),
      masses: [{ name: "wing", mass: given.weight_N / 9.80665, radius: given.cg_radius_m, angle: 0 }],
    })
    const angle = rad(given.angle_deg)
    const gravity = arm.momentAt(angle)
    const wind = windLoad({
      span: given.span_m,
      chord: given.chord_m,
      windSpeed: given.wind_m_s,
      gustFactor: 1,
      walkingSpeed: 0,
      dragCoefficient: given.drag_coefficient,
      airDensity: given.air_density_kg_m3,
    })
    const inertia = given.inertia_kg_m2 * given.acceleration_rad_s2
    const bounce = gravity * given.walking_factor
    const total = gravity + bounce + wind.hingeMoment.low + inertia
    const lever = hingeLeverAt(arm.geometry, angle)
    return {
      gravity_torque_N_m: gravity,
      bounce_torque_N_m: bounce,
      wind_torque_N_m: wind.hingeMoment.low,
      inertia_torque_N_m: inertia,
      total_torque_N_m: total,
      lever_arm_mm: lever * 1e3,
      actuator_force_N: total / lever,
    }
  },
})
