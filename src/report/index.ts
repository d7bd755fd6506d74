export type { MotionAnswer, ReportCaution, ReportContent, ReportRemedies, ReportState, SubjectChecks, WayAnswer } from "./content.js"
export type { Defaults } from "./defaults.js"
export { type FirstEdition, type Report, type ReportKit, type ReportOptions, report } from "./report.js"
export { type BuildSheet, buildSheet } from "./sheet/build-sheet.js"
export type {
  SheetBend,
  SheetCircuit,
  SheetContent,
  SheetCut,
  SheetHole,
  SheetNeed,
  SheetPart,
  SheetPlate,
  SheetReading,
  SheetStep,
  SheetWire,
} from "./sheet/content.js"
export type { SheetTemplate } from "./sheet/templates.js"
