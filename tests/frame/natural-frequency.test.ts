import { describe, expect, it } from "vitest"
import { cantileverRoot, magnification, naturalFrequency } from "../../src/frame/index.js"
import { barRoot, krylov, modesBelow, placesOf, shapeOf } from "../../src/frame/natural-frequency/modes.js"
import { assemble, elementMass, elementStiffness, evenNodes, leastEigenvalue, type Matrix, without } from "./elements.js"

/** First root of a unit cantilever with a tip mass by finite elements with consistent mass. */
function elementRoot(massRatio: number, n = 24): number {
  const mass = assemble(evenNodes(n), elementMass)
  mass[2 * n]![2 * n]! += massRatio
  return leastEigenvalue(without(assemble(evenNodes(n), elementStiffness), [0, 1]), without(mass, [0, 1])) ** 0.25
}

const ratios = [0, 1e-4, 0.01, 0.1, 0.5, 1, 3, 10, 100, 1000]

describe("naturalFrequency against other routes", () => {
  it("first root by finite elements over all tip masses", () => {
    const most = Math.max(...ratios.map((mu) => Math.abs(cantileverRoot(mu, 1).x / elementRoot(mu) - 1)))
    expect(most).toBeLessThan(1e-7)
  })

  it("lies between Dunkerley's lower and Rayleigh's upper bound", () => {
    for (const mu of [...ratios, 1e6, 1e9]) {
      const square = cantileverRoot(mu, 1).x ** 4
      const dunkerley = 1 / (1 / 1.8751040687 ** 4 + mu / 3)
      // shape of a tip load, y = x²·(3 − x)/2: kinetic 33/140, strain energy 3
      const rayleigh = 3 / (mu + 33 / 140)
      expect(square).toBeGreaterThanOrEqual(dunkerley * (1 - 1e-9))
      expect(square).toBeLessThanOrEqual(rayleigh * (1 + 1e-12))
    }
  })

  it("heavy tips: a spring and a lump; the higher roots those of a bar clamped and pinned", () => {
    const heavy = cantileverRoot(1e9, 1).x
    expect(Math.abs((heavy ** 4 * 1e9) / 3 - 1)).toBeLessThan(1e-9)
    // tan x = tanh x
    for (const mode of [2, 3] as const) {
      const { x } = cantileverRoot(1e8, mode)
      expect(Math.abs(Math.tan(x) - Math.tanh(x))).toBeLessThan(1e-6)
    }
  })

  it("the power series joins the closed form of the tip term", () => {
    // either side of the switch at 0.5, mass ratios found backwards from the equation in long form
    for (const x of [0.4999, 0.5001]) {
      const term = Math.sin(x) * Math.cosh(x) - Math.cos(x) * Math.sinh(x)
      const mu = (1 + Math.cos(x) * Math.cosh(x)) / (x * term)
      expect(Math.abs(cantileverRoot(mu, 1).x / x - 1)).toBeLessThan(1e-13)
    }
  })

  it("magnification by stepping the equation of motion", () => {
    for (const [r, zeta] of [
      [0.5, 0.05],
      [1, 0.05],
      [1.7, 0.1],
    ] as const) {
      // y'' + 2ζy' + y = cos rt, run until the start has died away
      let [y, v, most] = [0, 0, 0]
      const dt = 0.002
      const push = (t: number, p: number, q: number) => Math.cos(r * t) - 2 * zeta * q - p
      for (let t = 0; t < 260; t += dt) {
        const k1 = push(t, y, v)
        const k2 = push(t + dt / 2, y + (dt / 2) * v, v + (dt / 2) * k1)
        y += dt * v + (dt ** 2 / 2) * k1
        v += dt * k2
        if (t > 230) most = Math.max(most, Math.abs(y))
      }
      expect(Math.abs(magnification(r, zeta) / most - 1)).toBeLessThan(3e-3)
    }
  })
})

