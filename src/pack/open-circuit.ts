import type { Ratio, Voltage } from "../quantity/index.js"
import { type Issue, inconsistent } from "../solver/index.js"

/** A point of an open-circuit curve of one cell. */
export interface OpenCircuitPoint {
  /** Charge left, 0 to 1. [s_u; 0 to 1] */
  stateOfCharge: Ratio
  /** Open-circuit voltage [U_u; 10 mV to 20 V] */
  voltage: Voltage
}

/** Description of a curve given point by point. */
export const curveField = {
  kind: "list",
  label: "open-circuit curve of a cell",
  min: 2,
  max: 2000,
  default: null,
  of: {
    kind: "group",
    label: "point",
    fields: {
      stateOfCharge: { kind: "ratio", symbol: "s_u", label: "state of charge", min: 0, max: 1 },
      voltage: { kind: "voltage", symbol: "U_u", label: "open-circuit voltage", min: "10 mV", max: 20 },
    },
  },
} as const

/** Faults of a curve: it must rise from charge 0 to charge 1. */
export function curveFaults(curve: readonly { readonly stateOfCharge: number; readonly voltage: number }[] | null): Issue[] {
  if (curve === null) return []
  const faults: Issue[] = []
  const rises = curve.every((p, i) => {
    const before = curve[i - 1]
    return !before || (p.stateOfCharge > before.stateOfCharge && p.voltage > before.voltage)
  })
  if (!rises) faults.push(inconsistent(["openCircuitCurve"], "points out of order", "charge and voltage that rise from point to point"))
  if (curve[0]?.stateOfCharge !== 0 || curve.at(-1)?.stateOfCharge !== 1)
    faults.push(inconsistent(["openCircuitCurve"], "a part of the range", "points from charge 0 to 1"))
  return faults
}
