import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type BeamProblem, type BeamState, beam, beamCurve, frameMaterials } from "../../src/frame/index.js"
import { assemble, elementStiffness, solveScaled, without } from "./elements.js"

/**
 * The same beam by finite elements: cubic beam elements between every load, support and stretch end, with work-equivalent
 * nodal loads. Exact at the nodes, and made of other arithmetic than the solver.
 */
function elements(problem: BeamProblem, extra = 2) {
  const { length, span, stiffness, forces, distributedLoads, couples } = problem
  const ends = [0, length, span ?? 0, ...forces.map((p) => p.position), ...couples.map((c) => c.position)]
  for (const s of distributedLoads) ends.push(s.start, s.end)
  const kinks = [...new Set(ends)].sort((a, b) => a - b)
  const nodes = [0]
  kinks.slice(1).forEach((to, i) => {
    const from = kinks[i] as number
    for (let k = 1; k <= extra; k++) nodes.push(k === extra ? to : from + ((to - from) * k) / extra)
  })
  const whole = assemble(nodes, elementStiffness).map((row) => row.map((x) => x * stiffness))
  const load = new Array<number>(2 * nodes.length).fill(0)
  const push = (i: number, v: number) => {
    load[i] = load[i]! + v
  }
  nodes.slice(1).forEach((to, n) => {
    const from = nodes[n]!
    const h = to - from
    for (const s of distributedLoads) {
      const mid = (to + from) / 2
      if (mid < s.start || mid > s.end) continue
      const at = (x: number) => s.startLoad + ((s.endLoad - s.startLoad) * (x - s.start)) / (s.end - s.start)
      const [a, b] = [at(from), at(to)]
      push(2 * n, (h * (7 * a + 3 * b)) / 20)
      push(2 * n + 1, (h * h * (3 * a + 2 * b)) / 60)
      push(2 * n + 2, (h * (3 * a + 7 * b)) / 20)
      push(2 * n + 3, (-h * h * (2 * a + 3 * b)) / 60)
    }
  })
  const nodeAt = (x: number) => nodes.indexOf(x)
  for (const p of forces) push(2 * nodeAt(p.position), p.force)
  for (const c of couples) push(2 * nodeAt(c.position) + 1, c.moment)
  const held = span === null ? [0, 1] : [0, 2 * nodeAt(span)]
  const free = load.map((_, i) => i).filter((i) => !held.includes(i))
  const solved = new Array<number>(load.length).fill(0)
  solveScaled(
    without(whole, held),
    free.map((i) => load[i]!),
  ).forEach((x, i) => {
    solved[free[i]!] = x
  })
  const reaction = (dof: number) => load[dof]! - whole[dof]!.reduce((sum, k, j) => sum + k * solved[j]!, 0)
  return {
    nodes,
    deflection: nodes.map((_, n) => solved[2 * n]!),
    slope: nodes.map((_, n) => solved[2 * n + 1]!),
    reactionStart: reaction(0),
    reactionEnd: span === null ? null : reaction(2 * nodeAt(span)),
  }
}

const length = 1.7
const grid = fc.integer({ min: 0, max: 34 }).map((k) => (k * length) / 34)
const stretch = fc.tuple(fc.integer({ min: 0, max: 33 }), fc.integer({ min: 1, max: 34 })).map(([a, b]) => {
  const [start, end] = a < b ? [a, b] : [b - 1, a + 1]
  return { start: (start * length) / 34, end: (end * length) / 34 }
})
const number = (most: number) => fc.double({ min: -most, max: most, noNaN: true }).map((x) => Math.round(x * 1000) / 1000)
const problems: fc.Arbitrary<BeamProblem> = fc.record({
  length: fc.constant(length),
  span: fc.option(fc.integer({ min: 4, max: 34 }).map((k) => (k * length) / 34)),
  stiffness: fc.constantFrom(0.5, 104.4, 2e5),
  forces: fc.array(fc.record({ force: number(100), position: grid }), { maxLength: 4 }),
  distributedLoads: fc.array(
    fc.tuple(number(80), number(80), stretch).map(([startLoad, endLoad, s]) => ({ startLoad, endLoad, ...s })),
    { maxLength: 3 },
  ),
  couples: fc.array(fc.record({ moment: number(20), position: grid }), { maxLength: 3 }),
})
const seeded = { seed: 41, numRuns: 150 }

