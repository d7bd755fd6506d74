// What a maker can be asked for, one reading after another.
import type { Rig } from "../../rig/index.js"
import type { RigSi } from "../../rig/whole/faults.js"
import { asPlanned } from "./built.js"
import { diagnosis } from "./index.js"
import { meters, type NumberType } from "./meters.js"
import { possible } from "./next.js"
import type { ReadingSi } from "./predict.js"
import type { RigReading } from "./readings.js"
import { howTo, readingText } from "./words.js"

/** A reading that can be asked for. */
export interface Askable {
  readonly label: string
  readonly how: string
  /** What it is taken with; null where it is seen, heard or felt. */
  readonly tool: string | null
  /** A value as it is typed; null where there is none to give. */
  readonly example: string | null
  /** The reading with a value as it was typed. */
  with(value: string): RigReading
}

const examples: Readonly<Record<string, string>> = {
  time: "11.6 s",
  swing: "85 deg",
  reach: "420 mm",
  voltage: "11.9 V",
  "voltage-drop": "0.4 V",
  current: "1.8 A",
  force: "6 N",
  "cell-resistance": "45 mohm",
  "cell-temperature": "22 degC",
}

/** A reading without what is left out. */
const bare = (reading: ReadingSi) => Object.fromEntries(Object.entries(reading).filter(([, value]) => value !== null))

/** Everything that can be read on a rig: numbers first, then what is seen, heard and felt. */
export function askables(rig: Rig): readonly Askable[] {
  const si = diagnosis.read({ rig, readings: [{ type: "sound", sound: "gritty" }] }).rig as unknown as RigSi
  const first = si.motions[0]?.name ?? ""
  const numbers = possible(asPlanned(si)).map((reading): Askable => {
    const { uncertainty: _, ...rest } = bare(reading)
    return {
      label: readingText(reading, first),
      how: howTo(reading),
      tool: meters[reading.type as NumberType].tool,
      example: examples[reading.type] ?? null,
      with: (value) => ({ ...rest, value }) as unknown as RigReading,
    }
  })
  const signs: RigReading[] = si.motions.flatMap(({ name: motion, mechanisms }) => [
    ...(["out", "back"] as const).map((way): RigReading => ({ type: "does-not-move", motion, way })),
    { type: "switches-off", motion },
    { type: "wrong-way", motion },
    ...(mechanisms.some((one) => one.count > 1)
      ? ([
          { type: "wrong-way", motion, what: "one-of-a-pair" },
          { type: "one-side-slower", motion },
        ] as const)
      : []),
    ...(["gritty", "clicking", "squeaking", "humming"] as const).map((sound): RigReading => ({ type: "sound", motion, sound })),
    { type: "warm", part: "drive", at: motion },
  ])
  const warm: RigReading[] = [
    ...(si.power?.sources ?? []).map(({ name }): RigReading => ({ type: "warm", part: "source", at: name })),
    ...(si.power?.buses ?? []).flatMap(({ name, converter }): RigReading[] => [
      { type: "warm", part: "contact", at: name },
      { type: "warm", part: "wire", at: name },
      ...(converter ? [{ type: "warm", part: "converter", at: name } as const] : []),
    ]),
  ]
  const plain = (reading: RigReading): Askable => ({
    label: readingText({ way: "out", what: "all", ...reading } as unknown as ReadingSi, first),
    how: howTo(reading as unknown as ReadingSi),
    tool: null,
    example: null,
    with: () => reading,
  })
  const stops = si.motions.map(({ name: motion }): Askable => {
    const reading = { type: "stops-at", motion, way: "out" } as const
    return {
      ...plain(reading),
      tool: meters["stops-at"].tool,
      example: "40 %",
      with: (share) => ({ ...reading, share }) as RigReading,
    }
  })
  const cold = si.motions.map(({ name: motion }): Askable => {
    const reading = { type: "slow-in-the-cold", motion, temperature: "0 degC" } as const
    return { ...plain(reading), example: "-5 degC", with: (temperature) => ({ ...reading, temperature }) as RigReading }
  })
  return [...numbers, ...stops, ...cold, ...[...signs, ...warm].map(plain)]
}
