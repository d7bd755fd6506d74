import type { SiOf } from "../../src/solver/index.js"
import { type MotorSwitchingInput, motorSwitching } from "../../src/wire/index.js"
import type { Edges } from "../helpers/edges.js"

type Si = SiOf<MotorSwitchingInput>

const stop = { type: "emergency-stop", contactResistance: 0.02, ratedCurrent: 6, ratedVoltage: 24, category: "dc-3" }
const relay = { type: "relay", contactResistance: 0.01, ratedCurrent: 20, ratedVoltage: 28, coilCurrent: 0.08 }
const reversing = { type: "reversing-switch", contactResistance: 0.015, contacts: 2, ratedCurrent: 20, ratedVoltage: 28 }
const limit = { type: "limit-switch", contactResistance: 0.03, ratedCurrent: 16, ratedVoltage: 24, diodeDrop: 0.8 }
const only = (...switches: object[]) => ({ switches })
const driver = { inputCapacitance: 1e-3, voltageLimit: 40, returnedEnergy: 0.3, standbyCurrent: 0.005 }
const needed = (si: Si) => {
  const rows = si.switches.map((s) => s.contacts * s.contactResistance)
  const closed = si.runningCurrent * rows.reduce((a, b) => a + b, 0)
  const ends = si.switches.map((s, i) =>
    s.type === "limit-switch" && s.diodeDrop !== null ? closed - si.runningCurrent * (rows[i] as number) + s.diodeDrop : closed,
  )
  return 1.001 * Math.max(closed, ...ends)
}

