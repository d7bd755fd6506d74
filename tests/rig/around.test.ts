import { expect, it } from "vitest"
import { verdictOf } from "../../src/rig/assess/finding.js"
import { findings } from "../../src/rig/assess/index.js"
import { assess, type RigDocument } from "../../src/rig/index.js"
import type { SiOf } from "../../src/solver/index.js"
import { demo } from "../helpers/rigs.js"

type Si = SiOf<RigDocument>
const moth = assess.read(demo("lantern-moth-bank")) as Si
const finding = (doc: Si, id: string) => findings(doc, id)[0]?.found as NonNullable<ReturnType<typeof findings>[number]["found"]>
const gate = (width: number, height: number | null = 2.4): Si => ({
  ...moth,
  venue: { ...(moth.venue as NonNullable<Si["venue"]>), own: [{ name: "gate", type: "door", width, height }] },
})

it("a wider gate is never judged worse, and edging sideways is never called a clean pass", () => {
  const order = ["falls short", "marginal", "meets"]
  let before = 0
  const seen = new Set<string>()
  for (let width = 0.4; width <= 4; width += 0.05) {
    const found = finding(gate(width), "ways")
    const verdict = verdictOf(found)
    expect(order.indexOf(verdict), `${width} m`).toBeGreaterThanOrEqual(before)
    before = order.indexOf(verdict)
    seen.add(verdict)
    if (/sideways/.test(found.why)) expect(verdict).toBe("marginal")
    expect([width, 2.4]).toContain(found.limit)
  }
  expect([...seen]).toEqual(order)
})

it("a gate that is too low is told as a height", () => {
  const low = finding(gate(4, 1.5), "ways")
  expect(verdictOf(low)).toBe("falls short")
  expect(low.limit).toBe(1.5)
  expect(low.why).toMatch(/the height of gate/)
})

it("a blow to face, head or neck falls short however gentle", () => {
  for (const region of ["face", "skull-forehead", "neck"] as const) {
    const contact = {
      ...(moth.contact as NonNullable<Si["contact"]>),
      region,
      approachSpeed: 0,
      paddingStiffness: 10,
      paddingThickness: 0.5,
    }
    const found = finding({ ...moth, contact }, "contact")
    expect(found.value as number).toBeLessThan(1)
    expect(verdictOf(found)).toBe("falls short")
  }
})
