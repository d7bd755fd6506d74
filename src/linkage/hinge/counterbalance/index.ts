import { type Issue, inconsistent, isNoSolution, type NoSolution, refuse, type Solver, solver, withNearest } from "../../../solver/index.js"
import { gasForce, gasWork } from "../../gas-spring/law.js"
import { exactBalance, springRate } from "../../sources.js"
import { wrapAngle } from "../geometry.js"
import { gravityMomentAt, standardGravity } from "../load.js"
import { balanceCautions } from "./cautions.js"
import { input, output } from "./fields.js"
import { counterbalanceFormulae } from "./formulae.js"
import type { Counterbalance, CounterbalanceCaution, CounterbalanceInput, CounterbalancePose, CounterbalanceRefusal, Si } from "./types.js"

export type {
  CordElement,
  Counterbalance,
  CounterbalanceCaution,
  CounterbalanceInput,
  CounterbalancePose,
  CounterbalanceRefusal,
  SpringElement,
  StrutElement,
} from "./types.js"

const POSES = 181

/** Rate of a helical spring, N/m: G·d⁴/(8·D³·N). */
export function coilStiffness(shearModulus: number, wire: number, meanDiameter: number, activeCoils: number): number {
  return (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * activeCoils)
}

/** Rate of a spring or cord; a strut has none. */
function stiffnessOf({ element }: Si): number | null {
  if (element.type === "gas-strut") return null
  if (element.type === "cord" || !element.coil) return element.stiffness ?? 0
  const { shearModulus, wire, meanDiameter, activeCoils } = element.coil
  return coilStiffness(shearModulus, wire, meanDiameter, activeCoils)
}

const preloadOf = (element: Si["element"]) => (element.type === "spring" ? element.preload : 0)

/** Pull of the element at a length, N; a strut pushes, so its pull is negative. */
function pullAt({ element }: Si, stiffness: number, length: number): number {
  if (element.type === "gas-strut") {
    const { extendedLength, stroke, force, progression } = element
    return -gasForce(force, progression, extendedLength - length, stroke)
  }
  return length <= element.freeLength ? 0 : preloadOf(element) + stiffness * (length - element.freeLength)
}

/** Length of the element and the rate at which it shortens as the arm turns counter-clockwise: its lever arm. */
export function balanceLever(si: Pick<Si, "hinge" | "fixedPivot" | "movingPivot">, angle: number): { length: number; lever: number } {
  const [x, y] = [
    si.movingPivot.radius * Math.cos(angle + si.movingPivot.angle),
    si.movingPivot.radius * Math.sin(angle + si.movingPivot.angle),
  ]
  const [ax, ay] = [si.fixedPivot.x - si.hinge.x, si.fixedPivot.y - si.hinge.y]
  const length = Math.hypot(ax - x, ay - y)
  return { length, lever: length === 0 ? 0 : (x * ay - y * ax) / length }
}

function poseAt(si: Si, stiffness: number, angle: number): CounterbalancePose {
  const { length, lever } = balanceLever(si, angle)
  const force = pullAt(si, stiffness, length)
  const gravityMoment = gravityMomentAt(si.masses, angle, si.frameTilt)
  const balanceMoment = force * lever
  return { angle, length, force, gravityMoment, balanceMoment, unbalancedMoment: gravityMoment - balanceMoment }
}

function strutRefusal(si: Si, poses: readonly CounterbalancePose[]): NoSolution<CounterbalanceRefusal> | null {
  if (si.element.type !== "gas-strut") return null
  const { extendedLength, stroke } = si.element
  const shortest = extendedLength - stroke
  for (const { angle, length } of poses) {
    const over = Math.max(length - extendedLength, shortest - length)
    if (over > 1e-12)
      return refuse(
        "out-of-reach",
        "With the arm at {angle angle °} the strut's ends are {length length} apart, {shortBy length} outside its {shortest length} to {extendedLength length}.",
        over,
        { angle, length, shortest, extendedLength },
      )
  }
  return null
}

/** Most energy between two states of the element over the swing, J. */
function energyOf(si: Si, stiffness: number, poses: readonly CounterbalancePose[]): number {
  const { element } = si
  if (element.type === "gas-strut") {
    const { extendedLength, stroke, force, progression } = element
    return Math.max(...poses.map(({ length }) => gasWork(force, progression, extendedLength - length, stroke)))
  }
  return Math.max(
    ...poses.map(({ length }) => {
      const stretch = Math.max(0, length - element.freeLength)
      return preloadOf(element) * stretch + (stiffness * stretch ** 2) / 2
    }),
  )
}

