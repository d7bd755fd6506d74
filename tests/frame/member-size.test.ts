import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { cylinderBuckling, frameMaterials, type MemberSizeInput, memberSize } from "../../src/frame/index.js"
import { assemble, elementStiffness, evenNodes, solveScaled, without } from "./elements.js"

const bare = { modulus: 70e9, strength: 200e6, density: 2700 } as const
const seeded = { seed: 91, numRuns: 60 }
const tip = (length: number, force: number) =>
  ({ type: "beam", length, support: "cantilever", forces: [{ force, position: length }] }) as const
const free = { countsOwnWeight: false } as const

/** Drop of a cantilever's tip and moment at its clamp under a tip load and its own weight, by eight cubic elements and statics. */
function cantilever(length: number, stiffness: number, force: number, perLength: number) {
  const [n, h] = [8, length / 8]
  const nodes = evenNodes(n).map((x) => x * length)
  const load = nodes.flatMap((_, i) => [
    perLength * h * (i === n ? 0.5 : 1) + (i === n ? force : 0),
    i === n ? (-perLength * h * h) / 12 : 0,
  ])
  const moved = solveScaled(
    without(assemble(nodes, elementStiffness), [0, 1]).map((row) => row.map((k) => k * stiffness)),
    load.slice(2),
  )
  return { drop: moved[2 * n - 2] as number, moment: force * length + (perLength * length ** 2) / 2 }
}

