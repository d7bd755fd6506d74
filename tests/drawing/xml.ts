/** An element of a document read strictly. */
export interface XmlElement {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly XmlElement[]
  readonly text: string
}

const decoded = (text: string): string => {
  if (/&(?!(#\d+|amp|lt|gt|quot|apos);)/.test(text)) throw new Error(`a bare & in ${text}`)
  const named: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" }
  return text.replace(/&(#(\d+)|\w+);/g, (_, name: string, code?: string) =>
    code ? String.fromCharCode(Number(code)) : (named[name] as string),
  )
}

/** Reads one XML element and all in it; throws where it is not well-formed. Knows no comments, CDATA or doctypes. */
export function readXml(source: string): XmlElement {
  let at = 0
  const fail = (why: string): never => {
    throw new Error(`${why} at ${at}: ${source.slice(at, at + 40)}`)
  }
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const sticky = new RegExp(pattern.source, "y")
    sticky.lastIndex = at
    const match = sticky.exec(source)
    if (match) at = sticky.lastIndex
    return match
  }
  const element = (): XmlElement => {
    const name = (take(/<([A-Za-z][\w:-]*)/) ?? fail("no element"))[1] as string
    const attributes = new Map<string, string>()
    for (let found = take(/\s+([\w:-]+)="([^"<]*)"/); found; found = take(/\s+([\w:-]+)="([^"<]*)"/)) {
      if (attributes.has(found[1] as string)) fail(`attribute ${found[1]} twice`)
      attributes.set(found[1] as string, decoded(found[2] as string))
    }
    if (take(/\/>/)) return { name, attributes, children: [], text: "" }
    if (!take(/>/)) fail("no end of a tag")
    const children: XmlElement[] = []
    let text = ""
    for (;;) {
      text += decoded(take(/[^<]*/)?.[0] ?? "")
      const end = take(/<\/([\w:-]+)>/)
      if (end) return end[1] === name ? { name, attributes, children, text } : fail(`</${end[1]}> closes <${name}>`)
      children.push(element())
    }
  }
  const read = element()
  if (at !== source.length) fail("something after the end")
  return read
}

/** Every element below, itself first. */
export const everyElement = (one: XmlElement): readonly XmlElement[] => [one, ...one.children.flatMap(everyElement)]
