import { type SiOf, type Solver, type Step, solver } from "../../../solver/index.js"
import { BASE_MOTION, CCIP_016, FLEXIBLE_PACK, PACE } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import { baseMotion, walkingFactor } from "../data-load.js"
import { walkingLoadCautions } from "./cautions.js"
import type { WalkingLoad, WalkingLoadCaution, WalkingLoadInput } from "./types.js"

export type { WalkingLoad, WalkingLoadInput } from "./types.js"

const GRAVITY = 9.80665
const HARMONICS = [1, 2, 3, 4] as const

function solve({ rigMass, stepRate, stiffness, dampingRatio, freeTravel }: SiOf<WalkingLoadInput>): WalkingLoad {
  const weight = GRAVITY * rigMass
  const shakes = HARMONICS.map((h) => walkingFactor(h, h * stepRate))
  const fixed = shakes.reduce((sum, a) => sum + a, 0)
  if (stiffness === null)
    return {
      naturalFrequency: null,
      sag: null,
      stepTransmissibility: null,
      fixedPeakFactor: 1 + fixed,
      peakFactor: 1 + fixed,
      peakForce: weight * (1 + fixed),
      minForce: weight * (1 - fixed),
      amplification: 1,
      travel: null,
      travelUtilisation: null,
    }
  const naturalFrequency = Math.sqrt(stiffness / rigMass) / (2 * Math.PI)
  const sag = weight / stiffness
  const passed = HARMONICS.map((h) => baseMotion((h * stepRate) / naturalFrequency, dampingRatio))
  const shake = shakes.reduce((sum, a, i) => sum + a * (passed[i]?.force ?? 0), 0)
  const travel = sag * shakes.reduce((sum, a, i) => sum + a * (passed[i]?.travel ?? 0), 0)
  return {
    naturalFrequency,
    sag,
    stepTransmissibility: baseMotion(stepRate / naturalFrequency, dampingRatio).force,
    fixedPeakFactor: 1 + fixed,
    peakFactor: 1 + shake,
    peakForce: weight * (1 + shake),
    minForce: weight * (1 - shake),
    amplification: shake / fixed,
    travel,
    travelUtilisation: freeTravel === null ? null : travel / freeTravel,
  }
}

const factors = [
  "min(0.56, 0.41 * (f_s / Hz - 0.95))",
  "0.069 + 0.0056 * 2 * f_s / Hz",
  "0.033 + 0.0064 * 3 * f_s / Hz",
  "0.013 + 0.0065 * 4 * f_s / Hz",
]
const held = "has_stiffness"
/** Shake of one harmonic, and what the springy part makes of it. */
const harmonicSteps = HARMONICS.flatMap((h): Step<SiOf<WalkingLoadInput>, WalkingLoad>[] => [
  { symbol: `a_${h}`, kind: "number", meaning: `force of harmonic ${h} over weight`, is: factors[h - 1] as string, source: CCIP_016 },
  { symbol: `b_${h}`, kind: "number", meaning: `frequency of harmonic ${h} over the natural one`, is: `${h} * f_s / f_n`, when: held },
  {
    symbol: `d_${h}`,
    kind: "number",
    meaning: "travel over that of a force at rest",
    is: `1 / sqrt((1 - b_${h}^2)^2 + (2 * zeta * b_${h})^2)`,
    when: held,
    source: BASE_MOTION,
  },
  { symbol: `t_${h}`, kind: "number", meaning: "shake passed on", is: `d_${h} * sqrt(1 + (2 * zeta * b_${h})^2)`, when: held },
])

/**
 * How hard a load pulls while its wearer walks, fixed to the trunk or moving on straps, a frame or a mast that gives.
 *
 * Formula: steps at f shake the trunk with harmonics h of a_h·g at h·f. A mass m on a stiffness k of damping ratio ζ, natural
 * frequency f_n = √(k/m)/(2π), b = h·f/f_n, passes each on as t_h = √(1 + (2·ζ·b)²)/√((1 − b²)² + (2·ζ·b)²) and moves
 * against the trunk by d_h = 1/√((1 − b²)² + (2·ζ·b)²) of a_h times its sag m·g/k. Peak force m·g·(1 + Σ a_h·t_h), minimum
 * m·g·(1 − Σ a_h·t_h), all harmonics meeting: an upper bound. Fixed to the trunk t_h is 1. Valid for level walking of
 * adults and small motions up and down; while the load lifts off nothing of it holds.
 *
 * **Inputs**
 * - `rigMass`: rig mass [m_r; 10 g to 150 kg]
 * - `stepRate`: step rate [f_s; 1 to 2.8 Hz; default 2 Hz]
 * - `stiffness`: stiffness of what holds the load [k_u; 50 N/m to 1000 N/mm; optional]
 * - `dampingRatio`: damping ratio [zeta; 0.02 to 2; default 0.1]
 * - `freeTravel`: free travel, up or down [s_f; 1 mm to 1 m; optional]
 * - `freeTravel` only beside `stiffness`
 *
 * **Results**
 *
 * `naturalFrequency`: natural frequency [f_n; Hz]; `sag`: sag at rest [s_0; m]; `stepTransmissibility`:
 * transmissibility at the step rate [t_f]; `fixedPeakFactor`: peak factor, fixed to the trunk [n_0]; `peakFactor`:
 * peak factor [n_p]; `peakForce`: peak force [F_p; N]; `minForce`: minimum force [F_m; N]; `amplification`:
 * amplification of the shake [A]; `travel`: travel from rest [z; m]; `travelUtilisation`: utilisation of the free
 * travel [q_s; as a fraction].
 *
 * **Symbols of the working**
 *
 * W_0: weight [N]; a_1: force of harmonic 1 over weight; b_1: frequency of harmonic 1 over the natural one; d_1:
 * travel over that of a force at rest; t_1: shake passed on; a_2: force of harmonic 2 over weight; b_2: frequency of
 * harmonic 2 over the natural one; d_2: travel over that of a force at rest; t_2: shake passed on; a_3: force of
 * harmonic 3 over weight; b_3: frequency of harmonic 3 over the natural one; d_3: travel over that of a force at rest;
 * t_3: shake passed on; a_4: force of harmonic 4 over weight; b_4: frequency of harmonic 4 over the natural one; d_4:
 * travel over that of a force at rest; t_4: shake passed on.
 *
 * **Sources**
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3,
 *   walking, design values (not verified against the document)
 * - S. S. Rao: Mechanical Vibrations, 5th, 2011, section 3.6, harmonic motion of the base; example 3.4: 1.100964 (not
 *   verified against the document)
 * - M. Foissac and others: Characterization of the mechanical properties of backpacks and their influence on the
 *   energetics of walking, J. Biomech. 42, 2009, abstract: peaks of acceleration lower by 22 and 8 % when slow, forces
 *   and oxygen uptake higher at 5.2 and 6 km/h
 * - A. Pachi, T. Ji: Frequency and velocity of people walking, The Structural Engineer 83(3), 2005, abstract: 2.0
 *   steps a second at 1.4 m/s on floors, 1.8 at 1.3 m/s on footbridges, 800 people unaware
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { walkingLoad } from 'alula/worn'
 * const mothWings = walkingLoad({ rigMass: '6 kg', stiffness: '4 N/mm' })
 * mothWings.naturalFrequency // => 4.109
 * ```
 */
