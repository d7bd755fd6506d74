export { type Figure, type Plastic, type PlasticData, plastics } from "./data.js"
export { type FormingWindow, type FormingWindowInput, formingWindow } from "./forming-window.js"
export { type HeatThrough, type HeatThroughInput, heatThrough } from "./heat-through.js"
