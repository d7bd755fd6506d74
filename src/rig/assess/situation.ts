import { standardGravity } from "../../linkage/index.js"
import { isNoSolution, type NoSolution, type SiOf } from "../../solver/index.js"
import type { RigDocument } from "../document/document.js"
import { type ArmModel, armModel } from "../motion/arms.js"
import { type MoveModel, stallForce } from "../move/move.js"
import { type MoveTime, moveTime } from "../move/move-time/index.js"
import { wholeMove } from "../move/summary.js"
import type { SupplyChain } from "../power/circuit.js"

type Si = SiOf<RigDocument>

/** Centre of mass of everything carried, in one pose. */
export interface CarriedPose {
  readonly name: string
  readonly forward: number
  readonly left: number
  readonly up: number
}

/** What several checks share about a rig; each piece is worked out once, when first asked for. */
export interface Situation {
  readonly rig: Si
  /** First field that keeps the move from being calculated, or null. */
  readonly moveLacks: string | null
  /** The move, or why physics refuses it; null where data is missing. */
  readonly move: () => MoveTime | NoSolution | null
  readonly arm: () => ArmModel | null
  readonly model: () => { readonly model: MoveModel; readonly chain: SupplyChain } | null
  /** Force at which the actuator stalls on this supply, N. */
  readonly stall: () => number | null
  /** Arm angles at the ends of the stroke: lowered, raised; null where the linkage does not close. */
  readonly ends: () => readonly [lowered: number, raised: number] | null
  /** Mass of parts and moving masses, kg; null where no part is listed. */
  readonly mass: () => number | null
  readonly poses: () => readonly CarriedPose[] | null
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

/** The situation of a rig document in SI. */
export function situationOf(rig: Si): Situation {
  const { hinged, pack, bank, wiring, parts, mount } = rig
  const moveLacks = !hinged ? "hinged" : !pack && !bank ? "pack" : !wiring ? "wiring" : null
  const arm = once(() => hinged && armModel(hinged))
  const model = once(() => (moveLacks ? null : wholeMove(rig)))
  const move = once((): MoveTime | NoSolution | null => (moveLacks ? null : moveTime.si(rig)))
  const ends = once((): readonly [number, number] | null => {
    const one = arm()
    if (!one || !hinged) return null
    const [out, back] = [one.angleAt(hinged.actuator.stroke), one.angleAt(0)]
    if (out === null || back === null) return null
    return hinged.raised === "extended" ? [back, out] : [out, back]
  })
  const armsMass = hinged ? hinged.count * hinged.masses.reduce((sum, m) => sum + m.mass, 0) : 0
  const mass = once(() => (parts.length ? armsMass + parts.reduce((sum, p) => sum + p.count * p.mass, 0) : null))
  const poses = once((): readonly CarriedPose[] | null => {
    const total = mass()
    if (total === null || !(total > 0)) return null
    if (hinged && !mount) return null
    const still = parts.reduce(
      (sum, p) => ({
        forward: sum.forward + p.count * p.mass * p.forward,
        left: sum.left + p.count * p.mass * p.left,
        up: sum.up + p.count * p.mass * p.height,
      }),
      { forward: 0, left: 0, up: 0 },
    )
    const pose = (name: string, angle: number | null): CarriedPose => {
      let { forward, left, up } = still
      if (hinged && mount && angle !== null)
        for (const m of hinged.masses) {
          const all = hinged.count * m.mass
          forward += all * mount.forward
          // a single arm pulls to its own side; pairs balance
          if (hinged.count === 1) left += all * (hinged.hinge.x + m.radius * Math.cos(angle + m.angle))
          up += all * (mount.height + hinged.hinge.y + m.radius * Math.sin(angle + m.angle))
        }
      return { name, forward: forward / total, left: left / total, up: up / total }
    }
    const both = ends()
    return both ? [pose("lowered", both[0]), pose("raised", both[1])] : [pose("worn", null)]
  })
  const stall = once(() => {
    const one = model()
    return one && stallForce(one.model)
  })
  return { rig, moveLacks, move, arm, model, stall, ends, mass, poses }
}

/** Weight of a mass, N. */
export const weight = (mass: number): number => mass * standardGravity

/** Whether a value is an answer, neither missing nor refused. */
export function answered<T>(value: T | NoSolution | null): value is T {
  return value !== null && !isNoSolution(value)
}
