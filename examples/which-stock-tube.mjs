// Which stock tube is stiff enough for the lantern moth's wing spar and its stay? Troupe, rack and loads are invented.
import { memberSize } from "alula/frame"
import { formatNumber, formatQuantity } from "alula/quantity"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const show = (kind, value) => formatQuantity(kind, value)
const why = {
  chosen: "← the lightest that will do",
  heavier: "would do, but is heavier",
  strength: "too weak",
  deflection: "sags too far",
  wall: "its thin wall would fold",
  buckling: "would buckle",
  temperature: "too hot",
}
const tube = (material, label) => (outside, wall) => ({
  name: `${label} ${outside} × ${wall}`,
  section: { outsideDiameter: `${outside} mm`, wall: `${wall} mm` },
  material,
})
const aluminium = tube("aluminium-6061", "aluminium")
const carbon = tube("carbon-wrapped", "carbon")

// what hangs in the troupe's store room
const rack = [
  aluminium(10, 1),
  aluminium(16, 1),
  aluminium(20, 1),
  aluminium(20, 1.5),
  aluminium(25, 1.5),
  carbon(12, 1),
  carbon(16, 1),
  { name: "spruce lath 12 × 24", section: { width: "12 mm", height: "24 mm" }, material: "softwood" },
  { name: "PVC pipe 3/4 in", section: { pipe: "3/4" }, material: "pvc-pipe" },
  { name: "PVC pipe 1 in", section: { pipe: "1" }, material: "pvc-pipe" },
]

function tell(question, input) {
  heading(question)
  const outcome = memberSize.attempt(input)
  if (!outcome.ok) return console.log(outcome.error.message)
  const out = outcome.value
  for (const c of out.candidates) {
    const sag = c.maxDeflection === null ? "" : `, sags ${show("length", c.maxDeflection)}`
    const margin = c.safetyFactor === null ? "" : `, safety factor ${formatNumber(c.safetyFactor)}`
    const reasons = c.verdict.split(",").map((word) => why[word])
    console.log(`${c.name.padEnd(20)} ${show("mass", c.mass)}${sag}${margin}: ${reasons.join(" and ")}`)
  }
  console.log(`Taken: ${out.name}, ${show("length", out.depth)} deep`)
  for (const { severity, message } of out.cautions.filter((c) => c.severity !== "note")) console.log(`${severity}: ${message}`)
}

// silk and a string of lights along the spar, a lantern near its tip; the wearer walks for two hours
const spar = {
  type: "beam",
  length: "1.3 m",
  support: "cantilever",
  distributedLoads: [{ startLoad: "2.5 N/m", endLoad: "1 N/m", start: 0, end: "1.3 m" }],
  forces: [{ force: "2 N", position: "1.25 m" }],
}
const walk = { handling: "walking", duration: "2 h", materialTemperature: 28 }

tell("The wing spar may sag 60 mm at its tip", { member: spar, search: { type: "stock", sizes: rack }, deflectionLimit: "60 mm", ...walk })

tell("The same after a day in a van at 65 °C", {
  member: spar,
  search: { type: "stock", sizes: rack },
  deflectionLimit: "60 mm",
  ...walk,
  materialTemperature: 65,
})

tell("The stay that holds the wing up is pushed with 60 N", {
  member: { type: "column", length: "900 mm", load: "60 N" },
  search: { type: "stock", sizes: rack },
  ...walk,
})

tell("May it sag only 5 mm?", { member: spar, search: { type: "stock", sizes: rack.slice(0, 5) }, deflectionLimit: "5 mm", ...walk })

tell("With no rack at all: what aluminium tube of 1.5 mm wall does the spar ask for?", {
  member: spar,
  search: { type: "round", wall: "1.5 mm", material: "aluminium-6061" },
  deflectionLimit: "60 mm",
  ...walk,
})
console.log("\nAnything held above people: have it checked by a qualified person under the local rules.")
