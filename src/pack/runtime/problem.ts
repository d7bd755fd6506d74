import { integrate } from "../../numeric/index.js"
import type { Current, Power, Ratio, Resistance, Time } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { capacityFactor, curveOf } from "../chemistry.js"
import { capacityShareByRate } from "../data-rate.js"
import { type Curve, chargeAt, type Discharge, emfAt, type Load, loadCurrent, thresholdOf } from "../discharge.js"
import { type PackAge, type PackCells, packCutOff, packResistance } from "../fields.js"
import type { OpenCircuitPoint } from "../open-circuit.js"

/** One step of a load pattern; a step without any load is a rest. */
export interface LoadStep {
  /** What it is, for the reader. [text of 0 to 100 characters; default empty] */
  name?: string
  /** How long it lasts in each round; alone, it lasts until the end. [t_l; 0.01 s to 1000 d; default 1 h] */
  duration?: Time
  /** Constant current at the pack. [I_l; 0 to 1000 A; optional] */
  current?: Current | null
  /** Constant power at the pack, as a converter draws. [P_l; 0 to 100 kW; optional] */
  power?: Power | null
  /** Load resistance [R_L; 0.1 mΩ to 1000 kΩ; optional] */
  loadResistance?: Resistance | null
}

/** Input of {@link runtime}. */
export interface RuntimeInput extends PackCells, PackAge {
  /** Loads in order, repeated until the pack is empty. [list of 1 to 100] */
  pattern: readonly LoadStep[]
  /** Maximum continuous discharge current of a cell. [I_d; 0.1 mA to 1000 A; optional] */
  cellMaxCurrent?: Current | null
  /** Current that a cell may give for a short while, by its sheet. [I_p; 0.1 mA to 5000 A; optional] */
  cellPulseCurrent?: Current | null
  /** How long its sheet lets that last. [t_p; 1 ms to 10 min; optional] */
  cellPulseDuration?: Time | null
  /** State of charge at the start [s_0; 0 to 100 %; default 100 %] */
  startStateOfCharge?: Ratio
  /** Open-circuit curve of a cell, from empty to full, instead of the chemistry's. [list of 2 to 2000; optional] */
  openCircuitCurve?: readonly OpenCircuitPoint[] | null
}

type Si = SiOf<RuntimeInput>

/** Under a nanoampere or nanowatt a load counts as none: the time would be beyond all numbers. */
export const LEAST_LOAD = 1e-9

/** The pattern's steps as loads. */
function loadsOf(si: Si): Load[] {
  return si.pattern.map(({ duration, current, power, loadResistance }) => {
    if (current !== null && current > LEAST_LOAD) return { draws: "current", value: current, duration }
    if (power !== null && power > LEAST_LOAD) return { draws: "power", value: power, duration }
    if (loadResistance !== null) return { draws: "resistance", value: loadResistance, duration }
    return { draws: "rest", value: 0, duration }
  })
}

/** Resistance of the whole pack at its age and temperature, Ω. */
export const agedResistance = (si: Si) => packResistance({ ...si, cellResistance: si.cellResistance * si.resistanceRatio })

/** Capacity of the whole pack that age has left, at the printed rate and 20 to 25 °C, C. */
const agedCapacity = (si: Si) => si.cellCapacity * si.parallel * si.capacityShare

/** Charge of each load in one round at the largest current it comes to, C, and the share of the capacity that such a current leaves. */
export function ratesOf(si: Si, curve: Curve, resistance: number, loads: readonly Load[]) {
  const ends = [emfAt(curve, si.startStateOfCharge), emfAt(curve, (curve[0] as readonly [number, number])[0])]
  return loads.map((load) => {
    const current = Math.max(...ends.map((emf) => loadCurrent(load, emf, resistance)))
    return { charge: current * load.duration, share: capacityShareByRate(si.chemistry, (current * 3600) / agedCapacity(si)) }
  })
}

/** Share of the capacity that a pattern leaves: each coulomb counts as much more as its load's rate makes of it. */
function shareOf(si: Si, curve: Curve, resistance: number, loads: readonly Load[]): number {
  const rates = ratesOf(si, curve, resistance, loads)
  const drawn = rates.reduce((sum, { charge }) => sum + charge, 0)
  return drawn > 0 ? drawn / rates.reduce((sum, { charge, share }) => sum + charge / share, 0) : 1
}

/** The discharge that an input describes. */
export function problemOf(si: Si): Discharge & { readonly rateShare: number } {
  const cell: Curve =
    si.openCircuitCurve === null ? curveOf(si.chemistry) : si.openCircuitCurve.map((p) => [p.stateOfCharge, p.voltage] as const)
  const curve = cell.map(([s, v]) => [s, v * si.series] as const)
  const resistance = agedResistance(si)
  const loads = loadsOf(si)
  const rateShare = shareOf(si, curve, resistance, loads)
  return {
    curve,
    capacity: agedCapacity(si) * capacityFactor(si.chemistry, si.cellTemperature) * rateShare,
    resistance,
    cutOff: packCutOff(si),
    start: si.startStateOfCharge,
    loads,
    rateShare,
  }
}

function pieces(curve: Curve, from: number, to: number): readonly (readonly [number, number])[] {
  const knots = [from, ...curve.map(([s]) => s).filter((s) => s > from && s < to), to]
  return knots.slice(1).map((knot, i) => [knots[i] as number, knot] as const)
}

/** Energy the cells gave up, by quadrature of the open-circuit voltage. */
export function cellEnergy(si: Si, endCharge: number): number {
  const { curve, capacity, start } = problemOf(si)
  return pieces(curve, endCharge, start).reduce((sum, [a, b]) => sum + capacity * integrate((s) => emfAt(curve, s), a, b).value, 0)
}

/** Runtime of a single load by quadrature of charge over current; null for a pattern. */
export function quadratureTime(si: Si): number | null {
  const { curve, capacity, start, resistance, cutOff, loads } = problemOf(si)
  const [load] = loads
  if (!load || loads.length > 1) return null
  const end = Math.max(0, chargeAt(curve, thresholdOf(load, resistance, cutOff).emf))
  return pieces(curve, end, start).reduce(
    (sum, [a, b]) => sum + capacity * integrate((s) => 1 / loadCurrent(load, emfAt(curve, s), resistance), a, b).value,
    0,
  )
}
