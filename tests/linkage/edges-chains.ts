import { foldingChain, skewHinge } from "../../src/linkage/index.js"
import type { Edges } from "../helpers/edges.js"

const segment = (change: object, i = 1) => ({
  segments: (foldingChain.example.segments as readonly object[]).map((s, k) => (k === i ? { ...s, ...change } : s)),
})
const light = (mass: number) => ({ segments: [{ length: "200 mm", mass, foldedAngle: 0, ratio: 1 }], driverTravel: 0.5, planeTilt: 0 })
/** One upright segment whose centre of gravity passes over its joint at the end of the travel, or just before. */
const over = (driverTravel: number) => ({
  segments: [{ length: "200 mm", mass: "100 g", foldedAngle: 1, ratio: 1 }],
  frameTilt: 0,
  planeTilt: 0,
  driverTravel,
})
const ahead = (forward: number) => ({
  hinge: { forward: 0, left: 0, up: 0 },
  axis: { forward: 1, left: 0, up: 0 },
  masses: [{ mass: "100 g", forward: 0, left: "300 mm", up: 0 }],
  tip: { forward, left: 1, up: 0 },
})
const upright = (mass: number) => ({ ...ahead(0.2), masses: [{ mass, forward: 0, left: "300 mm", up: 0 }] })

export const edges: Edges = {
  cautions: [
    { solver: foldingChain, code: "pinch", severity: "warning", shown: {}, notShown: null },
    { solver: foldingChain, code: "tip-sweeps", severity: "warning", shown: {}, notShown: null },
    { solver: foldingChain, code: "falls-unpowered", severity: "warning", shown: light(1e-3), notShown: light(0) },
    // cos passes nothing at a quarter turn from level: 0.5708 on from 1 rad
    { solver: foldingChain, code: "effort-reverses", severity: "caution", shown: over(0.5712), notShown: over(0.5704) },
    {
      solver: foldingChain,
      code: "joints-in-turn",
      severity: "note",
      shown: segment({ startsAt: 1e-3 }),
      notShown: segment({ startsAt: 0 }),
    },
    { solver: foldingChain, code: "joints-in-turn", severity: "note", shown: segment({ endsAt: 0.999 }), notShown: segment({ endsAt: 1 }) },
    { solver: foldingChain, code: "hinge-bends", severity: "caution", shown: { planeTilt: 1e-3 }, notShown: { planeTilt: 0 } },
    { solver: foldingChain, code: "hinge-bends", severity: "caution", shown: { planeTilt: -1e-3 }, notShown: { planeTilt: 0 } },
    { solver: skewHinge, code: "pinch", severity: "warning", shown: {}, notShown: null },
    { solver: skewHinge, code: "tip-sweeps", severity: "warning", shown: {}, notShown: null },
    { solver: skewHinge, code: "falls-unpowered", severity: "warning", shown: upright(1e-3), notShown: upright(0) },
    { solver: skewHinge, code: "not-seen-from-front", severity: "note", shown: ahead(0.1001), notShown: ahead(0.0999) },
    { solver: skewHinge, code: "not-seen-from-front", severity: "note", shown: ahead(-0.1001), notShown: ahead(-0.0999) },
    { solver: skewHinge, code: "friction-left-out", severity: "note", shown: { pinFriction: 0 }, notShown: { pinFriction: 1e-3 } },
    { solver: skewHinge, code: "friction-left-out", severity: "note", shown: { pinDiameter: 0 }, notShown: { pinDiameter: 1e-4 } },
  ],
  refusals: [],
  faults: [
    {
      solver: foldingChain,
      path: "segments.1.endsAt",
      faulty: segment({ startsAt: 0.4, endsAt: 0.4 }),
      sound: segment({ startsAt: 0.4, endsAt: 0.401 }),
    },
    // friction radius 0.2 · 5 mm / 2
    {
      solver: foldingChain,
      path: "segments.1.driveRadius",
      faulty: segment({ driveRadius: 0.0005 }),
      sound: segment({ driveRadius: 0.000501 }),
    },
    {
      solver: skewHinge,
      path: "axis",
      faulty: { axis: { forward: 0.00099, left: 0, up: 0 } },
      sound: { axis: { forward: 0.001, left: 0, up: 0 } },
    },
    // friction radius 0.2 · 8 mm / 2
    { solver: skewHinge, path: "driveRadius", faulty: { driveRadius: 0.0008 }, sound: { driveRadius: 0.000801 } },
  ],
  numbers: {
    "foldingChain.hinge-bends.sideMoment": (_, out) => Math.max(...out.joints.map((joint: { sideMoment: number }) => joint.sideMoment)),
    "foldingChain.segments.1.driveRadius.frictionRadius": (si) => si.pinFriction * (si.pinDiameter / 2),
    "skewHinge.not-seen-from-front.off": (_, out) => Math.sqrt(out.tipAhead ** 2),
    "skewHinge.driveRadius.frictionRadius": (si) => si.pinFriction * (si.pinDiameter / 2),
  },
}