export const walkingLoad: Solver<WalkingLoadInput, WalkingLoad, never, WalkingLoadCaution> = /* @__PURE__ */ solver<
  WalkingLoadInput,
  WalkingLoad,
  never,
  WalkingLoadCaution
>("walkingLoad", "Pull of a load while walking", solve, () => ({
  input: {
    rigMass: wearerFields.rigMass,
    stepRate: wearerFields.stepRate,
    stiffness: {
      kind: "forcePerLength",
      symbol: "k_u",
      label: "stiffness of what holds the load",
      min: "50 N/m",
      max: "1000 N/mm",
      typical: ["700 N/m", "20 N/mm"],
      default: null,
    },
    dampingRatio: { kind: "ratio", symbol: "zeta", label: "damping ratio", min: 0.02, max: 2, typical: [0.05, 0.4], default: 0.1 },
    freeTravel: {
      kind: "length",
      symbol: "s_f",
      label: "free travel, up or down",
      min: "1 mm",
      max: 1,
      typical: ["10 mm", "0.1 m"],
      default: null,
    },
  },
  output: {
    naturalFrequency: { kind: "frequency", symbol: "f_n", label: "natural frequency" },
    sag: { kind: "length", symbol: "s_0", label: "sag at rest" },
    stepTransmissibility: { kind: "number", symbol: "t_f", label: "transmissibility at the step rate" },
    fixedPeakFactor: { kind: "number", symbol: "n_0", label: "peak factor, fixed to the trunk" },
    peakFactor: { kind: "number", symbol: "n_p", label: "peak factor" },
    peakForce: { kind: "force", symbol: "F_p", label: "peak force" },
    minForce: { kind: "force", symbol: "F_m", label: "minimum force" },
    amplification: { kind: "number", symbol: "A", label: "amplification of the shake" },
    travel: { kind: "length", symbol: "z", label: "travel from rest" },
    travelUtilisation: { kind: "ratio", symbol: "q_s", label: "utilisation of the free travel", unit: "%" },
  },
  example: { rigMass: "6 kg", stiffness: "20 N/mm", freeTravel: "30 mm" },
  formulae: [
    { symbol: "W_0", kind: "force", meaning: "weight", is: "m_r * (9.80665 m/s^2)" },
    { symbol: "f_n", meaning: "mass on a spring", is: "sqrt(k_u / m_r) / (2 * pi)", when: held },
    { symbol: "s_0", meaning: "weight over stiffness", is: "W_0 / k_u", when: held },
    ...harmonicSteps,
    { symbol: "t_f", meaning: "of the first harmonic", is: "t_1", when: held },
    { symbol: "n_0", meaning: "all harmonics meeting", is: "1 + a_1 + a_2 + a_3 + a_4" },
    { symbol: "n_p", meaning: "fixed to the trunk", is: "n_0", when: "not has_stiffness" },
    { symbol: "n_p", meaning: "each as it is passed on", is: "1 + a_1 * t_1 + a_2 * t_2 + a_3 * t_3 + a_4 * t_4", when: held },
    { symbol: "F_p", meaning: "peak force", is: "W_0 * n_p" },
    { symbol: "F_m", meaning: "minimum force", is: "W_0 * (2 - n_p)" },
    { symbol: "A", meaning: "shake of the load over that of the trunk", is: "(n_p - 1) / (n_0 - 1)" },
    { symbol: "z", meaning: "travel, all harmonics meeting", is: "s_0 * (a_1 * d_1 + a_2 * d_2 + a_3 * d_3 + a_4 * d_4)", when: held },
    { symbol: "q_s", meaning: "travel over the free one", is: "z / s_f", when: "has_freeTravel" },
  ],
  sources: [CCIP_016, BASE_MOTION, FLEXIBLE_PACK, PACE],
  either: [{ given: "freeTravel", needs: ["stiffness"] }],
  cautions: walkingLoadCautions,
}))
