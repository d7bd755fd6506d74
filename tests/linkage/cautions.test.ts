import {
  counterbalance,
  fourBar,
  freudenstein,
  grashof,
  hingeActuator,
  servoPushrod,
  sweptEnvelope,
  tetheredFan,
} from "../../src/linkage/index.js"
import { cautionTests } from "../helpers/cautions.js"

const arm = {
  pivots: [{ name: "hip", x: 0, y: 0 }],
  points: [{ name: "tip", x: 1, y: 0 }],
  bars: [{ from: "hip", to: "tip" }],
  cranks: [{ from: "hip", to: "tip", start: 0, end: 1 }],
  tip: "tip",
  steps: 4,
}

cautionTests([
  // shortest and longest within 1 % of the sum (340 mm, so 3.4 mm) of the two others
  ["near-change-point", grashof, { output: "63 mm" }, { output: "64 mm" }],
  // one radian a metre out: the time of the move is one over the tip's speed
  ["fast-tip", sweptEnvelope, { ...arm, duration: 3.9 }, { ...arm, duration: 4.1 }],
  ["poor-transmission", fourBar, { inputAngle: "0 deg" }, { inputAngle: "60 deg" }],
  ["poor-proportion", freudenstein, { inputAngles: [0.5, 1, 1.5], outputAngles: [1, 1.02, 1.05] }, {}],
  ["gusts", servoPushrod, { windSpeed: "3 m/s", flapWidth: "50 mm", flapDepth: "50 mm" }, {}],
  ["thin-margin", servoPushrod, { servoTorque: "0.24 N m" }, { servoTorque: "0.26 N m" }],
  ["falls-unpowered", servoPushrod, {}, { flapMass: 0 }],
  [
    "strut-varies",
    counterbalance,
    {
      element: { type: "gas-strut", extendedLength: "170 mm", stroke: "160 mm", force: "50 N" },
    },
    {},
  ],
  ["cord-is-not-a-spring", counterbalance, { element: { type: "cord", stiffness: 100 } }, {}],
  ["makes-worse", counterbalance, { fixedPivot: { x: "-20 mm", y: "-100 mm" } }, {}],
  ["near-dead-point", hingeActuator, { retractedLength: "198.4 mm" }, {}],
  ["poor-transmission", hingeActuator, { retractedLength: "200 mm" }, { retractedLength: "225 mm" }],
  ["near-dead-point", hingeActuator, { retractedLength: "198.8 mm" }, { retractedLength: "199.1 mm" }],
  ["side-load", hingeActuator, {}, { axisOffset: 0, pinFriction: 0 }],
  ["holding-unknown", hingeActuator, { holdingForce: null }, {}],
  ["short-threads", tetheredFan, { span: "5 deg", pitch: 0 }, {}],
  ["stored-energy", hingeActuator, {}, { springs: null }],
  ["gaps-at-tips", tetheredFan, { tipWidth: "60 mm" }, { driverAngle: null, tipWidth: "200 mm" }],
])
