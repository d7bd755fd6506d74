// A fan of feathers behind the back: one is turned by a geared motor, the others follow on threads.
import { evening, notesOf, pack } from "./evening.js"
import type { Starter } from "./starter.js"

/** A fan of feathers. */
export const fan: Starter = {
  about: "a fan of feathers behind the back: one is turned, the others follow on threads",
  rig: {
    version: 2,
    name: "Bank heron, a fan of seven feathers",
    note: "Starter rig: invented, with typical parts. Replace each number by your own; the comments say where each comes from.",
    motions: [
      {
        name: "fan",
        bus: "fan line",
        drive: {
          type: "gearmotor",
          travel: "150 deg",
          ratedVoltage: "12 V",
          noLoadSpeed: "9 rpm",
          noLoadCurrent: "0.2 A",
          loadTorque: "5 N m",
          loadSpeed: "6 rpm",
          loadCurrent: "1.1 A",
          ratedTorque: "5 N m",
          holdingTorque: "6 N m",
        },
        mechanisms: [
          {
            name: "feathers",
            type: "fan",
            vanes: 7,
            length: "620 mm",
            attachRadius: "260 mm",
            foldedAngle: "5 deg",
            foldedStep: "2 deg",
            openAngle: "155 deg",
            span: "130 deg",
            hingeFriction: "0.02 N m",
            masses: [
              { name: "quill and silk", mass: "38 g", radius: "300 mm" },
              { name: "tip bead", mass: "6 g", radius: "610 mm" },
            ],
            area: "0.05 m2",
            areaRadius: "340 mm",
            mount: { forward: "-160 mm", height: "1.3 m" },
            pinch: { fixed: [{ x1: "-150 mm", y1: "-300 mm", x2: "150 mm", y2: "-300 mm" }] },
          },
        ],
        wanted: { duration: "6 s", swing: "140 deg", holds: true },
        duty: { ratedDuty: "25 %", ratedRunDuration: "5 min" },
        spar: {
          length: "610 mm",
          section: { outsideDiameter: "6 mm", wall: "1 mm" },
          material: "carbon-pultruded",
          sagLimit: "40 mm",
          handling: "walking",
        },
        pin: { bolt: "M8", thickness: "6 mm", material: "aluminium-6061", edgeDistance: "24 mm", handling: "walking" },
      },
    ],
    power: {
      sources: [pack],
      buses: [
        {
          name: "fan line",
          from: "pack",
          run: { length: "0.7 m", awg: 20, contacts: 4, insulation: "80 degC" },
          switchResistance: "15 mohm",
          switchRating: "6 A",
          fuseRating: "4 A",
          fuseResistance: "20 mohm",
        },
      ],
      loads: [
        { type: "controller", name: "receiver", bus: "fan line", current: "40 mA", resetVoltage: "6 V" },
        { type: "lights", name: "tip beads", bus: "fan line", current: "0.14 A" },
      ],
    },
    programme: [
      { at: "0 s", motion: "fan", to: 1 },
      { at: "30 s", motion: "fan", to: 0 },
    ],
    ...evening,
    wind: { span: "0.62 m", chord: "0.4 m", windSpeed: "2.5 m/s", walkingSpeed: "0.8 m/s" },
    venue: {
      front: "250 mm",
      back: "350 mm",
      bodyWidth: "600 mm",
      kinds: [],
      own: [{ name: "gate of the square", type: "door", width: "1.6 m", height: "2.3 m" }],
    },
    contact: { region: "face", paddingStiffness: "2 N/mm", paddingThickness: "15 mm" },
    parts: [
      { name: "back plate and harness", mass: "1.3 kg", price: 40, forward: "-110 mm", height: "1.2 m" },
      { name: "geared motor", mass: "0.6 kg", price: 46, forward: "-150 mm", height: "1.3 m" },
      { name: "cell pack in its box", mass: "0.3 kg", price: 44, forward: "-120 mm", height: "1.05 m" },
      { name: "receiver and driver", mass: "0.08 kg", price: 26, forward: "-120 mm", height: "1.1 m" },
    ],
    budget: { mass: "5 kg", price: 200 },
  },
  notes: notesOf({
    "motions[0].drive": "Typical of a geared motor with a worm: copy two points of torque, speed and current from its datasheet.",
    "motions[0].mechanisms[0]": "Invented fan: weigh one feather, measure where its thread is tied and how it rests when folded.",
    "motions[0].wanted": "Invented: what the scene asks for.",
    "motions[0].duty": "Typical; the datasheet of the motor says it.",
    "motions[0].spar": "Invented: a common stock tube as the quill. The acceptable sag is yours to say.",
    "motions[0].pin": "Common practice: one bolt for all feathers, clear of the plate's edge by three diameters.",
    "power.loads[0]": "Typical of a small receiver: measure its current, look its reset voltage up.",
    "power.loads[1]": "Invented: seven small beads. Measure what yours draw.",
    contact: "Invented padding. Say which part of a body a feather could really strike, children included.",
  }),
  onPurpose: {
    "contact: fan":
      "Feathers sweep past at the height of faces, and no contact with a face is acceptable however soft: keep people away by distance and a helper. State the region that they can still strike once that is done.",
  },
}
