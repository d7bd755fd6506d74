import type { RigDocument } from "./document.js"

/** The lantern moth on two strings of three cells: the solvers' example. Invented parts. */
export const demoRig: RigDocument = {
  version: 1,
  name: "Lantern moth, forewings on cells",
  hinged: {
    count: 2,
    hinge: { x: "60 mm", y: 0 },
    anchor: { x: 0, y: "-190 mm" },
    pinRadius: "72 mm",
    pinAngle: "-25 deg",
    masses: [
      { name: "spar", mass: "260 g", radius: "520 mm" },
      { name: "ribs and skin", mass: "240 g", radius: "560 mm", angle: "-6 deg" },
      { name: "lanterns", mass: "60 g", radius: "850 mm" },
    ],
    hingeFriction: "0.15 N m",
    actuator: {
      retractedLength: "155 mm",
      stroke: "100 mm",
      ratedVoltage: "12 V",
      noLoadSpeed: "12 mm/s",
      noLoadCurrent: "0.5 A",
      ratedForce: "200 N",
      ratedSpeed: "9 mm/s",
      ratedCurrent: "2 A",
      holdingForce: "350 N",
    },
  },
  pack: {
    chemistry: "nmc",
    series: 3,
    parallel: 2,
    cellCapacity: "2.6 Ah",
    cellResistance: "60 mohm",
    stateOfCharge: 0.6,
    extraResistance: "40 mohm",
  },
  wiring: {
    source: { length: "1.1 m", awg: 20, contacts: 6, contactResistance: "8 mohm" },
    switchResistance: "20 mohm",
    fuseResistance: "15 mohm",
    fuseRating: "7.5 A",
  },
  brief: { stageTime: "60 s", raiseTime: "15 s", swing: "60 deg" },
}