/** Size of the deflections and so on that the loads could cause, for what cancels. */
const scaleOf = (p: BeamProblem) =>
  p.forces.reduce((s, f) => s + Math.abs(f.force), 0) +
  p.distributedLoads.reduce((s, q) => s + (Math.abs(q.startLoad) + Math.abs(q.endLoad)) * (q.end - q.start), 0) +
  p.couples.reduce((s, c) => s + Math.abs(c.moment), 0) / length

describe("beamCurve against finite elements", () => {
  it("agrees at every node for random beams; largest deviation", () => {
    let most = 0
    fc.assert(
      fc.property(problems, (p) => {
        const curve = beamCurve(p)
        const fem = elements(p)
        const force = scaleOf(p)
        const sag = (force * length ** 3) / p.stiffness
        fem.nodes.forEach((x, i) => {
          const state = curve.at(x)
          most = Math.max(most, Math.abs(state.deflection - (fem.deflection[i] as number)) / (sag || 1))
          most = Math.max(most, (Math.abs(state.slope - (fem.slope[i] as number)) * length) / (sag || 1))
        })
        most = Math.max(most, Math.abs(curve.reactionStart - fem.reactionStart) / (force || 1) / 1e3)
        if (fem.reactionEnd !== null) most = Math.max(most, Math.abs((curve.reactionEnd as number) - fem.reactionEnd) / (force || 1) / 1e3)
      }),
      seeded,
    )
    expect(most).toBeGreaterThan(0)
    // short elements beside long ones cost the elimination some digits
    expect(most).toBeLessThan(1e-9)
  })

  it("moment and shear follow from cutting the beam and adding up what lies beyond", () => {
    let most = 0
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 33 }), (p, k) => {
        const x = ((k + 0.5) * length) / 34
        const curve = beamCurve(p)
        let [shear, moment] = [0, 0]
        for (const f of p.forces)
          if (f.position > x) {
            shear += f.force
            moment -= f.force * (f.position - x)
          }
        for (const c of p.couples) if (c.position > x) moment -= c.moment
        for (const s of p.distributedLoads) {
          const n = 2000
          for (let i = 0; i < n; i++) {
            const at = s.start + ((s.end - s.start) * (i + 0.5)) / n
            // the cut lies midway between grid lines, so a slice is wholly on one side but for one
            if (at <= x) continue
            const q = (s.startLoad + ((s.endLoad - s.startLoad) * (i + 0.5)) / n) * ((s.end - s.start) / n)
            shear += q
            moment -= q * (at - x)
          }
        }
        if (p.span !== null && p.span > x) {
          shear -= curve.reactionEnd as number
          moment += (curve.reactionEnd as number) * (p.span - x)
        }
        const state = curve.at(x)
        const force = scaleOf(p) || 1
        most = Math.max(most, Math.abs(state.shear - shear) / force, Math.abs(state.moment - moment) / (force * length))
      }),
      seeded,
    )
    // what is left is the midpoint rule's own error of one slice in 2000
    expect(most).toBeLessThan(1e-3)
  })

  it("finds the greatest of everything: no sample exceeds it", () => {
    let least = 1
    fc.assert(
      fc.property(problems, fc.constantFrom<keyof BeamState>("shear", "moment", "slope", "deflection"), (p, what) => {
        const curve = beamCurve(p)
        const { value, at } = curve.greatest(what)
        const samples = Array.from({ length: 1701 }, (_, k) => Math.abs(curve.at((k * length) / 1700)[what]))
        const top = Math.max(...samples)
        expect(Math.abs(value) * (1 + 1e-11)).toBeGreaterThanOrEqual(top)
        expect([curve.at(at, -1)[what], curve.at(at, 1)[what]]).toContain(value)
        // a jump or an end may be missed by samples, a smooth peak may not
        if (what === "deflection" && value !== 0) least = Math.min(least, top / Math.abs(value))
      }),
      { ...seeded, numRuns: 300 },
    )
    expect(least).toBeGreaterThan(0.999)
  })
})

