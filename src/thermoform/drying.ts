import type { Length } from "../quantity/index.js"
import { at, type Band, bandField, type Caution, caution, citation, type SiOf, type Solver, solver } from "../solver/index.js"
import { type Plastic, plasticOptions } from "./data.js"
import { ACRYLIC_FORMING, ACRYLIC_SHRINKAGE, PC_DRYING, PC_DRYING_TABLE, practice } from "./sources.js"
import { type Drying, dryings, polycarbonateMoisture } from "./tables.js"

/** Input of {@link drying}. */
export interface DryingInput {
  /** Plastic [one of 12 words] */
  material: Plastic
  /** Thickness of the sheet, or twice the wall of a tube dried from outside only. [s_t; 0.5 to 12 mm] */
  thickness: Length
}

/** Hazards and limits that an answer of {@link drying} can carry. */
export type DryingCaution = "blisters" | "drying-oven" | "vent-only-dried"

/** Result of {@link drying}. */
export interface DryingTime {
  /** `always`, `when damp` or `no`. [text] */
  readonly needed: string
  /** Oven temperature to set. [T_dry; °C] */
  readonly temperature: number
  /** Lowest and highest published or allowed temperature. [T_low to T_high; °C] */
  readonly temperatureRange: Band
  /** Time by the shorter of the published schedules, and by the longer one: the time to plan with. [t_short to t_long; s] */
  readonly duration: Band
  /** Where the schedule comes from. [text] */
  readonly source: string
}

interface Law {
  readonly time: number
  readonly thickness: number
  readonly power: number
}

/** The power law between the two neighbouring entries; past the thick end diffusion's square law, which is the longer. */
function lawOf(table: Drying["short"], thickness: number): Law {
  const first = table[0] as readonly [number, number]
  if (table.length === 1) return { thickness: first[0], time: first[1] * 3600, power: 0 }
  const last = table[table.length - 1] as readonly [number, number]
  if (thickness >= last[0]) return { thickness: last[0], time: last[1] * 3600, power: 2 }
  let i = 1
  while (i < table.length - 1 && thickness > (table[i] as readonly [number, number])[0]) i++
  const [a, b] = [table[i - 1] as readonly [number, number], table[i] as readonly [number, number]]
  return { thickness: a[0], time: a[1] * 3600, power: Math.log(b[1] / a[1]) / Math.log(b[0] / a[0]) }
}
const timeOf = ({ time, thickness, power }: Law, actual: number) => time * (actual / thickness) ** power

/** Both schedules; the longer of the two is the one to plan with. */
function laws({ material, thickness }: SiOf<DryingInput>): readonly [Law, Law] {
  const { short, long } = dryings[material]
  const both = [lawOf(short, thickness), lawOf(long, thickness)] as const
  return timeOf(both[0], thickness) <= timeOf(both[1], thickness) ? both : [both[1], both[0]]
}

function solve(si: SiOf<DryingInput>): DryingTime {
  const { needed, temperature, sources } = dryings[si.material]
  const [short, long] = laws(si)
  return {
    needed,
    temperature: temperature.value,
    temperatureRange: { low: temperature.low, high: temperature.high },
    duration: { low: timeOf(short, si.thickness), high: timeOf(long, si.thickness) },
    source: sources.map(citation).join("; "),
  }
}

function cautions({ material }: SiOf<DryingInput>, out: DryingTime): Caution<DryingCaution>[] {
  if (out.needed === "no") return []
  return [
    caution(
      "blisters",
      "caution",
      "Damp sheet of this plastic blisters when it is heated to form. Remove masking film, hang or rack it so that air reaches both faces, and form soon after drying.",
      dryings[material].sources[0] ?? practice,
    ),
    caution(
      "drying-oven",
      "warning",
      "Hours in an oven want one with forced air that is not used for food, a second thermometer, and somebody nearby: domestic thermostats can be 42 K out, and no oven is left unattended overnight without an independent cut-out.",
      at(ACRYLIC_FORMING, "thermostat error of 75 °F"),
    ),
    ...(material === "pc"
      ? [
          caution(
            "vent-only-dried",
            "note",
            "A room's moisture ({atRest ratio %}) is {times} times what makes polycarbonate bubble ({blisters ratio %}); thinner sheet takes it up again within hours.",
            PC_DRYING,
            { ...polycarbonateMoisture, times: polycarbonateMoisture.atRest / polycarbonateMoisture.blisters },
          ),
        ]
      : []),
  ]
}

