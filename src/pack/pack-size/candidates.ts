import type { Charge, Current, Mass, Resistance, Voltage } from "../../quantity/index.js"
import { fill, type SiOf, type Values } from "../../solver/index.js"
import { type Chemistry, capacityFactor, chemistries, openCircuitVoltage, resistanceFactor } from "../chemistry.js"
import { dischargeLimitFactor } from "../data.js"
import { capacityShareByDuration } from "../data-rate.js"

/** A cell to choose from; an entry of `genericCells` with a name fits. */
export interface CellOnOffer {
  /** Name of the cell. [text of 1 to 100 characters] */
  name: string
  /** Cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc] */
  chemistry?: Chemistry
  /** Capacity [Q_c; 1 mAh to 1000 Ah] */
  cellCapacity: Charge
  /** Direct-current resistance at 25 °C. [r_c; 0 to 100 Ω] */
  cellResistance: Resistance
  /** Mass [m_c; 0.1 g to 100 kg] */
  cellMass: Mass
  /** Maximum continuous discharge current. [I_d; 0.1 mA to 1000 A] */
  cellMaxCurrent: Current
  /** Maximum charge current; not used here, so that a `genericCells` entry fits. [I_c; 0 to 1000 A; optional] */
  cellMaxChargeCurrent?: Current | null
  /** Minimum voltage under load; the chemistry's where left out. [V_cut; 1 mV to 10 V; optional] */
  cellCutOffVoltage?: Voltage | null
  /** Price, in any currency. [c_c; 0 to 1000000; optional] */
  cellPrice?: number | null
}

/** A pack that meets everything. */
export interface PackCandidate {
  /** Cell [text] */
  readonly name: string
  /** In series [number] */
  readonly series: number
  /** In parallel [number] */
  readonly parallel: number
  /** Cells [number] */
  readonly cellCount: number
  /** Nominal voltage [V] */
  readonly nominalVoltage: number
  /** Nominal energy. [J] */
  readonly energy: number
  /** Mass of the cells. [kg] */
  readonly mass: number
  /** Voltage under the peak current at low charge. [V] */
  readonly minTerminalVoltage: number
  /** Current of each cell against its limit. [as a fraction] */
  readonly cellUtilisation: number
  /** Price of the cells. [number] */
  readonly price: number | null
  /** What set the number in parallel: `peakCurrent`, `energy` or `sag`. [text] */
  readonly setBy: string
  /** Why it is not first; empty for the first. [text] */
  readonly lostBy: string
}

/** A pack that fails, and why. */
export interface RejectedPack {
  /** Cell [text] */
  readonly name: string
  /** Cells in series tried; 0 where none fits the voltage window. [number] */
  readonly series: number
  /** Because [text] */
  readonly reason: string
}

/** A catalogue's cell in SI. */
export type CellSi = SiOf<CellOnOffer>
type Cell = CellSi

/** What a pack must meet, SI. */
interface Si {
  readonly minVoltage: number
  readonly peakCurrent: number
  readonly meanCurrent: number | null
  readonly energy: number
  readonly usableShare: number
  readonly startStateOfCharge: number
  readonly capacityShare: number
  readonly resistanceRatio: number
  readonly minStateOfCharge: number
  readonly cellTemperature: number
  readonly maxMass: number | null
  readonly transportEnergyLimit: number | null
  readonly maxParallel: number
}

/** A pack that fails, and the limit that would have to give. */
export interface Miss {
  /** Told only when asked: a search for the nearest change judges many packs whose reasons nobody reads. */
  readonly loser: () => RejectedPack
  readonly frees: string
}

/** Smallest whole number at or above x, dust of rounding left out. */
const atLeast = (x: number) => Math.max(1, Math.ceil(x - 1e-9))

/** Minimum voltage of a cell under load, V. */
export const leastVoltage = (cell: Cell) => cell.cellCutOffVoltage ?? chemistries[cell.chemistry].cellCutOffVoltage

