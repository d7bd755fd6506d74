export { awgSource, type ConductorMetal, type Metal, metals } from "./data.js"
export { awgArea, type VoltageDrop, type VoltageDropInput, voltageDrop } from "./voltage-drop.js"
