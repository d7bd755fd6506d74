import type { Angle, Force, Length, Ratio, Speed } from "../quantity/index.js"
import type { Transmits } from "../solver/index.js"
import {
  at,
  type Caution,
  caution,
  commonPractice,
  inconsistent,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  type Source,
  solver,
  tried,
} from "../solver/index.js"
import { screwFields } from "./screw-fields.js"
import { ISO_13854, SHIGLEY } from "./sources.js"

const SCREWS: Source = at(SHIGLEY, "section 8-2")
const equation = (number: string): Source => at(SHIGLEY, `equation ${number}`)

/** Input of {@link powerScrew}. Give the thread's friction coefficient or its efficiency, not both. */
export interface PowerScrewInput {
  /** Load along the screw. [F; 1 mN to 1000 kN] */
  force: Force
  /** Outside diameter of the thread. [d; 1 mm to 1 m] */
  majorDiameter: Length
  /** Distance from thread to thread. [p; 0.1 mm to 1 m] */
  pitch: Length
  /** Threads side by side; the lead is pitch times starts. [n; whole 1 to 20; default 1] */
  starts?: number
  /** Whole angle between the flanks: 0 for square, 29° for Acme, 30° for metric trapezoidal threads. [alpha; 0 to 90°; default 0] */
  flankAngle?: Angle
  /** Coefficient of friction in the thread. [f; 0 to 1; optional] */
  threadFriction?: number | null
  /** Lifting efficiency of the thread, as ball-screw sheets print it. [eta_t; 1 to 100 %; optional] */
  screwEfficiency?: Ratio | null
  /** Coefficient of friction in the thrust collar. [f_c; 0 to 1; default 0] */
  collarFriction?: number
  /** Mean diameter of the collar [d_c; 0 to 2 m; default 0] */
  collarDiameter?: Length
  /** Speed of the nut, for rotation and power. [v; 0 to 10 m/s; optional] */
  speed?: Speed | null
}

/** Result of {@link powerScrew}. */
export interface PowerScrew {
  /** A screw pushes and pulls: `both-ways`. [text] */
  readonly transmits: Transmits
  /** Advance in one turn. [l; m] */
  readonly lead: number
  /** Pitch diameter. [d_m; m] */
  readonly meanDiameter: number
  /** Slope of the thread. [lambda; rad] */
  readonly leadAngle: number
  /** Torque to raise: thread and collar. [T_R; N m] */
  readonly raiseTorque: number
  /** Torque to lower; negative where the load turns the screw. [T_L; N m] */
  readonly lowerTorque: number
  /** Part of the raising torque taken by the thread. [T_r; N m] */
  readonly threadRaiseTorque: number
  /** Part of the lowering torque taken by the thread. [T_l; N m] */
  readonly threadLowerTorque: number
  /** Torque taken by the collar. [T_c; N m] */
  readonly collarTorque: number
  /** Work lifted against work put in. [eta; as a fraction] */
  readonly efficiency: number
  /** Whether the thread alone holds the load at the very friction given: no promise, because friction varies in service. [yes or no] */
  readonly threadSelfLocking: boolean
  /** Whether the thread alone still holds it with half of that friction; the collar's friction is not counted on. [yes or no] */
  readonly selfLocking: boolean
  /** Rotation, where a speed was given. [omega; rad/s] */
  readonly rotation: number | null
  /** Power to raise at that speed. [P; W] */
  readonly power: number | null
  /** Shear stress in the core from the raising torque. [tau; Pa] */
  readonly torsionStress: number
  /** Axial stress in the core; compression is negative. [sigma; Pa] */
  readonly axialStress: number
  /** Pressure on the most loaded thread; compression is negative. [sigma_B; Pa] */
  readonly bearingStress: number
  /** Bending stress at the root of the most loaded thread. [sigma_b; Pa] */
  readonly bendingStress: number
}

/** Reasons for which {@link powerScrew} refuses. */
export type PowerScrewRefusal = "jammed"

