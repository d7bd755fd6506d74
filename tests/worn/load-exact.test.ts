import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import {
  bodySegments,
  carriedLoad,
  endurance,
  liftLimit,
  type MetabolicRateInput,
  metabolicRate,
  reach,
  strapPressure,
  wearSchedule,
} from "../../src/worn/index.js"

const stroll = [{ name: "stroll", activity: "walking", duration: 600, walkingSpeed: 0.5 }] as const
const codes = (out: { readonly cautions: readonly { readonly code: string }[] }) => out.cautions.map((c) => c.code)

describe("a limit met exactly is kept, not passed", () => {
  const stand = (load: number, left = 0, more = {}) =>
    carriedLoad({ bodyMass: 100 - load, stature: 1.7, rigMass: load, poses: [{ name: "one", forward: -0.01, left, up: 1.3 }], ...more })

  it("carriedLoad: 15 % of 60 kg, the published limit given by hand, 55 % on a foot, all of it on one", () => {
    const at = carriedLoad({ ...carriedLoad.example, bodyMass: 60, rigMass: 9, shareLimit: 0.15 })
    expect(at.massMargin).toBe(0)
    expect(codes(at)).toContain("limit-is-posture")
    expect(codes(at)).not.toContain("limit-raised")
    // 10 kg · 100 mm over 100 kg · 200 mm is 5 %
    expect(stand(10, 0.1).maxFootShare).toBe(0.55)
    expect(codes(stand(10, 0.1))).not.toContain("lopsided")
    expect(stand(10, -1).poses[0]?.leftShare).toBe(0)
    expect(stand(10, 1).poses[0]?.leftShare).toBe(1)
  })

  it("carriedLoad: guidance is exceeded above its mass only", () => {
    const exceeded = (load: number) => carriedLoad({ ...carriedLoad.example, bodyMass: 80, rigMass: load }).guidance.map((g) => g.exceeded)
    expect(exceeded(8)).toEqual([false, false, false, false, false])
    expect(exceeded(8.01)).toEqual([true, false, false, false, false])
    expect(exceeded(12)).toEqual([true, false, false, false, false])
    expect(exceeded(16.01)).toEqual([true, true, true, false, false])
    expect(exceeded(36.01)).toEqual([true, true, true, true, true])
  })

  it("bodySegments: a body mass index of 18.5 and of 30", () => {
    for (const bodyMass of [74, 120]) expect(codes(bodySegments({ bodyMass, stature: 2 }))).not.toContain("outside-range")
  })

  it("liftLimit: the load constant in the best of lifts", () => {
    const best = liftLimit({ rigMass: 23, startHeight: 0.75, endHeight: 0.75, startReach: 0.25, coupling: "good", lifter: "men-adult" })
    expect([best.massLimit, best.liftingIndex, best.peopleCount]).toEqual([23, 1, 1])
    expect(codes(best)).toEqual(["take-it-off", "lifting-only", "adults-only"])
  })

  it("endurance: each model joins at the least effort it is used at (El ahrache and others 2006, figures)", () => {
    const models = (effort: number) => endurance({ joint: "shoulder", effort }).readings.map((r) => r.model)
    for (const [name, from] of [
      ["Sjøgaard 1986", 0.05],
      ["Sato 1984", 0.1],
      ["Sato 1984, shoulder", 0.1],
      ["Rohmert 1960", 0.15],
      ["Manenica 1986", 0.15],
      ["Rose 1992", 0.15],
      ["Rohmert 1986, shoulder", 0.15],
      ["Huijgens 1981", 0.16],
    ] as const) {
      expect(models(from), name).toContain(name)
      expect(models(0.999 * from), name).not.toContain(name)
    }
    expect(endurance({ joint: "shoulder", effort: 0.15, holdDuration: 10 }).restDuration).toBe(0)
  })

  it("metabolicRate: head-borne mass at its limit; 1 mm/s walks", () => {
    expect(codes(metabolicRate({ bodyMass: 70, headMass: 1.34 / (9.80665 * 0.05) }))).not.toContain("heavy-head")
    expect(
      [metabolicRate({ bodyMass: 70, walkingSpeed: 1e-3 }).acsm, metabolicRate({ bodyMass: 70, walkingSpeed: 9.9e-4 }).acsm].map(
        (v) => v === null,
      ),
    ).toEqual([false, true])
    expect(metabolicRate({ bodyMass: 70, walkingSpeed: 1, grade: 9e-7 }).looney2022).not.toBeNull()
    expect(metabolicRate({ bodyMass: 70, walkingSpeed: 1, grade: 1.1e-6 }).looney2022).toBeNull()
    expect(metabolicRate({ bodyMass: 70, walkingSpeed: 0.7 }).givoniGoldman).not.toBeNull()
    expect(metabolicRate({ bodyMass: 70, walkingSpeed: 0.699 }).givoniGoldman).toBeNull()
  })

  it("metabolicRate: every equation applies up to both ends of its range and no further", () => {
    /** Speeds in m/s, grades, greatest share of body mass carried, as the sources state them; null where it reads nothing beyond. */
    const ranges: Readonly<Record<string, readonly [number | null, number | null, number | null, number | null, number]>> = {
      "Pandolf and others 1977, downhill by Santee": [null, 1.34, -0.12, 0.25, 0.7],
      "Looney and others 2019, graded walking": [null, 1.96, null, null, 0.2],
      "Looney and others 2022, backpacking": [0.45, 1.97, null, null, 0.66],
      "ACSM walking": [50 / 60, 100 / 60, null, null, 0.2],
      "minimum mechanics": [0.4, 1.6, -0.105, 0.158, 0.31],
      "Givoni and Goldman": [null, null, null, 0.25, 0.7],
    }
    for (const [equation, [slow, fast, down, up, share]] of Object.entries(ranges)) {
      const applies = (change: Partial<MetabolicRateInput>) =>
        metabolicRate({ bodyMass: 100, rigMass: 1, walkingSpeed: 1, ...change }).readings.find((r) => r.equation === equation)?.applies
      if (slow !== null) expect([applies({ walkingSpeed: slow }), applies({ walkingSpeed: slow * 0.999 })], equation).toEqual([true, false])
      if (fast !== null) expect([applies({ walkingSpeed: fast }), applies({ walkingSpeed: fast * 1.001 })], equation).toEqual([true, false])
      if (down !== null) expect([applies({ grade: down }), applies({ grade: down * 1.001 })], equation).toEqual([true, false])
      if (up !== null) expect([applies({ grade: up }), applies({ grade: up * 1.001 })], equation).toEqual([true, false])
      expect([applies({ rigMass: 100 * share }), applies({ rigMass: 100.1 * share })], equation).toEqual([true, false])
      const onSand = ["Pandolf and others 1977, downhill by Santee", "Looney and others 2022, backpacking", "Givoni and Goldman"]
      expect(applies({ terrain: "loose-sand" }), equation).toBe(onSand.includes(equation))
    }
  })

  it("reach: the seated helper's 15 and 48 in", () => {
    const at = (height: number) => reach({ stature: 1.7, forward: 0.3, outward: 0.25, up: height, reserve: 0 })
    expect(at(48 * 0.0254).reachableSeated).toBe(true)
    expect(reach({ stature: 1, forward: 0.01, outward: 0.1122, up: 15 * 0.0254, reserve: 0 }).reachableSeated).toBe(true)
  })

  it("wearSchedule: shares for 1, 2 and more hours; the published mass", () => {
    const walk = (duration: number, load = 9) =>
      wearSchedule({ bodyMass: 60, rigMass: load, plan: [{ name: "walk", activity: "walking", duration, walkingSpeed: 0.5 }] })
    expect([3600, 3601, 7200, 7201, 43200].map((t) => walk(t).shareLimit)).toEqual([0.5, 0.4, 0.4, 0.33, 0.33])
    expect(walk(600).bearable).toBe(true)
    // twelve digits are forty halvings of the range
    const bound = wearSchedule({ bodyMass: 60, rigMass: 6, plan: [{ name: "walk", activity: "walking", duration: 4200 }] }).maxRig.low
    expect(bound?.boundBy).toBe("strain")
    expect(bound?.iterations).toBeGreaterThanOrEqual(40)
    expect(bound?.iterations).toBeLessThan(60)
    expect(codes(walk(600))).not.toContain("over-published-share")
  })
})

