import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { commonPractice } from "../../src/solver/index.js"
import { contactSeverity, heatStress, overturning, passage, pinchGap, touchTemperature, windLoad } from "../../src/worn/index.js"
import { between, log } from "./draws.js"

// Every figure of an answer, worked out a second time by hand from the published tables and textbook formulae.

/** Holds figures to a second computation, each within a share of its size. */
function close(out: object, expected: Readonly<Record<string, unknown>>, share = 1e-9): void {
  for (const [key, value] of Object.entries(expected)) {
    const got = key.split(".").reduce<unknown>((part, name) => (part as Record<string, unknown>)[name], out)
    if (typeof value !== "number") expect([key, got]).toEqual([key, value])
    else
      expect(Math.abs((got as number) - value), `${key}: ${got}, not ${value}`).toBeLessThanOrEqual(share * Math.max(1e-3, Math.abs(value)))
  }
}

const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined })

describe("contactSeverity", () => {
  // ISO/TS 15066, tables A.2 and A.3: N, transient over clamping, N/mm, kg, N/cm²
  const regions = {
    "skull-forehead": [130, null, 150, 4.4, 110],
    face: [65, null, 75, 4.4, 110],
    neck: [150, 2, 50, 1.2, 140],
    "back-shoulders": [210, 2, 35, 40, 160],
    chest: [140, 2, 25, 40, 120],
    abdomen: [110, 2, 10, 40, 140],
    pelvis: [180, 2, 25, 40, 210],
    "upper-arm-elbow": [150, 2, 30, 3, 190],
    "forearm-wrist": [160, 2, 40, 2, 180],
    "hand-finger": [140, 2, 75, 0.6, 190],
    "thigh-knee": [220, 2, 50, 75, 220],
    "lower-leg": [130, 2, 60, 75, 210],
  } as const
  const names = Object.keys(regions) as (keyof typeof regions)[]
  const arm = fc.record({ armMass: log(0.01, 50), armLength: log(0.05, 5), swing: log(0.05, 20), share: maybe(between(0.3, 1)) })
  const pad = fc.record({ stiffness: log(100, 1e5), thickness: log(1e-3, 0.3), usable: between(0.1, 1) })
  const draws = fc.record({
    region: fc.constantFrom(...names),
    arm: maybe(arm),
    movingMass: log(0.01, 500),
    speed: log(0.01, 20),
    strikeRadius: maybe(between(0.1, 2)),
    approach: between(0, 3),
    pad: maybe(pad),
    contactArea: maybe(log(1e-6, 1e-2)),
    driveMoment: maybe(between(0, 500)),
  })

  it("is two masses with two springs between them, the second hard once its travel is used up", () => {
    fc.assert(
      fc.property(draws, (d) => {
        const [force, transient, stiff, body, pressure] = regions[d.region]
        const flesh = stiff * 1e3
        const reach = d.arm ? (d.arm.share ?? 1) * d.arm.armLength : (d.strikeRadius ?? null)
        if (!d.arm && d.driveMoment !== undefined && reach === null) return
        const out = contactSeverity({
          region: d.region,
          approachSpeed: d.approach,
          ...(d.arm
            ? { armMass: d.arm.armMass, armLength: d.arm.armLength, swingSpeed: d.arm.swing }
            : { movingMass: d.movingMass, movingSpeed: d.speed }),
          ...(reach !== null && (!d.arm || d.arm.share !== undefined) ? { strikeRadius: reach } : {}),
          ...(d.pad ? { paddingStiffness: d.pad.stiffness, paddingThickness: d.pad.thickness, usablePaddingShare: d.pad.usable } : {}),
          ...(d.contactArea === undefined ? {} : { contactArea: d.contactArea }),
          ...(d.driveMoment === undefined ? {} : { peakDriveMoment: d.driveMoment }),
        })
        // the arm's moment of inertia about its hinge, seen at the reach
        const mass = d.arm ? (d.arm.armMass * d.arm.armLength ** 2) / 3 / (reach as number) ** 2 : d.movingMass
        const v = (d.arm ? d.arm.swing * (reach as number) : d.speed) + d.approach
        // the energy that two free masses lose until they move alike
        const common = (mass * v) / (mass + body)
        const energy = (mass * v ** 2 - (mass + body) * common ** 2) / 2
        const travel = d.pad ? Math.min(0.6, d.pad.usable) * d.pad.thickness : 0
        const give = (1 / flesh + (d.pad ? 1 / d.pad.stiffness : 0)) ** -1
        const hard = d.pad ? travel * d.pad.stiffness : 0
        // what flesh and padding take up to a force
        const takes = (f: number) => (d.pad && f > hard ? f ** 2 / (2 * flesh) + hard ** 2 / (2 * d.pad.stiffness) : f ** 2 / (2 * give))
        let [low, high] = [0, Math.sqrt(2 * energy * flesh) * (1 + 1e-12)]
        for (let n = 0; n < 200; n++) {
          const middle = (low + high) / 2
          if (takes(middle) > energy) high = middle
          else low = middle
        }
        const limit = force * (transient ?? 1)
        const bottomed = d.pad !== undefined && Math.sqrt(2 * energy * give) > hard
        const barred = ["skull-forehead", "face", "neck"].includes(d.region)
        const squeezed = d.driveMoment === undefined || reach === null ? null : d.driveMoment / reach
        const perArea = d.contactArea === undefined ? null : low / d.contactArea
        const ratios = [
          low / limit,
          perArea === null ? 0 : perArea / (pressure * 1e4 * (transient ?? 1)),
          squeezed === null ? 0 : squeezed / force,
        ]
        const severity = Math.max(...ratios)
        if (Math.abs(severity - 1) < 1e-6) return
        close(
          out,
          {
            contactSpeed: v,
            effectiveMass: mass,
            kineticEnergy: (mass * v ** 2) / 2,
            reducedMass: (2 * energy) / v ** 2,
            contactEnergy: energy,
            stiffness: give,
            peakForce: low,
            peakBareForce: Math.sqrt(2 * energy * flesh),
            paddingCompression: d.pad ? Math.min(travel, low / d.pad.stiffness) : 0,
            bottomed,
            transientLimit: transient === null ? null : limit,
            clampingLimit: force,
            forceLimit: limit,
            forceUtilisation: ratios[0],
            // the energy goes with the square of the speed
            speedLimit: v * Math.sqrt(takes(limit) / energy),
            energyLimit: limit ** 2 / flesh / 2,
            peakPressure: perArea,
            pressureLimit: pressure * 1e4 * (transient ?? 1),
            pressureUtilisation: perArea === null ? null : ratios[1],
            clampingForce: squeezed,
            clampingUtilisation: squeezed === null ? null : ratios[2],
            utilisation: severity,
            requiredPaddingThickness: d.pad ? Math.sqrt(2 * energy * give) / d.pad.stiffness / Math.min(0.6, d.pad.usable) : null,
            contactDuration: bottomed ? null : Math.PI * Math.sqrt((2 * energy) / v ** 2 / give),
            forbidden: barred,
            withinLimits: !barred && severity <= 1,
          },
          2e-6,
        )
      }),
      { numRuns: 300 },
    )
  })
})

