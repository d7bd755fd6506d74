import fc from "fast-check"
import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { type BeamRest, continuousBeam } from "../../src/frame/index.js"
import { assemble, elementStiffness, solveScaled, without } from "./elements.js"

type Input = Parameters<typeof continuousBeam>[0]
/** 104.4 N·m², as a bare section of a bare modulus. */
const bare = { section: { secondMoment: 3.6e-8 }, modulus: 2.9e9, countsOwnWeight: false } as const
const stiffness = 104.4
const length = 2.4
const steps = 24

/** Deflections, slopes, reactions and moments by cubic elements of 100 mm, a spring as a number on the diagonal. */
function elements(si: {
  supports: readonly BeamRest[]
  forces: readonly { force: number; position: number }[]
  distributedLoads: readonly { startLoad: number; endLoad: number; start: number; end: number }[]
  moments: readonly { moment: number; position: number }[]
}) {
  const nodes = Array.from({ length: steps + 1 }, (_, i) => (length * i) / steps)
  const h = length / steps
  const nodeAt = (x: number) => Math.round(x / h)
  const whole = assemble(nodes, elementStiffness).map((row) => row.map((x) => x * stiffness))
  const load = new Array<number>(2 * nodes.length).fill(0)
  const fixed = new Array<number>(2 * nodes.length).fill(0)
  const push = (list: number[], i: number, v: number) => {
    list[i] = list[i]! + v
  }
  for (const s of si.distributedLoads)
    for (let n = nodeAt(s.start); n < nodeAt(s.end); n++) {
      const at = (x: number) => s.startLoad + ((s.endLoad - s.startLoad) * (x - s.start)) / (s.end - s.start)
      const [a, b] = [at(nodes[n]!), at(nodes[n + 1]!)]
      push(fixed, 2 * n, (h * (7 * a + 3 * b)) / 20)
      push(fixed, 2 * n + 1, (h * h * (3 * a + 2 * b)) / 60)
      push(fixed, 2 * n + 2, (h * (3 * a + 7 * b)) / 20)
      push(fixed, 2 * n + 3, (-h * h * (2 * a + 3 * b)) / 60)
    }
  fixed.forEach((v, i) => {
    push(load, i, v)
  })
  for (const p of si.forces) push(load, 2 * nodeAt(p.position), p.force)
  for (const c of si.moments) push(load, 2 * nodeAt(c.position) + 1, c.moment)
  const held: number[] = []
  const sprung = whole.map((row) => [...row])
  for (const s of si.supports) {
    const n = 2 * nodeAt(s.position as number)
    const spring = s.type === "spring" ? s : null
    if (spring?.stiffness) push(sprung[n]!, n, spring.stiffness as number)
    else held.push(n)
    if (spring?.turningStiffness) push(sprung[n + 1]!, n + 1, spring.turningStiffness as number)
    if (s.type === "clamped") held.push(n + 1)
  }
  const free = load.map((_, i) => i).filter((i) => !held.includes(i))
  const moved = new Array<number>(load.length).fill(0)
  solveScaled(
    without(sprung, held),
    free.map((i) => load[i]!),
  ).forEach((x, i) => {
    moved[free[i]!] = x
  })
  const reaction = (dof: number) => load[dof]! - whole[dof]!.reduce((sum, k, j) => sum + k * moved[j]!, 0)
  // forces at the end of each element: its stiffness times what its ends did, less what its load is worth at the ends
  const momentAfter = (n: number) => {
    const own = elementStiffness(h).map((row) => row.map((x) => x * stiffness))
    const here = [0, 1, 2, 3].map((i) => moved[2 * n + i]!)
    let worth = 0
    for (const s of si.distributedLoads)
      if (n >= nodeAt(s.start) && n < nodeAt(s.end)) {
        const at = (x: number) => s.startLoad + ((s.endLoad - s.startLoad) * (x - s.start)) / (s.end - s.start)
        worth += (h * h * (3 * at(nodes[n]!) + 2 * at(nodes[n + 1]!))) / 60
      }
    return own[1]!.reduce((sum, k, j) => sum + k * here[j]!, 0) - worth
  }
  return {
    nodes,
    deflection: nodes.map((_, n) => moved[2 * n]!),
    slope: nodes.map((_, n) => moved[2 * n + 1]!),
    moments: nodes.slice(0, -1).map((_, n) => momentAfter(n)),
    reactionAt: (x: number) => reaction(2 * nodeAt(x)),
    momentHeldAt: (x: number) => reaction(2 * nodeAt(x) + 1),
    nodeAt,
  }
}

