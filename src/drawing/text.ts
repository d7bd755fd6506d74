// Texts that came from outside, made safe where they are shown: terminals, pictures, pages and Markdown all go through plainText.

// what XML forbids, what moves a terminal's cursor, and what turns the direction of the text after it
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const unseen = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|\p{Surrogate}/gu

/** Text without control characters, halves of characters and marks that turn its direction: each is shown as `\ufffd`. */
export function plainText(text: string): string {
  return text.replace(/[\t\n\r]+/g, " ").replace(unseen, "\ufffd")
}

/** Text safe inside XML. */
export function escapeXml(text: string): string {
  return plainText(text).replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`)
}

/** Text that Markdown shows as it is: nothing in it makes a heading, a link, a table's column, code or HTML. */
export function escapeMarkdown(text: string): string {
  return plainText(text)
    .replace(/[\\`*_[\]<>|~&#]/g, (sign) => `\\${sign}`)
    .replace(/^(\s*)([+=-]|\d+[.)])/, (_, space: string, mark: string) => `${space}${mark.slice(0, -1)}\\${mark.slice(-1)}`)
}
