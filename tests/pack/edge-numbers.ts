import { chemistries, packSize } from "../../src/pack/index.js"
import type { Numbers } from "../helpers/edges.js"

// biome-ignore lint/suspicious/noExplicitAny: each computation knows the solver its key names
type Any = any

/* Figures copied by hand from the sources that src/pack names, for a second computation of what its messages say. */
const full: Record<string, number> = { nmc: 4.2, lfp: 3.65, lco: 4.2, nimh: 1.45, alkaline: 1.6, lead: 14.5 / 6 }
const least: Record<string, number> = { nmc: 2.5, lfp: 2.5, lco: 3, nimh: 1, alkaline: 0.8, lead: 1.75 }
const hottest: Record<string, number> = { nmc: 60, lco: 60, lfp: 60, nimh: 65, alkaline: 50, lead: 50 }
const coldestCharge: Record<string, number> = { nimh: 0, lead: -10 }
/** 30 mV/K for six cells of lead against 25 °C; a lower voltage only above 35 °C. */
const leadShift = (celsius: number) => (celsius > 25 && celsius <= 35 ? 0 : (0.03 * (25 - celsius)) / 6)
const overCharge: Record<string, number> = { nmc: 4.2, lco: 4.2, lfp: 3.7, lead: 2.45 }

/** Share of a cell's discharge current that its sheets leave at a temperature. */
function discharge(chemistry: string, t: number): number {
  if (t < -20 || t > (hottest[chemistry] as number)) return 0
  if (!["nmc", "lco", "lfp"].includes(chemistry) || (t > 5 && t < 45)) return 1
  if (chemistry === "lfp") return t <= 5 ? 0.25 : 0.5
  return t <= 5 ? 1 / 6 : 1 / 3
}

/** Multiples of the capacity per hour that a cell takes at a temperature. */
function chargeRate(chemistry: string, t: number): number {
  if (chemistry === "nimh") return t < 0 || t > 45 ? 0 : t <= 5 ? 0.3 : 1
  if (chemistry === "lead") return t < -10 || t > 50 ? 0 : 0.3
  const band = t < 0 || t > 45 ? 3 : t <= 5 ? 0 : t <= 15 ? 1 : 2
  return (chemistry === "lfp" ? [0.2, 0.5, 1, 0] : [0.1, 0.2, 0.5, 0])[band] as number
}

const ampereHours = (si: { cellCapacity: number; parallel: number }) => (si.cellCapacity * si.parallel) / 3600
/** The best cell of a packSize answer. */
const best = (si: Any, out: Any) => si.cells.find((c: { name: string }) => c.name === out.bestCell)

/** Voltages that an input may state: of a cell, and of the whole pack. */
interface Stated {
  readonly cellFullVoltage: number | null
  readonly cellChargeVoltage: number | null
  readonly openCircuitCurve: readonly { readonly voltage: number }[] | null
  readonly openCircuitVoltage: number | null
}

/** Numbers of the cautions that go with any pack; `of` finds the cell's chemistry and series. */
export function packNumbers(
  solver: string,
  of: (si: Any, out: Any) => { chemistry: string; series: number; cellCutOffVoltage: number } & Partial<Stated>,
): Numbers {
  return {
    [`${solver}.touch-voltage.full`]: (si, out) => {
      const pack = of(si, out)
      const stated = [
        pack.cellFullVoltage,
        pack.cellChargeVoltage,
        ...(pack.openCircuitCurve ?? []).map((p) => p.voltage),
        full[pack.chemistry],
      ]
      const cell = Math.max(...stated.filter((u) => u !== null && u !== undefined))
      return Math.max(cell * pack.series, pack.openCircuitVoltage ?? 0)
    },
    [`${solver}.touch-voltage.wet`]: () => 30,
    [`${solver}.touch-voltage.dry`]: () => 60,
    [`${solver}.hot-cells.hottest`]: (si, out) => hottest[of(si, out).chemistry] as number,
    [`${solver}.too-cold-to-use.coldest`]: () => -20,
    [`${solver}.deep-discharge.least`]: (si, out) => of(si, out).cellCutOffVoltage,
    [`${solver}.deep-discharge.allowed`]: (si, out) => least[of(si, out).chemistry] as number,
    [`${solver}.cellCutOffVoltage.full`]: (si) => full[si.chemistry] as number,
  }
}
const own = (si: Any) => si

