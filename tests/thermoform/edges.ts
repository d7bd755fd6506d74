import type { Plastic } from "../../src/thermoform/data.js"
import {
  bendTemplate,
  coolingTime,
  drape,
  drying,
  formingWindow,
  heatingTime,
  lineBend,
  softening,
  tubeBend,
} from "../../src/thermoform/index.js"
import type { CautionRow, Edges, FaultRow, Numbers, RefusalRow } from "../helpers/edges.js"
import { published } from "./published.js"

const of = (material: Plastic) => ({ material })
/** A plain sheet in place of the example's pipe. */
const sheet = { shape: "sheet", thickness: 0.003, outsideDiameter: undefined, filling: undefined }
const cooled = { ...sheet, formingTemperature: undefined }
const box = { shape: "box", width: 0.2, breadth: 0.1, depth: 0.05, fillet: undefined }
const unlegged = { legA: undefined, legB: undefined }
const empty = { support: "empty", legA: undefined, legB: undefined }
const d = 0.0267
/** Brazier's kink radius of the example's pipe, Poisson's ratio 0.4. */
const kink = ((3 / Math.SQRT2) * ((d - 0.0029) / 2) ** 2 * Math.sqrt(1 - 0.16)) / 0.0029

const cautions: readonly CautionRow[] = [
  { solver: formingWindow, code: "hydrogen-chloride", severity: "warning", shown: of("pvc"), notShown: of("petg") },
  { solver: formingWindow, code: "fumes", severity: "warning", shown: of("abs"), notShown: of("low-temp-polyester") },
  { solver: formingWindow, code: "fumes", severity: "warning", shown: of("petg"), notShown: of("low-temp-polyester") },
  { solver: formingWindow, code: "burns", severity: "warning", shown: of("hips"), notShown: null },
  { solver: formingWindow, code: "kitchen-oven", severity: "warning", shown: of("hips"), notShown: of("low-temp-polyester") },
  { solver: formingWindow, code: "hot-water", severity: "warning", shown: of("low-temp-polyester"), notShown: of("hips") },
  { solver: formingWindow, code: "glue-on-foam", severity: "warning", shown: of("eva-foam"), notShown: of("hips") },
  { solver: formingWindow, code: "hydrogen-chloride", severity: "warning", shown: of("pvc-foam"), notShown: of("eva-foam") },
  { solver: formingWindow, code: "cells-collapse", severity: "caution", shown: of("pvc-foam"), notShown: of("pvc") },
  { solver: formingWindow, code: "narrow-window", severity: "caution", shown: of("pp"), notShown: of("pc") },
  { solver: formingWindow, code: "no-published-window", severity: "note", shown: of("eva-foam"), notShown: of("hips") },
  { solver: formingWindow, code: "window-not-verified", severity: "note", shown: of("hips"), notShown: of("pvc") },
  { solver: formingWindow, code: "window-not-verified", severity: "note", shown: of("hips"), notShown: of("eva-foam") },
  // polycarbonate's upper limit is the handbook's, though a document that was seen prints a higher one
  { solver: formingWindow, code: "window-not-verified", severity: "note", shown: of("pc"), notShown: of("petg") },
  {
    solver: coolingTime,
    code: "window-not-verified",
    severity: "note",
    shown: { ...cooled, material: "pp" },
    notShown: { ...cooled, material: "abs" },
  },
  {
    solver: coolingTime,
    code: "no-published-window",
    severity: "note",
    shown: { ...cooled, material: "eva-foam" },
    notShown: { ...cooled, material: "pp" },
  },
  {
    solver: heatingTime,
    code: "window-not-verified",
    severity: "note",
    shown: { ...sheet, material: "hdpe", sourceTemperature: 180 },
    notShown: { ...sheet, material: "petg", sourceTemperature: 180 },
  },
  {
    solver: heatingTime,
    code: "no-published-window",
    severity: "note",
    shown: { ...sheet, material: "eva-foam", sourceTemperature: 180 },
    notShown: { ...sheet, material: "hdpe", sourceTemperature: 180 },
  },

  {
    solver: coolingTime,
    code: "overheated",
    severity: "warning",
    shown: { formingTemperature: 135.1 },
    notShown: { formingTemperature: 135 },
  },
  {
    solver: coolingTime,
    code: "hydrogen-chloride",
    severity: "warning",
    shown: { ...cooled, material: "pvc" },
    notShown: { ...cooled, material: "petg" },
  },
  {
    solver: coolingTime,
    code: "fumes",
    severity: "warning",
    shown: { ...cooled, material: "petg" },
    notShown: { ...cooled, material: "low-temp-polyester" },
  },
  // too hot for it, this plastic fumes as well
  {
    solver: coolingTime,
    code: "fumes",
    severity: "warning",
    shown: { ...cooled, material: "low-temp-polyester", formingTemperature: 75.1 },
    notShown: { ...cooled, material: "low-temp-polyester", formingTemperature: 75 },
  },
  { solver: coolingTime, code: "release-late", severity: "caution", shown: { cooling: "fan" }, notShown: null },
  { solver: coolingTime, code: "burns", severity: "warning", shown: { cooling: "fan" }, notShown: null },
  {
    solver: coolingTime,
    code: "short-working-time",
    severity: "caution",
    shown: { thickness: 0.001365 },
    notShown: { thickness: 0.001375 },
  },
  { solver: coolingTime, code: "hot-sand", severity: "warning", shown: { filling: "dry-sand" }, notShown: { filling: "empty" } },
  { solver: coolingTime, code: "quench", severity: "caution", shown: { cooling: "water" }, notShown: { cooling: "fan" } },
  {
    solver: coolingTime,
    code: "supercools",
    severity: "note",
    shown: { ...cooled, material: "low-temp-polyester" },
    notShown: { ...cooled, material: "petg" },
  },
  { solver: coolingTime, code: "film-estimate", severity: "note", shown: { filmCoefficient: 20 }, notShown: null },

  {
    solver: heatingTime,
    code: "source-chars",
    severity: "warning",
    shown: { sourceTemperature: 160.1 },
    notShown: { sourceTemperature: 160 },
  },
  // 15 mm of PVC from both sides: hottest source 146.36 °C
  {
    solver: heatingTime,
    code: "surface-first",
    severity: "warning",
    shown: { ...sheet, thickness: 0.015, sourceTemperature: 146.5 },
    notShown: { ...sheet, thickness: 0.015, sourceTemperature: 146.2 },
  },
  {
    solver: heatingTime,
    code: "take-out-in-time",
    severity: "caution",
    shown: { ...sheet, thickness: 0.015, sourceTemperature: 146.2 },
    notShown: { ...sheet, thickness: 0.015, sourceTemperature: 146.5 },
  },
  {
    solver: heatingTime,
    code: "take-out-in-time",
    severity: "caution",
    shown: { sourceTemperature: 135.1 },
    notShown: { sourceTemperature: 135 },
  },
  { solver: heatingTime, code: "hot-sand", severity: "warning", shown: { filling: "dry-sand" }, notShown: { filling: "empty" } },
  {
    solver: heatingTime,
    code: "sand-above-limit",
    severity: "warning",
    shown: { filling: "dry-sand", sandTemperature: 135.1 },
    notShown: { filling: "dry-sand", sandTemperature: 135 },
  },
  // half the window of 27.8 K
  {
    solver: heatingTime,
    code: "no-safe-source",
    severity: "caution",
    shown: { sourceTemperatureError: 13.91 },
    notShown: { sourceTemperatureError: 13.89 },
  },
  { solver: heatingTime, code: "uneven", severity: "caution", shown: { heatSource: "heat-gun" }, notShown: { heatSource: "oven" } },
  {
    solver: heatingTime,
    code: "uneven",
    severity: "caution",
    shown: { heatSource: "radiant", sourceTemperature: 400 },
    notShown: { heatSource: "oven", sourceTemperature: 400 },
  },
  { solver: heatingTime, code: "film-estimate", severity: "note", shown: { filmCoefficient: 20 }, notShown: null },
  {
    solver: heatingTime,
    code: "hot-water",
    severity: "warning",
    shown: { ...sheet, material: "low-temp-polyester", sourceTemperature: 70, heatSource: "water-bath" },
    notShown: { ...sheet, material: "low-temp-polyester", sourceTemperature: 70, heatSource: "oven" },
  },

  // whatever a plastic gives off, and what heats it, at each solver that asks for it hot
  ...(
    [
      [drape, {}],
      [tubeBend, { hot: true }],
      [lineBend, {}],
      [heatingTime, { ...sheet, sourceTemperature: 180 }],
    ] as const
  ).flatMap(([solver, with_]): CautionRow[] => [
    {
      solver,
      code: "hydrogen-chloride",
      severity: "warning",
      shown: { ...with_, material: "pvc" },
      notShown: { ...with_, material: "petg" },
    },
    {
      solver,
      code: "glue-on-foam",
      severity: "warning",
      shown: { ...with_, material: "eva-foam" },
      notShown: { ...with_, material: "hdpe" },
    },
    {
      solver,
      code: "cells-collapse",
      severity: "caution",
      shown: { ...with_, material: "pvc-foam" },
      notShown: { ...with_, material: "pvc" },
    },
  ]),
  ...[drape, tubeBend, lineBend].flatMap((solver): CautionRow[] => [
    { solver, code: "hot-water", severity: "warning", shown: { material: "low-temp-polyester" }, notShown: { material: "abs" } },
    { solver, code: "kitchen-oven", severity: "warning", shown: { material: "abs" }, notShown: { material: "low-temp-polyester" } },
  ]),
  { solver: heatingTime, code: "burns", severity: "warning", shown: { heatSource: "radiant", sourceTemperature: 400 }, notShown: null },
  ...["fumes", "kitchen-oven"].map(
    (code): CautionRow => ({
      solver: heatingTime,
      code,
      severity: "warning",
      shown: { ...sheet, material: "low-temp-polyester", sourceTemperature: 70, heatSource: "oven" },
      notShown: { ...sheet, material: "low-temp-polyester", sourceTemperature: 70, heatSource: "water-bath" },
    }),
  ),

  { solver: drape, code: "burns", severity: "warning", shown: { material: "abs" }, notShown: null },
  { solver: drape, code: "fumes", severity: "warning", shown: { material: "abs" }, notShown: { material: "low-temp-polyester" } },
  { solver: drape, code: "two-draw-ratios", severity: "note", shown: { material: "abs" }, notShown: null },
  { solver: drape, code: "corners-thinner", severity: "caution", shown: { fillet: undefined }, notShown: { fillet: 0.008 } },
  { solver: drape, code: "very-thin", severity: "caution", shown: { depth: 0.0425 }, notShown: { depth: 0.0421 } },
  { solver: drape, code: "deep-draw", severity: "caution", shown: { depth: 0.0801 }, notShown: { depth: 0.08 } },
  {
    solver: drape,
    code: "shrinkage-spread",
    severity: "note",
    shown: { material: "pmma-cast", finishedWidth: undefined },
    notShown: { material: "pmma-cast", finishedWidth: undefined, shrinkageAlong: 0.02 },
  },
  {
    solver: drape,
    code: "shrinkage-spread",
    severity: "note",
    shown: { material: "pmma-cast", finishedLength: undefined },
    notShown: { material: "pmma-cast", finishedLength: undefined, shrinkageAcross: 0.02 },
  },
  { solver: drape, code: "shrinkage-of-mouldings", severity: "caution", shown: { material: "hips" }, notShown: { material: "pc" } },

  { solver: lineBend, code: "burns", severity: "warning", shown: { material: "abs" }, notShown: null },
  { solver: lineBend, code: "fumes", severity: "warning", shown: { material: "abs" }, notShown: { material: "low-temp-polyester" } },
  { solver: lineBend, code: "warm-beside", severity: "note", shown: { material: "abs" }, notShown: null },
  { solver: lineBend, code: "bows", severity: "note", shown: { material: "abs" }, notShown: null },
  { solver: lineBend, code: "window-not-verified", severity: "note", shown: of("hips"), notShown: of("pvc-foam") },
  { solver: lineBend, code: "no-published-window", severity: "note", shown: of("eva-foam"), notShown: of("hips") },
  // three gauges of 3 mm; two of another plastic
  { solver: lineBend, code: "tight-radius", severity: "caution", shown: { insideRadius: 0.00899 }, notShown: { insideRadius: 0.00901 } },
  {
    solver: lineBend,
    code: "tight-radius",
    severity: "caution",
    shown: { material: "abs", insideRadius: 0.00599 },
    notShown: { material: "abs", insideRadius: 0.00601 },
  },
  {
    solver: lineBend,
    code: "one-face",
    severity: "caution",
    shown: { faces: 1, thickness: 0.005 },
    notShown: { faces: 1, thickness: 0.00499 },
  },
  // an eighth of an inch
  {
    solver: lineBend,
    code: "one-face",
    severity: "caution",
    shown: { faces: 1, material: "abs", thickness: 0.003176 },
    notShown: { faces: 1, material: "abs", thickness: 0.003174 },
  },
  {
    solver: lineBend,
    code: "one-face",
    severity: "caution",
    shown: { faces: 1, thickness: 0.006 },
    notShown: { faces: 2, thickness: 0.006 },
  },
  // 11.5 mm · π/2 + 6 mm = 24.064 mm
  {
    solver: lineBend,
    code: "narrow-heater",
    severity: "caution",
    shown: { heaterWidth: 0.02406 },
    notShown: { heaterWidth: 0.02407 },
  },
  // twenty gauges past the 13 mm that the bend takes of the leg
  ...["legA", "legB"].map(
    (leg): CautionRow => ({
      solver: lineBend,
      code: "near-edge",
      severity: "caution",
      shown: { [leg]: 0.0729 },
      notShown: { [leg]: 0.0731 },
    }),
  ),
  {
    solver: lineBend,
    code: "near-edge",
    severity: "caution",
    shown: { legA: 0.05 },
    notShown: { legA: 0.05, material: "abs" },
  },

  { solver: drying, code: "blisters", severity: "caution", shown: of("pvc"), notShown: of("petg") },
  { solver: drying, code: "drying-oven", severity: "warning", shown: of("pvc"), notShown: of("petg") },
  { solver: drying, code: "vent-only-dried", severity: "note", shown: of("pc"), notShown: of("pvc") },

  // without light it settles at the air's temperature: PVC sets at 67 °C, serves to 50 °C
  {
    solver: softening,
    code: "softens",
    severity: "warning",
    shown: { irradiance: 0, ambientTemperature: 67.1 },
    notShown: { irradiance: 0, ambientTemperature: 67 },
  },
  {
    solver: softening,
    code: "creeps",
    severity: "caution",
    shown: { irradiance: 0, ambientTemperature: 50.1 },
    notShown: { irradiance: 0, ambientTemperature: 50 },
  },
  {
    solver: softening,
    code: "creeps",
    severity: "caution",
    shown: { irradiance: 0, ambientTemperature: 67 },
    notShown: { irradiance: 0, ambientTemperature: 67.1 },
  },
  {
    solver: softening,
    code: "burns",
    severity: "warning",
    shown: { irradiance: 0, ambientTemperature: 48.1 },
    notShown: { irradiance: 0, ambientTemperature: 48 },
  },
  { solver: softening, code: "place-estimate", severity: "note", shown: { place: "sun" }, notShown: null },

  { solver: tubeBend, code: "burns", severity: "warning", shown: { hot: true }, notShown: { hot: false } },
  { solver: tubeBend, code: "fumes", severity: "warning", shown: { hot: true }, notShown: { hot: false } },
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
    shown: { material: "abs", hot: false },
    notShown: { material: "abs", hot: true },
  },
  { solver: tubeBend, code: "hot-sand", severity: "warning", shown: { support: "filled" }, notShown: { support: "empty" } },
  { solver: tubeBend, code: "hot-sand", severity: "warning", shown: { hot: true }, notShown: { hot: false } },
  {
    solver: tubeBend,
    code: "no-corner",
    severity: "note",
    shown: { ...unlegged, angle: "175.1 deg" },
    notShown: { ...unlegged, angle: "174.9 deg" },
  },
  // at 270° the straights cross a radius, 250 mm, from the bend; leg B's end touches leg A a diameter sooner
  {
    solver: tubeBend,
    code: "legs-meet",
    severity: "caution",
    shown: { angle: "270 deg", legMeasure: "straight", legA: 0.5, legB: 0.2234 },
    notShown: { angle: "270 deg", legMeasure: "straight", legA: 0.5, legB: 0.2232 },
  },
  { solver: tubeBend, code: "try-one", severity: "note", shown: { hot: false }, notShown: null },
  { solver: tubeBend, code: "shrinks", severity: "note", shown: { material: "hdpe" }, notShown: { material: "petg" } },

  { solver: bendTemplate, code: "true-scale", severity: "note", shown: { straightRun: 0 }, notShown: null },
  { solver: bendTemplate, code: "springback-guess", severity: "note", shown: { springback: 0 }, notShown: null },
  { solver: bendTemplate, code: "burns", severity: "warning", shown: { straightRun: 0 }, notShown: null },
  { solver: bendTemplate, code: "tight-radius", severity: "caution", shown: { radius: 0.1334 }, notShown: { radius: 0.1336 } },
  // 180° × 0.97
  { solver: bendTemplate, code: "closed-jig", severity: "note", shown: { angle: "174.7 deg" }, notShown: { angle: "174.5 deg" } },
]

