import { beam, column, cylinderBuckling, frameMaterials, memberSize, sectionOf } from "../../src/frame/index.js"
import { type CautionRow, type Change, changed, type Edges } from "../helpers/edges.js"
import { edges as first } from "./edges.js"
import { edges as material } from "./edges-material.js"

// biome-ignore lint/suspicious/noExplicitAny: solvers and inputs of several kinds, by what they share
type Any = any
const { example } = memberSize
const given = (input: Any) => Object.fromEntries(Object.entries(input).filter(([, v]) => v !== undefined))
const shared = ({ materialTemperature, duration, handling, countsOwnWeight }: Any) => ({
  materialTemperature,
  duration,
  handling: handling ?? "still",
  countsOwnWeight,
})
/** A beam or column as the only size on the rack, whatever margin it has. */
const onRack = (solver: Any, change: Change, more: Change = {}): Change => {
  const input = { ...changed(solver, change) } as Any
  const { section, material, modulus, strength, density } = input
  const bare = material === undefined ? { strength: strength ?? "240 MPa", density: density ?? "2700 kg/m3" } : { strength, density }
  const { length, support, span, forces, distributedLoads, moments, ends, endConstant, load } = input
  const member = solver === beam ? { length, support, span, forces, distributedLoads, moments } : { length, ends, endConstant, load }
  return {
    minSafetyFactor: 0.1,
    deflectionLimit: undefined,
    ...shared(input),
    member: { type: solver === beam ? "beam" : "column", ...given(member) },
    search: { type: "stock", sizes: [given({ name: "the size", section, material, modulus, ...bare })] },
    ...more,
  }
}
/** Figures that a size without a material must have, on both sides of the step. */
const complete = { strength: "240 MPa", density: "2700 kg/m3" }
const unknown = ["stress-unknown", "weight-unknown", "euler-only"]
/** Every caution of a beam or column goes with the size chosen. */
const asMember = (solver: Any): CautionRow[] =>
  [...first.cautions, ...material.cautions]
    .filter((row) => row.solver === solver && !unknown.includes(row.code))
    .map((row) =>
      row.code === "no-material" ? { ...row, shown: { ...row.shown, ...complete }, notShown: { ...row.notShown, ...complete } } : row,
    )
    .map((row) => ({
      ...row,
      solver: memberSize,
      shown: onRack(solver, row.shown),
      ...(row.notShown === null
        ? { notShown: {}, apart: "what goes with every column does not go with a beam" }
        : { notShown: onRack(solver, row.notShown) }),
    }))

/** The member as beam or column take it, with the size of that name. */
function flat(si: Any, name: string): Any {
  const size = si.search.type === "stock" ? si.search.sizes.find((s: Any) => s.name === name) : si.search
  return { ...si, ...si.member, ...size }
}
const names = [...first.cautions, ...material.cautions].flatMap((row) =>
  row.solver === beam ? [`beam.${row.code}.`] : row.solver === column ? [`column.${row.code}.`] : [],
)
const sameNumbers = Object.fromEntries(
  Object.entries({ ...first.numbers, ...material.numbers })
    .filter(([key]) => names.some((name) => key.startsWith(name)))
    .map(([key, of]) => [key.replace(/^\w+/, "memberSize"), (si: Any, out: Any) => of(flat(si, out.name), out.beam ?? out.column)]),
)

