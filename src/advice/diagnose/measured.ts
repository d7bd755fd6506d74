import type { Angle, Current, Force, Ratio, Time, Voltage } from "../../quantity/index.js"
import type { Fields } from "../../solver/index.js"
import { type MeasureName, measures, type WarmPart } from "./measures.js"

/** A measured value with its uncertainty (one standard deviation). */
export interface MeasuredTime {
  /** Time up or time down [0 to 60 min] */
  value: Time
  /** Uncertainty of time up or uncertainty of time down [2 ms to 60 min; default 0.2 s] */
  uncertainty?: Time
}
/** A measured angle with its uncertainty. */
export interface MeasuredAngle {
  /** Swing [th_m; 0 to 360.963°] */
  value: Angle
  /** Uncertainty of swing [th_m_s; 0.0148969° to 360.963°; default 1.48969°] */
  uncertainty?: Angle
}
/** A measured voltage with its uncertainty. */
export interface MeasuredVoltage {
  /**
   * Source voltage at rest or sag of the source or voltage lost on the source side or voltage lost on the actuators'
   * side or voltage at the actuators [0 to 150 V]
   */
  value: Voltage
  /**
   * Uncertainty of source voltage at rest or uncertainty of sag of the source or uncertainty of voltage lost on the
   * source side or uncertainty of voltage lost on the actuators' side or uncertainty of voltage at the actuators [0.5
   * mV to 150 V or 0.2 mV to 150 V; default 50 mV or default 20 mV]
   */
  uncertainty?: Voltage
}
/** A measured current with its uncertainty. */
export interface MeasuredCurrent {
  /** Current of all actuators or current from the source [0 to 500 A] */
  value: Current
  /** Uncertainty of current of all actuators or uncertainty of current from the source [300 µA to 500 A; default 30 mA] */
  uncertainty?: Current
}
/** A measured force with its uncertainty. */
export interface MeasuredForce {
  /** Force at the tip, lifting or force at the tip, letting down [0 to 2000 N] */
  value: Force
  /** Uncertainty of force at the tip, lifting or uncertainty of force at the tip, letting down [3 mN to 2000 N; default 0.3 N] */
  uncertainty?: Force
}

/** What was measured on the built rig; any subset. */
export interface Measured {
  /** Time up [group; optional] */
  raiseTime?: MeasuredTime | null
  /** Time down [group; optional] */
  lowerTime?: MeasuredTime | null
  /** Swing [group; optional] */
  swing?: MeasuredAngle | null
  /** At the source, everything still. [group; optional] */
  restVoltage?: MeasuredVoltage | null
  /** At the source's own terminals: at rest less during a raise. [group; optional] */
  sourceSag?: MeasuredVoltage | null
  /** Lost between source and converter (or actuators) during a raise. [group; optional] */
  sourceDrop?: MeasuredVoltage | null
  /** Lost between converter and actuators during a raise. [group; optional] */
  loadDrop?: MeasuredVoltage | null
  /** At the actuators during a raise, on average. [group; optional] */
  actuatorVoltage?: MeasuredVoltage | null
  /** All actuators together during a raise, on average. [group; optional] */
  actuatorCurrent?: MeasuredCurrent | null
  /** From the source during a raise, on average. [group; optional] */
  sourceCurrent?: MeasuredCurrent | null
  /** At the tip, rod unpinned, to lift the arm slowly through level. [group; optional] */
  tipForceUp?: MeasuredForce | null
  /** At the tip, rod unpinned, to let the arm sink slowly through level. [group; optional] */
  tipForceDown?: MeasuredForce | null
  /** The part that is clearly warmest after several raises. [source, wires, converter, actuators or notFelt; default notFelt] */
  warmest?: WarmPart | "notFelt"
  /** How far parts stray from their datasheets [sp; 0 to 0.5; default 0.02] */
  spread?: Ratio
}

const measuredField = <K extends string>(kind: K, symbol: string, label: string, high: number, name: MeasureName) =>
  ({
    kind: "group",
    label,
    default: null,
    fields: {
      value: { kind, symbol, label, min: 0, max: high },
      uncertainty: {
        kind,
        symbol: `${symbol}_s`,
        label: `uncertainty of ${label}`,
        min: measures[name].usual / 100,
        max: high,
        default: measures[name].usual,
      },
    },
  }) as const

/** Descriptions of what can be measured. */
export const measuredFields: Fields<Measured> = {
  raiseTime: measuredField("time", "t_mu", "time up", 3600, "raiseTime"),
  lowerTime: measuredField("time", "t_md", "time down", 3600, "lowerTime"),
  swing: measuredField("angle", "th_m", "swing", 6.3, "swing"),
  restVoltage: measuredField("voltage", "U_m0", "source voltage at rest", 150, "restVoltage"),
  sourceSag: measuredField("voltage", "U_m1", "sag of the source", 150, "sourceSag"),
  sourceDrop: measuredField("voltage", "U_m2", "voltage lost on the source side", 150, "sourceDrop"),
  loadDrop: measuredField("voltage", "U_m3", "voltage lost on the actuators' side", 150, "loadDrop"),
  actuatorVoltage: measuredField("voltage", "U_m4", "voltage at the actuators", 150, "actuatorVoltage"),
  actuatorCurrent: measuredField("current", "I_m1", "current of all actuators", 500, "actuatorCurrent"),
  sourceCurrent: measuredField("current", "I_m2", "current from the source", 500, "sourceCurrent"),
  tipForceUp: measuredField("force", "F_m1", "force at the tip, lifting", 2000, "tipForceUp"),
  tipForceDown: measuredField("force", "F_m2", "force at the tip, letting down", 2000, "tipForceDown"),
  warmest: {
    kind: "choice",
    label: "warmest part",
    options: {
      source: "cells or bank",
      wires: "wires and plugs",
      converter: "converter",
      actuators: "actuators",
      notFelt: "not felt",
    },
    default: "notFelt",
  },
  spread: { kind: "ratio", symbol: "sp", label: "how far parts stray from their datasheets", min: 0, max: 0.5, default: 0.02 },
}
