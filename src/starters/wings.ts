// A pair of wings, each arm pushed up by a linear actuator.
import { evening, notesOf, pack } from "./evening.js"
import type { Starter } from "./starter.js"

/** A pair of wings. */
export const wings: Starter = {
  about: "a pair of wings, each pushed up by a linear actuator",
  rig: {
    version: 2,
    name: "Lamp owl, a pair of wings",
    note: "Starter rig: invented, with typical parts. Replace each number by your own; the comments say where each comes from.",
    motions: [
      {
        name: "wings",
        bus: "wing line",
        drive: {
          type: "linear-actuator",
          count: 2,
          retractedLength: "165 mm",
          stroke: "80 mm",
          ratedVoltage: "12 V",
          noLoadSpeed: "12 mm/s",
          noLoadCurrent: "0.3 A",
          ratedForce: "120 N",
          ratedSpeed: "9.5 mm/s",
          ratedCurrent: "1.1 A",
          holdingForce: "300 N",
        },
        mechanisms: [
          {
            name: "wing",
            type: "hinge",
            count: 2,
            mirrored: true,
            length: "820 mm",
            hinge: { x: "50 mm", y: 0 },
            fixedPivot: { x: "-10 mm", y: "-180 mm" },
            movingPivot: { radius: "68 mm", angle: "-10 deg" },
            hingeFriction: "0.1 N m",
            masses: [
              { name: "spar", mass: "160 g", radius: "390 mm" },
              { name: "ribs and skin", mass: "190 g", radius: "470 mm" },
              { name: "lamps", mass: "45 g", radius: "770 mm" },
            ],
            panels: [{ area: "0.2 m2", radius: "430 mm" }],
            mount: { forward: "-130 mm", left: "60 mm", height: "1.38 m" },
            pinch: { fixed: [{ x1: "0 mm", y1: "-650 mm", x2: "0 mm", y2: "-250 mm" }] },
          },
        ],
        wanted: { duration: "10 s", swing: "75 deg", holds: true },
        duty: { ratedDuty: "20 %", ratedRunDuration: "2 min" },
        spar: {
          length: "800 mm",
          section: { outsideDiameter: "18 mm", wall: "1.5 mm" },
          material: "aluminium-6061",
          sagLimit: "25 mm",
          handling: "walking",
        },
        pin: {
          bolt: "M6",
          tube: { outsideDiameter: "18 mm", wall: "1.5 mm" },
          material: "aluminium-6061",
          edgeDistance: "18 mm",
          clampWidth: "20 mm",
          handling: "walking",
        },
      },
    ],
    power: {
      sources: [pack],
      buses: [
        {
          name: "wing line",
          from: "pack",
          run: { length: "0.9 m", awg: 18, contacts: 4, insulation: "80 degC" },
          switchResistance: "15 mohm",
          switchRating: "10 A",
          fuseRating: "5 A",
          fuseResistance: "15 mohm",
        },
      ],
      loads: [
        { type: "controller", name: "receiver", bus: "wing line", current: "40 mA", resetVoltage: "6 V" },
        { type: "lights", name: "lamps", bus: "wing line", current: "0.3 A" },
      ],
    },
    programme: [
      { at: "0 s", motion: "wings", to: 1 },
      { at: "40 s", motion: "wings", to: 0 },
    ],
    ...evening,
    wind: { span: "0.8 m", chord: "0.25 m", windSpeed: "3 m/s", walkingSpeed: "0.8 m/s" },
    venue: { front: "250 mm", back: "350 mm", bodyWidth: "600 mm" },
    contact: { region: "face", paddingStiffness: "2 N/mm", paddingThickness: "20 mm" },
    formed: [
      {
        name: "curve of the wing tip",
        bend: {
          outsideDiameter: "16 mm",
          wall: "2 mm",
          radius: "160 mm",
          angle: "50 deg",
          material: "petg",
          support: "filled",
          legA: "300 mm",
          legB: "180 mm",
        },
        heat: {
          shape: "tube",
          outsideDiameter: "16 mm",
          thickness: "2 mm",
          material: "petg",
          heatSource: "oven",
          sourceTemperature: "150 degC",
        },
      },
    ],
    parts: [
      { name: "back plate and harness", mass: "1.4 kg", price: 42, forward: "-110 mm", height: "1.25 m" },
      { name: "linear actuator", mass: "0.5 kg", count: 2, price: 36, forward: "-140 mm", height: "1.25 m" },
      { name: "cell pack in its box", mass: "0.3 kg", price: 44, forward: "-120 mm", height: "1.05 m" },
      { name: "receiver and relays", mass: "0.1 kg", price: 24, forward: "-120 mm", height: "1.1 m" },
    ],
    budget: { mass: "6 kg", price: 260 },
  },
  notes: notesOf({
    "motions[0].drive": "Typical of small 12 V actuators. Copy yours from its datasheet: two points of force, speed and current.",
    "motions[0].mechanisms[0]":
      "Invented arms: draw yours to scale, measure the pivots from the hinge, weigh each part and balance it on an edge to find its centre.",
    "motions[0].wanted": "Invented: what the scene asks for.",
    "motions[0].duty": "Typical; the datasheet of the actuator says it.",
    "motions[0].spar": "Invented: a common stock tube. The acceptable sag is yours to say.",
    "motions[0].pin": "Common practice: a bolt through the tube, clear of its end by three diameters.",
    "power.loads[0]": "Typical of a small receiver: measure its current, look its reset voltage up.",
    "power.loads[1]": "Invented: a short string of lamps. Measure what yours draws.",
    "formed[0]": "Invented curve of stock tube; try the heating on an offcut.",
    contact: "Invented padding. Say which part of a body the wing could really strike, children included.",
  }),
  onPurpose: {
    "contact: wings":
      "A wing tip passes at the height of faces, and no contact with a face is acceptable however soft: keep people away by distance and a helper. State the region that it can still strike once that is done.",
  },
}
