// A boom on a geared motor, simple enough to be worked out by hand, and what is asked of its findings.
import { assessRig, type Rig, type RigFinding } from "../../src/rig/index.js"

export type Path = readonly (string | number)[]

/** A document with one value changed, at a path of keys and indices. */
export function changed<R extends object>(rig: R, path: Path, value: unknown): R {
  const copy = structuredClone(rig) as Record<string | number, unknown>
  let here = copy
  for (const key of path.slice(0, -1)) {
    here[key] ??= {}
    here = here[key] as Record<string | number, unknown>
  }
  here[path[path.length - 1] as string | number] = value
  return copy as R
}

/** Several changes, one after another. */
export const with_ = (rig: Rig, ...changes: readonly (readonly [Path, unknown])[]): Rig =>
  changes.reduce((doc, [path, value]) => changed(doc, path, value), rig)

/** The finding of a check about a subject. */
export function finding(rig: Rig, id: string, subject?: string): RigFinding {
  const found = assessRig(rig).findings.find((f) => f.id === id && (subject === undefined || f.subject === subject))
  if (!found) throw new Error(`no finding ${id} of ${subject}`)
  return found
}

/** Verdicts from best to worst, for sweeps. */
export const rank = (f: RigFinding): number => ["meets", "marginal", "falls short"].indexOf(f.verdict)

/** A mass of 1 kg at 0.8 m on an arm of 1 m, raised from −80° to level by a motor of 4 V·s/rad on a plug of 12 V. */
export const boom = {
  version: 2,
  name: "Boom of the parade's heron",
  motions: [
    {
      name: "boom",
      bus: "line",
      drive: {
        type: "gearmotor",
        travel: "80 deg",
        ratedVoltage: "12 V",
        backEmfConstant: 4,
        windingResistance: "1.5 ohm",
        noLoadCurrent: "0.1 A",
        ratedTorque: "9 N m",
        holdingTorque: "20 N m",
      },
      mechanisms: [
        {
          name: "neck",
          type: "turned-arm",
          startAngle: "-80 deg",
          length: "1 m",
          masses: [{ name: "head", mass: "1 kg", radius: "0.8 m" }],
          panels: [{ area: "0.1 m2", radius: "0.5 m" }],
          pinch: { reachable: "arm", fixed: [{ x1: "0.5 m", y1: "0.2 m", x2: "0.5 m", y2: "0.6 m" }] },
        },
      ],
      duty: { ratedDuty: "20 %", ratedRunDuration: "60 s", timeConstant: "10 min" },
    },
  ],
  power: {
    sources: [{ type: "mains-supply", name: "plug", voltage: "12 V", currentLimit: "10 A", resistance: "0.1 ohm" }],
    buses: [{ name: "line", from: "plug" }],
  },
  wind: { span: "0.8 m", chord: "0.125 m", windSpeed: "5 m/s", dragCoefficient: 4 },
  contact: { region: "thigh-knee" },
  day: { hours: "1 h", moves: 60 },
} as unknown as Rig

export const drive = (key: string): Path => ["motions", 0, "drive", key]
export const neck = (...rest: Path): Path => ["motions", 0, "mechanisms", 0, ...rest]
/** Moment of the head about the hinge, level: m·g·r. */
export const LEVEL = 9.80665 * 0.8
export const START = (80 * Math.PI) / 180
