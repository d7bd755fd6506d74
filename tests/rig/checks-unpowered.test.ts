// Without power: held against the wind by moments about the hinge, and a fall followed in time.
import { describe, expect, it } from "vitest"
import type { Rig } from "../../src/rig/index.js"
import { contactSeverity } from "../../src/worn/index.js"
import { creature } from "../helpers/rigs.js"
import { boom, changed, drive, finding, LEVEL, neck, rank, START, with_ } from "./boom.js"

const held = (rig: Rig) => finding(rig, "wind-holding", "boom")
const lost = (rig: Rig) => finding(rig, "power-lost", "boom")

/** Largest moment about the hinge: weight of a step, and a gust on the panel from the worst side. */
function most(windSpeed: number, lean = 0): number {
  const gust = 1.66 * windSpeed + 1.4
  const pressure = 4 * (1.225 / 2) * gust ** 2
  let found = 0
  for (const step of [1.43, 0.57])
    for (const side of [-1, 0, 1])
      for (let k = 0; k <= 4000; k++) {
        const angle = -START + (START * k) / 4000
        for (const from of [-1, 1]) {
          const weight = step * LEVEL * Math.cos(angle - side * lean)
          found = Math.max(found, Math.abs(weight + from * pressure * 0.1 * 0.5 * Math.sin(angle)))
        }
      }
  return found
}

describe("held against the wind", () => {
  it("is the moment of weight and gust together", () => {
    expect(Math.abs((held(boom).value as number) / most(5) - 1)).toBeLessThan(3e-4)
    expect(held(boom)).toMatchObject({ limit: 20, relation: "at-most", severity: "safety", verdict: "meets" })
    expect(held(boom).utilisation).toBeCloseTo(most(5) / 20, 2)
  })
  it("leaning counts both ways", () => {
    const lean = changed(boom, ["posture"], { leanLeft: "25 deg" })
    const value = held(lean).value as number
    expect(Math.abs(value / most(5, (25 * Math.PI) / 180) - 1)).toBeLessThan(1e-3)
    expect(held(changed(boom, ["posture"], { leanLeft: "-25 deg" })).value).toBeCloseTo(value, 9)
  })
  it("falls short in more wind, and with a drive that its load turns", () => {
    const ranks = [1, 5, 6, 8, 20].map((v) => rank(held(changed(boom, ["wind", "windSpeed"], v))))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    expect(ranks[ranks.length - 1]).toBe(2)
    expect(held(changed(boom, drive("holdingTorque"), 0)).verdict).toBe("falls short")
    expect(held(changed(boom, ["day", "moves"], 3))).toEqual(held(boom))
  })
  it("names what is missing", () => {
    expect(finding(changed(boom, ["wind"], null), "wind-holding").missing).toBe("wind")
    expect(held(changed(boom, neck("panels"), [])).missing).toBe("motions[0].mechanisms[0].panels")
    // one of two that states none is not passed on the other's account, and what is too much already is told first
    const two = changed(
      boom,
      ["motions", 0, "mechanisms"],
      [boom.motions[0]?.mechanisms[0], { ...boom.motions[0]?.mechanisms[0], name: "tail", panels: [] }],
    )
    const strong = changed(two, drive("holdingTorque"), "60 N m")
    expect(held(strong).missing).toBe("motions[0].mechanisms[1].panels")
    expect(held(changed(strong, drive("holdingTorque"), "2 N m")).verdict).toBe("falls short")
  })
  it("behind gears that lock themselves nothing reaches the drive", () => {
    const wing = with_(
      creature("folding-skew-wing"),
      [["wind"], { span: "0.8 m", chord: "0.3 m", windSpeed: "5 m/s" }],
      [["motions", 0, "mechanisms", 0, "panels"], [{ area: "0.1 m2", centre: { x: "0.5 m", y: 0, z: 0 }, normal: { x: 0, y: 1, z: 0 } }]],
    )
    // the worm locks with half its friction: tan of the lead 8° is more than 0.06, so that it does not count as locked
    expect(finding(wing, "wind-holding", "fold").verdict).toBe("falls short")
    const locked = changed(wing, ["motions", 0, "transmission", 0, "leadAngle"], "3 deg")
    expect(finding(locked, "wind-holding", "fold").value).toBe(0)
  })
})

