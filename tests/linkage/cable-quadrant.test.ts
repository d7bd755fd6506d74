import { describe, expect, it } from "vitest"
import { type CableQuadrantInput, cableQuadrant, cableQuadrantPicture, poseSvg, poseText } from "../../src/linkage/index.js"
import { derivative } from "./difference.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

type Numbers = { readonly [K in Exclude<keyof CableQuadrantInput, "returnedBy" | "masses">]-?: number }
type Quadrant = Numbers & {
  readonly masses: readonly { mass: number; radius: number; angle: number }[]
  readonly returnedBy:
    | { type: "spring"; radius: number; springRate: number }
    | { type: "cable"; radius: number; stiffness: number; wrap: number; rimAngle: number }
}

function quadrantOf(random: ReturnType<typeof lehmer>, type: "spring" | "cable"): Quadrant {
  const travel = random.real(0.3, 1.6)
  return {
    radius: random.real(0.03, 0.08),
    startAngle: random.real(-1.2, 0.8),
    travel,
    wrap: travel + random.real(0.1, 1),
    cableStiffness: random.real(2e4, 2e5),
    pretension: random.real(20, 200),
    returnedBy:
      type === "spring"
        ? { type, radius: random.real(0.03, 0.08), springRate: random.real(100, 1000) }
        : { type, radius: random.real(0.03, 0.08), stiffness: random.real(2e4, 2e5), wrap: 0.3, rimAngle: travel + 0.6 },
    masses: [
      { mass: random.real(0.1, 1), radius: random.real(0.1, 0.5), angle: random.real(-0.3, 0.3) },
      { mass: random.real(0.05, 0.3), radius: random.real(0.3, 0.9), angle: random.real(-0.3, 0.3) },
    ],
    frameTilt: random.real(-0.3, 0.3),
    loadMoment: random.real(-0.3, 0.5),
    opposingMoment: random.real(0, 0.3),
    pinFriction: random.real(0, 0.3),
    pinDiameter: random.real(0.003, 0.01),
    tipRadius: random.real(0.3, 1.2),
  }
}

/** Height energy of the masses, by where they are. */
const potential = (si: Quadrant, q: number) =>
  si.masses.reduce((sum, { mass, radius, angle }) => sum + 9.80665 * mass * radius * Math.sin(q + angle + si.frameTilt), 0) +
  si.loadMoment * q
const load = (si: Quadrant, q: number) => derivative((d) => [potential(si, q + d)], 1e-4)[0] as number

/**
 * Tensions at an angle by halving: the quadrant is turned against the held drive until its moments balance, each cable pulling by how
 * far it is stretched from its slack length, the pivot rubbing under all pulls.
 */
function balanced(si: Quadrant, q: number, sense: 1 | -1): [number, number] {
  const back = si.returnedBy
  const weight = 9.80665 * si.masses.reduce((sum, m) => sum + m.mass, 0)
  const other0 = back.type === "cable" ? (si.pretension * si.radius) / back.radius : 0
  const pulls = (give: number): [number, number] => [
    si.pretension + si.cableStiffness * si.radius * give,
    back.type === "spring"
      ? si.pretension + back.springRate * back.radius * (q - si.startAngle)
      : other0 - back.stiffness * back.radius * give,
  ]
  const moment = load(si, q)
  const surplus = (give: number) => {
    const [one, two] = pulls(give)
    const rub = ((si.pinFriction * si.pinDiameter) / 2) * (one + two + weight) + si.opposingMoment
    return one * si.radius - two * back.radius - moment - sense * rub
  }
  let [low, high] = [-2, 2]
  for (let k = 0; k < 70; k++) {
    const middle = (low + high) / 2
    if (surplus(middle) < 0) low = middle
    else high = middle
  }
  return pulls(low)
}

