import { all, create } from "mathjs"
import * as unitsnet from "unitsnet-js"
import { describe, expect, it } from "vitest"
import {
  factorOf,
  formatQuantity,
  fromSi,
  fromUnitsNet,
  inUnit,
  type Kind,
  kinds,
  readQuantity,
  si,
  toSi,
  toUnitsNet,
  unitsNetClasses,
} from "../../src/quantity/index.js"

const math = create(all as NonNullable<typeof all>)

/** Our unit token in mathjs's unit syntax; the oracle has no token of its own for some. */
const inMath: Readonly<Record<string, string>> = {
  µm: "um",
  µA: "uA",
  µF: "uF",
  µH: "uH",
  µΩ: "uohm",
  Ω: "ohm",
  mΩ: "mohm",
  kΩ: "kohm",
  "°": "deg",
  d: "day",
  rev: "cycle",
  kgf: "kgf",
  gf: "kgf/1000",
  ozf: "lbf/16",
  mph: "mi/h",
  min: "minute",
  rpm: "cycle/minute",
  kcal: "4184 J",
  "kcal/h": "4184 J/h",
  "1/min": "1/minute",
  "oz/yd2": "oz/yd^2",
  Ah: "A h",
  mAh: "mA h",
  "V/krpm": "V/(1000 cycle/minute)",
  "lbf in/deg": "(1 lbf) * (1 in) / (1 deg)",
  "ozf in/A": "(1 lbf / 16) * (1 in) / (1 A)",
  "%": "0.01",
  ppm: "1e-6",
  x: "1",
  "%/K": "0.01/K",
  "ppm/K": "1e-6/K",
  "1/degC": "1/K",
  "degC/W": "K/W",
  deltaC: "K",
  deltaF: "(5/9) K",
  "A²s": "A^2 s",
  "A2 s": "A^2 s",
  "ohm/kft": "ohm/(1000 ft)",
  psi: "lbf/in^2",
  Nm: "N m",
  mmHg: "133.322387415 Pa",
  mbar: "mbar",
}
const superscripts: Readonly<Record<string, string>> = { "²": "^2", "³": "^3", "⁴": "^4" }
function mathText(unit: string): string {
  const known = inMath[unit]
  if (known !== undefined) return known
  return unit
    .replace(/[²³⁴]/g, (c) => superscripts[c] as string)
    .replace(/([a-zA-Z])([234])(?![\d^])/g, "$1^$2")
    .replace(/·/g, " ")
    .replace(/mΩ/g, "mohm")
    .replace(/Ω/g, "ohm")
    .replace(/°/g, "deg")
    .replace(/kgf/g, "(1 kgf)")
    .replace(/\bgf\b/g, "(kgf/1000)")
    .replace(/ozf/g, "(lbf/16)")
    .replace(/Wh/g, "W h")
    .replace(/rpm/g, "(cycle/minute)")
    .replace(/\bK\b/g, "K")
}

