import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { carriedLoad, endurance, liftLimit, metabolicRate, reach, strapPressure, wearSchedule } from "../../src/worn/index.js"
import type { AnySolver } from "../helpers/solvers.js"
import { between } from "./draws.js"

const codes = (out: { readonly cautions: readonly { readonly code: string }[] }) => out.cautions.map((c) => c.code)
const stroll = { plan: [{ name: "stroll", activity: "walking", duration: 600, walkingSpeed: 0.5 }] } as const
const carry = (bodyMass: number, load: number, limit?: number) =>
  carriedLoad({
    bodyMass,
    rigMass: load,
    stature: 1.6,
    poses: [{ name: "one", forward: -0.1, up: 1.3 }],
    ...(limit === undefined ? {} : { shareLimit: limit }),
  })

describe("published share of body mass (Hall 2012: 15 %; American Academy of Pediatrics 2018: children 10 %)", () => {
  it("no schedule, however short and gentle, advises a heavier rig than that", () => {
    fc.assert(
      fc.property(between(36, 120), between(0.05, 1), between(60, 3600), (bodyMass, share, duration) => {
        const outcome = wearSchedule.attempt({
          bodyMass,
          rigMass: share * bodyMass,
          maxOxygenUptake: 60,
          plan: [{ name: "stroll", activity: "walking", duration, walkingSpeed: 0.5 }],
        })
        const most = (bodyMass < 45 ? 0.1 : 0.15) * bodyMass * (1 + 1e-12)
        if (!outcome.ok) {
          expect((outcome.error as NoSolutionError).nearest.rigMass ?? 0).toBeLessThanOrEqual(most)
          return
        }
        expect(outcome.value.maxRig.low?.rigMass ?? 0).toBeLessThanOrEqual(most)
        expect(outcome.value.maxRig.high?.rigMass ?? 0).toBeLessThanOrEqual(most)
      }),
      { numRuns: 200 },
    )
  })

  it("a 60 kg adult is advised 9 kg, not 54, and is told what limits it", () => {
    const day = wearSchedule({ bodyMass: 60, rigMass: 9, ...stroll })
    expect(day.maxRig.low?.rigMass).toBeCloseTo(0.15 * 60, 12)
    expect(day.maxRig.low?.boundBy).toBe("published share of body mass")
    const long = wearSchedule({ bodyMass: 60, rigMass: 9, plan: [{ name: "walk", activity: "walking", duration: 4200 }] })
    expect(long.maxRig.low?.boundBy).toBe("strain")
    expect(long.maxRig.low?.rigMass ?? 9).toBeLessThan(9)
  })

  it("a rig above it is never within the limits, whatever the schedule", () => {
    const at = (load: number) => wearSchedule({ bodyMass: 60, rigMass: load, ...stroll })
    expect([at(8.99).bearable, at(9.01).bearable]).toEqual([true, false])
    expect(at(9.01).firstLimit).toBeNull()
    expect(codes(at(9.01))).toContain("over-published-share")
  })

  it("a child gets a limit of a tenth of its mass, or a refusal that says why", () => {
    expect(carry(42, 0.13 * 42).massMargin).toBeLessThan(0)
    expect(carry(22, 2.3).massMargin).toBeLessThan(0)
    expect(carry(22, 2.1).massMargin).toBeGreaterThan(0)
    for (const solver of [metabolicRate, wearSchedule] as unknown as AnySolver[]) {
      const child = solver.attempt({ ...solver.example, bodyMass: 22 })
      if (child.ok || !(child.error instanceof NoSolutionError)) throw new Error("expected a refusal")
      expect(child.error.noSolution).toBe("outside-data")
      expect(child.error.message).toMatch(/adults/)
      expect(solver.attempt({ ...solver.example, ...child.error.nearest }).ok).toBe(true)
    }
  })

  it("a limit raised by hand silences nothing, one lowered by hand counts", () => {
    for (const limit of [0.151, 0.3, 1]) {
      const out = carry(60, 40, limit)
      expect(out.shareLimit).toBe(0.15)
      expect(codes(out)).toEqual(expect.arrayContaining(["over-limit", "limit-raised"]))
    }
    const low = carry(60, 8, 0.12)
    expect(low.massAtLimit).toBeCloseTo(7.2, 12)
    expect(codes(low)).toContain("over-limit")
    expect(codes(carry(60, 8))).not.toContain("over-limit")
  })
})

describe("pressure on the skin", () => {
  const base = { rigMass: 20, centreOffset: 0.12, strapWidth: 0.03 }
  it("a limit raised by hand silences nothing, one lowered by hand counts", () => {
    const [usual, raised] = [strapPressure(base), strapPressure({ ...base, pressureLimit: 90000 })]
    expect(usual.maxPressure).toBeLessThan(90000)
    expect(raised.utilisation).toBe(usual.utilisation)
    expect(raised.massAtLimit).toBe(usual.massAtLimit)
    expect(raised.suggestedWidth).toBe(usual.suggestedWidth)
    expect(codes(raised)).toEqual(expect.arrayContaining(["over-limit", "limit-raised"]))
    expect(strapPressure({ ...base, pressureLimit: 7000 }).utilisation).toBeCloseTo(2 * usual.utilisation, 12)
  })

  it("the belt is held to it too: 60 N on a radius of 150 mm press with 400 N/m over its width", () => {
    const belt = (beltWidth: number) => strapPressure({ rigMass: 2, centreOffset: 0.05, strapWidth: 0.08, beltWidth })
    // 400 N/m over 14 kPa is 28.57 mm
    expect(codes(belt(0.0285))).toContain("belt-over-limit")
    expect(codes(belt(0.0287))).not.toContain("belt-over-limit")
    expect([belt(0.0285).withinLimit, belt(0.0287).withinLimit]).toEqual([false, true])
    expect(belt(0.04).beltUtilisation).toBeCloseTo(10 / 14, 12)
  })

  it("every answer says that nothing lies across the throat, and at what pull it parts", () => {
    const throat = strapPressure(strapPressure.example).cautions.find((c) => c.code === "throat")
    expect(throat?.severity).toBe("warning")
    expect(throat?.message).toMatch(/throat.*parts by itself under a pull of 25 N/)
  })
})

