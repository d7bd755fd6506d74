import fc from "fast-check"
import * as unitsnet from "unitsnet-js"
import { describe, expect, it } from "vitest"
import {
  factorOf,
  formatNumber,
  formatQuantity,
  fromUnitsNet,
  inUnit,
  type Kind,
  kinds,
  plainUnit,
  quantityPattern,
  type ReadFault,
  readableUnit,
  readQuantity,
  si,
  toUnitsNet,
  unitsNetClasses,
} from "../../src/quantity/index.js"

const all = Object.keys(kinds) as Kind[]
const faultOf = (kind: Kind, value: unknown) => readQuantity(kind, value) as ReadFault

/** Words people write, by the token each stands for; typed from a dictionary of units, not from the sources. */
const words: readonly (readonly [Kind, string, readonly string[]])[] = [
  ["length", "m", ["metre", "metres", "meter", "meters"]],
  ["length", "mm", ["millimetre", "millimetres", "millimeter", "millimeters"]],
  ["length", "cm", ["centimetre", "centimetres", "centimeter", "centimeters"]],
  ["length", "km", ["kilometre", "kilometres", "kilometer", "kilometers"]],
  ["length", "in", ["inch", "inches", '"', "″"]],
  ["length", "ft", ["foot", "feet", "'", "′"]],
  ["length", "yd", ["yard", "yards"]],
  ["mass", "kg", ["kilogram", "kilograms", "kgs"]],
  ["mass", "g", ["gram", "grams"]],
  ["mass", "lb", ["pound", "pounds", "lbs"]],
  ["mass", "oz", ["ounce", "ounces"]],
  ["time", "s", ["second", "seconds", "sec", "secs"]],
  ["time", "ms", ["millisecond", "milliseconds"]],
  ["time", "min", ["minute", "minutes", "mins"]],
  ["time", "h", ["hour", "hours", "hr", "hrs"]],
  ["time", "d", ["day", "days"]],
  ["angle", "rad", ["radian", "radians"]],
  ["angle", "deg", ["degree", "degrees"]],
  ["angle", "rev", ["revolution", "revolutions", "turn", "turns"]],
  ["force", "N", ["newton", "newtons"]],
  ["pressure", "Pa", ["pascal", "pascals"]],
  ["energy", "J", ["joule", "joules"]],
  ["energy", "Wh", ["watt-hour", "watt-hours", "watt hour", "watt hours"]],
  ["power", "W", ["watt", "watts"]],
  ["power", "kW", ["kilowatt", "kilowatts"]],
  ["voltage", "V", ["volt", "volts"]],
  ["voltage", "mV", ["millivolt", "millivolts"]],
  ["current", "A", ["amp", "amps", "ampere", "amperes"]],
  ["current", "mA", ["milliamp", "milliamps", "milliampere", "milliamperes"]],
  ["resistance", "ohm", ["ohms"]],
  ["charge", "Ah", ["amp-hour", "amp-hours", "amp hour", "amp hours"]],
  ["charge", "mAh", ["milliamp-hour", "milliamp-hours", "milliamp hour", "milliamp hours"]],
  ["frequency", "Hz", ["hertz"]],
  ["volume", "L", ["litre", "litres", "liter", "liters", "l"]],
  ["volume", "mL", ["millilitre", "millilitres", "milliliter", "milliliters", "ml"]],
  ["angularSpeed", "rpm", ["rev/min", "r/min", "revs/min"]],
  ["angularSpeed", "deg/s", ["degrees/s", "degree/s", "degrees per second"]],
  ["speed", "km/h", ["kph", "kmh"]],
  ["speed", "m/s", ["metres per second", "meters per second"]],
  ["temperature", "degC", ["C", "celsius", "degrees C", "degrees celsius"]],
  ["temperature", "degF", ["F", "fahrenheit", "degrees F", "degrees fahrenheit"]],
  ["temperature", "K", ["kelvin", "kelvins"]],
  ["ratio", "%", ["percent", "per cent"]],
]

