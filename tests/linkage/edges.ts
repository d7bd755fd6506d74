import {
  type CounterbalanceInput,
  counterbalance,
  fourBar,
  fourBarLimits,
  freudenstein,
  grashof,
  type ScissorInput,
  type ServoPushrodInput,
  scissor,
  servoPushrod,
  sliderCrank,
} from "../../src/linkage/index.js"
import type { SiOf } from "../../src/solver/index.js"
import type { Edges, Numbers } from "../helpers/edges.js"

const g = 9.80665
interface Links {
  readonly ground: number
  readonly input: number
  readonly coupler: number
  readonly output: number
}
const sum = (list: readonly number[]) => list.reduce((total, x) => total + x, 0)
const lengths = ({ ground, input, coupler, output }: Links) => [ground, input, coupler, output]
const over = (si: Links) => 2 * Math.max(...lengths(si)) - sum(lengths(si))
/** Input angles, as cosines, where coupler and output come into line. */
const inLine = ({ ground, input }: Links, reach: number) => (ground ** 2 + input ** 2 - reach ** 2) / (2 * ground * input)

/** Angle from an input angle to the nearest one at which the links close, a ten-thousandth of a turn clear of a toggle. */
function toClosing(si: Links & { inputAngle: number }): number {
  const [stretched, folded] = [inLine(si, si.coupler + si.output), inLine(si, si.coupler - si.output)]
  // links that only just come into line: a cosine a hair beyond one
  const low = folded < 1 + 1e-12 && folded >= -1 ? Math.acos(Math.min(1, folded)) + 2e-4 * Math.PI : 0
  const high = stretched > -1 - 1e-12 && stretched <= 1 ? Math.acos(Math.max(-1, stretched)) - 2e-4 * Math.PI : Math.PI
  const size = Math.abs(Math.atan2(Math.sin(si.inputAngle), Math.cos(si.inputAngle)))
  return Math.max(low - size, size - high, 0)
}

/** Freudenstein's constants by Cramer's rule. */
function constants({ inputAngles: t2, outputAngles: t4 }: { inputAngles: number[]; outputAngles: number[] }): number[] {
  const rows = t2.map((a, i) => [Math.cos(t4[i] as number), -Math.cos(a), 1])
  const right = t2.map((a, i) => Math.cos(a - (t4[i] as number)))
  const det = (m: number[][]) => {
    const [[a, b, c], [d, e, f], [h, i, j]] = m as [[number, number, number], [number, number, number], [number, number, number]]
    return a * (e * j - f * i) - b * (d * j - f * h) + c * (d * i - e * h)
  }
  const whole = det(rows)
  return [0, 1, 2].map((k) => det(rows.map((row, i) => row.map((x, j) => (j === k ? (right[i] as number) : x)))) / whole)
}
const freudensteinAngles = (code: string): Numbers =>
  Object.fromEntries(
    [0, 1, 2].flatMap((i) => [
      [`freudenstein.${code}.at.input${i + 1}`, (si) => si.inputAngles[i]],
      [`freudenstein.${code}.at.output${i + 1}`, (si) => si.outputAngles[i]],
    ]),
  )

/** Driver force of a scissor at an arm angle: slope of the height of every mass against the spread of the base joints. */
const scissorForce = (si: SiOf<ScissorInput>, t: number) => {
  const side = si.fixedJoint === "lower" ? 1 : si.fixedJoint === "upper" ? -1 : 0
  const perSpan = (si.tipMass + si.armsMass / 2) * g * Math.sin(si.tilt) + si.push
  return (perSpan * si.cells * Math.cos(t)) / Math.sin(t) - (side * (si.tipMass + si.armsMass) * g * Math.cos(si.tilt)) / 2
}
const scissorPeak = (si: SiOf<ScissorInput>) =>
  Math.max(Math.abs(scissorForce(si, si.foldedAngle)), Math.abs(scissorForce(si, si.extendedAngle)))

