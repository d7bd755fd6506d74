// Loads whose both ends are live: neither lies on the common return. Second route: Thévenin's source and the quadratic of a power.
import { describe, expect, it } from "vitest"
import { isNoSolution } from "../../src/solver/index.js"
import { harness } from "../../src/wire/index.js"

/** A load of one kind between a and b. */
const between = (kind: "current" | "power" | "resistance", value: number, from = "a", to = "b") => {
  const load = { name: "eyes", from, to }
  if (kind === "current") return { currentLoads: [{ ...load, current: value }] }
  return kind === "power" ? { powerLoads: [{ ...load, power: value }] } : { resistanceLoads: [{ ...load, resistance: value }] }
}
/** A bridge of four resistors on a pack: a between the first two, b between the others. */
const bridge = (volts: number, own: number, [r1, r2, r3, r4]: readonly [number, number, number, number], load: object) => ({
  sources: [{ name: "pack", positive: "p", negative: "0", sourceVoltage: volts, sourceResistance: own }],
  contacts: [
    { name: "r1", from: "p", to: "a", resistance: r1 },
    { name: "r3", from: "p", to: "b", resistance: r3 },
    { name: "r2", from: "a", to: "0", resistance: r2 },
    { name: "r4", from: "b", to: "0", resistance: r4 },
  ],
  ...load,
})
/** What a load draws from an open voltage behind a resistance, at the higher voltage of a power's two states. */
function drawn(kind: "current" | "power" | "resistance", value: number, open: number, inner: number) {
  const current =
    kind === "current"
      ? value
      : kind === "resistance"
        ? open / (inner + value)
        : (open - Math.sqrt(open ** 2 - 4 * inner * value)) / (2 * inner)
  return { current, voltage: open - inner * current }
}
const kinds = [
  ["resistance", 0.8],
  ["current", 0.9],
  ["power", 1.7],
] as const

describe("loads between two live nodes", () => {
  it.each(kinds)("across a bridge: %s", (kind, value) => {
    for (const arms of [
      [0.4, 1.6, 1.9, 0.5],
      [0.05, 3, 2, 0.2],
    ] as const) {
      const [r1, r2, r3, r4] = arms
      const volts = 12
      const out = harness(bridge(volts, 0, arms, between(kind, value)))
      const open = volts * (r2 / (r1 + r2) - r4 / (r3 + r4))
      const inner = (r1 * r2) / (r1 + r2) + (r3 * r4) / (r3 + r4)
      const { current, voltage } = drawn(kind, value, open, inner)
      const load = out.loads.find((l) => l.name === "eyes")
      expect(load?.voltage).toBeCloseTo(voltage, 10)
      expect(load?.current).toBeCloseTo(current, 10)
      // each side of the bridge for itself: its own divider less what the load takes through it
      const at = (name: string) => out.nodes.find((n) => n.name === name)?.voltage
      expect(at("a")).toBeCloseTo((volts * r2) / (r1 + r2) - (current * r1 * r2) / (r1 + r2), 10)
      expect(at("b")).toBeCloseTo((volts * r4) / (r3 + r4) + (current * r3 * r4) / (r3 + r4), 10)
    }
  })

  it.each(kinds)("between the poles of two packs on one return: %s", (kind, value) => {
    const [high, low, resistances] = [12.6, 7.4, [0.1, 0.03, 0.12, 0.02] as const]
    const out = harness({
      sources: [
        { name: "wings", positive: "p", negative: "0", sourceVoltage: high, sourceResistance: resistances[0] },
        { name: "lights", positive: "q", negative: "0", sourceVoltage: low, sourceResistance: resistances[2] },
      ],
      contacts: [
        { name: "plug", from: "p", to: "a", resistance: resistances[1] },
        { name: "socket", from: "q", to: "b", resistance: resistances[3] },
      ],
      ...between(kind, value),
    })
    const inner = resistances.reduce<number>((sum, r) => sum + r, 0)
    const { current, voltage } = drawn(kind, value, high - low, inner)
    expect(out.loads[0]?.voltage).toBeCloseTo(voltage, 10)
    expect(out.nodes.find((n) => n.name === "b")?.voltage).toBeCloseTo(low + current * 0.14, 10)
    // what the load leaves goes into the weaker pack, which charges it
    expect(out.sources.find((s) => s.name === "lights")?.current).toBeCloseTo(-current, 10)
    expect(out.cautions.map((c) => c.code)).toContain("source-fed-back")
  })

  it("refuses more power than the two nodes can give, and a load the wrong way round", () => {
    const arms = [0.4, 1.6, 1.9, 0.5] as const
    const open = 12 * (1.6 / 2 - 0.5 / 2.4)
    const inner = (0.4 * 1.6) / 2 + (1.9 * 0.5) / 2.4
    const most = open ** 2 / (4 * inner)
    const solve = (load: object) => harness.si(harness.read(bridge(12, 0, arms, load)))
    expect(isNoSolution(solve(between("power", most * 0.999)))).toBe(false)
    const over = solve(between("power", most * 1.001))
    expect(isNoSolution(over) && over.noSolution).toBe("insufficient-power")
    const reversed = solve(between("power", 1.7, "b", "a"))
    expect(isNoSolution(reversed) && reversed.noSolution).toBe("reversed")
  })
})
