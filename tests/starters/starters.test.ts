import { describe, expect, it } from "vitest"
import { assessRig, rigWith } from "../../src/rig/index.js"
import { withoutComments } from "../../src/rig/whole/comments.js"
import { starters, starterText } from "../../src/starters/index.js"

const { read } = rigWith()

/** Paths of all numbers and texts of a document, but names and notes. */
function leaves(value: unknown, path = ""): string[] {
  if (typeof value !== "object" || value === null) return [path]
  return Object.entries(value).flatMap(([key, one]) =>
    leaves(one, Array.isArray(value) ? `${path}[${key}]` : path ? `${path}.${key}` : key),
  )
}

const under = (path: string, note: string) => path === note || path.startsWith(`${note}.`) || path.startsWith(`${note}[`)
// names, cross-references, what kind a thing is
const words = /(^|\.)(name|version|note|type|bus|from|limitAction)$/

describe.each(Object.entries(starters))("the starter %s", (_, starter) => {
  const { rig, notes, onPurpose } = starter
  const paths = leaves(rig)

  it("says of every number where it comes from, and notes nothing that is not there", () => {
    const told = Object.keys(notes)
    expect(paths.filter((path) => !words.test(path) && !told.some((note) => under(path, note)))).toEqual([])
    expect(told.filter((note) => !paths.some((path) => under(path, note)))).toEqual([])
    for (const note of [...Object.values(notes), ...Object.values(onPurpose)]) expect(note).toMatch(/^[A-Z].{15,}\.$/)
  })

  it("is read from its commented text as it stands, each note before its part", () => {
    const text = starterText(starter)
    expect(read(text)).toEqual(JSON.parse(JSON.stringify(rig)))
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThan(130)
    for (const note of Object.values(notes)) expect(text.replace(/\n *\/\/ /g, " ")).toContain(note)
  })

  it("can be judged whole, and falls short only where it is meant to", () => {
    const { findings } = assessRig(rig)
    const of = (...verdicts: string[]) => findings.filter((f) => verdicts.includes(f.verdict)).map((f) => `${f.id}: ${f.subject}`)
    expect(of("not enough data", "cannot be judged")).toEqual([])
    expect(of("falls short").sort()).toEqual(Object.keys(onPurpose).sort())
    // a body, a day, a power tree, arms: all of it is looked at
    for (const id of ["holds-unpowered", "spar-strength", "fuse-protects", "load-share", "heat-stress", "contact", "ways", "day-energy"])
      expect(findings.map((f) => f.id)).toContain(id)
  })
})

describe("comments in a document", () => {
  const text = `{ // "a": 1,
  /* two
     lines */ "b": "x // no comment \\" /* nor this */", "c": 2 } // end`
  it("are left out, and nothing moves", () => {
    const bare = withoutComments(text)
    expect(JSON.parse(bare)).toEqual({ b: 'x // no comment " /* nor this */', c: 2 })
    expect(bare.split("\n").map((line) => line.length)).toEqual(text.split("\n").map((line) => line.length))
    expect(bare.indexOf('"c"')).toBe(text.indexOf('"c"'))
  })
  it("that never end leave the text faulty", () => {
    expect(() => JSON.parse(withoutComments('{ "a": 1 } /* and'))).toThrow(SyntaxError)
  })
})
