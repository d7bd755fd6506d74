// Faults and readings in a maker's words.
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import type { Fault } from "./fault.js"
import type { ReadingSi } from "./predict.js"

/** A size as it is shown. */
export function sizeText({ row }: Fault, size: number): string {
  if (!row.size) return ""
  const { kind, label, shown } = row.size
  const value = shown ? shown(size) : size
  const text =
    kind === "number"
      ? formatNumber(value, 2)
      : kind === "ratio"
        ? formatQuantity("ratio", value, "%", 2)
        : kind === "degrees"
          ? `${formatNumber(value, 2)} °C`
          : formatQuantity(kind, value, undefined, 2)
  return `${label}: ${text}`
}

/** Faults with their sizes. */
export const faultsText = (faults: readonly Fault[], sizes: readonly number[]): string =>
  faults
    .map((one, i) => {
      const size = sizeText(one, sizes[i] as number)
      return `${one.row.label(one.site.at)}${size ? ` (${size})` : ""}`
    })
    .join("; and ")

const ways = { out: "goes out", back: "goes back" } as const

const during = (
  reading: { readonly during: "moving" | "rest" | "stalled"; readonly motion: string | null; readonly way: "out" | "back" },
  first: string,
) =>
  reading.during === "rest"
    ? "at rest"
    : reading.during === "moving"
      ? `while ${reading.motion ?? first} ${ways[reading.way]}`
      : `with ${reading.motion ?? first} switched on and standing still`

/** What a reading is of. */
export function readingText(reading: ReadingSi, first: string): string {
  const motion = "motion" in reading && reading.motion !== null ? reading.motion : first
  switch (reading.type) {
    case "time":
      return `time that ${motion} takes ${reading.way}`
    case "swing":
      return `swing of ${motion}`
    case "reach":
      return `change of length of ${motion}`
    case "voltage":
      return `voltage at ${reading.at}${reading.side === "input" ? ", before its converter," : ""} ${during(reading, first)}`
    case "voltage-drop":
      return `voltage lost on the run to ${reading.along} ${during(reading, first)}`
    case "current":
      return `current ${reading.at === null ? `of all drives of ${motion}` : `to ${reading.at}`} ${during(reading, first)}`
    case "force":
      return `pull at the tip of ${reading.mechanism ?? `the first part of ${motion}`}, moved by hand ${reading.way} through ${formatQuantity("ratio", reading.place, "%")} of its way`
    case "cell-resistance":
      return `resistance of one cell of ${reading.source}`
    case "cell-temperature":
      return `temperature of the cells of ${reading.source}`
    case "does-not-move":
      return `${motion} does not move ${reading.way}`
    case "stops-at":
      return `where ${motion} stops on its way ${reading.way}`
    case "switches-off":
      return `${motion} moves ${reading.way}, then the supply switches off`
    case "one-side-slower":
      return `one side of ${motion} is slower ${reading.way}`
    case "slow-in-the-cold":
      return `${motion} is slow ${reading.way} in the cold`
    case "wrong-way":
      return reading.what === "all" ? `${motion} goes the wrong way` : `one of the pair of ${motion} goes the wrong way`
    case "warm":
      return `${reading.part === "source" ? "" : `${reading.part} of `}${reading.at} warmer than it should be`
    case "sound":
      return `${reading.sound} sound from ${motion}`
    default:
      return "reading"
  }
}

/** How a reading is taken. */
export function howTo(reading: ReadingSi): string {
  switch (reading.type) {
    case "time":
      return "film one move and count the seconds, every other motion still"
    case "swing":
      return "photograph both ends square on and measure the angle"
    case "reach":
      return "measure its length at both ends"
    case "voltage":
      return "hold a voltmeter across both terminals there, leads clear of what moves"
    case "voltage-drop":
      return "read the voltage at both ends of that run with the same voltmeter; the difference"
    case "current":
      return "clamp one wire of that run, or have an ammeter of enough range in the line, behind its fuse"
    case "force":
      return "switch off, take its rod, line or horn off, prop the part up, then pull it slowly through that place with a luggage scale square to it"
    case "cell-resistance":
      return "use a cell tester on one cell after another, the pack disconnected"
    case "cell-temperature":
      return "hold a thermometer to a cell for some minutes"
    default:
      return "look, listen and feel, power off where you touch"
  }
}

/** A value of a reading as it is shown. */
export function valueText(reading: ReadingSi, value: number): string {
  if (!Number.isFinite(value)) return "cannot be read: it does not come through"
  switch (reading.type) {
    case "time":
    case "one-side-slower":
      return formatQuantity("time", value, "s")
    case "swing":
      return formatQuantity("angle", value)
    case "reach":
      return formatQuantity("length", value, "mm")
    case "voltage":
    case "voltage-drop":
      return formatQuantity("voltage", value)
    case "current":
      return formatQuantity("current", value)
    case "force":
      return formatQuantity("force", value)
    case "cell-resistance":
      return formatQuantity("resistance", value)
    case "cell-temperature":
      return formatQuantity("temperature", value)
    case "stops-at":
      return reading.angle !== null
        ? formatQuantity("angle", value)
        : reading.stroke !== null
          ? formatQuantity("length", value, "mm")
          : formatQuantity("ratio", value, "%")
    default:
      return formatNumber(value)
  }
}
