import { heatStress } from "../../src/worn/index.js"
import type { Check } from "../helpers/references.js"

const wbgt = (wetBulb: number, globe: number, air: number) =>
  heatStress({ metabolicRate: 300, wetBulbTemperature: wetBulb, globeTemperature: globe, ambientTemperature: air }).wbgt

/** Heat rows that are not with the loads. */
export const heatChecks: Readonly<Record<string, Check>> = {
  "wbgt-component-shares": (i) => {
    const base = wbgt(20, 30, 30)
    return {
      wet_bulb_K: wbgt(20 + i.rise_K, 30, 30) - base,
      globe_K: wbgt(20, 30 + i.rise_K, 30) - base,
      air_K: wbgt(20, 30, 30 + i.rise_K) - base,
      globe_20K_above_air_adds_K: wbgt(20, 50, 30) - base,
    }
  },
  "metabolic-class-small-wearer": (i) => {
    // the mass that gives a wearer of 1.44 m the row's body surface, by Du Bois
    const bodyMass = (i.area_m2 / (0.007184 * 144 ** 0.725)) ** (1 / 0.425)
    const { standardMetabolicRate } = heatStress({ metabolicRate: 100, wbgt: 20, bodyMass, stature: 1.44 })
    return { rate_W: (i.class_W_per_m2 as number[]).map((c) => (c * 1.8 * 100) / standardMetabolicRate) }
  },
}
