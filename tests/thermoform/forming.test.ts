import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { type Plastic, plastics } from "../../src/thermoform/data.js"
import { drape, drying, softening } from "../../src/thermoform/index.js"

const { PI } = Math

describe("drape", () => {
  const sheet = { material: "hips", thickness: 0.002 } as const
  it("has the areas that slicing gives", () => {
    // surface of revolution of a profile by straight slices
    const revolve = (radius: (u: number) => number, height: (u: number) => number) => {
      let area = 0
      for (let i = 0; i < 20000; i++) {
        const [a, b] = [i / 20000, (i + 1) / 20000]
        area += PI * (radius(a) + radius(b)) * Math.hypot(radius(b) - radius(a), height(b) - height(a))
      }
      return area
    }
    const dome = drape({ ...sheet, shape: "dome", width: 0.08, depth: 0.025 })
    const ball = (0.04 ** 2 + 0.025 ** 2) / 0.05
    const reach = Math.asin(0.04 / ball)
    expect(
      dome.formedArea /
        revolve(
          (u) => ball * Math.sin(u * reach),
          (u) => ball * Math.cos(u * reach),
        ),
    ).toBeCloseTo(1, 7)
    const frustum = drape({ ...sheet, shape: "frustum", width: 0.1, baseDiameter: 0.07, depth: 0.04 })
    const wall = revolve(
      (u) => 0.05 - 0.015 * u,
      (u) => 0.04 * u,
    )
    expect(frustum.formedArea / (wall + PI * 0.035 ** 2)).toBeCloseTo(1, 7)
    for (const out of [dome, frustum]) expect(out.meanThickness * out.formedArea).toBeCloseTo(0.002 * out.openArea, 15)
  })

  it("thins into the corner of cups as a step-by-step lay-down does, which keeps the sheet's volume", () => {
    let most = 0
    for (const [width, base, depth, fillet] of [
      [0.08, 0.08, 0.06, 0.008],
      [0.08, 0.08, 0.12, 0.003],
      [0.1, 0.05, 0.09, 0.005],
      [0.1, 0.06, 0.15, 0.01],
    ] as const) {
      const shape = base === width ? "cup" : "frustum"
      const out = drape({ ...sheet, shape, width, depth, fillet, baseDiameter: shape === "cup" ? null : base })
      // the free cap meets the wall at a right tangent; each step lays a narrow ring down at the cap's thickness
      const slope = shape === "cup" ? PI / 2 : Math.atan2(depth, (width - base) / 2)
      const cap = (a: number) => (2 * PI * a * a) / (1 + Math.cos(slope))
      const foot = base / 2
      let contact = width / 2
      let left = 0.002 * PI * contact ** 2
      const laid: number[] = []
      const lay = (area: number, free: number) => {
        const part = (left / free) * area
        laid.push(part)
        left -= part
      }
      // midpoint steps: thickness at the middle of the step is the geometric mean, found by halving once
      const stop = foot * (1 + Math.cos(slope))
      const down = shape === "cup" ? depth - foot : (contact - stop) / Math.cos(slope)
      const steps = 40000
      for (let i = 0; i < steps; i++) {
        const along = down / steps
        const after = contact - along * Math.cos(slope)
        const ring = PI * (contact + after) * along
        lay(ring, cap((contact + after) / 2) + ring / 2)
        contact = after
      }
      const t = Math.tan(slope / 2)
      let rho = foot / t
      const band = (r: number) => {
        let area = 0
        for (let k = 0; k < 60; k++) {
          const phi = ((k + 0.5) * slope) / 60
          area += 2 * PI * (Math.max(0, foot - r * t) + r * Math.sin(phi)) * ((r * slope) / 60)
        }
        return area
      }
      const close = 4000
      const shrink = (rho - fillet) / close
      for (let i = 0; i < close; i++) {
        const middle = rho - shrink / 2
        const ring = 2 * PI * (foot - middle * t + foot + middle * t * Math.cos(slope)) * t * shrink
        lay(ring, band(middle) + ring / 2)
        rho -= shrink
      }
      const thickness = left / band(fillet)
      expect(laid.reduce((a, b) => a + b, 0) + left).toBeCloseTo(0.002 * PI * (width / 2) ** 2, 12)
      most = Math.max(most, Math.abs((out.minThickness as number) / thickness - 1))
      expect(out.minThickness as number).toBeLessThan(out.meanThickness)
    }
    expect(most).toBeLessThan(2e-3)
  })

  it("gives a blank that shrinks to size, and gives up on cups too shallow for its sum", () => {
    const out = drape({ ...sheet, shape: "cup", width: 0.2, depth: 0.03, fillet: 0.005, finishedLength: 0.5, shrinkageAlong: 0.03 })
    expect((out.blankLength as number) * 0.97).toBeCloseTo(0.5, 12)
    expect(out.minThickness).toBeNull()
    expect(out.cautions.map((c) => c.code)).toContain("corners-thinner")
    const outcome = drape.attempt({ ...sheet, shape: "box", width: 0.2, breadth: 0.1, depth: 0.05, plugWidth: 0.2, plugBreadth: 0.1 })
    expect(!outcome.ok && outcome.error instanceof NoSolutionError && outcome.error.noSolution).toBe("does-not-fit")
  })
})

