import { type DcMotor, dcMotor, hobbyServo, type PowerScrew, powerScrew } from "../../src/drive/index.js"
import { handlingLoad } from "../../src/frame/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { type Check, referenceRows, referenceTests } from "../helpers/references.js"
import { beltChecks, beltWithout } from "./drive-belts.js"
import { cableChecks } from "./drive-cables.js"
import { chainChecks } from "./drive-chains.js"
import { driverChecks } from "./drive-drivers.js"
import { gearmotorChecks } from "./drive-gearmotor.js"
import { gearChecks, gearWithout } from "./drive-gears.js"
import { motionChecks } from "./drive-motion.js"
import { springChecks } from "./drive-springs.js"
import { stopChecks, stopWithout } from "./drive-stops.js"
import { winchChecks } from "./drive-winches.js"

type Numbers = Readonly<Record<string, number>>
const numbers = (inputs: object) => inputs as Numbers
const at = (inputs: object, key: string) => numbers(inputs)[key] as number

const RPM = Math.PI / 30
const OZF_IN = 0.0070615518

function motor(input: object): DcMotor {
  const out = dcMotor.si(dcMotor.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
function screw(input: object): PowerScrew {
  const out = powerScrew.si(powerScrew.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}

/** Motor given by back-emf constant and resistance; the sheet leaves friction out of its speeds. */
const byConstants: Check = (inputs) => {
  const out = motor({
    backEmfConstant: `${at(inputs, "ke_V_per_krpm")} V/krpm`,
    windingResistance: at(inputs, "resistance_ohm"),
    terminalVoltage: at(inputs, "supply_V"),
    torque: 0,
  })
  return {
    kt_ozin_per_A: out.torqueConstant / OZF_IN,
    no_load_speed_rpm: out.noLoadSpeed / RPM,
    stall_current_A: out.stallCurrent,
    stall_torque_ozin: out.stallTorque / OZF_IN,
  }
}

/** A load point of those sheets: speed on the line without friction, current with it, as they print them. */
const atLoad: Check = (inputs) => {
  const input = {
    backEmfConstant: `${at(inputs, "ke_V_per_krpm")} V/krpm`,
    windingResistance: at(inputs, "resistance_ohm"),
    terminalVoltage: at(inputs, "supply_V"),
    torque: at(inputs, "load_torque_ozin") * OZF_IN,
  }
  const frictionless = motor(input)
  const { current, electricalPower } = motor({ ...input, noLoadCurrent: at(inputs, "no_load_current_A") })
  return {
    speed_rpm: frictionless.speed / RPM,
    current_A: current,
    output_W: frictionless.mechanicalPower,
    efficiency: frictionless.mechanicalPower / electricalPower,
  }
}

const torqueAndEmf: Check = (inputs) => {
  const { torqueConstant } = motor({
    backEmfConstant: `${at(inputs, "ke_V_per_krpm")} V/krpm`,
    windingResistance: 1,
    terminalVoltage: 12,
    torque: 0,
  })
  return { kt_Nm_per_A: torqueConstant, kt_ozin_per_A: torqueConstant / OZF_IN }
}

/** Geared motor by its no-load and stall points; the sheet's currents (0.2 A and 5.5 A) do not enter speed or power. */
const geared: Check = (inputs) => {
  const out = motor({
    ratedVoltage: 12,
    noLoadSpeed: `${at(inputs, "no_load_speed_rpm")} rpm`,
    noLoadCurrent: 0.2,
    loadTorque: `${at(inputs, "stall_torque_kgf_mm")} kgf mm`,
    loadSpeed: 0,
    loadCurrent: 5.5,
    terminalVoltage: 12,
    torque: `${at(inputs, "load_torque_kgf_mm")} kgf mm`,
  })
  // the rows reckon the output with the speed as printed, to two figures
  const printed = Number((out.speed / RPM).toPrecision(2))
  return { speed_rpm: out.speed / RPM, output_W: (out.mechanicalPower / out.speed) * printed * RPM }
}

/** A printed working point taken as the second point of a sheet: the motor run there gives back what is printed beside it. */
const atBest: Check = (inputs) => {
  const [supply, speed, torque, current] = ["supply_V", "speed_rpm", "torque_kgf_mm", "current_A"].map((key) => at(inputs, key)) as [
    number,
    number,
    number,
    number,
  ]
  const out = motor({
    ratedVoltage: supply,
    noLoadSpeed: `${1.2 * speed} rpm`,
    noLoadCurrent: 0.3 * current,
    loadTorque: `${torque} kgf mm`,
    loadSpeed: `${speed} rpm`,
    loadCurrent: current,
    terminalVoltage: supply,
    torque: `${torque} kgf mm`,
  })
  return { output_W: out.mechanicalPower }
}

const stallInUnits: Check = (inputs) => {
  const out = motor({
    ratedVoltage: 12,
    noLoadSpeed: `${at(inputs, "no_load_speed_rpm")} rpm`,
    noLoadCurrent: at(inputs, "no_load_current_A"),
    loadTorque: `${at(inputs, "stall_torque_kgf_cm")} kgf cm`,
    loadSpeed: 0,
    loadCurrent: at(inputs, "stall_current_A"),
    terminalVoltage: 12,
    torque: 0,
  })
  return { stall_torque_ozf_in: out.stallTorque / OZF_IN }
}

/** Slope of the speed between two torques, and stall torque, by printed constants. */
const slope: Check = (inputs) => {
  const at0 = (torque: number) =>
    motor({
      backEmfConstant: at(inputs, "torque_constant_mN_m_per_A") / 1000,
      windingResistance: at(inputs, "resistance_ohm"),
      noLoadCurrent: at(inputs, "no_load_current_A"),
      terminalVoltage: at(inputs, "supply_V"),
      torque,
    })
  const { stallTorque, speed } = at0(0)
  return {
    slope_rpm_per_mN_m: (speed - at0(stallTorque / 2).speed) / RPM / (500 * stallTorque),
    stall_torque_mN_m: stallTorque * 1000,
  }
}

/** A servo of one column at 5 V, from the time and torque that a row prints. */
const servo = (time: number, torque: number | string, share = 0, angle: string | null = null) =>
  hobbyServo(
    hobbyServo.read({
      firstVoltage: 5,
      firstStallTorque: torque as number,
      firstTime: time,
      terminalVoltage: 5,
      torque: 0,
      angle,
      ...(share ? { torque: share * (torque as number) } : {}),
    } as never) as never,
  )
const DEG = Math.PI / 180
const servos: Record<string, Check> = {
  "servo-standard-speed": (inputs) => {
    const { noLoadSpeed } = servo(at(inputs, "time_per_60deg_s"), 1)
    return { speed_deg_per_s: noLoadSpeed / DEG, speed_rpm: noLoadSpeed / RPM }
  },
  "servo-standard-units": (inputs) => ({
    torque_ozf_in: servo(at(inputs, "time_per_60deg_s"), `${at(inputs, "torque_kgf_cm")} kgf cm`).stallTorque / OZF_IN,
  }),
  "servo-8g-units": (inputs) => {
    const { stallTorque } = servo(0.1, `${at(inputs, "torque_kgf_cm")} kgf cm`)
    return { torque_ozf_in: stallTorque / OZF_IN, load_g: (stallTorque / 9.80665 / at(inputs, "horn_cm")) * 1e5 }
  },
  "servo-linear-line-numeric": (inputs) => {
    const out = servo(at(inputs, "time_per_60deg_s"), 1, at(inputs, "load_over_stall"), `${at(inputs, "angle_deg")} deg`)
    return { speed_deg_per_s: out.speed / DEG, time_s: out.moveDuration }
  },
}

const [INCH, PSI, LBF] = [0.0254, 4.4482216152605 / 0.0254 ** 2, 4.4482216152605]
/** A weight that falls on a bar: what catches it yields at rest by W·L/(A·E). */
const fallOnBar: Check = (inputs) => {
  const area = inputs.area_in2 ?? (Math.PI / 4) * at(inputs, "diameter_in") ** 2
  const stress = at(inputs, "weight_lbf") / area
  const out = handlingLoad({
    weight: at(inputs, "weight_lbf") * LBF,
    dropHeight: at(inputs, "height_in") * INCH,
    staticDeflection: ((stress * at(inputs, "length_in")) / at(inputs, "modulus_psi")) * INCH,
  })
  return { stress_psi: out.maxForce / (area * INCH ** 2) / PSI }
}

const newRows = referenceRows("drive").map((row) => row.id)
const gearmotors: [string, Check][] = newRows
  .filter((id) => id.startsWith("gearmotor-"))
  .map((id) => [id, id === "gearmotor-25mm" ? stallInUnits : atBest])
const slopes: [string, Check][] = newRows.filter((id) => id.startsWith("motor-slope-")).map((id) => [id, slope])

const constants = ["a-200", "a-400", "d-200", "z-400"].map((name) => [`motor-servo-${name}-constants`, byConstants])
const loads = ["a-200-load1", "a-200-load2", "a-400-load2", "d-200-load2", "z-400-load1", "z-400-load2"].map((name) => [
  `motor-servo-${name}`,
  atLoad,
])
const emfs = ["1", "2", "3"].map((name) => [`motor-brushed-${name}-kt-ke`, torqueAndEmf])
const gears = ["102p08", "131p25", "150", "18p75", "50", "70"].map((name) => [`motor-37mm-12v-${name}`, geared])

const millimetre = (inputs: object, key: string) => at(inputs, key) / 1000

const screws: Record<string, Check> = {
  "screw-efficiency-to-torque": (inputs) => {
    const lead = at(inputs, "lead_m")
    const out = screw({ force: at(inputs, "force_N"), majorDiameter: 4 * lead, pitch: lead, screwEfficiency: at(inputs, "efficiency") })
    return { torque_Nm: out.raiseTorque }
  },
  "screw-khurmi-17-2": (inputs) => {
    const out = screw({
      force: at(inputs, "force_N"),
      majorDiameter: millimetre(inputs, "major_diameter_mm"),
      pitch: millimetre(inputs, "pitch_mm"),
      threadFriction: at(inputs, "mu"),
      speed: millimetre(inputs, "speed_mm_per_min") / 60,
    })
    return {
      tangential_force_N: (2 * out.raiseTorque) / out.meanDiameter,
      torque_Nm: out.raiseTorque,
      power_kW: (out.power as number) / 1000,
    }
  },
  "screw-khurmi-17-4": (inputs) => {
    const pitch = millimetre(inputs, "pitch_mm")
    const out = screw({
      force: at(inputs, "load_N"),
      majorDiameter: millimetre(inputs, "mean_diameter_mm") + pitch / 2,
      pitch,
      starts: at(inputs, "starts"),
      threadFriction: at(inputs, "mu_thread"),
      collarFriction: at(inputs, "mu_collar"),
      collarDiameter: (millimetre(inputs, "collar_outer_mm") + millimetre(inputs, "collar_inner_mm")) / 2,
    })
    const lever = millimetre(inputs, "lever_mm")
    return { lift_force_N: out.raiseTorque / lever, lower_force_N: out.lowerTorque / lever }
  },
  "screw-self-locking-margin": (inputs) => {
    const lead = millimetre(inputs, "lead_mm")
    const out = screw({
      force: 1,
      majorDiameter: millimetre(inputs, "mean_diameter_mm") + lead / 4,
      pitch: lead / 2,
      starts: 2,
      threadFriction: at(inputs, "f_thread"),
    })
    // from the solver's own lowering torque: F·dm/2·(π·f·dm − l)/(π·dm + f·l), solved for π·f·dm
    const dm = out.meanDiameter
    const shortfall = (out.threadLowerTorque * 2 * (Math.PI * dm + at(inputs, "f_thread") * lead)) / dm
    return { pi_f_dm_mm: (out.lead + shortfall) * 1000, self_locking_thread: out.threadSelfLocking }
  },
  "screw-shigley-8-1": (inputs) => {
    const out = screw({
      force: at(inputs, "force_N"),
      majorDiameter: millimetre(inputs, "major_diameter_mm"),
      pitch: millimetre(inputs, "pitch_mm"),
      starts: at(inputs, "starts"),
      threadFriction: at(inputs, "f_thread"),
      collarFriction: at(inputs, "f_collar"),
      collarDiameter: millimetre(inputs, "collar_diameter_mm"),
    })
    return {
      thread_raise_Nm: out.threadRaiseTorque,
      collar_Nm: out.collarTorque,
      raise_Nm: out.raiseTorque,
      thread_lower_Nm: out.threadLowerTorque,
      lower_Nm: out.lowerTorque,
      efficiency: out.efficiency,
      torsion_MPa: out.torsionStress / 1e6,
      axial_MPa: out.axialStress / 1e6,
      thread_bearing_MPa: out.bearingStress / 1e6,
      thread_bending_MPa: out.bendingStress / 1e6,
    }
  },
}

referenceTests(
  "drive",
  {
    ...Object.fromEntries([...constants, ...loads, ...emfs, ...gears, ...gearmotors, ...slopes]),
    ...screws,
    ...cableChecks,
    ...driverChecks,
    ...gearChecks,
    ...gearmotorChecks,
    ...motionChecks,
    ...springChecks,
    ...stopChecks,
    ...winchChecks,
    ...beltChecks,
    ...chainChecks,
    ...servos,
    "impact-wentzell-7-1": fallOnBar,
    "impact-wentzell-7-4": fallOnBar,
  },
  {
    "gearmotor-25mm": { counts_per_output_rev: "no solver counts encoder lines" },
    ...gearWithout,
    ...stopWithout,
    ...beltWithout,
    "servo-standard-speed": { torque_N_m: "the row names no torque it is converted from" },
  },
)
