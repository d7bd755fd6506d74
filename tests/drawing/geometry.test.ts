import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { extent, lineChart, stepChart, svg, textChart } from "../../src/drawing/index.js"
import { everyElement, readXml, type XmlElement } from "./xml.js"

const partsOf = (picture: string) => everyElement(readXml(picture))
const numberOf = (e: XmlElement | undefined, name: string) => Number(e?.attributes.get(name))
const close = (a: number, b: number, by = 0.06) => expect(Math.abs(a - b), `${a} against ${b}`).toBeLessThanOrEqual(by)

interface Drawn {
  readonly lines: readonly {
    readonly d: string
    readonly stroke: string
    readonly dash: string | undefined
    readonly at: readonly (readonly number[])[]
  }[]
  readonly samples: Drawn["lines"]
  readonly rows: readonly number[]
  readonly columns: readonly number[]
  readonly frame: readonly number[]
  readonly texts: readonly XmlElement[]
}

/** What a line chart drew: series, samples of the key, grid lines, axes, texts. */
function drawn(picture: string): Drawn {
  const all = partsOf(picture)
  const paths = all.filter((e) => e.name === "path")
  const thick = paths
    .filter((e) => e.attributes.get("stroke-width") === "2")
    .map((e) => {
      const d = e.attributes.get("d") as string
      const at = [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])])
      return { d, at, stroke: e.attributes.get("stroke") as string, dash: e.attributes.get("stroke-dasharray") }
    })
  const grid = (shape: RegExp) =>
    paths.flatMap((e) => {
      const found = shape.exec(e.attributes.get("d") as string)
      return found && e.attributes.get("fill") !== "none" ? [Number(found[1])] : []
    })
  const axes = paths.find((e) => e.attributes.get("stroke-opacity") === "0.6")?.attributes.get("d") as string
  return {
    lines: thick.filter((l) => !/h\d/.test(l.d)),
    samples: thick.filter((l) => /h\d/.test(l.d)),
    rows: grid(/^M[\d.]+ ([\d.]+)H[\d.]+$/),
    columns: grid(/^M([\d.]+) [\d.]+V[\d.]+$/),
    frame: (/^M([\d.]+) ([\d.]+)V([\d.]+)H([\d.]+)$/.exec(axes) as RegExpExecArray).slice(1).map(Number),
    texts: all.filter((e) => e.name === "text"),
  }
}

const values = fc.integer({ min: -50_000, max: 50_000 }).map((v) => v / 100)
const charts = fc.record({
  points: fc.array(fc.record({ x: values, y: values }), { minLength: 2, maxLength: 8 }),
  width: fc.integer({ min: 300, max: 900 }),
  height: fc.integer({ min: 160, max: 600 }),
  up: fc.boolean(),
})

