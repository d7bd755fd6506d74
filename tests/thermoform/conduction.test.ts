import { erf } from "mathjs"
import { describe, expect, it } from "vitest"
import { type Body, conduct, halfSpaceRise } from "../../src/thermoform/conduction.js"
import { eigenvalue, fourierFor, modeAmplitude, type Shape, temperatureRatio } from "../../src/thermoform/shapes.js"
import { bessel, erfc, erfcx } from "../../src/thermoform/special.js"
import { finiteVolume } from "./finite-volume.js"

const biots = [0.001, 0.01, 0.1, 0.5, 1, 3, 10, 100, 1000]
const unit = { thickness: 1, conductivity: 1, heatCapacity: 1 }

describe("special functions", () => {
  it("gives J₀ and J₁ as their integrals do", () => {
    // Bessel's integral by the trapezoidal rule, which converges faster than any power
    const byIntegral = (n: number, x: number) => {
      const m = 200 + Math.ceil(2 * x)
      let sum = 0
      for (let i = 0; i < m; i++) {
        const tau = ((i + 0.5) * Math.PI) / m
        sum += Math.cos(n * tau - x * Math.sin(tau))
      }
      return sum / m
    }
    let most = 0
    for (let x = 0.001; x < 400; x = x * 1.17 + 0.01) {
      const { j0, j1 } = bessel(x)
      most = Math.max(most, Math.abs(j0 - byIntegral(0, x)), Math.abs(j1 - byIntegral(1, x)))
    }
    expect(most).toBeLessThan(2e-14)
  })
  it("ties Y₀ and Y₁ to them by their Wronskian and slope", () => {
    let most = 0
    for (let x = 0.001; x < 400; x = x * 1.17 + 0.01) {
      const { j0, j1, y0, y1 } = bessel(x)
      most = Math.max(most, Math.abs((j1 * y0 - j0 * y1) * ((Math.PI * x) / 2) - 1))
      const h = 1e-3 * Math.min(1, x)
      // Y₀' = −Y₁ by a five-point difference
      const d = (bessel(x - 2 * h).y0 - 8 * bessel(x - h).y0 + 8 * bessel(x + h).y0 - bessel(x + 2 * h).y0) / (12 * h)
      expect(Math.abs(d + y1)).toBeLessThan(2e-10 * Math.max(1, Math.abs(y1)) + 1e-10)
    }
    expect(most).toBeLessThan(1e-12)
    // Abramowitz and Stegun, 1964, table 9.1 (from memory)
    expect(bessel(1).y0).toBeCloseTo(0.0882569642, 9)
    expect(bessel(1).y1).toBeCloseTo(-0.7812128213, 9)
  })
  it("gives erfc and erfcx as mathjs and the asymptotic series do", () => {
    for (let x = -3; x <= 3; x += 0.05) expect(Math.abs(erfc(x) - (1 - erf(x)))).toBeLessThan(1e-14)
    for (const x of [20, 50, 1e3, 1e6]) {
      const far = (1 / (Math.sqrt(Math.PI) * x)) * (1 - 1 / (2 * x * x) + 3 / (4 * x ** 4) - 15 / (8 * x ** 6))
      expect(Math.abs(erfcx(x) / far - 1)).toBeLessThan(1e-9)
    }
  })
})

