// Along which fields what falls short keeps falling short, for any rig: what lets the best corner of a block speak for all of it.
import { checks } from "../../rig/check/assess.js"
import type { RigCheck } from "../../rig/check/check.js"
import type { Plan } from "./plan.js"

type Ways = RigCheck["worsens"]

/**
 * Fields that take voltage from whatever runs: a load's effort sets its current, so more resistance on the way to it, or more drawn
 * beside it, only ever lowers what it gets, and it runs slower or not at all.
 */
export const starves: Ways = {
  "power.sources[].cellResistance": "up",
  "power.sources[].extraResistance": "up",
  "power.sources[].resistance": "up",
  "power.sources[].parallel": "down",
  "power.buses[].switchResistance": "up",
  "power.buses[].fuseResistance": "up",
  "power.buses[].run.length": "up",
  "power.buses[].run.awg": "up",
  "power.buses[].run.area": "down",
  "power.buses[].run.contacts": "up",
  "power.buses[].run.contactResistance": "up",
}

/**
 * Whether nothing draws less where it gets less: a load that is a resistance does, and where its source or converter switches off above a
 * limit, more resistance on the way keeps it on.
 */
export const drawsSteadily = ({ rig, axes }: Plan): boolean =>
  !(rig.power?.loads ?? []).some(({ type }) => type === "resistive") &&
  !axes.some(({ keys }) => keys.some(([first, second]) => first === "power" && (second === undefined || second === "loads")))

/** Checks that ask whether what runs still gets enough. */
export const starved: readonly string[] = ["passes", "duration-out", "duration-back", "supply-carries", "drop", "controller-voltage"]

/** What falls short keeps falling short along these fields: what a check itself declares, and what holds for falling short alone. */
export const shortensOf = ({ id, worsens }: RigCheck): Ways => ({ ...(starved.includes(id) ? starves : {}), ...worsens })

/**
 * Checks of what a motion asks, whatever feeds it: judged with its drives on their rated voltage. What falls short there falls short
 * on any supply that lets the motion pass at all.
 */
export const whateverFeeds: readonly RigCheck[] = checks.filter(({ id }) =>
  ["swing", "span", "rated-effort", "strength", "pin"].includes(id),
)
