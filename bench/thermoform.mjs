// Thermoform: one call of each solver, checked and as a kernel, and the conduction problems that take longest.
import {
  bendTemplate,
  bendTemplateSvg,
  coolDown,
  drape,
  drying,
  formingWindow,
  heatThrough,
  softening,
  temperatureRatio,
  tubeBend,
} from "alula/thermoform"

const solvers = { formingWindow, drying, heatThrough, coolDown, tubeBend, bendTemplate, drape, softening }
const sheet = heatThrough.read({ form: "sheet", thickness: "3 mm", plastic: "petg", source: "oven", sourceTemperature: "150 degC" })
const filled = heatThrough.read({ ...heatThrough.example, filling: "drySand" })
const hotSand = heatThrough.read({ ...heatThrough.example, filling: "drySand", sandTemperature: "150 degC" })

export const rows = [
  ...Object.entries(solvers).flatMap(([name, solver]) => {
    const si = solver.read(solver.example)
    return [
      { name: `thermoform.${name}.si`, run: () => solver.si(si) },
      { name: `thermoform.${name}`, run: () => solver(solver.example), baseline: `thermoform.${name}.si` },
    ]
  }),
  { name: "thermoform.heatThrough.si sheet", run: () => heatThrough.si(sheet) },
  { name: "thermoform.heatThrough.si filled tube", run: () => heatThrough.si(filled), baseline: "thermoform.heatThrough.si" },
  { name: "thermoform.heatThrough.si hot sand", run: () => heatThrough.si(hotSand), baseline: "thermoform.heatThrough.si" },
  { name: "thermoform.temperatureRatio series", run: () => temperatureRatio("rod", 1, 0.2, 0) },
  { name: "thermoform.temperatureRatio short time", run: () => temperatureRatio("rod", 1, 1e-6, 1) },
  { name: "thermoform.bendTemplateSvg", run: () => bendTemplateSvg(bendTemplate.example), baseline: "thermoform.bendTemplate" },
]