const packOhm = (si: {
  series: number
  parallel: number
  cellResistance: number
  interconnectResistance: number
  chemistry: string
  cellTemperature: number
  resistanceRatio?: number
}) => {
  const energy: Record<string, number> = { nmc: 20e3, lfp: 20e3, lco: 20e3, nimh: 15e3, alkaline: 25e3, lead: 15e3 }
  const cold = Math.exp(((energy[si.chemistry] as number) / 8.314462618) * (1 / (si.cellTemperature + 273.15) - 1 / 298.15))
  return (si.series / si.parallel) * si.cellResistance * (si.resistanceRatio ?? 1) * cold + si.interconnectResistance
}
const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
const shorted = (si: Any) => sum(si.strings.map((s: Any) => s.openCircuitVoltage / s.resistance))
const worst = (si: Any, out: Any, limit: string, sign: number) => {
  const left =
    sign > 0 ? discharge(si.chemistry, si.cellTemperature) : chargeRate(si.chemistry, si.cellTemperature) / chargeRate(si.chemistry, 25)
  const rows = si.strings.map((s: Any, k: number) => ({
    string: k + 1,
    limit: s[limit] === null ? null : left * s[limit],
    current: sign * out.strings[k].current,
  }))
  return rows
    .filter((r: Any) => r.limit !== null && r.current > r.limit)
    .sort((a: Any, b: Any) => b.current / b.limit - a.current / a.limit)[0]
}
/** By the curve of nickel-rich lithium at 10, 50 and 90 %. */
const cellsOf = (si: Any) => Math.max(1, Math.round(Math.max(...si.strings.map((s: Any) => s.openCircuitVoltage)) / 3.7167))

/** Share of the printed capacity at a rate, by Peukert's exponents between the rows of the sheets. */
export function rateShare(chemistry: string, rate: number): number {
  if (chemistry !== "lead" && chemistry !== "nimh") return 1
  const rows =
    chemistry === "lead"
      ? [
          [2 / 40, 1],
          [3.7 / 40, 37 / 40],
          [6.6 / 40, 33 / 40],
          [24 / 40, 24 / 40],
        ]
      : [
          [0.2, 1],
          [1, 0.9],
        ]
  let k = 1
  while (k < rows.length - 1 && rate > (rows[k]?.[0] as number)) k++
  const [[a, f], [b, g]] = [rows[k - 1], rows[k]] as [[number, number], [number, number]]
  return rate <= (rows[0]?.[0] as number) ? 1 : f * (rate / a) ** (Math.log(g / f) / Math.log(b / a))
}
function packShare(si: Any, out: Any): number {
  const { chemistry, cellCapacity } = best(si, out)
  return rateShare(chemistry, ((si.meanCurrent ?? si.peakCurrent) * 3600) / (cellCapacity * out.parallel * si.capacityShare))
}

