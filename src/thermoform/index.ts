export { type Figure, type Plastic, type PlasticData, plastics } from "./data.js"
export { type FormingWindow, type FormingWindowInput, formingWindow } from "./forming-window.js"