describe("touchTemperature", () => {
  // °C for metal, glass, plastic, wood (coated metal as metal): ISO 13732-1, IEC 62368-1 table 38, ECMA-287, IEC 60601-1 table 24
  const column = { metal: 0, "coated-metal": 0, glass: 1, plastic: 2, wood: 3 } as const
  const minute = [51, 56, 60, 60] as const
  const iso = (m: number, t: number) => {
    if (m === 0 && t <= 10) return t <= 1 ? 65 : 55
    return t <= 60 ? minute[m] : t <= 600 ? 48 : 43
  }
  const iec = (m: number, t: number) => {
    if (t < 1) return [70, 80, 94, 140][m]
    if (t < 10) return [60, 71, 77, 107][m]
    return t < 60 ? minute[m] : t < 28800 ? 48 : 43
  }
  const ecma = (m: number, t: number) => (t < 1 ? (m === 0 ? 65 : 85) : t < 10 ? (m === 0 ? 55 : 65) : 43)
  const medical = (m: number, t: number) => (t < 60 ? minute[m] : t < 600 ? 48 : 43)
  // ASTM C1055, figure 1, in ms
  const curves = [(x: number) => 39.468 - 0.41352 * x + 190.6 / x, (x: number) => 15.005 + 0.51907 * x + 352.97 / x] as const
  /** Time by a curve, s: searched for, up to six hours. */
  const timeBy = (curve: (x: number) => number, temperature: number): number | null => {
    let [low, high] = [1e-3, Math.log(2.16e7)]
    if (temperature < curve(high)) return null
    for (let n = 0; n < 200; n++) {
      const middle = (low + high) / 2
      if (curve(middle) > temperature) low = middle
      else high = middle
    }
    return Math.exp(low) / 1e3
  }
  const draws = fc.record({
    surfaceTemperature: fc.oneof(between(-40, 300), between(40, 75)),
    material: fc.constantFrom(...(Object.keys(column) as (keyof typeof column)[])),
    contactDuration: log(0.05, 86400),
    measuredAmbientTemperature: between(-40, 60),
    ambientTemperature: between(-40, 60),
  })
  it("is four tables looked up and three times searched for", () => {
    fc.assert(
      fc.property(draws, (d) => {
        const out = touchTemperature(d)
        const m = column[d.material]
        const limits = [
          iso(m, d.contactDuration),
          iec(m, d.contactDuration),
          ecma(m, d.contactDuration),
          medical(m, d.contactDuration),
        ] as number[]
        const inUse =
          d.ambientTemperature > d.measuredAmbientTemperature
            ? d.surfaceTemperature + d.ambientTemperature - d.measuredAmbientTemperature
            : d.surfaceTemperature
        const coldest =
          d.ambientTemperature < d.measuredAmbientTemperature
            ? d.surfaceTemperature + d.ambientTemperature - d.measuredAmbientTemperature
            : d.surfaceTemperature
        const [a, b] = curves.map((curve) => timeBy(curve, inUse)) as [number | null, number | null]
        const halving = inUse < 44 || inUse > 51 ? null : 21600 / 2 ** (inUse - 44)
        const known = [a, b, halving].filter((t) => t !== null)
        expect(out.limits.map((l) => l.limit)).toEqual(limits)
        out.limits.forEach((l, i) => {
          expect(l.temperatureMargin).toBeCloseTo((limits[i] as number) - inUse, 9)
        })
        expect(out.limits.map((l) => l.standard)).toEqual(["ISO 13732-1", "IEC 62368-1 TS1", "ECMA-287", "IEC 60601-1 applied parts"])
        close(
          out,
          {
            comparedTemperature: d.surfaceTemperature,
            temperatureInUse: inUse,
            minTemperature: coldest,
            "limit.low": Math.min(...limits),
            "limit.high": Math.max(...limits),
            temperatureMargin: Math.min(...limits) - inUse,
            tooHot: inUse > Math.min(...limits),
            painful: inUse >= 42,
            reversibleTime: a,
            lastingTime: b,
            halvingTime: halving,
            burnTime: known.length ? Math.min(...known) : null,
          },
          1e-6,
        )
      }),
      { numRuns: 300 },
    )
  })
})

