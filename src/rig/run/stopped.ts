// The refusal of a motion that something stops: what, where, by how much, and what would let it pass.
import { formatQuantity } from "../../quantity/index.js"
import { type NoSolution, refuse } from "../../solver/index.js"
import { readInput } from "../../solver/read.js"
import { restVoltage } from "../supply/settle.js"
import { type RigSi, rigFaults } from "../whole/faults.js"
import { type Members, rigFields } from "../whole/fields.js"
import { effortAt } from "./motion-model.js"
import type { MoveRefusal } from "./move-types.js"
import { mostAt, type Ride, ridePoint } from "./ride.js"

/** No less than this is told: a stop was found, by whatever little. */
const some = (short: number) => Math.max(short, Number.MIN_VALUE)

/** Places on the rest of a way, from a travel on. */
const rest = ({ motion, way }: Ride, travel: number) =>
  Array.from({ length: 161 }, (_, i) => (way === 1 ? travel + ((motion.span - travel) * i) / 160 : travel * (1 - i / 160)))

/** The travel on the rest of a way at which a drive has to give most: where it stops, it lacks nothing yet. */
function hardest(one: Ride, travel: number): number {
  let [most, at] = [Number.NEGATIVE_INFINITY, travel]
  for (const place of rest(one, travel)) {
    effortAt(one.motion, place, one.way, one.around, one.effort)
    if (one.effort.trouble === "none" && one.effort.effort > most) [most, at] = [one.effort.effort, place]
  }
  return at
}

/** The refusal of a motion that is stopped at a travel of its drive, and where the others stand that it hangs together with. */
export function stopped(one: Ride, travel: number, stands = ""): NoSolution<MoveRefusal> {
  const { motion, way, effort, feed, supply } = one
  const { trouble } = ridePoint(one, travel)
  const rod = motion.drive.travel === "length"
  const place = rod ? formatQuantity("length", travel, "mm") : formatQuantity("angle", travel)
  const values = {
    motion: motion.name,
    way: way === 1 ? "out" : "back",
    stands: stands ? `, ${stands},` : ",",
    place,
    part: effort.at || "the transmission",
  }
  // what is left to go of the drive's travel
  const left = some(Math.max(way === 1 ? motion.span - travel : travel, effort.shortBy))
  switch (trouble) {
    case "cannot-close":
      return refuse(
        "cannot-close",
        rod
          ? "On its way {way}{stands} {motion} comes to {place} of its drive's travel and {part} cannot follow any further, {shortBy length mm} before its end. Shorten the travel or move the pivots."
          : "On its way {way}{stands} {motion} comes to {place} of its drive's travel and {part} cannot follow any further, {shortBy angle} before its end. Shorten the travel or move the pivots.",
        left,
        { travel },
        {},
        values,
      )
    case "dead-point":
      return refuse(
        "dead-point",
        rod
          ? "On its way {way}{stands} {motion} comes to a dead point of {part} at {place} of its drive's travel, {shortBy length mm} before its end: there it has no lever. Keep the travel on one side of it."
          : "On its way {way}{stands} {motion} comes to a dead point of {part} at {place} of its drive's travel, {shortBy angle} before its end: there it has no lever. Keep the travel on one side of it.",
        left,
        { travel },
        {},
        values,
      )
    case "jammed":
      return refuse(
        "jammed",
        "On its way {way}{stands} {motion} jams at {place} of its drive's travel: friction in {part} grows with the effort faster than the effort itself.",
        some(effort.shortBy),
        { travel },
        {},
        values,
      )
    case "slack": {
      // at the place where it begins nothing is lacking yet: the most that is, on the rest of the way
      let lacking = effort.shortBy
      for (const there of rest(one, travel)) if (ridePoint(one, there).trouble === "slack") lacking = Math.max(lacking, effort.shortBy)
      return refuse(
        "slack",
        "On its way {way}{stands} {motion} leaves a line slack at {place} of its drive's travel: nothing pulls {part} back against friction. Add a spring or a second cable.",
        some(lacking),
        { travel },
        {},
        values,
      )
    }
    case "no-supply": {
      const { model } = feed as Extract<typeof feed, { readonly model: unknown }>
      const bus = supply?.failed ?? 0
      const spec = model.converters[bus]
      const voltage = restVoltage(model, bus)
      const [low, high] = [spec?.minInputVoltage ?? 0, spec?.maxInputVoltage ?? 0]
      return refuse(
        "no-supply",
        "On its way {way}{stands} {motion} gets nothing: the converter of {bus} works from {low voltage} to {high voltage} and has {voltage voltage} at its input, less what wires and its own current take.",
        some(Math.max(low - voltage, voltage - high)),
        { travel, voltage, low, high },
        {},
        { ...values, bus: model.names[bus] as string },
      )
    }
    case "insufficient-power": {
      const worst = hardest(one, travel)
      const asked = motion.drives * ridePoint(one, worst).current
      const { current: available } = mostAt(one, worst)
      return refuse(
        "insufficient-power",
        "On its way {way}{stands} {motion} asks at {place} of its drive's travel for more than its source and wires can give beside all else: {asked current} at most on the rest of its way, of {available current}.",
        some(asked - available),
        { travel, asked, available },
        {},
        values,
      )
    }
    default: {
      const worst = hardest(one, travel)
      const { effort: needed } = ridePoint(one, worst)
      const { effort: available } = mostAt(one, worst)
      return refuse(
        "insufficient-effort",
        rod
          ? "On its way {way}{stands} {motion} stops at {place} of its drive's travel: a rod needs up to {needed force} from there on, and on this supply gives {available force}."
          : "On its way {way}{stands} {motion} stops at {place} of its drive's travel: a shaft needs up to {needed moment} from there on, and on this supply gives {available moment}.",
        some(needed - available),
        { travel, needed, available },
        {},
        values,
      )
    }
  }
}

