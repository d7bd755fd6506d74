import { type CamLaw, camDrive } from "../../src/linkage/index.js"
import type { Check, RowInputs } from "../helpers/references.js"

const DEG = Math.PI / 180
const RPM = Math.PI / 30
const base = { primeRadius: 2, load: 1 }

/** Displacement, speed and acceleration over lift and share of the rise, at shares of the rise. */
const normalised =
  (law: CamLaw): Check =>
  (n: RowInputs) =>
    Object.assign(
      {},
      ...(n.u as number[]).map((u) => {
        const out = camDrive({ ...base, law, lift: 1, riseAngle: 1, camAngle: u })
        const key = String(u).replace(".", "p")
        return { [`s_${key}`]: out.displacement, [`v_${key}`]: out.lever, [`a_${key}`]: out.leverSlope }
      }),
    )

/** The row's cycloidal rise at its angles. */
const cycloidal: Check = (n: RowInputs) =>
  Object.assign(
    {},
    ...(n.angles_deg as number[]).map((angle) => {
      const out = camDrive({ ...base, law: "cycloidal", lift: n.lift_mm / 1000, riseAngle: n.rise_deg * DEG, camAngle: angle * DEG })
      return {
        [`s_${angle}_mm`]: out.displacement * 1000,
        [`v_${angle}_mm_per_deg`]: out.lever * 1000 * DEG,
        [`a_${angle}_mm_per_deg2`]: out.leverSlope * 1000 * DEG ** 2,
      }
    }),
  )

/** Largest acceleration of a rise, and of the return as the same rise run backward. */
const peaks = (law: CamLaw, n: RowInputs) =>
  [n.rise_deg, n.return_deg].map(
    (turn) =>
      camDrive({ ...base, law, lift: n.lift_mm / 1000, riseAngle: turn * DEG, camAngle: 0, camSpeed: n.speed_rpm * RPM }).rise
        .maxAcceleration,
  ) as [number, number]

const harmonic: Check = (n) => {
  const [rise, back] = peaks("harmonic", n)
  return { rise_m_per_s2: rise, return_m_per_s2: back }
}

/** Checks of the rows on cams. */
export const camChecks: Readonly<Record<string, Check>> = {
  "cam-345-values-numeric": normalised("polynomial-345"),
  "cam-4567-values-numeric": normalised("polynomial-4567"),
  "cam-cycloidal-table-displacement": cycloidal,
  "cam-cycloidal-table-speed": cycloidal,
  "cam-sarkar-9-2-shm": harmonic,
  "cam-sarkar-9-3-shm": harmonic,
  "cam-sarkar-9-5-parabolic": (n) => {
    const [rise, back] = peaks("parabolic", n)
    return { rise_cm_per_s2: rise * 100, return_cm_per_s2: back * 100 }
  },
  "cam-peak-coefficients-memory": () => {
    const { entries } = Object
    const named = { harmonic: "harmonic", cycloidal: "cycloidal", "345": "polynomial-345", "4567": "polynomial-4567" } as const
    return Object.fromEntries(
      entries(named).flatMap(([key, law]) => {
        const { rise } = camDrive({ ...base, law, lift: 1, riseAngle: 1, camAngle: 0, camSpeed: 1 })
        return [
          [`cv_${key}`, rise.maxSpeed],
          [`ca_${key}`, rise.maxAcceleration],
        ]
      }),
    )
  },
  "cam-pressure-angle-numeric": (n) => {
    const { rise } = camDrive({
      law: "cycloidal",
      lift: n.lift_mm / 1000,
      riseAngle: n.rise_deg * DEG,
      camAngle: 0,
      primeRadius: n.prime_radius_mm / 1000,
      offset: n.offset_mm / 1000,
    })
    return { max_pressure_angle_deg: rise.maxPressureAngle / DEG, min_pitch_radius_mm: rise.minRadius * 1000 }
  },
}

const JERK = "the jerk is no result of camDrive"
/** Expected keys that no solver calculates, and why. */
export const camWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "cam-345-values-numeric": { j_0p1: JERK, j_0p25: JERK, j_0p5: JERK, j_0p8: JERK },
}
