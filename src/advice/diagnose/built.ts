// A rig as it may really have been built: its power tree and its motions, each open to what can be wrong with it.
import { drives } from "../../rig/drives/index.js"
import { mechanisms } from "../../rig/mechanisms/index.js"
import { emptyState, type Mechanism, type MechanismPose, type MechanismState } from "../../rig/mechanisms/mechanism.js"
import { type MotionModel, motionModel, type Surroundings, standing } from "../../rig/run/motion-model.js"
import { transmissions } from "../../rig/transmissions/index.js"
import { buildMotion, type RigSi } from "../../rig/whole/faults.js"
import type { Members } from "../../rig/whole/fields.js"

export const members: Members = { drives, transmissions, mechanisms } as unknown as Members

export type Power = NonNullable<RigSi["power"]>
export type MotionSi = RigSi["motions"][number]

/** What is heard of a motion. */
export type Sound = "gritty" | "clicking" | "squeaking" | "humming"

/** A motion as built. */
export interface Moving {
  readonly si: MotionSi
  readonly model: MotionModel
  /** The same with what is wrong with one side of a pair wrong with both; null where both are alike. */
  readonly weak: MotionModel | null
  /** Share of its way at which something stops it for good; 1 where nothing does. */
  readonly blocked: number
  /** Travel of its drive at the start of a way that moves nothing, m or rad: slack and play. */
  readonly lost: number
  /** Extra effort at its drive in the cold, as a share of what stalls it. */
  readonly coldDrag: number
  readonly wrongWay: "none" | "all" | "one-of-a-pair"
  /** Whether no current reaches its drives, though their bus has a voltage. */
  readonly cut: boolean
  readonly sounds: readonly Sound[]
}

/** A rig as built. */
export interface Built {
  readonly power: Power | null
  readonly motions: readonly Moving[]
  readonly around: Surroundings
  /** Names of sources that give nothing and buses that are cut off. */
  readonly dead: readonly string[]
  /** Share of the resistance of a bus's run that sits in one contact rather than all along the wire; by bus. */
  readonly contacts: Readonly<Record<string, number>>
}

const moving = (si: MotionSi, model: MotionModel): Moving => ({
  si,
  model,
  weak: null,
  blocked: 1,
  lost: 0,
  coldDrag: 0,
  wrongWay: "none",
  cut: false,
  sounds: [],
})

/** Places that a mechanism remembers: more than a diagnosis looks at, few enough to hold. */
const REMEMBERED = 2000

/** The same mechanism, each place worked out once: hundreds of faults are tried on one geometry. */
function remembering(mechanism: Mechanism): Mechanism {
  const states = new Map<number, MechanismState>()
  const poses = new Map<number, MechanismPose>()
  return {
    ...mechanism,
    at(q, state) {
      let found = states.get(q)
      if (!found) {
        found = emptyState()
        mechanism.at(q, found)
        if (states.size < REMEMBERED) states.set(q, found)
      }
      Object.assign(state, found)
    },
    pose(q) {
      const found = poses.get(q) ?? mechanism.pose(q)
      if (poses.size < REMEMBERED) poses.set(q, found)
      return found
    },
  }
}

const modelOf = (si: MotionSi, parts: Parameters<typeof motionModel>[1]): MotionModel => {
  const model = motionModel(si, parts)
  return { ...model, parts: model.parts.map((part) => ({ ...part, mechanism: remembering(part.mechanism) })) }
}

/** The rig as the document says. */
export const asPlanned = (rig: RigSi): Built => ({
  power: rig.power,
  motions: rig.motions.map((si, i) => moving(si, modelOf(si, buildMotion(members, si, ["motions", i])))),
  around: standing(rig.posture),
  dead: [],
  contacts: {},
})

/** A rig with one motion as changed. */
export const withMotion = (built: Built, index: number, change: (one: Moving) => Partial<Moving>): Built => ({
  ...built,
  motions: built.motions.map((one, i) => (i === index ? { ...one, ...change(one) } : one)),
})

/** A motion's document part changed and put together anew; null where it does not hang together any more. */
export function remade(built: Built, index: number, change: (si: MotionSi) => MotionSi): Built | null {
  const one = built.motions[index] as Moving
  const si = change(one.si)
  const parts = buildMotion(members, si, ["motions", index])
  if (parts.faults.length || !parts.drive) return null
  return withMotion(built, index, () => ({ si, model: modelOf(si, parts) }))
}

/** A power tree with one entry of a list as changed. */
export function withEntry<K extends "sources" | "buses" | "loads">(
  built: Built,
  list: K,
  index: number,
  change: (one: Power[K][number]) => Power[K][number],
): Built {
  const { power } = built
  if (!power) return built
  const entries = (power[list] as readonly Power[K][number][]).map((one, i) => (i === index ? change(one) : one))
  return { ...built, power: { ...power, [list]: entries } as Power }
}
