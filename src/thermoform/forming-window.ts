import {
  type Band,
  bandField,
  type Caution,
  caution,
  citation,
  type OutField,
  type SiOf,
  type Solver,
  type Source,
  solver,
} from "../solver/index.js"
import { type Figure, type Plastic, type PlasticData, plasticOptions, plastics } from "./data.js"
import {
  ACRYLIC_FORMING,
  BURN_TIMES,
  CHLORIDE_LIMIT,
  FOAM_SAFETY,
  FORMING_TABLE,
  PIPE_BENDING,
  PVC_COMPOUND_SAFETY,
  PVC_FOAM_GUIDE,
  PVC_KINETICS,
  practice,
  SPLINT_WATER,
} from "./sources.js"

/** Input of {@link formingWindow}. */
export interface FormingWindowInput {
  /** Plastic [one of 12 words] */
  material: Plastic
}

/** A published figure as a result shows it. */
export interface ShownFigure {
  /** Usual [°C] */
  readonly value: number
  /** Minimum published [°C] */
  readonly low: number
  /** Maximum published [°C] */
  readonly high: number
  /** Where it comes from. [text] */
  readonly source: string
}

/** Hazards and limits that an answer of {@link formingWindow} can carry. */
export type FormingWindowCaution = "narrow-window" | HeatCaution | WindowCaution

/** Result of {@link formingWindow}; every figure with its spread and source. */
export interface FormingWindow {
  /**
   * The safe side of the published temperatures: from the core temperature at which forming is sure to work (high end
   * of the lower limits) to the surface temperature not to pass (low end of the upper and scorch limits). [T_from to
   * T_to; °C]
   */
  readonly window: Band
  /** Temperature to aim at: the usual one, held inside `window`. [T_aim; °C] */
  readonly aimTemperature: number
  /** Width of the window [W; K] */
  readonly width: number
  /** Temperature below which the form may be released: the low end of the set temperatures. [T_release; °C] */
  readonly releaseTemperature: number
  /** Set temperature. [group] */
  readonly set: ShownFigure
  /** Lower forming limit. [group] */
  readonly lower: ShownFigure
  /** Usual forming temperature. [group] */
  readonly normal: ShownFigure
  /** Upper forming limit. [group] */
  readonly upper: ShownFigure
  /** Onset of vapours; null where no published one was found: then from the first heating on. [group] */
  readonly fume: ShownFigure | null
  /** Onset of charring or decomposition; null where no published one was found. [group] */
  readonly scorch: ShownFigure | null
  /** What the vapours are. [text] */
  readonly fumes: string
}

/** The safe side of a plastic's published window. */
export interface SafeWindow {
  readonly low: number
  readonly high: number
  readonly aim: number
  readonly release: number
  /** No source of heat is called workable above this: scorch onset, or the highest published surface where none is known. */
  readonly ceiling: number
}

/** The safe side of a plastic's published window. */
export function safeWindow(plastic: Plastic): SafeWindow {
  const { lower, upper, scorch, normal, set } = plastics[plastic]
  const low = lower.high
  const high = Math.min(upper.low, scorch?.low ?? upper.low)
  return { low, high, aim: Math.min(high, Math.max(low, normal.value)), release: set.low, ceiling: scorch?.low ?? upper.high }
}

/** A figure with its sources as text. */
const shownFigure = ({ value, low, high, sources }: Figure): ShownFigure => ({ value, low, high, source: sources.map(citation).join("; ") })

const figureField = (label: string): OutField<ShownFigure> => ({
  kind: "group",
  label,
  fields: {
    value: { kind: "temperature", label: "usual" },
    low: { kind: "temperature", label: "minimum published" },
    high: { kind: "temperature", label: "maximum published" },
    source: { kind: "text", label: "source" },
  },
})

const first = (figure: Figure): Source => figure.sources[0] as Source

/** Which limits of the advised window rest on a document that was not seen, on the side that the advice takes. */
const unverified = ({ lower, upper, set }: PlasticData): string =>
  Object.entries({ "lower limit": lower, "upper limit": upper, "set temperature": set })
    .filter(([, figure]) => first(figure).verified !== "seen")
    .map(([limit]) => limit)
    .join(", ")

/** What `windowCautions` can say. */
export type WindowCaution = "no-published-window" | "window-not-verified"

/** What `vapourCautions` can say. */
export type VapourCaution = "hydrogen-chloride" | "fumes"

/** What `heatingCautions` can say. */
export type HeatCaution = VapourCaution | "burns" | "hot-water" | "kitchen-oven" | "glue-on-foam" | "cells-collapse"

/** How far the limits that advice on this plastic keeps to were verified. */
export function windowCautions(plastic: Plastic): Caution<WindowCaution>[] {
  const data = plastics[plastic]
  if ([data.lower, data.upper, data.set].every(({ sources }) => sources.every((s) => s.verified === "practice")))
    return [caution("no-published-window", "note", "No published forming table was found for this plastic: try a scrap of the same sheet.")]
  const limits = unverified(data)
  if (limits === "") return []
  return [
    caution(
      "window-not-verified",
      "note",
      "Not verified against a document: this plastic's {limits}. Ask the sheet's maker for them, and try a scrap.",
      FORMING_TABLE,
      { limits },
    ),
  ]
}

