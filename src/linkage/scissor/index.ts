import {
  type Caution,
  caution,
  inconsistent,
  isNoSolution,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
  withNearest,
} from "../../solver/index.js"
import { fallsCaution, pinchCaution } from "../hazards.js"
import { standardGravity } from "../hinge/load.js"
import { gravitySource, ownResult, scissorProblem, selfLocking } from "../sources.js"
import type { Scissor, ScissorCaution, ScissorInput, ScissorRefusal } from "./types.js"

export type { Scissor, ScissorCaution, ScissorInput, ScissorRefusal } from "./types.js"

const sides = { centre: 0, lower: 1, upper: -1 } as const

/** What works along the extension (N), and what the moving centre line adds to the force between the base joints (N). */
function loads(si: SiOf<ScissorInput>): { readonly along: number; readonly aside: number } {
  const along = (si.tipMass + si.armsMass / 2) * standardGravity * Math.sin(si.tilt) + si.push
  const aside = (sides[si.fixedJoint] * (si.tipMass + si.armsMass) * standardGravity * Math.cos(si.tilt)) / 2
  return { along, aside }
}

function solve(si: SiOf<ScissorInput>): Scissor | NoSolution<ScissorRefusal> {
  const out = kernel(si)
  if (!isNoSolution(out)) return out
  return withNearest(out, scissor, kernel, si, { driverForce: out.at.force as number }, [
    { path: "foldedAngle", from: 0, to: si.extendedAngle },
    { path: "extendedAngle", from: si.foldedAngle, to: Math.PI / 2 },
  ])
}

function kernel(si: SiOf<ScissorInput>): Scissor | NoSolution<ScissorRefusal> {
  const { cells: n, armLength: l, foldedAngle: t0, extendedAngle: t1, screwLead, driverForce, driverStiffness: k } = si
  const { along, aside } = loads(si)
  const spread = (t: number) => l * Math.cos(t)
  const force = (t: number) => (along * n) / Math.tan(t) - aside
  const torque = (t: number) => along * n * l * Math.cos(t) - aside * l * Math.sin(t)
  const [f0, f1] = [force(t0), force(t1)]
  // the force runs one way between its ends; the torque may crest between them
  const peakForce = Math.max(Math.abs(f0), Math.abs(f1))
  const crest = Math.atan2(-aside * Math.sign(along), Math.abs(along) * n)
  const inside = crest > t0 && crest < t1 ? Math.hypot(along * n, aside) * l : 0
  const ratio = (t: number) => n / Math.tan(t)
  if (driverForce !== null && peakForce > driverForce) {
    const armAngle = Math.abs(f0) >= Math.abs(f1) ? t0 : t1
    return refuse(
      "insufficient-force",
      "The driver must pull or hold {force force} at an arm angle of {armAngle angle °} and has {given.driverForce force}, {shortBy force} too little.",
      peakForce - driverForce,
      { armAngle, force: peakForce },
      {},
      { "given.driverForce": driverForce },
    )
  }
  const driverStroke = spread(t0) - spread(t1)
  return {
    spanFolded: n * l * Math.sin(t0),
    spanExtended: n * l * Math.sin(t1),
    spreadFolded: spread(t0),
    spreadExtended: spread(t1),
    driverStroke,
    ratioFolded: ratio(t0),
    ratioExtended: ratio(t1),
    forceFolded: f0,
    forceExtended: f1,
    peakForce,
    torqueFolded: torque(t0),
    torqueExtended: torque(t1),
    peakTorque: Math.max(Math.abs(torque(t0)), Math.abs(torque(t1)), inside),
    screwTorque: screwLead === null ? null : (peakForce * screwLead) / (2 * Math.PI * si.screwEfficiency),
    screwTurns: screwLead === null ? null : driverStroke / screwLead,
    sagFolded: k === null ? null : (ratio(t0) * f0) / k,
    sagExtended: k === null ? null : (ratio(t1) * f1) / k,
    droop: ((si.pinPlay / spread(t1)) * n * l * Math.sin(t1) * (n + 1)) / 2,
    rootForce: ((si.tipMass + si.armsMass / 2) * standardGravity * Math.cos(si.tilt) * n * l * Math.sin(t1)) / spread(t1),
  }
}

