import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { massProperties } from "../../src/frame/index.js"

type Triple = [number, number, number]
const turn = (a: Triple, axis: 0 | 1 | 2, by: number): Triple => {
  const [i, j] = [(axis + 1) % 3, (axis + 2) % 3] as [0 | 1 | 2, 0 | 1 | 2]
  const out: Triple = [...a]
  out[i] = a[i] * Math.cos(by) - a[j] * Math.sin(by)
  out[j] = a[i] * Math.sin(by) + a[j] * Math.cos(by)
  return out
}

/** Lumps a bar (or a tube, by rings of lumps) and turns it: about y by pitch, then about z by yaw. */
function lumps(kind: "bar" | "tube", size: Triple, centre: Triple, pitch: number, yaw: number): Triple[] {
  const out: Triple[] = []
  const n = 24
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      for (let k = 0; k < n; k++) {
        const [u, v, w] = [i, j, k].map((q) => (q + 0.5) / n - 0.5) as Triple
        const [length, b, h] = size
        let local: Triple = [u * length, v * b, w * h]
        if (kind === "tube") {
          // b outside diameter, h bore: equal areas by square root of the radius squared
          const r = Math.sqrt(((w + 0.5) * (b ** 2 - h ** 2) + h ** 2) / 4)
          local = [u * length, r * Math.cos(2 * Math.PI * v), r * Math.sin(2 * Math.PI * v)]
        }
        const turned = turn(turn(local, 1, pitch), 2, yaw)
        out.push([turned[0] + centre[0], turned[1] + centre[1], turned[2] + centre[2]])
      }
  return out
}
const arrow = (pitch: number, yaw: number) => {
  const [directionX, directionY, directionZ] = turn(turn([1, 0, 0], 1, pitch), 2, yaw)
  return { directionX, directionY, directionZ }
}

function bruteInertia(points: readonly Triple[], mass: number, through: Triple, along: Triple): number {
  const size = Math.hypot(...along)
  return points.reduce((sum, p) => {
    const r = p.map((v, i) => v - (through[i] as number)) as Triple
    const cross = [r[1] * along[2] - r[2] * along[1], r[2] * along[0] - r[0] * along[2], r[0] * along[1] - r[1] * along[0]]
    return sum + (mass / points.length) * (Math.hypot(...cross) / size) ** 2
  }, 0)
}

const coordinate = fc.double({ min: -1, max: 1, noNaN: true })
const size = fc.double({ min: 0.01, max: 1, noNaN: true })
const triple = fc.tuple(coordinate, coordinate, coordinate)
const seeded = { seed: 7, numRuns: 25 }
const axisInput = (through: Triple, along: Triple) => ({
  axisX: through[0],
  axisY: through[1],
  axisZ: through[2],
  axisDirectionX: along[0],
  axisDirectionY: along[1],
  axisDirectionZ: along[2],
})

describe("massProperties against lumps", () => {
  it.each(["bar", "tube"] as const)("a turned %s about any axis", (kind) => {
    let most = 0
    fc.assert(
      fc.property(
        fc.tuple(size, size, size),
        triple,
        coordinate,
        coordinate,
        triple,
        triple,
        (sizes, centre, pitch, yaw, through, along) => {
          if (Math.hypot(...along) < 0.1) return
          const [length, b, c] = sizes
          const h = kind === "tube" ? Math.min(c, 0.9 * b) : c
          const part = kind === "tube" ? { outsideDiameter: b, bore: h } : { width: b, height: h }
          const [x, y, z] = centre
          const out = massProperties({ parts: [{ mass: 2, x, y, z, length, ...part, ...arrow(pitch, yaw) }], ...axisInput(through, along) })
          const points = lumps(kind, [length, b, h], centre, pitch, yaw)
          most = Math.max(most, Math.abs(out.inertia - bruteInertia(points, 2, through, along)) / out.inertia)
          const [ix, iy, iz] = (
            [
              [1, 0, 0],
              [0, 1, 0],
              [0, 0, 1],
            ] as Triple[]
          ).map((e) => bruteInertia(points, 2, centre, e)) as Triple
          for (const [a, e] of [
            [out.inertiaX, ix],
            [out.inertiaY, iy],
            [out.inertiaZ, iz],
          ] as const)
            most = Math.max(most, Math.abs(a - e) / (ix + iy + iz))
          const product = (i: 0 | 1 | 2, j: 0 | 1 | 2) =>
            points.reduce((sum, p) => sum + (2 / points.length) * (p[i] - centre[i]) * (p[j] - centre[j]), 0)
          for (const [a, e] of [
            [out.productXY, product(0, 1)],
            [out.productYZ, product(1, 2)],
            [out.productZX, product(2, 0)],
          ] as const)
            most = Math.max(most, Math.abs(a - e) / (ix + iy + iz))
          expect(2 * out.radiusOfGyration ** 2).toBeCloseTo(out.inertia, 12)
          expect(out.inertiaAtCentre + 2 * out.axisDistance ** 2).toBeCloseTo(out.inertia, 12)
        },
      ),
      seeded,
    )
    // 24 lumps a side leave 1/24² of each mean square
    expect(most).toBeGreaterThan(0)
    expect(most).toBeLessThan(1.1 / 24 ** 2)
  })
})