describe("laws of beams", () => {
  it("superposition: the sum of loads bends as the sum of bendings", () => {
    fc.assert(
      fc.property(problems, problems, fc.integer({ min: 0, max: 34 }), (a, b, k) => {
        const second = { ...b, span: a.span, stiffness: a.stiffness }
        const both: BeamProblem = {
          ...a,
          forces: [...a.forces, ...second.forces],
          distributedLoads: [...a.distributedLoads, ...second.distributedLoads],
          couples: [...a.couples, ...second.couples],
        }
        const x = (k * length) / 34
        const [p, q, r] = [a, second, both].map((one) => beamCurve(one).at(x)) as [BeamState, BeamState, BeamState]
        const force = scaleOf(both) || 1
        expect(Math.abs(r.deflection - p.deflection - q.deflection)).toBeLessThan((1e-12 * force * length ** 3) / a.stiffness)
        expect(Math.abs(r.moment - p.moment - q.moment)).toBeLessThan(1e-12 * force * length)
      }),
      seeded,
    )
  })

  it("reciprocity: a load at A moves B as much as the load at B moves A", () => {
    for (const span of [null, length, 1.1])
      fc.assert(
        fc.property(grid, grid, (a, b) => {
          const one = (at: number) =>
            beamCurve({ length, span, stiffness: 10, forces: [{ force: 7, position: at }], distributedLoads: [], couples: [] })
          expect(one(a).at(b).deflection).toBeCloseTo(one(b).at(a).deflection, 11)
        }),
        seeded,
      )
  })

  it("mirrored loads on a simple span mirror the bending", () => {
    fc.assert(
      fc.property(problems, fc.integer({ min: 1, max: 33 }), (p, k) => {
        const straight = { ...p, span: length }
        const mirrored: BeamProblem = {
          ...straight,
          forces: p.forces.map((f) => ({ ...f, position: length - f.position })),
          couples: p.couples.map((c) => ({ moment: -c.moment, position: length - c.position })),
          distributedLoads: p.distributedLoads.map((s) => ({
            startLoad: s.endLoad,
            endLoad: s.startLoad,
            start: length - s.end,
            end: length - s.start,
          })),
        }
        const x = ((k + 0.5) * length) / 35
        const [a, b] = [beamCurve(straight).at(x), beamCurve(mirrored).at(length - x)]
        const force = scaleOf(p) || 1
        expect(Math.abs(a.deflection - b.deflection)).toBeLessThan((1e-12 * force * length ** 3) / p.stiffness)
        expect(Math.abs(a.moment - b.moment)).toBeLessThan(1e-11 * force * length)
      }),
      seeded,
    )
  })

  it("scaling: twice as long sags 8 times from a force, 16 times from a spread load", () => {
    const one = (size: number, loads: Partial<BeamProblem>) =>
      beamCurve({ length: size, span: null, stiffness: 10, forces: [], distributedLoads: [], couples: [], ...loads }).at(size).deflection
    const force = (size: number) => one(size, { forces: [{ force: 3, position: size }] })
    const spread = (size: number) => one(size, { distributedLoads: [{ startLoad: 3, endLoad: 3, start: 0, end: size }] })
    expect(force(2) / force(1)).toBeCloseTo(8, 10)
    expect(spread(2) / spread(1)).toBeCloseTo(16, 10)
  })
})