describe("eigenvalues", () => {
  const equation: Record<Shape, (z: number, bi: number) => number> = {
    wall: (z, bi) => z * Math.sin(z) - bi * Math.cos(z),
    rod: (z, bi) => z * bessel(z).j1 - bi * bessel(z).j0,
    ball: (z, bi) => (1 - bi) * Math.sin(z) - z * Math.cos(z),
  }
  it.each(["wall", "rod", "ball"] as const)("satisfy the equation of a %s, none missed", (shape) => {
    for (const bi of biots) {
      let last = 0
      for (let n = 1; n <= 60; n++) {
        const z = eigenvalue(shape, bi, n)
        expect(Math.abs(equation[shape](z, bi)) / ((1 + bi) * Math.max(1, z))).toBeLessThan(1e-13)
        expect(z).toBeGreaterThan(last)
        // the widest gap is the ball's first at Bi = 0, where tan ζ = ζ puts the second root at 4.493; a missed root leaves 2π
        if (n > 1) expect(z - last).toBeLessThan(1.5 * Math.PI)
        last = z
      }
      // a missed mode leaves a hole in the sum of amplitudes at the surface mean: Σ C·mean = 1
      expect(temperatureRatio(shape, bi, 1e-4, "mean")).toBeGreaterThan(0.95)
    }
  })
  it("agrees with the layered engine, which finds them by counting zeros", () => {
    let most = 0
    for (const bi of biots)
      for (const [shape, body] of [
        ["wall", { shape: "plane", start: 0, layers: [unit], inside: 0, outside: bi }],
        ["rod", { shape: "cylinder", start: 0, layers: [unit], inside: 0, outside: bi }],
      ] as [Shape, Body][]) {
        const response = conduct(body, [0, 1])
        const drive = { inside: 0, outside: 0, initial: [1] }
        for (const fo of [1e-3, 0.01, 0.1, 1]) {
          const [core, skin] = response.at(fo, drive) as [number, number]
          most = Math.max(most, Math.abs(core - temperatureRatio(shape, bi, fo, 0)), Math.abs(skin - temperatureRatio(shape, bi, fo, 1)))
        }
        const { rates } = response.series(0.01, 0, drive)
        rates.forEach((rate, i) => {
          expect(Math.abs(Math.sqrt(rate) / eigenvalue(shape, bi, i + 1) - 1)).toBeLessThan(1e-12)
        })
      }
    expect(most).toBeLessThan(1e-11)
  })
  it("finds every mode once: as many as a fine walk of the phase counts, for tubes of any wall", () => {
    for (const [start, thickness] of [
      [0.01238, 0.00097],
      [0.01237, 0.00098],
      [0.074, 0.001],
      [0.149, 0.0001],
      [0.0005, 0.02],
    ] as const)
      for (const film of [0.5, 15, 500, 20000]) {
        const layers = [{ thickness, conductivity: 0.16, heatCapacity: 1.4e6 }]
        const response = conduct({ shape: "cylinder", start, layers, inside: 0, outside: film }, [start])
        const { rates } = response.series(response.crossing * 1e-3, 0, { inside: 0, outside: 0, initial: [1] })
        const roots = rates.map((r) => Math.sqrt(r))
        // roots of an insulated bore interlace with whole half turns of the wall: one in each gap
        const turn = Math.PI / Math.sqrt(response.crossing)
        roots.forEach((root, n) => {
          if (n > 0) expect((root - (roots[n - 1] as number)) / turn).toBeGreaterThan(0.45)
          if (n > 0) expect((root - (roots[n - 1] as number)) / turn).toBeLessThan(1.1)
        })
        // and each satisfies the film's condition, by the Bessel functions of this test
        const diffusivity = 0.16 / 1.4e6
        for (const root of roots.slice(0, 12)) {
          const m = root / Math.sqrt(diffusivity)
          const [a, b] = [bessel(m * start), bessel(m * (start + thickness))]
          const u = b.j0 * a.y1 - b.y0 * a.j1
          const slope = -m * (b.j1 * a.y1 - b.y1 * a.j1)
          expect(Math.abs(0.16 * slope + film * u) / (0.16 * m + film)).toBeLessThan(1e-9)
        }
      }
  })
  it("refuses what has no answer instead of giving an end of its search", () => {
    for (const [biot, n] of [
      [0, 1],
      [-1, 1],
      [Number.NaN, 1],
      [1, 0],
      [1, 1.5],
    ] as const)
      for (const shape of ["wall", "rod", "ball"] as const) expect(() => eigenvalue(shape, biot, n)).toThrow(RangeError)
    expect(() => fourierFor("wall", 1, 1.5, 0)).toThrow(RangeError)
    expect(() => fourierFor("wall", 1, -0.5, 0)).toThrow(RangeError)
    // a face held at the fluid's temperature is there at once
    expect(() => fourierFor("wall", Number.POSITIVE_INFINITY, 0.5, 1)).toThrow(RangeError)
  })
  it("has the limits of small and large Biot numbers", () => {
    expect(eigenvalue("wall", 1e-6, 1)).toBeCloseTo(1e-3, 9)
    expect(eigenvalue("rod", 1e-6, 1)).toBeCloseTo(Math.sqrt(2e-6), 9)
    expect(eigenvalue("ball", 1e-6, 1)).toBeCloseTo(Math.sqrt(3e-6), 9)
    for (const shape of ["wall", "rod", "ball"] as const) {
      expect(eigenvalue(shape, 1e9, 3)).toBeCloseTo(eigenvalue(shape, Number.POSITIVE_INFINITY, 3), 6)
      expect(modeAmplitude(shape, eigenvalue(shape, 1e-6, 1))).toBeCloseTo(1, 5)
    }
  })
})

/** Largest difference between series and finite volumes over Biot numbers and times, per degree of drive. */
function worst(
  make: (bi: number) => Body,
  points: readonly number[],
  drive: (bi: number) => ReturnType<typeof uniform>,
  fourier: readonly number[],
): number {
  let most = 0
  for (const bi of biots) {
    const body = make(bi)
    const response = conduct(body, points)
    for (const fo of [...fourier, 0.7 / Math.min(1, bi)]) {
      const d = drive(bi)
      const [ours, theirs] = [response.at(fo, d), finiteVolume(body, d, fo)]
      expect(theirs).toHaveLength(points.length)
      ours.forEach((v, i) => {
        most = Math.max(most, Math.abs(v - (theirs[i] as number)))
      })
    }
  }
  return most
}
const uniform = (inside: number, outside: number, ...initial: number[]) => ({ inside, outside, initial })

