// Descriptions of a quadrant turned by a cable.
import { bandField, type Fields, type OutFields } from "../../solver/index.js"
import { weightField } from "../hinge/fields.js"
import type { CableQuadrant, CableQuadrantInput } from "./types.js"

export const quadrantFields = (): Fields<CableQuadrantInput> => ({
  radius: { kind: "length", symbol: "r_1", label: "radius of the opening cable", min: "1 mm", max: 2, typical: ["30 mm", "80 mm"] },
  startAngle: { kind: "angle", symbol: "q_0", label: "angle at the start", min: "-180 deg", max: "180 deg", typical: ["-40 deg", "0 deg"] },
  travel: { kind: "angle", symbol: "q_t", label: "angle of travel", min: "1 deg", max: "330 deg", typical: ["30 deg", "90 deg"] },
  wrap: {
    kind: "angle",
    symbol: "w_1",
    label: "arc of the opening cable at the start",
    min: 0,
    max: "360 deg",
    typical: ["100 deg", "170 deg"],
  },
  cableStiffness: {
    kind: "forcePerLength",
    symbol: "k_1",
    label: "stiffness of the opening cable",
    min: 1,
    max: 1e7,
    typical: [2e4, 2e5],
  },
  pretension: { kind: "force", symbol: "T_0", label: "pretension", min: 0, max: 1e5, typical: [60, 120] },
  returnedBy: {
    kind: "variant",
    label: "what brings it back",
    of: {
      spring: {
        label: "a return spring",
        fields: {
          radius: { kind: "length", symbol: "r_2", label: "radius of the spring's rim", min: "1 mm", max: 2, typical: ["30 mm", "80 mm"] },
          springRate: { kind: "forcePerLength", symbol: "k_2", label: "rate of the spring", min: 1, max: 1e7, typical: [100, 1000] },
        },
      },
      cable: {
        label: "a second cable",
        fields: {
          radius: { kind: "length", symbol: "r_2", label: "radius of the second cable", min: "1 mm", max: 2, typical: ["30 mm", "80 mm"] },
          stiffness: {
            kind: "forcePerLength",
            symbol: "k_2",
            label: "stiffness of the second cable",
            min: 1,
            max: 1e7,
            typical: [2e4, 2e5],
          },
          wrap: {
            kind: "angle",
            symbol: "w_2",
            label: "arc of the second cable at the start",
            min: 0,
            max: "360 deg",
            typical: ["15 deg", "40 deg"],
          },
          rimAngle: {
            kind: "angle",
            symbol: "w_m",
            label: "arc of its rim",
            min: "1 deg",
            max: "360 deg",
            typical: ["180 deg", "270 deg"],
          },
        },
      },
    },
  },
  masses: { kind: "list", label: "masses on the arm", min: 1, max: 20, of: weightField },
  frameTilt: {
    kind: "angle",
    symbol: "lambda",
    label: "lean of the frame",
    min: "-90 deg",
    max: "90 deg",
    typical: ["-10 deg", "10 deg"],
    default: 0,
  },
  loadMoment: { kind: "moment", symbol: "M_l", label: "constant moment, downward", min: -1e4, max: 1e4, typical: [-0.5, 0.5], default: 0 },
  opposingMoment: { kind: "moment", symbol: "M_d", label: "moment against every motion", min: 0, max: 1e4, typical: [0, 0.3], default: 0 },
  pinFriction: { kind: "number", symbol: "mu", label: "friction of the pivot", min: 0, max: 1, typical: [0, 0.3], default: 0 },
  pinDiameter: { kind: "length", symbol: "d_p", label: "diameter of the pivot", min: 0, max: 1, typical: ["3 mm", "10 mm"], default: 0 },
  tipRadius: { kind: "length", symbol: "R", label: "pivot to the tip", min: "1 mm", max: 20, typical: [0.3, 1.2], default: null },
})

export const quadrantOutput = (): OutFields<CableQuadrant> => ({
  transmits: { kind: "text", label: "transmits" },
  cableTravel: { kind: "length", symbol: "s_1", label: "travel of the opening cable" },
  returnTravel: { kind: "length", symbol: "s_2", label: "travel of spring or second cable" },
  wrapLeft: { kind: "angle", symbol: "w_l", label: "arc of the opening cable left at the end", unit: "deg" },
  rimLeft: { kind: "angle", symbol: "w_r", label: "arc of the second cable's rim left at the end", unit: "deg" },
  inertia: { kind: "momentOfInertia", symbol: "J", label: "inertia of the masses" },
  loadMoment: bandField("moment", "load moment over the travel", { symbols: ["M_n", "M_x"] }),
  openingTension: bandField("force", "tension of the opening cable", { symbols: ["T_n", "T_x"] }),
  returningTension: bandField("force", "tension of spring or second cable", { symbols: ["S_n", "S_x"] }),
  requiredPretension: { kind: "force", symbol: "T_r", label: "pretension that keeps both taut" },
  rotationalStiffness: { kind: "rotationalStiffness", symbol: "K", label: "stiffness at the pivot, drive held" },
  tipDeflection: { kind: "length", symbol: "y", label: "play of the tip under the load" },
  storedEnergy: { kind: "energy", symbol: "W_e", label: "energy stored, at most" },
  poses: {
    kind: "list",
    label: "over the travel",
    of: {
      kind: "group",
      label: "pose",
      fields: {
        angle: { kind: "angle", label: "angle of the arm" },
        cableTravel: { kind: "length", label: "travel of the opening cable" },
        loadMoment: { kind: "moment", label: "load moment" },
        openingMoment: { kind: "moment", label: "moment of the cables, turning" },
        returningMoment: { kind: "moment", label: "moment of the cables, coming back" },
        openingTension: { kind: "force", label: "opening cable, turning" },
        returningTension: { kind: "force", label: "opening cable, coming back" },
        springOpening: { kind: "force", label: "spring or second cable, turning" },
        springReturning: { kind: "force", label: "spring or second cable, coming back" },
      },
    },
  },
})
