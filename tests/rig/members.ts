// Documents of a rig's members, drawn from nothing but their descriptions: a new member is held without a new test.
import { kinds, readQuantity } from "../../src/quantity/index.js"
import { eitherFaults } from "../../src/solver/either.js"
import type { AnyField, AnyFields, Either, Issue, NoSolution } from "../../src/solver/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { readInput } from "../../src/solver/read.js"

interface AnyMember<Built> {
  readonly type: string
  readonly fields: AnyFields
  readonly either?: readonly Either[]
  check?(si: never): readonly Issue[]
  build(si: never): Built | NoSolution
}

export type Random = () => number

/** The same numbers every time, from 0 to 1 (mulberry32); WIDE=1 draws new ones at each run. */
export function seeded(seed: number): Random {
  let state = process.env.WIDE ? (Math.random() * 2 ** 32) | 0 : seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

export const between = (random: Random, low: number, high: number): number => low + (high - low) * random()
/** As likely in each decade. */
export const spread = (random: Random, low: number, high: number): number => low * (high / low) ** random()

function numberFor(field: Extract<AnyField, { symbol: string }>, random: Random): number {
  const read = (value: unknown): number | undefined =>
    value === undefined ? undefined : field.kind === "number" ? (value as number) : (readQuantity(field.kind, value) as number)
  const [floor, ceiling] = [read(field.min ?? field.above) as number, read(field.max ?? field.below) as number]
  const usual = field.typical && random() < 0.8
  const [low, high] = usual ? [read(field.typical?.[0]) as number, read(field.typical?.[1]) as number] : [floor, ceiling]
  const drawn =
    low > 0 ? spread(random, low, high) : low < 0 ? between(random, low, high) : random() < 0.2 ? 0 : spread(random, high * 1e-4, high)
  const whole = field.kind === "number" && "whole" in field && field.whole ? Math.round(drawn) : drawn
  return Math.min(ceiling, Math.max(floor, whole))
}

function valueFor(field: AnyField, random: Random): unknown {
  const pick = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)] as T
  switch (field.kind) {
    case "choice":
      return pick(Object.keys(field.options))
    case "flag":
      return random() < 0.5
    case "text":
      return "part".padEnd(field.min, "s").slice(0, field.max)
    case "list":
      return Array.from({ length: field.min + Math.floor(random() * Math.min(4, field.max - field.min + 1)) }, () =>
        valueFor(field.of, random),
      )
    case "group":
      return documentOf(field.fields, field.either ?? [], random)
    case "variant": {
      const type = pick(Object.keys(field.of))
      const member = field.of[type] as { fields: AnyFields; either?: readonly Either[] }
      return { type, ...documentOf(member.fields, member.either ?? [], random) }
    }
    default:
      return numberFor(field as Extract<AnyField, { symbol: string }>, random)
  }
}

function documentOf(fields: AnyFields, either: readonly Either[], random: Random): Record<string, unknown> {
  const drawn: Record<string, unknown> = {}
  for (const [key, field] of Object.entries(fields)) if (field.default === undefined || random() < 0.5) drawn[key] = valueFor(field, random)
  for (let tries = 0; tries < 12; tries++) {
    const [fault] = eitherFaults(either, (name) => drawn[name] !== undefined && drawn[name] !== null)
    if (!fault) break
    const way = fault.ways[Math.floor(random() * fault.ways.length)] as (typeof fault.ways)[number]
    for (const name of way.give) drawn[name] ??= valueFor(fields[name] as AnyField, random)
    for (const name of way.leave) delete drawn[name]
  }
  return drawn
}

/** A member's document read into SI, its defaults filled; faults instead where it has any. */
export function readMember<Built>(member: AnyMember<Built>, document: object): { si: never; issues: readonly Issue[] } {
  const read = readInput(member.fields, document, member.either ?? [])
  if (!read.ok) return { si: undefined as never, issues: read.issues }
  const si = { type: member.type, ...(read.si as object) } as never
  return { si, issues: member.check?.(si) ?? [] }
}

/** A member built from a document that is known to be right. */
export function built<Built>(member: AnyMember<Built>, document: object): Built {
  const { si, issues } = readMember(member, document)
  if (issues.length) throw new Error(issues.map((one) => `${one.path.join(".")}: ${one.received}, ${one.expected}`).join("; "))
  const made = member.build(si)
  if (isNoSolution(made)) throw new Error(made.message)
  return made
}

export interface Sample<Built> {
  readonly document: Record<string, unknown>
  readonly si: never
  readonly made: Built
}

/** So many of a member that stand: drawn within its limits, without faults, not refused. Fails where hardly any draw stands. */
export function samples<Built>(member: AnyMember<Built>, count: number, random: Random): Sample<Built>[] {
  const found: Sample<Built>[] = []
  for (let tries = 0; found.length < count; tries++) {
    if (tries > 400 * count) throw new Error(`${member.type}: only ${found.length} of ${tries} documents drawn within its limits stand`)
    const document = documentOf(member.fields, member.either ?? [], random)
    const { si, issues } = readMember(member, document)
    if (issues.length) continue
    const made = member.build(si)
    if (!isNoSolution(made)) found.push({ document, si, made })
  }
  return found
}

/** What is wrong with a member's description, whatever it builds: names, labels, limits and units. */
export function descriptionFaults(key: string, member: AnyMember<unknown> & { readonly label: string }): string[] {
  const faults: string[] = []
  if (member.type !== key) faults.push(`stands as ${key} and calls itself ${member.type}`)
  if (!/^[a-z]/.test(member.label)) faults.push(`label '${member.label}'`)
  const within = (fields: AnyFields, path: string): void => {
    for (const [name, field] of Object.entries(fields)) {
      const at = `${path}${name}`
      if (!field.label) faults.push(`${at} has no label`)
      if (field.kind === "group") within(field.fields, `${at}.`)
      else if (field.kind === "variant") for (const [type, one] of Object.entries(field.of)) within(one.fields, `${at}.${type}.`)
      else if (field.kind === "list") within({ "[]": field.of }, at)
      else if ("symbol" in field) {
        if (field.kind !== "number" && !(field.kind in kinds)) faults.push(`${at} is of no kind`)
        if ((field.min ?? field.above) === undefined || (field.max ?? field.below) === undefined) faults.push(`${at} lacks a limit`)
        if (field.above === 0) faults.push(`${at} comes as near to zero as you like`)
      }
    }
  }
  within(member.fields, "")
  return faults
}
