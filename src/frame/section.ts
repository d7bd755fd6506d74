import type { Area, Length, SecondMoment } from "../quantity/index.js"
import { type Either, type Fields, type Issue, inconsistent, optionsFrom, type SiOf, type Step } from "../solver/index.js"
import { meanWall, type PipeSize, pipes } from "./data-pipes.js"
import { ASME_B36_10, BREDT, ELASTICITY } from "./sources.js"

/** A cross-section by its shape: a standard pipe, a round or a rectangular tube or bar. */
export interface ShapeInput {
  /** Standard pipe by nominal size, calculated at its minimum wall. [one of 11 words; optional] */
  pipe?: PipeSize | null
  /** Outside diameter of a round tube or bar. [D; 0.1 mm to 2 m; optional] */
  outsideDiameter?: Length | null
  /** Width of a rectangular tube or bar, across the load. [b_w; 0.1 mm to 2 m; optional] */
  width?: Length | null
  /** Height of a rectangular tube or bar, along the load. [h_w; 0.1 mm to 2 m; optional] */
  height?: Length | null
  /** Wall; leave out for a solid bar. [t_w; 0.01 mm to 1 m; optional] */
  wall?: Length | null
}

/** A cross-section by its shape, or by its figures where the shape is another. */
export interface SectionInput extends ShapeInput {
  /** Second moment of area of another shape. [I_g; 1e−6 mm⁴ to 1 m⁴; optional] */
  secondMoment?: SecondMoment | null
  /** Distance from its neutral axis to the outermost fibre. [c_g; 0.01 mm to 1 m; optional] */
  fibre?: Length | null
  /** Area of another shape. [A_g; 0.01 mm² to 1 m²; optional] */
  area?: Area | null
}

/** Figures of a cross-section, SI; null where the shape is not known well enough. */
export interface Section {
  /** Area, m². */
  readonly area: number | null
  /** Area that its weight corresponds to, m²: that at the mean wall for pipe. */
  readonly weightArea: number | null
  /** Second moment of area about the axis across the load, m⁴. */
  readonly secondMoment: number
  /** Neutral axis to outermost fibre, m. */
  readonly fibre: number | null
  /** First moment of half the area about the neutral axis, m³. */
  readonly firstMoment: number | null
  /** Material width at the neutral axis, m. */
  readonly shearWidth: number | null
  /** Torsion constant, m⁴. */
  readonly torsionConstant: number | null
  /** Torsion section modulus, m³. */
  readonly torsionModulus: number | null
  /** Mean radius and wall of a round tube, m. */
  readonly tube: { readonly meanRadius: number; readonly wall: number } | null
}

function roundSection(outside: number, wall: number | null, weightWall: number | null): Section {
  const inside = wall === null ? 0 : outside - 2 * wall
  const areaOf = (d: number) => (Math.PI / 4) * (outside ** 2 - d ** 2)
  const secondMoment = (Math.PI / 64) * (outside ** 4 - inside ** 4)
  return {
    area: areaOf(inside),
    weightArea: areaOf(weightWall === null ? inside : outside - 2 * weightWall),
    secondMoment,
    fibre: outside / 2,
    firstMoment: (outside ** 3 - inside ** 3) / 12,
    shearWidth: outside - inside,
    torsionConstant: 2 * secondMoment,
    torsionModulus: (4 * secondMoment) / outside,
    tube: wall === null ? null : { meanRadius: (outside - wall) / 2, wall },
  }
}

/** Σ 1/n⁵ over odd n, 31/32·ζ(5). */
const oddFifths = (31 / 32) * 1.03692775514337
const odd = [1, 3, 5, 7, 9, 11] as const

/** Torsion constant and modulus of a solid rectangle: Saint-Venant's series, summed to rounding. */
function solidTorsion(width: number, height: number): { constant: number; modulus: number } {
  const [a, b] = [Math.max(width, height), Math.min(width, height)]
  const ratio = (Math.PI * a) / (2 * b)
  const tail = odd.reduce((sum, n) => sum + (1 - Math.tanh(n * ratio)) / n ** 5, 0)
  const constant = a * b ** 3 * (1 / 3 - (64 / Math.PI ** 5) * (b / a) * (oddFifths - tail))
  const edge = odd.reduce((sum, n) => sum + 1 / (n ** 2 * Math.cosh(n * ratio)), 0)
  return { constant, modulus: constant / (b * (1 - (8 / Math.PI ** 2) * edge)) }
}

