import fc from "fast-check"
import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { isNoSolution, type NoSolution } from "../../src/solver/index.js"
import { type Harness, type HarnessInput, harness } from "../../src/wire/index.js"
import { netlistsOf } from "../helpers/netlists.js"

const stored = netlistsOf("harness")
const voltageOf = (net: Harness, node: string) => net.nodes.find((n) => n.name.toLowerCase() === node)?.voltage as number

describe("harness against a general-purpose circuit simulator", () => {
  it("has netlists to compare with", () => expect(stored.length).toBeGreaterThanOrEqual(3))
  it.each(stored)("$file: $about [$tool]", ({ input, results }) => {
    const net = harness(input as HarnessInput)
    for (const [node, volts] of Object.entries(results)) expect(Math.abs(voltageOf(net, node) - volts), node).toBeLessThan(1e-9)
  })
})

/** A random connected network: a chain of wires through every node, cross links, two sources, loads of every kind. */
const networks = fc
  .record({
    size: fc.integer({ min: 4, max: 12 }),
    chain: fc.array(fc.double({ min: 0.05, max: 3, noNaN: true }), { minLength: 12, maxLength: 12 }),
    cross: fc.array(fc.tuple(fc.nat(11), fc.nat(11), fc.double({ min: 0.001, max: 0.5, noNaN: true })), { maxLength: 6 }),
    volts: fc.tuple(fc.double({ min: 8, max: 14, noNaN: true }), fc.double({ min: 8, max: 14, noNaN: true })),
    inner: fc.tuple(fc.double({ min: 0.02, max: 0.5, noNaN: true }), fc.double({ min: 0.02, max: 0.5, noNaN: true })),
    second: fc.nat(11),
    loads: fc.array(fc.tuple(fc.constantFrom("current", "resistance", "power"), fc.nat(11), fc.double({ min: 0.1, max: 3, noNaN: true })), {
      minLength: 1,
      maxLength: 6,
    }),
  })
  .map(({ size, chain, cross, volts, inner, second, loads }): HarnessInput => {
    const node = (i: number) => `n${i % size}`
    const other = (i: number) => (i % size === 0 ? 1 : i)
    return {
      sources: [
        { name: "s1", positive: node(size - 1), negative: "n0", sourceVoltage: volts[0], sourceResistance: inner[0] },
        { name: "s2", positive: node(other(second)), negative: "n0", sourceVoltage: volts[1], sourceResistance: inner[1] },
      ],
      wires: chain.slice(0, size - 2).map((length, i) => ({ name: `w${i}`, from: node(i + 1), to: node(i + 2), length, awg: 20 })),
      contacts: cross
        .filter(([a, b]) => node(a) !== node(b) && node(a) !== "n0" && node(b) !== "n0")
        .map(([a, b, resistance], i) => ({ name: `c${i}`, from: node(a), to: node(b), resistance })),
      currentLoads: loads.flatMap(([type, at, size], i) =>
        type === "current" ? [{ name: `l${i}`, from: node(other(at)), to: "n0", current: size }] : [],
      ),
      resistanceLoads: loads.flatMap(([type, at, size], i) =>
        type === "resistance" ? [{ name: `l${i}`, from: node(other(at)), to: "n0", resistance: 10 * size }] : [],
      ),
      powerLoads: loads.flatMap(([type, at, size], i) =>
        type === "power" ? [{ name: `l${i}`, from: node(other(at)), to: "n0", power: 4 * size }] : [],
      ),
    }
  })

