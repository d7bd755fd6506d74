import { integrate } from "../../numeric/index.js"
import type { Current, Ratio, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { chemistries, curveOf } from "../chemistry.js"
import { type Curve, emfAt } from "../discharge.js"
import { type PackCells, packResistance } from "../fields.js"
import type { OpenCircuitPoint } from "../open-circuit.js"
import { chargeVoltageShift } from "./ends.js"

/** Input of {@link chargeTime}. */
export interface ChargeTimeInput extends Omit<PackCells, "cellCutOffVoltage"> {
  /** Charging current of the whole pack. [I; 1 mA to 1000 A] */
  chargeCurrent: Current
  /** State of charge at the start [s_0; 0 to 100 %; default 0] */
  startStateOfCharge?: Ratio
  /**
   * Voltage of a cell at which the charger holds; the chemistry's where left out (lead by its temperature). [V_c; 10 mV
   * to 20 V; optional]
   */
  cellChargeVoltage?: Voltage | null
  /**
   * Current of the whole pack at which the charger stops; a twentieth of the capacity per hour where left out. [I_e;
   * 0.1 mA to 1000 A; optional]
   */
  terminationCurrent?: Current | null
  /** Open-circuit curve of a cell, from empty to full, instead of the chemistry's. [list of 2 to 2000; optional] */
  openCircuitCurve?: readonly OpenCircuitPoint[] | null
}

type Si = SiOf<ChargeTimeInput>

/** The part of an answer that its proof looks at. */
interface Charged {
  readonly constantCurrentDuration: number
  readonly changeOverStateOfCharge: number
  readonly endStateOfCharge: number
}

/** The pack as the charger sees it. */
export function setUp(si: Si) {
  const cell: Curve =
    si.openCircuitCurve === null ? curveOf(si.chemistry) : si.openCircuitCurve.map((p) => [p.stateOfCharge, p.voltage] as const)
  const curve = cell.map(([s, v]) => [s, v * si.series] as const)
  const capacity = si.cellCapacity * si.parallel
  return {
    curve,
    capacity,
    resistance: packResistance(si),
    limit:
      (si.cellChargeVoltage ?? chemistries[si.chemistry].cellFullVoltage + chargeVoltageShift(si.chemistry, si.cellTemperature)) *
      si.series,
    end: si.terminationCurrent ?? capacity / 3600 / 20,
  }
}

/** Pieces of a curve between two charges, each straight. */
export function straightPieces(curve: Curve, from: number, to: number) {
  const knots = [from, ...curve.map(([s]) => s).filter((s) => s > from && s < to), to]
  return knots.slice(1).flatMap((b, i) => (b > (knots[i] as number) ? [{ a: knots[i] as number, b }] : []))
}

/** Charge at which a rising test turns true, by halving. */
function bisected(test: (s: number) => boolean, from: number): number {
  if (test(from)) return from
  let [low, high] = [from, 1]
  if (!test(1)) return 1
  for (let i = 0; i < 100; i++) {
    const mid = (low + high) / 2
    if (test(mid)) high = mid
    else low = mid
  }
  return high
}

export function changeOverByBisection(si: Si): number {
  const { curve, resistance, limit } = setUp(si)
  return bisected((s) => emfAt(curve, s) + si.chargeCurrent * resistance >= limit, si.startStateOfCharge)
}

export function endByBisection(si: Si, out: Charged): number {
  if (si.chemistry === "nimh") return 1
  const { curve, resistance, limit, end } = setUp(si)
  return bisected((s) => emfAt(curve, s) + Math.min(end, si.chargeCurrent) * resistance >= limit, out.changeOverStateOfCharge)
}

function overPieces(si: Si, from: number, to: number, f: (emf: number) => number): number {
  const { curve } = setUp(si)
  return to > from
    ? straightPieces(curve, from, to).reduce((sum, { a, b }) => sum + integrate((s) => f(emfAt(curve, s)), a, b).value, 0)
    : 0
}

export function tailByQuadrature(si: Si, out: Charged): number {
  if (si.chemistry === "nimh") return 0
  const { capacity, resistance, limit } = setUp(si)
  return resistance > 0
    ? overPieces(si, out.changeOverStateOfCharge, out.endStateOfCharge, (emf) => (capacity * resistance) / (limit - emf))
    : 0
}

export function heatByQuadrature(si: Si, out: Charged): number {
  const { capacity, resistance, limit } = setUp(si)
  const atCurrent = si.chargeCurrent ** 2 * resistance * out.constantCurrentDuration
  return si.chemistry === "nimh"
    ? atCurrent
    : atCurrent + overPieces(si, out.changeOverStateOfCharge, out.endStateOfCharge, (emf) => capacity * (limit - emf))
}

export function storedByQuadrature(si: Si, out: Charged): number {
  const { capacity } = setUp(si)
  return overPieces(si, si.startStateOfCharge, out.endStateOfCharge, (emf) => capacity * emf)
}
