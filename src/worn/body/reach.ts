import type { Length, Ratio } from "../../quantity/index.js"
import { at, type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../../solver/index.js"
import { notClearance } from "../not-clearance.js"
import { adaSource } from "../sources-around.js"
import { AAOS, ANSUR, DRILLIS } from "../sources-load.js"
import { ada } from "../surroundings/data-access.js"
import { wearerFields } from "../wearer.js"
import { holdArm, lengthOf, type Vector } from "./arm.js"
import { type Handling, handParts, jointLimits, shoulderBreadth, switchForce } from "./data-reach.js"
import { statureFractions } from "./data-segments.js"

/** Input of {@link reach}. */
export interface ReachInput {
  /** Stature of the shortest wearer [H; 800 mm to 2.5 m] */
  stature: Length
  /** The switch: ahead of the shoulders' line. [x; −2 to 2 m] */
  forward: Length
  /** Out to the side of the hand that works it, from the spine; negative across the body. [y; −2 to 2 m] */
  outward: Length
  /** Above the floor [z; 0 to 4 m] */
  up: Length
  /** How it is worked [press or grip; default press] */
  handling?: Handling
  /** Part of the arm's whole reach held in reserve, for sleeves, straps and gloves. [s; 0 to 0.5; default 0.05] */
  reserve?: Ratio
}

/** Reasons for which {@link reach} can refuse. */
export type ReachRefusal = "behind-the-shoulder" | "out-of-reach" | "too-close"

/** Hazards and limits that an answer of {@link reach} can carry. */
export type ReachCaution = "arm-raised" | "not-a-clearance" | "out-of-sight" | "proportions" | "seated-helper" | "try-it-on"

/** Result of {@link reach}. */
export interface Reach {
  /** Height of the shoulder [z_s; m] */
  readonly shoulderHeight: number
  /** Distance from shoulder to switch. [D; m] */
  readonly distance: number
  /** Furthest distance worked with the reserve kept. [D_f; m] */
  readonly maxDistance: number
  /** Nearest distance, elbow bent to its limit. [D_n; m] */
  readonly minDistance: number
  /** Spare distance to the furthest. [d; m] */
  readonly distanceMargin: number
  /** Bend of the elbow; 0 straight. [beta; rad] */
  readonly elbowBend: number
  /** Lift of the upper arm from hanging down. [gamma; rad] */
  readonly armElevation: number
  /** Place of the elbow: ahead, aside and above the floor. [x_e; m] */
  readonly elbowForward: number
  /** Elbow outward [y_e; m] */
  readonly elbowOutward: number
  /** Elbow above the floor [z_e; m] */
  readonly elbowUp: number
  /** Whether the switch is in front of the shoulders' line, where it can be seen. [yes or no] */
  readonly inFront: boolean
  /** Whether someone seated who helps can reach its height. [yes or no] */
  readonly reachableSeated: boolean
}

interface Arm {
  readonly shoulder: Vector
  readonly upper: number
  readonly fore: number
  readonly furthest: number
  readonly nearest: number
}

/** Bones of the wearer, the hand stretched on from the forearm; y is out to the hand's side. */
export function armOf(si: Pick<SiOf<ReachInput>, "stature" | "handling" | "reserve">): Arm {
  const { stature } = si
  const upper = statureFractions.upperArmLength * stature
  const fore = (statureFractions.forearmLength + handParts[si.handling] * statureFractions.handLength) * stature
  return {
    shoulder: [0, (shoulderBreadth / 2) * stature, statureFractions.shoulderHeight * stature],
    upper,
    fore,
    furthest: (1 - si.reserve) * (upper + fore),
    nearest: Math.sqrt(upper ** 2 + fore ** 2 + 2 * upper * fore * Math.cos(jointLimits.elbow)),
  }
}

/** A place of the switch. */
type Place = Pick<SiOf<ReachInput>, "forward" | "outward" | "up">

/** Why the hand cannot hold a place, or null where it can. */
function fault(si: SiOf<ReachInput>, place: Place): "out-of-reach" | "too-close" | "behind-the-shoulder" | null {
  const { shoulder, upper, fore, furthest, nearest } = armOf(si)
  const hand: Vector = [place.forward - shoulder[0], place.outward - shoulder[1], place.up - shoulder[2]]
  const distance = lengthOf(hand)
  if (distance > furthest) return "out-of-reach"
  if (distance < nearest) return "too-close"
  return holdArm(hand, upper, fore).slack < 0 ? "behind-the-shoulder" : null
}

/** How far a place may lie, m: fields' limits. */
const AWAY = 2
const HIGHEST = 4
const AXES = { forward: [-AWAY, AWAY], outward: [-AWAY, AWAY], up: [0, HIGHEST] } as const

/** The smallest move of the switch along one axis, either way, that brings it where the hand can hold it; null where none does. */
function movedAlong(si: SiOf<ReachInput>, axis: keyof Place): number | null {
  const holds = (value: number) => fault(si, { ...si, [axis]: value }) === null
  const [low, high] = AXES[axis]
  const from = si[axis]
  const step = 0.01
  for (let k = 1; k * step <= high - low; k++)
    for (const way of [-1, 1]) {
      const value = from + way * k * step
      if (value < low || value > high || !holds(value)) continue
      let [out, inside] = [value - way * step, value]
      while (Math.abs(inside - out) > 1e-9) {
        const middle = (out + inside) / 2
        if (holds(middle)) inside = middle
        else out = middle
      }
      return inside
    }
  return null
}

/** Places to move the switch to, each along one axis alone: all were tried. */
function nearestHeld(si: SiOf<ReachInput>): Record<string, number> {
  const moved = (["forward", "outward", "up"] as const).map((axis) => [axis, movedAlong(si, axis)] as const)
  return Object.fromEntries(moved.filter((one): one is readonly [keyof Place, number] => one[1] !== null))
}

function solve(si: SiOf<ReachInput>): Reach | NoSolution<ReachRefusal> {
  const { shoulder, upper, fore, furthest, nearest } = armOf(si)
  const hand: Vector = [si.forward - shoulder[0], si.outward - shoulder[1], si.up - shoulder[2]]
  const distance = lengthOf(hand)
  const where = { forward: si.forward, outward: si.outward, up: si.up, distance }
  if (distance > furthest)
    return refuse(
      "out-of-reach",
      "The switch is {distance length mm} from the shoulder and this wearer works {maxDistance length mm}: bring it {shortBy length mm} closer.",
      distance - furthest,
      where,
      nearestHeld(si),
      { maxDistance: furthest },
    )
  if (distance < nearest)
    return refuse(
      "too-close",
      "The switch is {distance length mm} from the shoulder, {shortBy length mm} nearer than a bent elbow brings the hand: move it out.",
      nearest - distance,
      where,
      nearestHeld(si),
    )
  const pose = holdArm(hand, upper, fore)
  if (pose.slack < 0)
    return refuse(
      "behind-the-shoulder",
      "To get there the upper arm would have to go further behind the shoulder, or the elbow bend further back, than counted on: bring the switch forwards.",
      -pose.slack,
      where,
      nearestHeld(si),
    )
  const bend = (distance ** 2 - upper ** 2 - fore ** 2) / (2 * upper * fore)
  return {
    shoulderHeight: shoulder[2],
    distance,
    maxDistance: furthest,
    minDistance: nearest,
    distanceMargin: furthest - distance,
    // within [−1, 1] but for rounding, by the two tests above
    elbowBend: Math.acos(Math.min(1, Math.max(-1, bend))),
    armElevation: Math.acos(Math.min(1, Math.max(-1, -pose.direction[2]))),
    elbowForward: shoulder[0] + pose.elbow[0],
    elbowOutward: shoulder[1] + pose.elbow[1],
    elbowUp: shoulder[2] + pose.elbow[2],
    inFront: si.forward >= 0,
    reachableSeated: si.up >= ada.reachLow && si.up <= ada.reachHigh,
  }
}

const reachRanges = at(adaSource, "308.2.1, 308.3.1")
const oneHand = at(adaSource, "309.4")

function cautions(si: SiOf<ReachInput>, out: Reach): Caution<ReachCaution>[] {
  const found: Caution<ReachCaution>[] = [
    notClearance(
      "two stiff bones from the shoulder of an average build",
      "the body, the rig and other arms in the way, gloves, cold or tired hands, what a shaking or fallen wearer reaches, or whether either hand can do it",
      DRILLIS,
    ),
    caution(
      "try-it-on",
      "caution",
      "An emergency switch and the quick release must be worked by either hand with everything on, without looking, under the full pull of the straps, and with no more than {switchForce force N} and no tight grip or twist. Try it with the smallest wearer, and put a second switch where a helper reaches it.",
      oneHand,
      { switchForce },
    ),
  ]
  if (!out.inFront)
    found.push(
      caution(
        "out-of-sight",
        "warning",
        "The switch is behind the shoulders: it cannot be seen and is found by feel only. Bring it to the front.",
      ),
    )
  if (out.armElevation > Math.PI / 2)
    found.push(
      caution(
        "arm-raised",
        "caution",
        "The upper arm is raised above the shoulder: tiring at once, and out of the question for a switch that must be held. Put it lower.",
      ),
    )
  if (!out.reachableSeated)
    found.push(
      caution(
        "seated-helper",
        "note",
        "Someone helping from a wheelchair reaches 15 to 48 in (380 to 1220 mm) above the floor; this switch is outside that.",
        reachRanges,
      ),
    )
  if (si.stature < 1.4)
    found.push(
      caution(
        "proportions",
        "warning",
        "The proportions are those of adults; a child's arm is shorter for its stature. Measure the wearer's own reach.",
        DRILLIS,
      ),
    )
  return found
}

/**
 * Whether a switch is where the hand is.
 *
 * Formula: shoulder at half of 0.2244·H out and 0.818·H up, upper arm l_1 = 0.186·H, forearm with hand l_2 = (0.146 +
 * q·0.108)·H (H stature in m; q = 1 to press with a fingertip, 0.5 to grip). A switch at distance D is in reach when
 * √(l_1² + l_2² + 2·l_1·l_2·cos 150°) ≤ D ≤ (1 − s)·(l_1 + l_2), s the reserve (default: common practice), and the
 * upper arm need not go more than 45° behind the shoulders nor the elbow bend backwards. The elbow bends by cos β = (D²
 * − l_1² − l_2²)/(2·l_1·l_2) and is held as low as the limits let it. Places are in the standing wearer's own axes
 * (ahead of the shoulders' line, out to the hand's side from the spine, above the floor; all m). For standing adults of
 * average proportions.
 *
 * **Inputs**
 * - `stature`: stature of the shortest wearer [H; 800 mm to 2.5 m]
 * - `forward`: forward of the shoulders [x; −2 to 2 m]
 * - `outward`: out to the hand's side [y; −2 to 2 m]
 * - `up`: above the floor [z; 0 to 4 m]
 * - `handling`: how it is worked [press or grip; default press]
 * - `reserve`: reserve of reach [s; 0 to 0.5; default 0.05]
 *
 * **Results**
 *
 * `shoulderHeight`: height of the shoulder [z_s; m]; `distance`: shoulder to switch [D; m]; `maxDistance`: maximum
 * reach [D_f; m]; `minDistance`: minimum reach [D_n; m]; `distanceMargin`: distance margin [d; m]; `elbowBend`: bend
 * of the elbow [beta; rad]; `armElevation`: elevation of the upper arm [gamma; rad]; `elbowForward`: elbow forward
 * [x_e; m]; `elbowOutward`: elbow outward [y_e; m]; `elbowUp`: elbow above the floor [z_e; m]; `inFront`: in front of
 * the shoulders [yes or no]; `reachableSeated`: in reach of a seated helper [yes or no].
 *
 * **Symbols of the working**
 *
 * y_s: shoulder from the spine [m]; l_1: upper arm [m]; q: part of the hand that counts; l_2: forearm and hand [m].
 *
 * **Sources**
 * - R. Drillis, R. Contini: Body Segment Parameters, New York University report 1166-03 (reproduced by Winter, figure
 *   4.1), 1966, segment lengths as fractions of stature (not verified against the document)
 * - C. C. Gordon and others: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public files,
 *   NATICK/TR-15/007, 2014, biacromial breadth and stature, women
 * - American Academy of Orthopaedic Surgeons: Joint Handling: Method of Measuring and Recording, 1965, elbow flexion
 *   150°, shoulder horizontal extension 45° (not verified against the document)
 * - U.S. Department of Justice: ADA Standards for Accessible Design, 2010, 308.2.1, 308.3.1 (read 2026-11-28)
 * - U.S. Department of Justice: ADA Standards for Accessible Design, 2010, 309.4 (read 2026-11-28)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the switch is out of reach, too close or behind the shoulder
 * @example
 * ```ts
 * import { reach } from 'alula/worn'
 * const hip = reach({ stature: '1.58 m', forward: '0.15 m', outward: '0.25 m', up: '0.95 m' })
 * hip.distanceMargin // => 0.2796
 * hip.inFront // => true
 * ```
 */
export const reach: Solver<ReachInput, Reach, ReachRefusal, ReachCaution> = /* @__PURE__ */ solver<
  ReachInput,
  Reach,
  ReachRefusal,
  ReachCaution
>("reach", "Whether a switch is where the hand is", solve, () => ({
  input: {
    stature: { ...wearerFields.stature, label: "stature of the shortest wearer" },
    forward: { kind: "length", symbol: "x", label: "forward of the shoulders", min: -AWAY, max: AWAY, typical: [-0.1, 0.5] },
    outward: { kind: "length", symbol: "y", label: "out to the hand's side", min: -AWAY, max: AWAY, typical: [-0.1, 0.5] },
    up: { kind: "length", symbol: "z", label: "above the floor", min: 0, max: HIGHEST, typical: [0.8, 1.6] },
    handling: {
      kind: "choice",
      label: "how it is worked",
      options: { press: "pressed with a fingertip", grip: "gripped" },
      default: "press",
    },
    reserve: { kind: "ratio", symbol: "s", label: "reserve of reach", min: 0, max: 0.5, typical: [0, 0.15], default: 0.05 },
  },
  output: {
    shoulderHeight: { kind: "length", symbol: "z_s", label: "height of the shoulder" },
    distance: { kind: "length", symbol: "D", label: "shoulder to switch" },
    maxDistance: { kind: "length", symbol: "D_f", label: "maximum reach" },
    minDistance: { kind: "length", symbol: "D_n", label: "minimum reach" },
    distanceMargin: { kind: "length", symbol: "d", label: "distance margin" },
    elbowBend: { kind: "angle", symbol: "beta", label: "bend of the elbow" },
    armElevation: { kind: "angle", symbol: "gamma", label: "elevation of the upper arm" },
    elbowForward: { kind: "length", symbol: "x_e", label: "elbow forward" },
    elbowOutward: { kind: "length", symbol: "y_e", label: "elbow outward" },
    elbowUp: { kind: "length", symbol: "z_e", label: "elbow above the floor" },
    inFront: { kind: "flag", label: "in front of the shoulders" },
    reachableSeated: { kind: "flag", label: "in reach of a seated helper" },
  },
  example: { stature: "1.58 m", forward: "0.15 m", outward: "0.25 m", up: "0.95 m" },
  formulae: [
    { symbol: "z_s", meaning: "height of the shoulder", is: "0.818 * H", source: DRILLIS },
    { symbol: "y_s", kind: "length", meaning: "shoulder from the spine", is: "0.2244 / 2 * H", source: ANSUR },
    { symbol: "l_1", kind: "length", meaning: "upper arm", is: "0.186 * H", source: DRILLIS },
    { symbol: "q", kind: "number", meaning: "part of the hand that counts", given: (si) => handParts[si.handling] },
    { symbol: "l_2", kind: "length", meaning: "forearm and hand", is: "(0.146 + q * 0.108) * H", source: DRILLIS },
    { symbol: "D", meaning: "shoulder to switch", is: "sqrt(x^2 + (y - y_s)^2 + (z - z_s)^2)" },
    { symbol: "D_f", meaning: "furthest distance, the reserve kept", is: "(1 - s) * (l_1 + l_2)" },
    {
      symbol: "D_n",
      meaning: "nearest distance, elbow bent by 150°",
      is: "sqrt(l_1^2 + l_2^2 + 2 * l_1 * l_2 * cos(150 deg))",
      source: AAOS,
    },
    { symbol: "d", meaning: "spare distance", is: "D_f - D" },
    { solved: "beta", meaning: "bend of the elbow" },
    { left: "D^2", right: "l_1^2 + l_2^2 + 2 * l_1 * l_2 * cos(beta)", meaning: "the elbow's bend closes the triangle" },
    { solved: "x_e", meaning: "elbow, as low as the limits let it" },
    { solved: "y_e", meaning: "elbow, as low as the limits let it" },
    { solved: "z_e", meaning: "elbow, as low as the limits let it" },
    { left: "sqrt(x_e^2 + (y_e - y_s)^2 + (z_e - z_s)^2)", right: "l_1", meaning: "the upper arm reaches from shoulder to elbow" },
    { left: "sqrt((x - x_e)^2 + (y - y_e)^2 + (z - z_e)^2)", right: "l_2", meaning: "forearm and hand reach from elbow to switch" },
    { solved: "gamma", meaning: "lift of the upper arm" },
    { left: "l_1 + (z_s - z_e)", right: "l_1 * (1 + cos(gamma))", meaning: "the lift of the upper arm is that of its elbow" },
  ],
  sources: [DRILLIS, at(ANSUR, "biacromial breadth and stature, women"), AAOS, reachRanges, oneHand],
  cautions,
}))
