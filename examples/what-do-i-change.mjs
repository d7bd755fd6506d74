// The hind legs of the pond strider drag: somebody wired them with what lay about, and the foot got a brass lantern.
import { readFileSync } from "node:fs"
import { compare, remedies, withChanges } from "alula/advice"
import { rigWith } from "alula/rig"

const { read } = rigWith()
const rig = read(readFileSync(new URL("../shared/rigs/umbrella-legs.json", import.meta.url), "utf8"))
rig.power.buses[0].run.awg = 28
rig.motions[1].mechanisms[0].masses[1].mass = "260 g"

// prices are invented, in the troupe's own currency
const catalogue = {
  wires: [
    { awg: 20, pricePerMetre: 1.1 },
    { awg: 24, pricePerMetre: 0.7 },
  ],
}
const { assessment, remedies: list, unmended, tried } = remedies(rig, { catalogue })
console.log(assessment.summary)
console.log(`${tried} assessments made.`)
for (const { text } of list.slice(0, 5)) console.log(`- ${text}`)
for (const { title, subject, text } of unmended) console.log(`? ${title} (${subject}): ${text}`)

const [first] = list
if (first) {
  console.log("\nWith the first of them:")
  for (const line of compare(rig, withChanges(rig, first.changes)).lines) console.log(`  ${line}`)
}
