// A fan of feathers: the first is driven, each next one hangs on a thread.
import {
  evenThreads,
  FAN_STEPS,
  type FanGeometry,
  fanAngles,
  followerAngle,
  followerRate,
  restAngle,
  threadLength,
  threadLevers,
} from "../../linkage/index.js"
import type { Angle, Area, Length, Moment } from "../../quantity/index.js"
import { type Issue, inconsistent, type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { type MassOnArm, massList, type PlanePoint, planePoint } from "./arm.js"
import { addBody, bodyOf, massCentre, weightMoment } from "./body.js"
import type { Mechanism, MechanismMember, MechanismState, Triple } from "./mechanism.js"
import { turningPart } from "./moving.js"

/** A fan of like vanes on threads. */
export interface FanMechanism {
  type: "fan"
  /** Pivot of the driven vane. [group; optional, with a default of its own] */
  hinge?: PlanePoint
  /** Number of vanes, the driven one included. [n_v; whole 2 to 60] */
  vanes: number
  /** Pivot to tip. [R; 1 mm to 5 m] */
  length: Length
  /** Masses of each vane, from its pivot. [list of 1 to 60] */
  masses: readonly MassOnArm[]
  /** Area of each vane as a panel square to the plane in which it turns. [A_p; 0 to 4 m²; default 0] */
  area?: Area
  /** Distance of that area's centre from the pivot. [r_A; 0 to 5 m; default 0] */
  areaRadius?: Length
  /** Distance between neighbouring pivots; 0 where all share one. [p; 0 to 1 m; default 0] */
  pitch?: Length
  /** Direction from the first pivot to the last. [psi; −360° to 360°; default 0] */
  pitchAngle?: Angle
  /** Pivot to the thread's end on each vane. [rho; 1 mm to 5 m] */
  attachRadius: Length
  /** Angle of the driven vane when folded: the start. [theta_f; −360° to 360°] */
  foldedAngle: Angle
  /** How much lower each next vane rests when folded. [delta; 0 to 28°; default 0] */
  foldedStep?: Angle
  /** Angle of the driven vane when open. [theta_o; −360° to 360°] */
  openAngle: Angle
  /** Angle between first and last vane when open, for even thread lengths. [sigma; 0.1° to 343.775°] */
  span: Angle
  /** Length of each thread, from the driven vane on; even spread where left out. [list of 1 to 59, each t_g, 0 to 10 m; optional] */
  threads?: readonly Length[] | null
  /** Moment by which elastic draws each tethered vane back. [M_r; 0 to 100 N m; default 0] */
  returnMoment?: Moment
  /** Friction moment of each vane's pivot. [M_f; 0 to 100 N m; default 0] */
  hingeFriction?: Moment
}

/** Patterns of taut threads that a number tells apart. */
const PATTERNS = 4503599627370449

/** Coordinate: the angle of the driven vane. */
function build(si: SiOf<FanMechanism>): Mechanism | NoSolution {
  const g: FanGeometry = si
  const { vanes, hinge, pitch, pitchAngle, foldedAngle, openAngle } = si
  const threads = si.threads ?? evenThreads(g, openAngle, si.span / (vanes - 1))
  for (let i = 0; i <= FAN_STEPS; i++) {
    const driver = foldedAngle + ((openAngle - foldedAngle) * i) / FAN_STEPS
    const pose = fanAngles(g, threads, driver)
    if ("shortBy" in pose)
      return refuse(
        "thread-too-short",
        "With the driven vane at {driverAngle angle °} vane {vane} cannot follow: its thread is {shortBy length} too short.",
        pose.shortBy,
        { driverAngle: driver, vane: pose.vane + 1 },
      )
  }
  const vane = bodyOf(si.masses)
  const panel = si.area * si.areaRadius
  const pivots = Array.from({ length: vanes }, (_, i) => ({
    x: hinge.x + i * pitch * Math.cos(pitchAngle),
    y: hinge.y + i * pitch * Math.sin(pitchAngle),
  }))
  const follow = (i: number, leader: number) => followerAngle(g, i, threads[i - 1] as number, leader) as number
  /** Angles of all vanes, each thread's tautness told by the angle of rest. */
  const anglesAt = (q: number) => {
    const angles = [q]
    for (let i = 1; i < vanes; i++) angles.push(follow(i, angles[i - 1] as number))
    return angles
  }
  const isTaut = (i: number, angle: number) => angle > restAngle(g, i)
  const add = (state: MechanismState, angle: number, rate: number, bend: number) => {
    addBody(state, vane, angle, 0, 0, 0, 0, rate, bend)
    state.windX += rate * panel * Math.sin(angle)
    state.windY -= rate * panel * Math.cos(angle)
    state.frictionDry += si.hingeFriction * Math.abs(rate)
  }
  return {
    travel: "angle",
    start: foldedAngle,
    low: foldedAngle,
    high: openAngle,
    deadPoints: [],
    shows: "angle",
    at(q, state) {
      let [leader, rate, bend] = [q, 1, 0]
      add(state, q, 1, 0)
      for (let i = 1; i < vanes; i++) {
        const angle = follow(i, leader)
        const taut = isTaut(i, angle)
        if (taut) {
          const { ratio, slope } = followerRate(g, leader, angle)
          bend = ratio * bend + slope * rate * rate
          rate *= ratio
        } else rate = bend = 0
        add(state, angle, rate, bend)
        state.springs += si.returnMoment * rate
        state.form = (2 * state.form + (taut ? 1 : 0)) % PATTERNS
        leader = angle
      }
    },
    pose(q) {
      const angles = anglesAt(q)
      const end = (i: number, radius: number): Triple => {
        const [{ x, y }, angle] = [pivots[i] as (typeof pivots)[number], angles[i] as number]
        return [x + radius * Math.cos(angle), y + radius * Math.sin(angle), 0]
      }
      const at = (i: number): Triple => [pivots[i]?.x ?? 0, pivots[i]?.y ?? 0, 0]
      return {
        parts: [
          ...angles.map((_, i) => ({ name: `vane ${i + 1}`, points: [at(i), end(i, si.length)], closed: false })),
          ...threads.map((_, i) => ({
            name: `thread ${i + 1}`,
            points: [end(i, si.attachRadius), end(i + 1, si.attachRadius)],
            closed: false,
          })),
        ],
        pins: pivots.map((_, i) => ({ name: `pivot ${i + 1}`, at: at(i) })),
        tip: end(0, si.length),
        tipRate: [-si.length * Math.sin(q), si.length * Math.cos(q), 0],
        ...massCentre(angles.map((angle, i) => ({ body: vane, x: pivots[i]?.x ?? 0, y: pivots[i]?.y ?? 0, angle }))),
        shown: q,
      }
    },
    // its driven vane: the others only follow on threads
    carries: (q) => turningPart([0, 0, 1], q, [hinge.x, hinge.y, 0], { rate: 1, bend: 0 }, ["pivot 1"]),
    // a shaft turns the driven vane with a moment; threads pull the others along
    reactions(q, _effort, down) {
      const angles = anglesAt(q)
      const forces = angles.map((): [number, number, number] => [vane.mass * down[0], vane.mass * down[1], vane.mass * down[2]])
      let drag = 0
      for (let i = vanes - 1; i >= 1; i--) {
        const [leader, follower] = [angles[i - 1] as number, angles[i] as number]
        if (!isTaut(i, follower)) {
          drag = 0
          continue
        }
        const length = threadLength(g, leader, follower)
        const { own, lead } = threadLevers(g, leader, follower, length)
        const tension = (drag + si.returnMoment - weightMoment(vane, follower, down)) / own
        drag = tension * lead
        const rho = si.attachRadius
        const dx = rho * (Math.cos(leader) - Math.cos(follower)) - pitch * Math.cos(pitchAngle)
        const dy = rho * (Math.sin(leader) - Math.sin(follower)) - pitch * Math.sin(pitchAngle)
        const [x, y] = [(tension * dx) / length, (tension * dy) / length]
        const [ahead, own2] = [forces[i - 1], forces[i]]
        if (ahead && own2) {
          own2[0] += x
          own2[1] += y
          ahead[0] -= x
          ahead[1] -= y
        }
      }
      return forces.map((force, i) => ({ name: `pivot ${i + 1}`, force }))
    },
  }
}

function check(si: SiOf<FanMechanism>): Issue[] {
  const { openAngle, foldedAngle, span, vanes, threads } = si
  const found: Issue[] = []
  if (!(openAngle > foldedAngle))
    found.push(
      inconsistent(["openAngle"], "{openAngle angle °}", "more than foldedAngle, {foldedAngle angle °}", { openAngle, foldedAngle }),
    )
  if (threads !== null && threads.length !== vanes - 1)
    found.push(
      inconsistent(["threads"], "{threads.length} threads", "one fewer than the {vanes} vanes", {
        "threads.length": threads.length,
        vanes,
      }),
    )
  const room = openAngle - restAngle(si, vanes - 1)
  if (threads === null && !(span <= room))
    found.push(inconsistent(["span"], "{span angle °}", "at most {room angle °}, so that no vane opens below its stop", { span, room }))
  return found
}

/** A fan of feathers on threads. */
export const fan: MechanismMember<FanMechanism> = {
  type: "fan",
  label: "fan of vanes on threads, the first one driven",
  fields: {
    hinge: { ...planePoint("pivot of the driven vane", "x_h", "y_h"), default: { x: 0, y: 0 } },
    vanes: { kind: "number", symbol: "n_v", label: "vanes", whole: true, min: 2, max: 60, typical: [3, 9] },
    length: { kind: "length", symbol: "R", label: "pivot to tip", min: "1 mm", max: 5, typical: ["0.4 m", "1 m"] },
    masses: massList("masses of each vane", "m_i", "distance from its pivot", 1),
    area: { kind: "area", symbol: "A_p", label: "area of each vane", min: 0, max: 4, typical: [0, "0.05 m2"], default: 0 },
    areaRadius: {
      kind: "length",
      symbol: "r_A",
      label: "distance of its centre from the pivot",
      min: 0,
      max: 5,
      typical: ["0.1 m", "0.5 m"],
      default: 0,
    },
    pitch: { kind: "length", symbol: "p", label: "distance between pivots", min: 0, max: 1, typical: ["0 mm", "12 mm"], default: 0 },
    pitchAngle: {
      kind: "angle",
      symbol: "psi",
      label: "direction of the pivots",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-90 deg", "-60 deg"],
      default: 0,
    },
    attachRadius: { kind: "length", symbol: "rho", label: "pivot to thread's end", min: "1 mm", max: 5, typical: ["80 mm", "150 mm"] },
    foldedAngle: {
      kind: "angle",
      symbol: "theta_f",
      label: "driven vane folded",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-90 deg", "-60 deg"],
    },
    foldedStep: {
      kind: "angle",
      symbol: "delta",
      label: "each next vane rests lower by",
      min: 0,
      max: "28 deg",
      typical: ["0 deg", "2 deg"],
      default: 0,
    },
    openAngle: {
      kind: "angle",
      symbol: "theta_o",
      label: "driven vane open",
      min: "-360 deg",
      max: "360 deg",
      typical: ["30 deg", "70 deg"],
    },
    span: { kind: "angle", symbol: "sigma", label: "first to last vane when open", min: "0.1 deg", max: 6, typical: ["50 deg", "90 deg"] },
    threads: {
      kind: "list",
      label: "thread lengths",
      of: { kind: "length", symbol: "t_g", label: "thread", min: 0, max: 10, typical: ["30 mm", "60 mm"] },
      min: 1,
      max: 59,
      default: null,
    },
    returnMoment: {
      kind: "moment",
      symbol: "M_r",
      label: "elastic return of each vane",
      min: 0,
      max: 100,
      typical: ["0 N m", "0.1 N m"],
      default: 0,
    },
    hingeFriction: {
      kind: "moment",
      symbol: "M_f",
      label: "friction of each pivot",
      min: 0,
      max: 100,
      typical: [0, "0.05 N m"],
      default: 0,
    },
  },
  check,
  build,
}