/**
 * How long and how hot to dry a sheet before forming.
 *
 * Formula: t = t₁·(s/s₁)ⁿ with (s₁, t₁) and n from the two neighbouring entries of the published schedule, n = 2
 * (diffusion's square law) past its thick end; both schedules are given where there are two. s thickness. Valid from
 * 0.5 to 12 mm.
 *
 * **Inputs**
 * - `material`: plastic [one of 12 words]
 * - `thickness`: thickness [s_t; 0.5 to 12 mm]
 *
 * **Results**
 *
 * `needed`: drying needed [text]; `temperature`: oven temperature to set [T_dry; °C]; `temperatureRange`: range of
 * oven temperatures [T_low to T_high; °C]; `duration`: drying time [t_short to t_long; s]; `source`: source [text].
 *
 * **Symbols of the working**
 *
 * t1_short: published time [s]; s1_short: at this thickness [m]; n_short: power of thickness to the next entry;
 * t1_long: published time [s]; s1_long: at this thickness [m]; n_long: power of thickness to the next entry.
 *
 * **Sources**
 * - Palram: PALSUN user manual, p. 32, typical pre-drying time
 * - HighLine Polycarbonate: Drying polycarbonate sheet, 2012
 * - Ultra Acrylics: Shrinkage (acrylic sheet notes), 2006, continuous sheet to 3 % along, growing to 0.5 % across;
 *   cell cast to 1.5 %; 24 h at 80 °C dries most sheets
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { drying } from 'alula/thermoform'
 * const visor = drying({ material: 'pc', thickness: '3 mm' })
 * visor.needed // => 'always'
 * visor.duration.low / 3600 // => 7.00
 * ```
 */
export const drying: Solver<DryingInput, DryingTime, never, DryingCaution> = /* @__PURE__ */ solver<
  DryingInput,
  DryingTime,
  never,
  DryingCaution
>("drying", "How long and how hot to dry a sheet before forming", solve, () => ({
  input: {
    material: { kind: "choice", label: "plastic", options: plasticOptions },
    thickness: { kind: "length", symbol: "s_t", label: "thickness", min: "0.5 mm", max: "12 mm", typical: ["1 mm", "8 mm"] },
  },
  output: {
    needed: { kind: "text", label: "drying needed" },
    temperature: { kind: "temperature", symbol: "T_dry", label: "oven temperature to set" },
    temperatureRange: bandField("temperature", "range of oven temperatures", {
      symbols: ["T_low", "T_high"],
      labels: ["minimum oven temperature", "maximum oven temperature"],
    }),
    duration: bandField("time", "drying time", {
      symbols: ["t_short", "t_long"],
      labels: ["drying time, shorter schedule", "drying time to plan with"],
    }),
    source: { kind: "text", label: "source" },
  },
  example: { material: "pc", thickness: "3 mm" },
  formulae: [
    ...(["T_dry", "T_low", "T_high"] as const).map((symbol) => ({
      symbol,
      kind: "temperature" as const,
      meaning: "published oven temperature",
      given: (_: SiOf<DryingInput>, { temperature, temperatureRange: { low, high } }: DryingTime) =>
        ({ T_dry: temperature, T_low: low, T_high: high })[symbol],
    })),
    ...(["short", "long"] as const).flatMap((name, i) => [
      {
        symbol: `t1_${name}`,
        kind: "time" as const,
        meaning: "published time",
        given: (si: SiOf<DryingInput>) => (laws(si)[i] as Law).time,
      },
      {
        symbol: `s1_${name}`,
        kind: "length" as const,
        meaning: "at this thickness",
        given: (si: SiOf<DryingInput>) => (laws(si)[i] as Law).thickness,
      },
      {
        symbol: `n_${name}`,
        kind: "number" as const,
        meaning: "power of thickness to the next entry",
        given: (si: SiOf<DryingInput>) => (laws(si)[i] as Law).power,
      },
      { symbol: `t_${name}`, meaning: "time at this thickness", is: `t1_${name} * (s_t / s1_${name})^n_${name}` },
    ]),
  ],
  sources: [PC_DRYING_TABLE, PC_DRYING, ACRYLIC_SHRINKAGE],
  cautions,
}))
