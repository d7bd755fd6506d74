// Published values of motion profiles: how each row is put to motionProfile. A radian stands for the row's metre or inch.
import { type MotionProfileInput, motionProfile } from "../../src/drive/index.js"
import type { Check } from "../helpers/references.js"

const move = (swing: number, timing: MotionProfileInput["timing"], more: Partial<MotionProfileInput> = {}) =>
  motionProfile({ swing, timing, inertia: 1, ...more })

export const motionChecks: Record<string, Check> = {
  "profile-scurve-ramp-distance": (row) => {
    // way of one ramp: the whole swing less the steady part, halved
    const ramp = (jerk: number) => {
      const out = move(100, {
        type: "limits",
        maxSpeed: row.speed_in_per_s,
        maxAcceleration: row.acceleration_in_per_s2,
        jerkTime: row.acceleration_in_per_s2 / jerk,
      })
      return (100 - out.peakSpeed * out.cruiseTime) / 2
    }
    return { distance_1_in: ramp(row.jerk_1_in_per_s3), distance_2_in: ramp(row.jerk_2_in_per_s3) }
  },
  "profile-seven-segment-numeric": (row) => {
    const jerkTime = row.acceleration_m_per_s2 / row.jerk_m_per_s3
    const out = move(row.distance_m, {
      type: "limits",
      maxSpeed: row.speed_m_per_s,
      maxAcceleration: row.acceleration_m_per_s2,
      jerkTime,
    })
    const jerk = out.peakAcceleration / (out.peakJerk as number)
    return {
      jerk_time_s: jerk,
      constant_accel_time_s: out.accelerationTime - 2 * jerk,
      cruise_time_s: out.cruiseTime,
      total_time_s: out.duration,
    }
  },
  "profile-short-move-numeric": (row) => {
    const out = move(row.distance_m, { type: "limits", maxSpeed: row.speed_limit_m_per_s, maxAcceleration: row.acceleration_m_per_s2 })
    return { peak_speed_m_per_s: out.peakSpeed, time_s: out.duration }
  },
  "profile-trapezoid-thirds": (row) => {
    const out = move(row.distance_m, { type: "duration", duration: row.time_s })
    return { mean_over_peak: row.distance_m / row.time_s / out.peakSpeed }
  },
  "profile-triangular": (row) => {
    const out = move(row.distance_m, { type: "duration", duration: row.time_s, accelerationShare: 0.5, decelerationShare: 0.5 })
    return { peak_speed_m_per_s: out.peakSpeed, acceleration_m_per_s2: out.peakAcceleration }
  },
  "profile-unequal-ramps-numeric": (row) => {
    const out = move(row.distance_m, {
      type: "duration",
      duration: row.time_s,
      accelerationShare: row.accel_fraction,
      decelerationShare: row.decel_fraction,
    })
    return {
      peak_speed_m_per_s: out.peakSpeed,
      acceleration_m_per_s2: out.peakAcceleration,
      deceleration_m_per_s2: out.peakDeceleration,
    }
  },
}
