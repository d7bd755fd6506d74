import { dcMotor, dutyCycle, hobbyServo, linearActuator, powerScrew } from "../../src/drive/index.js"
import type { Edges } from "../helpers/edges.js"

interface Motor {
  readonly [key: string]: number | null
}
const n = (si: Motor, key: string) => si[key] as number

/** Copper at one temperature against another: 0.00393 for each kelvin, referred to 20 °C. */
const copper = (hot: number, sheet: number) => (1 + 0.00393 * (hot - 20)) / (1 + 0.00393 * (sheet - 20))

/** Winding resistance in use and torque for an ampere: V = I·R + k·n solved at both points by Cramer's rule. */
function motorOf(si: Motor) {
  const warm = copper(n(si, "windingTemperature"), n(si, "datasheetTemperature"))
  if (si.backEmfConstant !== null) return { r: n(si, "windingResistance") * warm, kT: n(si, "backEmfConstant") }
  const [v, n0, i0, n1, i1] = ["ratedVoltage", "noLoadSpeed", "noLoadCurrent", "loadSpeed", "loadCurrent"].map((k) =>
    n(si, k),
  ) as number[] as [number, number, number, number, number]
  return { r: ((v * n1 - v * n0) / (i0 * n1 - i1 * n0)) * warm, kT: n(si, "loadTorque") / (i1 - i0) }
}

/** Resistance, newtons for an ampere and efficiency of the screw likewise. */
function actuatorOf(si: Motor) {
  const [v, v0, i0, v1, i1] = ["ratedVoltage", "noLoadSpeed", "noLoadCurrent", "ratedSpeed", "ratedCurrent"].map((k) =>
    n(si, k),
  ) as number[] as [number, number, number, number, number]
  const determinant = i0 * v1 - i1 * v0
  const kF = n(si, "ratedForce") / (i1 - i0)
  const eta = kF / ((i0 * v - i1 * v) / determinant)
  const force = n(si, "force")
  const current = force >= 0 ? i0 + force / kF : i0 - (force / kF) * (1 - 2 * eta)
  const r = ((v * v1 - v * v0) / determinant) * copper(n(si, "windingTemperature"), n(si, "datasheetTemperature"))
  return { r, kF, eta, i0, balance: current * r }
}

/** The servo's stall torque at its voltage: on the line through its columns, or through nothing at no voltage; beside them whichever is less. */
function servoStall(si: Motor): number {
  const [v, v1, t1] = [n(si, "terminalVoltage"), n(si, "firstVoltage"), n(si, "firstStallTorque")]
  if (si.secondVoltage === null) return (v / v1) * t1
  const [v2, t2] = [n(si, "secondVoltage"), n(si, "secondStallTorque")]
  const part = (v - v1) / (v2 - v1)
  const through = (1 - part) * t1 + part * t2
  if (v < v1) return Math.min(through, (v / v1) * t1)
  return v > v2 ? Math.min(through, (v / v2) * t2) : through
}

const screw = (si: Motor) => ({
  slope: (n(si, "pitch") * n(si, "starts")) / (Math.PI * (n(si, "majorDiameter") - n(si, "pitch") / 2)),
  friction: n(si, "threadFriction") / Math.cos(n(si, "flankAngle") / 2),
})

// an efficient screw: η = 0.75, so that loads beyond 1100 N drive it back
const free = { ratedForce: 1512.5 }
const steep = { pitch: "4 mm", starts: 8 }
// with the collar on a 20 mm circle, a friction of 0.0878 just holds what the thread lets go
const collar = { starts: 4, threadFriction: 0.1, collarDiameter: "20 mm" }

/** A motor without the two points of its line. */
const noPoints = { ratedVoltage: undefined, noLoadSpeed: undefined, loadTorque: undefined, loadSpeed: undefined, loadCurrent: undefined }

