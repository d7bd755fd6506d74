import { type Issue, inconsistent, isNoSolution, type NoSolution, refuse, type Solver, solver, withNearest } from "../../../solver/index.js"
import { standardGravity } from "../../hinge/load.js"
import { equilibrium } from "../../sources.js"
import { cautions } from "./cautions.js"
import { tetheredFanFormulae } from "./formulae.js"
import { evenThreads, FAN_STEPS, type FanGeometry, fanAngles, fanForces, vaneGap } from "./pose.js"
import type { FanTrace, Si, TetheredFan, TetheredFanCaution, TetheredFanInput, TetheredFanRefusal } from "./types.js"

export type { FanPose, TetheredFan, TetheredFanCaution, TetheredFanInput, TetheredFanRefusal } from "./types.js"

/** Largest tip gap of an evenly opened fan of `vanes` on the same row of pivots. */
function openTipGap(si: Si, g: FanGeometry, vanes: number): number {
  const step = si.span / (vanes - 1)
  const row: FanGeometry = { ...g, vanes, pitch: (g.pitch * (g.vanes - 1)) / (vanes - 1) }
  const gaps = Array.from({ length: vanes - 1 }, (_, i) =>
    vaneGap(row, si.openAngle - i * step, si.openAngle - (i + 1) * step, si.length, si.tipWidth),
  )
  return Math.max(...gaps)
}

function solve(si: Si, trace?: Partial<FanTrace>): TetheredFan | NoSolution<TetheredFanRefusal> {
  const out = kernel(si, trace)
  if (!isNoSolution(out)) return out
  const i = (out.at.vane as number) - 2
  const thread = si.threads?.[i]
  return withNearest(out, tetheredFan, (changed) => kernel(changed), si, {}, [
    ...(thread === undefined ? [] : [{ path: `threads.${i}`, from: thread, to: thread + 4 * si.attachRadius }]),
    { path: "foldedAngle", from: si.foldedAngle, to: si.openAngle },
    { path: "foldedStep", from: 0, to: 0.5 },
    { path: "attachRadius", from: si.attachRadius, to: 4 * si.attachRadius },
    { path: "pitch", from: 0, to: si.pitch },
  ])
}

function kernel(si: Si, trace?: Partial<FanTrace>): TetheredFan | NoSolution<TetheredFanRefusal> {
  const { vanes, length, span, openAngle, foldedAngle, mass, frameTilt } = si
  const g: FanGeometry = si
  const step = span / (vanes - 1)
  const threads = si.threads ?? evenThreads(g, openAngle, step)
  const poseAt = (driver: number) => {
    const pose = fanAngles(g, threads, driver)
    if (!("shortBy" in pose)) return { ...pose, ...fanForces(g, pose, si, frameTilt), driver }
    return refuse(
      "thread-too-short",
      "With the driven vane at {driverAngle angle °} vane {vane} cannot follow: its thread of {thread length} is {shortBy length} too short to leave its stop, or to let its neighbour go.",
      pose.shortBy,
      { driverAngle: driver, vane: pose.vane + 1, thread: threads[pose.vane - 1] as number },
    )
  }
  const chosen = poseAt(si.driverAngle ?? openAngle)
  if ("noSolution" in chosen) return chosen
  const sweep: (typeof chosen)[] = []
  for (let i = 0; i <= FAN_STEPS; i++) {
    const pose = poseAt(foldedAngle + ((openAngle - foldedAngle) * i) / FAN_STEPS)
    if ("noSolution" in pose) return pose
    sweep.push(pose)
  }
  const peak = sweep.reduce((a, b) => (Math.abs(b.driverMoment) > Math.abs(a.driverMoment) ? b : a))
  if (trace) Object.assign(trace, { taut: chosen.taut, peakMoment: peak.driverMoment } satisfies FanTrace)
  const { angles, tensions } = chosen
  const gapsAt = (distance: number, width: number) =>
    tensions.map((_, i) => vaneGap(g, angles[i] as number, angles[i + 1] as number, distance, width))
  const [rootGaps, tipGaps] = [gapsAt(si.rootDistance, si.rootWidth), gapsAt(length, si.tipWidth)]
  let fanMoment = 0
  angles.forEach((angle, i) => {
    fanMoment += standardGravity * mass * (si.centre * Math.cos(angle + frameTilt) + i * g.pitch * Math.cos(g.pitchAngle + frameTilt))
  })
  let needed: number | null = 2
  while (needed !== null && openTipGap(si, g, needed) > -si.overlap) needed = needed < 200 ? needed + 1 : null
  return {
    transmits: "pull-only",
    step,
    threads,
    angles,
    rootGaps,
    tipGaps,
    tensions,
    maxRootGap: Math.max(...rootGaps),
    maxTipGap: Math.max(...tipGaps),
    driverMoment: chosen.driverMoment,
    peakDriverMoment: Math.abs(peak.driverMoment),
    peakDriverAngle: peak.driver,
    totalMass: vanes * mass,
    fanMoment,
    staysTaut: [chosen, ...sweep].every((pose) => pose.tensions.every((tension) => tension >= 0)),
    cover: { vanes: needed, tipGap: needed === null ? null : openTipGap(si, g, needed) },
    sweep: sweep
      .filter((_, i) => i % 16 === 0)
      .map((pose) => ({
        driverAngle: pose.driver,
        angles: pose.angles,
        taut: pose.taut.filter(Boolean).length,
        driverMoment: pose.driverMoment,
      })),
  }
}