describe("series against finite volumes, Biot 0.001 to 1000, within 1e-5 of the drive", () => {
  const fourier = [0.01, 0.08, 0.4]
  it("wall heated from both faces, or from one with the back insulated", () => {
    expect(
      worst(
        (bi) => ({ shape: "plane", start: 0, layers: [unit], inside: 0, outside: bi }),
        [0, 1],
        () => uniform(0, 1, 0),
        fourier,
      ),
    ).toBeLessThan(1e-5)
  })
  it("wall between two fluids of different films", () => {
    expect(
      worst(
        (bi) => ({ shape: "plane", start: 0, layers: [unit], inside: bi / 7, outside: bi }),
        [0, 1],
        () => uniform(0.3, 1, 0),
        fourier,
      ),
    ).toBeLessThan(1e-5)
  })
  it("solid rod", () => {
    expect(
      worst(
        (bi) => ({ shape: "cylinder", start: 0, layers: [unit], inside: 0, outside: bi }),
        [0, 1],
        () => uniform(0, 1, 0),
        fourier,
      ),
    ).toBeLessThan(1e-5)
  })
  it("tube with insulated bore, and with a fluid in it", () => {
    const tube = (bi: number, inside: number): Body => ({
      shape: "cylinder",
      start: 0.8,
      layers: [{ ...unit, thickness: 1 }],
      inside,
      outside: bi,
    })
    expect(
      worst(
        (bi) => tube(bi, 0),
        [0.8, 1.8],
        () => uniform(0, 1, 0),
        fourier,
      ),
    ).toBeLessThan(1e-5)
    expect(
      worst(
        (bi) => tube(bi, bi / 3),
        [0.8, 1.8],
        () => uniform(-0.5, 1, 0),
        fourier,
      ),
    ).toBeLessThan(1e-5)
  })
  it("filled tube, filling and wall starting alike or not", () => {
    const filled = (bi: number): Body => ({
      shape: "cylinder",
      start: 0,
      layers: [
        { thickness: 0.785, conductivity: 1.69, heatCapacity: 0.96 },
        { thickness: 0.215, conductivity: 1, heatCapacity: 1 },
      ],
      inside: 0,
      outside: bi,
    })
    expect(worst(filled, [0, 0.785, 1], () => uniform(0, 1, 0, 0), fourier)).toBeLessThan(1e-5)
    expect(worst(filled, [0, 0.785, 1], () => uniform(0, 0, 1, 0), fourier)).toBeLessThan(1e-5)
  })
  it("three layers of strong contrast", () => {
    const sandwich = (bi: number): Body => ({
      shape: "plane",
      start: 0,
      layers: [
        { thickness: 0.3, conductivity: 5, heatCapacity: 2 },
        { thickness: 0.2, conductivity: 0.1, heatCapacity: 0.5 },
        { thickness: 0.5, conductivity: 1, heatCapacity: 1 },
      ],
      inside: 0.2 * bi,
      outside: bi,
    })
    expect(worst(sandwich, [0, 0.3, 0.5, 1], () => uniform(0, 1, 0, 0, 0), fourier)).toBeLessThan(1e-5)
  })
})

describe("short times", () => {
  it("meets the half-space solution where the series takes over", () => {
    let most = 0
    for (const bi of biots)
      for (const shape of ["plane", "cylinder"] as const) {
        const body: Body = { shape, start: 0, layers: [unit], inside: 0, outside: bi }
        const response = conduct(body, [0, 1])
        const drive = uniform(0, 1, 0)
        const time = response.earliest * 1.0001
        const skin = response.at(time, drive)[1] as number
        const half = halfSpaceRise(bi, unit, time, 0, shape === "plane" ? 0 : 1)
        most = Math.max(most, Math.abs(skin / half - 1))
        // and before: rises as the root of time for a weak film, never overshoots for a strong one
        const early = response.at(response.earliest / 1e4, drive)[1] as number
        expect(early).toBeGreaterThan(0)
        expect(early).toBeLessThan(skin)
      }
    expect(most).toBeLessThan(2e-5)
  })
  it("is Carslaw and Jaeger's surface rise, by erfcx, without overflow", () => {
    for (const y of [1e-4, 0.01, 1, 5, 30, 1e3]) {
      const rise = halfSpaceRise(y, unit, 1)
      const direct =
        y < 5
          ? 1 - Math.exp(y * y) * (1 - erf(y))
          : 1 - 1 / (Math.sqrt(Math.PI) * y) + 1 / (2 * Math.sqrt(Math.PI) * y ** 3) - 3 / (4 * Math.sqrt(Math.PI) * y ** 5)
      // beyond, the error of the asymptotic series is less than its next term
      expect(Math.abs(rise - direct)).toBeLessThan(y < 5 ? 1e-9 : 15 / (8 * Math.sqrt(Math.PI) * y ** 7) + 1e-15)
    }
  })
})

describe("laws of heating", () => {
  it("takes longer as the square of the thickness at high Biot, as the thickness at low", () => {
    const time = (scale: number, film: number) => {
      const fo = fourierFor("wall", film * scale, 0.3, 0)
      return fo * scale * scale
    }
    expect(time(2, 1e4) / time(1, 1e4)).toBeCloseTo(4, 2)
    expect(time(2, 1e-4) / time(1, 1e-4)).toBeCloseTo(2, 2)
  })
})
