import { type Caution, caution, isNoSolution, type NoSolution, type SiOf, type Solver, solver, withNearest } from "../../../solver/index.js"
import { fallsCaution, LEAST_TRANSMISSION, pinchCaution, transmissionCaution } from "../../hazards.js"
import { standardGravity } from "../../hinge/load.js"
import { gravitySource, norton, nortonLoop, nortonTransmission } from "../../sources.js"
import {
  neutral,
  pushrodKnobs,
  reach,
  type ServoPushrod,
  type ServoPushrodCaution,
  type ServoPushrodInput,
  type ServoPushrodRefusal,
  solveServoPushrod,
} from "./kernel.js"

function solve(si: SiOf<ServoPushrodInput>): ServoPushrod | NoSolution<ServoPushrodRefusal> {
  const out = solveServoPushrod(si)
  if (!isNoSolution(out)) return out
  const { offered, knobs } = pushrodKnobs(si, out)
  return withNearest(out, servoPushrod, solveServoPushrod, si, offered, knobs)
}

function cautions(si: SiOf<ServoPushrodInput>, out: ServoPushrod): Caution<ServoPushrodCaution>[] {
  const found: Caution<ServoPushrodCaution>[] = si.maxServoAngle > si.minServoAngle ? [pinchCaution("Horn, rod and flap")] : []
  if (out.minTransmissionAngle < LEAST_TRANSMISSION) found.push(transmissionCaution("minTransmissionAngle", out.minTransmissionAngle))
  if (out.reverses)
    found.push(
      caution(
        "reverses",
        "caution",
        "Within the travel horn and rod come into line: from there the flap goes back although the servo goes on.",
        nortonTransmission,
      ),
    )
  if (si.windSpeed * si.flapWidth * si.flapDepth > 0)
    found.push(
      caution(
        "gusts",
        "caution",
        "Steady wind square on the flap: gusts bring half as much speed again and more, and the moment goes with its square. Let the flap give way or fold it when the wind rises.",
      ),
    )
  if (si.flapMass > 0) found.push(fallsCaution("A flap on an unpowered servo"))
  if (out.torqueReserveShare !== null && out.torqueReserveShare < 0.5)
    found.push(
      caution(
        "thin-margin",
        "caution",
        "Only {torqueReserveShare ratio %} of the servo's torque is left at the peak, less than half: stall torque is not a holding torque, and a hobby servo held near it overheats and strips its gears.",
        undefined,
        { torqueReserveShare: out.torqueReserveShare },
      ),
    )
  return found
}

