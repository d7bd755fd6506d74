import { counterbalance, hingeActuator, hingeLengthAt, hingeLengthRange, hingeLeverAt, standardGravity } from "../../src/linkage/index.js"
import type { Check } from "../helpers/references.js"

type Numbers = Readonly<Record<string, number>>
const deg = Math.PI / 180

/** The row's arm with its actuator stopped at the row's angle: the chosen extension is half a short stroke. */
function hingeRow(inputs: Numbers): Readonly<Record<string, unknown>> {
  const n = (key: string) => inputs[key] as number
  const hinge = { x: n("hinge_x_mm") / 1000, y: n("hinge_y_mm") / 1000 }
  const fixedPivot = { x: n("base_x_mm") / 1000, y: n("base_y_mm") / 1000 }
  const geometry = {
    hinge,
    fixedPivot,
    movingPivot: { radius: n("rod_pin_radius_mm") / 1000, angle: n("rod_pin_offset_deg") * deg },
    axisOffset: 0,
  }
  const length = hingeLengthAt(geometry, n("arm_angle_deg") * deg)
  const { axisOffset: _, ...placed } = geometry
  const pose = hingeActuator({
    ...placed,
    retractedLength: length - 0.001,
    stroke: 0.002,
    masses: [{ mass: n("weight_N") / standardGravity, radius: n("cg_radius_mm") / 1000, angle: n("cg_offset_deg") * deg }],
    frameTilt: n("frame_tilt_deg") * deg,
  })
  return {
    actuator_length_mm: pose.length * 1000,
    lever_arm_mm: pose.lever * 1000,
    holding_torque_N_mm: pose.gravityMoment * 1000,
    actuator_force_N: pose.force,
    hinge_reaction_x_N: pose.reactionX,
    hinge_reaction_y_N: pose.reactionY,
    hinge_reaction_N: pose.reaction,
  }
}

/** Checks of the hinged arm and its friction against published and independent values. */
const armChecks: Readonly<Record<string, Check>> = {
  "actuator-hinge-2": hingeRow,
  "actuator-hinge-3": hingeRow,
  "actuator-hinge-4": hingeRow,
  "actuator-hinge-best-arm": (inputs: Numbers) => {
    const n = (key: string) => (inputs[key] as number) / 1000
    const [hinge, fixedPivot] = [
      { x: n("hinge_x_mm"), y: n("hinge_y_mm") },
      { x: n("base_x_mm"), y: n("base_y_mm") },
    ]
    const geometry = { hinge, fixedPivot, movingPivot: { radius: n("rod_pin_radius_mm"), angle: 0 }, axisOffset: 0 }
    const { shortest, longest } = hingeLengthRange(geometry)
    // the listed poses nearest to the largest lever arm, on a stroke that has it in its middle
    const middle = Math.sqrt(shortest * longest)
    const reach = hingeActuator({
      hinge,
      fixedPivot,
      movingPivot: { radius: geometry.movingPivot.radius },
      retractedLength: middle - 0.02,
      stroke: 0.04,
      masses: [{ mass: 1, radius: 1 }],
    })
    const best = reach.poses.reduce((a, b) => (b.lever > a.lever ? b : a))
    return { max_lever_arm_mm: best.lever * 1000, actuator_length_at_max_mm: (middle - 0.02 + best.extension) * 1000 }
  },
  "actuator-hinge-inverse": (inputs: Numbers) => {
    const n = (key: string) => (inputs[key] as number) / 1000
    const pinAngle = (inputs.rod_pin_offset_deg as number) * deg
    const length = n("actuator_length_mm")
    const arm = hingeActuator({
      hinge: { x: n("hinge_x_mm"), y: n("hinge_y_mm") },
      fixedPivot: { x: n("base_x_mm"), y: n("base_y_mm") },
      movingPivot: { radius: n("rod_pin_radius_mm"), angle: pinAngle },
      retractedLength: length - 0.01,
      stroke: 0.02,
      masses: [{ mass: 1, radius: 1 }],
    })
    return {
      arm_angle_branch_plus_deg: arm.angle / deg,
      arm_angle_branch_minus_deg: arm.otherAssemblyAngle / deg,
      longest_length_mm: arm.maxLength * 1000,
      shortest_length_mm: arm.minLength * 1000,
    }
  },
  "actuator-hinge-offset-axis": (inputs: Numbers) => {
    const n = (key: string) => (inputs[key] as number) / 1000
    const geometry = {
      hinge: { x: n("hinge_x_mm"), y: n("hinge_y_mm") },
      fixedPivot: { x: n("base_x_mm"), y: n("base_y_mm") },
      movingPivot: { radius: n("rod_pin_radius_mm"), angle: 0 },
      axisOffset: n("axis_offset_mm"),
    }
    const angle = (inputs.arm_angle_deg as number) * deg
    const length = hingeLengthAt(geometry, angle)
    const arm = hingeActuator({ ...geometry, retractedLength: length - 0.001, stroke: 0.002, masses: [{ mass: 1, radius: 1 }] })
    return { extension_mm: arm.length * 1000, virtual_work_lever_arm_mm: arm.lever * 1000 }
  },
  "actuator-lever-virtual-work": (inputs: Numbers) => {
    const n = (key: string) => inputs[key] as number
    // the row's phi is measured from the normal to the line hinge–base
    const geometry = {
      hinge: { x: 0, y: 0 },
      fixedPivot: { x: -n("pivot_to_base_m"), y: 0 },
      movingPivot: { radius: n("pivot_to_rod_pin_m"), angle: 0 },
      axisOffset: 0,
    }
    const angle = Math.PI / 2 - n("phi_rad")
    return { moment_N_m: Math.abs(n("force_N") * hingeLeverAt(geometry, angle)) }
  },
  "pin-friction-torque": (inputs: Numbers) => {
    const n = (key: string) => inputs[key] as number
    // a lone mass hangs straight below its hinge, so that the hinge carries its weight and nothing else
    const geometry = { hinge: { x: 0, y: 0 }, fixedPivot: { x: 0.2, y: 0 }, movingPivot: { radius: 0.06, angle: 0 }, axisOffset: 0 }
    const length = hingeLengthAt(geometry, -Math.PI / 2)
    const arm = hingeActuator({
      fixedPivot: geometry.fixedPivot,
      movingPivot: { radius: geometry.movingPivot.radius },
      assembly: "clockwise",
      retractedLength: length - 0.001,
      stroke: 0.002,
      masses: [{ mass: n("radial_load_N") / standardGravity, radius: 0.3 }],
      pinFriction: n("friction"),
      hingePinDiameter: n("pin_diameter_mm") / 1000,
    })
    return { friction_torque_N_mm: arm.frictionMoment * 1000 }
  },
}

