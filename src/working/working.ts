import type { MathNode, Unit } from "mathjs"
import { formatNumber, type Kind } from "../quantity/index.js"
import {
  type AnyField,
  type AnyFields,
  type AnyOutField,
  type AnyOutFields,
  citation,
  displayNumber,
  isNoSolution,
  NoSolutionError,
  type SiOf,
  type Solver,
  type Source,
  type Step,
} from "../solver/index.js"
import { DIGITS, inSi, type Line, lineOf, type Operand } from "./line.js"
import { math } from "./mathjs.js"
import { symbolTexOf, texOf } from "./tex.js"
import { asWritten, mathOffset, mathUnit } from "./units.js"

const NO_LINE: Line = { taken: "", operands: {}, numbers: "", answers: [] }

/** One worked step. */
export interface WorkedStep {
  /** `given` from the input or a table, `formula` evaluated here, `solved` taken from the solver, `equation` checked here. */
  readonly kind: "given" | "formula" | "solved" | "equation"
  readonly meaning: string
  /** Symbol the step gives; empty for an equation. */
  readonly symbol: string
  /** The formula's text; empty for a given value. */
  readonly formula: string
  /** The formula with the numbers put in, all in SI units and with the figures that bring a pocket calculator to the answer. */
  readonly numbers: string
  /** The formula of which the numbers are put in: where it has conditions, only what is followed. */
  readonly taken: string
  /** What stands in the numbers for each symbol, and for each unit that the formula names. */
  readonly operands: Readonly<Record<string, string>>
  /** The value in the units of the numbers; the two sides of an equation. */
  readonly inSi: string
  /** SI number (temperatures in °C), or numbers for a list; the relative residual of an equation. */
  readonly value: number | readonly number[]
  /** The value as a maker reads it. */
  readonly shown: string
  /** Kind of quantity, `number` where plain. */
  readonly quantity: Kind | "number"
  readonly source: string | null
  /** TeX of the formula; empty for a given value. */
  readonly tex: string
}

/** A solver's working, step by step. */
export interface Working {
  readonly title: string
  readonly steps: readonly WorkedStep[]
  /** Values by symbol, SI, as mathjs worked out them. */
  readonly values: Readonly<Record<string, number | readonly number[]>>
}

type Scope = Map<string, unknown>
interface Named {
  readonly symbol: string
  readonly label: string
  readonly kind: Kind | "number"
  readonly value: number | readonly number[]
}

const isNumeric = (field: AnyField | AnyOutField): field is Extract<AnyField, { symbol: string }> =>
  !["choice", "flag", "text", "list", "group", "variant"].includes(field.kind)

/** The fields that a group has, or a variant by its type; null for anything else. */
function fieldsWithin(field: AnyField, value: unknown): AnyFields | null {
  if (field.kind === "group") return field.fields
  if (field.kind !== "variant") return null
  const { type } = (value ?? {}) as { readonly type?: string }
  return type === undefined ? {} : (field.of[type]?.fields ?? {})
}

/** Every numeric field below `fields`, by symbol; lists give arrays. */
function collect(fields: AnyFields | AnyOutFields, values: Readonly<Record<string, unknown>>, into: Named[] = []): Named[] {
  for (const [key, field] of Object.entries(fields) as [string, AnyField][]) {
    const value = values[key]
    if (value === null || value === undefined) continue
    const within = fieldsWithin(field, value)
    if (within) collect(within, value as Record<string, unknown>, into)
    else if (field.kind === "list") collectList(field.of, value as readonly unknown[], into)
    else if (isNumeric(field) && field.symbol)
      into.push({ symbol: field.symbol, label: field.label, kind: field.kind as Kind, value: value as number })
  }
  return into
}

function collectList(of: AnyField, list: readonly unknown[], into: Named[]): void {
  if (isNumeric(of)) {
    if (of.symbol) into.push({ symbol: of.symbol, label: of.label, kind: of.kind as Kind, value: list as readonly number[] })
    return
  }
  if (of.kind !== "group") return
  for (const [key, field] of Object.entries(of.fields)) {
    // a group that may be left out gives no column
    if (list.some((item) => item === null || item === undefined)) return
    const column = list.map((item) => (item as Record<string, unknown>)[key])
    if (isNumeric(field) && field.symbol && column.every((v) => typeof v === "number"))
      into.push({ symbol: field.symbol, label: field.label, kind: field.kind as Kind, value: column as number[] })
    else if (field.kind === "group") collectList(field, column, into)
  }
}

