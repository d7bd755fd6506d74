import { describe, expect, it } from "vitest"
import { isNoSolution, NoSolutionError, type Source } from "../../src/solver/index.js"
import type { Body, Drive } from "../../src/thermoform/conduction.js"
import { type Plastic, plastics } from "../../src/thermoform/data.js"
import { type CoolingTimeInput, coolingTime, formingWindow, type HeatingTimeInput, heatingTime } from "../../src/thermoform/index.js"
import { finiteVolume } from "./finite-volume.js"

const properties = { conductivity: 0.18, density: 1300, specificHeat: 1100 }
const heatCapacity = properties.density * properties.specificHeat
const sand = { conductivity: 0.27, heatCapacity: 1515 * 800 }

/** The problem of an input, written down anew for the finite volumes. */
function problemOf(
  input: HeatingTimeInput & { readonly thickness?: number; readonly outsideDiameter?: number },
  film: number,
  outside: number,
): { body: Body; drive: Drive } {
  const { shape, thickness: s = 0, outsideDiameter: d = 0, faces = 2, filling = "empty", heatSource } = input
  const start = 20
  const layer = (thickness: number) => ({ thickness, conductivity: properties.conductivity, heatCapacity })
  const back = heatSource === "hot-plate" ? 10 : heatSource === "radiant" ? film : 0
  if (shape === "sheet")
    return {
      body: { shape: "plane", start: 0, layers: [layer(faces === 2 ? s / 2 : s)], inside: faces === 2 ? 0 : back, outside: film },
      drive: { inside: 20, outside, initial: [start] },
    }
  const bore = shape === "rod" ? 0 : d / 2 - s
  return filling === "dry-sand"
    ? {
        body: { shape: "cylinder", start: 0, layers: [{ thickness: bore, ...sand }, layer(s)], inside: 0, outside: film },
        drive: { inside: 20, outside, initial: [start, start] },
      }
    : {
        body: { shape: "cylinder", start: bore, layers: [layer(d / 2 - bore)], inside: 0, outside: film },
        drive: { inside: 20, outside, initial: [start] },
      }
}

type Case = HeatingTimeInput & { thickness?: number; outsideDiameter?: number }
const cases: readonly Case[] = [
  { shape: "sheet", thickness: 0.003, material: "petg", heatSource: "oven", sourceTemperature: 150 },
  { shape: "sheet", thickness: 0.006, material: "abs", heatSource: "heat-gun", sourceTemperature: 200, faces: 1 },
  { shape: "sheet", thickness: 0.003, material: "hips", heatSource: "hot-plate", sourceTemperature: 260, faces: 1 },
  { shape: "sheet", thickness: 0.004, material: "petg", heatSource: "radiant", sourceTemperature: 450, faces: 1 },
  { shape: "sheet", thickness: 0.004, material: "petg", heatSource: "radiant", sourceTemperature: 350 },
  { shape: "rod", outsideDiameter: 0.02, material: "pmma-cast", heatSource: "oven", sourceTemperature: 180 },
  { shape: "tube", outsideDiameter: 0.0267, thickness: 0.0029, material: "pvc", heatSource: "oven", sourceTemperature: 130 },
  {
    shape: "tube",
    outsideDiameter: 0.0267,
    thickness: 0.0029,
    material: "pvc",
    heatSource: "oven",
    sourceTemperature: 130,
    filling: "dry-sand",
  },
]

