// The paper heron's tail (all names and figures invented): nine feathers on one rib, spread by one winch at the wearer's belt; from
// the fan's load to the line, the drum, the gearmotor, the time of the move, and what holds it without power.
import { gearmotor, winch } from "alula/drive"
import { tetheredFan } from "alula/linkage"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const degrees = (angle) => `${Math.round((angle * 180) / Math.PI)}°`
const mm = (metres) => `${(metres * 1000).toFixed(0)} mm`
const say = (cautions) => {
  for (const { severity, message } of cautions) console.log(`${severity}: ${message}`)
}

// 1. The fan: the line turns the first feather, which draws the others along.
const tail = {
  vanes: 9,
  length: "480 mm",
  rootDistance: "80 mm",
  rootWidth: "40 mm",
  tipWidth: "110 mm",
  mass: "85 g",
  centre: "210 mm",
  attachRadius: "90 mm",
  pitch: "4 mm",
  pitchAngle: "-30 deg",
  foldedAngle: "-70 deg",
  foldedStep: "0.5 deg",
  openAngle: "60 deg",
  span: "90 deg",
  returnMoment: "40 mN m",
  overlap: "6 mm",
}
const fan = tetheredFan(tail)
const swing = ((60 - -70) * Math.PI) / 180
heading("Nine feathers")
console.log(
  `${(fan.totalMass * 1000).toFixed(0)} g of feathers ask at most ${fan.peakDriverMoment.toFixed(2)} N·m of the first one, at ${degrees(fan.peakDriverAngle)}`,
)
console.log(`largest gap at the tips ${mm(fan.maxTipGap)} (negative overlaps); threads stay taut: ${fan.staysTaut ? "yes" : "no"}`)
say(fan.cautions)

// 2. The line, on a quadrant of 70 mm at the first feather: pull from the moment, travel from the swing.
const quadrant = 0.07
// a tenth more for the quadrant's bearing and the eye that leads the line in
const pull = (1.1 * fan.peakDriverMoment) / quadrant
const travel = quadrant * swing
heading("The line")
console.log(`${pull.toFixed(0)} N over ${mm(travel)} of line`)

// 3. The drum.
const drum = {
  pull,
  travel,
  drumDiameter: "20 mm",
  lineDiameter: "1.2 mm",
  lineType: "fibre-rope",
  drumWidth: "8 mm",
  lineLength: travel + 0.36,
  flangeDiameter: "40 mm",
  lineStrength: "900 N",
  dragTorque: "15 mN m",
}
const bare = winch(drum)
heading("The winch")
console.log(
  `${bare.drumTurns.toFixed(1)} turns from layer ${bare.outerLayer} to layer ${bare.innerLayer}; ${bare.safetyTurns.toFixed(1)} turns stay on the drum`,
)
for (const { layer, radius, raiseTorque, lowerTorque, holdingTorque } of bare.layers)
  console.log(
    `layer ${layer} at ${mm(radius)}: ${raiseTorque.toFixed(2)} N·m to spread, ${holdingTorque.toFixed(2)} N·m to hold, ${Math.abs(lowerTorque).toFixed(2)} N·m ${lowerTorque < 0 ? "held back" : "to drive"} while it folds`,
  )

// 4. The gearmotor: a planetary stage and a worm, on the outer layer, where the line asks most.
const motor = {
  backEmfConstant: "0.014 V s/rad",
  windingResistance: "4.5 ohm",
  noLoadCurrent: "0.15 A",
  terminalVoltage: "11.4 V",
  stages: [
    { type: "planetary", drivingTeeth: 15, drivenTeeth: 45 },
    { type: "worm", drivingTeeth: 1, drivenTeeth: 30, leadAngle: "3.5 deg", friction: 0.13 },
  ],
}
const spreads = gearmotor({ ...motor, torque: bare.raiseTorque })
const folds = gearmotor({ ...motor, torque: bare.lowerTorque })
heading("The gearmotor")
for (const [what, run] of [
  ["spreading", spreads],
  ["folding", folds],
])
  console.log(
    `${what}: ${((run.speed * 30) / Math.PI).toFixed(0)} rpm at the drum, ${run.current.toFixed(2)} A, ${run.motorTorque.toFixed(4)} N·m at the motor`,
  )
say(spreads.cautions)

// 5. The move, at the speed under the outer layer's torque, which is the slowest, and what holds the tail spread. Teeth rated for 3 N·m (invented).
const move = winch({
  ...drum,
  torque: spreads.stallTorque,
  speed: spreads.speed,
  ...(spreads.selfLocking ? { holdingTorque: "3 N m" } : {}),
})
heading("The move, and the tail without power")
console.log(`spreads in ${move.duration.toFixed(1)} s, folds in ${((move.drumTurns * 2 * Math.PI) / folds.speed).toFixed(1)} s`)
console.log(
  `work: ${move.raiseWork.toFixed(1)} J at the drum to spread, ${move.raiseLoss.toFixed(1)} J of it lost; folding gives ${(-move.lowerWork).toFixed(1)} J back to the gears, which turn it into heat`,
)
console.log(
  spreads.selfLocking
    ? `the worm holds it: still with half of its friction; its teeth bear ${move.holdingSafetyFactor.toFixed(1)} times the ${move.requiredHoldingTorque.toFixed(2)} N·m of the outer layer`
    : `nothing holds it for certain: put a brake for ${move.requiredHoldingTorque.toFixed(2)} N·m on the drum`,
)
console.log(
  `stalled, the winch pulls ${move.liftingPull.high.toFixed(0)} N: safety factor of the line then ${move.stallSafetyFactor.toFixed(1)}`,
)
say(move.cautions)
