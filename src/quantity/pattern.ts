import { kinds } from "./kinds.js"
import type { Kind } from "./units-of.js"
import { compounds, wordsFor } from "./words.js"

// no part of a pattern can match one text in two ways, so that a long text is refused in linear time
const DIGITS = String.raw`(\d+(\.\d*)?|\.\d+)([eE][+\-−]?\d+)?`
const VULGAR = "[½¼¾⅓⅔⅛⅜⅝⅞]"
const UNSIGNED = String.raw`(${DIGITS}((\s+\d+)?\s*[/⁄]\s*\d+|\s*${VULGAR})?|${VULGAR})`

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&")

/** A unit, or the same written with other signs (`mm²`, `Ω`, `°C`, `N·m`, `W/(m·K)`). */
function signs(unit: string): string {
  return escaped(unit)
    .replace(/^(.*)\\\/(\w+)\\\/K$/, "$1\\/($2\\/K|\\($2 K\\))")
    .replace(/ohm/g, "(ohm|Ω)")
    .replace(/deg/g, "(deg|°)")
    .replace(/u/g, "[uµμ]") // micro sign and Greek mu
    .replace(/2/g, "[2²]")
    .replace(/3/g, "[3³]")
    .replace(/4/g, "[4⁴]")
    .replace(/ /g, "[ ·]")
}

/** A word, its first letter small or capital. */
function word(text: string): string {
  const [first, rest] = [text.charAt(0), escaped(text.slice(1))]
  return first.toUpperCase() === first ? escaped(first) + rest : `[${first}${first.toUpperCase()}]${rest}`
}

const anyOf = (units: readonly string[]) => [...units.map(signs), ...wordsFor(units).map(word)].join("|")

/** Which amounts a pattern lets through: any, none below zero, or those above it. */
export type Sign = "any" | "not-negative" | "positive"

/** A zero, however it is written. */
const NOUGHT = String.raw`(0+(\.0*)?|\.0+)([eE][+\-−]?\d+)?((\s+0+)?\s*[/⁄]\s*\d+)?`

/** A regular expression (ECMA 262) of the texts that {@link readQuantity} takes for a kind, as far as their sign goes. */
export function quantityPattern(kind: Kind, sign: Sign = "any"): string {
  const units = anyOf(Object.keys(kinds[kind].units))
  const parts = compounds[kind]
  // a text of several amounts may begin with zeros and their units
  const before = parts ? `[\\s+0.a-zA-Z'"′″]*` : "[\\s+0.]*"
  const positive = sign === "positive" ? `(?=${before}[1-9½¼¾⅓⅔⅛⅜⅝⅞])` : ""
  const signs = { any: "[+\\-−]?", "not-negative": `([+]?|[\\-−](?=${NOUGHT}\\s*[^\\s\\d]))`, positive: "[+]?" }[sign]
  const single = `${signs}${UNSIGNED}(?!\\d)\\s*(${units})`
  if (!parts) return `^\\s*${positive}${single}\\s*$`
  const several = parts.map((unit) => `(${UNSIGNED}(?!\\d)\\s*(${anyOf([unit])})\\s*)?`).join("")
  return `^\\s*${positive}(${single}|${sign === "any" ? "[\\-−]?" : ""}(?=[\\d.½¼¾⅓⅔⅛⅜⅝⅞])${several})\\s*$`
}
