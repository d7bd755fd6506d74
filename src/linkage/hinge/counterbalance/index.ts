import { type Issue, inconsistent, isNoSolution, type NoSolution, refuse, type Solver, solver } from "../../../solver/index.js"
import { gasForce, gasWork } from "../../gas-spring/law.js"
import { withNearest } from "../../nearest.js"
import { exactBalance, springRate } from "../../sources.js"
import { movingPivotField, pointField, weightField } from "../fields.js"
import { wrapAngle } from "../geometry.js"
import { gravityMomentAt, standardGravity } from "../load.js"
import { balanceCautions } from "./cautions.js"
import { counterbalanceFormulae } from "./formulae.js"
import type { Counterbalance, CounterbalanceCaution, CounterbalanceInput, CounterbalancePose, CounterbalanceRefusal, Si } from "./types.js"

export type { Counterbalance, CounterbalanceCaution, CounterbalanceInput, CounterbalancePose, CounterbalanceRefusal } from "./types.js"

const POSES = 181

/** Rate of a helical spring, N/m: G·d⁴/(8·D³·N). */
export function coilStiffness(shearModulus: number, wire: number, meanDiameter: number, activeCoils: number): number {
  return (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * activeCoils)
}

/** Pull of the element at a length, N; a strut pushes, so its pull is negative. */
function pullAt(si: Si, stiffness: number, length: number): number {
  if (si.strut) {
    const { extended, stroke, force, progression } = si.strut
    return -gasForce(force, progression, extended - length, stroke)
  }
  return length <= si.freeLength ? 0 : si.preload + stiffness * (length - si.freeLength)
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
  if (!si.strut) return null
  const { extended, stroke } = si.strut
  const shortest = extended - stroke
  for (const { angle, length } of poses) {
    const over = Math.max(length - extended, shortest - length)
    if (over > 1e-12)
      return refuse(
        "out-of-reach",
        "With the arm at {angle angle °} the strut's ends are {length length} apart, {shortBy length} outside its {shortest length} to {extended length}.",
        over,
        { angle, length, shortest, extended },
      )
  }
  return null
}

/** Most energy between two states of the element over the swing, J. */
function energyOf(si: Si, stiffness: number, poses: readonly CounterbalancePose[]): number {
  if (si.strut) {
    const { extended, stroke, force, progression } = si.strut
    return Math.max(...poses.map(({ length }) => gasWork(force, progression, extended - length, stroke)))
  }
  return Math.max(
    ...poses.map(({ length }) => {
      const stretch = Math.max(0, length - si.freeLength)
      return si.preload * stretch + (stiffness * stretch ** 2) / 2
    }),
  )
}

function solve(si: Si): Counterbalance | NoSolution<CounterbalanceRefusal> {
  const out = kernel(si)
  if (!isNoSolution(out) || !si.strut) return out
  const { extended, stroke } = si.strut
  return withNearest(out, counterbalance, kernel, si, {}, [
    { path: "strut.extended", from: 0, to: 3 * extended },
    { path: "strut.stroke", from: 0, to: 3 * stroke },
    { path: "movingPivot.radius", from: 0, to: 3 * si.movingPivot.radius },
    { path: "lowAngle", from: si.lowAngle, to: si.highAngle },
    { path: "highAngle", from: si.lowAngle, to: si.highAngle },
  ])
}

