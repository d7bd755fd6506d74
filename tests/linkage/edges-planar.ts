import { fourBarPose } from "../../src/linkage/four-bar/pose.js"
import { planarLinkage, sweptEnvelope } from "../../src/linkage/index.js"
import type { Change, Edges, RefusalRow } from "../helpers/edges.js"

// biome-ignore lint/suspicious/noExplicitAny: the solver's input in SI
type Si = any

const names = (si: Si) => [...si.pivots, ...si.points].map((p: { name: string }) => p.name).join(", ")
const place = (si: Si, name: string) => [...si.pivots, ...si.points].find((p: { name: string }) => p.name === name)
const barLength = (si: Si, bar: Si) =>
  bar.length ?? Math.hypot(place(si, bar.to).x - place(si, bar.from).x, place(si, bar.to).y - place(si, bar.from).y)

/**
 * Travel that the crank of a four-bar O-A-B-Q lacks, to five places: it is brought from the sketch to its start, then to its
 * end, and stays before the first pose in which coupler and output come into line.
 */
function lacking(si: Si): number {
  const [a, b, c] = si.bars.map((bar: Si) => barLength(si, bar))
  const [o, q] = si.pivots
  const [d, tilt] = [Math.hypot(q.x - o.x, q.y - o.y), Math.atan2(q.y - o.y, q.x - o.x)]
  const A = place(si, "A")
  const drawn = Math.atan2(A.y - o.y, A.x - o.x)
  const start = si.cranks[0].start ?? drawn
  // a start some turns on is come to from where the sketch stands that many turns on
  const sketched = drawn + 2 * Math.PI * Math.round((start - drawn) / (2 * Math.PI))
  const end = si.cranks[0].end ?? start
  const closes = (angle: number) => {
    const reach = Math.hypot(o.x + a * Math.cos(angle) - q.x, o.y + a * Math.sin(angle) - q.y)
    return reach <= b + c && reach >= Math.abs(b - c)
  }
  const stops = [b + c, Math.abs(b - c)].flatMap((reach) => {
    const cos = (d * d + a * a - reach * reach) / (2 * d * a)
    if (Math.abs(cos) > 1 + 1e-12) return []
    return [-1, 1].flatMap((sign) =>
      [-2, -1, 0, 1, 2].map((turn) => tilt + sign * Math.acos(Math.max(-1, Math.min(1, cos))) + 2 * Math.PI * turn),
    )
  })
  for (const [from, to] of [
    [closes(sketched) ? sketched : start, start],
    [start, end],
  ]) {
    const first = Math.min(...stops.map((stop) => (stop - from) * Math.sign(to - from)).filter((off) => off >= -1e-6))
    if (first < Math.abs(to - from) && to !== from) return Math.ceil((Math.abs(to - from) - first) * 1e5) / 1e5
  }
  throw new Error("goes all the way")
}

/** Poses of the last refinement: those asked for, doubled as long as no more than 2048. */
const poses = (si: Si) => {
  let count = 2 * si.steps
  while (2 * count <= 2048) count *= 2
  return count
}
/** How far the paths of A and B in closed form stray beyond what is left of the step before, to two figures. */
function unsmooth(si: Si): number {
  const [a, b, c] = si.bars.map((bar: Si) => barLength(si, bar))
  const [o, q] = si.pivots
  const [d, tilt] = [Math.hypot(q.x - o.x, q.y - o.y), Math.atan2(q.y - o.y, q.x - o.x)]
  const [A, B] = [place(si, "A"), place(si, "B")]
  const branch = (q.x - A.x) * (B.y - A.y) - (q.y - A.y) * (B.x - A.x) > 0 ? "open" : "crossed"
  const start = si.cranks[0].start ?? Math.atan2(A.y - o.y, A.x - o.x)
  const end = si.cranks[0].end ?? start
  const stray = (count: number) => {
    const at = Array.from({ length: count + 1 }, (_, k) => {
      const pose = fourBarPose(d, a, b, c, start + ((end - start) * k) / count - tilt, branch)
      if (typeof pose === "number") throw new Error("does not close")
      return [pose.inputPin, pose.outputPin]
    })
    let most = 0
    for (let k = 1; k < count; k++)
      for (const i of [0, 1]) {
        const [p, m, n] = [at[k - 1]?.[i], at[k]?.[i], at[k + 1]?.[i]] as [Si, Si, Si]
        most = Math.max(most, Math.hypot(p.x - 2 * m.x + n.x, p.y - 2 * m.y + n.y) / 6)
      }
    return most
  }
  const count = poses(si)
  return Number((stray(count) - Math.max(1e-6 * (a + b + c), 0.3 * stray(count / 2))).toPrecision(2))
}

