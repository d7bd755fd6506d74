// What a document says of its power: sources, buses that branch from them, and what is connected besides the drives.
import { type Chemistry, chemistries } from "../../pack/index.js"
import type { Area, Charge, Current, Energy, Length, Power, Ratio, Resistance, Temperature, Time, Voltage } from "../../quantity/index.js"
import { type Fields, type GroupField, optionsFrom, type VariantField } from "../../solver/index.js"

/** Loose cells in series and parallel. */
export interface CellSource {
  type: "cells"
  name: string
  chemistry: Chemistry
  series: number
  parallel: number
  cellCapacity: Charge
  cellResistance: Resistance
  stateOfCharge?: Ratio
  /** Holders, welds and protection circuit together. */
  extraResistance?: Resistance
  temperature?: Temperature
  /** Maximum current of one cell. */
  cellCurrent?: Current | null
}

/** A USB battery bank: cells with a regulator that the document need not know. */
export interface BankSource {
  type: "bank"
  name: string
  voltage?: Voltage
  currentLimit: Current
  resistance?: Resistance
  /** Energy it gives at its socket on one charge. */
  energy: Energy
  /** Current below which it switches itself off, and after how long. */
  sleepCurrent?: Current | null
  sleepDelay?: Time | null
}

/** A plugged-in power supply of fixed voltage. */
export interface MainsSource {
  type: "mains-supply"
  name: string
  voltage: Voltage
  currentLimit: Current
  resistance?: Resistance
}

/** Where power comes from. */
export type PowerSource = CellSource | BankSource | MainsSource

/** A run of wire out and back, with its contacts. */
export interface SupplyRun {
  /** Length one way. */
  length: Length
  awg?: number | null
  area?: Area | null
  contacts?: number
  contactResistance?: Resistance
  /** Temperature of the conductor. */
  temperature?: Temperature
}

/** A voltage converter at the end of a run. */
export interface SupplyConverter {
  outputVoltage: Voltage
  inputCurrentLimit?: Current | null
  outputCurrentLimit?: Current | null
  efficiency: readonly { outputCurrent: Current; efficiency: Ratio }[]
  quiescentCurrent?: Current
  minInputVoltage: Voltage
  maxInputVoltage: Voltage
}

/** A place that drives and loads connect to: at the end of a run from a source or another bus, behind a converter or not. */
export interface Bus {
  name: string
  /** Source or bus that it branches from. */
  from: string
  /** Run to it; left out, it sits right there. */
  run?: SupplyRun | null
  switchResistance?: Resistance
  switchRating?: Current | null
  fuseResistance?: Resistance
  fuseRating?: Current | null
  converter?: SupplyConverter | null
}

/** Lights that draw a steady current. */
export interface LightsLoad {
  type: "lights"
  name: string
  bus: string
  current: Current
}

/** A load that draws what it needs whatever its voltage, such as one behind a regulator of its own. */
export interface ConstantPowerLoad {
  type: "constant-power"
  name: string
  bus: string
  power: Power
}

/** A heater or a filament. */
export interface ResistiveLoad {
  type: "resistive"
  name: string
  bus: string
  resistance: Resistance
}

/** A controller or receiver: what it draws, and the voltage below which it starts anew. */
export interface ControllerLoad {
  type: "controller"
  name: string
  bus: string
  current: Current
  resetVoltage: Voltage
}

/** What draws power beside the drives. */
export type PowerLoad = LightsLoad | ConstantPowerLoad | ResistiveLoad | ControllerLoad

/** Sources, buses and loads. */
export interface PowerTree {
  sources: readonly PowerSource[]
  buses: readonly Bus[]
  loads?: readonly PowerLoad[]
}

const named = (label: string) => ({ kind: "text", label, min: 1, max: 100 }) as const

const source: VariantField<PowerSource> = {
  kind: "variant",
  label: "source",
  of: {
    cells: {
      label: "cell pack",
      fields: {
        name: named("name of the pack"),
        chemistry: { kind: "choice", label: "chemistry", options: optionsFrom(chemistries, (key) => chemistries[key].label) },
        series: { kind: "number", symbol: "N_s", label: "cells in series", whole: true, min: 1, max: 30 },
        parallel: { kind: "number", symbol: "N_p", label: "strings in parallel", whole: true, min: 1, max: 50 },
        cellCapacity: { kind: "charge", symbol: "Q_c", label: "charge of one cell", min: "1 mAh", max: "200 Ah" },
        cellResistance: { kind: "resistance", symbol: "R_c", label: "direct-current resistance of one cell", min: 0, max: 10 },
        stateOfCharge: { kind: "ratio", symbol: "z", label: "charge left", min: 0, max: 1, default: 0.8 },
        extraResistance: {
          kind: "resistance",
          symbol: "R_x",
          label: "holders, welds and protection circuit",
          min: 0,
          max: 10,
          default: 0,
        },
        temperature: { kind: "temperature", symbol: "T_c", label: "temperature of the cells", min: -20, max: 60, default: 25 },
        cellCurrent: { kind: "current", symbol: "I_c", label: "maximum current of one cell", min: "0.1 mA", max: 200, default: null },
      },
    },
    bank: {
      label: "USB battery bank",
      fields: {
        name: named("name of the bank"),
        voltage: { kind: "voltage", symbol: "V_b", label: "voltage at the socket", min: 1, max: 60, default: 5 },
        currentLimit: { kind: "current", symbol: "I_b", label: "maximum current", min: "0.1 mA", max: 50 },
        resistance: { kind: "resistance", symbol: "R_b", label: "resistance of socket and regulator", min: 0, max: 10, default: "50 mohm" },
        energy: { kind: "energy", symbol: "E_b", label: "energy at the socket on one charge", min: 3.6, max: "2 kWh" },
        sleepCurrent: { kind: "current", symbol: "I_z", label: "current below which it switches off", min: 0, max: 1, default: null },
        sleepDelay: { kind: "time", symbol: "t_z", label: "time after which it switches off", min: 0, max: "1 h", default: null },
      },
    },
    "mains-supply": {
      label: "plugged-in supply",
      fields: {
        name: named("name of the supply"),
        voltage: { kind: "voltage", symbol: "V_b", label: "voltage", min: 1, max: 60 },
        currentLimit: { kind: "current", symbol: "I_b", label: "maximum current", min: "0.1 mA", max: 200 },
        resistance: { kind: "resistance", symbol: "R_b", label: "resistance of plug and regulator", min: 0, max: 10, default: "20 mohm" },
      },
    },
  },
}

