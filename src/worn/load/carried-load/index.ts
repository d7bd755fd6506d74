import { type NoSolution, refuse, type SiOf, type Solver, solver } from "../../../solver/index.js"
import {
  centreHeight,
  isPart,
  type SegmentTable,
  segmentRows,
  segmentSources,
  segmentTables,
  upperBodies,
} from "../../body/data-segments.js"
import { CCIP_016, HALL, HONG, NIOSH_1981, PACE } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import { loadGuidance, muscleForce, publishedShare, walkingFactor } from "../data-load.js"
import { balance, GRAVITY, momentAbove } from "./balance.js"
import { carriedLoadCautions } from "./cautions.js"
import { carriedLoadSteps } from "./formulae.js"
import type { CarriedLoad, CarriedLoadCaution, CarriedLoadInput, CarriedLoadRefusal, Pose, PoseCarried } from "./types.js"

export type { CarriedLoad, CarriedLoadInput, GuidanceReading, PoseCarried, RigPose } from "./types.js"

/** Widest stance taken, m. */
const WIDEST_STANCE = 1.2
/** Harmonics of the steps that count, their peaks taken together. */
const harmonics = [1, 2, 3, 4] as const
const tables = Object.keys(segmentTables) as SegmentTable[]

/** Centre of mass of a standing body over stature, by Winter's table. */
const standingCentre = /* @__PURE__ */ segmentRows.winter
  .filter((r) => !isPart(r.name))
  .reduce((sum, r) => sum + r.count * r.mass * centreHeight(r), 0)

/** An offset below a picometre is none: smaller numbers only lose digits. */
const offset = (at: number) => (Math.abs(at) < 1e-12 ? 0 : at)

/** A billionth beyond the edge, so that rounding cannot refuse again what is offered as nearest. */
const BEYOND = 1e-9

/** The input with one pose changed. */
const withPose = (si: SiOf<CarriedLoadInput>, index: number, change: Partial<Pose>) => ({
  ...si,
  poses: si.poses.map((pose, i) => (i === index ? { ...pose, ...change } : pose)),
})

/** Refusal of the first pose that no lean balances or that tips over a foot; null where every pose stands. */
function unbalanced(si: SiOf<CarriedLoadInput>): NoSolution<CarriedLoadRefusal> | null {
  const { bodyMass, rigMass, footSpacing } = si
  const total = bodyMass + rigMass
  const stands = (changed: SiOf<CarriedLoadInput>) => unbalanced(changed) === null
  for (const [i, { name, up, left }] of si.poses.entries()) {
    const lacking = Math.max(...tables.map((table) => -momentAbove(si, table, up))) / rigMass
    if (!(lacking < 0)) {
      const higher = up + lacking + BEYOND
      return refuse(
        "cannot-balance",
        "In pose '{name}' the rig hangs so far below the hips that no lean of the trunk balances it: raise its centre by more than {shortBy length mm}, or hang it less heavily.",
        Math.max(lacking, BEYOND),
        { up },
        stands(withPose(si, i, { up: higher })) ? { [`poses.${i}.up`]: higher } : {},
        { name },
      )
    }
    const most = (footSpacing * total) / (2 * rigMass)
    if (!(Math.abs(left) <= most)) {
      const closer = Math.sign(left) * most * (1 - BEYOND)
      const wider = ((2 * rigMass * Math.abs(left)) / total) * (1 + BEYOND)
      return refuse(
        "tips-sideways",
        "In pose '{name}' the rig's centre is {shortBy length mm} too far off the middle: with the trunk upright the wearer tips over the foot. Bring it in or set the feet wider apart.",
        Math.abs(left) - most,
        { left },
        {
          ...(stands(withPose(si, i, { left: closer })) ? { [`poses.${i}.left`]: closer } : {}),
          ...(wider <= WIDEST_STANCE && stands({ ...si, footSpacing: wider }) ? { footSpacing: wider } : {}),
        },
        { name },
      )
    }
  }
  return null
}

