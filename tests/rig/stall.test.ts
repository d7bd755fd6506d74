import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { moveTime, type RigDocument } from "../../src/rig/index.js"
import { constantsOf, movePoint, stallForce } from "../../src/rig/move/move.js"
import { wholeMove } from "../../src/rig/move/summary.js"
import { stiffRig } from "../helpers/rigs.js"

/** A stiff rig on a bank with a resistance and a limit of its own, read. */
const onBank = (voltage: number, resistance: number, currentLimit: number) =>
  moveTime.read({ ...stiffRig(), bank: { voltage, resistance, currentLimit, energy: "100 Wh" } } as RigDocument)

describe("the force at which an actuator stalls", () => {
  it("by hand: what the winding's and the source's resistances let through in series, or the limit if that is less", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0.05, max: 50, noNaN: true }),
        (voltage, resistance, limit) => {
          const rig = onBank(voltage, resistance, limit)
          const count = rig.hinged!.count
          const { frictionCurrent, forceConstant, windingResistance: winding } = constantsOf(rig.hinged!)
          // the wires' own: none but a millimetre's worth of contacts
          const { model, chain } = wholeMove(rig)
          const line = resistance + chain.lineResistance + chain.loadResistance
          const inSeries = voltage / (winding + count * line)
          const expected = Math.max(0, (Math.min(inSeries, limit / count) - frictionCurrent) * forceConstant)
          expect(stallForce(model)).toBeGreaterThanOrEqual(expected * (1 - 1e-6) - 1e-6)
          expect(stallForce(model)).toBeLessThanOrEqual(expected * (1 + 1e-6) + 1e-6)
        },
      ),
    )
  })

  it("a mechanism that closes at both ends of its stroke closes all along it", () => {
    const { model } = wholeMove(moveTime.read(stiffRig()))
    const { stroke } = model.arms.actuator
    for (let i = 0; i <= 1000; i++) expect(movePoint(model, (stroke * i) / 1000, 1), String(i)).not.toBeNull()
  })
})
