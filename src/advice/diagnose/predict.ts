// What each reading would be on a rig built in some way.
import { resistanceFactor } from "../../pack/index.js"
import { coordinatesAt, type MotionModel, slopesAt, staticHolds, type Way } from "../../rig/run/motion-model.js"
import type { SiOf } from "../../solver/index.js"
import { type Built, type Moving, withEntry } from "./built.js"
import { meters, type NumberType, uncertaintyOf } from "./meters.js"
import { atRest, type Passage, passage, type Shown, sideDifference, treeModel } from "./passage.js"
import type { RigReading } from "./readings.js"

export type ReadingSi = SiOf<RigReading>

/** Readings, put in numbers. */
export interface Taken {
  readonly list: readonly ReadingSi[]
  /** Value of each that is a number; null for what is seen, heard or felt. */
  readonly values: readonly (number | null)[]
  readonly sigmas: readonly number[]
}

/** What a built rig shows for a list of readings. */
export interface Showing {
  /** The number each would be; not a number where it could not be read at all. */
  readonly values: Float64Array
  /** By how many standard deviations it goes against what is seen, heard or felt; 0 for numbers. */
  readonly misses: Float64Array
}

/** A reading of a number, or of what is plainly seen. */
export function numberOf(reading: ReadingSi): number | null {
  switch (reading.type) {
    case "stops-at":
      return reading.angle ?? reading.stroke ?? reading.share
    case "slow-in-the-cold":
      return reading.times
    case "does-not-move":
    case "switches-off":
    case "wrong-way":
    case "warm":
    case "sound":
      return null
    default:
      return reading.value
  }
}

export const taken = (list: readonly ReadingSi[], built: Built): Taken => ({
  list,
  values: list.map(numberOf),
  sigmas: list.map((one) => (one.type === "stops-at" ? stopSigma(one, built) : uncertaintyOf(one))),
})

/** A stop is told to a share of the whole way. */
function stopSigma(reading: ReadingSi & { type: "stops-at" }, built: Built): number {
  const { fixed } = meters["stops-at"]
  if (reading.share !== null) return fixed
  const model = (built.motions[motionOf(built, reading)] as Moving).model
  return fixed * (reading.stroke !== null ? model.span : Math.abs(shownAt(model, 1) - shownAt(model, 0)))
}

/** Place of the motion that a reading is about. */
export function motionOf(built: Built, reading: { readonly motion?: string | null }): number {
  const index = built.motions.findIndex((one) => one.si.name === reading.motion)
  return Math.max(0, index)
}

const wayOf = (reading: { readonly way: "out" | "back" }): Way => (reading.way === "out" ? 1 : -1)

/** What the first mechanism of a motion shows at a share of its way out. */
export function shownAt(model: MotionModel, share: number): number {
  const q = coordinatesAt(model, share * model.span)[0] as number
  return model.parts[0]?.mechanism.pose(q).shown ?? 0
}

/** A clear difference: this much slower is noticed without a watch. */
const CLEARLY = 1.25
/** Against what is plainly seen: nobody takes a standing rig for one that moves. */
const PLAIN = 6
/** What is wired the wrong way round is seen to go that way, but where it stands at its own end: common practice, no source. */
const SEEN_REVERSED = 3

/** Everything asked of one built rig, each passage worked out once. */
export class Asked {
  readonly built: Built
  private readonly passages = new Map<string, Passage>()
  private rest: Shown | null = null

  constructor(built: Built) {
    this.built = built
  }

  passage(index: number, way: Way): Passage {
    const key = `${index} ${way}`
    const found = this.passages.get(key) ?? passage(this.built, index, way)
    this.passages.set(key, found)
    return found
  }

  atRest(): Shown {
    this.rest ??= atRest(this.built)
    return this.rest
  }

  shown(during: "moving" | "rest" | "stalled", index: number, way: Way): Shown {
    if (during === "rest") return this.atRest()
    const one = this.passage(index, way)
    const shown = during === "moving" ? one.moving : one.stalled()
    // a motion on no bus leaves the tree at rest
    return shown.volts.length || !this.built.power ? shown : { ...this.atRest(), drives: shown.drives, winding: shown.winding }
  }
}

/** What a list of readings would be; `planned` is what the document says. */
export function showing(built: Built, list: readonly ReadingSi[], planned: Asked): Showing {
  const asked = new Asked(built)
  const values = new Float64Array(list.length)
  const misses = new Float64Array(list.length)
  list.forEach((reading, i) => {
    const { value, miss } = showsOne(asked, reading, planned)
    values[i] = value
    misses[i] = miss
  })
  return { values, misses }
}

interface One {
  readonly value: number
  readonly miss: number
}
const number = (value: number): One => ({ value, miss: 0 })
const seen = (miss: number): One => ({ value: 0, miss })