function solve(si: Si): Counterbalance | NoSolution<CounterbalanceRefusal> {
  const out = kernel(si)
  if (!isNoSolution(out) || si.element.type !== "gas-strut") return out
  const { extendedLength, stroke } = si.element
  return withNearest(out, counterbalance, kernel, si, {}, [
    { path: "element.extendedLength", from: 0, to: 3 * extendedLength },
    { path: "element.stroke", from: 0, to: 3 * stroke },
    { path: "movingPivot.radius", from: 0, to: 3 * si.movingPivot.radius },
    { path: "armAngle.low", from: si.armAngle.low, to: si.armAngle.high },
    { path: "armAngle.high", from: si.armAngle.low, to: si.armAngle.high },
  ])
}

function kernel(si: Si): Counterbalance | NoSolution<CounterbalanceRefusal> {
  const { armAngle, hinge, fixedPivot, movingPivot, frameTilt, tiltEitherWay } = si
  const rate = stiffnessOf(si)
  const stiffness = rate ?? 0
  const poses = Array.from({ length: POSES }, (_, i) =>
    poseAt(si, stiffness, armAngle.low + ((armAngle.high - armAngle.low) * i) / (POSES - 1)),
  )
  const refused = strutRefusal(si, poses)
  if (refused) return refused
  let [along, across] = [0, 0]
  for (const w of si.masses) {
    along += standardGravity * w.mass * w.radius * Math.cos(w.angle)
    across += standardGravity * w.mass * w.radius * Math.sin(w.angle)
  }
  const amplitude = Math.hypot(along, across)
  const distance = Math.hypot(fixedPivot.x - hinge.x, fixedPivot.y - hinge.y)
  // perfect balance: seen from the hinge, pin and pivot as far apart as centre of gravity and straight up
  const toPivot = Math.atan2(fixedPivot.y - hinge.y, fixedPivot.x - hinge.x)
  const ideal = Math.PI / 2 - frameTilt - Math.atan2(across, along) + movingPivot.angle
  const idealDeviation = wrapAngle(toPivot - ideal)
  const worst = poses.reduce((a, b) => (Math.abs(b.unbalancedMoment) > Math.abs(a.unbalancedMoment) ? b : a))
  const maxGravityMoment = Math.max(...poses.map((pose) => Math.abs(pose.gravityMoment)))
  const maxTiltedUnbalancedMoment = Math.max(
    ...poses.map(({ angle, balanceMoment }) => {
      const centre = angle + frameTilt + Math.atan2(across, along)
      // extremes of the weights' moment over the leans: at their ends, and level or hanging where they pass it
      const tops = [centre - tiltEitherWay, centre + tiltEitherWay].map(Math.cos)
      const passes = (at: number) => Math.abs(wrapAngle(centre - at)) <= tiltEitherWay
      if (passes(0)) tops.push(1)
      if (passes(Math.PI)) tops.push(-1)
      return Math.max(...tops.map((cos) => Math.abs(amplitude * cos - balanceMoment)))
    }),
  )
  return {
    stiffness: rate,
    idealStiffness: amplitude / (movingPivot.radius * distance),
    idealDeviation,
    maxGravityMoment,
    maxUnbalancedMoment: Math.abs(worst.unbalancedMoment),
    maxUnbalancedAngle: worst.angle,
    unbalancedMoment: worst.unbalancedMoment,
    offloadShare: maxGravityMoment === 0 ? 0 : 1 - Math.abs(worst.unbalancedMoment) / maxGravityMoment,
    maxTiltedUnbalancedMoment,
    maxForce: Math.max(...poses.map((pose) => Math.abs(pose.force))),
    storedEnergy: energyOf(si, stiffness, poses),
    poses: poses.filter((_, i) => i % 5 === 0),
  }
}

function check(si: Si): Issue[] {
  const found: Issue[] = []
  const { low, high } = si.armAngle
  if (!(high > low))
    found.push(
      inconsistent(["armAngle", "high"], "{armAngle.high angle °}", "more than armAngle.low, {armAngle.low angle °}", {
        "armAngle.high": high,
        "armAngle.low": low,
      }),
    )
  if (!(Math.hypot(si.fixedPivot.x - si.hinge.x, si.fixedPivot.y - si.hinge.y) >= 1e-6))
    found.push(inconsistent(["fixedPivot"], "the same point as the hinge", "a point at least 1 µm from the hinge"))
  const { element } = si
  if (element.type === "gas-strut" && !(element.stroke < element.extendedLength))
    found.push(
      inconsistent(["element", "stroke"], "{element.stroke length}", "less than its extended length, {element.extendedLength length}", {
        "element.stroke": element.stroke,
        "element.extendedLength": element.extendedLength,
      }),
    )
  if (element.type === "spring" && element.coil && !(element.coil.wire < element.coil.meanDiameter))
    found.push(
      inconsistent(
        ["element", "coil", "wire"],
        "{element.coil.wire length}",
        "less than the mean coil diameter, {element.coil.meanDiameter length}",
        { "element.coil.wire": element.coil.wire, "element.coil.meanDiameter": element.coil.meanDiameter },
      ),
    )
  return found
}

