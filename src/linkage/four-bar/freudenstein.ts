import { solveLinear } from "../../numeric/index.js"
import type { Angle, Length } from "../../quantity/index.js"
import {
  type Caution,
  caution,
  isNoSolution,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
  withNearest,
} from "../../solver/index.js"
import { freudensteinEquation } from "../sources.js"

/** Input of {@link freudenstein}. */
export interface FreudensteinInput {
  /** Distance between the two fixed pivots. [d; 0.01 mm to 100 m] */
  ground: Length
  /** Three angles of the input link from the line of the fixed pivots. [list of 3, each theta_2, −572.958° to 572.958°] */
  inputAngles: readonly Angle[]
  /** The angle that the output link shall have at each of them. [list of 3, each theta_4, −572.958° to 572.958°] */
  outputAngles: readonly Angle[]
}

/** Result of {@link freudenstein}. */
export interface Freudenstein {
  /** K₁ = ground over input. [K_1] */
  readonly k1: number
  /** K₂ = ground over output. [K_2] */
  readonly k2: number
  /** K₃ of Freudenstein's equation. [K_3] */
  readonly k3: number
  /** Input link; negative where it points opposite to the angle. [a; m] */
  readonly input: number
  /** Output link; negative where it points opposite to the angle. [c; m] */
  readonly output: number
  /** Coupler [b; m] */
  readonly coupler: number
  /** Assembly that reaches all three positions: `open`, `crossed`, or `none` where the linkage must be taken apart between them. [text] */
  readonly assembly: string
  /** Shortest over longest link [q; as a fraction] */
  readonly linkRatio: number
}

/** Reasons for which {@link freudenstein} refuses. */
export type FreudensteinRefusal = "no-candidate" | "undecided"

/** Hazards and limits of validity that go with an answer of {@link freudenstein}. */
export type FreudensteinCaution = "branch-defect" | "points-backwards" | "poor-proportion"

/** Input values of `count` precision points by Chebyshev's spacing between two limits. */
export function chebyshevPoints(start: number, end: number, count: number): number[] {
  return Array.from({ length: count }, (_, j) => (start + end) / 2 - ((end - start) / 2) * Math.cos(((2 * j + 1) * Math.PI) / (2 * count)))
}

function branchOf(ground: number, a: number, c: number, input: readonly number[], output: readonly number[]): string {
  const sides = input.map((t2, i) => {
    const t4 = output[i] as number
    // output pin left of the line from input pin to output pivot
    const left = (ground - a * Math.cos(t2)) * c * Math.sin(t4) + a * Math.sin(t2) * c * Math.cos(t4)
    return left >= 0 ? "open" : "crossed"
  })
  return sides.every((s) => s === sides[0]) ? (sides[0] as string) : "none"
}

type Si = SiOf<FreudensteinInput>

function solve(si: Si): Freudenstein | NoSolution<FreudensteinRefusal> {
  const out = kernel(si)
  if (!isNoSolution(out)) return out
  const knobs = (["inputAngles", "outputAngles"] as const).flatMap((list) =>
    si[list].map((angle, i) => ({ path: `${list}.${i}`, from: angle - 0.5, to: angle + 0.5 })),
  )
  return withNearest(out, freudenstein, kernel, si, {}, knobs)
}

/** Smallest size of a constant, beside the larger one: smaller asks for a link longer than any workshop. */
const LEAST_CONSTANT = 1e-9

function kernel({ ground: d, inputAngles, outputAngles }: Si): Freudenstein | NoSolution<FreudensteinRefusal> {
  const rows = inputAngles.map((t2, i) => [Math.cos(outputAngles[i] as number), -Math.cos(t2), 1])
  const right = inputAngles.map((t2, i) => Math.cos(t2 - (outputAngles[i] as number)))
  const k = solveLinear(rows, right)
  const at = Object.fromEntries(
    inputAngles.flatMap((t2, i) => [
      [`input${i + 1}`, t2],
      [`output${i + 1}`, outputAngles[i] as number],
    ]),
  )
  if (k === null)
    return refuse("undecided", "The three pairs of angles do not decide the link lengths: shift one of them.", LEAST_CONSTANT, at)
  const [k1, k2, k3] = k as [number, number, number]
  const largest = Math.max(Math.abs(k1), Math.abs(k2))
  const least = Math.min(Math.abs(k1), Math.abs(k2))
  const floor = LEAST_CONSTANT * Math.max(1, largest)
  if (least < floor)
    return refuse("no-candidate", "The three pairs of angles ask for an endless link: shift one of them.", floor - least, at)
  const [a, c] = [d / k1, d / k2]
  // a distance squared, between the pins of one of the pairs: never negative but by rounding
  const b = Math.sqrt(Math.max(0, a ** 2 + c ** 2 + d ** 2 - 2 * a * c * k3))
  const links = [d, Math.abs(a), b, Math.abs(c)]
  return {
    k1,
    k2,
    k3,
    input: a,
    output: c,
    coupler: b,
    assembly: branchOf(d, a, c, inputAngles, outputAngles),
    linkRatio: Math.min(...links) / Math.max(...links),
  }
}

function cautions(_si: SiOf<FreudensteinInput>, out: Freudenstein): Caution<FreudensteinCaution>[] {
  const found: Caution<FreudensteinCaution>[] = []
  if (out.assembly === "none")
    found.push(
      caution(
        "branch-defect",
        "warning",
        "The three positions lie in different branches: the linkage would have to be taken apart between them. Choose other angles.",
        freudensteinEquation,
      ),
    )
  if (out.input < 0 || out.output < 0)
    found.push(
      caution(
        "points-backwards",
        "note",
        "A negative length means the link points opposite to the angle asked for: add half a turn when marking out.",
        freudensteinEquation,
      ),
    )
  if (out.linkRatio < 0.1)
    found.push(
      caution(
        "poor-proportion",
        "caution",
        "The shortest link is {linkRatio ratio %} of the longest, under a tenth: small errors in it turn into large errors of angle.",
        undefined,
        { linkRatio: out.linkRatio },
      ),
    )
  return found
}

