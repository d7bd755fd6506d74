// A move from rest to rest with straight or rounded ramps of speed, and the torque it takes both ways.
import type { SiOf } from "../../solver/index.js"
import type { LimitedMove, MotionProfile, MotionProfileInput, MoveTorques, TimedMove } from "./types.js"

type Si = SiOf<MotionProfileInput>

/** The two ramps and the stretch between them; each ramp's acceleration rises and falls in `jerkShare` of its time. */
export interface Ramps {
  readonly peakSpeed: number
  readonly accelerationTime: number
  readonly decelerationTime: number
  readonly cruiseTime: number
  readonly jerkShare: number
  readonly shortened: boolean
}

function timed(swing: number, { duration, accelerationShare, decelerationShare, jerkShare }: SiOf<TimedMove>): Ramps {
  const accelerationTime = duration * accelerationShare
  const decelerationTime = duration * decelerationShare
  return {
    // a ramp, straight or rounded evenly, has half the peak for its mean
    peakSpeed: swing / (duration * (1 - (accelerationShare + decelerationShare) / 2)),
    accelerationTime,
    decelerationTime,
    cruiseTime: Math.max(0, duration - accelerationTime - decelerationTime),
    jerkShare: jerkShare ?? 0,
    shortened: false,
  }
}

/** Quickest within limits: what is not reached, for want of way, is left out, first the steady speed and then the steady acceleration. */
function limited(swing: number, { maxSpeed, maxAcceleration: a, jerkTime: given }: SiOf<LimitedMove>): Ramps {
  const jerkTime = given ?? 0
  // the ramp that just reaches the speed: v/a and once more the jerk time, or twice √(v/j) where full acceleration is not needed
  const jerk = a / jerkTime
  const reaches = jerkTime === 0 || maxSpeed >= a * jerkTime
  const ramp = reaches ? maxSpeed / a + jerkTime : 2 * Math.sqrt(maxSpeed / jerk)
  const jerkShareAt = (speed: number) => (jerkTime === 0 ? 0 : speed >= a * jerkTime ? (2 * jerkTime) / (speed / a + jerkTime) : 1)
  if (maxSpeed * ramp <= swing)
    return {
      peakSpeed: maxSpeed,
      accelerationTime: ramp,
      decelerationTime: ramp,
      cruiseTime: swing / maxSpeed - ramp,
      jerkShare: jerkShareAt(maxSpeed),
      shortened: false,
    }
  // v·(v/a + t) = swing with full acceleration, else 2·j·t³ = swing
  const full = swing >= 2 * a * jerkTime ** 2
  const peakSpeed = full ? (2 * swing) / (jerkTime + Math.sqrt(jerkTime ** 2 + (4 * swing) / a)) : jerk * Math.cbrt(swing / (2 * jerk)) ** 2
  return {
    peakSpeed,
    accelerationTime: swing / peakSpeed,
    decelerationTime: swing / peakSpeed,
    cruiseTime: 0,
    jerkShare: full ? (2 * jerkTime * peakSpeed) / swing : 1,
    shortened: true,
  }
}

export const rampsOf = ({ swing, timing }: Pick<Si, "swing" | "timing">): Ramps =>
  timing.type === "duration" ? timed(swing, timing) : limited(swing, timing)

/** Peak of a ramp's acceleration: its mean over what the rounded ends leave. */
const peakOf = (speed: number, time: number, jerkShare: number) => speed / (time * (1 - jerkShare / 2))

