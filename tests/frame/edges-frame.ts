import { cylinderBuckling, frameMaterials, linearLimit, planeFrame, sectionOf } from "../../src/frame/index.js"
import type { CautionRow, Change, Edges, FaultRow, RefusalRow } from "../helpers/edges.js"
import { edges as first } from "./edges.js"

// biome-ignore lint/suspicious/noExplicitAny: the solver's input in SI
type Any = any
const solver = planeFrame
const { example } = planeFrame
const tube = { section: { outsideDiameter: "20 mm", wall: "1.5 mm" }, material: "aluminium-6061" }
const clean = (input: object) => Object.fromEntries(Object.entries(input).filter(([, v]) => v !== undefined))
/** A mast of 1 m, clamped at its foot. */
const mast = (member: Change = {}, more: Change = {}): Change => ({
  nodes: [
    { name: "foot", x: 0, y: 0 },
    { name: "top", x: 0, y: 1 },
  ],
  members: [clean({ name: "mast", from: "foot", to: "top", ...tube, ...member })],
  supports: [{ type: "clamped", node: "foot" }],
  loads: [{ type: "node", node: "top", right: 10 }],
  countsOwnWeight: false,
  ...more,
})
const solved = (change: Change) => planeFrame({ ...example, ...(change as object) } as never)
const sideways = (right: number) => ({ loads: [{ type: "node", node: "top", right }] })
const pushed = (up: number) => ({ loads: [{ type: "node", node: "top", up: -up }] })
const factorAt = solved(mast({}, { ...pushed(100), handling: "still" })).stability?.bucklingFactor as number
/** A push under which the mast buckles at a multiple of it. */
const bucklesAt = (factor: number) => mast({}, { ...pushed((100 * factorAt) / factor), handling: "still" })
const marginAt = solved(mast({ strength: "100 MPa" })).safetyFactor as number
const safe = (factor: number) => mast({ strength: (factor / marginAt) * 100e6 })
const movesAt = solved(mast({}, { ...sideways(1), handling: "still" })).maxDisplacement
const moves = (share: number) => mast({ strength: "9 GPa" }, { ...sideways((share * linearLimit) / 3 / movesAt), handling: "still" })
const thin = sectionOf({
  ...{ pipe: null, width: null, height: null, secondMoment: null, fibre: null, area: null },
  ...{ outsideDiameter: 0.04, wall: 0.0002 },
})
const foldsAt = (margin: number) => {
  const { meanRadius, wall } = thin.tube as { meanRadius: number; wall: number }
  const stress = cylinderBuckling(meanRadius, wall, 68.9e9, 0.33).axial / margin
  return mast(
    { section: { outsideDiameter: "40 mm", wall: "0.2 mm" } },
    { ...sideways((stress * thin.secondMoment) / (thin.fibre as number)), handling: "still" },
  )
}
/** A beam over two supports with a force beyond the second: from there on the first has to pull. */
const overhang = (position: number): Change => ({
  nodes: [
    { name: "a", x: 0, y: 0 },
    { name: "b", x: 1, y: 0 },
    { name: "c", x: 1.5, y: 0 },
  ],
  members: [
    { name: "span", from: "a", to: "b", ...tube },
    { name: "arm", from: "b", to: "c", ...tube },
  ],
  supports: [
    { type: "pinned", node: "a" },
    { type: "roller", node: "b" },
  ],
  loads: [
    { type: "force", member: "span", force: 10, position: 0.5 },
    { type: "force", member: "arm", force: 20, position },
  ],
  countsOwnWeight: false,
})
const rows: readonly (readonly [string, CautionRow["severity"], Change, Change | null])[] = [
  ["welds-weaken", "note", mast(), mast({ material: "steel" })],
  [
    "warm-plastic",
    "caution",
    mast({ material: "abs" }, { materialTemperature: 23.1 }),
    mast({ material: "abs" }, { materialTemperature: 23 }),
  ],
  [
    "cold-brittle",
    "caution",
    mast({ material: "abs" }, { materialTemperature: -0.001 }),
    mast({ material: "abs" }, { materialTemperature: 0 }),
  ],
  ["creep", "caution", mast({ material: "abs" }, { duration: 0.001 }), mast({ material: "abs" }, { duration: 0 })],
  ["creep", "note", mast({ material: "abs" }, { duration: 0 }), mast({ material: "abs" }, { duration: 0.001 })],
  ["brittle", "caution", mast({ material: "acrylic" }), mast({ material: "abs" })],
  ["strength-above-published", "warning", mast({ strength: "277 MPa" }), mast({ strength: "276 MPa" })],
  ["modulus-above-published", "caution", mast({ modulus: "71.8 GPa" }), mast({ modulus: "71.7 GPa" })],
  [
    "no-material",
    "caution",
    mast({ material: undefined, modulus: "69 GPa", strength: "200 MPa" }),
    mast({ modulus: "69 GPa", strength: "200 MPa" }),
  ],
  ["collapse", "warning", safe(0.996), safe(1.004)],
  ["thin-margin", "warning", safe(2.99), safe(3.01)],
  ["thin-margin", "warning", safe(1.004), safe(0.996)],
  ["standing-still", "note", { handling: "still" }, {}],
  ["in-its-plane", "note", {}, null],
  ["buckles", "warning", bucklesAt(2.99), bucklesAt(3.01)],
  ["second-order", "caution", bucklesAt(3.01), bucklesAt(2.99)],
  ["second-order", "caution", bucklesAt(9.98), bucklesAt(10.02)],
  ["bends-far", "caution", moves(1.004), moves(0.996)],
  ["wall-buckling", "warning", foldsAt(2.99), foldsAt(3.01)],
  ["lifts-off", "caution", overhang(0.2502), overhang(0.2498)],
  [
    "rigid-clamp",
    "note",
    { supports: [{ type: "clamped", node: "hip" }, example.supports[1]] },
    { supports: [{ type: "pinned", node: "hip" }, example.supports[1]] },
  ],
  [
    "weight-unknown",
    "note",
    mast({ material: undefined, modulus: "69 GPa", strength: "200 MPa" }, { countsOwnWeight: true }),
    mast({ material: undefined, modulus: "69 GPa", strength: "200 MPa", density: 2700 }, { countsOwnWeight: true }),
  ],
  [
    "weight-unknown",
    "note",
    mast({ material: undefined, modulus: "69 GPa", strength: "200 MPa" }, { countsOwnWeight: true }),
    mast({ material: undefined, modulus: "69 GPa", strength: "200 MPa" }, { countsOwnWeight: false }),
  ],
  [
    "strength-unknown",
    "caution",
    mast({ material: undefined, modulus: "69 GPa" }),
    mast({ material: undefined, modulus: "69 GPa", strength: "200 MPa" }),
  ],
]

