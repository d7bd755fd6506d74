// What a document says of its power: sources, buses that branch from them, and what is connected besides the drives.
import type { LimitAction } from "../../converter/index.js"
import { type Chemistry, chemistries } from "../../pack/index.js"
import type { Area, Charge, Current, Energy, Length, Power, Ratio, Resistance, Temperature, Time, Voltage } from "../../quantity/index.js"
import { type Fields, type GroupField, optionsFrom, type VariantField } from "../../solver/index.js"

/** Loose cells in series and parallel. */
export interface CellSource {
  type: "cells"
  /** Name of the pack [text of 1 to 100 characters] */
  name: string
  /** Chemistry [nmc, lfp, lco, nimh, alkaline or lead] */
  chemistry: Chemistry
  /** Cells in series [N_s; whole 1 to 30] */
  series: number
  /** Strings in parallel [N_p; whole 1 to 50] */
  parallel: number
  /** Charge of one cell [Q_c; 1 mAh to 200 Ah] */
  cellCapacity: Charge
  /** Direct-current resistance of one cell [R_c; 0 to 10 Ω] */
  cellResistance: Resistance
  /** Charge left [z; 0 to 1; default 0.8] */
  stateOfCharge?: Ratio
  /** Holders, welds and protection circuit together. [R_x; 0 to 10 Ω; default 0] */
  extraResistance?: Resistance
  /** Temperature of the cells [T_c; −20 to 60 °C; default 25 °C] */
  temperature?: Temperature
  /** Maximum current of one cell. [I_c; 0.1 mA to 200 A; optional] */
  cellCurrent?: Current | null
}

/** A USB battery bank: cells with a regulator that the document need not know. */
export interface BankSource {
  type: "bank"
  /** Name of the bank [text of 1 to 100 characters] */
  name: string
  /** Voltage at the socket [V_b; 1 to 60 V; default 5 V] */
  voltage?: Voltage
  /** Maximum current [I_b; 0.1 mA to 50 A] */
  currentLimit: Current
  /** Resistance of socket and regulator [R_b; 0 to 10 Ω; default 50 mΩ] */
  resistance?: Resistance
  /** Energy it gives at its socket on one charge. [E_b; 3.6 J to 2 kWh] */
  energy: Energy
  /** Current below which it switches itself off, and after how long. [I_z; 0 to 1 A; optional] */
  sleepCurrent?: Current | null
  /** Time after which it switches off [t_z; 0 to 1 h; optional] */
  sleepDelay?: Time | null
}

/** A plugged-in power supply of fixed voltage. */
export interface MainsSource {
  type: "mains-supply"
  /** Name of the supply [text of 1 to 100 characters] */
  name: string
  /** Voltage [V_b; 1 to 60 V] */
  voltage: Voltage
  /** Maximum current [I_b; 0.1 mA to 200 A] */
  currentLimit: Current
  /** Resistance of plug and regulator [R_b; 0 to 10 Ω; default 20 mΩ] */
  resistance?: Resistance
}

/** Where power comes from. */
export type PowerSource = CellSource | BankSource | MainsSource

/** A run of wire out and back, with its contacts. */
export interface SupplyRun {
  /** Length one way. [L_r; 0 to 50 m] */
  length: Length
  /** Wire gauge (AWG) [g_r; whole −3 to 40; optional] */
  awg?: number | null
  /** Cross-section [A_r; 0.0001 to 1000 mm²; optional] */
  area?: Area | null
  /** Contacts in the path [k_r; whole 0 to 100; default 0] */
  contacts?: number
  /** Resistance of one contact [Rc_r; 0 to 10 Ω; default 5 mΩ] */
  contactResistance?: Resistance
  /** Temperature of the conductor. [Tw_r; −50 to 200 °C; default 25 °C] */
  temperature?: Temperature
  /** Temperature that the insulation is rated for. [T_ins; 40 to 260 °C; default 70 °C] */
  insulation?: Temperature
  /** Air round the wire; inside padding or a costume, the air in there. [T_wa; −40 to 100 °C; default 25 °C] */
  ambientTemperature?: Temperature
  /** Share of the voltage before it that the run, with switch and fuse, may take. [u_max; 0.01 to 100 %; default 5 %] */
  dropLimit?: Ratio
}

/** One point of an efficiency curve. */
export interface SupplyEfficiency {
  /** Output current [I_e; 0 to 100 A] */
  outputCurrent: Current
  /** Efficiency [eta_e; 1 to 100 %] */
  efficiency: Ratio
}

