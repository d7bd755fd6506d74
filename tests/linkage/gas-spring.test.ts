import { describe, expect, it } from "vitest"
import { drawGasSpring, gasForce, gasSpring, gasWork } from "../../src/linkage/index.js"
import { integrate } from "../../src/numeric/index.js"
import { readXml } from "../drawing/xml.js"
import { lehmer } from "./random.js"

const R = 8.31446261815324

/** A gas spring as a bottle of gas with a rod in it: amount, room and temperature give its pressure, the rod's face its push. */
function bottle(random: ReturnType<typeof lehmer>) {
  const rodDiameter = random.real(0.004, 0.012)
  const stroke = random.real(0.05, 0.25)
  const face = (Math.PI / 4) * rodDiameter ** 2
  const gasVolume = face * stroke * random.real(2, 8)
  const amount = random.real(0.01, 0.05)
  const push = (compression: number, kelvin: number) => ((amount * R * kelvin) / (gasVolume - face * compression)) * face
  return { rodDiameter, stroke, gasVolume, push }
}

describe("gasSpring", () => {
  it("pushes as a bottle of gas of that amount does, cold and warm, with friction in and out", () => {
    const random = lehmer(41)
    for (let k = 0; k < 60; k++) {
      const { push, ...own } = bottle(random)
      const frictionForce = random.real(0, 10)
      const compression = random.real(0, own.stroke)
      const materialTemperature = random.real(-20, 60)
      const kelvin = materialTemperature + 273.15
      const force = push(0, 293.15) - frictionForce
      const out = gasSpring({ ...own, force, compression, frictionForce, materialTemperature, extensionSpeed: { low: 0.1, high: 0.4 } })
      const close = (told: number, found: number, relative = 1e-9) =>
        expect(Math.abs(told - found)).toBeLessThanOrEqual(relative * Math.abs(found) + 1e-12)
      close(out.extendingForce, push(compression, kelvin) - frictionForce)
      close(out.compressingForce, push(compression, kelvin) + frictionForce)
      close(out.forceExtended, push(0, kelvin) - frictionForce)
      close(out.forceCompressed, push(own.stroke, kelvin) + frictionForce)
      const step = own.stroke / 1e4
      close(out.stiffness, (push(compression + step, kelvin) - push(compression - step, kelvin)) / (2 * step), 1e-4)
      close(out.forcePerTemperature, (push(compression, kelvin + 1) - push(compression, kelvin)) / push(compression, kelvin))
      const stored = integrate((x) => push(x, kelvin), 0, compression, 1e-12).value
      close(out.storedEnergy, stored, 1e-8)
      // work in is work out and what rubs away
      close(out.compressingWork, stored + frictionForce * compression, 1e-8)
      close(out.compressingWork, out.returnedWork + out.frictionWork, 1e-8)
      close(out.extensionDuration?.low as number, own.stroke / 0.4)
      close(out.extensionDuration?.high as number, own.stroke / 0.1)
    }
  })

  it("is harder pressed at once: its gas stepped without letting heat out", () => {
    const random = lehmer(42)
    for (let k = 0; k < 10; k++) {
      const { push, ...own } = bottle(random)
      const out = gasSpring({ ...own, force: push(0, 293.15), compression: own.stroke })
      const face = (Math.PI / 4) * own.rodDiameter ** 2
      const start = push(0, 293.15) / face
      let [pressure, volume] = [start, own.gasVolume]
      const steps = 20000
      // work of the pressure goes into the gas: cv·n·dT = −p·dV, cv = 5/2·R for a gas of two atoms
      const amount = (pressure * volume) / (R * 293.15)
      let kelvin = 293.15
      for (let i = 0; i < steps; i++) {
        const dV = (-face * own.stroke) / steps
        const halfway = (amount * R * (kelvin - (pressure * dV) / 2 / (2.5 * R * amount))) / (volume + dV / 2)
        kelvin -= (halfway * dV) / (2.5 * R * amount)
        volume += dV
        pressure = (amount * R * kelvin) / volume
      }
      expect(Math.abs(out.fastForce / (pressure * face) - 1)).toBeLessThan(1e-6)
      expect(out.fastForce).toBeGreaterThan(out.compressingForce)
    }
  })

  it("answers alike by its progression and by rod and room", () => {
    const random = lehmer(43)
    const { push, ...own } = bottle(random)
    const one = gasSpring({ ...own, force: 150, compression: own.stroke / 3 })
    const other = gasSpring({
      force: 150,
      stroke: own.stroke,
      compression: own.stroke / 3,
      progression: push(own.stroke, 300) / push(0, 300),
    })
    expect(other.extendingForce).toBeCloseTo(one.extendingForce, 9)
    expect(one.progression).toBeCloseTo(other.progression, 12)
    expect(gasSpring(gasSpring.example).extensionDuration).toEqual({ low: 0.1 / 0.4, high: 0.1 / 0.15 })
    expect(gasSpring({ force: 150, stroke: 0.1, compression: 0.05, progression: 1 }).extensionDuration).toBeNull()
  })

  it("stores force times way where its force does not rise", () => {
    expect(gasForce(120, 1, 0.03, 0.1)).toBe(120)
    expect(gasWork(120, 1, 0.03, 0.1)).toBeCloseTo(3.6, 12)
    expect(gasWork(120, 1 + 1e-12, 0.03, 0.1)).toBeCloseTo(3.6, 9)
  })

  it("draws the force in above the force out, over the whole stroke", () => {
    const picture = drawGasSpring(gasSpring.read(gasSpring.example))
    expect(readXml(picture).name).toBe("svg")
    expect(picture).toContain("compressing")
    expect(picture).not.toMatch(/NaN|Infinity/)
  })
})