function rectangularSection(width: number, height: number, wall: number | null): Section {
  const [w, h] = wall === null ? [0, 0] : [width - 2 * wall, height - 2 * wall]
  const area = width * height - w * h
  const t = wall ?? 0
  const enclosed = (width - t) * (height - t)
  const hollow = { constant: (2 * t * enclosed ** 2) / (width + height - 2 * t), modulus: 2 * t * enclosed }
  const torsion = wall === null ? solidTorsion(width, height) : hollow
  return {
    area,
    weightArea: area,
    secondMoment: (width * height ** 3 - w * h ** 3) / 12,
    fibre: height / 2,
    firstMoment: (width * height ** 2 - w * h ** 2) / 8,
    shearWidth: width - w,
    torsionConstant: torsion.constant,
    torsionModulus: torsion.modulus,
    tube: null,
  }
}

/** Figures of a cross-section given in SI; which shape it is follows from what is given. */
export function sectionOf(si: SiOf<SectionInput>): Section {
  const { pipe, outsideDiameter, width, height, wall, secondMoment, fibre, area } = si
  if (pipe !== null) return roundSection(pipes[pipe].outsideDiameter, pipes[pipe].wall, meanWall(pipe))
  if (outsideDiameter !== null) return roundSection(outsideDiameter, wall, null)
  if (width !== null && height !== null) return rectangularSection(width, height, wall)
  return {
    area,
    weightArea: area,
    secondMoment: secondMoment as number,
    fibre,
    firstMoment: null,
    shearWidth: null,
    torsionConstant: null,
    torsionModulus: null,
    tube: null,
  }
}

/** Reads a shape as a section: none of the figures of another shape. */
export function shapeSection(si: SiOf<ShapeInput>): Section {
  return sectionOf({ ...si, secondMoment: null, fibre: null, area: null })
}

/** Faults between the fields of a shape or section found at `path`. */
export function sectionFaults(si: SiOf<ShapeInput>, path: readonly (string | number)[] = []): Issue[] {
  const { outsideDiameter, width, height, wall } = si
  const narrow = outsideDiameter ?? Math.min(width ?? Number.POSITIVE_INFINITY, height ?? Number.POSITIVE_INFINITY)
  if (wall === null || wall < narrow / 2) return []
  return [
    inconsistent([...path, "wall"], "{wall length}", "less than half of {narrow length}; leave wall out for a solid bar", { wall, narrow }),
  ]
}

/** The same, for a section that must be known well enough to be weighed and stressed: area and fibre beside a second moment. */
export function wholeSectionFaults(si: SiOf<SectionInput>, path: readonly (string | number)[]): Issue[] {
  const faults = sectionFaults(si, path)
  if (si.secondMoment !== null && (si.area === null || si.fibre === null))
    faults.push(inconsistent([...path, "area"], "not all", "area and outermost fibre beside the second moment"))
  return faults
}

const WALLED = ["outsideDiameter", ["width", "height"]] as const

/** One shape is given; a wall only where the shape leaves it open. */
export const shapeRules = [{ exactlyOne: ["pipe", ...WALLED] }, { given: "wall", needs: WALLED }] as const satisfies readonly Either[]

/** One shape, or its figures. */
export const sectionRules = [
  { exactlyOne: ["pipe", ...WALLED, "secondMoment"] },
  { given: "wall", needs: WALLED },
  { given: "fibre", needs: ["secondMoment"] },
  { given: "area", needs: ["secondMoment"] },
] as const satisfies readonly Either[]

