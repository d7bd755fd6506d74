import { boostStage, buckStage, constantPowerPoint, converterLimit, startUp, usbSupply } from "../../src/converter/index.js"
import type { Edges } from "../helpers/edges.js"

type Limit = ReturnType<typeof converterLimit.read>
type Stage = ReturnType<typeof boostStage.read>
type Usb = ReturnType<typeof usbSupply.read>

/** What stands at a converter's input and output, by bisection of the power that the input takes. */
function operating(si: Limit): { input: number; output: number } {
  const idle = si.sourceVoltage - si.sourceResistance * si.quiescentCurrent
  const over = si.efficiency.findIndex((p) => p.outputCurrent >= si.loadCurrent)
  const [a, b] = [si.efficiency[Math.max(0, over - 1)], si.efficiency[over < 0 ? si.efficiency.length - 1 : over]] as [
    Limit["efficiency"][number],
    Limit["efficiency"][number],
  ]
  const inside = over > 0 ? (si.loadCurrent - a.outputCurrent) / (b.outputCurrent - a.outputCurrent) : 1
  const efficiency = over > 0 ? a.efficiency * (1 - inside) + b.efficiency * inside : b.efficiency
  const wanted = (si.outputVoltage * si.loadCurrent) / efficiency
  const power = (i: number) => (idle - si.sourceResistance * i) * i
  let [low, high] = [
    0,
    Math.min(
      1e9,
      si.sourceResistance > 0 ? Math.min(idle / 2, idle - si.minInputVoltage) / si.sourceResistance : 1e9,
      si.inputCurrentLimit === null ? 1e9 : si.inputCurrentLimit - si.quiescentCurrent,
    ),
  ]
  if (si.outputCurrentLimit !== null && si.loadCurrent > si.outputCurrentLimit) return { input: idle, output: 0 }
  if (power(high) < wanted) return { input: idle - si.sourceResistance * high, output: (efficiency * power(high)) / si.loadCurrent }
  for (let k = 0; k < 200; k++) {
    const mid = (low + high) / 2
    if (power(mid) < wanted) low = mid
    else high = mid
  }
  return { input: idle - si.sourceResistance * low, output: si.outputVoltage }
}

/** Numbers of the caution for a voltage that can hurt by touch: 30 V wet, 60 V dry. */
const touch = (solver: string, highest: (si: never) => number) => ({
  [`${solver}.touch-voltage.highest`]: highest,
  [`${solver}.touch-voltage.wet`]: () => 30,
  [`${solver}.touch-voltage.dry`]: () => 60,
})
/** Heat of a stage: power in less power out. */
const stageHeat = (si: Stage, out: { inputCurrent: number }) => si.inputVoltage * out.inputCurrent - si.outputVoltage * si.outputCurrent
const five = { outputVoltage: 5, loadCurrent: 0.5, inputCurrentLimit: null, efficiency: [{ outputCurrent: 1, efficiency: 0.9 }] }
/** Jerking start: one motor sees 2.6 ohm, so 4.615 A standing and 0.2 A running; above 1.5 A for tau·ln(4.415/1.3). */
const jerking = { currentLimit: 3, limitAction: "hiccup", offTime: 1e-3, loadTorque: 4e-3 }
const overLimit = ((8e-7 * 2.6) / 0.02 ** 2) * Math.log((12 / 2.6 - 0.2) / (1.5 - 0.2))
const pd = { ratedPower: 240, cableMarked: true, loadCurrent: 1 }
/** Loop of the example's cable: 0.0909 ohm/m both ways, four contacts of 30 mohm. */
const loop = (metres: number) => 2 * 0.0909 * metres + 0.12

