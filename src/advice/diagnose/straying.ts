// How good parts stray from their datasheets, one at a time, by one standard deviation each.
import type { Mechanism } from "../../rig/mechanisms/mechanism.js"
import type { MotionModel, MovedPart } from "../../rig/run/motion-model.js"
import { type Built, type MotionSi, type Moving, remade, withEntry, withMotion } from "./built.js"
import { strays } from "./meters.js"

type Drive = MotionModel["drive"]

/** A drive with its straight line changed, at whatever voltage. */
export function withDrive(model: MotionModel, change: (line: Drive) => Partial<Drive>): MotionModel {
  const { drive } = model
  const changed = { ...drive, ...change(drive) }
  const { lineAt } = drive
  if (!lineAt) return { ...model, drive: changed }
  const by = (key: "effortConstant" | "backEmfConstant" | "windingResistance") => (drive[key] > 0 ? changed[key] / drive[key] : 1)
  const [effort, emf, winding] = [by("effortConstant"), by("backEmfConstant"), by("windingResistance")]
  const extra = changed.frictionCurrent - drive.frictionCurrent
  return {
    ...model,
    drive: {
      ...changed,
      lineAt(voltage, line) {
        lineAt(voltage, line)
        line.effortConstant *= effort
        line.backEmfConstant *= emf
        line.windingResistance *= winding
        line.frictionCurrent += extra
      },
    },
  }
}

/** What a mechanism asks, changed. */
export interface MechanismChange {
  /** Factors of its masses and springs. */
  readonly mass?: number
  readonly spring?: number
  /** Factor of its friction, and more of it, N at its tip. */
  readonly friction?: number
  readonly atTip?: number
}

const changedMechanism = (mechanism: Mechanism, { mass = 1, spring = 1, friction = 1, atTip = 0 }: MechanismChange): Mechanism => ({
  ...mechanism,
  at(q, state) {
    mechanism.at(q, state)
    state.massX *= mass
    state.massY *= mass
    state.massZ *= mass
    state.inertia *= mass
    state.springs *= spring
    state.frictionDry *= friction
    if (atTip > 0) {
      const [x, y, z] = mechanism.pose(q).tipRate
      state.frictionDry += atTip * Math.hypot(x, y, z)
    }
  },
})

/** A motion with one of its mechanisms changed, on both sides of a mirrored pair. */
export const withMechanism = (model: MotionModel, name: string, change: MechanismChange): MotionModel => ({
  ...model,
  parts: model.parts.map(
    (part): MovedPart => (part.name === name ? { ...part, mechanism: changedMechanism(part.mechanism, change) } : part),
  ),
})

const modelOf =
  (index: number, change: (model: MotionModel) => MotionModel) =>
  (built: Built): Built =>
    withMotion(built, index, (one) => ({ model: change(one.model), weak: one.weak && change(one.weak) }))

/** A document part with a number inside multiplied. */
export function timesAt<T>(part: T, path: readonly string[], by: number): T {
  const [head, ...rest] = path as [string, ...string[]]
  const inside = (part as Record<string, unknown>)[head]
  return { ...part, [head]: rest.length ? timesAt(inside, rest, by) : (inside as number) * by }
}

/** Where a mechanism's rod, link or line takes hold, by the fields that say so in our members' documents. */
const levers: readonly (readonly string[])[] = [["movingPivot", "radius"], ["attachRadius"], ["crank"], ["servoHorn"]]

export function leverOf(mechanism: MotionSi["mechanisms"][number]): readonly string[] | null {
  return (
    levers.find((path) => {
      let at: unknown = mechanism
      for (const key of path) at = typeof at === "object" && at !== null ? (at as Record<string, unknown>)[key] : undefined
      return typeof at === "number" && at > 0
    }) ?? null
  )
}

/** A mechanism's lever changed in the document; null where nothing of it closes any more. */
export const withLever = (built: Built, index: number, which: number, path: readonly string[], by: number): Built | null =>
  remade(built, index, (si) => ({ ...si, mechanisms: si.mechanisms.map((one, i) => (i === which ? timesAt(one, path, by) : one)) }))