/** Whether nullable fields are present, and choices, flags and types of variants by name, for conditions. */
function conditions(fields: AnyFields, values: Readonly<Record<string, unknown>>, scope: Scope): void {
  for (const [key, field] of Object.entries(fields)) {
    const value = values[key]
    if (field.default === null) scope.set(`has_${key}`, value !== null && value !== undefined)
    if (field.kind === "choice" || field.kind === "flag") scope.set(key, value)
    if (field.kind === "variant") {
      scope.set(key, (value as { readonly type?: string } | null)?.type)
      // what other members have is not given
      for (const { fields: others } of Object.values(field.of)) conditions(others, {}, scope)
    }
    const within = fieldsWithin(field, value)
    if (within) conditions(within, (value ?? {}) as Record<string, unknown>, scope)
  }
}

function toMath(kind: Kind | "number", value: number | readonly number[]): unknown {
  if (typeof value !== "number") return math.matrix(value.map((v) => toMath(kind, v)) as never)
  const unit = mathUnit(kind)
  return unit === "" ? value : math.unit(value + mathOffset(kind), unit)
}

/** Back to an SI number; throws where the dimension is not that of the kind. */
function fromMath(kind: Kind | "number", value: unknown): number | readonly number[] {
  if (math.isMatrix(value)) return (value.toArray() as unknown[]).map((v) => fromMath(kind, v) as number)
  const unit = mathUnit(kind)
  if (unit === "") {
    if (typeof value === "number") return value
    // quotients of like units can come back as a unit without a dimension
    if (math.isUnit(value) && value.dimensions.every((d: number) => d === 0)) return value.toSI().toNumeric() as number
    throw new TypeError(`expected a plain number, got ${String(value)}`)
  }
  if (!math.isUnit(value)) {
    if (value === 0) return -mathOffset(kind)
    throw new TypeError(`expected a value in ${unit}, got ${String(value)}`)
  }
  return (value as Unit).toNumber(unit) - mathOffset(kind)
}

function shownValue(kind: Kind | "number", value: number | readonly number[]): string {
  if (typeof value === "number") return displayNumber({ kind }, value, DIGITS)
  const list = value.slice(0, 6).map((v) => displayNumber({ kind }, v, DIGITS))
  return `[${list.join(", ")}${value.length > 6 ? ", …" : ""}]`
}

const relative = (left: number, right: number) => (left === right ? 0 : Math.abs(left - right) / Math.max(Math.abs(left), Math.abs(right)))

const textOf = (source: Source | undefined) => (source === undefined ? null : citation(source))

/**
 * Evaluates a solver's formula texts with units through mathjs, independently of its kernel.
 *
 * @param solver - any solver of the library
 * @param input - its input, as for a normal call
 * @returns the steps: meaning, symbol, formula, numbers put in, value, source and TeX
 * @throws InputError and NoSolutionError as the solver itself does
 */
export function working<In, Out extends object>(solver: Solver<In, Out>, input: In): Working {
  const si = solver.read(input)
  return workingOfSi(solver, si)
}

