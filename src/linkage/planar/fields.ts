import type { Fields } from "../../solver/index.js"
import type { MechanismInput } from "./data.js"

const ends = {
  from: { kind: "text", label: "from point", min: 1, max: 100 },
  to: { kind: "text", label: "to point", min: 1, max: 100 },
} as const
const name = { kind: "text", label: "name", min: 1, max: 100, default: null } as const
const place = (label: string) =>
  ({
    kind: "group",
    label,
    fields: {
      name: { kind: "text", label: "name", min: 1, max: 100 },
      x: { kind: "length", symbol: "x", label: "x", min: "-100 m", max: "100 m" },
      y: { kind: "length", symbol: "y", label: "y", min: "-100 m", max: "100 m" },
    },
  }) as const

/** Field descriptions of a planar mechanism, shared by every solver that takes one. */
export const mechanismFields: Fields<MechanismInput> = {
  pivots: { kind: "list", label: "fixed pivots", min: 1, max: 60, of: place("pivot") },
  points: { kind: "list", label: "moving points, as sketched", min: 1, max: 60, of: place("point") },
  bars: {
    kind: "list",
    label: "bars",
    min: 1,
    max: 200,
    of: {
      kind: "group",
      label: "bar",
      fields: { name, ...ends, length: { kind: "length", symbol: "l", label: "length", min: "0.01 mm", max: "100 m", default: null } },
    },
  },
  carried: {
    kind: "list",
    label: "points fixed to a bar",
    min: 0,
    max: 100,
    default: [],
    of: {
      kind: "group",
      label: "carried point",
      fields: {
        point: { kind: "text", label: "point", min: 1, max: 100 },
        ...ends,
        along: { kind: "length", symbol: "u", label: "along the bar", min: "-100 m", max: "100 m", default: null },
        across: { kind: "length", symbol: "w", label: "to the left of the bar", min: "-100 m", max: "100 m", default: null },
      },
    },
  },
  sliders: {
    kind: "list",
    label: "sliders",
    min: 0,
    max: 100,
    default: [],
    of: {
      kind: "group",
      label: "slider",
      fields: {
        name,
        point: { kind: "text", label: "point", min: 1, max: 100 },
        ...ends,
        offset: { kind: "length", symbol: "h", label: "to the left of the line", min: "-100 m", max: "100 m", default: null },
      },
    },
  },
  cranks: {
    kind: "list",
    label: "rotary drivers",
    min: 0,
    max: 20,
    default: [],
    of: {
      kind: "group",
      label: "crank",
      either: [{ together: ["referenceFrom", "referenceTo"] }],
      fields: {
        name,
        ...ends,
        referenceFrom: { kind: "text", label: "reference line from", min: 1, max: 100, default: null },
        referenceTo: { kind: "text", label: "reference line to", min: 1, max: 100, default: null },
        start: {
          kind: "angle",
          symbol: "theta_0",
          label: "angle at the start",
          min: -1000,
          max: 1000,
          typical: ["10 deg", "80 deg"],
          default: null,
        },
        end: {
          kind: "angle",
          symbol: "theta_1",
          label: "angle at the end",
          min: -1000,
          max: 1000,
          typical: ["60 deg", "130 deg"],
          default: null,
        },
        speed: { kind: "angularSpeed", symbol: "omega", label: "speed", min: -1000, max: 1000, default: 0 },
        acceleration: { kind: "angularAcceleration", symbol: "alpha", label: "acceleration", min: -1e6, max: 1e6, default: 0 },
      },
    },
  },
  actuators: {
    kind: "list",
    label: "linear drivers",
    min: 0,
    max: 20,
    default: [],
    of: {
      kind: "group",
      label: "actuator",
      fields: {
        name,
        ...ends,
        start: { kind: "length", symbol: "s_0", label: "length at the start", min: "0.01 mm", max: "100 m", default: null },
        end: { kind: "length", symbol: "s_1", label: "length at the end", min: "0.01 mm", max: "100 m", default: null },
        speed: { kind: "speed", symbol: "v", label: "speed", min: -1000, max: 1000, default: 0 },
        acceleration: { kind: "acceleration", symbol: "a", label: "acceleration", min: -1e6, max: 1e6, default: 0 },
      },
    },
  },
  loads: {
    kind: "list",
    label: "forces",
    min: 0,
    max: 200,
    default: [],
    of: {
      kind: "group",
      label: "force",
      fields: {
        point: { kind: "text", label: "point", min: 1, max: 100 },
        forceX: { kind: "force", symbol: "F_x", label: "force along x", min: -1e6, max: 1e6, default: 0 },
        forceY: { kind: "force", symbol: "F_y", label: "force along y", min: -1e6, max: 1e6, default: 0 },
      },
    },
  },
  torques: {
    kind: "list",
    label: "torques",
    min: 0,
    max: 100,
    default: [],
    of: {
      kind: "group",
      label: "torque",
      fields: { ...ends, torque: { kind: "moment", symbol: "M", label: "torque", min: -1e6, max: 1e6 } },
    },
  },
}