/** Our unit token as the unitsnet-js factory name; tokens that library has no name for are null. */
const netNames: Partial<Record<Kind, Readonly<Record<string, string>>>> = {
  length: {
    m: "Meters",
    mm: "Millimeters",
    cm: "Centimeters",
    km: "Kilometers",
    um: "Micrometers",
    µm: "Micrometers",
    in: "Inches",
    ft: "Feet",
    yd: "Yards",
  },
  area: { m2: "SquareMeters", cm2: "SquareCentimeters", mm2: "SquareMillimeters", in2: "SquareInches", ft2: "SquareFeet" },
  volume: { m3: "CubicMeters", cm3: "CubicCentimeters", mm3: "CubicMillimeters", in3: "CubicInches", L: "Liters", mL: "Milliliters" },
  mass: { kg: "Kilograms", g: "Grams", mg: "Milligrams", lb: "Pounds", oz: "Ounces" },
  time: { s: "Seconds", ms: "Milliseconds", min: "Minutes", h: "Hours", d: "Days" },
  angle: { rad: "Radians", deg: "Degrees", "°": "Degrees", rev: "Revolutions" },
  angularSpeed: { "rad/s": "RadiansPerSecond", "deg/s": "DegreesPerSecond", rpm: "RevolutionsPerMinute" },
  angularAcceleration: { "rad/s2": "RadiansPerSecondSquared", "deg/s2": "DegreesPerSecondSquared" },
  speed: {
    "m/s": "MetersPerSecond",
    "mm/s": "MillimetersPerSecond",
    "cm/s": "CentimetersPerSecond",
    "km/h": "KilometersPerHour",
    "in/s": "InchesPerSecond",
    "ft/s": "FeetPerSecond",
    mph: "MilesPerHour",
  },
  acceleration: { "m/s2": "MetersPerSecondSquared", "mm/s2": "MillimetersPerSecondSquared", "ft/s2": "FeetPerSecondSquared" },
  force: { N: "Newtons", mN: "Millinewtons", kN: "Kilonewtons", kgf: "KilogramsForce", lbf: "PoundsForce", ozf: "OunceForce" },
  moment: {
    "N m": "NewtonMeters",
    "N mm": "NewtonMillimeters",
    "kgf m": "KilogramForceMeters",
    "kgf cm": "KilogramForceCentimeters",
    "kgf mm": "KilogramForceMillimeters",
    "lbf ft": "PoundForceFeet",
    "lbf in": "PoundForceInches",
  },
  pressure: {
    Pa: "Pascals",
    kPa: "Kilopascals",
    MPa: "Megapascals",
    GPa: "Gigapascals",
    "N/mm2": "NewtonsPerSquareMillimeter",
    bar: "Bars",
    mbar: "Millibars",
    psi: "PoundsForcePerSquareInch",
  },
  energy: {
    J: "Joules",
    mJ: "Millijoules",
    kJ: "Kilojoules",
    MJ: "Megajoules",
    Wh: "WattHours",
    kWh: "KilowattHours",
    kcal: "Kilocalories",
  },
  power: { W: "Watts", mW: "Milliwatts", kW: "Kilowatts" },
  temperature: { degC: "DegreesCelsius", K: "Kelvins", degF: "DegreesFahrenheit" },
  temperatureDifference: { K: "Kelvins", deltaC: "DegreesCelsius", deltaF: "DegreesFahrenheit" },
  voltage: { V: "Volts", mV: "Millivolts", kV: "Kilovolts" },
  current: { A: "Amperes", mA: "Milliamperes", uA: "Microamperes" },
  resistance: { ohm: "Ohms", mohm: "Milliohms", uohm: "Microohms", kohm: "Kiloohms" },
  charge: { C: "Coulombs", Ah: "AmpereHours", mAh: "MilliampereHours" },
  capacitance: { F: "Farads", mF: "Millifarads", uF: "Microfarads", nF: "Nanofarads" },
  inductance: { H: "Henries", mH: "Millihenries", uH: "Microhenries", nH: "Nanohenries" },
  frequency: { Hz: "Hertz", kHz: "Kilohertz", MHz: "Megahertz", "1/min": "CyclesPerMinute" },
  density: { "kg/m3": "KilogramsPerCubicMeter", "g/cm3": "GramsPerCubicCentimeter", "lb/ft3": "PoundsPerCubicFoot" },
  areaDensity: { "kg/m2": "KilogramsPerSquareMeter", "g/m2": "GramsPerSquareMeter" },
  linearDensity: { "kg/m": "KilogramsPerMeter", "g/m": "GramsPerMeter", "lb/ft": "PoundsPerFoot" },
  forcePerLength: {
    "N/m": "NewtonsPerMeter",
    "N/mm": "NewtonsPerMillimeter",
    "kN/m": "KilonewtonsPerMeter",
    "kgf/mm": "KilogramsForcePerMillimeter",
    "lbf/in": "PoundsForcePerInch",
  },
  rotationalStiffness: { "N m/rad": "NewtonMetersPerRadian", "N m/deg": "NewtonMetersPerDegree" },
  secondMoment: { m4: "MetersToTheFourth", cm4: "CentimetersToTheFourth", mm4: "MillimetersToTheFourth", in4: "InchesToTheFourth" },
  momentOfInertia: {
    "kg m2": "KilogramSquareMeters",
    "kg mm2": "KilogramSquareMillimeters",
    "g cm2": "GramSquareCentimeters",
    "lb ft2": "PoundSquareFeet",
  },
  thermalConductivity: { "W/m/K": "WattsPerMeterKelvin" },
  specificHeat: { "J/kg/K": "JoulesPerKilogramKelvin", "kJ/kg/K": "KilojoulesPerKilogramKelvin" },
  heatTransferCoefficient: { "W/m2/K": "WattsPerSquareMeterKelvin" },
  heatFlux: { "W/m2": "WattsPerSquareMeter", "kW/m2": "KilowattsPerSquareMeter" },
  thermalDiffusivity: { "m2/s": "SquareMetersPerSecond", "mm2/s": "Centistokes" },
  heatCapacity: { "J/K": "JoulesPerKelvin", "kJ/K": "KilojoulesPerKelvin" },
  perTemperature: { "1/K": "PerKelvin", "ppm/K": "PpmPerKelvin" },
  resistivity: { "ohm m": "OhmMeters" },
  currentDensity: { "A/m2": "AmperesPerSquareMeter" },
  specificEnergy: { "J/kg": "JoulesPerKilogram", "kJ/kg": "KilojoulesPerKilogram", "Wh/kg": "WattHoursPerKilogram" },
  ratio: { "%": "Percent", ppm: "PartsPerMillion", x: "DecimalFractions" },
}

