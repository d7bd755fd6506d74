import { bandAcross, bandField, optionsFrom, type SiOf, type Solver, solver } from "../../../solver/index.js"
import {
  burnCurveSource,
  childScaldSource,
  coldTouchSource,
  ecmaTouchSource,
  iecTouchSource,
  isoTouchSource,
  lowBurnSource,
  medicalTouchSource,
  painSource,
  touchRoomSource,
} from "../../sources-around.js"
import {
  burnTime,
  ecmaTouchLimit,
  iecTouchLimit,
  isoTouchLimit,
  lowBurnTime,
  medicalTouchLimit,
  painThreshold,
  touchMaterials,
} from "../data-touch.js"
import { touchCautions } from "./cautions.js"
import type { TouchTemperature, TouchTemperatureCaution, TouchTemperatureInput } from "./types.js"

export type { TouchLimit, TouchTemperature, TouchTemperatureInput } from "./types.js"

const standards = [
  ["ISO 13732-1", isoTouchLimit],
  ["IEC 62368-1 TS1", iecTouchLimit],
  ["ECMA-287", ecmaTouchLimit],
  ["IEC 60601-1 applied parts", medicalTouchLimit],
] as const

const limitOf = (index: number, si: SiOf<TouchTemperatureInput>) =>
  (standards[index] as (typeof standards)[number])[1](si.material, si.contactDuration)
const inUseOf = (si: SiOf<TouchTemperatureInput>) =>
  si.surfaceTemperature + Math.max(0, si.ambientTemperature - si.measuredAmbientTemperature)

function solve(si: SiOf<TouchTemperatureInput>): TouchTemperature {
  const temperatureInUse = inUseOf(si)
  const limits = standards.map(([standard, of]) => {
    const limit = of(si.material, si.contactDuration)
    return { standard, limit, temperatureMargin: limit - temperatureInUse }
  })
  const each = limits.map((l) => l.limit)
  const limit = bandAcross(each)
  const times = [burnTime(temperatureInUse, "reversible"), burnTime(temperatureInUse, "lasting"), lowBurnTime(temperatureInUse)] as const
  const known = times.filter((t) => t !== null)
  return {
    comparedTemperature: si.surfaceTemperature,
    temperatureInUse,
    minTemperature: si.surfaceTemperature + Math.min(0, si.ambientTemperature - si.measuredAmbientTemperature),
    limit,
    temperatureMargin: limit.low - temperatureInUse,
    tooHot: temperatureInUse > limit.low,
    painful: temperatureInUse >= painThreshold.chest,
    reversibleTime: times[0],
    lastingTime: times[1],
    halvingTime: times[2],
    burnTime: known.length ? Math.min(...known) : null,
    limits,
  }
}

const inRange = (value: number | null) => (value === null ? 0 : 1)

