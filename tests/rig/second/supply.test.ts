import { describe, expect, it } from "vitest"
import { randomNumbers } from "../mechanisms/draw.js"
import { bank, bus, converter, drawnTree, heater, lights, regulated, secondState, stateOf, type Tree } from "./trees.js"

const close = (got: ArrayLike<number>, wanted: readonly number[], within: number, what: string) =>
  wanted.forEach((w, i) => {
    expect(Math.abs((got[i] as number) - w), `${what} ${i}: ${got[i]} against ${w}`).toBeLessThanOrEqual(within * (1 + Math.abs(w)))
  })

/** Source power less all that is taken and lost, W. */
function imbalance(tree: Tree, drawn: readonly number[], { model, state }: ReturnType<typeof stateOf>): { left: number; source: number } {
  let [source, left] = [0, 0]
  model.sources.forEach((s, k) => {
    const amps = state.sourceAmps[k] as number
    source += s.openVoltage * amps
    left += s.openVoltage * amps - amps * amps * s.resistance
  })
  tree.buses.forEach((b, i) => {
    const [amps, volts] = [state.runAmps[i] as number, state.volts[i] as number]
    left -= amps * amps * b.switchResistance + (drawn[i] as number) * volts
    if (b.converter) left -= (state.inputVolts[i] as number) * amps - volts * (state.outAmps[i] as number)
    for (const load of tree.loads)
      if (load.bus === b.name)
        left -=
          load.type === "resistive" ? volts ** 2 / load.resistance : load.type === "constant-power" ? load.power : volts * load.current
  })
  return { left, source }
}

describe("power tree against the network solver with converters iterated outside", () => {
  const random = randomNumbers(14)
  const drawn = Array.from({ length: 70 }, () => drawnTree(random))
  it("70 drawn trees: the same voltages and currents", () => {
    let answered = 0
    for (const { tree, drawn: amps } of drawn) {
      const { state } = stateOf(tree, amps)
      const second = secondState(tree, amps)
      if (second === null || second.held) continue
      answered++
      expect(state.failed, `${JSON.stringify(tree)}`).toBe(-1)
      close(state.volts, second.volts, 1e-9, "volts")
      close(state.inputVolts, second.inputVolts, 1e-9, "input")
      close(state.runAmps, second.runAmps, 1e-9, "amps")
    }
    expect(answered).toBeGreaterThan(50)
  })
  it("80 drawn trees with heavy loads: both find a state, or neither does", () => {
    let [answered, refused] = [0, 0]
    for (let n = 0; n < 80; n++) {
      const { tree, drawn: amps } = drawnTree(random, false, 40)
      const { state } = stateOf(tree, amps)
      const second = secondState(tree, amps)
      expect(state.failed < 0, JSON.stringify(tree)).toBe(second !== null)
      if (second === null) refused++
      else {
        answered++
        close(state.volts, second.volts, 1e-9, "volts")
      }
    }
    expect([answered > 20, refused > 10]).toEqual([true, true])
  })
  it("what the sources give is what is taken and lost", () => {
    for (const { tree, drawn: amps } of drawn) {
      const found = stateOf(tree, amps)
      if (found.state.failed >= 0 || found.state.limits.some((l) => l !== "none")) continue
      const { left, source } = imbalance(tree, amps, found)
      expect(Math.abs(left)).toBeLessThan(1e-9 * source)
    }
  })
  it("more current anywhere raises no voltage and lowers no source's current", () => {
    let compared = 0
    for (const { tree, drawn: amps } of drawn) {
      const { state } = stateOf(tree, amps)
      if (state.failed >= 0) continue
      for (let i = 0; i < amps.length; i++) {
        const more = stateOf(
          tree,
          amps.map((a, k) => (k === i ? a * 1.1 + 0.02 : a)),
        ).state
        if (more.failed >= 0) continue
        compared++
        for (let k = 0; k < amps.length; k++) expect(more.volts[k]).toBeLessThanOrEqual((state.volts[k] as number) * (1 + 1e-12) + 1e-12)
      }
    }
    expect(compared).toBeGreaterThan(200)
  })
})

