// What an editor shows: asked of the language service at a call of every solver, and at every property of its input.
import { join } from "node:path"
import ts from "typescript"
import { describe, expect, it } from "vitest"
import { partsOf } from "../../scripts/facts/block.js"
import { inputFacts } from "../../scripts/facts/tail.js"
import type { AnyField } from "../../src/solver/index.js"
import { languageService } from "../helpers/hover.js"
import { root } from "../helpers/packed.js"
import { solvers } from "../helpers/solvers.js"

type Fields = Readonly<Record<string, AnyField>>

/** A value's place in a call, as a path of keys; lists are entered at their first entry. */
interface Property {
  readonly path: readonly string[]
  readonly field: AnyField
}

function propertiesOf(fields: Fields, path: readonly string[] = []): Property[] {
  return Object.entries(fields).flatMap(([key, field]) => {
    const parts = partsOf(field)
    // a variant's members are other objects: only the field itself is asked of
    const inner = parts.length === 1 && parts[0] ? propertiesOf(parts[0].fields, [...path, key]) : []
    return [{ path: [...path, key], field }, ...inner]
  })
}

/** An argument with every property there is, each of the right shape for the language service to find its type. */
function argument(fields: Fields): string {
  const value = (field: AnyField): string => {
    if (field.kind === "group") return argument(field.fields)
    return field.kind === "list" ? `[${value(field.of)}]` : "null as never"
  }
  return `{ ${Object.entries(fields)
    .map(([key, field]) => `${key}: ${value(field)}`)
    .join(", ")} }`
}

const file = join(root, "tests/docs/calls.ts")
const calls = solvers.map(({ id, solver }) => {
  const [domain, name] = id.split(".") as [string, string]
  return { id, domain, name, solver, text: `${domain}.${name}(${argument(solver.input as unknown as Fields)})` }
})
const text = [
  ...[...new Set(calls.map(({ domain }) => domain))].map((domain) => `import * as ${domain} from "../../src/${domain}/index.js"`),
  ...calls.map((call) => call.text),
].join("\n")
const hover = languageService(root, { [file]: text })
const parsed = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true)

/** Where each property of a call's argument stands, by its path. */
function placesOf(call: ts.CallExpression): Map<string, number> {
  const found = new Map<string, number>()
  const walk = (node: ts.Expression, path: string): void => {
    if (ts.isArrayLiteralExpression(node)) for (const part of node.elements) walk(part, path)
    if (!ts.isObjectLiteralExpression(node)) return
    for (const property of node.properties)
      if (ts.isPropertyAssignment(property)) {
        const at = path ? `${path}.${property.name.getText()}` : property.name.getText()
        found.set(at, property.name.getStart())
        walk(property.initializer, at)
      }
  }
  walk(call.arguments[0] as ts.Expression, "")
  return found
}

const statements = parsed.statements.filter(ts.isExpressionStatement).map((s) => s.expression as ts.CallExpression)

describe.each(calls.map((call, i) => ({ ...call, at: statements[i] as ts.CallExpression })))("a hover on $id", ({ solver, at }) => {
  const fields = solver.input as unknown as Fields
  it("says at the call what the solver does, and each input's limits and default", () => {
    const shown = hover(file, at.expression.getEnd() - 1).replace(/\s+/g, " ")
    expect(shown).toMatch(/^[A-Z][^.]{15,}/)
    for (const [key, field] of Object.entries(fields)) {
      const { value, given } = inputFacts(field)
      expect(shown).toContain(`\`${key}\`: ${field.label} [`)
      expect(shown).toContain([value, given].filter(Boolean).join("; "))
    }
  })
  it("says at each property of the argument its limits, unit and default", () => {
    const places = placesOf(at)
    const missing = propertiesOf(fields).flatMap(({ path, field }) => {
      const { value, given } = inputFacts(field)
      const shown = hover(file, places.get(path.join(".")) as number).replace(/\s+/g, " ")
      const [, tail = ""] = /\[([^[\]]*)\]$/.exec(shown) ?? []
      return [value, given].every((part) => part === undefined || tail.includes(part)) ? [] : [`${path.join(".")}: "${shown}"`]
    })
    expect(missing).toEqual([])
  })
})
