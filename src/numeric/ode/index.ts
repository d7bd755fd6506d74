export { integrate } from "./integrate.js"
export type { OdeEvents, OdeOptions, OdeProblem, OdeStop, OdeStretch } from "./types.js"