/** A voltage converter at the end of a run. */
export interface SupplyConverter {
  /** Output voltage [V_o; 10 mV to 100 V] */
  outputVoltage: Voltage
  /** Input current limit [I_il; 0.1 mA to 100 A; optional] */
  inputCurrentLimit?: Current | null
  /** Output current limit [I_ol; 0.1 mA to 100 A; optional] */
  outputCurrentLimit?: Current | null
  /** Efficiency over output current [list of 1 to 40] */
  efficiency: readonly SupplyEfficiency[]
  /** Own current without load [I_q; 0 to 5 A; default 0] */
  quiescentCurrent?: Current
  /** Minimum input voltage [V_in_min; 0 to 100 V] */
  minInputVoltage: Voltage
  /** Maximum input voltage [V_in_max; 10 mV to 100 V] */
  maxInputVoltage: Voltage
}

/** A place that drives and loads connect to: at the end of a run from a source or another bus, behind a converter or not. */
export interface Bus {
  /** Name of the bus [text of 1 to 100 characters] */
  name: string
  /** Source or bus that it branches from. [text of 1 to 100 characters] */
  from: string
  /** Run to it; left out, it sits right there. [group; optional] */
  run?: SupplyRun | null
  /** Switch resistance [R_sw; 0 to 10 Ω; default 0] */
  switchResistance?: Resistance
  /** Direct current the switch is rated for [I_sw; 0.1 mA to 200 A; optional] */
  switchRating?: Current | null
  /** Fuse resistance, hot [R_fu; 0 to 10 Ω; default 0] */
  fuseResistance?: Resistance
  /** Fuse rating [I_fu; 0.1 mA to 200 A; optional] */
  fuseRating?: Current | null
  /** Converter [group; optional] */
  converter?: SupplyConverter | null
  /**
   * What its converter, or the source behind it, does at its current limit: holds it, switches off and tries again, or
   * stays off. [hold, hiccup or latch; optional]
   */
  limitAction?: LimitAction | null
  /** How long that lets more than its limit flow before it switches off. [t_on; 0 to 100 s; default 10 ms] */
  onTime?: Time
  /** How long it waits before it tries again. [t_off; 0 to 16.6667 min; default 300 ms] */
  offTime?: Time
}

/** Lights that draw a steady current. */
export interface LightsLoad {
  type: "lights"
  /** Name of the lights [text of 1 to 100 characters] */
  name: string
  /** Bus they connect to [text of 1 to 100 characters] */
  bus: string
  /** Current [I_l; 0 to 100 A] */
  current: Current
}

/** A load that draws what it needs whatever its voltage, such as one behind a regulator of its own. */
export interface ConstantPowerLoad {
  type: "constant-power"
  /** Name of the load [text of 1 to 100 characters] */
  name: string
  /** Bus it connects to [text of 1 to 100 characters] */
  bus: string
  /** Power [P_l; 0 to 1000 W] */
  power: Power
}

/** A heater or a filament. */
export interface ResistiveLoad {
  type: "resistive"
  /** Name of the load [text of 1 to 100 characters] */
  name: string
  /** Bus it connects to [text of 1 to 100 characters] */
  bus: string
  /** Resistance [R_l; 10 mΩ to 1000 kΩ] */
  resistance: Resistance
}

/** A controller or receiver: what it draws, and the voltage below which it starts anew. */
export interface ControllerLoad {
  type: "controller"
  /** Name of the controller [text of 1 to 100 characters] */
  name: string
  /** Bus it connects to [text of 1 to 100 characters] */
  bus: string
  /** Current [I_k; 0 to 50 A] */
  current: Current
  /** Voltage below which it starts anew [V_k; 0 to 60 V] */
  resetVoltage: Voltage
}

/** What draws power beside the drives. */
export type PowerLoad = LightsLoad | ConstantPowerLoad | ResistiveLoad | ControllerLoad

/** Sources, buses and loads. */
export interface PowerTree {
  /** Sources [list of 1 to 20] */
  sources: readonly PowerSource[]
  /** Buses [list of 1 to 60] */
  buses: readonly Bus[]
  /** Loads beside the drives [list of 0 to 100; default none] */
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
    insulation: { kind: "temperature", symbol: "T_ins", label: "temperature the insulation is rated for", min: 40, max: 260, default: 70 },
    ambientTemperature: { kind: "temperature", symbol: "T_wa", label: "ambient temperature of the wire", min: -40, max: 100, default: 25 },
    dropLimit: {
      kind: "ratio",
      symbol: "u_max",
      label: "share of the voltage that the run may take",
      min: "0.01 %",
      max: 1,
      default: 0.05,
    },
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
  limitAction: {
    kind: "choice",
    label: "what feeds it does at its current limit",
    options: { hold: "holds the current", hiccup: "switches off and tries again", latch: "switches off for good" },
    default: null,
  },
  onTime: { kind: "time", symbol: "t_on", label: "overload that lets pass", min: 0, max: 100, default: "10 ms" },
  offTime: { kind: "time", symbol: "t_off", label: "wait before the next try", min: 0, max: 1000, default: "300 ms" },
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
