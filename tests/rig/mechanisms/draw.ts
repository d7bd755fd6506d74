// Random document parts of any mechanism, drawn from its field descriptions, in SI.
import { readQuantity } from "../../../src/quantity/index.js"
import { mechanisms } from "../../../src/rig/mechanisms/index.js"
import type { AnyMechanismMember, Mechanism } from "../../../src/rig/mechanisms/mechanism.js"
import { eitherFaults } from "../../../src/solver/either.js"
import type { AnyField, AnyFields, Either } from "../../../src/solver/index.js"
import { isNoSolution } from "../../../src/solver/index.js"

/** Repeatable random numbers (Lehmer, 48271 mod 2³¹ − 1), from 0 to 1. */
export function randomNumbers(seed: number): () => number {
  let state = seed * 7919 + 1
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

/** A document part without its type. */
export type Drawn = Record<string, unknown>

function siOf(field: AnyField, value: unknown): number {
  const si = field.kind === "number" ? value : readQuantity(field.kind as "length", value)
  if (typeof si !== "number") throw new Error(`${field.label}: ${String(value)} cannot be read`)
  return si
}

function drawnValue(field: AnyField, random: () => number): unknown {
  switch (field.kind) {
    case "choice": {
      const options = Object.keys(field.options)
      return options[Math.floor(random() * options.length)]
    }
    case "flag":
      return random() < 0.5
    case "text":
      return "lantern frame".slice(0, field.max)
    case "list": {
      const count = Math.min(field.max, field.min + Math.floor(random() * 3))
      return Array.from({ length: count }, () => drawnValue(field.of, random))
    }
    case "group":
      return drawnFields(field.fields, random)
    case "variant": {
      const types = Object.keys(field.of)
      const type = types[Math.floor(random() * types.length)] as string
      return { type, ...drawnFields(field.of[type]?.fields ?? {}, random) }
    }
    default: {
      const [low, high] = field.typical ?? [field.min ?? field.above, field.max ?? field.below]
      const value = siOf(field, low) + (siOf(field, high) - siOf(field, low)) * random()
      return field.kind === "number" && "whole" in field && field.whole ? Math.round(value) : value
    }
  }
}

function drawnFields(fields: AnyFields, random: () => number): Drawn {
  return Object.fromEntries(
    Object.entries(fields).map(([key, field]) => {
      if (field.default === null && random() < 0.5) return [key, null]
      return [key, drawnValue(field, random)]
    }),
  )
}

/** A mechanism made of a drawn document part. */
export interface DrawnMechanism {
  readonly type: string
  readonly si: Drawn
  readonly mechanism: Mechanism
}

/** Every member whatever its document part. */
export const members: readonly (readonly [string, AnyMechanismMember])[] = Object.entries(mechanisms)

/** Rules between fields that a draw breaks are mended by leaving out and giving null. */
function keepsRules(member: AnyMechanismMember, si: Drawn): boolean {
  const either = (member.either ?? []) as readonly Either[]
  return eitherFaults(either, (name) => si[name] !== undefined && si[name] !== null).length === 0
}

/** `count` mechanisms of a member that stand, and how many draws that took. */
export function drawMechanisms(member: AnyMechanismMember, count: number, seed: number): { found: DrawnMechanism[]; draws: number } {
  const random = randomNumbers(seed)
  const found: DrawnMechanism[] = []
  let draws = 0
  while (found.length < count && draws < 50 * count) {
    draws++
    const si = drawnFields(member.fields, random)
    if (!keepsRules(member, si)) continue
    const part = { type: member.type, ...si } as never
    if (member.check?.(part).length) continue
    const mechanism = member.build(part)
    if (!isNoSolution(mechanism)) found.push({ type: member.type, si, mechanism })
  }
  return { found, draws }
}

/** Coordinates inside a mechanism's range, clear of its ends. */
export function placesIn({ low, high, start }: Mechanism, count: number, random: () => number): number[] {
  const middle = start ?? 0
  const from = Number.isFinite(low) ? low : Math.min(middle - 2, Number.isFinite(high) ? high - 2 : middle)
  const to = Number.isFinite(high) ? high : Math.max(middle + 2, from + 2)
  return Array.from({ length: count }, () => from + (to - from) * (0.05 + 0.9 * random()))
}
