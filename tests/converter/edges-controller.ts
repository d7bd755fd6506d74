import { controllerSupply } from "../../src/converter/index.js"
import type { Edges } from "../helpers/edges.js"

const signal = (change: object) => ({
  signal: { highOutput: "3 V", lowOutput: "0.3 V", highThreshold: "2.2 V", lowThreshold: "0.8 V", groundResistance: "20 mohm", ...change },
})

// 9.6 V less 0.2 Ω times the motors' current and 0.2 A, less 1.5 V of dropout: at 18.8 A the 4.3 V of the reset
export const edges: Edges = {
  cautions: [
    { solver: controllerSupply, code: "lost-link", severity: "warning", shown: {}, notShown: null },
    { solver: controllerSupply, code: "spikes", severity: "note", shown: {}, notShown: null },
    { solver: controllerSupply, code: "resets", severity: "warning", shown: { motorCurrent: 18.82 }, notShown: { motorCurrent: 18.78 } },
    // a tenth of 4.3 V: from 4.73 V, at 16.65 A
    {
      solver: controllerSupply,
      code: "thin-margin",
      severity: "caution",
      shown: { motorCurrent: 16.66 },
      notShown: { motorCurrent: 16.64 },
    },
    // 4.5 V at 17.8 A
    {
      solver: controllerSupply,
      code: "below-window",
      severity: "warning",
      shown: { motorCurrent: 17.81 },
      notShown: { motorCurrent: 17.79 },
    },
    {
      solver: controllerSupply,
      code: "over-voltage",
      severity: "warning",
      shown: { supplyWindow: { low: 4.5, high: 4.99 } },
      notShown: { supplyWindow: { low: 4.5, high: 5.01 } },
    },
    // 10 A move the ground by 0.5 V, which is what low has, and 0.8 V, which is what high has
    {
      solver: controllerSupply,
      code: "signal-lost",
      severity: "warning",
      shown: signal({ groundResistance: "50.1 mohm" }),
      notShown: signal({ groundResistance: "49.9 mohm" }),
    },
    {
      solver: controllerSupply,
      code: "signal-lost",
      severity: "warning",
      shown: signal({ lowThreshold: "2.1 V", groundResistance: "80.1 mohm" }),
      notShown: signal({ lowThreshold: "2.1 V", groundResistance: "79.9 mohm" }),
    },
  ],
  refusals: [],
  faults: [
    {
      solver: controllerSupply,
      path: "sourceVoltage.high",
      faulty: { sourceVoltage: { low: 9.6, high: 9.59 } },
      sound: { sourceVoltage: { low: 9.6, high: 9.61 } },
    },
    // 48 A into a short circuit, 0.2 of them the controller's
    { solver: controllerSupply, path: "motorCurrent", faulty: { motorCurrent: 47.81 }, sound: { motorCurrent: 47.79 } },
    {
      solver: controllerSupply,
      path: "supplyWindow.low",
      faulty: { supplyWindow: { low: 6, high: 6 } },
      sound: { supplyWindow: { low: 5.99, high: 6 } },
    },
    {
      solver: controllerSupply,
      path: "resetVoltage",
      faulty: { supplyWindow: { low: 4, high: 4.29 } },
      sound: { supplyWindow: { low: 4, high: 4.31 } },
    },
    {
      solver: controllerSupply,
      path: "feed.outputVoltage",
      faulty: { feed: { type: "linear", outputVoltage: 4.29 } },
      sound: { feed: { type: "linear", outputVoltage: 4.31 } },
    },
    {
      solver: controllerSupply,
      path: "signal.lowThreshold",
      faulty: signal({ lowThreshold: "2.2 V" }),
      sound: signal({ lowThreshold: "2.19 V" }),
    },
  ],
  numbers: {
    "controllerSupply.motorCurrent.total": (si) => si.controllerCurrent + si.motorCurrent,
    "controllerSupply.motorCurrent.most": (si) => si.sourceVoltage.low / si.sourceResistance,
  },
}