/** Nodal analysis by a general-purpose solver: conductances, and power loads by I = P/V repeated from the open voltage. */
function nodal(si: ReturnType<typeof harness.read>): Record<string, number> | null {
  const names = [
    ...new Set([
      ...si.sources.flatMap((s) => [s.positive, s.negative]),
      ...[...si.wires, ...si.contacts, ...si.currentLoads, ...si.resistanceLoads, ...si.powerLoads].flatMap((p) => [p.from, p.to]),
    ]),
  ].filter((n) => n !== "n0")
  const at = (name: string) => names.indexOf(name)
  const matrix = names.map(() => names.map(() => 0))
  const fixed = names.map(() => 0)
  const bump = (row: number, column: number, by: number) => {
    if (row >= 0 && column >= 0) (matrix[row] as number[])[column] = (matrix[row]?.[column] as number) + by
  }
  const inject = (rhs: number[], node: number, by: number) => {
    if (node >= 0) rhs[node] = (rhs[node] as number) + by
  }
  const join = (a: number, b: number, g: number) => {
    bump(a, a, g)
    bump(b, b, g)
    bump(a, b, -g)
    bump(b, a, -g)
  }
  for (const s of si.sources) {
    join(at(s.positive), at(s.negative), 1 / s.sourceResistance)
    inject(fixed, at(s.positive), s.sourceVoltage / s.sourceResistance)
    inject(fixed, at(s.negative), -s.sourceVoltage / s.sourceResistance)
  }
  const perMetre = 1 / 58e6 / ((Math.PI / 4) * (0.127e-3 * 92 ** (16 / 39)) ** 2)
  for (const w of si.wires) join(at(w.from), at(w.to), 1 / (perMetre * w.length))
  for (const c of [...si.contacts, ...si.resistanceLoads]) join(at(c.from), at(c.to), 1 / c.resistance)
  for (const l of si.currentLoads) {
    inject(fixed, at(l.from), -l.current)
    inject(fixed, at(l.to), l.current)
  }
  let volts = names.map(() => Number.POSITIVE_INFINITY)
  for (let i = 0; i < 3000; i++) {
    const rhs = [...fixed]
    for (const l of si.powerLoads) {
      const v = (volts[at(l.from)] as number) - (at(l.to) < 0 ? 0 : (volts[at(l.to)] as number))
      inject(rhs, at(l.from), -l.power / v)
      inject(rhs, at(l.to), l.power / v)
    }
    const next = (lusolve(matrix, rhs) as number[][]).map((r) => r[0] as number)
    if (next.some((v) => !(v > 0))) return null
    const step = Math.max(...next.map((v, k) => Math.abs(v - (volts[k] as number))))
    volts = next
    if (step < 1e-13) return Object.fromEntries(names.map((n, k) => [n, volts[k] as number]))
  }
  return null
}

describe("harness against nodal analysis by mathjs lusolve", () => {
  it("agrees to 1e-9 on random networks with loops and every kind of load, and closes Kirchhoff's laws and the energy account", () => {
    let [worst, compared, refusals, withPower] = [0, 0, 0, 0]
    fc.assert(
      fc.property(networks, (input) => {
        const si = harness.read(input)
        const net = harness.si(si)
        const other = nodal(si)
        if (isNoSolution(net)) {
          expect(other, net.message).toBeNull()
          refusals++
          return
        }
        // the nodal iteration gives up close to collapse; the loop solution is then judged by its residual alone
        if (other === null) {
          expect(net.loads.some((l) => l.type === "power") || net.minLoadVoltage <= 0).toBe(true)
          return
        }
        compared++
        if (si.powerLoads.length > 0) withPower++
        for (const [node, volts] of Object.entries(other)) worst = Math.max(worst, Math.abs(voltageOf(net, node) - volts))
        expect(net.residual).toBeLessThan(1e-9)
        const used = net.loadPower + net.wireHeat + net.contactHeat + net.sourceHeat
        expect(Math.abs(net.sourcePower - used)).toBeLessThan(
          1e-9 * Math.max(...net.sources.map((s) => s.sourceVoltage * Math.abs(s.current))),
        )
      }),
      { numRuns: 400, seed: 9 },
    )
    expect(compared).toBeGreaterThan(250)
    expect(withPower).toBeGreaterThan(100)
    expect(worst).toBeLessThan(1e-9)
    expect(refusals).toBeLessThan(100)
  })

  it("never drops more with a thicker wire in a tree, and never heats more in a loop (Rayleigh's monotonicity)", () => {
    let trees = 0
    fc.assert(
      fc.property(networks, fc.nat(100), (input, pick) => {
        const one = { ...input, sources: input.sources.slice(0, 1) }
        const thicker = (net: HarnessInput) => {
          const wires = net.wires ?? []
          return harness({ ...net, wires: wires.map((w, i) => (i === pick % wires.length ? { ...w, awg: 14 } : w)) })
        }
        const tree = { ...one, contacts: [] }
        const before = harness.attempt(tree)
        if (before.ok && before.value.minLoadVoltage > 0) {
          trees++
          expect(thicker(tree).minLoadVoltage).toBeGreaterThanOrEqual(before.value.minLoadVoltage - 1e-12)
        }
        // in a loop one node may lose what another gains; the heat of fixed currents can only fall
        const loop = {
          ...one,
          resistanceLoads: [],
          powerLoads: [],
          currentLoads: [{ name: "l", from: "n1", to: "n0", current: 2 }, ...(one.currentLoads ?? [])],
        }
        const heat = (net: Harness) => net.wireHeat + net.contactHeat + net.sourceHeat
        expect(heat(thicker(loop))).toBeLessThanOrEqual(heat(harness(loop)) * (1 + 1e-12))
      }),
      { numRuns: 200, seed: 11 },
    )
    expect(trees).toBeGreaterThan(60)
  })
})

