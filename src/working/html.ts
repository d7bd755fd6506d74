import { escapeXml } from "../drawing/index.js"
import { put, sidesOf } from "./line.js"
import { math } from "./mathjs.js"
import { mathmlOf, symbolMathml } from "./mathml.js"
import { answerOf, checkOf, givenOf, isValue, stepsWorked } from "./render.js"
import type { WorkedStep, Working } from "./working.js"

const block = (inner: string) => `<math display="block">${inner}</math>`
const inline = (inner: string) => `<math>${inner}</math>`
const EQUALS = "<mo>=</mo>"
const upright = (text: string) => `<mtext>${escapeXml(text)}</mtext>`

/** The working as a section of HTML, its formulae in MathML: symbols as variables, units upright. */
export function workingHtml(working: Working): string {
  const symbols = new Set(Object.keys(working.values))
  const steps = stepsWorked(working)
  const formula = (text: string, operands?: Readonly<Record<string, string>>) =>
    sidesOf(text)
      .map((side) => mathmlOf(math.parse(side), symbols, operands))
      .join(EQUALS)
  const items = steps.map((s) => {
    const body: string[] = []
    if (s.kind === "solved") {
      const check = checkOf(steps, s)
      if (check) body.push(`<p>Equation</p>${block(formula(check.equation.formula))}`)
      body.push(`<p>Answer, found by iteration</p>${block(`${symbolMathml(s.symbol)}${EQUALS}${upright(answerOf(s))}`)}`)
      if (check) body.push(`<p>Check: step ${check.at}</p>`)
    } else if (s.kind === "equation")
      body.push(block(formula(s.formula)), "<p>Check</p>", block(formula(s.taken, s.operands)), `<p>comes to ${escapeXml(s.inSi)}</p>`)
    else
      body.push(
        block(`${symbolMathml(s.symbol)}${EQUALS}${formula(s.formula)}`),
        block(`${EQUALS}${formula(s.taken, s.operands)}`),
        block(`${EQUALS}${upright(answerOf(s))}`),
      )
    return item(s, body.join("\n"))
  })
  return section(working, `<ol>\n${items.join("\n")}\n</ol>`)
}

const item = (s: WorkedStep, body: string) =>
  `<li><p>${escapeXml(s.meaning)}${s.source ? ` (${escapeXml(s.source)})` : ""}</p>\n${body}\n</li>`

function section(working: Working, body: string): string {
  const rows = working.steps
    .filter(isValue)
    .map(
      (s) =>
        `<tr><td>${inline(symbolMathml(s.symbol))}</td><td>${escapeXml(givenOf(s))}</td><td>${escapeXml(s.meaning)}</td><td>${escapeXml(s.source ?? "")}</td></tr>`,
    )
  return [
    `<section>`,
    `<h2>${escapeXml(working.title)}</h2>`,
    `<table><thead><tr><th>symbol</th><th>value</th><th>meaning</th><th>source</th></tr></thead><tbody>`,
    ...rows,
    `</tbody></table>`,
    body,
    `</section>`,
  ].join("\n")
}

const LINE = "______"
/** What stands for a symbol with its figures left out; what is a unit of the formula stays. */
const blank = (working: Working, { operands }: WorkedStep): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(operands).map(([name, text]) => [
      name,
      name in working.values ? text.replace(/\[[^\]]*\]|-?[\d.]+(?:e[+-]?\d+)?/, LINE) : text,
    ]),
  )
const blankAnswer = ({ inSi }: WorkedStep) => inSi.replace(/\[[^\]]*\]|-?[\d.]+(?:e[+-]?\d+)?/g, LINE)

/** The line of a step with its numbers left out. */
export const blankLine = (working: Working, step: WorkedStep): string =>
  sidesOf(step.taken)
    .map((side) => put(math.parse(side), blank(working, step)))
    .join(" = ")

/** Steps to be filled in, and what they come to, apart: the one form for Markdown and HTML. */
export function sheetLines(working: Working): {
  readonly asked: readonly (readonly [string, string])[]
  readonly answers: readonly string[]
} {
  const steps = stepsWorked(working)
  return {
    asked: steps.map((s) => {
      if (s.kind === "solved") {
        const check = checkOf(steps, s)
        return [s.meaning, `${s.symbol} = ${blankAnswer(s)}${check ? ` so that ${check.equation.formula}` : ""}`]
      }
      if (s.kind === "equation") return [s.meaning, `${blankLine(working, s)}: ${blankAnswer(s)}`]
      return [s.meaning, `${s.symbol} = ${s.taken} = ${blankLine(working, s)} = ${blankAnswer(s)}`]
    }),
    answers: steps.map((s) => {
      if (s.kind === "solved") return `${s.symbol} = ${answerOf(s)}`
      return s.kind === "equation" ? `${s.numbers}: ${s.inSi}` : `${s.symbol} = ${s.numbers} = ${answerOf(s)}`
    }),
  }
}

/** A sheet for a class as HTML: the formulae with their numbers left out; the answers begin a page of their own. */
export function worksheetHtml(working: Working): string {
  const { asked, answers } = sheetLines(working)
  const questions = asked.map(([meaning, line]) => `<li><p>${escapeXml(meaning)}</p><p>${escapeXml(line)}</p></li>`)
  return section(
    working,
    [
      "<ol>",
      ...questions,
      "</ol>",
      `<div style="break-before: page"><h3>Answers</h3><ol>`,
      ...answers.map((line) => `<li>${escapeXml(line)}</li>`),
      "</ol></div>",
    ].join("\n"),
  )
}