const refusals: readonly RefusalRow[] = [
  {
    solver: coolingTime,
    code: "never-reached",
    refused: { ...cooled, material: "low-temp-polyester", ambientTemperature: 34 },
    answered: { ...cooled, material: "low-temp-polyester", ambientTemperature: 33.9 },
  },
  { solver: heatingTime, code: "never-reached", refused: { sourceTemperature: 107.2 }, answered: { sourceTemperature: 107.3 } },
  {
    solver: softening,
    code: "already-soft",
    refused: { startTemperature: 67 },
    answered: { startTemperature: 66.9 },
  },
  {
    solver: drape,
    code: "does-not-fit",
    refused: { ...box, plugWidth: 0.2, plugBreadth: 0.0991 },
    answered: { ...box, plugWidth: 0.2, plugBreadth: 0.0989 },
  },
  { solver: tubeBend, code: "too-tight", refused: { radius: 0.01334 }, answered: { radius: 0.01336 } },
  { solver: tubeBend, code: "kinks", refused: { ...empty, radius: 0.999 * kink }, answered: { ...empty, radius: 1.001 * kink } },
  // (250 + 13.35) mm · tan 30° = 152.05 mm
  { solver: tubeBend, code: "does-not-fit", refused: { legA: 0.152 }, answered: { legA: 0.1521 } },
  { solver: tubeBend, code: "does-not-fit", refused: { legB: 0.152 }, answered: { legB: 0.1521 } },
  // 250 mm · tan 30° = 144.34 mm; to the back of a square bend 263.35 mm
  {
    solver: tubeBend,
    code: "does-not-fit",
    refused: { legB: 0.1443, legMeasure: "centrelines" },
    answered: { legB: 0.1444, legMeasure: "centrelines" },
  },
  {
    solver: tubeBend,
    code: "does-not-fit",
    refused: { angle: "100 deg", legB: 0.2633, legMeasure: "bend" },
    answered: { angle: "100 deg", legB: 0.2634, legMeasure: "bend" },
  },
  // (10 + 3) mm · tan 45°
  { solver: lineBend, code: "does-not-fit", refused: { legA: 0.01299 }, answered: { legA: 0.01301 } },
  { solver: lineBend, code: "does-not-fit", refused: { legB: 0.01299 }, answered: { legB: 0.01301 } },
  {
    solver: lineBend,
    code: "does-not-fit",
    refused: { legB: 0.00999, legMeasure: "inside" },
    answered: { legB: 0.01001, legMeasure: "inside" },
  },
  {
    solver: lineBend,
    code: "does-not-fit",
    refused: { angle: "150 deg", legB: 0.01299, legMeasure: "bend" },
    answered: { angle: "150 deg", legB: 0.01301, legMeasure: "bend" },
  },
  // 13.35 mm / 0.97 = 13.763 mm
  { solver: bendTemplate, code: "too-tight", refused: { radius: 0.01376 }, answered: { radius: 0.01377 } },
]

