import { formatNumber, formatQuantity } from "../../quantity/index.js"
import { checkParts } from "../../rig/document/check.js"
import type { RigDocument } from "../../rig/document/document.js"
import { rigFields, rigRules } from "../../rig/document/fields.js"
import { PORTABLE_CELLS } from "../../rig/sources.js"
import { seal } from "../../solver/display.js"
import { type AnyFields, type Caution, caution, InputError, type Issue, issue, type OutFields, type SiOf } from "../../solver/index.js"
import { readInput } from "../../solver/read.js"
import { type Catalogue, parseCatalogue } from "../catalogue.js"
import { goalFields, planOf, type SearchGoals, type SearchPlan } from "./goals.js"
import { type Choice, choiceFields, choiceOf, planSupplies, type Rejection, rejectionFields, rejectionsOf } from "./report.js"
import { runPlan, type SearchOptions } from "./run.js"
import type { Found } from "./scan.js"

/** Result of {@link search}. */
export interface Search {
  /** One sentence: what was found, or what stands in the way most. */
  readonly why: string
  /** All choices that no other beats, cheapest first; equals side by side. */
  readonly front: readonly Choice[]
  /** Places in the front of the cheapest, the lightest and the fastest; null where nothing meets the goals. */
  readonly cheapest: number | null
  readonly lightest: number | null
  readonly fastest: number | null
  /** What is in the way of the rest, by limit. A combination counts under the first limit that rules it out. */
  readonly rejected: readonly Rejection[]
  /** All combinations of the catalogue. */
  readonly combinations: number
  /** Those ruled out by a limit. */
  readonly ruledOut: number
  /** Those left out uncalculated because a bound proves them dominated. */
  readonly pruned: number
  /** Those whose raise time was calculated in full. */
  readonly evaluated: number
  readonly cautions: readonly Caution[]
}

const outFields: OutFields<Omit<Search, "front" | "cautions"> & { front: readonly Omit<Choice, "rig">[] }> = {
  why: { kind: "text", label: "why" },
  front: { kind: "list", label: "choices that no other beats", of: { kind: "group", label: "choice", fields: choiceFields } },
  cheapest: { kind: "number", label: "cheapest: place in the list, from 0" },
  lightest: { kind: "number", label: "lightest" },
  fastest: { kind: "number", label: "fastest" },
  rejected: { kind: "list", label: "what stands in the way", of: { kind: "group", label: "limit", fields: rejectionFields } },
  combinations: { kind: "number", label: "combinations" },
  ruledOut: { kind: "number", label: "ruled out by a limit" },
  pruned: { kind: "number", label: "proved dominated" },
  evaluated: { kind: "number", label: "calculated in full" },
}

/** Reads all three inputs; throws one InputError that names every fault of them. */
function readPlan(rig: unknown, catalogue: unknown, goals: unknown): SearchPlan {
  const issues: Issue[] = []
  const add = (root: string, found: readonly Issue[]) =>
    issues.push(...found.map(({ code, path, received, expected }) => issue(code, [root, ...path], received, expected)))
  const document = readInput(rigFields as unknown as AnyFields, rig, rigRules)
  if (!document.ok) add("rig", document.issues)
  else {
    const { hinged, wiring } = document.si as SiOf<RigDocument>
    if (!hinged) add("rig", [issue("missing", ["hinged"], "nothing", "arms on hinges")])
    if (!wiring) add("rig", [issue("missing", ["wiring"], "nothing", "wires, switch and fuse")])
    add("rig", checkParts(document.si as SiOf<RigDocument>))
  }
  const parts = parseCatalogue(catalogue)
  if ("issues" in parts) add("catalogue", parts.issues)
  const wanted = readInput(goalFields as unknown as AnyFields, goals)
  if (!wanted.ok) add("goals", wanted.issues)
  else
    for (const key of ["series", "parallel"] as const) {
      const list = (wanted.si as SiOf<SearchGoals>)[key]
      for (const [i, n] of list.entries())
        if (list.indexOf(n) < i) add("goals", [issue("inconsistent", [key, i], `${n} again`, "each number once")])
    }
  if (issues.length || !document.ok || !wanted.ok || !("si" in parts)) throw new InputError("search", issues)
  const plan = planOf(document.si as SiOf<RigDocument>, parts.si, wanted.si as SiOf<SearchGoals>)
  checkPlaces(plan)
  return plan
}

