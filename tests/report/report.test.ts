import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { escapeXml } from "../../src/drawing/index.js"
import { report } from "../../src/report/index.js"
import { migrate } from "../../src/rig/document/read.js"
import { assess, type RigDocument, readRig, writeRig } from "../../src/rig/index.js"
import { type AnyFields, InputError } from "../../src/solver/index.js"
import { inputs } from "../helpers/arbitrary.js"
import { demo, demoNames } from "../helpers/rigs.js"

describe("report", () => {
  it.each(demoNames)("%s: one self-contained, accessible page and the same in Markdown", (name) => {
    const rig = demo(name)
    const { html, markdown } = report(rig)
    // nothing loaded, nothing run
    expect(html).not.toMatch(/<script|<link|<img|src=|href=|url\(|@import/)
    expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/)
    expect(markdown).not.toMatch(/NaN|undefined|Infinity|\[object/)
    expect(html).toMatch(/^<!doctype html>\n<html lang="en">/)
    expect(html).toContain('name="viewport"')
    expect(html).toContain("@media print")
    const pictures = [...html.matchAll(/<svg[^>]*>/g)]
    expect(pictures.length).toBeGreaterThanOrEqual(1)
    for (const [tag] of pictures) expect(tag).toMatch(/role="img".*aria-label="[^"]+"|aria-label="[^"]+".*role="img"/)
    for (const f of assess(rig).findings) {
      expect(markdown).toContain(f.title)
      expect(html).toContain(`<th scope="row">${escapeXml(f.title)}</th>`)
    }
    // every element that is opened is closed
    for (const tag of ["section", "table", "tbody", "tr", "td", "th", "figure", "figcaption", "svg", "ul", "li", "main", "div", "g"])
      expect((html.match(new RegExp(`<${tag}[ >]`, "g")) ?? []).length, tag).toBe((html.match(new RegExp(`</${tag}>`, "g")) ?? []).length)
  })
  it("shows the pictures the document allows", () => {
    const { html } = report(demo("lantern-moth-cells"))
    for (const title of ["Poses of", "Where the seconds go", "Angle against time", "Pack through the day", "Load, lean and moments"])
      expect(html).toContain(title)
    expect(report({ version: 1, name: "an <idea> & no more" }).html).toContain("an &#60;idea&#62; &#38; no more")
  })
})

describe("the migration path", () => {
  const steps = {
    1: ({ weight, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, mass: weight }),
    2: (doc: Readonly<Record<string, unknown>>) => ({ ...doc, mass: { value: doc.mass } }),
  }
  it("takes a document through every step, in order, and leaves the first untouched", () => {
    const old = Object.freeze({ version: 1, name: "x", weight: "3 kg" })
    expect(migrate(old, 3, steps)).toEqual({ version: 3, name: "x", mass: { value: "3 kg" } })
    expect(migrate({ version: 3, name: "x" }, 3, steps)).toEqual({ version: 3, name: "x" })
  })
  it("refuses what is newer, and a path with a gap", () => {
    expect(() => migrate({ version: 4 }, 3, steps)).toThrow(/newer release/)
    expect(() => migrate({ version: 1 }, 3, { 2: steps[2] })).toThrow(/can be brought to 3/)
  })
})

describe("rig documents", () => {
  it.each(demoNames)("%s survives a round trip unchanged", (name) => {
    const rig = demo(name)
    const text = writeRig(rig)
    expect(readRig(text)).toEqual(rig)
    expect(writeRig(readRig(text))).toBe(text)
  })
  it("random documents survive it too", () => {
    fc.assert(
      fc.property(
        inputs(assess.input as unknown as AnyFields, demo("lantern-moth-cells") as unknown as Record<string, unknown>),
        (input) => {
          if (!assess.attempt(input).ok) return
          expect(readRig(writeRig(input as unknown as RigDocument))).toEqual(JSON.parse(JSON.stringify(input)))
        },
      ),
      { numRuns: 20 },
    )
  })
  it.each([
    ["{", /JSON/],
    ["[]", /an object with version and name/],
    ['{"name":"x"}', /version: expected a whole version number/],
    ['{"version":1}', /name: expected a name/],
    ['{"version":2,"name":"x"}', /written for a newer release/],
    ['{"version":0,"name":"x"}', /whole version number/],
    ['{"version":1,"name":"x","wearr":null}', /did you mean 'wearer'/],
  ] as const)("%s is refused", (text, message) => {
    expect(() => readRig(text)).toThrow(InputError)
    expect(() => readRig(text)).toThrow(message)
  })
})
