import { readQuantity } from "../../src/quantity/index.js"
import {
  burnTemperature,
  coldTouch,
  contactTimes,
  iecTouch,
  isoTouchLimit,
  lowBurnTime,
  medicalTouch,
  painThreshold,
  type TouchMaterial,
} from "../../src/worn/contact/data-touch.js"
import { touchTemperature } from "../../src/worn/index.js"
import type { Check } from "../helpers/references.js"

const limitBy = (standard: string, material: TouchMaterial, contactTime: number): number | undefined =>
  touchTemperature({ surfaceTemperature: 20, material, contactDuration: contactTime }).limits.find((l) => l.standard.startsWith(standard))
    ?.limit

/** Contact times inside the bands of IEC 62368-1, longest first; the first is past 8 h. */
const iecTimes = [9 * 3600, 3600, 30, 5, 0.5]
const iecBy = (material: TouchMaterial) => iecTimes.map((t) => limitBy("IEC 62368-1", material, t))
const ecmaBy = (material: TouchMaterial) => [3600, 5, 0.5].map((t) => limitBy("ECMA-287", material, t))
const isoLong = (material: TouchMaterial) => [60, 600, 8 * 3600].map((t) => limitBy("ISO 13732-1", material, t))
const temperatures =
  (injury: "reversible" | "lasting"): Check =>
  ({ contact_s }) => ({ temperature_degC: (contact_s as number[]).map((t) => burnTemperature(t, injury)) })
const wornBand = `${iecTouch.wornLow}-${iecTouch.wornHigh}`

/** Touch rows. */
export const touchChecks: Readonly<Record<string, Check>> = {
  "touch-60601-2nd-41": () => ({ limit_degC: medicalTouch.secondEdition }),
  "touch-60601-applied": () => ({
    limit_degC: [
      limitBy("IEC 60601-1", "metal", 30),
      limitBy("IEC 60601-1", "glass", 30),
      limitBy("IEC 60601-1", "plastic", 30),
      limitBy("IEC 60601-1", "plastic", 300),
      limitBy("IEC 60601-1", "plastic", 600),
    ],
  }),
  // the row prints the upper end of the worn band, 43 to 48, and its lower end apart; the solver keeps to the lower
  "touch-62368-1-ts1": () => ({
    limit_metal_degC: [iecTouch.wornHigh, ...iecBy("metal").slice(1)],
    limit_plastic_degC: [iecTouch.wornHigh, ...iecBy("plastic").slice(1)],
    worn_lower_degC: iecBy("metal")[0],
  }),
  "pb-worn-touch-iec62368-ts1": () => ({
    metal_degC: [wornBand, ...iecBy("metal").slice(1)],
    glass_degC: [wornBand, ...iecBy("glass").slice(1, 4), `${iecBy("glass")[4]} (ed. 2), ${iecTouch.secondGlassThirdEdition} (ed. 3)`],
    plastic_degC: [wornBand, ...iecBy("plastic").slice(1)],
  }),
  "touch-62368-ambient-rule": (i) => ({
    compared_degC: touchTemperature({
      surfaceTemperature: i.measured_degC,
      material: "plastic",
      measuredAmbientTemperature: i.test_ambient_degC,
      ambientTemperature: i.claimed_ambient_degC,
    }).comparedTemperature,
  }),
  "pb-worn-touch-iec62368-ambient": () => ({ plastic_limit_degC: limitBy("IEC 62368-1", "plastic", 5) }),
  "touch-c1055-design-times": () => ({ industrial_s: contactTimes.industrial, consumer_s: contactTimes.consumer }),
  "touch-c1055-first-degree": temperatures("reversible"),
  "touch-c1055-second-degree": temperatures("lasting"),
  "touch-ecma287": () => ({ limit_metal_degC: ecmaBy("metal"), limit_nonmetal_degC: ecmaBy("plastic") }),
  "pb-worn-touch-ecma287": () => ({ metal_degC: ecmaBy("metal"), nonmetal_degC: ecmaBy("plastic") }),
  "touch-halving-rule": (i) => ({ time_min: (i.temperature_degC as number[]).map((t) => (lowBurnTime(t) as number) / 60) }),
  "touch-iso13732-1min": () => ({
    threshold_degC: (["metal", "coated-metal", "glass", "plastic", "wood"] as const).map((m) => limitBy("ISO 13732-1", m, 60)),
  }),
  "touch-iso13732-long-contact": () => ({ threshold_degC: isoLong("plastic").slice(1) }),
  "pb-worn-touch-iso13732-long": () => ({
    metal_degC: isoLong("metal"),
    ceramic_glass_stone_degC: isoLong("glass"),
    plastic_wood_degC: isoLong("wood"),
  }),
  "touch-iso13732-short-metal": (i) => ({ threshold_degC: (i.contact_time_s as number[]).map((t) => isoTouchLimit("metal", t)) }),
  "pb-worn-touch-iso13732-half-second": (i) => ({ safe_below_degC: isoTouchLimit("metal", i.contact_s) }),
  "touch-pain-threshold": () => ({ threshold_degC: [painThreshold.chest, painThreshold.foot] }),
  "pb-worn-touch-pain": () => ({ chest_degC: painThreshold.chest, foot_degC: painThreshold.foot }),
  "touch-scald-time": (i) => ({
    time_s: (i.temperature_degC as number[]).map(
      (surface) => touchTemperature({ surfaceTemperature: surface, material: "metal" }).lastingTime,
    ),
  }),
  // skin at 33 °C warmed by 10 K is the lasting-contact limit
  "touch-ultrasound-43": (i) => {
    const out = touchTemperature({ surfaceTemperature: i.skin_start_degC + i.rise_K, material: "plastic", contactDuration: 3600 })
    return out.temperatureMargin === 0 ? { limit_degC: out.limit.low } : {}
  },
  "cold-touch-criteria": () => ({
    pain_degC: coldTouch.pain,
    numbness_degC: coldTouch.numbness,
    frostbite_degC: coldTouch.frostbite,
  }),
  "scald-full-thickness-burn-foundation": (i) => ({
    temperature_degC: (i.temperature_degF as number[]).map((t) => readQuantity("temperature", `${t} degF`)),
  }),
  "pb-worn-burn-time-fahrenheit": (i) => ({
    temperature_degC: (i.temperature_degF as number[]).map((t) => readQuantity("temperature", `${t} degF`)),
  }),
}