const everyUnit = (Object.keys(kinds) as Kind[]).flatMap((kind) => Object.keys(kinds[kind].units).map((unit) => ({ kind, unit })))
const siText: Partial<Record<Kind, string>> = { ratio: "1", temperature: "K" }

describe("unit factors against mathjs 15 (a general-purpose library)", () => {
  it.each(everyUnit.filter(({ kind }) => kind !== "temperature"))("$kind: $unit", ({ kind, unit }) => {
    const base = siText[kind] ?? mathText(kinds[kind].si)
    const quotient = math.evaluate(
      `(1 ${/^[\d(.]/.test(mathText(unit)) ? "* " : ""}${mathText(unit)}) / (1 ${/^\d/.test(base) ? "* " : ""}${base})`,
    ) as unknown
    const factor = typeof quotient === "number" ? quotient : math.isUnit(quotient) ? (quotient.toSI().toNumeric() as number) : Number.NaN
    const ours = toSi(1, factorOf(kind, unit)!)
    expect(Math.abs(ours / factor - 1), `ours ${ours}, mathjs ${factor}`).toBeLessThan(4e-15)
  })
  it.each([
    ["degC", "degC"],
    ["K", "K"],
    ["degF", "degF"],
  ])("temperature: %s", (unit, theirs) => {
    for (const value of [-40, 0, 20, 98.6, 451]) {
      const kelvins = math.unit(value, theirs).toNumber("K") as number
      expect(toSi(value, factorOf("temperature", unit)!) + 273.15).toBeCloseTo(kelvins, 9)
    }
  })
})

describe("unit factors against unitsnet-js 3 (a general-purpose library)", () => {
  const named = everyUnit.flatMap(({ kind, unit }) => {
    const name = netNames[kind]?.[unit]
    return name && kinds[kind].net ? [{ kind, unit, name }] : []
  })
  it.each(named)("$kind: $unit", ({ kind, unit, name }) => {
    const [className, getter] = [unitsNetClasses[kind]!, kinds[kind].net!]
    const make = (unitsnet as unknown as Record<string, Record<string, (v: number) => Record<string, number>>>)[className]![`From${name}`]
    expect(make, `unitsnet-js has no ${className}.From${name}`).toBeTypeOf("function")
    for (const value of [1, 7.25]) {
      const theirs = make!(value)[getter] as number
      const ours = toSi(value, factorOf(kind, unit)!)
      // that library stores some factors to nine digits only (its own rounding: lb/ft³ 6.8e-9, kgf/mm 2.9e-9)
      expect(Math.abs(ours - theirs), `ours ${ours}, unitsnet-js ${theirs}`).toBeLessThanOrEqual(
        1e-8 * Math.max(Math.abs(ours), 1e-300) + (kind === "temperature" ? 1e-9 : 0),
      )
    }
  })
  it("names what that library lacks: those are held to mathjs alone", () => {
    const lacking = (Object.keys(kinds) as Kind[]).filter((kind) => !kinds[kind].net)
    expect(lacking).toEqual([
      "damping",
      "thermalResistance",
      "resistancePerLength",
      "torqueConstant",
      "backEmfConstant",
      "forceConstant",
      "speedVoltageConstant",
      "specificPower",
      "meltingIntegral",
    ])
  })
})

