export { type AirTravel, type AirTravelInput, airRules, airTravel, cargoRules } from "./air-travel/index.js"
export { type CellPack, type CellPackInput, cellPack } from "./cell-pack.js"
export { type ChargeTime, chargeTime } from "./charge-time/index.js"
export { nickelChargeFactor } from "./charge-time/kernel.js"
export type { ChargeTimeInput } from "./charge-time/problem.js"
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
  chargeRateLimit,
  dischargeLimitFactor,
  type GenericCell,
  type GenericCellName,
  genericCellSources,
  genericCells,
} from "./data.js"
export { capacityAtTemperature } from "./data-temperature.js"
export type { PackCells, StateOfCharge } from "./fields.js"
export type { OpenCircuitPoint } from "./open-circuit.js"
export type { CellOnOffer, PackCandidate, RejectedPack } from "./pack-size/candidates.js"
export { type PackSize, type PackSizeInput, packSize } from "./pack-size/index.js"
export { constantPowerCurrent, type PackUnderLoad, type PackUnderLoadInput, packUnderLoad } from "./pack-under-load.js"
export {
  type ParallelSharing,
  type ParallelSharingInput,
  type ParallelString,
  parallelSharing,
  type StringState,
} from "./parallel-sharing/index.js"
export { type Peukert, type PeukertInput, peukert, peukertExponent } from "./peukert.js"
export { type PowerBank, type PowerBankInput, powerBank } from "./power-bank.js"
export { type DischargePoint, type LoadTotal, type Runtime, runtime } from "./runtime/index.js"
export type { LoadStep, RuntimeInput } from "./runtime/problem.js"
