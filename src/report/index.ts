export type { MotionAnswer, ReportCaution, ReportContent, ReportState, SubjectChecks, WayAnswer } from "./content.js"
export type { Defaults } from "./defaults.js"
export { type FirstEdition, type Report, type ReportKit, report } from "./report.js"
