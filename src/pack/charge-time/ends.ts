// How the charge of a lead or nickel pack ends, by published figures.
import type { Chemistry } from "../chemistry.js"

/** Charge that lead is given back for each that it gave: sheets ask 1.1. */
export const LEAD_RETURN = 1.1

const HOUR = 3600
/** Hours on the charger by an AGM sheet: 16 from empty, 10 from half; straight between, so 4 are left for the tail alone. */
const LEAD_TAIL = 4 * HOUR
const LEAD_REST = 12 * HOUR
/** Sealed lead takes 12 to 16 h: the lower end against the upper. */
const LEAD_SHORTEST = 12 / 16

/** Time to expect of a lead charge, s, by the depth it starts from (0 to 1) and charge over current. */
export function leadDuration(depth: number, simpleDuration: number): { readonly low: number; readonly high: number } {
  // a weak charger is slower than the sheets' ones: it cannot give back the charge and its losses sooner
  const returned = LEAD_RETURN * simpleDuration
  return {
    low: Math.max(LEAD_SHORTEST * (LEAD_REST * depth + LEAD_TAIL), returned),
    high: Math.max(LEAD_REST * depth, returned) + LEAD_TAIL,
  }
}

/** Change of a lead cell's charge voltage with temperature, V/K: 30 mV for six cells. */
const LEAD_COEFFICIENT = -0.03 / 6

/**
 * What a charge voltage shifts by from 25 °C to a temperature (°C), V a cell: lead −5 mV/K, held beyond −10 and 50 °C, where it is not
 * charged; nothing for the others.
 */
export function chargeVoltageShift(chemistry: Chemistry, temperature: number): number {
  return chemistry === "lead" ? LEAD_COEFFICIENT * (Math.min(50, Math.max(-10, temperature)) - 25) : 0
}

/** The same where it limits what a charger may hold: from 15 to 35 °C no sheet asks for less than at 25 °C. */
export function chargeLimitShift(chemistry: Chemistry, temperature: number): number {
  const shift = chargeVoltageShift(chemistry, temperature)
  return temperature <= 35 ? Math.max(0, shift) : shift
}

/** Signs of a full nickel-metal hydride cell, and up to which rate (multiples of the capacity per hour) they do not show. */
export const nickelTermination = {
  /** Fall of a cell's voltage from its peak, V. */
  voltageDip: 3e-3,
  /** Warming at the capacity per hour, K/s. */
  heatingRate: { low: 1 / 60, high: 2 / 60 },
  /** Cell temperature at which a fast charge is cut off, °C. */
  maxTemperature: 42,
  /** Up to this rate only a timer ends a charge. */
  timerOnlyRate: 0.3,
} as const

/** Charge after which a timer ends a nickel charge, over the charge to gain: 16 h at 0.1, 5 h at 0.3, 1.5 h at 1. */
export function nickelTimerFactor(rate: number): number {
  const share = Math.min(1, Math.max(0, Math.log(rate / 0.1) / Math.log(nickelTermination.timerOnlyRate / 0.1)))
  return 1.6 - 0.1 * share
}
