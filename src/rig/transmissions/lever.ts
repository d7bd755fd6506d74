// A lever between two rods or cables that run square to its middle position.
import type { Angle, Force, Length, Ratio } from "../../quantity/index.js"
import { rigid, type TransmissionMember } from "./transmission.js"

/** A lever: what moves its driving arm moves its driven arm in their ratio. */
export interface LeverElement {
  type: "lever"
  /** Pivot to where it is driven. [r_1; 2 mm to 3 m] */
  drivingArm: Length
  /** Pivot to where it drives. [r_2; 2 mm to 3 m] */
  drivenArm: Length
  /** Arms on the same side of the pivot move the same way, on opposite sides the other way. [same-side or opposite-sides] */
  arms: "same-side" | "opposite-sides"
  /**
   * Angle of the arms at the start, from where they stand square to what they pull; positive the way it turns. [phi_0;
   * −85° to 85°; default 0]
   */
  startAngle?: Angle
  /** Share of the effort that its pivot and pins let through, either way. [eta; 30 to 100 %] */
  efficiency: Ratio
  /** Force at the driven arm that it may not pass. [F_max; 1 mN to 1000 kN; optional] */
  maxForce?: Force | null
}

/** A lever on long parallel rods: travels are measured square to its middle position, where both arms stand in one line. */
export const lever: TransmissionMember<LeverElement> = {
  type: "lever",
  label: "lever",
  fields: {
    drivingArm: { kind: "length", symbol: "r_1", label: "driving arm", min: "2 mm", max: 3, typical: ["20 mm", "150 mm"] },
    drivenArm: { kind: "length", symbol: "r_2", label: "driven arm", min: "2 mm", max: 3, typical: ["20 mm", "150 mm"] },
    arms: {
      kind: "choice",
      label: "arms",
      options: { "same-side": "on the same side of the pivot", "opposite-sides": "on opposite sides of the pivot" },
    },
    startAngle: { kind: "angle", symbol: "phi_0", label: "angle of the arms at the start", min: "-85 deg", max: "85 deg", default: 0 },
    efficiency: { kind: "ratio", symbol: "eta", label: "efficiency of pivot and pins", min: 0.3, max: 1, typical: [0.85, 0.99], unit: "%" },
    maxForce: {
      kind: "force",
      symbol: "F_max",
      label: "largest force at the driven arm",
      min: "1 mN",
      max: 1e6,
      typical: [50, 2000],
      default: null,
    },
  },
  build(si) {
    const ratio = ((si.arms === "same-side" ? 1 : -1) * si.drivenArm) / si.drivingArm
    const middle = -si.drivingArm * Math.sin(si.startAngle)
    return {
      ...rigid,
      takes: "length",
      gives: "length",
      out: (travel) => ratio * travel,
      ratio: () => ratio,
      forward: si.efficiency,
      backward: si.efficiency,
      transmits: "both-ways",
      strength: si.maxForce,
      // a quarter turn either way of its middle it points along what pulls it
      low: middle - si.drivingArm,
      high: middle + si.drivingArm,
    }
  },
}
