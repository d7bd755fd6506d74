// Descriptions of planeFrame.
import type { Fields, OutFields } from "../../solver/index.js"
import { conditionFields, conditionRules } from "../condition.js"
import { handlingField } from "../data-loads.js"
import { choiceFields } from "../material-choice.js"
import { sectionFields, sectionRules } from "../section.js"
import { stiffnessField, turningStiffnessField } from "../spring-fields.js"
import type { PlaneFrame, PlaneFrameInput } from "./types.js"

const name = { kind: "text", label: "name", min: 1, max: 60 } as const
const node = { kind: "text", label: "node", min: 1, max: 60 } as const
const member = { kind: "text", label: "member", min: 1, max: 60 } as const
const place = (symbol: string, label: string) => ({ kind: "length", symbol, label, min: -20, max: 20, typical: [0, 0.9] }) as const
const along = (symbol: string, label: string, typical: readonly [number, number] = [0.02, 0.1]) =>
  ({ kind: "length", symbol, label, min: 0, max: 60, typical }) as const
const force = (symbol: string, label: string) => ({ kind: "force", symbol, label, min: -1e4, max: 1e4, typical: [-20, 60] }) as const
const moment = (symbol: string) => ({ kind: "moment", symbol, label: "moment", min: -1e4, max: 1e4, typical: [-5, 5] }) as const
const perLength = (symbol: string, label: string) =>
  ({ kind: "forcePerLength", symbol, label, min: -1e4, max: 1e4, typical: [0, 60] }) as const
const direction = {
  kind: "choice",
  label: "way it points",
  options: { down: "down", right: "to the right", across: "across the member", along: "along the member" },
  default: "down",
} as const
const joint = (label: string) =>
  ({
    kind: "choice",
    label,
    options: { rigid: "rigid: it bends with the others", pinned: "pinned: free to turn" },
    default: "rigid",
  }) as const

export const planeFrameFields = (): Fields<PlaneFrameInput> => ({
  nodes: {
    kind: "list",
    label: "nodes",
    of: { kind: "group", label: "node", fields: { name, x: place("x_i", "place to the right"), y: place("y_i", "place upwards") } },
    min: 2,
    max: 40,
  },
  members: {
    kind: "list",
    label: "members",
    of: {
      kind: "group",
      label: "member",
      fields: {
        name,
        from: { kind: "text", label: "node at its start", min: 1, max: 60 },
        to: { kind: "text", label: "node at its end", min: 1, max: 60 },
        startJoint: joint("joint at its start"),
        endJoint: joint("joint at its end"),
        section: { kind: "group", label: "section", fields: sectionFields, either: sectionRules },
        ...choiceFields,
      },
      either: conditionRules,
    },
    min: 1,
    max: 60,
  },
  supports: {
    kind: "list",
    label: "supports",
    of: {
      kind: "variant",
      label: "support",
      of: {
        pinned: { label: "holds the node, and lets it turn", fields: { node } },
        clamped: { label: "clamped: holds it against turning too", fields: { node } },
        roller: {
          label: "holds it in one way only",
          fields: {
            node,
            holds: {
              kind: "choice",
              label: "way in which it holds",
              options: { "up-down": "up and down", sideways: "sideways" },
              default: "up-down",
            },
          },
        },
        spring: {
          label: "a spring, strap or bracket that gives",
          fields: {
            node,
            sidewaysStiffness: stiffnessField("k_x", "force sideways for each length it gives"),
            upStiffness: stiffnessField("k_y", "force up or down for each length it gives"),
            turningStiffness: turningStiffnessField("moment for each angle it turns"),
          },
          either: [{ atLeastOne: ["sidewaysStiffness", "upStiffness", "turningStiffness"] }],
        },
      },
    },
    min: 1,
    max: 40,
  },
  loads: {
    kind: "list",
    label: "loads",
    of: {
      kind: "variant",
      label: "load",
      of: {
        node: {
          label: "at a node",
          fields: {
            node,
            right: { ...force("F_x", "force to the right"), default: 0 },
            up: { ...force("F_y", "force upwards"), default: 0 },
            moment: { ...moment("C_n"), default: 0 },
          },
        },
        force: {
          label: "a force on a member",
          fields: { member, force: force("P_i", "force"), position: along("a_i", "place on it"), direction },
        },
        spread: {
          label: "a load spread along a member",
          fields: {
            member,
            startLoad: perLength("q_i", "load at its start"),
            endLoad: perLength("q_j", "load at its end"),
            start: along("s_i", "start", [0, 0.1]),
            end: along("e_i", "end", [0.12, 0.2]),
            direction,
          },
        },
        moment: { label: "a moment on a member", fields: { member, moment: moment("C_i"), position: along("b_i", "place on it") } },
      },
    },
    min: 0,
    max: 200,
    default: [],
  },
  materialTemperature: conditionFields.materialTemperature,
  duration: conditionFields.duration,
  countsOwnWeight: { kind: "flag", label: "own weight counts", default: true },
  handling: handlingField,
})

export const planeFrameOutput = (): OutFields<PlaneFrame> => ({
  nodes: {
    kind: "list",
    label: "nodes",
    of: {
      kind: "group",
      label: "node",
      fields: {
        name: { kind: "text", label: "name" },
        right: { kind: "length", label: "moves to the right" },
        up: { kind: "length", label: "moves up" },
        turn: { kind: "angle", label: "turns, counter-clockwise" },
      },
    },
  },
  supports: {
    kind: "list",
    label: "supports",
    of: {
      kind: "group",
      label: "support",
      fields: {
        node: { kind: "text", label: "node" },
        right: { kind: "force", label: "pushes to the right" },
        up: { kind: "force", label: "pushes up" },
        moment: { kind: "moment", label: "turns counter-clockwise with" },
      },
    },
  },
  members: {
    kind: "list",
    label: "members",
    of: {
      kind: "group",
      label: "member",
      fields: {
        name: { kind: "text", label: "name" },
        length: { kind: "length", label: "length" },
        maxPull: { kind: "force", label: "maximum pull" },
        maxPush: { kind: "force", label: "maximum push" },
        maxShearForce: { kind: "force", label: "maximum shear force" },
        maxMoment: { kind: "moment", label: "maximum moment" },
        maxMomentPosition: { kind: "length", label: "  at" },
        maxDeflection: { kind: "length", label: "maximum movement across it" },
        stress: { kind: "pressure", label: "stress along it" },
        shearStress: { kind: "pressure", label: "shear stress at the neutral axis" },
        safetyFactor: { kind: "number", label: "safety factor, minimum" },
        wallSafetyFactor: { kind: "number", label: "local buckling stress over stress" },
      },
    },
  },
  safetyFactor: { kind: "number", symbol: "n_s", label: "safety factor, minimum" },
  weakest: { kind: "text", label: "weakest member" },
  stability: {
    kind: "group",
    label: "stability in its plane",
    fields: { bucklingFactor: { kind: "number", label: "buckling load over load" } },
  },
  maxDisplacement: { kind: "length", symbol: "u_x", label: "farthest movement of a node" },
  weight: { kind: "force", symbol: "W_o", label: "own weight" },
  loadFactor: { kind: "number", symbol: "k_m", label: "handling factor" },
})
