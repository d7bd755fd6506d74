import { fuseCoordination, harness, ledRun, sizeConductor, voltageDrop, wireHeating } from "../../src/wire/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  ["bundle", any(wireHeating), { current: 3, awg: 22, arrangement: "bundle", wires: 7, ambient: 35, rating: 105, faultCurrent: 40 }],
  ["under padding", any(wireHeating), { current: 2, area: 0.75e-6, stranding: "class5", arrangement: "padding", wires: 3 }],
  ["aluminium", any(wireHeating), { current: 8, area: 2e-6, metal: "aluminium", emissivity: 0.3 }],
  [
    "metric size under padding",
    any(sizeConductor),
    {
      current: 6,
      length: 3,
      voltage: 12,
      series: "metric",
      stranding: "class5",
      arrangement: "padding",
      wires: 2,
      fuse: 10,
    },
  ],
  ["aluminium fuse wire, no inrush", any(fuseCoordination), { fuse: 10, current: 3, area: 2e-6, metal: "aluminium", wireRating: 14 }],
  [
    "square inrush, few pulses",
    any(fuseCoordination),
    {
      fuse: 5,
      current: 3,
      awg: 22,
      wireRating: 7,
      inrushPeak: 20,
      inrushTime: 0.01,
      inrushShape: "square",
      pulses: 500,
      meltingIntegral: 20,
    },
  ],
  [
    "tinned class 2 run",
    any(voltageDrop),
    { current: 5, length: 4, area: 1.5e-6, stranding: "class2-tinned", temperature: 60, contacts: 4 },
  ],
  [
    "lights fed inside and at an end",
    any(ledRun),
    {
      length: 6,
      current: 2,
      sections: 24,
      track: 0.06,
      dimBelow: 11.8,
      feeds: [
        { position: 2.1, voltage: 12, resistance: 0.05 },
        { position: 6, voltage: 12.1, resistance: 0.1 },
      ],
    },
  ],
  [
    "even run fed in its middle",
    any(ledRun),
    { length: 5, current: 2, track: 0.06, dimBelow: 11.9, feeds: [{ position: 2.5, voltage: 12 }] },
  ],
  [
    "loop with a power load and two sources",
    any(harness),
    {
      sources: [
        { name: "a", positive: "p", negative: "0", voltage: 12, resistance: 0.1 },
        { name: "b", positive: "q", negative: "0", voltage: 12.4, resistance: 0.1 },
      ],
      wires: [
        { name: "w1", from: "p", to: "q", length: 2, awg: 20 },
        { name: "w2", from: "q", to: "r", length: 1, awg: 20 },
        { name: "w3", from: "r", to: "p", length: 1, awg: 20 },
      ],
      powerLoads: [{ name: "l", from: "r", to: "0", power: 20 }],
    },
  ],
]

workingTests(cases)
