import { escapeMarkdown } from "../drawing/index.js"
import { symbolTexOf } from "./tex.js"
import type { WorkedStep, Working } from "./working.js"

export const isValue = (step: WorkedStep) => step.kind === "given"
export const stepsWorked = (working: Working): readonly WorkedStep[] => working.steps.filter((s) => !isValue(s))

const isNothing = (text: string) => /^0( |$)/.test(text)

/** An answer in the units of its line, and as a maker reads it where that is another unit. */
export const answerOf = ({ inSi, shown }: WorkedStep): string => (inSi === shown || isNothing(inSi) ? inSi : `${inSi} = ${shown}`)
/** A given value as it was put, and in the units of the lines. */
export const givenOf = ({ inSi, shown }: WorkedStep): string => (inSi === shown || isNothing(inSi) ? shown : `${shown} = ${inSi}`)

/** The equation that checks an unknown found by iteration, with the number of its step. */
export function checkOf(steps: readonly WorkedStep[], solved: WorkedStep): { readonly equation: WorkedStep; readonly at: number } | null {
  const from = steps.indexOf(solved)
  const at = steps.findIndex((s, i) => i > from && s.kind === "equation" && s.formula.split(/\W+/).includes(solved.symbol))
  return at < 0 ? null : { equation: steps[at] as WorkedStep, at: at + 1 }
}

/** The working as plain text: every line in SI units, with the figures that bring a pocket calculator to the answer. */
export function workingText(working: Working): string {
  const given = working.steps.filter(isValue).map((s) => `  ${s.symbol} = ${givenOf(s)}  (${s.meaning}${s.source ? `; ${s.source}` : ""})`)
  const steps = stepsWorked(working)
  const rest = steps.map((s, i) => {
    const lines = [`  ${i + 1}. ${s.meaning}`]
    if (s.kind === "solved") {
      const check = checkOf(steps, s)
      if (check) lines.push(`     equation: ${check.equation.formula}`)
      lines.push(`     answer: ${s.symbol} = ${answerOf(s)}  (found by iteration)`)
      if (check) lines.push(`     check: step ${check.at}`)
    } else if (s.kind === "equation") lines.push(`     ${s.formula}`, `     check: ${s.numbers}`, `     comes to ${s.inSi}`)
    else
      lines.push(
        `     ${s.symbol} = ${s.formula}`,
        // of a formula with conditions only one branch is followed
        ...(sameText(s.formula, s.taken) ? [] : [`       here ${s.taken}`]),
        `       = ${s.numbers}`,
        `       = ${answerOf(s)}`,
      )
    if (s.source) lines.push(`     source: ${s.source}`)
    return lines.join("\n")
  })
  return [working.title, "Given", ...given, "Working", ...rest].join("\n")
}

const sameText = (a: string, b: string) => a.replace(/\s/g, "") === b.replace(/\s/g, "")

/** The working as Markdown with TeX between dollar signs. */
export function workingMarkdown(working: Working): string {
  const steps = stepsWorked(working)
  const rest = steps.map((s, i) => {
    const body: string[] = []
    if (s.kind === "solved") {
      const check = checkOf(steps, s)
      if (check) body.push(`Equation: $$${check.equation.tex}$$`)
      body.push(`Answer: $${symbolTexOf(s.symbol)}$ = **${answerOf(s)}** (found by iteration${check ? `; check: step ${check.at}` : ""})`)
    } else if (s.kind === "equation") body.push(`$$${s.tex}$$`, `Check: \`${s.numbers}\` comes to **${s.inSi}**.`)
    else body.push(`$$${s.tex}$$`, `$${symbolTexOf(s.symbol)}$ = \`${s.numbers}\` = **${answerOf(s)}**`)
    return `${i + 1}. ${s.meaning}${s.source ? ` (${s.source})` : ""}\n\n${body.join("\n\n").replace(/^/gm, "   ")}`
  })
  return [...givenMarkdown(working), "", ...rest].join("\n")
}

/** Title and table of what is given. */
export function givenMarkdown(working: Working): readonly string[] {
  const rows = working.steps
    .filter(isValue)
    .map((s) => `| $${symbolTexOf(s.symbol)}$ | ${givenOf(s)} | ${escapeMarkdown(s.meaning)} | ${s.source ?? ""} |`)
  return [`## ${working.title}`, "", "| symbol | value | meaning | source |", "| --- | --- | --- | --- |", ...rows]
}
