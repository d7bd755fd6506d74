// How good an ordinary tool is, what it costs to take a reading, and how far good parts stray from their datasheets.
import type { SiOf } from "../../solver/index.js"
import type { RigReading } from "./readings.js"

type Si = SiOf<RigReading>
/** Readings of a number. */
export type NumberType = Exclude<RigReading["type"], "does-not-move" | "switches-off" | "wrong-way" | "warm" | "sound">

/** One tool: all its readings are off by the same share, and each by what it shows last. Common practice, no source. */
export interface Meter {
  readonly tool: string
  /** Uncertainty of one reading in its own unit, and as a share of the value; standard deviations. */
  readonly fixed: number
  readonly share: number
  /** Gain error that all readings of this tool have in common, as a share; standard deviation. */
  readonly gain: number
  /** Tools with one gain. */
  readonly gainOf: "none" | "voltmeter" | "ammeter" | "scale"
  /** Minutes it takes, tools at hand. */
  readonly minutes: number
}

const none = { gain: 0, gainOf: "none" } as const

/** The tools, by what they read. */
export const meters: Readonly<Record<NumberType, Meter>> = {
  time: { tool: "a phone that films it", fixed: 0.15, share: 0, ...none, minutes: 2 },
  swing: { tool: "photographs of both ends, square on", fixed: 0.026, share: 0, ...none, minutes: 4 },
  reach: { tool: "a tape measure", fixed: 0.004, share: 0, ...none, minutes: 3 },
  voltage: { tool: "a voltmeter", fixed: 0.02, share: 0.002, gain: 0.005, gainOf: "voltmeter", minutes: 4 },
  "voltage-drop": { tool: "a voltmeter", fixed: 0.01, share: 0.01, gain: 0.005, gainOf: "voltmeter", minutes: 6 },
  current: { tool: "a clamp meter, or an ammeter in the line", fixed: 0.02, share: 0.005, gain: 0.02, gainOf: "ammeter", minutes: 10 },
  force: { tool: "a luggage scale", fixed: 0.2, share: 0.02, gain: 0.015, gainOf: "scale", minutes: 10 },
  "cell-resistance": { tool: "a cell tester", fixed: 0.001, share: 0.06, ...none, minutes: 8 },
  "cell-temperature": { tool: "a thermometer held to a cell", fixed: 2, share: 0, ...none, minutes: 3 },
  "stops-at": { tool: "a photograph where it stops", fixed: 0.03, share: 0, ...none, minutes: 3 },
  "one-side-slower": { tool: "a phone that films both sides", fixed: 0.2, share: 0, ...none, minutes: 2 },
  "slow-in-the-cold": { tool: "a phone that films it, at home and outdoors", fixed: 0.06, share: 0.03, ...none, minutes: 60 },
}

/** Standard deviation of a reading's own error: as given, or as an ordinary tool has it. */
export function uncertaintyOf(reading: Si): number {
  const { type } = reading
  if (!(type in meters)) return 1
  const { fixed, share } = meters[type as NumberType]
  if ("uncertainty" in reading && reading.uncertainty !== null) return reading.uncertainty
  const value = "value" in reading && reading.value !== null ? reading.value : 0
  return Math.hypot(fixed, share * value)
}

/** Standard deviations of good parts about their datasheets, as shares unless said otherwise. Common practice, no source. */
export const strays = {
  /** A drive's back-emf constant, effort constant, winding, and friction. */
  speed: 0.03,
  effort: 0.03,
  winding: 0.04,
  friction: 0.12,
  /** Masses, hinge friction and springs of a mechanism, and where its rod takes hold. */
  mass: 0.02,
  hinge: 0.2,
  spring: 0.04,
  pivot: 0.01,
  efficiency: 0.03,
  /** Resistance of cells; their charge, as a part of the full one; their temperature, K. */
  cell: 0.08,
  charge: 0.03,
  temperature: 2,
  /** Voltage of a bank or a plugged-in supply, their limits, a converter's setting and efficiency. */
  socket: 0.01,
  limit: 0.04,
  setting: 0.01,
  conversion: 0.02,
  /** Resistance of a run, and Ω that plugs add. */
  run: 0.08,
  contact: 0.004,
  /** Friction at the tip of a mechanism whose document states none, N. */
  tip: 0.1,
} as const
