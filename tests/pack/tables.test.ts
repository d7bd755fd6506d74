import { describe, expect, it } from "vitest"
import {
  type Chemistry,
  capacityAtTemperature,
  chargeRateLimit,
  chemistries,
  dischargeLimitFactor,
  genericCells,
  powerBankRules,
  smallLithium,
  transportRules,
} from "../../src/pack/index.js"

/* Copied by hand from the sources that the tables name; a figure changed by 3 % in either is seen. */

describe("tables of cells", () => {
  it("keeps each chemistry's voltages, temperatures and tolerances", () => {
    // nominal, full, least (V), tolerance (V), coldest charge (°C), activation energy (J/mol)
    const copied: Record<Chemistry, readonly (number | null)[]> = {
      nmc: [3.6, 4.2, 2.5, 0.04, 0, 20000],
      lfp: [3.2, 3.65, 2.5, 0.04, 0, 20000],
      lco: [3.7, 4.2, 3, 0.04, 0, 20000],
      nimh: [1.2, 1.45, 1, 0.04, 0, 15000],
      alkaline: [1.5, 1.6, 0.8, 0.1, null, 25000],
      lead: [2, 14.5 / 6, 1.75, 0.02, -10, 15000],
    }
    expect(Object.keys(chemistries)).toEqual(Object.keys(copied))
    for (const [name, c] of Object.entries(chemistries))
      expect(
        [c.cellNominalVoltage, c.cellFullVoltage, c.cellCutOffVoltage, c.curveTolerance, c.coldestCharge, c.activationEnergy],
        name,
      ).toEqual(copied[name as Chemistry])
    expect(
      Object.entries(chemistries)
        .filter(([, c]) => c.lithiumIon)
        .map(([name]) => name),
    ).toEqual(["nmc", "lfp", "lco"])
    expect(
      Object.entries(chemistries)
        .filter(([, c]) => !c.rechargeable)
        .map(([name]) => name),
    ).toEqual(["alkaline"])
  })

  it("keeps the curves that no published row holds", () => {
    expect(chemistries.nimh.curve?.map(([, u]) => u)).toEqual([1.1, 1.22, 1.245, 1.262, 1.273, 1.283, 1.292, 1.302, 1.313, 1.328, 1.4])
    expect(chemistries.alkaline.curve?.map(([, u]) => u)).toEqual([1.1, 1.2, 1.23, 1.26, 1.28, 1.3, 1.32, 1.34, 1.38, 1.44, 1.59])
    expect(chemistries.nimh.curve?.map(([s]) => s)).toEqual(Array.from({ length: 11 }, (_, i) => i / 10))
    // 12 V blocks at rest: 11.89, 12.06, 12.24, 12.45 and 12.65 V by quarters of the charge
    expect(chemistries.lead.curve).toEqual([11.89, 12.06, 12.24, 12.45, 12.65].map((u, i) => [i / 4, u / 6]))
    // ends and bends of the two measured lithium curves
    const points = (chemistry: "nmc" | "lfp", charges: readonly number[]) =>
      charges.map((s) => chemistries[chemistry].curve?.find(([at]) => at === s)?.[1])
    expect(points("nmc", [0, 0.0151, 0.0452, 1])).toEqual([2.5199, 2.9068, 3.1409, 4.1943])
    expect(points("lfp", [0, 0.0033, 0.0117, 0.0267, 0.0885, 0.9833, 0.995, 1])).toEqual([
      2.0102, 2.4177, 2.7405, 2.9299, 3.1942, 3.3511, 3.418, 3.5981,
    ])
  })

  it("keeps each generic cell", () => {
    // capacity (Ah), resistance (mohm), mass (g), discharge, charge (A), least voltage (V)
    const copied: Record<string, readonly (number | null)[]> = {
      "18650-standard": [2.6, 50, 48, 7.8, 1.3, 2.75],
      "18650-power": [2.5, 26, 45, 20, 4, 2.5],
      "21700-power": [4, 20, 70, 35, 6, 2.5],
      "21700-energy": [4.8, 30, 72, 25, 6, 2.5],
      "26650-lfp": [3.3, 60, 90, 9.9, 3.3, 2.5],
      "aaa-nimh": [0.7, 60, 13, 1.4, 0.7, 1],
      "a-nimh": [4.2, 50, 60, 8.4, 4.2, 1],
      "aa-alkaline": [1.4, 403, 23, 0.5, null, 0.8],
      "agm-5ah": [5, 4.5, 320, 15, 1.5, 1.75],
    }
    expect(Object.keys(genericCells)).toEqual(Object.keys(copied))
    for (const [name, c] of Object.entries(genericCells))
      expect(
        [c.cellCapacity / 3600, c.cellResistance * 1000, c.cellMass * 1000, c.cellMaxCurrent, c.cellMaxChargeCurrent, c.cellCutOffVoltage],
        name,
      ).toEqual(copied[name]?.map((x) => (x === null ? null : expect.closeTo(x, 9))))
  })

  it("keeps the bands of temperature, each end in the stricter band", () => {
    const discharge = (chemistry: Chemistry) => [-20.1, -20, 5, 5.1, 44.9, 45, 60, 60.1].map((t) => dischargeLimitFactor(chemistry, t))
    expect(discharge("nmc")).toEqual([0, 1 / 6, 1 / 6, 1, 1, 1 / 3, 1 / 3, 0])
    expect(discharge("lco")).toEqual(discharge("nmc"))
    expect(discharge("lfp")).toEqual([0, 1 / 4, 1 / 4, 1, 1, 1 / 2, 1 / 2, 0])
    expect([-20.1, -20, 65, 65.1].map((t) => dischargeLimitFactor("nimh", t))).toEqual([0, 1, 1, 0])
    expect([-20.1, -20, 50, 50.1].map((t) => dischargeLimitFactor("lead", t))).toEqual([0, 1, 1, 0])
    const charge = (chemistry: Chemistry) => [-0.1, 0, 5, 5.1, 15, 15.1, 45, 45.1].map((t) => chargeRateLimit(chemistry, t))
    expect(charge("nmc")).toEqual([0, 0.1, 0.1, 0.2, 0.2, 0.5, 0.5, 0])
    expect(charge("lfp")).toEqual([0, 0.2, 0.2, 0.5, 0.5, 1, 1, 0])
    expect(charge("nimh")).toEqual([0, 0.3, 0.3, 1, 1, 1, 1, 0])
    expect([-10.1, -10, 50, 50.1].map((t) => chargeRateLimit("lead", t))).toEqual([0, 0.3, 0.3, 0])
    expect(chargeRateLimit("alkaline", 25)).toBe(0)
  })

  it("keeps capacity against temperature", () => {
    expect(capacityAtTemperature).toEqual({
      lithium: [
        [-20, 0.6],
        [-10, 0.85],
        [20, 1],
        [45, 1],
        [50, 0.85],
      ],
      lead: [
        [-10, 0.74],
        [10, 0.9],
        [25, 1],
        [30, 1.03],
      ],
    })
  })

  it("keeps the rules of carriage by air", () => {
    const { "lithium-ion": ion, "lithium-metal": metal, lead, nickel, dry } = transportRules
    const counted = { maxVoltage: null, spares: 20, largeSpares: 2, devices: 15, sparesInHold: false }
    expect(ion.passenger).toMatchObject({ ...counted, energy: { free: 360000, approval: 576000 }, fixedInBaggage: { energy: 9720 } })
    expect(metal.passenger).toMatchObject({ ...counted, lithium: { free: 0.002, approval: 0.008 }, fixedInBaggage: { lithium: 0.0003 } })
    expect(lead.passenger).toMatchObject({
      energy: { free: 360000, approval: 360000 },
      maxVoltage: 12,
      spares: 2,
      devices: 15,
      sparesInHold: true,
    })
    for (const { passenger } of [nickel, dry])
      expect(passenger).toMatchObject({ energy: null, spares: null, devices: null, sparesInHold: true })
    expect(powerBankRules).toEqual({ max: 2, countsAsSpare: true, rechargedOnBoard: false })
    expect([smallLithium.cellEnergy, smallLithium.batteryEnergy, ion.sent.maxStateOfCharge, smallLithium.netMass]).toEqual([
      72000, 360000, 0.3, 10,
    ])
    expect([ion, metal, lead, nickel, dry].map(({ sent }) => [sent.hazardClass, sent.byAir, sent.onPassengerAircraft])).toEqual([
      [9, true, false],
      [9, true, false],
      [8, true, true],
      [9, false, true],
      [null, false, true],
    ])
    // rules change: each says on which day it was read
    for (const rule of Object.values(transportRules))
      for (const { read } of [rule.passenger.source, rule.sent.source]) expect(read).toMatch(/^2026-\d\d-\d\d$/)
  })
})
