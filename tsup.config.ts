import { readdirSync } from "node:fs"
import { defineConfig } from "tsup"

const modules = readdirSync("src", { recursive: true })
  .map(String)
  .filter((path) => path.endsWith(".ts") && !path.endsWith(".d.ts"))

export default defineConfig({
  // one output file per module: what a bundler leaves out, it leaves out whole
  entry: Object.fromEntries(modules.map((path) => [path.slice(0, -3), `src/${path}`])),
  format: "esm",
  target: "node20",
  platform: "neutral",
  splitting: true,
  treeshake: false,
  clean: true,
  silent: true,
  // small, and slow to load from outside: bundled into our output
  noExternal: [/^zod/],
  external: ["mathjs"],
})