describe("heatingTime against finite volumes", () => {
  it.each(cases)("finds the moment the core arrives: $shape, $heatSource, $filling", (input) => {
    const out = heatingTime({ ...input, ...properties })
    const { body, drive } = problemOf(input, out.filmCoefficient, out.equivalentTemperature)
    const scale = out.equivalentTemperature - 20
    const temperatures = finiteVolume(body, drive, out.time)
    // outermost last; the core is the innermost spot of the plastic: bore of a filled tube, else the inner face
    const core = temperatures[temperatures.length - 2] as number
    expect(Math.abs(core - out.coreTemperature) / scale).toBeLessThan(1e-5)
    const skin = temperatures[temperatures.length - 1] as number
    expect(Math.abs(skin - out.peakSurfaceTemperature) / scale).toBeLessThan(1e-5)
    if (out.surfaceLimitTime !== null) {
      const then = finiteVolume(body, drive, out.surfaceLimitTime)
      expect(Math.abs((then[then.length - 1] as number) - out.surfaceTemperatureLimit) / scale).toBeLessThan(1e-5)
    }
  })

  it("does so from Biot 0.001 to 1000", () => {
    let most = 0
    for (const [filmCoefficient, thickness] of [
      [0.5, 0.00072],
      [0.5, 0.0072],
      [5, 0.0072],
      [50, 0.0072],
      [500, 0.0072],
      [5000, 0.0072],
      [20000, 0.018],
    ] as const) {
      const input = {
        shape: "sheet",
        thickness,
        material: "pvc",
        heatSource: "oven",
        sourceTemperature: 125,
        filmCoefficient,
      } as const
      const out = heatingTime({ ...input, ...properties })
      const { body, drive } = problemOf(input, filmCoefficient, 125)
      const [core, skin] = finiteVolume(body, drive, out.time) as [number, number]
      most = Math.max(most, Math.abs(core - out.coreTemperature) / 105, Math.abs(skin - out.peakSurfaceTemperature) / 105)
      expect(out.biotNumber).toBeCloseTo((filmCoefficient * thickness) / 2 / properties.conductivity, 9)
    }
    expect(most).toBeLessThan(1e-5)
  })

  it("takes a radiant heater's heat along a tangent: within 4 % in time of the full fourth power, and never faster by more than 1 %", () => {
    for (const [thickness, heater] of [
      [0.001, 300],
      [0.002, 400],
      [0.004, 350],
    ] as const) {
      const input = { shape: "sheet", thickness, material: "petg", heatSource: "radiant", sourceTemperature: heater } as const
      const out = heatingTime({ ...input, ...properties })
      // explicit finite volumes with the true law at the face
      const cells = 24
      const dx = thickness / 2 / cells
      const dt = (0.2 * dx * dx * heatCapacity) / properties.conductivity
      const t = new Array<number>(cells).fill(20)
      const black = 0.9 * 5.670374419e-8
      let time = 0
      while ((t[0] as number) < out.coreTemperature && time < 4 * out.time) {
        const skin = t[cells - 1] as number
        const flux = black * ((heater + 273.15) ** 4 - (skin + 273.15) ** 4) + 8 * (20 - skin)
        const q = t.map((v, i) => (i + 1 < cells ? (properties.conductivity * ((t[i + 1] as number) - v)) / dx : flux))
        for (let i = 0; i < cells; i++)
          t[i] = (t[i] as number) + (dt * ((q[i] as number) - (i > 0 ? (q[i - 1] as number) : 0))) / (heatCapacity * dx)
        time += dt
      }
      expect(out.time / time).toBeGreaterThan(0.96)
      expect(out.time / time).toBeLessThan(1.04)
    }
  })
})

