import { expect, it } from "vitest"
import { carriedLoad, liftLimit, metabolicRate, reach, strapPressure, wearSchedule } from "../../src/worn/index.js"

const degree = Math.PI / 180

it("defaults are those the documentation of each solver states", () => {
  const { stepRate, muscleLeverArm, footSpacing, shareLimit } = carriedLoad.read(carriedLoad.example)
  expect([stepRate, muscleLeverArm, footSpacing, shareLimit]).toEqual([2, 0.06, 0.2, null])
  const straps = strapPressure.read(strapPressure.example)
  expect([straps.upperAngle, straps.lowerAngle, straps.wrapAngle].map((a) => Math.round(a / degree))).toEqual([35, 50, 120])
  expect([straps.upperAnchor, straps.lowerAnchor, straps.shoulderRadius, straps.hipRadius, straps.beltWidth]).toEqual([
    0.42, 0, 0.06, 0.15, 0.06,
  ])
  expect([
    straps.beltShare,
    straps.beltTension,
    straps.beltFriction,
    straps.shoulderFriction,
    straps.heavierShoulderShare,
    straps.pressureLimit,
  ]).toEqual([0.3, 60, 0.3, 0.3, 0.65, 14000])
  const day = wearSchedule.read({ ...wearSchedule.example, plan: [{ name: "walk", activity: "walking", duration: 600 }] })
  expect([
    day.maxOxygenUptake,
    day.backStrength,
    day.stageFactor,
    day.workShare,
    day.recoveryTimeConstant,
    day.resumeStrain,
    day.plan[0]?.walkingSpeed,
  ]).toEqual([30, 130, 1.5, 1 / 3, 1333, 0.5, null])
  // a walked part without a speed is walked at 0.9 m/s, as the comment says; the others have none
  const plan = (speed?: number) => [
    { name: "way", activity: "walking" as const, duration: 600, ...(speed === undefined ? {} : { walkingSpeed: speed }) },
    { name: "stage", activity: "stage" as const, duration: 600, ...(speed === undefined ? {} : { walkingSpeed: speed }) },
  ]
  const rates = (speed?: number) => wearSchedule({ ...wearSchedule.example, plan: plan(speed) }).plan.map((p) => p.metabolicRate)
  expect(rates()).toEqual(rates(0.9))
  const lift = liftLimit.read(liftLimit.example)
  expect([lift.liftRate, lift.duration, lift.coupling, lift.lifter, lift.startTurn, lift.endTurn]).toEqual([
    0.2,
    "short",
    "fair",
    "anyone",
    0,
    0,
  ])
  const walk = metabolicRate.read({ bodyMass: 60 })
  expect([walk.rigMass, walk.walkingSpeed, walk.grade, walk.terrain, walk.snowDepth, walk.standingRate]).toEqual([0, 0, 0, "hard", 0, 1.05])
  expect(reach.read(reach.example).reserve).toBe(0.05)
})

it("lifting stays within what the equation covers (Waters and others 1994): reach 63 cm, hands 175 cm, turn 135°, 15 lifts a minute", () => {
  const ok = (change: object) => liftLimit.attempt({ rigMass: 5, startHeight: 1, endHeight: 1.2, startReach: 0.3, ...change }).ok
  for (const [name, most] of [
    ["startReach", 0.63],
    ["endReach", 0.63],
    ["startHeight", 1.75],
    ["endHeight", 1.75],
    ["startTurn", 135 * degree],
    ["endTurn", 135 * degree],
    ["liftRate", 15],
  ] as const)
    expect([ok({ [name]: most }), ok({ [name]: most * 1.001 })], name).toEqual([true, false])
})
