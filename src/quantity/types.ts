import type { Kind, UnitsOf } from "./units-of.js"

/** The reader (SI getter) by which a unitsnet-js object of a kind is recognised. */
interface ReaderOf {
  length: { readonly Meters: number }
  area: { readonly SquareMeters: number }
  volume: { readonly CubicMeters: number }
  mass: { readonly Kilograms: number }
  time: { readonly Seconds: number }
  angle: { readonly Radians: number }
  angularSpeed: { readonly RadiansPerSecond: number }
  angularAcceleration: { readonly RadiansPerSecondSquared: number }
  speed: { readonly MetersPerSecond: number }
  acceleration: { readonly MetersPerSecondSquared: number }
  force: { readonly Newtons: number }
  moment: { readonly NewtonMeters: number }
  pressure: { readonly Pascals: number }
  energy: { readonly Joules: number }
  power: { readonly Watts: number }
  temperature: { readonly DegreesCelsius: number; readonly SolarTemperatures: number }
  temperatureDifference: { readonly Kelvins: number; readonly SolarTemperatures?: never }
  voltage: { readonly Volts: number }
  current: { readonly Amperes: number }
  resistance: { readonly Ohms: number }
  charge: { readonly Coulombs: number }
  capacitance: { readonly Farads: number }
  inductance: { readonly Henries: number }
  frequency: { readonly Hertz: number }
  density: { readonly KilogramsPerCubicMeter: number }
  areaDensity: { readonly KilogramsPerSquareMeter: number }
  linearDensity: { readonly KilogramsPerMeter: number }
  forcePerLength: { readonly NewtonsPerMeter: number }
  rotationalStiffness: { readonly NewtonMetersPerRadian: number }
  secondMoment: { readonly MetersToTheFourth: number }
  momentOfInertia: { readonly KilogramSquareMeters: number }
  thermalConductivity: { readonly WattsPerMeterKelvin: number }
  specificHeat: { readonly JoulesPerKilogramKelvin: number }
  heatTransferCoefficient: { readonly WattsPerSquareMeterKelvin: number }
  heatFlux: { readonly WattsPerSquareMeter: number }
  thermalDiffusivity: { readonly SquareMetersPerSecond: number }
  heatCapacity: { readonly JoulesPerKelvin: number }
  perTemperature: { readonly PerKelvin: number }
  resistivity: { readonly OhmMeters: number }
  currentDensity: { readonly AmperesPerSquareMeter: number }
  specificEnergy: { readonly JoulesPerKilogram: number }
  ratio: { readonly DecimalFractions: number }
}

/** A unitsnet-js object of kind K, by shape; kinds that library lacks accept no object. */
export type UnitsNetLike<K extends Kind> = K extends keyof ReaderOf ? ReaderOf[K] : { readonly alulaKind: K }

/** A number with a unit, such as `'4 in'`, `'1/4 in'` or `'1 1/2 in'`, checked when compiled. */
export type QuantityString<K extends Kind> =
  | `${number} ${UnitsOf[K]}`
  | `${number}${UnitsOf[K]}`
  | `${number}/${number} ${UnitsOf[K]}`
  | `${number} ${number}/${number} ${UnitsOf[K]}`

/** A value of kind K: a bare SI number, a string with a unit, or a unitsnet-js object. */
export type Quantity<K extends Kind> = number | QuantityString<K> | UnitsNetLike<K>

/** The kind a property type was declared with, or `never` for a plain number. */
export type KindOf<T> = { [K in Kind]: [UnitsNetLike<K>] extends [T] ? K : never }[Kind]