describe("heatingTime's laws", () => {
  const sheet = { shape: "sheet", thickness: 0.004, material: "petg", heatSource: "oven" } as const
  it("is never slower in hotter air", () => {
    let last = Number.POSITIVE_INFINITY
    for (let air = 140; air <= 400; air += 15) {
      const { time } = heatingTime({ ...sheet, sourceTemperature: air })
      expect(time).toBeLessThan(last)
      last = time
    }
  })
  it("takes longer as the square of the thickness at high Biot", () => {
    const time = (thickness: number) => heatingTime({ ...sheet, thickness, sourceTemperature: 150, filmCoefficient: 20000 }).time
    expect(time(0.02) / time(0.01)).toBeGreaterThan(3.97)
    expect(time(0.02) / time(0.01)).toBeLessThan(4)
  })
  it("takes about four times as long from one face", () => {
    const time = (faces: number, film: number) => heatingTime({ ...sheet, faces, filmCoefficient: film, sourceTemperature: 150 }).time
    expect(time(1, 20000) / time(2, 20000)).toBeCloseTo(4, 1)
    expect(time(1, 0.5) / time(2, 0.5)).toBeCloseTo(2, 1)
  })
  it("takes two to four times as long full of sand", () => {
    const tube = {
      shape: "tube",
      outsideDiameter: 0.0267,
      thickness: 0.0029,
      material: "pvc",
      heatSource: "oven",
      sourceTemperature: 130,
    } as const
    const ratio = heatingTime({ ...tube, filling: "dry-sand" }).time / heatingTime(tube).time
    // roughly triples: shared/references/README.md
    expect(ratio).toBeGreaterThan(2)
    expect(ratio).toBeLessThan(4)
  })
  it("orders its spread and keeps advice on the safe side, for every plastic", () => {
    for (const material of Object.keys(plastics) as Plastic[]) {
      const { window } = formingWindow({ material })
      const out = heatingTime({ ...sheet, material, sourceTemperature: window.high - 3 })
      expect(out.timeRange.low).toBeLessThanOrEqual(out.time)
      expect(out.timeRange.high).toBeGreaterThanOrEqual(out.time)
      expect(out.overheatsFirst).toBe(false)
      if (out.advisedSourceTemperature === null) continue
      // hot by its error the source is still no hotter than the surface may be
      expect(out.advisedSourceTemperature + 5).toBeLessThanOrEqual(window.high + 1e-9)
      // cold by its error and with the slowest plastic the core is there by the longer time
      const p = plastics[material]
      const rise = window.low - 20
      const slow = { conductivity: p.conductivity.low, density: p.density.high, specificHeat: p.specificHeat.high + p.melting.high / rise }
      const late = heatingTime({ ...sheet, material, ...slow, sourceTemperature: out.advisedSourceTemperature - 5 })
      expect(late.time).toBeCloseTo(out.advisedTime?.high as number, 6)
    }
  })
  it("advises a radiant heater that no surface passes its limit under, however long it takes", () => {
    let advised = 0
    for (const material of Object.keys(plastics) as Plastic[])
      for (const faces of [1, 2]) {
        const input = { shape: "sheet", thickness: 0.003, material, heatSource: "radiant", faces } as const
        const first = heatingTime.attempt({ ...input, sourceTemperature: 400 })
        if (!first.ok || first.value.advisedSourceTemperature === null) continue
        advised++
        const { advisedSourceTemperature, surfaceTemperatureLimit } = first.value
        // hot by its error, and by the law of radiation itself: what a thin surface comes to at last
        const heater = advisedSourceTemperature + 5 + 273.15
        let [low, high] = [0, 1000]
        for (let k = 0; k < 60; k++) {
          const t = (low + high) / 2
          const gain = 0.9 * 5.670374419e-8 * (heater ** 4 - (t + 273.15) ** 4) - 8 * (t - 20)
          if (gain > 0) low = t
          else high = t
        }
        expect(low, material).toBeLessThanOrEqual(surfaceTemperatureLimit)
      }
    expect(advised).toBeGreaterThan(5)
  })
  it("names the hottest source: just cooler the core is first, just hotter the surface", () => {
    for (const input of cases) {
      const { maxSourceTemperature, maxSourceNote } = heatingTime(input)
      if (maxSourceNote === "scorch") {
        // thin stock: even slow core and quick skin would stand more than the onset of charring, which therefore holds the source down
        for (const [step, chars] of [
          [-0.5, false],
          [0.5, true],
        ] as const) {
          const out = heatingTime({ ...input, sourceTemperature: (maxSourceTemperature as number) + step })
          expect(out.overheatsFirst).toBe(false)
          expect(out.cautions.some((c) => c.code === "source-chars")).toBe(chars)
        }
        continue
      }
      if (input.heatSource === "radiant" && input.faces === 1) {
        // the cold back carries off so much that even the settled front is above its limit when the back is ready
        expect(maxSourceNote).toBe("none")
        continue
      }
      expect(maxSourceNote).toBe("solved")
      expect(heatingTime({ ...input, sourceTemperature: (maxSourceTemperature as number) + 0.5 }).overheatsFirst).toBe(true)
      expect(heatingTime({ ...input, sourceTemperature: (maxSourceTemperature as number) - 0.5 }).overheatsFirst).toBe(false)
    }
  })
  it("heats to the core temperature asked for, and takes no other one than the window's", () => {
    const [least, warmer] = [135, 150].map((core) => heatingTime({ ...sheet, sourceTemperature: 158, coreTemperature: core }))
    expect(warmer?.coreTemperature).toBe(150)
    expect(warmer?.time as number).toBeGreaterThan(least?.time as number)
    expect(heatingTime.attempt({ ...sheet, sourceTemperature: 158, coreTemperature: 165 }).ok).toBe(false)
    expect(heatingTime.attempt({ ...sheet, sourceTemperature: 158, coreTemperature: 110 }).ok).toBe(false)
  })
  it("refuses where the core never gets warm, and its nearest source works", () => {
    const input = { ...sheet, sourceTemperature: 120 } as const
    const outcome = heatingTime.attempt(input)
    expect(outcome.ok).toBe(false)
    if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    expect(outcome.error.noSolution).toBe("never-reached")
    expect(outcome.error.shortBy).toBeCloseTo(135 - 120, 6)
    expect(heatingTime({ ...input, sourceTemperature: outcome.error.nearest.sourceTemperature as number }).time).toBeGreaterThan(0)
    const cold = heatingTime.si(
      heatingTime.read({ shape: "sheet", thickness: "3 mm", material: "petg", heatSource: "radiant", sourceTemperature: 60 }),
    )
    expect(isNoSolution(cold)).toBe(true)
  })
  it("bends with sand poured in hot, as the 50 °C-above-limit case of the trade shows, and warns", () => {
    const out = heatingTime({
      shape: "tube",
      outsideDiameter: "26.67 mm",
      thickness: "2.87 mm",
      material: "pvc",
      filling: "dry-sand",
      sandTemperature: "240 degC",
      heatSource: "oven",
      sourceTemperature: "40 degC",
      filmCoefficient: 10,
      conductivity: 0.16,
      density: 1400,
      specificHeat: 900,
    })
    expect(out.peakSurfaceTime).toBeLessThan(out.time)
    expect(out.peakSurfaceTemperature).toBeGreaterThan(out.coreTemperature)
    expect(out.cautions.map((c) => c.code)).toEqual(
      expect.arrayContaining(["hot-sand", "sand-above-limit", "hydrogen-chloride", "kitchen-oven"]),
    )
  })
})