describe("who a light wearer's limit comes from", () => {
  it("children's packs below 45 kg, adults from there on", () => {
    const title = (
      out: { readonly cautions: readonly { readonly code: string; readonly source?: { readonly title?: string } }[] },
      code: string,
    ) => out.cautions.find((c) => c.code === code)?.source?.title
    const children = "Backpack guidance for children: no more than 10 to 20 % of body mass"
    for (const bodyMass of [36, 44.9]) {
      expect(title(carriedLoad({ ...carriedLoad.example, bodyMass, rigMass: 8 }), "over-limit")).toBe(children)
      expect(title(wearSchedule({ bodyMass, rigMass: 8, plan: stroll }), "over-published-share")).toBe(children)
    }
    for (const bodyMass of [45, 50]) {
      expect(title(carriedLoad({ ...carriedLoad.example, bodyMass, rigMass: 8 }), "over-limit")).not.toBe(children)
      expect(title(wearSchedule({ bodyMass, rigMass: 8, plan: stroll }), "over-published-share")).not.toBe(children)
    }
  })
})

describe("strapPressure", () => {
  it("offers lower anchors that hold, where their limits reach", () => {
    for (const refused of [
      { rigMass: 9, strapWidth: 0.06, centreOffset: 0.3 },
      { rigMass: 9, strapWidth: 0.06, centreOffset: 0.005, lowerAnchor: -0.2, upperAnchor: 0.25 },
    ]) {
      const outcome = strapPressure.attempt(refused)
      if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
      const lowerAnchor = outcome.error.nearest.lowerAnchor as number
      expect(strapPressure.attempt({ ...refused, lowerAnchor }).ok).toBe(true)
      expect(strapPressure.attempt({ ...refused, lowerAnchor: lowerAnchor - 1e-6 }).ok).toBe(false)
    }
  })

  it("says that the rig hangs back wherever the upper edge does not press, whatever the rounding", () => {
    // 30 % on the belt: 0.7 · (cos 35° · h_u) over sin 35° + sin 50° is where the upper edge parts from the back
    const degree = Math.PI / 180
    for (let i = 0; i < 400; i++) {
      const upperAnchor = 0.3 + 0.001 * i
      const edge = (Math.cos(35 * degree) * upperAnchor) / (Math.sin(35 * degree) + Math.sin(50 * degree))
      const centreOffset = edge * (0.72 + 0.0006 * i)
      const out = strapPressure({ rigMass: 2 + 0.003 * i, centreOffset, strapWidth: 0.06, upperAnchor })
      expect(out.upperPush).toBe(0)
      expect(codes(out), `${upperAnchor} ${centreOffset}`).toContain("hangs-back")
    }
  })
})
