// Descriptions of memberSize.
import type { Either, Fields, OutFields } from "../../solver/index.js"
import { beam, loadFields, spanFields } from "../beam/index.js"
import { column, endFields } from "../column/index.js"
import { conditionFields } from "../condition.js"
import { handlingField } from "../data-loads.js"
import { choiceFields } from "../material-choice.js"
import { sectionFields, sectionRules } from "../section.js"
import type { MemberSize, MemberSizeInput } from "./types.js"

const { materialTemperature, duration } = conditionFields
/** A size must be known well enough to be judged and weighed. */
const choiceRules = [
  { atLeastOne: ["material", "modulus"] },
  { atLeastOne: ["material", "strength"] },
  { atLeastOne: ["material", "density"] },
] as const satisfies readonly Either[]
const wall = {
  kind: "length",
  symbol: "t_w",
  label: "wall",
  min: "0.01 mm",
  max: "500 mm",
  typical: ["0.8 mm", "2.5 mm"],
  default: null,
} as const

export const memberSizeFields = (): Fields<MemberSizeInput> => ({
  member: {
    kind: "variant",
    label: "member",
    of: {
      beam: { label: "a beam, bent", fields: { ...spanFields, ...loadFields } },
      column: {
        label: "a column, pushed",
        fields: {
          ...endFields,
          load: { kind: "force", symbol: "F", label: "axial load", min: "1 mN", max: 1e6, typical: [20, 800] },
        },
      },
    },
  },
  search: {
    kind: "variant",
    label: "sizes",
    of: {
      stock: {
        label: "a list of sizes",
        fields: {
          sizes: {
            kind: "list",
            label: "sizes",
            of: {
              kind: "group",
              label: "size",
              fields: {
                name: { kind: "text", label: "name", min: 1, max: 100 },
                section: { kind: "group", label: "section", fields: sectionFields, either: sectionRules },
                ...choiceFields,
              },
              either: choiceRules,
            },
            min: 1,
            max: 200,
          },
        },
      },
      round: { label: "a round tube or bar of any diameter", fields: { wall, ...choiceFields }, either: choiceRules },
      rectangular: {
        label: "a rectangular tube or bar of any height",
        fields: {
          width: { kind: "length", symbol: "b_w", label: "width", min: "0.1 mm", max: 2, typical: ["8 mm", "40 mm"] },
          wall,
          ...choiceFields,
        },
        either: choiceRules,
      },
    },
  },
  minSafetyFactor: { kind: "number", symbol: "n_r", label: "safety factor wanted", min: 0.1, max: 100, typical: [2, 5], default: 3 },
  deflectionLimit: {
    kind: "length",
    symbol: "y_r",
    label: "acceptable deflection",
    min: "0.01 mm",
    max: 50,
    typical: ["5 mm", "50 mm"],
    default: null,
  },
  materialTemperature,
  duration,
  countsOwnWeight: { kind: "flag", label: "own weight counts", default: true },
  handling: handlingField,
})

export const memberSizeOutput = (): OutFields<MemberSize> => ({
  name: { kind: "text", label: "size chosen" },
  depth: { kind: "length", symbol: "d_c", label: "depth along the load" },
  mass: { kind: "mass", symbol: "m_c", label: "mass of the member" },
  requiredSecondMoment: { kind: "secondMoment", symbol: "I_r", label: "second moment required", unit: "mm⁴" },
  requiredSectionModulus: { kind: "volume", symbol: "W_r", label: "section modulus required", unit: "mm³" },
  beam: { kind: "group", label: "as a beam", fields: beam.output },
  column: { kind: "group", label: "as a column", fields: column.output },
  candidates: {
    kind: "list",
    label: "sizes, lightest first",
    of: {
      kind: "group",
      label: "size",
      fields: {
        name: { kind: "text", label: "name" },
        verdict: { kind: "text", label: "verdict" },
        mass: { kind: "mass", label: "mass" },
        depth: { kind: "length", label: "depth" },
        safetyFactor: { kind: "number", label: "safety factor, minimum" },
        wallSafetyFactor: { kind: "number", label: "local buckling stress over bending stress" },
        maxDeflection: { kind: "length", label: "maximum deflection" },
      },
    },
  },
})
