import { formatNumber, formatQuantity } from "../../../quantity/index.js"
import {
  type Caution,
  caution,
  commonPractice,
  isNoSolution,
  type NoSolution,
  type SiOf,
  type Solver,
  solver,
} from "../../../solver/index.js"
import { checkMove } from "../../document/check.js"
import type { RigDocument } from "../../document/document.js"
import { demoRig } from "../../document/example.js"
import { rigFields, rigRules } from "../../document/fields.js"
import { BLADE_FUSES, MACHINERY_SAFETY, MOTION, MOTORS, PORTABLE_CELLS, SCREWS } from "../../sources.js"
import { solveMove } from "../move.js"
import { type Move, moveFields, raiseDirection, summary, type WaterfallStep, wholeMove } from "../summary.js"
import { ends, fineGrid, slowestOf } from "./working.js"

const seconds = (time: number) => formatQuantity("time", time, "s")

type Si = SiOf<RigDocument>

/** Result of {@link moveTime}. */
export interface MoveTime {
  /** Angle the arms swing through. [theta_s; rad] */
  readonly swing: number
  /** Time up [t_up; s] */
  readonly raiseTime: number
  /** Time down [t_down; s] */
  readonly lowerTime: number
  /** Up and down again. [t_both; s] */
  readonly cycleTime: number
  /** Raise time over the time the rated speed would take. [q; as a fraction] */
  readonly slowdown: number
  /** Stage time less up and down; null without a brief. [t_left; s] */
  readonly stageMargin: number | null
  /** What costs the raise most seconds. [text] */
  readonly limit: string
  /** One sentence: how long and why. [text] */
  readonly why: string
  /** Raise [group] */
  readonly raise: Move
  /** Lower [group] */
  readonly lower: Move
  /** Winding resistance; back-EMF constant; force constant; friction current. [R; Ω] */
  readonly resistance: number
  /** Back-EMF constant [k_V; V s/m] */
  readonly backEmfConstant: number
  /** Force constant [k_F; N/A] */
  readonly forceConstant: number
  /** Friction current [I_f; A] */
  readonly frictionCurrent: number
  /** Estimated error of both times together. [s] */
  readonly errorEstimate: number
  /** Points evaluated [number] */
  readonly evaluations: number
}

const reasons: Readonly<Record<string, string>> = {
  "without load, at rated voltage": "the actuator's own speed",
  "the load, at rated voltage": "the load itself",
  "converter's own output voltage": "the converter's output voltage",
  "source voltage and sag": "the source's voltage and its sag",
  "wires and contacts": "wires and contacts",
  "converter limit": "the converter's or bank's current limit",
  "source limit": "the source's current limit",
}

function solve(rig: Si): MoveTime | NoSolution {
  const { model, chain } = wholeMove(rig)
  const up = raiseDirection(rig)
  const raised = solveMove(model, up)
  if (isNoSolution(raised)) return raised
  const lowered = solveMove(model, up === 1 ? -1 : 1)
  if (isNoSolution(lowered)) return lowered
  const raise = summary(rig, model, chain, raised, up)
  const lower = summary(rig, model, chain, lowered, up === 1 ? -1 : 1)
  const { actuator } = model.arms
  const rated = actuator.stroke / actuator.ratedSpeed
  const [own, ...later] = raise.waterfall as [WaterfallStep, ...WaterfallStep[]]
  const costly = later.reduce((a, b) => (b.added > a.added ? b : a), { ...own, added: 0 })
  // when nothing adds a tenth to the unloaded time, the actuator itself sets the pace
  const isOwnPace = !(costly.added > 0.1 * own.time)
  const limit = (isOwnPace ? reasons[own.label] : reasons[costly.label]) as string
  const stageTime = rig.brief?.stageTime ?? null
  const cycleTime = raise.time + lower.time
  return {
    swing: Math.abs((raised.points[raised.points.length - 1]?.angle ?? 0) - (raised.points[0]?.angle ?? 0)),
    raiseTime: raise.time,
    lowerTime: lower.time,
    cycleTime,
    slowdown: raise.time / rated,
    stageMargin: stageTime === null ? null : stageTime - cycleTime,
    limit,
    why: isOwnPace
      ? `The raise takes ${seconds(raise.time)}, close to the actuator's own pace.`
      : `The raise takes ${seconds(raise.time)}, ${formatNumber(raise.time / rated)} times the time at rated speed; most of the delay is ${limit} (${seconds(costly.added)}).`,
    raise,
    lower,
    resistance: model.constants.windingResistance,
    backEmfConstant: model.constants.backEmfConstant,
    forceConstant: model.constants.forceConstant,
    frictionCurrent: model.constants.frictionCurrent,
    errorEstimate: raised.error + lowered.error,
    evaluations: raised.evaluations + lowered.evaluations,
  }
}

