import { gearmotor } from "../../src/drive/index.js"
import type { Edges } from "../helpers/edges.js"

// k = 0.012 V·s/rad, R = 1.2 Ω, I₀ = 0.2 A: 10 A at standstill; planetary stages of 5:1 lose 4/5·(1 − 0.97²), the spur pair 3 %
const planetary = (1 + 4 * 0.97 ** 2) / 5
const efficiency = planetary ** 2 * 0.97
const ratio = 75
const standstill = 0.012 * (10 - 0.2) - 0.0005
const stall = standstill * ratio * efficiency
// driven back each planetary stage passes (1 + k)/(1 + k/η)
const backward = (5 / (1 + 4 / 0.97 ** 2)) ** 2 * 0.97
const drivesBack = ((0.0005 + 0.012 * 0.2) * ratio) / backward
const worm = { stages: [{ type: "worm", drivingTeeth: 1, drivenTeeth: 30, leadAngle: "4 deg", friction: 0.2 }] }
const gears = (stage: object) => ({ stages: [stage], torque: 0.01 })
const wormOf = (friction: number) => gears({ ...worm.stages[0], friction })
const spur = (drivingTeeth: number) => gears({ type: "spur", drivingTeeth, drivenTeeth: 43 })
const ring = (drivenTeeth: number) => gears({ type: "planetary", drivingTeeth: 12, drivenTeeth })

interface StageSi {
  readonly [key: string]: string | number | null
}
/** Ratio and losses of a stage from the power that rolls in its meshes, and of a worm from the forces on its thread. */
function stageOf(s: StageSi) {
  const teeth = (s.drivenTeeth as number) / (s.drivingTeeth as number)
  if (s.type === "worm") {
    const [angle, c] = [s.leadAngle as number, Math.cos(s.pressureAngle as number)]
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
    // round the worm and along it, friction against the sliding
    const driving = (f: number) => ((c * cos - f * sin) * sin) / cos / (c * sin + f * cos)
    const byFriction = s.friction as number
    const eta = s.wormEfficiency as number
    const f = s.friction === null ? (c * (1 - eta)) / (eta * (cos / sin) + sin / cos) : byFriction
    return { ratio: teeth, forward: driving(f), back: 1 / driving(-f) }
  }
  const mesh = s.meshEfficiency as number
  if (s.type === "spur") return { ratio: teeth, forward: mesh, back: mesh }
  // shares of a shaft's power that roll, seen from the carrier: the rest is carried round
  const rolls: Record<string, number> = { sun: teeth / (1 + teeth), ring: 1 / (1 + teeth) }
  const [from, to] = (s.path as string).split("-to-") as [string, string]
  const gives = (share: number) => 1 - (1 - mesh ** 2) * share
  const takes = (share: number) => 1 / (1 + (1 / mesh ** 2 - 1) * share)
  const turns: Record<string, number> = { sun: 1, ring: 1 / teeth, carrier: 1 / (1 + teeth) }
  if (to === "carrier") {
    const ratio = (turns[from] as number) / (turns.carrier as number)
    return { ratio, forward: gives(rolls[from] as number), back: takes(rolls[from] as number) }
  }
  if (from === "carrier") {
    const ratio = (turns.carrier as number) / (turns[to] as number)
    return { ratio, forward: takes(rolls[to] as number), back: gives(rolls[to] as number) }
  }
  return { ratio: (turns[from] as number) / (turns[to] as number), forward: mesh ** 2, back: mesh ** 2 }
}

interface Si {
  readonly stages: readonly StageSi[]
  readonly torque: number
  readonly dragTorque: number
  readonly backEmfConstant: number | null
  readonly windingResistance: number | null
  readonly ratedVoltage: number
  readonly noLoadSpeed: number
  readonly loadTorque: number
  readonly loadSpeed: number
  readonly loadCurrent: number
  readonly noLoadCurrent: number
  readonly terminalVoltage: number
  readonly windingTemperature: number
  readonly datasheetTemperature: number
}
const motorTorque = (si: Si) =>
  [...si.stages].reverse().reduce((t, s) => {
    const { ratio, forward, back } = stageOf(s)
    return t < 0 ? (t * back) / ratio : t / ratio / forward
  }, si.torque) + si.dragTorque
/** The motor's constants, by themselves or through the two points of its sheet: U = R·I + k·ω at both, the torque by I above I₀. */
const motorOf = (si: Si) => {
  if (si.backEmfConstant !== null) return { windingResistance: si.windingResistance as number, perAmpere: si.backEmfConstant as number }
  const backEmf =
    (si.ratedVoltage * (si.loadCurrent - si.noLoadCurrent)) / (si.noLoadSpeed * si.loadCurrent - si.loadSpeed * si.noLoadCurrent)
  const windingResistance = (si.ratedVoltage - backEmf * si.loadSpeed) / si.loadCurrent
  return { windingResistance, perAmpere: si.loadTorque / (si.loadCurrent - si.noLoadCurrent) }
}
const warm = (si: Si) =>
  (motorOf(si).windingResistance * (1 + 0.00393 * (si.windingTemperature - 20))) / (1 + 0.00393 * (si.datasheetTemperature - 20))
