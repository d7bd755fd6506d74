// Two rigs side by side, held to assessments, sums and differences made here.
import { describe, expect, it } from "vitest"
import { compare } from "../../src/advice/index.js"
import { withValue } from "../../src/advice/remedies/paths.js"
import { assessRig, move, type Rig, rigWith } from "../../src/rig/index.js"
import { demo } from "../helpers/rigs.js"

const rig = rigWith().read(demo("folding-skew-wing"))
const wire = (of: Rig, awg: number) => withValue(of, "power.buses[0].run.awg", awg)

describe("compare", () => {
  it("finds nothing between a rig and itself", () => {
    const same = compare(rig, rig)
    expect(same.verdicts).toEqual([])
    expect(same.lines).toEqual(["Nothing that was judged has changed."])
    for (const { out, back } of same.motions) for (const one of [out, back]) expect(one.after).toBe(one.before)
  })

  it("tells each verdict that changed, one way and the other, as two assessments do", () => {
    const thin = wire(rig, 36)
    const [a, b] = [rig, thin].map((one) => assessRig(one).findings) as [
      ReturnType<typeof assessRig>["findings"],
      ReturnType<typeof assessRig>["findings"],
    ]
    const naive = a.flatMap((one) => {
      const other = b.find(({ id, subject }) => id === one.id && subject === one.subject)
      return other && other.verdict !== one.verdict ? [`${one.id} ${one.subject} ${one.verdict} ${other.verdict}`] : []
    })
    const there = compare(rig, thin)
    expect(there.verdicts.map(({ id, subject, before, after }) => `${id} ${subject} ${before} ${after}`).sort()).toEqual(naive.sort())
    expect(there.verdicts.some(({ id, change }) => id === "drop" && change === "worse")).toBe(true)
    const home = compare(thin, rig)
    expect(home.verdicts.map(({ id, change }) => [id, change])).toEqual(
      there.verdicts.map(({ id, change }) => [id, change === "worse" ? "better" : change === "better" ? "worse" : "other"]),
    )
    // seconds: no less than the move as stated, and longer on thin wire
    const [motion] = there.motions
    expect(motion?.out.before).toBeGreaterThanOrEqual(move(rig).outDuration * (1 - 1e-6))
    expect((motion?.out.after ?? 0) - (motion?.out.before ?? 0)).toBeGreaterThan(0.5 * (move(thin).outDuration - move(rig).outDuration))
    expect(there.lines.some((line) => /slower out/.test(line))).toBe(true)
    expect(home.lines.some((line) => /quicker out/.test(line))).toBe(true)
  })

  it("tells grams and price by the parts listed", () => {
    const [part] = rig.parts ?? []
    const heavier = { ...rig, parts: [...(rig.parts ?? []), { ...part, name: "cap", mass: "150 g", count: 2, price: 7 }] } as Rig
    const { mass, price, lines } = compare(rig, heavier)
    expect((mass.after ?? 0) - (mass.before ?? 0)).toBeCloseTo(0.3, 12)
    expect((price.after ?? 0) - (price.before ?? 0)).toBeCloseTo(14, 12)
    expect(lines).toContain("300 g heavier.")
    expect(lines).toContain("14 dearer by the parts listed.")
  })

  it("tells a motion that comes to stand still, and one that moves again", () => {
    const stuck = withValue(rig, "motions[0].mechanisms[0].masses[0].mass", "45 kg")
    const gone = compare(rig, stuck)
    expect(gone.motions[0]?.out.after).toBeNull()
    expect(gone.lines.some((line) => /fold: stopped on its way/.test(line))).toBe(true)
    expect(compare(stuck, rig).lines.some((line) => /\(was stopped\)/.test(line))).toBe(true)
  })
})