const rod = { shape: "rod", thickness: undefined, outsideDiameter: 0.02 }
/** Faults of what is heated or cooled, the same in both solvers. */
const ofPart = (solver: unknown, plain: object): FaultRow[] => [
  { solver, path: "thickness", faulty: { ...plain, ...rod, thickness: 0.003 }, sound: { ...plain, ...rod } },
  { solver, path: "thickness", faulty: { ...plain, ...sheet, thickness: undefined }, sound: { ...plain, ...sheet } },
  { solver, path: "thickness", faulty: { ...plain, thickness: undefined }, sound: { ...plain, thickness: 0.003 } },
  {
    solver,
    path: "thickness",
    faulty: { ...plain, outsideDiameter: 0.02, thickness: 0.0098 },
    sound: { ...plain, outsideDiameter: 0.02, thickness: 0.00979 },
  },
  { solver, path: "outsideDiameter", faulty: { ...plain, ...sheet, outsideDiameter: 0.02 }, sound: { ...plain, ...sheet } },
  { solver, path: "outsideDiameter", faulty: { ...plain, ...rod, outsideDiameter: undefined }, sound: { ...plain, ...rod } },
  { solver, path: "outsideDiameter", faulty: { ...plain, outsideDiameter: undefined }, sound: { ...plain, outsideDiameter: 0.02 } },
  { solver, path: "filling", faulty: { ...plain, ...rod, filling: "dry-sand" }, sound: { ...plain, ...rod, filling: "empty" } },
]

