// One question asked of a solver many times: rows of values go in, numbers or refusals come out, and refusals are counted.
import type { Asking } from "../numeric/index.js"
import type { Place } from "./place.js"
import { numberPlace } from "./places.js"
import type { Runner } from "./run.js"

/** What is asked: everything but the rows. */
export interface Question {
  readonly base: object
  readonly vary: readonly Pick<Place, "path" | "keys" | "field">[]
  readonly outputs: readonly { readonly path: string }[]
}

/** How often each refusal came, with one input that shows it. */
export interface Refusal {
  /** The solver's own code; `inconsistent` where fields do not go together, `outside-limits` where a value is beyond its field's limits. */
  readonly code: string
  readonly count: number
  /** Words of the first one. */
  readonly message: string
  /** Values that were refused, in SI by path. */
  readonly example: Readonly<Record<string, unknown>>
}

/** What came of rows. */
export interface Rows {
  /** The asked values, row by row; NaN where the input has no answer, or the answer has no such number. */
  readonly values: Float64Array
  /** Of each row the code of its refusal; null where it has an answer. */
  readonly refused: readonly (string | null)[]
}

const OUTSIDE = "outside-limits"

/** Whether a value is within its field's limits; words and flags are read before. */
function limitsOf({ path, keys, field }: Question["vary"][number]): (value: unknown) => boolean {
  if (!("symbol" in field)) return () => true
  const { low, high, allowsLow, allowsHigh } = numberPlace({ path, keys, label: field.label }, field, null)
  return (v) => {
    const x = v as number
    return (x > low || (allowsLow && x === low)) && (x < high || (allowsHigh && x === high))
  }
}

export class Bench {
  tried = 0
  readonly #seen = new Map<string, { count: number; readonly message: string; readonly example: Readonly<Record<string, unknown>> }>()
  readonly #inside: readonly ((value: unknown) => boolean)[]
  readonly #paths: readonly string[]

  constructor(
    readonly question: Question,
    readonly runner: Runner,
  ) {
    this.#paths = question.vary.map(({ path }) => path)
    this.#inside = question.vary.map(limitsOf)
  }

  /** Refusals so far, the most frequent first. */
  get refused(): readonly Refusal[] {
    return [...this.#seen].map(([code, seen]) => ({ code, ...seen })).sort((a, b) => b.count - a.count)
  }

  /** Tries rows of values, in the order of the question's places. */
  async try(rows: readonly (readonly unknown[])[]): Promise<Rows> {
    const { base, outputs } = this.question
    this.tried += rows.length
    const width = outputs.length
    const values = new Float64Array(rows.length * width).fill(Number.NaN)
    const refused = rows.map((row): string | null => (this.#inside.every((allows, j) => allows(row[j])) ? null : OUTSIDE))
    const asked = rows.map((_, i) => i).filter((i) => refused[i] === null)
    const part = await this.runner.points({
      solver: this.runner.solver.name,
      base,
      inputs: this.#paths,
      columns: this.#paths.map((_, j) => asked.map((i) => rows[i]?.[j])),
      outputs: outputs.map(({ path }) => path),
    })
    asked.forEach((i, at) => {
      refused[i] = part.refused[at] as string | null
      for (let k = 0; k < width; k++) {
        const value = part.outputs[k]?.[at]
        if (typeof value === "number") values[i * width + k] = value
        else if (typeof value === "boolean") values[i * width + k] = Number(value)
      }
    })
    refused.forEach((code, i) => {
      if (code !== null) this.#count(code, rows[i] as readonly unknown[], part.reasons)
    })
    return { values, refused }
  }

  #count(code: string, row: readonly unknown[], reasons: Readonly<Record<string, string>>): void {
    const seen = this.#seen.get(code)
    if (seen) {
      seen.count++
      return
    }
    const outside = this.#inside.findIndex((allows, j) => !allows(row[j]))
    const message =
      code === OUTSIDE ? `${this.question.vary[outside]?.field.label} is beyond the limits of its field` : (reasons[code] ?? code)
    this.#seen.set(code, { count: 1, message, example: Object.fromEntries(this.#paths.map((path, j) => [path, row[j]])) })
  }

  /** Runs a search that asks for points, each answered by `answer` from what came of its row of values. */
  async ask<Answer, Outcome>(
    search: Asking<Answer, Outcome>,
    rowOf: (point: Float64Array) => readonly unknown[],
    answer: (values: Float64Array, refused: string | null) => Answer,
  ): Promise<Outcome> {
    const width = this.question.outputs.length
    let step = search.next()
    while (!step.done) {
      const { values, refused } = await this.try(step.value.map(rowOf))
      step = search.next(step.value.map((_, i) => answer(values.subarray(i * width, (i + 1) * width), refused[i] ?? null)))
    }
    return step.value
  }
}