describe("harness with two rails and a shared return", () => {
  it("settles where repeated I = P/V settles, loads pulling the shared return both ways", () => {
    let [worst, compared, refused] = [0, 0, 0]
    const ohms = fc.double({ min: 0.01, max: 0.6, noNaN: true })
    const watts = fc.double({ min: 1, max: 60, noNaN: true })
    fc.assert(
      fc.property(ohms, ohms, ohms, watts, watts, (up, down, shared, above, below) => {
        const outcome = harness.attempt({
          sources: [
            { name: "upper", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: up },
            { name: "lower", positive: "0", negative: "m", sourceVoltage: 12, sourceResistance: down },
          ],
          contacts: [{ name: "return", from: "g", to: "0", resistance: shared }],
          powerLoads: [
            { name: "above", from: "p", to: "g", power: above },
            { name: "below", from: "g", to: "m", power: below },
          ],
        })
        let [i, k] = [0, 0]
        let steps = 0
        for (; steps < 20000; steps++) {
          const [a, b] = [above / (12 - up * i - shared * (i - k)), below / (12 - down * k - shared * (k - i))]
          if (!(a > 0 && b > 0)) break
          const still = Math.abs(a - i) + Math.abs(b - k) < 1e-14
          ;[i, k] = [a, b]
          if (still) break
        }
        const settled = steps < 20000 && i > 0 && k > 0 && 12 - up * i - shared * (i - k) > 0 && 12 - down * k - shared * (k - i) > 0
        if (!outcome.ok) {
          expect(settled, outcome.error.message).toBe(false)
          refused++
          return
        }
        if (!settled) return
        compared++
        worst = Math.max(
          worst,
          Math.abs((outcome.value.loads[0]?.current as number) - i),
          Math.abs((outcome.value.loads[1]?.current as number) - k),
        )
      }),
      { numRuns: 400, seed: 13 },
    )
    expect(compared).toBeGreaterThan(150)
    expect(refused).toBeGreaterThan(10)
    expect(worst).toBeLessThan(1e-8)
  })
})

