export { workingHtml, worksheetHtml } from "./html.js"
export { workingMarkdown, workingText } from "./render.js"
export { type WorkedStep, type Working, working, workingOfSi } from "./working.js"
export { worksheetMarkdown } from "./worksheet.js"
