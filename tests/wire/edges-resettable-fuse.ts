import { resettableFuse } from "../../src/wire/index.js"
import type { CautionRow, Edges, FaultRow } from "../helpers/edges.js"
import { currentFor, flow, inStillAir, settles } from "./second.js"

const row = (code: string, severity: CautionRow["severity"], shown: object, notShown: object): CautionRow => ({
  code,
  severity,
  solver: resettableFuse,
  shown: { ...shown },
  notShown: { ...notShown },
})
const fault = (path: string, faulty: object, sound: object): FaultRow => ({
  path,
  solver: resettableFuse,
  faulty: { ...faulty },
  sound: { ...sound },
})
/** A curve of its own, and no colder than 10 °C. */
const cool = (...points: readonly (readonly [number, number])[]) => ({
  minDeviceTemperature: 10,
  holdCurve: points.map(([temperature, share]) => ({ temperature, share })),
})
/** 0.5 A held and 1 A tripping at 23 °C, on AWG 36; no colder. */
const small = (tripTime: number) => ({ holdCurrent: 0.5, current: 0.3, awg: 36, minDeviceTemperature: 23, tripTime })
const tenth = { awg: 10, area: null, material: "copper" as const, stranding: "solid" }
/** Current at which the surface of AWG 10 in still air is at 43 °C. */
const warm = (() => {
  let [low, high] = [25, 80]
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2
    if (flow(tenth, inStillAir, mid).surface < 43) low = mid
    else high = mid
  }
  return currentFor(tenth, inStillAir, low)
})()

/** The example holds 9 A at 23 °C: 7.47 A at 40 °C; it lets 18 A·1.18182/0.97273 through at 0 °C, 21.869 A. */
export const edges: Edges = {
  cautions: [
    { code: "still-live", severity: "warning", solver: resettableFuse, shown: {}, notShown: null },
    { code: "trip-time", severity: "note", solver: resettableFuse, shown: {}, notShown: null },
    row("over-voltage", "warning", { sourceVoltage: 30.1 }, { sourceVoltage: 30 }),
    row("fault-current", "warning", { faultCurrent: 40.1 }, { faultCurrent: 40 }),
    row("fault-not-given", "warning", { faultCurrent: null }, { faultCurrent: 40 }),
    row("trips-in-use", "caution", { current: 7.48 }, { current: 7.46 }),
    row("wire-unprotected", "warning", { datasheetAmpacity: 39.9 }, { datasheetAmpacity: 40.1 }),
    row("may-not-trip", "warning", { faultCurrent: 21.86 }, { faultCurrent: 21.88 }),
    row("fault-burns", "warning", small(0.325), small(0.3225)),
    row("burns", "warning", { current: warm * 1.001 }, { current: warm * 0.999 }),
    row("limit-raised", "caution", { faultTemperatureLimit: 160.5 }, { faultTemperatureLimit: 160 }),
  ],
  refusals: [],
  faults: [
    fault("area", { area: "0.5 mm2" }, {}),
    fault("wires", { wires: 2 }, { wires: 1 }),
    fault("insulationRating", { insulationRating: 25 }, { insulationRating: 25.1 }),
    fault("tripCurrent", { tripCurrent: 9 }, { tripCurrent: 9.05 }),
    fault("testCurrent", { testCurrent: 18 }, { testCurrent: 18.1 }),
    fault("minResistance", { minResistance: 0.0201 }, { minResistance: 0.02 }),
    fault("minDeviceTemperature", { minDeviceTemperature: 40.1 }, { minDeviceTemperature: 40 }),
    fault("holdCurve", cool([10.05, 1.2], [23, 1], [40, 0.8]), cool([10, 1.2], [23, 1], [40, 0.8])),
    fault("holdCurve", cool([10, 1.2], [23, 1], [39.9, 0.8]), cool([10, 1.2], [23, 1], [40, 0.8])),
    fault("holdCurve", cool([10, 1.2], [23, 1.052], [40, 0.8]), cool([10, 1.2], [23, 1.048], [40, 0.8])),
    fault("holdCurve", cool([10, 1.2], [23, 0.948], [40, 0.8]), cool([10, 1.2], [23, 0.952], [40, 0.8])),
    fault("holdCurve.1.temperature", cool([10, 1.2], [10, 1.195], [40, 0.8]), cool([10, 1.2], [10.05, 1.195], [40, 0.8])),
    fault("holdCurve.1.share", cool([10, 1.2], [12, 1.2], [40, 0.8]), cool([10, 1.2], [12, 1.195], [40, 0.8])),
  ],
  numbers: {
    "resettableFuse.fault-current.fault": (si) => si.faultCurrent ?? si.maxFaultCurrent,
    "resettableFuse.fault-burns.fault": (si) => si.faultCurrent ?? si.maxFaultCurrent,
    "resettableFuse.may-not-trip.fault": (si) => si.faultCurrent ?? si.maxFaultCurrent,
    "resettableFuse.burns.surface": (si) => flow(si, si, settles(si, si, si.current)).surface,
    // between the last point up to 23 °C and the next
    "resettableFuse.holdCurve.rated": ({ holdCurve }) => {
      const i = holdCurve.findLastIndex((point: { temperature: number }) => point.temperature <= 23)
      const [a, b] = [holdCurve[i], holdCurve[i + 1] ?? holdCurve[i]]
      return a === b ? a.share : a.share + ((b.share - a.share) * (23 - a.temperature)) / (b.temperature - a.temperature)
    },
    "resettableFuse.tripCurrent.trip": (si) => si.tripCurrent ?? 2 * si.holdCurrent,
    "resettableFuse.testCurrent.test": (si) => si.testCurrent ?? 5 * si.holdCurrent,
    "resettableFuse.testCurrent.trip": (si) => si.tripCurrent ?? 2 * si.holdCurrent,
  },
}