/** Second computations of the numbers that are no paths of input or result. */
export const numbers: Numbers = {
  ...packNumbers("cellPack", own),
  ...packNumbers("packUnderLoad", own),
  ...packNumbers("runtime", own),
  ...packNumbers("chargeTime", own),
  ...packNumbers("packSize", (si, out) => ({ ...best(si, out), series: out.series })),
  "cellPack.limit-by-temperature.left": (si) => discharge(si.chemistry, si.cellTemperature),
  "cellPack.groupCapacities.groups": (si) => si.groupCapacities.length,
  "packUnderLoad.over-current.limit": (si) => si.cellMaxCurrent * discharge(si.chemistry, si.cellTemperature),
  "packUnderLoad.lead-rate.rate": (si, out) => out.current / ampereHours(si),
  "packUnderLoad.nickel-rate.rate": (si, out) => out.current / ampereHours(si),
  "packUnderLoad.current.loads": (si) => [si.current, si.power, si.loadResistance].filter((x) => x !== null).length,
  "runtime.over-current.cellCurrent": (si, out) => out.peakCurrent / si.parallel,
  "runtime.over-current.limit": (si) => si.cellMaxCurrent * discharge(si.chemistry, si.cellTemperature),
  ...Object.fromEntries(
    ["pulse", "over-pulse", "pulse-too-long", "pulse-heat"].flatMap((code) =>
      Object.entries({
        cellCurrent: (si: Any, out: Any) => Math.max(...cellCurrents(si, out)),
        limit: (si: Any) => si.cellMaxCurrent * discharge(si.chemistry, si.cellTemperature),
        allowed: (si: Any) => si.cellPulseCurrent * discharge(si.chemistry, si.cellTemperature),
        longest: longestPulse,
        sameHeat: (si: Any, out: Any) => {
          const durations: number[] = si.pattern.map((step: { duration: number }) => step.duration)
          return Math.sqrt(sum(cellCurrents(si, out).map((i, k) => i * i * (durations[k] as number))) / sum(durations))
        },
      }).map(([name, of]) => [`runtime.${code}.${name}`, of]),
    ),
  ),
  "runtime.pattern.0.pattern": () => 2,
  "packSize.lead-rate.rateShare": packShare,
  "packSize.nickel-rate.rateShare": packShare,
  "packSize.cells.1.name.name": (si) => si.cells[1].name,
  "packSize.cells.0.cellCutOffVoltage.least": (si) => si.cells[0].cellCutOffVoltage,
  "packSize.cells.0.cellCutOffVoltage.full": (si) => full[si.cells[0].chemistry] as number,
  "chargeTime.cold-charge.coldest": (si) => coldestCharge[si.chemistry] as number,
  "chargeTime.too-hot-to-charge.hottest": (si) => (si.chemistry === "lead" ? 50 : 45),
  "chargeTime.charge-rate.rate": (si) => si.chargeCurrent / ampereHours(si),
  "chargeTime.charge-rate.allowed": (si) => chargeRate(si.chemistry, si.cellTemperature),
  "chargeTime.over-charge.highest": (si) =>
    (overCharge[si.chemistry] as number) + (si.chemistry === "lead" ? leadShift(si.cellTemperature) : 0),
  "chargeTime.nickel-timer.limit": () => 0.3,
  "chargeTime.nickel-end.rate": (si) => si.chargeCurrent / ampereHours(si),
  "chargeTime.nickel-end.hottest": () => 42,
  "chargeTime.nickel-end.low": () => 1,
  "chargeTime.nickel-end.high": () => 2,
  "chargeTime.cellChargeVoltage.full": (si) => full[si.chemistry] as number,
  "chargeTime.not-rechargeable.shortBy": (si) => si.chargeCurrent,
  "chargeTime.too-cold.shortBy": (si) => -si.cellTemperature,
  "powerBank.touch-voltage.full": (si) => Math.max(si.loadVoltage, si.terminalVoltage),
  "powerBank.touch-voltage.wet": () => 30,
  "powerBank.touch-voltage.dry": () => 60,
  "parallelSharing.touch-voltage.full": (si) => Math.max(...si.strings.map((s: { openCircuitVoltage: number }) => s.openCircuitVoltage)),
  "parallelSharing.touch-voltage.wet": () => 30,
  "parallelSharing.touch-voltage.dry": () => 60,
  "parallelSharing.unequal-charge.spread": (si) => {
    const sorted = si.strings.map((s: { openCircuitVoltage: number }) => s.openCircuitVoltage).sort((a: number, b: number) => a - b)
    return sorted.at(-1) - sorted[0]
  },
  ...Object.fromEntries(
    (["string", "current", "limit"] as const).flatMap((key) => [
      [`parallelSharing.over-current.${key}`, (si: unknown, out: unknown) => worst(si, out, "maxCurrent", 1)[key]],
      [`parallelSharing.over-charge.${key}`, (si: unknown, out: unknown) => worst(si, out, "maxChargeCurrent", -1)[key]],
    ]),
  ),
  "parallelSharing.span-taken.span": (si) => ((4.0919 - 3.3041) / 0.8) * cellsOf(si),
  "parallelSharing.span-taken.cells": cellsOf,
  "parallelSharing.insufficient-current.shortBy": (si) => si.current - 0.999 * shorted(si),
  "parallelSharing.insufficient-current.at.shortCircuit": shorted,
  "powerBank.current.loads": () => 2,
  "powerBank.insufficient-current.at.outputCurrent": portCurrent,
  "powerBank.insufficient-current.at.greatest": (si) =>
    0.999 * si.outputCurrentLimit * si.terminalVoltage * (si.loadVoltage === null ? 1 : si.boostEfficiency),
  "powerBank.insufficient-current.shortBy": (si) => portCurrent(si) - si.outputCurrentLimit,
  // two a person since 27 March 2026
  "airTravel.power-bank-on-board.maxCount": () => 2,
  "airTravel.energy.rated": (si) => si.nominalVoltage * si.capacity,
  "packUnderLoad.insufficient-power.at.resistance": packOhm,
  "packUnderLoad.insufficient-current.at.resistance": packOhm,
  "packUnderLoad.insufficient-power.shortBy": (si) => si.power - emf(si) ** 2 / packOhm(si) / 4,
  "packUnderLoad.insufficient-current.shortBy": (si) => si.current - (0.999 * emf(si)) / packOhm(si),
  "packUnderLoad.insufficient-current.at.shortCircuit": (si) => emf(si) / packOhm(si),
  "packUnderLoad.insufficient-power.at.openCircuitVoltage": emf,
  "packUnderLoad.insufficient-current.at.openCircuitVoltage": emf,
  "chargeTime.already-full.at.maxStartStateOfCharge": maxStartStateOfCharge,
  "chargeTime.already-full.shortBy": (si) => si.startStateOfCharge - 0.99 * maxStartStateOfCharge(si),
  "chargeTime.insufficient-voltage.at.held": held,
  "chargeTime.insufficient-voltage.at.stop": stop,
  "chargeTime.insufficient-voltage.at.empty": (si) => curveAt(si, 0),
  "chargeTime.insufficient-voltage.shortBy": (si) => 1.001 * (curveAt(si, si.startStateOfCharge) + stop(si) * packOhm(si)) - held(si),
  "runtime.no-load.shortBy": () => 1e-9,
  "runtime.depleted.shortBy": () => 0.01,
  "runtime.insufficient-power.at.power": (si) => firstRefused(si).power as number,
  "runtime.insufficient-power.at.openCircuitVoltage": (si) => curveAt(si, si.startStateOfCharge),
  "runtime.insufficient-power.at.maxPower": mostPower,
  "runtime.insufficient-power.shortBy": (si) => (firstRefused(si).power as number) - 0.999 * mostPower(si),
  "runtime.insufficient-voltage.at.openCircuitVoltage": (si) => curveAt(si, si.startStateOfCharge),
  "runtime.insufficient-voltage.at.cutOffVoltage": cutOff,
  "runtime.insufficient-voltage.at.needed": (si) => neededEmf(si, firstRefused(si)),
  "runtime.insufficient-voltage.at.greatestCurrent": (si) =>
    packOhm(si) > 0 ? Math.max(0, (curveAt(si, si.startStateOfCharge) - cutOff(si)) / packOhm(si)) : 0,
  "runtime.insufficient-voltage.shortBy": (si) => 1.001 * neededEmf(si, firstRefused(si)) - curveAt(si, si.startStateOfCharge),
  // how far the one limit is from the value that was tried and works; all of the energy where none is
  "packSize.no-candidate.shortBy": (si) => {
    const outcome = packSize.attempt(si)
    if (outcome.ok || !("nearest" in outcome.error)) return Number.NaN
    const [change] = Object.entries(outcome.error.nearest)
    return change ? Math.abs(change[1] - si[change[0]]) : si.energy
  },
}

