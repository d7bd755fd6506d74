import { readFileSync, writeFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { rows } from "../../src/advice/diagnose/faults.js"
import { meters, strays } from "../../src/advice/diagnose/meters.js"
import { Asked } from "../../src/advice/diagnose/predict.js"
import { type Diagnosis, diagnose, diagnosis, type RigReading } from "../../src/advice/index.js"
import { move, type Rig } from "../../src/rig/index.js"
import { creature } from "../helpers/rigs.js"
import type { Creature } from "./creatures.js"
import { type Count, page } from "./diagnosis-page.js"
import { creatures, farness, listed, outcomeOf, type Planted, random, readOf, stalling, taskFor, unlisted } from "./judge.js"

// A second route throughout: builds are made by tests/advice/synthetic.ts, bodies moved on in time by forces, and judged here.

const file = new URL("./diagnosis-counts.json", import.meta.url)
const counted = () => JSON.parse(readFileSync(file, "utf8")) as Record<string, Count>
const SEED = 20261129

const has = (faults: readonly string[], planted: readonly Planted[]) =>
  faults.length === planted.length && planted.every((one) => faults.some((name) => one.names.includes(name)))

/** Diagnoses builds one after another. */
function count(c: Creature, builds: readonly (readonly Planted[])[], seed: number): Count {
  const { even, uniform } = random(seed)
  const found = { builds: 0, first: 0, three: 0, unexplained: 0, asPlanned: 0, pair: 0, wrongPair: 0 }
  for (const planted of builds) {
    const sizes = planted.map(() => uniform())
    const list = readOf(c, (p) => planted.reduce((now, one, i) => one.plant(now, sizes[i]!), p), even)
    if (!list) continue
    const { outcome, all } = outcomeOf(c, list)
    const named = all.map((one) => one.faults.map((f) => f.name))
    const fitted = outcome === "one-fault" || outcome === "two-faults" || (planted.length === 2 && outcome === "unexplained")
    found.builds++
    if (fitted && named[0] && has(named[0], planted)) found.first++
    if (fitted && named.slice(0, 3).some((one) => has(one, planted))) found.three++
    if (outcome === "unexplained" || outcome === "two-faults") found.unexplained++
    if (outcome === "as-planned") found.asPlanned++
    if (outcome === "two-faults") found[named[0] && has(named[0], planted) ? "pair" : "wrongPair"]++
  }
  return found
}

const repeated = <T>(list: readonly T[], times: number): T[] => Array.from({ length: times }, () => list).flat()
const shift = (text: string) => [...text].reduce((sum, char) => (Math.imul(sum, 31) + char.charCodeAt(0)) | 0, 7)

/** Faults strong enough that exact readings of an exact build show them. */
const SHOWS = 4
/** How far from every single fault an unlisted one is. */
const OVER = 3
/** From here on the test of fit has power to spare; below it one build in a few passes by chance, whatever is tested. */
const CLEAR = 6

/** The sets of builds of a creature, by what is wrong with them. */
const sets: Readonly<Record<string, (c: Creature, wide: boolean) => readonly (readonly Planted[])[]>> = {
  healthy: (_, wide) => repeated([[]], wide ? 40 : 1),
  "one listed fault": (c, wide) => {
    const { uniform } = random(SEED)
    // strong enough to show at all
    return repeated(listed(c), wide ? 3 : 1)
      .filter((_, i) => wide || i % 8 === 1)
      .flatMap(({ names, plant }) => {
        const u = uniform()
        return farness(c, (p) => plant(p, u), false) >= SHOWS ? [[{ names, plant: (p) => plant(p, u) }] satisfies Planted[]] : []
      })
  },
  "two listed faults": (c, wide) => {
    const all = listed(c)
    const pairs = all.flatMap((a, i) => all.slice(i + 1).map((b) => [a, b] as const))
    const apart = pairs.filter(([a, b]) => !a.names.some((name) => b.names.includes(name)))
    return wide ? repeated(apart, 1).filter((_, i) => i % 10 === 0) : apart.slice(11, 12)
  },
  "an unlisted fault, 3 to 6 standard deviations from each listed one": (c) =>
    far(c, 3).flatMap((one) => (one.off <= CLEAR ? [one.planted] : [])),
  "an unlisted fault, over 6 standard deviations from each listed one": (c) =>
    far(c, 3).flatMap((one) => (one.off > CLEAR ? [one.planted] : [])),
  "does not come through": (c, wide) =>
    repeated(
      stalling(c).map((one) => [one]),
      wide ? 12 : 1,
    ).slice(0, wide ? 99 : 1),
}

/** Unlisted faults over 3 standard deviations from every single one, with how far they are. */
function far(c: Creature, times: number): readonly { readonly planted: readonly Planted[]; readonly off: number }[] {
  const { uniform } = random(SEED)
  return Object.entries(unlisted).flatMap(([name, plant]) =>
    Array.from({ length: times }, () => uniform()).flatMap((u) => {
      const off = farness(c, (p) => plant(p, u), true)
      return off > OVER ? [{ off, planted: [{ names: [name], plant: (p) => plant(p, u) }] }] : []
    }),
  )
}

describe("diagnosis of builds made by another model", () => {
  const wide = Boolean(process.env.WIDE)
  for (const [name, c] of Object.entries(creatures))
    for (const [set, builds] of Object.entries(sets))
      it.skipIf(!wide)(
        `${name}, ${set}: as counted in the page`,
        () => {
          const found = count(c, builds(c, true), SEED + shift(name + set))
          const key = `${name} · ${set}`
          if (process.env.WRITE_DOCS) writeFileSync(file, `${JSON.stringify({ ...counted(), [key]: found }, null, 2)}\n`)
          expect(found).toEqual(counted()[key])
        },
        900_000,
      )
  const over = (set: string, of: (one: Count) => number) => {
    const all = Object.entries(counted()).filter(([key]) => key.endsWith(set))
    expect(all.length % Object.keys(creatures).length).toBe(0)
    expect(all.length).toBeGreaterThan(0)
    return all.reduce((sum, [, one]) => sum + of(one), 0) / all.reduce((sum, [, one]) => sum + one.builds, 0)
  }
  it("keeps what is wanted in the counts of the page", () => {
    expect(over("one listed fault", (c) => c.first)).toBeGreaterThanOrEqual(0.95)
    expect(over("healthy", (c) => c.builds - c.asPlanned)).toBeLessThanOrEqual(0.05)
    expect(over("from each listed one", (c) => c.unexplained)).toBeGreaterThanOrEqual(0.9)
  })
  it("the page says what was counted", () => {
    const text = page(counted())
    const at = new URL("../../docs/diagnosis.md", import.meta.url)
    if (process.env.WRITE_DOCS) writeFileSync(at, text)
    expect(readFileSync(at, "utf8")).toBe(text)
  })
  it("a light sample: faults named, unlisted ones not, healthy ones left alone", () => {
    const { wings, heron, jaw } = creatures
    const shown = count(heron, sets["one listed fault"]!(heron, false), 5)
    expect(shown.builds).toBe(2)
    expect(shown.first).toBe(shown.builds)
    expect(count(wings, sets.healthy!(wings, false), 3).asPlanned).toBe(1)
    const rubs: Planted = { names: ["rubs"], plant: (p) => unlisted["rubs more and more towards the end"]!(p, 0.5) }
    expect(count(jaw, [[rubs]], 2)).toMatchObject({ builds: 1, unexplained: 1 })
    const stiff = stalling(jaw)[0]!
    expect(count(jaw, [[stiff]], 3)).toMatchObject({ builds: 1, three: 1 })
  })
})

const wingsRig = creatures.wings.rig
const first = (found: Diagnosis) => found.candidates[0]!.faults.join("+")

describe("what a diagnosis predicts (second route: the full move)", () => {
  it.each(["four-bar-dragon", "umbrella-legs", "folding-skew-wing"])("%s: times, currents and voltages", (name) => {
    const rig = { ...creature(name), programme: [] } as Rig
    // the full move has everything else at work: one motion alone, as a maker reads it
    const alone = { ...rig, motions: rig.motions.slice(0, 1) } as Rig
    const full = move(alone)
    const { planned } = taskFor({ ...creatures.wings, rig: alone }, [{ type: "time", value: 1 }])
    for (const [way, one] of [
      [1, full.out],
      [-1, full.back],
    ] as const) {
      const gone = new Asked(planned).passage(0, way)
      expect(gone.reached).toBe(1)
      expect(Math.abs(gone.time / one.duration - 1)).toBeLessThan(2e-3)
      // the mean current of the sources over the way is what their energy at open voltage asks
      const open = planned.power!.sources.length === 1 ? one.energy.source / one.duration : Number.NaN
      const shown = [...gone.moving.sourceAmps].reduce((a, b) => a + b, 0)
      const volts = one.energy.insideSource > 0 ? open / shown : open / shown
      expect(volts).toBeGreaterThan(1)
      expect(gone.moving.sourceVolts[0]! / volts).toBeGreaterThan(0.8)
      expect(gone.moving.sourceVolts[0]! / volts).toBeLessThanOrEqual(1 + 2e-3)
    }
  })
})

describe("what is seen, heard and felt", () => {
  const still: readonly RigReading[] = [{ type: "does-not-move" }]
  it("a bus without voltage that does not move is open on the way there", () => {
    const found = diagnose(wingsRig, [
      ...still,
      { type: "voltage", at: "pack", during: "rest", value: "12.05 V" },
      { type: "voltage", at: "actuators", during: "rest", value: 0 },
    ])
    expect([found.outcome, first(found)]).toEqual(["one-fault", "open-circuit@actuators"])
    expect(found.verdict).toContain("voltmeter")
  })
  it("a source without voltage is asleep or empty", () => {
    const found = diagnose(wingsRig, [...still, { type: "voltage", at: "pack", during: "rest", value: 0 }])
    expect(first(found)).toBe("asleep@pack")
  })
  it("goes the wrong way: polarity", () => {
    expect(first(diagnose(wingsRig, [{ type: "wrong-way" }]))).toBe("reversed@wings")
    expect(first(diagnose(wingsRig, [{ type: "wrong-way", what: "one-of-a-pair" }]))).toBe("one-reversed@wings")
  })
  it("one side slower: that side's hinge or drive, never the pack", () => {
    const found = diagnose(wingsRig, [
      { type: "time", value: "12.5 s" },
      { type: "one-side-slower", value: "2.5 s" },
    ])
    expect(found.outcome).toBe("one-fault")
    expect(first(found)).toMatch(/^one-(hinge-stiff|drive-weak)@/)
  })
  it("fine at home, slow in the cold: grease or cells, and a slow home is no such thing", () => {
    const found = diagnose(wingsRig, [
      { type: "time", value: "10 s" },
      { type: "slow-in-the-cold", temperature: "-5 degC", times: 1.6 },
    ])
    expect(first(found)).toBe("cold-grease@wings")
  })
  it("moves, then switches off: the bank's limit", () => {
    const rig = creatures.heron.rig
    const found = diagnose(rig, [{ type: "switches-off" }, { type: "voltage", at: "bank", during: "rest", value: "5 V" }])
    expect(found.outcome).not.toBe("as-planned")
    expect(
      found.candidates
        .slice(0, 4)
        .some((c) => c.faults[0] === "limit-low@bank" || c.faults[0] === "asleep@bank" || c.faults[0]!.startsWith("contact")),
    ).toBe(true)
  })
  it("a warm plug tells a contact from a wire that is too thin, and the other way round", () => {
    const metered: readonly RigReading[] = [
      { type: "time", value: "11 s" },
      { type: "voltage-drop", along: "actuators", value: "0.6 V" },
    ]
    const plug = diagnose(wingsRig, [...metered, { type: "warm", part: "contact", at: "actuators" }])
    const wire = diagnose(wingsRig, [...metered, { type: "warm", part: "wire", at: "actuators" }])
    expect(first(plug)).toBe("contact@actuators")
    expect(first(wire)).toBe("thin-wire@actuators")
  })
  it("a gritty sound moves suspicion to the gearbox", () => {
    const slow: readonly RigReading[] = [{ type: "time", value: "11.5 s" }]
    const share = (found: Diagnosis) => found.candidates.find((c) => c.faults[0] === "gritty-gearbox@wings")?.plausibility ?? 0
    expect(share(diagnose(wingsRig, [...slow, { type: "sound", sound: "gritty" }]))).toBeGreaterThan(2 * share(diagnose(wingsRig, slow)))
  })
})

describe("the answer", () => {
  it("with a stopwatch alone says how little it knows, and names a reading that tells more", () => {
    const found = diagnose(wingsRig, [{ type: "time", value: "13 s" }])
    expect(found.outcome).toBe("one-fault")
    expect(found.candidates[0]!.plausibility).toBeLessThan(0.5)
    expect(found.next).not.toBeNull()
    expect(found.verdict).toContain(found.next!.label)
    const shares = found.candidates.map((c) => c.plausibility)
    expect(shares).toEqual([...shares].sort((a, b) => b - a))
  })
  it("never names a pair alone without two readings to spare", () => {
    for (const [out, back] of [
      [30, 9],
      [8, 20],
      [6, 30],
    ] as const) {
      const found = diagnose(wingsRig, [
        { type: "time", value: out },
        { type: "time", way: "back", value: back },
        { type: "voltage", at: "actuators", value: 14 },
      ])
      expect(found.outcome).not.toBe("two-faults")
    }
  })
  it("tells faults of names and refuses a plan that itself stops", () => {
    const wrong = diagnosis.attempt({
      rig: wingsRig,
      readings: [
        { type: "time", motion: "tail", value: 1 },
        { type: "voltage", at: "pak", value: 1 },
        { type: "warm", part: "converter", at: "actuators" },
        { type: "cell-resistance", source: "actuators", value: 1 },
      ],
    })
    expect(!wrong.ok && "issues" in wrong.error && wrong.error.issues.map((i) => i.path.join("."))).toEqual([
      "readings.0.motion",
      "readings.1.at",
      "readings.2.at",
      "readings.3.source",
    ])
    const motion = wingsRig.motions[0]!
    const heavy = {
      ...motion.mechanisms[0]!,
      masses: [{ name: "bell", mass: "20 kg", radius: 0.8 }],
    } as Rig["motions"][number]["mechanisms"][number]
    const stops = diagnosis.attempt({
      rig: { ...wingsRig, motions: [{ ...motion, mechanisms: [heavy] }] },
      readings: [{ type: "time", value: 1 }],
    })
    expect(!stops.ok && "noSolution" in stops.error && stops.error.noSolution).toBe("plan-does-not-move")
  })
  it("each row of the table shows in something a maker can read, at twice its usual size", () => {
    const seen = new Set<string>()
    for (const rig of [...Object.values(creatures).map((c) => c.rig), creature("nine-feather-fan"), creature("umbrella-legs")] as Rig[]) {
      const task = taskFor({ ...creatures.wings, rig }, [{ type: "time", motion: rig.motions[0]!.name, value: 1 }])
      for (const fault of task.faults) seen.add(fault.row.id)
    }
    const missing = rows.map((row) => row.id).filter((id) => !seen.has(id))
    // these ask for parts that none of the rigs has: parallel strings, a driver's limit, panels, springs
    expect(missing.sort()).toEqual(["driver-limit", "string-missing", "weak-spring", "wind"].sort())
    expect(Object.keys(meters).length + Object.keys(strays).length).toBeGreaterThan(20)
    expect(farness(creatures.wings, (p) => listed(creatures.wings)[0]!.plant(p, 0.5), false)).toBeGreaterThan(SHOWS)
  })
})
