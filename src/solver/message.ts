import { plainText } from "../drawing/index.js"
import { formatNumber, formatQuantity } from "../quantity/index.js"

/** What a message says in numbers and words, by name: numbers in SI. */
export type Values = Readonly<Record<string, number | string>>

/** Names that a template asks for: `"{drop voltage} of {given.voltage voltage}"` asks for `drop` and `given.voltage`. */
export type NamesOf<Template extends string> = string extends Template
  ? string
  : Template extends `${string}{${infer Place}}${infer Rest}`
    ? (Place extends `${infer Name} ${string}` ? Name : Place) | NamesOf<Rest>
    : never

/** The values a template needs: one for every name in it. */
export type ValuesFor<Template extends string> = string extends Template ? Values : Readonly<Record<NamesOf<Template>, number | string>>

function shown(value: number | string, kind: string | undefined, unit: string | undefined): string {
  if (typeof value === "string") return plainText(value)
  return kind === undefined ? formatNumber(value) : formatQuantity(kind as never, value, unit)
}

/**
 * A template with its values put in. A place is `{name}` (a word, or a plain number), `{name kind}` (in the unit a maker
 * would read it in) or `{name kind unit}`: `"{drop voltage}, {dropShare ratio %} of the source"`.
 */
export function fill(template: string, values: Values): string {
  return template.replace(/\{([^{} ]+)(?: ([a-zA-Z]+)(?: ([^{}]+))?)?\}/g, (place, name: string, kind?: string, unit?: string) => {
    const value = Object.hasOwn(values, name) ? values[name] : undefined
    // a template without its value is a fault of ours that must be seen, not printed around
    if (value === undefined) throw new TypeError(`no value for ${place} in "${template}"`)
    return shown(value, kind, unit)
  })
}