/** Length; bare number in metres. */
export type Length = Quantity<"length">
/** Area; bare number in m². */
export type Area = Quantity<"area">
/** Volume or section modulus; bare number in m³. */
export type Volume = Quantity<"volume">
/** Mass; bare number in kg. */
export type Mass = Quantity<"mass">
/** Time; bare number in s. */
export type Time = Quantity<"time">
/** Plane angle; bare number in rad. */
export type Angle = Quantity<"angle">
/** Angular speed; bare number in rad/s. */
export type AngularSpeed = Quantity<"angularSpeed">
/** Angular acceleration; bare number in rad/s². */
export type AngularAcceleration = Quantity<"angularAcceleration">
/** Speed; bare number in m/s. */
export type Speed = Quantity<"speed">
/** Acceleration; bare number in m/s². */
export type Acceleration = Quantity<"acceleration">
/** Force; bare number in N. */
export type Force = Quantity<"force">
/** Moment of force or torque; bare number in N·m. */
export type Moment = Quantity<"moment">
/** Pressure or stress; bare number in Pa. */
export type Pressure = Quantity<"pressure">
/** Energy; bare number in J. */
export type Energy = Quantity<"energy">
/** Power; bare number in W. */
export type Power = Quantity<"power">
/** Temperature (with offset); bare number in °C. */
export type Temperature = Quantity<"temperature">
/** Temperature difference (no offset); bare number in K. */
export type TemperatureDifference = Quantity<"temperatureDifference">
/** Voltage; bare number in V. */
export type Voltage = Quantity<"voltage">
/** Electric current; bare number in A. */
export type Current = Quantity<"current">
/** Electrical resistance; bare number in Ω. */
export type Resistance = Quantity<"resistance">
/** Electric charge; bare number in coulomb. */
export type Charge = Quantity<"charge">
/** Capacitance; bare number in F. */
export type Capacitance = Quantity<"capacitance">
/** Inductance; bare number in H. */
export type Inductance = Quantity<"inductance">
/** Frequency; bare number in Hz. */
export type Frequency = Quantity<"frequency">
/** Density; bare number in kg/m³. */
export type Density = Quantity<"density">
/** Mass per area; bare number in kg/m². */
export type AreaDensity = Quantity<"areaDensity">
/** Mass per length; bare number in kg/m. */
export type LinearDensity = Quantity<"linearDensity">
/** Linear stiffness or distributed load; bare number in N/m. */
export type ForcePerLength = Quantity<"forcePerLength">
/** Rotational stiffness; bare number in N·m/rad. */
export type RotationalStiffness = Quantity<"rotationalStiffness">
/** Viscous damping; bare number in N·s/m. */
export type Damping = Quantity<"damping">
/** Second moment of area; bare number in m⁴. */
export type SecondMoment = Quantity<"secondMoment">
/** Mass moment of inertia; bare number in kg·m². */
export type MomentOfInertia = Quantity<"momentOfInertia">
/** Thermal conductivity; bare number in W/(m·K). */
export type ThermalConductivity = Quantity<"thermalConductivity">
/** Specific heat capacity; bare number in J/(kg·K). */
export type SpecificHeat = Quantity<"specificHeat">
/** Surface heat transfer coefficient; bare number in W/(m²·K). */
export type HeatTransferCoefficient = Quantity<"heatTransferCoefficient">
/** Heat flux; bare number in W/m². */
export type HeatFlux = Quantity<"heatFlux">
/** Thermal diffusivity; bare number in m²/s. */
export type ThermalDiffusivity = Quantity<"thermalDiffusivity">
/** Thermal resistance; bare number in K/W. */
export type ThermalResistance = Quantity<"thermalResistance">
/** Heat capacity of a body; bare number in J/K. */
export type HeatCapacity = Quantity<"heatCapacity">
/** Change per degree (expansion or resistance coefficient); bare number in 1/K. */
export type PerTemperature = Quantity<"perTemperature">
/** Electrical resistivity; bare number in Ω·m. */
export type Resistivity = Quantity<"resistivity">
/** Resistance per length; bare number in Ω/m. */
export type ResistancePerLength = Quantity<"resistancePerLength">
/** Current density; bare number in A/m². */
export type CurrentDensity = Quantity<"currentDensity">
/** Torque per ampere; bare number in N·m/A. */
export type TorqueConstant = Quantity<"torqueConstant">
/** Back-EMF per angular speed; bare number in V·s/rad. */
export type BackEmfConstant = Quantity<"backEmfConstant">
/** Force per ampere; bare number in N/A. */
export type ForceConstant = Quantity<"forceConstant">
/** Back-EMF per linear speed; bare number in V·s/m. */
export type SpeedVoltageConstant = Quantity<"speedVoltageConstant">
/** Energy per mass; bare number in J/kg. */
export type SpecificEnergy = Quantity<"specificEnergy">
/** Power per mass; bare number in W/kg. */
export type SpecificPower = Quantity<"specificPower">
/** Melting or let-through integral; bare number in A²·s. */
export type MeltingIntegral = Quantity<"meltingIntegral">
/** A ratio; bare number as a fraction of one. */
export type Ratio = Quantity<"ratio">
