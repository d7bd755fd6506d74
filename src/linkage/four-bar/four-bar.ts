import type { Angle, AngularAcceleration, AngularSpeed, Length } from "../../quantity/index.js"
import { type Caution, isNoSolution, type NoSolution, refuse, type SiOf, type Solver, solver, withNearest } from "../../solver/index.js"
import { LEAST_TRANSMISSION, pinchCaution, transmissionCaution } from "../hazards.js"
import { wrapAngle } from "../hinge/geometry.js"
import { norton, nortonLoop, virtualWork } from "../sources.js"
import { type Assembly, closedPose, fourBarPose, fourBarRates, longestWithin, nearestClosing } from "./pose.js"

/** Input of {@link fourBar}. */
export interface FourBarInput {
  /** Distance between the two fixed pivots. [d; 0.01 mm to 100 m] */
  ground: Length
  /** Driven link, pin to pin. [a; 0.01 mm to 100 m] */
  input: Length
  /** Floating link, pin to pin. [b; 0.01 mm to 100 m] */
  coupler: Length
  /** Output link, pin to pin. [c; 0.01 mm to 100 m] */
  output: Length
  /** Angle of the input link from the line of the fixed pivots. [theta_2; −57295.8° to 57295.8°] */
  inputAngle: Angle
  /** How it is put together: `open` has the output pin left of the line from input pin to output pivot. [open or crossed; default open] */
  assembly?: Assembly
  /** Speed of the input link. [omega_2; −9549.3 to 9549.3 rpm; default 0] */
  inputSpeed?: AngularSpeed
  /** Acceleration of the input link. [alpha_2; −5.72958e7 to 5.72958e7 °/s²; default 0] */
  inputAcceleration?: AngularAcceleration
  /** Distance from the input pin to a point fixed to the coupler, where one is wanted. [p; 0 to 100 m; optional] */
  pointRadius?: Length | null
  /** Angle of that point from the coupler's line, at the input pin. [delta; −572.958° to 572.958°; default 0] */
  pointAngle?: Angle
}

/** Result of {@link fourBar}; origin at the input pivot, x towards the output pivot. */
export interface FourBar {
  /** Coupler angle, from input pin to output pin. [theta_3; rad] */
  readonly couplerAngle: number
  /** Output angle at its fixed pivot. [theta_4; rad] */
  readonly outputAngle: number
  /** Coupler angle, other branch [theta_3o; rad] */
  readonly otherCouplerAngle: number
  /** Output angle, other branch [theta_4o; rad] */
  readonly otherOutputAngle: number
  /** Acute angle between coupler and output. [mu; rad] */
  readonly transmissionAngle: number
  /** Output speed over input speed, signed. [k_4; as a fraction] */
  readonly speedRatio: number
  /** Output torque over input torque, signed; null at a dead point of the output, where it has no limit. [M_a; as a fraction] */
  readonly mechanicalAdvantage: number | null
  /** Coupler speed [omega_3; rad/s] */
  readonly couplerSpeed: number
  /** Output speed [omega_4; rad/s] */
  readonly outputSpeed: number
  /** Coupler acceleration [alpha_3; rad/s²] */
  readonly couplerAcceleration: number
  /** Output acceleration [alpha_4; rad/s²] */
  readonly outputAcceleration: number
  /** Coupler point, x; null where none is asked for. [x_P; m] */
  readonly pointX: number | null
  /** Coupler point y [y_P; m] */
  readonly pointY: number | null
  /** Its speed along x. [v_Px; m/s] */
  readonly pointSpeedX: number | null
  /** Its speed along y. [v_Py; m/s] */
  readonly pointSpeedY: number | null
  /** Its acceleration along x. [a_Px; m/s²] */
  readonly pointAccelerationX: number | null
  /** Its acceleration along y. [a_Py; m/s²] */
  readonly pointAccelerationY: number | null
}

/** Reasons for which {@link fourBar} refuses. */
export type FourBarRefusal = "cannot-close" | "dead-point" | "indeterminate"

/** Hazards and limits of validity that go with an answer of {@link fourBar}. */
export type FourBarCaution = "pinch" | "poor-transmission"

/** Input angle nearest to the one given at which the links close clear of a toggle, and how far it is. */
function nextAngle({ ground, input, coupler, output, inputAngle }: SiOf<FourBarInput>): { angle: number; away: number } {
  const near = nearestClosing(ground, input, coupler, output, inputAngle)
  const off = wrapAngle(near - inputAngle)
  return { angle: near, away: Math.abs(off) }
}

