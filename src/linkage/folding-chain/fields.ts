// Descriptions of a folding chain.
import type { Fields, OutFields } from "../../solver/index.js"
import type { FoldingChain, FoldingChainInput } from "./types.js"

/** What a segment is and how its joint turns, wherever a chain is asked for. */
export const segmentFields = {
  length: { kind: "length", symbol: "L_s", label: "length of a segment", min: "1 mm", max: 10, typical: ["100 mm", "500 mm"] },
  width: { kind: "length", symbol: "b_s", label: "depth across", min: 0, max: 5, typical: ["20 mm", "100 mm"], default: 0 },
  mass: { kind: "mass", symbol: "m_s", label: "mass of a segment", min: 0, max: 100, typical: ["50 g", "400 g"], default: 0 },
  centreShare: {
    kind: "ratio",
    symbol: "k_s",
    label: "place of the centre of gravity",
    min: 0,
    max: 1,
    typical: [0.3, 0.7],
    default: 0.5,
  },
  foldedAngle: { kind: "angle", symbol: "alpha_s", label: "angle when folded", min: -7, max: 7, typical: ["-180 deg", "180 deg"] },
  ratio: { kind: "number", symbol: "n_s", label: "turn of the joint per turn of the driver", min: -20, max: 20, typical: [-2, 2] },
  startsAt: { kind: "ratio", symbol: "p_s", label: "begins to turn at", min: 0, max: "99 %", typical: [0, 0.4], default: 0 },
  endsAt: { kind: "ratio", symbol: "p_e", label: "stands still from", min: "1 %", max: 1, typical: [0.6, 1], default: 1 },
} as const

/** How far the driver turns. */
export const driverTravel = {
  kind: "angle",
  symbol: "phi_t",
  label: "turn of the driver from folded to spread",
  min: "0.1 deg",
  max: 700,
  typical: ["60 deg", "180 deg"],
} as const

export const chainFields = (): Fields<FoldingChainInput> => ({
  segments: {
    kind: "list",
    label: "segments from the frame outward",
    min: 1,
    max: 12,
    of: {
      kind: "group",
      label: "segment",
      fields: {
        ...segmentFields,
        driveRadius: {
          kind: "length",
          symbol: "R_s",
          label: "lever arm of its drive",
          min: 0,
          max: 1,
          typical: ["10 mm", "40 mm"],
          default: 0,
        },
      },
    },
  },
  driverTravel,
  position: { kind: "ratio", symbol: "p", label: "place in the travel", min: 0, max: 1, typical: [0, 1], default: 1 },
  tipMass: { kind: "mass", symbol: "m_t", label: "mass at the tip", min: 0, max: 100, typical: [0, "100 g"], default: 0 },
  frameTilt: {
    kind: "angle",
    symbol: "lambda",
    label: "lean of the frame in the plane",
    min: -3.2,
    max: 3.2,
    typical: ["-15 deg", "15 deg"],
    default: 0,
  },
  planeTilt: {
    kind: "angle",
    symbol: "tau",
    label: "tilt of the plane of folding",
    min: "-90 deg",
    max: "90 deg",
    typical: [0, "60 deg"],
    default: 0,
  },
  pinFriction: { kind: "number", symbol: "mu", label: "friction of the pins", min: 0, max: 1, typical: [0, 0.3], default: 0 },
  pinDiameter: {
    kind: "length",
    symbol: "d_p",
    label: "diameter of the pins",
    min: 0,
    max: "100 mm",
    typical: ["2 mm", "8 mm"],
    default: 0,
  },
})

const box = (label: string) => ({
  kind: "group" as const,
  label,
  fields: { width: { kind: "length" as const, label: "along x" }, height: { kind: "length" as const, label: "along y" } },
})

export const chainOutput = (): OutFields<FoldingChain> => ({
  transmits: { kind: "text", label: "transmits" },
  tipX: { kind: "length", symbol: "x_t", label: "tip, x" },
  tipY: { kind: "length", symbol: "y_t", label: "tip, y" },
  tipRateX: { kind: "length", symbol: "x_r", label: "travel of the tip per radian of the driver, x" },
  tipRateY: { kind: "length", symbol: "y_r", label: "travel of the tip per radian of the driver, y" },
  effort: { kind: "moment", symbol: "T", label: "moment at the driver that holds it" },
  spreadEffort: { kind: "moment", symbol: "T_s", label: "moment at the driver while spreading" },
  foldEffort: { kind: "moment", symbol: "T_f", label: "moment at the driver while folding" },
  inertia: { kind: "momentOfInertia", symbol: "J", label: "inertia at the driver" },
  inertiaSlope: { kind: "momentOfInertia", symbol: "J_r", label: "change of the inertia per radian" },
  reactionX: { kind: "force", symbol: "F_x", label: "force of the frame, x" },
  reactionY: { kind: "force", symbol: "F_y", label: "force of the frame, y" },
  reactionMoment: { kind: "moment", symbol: "M_0", label: "moment of the frame" },
  maxEffort: { kind: "moment", symbol: "T_m", label: "largest moment at the driver over the travel" },
  maxReach: { kind: "length", symbol: "r_m", label: "largest reach over the travel" },
  joints: {
    kind: "list",
    label: "joints",
    of: {
      kind: "group",
      label: "joint",
      fields: {
        x: { kind: "length", label: "x" },
        y: { kind: "length", label: "y" },
        angle: { kind: "angle", label: "angle from the segment before" },
        ratio: { kind: "number", label: "turn per turn of the driver" },
        gravityMoment: { kind: "moment", label: "moment that holds it" },
        sideMoment: { kind: "moment", label: "moment across the plane" },
        pinLoad: { kind: "force", label: "weight on the pin" },
        spreadMoment: { kind: "moment", label: "moment of its drive, spreading" },
        foldMoment: { kind: "moment", label: "moment of its drive, folding" },
        driveForce: { kind: "force", label: "force in its rod or cable" },
      },
    },
  },
  spreadOrder: { kind: "list", label: "order of the joints, spreading", of: { kind: "number", label: "joint" } },
  folded: box("box when folded"),
  spread: box("box when spread"),
  swept: box("box around the whole movement"),
  poses: {
    kind: "list",
    label: "travel",
    of: {
      kind: "group",
      label: "pose",
      fields: {
        driverAngle: { kind: "angle", label: "turn of the driver" },
        tipX: { kind: "length", label: "tip, x" },
        tipY: { kind: "length", label: "tip, y" },
        effort: { kind: "moment", label: "moment that holds it" },
        spreadEffort: { kind: "moment", label: "moment while spreading" },
        foldEffort: { kind: "moment", label: "moment while folding" },
        inertia: { kind: "momentOfInertia", label: "inertia" },
      },
    },
  },
})
