import type { Density, Speed } from "../../quantity/index.js"
import type { Fields } from "../../solver/index.js"
import { gustOverLand } from "./data-wind.js"

/** The wind and how the wearer meets it. */
interface MetWind {
  windSpeed: Speed
  gustFactor?: number
  walkingSpeed?: Speed
  airDensity?: Density
}

/** Field descriptions of the wind that every solver of it takes. */
export const windFields: Fields<MetWind> = {
  windSpeed: { kind: "speed", symbol: "v_w", label: "mean wind speed", min: 0, max: 40, typical: [0, 15] },
  gustFactor: { kind: "number", symbol: "G", label: "gust factor", min: 1, max: 3, typical: [1, 2], default: gustOverLand },
  walkingSpeed: {
    kind: "speed",
    symbol: "v_b",
    label: "walking speed against the wind",
    min: 0,
    max: 10,
    typical: [0, 2],
    default: 1.4,
  },
  airDensity: { kind: "density", symbol: "rho", label: "density of the air", min: 0.1, max: 2, typical: [1, 1.3], default: 1.225 },
}