describe("lineChart's geometry", () => {
  it("draws every point where its grid lines and their numbers say it is", () => {
    fc.assert(
      fc.property(charts, ({ points: any, width, height, up }) => {
        const points = up ? any.map((p) => ({ x: p.x, y: Math.abs(p.y) })) : any
        const picture = drawn(lineChart({ title: "t", x: "along", y: "up", series: [{ label: "a", points }], width, height }))
        const [left, top, bottom, right] = picture.frame as [number, number, number, number]
        // the plot fills the picture but for its margins: numbers left and below, headings above
        expect([left > 40, right < width, top > 38, bottom < height - 30]).toEqual([true, true, true, true])
        expect([left < 70, right > width - 30, top < 60, bottom > height - 60]).toEqual([true, true, true, true])
        const xs = points.map((p) => p.x)
        const ys = points.map((p) => p.y)
        const wide = Math.min(...xs) === Math.max(...xs) ? [xs[0]! - 0.5, xs[0]! + 0.5] : [Math.min(...xs), Math.max(...xs)]
        // from nought up where nothing lies below it
        const low = Math.min(...ys, ...(Math.min(...ys) >= 0 ? [0] : []))
        const tall = low === Math.max(...ys) ? [low - 0.5, low + 0.5] : [low, Math.max(...ys)]
        const x = (v: number) => left + ((v - wide[0]!) / (wide[1]! - wide[0]!)) * (right - left)
        const y = (v: number) => bottom - ((v - tall[0]!) / (tall[1]! - tall[0]!)) * (bottom - top)
        const line = picture.lines[0]!
        expect(line.at).toHaveLength(points.length)
        line.at.forEach(([px, py], i) => {
          close(px as number, x(points[i]!.x), 0.002)
          close(py as number, y(points[i]!.y), 0.002)
        })
        const numbered = (anchor: string) =>
          picture.texts.filter((e) => e.attributes.get("text-anchor") === anchor && e.text !== "" && Number.isFinite(Number(e.text)))
        const down = numbered("end")
        const across = numbered("middle")
        expect([down.length, across.length]).toEqual([picture.rows.length, picture.columns.length])
        expect(Math.min(down.length, across.length)).toBeGreaterThanOrEqual(1)
        down.forEach((e, i) => {
          close(picture.rows[i]!, y(Number(e.text)))
          // its middle on the line, its end left of the axis
          close(numberOf(e, "y"), picture.rows[i]! + 4, 0.1)
          close(numberOf(e, "x"), left - 6)
        })
        across.forEach((e, i) => {
          close(picture.columns[i]!, x(Number(e.text)))
          close(numberOf(e, "x"), picture.columns[i]!)
          expect(numberOf(e, "y")).toBeGreaterThan(bottom + 12)
          expect(numberOf(e, "y")).toBeLessThan(height - 20)
        })
        const name = (text: string) => picture.texts.find((e) => e.text === text)
        close(numberOf(name("along"), "x"), (left + right) / 2)
        expect(numberOf(name("along"), "y")).toBeGreaterThan(height - 14)
        expect(numberOf(name("along"), "y")).toBeLessThan(height)
        const turned = /^translate\(([\d.]+) ([\d.]+)\) rotate\(-90\)$/.exec(name("up")?.attributes.get("transform") as string)!
        close(Number(turned[2]), (top + bottom) / 2)
        expect(Number(turned[1])).toBeGreaterThan(9)
        expect(Number(turned[1])).toBeLessThan(20)
        expect(numberOf(name("t"), "y")).toBeLessThan(30)
        expect(picture.samples).toHaveLength(0)
      }),
      { numRuns: 80, seed: 61 },
    )
  })

  it("is 560 by 300 unless told", () => {
    const root = readXml(lineChart({ title: "t", x: "x", y: "y", series: [] }))
    expect(root.attributes.get("viewBox")).toBe("0 0 560 300")
    expect(root.attributes.has("width")).toBe(false)
  })

  it.each([2, 3, 4, 6])("keys %i series: a sample in each one's stroke, then its name, side by side above the plot", (count) => {
    const series = Array.from({ length: count }, (_, i) => ({
      label: `s${i}`,
      points: [
        { x: 0, y: i },
        { x: 1, y: i + 1 },
      ],
    }))
    const { lines, samples, texts, frame } = drawn(lineChart({ title: "t", x: "x", y: "y", series }))
    const [left, top, , right] = frame as [number, number, number, number]
    expect(samples.map((s) => [s.stroke, s.dash])).toEqual(lines.map((l) => [l.stroke, l.dash]))
    // four strokes, told apart by dash alone, then round again
    expect(new Set(lines.map((l) => l.dash ?? "solid")).size).toBe(Math.min(count, 4))
    expect(new Set(lines.map((l) => l.stroke)).size).toBe(Math.min(count, 4))
    const share = (right - left) / Math.max(count, 3)
    samples.forEach((s, i) => {
      const [, x, y, long] = /^M([\d.]+) ([\d.]+)h([\d.]+)$/.exec(s.d)!.map(Number) as [number, number, number, number]
      close(x, left + i * share)
      const name = texts.find((e) => e.text === `s${i}`)
      expect(numberOf(name, "x")).toBeGreaterThan(x + long + 3)
      expect(numberOf(name, "x")).toBeLessThan(x + long + 10)
      expect(long).toBeGreaterThan(20)
      // the sample at the middle of the small letters, all of it clear of title and plot
      close(numberOf(name, "y") - y, 4)
      expect(numberOf(name, "y")).toBeLessThan(top - 4)
      expect(y).toBeGreaterThan(26)
    })
  })
})

