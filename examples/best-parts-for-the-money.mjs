// Best parts for the money: every choice of actuator, cells, wire and fuse that holds the whole assessment and that no other beats.
// Catalogue, figures and prices are invented. With `--threads` the search is spread over worker threads.
import { readFileSync } from "node:fs"
import { fileURLToPath } from "node:url"
import { search, searchSize } from "alula/advice"
import { assessRig, rigWith } from "alula/rig"
import { Piscina } from "piscina"

const read = (path) => JSON.parse(readFileSync(new URL(`../shared/${path}.json`, import.meta.url), "utf8"))
const catalogue = read("catalogue/lantern-moth")
const moth = rigWith().read(read("rigs/lantern-moth-cells"))

// a rope line keeps faces away from the wings, and the troupe has measured what the wind meets
const [arms] = moth.motions
const [wing] = arms.mechanisms
const rig = {
  ...moth,
  contact: { ...moth.contact, region: "upper-arm-elbow" },
  motions: [{ ...arms, mechanisms: [{ ...wing, panels: [{ area: "0.25 m2", radius: "450 mm" }] }] }],
}

const request = {
  catalogue,
  vary: [
    { at: "motions[0].drive", family: "actuator", part: "actuators" },
    { at: "power.sources[0]", family: "cell", part: "cell pack in its box" },
    { at: "power.sources[0].series", values: [2, 3, 4] },
    { at: "power.sources[0].parallel", values: [1, 2, 3] },
    { at: "power.buses[0].run", family: "wire", part: { forward: "-130 mm", height: "1.1 m" } },
    { at: "power.buses[0]", family: "fuse", part: { forward: "-130 mm", height: "1.05 m" } },
  ],
  goals: ["price", "mass", "duration"],
}

const count = (n) => n.toLocaleString("en").replaceAll(",", " ")
console.log(`${count(searchSize(rig, request))} combinations are to be decided.`)

const pool = process.argv.includes("--threads")
  ? new Piscina({ filename: fileURLToPath(import.meta.resolve("alula/advice/search-worker")) })
  : undefined
// Ctrl-C stops the search, not the program
const stop = new AbortController()
process.once("SIGINT", () => stop.abort(new Error("stopped by hand")))

const begun = performance.now()
const found = await search(rig, request, {
  signal: stop.signal,
  ...(pool ? { pool } : {}),
  onProgress: ({ decided, combinations, found: kept }) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${((100 * decided) / combinations).toFixed(0)} % decided, ${kept} kept `)
  },
})
await pool?.destroy()
if (process.stderr.isTTY) process.stderr.write("\n")

console.log(`${found.why}\n`)
console.log(
  `In ${((performance.now() - begun) / 1000).toFixed(1)} s: ${count(found.byCheck)} ruled out by a check in blocks, ${count(found.byBound)} proved dominated, ${count(found.assessed)} assessed whole.\n`,
)

// what each further coin buys: choices by price that are faster than every cheaper one
console.log("Faster for more money:")
let best = Number.POSITIVE_INFINITY
for (const { price, mass, duration, parts, values, marginal } of found.front)
  if (duration < 0.95 * best) {
    best = duration
    const [series, parallel] = values.map(({ value }) => value)
    const names = parts.map(({ name }) => name).join(", ")
    console.log(
      `  ${price.toFixed(2).padStart(7)} ${catalogue.currency}  ${mass.toFixed(2)} kg  ${duration.toFixed(1)} s out and back   ${names}; ${series}S${parallel}P; ${marginal} checks close to their limit`,
    )
  }

console.log("\nWhat stood in the way of the rest:")
for (const { combinations, title, nearest, why } of found.ruledOut)
  console.log(`  ${count(combinations).padStart(7)}  ${title}${nearest ? `; nearest ${nearest}: ${why}` : ""}`)

// each choice carries a whole rig: any other question reads it
console.log(`\nThe cheapest, assessed again: ${assessRig(found.front[0].rig).summary}`)
for (const { severity, message } of found.cautions) console.log(`${severity}: ${message}`)
