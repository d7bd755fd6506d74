// Published values of motor drivers: how each row is put to motorDriver.
import { motorDriver } from "../../src/converter/index.js"
import type { Check } from "../helpers/references.js"

const bipolar = (supplyVoltage: number, current: number, totalDrop: number) =>
  motorDriver({ supplyVoltage, current, bridge: { type: "bipolar", totalDrop } })

export const driverChecks: Readonly<Record<string, Check>> = {
  // its three transistors conduct all of the time, while off, and while on: together two of them
  "driver-loss-example": (n) => {
    const at = (change: object) =>
      motorDriver({
        supplyVoltage: n.supply_V,
        current: n.current_A,
        bridge: { type: "mosfet", switchResistance: n.resistance_ohm, warmFactor: 1 },
        switching: {
          frequency: n.frequency_Hz,
          duty: n.duty,
          riseTime: (n.supply_V / n.slew_V_per_us) * 1e-6,
          deadTime: n.dead_time_ns * 1e-9,
          diodeDrop: n.diode_V,
          ...change,
        },
      })
    const one = at({}).conductionLoss / 2
    return {
      hs1_W: one,
      hs2_W: one * (1 - n.duty) + at({ riseTime: 0 }).switchingLoss,
      ls2_W: one * n.duty + at({ deadTime: 0 }).switchingLoss,
      total_W: at({}).heat,
    }
  },
  "driver-chopper-formula": (n) => {
    const out = motorDriver({
      supplyVoltage: 5,
      current: n.current_A,
      bridge: { type: "mosfet", switchResistance: (n.high_side_ohm + n.low_side_ohm) / 2, warmFactor: 1 },
    })
    return { loss_W: out.heat, drop_V: out.drop }
  },
  "driver-bipolar-loss": (n) =>
    Object.fromEntries(
      [1, 2].flatMap((k) => {
        const out = bipolar(n.supply_V, n[`current_${k}_A`], n[`drop_${k}_V`])
        return [
          [`heat_${k}_W`, out.heat],
          [`motor_${k}_V`, out.motorVoltage],
        ]
      }),
    ),
}