/** Every way in which a rig of good parts strays. */
export function strayings(planned: Built): readonly ((built: Built) => Built)[] {
  const found: ((built: Built) => Built)[] = []
  planned.motions.forEach(({ si, model }: Moving, index) => {
    found.push(
      modelOf(index, (m) => withDrive(m, (d) => ({ backEmfConstant: d.backEmfConstant * (1 + strays.speed) }))),
      modelOf(index, (m) => withDrive(m, (d) => ({ effortConstant: d.effortConstant * (1 + strays.effort) }))),
      modelOf(index, (m) => withDrive(m, (d) => ({ windingResistance: d.windingResistance * (1 + strays.winding) }))),
      modelOf(index, (m) =>
        withDrive(m, (d) => ({
          frictionCurrent: d.frictionCurrent * (1 + strays.friction) + (0.005 * d.ratedVoltage) / d.windingResistance,
        })),
      ),
    )
    si.mechanisms.forEach((one, k) => {
      const change = (what: MechanismChange) => modelOf(index, (m) => withMechanism(m, one.name, what))
      found.push(change({ mass: 1 + strays.mass }), change({ friction: 1 + strays.hinge, atTip: strays.tip }))
      if (hasSprings(model, one.name)) found.push(change({ spring: 1 + strays.spring }))
      const lever = leverOf(one)
      // the geometry alone is put together anew: from the plan, so that what is wrong besides is left as it is
      if (lever) {
        const made = withLever(planned, index, k, lever, 1 + strays.pivot)
        if (made) found.push((built) => regeared(planned, made, built, index))
      }
    })
    if (model.chain.length || model.parts.some((p) => p.own.length))
      found.push(
        modelOf(index, (m) => ({
          ...m,
          chain: m.chain.map((e) => ({ ...e, forward: e.forward * (1 - strays.efficiency) })),
          parts: m.parts.map((p) => ({ ...p, own: p.own.map((e) => ({ ...e, forward: e.forward * (1 - strays.efficiency) })) })),
        })),
      )
  })
  planned.power?.sources.forEach((source, i) => {
    const change = (to: Parameters<typeof withEntry<"sources">>[3]) => (built: Built) => withEntry(built, "sources", i, to)
    if (source.type === "cells")
      found.push(
        change((s) => (s.type === "cells" ? { ...s, cellResistance: s.cellResistance * (1 + strays.cell) } : s)),
        change((s) => (s.type === "cells" ? { ...s, stateOfCharge: s.stateOfCharge - strays.charge } : s)),
        change((s) => (s.type === "cells" ? { ...s, temperature: s.temperature - strays.temperature } : s)),
      )
    else
      found.push(
        change((s) => (s.type === "cells" ? s : { ...s, voltage: s.voltage * (1 - strays.socket) })),
        change((s) => (s.type === "cells" ? s : { ...s, currentLimit: s.currentLimit * (1 - strays.limit) })),
      )
  })
  planned.power?.buses.forEach((bus, i) => {
    const change = (to: Parameters<typeof withEntry<"buses">>[3]) => (built: Built) => withEntry(built, "buses", i, to)
    if (bus.run || bus.switchResistance > 0 || bus.fuseResistance > 0)
      found.push(
        change((b) => ({
          ...b,
          switchResistance: b.switchResistance + strays.contact,
          run: b.run && { ...b.run, length: b.run.length * (1 + strays.run) },
        })),
      )
    if (bus.converter)
      found.push(
        change((b) => ({
          ...b,
          converter: b.converter && { ...b.converter, outputVoltage: b.converter.outputVoltage * (1 - strays.setting) },
        })),
        change((b) => ({
          ...b,
          converter: b.converter && {
            ...b.converter,
            efficiency: b.converter.efficiency.map((p) => ({ ...p, efficiency: p.efficiency * (1 - strays.conversion) })),
          },
        })),
      )
  })
  return found
}

/** A built rig on the mechanisms of another geometry: the parts' own changes stay on top. */
function regeared(planned: Built, made: Built, built: Built, index: number): Built {
  const [before, after] = [planned.motions[index] as Moving, made.motions[index] as Moving]
  // only where nothing wrapped the mechanisms: a changed one keeps its own, and strays no further
  const swap = (model: MotionModel): MotionModel => ({
    ...model,
    parts: model.parts.map((part, i) =>
      part.mechanism === before.model.parts[i]?.mechanism
        ? { ...part, mechanism: after.model.parts[i]?.mechanism ?? part.mechanism }
        : part,
    ),
  })
  return withMotion(built, index, (one) => ({ model: swap(one.model), weak: one.weak && swap(one.weak) }))
}

/** Whether a mechanism of a motion has springs that do anything at its start, middle or end. */
export function hasSprings(model: MotionModel, name: string): boolean {
  const part = model.parts.find((one) => one.name === name)
  if (!part) return false
  return samples(model, name).some(({ springs }) => springs !== 0)
}

/** Whether wind would push a mechanism. */
export const hasPanels = (model: MotionModel): boolean =>
  model.parts.some((part) => samples(model, part.name).some((s) => s.windX !== 0 || s.windY !== 0 || s.windZ !== 0))

function samples(model: MotionModel, name: string) {
  const part = model.parts.find((one) => one.name === name)
  if (!part) return []
  let [low, high] = [part.start, part.start]
  // a mechanism goes from its start by what its chain gives for the drive's whole travel
  let x = model.span
  for (const element of [...model.chain, ...part.own]) x = element.out(x)
  ;[low, high] = [part.start, part.start + part.sign * x]
  return [0.02, 0.5, 0.98].map((share) => {
    const state = { ...part.state }
    for (const key of ["springs", "windX", "windY", "windZ", "massX", "massY", "massZ", "frictionDry", "frictionShare"] as const)
      state[key] = 0
    part.mechanism.at(low + share * (high - low), state)
    return state
  })
}

/** Strayings as far as they are told: the built rig is moved by a part of each standard deviation. */
export const scaled = (list: readonly ((built: Built) => Built)[], by: number): readonly Straying[] => list.map((stray) => ({ stray, by }))

/** One way in which good parts stray, and how far against the usual. */
export interface Straying {
  readonly stray: (built: Built) => Built
  readonly by: number
}