const atEnd = (end: "From" | "To", key: "minServoAngle" | "maxServoAngle", which: (out: ServoPushrod) => ServoPushrod["map"][number]) => {
  const n = end === "From" ? "a" : "b"
  return [
    {
      symbol: `t_${n}`,
      kind: "angle" as const,
      meaning: "servo horn at this end",
      is: `theta_n + ${key === "minServoAngle" ? "delta_0" : "delta_1"}`,
    },
    { symbol: `x_${n}`, kind: "length" as const, meaning: "servo pin x", is: `a * cos(t_${n})` },
    { symbol: `y_${n}`, kind: "length" as const, meaning: "servo pin y", is: `a * sin(t_${n})` },
    { symbol: `f_${n}`, kind: "length" as const, meaning: "servo pin to hinge", is: `sqrt((d - x_${n})^2 + y_${n}^2)` },
    { symbol: `u_${n}`, kind: "length" as const, meaning: "flap pin along that line", is: `(f_${n}^2 + b^2 - c^2) / (2 * f_${n})` },
    {
      symbol: `h_${n}`,
      kind: "length" as const,
      meaning: "flap pin to the left of that line",
      is: `s * sqrt((b + c + f_${n}) * (b + c - f_${n}) * (f_${n} + b - c) * (f_${n} - b + c)) / (2 * f_${n})`,
    },
    { symbol: `X_${n}`, kind: "length" as const, meaning: "flap pin x", is: `x_${n} + (u_${n} * (d - x_${n}) + h_${n} * y_${n}) / f_${n}` },
    { symbol: `Y_${n}`, kind: "length" as const, meaning: "flap pin y", is: `y_${n} + (h_${n} * (d - x_${n}) - u_${n} * y_${n}) / f_${n}` },
    { symbol: `r_${n}`, kind: "angle" as const, meaning: "rod angle", is: `atan2((Y_${n} - y_${n}) / m, (X_${n} - x_${n}) / m)` },
    { symbol: `q_${n}`, kind: "angle" as const, meaning: "flap horn angle", is: `atan2(Y_${n} / m, (X_${n} - d) / m)` },
    {
      symbol: `w_${n}`,
      kind: "number" as const,
      meaning: "whole turns that follow the flap from neutral",
      given: (si: SiOf<ServoPushrodInput>, out: ServoPushrod) => Math.round((which(out).flapAngle + si.flapHornAngle) / (2 * Math.PI)),
    },
    { symbol: `phi_${n === "a" ? 0 : 1}`, meaning: "flap angle from neutral", is: `q_${n} + 2 * pi * w_${n} - psi_n` },
    {
      symbol: `k_${n}`,
      kind: "number" as const,
      meaning: "flap per servo angle",
      is: `a * sin(t_${n} - r_${n}) / (c * sin(q_${n} - r_${n}))`,
    },
    {
      symbol: `L_${n}`,
      kind: "moment" as const,
      meaning: "moment on the hinge at rest",
      is: `M_h + m_f * g_n * z * cos(gamma + phi_${n === "a" ? 0 : 1})`,
    },
    { symbol: `W_${n}`, kind: "angularSpeed" as const, meaning: "flap speed", is: `abs(k_${n}) * Omega` },
    {
      symbol: `D_${n}`,
      kind: "moment" as const,
      meaning: "moment of the air, wind and motion added before squaring",
      is: `rho * C_d * w_f / 2 * (W_${n}^2 * R_f^4 / 4 + 2 * W_${n} * V * R_f^3 / 3 + V^2 * R_f^2 / 2)`,
    },
    {
      symbol: `M_${n === "a" ? 0 : 1}`,
      meaning: "servo torque by virtual work, the air the way it is worse",
      is: `(L_${n} + (L_${n} < 0 N m ? -1 : 1) * D_${n}) * k_${n}`,
    },
  ]
}