describe("unit words", () => {
  it.each(words)("%s: %s", (kind, token, list) => {
    const pattern = new RegExp(quantityPattern(kind))
    for (const word of list)
      for (const text of [word, word.charAt(0).toUpperCase() + word.slice(1)]) {
        expect(readQuantity(kind, `3 ${text}`), text).toBe(readQuantity(kind, `3 ${token}`))
        expect(pattern.test(`3 ${text}`), text).toBe(true)
      }
    expect(typeof readQuantity(kind, `3 ${token}`)).toBe("number")
  })
})

describe("amounts", () => {
  it.each([
    ["½", 1 / 2],
    ["¼", 1 / 4],
    ["¾", 3 / 4],
    ["⅓", 1 / 3],
    ["⅔", 2 / 3],
    ["⅛", 1 / 8],
    ["⅜", 3 / 8],
    ["⅝", 5 / 8],
    ["⅞", 7 / 8],
  ])("%s, alone, behind a whole number and below nought", (sign, part) => {
    expect(si("length", `${sign} m`)).toBe(part)
    expect(si("length", `2${sign} m`)).toBe(2 + part)
    expect(si("length", `2 ${sign} m`)).toBe(2 + part)
    expect(si("length", `-${sign} m`)).toBe(-part)
    expect(si("length", `−2${sign} m`)).toBe(-2 - part)
    for (const text of [`${sign} m`, `2${sign} m`, `2 ${sign} m`, `-${sign} m`, `−2${sign} m`])
      expect(new RegExp(quantityPattern("length")).test(text), text).toBe(true)
  })
  it.each([
    ["3/8 m", 0.375],
    ["3⁄8 m", 0.375],
    ["1 3/8 m", 1.375],
    ["-1 3/8 m", -1.375],
    ["-0 3/8 m", -0.375],
    ["+1.5 m", 1.5],
    [".5 m", 0.5],
    ["5. m", 5],
    ["5e-1 m", 0.5],
    ["5E+1m", 50],
    ["  2  m  ", 2],
    ["2 ft 3 in", (27 * 254) / 10000],
    ["-2 ft 3 in", (-27 * 254) / 10000],
    ["2' 3½\"", (27.5 * 254) / 10000],
    ["2 ft", (24 * 254) / 10000],
  ] as const)("%s", (text, metres) => {
    expect(Math.abs(si("length", text) - metres)).toBeLessThan(1e-15)
    expect(new RegExp(quantityPattern("length")).test(text)).toBe(true)
  })
  it("in several units, the larger first, each once", () => {
    expect(si("time", "1 d 2 h 3 min 4 s")).toBe(86400 + 7200 + 180 + 4)
    expect(si("time", "1 h 30 min")).toBe(5400)
    expect(si("time", "1 d 4 s")).toBe(86404)
    expect(si("mass", "1 lb 4 oz")).toBeCloseTo(1.25 * 0.45359237, 15)
    const wrong: readonly (readonly [Kind, string])[] = [
      ["time", "30 min 1 h"],
      ["time", "1 h 2 h"],
      ["time", "1 h -30 min"],
      ["time", "1 h +30 min"],
      ["time", "1 h 30"],
      ["length", "3 in 2 ft"],
      ["length", "2 m 3 cm"],
      ["mass", "1 kg 4 oz"],
      ["voltage", "1 V 2 mV"],
    ]
    for (const [kind, text] of wrong) {
      expect(faultOf(kind, text).code, text).toBe("wrong-unit")
      expect(new RegExp(quantityPattern(kind)).test(text), text).toBe(false)
    }
  })
  it("in at most a hundred characters", () => {
    expect(si("length", `${" ".repeat(97)}2 m`)).toBe(2)
    const long = faultOf("length", `${" ".repeat(98)}2 m`)
    expect(long.code).toBe("not-a-number")
    expect(long.expected).toMatch(/in at most 100 characters$/)
  })
  it("with a comma: what to write instead", () => {
    expect(faultOf("length", "1,5 m").expected).toBe("'1.5 m' (a point for decimals)")
    expect(faultOf("length", "-12,25 m").expected).toBe("'-12.25 m' (a point for decimals)")
    expect(faultOf("length", "1,500 m").expected).toBe("'1.500 m' or '1500 m' (a point for decimals, nothing for thousands)")
    expect(faultOf("length", "4 kg").expected).toBe("length: a number in m, or a string with one of m, mm, cm, km, um, in, ft, yd")
    expect(faultOf("ratio", "4 kg").expected).toBe("ratio: a number in 1, or a string with one of %, ppm, x")
  })
  it("that are no finite number", () => {
    expect(faultOf("length", Number.POSITIVE_INFINITY).code).toBe("not-finite")
    expect(faultOf("length", "1e308 km").code).toBe("not-finite")
    expect(faultOf("length", { Meters: Number.NaN }).code).toBe("not-finite")
    expect(faultOf("length", null).code).toBe("wrong-type")
    expect(faultOf("damping", { Meters: 1 }).code).toBe("wrong-type")
    expect(() => si("length", "4 kg")).toThrow(/4 kg is not a length: a number in m/)
  })
})