const grid = fc.integer({ min: 0, max: steps }).map((k) => (length * k) / steps)
const number = (most: number) => fc.integer({ min: -1000, max: 1000 }).map((k) => (most * k) / 1000)
const rest = fc.constantFrom<Partial<BeamRest>>(
  { type: "pinned" },
  { type: "pinned" },
  { type: "clamped" },
  { type: "spring", stiffness: 3e3 },
  { type: "spring", stiffness: 500, turningStiffness: 80 },
  { type: "spring", turningStiffness: 400 },
)
const problems = fc.record({
  supports: fc
    .uniqueArray(fc.integer({ min: 0, max: steps }), { minLength: 2, maxLength: 6 })
    .chain((at) =>
      fc.tuple(...at.map((k) => rest.map((r) => ({ ...r, position: (length * k) / steps }) as BeamRest))).map((list) => list as BeamRest[]),
    ),
  forces: fc.array(fc.record({ force: number(100), position: grid }), { maxLength: 4 }),
  distributedLoads: fc.array(
    fc
      .tuple(number(80), number(80), fc.uniqueArray(fc.integer({ min: 0, max: steps }), { minLength: 2, maxLength: 2 }))
      .map(([startLoad, endLoad, ends]) => ({
        startLoad,
        endLoad,
        start: (length * Math.min(...ends)) / steps,
        end: (length * Math.max(...ends)) / steps,
      })),
    { maxLength: 3 },
  ),
  moments: fc.array(fc.record({ moment: number(20), position: grid }), { maxLength: 3 }),
})
const seeded = { seed: 57, numRuns: 90 }
const most = (list: readonly number[]) => Math.max(...list.map(Math.abs), 0)

