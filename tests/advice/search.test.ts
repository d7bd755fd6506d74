import { inspect } from "node:util"
import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { search } from "../../src/advice/index.js"
import { drawnCharge, leastTime, mechanicsOf, travelTime } from "../../src/advice/search/profile.js"
import { assess, moveTime, type RigDocument } from "../../src/rig/index.js"
import { solveMove } from "../../src/rig/move/move.js"
import { raiseDirection, wholeMove } from "../../src/rig/move/summary.js"
import { isNoSolution } from "../../src/solver/index.js"
import { demo } from "../helpers/rigs.js"
import { dominates, enumerate, keyOf, smallCatalogues, undominated } from "./search-brute.js"
import { goals, shelf, short, wings } from "./search-shelf.js"

const STEP = 1e-3

describe("search against plain enumeration (second route: nested loops, every combination solved whole)", () => {
  it("finds exactly the undominated choices of random small catalogues, equals included", async () => {
    const seen = { front: 0, empty: 0, ties: 0, converters: 0, runs: 0 }
    let largest = 0
    await fc.assert(
      fc.asyncProperty(smallCatalogues, async ({ catalogue, goals, rig }) => {
        const plain = enumerate(rig, catalogue, goals)
        fc.pre(!plain.isOnEdge)
        const found = await search(rig, catalogue, goals)
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
      { numRuns: 60 },
    )
    expect(largest, "raise time against moveTime's adaptive quadrature").toBeLessThan(1e-8)
    // the draw must meet what it is for
    expect(seen.front).toBeGreaterThan(seen.runs)
    expect(seen.empty).toBeGreaterThan(0)
    expect(seen.ties).toBeGreaterThan(0)
    expect(seen.converters).toBeGreaterThan(0)
  }, 300_000)
})

describe("the reckoning behind search", () => {
  it("agrees with moveTime's solver, and no move is faster than its bound", () => {
    const largest = { time: 0, charge: 0 }
    let [moves, bound] = [0, 0]
    for (const actuator of shelf.actuators)
      for (const source of ["bank", "cells"] as const)
        for (const limit of [null, "1.5 A", "2.5 A"] as const) {
          const base = demo(`lantern-moth-${source}`)
          const { name: _n, mass: _m, price: _p, ...bare } = actuator
          const rig = moveTime.read({
            ...base,
            hinged: { ...base.hinged!, actuator: { ...bare, retractedLength: "155 mm", stroke: "95 mm" } },
            ...(base.bank
              ? { bank: null, pack: { ...wings.pack!, series: 2 }, converter: { ...base.converter!, inputCurrentLimit: limit } }
              : {}),
          })
          const { model, chain } = wholeMove(rig)
          const mechanics = mechanicsOf(rig.hinged!)
          if (typeof mechanics === "string") throw new Error(mechanics)
          const up = raiseDirection(rig)
          const breaks = chain.converter?.efficiency.map((point) => point.outputCurrent) ?? []
          for (const [profile, direction] of [
            [mechanics.raise, up],
            [mechanics.lower, up === 1 ? -1 : 1],
          ] as const) {
            const solved = solveMove(model, direction)
            const time = travelTime(profile, model.circuit, breaks)
            expect(typeof time === "string", `${actuator.name} on ${source}, ${limit}: ${time}`).toBe(isNoSolution(solved))
            if (typeof time === "string" || isNoSolution(solved)) continue
            moves++
            if (solved.totals.limited > 0 && solved.totals.limited < 0.999 * solved.totals.time) bound++
            largest.time = Math.max(largest.time, Math.abs(time / solved.totals.time - 1))
            const charge = solved.totals.source / chain.openVoltage
            largest.charge = Math.max(largest.charge, Math.abs(drawnCharge(profile, model.circuit, breaks) / charge - 1))
            const least = leastTime(profile, chain.converter?.outputVoltage ?? chain.openVoltage)
            expect(least).not.toBeNull()
            expect(least! * (1 - 1e-9)).toBeLessThanOrEqual(time)
          }
        }
    expect(moves).toBeGreaterThan(30)
    expect(bound, "moves on which a limit binds part of the way").toBeGreaterThan(3)
    expect(largest.time).toBeLessThan(1e-9)
    expect(largest.charge).toBeLessThan(1e-9)
  })
})

describe("what search hands over", () => {
  it("is a rig that moves as promised and meets the brief", async () => {
    const found = await search(wings, short, goals)
    expect(found.front.length).toBeGreaterThan(20)
    const { brief } = moveTime.read(wings)
    for (const choice of found.front) {
      const move = moveTime(JSON.parse(JSON.stringify(choice.rig)) as RigDocument)
      expect(Math.abs(move.raiseTime - choice.raiseTime)).toBeLessThan(1e-6)
      expect(Math.abs(move.lowerTime - choice.lowerTime)).toBeLessThan(1e-6)
      expect(move.swing).toBeCloseTo(choice.swing, 12)
      expect(move.raiseTime).toBeLessThanOrEqual(brief!.raiseTime!)
      expect(move.cycleTime).toBeLessThanOrEqual(brief!.stageTime!)
      expect(move.swing).toBeGreaterThanOrEqual(brief!.swing!)
      expect(Math.max(move.raise.peakForce, move.lower.peakForce)).toBeLessThanOrEqual(choice.peakForce * (1 + 1e-9))
      expect(choice.peakForce).toBeLessThanOrEqual(moveTime.read(choice.rig).hinged!.actuator.ratedForce)
      expect(Math.max(move.raise.peakSourceCurrent, move.lower.peakSourceCurrent)).toBeLessThanOrEqual(
        choice.peakSourceCurrent * (1 + 1e-9),
      )
      expect(choice.dayShare).toBeLessThanOrEqual(1)
      expect(choice.rig.note).toContain(choice.actuator)
    }
    for (const one of found.front) for (const other of found.front) expect(dominates(one, other, STEP)).toBe(false)
    const best = (key: "price" | "mass" | "raiseTime") => Math.min(...found.front.map((choice) => choice[key]))
    expect(found.front[found.cheapest!]!.price).toBe(best("price"))
    expect(found.front[found.lightest!]!.mass).toBe(best("mass"))
    expect(found.front[found.fastest!]!.raiseTime).toBeLessThanOrEqual(best("raiseTime") + STEP)
  })
  it("falls short in none of the rig's own checks that the search looks at", async () => {
    const found = await search(wings, short, goals)
    const looked = [
      "swing",
      "raise-time",
      "stage-time",
      "peak-force",
      "stall-margin",
      "dead-point",
      "cell-current",
      "converter-window",
      "over-voltage",
      "day-energy",
      "fuse",
      "switch",
    ]
    const told = new Set<string>()
    for (const { rig } of found.front)
      for (const { check, verdict, why } of assess(rig).findings) {
        if (!looked.includes(check)) continue
        told.add(check)
        expect(verdict, `${check}: ${why} ${rig.note}`).not.toBe("falls short")
      }
    expect([...told].sort()).toEqual([...looked].sort())
  })
  it("is frozen, JSON-clean and prints", async () => {
    const found = await search(wings, short, { ...goals, parallel: [1] })
    expect(JSON.parse(JSON.stringify(found))).toEqual(found)
    expect(() => Object.assign(found.front[0]!.rig, { name: "other" })).toThrow(TypeError)
    expect(inspect(found)).toContain("choices that no other beats")
  })
  it("is the same every time, and leaves what it was given alone", async () => {
    const given = JSON.stringify([wings, short, goals])
    const [one, two] = [await search(wings, short, goals), await search(wings, short, goals)]
    expect(two).toEqual(one)
    expect(JSON.stringify([wings, short, goals])).toBe(given)
  })
  it("keeps equal choices side by side", async () => {
    const twins = { ...short, cells: [short.cells[0]!, { ...short.cells[0]!, name: "its twin" }] }
    const found = await search(wings, twins, { ...goals, parallel: [1] })
    const keys = new Set(found.front.map(keyOf))
    for (const key of keys)
      expect(keys).toContain(
        key.includes("its twin") ? key.replace("its twin", short.cells[0]!.name) : key.replace(short.cells[0]!.name, "its twin"),
      )
  })
  it("counts every combination once: ruled out, proved dominated, or reckoned", async () => {
    const found = await search(wings, short, goals)
    const { combinations, ruledOut, pruned, evaluated } = found
    expect(combinations).toBe(4 * 4 * 3 * (3 * 3 * 2 * 3) * 6)
    // some of those reckoned are ruled out by what the reckoning shows
    expect(ruledOut + pruned).toBeLessThanOrEqual(combinations)
    expect(ruledOut + pruned + evaluated).toBeGreaterThanOrEqual(combinations)
    expect(found.rejected.reduce((sum, one) => sum + one.combinations, 0)).toBe(ruledOut)
    for (const { members, of } of found.rejected) if (members !== null) expect(members).toBeLessThanOrEqual(of!)
  })
})
