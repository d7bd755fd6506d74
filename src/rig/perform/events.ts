// What happened, in words.
import { formatQuantity } from "../../quantity/index.js"
import type { Happening, Ran } from "./happenings.js"
import type { Play } from "./play.js"
import type { PerformEvent, StageSi } from "./types.js"

const at = (time: number) => `At ${formatQuantity("time", time, "s")}`
const share = (place: number) => formatQuantity("ratio", place, "%")
const volts = (voltage: number) => formatQuantity("voltage", voltage)

function sentence(h: Happening, stage: StageSi): string {
  const { subject, place = 0 } = h
  switch (h.type) {
    case "starts":
      return `${at(h.time)} ${subject} moves off from ${share(place)} of its way.`
    case "arrives":
      return `${at(h.time)} ${subject} arrives at ${share(place)} of its way.`
    case "strikes":
      return `${at(h.time)} ${subject} strikes its stop at ${formatQuantity("speed", h.speed ?? 0)} (${formatQuantity("energy", h.energy ?? 0)}).`
    case "stops-short":
      return `${at(h.time)} ${subject} stops at ${share(place)} of its way.`
    case "slips":
      return `${at(h.time)} ${subject} slips without power, from ${share(place)} of its way.`
    case "slack":
      return `${at(h.time)} a line of ${subject} goes slack: it is calculated as if it still followed its drive.`
    case "restarts":
      return `${at(h.time)} the bus of ${subject} falls to ${volts(h.voltage ?? 0)}, below ${volts(h.least ?? 0)}: ${subject} restarts and all that moves on ${h.source} stops for ${formatQuantity("time", stage.restartTime, "s")}.`
    case "works-again":
      return `${at(h.time)} ${subject} works again.`
    case "overload":
      return `${at(h.time)} ${subject} has to give ${formatQuantity("current", h.current ?? 0)}, more than its limit.`
    case "limited":
      return `${at(h.time)} ${subject} is at its limit: it gives ${formatQuantity("current", h.current ?? 0)} and no more, and its voltage sinks to ${volts(h.voltage ?? 0)}.`
    case "switches-off":
      return `${at(h.time)} ${subject} switches off${h.until === Number.POSITIVE_INFINITY ? " and stays off" : ""}.`
    case "collapses":
      return `${at(h.time)} the voltage of ${subject} collapses: it is asked for more than its source and wires can give, and switches off.`
    case "tries-again":
      return `${at(h.time)} ${subject} has power again.`
    default:
      return `${at(h.time)} ${subject} is empty and gives nothing more.`
  }
}

/** Every event of a run with its sentence. */
export function sentences(play: Play, ran: Ran, stage: StageSi): PerformEvent[] {
  const slack = ran.record.slack.flatMap(({ time }, i): Happening[] =>
    time < 0 ? [] : [{ time, type: "slack", subject: play.actors[i]?.machine.motion.name ?? "" }],
  )
  return [...ran.happenings, ...slack]
    .sort((a, b) => a.time - b.time)
    .map((h) => ({
      time: h.time,
      type: h.type,
      subject: h.subject,
      sentence: sentence(h, stage),
      speed: h.speed ?? null,
      energy: h.energy ?? null,
      voltage: h.voltage ?? null,
      current: h.current ?? null,
      place: h.place ?? null,
    }))
}