describe("what a refusal offers as nearest has been tried: put back, it answers", () => {
  /** The input with a value at a dotted path. */
  const put = (input: unknown, path: string, value: number): unknown => {
    const [head, ...rest] = path.split(".") as [string, ...string[]]
    const there = (input as Record<string, unknown>)[head]
    const changed = rest.length ? put(there, rest.join("."), value) : value
    return Array.isArray(input) ? input.map((item, i) => (i === Number(head) ? changed : item)) : { ...(input as object), [head]: changed }
  }
  const holds = (solver: AnySolver, input: object): number => {
    const outcome = solver.attempt(input)
    if (outcome.ok) return 0
    const error = outcome.error as NoSolutionError
    expect(error).toBeInstanceOf(NoSolutionError)
    expect(error.shortBy).toBeGreaterThan(0)
    const nearest = Object.entries(error.nearest)
    for (const [path, value] of nearest) {
      const tried = solver.attempt(put(input, path, value))
      const said = tried.ok ? "" : tried.error.message
      expect(tried.ok, `${error.noSolution} ${JSON.stringify(input)} ${path} ${value} ${said}`).toBe(true)
    }
    return nearest.length ? 1 : 0
  }
  const swept = (solver: unknown, draws: fc.Arbitrary<object>, runs = 400) => {
    let offered = 0
    fc.assert(
      fc.property(draws, (input) => {
        offered += holds(solver as AnySolver, input)
      }),
      { numRuns: runs },
    )
    expect(offered).toBeGreaterThan(runs / 40)
  }

  it("strapPressure", () => {
    swept(
      strapPressure,
      fc.record({
        rigMass: between(1, 30),
        centreOffset: between(0.001, 1),
        strapWidth: fc.constant(0.06),
        upperAnchor: between(0.1, 0.9),
        lowerAnchor: between(-0.3, 0.4),
        upperAngle: between(0, 1.3),
        lowerAngle: between(0.2, 1.45),
        shoulderFriction: between(0, 1),
      }),
    )
  })

  it("carriedLoad", () => {
    const pose = fc.record({ name: fc.constant("one"), forward: between(-1, 1), left: between(-0.6, 0.6), up: between(0, 2) })
    swept(
      carriedLoad,
      fc.record({
        bodyMass: between(20, 120),
        stature: between(1.2, 2),
        rigMass: between(5, 150),
        footSpacing: between(0.05, 1.2),
        poses: fc.array(pose, { minLength: 1, maxLength: 3 }),
      }),
    )
  })

  it("wearSchedule", () => {
    swept(
      wearSchedule,
      fc.record({
        bodyMass: between(30, 120),
        rigMass: between(1, 60),
        maxOxygenUptake: between(10, 60),
        plan: fc.array(
          fc.oneof(
            fc.record({
              name: fc.constant("part"),
              activity: fc.constantFrom("walking", "stage"),
              duration: fc.constant(600),
              walkingSpeed: between(0, 2.5),
            }),
            fc.record({ name: fc.constant("part"), activity: fc.constant("standing"), duration: fc.constant(600) }),
          ),
          { minLength: 1, maxLength: 3 },
        ),
      }),
    )
  })

  it("reach", () => {
    swept(
      reach,
      fc.record({
        stature: between(1.2, 2),
        forward: between(-1, 1),
        outward: between(-1, 1),
        up: between(0, 2.5),
        reserve: between(0, 0.2),
      }),
    )
  })

  it("endurance and liftLimit", () => {
    swept(endurance, fc.record({ joint: fc.constant("elbow"), moment: between(0.1, 500), maxMoment: between(1, 600) }))
    swept(
      liftLimit,
      fc.record({
        rigMass: fc.constant(5),
        startHeight: between(0, 1.75),
        endHeight: between(0, 1.75),
        startReach: fc.constant(0.4),
        liftRate: between(0.2, 15),
        duration: fc.constantFrom("short", "medium", "long"),
      }),
    )
  })
})

describe("data of adults is said to be of adults", () => {
  const says = (out: { readonly cautions: readonly { readonly code: string; readonly message: string }[] }) =>
    out.cautions.some((c) => /child/.test(c.message) && /adult/.test(c.message))
  it("in endurance and liftLimit, whatever the input", () => {
    expect(says(endurance({ joint: "shoulder", effort: 0.5 }))).toBe(true)
    expect(says(liftLimit({ rigMass: 2, startHeight: 0.8, endHeight: 1, startReach: 0.3 }))).toBe(true)
  })
})
