// Files and standard input: a document read with every fault at its place, an answer written whole or not at all.
import { existsSync, readFileSync, readSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs"
import { basename, extname } from "node:path"
import { diagnosis, type RigReading } from "../advice/index.js"
import { type Rig, rigWith } from "../rig/index.js"
import { withoutComments } from "../rig/whole/comments.js"
import { InputError } from "../solver/index.js"
import { BadInput } from "./desk.js"
import { offsetOf, placeAt, placesOf } from "./places.js"

const kit = rigWith()

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "this is a folder",
  EACCES: "it may not be opened",
  EPERM: "it may not be opened",
  EROFS: "nothing may be written there",
  ENOTDIR: "its folder does not exist",
  ENOSPC: "there is no room left",
}
/** Why something could not be read or written. */
export const reasonOf = (error: unknown): string => reasons[(error as NodeJS.ErrnoException).code ?? ""] ?? (error as Error).message

/** Name of a document for messages. */
export const named = (file: string): string => (file === "-" ? "standard input" : file)

const NOT_UTF8 = "expected text in UTF-8: save it as such from a plain text editor"

/** Bytes as text: UTF-8, or UTF-16 where its mark says so, as some shells write what is redirected. */
function decoded(bytes: Uint8Array): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "utf-8"
  try {
    return new TextDecoder(wide, { fatal: true }).decode(bytes)
  } catch {
    throw new Error(NOT_UTF8)
  }
}

/** Text of a file, or of standard input where it is `-`. */
function textOf(file: string): string {
  try {
    return decoded(readFileSync(file === "-" ? 0 : file))
  } catch (error) {
    throw new BadInput([`${named(file)}: ${reasonOf(error)}`], [{ path: "", message: reasonOf(error) }])
  }
}

interface Fault {
  readonly path: string
  readonly line: number
  readonly column: number
  readonly message: string
}

function refuse(file: string, faults: readonly Fault[]): never {
  const sorted = [...faults].sort((a, b) => a.line - b.line || a.column - b.column)
  throw new BadInput(
    [
      `${named(file)}: ${faults.length === 1 ? "1 fault" : `${faults.length} faults`}`,
      ...sorted.map(({ line, column, message }) => `  ${line}:${column}  ${message}`),
    ],
    sorted,
  )
}

/** A document from a file, checked; all its faults are told at once with line and column. */
export const documentOf = (file: string): Rig => readAs(file, (value) => kit.read(value as never))

/** Readings from a file, a list of them, checked against the rig they were taken on. */
export const readingsOf = (file: string, rig: Rig): readonly RigReading[] =>
  readAs(file, (readings) => {
    diagnosis.read({ rig, readings: readings as readonly RigReading[] })
    return readings as readonly RigReading[]
  })

/** Next line of standard input, waited for; null at its end. */
export function lineReader(): () => string | null {
  const one = Buffer.alloc(1)
  return () => {
    const bytes: number[] = []
    for (;;) {
      let read = 0
      try {
        read = readSync(0, one, 0, 1, null)
      } catch (error) {
        const { code } = error as NodeJS.ErrnoException
        if (code === "EAGAIN") {
          Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20)
          continue
        }
        if (code !== "EOF") throw error
      }
      if (read === 0) return bytes.length ? Buffer.from(bytes).toString("utf8") : null
      if (one[0] === 10) return Buffer.from(bytes).toString("utf8")
      bytes.push(one[0] as number)
    }
  }
}

/** A file's JSON made into something, faults at their places. */
function readAs<T>(file: string, make: (value: unknown) => T): T {
  const text = textOf(file)
  const bare = withoutComments(text)
  const { places, fault, twice } = placesOf(bare)
  if (fault) refuse(file, [{ path: "", ...placeAt(bare, fault.offset), message: `expected ${fault.expected}` }])
  const double = twice.map(
    ({ path, offset }): Fault => ({ path, ...placeAt(bare, offset), message: `${path}: expected once, it stands here again` }),
  )
  try {
    const made = make(JSON.parse(bare))
    if (double.length) refuse(file, double)
    return made
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const faults = error.issues.map(({ path: whole, message }): Fault => {
      // a file of readings is that list itself
      const path = whole[0] === "readings" ? whole.slice(1) : whole
      return {
        path: path.map((step, i) => (typeof step === "number" ? `[${step}]` : i ? `.${step}` : step)).join(""),
        ...placeAt(bare, offsetOf(places, path)),
        message,
      }
    })
    return refuse(file, [...double, ...faults])
  }
}

/** Name of a document's file without folder and ending. */
export const stemOf = (file: string): string => (file === "-" ? "rig" : basename(file, extname(file)))

/** Whether both names lead to one file. */
export function isSame(one: string, other: string): boolean {
  if (!existsSync(one) || !existsSync(other)) return false
  const [a, b] = [statSync(one, { bigint: true }), statSync(other, { bigint: true })]
  return a.dev === b.dev && a.ino === b.ino
}

/** Writes a file whole: one that is stopped half way leaves none behind. */
export function writeWhole(file: string, text: string, mayReplace: boolean): void {
  if (!mayReplace && existsSync(file)) throw new BadInput([`${file}: it is there already; --force replaces it`])
  const half = `${file}.${process.pid}.part`
  try {
    writeFileSync(half, text)
    renameSync(half, file)
  } catch (error) {
    rmSync(half, { force: true })
    const lacksFolder = (error as NodeJS.ErrnoException).code === "ENOENT"
    throw new BadInput([`${file}: ${lacksFolder ? reasons.ENOTDIR : reasonOf(error)}`])
  }
}