function cautions(si: SiOf<ScissorInput>, out: Scissor): Caution<ScissorCaution>[] {
  const found: Caution<ScissorCaution>[] = [pinchCaution("The arms of a scissor")]
  if (Math.sin(si.tilt) * (si.tipMass + si.armsMass) !== 0) found.push(fallsCaution("A scissor under weight"))
  if (out.ratioFolded > 3 * si.cells)
    found.push(
      caution(
        "flat-scissor",
        "caution",
        "Folded this flat (arms at {given.foldedAngle angle °}, under about 18°) force and pin loads climb steeply towards no limit, and pin friction, left out here, can lock the array: start from a larger angle or help the first push with a spring.",
        scissorProblem,
        { "given.foldedAngle": si.foldedAngle },
      ),
    )
  if (si.screwLead !== null && si.screwEfficiency > 0.4)
    found.push(
      caution(
        "thin-holding-margin",
        "warning",
        si.screwEfficiency < 0.5
          ? "A screw this efficient holds by a small margin only: vibration and fresh grease let it creep back. Do not count on it to hold a part over people."
          : "A screw this efficient does not hold by itself: with the motor off the load turns it backwards.",
        selfLocking,
      ),
    )
  if (Math.abs(out.sagFolded ?? 0) > 0.05 * out.spanFolded || Math.abs(out.sagExtended ?? 0) > 0.05 * out.spanExtended)
    found.push(
      caution(
        "soft-driver",
        "caution",
        "The driver gives by more than a twentieth of the span: the sag is calculated to first order, and as the array sinks back the force rises, so the real sag is larger and it may fold up altogether.",
        ownResult,
      ),
    )
  if (out.forceFolded * out.forceExtended < 0)
    found.push(
      caution(
        "force-changes-sign",
        "caution",
        "Over the travel the driver goes from pulling to holding back: play in screw and pins is taken up with a jerk there.",
      ),
    )
  return found
}