interface LoadStep {
  readonly current: number | null
  readonly power: number | null
  readonly loadResistance: number | null
}

/** Open-circuit voltage of the pack at a charge, by its own straight lines. */
function curveAt(si: Any, charge: number): number {
  if (!si.openCircuitCurve) return si.series * openCircuit(si.chemistry, charge)
  const points = si.openCircuitCurve as readonly { stateOfCharge: number; voltage: number }[]
  const i = Math.max(
    1,
    points.findIndex((p) => p.stateOfCharge >= charge),
  )
  const [a, b] = [points[i - 1], points[i]] as [(typeof points)[number], (typeof points)[number]]
  return si.series * (a.voltage + ((charge - a.stateOfCharge) / (b.stateOfCharge - a.stateOfCharge)) * (b.voltage - a.voltage))
}
function openCircuit(chemistry: string, charge: number): number {
  const { curve } = chemistries[chemistry as keyof typeof chemistries]
  if (curve === null) return -1.031 * Math.exp(-35 * charge) + 3.685 + charge * (0.2156 + charge * (-0.1178 + charge * 0.3201))
  const i = Math.max(
    1,
    curve.findIndex(([s]) => s >= charge),
  )
  const [[s, u], [t, v]] = [curve[i - 1], curve[i]] as [readonly [number, number], readonly [number, number]]
  return u + ((charge - s) / (t - s)) * (v - u)
}
function held(si: Any): number {
  return (si.cellChargeVoltage ?? (full[si.chemistry] as number)) * si.series
}
function stop(si: Any): number {
  return Math.min(si.chargeCurrent, si.terminationCurrent ?? ampereHours(si) / 20)
}
/** Charge at which the open-circuit voltage leaves nothing for the charger, by halving. */
function maxStartStateOfCharge(si: Any): number {
  const room = held(si) - stop(si) * packOhm(si)
  if (si.chemistry === "nimh" || curveAt(si, 1) <= room) return 1
  let [low, high] = [0, 1]
  for (let k = 0; k < 100; k++) {
    const mid = (low + high) / 2
    if (curveAt(si, mid) < room) low = mid
    else high = mid
  }
  return high
}
function cutOff(si: Any): number {
  return si.series * (si.cellCutOffVoltage ?? (least[si.chemistry] as number))
}
function mostPower(si: Any): number {
  return packOhm(si) > 0 ? curveAt(si, si.startStateOfCharge) ** 2 / (4 * packOhm(si)) : 0
}
/** Open-circuit voltage that a load needs so as not to be cut off, or not to collapse. */
function neededEmf(si: Any, load: LoadStep): number {
  const [ohm, cut] = [packOhm(si), cutOff(si)]
  if (load.current !== null && load.current > 1e-9) return cut + load.current * ohm
  if (load.power !== null && load.power > 1e-9)
    return Math.sqrt(load.power * ohm) > cut ? 2 * Math.sqrt(load.power * ohm) : cut + (load.power / cut) * ohm
  return load.loadResistance !== null ? cut * (1 + ohm / load.loadResistance) : 0
}
function firstRefused(si: Any): LoadStep {
  return (si.pattern as readonly LoadStep[]).find((load) => curveAt(si, si.startStateOfCharge) <= neededEmf(si, load)) as LoadStep
}

