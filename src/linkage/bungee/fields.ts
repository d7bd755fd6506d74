// Descriptions of an elastic cord.
import type { Fields, OutFields } from "../../solver/index.js"
import type { Bungee, BungeeInput } from "./types.js"

export const bungeeFields = (): Fields<BungeeInput> => ({
  slackLength: { kind: "length", symbol: "L_0", label: "slack length", min: "1 mm", max: 100, typical: [0.35, 0.5] },
  length: { kind: "length", symbol: "L", label: "length in use", min: "1 mm", max: 100, typical: [0.45, 0.75] },
  readings: {
    kind: "list",
    label: "readings of one cord",
    min: 1,
    max: 40,
    of: {
      kind: "group",
      label: "reading",
      fields: {
        elongation: { kind: "ratio", symbol: "e_k", label: "elongation", min: "0.1 %", max: 10, typical: [0.2, 1.2], unit: "%" },
        force: { kind: "force", symbol: "F_k", label: "force", min: 0, max: 1e5, typical: [10, 90] },
      },
    },
  },
  cords: { kind: "number", symbol: "N", label: "cords side by side", whole: true, min: 1, max: 100, typical: [1, 3], default: 1 },
  lossShare: {
    kind: "ratio",
    symbol: "h",
    label: "energy lost in a cycle",
    min: 0,
    max: 0.95,
    typical: [0.1, 0.3],
    default: null,
    unit: "%",
  },
  elongationLimit: {
    kind: "ratio",
    symbol: "e_m",
    label: "elongation allowed",
    min: 0.01,
    max: 10,
    typical: [0.5, 1.2],
    default: 1,
    unit: "%",
  },
})

export const bungeeOutput = (): OutFields<Bungee> => ({
  transmits: { kind: "text", label: "transmits" },
  elongation: { kind: "ratio", symbol: "e", label: "elongation", unit: "%" },
  force: { kind: "force", symbol: "F", label: "force, loading" },
  returningForce: { kind: "force", symbol: "F_b", label: "force, unloading" },
  stiffness: { kind: "forcePerLength", symbol: "k", label: "stiffness there" },
  storedEnergy: { kind: "energy", symbol: "W", label: "energy put in" },
  returnedEnergy: { kind: "energy", symbol: "W_b", label: "energy given back" },
  lengthLimit: { kind: "length", symbol: "L_m", label: "length allowed" },
  utilisation: { kind: "ratio", symbol: "u", label: "elongation against what is allowed", unit: "%" },
})
