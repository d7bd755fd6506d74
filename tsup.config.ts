import { readdirSync, readFileSync } from "node:fs"
import { defineConfig, type Options } from "tsup"
import { base, domains, handedOn, nodeFiles } from "./scripts/packing/node-files.js"
import { pureTables } from "./scripts/packing/pure-tables.js"

const modules = readdirSync("src", { recursive: true })
  .map(String)
  // the command is for node alone
  .filter((path) => path.endsWith(".ts") && !path.endsWith(".d.ts") && !path.startsWith("command/"))
const entry = (paths: readonly string[]) => Object.fromEntries(paths.map((path) => [path.slice(0, -3), `src/${path}`]))

/** Whether a module loads a package or data from outside `src`: those are bundled, only the parts that are used. */
const loadsFromOutside = (path: string) =>
  /^(?:import|\}) (?!type\b)[^"]*"(?:zod\/mini|mathjs|[^"]*\.json)"/m.test(readFileSync(`src/${path}`, "utf8"))

const targets = Object.values(
  (JSON.parse(readFileSync("package.json", "utf8")) as { exports: Record<string, string | { node: string; default: string }> }).exports,
)

/** The files that node takes for the public paths, by the name of each: `rig` is `src/rig/index.ts`. */
const nodeEntries = (wanted: (name: string) => boolean) =>
  Object.fromEntries(
    targets
      .flatMap((target) => (typeof target === "string" ? [] : [target]))
      .map(({ node, default: file }) => [node.slice("./dist/node/".length, -3), file.replace(/^\.\/dist\/(.*)\.js$/, "src/$1.ts")] as const)
      .filter(([name]) => wanted(name)),
  )

const common: Options = {
  format: "esm",
  target: "node20",
  platform: "neutral",
  treeshake: false,
  silent: true,
  clean: false,
  // scripts/write-notices.mjs lists what is bundled, with its licences; zod whole is only handed on by `alula/zod`, and
  // unitsnet-js objects are taken by shape
  noExternal: [/^(?!zod$|unitsnet-js$|node:)/],
  external: [/^zod$/, "unitsnet-js", /^node:/],
}

// as small as can be: node reads every character of a file before it runs
const forNode: Options = { outDir: "dist/node", minify: true }

export default defineConfig([
  // for bundlers one file per module: what is left out, is left out whole
  {
    ...common,
    entry: entry(modules.filter((path) => !loadsFromOutside(path))),
    outDir: "dist",
    bundle: false,
    esbuildPlugins: [pureTables],
  },
  {
    ...common,
    entry: entry(modules.filter(loadsFromOutside)),
    outDir: "dist",
    splitting: false,
    metafile: true,
    esbuildPlugins: [
      pureTables,
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
  {
    ...common,
    ...forNode,
    entry: { base: "scripts/packing/base.ts", ...nodeEntries((name) => domains.has(name)) },
    splitting: false,
    esbuildPlugins: [nodeFiles],
  },
  { ...common, ...forNode, entry: nodeEntries((name) => base.has(name)), splitting: false, esbuildPlugins: [handedOn] },
  // what stands on the domains shares its parts
  {
    ...common,
    ...forNode,
    entry: { ...nodeEntries((name) => !domains.has(name) && !base.has(name)), alula: "src/command/main.ts" },
    splitting: true,
    esbuildPlugins: [nodeFiles],
  },
])