describe("against energies and stretched cables", () => {
  it("pulls at every pose what balances the arm, turning and coming back, with a spring and with two cables", () => {
    for (const type of ["spring", "cable"] as const) {
      const random = lehmer(type === "spring" ? 31 : 32)
      let met = 0
      for (let k = 0; k < 40; k++) {
        const si = quadrantOf(random, type)
        const outcome = cableQuadrant.attempt(si)
        const all: number[] = []
        const fine = 100
        for (let i = 0; i <= fine; i++)
          for (const sense of [1, -1] as const) all.push(...balanced(si, si.startAngle + (si.travel * i) / fine, sense))
        const taut = Math.min(...all)
        if (Math.abs(taut) > 0.01) expect(outcome.ok, `${type} ${k}`).toBe(taut > 0)
        if (!outcome.ok) continue
        met++
        const out = outcome.value
        const ones = all.filter((_, i) => i % 2 === 0)
        const twos = all.filter((_, i) => i % 2 === 1)
        for (const [told, found] of [
          [out.openingTension.high, Math.max(...ones)],
          [out.openingTension.low, Math.min(...ones)],
          [out.returningTension.high, Math.max(...twos)],
          [out.returningTension.low, Math.min(...twos)],
        ] as const)
          expect(Math.abs(told - found)).toBeLessThan(2e-3 * out.openingTension.high)
        for (const pose of [out.poses[0], out.poses[17], out.poses[60]] as (typeof out.poses)[number][]) {
          const [turn, back] = [balanced(si, pose.angle, 1), balanced(si, pose.angle, -1)]
          expect(pose.openingTension).toBeCloseTo(turn[0], 4)
          expect(pose.springOpening).toBeCloseTo(turn[1], 4)
          expect(pose.returningTension).toBeCloseTo(back[0], 4)
          expect(pose.springReturning).toBeCloseTo(back[1], 4)
          expect(pose.loadMoment).toBeCloseTo(load(si, pose.angle), 6)
          expect(pose.cableTravel).toBeCloseTo(si.radius * (pose.angle - si.startAngle), 12)
        }
        const loads = Array.from({ length: 401 }, (_, i) => load(si, si.startAngle + (si.travel * i) / 400))
        expect(out.loadMoment.high).toBeCloseTo(Math.max(...loads), 3)
        expect(out.loadMoment.low).toBeCloseTo(Math.min(...loads), 3)
      }
      expect(met, type).toBeGreaterThan(15)
    }
  })

  it("loses going up and down what the pivot and the opposing moment rub away, and gives the rest back", () => {
    const random = lehmer(33)
    let met = 0
    for (let k = 0; k < 40; k++) {
      const si = quadrantOf(random, k % 2 ? "spring" : "cable")
      const outcome = cableQuadrant.attempt(si)
      if (!outcome.ok) continue
      met++
      const { poses } = outcome.value
      const area = (of: (pose: (typeof poses)[number]) => number) =>
        poses.slice(1).reduce((sum, pose, i) => {
          const before = poses[i] as (typeof poses)[number]
          return sum + ((of(pose) + of(before)) / 2) * (pose.angle - before.angle)
        }, 0)
      const rho = (si.pinFriction * si.pinDiameter) / 2
      const weight = 9.80665 * si.masses.reduce((sum, m) => sum + m.mass, 0)
      const lifted = potential(si, si.startAngle + si.travel) - potential(si, si.startAngle)
      const up = area((p) => si.opposingMoment + rho * (p.openingTension + p.springOpening + weight))
      const down = area((p) => si.opposingMoment + rho * (p.returningTension + p.springReturning + weight))
      expect(Math.abs(area((p) => p.openingMoment) - lifted - up)).toBeLessThan(1e-3)
      expect(Math.abs(area((p) => p.returningMoment) - lifted + down)).toBeLessThan(1e-3)
    }
    expect(met).toBeGreaterThan(15)
  })

  it("needs the pretension at which the loosest cable hangs without pull, tried on either side of it", () => {
    const random = lehmer(34)
    let met = 0
    for (let k = 0; k < 60; k++) {
      const si = { ...quadrantOf(random, k % 2 ? "spring" : "cable"), pretension: 5000 }
      const { requiredPretension } = cableQuadrant(si)
      if (requiredPretension < 1) continue
      met++
      expect(cableQuadrant.attempt({ ...si, pretension: requiredPretension * 1.0001 }).ok).toBe(true)
      const refusal = refusalOf(cableQuadrant.attempt({ ...si, pretension: requiredPretension * 0.99 }))
      expect(refusal.shortBy).toBeCloseTo(requiredPretension * 0.01, 6)
      expect(Object.keys(refusal.nearest)).toEqual(["pretension"])
      expect(cableQuadrant.attempt({ ...si, ...refusal.nearest }).ok).toBe(true)
    }
    expect(met).toBeGreaterThan(25)
  })
})