describe("heatStress", () => {
  const cover = {
    "work-clothes": 0,
    "cloth-coverall": 0,
    "double-layer": 3,
    "vapour-barrier": 11,
    "vapour-barrier-over-clothes": 12,
  } as const
  // ISO 8996:2021 classes up to so many watts, ISO 7243:2017 table A.1: acclimatized and not
  const classes = [
    [125, 33, 32],
    [235, 30, 29],
    [360, 28, 26],
    [465, 26, 23],
    [Number.POSITIVE_INFINITY, 25, 20],
  ] as const
  const draws = fc.record({
    rate: between(60, 1200),
    rest: maybe(between(0, 1)),
    wetBulb: between(5, 33),
    over: between(0, 25),
    air: maybe(between(5, 45)),
    meter: maybe(between(0, 45)),
    clothing: fc.constantFrom(...(Object.keys(cover) as (keyof typeof cover)[])),
    hood: fc.boolean(),
    own: maybe(between(0, 20)),
    acclimatized: fc.boolean(),
    wearer: maybe(fc.record({ bodyMass: between(20, 120), stature: between(1, 2) })),
  })
  it("is a table, a curve and a mean over the hour", () => {
    fc.assert(
      fc.property(draws, (d) => {
        const most = Math.min(250, d.rate)
        const restRate = d.rest === undefined ? undefined : 40 + d.rest * (most - 40)
        const out = heatStress({
          metabolicRate: d.rate,
          ...(d.meter === undefined
            ? { wetBulbTemperature: d.wetBulb, globeTemperature: d.wetBulb + d.over, ambientTemperature: d.air ?? null }
            : { wbgt: d.meter }),
          clothing: d.clothing,
          hooded: d.hood,
          acclimatized: d.acclimatized,
          restMetabolicRate: restRate ?? null,
          clothingAdjustment: d.own ?? null,
          ...(d.wearer ?? {}),
        })
        const wbgt = d.meter ?? (d.air === undefined ? d.wetBulb + 0.3 * d.over : d.wetBulb + 0.2 * d.over + 0.1 * (d.air - d.wetBulb))
        const effective = wbgt + Math.max(d.own ?? 0, cover[d.clothing] + (d.hood ? 1 : 0))
        const surface = d.wearer
          ? Math.exp(Math.log(0.007184) + 0.425 * Math.log(d.wearer.bodyMass) + 0.725 * Math.log(100 * d.wearer.stature))
          : null
        const small = surface === null || surface >= 1.8 ? 1 : 1.8 / surface
        const n = classes.filter(([upTo]) => d.rate * small > upTo).length
        const column = d.acclimatized ? 1 : 2
        const curve = (watts: number) =>
          d.acclimatized ? 56.7 - (11.5 * Math.log(watts)) / Math.LN10 : 59.9 - (14.1 * Math.log(watts)) / Math.LN10
        const byClass = classes[n]?.[column] as number
        const limit = Math.min(byClass, curve(d.rate * small))
        // the highest rate of a standard person that curve and classes still allow at this heat; none past the table's first row
        let [low, high] = [0, 10000]
        const allowed = (watts: number) =>
          curve(watts) >= effective && (classes.find(([upTo]) => watts <= upTo)?.[column] as number) >= effective
        for (let k = 0; k < 100; k++) {
          const middle = (low + high) / 2
          if (allowed(middle)) low = middle
          else high = middle
        }
        const rateAtLimit = (allowed(1) ? low : 0) / small
        const resting = restRate ?? Math.min(d.rate, 115 / small)
        const exceeded = effective > limit
        close(
          out,
          {
            wbgt,
            effectiveWbgt: effective,
            bodySurface: surface,
            standardMetabolicRate: d.rate * small,
            metabolicClass: n,
            classLimit: byClass,
            curveLimit: curve(d.rate * small),
            wbgtLimit: limit,
            wbgtMargin: limit - effective,
            restMetabolicRate: resting,
            metabolicRateAtLimit: rateAtLimit,
            exceeded,
          },
          1e-8,
        )
        // minutes in the rig and out of it average to the rate at the limit
        if (!exceeded) expect(out.workShare).toBe(1)
        else if (rateAtLimit <= resting) expect(out.workShare).toBe(0)
        else expect(out.workShare * d.rate + (1 - out.workShare) * resting).toBeCloseTo(rateAtLimit, 5)
      }),
      { numRuns: 300 },
    )
  })
})

