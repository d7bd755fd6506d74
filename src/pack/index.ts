export { type AirTravel, type AirTravelInput, airRules, airTravel, cargoRules } from "./air-travel.js"
export { type CellPack, type CellPackInput, cellPack } from "./cell-pack.js"
export type { ChargeTimeInput } from "./charge-problem.js"
export { type ChargeTime, chargeTime, nickelChargeFactor } from "./charge-time.js"
export {
  type Chemistry,
  type ChemistryData,
  capacityFactor,
  chemistries,
  curveOf,
  openCircuitVoltage,
  resistanceFactor,
} from "./chemistry.js"
export {
  capacityAtTemperature,
  chargeRateLimit,
  dischargeLimitFactor,
  type GenericCell,
  type GenericCellName,
  genericCellSources,
  genericCells,
} from "./data.js"
export type { PackCells, StateOfCharge } from "./fields.js"
export type { CurvePoint } from "./open-circuit.js"
export type { CatalogueCell, PackChoice, PackLoser } from "./pack-candidates.js"
export { constantPowerCurrent, type PackUnderLoad, type PackUnderLoadInput, packUnderLoad } from "./pack-under-load.js"
export {
  type ParallelSharing,
  type ParallelSharingInput,
  type ParallelString,
  parallelSharing,
  type StringShare,
} from "./parallel-sharing.js"
export { type Peukert, type PeukertInput, peukert, peukertExponent } from "./peukert.js"
export { type PowerBank, type PowerBankInput, powerBank } from "./power-bank.js"
export { type DischargePoint, type LoadTotal, type Runtime, runtime } from "./runtime.js"
export type { LoadStep, RuntimeInput } from "./runtime-problem.js"
export { type SizePack, type SizePackInput, sizePack } from "./size-pack.js"
