// A jaw that opens and shuts on a slow hobby servo with a rod.
import { evening, notesOf, pack } from "./evening.js"
import type { Starter } from "./starter.js"

/** A jaw. */
export const jaw: Starter = {
  about: "a jaw opened and shut by a hobby servo, horn and rod",
  rig: {
    version: 2,
    name: "Chalk lizard, a jaw on a slow servo",
    note: "Starter rig: invented, with typical parts. Replace each number by your own; the comments say where each comes from.",
    motions: [
      {
        name: "jaw",
        bus: "servo line",
        drive: {
          type: "hobby-servo",
          fromAngle: "-35 deg",
          toAngle: "35 deg",
          firstVoltage: "4.8 V",
          firstStallTorque: "1.4 N m",
          firstTime: "0.75 s",
          secondVoltage: "6 V",
          secondStallTorque: "1.7 N m",
          secondTime: "0.6 s",
          stallCurrent: "1.3 A",
          holdingTorque: "1 N m",
        },
        mechanisms: [
          {
            name: "lower jaw",
            type: "pushrod",
            servoPivot: { x: "-80 mm", y: "0 mm" },
            servoHorn: "20 mm",
            servoHornAngle: "90 deg",
            movingPivot: { radius: "28 mm", angle: "115 deg" },
            neutralAngle: "-25 deg",
            startAngle: "-35 deg",
            length: "240 mm",
            hingeFriction: "0.01 N m",
            masses: [
              { name: "jaw of foam", mass: "110 g", radius: "95 mm" },
              { name: "teeth and lip", mass: "35 g", radius: "215 mm" },
            ],
            panels: [{ area: "0.02 m2", radius: "120 mm" }],
            mount: { forward: "70 mm", height: "1.68 m", heading: "0 deg" },
            pinch: { fixed: [{ x1: "100 mm", y1: "90 mm", x2: "240 mm", y2: "90 mm" }], reachable: "hand-wrist-fist" },
          },
        ],
        wanted: { duration: "1.5 s", swing: "40 deg" },
        duty: { ratedDuty: "30 %", ratedRunDuration: "2 min" },
        spar: {
          length: "230 mm",
          section: { outsideDiameter: "8 mm", wall: "1 mm" },
          material: "carbon-pultruded",
          sagLimit: "5 mm",
          handling: "walking",
        },
        pin: { bolt: "M4", thickness: "4 mm", material: "plywood", edgeDistance: "15 mm", handling: "walking" },
      },
    ],
    power: {
      sources: [pack],
      buses: [
        {
          name: "main line",
          from: "pack",
          run: { length: "0.3 m", awg: 20, contacts: 4, insulation: "80 degC" },
          switchResistance: "15 mohm",
          switchRating: "6 A",
          fuseRating: "3 A",
          fuseResistance: "25 mohm",
        },
        {
          name: "servo line",
          from: "main line",
          run: { length: "0.9 m", awg: 22, contacts: 2, insulation: "80 degC" },
          limitAction: "hold",
          converter: {
            outputVoltage: "5.5 V",
            outputCurrentLimit: "3 A",
            efficiency: [
              { outputCurrent: "0.1 A", efficiency: "80 %" },
              { outputCurrent: "1 A", efficiency: "90 %" },
              { outputCurrent: "3 A", efficiency: "85 %" },
            ],
            quiescentCurrent: "8 mA",
            minInputVoltage: "7 V",
            maxInputVoltage: "24 V",
          },
        },
      ],
      loads: [
        { type: "controller", name: "receiver", bus: "servo line", current: "40 mA", resetVoltage: "4 V" },
        { type: "lights", name: "eyes", bus: "servo line", current: "80 mA" },
      ],
    },
    programme: [
      { at: "0 s", motion: "jaw", to: 1 },
      { at: "3 s", motion: "jaw", to: 0 },
    ],
    ...evening,
    wind: { span: "0.24 m", chord: "0.1 m", windSpeed: "4 m/s", walkingSpeed: "0.8 m/s" },
    venue: { front: "350 mm", back: "250 mm", bodyWidth: "550 mm", kinds: ["door", "route"] },
    contact: { region: "hand-finger", paddingStiffness: "3 N/mm", paddingThickness: "10 mm" },
    parts: [
      { name: "head shell and headband", mass: "0.9 kg", price: 32, forward: "40 mm", height: "1.7 m" },
      { name: "servo with horn and rod", mass: "0.12 kg", price: 28, forward: "-20 mm", height: "1.7 m" },
      { name: "cell pack in its box", mass: "0.3 kg", price: 44, forward: "-110 mm", height: "1.05 m" },
      { name: "receiver and converter", mass: "0.08 kg", price: 22, forward: "-110 mm", height: "1.1 m" },
    ],
    budget: { mass: "3 kg", price: 180 },
  },
  notes: notesOf({
    "motions[0].drive":
      "Typical of a slow servo with a worm, which keeps the jaw where it is without power. Copy torque, time and stall current at both voltages from its datasheet.",
    "motions[0].mechanisms[0]": "Invented jaw: measure horn and rod pin from their shafts, weigh each part.",
    "motions[0].wanted": "Invented: what the scene asks for.",
    "motions[0].duty": "Typical; the datasheet of the servo may say it, else feel how warm it gets.",
    "motions[0].spar": "Invented: a common stock tube along the jaw. The acceptable sag is yours to say.",
    "motions[0].pin": "Common practice: a bolt through plywood cheeks.",
    "power.buses[1]": "Typical of a small step-down converter: copy its limits and its efficiency curve from the datasheet.",
    "power.loads[0]": "Typical of a small receiver: measure its current, look its reset voltage up.",
    "power.loads[1]": "Invented. Measure what yours draw.",
    contact: "Invented padding. Hands are put into a jaw: say what else it could strike.",
  }),
  onPurpose: {
    "pinch: jaw":
      "A jaw shuts: where it meets its upper half a hand can get in, whatever its size. Keep the force low, the edges soft and hands away, and let the switch in reach stop it.",
  },
}
