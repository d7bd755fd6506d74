// Gaps that close beside what moves, by brute force over the travel, and the first edition's own.
import { describe, expect, it } from "vitest"
import type { Rig } from "../../src/rig/index.js"
import { fromVersion1 } from "../../src/rig/whole/migrate.js"
import { creature, demo } from "../helpers/rigs.js"
import { boom, changed, finding, neck, START } from "./boom.js"

const gap = (rig: Rig) => finding(rig, "pinch", "boom")
const fixed = (height: number) => [{ x1: 0.5, y1: height, x2: 0.5, y2: 0.6 }]

/** Least distance of a fixed bar's lower end from the arm's line, from a hinge zone on, less both halves of the thickness. */
function brute(height: number): number {
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k <= 20000; k++) {
    const angle = -START + (START * k) / 20000
    const along = Math.min(1, Math.max(0.1, 0.5 * Math.cos(angle) + height * Math.sin(angle)))
    least = Math.min(least, Math.hypot(0.5 - along * Math.cos(angle), height - along * Math.sin(angle)))
  }
  return least - 0.03
}

describe("a gap beside the boom", () => {
  it("is as narrow as brute force finds, and held to the published gap of the part that can get in", () => {
    for (const height of [0.2, 0.16]) {
      const found = gap(changed(boom, neck("pinch", "fixed"), fixed(height)))
      expect(Math.abs((found.value as number) - brute(height))).toBeLessThan(1e-4)
      // ISO 13854: 120 mm for an arm
      expect(found).toMatchObject({ verdict: height === 0.2 ? "meets" : "marginal", limit: 0.12, relation: "at-least", severity: "safety" })
      expect(found.utilisation).toBeCloseTo(0.12 / brute(height), 2)
    }
  })
  it("falls short where it closes, and for more of a body", () => {
    expect(gap(changed(boom, neck("pinch", "fixed"), fixed(0.1))).verdict).toBe("falls short")
    expect(gap(changed(boom, neck("pinch", "reachable"), "body")).verdict).toBe("falls short")
    expect(gap(changed(boom, neck("pinch", "armThickness"), "150 mm")).verdict).toBe("falls short")
    expect(gap(changed(boom, ["day", "moves"], 3))).toEqual(gap(boom))
  })
  it("names what is missing, and a zone that leaves nothing", () => {
    expect(gap(changed(boom, neck("pinch"), null)).missing).toBe("motions[0].mechanisms[0].pinch")
    expect(gap(changed(boom, neck("pinch", "hingeZone"), "1.2 m")).missing).toBe("motions[0].mechanisms[0].pinch.hingeZone")
  })
  it("is not judged where the outline leaves its plane", () => {
    const wing = changed(creature("folding-skew-wing"), ["motions", 0, "mechanisms", 0, "pinch"], { fixed: fixed(0.2) })
    expect(finding(wing, "pinch", "fold").verdict).toBe("cannot be judged")
  })
  it("of one like it that states none is not passed on the other's account", () => {
    const fan = changed(creature("nine-feather-fan"), ["motions", 0, "mechanisms", 0, "pinch"], { fixed: [{ x1: 2, y1: 0, x2: 3, y2: 0 }] })
    expect(finding(fan, "pinch", "fan").missing).toBe("motions[0].mechanisms[1].pinch")
  })
})

describe("gaps of several mechanisms", () => {
  const [bar] = boom.motions[0]?.mechanisms ?? []
  const beside = (pinch: unknown) => changed(boom, ["motions", 0, "mechanisms"], [bar, { ...bar, name: "tail", pinch }])
  it("are not passed where all of one lies within its hinge zone", () => {
    const hidden = gap(beside({ fixed: fixed(0.2), hingeZone: "1.2 m" }))
    expect(hidden).toMatchObject({ verdict: "not enough data", missing: "motions[0].mechanisms[1].pinch.hingeZone" })
  })
  it("tell one that falls short before another that is not judged, whichever comes first", () => {
    const close = { fixed: fixed(0.1) }
    const unseen = { fixed: fixed(0.2), hingeZone: "1.2 m" }
    for (const [here, there] of [
      [close, unseen],
      [unseen, close],
      [close, null],
      [null, close],
    ])
      expect(gap(changed(beside(there), neck("pinch"), here)).verdict).toBe("falls short")
  })
})

describe("what a document of version 1 says of duty and start", () => {
  it.each(["lantern-moth-cells", "lantern-moth-bank"])("is judged: %s", (name) => {
    const document = demo(name)
    const rig = fromVersion1(document as unknown as Record<string, unknown>).rig as unknown as Rig
    // version 2 lets the day's moves be no further apart than they are, and counts all that draws
    if (document.duty) expect(finding(rig, "duty", "arms").missing).toBe(null)
    expect(finding(rig, "inrush", "arms").missing).toBe(null)
    expect(rig.power?.buses.some((bus) => bus.limitAction === "hold")).toBe(true)
    // ½·J·ω² of the motor at the rod's speed without load
    const { reflectedMass, noLoadSpeed } = (rig.motions[0] as Rig["motions"][number]).drive as unknown as {
      reflectedMass: number
      noLoadSpeed: string
    }
    const v = Number.parseFloat(noLoadSpeed) / 1000
    expect((reflectedMass * v * v) / (6e-7 * ((6000 * 2 * Math.PI) / 60) ** 2)).toBeCloseTo(1, 9)
  })
})
