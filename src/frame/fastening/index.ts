import { optionsFrom, type Solver, solver } from "../../solver/index.js"
import { conditionFields } from "../condition.js"
import { handlingCases, handlingField } from "../data-loads.js"
import { fasteningCautions } from "./cautions.js"
import {
  CORD_STRENGTHS,
  cords,
  EPOXY_ALUMINIUM,
  EPOXY_SHEAR,
  endGrain,
  gluedMaterials,
  KNOT_STRENGTHS,
  knots,
  lapStrength,
  SCREW_END_GRAIN,
  SCREW_WITHDRAWAL,
  screwWithdrawal,
  TIE_STRENGTHS,
  ties,
} from "./data.js"
import type { Fastening, FasteningCaution, FasteningInput, Si } from "./types.js"

export type { Fastening, FasteningCaution, FasteningInput, GluedJoint, LashedJoint, ScrewedJoint, TiedJoint } from "./types.js"

/** Density of water, kg/m³: what specific gravity is against. */
const WATER = 1000

/** How many parts share the force, and what one of them bears, N. */
function strengthOf(joint: Si["joint"]): Pick<Fastening, "parts" | "partStrength"> {
  if (joint.type === "glued") return { parts: 1, partStrength: lapStrength(joint.material) * joint.overlap * joint.width }
  if (joint.type === "tied") return { parts: joint.ties, partStrength: ties[joint.tieWidth] }
  if (joint.type === "lashed") return { parts: 2 * joint.turns, partStrength: cords[joint.cord] * knots[joint.knot].share }
  const pulled = screwWithdrawal * (joint.woodDensity / WATER) ** 2 * joint.diameter * joint.threadLength
  return { parts: joint.screws, partStrength: pulled * (joint.grain === "end" ? endGrain : 1) }
}

function solve({ force, joint, handling }: Si): Fastening {
  const { parts, partStrength } = strengthOf(joint)
  const carried = force * handlingCases[handling].factor
  const capacity = parts * partStrength
  return {
    parts,
    partStrength,
    capacity,
    basis: joint.type === "screwed" ? "allowable" : "breaking",
    glueStress: joint.type === "glued" ? carried / (joint.overlap * joint.width) : null,
    safetyFactor: capacity / carried,
  }
}

const count = (symbol: string, label: string) =>
  ({ kind: "number", symbol, label, whole: true, min: 1, max: 100, typical: [1, 6] }) as const
const is = (type: string) => `equalText(joint, "${type}")`