describe("coolingTime against finite volumes", () => {
  const all: readonly (CoolingTimeInput & { thickness?: number; outsideDiameter?: number })[] = [
    { shape: "sheet", thickness: 0.004, material: "petg" },
    { shape: "sheet", thickness: 0.004, material: "petg", faces: 2, cooling: "fan" },
    { shape: "rod", outsideDiameter: 0.012, material: "pmma-cast" },
    { shape: "tube", outsideDiameter: 0.0267, thickness: 0.0029, material: "pvc", formingTemperature: 130 },
    {
      shape: "tube",
      outsideDiameter: 0.0267,
      thickness: 0.0029,
      material: "pvc",
      formingTemperature: 130,
      filling: "dry-sand",
      cooling: "water",
    },
  ]
  it.each(all)("$shape $material $filling $cooling", (input) => {
    const out = coolingTime({ ...input, ...properties })
    const drive = (body: Body): Drive => ({ inside: 20, outside: 20, initial: body.layers.map(() => out.formingTemperature) })
    const { shape, thickness: s = 0, outsideDiameter: d = 0, faces = 1, filling = "empty" } = input
    const jig = problemOf(
      { shape, thickness: s, outsideDiameter: d, faces, filling, material: "pvc", heatSource: "oven", sourceTemperature: 0 },
      out.filmCoefficient,
      20,
    ).body
    const open = problemOf(
      { shape, thickness: s, outsideDiameter: d, faces: 2, filling, material: "pvc", heatSource: "oven", sourceTemperature: 0 },
      15,
      20,
    ).body
    const scale = out.formingTemperature - 20
    const held = finiteVolume(jig, drive(jig), out.holdTime)
    expect(Math.abs((held[held.length - 2] as number) - out.releaseTemperature) / scale).toBeLessThan(1e-5)
    const carried = finiteVolume(open, drive(open), out.workingTime)
    expect(Math.abs((carried[carried.length - 1] as number) - out.minFormingTemperature) / scale).toBeLessThan(1e-5)
    const { conductivity: _, density: __, ...free } = { ...input, conductivity: null, density: null }
    const spread = coolingTime(free)
    expect(spread.plannedWorkingTime).toBeLessThanOrEqual(spread.workingTime)
    expect(spread.plannedHoldTime).toBeGreaterThanOrEqual(spread.holdTime)
  })
  it("holds up to four times as long from one face", () => {
    const hold = (faces: number, film: number) =>
      coolingTime({ shape: "sheet", thickness: "10 mm", material: "abs", faces, filmCoefficient: film }).holdTime
    expect(hold(1, 20000) / hold(2, 20000)).toBeCloseTo(4, 1)
    expect(hold(1, 0.5) / hold(2, 0.5)).toBeCloseTo(2, 1)
  })
  it("refuses to set in a room warmer than the release temperature", () => {
    // released below 35 °C: a room within a kelvin of that cools it too slowly to wait for
    for (const ambientTemperature of ["40 degC", "34.5 degC"] as const) {
      const outcome = coolingTime.attempt({
        shape: "sheet",
        thickness: "3 mm",
        material: "low-temp-polyester",
        ambientTemperature: ambientTemperature,
      })
      expect(!outcome.ok && outcome.error instanceof NoSolutionError && outcome.error.noSolution).toBe("never-reached")
    }
    expect(
      coolingTime.attempt({ shape: "sheet", thickness: "3 mm", material: "low-temp-polyester", ambientTemperature: "33.5 degC" }).ok,
    ).toBe(true)
  })
})

