import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { integrate, type OdeOptions, type OdeProblem } from "../../src/numeric/ode/index.js"
import { between } from "./numbers.js"
import { oscillator, pendulum, problem, vanDerPol } from "./ode-problems.js"

const of = (...y: number[]) => Float64Array.from(y)
type Events = NonNullable<OdeProblem["events"]>
const watched = (what: OdeProblem, values: (t: number, y: readonly number[]) => readonly number[], directions?: Events["directions"]) => ({
  ...what,
  events: {
    count: values(0, new Array<number>(what.size).fill(0)).length,
    values: (t: number, y: Float64Array, g: Float64Array) => g.set(values(t, Array.from(y))),
    ...(directions && { directions }),
  },
})
/** Steps of one size: all errors are allowed. */
const evenly = (h: number, method: "explicit" | "stiff"): OdeOptions => ({
  firstStep: h,
  maxStep: h,
  relative: 0.1,
  absolute: 1e3,
  method,
})

describe("accuracy", () => {
  // orders as printed by Hairer, Nørsett and Wanner: the steps 8 and 5, their dense outputs 7 and 3 (one more in one step)
  it.each<[method: "explicit" | "stiff", order: number, dense: number, h: number]>([
    ["explicit", 8, 8, 1],
    ["stiff", 5, 4, 0.1],
  ])("%s is of order %d at the ends of steps and leaves h^%d between", (method, order, dense, h) => {
    const errors = (step: number) => {
      let between = 0
      const out = of(0, 0)
      const { y } = integrate(oscillator(), 0, of(1, 0), 8, evenly(step, method), (ta, tb, at) => {
        if (ta > 0) return
        at(ta + 0.3 * (tb - ta), out)
        between = Math.abs((out[0] as number) - Math.cos(ta + 0.3 * (tb - ta)))
      })
      return [Math.hypot((y[0] as number) - Math.cos(8), (y[1] as number) + Math.sin(8)), between] as const
    }
    const [coarse, fine] = [errors(h), errors(h / 2)]
    expect(Math.log2(coarse[0] / fine[0])).toBeGreaterThan(order - 0.4)
    expect(Math.log2(coarse[0] / fine[0])).toBeLessThan(order + 1)
    expect(Math.log2(coarse[1] / fine[1])).toBeGreaterThan(dense - 0.4)
  })

  it.each(["explicit", "stiff"] as const)("%s: errors follow the tolerance, ends and between, and steps join", (method) => {
    for (const relative of [1e-5, 1e-8, 1e-11]) {
      let [worst, joint] = [0, 0]
      const out = of(0, 0)
      const run = integrate(oscillator(), 0, of(1, 0), 20, { method, relative, absolute: relative }, (ta, tb, at) => {
        expect(ta).toBe(joint)
        joint = tb
        for (let i = 0; i <= 8; i++) {
          const t = ta + ((tb - ta) * i) / 8
          at(t, out)
          worst = Math.max(worst, Math.abs((out[0] as number) - Math.cos(t)))
        }
      })
      expect(joint).toBe(20)
      expect(Math.abs((run.y[0] as number) - Math.cos(20))).toBeLessThan(20 * relative)
      // the polynomial of the stiff steps is of order 3: between its steps errors are larger
      expect(worst).toBeLessThan((method === "stiff" ? 400 : 20) * relative)
    }
  })

  it("keeps the energy of a pendulum over fifty swings, and comes back the way it went", () => {
    const energy = ([a, w]: Float64Array) => (w as number) ** 2 / 2 - 9.81 * Math.cos(a as number)
    const start = of(2, 0)
    const there = integrate(pendulum(9.81), 0, start, 100)
    expect(Math.abs(energy(there.y) - energy(start))).toBeLessThan(2e-6 * 9.81)
    const back = integrate(pendulum(9.81), 10, integrate(pendulum(9.81), 0, start, 10).y, 0)
    expect(Math.hypot((back.y[0] as number) - 2, back.y[1] as number)).toBeLessThan(1e-5)
  })
})