/** As {@link working}, for an input already in SI. */
export function workingOfSi<In, Out extends object>(solver: Solver<In, Out>, si: SiOf<In>): Working {
  const trace = {}
  const out = solver.si(si, trace)
  if (isNoSolution(out)) throw new NoSolutionError((solver as { name?: string }).name ?? "", out)
  const inputs = collect(solver.input as unknown as AnyFields, si as Record<string, unknown>)
  const outputs = collect(solver.output as unknown as AnyOutFields, out as Record<string, unknown>)
  const scope: Scope = new Map()
  conditions(solver.input as unknown as AnyFields, si as Record<string, unknown>, scope)
  const known = new Map<string, Operand>()
  const values: Record<string, number | readonly number[]> = {}
  const steps: WorkedStep[] = []

  const add = (
    kind: WorkedStep["kind"],
    symbol: string,
    quantity: Kind | "number",
    value: number | readonly number[],
    meaning: string,
    formula = "",
    line: () => Line = () => NO_LINE,
    tex = "",
    source: string | null = null,
    sides = (answers: readonly (number | readonly number[])[]) => answers.map(String).join(" = "),
  ) => {
    // of a formula what its line comes to, of an equation both sides
    const answer = (): number | readonly number[] => {
      const [found] = kind === "formula" ? line().answers : []
      if (found === undefined) return value
      return typeof found === "number" ? found - mathOffset(quantity) : found.map((v) => v - mathOffset(quantity))
    }
    steps.push({
      kind,
      meaning,
      symbol,
      formula,
      // asked for by who reads the working, not by who wants its values
      get numbers() {
        return line().numbers
      },
      get taken() {
        return line().taken
      },
      get operands() {
        return line().operands
      },
      value,
      get shown() {
        return shownValue(quantity, answer())
      },
      get inSi() {
        if (kind === "equation") return sides(line().answers)
        // 273.15 takes five figures
        return inSi({ kind: quantity, value: answer() }, kind === "given" && quantity === "temperature" ? DIGITS + 1 : DIGITS)
      },
      quantity,
      source,
      tex,
    })
    if (!symbol) return
    known.set(symbol, { kind: quantity, value })
    values[symbol] = value
    scope.set(symbol, toMath(quantity, value))
  }
  /** The line of a step, made when it is first read, of what was known when the step was worked. */
  const later = (nodes: readonly MathNode[], answers: readonly (number | readonly number[])[]): (() => Line) => {
    const [then, operands] = [new Map(scope), new Map(known)]
    let made: Line | undefined
    return () => {
      made ??= lineOf(nodes, then, operands, answers)
      return made
    }
  }
  const tex = (node: MathNode) => texOf(node, known)

  for (const { symbol, kind, value, label } of inputs) add("given", symbol, kind, value, label)

  for (const step of solver.formulae as readonly Step<SiOf<In>, Out>[]) {
    if ("when" in step && step.when && !math.evaluate(step.when, scope as never)) continue
    if ("given" in step) {
      add("given", step.symbol, step.kind, step.given(si, out, trace), step.meaning, "", undefined, "", textOf(step.source))
    } else if ("solved" in step) {
      const found = outputs.find((o) => o.symbol === step.solved)
      if (found) add("solved", found.symbol, found.kind, found.value, step.meaning)
    } else if ("left" in step) {
      const [left, right] = [math.parse(step.left), math.parse(step.right)]
      const [l, r] = [left.evaluate(scope as never), right.evaluate(scope as never)] as unknown[]
      const [a, b] =
        math.isUnit(l) && math.isUnit(r)
          ? [l.toSI().toNumeric() as number, (r.to(l.toSI().formatUnits()) as Unit).toSI().toNumeric() as number]
          : [Number(l), Number(r)]
      const unit = math.isUnit(l) ? ` ${asWritten(l.toSI().formatUnits())}` : ""
      add(
        "equation",
        "",
        "number",
        relative(a, b),
        step.meaning,
        `${step.left} = ${step.right}`,
        later([left, right], [a, b]),
        `${tex(left)} = ${tex(right)}`,
        textOf(step.source),
        (answers) => answers.map((side) => `${formatNumber(Number(side), DIGITS)}${unit}`).join(" = "),
      )
    } else {
      const node = math.parse(step.is)
      const kind = step.kind ?? outputKind(solver.output as unknown as AnyOutFields, step.symbol) ?? "number"
      const value = fromMath(kind, node.evaluate(scope as never))
      const answer = typeof value === "number" ? value + mathOffset(kind) : value.map((v) => v + mathOffset(kind))
      add(
        "formula",
        step.symbol,
        kind,
        value,
        step.meaning,
        step.is,
        later([node], [answer]),
        `${symbolTexOf(step.symbol)} = ${tex(node)}`,
        textOf(step.source),
      )
    }
  }
  return { title: solver.title, steps, values }
}

function outputKind(fields: AnyOutFields, symbol: string): Kind | "number" | undefined {
  for (const field of Object.values(fields)) {
    const inner = field.kind === "list" ? field.of : field
    if (inner.kind === "group") {
      const kind = outputKind(inner.fields, symbol)
      if (kind) return kind
    } else if ("symbol" in inner && inner.symbol === symbol) return inner.kind
  }
  return undefined
}
