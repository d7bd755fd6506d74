import {
  at,
  type Caution,
  caution,
  type Issue,
  inconsistent,
  isNoSolution,
  type NoSolution,
  optionsFrom,
  type SiOf,
  type Solver,
  solver,
} from "../solver/index.js"
import { beamCurve } from "./beam-curve.js"
import { beamFormulae } from "./beam-formulae.js"
import { type BeamInput, beamProblem, gravity, ownDensity } from "./beam-loads.js"
import { conditionCautions, conditionFaults, conditionFields, conditionOf, leastStress, marginCautions } from "./condition.js"
import { motionCautions, motions } from "./data-loads.js"
import { sectionFaults, sectionFields, sectionOf } from "./section.js"
import { FOOTFALL, GERE, MACAULAY, MATTIASSON, TIMOSHENKO_GERE, VIDOSIC } from "./sources.js"

/** Result of {@link beam}; downwards and sagging are positive. */
export interface Beam {
  /** Force the first support or the clamp pushes up with, N. */
  readonly reactionStart: number
  /** Force the second support pushes up with, N; null for a cantilever. */
  readonly reactionEnd: number | null
  /** Bending moment at the clamp, N·m; null on two supports. */
  readonly clampMoment: number | null
  /** Bending moment largest in magnitude, N·m. */
  readonly greatestMoment: number
  /** Where it is, m from the start. */
  readonly greatestMomentAt: number
  /** Shear force largest in magnitude, N. */
  readonly greatestShear: number
  /** Deflection largest in magnitude, m, at the soft end of the material's range. */
  readonly deflection: number
  /** Where it is, m from the start. */
  readonly deflectionAt: number
  /** The same at the stiff end of the range, m. */
  readonly deflectionLeast: number
  /** Deflection of the end, m. */
  readonly endDeflection: number
  /** Slope of the end, rad. */
  readonly endSlope: number
  /** Own weight, before the factor of handling, N. */
  readonly weight: number
  /** Factor of handling on every load. */
  readonly loadFactor: number
  /** Bending stress at the outermost fibre, Pa. */
  readonly bendingStress: number | null
  /** Shear stress at the neutral axis, Pa. */
  readonly shearStress: number | null
  /** Modulus used, Pa. */
  readonly modulus: number
  /** Strength used, Pa. */
  readonly strength: number | null
  /** Stiffness left at the temperature. */
  readonly stiffnessFactor: number
  /** Strength left at the temperature. */
  readonly strengthFactor: number
  /** Stiffness and strength left after the load has stood. */
  readonly creepFactor: number
  /** Strength against stress, least, of bending and shear. */
  readonly safetyFactor: number | null
  /** The same at the strong end of the range. */
  readonly safetyFactorMost: number | null
  /** Steps taken to find the places of greatest moment and deflection. */
  readonly iterations: number
  /** Slope left at the place of greatest deflection, rad; 0 where it is an end or a load. */
  readonly residual: number
}

function solve(si: SiOf<BeamInput>): Beam | NoSolution {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const section = sectionOf(si.section)
  const curve = beamCurve(beamProblem(si, condition.modulus))
  const [moment, shear, sag] = [curve.greatest("moment"), curve.greatest("shear"), curve.greatest("deflection")]
  const end = curve.at(si.length, -1)
  const bendingStress = section.fibre === null ? null : (Math.abs(moment.value) * section.fibre) / section.secondMoment
  const shearStress =
    section.firstMoment === null || section.shearWidth === null
      ? null
      : (Math.abs(shear.value) * section.firstMoment) / (section.secondMoment * section.shearWidth)
  const margin = (strength: number | null, shearStrength: number | null) => {
    if (strength === null || shearStrength === null || bendingStress === null) return null
    if (!(Math.max(bendingStress, shearStress ?? 0) > leastStress)) return null
    return 1 / Math.max(bendingStress / strength, (shearStress ?? 0) / shearStrength)
  }
  return {
    reactionStart: curve.reactionStart,
    reactionEnd: curve.reactionEnd,
    clampMoment: curve.reactionEnd === null ? curve.at(0, -1).moment : null,
    greatestMoment: moment.value,
    greatestMomentAt: moment.at,
    greatestShear: shear.value,
    deflection: sag.value,
    deflectionAt: sag.at,
    deflectionLeast: (sag.value * condition.modulus) / condition.modulusMost,
    endDeflection: end.deflection,
    endSlope: end.slope,
    weight: ownDensity(si) * (section.weightArea ?? 0) * gravity * si.length,
    loadFactor: motions[si.motion].factor,
    bendingStress,
    shearStress,
    modulus: condition.modulus,
    strength: condition.strength,
    stiffnessFactor: condition.stiffnessFactor,
    strengthFactor: condition.strengthFactor,
    creepFactor: condition.creepFactor,
    safetyFactor: margin(condition.strength, condition.shearStrength),
    safetyFactorMost: margin(condition.strengthMost, condition.shearStrengthMost),
    iterations: moment.iterations + sag.iterations,
    residual: sag.residual,
  }
}

