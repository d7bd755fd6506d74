import {
  bodyDimension,
  bodySegments,
  carriedLoad,
  endurance,
  liftLimit,
  metabolicRate,
  reach,
  strapPressure,
  wearSchedule,
} from "../../src/worn/index.js"
import type { CautionRow, Change, Edges } from "../helpers/edges.js"
import { loadNumbers } from "./numbers-load.js"

const always = (solver: unknown, code: string, severity: CautionRow["severity"]): CautionRow => ({
  solver,
  code,
  severity,
  shown: {},
  notShown: null,
})
const row = (solver: unknown, code: string, severity: CautionRow["severity"], shown: Change, notShown: Change): CautionRow => ({
  solver,
  code,
  severity,
  shown,
  notShown,
})

/** One pose of the rig. */
const pose = (forward: number, up: number, left = 0) => ({ poses: [{ name: "one", forward, left, up }] })
/** One walk with the rig on. */
const walk = (duration: number) => ({ plan: [{ name: "walk", activity: "walking", duration, walkingSpeed: 0.9 }] })
const twoPoses = (further: number) => ({
  poses: [
    { name: "a", forward: -0.1, up: 1.3 },
    { name: "b", forward: -further, up: 1.3 },
  ],
})
/** A child's body mass, and a little more. */
const child = (bodyMass: number) => ({ bodyMass })
const at = (ahead: number, aside: number, height: number, more: Change = {}) => ({ forward: ahead, outward: aside, up: height, ...more })

const carried: readonly CautionRow[] = [
  always(carriedLoad, "take-it-off", "warning"),
  always(carriedLoad, "lean-is-balance", "note"),
  // 15 % of 60 kg is 9 kg, 10 % of 40 kg is 4 kg
  row(carriedLoad, "over-limit", "warning", { rigMass: 9.02 }, { rigMass: 8.98 }),
  row(carriedLoad, "over-limit", "warning", { bodyMass: 40, rigMass: 4.01 }, { bodyMass: 40, rigMass: 3.99 }),
  row(carriedLoad, "limit-is-posture", "note", { rigMass: 8.98 }, { rigMass: 9.02 }),
  row(carriedLoad, "limit-raised", "warning", { shareLimit: 0.1505 }, { shareLimit: 0.1495 }),
  row(carriedLoad, "limit-raised", "warning", { bodyMass: 40, shareLimit: 0.1005 }, { bodyMass: 40, shareLimit: 0.0995 }),
  // tan 10° of lean; the same to the front
  row(carriedLoad, "large-lean", "warning", pose(-0.2955, 1.3), pose(-0.2935, 1.3)),
  row(carriedLoad, "large-lean", "warning", pose(0.2955, 1.3), pose(0.2935, 1.3)),
  row(carriedLoad, "near-tipping", "warning", pose(-0.847, 1.3), pose(-0.842, 1.3)),
  row(carriedLoad, "near-tipping", "warning", pose(0.847, 1.3), pose(0.842, 1.3)),
  row(
    carriedLoad,
    "near-tipping",
    "warning",
    { footSpacing: 1.2, ...pose(-0.1, 1.3, 1.087) },
    { footSpacing: 1.2, ...pose(-0.1, 1.3, 1.08) },
  ),
  row(
    carriedLoad,
    "near-tipping",
    "warning",
    { footSpacing: 1.2, ...pose(-0.1, 1.3, -1.087) },
    { footSpacing: 1.2, ...pose(-0.1, 1.3, -1.08) },
  ),
  row(carriedLoad, "sway-grows", "caution", { rigMass: 16 }, { rigMass: 15.95 }),
  // 5 % of 69 kg on a stance of 200 mm: 0.05 · 69 · 0.2 / 9 m
  row(carriedLoad, "lopsided", "caution", pose(-0.1, 1.3, 0.0769), pose(-0.1, 1.3, 0.0764)),
  row(carriedLoad, "lopsided", "caution", pose(-0.1, 1.3, -0.0769), pose(-0.1, 1.3, -0.0764)),
  row(carriedLoad, "back-compression", "warning", { rigMass: 40, muscleLeverArm: 0.0348 }, { rigMass: 40, muscleLeverArm: 0.0351 }),
  row(carriedLoad, "pose-changes-lean", "caution", twoPoses(0.243), twoPoses(0.241)),
  row(carriedLoad, "small-wearer", "warning", child(44.9), child(45)),
]

