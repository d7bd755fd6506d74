// Frame: one call of each solver, checked and as a kernel, and the plain kernels inner loops use.
import {
  beam,
  beamCurve,
  bendingRod,
  column,
  elastica,
  fastening,
  handlingLoad,
  massProperties,
  memberSize,
  naturalFrequency,
  pinJoint,
  planeFrame,
  sectionOf,
  tubeSection,
} from "alula/frame"

const solvers = {
  tubeSection,
  fastening,
  beam,
  column,
  pinJoint,
  planeFrame,
  naturalFrequency,
  bendingRod,
  handlingLoad,
  massProperties,
  memberSize,
}
const curve = beamCurve({
  length: 0.9,
  span: null,
  stiffness: 100,
  forces: [{ force: 12, position: 0.9 }],
  distributedLoads: [{ startLoad: 20, endLoad: 5, start: 0, end: 0.5 }],
  couples: [{ moment: 1.5, position: 0.4 }],
})
const section = {
  pipe: null,
  outsideDiameter: 0.02,
  width: null,
  height: null,
  wall: 0.0015,
  secondMoment: null,
  fibre: null,
  area: null,
}

export const rows = [
  ...Object.entries(solvers).flatMap(([name, solver]) => {
    const si = solver.read(solver.example)
    return [
      { name: `frame.${name}.si`, run: () => solver.si(si) },
      { name: `frame.${name}`, run: () => solver(solver.example), baseline: `frame.${name}.si` },
    ]
  }),
  { name: "frame sectionOf", run: () => sectionOf(section) },
  { name: "frame beamCurve, deflection at one place", run: () => curve.at(0.7) },
  { name: "frame elastica", run: () => elastica(3) },
]
