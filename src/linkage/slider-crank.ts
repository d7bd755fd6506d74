import type { Angle, AngularAcceleration, AngularSpeed, Force, Length } from "../quantity/index.js"
import { type Caution, isNoSolution, type NoSolution, refuse, type SiOf, type Solver, solver, withNearest } from "../solver/index.js"
import type { Assembly } from "./four-bar/pose.js"
import { LEAST_TRANSMISSION, pinchCaution, transmissionCaution } from "./hazards.js"
import { sliderAt } from "./slider-crank-geometry.js"
import { norton, nortonSlider } from "./sources.js"

/** Input of {@link sliderCrank}. */
export interface SliderCrankInput {
  /** Crank, pivot to pin. [a; 0.01 mm to 100 m] */
  crank: Length
  /** Connecting rod, pin to pin. [b; 0.01 mm to 100 m] */
  coupler: Length
  /** Distance of the slide line from the crank pivot; positive above it. [c; −100 to 100 m; default 0] */
  offset?: Length
  /** Crank angle from the direction of the slide. [theta_2; −57295.8° to 57295.8°] */
  crankAngle: Angle
  /** Side of the crank the slider is on: `open` towards positive x. [open or crossed; default open] */
  assembly?: Assembly
  /** Crank speed [omega_2; −9549.3 to 9549.3 rpm; default 0] */
  crankSpeed?: AngularSpeed
  /** Crank acceleration [alpha_2; −5.72958e7 to 5.72958e7 °/s²; default 0] */
  crankAcceleration?: AngularAcceleration
  /** Force that the slider pushes against, positive towards negative x. [F; −1000 to 1000 kN; default 0] */
  load?: Force
}

/** Result of {@link sliderCrank}; origin at the crank pivot, x along the slide. */
export interface SliderCrank {
  /** Rod angle measured at the slider pin, pointing to the crank pin. [theta_3; rad] */
  readonly couplerAngle: number
  /** Slider position [x; m] */
  readonly position: number
  /** Rod angle, other branch [theta_3o; rad] */
  readonly otherCouplerAngle: number
  /** Slider position, other branch [x_o; m] */
  readonly otherPosition: number
  /** Angle between rod and the normal of the slide, acute. [mu; rad] */
  readonly transmissionAngle: number
  /** Slider travel per crank angle: also the crank's lever arm on the slider. [r; m] */
  readonly lever: number
  /** Rod speed [omega_3; rad/s] */
  readonly couplerSpeed: number
  /** Slider speed [v; m/s] */
  readonly speed: number
  /** Rod acceleration [alpha_3; rad/s²] */
  readonly couplerAcceleration: number
  /** Slider acceleration [a_x; m/s²] */
  readonly acceleration: number
  /** Torque on the crank that moves the load, friction and mass left out. [M; N m] */
  readonly torque: number
  /** Force of the slider on its guide, friction and mass left out. [F_s; N] */
  readonly sideForce: number
}

/** Reasons for which {@link sliderCrank} refuses. */
export type SliderCrankRefusal = "cannot-close" | "dead-point"

/** Hazards and limits of validity that go with an answer of {@link sliderCrank}. */
export type SliderCrankCaution = "pinch" | "poor-transmission"

/** Share of the rod by which it must reach beyond the slide line to be clear of the toggle. */
const CLEAR = 1e-6

function solve(si: SiOf<SliderCrankInput>): SliderCrank | NoSolution<SliderCrankRefusal> {
  const out = kernel(si)
  if (!isNoSolution(out)) return out
  const rise = Math.abs(si.crank * Math.sin(si.crankAngle) - si.offset)
  return withNearest(out, sliderCrank, kernel, si, { coupler: rise * (1 + CLEAR) }, [
    { path: "crankAngle", from: si.crankAngle - Math.PI, to: si.crankAngle + Math.PI },
    { path: "crank", from: 0, to: si.crank },
  ])
}

function kernel(si: SiOf<SliderCrankInput>): SliderCrank | NoSolution<SliderCrankRefusal> {
  const { crank: a, coupler: b, offset: c, crankAngle: t2, assembly, crankSpeed: w2, crankAcceleration: al2, load } = si
  const rise = a * Math.sin(t2) - c
  const room = (b - rise) * (b + rise)
  if (!(room > 1e-18 * b ** 2)) {
    const away = Math.abs(rise)
    const at = { crankAngle: t2, crank: a, coupler: b, offset: c }
    return away - b > CLEAR * b
      ? refuse(
          "cannot-close",
          "The crank pin is {away length} from the slide line, {shortBy length} more than the rod is long.",
          away - b,
          at,
          {},
          { away },
        )
      : refuse(
          "dead-point",
          "The rod stands square to the slide, or within {shortBy length} of it: the slider can go either way from here.",
          away * (1 + CLEAR) - b,
          at,
        )
  }
  const slider = sliderAt({ crank: a, coupler: b, offset: c, side: assembly === "open" ? 1 : -1 }, t2)
  const { couplerAngle: t3, position, run, couplerRate, couplerBend, lever, leverSlope } = slider
  return {
    couplerAngle: t3,
    position,
    otherCouplerAngle: Math.PI - t3,
    otherPosition: a * Math.cos(t2) - run,
    transmissionAngle: Math.atan2(Math.abs(run), Math.abs(rise)),
    lever,
    couplerSpeed: couplerRate * w2,
    speed: lever * w2,
    couplerAcceleration: couplerRate * al2 + couplerBend * w2 ** 2,
    acceleration: lever * al2 + leverSlope * w2 ** 2,
    torque: load * lever,
    sideForce: load * Math.tan(t3),
  }
}

