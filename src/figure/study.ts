// Pictures of studies: a sweep's curves, how a value is spread, and the front between two goals.
import { element, escapeXml, extent, label, linearScale, svg, ticks } from "../drawing/index.js"
import { displayNumber } from "../solver/index.js"
import type { Optimum, OutputSpread, TableColumn } from "../study/index.js"
import { type Column, curves, type Figure, inOneUnit, named } from "./figure.js"

const words = { "font-family": "system-ui, sans-serif", "font-size": 12, fill: "currentColor" }
const heading = { ...words, "font-size": 14, "font-weight": 600 }

/**
 * A sweep over one input as curves: one picture for each kind of number among its results; lines break where a point was refused.
 *
 * @param table - what `sweep` returned, one input varied
 * @throws RangeError where it varied several inputs, or no number
 */
export function sweepFigures(table: { readonly columns: readonly TableColumn[] }): readonly Figure[] {
  const numbers = (role: TableColumn["role"]) => table.columns.filter((c) => c.role === role && c.values.some((v) => typeof v === "number"))
  const [over, ...more] = numbers("input")
  if (!over || more.length || table.columns.filter((c) => c.role === "input").length > 1)
    throw new RangeError("sweepFigures() draws a sweep over one number: vary one input.")
  const plain = ({ label: name, kind, values }: TableColumn): Column => ({
    label: name,
    kind,
    values: values.map((value) => (typeof value === "number" && Number.isFinite(value) ? value : null)),
  })
  return curves(`over ${over.label}`, plain(over), numbers("output").map(plain))
}

/**
 * How a value of a result is spread: a bar for the middle 90 %, thin lines out to the middle 95 %, a mark at the median.
 *
 * @param spread - one of the outputs that `uncertainty` returned
 */
export function spreadFigure(spread: OutputSpread): Figure {
  const at = (share: number) => spread.percentiles.find((p) => Math.abs(p.share - share) < 1e-9)?.value ?? Number.NaN
  const five = [0.025, 0.05, 0.5, 0.95, 0.975].map(at)
  const title = `How ${spread.label} is spread`
  if (five.some((value) => !Number.isFinite(value))) throw new RangeError("spreadFigure() needs percentiles: nothing was answered.")
  const { unit, values } = inOneUnit([{ label: spread.label, kind: spread.kind, values: five }])
  const [a, b, median, c, d] = values[0] as readonly [number, number, number, number, number]
  const [left, right, middle] = [20, 540, 62]
  const wide = (d - a) * 0.1 || Math.abs(median) * 0.1 || 1
  const x = linearScale([a - wide, d + wide], [left, right])
  const shown = (value: number) => `${Number(value.toPrecision(3))}${unit ? ` ${unit}` : ""}`
  const line = (from: number, to: number, y: number) =>
    element("path", { d: `M${x(from).toFixed(1)} ${y}H${x(to).toFixed(1)}`, stroke: "currentColor", "stroke-width": 1.5 })
  const alternative = `${spread.label}: half of all below ${shown(median)}; nine in ten between ${shown(b)} and ${shown(c)}; nineteen in twenty between ${shown(a)} and ${shown(d)}.`
  return {
    title,
    alternative,
    svg: svg(
      { title, description: alternative, width: 560, height: 130 },
      label(left, 18, title, heading),
      line(a, b, middle),
      line(c, d, middle),
      element("rect", {
        x: x(b),
        y: middle - 13,
        width: Math.max(1, x(c) - x(b)),
        height: 26,
        fill: "#3d7bb8",
        "fill-opacity": 0.45,
        stroke: "#3d7bb8",
      }),
      element("path", { d: `M${x(median).toFixed(1)} ${middle - 17}v34`, stroke: "#c2571a", "stroke-width": 3 }),
      label(x(median), middle - 22, shown(median), { ...words, "text-anchor": "middle" }),
      ...ticks(a - wide, d + wide, 6).map(
        (v) =>
          element("path", { d: `M${x(v).toFixed(1)} 88v5`, stroke: "currentColor" }) +
          label(x(v), 108, String(v), { ...words, "text-anchor": "middle" }),
      ),
      element("path", { d: `M${left} 88H${right}`, stroke: "currentColor", "stroke-opacity": 0.5 }),
      label((left + right) / 2, 126, named(spread.label, unit), { ...words, "text-anchor": "middle" }),
    ),
  }
}

