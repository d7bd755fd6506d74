import { formatNumber, formatQuantity, type Kind } from "../../quantity/index.js"
import type { RigDocument } from "../../rig/document/document.js"
import { circuitOf, supplyChain } from "../../rig/power/circuit.js"
import type { OutFields, SiOf } from "../../solver/index.js"
import {
  armsWith,
  familySizes,
  type MechanicalParts,
  mechanicalParts,
  type SearchPlan,
  type SupplyParts,
  suppliedRig,
  supplyParts,
} from "./goals.js"
import { dayCharge, type Family, type Reason, reasonFamily, type Supply, suppliesOf, usableCharge } from "./limits.js"
import { type Mechanics, mechanicsOf, peakDrawn, travelTime } from "./profile.js"
import type { Found, Miss, Tally } from "./scan.js"

/** One choice that nothing in the catalogue beats in price, mass and raise time at once. */
export interface Choice {
  /** Price of the parts chosen, in the catalogue's currency. */
  readonly price: number
  /** Mass of the parts chosen, kg. */
  readonly mass: number
  /** Time up, s. */
  readonly raiseTime: number
  /** Time down, s. */
  readonly lowerTime: number
  /** Angle the arms swing through, rad. */
  readonly swing: number
  /** Maximum force against the motion at one rod, N. */
  readonly peakForce: number
  /** Maximum current of the source and of one cell, A. */
  readonly peakSourceCurrent: number
  readonly peakCellCurrent: number
  /** Charge of the day over the charge that may be used; null where no number of moves is asked for. */
  readonly dayShare: number | null
  readonly actuator: string
  readonly placement: string
  /** Helper spring, or null for none. */
  readonly spring: string | null
  readonly cell: string
  readonly series: number
  readonly parallel: number
  /** Converter, or null for none. */
  readonly converter: string | null
  readonly wire: string
  /** The rig with these parts, ready for every other check. */
  readonly rig: RigDocument
}

/** What one limit ruled out. */
export interface Rejection {
  /** Parts whose choice it concerns: `mechanical` (actuator, place, spring), `supply` (cells, converter), `wire`, or `budget` (all). */
  readonly family: string
  /** The limit: `swing`, `force`, `voltage`, `too-slow` … */
  readonly reason: string
  /** Members of the family it touched, of how many; null for the budget. */
  readonly members: number | null
  readonly of: number | null
  /** Combinations it ruled out. */
  readonly combinations: number
  /** The limit in words, with the nearest miss and what it would have needed. */
  readonly why: string
}

/** How a limit is told: the kind of its figure, what is wrong, and how far the nearest miss came. */
const told: Readonly<Record<Reason, readonly [kind: Kind | "number" | null, fault: string]>> = {
  "cannot-close": [null, "hinge and pivots form no triangle over the whole stroke"],
  "dead-point": [null, "the rod passes a dead point, where it cannot turn the arm"],
  swing: ["angle", "the swing is too small"],
  "rod-angle": ["angle", "the rod comes too near a dead point: the angle between rod and lever is too small"],
  force: ["force", "the force is above what the actuator is rated for"],
  holding: ["force", "the actuator does not hold the arms without power"],
  "converter-input": ["voltage", "a full pack is above what the converter's input stands"],
  "no-supply": ["voltage", "the pack is below what the converter's input needs"],
  voltage: ["voltage", "the voltage is above what the actuator is rated for"],
  "cell-current": ["current", "the current is above what a cell may give"],
  stall: [null, "the actuator stalls on this supply, or would with little more force against it"],
  "too-slow": ["time", "the raise takes too long"],
  "stage-time": ["time", "up and down take too long"],
  energy: ["charge", "the charge does not last the day"],
  "wire-current": ["current", "the current is above what the wire carries"],
  fuse: ["current", "the current is above the rig's fuse"],
  unprotected: ["current", "the rig's fuse is larger than the largest that guards this wire"],
  switch: ["current", "the current is above what the rig's switch is rated for"],
  price: ["number", "the parts cost too much"],
  mass: ["mass", "the parts weigh too much"],
}

/** Names of mechanical parts, as a sentence has them. */
function mechanicalName({ actuator, placement, spring }: MechanicalParts): string {
  return `${actuator.name} at ${placement.name}${spring ? ` with ${spring.name}` : ""}`
}

/** Names of supply parts. */
function supplyName({ cell, series, parallel, converter }: SupplyParts): string {
  return `${series}S${parallel}P ${cell.name}${converter ? ` through ${converter.name}` : ""}`
}

/** Both figures with as many digits as it takes to tell them apart. */
function apart(kind: Kind | "number", { got, limit }: Miss): readonly [got: string, limit: string] {
  const shown = (value: number, digits?: number) =>
    kind === "number" ? formatNumber(value, digits) : formatQuantity(kind, value, undefined, digits)
  const enough = [undefined, 4, 6, 8, 10, 12].find((digits) => shown(got, digits) !== shown(limit, digits))
  return [shown(got, enough), shown(limit, enough)]
}

