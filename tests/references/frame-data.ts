import { datasheets, type PipeSize, pipes, pvcDerating } from "../../src/frame/index.js"
import { interpolate } from "../../src/numeric/index.js"
import { si } from "../../src/quantity/index.js"
import type { Check, ReferenceRow } from "../helpers/references.js"

const endings: readonly (readonly [ending: string, back: (x: number) => number])[] = [
  ["_g_cm3", (x) => x / 1000],
  ["_kg_m3", (x) => x],
  ["_GPa", (x) => x / 1e9],
  ["_MPa", (x) => x / 1e6],
  ["_ft_lb_per_in", (x) => x / 53.3786597],
  ["_psi", (x) => x / si("pressure", "1 psi")],
  ["_degC", (x) => x],
  ["_degF", (x) => (x * 9) / 5 + 32],
  ["_percent", (x) => x * 100],
]
const camel = (text: string) => text.replace(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase())

/** The datasheet's figure that a row's key names, back in the row's unit. */
function printed(figures: Readonly<Record<string, number>>, key: string): number | undefined {
  if (key === "specific_gravity") return (figures.density as number) / 1000
  const [ending, back] = endings.find(([e]) => key.endsWith(e)) ?? ["", (x: number) => x]
  const figure = figures[camel(key.slice(0, key.length - ending.length))]
  return figure === undefined ? undefined : back(figure)
}

/** The table's name of a row's sheet: makers' names stay in the sources. */
const sheetOf = (material: string) => (material === "pvc-12454-harvel" ? "pvc-12454-first" : material)

/** Checks of every material row against the table it was entered in. */
export const materialChecks = (rows: readonly ReferenceRow[]): Record<string, Check> =>
  Object.fromEntries(
    rows
      .filter((row) => "material" in row.inputs)
      .map((row): [string, Check] => [
        row.id,
        ({ material }, { expected }) => {
          const { figures } = datasheets[sheetOf(material)] as { figures: Readonly<Record<string, number>> }
          return Object.fromEntries(Object.keys(expected).map((key) => [key, printed(figures, key)]))
        },
      ]),
  )

/** Long-term strength factor of PVC pipe at a temperature in °F. */
export const derating = (degF: number): number => interpolate(pvcDerating, ((degF - 32) * 5) / 9)

/** Size of the pipe table that a row means. */
export function pipeOf(outsideDiameter: number): PipeSize {
  const found = (Object.keys(pipes) as PipeSize[]).find((size) => Math.abs(pipes[size].outsideDiameter / 0.0254 - outsideDiameter) < 1e-9)
  if (!found) throw new Error(`no pipe of ${outsideDiameter} in`)
  return found
}
