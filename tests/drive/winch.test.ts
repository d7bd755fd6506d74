import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { drawWinch, type Winch, type WinchInput, winch } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const near = (a: number | null, b: number, size = Math.abs(b)) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(1e-9 * size + 1e-12)
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 17, numRuns: 120 }

const drawn = fc.record({
  pull: between(5, 400),
  drumDiameter: between(0.01, 0.2),
  lineDiameter: between(0.0005, 0.008),
  lineType: fc.constantFrom("wire-rope" as const, "fibre-rope" as const),
  turnsPerLayer: fc.integer({ min: 1, max: 30 }),
  layerRise: between(0.8, 1),
  lineLength: between(0.5, 30),
  travelShare: between(0.05, 1),
  efficiency: between(0.6, 1),
  backwardEfficiency: between(0.5, 1),
  dragTorque: between(0, 2),
  speed: between(0.1, 50),
  lineFriction: between(0, 0.3),
})
const inputOf = ({ travelShare, ...rest }: { travelShare: number; lineLength: number } & Omit<WinchInput, "travel">): WinchInput => ({
  ...rest,
  travel: travelShare * (rest.lineLength as number),
})

/**
 * The winch turned by hand: one turn after another is laid on, each with the radius of the layer that it lies in; a list of pieces
 * of turns, each with its radius, from the fixing on.
 */
function wound(input: WinchInput, length: number): { radius: number; turns: number; layer: number }[] {
  const pieces = []
  let left = length
  for (let turn = 0; left > 1e-12; turn++) {
    const layer = Math.floor(turn / (input.turnsPerLayer as number))
    const [d, rise] = [input.lineDiameter as number, input.layerRise as number]
    const radius = (input.drumDiameter as number) / 2 + d / 2 + layer * rise * d
    const turns = Math.min(1, left / (2 * Math.PI * radius))
    pieces.push({ radius, turns, layer: layer + 1 })
    left -= turns * 2 * Math.PI * radius
  }
  return pieces
}
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)

