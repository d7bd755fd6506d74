import { kinds } from "./kinds.js"
import { readQuantity } from "./parse.js"
import type { Kind } from "./units-of.js"

/** The part of unitsnet-js the bridge uses: `import * as unitsnet from 'unitsnet-js'`. */
export type UnitsNetModule = Readonly<Record<string, unknown>>

/** Class of that library by kind. */
export const unitsNetClasses: Readonly<Partial<Record<Kind, string>>> = {
  length: "Length",
  area: "Area",
  volume: "Volume",
  mass: "Mass",
  time: "Duration",
  angle: "Angle",
  angularSpeed: "RotationalSpeed",
  angularAcceleration: "RotationalAcceleration",
  speed: "Speed",
  acceleration: "Acceleration",
  force: "Force",
  moment: "Torque",
  pressure: "Pressure",
  energy: "Energy",
  power: "Power",
  temperature: "Temperature",
  temperatureDifference: "TemperatureDelta",
  voltage: "ElectricPotential",
  current: "ElectricCurrent",
  resistance: "ElectricResistance",
  charge: "ElectricCharge",
  capacitance: "ElectricCapacitance",
  inductance: "ElectricInductance",
  frequency: "Frequency",
  density: "Density",
  areaDensity: "AreaDensity",
  linearDensity: "LinearDensity",
  forcePerLength: "ForcePerLength",
  rotationalStiffness: "RotationalStiffness",
  secondMoment: "AreaMomentOfInertia",
  momentOfInertia: "MassMomentOfInertia",
  thermalConductivity: "ThermalConductivity",
  specificHeat: "SpecificEntropy",
  heatTransferCoefficient: "HeatTransferCoefficient",
  heatFlux: "HeatFlux",
  thermalDiffusivity: "KinematicViscosity",
  heatCapacity: "Entropy",
  perTemperature: "CoefficientOfThermalExpansion",
  resistivity: "ElectricResistivity",
  currentDensity: "ElectricCurrentDensity",
  specificEnergy: "SpecificEnergy",
  ratio: "Ratio",
}

/**
 * Makes the unitsnet-js object for an SI number of a kind.
 *
 * @param unitsnet - the module, handed over by the caller so that nothing here loads it
 * @param kind - kind of quantity
 * @param value - SI number
 * @returns the object, or null where that library has no class for the kind
 */
export function toUnitsNet(unitsnet: UnitsNetModule, kind: Kind, value: number): object | null {
  const { net } = kinds[kind]
  const className = unitsNetClasses[kind]
  if (!net || !className) return null
  const make = (unitsnet[className] as Readonly<Record<string, (value: number) => object>> | undefined)?.[`From${net}`]
  if (!make) throw new TypeError(`this unitsnet-js module has no ${className}.From${net}`)
  return make(value)
}

/**
 * Reads a unitsnet-js object of a kind as an SI number.
 *
 * @throws TypeError when the object is not of that kind
 */
export function fromUnitsNet(kind: Kind, value: object): number {
  const read = readQuantity(kind, value)
  if (typeof read === "number") return read
  throw new TypeError(`not a unitsnet-js ${kind}`)
}
