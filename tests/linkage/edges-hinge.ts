import { problemOf } from "../../src/linkage/hinge/place-actuator/front.js"
import { searchPlacement } from "../../src/linkage/hinge/place-actuator/search.js"
import { hingeActuator, placeActuator, tetheredFan } from "../../src/linkage/index.js"
import type { Edges } from "../helpers/edges.js"

// biome-ignore lint/suspicious/noExplicitAny: the solver's input in SI
type Si = any

/** Rod length of a hinge's actuator for pivots q apart, its axis missing the base by the offset. */
const rod = (si: Si, q: number) => (q > si.axisOffset ? Math.sqrt(q * q - si.axisOffset ** 2) : 0)
const distance = (si: Si) => Math.hypot(si.fixedPivot.x - si.hinge.x, si.fixedPivot.y - si.hinge.y)
const shortest = (si: Si) => rod(si, Math.abs(distance(si) - si.movingPivot.radius))
const longest = (si: Si) => rod(si, distance(si) + si.movingPivot.radius)
const beyond = (si: Si) =>
  Math.max(shortest(si) + 1e-6 * longest(si) - si.retractedLength, si.retractedLength + si.stroke - longest(si) + 1e-6 * longest(si))
const deadPoint = (si: Si) => (si.retractedLength + si.stroke > longest(si) * (1 - 1e-6) ? longest(si) : shortest(si))

/** First of 33 even poses whose lever arm lies within the friction circle: angles by the law of cosines, lever by a difference. */
function locked(si: Si) {
  const [D, r, way] = [distance(si), si.movingPivot.radius, si.assembly === "clockwise" ? -1 : 1]
  const inner = (length: number) => Math.acos((D * D + r * r - length ** 2 - si.axisOffset ** 2) / (2 * D * r))
  const circle = (si.pinFriction * si.hingePinDiameter) / 2
  for (let i = 0; i <= 32; i++) {
    const extension = (si.stroke * i) / 32
    const length = si.retractedLength + extension
    // dL/dφ of L² = D² + r² − 2·D·r·cos φ − o²
    const lever = (D * r * Math.sin(inner(length))) / length
    const short = (circle * (1 + 1e-6) * Math.hypot(length, si.axisOffset)) / length - lever
    if (short > 0) {
      const base = Math.atan2(si.fixedPivot.y - si.hinge.y, si.fixedPivot.x - si.hinge.x) - si.movingPivot.angle
      const middle = base - 2 * Math.PI * Math.round(base / (2 * Math.PI))
      return { extension, lever: way * lever, arm: lever, circle, short, angle: middle + way * inner(length) }
    }
  }
  throw new Error("nowhere locked")
}

/** Most energy of the springs at 33 even poses. */
function springEnergy(si: Si): number {
  const [D, r, way] = [distance(si), si.movingPivot.radius, si.assembly === "clockwise" ? -1 : 1]
  let most = 0
  for (let i = 0; i <= 32; i++) {
    const length = si.retractedLength + (si.stroke * i) / 32
    const inner = Math.acos((D * D + r * r - length ** 2 - si.axisOffset ** 2) / (2 * D * r))
    const arm = Math.atan2(si.fixedPivot.y - si.hinge.y, si.fixedPivot.x - si.hinge.x) - si.movingPivot.angle + way * inner
    let sum = 0
    for (const s of si.springs ?? []) {
      const [x, y] = [si.hinge.x + s.radius * Math.cos(arm + s.angle), si.hinge.y + s.radius * Math.sin(arm + s.angle)]
      const stretch = Math.hypot(s.fixedPivot.x - x, s.fixedPivot.y - y) - s.freeLength
      if (!s.pullsOnly || stretch > 0) sum += s.preload * stretch + (s.stiffness * stretch * stretch) / 2
    }
    most = Math.max(most, sum)
  }
  return most
}