describe("beams on several supports", () => {
  it("agree with finite elements at every end and support", () => {
    fc.assert(
      fc.property(problems, (loads) => {
        const out = continuousBeam({ length, ...bare, ...loads })
        const fe = elements(loads)
        const size = { y: most(fe.deflection), t: most(fe.slope), r: 1, m: 1 }
        for (const p of out.places) {
          const rest = loads.supports.find((s) => s.position === p.position)
          const n = fe.nodeAt(p.position)
          expect(Math.abs(p.deflection - fe.deflection[n]!)).toBeLessThanOrEqual(1e-6 * size.y + 1e-12)
          expect(Math.abs(p.slope - fe.slope[n]!)).toBeLessThanOrEqual(1e-6 * size.t + 1e-12)
          if (!rest) expect(p.reaction).toBeNull()
          else expect(Math.abs((p.reaction as number) - fe.reactionAt(p.position))).toBeLessThanOrEqual(1e-4)
          if (p.holdingMoment !== null) expect(Math.abs(p.holdingMoment + fe.momentHeldAt(p.position))).toBeLessThanOrEqual(1e-4)
          if (n < steps) expect([Math.abs(p.bendingMoment) + 1e-4 >= Math.abs(fe.moments[n]!)]).toEqual([true])
        }
      }),
      seeded,
    )
  })

  it("have no place with more moment or deflection than the largest shown", () => {
    fc.assert(
      fc.property(problems, (loads) => {
        const out = continuousBeam({ length, ...bare, ...loads })
        const fe = elements(loads)
        // elements of 100 mm meet every kink, so that moments between them differ by their own load at most
        const ownLoad = most(loads.distributedLoads.flatMap((s) => [s.startLoad, s.endLoad])) * loads.distributedLoads.length
        const within = (ownLoad * (length / steps) ** 2) / 8
        expect(Math.abs(out.maxMoment)).toBeGreaterThanOrEqual(most(fe.moments) - 1e-4)
        expect(Math.abs(out.maxDeflection.low)).toBeGreaterThanOrEqual(most(fe.deflection) * (1 - 1e-6))
        expect(Math.abs(out.maxDeflection.low)).toBeLessThanOrEqual(most(fe.deflection) * 1.05 + 1e-9)
        const alsoLeft = out.places.map((p) => p.bendingMoment)
        expect(Math.abs(out.maxMoment)).toBeLessThanOrEqual(
          Math.max(most(fe.moments), most(alsoLeft)) + within + most(loads.moments.map((c) => c.moment)) + 1e-4,
        )
      }),
      seeded,
    )
  })

  it("agree with the equation of three moments on rigid supports", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            span: fc.double({ min: 0.05, max: 3, noNaN: true }),
            load: fc.double({ min: 0, max: 80, noNaN: true }),
            force: number(50),
          }),
          {
            minLength: 2,
            maxLength: 9,
          },
        ),
        (spans) => {
          const places = [0]
          for (const { span } of spans) places.push(places.at(-1)! + span)
          const out = continuousBeam({
            length: places.at(-1)!,
            ...bare,
            supports: places.map((position) => ({ type: "pinned", position })),
            forces: spans.map((s, i) => ({ force: s.force, position: places[i]! + s.span / 3 })),
            distributedLoads: spans.map((s, i) => ({ startLoad: s.load, endLoad: s.load, start: places[i]!, end: places[i + 1]! })),
          })
          // B. P. E. Clapeyron, 1857: M1·l1 + 2·M2·(l1 + l2) + M3·l2 = −w·l³/4 − P·a·b·(l + a or b)/l
          const inner = spans.length - 1
          const matrix = Array.from({ length: inner }, () => new Array<number>(inner).fill(0))
          const right = matrix.map((row, i) => {
            const [left, next] = [spans[i]!, spans[i + 1]!]
            row[i] = 2 * (left.span + next.span)
            if (i > 0) row[i - 1] = left.span
            if (i + 1 < inner) row[i + 1] = next.span
            const part = (s: typeof left, far: number) => (s.load * s.span ** 3) / 4 + s.force * (2 / 9) * s.span * (s.span + far)
            return -part(left, left.span / 3) - part(next, (2 * next.span) / 3)
          })
          const moments = [0, ...(lusolve(matrix, right) as number[][]).map((r) => r[0]!), 0]
          const scale = most(moments)
          out.places.forEach((p, i) => {
            expect(Math.abs(p.bendingMoment - moments[i]!)).toBeLessThanOrEqual(1e-9 * scale + 1e-12)
          })
        },
      ),
      { seed: 58, numRuns: 60 },
    )
  })

  // three spans: Piping Designer, "Three Span Continuous Beam, Equal Spans, Uniformly Distributed Load" (seen); four: from memory
  it("sag most where tables of beam formulas say: 0.446 and 0.440 of the first of three and four spans", () => {
    for (const [spans, place] of [
      [3, 0.446],
      [4, 0.44],
    ] as const) {
      const supports = Array.from({ length: spans + 1 }, (_, position) => ({ type: "pinned", position }) as const)
      const out = continuousBeam({
        ...bare,
        length: spans,
        supports,
        distributedLoads: [{ startLoad: 10, endLoad: 10, start: 0, end: spans }],
      })
      expect(Math.abs(out.maxDeflectionPosition - place)).toBeLessThanOrEqual(0.0005)
    }
  })

  it("stand on an end where a support is a hair's breadth from it", () => {
    const at = (position: number) =>
      continuousBeam({
        ...bare,
        length: 1,
        supports: [
          { type: "pinned", position },
          { type: "pinned", position: 0.7 },
        ],
        forces: [{ force: 10, position: 1 }],
      })
    for (const hair of [9e-323, 1e-12, 9e-7]) expect(at(hair)).toEqual(at(0))
    expect(at(2e-6).places).toHaveLength(4)
  })

  it("are as a lever where springs are so soft that the beam counts as rigid", () => {
    const soft: Input = {
      length: 1,
      section: { secondMoment: 1e-4 },
      modulus: 2e11,
      countsOwnWeight: false,
      supports: [
        { type: "spring", position: 0, stiffness: 20 },
        { type: "spring", position: 0.5, stiffness: 10 },
        { type: "spring", position: 1, stiffness: 40 },
      ],
      forces: [{ force: 7, position: 0.8 }],
    }
    // y = c + t·x on springs: sums of k, k·x and k·x² against the load and its moment
    const k = [20, 10, 40]
    const x = [0, 0.5, 1]
    const sum = (p: number) => k.reduce((s, v, i) => s + v * x[i]! ** p, 0)
    const [c, t] = (
      lusolve(
        [
          [sum(0), sum(1)],
          [sum(1), sum(2)],
        ],
        [7, 7 * 0.8],
      ) as number[][]
    ).map((r) => r[0]!)
    continuousBeam(soft).places.forEach((p, i) => {
      expect(p.reaction).toBeCloseTo(k[i]! * (c! + t! * x[i]!), 7)
    })
  })

  it("lift nowhere by rounding: a load right above the middle one of three supports leaves the others nothing to carry", () => {
    const lifts = (span: number, more: number) =>
      continuousBeam({
        ...bare,
        length: 2,
        supports: [0, span, 2].map((position) => ({ type: "pinned" as const, position })),
        forces: [
          { force: 50, position: span },
          { force: more, position: span / 2 },
        ],
      }).cautions.some((c) => c.code === "lifts-off")
    for (let k = 1; k < 60; k++) {
      expect(lifts(k / 30, 0)).toBe(false)
      // a load in one span lifts the far end of the other
      expect(lifts(k / 30, 1e-3)).toBe(true)
    }
  })

  it("carry the same whatever the order of the supports", () => {
    const { supports } = continuousBeam.example
    const one = continuousBeam(continuousBeam.example)
    const other = continuousBeam({ ...continuousBeam.example, supports: [...supports].reverse() })
    expect(other.maxMoment).toBeCloseTo(one.maxMoment, 9)
    expect(other.places.map((p) => p.position)).toEqual(one.places.map((p) => p.position))
  })

  it("weigh what their density says, the material's where none is given", () => {
    const plain = { ...continuousBeam.example, handling: "still" } as const
    const area = Math.PI * 0.015 * 0.001
    expect(continuousBeam({ ...plain, density: 8000 }).weight).toBeCloseTo(8000 * 9.80665 * 1.8 * area, 9)
    expect(continuousBeam({ ...plain, density: 8000, countsOwnWeight: false }).weight).toBe(0)
    expect(continuousBeam(plain).weight).toBeCloseTo(2710 * 9.80665 * 1.8 * area, 1)
    const reactions = (input: Input) => continuousBeam(input).places.reduce((s, p) => s + (p.reaction ?? 0), 0)
    const more = reactions({ ...plain, density: 8000 }) - reactions({ ...plain, countsOwnWeight: false })
    expect(more).toBeCloseTo(8000 * 9.80665 * 1.8 * area, 9)
  })

  it("stand where one end of the material's range gives more: springs against a stiffer tube", () => {
    const input = (modulus: number): Input => ({
      length: 1.2,
      section: { outsideDiameter: 0.02, wall: 0.002 },
      modulus,
      strength: 30e6,
      countsOwnWeight: false,
      supports: [
        { type: "pinned", position: 0 },
        { type: "spring", position: 0.6, stiffness: 4e3 },
        { type: "pinned", position: 1.2 },
      ],
      forces: [{ force: 60, position: 0.6 }],
    })
    const range = continuousBeam({ ...input(1), modulus: null, strength: null, material: "glass-pultruded" })
    const soft = continuousBeam(input(range.modulus))
    expect(range.maxDeflection.high).toBeCloseTo(soft.maxDeflection.high, 12)
    // the stiffer the tube, the less the spring in the middle carries and the more it bends
    expect(Math.abs(range.maxMoment)).toBeGreaterThan(Math.abs(soft.maxMoment))
    expect(range.maxDeflection.low).toBeGreaterThan(0)
    expect(range.maxDeflection.low).toBeLessThan(range.maxDeflection.high)
  })
})