/** Worst misfit of bars (m) where the sketch shows them: the amount by which half the difference of squares over the length is off. */
function misfit(si: Si): number {
  return Math.max(
    ...si.bars.map((bar: Si) => {
      const [p, q] = [place(si, bar.from), place(si, bar.to)]
      const l = barLength(si, bar)
      return Math.abs((q.x - p.x) ** 2 + (q.y - p.y) ** 2 - l * l) / (2 * l)
    }),
  )
}

/** Neither weights nor friction: where a mechanism is near to singular, both would jam it. */
const light = { masses: [], pinFriction: 0 }
const rocker = {
  pivots: [
    { name: "O", x: 0, y: 0 },
    { name: "Q", x: 0.1, y: 0 },
  ],
  points: [
    { name: "A", x: 0.0375, y: 0.06495 },
    { name: "B", x: 0.0757, y: 0.0814 },
  ],
  bars: [
    { from: "O", to: "A", length: 0.075 },
    { from: "A", to: "B", length: 0.045 },
    { from: "Q", to: "B", length: 0.085 },
  ],
  loads: [],
  ...light,
}
const flat = (start: number) => ({
  pivots: rocker.pivots,
  points: [
    { name: "A", x: 0.04 * Math.cos(start), y: 0.04 * Math.sin(start) },
    { name: "B", x: 0.1 + 0.04 * Math.cos(start), y: 0.04 * Math.sin(start) },
  ],
  bars: [
    { from: "O", to: "A" },
    { from: "A", to: "B" },
    { from: "Q", to: "B" },
  ],
  ...light,
})
const to = (end: number) => ({ cranks: [{ from: "O", to: "A", end }] })
/** A lever lifted by a ram square to it, against a torque: it sticks where the friction circle of its pin reaches out to the ram. */
const stuck = {
  pivots: [
    { name: "O", x: 0, y: 0 },
    { name: "C", x: 0.05, y: -0.3 },
  ],
  points: [{ name: "A", x: 0.05, y: 0 }],
  bars: [{ from: "O", to: "A" }],
  cranks: [],
  actuators: [{ from: "C", to: "A", speed: 0.01 }],
  loads: [],
  torques: [{ from: "O", to: "A", torque: -1 }],
  ...light,
  pinFriction: 1,
}
const leverArm = (si: Si) => place(si, "A").x - place(si, "O").x
const radius = (si: Si) => (si.pinFriction * si.pinDiameter) / 2
const single = { ...rocker, ...to(1.2) }
const apartLoops = (length: number) => ({
  ...rocker,
  bars: [rocker.bars[0], { from: "A", to: "B", length }, rocker.bars[2]],
  cranks: [{ from: "O", to: "A" }],
})
const still = (end: string) => ({ cranks: [{ from: "O", to: "A", start: "130 deg", end }] })
const arm = (duration: number) => ({
  pivots: [{ name: "hip", x: 0, y: 0 }],
  points: [{ name: "tip", x: 1, y: 0 }],
  bars: [{ from: "hip", to: "tip" }],
  cranks: [{ from: "hip", to: "tip", start: 0, end: 1 }],
  tip: "tip",
  steps: 4,
  duration,
})
/** The same of the room a mechanism takes: it bears no loads and has a tip. */
const swept = ({ loads: _, masses: _m, pinFriction: _f, ...change }: Change): Change => ({ ...change, tip: "B" })
/** Parallelogram with a coupler a hair too short: it passes its flat pose round a very sharp corner. */
const sharp = (length: number) => ({
  ...swept(flat(0.4)),
  bars: [
    { from: "O", to: "A" },
    { from: "A", to: "B", length },
    { from: "Q", to: "B" },
  ],
  cranks: [{ from: "O", to: "A", end: -0.4 }],
  tip: "B",
  steps: 1,
})

const mechanismRefusals: readonly RefusalRow[] = [
  {
    solver: planarLinkage,
    code: "under-constrained",
    refused: { cranks: [] },
    answered: { cranks: [{ from: "O", to: "A" }] },
    noNearest: "a driver or bar is missing, which is no number",
  },
  {
    solver: planarLinkage,
    code: "over-constrained",
    refused: {
      cranks: [
        { from: "O", to: "A" },
        { from: "Q", to: "B" },
      ],
    },
    answered: { cranks: [{ from: "O", to: "A" }] },
    noNearest: "a driver or bar is too many, which is no number",
  },
  { solver: planarLinkage, code: "dead-point", refused: { ...rocker, ...to(1.662) }, answered: { ...rocker, ...to(1.65) } },
  {
    solver: planarLinkage,
    code: "cannot-close",
    refused: apartLoops(0.005),
    answered: apartLoops(0.045),
    apart: "the shortest coupler that closes depends on where the crank stands",
    noNearest: "what is off may be any length or the sketch",
  },
  {
    solver: planarLinkage,
    code: "singular",
    refused: { ...flat(0.4), ...to(-5.5337e-4) },
    answered: { ...flat(0.4), ...to(1e-3) },
    apart: "the flat pose lies at an angle of nothing",
  },
  {
    solver: planarLinkage,
    code: "singular",
    refused: { ...flat(-0.4), ...to(5.5337e-4) },
    answered: { ...flat(-0.4), ...to(-1e-3) },
    apart: "the flat pose lies at an angle of nothing",
  },
]

