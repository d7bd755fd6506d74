/** Where a figure or a rule comes from, in the one form that code, docs and results share. */
export interface Source {
  readonly title: string
  /** Author or body. */
  readonly by?: string
  /** Edition or year. */
  readonly edition?: string
  /** Clause, table, equation, page. */
  readonly where?: string
  /** Whether the figures used were compared with the document, or with a page that quotes it; `practice`: a fact of the trade without a document. */
  readonly verified: "seen" | "not-seen" | "practice"
  /** Day the document was last read (`2026-11-28`), for rules that change: transport, access, exposure. */
  readonly read?: string
}

/** A fact of the trade that no document is named for. */
export const commonPractice: Source = { title: "common practice, no source", verified: "practice" }

/** A source as it is printed: body, title, edition, place; with what a reader should know of how far it was checked. */
export function citation(source: Source): string {
  const { title, by, edition, where, verified, read } = source
  const notes = [verified === "not-seen" ? "not verified against the document" : "", read ? `read ${read}` : ""].filter(Boolean)
  return [by ? `${by}: ${title}` : title, edition, where].filter(Boolean).join(", ") + (notes.length ? ` (${notes.join("; ")})` : "")
}

/** The same publication, at another place in it. */
export const at = (source: Source, where: string): Source => ({ ...source, where })