const refusals: readonly RefusalRow[] = [
  {
    solver,
    code: "unstable",
    refused: mast({}, { supports: [{ type: "pinned", node: "foot" }] }),
    answered: mast(),
    noNearest: "a support or a brace is missing, and where it can stand is the maker's to say",
  },
  {
    solver,
    code: "unstable",
    refused: mast({ startJoint: "pinned" }),
    answered: mast({ startJoint: "rigid" }),
    noNearest: "a support or a brace is missing, and where it can stand is the maker's to say",
  },
  {
    solver,
    code: "too-hot",
    refused: mast({ material: "abs" }, { materialTemperature: 77.1 }),
    answered: mast({ material: "abs" }, { materialTemperature: 77 }),
  },
]

const nodes = (change: (list: Any[]) => Any[]) => ({ nodes: change(example.nodes.map((n) => ({ ...n }))) })
const put = (list: readonly Any[], i: number, change: Change) => list.map((one, k) => (k === i ? clean({ ...one, ...change }) : one))
const member = (i: number, change: Change): Change => ({ members: put(example.members, i, change) })
const support = (i: number, change: Change): Change => ({ supports: put(example.supports, i, change) })
const load = (i: number, change: Change): Change => ({ loads: put(example.loads ?? [], i, change) })
const figures = { secondMoment: "4e4 mm4", area: "87 mm2", fibre: "10 mm" }
const pinnedTip = { members: example.members.map((m) => (m.name === "cross-bar" ? { ...m, endJoint: "pinned" } : m)) }
/** A mast beside another of the same material, whose section makes it so many times as stiff. */
const unlike = (ratio: number): Change => {
  // E·I of the first against E·A of the last decides: L³/(3·E·I) over L/(E·A)
  const second = 1e-6 / (3 * ratio)
  const bar = (secondMoment: number) => ({
    section: { secondMoment, area: "1 mm2", fibre: "10 mm" },
    modulus: "1 GPa",
    strength: "20 MPa",
    density: 1000,
  })
  return { ...mast(), members: [{ name: "mast", from: "foot", to: "top", ...bar(second) }] }
}
const four = ["abs", "hips", "acrylic", "plywood"]
const ranged = (count: number): Change => ({
  members: example.members.map((m, i) => ({ ...m, material: four[i] as "abs", ...(i >= count ? { modulus: "2 GPa" } : {}) })),
})