describe("winch", () => {
  it("winds as a drum turned turn by turn", () => {
    let layered = 0
    fc.assert(
      fc.property(drawn, (raw) => {
        const input = inputOf(raw)
        const out = winch(input)
        const [full, left] = [
          wound(input, input.lineLength as number),
          wound(input, (input.lineLength as number) - (input.travel as number)),
        ]
        near(out.woundTurns, sum(full.map((p) => p.turns)), 1e3)
        near(out.safetyTurns, sum(left.map((p) => p.turns)), 1e3)
        near(out.drumTurns, out.woundTurns - out.safetyTurns, 1e3)
        expect(out.outerLayer).toBe(full.at(-1)?.layer)
        expect(out.innerLayer).toBe(left.at(-1)?.layer ?? 1)
        near(out.woundIn.radius, full.at(-1)?.radius as number)
        near(out.woundDiameter, 2 * (full.at(-1)?.radius as number) + (input.lineDiameter as number))
        near(out.duration, (2 * Math.PI * out.drumTurns) / (input.speed as number), 1e3)
        if (out.outerLayer > out.innerLayer) layered++
        expect(out.layers.map((l) => l.layer)).toEqual(
          Array.from({ length: out.outerLayer - out.innerLayer + 1 }, (_, k) => out.innerLayer + k),
        )
        expect([out.paidOut, out.woundIn]).toEqual([out.layers[0], out.layers.at(-1)])
      }),
      seeded,
    )
    expect(layered).toBeGreaterThan(60)
  })

  it("puts as much work in as comes out and is lost, winding in and paying out, turn by turn", () => {
    let driven = 0
    fc.assert(
      fc.property(drawn, (raw) => {
        const input = inputOf(raw)
        const out = winch(input)
        const { pull, dragTorque, efficiency, backwardEfficiency } = input as unknown as Record<string, number>
        // the pieces of the travel: what is on the drum wound in, without what stays
        let stays = out.safetyTurns
        const moved = wound(input, input.lineLength as number).map((p) => {
          const off = Math.min(stays, p.turns)
          stays -= off
          return { ...p, turns: p.turns - off }
        })
        const angle = 2 * Math.PI * sum(moved.map((p) => p.turns))
        const on = moved
          .map((p) => ({
            way: p.turns * 2 * Math.PI * p.radius,
            angle: 2 * Math.PI * p.turns,
            ...(out.layers[p.layer - out.innerLayer] as Winch["woundIn"]),
          }))
          .filter((p) => p.angle > 1e-12)
        const raised = sum(on.map((p) => p.raiseTorque * p.angle))
        const lowered = sum(on.map((p) => p.lowerTorque * p.angle))
        const load = sum(on.map((p) => p.way * (pull as number)))
        const size = Math.max(Math.abs(raised), Math.abs(lowered), load)
        near(out.loadWork, load, size)
        near(out.raiseWork, raised, size)
        near(out.lowerWork, lowered, size)
        // friction of line and bearings as a force along the line, and the drag along the angle
        const [raising, lowering] = [load / (efficiency as number) - load, load - load * (backwardEfficiency as number)]
        near(out.raiseLoss, raising + (dragTorque as number) * angle, size)
        near(out.lowerLoss, lowering + (dragTorque as number) * angle, size)
        near(out.raiseWork, out.loadWork + out.raiseLoss, size)
        near(out.lowerWork + out.loadWork, out.lowerLoss, size)
        if (out.lowerTorque > 0) driven++
      }),
      seeded,
    )
    expect(driven).toBeGreaterThan(5)
  })

  it("moves with its own torque just the pull it says, and asks the most of the drive on the outer layer", () => {
    fc.assert(
      fc.property(drawn, (raw) => {
        const input = inputOf(raw)
        const out = winch(input)
        // a drive that gives just what the outer layer asks winds in just this pull there, and more further in
        const just = winch({ ...input, torque: out.raiseTorque * (1 + 1e-12) })
        near(just.liftingPull?.low ?? null, input.pull as number)
        near((just.liftingPull?.high as number) * out.paidOut.radius, (just.liftingPull?.low as number) * out.woundIn.radius)
        for (const layer of just.layers) {
          near(
            winch({ ...input, pull: layer.loweringPull as number }).layers.find((l) => l.layer === layer.layer)?.lowerTorque as number,
            -out.raiseTorque,
            100,
          )
          expect(layer.raiseTorque).toBeLessThanOrEqual(out.raiseTorque)
          expect(layer.holdingTorque).toBeLessThanOrEqual(out.requiredHoldingTorque)
          expect(layer.lowerTorque).toBeGreaterThanOrEqual(out.lowerTorque)
          near(layer.lineSpeed, (input.speed as number) * layer.radius)
        }
        expect(out.transmits).toBe("pull-only")
      }),
      { ...seeded, numRuns: 40 },
    )
  })

  it("leaves the fixing what small pieces of line leave it, each pressed on by the pull at its two ends", () => {
    for (const [lineFriction, travel] of [
      [0.05, 3.8],
      [0.12, 2.5],
      [0.3, 3],
    ] as const) {
      const input = {
        pull: 100,
        drumDiameter: 0.05,
        lineDiameter: 0.002,
        lineType: "fibre-rope",
        turnsPerLayer: 8,
        lineLength: 4,
        travel,
        lineFriction,
      } as const
      const out = winch(input)
      const pieces = 40_000
      const step = (2 * Math.PI * out.safetyTurns) / pieces
      let pull = 100
      // normal force: the mean of both pulls over the angle between them
      for (let k = 0; k < pieces; k++) pull *= (1 - (lineFriction * step) / 2) / (1 + (lineFriction * step) / 2)
      expect(Math.abs(out.fixingPull / pull - 1)).toBeLessThan(1e-6)
    }
  })

  it("holds whole layers below the rim, and refuses the first line that is too long for them", () => {
    const drum = {
      pull: 50,
      drumDiameter: 0.04,
      lineDiameter: 0.002,
      lineType: "wire-rope",
      drumWidth: 0.0201,
      travel: 1,
      flangeDiameter: 0.0521,
    } as const
    // 10 turns; (52.1 − 40)/2 = 6.05 mm: three layers of 2 mm, of radius 21, 23 and 25 mm
    const capacity = 2 * Math.PI * 10 * (0.021 + 0.023 + 0.025)
    near(winch({ ...drum, lineLength: 2 }).capacity, capacity)
    near(winch({ ...drum, lineLength: capacity }).woundTurns, 30)
    const refused = winch.attempt({ ...drum, lineLength: capacity + 1e-6 })
    expect(!refused.ok && "noSolution" in refused.error && refused.error.noSolution).toBe("does-not-fit")
  })

  it("weakens wire rope by its bend and leaves fibre as it is", () => {
    const line = {
      pull: 10,
      drumDiameter: 0.04,
      lineDiameter: 0.002,
      turnsPerLayer: 10,
      lineLength: 2,
      travel: 1,
      lineStrength: 1000,
    } as const
    // D/d = 20: 91 % (sheave table)
    near(winch({ ...line, lineType: "wire-rope" }).lineSafetyFactor, 91)
    near(winch({ ...line, lineType: "fibre-rope" }).lineSafetyFactor, 100)
    expect(winch({ ...line, lineType: "fibre-rope" }).bentStrengthShare).toBeNull()
  })

  it("draws its torque over the line paid out, from its own ends to its own heights", () => {
    const si = winch.read(winch.example)
    const picture = drawWinch(si) as string
    expect(picture.startsWith("<svg")).toBe(true)
    expect(picture).toContain("held back, paying out")
    expect(isNoSolution(winch.si({ ...si, torque: 0.1 }))).toBe(true)
    expect(drawWinch({ ...si, torque: 0.1 })).toBeNull()
  })
})
