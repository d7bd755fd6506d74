import fc from "fast-check"
import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { isNoSolution } from "../../src/solver/index.js"
import { type LedRunInput, ledRun } from "../../src/wire/index.js"
import { netlistsOf } from "../helpers/netlists.js"

/** Nodal analysis of the run, light by light and feed by feed, on a general-purpose solver. */
function nodal(
  length: number,
  total: number,
  sections: number,
  loop: number,
  feeds: readonly { position: number; sourceVoltage: number; feederResistance: number }[],
) {
  const lights = Array.from({ length: sections }, (_, k) => (length * (k + 1)) / sections)
  const places = [...lights, ...feeds.map((f) => f.position)]
    .sort((a, b) => a - b)
    .filter((x, i, all) => i === 0 || x - (all[i - 1] as number) > 1e-9)
  const at = (x: number) => places.findIndex((p) => Math.abs(p - x) < 1e-9)
  const matrix = places.map(() => places.map(() => 0))
  const rhs = places.map(() => 0)
  const add = (i: number, j: number, g: number) => {
    ;(matrix[i] as number[])[j] = (matrix[i]?.[j] as number) + g
  }
  places.slice(1).forEach((x, i) => {
    const g = 1 / (loop * (x - (places[i] as number)))
    add(i, i, g)
    add(i + 1, i + 1, g)
    add(i, i + 1, -g)
    add(i + 1, i, -g)
  })
  for (const x of lights) rhs[at(x)] = (rhs[at(x)] as number) - total / sections
  for (const f of feeds) {
    add(at(f.position), at(f.position), 1 / f.feederResistance)
    rhs[at(f.position)] = (rhs[at(f.position)] as number) + f.sourceVoltage / f.feederResistance
  }
  const volts = (lusolve(matrix, rhs) as number[][]).map((r) => r[0] as number)
  return {
    lights: lights.map((x) => volts[at(x)] as number),
    feeds: feeds.map((f) => (f.sourceVoltage - (volts[at(f.position)] as number)) / f.feederResistance),
  }
}

const runs = fc.record({
  length: fc.double({ min: 0.5, max: 10, noNaN: true }),
  current: fc.double({ min: 0.1, max: 2, noNaN: true }),
  sections: fc.integer({ min: 1, max: 40 }),
  track: fc.double({ min: 0.01, max: 0.1, noNaN: true }),
  places: fc.uniqueArray(fc.integer({ min: 0, max: 16 }), { minLength: 1, maxLength: 4 }),
  voltage: fc.array(fc.double({ min: 11, max: 13, noNaN: true }), { minLength: 4, maxLength: 4 }),
  resistance: fc.array(fc.double({ min: 0.01, max: 0.5, noNaN: true }), { minLength: 4, maxLength: 4 }),
})
const feedsOf = ({ length, places, voltage, resistance }: { length: number; places: number[]; voltage: number[]; resistance: number[] }) =>
  places.map((p, i) => ({ position: (length * p) / 16, sourceVoltage: voltage[i] as number, feederResistance: resistance[i] as number }))

