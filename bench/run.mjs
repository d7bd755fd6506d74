// Times the library in one run and prints ratios: to a stated baseline where a row names one, else to one voltageDrop.si call.
import { spawnSync } from "node:child_process"
import { readdirSync } from "node:fs"
import { gzipSync } from "node:zlib"
import { build } from "esbuild"
import { Bench } from "tinybench"
import manifest from "../package.json" with { type: "json" }

const only = process.argv[2]
const folder = new URL("./", import.meta.url)
const files = readdirSync(folder).filter((f) => f.endsWith(".mjs") && f !== "run.mjs" && (!only || f.startsWith(only)))
const bench = new Bench({ time: 300, warmupTime: 50 })
const baselines = new Map()
/** Rows of one problem in several sizes, by its name. */
const families = new Map()
for (const file of files) {
  const { rows } = await import(new URL(file, folder).href)
  for (const { name, run, baseline, family, size } of rows) {
    bench.add(name, run)
    if (baseline) baselines.set(name, baseline)
    if (family) families.set(family, [...(families.get(family) ?? []), { name, size }])
  }
}
await bench.run()

const microseconds = new Map(bench.tasks.map((t) => [t.name, (t.result?.latency?.p50 ?? t.result?.latency?.mean ?? Number.NaN) * 1000]))
const unit = microseconds.get("wire.voltageDrop.si")
const shown = (us) => (us < 1 ? `${(us * 1000).toFixed(0)} ns` : us < 1000 ? `${us.toFixed(1)} µs` : `${(us / 1000).toFixed(2)} ms`)
console.log("Calls (median)")
for (const [name, us] of microseconds) {
  const base = baselines.get(name)
  const ratio =
    base && microseconds.has(base)
      ? `${(us / microseconds.get(base)).toPrecision(3)} × ${base}`
      : unit
        ? `${(us / unit).toPrecision(3)} × wire.voltageDrop.si`
        : ""
  console.log(`  ${name.padEnd(62)} ${shown(us).padStart(10)}   ${ratio}`)
}

if (families.size > 0) console.log("\nGrowth (time as a power of the size, by least squares over the sizes)")
for (const [family, members] of families) {
  const points = members.map(({ name, size }) => [Math.log(size), Math.log(microseconds.get(name))])
  const [x, y] = [0, 1].map((k) => points.reduce((sum, p) => sum + p[k], 0) / points.length)
  const exponent = points.reduce((sum, p) => sum + (p[0] - x) * (p[1] - y), 0) / points.reduce((sum, p) => sum + (p[0] - x) ** 2, 0)
  console.log(`  ${family.padEnd(52)} size^${exponent.toFixed(2)}   (${members.map((m) => m.size).join(", ")})`)
}

if (!only) {
  const root = new URL("../", import.meta.url).pathname
  const subpaths = Object.keys(manifest.exports).filter((p) => !p.endsWith(".json"))
  const time = (code) => {
    const start = process.hrtime.bigint()
    spawnSync(process.execPath, ["--input-type=module", "-e", code], { cwd: root })
    return Number(process.hrtime.bigint() - start) / 1e6
  }
  const median = (list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)]
  const rounds = 9
  const samples = new Map([["an empty program", []], ...subpaths.map((p) => [p, []])])
  // interleaved, so that a slow spell of the machine touches every row alike
  for (let i = 0; i < rounds; i++)
    for (const [path, list] of samples) list.push(time(path.startsWith(".") ? `import "alula${path.slice(1)}"` : ""))
  const empty = median(samples.get("an empty program"))
  console.log("\nCold import (extra time over an empty program, and as a ratio of it)")
  for (const path of subpaths) {
    const extra = median(samples.get(path)) - empty
    console.log(`  ${`alula${path.slice(1)}`.padEnd(52)} ${extra.toFixed(0).padStart(7)} ms   ${(extra / empty).toFixed(2)} × empty`)
  }

  const size = async (contents) => {
    const { outputFiles } = await build({
      stdin: { contents, resolveDir: root },
      bundle: true,
      write: false,
      minify: true,
      format: "esm",
      platform: "neutral",
      logLevel: "error",
    })
    return gzipSync(outputFiles[0].contents, { level: 9 }).length
  }
  console.log("\nOne bundled solver (minified, gzip)")
  for (const [domain, name] of [
    ["linkage", "grashof"],
    ["wire", "voltageDrop"],
    ["drive", "linearActuator"],
    ["converter", "converterLimit"],
    ["linkage", "hingeActuator"],
    ["rig", "move"],
  ]) {
    console.log(
      `  ${`${domain}.${name}`.padEnd(52)} ${(await size(`import { ${name} } from "alula/${domain}"; console.log(${name})`)).toString().padStart(7)} B, from the root ${await size(`import { ${name} } from "alula"; console.log(${name})`)} B`,
    )
  }
}
