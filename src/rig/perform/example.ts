import type { PerformInput } from "./types.js"

/** An invented rig: the moth's feelers on one geared motor, on the pack that feeds the receiver too. */
export const examplePerformance: PerformInput = {
  version: 2,
  name: "Lantern moth, feelers",
  motions: [
    {
      name: "feelers",
      bus: "motor line",
      drive: {
        type: "gearmotor",
        travel: "70 deg",
        ratedVoltage: "6 V",
        noLoadSpeed: "20 rpm",
        noLoadCurrent: "0.08 A",
        loadTorque: "0.6 N m",
        loadSpeed: "14 rpm",
        loadCurrent: "0.45 A",
        rotorInertia: "0.004 kg m2",
        holdingTorque: "0.8 N m",
      },
      mechanisms: [
        {
          name: "feeler",
          type: "turned-arm",
          count: 2,
          mirrored: true,
          startAngle: "-10 deg",
          length: "350 mm",
          hingeFriction: "0.01 N m",
          masses: [{ name: "cane and lantern", mass: "45 g", radius: "220 mm" }],
          mount: { forward: "90 mm", height: "1.8 m", heading: "0 deg" },
        },
      ],
    },
  ],
  power: {
    sources: [{ type: "cells", name: "pack", chemistry: "nimh", series: 5, parallel: 1, cellCapacity: "2 Ah", cellResistance: "30 mohm" }],
    buses: [{ name: "motor line", from: "pack", run: { length: "0.6 m", awg: 22, contacts: 2 }, fuseRating: "2 A" }],
    loads: [{ type: "controller", name: "receiver", bus: "motor line", current: "40 mA", resetVoltage: "3.5 V" }],
  },
  programme: [
    { at: 0, motion: "feelers", to: 1 },
    { at: "1.5 s", motion: "feelers", to: 0 },
  ],
}
