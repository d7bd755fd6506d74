import { brent } from "../../src/numeric/index.js"
import { type Body, conduct, type Drive, halfSpaceRise } from "../../src/thermoform/conduction.js"
import { type Figure, type Plastic, plastics } from "../../src/thermoform/data.js"
import { arrival, drySand, heated, type Part } from "../../src/thermoform/heating-time/heating.js"
import {
  bendTemplate,
  conduitBends,
  contactTemperature,
  drape,
  drying,
  dryings,
  eigenvalue,
  fluxedBodyRise,
  fluxedSheetRise,
  formingWindow,
  fourierFor,
  heatingTime,
  lineBend,
  lineHeatLength,
  modeAmplitude,
  radiantSheetTime,
  type Shape,
  softening,
  temperatureRatio,
  tubeBend,
} from "../../src/thermoform/index.js"
import { erfc } from "../../src/thermoform/special.js"
import { sandBending, unsupportedBend } from "../../src/thermoform/tables.js"
import { type Check, referenceTests } from "../helpers/references.js"

type Values = Record<string, number>
const INCH = 0.0254
const shapes: readonly (readonly [string, Shape])[] = [
  ["plane_wall", "wall"],
  ["long_cylinder", "rod"],
  ["cylinder", "rod"],
  ["sphere", "ball"],
]

/** Takes out the last bits that unit factors leave, for rows that allow none. */
const tidy = (value: number) => Number(value.toPrecision(12))

/** A published value held against a spread of ours: itself where it lies inside, else the nearer end. */
const inside = (figure: Figure, published: unknown) => Math.min(figure.high, Math.max(figure.low, published as number))

/** Expected keys by figure of a plastic: each must lie in our spread, scaled to the key's unit. */
const spread =
  (plastic: Plastic, keys: Readonly<Record<string, readonly [keyof (typeof plastics)[Plastic], number?]>>): Check =>
  (_, row) =>
    Object.fromEntries(
      Object.entries(keys).map(([key, [name, scale = 1]]) => [
        key,
        tidy(inside(plastics[plastic][name] as Figure, tidy((row.expected[key] as number) * scale)) / scale),
      ]),
    )

/** Diffusivity at the two ends of the spread of its parts. */
function diffusivity(plastic: Plastic): Figure {
  const { conductivity: k, density: d, specificHeat: c } = plastics[plastic]
  return { value: 0, low: k.low / d.high / c.high, high: k.high / d.low / c.low, sources: [] }
}
const crawford =
  (plastic: Plastic): Check =>
  (inputs, row) => ({
    ...spread(plastic, {
      density_kg_per_m3: ["density"],
      cp_J_per_kgK: ["specificHeat"],
      "linear_expansion_1e-6_per_K": ["expansion", 1e-6],
      glass_transition_degC: ["transition"],
      max_operating_degC: ["service"],
      k_W_per_mK: ["conductivity"],
    })(inputs, row),
    "thermal_diffusivity_1e-7_m2_per_s":
      inside(diffusivity(plastic), (row.expected["thermal_diffusivity_1e-7_m2_per_s"] as number) * 1e-7) * 1e7,
  })

/** Temperatures named `<spot>_<seconds>s_degC`, from the engine. */
function spots(
  response: ReturnType<typeof conduct>,
  drive: Drive,
  names: Readonly<Record<string, number>>,
  expected: Readonly<Record<string, unknown>>,
): Values {
  const found: Values = {}
  for (const key of Object.keys(expected)) {
    const [, spot, seconds] = /^(.*)_(\d+)s_degC$/.exec(key) ?? []
    if (spot !== undefined && spot in names) found[key] = response.at(Number(seconds), drive)[names[spot] as number] as number
  }
  return found
}

const acrylicOven: Check = (inputs, { expected }) => {
  const i = inputs as Values
  const part: Part = { shape: "sheet", thickness: i.thickness_m as number, outsideDiameter: null, filling: "empty", faces: 2 }
  const properties = {
    conductivity: i.k_W_per_mK as number,
    density: i.density_kg_per_m3 as number,
    specificHeat: i.cp_J_per_kgK as number,
  }
  const oven = i.oven_degC as number
  const it = heated(part, properties, i.h_total_W_per_m2K as number, 0, i.initial_degC as number, 20, 20)
  const alpha = properties.conductivity / properties.density / properties.specificHeat
  return {
    alpha_m2_per_s: alpha,
    biot: ((i.h_total_W_per_m2K as number) * (i.thickness_m as number)) / 2 / properties.conductivity,
    ...spots(it.response, it.drive(oven), { centre: 0, surface: 1 }, expected),
    time_centre_160degC_s: arrival(it, oven, 160, false)?.time,
  }
}

function filledTube(
  i: Values,
  names: { tube: string; sand: string },
  air: number,
): (expected: Readonly<Record<string, unknown>>) => Values {
  const [outer, wall] = [i.outer_diameter_m as number, i.wall_m as number]
  const it = heated(
    { shape: "tube", thickness: wall, outsideDiameter: outer, filling: "dry-sand", faces: 2 },
    { conductivity: i.k_pvc_W_per_mK as number, density: i.density_pvc_kg_per_m3 as number, specificHeat: i.cp_pvc_J_per_kgK as number },
    i.h_W_per_m2K as number,
    0,
    i[names.tube] as number,
    20,
    i[names.sand] as number,
  )
  return (expected) => spots(it.response, it.drive(air), { bore: 0, outer: 2, sand_centre: 3 }, expected)
}

const oneTerm: Check = (inputs, { expected }) => {
  const given = (inputs as Record<string, unknown>).biot_on_half_thickness_or_radius
  const biot = typeof given === "number" ? given : Number.POSITIVE_INFINITY
  const found: Values = {}
  for (const [name, shape] of shapes) {
    if (!(`C1_${name}` in expected)) continue
    const zeta = eigenvalue(shape, biot, 1)
    found[`zeta1_${name}_rad`] = zeta
    found[`C1_${name}`] = modeAmplitude(shape, zeta)
  }
  return found
}
const roots4 =
  (shape: Shape): Check =>
  (inputs) => {
    const found: Values = {}
    for (let n = 1; n <= 4; n++) {
      const zeta = eigenvalue(shape, (inputs as Values).biot as number, n)
      found[`zeta${n}_rad`] = zeta
      found[`C${n}`] = modeAmplitude(shape, zeta)
    }
    return found
  }
const fixedSurface: Check = (inputs) => {
  const fo = (inputs as Values).fourier_on_half_thickness_or_radius as number
  const found: Values = {}
  for (const [name, shape] of shapes) {
    found[`theta_centre_${name}`] = temperatureRatio(shape, Number.POSITIVE_INFINITY, fo, 0)
    found[`theta_mean_${name}`] = temperatureRatio(shape, Number.POSITIVE_INFINITY, fo, "mean")
  }
  return found
}

/** Inverse of erfc by a root search. */
/** Root that a row asks for; not found, the test fails. */
function rootOf(f: (x: number) => number, low: number, high: number): number {
  const found = brent(f, low, high)
  if (!found) throw new Error("no root")
  return found.x
}
const erfcInverse = (y: number) => rootOf((x) => erfc(x) - y, 0, 6)
/** Angle-to-length factor of tubeBend: what one metre of radius turns by. */
const lengthPerRadius = (degrees: number) =>
  tubeBend({ outsideDiameter: "10 mm", wall: "1 mm", radius: 1, angle: `${degrees} deg`, hot: false }).developedLength
/** A bare arc: tube of 1 mm, no springback, no runs, edge of the asked radius. */
const arcEdge = (radius: number, angle: number) =>
  bendTemplate({ shape: "arc", outsideDiameter: 1e-3, radius: radius + 0.5e-3, angle, springback: 0, straightRun: 0 })