/** Where each caution, refusal and fault of the module begins, and what its numbers are. */
export const edges: Edges = {
  cautions: [
    {
      code: "touch-voltage",
      severity: "warning",
      solver: constantPowerPoint,
      shown: { sourceVoltage: 30.1 },
      notShown: { sourceVoltage: 30 },
    },
    { code: "touch-voltage", severity: "warning", solver: converterLimit, shown: { outputVoltage: 30.1 }, notShown: { outputVoltage: 30 } },
    { code: "touch-voltage", severity: "warning", solver: boostStage, shown: { outputVoltage: 30.1 }, notShown: { outputVoltage: 30 } },
    { code: "touch-voltage", severity: "warning", solver: buckStage, shown: { inputVoltage: 30.1 }, notShown: { inputVoltage: 30 } },
    { code: "touch-voltage", severity: "warning", solver: startUp, shown: { sourceVoltage: 30.1 }, notShown: { sourceVoltage: 30 } },
    {
      code: "touch-voltage",
      severity: "warning",
      solver: usbSupply,
      shown: { ...pd, type: "pd-36V" },
      notShown: { ...pd, type: "pd-28V" },
    },
    // half of 12² V²/(4·0.2 ohm) = 180 W; 5 A make 5 W in 0.2 ohm, and then 55 W at the load
    { code: "near-collapse", severity: "caution", solver: constantPowerPoint, shown: { power: 90.4 }, notShown: { power: 90 } },
    { code: "burns", severity: "warning", solver: constantPowerPoint, shown: { power: 55.2 }, notShown: { power: 54.8 } },
    // P·L/(R·V²) = 60·1e-6/(0.2·10.899²) = 2.526 uF
    {
      code: "oscillation",
      severity: "caution",
      solver: constantPowerPoint,
      shown: { capacitance: 2.52e-6 },
      notShown: { capacitance: 2.54e-6 },
    },
    // 4.812 V · 2.4 A = 11.549 W come in: a watt is lost at 91.34 %
    {
      code: "burns",
      severity: "warning",
      solver: converterLimit,
      shown: { efficiency: [{ outputCurrent: 1.5, efficiency: 0.912 }] },
      notShown: { efficiency: [{ outputCurrent: 1.5, efficiency: 0.915 }] },
    },
    { code: "type-assumed", severity: "caution", solver: converterLimit, shown: {}, notShown: { topology: "boost" } },
    // 5.1² V²/(4·R) is the 21.18 W asked for at 0.307 ohm
    {
      code: "hiccup",
      severity: "caution",
      solver: converterLimit,
      shown: { inputCurrentLimit: null, sourceResistance: 0.308 },
      notShown: { inputCurrentLimit: null, sourceResistance: 0.306 },
    },
    {
      code: "output-collapsed",
      severity: "caution",
      solver: converterLimit,
      shown: { outputCurrentLimit: 1.49 },
      notShown: { outputCurrentLimit: 1.5 },
    },
    // 0.85·11.549 W over 4.812 V are 2.04 A
    {
      code: "straight-through",
      severity: "warning",
      solver: converterLimit,
      shown: { loadCurrent: 2.05 },
      notShown: { loadCurrent: 2.035 },
    },
    {
      code: "straight-through",
      severity: "warning",
      solver: converterLimit,
      shown: { loadCurrent: 2.05, topology: "boost" },
      notShown: { loadCurrent: 2.05, topology: "buck-boost" },
    },
    { code: "outside-range", severity: "note", solver: converterLimit, shown: { loadCurrent: 1.505 }, notShown: { loadCurrent: 1.5 } },
    { code: "outside-range", severity: "note", solver: converterLimit, shown: { loadCurrent: 0.199 }, notShown: { loadCurrent: 0.2 } },
    // 12 V·I·(1/0.93 − 1) is a watt at 1.107 A; 5 V·I·(1/0.9 − 1) at 1.8 A
    { code: "burns", severity: "warning", solver: boostStage, shown: { outputCurrent: 1.111 }, notShown: { outputCurrent: 1.103 } },
    { code: "burns", severity: "warning", solver: buckStage, shown: { outputCurrent: 1.805 }, notShown: { outputCurrent: 1.795 } },
    // ripple 5 V·0.6125/(3.3 uH·500 kHz) = 1.856 A: (6 − 0.928)·0.3875 = 1.965 A; and 0.928·0.3875 = 0.3597 A at the edge of resting
    { code: "switch-limit", severity: "caution", solver: boostStage, shown: { outputCurrent: 1.975 }, notShown: { outputCurrent: 1.96 } },
    { code: "resting-current", severity: "note", solver: boostStage, shown: { outputCurrent: 0.358 }, notShown: { outputCurrent: 0.361 } },
    // 1 − 5·0.93/V is 85 % at 31 V; 5/(0.9·V) at 6.536 V
    { code: "long-duty", severity: "caution", solver: boostStage, shown: { outputVoltage: 31.1 }, notShown: { outputVoltage: 30.9 } },
    { code: "long-duty", severity: "caution", solver: buckStage, shown: { inputVoltage: 6.52 }, notShown: { inputVoltage: 6.55 } },
    { code: "limit-spread", severity: "note", solver: boostStage, shown: {}, notShown: { switchCurrentLimit: null } },
    { code: "limit-spread", severity: "note", solver: buckStage, shown: {}, notShown: { switchCurrentLimit: null } },
    // ripple 7.044 V·0.4409/4 ohm = 0.7765 A: 4 − 0.388 A, and 0.388 A at the edge of resting
    { code: "switch-limit", severity: "caution", solver: buckStage, shown: { outputCurrent: 3.62 }, notShown: { outputCurrent: 3.6 } },
    { code: "resting-current", severity: "note", solver: buckStage, shown: { outputCurrent: 0.387 }, notShown: { outputCurrent: 0.39 } },
    // 12 V/2.6 ohm·0.02 V s are 92.3 mN m; 10 mN m are 0.5 A for each of two motors
    {
      code: "never-starts",
      severity: "warning",
      solver: startUp,
      shown: { currentLimit: null, loadTorque: 0.0925 },
      notShown: { currentLimit: null, loadTorque: 0.092 },
    },
    { code: "never-starts", severity: "warning", solver: startUp, shown: { currentLimit: 0.998 }, notShown: { currentLimit: 1.002 } },
    // 2 A through 2 ohm
    { code: "brown-out", severity: "caution", solver: startUp, shown: { resetVoltage: 4.01 }, notShown: { resetVoltage: 4 } },
    {
      code: "jerks",
      severity: "caution",
      solver: startUp,
      shown: { ...jerking, onTime: 0.998 * overLimit },
      notShown: { ...jerking, onTime: 1.002 * overLimit },
    },
    { code: "times-vary", severity: "note", solver: startUp, shown: { limitAction: "latch" }, notShown: { limitAction: "hold" } },
    { code: "over-current", severity: "caution", solver: usbSupply, shown: { loadCurrent: 3.01 }, notShown: { loadCurrent: 3 } },
    { code: "enumerate", severity: "caution", solver: usbSupply, shown: { type: "usb2" }, notShown: { type: "type-c-default" } },
    { code: "enumerate", severity: "caution", solver: usbSupply, shown: { type: "usb3" }, notShown: { type: "type-c-default" } },
    { code: "twelve-volts", severity: "note", solver: usbSupply, shown: { type: "pd-5V" }, notShown: { type: "type-c-3A" } },
    {
      code: "negotiated-voltage",
      severity: "caution",
      solver: usbSupply,
      shown: { ...pd, type: "pd-9V" },
      notShown: { ...pd, type: "pd-5V" },
    },
    { code: "overheating", severity: "warning", solver: usbSupply, shown: { loadCurrent: 3.01 }, notShown: { loadCurrent: 3 } },
    {
      code: "overheating",
      severity: "warning",
      solver: usbSupply,
      shown: { loadCurrent: 3.01, cableMarked: false },
      notShown: { loadCurrent: 3.01, cableMarked: true },
    },
    // a marked cable is made for 5 A and no more
    {
      code: "overheating",
      severity: "warning",
      solver: usbSupply,
      shown: { loadCurrent: 5.01, cableMarked: true },
      notShown: { loadCurrent: 5, cableMarked: true },
    },
    { code: "auto-off", severity: "caution", solver: usbSupply, shown: { loadCurrent: 0.0995 }, notShown: { loadCurrent: 0.1 } },
    // 0.25 V in 0.3018 ohm are 0.828 A
    { code: "low-voltage", severity: "note", solver: usbSupply, shown: { loadCurrent: 0.832 }, notShown: { loadCurrent: 0.825 } },
  ],
  refusals: [
    { code: "insufficient-power", solver: constantPowerPoint, refused: { power: 180.5 }, answered: { power: 180 } },
    { code: "input-too-high", solver: converterLimit, refused: { maxInputVoltage: 5.09 }, answered: { maxInputVoltage: 5.1 } },
    { code: "insufficient-voltage", solver: converterLimit, refused: { minInputVoltage: 5.11 }, answered: { minInputVoltage: 5.07 } },
    {
      code: "insufficient-current",
      solver: converterLimit,
      refused: { quiescentCurrent: 2.4 },
      answered: { quiescentCurrent: 2.39 },
      noNearest: "what the source and the limit would have to be depends on the load too",
    },
    // 5 V are left at the input with 5.0667 V at the source
    {
      code: "cannot-boost",
      solver: converterLimit,
      refused: { ...five, topology: "buck", sourceVoltage: 5.05 },
      answered: { ...five, topology: "buck", sourceVoltage: 5.08 },
    },
    {
      code: "cannot-buck",
      solver: converterLimit,
      refused: { ...five, topology: "boost", sourceVoltage: 5.08 },
      answered: { ...five, topology: "boost", sourceVoltage: 5.05 },
    },
    { code: "input-too-high", solver: boostStage, refused: { inputVoltage: 12 }, answered: { inputVoltage: 11.99 } },
    { code: "input-too-high", solver: boostStage, refused: { switchVoltage: 5 }, answered: { switchVoltage: 4.98 } },
    // 5 V/0.9 = 5.556 V
    { code: "insufficient-voltage", solver: buckStage, refused: { inputVoltage: 5.55 }, answered: { inputVoltage: 5.56 } },
    {
      code: "not-offered",
      solver: usbSupply,
      refused: { type: "pd-15V", ratedPower: 27 },
      answered: { type: "pd-15V", ratedPower: 27.1 },
    },
    {
      code: "needs-marked-cable",
      solver: usbSupply,
      refused: { ...pd, type: "pd-28V", cableMarked: false },
      answered: { ...pd, type: "pd-28V", cableMarked: true },
      noNearest: "whether a cable is marked is no number",
    },
    // 4.75 V/2.4 A = 1.979 ohm are 10.23 m
    { code: "insufficient-voltage", solver: usbSupply, refused: { cableLength: 10.25 }, answered: { cableLength: 10.2 } },
  ],
  faults: [
    {
      solver: converterLimit,
      path: "efficiency.1.outputCurrent",
      faulty: { efficiency: [0.2, 0.2].map((load) => ({ outputCurrent: load, efficiency: 0.9 })) },
      sound: { efficiency: [0.2, 0.2015].map((load) => ({ outputCurrent: load, efficiency: 0.9 })) },
    },
    {
      solver: usbSupply,
      path: "ratedPower",
      faulty: { type: "pd-5V", ratedPower: null },
      sound: { type: "pd-5V", ratedPower: 15 },
    },
  ],
  numbers: {
    ...touch("constantPowerPoint", (si: { sourceVoltage: number }) => si.sourceVoltage),
    ...touch("converterLimit", (si: Limit) => Math.max(si.sourceVoltage, si.outputVoltage)),
    ...touch("boostStage", (si: Stage) => Math.max(si.inputVoltage, si.outputVoltage)),
    ...touch("buckStage", (si: Stage) => Math.max(si.inputVoltage, si.outputVoltage)),
    ...touch("startUp", (si: { sourceVoltage: number }) => si.sourceVoltage),
    ...touch("usbSupply", (si: Usb) => Number(/pd-(\d+)V/.exec(si.type)?.[1])),
    "boostStage.burns.heat": stageHeat,
    "buckStage.burns.heat": stageHeat,
    "constantPowerPoint.insufficient-power.shortBy": (si) => si.power - si.sourceVoltage ** 2 / si.sourceResistance / 4,
    "converterLimit.input-too-high.shortBy": (si: Limit) => si.sourceVoltage - (si.maxInputVoltage as number),
    "converterLimit.insufficient-voltage.shortBy": (si: Limit) => {
      const short = si.minInputVoltage + si.sourceResistance * si.quiescentCurrent - si.sourceVoltage
      return short > 0
        ? short
        : 0.001 * si.minInputVoltage + 1.001 * si.sourceResistance * si.quiescentCurrent - si.sourceVoltage + si.minInputVoltage
    },
    "converterLimit.insufficient-voltage.at.idle": (si: Limit) => si.sourceVoltage - si.quiescentCurrent * si.sourceResistance,
    "converterLimit.insufficient-voltage.at.needed": (si: Limit) =>
      1.001 * (si.minInputVoltage + si.quiescentCurrent * si.sourceResistance),
    "converterLimit.insufficient-current.at.room": room,
    "converterLimit.insufficient-current.shortBy": (si: Limit) => Math.max(1e-6, si.quiescentCurrent - room(si)),
    "converterLimit.cannot-boost.at.input": (si: Limit) => operating(si).input,
    "converterLimit.cannot-boost.at.output": (si: Limit) => operating(si).output,
    "converterLimit.cannot-boost.shortBy": (si: Limit) => operating(si).output - operating(si).input,
    "converterLimit.cannot-buck.at.input": (si: Limit) => operating(si).input,
    "converterLimit.cannot-buck.shortBy": (si: Limit) => operating(si).input - si.outputVoltage,
    "converterLimit.efficiency.1.outputCurrent.outputCurrent": (si: Limit) => si.efficiency[1]?.outputCurrent as number,
    "converterLimit.efficiency.1.outputCurrent.before": (si: Limit) => si.efficiency[0]?.outputCurrent as number,
    "boostStage.input-too-high.shortBy": (si: Stage) =>
      si.switchVoltage >= si.inputVoltage ? si.switchVoltage - 0.999 * si.inputVoltage : 1.001 * si.inputVoltage - si.outputVoltage,
    "buckStage.insufficient-voltage.at.needed": needed,
    "buckStage.insufficient-voltage.shortBy": (si: Stage) => needed(si) - si.inputVoltage,
    // a unit load is 100 mA up to USB 2.0 and 150 mA from USB 3.0
    "usbSupply.enumerate.unit": (si: Usb) => (si.type === "usb3" ? 0.15 : 0.1),
    "usbSupply.overheating.made": (si: Usb) => (si.cableMarked ? 5 : 3),
    "usbSupply.overheating.most": () => 5,
    "usbSupply.not-offered.at.sourceVoltage": (si: Usb) => Number(/pd-(\d+)V/.exec(si.type)?.[1]),
    "usbSupply.not-offered.at.above": above,
    "usbSupply.not-offered.shortBy": (si: Usb) => 1.001 * above(si) - (si.ratedPower as number),
    "usbSupply.needs-marked-cable.at.sourceVoltage": (si: Usb) => Number(/pd-(\d+)V/.exec(si.type)?.[1]),
    "usbSupply.needs-marked-cable.shortBy": (si: Usb) => Number(/pd-(\d+)V/.exec(si.type)?.[1]) - 20,
    "usbSupply.insufficient-voltage.at.cableDrop": (si: Usb) => si.loadCurrent * loopOf(si),
    "usbSupply.insufficient-voltage.at.minSourceVoltage": leastPort,
    "usbSupply.insufficient-voltage.shortBy": (si: Usb) => si.loadCurrent - (0.999 * leastPort(si)) / loopOf(si),
  },
}

function room(si: Limit): number {
  const bySource = (si.sourceVoltage - si.minInputVoltage) / si.sourceResistance
  return si.inputCurrentLimit !== null && si.inputCurrentLimit < bySource ? si.inputCurrentLimit : bySource
}
function needed(si: Stage): number {
  const output = si.diodeVoltage === null ? si.outputVoltage / si.efficiency : si.outputVoltage
  return 1.001 * (output + si.switchVoltage)
}
function above(si: Usb): number {
  return { "pd-9V": 15, "pd-15V": 27, "pd-20V": 45, "pd-28V": 100, "pd-36V": 140, "pd-48V": 180 }[si.type as string] as number
}
function loopOf(si: Usb): number {
  if (si.cableLength === null) return 0.25
  return si.conductorResistance === 0.0909 && si.contacts === 4 && si.contactResistance === 0.03
    ? loop(si.cableLength)
    : (si.conductorResistance * si.cableLength + (si.contacts * si.contactResistance) / 2) * 2
}
function leastPort(si: Usb): number {
  const volts = Number(/pd-(\d+)V/.exec(si.type)?.[1] ?? 5)
  return { "usb2-unconfigured": 4.4, usb3: 4.45 }[si.type as string] ?? 0.95 * volts
}