function solve(si: SiOf<CarriedLoadInput>): CarriedLoad | NoSolution<CarriedLoadRefusal> {
  const { bodyMass, stature, rigMass, footSpacing } = si
  const refused = unbalanced(si)
  if (refused) return refused
  const total = bodyMass + rigMass
  const poses: PoseCarried[] = []
  const signed: number[] = []
  let residual = 0
  for (const pose of si.poses) {
    const { name, up } = pose
    const [forward, left] = [offset(pose.forward), offset(pose.left)]
    const found = tables.map((table) => balance(si, table, forward, up))
    const sideways = rigMass * left
    const leftShare = 0.5 + sideways / (total * footSpacing)
    const leans = found.map((b) => b.lean)
    const trunkLean = leans.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a))
    signed.push(...leans)
    residual = Math.max(residual, ...found.map((b) => b.residual))
    poses.push({
      name,
      trunkLean,
      minTrunkLean: leans.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a)),
      forward: (rigMass * forward) / total,
      left: sideways / total,
      up: (bodyMass * standingCentre * stature + rigMass * up) / total,
      hipMoment: -GRAVITY * rigMass * forward,
      backMoment: GRAVITY * rigMass * forward,
      backMomentLeaning: found.map((b) => b.backLeaning).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a)),
      sideMoment: GRAVITY * sideways,
      leftShare,
    })
  }
  const largest = (of: (p: PoseCarried) => number) => Math.max(...poses.map((p) => Math.abs(of(p))))
  const first = poses[0] as PoseCarried
  const backMomentLeaning = largest((p) => p.backMomentLeaning)
  const backMoment = Math.max(
    largest((p) => p.backMoment),
    backMomentLeaning,
  )
  const backForce = muscleForce([backMoment], [1], si.muscleLeverArm)
  const backMass = Math.max(...tables.map((t) => upperBodies[t].backMass))
  const maxTrunkLean = largest((p) => p.trunkLean)
  const published = publishedShare(bodyMass)
  const shareLimit = si.shareLimit === null ? published : Math.min(si.shareLimit, published)
  const massAtLimit = shareLimit * bodyMass
  return {
    massShare: rigMass / bodyMass,
    shareLimit,
    massAtLimit,
    massMargin: massAtLimit - rigMass,
    maxTrunkLean,
    trunkLeanRange: Math.max(...signed) - Math.min(...signed),
    hipMoment: largest((p) => p.hipMoment),
    backMoment,
    backMomentLeaning,
    backForce,
    backCompression: backForce + GRAVITY * (backMass * bodyMass + rigMass),
    sideMoment: largest((p) => p.sideMoment),
    maxFootShare: 0.5 + largest((p) => p.leftShare - 0.5),
    centreShift: Math.max(...poses.map((p) => Math.hypot(p.forward - first.forward, p.left - first.left))),
    centreRise: Math.max(...poses.map((p) => p.up)) - first.up,
    peakForce: GRAVITY * rigMass * harmonics.reduce<number>((sum, h) => sum + walkingFactor(h, h * si.stepRate), 1),
    maxLeanPose: (poses.find((p) => Math.abs(p.trunkLean) === maxTrunkLean) as PoseCarried).name,
    poses,
    guidance: loadGuidance.map(({ who, massShare }) => ({
      who,
      massShare,
      mass: massShare * bodyMass,
      exceeded: rigMass > massShare * bodyMass,
    })),
    residual,
  }
}

const loadSources = [...new Set([HALL, ...loadGuidance.map((g) => g.source)])]
const upright = { kind: "moment", unit: "N m" } as const

