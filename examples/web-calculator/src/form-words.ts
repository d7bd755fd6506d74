// Words of a form: units, limits and rules as they are read.
import type { AnyFields } from "alula/solver"

/** A rule between fields. */
export interface Rule {
  readonly exactlyOne?: readonly unknown[]
  readonly atMostOne?: readonly unknown[]
  readonly atLeastOne?: readonly unknown[]
  readonly together?: readonly string[]
  readonly given?: string
  readonly needs?: readonly unknown[]
}

/** A unit or a limit as it is read: `mm²` for `mm2`, `°C` for `degC`. */
export function readable(text: string): string {
  return text
    .replace(/(?<=[A-Za-z])[234]/g, (power) => ({ 2: "²", 3: "³", 4: "⁴" })[power as "2"])
    .replace(/\bdeg(?=[CF]\b)/, "°")
    .replace(/\bdeg\b/, "°")
    .replace(/ohm\b/, "Ω")
    .replace(/\bu(?=[A-Za-zΩ])/, "µ")
    .replace(/^-/, "−")
}

/** What a rule between fields asks for. */
export function ruleText(rule: Rule, fields: AnyFields): string {
  const label = (name: unknown): string =>
    Array.isArray(name) ? name.map(label).join(" with ") : (fields[String(name)]?.label ?? String(name))
  const listed = (names: readonly unknown[], last: string) =>
    names.length < 2 ? names.map(label).join("") : `${names.slice(0, -1).map(label).join(", ")} ${last} ${label(names.at(-1))}`
  if (rule.exactlyOne) return `Give one: ${listed(rule.exactlyOne, "or")}.`
  if (rule.atMostOne) return `Give one at most: ${listed(rule.atMostOne, "or")}.`
  if (rule.atLeastOne) return `Give one or more: ${listed(rule.atLeastOne, "or")}.`
  if (rule.together) return `Give all or none: ${listed(rule.together, "and")}.`
  return `${label(rule.given)} counts beside ${listed(rule.needs ?? [], "or")} only.`
}
