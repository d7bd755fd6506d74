import type { AngularSpeed, BackEmfConstant, Current, Moment, Resistance, Temperature, Voltage } from "../../quantity/index.js"
import { type Either, type Issue, inconsistent, type SiOf } from "../../solver/index.js"

/**
 * Input of {@link dcMotor}. Give two points of the sheet (no-load and one loaded point, which may be
 * stall), or back-emf constant and resistance where the sheet prints those.
 */
export interface DcMotorInput {
  /** Voltage the sheet's points were taken at. [V_r; 10 mV to 1000 V; optional] */
  ratedVoltage?: Voltage | null
  /** Speed without load. [n_0; 0.572958 °/s to 100000 rpm; optional] */
  noLoadSpeed?: AngularSpeed | null
  /** Current without load. [I_0; 0 to 1000 A; default 0] */
  noLoadCurrent?: Current
  /** Torque of the second point [T_1; 0.01 mN m to 1000000 N m; optional] */
  loadTorque?: Moment | null
  /** Speed at that torque; 0 for stall. [n_1; 0 to 100000 rpm; optional] */
  loadSpeed?: AngularSpeed | null
  /** Current at that torque. [I_1; 0.1 mA to 10000 A; optional] */
  loadCurrent?: Current | null
  /** Back-emf constant, as printed. [k_0; above 1e−6 to 1000 V s/rad; optional] */
  backEmfConstant?: BackEmfConstant | null
  /** Resistance from lead to lead, as printed. [R_0; above 1 µΩ to 1000 kΩ; optional] */
  windingResistance?: Resistance | null
  /** Voltage at the motor in use. [V_m; 10 mV to 1000 V] */
  terminalVoltage: Voltage
  /** Torque against the motion. [T; 0 to 1000000 N m] */
  torque: Moment
  /** Winding temperature in use. [T_w; −50 to 200 °C; default 20 °C] */
  windingTemperature?: Temperature
  /** Winding temperature the sheet was taken at. [T_s; −50 to 200 °C; default 20 °C] */
  datasheetTemperature?: Temperature
}

type Si = SiOf<DcMotorInput>

/** What a brushed motor, gears included, is: torque for an ampere, volts for a speed, resistance. */
export interface MotorConstants {
  readonly torqueConstant: number
  readonly backEmfConstant: number
  readonly windingResistance: number
}

/** Constants of a motor from its sheet, at the sheet's temperature. */
export function motorConstants(
  si: Pick<
    Si,
    "ratedVoltage" | "noLoadSpeed" | "noLoadCurrent" | "loadTorque" | "loadSpeed" | "loadCurrent" | "backEmfConstant" | "windingResistance"
  >,
): MotorConstants {
  if (si.backEmfConstant !== null)
    return { torqueConstant: si.backEmfConstant, backEmfConstant: si.backEmfConstant, windingResistance: si.windingResistance as number }
  const [v, n0, i0] = [si.ratedVoltage as number, si.noLoadSpeed as number, si.noLoadCurrent]
  const [t1, n1, i1] = [si.loadTorque as number, si.loadSpeed as number, si.loadCurrent as number]
  const determinant = n0 * i1 - n1 * i0
  return {
    torqueConstant: t1 / (i1 - i0),
    backEmfConstant: (v * (i1 - i0)) / determinant,
    windingResistance: (v * (n0 - n1)) / determinant,
  }
}

/** A sheet gives constants, or two points of the motor's line. */
export const sheetRules = [
  {
    exactlyOne: [
      ["backEmfConstant", "windingResistance"],
      ["ratedVoltage", "noLoadSpeed", "loadTorque", "loadSpeed", "loadCurrent"],
    ],
  },
] as const satisfies readonly Either[]

/** Faults between a sheet's values. */
export function sheetFaults(si: Si): Issue[] {
  if (si.backEmfConstant !== null) return []
  const faults: Issue[] = []
  if (!((si.loadSpeed as number) < (si.noLoadSpeed as number)))
    faults.push(
      inconsistent(["loadSpeed"], "{loadSpeed angularSpeed rpm}", "less than the no-load speed of {noLoadSpeed angularSpeed rpm}", {
        loadSpeed: si.loadSpeed as number,
        noLoadSpeed: si.noLoadSpeed as number,
      }),
    )
  if (!((si.loadCurrent as number) > si.noLoadCurrent))
    faults.push(
      inconsistent(["loadCurrent"], "{loadCurrent current}", "more than the no-load current of {noLoadCurrent current}", {
        loadCurrent: si.loadCurrent as number,
        noLoadCurrent: si.noLoadCurrent,
      }),
    )
  if (faults.length) return faults
  const { torqueConstant, backEmfConstant, windingResistance } = motorConstants(si)
  if (![torqueConstant, backEmfConstant, windingResistance].every((x) => x > 1e-12 && x < 1e12))
    return [inconsistent(["loadSpeed"], "two points too close together", "points that differ enough to tell the constants")]
  // printed to two or three figures, a gearless motor's two constants can cross by a few per cent
  if (torqueConstant > 1.05 * backEmfConstant)
    return [
      inconsistent(
        ["loadTorque"],
        "{times} times the work its current can do",
        "a torque that the current can give (check the units: kgf·cm, kgf·mm, oz·in and N·m differ widely)",
        { times: torqueConstant / backEmfConstant },
      ),
    ]
  return []
}