/** Load parameter P·L²/(E·I) at which the straight-beam formula overstates a cantilever's tip drop by 5 %. */
export const linearLimit = 0.6756366714

function cautions(si: SiOf<BeamInput>, out: Beam): Caution[] {
  const section = sectionOf(si.section)
  const found = [...marginCautions(out.safetyFactor), ...conditionCautions(si)]
  if (Math.abs(out.deflection) > (linearLimit / 3) * si.length)
    found.push(
      caution(
        "bends-far",
        "caution",
        "It bends by {deflection length} on {given.length length}, so far that the straight-beam formula is off by 5 % or more: use bendingRod for a rod with one load at its tip.",
        MATTIASSON,
        { deflection: out.deflection, "given.length": si.length },
      ),
    )
  if (section.fibre !== null && si.length < 20 * section.fibre)
    found.push(
      caution(
        "short-beam",
        "note",
        "Shorter than ten times its depth: it also deflects by shear, which is not counted.",
        at(TIMOSHENKO_GERE, "section 6.9; the factor of ten is common practice"),
      ),
    )
  if (out.reactionEnd !== null && Math.min(out.reactionStart, out.reactionEnd) < 0)
    found.push(
      caution(
        "lifts-off",
        "caution",
        "A support would have to pull the beam down by {pull force}: unless it is held there it lifts off and tips.",
        at(GERE, "chapter 4 (statics of beams)"),
        { pull: -Math.min(out.reactionStart, out.reactionEnd) },
      ),
    )
  found.push(...motionCautions(si.motion))
  if (si.ownWeight && !(out.weight > 0))
    found.push(caution("weight-unknown", "note", "Its own weight is not counted: name a material and a shape, or add it as a load."))
  if (out.safetyFactor === null && out.bendingStress === null)
    found.push(
      caution(
        "stress-unknown",
        "caution",
        "No stress is worked out: give the distance to the outermost fibre. A safety factor of 3 or more is usual above people.",
        VIDOSIC,
      ),
    )
  return found
}

function check(si: SiOf<BeamInput>): Issue[] {
  const faults = [...sectionFaults(si.section, ["section"]), ...conditionFaults(si)]
  const beyond = (path: readonly (string | number)[], x: number) => {
    if (!(x <= si.length))
      faults.push(inconsistent(path, "{place length}", "a place within the length of {length length}", { place: x, length: si.length }))
  }
  if (si.span !== null) {
    if (si.support === "cantilever") faults.push(inconsistent(["span"], "a span", "no span for a cantilever"))
    beyond(["span"], si.span)
  }
  for (const [i, p] of si.forces.entries()) beyond(["forces", i, "at"], p.at)
  for (const [i, c] of si.moments.entries()) beyond(["moments", i, "at"], c.at)
  for (const [i, s] of si.spreads.entries()) {
    beyond(["spreads", i, "end"], s.end)
    if (!(s.end - s.start >= 1e-6))
      faults.push(inconsistent(["spreads", i, "end"], "{end length}", "beyond its start at {start length}", { end: s.end, start: s.start }))
  }
  return faults
}

const place = (symbol: string, label: string) => ({ kind: "length", symbol, label, min: 0, max: 100, typical: [0, 0.5] }) as const
const perLength = (symbol: string, label: string) =>
  ({ kind: "forcePerLength", symbol, label, min: -1e4, max: 1e4, typical: [0, 60] }) as const

/**
 * How far a beam sags, what it is stressed to and how near that is to its strength.
 *
 * Formula: E·I·v'''' = w with the loads added up as singularity functions; M = −E·I·v'', V = −E·I·v''', σ = |M|·c/I,
 * τ = |V|·Q/(I·b). v is the deflection (m, down), M the bending moment (N·m, sagging positive), V the shear force (N), E
 * the modulus (Pa) at the temperature (°C, default 23) and after the duration (s, default 0) of the load, I the second
 * moment (m⁴), c the outermost fibre (m). Every load is multiplied by the factor of `motion` (default `still`, 1); own
 * weight counts unless `ownWeight` is false. Ranges: the deflection is that of the softest, the safety factor that of
 * the weakest material in the published range; `deflectionLeast` and `safetyFactorMost` show the other end. Valid for
 * straight slender beams whose end drops less than about a fifth of the length, stressed elastically.
 *
 * Sources: J. M. Gere, B. J. Goodno, Mechanics of Materials, 7th ed., 2009, chapters 5 and 9 and appendix G;
 * W. H. Macaulay, Messenger of Mathematics 48, 1919, 129-130.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above the material's temperature limit
 * @example
 * ```ts
 * import { beam } from 'alula/frame'
 * const spar = beam({
 *   length: '600 mm', support: 'cantilever', section: { secondMoment: '36000 mm4' }, modulus: '2.9 GPa',
 *   forces: [{ force: '20 N', at: '600 mm' }],
 * })
 * spar.deflection // => 0.013793
 * spar.endSlope // => 0.034483
 * spar.clampMoment // => -12
 * ```
 */