/** Servo pin to hinge at a servo angle from neutral, and the rod. */
function pushrod(si: SiOf<ServoPushrodInput>) {
  const at = (angle: number) =>
    Math.hypot(si.pivotDistance - si.servoHorn * Math.cos(si.servoHornAngle + angle), si.servoHorn * Math.sin(si.servoHornAngle + angle))
  const rod = Math.hypot(
    si.pivotDistance + si.flapHorn * Math.cos(si.flapHornAngle) - si.servoHorn * Math.cos(si.servoHornAngle),
    si.flapHorn * Math.sin(si.flapHornAngle) - si.servoHorn * Math.sin(si.servoHornAngle),
  )
  const turns = [-2, -1, 0, 1, 2].map((k) => k * Math.PI - si.servoHornAngle).filter((a) => a > si.minServoAngle && a < si.maxServoAngle)
  const angles = [si.minServoAngle, si.maxServoAngle, ...turns]
  const clear = 1e-6 * (rod + si.flapHorn)
  const far = angles.reduce((a, b) => (at(b) > at(a) ? b : a))
  const near = angles.reduce((a, b) => (at(b) < at(a) ? b : a))
  const beyond = at(far) - rod - si.flapHorn + clear
  const within = Math.abs(rod - si.flapHorn) + clear - at(near)
  return beyond > 0 ? { angle: far, short: beyond } : { angle: near, short: within }
}

/** Greatest servo torque over the travel, from the slope of the flap angle by the law of cosines, scanned and refined. */
function servoPeak(si: SiOf<ServoPushrodInput>): number {
  const { pivotDistance: d, servoHorn: a, flapHorn: c } = si
  const b = Math.hypot(
    d + c * Math.cos(si.flapHornAngle) - a * Math.cos(si.servoHornAngle),
    c * Math.sin(si.flapHornAngle) - a * Math.sin(si.servoHornAngle),
  )
  const pins = (x: number, y: number) => Math.atan2(y, x)
  const side = Math.sin(
    pins(
      d + c * Math.cos(si.flapHornAngle) - a * Math.cos(si.servoHornAngle),
      c * Math.sin(si.flapHornAngle) - a * Math.sin(si.servoHornAngle),
    ) - pins(d - a * Math.cos(si.servoHornAngle), -a * Math.sin(si.servoHornAngle)),
  )
  const flap = (servo: number) => {
    const [x, y] = [a * Math.cos(si.servoHornAngle + servo) - d, a * Math.sin(si.servoHornAngle + servo)]
    const f = Math.hypot(x, y)
    const inner = Math.acos((f * f + c * c - b * b) / (2 * f * c))
    return Math.atan2(y, x) - Math.sign(side) * inner
  }
  const neutral = flap(0)
  const torque = (servo: number) => {
    const [x, y] = [a * Math.cos(si.servoHornAngle + servo) - d, a * Math.sin(si.servoHornAngle + servo)]
    const q = flap(servo)
    const [bx, by] = [c * Math.cos(q), c * Math.sin(q)]
    const [ux, uy] = [bx - x, by - y]
    // the rod's pull has one lever arm about each pivot
    const ratio = ((x + d) * uy - y * ux) / (bx * uy - by * ux)
    const turned = Math.atan2(Math.sin(q - neutral), Math.cos(q - neutral))
    const still = si.hingeMoment + si.flapMass * g * si.flapCentre * Math.cos(si.flapLevel + turned)
    const w = Math.abs(ratio) * si.servoSpeed
    const air =
      ((si.airDensity * si.dragCoefficient * si.flapWidth) / 2) *
      ((w * w * si.flapDepth ** 4) / 4 + (2 * w * si.windSpeed * si.flapDepth ** 3) / 3 + (si.windSpeed ** 2 * si.flapDepth ** 2) / 2)
    return Math.abs((still + (still < 0 ? -air : air)) * ratio)
  }
  const n = 2000
  const at = (k: number) => si.minServoAngle + ((si.maxServoAngle - si.minServoAngle) * k) / n
  let best = 0
  for (let k = 1; k <= n; k++) if (torque(at(k)) > torque(at(best))) best = k
  let [low, high] = [at(Math.max(0, best - 1)), at(Math.min(n, best + 1))]
  for (let i = 0; i < 100; i++) {
    const [p, q] = [low + (high - low) / 3, high - (high - low) / 3]
    if (torque(p) < torque(q)) low = p
    else high = q
  }
  return Math.max(torque((low + high) / 2), torque(si.minServoAngle), torque(si.maxServoAngle))
}