/**
 * Whether a joint holds that is glued, screwed, tied with cable ties or lashed, by published strengths.
 *
 * Formula: glued laps bear S·l·b, S the shear strength of epoxy on steel (13 N/mm²) or of wood or board if that is less; wood screws
 * an allowable pull-out load of 2850·G²·D·L (pounds and inches; G the specific gravity of the wood, 60 % of it along the grain); n cable ties n
 * times the strength of a loop of their width; a lashing of n turns 2·n strands of the cord's breaking load times what the knot leaves.
 * The force is multiplied by the factor of `handling`. Valid for a force along the lap, along the screw, or that pulls the parts straight apart.
 * Glues on plastics, solvent welds, screws loaded sideways and hot glue are not answered: no figure for them could be read.
 *
 * **Inputs**
 * - `force`: force on the joint [F; 1 mN to 1000 kN]
 * - `joint`: joint [by its type: glued, screwed, tied or lashed]
 *   - `glued`: a lap glued with epoxy
 *     - `material`: what is glued [steel, aluminium-6061, softwood, plywood, mdf, chipboard or osb]
 *     - `overlap`: overlap [l_g; 1 to 500 mm]
 *     - `width`: width [b_g; 1 mm to 2 m]
 *     - `materialTemperature`: temperature of the member [T; −40 to 200 °C; default 23 °C]
 *   - `screwed`: wood screws, pulled out
 *     - `screws`: screws [n_f; whole 1 to 100; default 1]
 *     - `diameter`: diameter of the shank [D_f; 1 to 10 mm]
 *     - `threadLength`: thread in the wood [l_f; 2 to 300 mm]
 *     - `woodDensity`: density of the wood, oven-dry [rho_w; 100 to 1200 kg/m³; default 310 kg/m³]
 *     - `grain`: screwed [side or end; default side]
 *   - `tied`: nylon cable ties
 *     - `ties`: cable ties [n_f; whole 1 to 100; default 1]
 *     - `tieWidth`: width of a tie [2.5 mm, 3.6 mm, 4.8 mm, 7.6 mm, 9 mm or 12.7 mm]
 *   - `lashed`: a lashing of nylon cord
 *     - `turns`: turns round both parts [n_f; whole 1 to 100]
 *     - `cord`: diameter of the cord [2 mm, 3 mm, 4 mm, 5 mm, 6 mm, 7 mm or 8 mm]
 *     - `knot`: knot [clove-hitch, two-half-hitches, timber-hitch, bowline or reef-knot; default reef-knot]
 * - `handling`: handling [still, walking, sudden or stumble; default still]
 *
 * **Results**
 *
 * `parts`: parts that share the force [n_p]; `partStrength`: strength of one [F_p; N]; `capacity`: strength of the
 * joint [F_c; N]; `basis`: published as [text]; `glueStress`: shear stress of the glue [tau; Pa]; `safetyFactor`:
 * safety factor [n_s].
 *
 * **Symbols of the working**
 *
 * k_m: factor of handling; S_j: shear strength of glue or wood, 0 for other joints [Pa]; F_t: strength of one tie or
 * one strand of cord, 0 for other joints [N]; f_k: what the knot leaves, 1 where there is none; f_e: what a screw
 * along the grain holds, 1 across it.
 *
 * **Sources**
 * - A. R. Cusens, D. W. Smith: A study of epoxy resin adhesive joints in shear, The Structural Engineer 58A(1), 1980,
 *   abstract (steel at least 13 N/mm², cycled between -7 and 35 °C)
 * - journal abstract, read 2026: Lap shear strength of epoxy joints of aluminium alloy and steel by adhesive thickness
 *   (ASTM D1002, D905), abstract (aluminium stronger than steel)
 * - The Engineering ToolBox: Wood screws: allowable withdrawal load, read 2026, F = 2850·G²·D, example of spruce
 * - M. R. Miller, R. Miller: Audel Carpenters and Builders Math, Plans and Specifications, 7th, 2005, strength of wood
 *   screws (60 % with the grain)
 * - cable tie supplier: How strong are cable ties? Nylon 6/6 ties by width, read 2026, list of standard ties
 * - rope maker: Static cords and ropes: ratings, read 2026, nylon accessory cord, 2 to 8 mm
 * - C. Jacobson: Knots for the Outdoors, breaking strength of knots (Plymouth Cordage, 1946)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { fastening } from 'alula/frame'
 * const antler = fastening({ force: '120 N', joint: { type: 'tied', ties: 4, tieWidth: '4.8 mm' }, handling: 'stumble' })
 * antler.capacity // => 870.8
 * antler.safetyFactor // => 2.419
 * ```
 */
export const fastening: Solver<FasteningInput, Fastening, never, FasteningCaution> = /* @__PURE__ */ solver<
  FasteningInput,
  Fastening,
  never,
  FasteningCaution