function check(si: Si): Issue[] {
  const { openAngle, foldedAngle, length } = si
  const found: Issue[] = []
  if (!(si.openAngle > si.foldedAngle))
    found.push(
      inconsistent(["openAngle"], "{openAngle angle °}", "more than foldedAngle, {foldedAngle angle °}", { openAngle, foldedAngle }),
    )
  if (si.driverAngle !== null && !(si.driverAngle >= si.foldedAngle && si.driverAngle <= si.openAngle))
    found.push(
      inconsistent(
        ["driverAngle"],
        "{driverAngle angle °}",
        "between foldedAngle, {foldedAngle angle °}, and openAngle, {openAngle angle °}",
        { driverAngle: si.driverAngle, foldedAngle, openAngle },
      ),
    )
  if (!(si.rootDistance < si.length))
    found.push(
      inconsistent(["rootDistance"], "{rootDistance length}", "less than length, {length length}", {
        rootDistance: si.rootDistance,
        length,
      }),
    )
  if (!(si.centre <= si.length))
    found.push(inconsistent(["centre"], "{centre length}", "at most length, {length length}", { centre: si.centre, length }))
  if (si.threads !== null && si.threads.length !== si.vanes - 1)
    found.push(
      inconsistent(["threads"], "{threads.length} threads", "one fewer than the {vanes} vanes", {
        "threads.length": si.threads.length,
        vanes: si.vanes,
      }),
    )
  const last = si.openAngle - si.span
  const rest = si.foldedAngle - (si.vanes - 1) * si.foldedStep
  if (si.threads === null && !(last >= rest))
    found.push(
      inconsistent(["span"], "{span angle °}", "at most {room angle °}, so that no vane opens below its stop", {
        span: si.span,
        room: openAngle - rest,
      }),
    )
  return found
}