/**
 * Whether a surface burns the skin that touches it: published limits for the material and time, their spread, and how long
 * skin would last.
 *
 * Formula: T_u = T + max(0, T_w − T_m), with T the surface temperature measured in surroundings at T_m and T_w the
 * surroundings where it is worn. It is held against the lowest limit of ISO 13732-1, IEC 62368-1 (TS1), ECMA-287 and
 * IEC 60601-1 for the material and contact time; between printed times the stricter one counts. Burn times are those of
 * ASTM C1055 solved for time, with x = ln(1000·t/s): T_u = 39.468 − 0.41352·x + 190.60/x (reversible) and T_u = 15.005
 * + 0.51907·x + 352.97/x (through the epidermis), and 6 h · 0.5^(T_u − 44) between 44 and 51 °C. Skin is taken to reach
 * the surface's temperature, the safe side for poor conductors. Valid for healthy adult skin and less than a tenth of
 * it (nor a tenth of the head, nor the face's eyes, nose and mouth); the curves for 1 s to 6 h.
 *
 * **Inputs**
 * - `surfaceTemperature`: surface temperature as measured [T_s; −40 to 300 °C]
 * - `material`: material [metal, coated-metal, glass, plastic or wood]
 * - `contactDuration`: time of contact [t_k; 1 ms to 24 h; default 8 h]
 * - `measuredAmbientTemperature`: ambient temperature when measured [T_m; −40 to 60 °C; default 25 °C]
 * - `ambientTemperature`: ambient temperature where worn [T_w; −40 to 60 °C; default 25 °C]
 *
 * **Results**
 *
 * `comparedTemperature`: temperature the equipment standard compares [T_c; °C]; `temperatureInUse`: temperature where
 * worn [T_u; °C]; `minTemperature`: minimum temperature to expect [T_k; °C]; `limit`: published limits [T_l to T_h;
 * °C]; `temperatureMargin`: margin to the lower limit [dT; K]; `tooHot`: too hot [yes or no]; `painful`: painful in
 * lasting contact [yes or no]; `reversibleTime`: time to reversible injury [t_1; s]; `lastingTime`: time to injury
 * through the epidermis [t_2; s]; `halvingTime`: time by the halving rule [t_3; s]; `burnTime`: shortest of these
 * times [t_b; s]; `limits`: limits [list].
 *
 * **Symbols of the working**
 *
 * T_1: limit of ISO 13732-1 [°C]; T_2: limit TS1 of IEC 62368-1 [°C]; T_3: limit of ECMA-287 [°C]; T_4: limit of IEC
 * 60601-1 [°C]; y: temperature where worn, in °C; f_1: within six hours by the first curve; f_2: within six hours by
 * the second curve; f_3: within 44 to 51 °C.
 *
 * **Sources**
 * - ISO: ISO 13732-1, Ergonomics of the thermal environment: contact with hot surfaces, 2006, burn thresholds for
 *   short contact, 1 min, 10 min and 8 h (not verified against the document)
 * - IEC: IEC 62368-1, Audio/video, information and communication technology equipment: safety, 2018, table 38, touch
 *   limits TS1 (not verified against the document)
 * - Ecma International: ECMA-287, Safety of electronic equipment, 2nd edition, 2002, touch temperature table, as
 *   quoted in an engineering note
 * - IEC: IEC 60601-1, Medical electrical equipment, 2005, table 24, applied parts; 41 °C in the second edition of 1988
 *   (not verified against the document)
 * - ASTM: ASTM C1055, Standard guide for heated system surface conditions that produce contact burn injuries, 2020,
 *   figure 1, equations of both curves (not verified against the document)
 * - A. R. Moritz, F. C. Henriques: Studies of thermal injury II: the relative importance of time and surface
 *   temperature, American Journal of Pathology 23, 695–720, 1947, six hours at 44 °C, about half for each degree more
 *   up to 51 °C (not verified against the document)
 * - NASA Johnson Space Center: Touch temperature limits, engineering note after E. Ungar and K. Stroud, 2010, pain
 *   from 42 °C (chest) to 45 °C (foot)
 * - various: Messages of three members of the standard's committee on a mailing list of product-safety engineers,
 *   2020, limits of IEC 62368-1 table 38 are compared with the value measured at 25 °C
 * - TNO and partners: Temperature limit values for cold touchable surfaces, final report of the ColdSurf project,
 *   summary: contact temperature of a finger for pain 15 °C, numbness 7 °C, frostbite 0 °C
 * - Bothin Burn Center; Burn Foundation: Burn safety facts and prevention of scald injuries, children's skin burns
 *   faster; no separate seconds are printed
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { touchTemperature } from 'alula/worn'
 * const driver = touchTemperature({ surfaceTemperature: '46 degC', material: 'metal', ambientTemperature: '32 degC' })
 * driver.temperatureInUse // => 53
 * driver.limit.low // => 43
 * driver.tooHot // => true
 * ```
 */
export const touchTemperature: Solver<TouchTemperatureInput, TouchTemperature, never, TouchTemperatureCaution> = /* @__PURE__ */ solver<
  TouchTemperatureInput,
  TouchTemperature,
  never,
  TouchTemperatureCaution
