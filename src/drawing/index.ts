export { type LineChart, lineChart, type Series, type Step, stepChart } from "./chart.js"
export { extent, linearScale, ticks } from "./scale.js"
export { element, escapeXml, type Frame, label, type Point, pathThrough, plainText, svg, svgNumber } from "./svg.js"
export { textChart } from "./terminal.js"
