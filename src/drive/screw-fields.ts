// What a power screw is, described once for all that take one.
import type { Angle, Length, Ratio } from "../quantity/index.js"
import type { Fields } from "../solver/index.js"

interface Screw {
  majorDiameter: Length
  pitch: Length
  starts?: number
  flankAngle?: Angle
  threadFriction?: number | null
  screwEfficiency?: Ratio | null
  collarFriction?: number
  collarDiameter?: Length
}

export const screwFields = {
  majorDiameter: { kind: "length", symbol: "d", label: "outside diameter", min: "1 mm", max: 1, typical: ["6 mm", "30 mm"] },
  pitch: { kind: "length", symbol: "p", label: "pitch", min: "0.1 mm", max: 1, typical: ["1 mm", "4 mm"] },
  starts: { kind: "number", symbol: "n", label: "starts", whole: true, min: 1, max: 20, typical: [1, 4], default: 1 },
  flankAngle: { kind: "angle", symbol: "alpha", label: "whole flank angle", min: 0, max: "90 deg", typical: [0, "30 deg"], default: 0 },
  threadFriction: {
    kind: "number",
    symbol: "f",
    label: "friction in the thread",
    min: 0,
    max: 1,
    typical: [0.08, 0.25],
    default: null,
  },
  screwEfficiency: {
    kind: "ratio",
    symbol: "eta_t",
    label: "efficiency of the thread",
    min: "1 %",
    max: 1,
    typical: [0.3, 0.95],
    default: null,
  },
  collarFriction: { kind: "number", symbol: "f_c", label: "friction in the collar", min: 0, max: 1, typical: [0, 0.2], default: 0 },
  collarDiameter: {
    kind: "length",
    symbol: "d_c",
    label: "mean diameter of the collar",
    min: 0,
    max: 2,
    typical: [0, "40 mm"],
    default: 0,
  },
} as const satisfies Fields<Screw>
