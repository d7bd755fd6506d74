import { type Caution, caution, type OutField, type SiOf, type Solver, solver } from "../solver/index.js"
import { type Figure, type Plastic, plasticOptions, plastics } from "./data.js"

/** Input of {@link formingWindow}. */
export interface FormingWindowInput {
  /** The plastic. */
  plastic: Plastic
}

/** Result of {@link formingWindow}; every figure with its spread and source. */
export interface FormingWindow {
  /** Core temperature from which forming is sure to work, °C: the high end of the published lower limits. */
  readonly from: number
  /** Surface temperature not to pass, °C: the low end of the published upper and scorch limits. */
  readonly to: number
  /** Temperature to aim at, °C: the usual one, held inside `from` and `to`. */
  readonly aim: number
  /** Width of the window, K. */
  readonly width: number
  /** Temperature below which the form may be released, °C: the low end of the set temperatures. */
  readonly release: number
  /** Set temperature, °C. */
  readonly set: Figure
  /** Lower forming limit, °C. */
  readonly lower: Figure
  /** Usual forming temperature, °C. */
  readonly normal: Figure
  /** Upper forming limit, °C. */
  readonly upper: Figure
  /** Onset of vapours, °C. */
  readonly fume: Figure
  /** Onset of charring or decomposition, °C. */
  readonly scorch: Figure
  /** What the vapours are. */
  readonly fumes: string
}

/** The safe side of a plastic's published window. */
export function safeWindow(plastic: Plastic): {
  readonly from: number
  readonly to: number
  readonly aim: number
  readonly release: number
} {
  const { lower, upper, scorch, normal, set } = plastics[plastic]
  const from = lower.high
  const to = Math.min(upper.low, scorch.low)
  return { from, to, aim: Math.min(to, Math.max(from, normal.value)), release: set.low }
}

const figureField = (label: string): OutField<Figure> => ({
  kind: "group",
  label,
  fields: {
    value: { kind: "temperature", label: "usual" },
    low: { kind: "temperature", label: "lowest published" },
    high: { kind: "temperature", label: "highest published" },
    source: { kind: "text", label: "source" },
  },
})

const NIOSH = "NIOSH Pocket Guide to Chemical Hazards, 2007, hydrogen chloride (ceiling 5 ppm; from memory)"

/** Fumes, burns and ovens: what goes with any heating of this plastic. */
export function heatingCautions(plastic: Plastic): Caution[] {
  const { fume, fumes, label } = plastics[plastic]
  const found = [
    caution(
      "ventilation",
      "warning",
      `Heat ${label} outdoors or under extraction: it gives off ${fumes} from about ${fume.low} °C, and earlier where a hot spot is missed. Follow the maker's safety data sheet and local rules.`,
      fume.source,
    ),
    caution(
      "burns",
      "warning",
      "Hot plastic sticks to skin and burns within seconds (5 s at 60 °C): wear dry leather gloves and sleeves and keep cold water at hand.",
      "ASTM C1055, 2003, clause 1.4 (60 °C for 5 s, from a secondary source)",
    ),
    caution(
      "kitchen-oven",
      "warning",
      "Never use an oven that is also used for food, nor an unvented one: fumes gather, may ignite, and domestic thermostats can be 42 K out. Measure the air beside the part.",
      "U.S. Plastic Corp., Forming cast and extruded acrylic sheet (75 °F thermostat error, explosion warning)",
    ),
  ]
  if (plastic === "pvc")
    found.unshift(
      caution(
        "hydrogen-chloride",
        "warning",
        "Overheated PVC gives off hydrogen chloride, which injures lungs and eyes and rusts the oven: never in a kitchen oven, never with a naked flame, stop at the first browning or sharp smell, and leave the room until it has cleared.",
        NIOSH,
      ),
    )
  return found
}

function solve({ plastic }: SiOf<FormingWindowInput>): FormingWindow {
  const { set, lower, normal, upper, fume, scorch, fumes } = plastics[plastic]
  const safe = safeWindow(plastic)
  return { ...safe, width: safe.to - safe.from, set, lower, normal, upper, fume, scorch, fumes }
}

