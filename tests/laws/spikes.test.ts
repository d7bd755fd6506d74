import fc from "fast-check"
import { describe, expect, it } from "vitest"
import type { AnyFields } from "../../src/solver/index.js"
import { inputs, leaves } from "../helpers/arbitrary.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"
import { loneSpikes, spikesIn } from "../helpers/spikes.js"

/** Inputs swept beside the example, and points of a sweep; WIDE=1 sweeps many more. */
const [BASES, POINTS] = process.env.WIDE ? [12, 201] : [1, 41]

/** Solvers whose one call takes long: fewer points, and only every so-manieth number of the input. */
const slow: Readonly<Record<string, readonly [points: number, every: number]>> = {
  "linkage.counterbalance": [21, 1],
  "linkage.hingeActuator": [21, 1],
  "linkage.placeActuator": [9, 6],
  "linkage.planarLinkage": [21, 1],
  "linkage.sweptEnvelope": [9, 5],
  "linkage.tetheredFan": [21, 3],
  "worn.pinchGap": [15, 5],
  "advice.diagnosis": [9, 24],
  "rig.move": [9, 6],
  "rig.assessRig": [9, 12],
  "rig.perform": [9, 24],
}

/** The same with WIDE=1; all others are then swept whole. */
const wideSlow: typeof slow = {
  "linkage.placeActuator": [41, 3],
  "linkage.sweptEnvelope": [101, 1],
  "advice.diagnosis": [41, 6],
  "rig.move": [41, 3],
  "rig.assessRig": [41, 6],
  "rig.perform": [41, 12],
}

/** Results that may rightly differ at every point, and why. */
const loose: Readonly<Record<string, { readonly paths: RegExp; readonly because: string }>> = {
  "pack.runtime": {
    paths: /^(pattern\.\d+\.\w+|parallel|series) = .*: end(Current|Voltage)[. ]/,
    because: "the current and voltage it ends with are those of the load in which it ends, and that changes with the pattern and the cells",
  },
  "rig.perform": {
    paths: /: (times|motions\.\d+\.\w+\.\d|buses\.\d+\.voltage|sources\.\d+\.(current|charge)|events|evaluations|energy\.residual)/,
    because: "its traces stand at the integrator's own steps, and one more or less shifts all behind it",
  },
  "linkage.placeActuator": {
    paths: /(^|: )(fixedPivot|movingPivot|raisedBy|maxBoxes|gap|bound|peak\w*|low\w*|high\w*|side\w*)[. ]/,
    because: "the placement is one of many within the certified one per cent, not a continuous function of the input",
  },
}

describe("the spike finder", () => {
  const curve = Array.from({ length: 30 }, (_, i) => Math.sin(i / 20) + 3)
  it("finds a point put off a smooth curve, and none on it", () => {
    expect(spikesIn(curve)).toEqual([])
    expect(spikesIn(curve.map((y, i) => (i === 12 ? y * 1.2 : y)))).toEqual([12])
  })
  it("takes a step and a kink for what they are", () => {
    expect(spikesIn(curve.map((y, i) => (i > 14 ? y + 5 : y)))).toEqual([])
    expect(spikesIn(curve.map((_, i) => Math.abs(i - 15)))).toEqual([])
  })
  it("sees a kernel that jumps at random, and not a narrow pole", () => {
    const fake = (of: (x: number) => number) =>
      ({ attempt: ({ x }: { x: number }) => ({ ok: true, value: { y: of(x), cautions: [] } }) }) as unknown as AnySolver
    const leaf = { field: { kind: "number", symbol: "x", label: "x", min: 0, max: 1, typical: [0, 1] } as const, path: ["x"], value: 0.5 }
    const jumps = (x: number) => (Math.sin(x * 1e9) > 0.9 ? 5 : 1) + x
    expect(loneSpikes(fake(jumps), { x: 0.5 }, leaf, 200).length).toBeGreaterThan(3)
    expect(
      loneSpikes(
        fake((x) => 1 / (x - 0.50123)),
        { x: 0.5 },
        leaf,
        200,
      ),
    ).toEqual([])
  })
})

describe.each(solvers)("spikes: $id", ({ id, solver }: { id: string; solver: AnySolver }) => {
  it("has no point far from neighbours that agree", () => {
    const fields = solver.input as unknown as AnyFields
    const tried: Record<string, unknown>[] = []
    for (const input of fc.sample(inputs(fields, solver.example, solver.either), BASES * 8))
      if (tried.length < BASES && solver.attempt(input).ok) tried.push(input)
    const sweeps = [solver.example, ...tried].flatMap((base) =>
      leaves(fields, base)
        .filter(({ field, value }) => "symbol" in field && value !== null && value !== undefined)
        .map((leaf) => ({ base, leaf })),
    )
    const [points, every] = (process.env.WIDE ? wideSlow : slow)[id] ?? [POINTS, 1]
    const found = sweeps.filter((_, i) => i % every === 0).flatMap(({ base, leaf }) => loneSpikes(solver, base, leaf, points))
    const free = loose[id]?.paths
    expect(found.filter((text) => !free?.test(text))).toEqual([])
  })
})
