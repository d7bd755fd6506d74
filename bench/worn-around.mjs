import { contactSeverity, overturning, passage, pinchGap, reach, touchTemperature, windLoad } from "alula/worn"

const solvers = { windLoad, overturning, contactSeverity, touchTemperature, pinchGap, passage, reach }

/** Each solver on its own example, checked call and bare kernel. */
export const rows = Object.entries(solvers).flatMap(([name, solver]) => {
  const si = solver.read(solver.example)
  return [
    { name: `worn.${name}`, run: () => solver(solver.example) },
    { name: `worn.${name}.si`, run: () => solver.si(si), baseline: `worn.${name}` },
  ]
})
