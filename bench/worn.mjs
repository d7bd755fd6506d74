// What the body carries: one call of each solver, checked and as a kernel, the schedule against its length, and the picture.
import {
  bodyDimension,
  bodySegments,
  carriedLoad,
  carriedLoadSideView,
  endurance,
  heatStress,
  liftLimit,
  metabolicRate,
  strapPressure,
  wearSchedule,
} from "alula/worn"

const solvers = { metabolicRate, carriedLoad, strapPressure, wearSchedule, endurance, heatStress, liftLimit, bodySegments, bodyDimension }
const pose = (i) => ({ name: `pose ${i}`, forward: -0.2 - i * 1e-4, left: 0, up: 1.2 + i * 1e-3 })
const manyPoses = carriedLoad.read({ bodyMass: 60, stature: 1.65, rigMass: 7, poses: Array.from({ length: 200 }, (_, i) => pose(i)) })
const longDay = wearSchedule.read({
  bodyMass: 60,
  rigMass: 6,
  backMoment: 6,
  plan: Array.from({ length: 48 }, (_, i) => ({ name: `part ${i}`, activity: i % 2 ? "off" : "walking", duration: 1200 })),
})

export const rows = [
  ...Object.entries(solvers).flatMap(([name, solver]) => {
    const si = solver.read(solver.example)
    return [
      { name: `worn.${name}.si`, run: () => solver.si(si) },
      { name: `worn.${name}`, run: () => solver(solver.example), baseline: `worn.${name}.si` },
    ]
  }),
  { name: "worn.carriedLoad.si, 200 poses", run: () => carriedLoad.si(manyPoses), baseline: "worn.carriedLoad.si" },
  { name: "worn.wearSchedule.si, 48 parts", run: () => wearSchedule.si(longDay), baseline: "worn.wearSchedule.si" },
  { name: "worn carriedLoadSideView", run: () => carriedLoadSideView(carriedLoad.example), baseline: "worn.carriedLoad" },
]
