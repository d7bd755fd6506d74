// The new drives and elements inside a whole rig: times and work that can be told from the datasheet and from heights.
import { describe, expect, it } from "vitest"
import { standardGravity } from "../../../src/linkage/index.js"
import { type MoveInput, move } from "../../../src/rig/index.js"
import { drum } from "../../../src/rig/transmissions/drum.js"
import type { Transmission } from "../../../src/rig/transmissions/transmission.js"
import { built } from "../members.js"

type Motion = MoveInput["motions"][number]
// creatures of the street-theatre troupe; parts invented
const rig = (motion: Omit<Motion, "name">): MoveInput => ({ version: 2, name: "lantern moth", motions: [{ name: "one", ...motion }] })
const feather = { name: "paper", mass: "0.1 g", radius: 0 } as const

describe("a move", () => {
  it("of a jaw without load takes the servo's printed time for 60°", () => {
    const jaw = move(
      rig({
        drive: {
          type: "hobby-servo",
          fromAngle: "-10 deg",
          toAngle: "50 deg",
          firstVoltage: "4.8 V",
          firstStallTorque: "9 kgf cm",
          firstTime: "0.2 s",
          secondVoltage: "6 V",
          secondStallTorque: "11 kgf cm",
          secondTime: "0.16 s",
          stallCurrent: "2 A",
        },
        mechanisms: [{ name: "jaw", type: "turned-arm", startAngle: 0, length: "100 mm", masses: [feather] }],
      }),
    )
    expect(jaw.outDuration).toBeCloseTo(0.16, 9)
    expect(jaw.backDuration).toBeCloseTo(0.16, 9)
    expect(jaw.out.peakCurrent).toBeCloseTo(0.01, 9)
  })

  it("of a crank that starts or ends at either dead point takes the motor's own time without load, and passes none", () => {
    const degree = Math.PI / 180
    const turned = (startAngle: number, travel: number) =>
      move(
        rig({
          drive: {
            ...{ type: "gearmotor", travel: travel * degree, ratedVoltage: "12 V", noLoadSpeed: "100 rpm", noLoadCurrent: "0.2 A" },
            ...{ loadTorque: "34 kgf cm", loadSpeed: "0 rpm", loadCurrent: "5.5 A" },
          },
          transmission: [{ type: "crank", crank: "30 mm", coupler: "90 mm", startAngle: startAngle * degree, efficiency: 0.9 }],
          mechanisms: [
            {
              ...{ name: "neck", type: "scissor", cells: 2, armLength: "150 mm", rod: "along" },
              ...{ armsMass: "0.1 g", startLength: "100 mm" },
            },
          ],
        }),
      )
    // a quarter turn at 100 rpm
    for (const startAngle of [0, 180, -180, 360, 90, -90]) expect(turned(startAngle, 90).outDuration, `${startAngle}°`).toBeCloseTo(0.15, 3)
    for (const startAngle of [0, 180]) {
      expect(turned(startAngle, 179.9).outDuration, `${startAngle}°`).toBeCloseTo(0.3 * (179.9 / 180), 3)
      expect(() => turned(startAngle, 181), `${startAngle}°`).toThrow(/cannot follow/)
    }
  })

  it("of a neck without load takes the gearmotor's printed speed through its gears", () => {
    const neck = move(
      rig({
        drive: {
          type: "gearmotor",
          travel: "0.75 rev",
          ratedVoltage: "12 V",
          noLoadSpeed: "100 rpm",
          noLoadCurrent: "0.2 A",
          loadTorque: "34 kgf cm",
          loadSpeed: "0 rpm",
          loadCurrent: "5.5 A",
        },
        transmission: [{ type: "gear", stages: [{ type: "spur", drivingTeeth: 15, drivenTeeth: 45 }] }],
        mechanisms: [{ name: "neck", type: "turned-arm", startAngle: 0, length: "100 mm", masses: [feather] }],
      }),
    )
    expect(neck.outDuration).toBeCloseTo(0.45, 9)
    // a pair of gears turns the other way
    expect(neck.out.curve.at(-1)?.angle).toBeCloseTo(-Math.PI / 2, 9)
  })

  it("of a wing on a winch does the work of its height through three layers of line, and less than that comes back", () => {
    const element = {
      type: "drum",
      drumDiameter: "20 mm",
      lineDiameter: "2 mm",
      turnsPerLayer: 1,
      lineLength: "0.5 m",
      travel: "0.3 m",
    } as const
    const winds = built<Transmission>(drum, (({ type: _, ...fields }) => fields)(element))
    const lineAt = (angle: number) => Math.hypot(0.3 * Math.cos(angle), 0.4 - 0.3 * Math.sin(angle))
    const [from, to] = [(-40 * Math.PI) / 180, (20 * Math.PI) / 180]
    let [low, high] = [0, winds.high]
    for (let k = 0; k < 80; k++) {
      const middle = (low + high) / 2
      if (winds.out(middle) < lineAt(from) - lineAt(to)) low = middle
      else high = middle
    }
    expect(winds.kinks.filter((kink) => kink > 0 && kink < low).length).toBeGreaterThan(1)
    const wing = move(
      rig({
        drive: {
          type: "gearmotor",
          travel: low,
          ratedVoltage: "12 V",
          noLoadSpeed: "30 rpm",
          noLoadCurrent: "0.2 A",
          loadTorque: "34 kgf cm",
          loadSpeed: "0 rpm",
          loadCurrent: "5.5 A",
        },
        transmission: [element],
        mechanisms: [
          {
            name: "wing",
            type: "hinge",
            reversed: true,
            length: "450 mm",
            fixedPivot: { x: 0, y: "400 mm" },
            movingPivot: { radius: "300 mm", angle: 0 },
            assembly: "clockwise",
            startLength: lineAt(from),
            masses: [{ name: "spar", mass: "500 g", radius: "400 mm" }],
          },
        ],
      }),
    )
    const lifted = 0.5 * standardGravity * 0.4 * (Math.sin(to) - Math.sin(from))
    expect(wing.out.curve.at(-1)?.angle).toBeCloseTo(to, 7)
    expect(wing.out.energy.work / (lifted / 0.95)).toBeCloseTo(1, 6)
    expect(wing.back.energy.work / (-lifted * 0.95)).toBeCloseTo(1, 6)
  })
})