function missText(plan: SearchPlan, kind: Kind | "number", miss: Miss): string {
  const [got, limit] = apart(kind, miss)
  const names = [
    mechanicalName(mechanicalParts(plan, miss.mechanical)),
    ...(miss.supply < 0 ? [] : [supplyName(supplyParts(plan, miss.supply))]),
    ...(miss.wire < 0 ? [] : [plan.catalogue.wires[miss.wire]?.name]),
  ]
  return `; nearest: ${got} against ${limit} (${names.join(", ")})`
}

/** What limits ruled out, those that took most first. */
export function rejectionsOf(plan: SearchPlan, tallies: Readonly<Partial<Record<Reason, Tally>>>): Rejection[] {
  const sizes: Readonly<Record<Family, number | null>> = { ...familySizes(plan), budget: null }
  return (Object.entries(tallies) as [Reason, Tally][])
    .map(([reason, { combinations, members, closest }]) => {
      const family = reasonFamily[reason]
      const [kind, fault] = told[reason]
      return {
        family,
        reason,
        members: family === "budget" ? null : members.length,
        of: sizes[family],
        combinations,
        why: `${fault}${closest && kind ? missText(plan, kind, closest) : ""}`,
      }
    })
    .sort((a, b) => b.combinations - a.combinations || (a.reason < b.reason ? -1 : 1))
}

/** A combination found, in full: calculated again on its own, with the rig it makes. */
export function choiceOf(plan: SearchPlan, supplies: readonly Supply[], found: Found): Choice {
  const mechanical = mechanicalParts(plan, found.mechanical)
  const parts = supplyParts(plan, found.supply)
  const wire = plan.catalogue.wires[found.wire] as SearchPlan["catalogue"]["wires"][0]
  const supply = supplies.find((one) => one.index === found.supply) as Supply
  const hinged = armsWith(plan, mechanical)
  const rig: SiOf<RigDocument> = { ...suppliedRig(plan, parts, wire), hinged }
  // what was found has been through this once: it closes and moves both ways
  const mechanics = mechanicsOf(hinged) as Mechanics
  const { raise, lower } = mechanics
  const circuit = circuitOf(supplyChain(rig))
  const drawn = Math.max(peakDrawn(raise, circuit), peakDrawn(lower, circuit))
  const names = `${mechanicalName(mechanical)}; ${supplyName(parts)}; ${wire.name}`
  return {
    price: found.cost,
    mass: found.mass,
    raiseTime: found.raiseTime,
    lowerTime: travelTime(lower, circuit, supply.breaks) as number,
    swing: mechanics.swing,
    peakForce: Math.max(raise.peakForce, lower.peakForce),
    peakSourceCurrent: drawn,
    peakCellCurrent: drawn / parts.parallel,
    dayShare: plan.goals.moves === null ? null : dayCharge(plan, supply, circuit, mechanics) / usableCharge(plan, parts),
    actuator: mechanical.actuator.name,
    placement: mechanical.placement.name,
    spring: mechanical.spring?.name ?? null,
    cell: parts.cell.name,
    series: parts.series,
    parallel: parts.parallel,
    converter: parts.converter?.name ?? null,
    wire: wire.name,
    rig: { ...(rig as unknown as RigDocument), note: [rig.note, `Parts chosen: ${names}.`].filter(Boolean).join(" ") },
  }
}

/** Every supply family of a plan. */
export function planSupplies(plan: SearchPlan): readonly Supply[] {
  return suppliesOf(plan, familySizes(plan).supply)
}

/** Descriptions of a choice's figures; its rig is a document of its own. */
export const choiceFields: OutFields<Omit<Choice, "rig">> = {
  price: { kind: "number", label: "price" },
  mass: { kind: "mass", label: "mass" },
  raiseTime: { kind: "time", label: "time up" },
  lowerTime: { kind: "time", label: "time down" },
  swing: { kind: "angle", label: "swing" },
  peakForce: { kind: "force", label: "maximum force at one rod" },
  peakSourceCurrent: { kind: "current", label: "maximum current of the source" },
  peakCellCurrent: { kind: "current", label: "maximum current of one cell" },
  dayShare: { kind: "ratio", label: "of the day's charge", unit: "%" },
  actuator: { kind: "text", label: "actuator" },
  placement: { kind: "text", label: "place" },
  spring: { kind: "text", label: "spring" },
  cell: { kind: "text", label: "cell" },
  series: { kind: "number", label: "in series" },
  parallel: { kind: "number", label: "in parallel" },
  converter: { kind: "text", label: "converter" },
  wire: { kind: "text", label: "wire" },
}

/** Descriptions of a rejection. */
export const rejectionFields: OutFields<Rejection> = {
  family: { kind: "text", label: "parts" },
  reason: { kind: "text", label: "limit" },
  members: { kind: "number", label: "members touched" },
  of: { kind: "number", label: "of" },
  combinations: { kind: "number", label: "combinations" },
  why: { kind: "text", label: "why" },
}
