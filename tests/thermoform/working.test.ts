import { bendTemplate, coolDown, drape, heatThrough, softening, tubeBend } from "../../src/thermoform/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const tube = { form: "tube", diameter: 0.0267, thickness: 0.0029, plastic: "pvc" }

/** Inputs far from the solvers' own examples: other forms, sources and places. */
const inputs: readonly WorkingCase[] = [
  ["sheet in an oven", any(heatThrough), { form: "sheet", thickness: 0.003, plastic: "abs", source: "oven", sourceTemperature: 190 }],
  [
    "sheet under a heat gun",
    any(heatThrough),
    { form: "sheet", thickness: 0.003, plastic: "petg", source: "heatGun", sourceTemperature: 400, faces: 1 },
  ],
  [
    "sheet on a hot plate",
    any(heatThrough),
    { form: "sheet", thickness: 0.003, plastic: "hips", source: "hotPlate", sourceTemperature: 260, faces: 1 },
  ],
  [
    "sheet between radiant heaters",
    any(heatThrough),
    { form: "sheet", thickness: 0.004, plastic: "petg", source: "radiant", sourceTemperature: 350 },
  ],
  [
    "sheet under one radiant heater",
    any(heatThrough),
    { form: "sheet", thickness: 0.002, plastic: "pc", source: "radiant", sourceTemperature: 500, faces: 1 },
  ],
  ["rod", any(heatThrough), { form: "rod", diameter: 0.02, plastic: "pmmaCast", source: "oven", sourceTemperature: 190 }],
  ["filled tube", any(heatThrough), { ...tube, source: "oven", sourceTemperature: 130, filling: "drySand" }],
  [
    "hot sand",
    any(heatThrough),
    {
      ...tube,
      source: "oven",
      sourceTemperature: 60,
      filling: "drySand",
      sandTemperature: 230,
      film: 10,
      specificHeat: 900,
      density: 1400,
    },
  ],
  ["foam", any(heatThrough), { form: "sheet", thickness: 0.01, plastic: "evaFoam", source: "oven", sourceTemperature: 130 }],
  ["sheet cooling from both faces", any(coolDown), { form: "sheet", thickness: 0.003, plastic: "petg", faces: 2, cooling: "fan" }],
  ["filled tube cooling", any(coolDown), { ...tube, filling: "drySand", formed: 130 }],
  ["rod in water", any(coolDown), { form: "rod", diameter: 0.02, plastic: "pmmaCast", cooling: "water" }],
  ["empty tube", any(tubeBend), { diameter: 0.0267, wall: 0.0029, radius: 0.4, angle: 0.4, support: "empty", plastic: "pc" }],
  ["full circle", any(tubeBend), { diameter: 0.0267, wall: 0.0029, radius: 0.4, angle: 6.2, support: "filled", plastic: "hdpe" }],
  [
    "free curve",
    any(bendTemplate),
    { shape: "curve", diameter: 0.02, points: [0, 1, 2, 3, 4].map((i) => ({ x: i * 0.1, y: 0.02 * i * i })), side: "right" },
  ],
  ["dome", any(drape), { plastic: "petg", thickness: 0.003, form: "dome", width: 0.2, depth: 0.07 }],
  ["cone", any(drape), { plastic: "petg", thickness: 0.003, form: "cone", width: 0.2, depth: 0.07 }],
  ["frustum", any(drape), { plastic: "petg", thickness: 0.003, form: "frustum", width: 0.2, base: 0.1, depth: 0.16, fillet: 0.01 }],
  [
    "box with a plug",
    any(drape),
    { plastic: "abs", thickness: 0.003, form: "box", width: 0.2, breadth: 0.1, depth: 0.07, plugWidth: 0.15, plugBreadth: 0.07 },
  ],
  ["part in the sun", any(softening), { plastic: "pp", thickness: 0.003, place: "sun" }],
]

workingTests(inputs)
