import type { MoveInput } from "../run/move-types.js"

/** An invented rig: the feathers of a street-theatre troupe's lantern moth, raised by one actuator. */
export const exampleRig: MoveInput = {
  version: 2,
  name: "Lantern moth, forewings",
  motions: [
    {
      name: "wings",
      bus: "actuators",
      drive: {
        type: "linear-actuator",
        count: 2,
        retractedLength: "155 mm",
        stroke: "100 mm",
        ratedVoltage: "12 V",
        noLoadSpeed: "11.6 mm/s",
        noLoadCurrent: "0.35 A",
        ratedForce: "75 N",
        ratedSpeed: "9.5 mm/s",
        ratedCurrent: "0.8 A",
        holdingForce: "250 N",
      },
      mechanisms: [
        {
          name: "wing",
          type: "hinge",
          count: 2,
          mirrored: true,
          length: "900 mm",
          hinge: { x: "60 mm", y: "0 mm" },
          fixedPivot: { x: "0 mm", y: "-190 mm" },
          movingPivot: { radius: "72 mm", angle: "-25 deg" },
          masses: [
            { name: "spar", mass: "260 g", radius: "450 mm" },
            { name: "ribs and skin", mass: "240 g", radius: "560 mm", angle: "-6 deg" },
            { name: "lanterns", mass: "60 g", radius: "850 mm" },
          ],
          hingeFriction: "0.15 N m",
        },
      ],
      wanted: { duration: "15 s", swing: "80 deg", holds: true },
    },
  ],
  power: {
    sources: [
      {
        type: "cells",
        name: "pack",
        chemistry: "nmc",
        series: 3,
        parallel: 1,
        cellCapacity: "2.6 Ah",
        cellResistance: "45 mohm",
        cellCurrent: "5 A",
      },
    ],
    buses: [
      {
        name: "actuators",
        from: "pack",
        run: { length: "1.1 m", awg: 20, contacts: 6 },
        switchResistance: "20 mohm",
        switchRating: "6 A",
        fuseRating: "5 A",
      },
    ],
  },
}