describe("patterns", () => {
  const numbers = ["2", "-2.5", "+.5", "1e3", "1 1/2", "½", "3 ¼", "−7", "2.", "", "x", "1/", "e3", "--2", "1 2", "1.2.3"]
  const signed = (unit: string) => [
    unit,
    unit
      .replace("ohm", "Ω")
      .replace("deg", "°")
      .replace(/^u/, "µ")
      .replace(/2/, "²")
      .replace(/3/, "³")
      .replace(/4/, "⁴")
      .replace(/ /g, "·"),
    unit.replace(/^(.*)\/(\w+)\/K$/, "$1/($2·K)"),
    unit.replace(/^u/, "μ"),
    unit.toUpperCase(),
    `${unit}z`,
  ]
  it.each(all)("of %s take exactly what is read", (kind) => {
    const pattern = new RegExp(quantityPattern(kind))
    const units = [...new Set([...Object.keys(kinds[kind].units).flatMap(signed), "", "kg", "W/(m·K)", "constructor"])]
    let taken = 0
    for (const unit of units)
      for (const number of numbers)
        for (const text of [`${number} ${unit}`, `${number}${unit}`]) {
          const reads = typeof readQuantity(kind, text) === "number"
          if (reads) taken++
          expect(pattern.test(text), `'${text}'`).toBe(reads)
        }
    expect(taken).toBeGreaterThan(10)
  })
  it("plain units have no sign a keyboard lacks", () => {
    expect(plainUnit("Ω·mm²/m")).toBe("ohm mm2/m")
    expect(plainUnit("W/(m²·K)")).toBe("W/m2/K")
    expect(plainUnit("µΩ")).toBe("uohm")
    expect(plainUnit("cm³")).toBe("cm3")
    expect(plainUnit("mm⁴")).toBe("mm4")
    expect(plainUnit("°C")).toBe("degC")
  })
})

