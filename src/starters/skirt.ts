// A skirt that opens like an umbrella: a linear actuator pulls six ribs up over one cable.
import { evening, notesOf, pack } from "./evening.js"
import type { Starter } from "./starter.js"

const rib = {
  type: "hinge",
  reversed: true,
  assembly: "clockwise",
  length: "680 mm",
  fixedPivot: { x: 0, y: "120 mm" },
  movingPivot: { radius: "110 mm", angle: 0 },
  startLength: "228 mm",
  hingeFriction: "0.02 N m",
  masses: [
    { name: "rib", mass: "55 g", radius: "320 mm" },
    { name: "its share of hoop and cloth", mass: "45 g", radius: "620 mm" },
  ],
  panels: [{ area: "0.09 m2", radius: "420 mm" }],
  pinch: { fixed: [{ x1: "-110 mm", y1: "-600 mm", x2: "-110 mm", y2: "-250 mm" }] },
} as const

/** A skirt that opens. */
export const skirt: Starter = {
  about: "a skirt that opens like an umbrella: six ribs on one linear actuator",
  rig: {
    version: 2,
    name: "Foxglove, a skirt of six ribs",
    note: "Starter rig: invented, with typical parts. Replace each number by your own; the comments say where each comes from.",
    motions: [
      {
        name: "skirt",
        bus: "skirt line",
        drive: {
          type: "linear-actuator",
          retractedLength: "170 mm",
          stroke: "50 mm",
          ratedVoltage: "12 V",
          noLoadSpeed: "14 mm/s",
          noLoadCurrent: "0.3 A",
          ratedForce: "150 N",
          ratedSpeed: "11 mm/s",
          ratedCurrent: "1.2 A",
          holdingForce: "350 N",
        },
        transmission: [
          {
            type: "cable",
            length: "0.5 m",
            diameter: "2 mm",
            construction: "7x7-stainless",
            breakingForce: "2.5 kN",
            route: { type: "sheath", friction: 0.1, bends: [{ angle: "60 deg", radius: "120 mm" }], sheathRate: "150 N/mm" },
          },
        ],
        mechanisms: [
          {
            name: "front ribs",
            ...rib,
            count: 2,
            mirrored: true,
            mount: { forward: "90 mm", left: "60 mm", height: "1.02 m", heading: "30 deg" },
          },
          {
            name: "side ribs",
            ...rib,
            count: 2,
            mirrored: true,
            mount: { forward: 0, left: "150 mm", height: "1.02 m", heading: "90 deg" },
          },
          {
            name: "back ribs",
            ...rib,
            count: 2,
            mirrored: true,
            mount: { forward: "-90 mm", left: "60 mm", height: "1.02 m", heading: "150 deg" },
          },
        ],
        wanted: { duration: "7 s", swing: "55 deg", holds: true },
        duty: { ratedDuty: "20 %", ratedRunDuration: "2 min" },
        spar: {
          length: "660 mm",
          section: { outsideDiameter: "10 mm", wall: "1.5 mm" },
          material: "glass-pultruded",
          sagLimit: "25 mm",
          handling: "walking",
        },
        pin: { bolt: "M5", thickness: "5 mm", material: "aluminium-6061", edgeDistance: "15 mm", handling: "walking" },
      },
    ],
    power: {
      sources: [pack],
      buses: [
        {
          name: "skirt line",
          from: "pack",
          run: { length: "0.5 m", awg: 20, contacts: 4, insulation: "80 degC" },
          switchResistance: "15 mohm",
          switchRating: "6 A",
          fuseRating: "3 A",
          fuseResistance: "25 mohm",
        },
      ],
      loads: [
        { type: "controller", name: "receiver", bus: "skirt line", current: "40 mA", resetVoltage: "6 V" },
        { type: "lights", name: "hem lights", bus: "skirt line", current: "0.2 A" },
      ],
    },
    programme: [
      { at: "0 s", motion: "skirt", to: 1 },
      { at: "20 s", motion: "skirt", to: 0 },
    ],
    ...evening,
    wind: { span: "0.66 m", chord: "0.5 m", windSpeed: "2 m/s", walkingSpeed: "0.8 m/s" },
    venue: { front: "350 mm", back: "350 mm", bodyWidth: "700 mm", kinds: ["door"] },
    contact: { region: "lower-leg", paddingStiffness: "3 N/mm", paddingThickness: "12 mm" },
    parts: [
      { name: "waist ring and braces", mass: "0.9 kg", price: 34, forward: "0 mm", height: "1.02 m" },
      { name: "linear actuator", mass: "0.5 kg", price: 36, forward: "-120 mm", height: "1.1 m" },
      { name: "cell pack in its box", mass: "0.3 kg", price: 44, forward: "110 mm", height: "1.05 m" },
      { name: "receiver and relays", mass: "0.1 kg", price: 24, forward: "-110 mm", height: "1.15 m" },
    ],
    budget: { mass: "4 kg", price: 180 },
  },
  notes: notesOf({
    "motions[0].drive": "Typical of small 12 V actuators. Copy yours from its datasheet: two points of force, speed and current.",
    "motions[0].transmission[0]": "Typical of a thin stainless cable in a plastic-lined sheath: count every bend.",
    "motions[0].mechanisms[0]":
      "Invented ribs: weigh one with its share of the hoop, measure the pivots from its hinge. All six are alike.",
    "motions[0].mechanisms[1]": "Invented, as the front ribs.",
    "motions[0].mechanisms[2]": "Invented, as the front ribs.",
    "motions[0].wanted": "Invented: what the scene asks for.",
    "motions[0].duty": "Typical; the datasheet of the actuator says it.",
    "motions[0].spar": "Invented: a common stock tube of glass fibre. The acceptable sag is yours to say.",
    "motions[0].pin": "Common practice: a small bolt through two cheeks, clear of their edge by three diameters.",
    "power.loads[0]": "Typical of a small receiver: measure its current, look its reset voltage up.",
    "power.loads[1]": "Invented: a string round the hem. Measure what yours draws.",
    contact: "Invented padding. A rib rises past shins; for a child in reach it is the face.",
  }),
  onPurpose: {},
}
