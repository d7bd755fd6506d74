import type { Angle, Mass, Ratio, Time } from "../../quantity/index.js"
import type { RigDocument, RigPack } from "../../rig/document/document.js"
import { rigFields } from "../../rig/document/fields.js"
import type { AnyFields, Fields, SiOf } from "../../solver/index.js"
import { readInput } from "../../solver/read.js"
import { type Catalogue, type CataloguePlacement, placementFields } from "../catalogue.js"

/** What a search must meet, and what it may choose from beside the catalogue. What is left out or `null` is not asked for. */
export interface SearchGoals {
  /** Numbers of cells in series to try. */
  series?: readonly number[]
  /** Numbers of strings in parallel to try. */
  parallel?: readonly number[]
  /** Places for the actuator, instead of the catalogue's. */
  placements?: readonly CataloguePlacement[]
  /** Time the raise may take; the rig's brief otherwise. */
  raiseTime?: Time | null
  /** Time for up and down together; the rig's brief otherwise. */
  stageTime?: Time | null
  /** Swing wanted at least; the rig's brief otherwise. */
  swing?: Angle | null
  /** Raises and lowerings on one charge; the rig's day otherwise. */
  moves?: number | null
  /** Share of the charge kept in hand; the rig's day otherwise, and 20 % without one. */
  reserve?: Ratio | null
  /** Charge in the pack when it moves; the rig's pack otherwise, and 80 % without one. */
  stateOfCharge?: Ratio | null
  /** Maximum price and mass of the parts chosen, all together. */
  price?: number | null
  mass?: Mass | null
  /** Times its rated voltage an actuator may get from a full pack or a converter. */
  voltageFactor?: number
  /** Times its rated force an actuator may be asked for. */
  forceFactor?: number
  /** Times the move's maximum force it must still manage on the supply before it stalls. */
  stallFactor?: number
  /** Minimum angle between rod and lever; 0 for none. */
  rodAngle?: Angle
  /** Whether the actuator must hold the arms everywhere without power. */
  holds?: boolean
  /** Raise times are told apart in steps of this. */
  timeStep?: Time
}

/** Descriptions of the goals. */
export const goalFields: Fields<SearchGoals> = {
  series: {
    kind: "list",
    label: "cells in series to try",
    min: 1,
    max: 30,
    of: { kind: "number", symbol: "N_s", label: "cells in series", whole: true, min: 1, max: 30 },
    default: [1, 2, 3, 4],
  },
  parallel: {
    kind: "list",
    label: "strings in parallel to try",
    min: 1,
    max: 50,
    of: { kind: "number", symbol: "N_p", label: "strings in parallel", whole: true, min: 1, max: 50 },
    default: [1, 2, 3],
  },
  placements: {
    kind: "list",
    label: "places for the actuator",
    min: 0,
    max: 1000,
    of: { kind: "group", label: "place", fields: placementFields },
    default: [],
  },
  raiseTime: { kind: "time", symbol: "t_raise", label: "time for the raise", min: "1 ms", max: "1 h", default: null },
  stageTime: { kind: "time", symbol: "t_stage", label: "time up and down", min: "1 ms", max: "1 d", default: null },
  swing: { kind: "angle", symbol: "theta_w", label: "swing wanted", min: "0.01 deg", max: "360 deg", default: null },
  moves: { kind: "number", symbol: "n_moves", label: "raises and lowerings", whole: true, min: 0, max: 10000, default: null },
  reserve: { kind: "ratio", symbol: "z_res", label: "charge kept in reserve", min: 0, max: 0.9, default: null },
  stateOfCharge: { kind: "ratio", symbol: "z", label: "charge when it moves", min: 0, max: 1, default: null },
  price: { kind: "number", symbol: "c_max", label: "maximum price", min: 0, max: 1e9, default: null },
  mass: { kind: "mass", symbol: "m_max", label: "maximum mass", min: "0.1 g", max: 100, default: null },
  voltageFactor: { kind: "number", symbol: "k_u", label: "times the rated voltage", min: 0.01, max: 2, default: 1.1 },
  forceFactor: { kind: "number", symbol: "k_f", label: "times the rated force", min: 0.01, max: 2, default: 1 },
  stallFactor: { kind: "number", symbol: "k_s", label: "times the maximum force before a stall", min: 1, max: 10, default: 1.3 },
  rodAngle: { kind: "angle", symbol: "tau_min", label: "minimum angle between rod and lever", min: 0, max: "89 deg", default: "30 deg" },
  holds: { kind: "flag", label: "holds without power", default: false },
  timeStep: { kind: "time", symbol: "t_step", label: "step of the raise time", min: 1e-6, max: 60, default: "1 ms" },
}

/** Goals with what the rig says filled in. */
export type PlanGoals = SiOf<SearchGoals> & {
  readonly reserve: number
  readonly stateOfCharge: number
  /** Energy taken all day beside the moves, J. */
  readonly standby: number
}

/** Everything a search works on, as plain SI data that can be sent to another thread. */
export interface SearchPlan {
  readonly rig: SiOf<RigDocument>
  readonly catalogue: SiOf<Catalogue>
  readonly goals: PlanGoals
}

