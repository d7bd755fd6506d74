// A power screw: a shaft's angle becomes the travel of its nut.
import { powerScrew } from "../../drive/index.js"
import { screwFields } from "../../drive/screw-fields.js"
import type { Angle, Force, Length, Moment, MomentOfInertia, Ratio } from "../../quantity/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { rigid, type TransmissionMember } from "./transmission.js"

/** A screw and its nut. Give the friction of its thread, or its efficiency as ball-screw datasheets print it. */
export interface ScrewElement {
  type: "screw"
  /** Outside diameter of the thread. [d; 1 mm to 1 m] */
  majorDiameter: Length
  /** Pitch [p; 0.1 mm to 1 m] */
  pitch: Length
  /** Threads side by side; the lead is pitch times starts. [n; whole 1 to 20; default 1] */
  starts?: number
  /** Whole angle between the flanks: 0 for square, 30° for metric trapezoidal threads. [alpha; 0 to 90°; default 0] */
  flankAngle?: Angle
  /** Friction in the thread [f; 0 to 1; optional] */
  threadFriction?: number | null
  /** Efficiency of the thread, lifting. [eta_t; 1 to 100 %; optional] */
  screwEfficiency?: Ratio | null
  /** Friction in the collar [f_c; 0 to 1; default 0] */
  collarFriction?: number
  /** Mean diameter of the collar [d_c; 0 to 2 m; default 0] */
  collarDiameter?: Length
  /** Torque that a preloaded nut, seals and bearings take, load or none. [T_d; 0 to 100 N m; default 0] */
  dragTorque?: Moment
  /** Moment of inertia of what turns. [J_s; 0 to 10 kg m²; default 0] */
  inertia?: MomentOfInertia
  /** Play of the nut along the screw. [s_b; 0 to 10 mm; default 0] */
  backlash?: Length
  /**
   * Force on the nut that it may not pass: the maker's rating, or what makes a long thin screw buckle. [F_max; 1 mN to
   * 1000 kN; optional]
   */
  maxForce?: Force | null
}

/** A force to ask the domain with: torques are in proportion to it. */
const UNIT = 1

const asked = (si: SiOf<ScrewElement>) => ({
  majorDiameter: si.majorDiameter,
  pitch: si.pitch,
  starts: si.starts,
  flankAngle: si.flankAngle,
  threadFriction: si.threadFriction,
  screwEfficiency: si.screwEfficiency,
  collarFriction: si.collarFriction,
  collarDiameter: si.collarDiameter,
  force: UNIT,
  speed: null,
})

/** A screw; forward moves the nut, pushing or pulling alike. */
export const screw: TransmissionMember<ScrewElement> = {
  type: "screw",
  label: "power screw",
  fields: {
    ...screwFields,
    dragTorque: { kind: "moment", symbol: "T_d", label: "drag at the screw", min: 0, max: 100, typical: [0, 0.05], default: 0 },
    inertia: { kind: "momentOfInertia", symbol: "J_s", label: "inertia that turns", min: 0, max: 10, typical: [0, 1e-5], default: 0 },
    backlash: { kind: "length", symbol: "s_b", label: "play of the nut", min: 0, max: "10 mm", default: 0 },
    maxForce: {
      kind: "force",
      symbol: "F_max",
      label: "largest force on the nut",
      min: "1 mN",
      max: 1e6,
      typical: [50, 5000],
      default: null,
    },
  },
  either: [{ exactlyOne: ["threadFriction", "screwEfficiency"] }],
  check: (si) => domainFaults(powerScrew, asked(si)),
  build(si) {
    const out = powerScrew.si(asked(si))
    if (isNoSolution(out)) return out
    const ratio = out.lead / (2 * Math.PI)
    // what it takes to bring the load down, against what the load would give without friction
    const letDown = out.lowerTorque / (UNIT * ratio)
    return {
      ...rigid,
      takes: "angle",
      gives: "length",
      out: (travel) => ratio * travel,
      ratio: () => ratio,
      forward: out.efficiency,
      backward: Math.max(0, -letDown),
      unlocking: Math.max(0, letDown),
      selfLocking: out.selfLocking,
      drag: si.dragTorque,
      transmits: out.transmits,
      backlash: si.backlash,
      inertia: si.inertia,
      strength: si.maxForce,
    }
  },
}