/** Unit each size is shown in and the SI size at which it takes over; a choice of the library, changed only on purpose. */
const shown: Readonly<Record<Kind, string>> = {
  length: "µm 0, mm 0.0001, m 2",
  area: "mm² 0, cm² 0.001, m² 0.1",
  volume: "mm³ 0, cm³ 0.00001, L 0.001, m³ 1",
  mass: "g 0, kg 1",
  time: "ms 0, s 0.1, min 300, h 7200",
  angle: "° 0",
  angularSpeed: "°/s 0, rpm 30",
  angularAcceleration: "°/s² 0",
  speed: "mm/s 0, m/s 0.5",
  acceleration: "m/s² 0",
  force: "mN 0, N 0.1, kN 10000",
  moment: "mN m 0, N m 0.1",
  pressure: "Pa 0, kPa 1000, MPa 1000000, GPa 1000000000",
  energy: "mJ 0, J 0.1, Wh 3600",
  power: "mW 0, W 0.1, kW 10000",
  temperature: "°C 0",
  temperatureDifference: "K 0",
  voltage: "mV 0, V 0.1",
  current: "µA 0, mA 0.001, A 0.1",
  resistance: "µΩ 0, mΩ 0.0001, Ω 1, kΩ 10000",
  charge: "C 0, mAh 3.6, Ah 3600",
  capacitance: "nF 0, µF 0.000001, mF 0.01, F 1",
  inductance: "nH 0, µH 0.000001, mH 0.001, H 1",
  frequency: "Hz 0, kHz 1000, MHz 1000000",
  density: "kg/m³ 0",
  areaDensity: "g/m² 0, kg/m² 1",
  linearDensity: "g/m 0, kg/m 1",
  forcePerLength: "N/m 0, N/mm 10000",
  rotationalStiffness: "N m/rad 0",
  damping: "N s/m 0",
  secondMoment: "mm⁴ 0, cm⁴ 0.0000001",
  momentOfInertia: "g cm² 0, kg m² 0.001",
  thermalConductivity: "W/(m·K) 0",
  specificHeat: "J/(kg·K) 0",
  heatTransferCoefficient: "W/(m²·K) 0",
  heatFlux: "W/m² 0, kW/m² 10000",
  thermalDiffusivity: "mm²/s 0",
  thermalResistance: "K/W 0",
  heatCapacity: "J/K 0",
  perTemperature: "ppm/K 0, %/K 0.001",
  resistivity: "Ω·mm²/m 0",
  resistancePerLength: "mΩ/m 0, Ω/m 1",
  currentDensity: "A/mm² 0",
  torqueConstant: "mN m/A 0",
  backEmfConstant: "V s/rad 0",
  forceConstant: "N/A 0",
  speedVoltageConstant: "V s/m 0",
  specificEnergy: "J/kg 0, kJ/kg 1000",
  specificPower: "W/kg 0",
  meltingIntegral: "A²·s 0",
  ratio: " 0",
}