/** Speed of the tip of a boom let go level, by small steps in time until it has come down. */
function tipSpeed(friction: number): number {
  let [angle, speed, last] = [0, 0, 0]
  const dt = 2e-5
  while (angle > -START) {
    const push = (a: number) => (-LEVEL * Math.cos(a) + friction) / 0.64
    const half = speed + (push(angle) * dt) / 2
    speed += push(angle + (speed * dt) / 2) * dt
    angle += half * dt
    last = speed
  }
  return Math.abs(last)
}

describe("where power is lost", () => {
  const loose = changed(boom, drive("holdingTorque"), 0)
  it("the boom comes down as fast as small steps in time find", () => {
    for (const friction of [0, 1.5]) {
      const rig = changed(loose, neck("hingeFriction"), friction)
      const v = tipSpeed(friction)
      // a slender arm at that speed: the domain's own blow, with the weight that then presses
      const blow = contactSeverity({
        region: "thigh-knee",
        armMass: 1,
        armLength: 1,
        swingSpeed: v,
        peakDriveMoment: Math.max(0, LEVEL * Math.cos(START) - friction),
      })
      expect(Math.abs((lost(rig).value as number) / blow.utilisation - 1)).toBeLessThan(2e-3)
      expect(lost(rig)).toMatchObject({ verdict: "falls short", relation: "at-most", limit: 1, severity: "safety" })
      expect(lost(rig).sentence).toContain(`${Number(v.toPrecision(3))} m/s`)
      // ½·J·ω² of the head at its radius
      expect(lost(rig).sentence).toContain(`${Number(((0.64 * v * v) / 2).toPrecision(3))} J`)
    }
  })
  it("stays where its drive holds; that its joints rub enough is no promise", () => {
    expect(lost(boom)).toMatchObject({ verdict: "meets", value: 0 })
    const rubbed = lost(changed(loose, neck("hingeFriction"), 11.4))
    expect(rubbed.sentence).toMatch(/nothing but friction/)
    expect(rubbed).toMatchObject({ verdict: "cannot be judged", because: "holds-unpowered: boom" })
    // held still by its friction, shaken loose by a step: 1.43 times the weight is 11.2 N·m
    const shaken = lost(changed(loose, neck("hingeFriction"), 9))
    expect(shaken.condition).toMatch(/walking/)
    expect(shaken.value).toBeGreaterThan(0)
    // fastest where the weight of a step no more than balances the friction: what is left of its work is energy of motion
    const weight = 1.43 * LEVEL
    const to = Math.acos(9 / weight)
    const speed = Math.sqrt((2 * (weight * Math.sin(to) - 9 * to)) / 0.64)
    expect(Math.abs(Number(/comes to ([\d.]+) m\/s/.exec(shaken.sentence)?.[1]) / speed - 1)).toBeLessThan(6e-3)
  })
  it("strikes with the part that strikes hardest, though a light one beside it has the faster tip", () => {
    const plume = {
      name: "plume",
      type: "turned-arm",
      startAngle: "-80 deg",
      length: "1.3 m",
      masses: [{ name: "quill", mass: "1 g", radius: "0.1 m" }],
    }
    const both = changed(loose, ["motions", 0, "mechanisms"], [loose.motions[0]?.mechanisms[0], plume])
    const alone = lost(loose).value as number
    expect(Math.abs((lost(both).value as number) / alone - 1)).toBeLessThan(1e-3)
    expect(lost(both).sentence).toContain("the tip of neck")
  })
  it("is not judged where nothing that runs has a mass", () => {
    const cord = { fixedPivot: { x: "0.3 m", y: "0.3 m" }, radius: "0.3 m", freeLength: "0.1 m", stiffness: "100 N/m" }
    const pulled = with_(loose, [neck("masses", 0, "radius"), 0], [neck("springs"), [cord]])
    expect(lost(pulled)).toMatchObject({ verdict: "not enough data", missing: "motions[0].mechanisms" })
  })
  it("tells speed and energy though nothing says whom it could strike, and knows nothing of the wind", () => {
    const alone = lost(changed(loose, ["contact"], null))
    expect(alone.missing).toBe("contact")
    expect(alone.sentence).toContain(`${Number(tipSpeed(0).toPrecision(3))} m/s`)
    expect(lost(changed(loose, ["wind", "windSpeed"], "9 m/s"))).toEqual(lost(loose))
  })
})
