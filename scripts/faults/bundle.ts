import { readFileSync } from "node:fs"
import { dirname, join, relative, resolve } from "node:path"
import { pathToFileURL } from "node:url"
import { build, type Plugin } from "esbuild"
import type { Fault, Watch } from "./fault.js"
import { exportsOf, filesOf, type Project } from "./program.js"
import { marked, switched } from "./switches.js"

/** The texts that a worker runs: see `worker.ts`. */
export interface Bundle {
  /** Planted files and tests as one script, faults behind switches. */
  readonly switches: string
  /** The same with marks in place of switches. */
  readonly marks: string
  /** A module with everything that faults do not change. */
  readonly stable: string
  /** Packages that the script needs. */
  readonly packages: readonly string[]
}

/** What is planted where. */
export interface Planting {
  readonly faults: readonly Fault[]
  readonly watches: readonly Watch[]
}

/** Bundles tests with the planted files; each test file loads when it is called for. */
export async function bundle(project: Project, module: string, tests: readonly string[], { faults, watches }: Planting): Promise<Bundle> {
  const outside = new Set<string>()
  const here = (list: readonly { file: string }[], file: string) => list.filter((one) => one.file === file) as never[]
  const run = (sources: readonly string[], write: (text: string, file: string) => string) =>
    script(project, module, tests, sources, outside, write)
  const plain = await run([], (text, file) => switched(text, here(faults, file)))
  const own = plain.inputs.filter((path) => path.startsWith(join(project.root, "src/")))
  const traced = await run(own, (text, file) => marked(text, here(faults, file), here(watches, file)))
  const [switches, marks] = [plain.text, traced.text]
  const stable = [...outside].filter((name) => name.startsWith("/"))
  const packages = [...outside].filter((name) => !name.startsWith("/") && name !== "vitest")
  const lines = stable.map((path, i) => `import * as m${i} from ${JSON.stringify(path)}`)
  const { outputFiles } = await build({
    stdin: {
      contents: `${lines.join("\n")}\nexport const modules = { ${stable.map((path, i) => `${JSON.stringify(path)}: m${i}`).join(", ")} }`,
      resolveDir: project.root,
      loader: "js",
    },
    bundle: true,
    write: false,
    format: "esm",
    platform: "node",
    target: "node20",
    packages: "external",
    logLevel: "error",
  })
  return { switches, marks, stable: outputFiles[0]?.text ?? "", packages }
}

async function script(
  project: Project,
  module: string,
  tests: readonly string[],
  sources: readonly string[],
  outside: Set<string>,
  write: (text: string, file: string) => string,
): Promise<{ readonly text: string; readonly inputs: readonly string[] }> {
  const { root } = project
  const seed = filesOf(join(root, "tests/helpers/seed.ts"))
  const load = (path: string) => `() => import(${JSON.stringify(path)})`
  const entry = [
    ...seed.map((path) => `import ${JSON.stringify(path)}`),
    `export const sources = [${sources.map(load).join(", ")}]`,
    `export const files = { ${tests.map((path) => `${JSON.stringify(relative(root, path))}: ${load(path)}`).join(", ")} }`,
  ].join("\n")
  const { outputFiles, metafile } = await build({
    stdin: { contents: entry, resolveDir: root, loader: "js" },
    bundle: true,
    write: false,
    metafile: true,
    absWorkingDir: root,
    format: "iife",
    globalName: "bundled",
    platform: "node",
    target: "node20",
    logLevel: "error",
    plugins: [plugin(project, module, outside, write)],
  })
  return { text: outputFiles[0]?.text ?? "", inputs: Object.keys(metafile.inputs).map((path) => join(root, path)) }
}

