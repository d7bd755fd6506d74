import { readdirSync, readFileSync } from "node:fs"
import { defineConfig, type Options } from "tsup"

const modules = readdirSync("src", { recursive: true })
  .map(String)
  .filter((path) => path.endsWith(".ts") && !path.endsWith(".d.ts"))
const entry = (paths: readonly string[]) => Object.fromEntries(paths.map((path) => [path.slice(0, -3), `src/${path}`]))

/** Whether a module loads a package or data from outside `src`: those are bundled, only the parts that are used. */
const loadsFromOutside = (path: string) =>
  /^(?:import|\}) (?!type\b)[^"]*"(?:zod\/mini|mathjs|[^"]*\.json)"/m.test(readFileSync(`src/${path}`, "utf8"))

/** What each public path stands for: `rig/index.ts`, `advice/search/worker.ts`. */
const publicPaths = Object.values(
  (JSON.parse(readFileSync("package.json", "utf8")) as { exports: Record<string, string | { default: string }> }).exports,
).flatMap((target) => (typeof target === "string" ? [] : [target.default.replace(/^\.\/dist\/(.*)\.js$/, "$1.ts")]))

const common: Options = {
  format: "esm",
  target: "node20",
  platform: "neutral",
  treeshake: false,
  silent: true,
  clean: false,
  // scripts/write-notices.mjs lists what is bundled, with its licences; zod whole is only handed on by `alula/zod`, and
  // unitsnet-js objects are taken by shape
  noExternal: [/^(?!zod$|unitsnet-js$)/],
  external: [/^zod$/, "unitsnet-js"],
}

export default defineConfig([
  // for bundlers one file per module: what is left out, is left out whole
  { ...common, entry: entry(modules.filter((path) => !loadsFromOutside(path))), outDir: "dist", bundle: false },
  {
    ...common,
    entry: entry(modules.filter(loadsFromOutside)),
    outDir: "dist",
    splitting: false,
    metafile: true,
    esbuildPlugins: [
      {
        name: "own modules stay outside",
        setup(build) {
          build.onResolve({ filter: /^\..*\.js$/ }, ({ path, importer }) =>
            importer.includes("/node_modules/") ? null : { path, external: true },
          )
        },
      },
    ],
  },
  // for node few files: it loads each one by itself, and hundreds take their time
  {
    ...common,
    entry: entry(publicPaths),
    outDir: "dist/node",
    splitting: true,
    esbuildOptions(options) {
      options.minifyWhitespace = true
    },
  },
])
