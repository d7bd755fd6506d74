import { describe, expect, it } from "vitest"
import {
  frontFigure,
  poseFigure,
  powerFigure,
  resultFigures,
  secondsFigure,
  spreadFigure,
  stageFigures,
  sweepFigures,
} from "../../src/figure/index.js"
import { inUnit } from "../../src/quantity/index.js"
import { assessRig, move, perform, rigWith } from "../../src/rig/index.js"
import { optimize, sweep, uncertainty } from "../../src/study/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { readXml, type XmlElement } from "../drawing/xml.js"
import { creature, creatureNames } from "../helpers/rigs.js"
import { solvers } from "../helpers/solvers.js"

const all = (of: XmlElement): readonly XmlElement[] => [of, ...of.children.flatMap(all)]
/** Every word and number of a path's data lies within the frame. */
function within(picture: string): XmlElement {
  const root = readXml(picture)
  const [, , width, height] = (root.attributes.get("viewBox") ?? "").split(" ").map(Number) as [number, number, number, number]
  for (const one of all(root)) {
    for (const [key, text] of one.attributes) expect(text, key).not.toMatch(/NaN|Infinity|undefined/)
    const [x, y] = ["x", "y"].map((key) => Number(one.attributes.get(key) ?? 0)) as [number, number]
    expect(x).toBeLessThanOrEqual(width)
    expect(y).toBeLessThanOrEqual(height)
  }
  expect(root.attributes.get("role")).toBe("img")
  expect(root.attributes.get("aria-label")).not.toBe("")
  return root
}
const words = (root: XmlElement) =>
  all(root)
    .filter((one) => one.name === "text")
    .map((one) => one.text)

