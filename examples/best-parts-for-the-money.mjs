// Best parts for the money: every choice of actuator, bracket, spring, cells, converter and wire that no other beats.
// Catalogue, figures and prices are invented. With `--threads` the search is spread over worker threads.
import { readFileSync } from "node:fs"
import { fileURLToPath } from "node:url"
import { search } from "alula/advice"
import { moveTime } from "alula/rig"
import { Piscina } from "piscina"

const read = (path) => JSON.parse(readFileSync(new URL(`../shared/${path}.json`, import.meta.url), "utf8"))
const rig = read("rigs/lantern-moth-cells")
const catalogue = read("catalogue/lantern-moth")
const pool = process.argv.includes("--threads")
  ? new Piscina({ filename: fileURLToPath(import.meta.resolve("alula/advice/search-worker")) })
  : undefined

// Ctrl-C stops the search, not the program
const stop = new AbortController()
process.once("SIGINT", () => stop.abort(new Error("stopped by hand")))

const goals = { series: [1, 2, 3, 4, 5, 6, 7], parallel: [1, 2, 3, 4], moves: 40, raiseTime: "12 s" }
const begun = performance.now()
const found = await search(rig, catalogue, goals, {
  signal: stop.signal,
  ...(pool ? { pool } : {}),
  onProgress: ({ considered, combinations, found }) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${((100 * considered) / combinations).toFixed(0)} % looked at, ${found} kept `)
  },
})
await pool?.destroy()
if (process.stderr.isTTY) process.stderr.write("\n")

const count = (n) => n.toLocaleString("en").replaceAll(",", " ")
console.log(`${found.why}\n`)
console.log(`${count(found.combinations)} combinations in ${((performance.now() - begun) / 1000).toFixed(1)} s:`)
console.log(
  `  ${count(found.ruledOut)} ruled out by a limit, ${count(found.pruned)} proved dominated, ${count(found.evaluated)} calculated in full\n`,
)

const line = ({ price, mass, raiseTime, actuator, placement, spring, series, parallel, cell, converter, wire }) =>
  `${price.toFixed(2).padStart(7)} ${catalogue.currency}  ${mass.toFixed(2)} kg  ${raiseTime.toFixed(1).padStart(4)} s   ${actuator}, ${placement}, ${spring ?? "no spring"}; ${series}S${parallel}P ${cell}, ${converter ?? "no converter"}; ${wire}`
for (const [word, place] of [
  ["Cheapest", found.cheapest],
  ["Lightest", found.lightest],
  ["Fastest", found.fastest],
])
  if (place !== null) console.log(`${word.padEnd(9)}${line(found.front[place])}`)

// what each further coin buys: choices by price that are faster than every cheaper one
console.log("\nFaster for more money:")
let best = Number.POSITIVE_INFINITY
for (const choice of found.front)
  if (choice.raiseTime < 0.95 * best) {
    best = choice.raiseTime
    console.log(`  ${line(choice)}`)
  }

console.log("\nWhat stands in the way of the rest:")
for (const { combinations, family, members, of, why } of found.rejected)
  console.log(`  ${count(combinations).padStart(9)}  ${family}${members === null ? "" : ` (${members} of ${of})`}: ${why}`)

if (found.cheapest !== null) {
  // each choice carries a whole rig document: any other check reads it
  const move = moveTime(found.front[found.cheapest].rig)
  console.log(`\nThe cheapest, solved whole again: ${move.why}`)
}
for (const { severity, message } of found.cautions) console.log(`${severity}: ${message}`)
