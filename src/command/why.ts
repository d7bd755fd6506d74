// why: where the seconds of each motion go, and what to change on the rig.
import { type Remedies, remedies } from "../advice/index.js"
import { formatQuantity } from "../quantity/index.js"
import { type Move, move, type Rig } from "../rig/index.js"
import { BadInput, columnsOf, type Desk, EXIT, looks, wrapped } from "./desk.js"

const s = (time: number) => formatQuantity("time", time)
type Way = Move["out"]

function wayLines(desk: Desk, name: string, way: Way, wanted: string): string[] {
  const rows = way.waterfall.map(({ label, duration, saved }, i) => {
    const added = duration - (way.waterfall[i - 1]?.duration ?? 0)
    return [label, i ? s(added) : "", s(duration), saved !== null && saved > 0.005 * way.duration ? s(saved) : "—"]
  })
  return [
    looks(desk, "bold", `${name}: ${s(way.duration)}${wanted}`),
    ...columnsOf([["counted one after the other", "adds", "time so far", "saved by mending it alone"], ...rows], "  ", 1),
    "",
  ]
}

/** Changes told at most; the rest is in the JSON. */
const TOLD = 5

function changeLines(desk: Desk, { remedies: list, compromises, unmended }: Remedies): string[] {
  const items = (title: string, texts: readonly string[]) => {
    if (!texts.length) return []
    const more = texts.length > TOLD ? [`  and ${texts.length - TOLD} more with --json`] : []
    return [looks(desk, "bold", title), ...texts.slice(0, TOLD).map((text) => `  ${wrapped(text, desk.columns, "    ")}`), ...more, ""]
  }
  return [
    ...items(
      "What to change, the first thing first; each alone, tried on the whole rig by calculation",
      list.map(({ text }) => text),
    ),
    ...items(
      "What else would do, at a cost",
      compromises.map(({ text }) => text),
    ),
    ...items(
      "What no change that was tried mends",
      unmended.map(({ title, subject, text }) => `${title} (${subject}): ${text}`),
    ),
  ]
}

/** Tells where the seconds go and what to change; 3 where something stops a motion. */
export function why(desk: Desk, rig: Rig, { json, motion }: { readonly json: boolean; readonly motion: string | undefined }): number {
  const names = rig.motions.map((one) => one.name)
  if (motion !== undefined && !names.includes(motion))
    throw new BadInput([`--motion: expected one of ${names.map((n) => `"${n}"`).join(", ")}, received "${motion}"`])
  const asked = rig.motions.filter((one) => motion === undefined || one.name === motion)
  const told = asked.map((one) => ({ motion: one, outcome: move.attempt({ ...rig, motion: one.name }) }))
  const code = told.every(({ outcome }) => outcome.ok) ? EXIT.ok : EXIT.refused
  const found = remedies(rig)
  if (json) {
    const data = told.map(({ motion: { name }, outcome }) => ({
      name,
      ...(outcome.ok ? { move: outcome.value } : { refused: outcome.error.toJSON() }),
    }))
    const { remedies: list, compromises, unmended, complete } = found
    const changes = { remedies: list, compromises, unmended, complete }
    desk.out(`${JSON.stringify({ name: rig.name, motions: data, ...changes }, null, 2)}\n`)
    return code
  }
  const lines = told.flatMap(({ motion: { name, wanted }, outcome }) => {
    if (!outcome.ok)
      return [looks(desk, "red", `${name}: stopped`), `  ${wrapped(outcome.error.message.replace(/^move: /, ""), desk.columns, "  ")}`, ""]
    const { out, back } = outcome.value
    const limit = (time: unknown) => (time === undefined || time === null ? "" : `, wanted at most ${String(time)}`)
    return [
      ...wayLines(desk, `${name}, out`, out, limit(wanted?.duration)),
      ...wayLines(desk, `${name}, back`, back, limit(wanted?.backDuration ?? wanted?.duration)),
      ...outcome.value.cautions
        .filter((c) => c.severity === "warning")
        .map((c) => `  ${wrapped(`warning: ${c.message}`, desk.columns, "  ")}`),
      "",
    ]
  })
  desk.out(
    `${[looks(desk, "bold", wrapped(rig.name, desk.columns, "")), "", ...lines, ...changeLines(desk, found)].join("\n").trimEnd()}\n`,
  )
  return code
}
