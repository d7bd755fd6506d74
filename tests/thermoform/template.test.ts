import { describe, expect, it } from "vitest"
import { type BendTemplateInput, bendTemplate, bendTemplatePages, bendTemplateSvg } from "../../src/thermoform/index.js"

/*
 * The drawing read back as a printer's user would measure it: millimetres on paper, y downwards, against the numbers of the result
 * and against a ruler laid on it by hand.
 */

interface Drawn {
  readonly width: number
  readonly height: number
  readonly paths: readonly (readonly (readonly [number, number])[])[]
  readonly lines: readonly { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }[]
  readonly texts: readonly { readonly x: number; readonly y: number; readonly size: number; readonly text: string }[]
  readonly crosses: readonly (readonly [number, number])[]
  readonly shift: readonly [number, number]
}

const attributes = (text: string): Record<string, string> =>
  Object.fromEntries([...text.matchAll(/([a-zA-Z0-9-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value]))
const numbered = (text: string, ...keys: string[]) => keys.map((key) => Number(attributes(text)[key]))

function drawn(svg: string): Drawn {
  const tags = [...svg.matchAll(/<(svg|path|line)([^>]*)>|<text([^>]*)>([^<]*)<\/text>/g)]
  const of = (name: string) => tags.filter(([, tag]) => tag === name).map(([, , rest]) => rest as string)
  const head = of("svg")[0] as string
  const [width, height] = (attributes(head).viewBox as string).split(" ").slice(2).map(Number) as [number, number]
  // the picture's physical size is its own, unit for millimetre
  expect([attributes(head).width, attributes(head).height]).toEqual([`${width}mm`, `${height}mm`])
  const shift = (/translate\(([-\d.]+) ([-\d.]+)\)/.exec(svg)?.slice(1).map(Number) ?? [0, 0]) as [number, number]
  const all = of("path").map((rest) => attributes(rest).d as string)
  return {
    width,
    height,
    paths: all
      .filter((d) => !/h6/.test(d))
      .map((d) => [...d.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const)),
    lines: of("line").map((rest) => {
      const [x1, y1, x2, y2] = numbered(rest, "x1", "y1", "x2", "y2") as [number, number, number, number]
      return { x1, y1, x2, y2 }
    }),
    texts: tags
      .filter(([, tag]) => !tag)
      .map(([, , , rest, text]) => {
        const [x, y, size] = numbered(rest as string, "x", "y", "font-size") as [number, number, number]
        return { x, y, size, text: text as string }
      }),
    // the middle of each cross: its bar begins 3 mm left of it, its post 3 mm above it, and both are 6 mm long
    crosses: all.flatMap((d) => {
      const found = /^M([-\d.]+) ([-\d.]+)h6M([-\d.]+) ([-\d.]+)v6$/.exec(d)?.slice(1).map(Number)
      if (!found) return []
      const [barX, barY, postX, postY] = found as [number, number, number, number]
      expect(barX + 3).toBeCloseTo(postX, 9)
      expect(postY + 3).toBeCloseTo(barY, 9)
      return [[postX, barY] as const]
    }),
    shift,
  }
}

const near = (got: number, wanted: number, what: string) => expect(Math.abs(got - wanted), `${what}: ${got}, ${wanted}`).toBeLessThan(2e-3)

const inputs: Readonly<Record<string, BendTemplateInput>> = {
  "a rib": { shape: "arc", outsideDiameter: "26.7 mm", radius: "420 mm", angle: "75 deg" },
  "a small hook": { shape: "arc", outsideDiameter: "20 mm", radius: "60 mm", angle: "150 deg", springback: 0.08, straightRun: "30 mm" },
  "an edge without straight ends": { shape: "arc", outsideDiameter: "33.4 mm", radius: "300 mm", angle: "40 deg", straightRun: 0 },
  "a curve": {
    shape: "curve",
    outsideDiameter: "20 mm",
    points: [
      { x: 0, y: 0 },
      { x: 0.2, y: 0.12 },
      { x: 0.4, y: 0.16 },
      { x: 0.6, y: 0.1 },
    ],
    side: "right",
  },
}
const cases = Object.entries(inputs)

describe("the drawing of a bend template, measured", () => {
  it.each(cases)("%s: edge and centreline lie where the result says, 12 mm from every side, the foot below", (_, input) => {
    const out = bendTemplate(input)
    const { width, height, paths } = drawn(bendTemplateSvg(input, "rib"))
    const [edge, middle] = paths as [Drawn["paths"][number], Drawn["paths"][number]]
    const all = [...out.edge, ...out.centreline].map((p) => ({ x: p.x * 1000, y: p.y * 1000 }))
    const [right, top] = [Math.max(...all.map((p) => p.x)), Math.max(...all.map((p) => p.y))]
    near(width, Math.max(150, right) + 24, "width")
    near(height, top + 24 + 26, "height")
    for (const [points, path] of [
      [out.edge, edge],
      [out.centreline, middle],
    ] as const) {
      expect(path).toHaveLength(points.length)
      path.forEach(([x, y], i) => {
        near(x, (points[i] as { x: number }).x * 1000 + 12, `x of ${i}`)
        near(y, top - (points[i] as { y: number }).y * 1000 + 12, `y of ${i}`)
      })
    }
  })

  it.each(cases)("%s: a tick crosses edge and centreline where the bend begins and where it ends", (_, input) => {
    const { paths, lines } = drawn(bendTemplateSvg(input, "rib"))
    const [edge, middle] = paths as [Drawn["paths"][number], Drawn["paths"][number]]
    const straight = bendTemplate.read(input).straightRun > 0
    const ends = straight ? [1, edge.length - 2] : [0, edge.length - 1]
    ends.forEach((at, k) => {
      const { x1, y1, x2, y2 } = lines[k] as Drawn["lines"][number]
      const [e, c] = [edge[at] as readonly [number, number], middle[at] as readonly [number, number]]
      near(x1, e[0], "from the edge")
      near(y1, e[1], "from the edge")
      // as far beyond the centreline as the edge lies before it
      near((x1 + x2) / 2, c[0], "through the centreline")
      near((y1 + y2) / 2, c[1], "through the centreline")
    })
  })

  it.each(cases)("%s: a ruler of 100 mm with marks at 0, 50 and 100, in the foot and under no line of the template", (_, input) => {
    const { height, paths, lines, texts } = drawn(bendTemplateSvg(input, "rib"))
    const [bar, ...marks] = lines.slice(2) as Drawn["lines"]
    const base = height - 14
    expect([bar, ...marks].map((l) => (l as Drawn["lines"][number]).x1)).toEqual([12, 12, 62, 112])
    near((bar as Drawn["lines"][number]).x2, 112, "end of the ruler")
    for (const y of [bar?.y1, bar?.y2]) near(y as number, base, "ruler")
    for (const mark of marks) {
      near(mark.x2, mark.x1, "mark upright")
      near(mark.y1, base - 2, "top of a mark")
      near(mark.y2, base + 2, "foot of a mark")
    }
    const lowest = Math.max(...paths.flat().map(([, y]) => y))
    const [heading, figures] = texts.slice(2) as [Drawn["texts"][number], Drawn["texts"][number]]
    // text is 4 mm tall: clear of the template above, of the ruler's marks, and of the paper's edge below
    expect([heading.x, figures.x, heading.size, figures.size]).toEqual([12, 12, 4, 4])
    near(heading.y, base - 4, "heading")
    near(figures.y, base + 7, "figures")
    expect(heading.y - 4).toBeGreaterThan(lowest)
    expect(heading.y).toBeLessThan(base - 2)
    expect(figures.y - 4).toBeGreaterThan(base + 2)
    expect(figures.y).toBeLessThan(height)
  })

  it.each(cases)("%s: its words say the numbers of the result", (_, input) => {
    const [si, out] = [bendTemplate.read(input), bendTemplate(input)]
    const svg = bendTemplateSvg(input, "rib")
    const { texts } = drawn(svg)
    const [mm, deg] = [(v: number) => (1000 * v).toFixed(1), (v: number) => ((v / Math.PI) * 180).toFixed(1)]
    expect(texts.map((t) => t.text)).toEqual([
      "jig",
      "tube",
      "100 mm: measure before cutting. rib",
      `tube ${mm(si.outsideDiameter)} mm, jig ${deg(out.jigTurn)}° for ${deg(out.turn)}°, edge end to end ${mm(out.chord)} mm`,
    ])
    expect(/<desc>([^<]*)<\/desc>/.exec(svg)?.[1]).toBe(
      `Jig edge for a tube of ${mm(si.outsideDiameter)} mm; turns ${deg(out.jigTurn)} degrees, minimum edge radius ${mm(out.minEdgeRadius)} mm.`,
    )
  })

  it.each(cases)("%s: 'jig' stands 4 mm on the wood's side of the edge, 'tube' 4 mm on the tube's", (_, input) => {
    const { paths, texts } = drawn(bendTemplateSvg(input, "rib"))
    const [edge, middle] = paths as [Drawn["paths"][number], Drawn["paths"][number]]
    const i = Math.floor(edge.length / 2)
    const [e, c] = [edge[i] as readonly [number, number], middle[i] as readonly [number, number]]
    const apart = Math.hypot(c[0] - e[0], c[1] - e[1])
    for (const [text, side] of [
      ["jig", -1],
      ["tube", 1],
    ] as const) {
      const at = texts.find((t) => t.text === text) as Drawn["texts"][number]
      expect(at.size).toBe(3)
      // a line of 3 mm letters is set a millimetre low, so that it stands about its place
      near(at.x, e[0] + (side * 4 * (c[0] - e[0])) / apart, text)
      near(at.y, e[1] + (side * 4 * (c[1] - e[1])) / apart + 1, text)
    }
  })
})

describe("the pages of a bend template", () => {
  const papers = [
    {},
    { width: 150, height: 120, overlap: 12 },
    { width: 90, height: 61, overlap: 7 },
    { width: 100, height: 100, overlap: 0 },
    { width: 400, height: 50, overlap: 24.9 },
  ]
  const all = cases.flatMap(([name, input], i) =>
    papers.filter((_, k) => i === 0 || k < 2).map((paper) => [name, JSON.stringify(paper), input, paper] as const),
  )

  it.each(all)("%s on %s: strips meet with their overlap, cover the drawing, and none is blank", (_, __, input, paper) => {
    const { width = 190, height = 277, overlap = 10 } = paper as { width?: number; height?: number; overlap?: number }
    const text = bendTemplateSvg(input, "rib")
    const whole = drawn(text)
    const content = text.slice(text.indexOf("<path"), text.indexOf("</svg>"))
    const svgs = bendTemplatePages(input, "rib", paper)
    const pages = svgs.map(drawn)
    const lefts = [...new Set(pages.map((p) => 0 - p.shift[0]))]
    const tops = [...new Set(pages.map((p) => 0 - p.shift[1]))]
    // row by row, every place once
    expect(pages.map((p) => [0 - p.shift[1], 0 - p.shift[0]])).toEqual(tops.flatMap((y) => lefts.map((x) => [y, x])))
    for (const [starts, size, end] of [
      [lefts, width, whole.width],
      [tops, height, whole.height],
    ] as const) {
      expect(starts[0]).toBeCloseTo(0, 9)
      for (const [i, start] of starts.slice(1).entries()) near((starts[i] as number) + size - start, overlap, "shared strip")
      const last = starts.at(-1) as number
      expect(last + size).toBeGreaterThanOrEqual(end - 2e-3)
      // the page before it ends short of the drawing: not one page too many
      if (starts.length > 1) expect(last + overlap).toBeLessThan(end + 2e-3)
    }
    pages.forEach((page, i) => {
      expect([page.width, page.height]).toEqual([width, height])
      expect(svgs[i]?.includes(content)).toBe(true)
      const [row, column] = [Math.floor(i / lefts.length) + 1, (i % lefts.length) + 1]
      const name = `rib, row ${row} of ${tops.length}, column ${column} of ${lefts.length}`
      expect(svgs[i]).toContain(`<title>${name}</title>`)
      const foot = page.texts.at(-1) as Drawn["texts"][number]
      expect([foot.text, foot.size]).toEqual([name, 3])
      near(foot.x, width / 2, "name in the middle")
      near(foot.y, height - 2, "name at the foot")
    })
  })

  it.each(all)("%s on %s: every shared strip has two crosses in its middle, a quarter of a page from each end", (_, __, input, paper) => {
    const { width = 190, height = 277, overlap = 10 } = paper as { width?: number; height?: number; overlap?: number }
    const pages = bendTemplatePages(input, "rib", paper).map(drawn)
    const corners = pages.map((p) => [0 - p.shift[0], 0 - p.shift[1]] as const)
    const wanted = corners.flatMap(([x, y]) => [
      // its left strip and its upper one, where it has them
      ...(x > 0 ? [0.25, 0.75].map((part) => [x + overlap / 2, y + part * height]) : []),
      ...(y > 0 ? [0.25, 0.75].map((part) => [x + part * width, y + overlap / 2]) : []),
    ]) as [number, number][]
    const sorted = (list: readonly (readonly [number, number])[]) =>
      list.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).sort((a, b) => (a < b ? -1 : 1))
    // one drawing, so that each cross lies on itself when the pages are stuck together
    for (const page of pages) expect(sorted(page.crosses)).toEqual(sorted(wanted))
  })

  it("takes a page down to twice its overlap and not that, and any up to 100 m", () => {
    const { "a small hook": input } = inputs as { "a small hook": BendTemplateInput }
    const pages = (width: number, height: number, overlap: number) => () => bendTemplatePages(input, "rib", { width, height, overlap })
    expect(pages(60, 60, 29.9)).not.toThrow()
    expect(pages(60, 600, 30)).toThrow(RangeError)
    expect(pages(600, 60, 30)).toThrow(RangeError)
    expect(pages(200, 200, -1)).toThrow(RangeError)
    expect(pages(99_999, 99_999, 0)).not.toThrow()
    expect(pages(100_000, 100, 0)).toThrow(RangeError)
    expect(pages(100, 100_000, 0)).toThrow(RangeError)
  })
})