function showsOne(asked: Asked, reading: ReadingSi, planned: Asked): One {
  const { built } = asked
  switch (reading.type) {
    case "cell-resistance": {
      const cells = cellsOf(built, reading.source)
      return number(cells ? cells.cellResistance * resistanceFactor(cells.chemistry, cells.temperature) : Number.NaN)
    }
    case "cell-temperature":
      return number(cellsOf(built, reading.source)?.temperature ?? Number.NaN)
    case "warm":
      return seen(coolness(asked, planned, reading))
    case "voltage":
    case "voltage-drop":
    case "current":
      return number(meterShows(asked, reading))
    case "force":
      return number(pullAt(built, reading))
    default:
  }
  const index = motionOf(built, reading)
  const one = built.motions[index] as Moving
  switch (reading.type) {
    case "wrong-way":
      return seen(one.wrongWay === reading.what ? 0 : PLAIN)
    case "sound":
      // one time in eight a sound is heard that means nothing: common practice, no source
      return seen(
        one.sounds.includes(reading.sound) || (reading.sound === "humming" && hums(asked, index)) ? 0 : isSilent(asked, index) ? 4 : 2,
      )
    case "swing":
    case "reach": {
      const { reached } = asked.passage(index, 1)
      return number(Math.abs(shownAt(one.model, reached) - shownAt(one.model, 0)))
    }
    default:
  }
  const way = wayOf(reading)
  const gone = asked.passage(index, way)
  switch (reading.type) {
    case "time":
      return number(Number.isFinite(gone.time) ? gone.time : Number.NaN)
    case "does-not-move":
      return seen(gone.reached > 0.02 ? PLAIN : one.wrongWay === "none" ? 0 : SEEN_REVERSED)
    case "stops-at": {
      // one that comes through stops at its own end: no stop at all
      const share = Math.min(gone.reached, 1)
      if (reading.share !== null) return { value: share, miss: gone.reached >= 1 ? PLAIN : 0 }
      const value =
        reading.stroke !== null
          ? share * one.model.span
          : Math.abs(shownAt(one.model, way === 1 ? share : 1 - share) - shownAt(one.model, way === 1 ? 0 : 1))
      return { value, miss: gone.reached >= 1 ? PLAIN : 0 }
    }
    case "switches-off":
      // a supply at its limit may hold it or switch off, whatever the document says
      return seen(!gone.fed && !gone.off ? PLAIN : gone.off ? 0 : gone.limited ? 1 : gone.reached < 1 ? 4 : PLAIN)
    case "one-side-slower": {
      const behind = Math.abs(sideDifference(built, index, way))
      if (reading.value !== null) return number(Number.isFinite(behind) ? behind : Number.NaN)
      // a tenth of the time is seen without a watch
      const clear = 0.1 * (gone.time - behind)
      return seen(behind === Number.POSITIVE_INFINITY ? 0 : Math.min(4, Math.max(0, 4 * (1 - behind / clear))))
    }
    case "slow-in-the-cold": {
      const cold = passage(inTheCold(built, index, reading.temperature), index, way)
      const ratio = cold.time / gone.time
      if (reading.times !== null) return number(Number.isFinite(ratio) ? ratio : Number.NaN)
      return seen(Number.isNaN(ratio) ? 4 : Math.min(4, Math.max(0, (CLEARLY - ratio) / 0.06)))
    }
    default:
      return seen(0)
  }
}

const bothWays = [1, -1] as const
/** A drive that is fed and does not turn hums. */
const hums = (asked: Asked, index: number) =>
  bothWays.map((way) => asked.passage(index, way)).some(({ fed, reached }) => fed && reached < 1)
/** One without a voltage that never moves makes no sound. */
const isSilent = (asked: Asked, index: number) =>
  bothWays.map((way) => asked.passage(index, way)).every(({ fed, reached }) => !fed && reached === 0)

function cellsOf({ power }: Built, name: string) {
  const found = power?.sources.find((one) => one.name === name)
  return found?.type === "cells" ? found : null
}

/** A rig out in the cold: its cells as cold as the air, and what its grease asks there. */
function inTheCold(built: Built, index: number, temperature: number): Built {
  let cold = built
  built.power?.sources.forEach((one, i) => {
    if (one.type === "cells") cold = withEntry(cold, "sources", i, (s) => ({ ...s, temperature: Math.max(-20, Math.min(60, temperature)) }))
  })
  const { model, coldDrag } = built.motions[index] as Moving
  if (coldDrag === 0) return cold
  const stall = model.drive.ratedVoltage / model.drive.windingResistance
  const drive = { ...model.drive, frictionCurrent: model.drive.frictionCurrent + coldDrag * stall }
  return { ...cold, motions: cold.motions.map((one, i) => (i === index ? { ...one, model: { ...model, drive } } : one)) }
}

