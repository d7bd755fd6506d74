// Elements made in one call.

type Attributes = Readonly<Record<string, string | number | boolean | null | undefined | ((event: Event) => void)>>

/** An element with attributes (functions are listeners, `false` and `null` are left out) and what it holds. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...holds: readonly (Node | string | null)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag)
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue
    if (typeof value === "function") made.addEventListener(name, value)
    else made.setAttribute(name, value === true ? "" : String(value))
  }
  made.append(...holds.filter((one): one is Node | string => one !== null))
  return made
}

let given = 0
/** An id that no other element has. */
export const newId = (): string => `n${++given}`

/** Calls the last one asked for once nobody has asked for a while. */
export function settled(call: () => void, milliseconds: number): () => void {
  let waiting: ReturnType<typeof setTimeout> | undefined
  return () => {
    clearTimeout(waiting)
    waiting = setTimeout(call, milliseconds)
  }
}

/** A figure of the library. */
export interface Drawn {
  readonly svg: string
  readonly alternative: string
}

/** A figure of the library on the page. */
export function pictured({ svg, alternative }: Drawn): HTMLElement {
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement
  return el("figure", {}, document.importNode(drawn, true), el("figcaption", { class: "hint" }, alternative))
}
