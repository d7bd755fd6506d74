import type { WorkedStep, Working } from "./working.js"

const isValue = (step: WorkedStep) => step.kind === "given"

/** The working as plain text, one step a line or two. */
export function workingText(working: Working): string {
  const given = working.steps.filter(isValue).map((s) => `  ${s.symbol} = ${s.shown}  (${s.meaning}${s.source ? `; ${s.source}` : ""})`)
  const rest = working.steps
    .filter((s) => !isValue(s))
    .map((s, i) => {
      const head = `  ${i + 1}. ${s.meaning}`
      const body =
        s.kind === "solved"
          ? `     ${s.symbol} = ${s.shown}  (found by iteration, proved below)`
          : s.kind === "equation"
            ? `     ${s.formula}\n     ${s.numbers}  (both sides agree to ${s.shown})`
            : `     ${s.symbol} = ${s.formula}\n       = ${s.numbers}\n       = ${s.shown}`
      return `${head}\n${body}${s.source ? `\n     source: ${s.source}` : ""}`
    })
  return [working.title, "Given", ...given, "Working", ...rest].join("\n")
}

/** The working as Markdown with TeX between dollar signs. */
export function workingMarkdown(working: Working): string {
  const given = working.steps.filter(isValue).map((s) => `| ${s.symbol} | ${s.shown} | ${s.meaning} | ${s.source ?? ""} |`)
  const rest = working.steps
    .filter((s) => !isValue(s))
    .map((s, i) => {
      const body =
        s.kind === "solved"
          ? `\`${s.symbol}\` = **${s.shown}** (found by iteration, proved below)`
          : s.kind === "equation"
            ? `$$${s.tex}$$\n\n\`${s.numbers}\`: both sides agree to ${s.shown}.`
            : `$$${s.tex}$$\n\n\`${s.symbol} = ${s.numbers}\` = **${s.shown}**`
      return `${i + 1}. ${s.meaning}${s.source ? ` (${s.source})` : ""}\n\n${body.replace(/^/gm, "   ")}`
    })
  return [`## ${working.title}`, "", "| symbol | value | meaning | source |", "| --- | --- | --- | --- |", ...given, "", ...rest].join("\n")
}