function plugin(project: Project, module: string, outside: Set<string>, write: (text: string, file: string) => string): Plugin {
  const { root, planted, stable, program } = project
  return {
    name: "faults",
    setup(hooks) {
      hooks.onResolve({ filter: /.*/ }, ({ path, resolveDir, kind }) => {
        if (kind === "entry-point") return undefined
        const own = /^alula(?:\/(.+))?$/.exec(path)
        const isFile = path.startsWith(".") || path.startsWith("/")
        if (!own && !isFile) return { path, namespace: "outside" }
        const file = own ? join(root, "src", own[1] ?? "", "index.ts") : resolve(resolveDir, path).replace(/\.js$/, ".ts")
        return stable.has(file) ? { path: file, namespace: "outside" } : { path: file }
      })
      // packages and unchanged sources are handed in from outside, so that they load once and not once for each fault
      hooks.onLoad({ filter: /.*/, namespace: "outside" }, async ({ path }) => {
        outside.add(path)
        const names =
          path === "vitest" ? ["describe", "it", "test", "expect", "beforeAll", "afterAll", "beforeEach", "afterEach"] : await namesOf(path)
        const lines = names.map((name, i) =>
          name === "default" ? "export default m.default" : `const v${i} = m[${JSON.stringify(name)}]; export { v${i} as ${name} }`,
        )
        return { contents: `const m = $env.modules[${JSON.stringify(path)}]\n${lines.join("\n")}`, loader: "js" }
      })
      hooks.onLoad({ filter: /\.ts$/ }, ({ path }) => {
        const text = readFileSync(path, "utf8")
        const own = planted.includes(path) ? write(text, relative(root, path)) : text
        return { contents: placed(own, path, module, root), loader: "ts" }
      })
    },
  }
  async function namesOf(path: string): Promise<string[]> {
    const names = path.startsWith("/") ? exportsOf(program, path) : Object.keys((await import(path)) as object)
    return names.filter((name) => /^[A-Za-z_$][\w$]*$/.test(name))
  }
}

/** Puts in what a script cannot know of itself: its own address, and the files that `import.meta.glob` stands for. */
function placed(text: string, path: string, module: string, root: string): string {
  let imports = ""
  let count = 0
  const globbed = text.replace(
    /import\.meta\.glob(?:<[^>]*>)?\(\s*(\[[^\]]*\]|"[^"]*")\s*(?:,\s*(\{[^}]*\}))?\s*,?\s*\)/g,
    (_, patterns: string, options?: string) => {
      const isEager = /eager:\s*true/.test(options ?? "")
      const wanted = [JSON.parse(patterns.startsWith("[") ? patterns.replace(/,\s*\]/, "]") : `[${patterns}]`) as string[]].flat()
      const unwanted = wanted.filter((pattern) => pattern.startsWith("!")).flatMap((pattern) => matches(pattern.slice(1), path))
      const entries = wanted
        .flatMap((pattern) => (pattern.startsWith("!") ? [] : matches(pattern, path)))
        .filter((file) => !unwanted.includes(file))
        .filter((file) => file !== path && !isOtherModule(file, module, root))
        .map((file) => {
          const name = JSON.stringify(relativeTo(path, file))
          if (!isEager) return `${name}: () => import(${JSON.stringify(file)})`
          imports += `import * as glob${count} from ${JSON.stringify(file)}\n`
          return `${name}: glob${count++}`
        })
      return `{ ${entries.join(", ")} }`
    },
  )
  return imports + globbed.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(path).href))
}

const relativeTo = (path: string, file: string) => {
  const to = relative(dirname(path), file)
  return to.startsWith(".") ? to : `./${to}`
}

function matches(pattern: string, path: string): string[] {
  const fixed = pattern.slice(0, pattern.search(/[*{]/))
  const base = resolve(dirname(path), fixed.slice(0, fixed.lastIndexOf("/") + 1) || ".")
  const rest = pattern.slice(fixed.lastIndexOf("/") + 1)
  const expression = rest
    .replace(/[.+^$()|[\]\\]/g, "\\$&")
    .replace(/\*\*\//g, "(?:.*/)?")
    .replace(/(?<!\.)\*/g, "[^/]*")
    .replace(/\{([^}]*)\}/g, (_, list: string) => `(?:${list.replaceAll(",", "|")})`)
  return filesOf(base).filter((file) => new RegExp(`^${expression}$`).test(relative(base, file)))
}

/** Suites that walk every module walk only the one that faults are planted in. */
function isOtherModule(file: string, module: string, root: string): boolean {
  const [top, folder, ...rest] = relative(root, file).split("/")
  return (top === "src" || top === "tests") && rest.length > 0 && folder !== module
}
