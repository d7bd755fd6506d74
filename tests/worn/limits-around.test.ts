import { describe, expect, it } from "vitest"
import { contactSeverity, heatStress, overturning, passage, pinchGap, windLoad } from "../../src/worn/index.js"

const codes = (out: { readonly cautions: readonly { readonly code: string }[] }) => out.cautions.map((c) => c.code)

describe("exactly at a published limit", () => {
  it("heat: a class holds up to and with its rate (ISO 8996:2021), a limit of WBGT is not yet exceeded at it (ISO 7243)", () => {
    for (const [watts, at, past] of [
      [125, 0, 1],
      [235, 1, 2],
      [360, 2, 3],
      [465, 3, 4],
    ] as const)
      expect([
        heatStress({ metabolicRate: watts, wbgt: 20 }).metabolicClass,
        heatStress({ metabolicRate: watts + 0.01, wbgt: 20 }).metabolicClass,
      ]).toEqual([at, past])
    // 600 W, not acclimatized: 20 °C by the class, 20.7 by the curve
    const hard = (wbgt: number) => heatStress({ metabolicRate: 600, wbgt, clothing: "work-clothes" })
    expect([hard(20).exceeded, hard(20).wbgtMargin, hard(20).workShare, hard(20.01).exceeded]).toEqual([false, 0, 1, true])
  })

  it("heat: at a class's own limit that class still counts, and the curve decides where it is lower", () => {
    const rate = (wbgt: number, acclimatized: boolean) =>
      heatStress({ metabolicRate: 300, wbgt, clothing: "work-clothes", acclimatized }).metabolicRateAtLimit
    for (const wbgt of [20, 23, 26, 29]) expect(rate(wbgt, false) / 10 ** ((59.9 - wbgt) / 14.1)).toBeCloseTo(1, 9)
    expect(rate(30, true) / 10 ** ((56.7 - 30) / 11.5)).toBeCloseTo(1, 9)
    // a shade hotter the class below decides: 465 W at 20, 125 W at 29, 125 W at 30 °C
    expect([rate(20.01, false), rate(29.01, false), rate(30.01, true)]).toEqual([465, 125, 125])
  })

  it("contact: the clamping limit itself is permitted, and 150 N is what a door may keep up", () => {
    const held = (region: "chest" | "neck" | "lower-leg" | "upper-arm-elbow", driveMoment: number) =>
      contactSeverity({ region, movingMass: 0.1, movingSpeed: 0.01, strikeRadius: 1, peakDriveMoment: driveMoment })
    expect([held("chest", 140).utilisation, held("chest", 140).withinLimits, held("chest", 140.01).withinLimits]).toEqual([1, true, false])
    expect([codes(held("chest", 140)).includes("over-limit"), codes(held("chest", 140.01)).includes("over-limit")]).toEqual([false, true])
    expect(held("chest", 140).verdict).toMatch(/no clearance/)
    expect([150, 150.01].map((m) => codes(held("upper-arm-elbow", m)).includes("door-limit"))).toEqual([false, true])
  })

  it("tipping: weight on the very edge of the feet is refused, from the front and from behind", () => {
    const stands = (windFrom: "front" | "behind", weightOffset: number) =>
      overturning.attempt({ ...overturning.example, footLength: 0.25, heelShare: 0.5, windFrom, weightOffset }).ok
    expect([stands("front", -0.125), stands("front", -0.124)]).toEqual([false, true])
    expect([stands("behind", 0.125), stands("behind", 0.124)]).toEqual([false, true])
  })

  it("tipping: nothing is left of the stance where the air's speed alone is the published gust", () => {
    // 3 · 4 + 3 = 15 m/s
    const out = (wind: number) => overturning({ ...overturning.example, gustFactor: 3, walkingSpeed: 3, windSpeed: wind })
    expect([out(4).bodyUtilisation, out(4).requiredEdgeDistance]).toEqual([expect.closeTo(1, 12), null])
    expect(out(3.99).requiredEdgeDistance).toBeGreaterThan(0)
  })

  it("wind: a panel may touch the ground; the plate's formula ends below a side ratio of 30", () => {
    expect(windLoad.attempt({ span: 1, chord: 0.5, windSpeed: 3, hingeHeight: 0, elevation: 0 }).ok).toBe(true)
    expect(windLoad({ span: 3, chord: 0.1, windSpeed: 3 }).drag.high).toBe(2)
    expect(windLoad({ span: 2.99, chord: 0.1, windSpeed: 3 }).drag.high).toBeCloseTo(1.1 + 0.02 * (29.9 + 1 / 29.9), 9)
    expect(windLoad({ span: 1, chord: 1, windSpeed: 5, dragCoefficient: 1.28 }).drag.high).toBe(1.28)
  })

  it("passage: what just fits is through, and the width is named where width and height are as tight", () => {
    const through = (width: number, depth: number, height: number) =>
      passage({
        folded: { width, forward: depth / 2, backward: depth / 2, height },
        allowance: 0,
        ownPlaces: [{ name: "gate", type: "door", width: 1, height: 2 }],
      }).places.at(-1)
    expect(through(1, 3, 1.5)).toMatchObject({ folded: "facing", foldedMargin: 0, foldedBy: "width" })
    expect(through(0.5, 3, 2)).toMatchObject({ folded: "facing", foldedMargin: 0, foldedBy: "height", foldedRoom: 2 })
    expect(through(2, 1, 1.5)).toMatchObject({ folded: "sideways", foldedMargin: 0, foldedBy: "width" })
    expect(through(0.75, 3, 1.75)).toMatchObject({ foldedMargin: 0.25, foldedBy: "width", foldedRoom: 1 })
    expect(through(1.5, 1.25, 1)).toMatchObject({ folded: "no", foldedMargin: -0.25 })
  })

  it("passage: 80 in of height, 102 in of width and 13 ft 6 in are still within what is kept clear", () => {
    const said = (width: number, height: number) => codes(passage({ folded: { width, forward: 0.2, backward: 0.2, height } }))
    expect([said(0.5, 80 * 0.0254).includes("headroom"), said(0.5, 80.01 * 0.0254).includes("headroom")]).toEqual([false, true])
    expect([said(102 * 0.0254, 1.5).includes("road-size"), said(102.01 * 0.0254, 1.5).includes("road-size")]).toEqual([false, true])
    expect([said(0.5, 13.5 * 0.3048).includes("road-size"), said(0.5, 13.501 * 0.3048).includes("road-size")]).toEqual([false, true])
  })

  it("pinching: bars without length are points, a gap of just nothing is an overlap", () => {
    const points = pinchGap({
      movingBars: [{ x1: 0, y1: 0, x2: 0, y2: 0 }],
      fixedBars: [{ x1: 0.3, y1: 0.4, x2: 0.3, y2: 0.4 }],
      poses: [
        { x: 0, y: 0, angle: 0 },
        { x: 0.15, y: 0.2, angle: 1 },
      ],
      movingThickness: 0,
      fixedThickness: 0,
    })
    expect([points.maxGap, points.minGap, points.motionShare]).toEqual([expect.closeTo(0.5, 12), expect.closeTo(0.25, 12), 1])
    expect(points.parts.filter((p) => p.crushes).map((p) => p.part)).toEqual(["head", "body"])
  })
})