/** Hazards and limits of validity that go with an answer of {@link powerScrew}. */
export type PowerScrewCaution =
  | "held-by-collar"
  | "low-friction"
  | "pinch"
  | "steep-thread"
  | "thin-holding-margin"
  | "thread-not-self-locking"
  | "very-efficient"

/** Part of the handbook's friction that may be left in service. */
const LEFT_IN_SERVICE = 0.5

/** Slope above which the thread's own steepness changes its flank, rad. */
const STEEP = Math.PI / 18

/** Share of the load on the first engaged thread (Shigley, section 8-2). */
const FIRST_THREAD = 0.38

function kernel(si: SiOf<PowerScrewInput>): PowerScrew | NoSolution<PowerScrewRefusal> {
  const { force, majorDiameter, pitch, starts, flankAngle, collarFriction, collarDiameter, speed } = si
  const lead = pitch * starts
  const meanDiameter = majorDiameter - pitch / 2
  const coreDiameter = majorDiameter - pitch
  const slope = lead / (Math.PI * meanDiameter)
  const ideal = (force * lead) / (2 * Math.PI)
  let threadRaiseTorque: number
  let threadLowerTorque: number
  let holdsInService: boolean
  if (si.threadFriction !== null) {
    const friction = si.threadFriction / Math.cos(flankAngle / 2)
    const clearance = 1 - friction * slope
    if (!(clearance > 1e-9))
      return refuse(
        "jammed",
        "The thread jams: friction {friction} times the slope {slope} is 1 or more, so no torque raises the load. Use a finer lead, or less friction.",
        friction * slope - 0.999,
        { friction, slope },
        { threadFriction: (0.999 * Math.cos(flankAngle / 2)) / slope },
      )
    // shares of the torque without friction: no rounding makes a screw give more than it takes
    threadRaiseTorque = ideal * ((slope + friction) / (slope * clearance))
    threadLowerTorque = ideal * ((friction - slope) / (slope * (1 + friction * slope)))
    holdsInService = LEFT_IN_SERVICE * friction > slope
  } else {
    threadRaiseTorque = ideal / (si.screwEfficiency as number)
    threadLowerTorque = threadRaiseTorque - 2 * ideal
    holdsInService = LEFT_IN_SERVICE * (threadRaiseTorque - ideal) > ideal
  }
  const collarTorque = (force * collarFriction * collarDiameter) / 2
  const raiseTorque = threadRaiseTorque + collarTorque
  const lowerTorque = threadLowerTorque + collarTorque
  return {
    transmits: "both-ways",
    lead,
    meanDiameter,
    leadAngle: Math.atan(slope),
    raiseTorque,
    lowerTorque,
    threadRaiseTorque,
    threadLowerTorque,
    collarTorque,
    efficiency: ideal / raiseTorque,
    threadSelfLocking: threadLowerTorque > 0,
    selfLocking: holdsInService,
    rotation: speed === null ? null : (2 * Math.PI * speed) / lead,
    power: speed === null ? null : (raiseTorque * 2 * Math.PI * speed) / lead,
    torsionStress: (16 * raiseTorque) / (Math.PI * coreDiameter ** 3),
    axialStress: (-4 * force) / (Math.PI * coreDiameter ** 2),
    bearingStress: (-2 * FIRST_THREAD * force) / (Math.PI * meanDiameter * pitch),
    bendingStress: (6 * FIRST_THREAD * force) / (Math.PI * coreDiameter * pitch),
  }
}

function check(si: SiOf<PowerScrewInput>) {
  const faults = []
  if (!(si.pitch < 0.9 * si.majorDiameter))
    faults.push(
      inconsistent(["pitch"], "{pitch length}", "less than 0.9 of the outside diameter of {majorDiameter length}, so that a core is left", {
        pitch: si.pitch,
        majorDiameter: si.majorDiameter,
      }),
    )
  return faults
}

const solve = (si: SiOf<PowerScrewInput>): PowerScrew | NoSolution<PowerScrewRefusal> =>
  tried(kernel(si), si, powerScrew.input, kernel, check, powerScrew.either)

