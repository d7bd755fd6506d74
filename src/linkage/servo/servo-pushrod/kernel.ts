import { goldenMinimum } from "../../../numeric/index.js"
import type { Angle, AngularSpeed, Density, Length, Mass, Moment, Speed } from "../../../quantity/index.js"
import { type Knob, type NoSolution, refuse, type SiOf } from "../../../solver/index.js"
import { flapDragMoment } from "../../fan/flap-drag.js"
import { type Assembly, closedPose } from "../../four-bar/pose.js"
import { standardGravity } from "../../hinge/load.js"

/** Input of `servoPushrod`. */
export interface ServoPushrodInput {
  /** Servo shaft to flap hinge [d; 0.01 mm to 100 m] */
  pivotDistance: Length
  /** Servo horn, shaft to rod pin. [a; 0.1 mm to 10 m] */
  servoHorn: Length
  /** Flap horn, hinge to rod pin. [c; 0.1 mm to 10 m] */
  flapHorn: Length
  /** Servo horn at neutral, from the line shaft to hinge. [theta_n; −360° to 360°; default 90°] */
  servoHornAngle?: Angle
  /** Flap horn at neutral, from the same direction. [psi_n; −360° to 360°; default 90°] */
  flapHornAngle?: Angle
  /** Servo travel from neutral to the lower end, negative. [delta_0; −170° to 0°; default −45°] */
  minServoAngle?: Angle
  /** Servo travel from neutral to the upper end. [delta_1; 0 to 170°; default 45°] */
  maxServoAngle?: Angle
  /** Moment on the hinge that works against rising flap angle: elastic, cloth, a steady pull. [M_h; −10000 to 10000 N m; default 0] */
  hingeMoment?: Moment
  /** Flap mass [m_f; 0 to 200 kg; default 0] */
  flapMass?: Mass
  /** Hinge to the flap's centre of gravity [z; 0 to 10 m; default 0] */
  flapCentre?: Length
  /**
   * Direction of that centre above the horizontal at neutral, seen so that rising flap angle raises it. [gamma; −360°
   * to 360°; default 0]
   */
  flapLevel?: Angle
  /** Width of the flap along its hinge, for the air on it. [w_f; 0 to 20 m; default 0] */
  flapWidth?: Length
  /** Depth of the flap from hinge to far edge, for the air on it. [R_f; 0 to 20 m; default 0] */
  flapDepth?: Length
  /** Speed of the servo while it moves the flap. [Omega; 0 to 954.93 rpm; default 0] */
  servoSpeed?: AngularSpeed
  /** Wind that meets the flap square on. [V; 0 to 60 m/s; default 0] */
  windSpeed?: Speed
  /** Drag coefficient of the flap. [C_d; 0 to 10; default 1.2] */
  dragCoefficient?: number
  /** Air density [rho; 0 to 10 kg/m³; default 1.225 kg/m³] */
  airDensity?: Density
  /** Torque the servo can hold, where known. [M_s; 0.01 mN m to 10000 N m; optional] */
  servoTorque?: Moment | null
  /** Settings calculated each way; crests of torque and rod force are added. [n; whole 1 to 1000; default 12] */
  steps?: number
}

/** Result of `servoPushrod`; flap angles are from neutral. */
export interface ServoPushrod {
  /** Pushrod, pin to pin [b; m] */
  readonly rod: number
  /** Flap angle at the lower end of the travel. [phi_0; rad] */
  readonly minServoFlapAngle: number
  /** Flap angle at the upper end. [phi_1; rad] */
  readonly maxServoFlapAngle: number
  /** Flap angle swept between its extremes. [phi; rad] */
  readonly flapSwing: number
  /** Flap per servo angle at neutral [k_0; as a fraction] */
  readonly ratio: number
  /** Servo torque at the lower end; positive with rising servo angle. [M_0; N m] */
  readonly minServoTorque: number
  /** Servo torque at the upper end [M_1; N m] */
  readonly maxServoTorque: number
  /** Largest size of the servo torque over the travel. [M_p; N m] */
  readonly peakTorque: number
  /** Servo angle from neutral where it peaks. [delta_p; rad] */
  readonly peakTorqueAngle: number
  /** Maximum push or pull in the rod. [F_p; N] */
  readonly peakRodForce: number
  /** Minimum transmission angle anywhere in the travel. [mu; rad] */
  readonly minTransmissionAngle: number
  /** Share of the servo's torque that is left at the peak; null where it is not given. [e; as a fraction] */
  readonly torqueReserveShare: number | null
  /** Whether the flap turns back within the travel because horn and rod come into line. [yes or no] */
  readonly reverses: boolean
  /** Every setting, low to high: angles rad, torque N·m, rod force N. [list] */
  readonly map: readonly {
    /** Servo [rad] */
    readonly servoAngle: number
    /** Flap [rad] */
    readonly flapAngle: number
    /** Ratio [as a fraction] */
    readonly ratio: number
    /** Torque [N m] */
    readonly torque: number
    /** Rod force [N] */
    readonly rodForce: number
    /** Transmission angle [rad] */
    readonly transmissionAngle: number
  }[]
}

