// The lantern moth's wing on a bracket that came out crooked (a street-theatre troupe; names and figures invented): where the
// actuator goes if every pivot may be a millimetre and a half off, and what the same wing does where nobody allowed for that.
import { hingeActuator, placeActuator } from "alula/linkage"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const degrees = (angle) => `${Math.round((angle * 180) / Math.PI)}°`
const mm = (metres) => `${(metres * 1000).toFixed(1)} mm`
const say = (cautions) => {
  for (const { severity, message } of cautions) console.log(`${severity}: ${message}`)
}

// 1. The wing: folded it carries a paper lantern at its root, open the lantern has moved towards the tip.
const wing = {
  retractedLength: "160 mm",
  stroke: "50 mm",
  ratedForce: "350 N",
  masses: [{ mass: "1.3 kg", radius: "420 mm" }],
  otherMasses: [
    { mass: "1.1 kg", radius: "420 mm" },
    { mass: "0.2 kg", radius: "700 mm" },
  ],
  springs: [{ fixedPivot: { x: "-15 mm", y: "140 mm" }, radius: "70 mm", stiffness: "250 N/m", freeLength: "75 mm", preload: "5 N" }],
  loadFactor: 1.3,
  gustForce: "4 N",
  gustRadius: "500 mm",
  tiltEitherWay: "8 deg",
  fixedPivotRegion: { left: "-100 mm", right: "20 mm", bottom: "-280 mm", top: "-50 mm" },
  movingPivotRegion: { left: "10 mm", right: "140 mm", bottom: "-60 mm", top: "30 mm" },
  lowAngle: { from: "-85 deg", to: "-45 deg" },
  swing: "55 deg",
  // the harness plate under the hinge, seen from the side
  keepOut: [
    {
      corners: [
        { x: "-20 mm", y: "-150 mm" },
        { x: "20 mm", y: "-150 mm" },
        { x: "20 mm", y: "-120 mm" },
        { x: "-20 mm", y: "-120 mm" },
      ],
    },
  ],
  actuatorWidth: "24 mm",
  frontPoints: 0,
}

// 2. As drawn: the best there is if every hole were where the drawing has it.
const exact = placeActuator(wing)
// 3. As built: holes drilled by hand, a bracket that was never quite square, an actuator off the shelf.
const tolerances = { pivotTolerance: "1.5 mm", lengthTolerance: "1 mm" }
const tolerant = placeActuator({ ...wing, ...tolerances })
for (const [title, place] of [
  ["Best on the drawing", exact],
  ["Best in the workshop", tolerant],
]) {
  heading(title)
  console.log(
    `frame pivot at ${mm(place.fixedPivot.x)}, ${mm(place.fixedPivot.y)}; wing pivot ${mm(place.movingPivotX)} along and ${mm(place.movingPivotY)} off the arm`,
  )
  console.log(
    `peak force ${place.peakForce.toFixed(0)} N as drawn, ${place.worstBuild.peakForce.toFixed(0)} N at the worst build; proved: nothing there needs less than ${place.forceBound.toFixed(0)} N`,
  )
  console.log(
    `length left to a dead point: ${mm(place.deadPointMargin)} as drawn, ${mm(place.worstBuild.deadPointMargin)} at the worst build`,
  )
  console.log(`swings ${degrees(place.swing)} as drawn, at least ${degrees(place.worstBuild.swing)}`)
  say(place.cautions)
}

// 4. The same crooked brackets under both, as hingeActuator sees them; at rest, no wind, the lantern at the root.
heading("Both pivots 1.5 mm off under either")
const crooked = (place, off) => {
  const share = (place.fixedPivotDistance + off) / place.fixedPivotDistance
  return hingeActuator.attempt({
    fixedPivot: { x: place.fixedPivot.x * share, y: place.fixedPivot.y * share },
    movingPivot: { radius: place.movingPivot.radius + off, angle: place.movingPivot.angle },
    retractedLength: wing.retractedLength,
    stroke: wing.stroke,
    assembly: place.raisedBy === "extending" ? "counter-clockwise" : "clockwise",
    masses: wing.masses,
    springs: wing.springs,
  })
}
for (const [title, place] of [
  ["drawn without tolerances", exact],
  ["drawn with them", tolerant],
])
  for (const [where, off] of [
    ["nearer to the hinge", -0.0015],
    ["farther from it", 0.0015],
  ]) {
    const outcome = crooked(place, off)
    console.log(
      outcome.ok
        ? `${title}, ${where}: swings ${degrees(outcome.value.swing)}, ${mm(outcome.value.deadPointMargin)} to a dead point, ${outcome.value.requiredHoldingForce.toFixed(0)} N`
        : `${title}, ${where}: ${outcome.error.message}`,
    )
  }
