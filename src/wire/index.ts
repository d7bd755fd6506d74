export { awgArea, awgDiameter, type Conductor, type ConductorInput, type ConductorSize, conductor } from "./conductor.js"
export {
  awgSource,
  type ConductorMetal,
  type Metal,
  metals,
  type NominalConductor,
  nominalConductors,
  type Stranding,
} from "./data.js"
export { type VoltageDrop, type VoltageDropInput, voltageDrop } from "./voltage-drop.js"
