// A collar of leaves round the neck that a winch raises.
import { evening, notesOf, pack } from "./evening.js"
import type { Starter } from "./starter.js"

const leaf = {
  type: "hinge",
  reversed: true,
  assembly: "clockwise",
  length: "240 mm",
  fixedPivot: { x: 0, y: "60 mm" },
  movingPivot: { radius: "70 mm", angle: 0 },
  startLength: "125.6 mm",
  hingeFriction: "0.004 N m",
  masses: [
    { name: "leaf of felt on wire", mass: "22 g", radius: "120 mm" },
    { name: "bead", mass: "5 g", radius: "230 mm" },
  ],
  panels: [{ area: "0.02 m2", radius: "130 mm" }],
  pinch: {
    fixed: [{ x1: "-60 mm", y1: "-50 mm", x2: "-60 mm", y2: "50 mm" }],
    reachable: "finger",
    hingeZone: "30 mm",
    armThickness: "4 mm",
    fixedThickness: "10 mm",
  },
} as const

/** A collar of leaves. */
export const collar: Starter = {
  about: "a collar of eight leaves round the neck, raised by a winch",
  rig: {
    version: 2,
    name: "Ash lizard, a collar of eight leaves",
    note: "Starter rig: invented, with typical parts. Replace each number by your own; the comments say where each comes from.",
    motions: [
      {
        name: "collar",
        bus: "collar line",
        drive: {
          type: "gearmotor",
          travel: "180 deg",
          ratedVoltage: "12 V",
          noLoadSpeed: "15 rpm",
          noLoadCurrent: "0.12 A",
          loadTorque: "1 N m",
          loadSpeed: "11 rpm",
          loadCurrent: "0.45 A",
          ratedTorque: "1 N m",
          holdingTorque: "1.2 N m",
        },
        transmission: [{ type: "drum", drumDiameter: "30 mm", lineDiameter: "1.2 mm", lineStrength: "400 N", lineType: "fibre-rope" }],
        mechanisms: [
          {
            name: "front leaves",
            ...leaf,
            count: 2,
            mirrored: true,
            mount: { forward: "50 mm", left: "40 mm", height: "1.45 m", heading: "30 deg" },
          },
          {
            name: "side leaves",
            ...leaf,
            count: 4,
            mirrored: true,
            mount: { forward: "-10 mm", left: "70 mm", height: "1.47 m", heading: "90 deg" },
          },
          {
            name: "back leaves",
            ...leaf,
            count: 2,
            mirrored: true,
            mount: { forward: "-80 mm", left: "40 mm", height: "1.48 m", heading: "150 deg" },
          },
        ],
        wanted: { duration: "4 s", swing: "70 deg", holds: true },
        duty: { ratedDuty: "25 %", ratedRunDuration: "5 min" },
        spar: {
          length: "230 mm",
          section: { outsideDiameter: "3 mm" },
          material: "steel",
          sagLimit: "5 mm",
          handling: "walking",
        },
        pin: { bolt: "M3", thickness: "3 mm", material: "aluminium-6061", edgeDistance: "9 mm", handling: "walking" },
      },
    ],
    power: {
      sources: [pack],
      buses: [
        {
          name: "collar line",
          from: "pack",
          run: { length: "0.8 m", awg: 22, contacts: 4, insulation: "80 degC" },
          switchResistance: "15 mohm",
          switchRating: "6 A",
          fuseRating: "2 A",
          fuseResistance: "40 mohm",
        },
      ],
      loads: [
        { type: "controller", name: "receiver", bus: "collar line", current: "40 mA", resetVoltage: "6 V" },
        { type: "lights", name: "beads", bus: "collar line", current: "0.16 A" },
      ],
    },
    programme: [
      { at: "0 s", motion: "collar", to: 1 },
      { at: "6 s", motion: "collar", to: 0 },
    ],
    ...evening,
    heat: { ...evening.heat, hooded: true },
    wind: { span: "0.24 m", chord: "0.1 m", windSpeed: "4 m/s", walkingSpeed: "0.8 m/s" },
    venue: { front: "300 mm", back: "300 mm", bodyWidth: "550 mm", kinds: ["door", "route"] },
    contact: { region: "face" },
    parts: [
      { name: "shoulder ring, opens by itself when pulled", mass: "0.6 kg", price: 34, forward: "-20 mm", height: "1.45 m" },
      { name: "geared motor with drum", mass: "0.3 kg", price: 30, forward: "-120 mm", height: "1.3 m" },
      { name: "cell pack in its box", mass: "0.3 kg", price: 44, forward: "-110 mm", height: "1.05 m" },
      { name: "receiver and driver", mass: "0.08 kg", price: 26, forward: "-110 mm", height: "1.1 m" },
    ],
    budget: { mass: "3 kg", price: 180 },
  },
  notes: notesOf({
    "motions[0].drive": "Typical of a small geared motor with a worm: copy two points of torque, speed and current from its datasheet.",
    "motions[0].transmission[0]": "Invented drum and line: measure both.",
    "motions[0].mechanisms[0]": "Invented leaves: weigh one, measure from its hinge. All eight are alike.",
    "motions[0].mechanisms[1]": "Invented, as the front leaves.",
    "motions[0].mechanisms[2]": "Invented, as the front leaves.",
    "motions[0].wanted": "Invented: what the scene asks for.",
    "motions[0].duty": "Typical; the datasheet of the motor says it.",
    "motions[0].spar": "Invented: the wire that stiffens a leaf. The acceptable sag is yours to say.",
    "motions[0].pin": "Common practice: a small bolt, clear of the edge by three diameters.",
    "power.loads[0]": "Typical of a small receiver: measure its current, look its reset voltage up.",
    "power.loads[1]": "Invented: eight small beads. Measure what yours draw.",
    contact: "The leaves rise beside the wearer's own face and neck, on which no contact is acceptable.",
  }),
  onPurpose: {
    "contact: collar":
      "The leaves rise beside the wearer's own face, and no contact with a face is acceptable however soft. Build it so that no leaf reaches the face, and so that the ring opens by itself when something pulls at it; then state the region that they can still strike.",
  },
}
