/** A point in the plane. */
export interface Point {
  readonly x: number
  readonly y: number
}

type Attributes = Readonly<Record<string, string | number | undefined>>

// what XML forbids, what moves a terminal's cursor, and what turns the direction of the text after it
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const unseen = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|\p{Surrogate}/gu

/** Text without control characters, halves of characters and marks that turn its direction: each is shown as `\ufffd`. */
export function plainText(text: string): string {
  return text.replace(/[\t\n\r]+/g, " ").replace(unseen, "\ufffd")
}

/** Text safe inside XML. */
export function escapeXml(text: string): string {
  return plainText(text).replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`)
}

/** A number for an SVG attribute: at most `decimals` decimals, no `-0`. */
export function svgNumber(value: number, decimals = 3): string {
  return String(Number(value.toFixed(decimals)) || 0)
}

/** One SVG element; number attributes are rounded, undefined ones left out. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const text = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? svgNumber(value) : escapeXml(String(value))}"`)
    .join("")
  return children.length ? `<${name}${text}>${children.join("")}</${name}>` : `<${name}${text}/>`
}

/** A text element. */
export function label(x: number, y: number, text: string, attributes: Attributes = {}): string {
  return element("text", { x, y, ...attributes }, escapeXml(text))
}

/** Path data through points, closed or open. */
export function pathThrough(points: readonly Point[], closed = false): string {
  return points.map((p, i) => `${i ? "L" : "M"}${svgNumber(p.x)} ${svgNumber(p.y)}`).join("") + (closed ? "Z" : "")
}

/** What an SVG picture is called and how large it is. */
export interface Frame {
  /** Accessible name. */
  readonly title: string
  /** Accessible description. */
  readonly description?: string
  /** Size of the drawing in its own units. */
  readonly width: number
  readonly height: number
  /** Physical size, such as `'210mm'`, for pictures that are printed at true scale. */
  readonly physical?: { readonly width: string; readonly height: string }
}

/** A whole SVG picture with an accessible name; safe inside HTML. */
export function svg(frame: Frame, ...children: readonly string[]): string {
  const { title, description, width, height, physical } = frame
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${svgNumber(width)} ${svgNumber(height)}`,
      ...(physical ? { width: physical.width, height: physical.height } : {}),
      role: "img",
      "aria-label": title,
    },
    element("title", {}, escapeXml(title)),
    ...(description ? [element("desc", {}, escapeXml(description))] : []),
    ...children,
  )
}