/** The rows of the balanced arm, angles measured from straight up: its arm stands at 90° less the row's angle. */
function balanceRow(inputs: Numbers, angles: readonly number[]) {
  const n = (key: string) => inputs[key] as number
  return counterbalance({
    fixedPivot: { x: 0, y: n("anchor_height_m") },
    movingPivot: { radius: n("arm_pin_m") },
    // the row's gravity, not the standard one
    masses: [{ mass: (n("mass_kg") * n("gravity_m_s2")) / standardGravity, radius: n("cg_radius_m") }],
    armAngle: { low: Math.min(...angles), high: Math.max(...angles) },
    element: {
      type: "spring",
      stiffness:
        inputs.stiffness_N_per_m ?? (n("mass_kg") * n("gravity_m_s2") * n("cg_radius_m")) / (n("arm_pin_m") * n("anchor_height_m")),
      freeLength: inputs.free_length_m ?? 0,
    },
  })
}

/** Checks of the counterbalance. */
const balanceChecks: Readonly<Record<string, Check>> = {
  "spring-balance-zero-free-length": (inputs: Numbers) => {
    // 0 to 178 degrees from straight up, as the row was scanned
    const arm = balanceRow(inputs, [-88 * deg, 90 * deg])
    return { stiffness_N_per_m: arm.idealStiffness, max_residual_torque_N_m: arm.maxUnbalancedMoment }
  },
  "spring-balance-free-length-error": (inputs: Numbers) => {
    const at = Math.PI / 2 - (inputs.angle_from_vertical_deg as number) * deg
    const [pose] = balanceRow(inputs, [at, at + 0.1]).poses
    if (!pose) throw new Error("no pose")
    // the row counts moments that raise the arm as positive
    return { spring_length_m: pose.length, residual_torque_N_m: -pose.unbalancedMoment, unbalanced_torque_N_m: -pose.gravityMoment }
  },
  "spring-rate-wire": (inputs: Numbers) => {
    const n = (key: string) => inputs[key] as number
    const { stiffness } = counterbalance({
      fixedPivot: { x: 0, y: 0.1 },
      movingPivot: { radius: 0.05 },
      masses: [{ mass: 1, radius: 0.3 }],
      armAngle: { low: 0, high: 1 },
      element: {
        type: "spring",
        coil: {
          wire: n("wire_mm") / 1000,
          meanDiameter: n("mean_coil_mm") / 1000,
          activeCoils: n("active_coils"),
          shearModulus: n("shear_modulus_Pa"),
        },
      },
    })
    return { rate_N_per_m: stiffness }
  },
}

/** Expected keys no solver reckons, and why. */
export const hingeWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "actuator-hinge-offset-axis": {
    axis_angle_deg: "the direction of the rod axis is no result: lever arm and side load carry what it decides",
  },
}

/** Every check of this part. */
export const hingeChecks: Readonly<Record<string, Check>> = { ...armChecks, ...balanceChecks }
