// Second route: time stepping with each load at its own rate. Sources: 12 V 40 Ah sealed lead-acid sheet (currents for 20, 10, 5
// and 1 h); nickel-metal hydride specification (5 h at 0.2, 54 min at 1 times the capacity per hour).
import { describe, expect, it } from "vitest"
import { openCircuitVoltage, packSize, type Runtime, runtime } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { rateShare } from "./edge-numbers.js"

const block = { series: 6, parallel: 1, chemistry: "lead", cellCapacity: 40 * 3600, cellResistance: 0.001 } as const
const solved = (more: object): Runtime => {
  const out = runtime.si(runtime.read({ ...block, ...more } as Parameters<typeof runtime.read>[0]))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}

describe("lead and nickel at a rate", () => {
  it.each([
    [2, 20],
    [3.7, 10],
    [6.6, 5],
    [24, 1],
  ])("a 40 Ah block gives %d A for %d h, as its sheet prints", (current, hours) => {
    expect(solved({ pattern: [{ current }] }).runtime / 3600).toBeCloseTo(hours, 2)
  })

  it("a nickel cell gives its capacity per hour for 54 min", () => {
    const nickel = { chemistry: "nimh", series: 1, cellCapacity: 7200, cellCutOffVoltage: 0.9 }
    expect(solved({ ...nickel, pattern: [{ current: 2 }] }).runtime / 60).toBeCloseTo(54, 6)
    expect(solved({ ...nickel, pattern: [{ current: 0.4 }] }).runtime / 3600).toBeCloseTo(5, 6)
  })

  it("lithium gives the same charge at every rate", () => {
    expect(solved({ chemistry: "nmc", pattern: [{ current: 40 }] }).rateShare).toBe(1)
  })

  it.each([
    ["currents", [{ duration: 20, current: 15 }, { duration: 300, current: 1 }, { duration: 60 }], 0.002],
    [
      "powers",
      [
        { duration: 30, power: 150 },
        { duration: 200, power: 12 },
      ],
      0.03,
    ],
    [
      "resistances",
      [
        { duration: 30, loadResistance: 0.8 },
        { duration: 90, loadResistance: 12 },
      ],
      0.03,
    ],
  ] as const)(
    "a pattern of %s ends where stepping through time with each load at its own rate ends, and no later",
    (_, pattern, within) => {
      const out = solved({ pattern })
      const capacity = 40 * 3600
      const ohm = 6 * 0.001
      let [left, time] = [1, 0]
      for (let i = 0; left > 0; i = (i + 1) % pattern.length) {
        const load: { duration: number; current?: number; power?: number; loadResistance?: number } = pattern[i] as (typeof pattern)[number]
        for (let step = 0; step < 10 && left > 0; step++) {
          const emf = 6 * openCircuitVoltage("lead", left)
          const current =
            load.current ??
            (load.power !== undefined
              ? (emf - Math.sqrt(emf ** 2 - 4 * ohm * load.power)) / (2 * ohm)
              : load.loadResistance !== undefined
                ? emf / (ohm + load.loadResistance)
                : 0)
          left -= (current * load.duration) / 10 / (capacity * rateShare("lead", (current * 3600) / capacity))
          time += load.duration / 10
        }
      }
      expect(out.runtime / time).toBeGreaterThan(1 - within)
      expect(out.runtime / time).toBeLessThan(1.002)
    },
  )
})

describe("age", () => {
  it("counts as the cells that it makes of new ones", () => {
    for (const chemistry of ["lead", "nmc", "nimh"] as const) {
      const pattern = [
        { power: 30, duration: 60 },
        { duration: 60, power: 3 },
      ]
      const aged = solved({ chemistry, capacityShare: 0.7, resistanceRatio: 2.5, cellResistance: 0.004, pattern })
      const made = solved({ chemistry, cellCapacity: 0.7 * 40 * 3600, cellResistance: 0.01, pattern })
      expect(aged.runtime).toBeCloseTo(made.runtime, 6)
      expect(aged.heat).toBeCloseTo(made.heat, 6)
      expect(aged.runtime).toBeLessThan(0.75 * solved({ chemistry, pattern }).runtime)
    }
  })

  it("asks for more cells side by side", () => {
    const cells = [{ name: "A", cellCapacity: 9360, cellResistance: 0.08, cellMass: 0.045, cellMaxCurrent: 7.8 }]
    const sized = (more: object) => packSize({ cells, minVoltage: 9, maxVoltage: 13, peakCurrent: 4, energy: 60 * 3600, ...more }).parallel
    // 60 Wh / (3·3.6 V·2.6 Ah·0.8) = 2.67
    expect(sized({})).toBe(3)
    expect(sized({ capacityShare: 0.8 })).toBe(4)
    expect(sized({ capacityShare: 0.8, startStateOfCharge: 0.8 })).toBe(5)
    // 4 A·0.08 ohm·3·w / (3·3.4754 V - 9 V) = 0.675·w
    expect(sized({ resistanceRatio: 6 })).toBe(5)
  })
})
