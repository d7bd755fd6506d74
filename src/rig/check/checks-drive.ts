// Checks of what a drive and its transmission bear: the duty that heats it, the force that breaks an element, the speed that the model of a move allows.
import { dutyCycle } from "../../drive/index.js"
import { formatNumber, formatQuantity, type Kind } from "../../quantity/index.js"
import { elementLoads } from "../run/element-loads.js"
import { currentFor, effortAt, effortState, type MotionModel } from "../run/motion-model.js"
import { MOTION } from "../sources.js"
import type { Transmission } from "../transmissions/transmission.js"
import type { RigSi } from "../whole/faults.js"
import { asked, type Found, lacking, type RigCheck } from "./check.js"
import { conditionOf, onMotions, onSlowMotions, wayWord, worstBy } from "./checks-motion.js"
import { type Judged, posturesOf, type Run } from "./conditions.js"
import type { Measured, NotMade } from "./finding.js"
import { RIDDEN } from "./paths.js"
import { sheet } from "./power-tree.js"
import { INERTIA_SHARE, ofPostures, quickestShare } from "./slow.js"

type MotionSi = RigSi["motions"][number]

/** The longest time out and back under one condition. */
function longestCycle(runs: readonly Run[]): { readonly duration: number; readonly condition: string } {
  let [duration, condition] = [0, ""]
  for (const name of new Set(runs.map((run) => run.condition))) {
    const both = runs.filter((run) => run.condition === name).reduce((sum, run) => sum + (run.quick?.duration ?? 0), 0)
    if (both > duration) [duration, condition] = [both, name]
  }
  return { duration, condition }
}

/** Shortest run, s, and shares of the rated current between which the model of heating answers. */
const [SHORTEST, LEAST_SHARE, MOST_SHARE] = [0.1, 0.01, 5]

function duty(rig: Judged, motion: MotionModel, i: number, runs: readonly Run[]): Measured | NotMade {
  const path = `motions[${i}]`
  const { duty: rated } = rig.rig.motions[i] as MotionSi
  if (!rated) return lacking(`${path}.duty`, `Nothing says how long and how often the drive of ${motion.name} may run.`)
  const { ratedEffort } = motion.drive
  if (ratedEffort === null)
    return lacking(`${path}.drive`, `${motion.name}'s drive states no effort that it may give for long: its rated current is not known.`)
  const { duration, condition } = longestCycle(runs)
  const { hours, moves } = rig.rig.day
  const spread = hours !== null && moves !== null && moves > 0 ? hours / moves - duration : null
  if (spread === null && rated.restDuration === null)
    return lacking(
      moves === 0 ? `${path}.duty.restDuration` : `day.${moves === null ? "moves" : "hours"}`,
      `Nothing says how ${motion.name} rests: neither a rest between its moves nor the day's ${moves === null ? "moves" : "hours"}.`,
    )
  const when = `out and back, ${condition}`
  const rests = Math.min(spread ?? Number.POSITIVE_INFINITY, rated.restDuration ?? Number.POSITIVE_INFINITY)
  const rule = (sentence: string): Measured => ({
    relation: "rule",
    kind: "number",
    value: null,
    limit: null,
    permitted: false,
    sentence,
    condition: when,
    source: sheet("drive"),
  })
  if (rests < 0)
    return rule(
      `${moves} times out and back of ${formatQuantity("time", duration)} each take longer than the day's ${formatQuantity("time", hours as number)}: there is no time to rest.`,
    )
  const share = worstBy(runs, (run) => run.quick?.peakCurrent ?? 0).quick?.peakCurrent ?? Number.NaN
  const times = share / currentFor(motion.drive, ratedEffort)
  if (times > MOST_SHARE)
    return rule(`The drive of ${motion.name} draws ${formatNumber(times)} times its rated current: no duty is rated for that.`)
  const input = {
    ...rated,
    runDuration: Math.max(duration, SHORTEST),
    restDuration: rests,
    currentUtilisation: Math.max(times, LEAST_SHARE),
  }
  return asked(dutyCycle, input, when, (out) => {
    const limit = rated.temperatureLimit
    const run = `${formatQuantity("time", duration)} out and back, then ${formatQuantity("time", rests)} of rest, at up to ${formatNumber(times)} times its rated current`
    // so few moves in the whole day that the limit is never reached, though in the long run it would be
    const few = out.runsBeforeRest !== null && moves !== null && moves > 0 && moves <= out.runsBeforeRest
    const how = out.sustained
      ? `in the long run it reaches ${formatQuantity("temperature", out.peakTemperature)}`
      : out.runsBeforeRest === 0
        ? `the first run is too long: at most ${formatQuantity("time", out.maxRunDuration)} in one go`
        : `after ${out.runsBeforeRest} in a row it must rest${few ? `, and the day asks for ${moves}` : ""}`
    return {
      relation: "at-most",
      kind: "temperature",
      value: few ? limit : out.peakTemperature,
      limit,
      reference: rated.ambientTemperature,
      permitted: out.sustained || few,
      sentence: `The drive of ${motion.name} runs ${run}: ${how}.`,
      condition: when,
      source: sheet("drive"),
    }
  })
}

