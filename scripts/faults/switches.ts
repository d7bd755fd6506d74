import type { Edit, Fault } from "./fault.ts"

type Switched = Edit & { readonly n: number }

/**
 * The text of a file with every fault in it behind a switch: `$n` is the number of the fault that is on. With `marks`
 * no fault can be on; instead each place notes in `$h` that it was reached.
 */
export function switched(text: string, faults: readonly Fault[], marks: boolean): string {
  const edits = faults.flatMap((fault) => fault.edits.map((edit): Switched => ({ ...edit, n: fault.n })))
  // outer before inner
  edits.sort((a, b) => a.start - b.start || b.end - a.end)
  return render(text, 0, text.length, edits, marks)
}

function render(text: string, start: number, end: number, edits: readonly Switched[], marks: boolean): string {
  let out = ""
  let at = start
  for (let i = 0; i < edits.length; ) {
    const first = edits[i] as Switched
    const within = edits.slice(i).filter((e) => e.start < first.end)
    const here = within.filter((e) => e.start === first.start && e.end === first.end)
    const inner = render(
      text,
      first.start,
      first.end,
      within.filter((e) => !here.includes(e)),
      marks,
    )
    out += text.slice(at, first.start) + wrapped(inner, here, marks)
    at = first.end
    i += within.length
  }
  return out + text.slice(at, end)
}

function wrapped(inner: string, here: readonly Switched[], marks: boolean): string {
  const noted = here.map((e) => `$h[${e.n}] = `).join("")
  const of = (form: Edit["form"]) => here.filter((e) => e.form === form)
  const [shorthand, elements, statements] = [of("shorthand"), of("element"), of("statement")]
  if (statements.length) {
    if (marks) return `{ ${noted}1; ${inner} }`
    return `if (${statements.map((e) => `$n !== ${e.n}`).join(" && ")}) { ${inner} }`
  }
  const effects = of("effect")
  const values = [...of("expression"), ...effects, ...shorthand]
  let out = inner
  if (values.length) {
    out = marks ? `(${noted}1, (${out}))` : `(${values.map((e) => `$n === ${e.n} ? (${e.text}) : `).join("")}(${out}))`
    // a line that began with a bracket would go on with the one before it
    if (effects.length) out = `void ${out}`
    if (shorthand.length) out = `${inner}: ${out}`
  }
  if (elements.length) {
    const [e] = elements as [Switched]
    out = marks ? `(${noted}1, ${out})` : `...($n === ${e.n} ? [] : [${out}])`
  }
  return out
}
