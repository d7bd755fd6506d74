export { type Report, report } from "./report.js"