/** Every size looked at and how far it falls short, by the public solvers one by one. */
function shortfalls(si: Any) {
  const none = { pipe: null, outsideDiameter: null, width: null, height: null, wall: null, secondMoment: null, fibre: null, area: null }
  const { search } = si
  const sizes: Any[] = []
  if (search.type === "stock") sizes.push(...search.sizes)
  else
    for (let d = Math.max(1e-4, 2.01 * (search.wall ?? 0)); ; d = Math.min(d * 1.05, 2)) {
      const shape = search.type === "round" ? { outsideDiameter: d } : { width: search.width, height: d }
      sizes.push({ ...search, name: "", section: { ...none, wall: search.wall, ...shape } })
      if (d === 2) break
    }
  return sizes.map((size) => {
    const { material, modulus, strength, density, section } = size
    const { materialTemperature, duration, handling, countsOwnWeight } = si
    const { type, ...member } = si.member
    const made = { section, material, modulus, strength, materialTemperature, duration, handling }
    const told = type === "beam" ? beam.attempt({ ...member, ...made, density, countsOwnWeight }) : column.attempt({ ...member, ...made })
    const depth = 2 * (sectionOf(section).fibre as number)
    if (!told.ok) return { depth, by: Number.POSITIVE_INFINITY, limit: frameMaterials[material as "abs"].limit, lacks: 0 }
    const out = told.value as Any
    const { tube } = sectionOf(section)
    const poisson = material === null ? null : frameMaterials[material as "abs"].poisson
    const wall =
      type === "beam" && tube && poisson !== null && out.bendingStress > 1
        ? cylinderBuckling(tube.meanRadius, tube.wall, out.modulus, poisson).bending / out.bendingStress
        : Number.POSITIVE_INFINITY
    const safetyFactor = Math.min(wall, out.safetyFactor?.low ?? Number.POSITIVE_INFINITY)
    const sag = si.deflectionLimit === null ? 0 : Math.max(...[out.maxDeflection?.low ?? 0, out.maxDeflection?.high ?? 0].map(Math.abs))
    const [weak, soft] = [si.minSafetyFactor / safetyFactor, sag / (si.deflectionLimit ?? 1)]
    return {
      depth,
      by: Math.max(weak, soft),
      lacks: weak >= soft ? si.minSafetyFactor - safetyFactor : sag - si.deflectionLimit,
      safetyFactor,
      sag,
      limit: 0,
    }
  })
}
const nearest = (si: Any): Any => shortfalls(si).reduce((a, b) => (b.by < a.by ? b : a))
const hottest = (si: Any) => Math.max(...shortfalls(si).map((s) => s.limit))

const one = onRack(beam, { handling: "walking" })
const alone = (change: Change): Change => ({ ...one, ...change })
const bent = beam({ ...beam.example, handling: "walking" })
const pushed = (change: Change) => onRack(column, {}, { handling: "walking", ...change })
const thin = { outsideDiameter: "40 mm", wall: "0.2 mm" } as const
const foldedBy = (margin: number, more: Change = {}) => {
  const { secondMoment, fibre, tube } = sectionOf({
    ...{ pipe: null, width: null, height: null, secondMoment: null, fibre: null, area: null },
    ...{ outsideDiameter: 0.04, wall: 0.0002 },
  })
  const { meanRadius, wall } = tube as { meanRadius: number; wall: number }
  const stress = cylinderBuckling(meanRadius, wall, 68.9e9, 0.33).bending / margin
  return onRack(beam, {
    forces: [{ force: (stress * secondMoment) / (fibre as number) / 0.9, position: 0.9 }],
    distributedLoads: [],
    moments: [],
    countsOwnWeight: false,
    handling: "still",
    section: thin,
    ...more,
  })
}
const force = (position: number) => ({ member: { ...example.member, forces: [{ force: 6, position }] } })
const moment = (position: number) => ({ member: { ...example.member, moments: [{ moment: 1, position }] } })
const spread = (start: number, end: number) => ({
  member: { ...example.member, distributedLoads: [{ startLoad: 1, endLoad: 1, start, end }] },
})
const member = (change: Change) => ({ member: { ...example.member, ...change } })
const rack = (size: Change) => ({ search: { type: "stock", sizes: [{ name: "the size", ...size }] } })
const tube = { outsideDiameter: 0.02, wall: 0.002 }
const figures = { modulus: 7e10, strength: 2e8, density: 2700 }
const box = (wall: number) => ({ search: { type: "rectangular", width: 0.02, wall, ...figures } })

