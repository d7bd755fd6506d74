// Published values of belts: how each row is put to beltDrive.
import { type BeltDrive, type BeltDriveInput, beltDrive } from "../../src/drive/index.js"
import { goldenMinimum, theRoot } from "../../src/numeric/index.js"
import type { Check } from "../helpers/references.js"

const [RPM, DEG, FOOT, INCH] = [Math.PI / 30, Math.PI / 180, 0.3048, 0.0254]
const LBF = 4.4482216152605
const HP = 550 * LBF * FOOT

type Belt = Exclude<BeltDriveInput["belt"], { type: "toothed" }>
/** A drive at rest and without a load, unless said. */
const drive = (belt: BeltDriveInput["belt"], centreDistance: number, more: Partial<BeltDriveInput> = {}): BeltDrive =>
  beltDrive({ belt, centreDistance, pretension: 1, torque: 0, efficiency: 1, ...more })
const flat = (drivingDiameter: number, drivenDiameter: number, more: object = {}) =>
  ({ type: "flat", drivingDiameter, drivenDiameter, ...more }) as const

/** Pulleys and distance that give the smaller, driving pulley just this wrap. */
function wrapped(wrap: number, more: object, drivingDiameter = 0.2): readonly [Belt, number] {
  const lean = Math.sin((Math.PI - wrap) / 2)
  const distance = (2 * drivingDiameter) / (1 - lean)
  return [{ type: "flat", drivingDiameter, drivenDiameter: drivingDiameter + 2 * distance * lean, ...more } as Belt, distance]
}

/** The drive just before it slips, the tight strand at this tension. */
function atTight(belt: Belt, distance: number, tight: number, inputSpeed: number, linearDensity = 0): BeltDrive {
  const turning = { inputSpeed, linearDensity }
  const { centrifugalTension } = drive(belt, distance, turning)
  // the grip of the strands, by a pretension of one more than the belt's own speed takes
  const grip = drive(belt, distance, { ...turning, pretension: centrifugalTension + 1 }).maxPull / 2
  const pretension = centrifugalTension + (tight - centrifugalTension) / (1 + grip)
  const { maxTorque } = drive(belt, distance, { ...turning, pretension })
  return drive(belt, distance, { ...turning, pretension, torque: maxTorque * (1 - 1e-12) })
}
/** Speed of the belt at which a tight strand of this tension gives the most power. */
const bestSpeed = (belt: Belt, distance: number, tight: number, density: number) =>
  goldenMinimum(
    (v) => -(atTight(belt, distance, tight, (2 * v) / (belt.drivingDiameter as number), density).outputPower as number),
    1,
    Math.sqrt(tight / density) * 0.999,
    1e-12,
  )

