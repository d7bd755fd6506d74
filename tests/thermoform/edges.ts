import type { Plastic } from "../../src/thermoform/data.js"
import { bendTemplate, coolDown, drape, drying, formingWindow, heatThrough, softening, tubeBend } from "../../src/thermoform/index.js"
import type { CautionRow, Edges, FaultRow, Numbers, RefusalRow } from "../helpers/edges.js"
import { published } from "./published.js"

const form = (plastic: Plastic) => ({ plastic })
/** A plain sheet in place of the example's pipe. */
const sheet = { form: "sheet", thickness: 0.003, diameter: undefined, filling: undefined }
const cooled = { ...sheet, formed: undefined }
const box = { form: "box", width: 0.2, breadth: 0.1, depth: 0.05, fillet: undefined }
const empty = { support: "empty", legA: undefined, legB: undefined }
const d = 0.0267
/** Brazier's kink radius of the example's pipe, Poisson's ratio 0.4. */
const kink = ((3 / Math.SQRT2) * ((d - 0.0029) / 2) ** 2 * Math.sqrt(1 - 0.16)) / 0.0029

const cautions: readonly CautionRow[] = [
  { solver: formingWindow, code: "hydrogen-chloride", severity: "warning", shown: form("pvc"), notShown: form("petg") },
  { solver: formingWindow, code: "ventilation", severity: "warning", shown: form("abs"), notShown: form("lowTempPolyester") },
  { solver: formingWindow, code: "ventilation", severity: "warning", shown: form("petg"), notShown: form("lowTempPolyester") },
  { solver: formingWindow, code: "burns", severity: "warning", shown: form("hips"), notShown: null },
  { solver: formingWindow, code: "kitchen-oven", severity: "warning", shown: form("hips"), notShown: form("lowTempPolyester") },
  { solver: formingWindow, code: "hot-water", severity: "warning", shown: form("lowTempPolyester"), notShown: form("hips") },
  { solver: formingWindow, code: "glue-on-foam", severity: "warning", shown: form("evaFoam"), notShown: form("hips") },
  { solver: formingWindow, code: "narrow-window", severity: "caution", shown: form("pp"), notShown: form("pc") },
  { solver: formingWindow, code: "no-published-window", severity: "note", shown: form("evaFoam"), notShown: form("hips") },
  { solver: formingWindow, code: "window-not-verified", severity: "note", shown: form("hips"), notShown: form("pvc") },
  { solver: formingWindow, code: "window-not-verified", severity: "note", shown: form("hips"), notShown: form("evaFoam") },
  // polycarbonate's upper limit is the handbook's, though a document that was seen prints a higher one
  { solver: formingWindow, code: "window-not-verified", severity: "note", shown: form("pc"), notShown: form("petg") },
  {
    solver: coolDown,
    code: "window-not-verified",
    severity: "note",
    shown: { ...cooled, plastic: "pp" },
    notShown: { ...cooled, plastic: "abs" },
  },
  {
    solver: coolDown,
    code: "no-published-window",
    severity: "note",
    shown: { ...cooled, plastic: "evaFoam" },
    notShown: { ...cooled, plastic: "pp" },
  },
  {
    solver: heatThrough,
    code: "window-not-verified",
    severity: "note",
    shown: { ...sheet, plastic: "hdpe", sourceTemperature: 180 },
    notShown: { ...sheet, plastic: "petg", sourceTemperature: 180 },
  },
  {
    solver: heatThrough,
    code: "no-published-window",
    severity: "note",
    shown: { ...sheet, plastic: "evaFoam", sourceTemperature: 180 },
    notShown: { ...sheet, plastic: "hdpe", sourceTemperature: 180 },
  },

  { solver: coolDown, code: "overheated", severity: "warning", shown: { formed: 135.1 }, notShown: { formed: 135 } },
  {
    solver: coolDown,
    code: "hydrogen-chloride",
    severity: "warning",
    shown: { ...cooled, plastic: "pvc" },
    notShown: { ...cooled, plastic: "petg" },
  },
  {
    solver: coolDown,
    code: "ventilation",
    severity: "warning",
    shown: { ...cooled, plastic: "petg" },
    notShown: { ...cooled, plastic: "lowTempPolyester" },
  },
  // too hot for it, this plastic fumes as well
  {
    solver: coolDown,
    code: "ventilation",
    severity: "warning",
    shown: { ...cooled, plastic: "lowTempPolyester", formed: 75.1 },
    notShown: { ...cooled, plastic: "lowTempPolyester", formed: 75 },
  },
  { solver: coolDown, code: "release-late", severity: "caution", shown: { cooling: "fan" }, notShown: null },
  { solver: coolDown, code: "burns", severity: "warning", shown: { cooling: "fan" }, notShown: null },
  { solver: coolDown, code: "short-working-time", severity: "caution", shown: { thickness: 0.001365 }, notShown: { thickness: 0.001375 } },
  { solver: coolDown, code: "hot-sand", severity: "warning", shown: { filling: "drySand" }, notShown: { filling: "empty" } },
  { solver: coolDown, code: "quench", severity: "caution", shown: { cooling: "water" }, notShown: { cooling: "fan" } },
  {
    solver: coolDown,
    code: "supercools",
    severity: "note",
    shown: { ...cooled, plastic: "lowTempPolyester" },
    notShown: { ...cooled, plastic: "petg" },
  },
  { solver: coolDown, code: "film-estimate", severity: "note", shown: { film: 20 }, notShown: null },

  {
    solver: heatThrough,
    code: "source-chars",
    severity: "warning",
    shown: { sourceTemperature: 160.1 },
    notShown: { sourceTemperature: 160 },
  },
  // 15 mm of PVC from both sides: hottest source 146.36 °C
  {
    solver: heatThrough,
    code: "surface-first",
    severity: "warning",
    shown: { ...sheet, thickness: 0.015, sourceTemperature: 146.5 },
    notShown: { ...sheet, thickness: 0.015, sourceTemperature: 146.2 },
  },
  {
    solver: heatThrough,
    code: "take-out-in-time",
    severity: "caution",
    shown: { ...sheet, thickness: 0.015, sourceTemperature: 146.2 },
    notShown: { ...sheet, thickness: 0.015, sourceTemperature: 146.5 },
  },
  {
    solver: heatThrough,
    code: "take-out-in-time",
    severity: "caution",
    shown: { sourceTemperature: 135.1 },
    notShown: { sourceTemperature: 135 },
  },
  { solver: heatThrough, code: "hot-sand", severity: "warning", shown: { filling: "drySand" }, notShown: { filling: "empty" } },
  {
    solver: heatThrough,
    code: "sand-above-limit",
    severity: "warning",
    shown: { filling: "drySand", sandTemperature: 135.1 },
    notShown: { filling: "drySand", sandTemperature: 135 },
  },
  // half the window of 27.8 K
  { solver: heatThrough, code: "no-safe-source", severity: "caution", shown: { sourceError: 13.91 }, notShown: { sourceError: 13.89 } },
  { solver: heatThrough, code: "uneven", severity: "caution", shown: { source: "heatGun" }, notShown: { source: "oven" } },
  {
    solver: heatThrough,
    code: "uneven",
    severity: "caution",
    shown: { source: "radiant", sourceTemperature: 400 },
    notShown: { source: "oven", sourceTemperature: 400 },
  },
  { solver: heatThrough, code: "film-estimate", severity: "note", shown: { film: 20 }, notShown: null },
  {
    solver: heatThrough,
    code: "hot-water",
    severity: "warning",
    shown: { ...sheet, plastic: "lowTempPolyester", sourceTemperature: 70, source: "waterBath" },
    notShown: { ...sheet, plastic: "lowTempPolyester", sourceTemperature: 70, source: "oven" },
  },

  { solver: drape, code: "burns", severity: "warning", shown: { plastic: "abs" }, notShown: null },
  { solver: drape, code: "ventilation", severity: "warning", shown: { plastic: "abs" }, notShown: { plastic: "lowTempPolyester" } },
  { solver: drape, code: "two-draw-ratios", severity: "note", shown: { plastic: "abs" }, notShown: null },
  { solver: drape, code: "corners-thinner", severity: "caution", shown: { fillet: undefined }, notShown: { fillet: 0.008 } },
  { solver: drape, code: "very-thin", severity: "caution", shown: { depth: 0.0425 }, notShown: { depth: 0.0421 } },
  { solver: drape, code: "deep-draw", severity: "caution", shown: { depth: 0.0801 }, notShown: { depth: 0.08 } },
  {
    solver: drape,
    code: "shrinkage-spread",
    severity: "note",
    shown: { plastic: "pmmaCast", finishedWidth: undefined },
    notShown: { plastic: "pmmaCast", finishedWidth: undefined, shrinkAlong: 0.02 },
  },
  {
    solver: drape,
    code: "shrinkage-spread",
    severity: "note",
    shown: { plastic: "pmmaCast", finishedLength: undefined },
    notShown: { plastic: "pmmaCast", finishedLength: undefined, shrinkAcross: 0.02 },
  },
  { solver: drape, code: "shrinkage-of-mouldings", severity: "caution", shown: { plastic: "hips" }, notShown: { plastic: "pc" } },

  { solver: drying, code: "blisters", severity: "caution", shown: form("pvc"), notShown: form("petg") },
  { solver: drying, code: "drying-oven", severity: "warning", shown: form("pvc"), notShown: form("petg") },
  { solver: drying, code: "vent-only-dried", severity: "note", shown: form("pc"), notShown: form("pvc") },

  // without light it settles at the air's temperature: PVC sets at 67 °C, serves to 50 °C
  { solver: softening, code: "softens", severity: "warning", shown: { irradiance: 0, air: 67.1 }, notShown: { irradiance: 0, air: 67 } },
  { solver: softening, code: "creeps", severity: "caution", shown: { irradiance: 0, air: 50.1 }, notShown: { irradiance: 0, air: 50 } },
  { solver: softening, code: "creeps", severity: "caution", shown: { irradiance: 0, air: 67 }, notShown: { irradiance: 0, air: 67.1 } },
  {
    solver: softening,
    code: "hot-to-wear",
    severity: "warning",
    shown: { irradiance: 0, air: 48.1 },
    notShown: { irradiance: 0, air: 48 },
  },
  { solver: softening, code: "place-estimate", severity: "note", shown: { place: "sun" }, notShown: null },

  { solver: tubeBend, code: "burns", severity: "warning", shown: { hot: true }, notShown: { hot: false } },
  { solver: tubeBend, code: "ventilation", severity: "warning", shown: { hot: true }, notShown: { hot: false } },
  { solver: tubeBend, code: "tight-radius", severity: "caution", shown: { radius: 0.1334 }, notShown: { radius: 0.1336 } },
  {
    solver: tubeBend,
    code: "tight-radius",
    severity: "caution",
    shown: { ...empty, wall: 0.001, radius: 0.7566 },
    notShown: { ...empty, wall: 0.001, radius: 0.7568 },
  },
  {
    solver: tubeBend,
    code: "needs-support",
    severity: "caution",
    shown: { support: "empty", angle: "30.1 deg" },
    notShown: { support: "empty", angle: "30 deg" },
  },
  { solver: tubeBend, code: "needs-support", severity: "caution", shown: { support: "empty" }, notShown: { support: "filled" } },
  { solver: tubeBend, code: "cold-bend", severity: "warning", shown: { hot: false }, notShown: { hot: true } },
  {
    solver: tubeBend,
    code: "cold-bend",
    severity: "warning",
    shown: { plastic: "abs", hot: false },
    notShown: { plastic: "abs", hot: true },
  },
  { solver: tubeBend, code: "hot-sand", severity: "warning", shown: { support: "filled" }, notShown: { support: "empty" } },
  { solver: tubeBend, code: "hot-sand", severity: "warning", shown: { hot: true }, notShown: { hot: false } },
  { solver: tubeBend, code: "try-one", severity: "note", shown: { hot: false }, notShown: null },
  { solver: tubeBend, code: "shrinks", severity: "note", shown: { plastic: "hdpe" }, notShown: { plastic: "petg" } },

  { solver: bendTemplate, code: "true-scale", severity: "note", shown: { straight: 0 }, notShown: null },
  { solver: bendTemplate, code: "springback-guess", severity: "note", shown: { springback: 0 }, notShown: null },
  { solver: bendTemplate, code: "hot-jig", severity: "warning", shown: { straight: 0 }, notShown: null },
  { solver: bendTemplate, code: "tight-radius", severity: "caution", shown: { radius: 0.1334 }, notShown: { radius: 0.1336 } },
  // 180° × 0.97
  { solver: bendTemplate, code: "closed-jig", severity: "note", shown: { angle: "174.7 deg" }, notShown: { angle: "174.5 deg" } },
]

