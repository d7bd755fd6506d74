// The rig's verbs over a set of members: ours, and those that a library user adds.
import {
  type AnyFields,
  type Caution,
  caution,
  commonPractice,
  type Fields,
  type Issue,
  issue,
  type SiOf,
  type Solver,
  solver,
} from "../../solver/index.js"
import { assessCautions, assessment, assessmentOutput, findingsOf, type Judgement, type RigAssessment } from "../check/assess.js"
import type { CheckVerdict } from "../check/finding.js"
import { drives } from "../drives/index.js"
import { mechanisms } from "../mechanisms/index.js"
import { makePerform } from "../perform/index.js"
import type { Perform, PerformCaution, PerformInput, PerformRefusal } from "../perform/types.js"
import { fallsUnpowered } from "../run/falls.js"
import { holdingEffort } from "../run/holding.js"
import { type MotionModel, standing } from "../run/motion-model.js"
import { rateGrid, solveMove } from "../run/move.js"
import { type Move, type MoveCaution, type MoveInput, type MoveRefusal, moveOutput } from "../run/move-types.js"
import { type QuickMove, quickMoveOf } from "../run/quick-move.js"
import { assembled } from "../run/situation.js"
import { standsFor } from "../run/slowest.js"
import { BLADE_FUSES, EACH_CHECK, MACHINERY_SAFETY, MOTION, MOTORS, PORTABLE_CELLS, SCREWS } from "../sources.js"
import { transmissions } from "../transmissions/index.js"
import type { Rig, RigDrive, RigMechanism, RigTransmission, Typed } from "./document.js"
import { exampleRig } from "./example.js"
import { type RigSi, rigFaults } from "./faults.js"
import { type Members, rigFields } from "./fields.js"
import { withMembers } from "./kit-members.js"
import { readDocument } from "./read.js"

type Si = RigSi & { readonly motion: string | null }

/** A member, known by its type and the document part that it carries. */
export interface Carrying {
  readonly type: string
  readonly document?: Typed
}

/** The document parts of a list of members. */
export type PartsOf<L extends readonly Carrying[]> = NonNullable<L[number]["document"]>

/** The rig's verbs. */
export interface RigKit<D extends Typed, T extends Typed, M extends Typed> {
  /** How long a motion takes out and back, how hard it works, and where the seconds go. */
  readonly move: Solver<MoveInput<D, T, M>, Move, MoveRefusal, MoveCaution>
  /**
   * Reads a document from JSON text, which may carry `//` comments, or from data, brings one of version 1 to version 2, and
   * checks every field and name; what was written `'1 1/2 in'` stays so.
   *
   * @throws InputError naming every fault
   */
  read(source: unknown): Rig<D, T, M>
  /**
   * A motion out and back calculated fast, for those who try thousands: on a document already read (`move.read`), to about
   * 1e-9, or `rough` to about 1e-4, relative; null where something stops it.
   */
  quickMove(
    rig: SiOf<MoveInput<D, T, M>>,
    options?: { readonly rough?: boolean },
  ): { readonly out: QuickMove; readonly back: QuickMove } | null
  /** What happens on stage, second by second, with everything moving at once. */
  readonly perform: Solver<PerformInput<D, T, M>, Perform, PerformRefusal, PerformCaution>
  /** Whether the whole rig does what is wanted, check by check, worst first. */
  readonly assess: Solver<Rig<D, T, M>, RigAssessment>
}

function faults(members: Members, rig: Si): Issue[] {
  const names = rig.motions.map((m) => m.name)
  const unknown =
    rig.motion !== null && !names.includes(rig.motion)
      ? [issue("inconsistent", ["motion"], `"${rig.motion}"`, `one of ${names.map((n) => `"${n}"`).join(", ")}`)]
      : []
  return [...unknown, ...rigFaults(members, rig)]
}