function cautions(si: SiOf<PowerScrewInput>, out: PowerScrew): Caution<PowerScrewCaution>[] {
  const found: Caution<PowerScrewCaution>[] = [
    caution(
      "pinch",
      "warning",
      "Nut and screw crush and draw in with {given.force force} and more: keep gaps that no finger, hand or head fits, cover the thread, keep a switch within reach, and have it checked by a qualified person under the local rules.",
      ISO_13854,
      { "given.force": si.force },
    ),
  ]
  if (!out.threadSelfLocking && out.lowerTorque > 0)
    found.push(
      caution(
        "held-by-collar",
        "warning",
        "The thread alone does not hold this load; only the collar's friction does. Grease or vibration there lets it come down: use a brake or latch where anybody can be under it.",
        SCREWS,
      ),
    )
  else if (!out.threadSelfLocking)
    found.push(
      caution(
        "thread-not-self-locking",
        "warning",
        "The load turns the screw and comes down by itself when power goes: use a brake, a latch or a counterbalance, and keep people clear.",
        SCREWS,
      ),
    )
  else if (!out.selfLocking)
    found.push(
      caution(
        "thin-holding-margin",
        "warning",
        "Self-locking only at the friction given: in service half of a handbook value can be left, and then the load comes down by itself. Use a brake or latch where anybody can be under it.",
        at(SHIGLEY, "table 8-5 (spread of friction coefficients)"),
      ),
    )
  if (si.threadFriction !== null && si.threadFriction < 0.05)
    found.push(
      caution(
        "low-friction",
        "note",
        "Sliding threads run at 0.08 to 0.23; {given.threadFriction} is usual only for ball screws.",
        at(SHIGLEY, "table 8-5"),
        { "given.threadFriction": si.threadFriction },
      ),
    )
  if (si.threadFriction !== null && si.flankAngle > 0 && out.leadAngle > STEEP)
    found.push(
      caution(
        "steep-thread",
        "note",
        "The thread's slope of {leadAngle angle deg} is above 10°: its friction comes out somewhat too high, which flatters how well it holds. Do not count on a small self-locking margin.",
        SCREWS,
        { leadAngle: out.leadAngle },
      ),
    )
  if (out.efficiency > 0.95)
    found.push(
      caution(
        "very-efficient",
        "note",
        "Even ball screws seldom lift with more than 95 % efficiency; this one is at {efficiency ratio %}.",
        commonPractice,
        {
          efficiency: out.efficiency,
        },
      ),
    )
  return found
}

