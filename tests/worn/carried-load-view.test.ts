import { describe, expect, it } from "vitest"
import { carriedLoad, carriedLoadSideView } from "../../src/worn/index.js"

const input = {
  bodyMass: 60,
  stature: 1.65,
  load: 9,
  poses: [
    { name: "folded <small>", forward: -0.2, height: 1.2 },
    { name: "raised", forward: -0.24, left: 0.02, height: 1.55 },
  ],
}

describe("carriedLoadSideView", () => {
  const picture = carriedLoadSideView(input, "Moth & wearer")
  it("is one SVG picture with a name, a description and its text escaped", () => {
    expect(picture).toMatch(/^<svg [^>]*role="img"[^>]*><title>Moth &#38; wearer<\/title><desc>/)
    expect(picture).not.toContain("<small>")
    expect(picture).not.toMatch(/NaN|undefined|Infinity/)
    expect(picture.match(/<(\w+)[^>]*[^/]>/g)?.length).toBe(picture.match(/<\/\w+>/g)?.length)
  })

  it("shows each pose's lean, moments and feet as carriedLoad gives them", () => {
    const out = carriedLoad(input)
    for (const pose of out.poses) {
      expect(picture).toContain(`lean for balance ${((pose.lean * 180) / Math.PI).toFixed(1)}° forwards`)
      expect(picture).toContain(`${Math.abs(pose.hipMoment).toFixed(1)} N·m`)
      expect(picture).toContain(`on the left foot ${(100 * pose.leftShare).toFixed(1)} %`)
    }
  })

  it("draws to scale: the rig's dot keeps its distance from the hips through the lean, and its bars their ratio", () => {
    const dots = [...picture.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="8"/g)].map((m) => [Number(m[1]), Number(m[2])] as const)
    const hips = [...picture.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="5"/g)].map((m) => [Number(m[1]), Number(m[2])] as const)
    expect(dots.length).toBe(2)
    const scale = dots.map(([x, y], i) => {
      const [hx, hy] = hips[i] as readonly [number, number]
      const pose = input.poses[i] as (typeof input.poses)[number]
      return Math.hypot(x - hx, y - hy) / Math.hypot(pose.forward, pose.height - 0.53 * input.stature)
    })
    expect(scale[0]).toBeCloseTo(scale[1] as number, 1)
    const bars = [...picture.matchAll(/<rect x="14" y="[\d.]+" width="([\d.]+)"/g)].map((m) => Number(m[1]))
    expect((bars[0] as number) / (bars[2] as number)).toBeCloseTo(0.2 / 0.24, 3)
  })
})