/** Legs go together; to a corner they are measured below 175°, to the back of the bend from 90° on. */
const legFaults = (solver: FaultRow["solver"], leg: number, corners: readonly string[]): readonly FaultRow[] => [
  { solver, path: "legA", faulty: { legA: undefined }, sound: {} },
  { solver, path: "legB", faulty: { legB: undefined }, sound: {} },
  ...corners.map((legMeasure) => ({
    solver,
    path: "legA",
    faulty: { angle: "175.1 deg", legA: leg, legB: leg, legMeasure },
    sound: { angle: "174.9 deg", legA: leg, legB: leg, legMeasure },
  })),
  {
    solver,
    path: "legMeasure",
    faulty: { angle: "89.9 deg", legMeasure: "bend" },
    sound: { angle: "90 deg", legMeasure: "bend" },
  },
]

const curve = { shape: "curve", radius: undefined, angle: undefined }
const points = [0, 0.1, 0.2].map((x) => ({ x, y: 0.4 * x * x }))
const faults: readonly FaultRow[] = [
  ...ofPart(heatingTime, {}),
  ...ofPart(coolingTime, {}),
  { solver: heatingTime, path: "sandTemperature", faulty: { sandTemperature: 100 }, sound: {} },
  {
    solver: heatingTime,
    path: "sandTemperature",
    faulty: { sandTemperature: 100, filling: "empty" },
    sound: { sandTemperature: 100, filling: "dry-sand" },
  },
  { solver: heatingTime, path: "faces", faulty: { faces: 1 }, sound: { faces: 2 } },
  {
    solver: heatingTime,
    path: "heatSource",
    faulty: { ...sheet, heatSource: "hot-plate" },
    sound: { ...sheet, heatSource: "hot-plate", faces: 1 },
  },
  {
    solver: heatingTime,
    path: "heatSource",
    faulty: { faces: 1, heatSource: "hot-plate" },
    sound: { faces: 1, heatSource: "oven" },
  },
  {
    solver: heatingTime,
    path: "sourceTemperature",
    faulty: { ...sheet, material: "low-temp-polyester", heatSource: "water-bath", sourceTemperature: 100.1 },
    sound: { ...sheet, material: "low-temp-polyester", heatSource: "water-bath", sourceTemperature: 100 },
  },
  { solver: heatingTime, path: "coreTemperature", faulty: { coreTemperature: 103.9 }, sound: { coreTemperature: 104 } },
  { solver: heatingTime, path: "coreTemperature", faulty: { coreTemperature: 134.1 }, sound: { coreTemperature: 134 } },
  { solver: heatingTime, path: "startTemperature", faulty: { startTemperature: 106.3 }, sound: { startTemperature: 106.1 } },
  {
    solver: heatingTime,
    path: "startTemperature",
    faulty: { coreTemperature: 120, startTemperature: 119 },
    sound: { coreTemperature: 120, startTemperature: 118.9 },
  },
  { solver: coolingTime, path: "faces", faulty: { faces: 2 }, sound: { faces: 1 } },
  { solver: coolingTime, path: "formingTemperature", faulty: { formingTemperature: 108.15 }, sound: { formingTemperature: 108.25 } },
  { solver: coolingTime, path: "releaseTemperature", faulty: { releaseTemperature: 106.25 }, sound: { releaseTemperature: 106.15 } },

  { solver: drape, path: "breadth", faulty: { ...box, breadth: undefined }, sound: box },
  { solver: drape, path: "breadth", faulty: { breadth: 0.05 }, sound: {} },
  { solver: drape, path: "baseDiameter", faulty: { baseDiameter: 0.05 }, sound: {} },
  {
    solver: drape,
    path: "baseDiameter",
    faulty: { shape: "frustum", fillet: undefined },
    sound: { shape: "frustum", baseDiameter: 0.05, fillet: undefined },
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
    path: "baseDiameter",
    faulty: { shape: "frustum", baseDiameter: 0.0784, fillet: undefined },
    sound: { shape: "frustum", baseDiameter: 0.0783, fillet: undefined },
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
  ...legFaults(tubeBend, 90, ["backs", "centrelines", "insides"]),
  ...legFaults(lineBend, 9, ["outside", "inside"]),
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

const known = (material: Plastic) => published[material]
const low = (material: Plastic, key: "upper" | "lower" | "scorch" | "set" | "fume") => known(material)[key]?.[1] as number
const limit = (material: Plastic) => Math.min(low(material, "upper"), known(material).scorch?.[1] ?? 1e9)
const ceiling = (material: Plastic) => known(material).scorch?.[1] ?? (known(material).upper?.[2] as number)
const from = (material: Plastic) => known(material).lower?.[2] as number
const release = (si: { material: Plastic; releaseTemperature: number | null }) => si.releaseTemperature ?? low(si.material, "set")
const formed = (si: { material: Plastic; formingTemperature: number | null }) =>
  si.formingTemperature ?? Math.min(limit(si.material), Math.max(from(si.material), known(si.material).normal?.[0] as number))

interface Heating {
  readonly shape: string
  readonly thickness: number
  readonly faces: number
  readonly material: Plastic
  readonly heatSource: "oven" | "heat-gun" | "hot-plate" | "radiant" | "water-bath"
  readonly sourceTemperature: number
  readonly coreTemperature: number | null
  readonly filmCoefficient: number | null
  readonly emissivity: number
  readonly startTemperature: number
  readonly ambientTemperature: number
  readonly conductivity: number | null
}
const target = (si: Heating) => si.coreTemperature ?? from(si.material)

/** Where the coldest spot settles at last, over the spread of the conductivity: series resistances of film, sheet and back. */
function settled(si: Heating): number {
  const convection = si.filmCoefficient ?? { oven: 25, "heat-gun": 60, "hot-plate": 500, radiant: 8, "water-bath": 500 }[si.heatSource]
  const mean = (si.startTemperature + limit(si.material)) / 2 + 273.15
  const black = si.emissivity * 5.670374419e-8
  const film = si.heatSource === "radiant" ? convection + 4 * black * mean ** 3 : convection
  const outside =
    si.heatSource === "radiant"
      ? (black * ((si.sourceTemperature + 273.15) ** 4 - mean ** 4) +
          4 * black * mean ** 4 +
          convection * (si.ambientTemperature + 273.15)) /
          film -
        273.15
      : si.sourceTemperature
  const back = si.heatSource === "hot-plate" ? 10 : si.heatSource === "radiant" ? film : 0
  if (si.shape !== "sheet" || si.faces === 2 || back === 0) return outside
  const k = si.conductivity ?? (known(si.material).conductivity?.[1] as number)
  const flux = (outside - si.ambientTemperature) / (1 / film + si.thickness / k + 1 / back)
  return Math.min(si.ambientTemperature + flux / back, outside - flux / film)
}

const onset = ({ material }: { material: Plastic }) => low(material, "fume")
const bent = (si: { outsideDiameter: number; wall: number }) =>
  ((3 / Math.SQRT2) * ((si.outsideDiameter - si.wall) / 2) ** 2 * Math.sqrt(0.84)) / si.wall

interface Tube {
  readonly radius: number
  readonly outsideDiameter: number
  readonly angle: number
  readonly legMeasure: "backs" | "centrelines" | "insides" | "bend" | "straight"
}
/** What a bend takes of a leg, by where legs are measured to. */
function tubeReach({ radius, outsideDiameter: d, angle, legMeasure }: Tube): number {
  if (legMeasure === "bend") return radius + d / 2
  return (radius + { backs: 0.5, centrelines: 0, insides: -0.5, straight: -radius / d }[legMeasure] * d) * Math.tan(angle / 2)
}

interface Line {
  readonly insideRadius: number
  readonly thickness: number
  readonly angle: number
  readonly legMeasure: string
}
const lineReach = ({ insideRadius, thickness, angle, legMeasure }: Line) =>
  legMeasure === "bend" ? insideRadius + thickness : (insideRadius + (legMeasure === "inside" ? 0 : thickness)) * Math.tan(angle / 2)

const numbers: Numbers = {
  "formingWindow.fumes.onset": onset,
  "coolingTime.fumes.onset": onset,
  "heatingTime.fumes.onset": onset,
  "drape.fumes.onset": onset,
  "tubeBend.fumes.onset": onset,
  "lineBend.fumes.onset": onset,
  "lineBend.one-face.bothFrom": (si) => (si.material === "pvc-foam" ? 0.005 : 0.0254 / 8),
  "lineBend.does-not-fit.shortBy": (si) => lineReach(si) - (si.legA < lineReach(si) ? si.legA : si.legB),
  "lineBend.does-not-fit.at.needed": (si) => lineReach(si),
  // HighLine Polycarbonate, 2012
  "drying.vent-only-dried.atRest": () => 0.2 / 100,
  "drying.vent-only-dried.blisters": () => 0.05 / 100,
  "drying.vent-only-dried.times": () => 0.2 / 0.05,
  "coolingTime.overheated.limit": (si) => limit(si.material),
  "coolingTime.never-reached.shortBy": (si) => Math.max(si.ambientTemperature - release(si) + 1, 2 ** -52),
  "coolingTime.never-reached.at.releaseTemperature": release,
  "coolingTime.formingTemperature.formingTemperature": formed,
  "coolingTime.formingTemperature.minFormingTemperature": (si) => from(si.material),
  "coolingTime.releaseTemperature.releaseTemperature": release,
  "coolingTime.releaseTemperature.minFormingTemperature": (si) => from(si.material),
  "heatingTime.source-chars.ceiling": (si) => ceiling(si.material),
  "heatingTime.sand-above-limit.bore": (si) => {
    const { conductivity, density, specificHeat, melting } = known(si.material)
    const k = si.conductivity ?? conductivity?.[0]
    const c = si.specificHeat ?? (specificHeat?.[0] as number) + (melting?.[0] as number) / 1e9
    const [sand, wall] = [Math.sqrt(0.27 * 1515 * 800), Math.sqrt(k * (si.density ?? density?.[0]) * c)]
    return (sand * si.sandTemperature + wall * si.startTemperature) / (sand + wall)
  },
  "heatingTime.never-reached.shortBy": (si) => Math.max(target(si) - settled(si), 1e-3),
  "heatingTime.never-reached.at.core": settled,
  "heatingTime.never-reached.at.target": target,
  "heatingTime.coreTemperature.lowest": (si) => low(si.material, "lower"),
  "heatingTime.coreTemperature.highest": (si) => limit(si.material) - 1,
  "heatingTime.startTemperature.target": target,
  "softening.already-soft.shortBy": (si) => Math.max(si.startTemperature - low(si.material, "set"), 2 ** -52),
  "softening.already-soft.at.set": (si) => low(si.material, "set"),
  "drape.does-not-fit.shortBy": (si) => si.plugWidth * si.plugBreadth - 0.99 * si.width * si.breadth,
  "drape.does-not-fit.at.plugArea": (si) => si.plugWidth * si.plugBreadth,
  "drape.does-not-fit.at.openArea": (si) => si.width * si.breadth,
  "drape.fillet.most": (si) => {
    const base = si.shape === "frustum" ? si.baseDiameter : si.width
    const slope = Math.atan2(si.depth, (si.width - base) / 2)
    return (0.9 * (base / 2)) / Math.tan(slope / 2)
  },
  "tubeBend.tight-radius.least": (si) => {
    const flat = (((si.outsideDiameter - si.wall) / 2) ** 2 * Math.sqrt(0.84)) / si.wall
    return Math.max(5 * si.outsideDiameter, ...(si.support === "empty" ? [bent(si), flat * Math.sqrt(2 / si.ovalityLimit)] : []))
  },
  "tubeBend.too-tight.shortBy": (si) => Math.max(si.outsideDiameter / 2 - si.radius, 2 ** -52 * si.outsideDiameter),
  "tubeBend.kinks.shortBy": (si) => bent(si) - si.radius,
  "tubeBend.kinks.at.kinkRadius": bent,
  "tubeBend.does-not-fit.shortBy": (si) => tubeReach(si) - (si.legA < tubeReach(si) ? si.legA : si.legB),
  "tubeBend.does-not-fit.at.needed": (si) => tubeReach(si),
  "bendTemplate.too-tight.shortBy": (si) =>
    Math.max(si.outsideDiameter / 2 - si.radius * (1 - si.springback), 2 ** -52 * si.outsideDiameter),
  "bendTemplate.too-tight.at.minJigRadius": (si) => si.radius * (1 - si.springback),
}

export const edges: Edges = { cautions, refusals, faults, numbers }