describe("near the fold of constant-power loads", () => {
  // E²/4R is the most a source gives: the maximum power theorem
  const near = [1e-1, 1e-3, 1e-5, 1e-7, 1e-9]
  it("one load: the upper voltage below the fold, insufficient power above", () => {
    for (const gap of near) {
      const tree = (share: number): Tree => ({
        sources: [bank({ resistance: 0.5 })],
        buses: [bus("stage", "lantern bank", 0.5)],
        loads: [regulated("stage", 36 * share)],
      })
      const below = stateOf(tree(1 - gap), [0]).state
      expect(below.failed).toBe(-1)
      expect(below.volts[0]).toBeGreaterThan(6)
      expect(Math.abs((below.volts[0] as number) - 6 * (1 + Math.sqrt(gap)))).toBeLessThan(1e-6)
      const above = stateOf(tree(1 + gap), [0]).state
      expect(above.failed).toBe(0)
      expect(above.limits[0]).toBe("too-much-power")
    }
  })
  it("two loads at unlike places, and a load behind a converter: swept through the network solver's own fold", () => {
    const trees: ((p: number) => Tree)[] = [
      (p) => ({
        sources: [bank({ resistance: 0.3 })],
        buses: [bus("left", "lantern bank", 0.2), bus("right", "lantern bank", 0.9), bus("tail", "left", 0.4)],
        loads: [regulated("right", p), regulated("tail", 2 * p), lights("left", 0.3)],
      }),
      (p) => ({
        sources: [bank({ resistance: 0.3 })],
        buses: [bus("left", "lantern bank", 0.2, converter({ minInputVoltage: 0.5 })), bus("right", "lantern bank", 0.9)],
        loads: [regulated("right", p), regulated("left", p), heater("right", 20)],
      }),
    ]
    for (const [n, tree] of trees.entries()) {
      const drawn = tree(1).buses.map(() => 0)
      const stands = (p: number) => stateOf(tree(p), drawn).state.failed === -1
      let [low, high] = [0.1, 200]
      for (let k = 0; k < 60; k++) {
        const mid = (low + high) / 2
        if (stands(mid)) low = mid
        else high = mid
      }
      // where another model still has a state, so has the tree; the damped iteration is slow near the fold
      const before = secondState(tree(low * 0.999), drawn, 20000)
      expect(before, `tree ${n} just below its fold`).not.toBeNull()
      close(stateOf(tree(low * 0.999), drawn).state.volts, before?.volts ?? [], 1e-8, "volts")
      expect(secondState(tree(low * 1.001), drawn, 20000), `tree ${n} just above its fold`).toBeNull()
      // on the way there every voltage falls, ever faster: never a step onto the lower branch
      let last = stateOf(tree(0), drawn).state
      for (let k = 1; k <= 60; k++) {
        const here = stateOf(tree((low * k) / 60), drawn).state
        for (let i = 0; i < drawn.length; i++) {
          expect(here.volts[i]).toBeLessThanOrEqual((last.volts[i] as number) + 1e-12)
          if (n === 0) expect(here.volts[i]).toBeGreaterThan(4.5)
        }
        last = here
      }
    }
  })
})

