import { describe, expect, it } from "vitest"
import { carriedLoad, carriedLoadSideView } from "../../src/worn/index.js"

const input = {
  bodyMass: 60,
  stature: 1.65,
  rigMass: 9,
  poses: [
    { name: "folded <small>", forward: -0.2, up: 1.2 },
    { name: "raised", forward: -0.24, left: 0.02, up: 1.55 },
  ],
}

const three = (value: number) => Number(value.toPrecision(3))

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
      expect(picture).toContain(`lean for balance ${three((pose.trunkLean * 180) / Math.PI)}° forwards`)
      expect(picture).toContain(`${three(Math.abs(pose.hipMoment))} N m`)
      expect(picture).toContain(`on the left foot ${Math.round(100 * pose.leftShare)} %`)
    }
  })

  it("draws to scale: the rig's dot keeps its distance from the hips through the lean, and its bars their ratio", () => {
    const dots = [...picture.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="8"/g)].map((m) => [Number(m[1]), Number(m[2])] as const)
    const hips = [...picture.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="5"/g)].map((m) => [Number(m[1]), Number(m[2])] as const)
    expect(dots.length).toBe(2)
    const scale = dots.map(([x, y], i) => {
      const [hx, hy] = hips[i] as readonly [number, number]
      const pose = input.poses[i] as (typeof input.poses)[number]
      return Math.hypot(x - hx, y - hy) / Math.hypot(pose.forward, pose.up - 0.53 * input.stature)
    })
    expect(scale[0]).toBeCloseTo(scale[1] as number, 1)
    const bars = [...picture.matchAll(/<rect x="14" y="[\d.]+" width="([\d.]+)"/g)].map((m) => Number(m[1]))
    expect((bars[0] as number) / (bars[2] as number)).toBeCloseTo(0.2 / 0.24, 3)
  })

  /** Figures of one picture, pose by pose, each in pixels of its own panel. */
  const panels = (svg: string) =>
    svg
      .split('<g transform="translate(')
      .slice(1)
      .map((part) => {
        const lines = [
          ...part.matchAll(/<path d="([^"]+)"[^>]*stroke="(#\w+)" stroke-width="([\d.]+)"[^>]*?(stroke-dasharray="[^"]+")?\/>/g),
        ].map((m) => ({
          at: [...(m[1] as string).matchAll(/(-?[\d.]+)[ ,](-?[\d.]+)/g)].map((p) => [Number(p[1]), Number(p[2])] as const),
          colour: m[2],
          width: Number(m[3]),
        }))
        const circles = [...part.matchAll(/<circle cx="([-\d.]+)" cy="([-\d.]+)" r="([\d.]+)"/g)].map((m) => m.slice(1, 4).map(Number))
        return { shift: Number(part.slice(0, part.indexOf(" "))), lines, circles }
      })

  it("stands a figure of the wearer's own size on the ground, with head, trunk and rig turned about the hips by the lean", () => {
    for (const poses of [
      input.poses,
      [
        { name: "in front", forward: 0.25, up: 1.1 },
        { name: "low", forward: -0.1, up: 0.95 },
        { name: "over", forward: 0, up: 1.9 },
      ],
    ]) {
      const given = { ...input, stature: 1.8, poses }
      const svg = carriedLoadSideView(given)
      const out = carriedLoad(given)
      const drawn = panels(svg)
      expect(drawn.length).toBe(poses.length)
      const box = (/viewBox="([^"]+)"/.exec(svg) ?? ["", ""])[1] as string
      const [, , width, height] = box.split(" ").map(Number) as [number, number, number, number]
      drawn.forEach(({ shift, lines, circles }, i) => {
        const [pose, place] = [out.poses[i], poses[i]] as [(typeof out.poses)[number], (typeof poses)[number]]
        const H = given.stature
        const [ground] = lines as [(typeof lines)[number]]
        const [[left, floor], [right]] = ground.at as unknown as [readonly [number, number], readonly [number, number]]
        // the floor is 1.7 m long: pixels to the metre
        const scale = (right - left) / 1.7
        const middle = (left + right) / 2
        // hips at 0.53, shoulders at 0.818, eyes at 0.936 of stature (Drillis and Contini), the trunk turned clockwise about the hips
        const turned = (x: number, z: number) => {
          const [r, a] = [Math.hypot(x, z - 0.53 * H), Math.atan2(x, z - 0.53 * H) + pose.trunkLean]
          return [middle + scale * r * Math.sin(a), floor - scale * (0.53 * H + r * Math.cos(a))] as const
        }
        const near = (a: readonly number[] | undefined, b: readonly number[]) => {
          expect(Math.abs((a?.[0] as number) - (b[0] as number))).toBeLessThan(0.11)
          expect(Math.abs((a?.[1] as number) - (b[1] as number))).toBeLessThan(0.11)
        }
        const head = circles.find(([, , r]) => Math.abs((r as number) - 0.062 * H * scale) < 0.1)
        near(head, turned(0, 0.936 * H))
        near(
          circles.find(([, , r]) => r === 8),
          turned(place.forward, place.up),
        )
        near(
          circles.find(([, , r]) => r === 5),
          [middle, floor - scale * 0.53 * H],
        )
        const trunk = lines.find((l) => l.width === 9)
        near(trunk?.at[0], [middle, floor - scale * 0.53 * H])
        near(trunk?.at[1], turned(0, 0.818 * H))
        const [leg, neck, arm] = [lines.filter((l) => l.width === 7)[0], ...lines.filter((l) => l.width === 5)]
        near(leg?.at[0], [middle, floor - scale * 0.53 * H])
        near(leg?.at[1], [middle, floor - scale * 0.039 * H])
        near(neck?.at[0], turned(0, 0.818 * H))
        near(neck?.at[1], turned(0, 0.936 * H))
        near(arm?.at[0], turned(0, 0.818 * H))
        // toes point the way the wearer faces, as do the hands
        expect(leg?.at[2]?.[0]).toBeGreaterThan(middle)
        // everything lies within the picture, the panels side by side
        expect(shift).toBeCloseTo((i * width) / Math.max(2, poses.length), 9)
        for (const [x, y] of lines.flatMap((l) => l.at)) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(width / Math.max(2, poses.length))
          expect(y).toBeGreaterThan(44)
          expect(y).toBeLessThan(height)
        }
      })
    }
  })

  it("writes the rig's mass beside its dot, away from the wearer, and points its weight straight down", () => {
    const svg = carriedLoadSideView({
      ...input,
      poses: [
        { name: "behind", forward: -0.4, up: 1.1 },
        { name: "in front", forward: 0.4, up: 1.1 },
        { name: "high", forward: 0, up: 2.6 },
      ],
    })
    const parts = svg.split('<g transform="translate(').slice(1)
    const dots = parts.map((part) => (/<circle cx="([-\d.]+)" cy="([-\d.]+)" r="8"/.exec(part) ?? []).slice(1).map(Number))
    const masses = parts.map((part) => /<text x="([-\d.]+)" y="[-\d.]+"([^>]*)>9[^<]*kg<\/text>/.exec(part) ?? [])
    expect(masses.map((m) => /text-anchor="(\w+)"/.exec(m[2] as string)?.[1]).slice(0, 2)).toEqual(["end", "start"])
    expect(Number(masses[0]?.[1])).toBeLessThan((dots[0]?.[0] as number) - 8)
    expect(Number(masses[1]?.[1])).toBeGreaterThan((dots[1]?.[0] as number) + 8)
    // the highest rig keeps a quarter of a metre, 130 pixels to the metre, below the lines at the top
    expect(dots[2]?.[1] as number).toBeGreaterThan(62 + 0.24 * 130)
    panels(svg).forEach(({ lines }, i) => {
      const [x, y] = dots[i] as [number, number]
      const arrow = lines.find(
        (l) => l.at.length === 2 && Math.abs((l.at[0]?.[0] as number) - x) < 0.11 && (l.at[0]?.[1] as number) > y - 1,
      )
      expect(arrow?.at[1]?.[0]).toBeCloseTo(x, 1)
      // the head: both barbs alike, on either side of the shaft and above the point
      const head = [...(parts[i] as string).matchAll(/<path d="([^"]+)" fill="#b5541c"\/>/g)][0]?.[1] as string
      const corners = [...head.matchAll(/(-?[\d.]+)[ ,](-?[\d.]+)/g)].map((p) => [Number(p[1]), Number(p[2])] as const)
      const [a, b, tip] = corners as unknown as [readonly [number, number], readonly [number, number], readonly [number, number]]
      expect(a[0]).toBeLessThan(x - 2)
      expect(Math.abs(a[0] + b[0] - 2 * x)).toBeLessThan(0.05)
      expect(tip[0]).toBeCloseTo(x, 1)
      expect(a[1]).toBe(b[1])
      expect(tip[1]).toBeGreaterThan(a[1])
    })
  })

  it("marks the lean by a chord between two points as far from the hips, and puts each bar under its own words", () => {
    const parts = picture.split('<g transform="translate(').slice(1)
    panels(picture).forEach(({ lines, circles }, i) => {
      const hips = circles.find(([, , r]) => r === 5) as number[]
      const chord = lines.find((l) => l.colour === "#2a7f62")?.at as readonly (readonly [number, number])[]
      const far = chord.map(([x, y]) => Math.hypot(x - (hips[0] as number), y - (hips[1] as number)))
      expect(far.length).toBe(2)
      expect(Math.abs((far[0] as number) - (far[1] as number))).toBeLessThan(0.1)
      const part = parts[i] as string
      const words = [...part.matchAll(/<text x="14" y="([\d.]+)"[^>]*>[^<]*N m</g)].map((m) => Number(m[1]))
      const bars = [...part.matchAll(/<rect x="14" y="([\d.]+)"[^>]*height="([\d.]+)"/g)].map((m) => [Number(m[1]), Number(m[2])])
      const feet = Number(/<text x="14" y="([\d.]+)"[^>]*>on the left foot/.exec(part)?.[1])
      expect([words.length, bars.length]).toEqual([2, 2])
      bars.forEach(([top, height], k) => {
        const next = (words[k + 1] ?? feet) - 12
        expect(top as number).toBeGreaterThan(words[k] as number)
        expect((top as number) + (height as number)).toBeLessThan(next)
      })
    })
  })
})
