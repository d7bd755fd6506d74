import { bendTemplate, coolingTime, drape, heatingTime, softening, tubeBend } from "../../src/thermoform/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const tube = { shape: "tube", outsideDiameter: 0.0267, thickness: 0.0029, material: "pvc" }

/** Inputs far from the solvers' own examples: other forms, sources and places. */
const inputs: readonly WorkingCase[] = [
  ["sheet in an oven", any(heatingTime), { shape: "sheet", thickness: 0.003, material: "abs", heatSource: "oven", sourceTemperature: 190 }],
  [
    "sheet under a heat gun",
    any(heatingTime),
    { shape: "sheet", thickness: 0.003, material: "petg", heatSource: "heat-gun", sourceTemperature: 400, faces: 1 },
  ],
  [
    "sheet on a hot plate",
    any(heatingTime),
    { shape: "sheet", thickness: 0.003, material: "hips", heatSource: "hot-plate", sourceTemperature: 260, faces: 1 },
  ],
  [
    "sheet between radiant heaters",
    any(heatingTime),
    { shape: "sheet", thickness: 0.004, material: "petg", heatSource: "radiant", sourceTemperature: 350 },
  ],
  [
    "sheet under one radiant heater",
    any(heatingTime),
    { shape: "sheet", thickness: 0.002, material: "pc", heatSource: "radiant", sourceTemperature: 500, faces: 1 },
  ],
  ["rod", any(heatingTime), { shape: "rod", outsideDiameter: 0.02, material: "pmma-cast", heatSource: "oven", sourceTemperature: 190 }],
  ["filled tube", any(heatingTime), { ...tube, heatSource: "oven", sourceTemperature: 130, filling: "dry-sand" }],
  [
    "hot sand",
    any(heatingTime),
    {
      ...tube,
      heatSource: "oven",
      sourceTemperature: 60,
      filling: "dry-sand",
      sandTemperature: 230,
      filmCoefficient: 10,
      specificHeat: 900,
      density: 1400,
    },
  ],
  ["foam", any(heatingTime), { shape: "sheet", thickness: 0.01, material: "eva-foam", heatSource: "oven", sourceTemperature: 130 }],
  ["sheet cooling from both faces", any(coolingTime), { shape: "sheet", thickness: 0.003, material: "petg", faces: 2, cooling: "fan" }],
  ["filled tube cooling", any(coolingTime), { ...tube, filling: "dry-sand", formingTemperature: 130 }],
  ["rod in water", any(coolingTime), { shape: "rod", outsideDiameter: 0.02, material: "pmma-cast", cooling: "water" }],
  ["empty tube", any(tubeBend), { outsideDiameter: 0.0267, wall: 0.0029, radius: 0.4, angle: 0.4, support: "empty", material: "pc" }],
  ["full circle", any(tubeBend), { outsideDiameter: 0.0267, wall: 0.0029, radius: 0.4, angle: 6.2, support: "filled", material: "hdpe" }],
  [
    "free curve",
    any(bendTemplate),
    { shape: "curve", outsideDiameter: 0.02, points: [0, 1, 2, 3, 4].map((i) => ({ x: i * 0.1, y: 0.02 * i * i })), side: "right" },
  ],
  ["dome", any(drape), { material: "petg", thickness: 0.003, shape: "dome", width: 0.2, depth: 0.07 }],
  ["cone", any(drape), { material: "petg", thickness: 0.003, shape: "cone", width: 0.2, depth: 0.07 }],
  [
    "frustum",
    any(drape),
    { material: "petg", thickness: 0.003, shape: "frustum", width: 0.2, baseDiameter: 0.1, depth: 0.16, fillet: 0.01 },
  ],
  [
    "box with a plug",
    any(drape),
    { material: "abs", thickness: 0.003, shape: "box", width: 0.2, breadth: 0.1, depth: 0.07, plugWidth: 0.15, plugBreadth: 0.07 },
  ],
  ["part in the sun", any(softening), { material: "pp", thickness: 0.003, place: "sun" }],
]

workingTests(inputs)