/**
 * Torque to raise and lower a load with a screw, its efficiency, and whether it holds by itself.
 *
 * Formula: with lead l = p·n, mean diameter d_m = d − p/2, friction f′ = f/cos(α/2) for a whole flank angle α: T_R =
 * F·d_m/2·(l + π·f′·d_m)/(π·d_m − f′·l) + F·f_c·d_c/2 and T_L = F·d_m/2·(π·f′·d_m − l)/(π·d_m + f′·l) + F·f_c·d_c/2, η
 * = F·l/(2π·T_R). F is the load, f the thread's friction coefficient, f_c and d_c friction and mean diameter of the
 * collar, n the starts. Where the thread's lifting efficiency η_t is given instead, T_R = F·l/(2π·η_t) and T_L = T_R −
 * F·l/π (the same friction torque both ways). The thread holds by itself at this friction where its part of T_L is
 * positive; `selfLocking` asks that it still does so with half of f, or half of the friction torque. Stresses in the
 * core d_r = d − p: τ = 16·T_R/(π·d_r³), σ = −4F/(π·d_r²); on the first thread, which takes 0.38 of the load, bearing
 * −2·0.38F/(π·d_m·p) and bending 6·0.38F/(π·d_r·p).
 *
 * Valid for slow, lubricated sliding screws and, by efficiency, ball screws; the lead angle's effect on the
 * flank angle is left out (under 1 % below 10°).
 *
 * **Inputs**
 * - `force`: load [F; 1 mN to 1000 kN]
 * - `majorDiameter`: outside diameter [d; 1 mm to 1 m]
 * - `pitch`: pitch [p; 0.1 mm to 1 m]
 * - `starts`: starts [n; whole 1 to 20; default 1]
 * - `flankAngle`: whole flank angle [alpha; 0 to 90°; default 0]
 * - `threadFriction`: friction in the thread [f; 0 to 1; optional]
 * - `screwEfficiency`: efficiency of the thread [eta_t; 1 to 100 %; optional]
 * - `collarFriction`: friction in the collar [f_c; 0 to 1; default 0]
 * - `collarDiameter`: mean diameter of the collar [d_c; 0 to 2 m; default 0]
 * - `speed`: speed of the nut [v; 0 to 10 m/s; optional]
 * - exactly one of `threadFriction` and `screwEfficiency`
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `lead`: lead [l; m]; `meanDiameter`: mean diameter [d_m; m]; `leadAngle`: lead angle
 * [lambda; rad]; `raiseTorque`: torque to raise [T_R; N m]; `lowerTorque`: torque to lower [T_L; N m];
 * `threadRaiseTorque`: torque in the thread, raising [T_r; N m]; `threadLowerTorque`: torque in the thread, lowering
 * [T_l; N m]; `collarTorque`: torque in the collar [T_c; N m]; `efficiency`: efficiency [eta; as a fraction];
 * `threadSelfLocking`: thread alone holds at the friction given [yes or no]; `selfLocking`: thread alone holds with
 * half of it [yes or no]; `rotation`: rotation [omega; rad/s]; `power`: power to raise [P; W]; `torsionStress`: shear
 * stress in the core [tau; Pa]; `axialStress`: axial stress in the core [sigma; Pa]; `bearingStress`: pressure on the
 * first thread [sigma_B; Pa]; `bendingStress`: bending of the first thread [sigma_b; Pa].
 *
 * **Symbols of the working**
 *
 * f_1: friction on the sloping flank; d_r: core diameter [m].
 *
 * **Sources**
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 10th, 2015, section 8-2, equations 8-1 to
 *   8-12 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `jammed` where friction times slope reaches 1
 * @example
 * ```ts
 * import { powerScrew } from 'alula/drive'
 * const jack = powerScrew({ force: '300 N', majorDiameter: '8 mm', pitch: '2 mm', flankAngle: '30 deg', threadFriction: 0.15 })
 * jack.raiseTorque // => 0.2623
 * jack.efficiency // => 0.3641
 * jack.threadSelfLocking // => true
 * jack.selfLocking // => false
 * ```
 */
export const powerScrew: Solver<PowerScrewInput, PowerScrew, PowerScrewRefusal, PowerScrewCaution> = /* @__PURE__ */ solver<
  PowerScrewInput,
  PowerScrew,
  PowerScrewRefusal,
  PowerScrewCaution
