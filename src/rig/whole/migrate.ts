// Documents of version 1 brought to version 2: arms on hinges, their supply, and all that is around them.

type Part = Readonly<Record<string, unknown>>
const part = (value: unknown): Part | null =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Part) : null
const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])

/** Leaves out what is not there, so that its default holds. */
function given(fields: Part): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined && value !== null))
}

/** A quantity turned round: '5 deg' to '-5 deg'. */
function negated(value: unknown): unknown {
  if (typeof value === "number") return -value
  if (typeof value !== "string") return value
  const text = value.trim()
  return /^[-−]/.test(text) ? text.slice(1).trim() : `-${text}`
}

const carriedOver = [
  "wearer",
  "parts",
  "formed",
  "straps",
  "schedule",
  "heat",
  "wind",
  "stance",
  "venue",
  "reach",
  "contact",
  "budget",
] as const

/** Sections that version 2 has no place for: what they said has to be said anew. */
const without = ["duty", "pinch", "starting", "flaps", "scissor"] as const

/** The arm's outline: version 1 knew none, so its farthest mass stands for the tip. */
function farthest(masses: unknown): unknown {
  const radii = list(masses).map((m) => part(m)?.radius)
  return radii.length === 1 ? radii[0] : radii.reduce((a, b) => (metres(b) > metres(a) ? b : a))
}

/** Metres of a length as documents write it, near enough to compare two of them. */
function metres(value: unknown): number {
  if (typeof value === "number") return value
  const found = /^\s*([\d.eE+-]+)\s*([a-z"'°]*)/i.exec(String(value))
  const factor = { mm: 1e-3, cm: 1e-2, m: 1, in: 0.0254, ft: 0.3048 }[found?.[2] ?? ""] ?? 1
  return Number(found?.[1]) * factor
}

/** A run of wire as version 2 has it, with what version 1 said of all wires together. */
function runOf(run: unknown, wiring: Part): Record<string, unknown> | null {
  const one = part(run)
  return one && given({ ...one, insulation: wiring.insulation, ambientTemperature: wiring.ambientTemperature, dropLimit: wiring.dropLimit })
}

/** Sources and buses; the last bus is the one that the drives connect to. */
function powerOf(document: Part): Record<string, unknown> | null {
  const [pack, bank, converter, wiring] = ["pack", "bank", "converter", "wiring"].map((key) => part(document[key])) as (Part | null)[]
  const source = pack ? given({ ...pack, type: "cells", name: "pack" }) : bank ? given({ ...bank, type: "bank", name: "bank" }) : null
  if (!source) return null
  const lines: Record<string, unknown>[] = []
  if (wiring) {
    lines.push(
      given({
        name: "line",
        from: source.name,
        run: runOf(wiring.source, wiring),
        switchResistance: wiring.switchResistance ?? "10 mohm",
        switchRating: wiring.switchRating,
        fuseResistance: wiring.fuseResistance,
        fuseRating: wiring.fuseRating,
        converter,
      }),
    )
    if (part(wiring.load)) lines.push(given({ name: "drives", from: "line", run: runOf(wiring.load, wiring) }))
  } else lines.push(given({ name: "line", from: source.name, converter }))
  const last = lines[lines.length - 1]?.name
  const lights = part(document.lights)
  const standby = part(document.day)?.standby
  const loads = [
    ...(lights ? [{ type: "lights", name: "lights", bus: last, current: lights.current }] : []),
    ...(standby !== undefined && metres(standby) > 0
      ? [{ type: "constant-power", name: "standing power", bus: last, power: standby }]
      : []),
  ]
  return { sources: [source], buses: lines, loads }
}

/** Arms on hinges as a motion. */
function armsOf(document: Part, bus: unknown): Record<string, unknown> | null {
  const hinged = part(document.hinged)
  if (!hinged) return null
  const { actuator, count = 1, spring, masses, raised: _raised, frameTilt: _frameTilt, ...arm } = hinged
  const mount = part(document.mount)
  const brief = part(document.brief)
  return given({
    name: "arms",
    bus,
    drive: { ...part(actuator), type: "linear-actuator", count },
    mechanisms: [
      given({
        ...arm,
        type: "hinge",
        name: "arm",
        count,
        length: farthest(masses),
        masses,
        springs: spring ? [spring] : undefined,
        mount: mount ? given({ forward: mount.forward, height: mount.height }) : undefined,
      }),
    ],
    wanted: brief ? given({ duration: brief.raiseTime, swing: brief.swing }) : undefined,
    spar: document.spar,
    pin: document.pin,
  })
}

/**
 * A document of version 1 in the form of version 2, its values as they were written. What version 2 has no place for is
 * named in `left`.
 */
export function fromVersion1(document: Part): { readonly rig: Record<string, unknown>; readonly left: readonly string[] } {
  const power = powerOf(document)
  const buses = list(power?.buses)
  const arms = armsOf(document, part(buses[buses.length - 1])?.name)
  const day = part(document.day)
  const frameTilt = part(document.hinged)?.frameTilt
  return {
    rig: given({
      version: 2,
      name: document.name,
      note: document.note,
      motions: arms ? [arms] : [],
      power,
      posture: frameTilt === undefined ? undefined : { leanLeft: negated(frameTilt) },
      day: day ? given({ reserve: day.reserve, hours: day.hours ?? "4 h", moves: day.moves, flies: day.flies }) : undefined,
      ...Object.fromEntries(carriedOver.map((key) => [key, document[key]])),
    }),
    left: without.filter((key) => part(document[key]) !== null),
  }
}