/** Share of the capacity left at the rate at which so many cells in series are emptied: the energy and the current tell how long that takes. */
export function shareOf(cell: Cell, series: number, si: Si): number {
  const perCoulomb = series * chemistries[cell.chemistry].cellNominalVoltage * si.usableShare
  const printed = si.startStateOfCharge * capacityFactor(cell.chemistry, si.cellTemperature)
  return capacityShareByDuration(cell.chemistry, si.energy / (perCoulomb * printed * (si.meanCurrent ?? si.peakCurrent)) / 3600)
}

/** What a cell gives at its age, the temperature and the low charge asked about. */
function cellInUse(cell: Cell, si: Si) {
  return {
    limit: cell.cellMaxCurrent * dischargeLimitFactor(cell.chemistry, si.cellTemperature),
    energy:
      chemistries[cell.chemistry].cellNominalVoltage *
      cell.cellCapacity *
      si.usableShare *
      si.capacityShare *
      si.startStateOfCharge *
      capacityFactor(cell.chemistry, si.cellTemperature),
    openVoltage: openCircuitVoltage(cell.chemistry, si.minStateOfCharge),
    resistance: cell.cellResistance * si.resistanceRatio * resistanceFactor(cell.chemistry, si.cellTemperature),
  }
}

/** A judge of one cell by the number in series: a pack that fits, or why none does. */
export function judgeOf(cell: Cell, si: Si): (series: number) => PackCandidate | Miss {
  const inUse = cellInUse(cell, si)
  return (series) => judge(cell, inUse, series, si)
}

function judge(cell: Cell, inUse: ReturnType<typeof cellInUse>, series: number, si: Si): PackCandidate | Miss {
  const { cellNominalVoltage } = chemistries[cell.chemistry]
  const lose = (template: string, values: Values, frees: string): Miss => ({
    loser: () => ({ name: cell.name, series, reason: fill(template, values) }),
    frees,
  })
  const least = Math.max(si.minVoltage, leastVoltage(cell) * series)
  const openVoltage = inUse.openVoltage * series
  const spare = openVoltage - least
  if (!(spare > 0))
    return lose(
      "{series} in series have {open voltage} at {charge ratio %} charge even without load, no more than the minimum voltage of {least voltage}",
      { series, open: openVoltage, charge: si.minStateOfCharge, least },
      "minVoltage",
    )
  if (!(inUse.limit > 0)) return lose("makers allow no discharge at this temperature", {}, "cellTemperature")
  const needs = {
    current: si.peakCurrent / inUse.limit,
    energy: si.energy / (inUse.energy * series * shareOf(cell, series, si)),
    sag: (si.peakCurrent * inUse.resistance * series) / spare,
  }
  const most = Math.max(needs.current, needs.energy, needs.sag)
  const parallel = atLeast(most)
  const setBy = most === needs.current ? "current" : most === needs.energy ? "energy" : "sag"
  if (parallel > si.maxParallel)
    return lose(
      "needs {parallel} in parallel for {setBy}, more than {allowed}",
      { parallel, setBy, allowed: si.maxParallel },
      "maxParallel",
    )
  const count = series * parallel
  const energy = count * cellNominalVoltage * cell.cellCapacity
  const mass = count * cell.cellMass
  const pack = { series, parallel, setBy }
  if (si.maxMass !== null && mass > si.maxMass)
    return lose(
      "{series}S{parallel}P ({setBy} sets the {parallel}) weighs {mass mass}, {excess mass} too much",
      { ...pack, mass, excess: mass - si.maxMass },
      "maxMass",
    )
  if (si.transportEnergyLimit !== null && energy > si.transportEnergyLimit * (1 + 1e-12))
    return lose(
      "{series}S{parallel}P ({setBy} sets the {parallel}) holds {energy energy Wh}, over the {allowed energy Wh} for carriage",
      { ...pack, energy, allowed: si.transportEnergyLimit },
      "transportEnergyLimit",
    )
  return {
    name: cell.name,
    series,
    parallel,
    cellCount: count,
    nominalVoltage: series * cellNominalVoltage,
    energy,
    mass,
    minTerminalVoltage: openVoltage - (si.peakCurrent * inUse.resistance * series) / parallel,
    cellUtilisation: si.peakCurrent / parallel / inUse.limit,
    price: cell.cellPrice === null ? null : count * cell.cellPrice,
    setBy,
    lostBy: "",
  }
}