/**
 * A spring, elastic cord or gas strut that carries part of an arm's weight, so that the actuator need not.
 *
 * Formula: the weights turn the arm clockwise by M = g·Σ m·r_w·cos(θ + a + λ) (masses m, kg, at radius r_w, m, and
 * angle a, rad; arm angle θ; lean λ; g = 9.80665 m/s²). The element pulls its ends, a distance b from the hinge on the
 * arm and c on the frame, with T along its length x: counter-clockwise moment T·b·c·sin(φ)/x, φ the angle from moving
 * to fixed end. A spring or cord has T = F_0 + k·(x − x_0) above its free length x_0 and is slack below (initial
 * tension F_0; k = G·d⁴/(8·D³·N) from shear modulus G, wire d, mean diameter D, active coils N); a gas strut pushes
 * with F_1/(1 − (1 − 1/p)·(x_1 − x)/s) (force F_1 at its extended length x_1, progression p, stroke s). Perfect balance
 * at every angle: x_0 = F_0 = 0, k·b·c = g·|Σ m·r_w·e^(ia)| and, from the hinge, the fixed end as far round from the
 * moving end as straight up is from the centre of gravity. The fixed end leans with the wearer, so a lean spoils it.
 *
 * Residuals are the largest of 181 even poses of the swing. Valid for slow moves, linear springs and cords,
 * 20 °C gas.
 *
 * Refuses: `out-of-reach` where the swing needs more than the strut's lengths.
 *
 * **Inputs**
 * - `element`: element [by its type: spring, cord or gas-strut]
 *   - `spring`: an extension spring
 *     - `stiffness`: stiffness [k_g; 0 to 10000 N/mm; optional]
 *     - `coil`: helical spring [group; optional]
 *       - `wire`: wire diameter [d_w; 0.01 to 100 mm]
 *       - `meanDiameter`: mean coil diameter [D_m; 0.1 mm to 1 m]
 *       - `activeCoils`: active coils [N_a; 0.1 to 10000]
 *       - `shearModulus`: shear modulus [G; 1 MPa to 1000 GPa; default 79.3 GPa]
 *     - `freeLength`: free length [x_0; 0 to 20 m; default 0]
 *     - `preload`: initial tension [F_0; 0 to 100 kN; default 0]
 *     - exactly one of `stiffness` and `coil`
 *   - `cord`: an elastic cord
 *     - `stiffness`: stiffness [k_g; 0 to 10000 N/mm]
 *     - `freeLength`: free length [x_0; 0 to 20 m; default 0]
 *   - `gas-strut`: a gas strut
 *     - `extendedLength`: extended length [x_1; 1 mm to 5 m]
 *     - `stroke`: stroke [s_1; 0.1 mm to 5 m]
 *     - `force`: force extended [F_1; 0 to 100 kN]
 *     - `progression`: progression [p_1; 1 to 3; default 1.3]
 * - `hinge`: hinge [group; optional, with a default of its own]
 *   - `x`: hinge, outward [x_h; −20 to 20 m]
 *   - `y`: hinge, up [y_h; −20 to 20 m]
 * - `fixedPivot`: fixed end [group]
 *   - `x`: fixed end, outward [x_b; −20 to 20 m]
 *   - `y`: fixed end, up [y_b; −20 to 20 m]
 * - `movingPivot`: moving end [group]
 *   - `radius`: moving end from the hinge [r; 0.1 mm to 20 m]
 *   - `angle`: angle from the arm to the moving end [beta; −572.958° to 572.958°; default 0]
 * - `masses`: masses on the arm [list of 1 to 50]
 *   - `mass`: mass [m_w; 0 to 200 kg]
 *   - `radius`: distance from the hinge [r_w; 0 to 20 m]
 *   - `angle`: angle from the arm [a_w; −572.958° to 572.958°; default 0]
 * - `armAngle`: arm angle [group]
 *   - `low`: arm angle low [theta_1; −401.07° to 401.07°]
 *   - `high`: arm angle high [theta_2; −401.07° to 401.07°]
 * - `frameTilt`: lean of the wearer [lambda; −183.346° to 183.346°; default 0]
 * - `tiltEitherWay`: lean either way [Lambda; 0 to 91.6732°; default 0]
 *
 * **Results**
 *
 * `stiffness`: stiffness [k; N/m]; `idealStiffness`: ideal zero-free-length stiffness [k_i; N/m]; `idealDeviation`:
 * fixed end off the ideal [gamma; rad]; `maxGravityMoment`: largest moment of the weights [M_u; N m];
 * `maxUnbalancedMoment`: largest unbalanced moment [M_a; N m]; `maxUnbalancedAngle`: arm angle of the largest
 * unbalanced moment [theta_r; rad]; `unbalancedMoment`: unbalanced moment at that arm angle [M_r; N m];
 * `offloadShare`: share of the moment balanced [eta; as a fraction]; `maxTiltedUnbalancedMoment`: largest unbalanced
 * moment when leaning [M_l; N m]; `maxForce`: maximum force [T_max; N]; `storedEnergy`: stored energy [W; J]; `poses`:
 * poses over the swing [list].
 *
 * **Symbols of the working**
 *
 * F_i: initial tension, 0 for a cord or strut [N]; g_n: standard gravity [m/s²]; A_x: moment of the weights, arm level
 * [N m]; A_y: moment of the weights, arm upright [N m]; A: their largest moment [N m]; alpha: direction of the centre
 * of gravity from the arm; c: fixed end from the hinge [m]; psi: fixed end less its ideal direction; n_p: poses of the
 * swing, from 0 to 1; theta_a: arm angles [rad]; X_a: moving end, outward [m]; Y_a: moving end, up [m]; x_a: lengths
 * of the element [m]; T_a: pull of the spring; slack below its free length [N]; G_a: moments of the weights [N m];
 * B_a: moments of the element [N m]; X_r: moving end there, outward [m]; Y_r: moving end there, up [m]; x_r: length
 * there [m]; T_r: pull there [N]; d_l: centre of gravity off level at each pose.
 *
 * **Sources**
 * - M. J. French, M. B. Widden (Proc. IMechE Part C 214): The spring-and-lever balancing mechanism, 2000, pages
 *   501–508 (condition for exact balance) (not verified against the document)
 * - R. G. Budynas, J. K. Nisbett (McGraw-Hill): Shigley's Mechanical Engineering Design, 10th ed., 2015, chapter 10
 *   (rate of a helical spring) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `out-of-reach`
 * @example
 * ```ts
 * import { counterbalance } from 'alula/linkage'
 * const spring = counterbalance({
 *   fixedPivot: { x: 0, y: '100 mm' },
 *   movingPivot: { radius: '60 mm' },
 *   masses: [{ mass: '1.2 kg', radius: '450 mm' }],
 *   armAngle: { low: '-60 deg', high: '60 deg' },
 *   element: { type: 'spring', stiffness: '900 N/m', freeLength: '30 mm' },
 * })
 * spring.idealStiffness // => 882.6
 * spring.offloadShare // => 0.7096
 * ```
 */
export const counterbalance: Solver<CounterbalanceInput, Counterbalance, CounterbalanceRefusal, CounterbalanceCaution> =
  /* @__PURE__ */ solver<CounterbalanceInput, Counterbalance, CounterbalanceRefusal, CounterbalanceCaution>(
    "counterbalance",
    "How much of an arm's weight a spring, cord or gas strut takes off the actuator",
    solve,
    () => ({
      input,
      output,
      example: {
        fixedPivot: { x: "-20 mm", y: "100 mm" },
        movingPivot: { radius: "60 mm", angle: "-5 deg" },
        masses: [
          { mass: "1 kg", radius: "450 mm" },
          { mass: "0.2 kg", radius: "800 mm", angle: "4 deg" },
        ],
        armAngle: { low: "-60 deg", high: "50 deg" },
        element: {
          type: "spring",
          coil: { wire: "1.5 mm", meanDiameter: "12 mm", activeCoils: 24 },
          freeLength: "40 mm",
          preload: "3 N",
        },
        frameTilt: "5 deg",
        tiltEitherWay: "10 deg",
      },
      formulae: counterbalanceFormulae,
      sources: [exactBalance, springRate],
      check,
      cautions: balanceCautions,
    }),
  )
