import { bandAcross, isNoSolution, type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { type BeamExtreme, type BeamProblem, type BeamSpread, type BeamState, beamCurve } from "../beam/curve.js"
import { gravity, ownDensity } from "../beam/loads.js"
import { strengthOf } from "../beam/strength.js"
import { conditionOf } from "../condition.js"
import { handlingCases } from "../data-loads.js"
import { type FrameSystem, looseness, type SolvedFrame, type SystemHold, type SystemMember, solveFrame } from "../frame-system.js"
import { sectionOf } from "../section.js"
import type {
  BeamPlace,
  BeamSpan,
  ContinuousBeam,
  ContinuousBeamInput,
  ContinuousBeamRefusal,
  ContinuousBeamTrace,
  Found,
} from "./types.js"

type Si = SiOf<ContinuousBeamInput>

/** Where a support stands: at the beam's end where it is within a thousandth of a millimetre of it, for a shorter overhang is none. */
const standsAt = (si: Pick<Si, "length">, x: number) => (x < 1e-6 ? 0 : si.length - x < 1e-6 ? si.length : x)

/** Ends and supports, from the start on. */
export const placesOf = (si: Pick<Si, "length" | "supports">): number[] =>
  [...new Set([0, ...si.supports.map((s) => standsAt(si, s.position)), si.length])].sort((a, b) => a - b)

/** What lies of a spread load between two places, from the first of them on. */
function clipped(load: BeamSpread, from: number, to: number): BeamSpread[] {
  const [start, end] = [Math.max(load.start, from), Math.min(load.end, to)]
  // a sliver of rounding carries nothing, and its slope would overflow
  if (!(end - start > 1e-12 * to)) return []
  const at = (x: number) => load.startLoad + ((load.endLoad - load.startLoad) * (x - load.start)) / (load.end - load.start)
  return [{ startLoad: at(start), endLoad: at(end), start: start - from, end: end - from }]
}

/** The beam as a row of members between its ends and supports. */
function systemOf(si: Si, modulus: number, weightArea: number): FrameSystem {
  const places = placesOf(si)
  const bending = modulus * sectionOf(si.section).secondMoment
  const factor = handlingCases[si.handling].factor
  const own = ownDensity(si) * weightArea * gravity * factor
  const spreads = si.distributedLoads.map((s) => ({ ...s, startLoad: s.startLoad * factor, endLoad: s.endLoad * factor }))
  if (own > 0) spreads.push({ startLoad: own, endLoad: own, start: 0, end: si.length })
  const inside = (from: number, to: number, x: number) => x > from && x < to
  const members = places.slice(1).map((to, i): SystemMember => {
    const from = places[i] as number
    return {
      from: i,
      to: i + 1,
      bending,
      stretch: 0,
      turnsAtFrom: false,
      turnsAtTo: false,
      forces: si.forces.filter((p) => inside(from, to, p.position)).map((p) => ({ force: p.force * factor, position: p.position - from })),
      distributedLoads: spreads.flatMap((s) => clipped(s, from, to)),
      couples: si.moments
        .filter((c) => inside(from, to, c.position))
        .map((c) => ({ moment: c.moment * factor, position: c.position - from })),
      alongForces: [],
      alongLoads: [],
    }
  })
  const holds = si.supports.flatMap((s): SystemHold[] => {
    const node = places.indexOf(standsAt(si, s.position))
    const soft = (stiffness: number | null) => (stiffness === null ? 0 : 1 / stiffness)
    const up = { node, way: 1, flexibility: s.type === "spring" ? soft(s.stiffness) : 0 } as const
    if (s.type === "pinned" || (s.type === "spring" && s.turningStiffness === null)) return [up]
    return [up, { node, way: 2, flexibility: s.type === "spring" ? soft(s.turningStiffness) : 0 }]
  })
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
  return {
    nodes: places.map((x) => ({ x, y: 0 })),
    members,
    // nothing pushes along the beam
    holds: [{ node: 0, way: 0, flexibility: 0 }, ...holds],
    loads: places.map(
      (x) =>
        [
          0,
          -sum(si.forces.filter((p) => p.position === x).map((p) => p.force * factor)),
          -sum(si.moments.filter((c) => c.position === x).map((c) => c.moment * factor)),
        ] as const,
    ),
  }
}

/** One answer, for one modulus. */
interface Solved {
  readonly system: FrameSystem
  readonly frame: SolvedFrame
  readonly greatest: (what: keyof BeamState) => Found
}

function solved(system: FrameSystem, places: readonly number[]): Solved {
  const frame = solveFrame(system)
  const stretches = system.members.map((_, i) => frame.stretchOf(i))
  const curves = stretches.map(beamCurve)
  const greatest = (what: keyof BeamState): Found => {
    let [best, member] = [null as BeamExtreme | null, 0]
    curves.forEach((curve, i) => {
      const found = curve.greatest(what)
      // larger beyond rounding, so that symmetry gives one answer: the first
      if (best === null || Math.abs(found.value) > Math.abs(best.value) * (1 + 1e-9)) [best, member] = [found, i]
    })
    const extreme = best as unknown as BeamExtreme
    const side = curves[member]?.at(extreme.at, -1)[what] === extreme.value ? -1 : 1
    return { extreme, side, stretch: stretches[member] as BeamProblem, start: places[member] as number }
  }
  return { system, frame, greatest }
}

function placesFound({ system, frame }: Solved, places: readonly number[]): BeamPlace[] {
  return places.map((position, n) => {
    const held = (way: 1 | 2) => {
      const k = system.holds.findIndex((h) => h.node === n && h.way === way)
      return k < 0 ? null : (frame.reactions[k] as number)
    }
    const [left, right] = [frame.ends[n - 1]?.momentEnd ?? 0, frame.ends[n]?.momentStart ?? 0]
    const turning = held(2)
    const [, up, turn] = frame.moves[n] as readonly [number, number, number]
    return {
      position,
      reaction: held(1),
      holdingMoment: turning === null ? null : 0 - turning,
      bendingMoment: Math.abs(left) > Math.abs(right) ? left : right,
      deflection: 0 - up,
      slope: 0 - turn,
    }
  })
}

function spansFound({ system, frame }: Solved, places: readonly number[]): BeamSpan[] {
  return system.members.map((_, i) => {
    const [start, curve] = [places[i] as number, beamCurve(frame.stretchOf(i))]
    const [sagging, hogging, sag] = [curve.greatest("moment", 1), curve.greatest("moment", -1), curve.greatest("deflection")]
    return {
      start,
      end: places[i + 1] as number,
      maxSagging: sagging.value,
      maxSaggingPosition: start + sagging.at,
      maxHogging: hogging.value,
      maxDeflection: sag.value,
      maxDeflectionPosition: start + sag.at,
    }
  })
}

const larger = (a: Found, b: Found) => (Math.abs(b.extreme.value) > Math.abs(a.extreme.value) * (1 + 1e-9) ? b : a)

export function solve(si: Si, trace?: Partial<ContinuousBeamTrace>): ContinuousBeam | NoSolution<ContinuousBeamRefusal> {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const section = sectionOf(si.section)
  const places = placesOf(si)
  const system = (modulus: number) => systemOf(si, modulus, section.weightArea ?? 0)
  const soft = system(condition.modulus)
  const loose = looseness(soft)
  if (loose !== null)
    return refuse(
      "unstable",
      "It is not held: on one support that lets it turn it swings about {position length}. Add a second support, or clamp it there.",
      loose.motions,
      { position: si.supports[0]?.position as number },
    )
  const softest = solved(soft, places)
  const stiffest = condition.maxModulus === condition.modulus ? softest : solved(system(condition.maxModulus), places)
  const [moment, shear] = (["moment", "shear"] as const).map((what) => larger(softest.greatest(what), stiffest.greatest(what))) as [
    Found,
    Found,
  ]
  const [sag, stiffSag] = [softest.greatest("deflection"), stiffest.greatest("deflection")]
  if (trace) Object.assign(trace, { section, moment, shear, sag, stiffSag } satisfies ContinuousBeamTrace)
  return {
    places: placesFound(softest, places),
    spans: spansFound(softest, places),
    maxMoment: moment.extreme.value,
    maxMomentPosition: moment.start + moment.extreme.at,
    maxShearForce: shear.extreme.value,
    maxDeflection: bandAcross([sag.extreme.value, stiffSag.extreme.value]),
    maxDeflectionPosition: sag.start + sag.extreme.at,
    weight: ownDensity(si) * (section.weightArea ?? 0) * gravity * si.length,
    loadFactor: handlingCases[si.handling].factor,
    ...strengthOf(section, condition, moment.extreme.value, shear.extreme.value),
  }
}