export const edges: Edges = {
  cautions: [
    {
      solver: planarLinkage,
      code: "falls-unpowered",
      severity: "warning",
      shown: { loads: [{ point: "B", forceY: -3 }], masses: [] },
      notShown: { loads: [], masses: [] },
    },
    {
      solver: planarLinkage,
      code: "falls-unpowered",
      severity: "warning",
      shown: { loads: [], gravity: 1e-3 },
      notShown: { loads: [], gravity: 0 },
    },
    {
      solver: planarLinkage,
      code: "near-singular",
      severity: "caution",
      shown: { ...rocker, cranks: [{ from: "O", to: "A", start: 1.655895, end: 1.2 }] },
      notShown: { ...rocker, cranks: [{ from: "O", to: "A", start: 1.6556, end: 1.2 }] },
    },
    {
      solver: planarLinkage,
      code: "near-singular",
      severity: "caution",
      shown: { ...rocker, ...to(1.655895) },
      notShown: { ...rocker, ...to(1.6556) },
    },
    {
      solver: planarLinkage,
      code: "near-singular",
      severity: "caution",
      shown: { ...flat(0.4), ...to(1e-3) },
      notShown: { ...flat(0.4), ...to(0.02) },
      apart: "a hundredth of so small an angle changes nothing",
    },
    { solver: sweptEnvelope, code: "clear-space", severity: "note", shown: still("130.1 deg"), notShown: still("130 deg") },
    { solver: sweptEnvelope, code: "fast-tip", severity: "warning", shown: arm(3.99), notShown: arm(4.01) },
  ],
  refusals: [
    ...mechanismRefusals,
    {
      solver: planarLinkage,
      code: "jammed",
      refused: { ...stuck, pinDiameter: 0.1001 },
      answered: { ...stuck, pinDiameter: 0.0999 },
    },
    ...mechanismRefusals.map((row) => ({ ...row, solver: sweptEnvelope, refused: swept(row.refused), answered: swept(row.answered) })),
    {
      solver: sweptEnvelope,
      code: "unresolved",
      refused: sharp(0.1 - 1e-10),
      answered: sharp(0.0999),
      noNearest: "how sharp the corner is hangs on all four lengths",
    },
  ],
  faults: [
    {
      solver: planarLinkage,
      path: "masses.0.to",
      faulty: { masses: [{ from: "A", to: "Z", mass: 0.1 }] },
      sound: { masses: [{ from: "A", to: "B", mass: 0.1 }] },
    },
    {
      solver: planarLinkage,
      path: "masses.0.from",
      faulty: { masses: [{ from: "O", to: "B", mass: 0.1 }] },
      sound: { masses: [{ from: "A", to: "B", mass: 0.1 }] },
    },
    { solver: planarLinkage, path: "trace", faulty: { trace: "C" }, sound: { trace: "B" } },
    { solver: sweptEnvelope, path: "tip", faulty: { tip: "C" }, sound: { tip: "B" } },
    { solver: planarLinkage, path: "bars.0.to", faulty: { bars: [{ from: "O", to: "Q" }] }, sound: { bars: [{ from: "O", to: "A" }] } },
    { solver: planarLinkage, path: "bars.0.to", faulty: { bars: [{ from: "O", to: "Z" }] }, sound: { bars: [{ from: "O", to: "A" }] } },
    {
      solver: planarLinkage,
      path: "bars.0.to",
      faulty: { ...single, points: [{ name: "A", x: 0, y: 0 }, rocker.points[1]] },
      sound: { ...single, points: [{ name: "A", x: 0, y: 1e-3 }, rocker.points[1]] },
    },
    {
      solver: planarLinkage,
      path: "points.1.name",
      faulty: { points: [rocker.points[0], { ...rocker.points[1], name: "A" }] },
      sound: { points: [rocker.points[0], { ...rocker.points[1], name: "B" }] },
    },
    {
      solver: planarLinkage,
      path: "pivots.1.name",
      faulty: { pivots: [rocker.pivots[0], { ...rocker.pivots[1], name: "O" }] },
      sound: { pivots: [rocker.pivots[0], { ...rocker.pivots[1], name: "Q" }] },
    },
    {
      solver: planarLinkage,
      path: "carried.0.from",
      faulty: { carried: [{ point: "B", from: "O", to: "B" }] },
      sound: { carried: [{ point: "B", from: "O", to: "A" }] },
    },
    {
      solver: planarLinkage,
      path: "carried.0.point",
      faulty: { carried: [{ point: "A", from: "O", to: "A" }] },
      sound: { carried: [{ point: "B", from: "O", to: "A" }] },
    },
    {
      solver: planarLinkage,
      path: "carried.0.point",
      faulty: { carried: [{ point: "Q", from: "O", to: "A" }] },
      sound: { carried: [{ point: "B", from: "O", to: "A" }] },
    },
    {
      solver: planarLinkage,
      path: "sliders.0.point",
      faulty: { sliders: [{ point: "O", from: "O", to: "Q" }] },
      sound: { sliders: [{ point: "B", from: "O", to: "Q" }] },
    },
    {
      solver: planarLinkage,
      path: "sliders.0.from",
      faulty: { sliders: [{ point: "A", from: "O", to: "B" }] },
      sound: { sliders: [{ point: "A", from: "Q", to: "B" }] },
    },
    {
      solver: planarLinkage,
      path: "torques.0.from",
      faulty: { torques: [{ from: "O", to: "B", torque: 1 }] },
      sound: { torques: [{ from: "Q", to: "B", torque: 1 }] },
    },
    {
      solver: planarLinkage,
      path: "cranks.0.from",
      faulty: { cranks: [{ from: "O", to: "B" }] },
      sound: { cranks: [{ from: "O", to: "A" }] },
    },
    {
      solver: planarLinkage,
      path: "cranks.0.referenceTo",
      faulty: { cranks: [{ from: "O", to: "A", referenceFrom: "O" }] },
      sound: { cranks: [{ from: "O", to: "A", referenceFrom: "O", referenceTo: "Q" }] },
    },
    {
      solver: planarLinkage,
      path: "cranks.0.referenceTo",
      faulty: { cranks: [{ from: "O", to: "A", referenceFrom: "O", referenceTo: "O" }] },
      sound: { cranks: [{ from: "O", to: "A", referenceFrom: "O", referenceTo: "Q" }] },
    },
    {
      solver: planarLinkage,
      path: "cranks.0.referenceFrom",
      faulty: { cranks: [{ from: "O", to: "A", referenceFrom: "O", referenceTo: "B" }] },
      sound: { cranks: [{ from: "O", to: "A", referenceFrom: "O", referenceTo: "Q" }] },
    },
    { solver: planarLinkage, path: "loads.0.point", faulty: { loads: [{ point: "Z" }] }, sound: { loads: [{ point: "B" }] } },
    {
      solver: planarLinkage,
      path: "actuators.0.from",
      faulty: { actuators: [{ from: "Z", to: "B" }] },
      sound: { actuators: [{ from: "O", to: "B" }] },
    },
  ],
  numbers: Object.fromEntries([
    ["planarLinkage.jammed.shortBy", (si: Si) => radius(si) - leverArm(si)],
    ["planarLinkage.jammed.at.frictionRadius", radius],
    // the ram stands: its one pose is the end of the motion
    ["planarLinkage.jammed.at.share", () => 1],
    ["planarLinkage.masses.names", names],
    ...["planarLinkage", "sweptEnvelope"].flatMap((solver) => [
      [`${solver}.dead-point.shortBy`, lacking],
      [`${solver}.singular.shortBy`, lacking],
      [`${solver}.cannot-close.shortBy`, misfit],
      [`${solver}.cannot-close.places`, () => 48],
      [`${solver}.unresolved.at.poses`, poses],
      [`${solver}.unresolved.shortBy`, unsmooth],
      [`${solver}.under-constrained.shortBy`, (si: Si) => 2 * si.points.length - si.bars.length - si.cranks.length],
      [`${solver}.under-constrained.at.unknowns`, (si: Si) => 2 * si.points.length],
      [`${solver}.under-constrained.at.constraints`, (si: Si) => si.bars.length + si.cranks.length],
      [`${solver}.under-constrained.at.independent`, (si: Si) => si.bars.length + si.cranks.length],
      [`${solver}.under-constrained.idle`, () => 0],
      [`${solver}.over-constrained.shortBy`, (si: Si) => si.bars.length + si.cranks.length - 2 * si.points.length],
      [`${solver}.over-constrained.at.unknowns`, (si: Si) => 2 * si.points.length],
      [`${solver}.over-constrained.at.constraints`, (si: Si) => si.bars.length + si.cranks.length],
      [`${solver}.over-constrained.at.independent`, (si: Si) => 2 * si.points.length],
      [`${solver}.trace.points`, names],
      [`${solver}.tip.points`, names],
    ]),
  ]),
}