const refusals: readonly RefusalRow[] = [
  {
    solver: coolDown,
    code: "never-sets",
    refused: { ...cooled, plastic: "lowTempPolyester", room: 34 },
    answered: { ...cooled, plastic: "lowTempPolyester", room: 33.9 },
  },
  { solver: heatThrough, code: "never-hot-enough", refused: { sourceTemperature: 107.2 }, answered: { sourceTemperature: 107.3 } },
  {
    solver: softening,
    code: "already-soft",
    refused: { start: 67 },
    answered: { start: 66.9 },
  },
  {
    solver: drape,
    code: "plug-too-large",
    refused: { ...box, plugWidth: 0.2, plugBreadth: 0.0991 },
    answered: { ...box, plugWidth: 0.2, plugBreadth: 0.0989 },
  },
  { solver: tubeBend, code: "radius-too-tight", refused: { radius: 0.01334 }, answered: { radius: 0.01336 } },
  { solver: tubeBend, code: "kinks", refused: { ...empty, radius: 0.999 * kink }, answered: { ...empty, radius: 1.001 * kink } },
  // (250 + 13.35) mm · tan 30° = 152.05 mm
  { solver: tubeBend, code: "leg-too-short", refused: { legA: 0.152 }, answered: { legA: 0.1521 } },
  { solver: tubeBend, code: "leg-too-short", refused: { legB: 0.152 }, answered: { legB: 0.1521 } },
  // 13.35 mm / 0.97 = 13.763 mm
  { solver: bendTemplate, code: "edge-folds", refused: { radius: 0.01376 }, answered: { radius: 0.01377 } },
]

