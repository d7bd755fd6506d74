import { chemistries, openCircuitVoltage } from "../../pack/index.js"
import { type Circuit, stiff } from "../../rig/power/circuit.js"
import { inAir, largestFuse, ratedCurrentOf, SHORT_LIMIT, shortLimit } from "../../wire/withstand.js"
import { type MechanicalParts, type SearchPlan, type SupplyParts, supplyParts } from "./goals.js"
import {
  doesMove,
  drawnCharge,
  type LinkageFault,
  leastTime,
  loadedCurrent,
  type Mechanics,
  type Profile,
  peakDrawn,
  travelTime,
} from "./profile.js"

/** Families of parts whose product is searched, and the limits on all parts together. */
export type Family = "mechanical" | "supply" | "wire" | "budget"

/** A reason why combinations are ruled out. */
export type Reason =
  | "cannot-close"
  | "dead-point"
  | "swing"
  | "rod-angle"
  | "force"
  | "holding"
  | "converter-input"
  | "no-supply"
  | "voltage"
  | "cell-current"
  | "stall"
  | "too-slow"
  | "stage-time"
  | "energy"
  | "wire-current"
  | "fuse"
  | "unprotected"
  | "switch"
  | "price"
  | "mass"

/** Whose choice it is to mend what a reason names. */
export const reasonFamily: Readonly<Record<Reason, Family>> = {
  "cannot-close": "mechanical",
  "dead-point": "mechanical",
  swing: "mechanical",
  "rod-angle": "mechanical",
  force: "mechanical",
  holding: "mechanical",
  "converter-input": "supply",
  "no-supply": "supply",
  voltage: "supply",
  "cell-current": "supply",
  stall: "supply",
  "too-slow": "supply",
  "stage-time": "supply",
  energy: "supply",
  "wire-current": "wire",
  fuse: "wire",
  unprotected: "wire",
  switch: "wire",
  price: "budget",
  mass: "budget",
}

/** Why combinations are refused; `got` against `limit` tells how near a miss it is. */
export interface Refusal {
  readonly reason: Reason
  readonly got: number
  readonly limit: number
}

function refusal(reason: Reason, got = Number.NaN, limit = Number.NaN): Refusal {
  return { reason, got, limit }
}

/** The first of some limits that is not kept; no limit where it is null. */
function firstBroken(...limits: readonly (readonly [reason: Reason, got: number, limit: number | null])[]): Refusal | null {
  for (const [reason, got, limit] of limits) if (limit !== null && !(got <= limit)) return refusal(reason, got, limit)
  return null
}

/** A supply family with all that does not depend on what it feeds. */
export interface Supply {
  readonly index: number
  readonly parts: SupplyParts
  readonly cost: number
  readonly mass: number
  readonly openVoltage: number
  readonly fullVoltage: number
  /** Maximum voltage the actuators can ever get while it moves. */
  readonly bound: number
  readonly breaks: readonly number[]
}

/** A wire with what both runs of it cost and weigh. */
export interface Wire {
  readonly index: number
  readonly cost: number
  readonly mass: number
  /** Current it bears for good in the air round it, or its maker's where that is less, A. */
  readonly current: number
  /** Largest fuse that guards it there, A. */
  readonly fuse: number
}

/** Every supply family, cheap ones first: what they find saves looking at dear ones. */
export function suppliesOf(plan: SearchPlan, count: number): Supply[] {
  const { stateOfCharge } = plan.goals
  const list = Array.from({ length: count }, (_, index): Supply => {
    const parts = supplyParts(plan, index)
    const { cell, series, parallel, converter } = parts
    const openVoltage = series * openCircuitVoltage(cell.chemistry, stateOfCharge)
    return {
      index,
      parts,
      cost: series * parallel * cell.price + (converter?.price ?? 0),
      mass: series * parallel * cell.mass + (converter?.mass ?? 0),
      openVoltage,
      fullVoltage: series * chemistries[cell.chemistry].cellFullVoltage,
      bound: converter ? converter.outputVoltage : openVoltage,
      breaks: converter ? converter.efficiency.map((point) => point.outputCurrent) : [],
    }
  })
  return list.sort((a, b) => a.cost - b.cost || a.mass - b.mass || a.index - b.index)
}

