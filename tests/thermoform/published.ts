import type { Plastic, PlasticData } from "../../src/thermoform/data.js"
import { referenceRows } from "../helpers/references.js"

/**
 * Where a figure of this copy was taken from: a row of shared/references that was looked up, typed from the page that
 * src/thermoform/sources.ts names, or neither. The last is chosen between published ones, a habit of the trade, or from a document
 * that nobody has seen: it pins against slips and proves nothing.
 */
export type Origin = "row" | "page" | "unseen"
export interface Copied {
  readonly value: number
  readonly origin: Origin
}
/** Usual, lowest and highest published figure. */
type Triple = readonly [value: Copied, low: Copied, high: Copied]
type Key = { [K in keyof PlasticData]: PlasticData[K] extends object | null ? K : never }[keyof PlasticData]

const rows = new Map(referenceRows("thermoform").map((row) => [row.id, row]))

/** Looked up in a row, in our unit, to the digits that the table carries. */
function row(id: string, key: string, scale = 1, step = 0): Copied {
  const found = rows.get(`tf-${id}`)
  const printed = found?.expected[key]
  if (found === undefined || typeof printed !== "number") throw new Error(`no ${key} in row ${id}`)
  const value = printed * scale
  return { value: step ? Math.round(value / step) / (1 / step) : value, origin: found.basis === "looked-up" ? "row" : "unseen" }
}
const MICRO = 1e-6
const PERCENT = 0.01
const page = (value: number): Copied => ({ value, origin: "page" })
/** A page that prints °F, to a tenth of a degree or to `step`. */
const fahrenheit = (printed: number, step = 0.1): Copied => page(Math.round((printed - 32) / 1.8 / step) / (1 / step))
/** A figure with the 6 K that editions of the forming table differ by, one step of 10 °F. */
const within = ({ value, origin }: Copied, kelvin: number): Copied => ({ value: value + kelvin, origin })
const unseen = (value: number): Copied => ({ value, origin: "unseen" })
const all = (value: Copied): Triple => [value, value, value]
const unseens = (value: number, low: number, high: number): Triple => [unseen(value), unseen(low), unseen(high)]
/** Shrinkage that is the same along and across. */
const bothWays = (...shrinkage: Triple) => ({ shrinkage, shrinkageAcross: shrinkage })
/** Of solid sheet, which the expanded one is taken to share. */
const PVC_SHRINKAGE = bothWays(
  row("prop-azom-pvc", "mould_shrinkage_pct", PERCENT),
  row("shrink-mould-table", "pvc_rigid_min_pct", PERCENT),
  row("shrink-mould-table", "pvc_rigid_max_pct", PERCENT),
)
/** Glassy: nothing melts. */
const GLASSY: Triple = all(unseen(0))

