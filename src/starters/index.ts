export { starterText } from "./commented.js"
export type { Starter, StarterKind } from "./starter.js"
export { starters } from "./starters.js"