describe("stepChart's geometry", () => {
  const show = (value: number) => `${value.toFixed(1)} N`
  const added = fc.array(fc.double({ min: -4, max: 9, noNaN: true }), { minLength: 1, maxLength: 6 })
  it("draws each bar from the last total to its own, all at one scale", () => {
    fc.assert(
      fc.property(added, fc.integer({ min: 300, max: 800 }), (steps, width) => {
        let total = 0
        const list = steps.map((step, i) => {
          const by = i === 0 ? Math.abs(step) + 5 : step
          total += by
          return { label: `step ${i}`, added: by, total }
        })
        if (list.some((s) => s.total < 0)) return
        const picture = stepChart("title", list, show, width)
        const root = readXml(picture)
        const all = everyElement(root)
        const [, , w, h] = (root.attributes.get("viewBox") as string).split(" ").map(Number) as [number, number, number, number]
        expect(w).toBe(width)
        const bars = all.filter((e) => e.name === "rect")
        const texts = all.filter((e) => e.name === "text")
        const most = Math.max(...list.flatMap((s) => [s.total, s.total - s.added]))
        const x = (v: number) => 12 + (v / most) * (width - 70 - 12)
        list.forEach((s, i) => {
          const bar = bars[i]!
          const [from, to] = [x(s.total - s.added), x(s.total)]
          close(numberOf(bar, "x"), Math.min(from, to), 0.002)
          // a bar of next to nothing is still seen
          close(numberOf(bar, "width"), Math.max(1.5, Math.abs(to - from)), 0.002)
          const name = texts.find((e) => e.text === s.label)!
          const size = texts[2 * i + 2]!
          const sign = i === 0 || s.added === 0 ? "" : s.added > 0 ? "+" : "−"
          expect(size.text).toBe(`${sign}${show(Math.abs(s.added))}`)
          // the name above its bar, the size behind it on its line, row under row
          const [topOf, tall] = [numberOf(bar, "y"), numberOf(bar, "height")]
          expect(numberOf(name, "y")).toBeLessThan(topOf)
          expect(numberOf(name, "y")).toBeGreaterThan(topOf - 8)
          close(numberOf(name, "x"), 12)
          close(numberOf(size, "x"), Math.max(from, to) + 6)
          expect(numberOf(size, "y")).toBeGreaterThan(topOf + tall / 2)
          expect(numberOf(size, "y")).toBeLessThanOrEqual(topOf + tall)
          if (i > 0) close(topOf - numberOf(bars[i - 1], "y"), 34)
          else expect(topOf).toBeGreaterThan(40)
          const colours = [bars[0]!.attributes.get("fill"), "#c2571a", "#2b8a63"]
          expect(bar.attributes.get("fill")).toBe(i === 0 ? colours[0] : s.added >= 0 ? colours[1] : colours[2])
        })
        const last = texts.at(-1)!
        expect(last.text).toBe(`${show(total)} in all`)
        expect(numberOf(last, "y")).toBeLessThan(h - 4)
        expect(numberOf(last, "y")).toBeGreaterThan(numberOf(bars.at(-1), "y") + numberOf(bars.at(-1), "height") + 10)
        expect(h).toBeLessThan(34 * list.length + 80)
        expect(all.find((e) => e.name === "desc")?.text).toBe(list.map((s) => `${s.label}: ${show(s.total)}`).join("; "))
      }),
      { numRuns: 80, seed: 62 },
    )
  })
  it("of nothing is a picture of nothing, 560 wide", () => {
    const root = readXml(stepChart("t", [], show))
    expect(root.attributes.get("viewBox")).toMatch(/^0 0 560 /)
    expect(everyElement(root).some((e) => e.text === "0.0 N in all")).toBe(true)
    const zero = everyElement(readXml(stepChart("t", [{ label: "a", added: 0, total: 0 }], show))).find((e) => e.name === "rect")
    expect(numberOf(zero, "width")).toBe(1.5)
    close(numberOf(zero, "x"), 12)
  })
})

