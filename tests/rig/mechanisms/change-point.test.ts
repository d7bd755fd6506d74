// Links within rounding of a change point, where all four lie in one line: places, effort and refusals stay figures and words.
import { describe, expect, it } from "vitest"
import { standardGravity } from "../../../src/linkage/index.js"
import { fourBarMechanism } from "../../../src/rig/mechanisms/four-bar.js"
import type { Mechanism } from "../../../src/rig/mechanisms/mechanism.js"
import { pushrod } from "../../../src/rig/mechanisms/pushrod.js"
import { isNoSolution, type NoSolution } from "../../../src/solver/index.js"
import { between, readMember, seeded } from "../members.js"
import { heldEffort } from "./crank-route.js"
import { stateAt } from "./second-route.js"

interface Links {
  readonly ground: number
  readonly input: number
  readonly coupler: number
  readonly output: number
}
/** A wing of the lantern moth on four links; figures invented. */
function wing({ ground, input, coupler, output }: Links, startAngle: number, assembly = "open"): Mechanism | NoSolution {
  const { si, issues } = readMember(fourBarMechanism, {
    ...{ hinge: { x: ground, y: 0 }, inputPivot: { x: 0, y: 0 }, length: 0.4, input, coupler, startAngle, assembly },
    ...{ movingPivot: { radius: output, angle: 0.2 }, masses: [{ name: "wing", mass: 0.5, radius: 0.3 }] },
    ...{ couplerMasses: [{ name: "rod", mass: 0.1, radius: 0.05 }] },
  })
  expect(issues).toEqual([])
  return fourBarMechanism.build(si)
}
const numbersIn = (value: unknown): number[] =>
  typeof value === "number" ? [value] : typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : []

describe("four-bar next to a change point", () => {
  it("stands somewhere and is held by a finite effort wherever its range has it, its coupler of one length", () => {
    const random = seeded(1129)
    const broken: string[] = []
    let [built, refused, looked] = [0, 0, 0]
    for (let tries = 0; tries < 400; tries++) {
      const [p, q] = [between(random, 0.05, 0.2), between(random, 0.02, 0.2)]
      const off = () => (random() < 0.2 ? 0 : (random() < 0.5 ? -1 : 1) * 10 ** between(random, -16, -6))
      const kinds: Links[] = [
        { ground: p, input: p, coupler: q, output: q },
        { ground: p, input: q, coupler: p, output: q },
        { ground: p, input: q, coupler: q, output: p },
        { ground: p + q, input: p, coupler: 0.7 * q, output: 2 * p + 0.3 * q },
      ]
      const plain = kinds[tries % kinds.length] as Links
      const links = { ...plain, coupler: plain.coupler + off(), ground: plain.ground + off() }
      const start = random() < 0.3 ? Math.PI * Math.round(between(random, -1, 1)) + off() : between(random, -Math.PI, Math.PI)
      const mechanism = wing(links, start, random() < 0.5 ? "open" : "crossed")
      if (isNoSolution(mechanism)) {
        refused++
        expect(mechanism.shortBy).toBeGreaterThan(0)
        expect(mechanism.message).not.toMatch(/NaN|Infinity/)
        continue
      }
      built++
      const low = Math.max(mechanism.low, start - 7)
      const high = Math.min(mechanism.high, start + 7)
      expect(low).toBeLessThanOrEqual(start)
      expect(high).toBeGreaterThanOrEqual(start)
      expect(low).toBeLessThan(high)
      const places = [low, high, start, between(random, low, high)]
      for (const step of [1e-15, 1e-12, 1e-10, 1e-9, 1e-8, 1e-6]) places.push(low + step, high - step)
      for (let k = -6; k <= 6; k++) for (const step of [-1e-9, 0, 1e-9]) places.push(k * Math.PI + step)
      const size = links.ground + links.input + links.coupler + links.output
      for (const place of places) {
        if (place < low || place > high) continue
        looked++
        const label = JSON.stringify({ links, start, place, low, high })
        const { pins, parts, shown, centre, tip } = mechanism.pose(place)
        if (!numbersIn({ pins, parts, shown, centre, tip }).every(Number.isFinite)) broken.push(`no place: ${label}`)
        const [, , crankPin, pin] = pins.map((one) => one.at) as unknown as [number[], number[], number[], number[]]
        const reach = Math.hypot((pin[0] as number) - (crankPin[0] as number), (pin[1] as number) - (crankPin[1] as number))
        if (!(Math.abs(reach - links.coupler) < 2e-9 * size)) broken.push(`coupler of ${reach}: ${label}`)
        // where coupler and arm lie in line, to the last digits of their lengths, nothing holds it: a move is told so as its dead point
        const clear = Math.min(...mechanism.deadPoints.map((dead) => Math.abs(dead - place)), Number.POSITIVE_INFINITY)
        const state = stateAt(mechanism, place)
        if (clear > 1e-5 && !Number.isFinite(heldEffort(state, [0, -standardGravity, 0]))) broken.push(`no effort: ${label}`)
      }
    }
    expect(broken.slice(0, 5)).toEqual([])
    expect([built > 200, refused > 0, looked > 2000]).toEqual([true, true, true])
  })

  it("is refused where it closes at one place only, and told so; a hair more length lets it turn", () => {
    // all in one line: the longest link as long as the three others together
    for (const [links, startAngle] of [
      [{ ground: 0.24, input: 0.04, coupler: 0.12, output: 0.08 }, 0],
      [{ ground: 0.04, input: 0.24, coupler: 0.12, output: 0.08 }, 0],
      [{ ground: 0.12, input: 0.04, coupler: 0.24, output: 0.08 }, Math.PI],
      [{ ground: 0.12, input: 0.04, coupler: 0.08, output: 0.24 }, Math.PI],
    ] as const) {
      const out = wing(links, startAngle)
      if (!isNoSolution(out)) throw new Error(`turns from ${out.low} to ${out.high}`)
      expect(out.noSolution).toBe("cannot-close")
      expect(out.message).toContain("one place only")
      expect(out.shortBy).toBeGreaterThan(0)
      const longest = (Object.keys(links) as (keyof typeof links)[]).reduce((a, b) => (links[b] > links[a] ? b : a))
      const enough = wing({ ...links, [longest]: links[longest] - out.shortBy }, startAngle)
      expect(isNoSolution(enough)).toBe(false)
    }
  })
})

describe("pushrod that closes at one place only", () => {
  it("is refused with the reason", () => {
    // horns pointing away from each other: the rod is cut to horn, pivots and horn in one line
    const { si, issues } = readMember(pushrod, {
      ...{ hinge: { x: 0.06, y: 0 }, length: 0.2, masses: [{ name: "flap", mass: 0.1, radius: 0.05 }] },
      ...{ servoPivot: { x: 0, y: 0 }, servoHorn: 0.016, servoHornAngle: "180 deg", neutralAngle: 0, startAngle: 0 },
      movingPivot: { radius: 0.02, angle: 0 },
    })
    expect(issues).toEqual([])
    const out = pushrod.build(si)
    if (!isNoSolution(out)) throw new Error(`turns from ${out.low} to ${out.high}`)
    expect(out.message).toContain("servo horn")
    expect(out.message).toContain("one place only")
  })
})
