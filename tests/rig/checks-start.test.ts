// The start of a motion: by Ohm's law at standstill and by a rotor followed in time.
import { describe, expect, it } from "vitest"
import { openCircuitVoltage } from "../../src/pack/index.js"
import type { Rig } from "../../src/rig/index.js"
import { creature } from "../helpers/rigs.js"
import { boom, changed, drive, finding, LEVEL, neck, with_ } from "./boom.js"

const source = (key: string) => ["power", "sources", 0, key]
const bus = (key: string) => ["power", "buses", 0, key]
const starts = (rig: Rig) => finding(rig, "starts", "boom")
const inrush = (rig: Rig) => finding(rig, "inrush", "boom")

describe("a boom that starts from rest", () => {
  it("gets what winding and plug let through, less what the gears take", () => {
    // 12 V over 1.6 Ω, 0.1 A of it for friction, 4 N·m per ampere
    expect(starts(boom).value).toBeCloseTo((12 / 1.6 - 0.1) * 4, 6)
    expect(starts(boom).limit).toBeCloseTo(1.3 * LEVEL, 4)
    expect(starts(boom)).toMatchObject({ verdict: "meets", relation: "at-least", severity: "function" })
    expect(starts(boom).utilisation).toBeCloseTo((1.3 * LEVEL) / ((12 / 1.6 - 0.1) * 4), 4)
  })
  it("is held to the plug's limit, and to its driver's", () => {
    const weak = changed(boom, source("currentLimit"), "3 A")
    expect(starts(weak).value).toBeCloseTo(2.9 * 4, 4)
    expect(starts(changed(boom, source("currentLimit"), "2.5 A")).verdict).toBe("falls short")
    expect(starts(changed(boom, drive("currentLimit"), "2.2 A")).value).toBeCloseTo(2.1 * 4, 6)
  })
  it("on a cold and tired pack gives less than on a warm and full one, as its sag says", () => {
    const cells = [
      { type: "cells", name: "plug", chemistry: "nmc", series: 3, parallel: 1, cellCapacity: "2.6 Ah", cellResistance: "60 mohm" },
    ]
    const packed = with_(boom, [["power", "sources"], cells], [["day", "coldest"], "25 degC"])
    const cold = changed(packed, ["day", "coldest"], "-5 degC")
    expect(starts(cold).value as number).toBeLessThan(starts(packed).value as number)
    expect(starts(cold).condition).toMatch(/reserve, at the coldest/)
  })
  it("knows nothing of the wind, and names what feeds it where that is not said", () => {
    expect(starts(changed(boom, ["wind", "windSpeed"], "9 m/s"))).toEqual(starts(boom))
    for (const id of ["starts", "inrush"]) {
      expect(finding(changed(boom, ["power"], null), id).missing).toBe("power")
      expect(finding(changed(boom, ["motions", 0, "bus"], null), id).missing).toBe("motions[0].bus")
    }
  })
})

/** Whether a rotor that starts free is over a limit for longer than `onTime`: small steps in time. */
function overFor(limit: number, inertia: number, load: number): number {
  let [speed, time] = [0, 0]
  const dt = 1e-5
  while ((12 - 4 * speed) / 1.6 > limit && time < 10) {
    const current = (12 - 4 * speed) / 1.6
    // torque by the back-EMF's constant, the load by the current it takes
    speed += ((4 * (current - load)) / inertia) * dt
    time += dt
  }
  return time
}

