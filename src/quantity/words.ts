/** Words that people write for a unit: each stands for a unit token, in the singular, the plural or short. */
const words: Readonly<Record<string, readonly string[]>> = {
  m: ["metre", "metres", "meter", "meters"],
  mm: ["millimetre", "millimetres", "millimeter", "millimeters"],
  cm: ["centimetre", "centimetres", "centimeter", "centimeters"],
  km: ["kilometre", "kilometres", "kilometer", "kilometers"],
  in: ["inch", "inches", '"', "″"],
  ft: ["foot", "feet", "'", "′"],
  yd: ["yard", "yards"],
  kg: ["kilogram", "kilograms", "kgs"],
  g: ["gram", "grams"],
  lb: ["pound", "pounds", "lbs"],
  oz: ["ounce", "ounces"],
  s: ["second", "seconds", "sec", "secs"],
  ms: ["millisecond", "milliseconds"],
  min: ["minute", "minutes", "mins"],
  h: ["hour", "hours", "hr", "hrs"],
  d: ["day", "days"],
  rad: ["radian", "radians"],
  deg: ["degree", "degrees"],
  rev: ["revolution", "revolutions", "turn", "turns"],
  N: ["newton", "newtons"],
  Pa: ["pascal", "pascals"],
  J: ["joule", "joules"],
  W: ["watt", "watts"],
  kW: ["kilowatt", "kilowatts"],
  V: ["volt", "volts"],
  mV: ["millivolt", "millivolts"],
  A: ["amp", "amps", "ampere", "amperes"],
  mA: ["milliamp", "milliamps", "milliampere", "milliamperes"],
  ohm: ["ohms"],
  Ah: ["amp-hour", "amp-hours", "amp hour", "amp hours"],
  mAh: ["milliamp-hour", "milliamp-hours", "milliamp hour", "milliamp hours"],
  Wh: ["watt-hour", "watt-hours", "watt hour", "watt hours"],
  Hz: ["hertz"],
  L: ["litre", "litres", "liter", "liters", "l"],
  mL: ["millilitre", "millilitres", "milliliter", "milliliters", "ml"],
  rpm: ["rev/min", "r/min", "revs/min"],
  "km/h": ["kph", "kmh"],
  "deg/s": ["degrees/s", "degree/s", "degrees per second"],
  "m/s": ["metres per second", "meters per second"],
  degC: ["C", "celsius", "degrees C", "degrees celsius"],
  degF: ["F", "fahrenheit", "degrees F", "degrees fahrenheit"],
  K: ["kelvin", "kelvins"],
  "%": ["percent", "per cent"],
}

const tokens = new Map(Object.entries(words).flatMap(([token, all]) => all.map((word) => [word, token] as const)))

/** Every word that stands for one of these unit tokens. */
export function wordsFor(units: readonly string[]): readonly string[] {
  return units.flatMap((unit) => words[unit] ?? [])
}

/** The unit token that a word stands for, or the word itself; a capital first letter makes no difference. */
export function unitOfWord(word: string): string {
  return tokens.get(word) ?? tokens.get(word.charAt(0).toLowerCase() + word.slice(1)) ?? word
}

/** Larger units that are written together with smaller ones of their kind, such as 2 ft 3 in. */
export const compounds: Readonly<Record<string, readonly string[] | undefined>> = {
  length: ["ft", "in"],
  mass: ["lb", "oz"],
  time: ["d", "h", "min", "s"],
}