describe("beam", () => {
  const spar = {
    length: 0.9,
    support: "cantilever",
    section: { outsideDiameter: 0.02, wall: 0.0015 },
    material: "aluminium-6061",
    forces: [{ force: 10, position: 0.9 }],
  } as const

  it("handling multiplies every kind of load: forces and moments in balance on a clamp", () => {
    const loaded = {
      ...spar,
      countsOwnWeight: false,
      forces: [{ force: 3, position: 0.4 }],
      distributedLoads: [{ startLoad: 20, endLoad: 5, start: 0.1, end: 0.5 }],
      moments: [{ moment: 1.5, position: 0.3 }],
    }
    for (const handling of ["still", "walking", "sudden", "stumble"] as const) {
      const out = beam({ ...loaded, support: "cantilever", handling })
      // a trapezium of 5 N, its centre of gravity at (2·5 + 20)/(3·25) of its length
      expect(out.reactionStart / out.loadFactor).toBeCloseTo(3 + 5, 9)
      expect((out.clampMoment as number) / -out.loadFactor).toBeCloseTo(3 * 0.4 + 5 * (0.1 + 0.4 * (30 / 75)) + 1.5, 9)
    }
  })

  it("own weight, handling and the range of the material", () => {
    const bare = beam({ ...spar, countsOwnWeight: false })
    const heavy = beam(spar)
    const weight = 2700 * (Math.PI / 4) * (0.02 ** 2 - 0.017 ** 2) * 0.9 * 9.80665
    expect(heavy.weight).toBeCloseTo(weight, 10)
    expect(heavy.reactionStart - bare.reactionStart).toBeCloseTo(weight, 10)
    const walking = beam({ ...spar, handling: "walking" })
    expect(walking.maxDeflection.high / heavy.maxDeflection.high).toBeCloseTo(walking.loadFactor, 10)
    expect(walking.loadFactor).toBeGreaterThan(1.56)
    const [low, high] = frameMaterials["aluminium-6061"].modulus
    expect(heavy.maxDeflection.low / heavy.maxDeflection.high).toBeCloseTo(low / high, 12)
    expect(heavy.safetyFactor?.high).toBeGreaterThan(heavy.safetyFactor?.low as number)
  })

  it("warms and creeps: PVC sags more and holds less, monotonically", () => {
    const at = (temperature: number, duration: number) =>
      beam({ ...spar, section: { pipe: "3/4" }, material: "pvc-pipe", materialTemperature: temperature, duration })
    const sags = [20, 23, 30, 40, 50, 60].map((t) => at(t, 0))
    for (let i = 1; i < sags.length; i++) {
      expect(sags[i]?.maxDeflection.high).toBeGreaterThanOrEqual(sags[i - 1]?.maxDeflection.high as number)
      expect(sags[i]?.safetyFactor?.low).toBeLessThanOrEqual(sags[i - 1]?.safetyFactor?.low as number)
    }
    const creeps = [0, 360, 3600, 36_000, 360_000, 3_600_000].map((d) => at(23, d).maxDeflection.high)
    for (let i = 1; i < creeps.length; i++) expect(creeps[i]).toBeGreaterThanOrEqual(creeps[i - 1] as number)
    expect(creeps[5]).toBeGreaterThan(1.2 * (creeps[0] as number))
  })

  it("reckons with the published creep modulus and with 900 MPa at the deflection temperature", () => {
    const long = beam({ ...spar, material: "polycarbonate", duration: "1000 h" })
    // grade sheet: 1900 of 2400 MPa after 1000 h; least modulus 340 000 psi = 2344 MPa, least yield 8400 psi = 57.9 MPa
    expect(long.modulus).toBeCloseTo((2344e6 * 1900) / 2400, 0)
    expect(long.strength).toBeCloseTo((57.9e6 * 1900) / 2400, 0)
    expect((long.safetyFactor?.low as number) * (long.bendingStress as number)).toBeCloseTo(long.strength as number, 0)
    const soft = beam({ ...spar, material: "petg", materialTemperature: 69 })
    expect(soft.modulus).toBeCloseTo(900e6, 0)
    // strength of hot PVC pipe by its maker's table: 0.40 at 120 °F
    const hot = beam({ ...spar, section: { pipe: "3/4" }, material: "pvc-pipe", materialTemperature: "120 degF" })
    expect(hot.strength).toBeCloseTo(0.4 * 48.26e6, 0)
  })

  it("every material's figures are in order and its reductions stay between nothing and all", () => {
    for (const [name, data] of Object.entries(frameMaterials)) {
      for (const range of [data.modulus, data.strength, data.density]) expect(range[0], name).toBeLessThanOrEqual(range[1])
      for (const materialTemperature of [-40, 23, data.limit])
        for (const duration of [0, 3.6e6]) {
          const out = beam({ ...spar, material: name as keyof typeof frameMaterials, materialTemperature, duration })
          for (const factor of [out.stiffnessFactor, out.strengthFactor, out.creepFactor]) {
            expect(factor, name).toBeGreaterThan(0)
            expect(factor, name).toBeLessThanOrEqual(1)
          }
        }
    }
  })

  it("warns of collapse, of a thin margin, and of nothing where the margin is wide", () => {
    const codes = (force: number) =>
      beam({ ...spar, forces: [{ force, position: 0.9 }], handling: "walking" }).cautions.map((c) => `${c.severity} ${c.code}`)
    expect(codes(200)).toContain("warning collapse")
    expect(codes(40)).toContain("warning thin-margin")
    expect(codes(2).filter((c) => c.startsWith("warning"))).toEqual([])
  })

  it("says when it bends too far for a straight-beam formula, and when no stress is known", () => {
    const soft = { length: 1, support: "cantilever", section: { secondMoment: 1e-10 }, modulus: 1e10 } as const
    // at P·L²/EI of 0.676 the straight formula is 5 % off: P = 0.676 N here
    const codes = (force: number) => beam({ ...soft, forces: [{ force, position: 1 }] }).cautions.map((c) => c.code)
    expect(codes(0.67)).not.toContain("bends-far")
    expect(codes(0.68)).toContain("bends-far")
    expect(codes(0.67)).toContain("stress-unknown")
    expect(beam({ ...soft }).safetyFactor).toBeNull()
  })

  it("weighs what its density says, in the place of the material's", () => {
    const tube = { length: 2, support: "cantilever", section: { outsideDiameter: 0.02, wall: 0.001 }, modulus: 7e10 } as const
    const weight = 7850 * 9.80665 * 2 * Math.PI * 0.019 * 0.001
    for (const material of [null, "softwood"] as const) {
      const out = beam({ ...tube, material, density: 7850 })
      expect(out.weight).toBeCloseTo(weight, 9)
      expect(out.clampMoment).toBeCloseTo(-weight, 9)
      expect(out.cautions.map((c) => c.code)).not.toContain("weight-unknown")
    }
    expect(beam({ ...tube, density: 7850, countsOwnWeight: false }).weight).toBe(0)
  })

  it("says when a support would have to hold the beam down", () => {
    const plank = { length: 1, support: "simple", span: 0.5, section: { secondMoment: 1e-9 }, modulus: 1e10 } as const
    const codes = (at: number) => beam({ ...plank, forces: [{ force: 10, position: at }] }).cautions.map((c) => c.code)
    expect(codes(0.9)).toContain("lifts-off")
    expect(codes(0.4)).not.toContain("lifts-off")
  })

  it("names the place of a load off the beam", () => {
    const outcome = beam.attempt({ ...spar, forces: [{ force: 1, position: 0.91 }], moments: [{ moment: 1, position: 2 }], span: 0.4 })
    expect(!outcome.ok && "issues" in outcome.error && outcome.error.issues.map((i) => i.path.join("."))).toEqual([
      "span",
      "forces.0.position",
      "moments.0.position",
    ])
    expect(beam.attempt({ ...spar, forces: [{ force: 1, position: 0.9 }] }).ok).toBe(true)
  })
})
