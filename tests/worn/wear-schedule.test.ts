import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { metabolicRate, type WearScheduleInput, wearSchedule } from "../../src/worn/index.js"

interface Part {
  readonly name: string
  readonly activity: "standing" | "walking" | "stage" | "sitting" | "off"
  readonly duration: number
  readonly walkingSpeed: number
}
interface Day {
  readonly bodyMass: number
  readonly rigMass: number
  readonly backMoment: number | null
  readonly plan: readonly Part[]
}

const plan: readonly Part[] = [
  { name: "muster", activity: "standing", duration: 1500, walkingSpeed: 0 },
  { name: "procession", activity: "walking", duration: 4500, walkingSpeed: 0.9 },
  { name: "break", activity: "off", duration: 1800, walkingSpeed: 0 },
  { name: "dance", activity: "stage", duration: 900, walkingSpeed: 0.6 },
  { name: "bench", activity: "sitting", duration: 1200, walkingSpeed: 0 },
  { name: "way back", activity: "walking", duration: 2700, walkingSpeed: 1.1 },
]

/** Strain by small steps of time, from the formulae as printed, without the solver's own pieces. */
function stepped(day: Day, step: number, rest: { time: number; duration: number }[] = []) {
  const seated = (mass: number) => 1.220333 * mass
  const power = (30 * day.bodyMass * 5 * 4184) / 60000
  const back = day.backMoment === null ? 0 : 1 / ((1 / 3) * 22.69 * (day.backMoment / 130) ** -2.27)
  let [strain, peak, clock, reached] = [0, 0, 0, null as number | null]
  const ends: number[] = []
  const queue = rest.map((r) => ({ ...r }))
  for (const part of day.plan) {
    const walk = metabolicRate({
      bodyMass: day.bodyMass,
      rigMass: day.rigMass,
      walkingSpeed: part.activity === "standing" ? 0 : part.walkingSpeed,
    }).metabolicRate
    const rate = part.activity === "sitting" ? seated(day.bodyMass + day.rigMass) : part.activity === "stage" ? 1.5 * walk : walk
    const share = rate / power
    const published = share > 0.4 ? 60 * 2 ** ((0.5 - share) / 0.1) : 120 * 4 ** ((0.4 - share) / 0.07)
    const perSecond = Math.max(1 / ((1 / 3) * (7200 / share - 7020)), 1 / (60 * published), back)
    let left = part.duration
    while (left > 1e-9) {
      const pause = queue[0]
      if (pause && clock >= pause.time - 1e-6) {
        // a rest: fade by the implicit midpoint rule
        for (let t = 0; t < pause.duration - 1e-9; t += step) {
          const d = Math.min(step, pause.duration - t)
          strain *= (1 - d / 2 / 1333) / (1 + d / 2 / 1333)
        }
        clock += pause.duration
        queue.shift()
        continue
      }
      const d = Math.min(step, left, pause ? Math.max(pause.time - clock, 1e-9) : step)
      if (part.activity === "off") strain *= (1 - d / 2 / 1333) / (1 + d / 2 / 1333)
      else strain += d * perSecond
      clock += d
      left -= d
      peak = Math.max(peak, strain)
      if (reached === null && strain > 1) reached = clock
    }
    ends.push(strain)
  }
  return { ends, peak, reached, clock }
}

const cases: readonly Day[] = [
  { bodyMass: 60, rigMass: 6, backMoment: null, plan },
  { bodyMass: 60, rigMass: 9, backMoment: 12, plan },
  { bodyMass: 48, rigMass: 8, backMoment: 18, plan: plan.slice(1) },
  { bodyMass: 90, rigMass: 14, backMoment: 14, plan: [...plan, ...plan] },
]
const solved = (day: Day) => wearSchedule(day as WearScheduleInput)

