import { expect, it } from "vitest"
import type { AnyFields } from "../../src/solver/index.js"
import { conductor, conductorSize, fuseCoordination, harness, ledRun, voltageDrop, wireHeating } from "../../src/wire/index.js"
import { limitsOf } from "../helpers/field-limits.js"

const solvers = { conductor, fuseCoordination, harness, ledRun, conductorSize, voltageDrop, wireHeating }

/** A wire's size: 4/0 to 40 by gauge, or any area. */
const size = [
  "awg: min -3, max 40, default null",
  "area: min 0.0001 mm2, max 1000 mm2, default null",
  "material: default copper",
  "stranding: default solid",
]
/** How a wire lies; the defaults are the ones wireHeating's comment names. */
const laid = [
  "arrangement: default free-air",
  "wires: min 1, max 100, default 1",
  "ambientTemperature: min -40, max 100, default 25",
  "skinTemperature: min 20, max 42, default 35",
  "insulationThickness: min 0, max 20 mm, default 0.4 mm",
  "insulationConductivity: min 0.01, max 10, default 0.17",
  "bundleConductivity: min 0.01, max 10, default 0.15",
  "emissivity: min 0, max 1, default 0.9",
  "paddingThickness: min 0.1 mm, max 1, default 10 mm",
  "paddingConductivity: min 0.01, max 10, default 0.04",
  "paddingSurface: min 1, max 1000, default 8",
  "insulationRating: above -40, max 300, default 80",
]

/** The range each field is documented and answered for, and the default its comment names: changed only on purpose. */
const limits: Readonly<Record<keyof typeof solvers, readonly string[]>> = {
  conductor: [...size, "conductorTemperature: min -50, max 200, default 20", "length: min 0, max 1000, default 1"],
  fuseCoordination: [
    "fuseRating: min 0.1 mA, max 1000",
    "current: min 0.1 mA, max 1000",
    "datasheetAmpacity: min 0.1 mA, max 1000, default null",
    ...size,
    ...laid,
    "unfusedLength: min 0, max 100, default null",
    "utilisationLimit: min 1 %, max 1, default 75 %",
    "temperatureFactor: min 1 %, max 1.5, default 1",
    "peakInrushCurrent: min 0.1 mA, max 100000, default null",
    "inrushDuration: min 0.000001, max 100, default 20 ms",
    "inrushShape: default exponential",
    "pulses: min 1, max 100000, default 10000",
    "meltingIntegral: min 1e-9, max 1000000000, default null",
    "fuseResistance: min 0, max 100, default 5 mohm",
    "hotFactor: min 1, max 10, default 1.4",
    "initialConductorTemperature: min -50, max 200, default null",
    "faultTemperatureLimit: min 70, max 350, default 160",
  ],
  harness: [
    "sources: min 1, max 100",
    "sources.sourceVoltage: min 10 mV, max 1000",
    "sources.sourceResistance: min 0, max 1000, default 0",
    "wires: max 1000, default []",
    "wires.awg: min -3, max 40, default null",
    "wires.area: min 0.0001 mm2, max 1000 mm2, default null",
    "wires.material: default copper",
    "wires.stranding: default solid",
    "wires.length: min 0, max 1000",
    "wires.conductorTemperature: min -50, max 200, default 20",
    "contacts: max 1000, default []",
    "contacts.resistance: min 0, max 100, default 5 mohm",
    "contacts.ratedCurrent: min 0.1 mA, max 1000, default null",
    "switches: max 1000, default []",
    "switches.resistance: min 0, max 100, default 10 mohm",
    "switches.ratedCurrent: min 0.1 mA, max 1000, default null",
    "switches.closed: default true",
    "fuses: max 1000, default []",
    "fuses.fuseRating: min 0.1 mA, max 1000",
    "fuses.resistance: min 0, max 100, default 5 mohm",
    "fuses.hotFactor: min 1, max 10, default 1.4",
    "currentLoads: max 1000, default []",
    "currentLoads.current: min 0, max 1000",
    "resistanceLoads: max 1000, default []",
    "resistanceLoads.resistance: min 1 mohm, max 10000000",
    "powerLoads: max 1000, default []",
    "powerLoads.power: min 0, max 100000",
    "ground: default null",
  ],
  ledRun: [
    "length: min 1 mm, max 1000",
    "current: min 0.1 mA, max 1000",
    "lightCount: min 1, max 5000, default null",
    "trackResistance: min 0.000001, max 1000, default null",
    ...size,
    "conductorTemperature: min -50, max 200, default 20",
    "feeds: min 1, max 50",
    "feeds.position: min 0, max 1000",
    "feeds.sourceVoltage: min 10 mV, max 1000",
    "feeds.feederResistance: min 0, max 100, default 0",
    "dimVoltage: min 10 mV, max 1000, default null",
  ],
  conductorSize: [
    "current: min 1 mA, max 1000",
    "length: min 0, max 1000",
    "sourceVoltage: min 10 mV, max 1000",
    "dropLimit: min 0.01 %, max 1, default 3 %",
    "conductors: min 1, max 2, default 2",
    "sizeSystem: default awg",
    "material: default copper",
    "stranding: default solid",
    "fuseRating: min 0.1 mA, max 1000, default null",
    "faultTemperatureLimit: min 70, max 350, default 160",
    ...laid,
  ],
  voltageDrop: [
    "current: min 0, max 1000",
    "length: min 0, max 1000",
    ...size,
    "conductorTemperature: min -50, max 200, default 20",
    "conductors: min 1, max 2, default 2",
    "contacts: min 0, max 1000, default 0",
    "contactResistance: min 0, max 100, default 5 mohm",
    "sourceVoltage: min 10 mV, max 1000, default null",
  ],
  wireHeating: [
    "current: min 0, max 1000",
    ...size,
    ...laid,
    "faultCurrent: min 0.1 mA, max 100000, default null",
    "faultTemperatureLimit: min 70, max 350, default 160",
  ],
}

it.each(Object.keys(solvers) as (keyof typeof solvers)[])("%s keeps the limits and defaults of its fields", (name) => {
  expect(limitsOf(solvers[name].input as unknown as AnyFields)).toEqual(limits[name])
})