const shortBy = (si: Si) => warm(si) * (si.noLoadCurrent + motorTorque(si) / motorOf(si).perAmpere) - si.terminalVoltage
const stallAtOutput = (si: Si) =>
  si.stages.reduce(
    (t, s) => t * stageOf(s).ratio * stageOf(s).forward,
    motorOf(si).perAmpere * (si.terminalVoltage / warm(si) - si.noLoadCurrent) - si.dragTorque,
  )

export const edges: Edges = {
  cautions: [
    { code: "drawn-in", severity: "warning", solver: gearmotor, shown: {}, notShown: null },
    { code: "strength-not-judged", severity: "note", solver: gearmotor, shown: {}, notShown: null },
    {
      code: "back-driven",
      severity: "warning",
      solver: gearmotor,
      shown: { torque: 1.003 * drivesBack },
      notShown: { torque: 0.997 * drivesBack },
    },
    {
      code: "back-driven",
      severity: "warning",
      solver: gearmotor,
      shown: { torque: -1.003 * drivesBack },
      notShown: { torque: -0.997 * drivesBack },
    },
    { code: "runs-away", severity: "warning", solver: gearmotor, shown: { torque: -0.0001 }, notShown: { torque: 0 } },
    {
      code: "returns-current",
      severity: "caution",
      solver: gearmotor,
      shown: { torque: -1.003 * drivesBack },
      notShown: { torque: -0.997 * drivesBack },
    },
    // the gears' own, as gearTrain tells them: a worm of 4° locks above 0.06571, with half of it left above 0.13142
    { code: "thin-holding-margin", severity: "warning", solver: gearmotor, shown: wormOf(0.1311), notShown: wormOf(0.1317) },
    { code: "thin-holding-margin", severity: "warning", solver: gearmotor, shown: wormOf(0.0659), notShown: wormOf(0.0655) },
    { code: "worm-start", severity: "caution", solver: gearmotor, shown: wormOf(0.1), notShown: spur(20) },
    { code: "undercut", severity: "note", solver: gearmotor, shown: spur(14), notShown: spur(15) },
    {
      code: "uneven-planets",
      severity: "note",
      solver: gearmotor,
      shown: ring(50),
      notShown: ring(48),
      apart: "the next ring that fits three planets is two teeth away",
    },
    // the motor's own, as dcMotor tells them
    {
      code: "overheating",
      severity: "warning",
      solver: gearmotor,
      shown: { windingTemperature: 126 },
      notShown: { windingTemperature: 125 },
    },
    { code: "extrapolated", severity: "note", solver: gearmotor, shown: bySheet({}), notShown: bySheet({ loadSpeed: 0.0005 }) },
    {
      code: "datasheet-rounding",
      severity: "note",
      solver: gearmotor,
      shown: bySheet({ loadTorque: 1.003 * 0.012 * 9.8 }),
      notShown: bySheet({ loadTorque: 0.997 * 0.012 * 9.8 }),
    },
    {
      code: "over-voltage",
      severity: "warning",
      solver: gearmotor,
      shown: { backEmfConstant: undefined, windingResistance: undefined, ...sheet(), terminalVoltage: 13.21 },
      notShown: { backEmfConstant: undefined, windingResistance: undefined, ...sheet(), terminalVoltage: 13.2 },
    },
    // a quarter of 10 A: 2.3 A beyond friction
    {
      code: "heavy-load",
      severity: "caution",
      solver: gearmotor,
      shown: { torque: 1.003 * (2.3 * 0.012 - 0.0005) * ratio * efficiency },
      notShown: { torque: 0.997 * (2.3 * 0.012 - 0.0005) * ratio * efficiency },
    },
  ],
  refusals: [
    { code: "insufficient-torque", solver: gearmotor, refused: { torque: 1.003 * stall }, answered: { torque: 0.997 * stall } },
    // friction of 0.2 A and a drag of 0.5 mN·m: 0.2417 A through 1.2 Ω
    {
      code: "insufficient-voltage",
      solver: gearmotor,
      refused: { torque: 0, terminalVoltage: 0.289 },
      answered: { torque: 0, terminalVoltage: 0.2905 },
    },
    {
      code: "jammed",
      solver: gearmotor,
      refused: { ...worm, torque: -1.755 },
      answered: { ...worm, torque: -1.74 },
    },
  ],
  faults: [
    { path: "windingResistance", solver: gearmotor, faulty: { windingResistance: undefined }, sound: {} },
    { path: "ratedVoltage", solver: gearmotor, faulty: { ratedVoltage: 12 }, sound: {} },
    { path: "stages.0.friction", solver: gearmotor, faulty: { stages: [{ ...worm.stages[0], friction: undefined }] }, sound: worm },
  ],
  numbers: {
    "gearmotor.insufficient-torque.shortBy": shortBy,
    "gearmotor.insufficient-torque.at.stallTorque": stallAtOutput,
    "gearmotor.insufficient-voltage.shortBy": shortBy,
    "gearmotor.jammed.shortBy": shortBy,
    "gearmotor.jammed.at.motorTorque": motorTorque,
  },
}

function bySheet(more: object) {
  return { backEmfConstant: undefined, windingResistance: undefined, ...sheet(), ...more }
}

/** The same motor by two points of its sheet: free at 12 V, and at rest. */
function sheet() {
  return {
    ratedVoltage: 12,
    noLoadSpeed: (12 - 0.2 * 1.2) / 0.012,
    loadTorque: 0.012 * 9.8,
    loadSpeed: 0,
    loadCurrent: 10,
  }
}
