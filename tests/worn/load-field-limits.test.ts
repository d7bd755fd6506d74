import { expect, it } from "vitest"
import type { AnyFields } from "../../src/solver/index.js"
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
import { limitsOf } from "../helpers/field-limits.js"

const solvers = { bodyDimension, bodySegments, carriedLoad, endurance, liftLimit, metabolicRate, reach, strapPressure, wearSchedule }
/** 135° of turn in the lifting equation. */
const turn = (135 * Math.PI) / 180

/** The range each field is documented and answered for, and the default its comment names: changed only on purpose. */
const limits: Readonly<Record<keyof typeof solvers, readonly string[]>> = {
  bodyDimension: ["percentile: min 0.01, max 0.99", "stature: min 1.3, max 2.2, default null"],
  bodySegments: ["bodyMass: min 20, max 300", "stature: min 0.8, max 2.5", "table: default de-leva-female"],
  carriedLoad: [
    "bodyMass: min 20, max 300",
    "stature: min 0.8, max 2.5",
    "rigMass: min 0.01, max 150",
    "poses: min 1, max 1000",
    "poses.name: min 1, max 100",
    "poses.forward: min -3, max 3",
    "poses.left: min -3, max 3, default 0",
    "poses.up: min 0, max 6",
    "shareLimit: min 0.01, max 1, default null",
    // the step rates of CCIP-016, table 4.3, first harmonic
    "stepRate: min 1, max 2.8, default 2",
    "muscleLeverArm: min 30 mm, max 100 mm, default 60 mm",
    "footSpacing: min 0.05, max 1.2, default 0.2",
  ],
  endurance: [
    "effort: min 0.01, max 1, default null",
    "moment: min 0.1, max 500, default null",
    "maxMoment: min 1, max 600, default null",
    "holdDuration: min 1, max 86400, default null",
  ],
  // heights, reach, turn and lifts a minute: Waters and others 1994
  liftLimit: [
    "rigMass: min 0.01, max 150",
    "startHeight: min 0, max 1.75",
    "endHeight: min 0, max 1.75",
    "startReach: min 0.1, max 0.63",
    "endReach: min 0.1, max 0.63, default null",
    `startTurn: min 0, max ${turn}, default 0`,
    `endTurn: min 0, max ${turn}, default 0`,
    "liftRate: min 0.2, max 15, default 0.2",
    "duration: default short",
    "coupling: default fair",
    "lifter: default anyone",
  ],
  metabolicRate: [
    "bodyMass: min 20, max 300",
    "rigMass: min 0, max 150, default 0",
    "headMass: min 0, max 60, default 0",
    "handMass: min 0, max 60, default 0",
    "footMass: min 0, max 60, default 0",
    "walkingSpeed: min 0, max 2.5, default 0",
    // the grades of Looney and others 2019
    "grade: min -0.4, max 0.45, default 0",
    "terrain: default hard",
    "snowDepth: min 0, max 0.5, default 0",
    "standingRate: min 0.8, max 2, default 1.05",
  ],
  reach: [
    "stature: min 0.8, max 2.5",
    "forward: min -2, max 2",
    "outward: min -2, max 2",
    "up: min 0, max 4",
    "handling: default press",
    "reserve: min 0, max 0.5, default 0.05",
  ],
  strapPressure: [
    "rigMass: min 0.01, max 150",
    "centreOffset: min 1 mm, max 1 m",
    "upperAnchor: min 0.1 m, max 900 mm, default 0.42 m",
    "lowerAnchor: min -0.3 m, max 0.4 m, default 0",
    "upperAngle: min 0, max 75°, default 35°",
    "lowerAngle: min 10°, max 85°, default 50°",
    "beltShare: min 0, max 0.95, default 0.3",
    "beltTension: min 0, max 300, default 60",
    "beltFriction: min 0, max 1.5, default 0.3",
    "beltWidth: min 20 mm, max 300 mm, default 60 mm",
    "hipRadius: min 80 mm, max 300 mm, default 150 mm",
    "strapWidth: min 5 mm, max 200 mm",
    "shoulderRadius: min 20 mm, max 150 mm, default 60 mm",
    "wrapAngle: min 0, max 180°, default 120°",
    "shoulderFriction: min 0, max 1, default 0.3",
    "heavierShoulderShare: min 0.5, max 1, default 0.65",
    "pressureLimit: min 1000, max 100000, default 14000",
  ],
  wearSchedule: [
    "bodyMass: min 20, max 300",
    "rigMass: min 0.01, max 150",
    "plan: min 1, max 200",
    "plan.name: min 1, max 100",
    "plan.duration: min 60, max 12 h",
    "plan.walkingSpeed: min 0, max 2.5, default null",
    "maxOxygenUptake: min 10, max 90, default 30",
    "backMoment: min 0, max 500, default null",
    "backStrength: min 10, max 600, default 130",
    "stageFactor: min 1, max 4, default 1.5",
    `workShare: min 0.1, max 1, default ${1 / 3}`,
    "recoveryTimeConstant: min 10 min, max 6 h, default 1333",
    "resumeStrain: min 0.05, max 0.9, default 0.5",
  ],
}

it.each(Object.keys(solvers) as (keyof typeof solvers)[])("limits and defaults of %s", (name) => {
  expect(limitsOf(solvers[name].input as AnyFields)).toEqual(limits[name])
})