describe("limits, each from both sides", () => {
  const at = (over: object, amps: number, source: object = {}) =>
    stateOf({ sources: [bank(source)], buses: [bus("stage", "lantern bank", 0.95, converter(over))], loads: [] }, [amps]).state
  it("input current: 0.9 of what goes in comes out", () => {
    // 5 V at 1 A out takes 5/0.9 W: in at 12 V behind 1 Ω 0.4824 A (12 I − I² = 5.5556)
    const amps = 6 - Math.sqrt(36 - 5 / 0.9)
    const loose = at({ inputCurrentLimit: amps * 1.0001 }, 1)
    expect([loose.volts[0], loose.limits[0]]).toEqual([5, "none"])
    const tight = at({ inputCurrentLimit: amps * 0.9 }, 1)
    expect(tight.limits[0]).toBe("input-current")
    expect(tight.volts[0]).toBeCloseTo(0.9 * amps * 0.9 * (12 - amps * 0.9), 10)
  })
  it("output current: the output is gone just above it", () => {
    expect(at({ outputCurrentLimit: 1 }, 1).volts[0]).toBe(5)
    const over = at({ outputCurrentLimit: 1 }, 1.0001)
    expect([over.volts[0], over.limits[0]]).toEqual([0, "output-current"])
  })
  it("minimum input: the converter takes no more than leaves it that", () => {
    // at 11 V a source of 12 V behind 1 Ω gives 1 A, 11 W, of which 9.9 W come out
    expect(at({ minInputVoltage: 11 }, 9.9 / 5 - 1e-4).limits[0]).toBe("none")
    const held = at({ minInputVoltage: 11 }, 9.9 / 5 + 0.2)
    expect(held.limits[0]).toBe("input-voltage")
    expect(held.inputVolts[0]).toBeCloseTo(11, 10)
    expect(held.volts[0]).toBeCloseTo(9.9 / (9.9 / 5 + 0.2), 10)
  })
  it("the source's own most power", () => {
    // 12 V behind 1 Ω gives at most 36 W
    const most = (0.9 * 36) / 5
    expect(at({ minInputVoltage: 1 }, most * 0.9999).limits[0]).toBe("none")
    const held = at({ minInputVoltage: 1 }, most * 1.1)
    expect(held.limits[0]).toBe("source-power")
    expect(held.inputVolts[0]).toBeCloseTo(6, 9)
    expect(held.volts[0]).toBeCloseTo(5 / 1.1, 9)
  })
  it("below its minimum and above its maximum input a converter gives nothing", () => {
    expect(at({ minInputVoltage: 12.01 }, 0.1)).toMatchObject({ failed: 0, limits: ["no-input"] })
    expect(at({ minInputVoltage: 11.5 }, 0.001).failed).toBe(-1)
    expect(at({ maxInputVoltage: 11.99 }, 0.1)).toMatchObject({ failed: 0, limits: ["no-input"] })
    expect(at({ maxInputVoltage: 12 }, 0.1).failed).toBe(-1)
  })
  it("a bank trips just above its current, straight or through buses between", () => {
    const plain = (amps: number) =>
      stateOf({ sources: [bank({ currentLimit: 2 })], buses: [bus("hub", "lantern bank"), bus("stage", "hub", 0.2)], loads: [] }, [0, amps])
        .state
    expect(plain(2).limits[1]).toBe("none")
    expect(plain(2.0001)).toMatchObject({ limits: ["source-current", "source-current"] })
    expect(plain(2.0001).volts[1]).toBe(0)
  })
  it("a bus of no resistance between a bank and its converter changes nothing", () => {
    for (const amps of [0.5, 2, 3, 6]) {
      const source = bank({ currentLimit: 1 })
      const straight = stateOf({ sources: [source], buses: [bus("stage", "lantern bank", 0.1, converter())], loads: [] }, [amps]).state
      const between = stateOf(
        { sources: [source], buses: [bus("hub", "lantern bank"), bus("stage", "hub", 0.1, converter())], loads: [] },
        [0, amps],
      ).state
      expect(between.volts[1]).toBeCloseTo(straight.volts[0] as number, 10)
      expect(between.limits[1]).toBe(straight.limits[0])
    }
  })
  it("held converters on one source share what it gives: the same state by another iteration", () => {
    const tree: Tree = {
      sources: [bank({ resistance: 0.4 })],
      buses: [
        bus("left", "lantern bank", 0.3, converter({ inputCurrentLimit: 1.2 })),
        bus("right", "lantern bank", 0.5, converter({ minInputVoltage: 10.4, outputVoltage: 9 })),
        bus("tail", "left", 0.1),
      ],
      loads: [heater("tail", 3), lights("right", 0.2)],
    }
    const second = secondState(tree, [2, 1.5, 0])
    expect(second?.held).toBe(true)
    const { state } = stateOf(tree, [2, 1.5, 0])
    expect([...state.limits]).toEqual(["input-current", "input-voltage", "input-current"])
    close(state.volts, second?.volts ?? [], 1e-8, "volts")
    close(state.runAmps, second?.runAmps ?? [], 1e-8, "amps")
  })
  it("three converters that each ask for more than their source has", () => {
    const three: Tree = {
      sources: [bank({ resistance: 4 })],
      buses: ["left", "right", "tail"].map((name) => bus(name, "lantern bank", 0, converter({ minInputVoltage: 1 }))),
      loads: [],
    }
    const { state } = stateOf(three, [3, 3, 3])
    // each takes the most it can for what the others leave: I = (E − 2·I·R)/2R, so I = E/4R and a quarter of E at the input
    expect(state.failed).toBe(-1)
    for (const i of [0, 1, 2]) {
      expect(state.inputVolts[i]).toBeCloseTo(3, 8)
      expect(state.runAmps[i]).toBeCloseTo(0.75, 8)
    }
  })
})

describe("loads that answer to voltage", () => {
  it("a heater of less resistance than its wire is a plain divider", () => {
    for (const ohms of [0.05, 0.5, 1, 10]) {
      const { state } = stateOf(
        { sources: [bank({ resistance: 0 })], buses: [bus("stage", "lantern bank", 1.2)], loads: [heater("stage", ohms)] },
        [0],
      )
      expect(state.failed).toBe(-1)
      expect(state.volts[0]).toBeCloseTo((12 * ohms) / (ohms + 1.2), 10)
    }
  })
  it("a heater on a converter at its input limit takes what is left: V·(I + V/R) = η·P", () => {
    const { state } = stateOf(
      {
        sources: [bank({ resistance: 0 })],
        buses: [bus("stage", "lantern bank", 0, converter({ inputCurrentLimit: 1 }))],
        loads: [heater("stage", 1)],
      },
      [0.5],
    )
    const v = (-0.5 + Math.sqrt(0.25 + 4 * 0.9 * 12)) / 2
    expect(state.volts[0]).toBeCloseTo(v, 9)
  })
  it("a heater beyond a converter's output limit leaves it off, once and for all", () => {
    const { state } = stateOf(
      { sources: [bank()], buses: [bus("stage", "lantern bank", 0, converter({ outputCurrentLimit: 3 }))], loads: [heater("stage", 1)] },
      [0.5],
    )
    expect([state.failed, state.volts[0], state.limits[0]]).toEqual([-1, 0, "output-current"])
  })
  it("a converter takes no power back", () => {
    const { state } = stateOf(
      { sources: [bank()], buses: [bus("stage", "lantern bank", 0, converter({ quiescentCurrent: 0.01 }))], loads: [] },
      [-1],
    )
    expect(state.sourceAmps[0]).toBeCloseTo(0.01, 12)
    expect(state.volts[0]).toBe(5)
  })
})