/**
 * What a rig does to the body that carries it, pose by pose: share of body mass, lean, moments, side load and shift.
 *
 * The wearer stands with the legs upright and leans the trunk at the hips by the angle φ that brings the weight above
 * the hips back over them: tan φ = −m·x / (f·M·h + m·z), with rig mass m whose centre is x ahead of and z above the
 * hips, body mass M, share f of it above the hips with its centre h above them (by de Leva for women and men and by
 * Winter: the largest lean of the three counts). No published law gives the lean for such loads; this is the balance
 * only. Hip moment, upright: m·g·x. Low back, leaning: g·[f_b·M·h_b·sin φ + m·(x·cos φ + (z − l)·sin φ)], l the joint
 * above the hips. Muscle pull: moment over `muscleLeverArm`. Feet: 1/2 ± m·y/((M + m)·s), y off the middle, stance s.
 * Walking peak: m·g·(1 + min(0.56, 0.41·(f_s − 0.95)) + 0.115 + 0.0564·f_s), four harmonics of the step rate f_s at
 * their worst together. The limit is 15 % of body mass (10 % below 45 kg), or `shareLimit` where that is lower; a higher one
 * never counts. Valid for standing and walking adults, rigid poses, no wind, 1 to 2.8 steps a second.
 *
 * **Inputs**
 * - `bodyMass`: body mass [m_w; 20 to 300 kg]
 * - `stature`: stature [H; 800 mm to 2.5 m]
 * - `rigMass`: rig mass [m_r; 10 g to 150 kg]
 * - `poses`: poses [list of 1 to 1000]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `forward`: forward of the hips [x; −3 to 3 m]
 *   - `left`: left of the middle [y; −3 to 3 m; default 0]
 *   - `up`: above the ground [z; 0 to 6 m]
 * - `shareLimit`: limit of the share of body mass [q_l; 0.01 to 1; optional]
 * - `stepRate`: step rate [f_s; 1 to 2.8 Hz; default 2 Hz]
 * - `muscleLeverArm`: lever arm of the back muscles [d_m; 30 to 100 mm; default 60 mm]
 * - `footSpacing`: between the feet [s; 50 mm to 1.2 m; default 200 mm]
 *
 * **Results**
 *
 * `massShare`: share of body mass [q; as a fraction]; `shareLimit`: limit that governs [q_a; as a fraction];
 * `massAtLimit`: mass at the limit [m_l; kg]; `massMargin`: mass margin [m_m; kg]; `maxTrunkLean`: maximum trunk lean
 * [phi; rad]; `trunkLeanRange`: change of trunk lean between poses [phi_d; rad]; `hipMoment`: moment about the hips,
 * upright [M_h; N m]; `backMoment`: moment about the low back [M_b; N m]; `backMomentLeaning`: moment about the low
 * back, leaning in balance [M_l; N m]; `backForce`: pull of the back muscles [F_b; N]; `backCompression`: compression
 * of the low back [F_c; N]; `sideMoment`: moment to one side [M_s; N m]; `maxFootShare`: maximum share on one foot
 * [q_f; as a fraction]; `centreShift`: shift of the common centre [d_c; m]; `centreRise`: rise of the common centre
 * [d_z; m]; `peakForce`: peak force while walking [F_p; N]; `maxLeanPose`: pose of the maximum lean [text]; `poses`:
 * poses [list]; `guidance`: published guidance [list]; `residual`: balance error [number].
 *
 * **Symbols of the working**
 *
 * g_0: standard gravity in m/s²; b_w: body mass in kg; b_r: rig mass in kg; b_h: stature in m; x_r: rig ahead of the
 * hips in m, pose by pose; y_r: rig left of the middle in m; z_r: rig above the ground in m; q_p: published share for
 * such a wearer; a_1: hip height over stature (de Leva 1996, women); f_1: share of body mass above the hips (de Leva
 * 1996, women); h_1: its centre above the hips over stature (de Leva 1996, women); l_1: low back above the hips over
 * stature (de Leva 1996, women); f_b_1: share of body mass above the low back (de Leva 1996, women); h_b_1: its centre
 * above the hips over stature (de Leva 1996, women); phi_1: lean that balances, pose by pose [rad]; B_1: moment about
 * the low back, leaning [N m]; a_2: hip height over stature (de Leva 1996, men); f_2: share of body mass above the
 * hips (de Leva 1996, men); h_2: its centre above the hips over stature (de Leva 1996, men); l_2: low back above the
 * hips over stature (de Leva 1996, men); f_b_2: share of body mass above the low back (de Leva 1996, men); h_b_2: its
 * centre above the hips over stature (de Leva 1996, men); phi_2: lean that balances, pose by pose [rad]; B_2: moment
 * about the low back, leaning [N m]; a_3: hip height over stature (Winter 2009, both sexes); f_3: share of body mass
 * above the hips (Winter 2009, both sexes); h_3: its centre above the hips over stature (Winter 2009, both sexes);
 * l_3: low back above the hips over stature (Winter 2009, both sexes); f_b_3: share of body mass above the low back
 * (Winter 2009, both sexes); h_b_3: its centre above the hips over stature (Winter 2009, both sexes); phi_3: lean that
 * balances, pose by pose [rad]; B_3: moment about the low back, leaning [N m]; phi_all: leans by all tables [rad];
 * B_all: low back, leaning, in N·m.
 *
 * **Sources**
 * - P. de Leva: Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters, J. Biomech. 29, 1996, table 4:
 *   masses, centres and radii
 * - P. de Leva: Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters, J. Biomech. 29, 1996, lengths of
 *   segments, the shank, mean stature of the samples (not verified against the document)
 * - D. A. Winter: Biomechanics and Motor Control of Human Movement, 4th, 2009, table 4.1
 * - R. Drillis, R. Contini: Body Segment Parameters, New York University report 1166-03 (reproduced by Winter, figure
 *   4.1), 1966, segment lengths as fractions of stature (not verified against the document)
 * - C. C. Gordon and others: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public files,
 *   NATICK/TR-15/007, 2014, statistics of every measured person: mean, sample standard deviation, 5th, 50th and 95th
 *   percentile, correlation with stature
 * - S. J. Hall: Basic Biomechanics, 6th, 2012, chapter 9: 15 % of body mass; problem 9.1: lever arm of the back
 *   muscles
 * - American Academy of Pediatrics; American Occupational Therapy Association: Backpack guidance for children: no more
 *   than 10 to 20 % of body mass, 2018
 * - US Army: ADP 3-90, Offense and Defense, 2019, soldier load
 * - US Army: FM 21-18, Foot Marches, 1990, chapter 5 (not verified against the document)
 * - Y. Hong, G.-P. Brueggemann: Gait and posture responses to backpack load during level walking in children, 2000,
 *   abstract: trunk lean unchanged to 15 %, raised at 20 %
 * - NIOSH: Work Practices Guide for Manual Lifting, publication 81-122, 1981, compression of the low back: 3400 N (not
 *   verified against the document)
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3,
 *   walking, design values (not verified against the document)
 * - A. Pachi, T. Ji: Frequency and velocity of people walking, The Structural Engineer 83(3), 2005, abstract: 2.0
 *   steps a second at 1.4 m/s on floors, 1.8 at 1.3 m/s on footbridges, 800 people unaware
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `cannot-balance` or `tips-sideways`, with the pose and the nearest place that stands
 * @example
 * ```ts
 * import { carriedLoad } from 'alula/worn'
 * const moth = carriedLoad({
 *   bodyMass: '60 kg', stature: '1.65 m', rigMass: '9 kg',
 *   poses: [
 *     { name: 'folded', forward: '-0.20 m', up: '1.20 m' },
 *     { name: 'raised', forward: '-0.24 m', up: '1.55 m' },
 *   ],
 * })
 * moth.massShare // => 0.15
 * moth.hipMoment // => 21.18
 * moth.maxLeanPose // => 'folded'
 * ```
 */