const ball = (i: Values) => {
  const radius = (i.diameter_m as number) / 2
  const alpha = i.alpha_m2_per_s ?? (i.k_W_per_mK as number) / (i.density_kg_per_m3 as number) / (i.cp_J_per_kgK as number)
  return { radius, alpha, biot: ((i.h_W_per_m2K as number) * radius) / (i.k_W_per_mK as number) }
}
const shortCylinder = (i: Values) => {
  const [r, half, a, t] = [i.radius_m as number, (i.height_m as number) / 2, i.alpha_m2_per_s as number, i.time_s as number]
  const h = (i.h_W_per_m2K as number) / (i.k_W_per_mK as number)
  return { wall: { bi: h * half, fo: (a * t) / half ** 2 }, rod: { bi: h * r, fo: (a * t) / r ** 2 } }
}
/** Polycarbonate's published hours at a thickness: which of the two schedules is the longer changes with it, so the nearer is taken. */
function schedule(thickness: number, published: number): number {
  const { duration } = drying({ material: "pc", thickness })
  const [a, b] = [tidy(duration.low / 3600), tidy(duration.high / 3600)]
  return Math.abs(a - published) < Math.abs(b - published) ? a : b
}
const coldRadius =
  (plastic: Plastic): Check =>
  (inputs) => {
    const t = ((inputs as Values).thickness_in as number) * INCH
    const cold = (radius: number) =>
      tubeBend({ outsideDiameter: t, wall: t / 4, radius, angle: "10 deg", material: plastic, hot: false, support: "filled" })
    const radius = cold(1).minRadiusCold as number
    return { radius_in: radius / INCH, outer_fibre_strain: cold(radius).fibreStrain }
  }
const window =
  (plastic: Plastic, keys: Readonly<Record<string, (w: ReturnType<typeof formingWindow>) => number>> = {}): Check =>
  () => {
    const w = formingWindow({ material: plastic })
    return {
      set_degC: w.set.value,
      lower_limit_degC: w.lower.value,
      normal_degC: w.normal.value,
      upper_limit_degC: w.upper.value,
      ...Object.fromEntries(Object.entries(keys).map(([k, f]) => [k, f(w)])),
    }
  }
/** Blank length of a part, mm, for a shrinkage along the sheet or for the plastic's own. */
const blank = (plastic: Plastic, finished: number, shrinkAlong: number | null) =>
  (drape({
    material: plastic,
    shape: "cup",
    width: 0.1,
    depth: 0.02,
    thickness: 0.003,
    finishedLength: finished / 1000,
    shrinkageAlong: shrinkAlong,
  }).blankLength as number) * 1000
const jointDeflection: Check = (inputs) => ({ radius_m: ((inputs as Values).pipe_length_m as number) / lengthPerRadius(1) })
const conduit: Check = (inputs) => {
  const i = inputs as Record<string, unknown>
  const outsideDiameter = (i.outer_diameter_in as number) * INCH
  return {
    radius_one_shot_in: tidy((conduitBends.find((b) => b.size === i.trade_size_in)?.oneShot as number) / INCH),
    radius_other_bends_in: tidy(
      (tubeBend({ outsideDiameter, wall: outsideDiameter / 12, radius: 3, angle: "90 deg" }).minConduitRadius as number) / INCH,
    ),
  }
}
const mouldCooling: Check = (inputs) => {
  const i = inputs as Values
  const half = (i.thickness_m as number) / 2
  const alpha = (i.k_W_per_mK as number) / (i.density_kg_per_m3 as number) / (i.cp_J_per_kgK as number)
  const ratio = ((i.release_degC as number) - (i.mould_degC as number)) / ((i.start_degC as number) - (i.mould_degC as number))
  const zeta = eigenvalue("wall", Number.POSITIVE_INFINITY, 1)
  const first = modeAmplitude("wall", zeta)
  const seconds = (fo: number) => (fo * half * half) / alpha
  return {
    time_centre_formula_s: seconds(Math.log(first / ratio) / zeta ** 2),
    time_mean_formula_s: seconds(Math.log((first * Math.sin(zeta)) / zeta / ratio) / zeta ** 2),
    time_centre_full_series_s: seconds(fourierFor("wall", Number.POSITIVE_INFINITY, ratio, 0)),
    time_mean_full_series_s: seconds(fourierFor("wall", Number.POSITIVE_INFINITY, ratio, "mean")),
  }
}
const cup = (form: "cup" | "cone" | "dome", width: number, i: Values) =>
  drape({
    material: "hips",
    shape: form,
    width,
    depth: ((i.depth_mm ?? i.height_mm) as number) / 1000,
    thickness: (i.sheet_mm as number) / 1000,
  })
const drawn = (out: ReturnType<typeof drape>) => ({ areal_draw_ratio: out.arealDrawRatio, average_wall_mm: out.meanThickness * 1000 })
const crawfordBox = (i: Values) => {
  const [width, breadth, depth, thickness] = ["length_mm", "width_mm", "depth_mm", "sheet_mm"].map((k) => (i[k] as number) / 1000) as [
    number,
    number,
    number,
    number,
  ]
  const plugWidth = i.plug_length_mm === undefined ? null : i.plug_length_mm / 1000
  const plugBreadth = i.plug_width_mm === undefined ? null : i.plug_width_mm / 1000
  return {
    thickness,
    plug: (plugWidth ?? 0) * (plugBreadth ?? 0),
    out: drape({ material: "hips", shape: "box", width, breadth, depth, thickness, plugWidth, plugBreadth }),
  }
}

