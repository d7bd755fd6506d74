import { packHealth } from "../../src/pack/index.js"
import type { Check } from "../helpers/references.js"
import { answer, at, list } from "./pack-helpers.js"

/** Resistance of one cell from its voltage at two loads. */
const fromLoads = (lightCurrent: number, lightVoltage: number, heavyCurrent: number, heavyVoltage: number) =>
  answer(packHealth, { series: 1, parallel: 1, lightCurrent, lightVoltage, heavyCurrent, heavyVoltage }).resistance

/** Checks by row id. */
export const ages: Record<string, Check> = {
  "dcir-iec61960-two-step": (inputs) => ({
    resistance_mohm:
      1000 * fromLoads(at(inputs, "current1_A"), at(inputs, "voltage1_V"), at(inputs, "current2_A"), at(inputs, "voltage2_V")),
  }),
  "pack-resistance-from-two-points": (inputs) => ({
    internal_resistance_ohm: list(inputs, "voltage_drop_V").map((drop, k) =>
      fromLoads(0, 12, list(inputs, "current_rise_A")[k] as number, 12 - drop),
    ),
  }),
  "pb-pack-effective-resistance-nmc": (inputs) => ({
    resistance_mohm:
      1000 * fromLoads(at(inputs, "current1_A"), at(inputs, "mean_voltage1_V"), at(inputs, "current2_A"), at(inputs, "mean_voltage2_V")),
  }),
}
