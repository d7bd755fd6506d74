import type { Force, Frequency, Length } from "../quantity/index.js"
import { at, type Caution, caution, type SiOf, type Solver, solver } from "../solver/index.js"
import { dropFactor, walkingFactor } from "./data-loads.js"
import { FOOTFALL, GERE } from "./sources.js"

/** Input of {@link handlingLoad}. Give a step rate, or a fall with the deflection at rest. */
export interface HandlingLoadInput {
  /** Weight at rest [G; 0 to 100 kN] */
  weight: Force
  /** Steps per second of the wearer. [f_s; 1 to 2.8 Hz; optional] */
  stepRate?: Frequency | null
  /** Height the weight falls; 0 for a weight put on suddenly. [h_d; 0 to 10 m; optional] */
  dropHeight?: Length | null
  /** Deflection the weight causes at rest in what catches it. [delta; 1e−9 to 10 m; optional] */
  staticDeflection?: Length | null
}

/** Result of {@link handlingLoad}. */
export interface HandlingLoad {
  /** Maximum force against the weight. [k_m] */
  readonly loadFactor: number
  /** Maximum force. [F_x; N] */
  readonly maxForce: number
  /** Maximum deflection of what catches it. [delta_x; m] */
  readonly maxDeflection: number | null
}

/** Hazards and limits of validity that go with an answer of {@link handlingLoad}. */
export type HandlingLoadCaution = "elastic-catch" | "steady-walking"

function solve(si: SiOf<HandlingLoadInput>): HandlingLoad {
  const { weight, stepRate, dropHeight, staticDeflection } = si
  const loadFactor = stepRate === null ? dropFactor(dropHeight as number, staticDeflection as number) : walkingFactor(stepRate)
  return { loadFactor, maxForce: loadFactor * weight, maxDeflection: staticDeflection === null ? null : loadFactor * staticDeflection }
}

function cautions(si: SiOf<HandlingLoadInput>): Caution<HandlingLoadCaution>[] {
  if (si.stepRate === null)
    return [
      caution(
        "elastic-catch",
        "note",
        "Holds while what catches the weight stays elastic and is much lighter than it; the energy lost in the knock is not counted, which is safe.",
        at(GERE, "section 2.8"),
      ),
    ]
  return [
    caution(
      "steady-walking",
      "note",
      "Steady walking on the level, all harmonics at their worst together; stairs, kerbs, dancing and stumbles shake harder (3 times the weight is common practice, no source). A springy member shakes more again: see naturalFrequency.",
      FOOTFALL,
    ),
  ]
}

/**
 * How much walking or a fall multiplies a weight.
 *
 * Formula: walking at f steps a second: 1 + min(0.56, 0.41·(f − 0.95)) + (0.069 + 0.0056·2·f) + (0.033 + 0.0064·3·f) +
 * (0.013 + 0.0065·4·f). A weight falling by h onto what yields by δ under it at rest: 1 + √(1 + 2·h/δ). Times the
 * weight it gives the maximum force. Valid for steady level walking, or for an elastic catch.
 *
 * **Inputs**
 * - `weight`: weight at rest [G; 0 to 100 kN]
 * - `stepRate`: steps per second [f_s; 1 to 2.8 Hz; optional]
 * - `dropHeight`: height it falls [h_d; 0 to 10 m; optional]
 * - `staticDeflection`: deflection at rest [delta; 1e−9 to 10 m; optional]
 * - exactly one of `stepRate` and `dropHeight` with `staticDeflection`
 *
 * **Results**
 *
 * `loadFactor`: factor [k_m]; `maxForce`: maximum force [F_x; N]; `maxDeflection`: maximum deflection [delta_x; m].
 *
 * **Symbols of the working**
 *
 * d_1: first harmonic.
 *
 * **Sources**
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3
 *   (not verified against the document)
 * - J. M. Gere, B. J. Goodno: Mechanics of Materials, 7th, 2009, section 2.8
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { handlingLoad } from 'alula/frame'
 * handlingLoad({ weight: '9.5 N', stepRate: '2 Hz' }).loadFactor // => 1.6583
 * handlingLoad({ weight: '9.5 N', dropHeight: 0, staticDeflection: '1.7 mm' }).maxForce // => 19
 * ```
 */
export const handlingLoad: Solver<HandlingLoadInput, HandlingLoad, never, HandlingLoadCaution> = /* @__PURE__ */ solver<
  HandlingLoadInput,
  HandlingLoad,
  never,
  HandlingLoadCaution
>("handlingLoad", "How much walking or a fall multiplies a weight", solve, () => ({
  input: {
    weight: { kind: "force", symbol: "G", label: "weight at rest", min: 0, max: 1e5, typical: [1, 200] },
    stepRate: { kind: "frequency", symbol: "f_s", label: "steps per second", min: 1, max: 2.8, typical: [1.4, 2.4], default: null },
    dropHeight: { kind: "length", symbol: "h_d", label: "height it falls", min: 0, max: 10, typical: [0, 0.3], default: null },
    staticDeflection: {
      kind: "length",
      symbol: "delta",
      label: "deflection at rest",
      min: "1e-9 m",
      max: 10,
      typical: ["0.5 mm", "50 mm"],
      default: null,
    },
  },
  output: {
    loadFactor: { kind: "number", symbol: "k_m", label: "factor" },
    maxForce: { kind: "force", symbol: "F_x", label: "maximum force" },
    maxDeflection: { kind: "length", symbol: "delta_x", label: "maximum deflection" },
  },
  example: { weight: "9.5 N", stepRate: "2 Hz" },
  formulae: [
    {
      symbol: "d_1",
      kind: "number",
      meaning: "first harmonic",
      is: "min(0.56, 0.41 * (f_s / Hz - 0.95))",
      when: "has_stepRate",
      source: FOOTFALL,
    },
    {
      symbol: "k_m",
      meaning: "all four harmonics at their worst",
      is: "1 + d_1 + 0.115 + (2 * 0.0056 + 3 * 0.0064 + 4 * 0.0065) * f_s / Hz",
      when: "has_stepRate",
      source: FOOTFALL,
    },
    {
      symbol: "k_m",
      meaning: "fall onto what yields",
      is: "1 + sqrt(1 + 2 * h_d / delta)",
      when: "has_dropHeight",
      source: at(GERE, "section 2.8"),
    },
    { symbol: "F_x", meaning: "maximum force", is: "k_m * G" },
    { symbol: "delta_x", meaning: "maximum deflection", is: "k_m * delta", when: "has_staticDeflection" },
  ],
  sources: [FOOTFALL, at(GERE, "section 2.8")],
  either: [{ exactlyOne: ["stepRate", ["dropHeight", "staticDeflection"]] }],
  cautions,
}))