function kernel(si: Si): Counterbalance | NoSolution<CounterbalanceRefusal> {
  const { lowAngle, highAngle, hinge, fixedPivot, movingPivot, frameTilt, tiltEitherWay } = si
  const stiffness = si.coil
    ? coilStiffness(si.coil.shearModulus, si.coil.wire, si.coil.meanDiameter, si.coil.activeCoils)
    : (si.stiffness ?? 0)
  const poses = Array.from({ length: POSES }, (_, i) => poseAt(si, stiffness, lowAngle + ((highAngle - lowAngle) * i) / (POSES - 1)))
  const refused = strutRefusal(si, poses)
  if (refused) return refused
  let [along, across] = [0, 0]
  for (const w of si.masses) {
    along += standardGravity * w.mass * w.radius * Math.cos(w.angle)
    across += standardGravity * w.mass * w.radius * Math.sin(w.angle)
  }
  const amplitude = Math.hypot(along, across)
  const distance = Math.hypot(fixedPivot.x - hinge.x, fixedPivot.y - hinge.y)
  // perfect balance: seen from the hinge, pin and anchor as far apart as centre of gravity and straight up
  const toAnchor = Math.atan2(fixedPivot.y - hinge.y, fixedPivot.x - hinge.x)
  const ideal = Math.PI / 2 - frameTilt - Math.atan2(across, along) + movingPivot.angle
  const idealDeviation = wrapAngle(toAnchor - ideal)
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
    stiffness: si.strut ? null : stiffness,
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
  if (!(si.highAngle > si.lowAngle))
    found.push(
      inconsistent(["highAngle"], "{highAngle angle °}", "more than lowAngle, {lowAngle angle °}", {
        highAngle: si.highAngle,
        lowAngle: si.lowAngle,
      }),
    )
  if (!(Math.hypot(si.fixedPivot.x - si.hinge.x, si.fixedPivot.y - si.hinge.y) >= 1e-6))
    found.push(inconsistent(["fixedPivot"], "the same point as the hinge", "a point at least 1 µm from the hinge"))
  if (si.type === "gas-strut") {
    if (!si.strut) found.push(inconsistent(["strut"], "nothing", "the gas strut's data"))
    if (si.stiffness !== null || si.coil) found.push(inconsistent(["stiffness"], "a stiffness", "none for a gas strut"))
    if (si.strut && !(si.strut.stroke < si.strut.extended))
      found.push(
        inconsistent(["strut", "stroke"], "{strut.stroke length}", "less than its extended length, {strut.extended length}", {
          "strut.stroke": si.strut.stroke,
          "strut.extended": si.strut.extended,
        }),
      )
  } else {
    if (si.strut) found.push(inconsistent(["strut"], "a gas strut's data", "none for a {type}", { type: si.type }))
    if ((si.stiffness === null) === (si.coil === null))
      found.push(
        si.coil
          ? inconsistent(["stiffness"], "both stiffness and coil", "one of stiffness and coil")
          : inconsistent(["stiffness"], "neither stiffness nor coil", "one of stiffness and coil"),
      )
  }
  if (si.coil && !(si.coil.wire < si.coil.meanDiameter))
    found.push(
      inconsistent(["coil", "wire"], "{coil.wire length}", "less than the mean coil diameter, {coil.meanDiameter length}", {
        "coil.wire": si.coil.wire,
        "coil.meanDiameter": si.coil.meanDiameter,
      }),
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
 * - `type`: element [spring, cord or gas-strut; default spring]
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
 * - `lowAngle`: arm angle low [theta_1; −401.07° to 401.07°]
 * - `highAngle`: arm angle high [theta_2; −401.07° to 401.07°]
 * - `stiffness`: stiffness [k_g; 0 to 10000 N/mm; optional]
 * - `coil`: helical spring [group; optional]
 *   - `wire`: wire diameter [d_w; 0.01 to 100 mm]
 *   - `meanDiameter`: mean coil diameter [D_m; 0.1 mm to 1 m]
 *   - `activeCoils`: active coils [N_a; 0.1 to 10000]
 *   - `shearModulus`: shear modulus [G; 1 MPa to 1000 GPa; default 79.3 GPa]
 * - `freeLength`: free length [x_0; 0 to 20 m; default 0]
 * - `preload`: initial tension [F_0; 0 to 100 kN; default 0]
 * - `strut`: gas-strut [group; optional]
 *   - `extended`: extended length [x_1; 1 mm to 5 m]
 *   - `stroke`: stroke [s_1; 0.1 mm to 5 m]
 *   - `force`: force extended [F_1; 0 to 100 kN]
 *   - `progression`: progression [p_1; 1 to 3; default 1.3]
 * - `frameTilt`: lean of the wearer [lambda; −183.346° to 183.346°; default 0]
 * - `tiltEitherWay`: lean either way [Lambda; 0 to 91.6732°; default 0]
 *
 * **Results**
 *
 * `stiffness`: stiffness [k; N/m]; `idealStiffness`: ideal zero-free-length stiffness [k_i; N/m]; `idealDeviation`:
 * fixed end off the ideal [gamma; rad]; `maxGravityMoment`: largest moment without it [M_u; N m];
 * `maxUnbalancedMoment`: largest moment left [M_a; N m]; `maxUnbalancedAngle`: left at [theta_r; rad];
 * `unbalancedMoment`: moment left there [M_r; N m]; `offloadShare`: taken off [eta; as a fraction];
 * `maxTiltedUnbalancedMoment`: largest left, leaning [M_l; N m]; `maxForce`: greatest force [T_max; N];
 * `storedEnergy`: stored energy [W; J]; `poses`: poses over the swing [list].
 *
 * **Symbols of the working**
 *
 * g_n: standard gravity [m/s²]; A_x: moment of the weights, arm level [N m]; A_y: moment of the weights, arm upright
 * [N m]; A: their largest moment [N m]; alpha: direction of the centre of gravity from the arm; c: fixed end from the
 * hinge [m]; psi: fixed end less its ideal direction; n_p: poses of the swing, from 0 to 1; theta_a: arm angles [rad];
 * X_a: moving end, outward [m]; Y_a: moving end, up [m]; x_a: lengths of the element [m]; T_a: pull of the spring;
 * slack below its free length [N]; G_a: moments of the weights [N m]; B_a: moments of the element [N m]; X_r: moving
 * end there, outward [m]; Y_r: moving end there, up [m]; x_r: length there [m]; T_r: pull there [N]; d_l: centre of
 * gravity off level at each pose.
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
 *   lowAngle: '-60 deg',
 *   highAngle: '60 deg',
 *   stiffness: '900 N/m',
 *   freeLength: '30 mm',
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
      input: {
        type: {
          kind: "choice",
          label: "element",
          options: { spring: "extension spring", cord: "elastic cord", "gas-strut": "gas-strut" },
          default: "spring",
        },
        hinge: { ...pointField("hinge", "h"), default: { x: 0, y: 0 } },
        fixedPivot: pointField("fixed end", "b"),
        movingPivot: movingPivotField("moving end", ["30 mm", "150 mm"], ["-45 deg", "45 deg"]),
        masses: { kind: "list", label: "masses on the arm", of: weightField, min: 1, max: 50 },
        lowAngle: { kind: "angle", symbol: "theta_1", label: "arm angle low", min: -7, max: 7, typical: ["-80 deg", "-40 deg"] },
        highAngle: { kind: "angle", symbol: "theta_2", label: "arm angle high", min: -7, max: 7, typical: ["20 deg", "80 deg"] },
        stiffness: {
          kind: "forcePerLength",
          symbol: "k_g",
          label: "stiffness",
          min: 0,
          max: 1e7,
          typical: ["100 N/m", "2000 N/m"],
          default: null,
        },
        coil: {
          kind: "group",
          label: "helical spring",
          fields: {
            wire: { kind: "length", symbol: "d_w", label: "wire diameter", min: "0.01 mm", max: 0.1, typical: ["0.8 mm", "2 mm"] },
            meanDiameter: { kind: "length", symbol: "D_m", label: "mean coil diameter", min: "0.1 mm", max: 1, typical: ["8 mm", "16 mm"] },
            activeCoils: { kind: "number", symbol: "N_a", label: "active coils", min: 0.1, max: 10000, typical: [10, 60] },
            shearModulus: {
              kind: "pressure",
              symbol: "G",
              label: "shear modulus",
              min: 1e6,
              max: 1e12,
              typical: ["69 GPa", "80 GPa"],
              default: "79.3 GPa",
            },
          },
          default: null,
        },
        freeLength: { kind: "length", symbol: "x_0", label: "free length", min: 0, max: 20, typical: ["0 mm", "60 mm"], default: 0 },
        preload: { kind: "force", symbol: "F_0", label: "initial tension", min: 0, max: 1e5, typical: ["0 N", "10 N"], default: 0 },
        strut: {
          kind: "group",
          label: "gas-strut",
          fields: {
            extended: { kind: "length", symbol: "x_1", label: "extended length", min: "1 mm", max: 5, typical: ["150 mm", "400 mm"] },
            stroke: { kind: "length", symbol: "s_1", label: "stroke", min: "0.1 mm", max: 5, typical: ["50 mm", "150 mm"] },
            force: { kind: "force", symbol: "F_1", label: "force extended", min: 0, max: 1e5, typical: ["50 N", "300 N"] },
            progression: { kind: "ratio", symbol: "p_1", label: "progression", min: 1, max: 3, typical: [1.2, 1.5], default: 1.3 },
          },
          default: null,
        },
        frameTilt: {
          kind: "angle",
          symbol: "lambda",
          label: "lean of the wearer",
          min: -3.2,
          max: 3.2,
          typical: ["-15 deg", "15 deg"],
          default: 0,
        },
        tiltEitherWay: {
          kind: "angle",
          symbol: "Lambda",
          label: "lean either way",
          min: 0,
          max: 1.6,
          typical: ["0 deg", "20 deg"],
          default: 0,
        },
      },
      output: {
        stiffness: { kind: "forcePerLength", symbol: "k", label: "stiffness" },
        idealStiffness: { kind: "forcePerLength", symbol: "k_i", label: "ideal zero-free-length stiffness" },
        idealDeviation: { kind: "angle", symbol: "gamma", label: "fixed end off the ideal" },
        maxGravityMoment: { kind: "moment", symbol: "M_u", label: "largest moment without it" },
        maxUnbalancedMoment: { kind: "moment", symbol: "M_a", label: "largest moment left" },
        maxUnbalancedAngle: { kind: "angle", symbol: "theta_r", label: "left at" },
        unbalancedMoment: { kind: "moment", symbol: "M_r", label: "moment left there" },
        offloadShare: { kind: "ratio", symbol: "eta", label: "taken off", unit: "%" },
        maxTiltedUnbalancedMoment: { kind: "moment", symbol: "M_l", label: "largest left, leaning" },
        maxForce: { kind: "force", symbol: "T_max", label: "greatest force" },
        storedEnergy: { kind: "energy", symbol: "W", label: "stored energy" },
        poses: {
          kind: "list",
          label: "poses over the swing",
          of: {
            kind: "group",
            label: "pose",
            fields: {
              angle: { kind: "angle", label: "arm angle" },
              length: { kind: "length", label: "length" },
              force: { kind: "force", label: "pull" },
              gravityMoment: { kind: "moment", label: "moment of the weights" },
              balanceMoment: { kind: "moment", label: "moment of the element" },
              unbalancedMoment: { kind: "moment", label: "moment left" },
            },
          },
        },
      },
      example: {
        fixedPivot: { x: "-20 mm", y: "100 mm" },
        movingPivot: { radius: "60 mm", angle: "-5 deg" },
        masses: [
          { mass: "1 kg", radius: "450 mm" },
          { mass: "0.2 kg", radius: "800 mm", angle: "4 deg" },
        ],
        lowAngle: "-60 deg",
        highAngle: "50 deg",
        coil: { wire: "1.5 mm", meanDiameter: "12 mm", activeCoils: 24 },
        freeLength: "40 mm",
        preload: "3 N",
        frameTilt: "5 deg",
        tiltEitherWay: "10 deg",
      },
      formulae: counterbalanceFormulae,
      sources: [exactBalance, springRate],
      check,
      cautions: balanceCautions,
    }),
  )
