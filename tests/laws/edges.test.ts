import { describe, expect, it } from "vitest"
import { type AnyField, type AnyFields, type AnyGroup, type Either, InputError, NoSolutionError, namesIn } from "../../src/solver/index.js"
import { readInput } from "../../src/solver/read.js"
import { sitesOf } from "../helpers/census.js"
import { allEdges, type Change, changed } from "../helpers/edges.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"

const idOf = (solver: unknown) => solvers.find((s) => s.solver === solver)?.id ?? "a solver that is not exported"

function leavesOf(value: unknown, path = ""): Map<string, unknown> {
  if (typeof value !== "object" || value === null) return new Map([[path, value]])
  return new Map(Object.entries(value).flatMap(([key, part]) => [...leavesOf(part, path ? `${path}.${key}` : key)]))
}

/** The fields without the rules between them: the input with a breach of one is read all the same. */
function withoutRules(fields: AnyFields): AnyFields {
  const bare = (field: AnyField): AnyField => {
    if (field.kind === "group") return { ...field, fields: withoutRules(field.fields), either: [] }
    if (field.kind === "list") return { ...field, of: bare(field.of) }
    if (field.kind !== "variant") return field
    return {
      ...field,
      of: Object.fromEntries(Object.entries(field.of).map(([k, m]) => [k, { ...m, fields: withoutRules(m.fields), either: [] }])),
    }
  }
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, bare(field)]))
}

/** Every rule between fields of a description, with the place of its fields. */
function rulesOf({ fields, either = [] }: Omit<AnyGroup, "label">, place: readonly string[] = []): readonly (readonly [string, Either])[] {
  const within = (field: AnyField, at: readonly string[]): readonly (readonly [string, Either])[] => {
    if (field.kind === "group") return rulesOf(field, at)
    if (field.kind === "list") return within(field.of, [...at, "*"])
    return field.kind === "variant" ? Object.values(field.of).flatMap((member) => rulesOf(member, at)) : []
  }
  return [
    ...either.map((rule) => [place.join("."), rule] as const),
    ...Object.entries(fields).flatMap(([key, field]) => within(field, [...place, key])),
  ]
}

/** How two inputs differ beyond one step in one place, or null. */
function tooFarApart(solver: AnySolver, one: Record<string, unknown>, other: Record<string, unknown>): string | null {
  const fields = solver.input as unknown as AnyFields
  const [a, b] = [one, other].map((input) => {
    const read = readInput(withoutRules(fields), input)
    if (!read.ok) throw new Error(`not readable: ${read.issues.map((i) => i.message).join("; ")}`)
    return leavesOf(read.si)
  }) as [Map<string, unknown>, Map<string, unknown>]
  const differ = [...new Set([...a.keys(), ...b.keys()])].filter((path) => a.get(path) !== b.get(path))
  if (differ.length === 0) return "the two inputs are the same"
  // a list grown by one entry, or a thing given and not given, is one step
  const heads = [...new Set(differ.map((path) => path.split(".")[0]))]
  if (heads.length > 1) return `they differ in ${differ.join(", ")}`
  if (differ.length > 1) return [...a.keys()].length === [...b.keys()].length ? `they differ in ${differ.join(", ")}` : null
  const [x, y] = [a.get(differ[0] as string), b.get(differ[0] as string)]
  if (typeof x !== "number" || typeof y !== "number") return null
  if (Number.isInteger(x) && Number.isInteger(y) && Math.abs(x - y) === 1) return null
  const scale = Math.max(Math.abs(x), Math.abs(y))
  const isNear = Math.abs(x - y) <= 0.01 * scale * (1 + 1e-9) || (Math.min(Math.abs(x), Math.abs(y)) === 0 && scale <= 1e-3)
  return isNear ? null : `${differ[0]}: ${x} and ${y} are more than 1 % apart`
}

/** The input with a value put in at a dotted path, such as `poses.0.height`. */
function put(input: unknown, path: string, value: number): unknown {
  const [head, ...rest] = path.split(".") as [string, ...string[]]
  const there = rest.length ? put((input as Record<string, unknown>)[head], rest.join("."), value) : value
  return Array.isArray(input) ? input.map((item, i) => (i === Number(head) ? there : item)) : { ...(input as object), [head]: there }
}

function expectAtThreshold(row: { solver: unknown; apart?: string }, one: Change, other: Change): void {
  const solver = row.solver as AnySolver
  const apart = tooFarApart(solver, changed(solver, one), changed(solver, other))
  if (row.apart === undefined) expect(apart).toBeNull()
  else expect(apart, "the reason for standing apart is no longer needed").not.toBeNull()
}

