// Descriptions of a skew hinge.
import type { Fields, OutFields } from "../../solver/index.js"
import type { SkewHinge, SkewHingeInput } from "./types.js"

const point = (label: string, symbol: string) => {
  const coordinate = (name: string, axis: string) => ({
    kind: "length" as const,
    symbol: `${axis}_${symbol}`,
    label: `${label}, ${name}`,
    min: -20,
    max: 20,
    typical: ["-0.3 m", "0.5 m"] as const,
  })
  return {
    kind: "group" as const,
    label,
    fields: { forward: coordinate("forward", "f"), left: coordinate("left", "l"), up: coordinate("up", "u") },
  }
}
const part = (name: string, axis: string) => ({
  kind: "number" as const,
  symbol: `${axis}_a`,
  label: `axis, part ${name}`,
  min: -1000,
  max: 1000,
  typical: [-1, 1] as const,
})
const lean = (label: string, symbol: string) => ({
  kind: "angle" as const,
  symbol,
  label,
  min: "-90 deg" as const,
  max: "90 deg" as const,
  typical: ["-15 deg", "20 deg"] as const,
  default: 0,
})
const swing = (label: string, symbol: string) => ({
  kind: "angle" as const,
  symbol,
  label,
  min: -7,
  max: 7,
  typical: ["-90 deg", "120 deg"] as const,
})

export const skewFields = (): Fields<SkewHingeInput> => ({
  hinge: { ...point("hinge", "h"), default: { forward: 0, left: 0, up: 0 } },
  axis: {
    kind: "group",
    label: "direction of the axis",
    fields: { forward: part("forward", "f"), left: part("left", "l"), up: part("up", "u") },
  },
  masses: {
    kind: "list",
    label: "masses of the swinging part",
    min: 1,
    max: 50,
    of: {
      kind: "group",
      label: "mass",
      fields: {
        mass: { kind: "mass", symbol: "m_w", label: "mass", min: 0, max: 200, typical: ["50 g", "1 kg"] },
        ...point("mass", "w").fields,
      },
    },
  },
  tip: point("tip", "t"),
  swing: swing("swing asked for", "theta"),
  swingFrom: { ...swing("swing, one end", "theta_1"), default: 0 },
  swingTo: swing("swing, other end", "theta_2"),
  forwardLean: lean("lean of the trunk forward", "lambda_f"),
  leftLean: lean("lean of the trunk to the left", "lambda_l"),
  pinFriction: { kind: "number", symbol: "mu", label: "friction of the bearings", min: 0, max: 1, typical: [0, 0.3], default: 0 },
  pinDiameter: {
    kind: "length",
    symbol: "d_p",
    label: "diameter of the pin",
    min: 0,
    max: "100 mm",
    typical: ["3 mm", "12 mm"],
    default: 0,
  },
  bearingSpan: {
    kind: "length",
    symbol: "s_b",
    label: "distance between the bearings",
    min: "1 mm",
    max: 2,
    typical: ["20 mm", "80 mm"],
    default: "40 mm",
  },
  driveRadius: { kind: "length", symbol: "R_d", label: "lever arm of the drive", min: 0, max: 2, typical: ["10 mm", "60 mm"], default: 0 },
})

const vector = (label: string, kind: "force" | "moment" | "number") => ({
  kind: "group" as const,
  label,
  fields: { forward: { kind, label: "forward" }, left: { kind, label: "left" }, up: { kind, label: "up" } },
})

export const skewOutput = (): OutFields<SkewHinge> => ({
  tipForward: { kind: "length", symbol: "f_p", label: "tip, forward" },
  tipLeft: { kind: "length", symbol: "l_p", label: "tip, left" },
  tipUp: { kind: "length", symbol: "u_p", label: "tip, up" },
  swingRadius: { kind: "length", symbol: "r_s", label: "distance of the tip from the axis" },
  effort: { kind: "moment", symbol: "M", label: "moment that holds it" },
  turningEffort: { kind: "moment", symbol: "M_t", label: "moment while turning" },
  returningEffort: { kind: "moment", symbol: "M_r", label: "moment while turning back" },
  maxEffort: { kind: "moment", symbol: "M_m", label: "largest holding moment over the swing" },
  bearingLoad: { kind: "force", symbol: "F_b", label: "loads on both bearings" },
  thrust: { kind: "force", symbol: "F_a", label: "load along the axis" },
  inertia: { kind: "momentOfInertia", symbol: "J", label: "inertia about the axis" },
  reactionForce: { kind: "force", symbol: "F_h", label: "force of the frame" },
  reactionMoment: { kind: "moment", symbol: "M_h", label: "moment of the frame" },
  frontReach: { kind: "length", symbol: "r_f", label: "hinge to tip, seen from the front" },
  frontAngle: { kind: "angle", symbol: "beta_f", label: "direction to the tip, seen from the front" },
  tipAhead: { kind: "length", symbol: "f_d", label: "tip forward of the hinge" },
  reaction: vector("force of the frame, by direction", "force"),
  moment: vector("moment of the frame, by direction", "moment"),
  perAcceleration: vector("moment per acceleration of the body, kg m", "number"),
  path: {
    kind: "list",
    label: "path of the tip",
    of: {
      kind: "group",
      label: "pose",
      fields: {
        swing: { kind: "angle", label: "swing" },
        forward: { kind: "length", label: "tip, forward" },
        left: { kind: "length", label: "tip, left" },
        up: { kind: "length", label: "tip, up" },
        effort: { kind: "moment", label: "moment that holds it" },
      },
    },
  },
})
