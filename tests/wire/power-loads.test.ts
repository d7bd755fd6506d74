import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { isNoSolution, type NoSolution } from "../../src/solver/index.js"
import { type Harness, type HarnessInput, harness } from "../../src/wire/index.js"

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const solved = (input: HarnessInput) => harness.si(harness.read(input))
const powerLoads = (watts: readonly number[]) => watts.map((power, i) => ({ name: `l${i}`, from: "p", to: "0", power }))

/** Loads at one pair of poles behind E and R draw E/(2R) − √((E/(2R))² − P/R) together, and have E²/(4R) at most. */
function atOnePair(net: HarnessInput, volts: number, ohms: number, watts: readonly number[]) {
  const total = watts.reduce((a, b) => a + b)
  const most = volts ** 2 / 4 / ohms
  const found = solved(net)
  if (isNoSolution(found)) {
    expect(found.noSolution).toBe("insufficient-power")
    expect(total).toBeGreaterThan(most * (1 - 1e-9))
    expect(Math.abs((found.at.available as number) / most - 1)).toBeLessThan(1e-9)
    expect(Math.abs(found.shortBy - (total - most))).toBeLessThan(1e-8 * total)
    return false
  }
  expect(total).toBeLessThan(most * (1 + 1e-9))
  // 2P/E/(1 + √(1 − P/most)): the same root without a difference of near equals
  const current = (2 * total) / volts / (1 + Math.sqrt(Math.max(0, 1 - total / most)))
  const loads = found.loads.filter((l) => l.type === "power")
  loads.forEach((l, i) => {
    expect(Math.abs(l.voltage / (total / current) - 1)).toBeLessThan(1e-7)
    expect(Math.abs(l.voltage * l.current - (watts[i] as number))).toBeLessThan(1e-9 * total)
  })
  return true
}

describe("loads of constant power at one pair of poles, in closed form", () => {
  const watts = fc.array(between(5, 500), { minLength: 1, maxLength: 5 })
  it("behind one source", () => {
    let [answers, refusals] = [0, 0]
    fc.assert(
      fc.property(between(5, 14), between(0.02, 0.6), watts, (sourceVoltage, resistance, loads) => {
        const source = { name: "pack", positive: "p", negative: "0", sourceVoltage, sourceResistance: resistance }
        if (atOnePair({ sources: [source], powerLoads: powerLoads(loads) }, sourceVoltage, resistance, loads)) answers++
        else refusals++
      }),
      { numRuns: 300, seed: 31 },
    )
    expect(Math.min(answers, refusals)).toBeGreaterThan(30)
  })

  it("behind two packs and a heater, which come to one source (Thévenin)", () => {
    let [answers, refusals] = [0, 0]
    fc.assert(
      fc.property(
        between(9, 14),
        between(9, 14),
        between(0.05, 0.6),
        between(0.05, 0.6),
        between(4, 40),
        watts,
        (e, f, r, s, heater, loads) => {
          const conductance = 1 / r + 1 / s + 1 / heater
          const source = { name: "left", positive: "p", negative: "0", sourceVoltage: e, sourceResistance: r }
          const net = {
            sources: [source, { ...source, name: "right", sourceVoltage: f, sourceResistance: s }],
            resistanceLoads: [{ name: "heater", from: "p", to: "0", resistance: heater }],
            powerLoads: powerLoads(loads),
          }
          if (atOnePair(net, (e / r + f / s) / conductance, 1 / conductance, loads)) answers++
          else refusals++
        },
      ),
      { numRuns: 300, seed: 32 },
    )
    expect(Math.min(answers, refusals)).toBeGreaterThan(30)
  })

  it("six hundred of them, answered and refused without an elimination for every step", { timeout: 20_000 }, () => {
    const source = { name: "pack", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: 0.2 }
    for (const each of [0.29, 0.31]) {
      const loads = new Array<number>(600).fill(each)
      expect(atOnePair({ sources: [source], powerLoads: powerLoads(loads) }, 12, 0.2, loads)).toBe(each < 0.3)
    }
  })

  it("lets a load of no power be, whichever way round it is connected", () => {
    const source = { name: "pack", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: 0.2 }
    const net = harness({
      sources: [source],
      powerLoads: [
        { name: "off", from: "0", to: "p", power: 0 },
        { name: "lantern", from: "p", to: "0", power: 10 },
      ],
    })
    expect(net.loads.map((l) => [l.name, l.current === 0])).toEqual([
      ["off", true],
      ["lantern", false],
    ])
  })
})

