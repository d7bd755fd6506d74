import { readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { move } from "../../src/rig/index.js"
import { creature } from "../helpers/rigs.js"

/** Stored results of shared/netlists/moth-raise.cir; scripts/run-netlists.mjs reproduces them. */
const { results, tool } = JSON.parse(readFileSync(new URL("../../shared/netlists/moth-raise.json", import.meta.url), "utf8")) as {
  readonly results: Readonly<Record<string, number>>
  readonly tool: string
}

describe(`the coupled chain against ${tool} (a general-purpose circuit simulator): pack, wires, motor and linkage stepped in time`, () => {
  // the netlist has nothing but the wings on the pack
  const rig = creature("lantern-moth-cells")
  const { out, outDuration } = move({ ...rig, power: rig.power ? { ...rig.power, loads: [] } : null })
  const at = (time: number, of: (p: (typeof out.curve)[number]) => number) => {
    const i = out.curve.findIndex((p) => p.time >= time)
    const [a, b] = [out.curve[i - 1]!, out.curve[i]!]
    return of(a) + ((of(b) - of(a)) * (time - a.time)) / (b.time - a.time)
  }
  it("takes the same time", () => {
    // seven digits are printed by the simulator
    expect(Math.abs(outDuration / results.t_raise! - 1)).toBeLessThan(1e-6)
  })
  it.each([3, 6, 9])("has the rod in the same place after %d s", (time) => {
    // the curve's own points are 2.5 mm apart and nearly straight between
    expect(Math.abs(at(time, (p) => p.stroke ?? Number.NaN) - results[`s_at_${time}`]!)).toBeLessThan(5e-6)
  })
  it("has the same voltage at the actuators", () => {
    expect(Math.abs(at(6, (p) => p.voltage) - results.m_at_6!)).toBeLessThan(1e-4)
  })
})