/** First pose of the fan (the chosen one, then 513 of the sweep) in which a vane cannot follow: triangles by the law of cosines. */
function jam(si: Si) {
  const { attachRadius: rho, pitch, pitchAngle: psi, vanes, span, openAngle, foldedAngle } = si
  const step = span / (vanes - 1)
  const between = (a: number, b: number) =>
    Math.hypot(rho * (Math.cos(a) - Math.cos(b)) - pitch * Math.cos(psi), rho * (Math.sin(a) - Math.sin(b)) - pitch * Math.sin(psi))
  const threads: number[] =
    si.threads ?? Array.from({ length: vanes - 1 }, (_, i) => between(openAngle - i * step, openAngle - (i + 1) * step))
  const drivers = [
    si.driverAngle ?? openAngle,
    ...Array.from({ length: 513 }, (_, i) => foldedAngle + ((openAngle - foldedAngle) * i) / 512),
  ]
  for (const driver of drivers) {
    let leader = driver
    for (let i = 1; i < vanes; i++) {
      const t = threads[i - 1] as number
      const rest = foldedAngle - i * si.foldedStep
      const [x, y] = [rho * Math.cos(leader) - pitch * Math.cos(psi), rho * Math.sin(leader) - pitch * Math.sin(psi)]
      const d = Math.hypot(x, y)
      const said = { driver, vane: i + 1, thread: t }
      if (Math.abs(d - rho) - t > -1e-6 * rho) return { ...said, short: Math.abs(d - rho) - t + 1e-6 * rho }
      if (d + rho <= t + 1e-6 * rho) {
        leader = rest
        continue
      }
      const half = Math.acos(Math.max(-1, Math.min(1, (d * d + rho * rho - t * t) / (2 * d * rho))))
      const to = leader + Math.atan2(Math.sin(Math.atan2(y, x) - leader), Math.cos(Math.atan2(y, x) - leader))
      if (rest > to + half) return { ...said, short: between(leader, rest) - t }
      leader = Math.max(rest, to - half)
    }
  }
  throw new Error("opens freely")
}

/** Distances of a region's farthest and nearest point from the hinge. */
const far = (r: Si, x = 0, y = 0) =>
  Math.max(...[r.left - x, r.right - x].flatMap((a) => [r.bottom - y, r.top - y].map((b) => Math.hypot(a, b))))
const near = (r: Si, x = 0, y = 0) => Math.hypot(Math.max(r.left - x, x - r.right, 0), Math.max(r.bottom - y, y - r.top, 0))
const reach = (si: Si) => far(si.fixedPivotRegion, si.hinge.x, si.hinge.y) + far(si.movingPivotRegion)
const clear = (si: Si) => Math.max(si.minDeadPointMargin, 1e-6 * (si.retractedLength + si.stroke))
const needed = (si: Si) => si.retractedLength + si.stroke + clear(si)
const apart = (si: Si) =>
  Math.max(
    near(si.fixedPivotRegion, si.hinge.x, si.hinge.y) - far(si.movingPivotRegion),
    near(si.movingPivotRegion) - far(si.fixedPivotRegion, si.hinge.x, si.hinge.y),
  )

// What a search found has no formula: place-actuator.test.ts holds the searches to brute force, and here the same searches
// say what their refusals must say.
const free = { force: Number.POSITIVE_INFINITY }
const anywhere = (si: Si) => ({ ...problemOf(si), lowFrom: -1.5 * Math.PI, lowTo: 1.5 * Math.PI })
const unlimited = (si: Si) => ({ ...anywhere(si), keepOut: null, minLever: 0, maxLever: 1e9, minTransmissionSine: 0, maxSwing: 1e9 })
const widest = (si: Si) => searchPlacement(unlimited(si), { ...free, objective: "max-swing", swing: 0, gap: 1e-4, budget: si.maxBoxes })
const kept = (si: Si) =>
  searchPlacement(problemOf(si), { ...free, objective: "max-swing", swing: 1e-3, gap: 1e-3, budget: si.maxBoxes }).best?.found.swing ?? 0
const outside = (si: Si) => {
  const { best } = searchPlacement(anywhere(si), {
    ...free,
    objective: "min-force",
    swing: si.swing,
    gap: si.gapLimit,
    budget: si.maxBoxes,
  })
  if (!best) throw new Error("nothing found")
  const { distance: D, radius: r, apart: stands, branch } = best.found
  const length = si.retractedLength + (branch === 1 ? 0 : si.stroke)
  const low = stands + branch * Math.acos((D * D + r * r - length * length) / (2 * D * r))
  return Math.max(si.lowAngle.from - low, low - si.lowAngle.to)
}
/** Most energy in the springs over 33 even arm angles of a placement's swing. */
const placedEnergy = (si: Si) => {
  const { lowAngle, swing } = placeActuator({ ...si, frontPoints: 0 })
  let most = 0
  for (let i = 0; i <= 32; i++) {
    let sum = 0
    for (const s of si.springs) {
      const arm = lowAngle + (swing * i) / 32 + s.angle
      const stretch =
        Math.hypot(s.fixedPivot.x - si.hinge.x - s.radius * Math.cos(arm), s.fixedPivot.y - si.hinge.y - s.radius * Math.sin(arm)) -
        s.freeLength
      if (!s.pullsOnly || stretch > 0) sum += s.preload * stretch + (s.stiffness * stretch * stretch) / 2
    }
    most = Math.max(most, sum)
  }
  return most
}
const least = (si: Si) =>
  searchPlacement(problemOf(si), { ...free, objective: "min-force", swing: si.swing, gap: si.gapLimit, budget: si.maxBoxes })
