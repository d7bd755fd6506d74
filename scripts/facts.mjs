// Writes the facts of every description into the comments that show them (npm run fix), or compares them (--check).
// Usage: node scripts/facts.mjs [--check] [--root <folder>]
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs"
import { build } from "esbuild"

const given = process.argv.indexOf("--root")
const root = given < 0 ? new URL("..", import.meta.url).pathname.replace(/\/$/, "") : process.argv[given + 1]
// below node_modules, so that what is bundled finds its packages
const cache = new URL(`../node_modules/.cache/facts/${process.pid}/`, import.meta.url).pathname
const sources = (name) => readdirSync(`${root}/src/${name}`, { recursive: true }).filter((file) => file.endsWith(".ts"))
// modules that define a solver; loading the others takes longer than all the rest
const modules = readdirSync(`${root}/src`).filter(
  (name) =>
    existsSync(`${root}/src/${name}/index.ts`) &&
    sources(name).some((file) => /= \/\* @__PURE__ \*\/ solver\b/.test(readFileSync(`${root}/src/${name}/${file}`, "utf8"))),
)
const lines = modules.map((name) => `import * as ${name} from ${JSON.stringify(`${root}/src/${name}/index.ts`)}`)
mkdirSync(cache, { recursive: true })
try {
  await build({
    stdin: {
      contents: [
        ...lines,
        `export { main } from ${JSON.stringify(new URL("facts/main.ts", import.meta.url).pathname)}`,
        `export const modules = { ${modules.join(", ")} }`,
      ].join("\n"),
      resolveDir: root,
      loader: "ts",
    },
    outfile: `${cache}facts.mjs`,
    bundle: true,
    packages: "external",
    platform: "node",
    format: "esm",
    target: "node20",
    logLevel: "warning",
  })
  const { main, modules: loaded } = await import(`${cache}facts.mjs`)
  process.exitCode = main(root, loaded, process.argv.includes("--check"))
} finally {
  rmSync(cache, { recursive: true, force: true })
}
