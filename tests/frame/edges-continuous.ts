import { continuousBeam, linearLimit } from "../../src/frame/index.js"
import type { Edges } from "../helpers/edges.js"

// biome-ignore lint/suspicious/noExplicitAny: the solver's input in SI
type Any = any
const { example } = continuousBeam
const noLoads = { forces: [], distributedLoads: [], moments: [] }
const pinnedAt = (...places: number[]) => places.map((position) => ({ type: "pinned", position }))
/** Ends, and the supports between them: one within a micrometre of an end stands at it. */
const places = (si: Any): number[] => {
  const inside = si.supports.map((s: Any) => s.position).filter((x: number) => x >= 1e-6 && si.length - x >= 1e-6)
  return [0, ...inside.sort((a: number, b: number) => a - b), si.length]
}
const stretches = (si: Any) =>
  places(si)
    .slice(1)
    .map((to, i) => to - (places(si)[i] as number))

/** A modulus at which it bends by a share of the linear limit of its longest stretch, 0.8 m; the spring makes it not quite in proportion. */
const bendsAt = (() => {
  const springs = { supports: pinnedAt(0, 0.8, 1.5) }
  const at69 = continuousBeam({ ...example, ...(springs as object), modulus: "69 GPa" }).maxDeflection.high
  return { ...springs, modulus: (share: number) => (at69 / ((linearLimit / 3) * 0.8 * share)) * 69e9 }
})()
const short = (length: number, first = 0) => ({ ...noLoads, length, supports: pinnedAt(first, 1) })
const spread = (start: number, end: number) => ({ distributedLoads: [{ startLoad: "20 N/m", endLoad: "5 N/m", start, end }] })
const level = { ...noLoads, countsOwnWeight: false, length: 0.9, supports: pinnedAt(0, 0.5) }
const alone = { material: undefined, modulus: "69 GPa" } as const

export const edges: Edges = {
  cautions: [
    {
      solver: continuousBeam,
      code: "bends-far",
      severity: "caution",
      shown: { supports: bendsAt.supports, modulus: bendsAt.modulus(1.004) },
      notShown: { supports: bendsAt.supports, modulus: bendsAt.modulus(0.996) },
    },
    { solver: continuousBeam, code: "short-beam", severity: "note", shown: short(1.1595), notShown: short(1.1605) },
    // a support a hair from the end stands at it, and makes no stretch
    { solver: continuousBeam, code: "short-beam", severity: "note", shown: short(1.1595, 1e-7), notShown: short(1.1605, 1e-7) },
    {
      solver: continuousBeam,
      code: "lifts-off",
      severity: "caution",
      shown: { ...level, forces: [{ force: 20, position: 0.5005 }] },
      notShown: { ...level, forces: [{ force: 20, position: 0.4995 }] },
    },
    {
      solver: continuousBeam,
      code: "rigid-clamp",
      severity: "note",
      shown: {},
      notShown: { supports: [{ type: "spring", position: 0, turningStiffness: 500 }, ...example.supports.slice(1)] },
    },
    {
      solver: continuousBeam,
      code: "weight-unknown",
      severity: "note",
      shown: alone,
      notShown: { ...alone, density: "2700 kg/m3" },
    },
    {
      solver: continuousBeam,
      code: "stress-unknown",
      severity: "caution",
      shown: { section: { secondMoment: "4000 mm4" } },
      notShown: { section: { secondMoment: "4000 mm4", fibre: "10 mm" } },
    },
  ],
  refusals: [
    {
      solver: continuousBeam,
      code: "unstable",
      refused: { supports: pinnedAt(0) },
      answered: { supports: pinnedAt(0, 1.8) },
      noNearest: "a support is missing, and where it can stand is the maker's to say",
    },
  ],
  faults: [
    {
      solver: continuousBeam,
      path: "supports.1.position",
      faulty: { supports: pinnedAt(0, 1.805) },
      sound: { supports: pinnedAt(0, 1.8) },
    },
    {
      solver: continuousBeam,
      path: "supports.1.position",
      faulty: { supports: pinnedAt(0.2, 0.2009) },
      sound: { supports: pinnedAt(0.2, 0.201001) },
    },
    {
      solver: continuousBeam,
      path: "supports.0.stiffness",
      faulty: { supports: [{ type: "spring", position: 0 }, ...pinnedAt(1)] },
      sound: { supports: [{ type: "spring", position: 0, stiffness: 500 }, ...pinnedAt(1)] },
    },
    {
      solver: continuousBeam,
      path: "forces.0.position",
      faulty: { forces: [{ force: 12, position: 1.801 }] },
      sound: { forces: [{ force: 12, position: 1.8 }] },
    },
    {
      solver: continuousBeam,
      path: "moments.0.position",
      faulty: { moments: [{ moment: 1, position: 1.801 }] },
      sound: { moments: [{ moment: 1, position: 1.8 }] },
    },
    { solver: continuousBeam, path: "distributedLoads.0.end", faulty: spread(0.1, 1.801), sound: spread(0.1, 1.8) },
    { solver: continuousBeam, path: "distributedLoads.0.end", faulty: spread(0.5, 0.5), sound: spread(0.5, 0.501) },
  ],
  numbers: {
    "continuousBeam.bends-far.deflection": (_, out) => Math.max(Math.abs(out.maxDeflection.low), Math.abs(out.maxDeflection.high)),
    "continuousBeam.bends-far.longest": (si) => Math.max(...stretches(si)),
    "continuousBeam.short-beam.shortest": (si) => Math.min(...stretches(si)),
    "continuousBeam.lifts-off.pull": (_, out) => -Math.min(...out.places.map((p: Any) => p.reaction ?? 0)),
    "continuousBeam.unstable.shortBy": () => 1,
    "continuousBeam.unstable.at.position": (si) => si.supports[0].position,
    "continuousBeam.supports.1.position.place": (si) => si.supports[1].position,
    "continuousBeam.supports.1.position.other": (si) => si.supports[0].position,
    "continuousBeam.supports.1.position.length": (si) => si.length,
    "continuousBeam.forces.0.position.place": (si) => si.forces[0].position,
    "continuousBeam.moments.0.position.place": (si) => si.moments[0].position,
    "continuousBeam.distributedLoads.0.end.place": (si) => si.distributedLoads[0].end,
    "continuousBeam.distributedLoads.0.end.end": (si) => si.distributedLoads[0].end,
    "continuousBeam.distributedLoads.0.end.start": (si) => si.distributedLoads[0].start,
  },
}
