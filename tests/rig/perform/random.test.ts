// Rigs drawn at random: none hangs, none loses a number or energy, and what is told to happen is so in the traces.
import { describe, expect, it } from "vitest"
import { seeded } from "../../../src/numeric/index.js"
import { solvePerform } from "../../../src/rig/perform/solve.js"
import type { Perform } from "../../../src/rig/perform/types.js"
import { InputError, isNoSolution } from "../../../src/solver/index.js"
import { creature } from "../../helpers/rigs.js"
import { members, played, read } from "./kit.js"

const RIGS = process.env.WIDE ? 3000 : 12

/** A creature with masses, cells, wires and limits of its own, and a programme that sends its motions about. */
function drawn(draw: () => number): object {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)] as T
  const si = JSON.parse(JSON.stringify(read(creature(pick(played))))) as unknown
  const times = (low: number, high: number) => low * (high / low) ** draw()
  const shake = (value: unknown, key = ""): unknown => {
    if (Array.isArray(value)) return value.map((one) => shake(one))
    if (typeof value === "object" && value !== null) return Object.fromEntries(Object.entries(value).map(([k, one]) => [k, shake(one, k)]))
    if (typeof value !== "number") return value
    if (/^(mass|hingeFriction|cellResistance|length)$/.test(key)) return value * times(0.5, 2)
    return value
  }
  const rig = shake(si) as { motions: { name: string; drive: object }[]; power: { sources: object[]; buses: object[]; loads: object[] } }
  const actions = [null, "hold", "hiccup", "latch"]
  const length = times(1, 20)
  return {
    ...rig,
    motions: rig.motions.map((m) => ({ ...m, drive: m.drive })),
    power: {
      ...rig.power,
      sources: rig.power.sources.map((s) =>
        "stateOfCharge" in s ? { ...s, stateOfCharge: draw() } : { ...s, currentLimit: times(0.5, 6) },
      ),
      buses: rig.power.buses.map((b) => ({
        ...b,
        limitAction: pick(actions),
        onTime: draw() < 0.3 ? 0 : times(1e-3, 0.3),
        offTime: times(0.01, 1),
      })),
      loads: rig.power.loads.map((l) => ("resetVoltage" in l ? { ...l, resetVoltage: times(3, 14) } : l)),
    },
    programme:
      draw() < 0.3
        ? []
        : Array.from({ length: 1 + Math.floor(6 * draw()) }, (_, k) => ({
            at: k * 0.1 + length * draw(),
            motion: pick(rig.motions).name,
            to: pick([0, 1, draw()]),
          })),
    stage: {
      restitution: pick([0, 0.3, 0.7]),
      restartTime: times(0.05, 3),
      rampTime: draw(),
      duration: draw() < 0.5 ? null : length,
      steps: draw() < 0.2 ? { stepRate: 1 + draw(), shake: draw() < 0.5 ? null : draw() } : null,
      gust: draw() < 0.2 ? { at: draw(), duration: times(0.1, 3), windSpeed: 25 * draw(), from: 6 * draw() } : null,
    },
  }
}

/** What is told against the traces. */
function untrue(out: Perform): string[] {
  const faults: string[] = []
  const expectTrue = (holds: boolean, text: string) => {
    if (!holds) faults.push(text)
  }
  for (const e of out.events) {
    const motion = out.motions.find((m) => m.name === e.subject)
    const here = out.times.flatMap((t, i) => (Math.abs(t - e.time) <= 1e-12 * Math.max(1, t) ? [i] : []))
    const near = (want: number) => here.some((i) => Math.abs((motion?.travel[i] ?? Number.NaN) - want) < 1e-7)
    if (motion && e.place !== null && e.type !== "stops-short" && here.length)
      expectTrue(near(e.place), `${e.sentence} ${here.map((i) => motion.travel[i])}`)
    if (e.type === "strikes") expectTrue((e.energy ?? -1) >= 0 && (e.speed ?? -1) >= 0, e.sentence)
    if (e.type === "stops-short")
      expectTrue(
        out.times.some((t, i) => t >= e.time && ((motion?.turning ?? motion?.speed)?.[i] ?? 1) === 0),
        e.sentence,
      )
    if (e.type === "overload") expectTrue((e.current ?? 0) > 0, e.sentence)
  }
  out.times.forEach((t, i) => {
    if (i > 0 && t < (out.times[i - 1] as number)) faults.push(`time runs back at ${t}`)
  })
  for (const m of out.motions) for (const x of m.travel) if (!(x >= -1e-9 && x <= 1 + 1e-9)) faults.push(`${m.name} at ${x}`)
  return faults
}

const endless = (value: unknown): boolean =>
  typeof value === "number" ? !Number.isFinite(value) : typeof value === "object" && value !== null && Object.values(value).some(endless)

describe("rigs drawn at random", () => {
  it(`${RIGS} of them end, keep their energy and tell what is so`, () => {
    const draw = seeded(20261129)
    let answered = 0
    for (let k = 0; k < RIGS; k++) {
      const rig = drawn(draw)
      let si: ReturnType<typeof read>
      try {
        si = read(rig)
      } catch (error) {
        if (error instanceof InputError) continue
        throw error
      }
      const out = solvePerform(members, si)
      if (isNoSolution(out)) {
        expect(out.shortBy).toBeGreaterThan(0)
        continue
      }
      answered++
      expect(endless(out), `rig ${k}`).toBe(false)
      expect(untrue(out), `rig ${k}`).toEqual([])
      expect(Math.abs(out.energy.residual), `rig ${k}`).toBeLessThan(1e-6)
    }
    expect(answered).toBeGreaterThan(RIGS / 3)
  })
})