describe("naturalFrequency", () => {
  const boom = { length: 0.9, section: { outsideDiameter: 0.016, wall: 0.001 }, material: "aluminium-6061" } as const

  it("longer, softer or heavier is slower", () => {
    const bare = naturalFrequency(boom)
    expect(naturalFrequency({ ...boom, length: 1.8 }).frequency.low / bare.frequency.low).toBeCloseTo(1 / 4, 10)
    expect(naturalFrequency({ ...boom, tipMass: 0.1 }).frequency.low).toBeLessThan(bare.frequency.low)
    expect(naturalFrequency({ ...boom, addedMass: 0.1 }).frequency.low).toBeLessThan(bare.frequency.low)
    expect(naturalFrequency({ ...boom, material: "polycarbonate" }).frequency.low).toBeLessThan(bare.frequency.low)
    expect(bare.frequency.high).toBeGreaterThan(bare.frequency.low)
  })

  it("warns where the steps or their second harmonic fall into the range, not where they are far", () => {
    const at = (stepRate: number, f: number) => {
      const length = 0.9 * Math.sqrt(naturalFrequency(boom).frequency.low / f)
      return naturalFrequency({ ...boom, length, stepRate })
    }
    expect(at(2, 2).amplification).toBeCloseTo(25, 6)
    expect(at(2, 2).harmonic).toBe(1)
    expect(at(2, 4).harmonic).toBe(2)
    expect(at(2, 4).cautions.map((c) => c.code)).toContain("shaken-by-steps")
    expect(at(2, 12).cautions.map((c) => c.code)).not.toContain("shaken-by-steps")
    expect(at(2, 1).cautions.map((c) => c.code)).toContain("slower-than-steps")
  })

  it("wants a mass along the length", () => {
    const outcome = naturalFrequency.attempt({ length: 1, section: { secondMoment: 1e-9 }, modulus: 1e9 })
    expect(!outcome.ok && "issues" in outcome.error && outcome.error.issues.map((i) => i.path.join("."))).toEqual(["massPerLength"])
  })
})