export const copies: Readonly<Record<Plastic, Readonly<Record<Key, Triple | null>>>> = {
  pvc: {
    set: [row("prop-azom-pvc", "hdt_0p45MPa_degC"), row("prop-azom-pvc", "hdt_1p80MPa_degC"), row("prop-pipe-pvc", "hdt_degC", 1, 1)],
    lower: [row("window-pvc-rigid", "lower_limit_degC"), row("window-pvc-rigid", "lower_limit_degC"), fahrenheit(225)],
    normal: [fahrenheit(275), fahrenheit(250), row("window-pvc-rigid", "normal_degC")],
    upper: [row("window-pvc-rigid", "upper_limit_degC"), fahrenheit(275), row("window-pvc-rigid", "upper_limit_degC")],
    fume: [page(120), page(120), row("pvc-degradation-onset", "unstabilised_onset_degC")],
    scorch: [
      row("pvc-degradation-onset", "unstabilised_onset_degC"),
      row("pvc-degradation-onset", "unstabilised_onset_degC"),
      row("pvc-sheet-states", "degradation_degC"),
    ],
    conductivity: [page(0.16), page(0.12), row("prop-netzsch-pvc-u", "k_max_W_per_mK")],
    density: [
      row("prop-azom-pvc", "density_kg_per_m3"),
      row("prop-netzsch-pvc-u", "density_min_kg_per_m3"),
      row("prop-netzsch-pvc-u", "density_max_kg_per_m3"),
    ],
    specificHeat: [unseen(1000), page(900), row("prop-pipe-pvc", "cp_J_per_kgK", 1, 10)],
    expansion: [
      row("prop-azom-pvc", "linear_expansion_1e-6_per_K", MICRO),
      row("prop-pipe-pvc", "expansion_1e-6_per_K", MICRO, 1e-6),
      row("prop-netzsch-pvc-u", "expansion_max_1e-6_per_K", MICRO),
    ],
    deflection: [
      row("prop-azom-pvc", "hdt_0p45MPa_degC"),
      row("prop-azom-pvc", "hdt_1p80MPa_degC"),
      row("prop-pipe-pvc", "hdt_degC", 1, 1),
    ],
    service: [
      row("prop-azom-pvc", "max_operating_degC"),
      row("prop-azom-pvc", "max_operating_degC"),
      row("pvc-pipe-states-degF", "service_max_degC"),
    ],
    transition: [unseen(85), row("prop-netzsch-pvc-u", "tg_min_degC"), row("prop-netzsch-pvc-u", "tg_max_degC")],
    melting: GLASSY,
    ...PVC_SHRINKAGE,
    coldStrain: [page(1 / (2 * 300)), page(1 / (2 * 300)), { ...row("pvc-cold-curve-250D", "radius_over_diameter"), value: 1 / (2 * 250) }],
  },
  "pvc-foam": {
    set: [row("prop-azom-pvc", "hdt_1p80MPa_degC"), page(55), row("prop-azom-pvc", "hdt_0p45MPa_degC")],
    lower: [fahrenheit(250), row("pvc-sheet-states", "elastic_min_degC"), fahrenheit(250)],
    normal: [row("pvc-sheet-states", "elastic_max_degC"), row("pvc-sheet-states", "elastic_min_degC"), fahrenheit(280)],
    upper: [fahrenheit(280), fahrenheit(275), fahrenheit(280)],
    fume: [page(120), page(120), row("pvc-degradation-onset", "unstabilised_onset_degC")],
    scorch: [row("pvc-degradation-onset", "unstabilised_onset_degC"), page(140), row("pvc-sheet-states", "degradation_degC")],
    conductivity: unseens(0.08, 0.06, 0.12),
    density: [page(0.6 * 1000), page(0.5 * 1000), page(0.9 * 1000)],
    specificHeat: [unseen(1000), page(900), row("prop-pipe-pvc", "cp_J_per_kgK", 1, 10)],
    expansion: [page(0.07e-3), page(0.05e-3), page(150e-6)],
    deflection: unseens(65, 60, 70),
    service: [page(55), page(55), page(60)],
    transition: [unseen(85), row("prop-netzsch-pvc-u", "tg_min_degC"), row("prop-netzsch-pvc-u", "tg_max_degC")],
    melting: GLASSY,
    ...PVC_SHRINKAGE,
    coldStrain: null,
  },
  "pmma-cast": {
    set: [row("window-pmma", "set_degC"), unseen(80), unseen(91)],
    lower: [row("window-pmma", "lower_limit_degC"), row("window-pmma", "lower_limit_degC"), row("prop-cast-acrylic", "forming_min_degC")],
    normal: [row("window-pmma", "normal_degC"), fahrenheit(340, 1), row("prop-cast-acrylic", "forming_max_degC")],
    upper: [fahrenheit(380, 1), row("prop-cast-acrylic", "forming_max_degC"), fahrenheit(380, 1)],
    fume: [page(160), page(160), fahrenheit(360, 1)],
    scorch: [row("pmma-decomposition", "decomposition_starts_degC"), unseen(260), unseen(280)],
    conductivity: [row("prop-cast-acrylic", "k_W_per_mK"), page(0.17), row("prop-crawford-acrylic", "k_W_per_mK")],
    density: [unseen(1190), row("prop-crawford-acrylic", "density_kg_per_m3"), unseen(1190)],
    specificHeat: [
      row("prop-cast-acrylic", "cp_J_per_kgK"),
      row("prop-cast-acrylic", "cp_J_per_kgK"),
      row("prop-crawford-acrylic", "cp_J_per_kgK"),
    ],
    expansion: [
      unseen(75e-6),
      row("prop-crawford-acrylic", "linear_expansion_1e-6_per_K", MICRO),
      row("prop-cast-acrylic", "expansion_1e-6_per_K", MICRO),
    ],
    deflection: unseens(95, 90, 105),
    service: [unseen(70), row("prop-crawford-acrylic", "max_operating_degC"), unseen(80)],
    transition: [
      row("prop-crawford-acrylic", "glass_transition_degC"),
      row("prop-crawford-acrylic", "glass_transition_degC"),
      row("prop-netzsch-pmma-tg", "tg_first_heating_degC"),
    ],
    melting: GLASSY,
    ...bothWays(
      row("prop-cast-acrylic", "shrinkage_after_heating_max_pct", PERCENT),
      unseen(0.01),
      row("shrink-cast-acrylic-2pct", "shrink_max_percent", PERCENT),
    ),
    coldStrain: [page(1 / (2 * 330)), page(1 / (2 * 330)), page(1 / (2 * 240))],
  },
  "pmma-extruded": {
    set: unseens(80, 75, 85),
    lower: unseens(140, 130, 145),
    normal: [unseen(150), fahrenheit(290, 1), fahrenheit(320, 1)],
    upper: [unseen(165), fahrenheit(320, 1), fahrenheit(360, 1)],
    fume: [page(160), page(160), fahrenheit(360, 1)],
    scorch: [row("pmma-decomposition", "decomposition_starts_degC"), unseen(260), unseen(280)],
    conductivity: [row("prop-cast-acrylic", "k_W_per_mK"), page(0.17), row("prop-crawford-acrylic", "k_W_per_mK")],
    density: [unseen(1190), row("prop-crawford-acrylic", "density_kg_per_m3"), unseen(1190)],
    specificHeat: [
      row("prop-cast-acrylic", "cp_J_per_kgK"),
      row("prop-cast-acrylic", "cp_J_per_kgK"),
      row("prop-crawford-acrylic", "cp_J_per_kgK"),
    ],
    expansion: [
      unseen(75e-6),
      row("prop-crawford-acrylic", "linear_expansion_1e-6_per_K", MICRO),
      row("prop-cast-acrylic", "expansion_1e-6_per_K", MICRO),
    ],
    deflection: unseens(90, 85, 100),
    service: [unseen(65), row("prop-crawford-acrylic", "max_operating_degC"), unseen(75)],
    transition: [row("prop-crawford-acrylic", "glass_transition_degC"), unseen(100), row("prop-netzsch-pmma-tg", "tg_first_heating_degC")],
    melting: GLASSY,
    shrinkage: [page(3 * PERCENT), unseen(0.005), page(3 * PERCENT)],
    shrinkageAcross: [page(-0.5 * PERCENT), page(-0.5 * PERCENT), unseen(0)],
    coldStrain: all(page(1 / (2 * 330))),
  },
  petg: {
    set: [unseen(70), row("prop-mif-petg", "hdt_1p82MPa_degC"), row("prop-mif-petg", "hdt_0p455MPa_degC")],
    lower: [row("window-petg", "lower_limit_degC"), row("window-petg", "lower_limit_degC"), fahrenheit(275)],
    normal: [fahrenheit(300), fahrenheit(275), fahrenheit(310)],
    upper: [row("window-petg", "upper_limit_degC"), fahrenheit(310), unseen(172)],
    fume: null,
    scorch: null,
    conductivity: [row("prop-crawford-pet", "k_W_per_mK"), page(0.15), row("prop-mif-petg", "k_W_per_mK")],
    density: [row("prop-petg-sheet", "density_kg_per_m3"), unseen(1260), unseen(1280)],
    specificHeat: [row("prop-mif-petg", "cp_J_per_kgK"), row("prop-crawford-pet", "cp_J_per_kgK"), unseen(1300)],
    expansion: [
      row("prop-mif-petg", "expansion_1e-6_per_K", MICRO),
      row("prop-petg-sheet", "expansion_1e-6_per_K", MICRO),
      row("prop-crawford-pet", "linear_expansion_1e-6_per_K", MICRO),
    ],
    deflection: [unseen(70), row("prop-mif-petg", "hdt_1p82MPa_degC"), row("prop-mif-petg", "hdt_0p455MPa_degC")],
    service: [unseen(60), unseen(55), page(65)],
    transition: [row("form-above-tg", "petg_tg_degC"), row("prop-crawford-pet", "glass_transition_degC"), row("prop-mif-petg", "tg_degC")],
    melting: GLASSY,
    ...bothWays(
      row("shrink-mould-table", "pet_amorphous_max_pct", PERCENT),
      row("shrink-mould-table", "pet_amorphous_min_pct", PERCENT),
      row("shrink-mould-table", "pet_amorphous_max_pct", PERCENT),
    ),
    coldStrain: null,
  },
  abs: {
    set: [fahrenheit(185, 1), row("prop-granta-abs", "hdt_1p8MPa_min_degC"), row("prop-goodfellow-abs-pc", "abs_hdt_1p8_degC")],
    lower: [fahrenheit(260, 1), fahrenheit(260, 1), fahrenheit(280, 1)],
    normal: [fahrenheit(300, 1), unseen(143), fahrenheit(310, 1)],
    upper: [fahrenheit(360, 1), within(fahrenheit(360, 1), -6), within(fahrenheit(360, 1), 6)],
    fume: [unseen(127), unseen(127), unseen(149)],
    scorch: [
      row("abs-fume-note", "decomposition_min_degC"),
      row("abs-fume-note", "decomposition_min_degC"),
      row("abs-fume-note", "decomposition_max_degC"),
    ],
    conductivity: [row("prop-abs-typical", "k_W_per_mK"), page(0.14), page(0.34)],
    density: [
      row("prop-crawford-abs", "density_kg_per_m3"),
      row("prop-granta-abs", "density_min_kg_per_m3"),
      row("prop-granta-abs", "density_max_kg_per_m3"),
    ],
    specificHeat: [unseen(1400), row("prop-crawford-abs", "cp_J_per_kgK"), row("prop-abs-typical", "cp_J_per_kgK")],
    expansion: [unseen(95e-6), page(80e-6), row("prop-abs-typical", "expansion_1e-6_per_K", MICRO)],
    deflection: [
      row("prop-goodfellow-abs-pc", "abs_hdt_1p8_degC"),
      row("prop-granta-abs", "hdt_1p8MPa_min_degC"),
      row("prop-granta-abs", "hdt_0p45MPa_max_degC"),
    ],
    service: [row("prop-abs-typical", "max_operating_degC"), row("prop-abs-typical", "max_operating_degC"), page(100)],
    transition: [unseen(105), row("prop-granta-abs", "tg_min_degC"), row("prop-granta-abs", "tg_max_degC")],
    melting: GLASSY,
    shrinkage: [unseen(0.006), page(0.35 * PERCENT), row("shrink-mould-table", "abs_high_impact_max_pct", PERCENT)],
    shrinkageAcross: [unseen(0.006), page(0.35 * PERCENT), row("shrink-mould-table", "abs_high_impact_max_pct", PERCENT)],
    coldStrain: null,
  },
  pc: {
    set: [row("window-pc", "set_degC"), row("prop-goodfellow-abs-pc", "pc_hdt_1p8_min_degC"), unseen(144)],
    lower: [row("window-pc", "lower_limit_degC"), row("window-pc", "lower_limit_degC"), fahrenheit(350)],
    normal: [fahrenheit(370), fahrenheit(350), row("window-pc", "normal_degC")],
    upper: [row("window-pc", "upper_limit_degC"), row("window-pc", "upper_limit_degC"), fahrenheit(415)],
    fume: null,
    scorch: null,
    conductivity: [page(0.2), row("prop-netzsch-pc", "k_min_W_per_mK"), row("prop-goodfellow-abs-pc", "pc_k_max_W_per_mK")],
    density: [
      row("prop-netzsch-pc", "density_min_kg_per_m3"),
      row("prop-crawford-pc", "density_kg_per_m3"),
      row("prop-netzsch-pc", "density_max_kg_per_m3"),
    ],
    specificHeat: [
      row("prop-crawford-pc", "cp_J_per_kgK"),
      row("prop-netzsch-pc", "cp_min_J_per_kgK"),
      row("prop-netzsch-pc", "cp_max_J_per_kgK"),
    ],
    expansion: [
      row("prop-crawford-pc", "linear_expansion_1e-6_per_K", MICRO),
      row("prop-crawford-pc", "linear_expansion_1e-6_per_K", MICRO),
      page(70e-6),
    ],
    deflection: [unseen(135), row("prop-goodfellow-abs-pc", "pc_hdt_1p8_min_degC"), row("prop-goodfellow-abs-pc", "pc_hdt_0p45_degC")],
    service: [unseen(120), page(115), page(130)],
    transition: [
      row("prop-netzsch-pc", "tg_dsc_midpoint_degC"),
      row("prop-netzsch-pc", "tg_min_degC"),
      row("prop-netzsch-pc", "tg_max_degC"),
    ],
    melting: GLASSY,
    shrinkage: [unseen(0.035), row("shrink-mould-table", "pc_min_pct", PERCENT), page(5 * PERCENT)],
    shrinkageAcross: [unseen(0.01), row("shrink-mould-table", "pc_min_pct", PERCENT), page(5 * PERCENT)],
    coldStrain: all(page(1 / (2 * 100))),
  },
  hips: {
    set: [row("window-hips-ps", "set_degC"), unseen(79), unseen(91)],
    lower: [row("window-hips-ps", "lower_limit_degC"), unseen(121), unseen(133)],
    normal: [row("window-hips-ps", "normal_degC"), unseen(143), unseen(155)],
    upper: [row("window-hips-ps", "upper_limit_degC"), unseen(176), unseen(188)],
    fume: null,
    scorch: null,
    conductivity: [unseen(0.16), page(0.1), unseen(0.22)],
    density: [row("prop-crawford-polystyrene", "density_kg_per_m3"), unseen(1000), unseen(1060)],
    specificHeat: [row("prop-crawford-polystyrene", "cp_J_per_kgK"), unseen(1250), unseen(1400)],
    expansion: [
      row("prop-crawford-polystyrene", "linear_expansion_1e-6_per_K", MICRO),
      row("prop-crawford-polystyrene", "linear_expansion_1e-6_per_K", MICRO),
      unseen(90e-6),
    ],
    deflection: unseens(80, 75, 90),
    service: [unseen(55), row("prop-crawford-polystyrene", "max_operating_degC"), unseen(70)],
    transition: [
      row("prop-crawford-polystyrene", "glass_transition_degC"),
      unseen(95),
      row("prop-crawford-polystyrene", "glass_transition_degC"),
    ],
    melting: GLASSY,
    shrinkage: [unseen(0.005), row("shrink-mould-table", "hips_min_pct", PERCENT), row("shrink-mould-table", "hips_max_pct", PERCENT)],
    shrinkageAcross: [
      unseen(0.005),
      row("shrink-mould-table", "hips_min_pct", PERCENT),
      row("shrink-mould-table", "hips_max_pct", PERCENT),
    ],
    coldStrain: null,
  },
  hdpe: {
    set: [row("window-hdpe", "set_degC"), unseen(76), unseen(88)],
    lower: [row("window-hdpe", "lower_limit_degC"), row("window-hdpe", "lower_limit_degC"), unseen(135)],
    normal: unseens(140, 135, 146),
    upper: unseens(166, 166, 182),
    fume: null,
    scorch: null,
    conductivity: [page(0.45), row("prop-netzsch-hdpe", "k_min_W_per_mK"), row("prop-netzsch-hdpe", "k_max_W_per_mK")],
    density: [page(950), unseen(930), unseen(970)],
    specificHeat: [page(2200), unseen(1330), row("prop-netzsch-hdpe", "cp_max_J_per_kgK")],
    expansion: [
      unseen(220e-6),
      row("prop-netzsch-hdpe", "expansion_min_1e-6_per_K", MICRO),
      row("prop-netzsch-hdpe", "expansion_max_1e-6_per_K", MICRO),
    ],
    deflection: unseens(60, 45, 80),
    service: [unseen(60), page(55), unseen(80)],
    transition: [
      row("prop-netzsch-hdpe", "melting_peak_dsc_degC"),
      row("prop-netzsch-hdpe", "melting_min_degC"),
      row("prop-netzsch-hdpe", "melting_max_degC"),
    ],
    melting: [row("prop-netzsch-hdpe", "melting_enthalpy_sample_J_per_g", 1000), unseen(178.6e3), unseen(220e3)],
    ...bothWays(
      page(2.5 * PERCENT),
      row("shrink-mould-table", "hdpe_min_pct", PERCENT),
      row("shrink-mould-table", "hdpe_max_pct", PERCENT),
    ),
    coldStrain: null,
  },
  pp: {
    set: [row("window-pp", "set_degC"), unseen(82), unseen(94)],
    lower: [row("window-pp", "lower_limit_degC"), row("window-pp", "lower_limit_degC"), unseen(149)],
    normal: [unseen(157), row("window-pp", "normal_min_degC"), row("window-pp", "normal_max_degC")],
    upper: [row("window-pp", "upper_limit_degC"), unseen(165), unseen(168)],
    fume: null,
    scorch: [row("prop-mif-pp", "decomposition_degC"), unseen(320), row("prop-mif-pp", "decomposition_degC")],
    conductivity: [unseen(0.17), page(0.1), page(0.22)],
    density: [page(905), unseen(895), unseen(920)],
    specificHeat: [row("prop-mif-pp", "cp_J_per_kgK"), unseen(1680), unseen(2350)],
    expansion: [page(100e-6), row("prop-mif-pp", "expansion_1e-6_per_K", MICRO), unseen(150e-6)],
    deflection: [row("prop-mif-pp", "hdt_1p82MPa_degC"), row("prop-mif-pp", "hdt_1p82MPa_degC"), row("prop-mif-pp", "hdt_0p455MPa_degC")],
    service: [unseen(80), unseen(70), page(100)],
    transition: [unseen(162), row("prop-mif-pp", "melting_onset_degC"), page(170)],
    melting: unseens(60e3, 40e3, 100e3),
    shrinkage: [unseen(0.02), row("shrink-pp-orthotic", "min_pct", PERCENT), row("shrink-mould-table", "pp_max_pct", PERCENT)],
    shrinkageAcross: [unseen(0.02), row("shrink-pp-orthotic", "min_pct", PERCENT), row("shrink-mould-table", "pp_max_pct", PERCENT)],
    coldStrain: null,
  },
  "eva-foam": {
    set: unseens(50, 45, 61),
    lower: unseens(95, 90, 100),
    normal: unseens(115, 105, 125),
    upper: unseens(145, 135, 155),
    fume: [page(80), page(80), page(120)],
    scorch: null,
    conductivity: unseens(0.045, 0.035, 0.06),
    density: [unseen(100), page(0.05 * 1000), page(0.25 * 1000)],
    specificHeat: unseens(2100, 1800, 2400),
    expansion: unseens(150e-6, 100e-6, 250e-6),
    deflection: unseens(45, 40, 55),
    service: unseens(50, 40, 60),
    transition: unseens(75, 61, 95),
    melting: unseens(40e3, 20e3, 60e3),
    shrinkage: unseens(0.03, 0.01, 0.06),
    shrinkageAcross: unseens(0.03, 0.01, 0.06),
    coldStrain: null,
  },
  "low-temp-polyester": {
    set: unseens(40, 35, 45),
    lower: [row("prop-pcl", "melting_degC"), unseen(58), unseen(62)],
    normal: [unseen(65), row("form-lttp-water", "water_min_degC"), row("form-lttp-water", "water_max_degC")],
    upper: [unseen(80), unseen(75), page(90)],
    fume: null,
    scorch: [page(200), page(200), unseen(250)],
    conductivity: unseens(0.2, 0.15, 0.25),
    density: [row("prop-pcl", "density_kg_per_m3"), unseen(1100), unseen(1150)],
    specificHeat: unseens(1900, 1700, 2100),
    expansion: unseens(160e-6, 150e-6, 180e-6),
    deflection: unseens(45, 40, 55),
    service: unseens(40, 35, 45),
    transition: [row("prop-pcl", "melting_degC"), unseen(58), unseen(62)],
    melting: unseens(70e3, 55e3, 80e3),
    shrinkage: unseens(0.01, 0.005, 0.02),
    shrinkageAcross: unseens(0.01, 0.005, 0.02),
    coldStrain: null,
  },
}

/** The same as plain numbers: usual, lowest and highest. */
type Numbers = readonly [value: number, low: number, high: number]
export const published: Readonly<Record<Plastic, Readonly<Record<Key, Numbers | null>>>> = Object.fromEntries(
  Object.entries(copies).map(([plastic, figures]) => [
    plastic,
    Object.fromEntries(
      Object.entries(figures).map(([key, triple]) => [key, triple === null ? null : triple.map((copied) => copied.value)]),
    ),
  ]),
) as never
