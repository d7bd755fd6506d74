// Fields that stand for one another: what may, must and cannot be given together, stated as data beside the fields.
import type { JsonSchema } from "./json.js"

/** One field, or several that count as one and go together. */
export type Alternative<Name extends string = string> = Name | readonly [Name, Name, ...Name[]]

/** A rule between fields that may be left out (default null): each is given or not, whatever its value. */
export type Either<Name extends string = string> =
  | { readonly exactlyOne: readonly Alternative<Name>[] }
  | { readonly atMostOne: readonly Alternative<Name>[] }
  | { readonly atLeastOne: readonly Alternative<Name>[] }
  /** All of them, or none. */
  | { readonly together: readonly Name[] }
  /** A field that says something only beside one of others. */
  | { readonly given: Name; readonly needs: readonly Alternative<Name>[] }

/** What is wrong with the fields given, and each set of fields that would do instead. */
export interface EitherFault {
  readonly name: string
  readonly received: string
  readonly expected: string
  /** Fields to give and fields to leave out, for each way of setting it right. */
  readonly ways: readonly { readonly give: readonly string[]; readonly leave: readonly string[] }[]
}

const membersOf = (alternative: Alternative): readonly string[] => (typeof alternative === "string" ? [alternative] : alternative)
const textOf = (alternative: Alternative) => membersOf(alternative).join(" with ")

function listed(words: readonly string[], last: string): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`
}

/** Every field that a set of rules is about. */
export function namesIn(rules: readonly Either[]): readonly string[] {
  return rules.flatMap((rule) => {
    if ("together" in rule) return rule.together
    if ("given" in rule) return [rule.given, ...rule.needs.flatMap(membersOf)]
    return alternativesOf(rule).flatMap(membersOf)
  })
}

function alternativesOf(rule: Exclude<Either, { together: unknown } | { given: unknown }>): readonly Alternative[] {
  if ("exactlyOne" in rule) return rule.exactlyOne
  return "atMostOne" in rule ? rule.atMostOne : rule.atLeastOne
}

function faultsOf(rule: Either, isGiven: (name: string) => boolean): readonly EitherFault[] {
  if ("together" in rule) return incomplete(rule.together, isGiven)
  if ("given" in rule) {
    const { given, needs } = rule
    if (!isGiven(given) || needs.some((one) => membersOf(one).every(isGiven))) return []
    const ways = [{ give: [], leave: [given] }, ...needs.map((one) => ({ give: membersOf(one), leave: [] }))]
    return [{ name: given, received: `${given} alone`, expected: `${given} only beside ${listed(needs.map(textOf), "or")}`, ways }]
  }
  const all = alternativesOf(rule)
  const touched = all.filter((one) => membersOf(one).some(isGiven))
  const some = () => listed(all.map(textOf), "or")
  const only = (one: Alternative) => ({
    give: membersOf(one),
    leave: all.filter((other) => other !== one).flatMap(membersOf),
  })
  if (touched.length === 0 && !("atMostOne" in rule)) {
    const expected = "atLeastOne" in rule ? `at least one of ${some()}` : all.length === 2 ? `either ${some()}` : `one of ${some()}`
    return [{ name: membersOf(all[0] as Alternative)[0] as string, received: "nothing", expected, ways: all.map(only) }]
  }
  if (touched.length > 1 && !("atLeastOne" in rule)) {
    const given = touched.flatMap(membersOf).filter(isGiven)
    return [
      {
        name: membersOf(touched[1] as Alternative).find(isGiven) as string,
        received: listed(given, "and"),
        expected: all.length === 2 ? `either ${some()}, not both` : `only one of ${some()}`,
        ways: all.map(only),
      },
    ]
  }
  return touched.flatMap((one) => incomplete(membersOf(one), isGiven))
}

/** What is missing of fields that go together. */
function incomplete(names: readonly string[], isGiven: (name: string) => boolean): readonly EitherFault[] {
  const given = names.filter(isGiven)
  if (given.length === 0) return []
  return names
    .filter((name) => !isGiven(name))
    .map((name) => ({
      name,
      received: "nothing",
      expected: `${name} together with ${listed(given, "and")}`,
      ways: [
        { give: names, leave: [] },
        { give: [], leave: names },
      ],
    }))
}

/** Every breach of the rules, each place told once. */
export function eitherFaults(rules: readonly Either[], isGiven: (name: string) => boolean): readonly EitherFault[] {
  const found: EitherFault[] = []
  for (const rule of rules)
    for (const fault of faultsOf(rule, isGiven)) if (!found.some(({ name }) => name === fault.name)) found.push(fault)
  return found
}

/** Whether the rules hold, asked over a set of bits, one for each field they are about: each set is judged once. */
export function eitherHolds(rules: readonly Either[]): {
  readonly bitOf: (name: string) => number
  readonly holds: (given: number) => boolean
} {
  const names = [...new Set(namesIn(rules))]
  // a name that no rule is about has the last bit, which no rule looks at
  const bitOf = (name: string) => 1 << names.indexOf(name)
  const judged = new Map<number, boolean>()
  return {
    bitOf,
    holds: (given) => {
      let known = judged.get(given)
      if (known === undefined) {
        // more than fit into a number are told apart by their faults alone
        known = names.length < 32 && eitherFaults(rules, (name) => (given & bitOf(name)) !== 0).length === 0
        judged.set(given, known)
      }
      return known
    },
  }
}

const present: JsonSchema = { not: { type: "null" } }
const absent: JsonSchema = { type: "null" }

/** Fields given and fields left out, as a schema. */
function givenOnly(give: readonly string[], leave: readonly string[]): JsonSchema {
  return {
    ...(give.length ? { title: listed(give, "and"), required: give } : {}),
    properties: Object.fromEntries([...give.map((name) => [name, present]), ...leave.map((name) => [name, absent])]),
  }
}

function schemaOf(rule: Either): JsonSchema {
  if ("together" in rule) return { oneOf: [givenOnly(rule.together, []), { title: "none of them", ...givenOnly([], rule.together) }] }
  if ("given" in rule)
    return {
      anyOf: [{ title: `no ${rule.given}`, ...givenOnly([], [rule.given]) }, ...rule.needs.map((one) => givenOnly(membersOf(one), []))],
    }
  const all = alternativesOf(rule)
  const names = all.flatMap(membersOf)
  const others = (one: Alternative) => names.filter((name) => !membersOf(one).includes(name))
  if ("exactlyOne" in rule) return { oneOf: all.map((one) => givenOnly(membersOf(one), others(one))) }
  if ("atMostOne" in rule)
    return { oneOf: [...all.map((one) => givenOnly(membersOf(one), others(one))), { title: "none of them", ...givenOnly([], names) }] }
  const whole = all.filter((one) => membersOf(one).length > 1).map((one) => schemaOf({ together: membersOf(one) }))
  return { anyOf: all.map((one) => givenOnly(membersOf(one), [])), ...(whole.length ? { allOf: whole } : {}) }
}

/** The rules as parts of an object's JSON Schema. */
export function eitherSchema(rules: readonly Either[]): JsonSchema {
  const [first, ...rest] = rules.map(schemaOf)
  return first === undefined ? {} : rest.length === 0 ? first : { allOf: [first, ...rest] }
}