function cautions(members: Members, rig: Si, out: Move): Caution<MoveCaution>[] {
  const motion = rig.motions.find((m) => m.name === rig.motion) ?? (rig.motions[0] as Si["motions"][number])
  const found: Caution<MoveCaution>[] = [
    caution(
      "pinch",
      "warning",
      "Arms, lines and drives close with the force shown: keep fingers, hair and children clear, and fit a switch in reach that stops them.",
      MACHINERY_SAFETY,
    ),
  ]
  if (rig.power === null || motion.bus === null)
    found.push(
      caution(
        "no-supply-stated",
        "caution",
        "No supply is named for this motion: the times are those at the rated voltage, which a real supply seldom holds.",
        commonPractice,
      ),
    )
  if (rig.power?.sources.some((s) => s.type === "cells"))
    found.push(
      caution(
        "cells",
        "warning",
        "Cells feed a short circuit with hundreds of amperes: fuse at the pack, protection circuit, no damaged cells, no charging below 0 °C or unattended.",
        PORTABLE_CELLS,
      ),
    )
  if (rig.power?.sources.some((s) => s.type === "bank"))
    found.push(
      caution(
        "bank-may-switch-off",
        "caution",
        "A bank holds lithium cells: keep it from blows, heat and water. At its limit it may switch off instead of holding the current, and at rest it may go to sleep: try both before relying on it.",
        PORTABLE_CELLS,
      ),
    )
  const index = rig.motions.indexOf(motion)
  const model = assembled(members, rig).motions[index] as MotionModel
  const held = Math.max(...standsFor(rig, index).map(({ stand }) => holdingEffort(model, standing({ ...rig.posture, stand })).effort))
  if (held > model.drive.holdingEffort) found.push(fallsUnpowered(model, held))
  if (out.out.inertiaShare > 0.05 || out.back.inertiaShare > 0.05)
    found.push(
      caution(
        "inertia",
        "caution",
        "At the fastest point the moving parts carry {inertiaShare ratio %} of the energy moved as motion: the time found without their inertia is no longer good there.",
        MOTION,
        { inertiaShare: Math.max(out.out.inertiaShare, out.back.inertiaShare) },
      ),
    )
  if (rig.power?.buses.some((bus) => rig.power?.sources.some((s) => s.name === bus.from && s.type === "cells") && bus.fuseRating === null))
    found.push(caution("no-fuse", "warning", "A run from a cell pack names no fuse: put one at the pack, sized for the wire.", BLADE_FUSES))
  return found
}

/**
 * The rig's verbs over our members and those given: a drive, an element of a transmission or a mechanism of your own is
 * written as one of ours is, and the document, its reader and its schema then take it.
 */
export function rigWith<
  const D extends readonly Carrying[] = readonly [],
  const T extends readonly Carrying[] = readonly [],
  const M extends readonly Carrying[] = readonly [],
>(
  // a member's fields were checked against its document part where it was written: here the part goes by its name alone
  extra: { readonly drives?: D; readonly transmissions?: T; readonly mechanisms?: M } = {},
): RigKit<RigDrive | PartsOf<D>, RigTransmission | PartsOf<T>, RigMechanism | PartsOf<M>> {
  const named = (list: readonly { readonly type: string }[] = []) => Object.fromEntries(list.map((one) => [one.type, one]))
  const members: Members = {
    drives: { ...drives, ...named(extra.drives) } as Members["drives"],
    transmissions: { ...transmissions, ...named(extra.transmissions) } as Members["transmissions"],
    mechanisms: { ...mechanisms, ...named(extra.mechanisms) } as Members["mechanisms"],
  }
  type Input = MoveInput<RigDrive | PartsOf<D>, RigTransmission | PartsOf<T>, RigMechanism | PartsOf<M>>
  const assess = makeAssess(members)
  return {
    quickMove: (rig, options) => quickMoveOf(members, rig as unknown as Si, options?.rough ?? false),
    read: (source) => readDocument(source, assess) as Rig<RigDrive | PartsOf<D>, RigTransmission | PartsOf<T>, RigMechanism | PartsOf<M>>,
    move: makeMove(members) as unknown as Solver<Input, Move, MoveRefusal, MoveCaution>,
    perform: makePerform(members) as unknown as RigKit<
      RigDrive | PartsOf<D>,
      RigTransmission | PartsOf<T>,
      RigMechanism | PartsOf<M>
    >["perform"],
    assess: assess as unknown as Solver<Rig<RigDrive | PartsOf<D>, RigTransmission | PartsOf<T>, RigMechanism | PartsOf<M>>, RigAssessment>,
  }
}