describe("softening", () => {
  it("settles where the heat balance marched in time does, and softens no later than it", () => {
    for (const [plastic, place, thickness] of [
      ["pvc", "hot-car", 0.003],
      ["petg", "hot-car", 0.002],
      ["hips", "stage-light", 0.002],
      ["pc", "sun", 0.003],
      ["low-temp-polyester", "stage-light", 0.004],
    ] as [Plastic, "hot-car" | "stage-light" | "sun", number][]) {
      const out = softening({ material: plastic, place, thickness })
      const [air, light] = { "hot-car": [76, 700], "stage-light": [30, 1000], sun: [38, 1000] }[place] as [number, number]
      const heat = plastics[plastic].density.low * plastics[plastic].specificHeat.low * thickness
      const rate = (t: number) =>
        (0.9 * light - 2 * (5 * (t - air) + 0.9 * 5.670374419e-8 * ((t + 273.15) ** 4 - (air + 273.15) ** 4))) / heat
      // classical Runge–Kutta
      let [t, time, softAt] = [20, 0, null as number | null]
      const h = 2
      while (time < 40000) {
        const k1 = rate(t)
        const k2 = rate(t + (h * k1) / 2)
        const k3 = rate(t + (h * k2) / 2)
        const k4 = rate(t + h * k3)
        t += (h * (k1 + 2 * k2 + 2 * k3 + k4)) / 6
        time += h
        if (softAt === null && t > out.setTemperature) softAt = time
      }
      expect(t).toBeCloseTo(out.materialTemperature, 6)
      expect(out.verdict === "softens").toBe(softAt !== null)
      // safe side: never later, and not absurdly early
      if (softAt !== null) {
        expect(out.softeningTime as number).toBeLessThanOrEqual(softAt)
        expect(out.softeningTime as number).toBeGreaterThan(0.5 * softAt)
      }
    }
  })
  it("is hotter in more light and in stiller air", () => {
    const at = (irradiance: number, film: number) =>
      softening({ material: "pvc", thickness: 0.003, place: "sun", irradiance, filmCoefficient: film }).materialTemperature
    expect(at(0, 5)).toBe(38)
    expect(at(500, 5)).toBeGreaterThan(at(200, 5))
    expect(at(500, 5)).toBeGreaterThan(at(500, 20))
  })
})

describe("drying", () => {
  it("follows both published schedules on straight lines in logarithms, and is never shorter for thicker sheet", () => {
    const palram = [1.5, 4, 7, 12, 18, 26]
    for (let i = 0; i + 1 < palram.length; i++) {
      const s = Math.sqrt((i + 1) * (i + 2)) / 1000
      // halfway in the logarithm of thickness is halfway in that of time
      expect(drying({ material: "pc", thickness: s }).duration.low / 3600).toBeCloseTo(
        Math.sqrt((palram[i] as number) * (palram[i + 1] as number)),
        9,
      )
    }
    for (const material of Object.keys(plastics) as Plastic[]) {
      let last = 0
      for (let s = 0.0005; s <= 0.012; s += 0.0001) {
        const { duration, temperature, temperatureRange } = drying({ material, thickness: s })
        expect(duration.high).toBeGreaterThanOrEqual(duration.low)
        expect(duration.high).toBeGreaterThanOrEqual(last)
        last = duration.high
        expect(temperatureRange.low <= temperature && temperature <= temperatureRange.high).toBe(true)
        // dried parts keep their shape
        expect(temperatureRange.high).toBeLessThanOrEqual(plastics[material].set.high)
      }
    }
  })
})
