// Motors that start at the same moment, against resistors in series and in parallel; a packed rig against the published sum of sides.
import { describe, expect, it } from "vitest"
import type { Rig } from "../../src/rig/index.js"
import { boom, changed, finding, with_ } from "./boom.js"

// two like booms on one plug: 12 V behind 0.1 Ω, two windings of 1.5 Ω side by side
const both = changed(boom, ["motions"], [boom.motions[0], { ...boom.motions[0], name: "second boom" }])
const INRUSH = 12 / (0.1 + 1.5 / 2)
const plug = (current: number, action: string | null = "latch"): Rig =>
  with_(both, [["power", "sources", 0, "currentLimit"], current], [["power", "buses", 0, "limitAction"], action])
const start = (rig: Rig) => finding(rig, "start-together", "power")

describe("all that may start together", () => {
  it("draws what windings side by side draw, beyond what each alone does", () => {
    expect(start(plug(20)).value).toBeCloseTo(INRUSH, 9)
    expect(start(plug(INRUSH + 0.01)).verdict).toBe("marginal")
    expect(start(plug(INRUSH - 0.01)).verdict).toBe("falls short")
    // alone each starts on that
    expect(finding(plug(INRUSH - 0.01), "inrush", "boom").verdict).not.toBe("falls short")
  })
  it("is not promised where the supply holds the current down, and asked for where nothing says what it does", () => {
    expect(start(plug(INRUSH - 0.01, "hold")).verdict).toBe("cannot be judged")
    expect(start(plug(INRUSH - 0.01, null)).missing).toBe("power.buses[0].limitAction")
  })
  it("drops a controller at the voltage that the divider leaves", () => {
    const left = (12 * 0.75) / 0.85
    const receiving = (resetVoltage: number) =>
      start(changed(plug(30), ["power", "loads"], [{ type: "controller", name: "receiver", bus: "line", current: 0, resetVoltage }]))
    expect(receiving(left - 0.01).verdict).not.toBe("falls short")
    expect(receiving(left + 0.01).verdict).toBe("falls short")
    expect(receiving(left + 0.01).value).toBeCloseTo(left, 9)
  })
  it("is held down by a driver's own limit", () => {
    const driven = with_(plug(20), [["motions", 0, "drive", "currentLimit"], "2 A"], [["motions", 1, "drive", "currentLimit"], "2 A"])
    expect(start(driven).value).toBeCloseTo(4, 9)
  })
  it("is nothing where the programme lets them run one after another", () => {
    const steps = [
      { at: 0, motion: "boom", to: 1 },
      { at: "5 min", motion: "second boom", to: 1 },
    ]
    expect(() => start(changed(plug(20), ["programme"], steps))).toThrow(/no finding/)
  })
})

describe("packed for the way", () => {
  const packed = (length: number, mass = 10) =>
    finding(
      with_(
        boom,
        [["day", "flies"], true],
        [["venue"], { front: "0.2 m", back: "0.2 m", packed: { length, width: 0.4, height: 0.3, mass } }],
      ),
      "packed-size",
    )
  it("may have 158 cm in all and 23 kg, as airlines' guidance has it", () => {
    expect(packed(0.87).verdict).toBe("marginal")
    expect(packed(0.89).verdict).toBe("falls short")
    expect(packed(0.3, 22.9).verdict).toBe("marginal")
    expect(packed(0.3, 23.1).verdict).toBe("falls short")
  })
  it("is asked for where the rig goes by air", () => {
    expect(finding(changed(boom, ["day", "flies"], true), "packed-size").missing).toBe("venue.packed")
  })
})