export const edges: Edges = {
  cautions: [
    ...asMember(beam),
    ...asMember(column),
    { solver: memberSize, code: "wall-buckling", severity: "warning", shown: foldedBy(2.99), notShown: foldedBy(3.01) },
  ],
  refusals: [
    {
      solver: memberSize,
      code: "no-candidate",
      refused: alone({ minSafetyFactor: (bent.safetyFactor?.low as number) * 1.004 }),
      answered: alone({ minSafetyFactor: (bent.safetyFactor?.low as number) * 0.996 }),
    },
    {
      solver: memberSize,
      code: "no-candidate",
      refused: alone({ deflectionLimit: bent.maxDeflection.high * 0.996 }),
      answered: alone({ deflectionLimit: bent.maxDeflection.high * 1.004 }),
    },
    {
      solver: memberSize,
      code: "no-candidate",
      refused: { ...foldedBy(2, { strength: "1 GPa" }), minSafetyFactor: 2.005 },
      answered: { ...foldedBy(2, { strength: "1 GPa" }), minSafetyFactor: 1.995 },
    },
    {
      solver: memberSize,
      code: "no-candidate",
      refused: pushed({ minSafetyFactor: (column(column.example).safetyFactor?.low as number) * 1.004 }),
      answered: pushed({ minSafetyFactor: (column(column.example).safetyFactor?.low as number) * 0.996 }),
    },
    {
      solver: memberSize,
      code: "no-candidate",
      refused: alone({ materialTemperature: 100.1 }),
      answered: alone({ materialTemperature: 100 }),
    },
  ],
  faults: [
    { solver: memberSize, path: "member.span", faulty: member({ span: 0.5 }), sound: {} },
    {
      solver: memberSize,
      path: "member.span",
      faulty: member({ support: "simple", span: 0.901 }),
      sound: member({ support: "simple", span: 0.9 }),
    },
    { solver: memberSize, path: "member.forces.0.position", faulty: force(0.901), sound: force(0.9) },
    { solver: memberSize, path: "member.moments.0.position", faulty: moment(0.901), sound: moment(0.9) },
    { solver: memberSize, path: "member.distributedLoads.0.end", faulty: spread(0.1, 0.901), sound: spread(0.1, 0.9) },
    { solver: memberSize, path: "member.distributedLoads.0.end", faulty: spread(0.5, 0.5), sound: spread(0.5, 0.501) },
    {
      solver: memberSize,
      path: "deflectionLimit",
      faulty: pushed({ deflectionLimit: "50 mm" }),
      sound: pushed({}),
    },
    { solver: memberSize, path: "search.wall", faulty: box(0.01), sound: box(0.00995) },
    {
      solver: memberSize,
      path: "search.sizes.0.section.wall",
      faulty: rack({ section: { outsideDiameter: 0.02, wall: 0.01 }, ...figures }),
      sound: rack({ section: { outsideDiameter: 0.02, wall: 0.00995 }, ...figures }),
    },
    ...["area", "fibre"].map((left) => ({
      solver: memberSize,
      path: "search.sizes.0.section.area",
      faulty: rack({ section: { secondMoment: "4e4 mm4", area: "87 mm2", fibre: "10 mm", [left]: undefined }, ...figures }),
      sound: rack({ section: { secondMoment: "4e4 mm4", area: "87 mm2", fibre: "10 mm" }, ...figures }),
    })),
    ...(["modulus", "strength", "density"] as const).flatMap((left) => [
      {
        solver: memberSize,
        path: "search.sizes.0.material",
        faulty: rack({ section: tube, ...figures, [left]: undefined }),
        sound: rack({ section: tube, ...figures }),
      },
      {
        solver: memberSize,
        path: "search.material",
        faulty: { search: given({ type: "round", ...figures, [left]: undefined }) },
        sound: { search: { type: "round", ...figures } },
      },
    ]),
  ],
  numbers: {
    ...sameNumbers,
    "memberSize.wall-buckling.margin": (_, out) => out.candidates.find((c: Any) => c.verdict === "chosen").wallSafetyFactor,
    "memberSize.no-candidate.shortBy": (si) =>
      nearest(si).by === Number.POSITIVE_INFINITY ? si.materialTemperature - hottest(si) : nearest(si).lacks,
    "memberSize.no-candidate.at.depth": (si) => nearest(si).depth,
    "memberSize.no-candidate.at.limit": hottest,
    "memberSize.no-candidate.at.safetyFactor": (si) => nearest(si).safetyFactor,
    "memberSize.no-candidate.at.maxDeflection": (si) => nearest(si).sag,
    "memberSize.member.span.place": (si) => si.member.span,
    "memberSize.member.span.length": (si) => si.member.length,
    "memberSize.member.forces.0.position.place": (si) => si.member.forces[0].position,
    "memberSize.member.forces.0.position.length": (si) => si.member.length,
    "memberSize.member.moments.0.position.place": (si) => si.member.moments[0].position,
    "memberSize.member.moments.0.position.length": (si) => si.member.length,
    "memberSize.member.distributedLoads.0.end.place": (si) => si.member.distributedLoads[0].end,
    "memberSize.member.distributedLoads.0.end.length": (si) => si.member.length,
    "memberSize.member.distributedLoads.0.end.end": (si) => si.member.distributedLoads[0].end,
    "memberSize.member.distributedLoads.0.end.start": (si) => si.member.distributedLoads[0].start,
    "memberSize.search.wall.wall": (si) => si.search.wall,
    "memberSize.search.wall.width": (si) => si.search.width,
    "memberSize.search.sizes.0.section.wall.wall": (si) => si.search.sizes[0].section.wall,
    "memberSize.search.sizes.0.section.wall.narrow": (si) => si.search.sizes[0].section.outsideDiameter,
  },
}
