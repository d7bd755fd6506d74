import { conductorSize, fuseCoordination, harness, ledRun, voltageDrop, wireHeating } from "../../src/wire/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  [
    "bundle",
    any(wireHeating),
    { current: 3, awg: 22, arrangement: "bundle", wires: 7, ambientTemperature: 35, insulationRating: 105, faultCurrent: 40 },
  ],
  ["under padding", any(wireHeating), { current: 2, area: 0.75e-6, stranding: "class5", arrangement: "padding", wires: 3 }],
  ["aluminium", any(wireHeating), { current: 8, area: 2e-6, material: "aluminium", emissivity: 0.3 }],
  [
    "metric size under padding",
    any(conductorSize),
    {
      current: 6,
      length: 3,
      sourceVoltage: 12,
      sizeSystem: "metric",
      stranding: "class5",
      arrangement: "padding",
      wires: 2,
      fuseRating: 10,
    },
  ],
  [
    "aluminium fuse wire, no inrush",
    any(fuseCoordination),
    { fuseRating: 10, current: 3, area: 2e-6, material: "aluminium", datasheetAmpacity: 14 },
  ],
  [
    "square inrush, few pulses",
    any(fuseCoordination),
    {
      fuseRating: 5,
      current: 3,
      awg: 22,
      datasheetAmpacity: 7,
      peakInrushCurrent: 20,
      inrushDuration: 0.01,
      inrushShape: "square",
      pulses: 500,
      meltingIntegral: 20,
    },
  ],
  [
    "tinned class 2 run",
    any(voltageDrop),
    { current: 5, length: 4, area: 1.5e-6, stranding: "class2-tinned", conductorTemperature: 60, contacts: 4 },
  ],
  [
    "lights fed inside and at an end",
    any(ledRun),
    {
      length: 6,
      current: 2,
      lightCount: 24,
      trackResistance: 0.06,
      dimVoltage: 11.8,
      feeds: [
        { position: 2.1, sourceVoltage: 12, feederResistance: 0.05 },
        { position: 6, sourceVoltage: 12.1, feederResistance: 0.1 },
      ],
    },
  ],
  [
    "even run fed in its middle",
    any(ledRun),
    { length: 5, current: 2, trackResistance: 0.06, dimVoltage: 11.9, feeds: [{ position: 2.5, sourceVoltage: 12 }] },
  ],
  [
    "loop with a power load and two sources",
    any(harness),
    {
      sources: [
        { name: "a", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: 0.1 },
        { name: "b", positive: "q", negative: "0", sourceVoltage: 12.4, sourceResistance: 0.1 },
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