/** Field by which the document states the strength of an element. */
const strengthField: Readonly<Record<string, string>> = {
  gear: "maxTorque",
  worm: "maxTorque",
  screw: "maxForce",
  crank: "maxForce",
  lever: "maxForce",
  chain: "breakingForce",
  drum: "lineStrength",
}

/** Places at which a way is looked at, and each piece of the table of its effort. */
const LOOKS = 40
const PIECE_LOOKS = 8

/** Places at which a run is looked at: evenly spread, and close together where its effort bends. */
const placesOf = ({ ride: { motion, curve } }: Run): readonly number[] => [
  ...Array.from({ length: LOOKS + 1 }, (_, k) => (motion.span * k) / LOOKS),
  ...(curve?.table?.pieces ?? []).flatMap(({ a, b }) => Array.from({ length: PIECE_LOOKS + 1 }, (_, k) => a + ((b - a) * k) / PIECE_LOOKS)),
]

interface Carried {
  readonly element: Transmission
  readonly path: string
  readonly type: string
  load: number
  run: Run | null
}

/** Elements of a motion, each with the most that it carries over the runs. */
function carriedBy(motion: MotionModel, si: MotionSi, index: number, runs: readonly Run[]): readonly Carried[] {
  const path = `motions[${index}]`
  const entry = (element: Transmission, at: string, type: string): Carried => ({ element, path: at, type, load: 0, run: null })
  const shared = motion.chain.map((element, k) => entry(element, `${path}.transmission[${k}]`, si.transmission[k]?.type ?? ""))
  const own = si.mechanisms.map((one, m) =>
    one.transmission.map((said, k) => {
      const part = motion.parts.find((p) => p.name === one.name) as MotionModel["parts"][number]
      return entry(part.own[k] as Transmission, `${path}.mechanisms[${m}].transmission[${k}]`, said.type)
    }),
  )
  const names = si.mechanisms.map((one) => one.name)
  const state = effortState()
  // what they carry hangs on the travel, the way and the posture alone, not on the supply
  for (const run of ofPostures(runs))
    for (const travel of placesOf(run)) {
      effortAt(motion, travel, run.way, run.ride.around, state)
      if (state.trouble !== "none") continue
      elementLoads(motion, travel, run.way, (part, i, effort) => {
        const list = part < 0 ? shared : own[names.indexOf(motion.parts[part]?.name ?? "")]
        const one = list?.[i]
        if (one && Math.abs(effort) > one.load) {
          one.load = Math.abs(effort)
          one.run = run
        }
      })
    }
  return [...shared, ...own.flat()]
}