export const beam: Solver<BeamInput, Beam> = /* @__PURE__ */ solver<BeamInput, Beam>(
  "beam",
  "How far a beam sags and whether it holds",
  solve,
  () => ({
    input: {
      length: { kind: "length", symbol: "L", label: "length", min: "10 mm", max: 100, typical: [0.5, 2] },
      support: {
        kind: "choice",
        label: "held",
        options: { cantilever: "clamped at its start, free at its end", simple: "resting on two supports" },
      },
      span: {
        kind: "length",
        symbol: "S_g",
        label: "distance between supports",
        min: "10 mm",
        max: 100,
        typical: [0.3, 0.5],
        default: null,
      },
      section: { kind: "group", label: "section", fields: sectionFields },
      ...conditionFields,
      forces: {
        kind: "list",
        label: "forces",
        of: {
          kind: "group",
          label: "force",
          fields: {
            force: { kind: "force", symbol: "P_i", label: "force", min: -1e4, max: 1e4, typical: [-20, 60] },
            at: place("a_i", "place"),
          },
        },
        max: 200,
        default: [],
      },
      spreads: {
        kind: "list",
        label: "spread loads",
        of: {
          kind: "group",
          label: "spread load",
          fields: {
            from: perLength("q_i", "load at its start"),
            to: perLength("q_j", "load at its end"),
            start: place("s_i", "start"),
            end: place("e_i", "end"),
          },
        },
        max: 200,
        default: [],
      },
      moments: {
        kind: "list",
        label: "moments",
        of: {
          kind: "group",
          label: "moment",
          fields: {
            moment: { kind: "moment", symbol: "C_i", label: "moment", min: -1e4, max: 1e4, typical: [-5, 5] },
            at: place("b_i", "place"),
          },
        },
        max: 200,
        default: [],
      },
      ownWeight: { kind: "flag", label: "own weight counts", default: true },
      motion: { kind: "choice", label: "handling", options: optionsFrom(motions, (key) => motions[key].label), default: "still" },
    },
    output: {
      reactionStart: { kind: "force", symbol: "R_a", label: "first support carries" },
      reactionEnd: { kind: "force", symbol: "R_b", label: "second support carries" },
      clampMoment: { kind: "moment", symbol: "M_0", label: "moment at the clamp" },
      greatestMoment: { kind: "moment", symbol: "M_x", label: "maximum moment" },
      greatestMomentAt: { kind: "length", symbol: "x_M", label: "  at" },
      greatestShear: { kind: "force", symbol: "V_x", label: "maximum shear force" },
      deflection: { kind: "length", symbol: "y_x", label: "maximum deflection" },
      deflectionAt: { kind: "length", symbol: "x_y", label: "  at" },
      deflectionLeast: { kind: "length", symbol: "y_l", label: "  stiff end of the range" },
      endDeflection: { kind: "length", symbol: "y_e", label: "deflection of the end" },
      endSlope: { kind: "angle", symbol: "theta_e", label: "slope of the end" },
      weight: { kind: "force", symbol: "W_o", label: "own weight" },
      loadFactor: { kind: "number", symbol: "k_m", label: "handling factor" },
      bendingStress: { kind: "pressure", symbol: "sigma", label: "bending stress" },
      shearStress: { kind: "pressure", symbol: "tau", label: "shear stress" },
      modulus: { kind: "pressure", symbol: "E", label: "modulus used" },
      strength: { kind: "pressure", symbol: "S", label: "strength used" },
      stiffnessFactor: { kind: "number", symbol: "f_E", label: "stiffness left, heat" },
      strengthFactor: { kind: "number", symbol: "f_S", label: "strength left, heat" },
      creepFactor: { kind: "number", symbol: "f_c", label: "stiffness factor after creep" },
      safetyFactor: { kind: "number", symbol: "n_s", label: "safety factor, minimum" },
      safetyFactorMost: { kind: "number", symbol: "n_u", label: "safety factor, maximum" },
      iterations: { kind: "number", label: "search steps" },
      residual: { kind: "angle", label: "slope left where deflection is greatest" },
    },
    example: {
      length: "900 mm",
      support: "cantilever",
      section: { outsideDiameter: "20 mm", wall: "1.5 mm" },
      material: "aluminium6061",
      forces: [
        { force: "12 N", at: "450 mm" },
        { force: "8 N", at: "300 mm" },
      ],
      spreads: [{ from: "20 N/m", to: "5 N/m", start: 0, end: "500 mm" }],
      moments: [{ moment: "1.5 N m", at: "400 mm" }],
      motion: "walking",
    },
    formulae: beamFormulae,
    sources: [at(GERE, "chapters 5 and 9, appendix G"), MACAULAY, FOOTFALL],
    check,
    cautions,
  }),
)