/** Length of a counterbalance's element over 181 even poses: the first one outside the strut's span. */
function strutPose(si: SiOf<CounterbalanceInput>) {
  if (si.element.type !== "gas-strut") throw new Error("only a strut has a span")
  const { extendedLength: extended, stroke } = si.element
  for (let i = 0; i <= 180; i++) {
    const angle = si.armAngle.low + ((si.armAngle.high - si.armAngle.low) * i) / 180
    const [dx, dy] = [si.fixedPivot.x - si.hinge.x, si.fixedPivot.y - si.hinge.y]
    const [d, r] = [Math.hypot(dx, dy), si.movingPivot.radius]
    const length = Math.sqrt(d * d + r * r - 2 * d * r * Math.cos(angle + si.movingPivot.angle - Math.atan2(dy, dx)))
    const short = Math.max(length - extended, extended - stroke - length)
    if (short > 1e-12) return { angle, length, short }
  }
  throw new Error("within its span")
}

const rocker = { input: "75 mm", coupler: "45 mm", output: "85 mm" }
const parallelogram = { ground: "100 mm", input: "40 mm", coupler: "100 mm", output: "40 mm" }
const gasStrut = { type: "gas-strut", extendedLength: 0.17, stroke: 0.16, force: 50 } as const
const strut = { element: gasStrut }
const coil = (wire: number) => ({ element: { type: "spring", coil: { wire, meanDiameter: 0.012, activeCoils: 24 } } })
const cord = (type: string) => ({ element: { type, stiffness: 100 } })
const loose = { element: { type: "spring", stiffness: 0 } }
const bound = { servoHorn: "25 mm", flapHorn: "20 mm", servoTorque: null }

