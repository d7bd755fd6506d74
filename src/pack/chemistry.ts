import { interpolate } from "../numeric/index.js"
import { at, type Source } from "../solver/index.js"
import { capacityAtTemperature } from "./data-temperature.js"
import { BATTERY_MODEL, MEASURED_CURVES } from "./sources.js"

/** Cell chemistries with a known open-circuit curve. */
export type Chemistry = "nmc" | "lfp" | "lco" | "nimh" | "alkaline" | "lead"

/** What a chemistry fixes, per cell. */
export interface ChemistryData {
  readonly label: string
  /** Voltage printed as nominal, V: the one watt-hours are calculated with. */
  readonly cellNominalVoltage: number
  /** Voltage a charger ends at (that of a fresh cell where it cannot be charged), V. */
  readonly cellFullVoltage: number
  /** Minimum voltage under load the maker allows, V. */
  readonly cellCutOffVoltage: number
  /** Largest departure of another cell of this chemistry from the curve at mid charge, V. */
  readonly curveTolerance: number
  /** Whether it can be charged. */
  readonly rechargeable: boolean
  /** Whether it is a lithium-ion cell, with all that means for care and carriage. */
  readonly lithiumIon: boolean
  /** Temperature below which it must not be charged, °C; null where it cannot be charged. */
  readonly coldestCharge: number | null
  /** Activation energy of its resistance, J/mol (see {@link resistanceFactor}). */
  readonly activationEnergy: number
  /** Open-circuit voltage (V) against state of charge (0 to 1), in straight lines; null where a formula is used. */
  readonly curve: readonly (readonly [stateOfCharge: number, voltage: number])[] | null
  readonly source: Source
}

const steps = (voltages: readonly number[]): readonly (readonly [number, number])[] =>
  voltages.map((voltage, i) => [i / (voltages.length - 1), voltage] as const)

/** Equal steps of charge, with more points where the curve bends. */
const stepsWith = (voltages: readonly number[], bends: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] =>
  [...steps(voltages), ...bends].sort(([a], [b]) => a - b)

/** Chemistries, per cell. Each curve is of one named kind of cell; others of the chemistry lie within `curveTolerance` at mid charge. */
export const chemistries: Readonly<Record<Chemistry, ChemistryData>> = {
  nmc: {
    label: "lithium-ion, nickel-rich NMC with graphite (most 18650 and 21700 cells)",
    cellNominalVoltage: 3.6,
    cellFullVoltage: 4.2,
    cellCutOffVoltage: 2.5,
    curveTolerance: 0.04,
    rechargeable: true,
    lithiumIon: true,
    coldestCharge: 0,
    activationEnergy: 20e3,
    curve: stepsWith(
      [
        2.5199, 3.1617, 3.3041, 3.4014, 3.4754, 3.5205, 3.5763, 3.6141, 3.6443, 3.6761, 3.7167, 3.7652, 3.8174, 3.8748, 3.9201, 3.965,
        4.0184, 4.0672, 4.0919, 4.1158, 4.1943,
      ],
      [
        [0.0151, 2.9068],
        [0.0452, 3.1409],
      ],
    ),
    source: at(
      MEASURED_CURVES,
      "21700 high-energy nickel-rich cell of 5 Ah, C/32, resampled at 5 % steps, with the bends of its 10-point table",
    ),
  },
  lfp: {
    label: "lithium iron phosphate with graphite",
    cellNominalVoltage: 3.2,
    cellFullVoltage: 3.65,
    cellCutOffVoltage: 2.5,
    curveTolerance: 0.04,
    rechargeable: true,
    lithiumIon: true,
    coldestCharge: 0,
    activationEnergy: 20e3,
    curve: stepsWith(
      [
        2.0102, 3.0721, 3.2029, 3.2156, 3.2413, 3.2618, 3.2778, 3.2883, 3.2948, 3.2974, 3.2991, 3.301, 3.3032, 3.307, 3.3163, 3.3329,
        3.3371, 3.3393, 3.3411, 3.3429, 3.5981,
      ],
      [
        [0.0033, 2.4177],
        [0.0117, 2.7405],
        [0.0267, 2.9299],
        [0.0885, 3.1942],
        [0.9833, 3.3511],
        [0.995, 3.418],
      ],
    ),
    source: at(MEASURED_CURVES, "18650 LiFePO4 cell of 1.2 Ah, C/32, resampled at 5 % steps, with the bends of its 10-point table"),
  },
  lco: {
    label: "lithium-ion polymer, cobalt oxide with graphite (flat pouch cells)",
    cellNominalVoltage: 3.7,
    cellFullVoltage: 4.2,
    cellCutOffVoltage: 3,
    curveTolerance: 0.04,
    rechargeable: true,
    lithiumIon: true,
    coldestCharge: 0,
    activationEnergy: 20e3,
    curve: null,
    source: at(BATTERY_MODEL, "equation (2), 850 mAh polymer cell; it ends at 4.10 V, not 4.2 V"),
  },
  nimh: {
    label: "nickel-metal hydride",
    cellNominalVoltage: 1.2,
    cellFullVoltage: 1.45,
    cellCutOffVoltage: 1,
    curveTolerance: 0.04,
    rechargeable: true,
    lithiumIon: false,
    coldestCharge: 0,
    activationEnergy: 15e3,
    curve: steps([1.1, 1.22, 1.245, 1.262, 1.273, 1.283, 1.292, 1.302, 1.313, 1.328, 1.4]),
    source: {
      title: "Datasheet of sealed nickel-metal hydride cells, definitions",
      where:
        "open circuit 1.25 to 1.4 V on average, end of charge about 1.45 V at a tenth of the capacity per hour; the shape between within 40 mV",
      verified: "not-seen",
    },
  },
  alkaline: {
    label: "alkaline zinc-manganese dioxide (AA, AAA, C, D); not rechargeable",
    cellNominalVoltage: 1.5,
    cellFullVoltage: 1.6,
    cellCutOffVoltage: 0.8,
    curveTolerance: 0.1,
    rechargeable: false,
    lithiumIon: false,
    coldestCharge: null,
    activationEnergy: 25e3,
    curve: steps([1.1, 1.2, 1.23, 1.26, 1.28, 1.3, 1.32, 1.34, 1.38, 1.44, 1.59]),
    source: {
      title: "Zero-load voltage of an alkaline AA cell against remaining capacity",
      where: "10 % steps, within 0.1 V",
      verified: "not-seen",
    },
  },
  lead: {
    label: "lead-acid, sealed or flooded",
    cellNominalVoltage: 2,
    cellFullVoltage: 14.5 / 6,
    cellCutOffVoltage: 1.75,
    curveTolerance: 0.02,
    rechargeable: true,
    lithiumIon: false,
    coldestCharge: -10,
    activationEnergy: 15e3,
    curve: [
      [0, 11.89 / 6],
      [0.25, 12.06 / 6],
      [0.5, 12.24 / 6],
      [0.75, 12.45 / 6],
      [1, 12.65 / 6],
    ],
    source: {
      title: "State-of-charge table of 12 V flooded lead-acid batteries",
      where: "rest voltage, within 50 mV on 12 V",
      verified: "not-seen",
    },
  },
}

