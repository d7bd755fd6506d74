// Why is my move slow? The lantern moth is built; its wings take longer than planned. What is wrong, and what to read next?
import { diagnose } from "alula/advice"
import { move } from "alula/rig"

const rig = move.example
console.log(`Planned: ${move(rig).outDuration.toFixed(1)} s out. Read on the built one: 13.4 s.\n`)

const show = (title, found) => {
  console.log(`${title}: ${found.outcome}\n  ${found.verdict}`)
  for (const c of found.candidates.slice(0, 4))
    console.log(
      `  ${(100 * c.plausibility).toFixed(0).padStart(3)} %  (by the readings alone ${(100 * c.byReadings).toFixed(0)} %)  ${c.explanation}`,
    )
  if (found.next) console.log(`  Read next: ${found.next.label}. The first says ${found.next.first}, the next one ${found.next.second}.`)
  console.log("")
}

// a stopwatch alone leaves much open, and says so
const timed = [
  { type: "time", value: "13.4 s" },
  { type: "time", way: "back", value: "11.6 s" },
]
show("With a stopwatch only", diagnose(rig, timed))

// a voltmeter: the run between pack and actuators takes ten times what it should, and a hand finds which part of it
const metered = [
  ...timed,
  { type: "voltage", at: "pack", during: "rest", value: "12.05 V" },
  { type: "voltage", at: "pack", value: "11.9 V" },
  { type: "voltage", at: "actuators", value: "9.5 V" },
  { type: "warm", part: "contact", at: "actuators" },
]
show("With a voltmeter and a hand", diagnose(rig, metered))

// what no fault on the list does is called so
const odd = [...timed, { type: "current", value: "0.45 A" }, { type: "voltage", at: "actuators", value: "13.9 V" }]
show("Readings that nothing known makes", diagnose(rig, odd))

// it does not move at all
show(
  "It does not move",
  diagnose(rig, [
    { type: "does-not-move" },
    { type: "voltage", at: "pack", during: "rest", value: "12.1 V" },
    { type: "voltage", at: "actuators", during: "rest", value: 0 },
  ]),
)
