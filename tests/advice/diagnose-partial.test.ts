import { describe, expect, it } from "vitest"
import { askables } from "../../src/advice/diagnose/ask.js"
import { asPlanned, members } from "../../src/advice/diagnose/built.js"
import { diagnose, diagnosis, type RigReading } from "../../src/advice/index.js"
import type { Rig } from "../../src/rig/index.js"
import { emptyState } from "../../src/rig/mechanisms/mechanism.js"
import { motionModel } from "../../src/rig/run/motion-model.js"
import { buildMotion, type RigSi } from "../../src/rig/whole/faults.js"
import type { InputError } from "../../src/solver/index.js"
import { creature } from "../helpers/rigs.js"
import { creatures } from "./creatures.js"

// few readings, wrong ones and ones that contradict each other, as makers bring them

const { wings, heron, jaw } = creatures
const faults = (rig: Rig, readings: readonly RigReading[]) => {
  try {
    diagnosis.read({ rig, readings })
    return []
  } catch (error) {
    return (error as InputError).issues.map(({ path }) => path.join("."))
  }
}

describe("readings ten times off", () => {
  it.each([
    [[{ type: "voltage", at: "pack", during: "rest", value: "1.2 V" }]],
    [[{ type: "voltage", at: "pack", during: "rest", value: "120 V" }]],
    [
      [
        { type: "time", value: "1 s" },
        { type: "time", way: "back", value: "9.4 s" },
        { type: "voltage", at: "pack", during: "rest", value: "12 V" },
      ],
    ],
  ] as readonly (readonly [readonly RigReading[]])[])("are no fault of the rig, however few they are: %j", (readings) => {
    const { outcome, verdict } = diagnose(wings.rig, readings)
    expect(outcome).toBe("unexplained")
    expect(verdict).toMatch(/about (10 times|1\/10 of) what was planned: check its decimal point and its unit/)
    expect(verdict).not.toMatch(/e-|\d{5}/)
  })
  it("a time ten times too long and nothing else has more than one explanation", () => {
    const found = diagnose(wings.rig, [{ type: "time", value: "100 s" }])
    expect(found.candidates.length).toBeGreaterThan(3)
    expect(found.candidates[0]?.plausibility).toBeLessThan(0.5)
    expect(found.next).not.toBeNull()
  })
})

describe("readings that contradict each other", () => {
  it.each([
    [
      [
        { type: "time", value: 9.9 },
        { type: "time", value: 20 },
      ],
    ],
    [
      [
        { type: "stops-at", share: 0.4 },
        { type: "swing", value: "90 deg" },
      ],
    ],
  ] as readonly (readonly [readonly RigReading[]])[])("are unexplained: %j", (readings) => {
    const { outcome, verdict } = diagnose(wings.rig, readings)
    expect(outcome).toBe("unexplained")
    expect(verdict).toContain("Read again")
  })
  it("what cannot be read on that motion is told at its place", () => {
    expect(faults(wings.rig, [{ type: "reach", value: "0.1 m" }])).toEqual(["readings.0"])
    expect(faults(wings.rig, [{ type: "swing", value: "90 deg" }])).toEqual([])
    const fold = creature("folding-skew-wing")
    expect(faults(fold, [{ type: "reach", value: "0.1 m" }])).toEqual(["readings.0"])
    expect(faults(jaw.rig, [{ type: "one-side-slower" }, { type: "wrong-way", what: "one-of-a-pair" }])).toEqual([
      "readings.0",
      "readings.1",
    ])
    expect(faults(wings.rig, [{ type: "one-side-slower" }, { type: "wrong-way", what: "one-of-a-pair" }])).toEqual([])
    // its cells are at 25 °C in the document
    expect(faults(wings.rig, [{ type: "slow-in-the-cold", temperature: "25 degC" }])).toEqual(["readings.0.temperature"])
    expect(faults(wings.rig, [{ type: "slow-in-the-cold", temperature: "24.9 degC" }])).toEqual([])
    // no cells: a room's 20 °C
    expect(faults(heron.rig, [{ type: "slow-in-the-cold", temperature: "20 degC" }])).toEqual(["readings.0.temperature"])
  })
})

describe("what is seen, heard and felt alone", () => {
  it.each([
    [{ type: "sound", sound: "gritty" }, "Gritty sound from wings"],
    [{ type: "sound", sound: "humming" }, "Humming sound from wings"],
    [{ type: "warm", part: "source", at: "pack" }, "Pack warmer than it should be"],
  ] as readonly (readonly [RigReading, string])[])("%j is not told to be as planned", (reading, words) => {
    const { verdict, next } = diagnose(wings.rig, [reading])
    expect(verdict).toContain(`${words}: not as planned`)
    expect(verdict).not.toContain("nothing need be wrong")
    expect(next).not.toBeNull()
  })
  it("what hums has a voltage, and what stands silent may have none", () => {
    const silent = diagnose(wings.rig, [{ type: "does-not-move" }])
    const hums = diagnose(wings.rig, [{ type: "does-not-move" }, { type: "sound", sound: "humming" }])
    const open = (found: typeof hums) => found.candidates.find((one) => one.faults[0] === "open-circuit@actuators")?.plausibility ?? 0
    expect(open(silent)).toBeGreaterThan(2 * open(hums))
  })
  it("a bus with a voltage and a drive without a current: the drive's own lead", () => {
    const found = diagnose(wings.rig, [
      { type: "does-not-move" },
      { type: "voltage", at: "actuators", during: "stalled", value: "12 V" },
      { type: "current", during: "stalled", value: 0 },
    ])
    expect([found.outcome, found.candidates[0]?.faults[0]]).toEqual(["one-fault", "drive-open@wings"])
  })
  it("what moves and then switches off was never without a supply", () => {
    const { candidates } = diagnose(heron.rig, [{ type: "switches-off" }])
    const fit = candidates.filter((one) => one.plausibility > 0).map((one) => one.faults[0])
    expect(fit.length).toBeGreaterThan(1)
    expect(fit.filter((name) => /^(open-circuit|asleep|drive-open)@/.test(name ?? ""))).toEqual([])
  })
})

describe("what is remembered while faults are tried", () => {
  it("shows what the mechanisms themselves show", () => {
    const rig = creature("nine-feather-fan")
    const si = diagnosis.read({ rig, readings: [{ type: "sound", motion: rig.motions[0]?.name ?? "", sound: "gritty" }] })
      .rig as unknown as RigSi
    const kept = asPlanned(si).motions
    si.motions.forEach((motion, i) => {
      const plain = motionModel(motion, buildMotion(members, motion, ["motions", i]))
      plain.parts.forEach(({ mechanism, start, sign }, k) => {
        // each place twice, another in between: the second time from what was kept
        for (const step of [0, 0.02, 0, 0.02]) {
          const q = start + sign * step
          const [own, other] = [emptyState(), emptyState()]
          mechanism.at(q, own)
          kept[i]?.model.parts[k]?.mechanism.at(q, other)
          expect(other).toEqual(own)
          expect(kept[i]?.model.parts[k]?.mechanism.pose(q)).toEqual(mechanism.pose(q))
        }
      })
    })
  })
  it("every reading that can be asked for can be answered", () => {
    for (const rig of [wings.rig, heron.rig, jaw.rig, creature("umbrella-legs")]) {
      const all = askables(rig)
      expect(new Set(all.map((one) => one.label)).size).toBe(all.length)
      for (let i = 0; i < all.length; i += 60) {
        const readings = all.slice(i, i + 60).map((one) => one.with(one.example ?? ""))
        expect(() => diagnosis.read({ rig, readings })).not.toThrow()
      }
    }
  })
})
