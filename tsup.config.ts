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
  // what is loaded at run time is bundled, only the parts that are used; scripts/write-notices.mjs lists it with its licences
  // but zod whole, which only `alula/zod` hands on, and unitsnet-js, whose objects are taken by shape
  noExternal: [/^(?!zod$|unitsnet-js$)/],
  external: [/^zod$/, "unitsnet-js"],
  metafile: true,
})
