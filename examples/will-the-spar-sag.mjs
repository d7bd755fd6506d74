// Will the lantern moth's wing spar sag, snap or shake? Parts and figures of the troupe are invented.
import { beam, column, massProperties, naturalFrequency, pinJoint } from "alula/frame"
import { formatQuantity } from "alula/quantity"
import { display } from "alula/solver"

const spars = [
  { name: "3/4 in PVC pipe", section: { pipe: "3/4" }, material: "pvc-pipe" },
  { name: "aluminium tube 16 × 1 mm", section: { outsideDiameter: "16 mm", wall: "1 mm" }, material: "aluminium-6061" },
  { name: "pultruded carbon tube 12 × 1 mm", section: { outsideDiameter: "12 mm", wall: "1 mm" }, material: "carbon-pultruded" },
]
// silk and lights along the spar, a lantern near its tip, a stay cable that turns it at mid length
const loads = {
  length: "1.1 m",
  support: "cantilever",
  distributedLoads: [{ startLoad: "2.5 N/m", endLoad: "1 N/m", start: 0, end: "1.1 m" }],
  forces: [{ force: "1.6 N", position: "1.05 m" }],
  moments: [{ moment: "0.3 N m", position: "0.55 m" }],
}
const evenings = [
  { name: "evening walk, 20 °C, 2 hours", materialTemperature: 20, duration: "2 h" },
  { name: "after a day in the van, 45 °C, 8 hours", materialTemperature: 45, duration: "8 h" },
]

const show = (kind, value) => formatQuantity(kind, value)
for (const spar of spars) {
  console.log(spar.name)
  for (const { name, ...state } of evenings) {
    const out = beam({ ...loads, section: spar.section, material: spar.material, ...state, handling: "walking" })
    const range = `${show("length", out.maxDeflection.low)} to ${show("length", out.maxDeflection.high)}`
    console.log(`  ${name}: tip sags ${range}, safety factor ${out.safetyFactor.low.toFixed(1)} to ${out.safetyFactor.high.toFixed(1)}`)
    for (const c of out.cautions.filter((c) => c.severity === "warning")) console.log(`    ${c.severity}: ${c.message}`)
  }
  const shake = naturalFrequency({
    length: "1.1 m",
    section: spar.section,
    material: spar.material,
    addedMass: "180 g/m",
    tipMass: "160 g",
    stepRate: "1.9 Hz",
  })
  console.log(
    `  swings at ${show("frequency", shake.frequency.low)} to ${show("frequency", shake.frequency.high)}: steps magnified ${shake.amplification.toFixed(1)} times by harmonic ${shake.harmonic}`,
  )
}

console.log("\nThe aluminium spar in full, held still")
console.log(display(beam({ ...loads, section: spars[1].section, material: spars[1].material })))

console.log("\nIts hinge pin: M6 through the tube, 18 mm from the end, in a clamp tightened with 1 N m")
console.log(
  display(
    pinJoint({
      force: "60 N",
      bolt: "M6",
      tube: spars[1].section,
      material: spars[1].material,
      edgeDistance: "18 mm",
      clampWidth: "20 mm",
      tighteningTorque: "1 N m",
      handling: "stumble",
    }),
  ),
)

console.log("\nThe stay that props the wing, pushed")
console.log(
  display(
    column({
      length: "700 mm",
      section: { outsideDiameter: "10 mm", wall: "1 mm" },
      material: "aluminium-6061",
      load: "40 N",
      handling: "walking",
    }),
  ),
)

console.log("\nThe whole wing about its hinge")
console.log(
  display(
    massProperties({
      parts: [
        { name: "spar", mass: "140 g", x: "550 mm", y: 0, z: 0, length: "1.1 m", outsideDiameter: "16 mm", bore: "14 mm" },
        { name: "silk", mass: "120 g", x: "500 mm", y: "-220 mm", z: 0, length: "1 m", width: "440 mm", height: "0.2 mm" },
        {
          name: "lantern",
          mass: "160 g",
          x: "1.05 m",
          y: 0,
          z: "-40 mm",
          length: "120 mm",
          outsideDiameter: "80 mm",
          bore: "76 mm",
          directionX: 0,
          directionZ: 1,
        },
      ],
      axisDirectionY: 1,
      axisDirectionZ: 0,
    }),
  ),
)
console.log("\nAnything held above people: have it checked by a qualified person under the local rules.")
