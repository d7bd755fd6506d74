// Runs every netlist in shared/netlists through ngspice and writes what it prints (node voltages, measured values) into the JSON beside it.
// Usage: node scripts/run-netlists.mjs [--check]   (--check compares instead of writing)
// Needs ngspice on the path (Debian: apt-get install ngspice). The tests read the stored results and do not need it.
import { execFileSync } from "node:child_process"
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs"

const folder = new URL("../shared/netlists/", import.meta.url)
const check = process.argv.includes("--check")
const version = execFileSync("ngspice", ["--version"], { encoding: "utf8" }).match(/ngspice-[\d.]+/)?.[0] ?? "ngspice"
let off = 0
// a netlist without a JSON beside it has no stored result to keep
const netlists = readdirSync(folder).filter((f) => f.endsWith(".cir") && existsSync(new URL(f.replace(/\.cir$/, ".json"), folder)))
for (const file of netlists) {
  const printed = execFileSync("ngspice", ["-b", new URL(file, folder).pathname], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] })
  const results = Object.fromEntries(
    // node voltages, and what a transient analysis measures
    [...printed.matchAll(/^(?:v\(([^)]*)\)|(\w+))\s+=\s+(-?\d\S*)/gm)].map(([, node, name, value]) => [
      node?.replace(/\s/g, "") ?? name,
      Number(value),
    ]),
  )
  const place = new URL(file.replace(/\.cir$/, ".json"), folder)
  const stored = JSON.parse(readFileSync(place, "utf8"))
  if (Object.keys(results).length === 0) throw new Error(`${file}: ngspice printed no result`)
  if (check) {
    for (const [node, volts] of Object.entries(results)) {
      const difference = Math.abs(volts - stored.results[node])
      if (difference <= 1e-9 * Math.max(1, Math.abs(volts))) continue
      off++
      console.error(`${file}: ${node} is ${volts}, stored ${stored.results[node]}`)
    }
    continue
  }
  writeFileSync(place, `${JSON.stringify({ ...stored, tool: version, results }, null, 2)}\n`)
  console.log(`${file}: ${Object.keys(results).length} results`)
}
if (off > 0) process.exit(1)