const rod = { form: "rod", thickness: undefined, diameter: 0.02 }
/** Faults of what is heated or cooled, the same in both solvers. */
const ofPart = (solver: unknown, plain: object): FaultRow[] => [
  { solver, path: "thickness", faulty: { ...plain, ...rod, thickness: 0.003 }, sound: { ...plain, ...rod } },
  { solver, path: "thickness", faulty: { ...plain, ...sheet, thickness: undefined }, sound: { ...plain, ...sheet } },
  { solver, path: "thickness", faulty: { ...plain, thickness: undefined }, sound: { ...plain, thickness: 0.003 } },
  {
    solver,
    path: "thickness",
    faulty: { ...plain, diameter: 0.02, thickness: 0.0098 },
    sound: { ...plain, diameter: 0.02, thickness: 0.00979 },
  },
  { solver, path: "diameter", faulty: { ...plain, ...sheet, diameter: 0.02 }, sound: { ...plain, ...sheet } },
  { solver, path: "diameter", faulty: { ...plain, ...rod, diameter: undefined }, sound: { ...plain, ...rod } },
  { solver, path: "diameter", faulty: { ...plain, diameter: undefined }, sound: { ...plain, diameter: 0.02 } },
  { solver, path: "filling", faulty: { ...plain, ...rod, filling: "drySand" }, sound: { ...plain, ...rod, filling: "empty" } },
]