interface Rung {
  readonly out: number
  readonly back: number
  readonly power: number
}

/** A ladder by sweeps: currents summed from the far end, voltages from the pack; null where they do not settle. */
function swept(voltage: number, inner: number, rungs: readonly Rung[], scale = 1): number[] | null {
  let volts = rungs.map(() => voltage)
  for (let k = 0; k < 5000; k++) {
    let sum = 0
    const through = rungs.map(() => 0)
    for (let i = rungs.length - 1; i >= 0; i--) {
      sum += (scale * (rungs[i]?.power as number)) / (volts[i] as number)
      through[i] = sum
    }
    let at = voltage - inner * sum
    const next = rungs.map(({ out, back }, i) => {
      at -= (out + back) * (through[i] as number)
      return at
    })
    if (next.some((v) => !(v > 0))) return null
    const step = Math.max(...next.map((v, i) => Math.abs(v - (volts[i] as number))))
    volts = next
    if (step < 1e-13 * voltage) return volts
  }
  return null
}

const ladder = (voltage: number, inner: number, rungs: readonly Rung[], scale = 1): HarnessInput => ({
  sources: [{ name: "pack", positive: "p0", negative: "n0", sourceVoltage: voltage, sourceResistance: inner }],
  contacts: rungs.flatMap(({ out, back }, i) => [
    { name: `o${i}`, from: `p${i}`, to: `p${i + 1}`, resistance: out },
    { name: `b${i}`, from: `n${i + 1}`, to: `n${i}`, resistance: back },
  ]),
  powerLoads: rungs.map(({ power }, i) => ({ name: `l${i}`, from: `p${i + 1}`, to: `n${i + 1}`, power: scale * power })),
})

describe("loads of constant power along two wires, against sweeps up and down them", () => {
  const rung = fc.record({ out: between(0, 0.08), back: between(0, 0.08), power: between(5, 100) })
  it("settle where the sweeps settle, and are refused where they run away", () => {
    let [answers, refusals, worst] = [0, 0, 0]
    fc.assert(
      fc.property(between(8, 14), between(0.02, 0.3), fc.array(rung, { minLength: 2, maxLength: 9 }), (voltage, inner, rungs) => {
        const compare = (net: Harness, other: readonly number[]) => {
          for (const [i, v] of other.entries()) worst = Math.max(worst, Math.abs((net.loads[i]?.voltage as number) - v))
        }
        const found = solved(ladder(voltage, inner, rungs))
        const other = swept(voltage, inner, rungs)
        if (!isNoSolution(found)) {
          if (other === null) return
          answers++
          compare(found, other)
          return
        }
        refusals++
        expect(other).toBeNull()
        // the most there is for them: a little less settles by either route, a little more by neither
        const { power, available } = (found as NoSolution).at as { power: number; available: number }
        expect(power).toBeCloseTo(
          rungs.reduce((sum, r) => sum + r.power, 0),
          9,
        )
        const less = (available / power) * (1 - 1e-4)
        const below = swept(voltage, inner, rungs, less)
        const net = solved(ladder(voltage, inner, rungs, less))
        expect([below !== null, isNoSolution(net)]).toEqual([true, false])
        if (below !== null && !isNoSolution(net)) compare(net, below)
        const more = (available / power) * (1 + 1e-4)
        expect([swept(voltage, inner, rungs, more), isNoSolution(solved(ladder(voltage, inner, rungs, more)))]).toEqual([null, true])
      }),
      { numRuns: 150, seed: 33 },
    )
    expect(Math.min(answers, refusals)).toBeGreaterThan(25)
    expect(worst).toBeLessThan(1e-8)
  })
})
