export { type CellPack, type CellPackInput, cellPack } from "./cell-pack.js"
export { type Chemistry, type ChemistryData, chemistries, openCircuitVoltage, resistanceFactor } from "./chemistry.js"
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
export { constantPowerCurrent, type PackUnderLoad, type PackUnderLoadInput, packUnderLoad } from "./pack-under-load.js"