describe("harness refusals and edges", () => {
  const source = { name: "pack", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: 0.2 }
  const refusalOf = (input: HarnessInput) => harness.si(harness.read(input)) as NoSolution

  it("names the greatest power available: E²/(4R) on one source", () => {
    const over = refusalOf({ sources: [source], powerLoads: [{ name: "cart", from: "p", to: "0", power: 200 }] })
    expect(over.noSolution).toBe("insufficient-power")
    expect(over.at.available).toBeCloseTo(180, 9)
    expect(over.shortBy).toBeCloseTo(20, 6)
    expect(over.nearest.powerShare).toBeCloseTo(0.9, 5)
    const carts = { sources: [source], powerLoads: [{ name: "cart", from: "p", to: "0", power: 200 }] }
    const down = harness({ ...carts, ...over.nearest })
    expect(down.loadPower).toBeCloseTo(180, 3)
    expect(refusalOf({ ...carts, powerShare: (over.nearest.powerShare as number) * (1 + 2e-6) }).noSolution).toBe("insufficient-power")
    const most = harness({ sources: [source], powerLoads: [{ name: "cart", from: "p", to: "0", power: 180 * (1 - 1e-9) }] })
    expect(most.minLoadVoltage).toBeCloseTo(6, 3)
  })

  it.each([
    [
      "short-circuit",
      {
        sources: [
          { ...source, sourceResistance: 0 },
          { ...source, name: "twin", sourceResistance: 0 },
        ],
        currentLoads: [{ name: "l", from: "p", to: "0", current: 1 }],
      },
    ],
    [
      "loads-in-series",
      {
        sources: [source],
        currentLoads: [
          { name: "a", from: "p", to: "m", current: 1 },
          { name: "b", from: "m", to: "0", current: 1 },
        ],
      },
    ],
    ["reversed", { sources: [source], powerLoads: [{ name: "cart", from: "0", to: "p", power: 5 }] }],
    [
      "insufficient-voltage",
      {
        sources: [source],
        currentLoads: [{ name: "fan", from: "p", to: "0", current: 1000 }],
        powerLoads: [{ name: "cart", from: "p", to: "0", power: 5 }],
      },
    ],
  ] as [string, HarnessInput][])("refuses with %s", (code, input) => {
    expect(refusalOf(input).noSolution).toBe(code)
  })

  it("takes ideal contacts without dividing by their resistance", () => {
    const net = harness({
      sources: [source],
      contacts: [
        { name: "plug", from: "p", to: "a", resistance: 0 },
        { name: "bolt", from: "a", to: "b", resistance: 0 },
      ],
      currentLoads: [{ name: "l", from: "b", to: "0", current: 2 }],
    })
    expect(voltageOf(net, "b")).toBeCloseTo(11.6, 12)
  })

  it("switches loads off behind an open switch and says so", () => {
    const net = harness({
      sources: [source],
      switches: [{ name: "s", from: "p", to: "a", closed: false }],
      currentLoads: [
        { name: "off", from: "a", to: "0", current: 2 },
        { name: "on", from: "p", to: "0", current: 1 },
      ],
    })
    expect(net.loads.map((l) => [l.name, l.fed, l.current])).toEqual([
      ["off", false, 0],
      ["on", true, 1],
    ])
    expect(net.cautions.map((c) => c.code)).toContain("load-off")
    expect(voltageOf(net, "a")).toBeNull()
  })

  it("holds a load off that only a resistor ties to a source: nothing drives its current", () => {
    const net = harness({
      sources: [source],
      resistanceLoads: [{ name: "heater", from: "a", to: "0", resistance: 20 }],
      currentLoads: [{ name: "wing", from: "a", to: "0", current: 2 }],
      switches: [{ name: "s", from: "p", to: "a", closed: false }],
    })
    expect(net.loads.map((l) => [l.fed, l.current, l.voltage])).toEqual([
      [false, 0, 0],
      [true, 0, 0],
    ])
    expect(net.sourcePower).toBe(0)
  })

  it("warns of a wire with no fuse ahead, a hot connector and a pack that is fed back", () => {
    const net = harness({
      sources: [source, { ...source, name: "tired", sourceVoltage: 10 }],
      wires: [{ name: "bare", from: "p", to: "a", length: 1, awg: 24 }],
      contacts: [{ name: "plug", from: "a", to: "b", ratedCurrent: 1 }],
      currentLoads: [{ name: "l", from: "b", to: "0", current: 3 }],
    })
    expect(net.cautions.map((c) => c.code)).toEqual(
      expect.arrayContaining(["unfused-wire", "hot-connector", "thin-wire", "source-fed-back"]),
    )
  })

  it("counts unfused wire from the pole on: a short lead does not hide the long one behind it", () => {
    const codes = (first: number, second: number, fused: boolean) =>
      harness({
        sources: [source],
        wires: [
          { name: "lead", from: "p", to: "a", length: first, awg: 18 },
          { name: "long", from: fused ? "f" : "a", to: "b", length: second, awg: 18 },
        ],
        fuses: fused ? [{ name: "fuse", from: "a", to: "f", fuseRating: 5 }] : [],
        currentLoads: [{ name: "l", from: "b", to: "0", current: 1 }],
      })
        .cautions.filter((c) => c.code === "unfused-wire")
        .map((c) => (/'(.*?)'/.exec(c.message) as RegExpExecArray)[1])
    expect(codes(0.1, 2, false)).toEqual(["long"])
    expect(codes(0.1, 0.07, false)).toEqual([])
    expect(codes(0.1, 2, true)).toEqual([])
    expect(codes(0.2, 2, true)).toEqual(["lead"])
  })
})