/**
 * A scissor array (lazy tongs) of n crossed cells drawn together by a screw or turned by a servo: span,
 * ratio, driver force and torque, and how far weight, springy drivers and loose pins let it sag.
 *
 * Formula: span H = n·L·sin θ, spread X = L·cos θ, dH/dX = −n/tan θ; by virtual work F = (W + W_m/2)·sin β·n/tan θ +
 * P·n/tan θ − σ·(W + W_m)·cos β/2 and T = F·L·sin θ, where n are the cells, L one arm, θ its angle from the base line,
 * W = m·g at the tip and W_m of all arms (g = 9.80665 m/s²), β the tilt above the horizontal, P a push against the tip
 * and σ = 0, 1, −1 for a base centred, or held at its lower or upper joint. Screw torque F·p/(2π·η) with lead p and
 * efficiency η (default: common practice). Sag = (n/tan θ)·F/k with driver stiffness k, to first order: valid while
 * small against the span. Droop through play e of every pin: each cell may turn by e/X against the last, which adds up
 * to e/X·H·(n + 1)/2 at the tip, by geometry. Valid for equal straight arms pinned at the middle, without friction or
 * bending: real arrays need more force. Angles strictly between 0 and 90°.
 *
 * Refuses `insufficient-force` where the driver's force is given and does not suffice.
 *
 * All but the ratio follows by virtual work.
 *
 * **Inputs**
 * - `cells`: cells [n; whole 1 to 200]
 * - `armLength`: arm, end pin to end pin [L; 1 mm to 10 m]
 * - `foldedAngle`: arm angle folded [theta_0; 0.1° to 89.9°]
 * - `extendedAngle`: arm angle extended [theta_1; 0.1° to 89.9°]
 * - `tilt`: direction above the horizontal [beta; −90° to 90°; default 90°]
 * - `fixedJoint`: base joint that stands still [centre, lower or upper; default centre]
 * - `tipMass`: mass at the tip [m_t; 0 to 1000 kg; default 0]
 * - `armsMass`: mass of all arms [m_a; 0 to 1000 kg; default 0]
 * - `push`: force against the tip [P; −100 to 100 kN; default 0]
 * - `screwLead`: screw lead [p; 0.05 mm to 1 m; optional]
 * - `screwEfficiency`: screw efficiency [eta; 0.1 to 100 %; default 30 %]
 * - `driverForce`: force the driver can exert [F_d; 1 mN to 10000 kN; optional]
 * - `driverStiffness`: stiffness of driver and mounting [k; 1 N/m to 1e7 N/mm; optional]
 * - `pinPlay`: play of every pin [e; 0 to 5 mm; default 0]
 *
 * **Results**
 *
 * `spanFolded`: span folded [H_0; m]; `spanExtended`: span extended [H_1; m]; `spreadFolded`: spread of the base
 * joints folded [X_0; m]; `spreadExtended`: spread of the base joints extended [X_1; m]; `driverStroke`: driver travel
 * [s; m]; `ratioFolded`: span per travel folded [r_0; as a fraction]; `ratioExtended`: span per travel extended [r_1;
 * as a fraction]; `forceFolded`: driver force folded [F_0; N]; `forceExtended`: driver force extended [F_1; N];
 * `peakForce`: maximum driver force [F_p; N]; `torqueFolded`: servo torque folded [T_0; N m]; `torqueExtended`: servo
 * torque extended [T_1; N m]; `peakTorque`: maximum servo torque [T_p; N m]; `screwTorque`: screw torque at the
 * maximum force [T_s; N m]; `screwTurns`: screw turns [n_t]; `sagFolded`: sag of the tip by the driver's give, folded
 * [z_0; m]; `sagExtended`: sag of the tip by the driver's give, extended [z_1; m]; `droop`: droop of the tip by play
 * [z_d; m]; `rootForce`: push and pull in the base joints [F_r; N].
 *
 * **Symbols of the working**
 *
 * g_n: standard gravity [m/s²]; sigma: 0 centred, 1 lower joint held, −1 upper joint held; A: load along the extension
 * [N]; B: load of the moving centre line [N]; theta_c: angle where the torque crests [rad].
 *
 * **Sources**
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, problem 11-2 (two-stage scissor by
 *   virtual work) (not verified against the document)
 * - NIST: Guide for the use of the International System of Units, SP 811, 2008, appendix B.8 (standard gravity) (not
 *   verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the driver stalls
 * @example
 * ```ts
 * import { scissor } from 'alula/linkage'
 * const tail = scissor({ cells: 3, armLength: '200 mm', foldedAngle: '35 deg', extendedAngle: '60 deg', tipMass: '1 kg' })
 * tail.spanExtended // => 0.51962
 * tail.forceFolded // => 42.016
 * ```
 */
export const scissor: Solver<ScissorInput, Scissor, ScissorRefusal, ScissorCaution> = /* @__PURE__ */ solver<
  ScissorInput,
  Scissor,
  ScissorRefusal,
  ScissorCaution