describe("stiffness", () => {
  // Prothero and Robinson: the solution is cos t whatever the rate
  const toCosine = (rate: number) => problem(1, ([y], t) => [-rate * ((y as number) - Math.cos(t)) - Math.sin(t)])
  it("changes to the stiff method where stability would set the step", () => {
    const run = integrate(toCosine(1e6), 0, of(1), 10)
    expect(Math.abs((run.y[0] as number) - Math.cos(10))).toBeLessThan(1e-7)
    expect(run.stiffSteps).toBeGreaterThan(0)
    expect(run.calls).toBeLessThan(2000)
    // without it: steps of 6/10⁶ at the most
    expect(integrate(toCosine(1e6), 0, of(1), 10, { method: "explicit", maxCalls: 50_000 }).stop.kind).toBe("too-many-calls")
  })
  it("and back where it does not", () => {
    // the rate dies away: stiff for the first third of the time only, an oscillation of 20/s sets the step then
    const fading = problem(3, ([y, x, v], t) => {
      const rate = 1e6 * Math.exp(-3 * t)
      return [-rate * ((y as number) - Math.cos(t)) - Math.sin(t), v as number, -400 * (x as number)]
    })
    const [auto, stiff] = (["auto", "stiff"] as const).map((method) => integrate(fading, 0, of(1, 1, 0), 12, { method, relative: 1e-10 }))
    expect(auto?.stiffSteps).toBeGreaterThan(10)
    expect(auto?.stiffSteps).toBeLessThan((stiff?.steps as number) / 2)
    expect(auto?.calls).toBeLessThan((stiff?.calls as number) * 0.75)
    expect(Math.abs((auto?.y[0] as number) - Math.cos(12))).toBeLessThan(1e-8)
    expect(Math.abs((auto?.y[1] as number) - Math.cos(240))).toBeLessThan(1e-6)
  })
  it("is not taken for it where accuracy sets the step", () => {
    expect(integrate(pendulum(9.81), 0, of(2, 0), 60).stiffSteps).toBe(0)
  })
  it("takes van der Pol's relaxation at 10⁻⁶ in a number of slopes that the published codes need", () => {
    // Hairer and Wanner II, IV.10: some thousands at such tolerances
    expect(integrate(vanDerPol(1e-6), 0, of(2, 0), 2, { relative: 1e-6, absolute: 1e-6 }).calls).toBeLessThan(6000)
  })
})

