// The conditions a rig is judged under, each motion's rides under all of them, and the supply with everything drawing at once.

import { standsOf } from "../run/carrying.js"
import { currentFor, effortAt, effortState, type MotionModel, type Stance, type Way } from "../run/motion-model.js"
import type { QuickMove } from "../run/quick.js"
import { QUICK_LOOKS, quickRide } from "../run/quick.js"
import type { Ride, Stop } from "../run/ride.js"
import { assembled, feedOf, type KeptMotions, leaning, programmed, rideOf, type Situation } from "../run/situation.js"
import { settle } from "../supply/settle.js"
import { type SupplyModel, type SupplyState, supplyModel, supplyState } from "../supply/tree.js"
import type { RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"

/** Name of the condition in which cells are full. */
export const FULL = "fully charged"

/** Charge and temperature of the cells, and how the wearer leans. */
export interface Condition {
  readonly name: string
  readonly rig: RigSi
}

/** How the wearer leans, and where the motions stand that carry others or are carried. */
export interface Standing {
  readonly name: string
  readonly posture: RigSi["posture"] & Stance
}

/** Every way the wearer stands, with carrying and carried motions at either end of their travel. */
export function posturesOf(rig: RigSi): readonly Standing[] {
  const stands = standsOf(rig)
  return leaningsOf(rig).flatMap(({ name, posture }) =>
    stands.map((one) => ({
      name: [name, one.name && `otherwise ${one.name}`].filter(Boolean).join(", "),
      posture: { ...posture, stand: one.stand },
    })),
  )
}

/** Leaning as stated, upright, and leaning to the other side. */
function leaningsOf({ posture }: RigSi): readonly { readonly name: string; readonly posture: RigSi["posture"] }[] {
  const { leanForward, leanLeft } = posture
  if (leanForward === 0 && leanLeft === 0) return [{ name: "", posture }]
  return [
    { name: "leaning as stated", posture },
    { name: "upright", posture: { leanForward: 0, leanLeft: 0 } },
    ...(leanLeft === 0 ? [] : [{ name: "leaning to the other side", posture: { leanForward, leanLeft: -leanLeft } }]),
  ]
}

/** A rig's cells: as stated, full, and down to its reserve at the coldest temperature stated. */
function chargesOf(rig: RigSi): readonly Condition[] {
  const { power, day } = rig
  const cells = power?.sources.some((s) => s.type === "cells") ?? false
  if (!power || !cells) return [{ name: "as stated", rig }]
  const at = (name: string, stateOfCharge: number | null, temperature: number | null): Condition => ({
    name,
    rig: {
      ...rig,
      power: {
        ...power,
        sources: power.sources.map((s) =>
          s.type === "cells"
            ? { ...s, stateOfCharge: stateOfCharge ?? s.stateOfCharge, temperature: Math.min(s.temperature, temperature ?? s.temperature) }
            : s,
        ),
      },
    },
  })
  return [
    at("as stated", null, null),
    at(FULL, 1, null),
    at(day.coldest === null ? "down to the reserve" : "down to the reserve, at the coldest", day.reserve, day.coldest),
  ]
}

/** One motion on one way under one condition. */
export interface Run {
  readonly condition: string
  readonly way: Way
  readonly ride: Ride
  /** What stops it, or null. */
  readonly stop: Stop | null
  readonly quick: QuickMove | null
}

/** The supply under one condition, everything that may run at once drawing its most. */
export interface Supplied {
  readonly condition: string
  readonly power: NonNullable<RigSi["power"]>
  readonly model: SupplyModel
  readonly state: SupplyState
}

/** A rig under all its conditions. */
export interface Judged {
  readonly rig: RigSi
  readonly motions: readonly MotionModel[]
  readonly situations: readonly Situation[]
  readonly conditions: readonly Condition[]
  /** Runs of each motion, both ways under every condition. */
  readonly runs: readonly (readonly Run[])[]
  /** The supply with everything that may run at once drawing its most, under every condition; null without one. */
  readonly supplies: readonly Supplied[] | null
  /** The supply while nothing moves, as stated; null without one. */
  readonly resting: SupplyState | null
}

/** Maximum current of one drive, either way; one that is stopped on a way still draws up to where it stops. */
function mostCurrent(runs: readonly Run[], motion: MotionModel): number {
  const state = effortState()
  let most = motion.drive.standbyCurrent
  for (const { quick, way, ride: one } of runs) {
    if (quick) {
      most = Math.max(most, quick.peakCurrent)
      continue
    }
    for (let i = 0; i <= 40; i++) {
      effortAt(motion, (motion.span * i) / 40, way, one.around, state)
      if (state.trouble === "none") most = Math.max(most, currentFor(motion.drive, state.effort))
    }
  }
  return most
}

/** Calls once, when first asked. */
function once<T>(make: () => T): () => T {
  let kept: { readonly value: T } | null = null
  return () => {
    kept ??= { value: make() }
    return kept.value
  }
}

/** Every posture with every charge, and the rig put together under each. */
function asked(whole: Pick<Situation, "rig" | "motions">, kept: KeptMotions | undefined) {
  const { rig } = whole
  return posturesOf(rig).flatMap(({ name: stands, posture }) => {
    // charge and cold change the supply alone: what the motions ask is the same under all of them
    const body = leaning(whole, posture, QUICK_LOOKS, kept?.curves)
    return chargesOf(rig).map((charge) => {
      const condition: Condition = { name: stands ? `${stands}, ${charge.name}` : charge.name, rig: { ...charge.rig, posture } }
      return { condition, situation: programmed({ ...body, rig: condition.rig }) }
    })
  })
}

function supplied({ rig, motions, conditions, situations, runs }: Judged): readonly Supplied[] | null {
  if (!rig.power) return null
  return conditions.flatMap(({ name, rig: at }, c) => {
    const power = at.power as NonNullable<RigSi["power"]>
    const model = supplyModel(power)
    const draws = motions.map((motion, i) =>
      mostCurrent(
        (runs[i] as readonly Run[]).filter((run) => run.condition === name),
        motion,
      ),
    )
    return (situations[c] as Situation).together.map((set): Supplied => {
      const drawn = new Float64Array(model.names.length)
      motions.forEach((motion, i) => {
        const bus = model.names.indexOf(rig.motions[i]?.bus ?? "")
        // what does not run now stands on its bus
        const each = set.includes(i) ? (draws[i] as number) : motion.drive.standbyCurrent
        if (bus >= 0) drawn[bus] = (drawn[bus] as number) + motion.drives * each
      })
      const state = supplyState(model)
      settle(model, drawn, state)
      return { condition: name, power, model, state }
    })
  })
}

/** Puts a rig under all its conditions; each part is worked out when a check first asks for it, motions once for all rigs that share them. */
export function judged(members: Members, rig: RigSi, kept?: KeptMotions): Judged {
  const whole = once(() => assembled(members, rig, kept))
  const all = once(() => asked(whole(), kept))
  const situations = once(() => all().map((one) => one.situation))
  const conditions = once(() => all().map((one) => one.condition))
  const runs = once(() =>
    whole().motions.map((_, i) =>
      situations().flatMap((at, c) =>
        ([1, -1] as const).map((way): Run => {
          const one = rideOf(at, i, way, feedOf(at, i))
          return { condition: (conditions()[c] as Condition).name, way, ride: one, ...quickRide(one) }
        }),
      ),
    ),
  )
  const supplies = once(() => supplied(at))
  const rests = once(() => resting(rig, whole().motions))
  const at: Judged = {
    rig,
    get motions() {
      return whole().motions
    },
    get situations() {
      return situations()
    },
    get conditions() {
      return conditions()
    },
    get runs() {
      return runs()
    },
    get supplies() {
      return supplies()
    },
    get resting() {
      return rests()
    },
  }
  return at
}

/** The supply while nothing moves: drives draw what they draw standing still. */
function resting(rig: RigSi, motions: readonly MotionModel[]): SupplyState | null {
  if (!rig.power) return null
  const model = supplyModel(rig.power)
  const drawn = new Float64Array(model.names.length)
  motions.forEach((motion, i) => {
    const bus = model.names.indexOf(rig.motions[i]?.bus ?? "")
    if (bus >= 0) drawn[bus] = (drawn[bus] as number) + motion.drives * motion.drive.standbyCurrent
  })
  const state = supplyState(model)
  settle(model, drawn, state)
  return state
}
