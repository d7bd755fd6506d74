// Source: JCGM 101 (Monte Carlo) as the second route to JCGM 100: readings are drawn and the answers' own spread is taken.
import { describe, expect, it } from "vitest"
import { packHealth, packUnderLoad, resistanceFactor, runtime } from "../../src/pack/index.js"
import { isNoSolution, type Solver } from "../../src/solver/index.js"

function answered<In, Out extends object>(solver: Solver<In, Out>, input: In): Out {
  const out = solver.si(solver.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out as Out
}
/** Even numbers from -1 to 1, the same ones every time (Park and Miller's generator). */
function drawer(seed: number) {
  let state = seed
  return () => {
    state = (state * 48271) % 2147483647
    return (2 * state) / 2147483647 - 1
  }
}
const fresh = {
  series: 3,
  parallel: 2,
  lightCurrent: 1,
  lightVoltage: 11.42,
  heavyCurrent: 5,
  heavyVoltage: 10.9,
  dischargeCurrent: 1,
  dischargeDuration: 14040,
  ratedCellCapacity: 9360,
  newCellResistance: 0.05,
}

describe("uncertainties against readings drawn at random", () => {
  it.each([
    ["the example", {}],
    ["a coarse meter", { voltageUncertainty: 0.05, currentUncertainty: 0.001, durationUncertainty: 0 }],
    ["a coarse clamp", { voltageUncertainty: 0.001, currentUncertainty: 0.05, durationUncertainty: 600 }],
    ["no light load", { lightCurrent: 0, interconnectResistance: 0.03, cellTemperature: 5 }],
    ["lead", { chemistry: "lead", series: 6, parallel: 1, ratedCellCapacity: 18000, lightVoltage: 12.4, heavyVoltage: 12.1 } as const],
  ])("%s", (_, more) => {
    const si = packHealth.read({ ...fresh, ...more })
    const out = answered(packHealth, { ...fresh, ...more })
    const draw = drawer(20261129)
    const off = (value: number, by: number) => value + by * draw()
    const keys = ["resistance", "cellResistance", "cellCapacity", "capacityShare", "resistanceRatio"] as const
    const sums = keys.map(() => ({ sum: 0, squares: 0, within: 0 }))
    const draws = 20000
    for (let i = 0; i < draws; i++) {
      const seen = packHealth.si({
        ...si,
        lightVoltage: off(si.lightVoltage, si.voltageUncertainty),
        heavyVoltage: off(si.heavyVoltage, si.voltageUncertainty),
        lightCurrent: off(si.lightCurrent, si.currentUncertainty * si.lightCurrent),
        heavyCurrent: off(si.heavyCurrent, si.currentUncertainty * si.heavyCurrent),
        dischargeCurrent: off(si.dischargeCurrent as number, si.currentUncertainty * (si.dischargeCurrent as number)),
        dischargeDuration: off(si.dischargeDuration as number, si.durationUncertainty),
      })
      if (isNoSolution(seen)) throw new Error(seen.message)
      keys.forEach((key, k) => {
        const error = (seen[key] as number) - (out[key] as number)
        const told = sums[k] as { sum: number; squares: number; within: number }
        told.sum += error
        told.squares += error * error
        if (Math.abs(error) <= (out[`${key}Uncertainty`] as number)) told.within++
      })
    }
    keys.forEach((key, k) => {
      const { sum, squares, within } = sums[k] as { sum: number; squares: number; within: number }
      const spread = Math.sqrt(squares / draws - (sum / draws) ** 2)
      // one curve of the capacity against its duration, for lead, bends a little within the time's error
      expect((2 * spread) / (out[`${key}Uncertainty`] as number), key).toBeCloseTo(1, 1.3)
      expect(within / draws, key).toBeGreaterThan(0.95)
    })
  })
})

describe("a pack that is known, read as a maker reads it", () => {
  it.each([
    ["nmc", 3, 2, 0.08, 25, 0],
    ["nmc", 3, 2, 0.08, 2, 0.02],
    ["lead", 6, 1, 0.0045, 12, 0.004],
    ["nimh", 8, 1, 0.05, 35, 0],
  ] as const)(
    "%s %iS%iP of %d ohm at %d °C gives its resistance back",
    (chemistry, series, parallel, cellResistance, cellTemperature, interconnectResistance) => {
      const cells = { series, parallel, chemistry, cellCapacity: 18000, cellResistance, cellTemperature, interconnectResistance }
      const at = (current: number) => answered(packUnderLoad, { ...cells, current }).terminalVoltage
      const out = answered(packHealth, {
        series,
        parallel,
        chemistry,
        interconnectResistance,
        cellTemperature,
        lightCurrent: 1,
        lightVoltage: at(1),
        heavyCurrent: 5,
        heavyVoltage: at(5),
      })
      expect(out.cellResistance).toBeCloseTo(cellResistance, 10)
      expect(out.resistance).toBeCloseTo(
        (cellResistance * resistanceFactor(chemistry, cellTemperature) * series) / parallel + interconnectResistance,
        10,
      )
      expect(out.openCircuitVoltage).toBeCloseTo(at(0), 10)
      expect(out.capacityShare).toBeNull()
      expect(out.verdict).toBe("not-judged")
    },
  )

  it("gives back the capacity of cells that empty before they are cut off", () => {
    const cells = { series: 3, parallel: 2, cellCapacity: 9360, cellResistance: 1e-6, cellCutOffVoltage: 2.5, cellTemperature: -10 }
    const run = answered(runtime, { ...cells, pattern: [{ current: 1 }] })
    const out = answered(packHealth, {
      ...fresh,
      cellTemperature: -10,
      dischargeDuration: run.runtime,
    })
    expect(out.cellCapacity).toBeCloseTo(9360, 3)
  })
})

describe("what is said of it", () => {
  it("calls it sound, worn, or open as the bands lie", () => {
    const verdict = (more: object) => answered(packHealth, { ...fresh, ...more }).verdict
    expect(verdict({})).toBe("worn")
    expect(verdict({ dischargeDuration: 14900 })).toBe("cannot-tell")
    expect(verdict({ dischargeDuration: 18000 })).toBe("sound")
    expect(verdict({ dischargeDuration: 18000, newCellResistance: 0.03 })).toBe("worn")
    expect(verdict({ dischargeDuration: 18000, newCellResistance: null })).toBe("sound")
    expect(verdict({ ratedCellCapacity: null, newCellResistance: null })).toBe("not-judged")
  })

  it("calls nothing sound that was read outside 15 to 25 °C, or that fits no such pack", () => {
    const sound = { ...fresh, dischargeDuration: 18000 }
    const verdict = (more: object) => answered(packHealth, { ...sound, ...more }).verdict
    expect([15, 25].map((cellTemperature) => verdict({ cellTemperature, newCellResistance: null }))).toEqual(["sound", "sound"])
    expect([-20, 14.9, 25.1].map((cellTemperature) => verdict({ cellTemperature, newCellResistance: null }))).toEqual(
      Array(3).fill("cannot-tell"),
    )
    // ten cells' voltage from three; a printed capacity told in Ah for mAh
    expect(verdict({ lightVoltage: 38.5, heavyVoltage: 37.98 })).toBe("cannot-tell")
    expect(verdict({ ratedCellCapacity: 3.6 })).toBe("cannot-tell")
    expect(verdict({ newCellResistance: 1 })).toBe("cannot-tell")
    // a pack that is worn whichever way it is read stays so
    expect(verdict({ cellTemperature: 0, dischargeDuration: 3600 })).toBe("worn")
  })

  it("carries a fast discharge of lead over to the printed 20 h, and of nickel to 5 h", () => {
    // 12 V 40 Ah sheet: 24 A for 1 h, 6.6 A for 5 h; nickel-metal hydride specification: at least 54 min at once the capacity
    const of = (chemistry: "lead" | "nimh", dischargeCurrent: number, hours: number) =>
      (answered(packHealth, { ...fresh, parallel: 1, chemistry, dischargeCurrent, dischargeDuration: hours * 3600 })
        .cellCapacity as number) / 3600
    expect(of("lead", 24, 1)).toBeCloseTo(40, 6)
    expect(of("lead", 6.6, 5)).toBeCloseTo(40, 6)
    expect(of("nimh", 2.6, 0.9)).toBeCloseTo(2.6, 6)
  })
})