describe("textChart's geometry", () => {
  it("puts every mark in the cell of its point, numbers by their rows and under their columns", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: fc.integer({ min: 50, max: 30_000 }).map((v) => v / 100), y: values }), { minLength: 2, maxLength: 8 }),
        fc.integer({ min: 24, max: 80 }),
        fc.integer({ min: 6, max: 20 }),
        (points, columns, rows) => {
          const lines = textChart([{ label: "a", points }], { x: "along", y: "up" }, columns, rows).split("\n")
          const body = lines.slice(1, rows + 1)
          const margin = body[0]!.indexOf("┤") + 1
          const [low, high] = extent(points.map((p) => p.y))
          const far = Math.max(...points.map((p) => p.x))
          // the horizontal axis starts at nought
          const column = (v: number) => Math.round((v / far) * (columns - 1))
          const row = (v: number) => Math.round(((high - v) / (high - low)) * (rows - 1))
          const cells = new Set(points.map((p) => `${row(p.y)} ${column(p.x)}`))
          const marks = new Set(body.flatMap((l, r) => [...l.slice(margin)].flatMap((c, k) => (c === "●" ? [`${r} ${k}`] : []))))
          expect([...marks].sort()).toEqual([...cells].sort())
          body.forEach((l, r) => {
            const number = l.slice(0, margin - 1).trim()
            if (number !== "") expect(row(Number(number))).toBe(r)
          })
          expect(body.filter((l) => l.slice(0, margin - 1).trim() !== "").length).toBeGreaterThanOrEqual(1)
          expect(lines[rows + 1]).toBe(`${" ".repeat(margin - 1)}└${"─".repeat(columns)}`)
          const below = lines[rows + 2] as string
          expect(below.endsWith("  along")).toBe(true)
          for (const found of below.slice(0, -"  along".length).matchAll(/\S+/g))
            expect(column(Number(found[0]))).toBe((found.index as number) - margin)
        },
      ),
      { numRuns: 100, seed: 63 },
    )
  })
  it("is 64 by 14 unless told, with a mark of its own for each of four series", () => {
    const series = [0, 1, 2, 3, 4].map((i) => ({ label: `s${i}`, points: [{ x: i + 1, y: i }] }))
    const lines = textChart(series, { x: "x", y: "y" }).split("\n")
    expect(lines.filter((l) => l.includes("┤"))).toHaveLength(14)
    expect(lines.find((l) => l.includes("└"))?.match(/─/g)).toHaveLength(64)
    expect(lines.at(-1)).toBe("● s0   ○ s1   + s2   × s3   ● s4")
    expect(textChart(series.slice(0, 1), { x: "x", y: "y" })).not.toContain("s0")
  })
})

describe("svg's frame", () => {
  it("has a physical size and a description only where they are given", () => {
    const bare = readXml(svg({ title: "t", width: 1 / 3, height: 2 }))
    expect([bare.attributes.get("viewBox"), bare.attributes.has("width"), bare.children.map((c) => c.name)]).toEqual([
      "0 0 0.333 2",
      false,
      ["title"],
    ])
    const full = readXml(svg({ title: "t", description: "d", width: 1, height: 2, physical: { width: "1mm", height: "2mm" } }))
    expect([full.attributes.get("height"), full.children.map((c) => c.name)]).toEqual(["2mm", ["title", "desc"]])
  })
})
