// Wire: one call of each solver's kernel, and a harness of fifty nodes.
import { conductor, conductorSize, fuseCoordination, harness, ledRun, voltageDrop, wireHeating } from "alula/wire"

const solvers = { conductor, voltageDrop, conductorSize, wireHeating, fuseCoordination, harness, ledRun }

/** A looped trunk of 50 nodes with a lantern at every second one, fed at two points. */
const nodes = 50
const node = (i) => `n${i % nodes}`
const net = {
  sources: [
    { name: "front", positive: node(0), negative: "0", sourceVoltage: 12.6, sourceResistance: 0.06 },
    { name: "rear", positive: node(25), negative: "0", sourceVoltage: 12.5, sourceResistance: 0.06 },
  ],
  wires: Array.from({ length: nodes }, (_, i) => ({ name: `w${i}`, from: node(i), to: node(i + 1), length: 0.4, awg: 18 })),
  currentLoads: Array.from({ length: 25 }, (_, i) => ({ name: `lantern ${i}`, from: node(2 * i), to: "0", current: 0.2 })),
}
const loads = harness.read(net)
const powers = harness.read({
  ...net,
  currentLoads: [],
  powerLoads: net.currentLoads.map(({ current, ...load }) => ({ ...load, power: 12 * current })),
})

export const rows = [
  ...Object.entries(solvers).map(([name, solver]) => {
    const si = solver.read(solver.example)
    return { name: `wire.${name}.si`, run: () => solver.si(si) }
  }),
  { name: "wire.voltageDrop, checked call", run: () => voltageDrop(voltageDrop.example), baseline: "wire.voltageDrop.si" },
  { name: "wire.harness, 50 nodes in a ring (.si)", run: () => harness.si(loads) },
  {
    name: "wire.harness, 50 nodes, constant power (.si)",
    run: () => harness.si(powers),
    baseline: "wire.harness, 50 nodes in a ring (.si)",
  },
]
