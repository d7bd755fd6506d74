import type { Charge, Current, Time } from "../quantity/index.js"
import { type Caution, caution, type Issue, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import { LEAD_EXPONENTS, MEASURED_RUNS, RATE_LAW } from "./sources.js"

/** Input of {@link peukert}. Give the exponent, or a second rated point from which it follows. */
export interface PeukertInput {
  /** Rated capacity [Q; 1 mAh to 100000 Ah] */
  capacity: Charge
  /** Time the capacity is rated for: 20 h for most lead-acid batteries. [H; 1 min to 1000 h; default 20 h] */
  ratedDuration?: Time
  /** Current drawn. [I; 1 mA to 100000 A] */
  current: Current
  /** Peukert exponent [k_0; 1 to 3; optional] */
  exponent?: number | null
  /** Capacity at another rate, from the same sheet. [Q_2; 1 mAh to 100000 Ah; optional] */
  secondCapacity?: Charge | null
  /** Time that capacity is rated for. [t_2; 1 min to 1000 h; optional] */
  secondDuration?: Time | null
}

/** Hazards and limits that an answer of {@link peukert} can carry. */
export type PeukertCaution = "below-rated" | "exponent-not-constant" | "lead-only"

/** Result of {@link peukert}. */
export interface Peukert {
  /** Duration until empty [t; s] */
  readonly duration: number
  /** Delivered charge [q; C] */
  readonly deliveredCharge: number
  /** Peukert exponent [k] */
  readonly exponent: number
  /** Current at which the rated capacity holds. [I_r; A] */
  readonly ratedCurrent: number
  /** Current against the rated one. [x; as a fraction] */
  readonly currentRatio: number
  /** What capacity over current would promise. [t_s; s] */
  readonly simpleDuration: number
}

type Si = SiOf<PeukertInput>

/** Exponent from two rated capacities: k = ln(t₁/t₂)/ln(I₂/I₁), I = Q/t. */
export function peukertExponent(firstCapacity: number, firstTime: number, secondCapacity: number, secondTime: number): number {
  return Math.log(firstTime / secondTime) / Math.log(secondCapacity / secondTime / (firstCapacity / firstTime))
}

function solve(si: Si): Peukert {
  const { capacity, ratedDuration, current } = si
  const exponent = si.exponent ?? peukertExponent(capacity, ratedDuration, si.secondCapacity as number, si.secondDuration as number)
  const ratedCurrent = capacity / ratedDuration
  const currentRatio = current / ratedCurrent
  const duration = ratedDuration * currentRatio ** -exponent
  return { duration, deliveredCharge: current * duration, exponent, ratedCurrent, currentRatio, simpleDuration: capacity / current }
}

function check(si: Si): Issue[] {
  if (si.exponent !== null) return []
  const [time, capacity] = [si.secondDuration as number, si.secondCapacity as number]
  const exponent =
    Math.abs(Math.log(time / si.ratedDuration)) > 0.01 ? peukertExponent(si.capacity, si.ratedDuration, capacity, time) : Number.NaN
  return exponent >= 1 && exponent <= 3
    ? []
    : [
        inconsistent(
          ["secondCapacity"],
          "points that give no exponent from 1 to 3",
          "a clearly shorter time with a smaller capacity, from the same sheet",
        ),
      ]
}

function cautions(si: Si, out: Peukert): Caution<PeukertCaution>[] {
  const found: Caution<PeukertCaution>[] = []
  if (out.exponent > 1.05)
    found.push(
      caution(
        "lead-only",
        "note",
        "An exponent of {exponent} is for lead-acid and alkaline cells; lithium cells measured 1.006 to 1.025: what falls there is the voltage, so use runtime.",
        MEASURED_RUNS,
        { exponent: out.exponent },
      ),
    )
  if (out.currentRatio < 1)
    found.push(
      caution(
        "below-rated",
        "caution",
        "Below the rated current the law promises {deliveredCharge charge Ah}, more than the battery holds: count on no more than the rated {given.capacity charge Ah}.",
        LEAD_EXPONENTS,
        { deliveredCharge: out.deliveredCharge, "given.capacity": si.capacity },
      ),
    )
  if (out.currentRatio > 20)
    found.push(
      caution(
        "exponent-not-constant",
        "caution",
        "At {currentRatio} times the rated current the exponent is another: one datasheet gave 1.08 between 20 h and 10 h, and 1.21 between 20 h and 1 h. Take it from rates near yours.",
        LEAD_EXPONENTS,
        { currentRatio: out.currentRatio },
      ),
    )
  return found
}

/**
 * How much sooner a lead-acid (or alkaline) battery is empty at a higher current.
 *
 * Formula: t = H·(C/(I·H))^k, with C the rated capacity for the time H, I the current and k the Peukert exponent, given
 * or from a second rated point: k = ln(H/t₂)/ln(I₂·H/C), I₂ = Q₂/t₂. At the rated current C/H the time is H. The form t
 * = C/I^k holds only where C is the capacity at 1 A (that is ratedTime = C/1 A); with a 20 h capacity it is wrong by a
 * quarter or more.
 *
 * Valid between the rates the exponent was taken from, at 20 to 25 °C, constant current.
 *
 * **Inputs**
 * - `capacity`: rated capacity [Q; 1 mAh to 100000 Ah]
 * - `ratedDuration`: rated duration [H; 1 min to 1000 h; default 20 h]
 * - `current`: current [I; 1 mA to 100000 A]
 * - `exponent`: Peukert exponent [k_0; 1 to 3; optional]
 * - `secondCapacity`: capacity at another rate [Q_2; 1 mAh to 100000 Ah; optional]
 * - `secondDuration`: duration at that rate [t_2; 1 min to 1000 h; optional]
 * - exactly one of `exponent` and `secondCapacity` with `secondDuration`
 *
 * **Results**
 *
 * `duration`: duration until empty [t; s]; `deliveredCharge`: delivered charge [q; C]; `exponent`: Peukert exponent
 * [k]; `ratedCurrent`: rated current [I_r; A]; `currentRatio`: current over rated current [x; as a fraction];
 * `simpleDuration`: simple duration: capacity over current [t_s; s].
 *
 * **Sources**
 * - W. Peukert (Elektrotechnische Zeitschrift): Über die Abhängigkeit der Kapazität von der Entladestromstärke bei
 *   Bleiakkumulatoren, 1897 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { peukert } from 'alula/pack'
 * const run = peukert({ capacity: '100 Ah', ratedDuration: '20 h', current: '10 A', exponent: 1.2 })
 * run.duration / 3600 // => 8.706
 * run.deliveredCharge / 3600 // => 87.06
 * ```
 */
export const peukert: Solver<PeukertInput, Peukert, never, PeukertCaution> = /* @__PURE__ */ solver<
  PeukertInput,
  Peukert,
  never,
  PeukertCaution
>("peukert", "How long a lead-acid battery lasts at a current other than its rated one", solve, () => ({
  input: {
    capacity: { kind: "charge", symbol: "Q", label: "rated capacity", min: "1 mAh", max: "100000 Ah", typical: ["1 Ah", "200 Ah"] },
    ratedDuration: {
      kind: "time",
      symbol: "H",
      label: "rated duration",
      min: "1 min",
      max: "1000 h",
      typical: ["5 h", "100 h"],
      default: "20 h",
    },
    current: { kind: "current", symbol: "I", label: "current", min: "1 mA", max: "100000 A", typical: [0.1, 50] },
    exponent: { kind: "number", symbol: "k_0", label: "Peukert exponent", min: 1, max: 3, typical: [1, 1.6], default: null },
    secondCapacity: {
      kind: "charge",
      symbol: "Q_2",
      label: "capacity at another rate",
      min: "1 mAh",
      max: "100000 Ah",
      typical: ["1 Ah", "100 Ah"],
      default: null,
    },
    secondDuration: {
      kind: "time",
      symbol: "t_2",
      label: "duration at that rate",
      min: "1 min",
      max: "1000 h",
      typical: ["1 h", "10 h"],
      default: null,
    },
  },
  output: {
    duration: { kind: "time", symbol: "t", label: "duration until empty" },
    deliveredCharge: { kind: "charge", symbol: "q", label: "delivered charge" },
    exponent: { kind: "number", symbol: "k", label: "Peukert exponent" },
    ratedCurrent: { kind: "current", symbol: "I_r", label: "rated current" },
    currentRatio: { kind: "ratio", symbol: "x", label: "current over rated current" },
    simpleDuration: { kind: "time", symbol: "t_s", label: "simple duration: capacity over current" },
  },
  example: { capacity: "40 Ah", current: "10 A", secondCapacity: "34 Ah", secondDuration: "5 h" },
  formulae: [
    { symbol: "I_r", meaning: "rated current", is: "Q / H" },
    { symbol: "k", meaning: "exponent as given", is: "k_0", when: "has_exponent" },
    { symbol: "k", meaning: "exponent from two rated points", is: "log(H / t_2) / log(Q_2 / t_2 / I_r)", when: "not has_exponent" },
    { symbol: "x", meaning: "current against the rated one", is: "I / I_r" },
    { symbol: "t", meaning: "time until empty", is: "H * x^(-k)" },
    { symbol: "q", meaning: "charge delivered", is: "I * t" },
    { symbol: "t_s", meaning: "capacity over current", is: "Q / I" },
  ],
  sources: [RATE_LAW],
  either: [{ exactlyOne: ["exponent", ["secondCapacity", "secondDuration"]] }],
  check,
  cautions,
}))