describe("a root that gives, and masses along the member", () => {
  const n = 24
  /** Stiffness and mass of a unit bar by plane elements: springs and masses as numbers on the diagonals; masses lie on its nodes. */
  function sprung(turning: number, sinking: number, lumps: readonly { at: number; mass: number }[]): readonly [Matrix, Matrix] {
    const [stiffness, mass] = [assemble(evenNodes(n), elementStiffness), assemble(evenNodes(n), elementMass)]
    if (sinking > 0) stiffness[0]![0]! += 1 / sinking
    if (turning > 0) stiffness[1]![1]! += 1 / turning
    for (const { at, mass: m } of lumps) mass[2 * Math.round(at * n)]![2 * Math.round(at * n)]! += m
    const held = [...(sinking > 0 ? [] : [0]), ...(turning > 0 ? [] : [1])]
    return [without(stiffness, held), without(mass, held)]
  }
  /** Modes of the elements below a square of the frequency: negative pivots of K − λ·M. */
  function below([stiffness, mass]: readonly [Matrix, Matrix], square: number): number {
    const rows = stiffness.map((row, i) => row.map((k, j) => k - square * mass[i]![j]!))
    let count = 0
    for (let k = 0; k < rows.length; k++) {
      if (rows[k]![k]! < 0) count++
      for (let i = k + 1; i < Math.min(rows.length, k + 4); i++) {
        const ratio = rows[i]![k]! / rows[k]![k]!
        for (let j = k; j < Math.min(rows.length, k + 4); j++) rows[i]![j]! -= ratio * rows[k]![j]!
      }
    }
    return count
  }
  const bars = [
    [0.1, 0, []],
    [2, 0, [{ at: 1, mass: 0.7 }]],
    [0, 0.05, [{ at: 0.5, mass: 2 }]],
    [
      30,
      4,
      [
        { at: 0, mass: 0.4 },
        { at: 0.25, mass: 1 },
      ],
    ],
    [
      0.3,
      0.01,
      [
        { at: 0.125, mass: 5 },
        { at: 0.5, mass: 0.2 },
        { at: 1, mass: 3 },
      ],
    ],
    [0, 0, [{ at: 0.75, mass: 40 }]],
  ] as const

  it("has the three roots that finite elements have between two counts", () => {
    for (const [turning, sinking, lumps] of bars) {
      const elements = sprung(turning, sinking, lumps)
      for (const mode of [1, 2, 3] as const) {
        const { x } = barRoot({ turning, sinking, lumps }, mode)
        // cubic elements lie above, by (x·h)⁴/2880 of the root in a wave of many elements
        const above = (x / n) ** 4 / 1440
        const counts = [below(elements, (x * (1 - 1e-7)) ** 4), below(elements, (x * (1 + above + 1e-7)) ** 4)]
        expect(counts, `${turning} ${sinking} mode ${mode}`).toEqual([mode - 1, mode])
      }
    }
  })

  it("has shapes with neither moment nor shear force at the tip, joined to their springs", () => {
    for (const [turning, sinking, lumps] of bars)
      for (const mode of [1, 2, 3] as const) {
        const { x, residual } = barRoot({ turning, sinking, lumps }, mode)
        expect(Math.abs(residual)).toBeLessThan(1e-8)
        const [first] = shapeOf({ turning, sinking, lumps }, x).stretches
        const [v, t, b] = first!.start
        expect(Math.abs(turning * b - t)).toBeLessThan(1e-9)
        const rootMass = lumps.filter((l) => l.at === 0).reduce((sum, l) => sum + l.mass, 0)
        expect(Math.abs(sinking * (first!.start[3] - rootMass * x ** 4 * v) + v)).toBeLessThan(1e-9)
      }
  })

  it("is the clamped bar with a tip mass where nothing gives", () => {
    for (const mass of [0, 0.3, 10])
      for (const mode of [1, 2, 3] as const)
        expect(barRoot({ turning: 0, sinking: 0, lumps: [{ at: 1, mass }] }, mode).x).toBeCloseTo(cantileverRoot(mass, mode).x, 10)
  })

  it("swings as a stiff bar about a soft hinge: 3·k/(m·L³), and on a soft bracket as a lump: k/(m·L)", () => {
    const soft = 1e5
    expect(barRoot({ turning: soft, sinking: 0, lumps: [] }, 1).x ** 4 * soft).toBeCloseTo(3, 4)
    // a clamp that only sinks: the whole bar goes up and down
    expect(barRoot({ turning: 0, sinking: soft, lumps: [] }, 1).x ** 4 * soft).toBeCloseTo(1, 4)
    // a mass alone, half way along: 3·E·I/a³
    expect(barRoot({ turning: 0, sinking: 0, lumps: [{ at: 0.5, mass: 1e6 }] }, 1).x ** 4 * 1e6).toBeCloseTo(24, 3)
  })

  it("keeps its digits on roots so soft that the bar is rigid beside them: one and two springs in closed form", () => {
    for (const soft of [1e8, 1e10, 1e12, 1e14]) {
      const rigid = (mode: 1 | 2, turning: number, sinking: number, lumps: Parameters<typeof barRoot>[0]["lumps"]) =>
        barRoot({ turning, sinking, lumps }, mode).x ** 4 * soft
      expect(rigid(1, soft, 0, []) / 3, `hinge of ${soft}`).toBeCloseTo(1, 7)
      expect(rigid(1, soft, 0, [{ at: 1, mass: 2 }]) * (1 / 3 + 2), `hinge of ${soft}, tip mass`).toBeCloseTo(1, 7)
      expect(rigid(1, 0, soft, []), `bracket of ${soft}`).toBeCloseTo(1, 7)
      // mass matrix of a rigid bar that sinks and turns, [1 1/2; 1/2 1/3], on two equal springs: λ²/12 − 4·λ/3 + 1 = 0
      for (const [mode, root] of [
        [1, 8 - Math.sqrt(52)],
        [2, 8 + Math.sqrt(52)],
      ] as const)
        expect(rigid(mode, soft, soft, []) / root, `both of ${soft}, mode ${mode}`).toBeCloseTo(1, 7)
    }
  })

  it("keeps its digits where two masses sit next to each other: the root moves as smoothly as their place", () => {
    const bar = (apart: number, mode: 1 | 2 | 3) =>
      barRoot({ turning: 0.3, sinking: 0.01, lumps: [0.5, 0.5 + apart].map((at) => ({ at, mass: 0.7 })) }, mode).x
    for (const mode of [1, 2, 3] as const)
      for (const apart of [1.01e-6, 1e-5, 1e-4]) {
        // of the second mass's place the root is a smooth function: its slope from a place far enough off
        const slope = (bar(0.02, mode) - bar(0, mode)) / 0.02
        expect(Math.abs(bar(apart, mode) - bar(0, mode) - slope * apart), `${apart}, mode ${mode}`).toBeLessThan(
          Math.abs(slope) * apart * 0.2 + 1e-9,
        )
      }
  })

  it("counts on either side of a switch alike: power series and closed forms, elements and exact stiffness", () => {
    for (const k of [0, 1, 2, 3] as const) expect(krylov(1 + 1e-12)[k] / krylov(1 - 1e-12)[k]).toBeCloseTo(1, 10)
    // stretches of less and of more than a tenth of a wave, the same bar
    const lumps = [0.04, 0.055, 0.07, 0.085].map((at) => ({ at, mass: 1e-9 }))
    expect(barRoot({ turning: 0.2, sinking: 0, lumps }, 1).x).toBeCloseTo(barRoot({ turning: 0.2, sinking: 0, lumps: [] }, 1).x, 7)
    expect(modesBelow({ turning: 0, sinking: 0, lumps: [] }, 12)).toBe(4)
    expect(
      placesOf([
        { at: 1 - 1e-8, mass: 1 },
        { at: 0.3, mass: 1 },
        { at: 0.3 + 1e-9, mass: 2 },
        { at: 1e-9, mass: 5 },
      ]),
    ).toEqual([
      { at: 0, mass: 5 },
      { at: 0.3, mass: 3 },
      { at: 1, mass: 1 },
    ])
  })

  it("an actuator on its lever arm is a hinge of k·r², in series with what carries it", () => {
    const at = (more: object) => naturalFrequency({ ...naturalFrequency.example, ...more }).frequency.low
    expect(at({ actuator: { stiffness: 2e5, leverArm: 0.05 } })).toBeCloseTo(at({ rootTurningStiffness: 500 }), 9)
    expect(at({ actuator: { stiffness: 4e5, leverArm: 0.05 }, rootTurningStiffness: 1000 })).toBeCloseTo(
      at({ rootTurningStiffness: 500 }),
      9,
    )
    expect(at({ rootTurningStiffness: 1e9, rootStiffness: 1e9 })).toBeCloseTo(at({}), 3)
    expect(at({ tipMass: 0, masses: [{ mass: 0.08, position: 0.9 }] })).toBeCloseTo(at({}), 9)
    expect(at({ masses: [{ mass: 0.3, position: 0.45 }] })).toBeLessThan(at({}))
    expect(at({ masses: [{ mass: 0.3, position: 0 }] })).toBeCloseTo(at({}), 9)
  })

  it("the estimate is Rayleigh's upper bound, near for soft roots and heavy tips", () => {
    for (const [rootTurningStiffness, tipMass] of [
      [20, 0],
      [200, 0.5],
      [5000, 2],
    ] as const) {
      const out = naturalFrequency({ ...naturalFrequency.example, rootTurningStiffness, tipMass, rootStiffness: 1e4 })
      expect(out.estimate).toBeGreaterThanOrEqual(out.frequency.low * (1 - 1e-9))
      expect(out.estimate).toBeLessThan(out.frequency.low * 1.03)
    }
  })
})