function cautions(rig: Si, out: MoveTime): Caution[] {
  const arms = rig.hinged as NonNullable<Si["hinged"]>
  const found: Caution[] = [
    caution(
      "pinch",
      "warning",
      "The arms and actuators close with the force shown: keep fingers, hair and children clear, and fit a switch in reach that stops them.",
      MACHINERY_SAFETY,
    ),
  ]
  const held = Math.max(...out.raise.curve.map((p) => Math.abs(p.force)))
  if (held > arms.actuator.holdingForce)
    found.push(
      caution(
        "falls-unpowered",
        "warning",
        "The rod must hold up to {held force} and its stated holding force is {given.hinged.actuator.holdingForce force}: the arms may come down by themselves, or run away when lowering; the lowering time shown assumes they do not.",
        commonPractice,
        { held, "given.hinged.actuator.holdingForce": arms.actuator.holdingForce },
      ),
    )
  if (rig.pack)
    found.push(
      caution(
        "cells",
        "warning",
        "Cells feed a short circuit with hundreds of amperes: fuse at the pack, protection circuit, no damaged cells, no charging below 0 °C or unattended.",
        PORTABLE_CELLS,
      ),
    )
  if (rig.bank && out.raise.limitedShare > 0)
    found.push(
      caution(
        "bank-may-switch-off",
        "caution",
        "A bank at its limit may switch off instead of holding the current: try it before relying on it.",
      ),
    )
  if (out.raise.inertiaShare > 0.05 || out.lower.inertiaShare > 0.05)
    found.push(
      caution(
        "inertia",
        "caution",
        "At the fastest point the arms carry {inertiaShare ratio %} of the energy moved as motion: the quasi-static time is no longer good there.",
        MOTION,
        { inertiaShare: Math.max(out.raise.inertiaShare, out.lower.inertiaShare) },
      ),
    )
  if (rig.wiring && rig.wiring.fuseRating === null)
    found.push(caution("no-fuse", "warning", "No fuse is named: put one at the source, sized for the wire.", BLADE_FUSES))
  return found
}