/**
 * Link lengths of a four-bar whose output takes three given angles at three input angles.
 *
 * Formula (Freudenstein): K₁·cos θ₄ − K₂·cos θ₂ + K₃ = cos(θ₂ − θ₄) for each pair, K₁ = d/a, K₂ = d/c, K₃ = (a² − b² +
 * c² + d²)/(2·a·c), with θ₂ input and θ₄ output angles from the line of the fixed pivots, d ground, a input, b coupler,
 * c output. A negative length means the link points the other way. Between the three points the output is off by what
 * `fourBar` shows; {@link chebyshevPoints} spaces them well. Exactly three pairs; whether one branch reaches them all
 * is tested and said.
 *
 * Refuses `undecided` where the pairs do not decide the lengths, `no-candidate` where they ask for an endless link.
 *
 * **Inputs**
 * - `ground`: ground, between the fixed pivots [d; 0.01 mm to 100 m]
 * - `inputAngles`: input angles [list of 3, each theta_2, −572.958° to 572.958°]
 * - `outputAngles`: output angles [list of 3, each theta_4, −572.958° to 572.958°]
 *
 * **Results**
 *
 * `k1`: K₁ [K_1]; `k2`: K₂ [K_2]; `k3`: K₃ [K_3]; `input`: input link [a; m]; `output`: output link [c; m]; `coupler`:
 * coupler [b; m]; `assembly`: branch that reaches all three [text]; `linkRatio`: shortest over longest link [q; as a
 * fraction].
 *
 * **Sources**
 * - F. Freudenstein (Trans. ASME 77): Approximate synthesis of four-bar linkages, 1955, pages 853–861, displacement
 *   equation, angles there measured the other way round (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where no linkage fits
 * @example
 * ```ts
 * import { freudenstein } from 'alula/linkage'
 * const ear = freudenstein({ ground: '100 mm', inputAngles: ['40 deg', '50 deg', '60 deg'], outputAngles: ['70 deg', '76 deg', '83 deg'] })
 * ear.input // => 0.025188
 * ear.coupler // => 0.091139
 * ```
 */
export const freudenstein: Solver<FreudensteinInput, Freudenstein, FreudensteinRefusal, FreudensteinCaution> = /* @__PURE__ */ solver<
  FreudensteinInput,
  Freudenstein,
  FreudensteinRefusal,
  FreudensteinCaution
>("freudenstein", "Link lengths that give three pairs of angles", solve, () => ({
  input: {
    ground: {
      kind: "length",
      symbol: "d",
      label: "ground, between the fixed pivots",
      min: "0.01 mm",
      max: "100 m",
      typical: ["50 mm", "200 mm"],
    },
    inputAngles: {
      kind: "list",
      label: "input angles",
      min: 3,
      max: 3,
      of: { kind: "angle", symbol: "theta_2", label: "input angle", min: -10, max: 10 },
    },
    outputAngles: {
      kind: "list",
      label: "output angles",
      min: 3,
      max: 3,
      of: { kind: "angle", symbol: "theta_4", label: "output angle", min: -10, max: 10 },
    },
  },
  output: {
    k1: { kind: "number", symbol: "K_1", label: "K₁" },
    k2: { kind: "number", symbol: "K_2", label: "K₂" },
    k3: { kind: "number", symbol: "K_3", label: "K₃" },
    input: { kind: "length", symbol: "a", label: "input link" },
    output: { kind: "length", symbol: "c", label: "output link" },
    coupler: { kind: "length", symbol: "b", label: "coupler" },
    assembly: { kind: "text", label: "branch that reaches all three" },
    linkRatio: { kind: "ratio", symbol: "q", label: "shortest over longest link", unit: "x" },
  },
  example: { ground: "100 mm", inputAngles: ["30 deg", "75 deg", "120 deg"], outputAngles: ["55 deg", "78 deg", "112 deg"] },
  formulae: [
    { symbol: "K_1", kind: "number", meaning: "ground over input", given: (_, out) => out.k1 },
    { symbol: "K_2", kind: "number", meaning: "ground over output", given: (_, out) => out.k2 },
    { symbol: "K_3", kind: "number", meaning: "third constant", given: (_, out) => out.k3 },
    ...[1, 2, 3].map((i) => ({
      left: `K_1 * cos(theta_4[${i}]) + K_3 + abs(K_1) + abs(K_2) + abs(K_3)`,
      right: `cos(theta_2[${i}] - theta_4[${i}]) + K_2 * cos(theta_2[${i}]) + abs(K_1) + abs(K_2) + abs(K_3)`,
      meaning: `Freudenstein's equation at pair ${i} (the same sum added to both sides keeps the comparison to scale)`,
      source: freudensteinEquation,
    })),
    { symbol: "a", meaning: "input link", is: "d / K_1" },
    { symbol: "c", meaning: "output link", is: "d / K_2" },
    { symbol: "b", meaning: "coupler", is: "sqrt(a^2 + c^2 + d^2 - 2 * a * c * K_3)" },
    { symbol: "q", meaning: "shortest over longest link", is: "min(abs(a), b, abs(c), d) / max(abs(a), b, abs(c), d)" },
  ],
  sources: [freudensteinEquation],
  cautions,
}))