describe("formingWindow", () => {
  it("keeps every figure in order, with its source", () => {
    for (const [plastic, data] of Object.entries(plastics)) {
      for (const figure of Object.values(data)) {
        if (typeof figure !== "object" || figure === null) continue
        expect(figure.low <= figure.value && figure.value <= figure.high, `${plastic}: ${JSON.stringify(figure)}`).toBe(true)
        expect(figure.sources.every((s: Source) => s.title.length > 5 && s.verified)).toBe(true)
      }
      const w = formingWindow({ material: plastic as Plastic })
      expect(
        [
          w.releaseTemperature < w.window.low,
          w.window.low <= w.aimTemperature,
          w.aimTemperature <= w.window.high,
          w.window.high <= (w.scorch?.low ?? w.upper.low),
          w.set.value < w.lower.value,
        ].every(Boolean),
        plastic,
      ).toBe(true)
    }
  })
  it("warns of hydrogen chloride from PVC before anything else, of kitchen ovens for all that go into one, and of hot water for the rest", () => {
    expect(formingWindow({ material: "pvc" }).cautions[0]?.code).toBe("hydrogen-chloride")
    for (const material of Object.keys(plastics) as Plastic[]) {
      const codes = formingWindow({ material }).cautions.map((c) => c.code)
      const wet = material === "low-temp-polyester"
      expect(codes).toEqual(expect.arrayContaining(wet ? ["burns", "hot-water"] : ["fumes", "burns", "kitchen-oven"]))
      for (const code of wet ? ["fumes", "kitchen-oven"] : ["hot-water"]) expect(codes).not.toContain(code)
    }
  })
})