/** Places and springs must keep away from the rig's hinge. */
function checkPlaces(plan: SearchPlan): void {
  const hinge = plan.rig.hinged?.hinge
  const isOfGoals = (list: string) => list === "placements" && plan.goals.placements.length > 0
  const faults = (["placements", "springs"] as const).flatMap((list) =>
    plan.catalogue[list].flatMap(({ fixedPivot }, i) =>
      hinge && fixedPivot.x === hinge.x && fixedPivot.y === hinge.y
        ? [
            issue(
              "inconsistent",
              [isOfGoals(list) ? "goals" : "catalogue", list, i, "fixedPivot"],
              "the hinge's own place",
              "a place away from the hinge",
            ),
          ]
        : [],
    ),
  )
  if (faults.length) throw new InputError("search", faults)
}

/** Place of the smallest by several figures in turn. */
function leastBy(front: readonly Found[], ...figures: readonly ("cost" | "mass" | "step")[]): number | null {
  if (!front.length) return null
  const before = (a: Found, b: Found) => figures.map((key) => a[key] - b[key]).find((d) => d !== 0) ?? 0
  return front.reduce((best, one, i) => (before(one, front[best] as Found) < 0 ? i : best), 0)
}

function sentence(
  plan: SearchPlan,
  front: readonly Choice[],
  cheapest: Choice | undefined,
  rejected: readonly Rejection[],
  combinations: number,
): string {
  const figures = ({ price, mass, raiseTime }: Choice) =>
    `${formatNumber(price)}${plan.catalogue.currency ? ` ${plan.catalogue.currency}` : ""}, ${formatQuantity("mass", mass)} and ${formatQuantity("time", raiseTime)} for the raise`
  if (cheapest) {
    const { actuator, series, parallel, cell } = cheapest
    return `${front.length} of ${combinations} combinations are not beaten by another; the cheapest comes to ${figures(cheapest)} (${actuator}, ${series}S${parallel}P ${cell}).`
  }
  return `None of ${combinations} combinations meets the goals; most are ruled out because ${rejected[0]?.why ?? "there are none"}.`
}

function cautionsOf(front: readonly Choice[]): Caution[] {
  if (!front.length) return []
  return [
    caution(
      "parts-not-the-whole",
      "warning",
      "The search looks at motion, force, voltage, current and charge alone, by the catalogue's own figures: check the chosen rig whole (spars, pins, load on the body, wind, fuse against wire) and every part against its maker's datasheet before buying.",
    ),
    caution(
      "cells",
      "warning",
      "Cells feed a short circuit with hundreds of amperes: fuse at the pack, protection circuit, no damaged cells, no charging below 0 °C or unattended.",
      PORTABLE_CELLS,
    ),
  ]
}