describe("the current at the start", () => {
  it("is that of the windings standing still, against what the plug gives", () => {
    expect(inrush(boom).value).toBeCloseTo(12 / 1.6, 9)
    expect(inrush(boom)).toMatchObject({ verdict: "meets", limit: 10, relation: "at-most" })
    expect(inrush(boom).utilisation).toBeCloseTo(0.75, 9)
  })
  const weak = changed(boom, source("currentLimit"), "3 A")
  it("above the limit hangs on what the supply does there, and on what turns", () => {
    expect(inrush(weak).missing).toBe("power.buses[0].limitAction")
    const latch = changed(weak, bus("limitAction"), "latch")
    expect(inrush(latch).missing).toBe("motions[0].drive.rotorInertia")
    const hold = inrush(changed(weak, bus("limitAction"), "hold"))
    expect([hold.verdict, hold.sentence]).toEqual(["marginal", expect.stringMatching(/start only as fast/)])
    expect(hold.value).toBeCloseTo(3, 9)
    const heavy = changed(latch, drive("rotorInertia"), "0.36 kg m2")
    // with the head's 0.64 kg·m² and the level's load
    const over = overFor(3, 1, 0.1 + LEVEL / 4)
    expect(inrush(changed(heavy, bus("onTime"), `${over * 0.98} s`)).verdict).toBe("falls short")
    expect(inrush(changed(heavy, bus("onTime"), `${over * 1.02} s`)).verdict).toBe("marginal")
  })
  it("that pulls a controller down is no good start", () => {
    const held = changed(weak, bus("limitAction"), "hold")
    const controller = (resetVoltage: string) => [{ type: "controller", name: "receiver", bus: "line", current: 0, resetVoltage }]
    // 3 A through 1.5 Ω leave 4.5 V
    expect(inrush(changed(held, ["power", "loads"], controller("4.4 V"))).verdict).toBe("marginal")
    const down = inrush(changed(held, ["power", "loads"], controller("4.6 V")))
    expect(down.verdict).toBe("falls short")
    expect(down.sentence).toMatch(/receiver falls below 4.6 V and starts anew/)
  })
  it("counts the load of the harder way, and the most that turns", () => {
    // let down on the way out and raised on the way back: nothing helps it off then
    const lowered = with_(weak, [neck("startAngle"), 0], [neck("reversed"), true], [bus("limitAction"), "latch"])
    const heavy = changed(lowered, drive("rotorInertia"), "0.36 kg m2")
    const over = overFor(3, 1, 0.1 + LEVEL / 4)
    expect(overFor(3, 1, 0.1)).toBeLessThan(over * 0.9)
    expect(inrush(changed(heavy, bus("onTime"), `${over * 0.98} s`)).verdict).toBe("falls short")
    expect(inrush(changed(heavy, bus("onTime"), `${over * 1.02} s`)).verdict).toBe("marginal")
  })
  it("pulls a controller down by a tired pack as well, though a full one gives more current", () => {
    const cells = {
      type: "cells",
      name: "plug",
      chemistry: "nmc",
      series: 3,
      parallel: 1,
      cellCapacity: "2.6 Ah",
      cellResistance: "60 mohm",
    }
    const packed = with_(boom, [["power", "sources"], [cells]], [["day", "reserve"], "20 %"])
    const reset = (resetVoltage: number) => [{ type: "controller", name: "receiver", bus: "line", current: 0, resetVoltage }]
    const at = (stateOfCharge: number) => {
      const volts = 3 * openCircuitVoltage("nmc", stateOfCharge)
      // the pack's 0.18 Ω and the winding's 1.5 Ω share its voltage
      return (volts * 1.5) / 1.68
    }
    const between = (at(0.2) + at(0.9)) / 2
    const found = inrush(changed(packed, ["power", "loads"], reset(between)))
    expect(found.sentence).toMatch(/receiver falls below/)
    expect(found.verdict).toBe("falls short")
    expect(inrush(changed(packed, ["power", "loads"], reset(at(0.2) * 0.98))).verdict).toBe("meets")
  })
  it("of the fan's motor is its stall current on the full pack", () => {
    // 12.6 V less nothing; winding from the sheet's two points, then pack, wire, switch, fuse and contacts in its way
    const found = finding(creature("nine-feather-fan"), "inrush", "fan")
    expect(found.relation).toBe("rule")
    expect(found.verdict).toBe("meets")
  })
})