>("powerScrew", "Torque to raise and lower a load with a screw, and whether it holds", solve, () => ({
  input: {
    force: { kind: "force", symbol: "F", label: "load", min: "1 mN", max: "1000 kN", typical: [50, 5000] },
    ...screwFields,
    speed: { kind: "speed", symbol: "v", label: "speed of the nut", min: 0, max: 10, typical: ["1 mm/s", "50 mm/s"], default: null },
  },
  output: {
    transmits: { kind: "text", label: "transmits" },
    lead: { kind: "length", symbol: "l", label: "lead" },
    meanDiameter: { kind: "length", symbol: "d_m", label: "mean diameter" },
    leadAngle: { kind: "angle", symbol: "lambda", label: "lead angle" },
    raiseTorque: { kind: "moment", symbol: "T_R", label: "torque to raise" },
    lowerTorque: { kind: "moment", symbol: "T_L", label: "torque to lower" },
    threadRaiseTorque: { kind: "moment", symbol: "T_r", label: "torque in the thread, raising" },
    threadLowerTorque: { kind: "moment", symbol: "T_l", label: "torque in the thread, lowering" },
    collarTorque: { kind: "moment", symbol: "T_c", label: "torque in the collar" },
    efficiency: { kind: "ratio", symbol: "eta", label: "efficiency", unit: "%" },
    threadSelfLocking: { kind: "flag", label: "thread alone holds at the friction given" },
    selfLocking: { kind: "flag", label: "thread alone holds with half of it" },
    rotation: { kind: "angularSpeed", symbol: "omega", label: "rotation" },
    power: { kind: "power", symbol: "P", label: "power to raise" },
    torsionStress: { kind: "pressure", symbol: "tau", label: "shear stress in the core" },
    axialStress: { kind: "pressure", symbol: "sigma", label: "axial stress in the core" },
    bearingStress: { kind: "pressure", symbol: "sigma_B", label: "pressure on the first thread" },
    bendingStress: { kind: "pressure", symbol: "sigma_b", label: "bending of the first thread" },
  },
  example: { force: "300 N", majorDiameter: "8 mm", pitch: "2 mm", flankAngle: "30 deg", threadFriction: 0.15 },
  formulae: [
    { symbol: "l", meaning: "lead", is: "p * n" },
    { symbol: "d_m", meaning: "mean diameter", is: "d - p / 2" },
    { symbol: "lambda", meaning: "lead angle", is: "atan(l / (pi * d_m))" },
    { symbol: "f_1", kind: "number", meaning: "friction on the sloping flank", is: "f / cos(alpha / 2)", when: "has_threadFriction" },
    {
      symbol: "T_r",
      meaning: "thread's part, raising",
      is: "F * d_m / 2 * (l + pi * f_1 * d_m) / (pi * d_m - f_1 * l)",
      when: "has_threadFriction",
      source: equation("8-1"),
    },
    {
      symbol: "T_l",
      meaning: "thread's part, lowering",
      is: "F * d_m / 2 * (pi * f_1 * d_m - l) / (pi * d_m + f_1 * l)",
      when: "has_threadFriction",
      source: equation("8-2"),
    },
    { symbol: "T_r", meaning: "thread's part, raising", is: "F * l / (2 * pi * eta_t)", when: "has_screwEfficiency" },
    { symbol: "T_l", meaning: "thread's part, lowering", is: "T_r - F * l / pi", when: "has_screwEfficiency" },
    { symbol: "T_c", meaning: "collar's part", is: "F * f_c * d_c / 2", source: equation("8-6") },
    { symbol: "T_R", meaning: "torque to raise", is: "T_r + T_c" },
    { symbol: "T_L", meaning: "torque to lower", is: "T_l + T_c" },
    { symbol: "eta", meaning: "efficiency", is: "F * l / (2 * pi * T_R)", source: equation("8-4") },
    { symbol: "omega", meaning: "rotation", is: "2 * pi * v / l", when: "has_speed" },
    { symbol: "P", meaning: "power to raise", is: "T_R * omega", when: "has_speed" },
    { symbol: "d_r", kind: "length", meaning: "core diameter", is: "d - p" },
    { symbol: "tau", meaning: "shear stress in the core", is: "16 * T_R / (pi * d_r^3)", source: equation("8-7") },
    { symbol: "sigma", meaning: "axial stress in the core", is: "-4 * F / (pi * d_r^2)", source: equation("8-8") },
    { symbol: "sigma_B", meaning: "pressure on the first thread", is: "-2 * 0.38 * F / (pi * d_m * p)", source: equation("8-10") },
    { symbol: "sigma_b", meaning: "bending of the first thread", is: "6 * 0.38 * F / (pi * d_r * p)", source: equation("8-11") },
  ],
  sources: [at(SHIGLEY, "section 8-2, equations 8-1 to 8-12")],
  either: [{ exactlyOne: ["threadFriction", "screwEfficiency"] }],
  check,
  cautions,
}))
