/** Words that people write for a unit, by its token; `+` where one with an s behind it is its plural. */
const written: Readonly<Record<string, string>> = {
  m: "metre+,meter+",
  mm: "millimetre+,millimeter+",
  cm: "centimetre+,centimeter+",
  km: "kilometre+,kilometer+",
  in: 'inch,inches,",″',
  ft: "foot,feet,',′",
  yd: "yard+",
  kg: "kilogram+,kgs",
  g: "gram+",
  lb: "pound+,lbs",
  oz: "ounce+",
  s: "second+,sec+",
  ms: "millisecond+",
  min: "minute+,mins",
  h: "hour+,hr+",
  d: "day+",
  rad: "radian+",
  deg: "degree+",
  rev: "revolution+,turn+",
  N: "newton+",
  Pa: "pascal+",
  J: "joule+",
  W: "watt+",
  kW: "kilowatt+",
  V: "volt+",
  mV: "millivolt+",
  A: "amp+,ampere+",
  mA: "milliamp+,milliampere+",
  ohm: "ohms",
  Ah: "amp-hour+,amp hour+",
  mAh: "milliamp-hour+,milliamp hour+",
  Wh: "watt-hour+,watt hour+",
  Hz: "hertz",
  L: "litre+,liter+,l",
  mL: "millilitre+,milliliter+,ml",
  rpm: "rev/min,r/min,revs/min",
  "km/h": "kph,kmh",
  "deg/s": "degrees/s,degree/s,degrees per second",
  "m/s": "metres per second,meters per second",
  degC: "C,celsius,degrees C,degrees celsius",
  degF: "F,fahrenheit,degrees F,degrees fahrenheit",
  K: "kelvin+",
  "%": "percent,per cent",
}

/** The words of one token, each in the singular and, where it has one with an s, the plural. */
function formsOf(token: string): readonly string[] {
  return (written[token]?.split(",") ?? []).flatMap((word) => (word.endsWith("+") ? [word.slice(0, -1), `${word.slice(0, -1)}s`] : [word]))
}

let tokens: Map<string, string> | undefined

/** Every word that stands for one of these unit tokens. */
export function wordsFor(units: readonly string[]): readonly string[] {
  return units.flatMap(formsOf)
}

/** The unit token that a word stands for, or the word itself; a capital first letter makes no difference. */
export function unitOfWord(word: string): string {
  tokens ??= new Map(Object.keys(written).flatMap((token) => formsOf(token).map((form) => [form, token] as const)))
  return tokens.get(word) ?? tokens.get(word.charAt(0).toLowerCase() + word.slice(1)) ?? word
}

/** Larger units that are written together with smaller ones of their kind, such as 2 ft 3 in. */
export const compounds: Readonly<Record<string, readonly string[] | undefined>> = {
  length: ["ft", "in"],
  mass: ["lb", "oz"],
  time: ["d", "h", "min", "s"],
}
