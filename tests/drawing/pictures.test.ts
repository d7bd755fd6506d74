import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { element, escapeXml, label, lineChart, pathThrough, stepChart, svg, svgNumber, textChart } from "../../src/drawing/index.js"
import { everyElement, readXml } from "./xml.js"

const nasty = `"<script>alert('moth & flame')</script>"`
/** Values in seconds, as a caller has them shown. */
const seconds = (value: number) => `${value} s`
const point = fc.record({ x: fc.double({ min: -1e4, max: 1e4, noNaN: true }), y: fc.double({ min: -1e4, max: 1e4, noNaN: true }) })

/** What every picture must be: well-formed, named, described, of numbers only. */
function sound(picture: string, title: string): ReturnType<typeof everyElement> {
  const root = readXml(picture)
  expect(root.name).toBe("svg")
  expect(root.attributes.get("xmlns")).toBe("http://www.w3.org/2000/svg")
  expect(root.attributes.get("role")).toBe("img")
  expect(root.attributes.get("aria-label")).toBe(title)
  expect(root.children[0]).toMatchObject({ name: "title", text: title })
  expect(root.children[1]?.name).toBe("desc")
  expect(root.children[1]?.text.length).toBeGreaterThan(0)
  expect(picture).not.toMatch(/NaN|Infinity|undefined|null|-0[" ]/)
  const all = everyElement(root)
  expect(
    all.map((e) => e.name).filter((name) => !["svg", "title", "desc", "path", "rect", "text", "circle", "g", "line"].includes(name)),
  ).toEqual([])
  return all
}

describe("SVG parts", () => {
  it("escape what a name may hold, in text and in attributes", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const clean = text.replace(/[^\x20-\x7eäöüµΩ°]/g, "")
        const read = readXml(element("text", { "data-name": clean }, escapeXml(clean)))
        expect(read.text).toBe(clean)
        expect(read.attributes.get("data-name")).toBe(clean)
      }),
    )
    expect(label(1, 2, nasty)).not.toContain("<script")
  })
  it.each([
    ["a control character", "moth\u0000\u0008\u001bwing", "moth\ufffd\ufffd\ufffdwing"],
    ["a terminal's colours", "\u001b[31mred", "\ufffd[31mred"],
    ["what turns the direction", "pack\u202eA 5\u2066\u200f\u061c", "pack\ufffdA 5\ufffd\ufffd\ufffd"],
    ["half a character", "\ud83d wing \udc00", "\ufffd wing \ufffd"],
    ["what is no character", "a\ufffe\uffffb\u0085", "a\ufffd\ufffdb\ufffd"],
    ["a new line", "left\r\n\twing", "left wing"],
    ["nothing at all", "größte Öse 🦋 µΩ", "größte Öse 🦋 µΩ"],
  ])("let through no %s, in text, attributes, titles and charts", (_, text, plain) => {
    expect(escapeXml(text)).toBe(plain)
    const root = readXml(element("text", { "data-name": text }, escapeXml(text)))
    expect([root.text, root.attributes.get("data-name")]).toEqual([plain, plain])
    const points = [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
    ]
    const series = [text, "b"].map((label) => ({ label, points }))
    const forbidden = new RegExp(
      `[${["\\u0000-\\u0008", "\\u000b-\\u001f", "\\u007f-\\u009f", "\\u061c", "\\u200e\\u200f", "\\u202a-\\u202e", "\\u2066-\\u2069"].join("")}]`,
    )
    expect(lineChart({ title: text, x: text, y: text, series })).not.toMatch(forbidden)
    expect(stepChart(text, [{ label: text, total: 1, added: 1 }], (v) => `${v} ${text}`)).not.toMatch(forbidden)
    expect(textChart(series, { x: text, y: text })).not.toMatch(forbidden)
  })
  it("escape an axis's name as every other text", () => {
    const chart = lineChart({ title: "t", x: nasty, y: nasty, series: [{ label: nasty, points: [{ x: 0, y: 0 }] }] })
    expect(chart).not.toMatch(/<script|alert\('/)
    expect(everyElement(readXml(chart)).filter((e) => e.text === nasty).length).toBeGreaterThanOrEqual(2)
  })
  it("write numbers short, without -0, and leave out what is not given", () => {
    expect(svgNumber(1 / 3)).toBe("0.333")
    expect(svgNumber(-1e-9)).toBe("0")
    expect(svgNumber(-0)).toBe("0")
    expect(svgNumber(12)).toBe("12")
    expect(element("path", { d: "M0 0", dash: undefined, width: 2.00001 })).toBe('<path d="M0 0" width="2"/>')
  })
  it("draw paths through points, open or closed", () => {
    const points = [
      { x: 0, y: 0 },
      { x: 1.23456, y: -1 },
    ]
    expect(pathThrough(points)).toBe("M0 0L1.235 -1")
    expect(pathThrough(points, true)).toBe("M0 0L1.235 -1Z")
    expect(pathThrough([])).toBe("")
  })
  it("carry true sizes for print", () => {
    const root = readXml(svg({ title: "page", width: 210, height: 297, physical: { width: "210mm", height: "297mm" } }))
    expect([root.attributes.get("width"), root.attributes.get("viewBox")]).toEqual(["210mm", "0 0 210 297"])
  })
})