/** Bound of the least force, where need be from a search for a placement within the rating. */
const provenForce = (si: Si) => {
  const { best, bound } = least(si)
  if (!best || best.value <= si.ratedForce || bound > si.ratedForce) return bound
  const goal = { ...free, objective: "min-force", swing: si.swing, gap: 1e-9, budget: 8 * si.maxBoxes, enough: si.ratedForce } as const
  return Math.max(bound, searchPlacement(problemOf(si), goal, best.found).bound)
}

const place = { frontPoints: 0 }
const slackCord = { fixedPivot: { x: "-15 mm", y: "140 mm" }, radius: "70 mm", stiffness: "100 N/m" }
/** Pivots within a tenth of a millimetre, the rod between them passing the corner of a plate. */
const past = {
  ...place,
  swing: 1,
  maxBoxes: 1000,
  raisedBy: "extending",
  fixedPivotRegion: { left: -0.0061, right: -0.0059, bottom: -0.2141, top: -0.2139 },
  movingPivotRegion: { left: 0.0579, right: 0.0581, bottom: 0.0019, top: 0.0021 },
  keepOut: [
    {
      corners: [
        { x: 0.02, y: -0.2 },
        { x: 0.06, y: -0.2 },
        { x: 0.06, y: -0.15 },
        { x: 0.02, y: -0.15 },
      ],
    },
  ],
}
const wide = { ...place, minTransmissionAngle: 0, ratedForce: 1e6, maxBoxes: 2000, gapLimit: 0.05 }
const low = { ...place, raisedBy: "extending", ratedForce: 1e6, maxBoxes: 2000, gapLimit: 0.05 }
const locks = { pinFriction: 1 }
// what the thresholds of the holding force were worked out for
const still = { loadFactor: 1, gustForce: 0 }