/** Field descriptions of {@link ShapeInput}. */
export const shapeFields: Fields<ShapeInput> = {
  pipe: { kind: "choice", label: "standard pipe", options: optionsFrom(pipes, (key) => pipes[key].label), default: null },
  outsideDiameter: {
    kind: "length",
    symbol: "D",
    label: "outside diameter",
    min: "0.1 mm",
    max: 2,
    typical: ["6 mm", "60 mm"],
    default: null,
  },
  width: { kind: "length", symbol: "b_w", label: "width", min: "0.1 mm", max: 2, typical: ["8 mm", "40 mm"], default: null },
  height: { kind: "length", symbol: "h_w", label: "height", min: "0.1 mm", max: 2, typical: ["8 mm", "40 mm"], default: null },
  wall: { kind: "length", symbol: "t_w", label: "wall", min: "0.01 mm", max: 1, typical: ["0.8 mm", "2.5 mm"], default: null },
}

/** Field descriptions of {@link SectionInput}. */
export const sectionFields: Fields<SectionInput> = {
  ...shapeFields,
  secondMoment: {
    kind: "secondMoment",
    symbol: "I_g",
    label: "second moment of area",
    min: "1e-6 mm4",
    max: 1,
    typical: ["100 mm4", "1e5 mm4"],
    default: null,
  },
  fibre: {
    kind: "length",
    symbol: "c_g",
    label: "distance to the outermost fibre",
    min: "0.01 mm",
    max: 1,
    typical: ["3 mm", "30 mm"],
    default: null,
  },
  area: { kind: "area", symbol: "A_g", label: "area", min: "0.01 mm2", max: 1, typical: ["20 mm2", "300 mm2"], default: null },
}

const isRound = "has_pipe or has_outsideDiameter"

/**
 * Steps that work out D_o, D_i, A, I, c and, where `torsion` is wanted, Q, b_n, J and W_t.
 *
 * @param shapeOf - finds the shape in a solver's input
 */