/**
 * How long the arms take up and down, and where the seconds go.
 *
 * Quasi-static: at each rod position s the arm angle θ follows from the linkage; the force against the motion from
 * virtual work, F = ±(dU/dθ)/(dL/dθ) + M_f/|dL/dθ| (U: energy of every moving mass and spring, J; L: rod length, m;
 * M_f: hinge friction moment, N·m); the current from the force, I = I₀ + F/k_F; the voltage V from the supply chain at
 * n·I (cells behind their resistance, wires, contacts, switch, fuse, converter; where an input limit binds, V·n·I =
 * η·P_in,max); the speed from the motor, v = (V − I·R)/k_V; the time t = ∫ ds/v by adaptive quadrature, split where a
 * limit starts to bind. R, k_V and k_F follow from the datasheet's no-load and rated points. A helping load is taken up
 * by the screw's friction: the current then stays at I₀.
 *
 * Valid while the arms' energy of motion is small against the energy moved (a caution says when it is
 * not) and the windings are near the datasheet's temperature. The move is refused (`insufficient-force`) where v ≤ 0
 * anywhere, with the pose, the force needed and the force available; `cannot-close` and `dead-point` where
 * the linkage does not allow it; `no-supply` where the converter gives nothing.
 *
 * **Inputs**
 * - `wearer`: wearer [group; optional]
 * - `mount`: where the mechanism sits [group; optional]
 * - `parts`: parts carried, moving masses left out [list of 0 to 300; default none]
 * - `spar`: spar of one arm [group; optional]
 * - `pin`: hinge pin [group; optional]
 * - `formed`: parts formed hot [list of 0 to 60; default none]
 * - `straps`: straps [group; optional]
 * - `schedule`: the day's wearing [group; optional]
 * - `heat`: heat [group; optional]
 * - `wind`: wind on one arm [group; optional]
 * - `stance`: stance [group; optional]
 * - `venue`: where it has to go [group; optional]
 * - `reach`: switch [group; optional]
 * - `pinch`: fixed things the arm passes [group; optional]
 * - `contact`: if an arm strikes somebody [group; optional]
 * - `day`: the day on one charge [group; optional]
 * - `duty`: duty of the actuators [group; optional]
 * - `flaps`: servo-driven flaps [group; optional]
 * - `scissor`: scissor array [group; optional]
 * - `lights`: light string [group; optional]
 * - `starting`: start of the actuators [group; optional]
 * - `budget`: what may be spent [group; optional]
 * - `version`: document version [n_doc; whole 1 to 1]
 * - `name`: name of the rig [text of 1 to 100 characters]
 * - `note`: note [text of 0 to 5000 characters; default empty]
 * - `hinged`: arms on hinges [group; optional]
 * - `pack`: cell pack [group; optional]
 * - `bank`: USB battery bank [group; optional]
 * - `converter`: converter [group; optional]
 * - `wiring`: wires, switch and fuse [group; optional]
 * - `brief`: what is wanted [group; optional]
 * - at most one of `pack` and `bank`
 *
 * **Results**
 *
 * `swing`: swing [theta_s; rad]; `raiseTime`: time up [t_up; s]; `lowerTime`: time down [t_down; s]; `cycleTime`: up
 * and down [t_both; s]; `slowdown`: raise against rated speed [q; as a fraction]; `stageMargin`: left of the stage
 * time [t_left; s]; `limit`: costs most [text]; `why`: why [text]; `raise`: raise [group]; `lower`: lower [group];
 * `resistance`: winding resistance [R; Ω]; `backEmfConstant`: back-EMF constant [k_V; V s/m]; `forceConstant`: force
 * constant [k_F; N/A]; `frictionCurrent`: friction current [I_f; A]; `errorEstimate`: estimated error of the times
 * [s]; `evaluations`: points evaluated [number].
 *
 * **Symbols of the working**
 *
 * L_a: retracted length of the rod [m]; L_b: extended length of the rod [m]; psi_a: angle at the hinge between the
 * pivots, retracted [rad]; psi_b: angle at the hinge between the pivots, extended [rad]; D: hinge to fixed pivot [m];
 * h_u: widths of the steps up [m]; v_u: speeds at the steps up [m/s]; h_d: widths of the steps down [m]; v_d: speeds
 * at the steps down [m/s]; I_m: current at the slowest point of the raise [A]; V_m: voltage there [V]; v_m: speed
 * there [m/s].
 *
 * **Sources**
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th edition, 2019, chapter 3 (brushed motor: V = E + I·R, E ∝
 *   speed, torque ∝ current) (not verified against the document)
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 11th edition, 2020, chapter 8 (power
 *   screws) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the document
 * @throws NoSolutionError stall, dead point, open linkage, no supply
 * @example
 * ```ts
 * import { moveTime } from 'alula/rig'
 * const move = moveTime(moveTime.example)
 * move.raise.limitedBy // => 'none'
 * move.raiseTime > 10 // => true
 * ```
 */
