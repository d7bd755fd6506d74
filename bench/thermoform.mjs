// Thermoform: one call of each solver, checked and as a kernel, and the conduction problems that take longest.
import {
  bendTemplate,
  bendTemplateSvg,
  coolingTime,
  drape,
  drying,
  formingWindow,
  heatingTime,
  lineBend,
  softening,
  temperatureRatio,
  tubeBend,
} from "alula/thermoform"

const solvers = { formingWindow, drying, heatingTime, coolingTime, tubeBend, lineBend, bendTemplate, drape, softening }
const sheet = heatingTime.read({ shape: "sheet", thickness: "3 mm", material: "petg", heatSource: "oven", sourceTemperature: "150 degC" })
const filled = heatingTime.read({ ...heatingTime.example, filling: "dry-sand" })
const hotSand = heatingTime.read({ ...heatingTime.example, filling: "dry-sand", sandTemperature: "150 degC" })

export const rows = [
  ...Object.entries(solvers).flatMap(([name, solver]) => {
    const si = solver.read(solver.example)
    return [
      { name: `thermoform.${name}.si`, run: () => solver.si(si) },
      { name: `thermoform.${name}`, run: () => solver(solver.example), baseline: `thermoform.${name}.si` },
    ]
  }),
  { name: "thermoform.heatingTime.si sheet", run: () => heatingTime.si(sheet) },
  { name: "thermoform.heatingTime.si filled tube", run: () => heatingTime.si(filled), baseline: "thermoform.heatingTime.si" },
  { name: "thermoform.heatingTime.si hot sand", run: () => heatingTime.si(hotSand), baseline: "thermoform.heatingTime.si" },
  { name: "thermoform.temperatureRatio series", run: () => temperatureRatio("rod", 1, 0.2, 0) },
  { name: "thermoform.temperatureRatio short time", run: () => temperatureRatio("rod", 1, 1e-6, 1) },
  { name: "thermoform.bendTemplateSvg", run: () => bendTemplateSvg(bendTemplate.example), baseline: "thermoform.bendTemplate" },
]
