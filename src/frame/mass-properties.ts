import type { Length, Mass } from "../quantity/index.js"
import { type Caution, caution, type Issue, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import { MERIAM } from "./sources.js"

/**
 * One part: a point, a bar or plate (length, width, height), or a rod or tube (length, diameter, bore). Length runs
 * along `direction`, width level across it, height across both.
 */
export interface BodyPart {
  /** What it is. [text of 1 to 100 characters; default part] */
  name?: string
  /** Mass [m_i; 1 mg to 1000 kg] */
  mass: Mass
  /** Centre, along x [x_i; −100 to 100 m] */
  x: Length
  /** Centre, along y [y_i; −100 to 100 m] */
  y: Length
  /** Centre, along z, upwards. [z_i; −100 to 100 m] */
  z: Length
  /** Size along its direction. [l_i; 0 to 100 m; default 0] */
  length?: Length
  /** Width of a bar or plate, level. [b_i; 0 to 100 m; default 0] */
  width?: Length
  /** Height of a bar or plate. [h_i; 0 to 100 m; default 0] */
  height?: Length
  /** Outside diameter of a rod or tube. [D_i; 0 to 100 m; default 0] */
  outsideDiameter?: Length
  /** Inside diameter of a tube. [B_i; 0 to 100 m; default 0] */
  bore?: Length
  /** Direction of its length: x part; any length of arrow will do. [e_x; −1000000 to 1000000; default 1] */
  directionX?: number
  /** Direction of its length: y part. [e_y; −1000000 to 1000000; default 0] */
  directionY?: number
  /** Direction of its length: z part. [e_z; −1000000 to 1000000; default 0] */
  directionZ?: number
}

/** Input of {@link massProperties}. */
export interface MassPropertiesInput {
  /** Parts [list of 1 to 1000] */
  parts: readonly BodyPart[]
  /** A point on the axis, x. [x_a; −100 to 100 m; default 0] */
  axisX?: Length
  /** A point on the axis, y. [y_a; −100 to 100 m; default 0] */
  axisY?: Length
  /** A point on the axis, z. [z_a; −100 to 100 m; default 0] */
  axisZ?: Length
  /** Direction of the axis: x part; any length of arrow will do. [a_x; −1000000 to 1000000; default 0] */
  axisDirectionX?: number
  /** Axis direction, y part [a_y; −1000000 to 1000000; default 0] */
  axisDirectionY?: number
  /** Axis direction, z part [a_z; −1000000 to 1000000; default 1] */
  axisDirectionZ?: number
}

/** Result of {@link massProperties}. */
export interface MassProperties {
  /** Whole mass. [m_t; kg] */
  readonly mass: number
  /** Centre of mass, x [x_c; m] */
  readonly x: number
  /** Centre of mass, y [y_c; m] */
  readonly y: number
  /** Centre of mass, upwards [z_c; m] */
  readonly z: number
  /** Moment of inertia about the axis. [I_a; kg m²] */
  readonly inertia: number
  /** Moment of inertia about the line through the centre of mass along the axis. [I_c; kg m²] */
  readonly inertiaAtCentre: number
  /** Distance of the centre of mass from the axis. [r_c; m] */
  readonly axisDistance: number
  /** Radius of gyration about the axis. [k_a; m] */
  readonly radiusOfGyration: number
  /** Inertia about the centre of mass, along x, y and z. [I_x; kg m²] */
  readonly inertiaX: number
  /** Inertia at the centre, along y [I_y; kg m²] */
  readonly inertiaY: number
  /** Inertia at the centre, along z [I_z; kg m²] */
  readonly inertiaZ: number
  /** Products of inertia about the centre of mass, Σ m·x·y and so on. [P_xy; kg m²] */
  readonly productXY: number
  /** Product of inertia, y z [P_yz; kg m²] */
  readonly productYZ: number
  /** Product of inertia, z x [P_zx; kg m²] */
  readonly productZX: number
}

/** Hazards and limits of validity that go with an answer of {@link massProperties}. */
export type MassPropertiesCaution = "point-parts"

type Vector = readonly [number, number, number]
/** Square of the part of a across the unit vector u. */
const acrossSquared = (a: Vector, u: Vector) =>
  (a[1] * u[2] - a[2] * u[1]) ** 2 + (a[2] * u[0] - a[0] * u[2]) ** 2 + (a[0] * u[1] - a[1] * u[0]) ** 2
const unit = (a: Vector): Vector => {
  const size = Math.hypot(...a)
  return [a[0] / size, a[1] / size, a[2] / size]
}

/** Directions of a part's length, width and height: the width lies level, along y for an upright part. */
function framing(direction: Vector): { d: Vector; w: Vector; h: Vector } {
  const d = unit(direction)
  const level = Math.hypot(d[0], d[1])
  const w: Vector = level < 1e-9 ? [0, 1, 0] : [-d[1] / level, d[0] / level, 0]
  const h: Vector = [d[1] * w[2] - d[2] * w[1], d[2] * w[0] - d[0] * w[2], d[0] * w[1] - d[1] * w[0]]
  return { d, w, h }
}

/** Mean squared distance of a part's matter from its centre along its length, width and height, m². */
function spread({ length, width, height, outsideDiameter, bore }: SiOf<BodyPart>): Vector {
  const ring = (outsideDiameter ** 2 + bore ** 2) / 16
  return [length ** 2 / 12, width ** 2 / 12 + ring, height ** 2 / 12 + ring]
}

const directionOf = (p: SiOf<BodyPart>): Vector => [p.directionX, p.directionY, p.directionZ]
const axisOf = (si: SiOf<MassPropertiesInput>): Vector => [si.axisDirectionX, si.axisDirectionY, si.axisDirectionZ]

/** The kernel of {@link massProperties}, for parts in SI. */
export function massOf(si: SiOf<MassPropertiesInput>): MassProperties {
  let [mass, sx, sy, sz] = [0, 0, 0, 0]
  for (const p of si.parts) {
    mass += p.mass
    sx += p.mass * p.x
    sy += p.mass * p.y
    sz += p.mass * p.z
  }
  const centre: Vector = [sx / mass, sy / mass, sz / mass]
  // second moments of mass about the centre: Σ m·xᵢ·xⱼ
  const second = [0, 0, 0, 0, 0, 0] as [number, number, number, number, number, number]
  for (const p of si.parts) {
    const { d, w, h } = framing(directionOf(p))
    const [sd, sw, sh] = spread(p)
    const r: Vector = [p.x - centre[0], p.y - centre[1], p.z - centre[2]]
    const term = (i: 0 | 1 | 2, j: 0 | 1 | 2) => p.mass * (r[i] * r[j] + sd * d[i] * d[j] + sw * w[i] * w[j] + sh * h[i] * h[j])
    second[0] += term(0, 0)
    second[1] += term(1, 1)
    second[2] += term(2, 2)
    second[3] += term(0, 1)
    second[4] += term(1, 2)
    second[5] += term(2, 0)
  }
  const [xx, yy, zz, xy, yz, zx] = second
  const u = unit(axisOf(si))
  // summed as squares, so that a thin rod about its own line gives nothing and never less
  const inertiaAtCentre = si.parts.reduce((sum, p) => {
    const { d, w, h } = framing(directionOf(p))
    const [sd, sw, sh] = spread(p)
    const r: Vector = [p.x - centre[0], p.y - centre[1], p.z - centre[2]]
    return sum + p.mass * (acrossSquared(r, u) + sd * acrossSquared(d, u) + sw * acrossSquared(w, u) + sh * acrossSquared(h, u))
  }, 0)
  const axisDistance = Math.sqrt(acrossSquared([centre[0] - si.axisX, centre[1] - si.axisY, centre[2] - si.axisZ], u))
  const inertia = inertiaAtCentre + mass * axisDistance ** 2
  return {
    mass,
    x: centre[0],
    y: centre[1],
    z: centre[2],
    inertia,
    inertiaAtCentre,
    axisDistance,
    radiusOfGyration: Math.sqrt(inertia / mass),
    inertiaX: yy + zz,
    inertiaY: zz + xx,
    inertiaZ: xx + yy,
    productXY: xy,
    productYZ: yz,
    productZX: zx,
  }
}

function check(si: SiOf<MassPropertiesInput>): Issue[] {
  const faults: Issue[] = []
  if (!(Math.hypot(...axisOf(si)) > 1e-6))
    faults.push(inconsistent(["axisDirectionX"], "no direction", "an axis direction other than 0, 0, 0"))
  for (const [i, p] of si.parts.entries()) {
    if (!(Math.hypot(...directionOf(p)) > 1e-6))
      faults.push(inconsistent(["parts", i, "directionX"], "no direction", "a direction other than 0, 0, 0"))
    if (p.outsideDiameter > 0 && (p.width > 0 || p.height > 0))
      faults.push(
        inconsistent(["parts", i, "outsideDiameter"], "a diameter beside a width or height", "either a diameter or width and height"),
      )
    if (p.bore > 0 && !(p.bore < p.outsideDiameter))
      faults.push(
        inconsistent(["parts", i, "bore"], "{bore length}", "less than the diameter of {outsideDiameter length}", {
          bore: p.bore,
          outsideDiameter: p.outsideDiameter,
        }),
      )
  }
  return faults
}

function cautions(si: SiOf<MassPropertiesInput>): Caution<MassPropertiesCaution>[] {
  return si.parts.some((p) => p.length + p.width + p.height + p.outsideDiameter === 0)
    ? [
        caution(
          "point-parts",
          "note",
          "Parts without a size count as points: their own inertia is left out, which makes a hinge look lighter to swing than it is.",
          MERIAM,
        ),
      ]
    : []
}

const placeField = (symbol: string, label: string) => ({ kind: "length", symbol, label, min: -100, max: 100, typical: [-1, 1] }) as const
const sizeField = (symbol: string, label: string) =>
  ({ kind: "length", symbol, label, min: 0, max: 100, typical: [0, 1], default: 0 }) as const
const arrowField = <D extends number>(symbol: string, label: string, fallback: D) =>
  ({ kind: "number", symbol, label, min: -1e6, max: 1e6, typical: [-1, 1], default: fallback }) as const

const column = (pick: (p: SiOf<BodyPart>) => number) => (si: SiOf<MassPropertiesInput>) => si.parts.map(pick)
const part = (which: "d" | "w" | "h", i: 0 | 1 | 2) => column((p) => framing(directionOf(p))[which][i])
const second = (i: 0 | 1 | 2, j: 0 | 1 | 2) => {
  const r = ["(x_i - x_c)", "(y_i - y_c)", "(z_i - z_c)"] as const
  const e = ["x", "y", "z"] as const
  const own = (["d", "w", "h"] as const).map((k) => `s_${k} .* ${k}_${e[i]} .* ${k}_${e[j]}`).join(" + ")
  return `sum(m_i .* (${r[i]} .* ${r[j]} + ${own}))`
}

/** Text of the squared part of an arrow across the axis arrow, times the square of the latter's length. */
const across = (x: string, y: string, z: string) =>
  `(${y} * a_z - ${z} * a_y).^2 + (${z} * a_x - ${x} * a_z).^2 + (${x} * a_y - ${y} * a_x).^2`

/**
 * Mass, centre of mass and moment of inertia of a list of parts.
 *
 * Formula: m = Σ mᵢ, r_c = Σ mᵢ·rᵢ / m, I = Σ mᵢ·(ρᵢ² + kᵢ²): ρᵢ is the distance of the part's centre from the axis and
 * kᵢ the radius of gyration of the part itself about the parallel line through its centre, of a bar (l² + b²)/12 and so
 * on, of a tube (D² + d²)/8 along and (D² + d²)/16 + l²/12 across. The axis passes through (axisX, axisY, axisZ) along
 * (axisDirectionX, Y, Z). x, y, z are the parts' centres (m, z upwards); a part's length runs along (directionX, Y, Z).
 * Valid for rigid parts of even density.
 *
 * **Inputs**
 * - `parts`: parts [list of 1 to 1000]
 *   - `name`: name [text of 1 to 100 characters; default part]
 *   - `mass`: mass [m_i; 1 mg to 1000 kg]
 *   - `x`: centre, along x [x_i; −100 to 100 m]
 *   - `y`: centre, along y [y_i; −100 to 100 m]
 *   - `z`: centre, upwards [z_i; −100 to 100 m]
 *   - `length`: length [l_i; 0 to 100 m; default 0]
 *   - `width`: width [b_i; 0 to 100 m; default 0]
 *   - `height`: height [h_i; 0 to 100 m; default 0]
 *   - `outsideDiameter`: outside diameter [D_i; 0 to 100 m; default 0]
 *   - `bore`: bore [B_i; 0 to 100 m; default 0]
 *   - `directionX`: direction, x part [e_x; −1000000 to 1000000; default 1]
 *   - `directionY`: direction, y part [e_y; −1000000 to 1000000; default 0]
 *   - `directionZ`: direction, z part [e_z; −1000000 to 1000000; default 0]
 * - `axisX`: axis passes through x [x_a; −100 to 100 m; default 0]
 * - `axisY`: axis passes through y [y_a; −100 to 100 m; default 0]
 * - `axisZ`: axis passes through z [z_a; −100 to 100 m; default 0]
 * - `axisDirectionX`: axis direction, x part [a_x; −1000000 to 1000000; default 0]
 * - `axisDirectionY`: axis direction, y part [a_y; −1000000 to 1000000; default 0]
 * - `axisDirectionZ`: axis direction, z part [a_z; −1000000 to 1000000; default 1]
 *
 * **Results**
 *
 * `mass`: mass [m_t; kg]; `x`: centre of mass, x [x_c; m]; `y`: centre of mass, y [y_c; m]; `z`: centre of mass,
 * upwards [z_c; m]; `inertia`: inertia about the axis [I_a; kg m²]; `inertiaAtCentre`: inertia about its own centre
 * [I_c; kg m²]; `axisDistance`: centre of mass from the axis [r_c; m]; `radiusOfGyration`: radius of gyration [k_a;
 * m]; `inertiaX`: inertia at the centre, along x [I_x; kg m²]; `inertiaY`: inertia at the centre, along y [I_y; kg
 * m²]; `inertiaZ`: inertia at the centre, along z [I_z; kg m²]; `productXY`: product of inertia, x y [P_xy; kg m²];
 * `productYZ`: product of inertia, y z [P_yz; kg m²]; `productZX`: product of inertia, z x [P_zx; kg m²].
 *
 * **Symbols of the working**
 *
 * d_x: unit arrows along the lengths, x; d_y: unit arrows along the lengths, y; d_z: unit arrows along the lengths, z;
 * w_x: unit arrows along the widths, x; w_y: unit arrows along the widths, y; w_z: unit arrows along the widths, z;
 * h_x: unit arrows along the heights, x; h_y: unit arrows along the heights, y; h_z: unit arrows along the heights, z;
 * s_d: mean square along the lengths [m²]; s_w: mean square along the widths [m²]; s_h: mean square along the heights
 * [m²]; S_x: second moment of mass along x [kg m²]; S_y: second moment of mass along y [kg m²]; S_z: second moment of
 * mass along z [kg m²]; a_l: length of the axis arrow.
 *
 * **Sources**
 * - J. L. Meriam, L. G. Kraige: Engineering Mechanics: Dynamics, 7th, 2012, appendix B, table D/4 (not verified
 *   against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { massProperties } from 'alula/frame'
 * const wing = massProperties({
 *   parts: [
 *     { name: 'spar', mass: '120 g', x: '450 mm', y: 0, z: 0, length: '900 mm' },
 *     { name: 'lamp', mass: '80 g', x: '850 mm', y: 0, z: '20 mm' },
 *   ],
 *   axisDirectionY: 1, axisDirectionZ: 0,
 * })
 * wing.mass // => 0.2
 * wing.x // => 0.61
 * wing.inertia // => 0.090232
 * ```
 */
export const massProperties: Solver<MassPropertiesInput, MassProperties, never, MassPropertiesCaution> = /* @__PURE__ */ solver<
  MassPropertiesInput,
  MassProperties,
  never,
  MassPropertiesCaution
>("massProperties", "What it weighs, where it balances, how hard it is to swing", massOf, () => ({
  input: {
    parts: {
      kind: "list",
      label: "parts",
      of: {
        kind: "group",
        label: "part",
        fields: {
          name: { kind: "text", label: "name", min: 1, max: 100, default: "part" },
          mass: { kind: "mass", symbol: "m_i", label: "mass", min: "1 mg", max: 1000, typical: ["10 g", "1 kg"] },
          x: placeField("x_i", "centre, along x"),
          y: placeField("y_i", "centre, along y"),
          z: placeField("z_i", "centre, upwards"),
          length: sizeField("l_i", "length"),
          width: sizeField("b_i", "width"),
          height: sizeField("h_i", "height"),
          outsideDiameter: sizeField("D_i", "outside diameter"),
          bore: sizeField("B_i", "bore"),
          directionX: arrowField("e_x", "direction, x part", 1),
          directionY: arrowField("e_y", "direction, y part", 0),
          directionZ: arrowField("e_z", "direction, z part", 0),
        },
      },
      min: 1,
      max: 1000,
    },
    axisX: { ...placeField("x_a", "axis passes through x"), default: 0 },
    axisY: { ...placeField("y_a", "axis passes through y"), default: 0 },
    axisZ: { ...placeField("z_a", "axis passes through z"), default: 0 },
    axisDirectionX: arrowField("a_x", "axis direction, x part", 0),
    axisDirectionY: arrowField("a_y", "axis direction, y part", 0),
    axisDirectionZ: arrowField("a_z", "axis direction, z part", 1),
  },
  output: {
    mass: { kind: "mass", symbol: "m_t", label: "mass" },
    x: { kind: "length", symbol: "x_c", label: "centre of mass, x" },
    y: { kind: "length", symbol: "y_c", label: "centre of mass, y" },
    z: { kind: "length", symbol: "z_c", label: "centre of mass, upwards" },
    inertia: { kind: "momentOfInertia", symbol: "I_a", label: "inertia about the axis" },
    inertiaAtCentre: { kind: "momentOfInertia", symbol: "I_c", label: "inertia about its own centre" },
    axisDistance: { kind: "length", symbol: "r_c", label: "centre of mass from the axis" },
    radiusOfGyration: { kind: "length", symbol: "k_a", label: "radius of gyration" },
    inertiaX: { kind: "momentOfInertia", symbol: "I_x", label: "inertia at the centre, along x" },
    inertiaY: { kind: "momentOfInertia", symbol: "I_y", label: "inertia at the centre, along y" },
    inertiaZ: { kind: "momentOfInertia", symbol: "I_z", label: "inertia at the centre, along z" },
    productXY: { kind: "momentOfInertia", symbol: "P_xy", label: "product of inertia, x y" },
    productYZ: { kind: "momentOfInertia", symbol: "P_yz", label: "product of inertia, y z" },
    productZX: { kind: "momentOfInertia", symbol: "P_zx", label: "product of inertia, z x" },
  },
  example: {
    parts: [
      { name: "spar", mass: "120 g", x: "450 mm", y: 0, z: 0, length: "900 mm", outsideDiameter: "12 mm", bore: "10 mm" },
      { name: "skin", mass: "90 g", x: "400 mm", y: "-150 mm", z: "10 mm", length: "800 mm", width: "300 mm", height: "1 mm" },
      { name: "lamp", mass: "80 g", x: "850 mm", y: 0, z: "20 mm" },
    ],
    axisDirectionY: 1,
    axisDirectionZ: 0,
  },
  formulae: [
    { symbol: "d_x", kind: "number", meaning: "unit arrows along the lengths, x", given: part("d", 0) },
    { symbol: "d_y", kind: "number", meaning: "unit arrows along the lengths, y", given: part("d", 1) },
    { symbol: "d_z", kind: "number", meaning: "unit arrows along the lengths, z", given: part("d", 2) },
    { symbol: "w_x", kind: "number", meaning: "unit arrows along the widths, x", given: part("w", 0) },
    { symbol: "w_y", kind: "number", meaning: "unit arrows along the widths, y", given: part("w", 1) },
    { symbol: "w_z", kind: "number", meaning: "unit arrows along the widths, z", given: part("w", 2) },
    { symbol: "h_x", kind: "number", meaning: "unit arrows along the heights, x", given: part("h", 0) },
    { symbol: "h_y", kind: "number", meaning: "unit arrows along the heights, y", given: part("h", 1) },
    { symbol: "h_z", kind: "number", meaning: "unit arrows along the heights, z", given: part("h", 2) },
    { symbol: "m_t", meaning: "mass", is: "sum(m_i)" },
    { symbol: "x_c", meaning: "centre of mass, x", is: "sum(m_i .* x_i) / m_t" },
    { symbol: "y_c", meaning: "centre of mass, y", is: "sum(m_i .* y_i) / m_t" },
    { symbol: "z_c", meaning: "centre of mass, z", is: "sum(m_i .* z_i) / m_t" },
    { symbol: "s_d", kind: "area", meaning: "mean square along the lengths", is: "l_i.^2 / 12" },
    { symbol: "s_w", kind: "area", meaning: "mean square along the widths", is: "b_i.^2 / 12 + (D_i.^2 + B_i.^2) / 16" },
    { symbol: "s_h", kind: "area", meaning: "mean square along the heights", is: "h_i.^2 / 12 + (D_i.^2 + B_i.^2) / 16" },
    { symbol: "S_x", kind: "momentOfInertia", meaning: "second moment of mass along x", is: second(0, 0) },
    { symbol: "S_y", kind: "momentOfInertia", meaning: "second moment of mass along y", is: second(1, 1) },
    { symbol: "S_z", kind: "momentOfInertia", meaning: "second moment of mass along z", is: second(2, 2) },
    { symbol: "P_xy", meaning: "product of inertia", is: second(0, 1) },
    { symbol: "P_yz", meaning: "product of inertia", is: second(1, 2) },
    { symbol: "P_zx", meaning: "product of inertia", is: second(2, 0) },
    { symbol: "I_x", meaning: "inertia along x", is: "S_y + S_z" },
    { symbol: "I_y", meaning: "inertia along y", is: "S_z + S_x" },
    { symbol: "I_z", meaning: "inertia along z", is: "S_x + S_y" },
    { symbol: "a_l", kind: "number", meaning: "length of the axis arrow", is: "sqrt(a_x^2 + a_y^2 + a_z^2)" },
    {
      symbol: "I_c",
      meaning: "inertia about the axis moved to the centre of mass",
      is: `sum(m_i .* (${across("(x_i - x_c)", "(y_i - y_c)", "(z_i - z_c)")} + ${(["d", "w", "h"] as const)
        .map((k) => `s_${k} .* (${across(`${k}_x`, `${k}_y`, `${k}_z`)})`)
        .join(" + ")})) / a_l^2`,
    },
    {
      symbol: "r_c",
      meaning: "distance of the centre of mass from the axis",
      is: `sqrt(${across("(x_c - x_a)", "(y_c - y_a)", "(z_c - z_a)")}) / a_l`,
    },
    { symbol: "I_a", meaning: "inertia about the axis (parallel-axis theorem)", is: "I_c + m_t * r_c^2" },
    { symbol: "k_a", meaning: "radius of gyration", is: "sqrt(I_a / m_t)" },
  ],
  sources: [MERIAM],
  check,
  cautions,
}))