describe("showing", () => {
  it.each(all)("%s in the unit of its size, either side of nought", (kind) => {
    const steps = shown[kind].split(", ").map((s) => {
      const cut = s.lastIndexOf(" ")
      return [s.slice(0, cut), Number(s.slice(cut + 1))] as const
    })
    steps.forEach(([unit, from], i) => {
      const next = steps[i + 1]?.[1] ?? Number.POSITIVE_INFINITY
      const inside = Math.min(from * 1.01 || next * 0.001, next * 0.999, 1e300)
      for (const value of [...(from > 0 ? [from] : []), inside, ...(Number.isFinite(next) ? [next * 0.999] : [])]) {
        expect(readableUnit(kind, value), `${value}`).toBe(unit)
        expect(readableUnit(kind, -value), `−${value}`).toBe(unit)
        const text = formatQuantity(kind, value)
        if (unit) expect(text.endsWith(unit), text).toBe(true)
        if (unit)
          expect(Math.abs((readQuantity(kind, text) as number) / value - 1), text).toBeLessThan(kind === "temperature" ? 1e-2 : 5.1e-3)
      }
    })
    // nought in the middle unit, or the larger of two
    expect(readableUnit(kind, 0)).toBe(steps[steps.length > 2 ? 1 : steps.length - 1]?.[0])
    expect(readableUnit(kind, -0)).toBe(readableUnit(kind, 0))
  })

  it("numbers as Intl rounds them to that many digits", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 9.9e6, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        fc.boolean(),
        (size, digits, below) => {
          const value = below ? -size : size
          const options = size >= 10 ** digits ? { maximumFractionDigits: 0 } : { maximumSignificantDigits: digits }
          const text = formatNumber(value, digits)
          const other = new Intl.NumberFormat("en", { ...options, useGrouping: false }).format(value)
          // halves are rounded apart by the two
          if (text !== other)
            expect(Math.abs(Number(text) - Number(other))).toBeLessThanOrEqual(10 ** (Math.floor(Math.log10(size)) - digits + 1))
          expect(text.replace(/[-.]/g, "").replace(/^0+/, "").length).toBeLessThanOrEqual(Math.max(digits, Math.ceil(Math.log10(size)) + 1))
          if (size < 10 ** digits) expect(Math.abs(Number(text) / value - 1)).toBeLessThanOrEqual(0.5 * 10 ** (1 - digits) * 1.0001)
          else expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.5)
        },
      ),
      { numRuns: 400, seed: 51 },
    )
  })
  it.each([
    [0, 4, "0"],
    [-0, 4, "0"],
    [1e7, 4, "1e+7"],
    [-1.23456e7, 4, "-1.235e+7"],
    [9999999, 4, "9999999"],
    [1e-4, 4, "0.0001"],
    [9.9e-5, 4, "9.9e-5"],
    [0.000123456, 3, "0.000123"],
    [10000, 4, "10000"],
    [12345.6, 4, "12346"],
    [9999.6, 4, "10000"],
    [1234.56, 4, "1235"],
    [1.5, 4, "1.5"],
    [999.96, 4, "1000"],
    [123.456, 6, "123.456"],
  ])("%d to %d digits: %s", (value, digits, text) => expect(formatNumber(value, digits)).toBe(text))
  // NAMES: two or three figures, never more than the uncertainty allows, "9 %" and not "9.12%"
  it.each([
    [0.5176, "0.518"],
    [11.435, "11.4"],
    [1532.4, "1530"],
    [-98765.4, "-98800"],
    // a whole number is a count, or was given so
    [1532, "1532"],
    [1_234_567, "1234567"],
    [1.2e-5, "0.000012"],
  ])("%d as people read it: %s", (value, text) => expect(Number(formatNumber(value))).toBe(Number(text)))
  it.each([
    [0.0912, "9 %"],
    [0.03374, "3.4 %"],
    [0.00351, "0.35 %"],
    [0.1249, "12 %"],
    [0.125, "12.5 %"],
    [1.046, "105 %"],
    [-0.8213, "-82 %"],
    [0, "0 %"],
    [1, "100 %"],
  ])("the share %d as per cent: %s", (value, text) => expect(formatQuantity("ratio", value, "%")).toBe(text))
  it("more digits only where they are asked for", () => {
    expect(formatQuantity("ratio", 0.0912, "%", 3)).toBe("9.12 %")
    expect(formatQuantity("length", 1.23456, "m", 5)).toBe("1.2346 m")
  })
  it("quantities with a space before the unit, but none before a degree sign", () => {
    expect(formatQuantity("angle", Math.PI, "°")).toBe("180°")
    expect(formatQuantity("length", 0.0254, "in")).toBe("1 in")
    expect(formatQuantity("ratio", 0.12345)).toBe("0.123")
    expect(formatQuantity("ratio", 0.12345, undefined, 2)).toBe("0.12")
    expect(formatQuantity("length", 1.23456, "m")).toBe("1.23 m")
    expect(() => formatQuantity("length", 1, "kg")).toThrow("length has no unit kg")
    expect(inUnit("temperature", 100, "degF")).toBeCloseTo(212, 12)
    expect(factorOf("length", "toString")).toBeUndefined()
  })
})

describe("unitsnet-js objects", () => {
  const bridged = all.filter((kind) => kinds[kind].net !== null)
  it.each(bridged)("%s goes over and comes back", (kind) => {
    const made = toUnitsNet(unitsnet, kind, 2.5) as object
    expect(made.constructor).toBe((unitsnet as unknown as Record<string, unknown>)[unitsNetClasses[kind] as string])
    expect((made as Record<string, number>)[kinds[kind].net as string]).toBe(2.5)
    expect(fromUnitsNet(kind, made)).toBe(2.5)
  })
  it("of another kind are refused, and a module without the class is named", () => {
    expect(() => fromUnitsNet("length", unitsnet.Mass.FromGrams(1))).toThrow("not a unitsnet-js length")
    expect(() => toUnitsNet({}, "length", 1)).toThrow("this unitsnet-js module has no Length.FromMeters")
    expect(() => toUnitsNet({ Length: {} }, "length", 1)).toThrow("this unitsnet-js module has no Length.FromMeters")
    expect(toUnitsNet(unitsnet, "meltingIntegral", 1)).toBeNull()
  })
})