describe("the size that a member asks for", () => {
  it("bars of any depth: closed forms of a tip load turned round, by sag or by stress, whichever asks for more", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        fc.double({ min: 1, max: 200, noNaN: true }),
        fc.double({ min: 0.002, max: 0.2, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        (length, force, deflectionLimit, minSafetyFactor) => {
          const member = tip(length, force)
          const second = (force * length ** 3) / (3 * 70e9 * deflectionLimit)
          const modulus = (minSafetyFactor * force * length) / 200e6
          // shear: 4·V/(3·A) of a round bar against S/√3
          const sheared = Math.sqrt((16 * force * minSafetyFactor * Math.sqrt(3)) / (3 * Math.PI * 200e6))
          const round = memberSize({ member, search: { type: "round", ...bare }, deflectionLimit, minSafetyFactor, ...free })
          const diameter = Math.max(((64 * second) / Math.PI) ** 0.25, ((32 * modulus) / Math.PI) ** (1 / 3), sheared)
          expect(Math.abs(round.depth / diameter - 1)).toBeLessThan(1e-9)
          expect(Math.abs((round.requiredSecondMoment as number) / second - 1)).toBeLessThan(1e-9)
          expect(Math.abs((round.requiredSectionModulus as number) / modulus - 1)).toBeLessThan(1e-9)
          expect(round.mass).toBeCloseTo((2700 * Math.PI * diameter ** 2 * length) / 4, 9)
          const width = 0.02
          const flat = memberSize({ member, search: { type: "rectangular", width, ...bare }, deflectionLimit, minSafetyFactor, ...free })
          const cut = (1.5 * force * minSafetyFactor * Math.sqrt(3)) / (width * 200e6)
          const height = Math.max(Math.cbrt((12 * second) / width), Math.sqrt((6 * modulus) / width), cut)
          expect(Math.abs(flat.depth / Math.max(height, 1e-4) - 1)).toBeLessThan(1e-9)
        },
      ),
      seeded,
    )
  })

  it("stock tubes: the lightest of those that finite elements and statics pass, and why the others are not", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.integer({ min: 8, max: 40 }), fc.integer({ min: 5, max: 30 })), {
          minLength: 1,
          maxLength: 12,
          selector: ([d, w]) => `${d} ${w}`,
        }),
        fc.double({ min: 5, max: 150, noNaN: true }),
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        (tubes, force, deflectionLimit) => {
          const length = 0.8
          const sizes = tubes.map(([d, w]) => ({
            name: `${d} × ${w / 10}`,
            section: { outsideDiameter: d / 1000, wall: w / 1e4 },
            material: "aluminium-6061" as const,
          }))
          const known = tubes.map(([d, w]) => {
            const [D, t] = [d / 1000, w / 1e4]
            const inside = D - 2 * t
            const [area, second] = [(Math.PI * (D ** 2 - inside ** 2)) / 4, (Math.PI * (D ** 4 - inside ** 4)) / 64]
            const { drop, moment } = cantilever(length, 68.9e9 * second, force, 2700 * area * 9.80665)
            const stress = (moment * D) / 2 / second
            const sheared = ((force + 2700 * area * 9.80665 * length) * (D ** 3 - inside ** 3)) / 12 / second / (D - inside)
            const strong = stress <= 241.3e6 / 3 && sheared <= 241.3e6 / 3 / Math.sqrt(3)
            const folds = stress * 3 > cylinderBuckling((D - t) / 2, t, 68.9e9, 0.33).bending
            const fails = [strong ? [] : ["strength"], folds ? ["wall"] : [], drop > deflectionLimit ? ["deflection"] : []].flat()
            return { name: `${d} × ${w / 10}`, mass: 2700 * area * length, fails: fails.join(",") }
          })
          const sound = known.filter((k) => k.fails === "").sort((a, b) => a.mass - b.mass)
          const outcome = memberSize.attempt({ member: tip(length, force), search: { type: "stock", sizes }, deflectionLimit })
          expect(outcome.ok).toBe(sound.length > 0)
          if (!outcome.ok) return
          const { name, mass, candidates } = outcome.value
          expect(name).toBe(sound[0]?.name)
          expect(mass).toBeCloseTo(sound[0]?.mass as number, 12)
          expect(candidates.map((c) => c.mass)).toEqual([...candidates.map((c) => c.mass)].sort((a, b) => a - b))
          for (const k of known)
            expect(candidates.find((c) => c.name === k.name)?.verdict).toBe(
              k.name === name ? "chosen" : k.fails === "" ? "heavier" : k.fails,
            )
        },
      ),
      seeded,
    )
  })

  it("columns: the load form of Euler and Johnson turned round by halving; a required second moment by Euler", () => {
    for (const [length, load] of [
      [0.3, 5000],
      [1.2, 300],
      [2.5, 40],
    ] as const) {
      const out = memberSize({ member: { type: "column", length, load }, search: { type: "round", ...bare }, minSafetyFactor: 2.5 })
      const fails = (d: number) => {
        const [I, A] = [(Math.PI * d ** 4) / 64, (Math.PI * d ** 2) / 4]
        const euler = (Math.PI ** 2 * 70e9 * I) / length ** 2
        return (euler < 100e6 * A ? euler : 200e6 * A * (1 - (200e6 * A) / 4 / euler)) < 2.5 * load
      }
      let [low, high] = [1e-4, 0.2]
      while (high - low > 1e-13) {
        const middle = (low + high) / 2
        if (fails(middle)) low = middle
        else high = middle
      }
      expect(out.depth).toBeCloseTo(high, 10)
      expect(out.requiredSecondMoment).toBeCloseTo((2.5 * load * length ** 2) / (Math.PI ** 2 * 70e9), 18)
      expect([out.requiredSectionModulus, out.beam]).toEqual([null, null])
    }
  })

  it("a tube of foil takes the diameter that is neither too slender nor too thin for its wall", () => {
    const search = { type: "round", wall: "0.05 mm", material: "aluminium-6061" } as const
    const at = (load: number) => memberSize.attempt({ member: { type: "column", length: 0.5, load }, search })
    const [light, far] = [at(100), at(2000)]
    if (!light.ok) throw light.error
    expect(light.value.column?.governedBy).toBe("Euler")
    expect(far.ok).toBe(false)
  })

  it("every material is taken at its own heat: a pipe that has gone soft is passed over, not refused", () => {
    const sizes = [
      { name: "pipe", section: { pipe: "3/4" }, material: "pvc-pipe" },
      { name: "tube", section: { outsideDiameter: 0.03, wall: 0.003 }, material: "aluminium-6061" },
    ] as const
    const at = (materialTemperature: number) =>
      memberSize({ member: tip(0.3, 10), search: { type: "stock", sizes }, materialTemperature }).candidates.map((c) => c.verdict)
    expect(frameMaterials["pvc-pipe"].limit).toBe(60)
    expect(at(60)).toEqual(["chosen", "heavier"])
    expect(at(61)).toEqual(["temperature", "chosen"])
  })

  it("of two sizes of one mass takes the first; takes the lighter whatever the order", () => {
    const size = (name: string, wall: number): Extract<MemberSizeInput["search"], { type: "stock" }>["sizes"][number] => ({
      name,
      section: { outsideDiameter: 0.02, wall },
      ...bare,
    })
    const chosen = (...sizes: ReturnType<typeof size>[]) => memberSize({ member: tip(0.3, 10), search: { type: "stock", sizes } }).name
    expect(chosen(size("a", 0.001), size("b", 0.001))).toBe("a")
    expect(chosen(size("a", 0.002), size("b", 0.001))).toBe("b")
  })
})
