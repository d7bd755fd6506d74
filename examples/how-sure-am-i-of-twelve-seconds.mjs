// How sure am I of twelve seconds? The lantern moth's wings should be up within them. What moves the time, how likely is it met, what
// would make it likelier, and what does a stopwatch say of the built thing? Rig and figures are invented.
import { readFileSync } from "node:fs"
import { formatQuantity } from "alula/quantity"
import { move, readRig } from "alula/rig"
import { fit, optimize, sensitivity, uncertainty } from "alula/study"

const rig = readRig(readFileSync(new URL("../shared/rigs/lantern-moth-cells.json", import.meta.url), "utf8"))
const seconds = (value) => formatQuantity("time", value, "s")
console.log(`As planned the wings are up in ${seconds(move(rig).outDuration)}.\n`)

// what is not known exactly, as a maker knows it
const spreads = {
  "motions.0.mechanisms.0.masses.0.mass": "260 g ± 20 g",
  "motions.0.mechanisms.0.masses.1.mass": "240 g ± 30 g",
  "motions.0.mechanisms.0.movingPivot.radius": "72 mm ± 1 mm",
  "motions.0.mechanisms.0.hingeFriction": { type: "triangular", low: "0.1 N m", mode: "0.15 N m", high: "0.4 N m" },
  "motions.0.drive.noLoadSpeed": { type: "normal", deviation: "3 %" },
  "power.sources.0.stateOfCharge": { type: "uniform", low: "25 %", high: "60 %" },
  "power.sources.0.cellResistance": { type: "lognormal", factor: 1.15 },
}

console.log("What moves the time?")
const moved = await sensitivity(move, rig, { outputs: ["outDuration"], vary: spreads, samples: 32 })
console.log(`  ${moved.outputs[0].sentence}`)
for (const { sentence, total } of moved.outputs[0].inputs)
  console.log(`  ${formatQuantity("ratio", total.value, "%").padStart(7)}  ${sentence}`)

const limits = { outDuration: { atMost: "12 s" } }
const sure = await uncertainty(move, rig, spreads, { limits, within: 0.02 })
console.log("\nHow sure am I?")
for (const sentence of [sure.limits[0].sentence, sure.outputs[0].sentence, sure.sentence]) console.log(`  ${sentence}`)
const { low, high } = sure.outputs[0].worst
console.log(`  At the very worst ${seconds(high.value)}, at the very best ${seconds(low.value)}, as far as was found.`)

console.log("\nWhere should the rod's moving pivot be?")
const best = await optimize(move, rig, {
  vary: {
    "motions.0.mechanisms.0.movingPivot.radius": ["66 mm", "69 mm", "72 mm", "75 mm", "78 mm"],
    "motions.0.mechanisms.0.fixedPivot.y": ["-195 mm", "-190 mm"],
  },
  minimize: ["outDuration"],
})
console.log(`  ${best.sentence}`)
for (const { code, count, message } of best.refused) console.log(`  ${count} of them refused, ${code}: ${message}`)

console.log("\nBuilt, and timed at three states of charge. What is its friction, and what its resistance?")
const built = await fit(move, rig, {
  vary: {
    "motions.0.mechanisms.0.hingeFriction": { from: "0.01 N m", to: "1.5 N m" },
    "power.sources.0.extraResistance": { from: "5 mohm", to: "0.5 ohm" },
  },
  readings: [
    { of: "outDuration", value: "11.9 s", deviation: "0.1 s" },
    { of: "outDuration", value: "11.1 s", deviation: "0.1 s", at: { "power.sources.0.stateOfCharge": "60 %" } },
    { of: "outDuration", value: "10.1 s", deviation: "0.1 s", at: { "power.sources.0.stateOfCharge": "90 %" } },
    { of: "backDuration", value: "9.9 s", deviation: "0.1 s" },
  ],
  starts: 0,
})
for (const { sentence } of [...built.inputs, ...built.cannotTell]) console.log(`  ${sentence}`)