describe("events", () => {
  it("bounces a ball as its closed form says, and never below the floor", () => {
    const [g, kept] = [9.81, 0.8]
    const ball = watched(
      problem(2, ([, v]) => [v as number, -g]),
      (_, [h]) => [h as number],
      [-1],
    )
    let [t, y] = [0, of(1, 0)]
    let due = 0
    for (let bounce = 0; bounce < 12; bounce++) {
      const run = integrate(ball, t, y, 100)
      due += (bounce === 0 ? 1 : 2) * kept ** bounce * Math.sqrt(2 / g)
      expect(run.stop).toEqual({ kind: "event", event: 0 })
      expect(Math.abs(run.t - due)).toBeLessThan(1e-12)
      expect(run.y[0]).toBeLessThanOrEqual(0)
      expect(Math.abs(run.y[0] as number)).toBeLessThan(1e-14)
      t = run.t
      y = of(0, -kept * (run.y[1] as number))
    }
  })

  it.each<[direction: -1 | 0 | 1, start: number, at: number]>([
    [0, 0, 1],
    [-1, 0, 1],
    [1, 0, 2],
    [0, 1, 2],
    [1, 1, 2],
    [-1, 1, 3],
  ])("that is zero at the start (direction %d, from %d half turns) waits until it comes again, %d", (direction, start, at) => {
    const what = watched(oscillator(Math.PI), (_, [x]) => [x as number], [direction])
    const run = integrate(what, start, of(0, Math.PI * (start === 0 ? 1 : -1)), 9)
    expect(run.stop.kind).toBe("event")
    expect(Math.abs(run.t - at)).toBeLessThan(1e-8)
    // forced into the first step too
    const long = integrate(problemInOneStep(direction), 0, of(0), 9, { firstStep: 9 })
    expect(long.t).toBeCloseTo(direction === 1 ? 4 : 2, 13)
  })
  // g = t (t − 2)(t − 4), turned over: positive at once, falls at 2, rises at 4
  const problemInOneStep = (direction: -1 | 0 | 1) =>
    watched(
      problem(1, () => [1]),
      (_, [y]) => [(y as number) * ((y as number) - 2) * ((y as number) - 4)],
      [direction],
    )

  it.each<[direction: -1 | 0 | 1, at: number]>([
    [0, 5.01],
    [-1, 5.01],
    [1, 5.02],
  ])("that crosses and comes back within a hundredth of a step is seen (direction %d at %d)", (direction, at) => {
    const clock = watched(
      problem(1, () => [1]),
      (_, [y]) => [((y as number) - 5.01) * ((y as number) - 5.02)],
      [direction],
    )
    for (const method of ["explicit", "stiff"] as const) {
      const run = integrate(clock, 0, of(0), 10, { method, firstStep: 10 })
      expect(run.stop.kind).toBe("event")
      expect(Math.abs(run.t - at)).toBeLessThan(4e-14)
      expect(Math.abs((run.y[0] as number) - run.t)).toBeLessThan(4e-14)
    }
  })

  it("of one instant are told together, and the state lies behind all of them", () => {
    const what = watched(oscillator(), (t, [x, v]) => [t - 40, (x as number) * (v as number), x as number, -(x as number) / 3])
    const run = integrate(what, 0, of(1, -0.5), 9)
    expect(run.crossed).toEqual([1, 2, 3])
    expect(run.stop.event).toBe(1)
    expect(run.y[0]).toBeLessThanOrEqual(0)
    // begun anew there, none of them comes until half a turn later
    const next = integrate(what, run.t, run.y, 20)
    expect(next.t - run.t).toBeGreaterThan(0.4)
  })

  it.each(["explicit", "stiff"] as const)("%s: none is missed of those that fine steps over the closed form find", (method) => {
    let counted = 0
    fc.assert(
      fc.property(between(0.5, 3), between(3, 9), between(0.2, 2), between(-1.5, 1.5), (slow, fast, part, level) => {
        const exact = (t: number) => Math.cos(slow * t) + part * Math.sin(fast * t) - level
        const two = problem(4, ([x, v, p, q]) => [v, -(slow ** 2) * (x as number), q, -(fast ** 2) * (p as number)] as number[])
        const what = watched(two, (_, [x, , p]) => [(x as number) + part * (p as number) - level])
        const span = 8
        const crossings: number[] = []
        let shallow = false
        const fine = 4000
        for (let i = 1; i <= fine; i++) {
          const [a, b] = [(span * (i - 1)) / fine, (span * i) / fine]
          if (exact(a) > 0 !== exact(b) > 0) crossings.push(a + ((b - a) * exact(a)) / (exact(a) - exact(b)))
          // what only touches zero may count either way
          const c = exact(b + span / fine)
          if (Math.abs(exact(b)) < Math.min(Math.abs(exact(a)), Math.abs(c)) && Math.abs(exact(b)) < 1e-4) shallow = true
        }
        fc.pre(!shallow && Math.abs(exact(0)) > 1e-6 && Math.abs(exact(span)) > 1e-6)
        let t = 0
        let y: Float64Array = of(1, 0, 0, fast)
        const met: number[] = []
        for (;;) {
          const run = integrate(what, t, y, span, { method, relative: 1e-7, absolute: 1e-7 })
          if (run.stop.kind === "end") break
          met.push(run.t)
          ;[t, y] = [run.t, run.y]
        }
        expect(met).toHaveLength(crossings.length)
        met.forEach((at, i) => {
          expect(Math.abs(at - (crossings[i] as number))).toBeLessThan(1e-4)
        })
        counted += met.length
      }),
      { numRuns: method === "stiff" ? 15 : 40 },
    )
    expect(counted).toBeGreaterThan(50)
  })

  it("inside stiff steps are met as sharply as the state allows", () => {
    // follows cos t at a rate of 10⁴: falls through a half at a third of π
    const follower = problem(1, ([y], t) => [-1e4 * ((y as number) - Math.cos(t)) - Math.sin(t)])
    const run = integrate(
      watched(follower, (_, [y]) => [(y as number) - 0.5]),
      0,
      of(1),
      9,
      { method: "stiff" },
    )
    expect(Math.abs(run.t - Math.PI / 3)).toBeLessThan(1e-8)
  })
})

