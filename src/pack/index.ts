export { type Chemistry, type ChemistryData, chemistries, openCircuitVoltage, resistanceFactor } from "./chemistry.js"
