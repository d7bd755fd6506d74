// Wire: one call of each solver's kernel, and a harness of fifty nodes.
import {
  conductor,
  conductorSize,
  fuseCoordination,
  harness,
  ledRun,
  motorSwitching,
  resettableFuse,
  voltageDrop,
  wireHeating,
} from "alula/wire"

const solvers = { conductor, voltageDrop, conductorSize, wireHeating, fuseCoordination, harness, ledRun, motorSwitching, resettableFuse }

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

/** A ring of power loads fed at one point, and the same as two lines out and back without a loop. */
const lanterns = (count, watts, ring) =>
  harness.read({
    sources: [{ name: "pack", positive: "n0", negative: "0", sourceVoltage: 12.6, sourceResistance: 0.003 }],
    wires: Array.from({ length: ring ? count : count - 1 }, (_, i) => ({
      name: `w${i}`,
      from: `n${i}`,
      to: `n${(i + 1) % count}`,
      length: 20 / count,
      awg: 18,
    })),
    powerLoads: Array.from({ length: count }, (_, i) => ({ name: `lantern ${i}`, from: `n${i}`, to: "0", power: watts / count })),
  })
const grown = [
  ["ring of power loads, solved", 60, true],
  ["ring of power loads, refused", 5000, true],
  ["line of power loads, solved", 30, false],
].flatMap(([what, watts, ring]) =>
  [125, 250, 500, 1000].map((size) => {
    const si = lanterns(size, watts, ring)
    return { name: `wire.harness, ${what}, ${size} nodes (.si)`, run: () => harness.si(si), family: `wire.harness, ${what}`, size }
  }),
)

export const rows = [
  ...grown,
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