describe("laws of mass", () => {
  const parts = fc.array(
    fc.record({
      mass: fc.double({ min: 0.01, max: 3, noNaN: true }),
      x: coordinate,
      y: coordinate,
      z: coordinate,
      length: size,
      directionX: fc.constant(0.3),
      directionY: coordinate,
      directionZ: coordinate,
    }),
    { minLength: 2, maxLength: 6 },
  )

  it("a list is as its halves: masses add, inertias about one axis add", () => {
    fc.assert(
      fc.property(parts, (list) => {
        const one = massProperties({ parts: list, axisX: 0.2, axisDirectionX: 0.5 })
        const halves = [list.slice(0, 1), list.slice(1)].map((half) => massProperties({ parts: half, axisX: 0.2, axisDirectionX: 0.5 }))
        expect(one.mass).toBeCloseTo(
          halves.reduce((s, h) => s + h.mass, 0),
          12,
        )
        expect(one.inertia).toBeCloseTo(
          halves.reduce((s, h) => s + h.inertia, 0),
          11,
        )
      }),
      seeded,
    )
  })

  it("moving parts and axis together changes nothing; the least inertia is through the centre", () => {
    fc.assert(
      fc.property(parts, triple, (list, [dx, dy, dz]) => {
        const here = massProperties({ parts: list, axisDirectionY: 1 })
        const moved = massProperties({
          parts: list.map((p) => ({ ...p, x: p.x + dx, y: p.y + dy, z: p.z + dz })),
          ...axisInput([dx, dy, dz], [0, 1, 1]),
        })
        expect(moved.inertia).toBeCloseTo(here.inertia, 11)
        expect(here.inertia).toBeGreaterThanOrEqual(here.inertiaAtCentre)
        const central = massProperties({ parts: list, ...axisInput([here.x, here.y, here.z], [0, 1, 1]) })
        expect(central.inertia).toBeCloseTo(here.inertiaAtCentre, 11)
        expect(central.axisDistance).toBeLessThan(1e-12)
      }),
      seeded,
    )
  })

  it("a long bar cut into pieces swings as the whole", () => {
    const pieces = 40
    const whole = massProperties({ parts: [{ mass: 1, x: 0.5, y: 0, z: 0, length: 1, outsideDiameter: 0.02, bore: 0.016 }] })
    const cut = massProperties({
      parts: Array.from({ length: pieces }, (_, i) => ({
        mass: 1 / pieces,
        x: (i + 0.5) / pieces,
        y: 0,
        z: 0,
        length: 1 / pieces,
        outsideDiameter: 0.02,
        bore: 0.016,
      })),
    })
    expect(cut.inertia).toBeCloseTo(whole.inertia, 12)
    expect(whole.inertia).toBeCloseTo(1 / 3 + (0.02 ** 2 + 0.016 ** 2) / 16, 12)
  })

  it("a thin rod about its own line has no inertia, never less", () => {
    fc.assert(
      fc.property(triple, (along) => {
        if (Math.hypot(...along) < 0.1) return
        const [directionX, directionY, directionZ] = along
        const out = massProperties({
          parts: [{ mass: 1, x: 0, y: 0, z: 0, length: 1, directionX, directionY, directionZ }],
          ...axisInput([0, 0, 0], along),
        })
        expect(out.inertia).toBeGreaterThanOrEqual(0)
        expect(out.inertia).toBeLessThan(1e-20)
      }),
      { ...seeded, numRuns: 100 },
    )
  })

  it("refuses a part that is two shapes, a bore as wide as the tube and an axis without direction", () => {
    const codes = (input: unknown) => {
      const outcome = massProperties.attempt(input)
      return !outcome.ok && "issues" in outcome.error ? outcome.error.issues.map((i) => i.path.join(".")) : []
    }
    const part = { mass: 1, x: 0, y: 0, z: 0 }
    expect(codes({ parts: [{ ...part, outsideDiameter: 0.1, width: 0.1 }] })).toEqual(["parts.0.outsideDiameter"])
    expect(codes({ parts: [{ ...part, outsideDiameter: 0.1, bore: 0.1 }] })).toEqual(["parts.0.bore"])
    expect(codes({ parts: [part], axisDirectionZ: 0 })).toEqual(["axisDirectionX"])
    expect(codes({ parts: [] })).toEqual(["parts"])
  })
})
