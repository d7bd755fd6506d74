// How sure am I of twelve seconds? The lantern moth's wings should be up within them. What moves the time, how likely is it met, what
// would make it likelier, and what does a stopwatch say of the built thing? Rig and figures are invented.
import { readFileSync } from "node:fs"
import { formatQuantity } from "alula/quantity"
import { moveTime } from "alula/rig"
import { fit, optimize, sensitivity, uncertainty } from "alula/study"

const rig = JSON.parse(readFileSync(new URL("../shared/rigs/lantern-moth-cells.json", import.meta.url), "utf8"))
const seconds = (value) => formatQuantity("time", value, "s")
console.log(`As planned the wings are up in ${seconds(moveTime(rig).raiseTime)}.\n`)

// what is not known exactly, as a maker knows it
const spreads = {
  "hinged.masses.0.mass": "260 g ± 20 g",
  "hinged.masses.1.mass": "240 g ± 30 g",
  "hinged.movingPivot.radius": "72 mm ± 1 mm",
  "hinged.hingeFriction": { type: "triangular", low: "0.1 N m", mode: "0.15 N m", high: "0.4 N m" },
  "hinged.actuator.noLoadSpeed": { type: "normal", deviation: "3 %" },
  "pack.stateOfCharge": { type: "uniform", low: "25 %", high: "60 %" },
  "pack.cellResistance": { type: "lognormal", factor: 1.15 },
}

console.log("What moves the time?")
const moved = await sensitivity(moveTime, rig, { outputs: ["raiseTime"], vary: spreads, samples: 32 })
console.log(`  ${moved.outputs[0].sentence}`)
for (const { sentence, total } of moved.outputs[0].inputs)
  console.log(`  ${formatQuantity("ratio", total.value, "%").padStart(7)}  ${sentence}`)

const limits = { raiseTime: { atMost: "12 s" } }
const sure = await uncertainty(moveTime, rig, spreads, { limits, within: 0.02 })
console.log("\nHow sure am I?")
for (const sentence of [sure.limits[0].sentence, sure.outputs[0].sentence, sure.sentence]) console.log(`  ${sentence}`)
const { low, high } = sure.outputs[0].worst
console.log(`  At the very worst ${seconds(high.value)}, at the very best ${seconds(low.value)}, as far as was found.`)

console.log("\nWhere should the rod's moving pivot be?")
const best = await optimize(moveTime, rig, {
  vary: { "hinged.movingPivot.radius": ["66 mm", "69 mm", "72 mm", "75 mm", "78 mm"], "hinged.fixedPivot.y": ["-195 mm", "-190 mm"] },
  minimize: ["raiseTime"],
})
console.log(`  ${best.sentence}`)
for (const { code, count, message } of best.refused) console.log(`  ${count} of them refused, ${code}: ${message}`)

console.log("\nBuilt, and timed at three states of charge. What is its friction, and what its resistance?")
const built = await fit(moveTime, rig, {
  vary: { "hinged.hingeFriction": { from: "0.01 N m", to: "1.5 N m" }, "pack.extraResistance": { from: "5 mohm", to: "0.5 ohm" } },
  readings: [
    { of: "raiseTime", value: "11.9 s", deviation: "0.1 s" },
    { of: "raiseTime", value: "11.1 s", deviation: "0.1 s", at: { "pack.stateOfCharge": "60 %" } },
    { of: "raiseTime", value: "10.1 s", deviation: "0.1 s", at: { "pack.stateOfCharge": "90 %" } },
    { of: "lowerTime", value: "9.9 s", deviation: "0.1 s" },
  ],
  starts: 0,
})
for (const { sentence } of [...built.inputs, ...built.cannotTell]) console.log(`  ${sentence}`)