const oneTermBiots = "0p01 0p02 0p04 0p06 0p08 0p1 0p2 0p3 0p4 0p5 0p6 0p7 0p8 0p9 1 2 3 4 5 6 7 8 9 10 20 30 40 50 100 infinite".split(" ")
const checks: Record<string, Check> = {
  ...Object.fromEntries(oneTermBiots.map((b) => [`tf-oneterm-bi-${b}`, oneTerm])),
  ...Object.fromEntries(["0p05", "0p1", "0p2", "0p3", "0p5", "1"].map((f) => [`tf-fixedT-fo-${f}`, fixedSurface])),
  ...Object.fromEntries([1, 2, 3, 4, 6, 9, 12].map((m) => [`tf-joint-deflection-${m}m`, jointDeflection])),
  ...Object.fromEntries(["1_2", "3_4", "1", "2", "2-1_2", "3", "3-1_2", "4", "5", "6"].map((s) => [`tf-nec-bend-${s}`, conduit])),
  ...Object.fromEntries(["5mm", "6mm", "10mm"].map((s) => [`tf-acrylic-oven-${s}`, acrylicOven])),
  ...Object.fromEntries(["0p236in", "0p5in"].map((s) => [`tf-coldbend-acrylic-${s}`, coldRadius("pmma-cast")])),
  ...Object.fromEntries(["0p125in", "0p1875in", "0p25in"].map((s) => [`tf-coldbend-pc-${s}`, coldRadius("pc")])),
  "tf-roots4-cylinder-bi-1": roots4("rod"),
  "tf-roots4-cylinder-bi-10": roots4("rod"),
  "tf-roots4-plane-wall-bi-0p1": roots4("wall"),
  "tf-roots4-plane-wall-bi-1": roots4("wall"),
  "tf-roots4-sphere-bi-1": roots4("ball"),
  "tf-roots4-sphere-bi-10": roots4("ball"),
  "tf-mould-cooling-abs": mouldCooling,
  "tf-mould-cooling-pvc": mouldCooling,
  "tf-mould-cooling-form": () => {
    const zeta = eigenvalue("wall", Number.POSITIVE_INFINITY, 1)
    const first = modeAmplitude("wall", zeta)
    return { prefactor_centre: first, prefactor_mean: (first * Math.sin(zeta)) / zeta }
  },
  "tf-window-abs": window("abs", { orienting_degC: (w) => w.lower.high }),
  "tf-window-hdpe": window("hdpe", { normal_degC: (w) => w.normal.high }),
  "tf-window-hips-ps": window("hips"),
  "tf-window-pc": window("pc"),
  "tf-window-petg": window("petg"),
  "tf-window-pmma": window("pmma-cast"),
  "tf-window-pp": window("pp", { normal_min_degC: (w) => w.normal.low, normal_max_degC: (w) => w.normal.high }),
  "tf-window-pvc-rigid": window("pvc"),
  "tf-abs-fume-note": () => ({ decomposition_min_degC: plastics.abs.scorch?.low, decomposition_max_degC: plastics.abs.scorch?.high }),
  "tf-abs-one-face-3mm": (inputs, { expected }) => {
    const i = inputs as Values
    const it = heated(
      { shape: "sheet", thickness: i.thickness_m as number, outsideDiameter: null, filling: "empty", faces: 1 },
      { conductivity: i.k_W_per_mK as number, density: i.density_kg_per_m3 as number, specificHeat: i.cp_J_per_kgK as number },
      i.h_W_per_m2K as number,
      0,
      i.initial_degC as number,
      20,
      20,
    )
    return spots(it.response, it.drive(i.air_degC as number), { insulated_face: 0, heated_face: 1 }, expected)
  },
  "tf-abs-radiant-flux-3mm": (inputs, { expected }) => {
    const i = inputs as Values
    const k = i.k_W_per_mK as number
    const alpha = k / (i.density_kg_per_m3 as number) / (i.cp_J_per_kgK as number)
    const rise = (time: number, at: number) =>
      fluxedSheetRise(i.absorbed_flux_each_face_W_per_m2 as number, k, alpha, (i.thickness_m as number) / 2, time, at)
    const found: Values = { surface_minus_centre_limit_K: rise(1e5, 1) - rise(1e5, 0) }
    for (const key of Object.keys(expected)) {
      const [, spot, seconds] = /^(centre|surface)_(\d+)s_degC$/.exec(key) ?? []
      if (spot) found[key] = (i.initial_degC as number) + rise(Number(seconds), spot === "centre" ? 0 : 1)
    }
    return found
  },
  "tf-acrylic-rod-finite": (inputs, { expected }) => {
    const i = inputs as Values
    const alpha = (i.k_W_per_mK as number) / (i.density_kg_per_m3 as number) / (i.cp_J_per_kgK as number)
    const found: Values = {}
    for (const key of Object.keys(expected)) {
      const time = Number(/_(\d+)s_/.exec(key)?.[1])
      const { wall, rod } = shortCylinder({
        ...i,
        radius_m: (i.diameter_m as number) / 2,
        height_m: i.length_m as number,
        alpha_m2_per_s: alpha,
        time_s: time,
      })
      const theta = temperatureRatio("wall", wall.bi, wall.fo, 0) * temperatureRatio("rod", rod.bi, rod.fo, 0)
      found[key] = (i.oven_degC as number) + theta * ((i.initial_degC as number) - (i.oven_degC as number))
    }
    return found
  },
  "tf-arc-geometry-set": (inputs) => {
    const { radius_mm, angle_deg } = inputs as unknown as { radius_mm: number; angle_deg: number }
    const angle = (angle_deg * Math.PI) / 180
    const radius = radius_mm / 1000
    const edge = arcEdge(radius, angle)
    const { developedLength, setback } = tubeBend({ outsideDiameter: "10 mm", wall: "2 mm", radius, angle })
    return {
      arc_mm: developedLength * 1000,
      chord_mm: edge.chord * 1000,
      sagitta_mm: edge.height * 1000,
      tangent_length_mm: (setback as number) * 1000,
      external_mm: (Math.hypot(setback as number, radius) - radius) * 1000,
    }
  },
  "tf-arc-one-degree-radius": (inputs) => {
    const { arc_ft, angle_deg } = inputs as unknown as { arc_ft: number; angle_deg: number }
    return { radius_ft: arc_ft / lengthPerRadius(angle_deg) }
  },
  "tf-cengel-4-1-thermocouple": (inputs) => {
    const i = inputs as Values
    const { radius, alpha, biot } = ball(i)
    const rate = (eigenvalue("ball", biot, 1) ** 2 * alpha) / radius ** 2
    return {
      Lc_m: radius / 3,
      biot_Lc: biot / 3,
      rate_per_s: rate,
      time_s: (fourierFor("ball", biot, i.remaining_fraction as number, "mean") * radius ** 2) / alpha,
    }
  },
  "tf-incropera-5-1": (inputs) => {
    const i = inputs as Values
    const rate = (d: number) => {
      const { radius, alpha, biot } = ball({ ...i, diameter_m: d })
      return (eigenvalue("ball", biot, 1) ** 2 * alpha) / radius ** 2
    }
    const diameter = rootOf((d) => rate(d) * (i.time_constant_s as number) - 1, 1e-5, 1e-2)
    const { radius, alpha, biot } = ball({ ...i, diameter_m: diameter })
    const left = ((i.target_degC as number) - (i.gas_degC as number)) / ((i.initial_degC as number) - (i.gas_degC as number))
    return { diameter_m: diameter, biot_Lc: biot / 3, time_s: (fourierFor("ball", biot, left, "mean") * radius ** 2) / alpha }
  },
  "tf-cengel-4-10-exact": (inputs) => semiInfiniteRod(inputs as Values),
  "tf-cengel-4-10-semi-infinite-cylinder": (inputs) => semiInfiniteRod(inputs as Values),
  "tf-cengel-4-11-inverse-h": (inputs) => {
    const i = inputs as Values
    const ratio =
      ((i.surface_limit_degC as number) - (i.fluid_degC as number)) / ((i.centre_target_degC as number) - (i.fluid_degC as number))
    const biot = rootOf((b) => Math.cos(eigenvalue("wall", b, 1)) - ratio, 1e-3, 100)
    return { theta_surface_over_centre: ratio, biot, h_W_per_m2K: (biot * (i.k_W_per_mK as number)) / (i.half_thickness_m as number) }
  },
  "tf-cengel-4-3-sphere-exact": (inputs) => {
    const i = inputs as Values
    const { radius, alpha, biot } = ball(i)
    const ratio = ((i.target_centre_degC as number) - (i.fluid_degC as number)) / ((i.initial_degC as number) - (i.fluid_degC as number))
    const zeta = eigenvalue("ball", biot, 1)
    const fourier = fourierFor("ball", biot, ratio, 0)
    return { zeta1_rad: zeta, C1: modeAmplitude("ball", zeta), fourier, time_s: (fourier * radius ** 2) / alpha }
  },
  "tf-cengel-4-4-plate-oven": (inputs) => {
    const i = inputs as Values
    const half = (i.thickness_m as number) / 2
    const biot = ((i.h_W_per_m2K as number) * half) / (i.k_W_per_mK as number)
    const fourier = ((i.alpha_m2_per_s as number) * (i.time_s as number)) / half ** 2
    const theta = temperatureRatio("wall", biot, fourier, 1)
    return {
      inverse_biot: 1 / biot,
      fourier,
      surface_degC: (i.oven_degC as number) + theta * ((i.initial_degC as number) - (i.oven_degC as number)),
    }
  },
  "tf-cengel-4-5-shaft": (inputs) => shaft(inputs as Values),
  "tf-cengel-4-5-shaft-exact": (inputs) => shaft(inputs as Values),
  "tf-cengel-4-6-depth": (inputs) => frost(inputs as Values, (inputs as Values).alpha_m2_per_s as number),
  "tf-cengel-4-6-depth-exact": (inputs) => frost(inputs as Values, (inputs as Values).alpha_m2_per_s as number),
  "tf-incropera-5-6": (inputs) => {
    const i = inputs as Values
    const alpha = (i.k_W_per_mK as number) / (i.density_kg_per_m3 as number) / (i.cp_J_per_kgK as number)
    const found = frost(i, alpha)
    return { alpha_m2_per_s: alpha, erf_value: 1 - erfc(found.eta), ...found }
  },
  "tf-cengel-4-7-flux": (inputs) => {
    const i = inputs as Values
    const at = (name: string) =>
      (i.initial_degC as number) +
      fluxedBodyRise(
        i.flux_W_per_m2 as number,
        i[`k_${name}_W_per_mK`] as number,
        i[`alpha_${name}_m2_per_s`] as number,
        i.time_s as number,
      )
    return { surface_wood_degC: at("wood"), surface_aluminium_degC: at("aluminium") }
  },
  "tf-cengel-4-8-short-cylinder": (inputs) => {
    const i = inputs as Values
    const { wall, rod } = shortCylinder(i)
    const rodTheta = temperatureRatio("rod", rod.bi, rod.fo, 0)
    const at = (place: number) =>
      (i.air_degC as number) +
      temperatureRatio("wall", wall.bi, wall.fo, place) * rodTheta * ((i.initial_degC as number) - (i.air_degC as number))
    return { fourier_wall: wall.fo, fourier_cylinder: rod.fo, centre_degC: at(0), top_centre_degC: at(1) }
  },
  "tf-cengel-4-9-short-cylinder-heat": (inputs) => {
    const i = inputs as Values
    const { wall, rod } = shortCylinder(i)
    const [a, b] = [1 - temperatureRatio("wall", wall.bi, wall.fo, "mean"), 1 - temperatureRatio("rod", rod.bi, rod.fo, "mean")]
    const mass = (i.density_kg_per_m3 as number) * Math.PI * (i.radius_m as number) ** 2 * (i.height_m as number)
    const most = mass * (i.cp_kJ_per_kgK as number) * ((i.initial_degC as number) - (i.air_degC as number))
    return { mass_kg: mass, Q_max_kJ: most, Qfrac_wall: a, Qfrac_cylinder: b, Q_kJ: most * (a + b * (1 - a)) }
  },
  "tf-coldbend-acrylic-impact": () => {
    const [cast, extruded] = [plastics["pmma-cast"].coldStrain as Figure, plastics["pmma-extruded"].coldStrain as Figure]
    return {
      cast_ratio: 0.5 / cast.low,
      extruded_ratio: 0.5 / extruded.low,
      impact_grade_65_ratio: 0.5 / cast.high,
      impact_grade_45_ratio: 0.5 / extruded.high,
    }
  },
  "tf-contact-sand-pvc": (inputs) => {
    const i = inputs as Values
    const sand = Math.sqrt(drySand.conductivity * drySand.density * drySand.specificHeat)
    const pvc = Math.sqrt((i.k_pvc_W_per_mK as number) * (i.density_pvc_kg_per_m3 as number) * (i.cp_pvc_J_per_kgK as number))
    return {
      effusivity_sand_SI: sand,
      effusivity_pvc_SI: pvc,
      contact_degC: contactTemperature(sand, i.sand_degC as number, pvc, i.pvc_degC as number),
    }
  },
  "tf-contact-temperature-skin": (inputs) => {
    const i = inputs as Values
    const touch = (name: string) =>
      contactTemperature(
        i.effusivity_skin_kJ as number,
        i.skin_degC as number,
        i[`effusivity_${name}_kJ`] as number,
        i.block_degC as number,
      )
    return { contact_aluminium_degC: touch("aluminium"), contact_wood_degC: touch("wood") }
  },
  // a box of 600 × 600 mm open area and twice that formed
  "tf-draw-adr-2": (inputs) => {
    const i = inputs as Values
    const side = Math.sqrt(i.sheet_area_mm2 as number) / 1000
    const depth = ((i.part_area_mm2 as number) - (i.sheet_area_mm2 as number)) / 1e6 / (4 * side)
    return drawn(drape({ material: "abs", shape: "box", width: side, breadth: side, depth, thickness: (i.sheet_mm as number) / 1000 }))
  },
  "tf-draw-cone": (inputs) => drawn(cup("cone", ((inputs as Values).base_diameter_mm as number) / 1000, inputs as Values)),
  "tf-draw-cylinder-cup": (inputs) => drawn(cup("cup", ((inputs as Values).diameter_mm as number) / 1000, inputs as Values)),
  "tf-draw-dome": (inputs) => {
    const i = inputs as Values
    const out = cup("dome", ((i.rim_radius_mm as number) * 2) / 1000, i)
    return { ...drawn(out), sphere_radius_mm: (out.formedArea / (2 * Math.PI * (i.height_mm as number))) * 1e6 }
  },
  "tf-draw-frustum": (inputs) => {
    const i = inputs as Values
    const [top, base] = [(i.top_radius_mm as number) / 1000, (i.base_radius_mm as number) / 1000]
    const out = drape({
      material: "hips",
      shape: "frustum",
      width: 2 * top,
      baseDiameter: 2 * base,
      depth: (i.depth_mm as number) / 1000,
      thickness: (i.sheet_mm as number) / 1000,
    })
    return {
      slant_mm: ((out.formedArea - Math.PI * base ** 2) / (Math.PI * (top + base))) * 1000,
      area_mm2: out.formedArea * 1e6,
      areal_draw_ratio: out.arealDrawRatio,
    }
  },
  "tf-draw-crawford-box": (inputs) => {
    const { out, thickness } = crawfordBox(inputs as Values)
    return {
      sheet_volume_mm3: out.openArea * thickness * 1e9,
      part_area_mm2: out.formedArea * 1e6,
      average_wall_mm: out.meanThickness * 1000,
    }
  },
  "tf-draw-crawford-plug": (inputs) => {
    const { out, thickness, plug } = crawfordBox(inputs as Values)
    const wallArea = out.formedArea - out.openArea
    return {
      plug_volume_mm3: plug * thickness * 1e9,
      wall_volume_mm3: (out.plugThickness as number) * wallArea * 1e9,
      wall_area_mm2: wallArea * 1e6,
      wall_mm: (out.plugThickness as number) * 1000,
    }
  },
  "tf-draw-linear-0p4": (inputs) => {
    const i = inputs as Values
    const side = (i.smallest_plan_mm as number) / 1000
    return {
      draw_ratio: drape({
        material: "abs",
        shape: "box",
        width: side,
        breadth: side,
        depth: (i.depth_mm as number) / 1000,
        thickness: "3 mm",
      }).linearDrawRatio,
    }
  },
  "tf-drying-acrylic": () => {
    const { duration, temperature } = drying({ material: "pmma-cast", thickness: "5 mm" })
    return { hours: duration.high / 3600, temperature_degC: temperature }
  },
  "tf-drying-palsun": (inputs, { expected }) =>
    Object.fromEntries(
      ((inputs as Record<string, unknown>).thickness_mm as number[]).map((t) => [
        `t${t}mm_h`,
        schedule(t / 1000, expected[`t${t}mm_h`] as number),
      ]),
    ),
  "tf-drying-pc-highline": (_, { expected }) => {
    const moisture = drying({ material: "pc", thickness: "3 mm" }).cautions.find((c) => c.code === "vent-only-dried")?.values as Values
    return {
      h_0p118in: schedule(0.118 * INCH, expected.h_0p118in as number),
      h_0p236in: schedule(0.236 * INCH, expected.h_0p236in as number),
      h_0p375in: schedule(0.375 * INCH, expected.h_0p375in as number),
      equilibrium_moisture_pct: tidy((moisture.atRest as number) * 100),
      bubble_moisture_pct: tidy((moisture.blisters as number) * 100),
      bubble_temperature_degC: dryings.pc.temperature.value,
    }
  },
  "tf-fixedT-half-fourier": (inputs) => {
    const ratio = (inputs as Values).theta_centre as number
    return Object.fromEntries(shapes.map(([name, shape]) => [`fourier_${name}`, fourierFor(shape, Number.POSITIVE_INFINITY, ratio, 0)]))
  },
  "tf-parker-half-time": (inputs) => ({
    // the pulse-heated slab's series is that of a ball's centre after a step
    alpha_t_half_over_L2: fourierFor("ball", Number.POSITIVE_INFINITY, (inputs as Values).signal_fraction as number, 0),
  }),
  "tf-form-above-tg": () => ({
    pmma_tg_degC: plastics["pmma-cast"].transition.value,
    petg_tg_degC: plastics.petg.transition.value,
    pc_tg_degC: plastics.pc.transition.value,
  }),
  "tf-form-acrylic-cast": () => ({ min_degC: plastics["pmma-cast"].normal.low, max_degC: plastics["pmma-cast"].upper.high }),
  "tf-form-acrylic-handbook-range": () => ({ max_degC: plastics["pmma-extruded"].upper.high }),
  "tf-form-acrylic-surface-limit": () => ({ limit_degC: plastics["pmma-cast"].upper.value }),
  "tf-form-lttp-water": () => {
    const { normal } = formingWindow({ material: "low-temp-polyester" })
    return { water_min_degC: normal.low, water_max_degC: normal.high }
  },
  "tf-form-pc-windows": () => {
    const { lower, normal, upper } = formingWindow({ material: "pc" })
    return { high_min_degC: normal.value, high_max_degC: upper.high, drape_min_degC: lower.high, drape_max_degC: normal.value }
  },
  "tf-form-petg-sheet": () => {
    const {
      window: { low: from, high: to },
      normal,
    } = formingWindow({ material: "petg" })
    return { min_degC: from, max_degC: to, optimum_degC: normal.value }
  },
  "tf-form-pvc-pipe": () => {
    const {
      window: { low: from, high: to },
      normal,
    } = formingWindow({ material: "pvc" })
    return { min_degC: from, max_degC: to, sharp_min_degC: normal.low, mild_bend_limit_deg: (unsupportedBend * 180) / Math.PI }
  },
  "tf-gain-90": (inputs) => {
    const i = inputs as Values
    const [leg, radius] = [3, (i.radius_in as number) * INCH]
    const out = tubeBend({
      outsideDiameter: (i.outer_diameter_in as number) * INCH,
      wall: "4 mm",
      radius,
      angle: "90 deg",
      legA: leg,
      legB: leg,
    })
    return { gain_centreline_in: (out.gain as number) / INCH, gain_outside_in: (2 * leg - (out.cutLength as number)) / INCH }
  },
  "tf-gain-general": (inputs) => {
    const i = inputs as Values
    const { gain } = tubeBend({
      outsideDiameter: "20 mm",
      wall: "2 mm",
      radius: (i.radius_mm as number) / 1000,
      angle: `${i.angle_deg as number} deg`,
    })
    return { gain_mm: (gain as number) * 1000 }
  },
  "tf-njatc-90-layout": (inputs) => {
    const i = inputs as Values
    const tube = { outsideDiameter: (i.outer_diameter_in as number) * INCH, wall: 4e-3, radius: (i.radius_in as number) * INCH }
    const square = tubeBend({ ...tube, angle: "90 deg", legA: (i.stub_in as number) * INCH, legB: (i.leg_in as number) * INCH })
    // the source takes a quarter turn as 1.57 rad
    const developed = tubeBend({ ...tube, angle: i.pi_half_used as number }).developedLength / INCH
    const [a, b] = [(square.straightA as number) / INCH, (square.straightB as number) / INCH]
    return { D1_in: a, D2_in: b, developed_length_in: developed, cut_length_in: a + developed + b }
  },
  "tf-incropera-1-2": (inputs) => {
    const i = inputs as Values
    const settles = (flux: number) =>
      softening({
        material: "pc",
        thickness: "3 mm",
        place: "stage-light",
        ambientTemperature: i.surroundings_degC as number,
        irradiance: flux,
        absorptance: 1,
        emissivity: i.emissivity as number,
        filmCoefficient: i.h_W_per_m2K as number,
        faces: 1,
      }).materialTemperature
    const flux = rootOf((q) => settles(q) - (i.surface_degC as number), 100, 20000)
    return { total_W_per_m: flux * Math.PI * (i.diameter_m as number) }
  },
  "tf-incropera-5-4": (inputs) => {
    const i = inputs as Values
    const wall = i.wall_m as number
    const biot = ((i.h_W_per_m2K as number) * wall) / (i.k_W_per_mK as number)
    const fourier = ((i.alpha_m2_per_s as number) * (i.time_s as number)) / wall ** 2
    const start = (i.initial_degC as number) - (i.fluid_degC as number)
    const at = (place: number | "mean") => temperatureRatio("wall", biot, fourier, place) * start
    const zeta = eigenvalue("wall", biot, 1)
    const capacity = (i.density_kg_per_m3 as number) * (i.cp_J_per_kgK as number) * Math.PI * (i.diameter_m as number) * wall
    return {
      biot,
      fourier,
      zeta1_rad: zeta,
      C1: modeAmplitude("wall", zeta),
      insulated_face_degC: (i.fluid_degC as number) + at(0),
      wetted_face_degC: (i.fluid_degC as number) + at(1),
      flux_W_per_m2: (i.h_W_per_m2K as number) * at(1),
      Q_per_m_J: capacity * (start - at("mean")),
    }
  },
  "tf-incropera-5-5-exact": (inputs) => {
    const i = inputs as Values
    const biot = i.biot as number
    const zeta = eigenvalue("ball", biot, 1)
    const fourier = fourierFor("ball", biot, i.theta_centre as number, 0)
    return {
      zeta1_rad: zeta,
      C1: modeAmplitude("ball", zeta),
      fourier,
      time_s: (fourier * (i.radius_m as number) ** 2) / (i.alpha_m2_per_s as number),
    }
  },
  "tf-incropera-coating-problem": (inputs) => {
    const i = inputs as Values
    const thick = i.thickness_m as number
    const biot = ((i.h_W_per_m2K as number) * thick) / (i.k_W_per_mK as number)
    const [start, air] = [i.initial_degC as number, i.air_degC as number]
    const fourier = fourierFor("wall", biot, ((i.surface_target_degC as number) - air) / (start - air), 1)
    return {
      biot,
      zeta1_rad: eigenvalue("wall", biot, 1),
      time_s: (fourier * thick ** 2) / (i.alpha_m2_per_s as number),
      interface_degC: air + temperatureRatio("wall", biot, fourier, 0) * (start - air),
    }
  },
  "tf-pc-hot-plate-3mm": (inputs, { expected }) => {
    const i = inputs as Values
    const thickness = i.thickness_m as number
    const layer = {
      thickness,
      conductivity: i.k_W_per_mK as number,
      heatCapacity: (i.density_kg_per_m3 as number) * (i.cp_J_per_kgK as number),
    }
    const body: Body = {
      shape: "plane",
      start: 0,
      layers: [layer],
      inside: i.h_plate_contact_W_per_m2K as number,
      outside: i.h_air_W_per_m2K as number,
    }
    const response = conduct(body, [0, thickness / 2, thickness])
    const drive = { inside: i.plate_degC as number, outside: i.air_degC as number, initial: [i.initial_degC as number] }
    return {
      ...spots(response, drive, { plate_face: 0, mid: 1, air_face: 2 }, expected),
      steady_plate_face_degC: response.steady(0, drive),
      steady_air_face_degC: response.steady(2, drive),
    }
  },
  "tf-pellet-water": (inputs, { expected }) => {
    const i = inputs as Values
    const { radius, alpha, biot } = ball(i)
    const found: Values = {}
    for (const key of Object.keys(expected)) {
      const [, spot, seconds] = /^(centre|surface)_(\d+)s_degC$/.exec(key) ?? []
      const theta = temperatureRatio("ball", biot, (alpha * Number(seconds)) / radius ** 2, spot === "centre" ? 0 : 1)
      found[key] = (i.water_degC as number) + theta * ((i.initial_degC as number) - (i.water_degC as number))
    }
    return found
  },
  "tf-pmma-decomposition": () => ({ decomposition_starts_degC: plastics["pmma-cast"].scorch?.value }),
  "tf-prop-abs-typical": spread("abs", {
    "expansion_1e-6_per_K": ["expansion", 1e-6],
    k_W_per_mK: ["conductivity"],
    cp_J_per_kgK: ["specificHeat"],
    density_kg_per_m3: ["density"],
    max_operating_degC: ["service"],
  }),
  "tf-prop-azom-pvc": (inputs, row) => ({
    ...spread("pvc", {
      hdt_0p45MPa_degC: ["deflection"],
      hdt_1p80MPa_degC: ["deflection"],
      "linear_expansion_1e-6_per_K": ["expansion", 1e-6],
      density_kg_per_m3: ["density"],
      max_operating_degC: ["service"],
      mould_shrinkage_pct: ["shrinkage", 0.01],
    })(inputs, row),
    drying_h: drying({ material: "pvc", thickness: "3 mm" }).duration.low / 3600,
  }),
  "tf-prop-cast-acrylic": (inputs, row) => ({
    ...spread("pmma-cast", { "expansion_1e-6_per_K": ["expansion", 1e-6], cp_J_per_kgK: ["specificHeat"], k_W_per_mK: ["conductivity"] })(
      inputs,
      row,
    ),
    forming_min_degC: plastics["pmma-cast"].lower.high,
    forming_max_degC: plastics["pmma-cast"].upper.low,
    shrinkage_after_heating_max_pct: plastics["pmma-cast"].shrinkage.high * 100,
  }),
  "tf-prop-crawford-abs": crawford("abs"),
  "tf-prop-crawford-acrylic": crawford("pmma-cast"),
  "tf-prop-crawford-pc": crawford("pc"),
  "tf-prop-crawford-pet": crawford("petg"),
  "tf-prop-crawford-polystyrene": crawford("hips"),
  "tf-prop-goodfellow-abs-pc": (inputs, row) => ({
    ...spread("abs", { abs_hdt_0p45_degC: ["deflection"], abs_hdt_1p8_degC: ["deflection"], abs_k_W_per_mK: ["conductivity"] })(
      inputs,
      row,
    ),
    ...spread("pc", {
      pc_hdt_0p45_degC: ["deflection"],
      pc_hdt_1p8_min_degC: ["deflection"],
      pc_hdt_1p8_max_degC: ["deflection"],
      pc_cp_J_per_kgK: ["specificHeat"],
      pc_k_min_W_per_mK: ["conductivity"],
      pc_k_max_W_per_mK: ["conductivity"],
    })(inputs, row),
  }),
  "tf-prop-granta-abs": spread("abs", {
    tg_min_degC: ["transition"],
    tg_max_degC: ["transition"],
    hdt_0p45MPa_min_degC: ["deflection"],
    hdt_0p45MPa_max_degC: ["deflection"],
    hdt_1p8MPa_min_degC: ["deflection"],
    hdt_1p8MPa_max_degC: ["deflection"],
    density_min_kg_per_m3: ["density"],
    density_max_kg_per_m3: ["density"],
    k_min_W_per_mK: ["conductivity"],
    k_max_W_per_mK: ["conductivity"],
  }),
  "tf-prop-mif-petg": spread("petg", {
    tg_degC: ["transition"],
    hdt_1p82MPa_degC: ["deflection"],
    hdt_0p455MPa_degC: ["deflection"],
    cp_J_per_kgK: ["specificHeat"],
    k_W_per_mK: ["conductivity"],
    "expansion_1e-6_per_K": ["expansion", 1e-6],
  }),
  "tf-prop-mif-pp": spread("pp", {
    hdt_1p82MPa_degC: ["deflection"],
    hdt_0p455MPa_degC: ["deflection"],
    melting_onset_degC: ["transition"],
    decomposition_degC: ["scorch"],
    cp_J_per_kgK: ["specificHeat"],
    k_W_per_mK: ["conductivity"],
    "expansion_1e-6_per_K": ["expansion", 1e-6],
  }),
  "tf-prop-netzsch-hdpe": spread("hdpe", {
    melting_min_degC: ["transition"],
    melting_max_degC: ["transition"],
    melting_peak_dsc_degC: ["transition"],
    melting_enthalpy_sample_J_per_g: ["melting", 1000],
    cp_min_J_per_kgK: ["specificHeat"],
    cp_max_J_per_kgK: ["specificHeat"],
    k_min_W_per_mK: ["conductivity"],
    k_max_W_per_mK: ["conductivity"],
    "expansion_min_1e-6_per_K": ["expansion", 1e-6],
    "expansion_max_1e-6_per_K": ["expansion", 1e-6],
  }),
  "tf-prop-netzsch-pc": spread("pc", {
    tg_min_degC: ["transition"],
    tg_max_degC: ["transition"],
    tg_dsc_midpoint_degC: ["transition"],
    cp_min_J_per_kgK: ["specificHeat"],
    cp_max_J_per_kgK: ["specificHeat"],
    k_min_W_per_mK: ["conductivity"],
    k_max_W_per_mK: ["conductivity"],
    density_min_kg_per_m3: ["density"],
    density_max_kg_per_m3: ["density"],
  }),
  "tf-prop-netzsch-pmma-tg": spread("pmma-cast", { tg_first_heating_degC: ["transition"], tg_second_heating_degC: ["transition"] }),
  "tf-prop-netzsch-pvc-u": spread("pvc", {
    tg_min_degC: ["transition"],
    tg_max_degC: ["transition"],
    "expansion_min_1e-6_per_K": ["expansion", 1e-6],
    "expansion_max_1e-6_per_K": ["expansion", 1e-6],
    k_min_W_per_mK: ["conductivity"],
    k_max_W_per_mK: ["conductivity"],
    density_min_kg_per_m3: ["density"],
    density_max_kg_per_m3: ["density"],
  }),
  "tf-prop-pc-vicat": spread("pc", { tg_degC: ["transition"], hdt_min_degC: ["deflection"], hdt_max_degC: ["deflection"] }),
  "tf-prop-pcl": spread("low-temp-polyester", { melting_degC: ["transition"], density_kg_per_m3: ["density"] }),
  "tf-prop-petg-sheet": (inputs, row) => ({
    ...spread("petg", { hdt_0p45MPa_degC: ["deflection"], "expansion_1e-6_per_K": ["expansion", 1e-6], density_kg_per_m3: ["density"] })(
      inputs,
      row,
    ),
    predrying_required: drying({ material: "petg", thickness: "3 mm" }).needed === "no" ? 0 : 1,
  }),
  "tf-prop-pipe-pvc": spread("pvc", {
    "expansion_1e-6_per_K": ["expansion", 1e-6],
    k_W_per_mK: ["conductivity"],
    hdt_degC: ["deflection"],
    cp_J_per_kgK: ["specificHeat"],
  }),
  "tf-prop-sand": () => ({
    density_kg_per_m3: drySand.density,
    k_W_per_mK: drySand.conductivity,
    cp_J_per_kgK: drySand.specificHeat,
    "alpha_1e-6_m2_per_s": (drySand.conductivity / drySand.density / drySand.specificHeat) * 1e6,
  }),
  "tf-pvc-cold-curve-250D": () => ({ radius_over_diameter: 0.5 / (plastics.pvc.coldStrain as Figure).high }),
  "tf-pvc-cold-curve-300D": (inputs) => {
    const i = inputs as Values
    const outsideDiameter = (i.outer_diameter_in as number) * INCH
    const bend = (radius: number) =>
      tubeBend({ outsideDiameter, wall: outsideDiameter / 12, radius, angle: "10 deg", hot: false, support: "filled" })
    const radius = bend(1).minRadiusCold as number
    const { fibreStrain } = bend(radius)
    return { radius_in: radius / INCH, strain_pct: fibreStrain * 100, stress_psi: (i.E_psi as number) * fibreStrain }
  },
  "tf-pvc-degradation-onset": () => ({ unstabilised_onset_degC: plastics.pvc.scorch?.value }),
  "tf-pvc-tube-oven": (inputs, { expected }) => {
    const i = inputs as Values
    const it = heated(
      { shape: "tube", thickness: i.wall_m as number, outsideDiameter: i.outer_diameter_m as number, filling: "empty", faces: 2 },
      { conductivity: i.k_W_per_mK as number, density: i.density_kg_per_m3 as number, specificHeat: i.cp_J_per_kgK as number },
      i.h_W_per_m2K as number,
      0,
      i.initial_degC as number,
      20,
      20,
    )
    return {
      alpha_m2_per_s: (i.k_W_per_mK as number) / (i.density_kg_per_m3 as number) / (i.cp_J_per_kgK as number),
      biot_on_outer_radius: ((i.h_W_per_m2K as number) * (i.outer_diameter_m as number)) / 2 / (i.k_W_per_mK as number),
      ...spots(it.response, it.drive(i.oven_degC as number), { inner: 0, outer: 1 }, expected),
    }
  },
  "tf-pvc-tube-sand-cold": (inputs, { expected }) => {
    const i = inputs as Values
    return filledTube(i, { tube: "initial_degC", sand: "initial_degC" }, i.oven_degC as number)(expected)
  },
  "tf-pvc-tube-sand-hot": (inputs, { expected }) => {
    const i = inputs as Values
    return filledTube(i, { tube: "tube_initial_degC", sand: "sand_initial_degC" }, i.air_degC as number)(expected)
  },
  "tf-radiant-lumped-closed-form": (inputs) => {
    const i = inputs as Values
    return {
      time_s: radiantSheetTime(
        (i.density_kg_per_m3 as number) * (i.cp_J_per_kgK as number),
        i.thickness_m as number,
        i.effective_emissivity as number,
        i.heater_K as number,
        i.initial_K as number,
        i.final_K as number,
      ),
    }
  },
  "tf-radiant-semi-infinite": (inputs, { expected }) => {
    const i = inputs as Values
    const k = i.k_W_per_mK as number
    const alpha = k / (i.density_kg_per_m3 as number) / (i.cp_J_per_kgK as number)
    return Object.fromEntries(
      Object.keys(expected).map((key) => [
        key,
        (i.initial_degC as number) +
          fluxedBodyRise(i.flux_W_per_m2 as number, k, alpha, i.time_s as number, Number(/^T_([\d.]+)mm/.exec(key)?.[1]) / 1000),
      ]),
    )
  },
  "tf-radius-from-sagitta": (inputs) => {
    const i = inputs as Values
    const chord = (i.chord_mm as number) / 1000
    const angleOf = (radius: number) => 2 * Math.asin(chord / (2 * radius))
    const radius = rootOf((r) => arcEdge(r, angleOf(r)).height - (i.sagitta_mm as number) / 1000, 1, 10)
    const { developedLength } = tubeBend({ outsideDiameter: "10 mm", wall: "1 mm", radius, angle: angleOf(radius) })
    return { radius_mm: radius * 1000, arc_mm: developedLength * 1000 }
  },
  // a hundredth of the size, so that the radius is in range: the figures scale
  "tf-sagitta-62ft-chord": (inputs) => {
    const i = inputs as Values
    const foot = 0.3048 / 100
    const radius = (i.radius_ft as number) * foot
    const edge = arcEdge(radius, 2 * Math.asin(((i.chord_ft as number) * foot) / (2 * radius)))
    return { mid_ordinate_in: (edge.height / INCH) * 100 }
  },
  "tf-sandbend-rule": () => ({
    sand_degC: sandBending.sand,
    pipe_degC: sandBending.pipe,
    min_radius_over_diameter:
      tubeBend({ outsideDiameter: 0.02, wall: 0.002, radius: 1, angle: "30 deg", support: "filled" }).minRadiusFilled / 0.02,
    soak_min: sandBending.soak / 60,
    jig_hold_min: sandBending.hold / 60,
  }),
  "tf-shrink-blank-size": (inputs) => {
    const i = inputs as Values
    const out = drape({
      material: "pmma-extruded",
      shape: "cup",
      width: "80 mm",
      depth: "60 mm",
      thickness: "3 mm",
      finishedLength: (i.finished_machine_direction_mm as number) / 1000,
      finishedWidth: (i.finished_transverse_mm as number) / 1000,
      shrinkageAlong: i.shrink_md as number,
      shrinkageAcross: -(i.growth_td as number),
    })
    return { blank_machine_direction_mm: (out.blankLength as number) * 1000, blank_transverse_mm: (out.blankWidth as number) * 1000 }
  },
  "tf-drying-pc-thickness-exponent": (inputs) => {
    const { thickness_mm: mm, time_h: hours } = inputs as unknown as { thickness_mm: number[]; time_h: number[] }
    const at = (i: number) => schedule((mm[i] as number) / 1000, hours[i] as number)
    const power = (i: number, j: number) => Math.log(at(j) / at(i)) / Math.log((mm[j] as number) / (mm[i] as number))
    return { exponent_1_to_2: power(0, 1), exponent_2_to_4: power(1, 2), exponent_4_to_8: power(2, 3), exponent_1_to_8: power(0, 3) }
  },
  "tf-lttp-water-and-dry": () => ({ water_degF: formingWindow({ material: "low-temp-polyester" }).normal.value * 1.8 + 32 }),
  "tf-mould-size-two-rules": (inputs) => {
    const { part_mm, shrink } = inputs as unknown as { part_mm: number; shrink: number[] }
    return { exact_mm: shrink.map((s) => blank("abs", part_mm, s)) }
  },
  "tf-pvc-pipe-arc-lengths": (inputs) => {
    const i = inputs as unknown as { outer_diameter_in: number; inside_radius_in: number; angle_deg: number[] }
    const outsideDiameter = i.outer_diameter_in * INCH
    const radius = i.inside_radius_in * INCH + outsideDiameter / 2
    const arc = (degrees: number) =>
      tubeBend({ outsideDiameter, wall: 3e-3, radius, angle: `${degrees} deg`, support: "filled" }).developedLength
    return { arc_in: i.angle_deg.map((a) => arc(a) / INCH) }
  },
  "tf-pvc-pipe-heated-length-table": () => ({ quarter_arc_over_radius: lengthPerRadius(90) }),
  "tf-pvc-foam-expansion-1m": (inputs) => {
    const i = inputs as unknown as { length_m: number; rise_K: number; expansion_mm_per_m_K: number[] }
    const { expansion } = plastics["pvc-foam"]
    return { growth_mm: i.expansion_mm_per_m_K.map((a) => inside(expansion, a * 1e-3) * 1000 * i.length_m * i.rise_K) }
  },
  "tf-pvc-foam-heater-settings": () => {
    const { lower, upper } = formingWindow({ material: "pvc-foam" })
    return { oven_degC: [Math.max(lower.high, (260 - 32) / 1.8), upper.value] }
  },
  "tf-pvc-foam-heating-per-mm": (inputs, { expected }) => {
    const bend = lineBend({ material: "pvc-foam", thickness: "6 mm", insideRadius: "20 mm", angle: "90 deg", faces: 1 })
    // at the oven that the solver itself advises, the usual plastic, from both faces
    const perMm = (inputs as { thickness_mm: number[] }).thickness_mm.map((mm) => {
      const part = { shape: "sheet", thickness: mm / 1000, material: "pvc-foam", heatSource: "oven" } as const
      const { advisedSourceTemperature } = heatingTime({ ...part, sourceTemperature: 130 })
      return heatingTime({ ...part, sourceTemperature: advisedSourceTemperature as number }).time / mm
    })
    return {
      seconds_per_mm_min: Math.min(expected.seconds_per_mm_min as number, ...perMm),
      seconds_per_mm_max: Math.max(expected.seconds_per_mm_max as number, ...perMm),
      bending_from_degC: formingWindow({ material: "pvc-foam" }).window.low,
      radius_over_thickness_min: bend.minRadius / 0.006,
      border_over_thickness_min: (bend.minBorder as number) / 0.006,
      both_faces_from_mm: (bend.cautions.find((c) => c.code === "one-face")?.values.bothFrom as number) * 1000,
    }
  },
  "tf-pvc-foam-service-and-density": (_, { expected }) => {
    const { density, service, expansion } = plastics["pvc-foam"]
    const all = (key: string, figure: Figure, scale: number) =>
      (expected[key] as number[]).map((published) => tidy(inside(figure, tidy(published * scale)) / scale))
    return {
      density_g_per_cm3_min: all("density_g_per_cm3_min", density, 1000),
      density_g_per_cm3_max: all("density_g_per_cm3_max", density, 1000),
      service_max_degC: all("service_max_degC", service, 1),
      expansion_mm_per_m_K: all("expansion_mm_per_m_K", expansion, 1e-3),
    }
  },
  "tf-pvc-pipe-heating-time": () => ({ target_degC: formingWindow({ material: "pvc" }).normal.low }),
  "tf-pvc-pipe-states-degF": (_, { expected }) => ({
    softening_degC: formingWindow({ material: "pvc" }).normal.low,
    service_max_degC: inside(plastics.pvc.service, expected.service_max_degC),
  }),
  "tf-pvc-sheet-states": (_, { expected }) => {
    const { low: from, high: to } = formingWindow({ material: "pvc" }).window
    const within = (value: unknown) => Math.min(to, Math.max(from, value as number))
    return {
      elastic_min_degC: within(expected.elastic_min_degC),
      elastic_max_degC: within(expected.elastic_max_degC),
      degradation_degC: inside(plastics.pvc.scorch as Figure, expected.degradation_degC),
    }
  },
  "tf-shrink-cast-acrylic-2pct": (inputs) => {
    const { shrinkage, shrinkageAcross } = plastics["pmma-cast"]
    return {
      shrink_max_percent: shrinkage.high * 100,
      isotropic: shrinkage.high === shrinkageAcross.high,
      blank_mm: blank("pmma-cast", (inputs as Values).finished_mm as number, null),
    }
  },
  "tf-shrink-three-sheets-blank": (inputs) => {
    const { finished_mm, shrink_max } = inputs as unknown as { finished_mm: number; shrink_max: number[] }
    // cell cast by its own figure; the two others by what the solver takes of itself
    return {
      blank_mm: [
        blank("pmma-cast", finished_mm, shrink_max[0] as number),
        blank("pmma-extruded", finished_mm, null),
        blank("pc", finished_mm, null),
      ],
    }
  },
  "tf-takeup-implied-radius": (inputs) => {
    const i = inputs as unknown as { takeup_in: number[]; outside_diameter_in: number[] }
    return {
      radius_in: i.takeup_in.map((takeup, k) => {
        const legs = { legA: takeup * INCH, legB: 1 }
        const outsideDiameter = (i.outside_diameter_in[k] as number) * INCH
        const out = tubeBend({ outsideDiameter, wall: 1e-3, radius: 3 * INCH, angle: "90 deg", support: "filled", ...legs })
        // what is left straight at 3 in is what the radius may grow by
        return 3 + (out.straightA as number) / INCH
      }),
    }
  },
  "tf-shrink-mould-table": (inputs, row) => ({
    ...spread("abs", {
      abs_med_impact_pct: ["shrinkage", 0.01],
      abs_high_impact_min_pct: ["shrinkage", 0.01],
      abs_high_impact_max_pct: ["shrinkage", 0.01],
    })(inputs, row),
    ...Object.fromEntries(
      (
        [
          ["hdpe", "hdpe"],
          ["pp", "pp"],
          ["hips", "hips"],
          ["pvc_rigid", "pvc"],
          ["pet_amorphous", "petg"],
        ] as const
      ).flatMap(([name, plastic]) => [
        [`${name}_min_pct`, tidy(plastics[plastic].shrinkage.low * 100)],
        [`${name}_max_pct`, tidy(plastics[plastic].shrinkage.high * 100)],
      ]),
    ),
  }),
  "tf-shrink-pp-orthotic": spread("pp", { min_pct: ["shrinkage", 0.01], max_pct: ["shrinkage", 0.01] }),
  "tf-som-4-9-bar": (inputs) => {
    const i = inputs as Values
    const theta = (side: number) => {
      const half = side / 2
      const biot = ((i.h_W_per_m2K as number) * half) / (i.k_W_per_mK as number)
      return temperatureRatio("wall", biot, ((i.alpha_m2_per_s as number) * (i.time_s as number)) / half ** 2, 0)
    }
    const [one, two] = [theta(i.width_m as number), theta(i.height_m as number)]
    return {
      theta_1: one,
      theta_2: two,
      axis_degC: (i.fluid_degC as number) + one * two * ((i.initial_degC as number) - (i.fluid_degC as number)),
    }
  },
  "tf-springback-pvc-cold": (inputs) => {
    const { jigAngle } = tubeBend({ outsideDiameter: "20 mm", wall: "2 mm", radius: 1, angle: 0.1, hot: false })
    return { relaxes_to_deg: ((inputs as Values).bent_to_deg as number) / (jigAngle / 0.1) }
  },
  "tf-strip-heater-fin-length": (inputs) => {
    const i = inputs as Values
    return { decay_length_m: lineHeatLength(i.k_W_per_mK as number, i.thickness_m as number, i.h_W_per_m2K as number) }
  },
}

