import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { search } from "../../src/rig/index.js"
import { dominates, enumerate, keyOf, openRig, smallCatalogues, undominated } from "./search-brute.js"

const STEP = 1e-3

describe("search against plain enumeration (second route: nested loops, every combination solved whole)", () => {
  it("finds exactly the undominated choices of random small catalogues, equals included", async () => {
    const seen = { front: 0, empty: 0, ties: 0, converters: 0, runs: 0 }
    let largest = 0
    await fc.assert(
      fc.asyncProperty(smallCatalogues, async ({ catalogue, goals }) => {
        const plain = enumerate(openRig(), catalogue, goals)
        fc.pre(!plain.isOnEdge)
        const found = await search(openRig(), catalogue, goals)
        const expected = undominated(plain.fit, STEP)
        expect(found.front.map(keyOf).sort()).toEqual(expected.map((one) => one.key).sort())
        expect(found.combinations).toBe(plain.combinations)
        expect(found.ruledOut).toBeLessThanOrEqual(plain.combinations - plain.fit.length)
        if (!plain.fit.length) expect(found.ruledOut).toBe(plain.combinations)
        for (const choice of found.front) {
          const same = expected.find((one) => one.key === keyOf(choice))!
          expect(choice.price).toBeCloseTo(same.price, 6)
          expect(choice.mass).toBeCloseTo(same.mass, 9)
          largest = Math.max(largest, Math.abs(choice.raiseTime / same.raiseTime - 1))
          if (choice.converter) seen.converters++
        }
        seen.runs++
        seen.front += found.front.length
        if (!found.front.length) seen.empty++
        for (const [i, one] of expected.entries())
          if (
            expected.some(
              (other, k) =>
                k < i && !dominates(one, other, STEP) && Math.abs(one.raiseTime - other.raiseTime) < 1e-12 && one.price === other.price,
            )
          )
            seen.ties++
      }),
      { numRuns: 80 },
    )
    console.log(seen, largest)
    expect(largest, "raise time against moveTime's adaptive quadrature").toBeLessThan(1e-8)
    // the draw must meet what it is for
    expect(seen.front).toBeGreaterThan(seen.runs)
    expect(seen.empty).toBeGreaterThan(0)
    expect(seen.ties).toBeGreaterThan(0)
    expect(seen.converters).toBeGreaterThan(0)
  }, 300_000)
})