/**
 * A hobby servo's horn and pushrod moving a flap: rod length, angle map, torque at the horn through the
 * travel, rod force, and where the linkage binds.
 *
 * Formula: a four-bar with the shaft-to-hinge distance d as ground, servo horn a, rod b, flap horn c; b is the distance
 * of the pins at neutral, horns at θₙ and ψₙ from the line shaft to hinge. Ratio k = a·sin(θ − θ_b)/(c·sin(ψ − θ_b))
 * with rod angle θ_b; hinge moment M = M_h + m·g·z·cos(γ + φ) with M_h against rising flap angle, flap mass m, centre z
 * from the hinge, γ its direction above the horizontal at neutral, g = 9.80665 m/s², and the air on a flap of width w
 * and depth R added the way it is worse: ½·ρ·C_d·w·(ω²·R⁴/4 + 2·ω·V·R³/3 + V²·R²/2) with ω = |k| times the servo's
 * speed, V the wind square on and C_d the drag coefficient, ρ the air's density; servo torque M·k, rod force M/(c·sin(ψ
 * − θ_b)) by virtual work. Where torque or rod force crests between two settings, the crest is found and added. Valid in one plane, slow motion, ball links without play, no
 * friction.
 *
 * Refuses `binding` where rod and flap horn come into line inside the travel, and `insufficient-torque` where the
 * servo's torque is given and does not suffice.
 *
 * **Inputs**
 * - `pivotDistance`: servo shaft to flap hinge [d; 0.01 mm to 100 m]
 * - `servoHorn`: servo horn [a; 0.1 mm to 10 m]
 * - `flapHorn`: flap horn [c; 0.1 mm to 10 m]
 * - `servoHornAngle`: servo horn at neutral [theta_n; −360° to 360°; default 90°]
 * - `flapHornAngle`: flap horn at neutral [psi_n; −360° to 360°; default 90°]
 * - `minServoAngle`: servo travel down [delta_0; −170° to 0°; default −45°]
 * - `maxServoAngle`: servo travel up [delta_1; 0 to 170°; default 45°]
 * - `hingeMoment`: moment against rising flap angle [M_h; −10000 to 10000 N m; default 0]
 * - `flapMass`: flap mass [m_f; 0 to 200 kg; default 0]
 * - `flapCentre`: hinge to the flap's centre of gravity [z; 0 to 10 m; default 0]
 * - `flapLevel`: flap above the horizontal at neutral [gamma; −360° to 360°; default 0]
 * - `flapWidth`: flap width along the hinge [w_f; 0 to 20 m; default 0]
 * - `flapDepth`: flap depth from the hinge [R_f; 0 to 20 m; default 0]
 * - `servoSpeed`: servo speed [Omega; 0 to 954.93 rpm; default 0]
 * - `windSpeed`: wind square on the flap [V; 0 to 60 m/s; default 0]
 * - `dragCoefficient`: drag coefficient [C_d; 0 to 10; default 1.2]
 * - `airDensity`: air density [rho; 0 to 10 kg/m³; default 1.225 kg/m³]
 * - `servoTorque`: torque the servo can hold [M_s; 0.01 mN m to 10000 N m; optional]
 * - `steps`: settings each way [n; whole 1 to 1000; default 12]
 *
 * **Results**
 *
 * `rod`: pushrod, pin to pin [b; m]; `minServoFlapAngle`: flap at the lower end [phi_0; rad]; `maxServoFlapAngle`:
 * flap at the upper end [phi_1; rad]; `flapSwing`: flap travel [phi; rad]; `ratio`: flap per servo angle at neutral
 * [k_0; as a fraction]; `minServoTorque`: servo torque at the lower end [M_0; N m]; `maxServoTorque`: servo torque at
 * the upper end [M_1; N m]; `peakTorque`: maximum servo torque [M_p; N m]; `peakTorqueAngle`: servo angle there
 * [delta_p; rad]; `peakRodForce`: maximum rod force [F_p; N]; `minTransmissionAngle`: minimum transmission angle [mu;
 * rad]; `torqueReserveShare`: servo torque left [e; as a fraction]; `reverses`: flap turns back within the travel [yes
 * or no]; `map`: angle map [list].
 *
 * **Symbols of the working**
 *
 * g_n: standard gravity [m/s²]; s: side of the flap pin at neutral; r_n: rod angle at neutral [rad]; t_a: servo horn
 * at this end [rad]; x_a: servo pin x [m]; y_a: servo pin y [m]; f_a: servo pin to hinge [m]; u_a: flap pin along that
 * line [m]; h_a: flap pin to the left of that line [m]; X_a: flap pin x [m]; Y_a: flap pin y [m]; r_a: rod angle
 * [rad]; q_a: flap horn angle [rad]; w_a: whole turns that follow the flap from neutral; k_a: flap per servo angle;
 * L_a: moment on the hinge at rest [N m]; W_a: flap speed [rad/s]; D_a: moment of the air, wind and motion added
 * before squaring [N m]; t_b: servo horn at this end [rad]; x_b: servo pin x [m]; y_b: servo pin y [m]; f_b: servo pin
 * to hinge [m]; u_b: flap pin along that line [m]; h_b: flap pin to the left of that line [m]; X_b: flap pin x [m];
 * Y_b: flap pin y [m]; r_b: rod angle [rad]; q_b: flap horn angle [rad]; w_b: whole turns that follow the flap from
 * neutral; k_b: flap per servo angle; L_b: moment on the hinge at rest [N m]; W_b: flap speed [rad/s]; D_b: moment of
 * the air, wind and motion added before squaring [N m]; delta_s: servo settings [rad]; phi_s: flap at each setting
 * [rad]; M_all: servo torque at each setting [N m]; F_all: rod force at each setting [N]; i_p: setting where it peaks;
 * f_r: minimum and maximum distance from servo pin to hinge [m].
 *
 * **Sources**
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapters 2 to 8 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the linkage binds or the servo stalls
 * @example
 * ```ts
 * import { servoPushrod } from 'alula/linkage'
 * const ear = servoPushrod({ pivotDistance: '80 mm', servoHorn: '15 mm', flapHorn: '20 mm', hingeMoment: '0.2 N m' })
 * ear.ratio // => 0.75
 * ear.peakTorque // => 0.15
 * ```
 */
export const servoPushrod: Solver<ServoPushrodInput, ServoPushrod, ServoPushrodRefusal, ServoPushrodCaution> = /* @__PURE__ */ solver<
  ServoPushrodInput,
  ServoPushrod,
  ServoPushrodRefusal,
  ServoPushrodCaution
