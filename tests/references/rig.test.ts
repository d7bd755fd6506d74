import { hingeLengthAt, hingeLeverAt } from "../../src/linkage/index.js"
import { motionModel, standing, staticHolds } from "../../src/rig/run/motion-model.js"
import { buildMotion } from "../../src/rig/whole/faults.js"
import { windLoad } from "../../src/worn/index.js"
import { referenceTests } from "../helpers/references.js"
import { creature, members, siOf } from "../helpers/rigs.js"

const rad = (degrees: number) => (degrees * Math.PI) / 180

referenceTests("rig", {
  "coupled-hinge-load": (given) => {
    const geometry = {
      hinge: { x: given.hinge_x_mm / 1e3, y: given.hinge_y_mm / 1e3 },
      fixedPivot: { x: given.base_x_mm / 1e3, y: given.base_y_mm / 1e3 },
      movingPivot: { radius: given.rod_pin_radius_mm / 1e3, angle: rad(given.rod_pin_offset_deg) },
      axisOffset: 0,
    }
    // one mass on the rig's own arm, its wearer leaning away from it: the rod's force times its lever is the moment
    const moth = creature("lantern-moth-cells")
    const [wings] = moth.motions
    const masses = [{ name: "wing", mass: given.weight_N / 9.80665, radius: given.cg_radius_m }]
    const alone = { ...wings?.mechanisms[0], ...geometry, masses, springs: [], count: 1, mirrored: false }
    const [motion] = siOf({ ...moth, motions: [{ ...wings, mechanisms: [alone] }] } as typeof moth).motions
    if (!motion) throw new Error("no motion")
    const [part] = motionModel(motion, buildMotion(members, motion, [])).parts
    if (!part) throw new Error("no arm")
    const angle = rad(given.angle_deg)
    const lever = hingeLeverAt(geometry, angle)
    const force = staticHolds(part, hingeLengthAt(geometry, angle), standing({ leanForward: 0, leanLeft: -rad(given.tilt_deg) }))
    const gravity = force * lever
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
