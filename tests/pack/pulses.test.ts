// Second route: the pattern is walked in hundredths of a second. Limits of the sheets: LFP 26650 3.3 Ah, 9.9 A and 19.8 A for 10 s;
// 12 V 5 Ah AGM, 15 A (3 times the capacity per hour) and 75 A for 5 s.
import { describe, expect, it } from "vitest"
import { genericCells, runtime } from "../../src/pack/index.js"

type Step = { readonly current: number; readonly duration: number }
const lfp = { cellMaxCurrent: 9.9, cellPulseCurrent: 19.8, cellPulseDuration: 10 }
const agm = { cellMaxCurrent: 15, cellPulseCurrent: 75, cellPulseDuration: 5 }
const codes = (cell: "26650-lfp" | "agm-5ah", limits: typeof lfp, pattern: readonly Step[]) => {
  const { chemistry, cellCapacity, cellCutOffVoltage } = genericCells[cell]
  const pack = { series: 6, parallel: 1, chemistry, cellCapacity, cellCutOffVoltage, cellResistance: 0.002 }
  return runtime({ ...pack, ...limits, pattern })
    .cautions.map((c) => c.code)
    .filter((code) => code.includes("pulse") || code === "over-current")
}

/** What walking through two rounds in hundredths of a second finds. */
function walked(limits: typeof lfp, pattern: readonly Step[]): string[] {
  const ticks = pattern.flatMap(({ current, duration }) => Array<number>(Math.round(100 * duration)).fill(current))
  let [longest, now, squares, peak] = [0, 0, 0, 0]
  for (const current of [...ticks, ...ticks]) {
    now = current > limits.cellMaxCurrent ? now + 0.01 : 0
    longest = Math.max(longest, now)
    squares += current ** 2 / ticks.length / 2
    peak = Math.max(peak, current)
  }
  if (ticks.every((current) => current > limits.cellMaxCurrent)) longest = Number.POSITIVE_INFINITY
  if (peak <= limits.cellMaxCurrent) return []
  const found = [
    ...(peak > limits.cellPulseCurrent ? ["over-pulse"] : []),
    ...(longest > limits.cellPulseDuration + 1e-6 ? ["pulse-too-long"] : []),
    ...(Math.sqrt(squares) > limits.cellMaxCurrent ? ["pulse-heat"] : []),
  ]
  return found.length > 0 ? found : ["pulse"]
}

describe("pulses above the continuous limit", () => {
  it("says what walking through the pattern finds, over many patterns", () => {
    let state = 7
    const draw = () => {
      state = (state * 48271) % 2147483647
      return state / 2147483647
    }
    const seen = new Set<string>()
    for (let i = 0; i < 300; i++) {
      const [cell, limits] = i % 2 === 0 ? (["26650-lfp", lfp] as const) : (["agm-5ah", agm] as const)
      const pattern = Array.from({ length: 2 + Math.floor(3 * draw()) }, () => ({
        current: draw() < 0.45 ? 1 : limits.cellPulseCurrent * (0.3 + 0.8 * draw()),
        duration: Math.round(100 * (0.5 + limits.cellPulseDuration * draw() * (draw() < 0.3 ? 6 : 0.6))) / 100,
      }))
      const told = walked(limits, pattern)
      expect(codes(cell, limits, pattern), JSON.stringify(pattern)).toEqual(told)
      for (const code of told) seen.add(code)
    }
    expect([...seen].sort()).toEqual(["over-pulse", "pulse", "pulse-heat", "pulse-too-long"])
  })

  it("joins the last step of a round to the first of the next", () => {
    const halves = [
      { current: 15, duration: 6 },
      { current: 1, duration: 120 },
      { current: 15, duration: 6 },
    ]
    expect(codes("26650-lfp", lfp, halves)).toEqual(["pulse-too-long"])
  })

  it("takes a single step for continuous, whatever its duration says", () => {
    expect(codes("26650-lfp", lfp, [{ current: 15, duration: 2 }])).toEqual(["pulse-too-long", "pulse-heat"])
  })

  it("is not too long by the rounding of three steps of a tenth of a second", () => {
    const tenths = [15, 14, 15, 1].map((current, i) => ({ current, duration: i === 3 ? 30 : 0.1 }))
    expect(0.1 + 0.1 + 0.1).toBeGreaterThan(0.3)
    expect(codes("26650-lfp", { ...lfp, cellPulseDuration: 0.3 }, tenths)).toEqual(["pulse"])
  })
})
