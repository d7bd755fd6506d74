import { counterbalance, hingeActuator, hingeAngleAt, hingeStaticsAt, placeActuator, tetheredFan } from "alula/linkage"

const arm = hingeActuator.read({ ...hingeActuator.example, loadFactor: 1, gustForce: 0, sideForce: 0 })
const windy = hingeActuator.read(hingeActuator.example)
const loads = {
  weights: arm.masses,
  springs: arm.springs,
  lean: arm.frameTilt,
  frictionRadius: (arm.pinFriction * arm.hingePinDiameter) / 2,
}
const bare = { ...loads, springs: [] }
const place = { ...placeActuator.read(placeActuator.example), maxBoxes: 20000, frontPoints: 0 }
const front = { ...place, frontPoints: 5 }
const crooked = placeActuator.read({
  ...placeActuator.example,
  frontPoints: 0,
  maxBoxes: 20000,
  pivotTolerance: "1 mm",
  lengthTolerance: "1 mm",
  springs: [{ fixedPivot: { x: "-15 mm", y: "140 mm" }, radius: "70 mm", stiffness: "300 N/m", freeLength: "75 mm", preload: "6 N" }],
  keepOut: [
    {
      corners: [
        { x: -0.02, y: -0.15 },
        { x: 0.02, y: -0.15 },
        { x: 0.02, y: -0.12 },
        { x: -0.02, y: -0.12 },
      ],
    },
  ],
  actuatorWidth: "20 mm",
})
const fan = tetheredFan.read(tetheredFan.example)
const balance = counterbalance.read(counterbalance.example)

const pose = "linkage.hinge pose (length to angle, forces)"
const certificate = "linkage.placeActuator.si (to a 1 % certificate)"

export const rows = [
  { name: pose, run: () => hingeStaticsAt(arm, bare, hingeAngleAt(arm, 0.23, 1)) },
  {
    name: "linkage.hinge pose with a spring",
    run: () => hingeStaticsAt(arm, loads, hingeAngleAt(arm, 0.23, 1)),
    baseline: pose,
  },
  { name: "linkage.hingeActuator.si (33 poses, peaks)", run: () => hingeActuator.si(arm), baseline: pose },
  { name: "linkage.hingeActuator.si (gusts and steps too)", run: () => hingeActuator.si(windy), baseline: pose },
  { name: certificate, run: () => placeActuator.si(place) },
  {
    name: "linkage.placeActuator.si (1 %, with tolerances, spring and a part to keep clear of)",
    run: () => placeActuator.si(crooked),
    baseline: certificate,
  },
  { name: "linkage.placeActuator.si (with a front of 5)", run: () => placeActuator.si(front), baseline: certificate },
  { name: "linkage.tetheredFan.si (6 vanes, 513 poses)", run: () => tetheredFan.si(fan) },
  { name: "linkage.counterbalance.si (181 poses)", run: () => counterbalance.si(balance) },
]
