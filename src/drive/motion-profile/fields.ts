// Field descriptions of motionProfile, and the fault between its shares.
import { type Fields, type Issue, inconsistent, type OutFields, type SiOf } from "../../solver/index.js"
import type { MotionProfile, MotionProfileInput, MoveTorques } from "./types.js"

export const input: Fields<MotionProfileInput> = {
  swing: { kind: "angle", symbol: "theta", label: "swing", min: "0.1 deg", max: "10000 rev", typical: ["20 deg", "120 deg"], unit: "deg" },
  timing: {
    kind: "variant",
    label: "what sets the pace",
    of: {
      duration: {
        label: "a set time",
        fields: {
          duration: { kind: "time", symbol: "t_s", label: "time of the move", min: "1 ms", max: "1 h", typical: [0.5, 10] },
          accelerationShare: {
            kind: "ratio",
            symbol: "f_a",
            label: "share of it speeding up",
            min: 0.01,
            max: 0.99,
            typical: [0.2, 0.5],
            default: 0.3333333333333333,
            unit: "%",
          },
          decelerationShare: {
            kind: "ratio",
            symbol: "f_d",
            label: "share of it slowing down",
            min: 0.01,
            max: 0.99,
            typical: [0.2, 0.5],
            default: 0.3333333333333333,
            unit: "%",
          },
          jerkShare: {
            kind: "ratio",
            symbol: "f_j",
            label: "rounded share of each ramp",
            min: 0.01,
            max: 1,
            typical: [0.2, 1],
            default: null,
            unit: "%",
          },
        },
      },
      limits: {
        label: "limits of speed and acceleration",
        fields: {
          maxSpeed: {
            kind: "angularSpeed",
            symbol: "omega_l",
            label: "speed allowed",
            min: 1e-4,
            max: "1e5 rpm",
            typical: [0.2, 5],
            unit: "rpm",
          },
          maxAcceleration: {
            kind: "angularAcceleration",
            symbol: "alpha_l",
            label: "acceleration allowed",
            min: 1e-4,
            max: 1e6,
            typical: [0.5, 50],
          },
          jerkTime: { kind: "time", symbol: "t_l", label: "time to reach it", min: "1 ms", max: 60, typical: [0.02, 0.3], default: null },
        },
      },
    },
  },
  inertia: { kind: "momentOfInertia", symbol: "J", label: "inertia about the shaft", min: 0, max: 1e5, typical: [0.01, 2] },
  loadTorque: { kind: "moment", symbol: "T_L", label: "torque of the load", min: -1e5, max: 1e5, typical: [-5, 10], default: 0 },
  frictionTorque: { kind: "moment", symbol: "T_f", label: "torque of friction", min: 0, max: 1e5, typical: [0, 2], default: 0 },
  restDuration: { kind: "time", symbol: "t_r", label: "rest after each move", min: 0, max: "24 h", typical: [0, 10], default: 0 },
  holdsAtRest: { kind: "flag", label: "drive holds the load at rest", default: false },
  tipRadius: { kind: "length", symbol: "R", label: "radius of the tip", min: "1 mm", max: 20, typical: [0.2, 1.5], default: null },
}

const move = (label: string): { readonly kind: "group"; readonly label: string; readonly fields: OutFields<MoveTorques> } => ({
  kind: "group",
  label,
  fields: {
    accelerationTorque: { kind: "moment", label: "torque speeding up" },
    cruiseTorque: { kind: "moment", label: "torque at steady speed" },
    decelerationTorque: { kind: "moment", label: "torque slowing down" },
    peakTorque: { kind: "moment", label: "peak torque" },
    rmsTorque: { kind: "moment", label: "rms torque" },
    work: { kind: "energy", label: "work of the drive" },
  },
})

export const outputFields = (): OutFields<MotionProfile> => ({
  duration: { kind: "time", symbol: "t", label: "time of the move" },
  accelerationTime: { kind: "time", symbol: "t_a", label: "time speeding up" },
  cruiseTime: { kind: "time", symbol: "t_c", label: "time at steady speed" },
  decelerationTime: { kind: "time", symbol: "t_d", label: "time slowing down" },
  peakSpeed: { kind: "angularSpeed", symbol: "omega", label: "peak speed", unit: "rpm" },
  peakAcceleration: { kind: "angularAcceleration", symbol: "alpha_a", label: "peak acceleration" },
  peakDeceleration: { kind: "angularAcceleration", symbol: "alpha_d", label: "peak deceleration" },
  peakJerk: { kind: "number", symbol: "j", label: "peak jerk, rad/s³" },
  shortened: { kind: "flag", label: "too short to reach the speed allowed" },
  out: move("move out"),
  back: move("move back"),
  peakTorque: { kind: "moment", symbol: "T_p", label: "peak torque, both ways" },
  rmsTorque: { kind: "moment", symbol: "T_rms", label: "rms torque with rests" },
  frictionHeat: { kind: "energy", symbol: "Q_f", label: "heat of friction in a move" },
  peakEnergy: { kind: "energy", symbol: "E_p", label: "energy of motion at peak speed" },
  tipSpeed: { kind: "speed", symbol: "v_t", label: "peak speed of the tip" },
})

export function check({ timing }: SiOf<MotionProfileInput>): Issue[] {
  if (timing.type !== "duration") return []
  const { accelerationShare, decelerationShare } = timing
  if (accelerationShare + decelerationShare <= 1 + 1e-12) return []
  return [
    inconsistent(
      ["timing", "decelerationShare"],
      "{timing.decelerationShare ratio %}",
      "at most what speeding up leaves of the whole ({timing.accelerationShare ratio %} taken)",
      { "timing.accelerationShare": accelerationShare, "timing.decelerationShare": decelerationShare },
    ),
  ]
}