describe("windLoad and overturning", () => {
  // WMO code 1100: upper limits of the forces 0 to 11
  const tops = [0.2, 1.5, 3.3, 5.4, 7.9, 10.7, 13.8, 17.1, 20.7, 24.4, 28.4, 32.6]
  const force = (wind: number) => tops.filter((top) => wind > top).length

  it("windLoad is drag by pressure and area, and moments by their levers", () => {
    fc.assert(
      fc.property(
        between(0.1, 4),
        between(0, 40),
        between(0, 5),
        between(1, 3),
        between(0.9, 1.4),
        fc.integer({ min: 1, max: 20 }),
        maybe(between(0.2, 4)),
        between(0, 1.5),
        (span, wind, walking, gustFactor, airDensity, panels, own, raise) => {
          const out = windLoad({
            span,
            chord: span,
            windSpeed: wind,
            walkingSpeed: walking,
            gustFactor,
            airDensity,
            panels,
            elevation: raise,
            dragCoefficient: own ?? null,
          })
          // a square plate: 1.14 by the formula, 1.18 by the table, 1.28 by the third
          const [dragLow, dragHigh] = own === undefined ? [1.14, 1.28] : [own, Math.max(own, 1.28)]
          const air = gustFactor * wind + walking
          const pressure = 0.5 * airDensity * air * air
          const one = pressure * dragHigh * span * span
          const forceHeight = 1.35 + (span / 2) * Math.sin(raise)
          close(out, {
            "drag.low": dragLow,
            "drag.high": dragHigh,
            gustSpeed: wind * gustFactor,
            relativeSpeed: air,
            tipSpeed: air,
            pressure,
            "force.high": one,
            "force.low": pressure * dragLow * span * span,
            "hingeMoment.high": (one * span) / 2,
            "hingeMoment.low": (pressure * dragLow * span ** 3) / 2,
            totalForce: panels * one,
            groundMoment: panels * one * forceHeight,
            forceHeight,
            dragArea: panels * dragHigh * span ** 2,
            beaufort: force(wind),
          })
        },
      ),
      { numRuns: 200 },
    )
  })

  it("an own drag coefficient never makes the wind weaker than what is published (E3)", () => {
    const plain = windLoad(windLoad.example)
    for (const dragCoefficient of [0.1, 0.6, 1.2, 1.27]) {
      const low = windLoad({ ...windLoad.example, dragCoefficient })
      expect([low.force.high, low.hingeMoment.high, low.groundMoment, low.dragArea]).toEqual([
        plain.force.high,
        plain.hingeMoment.high,
        plain.groundMoment,
        plain.dragArea,
      ])
      expect(low.force.low / low.force.high).toBeCloseTo(dragCoefficient / 1.28, 12)
      expect(low.cautions.map((c) => c.code)).toContain("drag-below-published")
    }
    const more = windLoad({ ...windLoad.example, dragCoefficient: 2 })
    expect(more.force.high / plain.force.high).toBeCloseTo(2 / 1.28, 12)
    expect(more.cautions.map((c) => c.code)).not.toContain("drag-below-published")
  })

  it("the lever of a swinging panel is where its strips' moments and forces balance", () => {
    for (const [wind, walking, swing, span] of [
      [0, 0, 0, 1],
      [0, 0, 3, 1],
      [5, 0, 0, 0.7],
      [1e-9, 0, 2, 2],
      [3, 1, 4, 0.5],
    ] as const) {
      const out = windLoad({
        span,
        chord: 0.3,
        windSpeed: wind,
        walkingSpeed: walking,
        swingSpeed: swing,
        elevation: Math.PI / 2,
        hingeHeight: 1,
      })
      const lever = wind + walking + swing === 0 ? span / 2 : out.hingeMoment.high / out.force.high
      expect(out.forceHeight - 1).toBeCloseTo(lever, 9)
      expect(out.tipSpeed - out.relativeSpeed).toBeCloseTo(swing * span, 12)
    }
  })

  it("overturning is weight by its lever against wind by its own", () => {
    fc.assert(
      fc.property(
        fc.record({
          bodyMass: between(20, 150),
          rigMass: between(0, 40),
          dragArea: between(0.05, 6),
          forceHeight: between(0.3, 3),
          windSpeed: between(0, 12),
          gustFactor: between(1, 3),
          walkingSpeed: between(0, 2),
          edgeDistance: between(0.02, 0.6),
          usableShare: between(0.2, 1),
          safetyFactor: between(1, 4),
          stature: between(1, 2.2),
          bodyDragArea: between(0.2, 2),
          airDensity: between(0.9, 1.4),
        }),
        (i) => {
          const out = overturning(i)
          const air = i.windSpeed * i.gustFactor + i.walkingSpeed
          const pressure = (i.airDensity * air ** 2) / 2
          const weight = 9.80665 * i.bodyMass + 9.80665 * i.rigMass
          const [held, stiff] = [i.usableShare * i.edgeDistance * weight, i.edgeDistance * weight]
          const wind = pressure * i.dragArea * i.forceHeight
          // mean winds searched for: where what adds up reaches one
          const windAt = (full: (mean: number) => number) => {
            let [low, high] = [0, 1000]
            if (full(0) >= 1) return 0
            for (let n = 0; n < 200; n++) {
              const middle = (low + high) / 2
              if (full(middle) < 1) low = middle
              else high = middle
            }
            return low
          }
          const square = (mean: number) => (i.gustFactor * mean + i.walkingSpeed) ** 2
          const perSquare = (i.airDensity / 2) * i.dragArea * i.forceHeight
          const tipWind = windAt((w) => square(w) / 225 + (i.safetyFactor * perSquare * square(w)) / held)
          const publishedTipWind = windAt((w) => square(w) / 225 + (1.5 * perSquare * square(w)) / (0.6 * stiff))
          const foldWind = Math.min(tipWind, publishedTipWind, 10)
          if (tops.some((top) => Math.abs(foldWind - top) < 1e-6) || Math.abs(foldWind - i.windSpeed) < 1e-6) return
          const bodyUse = air ** 2 / 225
          close(
            out,
            {
              edgeDistance: i.edgeDistance,
              usableEdgeDistance: i.usableShare * i.edgeDistance,
              weight,
              gustSpeed: i.windSpeed * i.gustFactor,
              windMoment: wind,
              bodyMoment: pressure * i.bodyDragArea * 0.56 * i.stature,
              restoringMoment: held,
              restoringMomentRigid: stiff,
              rigUtilisation: wind / held,
              rigUtilisationRigid: wind / stiff,
              bodyUtilisation: bodyUse,
              utilisation: bodyUse + (i.safetyFactor * wind) / held,
              fold: i.windSpeed > foldWind,
              tipWindSpeed: tipWind,
              publishedTipWindSpeed: publishedTipWind,
              tipWindSpeedRigid: windAt((w) => (perSquare * square(w)) / stiff),
              bodyWindSpeed: windAt((w) => square(w) / 225),
              foldWindSpeed: foldWind,
              foldBeaufort: force(foldWind),
              requiredEdgeDistance: bodyUse < 1 ? (i.safetyFactor * wind) / (1 - bodyUse) / i.usableShare / weight : null,
            },
            1e-8,
          )
        },
      ),
      { numRuns: 200 },
    )
  })

  it("that body and rig add up is said to be a rule of our own, wherever there are panels to the wind", () => {
    const said = overturning(overturning.example).cautions.find((c) => c.code === "shares-added")
    expect(said?.message).toMatch(/rule of our own/)
    expect(said?.source).toEqual(commonPractice)
  })
})

