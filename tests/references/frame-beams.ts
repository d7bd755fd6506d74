// Published beams over several supports.
import { continuousBeam } from "../../src/frame/index.js"
import type { Check } from "../helpers/references.js"

const bare = { countsOwnWeight: false } as const
const stiff = { ...bare, section: { secondMoment: 1e-8 }, modulus: 1e11 } as const
const EI = 1000

/** Equal spans of 1 m, 10 N/m on those that are loaded. */
const rowOf = (loaded: readonly number[]) =>
  continuousBeam({
    ...stiff,
    length: loaded.length,
    supports: [0, ...loaded.map((_, i) => i + 1)].map((position) => ({ type: "pinned", position }) as const),
    distributedLoads: loaded.flatMap((on, start) => (on ? [{ startLoad: 10, endLoad: 10, start, end: start + 1 }] : [])),
  })
const per = (x: number | null) => (x as number) / 10

const equalSpans: Check = ({ spans }) => {
  const out = rowOf(new Array<number>(spans).fill(1))
  const half = Math.ceil((spans + 1) / 2)
  const inHalf = Math.ceil(spans / 2)
  return {
    reaction_coefficient: out.places.slice(0, half).map((p) => per(p.reaction)),
    support_moment_coefficient: out.places.slice(0, half).map((p) => Math.abs(per(p.bendingMoment))),
    span_moment_coefficient: out.spans.slice(0, inHalf).map((s) => per(s.maxSagging)),
    span_moment_place_over_L: out.spans.slice(0, inHalf).map((s) => s.maxSaggingPosition - s.start),
    deflection_coefficient: (out.maxDeflection.high * EI) / 10,
    deflection_place_over_L: out.maxDeflectionPosition,
  }
}

const someLoaded: Check = ({ loaded }, { expected }) => {
  const out = rowOf(loaded as number[])
  const sagging = out.spans.filter((_, i) => loaded[i]).map((s) => per(s.maxSagging))
  return {
    reaction_coefficient: out.places.map((p) => per(p.reaction)),
    support_moment_coefficient: out.places.slice(1, -1).map((p) => Math.abs(per(p.bendingMoment))),
    span_moment_coefficient: sagging.slice(0, (expected.span_moment_coefficient as number[]).length),
    deflection_coefficient: (out.maxDeflection.high * EI) / 10,
  }
}

const section = (i: { modulus_Pa: number; second_moment_m4: number }) =>
  ({ ...bare, section: { secondMoment: i.second_moment_m4 }, modulus: i.modulus_Pa }) as const

export const severalSupports: Readonly<Record<string, Check>> = {
  "continuous-3-equal-spans": equalSpans,
  "continuous-4-equal-spans": equalSpans,
  "continuous-5-equal-spans": equalSpans,
  "continuous-4-spans-three-loaded": someLoaded,
  "continuous-4-spans-two-loaded": someLoaded,
  "fixed-fixed-uniform-load": (i) => {
    const out = continuousBeam({
      ...section(i as never),
      length: i.length_m,
      supports: [
        { type: "clamped", position: 0 },
        { type: "clamped", position: i.length_m },
      ],
      distributedLoads: [{ startLoad: i.load_N_per_m, endLoad: i.load_N_per_m, start: 0, end: i.length_m }],
    })
    return { max_deflection_m: out.maxDeflection.high, end_moment_N_m: -out.maxMoment, mid_moment_N_m: out.spans[0]?.maxSagging }
  },
  "propped-centre-load": (i) => {
    const propped = {
      ...section(i as never),
      length: i.length_m,
      supports: [
        { type: "clamped", position: 0 },
        { type: "pinned", position: i.length_m },
      ],
      forces: [{ force: i.load_N, position: i.length_m / 2 }],
    } as const
    const out = continuousBeam(propped)
    // a spring that carries next to nothing is a place to read the deflection at
    const mid = continuousBeam({ ...propped, supports: [...propped.supports, { type: "spring", position: i.length_m / 2, stiffness: 10 }] })
    const probe = mid.places[1] as (typeof mid.places)[number]
    const own = 1 + (10 * 7 * i.length_m ** 3) / (768 * i.modulus_Pa * i.second_moment_m4)
    return {
      prop_reaction_N: out.places[1]?.reaction,
      fixed_reaction_N: out.places[0]?.reaction,
      fixing_moment_N_m: -(out.places[0]?.bendingMoment as number),
      mid_deflection_m: probe.deflection * own,
      max_deflection_m: out.maxDeflection.high,
      max_place_from_prop_m: i.length_m - out.maxDeflectionPosition,
    }
  },
  "propped-uniform-load": (i) => {
    const out = continuousBeam({
      ...section(i as never),
      length: i.length_m,
      supports: [
        { type: "clamped", position: 0 },
        { type: "pinned", position: i.length_m },
      ],
      distributedLoads: [{ startLoad: i.load_N_per_m, endLoad: i.load_N_per_m, start: 0, end: i.length_m }],
    })
    return {
      prop_reaction_N: out.places[1]?.reaction,
      fixed_reaction_N: out.places[0]?.reaction,
      fixing_moment_N_m: -(out.places[0]?.bendingMoment as number),
      max_deflection_m: out.maxDeflection.high,
      divisor: (i.load_N_per_m * i.length_m ** 4) / (i.modulus_Pa * i.second_moment_m4 * out.maxDeflection.high),
      max_place_from_prop_m: i.length_m - out.maxDeflectionPosition,
    }
  },
}