>("fastening", "Whether a glued, screwed, tied or lashed joint holds", solve, () => ({
  input: {
    force: { kind: "force", symbol: "F", label: "force on the joint", min: "1 mN", max: 1e6, typical: [10, 400] },
    joint: {
      kind: "variant",
      label: "joint",
      of: {
        glued: {
          label: "a lap glued with epoxy",
          fields: {
            material: { kind: "choice", label: "what is glued", options: gluedMaterials },
            overlap: { kind: "length", symbol: "l_g", label: "overlap", min: "1 mm", max: "500 mm", typical: ["10 mm", "40 mm"] },
            width: { kind: "length", symbol: "b_g", label: "width", min: "1 mm", max: 2, typical: ["10 mm", "80 mm"] },
            materialTemperature: conditionFields.materialTemperature,
          },
        },
        screwed: {
          label: "wood screws, pulled out",
          fields: {
            screws: { ...count("n_f", "screws"), default: 1 },
            diameter: {
              kind: "length",
              symbol: "D_f",
              label: "diameter of the shank",
              min: "1 mm",
              max: "10 mm",
              typical: ["3 mm", "6 mm"],
            },
            threadLength: {
              kind: "length",
              symbol: "l_f",
              label: "thread in the wood",
              min: "2 mm",
              max: "300 mm",
              typical: ["10 mm", "40 mm"],
            },
            woodDensity: {
              kind: "density",
              symbol: "rho_w",
              label: "density of the wood, oven-dry",
              min: 100,
              max: 1200,
              typical: [310, 700],
              default: 310,
            },
            grain: {
              kind: "choice",
              label: "screwed",
              options: { side: "across the grain", end: "along the grain, into the end" },
              default: "side",
            },
          },
        },
        tied: {
          label: "nylon cable ties",
          fields: {
            ties: { ...count("n_f", "cable ties"), default: 1 },
            tieWidth: { kind: "choice", label: "width of a tie", options: optionsFrom(ties) },
          },
        },
        lashed: {
          label: "a lashing of nylon cord",
          fields: {
            turns: count("n_f", "turns round both parts"),
            cord: { kind: "choice", label: "diameter of the cord", options: optionsFrom(cords) },
            knot: { kind: "choice", label: "knot", options: optionsFrom(knots, (key) => knots[key].label), default: "reef-knot" },
          },
        },
      },
    },
    handling: handlingField,
  },
  output: {
    parts: { kind: "number", symbol: "n_p", label: "parts that share the force" },
    partStrength: { kind: "force", symbol: "F_p", label: "strength of one" },
    capacity: { kind: "force", symbol: "F_c", label: "strength of the joint" },
    basis: { kind: "text", label: "published as" },
    glueStress: { kind: "pressure", symbol: "tau", label: "shear stress of the glue" },
    safetyFactor: { kind: "number", symbol: "n_s", label: "safety factor" },
  },
  example: {
    force: "80 N",
    joint: { type: "lashed", turns: 3, cord: "3 mm", knot: "clove-hitch" },
    handling: "walking",
  },
  formulae: [
    { symbol: "k_m", kind: "number", meaning: "factor of handling", given: (si) => handlingCases[si.handling].factor },
    {
      symbol: "S_j",
      kind: "pressure",
      meaning: "shear strength of glue or wood, 0 for other joints",
      given: ({ joint }) => (joint.type === "glued" ? lapStrength(joint.material) : 0),
      source: EPOXY_SHEAR,
    },
    {
      symbol: "F_t",
      kind: "force",
      meaning: "strength of one tie or one strand of cord, 0 for other joints",
      given: ({ joint }) => (joint.type === "tied" ? ties[joint.tieWidth] : joint.type === "lashed" ? cords[joint.cord] : 0),
      source: TIE_STRENGTHS,
    },
    {
      symbol: "f_k",
      kind: "number",
      meaning: "what the knot leaves, 1 where there is none",
      given: ({ joint }) => (joint.type === "lashed" ? knots[joint.knot].share : 1),
      source: KNOT_STRENGTHS,
    },
    {
      symbol: "f_e",
      kind: "number",
      meaning: "what a screw along the grain holds, 1 across it",
      given: ({ joint }) => (joint.type === "screwed" && joint.grain === "end" ? endGrain : 1),
      source: SCREW_END_GRAIN,
    },
    { symbol: "F_p", meaning: "strength of the lap", is: "S_j * l_g * b_g", when: is("glued") },
    {
      symbol: "F_p",
      meaning: "allowable load of one screw",
      is: `2850 * 4.4482216152605 N / (0.0254 m)^2 * (rho_w / (${WATER} kg/m^3))^2 * D_f * l_f * f_e`,
      when: is("screwed"),
      source: SCREW_WITHDRAWAL,
    },
    { symbol: "F_p", meaning: "strength of one tie", is: "F_t", when: is("tied") },
    { symbol: "F_p", meaning: "strength of one strand with its knot", is: "F_t * f_k", when: is("lashed"), source: CORD_STRENGTHS },
    { symbol: "n_p", meaning: "one lap", is: "1", when: is("glued") },
    { symbol: "n_p", meaning: "screws or ties", is: "n_f", when: `${is("screwed")} or ${is("tied")}` },
    { symbol: "n_p", meaning: "strands", is: "2 * n_f", when: is("lashed") },
    { symbol: "F_c", meaning: "strength of the joint", is: "n_p * F_p" },
    { symbol: "tau", meaning: "shear stress of the glue", is: "k_m * F / (l_g * b_g)", when: is("glued") },
    { symbol: "n_s", meaning: "safety factor", is: "F_c / (k_m * F)" },
  ],
  sources: [EPOXY_SHEAR, EPOXY_ALUMINIUM, SCREW_WITHDRAWAL, SCREW_END_GRAIN, TIE_STRENGTHS, CORD_STRENGTHS, KNOT_STRENGTHS],
  cautions: fasteningCautions,
}))