export const beltChecks: Record<string, Check> = {
  "belt-bevan-7-1": (row) => {
    const out = drive(...wrapped(row.wrap_deg * DEG, { friction: row.friction }), { pretension: row.initial_tension_lbf * LBF })
    return { power_hp: (out.maxPull * row.belt_speed_ft_per_min * FOOT) / 60 / HP }
  },
  "belt-bevan-7-2": (row) => {
    const pullAt = (v: number) =>
      drive(...wrapped(row.wrap_deg * DEG, { friction: row.friction }), {
        pretension: row.initial_tension_lbf * LBF,
        linearDensity: (row.weight_lbf_per_ft * LBF) / 9.80665 / FOOT,
        inputSpeed: v / 0.1,
      }).maxPull
    const v = (row.belt_speed_ft_per_min * FOOT) / 60
    const best = goldenMinimum((u) => -pullAt(u) * u, 5, 35, 1e-12)
    // the source's greatest power keeps the pull of the first speed
    return { power_hp: (pullAt(v) * v) / HP, best_speed_ft_per_s: best / FOOT, greatest_power_hp: (pullAt(v) * best) / HP }
  },
  "belt-jindal-20-3": (row) => {
    const out = drive(flat(row.small_diameter_m, row.large_diameter_m), row.centre_distance_m, { inputSpeed: row.small_speed_rpm * RPM })
    return { belt_speed_m_per_s: out.beltSpeed, length_m: out.length }
  },
  "belt-khurmi-11-1": (row) => {
    const speed = (creep: number) => {
      const stage = (d1: number, d2: number, inputSpeed: number) =>
        drive(flat(d1 / 1000, d2 / 1000), 5, { inputSpeed, creep }).outputSpeed as number
      return stage(row.d3_mm, row.d4_mm, stage(row.d1_mm, row.d2_mm, row.input_speed_rpm * RPM)) / RPM
    }
    return { speed_no_slip_rpm: speed(0), speed_slip_rpm: speed(row.slip_percent / 100) }
  },
  "belt-khurmi-11-10": (row) => {
    const area = row.width_m * row.thickness_m
    const [tight, density] = [row.stress_N_per_m2 * area, row.density_kg_per_m3 * area]
    const [belt, distance] = wrapped(row.wrap_deg * DEG, { friction: row.friction })
    const best = bestSpeed(belt, distance, tight, density)
    return {
      best_speed_m_per_s: best,
      power_kW: (atTight(belt, distance, tight, best / 0.1, density).outputPower as number) / 1000,
    }
  },
  "belt-khurmi-11-12": (row) => {
    const out = drive(...wrapped(row.wrap_deg * DEG, { friction: row.friction }, row.small_pulley_diameter_m), {
      pretension: row.initial_tension_N,
    })
    return { power_kW: (out.maxPull * row.small_pulley_speed_rpm * RPM * row.small_pulley_diameter_m) / 2000 }
  },
  "belt-khurmi-11-14": (row) => {
    // the driver that turns the driven shaft at its speed
    const driver = theRoot(
      (d) => drive(flat(d, row.driven_diameter_m), row.centre_distance_m).ratio - row.driver_speed_rpm / row.driven_speed_rpm,
      0.05,
      0.4,
      0,
      "driver",
    ).x
    const belt = flat(driver, row.driven_diameter_m, { friction: row.friction })
    const tight = row.stress_N_per_m2 * row.thickness_m * row.width_m
    const out = atTight(belt, row.centre_distance_m, tight, row.driver_speed_rpm * RPM)
    return {
      driver_diameter_m: driver,
      power_kW: (out.outputPower as number) / 1000,
      initial_tension_N: (out.tightTension + out.slackTension) / 2,
    }
  },
  "belt-khurmi-11-15": (row) => {
    const belt = flat(row.small_diameter_m, row.large_diameter_m, { friction: row.friction })
    const torque = row.power_W / ((row.small_speed_rpm * RPM * row.small_diameter_m) / row.large_diameter_m)
    const { requiredPretension } = drive(belt, row.centre_distance_m, { pretension: 1e5, torque })
    const out = drive(belt, row.centre_distance_m, { pretension: requiredPretension * (1 + 1e-12), torque })
    return { width_mm: out.tightTension / row.safe_tension_N_per_mm, initial_tension_N: requiredPretension, length_m: out.length }
  },
  "belt-khurmi-11-16": (row) => {
    const at = (friction: number) => flat(row.small_diameter_m, row.large_diameter_m, { friction })
    const speed = row.belt_speed_m_per_s / (row.small_diameter_m / 2)
    const out = atTight(at(row.friction), row.centre_distance_m, row.tight_tension_N, speed)
    const pretension = (out.tightTension + out.slackTension) / 2
    const pull = (friction: number, tension: number) => drive(at(friction), row.centre_distance_m, { pretension: tension }).maxPull
    const before = pull(row.friction, pretension)
    return {
      power_kW: (out.outputPower as number) / 1000,
      gain_tension_percent: 100 * (pull(row.friction, 1.1 * pretension) / before - 1),
      gain_friction_percent: 100 * (pull(1.1 * row.friction, pretension) / before - 1),
    }
  },
  "belt-khurmi-11-3-crossed": (row) => {
    const [first, second, third] = row.driven_speeds_rpm as [number, number, number]
    const pair = (r: number, speed: number) => [r, (r * row.driver_speed_rpm) / speed] as const
    const length = ([a, b]: readonly [number, number]) => drive(flat(2 * a, 2 * b, { crossed: true }), 2).length
    const start = pair(row.first_driver_radius_mm / 1000, first)
    // the pair that the same belt fits, at its own ratio
    const fits = (speed: number) => pair(theRoot((r) => length(pair(r, speed)) - length(start), 0.01, 0.3, 0, "radius").x, speed)
    const [[r3, r4], [r5, r6]] = [fits(second), fits(third)]
    return { r2_mm: start[1] * 1000, r3_mm: r3 * 1000, r4_mm: r4 * 1000, r5_mm: r5 * 1000, r6_mm: r6 * 1000 }
  },
  "belt-khurmi-11-4": (row) => {
    const [belt, distance] = wrapped(row.wrap_deg * DEG, { friction: row.friction }, row.pulley_diameter_m)
    return { power_kW: (atTight(belt, distance, row.tight_tension_N, row.speed_rpm * RPM).outputPower as number) / 1000 }
  },
  "belt-khurmi-11-6-corrected": (row) => {
    const belt = flat(row.d1_m, row.d2_m, { crossed: true, friction: row.friction })
    const out = atTight(belt, row.centre_distance_m, row.tight_tension_N, row.speed_rpm * RPM)
    return { length_m: out.length, wrap_rad: out.drivingWrap, power_kW: (out.outputPower as number) / 1000 }
  },
  "belt-sarkar-2-3": (row) => {
    const length = (crossed: boolean) =>
      100 * drive(flat(row.d1_cm / 100, row.d2_cm / 100, { crossed }), row.centre_distance_cm / 100).length
    return { crossed_cm: length(true), open_cm: length(false), difference_cm: length(true) - length(false) }
  },
  "belt-wentzell-14-2": (row) => {
    const belt = { type: "v", drivingDiameter: row.small_diameter_in * INCH, drivenDiameter: row.large_diameter_in * INCH } as const
    const distance = theRoot((c) => drive(belt, c).length - row.belt_length_in * INCH, 0.2, 1, 0, "distance").x
    const out = drive(belt, distance, { inputSpeed: row.small_speed_rpm * RPM })
    return {
      centre_distance_in: distance / INCH,
      wrap_deg: out.drivingWrap / DEG,
      belt_speed_ft_per_min: ((out.beltSpeed as number) * 60) / FOOT,
    }
  },
  "rope-khurmi-11-22": (row) => {
    const [belt, distance] = wrapped(
      row.wrap_deg * DEG,
      { type: "round", grooveAngle: 2 * row.half_groove_deg * DEG, friction: row.friction },
      row.pulley_diameter_m,
    )
    const { ratio } = drive(belt, distance)
    const torque = ((row.total_power_kW * 1000) / row.ropes / (row.speed_rpm * RPM)) * ratio
    return { initial_tension_N: drive(belt, distance, { pretension: 1e5, torque }).requiredPretension }
  },
  "timing-exact-vs-series-numeric": (row) => {
    const belt = { type: "toothed", pitch: row.pitch_mm / 1000, drivingTeeth: row.teeth_driver, drivenTeeth: row.teeth_driven } as const
    const out = drive(belt, row.centre_distance_mm / 1000)
    return { exact_length_mm: out.length * 1000, pinion_teeth_in_mesh: out.teethInMesh }
  },
  "vbelt-jindal-21-3": (row) => {
    const belt = {
      type: "v",
      drivingDiameter: row.small_diameter_m,
      drivenDiameter: (row.small_diameter_m * row.small_speed_rpm) / row.large_speed_rpm,
      grooveAngle: 2 * row.half_groove_deg * DEG,
      friction: row.friction,
    } as const
    const area = row.height_mm * (row.top_width_mm - row.height_mm * Math.tan(row.side_angle_deg * DEG))
    const out = atTight(belt, row.centre_distance_m, row.stress_N_per_mm2 * area, row.small_speed_rpm * RPM, row.mass_kg_per_m)
    return {
      centrifugal_tension_N: out.centrifugalTension,
      tight_tension_N: out.tightTension,
      slack_tension_N: out.slackTension,
      belts_required: row.power_W / (out.outputPower as number),
      pitch_length_m: out.length,
    }
  },
  "vbelt-khurmi-11-17": (row) => {
    const more = { type: "v", grooveAngle: 2 * row.half_groove_deg * DEG, friction: row.friction }
    const [belt, distance] = wrapped(row.wrap_deg * DEG, more, row.pulley_diameter_m)
    const [tight, density] = [row.stress_N_per_m2 * row.area_m2, row.density_kg_per_m3 * row.area_m2]
    const out = atTight(belt, distance, tight, row.speed_rpm * RPM, density)
    return {
      power_kW: (row.belts * (out.outputPower as number)) / 1000,
      best_speed_rpm: bestSpeed(belt, distance, tight, density) / (row.pulley_diameter_m / 2) / RPM,
    }
  },
  "vbelt-khurmi-11-18": (row) => {
    const more = { type: "v", grooveAngle: 2 * row.half_groove_deg * DEG, friction: row.friction }
    const [belt, distance] = wrapped(row.wrap_deg * DEG, more)
    const tight = row.stress_N_per_m2 * row.width_m * row.thickness_m
    const best = bestSpeed(belt, distance, tight, row.mass_kg_per_m)
    return { power_kW: (atTight(belt, distance, tight, best / 0.1, row.mass_kg_per_m).outputPower as number) / 1000 }
  },
}
export const beltWithout: Record<string, Record<string, string>> = {
  "timing-exact-vs-series-numeric": { series_length_mm: "beltDrive gives the exact length" },
}
