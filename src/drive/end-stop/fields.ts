// Field descriptions of endStop.
import type { Fields, OutFields } from "../../solver/index.js"
import type { EndStop, EndStopInput } from "./types.js"

export const input: Fields<EndStopInput> = {
  inertia: { kind: "momentOfInertia", symbol: "J", label: "inertia about the hinge", min: 1e-9, max: 1e8, typical: [0.01, 2] },
  speed: { kind: "angularSpeed", symbol: "omega", label: "speed on meeting the stop", min: 1e-4, max: 1e4, typical: [0.2, 5] },
  drivingTorque: { kind: "moment", symbol: "T", label: "torque pushing on", min: 0, max: 1e8, typical: [0, 20], default: 0 },
  stopRadius: { kind: "length", symbol: "r", label: "radius of the stop", min: "1 mm", max: 100, typical: ["30 mm", "300 mm"] },
  stop: {
    kind: "variant",
    label: "stop",
    of: {
      spring: {
        label: "a spring or buffer",
        fields: {
          stiffness: { kind: "forcePerLength", symbol: "k", label: "stiffness", min: 1, max: 1e12, typical: [5e3, 2e5] },
          travel: {
            kind: "length",
            symbol: "x_m",
            label: "available travel",
            min: "10 um",
            max: 10,
            typical: ["3 mm", "30 mm"],
            default: null,
          },
          returnedShare: {
            kind: "ratio",
            symbol: "f_r",
            label: "energy given back",
            min: 0,
            max: 1,
            typical: [0.3, 0.9],
            default: 1,
            unit: "%",
          },
        },
      },
      absorber: {
        label: "a shock absorber",
        fields: {
          stroke: { kind: "length", symbol: "x_s", label: "stroke", min: "10 um", max: 10, typical: ["5 mm", "50 mm"] },
          absorberEfficiency: {
            kind: "ratio",
            symbol: "eta_s",
            label: "mean over peak force",
            min: 0.2,
            max: 1,
            typical: [0.6, 0.9],
            default: 0.85,
          },
        },
      },
    },
  },
  mass: { kind: "mass", symbol: "m_1", label: "mass of the arm", min: "1 mg", max: 1e6, typical: [0.2, 4], default: null },
  centreRadius: { kind: "length", symbol: "r_c", label: "radius of its centre of mass", min: 0, max: 100, typical: [0.1, 0.8], default: 0 },
  strikeRate: { kind: "frequency", symbol: "n", label: "strikes", min: 0, max: 1000, typical: [0, 0.2], default: 0, unit: "1/min" },
  ratedForce: { kind: "force", symbol: "F_r", label: "rated force of the stop", min: "1 mN", max: 1e9, typical: [50, 5000], default: null },
}

export const output: OutFields<EndStop> = {
  transmits: { kind: "text", label: "transmits" },
  kineticEnergy: { kind: "energy", symbol: "E_k", label: "energy of motion" },
  drivingWork: { kind: "energy", symbol: "E_d", label: "work of the drive meanwhile" },
  energy: { kind: "energy", symbol: "E", label: "energy into the stop" },
  stoppingLength: { kind: "length", symbol: "x", label: "stopping length" },
  stoppingAngle: { kind: "angle", symbol: "phi", label: "stopping angle", unit: "deg" },
  stoppingTime: { kind: "time", symbol: "t", label: "stopping time" },
  peakForce: { kind: "force", symbol: "F", label: "peak force at the stop" },
  meanForce: { kind: "force", symbol: "F_m", label: "mean force at the stop" },
  restForce: { kind: "force", symbol: "F_0", label: "force at rest, drive pushing" },
  peakDeceleration: { kind: "angularAcceleration", symbol: "alpha", label: "peak deceleration" },
  reboundSpeed: { kind: "angularSpeed", symbol: "omega_b", label: "speed thrown back" },
  effectiveMass: { kind: "mass", symbol: "m_e", label: "effective mass at the stop" },
  hingeForce: { kind: "force", symbol: "F_h", label: "force on the hinge" },
  meanHeat: { kind: "power", symbol: "P", label: "heat of the stop" },
  utilisation: { kind: "ratio", symbol: "u", label: "peak force against rated", unit: "%" },
}