const burns = (): Caution<"burns"> =>
  caution(
    "burns",
    "warning",
    "Hot plastic sticks to skin and burns within seconds (5 s at 60 °C): wear dry leather gloves and sleeves and keep cold water at hand.",
    BURN_TIMES,
  )

/** Vapours of a plastic while it is hot: being heated, carried or held in the jig. */
export function vapourCautions(plastic: Plastic): Caution<VapourCaution>[] {
  const { fume, fumes } = plastics[plastic]
  const found: Caution<VapourCaution>[] = []
  if (plastic === "pvc" || plastic === "pvc-foam")
    found.push(
      caution(
        "hydrogen-chloride",
        "warning",
        "Hot PVC gives off hydrogen chloride, which injures lungs and eyes (5 ppm in the air is never to be passed) and rusts the oven. It has no sharp onset and gathers with time: ventilate throughout heating and cooling, never use a kitchen oven or a naked flame, stop at the first browning or sharp smell, and leave the room until it has cleared.",
        CHLORIDE_LIMIT,
      ),
    )
  found.push(
    fume
      ? caution(
          "fumes",
          "warning",
          "Work outdoors or under extraction for as long as the plastic is hot: it gives off {vapours}. The lowest published onset is {onset temperature °C}, and a hot spot gets there sooner. Follow the maker's safety data sheet and local rules.",
          first(fume),
          { vapours: fumes, onset: fume.low },
        )
      : caution(
          "fumes",
          "warning",
          "Work outdoors or under extraction for as long as the plastic is hot: it can give off {vapours}, and no published onset was found, so count on it from the first heating. Follow the maker's safety data sheet and local rules.",
          practice,
          { vapours: fumes },
        ),
  )
  return found
}

/**
 * Fumes, burns and ovens: what goes with any heating of this plastic.
 *
 * @param wet - heated in a water bath, where there is no oven to warn of
 */
export function heatingCautions(plastic: Plastic, wet = false): Caution<HeatCaution>[] {
  const found: Caution<HeatCaution>[] = wet ? [] : vapourCautions(plastic)
  found.push(burns())
  found.push(
    wet
      ? caution(
          "hot-water",
          "warning",
          "Water hot enough to soften plastic scalds at once: lift the part out with tongs, let it drain, and never lay it on a person before its surface has been measured; on children, on numb skin and on wounds this is for trained people only.",
          SPLINT_WATER,
        )
      : caution(
          "kitchen-oven",
          "warning",
          "Never use an oven that is also used for food, nor an unvented one: fumes gather, may ignite, and domestic thermostats can be 42 K out. Measure the air beside the part.",
          ACRYLIC_FORMING,
        ),
  )
  if (plastic === "pvc-foam")
    found.push(
      caution(
        "cells-collapse",
        "caution",
        "Expanded sheet does not recover: too hot, or too long in the heat, its cells burst or collapse and the skin blisters. Heat both faces from 5 mm on, take it out as soon as it droops, and draw it less deep than solid PVC.",
        PVC_FOAM_GUIDE,
      ),
    )
  if (plastic === "eva-foam")
    found.push(
      caution(
        "glue-on-foam",
        "warning",
        "Contact glue and its solvent on foam give off vapour that burns and harms: no heat gun, oven or flame near until the solvent is gone right through, fresh air and a mask that its safety data sheet names, and try a scrap, since solvents eat some foams.",
        FOAM_SAFETY,
      ),
    )
  return found
}

function solve({ material }: SiOf<FormingWindowInput>): FormingWindow {
  const { set, lower, normal, upper, fume, scorch, fumes } = plastics[material]
  const { low, high, aim, release } = safeWindow(material)
  return {
    window: { low, high },
    aimTemperature: aim,
    width: high - low,
    releaseTemperature: release,
    set: shownFigure(set),
    lower: shownFigure(lower),
    normal: shownFigure(normal),
    upper: shownFigure(upper),
    fume: fume && shownFigure(fume),
    scorch: scorch && shownFigure(scorch),
    fumes,
  }
}

/** Narrower windows than this are easily missed, K. */
const NARROW = 25

function cautions({ material }: SiOf<FormingWindowInput>, out: FormingWindow): Caution<FormingWindowCaution>[] {
  const { upper } = plastics[material]
  const found: Caution<FormingWindowCaution>[] = heatingCautions(material, material === "low-temp-polyester")
  if (out.width < NARROW)
    found.push(
      caution(
        "narrow-window",
        "caution",
        "Only {width temperatureDifference} lie between too cold and too hot once the sources' spread is allowed for: heat slowly, turn the part and try a scrap first.",
        first(upper),
        { width: out.width },
      ),
    )
  found.push(...windowCautions(material))
  return found
}