export function solve(si: Si): MotionProfile {
  const { inertia, frictionTorque, restDuration } = si
  const ramps = rampsOf(si)
  const { peakSpeed, accelerationTime, decelerationTime, cruiseTime, jerkShare } = ramps
  const duration = accelerationTime + cruiseTime + decelerationTime
  const peakAcceleration = peakOf(peakSpeed, accelerationTime, jerkShare)
  const peakDeceleration = peakOf(peakSpeed, decelerationTime, jerkShare)
  // squares of the accelerations through the move: a ramp's rounded ends count a third
  const squares = (1 - (2 * jerkShare) / 3) * (peakAcceleration ** 2 * accelerationTime + peakDeceleration ** 2 * decelerationTime)
  // speeding up and slowing down take and give back alike, so that steady torque and acceleration do not mix
  const meanSquare = (steady: number) => (inertia ** 2 * squares) / duration + steady ** 2
  const move = (load: number): MoveTorques => {
    const cruiseTorque = load + frictionTorque
    const accelerationTorque = cruiseTorque + inertia * peakAcceleration
    const decelerationTorque = cruiseTorque - inertia * peakDeceleration
    return {
      accelerationTorque,
      cruiseTorque,
      decelerationTorque,
      peakTorque: Math.max(Math.abs(accelerationTorque), Math.abs(cruiseTorque), Math.abs(decelerationTorque)),
      rmsTorque: Math.sqrt(meanSquare(cruiseTorque)),
      work: cruiseTorque * si.swing,
    }
  }
  const [out, back] = [move(si.loadTorque), move(-si.loadTorque)]
  // at rest friction holds its part
  const held = si.holdsAtRest ? Math.max(0, Math.abs(si.loadTorque) - frictionTorque) : 0
  return {
    duration,
    accelerationTime,
    cruiseTime,
    decelerationTime,
    peakSpeed,
    peakAcceleration,
    peakDeceleration,
    peakJerk:
      jerkShare === 0
        ? null
        : Math.max(peakAcceleration / ((jerkShare / 2) * accelerationTime), peakDeceleration / ((jerkShare / 2) * decelerationTime)),
    shortened: ramps.shortened,
    out,
    back,
    peakTorque: Math.max(out.peakTorque, back.peakTorque),
    rmsTorque: Math.sqrt(
      (duration * (meanSquare(out.cruiseTorque) + meanSquare(back.cruiseTorque)) + 2 * restDuration * held ** 2) /
        (2 * (duration + restDuration)),
    ),
    frictionHeat: frictionTorque * si.swing,
    peakEnergy: (inertia * peakSpeed ** 2) / 2,
    tipSpeed: si.tipRadius === null ? null : peakSpeed * si.tipRadius,
  }
}

/** How far it has turned, how fast and how it accelerates at a time of the move. */
export function stateAt(ramps: Ramps, time: number): { readonly angle: number; readonly speed: number; readonly acceleration: number } {
  const { peakSpeed, accelerationTime, decelerationTime, cruiseTime, jerkShare } = ramps
  const total = accelerationTime + cruiseTime + decelerationTime
  const whole = peakSpeed * (accelerationTime / 2 + cruiseTime + decelerationTime / 2)
  if (time <= accelerationTime) return rise(peakSpeed, accelerationTime, jerkShare, time)
  if (time <= accelerationTime + cruiseTime) return { angle: peakSpeed * (time - accelerationTime / 2), speed: peakSpeed, acceleration: 0 }
  // slowing down is speeding up seen from its end
  const left = rise(peakSpeed, decelerationTime, jerkShare, Math.max(0, total - time))
  return { angle: whole - left.angle, speed: left.speed, acceleration: -left.acceleration }
}

function rise(peak: number, time: number, jerkShare: number, t: number) {
  const a = peakOf(peak, time, jerkShare)
  const rounded = (jerkShare / 2) * time
  if (t < rounded) {
    const jerk = a / rounded
    return { angle: (jerk * t ** 3) / 6, speed: (jerk * t ** 2) / 2, acceleration: jerk * t }
  }
  if (t <= time - rounded) {
    const s = t - rounded
    return {
      angle: (a * rounded ** 2) / 6 + ((a * rounded) / 2) * s + (a * s ** 2) / 2,
      speed: (a * rounded) / 2 + a * s,
      acceleration: a,
    }
  }
  const jerk = a / rounded
  const s = time - t
  return { angle: (peak * time) / 2 - peak * s + (jerk * s ** 3) / 6, speed: peak - (jerk * s ** 2) / 2, acceleration: jerk * s }
}