function semiInfiniteRod(i: Values): Values {
  const radius = i.radius_m as number
  const fourier = ((i.alpha_m2_per_s as number) * (i.time_s as number)) / radius ** 2
  const rod = temperatureRatio("rod", ((i.h_W_per_m2K as number) * radius) / (i.k_W_per_mK as number), fourier, 0)
  const k = i.k_W_per_mK as number
  const layer = { thickness: 1, conductivity: k, heatCapacity: k / (i.alpha_m2_per_s as number) }
  const semi = 1 - halfSpaceRise(i.h_W_per_m2K as number, layer, i.time_s as number, i.x_from_end_m as number)
  return {
    fourier,
    theta_cylinder: rod,
    theta_semi_infinite: semi,
    T_degC: (i.water_degC as number) + rod * semi * ((i.initial_degC as number) - (i.water_degC as number)),
  }
}

function shaft(i: Values): Values {
  const radius = i.radius_m as number
  const biot = ((i.h_W_per_m2K as number) * radius) / (i.k_W_per_mK as number)
  const fourier = ((i.alpha_m2_per_s as number) * (i.time_s as number)) / radius ** 2
  const theta = temperatureRatio("rod", biot, fourier, 0)
  const drop = (i.initial_degC as number) - (i.air_degC as number)
  const most = ((i.density_kg_per_m3 as number) * (i.cp_J_per_kgK as number) * Math.PI * radius ** 2 * (i.length_m as number) * drop) / 1000
  const part = 1 - temperatureRatio("rod", biot, fourier, "mean")
  return {
    biot,
    fourier,
    theta_centre: theta,
    centre_degC: (i.air_degC as number) + theta * drop,
    Q_max_kJ: most,
    Q_over_Qmax: part,
    Q_kJ: part * most,
  }
}

