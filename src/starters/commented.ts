// A document as text, with a comment before each part that a note speaks of.
import { plainText } from "../drawing/index.js"
import type { Starter } from "./starter.js"

const WIDTH = 100

/** A note as comment lines. */
function commentLines(note: string, indent: string): string[] {
  const lines: string[] = []
  let line = ""
  for (const word of plainText(note).split(" ")) {
    if (line && indent.length + line.length + word.length > WIDTH) {
      lines.push(line)
      line = ""
    }
    line += line ? ` ${word}` : word
  }
  return [...lines, line].map((one) => `${indent}// ${one}`)
}

const isFlat = (value: unknown): boolean =>
  typeof value !== "object" || value === null || Object.values(value).every((one) => typeof one !== "object" || one === null)

/** One value of the document, its own lines below its first. */
function textOf(value: unknown, path: string, notes: Starter["notes"], indent: string): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value)
  const list = Array.isArray(value)
  const inside = `${indent}  `
  const within = Object.keys(notes).some((place) => place.startsWith(`${path}.`) || place.startsWith(`${path}[`))
  const entries = Object.entries(value).filter(([, one]) => one !== undefined)
  const [open, close] = list ? ["[", "]"] : ["{", "}"]
  if (!entries.length) return `${open}${close}`
  const parts = entries.map(([key, one]) => {
    const place = list ? `${path}[${key}]` : path ? `${path}.${key}` : key
    const note = notes[place]
    return { note, text: `${list ? "" : `${JSON.stringify(key)}: `}${textOf(one, place, notes, inside)}` }
  })
  const line = `${open} ${parts.map((one) => one.text).join(", ")} ${close}`
  // what is short and has nothing noted in it stays on one line
  if (path && !within && isFlat(value) && line.length < WIDTH) return line
  const lines = parts.flatMap(({ note, text }, i) => [
    ...(note ? commentLines(note, inside) : []),
    `${inside}${text}${i < parts.length - 1 ? "," : ""}`,
  ])
  return `${open}\n${lines.join("\n")}\n${indent}${close}`
}

/**
 * A starter's document as text, with comment lines that say where its numbers come from and what to measure first.
 *
 * @param starter - one of the starter rigs
 * @example
 * ```ts
 * import { rigWith } from 'alula/rig'
 * import { starters, starterText } from 'alula/starters'
 * const text = starterText(starters.wings)
 * rigWith().read(text).name // => 'Lamp owl, a pair of wings'
 * ```
 */
export function starterText({ rig, notes, onPurpose }: Starter): string {
  const short = Object.values(onPurpose)
  return `${[
    ...commentLines("Everything here is invented or typical: nothing of it is a part that you have. Quantities are texts with a unit.", ""),
    ...(short.length ? commentLines(`Falls short on purpose: ${short.join(" ")}`, "") : []),
    textOf(rig, "", notes, ""),
  ].join("\n")}\n`
}