const faults: readonly FaultRow[] = [
  { solver, path: "nodes.1.name", faulty: nodes((l) => put(l, 1, { name: "hip" })), sound: {} },
  {
    solver,
    path: "nodes.4.name",
    faulty: nodes((l) => [...l, { name: "nowhere", x: 1, y: 1 }]),
    sound: {},
  },
  { solver, path: "members.3.name", faulty: member(1, { name: "stay" }), sound: {} },
  { solver, path: "members.3.from", faulty: member(3, { from: "knee" }), sound: {} },
  { solver, path: "members.3.to", faulty: member(3, { to: "knee" }), sound: {} },
  { solver, path: "members.3.to", faulty: member(3, { to: "shoulder" }), sound: {} },
  {
    solver,
    path: "members.1.to",
    faulty: { loads: [], ...nodes((l) => put(l, 2, { y: 0.45099 })) },
    sound: { loads: [], ...nodes((l) => put(l, 2, { y: 0.45101 })) },
  },
  { solver, path: "supports.0.node", faulty: support(0, { node: "knee" }), sound: {} },
  { solver, path: "supports.1.node", faulty: support(1, { node: "hip" }), sound: support(1, { node: "head" }) },
  {
    solver,
    path: "supports.1.sidewaysStiffness",
    faulty: support(1, { sidewaysStiffness: undefined, turningStiffness: undefined }),
    sound: support(1, { turningStiffness: undefined }),
  },
  { solver, path: "loads.0.node", faulty: load(0, { node: "knee" }), sound: {} },
  { solver, path: "loads.1.member", faulty: load(1, { member: "tail" }), sound: {} },
  { solver, path: "loads.0.moment", faulty: pinnedTip, sound: {} },
  { solver, path: "loads.1.end", faulty: load(1, { end: 0.601 }), sound: load(1, { end: 0.6 }) },
  { solver, path: "loads.1.end", faulty: load(1, { start: 0.4, end: 0.4 }), sound: load(1, { start: 0.4, end: 0.401 }) },
  { solver, path: "loads.2.position", faulty: load(2, { position: 0.301 }), sound: load(2, { position: 0.3 }) },
  { solver, path: "loads.3.position", faulty: load(3, { position: 0.451 }), sound: load(3, { position: 0.45 }) },
  {
    solver,
    path: "members.1.section.wall",
    faulty: member(1, { section: { outsideDiameter: 0.02, wall: 0.01 } }),
    sound: member(1, { section: { outsideDiameter: 0.02, wall: 0.00995 } }),
  },
  ...["area", "fibre"].map((left) => ({
    solver,
    path: "members.1.section.area",
    faulty: member(1, { section: { ...figures, [left]: undefined } }),
    sound: member(1, { section: figures }),
  })),
  {
    solver,
    path: "members.1.material",
    faulty: member(1, { material: undefined }),
    sound: member(1, { material: undefined, modulus: "69 GPa" }),
  },
  { solver, path: "members", faulty: ranged(4), sound: ranged(3) },
  { solver, path: "members", faulty: unlike(1.004e10), sound: unlike(0.996e10) },
]

const longest = (_: Any, out: Any) => Math.max(...out.members.map((m: Any) => m.length))
const limits = (si: Any) => Math.min(...si.members.map((m: Any) => (m.material ? frameMaterials[m.material as "abs"].limit : 1e9)))
/** What is told of a material, with the paths of the first member made of it. */
const ofMaterials = Object.fromEntries(
  ["warm-plastic.deflectsAt", "creep.left", "strength-above-published.published", "modulus-above-published.published"].flatMap((name) =>
    [0, 1, 2, 3].map((i) => [
      `planeFrame.${name.split(".")[0]}.members.${i}.${name.split(".")[1]}`,
      (si: Any) => (first.numbers[`beam.${name}`] as (si: Any, out: Any) => number)({ ...si, ...si.members[i] }, null),
    ]),
  ),
)