/** Our own members. */
const ours: Members = { drives, transmissions, mechanisms } as unknown as Members

/**
 * How long a motion takes out and back, how hard it works, and where the seconds go.
 *
 * Without inertia: at each travel x of the drive the transmission and each mechanism tell where they stand; the effort against
 * the motion is the sum over mechanisms of what holds them against weights and springs, E = ±(dU/dq) + friction, brought to the
 * drive through the slopes dq/dx and the efficiencies, those of driving where the load resists and those of being driven where
 * it helps; the current I = I₀ + E/k; the voltage V from the power tree while everything else draws its own; the rate
 * v = (V − I·R)/k_V; the time t = ∫ dx/v by adaptive quadrature, split where the equations change form.
 *
 * Valid while the energy of motion is small against the energy moved (a caution says when it is not) and the windings are near
 * the datasheet's temperature. Refused at the first place on the way that stops the motion: a drive too weak, a source that
 * gives no more, a line that goes slack, a mechanism that does not close, jams or meets a dead point.
 *
 * **Inputs**
 * - `wearer`: wearer [group; optional]
 * - `parts`: parts carried, moving masses left out [list of 0 to 300; default none]
 * - `formed`: parts formed hot [list of 0 to 60; default none]
 * - `straps`: straps [group; optional]
 * - `schedule`: the day's wearing [group; optional]
 * - `heat`: heat [group; optional]
 * - `wind`: wind on one arm [group; optional]
 * - `stance`: stance [group; optional]
 * - `venue`: where it has to go [group; optional]
 * - `reach`: switch [group; optional]
 * - `contact`: if an arm strikes somebody [group; optional]
 * - `budget`: what may be spent [group; optional]
 * - `version`: document version [n_doc; whole 2 to 2]
 * - `name`: name of the rig [text of 1 to 100 characters]
 * - `note`: note [text of 0 to 5000 characters; default empty]
 * - `motions`: motions [list of 1 to 40]
 * - `power`: power [group; optional]
 * - `day`: the day out [group; optional, with a default of its own]
 * - `programme`: what moves when [list of 0 to 200; default none]
 * - `posture`: how the wearer leans [group; optional, with a default of its own]
 * - `motion`: motion asked about [text of 1 to 100 characters; optional]
 *
 * **Results**
 *
 * `outDuration`: time out [t_out; s]; `backDuration`: time back [t_back; s]; `cycleDuration`: out and back [t_both;
 * s]; `limit`: costs most [text]; `condition`: where the others stand [text]; `out`: out [group]; `back`: back
 * [group]; `errorEstimate`: estimated error of the times [s]; `evaluations`: points evaluated [number].
 *
 * **Symbols of the working**
 *
 * h_o: widths of the steps out; v_o: rates at the steps out [Hz]; h_b: widths of the steps back; v_b: rates at the
 * steps back [Hz].
 *
 * **Sources**
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th edition, 2019, chapter 3 (brushed motor: V = E + I·R, E ∝
 *   speed, torque ∝ current) (not verified against the document)
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 11th edition, 2020, chapter 8 (power
 *   screws) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the document
 * @throws NoSolutionError what stops the motion first, and where
 * @example
 * ```ts
 * import { move } from 'alula/rig'
 * const wings = move(move.example)
 * wings.outDuration > 8 // => true
 * wings.out.limitedBy // => 'none'
 * ```
 */
export const move: Solver<MoveInput, Move, MoveRefusal, MoveCaution> = /* @__PURE__ */ makeMove(ours) as unknown as Solver<
  MoveInput,
  Move,
  MoveRefusal,
  MoveCaution