function strength(rig: Judged, motion: MotionModel, i: number, runs: readonly Run[]): Measured | NotMade | null {
  const all = carriedBy(motion, rig.rig.motions[i] as MotionSi, i, runs)
  if (!all.length) return null
  const unknown = all.find(({ element }) => element.strength === null)
  // where one that is known fails already, that is told first
  const shares = all.flatMap((one) =>
    one.element.strength === null ? [] : [{ ...one, allowed: one.element.strength / (one.element.safetyFactor ?? 1) }],
  )
  const worst = shares.reduce<(typeof shares)[number] | null>((a, b) => (a && a.load / a.allowed >= b.load / b.allowed ? a : b), null)
  if (unknown && !(worst && worst.load > worst.allowed)) {
    const field = strengthField[unknown.type]
    return lacking(
      field ? `${unknown.path}.${field}` : unknown.path,
      `Nothing says what the ${unknown.type} of ${motion.name} bears; it carries up to ${formatQuantity(kindOf(unknown.element), unknown.load)}.`,
    )
  }
  if (!worst) return null
  const kind = kindOf(worst.element)
  const stands = posturesOf(rig.rig).find(({ name }) => name && worst.run?.condition.startsWith(name))?.name
  const factor = worst.element.safetyFactor ?? 1
  const bears =
    factor > 1
      ? `it breaks at ${formatQuantity(kind, worst.element.strength as number)}, and ${formatNumber(factor)} times its load are asked for`
      : `it bears ${formatQuantity(kind, worst.allowed)}`
  return {
    relation: "at-most",
    kind,
    value: worst.load,
    limit: worst.allowed,
    sentence: `The ${worst.type} of ${motion.name} carries up to ${formatQuantity(kind, worst.load)}; ${bears}.`,
    condition: worst.run ? `${wayWord(worst.run)}, ${stands ? `${stands}, ` : ""}whatever the supply` : "over the whole travel",
    source: factor > 1 ? { title: "published safety factors, compared in alula/drive", verified: "practice" } : sheet("element"),
  }
}

const kindOf = (element: Transmission): Kind => (element.gives === "length" ? "force" : "moment")

function inertia(motion: MotionModel, runs: readonly Run[]): Measured | NotMade {
  const { run, share } = quickestShare(motion, runs)
  if (share > INERTIA_SHARE)
    return {
      verdict: "cannot be judged",
      missing: null,
      because: null,
      sentence: `At its fastest the motion of ${motion.name} has ${formatQuantity("ratio", share, "%")} of the energy moved in it, more than ${formatQuantity("ratio", INERTIA_SHARE, "%")}: its times, currents and efforts are found without that and are no longer good. Starting and stopping take longer and more; let it move more slowly, or try it with a stop-watch.`,
    }
  return {
    relation: "at-most",
    kind: "ratio",
    value: share,
    limit: INERTIA_SHARE,
    sentence: `At its fastest the motion of ${motion.name} has ${formatQuantity("ratio", share, "%")} of the energy moved in it: its times are good without counting it.${motion.drive.inertia === 0 ? " The drive's own inertia is not stated and not counted." : ""}`,
    condition: conditionOf(run),
    source: MOTION,
  }
}

/** Checks of duty, strength and inertia. */
export const driveChecks: readonly RigCheck[] = [
  {
    id: "duty",
    title: "duty of the drive",
    severity: "function",
    reads: [...RIDDEN, "motions[].duty", "day.hours", "day.moves"],
    worsens: {
      "day.moves": "up",
      "day.hours": "down",
      "motions[].duty.ambientTemperature": "up",
      "motions[].duty.ratedDuty": "down",
      "motions[].duty.restDuration": "down",
    },
    find: (rig) => onSlowMotions(rig, (motion, i, runs) => duty(rig, motion, i, runs)),
  },
  {
    id: "strength",
    title: "strength of the transmission",
    severity: "safety",
    reads: [...RIDDEN],
    worsens: { "motions[].transmission[].maxTorque": "down", "motions[].transmission[].lineStrength": "down" },
    find: (rig): readonly Found[] => onSlowMotions(rig, (motion, i, runs) => strength(rig, motion, i, runs)),
  },
  {
    id: "inertia",
    title: "time good without inertia",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) => onMotions(rig, (motion, _, runs) => inertia(motion, runs)),
  },
]
