import type { Charge, Current, Mass, Resistance } from "../quantity/index.js"
import type { SiOf } from "../solver/index.js"
import { type Chemistry, capacityFactor, chemistries, openCircuitVoltage, resistanceFactor } from "./chemistry.js"
import { dischargeLimitFactor } from "./data.js"

/** A cell to choose from; an entry of `genericCells` with a name fits. */
export interface CatalogueCell {
  /** Name of the cell. */
  name: string
  /** Chemistry. */
  chemistry?: Chemistry
  /** Capacity. */
  capacity: Charge
  /** Direct-current resistance at 25 °C. */
  resistance: Resistance
  /** Mass. */
  cellMass: Mass
  /** Greatest lasting discharge current. */
  maxCurrent: Current
  /** Greatest charge current; not used here, so that a `genericCells` entry fits. */
  maxChargeCurrent?: Current | null
  /** Price, in any currency. */
  cellPrice?: number | null
}

/** A pack that meets everything. */
export interface PackChoice {
  /** Cell. */
  readonly name: string
  /** In series. */
  readonly series: number
  /** In parallel. */
  readonly parallel: number
  /** Cells. */
  readonly cells: number
  /** Nominal voltage, V. */
  readonly voltage: number
  /** Nominal energy, J. */
  readonly energy: number
  /** Mass of the cells, kg. */
  readonly mass: number
  /** Voltage under the peak current at low charge, V. */
  readonly lowVoltage: number
  /** Current of each cell against its limit. */
  readonly cellLoading: number
  /** Price of the cells. */
  readonly cost: number | null
  /** What set the number in parallel: `current`, `energy` or `sag`. */
  readonly setBy: string
  /** Why it is not first; empty for the first. */
  readonly lostBy: string
}

/** A pack that fails, and why. */
export interface PackLoser {
  /** Cell. */
  readonly name: string
  /** Cells in series tried; 0 where none fits the voltage window. */
  readonly series: number
  /** Because. */
  readonly reason: string
}

/** A catalogue's cell in SI. */
export type CellSi = SiOf<CatalogueCell>
type Cell = CellSi

/** What a pack must meet, SI. */
interface Si {
  readonly minVoltage: number
  readonly current: number
  readonly energy: number
  readonly usableShare: number
  readonly lowCharge: number
  readonly temperature: number
  readonly maxMass: number | null
  readonly transportLimit: number | null
  readonly maxParallel: number
}

/** How far a candidate misses, for the nearest miss of a refusal. */
export interface Miss {
  readonly loser: PackLoser
  readonly shortBy: number
  readonly nearest: Readonly<Record<string, number>>
}

/** Three digits, for a sentence. */
export const digits = (x: number) => x.toPrecision(3)

/** Least whole number at or above x, dust of rounding left out. */
const atLeast = (x: number) => Math.max(1, Math.ceil(x - 1e-9))

/** Needs of a cell at a number in series: parallel cells for current, for energy and against sag. */
function parallelNeeds(cell: Cell, series: number, si: Si) {
  const { nominalVoltage, cutOffVoltage } = chemistries[cell.chemistry]
  const limit = cell.maxCurrent * dischargeLimitFactor(cell.chemistry, si.temperature)
  const energy = series * nominalVoltage * cell.capacity * si.usableShare * capacityFactor(cell.chemistry, si.temperature)
  const least = Math.max(si.minVoltage, cutOffVoltage * series)
  const spare = openCircuitVoltage(cell.chemistry, si.lowCharge) * series - least
  const resistance = cell.resistance * resistanceFactor(cell.chemistry, si.temperature) * series
  return {
    limit,
    current: limit > 0 ? si.current / limit : Number.POSITIVE_INFINITY,
    energy: si.energy / energy,
    sag: spare > 0 ? (si.current * resistance) / spare : Number.POSITIVE_INFINITY,
    resistance,
    spare,
  }
}

/** Judges one cell at one number in series: a pack that fits, or why none does. */
export function judge(cell: Cell, series: number, si: Si): PackChoice | Miss {
  const { nominalVoltage } = chemistries[cell.chemistry]
  const lose = (reason: string, shortBy: number, nearest: Readonly<Record<string, number>> = {}): Miss => ({
    loser: { name: cell.name, series, reason },
    shortBy,
    nearest,
  })
  const needs = parallelNeeds(cell, series, si)
  if (!(needs.spare > 0))
    return lose(
      `${series} in series have ${digits(needs.spare + Math.max(si.minVoltage, chemistries[cell.chemistry].cutOffVoltage * series))} V at ${digits(100 * si.lowCharge)} % charge even without load, no more than the least voltage`,
      -needs.spare,
      { minVoltage: openCircuitVoltage(cell.chemistry, si.lowCharge) * series * 0.99 },
    )
  if (!(needs.limit > 0)) return lose("makers allow no discharge at this temperature", si.current)
  const most = Math.max(needs.current, needs.energy, needs.sag)
  const parallel = atLeast(most)
  const setBy = most === needs.current ? "current" : most === needs.energy ? "energy" : "sag"
  if (parallel > si.maxParallel)
    return lose(`needs ${parallel} in parallel for ${setBy}, more than ${si.maxParallel}`, parallel - si.maxParallel, {
      maxParallel: parallel,
    })
  const count = series * parallel
  const energy = count * nominalVoltage * cell.capacity
  const mass = count * cell.cellMass
  if (si.maxMass !== null && mass > si.maxMass)
    return lose(
      `${series}S${parallel}P (${setBy} sets the ${parallel}) weighs ${digits(mass)} kg, ${digits(mass - si.maxMass)} kg too much`,
      mass - si.maxMass,
      { maxMass: mass },
    )
  if (si.transportLimit !== null && energy > si.transportLimit * (1 + 1e-12))
    return lose(
      `${series}S${parallel}P (${setBy} sets the ${parallel}) holds ${digits(energy / 3600)} Wh, over the ${digits(si.transportLimit / 3600)} Wh for carriage`,
      energy - si.transportLimit,
      { transportLimit: energy },
    )
  return {
    name: cell.name,
    series,
    parallel,
    cells: count,
    voltage: series * nominalVoltage,
    energy,
    mass,
    lowVoltage: openCircuitVoltage(cell.chemistry, si.lowCharge) * series - (si.current * needs.resistance) / parallel,
    cellLoading: si.current / parallel / needs.limit,
    cost: cell.cellPrice === null ? null : count * cell.cellPrice,
    setBy,
    lostBy: "",
  }
}