>("scissor", "How far a scissor array reaches and what drives it", solve, () => ({
  input: {
    cells: { kind: "number", symbol: "n", label: "cells", whole: true, min: 1, max: 200, typical: [2, 12] },
    armLength: { kind: "length", symbol: "L", label: "arm, end pin to end pin", min: "1 mm", max: "10 m", typical: ["60 mm", "400 mm"] },
    foldedAngle: {
      kind: "angle",
      symbol: "theta_0",
      label: "arm angle folded",
      min: "0.1 deg",
      max: "89.9 deg",
      typical: ["12 deg", "30 deg"],
    },
    extendedAngle: {
      kind: "angle",
      symbol: "theta_1",
      label: "arm angle extended",
      min: "0.1 deg",
      max: "89.9 deg",
      typical: ["45 deg", "75 deg"],
    },
    tilt: {
      kind: "angle",
      symbol: "beta",
      label: "direction above the horizontal",
      min: "-90 deg",
      max: "90 deg",
      typical: [0, "90 deg"],
      default: "90 deg",
    },
    fixedJoint: {
      kind: "choice",
      label: "base joint that stands still",
      options: { centre: "none: both move alike", lower: "the lower one", upper: "the upper one" },
      default: "centre",
    },
    tipMass: { kind: "mass", symbol: "m_t", label: "mass at the tip", min: 0, max: 1000, typical: [0.05, 2], default: 0 },
    armsMass: { kind: "mass", symbol: "m_a", label: "mass of all arms", min: 0, max: 1000, typical: [0.1, 3], default: 0 },
    push: { kind: "force", symbol: "P", label: "force against the tip", min: -1e5, max: 1e5, typical: [0.5, 20], default: 0 },
    screwLead: { kind: "length", symbol: "p", label: "screw lead", min: "0.05 mm", max: "1 m", typical: ["1 mm", "8 mm"], default: null },
    screwEfficiency: { kind: "ratio", symbol: "eta", label: "screw efficiency", min: "0.1 %", max: 1, typical: [0.2, 0.9], default: 0.3 },
    driverForce: {
      kind: "force",
      symbol: "F_d",
      label: "force the driver can exert",
      min: "1 mN",
      max: 1e7,
      typical: [500, 5000],
      default: null,
    },
    driverStiffness: {
      kind: "forcePerLength",
      symbol: "k",
      label: "stiffness of driver and mounting",
      min: 1,
      max: 1e10,
      typical: [1e4, 1e6],
      default: null,
    },
    pinPlay: { kind: "length", symbol: "e", label: "play of every pin", min: 0, max: "5 mm", typical: ["0.05 mm", "0.5 mm"], default: 0 },
  },
  output: {
    spanFolded: { kind: "length", symbol: "H_0", label: "span folded" },
    spanExtended: { kind: "length", symbol: "H_1", label: "span extended" },
    spreadFolded: { kind: "length", symbol: "X_0", label: "spread of the base joints folded" },
    spreadExtended: { kind: "length", symbol: "X_1", label: "spread of the base joints extended" },
    driverStroke: { kind: "length", symbol: "s", label: "driver travel" },
    ratioFolded: { kind: "ratio", symbol: "r_0", label: "span per travel folded", unit: "x" },
    ratioExtended: { kind: "ratio", symbol: "r_1", label: "span per travel extended", unit: "x" },
    forceFolded: { kind: "force", symbol: "F_0", label: "driver force folded" },
    forceExtended: { kind: "force", symbol: "F_1", label: "driver force extended" },
    peakForce: { kind: "force", symbol: "F_p", label: "maximum driver force" },
    torqueFolded: { kind: "moment", symbol: "T_0", label: "servo torque folded" },
    torqueExtended: { kind: "moment", symbol: "T_1", label: "servo torque extended" },
    peakTorque: { kind: "moment", symbol: "T_p", label: "maximum servo torque" },
    screwTorque: { kind: "moment", symbol: "T_s", label: "screw torque at the maximum force" },
    screwTurns: { kind: "number", symbol: "n_t", label: "screw turns" },
    sagFolded: { kind: "length", symbol: "z_0", label: "sag of the tip by the driver's give, folded" },
    sagExtended: { kind: "length", symbol: "z_1", label: "sag of the tip by the driver's give, extended" },
    droop: { kind: "length", symbol: "z_d", label: "droop of the tip by play" },
    rootForce: { kind: "force", symbol: "F_r", label: "push and pull in the base joints" },
  },
  example: {
    cells: 6,
    armLength: "160 mm",
    foldedAngle: "18 deg",
    extendedAngle: "62 deg",
    tilt: "20 deg",
    tipMass: "250 g",
    armsMass: "480 g",
    screwLead: "2 mm",
    driverStiffness: "50 N/mm",
    pinPlay: "0.2 mm",
  },
  formulae: [
    { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", given: () => standardGravity, source: gravitySource },
    {
      symbol: "sigma",
      kind: "number",
      meaning: "0 centred, 1 lower joint held, −1 upper joint held",
      given: (si) => sides[si.fixedJoint],
    },
    { symbol: "A", kind: "force", meaning: "load along the extension", is: "(m_t + m_a / 2) * g_n * sin(beta) + P" },
    { symbol: "B", kind: "force", meaning: "load of the moving centre line", is: "sigma * (m_t + m_a) * g_n * cos(beta) / 2" },
    { symbol: "H_0", meaning: "span folded", is: "n * L * sin(theta_0)" },
    { symbol: "H_1", meaning: "span extended", is: "n * L * sin(theta_1)" },
    { symbol: "X_0", meaning: "spread folded", is: "L * cos(theta_0)" },
    { symbol: "X_1", meaning: "spread extended", is: "L * cos(theta_1)" },
    { symbol: "s", meaning: "driver travel", is: "X_0 - X_1" },
    { symbol: "r_0", meaning: "span per travel folded", is: "n / tan(theta_0)" },
    { symbol: "r_1", meaning: "span per travel extended", is: "n / tan(theta_1)" },
    {
      symbol: "F_0",
      meaning: "driver force folded",
      is: "A * n / tan(theta_0) - B",
      source: scissorProblem,
    },
    {
      symbol: "F_1",
      meaning: "driver force extended",
      is: "A * n / tan(theta_1) - B",
      source: scissorProblem,
    },
    { symbol: "F_p", meaning: "maximum driver force: it runs one way between its ends", is: "max(abs(F_0), abs(F_1))" },
    { symbol: "T_0", meaning: "servo torque folded", is: "A * n * L * cos(theta_0) - B * L * sin(theta_0)" },
    { symbol: "T_1", meaning: "servo torque extended", is: "A * n * L * cos(theta_1) - B * L * sin(theta_1)" },
    { symbol: "theta_c", kind: "angle", meaning: "angle where the torque crests", is: "atan2(-B / N * sign(A / N), abs(A) / N * n)" },
    { symbol: "T_p", meaning: "maximum servo torque", is: "max(abs(T_0), abs(T_1))", when: "theta_c <= theta_0 or theta_c >= theta_1" },
    {
      symbol: "T_p",
      meaning: "maximum servo torque, at the crest",
      is: "max(abs(T_0), abs(T_1), sqrt((A * n)^2 + B^2) * L)",
      when: "theta_c > theta_0 and theta_c < theta_1",
    },
    { symbol: "T_s", meaning: "screw torque", is: "F_p * p / (2 * pi * eta)", when: "has_screwLead" },
    { symbol: "n_t", meaning: "screw turns", is: "s / p", when: "has_screwLead" },
    { symbol: "z_0", meaning: "sag folded", is: "r_0 * F_0 / k", when: "has_driverStiffness" },
    { symbol: "z_1", meaning: "sag extended", is: "r_1 * F_1 / k", when: "has_driverStiffness" },
    { symbol: "z_d", meaning: "droop through play", is: "e / X_1 * H_1 * (n + 1) / 2" },
    { symbol: "F_r", meaning: "couple of the sideways weight over the spread", is: "(m_t + m_a / 2) * g_n * cos(beta) * H_1 / X_1" },
  ],
  sources: [scissorProblem, gravitySource],
  check: ({ foldedAngle, extendedAngle }) =>
    foldedAngle < extendedAngle
      ? []
      : [
          inconsistent(["extendedAngle"], "{extendedAngle angle °}", "more than foldedAngle, {foldedAngle angle °}", {
            extendedAngle,
            foldedAngle,
          }),
        ],
  cautions,
}))