describe("wearSchedule by second routes", () => {
  it("agrees with strain accumulated in steps of a second", () => {
    let worst = 0
    for (const day of cases) {
      const out = solved(day)
      const { ends, peak, reached } = stepped(day, 1)
      out.plan.forEach((p, i) => {
        worst = Math.max(worst, Math.abs(p.strain - (ends[i] as number)))
      })
      worst = Math.max(worst, Math.abs(out.peakStrain.high - peak))
      if (reached === null) expect(out.firstLimit).toBeNull()
      else expect(Math.abs(reached - (out.firstLimit?.time as number))).toBeLessThan(1)
    }
    expect(worst).toBeLessThan(2e-6)
  })

  it("the rests it lists keep the strain at its limit when the day is stepped through with them", () => {
    let withRests = 0
    for (const day of cases) {
      const out = solved(day)
      expect(out.rests.length).toBe(out.resting.count)
      const { peak, clock } = stepped(day, 0.5, [...out.rests])
      expect(peak).toBeLessThan(1.001)
      expect(Math.abs(clock - out.duration - out.resting.total)).toBeLessThan(1e-3)
      if (out.rests.length) {
        withRests++
        expect(peak).toBeGreaterThan(0.999)
        // leaving the last rest out goes over
        expect(stepped(day, 0.5, out.rests.slice(0, -1)).peak).toBeGreaterThan(1)
      } else expect(out.firstLimit).toBeNull()
    }
    expect(withRests).toBeGreaterThan(1)
  })

  it("more mass never gives longer wear, and never a smaller strain", () => {
    for (const moment of [null, 15])
      for (const bodyMass of [45, 60, 100]) {
        let before = {
          unbroken: Number.POSITIVE_INFINITY,
          after: Number.POSITIVE_INFINITY,
          worn: Number.POSITIVE_INFINITY,
          peak: 0,
          rests: 0,
        }
        for (let rigMass = 0.5; rigMass <= 0.5 * bodyMass; rigMass += 0.5) {
          const outcome = wearSchedule.attempt({ bodyMass, rigMass, plan, backMoment: moment === null ? null : (moment * rigMass) / 10 })
          if (!outcome.ok) {
            expect(outcome.error).toBeInstanceOf(NoSolutionError)
            break
          }
          const out = outcome.value
          const now = {
            unbroken: out.maxUnbrokenDuration,
            after: out.firstLimit?.time ?? Number.POSITIVE_INFINITY,
            worn: out.firstLimit?.wornDuration ?? Number.POSITIVE_INFINITY,
            peak: out.peakStrain.high,
            rests: out.resting.total,
          }
          expect(now.unbroken).toBeLessThanOrEqual(before.unbroken)
          expect(now.after).toBeLessThanOrEqual(before.after)
          expect(now.worn).toBeLessThanOrEqual(before.worn)
          expect(now.peak).toBeGreaterThanOrEqual(before.peak)
          expect(now.rests).toBeGreaterThanOrEqual(before.rests)
          before = now
        }
      }
  })

  it("the heaviest load makes the plan just stay within the limit, and a gram more does not", () => {
    let bound = 0
    const walk = (minutes: number) => ({
      bodyMass: 60,
      rigMass: 6,
      backMoment: null,
      plan: [{ ...(plan[1] as Part), duration: 60 * minutes }],
    })
    for (const day of [...cases, walk(66), walk(70), walk(75), walk(20)]) {
      const { low: maxRig } = solved(day).maxRig
      if (!maxRig) continue
      const at = (load: number) =>
        solved({ ...day, rigMass: load, backMoment: day.backMoment === null ? null : (day.backMoment / day.rigMass) * load })
      expect(at(maxRig.rigMass * (1 - 1e-9)).bearable).toBe(true)
      expect(at(maxRig.rigMass + 0.001).bearable).toBe(false)
      expect(maxRig.massShare).toBeCloseTo(maxRig.rigMass / day.bodyMass, 12)
      if (maxRig.boundBy !== "strain") continue
      bound++
      expect(Math.abs(maxRig.residual)).toBeLessThan(1e-9)
      expect(at(maxRig.rigMass).peakStrain.high).toBeCloseTo(1, 9)
    }
    expect(bound).toBeGreaterThan(1)
  })

  it("the lenient reading is never the stricter one", () => {
    for (const day of cases) {
      const out = solved(day)
      expect(out.peakStrain.low).toBeLessThanOrEqual(out.peakStrain.high)
      expect(out.maxRig.high?.rigMass ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(out.maxRig.low?.rigMass ?? 0)
    }
  })

  it("says so where not even an empty harness is bearable, and refuses what is beyond the capacity", () => {
    const long = wearSchedule({ bodyMass: 60, rigMass: 5, plan: [{ name: "all day", activity: "walking", duration: "12 h" }] })
    expect(long.maxRig.low).toBeNull()
    expect(long.cautions.map((c) => c.code)).toEqual(expect.arrayContaining(["no-load-is-bearable", "not-bearable", "over-share"]))
    const fast = wearSchedule.attempt({
      bodyMass: 60,
      rigMass: 30,
      plan: [{ name: "run", activity: "stage", duration: 600, walkingSpeed: 2 }],
    })
    if (fast.ok || !(fast.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    expect(fast.error.noSolution).toBe("insufficient-capacity")
    const maxOxygenUptake = fast.error.nearest.maxOxygenUptake as number
    const run = { bodyMass: 60, rigMass: 30, plan: [{ name: "run", activity: "stage" as const, duration: 600, walkingSpeed: 2 }] }
    expect(wearSchedule.attempt({ ...run, maxOxygenUptake }).ok).toBe(true)
    expect(wearSchedule.attempt({ ...run, maxOxygenUptake: 0.999 * maxOxygenUptake }).ok).toBe(false)
  })

  it("lists a hundred rests at most, counts them all, and says when there are more than wear", () => {
    const out = solved({ bodyMass: 90, rigMass: 14, backMoment: 30, plan: [...plan, ...plan] })
    expect(out.rests.length).toBe(100)
    expect(out.resting.count).toBeGreaterThan(100)
    expect(out.cautions.map((c) => c.code)).toContain("more-rest-than-wear")
  })

  it("asks for a quick release and stopping at pain in every answer", () => {
    const [first] = solved(cases[0] as Day).cautions
    expect(first?.message).toMatch(/not a medical or safety clearance/)
    expect(first?.message).toMatch(/Pain, numbness.*dizziness or breathlessness means take it off/)
    expect(first?.message).toMatch(/quick release/)
  })
})
