import type { Length, Mass, Temperature } from "../../src/quantity/index.js"
import { caution, inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver } from "../../src/solver/index.js"

export interface LanternInput {
  /** Height of the lantern. */
  height: Length
  /** Mass of the skin. */
  skin?: Mass
  /** Air around it. */
  air?: Temperature
  /** Ribs. */
  ribs?: number
  /** A number held strictly between 0 and 1. */
  share?: number
  /** What the ribs are made of. */
  rib?: "cane" | "fibreglass"
  /** Whether it hangs. */
  hung?: boolean
  /** What it is called. */
  name?: string
  /** Lamps inside. */
  lamps?: readonly { at: Length; lumens?: number }[]
  /** Handle, where it has one. */
  pole?: { length: Length; grip?: Length } | null
}

export interface Lantern {
  readonly volume: number
  readonly air: number
  readonly heights: readonly number[]
  readonly lamps: readonly { readonly at: number; readonly bright: boolean }[]
  readonly pole: { readonly length: number } | null
  readonly note: string
  readonly hung: boolean
}

/** Facts as a table keeps them: frozen at the top, lists inside left as they were. */
const table = Object.freeze({ heights: [0.1, 0.2] })

function solve({ height, share, air, lamps, pole, hung, name }: SiOf<LanternInput>): Lantern | NoSolution {
  if (height > 2) return refuse("too-tall", "A lantern of this height falls over by 1 m.", height - 2, { height }, { height: 2 })
  return {
    volume: height ** 3 * share,
    air,
    heights: table.heights,
    lamps: lamps.map(({ at, lumens }) => ({ at, bright: lumens > 100 })),
    pole: pole && { length: pole.length },
    note: name,
    hung,
  }
}

/** A solver made for these tests, with a field of every sort. */
export const lantern: Solver<LanternInput, Lantern> = solver<LanternInput, Lantern>("lantern", "How much a lantern holds", solve, () => ({
  input: {
    height: { kind: "length", symbol: "h", label: "height", min: "100 mm", max: 3 },
    skin: { kind: "mass", symbol: "m_s", label: "skin", above: 0, below: "2 kg", default: "50 g" },
    air: { kind: "temperature", symbol: "T", label: "air", min: -30, max: "40 degC", default: 20 },
    ribs: { kind: "number", symbol: "n", label: "ribs", whole: true, min: 3, max: 12, default: 6 },
    share: { kind: "number", symbol: "s", label: "share", above: 0, below: 1, default: 0.5 },
    rib: { kind: "choice", label: "rib", options: { cane: "cane", fibreglass: "fibreglass" }, default: "cane" },
    hung: { kind: "flag", label: "hung", default: false },
    name: { kind: "text", label: "name", min: 0, max: 40, default: "moth" },
    lamps: {
      kind: "list",
      label: "lamps",
      min: 1,
      max: 2,
      of: {
        kind: "group",
        label: "lamp",
        fields: {
          at: { kind: "length", symbol: "x", label: "at", min: 0, max: 3 },
          lumens: { kind: "number", symbol: "l", label: "lumens", min: 0, max: 1e5, default: 80 },
        },
      },
      default: [{ at: "50 mm" }],
    },
    pole: {
      kind: "group",
      label: "pole",
      fields: {
        length: { kind: "length", symbol: "L", label: "length", min: 0, max: 9 },
        grip: { kind: "length", symbol: "g", label: "grip", min: 0, max: 9, default: "100 mm" },
      },
      default: null,
    },
  },
  output: {
    volume: { kind: "volume", symbol: "V", label: "volume", unit: "L" },
    air: { kind: "temperature", symbol: "T", label: "air" },
    heights: { kind: "list", label: "heights", of: { kind: "length", label: "height", unit: "mm" } },
    lamps: {
      kind: "list",
      label: "lamps",
      of: { kind: "group", label: "lamp", fields: { at: { kind: "length", label: "at" }, bright: { kind: "flag", label: "bright" } } },
    },
    pole: { kind: "group", label: "pole", fields: { length: { kind: "length", label: "length" } } },
    note: { kind: "text", label: "note" },
    hung: { kind: "flag", label: "hung from a line" },
  },
  example: { height: "400 mm" },
  formulae: [{ symbol: "V", is: "h^3 * s", meaning: "volume" }],
  sources: [{ title: "made for a test", verified: "practice" }],
  check: ({ pole, height }) =>
    pole !== null && pole.grip > pole.length
      ? [inconsistent(["pole", "grip"], `${pole.grip} m`, `no more than the length, for ${height} m`)]
      : [],
  cautions: ({ air }) => (air > 35 ? [caution("hot", "warning", "Too hot for wax.")] : []),
}))
