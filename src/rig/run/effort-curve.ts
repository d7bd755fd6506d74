// What a motion asks of one drive along its travel on one way, tabulated once: every ride on it reads the table.
import { goldenMinimum, type Piecewise, pieceAt, piecewise, valueAt } from "../../numeric/index.js"
import { effortAt, effortState, type MotionModel, type Surroundings, type Way } from "./motion-model.js"

/** Effort and inertia of a motion on one way, at one drive's output. */
export interface EffortCurve {
  /** Pieces of one form each, from the start of the drive's travel on; null where something of the motion itself stops it. */
  readonly table: Piecewise | null
  /** A travel at which it was seen to stop; null where nothing of the motion itself stops it. */
  readonly stopsAt: number | null
  readonly maxEffort: number
  readonly minEffort: number
}

/** Last coefficients that are let go of effort and inertia. */
export const LET_GO = [1e-13, 1e-11] as const
const NODES = 24
/** A table may be off by this where it is compared, against the largest effort or this share of the drive's stall. */
const OFF = 1e-12
const SHARE = 1e-2

const stopped = (stopsAt: number): EffortCurve => ({ table: null, stopsAt, maxEffort: Number.NaN, minEffort: Number.NaN })

/** Tabulates a motion on one way, looked at `looks` times first: what stops it and where its equations change form. */
export function effortCurve(motion: MotionModel, way: Way, around: Surroundings, looks: number): EffortCurve {
  const { span, drive } = motion
  const state = effortState()
  const at = (x: number) => {
    effortAt(motion, x, way, around, state)
    return state.trouble === "none" ? state.form : -1
  }
  const tightness = (x: number) => {
    at(x)
    return state.trouble === "none" ? state.tightness : Number.NEGATIVE_INFINITY
  }
  const places = new Float64Array(looks + 1)
  const seen = new Float64Array(looks + 1)
  const splits: number[] = []
  let [before, tightTwo, tightOne] = [-1, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i <= looks; i++) {
    const x = (span * i) / looks
    const form = at(x)
    if (form < 0) return stopped(x)
    places[i] = x
    seen[i] = state.effort
    const tight = state.tightness
    // between two looks a line may go slack: where it is less tight than on both sides
    if (tightOne < tightTwo && tightOne <= tight) {
      const slackest = goldenMinimum(tightness, x - (2 * span) / looks, x)
      if (at(slackest) < 0) return stopped(slackest)
    }
    ;[tightTwo, tightOne] = [tightOne, tight]
    if (i > 0 && form !== before) splits.push(changeBetween(at, before, (span * (i - 1)) / looks, x, span))
    before = form
  }
  const stall = (drive.ratedVoltage / drive.windingResistance) * drive.effortConstant
  const floor = Number.isFinite(stall) ? SHARE * Math.abs(stall) : 0
  const table = fitted(at, state, span, floor, splits)
  if (table.failed !== null) return stopped(table.failed)
  const scale = Math.max(floor, ...seen.map(Math.abs))
  const missed = Array.from(places).filter(
    (x, i) => Math.abs(effortIn(table, x) - (seen[i] as number)) > OFF * scale && !splits.some((s) => Math.abs(s - x) <= 1e-9 * span),
  )
  // a bump that no node met: split beside it
  const mended = missed.length ? fitted(at, state, span, floor, [...splits, ...beside(missed, span / looks)]) : table
  return mended.failed === null ? { table: mended, stopsAt: null, ...extremes(mended) } : stopped(mended.failed)
}

const beside = (places: readonly number[], width: number) => places.flatMap((x) => [x - width, x, x + width])

function fitted(
  at: (x: number) => number,
  state: { effort: number; inertia: number },
  span: number,
  floor: number,
  splits: readonly number[],
): Piecewise {
  return piecewise(
    (x, out) => {
      const form = at(x)
      out[0] = state.effort
      out[1] = state.inertia
      return form
    },
    0,
    span,
    { nodes: NODES, relative: LET_GO, floor: [floor, 0], splits: [...new Set(splits)].sort((a, b) => a - b), most: 6000 },
  )
}

/** The place between two at which a form changes. */
function changeBetween(form: (x: number) => number, before: number, from: number, to: number, span: number): number {
  let [low, high] = [from, to]
  while (high - low > 1e-13 * (span + high)) {
    const mid = (low + high) / 2
    if (mid <= low || mid >= high) break
    if (form(mid) === before) low = mid
    else high = mid
  }
  return (low + high) / 2
}

/** Effort of a table at a travel. */
export const effortIn = (table: Piecewise, x: number): number => valueAt(pieceAt(table, x), table.size, 0, x)

/** Inertia of a table at a travel. */
export const inertiaIn = (table: Piecewise, x: number): number => valueAt(pieceAt(table, x), table.size, 1, x)

/** Largest and smallest effort of a table. */
function extremes(table: Piecewise): { readonly maxEffort: number; readonly minEffort: number } {
  let [maxEffort, minEffort] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const piece of table.pieces) {
    const at = (x: number) => valueAt(piece, table.size, 0, x)
    const width = (piece.b - piece.a) / NODES
    let [highest, lowest, most, least] = [piece.a, piece.a, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    for (let i = 0; i <= NODES; i++) {
      const x = piece.a + width * i
      const e = at(x)
      if (e > most) [most, highest] = [e, x]
      if (e < least) [least, lowest] = [e, x]
    }
    const between = (x: number) => [Math.max(piece.a, x - width), Math.min(piece.b, x + width)] as const
    maxEffort = Math.max(maxEffort, most, at(goldenMinimum((x) => -at(x), ...between(highest))))
    minEffort = Math.min(minEffort, least, at(goldenMinimum(at, ...between(lowest))))
  }
  return { maxEffort, minEffort }
}