/**
 * A fan of vanes (feathers, petals, panels) on pivots: the first is driven, each next one is pulled by its
 * neighbour through a thread and otherwise rests on its stop.
 *
 * Formula: vane i rests at θ_f − i·δ (folded angle θ_f, step δ) until the ends of its thread, at radius ρ on both vanes
 * and with pivots p apart, are as far apart as the thread is long; from then on the triangle pivot–thread end–thread
 * end gives its angle. For one shared pivot it trails by 2·asin(t/2ρ) at most, t the thread's length. An even spread
 * needs t = |A_{i−1} − A_i| with the vanes step = span/(n − 1) apart. Gap between facing edges at distance R from the
 * pivots where blades are w wide: 2R·sin(Δ/2) − w·cos(Δ/2) + p·sin(θ_m − ψ), Δ the angle between neighbours, θ_m their
 * mean, ψ the direction of the row of pivots; negative is overlap. Tensions follow from each vane's balance, last to
 * first: T_i·h_i = g·m·c·cos(θ_i + λ) + M_r + T_{i+1}·k_{i+1}, with h and k the thread's lever arms about the pulled
 * and the pulling vane, c pivot to centre of gravity, λ the lean and M_r the elastic return.
 *
 * Valid for slow opening, inextensible threads without friction and vanes that fall back by themselves;
 * `staysTaut` says whether they do. The driver turns counter-clockwise to open.
 *
 * Refuses: `thread-too-short` where a vane cannot follow.
 *
 * **Inputs**
 * - `vanes`: vanes [n_v; whole 2 to 60]
 * - `length`: pivot to tip [R; 1 mm to 10 m]
 * - `rootDistance`: pivot to the blade's root [R_0; 0 to 10 m; default 0]
 * - `rootWidth`: width at the root [w_0; 0 to 2 m]
 * - `tipWidth`: width at the tip [w_1; 0 to 2 m]
 * - `mass`: mass of one vane [m_v; 0 to 50 kg]
 * - `centre`: pivot to centre of gravity [c; 0 to 10 m]
 * - `pitch`: distance between pivots [p; 0 to 1 m; default 0]
 * - `pitchAngle`: direction of the row of pivots [psi; −401.07° to 401.07°; default 0]
 * - `attachRadius`: pivot to the thread's end [rho; 1 mm to 10 m]
 * - `foldedAngle`: driven vane folded [theta_f; −401.07° to 401.07°]
 * - `foldedStep`: each next vane rests lower by [delta; 0 to 28.6479°; default 0]
 * - `openAngle`: driven vane open [theta_o; −401.07° to 401.07°]
 * - `span`: first to last vane when open [sigma; 0.1° to 343.775°]
 * - `threads`: thread lengths [list of 1 to 59, each t_g, 0 to 10 m; optional]
 * - `driverAngle`: driven vane at [theta_d; −401.07° to 401.07°; optional]
 * - `returnMoment`: elastic return of each vane [M_r; 0 to 100 N m; default 0]
 * - `frameTilt`: lean of the wearer [lambda; −183.346° to 183.346°; default 0]
 * - `overlap`: overlap wanted at the tips [w_o; 0 to 1 m; default 0]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `step`: even step between vanes [alpha; rad]; `threads`: thread lengths [list, each
 * t, m]; `angles`: vane angles [list, each theta, rad]; `rootGaps`: root gaps [list, each m]; `tipGaps`: tip gaps
 * [list, each m]; `tensions`: thread tensions [list, each T, N]; `maxRootGap`: largest root gap [s_0; m]; `maxTipGap`:
 * largest tip gap [s_1; m]; `driverMoment`: moment at the driven vane [M_d; N m]; `peakDriverMoment`: largest driver
 * moment over the sweep [M_p; N m]; `peakDriverAngle`: driver angle of the largest moment [theta_p; rad]; `totalMass`:
 * mass of the fan [m_t; kg]; `fanMoment`: moment of the fan's weight [M_t; N m]; `staysTaut`: threads only pull [yes
 * or no]; `cover`: to cover the open span [group]; `sweep`: sweep of the driver [list].
 *
 * **Symbols of the working**
 *
 * g_n: standard gravity [m/s²]; theta_a: vanes that pull [rad]; theta_b: vanes that are pulled [rad]; t_a: thread
 * lengths [m]; k_t: 1 where the thread is taut; i_v: vanes counted from 0; d: distance of the thread's ends [m]; d_t:
 * the same, 1 m standing in where the thread is slack and has no part [m]; T_a: tensions, by balance from the last
 * vane to the first [N]; T_b: tension of the next thread [N]; h_a: lever arm about the pulled vane's pivot [m]; k_a:
 * lever arm about the pulling vane's pivot [m]; k_b: the next thread's [m]; G: weight and return of the pulled vanes
 * [N m]; j_p: number of that pose; M_j: moment of the first thread at that pose [N m].
 *
 * **Sources**
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, chapter 5 (equilibrium of a rigid body)
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `thread-too-short`
 * @example
 * ```ts
 * import { tetheredFan } from 'alula/linkage'
 * const fan = tetheredFan({
 *   vanes: 7,
 *   length: '600 mm',
 *   rootDistance: '80 mm',
 *   rootWidth: '40 mm',
 *   tipWidth: '120 mm',
 *   mass: '60 g',
 *   centre: '280 mm',
 *   attachRadius: '100 mm',
 *   foldedAngle: '-70 deg',
 *   openAngle: '60 deg',
 *   span: '90 deg',
 * })
 * fan.threads[0] // => 0.02611
 * fan.maxTipGap // => 0.03766
 * fan.cover.vanes // => 9
 * ```
 */