export function sectionSteps<Si, Out>(shapeOf: (si: Si) => SiOf<ShapeInput>, torsion: boolean, hasGiven: boolean): Step<Si, Out>[] {
  const pipeOf = (si: Si) => shapeOf(si).pipe
  const basic: Step<Si, Out>[] = [
    {
      symbol: "D_p",
      kind: "length",
      meaning: "outside diameter of the pipe, 0 where it is none",
      given: (si) => pipes[pipeOf(si) ?? "1"].outsideDiameter * (pipeOf(si) === null ? 0 : 1),
      source: ASME_B36_10,
    },
    {
      symbol: "t_p",
      kind: "length",
      meaning: "minimum wall of the pipe, 0 where it is none",
      given: (si) => pipes[pipeOf(si) ?? "1"].wall * (pipeOf(si) === null ? 0 : 1),
      source: ASME_B36_10,
    },
    { symbol: "D_o", kind: "length", meaning: "outside diameter", is: "D_p", when: "has_pipe" },
    { symbol: "D_i", kind: "length", meaning: "inside diameter", is: "D_p - 2 * t_p", when: "has_pipe" },
    { symbol: "D_o", kind: "length", meaning: "outside diameter", is: "D", when: "has_outsideDiameter" },
    { symbol: "D_i", kind: "length", meaning: "inside diameter", is: "D - 2 * t_w", when: "has_outsideDiameter and has_wall" },
    { symbol: "D_i", kind: "length", meaning: "inside diameter of a solid bar", is: "0 * D", when: "has_outsideDiameter and not has_wall" },
    { symbol: "A", kind: "area", meaning: "area of the ring", is: "pi / 4 * (D_o^2 - D_i^2)", when: isRound },
    { symbol: "I", kind: "secondMoment", meaning: "second moment of the ring", is: "pi / 64 * (D_o^4 - D_i^4)", when: isRound },
    { symbol: "c", kind: "length", meaning: "neutral axis to outermost fibre", is: "D_o / 2", when: isRound },
    { symbol: "b_i", kind: "length", meaning: "width inside", is: "b_w - 2 * t_w", when: "has_width and has_wall" },
    { symbol: "h_i", kind: "length", meaning: "height inside", is: "h_w - 2 * t_w", when: "has_width and has_wall" },
    { symbol: "b_i", kind: "length", meaning: "width inside a solid bar", is: "0 * b_w", when: "has_width and not has_wall" },
    { symbol: "h_i", kind: "length", meaning: "height inside a solid bar", is: "0 * h_w", when: "has_width and not has_wall" },
    { symbol: "A", kind: "area", meaning: "area of the rectangle", is: "b_w * h_w - b_i * h_i", when: "has_width" },
    {
      symbol: "I",
      kind: "secondMoment",
      meaning: "second moment of the rectangle",
      is: "(b_w * h_w^3 - b_i * h_i^3) / 12",
      when: "has_width",
    },
    { symbol: "c", kind: "length", meaning: "neutral axis to outermost fibre", is: "h_w / 2", when: "has_width" },
    // what bends by its first moment and width at the neutral axis
    { symbol: "Q", kind: "volume", meaning: "first moment of half the ring", is: "(D_o^3 - D_i^3) / 12", when: isRound },
    { symbol: "b_n", kind: "length", meaning: "material at the neutral axis", is: "D_o - D_i", when: isRound },
    {
      symbol: "Q",
      kind: "volume",
      meaning: "first moment of half the rectangle",
      is: "(b_w * h_w^2 - b_i * h_i^2) / 8",
      when: "has_width",
    },
    { symbol: "b_n", kind: "length", meaning: "material at the neutral axis", is: "b_w - b_i", when: "has_width" },
  ]
  const given: Step<Si, Out>[] = [
    { symbol: "A", kind: "area", meaning: "area as given", is: "A_g", when: "has_area" },
    { symbol: "I", kind: "secondMoment", meaning: "second moment as given", is: "I_g", when: "has_secondMoment" },
    { symbol: "c", kind: "length", meaning: "outermost fibre as given", is: "c_g", when: "has_fibre" },
  ]
  const solid = "has_width and not has_wall"
  const twist: Step<Si, Out>[] = [
    { symbol: "J", meaning: "torsion constant of the ring", is: "2 * I", when: isRound },
    { symbol: "W_t", meaning: "torsion section modulus of the ring", is: "2 * J / D_o", when: isRound },
    {
      symbol: "A_m",
      kind: "area",
      meaning: "area inside the wall's middle line",
      is: "(b_w - t_w) * (h_w - t_w)",
      when: "has_width and has_wall",
    },
    {
      symbol: "J",
      meaning: "torsion constant of the closed tube",
      is: "4 * A_m^2 * t_w / (2 * (b_w + h_w - 2 * t_w))",
      when: "has_width and has_wall",
      source: BREDT,
    },
    {
      symbol: "W_t",
      meaning: "torsion section modulus of the closed tube",
      is: "2 * A_m * t_w",
      when: "has_width and has_wall",
      source: BREDT,
    },
    { symbol: "a_s", kind: "length", meaning: "long side", is: "max(b_w, h_w)", when: solid },
    { symbol: "b_s", kind: "length", meaning: "short side", is: "min(b_w, h_w)", when: solid },
    {
      symbol: "k_5",
      kind: "number",
      meaning: "series for the stiffness",
      is: "31 / 32 * 1.03692775514337 - sum(map([1, 3, 5, 7, 9, 11], f(n) = (1 - tanh(n * pi * a_s / (2 * b_s))) / n^5))",
      when: solid,
      source: ELASTICITY,
    },
    {
      symbol: "k_2",
      kind: "number",
      meaning: "series for the stress",
      is: "sum(map([1, 3, 5, 7, 9, 11], f(n) = 1 / (n^2 * cosh(n * pi * a_s / (2 * b_s)))))",
      when: solid,
      source: ELASTICITY,
    },
    {
      symbol: "J",
      meaning: "torsion constant of the bar",
      is: "a_s * b_s^3 * (1 / 3 - 64 / pi^5 * b_s / a_s * k_5)",
      when: solid,
    },
    { symbol: "W_t", meaning: "torsion section modulus of the bar", is: "J / (b_s * (1 - 8 / pi^2 * k_2))", when: solid },
  ]
  return [...basic, ...(hasGiven ? given : []), ...(torsion ? twist : [])]
}
