import { readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"

/** Inputs of a row: parsed JSON of many shapes, whose keys the row's own check knows. */
export type RowInputs = Readonly<Record<string, ReturnType<typeof JSON.parse>>>

/** A published check value, as kept in shared/references. */
export interface ReferenceRow {
  readonly id: string
  readonly module: string
  readonly topic: string
  readonly what: string
  readonly formula: string | null
  readonly inputs: RowInputs
  readonly expected: Readonly<Record<string, unknown>>
  readonly tolerance: { readonly kind: string; readonly value: number; readonly why: string } | null
  readonly source: {
    readonly title: string
    readonly author_or_body?: string | null
    readonly year?: string | number | null
    readonly where?: string | null
  }
  readonly basis: string
  /** Why no solver is held to this row; every row has this or a check. */
  readonly left_out?: string
}

/** The rows of one module, from the project's own shared/references. */
export function referenceRows(module: string): readonly ReferenceRow[] {
  return JSON.parse(readFileSync(new URL(`../../shared/references/${module}.json`, import.meta.url), "utf8")) as ReferenceRow[]
}

/** Computes the expected values of a row; a key may be left out only by naming it in `without`. */
export type Check = (inputs: RowInputs, row: ReferenceRow) => Readonly<Record<string, unknown>>

/** A {@link Check} that has to be waited for. */
export type LaterCheck = (inputs: RowInputs, row: ReferenceRow) => Promise<Readonly<Record<string, unknown>>>

/** Asserts that one value agrees with the published one to the row's tolerance. */
export function agrees(actual: unknown, expected: unknown, row: ReferenceRow, key: string): void {
  if (Array.isArray(expected)) {
    expect(actual, key).toHaveLength(expected.length)
    expected.forEach((e, i) => {
      agrees((actual as unknown[])[i], e, row, `${key}[${i}]`)
    })
    return
  }
  if (typeof expected !== "number" || row.tolerance === null) {
    expect(actual, key).toEqual(expected)
    return
  }
  const { kind, value, why } = row.tolerance
  const allowed = kind === "absolute" ? value : value * Math.abs(expected)
  const off = Math.abs((actual as number) - expected)
  expect(off <= allowed * (1 + 1e-9), `${key}: got ${String(actual)}, published ${expected}, allowed ±${allowed} (${why})`).toBe(true)
}

/**
 * Drives one test per row of a module. Every row must have a check here or say in its `left_out` why
 * it has none; a check without a row fails too.
 *
 * @param module - file in shared/references, without ending
 * @param checks - by row id; each returns the expected keys it reckons
 * @param without - by row id, the expected keys a check leaves out, and why
 */
export function referenceTests(
  module: string,
  checks: Readonly<Record<string, Check | LaterCheck>>,
  without: Readonly<Record<string, Readonly<Record<string, string>>>> = {},
): void {
  const rows = referenceRows(module)
  describe(`published values: ${module}`, () => {
    it("accounts for every row", () => {
      const ids = rows.map((r) => r.id)
      expect(Object.keys(checks).filter((id) => !ids.includes(id))).toEqual([])
      expect(rows.filter((r) => !r.left_out && !checks[r.id]).map((r) => r.id)).toEqual([])
      expect(rows.filter((r) => r.left_out && checks[r.id]).map((r) => r.id)).toEqual([])
    })
    for (const row of rows) {
      const check = checks[row.id]
      if (!check) continue
      const { title, year, where } = row.source
      it(`${row.id}: ${row.what} [${row.basis}: ${title}${year ? `, ${year}` : ""}${where ? `, ${where}` : ""}]`, async () => {
        const reckoned = await check(row.inputs, row)
        for (const [key, expected] of Object.entries(row.expected)) {
          if (without[row.id]?.[key]) continue
          expect(key in reckoned, `the check gives no ${key}`).toBe(true)
          agrees(reckoned[key], expected, row, key)
        }
      })
    }
  })
}
