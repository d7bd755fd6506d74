// Where in a text each part of a document stands, so that a fault is told with its line and column.

/** A place in a text; both count from 1. */
export interface Place {
  readonly line: number
  readonly column: number
}

/** A text read: where each path stands, or where the text stops being a document. */
export interface Read {
  readonly places: ReadonlyMap<string, number>
  /** What is wrong with the text itself; null where it can be read. */
  readonly fault: { readonly offset: number; readonly expected: string } | null
  /** Names that stand twice in one part: the second would silently replace the first. */
  readonly twice: readonly { readonly path: string; readonly offset: number }[]
}

/** Line and column of an offset. */
export function placeAt(text: string, offset: number): Place {
  const before = text.slice(0, offset).split(/\r\n|\n|\r/)
  return { line: before.length, column: (before.at(-1) as string).length + 1 }
}

class Unread extends Error {
  constructor(
    readonly offset: number,
    readonly expected: string,
  ) {
    super(expected)
  }
}

const space = /[ \t\n\r]*/y
const plain = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?|true|false|null/y
const VALUES = "a text in double quotes, a number, true, false, null, { or ["
/** Parts within parts: deeper than any document, and shallow enough for the stack. */
const DEEPEST = 100

/** Reads JSON text (its comments blanked already) for its places alone. */
export function placesOf(text: string): Read {
  const places = new Map<string, number>()
  const twice: { path: string; offset: number }[] = []
  let at = 0
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at
    const found = pattern.exec(text)
    if (!found) return null
    at += found[0].length
    return found[0]
  }
  const skip = () => void take(space)
  /** What stands here and only looks like what belongs here, as it comes from a word processor or a web page. */
  const lookalike = () => {
    const sign = text[at] ?? ""
    if (/['‘’‚“”„«»″]/.test(sign)) return `; ${sign} is no straight double quote "`
    return /\s/.test(sign) ? "; the blank here is no plain one: type it anew" : ""
  }
  /** A text in double quotes, if one stands here and is sound. */
  const takeText = (): string | null => {
    if (text[at] !== '"') return null
    let end = at + 1
    while (end < text.length && text[end] !== '"' && text.charCodeAt(end) >= 32) end += text[end] === "\\" ? 2 : 1
    try {
      const value = JSON.parse(text.slice(at, end + 1)) as string
      at = end + 1
      return value
    } catch {
      return null
    }
  }
  const next = (sign: string, expected: string) => {
    skip()
    if (text[at] !== sign) throw new Unread(at, expected)
    at++
  }
  const part = (close: string, path: string, one: () => void) => {
    at++
    skip()
    if (text[at] === close) {
      at++
      return
    }
    for (;;) {
      one()
      skip()
      if (text[at] === close) break
      next(",", `a comma, or ${close} at the end of ${path || "the document"}`)
      skip()
      if (text[at] === close) throw new Unread(at, "no comma after the last entry")
    }
    at++
  }
  const value = (path: string, depth: number): void => {
    skip()
    if (!places.has(path)) places.set(path, at)
    if (depth > DEEPEST) throw new Unread(at, "fewer parts within parts")
    if (text[at] === "{") {
      const names = new Set<string>()
      part("}", path, () => {
        skip()
        const from = at
        const name = takeText()
        if (name === null) throw new Unread(at, `a name in double quotes, or } at the end of ${path || "the document"}${lookalike()}`)
        const inner = path ? `${path}.${name}` : name
        if (names.has(name)) twice.push({ path: inner, offset: from })
        names.add(name)
        next(":", `a colon after "${name}"`)
        value(inner, depth + 1)
      })
      return
    }
    if (text[at] === "[") {
      let index = 0
      part("]", path, () => value(`${path}[${index++}]`, depth + 1))
      return
    }
    if (takeText() === null && take(plain) === null)
      throw new Unread(
        at,
        text[at] === '"' ? "a text that is closed on its line, with no lone backslash" : `a value: ${VALUES}${lookalike()}`,
      )
  }
  try {
    value("", 0)
    skip()
    if (at < text.length) throw new Unread(at, "nothing after the document")
  } catch (error) {
    if (!(error instanceof Unread)) throw error
    return { places, fault: { offset: error.offset, expected: error.expected }, twice }
  }
  return { places, fault: null, twice }
}

/** Where a path stands: itself, or the nearest part above it that is there. */
export function offsetOf(places: ReadonlyMap<string, number>, path: readonly (string | number)[]): number {
  for (let length = path.length; length >= 0; length--) {
    const text = path
      .slice(0, length)
      .map((step, i) => (typeof step === "number" ? `[${step}]` : i ? `.${step}` : step))
      .join("")
    const offset = places.get(text)
    if (offset !== undefined) return offset
  }
  return 0
}
