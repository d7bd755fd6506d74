// For node the rooms that everything stands on are one file: each file that node loads takes it about as long as 40 kB of text.
export * from "../../src/drawing/index.js"
export * from "../../src/numeric/index.js"
export * from "../../src/quantity/index.js"
export { seal } from "../../src/solver/display.js"
// named here, since drawing has a type of that name too
export type { Step } from "../../src/solver/index.js"
export * from "../../src/solver/index.js"
export { shown, unknownKey } from "../../src/solver/issue.js"
export { nearestWord } from "../../src/solver/near.js"
export { limitOf, readInput } from "../../src/solver/read.js"