it("finds the edges of every domain", () => {
  const domains = [...new Set(solvers.map(({ id }) => id.split(".")[0] as string))].filter(
    (domain) => domain !== "rig" && domain !== "advice",
  )
  expect(domains.filter((domain) => !allEdges.has(domain))).toEqual([])
})

describe.each([...allEdges])("edges: %s", (module, edges) => {
  it.each(edges.cautions.map((row) => [`${idOf(row.solver)} ${row.code}`, row] as const))("caution %s", (_, row) => {
    const solver = row.solver as AnySolver
    const found = (change: Change) => solver(changed(solver, change)).cautions.filter((c) => c.code === row.code)
    expect(found(row.shown).map((c) => c.severity)).toContain(row.severity)
    if (row.notShown === null) {
      expect(found({}).map((c) => c.severity)).toContain(row.severity)
      return
    }
    expect(found(row.notShown).filter((c) => c.severity === row.severity)).toEqual([])
    expectAtThreshold(row, row.shown, row.notShown)
  })

  it.each(edges.refusals.map((row) => [`${idOf(row.solver)} ${row.code}`, row] as const))("refusal %s", (_, row) => {
    const solver = row.solver as AnySolver
    const input = changed(solver, row.refused)
    const outcome = solver.attempt(input)
    if (outcome.ok || !(outcome.error instanceof NoSolutionError))
      throw new Error(`not refused: ${outcome.ok ? "answered" : outcome.error}`)
    const { noSolution, shortBy, nearest } = outcome.error
    expect(noSolution).toBe(row.code)
    expect(shortBy).toBeGreaterThan(0)
    expect(Object.keys(nearest).length > 0, "a nearest value, or the reason why there is none").toBe(row.noNearest === undefined)
    for (const [key, value] of Object.entries(nearest)) {
      const tried = solver.attempt(put(input, key, value))
      expect(tried.ok, `${key} = ${value}: ${tried.ok ? "" : tried.error.message}`).toBe(true)
    }
    const other = solver.attempt(changed(solver, row.answered))
    expect(other.ok || !(other.error instanceof NoSolutionError) || other.error.noSolution !== row.code, "the other side").toBe(true)
    expect(other.ok || !(other.error instanceof InputError), `the other side: ${other.ok ? "" : other.error.message}`).toBe(true)
    expectAtThreshold(row, row.refused, row.answered)
  })

  it.each(edges.faults.map((row) => [`${idOf(row.solver)} ${row.path}`, row] as const))("fault %s", (_, row) => {
    const solver = row.solver as AnySolver
    const at = (change: Change) => {
      const outcome = solver.attempt(changed(solver, change))
      if (outcome.ok || !(outcome.error instanceof InputError)) return []
      return outcome.error.issues.filter((i) => i.code === (row.code ?? "inconsistent") && i.path.join(".") === row.path)
    }
    expect(at(row.faulty).length).toBeGreaterThan(0)
    expect(at(row.sound)).toEqual([])
    expectAtThreshold(row, row.faulty, row.sound)
  })

  const matches = (pattern: string, path: string) => {
    const [p, q] = [pattern.split("."), path.split(".")]
    return p.length === q.length && p.every((part, i) => part === "*" || part === q[i])
  }

  it("leaves no rule between fields without a row that breaks it, in one of the solvers that have it", () => {
    const broken = (solver: AnySolver, place: string, rule: Either) =>
      edges.faults.some(
        (row) => row.solver === solver && namesIn([rule]).some((name) => matches(place ? `${place}.${name}` : name, row.path)),
      )
    const all = solvers
      .filter(({ id }) => id.startsWith(`${module}.`))
      .flatMap(({ solver }) =>
        rulesOf({ fields: solver.input as unknown as AnyFields, either: solver.either }).map(
          ([place, rule]) => [JSON.stringify(rule), broken(solver, place, rule)] as const,
        ),
      )
    // solvers that share a rule share its row
    const held = new Set(all.flatMap(([text, isBroken]) => (isBroken ? [text] : [])))
    const bare = [...new Set(all.map(([text]) => text))].filter((text) => !held.has(text))
    expect(bare).toEqual([])
  })

  it("leaves no caution, refusal or fault of the sources without a row, and pastes no number into a text", () => {
    const bare = sitesOf(module).filter(({ makes, name }) => {
      if (name === null) return false
      if (makes === "caution") return !edges.cautions.some((row) => row.code === name)
      if (makes === "refuse") return !edges.refusals.some((row) => row.code === name)
      return !edges.faults.some((row) => matches(name, row.path))
    })
    expect(bare.map(({ place, makes, name }) => `${place} ${makes} ${name}`)).toEqual([])
    expect(
      sitesOf(module)
        .filter((s) => s.pasted)
        .map(({ place, pasted }) => `${place} ${pasted}`),
    ).toEqual([])
  })
})