/** A pack with every default in it, for a rig that has none: what the catalogue decides is put over it. */
function plainPack(): NonNullable<SiOf<RigDocument>["pack"]> {
  const decided: RigPack = { chemistry: "nmc", series: 1, parallel: 1, cellCapacity: 1, cellResistance: 0 }
  const read = readInput(rigFields.pack.fields as unknown as AnyFields, decided)
  if (!read.ok) throw new Error("the plain pack is a valid one")
  return read.si as NonNullable<SiOf<RigDocument>["pack"]>
}

/** Puts rig, catalogue and goals together. */
export function planOf(rig: SiOf<RigDocument>, catalogue: SiOf<Catalogue>, goals: SiOf<SearchGoals>): SearchPlan {
  const { brief, day, hinged, pack } = rig
  const given = goals.placements.length ? goals.placements : catalogue.placements
  const own = hinged && {
    name: "as drawn",
    mass: 0,
    price: 0,
    fixedPivot: hinged.fixedPivot,
    movingPivot: hinged.movingPivot,
  }
  return {
    rig: { ...rig, pack: pack ?? plainPack() },
    catalogue: { ...catalogue, placements: given.length || !own ? given : [own] },
    goals: {
      ...goals,
      raiseTime: goals.raiseTime ?? brief?.raiseTime ?? null,
      stageTime: goals.stageTime ?? brief?.stageTime ?? null,
      swing: goals.swing ?? brief?.swing ?? null,
      moves: goals.moves ?? day?.moves ?? null,
      reserve: goals.reserve ?? day?.reserve ?? 0.2,
      stateOfCharge: goals.stateOfCharge ?? pack?.stateOfCharge ?? 0.8,
      standby: day ? day.standby * day.hours : 0,
    },
  }
}

/** Sizes of the three families whose product is searched. */
export function familySizes(plan: SearchPlan): { readonly mechanical: number; readonly supply: number; readonly wire: number } {
  const { catalogue, goals } = plan
  return {
    mechanical: catalogue.actuators.length * catalogue.placements.length * (catalogue.springs.length + 1),
    supply: catalogue.cells.length * goals.series.length * goals.parallel.length * (catalogue.converters.length + 1),
    wire: catalogue.wires.length,
  }
}

type Si = SearchPlan["catalogue"]

/** Parts of a mechanical family by its number. */
export function mechanicalParts(plan: SearchPlan, index: number): MechanicalParts {
  const { actuators, placements, springs } = plan.catalogue
  const withNone = springs.length + 1
  const spring = index % withNone
  const rest = Math.floor(index / withNone)
  return {
    actuator: actuators[Math.floor(rest / placements.length)] as Si["actuators"][0],
    placement: placements[rest % placements.length] as Si["placements"][0],
    spring: springs[spring - 1] ?? null,
  }
}

/** An actuator, its place, and a helper spring or none. */
export interface MechanicalParts {
  readonly actuator: Si["actuators"][0]
  readonly placement: Si["placements"][0]
  readonly spring: Si["springs"][0] | null
}

/** Parts of a supply family by its number. */
export function supplyParts(plan: SearchPlan, index: number): SupplyParts {
  const { cells, converters } = plan.catalogue
  const { series, parallel } = plan.goals
  const withNone = converters.length + 1
  const converter = index % withNone
  let rest = Math.floor(index / withNone)
  const strings = parallel[rest % parallel.length] as number
  rest = Math.floor(rest / parallel.length)
  return {
    cell: cells[Math.floor(rest / series.length)] as Si["cells"][0],
    series: series[rest % series.length] as number,
    parallel: strings,
    converter: converters[converter - 1] ?? null,
  }
}

/** Cells in series and parallel, and a converter or none. */
export interface SupplyParts {
  readonly cell: Si["cells"][0]
  readonly series: number
  readonly parallel: number
  readonly converter: Si["converters"][0] | null
}

/** The rig's arms with other parts on them. */
export function armsWith(plan: SearchPlan, { actuator, placement, spring }: MechanicalParts): NonNullable<SiOf<RigDocument>["hinged"]> {
  const { fixedPivot, movingPivot } = placement
  const arms = plan.rig.hinged as NonNullable<SiOf<RigDocument>["hinged"]>
  return { ...arms, actuator: without(actuator), fixedPivot, movingPivot, spring: spring && without(spring) }
}

function without<T extends { readonly name: string; readonly mass: number; readonly price: number }>(
  part: T,
): Omit<T, "name" | "mass" | "price"> {
  const { name: _name, mass: _mass, price: _price, ...bare } = part
  return bare
}

/** The rig with another supply and wire. */
export function suppliedRig(plan: SearchPlan, { cell, series, parallel, converter }: SupplyParts, wire: Si["wires"][0]): SiOf<RigDocument> {
  const { rig, goals } = plan
  const wiring = rig.wiring as NonNullable<SiOf<RigDocument>["wiring"]>
  const size = { awg: wire.awg, area: wire.area }
  return {
    ...rig,
    bank: null,
    pack: {
      ...(rig.pack as NonNullable<SiOf<RigDocument>["pack"]>),
      chemistry: cell.chemistry,
      series,
      parallel,
      cellCapacity: cell.capacity,
      cellResistance: cell.resistance,
      cellCurrent: cell.current,
      stateOfCharge: goals.stateOfCharge,
    },
    converter: converter && without(converter),
    wiring: { ...wiring, source: { ...wiring.source, ...size }, load: wiring.load && { ...wiring.load, ...size } },
  }
}
