export { element, escapeXml, type Frame, label, type Point, pathThrough, svg, svgNumber } from "./svg.js"