function cautions(_si: SiOf<SliderCrankInput>, out: SliderCrank): Caution<SliderCrankCaution>[] {
  return [
    ...(out.transmissionAngle < LEAST_TRANSMISSION ? [transmissionCaution("transmissionAngle", out.transmissionAngle)] : []),
    pinchCaution("Crank, rod and slider"),
  ]
}

/**
 * Position, speed and acceleration of an offset slider-crank, both branches, with lever arm and side load.
 *
 * Formula: the loop a·e^{iθ₂} − b·e^{iθ₃} − i·c − x = 0: sin θ₃ = (a·sin θ₂ − c)/b, x = a·cos θ₂ − b·cos θ₃, with a the
 * crank, b the rod, c the offset of the slide line, θ₂ the crank angle from the slide's direction and θ₃ the rod's,
 * measured at the slider pin and pointing to the crank pin: θ₃ = π − asin(…) in the open branch, asin(…) crossed. ω₃ =
 * (a·cos θ₂)/(b·cos θ₃)·ω₂; lever dx/dθ₂ = −a·sin θ₂ + a·cos θ₂·tan θ₃. Torque = load × lever and side force = load·tan
 * θ₃ by virtual work, friction and mass left out. Valid for rigid links without play.
 *
 * Refuses `cannot-close` where the rod is too short and `dead-point` where it stands square to the slide.
 *
 * **Inputs**
 * - `crank`: crank [a; 0.01 mm to 100 m]
 * - `coupler`: connecting rod [b; 0.01 mm to 100 m]
 * - `offset`: offset of the slide line [c; −100 to 100 m; default 0]
 * - `crankAngle`: crank angle [theta_2; −57295.8° to 57295.8°]
 * - `assembly`: side of the slider [open or crossed; default open]
 * - `crankSpeed`: crank speed [omega_2; −9549.3 to 9549.3 rpm; default 0]
 * - `crankAcceleration`: crank acceleration [alpha_2; −5.72958e7 to 5.72958e7 °/s²; default 0]
 * - `load`: force against the slider [F; −1000 to 1000 kN; default 0]
 *
 * **Results**
 *
 * `couplerAngle`: rod angle at the slider pin [theta_3; rad]; `position`: slider position [x; m]; `otherCouplerAngle`:
 * rod angle, other branch [theta_3o; rad]; `otherPosition`: slider position, other branch [x_o; m];
 * `transmissionAngle`: transmission angle [mu; rad]; `lever`: slider travel per crank angle (lever arm) [r; m];
 * `couplerSpeed`: rod speed [omega_3; rad/s]; `speed`: slider speed [v; m/s]; `couplerAcceleration`: rod acceleration
 * [alpha_3; rad/s²]; `acceleration`: slider acceleration [a_x; m/s²]; `torque`: torque on the crank [M; N m];
 * `sideForce`: force on the guide [F_s; N].
 *
 * **Symbols of the working**
 *
 * s: +1 open, −1 crossed; y: crank pin above the slide line [m]; w: slider pin ahead of the crank pin [m].
 *
 * **Sources**
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapters 2 to 8 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the rod cannot reach the slide
 * @example
 * ```ts
 * import { sliderCrank } from 'alula/linkage'
 * const slide = sliderCrank({ crank: '40 mm', coupler: '120 mm', offset: '-20 mm', crankAngle: '60 deg', crankSpeed: -30 })
 * slide.position // => 0.12684
 * slide.couplerSpeed // => 5.616
 * ```
 */
export const sliderCrank: Solver<SliderCrankInput, SliderCrank, SliderCrankRefusal, SliderCrankCaution> = /* @__PURE__ */ solver<
  SliderCrankInput,
  SliderCrank,
  SliderCrankRefusal,
  SliderCrankCaution