/** Every wire. */
export function wiresOf(plan: SearchPlan): Wire[] {
  const { source, load, ambientTemperature, insulation } = plan.rig.wiring as NonNullable<SearchPlan["rig"]["wiring"]>
  const metres = 2 * (source.length + (load?.length ?? 0))
  return plan.catalogue.wires.map(({ awg, area, pricePerMetre, linearDensity, current: stated }, index) => {
    const own = { index, cost: metres * pricePerMetre, mass: metres * linearDensity }
    // air as hot as the insulation may get leaves it no current at all
    if (!(ambientTemperature < insulation)) return { ...own, current: 0, fuse: 0 }
    const laid = { ...inAir({ awg, area, material: "copper", stranding: "solid" }), ambientTemperature, insulationRating: insulation }
    const rated = ratedCurrentOf(laid)
    const current = Math.min(rated, stated ?? rated)
    const limit = shortLimit({ insulationRating: insulation, faultTemperatureLimit: SHORT_LIMIT })
    return { ...own, current, fuse: largestFuse(laid, limit, insulation, current) }
  })
}

// a bound must stay below what it bounds whatever the quadrature's last digits
const SAFE = 1 - 1e-9

/** A raise time no wire can better, s: the mechanics on a stiff supply of the maximum voltage this one ever gives. */
export function boundTime(raise: Profile, supply: Supply): number {
  return (leastTime(raise, supply.bound) ?? Number.POSITIVE_INFINITY) * SAFE
}

/** Why the mechanics alone rule a family out. */
export function mechanicalRefusal(plan: SearchPlan, { actuator }: MechanicalParts, mechanics: Mechanics | LinkageFault): Refusal | null {
  if (typeof mechanics === "string") return refusal(mechanics)
  const { swing, rodAngle, raise, lower } = mechanics
  const { goals } = plan
  if (goals.swing !== null && !(swing >= goals.swing)) return refusal("swing", swing, goals.swing)
  if (!(rodAngle >= goals.rodAngle)) return refusal("rod-angle", rodAngle, goals.rodAngle)
  return firstBroken(
    ["force", Math.max(raise.peakForce, lower.peakForce), actuator.ratedForce * goals.forceFactor],
    ["holding", Math.max(raise.heldForce, lower.heldForce), goals.holds ? actuator.holdingForce : null],
  )
}

/** Why an actuator and a supply rule each other out whatever the wire: by the bounds alone. */
export function supplyRefusal(plan: SearchPlan, supply: Supply, { raise, lower }: Mechanics, ratedVoltage: number): Refusal | null {
  const { parts, openVoltage, fullVoltage, bound } = supply
  const { converter, cell, parallel } = parts
  const { goals } = plan
  if (converter && !(openVoltage >= converter.minInputVoltage)) return refusal("no-supply", openVoltage, converter.minInputVoltage)
  const broken = firstBroken(
    ["converter-input", fullVoltage, converter?.maxInputVoltage ?? null],
    ["voltage", converter ? converter.outputVoltage : fullVoltage, goals.voltageFactor * ratedVoltage],
    ["cell-current", Math.max(raise.greatest, lower.greatest) / parallel, converter ? null : cell.current],
  )
  if (broken) return broken
  const [up, down] = [leastTime(raise, bound), leastTime(lower, bound)]
  if (up === null || down === null) return refusal("stall")
  for (const profile of [raise, lower])
    if (!doesMove(profile, stiff(bound), loadedCurrent(profile, goals.stallFactor))) return refusal("stall")
  return firstBroken(["too-slow", up * SAFE, goals.raiseTime], ["stage-time", (up + down) * SAFE, goals.stageTime])
}