function cautions({ plastic }: SiOf<FormingWindowInput>, out: FormingWindow): Caution[] {
  const found = heatingCautions(plastic)
  if (out.width < 25)
    found.push(
      caution(
        "narrow-window",
        "caution",
        `Only ${Math.round(out.width)} K lie between too cold and too hot once the sources' spread is allowed for: heat slowly, turn the part and try a scrap first.`,
        `${plastics[plastic].lower.source}; ${plastics[plastic].upper.source}`,
      ),
    )
  if (plastics[plastic].lower.source.includes("common practice"))
    found.push(
      caution("no-published-window", "note", "No published forming table was found for this plastic: try a scrap of the same sheet."),
    )
  return found
}

/**
 * The temperatures between which a plastic can be formed, with the spread of the sources and their safe side.
 *
 * Formula: from = highest published lower limit, to = min(lowest published upper limit, lowest scorch onset), width = to − from,
 * aim = the usual forming temperature held inside the two, release = lowest published set temperature; all in °C.
 * Valid for plain grades: filled, flexible or recycled ones differ, and test temperatures (Vicat, deflection under 0.45 or
 * 1.8 MPa) are not interchangeable with each other.
 *
 * Sources: beside each figure in the result.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { formingWindow } from 'alula/thermoform'
 * const pipe = formingWindow({ plastic: 'pvc' })
 * pipe.from // => 107.2
 * pipe.to // => 135
 * pipe.normal.low // => 121.1
 * ```
 */
export const formingWindow: Solver<FormingWindowInput, FormingWindow> = /* @__PURE__ */ solver<FormingWindowInput, FormingWindow>({
  name: "formingWindow",
  title: "Between which temperatures a plastic can be formed",
  input: { plastic: { kind: "choice", label: "plastic", options: plasticOptions } },
  output: {
    from: { kind: "temperature", symbol: "T_from", label: "core at least" },
    to: { kind: "temperature", symbol: "T_to", label: "surface at most" },
    aim: { kind: "temperature", symbol: "T_aim", label: "aim at" },
    width: { kind: "temperatureDifference", symbol: "W", label: "width of the window" },
    release: { kind: "temperature", symbol: "T_release", label: "release below" },
    set: figureField("set"),
    lower: figureField("lower limit"),
    normal: figureField("usual"),
    upper: figureField("upper limit"),
    fume: figureField("vapours begin"),
    scorch: figureField("scorch onset"),
    fumes: { kind: "text", label: "vapours" },
  },
  example: { plastic: "pvc" },
  formulae: [
    { symbol: "T_from", kind: "temperature", meaning: "highest published lower limit", given: (_, out) => out.lower.high },
    { symbol: "T_u", kind: "temperature", meaning: "lowest published upper limit", given: (_, out) => out.upper.low },
    { symbol: "T_s", kind: "temperature", meaning: "lowest scorch onset", given: (_, out) => out.scorch.low },
    { symbol: "T_n", kind: "temperature", meaning: "usual forming temperature", given: (_, out) => out.normal.value },
    { symbol: "T_to", meaning: "surface limit on the safe side", is: "min(T_u, T_s)" },
    { symbol: "T_aim", meaning: "usual temperature held inside the window", is: "min(T_to, max(T_from, T_n))" },
    { symbol: "W", meaning: "width of the window", is: "T_to - T_from" },
    { symbol: "T_release", kind: "temperature", meaning: "lowest published set temperature", given: (_, out) => out.set.low },
  ],
  sources: [
    { title: "Technology of Thermoforming", by: "J. L. Throne", edition: "1996", where: "forming-temperature table (from memory)" },
    { title: "Bending clear PVC pipe", by: "pipe maker's guidance reproduced by U.S. Plastic Corp.", where: "temperature paragraph" },
    { title: "Forming cast and extruded acrylic sheet", by: "U.S. Plastic Corp.", where: "second paragraph" },
  ],
  solve,
  cautions,
})
