import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { passage } from "../../src/worn/index.js"
import { carMargin, cornerWidth } from "../../src/worn/surroundings/passage/geometry.js"
import { between } from "./draws.js"

/** Points along the edge of a rectangle turned by `angle` about its middle. */
function edge(across: number, along: number, angle: number, count = 200): (readonly [number, number])[] {
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([u, v]) => [((u as number) * across) / 2, ((v as number) * along) / 2] as const)
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return corners.flatMap(([x0, y0], k) => {
    const [x1, y1] = corners[(k + 1) % 4] as readonly [number, number]
    return Array.from({ length: count }, (_, n) => {
      const [x, y] = [x0 + (n / count) * (x1 - x0), y0 + (n / count) * (y1 - y0)]
      return [c * x - s * y, s * x + c * y] as const
    })
  })
}

/**
 * A wearer comes down one arm of an L of equal corridors (outer walls x = 0 and y = 0) and leaves along the other, facing the
 * way he goes. At each heading the rectangle is pushed into the outer corner; the corridor must be as wide as its deepest
 * point seen from the inner corner.
 */
function cornerByForce(across: number, along: number): number {
  // before and after the corner the arms themselves must take the width
  let needed = across
  for (let k = 0; k <= 180; k++) {
    const points = edge(across, along, (k / 180) * (Math.PI / 2))
    let [left, low] = [0, 0]
    for (const [x, y] of points) [left, low] = [Math.min(left, x), Math.min(low, y)]
    for (const [x, y] of points) needed = Math.max(needed, Math.min(x - left, y - low))
  }
  return needed
}

/** Whether a rectangle p × q fits in one of a × b (W. B. Carver, Solution to problem E 1225, American Mathematical Monthly 64, 1957). */
function carver(p0: number, q0: number, a0: number, b0: number): boolean {
  const [p, q, a, b] = [Math.max(p0, q0), Math.min(p0, q0), Math.max(a0, b0), Math.min(a0, b0)]
  if (q > b) return false
  return p <= a || b * (p * p + q * q) >= 2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)
}

const boxes = fc.record({ width: between(0.2, 3), forward: between(0, 1.5), backward: between(0.05, 1.5), height: between(0.5, 3) })

/** How easy a place is: facing before sideways before not at all, then by what is spare (never as much as 1000 m). */
const ease = (p: { readonly folded: string; readonly foldedMargin: number } | undefined): number =>
  1000 * ["no", "sideways", "facing", "turning"].indexOf(p?.folded ?? "") + (p?.foldedMargin as number)

