import { type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../../solver/index.js"
import { norton, nortonGrashof } from "../sources.js"
import { type FourBarLinks, linkFields } from "./fields.js"
import { longestWithin, ROUNDING } from "./pose.js"

/** Input of {@link grashof}. */
export type GrashofInput = FourBarLinks

/** Result of {@link grashof}. */
export interface Grashof {
  /** `grashof` (some link can turn fully), `non-grashof` or `change-point`. [text] */
  readonly grashofClass: string
  /** `crank-rocker`, `rocker-crank`, `double-crank`, `double-rocker`, `triple-rocker` or `change point`. [text] */
  readonly linkageType: string
  /** Whether the input link can turn through a whole turn. [yes or no] */
  readonly inputTurns: boolean
  /** Whether the output link can turn through a whole turn. [yes or no] */
  readonly outputTurns: boolean
  /** Sum of the two middle links less shortest and longest; positive where some link turns fully. [S; m] */
  readonly changePointMargin: number
  /** By how much the longest link is shorter than the three others together. [S_c; m] */
  readonly closureMargin: number
}

/** Reasons for which {@link grashof} refuses. */
export type GrashofRefusal = "cannot-close"

/** Hazards and limits of validity that go with an answer of {@link grashof}. */
export type GrashofCaution = "near-change-point"

function solve({ ground: d, input: a, coupler: b, output: c }: SiOf<GrashofInput>): Grashof | NoSolution<GrashofRefusal> {
  const total = d + a + b + c
  const longest = Math.max(d, a, b, c)
  const shortest = Math.min(d, a, b, c)
  const closureMargin = total - 2 * longest
  if (closureMargin < -ROUNDING * total)
    return refuse(
      "cannot-close",
      "The longest link is {shortBy length} longer than the three others together.",
      -closureMargin,
      { longest, others: total - longest },
      longestWithin({ ground: d, input: a, coupler: b, output: c }),
    )
  const changePointMargin = total - 2 * (shortest + longest)
  const isChange = Math.abs(changePointMargin) <= ROUNDING * total
  const isGrashof = changePointMargin > 0
  // a link turns fully when the triangle of the other two closes at both ends of its reach
  const turns = (link: number, far: number) =>
    Math.abs(d - link) >= Math.abs(b - far) - ROUNDING * total && d + link <= b + far + ROUNDING * total
  const kind = !isGrashof
    ? "triple-rocker"
    : shortest === a
      ? "crank-rocker"
      : shortest === c
        ? "rocker-crank"
        : shortest === d
          ? "double-crank"
          : "double-rocker"
  return {
    grashofClass: isChange ? "change-point" : isGrashof ? "grashof" : "non-grashof",
    linkageType: isChange ? "change point" : kind,
    inputTurns: turns(a, c),
    outputTurns: turns(c, a),
    changePointMargin,
    closureMargin,
  }
}

function cautions(si: SiOf<GrashofInput>, out: Grashof): Caution<GrashofCaution>[] {
  const total = si.ground + si.input + si.coupler + si.output
  if (Math.abs(out.changePointMargin) > 0.01 * total) return []
  return [
    caution(
      "near-change-point",
      "caution",
      "Shortest and longest link together are only {changePointMargin length} off the sum of the two others, within 1 % of all four: with real play in the pins the links can pass through a straight line and come out the other way round.",
      nortonGrashof,
      { changePointMargin: out.changePointMargin },
    ),
  ]
}

/**
 * Class of a four-bar linkage by Grashof's condition, and which links can turn fully.
 *
 * Formula: S = (sum of all four links) − 2·(shortest + longest); S > 0 Grashof, S < 0 not, S = 0 change
 * point. The input (a) turns fully when |d − a| ≥ |b − c| and d + a ≤ b + c, the output (c) when
 * |d − c| ≥ |b − a| and d + c ≤ b + a; d is the ground, b the coupler (all m). Valid for rigid links
 * joined by pins without play.
 *
 * Refuses `cannot-close` where the longest link is longer than the three others together.
 *
 * **Inputs**
 * - `ground`: ground, between the fixed pivots [d; 0.01 mm to 100 m]
 * - `input`: input link [a; 0.01 mm to 100 m]
 * - `coupler`: coupler [b; 0.01 mm to 100 m]
 * - `output`: output link [c; 0.01 mm to 100 m]
 *
 * **Results**
 *
 * `grashofClass`: class [text]; `linkageType`: type [text]; `inputTurns`: input turns fully [yes or no];
 * `outputTurns`: output turns fully [yes or no]; `changePointMargin`: margin to the change point [S; m];
 * `closureMargin`: margin of assembly [S_c; m].
 *
 * **Symbols of the working**
 *
 * T: all links together [m]; l_max: longest link [m]; l_min: shortest link [m].
 *
 * **Sources**
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapters 2 to 8 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the links cannot be joined at all
 * @example
 * ```ts
 * import { grashof } from 'alula/linkage'
 * const kind = grashof({ ground: '100 mm', input: '40 mm', coupler: '120 mm', output: '80 mm' })
 * kind.linkageType // => 'crank-rocker'
 * kind.inputTurns // => true
 * ```
 */
export const grashof: Solver<GrashofInput, Grashof, GrashofRefusal, GrashofCaution> = /* @__PURE__ */ solver<
  GrashofInput,
  Grashof,
  GrashofRefusal,
  GrashofCaution
>("grashof", "Which links of a four-bar can turn fully", solve, () => ({
  input: linkFields,
  output: {
    grashofClass: { kind: "text", label: "class" },
    linkageType: { kind: "text", label: "type" },
    inputTurns: { kind: "flag", label: "input turns fully" },
    outputTurns: { kind: "flag", label: "output turns fully" },
    changePointMargin: { kind: "length", symbol: "S", label: "margin to the change point" },
    closureMargin: { kind: "length", symbol: "S_c", label: "margin of assembly" },
  },
  example: { ground: "100 mm", input: "40 mm", coupler: "120 mm", output: "80 mm" },
  formulae: [
    { symbol: "T", kind: "length", meaning: "all links together", is: "a + b + c + d" },
    { symbol: "l_max", kind: "length", meaning: "longest link", is: "max(a, b, c, d)" },
    { symbol: "l_min", kind: "length", meaning: "shortest link", is: "min(a, b, c, d)" },
    { symbol: "S_c", meaning: "the three shorter links together less the longest", is: "T - 2 * l_max" },
    {
      symbol: "S",
      meaning: "margin of Grashof's condition",
      is: "T - 2 * (l_min + l_max)",
      source: nortonGrashof,
    },
  ],
  sources: [norton],
  cautions,
}))