const curve = { shape: "curve", radius: undefined, angle: undefined }
const points = [0, 0.1, 0.2].map((x) => ({ x, y: 0.4 * x * x }))
const faults: readonly FaultRow[] = [
  ...ofPart(heatThrough, {}),
  ...ofPart(coolDown, {}),
  { solver: heatThrough, path: "sandTemperature", faulty: { sandTemperature: 100 }, sound: {} },
  {
    solver: heatThrough,
    path: "sandTemperature",
    faulty: { sandTemperature: 100, filling: "empty" },
    sound: { sandTemperature: 100, filling: "drySand" },
  },
  { solver: heatThrough, path: "faces", faulty: { faces: 1 }, sound: { faces: 2 } },
  { solver: heatThrough, path: "source", faulty: { ...sheet, source: "hotPlate" }, sound: { ...sheet, source: "hotPlate", faces: 1 } },
  {
    solver: heatThrough,
    path: "source",
    faulty: { faces: 1, source: "hotPlate" },
    sound: { faces: 1, source: "oven" },
  },
  {
    solver: heatThrough,
    path: "sourceTemperature",
    faulty: { ...sheet, plastic: "lowTempPolyester", source: "waterBath", sourceTemperature: 100.1 },
    sound: { ...sheet, plastic: "lowTempPolyester", source: "waterBath", sourceTemperature: 100 },
  },
  { solver: heatThrough, path: "coreTemperature", faulty: { coreTemperature: 103.9 }, sound: { coreTemperature: 104 } },
  { solver: heatThrough, path: "coreTemperature", faulty: { coreTemperature: 134.1 }, sound: { coreTemperature: 134 } },
  { solver: heatThrough, path: "start", faulty: { start: 106.3 }, sound: { start: 106.1 } },
  { solver: heatThrough, path: "start", faulty: { coreTemperature: 120, start: 119 }, sound: { coreTemperature: 120, start: 118.9 } },
  { solver: coolDown, path: "faces", faulty: { faces: 2 }, sound: { faces: 1 } },
  { solver: coolDown, path: "formed", faulty: { formed: 108.15 }, sound: { formed: 108.25 } },
  { solver: coolDown, path: "release", faulty: { release: 106.25 }, sound: { release: 106.15 } },

  { solver: drape, path: "breadth", faulty: { ...box, breadth: undefined }, sound: box },
  { solver: drape, path: "breadth", faulty: { breadth: 0.05 }, sound: {} },
  { solver: drape, path: "base", faulty: { base: 0.05 }, sound: {} },
  {
    solver: drape,
    path: "base",
    faulty: { form: "frustum", fillet: undefined },
    sound: { form: "frustum", base: 0.05, fillet: undefined },
  },
  { solver: drape, path: "fillet", faulty: { ...box, fillet: 0.005 }, sound: box },
  ...["plugWidth", "plugBreadth"].map((path) => ({
    solver: drape,
    path,
    faulty: { plugWidth: 0.05, plugBreadth: 0.05 },
    sound: {},
    apart: "one side of a plug alone is another fault",
  })),
  { solver: drape, path: "plugBreadth", faulty: { ...box, plugWidth: 0.1 }, sound: { ...box, plugWidth: 0.1, plugBreadth: 0.05 } },
  { solver: drape, path: "plugWidth", faulty: { ...box, plugBreadth: 0.05 }, sound: { ...box, plugWidth: 0.1, plugBreadth: 0.05 } },
  {
    solver: drape,
    path: "base",
    faulty: { form: "frustum", base: 0.0784, fillet: undefined },
    sound: { form: "frustum", base: 0.0783, fillet: undefined },
  },
  { solver: drape, path: "breadth", faulty: { ...box, breadth: 0.2001 }, sound: { ...box, breadth: 0.2 } },
  {
    solver: drape,
    path: "plugWidth",
    faulty: { ...box, plugWidth: 0.2001, plugBreadth: 0.05 },
    sound: { ...box, plugWidth: 0.2, plugBreadth: 0.05 },
  },
  {
    solver: drape,
    path: "plugWidth",
    faulty: { ...box, plugWidth: 0.1, plugBreadth: 0.1001 },
    sound: { ...box, plugWidth: 0.1, plugBreadth: 0.1 },
  },
  // 0.9 of the base's radius on an upright wall
  { solver: drape, path: "fillet", faulty: { fillet: 0.03601 }, sound: { fillet: 0.03599 } },

  { solver: tubeBend, path: "wall", faulty: { wall: 0.0131 }, sound: { wall: 0.013 } },
  { solver: tubeBend, path: "legA", faulty: { legA: undefined }, sound: {} },
  { solver: tubeBend, path: "legB", faulty: { legB: undefined }, sound: {} },
  { solver: tubeBend, path: "legA", faulty: { angle: "175.1 deg", legA: 90, legB: 90 }, sound: { angle: "174.9 deg", legA: 90, legB: 90 } },

  { solver: bendTemplate, path: "radius", faulty: { radius: undefined }, sound: {} },
  { solver: bendTemplate, path: "angle", faulty: { angle: undefined }, sound: {} },
  { solver: bendTemplate, path: "points", faulty: { points: points.slice(0, 1) }, sound: { points: [] } },
  { solver: bendTemplate, path: "radius", faulty: { ...curve, points, radius: 0.2 }, sound: { ...curve, points } },
  { solver: bendTemplate, path: "angle", faulty: { ...curve, points, angle: 1 }, sound: { ...curve, points } },
  { solver: bendTemplate, path: "points", faulty: { ...curve, points: points.slice(0, 2) }, sound: { ...curve, points } },
  {
    solver: bendTemplate,
    path: "points.1",
    faulty: {
      ...curve,
      points: [
        { x: 0, y: 0 },
        { x: 0.000999, y: 0 },
        { x: 0.2, y: 0.1 },
      ],
    },
    sound: {
      ...curve,
      points: [
        { x: 0, y: 0 },
        { x: 0.001001, y: 0 },
        { x: 0.2, y: 0.1 },
      ],
    },
  },
]

