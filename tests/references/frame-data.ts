import { datasheets, type PipeSize, pipes, pvcDerating } from "../../src/frame/index.js"
import { interpolate } from "../../src/numeric/index.js"
import { si } from "../../src/quantity/index.js"
import type { Check, ReferenceRow } from "../helpers/references.js"

const endings: readonly (readonly [ending: string, back: (x: number) => number])[] = [
  ["_g_cm3", (x) => x / 1000],
  ["_g_per_cm3", (x) => x / 1000],
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

/** The table's names of rows' sheets: makers' names stay in the sources. */
const sheets: Readonly<Record<string, string>> = {
  "pvc-12454-pipe-maker": "pvc-12454-first",
  "abs-low-flow": "abs-first",
  "abs-high-flow": "abs-second",
  "aluminium-shigley-a5": "aluminium-elastic",
  "steel-shigley-a5": "steel-elastic",
  "pc-grade": "pc-grade",
  "pla-printed-grade": "pla-printed",
  "plywood-H200": "plywood-first",
  "plywood-H220": "plywood-second",
  "plywood-L220C": "plywood-third",
  "plywood-S220C": "plywood-fourth",
  PETG: "petg-filament",
}
const sheetOf = (material: string) => sheets[material] ?? material

type Figures = Readonly<Record<string, number>>
const figuresOf = (sheet: string) => (datasheets[sheet] as { figures: Figures }).figures
const range = (figures: Figures, name: string, unit: number) =>
  [figures[`min${name}`] as number, figures[`max${name}`] as number].map((x) => x / unit)

/** Checks of the material rows that print ranges, against the table they were entered in. */
export const rangeChecks: Readonly<Record<string, Check>> = {
  "mat-gfrp-pultruded-rod": () => {
    const f = figuresOf("glass-rod")
    return {
      tensile_MPa: range(f, "Tensile", 1e6),
      modulus_GPa: range(f, "Modulus", 1e9),
      flexural_MPa: range(f, "Flexural", 1e6),
      density_g_per_cm3: range(f, "Density", 1000),
      service_max_degC: f.maxService,
      bend_diameter_over_rod: f.bendDiameterOverRod,
    }
  },
  "mat-gfrp-pultruded-profile": () => {
    const f = figuresOf("glass-profile")
    return {
      tensile_MPa: range(f, "Tensile", 1e6),
      modulus_GPa: range(f, "Modulus", 1e9),
      flexural_MPa: range(f, "Flexural", 1e6),
      flexural_modulus_GPa: range(f, "FlexuralModulus", 1e9),
      density_g_per_cm3: range(f, "Density", 1000),
    }
  },
  "mat-gfrp-rod-75pct-glass": () => {
    const f = figuresOf("glass-rod-75")
    const figure = (name: string) => f[name] as number
    return {
      tensile_MPa: figure("tensile") / 1e6,
      modulus_GPa: figure("modulus") / 1e9,
      compressive_MPa: figure("compressive") / 1e6,
      specific_gravity: figure("density") / 1000,
      expansion_per_degC: f.expansion,
    }
  },
  "mat-osb-imported-measured": () => {
    const f = figuresOf("osb-measured")
    return {
      bending_major_MPa: range(f, "BendingMajor", 1e6),
      bending_minor_MPa: range(f, "BendingMinor", 1e6),
      modulus_major_MPa: range(f, "ModulusMajor", 1e6),
      modulus_minor_MPa: range(f, "ModulusMinor", 1e6),
      density_g_per_cm3: range(f, "Density", 1000),
    }
  },
  "mat-pla-printed-xy-z": () => {
    const f = figuresOf("pla-range")
    const figure = (name: string) => f[name] as number
    return {
      tensile_min_MPa: [figure("minAlong") / 1e6, figure("minAcross") / 1e6],
      tensile_max_MPa: [figure("maxAlong") / 1e6, figure("maxAcross") / 1e6],
      modulus_min_GPa: figure("minModulus") / 1e9,
      modulus_max_GPa: figure("maxModulus") / 1e9,
      z_over_xy_min: figure("minAcross") / figure("minAlong"),
      z_over_xy_max: figure("maxAcross") / figure("maxAlong"),
    }
  },
  ...Object.fromEntries(
    ["6p5mm", "9mm", "12mm", "18mm"].map((thickness): [string, Check] => [
      `mat-plywood-birch-${thickness}`,
      () => {
        const f = figuresOf("plywood-birch")
        const [bending, modulus] = [f[`bending${thickness}`] as number, f[`modulus${thickness}`] as number]
        return { bending_parallel_MPa: bending / 1e6, modulus_parallel_MPa: modulus / 1e6 }
      },
    ]),
  ),
}

const across = "the table holds figures along the face grain"
/** What the checks of ranges leave out, and why. */
export const withoutRanges: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "mat-osb-imported-measured": { wet_bending_major_MPa: "soaked boards are no member" },
  "mat-pla-printed-xy-z": {
    elongation_min_percent: "no solver asks for elongation",
    elongation_max_percent: "no solver asks for elongation",
  },
  ...Object.fromEntries(
    ["6p5mm", "9mm", "12mm", "18mm"].map((thickness) => [
      `mat-plywood-birch-${thickness}`,
      { bending_across_MPa: across, modulus_across_MPa: across, modulus_sum_MPa: across },
    ]),
  ),
}

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
