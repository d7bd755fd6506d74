// The units of every kind of quantity, and what is said of each.

/**
 * The unit tokens of every kind of quantity. A kind is told from the others by its unit set and by
 * its reader (see {@link UnitsNetLike}), so no two kinds share one.
 */
export interface UnitsOf {
  length: "m" | "mm" | "cm" | "km" | "um" | "µm" | "in" | "ft" | "yd"
  area: "m2" | "m²" | "cm2" | "cm²" | "mm2" | "mm²" | "in2" | "ft2"
  volume: "m3" | "m³" | "cm3" | "cm³" | "mm3" | "mm³" | "in3" | "L" | "mL"
  mass: "kg" | "g" | "mg" | "lb" | "oz"
  time: "s" | "ms" | "min" | "h" | "d"
  angle: "rad" | "deg" | "°" | "rev"
  angularSpeed: "rad/s" | "deg/s" | "°/s" | "rpm"
  angularAcceleration: "rad/s2" | "rad/s²" | "deg/s2" | "°/s²"
  speed: "m/s" | "mm/s" | "cm/s" | "km/h" | "in/s" | "ft/s" | "mph"
  acceleration: "m/s2" | "m/s²" | "mm/s2" | "ft/s2"
  force: "N" | "mN" | "kN" | "kgf" | "gf" | "lbf" | "ozf"
  moment: "N m" | "Nm" | "N·m" | "mN m" | "N mm" | "kgf m" | "kgf cm" | "kgf mm" | "lbf ft" | "lbf in" | "ozf in"
  pressure: "Pa" | "kPa" | "MPa" | "GPa" | "N/mm2" | "bar" | "mbar" | "psi" | "mmHg"
  energy: "J" | "mJ" | "kJ" | "MJ" | "Wh" | "kWh" | "kcal"
  power: "W" | "mW" | "kW" | "kcal/h"
  temperature: "degC" | "°C" | "K" | "degF" | "°F"
  temperatureDifference: "K" | "deltaC" | "deltaF"
  voltage: "V" | "mV" | "kV"
  current: "A" | "mA" | "uA" | "µA"
  resistance: "ohm" | "Ω" | "mohm" | "mΩ" | "uohm" | "µΩ" | "kohm" | "kΩ"
  charge: "C" | "Ah" | "mAh"
  capacitance: "F" | "mF" | "uF" | "µF" | "nF"
  inductance: "H" | "mH" | "uH" | "µH" | "nH"
  frequency: "Hz" | "kHz" | "MHz" | "1/min"
  density: "kg/m3" | "kg/m³" | "g/cm3" | "g/cm³" | "lb/ft3"
  areaDensity: "kg/m2" | "kg/m²" | "g/m2" | "g/m²" | "oz/yd2"
  linearDensity: "kg/m" | "g/m" | "lb/ft"
  forcePerLength: "N/m" | "N/mm" | "kN/m" | "kgf/mm" | "lbf/in"
  rotationalStiffness: "N m/rad" | "N m/deg" | "lbf in/deg"
  damping: "N s/m" | "N s/mm"
  secondMoment: "m4" | "m⁴" | "cm4" | "cm⁴" | "mm4" | "mm⁴" | "in4"
  momentOfInertia: "kg m2" | "kg m²" | "kg mm2" | "g cm2" | "g cm²" | "lb ft2"
  thermalConductivity: "W/m/K" | "W/(m·K)"
  specificHeat: "J/kg/K" | "J/(kg·K)" | "kJ/kg/K"
  heatTransferCoefficient: "W/m2/K" | "W/(m²·K)"
  heatFlux: "W/m2" | "W/m²" | "kW/m2" | "kW/m²"
  thermalDiffusivity: "m2/s" | "m²/s" | "mm2/s" | "mm²/s"
  thermalResistance: "K/W" | "degC/W" | "°C/W"
  heatCapacity: "J/K" | "kJ/K"
  perTemperature: "1/K" | "1/degC" | "1/°C" | "%/K" | "ppm/K"
  resistivity: "ohm m" | "Ω·m" | "ohm mm2/m" | "Ω·mm²/m"
  resistancePerLength: "ohm/m" | "Ω/m" | "mohm/m" | "mΩ/m" | "ohm/km" | "Ω/km" | "ohm/kft"
  currentDensity: "A/m2" | "A/m²" | "A/mm2" | "A/mm²"
  torqueConstant: "N m/A" | "mN m/A" | "ozf in/A"
  backEmfConstant: "V s/rad" | "V/krpm"
  forceConstant: "N/A" | "lbf/A"
  speedVoltageConstant: "V s/m" | "V s/mm"
  specificEnergy: "J/kg" | "kJ/kg" | "Wh/kg"
  specificPower: "W/kg"
  meltingIntegral: "A2 s" | "A²·s"
  ratio: "%" | "ppm" | "x"
}

/** A kind of physical quantity. */
export type Kind = keyof UnitsOf

/** Exact ratio to the SI unit: `si = value · num / den + add`. */
export type Factor = readonly [num: number, den: number, add?: number]

/** Units written in plain letters and digits. */
export type Plain<U extends string> = U extends `${string}${"²" | "³" | "⁴" | "µ" | "Ω" | "°" | "·" | "("}${string}` ? never : U

/** How one kind is read, shown and bridged. */
export interface KindSpec<U extends string> {
  /** The SI unit a bare number is in. */
  readonly si: U | ""
  /** Exact factors, SI first; units written with other signs (`mm²`, `Ω`, `°`, `N·m`) read as these. */
  readonly units: Readonly<Record<Plain<U>, Factor>>
  /** Units a maker reads, each from the magnitude (in SI) at which it takes over. */
  readonly show: readonly (readonly [unit: U | "", from: number])[]
  /** SI getter of the unitsnet-js class, or null where that library has none. */
  readonly net: string | null
}
