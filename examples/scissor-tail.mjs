// A scissor tail for the river newt, the second creature of the lantern-moth troupe (all names and figures invented):
// how far it reaches, what drives it, what a servo does to the fin at its end, and how much room it takes in the street.
import { planarLinkage, scissor, servoPushrod, sweptEnvelope } from "alula/linkage"
import { display } from "alula/solver"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const deg = Math.PI / 180

// 1. The array: six cells of plywood arms, drawn together by a screw at the newt's hips.
const tail = {
  cells: 6,
  armLength: "160 mm",
  foldedAngle: "18 deg",
  extendedAngle: "62 deg",
  tilt: "15 deg",
  fixedJoint: "lower",
  tipMass: "250 g",
  armsMass: "480 g",
  screwLead: "2 mm",
  driverForce: "150 N",
  driverStiffness: "50 N/mm",
  pinPlay: "0.2 mm",
}
heading("The tail: reach, force and sag")
console.log(display(scissor(tail)))

// 2. A weaker motor: does it start at all, and from which angle would it?
heading("The same tail on a motor of 12 N")
const weak = scissor.attempt({ ...tail, driverForce: "12 N" })
console.log(weak.ok ? display(weak.value) : weak.error.message)
if (!weak.ok && "foldedAngle" in (weak.error.nearest ?? {}))
  console.log(`It would start from an arm angle of ${(weak.error.nearest.foldedAngle / deg).toFixed(1)}°.`)

// 3. The fin at the tip, flicked by a hobby servo through a pushrod.
heading("The tail fin on its servo")
const fin = servoPushrod({
  pivotDistance: "70 mm",
  servoHorn: "12 mm",
  flapHorn: "18 mm",
  minServoAngle: "-40 deg",
  maxServoAngle: "40 deg",
  flapMass: "60 g",
  flapCentre: "110 mm",
  flapLevel: "15 deg",
  servoTorque: "0.9 N m",
  steps: 2,
})
for (const { servoAngle, flapAngle, torque } of fin.map)
  console.log(
    `servo ${(servoAngle / deg).toFixed(0)}°: fin ${(flapAngle / deg).toFixed(1)}°, ${(torque * 1000).toFixed(1)} mN·m at the shaft`,
  )
console.log(
  `rod ${(fin.rod * 1000).toFixed(1)} mm between its pins; ${(fin.torqueReserveShare * 100).toFixed(0)} % of the servo's torque is left`,
)

// 4. The same array bar by bar, as data: joints L0 R0 … and middles C0 …; L0 stays, R0 slides to it.
const cells = 3
const [arm, folded, extended] = [0.16, 25 * deg, 62 * deg]
const level = (i) => i * arm * Math.sin(folded)
const spread = arm * Math.cos(folded)
const range = Array.from({ length: cells }, (_, i) => i)
const array = {
  pivots: [
    { name: "L0", x: 0, y: 0 },
    { name: "guide", x: 0, y: 1 },
  ],
  points: [
    { name: "R0", x: 0, y: spread },
    ...range.flatMap((i) => [
      { name: `C${i}`, x: level(i + 0.5), y: spread / 2 },
      { name: `L${i + 1}`, x: level(i + 1), y: 0 },
      { name: `R${i + 1}`, x: level(i + 1), y: spread },
    ]),
  ],
  bars: range.flatMap((i) => [
    { from: `L${i}`, to: `R${i + 1}` },
    { from: `R${i}`, to: `L${i + 1}` },
  ]),
  carried: range.flatMap((i) => [
    { point: `C${i}`, from: `L${i}`, to: `R${i + 1}` },
    { point: `C${i}`, from: `R${i}`, to: `L${i + 1}` },
  ]),
  sliders: [{ point: "R0", from: "L0", to: "guide" }],
  actuators: [{ name: "screw", from: "L0", to: "R0", end: arm * Math.cos(extended) }],
}
heading("Half the tail bar by bar: pull of the screw on the way out against 4 N of wet cloth")
const out = planarLinkage({ ...array, loads: [{ point: `R${cells}`, forceX: "-4 N" }], steps: 4, trace: `R${cells}` })
out.efforts.forEach(({ force }, step) => {
  const { x, y } = out.path[step]
  console.log(`tip at ${(x * 1000).toFixed(0)} mm, ${(y * 1000).toFixed(0)} mm high: the screw pulls ${(-force).toFixed(1)} N`)
})

heading("The room it takes, plywood 15 mm to each side, in two seconds")
const room = sweptEnvelope({ ...array, halfWidth: "15 mm", duration: "2 s", tip: `R${cells}` })
const mm = (metres) => `${Math.ceil(metres * 1000)} mm`
console.log(`retracted ${mm(room.spanFolded)} by ${mm(room.heightFolded)}, extended ${mm(room.spanRaised)} by ${mm(room.heightRaised)}`)
console.log(`needs ${mm(room.sweptSpan)} by ${mm(room.sweptHeight)} in all; the tip reaches ${room.peakTipSpeed.toFixed(2)} m/s`)
for (const { severity, message } of room.cautions) console.log(`${severity}: ${message}`)