type MeterReading = Extract<ReadingSi, { readonly type: "voltage" | "voltage-drop" | "current" }>

function meterShows(asked: Asked, reading: MeterReading): number {
  const { built } = asked
  const { power } = built
  const shown = asked.shown(reading.during, motionOf(built, reading), wayOf(reading))
  if (reading.type === "current" && reading.at === null) return shown.drives
  if (!power) return Number.NaN
  const model = treeModel(power)
  const before = (bus: number) => {
    const above = model.above[bus] as number
    return above === -1 ? (shown.sourceVolts[model.sourceOf[bus] as number] as number) : (shown.volts[above] as number)
  }
  const name = reading.type === "voltage-drop" ? reading.along : reading.at
  const source = model.sources.findIndex((one) => one.name === name)
  if (source >= 0) return ((reading.type === "current" ? shown.sourceAmps : shown.sourceVolts)[source] as number) ?? Number.NaN
  const bus = model.names.indexOf(name ?? "")
  if (bus < 0) return Number.NaN
  if (reading.type === "current") return shown.runAmps[bus] as number
  if (reading.type === "voltage-drop") return Math.max(0, before(bus) - (shown.inputVolts[bus] as number))
  return (reading.side === "input" ? shown.inputVolts : shown.volts)[bus] as number
}

/** Pull at the tip of one mechanism, its rod or line taken off: its weight and springs, and its friction against the hand. */
function pullAt(built: Built, reading: ReadingSi & { type: "force" }): number {
  const { model } = built.motions[motionOf(built, reading)] as Moving
  const named = model.parts.findIndex((one) => one.name === reading.mechanism)
  const at = Math.max(0, named)
  const part = model.parts[at]
  if (!part) return Number.NaN
  const travel = reading.place * model.span
  const q = coordinatesAt(model, travel)[at] as number
  const slope = slopesAt(model, travel)[at] as number
  if (!(q >= part.mechanism.low && q <= part.mechanism.high)) return Number.NaN
  const holds = staticHolds(part, q, built.around)
  const { frictionDry, frictionShare } = part.state
  const against = wayOf(reading) * Math.sign(slope) * holds + frictionDry
  const effort = against > 0 ? against / Math.max(0.05, 1 - frictionShare) : against / (1 + frictionShare)
  const [x, y, z] = part.mechanism.pose(q).tipRate
  return Math.abs(effort) / Math.hypot(x, y, z)
}

/** Heat of a part while a motion goes out, W; of a contact and of its wire apart. */
function heatOf(asked: Asked, reading: ReadingSi & { type: "warm" }): number {
  const { built } = asked
  const { power, motions } = built
  const index = Math.max(
    0,
    motions.findIndex((one) => one.si.name === reading.at || one.si.bus === reading.at),
  )
  const shown = asked.passage(index, 1).moving
  if (reading.part === "drive") return shown.winding
  if (!power) return 0
  const model = treeModel(power)
  const source = model.sources.findIndex((one) => one.name === reading.at)
  if (reading.part === "source")
    return source < 0 ? 0 : (shown.sourceAmps[source] as number) ** 2 * (model.sources[source]?.resistance ?? 0)
  const bus = model.names.indexOf(reading.at)
  if (bus < 0) return 0
  const amps = shown.runAmps[bus] as number
  if (reading.part === "converter")
    return Math.max(0, (shown.inputVolts[bus] as number) * amps - (shown.volts[bus] as number) * (shown.outAmps[bus] as number))
  const all = amps ** 2 * (model.resistance[bus] as number)
  const si = power.buses[bus]
  const inContacts = built.contacts[reading.at] ?? 0
  const plugs = (si?.run ? si.run.contacts * si.run.contactResistance : 0) + (si?.switchResistance ?? 0) + (si?.fuseResistance ?? 0)
  const contact = amps ** 2 * Math.max(plugs, inContacts)
  return reading.part === "contact" ? contact : Math.max(0, all - contact)
}

/** How little warmer than planned a part is that a hand found clearly warmer: none at twice the heat. */
function coolness(asked: Asked, planned: Asked, reading: ReadingSi & { type: "warm" }): number {
  const [is, was] = [heatOf(asked, reading), heatOf(planned, reading)]
  if (!(is > 0)) return 3
  return Math.min(3, Math.max(0, (Math.LN2 - Math.log(is / Math.max(was, 1e-3))) / 0.25))
}

/** A tool by the reading it takes. */
export const meterOf = (reading: ReadingSi) => meters[reading.type as NumberType] ?? null
