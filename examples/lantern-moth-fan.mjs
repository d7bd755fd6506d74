// The lantern moth's hind wing (all names and figures invented): seven lit feathers on one rib, each pulled open by its
// neighbour through a thread; then the spring that carries the wing, and where its actuator goes.
import { counterbalance, hingeActuator, placeActuator, tetheredFan } from "alula/linkage"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const degrees = (angle) => `${Math.round((angle * 180) / Math.PI)}°`
const mm = (metres) => `${(metres * 1000).toFixed(1)} mm`

// 1. Seven feathers, then as many as the span needs.
const hindWing = {
  vanes: 7,
  length: "620 mm",
  rootDistance: "90 mm",
  rootWidth: "45 mm",
  tipWidth: "125 mm",
  mass: "55 g",
  centre: "290 mm",
  attachRadius: "110 mm",
  pitch: "4 mm",
  pitchAngle: "-30 deg",
  foldedAngle: "-72 deg",
  foldedStep: "0.5 deg",
  openAngle: "58 deg",
  span: "92 deg",
  returnMoment: "30 mN m",
  overlap: "8 mm",
}

/** The feathers as lines of dots, seen from the front. */
function picture(angles, length = 0.62) {
  const [width, height] = [46, 23]
  const rows = Array.from({ length: height }, () => Array(width).fill(" "))
  angles.forEach((angle, i) => {
    for (let part = 0.12; part <= 1; part += 0.02) {
      const column = Math.round(2 + (part * length * Math.cos(angle) * (width - 4)) / length)
      const row = Math.round((height - 1) * (0.48 - 0.48 * part * Math.sin(angle)))
      if (rows[row]?.[column] === " ") rows[row][column] = part > 0.97 ? String(i + 1) : "·"
    }
  })
  return rows.map((row) => row.join("").trimEnd()).join("\n")
}

const first = tetheredFan(hindWing)
heading("Seven feathers: do they cover the span?")
console.log(`largest gap at the tips ${mm(first.maxTipGap)}, at the roots ${mm(first.maxRootGap)} (negative overlaps)`)
console.log(`to overlap by 8 mm at the tips it takes ${first.cover.vanes} feathers`)

const fan = tetheredFan({ ...hindWing, vanes: first.cover.vanes })
heading(`${first.cover.vanes} feathers: the threads to cut, from the driven feather on`)
console.log(fan.threads.map(mm).join(", "))
console.log(`tensions when open: ${fan.tensions.map((tension) => `${tension.toFixed(1)} N`).join(", ")}`)
console.log(
  `${(fan.totalMass * 1000).toFixed(0)} g; up to ${fan.peakDriverMoment.toFixed(2)} N·m at the driven feather (at ${degrees(fan.peakDriverAngle)})`,
)

heading("How it opens")
for (const { driverAngle, angles, taut } of fan.sweep.filter((_, i) => i % 8 === 0))
  console.log(`driver ${degrees(driverAngle).padStart(4)}, ${taut} threads taut: ${angles.map(degrees).join(" ")}`)

heading("Open, seen from the front")
console.log(picture(fan.angles))

// 2. The wing that carries the fan: a spring against its weight, and what is left for the actuator.
const wing = [
  { mass: "0.9 kg", radius: "260 mm" },
  { mass: fan.totalMass, radius: "520 mm" },
]
const spring = counterbalance({
  fixedPivot: { x: "-15 mm", y: "140 mm" },
  movingPivot: { radius: "70 mm" },
  masses: wing,
  armAngle: { low: "-70 deg", high: "0 deg" },
  element: {
    type: "spring",
    coil: { wire: "1.4 mm", meanDiameter: "14 mm", activeCoils: 26 },
    freeLength: "75 mm",
    preload: "6 N",
  },
  tiltEitherWay: "15 deg",
})
heading("The wing's spring")
console.log(
  `${(spring.offloadShare * 100).toFixed(0)} % of ${spring.maxGravityMoment.toFixed(2)} N·m taken off; ${spring.maxTiltedUnbalancedMoment.toFixed(2)} N·m left when the wearer leans 15°`,
)

// 3. Where the actuator goes, with proof, and the whole arm with spring and friction.
const place = placeActuator({
  retractedLength: "155 mm",
  stroke: "50 mm",
  ratedForce: "300 N",
  masses: wing,
  tiltEitherWay: "15 deg",
  fixedPivotRegion: { left: "-90 mm", right: "10 mm", bottom: "-260 mm", top: "-60 mm" },
  movingPivotRegion: { left: "10 mm", right: "130 mm", bottom: "-50 mm", top: "20 mm" },
  lowAngle: { from: "-75 deg", to: "-65 deg" },
  swing: "65 deg",
  minTransmissionAngle: "20 deg",
  minDeadPointMargin: "3 mm",
})
heading("Where the actuator goes")
console.log(
  `frame pivot at ${mm(place.fixedPivot.x)}, ${mm(place.fixedPivot.y)}; wing pivot ${mm(place.movingPivotX)} along and ${mm(place.movingPivotY)} off the arm`,
)
console.log(`peak force ${place.peakForce.toFixed(1)} N; proved: no placement there needs less than ${place.forceBound.toFixed(1)} N`)
console.log("swing against force:")
for (const point of place.front) console.log(`  ${degrees(point.swing).padStart(4)}  ${point.peakForce.toFixed(0).padStart(4)} N`)

const arm = hingeActuator({
  fixedPivot: place.fixedPivot,
  movingPivot: place.movingPivot,
  retractedLength: "155 mm",
  stroke: "50 mm",
  assembly: place.raisedBy === "extending" ? "counter-clockwise" : "clockwise",
  masses: wing,
  springs: [
    { fixedPivot: { x: "-15 mm", y: "140 mm" }, radius: "70 mm", stiffness: spring.stiffness, freeLength: "75 mm", preload: "6 N" },
  ],
  pinFriction: 0.2,
  hingePinDiameter: "8 mm",
  holdingForce: "120 N",
})
heading("The whole arm, with the spring and pin friction")
console.log(
  `swings from ${degrees(arm.retractedAngle)} to ${degrees(arm.extendedAngle)}; at most ${arm.peakForce.toFixed(1)} N, at ${degrees(arm.peakForceAngle)}`,
)
console.log(`stays up without power: ${arm.holdsUnpowered ? "yes" : "no"} (needs ${arm.requiredHoldingForce.toFixed(1)} N)`)
for (const { severity, message } of arm.cautions) console.log(`${severity}: ${message}`)