/**
 * The best parts for a rig: every choice from a catalogue that meets the brief and that no other beats in
 * price, mass and raise time at once.
 *
 * Chooses actuator, its place and a helper spring or none (`mechanical`), cell × series × parallel and a
 * converter or none (`supply`), and one wire size for both runs (`wire`); all else stays as in the rig, so
 * give it a run from converter to actuators where one may be chosen.
 * A choice meets the goals when
 *
 * - the linkage closes over the whole stroke without a dead point, swing ≥ the swing wanted, and the angle
 *   between rod and lever ≥ `rodAngle` (default 30°: common practice, no source);
 * - peak force F ≤ k_f·F_rated (k_f: `forceFactor`, default 1), both ways, and with `holds` the maximum
 *   force at rest ≤ the holding force without power;
 * - stall: on the supply chosen the rod still moves against k_s·F (k_s: `stallFactor`, default 1.3: common
 *   practice, no source);
 * - voltage: N_s·V_full ≤ k_u·V_rated without a converter, V_out ≤ k_u·V_rated with one (k_u:
 *   `voltageFactor`, default 1.1: common practice, no source), and N_s·V_full ≤ the converter's maximum input;
 * - raise time t = ∫ ds/v ≤ `raiseTime` and up and down together ≤ `stageTime`, calculated as
 *   `moveTime` does at the state of charge given;
 * - current of one cell, of the wire, of the rig's fuse and switch ≤ their limits, where stated, and the
 *   fuse's rating ≤ the wire's current (I_B ≤ I_n ≤ I_z);
 * - charge: moves·(Q_up + Q_down) + E_standby/V_open ≤ N_p·Q_cell·(1 − reserve), where moves are asked for,
 *   with Q = ∫ I ds/v in C;
 * - price and mass of the parts ≤ their limits, where given. Actuator, bracket and spring count once for
 *   every arm; wire counts out and back.
 *
 * Exact: every combination is ruled out by a limit, proved dominated, or calculated in full; none is sampled,
 * so there is no seed. A combination is left out uncalculated only by bounds that hold for certain: price and
 * mass are sums known beforehand, and t ≥ ∫ ds/v on a stiff supply of the pack's open voltage (the
 * converter's output voltage), because current follows from force alone and every resistance or limit in
 * between only lowers the voltage, and with it the speed v = (V − I·R)/k_V, at each place of the stroke.
 * Raise times are compared in steps of `timeStep` (default 1 ms), prices to 10⁻⁶, masses to 10⁻⁹ kg; equal
 * choices all stay. Peaks are sought at 161 places of the stroke and around the largest of them.
 * Counts and answer do not depend on the number of threads.
 *
 * Sources: virtual work and the brushed motor's equations as for `moveTime`; IEC 60364-4-43, 2008, clause
 * 433.1 (current, fuse, wire: not verified against the document); Pareto dominance as in
 * M. Ehrgott, Multicriteria Optimization, 2nd edition, 2005, chapter 2.
 *
 * @param rig - a rig document with arms and wiring; its source, converter and actuator are replaced
 * @param catalogue - the parts, as JSON
 * @param goals - what must be met; what is left out is taken from the rig's brief and day
 * @param options - signal, progress and worker threads
 * @throws InputError naming every fault of rig, catalogue and goals (as the promise's rejection)
 * @example
 * ```ts
 * import { search } from 'alula/advice'
 * import { moveTime } from 'alula/rig'
 * const parts = {
 *   version: 1,
 *   name: 'shelf in the van (invented)',
 *   currency: 'moons',
 *   actuators: [
 *     { name: 'steady', mass: '0.4 kg', price: 30, ...moveTime.example.hinged!.actuator },
 *     { name: 'brisk', mass: '0.4 kg', price: 55, ...moveTime.example.hinged!.actuator, noLoadSpeed: '15 mm/s', ratedSpeed: '12 mm/s' },
 *   ],
 *   cells: [{ name: 'plain', chemistry: 'nmc', capacity: '2.6 Ah', resistance: '60 mohm', mass: '48 g', price: 4 }],
 *   wires: [
 *     { name: 'thin', awg: 22, linearDensity: '5 g/m', pricePerMetre: 0.5 },
 *     { name: 'thick', awg: 16, linearDensity: '18 g/m', pricePerMetre: 1.5 },
 *   ],
 * } as const
 * const found = await search(moveTime.example, parts, { series: [2, 3], parallel: [1, 2], raiseTime: '15 s' })
 * found.combinations // => 16
 * found.front[found.cheapest!].actuator // => 'steady'
 * found.front[found.fastest!].actuator // => 'brisk'
 * Math.abs(moveTime(found.front[0].rig).raiseTime - found.front[0].raiseTime) < 1e-6 // => true
 * ```
 */
export async function search(
  rig: RigDocument,
  catalogue: Catalogue,
  goals: SearchGoals = {},
  options: SearchOptions = {},
): Promise<Search> {
  if (options.signal?.aborted) throw options.signal.reason
  const plan = readPlan(rig, catalogue, goals)
  const part = await runPlan(plan, options)
  const supplies = planSupplies(plan)
  const found = part.front.toSorted(
    (a, b) =>
      a.cost - b.cost || a.mass - b.mass || a.step - b.step || a.mechanical - b.mechanical || a.supply - b.supply || a.wire - b.wire,
  )
  const front = found.map((one) => choiceOf(plan, supplies, one))
  const rejected = rejectionsOf(plan, part.rejected)
  const { considered: combinations, evaluated, pruned } = part
  const cheapest = leastBy(found, "cost", "step", "mass")
  const result: Search = {
    why: sentence(plan, front, front[cheapest ?? 0], rejected, combinations),
    front,
    cheapest,
    lightest: leastBy(found, "mass", "cost", "step"),
    fastest: leastBy(found, "step", "cost", "mass"),
    rejected,
    combinations,
    ruledOut: rejected.reduce((sum, one) => sum + one.combinations, 0),
    pruned,
    evaluated,
    cautions: cautionsOf(front),
  }
  return seal(outFields as never, result)
}