/** Why price or mass rule combinations out. */
export function budgetRefusal(plan: SearchPlan, cost: number, mass: number): Refusal | null {
  return firstBroken(["price", cost, plan.goals.price], ["mass", mass, plan.goals.mass])
}

/** Which limit of current along the line does not stand `drawn` from the source and `used` by the actuators, A. */
function lineRefusal(plan: SearchPlan, { parts }: Supply, wire: Wire, drawn: number, used: number): Refusal | null {
  const wiring = plan.rig.wiring
  return firstBroken(
    ["cell-current", drawn / parts.parallel, parts.cell.current],
    ["wire-current", wiring?.load ? Math.max(drawn, used) : drawn, wire.current],
    ["fuse", drawn, wiring?.fuseRating ?? null],
    ["switch", drawn, wiring?.switchRating ?? null],
  )
}

/** Why a wire does not go with the rig's fuse: one that lets more through than the wire stands does not protect it. */
export function wireRefusal(plan: SearchPlan, wire: Wire): Refusal | null {
  return firstBroken(["unprotected", plan.rig.wiring?.fuseRating ?? Number.NEGATIVE_INFINITY, wire.fuse])
}

/** What is known before any time is calculated: without a converter the line's current is the actuators'. */
export function currentRefusal(plan: SearchPlan, supply: Supply, wire: Wire, { raise, lower }: Mechanics): Refusal | null {
  const used = Math.max(raise.greatest, lower.greatest)
  return supply.parts.converter ? null : lineRefusal(plan, supply, wire, used, used)
}

/** The raise time in full, or why there is none within the goals. */
export function raiseOrRefusal(plan: SearchPlan, supply: Supply, circuit: Circuit, raise: Profile): number | Refusal {
  const time = travelTime(raise, circuit, supply.breaks)
  if (typeof time === "string") return refusal(time)
  if (!doesMove(raise, circuit, loadedCurrent(raise, plan.goals.stallFactor))) return refusal("stall")
  return firstBroken(["too-slow", time, plan.goals.raiseTime]) ?? time
}

/** Why a combination that raises in time still does not do. */
export function dayRefusal(
  plan: SearchPlan,
  supply: Supply,
  wire: Wire,
  circuit: Circuit,
  mechanics: Mechanics,
  up: number,
): Refusal | null {
  const { raise, lower } = mechanics
  const { parts, breaks } = supply
  const { goals } = plan
  const down = travelTime(lower, circuit, breaks)
  if (typeof down === "string") return refusal(down)
  if (!doesMove(lower, circuit, loadedCurrent(lower, goals.stallFactor))) return refusal("stall")
  const slow = firstBroken(["stage-time", up + down, goals.stageTime])
  if (slow) return slow
  if (parts.converter) {
    const drawn = Math.max(peakDrawn(raise, circuit), peakDrawn(lower, circuit))
    const broken = lineRefusal(plan, supply, wire, drawn, Math.max(raise.greatest, lower.greatest))
    if (broken) return broken
  }
  if (goals.moves === null) return null
  return firstBroken(["energy", dayCharge(plan, supply, circuit, mechanics), usableCharge(plan, parts)])
}

/** Charge a day's moves and standby draw from the source, C. */
export function dayCharge(plan: SearchPlan, supply: Supply, circuit: Circuit, { raise, lower }: Mechanics): number {
  const { moves, standby } = plan.goals
  const cycle = drawnCharge(raise, circuit, supply.breaks) + drawnCharge(lower, circuit, supply.breaks)
  return (moves ?? 0) * cycle + standby / supply.openVoltage
}

/** Charge a full pack may give before its reserve is touched, C. */
export function usableCharge(plan: SearchPlan, { cell, parallel }: SupplyParts): number {
  return parallel * cell.capacity * (1 - plan.goals.reserve)
}