>("sliderCrank", "Where a slider-crank stands and how it moves", solve, () => ({
  input: {
    crank: { kind: "length", symbol: "a", label: "crank", min: "0.01 mm", max: "100 m", typical: ["10 mm", "60 mm"] },
    coupler: { kind: "length", symbol: "b", label: "connecting rod", min: "0.01 mm", max: "100 m", typical: ["90 mm", "200 mm"] },
    offset: {
      kind: "length",
      symbol: "c",
      label: "offset of the slide line",
      min: "-100 m",
      max: "100 m",
      typical: ["-25 mm", "25 mm"],
      default: 0,
    },
    crankAngle: { kind: "angle", symbol: "theta_2", label: "crank angle", min: -1000, max: 1000, typical: ["-180 deg", "180 deg"] },
    assembly: {
      kind: "choice",
      label: "side of the slider",
      options: { open: "open: slider towards positive x", crossed: "crossed: slider towards negative x" },
      default: "open",
    },
    crankSpeed: { kind: "angularSpeed", symbol: "omega_2", label: "crank speed", min: -1000, max: 1000, typical: [-30, 30], default: 0 },
    crankAcceleration: {
      kind: "angularAcceleration",
      symbol: "alpha_2",
      label: "crank acceleration",
      min: -1e6,
      max: 1e6,
      typical: [-20, 20],
      default: 0,
    },
    load: { kind: "force", symbol: "F", label: "force against the slider", min: -1e6, max: 1e6, typical: [0, 50], default: 0 },
  },
  output: {
    couplerAngle: { kind: "angle", symbol: "theta_3", label: "rod angle at the slider pin" },
    position: { kind: "length", symbol: "x", label: "slider position" },
    otherCouplerAngle: { kind: "angle", symbol: "theta_3o", label: "rod angle, other branch" },
    otherPosition: { kind: "length", symbol: "x_o", label: "slider position, other branch" },
    transmissionAngle: { kind: "angle", symbol: "mu", label: "transmission angle" },
    lever: { kind: "length", symbol: "r", label: "slider travel per crank angle (lever arm)" },
    couplerSpeed: { kind: "angularSpeed", symbol: "omega_3", label: "rod speed" },
    speed: { kind: "speed", symbol: "v", label: "slider speed" },
    couplerAcceleration: { kind: "angularAcceleration", symbol: "alpha_3", label: "rod acceleration" },
    acceleration: { kind: "acceleration", symbol: "a_x", label: "slider acceleration" },
    torque: { kind: "moment", symbol: "M", label: "torque on the crank" },
    sideForce: { kind: "force", symbol: "F_s", label: "force on the guide" },
  },
  example: { crank: "40 mm", coupler: "120 mm", offset: "-20 mm", crankAngle: "60 deg", crankSpeed: -30, load: "20 N" },
  formulae: [
    { symbol: "s", kind: "number", meaning: "+1 open, −1 crossed", given: (si) => (si.assembly === "open" ? 1 : -1) },
    { symbol: "y", kind: "length", meaning: "crank pin above the slide line", is: "a * sin(theta_2) - c" },
    { symbol: "w", kind: "length", meaning: "slider pin ahead of the crank pin", is: "s * sqrt((b - y) * (b + y))" },
    {
      symbol: "theta_3",
      meaning: "rod angle",
      is: "pi - asin(y / b)",
      when: 'equalText(assembly, "open")',
      source: nortonSlider,
    },
    {
      symbol: "theta_3",
      meaning: "rod angle",
      is: "asin(y / b)",
      when: 'equalText(assembly, "crossed")',
      source: nortonSlider,
    },
    { symbol: "x", meaning: "slider position", is: "a * cos(theta_2) + w" },
    { symbol: "theta_3o", meaning: "rod angle, other branch", is: "pi - theta_3" },
    { symbol: "x_o", meaning: "slider position, other branch", is: "a * cos(theta_2) - w" },
    { symbol: "mu", meaning: "transmission angle", is: "atan2(abs(w) / m, abs(y) / m)" },
    {
      symbol: "omega_3",
      meaning: "rod speed",
      is: "a * cos(theta_2) / (b * cos(theta_3)) * omega_2",
      source: nortonSlider,
    },
    { symbol: "r", meaning: "slider travel per crank angle", is: "-a * sin(theta_2) + a * cos(theta_2) * tan(theta_3)" },
    { symbol: "v", meaning: "slider speed", is: "r * omega_2" },
    {
      symbol: "alpha_3",
      meaning: "rod acceleration",
      is: "(a * alpha_2 * cos(theta_2) - a * omega_2^2 * sin(theta_2) + b * omega_3^2 * sin(theta_3)) / (b * cos(theta_3))",
      source: nortonSlider,
    },
    {
      symbol: "a_x",
      meaning: "slider acceleration",
      is: "-a * alpha_2 * sin(theta_2) - a * omega_2^2 * cos(theta_2) + b * alpha_3 * sin(theta_3) + b * omega_3^2 * cos(theta_3)",
      source: nortonSlider,
    },
    { symbol: "M", meaning: "torque by virtual work", is: "F * r" },
    { symbol: "F_s", meaning: "force on the guide", is: "F * tan(theta_3)" },
  ],
  sources: [norton],
  cautions,
}))
