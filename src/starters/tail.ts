// A tail that lifts and drops on two cables, pulled by a geared motor in the back plate.
import { evening, notesOf, pack } from "./evening.js"
import type { Starter } from "./starter.js"

/** A tail on two cables. */
export const tail: Starter = {
  about: "a tail that lifts and drops, moved by a geared motor over a pair of cables",
  rig: {
    version: 2,
    name: "Reed newt, a tail on two cables",
    note: "Starter rig: invented, with typical parts. Replace each number by your own; the comments say where each comes from.",
    motions: [
      {
        name: "tail",
        bus: "tail line",
        drive: {
          type: "gearmotor",
          travel: "120 deg",
          ratedVoltage: "12 V",
          noLoadSpeed: "16 rpm",
          noLoadCurrent: "0.2 A",
          loadTorque: "2.5 N m",
          loadSpeed: "12 rpm",
          loadCurrent: "0.9 A",
          ratedTorque: "2.5 N m",
          holdingTorque: "3 N m",
        },
        transmission: [
          {
            type: "antagonist",
            drivingDiameter: "40 mm",
            drivenDiameter: "80 mm",
            length: "0.8 m",
            diameter: "1.5 mm",
            construction: "7x7-stainless",
            breakingForce: "1.5 kN",
            route: { type: "sheath", friction: 0.1, bends: [{ angle: "70 deg", radius: "120 mm" }], sheathRate: "120 N/mm" },
            pretension: "60 N",
          },
        ],
        mechanisms: [
          {
            name: "tail",
            type: "turned-arm",
            startAngle: "-30 deg",
            length: "640 mm",
            hingeFriction: "0.05 N m",
            masses: [
              { name: "root segments", mass: "200 g", radius: "140 mm" },
              { name: "middle segments", mass: "110 g", radius: "340 mm" },
              { name: "tip with lamp", mass: "45 g", radius: "590 mm" },
            ],
            panels: [{ area: "0.06 m2", radius: "300 mm" }],
            mount: { forward: "-170 mm", height: "1 m", heading: "180 deg" },
            pinch: { fixed: [{ x1: "-40 mm", y1: "150 mm", x2: "-40 mm", y2: "500 mm" }], hingeZone: "120 mm" },
          },
        ],
        wanted: { duration: "3 s", swing: "55 deg", holds: true },
        duty: { ratedDuty: "25 %", ratedRunDuration: "5 min" },
        spar: {
          length: "620 mm",
          section: { outsideDiameter: "12 mm" },
          material: "glass-pultruded",
          sagLimit: "40 mm",
          handling: "walking",
        },
        pin: { bolt: "M6", thickness: "6 mm", material: "aluminium-6061", edgeDistance: "18 mm", handling: "walking" },
      },
    ],
    power: {
      sources: [pack],
      buses: [
        {
          name: "tail line",
          from: "pack",
          run: { length: "0.6 m", awg: 20, contacts: 4, insulation: "80 degC" },
          switchResistance: "15 mohm",
          switchRating: "6 A",
          fuseRating: "3 A",
          fuseResistance: "25 mohm",
        },
      ],
      loads: [
        { type: "controller", name: "receiver", bus: "tail line", current: "40 mA", resetVoltage: "6 V" },
        { type: "lights", name: "tip lamp", bus: "tail line", current: "60 mA" },
      ],
    },
    programme: [
      { at: "0 s", motion: "tail", to: 1 },
      { at: "8 s", motion: "tail", to: 0 },
    ],
    ...evening,
    wind: { span: "0.6 m", chord: "0.1 m", windSpeed: "4 m/s", walkingSpeed: "0.8 m/s" },
    venue: { front: "250 mm", back: "300 mm", bodyWidth: "550 mm", kinds: ["door", "route"] },
    contact: { region: "thigh-knee", paddingStiffness: "3 N/mm", paddingThickness: "15 mm" },
    parts: [
      { name: "hip plate and belt", mass: "0.9 kg", price: 30, forward: "-110 mm", height: "1 m" },
      { name: "geared motor with pulley", mass: "0.45 kg", price: 34, forward: "-150 mm", height: "1.05 m" },
      { name: "cell pack in its box", mass: "0.3 kg", price: 44, forward: "110 mm", height: "1 m" },
      { name: "receiver and driver", mass: "0.08 kg", price: 26, forward: "-120 mm", height: "1.1 m" },
    ],
    budget: { mass: "4 kg", price: 180 },
  },
  notes: notesOf({
    "motions[0].drive": "Typical of a small geared motor with a worm: copy two points of torque, speed and current from its datasheet.",
    "motions[0].transmission[0]":
      "Typical of a thin stainless cable in a plastic-lined sheath. Count every bend; measure the pretension with a spring scale.",
    "motions[0].mechanisms[0]": "Invented tail: weigh each length of it, and measure from the hinge to where it balances.",
    "motions[0].wanted": "Invented: what the scene asks for.",
    "motions[0].duty": "Typical; the datasheet of the motor says it.",
    "motions[0].spar": "Invented: a common stock rod of glass fibre. The acceptable sag is yours to say.",
    "motions[0].pin": "Common practice: a bolt through two cheeks, clear of their edge by three diameters.",
    "power.loads[0]": "Typical of a small receiver: measure its current, look its reset voltage up.",
    "power.loads[1]": "Invented. Measure what yours draws.",
    contact: "Invented padding. Say which part of a body the tail could really strike; at the height of a child it is the face.",
  }),
  onPurpose: {},
}