const body: readonly CautionRow[] = [
  always(bodyDimension, "army-sample", "note"),
  row(bodyDimension, "tail", "caution", { percentile: 0.0499 }, { percentile: 0.05 }),
  row(bodyDimension, "tail", "caution", { percentile: 0.9501 }, { percentile: 0.95 }),
  // correlations with stature of women: 0.688 and 0.722
  row(
    bodyDimension,
    "weak-correlation",
    "caution",
    { stature: 1.63, dimension: "ball-of-foot-length" },
    { stature: 1.63, dimension: "foot-length" },
  ),
  // 1628.47 ± 2.5 · 64.2 mm
  row(bodyDimension, "outside-range", "caution", { stature: 1.7895 }, { stature: 1.7885 }),
  row(bodyDimension, "outside-range", "caution", { stature: 1.4675 }, { stature: 1.4685 }),
  always(bodySegments, "means-of-samples", "note"),
  // body mass index of 30 and of 18.5 at 1.65 m
  row(bodySegments, "outside-range", "caution", { bodyMass: 81.7 }, { bodyMass: 81.6 }),
  row(bodySegments, "outside-range", "caution", { bodyMass: 50.3 }, { bodyMass: 50.4 }),
  row(bodySegments, "adults-only", "warning", { bodyMass: 39.9 }, { bodyMass: 40 }),
  row(bodySegments, "adults-only", "warning", { stature: 1.449 }, { stature: 1.45 }),
]

const work: readonly CautionRow[] = [
  always(metabolicRate, "take-it-off", "warning"),
  always(metabolicRate, "fit-adults", "note"),
  // the last range to be left is a load of 70 % of body mass
  row(metabolicRate, "outside-range", "warning", { rigMass: 42.1 }, { rigMass: 41.9 }),
  // the first one is a load of 20 %
  row(metabolicRate, "outside-range", "caution", { rigMass: 12.05 }, { rigMass: 11.95 }),
  row(metabolicRate, "outside-range", "caution", { rigMass: 41.9 }, { rigMass: 42.1 }),
  row(metabolicRate, "equations-disagree", "caution", { walkingSpeed: 1.027 }, { walkingSpeed: 1.032 }),
  row(metabolicRate, "small-wearer", "caution", { bodyMass: 49.9 }, { bodyMass: 50 }),
  // 1.34 N·m at 5 cm: 2.733 kg
  row(metabolicRate, "heavy-head", "warning", { headMass: 2.74 }, { headMass: 2.725 }),
  always(endurance, "take-it-off", "warning"),
  always(endurance, "to-exhaustion", "warning"),
  row(endurance, "low-effort", "caution", { effort: 0.1495 }, { effort: 0.15 }),
  // from a tenth on Sato's model joins, at half of the power law's time
  row(endurance, "models-disagree", "note", { joint: "general", effort: 0.1 }, { joint: "general", effort: 0.0995 }),
  // a third of 14.86 · 0.3^−1.83 s
  row(endurance, "hold-too-long", "warning", { holdDuration: 45 }, { holdDuration: 44.7 }),
  {
    ...row(endurance, "strength-varies", "note", { effort: undefined, moment: 30, maxMoment: 100 }, {}),
    apart: "given by moment and strength, or as a share",
  },
  always(liftLimit, "take-it-off", "warning"),
  always(liftLimit, "lifting-only", "warning"),
  always(liftLimit, "adults-only", "warning"),
  // 23 kg · 25/40 · (1 − 0.3 · 0.55) · (0.82 + 0.045/0.55) = 10.825 kg
  row(liftLimit, "over-limit", "warning", { rigMass: 10.84 }, { rigMass: 10.81 }),
  row(liftLimit, "lift-together", "caution", { rigMass: 10.84 }, { rigMass: 10.81 }),
  // three together: half of three times as much, 16.237 kg
  row(liftLimit, "lift-together", "caution", { rigMass: 16.23 }, { rigMass: 16.24 }),
  row(liftLimit, "too-heavy-for-three", "warning", { rigMass: 16.24 }, { rigMass: 16.23 }),
  row(liftLimit, "over-reference", "warning", { rigMass: 15.05 }, { rigMass: 15 }),
  row(liftLimit, "over-reference", "warning", { lifter: "men-adult", rigMass: 25.05 }, { lifter: "men-adult", rigMass: 25 }),
  row(liftLimit, "reach-under-25cm", "note", { startReach: 0.2495 }, { startReach: 0.25 }),
  row(liftLimit, "reach-under-25cm", "note", { endReach: 0.2495 }, { endReach: 0.25 }),
]