/** A copy with one number put at a place. */
function put<T>(at: T, path: readonly string[], value: number): T {
  const [head, ...rest] = path as [string, ...string[]]
  const inside = (at as Record<string, unknown>)[head]
  const there = rest.length ? put(inside, rest, value) : value
  if (Array.isArray(at)) return at.map((item, i) => (i === Number(head) ? there : item)) as T
  return { ...at, [head]: there }
}

/** Values near those stated, by their place in the document, with which the motion passes: each alone, and tried. */
export function nearestOf<R extends RigSi>(
  members: Members,
  rig: R,
  index: number,
  { noSolution, at, values }: NoSolution<MoveRefusal>,
  passes: (changed: R) => boolean,
): Readonly<Record<string, number>> {
  const fields = rigFields(members)
  const { drive } = rig.motions[index] as RigSi["motions"][number]
  const works = (path: string, value: number): boolean => {
    const changed = put(rig, path.split("."), value)
    const { motion: _, ...document } = changed as R & { readonly motion?: unknown }
    return readInput(fields, document).ok && rigFaults(members, changed).length === 0 && passes(changed)
  }
  const found: Record<string, number> = {}
  const offer = (path: string, tries: readonly number[]) => {
    const value = tries.find((one) => works(path, one))
    if (value !== undefined) found[path] = value
  }
  const { travel = 0, needed = 0, available = 0 } = at
  // a rod's travel up to the stop; a hair less, so that it passes
  if (values.way === "out" && "stroke" in drive) offer(`motions.${index}.drive.stroke`, [travel * (1 - 1e-6), travel * 0.99])
  if (noSolution === "insufficient-effort" && available > 0) {
    const enough = Math.ceil((drive.count * needed) / available)
    offer(
      `motions.${index}.drive.count`,
      [enough, enough + 1, enough + 2, 2 * enough].filter((count) => count > drive.count),
    )
  }
  return found
}