const run: GroupField<SupplyRun> = {
  kind: "group",
  label: "run of wire",
  either: [{ exactlyOne: ["awg", "area"] }],
  fields: {
    length: { kind: "length", symbol: "L_r", label: "length one way", min: 0, max: 50 },
    awg: { kind: "number", symbol: "g_r", label: "wire gauge (AWG)", whole: true, min: -3, max: 40, default: null },
    area: { kind: "area", symbol: "A_r", label: "cross-section", min: "0.0001 mm2", max: "1000 mm2", default: null },
    contacts: { kind: "number", symbol: "k_r", label: "contacts in the path", whole: true, min: 0, max: 100, default: 0 },
    contactResistance: { kind: "resistance", symbol: "Rc_r", label: "resistance of one contact", min: 0, max: 10, default: "5 mohm" },
    temperature: { kind: "temperature", symbol: "Tw_r", label: "wire temperature", min: -50, max: 200, default: 25 },
  },
}

const converter: GroupField<SupplyConverter> = {
  kind: "group",
  label: "converter",
  fields: {
    outputVoltage: { kind: "voltage", symbol: "V_o", label: "output voltage", min: "10 mV", max: 100 },
    inputCurrentLimit: { kind: "current", symbol: "I_il", label: "input current limit", min: "0.1 mA", max: 100, default: null },
    outputCurrentLimit: { kind: "current", symbol: "I_ol", label: "output current limit", min: "0.1 mA", max: 100, default: null },
    efficiency: {
      kind: "list",
      label: "efficiency over output current",
      min: 1,
      max: 40,
      of: {
        kind: "group",
        label: "point",
        fields: {
          outputCurrent: { kind: "current", symbol: "I_e", label: "output current", min: 0, max: 100 },
          efficiency: { kind: "ratio", symbol: "eta_e", label: "efficiency", min: "1 %", max: 1 },
        },
      },
    },
    quiescentCurrent: { kind: "current", symbol: "I_q", label: "own current without load", min: 0, max: 5, default: 0 },
    minInputVoltage: { kind: "voltage", symbol: "V_in_min", label: "minimum input voltage", min: 0, max: 100 },
    maxInputVoltage: { kind: "voltage", symbol: "V_in_max", label: "maximum input voltage", min: "10 mV", max: 100 },
  },
}

const bus: Fields<Bus> = {
  name: named("name of the bus"),
  from: named("source or bus it branches from"),
  run: { ...run, default: null },
  switchResistance: { kind: "resistance", symbol: "R_sw", label: "switch resistance", min: 0, max: 10, default: 0 },
  switchRating: {
    kind: "current",
    symbol: "I_sw",
    label: "direct current the switch is rated for",
    min: "0.1 mA",
    max: 200,
    default: null,
  },
  fuseResistance: { kind: "resistance", symbol: "R_fu", label: "fuse resistance, hot", min: 0, max: 10, default: 0 },
  fuseRating: { kind: "current", symbol: "I_fu", label: "fuse rating", min: "0.1 mA", max: 200, default: null },
  converter: { ...converter, default: null },
}

const load: VariantField<PowerLoad> = {
  kind: "variant",
  label: "load",
  of: {
    lights: {
      label: "lights",
      fields: {
        name: named("name of the lights"),
        bus: named("bus they connect to"),
        current: { kind: "current", symbol: "I_l", label: "current", min: 0, max: 100 },
      },
    },
    "constant-power": {
      label: "load of constant power",
      fields: {
        name: named("name of the load"),
        bus: named("bus it connects to"),
        power: { kind: "power", symbol: "P_l", label: "power", min: 0, max: 1000 },
      },
    },
    resistive: {
      label: "heater or filament",
      fields: {
        name: named("name of the load"),
        bus: named("bus it connects to"),
        resistance: { kind: "resistance", symbol: "R_l", label: "resistance", min: 0.01, max: 1e6 },
      },
    },
    controller: {
      label: "controller or receiver",
      fields: {
        name: named("name of the controller"),
        bus: named("bus it connects to"),
        current: { kind: "current", symbol: "I_k", label: "current", min: 0, max: 50 },
        resetVoltage: { kind: "voltage", symbol: "V_k", label: "voltage below which it starts anew", min: 0, max: 60 },
      },
    },
  },
}

/** Descriptions of the power tree. */
export const powerFields: Fields<PowerTree> = {
  sources: { kind: "list", label: "sources", min: 1, max: 20, of: source },
  buses: { kind: "list", label: "buses", min: 1, max: 60, of: { kind: "group", label: "bus", fields: bus } },
  loads: { kind: "list", label: "loads beside the drives", min: 0, max: 100, default: [], of: load },
}
