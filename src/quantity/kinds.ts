import { degF, kilo, lbf, mega, micro, milli, nano, one, PI } from "./factors.js"
import type { Kind, KindSpec, UnitsOf } from "./units-of.js"

/**
 * Every kind with exact unit ratios. International inch 0.0254 m, pound 0.45359237 kg and standard
 * gravity 9.80665 m/s² are exact by definition (NIST SP 811, 2008 edition, appendix B.8); the
 * calorie is the thermochemical one, 4.184 J (same place).
 */
export const kinds: { readonly [K in Kind]: KindSpec<UnitsOf[K]> } = {
  length: {
    si: "m",
    units: { m: one, mm: milli, cm: [1, 100], km: kilo, um: micro, in: [127, 5000], ft: [381, 1250], yd: [1143, 1250] },
    show: [
      ["µm", 0],
      ["mm", 1e-4],
      ["m", 2],
    ],
    net: "Meters",
  },
  area: {
    si: "m2",
    units: { m2: one, cm2: [1, 1e4], mm2: micro, in2: [16129, 25e6], ft2: [145161, 1562500] },
    show: [
      ["mm²", 0],
      ["cm²", 1e-3],
      ["m²", 0.1],
    ],
    net: "SquareMeters",
  },
  volume: {
    si: "m3",
    units: { m3: one, cm3: micro, mm3: nano, in3: [2048383, 125e9], L: milli, mL: micro },
    show: [
      ["mm³", 0],
      ["cm³", 1e-5],
      ["L", 1e-3],
      ["m³", 1],
    ],
    net: "CubicMeters",
  },
  mass: {
    si: "kg",
    units: { kg: one, g: milli, mg: micro, lb: [45359237, 1e8], oz: [45359237, 16e8] },
    show: [
      ["g", 0],
      ["kg", 1],
    ],
    net: "Kilograms",
  },
  time: {
    si: "s",
    units: { s: one, ms: milli, min: [60, 1], h: [3600, 1], d: [86400, 1] },
    show: [
      ["ms", 0],
      ["s", 0.1],
      ["min", 300],
      ["h", 7200],
    ],
    net: "Seconds",
  },
  angle: {
    si: "rad",
    units: { rad: one, deg: [PI, 180], rev: [2 * PI, 1] },
    show: [["°", 0]],
    net: "Radians",
  },
  angularSpeed: {
    si: "rad/s",
    units: { "rad/s": one, "deg/s": [PI, 180], rpm: [PI, 30] },
    show: [
      ["°/s", 0],
      ["rpm", 30],
    ],
    net: "RadiansPerSecond",
  },
  angularAcceleration: {
    si: "rad/s2",
    units: { "rad/s2": one, "deg/s2": [PI, 180] },
    show: [["°/s²", 0]],
    net: "RadiansPerSecondSquared",
  },
  speed: {
    si: "m/s",
    units: { "m/s": one, "mm/s": milli, "cm/s": [1, 100], "km/h": [5, 18], "in/s": [127, 5000], "ft/s": [381, 1250], mph: [1397, 3125] },
    show: [
      ["mm/s", 0],
      ["m/s", 0.5],
    ],
    net: "MetersPerSecond",
  },
  acceleration: {
    si: "m/s2",
    units: { "m/s2": one, "mm/s2": milli, "ft/s2": [381, 1250] },
    show: [["m/s²", 0]],
    net: "MetersPerSecondSquared",
  },
  force: {
    si: "N",
    units: { N: one, mN: milli, kN: kilo, kgf: [196133, 2e4], gf: [196133, 2e7], lbf: lbf, ozf: [8896443230521, 32e12] },
    show: [
      ["mN", 0],
      ["N", 0.1],
      ["kN", 1e4],
    ],
    net: "Newtons",
  },
  moment: {
    si: "N m",
    units: {
      "N m": one,
      Nm: one,
      "mN m": milli,
      "N mm": milli,
      "kgf m": [196133, 2e4],
      "kgf cm": [196133, 2e6],
      "kgf mm": [196133, 2e7],
      "lbf ft": [3389544870828501, 25e14],
      "lbf in": [1129848290276167, 1e16],
      "ozf in": [1129848290276167, 16e16],
    },
    show: [
      ["mN m", 0],
      ["N m", 0.1],
    ],
    net: "NewtonMeters",
  },
  pressure: {
    si: "Pa",
    units: {
      Pa: one,
      kPa: kilo,
      MPa: mega,
      GPa: [1e9, 1],
      "N/mm2": mega,
      bar: [1e5, 1],
      mbar: [100, 1],
      psi: [8896443230521, 1290320000],
      mmHg: [133322387415, 1e9],
    },
    show: [
      ["Pa", 0],
      ["kPa", 1e3],
      ["MPa", 1e6],
      ["GPa", 1e9],
    ],
    net: "Pascals",
  },
  energy: {
    si: "J",
    units: { J: one, mJ: milli, kJ: kilo, MJ: mega, Wh: [3600, 1], kWh: [3.6e6, 1], kcal: [4184, 1] },
    show: [
      ["mJ", 0],
      ["J", 0.1],
      ["Wh", 3600],
    ],
    net: "Joules",
  },
  power: {
    si: "W",
    units: { W: one, mW: milli, kW: kilo, "kcal/h": [523, 450] },
    show: [
      ["mW", 0],
      ["W", 0.1],
      ["kW", 1e4],
    ],
    net: "Watts",
  },
  temperature: {
    si: "degC",
    units: { degC: one, K: [1, 1, -273.15], degF: degF },
    show: [["°C", 0]],
    net: "DegreesCelsius",
  },
  temperatureDifference: {
    si: "K",
    units: { K: one, deltaC: one, deltaF: [5, 9] },
    show: [["K", 0]],
    net: "Kelvins",
  },
  voltage: {
    si: "V",
    units: { V: one, mV: milli, kV: kilo },
    show: [
      ["mV", 0],
      ["V", 0.1],
    ],
    net: "Volts",
  },
  current: {
    si: "A",
    units: { A: one, mA: milli, uA: micro },
    show: [
      ["µA", 0],
      ["mA", 1e-3],
      ["A", 0.1],
    ],
    net: "Amperes",
  },
  resistance: {
    si: "ohm",
    units: { ohm: one, mohm: milli, uohm: micro, kohm: kilo },
    show: [
      ["µΩ", 0],
      ["mΩ", 1e-4],
      ["Ω", 1],
      ["kΩ", 1e4],
    ],
    net: "Ohms",
  },
  charge: {
    si: "C",
    units: { C: one, Ah: [3600, 1], mAh: [18, 5] },
    show: [
      ["C", 0],
      ["mAh", 3.6],
      ["Ah", 3600],
    ],
    net: "Coulombs",
  },
  capacitance: {
    si: "F",
    units: { F: one, mF: milli, uF: micro, nF: nano },
    show: [
      ["nF", 0],
      ["µF", 1e-6],
      ["mF", 1e-2],
      ["F", 1],
    ],
    net: "Farads",
  },
  inductance: {
    si: "H",
    units: { H: one, mH: milli, uH: micro, nH: nano },
    show: [
      ["nH", 0],
      ["µH", 1e-6],
      ["mH", 1e-3],
      ["H", 1],
    ],
    net: "Henries",
  },
  frequency: {
    si: "Hz",
    units: { Hz: one, kHz: kilo, MHz: mega, "1/min": [1, 60] },
    show: [
      ["Hz", 0],
      ["kHz", 1e3],
      ["MHz", 1e6],
    ],
    net: "Hertz",
  },
  density: {
    si: "kg/m3",
    units: { "kg/m3": one, "g/cm3": kilo, "lb/ft3": [453592370000, 28316846592] },
    show: [["kg/m³", 0]],
    net: "KilogramsPerCubicMeter",
  },
  areaDensity: {
    si: "kg/m2",
    units: { "kg/m2": one, "g/m2": milli, "oz/yd2": [45359237 * 1562500, 16e8 * 1306449] },
    show: [
      ["g/m²", 0],
      ["kg/m²", 1],
    ],
    net: "KilogramsPerSquareMeter",
  },
  linearDensity: {
    si: "kg/m",
    units: { "kg/m": one, "g/m": milli, "lb/ft": [45359237 * 1250, 381e8] },
    show: [
      ["g/m", 0],
      ["kg/m", 1],
    ],
    net: "KilogramsPerMeter",
  },
  forcePerLength: {
    si: "N/m",
    units: { "N/m": one, "N/mm": kilo, "kN/m": kilo, "kgf/mm": [196133, 20], "lbf/in": [44482216152605, 254e9] },
    show: [
      ["N/m", 0],
      ["N/mm", 1e4],
    ],
    net: "NewtonsPerMeter",
  },
  rotationalStiffness: {
    si: "N m/rad",
    units: { "N m/rad": one, "N m/deg": [180, PI], "lbf in/deg": [1129848290276167 * 180, PI * 1e16] },
    show: [["N m/rad", 0]],
    net: "NewtonMetersPerRadian",
  },
  damping: { si: "N s/m", units: { "N s/m": one, "N s/mm": kilo }, show: [["N s/m", 0]], net: null },
  secondMoment: {
    si: "m4",
    units: { m4: one, cm4: [1, 1e8], mm4: [1, 1e12], in4: [260144641, 625e12] },
    show: [
      ["mm⁴", 0],
      ["cm⁴", 1e-7],
    ],
    net: "MetersToTheFourth",
  },
  momentOfInertia: {
    si: "kg m2",
    units: { "kg m2": one, "kg mm2": micro, "g cm2": [1, 1e7], "lb ft2": [45359237 * 145161, 1e8 * 1562500] },
    show: [
      ["g cm²", 0],
      ["kg m²", 1e-3],
    ],
    net: "KilogramSquareMeters",
  },
  thermalConductivity: {
    si: "W/m/K",
    units: { "W/m/K": one },
    show: [["W/(m·K)", 0]],
    net: "WattsPerMeterKelvin",
  },
  specificHeat: {
    si: "J/kg/K",
    units: { "J/kg/K": one, "kJ/kg/K": kilo },
    show: [["J/(kg·K)", 0]],
    net: "JoulesPerKilogramKelvin",
  },
  heatTransferCoefficient: {
    si: "W/m2/K",
    units: { "W/m2/K": one },
    show: [["W/(m²·K)", 0]],
    net: "WattsPerSquareMeterKelvin",
  },
  heatFlux: {
    si: "W/m2",
    units: { "W/m2": one, "kW/m2": kilo },
    show: [
      ["W/m²", 0],
      ["kW/m²", 1e4],
    ],
    net: "WattsPerSquareMeter",
  },
  thermalDiffusivity: {
    si: "m2/s",
    units: { "m2/s": one, "mm2/s": micro },
    show: [["mm²/s", 0]],
    net: "SquareMetersPerSecond",
  },
  thermalResistance: { si: "K/W", units: { "K/W": one, "degC/W": one }, show: [["K/W", 0]], net: null },
  heatCapacity: { si: "J/K", units: { "J/K": one, "kJ/K": kilo }, show: [["J/K", 0]], net: "JoulesPerKelvin" },
  perTemperature: {
    si: "1/K",
    units: { "1/K": one, "1/degC": one, "%/K": [1, 100], "ppm/K": micro },
    show: [
      ["ppm/K", 0],
      ["%/K", 1e-3],
    ],
    net: "PerKelvin",
  },
  resistivity: {
    si: "ohm m",
    units: { "ohm m": one, "ohm mm2/m": micro },
    show: [["Ω·mm²/m", 0]],
    net: "OhmMeters",
  },
  resistancePerLength: {
    si: "ohm/m",
    units: { "ohm/m": one, "mohm/m": milli, "ohm/km": milli, "ohm/kft": [5, 1524] },
    show: [
      ["mΩ/m", 0],
      ["Ω/m", 1],
    ],
    net: null,
  },
  currentDensity: {
    si: "A/m2",
    units: { "A/m2": one, "A/mm2": mega },
    show: [["A/mm²", 0]],
    net: "AmperesPerSquareMeter",
  },
  torqueConstant: {
    si: "N m/A",
    units: { "N m/A": one, "mN m/A": milli, "ozf in/A": [1129848290276167, 16e16] },
    show: [["mN m/A", 0]],
    net: null,
  },
  backEmfConstant: { si: "V s/rad", units: { "V s/rad": one, "V/krpm": [3, 100 * PI] }, show: [["V s/rad", 0]], net: null },
  forceConstant: { si: "N/A", units: { "N/A": one, "lbf/A": lbf }, show: [["N/A", 0]], net: null },
  speedVoltageConstant: { si: "V s/m", units: { "V s/m": one, "V s/mm": kilo }, show: [["V s/m", 0]], net: null },
  specificEnergy: {
    si: "J/kg",
    units: { "J/kg": one, "kJ/kg": kilo, "Wh/kg": [3600, 1] },
    show: [
      ["J/kg", 0],
      ["kJ/kg", 1e3],
    ],
    net: "JoulesPerKilogram",
  },
  specificPower: { si: "W/kg", units: { "W/kg": one }, show: [["W/kg", 0]], net: null },
  meltingIntegral: { si: "A2 s", units: { "A2 s": one }, show: [["A²·s", 0]], net: null },
  ratio: { si: "", units: { "%": [1, 100], ppm: micro, x: one }, show: [["", 0]], net: "DecimalFractions" },
}