/** Open-circuit voltage of one cell, V; the state of charge is 0 (empty) to 1 (full). */
export function openCircuitVoltage(chemistry: Chemistry, stateOfCharge: number): number {
  const { curve } = chemistries[chemistry]
  if (curve !== null) return interpolate(curve, stateOfCharge)
  const s = Math.min(1, Math.max(0, stateOfCharge))
  return -1.031 * Math.exp(-35 * s) + 3.685 + 0.2156 * s - 0.1178 * s ** 2 + 0.3201 * s ** 3
}

/**
 * Factor by which a cell's internal resistance at a temperature (°C) exceeds that at the reference:
 * exp(E/Rg·(1/T − 1/T₀)), temperatures in kelvin, Rg = 8.314 J/mol/K (Arrhenius). The activation
 * energies are rounded values (15 to 25 kJ/mol, common practice); at −20 °C a lithium-ion cell comes out
 * at 4.2 times, in line with the 4 to 6 times by which makers cut the allowed current in the cold.
 */
export function resistanceFactor(chemistry: Chemistry, temperature: number, reference = 25): number {
  return Math.exp((chemistries[chemistry].activationEnergy / 8.314462618) * (1 / (temperature + 273.15) - 1 / (reference + 273.15)))
}

let cobalt: readonly (readonly [number, number])[] | undefined

/** A chemistry's curve in straight lines; a formula is sampled closely enough to stay within 0.05 mV. */
export function curveOf(chemistry: Chemistry): readonly (readonly [stateOfCharge: number, voltage: number])[] {
  const { curve } = chemistries[chemistry]
  if (curve !== null) return curve
  cobalt ??= [...Array.from({ length: 400 }, (_, i) => i / 2000), ...Array.from({ length: 161 }, (_, i) => 0.2 + i / 200)].map(
    (s) => [Math.min(1, s), openCircuitVoltage(chemistry, s)] as const,
  )
  return cobalt
}

/**
 * Share of the capacity left at a cell temperature (°C), by makers' minimum values: lithium 0.6 at −20, 0.85
 * at −10, 1 from 20 to 45 and 0.85 at 50 °C; lead 0.74 at −10, 0.9 at 10, 1 at 25, 1.03 at 30 °C. Nickel-metal hydride and
 * alkaline cells have no figure at hand and take lithium's.
 */
export function capacityFactor(chemistry: Chemistry, temperature: number): number {
  return interpolate(capacityAtTemperature[chemistry === "lead" ? "lead" : "lithium"], temperature)
}