export const carriedLoad: Solver<CarriedLoadInput, CarriedLoad, CarriedLoadRefusal, CarriedLoadCaution> = /* @__PURE__ */ solver<
  CarriedLoadInput,
  CarriedLoad,
  CarriedLoadRefusal,
  CarriedLoadCaution
>("carriedLoad", "What the body has to hold, pose by pose", solve, () => ({
  input: {
    bodyMass: wearerFields.bodyMass,
    stature: wearerFields.stature,
    rigMass: wearerFields.rigMass,
    poses: {
      kind: "list",
      label: "poses",
      min: 1,
      max: 1000,
      of: {
        kind: "group",
        label: "pose",
        fields: {
          name: { kind: "text", label: "name", min: 1, max: 100 },
          forward: { kind: "length", symbol: "x", label: "forward of the hips", min: -3, max: 3, typical: [-0.4, 0.2] },
          left: { kind: "length", symbol: "y", label: "left of the middle", min: -3, max: 3, typical: [-0.05, 0.05], default: 0 },
          up: { kind: "length", symbol: "z", label: "above the ground", min: 0, max: 6, typical: [0.9, 1.8] },
        },
      },
    },
    shareLimit: {
      kind: "ratio",
      symbol: "q_l",
      label: "limit of the share of body mass",
      min: 0.01,
      max: 1,
      typical: [0.05, 0.3],
      default: null,
    },
    stepRate: wearerFields.stepRate,
    muscleLeverArm: {
      kind: "length",
      symbol: "d_m",
      label: "lever arm of the back muscles",
      min: "30 mm",
      max: "100 mm",
      typical: ["50 mm", "80 mm"],
      default: "60 mm",
    },
    footSpacing: {
      kind: "length",
      symbol: "s",
      label: "between the feet",
      min: 0.05,
      max: WIDEST_STANCE,
      typical: [0.15, 0.4],
      default: 0.2,
    },
  },
  output: {
    massShare: { kind: "ratio", symbol: "q", label: "share of body mass", unit: "%" },
    shareLimit: { kind: "ratio", symbol: "q_a", label: "limit that governs", unit: "%" },
    massAtLimit: { kind: "mass", symbol: "m_l", label: "mass at the limit" },
    massMargin: { kind: "mass", symbol: "m_m", label: "mass margin" },
    maxTrunkLean: { kind: "angle", symbol: "phi", label: "maximum trunk lean", unit: "°" },
    trunkLeanRange: { kind: "angle", symbol: "phi_d", label: "change of trunk lean between poses", unit: "°" },
    hipMoment: { ...upright, symbol: "M_h", label: "moment about the hips, upright" },
    backMoment: { ...upright, symbol: "M_b", label: "moment about the low back" },
    backMomentLeaning: { ...upright, symbol: "M_l", label: "moment about the low back, leaning in balance" },
    backForce: { kind: "force", symbol: "F_b", label: "pull of the back muscles" },
    backCompression: { kind: "force", symbol: "F_c", label: "compression of the low back" },
    sideMoment: { ...upright, symbol: "M_s", label: "moment to one side" },
    maxFootShare: { kind: "ratio", symbol: "q_f", label: "maximum share on one foot", unit: "%" },
    centreShift: { kind: "length", symbol: "d_c", label: "shift of the common centre" },
    centreRise: { kind: "length", symbol: "d_z", label: "rise of the common centre" },
    peakForce: { kind: "force", symbol: "F_p", label: "peak force while walking" },
    maxLeanPose: { kind: "text", label: "pose of the maximum lean" },
    poses: {
      kind: "list",
      label: "poses",
      of: {
        kind: "group",
        label: "pose",
        fields: {
          name: { kind: "text", label: "name" },
          trunkLean: { kind: "angle", label: "lean", unit: "°" },
          minTrunkLean: { kind: "angle", label: "minimum trunk lean of the tables", unit: "°" },
          forward: { kind: "length", label: "common centre forward of the hips" },
          left: { kind: "length", label: "common centre left of the middle" },
          up: { kind: "length", label: "common centre above the ground" },
          hipMoment: { ...upright, label: "hip moment, upright" },
          backMoment: { ...upright, label: "low-back moment, upright" },
          backMomentLeaning: { ...upright, label: "low-back moment, leaning" },
          sideMoment: { ...upright, label: "moment to the left" },
          leftShare: { kind: "ratio", label: "on the left foot", unit: "%" },
        },
      },
    },
    guidance: {
      kind: "list",
      label: "published guidance",
      of: {
        kind: "group",
        label: "guidance",
        fields: {
          who: { kind: "text", label: "who" },
          massShare: { kind: "ratio", label: "share", unit: "%" },
          mass: { kind: "mass", label: "mass" },
          exceeded: { kind: "flag", label: "exceeded" },
        },
      },
    },
    residual: { kind: "number", label: "balance error" },
  },
  example: {
    bodyMass: "60 kg",
    stature: "1.65 m",
    rigMass: "9 kg",
    poses: [
      { name: "folded", forward: "-0.20 m", up: "1.20 m" },
      { name: "raised", forward: "-0.24 m", left: "0.02 m", up: "1.55 m" },
    ],
  },
  formulae: carriedLoadSteps,
  sources: [...segmentSources, ...loadSources, HONG, NIOSH_1981, CCIP_016, PACE],
  cautions: carriedLoadCautions,
}))