/** Reasons for which {@link servoPushrod} refuses. */
export type ServoPushrodRefusal = "binding" | "insufficient-torque"

/** Hazards and limits of validity that go with an answer of {@link servoPushrod}. */
export type ServoPushrodCaution = "falls-unpowered" | "gusts" | "pinch" | "poor-transmission" | "reverses" | "thin-margin"

/** Rod and branch that the neutral pose has. */
export function neutral(
  si: Pick<SiOf<ServoPushrodInput>, "pivotDistance" | "servoHorn" | "flapHorn" | "servoHornAngle" | "flapHornAngle">,
): { readonly rod: number; readonly branch: Assembly } {
  const { pivotDistance: d, servoHorn: a, flapHorn: c, servoHornAngle: t, flapHornAngle: p } = si
  const [ax, ay] = [a * Math.cos(t), a * Math.sin(t)]
  const [bx, by] = [d + c * Math.cos(p), c * Math.sin(p)]
  const left = (d - ax) * (by - ay) + ay * (bx - ax)
  return { rod: Math.hypot(bx - ax, by - ay), branch: left >= 0 ? "open" : "crossed" }
}

/** Minimum and maximum distance from the servo pin to the hinge over the travel. */
export function reach(si: SiOf<ServoPushrodInput>): readonly { readonly length: number; readonly angle: number }[] {
  const { pivotDistance: d, servoHorn: a, servoHornAngle: t } = si
  const [low, high] = [t + si.minServoAngle, t + si.maxServoAngle]
  const at = (angle: number) => ({ length: Math.hypot(d - a * Math.cos(angle), a * Math.sin(angle)), angle })
  // horn and line of pivots fall together at every half turn; the travel holds two of them at most
  const first = Math.ceil(low / Math.PI)
  const turns = [first, first + 1].map((k) => k * Math.PI).filter((angle) => angle <= high)
  return [low, high, ...turns].map(at).sort((x, y) => x.length - y.length)
}

const nearestTurn = (angle: number, to: number) => angle - 2 * Math.PI * Math.round((angle - to) / (2 * Math.PI))

/** Places looked at for crests over the travel. */
const SCAN = 64

/** Everything at one servo angle from neutral, within the reach of rod and flap horn. */
function setting(si: SiOf<ServoPushrodInput>, rod: number, branch: Assembly, servoAngle: number, last: number) {
  const { pivotDistance: d, servoHorn: a, flapHorn: c } = si
  const t2 = si.servoHornAngle + servoAngle
  const pose = closedPose(d, a, rod, c, t2, branch)
  const sine = Math.sin(pose.outputAngle - pose.couplerAngle)
  const ratio = (a * Math.sin(t2 - pose.couplerAngle)) / (c * sine)
  const flapAngle = nearestTurn(pose.outputAngle, si.flapHornAngle + last) - si.flapHornAngle
  const still = si.hingeMoment + si.flapMass * standardGravity * si.flapCentre * Math.cos(si.flapLevel + flapAngle)
  const air = flapDragMoment(si.airDensity, si.dragCoefficient, si.flapWidth, si.flapDepth, Math.abs(ratio) * si.servoSpeed, si.windSpeed)
  // the air is taken the way it is worse: on top of what the flap weighs on the servo anyway
  const moment = still + (still < 0 ? -air : air)
  return { servoAngle, flapAngle, ratio, torque: moment * ratio, rodForce: moment / (c * sine), transmissionAngle: pose.transmissionAngle }
}
type Setting = ReturnType<typeof setting>

/** Share of rod and flap horn together by which the pins must keep clear of the dead point. */
const CLEAR = 1e-6

/** `short`: length by which servo pin and hinge are too far apart, or too close, to stay clear of the dead point. */
function binding(si: SiOf<ServoPushrodInput>, angle: number, short: number): NoSolution<"binding"> {
  const servoAngle = angle - si.servoHornAngle
  return refuse(
    "binding",
    "At {servoAngle angle °} from neutral rod and flap horn come into line, {shortBy length} beyond what they reach: the linkage jams before it gets there. Use less travel, a shorter servo horn or a longer flap horn.",
    short,
    { servoAngle },
  )
}