const of = (plastic: Plastic) => published[plastic]
const low = (plastic: Plastic, key: "upper" | "lower" | "scorch" | "set" | "fume") => of(plastic)[key]?.[1] as number
const limit = (plastic: Plastic) => Math.min(low(plastic, "upper"), of(plastic).scorch?.[1] ?? 1e9)
const ceiling = (plastic: Plastic) => of(plastic).scorch?.[1] ?? (of(plastic).upper?.[2] as number)
const from = (plastic: Plastic) => of(plastic).lower?.[2] as number
const release = (si: { plastic: Plastic; release: number | null }) => si.release ?? low(si.plastic, "set")
const formed = (si: { plastic: Plastic; formed: number | null }) =>
  si.formed ?? Math.min(limit(si.plastic), Math.max(from(si.plastic), of(si.plastic).normal?.[0] as number))

interface Heating {
  readonly form: string
  readonly thickness: number
  readonly faces: number
  readonly plastic: Plastic
  readonly source: "oven" | "heatGun" | "hotPlate" | "radiant" | "waterBath"
  readonly sourceTemperature: number
  readonly coreTemperature: number | null
  readonly film: number | null
  readonly emissivity: number
  readonly start: number
  readonly room: number
  readonly conductivity: number | null
}
const target = (si: Heating) => si.coreTemperature ?? from(si.plastic)

