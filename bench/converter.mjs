// Converter: one call of each solver's kernel, and the plain kernel the rig's inner loop uses.
import { boostStage, buckStage, constantPowerPoint, converterLimit, converterOutput, startUp, usbSupply } from "alula/converter"

const solvers = { converterLimit, constantPowerPoint, boostStage, buckStage, usbSupply, startUp }
const { loadCurrent, sourceVoltage, sourceResistance, ...spec } = converterLimit.read(converterLimit.example)
const source = { voltage: sourceVoltage, resistance: sourceResistance }

export const rows = [
  ...Object.entries(solvers).map(([name, solver]) => {
    const si = solver.read(solver.example)
    return { name: `converter.${name}.si`, run: () => solver.si(si) }
  }),
  {
    name: "converterOutput (plain kernel)",
    run: () => converterOutput({ ...spec, maxInputVoltage: 40 }, source, loadCurrent),
    baseline: "converter.converterLimit.si",
  },
]
