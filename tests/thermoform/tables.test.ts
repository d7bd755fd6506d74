import { describe, expect, it } from "vitest"
import { type Figure, type Plastic, plastics } from "../../src/thermoform/data.js"
import {
  bendTemplate,
  conduitBends,
  coolingTime,
  drape,
  drying,
  dryings,
  formingWindow,
  heatingTime,
  lineBend,
  softening,
  tubeBend,
} from "../../src/thermoform/index.js"
import { sandBending, springbacks, unsupportedBend } from "../../src/thermoform/tables.js"
import { copies, type Origin, published } from "./published.js"

const names = Object.keys(published) as Plastic[]
const triple = ({ value, low, high }: Figure) => [value, low, high]

const titles: Readonly<Record<Origin, string>> = {
  row: "agrees with the looked-up rows of shared/references",
  page: "agrees with the figures typed from the pages that its sources name",
  unseen: "keeps the figures for which nobody has seen a source: a pin against slips, which proves nothing",
}

describe("figures of the plastics", () => {
  for (const name of names)
    for (const origin of ["row", "page", "unseen"] as const)
      it(`${name}: ${titles[origin]}`, () => {
        const data = plastics[name]
        for (const [key, copied] of Object.entries(copies[name])) {
          const figure = data[key as keyof (typeof copies)[Plastic]]
          if (copied === null || figure === null) {
            expect([key, figure]).toEqual([key, copied])
            continue
          }
          copied.forEach((c, i) => {
            if (c.origin !== origin) return
            expect(Math.abs((triple(figure)[i] as number) - c.value), `${key}[${i}]`).toBeLessThan(1e-9 * Math.abs(c.value) + 1e-15)
          })
        }
      })

  it("has a copy of every figure, its usual value between its ends", () => {
    for (const name of names) {
      const figures = Object.entries(plastics[name]).filter(([, f]) => typeof f === "object") as [string, Figure | null][]
      expect(figures.map(([key]) => key).sort()).toEqual(Object.keys(published[name]).sort())
      for (const [key, f] of figures) if (f) expect(f.low <= f.value && f.value <= f.high, `${name} ${key}`).toBe(true)
    }
  })

  it("takes the stricter end of every limit that is known, and says which of them nobody has seen in a document", () => {
    for (const name of names) {
      const { lower, upper, scorch, set } = published[name]
      const out = formingWindow({ material: name })
      // hottest of the lower limits; coldest of the upper ones and of the onsets of charring; coldest set temperature
      expect([out.window.low, out.window.high, out.releaseTemperature], name).toEqual([
        lower?.[2],
        Math.min(upper?.[1] as number, scorch?.[1] ?? 1e9),
        set?.[1],
      ])
      // the same from the origins of the copies: end on the safe side, seen or not
      const { lower: l, upper: u, set: s } = copies[name]
      const ends = { "lower limit": l?.[2], "upper limit": u?.[1], "set temperature": s?.[1] }
      const unseen = Object.entries(ends).flatMap(([limit, end]) => (end?.origin === "unseen" ? [limit] : []))
      const said = out.cautions.find((c) => c.code === "window-not-verified" || c.code === "no-published-window")
      if (said?.code === "no-published-window") expect([name, unseen.length]).toEqual(["eva-foam", 3])
      else expect([name, said?.message.split("plastic's ")[1]?.split(". Ask")[0] ?? ""]).toEqual([name, unseen.join(", ")])
    }
  })
})

describe("expanded PVC", () => {
  it("is never advised hotter than solid PVC, nor to where either chars", () => {
    const [solid, foam] = [formingWindow({ material: "pvc" }), formingWindow({ material: "pvc-foam" })]
    expect(foam.window.high).toBeLessThanOrEqual(solid.window.high)
    expect(foam.upper.high).toBeLessThan(foam.scorch?.low as number)
    expect(foam.scorch?.low).toBeLessThanOrEqual(solid.scorch?.low as number)
    expect(foam.fume?.low).toBe(solid.fume?.low)
    expect(foam.fumes).toBe(solid.fumes)
    // a board still serves, and so holds its shape, at 55 °C (CAMEO)
    expect(foam.releaseTemperature).toBe(55)
  })
})

