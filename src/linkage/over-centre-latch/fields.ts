// Descriptions of an over-centre latch.
import { bandField, type Fields, type OutFields } from "../../solver/index.js"
import type { OverCentreLatch, OverCentreLatchInput } from "./types.js"

export const latchFields = (): Fields<OverCentreLatchInput> => ({
  fixedPivotDistance: {
    kind: "length",
    symbol: "d",
    label: "pivot to the spring's fixed end",
    min: "1 mm",
    max: 5,
    typical: ["50 mm", "90 mm"],
  },
  movingPivotRadius: { kind: "length", symbol: "r", label: "pivot to pin", min: "0.5 mm", max: 5, typical: ["10 mm", "30 mm"] },
  freeLength: { kind: "length", symbol: "x_0", label: "free length of the spring", min: 0, max: 10, typical: ["20 mm", "45 mm"] },
  springRate: { kind: "forcePerLength", symbol: "k", label: "rate of the spring", min: "1 N/m", max: 1e7, typical: [200, 3000] },
  preload: { kind: "force", symbol: "F_0", label: "initial tension of the spring", min: 0, max: 1e5, typical: [0, 10], default: 0 },
  clockwiseStop: {
    kind: "angle",
    symbol: "theta_c",
    label: "clockwise stop, past the dead centre",
    min: "0.1 deg",
    max: "179 deg",
    typical: ["5 deg", "60 deg"],
  },
  counterStop: {
    kind: "angle",
    symbol: "theta_k",
    label: "counter-clockwise stop, past the dead centre",
    min: "0.1 deg",
    max: "179 deg",
    typical: ["5 deg", "60 deg"],
  },
  loadMoment: {
    kind: "moment",
    symbol: "M_l",
    label: "moment of the load, counter-clockwise",
    min: -1e4,
    max: 1e4,
    typical: [-0.05, 0.05],
    default: 0,
  },
  handleRadius: { kind: "length", symbol: "R_h", label: "pivot to handle", min: "1 mm", max: 5, typical: ["40 mm", "120 mm"] },
  leverMass: { kind: "mass", symbol: "m_l", label: "mass of the lever", min: 0, max: 100, typical: ["10 g", "200 g"], default: 0 },
  leverCentre: {
    kind: "length",
    symbol: "l_c",
    label: "pivot to the lever's centre of gravity",
    min: 0,
    max: 5,
    typical: ["10 mm", "60 mm"],
    default: 0,
  },
  pinFriction: { kind: "number", symbol: "mu", label: "friction of the pivot", min: 0, max: 1, typical: [0, 0.3], default: 0 },
  pinDiameter: {
    kind: "length",
    symbol: "d_p",
    label: "diameter of the pivot",
    min: 0,
    max: "100 mm",
    typical: ["2 mm", "6 mm"],
    default: 0,
  },
})

const side = (label: string) => ({
  kind: "group" as const,
  label,
  fields: {
    angle: { kind: "angle" as const, label: "past the dead centre" },
    holdingMoment: { kind: "moment" as const, label: "moment onto the stop" },
    holdingForce: { kind: "force" as const, label: "holding force at the handle" },
    releaseForce: { kind: "force" as const, label: "handle force to leave the stop" },
    tripForce: { kind: "force" as const, label: "largest force to trip it" },
    tripWork: { kind: "energy" as const, label: "work to trip it" },
    releasedEnergy: { kind: "energy" as const, label: "energy released onto this stop" },
    strikeSpeed: { kind: "speed" as const, label: "speed of the handle striking it" },
  },
})

export const latchOutput = (): OutFields<OverCentreLatch> => ({
  snapAngle: { kind: "angle", symbol: "theta_s", label: "snap-over point, from the dead centre" },
  maxSpringForce: { kind: "force", symbol: "F_m", label: "largest tension of the spring" },
  storedEnergy: { kind: "energy", symbol: "W_s", label: "energy stored at the snap-over point" },
  inertia: { kind: "momentOfInertia", symbol: "J", label: "inertia of the lever" },
  minHoldingForce: { kind: "force", symbol: "F_h", label: "smaller holding force, at the handle" },
  band: bandField("angle", "held by friction", { labels: ["from", "to"] }),
  clockwise: side("on the clockwise stop"),
  counter: side("on the counter-clockwise stop"),
  poses: {
    kind: "list",
    label: "from stop to stop",
    of: {
      kind: "group",
      label: "pose",
      fields: {
        angle: { kind: "angle", label: "angle past the dead centre" },
        springForce: { kind: "force", label: "tension of the spring" },
        moment: { kind: "moment", label: "moment, counter-clockwise" },
      },
    },
  },
})
