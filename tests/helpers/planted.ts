// Rigs with values planted in them, SI.
import type { RigSi } from "../../src/rig/whole/faults.js"
import { isWithin } from "./recording.js"
import { rigSi } from "./rigs.js"

export type At = readonly (string | number)[]

type Any = Record<string | number, unknown>
const isGroup = (value: unknown): value is Any => typeof value === "object" && value !== null

/** Places of a document that a path with `[]` names; the last step must be a field that is there, whatever its value. */
export function valuesAt(rig: RigSi, path: string): readonly At[] {
  let found: { readonly at: At; readonly value: unknown }[] = [{ at: [], value: rig }]
  for (const step of path.split(/\.|(?=\[\])/))
    found = found.flatMap(({ at, value }) => {
      if (step === "[]") return Array.isArray(value) ? value.map((one, i) => ({ at: [...at, i], value: one as unknown })) : []
      return isGroup(value) && step in value ? [{ at: [...at, step], value: value[step] }] : []
    })
  return found.map(({ at }) => at)
}

/** A document with one value put in, the rest shared. */
export function put(rig: RigSi, at: At, value: unknown): RigSi {
  const within = (here: unknown, [step, ...rest]: At): unknown => {
    if (step === undefined) return value
    if (Array.isArray(here)) return here.map((one, i) => (i === step ? within(one, rest) : one))
    return { ...(here as Any), [step]: within((here as Any)[step], rest) }
  }
  return within(rig, at) as RigSi
}

/** Legs on a bank, a tail and a boom beside them, cells on a line of their own, and one load of each type. */
export function everything(): RigSi {
  const [legs, tail, fan, moth] = ["umbrella-legs", "reed-dragon-tail", "nine-feather-fan", "lantern-moth-bank"].map(rigSi) as [
    RigSi,
    RigSi,
    RigSi,
    RigSi,
  ]
  const [power, cells] = [legs.power as NonNullable<RigSi["power"]>, fan.power as NonNullable<RigSi["power"]>]
  const [first, second] = [power.buses[0] as (typeof power.buses)[number], cells.buses[0] as (typeof cells.buses)[number]]
  const { name: bus } = first
  return {
    ...moth,
    heat: { ...(moth.heat as NonNullable<RigSi["heat"]>), wetBulbTemperature: 24, globeTemperature: 30 },
    motions: [...legs.motions, ...tail.motions.map((one) => ({ ...one, bus: "plain line" }))].map((one) => ({
      ...one,
      pin: moth.motions[0]?.pin ?? null,
    })),
    power: {
      sources: [...power.sources.map((one) => ({ ...one, currentLimit: 10 })), ...cells.sources],
      buses: [
        ...power.buses.map((one) => ({ ...one, limitAction: "hold" as const })),
        { ...first, name: "plain line", converter: null },
        { ...second, name: "spare line" },
      ],
      loads: [
        { type: "lights", name: "lanterns", bus, current: 0.1 },
        { type: "constant-power", name: "drum", bus, power: 0.5 },
        { type: "resistive", name: "glow", bus, resistance: 100 },
        { type: "controller", name: "receiver", bus, current: 0.1, resetVoltage: 60 },
        { type: "lights", name: "tail lamp", bus: "spare line", current: 0.2 },
      ],
    },
  }
}

/** A document with every number, flag and section changed that none of these paths reads; sections left out come from another rig. */
export function shaken(rig: RigSi, reads: readonly string[], spare: RigSi): RigSi {
  const isRead = (path: string) => reads.some((read) => isWithin(path, read) || isWithin(read, path))
  const within = (value: unknown, path: string): unknown => {
    if (reads.some((read) => isWithin(path, read))) return value
    if (Array.isArray(value)) return value.map((one) => within(one, `${path}[]`))
    if (isGroup(value))
      return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, within(one, path ? `${path}.${key}` : key)]))
    if (value === null && !path.includes(".") && !isRead(path)) return (spare as unknown as Any)[path]
    if (typeof value === "number") return 1.37 * value + 0.01
    return typeof value === "boolean" ? !value : value
  }
  return within(rig, "") as RigSi
}