describe("other tables", () => {
  it("says which shrinkages are those of mouldings only", () => {
    expect(names.filter((n) => plastics[n].shrinkageOf === "mouldings")).toEqual(["pvc", "pvc-foam", "petg", "abs", "hips", "hdpe", "pp"])
    // extruded acrylic grows across the sheet: Ultra Acrylics, 2006; polycarbonate shrinks 2 to 5 % along it: HighLine
    expect([plastics["pmma-extruded"].shrinkageAcross.low, plastics["pmma-extruded"].shrinkageAcross.high]).toEqual([-0.005, 0])
    expect(plastics.pc.shrinkage.high).toBe(0.05)
  })

  it("spans the second moulding table as well: Techni-Mold, %", () => {
    const second = { pp: [1.5, 1.8], hdpe: [2, 2.5], abs: [0.35, 0.35], hips: [0.35, 0.35], pc: [0.7, 0.7], pvc: [0.35, 0.35] } as const
    for (const [name, percent] of Object.entries(second)) {
      const { low, high } = plastics[name as Plastic].shrinkage
      for (const p of percent) expect(p >= 99.999 * low && p <= 100.001 * high, `${name} ${p} %`).toBe(true)
    }
  })

  it("rests no onset on memory alone", () => {
    for (const n of names)
      for (const figure of [plastics[n].fume, plastics[n].scorch])
        if (figure)
          expect(
            figure.sources.some((s) => s.verified === "seen"),
            n,
          ).toBe(true)
    expect(names.filter((n) => plastics[n].fume === null)).toEqual(["petg", "pc", "hips", "hdpe", "pp", "low-temp-polyester"])
    expect(names.filter((n) => plastics[n].scorch === null)).toEqual(["petg", "pc", "hips", "hdpe", "eva-foam"])
  })

  it("bends conduit as the code's table and the pipe's outer diameters say", () => {
    // NEC chapter 9 table 2: one-shot and other bends, in; ASTM D1785: outer diameter, in
    const copied = [
      ["1/2", 0.84, 4, 4],
      ["3/4", 1.05, 4.5, 5],
      ["1", 1.315, 5.75, 6],
      ["1-1/4", 1.66, 7.25, 8],
      ["1-1/2", 1.9, 8.25, 10],
      ["2", 2.375, 9.5, 12],
      ["2-1/2", 2.875, 10.5, 15],
      ["3", 3.5, 13, 18],
      ["3-1/2", 4, 15, 21],
      ["4", 4.5, 16, 24],
      ["5", 5.563, 24, 30],
      ["6", 6.625, 30, 36],
    ] as const
    expect(
      conduitBends.map((b) => [b.size, ...[b.outsideDiameter, b.oneShot, b.other].map((m) => Number((m / 0.0254).toPrecision(9)))]),
    ).toEqual(copied)
    const conduit = (inches: number, plastic: Plastic = "pvc") =>
      tubeBend({ outsideDiameter: inches * 0.0254, wall: 0.003, radius: 3, angle: "45 deg", support: "filled", material: plastic })
        .minConduitRadius
    for (const [, inches, , other] of copied) expect(conduit(inches)).toBeCloseTo(other * 0.0254, 12)
    // the next larger size where none fits, none beyond the last, and none for other plastics
    expect([conduit(1.5), conduit(1.661 * 1.001), conduit(6.7), conduit(1.05, "abs")]).toEqual([8 * 0.0254, 10 * 0.0254, null, null])
  })

  it("dries as published, never hotter than the plastic's own lowest set temperature", () => {
    const hours = (plastic: Plastic) => {
      const { needed, temperature, temperatureRange, duration } = drying({ material: plastic, thickness: 0.003 })
      return [needed, temperature, temperatureRange.low, temperatureRange.high, duration.low / 3600, duration.high / 3600]
    }
    expect(hours("pvc")).toEqual(["when damp", 65, 60, 65, 2, 4])
    expect(hours("pmma-cast")).toEqual(["when damp", 80, 75, 80, 24, 24])
    expect(hours("pmma-extruded")).toEqual(["when damp", 70, 65, 72, 24, 48])
    expect(hours("abs")).toEqual(["when damp", 72, 68, 75, 3, 6])
    expect(hours("pc").slice(0, 5)).toEqual(["always", 121, 110, 125, 7])
    for (const n of ["petg", "hips", "hdpe", "pp"] as const) expect(hours(n)).toEqual(["no", 60, 50, 65, 0, 0])
    expect(hours("pvc-foam")).toEqual(["no", 50, 40, 55, 0, 0])
    expect(hours("eva-foam")).toEqual(["no", 40, 30, 42, 0, 0])
    expect(hours("low-temp-polyester")).toEqual(["no", 30, 20, 33, 0, 0])
    for (const n of names) expect(dryings[n].temperature.high, n).toBeLessThanOrEqual(published[n].set?.[1] as number)
  })

  it("takes the films, places and habits of the trade that it says it takes", () => {
    const sheet = { shape: "sheet", thickness: "3 mm" } as const
    const film = (source: "oven" | "heat-gun" | "radiant", t: number) =>
      heatingTime({ ...sheet, material: "abs", heatSource: source, sourceTemperature: t }).filmCoefficient
    expect([film("oven", 160), film("heat-gun", 160)]).toEqual([25, 60])
    // 8 of still air and 4·0.9·σ·T³ at the mean of 20 and 176 °C
    expect(film("radiant", 400)).toBeCloseTo(8 + 4 * 0.9 * 5.670374419e-8 * (98 + 273.15) ** 3, 9)
    expect(heatingTime({ ...sheet, material: "abs", heatSource: "hot-plate", sourceTemperature: 200, faces: 1 }).filmCoefficient).toBe(500)
    expect(heatingTime({ ...sheet, material: "low-temp-polyester", heatSource: "water-bath", sourceTemperature: 70 }).filmCoefficient).toBe(
      500,
    )
    const jig = (cooling: "still-air" | "fan" | "water") => coolingTime({ ...sheet, material: "abs", cooling }).filmCoefficient
    expect([jig("still-air"), jig("fan"), jig("water")]).toEqual([10, 30, 500])
    // no light: the air of the place itself
    const air = (place: "hot-car" | "stage-light" | "sun") =>
      softening({ material: "pc", thickness: "3 mm", place, irradiance: 0 }).materialTemperature
    expect([air("hot-car"), air("stage-light"), air("sun")]).toEqual([76, 30, 38])
    const light = (place: "hot-car" | "stage-light" | "sun") => {
      // heat balance at the settled temperature, both faces, film 5
      const t = softening({ material: "pc", thickness: "3 mm", place, ambientTemperature: 30 }).materialTemperature
      return (2 * (5 * (t - 30) + 0.9 * 5.670374419e-8 * ((t + 273.15) ** 4 - 303.15 ** 4))) / 0.9
    }
    expect([light("hot-car"), light("stage-light"), light("sun")].map((e) => Math.round(e * 1e6) / 1e6)).toEqual([700, 1000, 1000])
    expect([triple(springbacks.heated), triple(springbacks.cold)]).toEqual([
      [0.03, 0, 0.05],
      [0.5, 0.42, 0.58],
    ])
    expect([sandBending.leastRadius, sandBending.soak, sandBending.hold]).toEqual([5, 120, 1800])
    expect((unsupportedBend * 180) / Math.PI).toBeCloseTo(30, 12)
    expect([sandBending.sand, sandBending.pipe].map((t) => Math.round(t * 10) / 10)).toEqual([232.2, 93.3])
  })

  it("keeps the limits and defaults of its fields", () => {
    const limits = (fields: object) =>
      Object.fromEntries(
        Object.entries(fields as Record<string, { min?: unknown; max?: unknown; above?: unknown; default?: unknown }>).map(([key, f]) => [
          key,
          [f.min ?? f.above ?? null, f.max ?? null, f.default ?? null],
        ]),
      )
    expect(limits(heatingTime.input)).toMatchObject({
      thickness: ["0.1 mm", "100 mm", null],
      outsideDiameter: ["1 mm", "300 mm", null],
      sandTemperature: [0, 300, null],
      sourceTemperature: [0, 1200, null],
      coreTemperature: [20, 300, null],
      faces: [1, 2, 2],
      filmCoefficient: [0.5, 20000, null],
      emissivity: [0.05, 1, 0.9],
      startTemperature: [-20, 150, 20],
      ambientTemperature: [-20, 50, 20],
      sourceTemperatureError: [0, 50, 5],
      conductivity: [0.01, 500, null],
      density: [20, 9000, null],
      specificHeat: [100, 10000, null],
    })
    expect(limits(coolingTime.input)).toMatchObject({
      formingTemperature: [30, 260, null],
      ambientTemperature: [-20, 60, 20],
      faces: [1, 2, 1],
      releaseTemperature: [0, 150, null],
    })
    expect(limits(softening.input)).toMatchObject({
      thickness: ["0.1 mm", "50 mm", null],
      ambientTemperature: [-20, 120, null],
      irradiance: [0, 20000, null],
      absorptance: [0, 1, 0.9],
      emissivity: [0, 1, 0.9],
      filmCoefficient: [1, 200, 5],
      faces: [1, 2, 2],
      startTemperature: [-20, 120, 20],
    })
    expect(limits(drying.input)).toMatchObject({ thickness: ["0.5 mm", "12 mm", null] })
    expect(limits(tubeBend.input)).toMatchObject({
      outsideDiameter: ["1 mm", "300 mm", null],
      wall: ["0.1 mm", "50 mm", null],
      radius: ["1 mm", 100, null],
      angle: ["1 deg", "360 deg", null],
      springback: [0, 0.9, null],
      ovalityLimit: [0.01, 0.2, 0.08],
      legA: ["1 mm", 100, null],
      legB: ["1 mm", 100, null],
      legMeasure: [null, null, "backs"],
    })
    expect(limits(lineBend.input)).toMatchObject({
      thickness: ["0.3 mm", "30 mm", null],
      insideRadius: ["0.1 mm", "1 m", null],
      angle: ["1 deg", "180 deg", null],
      legA: ["1 mm", 10, null],
      legB: ["1 mm", 10, null],
      legMeasure: [null, null, "outside"],
      neutralShare: [0.25, 0.6, 0.5],
      heaterWidth: ["1 mm", "0.5 m", null],
      faces: [1, 2, 2],
    })
    expect(limits(drape.input)).toMatchObject({
      thickness: ["0.1 mm", "50 mm", null],
      width: ["5 mm", 5, null],
      breadth: ["5 mm", 5, null],
      baseDiameter: ["1 mm", 5, null],
      depth: ["1 mm", 5, null],
      fillet: ["0.2 mm", 1, null],
      plugWidth: ["1 mm", 5, null],
      plugBreadth: ["1 mm", 5, null],
      finishedLength: ["1 mm", 10, null],
      finishedWidth: ["1 mm", 10, null],
      shrinkageAlong: [-0.2, 0.5, null],
      shrinkageAcross: [-0.2, 0.5, null],
    })
    const points = bendTemplate.input.points as unknown as { max: number; of: { fields: object } }
    expect([points.max, limits(points.of.fields)]).toEqual([200, { x: [-100, 100, null], y: [-100, 100, null] }])
    expect(limits(bendTemplate.input)).toMatchObject({
      outsideDiameter: ["1 mm", "300 mm", null],
      radius: ["5 mm", 100, null],
      angle: ["0.1 deg", "350 deg", null],
      springback: [0, 0.6, 0.03],
      straightRun: [0, 2, "60 mm"],
    })
  })
})