export const tetheredFan: Solver<TetheredFanInput, TetheredFan, TetheredFanRefusal, TetheredFanCaution> = /* @__PURE__ */ solver<
  TetheredFanInput,
  TetheredFan,
  TetheredFanRefusal,
  TetheredFanCaution,
  FanTrace
>("tetheredFan", "How a fan of vanes opens when each pulls the next by a thread", solve, () => ({
  input: {
    vanes: { kind: "number", symbol: "n_v", label: "vanes", whole: true, min: 2, max: 60, typical: [4, 12] },
    length: { kind: "length", symbol: "R", label: "pivot to tip", min: "1 mm", max: 10, typical: ["300 mm", "900 mm"] },
    rootDistance: {
      kind: "length",
      symbol: "R_0",
      label: "pivot to the blade's root",
      min: 0,
      max: 10,
      typical: ["20 mm", "100 mm"],
      default: 0,
    },
    rootWidth: { kind: "length", symbol: "w_0", label: "width at the root", min: 0, max: 2, typical: ["20 mm", "60 mm"] },
    tipWidth: { kind: "length", symbol: "w_1", label: "width at the tip", min: 0, max: 2, typical: ["60 mm", "200 mm"] },
    mass: { kind: "mass", symbol: "m_v", label: "mass of one vane", min: 0, max: 50, typical: ["20 g", "200 g"] },
    centre: { kind: "length", symbol: "c", label: "pivot to centre of gravity", min: 0, max: 10, typical: ["100 mm", "280 mm"] },
    pitch: { kind: "length", symbol: "p", label: "distance between pivots", min: 0, max: 1, typical: ["0 mm", "20 mm"], default: 0 },
    pitchAngle: {
      kind: "angle",
      symbol: "psi",
      label: "direction of the row of pivots",
      min: -7,
      max: 7,
      typical: ["-90 deg", "0 deg"],
      default: 0,
    },
    attachRadius: {
      kind: "length",
      symbol: "rho",
      label: "pivot to the thread's end",
      min: "1 mm",
      max: 10,
      typical: ["60 mm", "150 mm"],
    },
    foldedAngle: { kind: "angle", symbol: "theta_f", label: "driven vane folded", min: -7, max: 7, typical: ["-90 deg", "-60 deg"] },
    foldedStep: {
      kind: "angle",
      symbol: "delta",
      label: "each next vane rests lower by",
      min: 0,
      max: 0.5,
      typical: ["0 deg", "2 deg"],
      default: 0,
    },
    openAngle: { kind: "angle", symbol: "theta_o", label: "driven vane open", min: -7, max: 7, typical: ["30 deg", "70 deg"] },
    span: {
      kind: "angle",
      symbol: "sigma",
      label: "first to last vane when open",
      min: "0.1 deg",
      max: 6,
      typical: ["50 deg", "90 deg"],
    },
    threads: {
      kind: "list",
      label: "thread lengths",
      of: { kind: "length", symbol: "t_g", label: "thread", min: 0, max: 10, typical: ["10 mm", "60 mm"] },
      min: 1,
      max: 59,
      default: null,
    },
    driverAngle: {
      kind: "angle",
      symbol: "theta_d",
      label: "driven vane at",
      min: -7,
      max: 7,
      typical: ["-60 deg", "30 deg"],
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
    frameTilt: {
      kind: "angle",
      symbol: "lambda",
      label: "lean of the wearer",
      min: -3.2,
      max: 3.2,
      typical: ["-15 deg", "15 deg"],
      default: 0,
    },
    overlap: {
      kind: "length",
      symbol: "w_o",
      label: "overlap wanted at the tips",
      min: 0,
      max: 1,
      typical: ["0 mm", "20 mm"],
      default: 0,
    },
  },
  output: {
    transmits: { kind: "text", label: "transmits" },
    step: { kind: "angle", symbol: "alpha", label: "even step between vanes" },
    threads: { kind: "list", label: "thread lengths", of: { kind: "length", symbol: "t", label: "thread" } },
    angles: { kind: "list", label: "vane angles", of: { kind: "angle", symbol: "theta", label: "angle" } },
    rootGaps: { kind: "list", label: "root gaps", of: { kind: "length", label: "gap" } },
    tipGaps: { kind: "list", label: "tip gaps", of: { kind: "length", label: "gap" } },
    tensions: { kind: "list", label: "thread tensions", of: { kind: "force", symbol: "T", label: "tension" } },
    maxRootGap: { kind: "length", symbol: "s_0", label: "largest root gap" },
    maxTipGap: { kind: "length", symbol: "s_1", label: "largest tip gap" },
    driverMoment: { kind: "moment", symbol: "M_d", label: "moment at the driven vane" },
    peakDriverMoment: { kind: "moment", symbol: "M_p", label: "largest driver moment over the sweep" },
    peakDriverAngle: { kind: "angle", symbol: "theta_p", label: "driver angle of the largest moment" },
    totalMass: { kind: "mass", symbol: "m_t", label: "mass of the fan" },
    fanMoment: { kind: "moment", symbol: "M_t", label: "moment of the fan's weight" },
    staysTaut: { kind: "flag", label: "threads only pull" },
    cover: {
      kind: "group",
      label: "to cover the open span",
      fields: { vanes: { kind: "number", label: "vanes needed" }, tipGap: { kind: "length", label: "tip gap with them" } },
    },
    sweep: {
      kind: "list",
      label: "sweep of the driver",
      of: {
        kind: "group",
        label: "pose",
        fields: {
          driverAngle: { kind: "angle", label: "driven vane" },
          angles: { kind: "list", label: "vane angles", of: { kind: "angle", label: "angle" } },
          taut: { kind: "number", label: "taut threads" },
          driverMoment: { kind: "moment", label: "moment at the driven vane" },
        },
      },
    },
  },
  example: {
    vanes: 6,
    length: "600 mm",
    rootDistance: "80 mm",
    rootWidth: "40 mm",
    tipWidth: "130 mm",
    mass: "60 g",
    centre: "250 mm",
    pitch: "6 mm",
    pitchAngle: "-60 deg",
    attachRadius: "100 mm",
    foldedAngle: "-70 deg",
    foldedStep: "1 deg",
    openAngle: "60 deg",
    span: "80 deg",
    driverAngle: "30 deg",
    returnMoment: "20 mN m",
    frameTilt: "5 deg",
    overlap: "5 mm",
  },
  formulae: tetheredFanFormulae,
  sources: [equilibrium],
  check,
  cautions,
}))