export const edges: Edges = {
  cautions: [
    { solver: servoPushrod, code: "poor-transmission", severity: "caution", shown: { flapHorn: 0.01309 }, notShown: { flapHorn: 0.0131 } },
    { solver: grashof, code: "near-change-point", severity: "caution", shown: { output: "63.2 mm" }, notShown: { output: "63.3 mm" } },
    { solver: grashof, code: "near-change-point", severity: "caution", shown: { output: "56.9 mm" }, notShown: { output: "56.7 mm" } },
    // cosine rule: c² − 2·90·cos 40°·c + 90² − 70² = 0 at c = 108.36 mm, the input towards the output pivot
    {
      solver: fourBarLimits,
      code: "poor-transmission",
      severity: "caution",
      shown: { ground: "100 mm", input: "30 mm", coupler: "90 mm", output: "108.5 mm" },
      notShown: { ground: "100 mm", input: "30 mm", coupler: "90 mm", output: "108.2 mm" },
    },
    // cosine rule: 40 degrees between coupler and output at 46.49 degrees of the input, either way
    { solver: fourBar, code: "poor-transmission", severity: "caution", shown: { inputAngle: 0.811 }, notShown: { inputAngle: 0.812 } },
    { solver: fourBar, code: "poor-transmission", severity: "caution", shown: { inputAngle: -0.811 }, notShown: { inputAngle: -0.812 } },
    {
      solver: sliderCrank,
      code: "poor-transmission",
      severity: "caution",
      shown: { crank: "115 mm", crankAngle: -1.34 },
      notShown: { crank: "115 mm", crankAngle: -1.338 },
    },
    // the mirror image: offset above, crank above
    {
      solver: sliderCrank,
      code: "poor-transmission",
      severity: "caution",
      shown: { crank: "115 mm", offset: "20 mm", crankAngle: 1.34 },
      notShown: { crank: "115 mm", offset: "20 mm", crankAngle: 1.338 },
    },
    {
      solver: servoPushrod,
      code: "pinch",
      severity: "warning",
      shown: { minServoAngle: 0, maxServoAngle: 1e-3 },
      notShown: { minServoAngle: 0, maxServoAngle: 0 },
    },
    { solver: servoPushrod, code: "falls-unpowered", severity: "warning", shown: { flapMass: 1e-3 }, notShown: { flapMass: 0 } },
    {
      solver: servoPushrod,
      code: "reverses",
      severity: "caution",
      shown: { servoTorque: null, maxServoAngle: 1.78 },
      notShown: { servoTorque: null, maxServoAngle: 1.779 },
    },
    {
      solver: servoPushrod,
      code: "reverses",
      severity: "caution",
      shown: { servoTorque: null, minServoAngle: -1.399 },
      notShown: { servoTorque: null, minServoAngle: -1.398 },
    },
    {
      solver: servoPushrod,
      code: "gusts",
      severity: "caution",
      shown: { flapWidth: 0.1, flapDepth: 0.1, windSpeed: 1e-3 },
      notShown: { flapWidth: 0.1, flapDepth: 0.1, windSpeed: 0 },
    },
    {
      solver: servoPushrod,
      code: "thin-margin",
      severity: "caution",
      shown: { servoTorque: 0.247 },
      notShown: { servoTorque: 0.2475 },
    },
    {
      solver: freudenstein,
      code: "branch-defect",
      severity: "warning",
      shown: { outputAngles: ["55 deg", 1.305, "112 deg"] },
      notShown: { outputAngles: ["55 deg", 1.31, "112 deg"] },
    },
    {
      solver: freudenstein,
      code: "points-backwards",
      severity: "note",
      shown: { outputAngles: ["55 deg", "78 deg", 1.822] },
      notShown: { outputAngles: ["55 deg", "78 deg", 1.823] },
    },
    {
      solver: freudenstein,
      code: "poor-proportion",
      severity: "caution",
      shown: { outputAngles: ["55 deg", "78 deg", 1.809] },
      notShown: { outputAngles: ["55 deg", "78 deg", 1.8] },
    },
    // cot of the arm angle above three
    {
      solver: scissor,
      code: "flat-scissor",
      severity: "caution",
      shown: { foldedAngle: "18.43 deg" },
      notShown: { foldedAngle: "18.44 deg" },
    },
    { solver: scissor, code: "falls-unpowered", severity: "warning", shown: { tilt: 1e-3 }, notShown: { tilt: 0 } },
    { solver: scissor, code: "falls-unpowered", severity: "warning", shown: { tilt: -1e-3 }, notShown: { tilt: 0 } },
    {
      solver: scissor,
      code: "thin-holding-margin",
      severity: "warning",
      shown: { screwEfficiency: 0.401 },
      notShown: { screwEfficiency: 0.4 },
    },
    { solver: scissor, code: "soft-driver", severity: "caution", shown: { driverStiffness: 37700 }, notShown: { driverStiffness: 37800 } },
    {
      solver: scissor,
      code: "force-changes-sign",
      severity: "caution",
      // one cell carrying only itself, held at one joint: the force is nothing where the arms stand at the tilt
      shown: { fixedJoint: "lower", cells: 1, tipMass: 0, tilt: "43.2 deg", foldedAngle: "43 deg", extendedAngle: "62 deg" },
      notShown: { fixedJoint: "lower", cells: 1, tipMass: 0, tilt: "42.8 deg", foldedAngle: "43 deg", extendedAngle: "62 deg" },
    },
    {
      solver: scissor,
      code: "force-changes-sign",
      severity: "caution",
      shown: { fixedJoint: "upper", cells: 1, tipMass: 0, tilt: "-61.8 deg", foldedAngle: "43 deg", extendedAngle: "62 deg" },
      notShown: { fixedJoint: "upper", cells: 1, tipMass: 0, tilt: "-62.2 deg", foldedAngle: "43 deg", extendedAngle: "62 deg" },
    },
    {
      solver: counterbalance,
      code: "stored-energy",
      severity: "warning",
      shown: { element: { ...gasStrut, force: 1e-3 } },
      notShown: { element: { ...gasStrut, force: 0 } },
    },
    {
      solver: counterbalance,
      code: "falls-unpowered",
      severity: "warning",
      shown: { masses: [{ mass: 1e-3, radius: 0.5 }], ...loose },
      notShown: { masses: [{ mass: 0, radius: 0.5 }], ...loose },
    },
    {
      solver: counterbalance,
      code: "makes-worse",
      severity: "caution",
      shown: { fixedPivot: { x: "-20 mm", y: "5.3 mm" } },
      notShown: { fixedPivot: { x: "-20 mm", y: "5.34 mm" } },
    },
    {
      solver: counterbalance,
      code: "lean-spoils-balance",
      severity: "note",
      shown: { tiltEitherWay: 0.118 },
      notShown: { tiltEitherWay: 0.1177 },
    },
    { solver: counterbalance, code: "cord-is-not-a-spring", severity: "note", shown: cord("cord"), notShown: cord("spring") },
    {
      solver: counterbalance,
      code: "strut-varies",
      severity: "note",
      shown: strut,
      notShown: {},
    },
  ],
  refusals: [
    { solver: grashof, code: "cannot-close", refused: { coupler: "220.1 mm" }, answered: { coupler: "219.9 mm" } },
    { solver: fourBarLimits, code: "cannot-close", refused: { coupler: "220.1 mm" }, answered: { coupler: "219.9 mm" } },
    { solver: fourBar, code: "cannot-close", refused: { ...rocker, inputAngle: 1.6559 }, answered: { ...rocker, inputAngle: 1.6558 } },
    { solver: fourBar, code: "cannot-close", refused: { ...rocker, inputAngle: -1.6559 }, answered: { ...rocker, inputAngle: -1.6558 } },
    { solver: fourBar, code: "dead-point", refused: { ...parallelogram, inputAngle: 0 }, answered: { ...parallelogram, inputAngle: 1e-3 } },
    {
      solver: fourBar,
      code: "indeterminate",
      refused: { input: "100 mm", coupler: "80 mm", inputAngle: 0 },
      answered: { input: "100 mm", coupler: "80 mm", inputAngle: 1e-3 },
    },
    {
      solver: sliderCrank,
      code: "cannot-close",
      refused: { crank: "115 mm", coupler: "119.5 mm" },
      answered: { crank: "115 mm", coupler: "119.7 mm" },
    },
    {
      solver: sliderCrank,
      code: "dead-point",
      refused: { offset: 0, crankAngle: "90 deg", coupler: "40 mm" },
      answered: { offset: 0, crankAngle: "90 deg", coupler: "40.1 mm" },
    },
    {
      solver: freudenstein,
      code: "undecided",
      refused: { inputAngles: ["30 deg", "75 deg", "75 deg"], outputAngles: ["55 deg", "78 deg", "78 deg"] },
      answered: { inputAngles: ["30 deg", "75 deg", "75.2 deg"], outputAngles: ["55 deg", "78 deg", "78 deg"] },
    },
    {
      solver: freudenstein,
      code: "no-candidate",
      refused: { outputAngles: ["40 deg", "85 deg", "130 deg"] },
      answered: { outputAngles: ["40 deg", "85 deg", "130.5 deg"] },
    },
    { solver: scissor, code: "insufficient-force", refused: { driverForce: 30.3 }, answered: { driverForce: 30.4 } },
    { solver: servoPushrod, code: "insufficient-torque", refused: { servoTorque: 0.1236 }, answered: { servoTorque: 0.1237 } },
    {
      solver: servoPushrod,
      code: "binding",
      refused: { ...bound, minServoAngle: "-10 deg", maxServoAngle: 0.859 },
      answered: { ...bound, minServoAngle: "-10 deg", maxServoAngle: 0.858 },
    },
    {
      solver: servoPushrod,
      code: "binding",
      refused: { ...bound, maxServoAngle: "10 deg", minServoAngle: -1.008 },
      answered: { ...bound, maxServoAngle: "10 deg", minServoAngle: -1.007 },
    },
    {
      solver: counterbalance,
      code: "out-of-reach",
      refused: { element: { ...gasStrut, stroke: 0.085 } },
      answered: { element: { ...gasStrut, stroke: 0.0851 } },
    },
  ],
  faults: [
    { solver: scissor, path: "extendedAngle", faulty: { extendedAngle: "18 deg" }, sound: { extendedAngle: "18.1 deg" } },
    {
      solver: counterbalance,
      path: "armAngle.high",
      faulty: { armAngle: { low: "-60 deg", high: "-60 deg" } },
      sound: { armAngle: { low: "-60 deg", high: "-59.9 deg" } },
    },
    {
      solver: counterbalance,
      path: "fixedPivot",
      faulty: { fixedPivot: { x: 0, y: 0.9e-6 } },
      sound: { fixedPivot: { x: 0, y: 1.1e-6 } },
      apart: "a tenth of a micrometre",
    },
    {
      solver: counterbalance,
      path: "element.coil",
      faulty: { element: { ...coil(0.0015).element, stiffness: 100 } },
      sound: coil(0.0015),
    },
    { solver: counterbalance, path: "element.stiffness", faulty: { element: { type: "spring" } }, sound: loose },
    {
      solver: counterbalance,
      path: "element.stroke",
      faulty: { element: { ...gasStrut, stroke: 0.17 } },
      sound: { element: { ...gasStrut, stroke: 0.1695 } },
    },
    {
      solver: counterbalance,
      path: "element.coil.wire",
      faulty: coil(0.012),
      sound: coil(0.0119),
    },
  ],
  numbers: {
    "grashof.cannot-close.shortBy": over,
    "grashof.cannot-close.at.longest": (si) => Math.max(...lengths(si)),
    "grashof.cannot-close.at.others": (si) => sum(lengths(si)) - Math.max(...lengths(si)),
    "fourBarLimits.cannot-close.shortBy": over,
    "fourBarLimits.cannot-close.at.longest": (si) => Math.max(...lengths(si)),
    "fourBar.cannot-close.shortBy": (si) => {
      const f = Math.sqrt(si.ground ** 2 + si.input ** 2 - 2 * si.ground * si.input * Math.cos(si.inputAngle))
      return Math.max(f - si.coupler - si.output, Math.abs(si.coupler - si.output) - f)
    },
    "fourBar.dead-point.shortBy": toClosing,
    "fourBar.indeterminate.shortBy": () => 1e-3,
    "sliderCrank.cannot-close.shortBy": (si) => Math.abs(si.crank * Math.sin(si.crankAngle) - si.offset) - si.coupler,
    "sliderCrank.cannot-close.away": (si) => Math.abs(si.crank * Math.sin(si.crankAngle) - si.offset),
    "sliderCrank.dead-point.shortBy": (si) => Math.abs(si.crank * Math.sin(si.crankAngle) - si.offset) * (1 + 1e-6) - si.coupler,
    ...freudensteinAngles("undecided"),
    ...freudensteinAngles("no-candidate"),
    "freudenstein.undecided.shortBy": () => 1e-9,
    "freudenstein.no-candidate.shortBy": (si) => {
      const [k1, k2] = constants(si).map(Math.abs) as [number, number, number]
      return 1e-9 * Math.max(1, k1, k2) - Math.min(k1, k2)
    },
    "scissor.insufficient-force.shortBy": (si) => scissorPeak(si) - si.driverForce,
    "scissor.insufficient-force.at.force": scissorPeak,
    "scissor.insufficient-force.at.armAngle": (si) =>
      Math.abs(scissorForce(si, si.foldedAngle)) >= Math.abs(scissorForce(si, si.extendedAngle)) ? si.foldedAngle : si.extendedAngle,
    "servoPushrod.insufficient-torque.shortBy": (si) => servoPeak(si) - si.servoTorque,
    "servoPushrod.insufficient-torque.at.torque": servoPeak,
    "servoPushrod.binding.shortBy": (si) => pushrod(si).short,
    "servoPushrod.binding.at.servoAngle": (si) => pushrod(si).angle,
    "counterbalance.out-of-reach.shortBy": (si) => strutPose(si).short,
    "counterbalance.out-of-reach.at.angle": (si) => strutPose(si).angle,
    "counterbalance.out-of-reach.at.length": (si) => strutPose(si).length,
    "counterbalance.out-of-reach.at.shortest": (si) => si.element.extendedLength - si.element.stroke,
    "counterbalance.out-of-reach.at.extendedLength": (si) => si.element.extendedLength,
  },
}