function solve(si: SiOf<FourBarInput>): FourBar | NoSolution<FourBarRefusal> {
  const out = kernel(si)
  if (!isNoSolution(out)) return out
  const { ground, input, coupler, output, inputAngle } = si
  const angle = out.noSolution === "indeterminate" ? inputAngle + NUDGE : nextAngle(si).angle
  return withNearest(out, fourBar, kernel, si, { inputAngle: angle, ...longestWithin({ ground, input, coupler, output }) })
}

/** Turn of the input that takes its pin clear of the output pivot, rad. */
const NUDGE = 1e-3

function kernel(si: SiOf<FourBarInput>): FourBar | NoSolution<FourBarRefusal> {
  const { ground: d, input: a, coupler: b, output: c, inputAngle, assembly, inputSpeed: w2, inputAcceleration: al2 } = si
  const pose = fourBarPose(d, a, b, c, inputAngle, assembly)
  if (typeof pose === "number") {
    const at = { inputAngle, ground: d, input: a, coupler: b, output: c }
    if (pose === 0)
      return refuse(
        "indeterminate",
        "The input pin lies on the output pivot, so the output can stand at any angle: turn the input on, by {shortBy angle °} at least.",
        NUDGE,
        at,
      )
    return refuse(
      "cannot-close",
      "At an input angle of {inputAngle angle °} coupler and output miss each other by {shortBy length}.",
      pose,
      at,
    )
  }
  const other = closedPose(d, a, b, c, inputAngle, assembly === "open" ? "crossed" : "open")
  const [t3, t4] = [pose.couplerAngle, pose.outputAngle]
  const { sine, couplerRate: k3, outputRate: k4, couplerBend, outputBend } = fourBarRates(a, b, c, inputAngle, t3, t4)
  if (Math.abs(sine) < 1e-9)
    return refuse(
      "dead-point",
      "Coupler and output are in line at an input angle of {inputAngle angle °}: the output can go either way from here. Stay at least {shortBy angle °} away.",
      nextAngle(si).away,
      { inputAngle },
    )
  const [w3, w4] = [k3 * w2, k4 * w2]
  const al3 = k3 * al2 + couplerBend * w2 ** 2
  const al4 = k4 * al2 + outputBend * w2 ** 2
  const { pointRadius: p } = si
  const tp = t3 + si.pointAngle
  const pin = pose.inputPin
  return {
    couplerAngle: t3,
    outputAngle: t4,
    otherCouplerAngle: other.couplerAngle,
    otherOutputAngle: other.outputAngle,
    transmissionAngle: pose.transmissionAngle,
    speedRatio: k4,
    mechanicalAdvantage: Math.abs(k4) < 1e-9 ? null : 1 / k4,
    couplerSpeed: w3,
    outputSpeed: w4,
    couplerAcceleration: al3,
    outputAcceleration: al4,
    pointX: p === null ? null : pin.x + p * Math.cos(tp),
    pointY: p === null ? null : pin.y + p * Math.sin(tp),
    pointSpeedX: p === null ? null : -w2 * pin.y - p * w3 * Math.sin(tp),
    pointSpeedY: p === null ? null : w2 * pin.x + p * w3 * Math.cos(tp),
    pointAccelerationX: p === null ? null : -al2 * pin.y - w2 ** 2 * pin.x - p * (al3 * Math.sin(tp) + w3 ** 2 * Math.cos(tp)),
    pointAccelerationY: p === null ? null : al2 * pin.x - w2 ** 2 * pin.y + p * (al3 * Math.cos(tp) - w3 ** 2 * Math.sin(tp)),
  }
}

function cautions(_si: SiOf<FourBarInput>, out: FourBar): Caution<FourBarCaution>[] {
  return [
    ...(out.transmissionAngle < LEAST_TRANSMISSION ? [transmissionCaution("transmissionAngle", out.transmissionAngle)] : []),
    pinchCaution("The links of a four-bar"),
  ]
}