export const edges: Edges = {
  cautions: [
    {
      solver: hingeActuator,
      code: "falls-unpowered",
      severity: "warning",
      shown: { ...still, holdingForce: 155 },
      notShown: { ...still, holdingForce: 155.3 },
    },
    {
      solver: hingeActuator,
      code: "thin-holding-margin",
      severity: "caution",
      shown: { ...still, holdingForce: 310 },
      notShown: { ...still, holdingForce: 310.5 },
    },
    {
      solver: hingeActuator,
      code: "thin-holding-margin",
      severity: "caution",
      shown: { ...still, holdingForce: 155.3 },
      notShown: { ...still, holdingForce: 155 },
    },
    {
      solver: hingeActuator,
      code: "holding-unknown",
      severity: "caution",
      shown: { ...still, holdingForce: null },
      notShown: { ...still, holdingForce: 155 },
    },
    {
      solver: hingeActuator,
      code: "stored-energy",
      severity: "warning",
      shown: { springs: [{ fixedPivot: { x: -0.06, y: 0.12 }, radius: 0.08, stiffness: 1e-3, freeLength: 0.07 }] },
      notShown: { springs: [{ fixedPivot: { x: -0.06, y: 0.12 }, radius: 0.08, stiffness: 0, freeLength: 0.07 }] },
    },
    {
      solver: hingeActuator,
      code: "poor-transmission",
      severity: "caution",
      shown: { retractedLength: 0.204 },
      notShown: { retractedLength: 0.2041 },
    },
    {
      solver: hingeActuator,
      code: "near-dead-point",
      severity: "caution",
      shown: { retractedLength: 0.1989 },
      notShown: { retractedLength: 0.199 },
    },
    // the same at the far end: 0.8 mm short of the longest length
    {
      solver: hingeActuator,
      code: "near-dead-point",
      severity: "caution",
      shown: { retractedLength: 0.2674 },
      notShown: { retractedLength: 0.2673 },
    },
    {
      solver: hingeActuator,
      code: "side-load",
      severity: "caution",
      shown: { axisOffset: 0, endPinDiameter: 1e-3 },
      notShown: { axisOffset: 0, endPinDiameter: 0 },
    },
    {
      solver: hingeActuator,
      code: "side-load",
      severity: "caution",
      shown: { axisOffset: 1e-3, pinFriction: 0 },
      notShown: { axisOffset: 0, pinFriction: 0 },
    },
    {
      solver: placeActuator,
      code: "gap-not-closed",
      severity: "caution",
      shown: { ...place, maxBoxes: 40 },
      notShown: { ...place, maxBoxes: 4000 },
      apart: "the search is not steady in its number of boxes",
    },
    {
      solver: placeActuator,
      code: "poor-transmission",
      severity: "caution",
      shown: { ...place, minTransmissionAngle: "29.8 deg" },
      notShown: { ...place, minTransmissionAngle: "30.01 deg" },
    },
    {
      solver: placeActuator,
      code: "near-dead-point",
      severity: "caution",
      shown: { ...wide, minDeadPointMargin: 0, swing: 2.338 },
      notShown: { ...wide, minDeadPointMargin: 0, swing: 2.325 },
    },
    {
      solver: placeActuator,
      code: "stored-energy",
      severity: "warning",
      shown: { ...place, springs: [{ ...slackCord, freeLength: "60 mm" }] },
      notShown: { ...place, springs: [{ ...slackCord, freeLength: "600 mm" }] },
      apart: "a cord that never comes taut",
    },
    {
      solver: placeActuator,
      code: "thin-margin",
      severity: "caution",
      shown: { ...place, ratedForce: 190.5 },
      notShown: { ...place, ratedForce: 190.7 },
    },
    {
      solver: tetheredFan,
      code: "vanes-fall-forward",
      severity: "warning",
      shown: { returnMoment: 0, openAngle: "150 deg", driverAngle: null },
      notShown: { returnMoment: 0, openAngle: "120 deg", driverAngle: null },
      apart: "where a vane tips over depends on every other",
    },
    { solver: tetheredFan, code: "gaps-at-tips", severity: "note", shown: { tipWidth: 0.1913 }, notShown: { tipWidth: 0.1914 } },
    { solver: tetheredFan, code: "short-threads", severity: "note", shown: { pitch: 0, span: 0.25 }, notShown: { pitch: 0, span: 0.2501 } },
  ],
  refusals: [
    { solver: hingeActuator, code: "dead-point", refused: { retractedLength: 0.1981 }, answered: { retractedLength: 0.1982 } },
    { solver: hingeActuator, code: "dead-point", refused: { retractedLength: 0.2682 }, answered: { retractedLength: 0.2681 } },
    {
      solver: hingeActuator,
      code: "dead-point",
      refused: { assembly: "clockwise", retractedLength: 0.1981 },
      answered: { assembly: "clockwise", retractedLength: 0.1982 },
    },
    { solver: hingeActuator, code: "cannot-close", refused: { retractedLength: 0.3082 }, answered: { retractedLength: 0.3081 } },
    { solver: hingeActuator, code: "cannot-close", refused: { retractedLength: 0.1581 }, answered: { retractedLength: 0.1582 } },
    {
      solver: hingeActuator,
      code: "jammed",
      refused: { ...locks, hingePinDiameter: 0.0748 },
      answered: { ...locks, hingePinDiameter: 0.0746 },
    },
    {
      solver: hingeActuator,
      code: "jammed",
      refused: { ...locks, assembly: "clockwise", hingePinDiameter: 0.0748 },
      answered: { ...locks, assembly: "clockwise", hingePinDiameter: 0.0746 },
    },
    {
      solver: placeActuator,
      code: "regions-too-near",
      refused: { ...place, retractedLength: 0.4 },
      answered: { ...place, retractedLength: 0.3975 },
      noNearest: "an actuator so long that only the far corners reach it fits no other limit either",
    },
    {
      solver: placeActuator,
      code: "regions-too-far",
      refused: {
        ...place,
        retractedLength: 0.05,
        fixedPivotRegion: { left: 0.201, right: 0.3, bottom: 0, top: 0.1 },
        movingPivotRegion: { left: 0, right: 0.1529, bottom: 0, top: 0 + 1e-6 },
      },
      answered: {
        ...place,
        retractedLength: 0.0504,
        fixedPivotRegion: { left: 0.201, right: 0.3, bottom: 0, top: 0.1 },
        movingPivotRegion: { left: 0, right: 0.1529, bottom: 0, top: 0 + 1e-6 },
      },
      noNearest: "a longer actuator in these regions still misses the swing",
    },
    {
      solver: placeActuator,
      code: "insufficient-swing",
      refused: { ...wide, swing: 2.37 },
      answered: { ...wide, swing: 2.36 },
    },
    {
      solver: placeActuator,
      code: "low-end-out-of-range",
      refused: { ...low, lowAngle: { from: 1.475, to: 1.8 } },
      answered: { ...low, lowAngle: { from: 1.465, to: 1.8 } },
    },
    {
      solver: placeActuator,
      code: "parts-in-the-way",
      refused: { ...past, actuatorWidth: "11.7 mm" },
      answered: { ...past, actuatorWidth: "11.6 mm" },
    },
    {
      solver: placeActuator,
      code: "limits-exclude-all",
      refused: { ...place, maxBoxes: 2000, gapLimit: 0.05, minTransmissionAngle: 1.07 },
      answered: { ...place, maxBoxes: 2000, gapLimit: 0.05, minTransmissionAngle: 1.0664 },
    },
    {
      solver: placeActuator,
      code: "insufficient-force",
      refused: { ...place, ratedForce: 126 },
      answered: { ...place, ratedForce: 127.2 },
    },
    {
      solver: placeActuator,
      code: "no-candidate",
      refused: { ...place, maxBoxes: 10, swing: 1.4 },
      answered: { ...place, maxBoxes: 4000, swing: 1.4 },
      apart: "the search is not steady in its number of boxes",
    },
    {
      solver: placeActuator,
      code: "undecided",
      refused: { ...place, maxBoxes: 20, ratedForce: 127 },
      answered: { ...place, maxBoxes: 20, ratedForce: 127.1 },
    },
    {
      solver: tetheredFan,
      code: "thread-too-short",
      refused: { threads: [0.03, 0.03, 0.006, 0.03, 0.03] },
      answered: { threads: [0.03, 0.03, 0.00601, 0.03, 0.03] },
    },
  ],
  faults: [
    {
      solver: hingeActuator,
      path: "fixedPivot",
      faulty: { fixedPivot: { x: 0, y: 0.9e-6 } },
      sound: { fixedPivot: { x: 0, y: 1.1e-6 } },
      apart: "a tenth of a micrometre",
    },
    { solver: hingeActuator, path: "extension", faulty: { extension: 0.0401 }, sound: { extension: 0.04 } },
    ...(["fixedPivotRegion", "movingPivotRegion"] as const).flatMap((region) => {
      const box = { left: -0.1, right: 0.02, bottom: -0.28, top: -0.05 }
      return [
        {
          solver: placeActuator,
          path: `${region}.right`,
          faulty: { ...place, [region]: { ...box, right: -0.1 } },
          sound: { ...place, [region]: { ...box, right: -0.0991 } },
        },
        {
          solver: placeActuator,
          path: `${region}.top`,
          faulty: { ...place, [region]: { ...box, top: -0.28 } },
          sound: { ...place, [region]: { ...box, top: -0.2781 } },
        },
      ]
    }),
    {
      solver: placeActuator,
      path: "lowAngle.to",
      faulty: { ...place, lowAngle: { from: -1.2, to: -1.21 } },
      sound: { ...place, lowAngle: { from: -1.2, to: -1.2 } },
    },
    {
      solver: placeActuator,
      path: "lowAngle.to",
      faulty: { ...place, lowAngle: { from: -1.2, to: 5.09 } },
      sound: { ...place, lowAngle: { from: -1.2, to: 5.08 } },
    },
    { solver: placeActuator, path: "maxSwing", faulty: { ...place, maxSwing: "59.9 deg" }, sound: { ...place, maxSwing: "60 deg" } },
    {
      solver: placeActuator,
      path: "maxLever",
      faulty: { ...place, minLever: 0.02, maxLever: 0.02 },
      sound: { ...place, minLever: 0.02, maxLever: 0.0201 },
    },
    {
      solver: placeActuator,
      path: "masses",
      faulty: { ...place, masses: [{ mass: 0, radius: 0.5 }] },
      sound: { ...place, masses: [{ mass: 1e-3, radius: 0.5 }] },
    },
    {
      solver: tetheredFan,
      path: "openAngle",
      faulty: { openAngle: "-70 deg", threads: [0.03, 0.03, 0.03, 0.03, 0.03], driverAngle: null },
      sound: { openAngle: "-69.9 deg", threads: [0.03, 0.03, 0.03, 0.03, 0.03], driverAngle: null },
    },
    { solver: tetheredFan, path: "driverAngle", faulty: { driverAngle: "60.1 deg" }, sound: { driverAngle: "60 deg" } },
    { solver: tetheredFan, path: "driverAngle", faulty: { driverAngle: "-70.1 deg" }, sound: { driverAngle: "-70 deg" } },
    { solver: tetheredFan, path: "rootDistance", faulty: { rootDistance: 0.6 }, sound: { rootDistance: 0.599 } },
    { solver: tetheredFan, path: "centre", faulty: { centre: 0.601 }, sound: { centre: 0.6 } },
    {
      solver: tetheredFan,
      path: "threads",
      faulty: { threads: [0.03, 0.03, 0.03, 0.03] },
      sound: { threads: [0.03, 0.03, 0.03, 0.03, 0.03] },
    },
    // vanes open no lower than their stops: 60° − span ≥ −70° − 5·1°
    { solver: tetheredFan, path: "span", faulty: { span: "135.1 deg" }, sound: { span: "134.9 deg" } },
  ],
  numbers: {
    "hingeActuator.stored-energy.energy": springEnergy,
    "placeActuator.stored-energy.energy": placedEnergy,
    "placeActuator.parts-in-the-way.shortBy": (si) => si.swing - kept(si),
    ...Object.fromEntries(
      ["cannot-close", "dead-point"].flatMap((code) => [
        [`hingeActuator.${code}.shortBy`, beyond],
        [`hingeActuator.${code}.at.minLength`, shortest],
        [`hingeActuator.${code}.at.maxLength`, longest],
        [`hingeActuator.${code}.at.extended`, (si: Si) => si.retractedLength + si.stroke],
      ]),
    ),
    "hingeActuator.dead-point.at.deadPoint": deadPoint,
    "hingeActuator.dead-point.at.extension": (si) => Math.min(si.stroke, Math.max(0, deadPoint(si) - si.retractedLength)),
    "hingeActuator.jammed.shortBy": (si) => locked(si).short,
    "hingeActuator.jammed.at.extension": (si) => locked(si).extension,
    "hingeActuator.jammed.at.angle": (si) => locked(si).angle,
    "hingeActuator.jammed.at.lever": (si) => locked(si).lever,
    "hingeActuator.jammed.at.frictionRadius": (si) => locked(si).circle,
    "hingeActuator.jammed.arm": (si) => locked(si).arm,
    "placeActuator.regions-too-near.shortBy": (si) => needed(si) - reach(si),
    "placeActuator.regions-too-near.at.reach": reach,
    "placeActuator.regions-too-near.at.needed": needed,
    "placeActuator.regions-too-far.shortBy": (si) => apart(si) - (si.retractedLength - clear(si)),
    "placeActuator.regions-too-far.at.apart": apart,
    "placeActuator.regions-too-far.at.room": (si) => si.retractedLength - clear(si),
    "placeActuator.insufficient-swing.shortBy": (si) => si.swing - (widest(si).best?.found.swing ?? 0),
    "placeActuator.insufficient-swing.at.maxSwing": (si) => Math.min(si.swing, Math.max(0, -widest(si).bound)),
    "placeActuator.low-end-out-of-range.shortBy": outside,
    "placeActuator.limits-exclude-all.shortBy": (si) => si.swing - kept(si),
    ...Object.fromEntries(
      ["insufficient-force", "undecided"].flatMap((code) => [
        [`placeActuator.${code}.shortBy`, (si: Si) => (least(si).best?.value as number) - si.ratedForce],
        [`placeActuator.${code}.at.peakForce`, (si: Si) => least(si).best?.value as number],
        [`placeActuator.${code}.at.forceBound`, provenForce],
      ]),
    ),
    "placeActuator.no-candidate.shortBy": (si) => si.swing,
    "placeActuator.no-candidate.at.maxBoxes": (si) => least(si).explored,
    "tetheredFan.thread-too-short.shortBy": (si) => jam(si).short,
    "tetheredFan.thread-too-short.at.driverAngle": (si) => jam(si).driver,
    "tetheredFan.thread-too-short.at.vane": (si) => jam(si).vane,
    "tetheredFan.thread-too-short.at.thread": (si) => jam(si).thread,
    "tetheredFan.short-threads.shortest": (_, out) => Math.min(...out.threads),
    "tetheredFan.threads.threads.length": (si) => si.threads.length,
    "tetheredFan.span.room": (si) => si.openAngle - si.foldedAngle + (si.vanes - 1) * si.foldedStep,
  },
}
