// The tail of a comment says what the command's page on a solver says.
export * from "../../src/command/field-text.js"