export const edges: Edges = {
  cautions: [
    { solver: motorSwitching, code: "welded-contact", severity: "note", shown: {}, notShown: null },
    { solver: motorSwitching, code: "no-emergency-stop", severity: "warning", shown: { emergencyStop: "none" }, notShown: {} },
    { solver: motorSwitching, code: "stop-by-signal", severity: "warning", shown: { emergencyStop: "signal-only" }, notShown: {} },
    {
      solver: motorSwitching,
      code: "stop-lets-go",
      severity: "warning",
      shown: { whenOpened: "coasts", holdsUnpowered: false },
      notShown: { whenOpened: "coasts", holdsUnpowered: true },
    },
    {
      solver: motorSwitching,
      code: "brake-does-not-hold",
      severity: "warning",
      shown: { holdsUnpowered: false },
      notShown: { holdsUnpowered: true },
    },
    {
      solver: motorSwitching,
      code: "latching-relay",
      severity: "warning",
      shown: only({ ...relay, latching: true }),
      notShown: only(relay),
    },
    {
      solver: motorSwitching,
      code: "runs-on",
      severity: "caution",
      shown: {},
      notShown: { moving: null },
    },
    { solver: motorSwitching, code: "closes-on-capacitor", severity: "caution", shown: { driver }, notShown: { driver: null } },
    // ½·1 mH·(14 A)² and 0.3 J on 1 mF at 12 V: √(144 + 2·0.398/0.001) = 30.66 V
    {
      solver: motorSwitching,
      code: "pumps-up",
      severity: "warning",
      shown: { driver: { ...driver, voltageLimit: 30.6 } },
      notShown: { driver: { ...driver, voltageLimit: 30.7 } },
    },
    // reversed at speed 2·9 − 2 = 16 A, limited to 14 A: category DC-3 allows four times 3.5 A
    {
      solver: motorSwitching,
      code: "over-rating",
      severity: "warning",
      shown: only({ ...stop, ratedCurrent: 3.49 }, reversing),
      notShown: only({ ...stop, ratedCurrent: 3.51 }, reversing),
    },
    // from rest 9 A: DC-12 allows its rated current, DC-1 half as much again
    {
      solver: motorSwitching,
      code: "over-rating",
      severity: "warning",
      shown: only({ ...stop, category: "dc-12", ratedCurrent: 8.98 }, { ...reversing, reversesAtSpeed: false }),
      notShown: only({ ...stop, category: "dc-12", ratedCurrent: 9.02 }, { ...reversing, reversesAtSpeed: false }),
    },
    {
      solver: motorSwitching,
      code: "over-rating",
      severity: "warning",
      shown: only({ ...stop, category: "dc-1", ratedCurrent: 5.98 }),
      notShown: only({ ...stop, category: "dc-1", ratedCurrent: 6.02 }),
    },
    {
      solver: motorSwitching,
      code: "over-current",
      severity: "warning",
      shown: only({ ...stop, ratedCurrent: 1.99 }),
      notShown: only({ ...stop, ratedCurrent: 2.01 }),
    },
    {
      solver: motorSwitching,
      code: "over-voltage",
      severity: "warning",
      shown: only(stop, { ...reversing, ratedVoltage: 11.95 }),
      notShown: only(stop, { ...reversing, ratedVoltage: 12.05 }),
    },
    // τ = L·9 A/12 V: 1 ms of DC-1 at 1.333 mH, 2.5 ms of DC-3 at 3.333 mH; DC-13 of 1 W: a third of 6 ms
    {
      solver: motorSwitching,
      code: "arc-outlasts-rating",
      severity: "caution",
      shown: { ...only({ ...stop, category: "dc-1" }), inductance: 1.34e-3 },
      notShown: { ...only({ ...stop, category: "dc-1" }), inductance: 1.33e-3 },
    },
    {
      solver: motorSwitching,
      code: "arc-outlasts-rating",
      severity: "caution",
      shown: { ...only(stop), inductance: 3.34e-3 },
      notShown: { ...only(stop), inductance: 3.33e-3 },
    },
    {
      solver: motorSwitching,
      code: "arc-outlasts-rating",
      severity: "caution",
      shown: { ...only({ ...stop, category: "dc-13", ratedCurrent: 1 / 24 }), inductance: 2.68e-3 },
      notShown: { ...only({ ...stop, category: "dc-13", ratedCurrent: 1 / 24 }), inductance: 2.66e-3 },
    },
    // at most 100 ms, from 50 W on
    {
      solver: motorSwitching,
      code: "arc-outlasts-rating",
      severity: "caution",
      shown: { ...only({ ...stop, category: "dc-13" }), inductance: 0.1334 },
      notShown: { ...only({ ...stop, category: "dc-13" }), inductance: 0.1333 },
    },
    {
      solver: motorSwitching,
      code: "reverses-at-speed",
      severity: "caution",
      shown: only(stop, reversing),
      notShown: only(stop, { ...reversing, reversesAtSpeed: false }),
    },
    {
      solver: motorSwitching,
      code: "touch-voltage",
      severity: "warning",
      shown: { driver: null, supplyVoltage: 30.1 },
      notShown: { driver: null, supplyVoltage: 30 },
    },
    { solver: motorSwitching, code: "limit-not-safe", severity: "caution", shown: only(stop, limit), notShown: only(stop) },
    {
      solver: motorSwitching,
      code: "limit-diodes",
      severity: "note",
      shown: only(stop, limit),
      notShown: only(stop, { ...limit, diodeDrop: null }),
    },
    // one of both ends is enough to be stuck there
    {
      solver: motorSwitching,
      code: "stuck-at-end",
      severity: "note",
      shown: only(stop, limit, { ...limit, diodeDrop: null }),
      notShown: only(stop, limit, limit),
    },
  ],
  refusals: [
    // 2 A through four contacts of 1.5 Ω
    {
      solver: motorSwitching,
      code: "insufficient-voltage",
      refused: only({ ...stop, contacts: 4, contactResistance: 1.501 }),
      answered: only({ ...stop, contacts: 4, contactResistance: 1.497 }),
    },
    // a diode of 0.8 V on a supply of 0.8 V and a little
    {
      solver: motorSwitching,
      code: "insufficient-voltage",
      refused: { ...only(stop, { ...limit, diodeDrop: 2.999 }), supplyVoltage: 3.04 },
      answered: { ...only(stop, { ...limit, diodeDrop: 2.999 }), supplyVoltage: 3.05 },
    },
  ],
  faults: [
    { solver: motorSwitching, path: "stallCurrent", faulty: { stallCurrent: 1.99 }, sound: { stallCurrent: 2 } },
    { solver: motorSwitching, path: "currentLimit", faulty: { currentLimit: 1.99 }, sound: { currentLimit: 2 } },
    {
      solver: motorSwitching,
      path: "driver.voltageLimit",
      faulty: { driver: { ...driver, voltageLimit: 11.99 } },
      sound: { driver: { ...driver, voltageLimit: 12 } },
    },
    { solver: motorSwitching, path: "emergencyStop", faulty: only(reversing), sound: only(reversing, relay) },
  ],
  numbers: {
    "motorSwitching.insufficient-voltage.needed": needed,
    "motorSwitching.insufficient-voltage.at.needed": needed,
    "motorSwitching.insufficient-voltage.shortBy": (si: Si) => needed(si) - si.supplyVoltage,
  },
}
