/** Materials of a touched surface. */
export type TouchMaterial = "metal" | "coated-metal" | "glass" | "plastic" | "wood"

export const touchMaterials: Readonly<Record<TouchMaterial, string>> = {
  metal: "bare metal",
  "coated-metal": "coated metal",
  glass: "glass, ceramic or stone",
  plastic: "plastic",
  wood: "wood",
}

type Limits = Readonly<Record<TouchMaterial, number>>
const all = (value: number): Limits => ({ metal: value, "coated-metal": value, glass: value, plastic: value, wood: value })
const isMetal = (material: TouchMaterial) => material === "metal" || material === "coated-metal"

/** Burn thresholds, °C (ISO 13732-1): `metal1s` and `metal10s` are the lower ends of the bands 65–70 and 55–57. */
export const isoTouch = {
  metal1s: 65,
  metal10s: 55,
  minute: { metal: 51, "coated-metal": 51, glass: 56, plastic: 60, wood: 60 } as Limits,
  tenMinutes: all(48),
  eightHours: all(43),
} as const

/** Touch limits TS1, °C (IEC 62368-1, table 38). Worn for more than 8 h the table gives 43 to 48. */
export const iecTouch = {
  wornLow: 43,
  wornHigh: 48,
  held: all(48),
  minute: { metal: 51, "coated-metal": 51, glass: 56, plastic: 60, wood: 60 } as Limits,
  tenSeconds: { metal: 60, "coated-metal": 60, glass: 71, plastic: 77, wood: 107 } as Limits,
  // glass: 80 in the second edition, 85 in the third
  second: { metal: 70, "coated-metal": 70, glass: 80, plastic: 94, wood: 140 } as Limits,
  secondGlassThirdEdition: 85,
} as const

/** Touch limits, °C, metal and other materials (ECMA-287). */
export const ecmaTouch = { continuous: 43, tenSeconds: { metal: 55, other: 65 }, second: { metal: 65, other: 85 } } as const

/** Limits of parts that touch a patient, °C (IEC 60601-1, table 24), and the second edition's limit of 1988. */
export const medicalTouch = {
  underMinute: { metal: 51, "coated-metal": 51, glass: 56, plastic: 60, wood: 60 } as Limits,
  tenMinutes: 48,
  longer: 43,
  secondEdition: 41,
} as const

/** Onset of pain under lasting contact, °C. */
export const painThreshold = { chest: 42, foot: 45 } as const

/** Contact temperature of a finger on a cold surface, °C: pain, numbness, frostbite (ColdSurf summary). */
export const coldTouch = { pain: 15, numbness: 7, frostbite: 0 } as const

/** Accepted contact times, s (ASTM C1055): industrial and consumer surfaces. */
export const contactTimes = { industrial: 5, consumer: 60 } as const

/** Threshold by ISO 13732-1; between printed times the longer one counts, and materials without a short-contact value take the 1 min one. */
export function isoTouchLimit(material: TouchMaterial, time: number): number {
  if (time <= 10 && isMetal(material)) return time <= 1 ? isoTouch.metal1s : isoTouch.metal10s
  if (time <= 60) return isoTouch.minute[material]
  return time <= 600 ? isoTouch.tenMinutes[material] : isoTouch.eightHours[material]
}

/** Limit TS1 of IEC 62368-1; past 8 h the lower end of its range. */
export function iecTouchLimit(material: TouchMaterial, time: number): number {
  if (time < 1) return iecTouch.second[material]
  if (time < 10) return iecTouch.tenSeconds[material]
  if (time < 60) return iecTouch.minute[material]
  return time < 8 * 3600 ? iecTouch.held[material] : iecTouch.wornLow
}

/** Limit of ECMA-287. */
export function ecmaTouchLimit(material: TouchMaterial, time: number): number {
  const group = isMetal(material) ? "metal" : "other"
  if (time < 1) return ecmaTouch.second[group]
  return time < 10 ? ecmaTouch.tenSeconds[group] : ecmaTouch.continuous
}

/** Limit of IEC 60601-1 for applied parts. */
export function medicalTouchLimit(material: TouchMaterial, time: number): number {
  if (time < 60) return medicalTouch.underMinute[material]
  return time < 600 ? medicalTouch.tenMinutes : medicalTouch.longer
}

/**
 * Skin temperature, °C, that injures after `time` seconds (ASTM C1055, figure 1): reversibly or through the epidermis.
 *
 * @example
 * ```ts
 * import { burnTemperature } from 'alula/worn'
 * burnTemperature(60, 'lasting') // => 52.80
 * ```
 */
export function burnTemperature(time: number, injury: "reversible" | "lasting"): number {
  const x = Math.log(1000 * time)
  return injury === "reversible" ? 39.468 - 0.41352 * x + 190.6 / x : 15.005 + 0.51907 * x + 352.97 / x
}

/** Longest contact the curves were drawn for, s. */
export const burnCurveEnd = 21600

/** Time, s, after which skin at this temperature is injured; null where that is past the curve's six hours. */
export function burnTime(temperature: number, injury: "reversible" | "lasting"): number | null {
  if (temperature < burnTemperature(burnCurveEnd, injury)) return null
  if (injury === "reversible") {
    const b = temperature - 39.468
    return Math.exp((-b + Math.sqrt(b ** 2 + 4 * 0.41352 * 190.6)) / (2 * 0.41352)) / 1000
  }
  const b = temperature - 15.005
  // the smaller root, written so that nothing cancels
  return Math.exp((2 * 352.97) / (b + Math.sqrt(b ** 2 - 4 * 0.51907 * 352.97))) / 1000
}

/** Time to a low-temperature burn, s: six hours at 44 °C, half for each degree more (Moritz and Henriques 1947); null outside 44 to 51 °C. */
export function lowBurnTime(temperature: number): number | null {
  return temperature < 44 || temperature > 51 ? null : burnCurveEnd * 0.5 ** (temperature - 44)
}