>("touchTemperature", "Whether a surface burns the skin that touches it", solve, () => ({
  input: {
    surfaceTemperature: {
      kind: "temperature",
      symbol: "T_s",
      label: "surface temperature as measured",
      min: -40,
      max: 300,
      typical: [25, 80],
    },
    material: { kind: "choice", label: "material", options: optionsFrom(touchMaterials, (key) => touchMaterials[key]) },
    contactDuration: {
      kind: "time",
      symbol: "t_k",
      label: "time of contact",
      min: "1 ms",
      max: "24 h",
      typical: ["0.5 s", "8 h"],
      default: "8 h",
    },
    measuredAmbientTemperature: {
      kind: "temperature",
      symbol: "T_m",
      label: "ambient temperature when measured",
      min: -40,
      max: 60,
      typical: [15, 30],
      default: 25,
    },
    ambientTemperature: {
      kind: "temperature",
      symbol: "T_w",
      label: "ambient temperature where worn",
      min: -40,
      max: 60,
      typical: [0, 40],
      default: 25,
    },
  },
  output: {
    comparedTemperature: { kind: "temperature", symbol: "T_c", label: "temperature the equipment standard compares" },
    temperatureInUse: { kind: "temperature", symbol: "T_u", label: "temperature where worn" },
    minTemperature: { kind: "temperature", symbol: "T_k", label: "minimum temperature to expect" },
    limit: bandField("temperature", "published limits", {
      symbols: ["T_l", "T_h"],
      labels: ["lower published limit", "upper published limit"],
    }),
    temperatureMargin: { kind: "temperatureDifference", symbol: "dT", label: "margin to the lower limit" },
    tooHot: { kind: "flag", label: "too hot" },
    painful: { kind: "flag", label: "painful in lasting contact" },
    reversibleTime: { kind: "time", symbol: "t_1", label: "time to reversible injury" },
    lastingTime: { kind: "time", symbol: "t_2", label: "time to injury through the epidermis" },
    halvingTime: { kind: "time", symbol: "t_3", label: "time by the halving rule" },
    burnTime: { kind: "time", symbol: "t_b", label: "shortest of these times" },
    limits: {
      kind: "list",
      label: "limits",
      of: {
        kind: "group",
        label: "limit",
        fields: {
          standard: { kind: "text", label: "standard" },
          limit: { kind: "temperature", label: "limit" },
          temperatureMargin: { kind: "temperatureDifference", label: "margin" },
        },
      },
    },
  },
  example: { surfaceTemperature: "46 degC", material: "metal", ambientTemperature: "32 degC" },
  formulae: [
    { symbol: "T_c", meaning: "temperature the equipment standard compares", is: "T_s" },
    { symbol: "T_u", meaning: "temperature where worn, the difference in surroundings added", is: "T_s + max(0 K, T_w - T_m)" },
    { symbol: "T_k", meaning: "coldest to expect", is: "T_s + min(0 K, T_w - T_m)" },
    { symbol: "T_1", kind: "temperature", meaning: "limit of ISO 13732-1", given: (si) => limitOf(0, si), source: isoTouchSource },
    {
      symbol: "T_2",
      kind: "temperature",
      meaning: "limit TS1 of IEC 62368-1",
      given: (si) => limitOf(1, si),
      source: iecTouchSource,
    },
    { symbol: "T_3", kind: "temperature", meaning: "limit of ECMA-287", given: (si) => limitOf(2, si), source: ecmaTouchSource },
    {
      symbol: "T_4",
      kind: "temperature",
      meaning: "limit of IEC 60601-1",
      given: (si) => limitOf(3, si),
      source: medicalTouchSource,
    },
    { symbol: "T_l", meaning: "lowest limit", is: "min(T_1, T_2, T_3, T_4)" },
    { symbol: "T_h", meaning: "highest limit", is: "max(T_1, T_2, T_3, T_4)" },
    { symbol: "dT", meaning: "margin to the lowest limit", is: "T_l - T_u" },
    { symbol: "y", kind: "number", meaning: "temperature where worn, in °C", is: "(T_u - 273.15 K) / K" },
    { symbol: "f_1", kind: "number", meaning: "within six hours by the first curve", given: (_, out) => inRange(out.reversibleTime) },
    { symbol: "f_2", kind: "number", meaning: "within six hours by the second curve", given: (_, out) => inRange(out.lastingTime) },
    { symbol: "f_3", kind: "number", meaning: "within 44 to 51 °C", given: (_, out) => inRange(out.halvingTime) },
    {
      symbol: "t_1",
      meaning: "first curve solved for time",
      is: "0.001 s * exp((39.468 - y + sqrt((y - 39.468)^2 + 4 * 0.41352 * 190.6)) / (2 * 0.41352))",
      when: "f_1 > 0",
      source: burnCurveSource,
    },
    {
      symbol: "t_2",
      meaning: "second curve solved for time",
      is: "0.001 s * exp(2 * 352.97 / (y - 15.005 + sqrt((y - 15.005)^2 - 4 * 0.51907 * 352.97)))",
      when: "f_2 > 0",
      source: burnCurveSource,
    },
    { symbol: "t_3", meaning: "time by the halving rule", is: "6 h * 0.5^(y - 44)", when: "f_3 > 0", source: lowBurnSource },
    { symbol: "t_b", meaning: "shortest of these times", is: "t_1", when: "f_1 > 0" },
    { symbol: "t_b", meaning: "shortest of these times", is: "min(t_1, t_2)", when: "f_2 > 0" },
    { symbol: "t_b", meaning: "shortest of these times", is: "min(t_b, t_3)", when: "f_3 > 0" },
  ],
  sources: [
    isoTouchSource,
    iecTouchSource,
    ecmaTouchSource,
    medicalTouchSource,
    burnCurveSource,
    lowBurnSource,
    painSource,
    touchRoomSource,
    coldTouchSource,
    childScaldSource,
  ],
  cautions: touchCautions,
}))
