import { describe, expect, it } from "vitest"
import { airTravel, type CarriedKind, powerBank, runtime } from "../../src/pack/index.js"
import { isNoSolution, type Source } from "../../src/solver/index.js"

describe("airTravel", () => {
  it("keeps the limits themselves within, however the watt-hours come about", () => {
    const band = (nominalVoltage: number, ampereHours: number) => airTravel({ nominalVoltage, capacity: ampereHours * 3600 }).rule
    for (const voltage of [3.2, 3.6, 3.7, 7.4, 10.8, 11.1, 14.8, 22.2]) {
      expect(band(voltage, 100 / voltage)).toBe("free")
      expect(band(voltage, 100.01 / voltage)).toBe("approval")
      expect(band(voltage, 160 / voltage)).toBe("approval")
      expect(band(voltage, 160.01 / voltage)).toBe("forbidden")
    }
  })

  it("never reads as permission", () => {
    for (const type of ["lithium-ion", "lithium-metal", "nickel", "dry"] as const) {
      const out = airTravel({ type, energy: "20 Wh", lithiumMass: "1 g" })
      expect(out.cautions.map((c) => c.code)).toContain("rules-change")
      expect(out.verdict).not.toMatch(/\b(allowed|permitted|may fly)\b/)
    }
    expect(airTravel({ type: "lithium-metal", lithiumMass: "9 g" }).rule).toBe("forbidden")
    // between 2 g and 8 g is for medical devices alone, which a costume is not
    const medical = airTravel({ type: "lithium-metal", lithiumMass: "5 g" })
    expect([medical.rule, medical.cautions.map((c) => c.code)]).toEqual(["approval", expect.arrayContaining(["medical-only"])])
    expect(medical.verdict).toMatch(/medical/)
    expect(airTravel({ energy: "120 Wh", count: 3 }).withinMaxCount).toBe(false)
  })
})

describe("airTravel for power banks, lead and dry cells", () => {
  it("lets at most two power banks through, in the cabin, never recharged on board", () => {
    const bank = (count: number, energy = "37 Wh" as const) => airTravel({ energy, count, carriedAs: "power-bank" })
    expect([bank(2).maxCount, bank(2).withinMaxCount, bank(3).withinMaxCount]).toEqual([2, true, false])
    expect(bank(1).cabinOnly).toBe(true)
    const caution = bank(1).cautions.find((c) => c.code === "power-bank-on-board")
    expect(caution?.message).toMatch(/at most 2 power banks.*never recharged on board/s)
    expect((caution?.source as Source | undefined)?.edition).toContain("27 March 2026")
    expect(airTravel({ energy: "37 Wh", carriedAs: "spare" }).maxCount).toBe(20)
    expect(airTravel.attempt({ type: "dry", carriedAs: "power-bank" }).ok).toBe(false)
  })

  it("dates its rules: in the answer, in every caution about carriage, and no older than the power bank rule", () => {
    for (const type of ["lithium-ion", "lead", "nickel", "dry"] as const) {
      const out = airTravel({ type, nominalVoltage: 12, capacity: "7 Ah" })
      expect(out.rulesReadOn).toMatch(/^2026-\d\d-\d\d$/)
      expect(out.rulesFrom).toContain("27 March 2026")
      for (const { code, source } of out.cautions)
        if (code !== "home-made") expect((source as { read?: string }).read, code).toMatch(/^2026-/)
    }
  })

  it("judges lead by its voltage and watt-hours: 12 V and 100 Wh, two spares", () => {
    const lead = (nominalVoltage: number, ampereHours: number, more: object = {}) =>
      airTravel({ type: "lead", nominalVoltage, capacity: ampereHours * 3600, ...more })
    expect(lead(12, 7)).toMatchObject({ energy: 84 * 3600, rule: "free", maxCount: 2, cabinOnly: false })
    expect(lead(12, 100 / 12).rule).toBe("free")
    expect(lead(12, 100.1 / 12).rule).toBe("forbidden")
    expect(lead(12.1, 1).rule).toBe("forbidden")
    expect(lead(12, 7, { count: 3 }).withinMaxCount).toBe(false)
    expect(lead(12, 7, { carriedAs: "in-device" }).maxCount).toBe(15)
    expect(lead(12, 7).approvalCapacity).toBeCloseTo((100 / 12) * 3600, 9)
    expect(airTravel.attempt({ type: "lead", energy: "84 Wh" }).ok).toBe(false)
  })

  it("counts no nickel and dry cells, and asks watt-hours only where the rules do", () => {
    for (const type of ["nickel", "dry"] as const)
      for (const carriedAs of ["spare", "in-device"] as const) {
        const out = airTravel({ type, carriedAs, nominalVoltage: "9.6 V", capacity: "60 Ah", count: 400 })
        expect(out).toMatchObject({ rule: "free", maxCount: null, withinMaxCount: true, cabinOnly: false, freeCapacity: null })
        expect(out.verdict).not.toMatch(/\b(allowed|permitted|may fly|400)\b/)
      }
    expect(airTravel({ type: "lithium-metal", lithiumMass: "1 g", nominalVoltage: "3 V" }).freeCapacity).toBeNull()
  })

  it("says how each is sent when nobody may carry it", () => {
    const sent = (type: CarriedKind) =>
      airTravel({ type, lithiumMass: "1 g", nominalVoltage: "12 V", capacity: "40 Ah" }).sentAs.match(/UN \d{4}/g)
    expect((["lithium-ion", "lithium-metal", "lead", "nickel", "dry"] as const).map(sent)).toEqual([
      ["UN 3480", "UN 3481"],
      ["UN 3090", "UN 3091"],
      ["UN 2800"],
      ["UN 3496"],
      null,
    ])
  })

  it("speaks of fire wherever there is lithium, and of short circuits where there is none", () => {
    const codes = (input: object) => airTravel({ energy: "20 Wh", ...input }).cautions.map((c) => c.code)
    expect(codes({})).toContain("battery-fire")
    expect(codes({ type: "lithium-metal", lithiumMass: "1 g" })).toContain("battery-fire")
    expect(codes({ type: "dry" })).toEqual(["rules-change", "terminals-covered"])
    expect(codes({ type: "lead", nominalVoltage: 12 })).toEqual(["rules-change", "non-spillable-only"])
  })
})

