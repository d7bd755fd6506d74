// Where the lantern string dims: the troupe's giant moth carries 60 small lanterns along each wing's edge.
// All names, parts and figures are invented for this scene.

import { display } from "alula/solver"
import { conductor, ledRun } from "alula/wire"

const string = { length: "4.2 m", current: "3.6 A", lightCount: 60, awg: 22, stranding: "stranded", dimVoltage: "4.4 V" }
const lead = conductor({ awg: 18, stranding: "stranded", length: "1.2 m", conductorTemperature: 30 })
// the lead from the battery on the back: two conductors and two plugs
const resistance = 2 * lead.resistance + 2 * 0.01
const feed = (position) => ({ position, sourceVoltage: "5.1 V", feederResistance: resistance })

const plans = {
  "fed at the shoulder only": [feed(0)],
  "fed at both ends": [feed(0), feed("4.2 m")],
  "fed at both ends and in the middle": [feed(0), feed("2.1 m"), feed("4.2 m")],
}

for (const [plan, feeds] of Object.entries(plans)) {
  const run = ledRun({ ...string, feeds })
  console.log(`\n${plan}`)
  for (const { position, voltage } of run.profile.filter((_, k) => k % 6 === 5)) {
    const bar = "█".repeat(Math.round((voltage - 3.4) * 24))
    console.log(`${position.toFixed(2).padStart(6)} m  ${voltage.toFixed(2)} V  ${bar}${voltage < 4.4 ? "  dim" : ""}`)
  }
  console.log(run.dimmed.length ? `dim over ${Math.round(100 * run.dimmedShare)} % of the string` : "no lantern dims")
}

console.log("\nThe last plan in full\n")
console.log(display(ledRun({ ...string, feeds: plans["fed at both ends and in the middle"] })))
