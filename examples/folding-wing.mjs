// The lantern moth's fore wing (all names and figures invented): three panels that one driver folds, the skew hinge at its root,
// the four-bar that turns it, and the latch that holds it spread.
import {
  foldingChain,
  foldingChainPicture,
  fourBarSynthesis,
  fourBarSynthesisPicture,
  overCentreLatch,
  poseText,
  skewHinge,
  skewHingePicture,
} from "alula/linkage"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const degrees = (angle) => `${Math.round((angle * 180) / Math.PI)}°`
const mm = (metres) => `${(metres * 1000).toFixed(0)} mm`
const say = (cautions) => {
  for (const { severity, message } of cautions) console.log(`${severity}: ${message}`)
}

// 1. Three panels, folded like a letter and spread by one driver.
const wing = {
  segments: [
    { length: "220 mm", width: "90 mm", mass: "140 g", foldedAngle: "80 deg", ratio: -0.9, driveRadius: "30 mm" },
    { length: "240 mm", width: "80 mm", mass: "95 g", foldedAngle: "-160 deg", ratio: 1.9, driveRadius: "22 mm" },
    { length: "260 mm", width: "60 mm", mass: "60 g", foldedAngle: "160 deg", ratio: -1.9, driveRadius: "18 mm" },
  ],
  driverTravel: "80 deg",
  pinFriction: 0.2,
  pinDiameter: "5 mm",
}
const spread = foldingChain(wing)
heading("A wing that folds in three")
console.log(
  `folded ${mm(spread.folded.width)} by ${mm(spread.folded.height)}, spread ${mm(spread.spread.width)} by ${mm(spread.spread.height)}`,
)
console.log(`at most ${spread.maxEffort.toFixed(2)} N·m at the driver, friction included`)
for (const [i, joint] of spread.joints.entries())
  console.log(
    `joint ${i + 1}: ${joint.gravityMoment.toFixed(2)} N·m to hold, ${joint.pinLoad.toFixed(1)} N on its pin, up to ${joint.driveForce?.toFixed(0)} N in its rod`,
  )
console.log(poseText(foldingChainPicture(foldingChain.read({ ...wing, position: 0.6 })), 64, 18))
say(spread.cautions)

// 2. The hinge at its root leans, so that the wing sweeps back as it rises.
const root = {
  hinge: { forward: "-60 mm", left: "110 mm", up: "160 mm" },
  axis: { forward: 0.9, left: -0.35, up: 0.3 },
  masses: [{ mass: "295 g", forward: "-90 mm", left: "390 mm", up: "160 mm" }],
  tip: { forward: "-130 mm", left: "820 mm", up: "150 mm" },
  swing: "60 deg",
  swingFrom: "-10 deg",
  swingTo: "70 deg",
  forwardLean: "6 deg",
  pinFriction: 0.2,
  pinDiameter: "8 mm",
}
const raised = skewHinge(root)
heading("The skew hinge at its root")
console.log(
  `raised by 60° the tip stands ${mm(raised.tipUp)} up and ${mm(Math.abs(raised.tipAhead))} ${raised.tipAhead > 0 ? "forward of" : "behind"} the hinge; from the front it points to ${degrees(raised.frontAngle)}`,
)
console.log(
  `${raised.turningEffort.toFixed(2)} N·m to raise it, ${raised.returningEffort.toFixed(2)} N·m still to hold while it comes down`,
)
console.log(poseText(skewHingePicture(skewHinge.read(root)), 64, 16))
say(raised.cautions)

// 3. A four-bar that carries the driver's arm through three poses.
const task = {
  poses: [
    { x: 0, y: 0, angle: 0 },
    { x: "40 mm", y: "18 mm", angle: "20 deg" },
    { x: "72 mm", y: "48 mm", angle: "47 deg" },
  ],
  fixedPivotRegion: { left: "-80 mm", right: "60 mm", bottom: "40 mm", top: "140 mm" },
  movingPivotRegion: { left: "-100 mm", right: "120 mm", bottom: "-100 mm", top: "120 mm" },
  step: "10 mm",
}
const found = fourBarSynthesis(task)
heading("A four-bar through three poses")
console.log(
  `${found.tried.pairs} pairs of links tried, ${found.tried.changeBranch} would have to be taken apart, ${found.tried.passed} pass`,
)
console.log(
  `best: ground ${mm(found.ground)}, input ${mm(found.input)}, coupler ${mm(found.coupler)}, output ${mm(found.output)}; transmission angle never below ${degrees(found.minTransmissionAngle)}`,
)
console.log(poseText(fourBarSynthesisPicture(fourBarSynthesis.read(task), found), 64, 18))

// 4. The latch that holds the wing spread.
const latch = overCentreLatch({
  fixedPivotDistance: "60 mm",
  movingPivotRadius: "20 mm",
  freeLength: "40 mm",
  springRate: "800 N/m",
  clockwiseStop: "25 deg",
  counterStop: "40 deg",
  loadMoment: "40 mN m",
  handleRadius: "80 mm",
  leverMass: "60 g",
  leverCentre: "35 mm",
  pinFriction: 0.2,
  pinDiameter: "4 mm",
})
heading("The latch that holds it")
console.log(
  `snaps over at ${degrees(latch.snapAngle)}; holds with ${latch.clockwise.holdingForce.toFixed(1)} N and ${latch.counter.holdingForce.toFixed(1)} N at the handle, trips at ${latch.counter.tripForce.toFixed(1)} N`,
)
say(latch.cautions)