>

/**
 * Whether the whole rig does what is wanted, check by check, worst first.
 *
 * Each motion runs both ways under every condition of the cells (as stated, fully charged, down to the reserve at the coldest
 * temperature stated), the supply carries everything at once, and each check tells the worst of them with its condition. A
 * domain solver's own verdict is taken as it is; a missing field is named by its path and never meets.
 *
 * Formula: the share of a limit that is used is u = (x − x₀)/(L − x₀) where x may be at most L, (L − x₀)/(x − x₀) where it must
 * be at least L, the distance from the middle over half the width in a band; from 0.9 on it is marginal.
 *
 * Valid where the solvers it asks are: what lies outside a model is told as not judged.
 *
 * **Inputs**
 * - `wearer`: wearer [group; optional]
 * - `parts`: parts carried, moving masses left out [list of 0 to 300; default none]
 * - `formed`: parts formed hot [list of 0 to 60; default none]
 * - `straps`: straps [group; optional]
 * - `schedule`: the day's wearing [group; optional]
 * - `heat`: heat [group; optional]
 * - `wind`: wind on one arm [group; optional]
 * - `stance`: stance [group; optional]
 * - `venue`: where it has to go [group; optional]
 * - `reach`: switch [group; optional]
 * - `contact`: if an arm strikes somebody [group; optional]
 * - `budget`: what may be spent [group; optional]
 * - `version`: document version [n_doc; whole 2 to 2]
 * - `name`: name of the rig [text of 1 to 100 characters]
 * - `note`: note [text of 0 to 5000 characters; default empty]
 * - `motions`: motions [list of 1 to 40]
 * - `power`: power [group; optional]
 * - `day`: the day out [group; optional, with a default of its own]
 * - `programme`: what moves when [list of 0 to 200; default none]
 * - `posture`: how the wearer leans [group; optional, with a default of its own]
 *
 * **Results**
 *
 * `summary`: summary [text]; `fallsShort`: fall short [n_short]; `marginal`: marginal [n_marginal]; `unknown`: lack
 * data or cannot be judged [n_unknown]; `meets`: meet [n_meets]; `findings`: findings, most urgent first [list].
 *
 * **Symbols of the working**
 *
 * v: verdict of each check: 3 falls short, 2 marginal, 1 not made, 0 meets.
 *
 * **Sources**
 * - Each check's own: see the source beside its limit, and the solver it calls
 *
 * @function
 * @throws InputError naming every fault of the document
 * @example
 * ```ts
 * import { assessRig } from 'alula/rig'
 * const wings = assessRig(assessRig.example)
 * wings.findings.length > 10 // => true
 * ```
 */
export const assessRig: Solver<Rig, RigAssessment> = /* @__PURE__ */ makeAssess(ours) as unknown as Solver<Rig, RigAssessment>

/**
 * Reads a rig document from JSON text (with `//` comments) or data: brings one of version 1 to version 2, checks every field and
 * name. The document itself comes back as it was written: `'1 1/2 in'` stays so.
 *
 * @param source - JSON text, or the parsed document
 * @throws InputError naming every fault, a version newer than this release among them
 */
export const readRig = (source: unknown): Rig =>
  readDocument(source, assessRig as unknown as Solver<Rig<Typed, Typed, Typed>, RigAssessment>) as Rig

/**
 * A rig document as JSON text, ready to keep; {@link readRig} gives the same document back.
 *
 * @param rig - a rig document of version 2
 * @throws InputError naming every fault of the document
 */
export function writeRig(rig: Rig): string {
  assessRig.read(rig)
  return `${JSON.stringify(rig, null, 2)}\n`
}

/** {@link RigKit.quickMove} over our own members. */
export const quickMove: RigKit<RigDrive, RigTransmission, RigMechanism>["quickMove"] = (rig, options) =>
  quickMoveOf(ours, rig as unknown as Si, options?.rough ?? false)