/**
 * The temperatures between which a plastic can be formed, with the spread of the sources and their safe side.
 *
 * Formula: low = highest published lower limit, high = min(lowest published upper limit, lowest scorch onset where one is known), width = high − low,
 * aim = the usual forming temperature held inside the two, release = lowest published set temperature; all in °C.
 * Valid for plain grades: filled, flexible or recycled ones differ, and test temperatures (Vicat, deflection under 0.45 or
 * 1.8 MPa) are not interchangeable with each other.
 *
 * Each figure of the result carries its own source.
 *
 * **Inputs**
 * - `material`: plastic [one of 12 words]
 *
 * **Results**
 *
 * `window`: forming window [T_from to T_to; °C]; `aimTemperature`: target temperature [T_aim; °C]; `width`: width of
 * the window [W; K]; `releaseTemperature`: release temperature [T_release; °C]; `set`: set [group]; `lower`: lower
 * limit [group]; `normal`: usual [group]; `upper`: upper limit [group]; `fume`: vapours begin [group]; `scorch`:
 * scorch onset [group]; `fumes`: vapours [text].
 *
 * **Symbols of the working**
 *
 * T_u: lowest published upper limit [°C]; T_s: lowest scorch onset; the upper limit again where none is known [°C];
 * T_n: usual forming temperature [°C].
 *
 * **Sources**
 * - J. L. Throne: Technology of Thermoforming, 1996, forming-temperature table, ±6 K between handbooks (not verified
 *   against the document)
 * - U.S. Plastic Corp., from a pipe maker's guidance: Bending clear PVC pipe, 225 to 275 °F, sharp bends 250 to 275
 *   °F, support inside past 30°
 * - U.S. Plastic Corp.: Forming cast and extruded acrylic sheet, cast 340 to 380 °F, extruded 290 to 320 °F;
 *   thermostats 75 °F out; fumes may explode
 * - Material safety data sheet: rigid PVC compounds, pellet and powder, 16 May 2008, section 10: emissions also in
 *   normal operation, gathering where ventilation is poor
 * - R. Bacaloglu and M. Fisch: Degradation and stabilization of poly(vinyl chloride) I, kinetics of the thermal
 *   degradation, Polym. Degrad. Stab. 45, 1994, 301 to 313 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { formingWindow } from 'alula/thermoform'
 * const pipe = formingWindow({ material: 'pvc' })
 * pipe.window.low // => 107.2
 * pipe.window.high // => 135
 * pipe.normal.low // => 121.1
 * ```
 */
export const formingWindow: Solver<FormingWindowInput, FormingWindow, never, FormingWindowCaution> = /* @__PURE__ */ solver<
  FormingWindowInput,
  FormingWindow,
  never,
  FormingWindowCaution
>("formingWindow", "Between which temperatures a plastic can be formed", solve, () => ({
  input: { material: { kind: "choice", label: "plastic", options: plasticOptions } },
  output: {
    window: bandField("temperature", "forming window", {
      symbols: ["T_from", "T_to"],
      labels: ["minimum core temperature", "maximum surface temperature"],
    }),
    aimTemperature: { kind: "temperature", symbol: "T_aim", label: "target temperature" },
    width: { kind: "temperatureDifference", symbol: "W", label: "width of the window" },
    releaseTemperature: { kind: "temperature", symbol: "T_release", label: "release temperature" },
    set: figureField("set"),
    lower: figureField("lower limit"),
    normal: figureField("usual"),
    upper: figureField("upper limit"),
    fume: figureField("vapours begin"),
    scorch: figureField("scorch onset"),
    fumes: { kind: "text", label: "vapours" },
  },
  example: { material: "pvc" },
  formulae: [
    { symbol: "T_from", kind: "temperature", meaning: "highest published lower limit", given: (_, out) => out.lower.high },
    { symbol: "T_u", kind: "temperature", meaning: "lowest published upper limit", given: (_, out) => out.upper.low },
    {
      symbol: "T_s",
      kind: "temperature",
      meaning: "lowest scorch onset; the upper limit again where none is known",
      given: (_, out) => out.scorch?.low ?? out.upper.low,
    },
    { symbol: "T_n", kind: "temperature", meaning: "usual forming temperature", given: (_, out) => out.normal.value },
    { symbol: "T_to", meaning: "surface limit on the safe side", is: "min(T_u, T_s)" },
    { symbol: "T_aim", meaning: "usual temperature held inside the window", is: "min(T_to, max(T_from, T_n))" },
    { symbol: "W", meaning: "width of the window", is: "T_to - T_from" },
    { symbol: "T_release", kind: "temperature", meaning: "lowest published set temperature", given: (_, out) => out.set.low },
  ],
  sources: [FORMING_TABLE, PIPE_BENDING, ACRYLIC_FORMING, PVC_COMPOUND_SAFETY, PVC_KINETICS],
  cautions,
}))
