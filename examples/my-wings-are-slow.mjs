// Why is my move slow? The lantern moth is built; its raise takes longer than planned. What is wrong, and what to measure next?
import { readFileSync } from "node:fs"
import { diagnose } from "alula/advice"
import { moveTime } from "alula/rig"

const rig = JSON.parse(readFileSync(new URL("../shared/rigs/lantern-moth-cells.json", import.meta.url), "utf8"))
console.log(`Planned: ${moveTime(rig).raiseTime.toFixed(1)} s up. Measured: 15.9 s.\n`)

const show = (title, found) => {
  console.log(`${title}\n  ${found.verdict}`)
  for (const c of found.candidates.slice(0, 4)) console.log(`  ${(100 * c.plausibility).toFixed(0).padStart(3)} %  ${c.explanation}`)
  if (found.next)
    console.log(
      `  Measure next: ${found.next.label} (${found.next.how}). The first explanation says ${found.next.first}, the second ${found.next.second}.`,
    )
  console.log("")
}

// a stopwatch alone leaves much open
const timed = { raiseTime: { value: "15.9 s" }, lowerTime: { value: "11.3 s" } }
show("With a stopwatch only", diagnose(rig, timed))

// a voltmeter settles it: the drop between pack and actuators is ten times the plan's
const metered = {
  ...timed,
  sourceSag: { value: "0.17 V" },
  sourceDrop: { value: "2.3 V" },
  actuatorVoltage: { value: "8.5 V" },
  restVoltage: { value: "10.95 V" },
}
show("With a voltmeter too", diagnose(rig, metered))