/** What may be changed where the linkage binds or the servo stalls, and how far. */
export function pushrodKnobs(si: SiOf<ServoPushrodInput>, refusal: NoSolution): { offered: Record<string, number>; knobs: Knob[] } {
  const { minServoAngle, maxServoAngle, servoHorn, flapHorn, flapHornAngle } = si
  if (refusal.noSolution === "insufficient-torque") return { offered: { servoTorque: refusal.at.torque as number }, knobs: [] }
  return {
    offered: {},
    knobs: [
      { path: "minServoAngle", from: minServoAngle, to: 0 },
      { path: "maxServoAngle", from: 0, to: maxServoAngle },
      { path: "servoHorn", from: 0.02 * servoHorn, to: servoHorn },
      { path: "flapHorn", from: flapHorn, to: 5 * flapHorn },
      { path: "flapHornAngle", from: flapHornAngle - 1, to: flapHornAngle + 1 },
    ],
  }
}

/** The kernel. */
export function solveServoPushrod(si: SiOf<ServoPushrodInput>): ServoPushrod | NoSolution<ServoPushrodRefusal> {
  const { flapHorn: c, minServoAngle, maxServoAngle, steps } = si
  const { rod, branch } = neutral(si)
  const span = reach(si)
  const [close, far] = [span[0], span[span.length - 1]] as [(typeof span)[number], (typeof span)[number]]
  // a hair inside, so that what is answered is clear of the dead point
  const room = CLEAR * (rod + c)
  const [beyond, within] = [far.length - (rod + c - room), Math.abs(rod - c) + room - close.length]
  if (beyond > 0) return binding(si, far.angle, beyond)
  if (within > 0) return binding(si, close.angle, within)
  const start = setting(si, rod, branch, 0, 0)
  // from neutral outwards, so that the flap angle is followed and not folded
  const walk = (to: number): Setting[] => {
    const list: Setting[] = []
    let last = start.flapAngle
    for (let k = 1; k <= steps; k++) {
      const next = setting(si, rod, branch, k === steps ? to : (k / steps) * to, last)
      last = next.flapAngle
      list.push(next)
    }
    return list
  }
  const map = [...walk(minServoAngle).reverse(), start, ...walk(maxServoAngle)]
  // a crest between settings becomes a setting of its own, so that no peak is read too low
  const step = (maxServoAngle - minServoAngle) / SCAN
  for (const size of [(s: Setting) => Math.abs(s.torque), (s: Setting) => Math.abs(s.rodForce)]) {
    // whole turns of the flap change no size
    const sizeAt = (angle: number) => size(setting(si, rod, branch, angle, 0))
    const sizes = Array.from({ length: SCAN + 1 }, (_, k) => sizeAt(minServoAngle + k * step))
    const best = minServoAngle + sizes.indexOf(Math.max(...sizes)) * step
    const angle = goldenMinimum((a) => -sizeAt(a), Math.max(minServoAngle, best - step), Math.min(maxServoAngle, best + step))
    const closest = map.reduce((a, b) => (Math.abs(b.servoAngle - angle) < Math.abs(a.servoAngle - angle) ? b : a))
    const crest = setting(si, rod, branch, angle, closest.flapAngle)
    if (map.some((s) => size(s) >= size(crest))) continue
    const after = map.findIndex((s) => s.servoAngle > crest.servoAngle)
    map.splice(after < 0 ? map.length : after, 0, crest)
  }
  const [first, last] = [map[0] as Setting, map[map.length - 1] as Setting]
  const peak = map.reduce((most, s) => (Math.abs(s.torque) > Math.abs(most.torque) ? s : most), first)
  const peakTorque = Math.abs(peak.torque)
  if (si.servoTorque !== null && peakTorque > si.servoTorque)
    return refuse(
      "insufficient-torque",
      "The servo must hold {torque moment} {where} of its travel and has {given.servoTorque moment}, {shortBy moment} too little.",
      peakTorque - si.servoTorque,
      { torque: peakTorque },
      {},
      { where: peak === first ? "at the lower end" : peak === last ? "at the upper end" : "inside", "given.servoTorque": si.servoTorque },
    )
  const flaps = map.map((s) => s.flapAngle)
  // both distances are inside the reach by now, so the cosine is below one
  const acute = (f: number) => Math.acos(Math.abs(rod ** 2 + c ** 2 - f ** 2) / (2 * rod * c))
  return {
    rod,
    minServoFlapAngle: first.flapAngle,
    maxServoFlapAngle: last.flapAngle,
    flapSwing: Math.max(...flaps) - Math.min(...flaps),
    ratio: start.ratio,
    minServoTorque: first.torque,
    maxServoTorque: last.torque,
    peakTorque,
    peakTorqueAngle: peak.servoAngle,
    peakRodForce: Math.max(...map.map((s) => Math.abs(s.rodForce))),
    minTransmissionAngle: Math.min(acute(close.length), acute(far.length)),
    torqueReserveShare: si.servoTorque === null ? null : 1 - peakTorque / si.servoTorque,
    reverses: map.some((s) => s.ratio * start.ratio <= 0),
    map,
  }
}
