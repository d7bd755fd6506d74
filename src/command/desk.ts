// What a command works with: where it reads, where it writes, and how it looks.
import { plainText } from "../drawing/index.js"

/** Exit codes. */
export const EXIT = { ok: 0, short: 1, bad: 2, refused: 3, interrupted: 130 } as const

/** What is wrong with a command line, a file or a document: told on standard error, exit code 2. */
export class BadInput extends Error {
  constructor(
    readonly lines: readonly string[],
    /** The same as data, for --json. */
    readonly faults: readonly object[] = [],
  ) {
    super(lines.join("\n"))
  }
}

/** The process's ends, as far as a command needs them. */
export interface Desk {
  out(text: string): void
  err(text: string): void
  /** Whether standard output is a terminal that shows colour. */
  readonly colour: boolean
  /** Whether somebody watches standard error: progress is told there. */
  readonly watched: boolean
  /** Columns to wrap at; null where lines stay whole, as in a pipe. */
  readonly columns: number | null
}

/** The parts of a process that decide how a command looks. */
export interface Ends {
  readonly env: Readonly<Record<string, string | undefined>>
  readonly stdout: { readonly isTTY?: boolean; readonly columns?: number; write(text: string): unknown }
  readonly stderr: { readonly isTTY?: boolean; write(text: string): unknown }
}

/** The desk of a process: colour and wrapped lines only on a terminal, and no colour where none is wanted. */
export const deskOf = ({ env, stdout, stderr }: Ends): Desk => ({
  out: (text) => void stdout.write(text),
  err: (text) => void stderr.write(text),
  colour: stdout.isTTY === true && !env.NO_COLOR && env.TERM !== "dumb",
  watched: stderr.isTTY === true && env.TERM !== "dumb",
  columns: stdout.isTTY ? Math.min(stdout.columns || 80, 120) : null,
})

const codes = { bold: [1, 22], red: [31, 39], yellow: [33, 39], green: [32, 39], quiet: [2, 22] } as const
/** A look on a terminal. */
export type Look = keyof typeof codes

/** Text in a look, where the terminal shows it. */
export const looks = ({ colour }: Pick<Desk, "colour">, look: Look, text: string): string =>
  colour ? `\u001b[${codes[look][0]}m${text}\u001b[${codes[look][1]}m` : text

/** Text broken into lines of so many columns, all but the first indented. */
export function wrapped(text: string, columns: number | null, indent: string): string {
  const words = plainText(text).split(" ")
  if (columns === null) return words.join(" ")
  const lines: string[] = []
  let line = ""
  for (const word of words) {
    if (line && line.length + word.length + 1 > Math.max(20, columns - indent.length)) {
      lines.push(line)
      line = ""
    }
    line += line ? ` ${word}` : word
  }
  return [...lines, line].join(`\n${indent}`)
}

/** Rows in columns: the first left, numbers and all others too, two blanks between. */
export function columnsOf(rows: readonly (readonly string[])[], indent = "", rightFrom = Number.POSITIVE_INFINITY): string[] {
  const clean = rows.map((row) => row.map(plainText))
  const widths = clean.reduce<number[]>((most, row) => row.map((cell, i) => Math.max(most[i] ?? 0, cell.length)), [])
  return clean.map((row) =>
    `${indent}${row.map((cell, i) => (i >= rightFrom ? cell.padStart(widths[i] as number) : cell.padEnd(widths[i] as number))).join("  ")}`.trimEnd(),
  )
}
