import { describe, expect, it } from "vitest"
import { type DutyCycle, dcMotor, dutyCycle, hobbyServo } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const servo = { firstVoltage: 4.8, firstStallTorque: 0.9, firstTime: 0.2, stallCurrent: 2, idleCurrent: 0, terminalVoltage: 4.8, torque: 0 }
const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)

describe("hobbyServo", () => {
  it("is a motor without friction current, over voltages and torques", () => {
    let worst = 0
    for (const terminalVoltage of [4, 4.8, 5.5, 7])
      for (const share of [0, 0.2, 0.6, 0.95]) {
        const torque = (share * 0.9 * terminalVoltage) / 4.8
        const out = hobbyServo.si(hobbyServo.read({ ...servo, terminalVoltage, torque }))
        const motor = dcMotor.si(
          dcMotor.read({
            ratedVoltage: 4.8,
            noLoadSpeed: Math.PI / 0.6,
            loadTorque: 0.9,
            loadSpeed: 0,
            loadCurrent: 2,
            terminalVoltage,
            torque,
          }),
        )
        if (isNoSolution(out) || isNoSolution(motor)) throw new Error("both should answer")
        worst = Math.max(
          worst,
          off(out.speed, motor.speed),
          off(out.movingCurrent as number, motor.current),
          off(out.stallTorque, motor.stallTorque),
          // held still, the winding's heat at this current is what the supply gives
          off(out.holdingHeat as number, motor.windingHeat),
        )
      }
    expect(worst).toBeLessThan(1e-12)
  })

  it("gives back both columns of its sheet", () => {
    const two = { ...servo, secondVoltage: 6, secondStallTorque: 1.1, secondTime: 0.16 }
    const at = (voltage: number) => hobbyServo({ ...two, terminalVoltage: voltage })
    expect(at(4.8).stallTorque).toBeCloseTo(0.9, 12)
    expect(at(6).stallTorque).toBeCloseTo(1.1, 12)
    expect(at(4.8).sixtyTime).toBeCloseTo(0.2, 12)
    expect(at(6).sixtyTime).toBeCloseTo(0.16, 12)
    expect(at(7.4).cautions.map((c) => c.code)).toContain("over-voltage")
  })

  it("falls short by a positive amount wherever it refuses, and offers only what answers within the datasheet's voltage", () => {
    const two = { ...servo, secondVoltage: 6, secondStallTorque: 1.6, secondTime: 0.1 }
    const seen = new Set<string>()
    for (const sheet of [servo, two])
      for (const terminalVoltage of [0.5, 2, 2.8, 4, 4.8, 6, 12, 60])
        for (const torque of [0, 0.05, 0.9, 1.6, 20, 1000]) {
          const outcome = hobbyServo.attempt({ ...sheet, terminalVoltage, torque })
          if (outcome.ok || !("noSolution" in outcome.error)) continue
          seen.add(outcome.error.noSolution)
          expect(outcome.error.shortBy).toBeGreaterThan(0)
          for (const [key, value] of Object.entries(outcome.error.nearest)) {
            expect(hobbyServo.attempt({ ...sheet, terminalVoltage, torque, [key]: value }).ok, `${key} ${value}`).toBe(true)
            if (key === "terminalVoltage") expect(value).toBeLessThanOrEqual(6)
          }
        }
    expect([...seen].sort()).toEqual(["insufficient-torque", "insufficient-voltage"])
  })

  it("offers a torque just below stall, and holds up to its share and no further", () => {
    const outcome = hobbyServo.attempt({ ...servo, torque: 2 })
    if (outcome.ok || !("noSolution" in outcome.error)) throw new Error("should stall")
    expect(outcome.error.nearest.torque).toBeCloseTo(0.999 * 0.9, 12)
    const at = (share: number) => hobbyServo({ ...servo, firstStallTorque: 1, torque: share, holdingShare: 0.5 }).holds
    expect([at(0.5), at(0.5000001)]).toEqual([true, false])
  })

  it("refuses columns that lose torque or speed with voltage", () => {
    const two = { ...servo, secondVoltage: 6, secondStallTorque: 1.1, secondTime: 0.16 }
    const paths = (more: object) => {
      const outcome = hobbyServo.attempt({ ...two, ...more })
      return outcome.ok ? [] : "issues" in outcome.error ? outcome.error.issues.map((i) => i.path[0]) : []
    }
    expect(paths({ secondStallTorque: 0.89 })).toEqual(["secondStallTorque"])
    expect(paths({ secondTime: 0.21 })).toEqual(["secondTime"])
    expect(paths({ secondStallTorque: 0.9, secondTime: 0.2 })).toEqual([])
  })

  it("warns of holding more than is usual whatever share it is told to hold", () => {
    const codes = (share: number, holdShare: number) =>
      hobbyServo({ ...servo, torque: share * 0.9, holdingShare: holdShare }).cautions.map((c) => c.code)
    expect(codes(0.5, 1)).toContain("cannot-hold")
    expect(codes(0.2, 0.1)).toContain("cannot-hold")
    expect(codes(0.2, 1)).not.toContain("cannot-hold")
  })

  it("stalls, and cannot hold for long what it can just move", () => {
    expect(hobbyServo.attempt({ ...servo, torque: 0.901 }).ok).toBe(false)
    expect(hobbyServo({ ...servo, torque: 0.8 }).holds).toBe(false)
  })
})

