import { readdirSync, readFileSync } from "node:fs"
import { join } from "node:path"
import ts from "typescript"
import { root } from "./packed.js"

/** A code sample of the docs, with the place it stands in. */
export interface Sample {
  readonly place: string
  readonly code: string
}

/** Every `@example` block of the sources. */
export function sourceSamples(): Sample[] {
  const files = readdirSync(join(root, "src"), { recursive: true })
    .map(String)
    .filter((f) => f.endsWith(".ts"))
  return files.flatMap((file) => {
    const text = readFileSync(join(root, "src", file), "utf8")
    return [...text.matchAll(/@example[^\n]*\n((?:\s*\*[^\n]*\n)*?)\s*\*\s*```\s*\n/g)].map((match, i) => {
      const block = match[0].replace(/^\s*\* ?/gm, "")
      const code = /```(?:ts|js)\n([\s\S]*?)```/.exec(block)?.[1] ?? ""
      return { place: `${file}#${i + 1}`, code }
    })
  })
}

/** Code blocks of a Markdown file in a language. */
export function markdownSamples(file: string, language: string): Sample[] {
  const text = readFileSync(join(root, file), "utf8")
  return [...text.matchAll(new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``, "g"))].map((match, i) => ({
    place: `${file}#${i + 1}`,
    code: match[1]!,
  }))
}

const modules: Readonly<Record<string, () => Promise<unknown>>> = import.meta.glob("../../src/{*/,}index.ts")

/** Loads `alula/…` from the sources, anything else as it is. */
export function loadSource(specifier: string): Promise<unknown> {
  if (specifier !== "alula" && !specifier.startsWith("alula/")) return import(/* @vite-ignore */ specifier)
  const path = `../../src/${specifier === "alula" ? "" : `${specifier.slice(6)}/`}index.ts`
  const load = modules[path]
  if (!load) throw new Error(`no module ${specifier}`)
  return load()
}

/** A value printed in a doc, against the value reckoned: numbers to the digits printed. */
function disagreement(printed: string, value: unknown): string | null {
  const number = Number(printed)
  if (printed.trim() !== "" && Number.isFinite(number) && typeof value === "number") {
    const mantissa = /^[+-]?(\d*)\.?(\d*)/.exec(printed.trim())!
    const exponent = Number(/e([+-]?\d+)$/i.exec(printed)?.[1] ?? 0)
    const half = 0.5 * 10 ** (exponent - mantissa[2]!.length)
    return Math.abs(value - number) <= half * (1 + 1e-9) ? null : `printed ${printed}, got ${value}`
  }
  const expected = new Function(`return (${printed})`)() as unknown
  return JSON.stringify(expected) === JSON.stringify(value) ? null : `printed ${printed}, got ${JSON.stringify(value)}`
}

/**
 * Runs a sample and compares every `expression // => value` line. Imports go through `load`.
 *
 * @returns number of values compared
 */
export async function runSample(sample: Sample, load: (specifier: string) => Promise<unknown>): Promise<number> {
  const js = ts.transpileModule(sample.code, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext, removeComments: false },
  }).outputText
  let compared = 0
  const body = js
    .replace(/^import (?:type )?(.+?) from ["'](.+?)["'];?$/gm, (_, names: string, from: string) => {
      const target = names.startsWith("* as ") ? names.slice(5) : names.replace(/ as /g, ": ")
      return `const ${target} = await load(${JSON.stringify(from)})`
    })
    .replace(
      /^(?!\s*\/\/)(.+?);?[ \t]*\/\/ => (.+)$/gm,
      (_, expression: string, printed: string) => `check((${expression.trim().replace(/;$/, "")}), ${JSON.stringify(printed.trim())})`,
    )
  const check = (value: unknown, printed: string) => {
    compared++
    const fault = disagreement(printed, value)
    if (fault) throw new Error(`${sample.place}: ${fault}`)
  }
  const AsyncFunction = Object.getPrototypeOf(async () => undefined).constructor as new (
    ...args: string[]
  ) => (...args: unknown[]) => Promise<void>
  await new AsyncFunction("load", "check", "console", body)(load, check, { ...console, log: () => undefined })
  return compared
}
