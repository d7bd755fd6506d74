// What may run at the same time, how the wearer may lean, and what a failure takes with it.
import { describe, expect, it } from "vitest"
import { assessRig, move, type Rig } from "../../src/rig/index.js"
import { InputError } from "../../src/solver/index.js"
import { creature } from "../helpers/rigs.js"

// on a weak supply without a converter, so that what one draws slows the other
const umbrella = creature("umbrella-legs")
const legs: Rig = {
  ...umbrella,
  power: {
    sources: [{ type: "mains-supply", name: "supply", voltage: 13, currentLimit: 20, resistance: "0.4 ohm" }],
    buses: [{ name: "leg line", from: "supply", run: { length: "0.4 m", awg: 20, contacts: 2, insulation: "80 degC" }, fuseRating: "4 A" }],
  },
}
const [one, other] = legs.motions.map((motion) => motion.name) as [string, string]
const only = (rig: Rig, motion: string) => move({ ...rig, motion })
const find = (rig: Rig, id: string, subject: string) => assessRig(rig).findings.find((f) => f.id === id && f.subject === subject)

/** The same rig with the other motion on a source of its own, which neither helps nor hinders. */
const apart = (rig: Rig): Rig => {
  const power = rig.power as NonNullable<Rig["power"]>
  return {
    ...rig,
    motions: rig.motions.map((motion) => (motion.name === other ? { ...motion, bus: "own line" } : motion)),
    power: {
      ...power,
      sources: [...power.sources, { type: "mains-supply", name: "own supply", voltage: 12, currentLimit: 20, resistance: 0 }],
      buses: [...power.buses, { name: "own line", from: "own supply", run: { length: 0.1, awg: 18 } }],
    },
  }
}

describe("a programme", () => {
  const together = only(legs, one)
  const alone = only(apart(legs), one)
  // how long the other one takes while all draws its most
  const takes = only(legs, other).outDuration

  it("keeps apart what never runs at once, on a source of its own as well as on the same one later", () => {
    expect(together.outDuration).toBeGreaterThan(alone.outDuration * 1.0001)
    const after = {
      ...legs,
      programme: [
        { at: 0, motion: other, to: 1 },
        { at: takes * 1.0001, motion: one, to: 1 },
      ],
    }
    const during = {
      ...legs,
      programme: [
        { at: 0, motion: other, to: 1 },
        { at: takes * 0.9999, motion: one, to: 1 },
      ],
    }
    expect(only(after, one).outDuration / alone.outDuration).toBeCloseTo(1, 12)
    expect(only(during, one).outDuration / together.outDuration).toBeCloseTo(1, 12)
  })

  it("counts a motion that it does not name as running at any time", () => {
    const silent = { ...legs, programme: [{ at: 0, motion: one, to: 1 }] }
    expect(only(silent, one).outDuration).toBe(together.outDuration)
  })

  it("counts one that its steps never move as running at any time as well, since nothing says when else it would", () => {
    const still = {
      ...legs,
      programme: [
        { at: 0, motion: other, to: 0 },
        { at: 1, motion: one, to: 1 },
      ],
    }
    expect(only(still, one).outDuration).toBe(together.outDuration)
  })

  it("lets a step that begins before the last one is over go on for the whole of both", () => {
    const back = only(legs, other).backDuration
    const programme = (share: number) => [
      { at: 0, motion: other, to: 1 },
      { at: takes * 0.1, motion: other, to: 0 },
      { at: (takes + back) * share, motion: one, to: 1 },
    ]
    expect(only({ ...legs, programme: programme(0.999) }, one).outDuration / together.outDuration).toBeCloseTo(1, 12)
    expect(only({ ...legs, programme: programme(1.001) }, one).outDuration / alone.outDuration).toBeCloseTo(1, 12)
  })

  it("counts a step to where a motion already is as no step, and order in the list as none", () => {
    const first = { at: 0, motion: other, to: 1 }
    const still = { at: takes * 1.5, motion: other, to: 1 }
    const late = { at: takes * 1.6, motion: one, to: 1 }
    for (const programme of [
      [first, still, late],
      [late, still, first],
    ])
      expect(only({ ...legs, programme }, one).outDuration / alone.outDuration).toBeCloseTo(1, 12)
  })

  it("is judged by the currents of what runs together, in no case by more than all", () => {
    const source = (legs.power as NonNullable<Rig["power"]>).sources[0]?.name as string
    const current = (rig: Rig) => find(rig, "source-current", source)?.value as number
    expect(current(legs)).toBeGreaterThan(0)
    const programme: NonNullable<Rig["programme"]> = [
      { at: 0, motion: other, to: 1 },
      { at: "10 min", motion: one, to: 1 },
    ]
    const apartNow = current({ ...legs, programme })
    // each alone, the other standing on its bus
    const each = [one, other].map((name) => current({ ...legs, motions: legs.motions.filter((motion) => motion.name === name) }))
    expect(apartNow).toBeCloseTo(Math.max(...each), 9)
    expect(current(legs)).toBeGreaterThan(apartNow)
  })

  it("leaves a step the time until the same motion has to move again", () => {
    const longest = Math.max(...(["duration-out"] as const).map((id) => find({ ...legs, motions: legs.motions }, id, one)?.value as number))
    const rig = (slot: number): Rig => ({
      ...legs,
      programme: [
        { at: 1, motion: one, to: 1 },
        { at: 1 + slot, motion: one, to: 0 },
      ],
    })
    expect(find(rig(longest * 0.999), "programme-slot", one)?.verdict).toBe("falls short")
    expect(find(rig(longest * 1.001), "programme-slot", one)?.verdict).toBe("marginal")
    expect(find(rig(longest * 1.2), "programme-slot", one)?.verdict).toBe("meets")
    expect(find(legs, "programme-slot", one)).toBeUndefined()
  })

  it("names motions that are there, each at a time of its own", () => {
    const faults = (programme: NonNullable<Rig["programme"]>) => {
      try {
        assessRig({ ...legs, programme })
      } catch (error) {
        if (error instanceof InputError) return error.issues.map((fault) => fault.path.join("."))
        throw error
      }
      return []
    }
    expect(faults([{ at: 0, motion: "no such leg", to: 1 }])).toEqual(["programme.0.motion"])
    expect(
      faults([
        { at: 5, motion: one, to: 1 },
        { at: "5 s", motion: one, to: 0 },
      ]),
    ).toEqual(["programme.1.at"])
    expect(
      faults([
        { at: 5, motion: one, to: 1 },
        { at: 5, motion: other, to: 1 },
      ]),
    ).toEqual([])
  })
})

