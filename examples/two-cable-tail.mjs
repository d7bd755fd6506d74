// The lantern salamander's tail (all names and figures invented): from what it weighs to the quadrant it swings on, the two cables
// in their sheaths, the gearmotor that pulls them, and how far the tip gives.
import { cable, gearmotor } from "alula/drive"
import { cableQuadrant, cableQuadrantPicture, poseText } from "alula/linkage"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const mm = (metres) => `${(metres * 1000).toFixed(metres < 0.01 ? 1 : 0)} mm`
const newtons = (force) => `${force.toFixed(0)} N`
const degrees = (angle) => `${((angle * 180) / Math.PI).toFixed(1)}°`
const say = (cautions) => {
  for (const { severity, message } of cautions) console.log(`${severity}: ${message}`)
}

// 1. The cable: its stretch and its sheath's give decide how stiffly the tail is held. Both cables are alike and run side by side.
const route = {
  type: "sheath",
  friction: 0.1,
  bends: [
    { angle: "90 deg", radius: "130 mm" },
    { angle: "35 deg", radius: "150 mm" },
  ],
  sheathRate: "120 N/mm",
}
const tendon = (force) =>
  cable({
    force,
    travel: "63 mm",
    length: "1.1 m",
    diameter: "1.5 mm",
    construction: "7x7-stainless",
    breakingForce: "1.5 kN",
    minBendRadius: "75 mm",
    route,
  })
const tried = tendon("100 N")
const stiffness = 100 / tried.lostMotion
heading("One cable in its sheath")
console.log(
  `${degrees(tried.turnedAngle)} of bends: ${newtons(tried.pullingForce)} at the drive pull 100 N at the tail, and of 100 N held there ${newtons(tried.payingOutForce)} come back`,
)
console.log(`it gives ${mm(tried.lostMotion)} under 100 N, so ${(stiffness / 1000).toFixed(0)} N/mm`)

// 2. The tail on its quadrant, level to 60° up, light wind and its own acceleration against every motion.
const tail = {
  radius: "60 mm",
  startAngle: "0 deg",
  travel: "60 deg",
  wrap: "110 deg",
  cableStiffness: stiffness,
  pretension: "45 N",
  returnedBy: { type: "cable", radius: "60 mm", stiffness, wrap: "20 deg", rimAngle: "120 deg" },
  masses: [
    { mass: "240 g", radius: "180 mm" },
    { mass: "150 g", radius: "420 mm" },
    { mass: "60 g", radius: "700 mm", angle: "8 deg" },
  ],
  opposingMoment: "0.25 N m",
  pinFriction: 0.15,
  pinDiameter: "8 mm",
  tipRadius: "760 mm",
}
const swung = cableQuadrant(tail)
heading("The tail on its quadrant")
console.log(`its masses weigh on it with ${swung.loadMoment.high.toFixed(2)} N·m level and ${swung.loadMoment.low.toFixed(2)} N·m raised`)
console.log(
  `each cable needs ${newtons(swung.requiredPretension)} of pretension so that neither goes slack, and has 45 N: between ${newtons(swung.returningTension.low)} and ${newtons(swung.openingTension.high)} in use`,
)
console.log(
  `the cables travel ${mm(swung.cableTravel)}; ${degrees(swung.wrapLeft)} of wrap are left on one rim, ${degrees(swung.rimLeft)} of arc on the other`,
)
console.log(poseText(cableQuadrantPicture(cableQuadrant.read(tail)), 64, 20))
say(swung.cautions)

// 3. What that asks of the drive: it pulls one cable in while it pays the other out.
const pulled = tendon(swung.openingTension.high)
const paidOut = tendon(swung.returningTension.low)
const drum = 0.018
const torque = (pulled.pullingForce - paidOut.payingOutForce) * drum
heading("The cables at the drive")
console.log(
  `${newtons(pulled.pullingForce)} in and ${newtons(paidOut.payingOutForce)} out over a wheel of ${mm(drum)} radius: ${torque.toFixed(2)} N·m`,
)
console.log(`safety factor of the cable ${pulled.safetyFactor.toFixed(1)}`)
say(pulled.cautions)

// 4. A small gearmotor on the wheel.
const motor = gearmotor({
  backEmfConstant: 0.011,
  windingResistance: "1.4 ohm",
  noLoadCurrent: "0.15 A",
  terminalVoltage: "11 V",
  stages: [
    { type: "planetary", drivingTeeth: 18, drivenTeeth: 90, backlash: "0.4 deg" },
    { type: "planetary", drivingTeeth: 18, drivenTeeth: 90, backlash: "0.4 deg" },
    { type: "planetary", drivingTeeth: 18, drivenTeeth: 90, backlash: "0.4 deg" },
  ],
  torque,
})
const time = swung.cableTravel / drum / motor.speed
heading("The gearmotor")
console.log(
  `${motor.current.toFixed(2)} A at its hardest, of ${motor.stallCurrent.toFixed(1)} A stalled; the tail is up in about ${time.toFixed(1)} s`,
)
say(motor.cautions)

// 5. How far the tip gives: the cables as springs, friction that holds them back on reversing, and the gears' play.
const gearPlay = (0.4 * (1 + 1 / 6 + 1 / 36) * Math.PI) / 180
const lever = 0.76 / 0.06
heading("Play at the tip")
console.log(`under load, both ways: ${mm(swung.tipDeflection)}`)
console.log(`cable friction on reversing, at most: ${mm(pulled.reversalLoss * lever)}`)
console.log(`gears: ${mm(gearPlay * drum * lever)}`)