describe("units written with other signs", () => {
  it.each([
    ["area", "mm²", "mm2"],
    ["volume", "cm³", "cm3"],
    ["secondMoment", "mm⁴", "mm4"],
    ["length", "µm", "um"],
    ["resistance", "mΩ", "mohm"],
    ["resistance", "kΩ", "kohm"],
    ["angle", "°", "deg"],
    ["temperature", "°C", "degC"],
    ["temperature", "°F", "degF"],
    ["moment", "N·m", "N m"],
    ["angularSpeed", "°/s", "deg/s"],
    ["acceleration", "m/s²", "m/s2"],
    ["thermalConductivity", "W/(m·K)", "W/m/K"],
    ["heatTransferCoefficient", "W/(m²·K)", "W/m2/K"],
    ["specificHeat", "J/(kg·K)", "J/kg/K"],
    ["resistivity", "Ω·mm²/m", "ohm mm2/m"],
    ["resistancePerLength", "Ω/km", "ohm/km"],
    ["meltingIntegral", "A²·s", "A2 s"],
    ["thermalResistance", "°C/W", "degC/W"],
    ["perTemperature", "1/°C", "1/degC"],
    ["current", "µA", "uA"],
  ] as const)("%s: %s reads as %s", (kind, unit, plain) => {
    expect(factorOf(kind, plain)).toBeDefined()
    expect(factorOf(kind, unit)).toBe(factorOf(kind, plain))
  })
})

describe("reading quantities", () => {
  it("takes bare SI numbers, strings with units and fractions", () => {
    expect(si("length", 0.5)).toBe(0.5)
    expect(si("length", "4 in")).toBe(0.1016)
    expect(si("length", "1/4 in")).toBe(0.00635)
    expect(si("length", "1 1/2 in")).toBe(0.0381)
    expect(si("length", "-1 1/2 in")).toBe(-0.0381)
    expect(si("length", "35e-2m")).toBe(0.35)
    expect(si("charge", "2.5 Ah")).toBe(9000)
    expect(si("temperature", "32 degF")).toBe(0)
    expect(si("temperatureDifference", "18 deltaF")).toBe(10)
  })
  it("keeps exact ratios exact", () => {
    expect(inUnit("length", 0.35, "mm")).toBe(350)
    expect(inUnit("length", si("length", "12 in"), "ft")).toBe(1)
    expect(inUnit("mass", si("mass", "16 oz"), "lb")).toBe(1)
  })
  it("refuses what is no quantity of the kind", () => {
    const code = (kind: Kind, value: unknown) => (readQuantity(kind, value) as { code: string }).code
    expect(code("length", "4 kg")).toBe("wrong-unit")
    expect(code("length", "four in")).toBe("not-a-number")
    expect(code("length", "1/0 in")).toBe("not-finite")
    expect(code("length", Number.NaN)).toBe("not-finite")
    expect(code("length", {})).toBe("wrong-type")
    expect(code("length", "4 constructor")).toBe("wrong-unit")
    expect(code("temperatureDifference", unitsnet.Temperature.FromKelvins(300))).toBe("wrong-type")
    expect(code("length", unitsnet.Mass.FromKilograms(1))).toBe("wrong-type")
  })
  it("takes unitsnet-js objects by shape and makes them", () => {
    expect(si("length", unitsnet.Length.FromInches(4))).toBeCloseTo(0.1016, 15)
    const made = toUnitsNet(unitsnet, "moment", 5) as { PoundForceInches: number }
    expect(made).toBeInstanceOf(unitsnet.Torque)
    expect(fromUnitsNet("moment", made)).toBe(5)
    expect(toUnitsNet(unitsnet, "damping", 5)).toBeNull()
  })
})

describe("showing quantities", () => {
  it.each([
    ["length", 0.45, "450 mm"],
    ["length", 3.2, "3.2 m"],
    ["angle", Math.PI / 2, "90°"],
    ["current", 0.35, "0.35 A"],
    ["current", 0.02, "20 mA"],
    ["energy", 7200, "2 Wh"],
    ["temperature", 21.5, "21.5 °C"],
    ["charge", 9000, "2.5 Ah"],
    ["mass", 0.35, "350 g"],
    ["resistance", 0.05, "50 mΩ"],
    ["length", -0, "0 mm"],
  ] as const)("%s %d is %s", (kind, value, text) => {
    expect(formatQuantity(kind, value)).toBe(text)
  })
  it("reads back what it shows", () => {
    for (const { kind, unit } of everyUnit) {
      const shown = formatQuantity(kind, 1.25, unit, 17)
      expect(Math.abs((readQuantity(kind, shown) as number) - 1.25), shown).toBeLessThan(1e-12)
    }
    expect(fromSi(toSi(21, factorOf("temperature", "degF")!), factorOf("temperature", "degF")!)).toBeCloseTo(21, 12)
  })
})