describe("passage", () => {
  // mm: kind, clear width, clear height, car
  const published = [
    ["door", 750, 2000],
    ["door", 800, 2000],
    ["door", 812.8, 1981.2],
    ["route", 914.4, 2032],
    ["corner", 914.4, 2032],
    ["route", 1117.6, 2032],
    ["corner", 1117.6, 2032],
    ["corner", 1200, 2000],
    ["turning", 1524, 2032],
    ["stair", 685.8, 2032],
    ["stair", 1000, 2000],
    ["stair", 1117.6, 2032],
    ["lift", 800, 2000, 1100, 1400],
    ["lift", 914.4, 2000, 1727.2, 1295.4],
    ["lift", 812.8, 2000, 1066.8, 1371.6],
    ["headroom", null, 1422.4],
    ["headroom", null, 1727.2],
    ["aisle", 381, null],
  ] as const
  const box = fc.record({ width: between(0.2, 1.6), forward: between(0, 0.8), backward: between(0, 0.8), height: between(1, 2.2) })
  interface Box {
    readonly width: number
    readonly forward: number
    readonly backward: number
    readonly height: number
  }
  interface Spot {
    readonly kind: string
    readonly width: number | null
    readonly height: number | null
    readonly car: readonly [number, number] | null
  }
  /** Corridor needed at a right-angle turn by turning in small steps. */
  const corner = (across: number, along: number) => Math.max(across, (2 * across + along) / Math.sqrt(8))
  /** What is left in a car, angle by angle. */
  const inCar = (w: number, d: number, [a, b]: readonly [number, number]) => {
    let best = Number.NEGATIVE_INFINITY
    for (let k = 0; k <= 900; k++) {
      const [c, s] = [Math.cos((k * Math.PI) / 1800), Math.sin((k * Math.PI) / 1800)]
      best = Math.max(best, Math.min(a - w * c - d * s, b - w * s - d * c))
    }
    return best
  }
  const spareOf = (b: Box, spot: Spot, room: number): { way: string; margin: number; by: string; size: number } => {
    const deep = b.forward + b.backward
    const ways: [string, number][] =
      spot.kind === "turning"
        ? [["turning", Math.sqrt(b.width ** 2 + 4 * Math.max(b.forward, b.backward) ** 2)]]
        : [["facing", spot.kind === "corner" ? corner(b.width, deep) : b.width]]
    if (["door", "route", "corner", "lift", "aisle"].includes(spot.kind))
      ways.push(["sideways", spot.kind === "corner" ? corner(deep, b.width) : deep])
    const tried = ways.map(([way, needed]) => {
      const spares = [
        ...(spot.width === null ? [] : [{ margin: spot.width - 2 * room - needed, by: "width", size: spot.width }]),
        ...(spot.height === null ? [] : [{ margin: spot.height - room - b.height, by: "height", size: spot.height }]),
        ...(spot.car
          ? [{ margin: inCar(b.width, deep, [spot.car[0] - 2 * room, spot.car[1] - 2 * room]), by: "car", size: spot.car[1] }]
          : []),
      ].sort((x, y) => x.margin - y.margin)
      return { way, ...(spares[0] as { margin: number; by: string; size: number }) }
    })
    const fits = tried.find((t) => t.margin >= 0)
    return fits ?? { ...(tried.sort((x, y) => y.margin - x.margin)[0] as (typeof tried)[number]), way: "no" }
  }

  it("is the least of what is left at width, height and car, place by place", () => {
    fc.assert(
      fc.property(
        box,
        maybe(box),
        between(0, 0.1),
        fc.constantFrom("door", "route", "corner", "stair", "turning" as const),
        between(0.3, 2),
        maybe(between(1, 2.5)),
        (folded, raised, allowance, kind, width, height) => {
          const out = passage({
            folded,
            raised: raised ?? null,
            allowance,
            ownPlaces: [{ name: "gate", type: kind, width, height: height ?? null }],
          })
          const spots: Spot[] = [
            ...published.map(([k, w, h, a, d]) => ({
              kind: k,
              width: w === null ? null : w / 1e3,
              height: h === null ? null : h / 1e3,
              car: a && d ? ([a / 1e3, d / 1e3] as const) : null,
            })),
            { kind, width, height: height ?? null, car: null },
          ]
          expect(out.places.map((p) => p.type)).toEqual(spots.map((s) => s.kind))
          out.places.forEach((p, i) => {
            const mine = spareOf(folded, spots[i] as Spot, allowance)
            // the angles stand 0.1° apart, and where two ways are all but even either may be named
            expect(Math.abs(p.foldedMargin - mine.margin), p.place).toBeLessThan(3e-3)
            if (Math.abs(mine.margin) > 3e-3) expect(p.folded, p.place).toBe(mine.way)
            if (p.foldedBy !== "car" && p.folded === mine.way && p.foldedBy === mine.by) expect(p.foldedRoom).toBeCloseTo(mine.size, 9)
            const up = raised ? spareOf(raised, spots[i] as Spot, allowance) : null
            expect(p.raised === null).toBe(up === null)
            if (up) {
              expect(Math.abs((p.raisedMargin as number) - up.margin), p.place).toBeLessThan(3e-3)
              if (Math.abs(up.margin) > 3e-3) expect(p.raised, p.place).toBe(up.way)
            }
          })
          const named = (of: (p: (typeof out.places)[number]) => boolean) => out.places.filter(of).map((p) => p.place)
          expect(out.blocked).toEqual(named((p) => p.folded === "no"))
          expect(out.sideways).toEqual(named((p) => p.folded === "sideways"))
          expect(out.foldFor).toEqual(named((p) => p.folded !== "no" && p.raised === "no"))
          const turned = (b: Box) => 2 * Math.sqrt((b.width / 2) ** 2 + Math.max(b.forward, b.backward) ** 2)
          close(out, {
            foldedTurningDiameter: turned(folded),
            raisedTurningDiameter: raised ? turned(raised) : null,
            foldedCornerWidth: corner(folded.width, folded.forward + folded.backward),
            raisedCornerWidth: raised ? corner(raised.width, raised.forward + raised.backward) : null,
            corridorMargin: 1.524 - folded.width,
            raisedCorridorMargin: raised ? 1.524 - raised.width : null,
          })
        },
      ),
      { numRuns: 60 },
    )
  })

  it("names what is tightest, car and all, with its clear size", () => {
    const at = (place: string, b: Box, allowance = 0) => passage({ folded: b, allowance }).places.find((p) => p.place === place)
    // 1100 × 1400 mm inside, door 800 mm: narrow enough for the door, too deep for the car
    expect(at("lift 1100 × 1400", { width: 0.7, forward: 0.8, backward: 0.8, height: 1.5 })).toMatchObject({
      folded: "no",
      foldedBy: "car",
      foldedRoom: 1.4,
    })
    expect(at("lift 1100 × 1400", { width: 0.79, forward: 0.1, backward: 0.7, height: 1.5 })).toMatchObject({
      folded: "facing",
      foldedBy: "width",
    })
    expect(at("small van doorway", { width: 0.3, forward: 0.1, backward: 0.1, height: 1.4 })).toMatchObject({
      folded: "facing",
      foldedBy: "height",
      foldedRoom: expect.closeTo(1.4224, 9),
    })
    // just fits: nothing to spare is still through
    expect(at("UK door, new building", { width: 0.75, forward: 2, backward: 2, height: 1 }, 0.025)?.foldedMargin).toBeCloseTo(0, 12)
  })

  it("packs three sides against three, in any order, and keeps to mass and sum", () => {
    const side = between(0.05, 3)
    fc.assert(
      fc.property(side, side, side, between(1, 60), (length, width, height, mass) => {
        const out = passage({ folded: { width: 0.5, forward: 0.2, backward: 0.2, height: 1.5 }, packed: { length, width, height, mass } })
        // every way round: the best of the worst
        const orders = [
          [length, width, height],
          [length, height, width],
          [width, length, height],
          [width, height, length],
          [height, length, width],
          [height, width, length],
        ]
        const spare = (room: readonly number[]) => Math.max(...orders.map((o) => Math.min(...o.map((s, i) => (room[i] as number) - s))))
        close(out, {
          cabinMargin: spare([0.56, 0.45, 0.25]),
          containerMargin: spare([5.9, 2.34, 2.28]),
          checkedMargin: 1.58 - (length + width + height),
          checkedMassMargin: 23 - mass,
        })
      }),
      { numRuns: 100 },
    )
  })
})