export const moveTime: Solver<RigDocument, MoveTime> = /* @__PURE__ */ solver<RigDocument, MoveTime>(
  "moveTime",
  "How long the arms take up and down, and where the seconds go",
  solve,
  () => ({
    input: rigFields,
    either: rigRules,
    output: {
      swing: { kind: "angle", symbol: "theta_s", label: "swing" },
      raiseTime: { kind: "time", symbol: "t_up", label: "time up" },
      lowerTime: { kind: "time", symbol: "t_down", label: "time down" },
      cycleTime: { kind: "time", symbol: "t_both", label: "up and down" },
      slowdown: { kind: "ratio", symbol: "q", label: "raise against rated speed", unit: "x" },
      stageMargin: { kind: "time", symbol: "t_left", label: "left of the stage time" },
      limit: { kind: "text", label: "costs most" },
      why: { kind: "text", label: "why" },
      raise: { kind: "group", label: "raise", fields: moveFields("up") },
      lower: { kind: "group", label: "lower", fields: moveFields("down") },
      resistance: { kind: "resistance", symbol: "R", label: "winding resistance" },
      backEmfConstant: { kind: "speedVoltageConstant", symbol: "k_V", label: "back-EMF constant" },
      forceConstant: { kind: "forceConstant", symbol: "k_F", label: "force constant" },
      frictionCurrent: { kind: "current", symbol: "I_f", label: "friction current" },
      errorEstimate: { kind: "time", label: "estimated error of the times" },
      evaluations: { kind: "number", label: "points evaluated" },
    },
    example: demoRig,
    formulae: [
      { symbol: "I_f", meaning: "friction current", is: "I_0" },
      { symbol: "k_V", meaning: "back-EMF constant from the two datasheet points", is: "V_r * (I_r - I_0) / (v_0 * I_r - v_r * I_0)" },
      { symbol: "R", meaning: "winding resistance from the two datasheet points", is: "V_r * (v_0 - v_r) / (v_0 * I_r - v_r * I_0)" },
      { symbol: "k_F", meaning: "force constant from the two datasheet points", is: "F_r / (I_r - I_0)" },
      { symbol: "L_a", kind: "length", meaning: "retracted length of the rod", given: (si) => ends(si)[0].length },
      { symbol: "L_b", kind: "length", meaning: "extended length of the rod", given: (si) => ends(si)[1].length },
      { symbol: "psi_a", kind: "angle", meaning: "angle at the hinge between the pivots, retracted", given: (si) => ends(si)[0].angle },
      { symbol: "psi_b", kind: "angle", meaning: "angle at the hinge between the pivots, extended", given: (si) => ends(si)[1].angle },
      { symbol: "D", kind: "length", meaning: "hinge to fixed pivot", is: "sqrt((x_h - x_a)^2 + (y_h - y_a)^2)" },
      { left: "D^2 + r_p^2 - 2 * D * r_p * cos(psi_a)", right: "L_a^2 + e^2", meaning: "the triangle closes, retracted" },
      { left: "D^2 + r_p^2 - 2 * D * r_p * cos(psi_b)", right: "L_b^2 + e^2", meaning: "the triangle closes, extended" },
      { symbol: "theta_s", meaning: "swing", is: "abs(psi_b - psi_a)" },
      { solved: "t_up", meaning: "time up: the sum of ds/v over the stroke" },
      { symbol: "h_u", kind: "length", meaning: "widths of the steps up", given: (si) => fineGrid(si, true).widths },
      { symbol: "v_u", kind: "speed", meaning: "speeds at the steps up", given: (si) => fineGrid(si, true).speeds },
      { left: "sum(h_u ./ v_u)", right: "t_up", meaning: "the steps add up to the time up" },
      { solved: "t_down", meaning: "time down" },
      { symbol: "h_d", kind: "length", meaning: "widths of the steps down", given: (si) => fineGrid(si, false).widths },
      { symbol: "v_d", kind: "speed", meaning: "speeds at the steps down", given: (si) => fineGrid(si, false).speeds },
      { left: "sum(h_d ./ v_d)", right: "t_down", meaning: "the steps add up to the time down" },
      { symbol: "I_m", kind: "current", meaning: "current at the slowest point of the raise", given: (si) => slowestOf(si).current },
      { symbol: "V_m", kind: "voltage", meaning: "voltage there", given: (si) => slowestOf(si).voltage },
      { symbol: "v_m", kind: "speed", meaning: "speed there", given: (si) => slowestOf(si).speed },
      { left: "I_m * R + k_V * v_m", right: "V_m", meaning: "the motor's equation holds there" },
      { symbol: "t_both", meaning: "up and down", is: "t_up + t_down" },
      { symbol: "q", meaning: "raise against the time at rated speed", is: "t_up * v_r / S" },
      { symbol: "t_left", meaning: "left of the stage time", is: "t_stage - t_both", when: "has_stageTime" },
    ],
    sources: [MOTORS, SCREWS],
    check: checkMove,
    cautions,
  }),
)
