import {
  counterbalance,
  fourBar,
  fourBarLimits,
  freudenstein,
  hingeActuator,
  placeActuator,
  planarLinkage,
  scissor,
  servoPushrod,
  sliderCrank,
  sweptEnvelope,
  tetheredFan,
} from "../../src/linkage/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const on = (solver: { readonly example: object }, name: string, change: object): WorkingCase => [
  name,
  any(solver),
  { ...solver.example, ...change },
]

workingTests([
  on(fourBar, "a four-bar crossed over, with a point beside its coupler", {
    assembly: "crossed",
    inputAngle: "-100 deg",
    pointRadius: "70 mm",
    pointAngle: "-25 deg",
  }),
  on(fourBar, "a four-bar turned backwards", { inputSpeed: -3, inputAcceleration: -40, inputAngle: "200 deg" }),
  on(fourBarLimits, "limits of a double crank", { ground: "40 mm", input: "80 mm", coupler: "100 mm", output: "90 mm" }),
  on(fourBarLimits, "limits of a double rocker", { ground: "85 mm", input: "60 mm", coupler: "30 mm", output: "70 mm" }),
  on(fourBarLimits, "limits of a rocker-crank", { ground: "100 mm", input: "80 mm", coupler: "120 mm", output: "40 mm" }),
  on(fourBarLimits, "limits of a crank longer than its coupler", { ground: "50 mm", input: "90 mm", coupler: "70 mm", output: "80 mm" }),
  on(freudenstein, "a linkage whose output turns against its input", { outputAngles: ["112 deg", "78 deg", "55 deg"] }),
  on(sliderCrank, "a slider on the other side, its line below the shaft", {
    assembly: "crossed",
    offset: "-12 mm",
    crankAngle: "-130 deg",
    crankSpeed: -4,
    load: "-20 N",
  }),
  on(servoPushrod, "horns on opposite sides, the load drawing along, in wind", {
    flapHornAngle: "-80 deg",
    hingeMoment: "-0.3 N m",
    flapLevel: "120 deg",
    flapWidth: "200 mm",
    flapDepth: "250 mm",
    servoSpeed: 3,
    windSpeed: 4,
    servoTorque: null,
  }),
  on(scissor, "a scissor let down from its lower joint", { fixedJoint: "lower", tilt: "-35 deg", push: "-4 N" }),
  on(scissor, "a scissor held at its upper joint, the torque cresting inside", {
    fixedJoint: "upper",
    cells: 1,
    tilt: "15 deg",
    tipMass: 0,
    foldedAngle: "10 deg",
    extendedAngle: "80 deg",
  }),
  on(counterbalance, "a gas strut", { element: { type: "gas-strut", extendedLength: 0.17, stroke: 0.16, force: 50 } }),
  on(counterbalance, "a cord of a given stiffness, the hinge off the origin", {
    element: { type: "cord", stiffness: 400, freeLength: 0.02 },
    hinge: { x: "30 mm", y: "-20 mm" },
    frameTilt: "-12 deg",
    tiltEitherWay: "20 deg",
  }),
  on(counterbalance, "a close-wound spring of a given stiffness", { element: { type: "spring", stiffness: 400, preload: 3 } }),
  on(hingeActuator, "an arm that lowers as its actuator extends", {
    assembly: "clockwise",
    movingPivot: { radius: "55 mm", angle: "80 deg" },
    frameTilt: "-20 deg",
  }),
  on(hingeActuator, "a hinge off the origin", { hinge: { x: "20 mm", y: "10 mm" }, fixedPivot: { x: "-20 mm", y: "-240 mm" } }),
  on(hingeActuator, "a spring that can push", {
    springs: [{ fixedPivot: { x: "-60 mm", y: "120 mm" }, radius: "80 mm", stiffness: "150 N/m", freeLength: "300 mm", pullsOnly: false }],
    holdingForce: null,
  }),
  on(placeActuator, "the most swing, raised by extending", { objective: "max-swing", raisedBy: "extending", frontPoints: 0 }),
  on(placeActuator, "an arm in reach of a leaning wearer", { tiltEitherWay: "25 deg", frameTilt: "-10 deg", frontPoints: 0 }),
  on(planarLinkage, "a ram and a slider in place of a crank", {
    masses: [
      { from: "O", to: "A", mass: 0.4, along: 0.02 },
      { from: "P", to: "A", mass: 0.3 },
    ],
    pivots: [
      { name: "O", x: 0, y: 0 },
      { name: "S", x: 0, y: -0.02 },
      { name: "T", x: 1, y: 0.1 },
    ],
    points: [
      { name: "A", x: 0.03, y: 0.04 },
      { name: "P", x: 0.15, y: -0.01 },
    ],
    bars: [
      { from: "O", to: "A" },
      { from: "P", to: "A" },
    ],
    carried: [],
    sliders: [{ point: "P", from: "S", to: "T" }],
    cranks: [],
    actuators: [{ from: "O", to: "P", end: 0.14, speed: -0.2, acceleration: 0.1 }],
    loads: [
      { point: "P", forceX: 12, forceY: -5 },
      { point: "A", forceY: -3 },
    ],
    torques: [{ from: "O", to: "A", torque: -0.2 }],
    trace: null,
  }),
  on(sweptEnvelope, "two arms that nothing joins", {
    pivots: [
      { name: "left", x: 0, y: 0 },
      { name: "right", x: 1, y: 0 },
    ],
    points: [
      { name: "a", x: 0, y: 0.3 },
      { name: "b", x: 1, y: 0.3 },
    ],
    bars: [
      { from: "left", to: "a" },
      { from: "right", to: "b" },
    ],
    cranks: [
      { from: "left", to: "a", end: 2 },
      { from: "right", to: "b", end: 1 },
    ],
    halfWidth: 0.01,
    tip: "a",
  }),
  on(tetheredFan, "uneven threads, some of them slack", {
    threads: [0.03, 0.05, 0.02, 0.06, 0.03],
    driverAngle: "-50 deg",
    frameTilt: "-15 deg",
    returnMoment: 0.05,
    overlap: "10 mm",
  }),
  on(tetheredFan, "one pivot for all", { pitch: 0, driverAngle: null }),
])