/** Where the coldest spot settles at last, over the spread of the conductivity: series resistances of film, sheet and back. */
function settled(si: Heating): number {
  const convection = si.film ?? { oven: 25, heatGun: 60, hotPlate: 500, radiant: 8, waterBath: 500 }[si.source]
  const mean = (si.start + limit(si.plastic)) / 2 + 273.15
  const black = si.emissivity * 5.670374419e-8
  const film = si.source === "radiant" ? convection + 4 * black * mean ** 3 : convection
  const outside =
    si.source === "radiant"
      ? (black * ((si.sourceTemperature + 273.15) ** 4 - mean ** 4) + 4 * black * mean ** 4 + convection * (si.room + 273.15)) / film -
        273.15
      : si.sourceTemperature
  const back = si.source === "hotPlate" ? 10 : si.source === "radiant" ? film : 0
  if (si.form !== "sheet" || si.faces === 2 || back === 0) return outside
  const k = si.conductivity ?? (of(si.plastic).conductivity?.[1] as number)
  const flux = (outside - si.room) / (1 / film + si.thickness / k + 1 / back)
  return Math.min(si.room + flux / back, outside - flux / film)
}

const onset = ({ plastic }: { plastic: Plastic }) => low(plastic, "fume")
const bent = (si: { diameter: number; wall: number }) => ((3 / Math.SQRT2) * ((si.diameter - si.wall) / 2) ** 2 * Math.sqrt(0.84)) / si.wall

