import { defineConfig } from "tsup"

const subpaths = ["linkage", "drive", "pack", "converter", "wire", "frame", "thermoform", "worn", "rig", "quantity", "solver", "working"]

export default defineConfig({
  entry: { index: "src/index.ts", ...Object.fromEntries(subpaths.map((name) => [`${name}/index`, `src/${name}/index.ts`])) },
  format: "esm",
  target: "node20",
  platform: "neutral",
  dts: true,
  splitting: true,
  treeshake: true,
  clean: true,
  // small and slow to load from outside: bundled into our output
  noExternal: [/^zod/],
  external: ["mathjs"],
})
