// What is left of the capacity in the cold and in the heat.
import type { Source } from "../solver/index.js"
import { COLD_CAPACITY, LEAD_TEMPERATURE, LITHIUM_TEMPERATURE } from "./sources.js"

/** Capacity left at a temperature, against that at 20 to 25 °C; straight lines between the rows, ends held. */
export const capacityAtTemperature: Readonly<Record<"lithium" | "lead", readonly (readonly [celsius: number, fraction: number])[]>> = {
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
}

/** Sources of {@link capacityAtTemperature}. */
export const capacityAtTemperatureSources: readonly Source[] = [LITHIUM_TEMPERATURE, COLD_CAPACITY, LEAD_TEMPERATURE]