describe("powerBank", () => {
  it("runs as long as the cells emptied at the power taken from them, without resistance", () => {
    let worst = 0
    for (const power of [0.6, 3, 9])
      for (const bankEfficiency of [0.8, 0.95])
        for (const stepUp of [null, 0.85]) {
          const out = powerBank.si(
            powerBank.read({
              ratedCapacity: 36000,
              bankEfficiency,
              power,
              ...(stepUp === null ? {} : { loadVoltage: 12, boostEfficiency: stepUp }),
            }),
          )
          const cells = runtime.si(
            runtime.read({
              series: 1,
              parallel: 1,
              cellCapacity: 36000,
              cellResistance: 0,
              cellCutOffVoltage: 0.1,
              openCircuitCurve: [
                { stateOfCharge: 0, voltage: 3.7 - 1e-6 },
                { stateOfCharge: 1, voltage: 3.7 + 1e-6 },
              ],
              pattern: [{ power: power / bankEfficiency / (stepUp ?? 1) }],
            }),
          )
          if (isNoSolution(out) || isNoSolution(cells)) throw new Error("both should answer")
          worst = Math.max(worst, Math.abs((out.runtime as number) / cells.runtime - 1))
        }
    expect(worst).toBeLessThan(1e-6)
  })

  it("switches off at small loads and says what keeps it on", () => {
    const sleepy = powerBank({ ratedCapacity: "10 Ah", current: "40 mA", switchOffCurrent: "0.1 A" })
    expect(sleepy.staysOn).toBe(false)
    // 60 mA short of 100 mA, at 5 V
    expect(sleepy.keepOnPower).toBeCloseTo(0.3, 12)
    expect(powerBank({ ratedCapacity: "10 Ah", power: sleepy.loadPower + sleepy.keepOnPower }).staysOn).toBe(true)
  })

  it("refuses more than the port gives, and names what reaches the load", () => {
    const input = { ratedCapacity: 36000, loadVoltage: 12, power: 30, outputCurrentLimit: 2.4 }
    const refusal = powerBank.si(powerBank.read(input))
    if (!isNoSolution(refusal)) throw new Error("should refuse")
    expect(isNoSolution(powerBank.si(powerBank.read({ ...input, power: refusal.nearest.power as number })))).toBe(false)
  })
})
