// Plants small faults in a module and counts how many its tests notice: npm run faults -- --help
import { mkdirSync, rmSync } from "node:fs"
import { build } from "esbuild"

const at = (path) => new URL(path, import.meta.url).pathname
// below node_modules, so that what is bundled finds its packages; a folder for each run, so that two can go on at once
const cache = at(`../node_modules/.cache/faults/${process.pid}/`)
mkdirSync(cache, { recursive: true })
try {
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
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exitCode = 2
} finally {
  rmSync(cache, { recursive: true, force: true })
}