describe("figures of results", () => {
  const drawn = solvers.map(({ id, solver }) => ({ id, pictures: resultFigures(solver(solver.example)) }))

  it("are drawn of every list that a solver's answer holds, whole and told in words", () => {
    expect(drawn.filter(({ pictures }) => pictures.length).length).toBeGreaterThan(20)
    for (const { id, pictures } of drawn)
      for (const { svg, alternative, title } of pictures) {
        within(svg)
        expect(title, id).not.toBe("")
        expect(alternative, id).not.toMatch(/NaN|undefined|Infinity/)
      }
  })

  it("put every point of a move's curve where its number is", () => {
    const result = move(move.example)
    const picture =
      resultFigures(result).find(({ title }) => title.endsWith(": current")) ?? resultFigures(result).find(({ svg }) => svg.includes("(A)"))
    const root = within(picture?.svg ?? "")
    const line = all(root)
      .filter((one) => one.name === "path" && one.attributes.get("stroke-width") === "2")
      .at(-1)
    const places = [...(line?.attributes.get("d") ?? "").matchAll(/[ML](\S+?) (\S+?)(?=[ML]|$)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    )
    const { curve } = result.out
    expect(places).toHaveLength(curve.length)
    // a straight scale both ways: shares of the way between the first and the last place
    const [first, last] = [curve[0], curve.at(-1)] as const
    const share = (value: number, a: number, b: number) => (value - a) / (b - a)
    curve.forEach(({ time }, i) => {
      expect(share((places[i] as readonly [number, number])[0], places[0]?.[0] ?? 0, places.at(-1)?.[0] ?? 0)).toBeCloseTo(
        share(time, first?.time ?? 0, last?.time ?? 0),
        2,
      )
    })
    const currents = curve.map(({ current }) => current)
    const [low, high] = [currents.indexOf(Math.min(...currents)), currents.indexOf(Math.max(...currents))]
    const [below, above] = [places[low], places[high]] as readonly [readonly [number, number], readonly [number, number]]
    currents.forEach((current, i) => {
      expect(share((places[i] as readonly [number, number])[1], below[1], above[1])).toBeCloseTo(
        share(current, currents[low] as number, currents[high] as number),
        1,
      )
    })
  })

  it("break where there is no value", async () => {
    const run = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const
    const table = await sweep(voltageDrop, run, { length: { from: "1 m", to: "3 m", count: 5 } })
    const holed = {
      columns: table.columns.map((c) => (c.path === "drop" ? { ...c, values: c.values.map((v, i) => (i === 2 ? null : v)) } : c)),
    }
    const picture = sweepFigures(holed).find(({ title, svg }) => title.endsWith(": voltage drop") || svg.includes("voltage drop"))
    const lines = all(within(picture?.svg ?? "")).filter(
      (one) => one.attributes.get("stroke-width") === "2" && (one.attributes.get("d")?.split("L").length ?? 0) > 1,
    )
    expect(lines.some((one) => (one.attributes.get("d")?.split("M").length ?? 0) - 1 === 2)).toBe(true)
    expect(() => sweepFigures({ columns: [] })).toThrow(RangeError)
  })

  it("refuse what is no result", () => {
    expect(() => resultFigures({})).toThrow(TypeError)
  })
})

describe("figures of a rig", () => {
  it.each(creatureNames)("tell %s's power at every bus, its poses and its seconds", (name) => {
    const rig = creature(name)
    const power = powerFigure(rig)
    const texts = words(within(power?.svg ?? ""))
    for (const bus of rig.power?.buses ?? []) expect(texts.some((text) => text.startsWith(bus.name.slice(0, 20)))).toBe(true)
    for (const { name: motion } of rig.motions) {
      expect(texts.some((text) => text.startsWith(motion.slice(0, 20)))).toBe(true)
      within(poseFigure(rig, motion)?.svg ?? "")
      const told = secondsFigure(move({ ...rig, motion }))
      within(told.svg)
      expect(told.alternative).toMatch(/in all/)
    }
  })

  it("show the voltage that the motion itself meets on its bus", () => {
    const rig = creature("folding-skew-wing")
    const texts = words(within(powerFigure(rig)?.svg ?? ""))
    const shown = texts.map((text) => /^([\d.]+) V, [\d.]+ m?A moving$/.exec(text)?.[1]).filter((v) => v !== undefined)
    // its time-domain twin: the lowest voltage on the way under any charge is no lower than what is shown, by more than is rounded
    const lowest = Math.min(...["out", "back"].map((way) => move(rig)[way as "out"].minVoltage))
    expect(shown.length).toBeGreaterThan(0)
    expect(Math.min(...shown.map(Number))).toBeLessThanOrEqual(inUnit("voltage", lowest, "V") + 0.06)
  })

  it("show every motion, bus and source of a performance over its time", () => {
    const played = perform(perform.example)
    const figures = stageFigures(played)
    const texts = figures.flatMap(({ svg }) => words(within(svg)))
    for (const { name } of [...played.motions, ...played.buses, ...played.sources])
      expect(texts.some((text) => text.includes(name))).toBe(true)
  })

  it("say what there is none of", () => {
    expect(
      powerFigure({
        ...creature("folding-skew-wing"),
        power: null,
        motions: creature("folding-skew-wing").motions.map((m) => ({ ...m, bus: null })),
      }),
    ).toBeNull()
    expect(() => poseFigure(assessRig.example, "nobody")).toThrow(RangeError)
    expect(poseFigure(assessRig.example, null, rigWith())?.title).toBe(poseFigure(assessRig.example)?.title)
  })
})

describe("figures of studies", () => {
  const run = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const

  it("show how a value is spread, the median between its ends", async () => {
    const told = await uncertainty(voltageDrop, { ...run, length: "3 m" }, { length: "3 m ± 0.3 m", current: "4 A ± 0.5 A" } as never, {
      outputs: ["drop"],
      samples: 2000,
    })
    const figure = spreadFigure(told.outputs[0] as (typeof told.outputs)[number])
    const root = within(figure.svg)
    const mark = all(root).find((one) => one.attributes.get("stroke") === "#c2571a")
    const bar = all(root).find((one) => one.name === "rect")
    const x = Number(/^M(\S+) /.exec(mark?.attributes.get("d") ?? "")?.[1])
    expect(x).toBeGreaterThan(Number(bar?.attributes.get("x")))
    expect(x).toBeLessThan(Number(bar?.attributes.get("x")) + Number(bar?.attributes.get("width")))
  })

  it("show a front, a point for each design, the chosen one ringed", async () => {
    const told = await optimize(voltageDrop, run, { vary: { awg: [10, 12, 14, 16, 18, 20] }, minimize: ["drop", "area"] } as never)
    const figure = frontFigure(told, [
      { path: "area", label: "cross-section", kind: "area" },
      { path: "drop", label: "voltage drop", kind: "voltage" },
    ])
    const circles = all(within(figure.svg)).filter((one) => one.name === "circle")
    expect(circles.filter((one) => one.attributes.get("fill") !== "none")).toHaveLength(told.front.length)
    expect(circles.filter((one) => one.attributes.get("fill") === "none")).toHaveLength(1)
    expect(() =>
      frontFigure({ best: null, front: [] }, [
        { path: "a", label: "a", kind: "number" },
        { path: "b", label: "b", kind: "number" },
      ]),
    ).toThrow(RangeError)
  })
})
