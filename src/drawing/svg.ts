import { escapeXml } from "./text.js"

/** A point in the plane. */
export interface Point {
  readonly x: number
  readonly y: number
}

type Attributes = Readonly<Record<string, string | number | undefined>>

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
