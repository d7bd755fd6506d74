// A sheet for an evening class: how much voltage the lantern moth's eye lights lose on their wire. What is given stands on it, the
// numbers of every step are left out, the answers stand apart. The troupe and its figures are invented.
//   node examples/a-classroom-sheet.mjs            the sheet as Markdown
//   node examples/a-classroom-sheet.mjs --html     the same as a page to print, answers on a page of their own
//   node examples/a-classroom-sheet.mjs --working  every line worked, to follow with a pocket calculator
import { voltageDrop } from "alula/wire"
import { working, workingText, worksheetHtml, worksheetMarkdown } from "alula/working"

const eyes = { current: "1.5 A", length: "1.8 m", awg: 22, conductorTemperature: "30 degC", sourceVoltage: "6 V" }
const steps = working(voltageDrop, eyes)

if (process.argv.includes("--html")) {
  console.log('<!doctype html>\n<html lang="en">\n<meta charset="utf-8">\n<title>A sheet for the class</title>')
  console.log(`${worksheetHtml(steps)}\n</html>`)
} else if (process.argv.includes("--working")) console.log(workingText(steps))
else console.log(worksheetMarkdown(steps))
