export { workingMarkdown, workingText } from "./render.js"
export { type WorkedStep, type Working, working, workingOfSi } from "./working.js"
