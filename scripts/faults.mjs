// Plants small faults in a module and counts how many its tests notice: npm run faults -- --help
import { mkdirSync } from "node:fs"
import { build } from "esbuild"

const at = (path) => new URL(path, import.meta.url).pathname
const cache = at("../node_modules/.cache/faults/")
mkdirSync(cache, { recursive: true })
await build({
  entryPoints: [at("faults/main.ts"), at("faults/worker.ts")],
  outdir: cache,
  outExtension: { ".js": ".mjs" },
  bundle: true,
  packages: "external",
  platform: "node",
  format: "esm",
  target: "node20",
  logLevel: "warning",
})
const { main } = await import(`${cache}main.mjs`)
process.exitCode = await main(process.argv.slice(2), at(".."), cache)