/**
 * Position, speed and acceleration of a four-bar linkage, both branches, with transmission angle,
 * mechanical advantage and a coupler point.
 *
 * Formula: the loop a·e^{iθ₂} + b·e^{iθ₃} − c·e^{iθ₄} − d = 0 with a the input, b the coupler, c the output, d the
 * ground, θ₂ θ₃ θ₄ their angles from the line of the fixed pivots. With A the input pin, f its distance to the output
 * pivot, the output pin lies u = (f² + b² − c²)/(2f) along that line and h = ±√[(b+c+f)(b+c−f)(f+b−c)(f−b+c)]/(2f) to
 * its left (open) or right (crossed). Speeds ω₃ = a·ω₂·sin(θ₄ − θ₂)/(b·sin(θ₃ − θ₄)), ω₄ = a·ω₂·sin(θ₂ − θ₃)/(c·sin(θ₄
 * − θ₃)); accelerations from the loop differentiated twice. The transmission angle is the acute one of coupler and
 * output. Mechanical advantage = ω₂/ω₄, friction left out. The coupler point lies p from the input pin, δ from the
 * coupler's line. Angles come back in (−π, π]: compare them modulo a full turn. Valid for rigid links and pins without
 * play.
 *
 * Refuses `cannot-close`, `dead-point` (coupler and output in line) and `indeterminate`.
 *
 * **Inputs**
 * - `ground`: ground, between the fixed pivots [d; 0.01 mm to 100 m]
 * - `input`: input link [a; 0.01 mm to 100 m]
 * - `coupler`: coupler [b; 0.01 mm to 100 m]
 * - `output`: output link [c; 0.01 mm to 100 m]
 * - `inputAngle`: input angle [theta_2; −57295.8° to 57295.8°]
 * - `assembly`: how it is put together [open or crossed; default open]
 * - `inputSpeed`: input speed [omega_2; −9549.3 to 9549.3 rpm; default 0]
 * - `inputAcceleration`: input acceleration [alpha_2; −5.72958e7 to 5.72958e7 °/s²; default 0]
 * - `pointRadius`: coupler point from the input pin [p; 0 to 100 m; optional]
 * - `pointAngle`: coupler point's angle from the coupler [delta; −572.958° to 572.958°; default 0]
 *
 * **Results**
 *
 * `couplerAngle`: coupler angle [theta_3; rad]; `outputAngle`: output angle [theta_4; rad]; `otherCouplerAngle`:
 * coupler angle, other branch [theta_3o; rad]; `otherOutputAngle`: output angle, other branch [theta_4o; rad];
 * `transmissionAngle`: transmission angle [mu; rad]; `speedRatio`: output speed over input speed [k_4; as a fraction];
 * `mechanicalAdvantage`: mechanical advantage [M_a; as a fraction]; `couplerSpeed`: coupler speed [omega_3; rad/s];
 * `outputSpeed`: output speed [omega_4; rad/s]; `couplerAcceleration`: coupler acceleration [alpha_3; rad/s²];
 * `outputAcceleration`: output acceleration [alpha_4; rad/s²]; `pointX`: coupler point x [x_P; m]; `pointY`: coupler
 * point y [y_P; m]; `pointSpeedX`: coupler point speed x [v_Px; m/s]; `pointSpeedY`: coupler point speed y [v_Py;
 * m/s]; `pointAccelerationX`: coupler point acceleration x [a_Px; m/s²]; `pointAccelerationY`: coupler point
 * acceleration y [a_Py; m/s²].
 *
 * **Symbols of the working**
 *
 * s: +1 open, −1 crossed; x_A: input pin x [m]; y_A: input pin y [m]; f: input pin to output pivot [m]; u: output pin
 * along that line [m]; h: output pin to the left of that line [m]; x_B: output pin x [m]; y_B: output pin y [m]; x_C:
 * output pin x, other branch [m]; y_C: output pin y, other branch [m]; k_3: coupler speed over input speed; phi: angle
 * of the coupler point [rad].
 *
 * **Sources**
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapters 2 to 8 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the linkage cannot be put together or stands at a toggle
 * @example
 * ```ts
 * import { fourBar } from 'alula/linkage'
 * const wing = fourBar({ ground: '100 mm', input: '40 mm', coupler: '120 mm', output: '80 mm', inputAngle: '40 deg', inputSpeed: 25 })
 * wing.outputAngle // => 1.0005
 * wing.outputSpeed // => 6.998
 * ```
 */
export const fourBar: Solver<FourBarInput, FourBar, FourBarRefusal, FourBarCaution> = /* @__PURE__ */ solver<
  FourBarInput,
  FourBar,
  FourBarRefusal,
  FourBarCaution