describe("rims, stiffness and play", () => {
  const si = cableQuadrant.read(cableQuadrant.example) as unknown as Quadrant & { returnedBy: { type: "cable" } }

  it("unwinds one rim and winds the other by the travel", () => {
    const out = cableQuadrant(si)
    expect(out.wrapLeft).toBeCloseTo((60 * Math.PI) / 180, 12)
    expect(out.rimLeft).toBeCloseTo((120 * Math.PI) / 180, 12)
    expect(out.cableTravel).toBeCloseTo(0.05 * (Math.PI / 3), 12)
    expect(cableQuadrant({ ...si, returnedBy: { ...si.returnedBy, radius: 0.04 } }).returnTravel).toBeCloseTo(0.04 * (Math.PI / 3), 12)
    const spring = cableQuadrant({ ...si, returnedBy: { type: "spring", radius: 0.05, springRate: 500 } })
    expect(spring.rimLeft).toBeNull()
    const off = refusalOf(cableQuadrant.attempt({ ...si, wrap: 1 }))
    expect(off.noSolution).toBe("runs-off-rim")
    expect(off.shortBy).toBeCloseTo(Math.PI / 3 - 1, 12)
    expect(Object.keys(off.nearest)).toEqual(["travel", "wrap"])
  })

  it("gives under a load as two springs on its rims, the drive held", () => {
    const out = cableQuadrant({ ...si, tipRadius: 0.5 })
    // 60 N/mm on each of two 50 mm rims
    expect(out.rotationalStiffness).toBeCloseTo(2 * 60000 * 0.05 ** 2, 9)
    expect(out.tipDeflection).toBeCloseTo((0.5 * (out.loadMoment.high - out.loadMoment.low + 0.2)) / 300, 12)
    expect(out.storedEnergy).toBeCloseTo((out.openingTension.high ** 2 + out.returningTension.high ** 2) / 120000, 12)
    expect(out.inertia).toBeCloseTo(0.6 * 0.25 ** 2 + 0.2 * 0.65 ** 2, 12)
    expect(cableQuadrant({ ...si, tipRadius: null }).tipDeflection).toBeNull()
  })
})

it("draws the arm, both cables and the pivot", () => {
  const si = cableQuadrant.read(cableQuadrant.example)
  const picture = cableQuadrantPicture(si)
  const arm = picture.lines.find((line) => line.label === "arm")?.points.at(-1) as { x: number; y: number }
  // 30° up and 5° of lean, 800 mm out
  expect(arm.x).toBeCloseTo(0.8 * Math.cos((35 * Math.PI) / 180), 12)
  expect(arm.y).toBeCloseTo(0.8 * Math.sin((35 * Math.PI) / 180), 12)
  expect(picture.lines.filter((line) => line.style === "element").map((line) => line.label)).toEqual(["opening cable", "second cable"])
  expect(poseSvg(picture).match(/<circle /g)).toHaveLength(1)
  expect(poseText(picture)).toContain("~")
})
