export { type AirTravel, type AirTravelInput, airTravel } from "./air-travel/index.js"
export { type CarriageRule, type CarriedKind, powerBankRules, smallLithium, transportRules } from "./air-travel/rules.js"
export type { AirTravelCaution } from "./air-travel/types.js"
export type { CellPackCaution } from "./cell-pack.js"
export { type CellPack, type CellPackInput, cellPack } from "./cell-pack.js"
export { chargeVoltageShift, nickelTermination, nickelTimerFactor } from "./charge-time/ends.js"
export { type ChargeTime, chargeTime } from "./charge-time/index.js"
export { nickelChargeFactor } from "./charge-time/kernel.js"
export type { ChargeTimeInput } from "./charge-time/problem.js"
export type { ChargeTimeCaution, ChargeTimeRefusal } from "./charge-time/types.js"
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
export { capacityAtRate, capacityShareByDuration, capacityShareByRate } from "./data-rate.js"
export { capacityAtTemperature } from "./data-temperature.js"
export type { CellCaution, PackCaution, PackCells, RateCaution, RechargeableCaution, StateOfCharge, TemperatureCaution } from "./fields.js"
export type { OpenCircuitPoint } from "./open-circuit.js"
export { type PackHealth, type PackHealthInput, packHealth } from "./pack-health/index.js"
export type { PackHealthCaution, PackHealthRefusal } from "./pack-health/types.js"
export type { CellOnOffer, PackCandidate, RejectedPack } from "./pack-size/candidates.js"
export { type PackSize, type PackSizeInput, packSize } from "./pack-size/index.js"
export type { PackSizeCaution, PackSizeRefusal } from "./pack-size/types.js"
export { type StandingCells, type StandingKind, standingCells, standingFactor } from "./pack-storage/data.js"
export { type PackStorage, type PackStorageInput, packStorage } from "./pack-storage/index.js"
export type { PackStorageCaution } from "./pack-storage/types.js"
export type { PackUnderLoadCaution, PackUnderLoadRefusal } from "./pack-under-load.js"
export { constantPowerCurrent, type PackUnderLoad, type PackUnderLoadInput, packUnderLoad } from "./pack-under-load.js"
export {
  type ParallelSharing,
  type ParallelSharingInput,
  type ParallelString,
  parallelSharing,
  type StringState,
} from "./parallel-sharing/index.js"
export type { ParallelSharingCaution, ParallelSharingRefusal } from "./parallel-sharing/types.js"
export type { PeukertCaution } from "./peukert.js"
export { type Peukert, type PeukertInput, peukert, peukertExponent } from "./peukert.js"
export type { PowerBankCaution, PowerBankRefusal } from "./power-bank.js"
export { type PowerBank, type PowerBankInput, powerBank } from "./power-bank.js"
export { type DischargePoint, type LoadTotal, type Runtime, runtime } from "./runtime/index.js"
export type { LoadStep, RuntimeInput } from "./runtime/problem.js"
export type { PulseCaution, RuntimeCaution, RuntimeRefusal } from "./runtime/types.js"