const straps: readonly CautionRow[] = [
  always(strapPressure, "take-it-off", "warning"),
  always(strapPressure, "throat", "warning"),
  always(strapPressure, "limit-not-settled", "note"),
  always(strapPressure, "skin-irritation", "note"),
  always(strapPressure, "belt-share-not-settled", "note"),
  row(strapPressure, "over-limit", "warning", { strapWidth: 0.0485 }, { strapWidth: 0.0489 }),
  // 60 N over 150 mm and 14 kPa: 28.57 mm
  row(strapPressure, "belt-over-limit", "warning", { beltWidth: 0.0285 }, { beltWidth: 0.0287 }),
  row(strapPressure, "limit-raised", "warning", { pressureLimit: 14010 }, { pressureLimit: 14000 }),
  // 30 % of 9 kg against 2π · 0.3 of the tension: 14.05 N
  row(strapPressure, "belt-slips", "warning", { beltTension: 14 }, { beltTension: 14.1 }),
  row(strapPressure, "hangs-back", "caution", { centreOffset: 0.1802 }, { centreOffset: 0.1793 }),
  row(strapPressure, "wider-than-tested", "caution", { rigMass: 14.82 }, { rigMass: 14.77 }),
  row(strapPressure, "belt-tension-untried", "note", { beltTension: 29.9 }, { beltTension: 30 }),
  row(strapPressure, "belt-tension-untried", "note", { beltTension: 120.1 }, { beltTension: 120 }),
]

const day: readonly CautionRow[] = [
  always(wearSchedule, "take-it-off", "warning"),
  always(wearSchedule, "recovery-assumed", "note"),
  row(wearSchedule, "not-bearable", "warning", walk(4290), walk(4255)),
  row(wearSchedule, "no-load-is-bearable", "warning", walk(4950), walk(4915)),
  row(wearSchedule, "more-rest-than-wear", "warning", { backMoment: 13.99 }, { backMoment: 13.87 }),
  row(wearSchedule, "over-share", "warning", { maxOxygenUptake: 32.9, ...walk(10000) }, { maxOxygenUptake: 33.1, ...walk(10000) }),
  row(wearSchedule, "over-share", "warning", { maxOxygenUptake: 21.7, ...walk(3500) }, { maxOxygenUptake: 21.85, ...walk(3500) }),
  row(
    wearSchedule,
    "gentle-work-extrapolated",
    "caution",
    { maxOxygenUptake: 36.4, ...walk(3500) },
    { maxOxygenUptake: 36.2, ...walk(3500) },
  ),
  row(wearSchedule, "back-left-out", "caution", {}, { backMoment: 10 }),
  // 15 % of 130 N·m
  row(wearSchedule, "back-extrapolated", "caution", { backMoment: 19.4 }, { backMoment: 19.5 }),
  row(wearSchedule, "over-published-share", "warning", { rigMass: 9.02 }, { rigMass: 8.98 }),
  row(wearSchedule, "over-published-share", "warning", { bodyMass: 40, rigMass: 4.01 }, { bodyMass: 40, rigMass: 3.99 }),
  row(wearSchedule, "small-wearer", "warning", child(44.9), child(45)),
]

const arm: readonly CautionRow[] = [
  always(reach, "not-a-clearance", "warning"),
  always(reach, "try-it-on", "caution"),
  row(reach, "out-of-sight", "warning", { forward: -0.001 }, { forward: 0 }),
  row(reach, "arm-raised", "caution", { forward: 0.4, up: 1.685 }, { forward: 0.4, up: 1.67 }),
  // 48 and 15 in above the floor
  row(reach, "seated-helper", "note", at(0.4, 0.25, 1.2197), at(0.4, 0.25, 1.2187)),
  row(
    reach,
    "seated-helper",
    "note",
    at(0.01, 0.1122, 0.3805, { stature: 1, reserve: 0 }),
    at(0.01, 0.1122, 0.3815, { stature: 1, reserve: 0 }),
  ),
  row(reach, "proportions", "warning", { stature: 1.399 }, { stature: 1.4 }),
]