describe("passage", () => {
  it("corner: agrees with pushing the rectangle round by force", () => {
    let worst = 0
    fc.assert(
      fc.property(between(0.2, 3), between(0.2, 3), (across, along) => {
        const off = Math.abs(cornerByForce(across, along) - cornerWidth(across, along))
        worst = Math.max(worst, off)
      }),
      { numRuns: 20 },
    )
    // points stand 1/200 of a side apart
    expect(worst).toBeLessThan(0.011)
    expect(cornerByForce(1, 1)).toBeCloseTo(1.5 / Math.SQRT2, 3)
  })

  it("car: agrees with Carver's condition, in both directions", () => {
    let [fit, not] = [0, 0]
    fc.assert(
      fc.property(between(0.1, 3), between(0, 2), between(0.5, 2.5), between(0.5, 2.5), (w, d, a, b) => {
        const margin = carMargin(w, d, a, b)
        if (Math.abs(margin) < 1e-6) return
        expect(margin > 0).toBe(carver(w, d, a, b))
        if (margin > 0) fit++
        else not++
      }),
      { numRuns: 1000 },
    )
    expect(Math.min(fit, not)).toBeGreaterThan(100)
  })

  it("turning: no corner of the box gets past the circle, and one touches it", () => {
    fc.assert(
      fc.property(boxes, (box) => {
        let farthest = 0
        for (let k = 0; k < 720; k++) {
          const [c, s] = [Math.cos((k * Math.PI) / 360), Math.sin((k * Math.PI) / 360)]
          for (const x of [-box.width / 2, box.width / 2])
            for (const y of [box.forward, -box.backward]) farthest = Math.max(farthest, c * x - s * y)
        }
        const { foldedTurningDiameter } = passage({ folded: box })
        expect(farthest).toBeLessThanOrEqual((foldedTurningDiameter / 2) * (1 + 1e-12))
        expect(farthest).toBeGreaterThan((foldedTurningDiameter / 2) * 0.9999)
      }),
      { numRuns: 40 },
    )
  })

  it("law: a wider or higher place is never harder, a larger rig never easier", () => {
    const kinds = ["door", "route", "corner", "stair", "turning"] as const
    fc.assert(
      fc.property(boxes, fc.constantFrom(...kinds), between(0.3, 5), between(0.3, 5), between(0, 1), (box, kind, width, height, more) => {
        const through = (folded: typeof box, w: number, h: number | null) =>
          ease(passage({ folded, ownPlaces: [{ name: "gate", type: kind, width: w, height: h }] }).places.at(-1))
        const now = through(box, width, height)
        expect(through(box, width + more, height)).toBeGreaterThanOrEqual(now)
        expect(through(box, width, height + more)).toBeGreaterThanOrEqual(now)
        expect(through(box, width, null)).toBeGreaterThanOrEqual(now)
        for (const key of ["width", "forward", "backward", "height"] as const) {
          const larger = { ...box, [key]: box[key] + more }
          const [a, b] = [passage({ folded: box }), passage({ folded: larger })]
          a.places.forEach((p, i) => {
            expect(ease(b.places[i])).toBeLessThanOrEqual(ease(p) + 1e-9)
          })
          expect(b.blocked).toEqual(expect.arrayContaining([...a.blocked]))
        }
      }),
      { numRuns: 30 },
    )
  })

  it("tells what is tightest: the width, the height or the car, folded and raised", () => {
    const box = { width: 0.7, forward: 0.25, backward: 0.25, height: 1.8 }
    const own = (kind: "door" | "stair" | "turning", width: number, height: number | null) =>
      passage({
        folded: box,
        raised: { ...box, height: 2.2 },
        allowance: 0.02,
        ownPlaces: [{ name: "gate", type: kind, width, height }],
      }).places.at(-1)
    // facing wherever it fits, by the lesser of what is left beside and above
    expect(own("door", 0.8, 2)).toMatchObject({ folded: "facing", foldedBy: "width", foldedRoom: 0.8, raised: "no", raisedBy: "height" })
    expect(own("door", 0.8, 2)?.foldedMargin).toBeCloseTo(0.8 - 0.04 - 0.7, 12)
    expect(own("door", 3, 2)).toMatchObject({ folded: "facing", foldedBy: "height", foldedRoom: 2 })
    expect(own("door", 3, 2)?.foldedMargin).toBeCloseTo(2 - 0.02 - 1.8, 12)
    expect(own("door", 0.6, 3)).toMatchObject({ folded: "sideways", foldedBy: "width" })
    expect(own("door", 0.6, 3)?.foldedMargin).toBeCloseTo(0.6 - 0.04 - 0.5, 12)
    expect(own("stair", 0.6, 3)).toMatchObject({ folded: "no", foldedBy: "width" })
    expect(own("turning", 1, null)).toMatchObject({ folded: "turning", foldedBy: "width" })
    const lift = passage({ folded: { ...box, width: 0.9, forward: 0.7, backward: 0.65 } }).places.find(
      (p) => p.place === "US limited-use lift",
    )
    expect(lift).toMatchObject({ folded: "no" })
    const out = passage({ folded: box, ownPlaces: [{ name: "gate", type: "door", width: 0.6, height: null }] })
    expect(out.sideways).toContain("gate")
    expect(out.blocked).not.toContain("gate")
  })

  it("is the same for a rig that stands out in front as for one that stands out behind", () => {
    fc.assert(
      fc.property(boxes, (box) => {
        const turned = { ...box, forward: box.backward, backward: box.forward }
        const { cautions: _a, ...one } = passage({ folded: box })
        const { cautions: _b, ...other } = passage({ folded: turned })
        expect(other.blocked).toEqual(one.blocked)
        expect(other.foldedTurningDiameter).toBe(one.foldedTurningDiameter)
      }),
      { numRuns: 30 },
    )
  })

  it("never sends anyone sideways down a stair", () => {
    const wide = { width: 1.5, forward: 0.2, backward: 0.2, height: 1.8 }
    const out = passage({ folded: wide })
    for (const p of out.places.filter((f) => f.type === "stair")) expect(p.folded).toBe("no")
    expect(out.places.find((p) => p.place === "US door")?.folded).toBe("sideways")
  })

  it("packs the longest side to the longest", () => {
    const packed = { length: "0.24 m", width: "0.55 m", height: "0.44 m", mass: "9 kg" } as const
    const out = passage({ ...passage.example, packed })
    expect(out.cabinMargin).toBeCloseTo(0.01, 12)
    expect(out.checkedMargin).toBeCloseTo(0.35, 12)
    expect(passage({ folded: passage.example.folded }).cabinMargin).toBeNull()
  })

  it("warns of blocked corridors, height and places to fold for", () => {
    const codes = passage(passage.example).cautions.map((c) => c.code)
    expect(codes).toEqual(expect.arrayContaining(["not-a-clearance", "fold-for", "blocks-corridor", "headroom"]))
    const odd = passage({ folded: passage.example.folded, raised: { width: 0.5, forward: 0.2, backward: 0.2, height: 2.4 } })
    expect(odd.cautions.map((c) => c.code)).toContain("smaller-raised")
  })

  it("holds a packed rig against the container's door, which is smaller than its inside", () => {
    const folded = { width: 0.7, forward: 0.25, backward: 0.4, height: 1.9 }
    const spare = (width: number, height: number) =>
      passage({ folded, packed: { length: 3, width, height, mass: 20 } }).containerMargin as number
    expect(spare(2.3, 2.2)).toBeCloseTo(0.04, 9)
    // 2.32 × 2.32 m would stand inside, but not come in
    expect(spare(2.32, 2.32)).toBeCloseTo(-0.04, 9)
  })
})