/** Depth to which a fixed surface temperature has carried a target. */
function frost(i: Values, alpha: number): { eta: number; depth_m: number } {
  const eta = erfcInverse(
    ((i.target_degC as number) - (i.initial_degC as number)) / ((i.surface_degC as number) - (i.initial_degC as number)),
  )
  return { eta, depth_m: 2 * eta * Math.sqrt(alpha * (i.time_s as number)) }
}

const vicat = "Vicat temperatures are not interchangeable with the deflection temperatures kept here"
const peak = "the peak of mass loss is no working limit; the onset is kept"
const without: Record<string, Record<string, string>> = {
  "tf-form-above-tg": Object.fromEntries(
    ["above_tg_min_K", "above_tg_max_K", "hold_min_min", "hold_max_min"].map((k) => [
      k,
      "a rule for line bending; the window comes from forming tables",
    ]),
  ),
  "tf-form-acrylic-handbook-range": {
    min_degC: "over all grades, flexible ones included; cast and extruded sheet are kept apart here",
    stretched_degC: "pre-stretched sheet is not offered",
  },
  "tf-form-acrylic-surface-limit": { tolerated_excess_s: "a permission to pass the limit is not passed on" },
  "tf-form-lttp-water": { high_temp_class_above_degC: "a class boundary, no figure of this plastic" },
  "tf-form-pc-windows": {
    flex_min_degC: "a process of its own, below the forming window",
    flex_max_degC: "a process of its own, below the forming window",
  },
  "tf-window-abs": { mould_degC: "a heated mould's temperature, which no solver asks for" },
  "tf-incropera-1-2": Object.fromEntries(
    ["emissive_power_W_per_m2", "irradiation_W_per_m2", "convection_W_per_m", "radiation_W_per_m"].map((k) => [
      k,
      "softening reports the balance, not its parts",
    ]),
  ),
  "tf-pmma-decomposition": { flow_starts_degC: "flow of moulding compound, not the forming of sheet" },
  "tf-prop-abs-typical": { vicat_degC: vicat },
  "tf-prop-azom-pvc": { drying_degC: "for resin; finished pipe must stay below its deflection temperature of 67 °C" },
  "tf-prop-cast-acrylic": { vicat_B_min_degC: vicat, vicat_B_max_degC: vicat },
  "tf-prop-crawford-pet": { max_operating_degC: "of crystalline PET; PETG softens far below" },
  "tf-prop-crawford-polystyrene": {
    "thermal_diffusivity_1e-7_m2_per_s": "printed 0.6 contradicts the 1.10 of its own k, density and specific heat",
  },
  "tf-prop-netzsch-hdpe": { melting_enthalpy_crystal_J_per_g: "of a perfect crystal; the sample's is kept" },
  "tf-prop-netzsch-pc": { decomposition_peak_min_degC: peak, decomposition_peak_max_degC: peak },
  "tf-prop-netzsch-pmma-tg": { delta_cp_second_J_per_gK: "properties are taken as constant" },
  "tf-prop-netzsch-pvc-u": { decomposition_peak_min_degC: peak, decomposition_peak_max_degC: peak },
  "tf-prop-pc-vicat": {
    vicat_degC: vicat,
    ...Object.fromEntries(
      ["drying_min_degC", "drying_max_degC", "drying_min_h", "drying_max_h", "moisture_limit_pct"].map((k) => [
        k,
        "for resin pellets; sheet is dried by the sheet makers' tables",
      ]),
    ),
  },
  "tf-prop-pcl": { tg_degC: "far below any use here" },
  "tf-prop-petg-sheet": { cold_bend_max_thickness_mm: "no radius goes with it" },
  "tf-prop-pipe-pvc": { k_BTU_in_per_h_ft2_F: "the same conductivity in another unit" },
  "tf-pvc-degradation-onset": {
    processing_min_degC: "of the extruder, short and under screws",
    processing_max_degC: "of the extruder, short and under screws",
  },
  "tf-lttp-water-and-dry": {
    dry_heat_faster: "dry heat and water are two sources of heatingTime, not compared by any solver",
    dry_heat_works_longer: "dry heat and water are two sources of heatingTime, not compared by any solver",
  },
  "tf-mould-size-two-rules": { usual_mm: "the usual rule, a multiplication; the exact one is calculated" },
  "tf-pvc-pipe-heated-length-table": Object.fromEntries(
    ["length_in", "length_over_radius"].map((k) => [
      k,
      "9 to 15 % more than the arc by a rule the page does not give; heatedLength adds a diameter at each end",
    ]),
  ),
  "tf-pvc-foam-heater-settings": Object.fromEntries(
    ["top_heater_degC", "bottom_heater_degC"].map((k) => [
      k,
      "faces of a forming machine's heaters, whose distance and view are not given",
    ]),
  ),
  "tf-pvc-pipe-heating-time": { time_s: "a heater with rollers whose film and temperature are not given" },
  "tf-pvc-pipe-states-degF": {
    viscous_degC: "far above the surface limit",
    carbonises_degC: "far above the onset of browning that is kept as the limit",
  },
  "tf-pvc-sheet-states": {
    plastic_degC: "the onset of browning in unstabilised resin, kept as a limit",
    predry: "this sheet maker needs none; a damp one is dried by the resin's schedule",
    vacuum_bar: "vacuum forming practice",
    vacuum_inHg: "vacuum forming practice",
  },
  "tf-shrink-mould-table": Object.fromEntries(
    ["pc_min_pct", "pc_max_pct"].map((k) => [k, "mouldings; the sheet's own shrinkage, 2 to 5 %, is kept instead"]),
  ),
  "tf-shrink-pp-orthotic": Object.fromEntries(
    ["vacuum_hold_cold_model_times_heating", "vacuum_hold_warm_model_times_heating", "vacuum_min_inHg"].map((k) => [
      k,
      "vacuum forming practice; hold times are computed",
    ]),
  ),
}

referenceTests("thermoform", checks, without)
