// A linear actuator by its datasheet, as a drive.
import { actuatorConstants, linearActuator } from "../../drive/index.js"
import type { Current, Force, Length, Mass, Ratio, Speed, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { type Drive, type DriveMember, unlockingBySheet } from "./drive.js"

/** A linear actuator. */
export interface LinearActuatorDrive {
  type: "linear-actuator"
  /** Distance between its pins when retracted. [L_0; 1 mm to 3 m] */
  retractedLength: Length
  /** Stroke [S; 1 mm to 2 m] */
  stroke: Length
  /** Rated voltage [V_r; 10 mV to 100 V] */
  ratedVoltage: Voltage
  /** Speed without load [v_0; 0.01 mm/s to 2 m/s] */
  noLoadSpeed: Speed
  /** Current without load [I_0; 0 to 50 A] */
  noLoadCurrent: Current
  /** Rated force [F_r; 1 mN to 20 kN] */
  ratedForce: Force
  /** Speed at rated force [v_r; 0.01 mm/s to 2 m/s] */
  ratedSpeed: Speed
  /** Current at rated force [I_r; 0.1 mA to 100 A] */
  ratedCurrent: Current
  /** Force it holds without power; 0 where the screw does not lock itself. [F_hold; 0 to 50 kN; default 0] */
  holdingForce?: Force
  /** Share of a helping force that reaches the motor: 0 where the screw locks itself. [eta_b; 0 to 1; default 0] */
  backwardEfficiency?: Ratio
  /** Mass that its rod feels of motor and screw; 0 where it does not matter to a slow move. [m_r; 0 to 10000 kg; default 0] */
  reflectedMass?: Mass
}

function build(si: SiOf<LinearActuatorDrive>): Drive {
  const { windingResistance, forceConstant, backEmfConstant, frictionCurrent } = actuatorConstants(si)
  return {
    travel: "length",
    low: si.retractedLength,
    high: si.retractedLength + si.stroke,
    effortConstant: forceConstant,
    backEmfConstant,
    windingResistance,
    frictionCurrent,
    circuitCurrent: 0,
    inertia: si.reflectedMass,
    currentLimit: null,
    lineAt: null,
    minVoltage: 0,
    backwardEfficiency: si.backwardEfficiency,
    unlocking: si.backwardEfficiency > 0 ? 0 : unlockingBySheet(forceConstant, backEmfConstant),
    holdingEffort: si.holdingForce,
    ratedVoltage: si.ratedVoltage,
    ratedEffort: si.ratedForce,
    control: "on-off",
    standbyCurrent: 0,
  }
}

/** A linear actuator. */
export const linearActuatorDrive: DriveMember<LinearActuatorDrive> = {
  type: "linear-actuator",
  label: "linear actuator",
  fields: {
    retractedLength: { kind: "length", symbol: "L_0", label: "retracted length", min: "1 mm", max: 3 },
    stroke: { kind: "length", symbol: "S", label: "stroke", min: "1 mm", max: 2 },
    ratedVoltage: { kind: "voltage", symbol: "V_r", label: "rated voltage", min: "10 mV", max: 100 },
    noLoadSpeed: { kind: "speed", symbol: "v_0", label: "speed without load", min: "0.01 mm/s", max: 2 },
    noLoadCurrent: { kind: "current", symbol: "I_0", label: "current without load", min: 0, max: 50 },
    ratedForce: { kind: "force", symbol: "F_r", label: "rated force", min: "1 mN", max: 20000 },
    ratedSpeed: { kind: "speed", symbol: "v_r", label: "speed at rated force", min: "0.01 mm/s", max: 2 },
    ratedCurrent: { kind: "current", symbol: "I_r", label: "current at rated force", min: "0.1 mA", max: 100 },
    holdingForce: { kind: "force", symbol: "F_hold", label: "holding force without power", min: 0, max: 50000, default: 0 },
    backwardEfficiency: {
      kind: "ratio",
      symbol: "eta_b",
      label: "share of a helping force that reaches the motor",
      min: 0,
      max: 1,
      default: 0,
    },
    reflectedMass: { kind: "mass", symbol: "m_r", label: "mass that the rod feels of motor and screw", min: 0, max: 10000, default: 0 },
  },
  check: ({ ratedVoltage, noLoadSpeed, noLoadCurrent, ratedForce, ratedSpeed, ratedCurrent }) =>
    domainFaults(linearActuator, {
      ratedVoltage,
      noLoadSpeed,
      noLoadCurrent,
      ratedForce,
      ratedSpeed,
      ratedCurrent,
      terminalVoltage: ratedVoltage,
      force: 0,
    }),
  build,
}