function makeMove(members: Members): Solver<MoveInput<Typed, Typed, Typed>, Move, MoveRefusal, MoveCaution> {
  type Input = MoveInput<Typed, Typed, Typed>
  const si = (rig: SiOf<Input>) => rig as unknown as Si
  return solver<Input, Move, MoveRefusal, MoveCaution>(
    "move",
    "How long a motion takes out and back, how hard it works, and where the seconds go",
    (rig) => solveMove(members, si(rig)),
    () => ({
      // each member's fields were checked against its interface where it is written
      input: {
        ...rigFields(members),
        motion: { kind: "text", label: "motion asked about", min: 1, max: 100, default: null },
      } as AnyFields as unknown as Fields<Input>,
      output: moveOutput,
      example: exampleRig,
      formulae: [
        { solved: "t_out", meaning: "time out: the sum of dx/rate over the drive's travel" },
        { symbol: "h_o", kind: "number", meaning: "widths of the steps out", given: (rig) => rateGrid(members, si(rig), 1).widths },
        { symbol: "v_o", kind: "frequency", meaning: "rates at the steps out", given: (rig) => rateGrid(members, si(rig), 1).rates },
        { left: "sum(h_o ./ v_o)", right: "t_out", meaning: "the steps add up to the time out" },
        { solved: "t_back", meaning: "time back" },
        { symbol: "h_b", kind: "number", meaning: "widths of the steps back", given: (rig) => rateGrid(members, si(rig), -1).widths },
        { symbol: "v_b", kind: "frequency", meaning: "rates at the steps back", given: (rig) => rateGrid(members, si(rig), -1).rates },
        { left: "sum(h_b ./ v_b)", right: "t_back", meaning: "the steps add up to the time back" },
        { symbol: "t_both", meaning: "out and back", is: "t_out + t_back" },
      ],
      sources: [MOTORS, SCREWS],
      check: (rig) => faults(members, si(rig)),
      cautions: (rig, out) => cautions(members, si(rig), out),
    }),
  )
}

function makeAssess(members: Members): Solver<Rig<Typed, Typed, Typed>, RigAssessment> {
  type Input = Rig<Typed, Typed, Typed>
  const si = (rig: SiOf<Input>) => rig as unknown as RigSi
  const verb = solver<Input, RigAssessment, string, string, Judgement>(
    "assessRig",
    "Whether the whole rig does what is wanted, check by check",
    (rig, trace) => {
      const judgement = findingsOf(members, si(rig))
      if (trace) Object.assign(trace, judgement)
      return assessment(judgement.findings)
    },
    () => ({
      input: rigFields(members) as unknown as Fields<Input>,
      output: assessmentOutput,
      example: exampleRig,
      formulae: [
        {
          symbol: "v",
          kind: "number",
          meaning: "verdict of each check: 3 falls short, 2 marginal, 1 not made, 0 meets",
          given: (_, out) => out.findings.map((f) => verdictNumber[f.verdict]),
        },
        { symbol: "n_short", meaning: "checks that fall short", is: "sum(map(v, f(x) = x == 3 ? 1 : 0))" },
        { symbol: "n_marginal", meaning: "checks that are marginal", is: "sum(map(v, f(x) = x == 2 ? 1 : 0))" },
        { symbol: "n_unknown", meaning: "checks not made", is: "sum(map(v, f(x) = x == 1 ? 1 : 0))" },
        { symbol: "n_meets", meaning: "checks that are met", is: "sum(map(v, f(x) = x == 0 ? 1 : 0))" },
      ],
      sources: [EACH_CHECK],
      check: (rig) => rigFaults(members, si(rig)),
      cautions: (_, out, trace) => [...assessCautions(out), ...(trace.raised ?? []).map((one) => one.caution)],
    }),
  )
  return withMembers(verb, members)
}

const verdictNumber: Readonly<Record<CheckVerdict, number>> = {
  "falls short": 3,
  marginal: 2,
  "not enough data": 1,
  "cannot be judged": 1,
  meets: 0,
}
