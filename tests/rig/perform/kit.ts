// Performances of small rigs, as exactly as asked.
import { drives } from "../../../src/rig/drives/index.js"
import { mechanisms } from "../../../src/rig/mechanisms/index.js"
import { solvePerform } from "../../../src/rig/perform/solve.js"
import type { Perform, PerformSi } from "../../../src/rig/perform/types.js"
import { transmissions } from "../../../src/rig/transmissions/index.js"
import type { Members } from "../../../src/rig/whole/fields.js"
import { rigWith } from "../../../src/rig/whole/rig-with.js"
import { isNoSolution } from "../../../src/solver/index.js"
import { creature, creatureNames } from "../../helpers/rigs.js"
import { shaftMotor } from "../second/own-members.js"

/** Creatures that can be played: none of their motions is mounted on another. */
export const played = creatureNames.filter((name) => creature(name).motions.every(({ on }) => !on))

export const kit = rigWith({ drives: [shaftMotor] })
export const members = { drives: { ...drives, "shaft-motor": shaftMotor }, transmissions, mechanisms } as unknown as Members

export const read = (rig: object) => kit.perform.read(rig) as unknown as PerformSi

/** A rig performed, with the errors of its integration asked for. */
export function play(rig: object, relative = 1e-8, absolute = 1e-9): Perform {
  const out = solvePerform(members, read(rig), { relative, absolute })
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}

export interface Arm {
  readonly startAngle?: number | string
  readonly length?: number
  readonly masses?: readonly { readonly name: string; readonly mass: number; readonly radius: number }[]
  readonly hingeFriction?: number
  readonly panels?: readonly { readonly area: number; readonly radius: number }[]
}

/** One arm on a motor's shaft; nothing feeds it but its rated 12 V. */
export const armRig = (drive: object, arm: Arm, more: object = {}) => ({
  version: 2,
  name: "one arm",
  motions: [
    {
      name: "arm",
      drive,
      mechanisms: [
        {
          name: "vane",
          type: "turned-arm",
          startAngle: 0,
          length: 0.5,
          masses: [{ name: "hub", mass: 1e-4, radius: 0 }],
          mount: { heading: 0 },
          ...arm,
        },
      ],
    },
  ],
  ...more,
})

/** A motor that neither rubs nor weighs: what is on its shaft moves freely. */
export const feather = { type: "shaft-motor", torqueConstant: 0.1, backEmfConstant: 0.1, windingResistance: 1000, backwardEfficiency: 1 }

export const last = (list: readonly number[]) => list[list.length - 1] as number
/** The place in the trace at which an event is. */
export const placeOf = (out: Perform, time: number) => out.times.indexOf(time)