const numbers: Numbers = {
  "formingWindow.ventilation.onset": onset,
  "coolDown.ventilation.onset": onset,
  "heatThrough.ventilation.onset": onset,
  "drape.ventilation.onset": onset,
  "tubeBend.ventilation.onset": onset,
  "coolDown.overheated.limit": (si) => limit(si.plastic),
  "coolDown.never-sets.shortBy": (si) => Math.max(si.room - release(si) + 1, 2 ** -52),
  "coolDown.never-sets.at.release": release,
  "coolDown.formed.formed": formed,
  "coolDown.formed.formable": (si) => from(si.plastic),
  "coolDown.release.release": release,
  "coolDown.release.formable": (si) => from(si.plastic),
  "heatThrough.source-chars.ceiling": (si) => ceiling(si.plastic),
  "heatThrough.sand-above-limit.bore": (si) => {
    const { conductivity, density, specificHeat, melting } = of(si.plastic)
    const k = si.conductivity ?? conductivity?.[0]
    const c = si.specificHeat ?? (specificHeat?.[0] as number) + (melting?.[0] as number) / 1e9
    const [sand, wall] = [Math.sqrt(0.27 * 1515 * 800), Math.sqrt(k * (si.density ?? density?.[0]) * c)]
    return (sand * si.sandTemperature + wall * si.start) / (sand + wall)
  },
  "heatThrough.never-hot-enough.shortBy": (si) => Math.max(target(si) - settled(si), 1e-3),
  "heatThrough.never-hot-enough.at.core": settled,
  "heatThrough.never-hot-enough.at.target": target,
  "heatThrough.coreTemperature.lowest": (si) => low(si.plastic, "lower"),
  "heatThrough.coreTemperature.highest": (si) => limit(si.plastic) - 1,
  "heatThrough.start.target": target,
  "softening.already-soft.shortBy": (si) => Math.max(si.start - low(si.plastic, "set"), 2 ** -52),
  "softening.already-soft.at.set": (si) => low(si.plastic, "set"),
  "drape.plug-too-large.shortBy": (si) => si.plugWidth * si.plugBreadth - 0.99 * si.width * si.breadth,
  "drape.plug-too-large.at.plugArea": (si) => si.plugWidth * si.plugBreadth,
  "drape.plug-too-large.at.openArea": (si) => si.width * si.breadth,
  "drape.fillet.most": (si) => {
    const base = si.form === "frustum" ? si.base : si.width
    const slope = Math.atan2(si.depth, (si.width - base) / 2)
    return (0.9 * (base / 2)) / Math.tan(slope / 2)
  },
  "tubeBend.tight-radius.least": (si) => {
    const flat = (((si.diameter - si.wall) / 2) ** 2 * Math.sqrt(0.84)) / si.wall
    return Math.max(5 * si.diameter, ...(si.support === "empty" ? [bent(si), flat * Math.sqrt(2 / si.ovalityLimit)] : []))
  },
  "tubeBend.radius-too-tight.shortBy": (si) => Math.max(si.diameter / 2 - si.radius, 2 ** -52 * si.diameter),
  "tubeBend.kinks.shortBy": (si) => bent(si) - si.radius,
  "tubeBend.kinks.at.kinkRadius": bent,
  "tubeBend.leg-too-short.shortBy": (si) => {
    const reach = (si.radius + si.diameter / 2) * Math.tan(si.angle / 2)
    return reach - (si.legA < reach ? si.legA : si.legB)
  },
  "tubeBend.leg-too-short.at.needed": (si) => (si.radius + si.diameter / 2) * Math.tan(si.angle / 2),
  "bendTemplate.edge-folds.shortBy": (si) => Math.max(si.diameter / 2 - si.radius * (1 - si.springback), 2 ** -52 * si.diameter),
  "bendTemplate.edge-folds.at.jigRadius": (si) => si.radius * (1 - si.springback),
}

export const edges: Edges = { cautions, refusals, faults, numbers }