describe("lineChart", () => {
  const chart = { title: "Force & stroke", x: "stroke, mm", y: "force, N <needed>" }
  it("is well-formed, named and described, with one path a series, told apart without colour", () => {
    const series = ["cells", "bank", "both"].map((name, i) => ({ label: name, points: [0, 1, 2].map((x) => ({ x, y: x * (i + 1) })) }))
    const all = sound(lineChart({ ...chart, series }), chart.title)
    const lines = all.filter((e) => e.name === "path" && e.attributes.get("stroke-width") === "2" && e.attributes.get("fill") === "none")
    expect(lines).toHaveLength(3)
    expect(new Set(lines.map((l) => l.attributes.get("stroke-dasharray") ?? "none")).size).toBe(3)
    const said = all.filter((e) => e.name === "text").map((e) => e.text)
    for (const text of [chart.title, chart.x, chart.y, "cells", "bank", "both"]) expect(said).toContain(text)
    const desc = all.find((e) => e.name === "desc")
    expect(desc?.text).toBe("force, N <needed> over stroke, mm: cells, bank, both")
  })
  it("survives any names and points, one point and none", () => {
    fc.assert(
      fc.property(fc.array(fc.array(point, { maxLength: 5 }), { maxLength: 6 }), (lists) => {
        sound(lineChart({ title: nasty, x: nasty, y: nasty, series: lists.map((points) => ({ label: nasty, points })) }), nasty)
      }),
      { numRuns: 200 },
    )
  })
  it("puts every point inside its frame", () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 9 }), (points) => {
        const all = sound(lineChart({ ...chart, series: [{ label: "a", points }], width: 400, height: 200 }), chart.title)
        const path = all.find((e) => e.attributes.get("stroke-width") === "2")?.attributes.get("d") as string
        const numbers = [...path.matchAll(/[ML](\S+) (\S+?)(?=L|$)/g)].map((m) => [Number(m[1]), Number(m[2])] as const)
        expect(numbers).toHaveLength(points.length)
        for (const [x, y] of numbers) {
          expect(x >= 55.9 && x <= 386.1, `x ${x}`).toBe(true)
          expect(y >= 45.9 && y <= 156.1, `y ${y}`).toBe(true)
        }
      }),
    )
  })
})

describe("stepChart", () => {
  const steps = [
    { label: "no load", total: 6, added: 6 },
    { label: "load", total: 9, added: 3 },
    { label: "lighter arm", total: 8, added: -1 },
    { label: "nothing", total: 8, added: 0 },
  ]
  it("shows each bar with its size and sign, and the total", () => {
    const all = sound(stepChart("Where the time goes", steps, seconds), "Where the time goes")
    expect(all.filter((e) => e.name === "rect")).toHaveLength(4)
    const said = all.filter((e) => e.name === "text").map((e) => e.text)
    for (const text of ["6 s", "+3 s", "−1 s", "0 s", "8 s in all"]) expect(said).toContain(text)
    expect(all.find((e) => e.name === "desc")?.text).toContain("load: 9 s")
  })
  it("starts each bar where the one before ended", () => {
    const bars = sound(stepChart("t", steps, seconds), "t").filter((e) => e.name === "rect")
    const [first, second, third] = bars.map((b) => [Number(b.attributes.get("x")), Number(b.attributes.get("width"))] as const)
    expect(second![0]).toBeCloseTo(first![0] + first![1], 2)
    expect(third![0] + third![1]).toBeCloseTo(second![0] + second![1], 2)
  })
  it("escapes names", () => {
    expect(stepChart(nasty, [{ label: nasty, total: 1, added: 1 }], (v) => `${v} ${nasty}`)).not.toContain("<script")
    sound(
      stepChart(nasty, [{ label: nasty, total: 1, added: 1 }], (v) => `${v} ${nasty}`),
      nasty,
    )
  })
})

describe("textChart", () => {
  const series = [
    { label: "up", points: [0, 1, 2, 3].map((x) => ({ x, y: x })) },
    { label: "down", points: [0, 1, 2, 3].map((x) => ({ x, y: 3 - x })) },
  ]
  it("is rows of marks, axes named, one sort of mark a series", () => {
    const lines = textChart(series, { x: "t, s", y: "h, m" }, 31, 7).split("\n")
    expect(lines[0]).toBe("h, m")
    expect(lines.filter((l) => l.includes("┤"))).toHaveLength(7)
    expect(lines.at(-1)).toBe("● up   ○ down")
    expect(lines.at(-2)).toMatch(/t, s$/)
    // rising from the bottom left to the top right
    expect(lines[1]).toMatch(/●$/)
    expect(lines[7]).toMatch(/^ *0 ┤●/)
    for (const line of lines) expect(line).not.toMatch(/NaN|undefined/)
  })
  it("keeps within its width and height for any points", () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 20 }), (points) => {
        const lines = textChart([{ label: "a", points }], { x: "x", y: "y" }, 40, 9).split("\n")
        const rows = lines.filter((l) => l.includes("┤"))
        expect(rows).toHaveLength(9)
        for (const row of rows) expect(row.split("┤")[1]!.length).toBeLessThanOrEqual(40)
        expect(rows.join("")).toContain("●")
      }),
    )
  })
})