describe("a wearer who leans", () => {
  const rig = creature("four-bar-dragon")
  it("is judged leaning as stated, upright and to the other side, whichever is hardest", () => {
    const lean: NonNullable<Rig["posture"]> = { leanForward: "12 deg", leanLeft: "9 deg" }
    const postures: readonly NonNullable<Rig["posture"]>[] = [
      lean,
      { leanForward: 0, leanLeft: 0 },
      { leanForward: "12 deg", leanLeft: "-9 deg" },
    ]
    for (const { name, drive } of rig.motions) {
      const efforts = postures.map((posture) => {
        const { out, back } = move({ ...rig, posture, motion: name })
        return Math.max(...[out, back].map((way) => (way.peakForce ?? way.peakTorque) as number))
      })
      const finding = find({ ...rig, posture: lean }, "rated-effort", name)
      if (finding?.value === null || finding === undefined) continue
      expect(finding.value, `${name}, ${drive.type}`).toBeGreaterThanOrEqual(Math.max(...efforts) * (1 - 1e-9))
    }
    const { findings } = assessRig(rig)
    expect(findings.some((f) => f.condition.includes("leaning"))).toBe(false)
  })

  it("on one side or the other is judged alike, though one of them is harder for a single wing", () => {
    const { motion: _, ...wings } = move.example
    const single: Rig = {
      ...wings,
      motions: wings.motions.map((m) => ({ ...m, mechanisms: m.mechanisms.map((part) => ({ ...part, mirrored: false })) })),
    }
    const efforts = (["9 deg", "-9 deg"] as const).map((leanLeft) => {
      const posture = { leanLeft }
      const out = move({ ...single, posture })
      return [find({ ...single, posture }, "rated-effort", "wings")?.value as number, out.out.peakForce as number] as const
    })
    const [[here, left], [there, right]] = efforts as [(typeof efforts)[0], (typeof efforts)[0]]
    expect(here).toBeCloseTo(there, 9)
    expect(Math.abs(left / right - 1)).toBeGreaterThan(0.01)
    expect(here).toBeGreaterThanOrEqual(Math.max(left, right) * (1 - 1e-9))
  })
})

describe("what a failure takes with it", () => {
  it("says which check has to be mended first, and that one falls short", () => {
    const heavy: Rig = {
      ...legs,
      motions: legs.motions.map((motion) =>
        motion.name === one && "ratedForce" in motion.drive ? { ...motion, drive: { ...motion.drive, ratedForce: "1 N" } } : motion,
      ),
    }
    const { findings } = assessRig(heavy)
    const hanging = findings.filter((f) => f.because !== null)
    expect(hanging.length).toBeGreaterThan(2)
    for (const { because, verdict } of hanging) {
      expect(verdict).toBe("cannot be judged")
      const root = findings.find((f) => `${f.id}: ${f.subject}` === because)
      expect(root?.verdict, `${because}`).toBe("falls short")
    }
  })
})
