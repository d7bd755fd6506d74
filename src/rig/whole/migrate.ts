// Documents of version 1 brought to version 2: what moves, its supply, and all that is around them.
import { flapsOf, given, inPairs, mountOf, negated, type Part, part, scissorOf, siOf, toLookAt, unsaid } from "./migrate-motions.js"

const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])

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

/** Sections that version 1 had for arms alone. */
const ofArms = ["duty", "pinch", "starting"] as const

/** The arm's outline: version 1 knew none, so its farthest mass stands for the tip. */
function farthest(masses: unknown): unknown {
  const radii = list(masses).map((m) => part(m)?.radius)
  return radii.length === 1 ? radii[0] : radii.reduce((a, b) => (siOf("length", b, 0) > siOf("length", a, 0) ? b : a))
}

/** Mass that the rod feels of a motor known by its inertia and its speed without load. */
function feltMass(starting: Part | null, actuator: Part | null): number | undefined {
  const inertia = siOf("momentOfInertia", starting?.inertia, Number.NaN)
  const turns = siOf("angularSpeed", starting?.motorSpeed, Number.NaN)
  const felt = inertia * (turns / siOf("speed", actuator?.noLoadSpeed, Number.NaN)) ** 2
  return Number.isFinite(felt) ? felt : undefined
}

/** Fixed things beside an arm: what version 1 left out around its hinge was two levers long, at most half the arm. */
function fixedThings(pinch: Part | null, hinged: Part): Record<string, unknown> | undefined {
  if (!pinch) return undefined
  const zone = Math.min(
    2 * siOf("length", part(hinged.movingPivot)?.radius, Number.NaN),
    siOf("length", farthest(hinged.masses), Number.NaN) / 2,
  )
  return given({ ...pinch, hingeZone: Number.isFinite(zone) ? zone : undefined })
}

/** A run of wire as version 2 has it, with what version 1 said of all wires together. */
function runOf(run: unknown, wiring: Part): Record<string, unknown> | null {
  const one = part(run)
  return one && given({ ...one, insulation: wiring.insulation, ambientTemperature: wiring.ambientTemperature, dropLimit: wiring.dropLimit })
}

/** Sources and buses; the last bus is the one that the drives connect to. */
function powerOf(document: Part): Record<string, unknown> | null {
  const [pack, bank, converter, wiring] = ["pack", "bank", "converter", "wiring"].map((key) => part(document[key])) as (Part | null)[]
  const flaps = part(document.flaps)
  // flaps said what their supply gives, whatever it was
  const limit = flaps?.supplyCurrent
  const limited = (field: unknown) => (siOf("current", limit, Infinity) < siOf("current", field, Infinity) ? limit : field)
  const source = pack
    ? given({ ...pack, type: "cells", name: "pack" })
    : bank
      ? given({ ...bank, type: "bank", name: "bank", currentLimit: limited(bank.currentLimit) })
      : limit
        ? { type: "mains-supply", name: "servo supply", voltage: flaps?.voltage, currentLimit: limit }
        : null
  if (!source) return null
  const converted = converter && given({ ...converter, outputCurrentLimit: limited(converter.outputCurrentLimit) })
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
        converter: converted,
      }),
    )
    if (part(wiring.load)) lines.push(given({ name: "drives", from: "line", run: runOf(wiring.load, wiring) }))
  } else lines.push(given({ name: "line", from: source.name, converter: converted }))
  const starting = part(document.starting)
  // what is behind a converter is held by that, and else by the source
  const limiting = lines.find((line) => line.converter) ?? lines[0]
  if (starting && limiting)
    Object.assign(limiting, given({ limitAction: starting.limitAction, onTime: starting.onTime, offTime: starting.offTime }))
  const last = lines[lines.length - 1]?.name
  const lights = part(document.lights)
  // what is taken all day has the lights in it
  const [feed] = list(lights?.feeds)
  const lit = siOf("current", lights?.current, 0) * siOf("voltage", part(feed)?.sourceVoltage, 0)
  const standby = siOf("power", part(document.day)?.standby, 0)
  const loads = [
    ...(lights ? [{ type: "lights", name: "lights", bus: last, current: lights.current }] : []),
    ...(standby > lit
      ? [{ type: "constant-power", name: "standing power", bus: last, power: lit > 0 ? standby - lit : part(document.day)?.standby }]
      : []),
    ...(starting && siOf("voltage", starting.resetVoltage, 0) > 0
      ? [{ type: "controller", name: "controller", bus: last, current: 0, resetVoltage: starting.resetVoltage }]
      : []),
  ]
  return { sources: [source], buses: lines, loads }
}

/** Arms on hinges as a motion. */
function armsOf(document: Part, bus: unknown): Record<string, unknown> | null {
  const hinged = part(document.hinged)
  if (!hinged) return null
  const { actuator, count = 1, spring, masses, raised, frameTilt, ...arm } = hinged
  const brief = part(document.brief)
  return given({
    name: "arms",
    bus,
    drive: given({
      ...part(actuator),
      type: "linear-actuator",
      count,
      reflectedMass: part(actuator)?.reflectedMass ?? feltMass(part(document.starting), part(actuator)),
    }),
    duty: document.duty,
    mechanisms: [
      given({
        ...arm,
        type: "hinge",
        name: "arm",
        count,
        length: farthest(masses),
        masses,
        springs: spring ? [spring] : undefined,
        // a frame that leans in the plane of the arms turns one up and the other down: they stood as like ones
        mirrored: siOf("angle", frameTilt, 0) === 0 ? inPairs(count) : undefined,
        mount: mountOf(document),
        pinch: fixedThings(part(document.pinch), hinged),
      }),
    ],
    // the time up is the time back where the arms rise as the rods retract
    wanted: brief ? given({ [raised === "retracted" ? "backDuration" : "duration"]: brief.raiseTime, swing: brief.swing }) : undefined,
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
  const bus = part(buses[buses.length - 1])?.name
  const note = [document.note, toLookAt(document)].filter((text) => typeof text === "string" && text !== "").join(" ")
  const day = part(document.day)
  const frameTilt = part(document.hinged)?.frameTilt
  return {
    rig: given({
      version: 2,
      name: document.name,
      note: note === "" ? undefined : note,
      motions: [armsOf(document, bus), flapsOf(document, bus), scissorOf(document)].filter((motion) => motion !== null),
      power,
      posture: frameTilt === undefined ? undefined : { leanLeft: negated(frameTilt) },
      day: day ? given({ reserve: day.reserve, hours: day.hours ?? "4 h", moves: day.moves, flies: day.flies }) : undefined,
      ...Object.fromEntries(carriedOver.map((key) => [key, document[key]])),
    }),
    left: [...(part(document.hinged) ? [] : ofArms.filter((key) => part(document[key]) !== null)), ...unsaid(document)],
  }
}