>("servoPushrod", "What a servo's horn and pushrod do to a flap", solve, () => ({
  input: {
    pivotDistance: {
      kind: "length",
      symbol: "d",
      label: "servo shaft to flap hinge",
      min: "0.01 mm",
      max: "100 m",
      typical: ["50 mm", "150 mm"],
    },
    servoHorn: { kind: "length", symbol: "a", label: "servo horn", min: "0.1 mm", max: "10 m", typical: ["8 mm", "20 mm"] },
    flapHorn: { kind: "length", symbol: "c", label: "flap horn", min: "0.1 mm", max: "10 m", typical: ["15 mm", "35 mm"] },
    servoHornAngle: {
      kind: "angle",
      symbol: "theta_n",
      label: "servo horn at neutral",
      min: "-360 deg",
      max: "360 deg",
      typical: ["70 deg", "110 deg"],
      default: "90 deg",
    },
    flapHornAngle: {
      kind: "angle",
      symbol: "psi_n",
      label: "flap horn at neutral",
      min: "-360 deg",
      max: "360 deg",
      typical: ["70 deg", "110 deg"],
      default: "90 deg",
    },
    minServoAngle: {
      kind: "angle",
      symbol: "delta_0",
      label: "servo travel down",
      min: "-170 deg",
      max: 0,
      typical: ["-50 deg", "-20 deg"],
      default: "-45 deg",
    },
    maxServoAngle: {
      kind: "angle",
      symbol: "delta_1",
      label: "servo travel up",
      min: 0,
      max: "170 deg",
      typical: ["20 deg", "50 deg"],
      default: "45 deg",
    },
    hingeMoment: {
      kind: "moment",
      symbol: "M_h",
      label: "moment against rising flap angle",
      min: -1e4,
      max: 1e4,
      typical: [0.02, 0.5],
      default: 0,
    },
    flapMass: { kind: "mass", symbol: "m_f", label: "flap mass", min: 0, max: 200, typical: [0.02, 0.3], default: 0 },
    flapCentre: {
      kind: "length",
      symbol: "z",
      label: "hinge to the flap's centre of gravity",
      min: 0,
      max: "10 m",
      typical: ["20 mm", "200 mm"],
      default: 0,
    },
    flapLevel: {
      kind: "angle",
      symbol: "gamma",
      label: "flap above the horizontal at neutral",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-90 deg", "90 deg"],
      default: 0,
    },
    flapWidth: {
      kind: "length",
      symbol: "w_f",
      label: "flap width along the hinge",
      min: 0,
      max: "20 m",
      typical: ["50 mm", "400 mm"],
      default: 0,
    },
    flapDepth: {
      kind: "length",
      symbol: "R_f",
      label: "flap depth from the hinge",
      min: 0,
      max: "20 m",
      typical: ["50 mm", "400 mm"],
      default: 0,
    },
    servoSpeed: { kind: "angularSpeed", symbol: "Omega", label: "servo speed", min: 0, max: 100, typical: [0.5, 5], default: 0 },
    windSpeed: { kind: "speed", symbol: "V", label: "wind square on the flap", min: 0, max: 60, typical: [1, 10], default: 0 },
    dragCoefficient: { kind: "number", symbol: "C_d", label: "drag coefficient", min: 0, max: 10, typical: [1.1, 2], default: 1.2 },
    airDensity: { kind: "density", symbol: "rho", label: "air density", min: 0, max: 10, typical: [1, 1.3], default: 1.225 },
    servoTorque: {
      kind: "moment",
      symbol: "M_s",
      label: "torque the servo can hold",
      min: "0.01 mN m",
      max: 1e4,
      typical: [0.8, 3],
      default: null,
    },
    steps: { kind: "number", symbol: "n", label: "settings each way", whole: true, min: 1, max: 1000, typical: [4, 24], default: 12 },
  },
  output: {
    rod: { kind: "length", symbol: "b", label: "pushrod, pin to pin" },
    minServoFlapAngle: { kind: "angle", symbol: "phi_0", label: "flap at the lower end" },
    maxServoFlapAngle: { kind: "angle", symbol: "phi_1", label: "flap at the upper end" },
    flapSwing: { kind: "angle", symbol: "phi", label: "flap travel" },
    ratio: { kind: "ratio", symbol: "k_0", label: "flap per servo angle at neutral", unit: "x" },
    minServoTorque: { kind: "moment", symbol: "M_0", label: "servo torque at the lower end" },
    maxServoTorque: { kind: "moment", symbol: "M_1", label: "servo torque at the upper end" },
    peakTorque: { kind: "moment", symbol: "M_p", label: "maximum servo torque" },
    peakTorqueAngle: { kind: "angle", symbol: "delta_p", label: "servo angle there" },
    peakRodForce: { kind: "force", symbol: "F_p", label: "maximum rod force" },
    minTransmissionAngle: { kind: "angle", symbol: "mu", label: "minimum transmission angle" },
    torqueReserveShare: { kind: "ratio", symbol: "e", label: "servo torque left", unit: "%" },
    reverses: { kind: "flag", label: "flap turns back within the travel" },
    map: {
      kind: "list",
      label: "angle map",
      of: {
        kind: "group",
        label: "setting",
        fields: {
          servoAngle: { kind: "angle", label: "servo" },
          flapAngle: { kind: "angle", label: "flap" },
          ratio: { kind: "ratio", label: "ratio", unit: "x" },
          torque: { kind: "moment", label: "torque" },
          rodForce: { kind: "force", label: "rod force" },
          transmissionAngle: { kind: "angle", label: "transmission angle" },
        },
      },
    },
  },
  example: {
    pivotDistance: "90 mm",
    servoHorn: "14 mm",
    flapHorn: "22 mm",
    hingeMoment: "0.1 N m",
    flapMass: "80 g",
    flapCentre: "120 mm",
    servoTorque: "1.2 N m",
  },
  formulae: [
    { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", given: () => standardGravity, source: gravitySource },
    {
      symbol: "b",
      meaning: "rod between the pins at neutral",
      is: "sqrt((d + c * cos(psi_n) - a * cos(theta_n))^2 + (c * sin(psi_n) - a * sin(theta_n))^2)",
    },
    { symbol: "s", kind: "number", meaning: "side of the flap pin at neutral", given: (si) => (neutral(si).branch === "open" ? 1 : -1) },
    {
      symbol: "r_n",
      kind: "angle",
      meaning: "rod angle at neutral",
      is: "atan2((c * sin(psi_n) - a * sin(theta_n)) / m, (d + c * cos(psi_n) - a * cos(theta_n)) / m)",
    },
    {
      symbol: "k_0",
      meaning: "flap per servo angle at neutral",
      is: "a * sin(theta_n - r_n) / (c * sin(psi_n - r_n))",
      source: nortonLoop,
    },
    ...atEnd("From", "minServoAngle", (out) => out.map[0] as ServoPushrod["map"][number]),
    ...atEnd("To", "maxServoAngle", (out) => out.map[out.map.length - 1] as ServoPushrod["map"][number]),
    { symbol: "delta_s", kind: "angle", meaning: "servo settings", given: (_, out) => out.map.map((s) => s.servoAngle) },
    { symbol: "phi_s", kind: "angle", meaning: "flap at each setting", given: (_, out) => out.map.map((s) => s.flapAngle) },
    { symbol: "M_all", kind: "moment", meaning: "servo torque at each setting", given: (_, out) => out.map.map((s) => s.torque) },
    { symbol: "F_all", kind: "force", meaning: "rod force at each setting", given: (_, out) => out.map.map((s) => s.rodForce) },
    { symbol: "phi", meaning: "flap travel", is: "max(phi_s) - min(phi_s)" },
    { symbol: "M_p", meaning: "maximum servo torque", is: "max(abs(M_all))" },
    {
      symbol: "i_p",
      kind: "number",
      meaning: "setting where it peaks",
      given: (_, out) => out.map.findIndex((s) => s.servoAngle === out.peakTorqueAngle) + 1,
    },
    { symbol: "delta_p", meaning: "servo angle there", is: "delta_s[i_p]" },
    { symbol: "F_p", meaning: "maximum rod force", is: "max(abs(F_all))" },
    {
      symbol: "f_r",
      kind: "length",
      meaning: "minimum and maximum distance from servo pin to hinge",
      given: (si) => reach(si).map((r) => r.length),
    },
    { symbol: "mu", meaning: "minimum transmission angle", is: "min(map(f_r, g(f) = acos(abs(b^2 + c^2 - f^2) / (2 * b * c))))" },
    { symbol: "e", meaning: "servo torque left", is: "1 - M_p / M_s", when: "has_servoTorque" },
  ],
  sources: [norton],
  cautions,
}))
