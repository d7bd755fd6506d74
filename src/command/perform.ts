// perform: the programme played in time.
import { formatQuantity } from "../quantity/index.js"
import { type EventType, type Perform, perform as play, type Rig } from "../rig/index.js"
import { columnsOf, type Desk, EXIT, looks, wrapped } from "./desk.js"

const s = (time: number | null) => (time === null ? "—" : formatQuantity("time", time))
const share = (part: number) => formatQuantity("ratio", part, "%")

/** What keeps a programme from going as it is written. */
const failures: readonly EventType[] = ["stops-short", "slack", "restarts", "overload", "switches-off", "collapses", "empty"]

/** Whether every step arrived in its time and nothing gave out. */
const went = ({ steps, events }: Perform) =>
  steps.every(({ duration, slot }) => duration !== null && (slot === null || duration <= slot)) &&
  !events.some(({ type }) => failures.includes(type))

function linesOf(
  desk: Desk,
  out: Perform & { readonly cautions: readonly { readonly severity: string; readonly message: string }[] },
): string[] {
  const steps = out.steps.map(({ motion, begin, from, to, duration, slot, reached, quasiStatic }) => [
    motion,
    s(begin),
    `${share(from)} to ${share(to)}`,
    duration === null ? `stays at ${share(reached)}` : s(duration),
    s(quasiStatic),
    s(slot),
  ])
  const events = out.events.map(({ type, sentence }) => {
    const said = wrapped(sentence, desk.columns, "    ")
    return failures.includes(type) ? `  ${looks(desk, "red", `✗ ${said}`)}` : `  ${said}`
  })
  return [
    went(out)
      ? "Every step arrives in its time, and nothing gives out."
      : looks(desk, "red", "The programme does not go as it is written."),
    "",
    ...columnsOf([["motion", "begins", "way", "takes", "without inertia", "time left for it"], ...steps]),
    "",
    "What happens",
    ...events,
    "",
    ...columnsOf([
      ...out.sources.map(({ name, peakCurrent }) => [name, "maximum current", formatQuantity("current", peakCurrent)]),
      ...out.buses.map(({ name, minVoltage, minTime }) => [
        name,
        "minimum voltage",
        `${formatQuantity("voltage", minVoltage)} at ${s(minTime)}`,
      ]),
    ]),
    "",
    ...out.cautions.filter((c) => c.severity === "warning").map((c) => wrapped(`warning: ${c.message}`, desk.columns, "")),
  ]
}

/** Plays the programme; 1 where it does not go as written, 3 where it cannot be followed. */
export function perform(desk: Desk, rig: Rig, { json }: { readonly json: boolean }): number {
  const outcome = play.attempt(rig)
  if (!outcome.ok) {
    if (json) desk.out(`${JSON.stringify({ name: rig.name, refused: outcome.error.toJSON() }, null, 2)}\n`)
    else desk.out(`${looks(desk, "red", wrapped(`${rig.name}: ${outcome.error.message.replace(/^perform: /, "")}`, desk.columns, "  "))}\n`)
    return EXIT.refused
  }
  if (json) desk.out(`${JSON.stringify(outcome.value)}\n`)
  else desk.out(`${[looks(desk, "bold", wrapped(rig.name, desk.columns, "")), "", ...linesOf(desk, outcome.value)].join("\n").trimEnd()}\n`)
  return went(outcome.value) ? EXIT.ok : EXIT.short
}