function portCurrent(si: Any): number {
  const power = si.power ?? si.current * (si.loadVoltage ?? si.terminalVoltage)
  return power / (si.loadVoltage === null ? 1 : si.boostEfficiency) / si.terminalVoltage
}
function emf(si: Any): number {
  return si.openCircuitVoltage ?? si.series * openCircuit(si.chemistry, si.stateOfCharge)
}

/** Largest current of each step in a cell, at the charge at the start or at the end, by the textbook's quadratic. */
function cellCurrents(si: Any, out: Any): number[] {
  const ohm = packOhm(si)
  const emfs = [curveAt(si, si.startStateOfCharge), curveAt(si, out.endStateOfCharge)]
  return (si.pattern as readonly LoadStep[]).map((load) => {
    const at = (e: number) => {
      if (load.current !== null && load.current > 1e-9) return load.current
      if (load.power !== null && load.power > 1e-9)
        return ohm > 1e-9 ? (e - Math.sqrt(Math.max(0, e * e - 4 * ohm * load.power))) / (2 * ohm) : load.power / e
      return load.loadResistance === null ? 0 : e / (ohm + load.loadResistance)
    }
    return Math.max(...emfs.map(at)) / si.parallel
  })
}
/** Longest stretch above the continuous limit, by going three times round. */
function longestPulse(si: Any, out: Any): number {
  const limit = si.cellMaxCurrent * discharge(si.chemistry, si.cellTemperature)
  const over = cellCurrents(si, out).map((i) => i > limit)
  if (over.every((is) => is)) return out.runtime
  let [longest, now] = [0, 0]
  for (const i of [...over.keys(), ...over.keys(), ...over.keys()]) {
    now = over[i] ? now + si.pattern[i].duration : 0
    longest = Math.max(longest, now)
  }
  return longest
}
