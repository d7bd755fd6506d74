// What a stretch between two changes is watched for: places, currents, voltages, times.
import { guarded } from "./feed.js"
import { type Actor, breaks, fed, type Play, SERVO_RESTS, travelOf } from "./play.js"

/** A servo counts as arrived within this share of its travel. */
const SERVO_ARRIVES = 0.02

/**
 * By how much a voltage or current lies beyond its limit where that is met, a share of it: a crossing is located at the limit
 * itself, where nothing is below it yet. What settles a supply is surer than this.
 */
const BEYOND = 1e-11
/** A motion has come to rest where it goes back by this share of its speed without load: one that turns round as it is let go does too. */
const TURNED = 1e-12

/** A place ahead of a moving motion, and what happens there. */
export interface Place {
  readonly at: number
  readonly what: "end" | "target" | "kink"
}

/** The nearest place ahead of a motion at which something happens; `sent`: it has not arrived where it was sent. */
export function placeAhead({ mode, machine, low, high, target, on, kinks }: Actor, x: number, sent: boolean): Place {
  const { span, drive } = machine.motion
  let [at, what]: [number, Place["what"]] = [mode === 1 ? high : low, "end"]
  const nearer = (place: number, kind: Place["what"]) => {
    if (mode * (place - x) > 1e-12 * span && mode * (at - place) > 0) [at, what] = [place, kind]
  }
  for (const kink of kinks) nearer(kink, "kink")
  if (on && sent) nearer(drive.control === "position-servo" ? target - mode * SERVO_ARRIVES * span : target, "target")
  return { at, what }
}

/** Next time at which something is to be done, no later than `latest`. */
export function nextTime({ offUntil, over, feeder, watched, actors, stage }: Play, t: number, latest: number): number {
  let next = latest
  const at = (time: number) => {
    if (time > t) next = Math.min(next, time)
  }
  for (const until of offUntil) if (until >= 0) at(until)
  over.forEach((since, g) => {
    if (since >= 0) at(since + (feeder?.guards[g]?.onTime ?? 0))
  })
  for (const one of watched) if (one.until >= 0) at(one.until)
  for (const actor of actors) if (actor.on && actor.machine.motion.drive.control === "ramp") at(actor.since + stage.rampTime)
  const { gust } = stage
  if (gust) {
    at(gust.at)
    at(gust.at + gust.duration)
  }
  return next
}

/** No fewer steps than this follow the whole way of a motion. */
const LOOKS = 30

/** Longest step at a time: steps of the wearer and a gust are not stepped over, nor is half a way. */
export function longestStep({ actors, stage: { steps, gust } }: Play, t: number): number {
  const shaken = steps ? 1 / (10 * steps.stepRate) : Number.POSITIVE_INFINITY
  const blown = gust && t >= gust.at && t < gust.at + gust.duration ? gust.duration / 10 : Number.POSITIVE_INFINITY
  // a stiff step may span half a way, and what is summed along it is not watched
  const along = actors.map(({ mode, machine, motor }) =>
    mode === 0 || motor.duty === null ? Number.POSITIVE_INFINITY : machine.motion.span / machine.fastest / LOOKS,
  )
  return Math.min(shaken, blown, ...along)
}

/** Voltage of a bus at the state looked at last. */
export function voltsAt({ feeder }: Play, bus: number): number {
  if (!feeder) return Number.POSITIVE_INFINITY
  return feeder.dark[bus] === 1 ? 0 : (feeder.state.volts[bus] as number)
}

/**
 * Functions that fall through zero where something changes: two for each motion (it comes to rest, it reaches its place; or it breaks
 * loose either way), then each guard, each controller, what holds at its limit, each source as it empties, and a supply that finds no state.
 */
export function eventsOf(
  play: Play,
  places: readonly Place[],
): { readonly count: number; readonly values: (t: number, y: Float64Array, g: Float64Array) => void } {
  const { actors, feeder, over } = play
  const watched = play.watched.filter((one) => one.until < 0)
  const guards = feeder?.guards ?? []
  const holders = feeder?.holders ?? []
  const cells = feeder?.sources.length ?? 0
  const count = 2 * actors.length + guards.length + watched.length + holders.length + cells + 1
  const looks = actors.some((a) => a.mode === 0) || guards.length > 0 || watched.length > 0 || (feeder?.model.bends ?? false)
  const values = (t: number, y: Float64Array, g: Float64Array) => {
    g.fill(1)
    const failed = looks ? fed(play, t, y).failed : -1
    actors.forEach((actor, i) => {
      const { mode, machine } = actor
      if (mode === 0) {
        g[2 * i] = -breaks(play, actor, t, y, 1)
        g[2 * i + 1] = -breaks(play, actor, t, y, -1)
        return
      }
      g[2 * i] = mode * (y[2 * i + 1] as number) - (machine.motion.drive.control === "position-servo" ? SERVO_RESTS : -TURNED)
      g[2 * i + 1] = (mode * ((places[i] as Place).at - travelOf(y, actor))) / machine.motion.span
    })
    if (failed >= 0) g[count - 1] = -1
    for (let s = 0; s < cells; s++) g[count - 2 - holders.length - s] = y[2 * actors.length + s] as number
    if (!feeder || failed >= 0) return
    guards.forEach((guard, k) => {
      const share = (guard.limit - guarded(feeder, guard)) / guard.limit
      if (guard.action !== "hold") g[2 * actors.length + k] = BEYOND + ((over[k] as number) >= 0 ? -share : share)
    })
    watched.forEach((one, k) => {
      g[2 * actors.length + guards.length + k] = BEYOND + (voltsAt(play, one.bus) - one.least) / one.least
    })
    holders.forEach(({ bus }, k) => {
      g[count - 2 - k] = feeder.held[bus] === play.held[bus] ? 1 : -1
    })
  }
  return { count, values }
}