>("fourBar", "Where a four-bar linkage stands and how it moves", solve, () => ({
  input: {
    ground: {
      kind: "length",
      symbol: "d",
      label: "ground, between the fixed pivots",
      min: "0.01 mm",
      max: "100 m",
      typical: ["90 mm", "110 mm"],
    },
    input: { kind: "length", symbol: "a", label: "input link", min: "0.01 mm", max: "100 m", typical: ["20 mm", "40 mm"] },
    coupler: { kind: "length", symbol: "b", label: "coupler", min: "0.01 mm", max: "100 m", typical: ["100 mm", "130 mm"] },
    output: { kind: "length", symbol: "c", label: "output link", min: "0.01 mm", max: "100 m", typical: ["70 mm", "90 mm"] },
    inputAngle: { kind: "angle", symbol: "theta_2", label: "input angle", min: -1000, max: 1000, typical: ["10 deg", "170 deg"] },
    assembly: {
      kind: "choice",
      label: "how it is put together",
      options: { open: "open: output pin left of the line from input pin to output pivot", crossed: "crossed: output pin right of it" },
      default: "open",
    },
    inputSpeed: { kind: "angularSpeed", symbol: "omega_2", label: "input speed", min: -1000, max: 1000, typical: [-5, 30], default: 0 },
    inputAcceleration: {
      kind: "angularAcceleration",
      symbol: "alpha_2",
      label: "input acceleration",
      min: -1e6,
      max: 1e6,
      typical: [-20, 20],
      default: 0,
    },
    pointRadius: {
      kind: "length",
      symbol: "p",
      label: "coupler point from the input pin",
      min: 0,
      max: "100 m",
      typical: [0, "200 mm"],
      default: null,
    },
    pointAngle: {
      kind: "angle",
      symbol: "delta",
      label: "coupler point's angle from the coupler",
      min: -10,
      max: 10,
      typical: ["-90 deg", "90 deg"],
      default: 0,
    },
  },
  output: {
    couplerAngle: { kind: "angle", symbol: "theta_3", label: "coupler angle" },
    outputAngle: { kind: "angle", symbol: "theta_4", label: "output angle" },
    otherCouplerAngle: { kind: "angle", symbol: "theta_3o", label: "coupler angle, other branch" },
    otherOutputAngle: { kind: "angle", symbol: "theta_4o", label: "output angle, other branch" },
    transmissionAngle: { kind: "angle", symbol: "mu", label: "transmission angle" },
    speedRatio: { kind: "ratio", symbol: "k_4", label: "output speed over input speed", unit: "x" },
    mechanicalAdvantage: { kind: "ratio", symbol: "M_a", label: "mechanical advantage", unit: "x" },
    couplerSpeed: { kind: "angularSpeed", symbol: "omega_3", label: "coupler speed" },
    outputSpeed: { kind: "angularSpeed", symbol: "omega_4", label: "output speed" },
    couplerAcceleration: { kind: "angularAcceleration", symbol: "alpha_3", label: "coupler acceleration" },
    outputAcceleration: { kind: "angularAcceleration", symbol: "alpha_4", label: "output acceleration" },
    pointX: { kind: "length", symbol: "x_P", label: "coupler point x" },
    pointY: { kind: "length", symbol: "y_P", label: "coupler point y" },
    pointSpeedX: { kind: "speed", symbol: "v_Px", label: "coupler point speed x" },
    pointSpeedY: { kind: "speed", symbol: "v_Py", label: "coupler point speed y" },
    pointAccelerationX: { kind: "acceleration", symbol: "a_Px", label: "coupler point acceleration x" },
    pointAccelerationY: { kind: "acceleration", symbol: "a_Py", label: "coupler point acceleration y" },
  },
  example: {
    ground: "100 mm",
    input: "40 mm",
    coupler: "120 mm",
    output: "80 mm",
    inputAngle: "40 deg",
    inputSpeed: 25,
    inputAcceleration: 15,
  },
  formulae: [
    { symbol: "s", kind: "number", meaning: "+1 open, −1 crossed", given: (si) => (si.assembly === "open" ? 1 : -1) },
    { symbol: "x_A", kind: "length", meaning: "input pin x", is: "a * cos(theta_2)" },
    { symbol: "y_A", kind: "length", meaning: "input pin y", is: "a * sin(theta_2)" },
    { symbol: "f", kind: "length", meaning: "input pin to output pivot", is: "sqrt((d - x_A)^2 + y_A^2)" },
    { symbol: "u", kind: "length", meaning: "output pin along that line", is: "(f^2 + b^2 - c^2) / (2 * f)" },
    {
      symbol: "h",
      kind: "length",
      meaning: "output pin to the left of that line",
      is: "s * sqrt(max(0 m^4, (b + c + f) * (b + c - f) * (f + b - c) * (f - b + c))) / (2 * f)",
    },
    { symbol: "x_B", kind: "length", meaning: "output pin x", is: "x_A + (u * (d - x_A) + h * y_A) / f" },
    { symbol: "y_B", kind: "length", meaning: "output pin y", is: "y_A + (h * (d - x_A) - u * y_A) / f" },
    { symbol: "theta_3", meaning: "coupler angle", is: "atan2((y_B - y_A) / m, (x_B - x_A) / m)", source: nortonLoop },
    { symbol: "theta_4", meaning: "output angle", is: "atan2(y_B / m, (x_B - d) / m)", source: nortonLoop },
    { symbol: "x_C", kind: "length", meaning: "output pin x, other branch", is: "x_A + (u * (d - x_A) - h * y_A) / f" },
    { symbol: "y_C", kind: "length", meaning: "output pin y, other branch", is: "y_A + (-h * (d - x_A) - u * y_A) / f" },
    { symbol: "theta_3o", meaning: "coupler angle, other branch", is: "atan2((y_C - y_A) / m, (x_C - x_A) / m)" },
    { symbol: "theta_4o", meaning: "output angle, other branch", is: "atan2(y_C / m, (x_C - d) / m)" },
    { symbol: "mu", meaning: "transmission angle", is: "atan2(abs(h) * f / m^2, abs(b^2 + c^2 - f^2) / 2 / m^2)" },
    {
      symbol: "k_3",
      kind: "number",
      meaning: "coupler speed over input speed",
      is: "a * sin(theta_4 - theta_2) / (b * sin(theta_3 - theta_4))",
    },
    {
      symbol: "k_4",
      meaning: "output speed over input speed",
      is: "a * sin(theta_2 - theta_3) / (c * sin(theta_4 - theta_3))",
      source: nortonLoop,
    },
    { symbol: "M_a", meaning: "mechanical advantage", is: "1 / k_4", source: virtualWork },
    { symbol: "omega_3", meaning: "coupler speed", is: "k_3 * omega_2" },
    { symbol: "omega_4", meaning: "output speed", is: "k_4 * omega_2" },
    {
      symbol: "alpha_3",
      meaning: "coupler acceleration",
      is: "(a * alpha_2 * sin(theta_2 - theta_4) + a * omega_2^2 * cos(theta_2 - theta_4) + b * omega_3^2 * cos(theta_3 - theta_4) - c * omega_4^2) / (b * sin(theta_4 - theta_3))",
      source: nortonLoop,
    },
    {
      symbol: "alpha_4",
      meaning: "output acceleration",
      is: "(a * alpha_2 * sin(theta_2 - theta_3) + a * omega_2^2 * cos(theta_2 - theta_3) + b * omega_3^2 - c * omega_4^2 * cos(theta_4 - theta_3)) / (c * sin(theta_4 - theta_3))",
      source: nortonLoop,
    },
    { symbol: "phi", kind: "angle", meaning: "angle of the coupler point", is: "theta_3 + delta", when: "has_pointRadius" },
    { symbol: "x_P", meaning: "coupler point", is: "x_A + p * cos(phi)", when: "has_pointRadius" },
    { symbol: "y_P", meaning: "coupler point", is: "y_A + p * sin(phi)", when: "has_pointRadius" },
    { symbol: "v_Px", meaning: "its velocity", is: "-omega_2 * y_A - p * omega_3 * sin(phi)", when: "has_pointRadius" },
    { symbol: "v_Py", meaning: "its velocity", is: "omega_2 * x_A + p * omega_3 * cos(phi)", when: "has_pointRadius" },
    {
      symbol: "a_Px",
      meaning: "its acceleration",
      is: "-alpha_2 * y_A - omega_2^2 * x_A - p * (alpha_3 * sin(phi) + omega_3^2 * cos(phi))",
      when: "has_pointRadius",
    },
    {
      symbol: "a_Py",
      meaning: "its acceleration",
      is: "alpha_2 * x_A - omega_2^2 * y_A + p * (alpha_3 * cos(phi) - omega_3^2 * sin(phi))",
      when: "has_pointRadius",
    },
  ],
  sources: [norton],
  cautions,
}))