/** Ways to move that cost no energy: what is left of the rank of a stiffness of unit springs, along and against turning at rigid ends. */
function motions(si: Any): number {
  const index = (name: string) => si.nodes.findIndex((n: Any) => n.name === name)
  const size = 3 * si.nodes.length
  const K = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  const spring = (g: readonly (readonly [number, number])[]) => {
    for (const [i, a] of g) for (const [j, b] of g) (K[i] as number[])[j] = ((K[i] as number[])[j] as number) + a * b
  }
  const turned = new Set<number>()
  for (const m of si.members) {
    const [a, b] = [index(m.from), index(m.to)]
    const [dx, dy] = [si.nodes[b].x - si.nodes[a].x, si.nodes[b].y - si.nodes[a].y]
    const L = Math.hypot(dx, dy)
    const [c, s] = [dx / L, dy / L]
    spring([
      [3 * a, -c],
      [3 * a + 1, -s],
      [3 * b, c],
      [3 * b + 1, s],
    ])
    for (const [n, joint] of [
      [a, m.startJoint],
      [b, m.endJoint],
    ])
      if (joint === "rigid") {
        turned.add(n)
        spring([
          [3 * n + 2, 1],
          [3 * a, -s / L],
          [3 * a + 1, c / L],
          [3 * b, s / L],
          [3 * b + 1, -c / L],
        ])
      }
  }
  for (const s of si.supports) {
    const n = index(s.node)
    const ways =
      s.type === "roller"
        ? [s.holds === "sideways" ? 0 : 1]
        : s.type === "spring"
          ? [s.sidewaysStiffness, s.upStiffness, s.turningStiffness].flatMap((k, way) => (k === null ? [] : [way]))
          : s.type === "clamped"
            ? [0, 1, 2]
            : [0, 1]
    for (const way of ways) spring([[3 * n + way, 1]])
    if (ways.includes(2)) turned.add(n)
  }
  si.nodes.forEach((_: Any, n: number) => {
    if (!turned.has(n)) spring([[3 * n + 2, 1]])
  })
  let rank = 0
  const left = new Set(K.map((_, i) => i))
  for (;;) {
    const p = [...left].reduce((a, b) => (((K[b] as number[])[b] as number) > ((K[a] as number[])[a] as number) ? b : a))
    const top = K[p] as number[]
    if (!((top[p] as number) > 1e-9)) break
    left.delete(p)
    rank++
    for (const i of left) {
      const row = K[i] as number[]
      const ratio = (row[p] as number) / (top[p] as number)
      for (const j of left) row[j] = (row[j] as number) - ratio * (top[j] as number)
    }
    if (left.size === 0) break
  }
  return size - rank
}

export const edges: Edges = {
  cautions: rows.map(([code, severity, shown, notShown]) => ({ solver, code, severity, shown, notShown })),
  refusals,
  faults,
  numbers: {
    ...ofMaterials,
    "planeFrame.standing-still.walking": first.numbers["beam.standing-still.walking"] as () => number,
    "planeFrame.standing-still.stumble": first.numbers["beam.standing-still.stumble"] as () => number,
    "planeFrame.bends-far.longest": longest,
    "planeFrame.lifts-off.pull": (_, out) => Math.max(...out.supports.map((s: Any) => -(s.up ?? 0))),
    "planeFrame.wall-buckling.margin": (_, out) => Math.min(...out.members.map((m: Any) => m.wallSafetyFactor ?? Number.POSITIVE_INFINITY)),
    "planeFrame.too-hot.shortBy": (si) => si.materialTemperature - limits(si),
    "planeFrame.too-hot.at.limit": limits,
    "planeFrame.unstable.shortBy": motions,
    "planeFrame.unstable.at.motions": motions,
    "planeFrame.members.1.to.length": (si) => Math.abs(si.nodes[2].y - si.nodes[1].y),
    "planeFrame.members.1.to.shortest": () => 1e-3,
    "planeFrame.loads.1.end.place": (si) => si.loads[1].end,
    "planeFrame.loads.1.end.end": (si) => si.loads[1].end,
    "planeFrame.loads.1.end.start": (si) => si.loads[1].start,
    "planeFrame.loads.1.end.length": () => 0.6,
    "planeFrame.loads.2.position.place": (si) => si.loads[2].position,
    "planeFrame.loads.2.position.length": (si) => si.nodes[2].y - si.nodes[1].y,
    "planeFrame.loads.3.position.place": (si) => si.loads[3].position,
    "planeFrame.loads.3.position.length": (si) => si.nodes[1].y - si.nodes[0].y,
    "planeFrame.loads.0.moment.moment": (si) => si.loads[0].moment,
    "planeFrame.members.1.section.wall.wall": (si) => si.members[1].section.wall,
    "planeFrame.members.1.section.wall.narrow": (si) => si.members[1].section.outsideDiameter,
    "planeFrame.members.ranged": (si) => new Set(si.members.filter((m: Any) => m.modulus === null).map((m: Any) => m.material)).size,
    "planeFrame.members.most": (si) => (si.members.length > 1 ? 3 : 1e10),
    "planeFrame.members.ratio": (si) => 1e-6 / 3 / si.members[0].section.secondMoment,
  },
}