export const edges: Edges = {
  cautions: [
    { code: "drawn-in", severity: "warning", solver: dcMotor, shown: {}, notShown: null },
    { code: "over-voltage", severity: "warning", solver: dcMotor, shown: { terminalVoltage: 13.21 }, notShown: { terminalVoltage: 13.2 } },
    {
      code: "overheating",
      severity: "warning",
      solver: dcMotor,
      shown: { windingTemperature: 126 },
      notShown: { windingTemperature: 125 },
    },
    { code: "heavy-load", severity: "caution", solver: dcMotor, shown: { torque: 0.669 }, notShown: { torque: 0.665 } },
    { code: "extrapolated", severity: "note", solver: dcMotor, shown: { loadSpeed: 0 }, notShown: { loadSpeed: 0.0005 } },
    { code: "datasheet-rounding", severity: "note", solver: dcMotor, shown: { loadTorque: 5.86 }, notShown: { loadTorque: 5.84 } },
    { code: "pinch", severity: "warning", solver: linearActuator, shown: {}, notShown: null },
    { code: "over-force", severity: "warning", solver: linearActuator, shown: { force: 501 }, notShown: { force: 500 } },
    { code: "over-force", severity: "warning", solver: linearActuator, shown: { force: -501 }, notShown: { force: -500 } },
    { code: "over-current", severity: "caution", solver: linearActuator, shown: { force: 501 }, notShown: { force: 499 } },
    {
      code: "over-voltage",
      severity: "warning",
      solver: linearActuator,
      shown: { terminalVoltage: 13.21 },
      notShown: { terminalVoltage: 13.2 },
    },
    {
      code: "back-driven",
      severity: "warning",
      solver: linearActuator,
      shown: { ...free, force: 1105 },
      notShown: { ...free, force: 1095 },
    },
    {
      code: "back-driven",
      severity: "warning",
      solver: linearActuator,
      shown: { ...free, force: -1105 },
      notShown: { ...free, force: -1095 },
    },
    {
      code: "runs-away",
      severity: "warning",
      solver: linearActuator,
      shown: { ...free, force: -1105 },
      notShown: { ...free, force: -1095 },
    },
    { code: "holding-unknown", severity: "warning", solver: linearActuator, shown: {}, notShown: { holdingForce: "5 kN" } },
    {
      code: "falls-unpowered",
      severity: "warning",
      solver: linearActuator,
      shown: { holdingForce: 300, force: 301 },
      notShown: { holdingForce: 300, force: 300 },
    },
    {
      code: "over-voltage",
      severity: "warning",
      solver: hobbyServo,
      shown: { terminalVoltage: 6.01 },
      notShown: { terminalVoltage: 6.005 },
    },
    { code: "extrapolated", severity: "note", solver: hobbyServo, shown: { terminalVoltage: 4.795 }, notShown: { terminalVoltage: 4.8 } },
    { code: "cannot-hold", severity: "caution", solver: hobbyServo, shown: { torque: 0.2945 }, notShown: { torque: 0.294 } },
    {
      code: "cannot-hold",
      severity: "caution",
      solver: hobbyServo,
      shown: { torque: 0.2945, holdingShare: 1 },
      notShown: { torque: 0.294, holdingShare: 1 },
    },
    { code: "supply-for-stall", severity: "caution", solver: hobbyServo, shown: {}, notShown: { stallCurrent: undefined } },
    { code: "datasheet-torque", severity: "note", solver: hobbyServo, shown: {}, notShown: null },
    { code: "pinch", severity: "warning", solver: hobbyServo, shown: {}, notShown: null },
    { code: "time-constant", severity: "note", solver: dutyCycle, shown: {}, notShown: null },
    {
      code: "burns",
      severity: "caution",
      solver: dutyCycle,
      shown: { currentUtilisation: 0.533 },
      notShown: { currentUtilisation: 0.531 },
    },
    {
      code: "overheats-at-once",
      severity: "warning",
      solver: dutyCycle,
      shown: { currentUtilisation: 2.08 },
      notShown: { currentUtilisation: 2.066 },
    },
    { code: "must-rest", severity: "warning", solver: dutyCycle, shown: { restDuration: 128.5 }, notShown: { restDuration: 129.3 } },
    { code: "longer-run", severity: "warning", solver: dutyCycle, shown: { runDuration: 121 }, notShown: { runDuration: 120 } },
    {
      code: "far-over-rated",
      severity: "warning",
      solver: dutyCycle,
      shown: { currentUtilisation: 1.51 },
      notShown: { currentUtilisation: 1.5 },
    },
    { code: "pinch", severity: "warning", solver: powerScrew, shown: {}, notShown: null },
    {
      code: "held-by-collar",
      severity: "warning",
      solver: powerScrew,
      shown: { ...collar, collarFriction: 0.088 },
      notShown: { ...collar, collarFriction: 0.0875 },
    },
    {
      code: "thread-not-self-locking",
      severity: "warning",
      solver: powerScrew,
      shown: { threadFriction: 0.0875 },
      notShown: { threadFriction: 0.088 },
    },
    {
      code: "thin-holding-margin",
      severity: "warning",
      solver: powerScrew,
      // twice the slope of 2/(π·7), on flanks of 15°: 0.1757
      shown: { threadFriction: 0.1755 },
      notShown: { threadFriction: 0.1759 },
    },
    { code: "low-friction", severity: "note", solver: powerScrew, shown: { threadFriction: 0.0499 }, notShown: { threadFriction: 0.05 } },
    {
      code: "steep-thread",
      severity: "note",
      solver: powerScrew,
      shown: { starts: 2, pitch: "1.955 mm" },
      notShown: { starts: 2, pitch: "1.94 mm" },
    },
    {
      code: "very-efficient",
      severity: "note",
      solver: powerScrew,
      shown: { threadFriction: undefined, screwEfficiency: 0.951 },
      notShown: { threadFriction: undefined, screwEfficiency: 0.949 },
    },
  ],
  refusals: [
    { code: "insufficient-voltage", solver: dcMotor, refused: { terminalVoltage: 0.435 }, answered: { terminalVoltage: 0.438 } },
    { code: "insufficient-torque", solver: dcMotor, refused: { torque: 3.05 }, answered: { torque: 3.04 } },
    { code: "insufficient-force", solver: linearActuator, refused: { force: 1819 }, answered: { force: 1817 } },
    {
      code: "insufficient-voltage",
      solver: hobbyServo,
      refused: { secondStallTorque: "20 kgf cm", terminalVoltage: 3.805 },
      answered: { secondStallTorque: "20 kgf cm", terminalVoltage: 3.83 },
    },
    { code: "insufficient-torque", solver: hobbyServo, refused: { torque: 0.985 }, answered: { torque: 0.978 } },
    { code: "jammed", solver: powerScrew, refused: { ...steep, threadFriction: 0.572 }, answered: { ...steep, threadFriction: 0.567 } },
  ],
  faults: [
    {
      path: "windingResistance",
      solver: dcMotor,
      faulty: { ...noPoints, backEmfConstant: 1 },
      sound: { ...noPoints, backEmfConstant: 1, windingResistance: 2 },
    },
    { path: "ratedVoltage", solver: dcMotor, faulty: { backEmfConstant: 1 }, sound: {} },
    { path: "noLoadSpeed", solver: dcMotor, faulty: { noLoadSpeed: undefined }, sound: {} },
    { path: "loadSpeed", solver: dcMotor, faulty: { loadSpeed: 10.48 }, sound: { loadSpeed: 10.4 } },
    { path: "loadCurrent", solver: dcMotor, faulty: { loadCurrent: 0.2 }, sound: { loadCurrent: 0.2015 } },
    {
      path: "loadSpeed",
      solver: dcMotor,
      faulty: { noLoadSpeed: 10, loadSpeed: 9.9999999999999 },
      sound: { noLoadSpeed: 10, loadSpeed: 9.95 },
    },
    { path: "loadTorque", solver: dcMotor, faulty: { loadTorque: 6.15 }, sound: { loadTorque: 6.14 } },
    { path: "ratedSpeed", solver: linearActuator, faulty: { ratedSpeed: 0.012 }, sound: { ratedSpeed: 0.0119 } },
    { path: "ratedSpeed", solver: linearActuator, faulty: { ratedSpeed: 0.0119999999999999 }, sound: { ratedSpeed: 0.0119 } },
    { path: "ratedCurrent", solver: linearActuator, faulty: { ratedCurrent: 0.8 }, sound: { ratedCurrent: 0.805 } },
    { path: "ratedForce", solver: linearActuator, faulty: { ratedForce: 2020 }, sound: { ratedForce: 2010 } },
    { path: "secondTime", solver: hobbyServo, faulty: { secondTime: undefined }, sound: {} },
    { path: "secondVoltage", solver: hobbyServo, faulty: { secondVoltage: 4.84 }, sound: { secondVoltage: 4.86 } },
    {
      path: "secondStallTorque",
      solver: hobbyServo,
      faulty: { secondStallTorque: "8.99 kgf cm" },
      sound: { secondStallTorque: "9.01 kgf cm" },
    },
    { path: "secondTime", solver: hobbyServo, faulty: { secondTime: 0.2005 }, sound: { secondTime: 0.2 } },
    { path: "stallCurrent", solver: hobbyServo, faulty: { stallCurrent: "10 mA" }, sound: { stallCurrent: "10.1 mA" } },
    { path: "temperatureLimit", solver: dutyCycle, faulty: { temperatureLimit: 26 }, sound: { temperatureLimit: 27 } },
    { path: "ambientTemperature", solver: dutyCycle, faulty: { ambientTemperature: 79 }, sound: { ambientTemperature: 78 } },
    { path: "pitch", solver: powerScrew, faulty: { pitch: "7.21 mm" }, sound: { pitch: "7.19 mm" } },
    { path: "screwEfficiency", solver: powerScrew, faulty: { screwEfficiency: 0.5 }, sound: {} },
    { path: "threadFriction", solver: powerScrew, faulty: { threadFriction: undefined }, sound: {} },
  ],
  numbers: {
    "dcMotor.insufficient-voltage.shortBy": (si) => motorOf(si).r * si.noLoadCurrent - si.terminalVoltage,
    "dcMotor.insufficient-voltage.at.stallCurrent": (si) => si.terminalVoltage / motorOf(si).r,
    "dcMotor.insufficient-torque.shortBy": (si) => motorOf(si).r * (si.noLoadCurrent + si.torque / motorOf(si).kT) - si.terminalVoltage,
    "dcMotor.insufficient-torque.at.stallCurrent": (si) => si.terminalVoltage / motorOf(si).r,
    "dcMotor.insufficient-torque.at.stallTorque": (si) => motorOf(si).kT * (si.terminalVoltage / motorOf(si).r - si.noLoadCurrent),
    // torque for an ampere over back-emf of a second: the same number in a motor without loss
    "dcMotor.loadTorque.times": (si) =>
      (si.loadTorque / (si.loadCurrent - si.noLoadCurrent)) *
      ((si.noLoadSpeed * si.loadCurrent - si.loadSpeed * si.noLoadCurrent) / (si.ratedVoltage * (si.loadCurrent - si.noLoadCurrent))),
    "linearActuator.insufficient-force.shortBy": (si) => 1.001 * actuatorOf(si).balance - si.terminalVoltage,
    "linearActuator.insufficient-force.needed": (si) => actuatorOf(si).balance,
    "linearActuator.insufficient-force.moves": (si) =>
      Math.max(0, actuatorOf(si).kF * (si.terminalVoltage / actuatorOf(si).r - actuatorOf(si).i0)),
    "linearActuator.insufficient-force.at.stallForce": (si) =>
      actuatorOf(si).kF * (si.terminalVoltage / actuatorOf(si).r - actuatorOf(si).i0),
    "linearActuator.insufficient-force.at.stallCurrent": (si) => si.terminalVoltage / actuatorOf(si).r,
    "linearActuator.ratedForce.times": (si) => actuatorOf(si).eta,
    "hobbyServo.over-voltage.highest": (si) => si.secondVoltage ?? si.firstVoltage,
    "hobbyServo.insufficient-voltage.shortBy": (si) => si.firstVoltage - si.terminalVoltage,
    "hobbyServo.insufficient-torque.shortBy": (si) => si.torque - 0.999 * servoStall(si),
    "hobbyServo.insufficient-torque.at.stallTorque": (si) => servoStall(si),
    "powerScrew.jammed.shortBy": (si) => screw(si).friction * screw(si).slope - 0.999,
    "powerScrew.jammed.at.friction": (si) => screw(si).friction,
    "powerScrew.jammed.at.slope": (si) => screw(si).slope,
  },
}