/** A goal of a front: its path in the result, its label and its kind. */
export interface Goal {
  readonly path: string
  readonly label: string
  readonly kind: string
}

/**
 * The front between two goals: a point for each design that none tried is better than in both, the chosen one ringed.
 *
 * @param optimum - what `optimize` returned for two goals
 * @param goals - the goals, as they are to be named
 * @throws RangeError where there is no design
 */
export function frontFigure(optimum: Pick<Optimum, "best" | "front">, goals: readonly [Goal, Goal]): Figure {
  const [across, up] = goals
  const of = (goal: Goal) =>
    inOneUnit([{ label: goal.label, kind: goal.kind, values: optimum.front.map(({ outputs }) => outputs[goal.path] ?? null) }])
  const [xs, ys] = [of(across), of(up)]
  const [xv, yv] = [xs.values[0] ?? [], ys.values[0] ?? []]
  if (xv.length === 0) throw new RangeError("frontFigure() needs a design: none kept the limits.")
  const [left, right, top, bottom] = [60, 540, 36, 250]
  const x = linearScale(extent(xv), [left + 10, right - 10])
  const y = linearScale(extent(yv), [bottom - 10, top + 10])
  const title = `${up.label} against ${across.label}`
  const chosen = JSON.stringify(optimum.best?.inputs)
  const best = optimum.front.findIndex(({ inputs }) => JSON.stringify(inputs) === chosen)
  const mark = (i: number) => element("circle", { cx: x(xv[i] as number), cy: y(yv[i] as number), r: 4.5, fill: "#3d7bb8" })
  const alternative = `${xv.length} ${xv.length === 1 ? "design" : "designs"}, from ${displayNumber(across, optimum.front[0]?.outputs[across.path] ?? 0)} with ${displayNumber(up, optimum.front[0]?.outputs[up.path] ?? 0)} to ${displayNumber(across, optimum.front.at(-1)?.outputs[across.path] ?? 0)} with ${displayNumber(up, optimum.front.at(-1)?.outputs[up.path] ?? 0)}.`
  return {
    title,
    alternative,
    svg: svg(
      { title, description: alternative, width: 560, height: 300 },
      label(left, 18, title, heading),
      ...ticks(...extent(yv)).map(
        (v) =>
          element("path", { d: `M${left} ${y(v).toFixed(1)}H${right}`, stroke: "currentColor", "stroke-opacity": 0.18 }) +
          label(left - 6, y(v) + 4, String(v), { ...words, "text-anchor": "end" }),
      ),
      ...ticks(...extent(xv)).map((v) => label(x(v), bottom + 18, String(v), { ...words, "text-anchor": "middle" })),
      element("path", { d: `M${left} ${top}V${bottom}H${right}`, fill: "none", stroke: "currentColor", "stroke-opacity": 0.6 }),
      ...xv.map((_, i) => mark(i)),
      ...(best >= 0
        ? [
            element("circle", {
              cx: x(xv[best] as number),
              cy: y(yv[best] as number),
              r: 9,
              fill: "none",
              stroke: "#c2571a",
              "stroke-width": 2.5,
            }),
          ]
        : []),
      label((left + right) / 2, 292, named(across.label, xs.unit), { ...words, "text-anchor": "middle" }),
      element(
        "text",
        { ...words, "text-anchor": "middle", transform: `translate(14 ${(top + bottom) / 2}) rotate(-90)` },
        escapeXml(named(up.label, ys.unit)),
      ),
    ),
  }
}