const duty = { ratedDuty: 0.1, ratedRunDuration: 120, runDuration: 30, restDuration: 60, timeConstant: 600 }
const solved = (more: object): DutyCycle => dutyCycle.si(dutyCycle.read({ ...duty, ...more })) as DutyCycle

/** The motor's temperature followed in small steps; counts the runs that end within the limit. */
function followed(rise: number, limit: number, run: number, rest: number, running: number, resting: number, most: number) {
  const h = 0.02
  let [theta, peak] = [0, 0]
  for (let n = 0; n < most; n++) {
    // second-order steps, so that the count does not hang on the step
    for (let t = 0; t < run - h / 2; t += h) theta += ((rise - theta) * h) / running - ((rise - theta) * h * h) / (2 * running ** 2)
    peak = Math.max(peak, theta)
    if (theta > limit) return { runs: n, peak }
    for (let t = 0; t < rest - h / 2; t += h) theta += (-theta * h) / resting + (theta * h * h) / (2 * resting ** 2)
  }
  return { runs: most, peak }
}

describe("dutyCycle", () => {
  it("counts the runs that small steps of time count", () => {
    for (const run of [10, 30, 90])
      for (const rest of [20, 60, 200])
        for (const currentShare of [0.7, 1, 1.4])
          for (const restTimeConstant of [600, 1200]) {
            const out = solved({ runDuration: run, restDuration: rest, currentUtilisation: currentShare, restTimeConstant })
            const other = followed(out.continuousRise, 55, run, rest, 600, restTimeConstant, 60)
            if (out.runsBeforeRest === null || out.runsBeforeRest >= 60) expect(other.runs).toBe(60)
            else expect(out.runsBeforeRest, `${run} s, ${rest} s, ${currentShare}`).toBe(other.runs)
          }
  })

  it("makes the rated duty itself end just at its limit", () => {
    let worst = 0
    for (const ratedDuty of [0.05, 0.1, 0.25, 0.5])
      for (const ratedRun of [30, 120, 600]) {
        const out = solved({ ratedDuty, ratedRunDuration: ratedRun, runDuration: ratedRun, restDuration: ratedRun * (1 / ratedDuty - 1) })
        worst = Math.max(worst, Math.abs(out.peakTemperature - 80))
        expect(out.sustained).toBe(true)
        const long = followed(
          out.continuousRise,
          1e9,
          ratedRun,
          ratedRun * (1 / ratedDuty - 1),
          600,
          600,
          Math.ceil((12 * 600 * ratedDuty) / ratedRun),
        )
        expect(Math.abs(long.peak - 55)).toBeLessThan(0.01)
      }
    expect(worst).toBeLessThan(1e-9)
  })

  it("can go on for ever with the rest it names, and not with less", () => {
    const rest = solved({}).requiredRestDuration as number
    expect(solved({ restDuration: rest * 1.0001 }).sustained).toBe(true)
    expect(solved({ restDuration: rest * 0.999 }).sustained).toBe(false)
  })

  it("gives no rest for a run too long even from cold", () => {
    const out = solved({ runDuration: 3000 })
    expect([out.requiredRestDuration, out.runsBeforeRest]).toEqual([null, 0])
    expect(solved({ runDuration: out.maxRunDuration * 0.999, restDuration: 0 }).firstRunTemperature).toBeLessThan(80)
  })

  it("never allows a run longer than the maker states, nor calls one sustained, however light the load and cool the place", () => {
    for (const currentUtilisation of [0.05, 0.5, 1, 1.5, 3])
      for (const ambientTemperature of [-20, 25, 60])
        for (const ratedRunDuration of [30, 120, 600])
          for (const timeConstant of [60, 600, 6000]) {
            const at = (run: number) =>
              solved({ currentUtilisation, ambientTemperature, ratedRunDuration, timeConstant, runDuration: run, restDuration: 3600 })
            expect(at(10).maxRunDuration).toBeLessThanOrEqual(ratedRunDuration)
            const longer = dutyCycle({
              ...duty,
              currentUtilisation,
              ambientTemperature,
              ratedRunDuration,
              timeConstant,
              runDuration: ratedRunDuration * 1.01,
              restDuration: 3600,
            })
            expect([longer.sustained, longer.runsBeforeRest, longer.requiredRestDuration]).toEqual([false, 0, null])
            expect(longer.cautions.find((c) => c.code === "longer-run")?.severity).toBe("warning")
          }
  })

  it("warns of a burning case even where a higher limit is typed in", () => {
    const codes = (limitTemperature: number) =>
      dutyCycle({ ...duty, runDuration: 120, restDuration: 1080, temperatureLimit: limitTemperature }).cautions.map((c) => c.code)
    expect(codes(50)).not.toContain("burns")
    expect(codes(52)).toContain("burns")
  })
})