describe("where it cannot go on", () => {
  it("says so at a blow-up, at the edge of what a root allows, and where events or slopes are no number", () => {
    const blowUp = integrate(
      problem(1, ([y]) => [(y as number) ** 2]),
      0,
      of(1),
      2,
    )
    expect(["step-too-small", "not-a-number"]).toContain(blowUp.stop.kind)
    expect(Math.abs(blowUp.t - 1)).toBeLessThan(1e-6)
    // y = (1 − t)², whose root is not defined past its end
    for (const method of ["explicit", "stiff", "auto"] as const) {
      const emptied = integrate(
        problem(1, ([y], t) => [t > 1 ? Number.NaN : -2 * Math.sqrt(y as number)]),
        0,
        of(1),
        2,
        { method },
      )
      expect(emptied.stop.kind).toBe("not-a-number")
      expect(Math.abs(emptied.t - 1)).toBeLessThan(1e-4)
      expect(emptied.y.every(Number.isFinite)).toBe(true)
      expect(emptied.calls).toBeLessThan(5000)
    }
    const still = problem(1, () => [0])
    expect(
      integrate(
        problem(1, () => [Number.NaN]),
        0,
        of(1),
        2,
      ).stop.kind,
    ).toBe("not-a-number")
    expect(
      integrate(
        watched(still, () => [Number.NaN]),
        0,
        of(1),
        2,
      ).stop.kind,
    ).toBe("not-a-number")
    const late = integrate(
      watched(still, (t) => [t > 1 ? Number.NaN : 1]),
      0,
      of(1),
      2,
    )
    expect(late.stop).toEqual({ kind: "not-a-number", event: null })
    expect(Math.abs(late.t - 1)).toBeLessThan(1e-9)
  })

  it("keeps to the slopes it may ask for, but for the step in hand", () => {
    for (const method of ["explicit", "stiff"] as const)
      for (const maxCalls of [1, 100, 1000]) {
        const run = integrate(oscillator(1000), 0, of(1, 0), 100, { method, maxCalls })
        expect(run.stop.kind).toBe("too-many-calls")
        expect(run.calls).toBeLessThan(maxCalls + 30)
      }
  })

  it("takes a span of nothing, no states, and refuses what makes no sense", () => {
    expect(integrate(oscillator(), 3, of(1, 0), 3)).toMatchObject({ t: 3, stop: { kind: "end" }, calls: 0 })
    const timeOnly = integrate(
      watched(
        problem(0, () => []),
        (t) => [Math.sin(t)],
      ),
      1,
      of(),
      9,
      { maxStep: 1 },
    )
    expect(Math.abs(timeOnly.t - Math.PI)).toBeLessThan(1e-15)
    const bad: readonly (readonly [Float64Array, number, OdeOptions])[] = [
      [of(1), 1, {}],
      [of(1, 0), Number.NaN, {}],
      [of(1, 0), 1, { relative: 0 }],
      [of(1, 0), 1, { relative: Number.NaN }],
      [of(1, 0), 1, { absolute: 0 }],
      [of(1, 0), 1, { absolute: of(1) }],
      [of(1, 0), 1, { maxStep: 0 }],
      [of(1, 0), 1, { firstStep: -1 }],
      [of(1, 0), 1, { maxCalls: Number.NaN }],
    ]
    for (const [y0, end, options] of bad) expect(() => integrate(oscillator(), 0, y0, end, options)).toThrow(RangeError)
  })
})