describe("pinchGap", () => {
  const gaps = { finger: 25, toes: 50, "hand-wrist-fist": 100, arm: 120, foot: 120, leg: 180, head: 300, body: 500 }
  const entries = { finger: 4, toes: 5, "hand-wrist-fist": 12, arm: 20, foot: 15, leg: 35, head: 89, body: 89 }
  it("of a bar that comes straight down is known from open and closed alone, thickness and all", () => {
    fc.assert(
      fc.property(between(0.05, 1), between(0, 1), between(0, 0.1), between(0, 0.1), between(0.1, 1), (open, part, tm, tf, half) => {
        const closed = open * (0.1 + 0.85 * part)
        const out = pinchGap({
          movingBars: [{ x1: -half, y1: 0, x2: half, y2: 0 }],
          fixedBars: [{ x1: -half, y1: -1, x2: half, y2: -1 }],
          poses: [
            { x: 0, y: open - 1, angle: 0 },
            { x: 0, y: closed - 1, angle: 0 },
          ],
          movingThickness: tm,
          fixedThickness: tf,
        })
        const thick = (tm + tf) / 2
        close(out, { minGap: closed - thick, maxGap: open - thick, motionShare: 1 }, 1e-9)
        expect(out.provenMinGap).toBeLessThanOrEqual(out.minGap)
        expect(out.provenMinGap).toBeGreaterThanOrEqual(out.minGap - 1.0001e-5)
        expect(out.errorEstimate).toBeCloseTo(out.minGap - out.provenMinGap, 12)
        expect(out.movingY).toBeCloseTo(closed - 1, 9)
        expect(out.fixedY).toBeCloseTo(-1, 9)
        expect(out.movingX).toBeCloseTo(out.fixedX, 9)
        expect(out.parts.map((p) => [p.part, Math.round(p.minGap * 1e3), Math.round(p.entryGap * 1e3)])).toEqual(
          Object.entries(gaps).map(([name, mm]) => [name, mm, entries[name as keyof typeof entries]]),
        )
        for (const p of out.parts) {
          expect(p.shortBy).toBeCloseTo(p.minGap - out.provenMinGap, 12)
          // places on the bars stand apart: half of that either way is left undecided here
          const slack = (2 * half) / 99 / 2 + Math.abs(open - closed) / 240 / 2 + 1e-6
          const [wide, tight] = [open - thick, closed - thick]
          const clear = Math.abs(wide - p.entryGap) > slack && Math.abs(tight - p.minGap) > slack
          if (clear) expect(p.crushes, p.part).toBe(wide > p.entryGap && tight < p.minGap && open - closed > 1e-6)
        }
        expect(out.crushes).toBe(out.parts.some((p) => p.crushes))
      }),
      { numRuns: 60 },
    )
  })
  it("tells the nearest points of a turning bar, in the pose where it is nearest", () => {
    fc.assert(
      fc.property(between(0.3, 1), between(0.01, 0.2), between(-0.4, -0.1), between(0.1, 0.4), (length, off, from, to) => {
        // the tip passes a wall at x = length + off, nearest when level, a fraction of the way from the first pose
        const out = pinchGap({
          movingBars: [{ x1: 0, y1: 0, x2: length, y2: 0 }],
          fixedBars: [{ x1: length + off, y1: -2, x2: length + off, y2: 2 }],
          poses: [
            { x: 0, y: 0, angle: from },
            { x: 0, y: 0, angle: to },
          ],
          movingThickness: 0,
          fixedThickness: 0,
        })
        expect(out.minGap).toBeCloseTo(off, 4)
        expect(out.minGap).toBeGreaterThanOrEqual(off - 1e-12)
        expect(out.provenMinGap).toBeLessThanOrEqual(off + 1e-12)
        const angle = from + out.motionShare * (to - from)
        close(
          out,
          {
            movingX: length * Math.cos(angle),
            movingY: length * Math.sin(angle),
            fixedX: length + off,
            fixedY: length * Math.sin(angle),
            maxGap: length + off - length * Math.min(Math.cos(from), Math.cos(to)),
          },
          1e-9,
        )
      }),
      { numRuns: 40 },
    )
  })
})
