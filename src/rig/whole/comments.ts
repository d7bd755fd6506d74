// Comments in a document's text: a maker notes where a number comes from right beside it.

// a string comes first, so that what looks like a comment within one stays
const marks = /"(?:[^"\\\n]|\\.)*"|\/\/[^\n\r]*|\/\*[\s\S]*?\*\//g

/** Text without its `//` and `/* … *\/` comments; every other character stays at its line and column. */
export const withoutComments = (text: string): string =>
  text.replace(marks, (found) => (found.startsWith('"') ? found : found.replace(/[^\n\r]/g, " ")))
