import { describe, expect, it } from "vitest"
import { airTravel, cellPack, chargeTime, packUnderLoad, parallelSharing, peukert, powerBank, runtime } from "../../src/pack/index.js"
import type { AnySolver } from "../helpers/solvers.js"

type Input = Readonly<Record<string, unknown>>
const rows: readonly (readonly [code: string, solver: unknown, shown: Input, notShown: Input])[] = [
  ["touch-voltage", cellPack, { series: 15 }, { series: 14 }],
  ["air-travel", cellPack, { series: 6, parallel: 2 }, { series: 5, parallel: 2 }],
  ["unequal-strings", cellPack, { parallel: 2 }, { parallel: 1 }],
  ["limit-by-temperature", cellPack, { temperature: 4 }, { temperature: 20 }],
  ["limit-by-temperature", cellPack, { temperature: 45 }, { temperature: 44 }],
  ["weak-group", cellPack, { groupCapacities: ["5.2 Ah", "5.2 Ah", "4 Ah"] }, { groupCapacities: ["5.2 Ah", "5.2 Ah", "5.1 Ah"] }],
  ["lithium-pack", cellPack, {}, { chemistry: "nimh" }],
  ["no-charging-in-frost", cellPack, { temperature: -0.1 }, { temperature: 0 }],
  ["hot-cells", cellPack, { temperature: 61 }, { temperature: 60 }],
  ["deep-discharge", cellPack, { cutOffVoltage: "2.4 V" }, { cutOffVoltage: "2.5 V" }],
  ["below-cut-off", packUnderLoad, { power: "230 W" }, {}],
  ["near-collapse", packUnderLoad, { power: "130 W" }, { power: "129 W" }],
  ["over-cell-current", packUnderLoad, { power: null, current: "15.7 A" }, { power: null, current: "15.5 A" }],
  ["over-cell-current", packUnderLoad, { temperature: 0 }, {}],
  ["over-cell-current", runtime, { maxCurrent: "2 A" }, { maxCurrent: "8 A" }],
  ["cold", runtime, { temperature: -1 }, { temperature: 0 }],
  ["alkaline-rate", runtime, { chemistry: "alkaline", series: 8, pattern: [{ power: 1 }] }, {}],
  ["collapse", runtime, { resistance: "0.5 ohm", cutOffVoltage: "0.5 V" }, {}],
  ["over-charge", chargeTime, { chargeVoltage: "4.25 V" }, { chargeVoltage: "4.2 V" }],
  ["charge-time-is-least", chargeTime, {}, { chemistry: "lead" }],
  [
    "unequal-charge",
    parallelSharing,
    {},
    { strings: [12, 12.04].map((v) => ({ openCircuitVoltage: v, resistance: 0.1, capacity: 9000 })) },
  ],
  [
    "string-over-current",
    parallelSharing,
    { strings: [12, 12].map((v) => ({ openCircuitVoltage: v, resistance: 0.1, capacity: 9000, maxCurrent: 2.9 })) },
    { strings: [12, 12].map((v) => ({ openCircuitVoltage: v, resistance: 0.1, capacity: 9000, maxCurrent: 3.1 })) },
  ],
  [
    "string-over-charged",
    parallelSharing,
    { current: 0, strings: [12, 12.4].map((v) => ({ openCircuitVoltage: v, resistance: 0.1, capacity: 9000, maxChargeCurrent: 1.9 })) },
    { current: 0, strings: [12, 12.4].map((v) => ({ openCircuitVoltage: v, resistance: 0.1, capacity: 9000, maxChargeCurrent: 2.1 })) },
  ],
  [
    "unequal-resistance",
    parallelSharing,
    { strings: [0.1, 0.121].map((resistance) => ({ openCircuitVoltage: 12, resistance, capacity: 9000 })) },
    { strings: [0.1, 0.119].map((resistance) => ({ openCircuitVoltage: 12, resistance, capacity: 9000 })) },
  ],
  ["lead-only", peukert, {}, { exponent: 1.04, secondCapacity: null, secondTime: null }],
  ["below-rated", peukert, { current: "1.9 A" }, { current: "2.1 A" }],
  ["exponent-not-constant", peukert, { current: "41 A" }, { current: "39 A" }],
  ["switches-off", powerBank, { power: "0.49 W" }, { power: "0.51 W" }],
  ["near-port-limit", powerBank, { power: "12.1 W" }, { power: "11.9 W" }],
  ["step-up-peaks", powerBank, { loadVoltage: "12 V" }, {}],
  ["spares-in-cabin", airTravel, { carried: "spare" }, { carried: "in-device" }],
  ["home-made", airTravel, {}, { kind: "dry" }],
]

describe("each caution stands on its side of its limit, and not on the other", () => {
  it.each(rows)("%s", (code, solver, shown, notShown) => {
    const { example } = solver as AnySolver
    const codes = (input: Input) => ((solver as AnySolver)({ ...example, ...input }).cautions as { code: string }[]).map((c) => c.code)
    expect(codes(shown)).toContain(code)
    expect(codes(notShown)).not.toContain(code)
  })
})
