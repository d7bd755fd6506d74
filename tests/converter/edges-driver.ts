import { motorDriver } from "../../src/converter/index.js"
import type { Edges } from "../helpers/edges.js"

const bipolar = (totalDrop: string) => ({ bridge: { type: "bipolar", totalDrop } })
const switching = (change: object) => ({ switching: { frequency: "20 kHz", duty: "85 %", riseTime: 2e-7, deadTime: 1e-7, ...change } })

export const edges: Edges = {
  cautions: [
    { solver: motorDriver, code: "enable-is-no-stop", severity: "warning", shown: {}, notShown: null },
    { solver: motorDriver, code: "coasts", severity: "warning", shown: {}, notShown: { whenDisabled: "brakes" } },
    { solver: motorDriver, code: "brake-does-not-hold", severity: "warning", shown: { whenDisabled: "brakes" }, notShown: {} },
    {
      solver: motorDriver,
      code: "touch-voltage",
      severity: "warning",
      shown: { supplyVoltage: 30.1, supplyWindow: null },
      notShown: { supplyVoltage: 29.9, supplyWindow: null },
    },
    // 2 A over the drop, no switching and standby of 12 V · 4 mA
    {
      solver: motorDriver,
      code: "burns",
      severity: "warning",
      shown: { switching: null, standbyCurrent: 0, ...bipolar("0.501 V") },
      notShown: { switching: null, standbyCurrent: 0, ...bipolar("0.499 V") },
    },
    { solver: motorDriver, code: "over-rating", severity: "warning", shown: { ratedCurrent: 1.99 }, notShown: { ratedCurrent: 2.01 } },
    { solver: motorDriver, code: "limit-unknown", severity: "note", shown: { currentLimit: null }, notShown: {} },
    // bipolar, no switching: from 12 V and 2 Ω, less 2 V: E = 10 − 4 = 6, reversed (12 + 6 − 2)/2 = 8 A
    {
      solver: motorDriver,
      code: "limits-at-stall",
      severity: "caution",
      shown: { switching: null, currentLimit: 7.98, ...bipolar("2 V") },
      notShown: { switching: null, currentLimit: 8.02, ...bipolar("2 V") },
    },
    // 4 W over 31.25 K/W are 125 K on 25 °C
    {
      solver: motorDriver,
      code: "overheating",
      severity: "warning",
      shown: { switching: null, standbyCurrent: 0, thermalResistance: 31.3, ...bipolar("2 V") },
      notShown: { switching: null, standbyCurrent: 0, thermalResistance: 31.2, ...bipolar("2 V") },
    },
    // what the motor makes by turning just passes the drop of 2 V: 12 − 2 − 2·R = 2
    {
      solver: motorDriver,
      code: "returns-current",
      severity: "caution",
      shown: { switching: null, windingResistance: 3.99, ...bipolar("2 V") },
      notShown: { switching: null, windingResistance: 4.01, ...bipolar("2 V") },
    },
  ],
  refusals: [
    { solver: motorDriver, code: "insufficient-voltage", refused: { supplyVoltage: 5.98 }, answered: { supplyVoltage: 6.02 } },
    {
      solver: motorDriver,
      code: "insufficient-voltage",
      refused: { supplyWindow: null, switching: null, supplyVoltage: 2, ...bipolar("2.0 V") },
      answered: { supplyWindow: null, switching: null, supplyVoltage: 2.01, ...bipolar("2.0 V") },
    },
    {
      solver: motorDriver,
      code: "input-too-high",
      refused: { supplyVoltage: 28.1 },
      answered: { supplyVoltage: 27.9 },
    },
  ],
  faults: [
    {
      solver: motorDriver,
      path: "supplyWindow.low",
      faulty: { supplyWindow: { low: 12, high: 12 } },
      sound: { supplyWindow: { low: 11.9, high: 12 } },
    },
    // half of 10 µs in two edges and two dead times: 2·(2.4 + 0.1) µs
    {
      solver: motorDriver,
      path: "switching.frequency",
      faulty: switching({ frequency: 100500, riseTime: 2.4e-6 }),
      sound: switching({ frequency: 99900, riseTime: 2.4e-6 }),
    },
  ],
  numbers: {
    "motorDriver.touch-voltage.highest": (si) => si.supplyVoltage,
    "motorDriver.touch-voltage.wet": () => 30,
    "motorDriver.touch-voltage.dry": () => 60,
    "motorDriver.insufficient-voltage.shortBy": (si) => needed(si) - si.supplyVoltage,
    "motorDriver.insufficient-voltage.needed": needed,
    "motorDriver.insufficient-voltage.at.needed": needed,
    "motorDriver.input-too-high.shortBy": (si) => si.supplyVoltage - si.supplyWindow.high,
    "motorDriver.switching.frequency.edges": ({ switching: s }) => (s.riseTime + s.riseTime + s.deadTime + s.deadTime) / (1 / s.frequency),
  },
}

/** Voltage at which the driver works and a thousandth more than its drop is left, over the share of the time on. */
// biome-ignore lint/suspicious/noExplicitAny: the solver's input in SI
function needed(si: any): number {
  const { bridge } = si
  const drop = bridge.type === "bipolar" ? bridge.totalDrop : si.current * 2 * bridge.switchResistance * bridge.warmFactor
  return Math.max(
    si.supplyWindow === null ? 0 : si.supplyWindow.low,
    (drop + drop / 1000) / (si.switching === null ? 1 : si.switching.duty),
  )
}
