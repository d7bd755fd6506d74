import { expect, it } from "vitest"
import {
  counterbalance,
  fourBar,
  fourBarLimits,
  grashof,
  hingeActuator,
  scissor,
  servoPushrod,
  sliderCrank,
  tetheredFan,
} from "../../src/linkage/index.js"
import { withNumber } from "../../src/solver/index.js"
import { nearestTests } from "../helpers/nearest.js"
import type { AnySolver } from "../helpers/solvers.js"
import { refusalOf } from "./refusal.js"

nearestTests([
  ["cannot-close", grashof, { coupler: "300 mm" }],
  ["cannot-close", fourBarLimits, { ground: "260 mm" }],
  ["cannot-close", fourBar, { input: "75 mm", coupler: "45 mm", output: "85 mm", inputAngle: "170 deg" }],
  ["cannot-close", sliderCrank, { coupler: "15 mm", offset: 0, crankAngle: "80 deg" }],
  ["insufficient-force", scissor, { tilt: "90 deg", driverForce: "80 N" }],
  ["binding", servoPushrod, { servoHorn: "25 mm", flapHorn: "20 mm", maxServoAngle: "90 deg", servoTorque: null }],
  [
    "binding",
    servoPushrod,
    { servoHorn: "25 mm", flapHorn: "20 mm", minServoAngle: "-90 deg", maxServoAngle: "10 deg", servoTorque: null },
  ],
  ["insufficient-torque", servoPushrod, { servoTorque: "0.01 N m" }],
])

const horn = { servoHorn: "25 mm", flapHorn: "20 mm", servoTorque: null }
const arm = {
  hinge: { x: 0, y: 0 },
  fixedPivot: { x: 0, y: -0.2 },
  movingPivot: { radius: 0.05, angle: 0 },
  axisOffset: 0,
  extension: null,
  stroke: 0.04,
  pinFriction: 0,
  springs: null,
}
const strut = { element: { type: "gas-strut", extendedLength: 0.17, stroke: 0.08, force: 50 } }

/** Values to both sides of what was given that a refusal must name. */
const rows: readonly (readonly [solver: unknown, change: object, paths: readonly string[]])[] = [
  [servoPushrod, { ...horn, maxServoAngle: "90 deg" }, ["maxServoAngle", "servoHorn", "flapHorn"]],
  [servoPushrod, { ...horn, minServoAngle: "-90 deg", maxServoAngle: "10 deg" }, ["minServoAngle", "servoHorn"]],
  [hingeActuator, { ...arm, retractedLength: 0.22 }, ["retractedLength", "stroke", "movingPivot.radius"]],
  [hingeActuator, { ...arm, retractedLength: 0.145 }, ["retractedLength", "movingPivot.radius"]],
  [counterbalance, strut, ["element.stroke"]],
  [scissor, { tilt: "90 deg", driverForce: "80 N" }, ["foldedAngle"]],
  [tetheredFan, { pitch: 0.02, driverAngle: null, threads: [0.01, 0.03, 0.03, 0.03, 0.03] }, ["threads.0", "pitch"]],
]

it.each(rows.map((row, i) => [i, ...row] as const))(
  "refusal %i names the nearest that works: a thousandth of the way nearer does not",
  (_, given, change, paths) => {
    const solver = given as AnySolver
    const input = { ...solver.example, ...change }
    const { nearest } = refusalOf(solver.attempt(input))
    expect(Object.keys(nearest)).toEqual(expect.arrayContaining([...paths]))
    const si = solver.read(input)
    for (const path of paths) {
      const asked = path.split(".").reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], si) as number
      const named = nearest[path] as number
      expect(solver.attempt(withNumber(si, path, named)).ok, path).toBe(true)
      expect(solver.attempt(withNumber(si, path, asked + 0.999 * (named - asked))).ok, `${path} ${asked} ${named}`).toBe(false)
    }
  },
)