/** Thresholds of everything said about carrying, lifting, wearing and reaching. */
export const edges: Edges = {
  cautions: [...carried, ...body, ...work, ...straps, ...day, ...arm],
  refusals: [
    {
      solver: carriedLoad,
      code: "cannot-balance",
      refused: { rigMass: 120, ...pose(-0.1, 0.78) },
      answered: { rigMass: 120, ...pose(-0.1, 0.785) },
    },
    // half of 69 kg times 200 mm over 9 kg: 766.7 mm
    { solver: carriedLoad, code: "tips-sideways", refused: pose(-0.1, 1.3, 0.768), answered: pose(-0.1, 1.3, 0.765) },
    { solver: carriedLoad, code: "tips-sideways", refused: pose(-0.1, 1.3, -0.768), answered: pose(-0.1, 1.3, -0.765) },
    { solver: metabolicRate, code: "outside-data", refused: { bodyMass: 35.9 }, answered: { bodyMass: 36 } },
    { solver: wearSchedule, code: "outside-data", refused: { bodyMass: 35.9 }, answered: { bodyMass: 36 } },
    {
      solver: endurance,
      code: "insufficient-strength",
      refused: { effort: undefined, moment: 60.3, maxMoment: 60 },
      answered: { effort: undefined, moment: 60, maxMoment: 60 },
    },
    {
      solver: liftLimit,
      code: "outside-data",
      refused: { startHeight: 0.7, liftRate: 12.05 },
      answered: { startHeight: 0.7, liftRate: 12 },
    },
    {
      solver: liftLimit,
      code: "outside-data",
      refused: { duration: "medium", liftRate: 12.05 },
      answered: { duration: "medium", liftRate: 12 },
    },
    {
      solver: liftLimit,
      code: "outside-data",
      refused: { duration: "long", liftRate: 10.05 },
      answered: { duration: "long", liftRate: 10 },
    },
    {
      solver: liftLimit,
      code: "outside-data",
      refused: { duration: "long", endHeight: 0.7, liftRate: 8.05 },
      answered: { duration: "long", endHeight: 0.7, liftRate: 8 },
    },
    {
      solver: liftLimit,
      code: "outside-data",
      refused: { duration: "medium", endHeight: 0.7, liftRate: 10.05 },
      answered: { duration: "medium", endHeight: 0.7, liftRate: 10 },
    },
    // (cos 35° · 0.42 m) / (sin 35° + sin 50°) = 256.8 mm
    { solver: strapPressure, code: "hangs-back", refused: { centreOffset: 0.258 }, answered: { centreOffset: 0.256 } },
    // e^(0.3 · 120°) · cos 50° · 0.2 m / cos 35° = 294.2 mm
    {
      solver: strapPressure,
      code: "cannot-balance",
      refused: { centreOffset: 0.005, lowerAnchor: -0.2, upperAnchor: 0.2935 },
      answered: { centreOffset: 0.005, lowerAnchor: -0.2, upperAnchor: 0.2949 },
    },
    { solver: wearSchedule, code: "insufficient-capacity", refused: { maxOxygenUptake: 14.3 }, answered: { maxOxygenUptake: 14.37 } },
    { solver: reach, code: "out-of-reach", refused: { forward: 0.652, up: 1.2 }, answered: { forward: 0.648, up: 1.2 } },
    { solver: reach, code: "too-close", refused: at(0.2067, 0.18, 1.29), answered: at(0.2087, 0.18, 1.29) },
    { solver: reach, code: "behind-the-shoulder", refused: at(-0.0992, 0.35, 0.95), answered: at(-0.0985, 0.35, 0.95) },
  ],
  faults: [
    { solver: endurance, path: "moment", faulty: { moment: 30 }, sound: {} },
    { solver: endurance, path: "maxMoment", faulty: { maxMoment: 30 }, sound: {} },
    { solver: endurance, path: "effort", faulty: { effort: undefined }, sound: {} },
    {
      solver: endurance,
      path: "maxMoment",
      faulty: { effort: undefined, moment: 30 },
      sound: { effort: undefined, moment: 30, maxMoment: 60 },
    },
    {
      solver: endurance,
      path: "moment",
      faulty: { effort: undefined, maxMoment: 60 },
      sound: { effort: undefined, moment: 30, maxMoment: 60 },
    },
    {
      solver: wearSchedule,
      path: "plan",
      faulty: { plan: [{ name: "rest", activity: "off", duration: 600 }] },
      sound: { plan: [{ name: "rest", activity: "sitting", duration: 600 }] },
    },
    {
      solver: wearSchedule,
      path: "plan",
      faulty: { plan: dayAndAbout(61) },
      sound: { plan: dayAndAbout(60) },
    },
    ...(["standing", "sitting", "off"] as const).map((activity) => ({
      solver: wearSchedule,
      path: "plan.1.walkingSpeed",
      faulty: { plan: walkThen(activity, 1e-9) },
      sound: { plan: walkThen(activity, 0) },
    })),
    {
      solver: wearSchedule,
      path: "plan.1.walkingSpeed",
      faulty: { plan: walkThen("standing", 0.5) },
      sound: { plan: walkThen("stage", 0.5) },
    },
    {
      solver: metabolicRate,
      path: "snowDepth",
      faulty: { terrain: "dirt-road", snowDepth: 0.1 },
      sound: { terrain: "soft-snow", snowDepth: 0.1 },
    },
  ],
  numbers: loadNumbers,
}

/** A walk, and then something at a speed. */
function walkThen(activity: string, speed: number): readonly object[] {
  return [
    { name: "way", activity: "walking", duration: 600 },
    { name: "square", activity, duration: 600, walkingSpeed: speed },
  ]
}

/** A day less a minute off, and so many seconds of standing about. */
function dayAndAbout(last: number): readonly object[] {
  return [
    { name: "off", activity: "off", duration: 43200 },
    { name: "off again", activity: "off", duration: 43140 },
    { name: "muster", activity: "standing", duration: last },
  ]
}