describe("ledRun", () => {
  it.each(netlistsOf("ledRun"))("$file: $about [$tool]", ({ input, results }) => {
    const run = ledRun(input as LedRunInput)
    const volts = Object.values(results)
    expect(run.profile).toHaveLength(volts.length)
    run.profile.forEach((p, i) => {
      expect(Math.abs(p.voltage - (volts[i] as number))).toBeLessThan(1e-9)
    })
  })

  it("agrees with nodal analysis by mathjs lusolve for any feeds, light by light, to 1e-9", () => {
    let worst = 0
    fc.assert(
      fc.property(runs, (random) => {
        const feeds = feedsOf(random)
        const { length, current, sections: lightCount, track: trackResistance } = random
        const other = nodal(length, current, lightCount, 2 * trackResistance, feeds)
        const run = ledRun.si(ledRun.read({ length, current, lightCount, trackResistance, feeds }))
        if (isNoSolution(run)) {
          expect(Math.min(...other.lights)).toBeLessThanOrEqual(1e-9)
          return
        }
        run.profile.forEach((p, i) => {
          worst = Math.max(worst, Math.abs(p.voltage - (other.lights[i] as number)))
        })
        worst = Math.max(worst, Math.abs(run.minVoltage - Math.min(...other.lights)))
        for (const f of run.feeds) {
          const i = feeds.findIndex((g) => g.position === f.position)
          worst = Math.max(worst, Math.abs(f.current - (other.feeds[i] as number)))
        }
      }),
      { numRuns: 400, seed: 21 },
    )
    expect(worst).toBeLessThan(1e-9)
  })

  it("is the limit of ever more lights where the load is spread evenly", () => {
    fc.assert(
      fc.property(runs, (random) => {
        const feeds = feedsOf(random)
        const { length, current, track: trackResistance } = random
        const even = ledRun.attempt({ length, current, track: trackResistance, feeds })
        const fine = ledRun.attempt({ length, current, track: trackResistance, feeds, lightCount: 1000 })
        if (!even.ok || !fine.ok) return
        // the nearest light is at most one section away: what that section can lose bounds the difference
        const most = even.value.maxCurrent
        const off = (2 * 2 * trackResistance * length * most) / 1000
        expect(Math.abs(even.value.minVoltage - fine.value.minVoltage)).toBeLessThan(off)
        expect(Math.abs(even.value.runHeat - fine.value.runHeat)).toBeLessThan(2 * off * most)
      }),
      { numRuns: 25, seed: 22 },
    )
  })

  it("loses I·R/2 fed at one end, I·R/8 fed at both, and (1 + 1/n) times that light by light", () => {
    const [length, current, track] = [5, 3, 0.04]
    const full = current * 2 * track * length
    const end = { position: 0, sourceVoltage: 12 }
    expect(ledRun({ length, current, trackResistance: track, feeds: [end] }).maxDrop).toBeCloseTo(full / 2, 12)
    expect(ledRun({ length, current, trackResistance: track, feeds: [end, { position: 5, sourceVoltage: 12 }] }).maxDrop).toBeCloseTo(
      full / 8,
      12,
    )
    expect(ledRun({ length, current, trackResistance: track, feeds: [end], lightCount: 10 }).maxDrop).toBeCloseTo((full / 2) * 1.1, 12)
  })

  it("marks the dimmed stretches: their ends lie on the limit, inside is below, outside above", () => {
    const input = {
      length: 6,
      current: 2,
      trackResistance: 0.08,
      dimVoltage: 11.95,
      feeds: [
        { position: 1, sourceVoltage: 12 },
        { position: 4, sourceVoltage: 12 },
      ],
    } as const
    const run = ledRun({ ...input })
    expect(run.dimmed.length).toBe(2)
    for (const p of run.profile) {
      const inside = run.dimmed.some((d) => p.position >= d.from && p.position <= d.to)
      expect(p.voltage < 11.95, `at ${p.position} m`).toBe(inside)
    }
    expect(ledRun({ ...input, dimVoltage: 5 }).dimmedShare).toBe(0)
  })

  it("dims light by light whole sections, each from the light before to its own", () => {
    // ten lights of 0.2 A on 10 m, fed at the start: light k has lost 0.02 · (10 + 9 + … ) volts
    const run = ledRun({
      length: 10,
      current: 2,
      lightCount: 10,
      trackResistance: 0.05,
      feeds: [{ position: 0, sourceVoltage: 12 }],
      dimVoltage: 11.3,
    })
    const volts = Array.from({ length: 10 }, (_, k) => 12 - 0.02 * Array.from({ length: k + 1 }, (_v, j) => 10 - j).reduce((a, b) => a + b))
    run.profile.forEach((p, k) => {
      expect(p.voltage).toBeCloseTo(volts[k] as number, 12)
    })
    const first = volts.findIndex((v) => v < 11.3)
    expect(run.dimmed.map((d) => [d.from, d.to])).toEqual([[first, 10]])
    expect(run.dimmedShare).toBeCloseTo((10 - first) / 10, 12)
  })

  it("refuses a run that loses all its voltage and names a current that just would not", () => {
    const input = { length: 10, current: 20, trackResistance: 0.2, feeds: [{ position: 0, sourceVoltage: 5 }] }
    const refusal = ledRun.attempt(input)
    expect(!refusal.ok && "noSolution" in refusal.error && refusal.error.noSolution).toBe("insufficient-voltage")
    if (refusal.ok || !("nearest" in refusal.error)) return
    const most = refusal.error.nearest.current as number
    expect(ledRun.attempt({ ...input, current: most * 0.999 }).ok).toBe(true)
    expect(ledRun.attempt({ ...input, current: most * 1.001 }).ok).toBe(false)
  })
})
