// The page of one solver: a form from its descriptions, and its answer while typing.
import { formatNumber, formatQuantity, kinds } from "alula/quantity"
import { type AnyField, type AnyFields, type AnyOutFields, InputError, NoSolutionError, type Result, type Solver } from "alula/solver"
import { answerTable, cautionList, refusal } from "./answer.js"
import { el, newId, pictured, settled } from "./dom.js"
import { packed, type Step, unpacked, valueAt } from "./entered.js"
import { form } from "./form.js"

type AnySolver = Solver<object, object>

interface Single {
  readonly path: string
  readonly label: string
  readonly kind: string
}

const isNumberField = (field: AnyField) => field.kind === "number" || Object.hasOwn(kinds, field.kind)

/** Numbers of an input by path, lists with an index, as far as they were entered. */
function numbersIn(fields: AnyFields, value: unknown, path: readonly Step[] = [], label = ""): Single[] {
  return Object.entries(fields).flatMap(([key, field]) => {
    const at = [...path, key]
    const inner = (value as Record<string, unknown> | undefined)?.[key]
    const name = label ? `${label}, ${field.label}` : field.label
    if (isNumberField(field)) return inner === undefined || inner === null ? [] : [{ path: at.join("."), label: name, kind: field.kind }]
    if (field.kind === "group") return inner ? numbersIn((field as unknown as { fields: AnyFields }).fields, inner, at, name) : []
    return []
  })
}

function numbersOut(fields: AnyOutFields, path = "", label = ""): Single[] {
  return Object.entries(fields).flatMap(([key, field]) => {
    const at = path ? `${path}.${key}` : key
    const name = label ? `${label}, ${field.label}` : field.label
    if (field.kind === "group") return numbersOut(field.fields, at, name)
    return field.kind === "list" || field.kind === "text" || field.kind === "flag" ? [] : [{ path: at, label: name, kind: field.kind }]
  })
}

/** The page. `start` is what an address carries. */
export function calculator(room: string, name: string, solver: AnySolver, start: string | null): HTMLElement {
  const given = start === null ? null : unpacked(start)
  const input = solver.input as unknown as AnyFields
  const answer = el("div", { class: "answer", "aria-live": "polite" })
  const top = el("div", { class: "faults", role: "alert" })
  const more = el("div", { class: "more" })
  const lost = start !== null && given === null
  const made = form(input, solver.either, given ?? structuredClone(solver.example), () => soon())

  function solve() {
    const entered = made.value()
    const outcome = solver.attempt(entered)
    top.replaceChildren()
    if (outcome.ok) {
      made.tell([])
      answer.replaceChildren(
        ...answerTable(solver.output as unknown as AnyOutFields, outcome.value),
        ...[cautionList((outcome.value as Result<object>).cautions)].filter((one) => one !== null),
      )
    } else if (outcome.error instanceof InputError) {
      const rest = made.tell(outcome.error.issues)
      const count = outcome.error.issues.length
      top.replaceChildren(
        el("p", {}, `${count} ${count === 1 ? "entry needs" : "entries need"} another look.`),
        ...rest.flatMap((issue) => [el("p", {}, issue.message), leaveOut(issue.path as readonly Step[])].filter((one) => one !== null)),
      )
      answer.replaceChildren(el("p", { class: "waiting" }, "No answer yet."))
    } else if (outcome.error instanceof NoSolutionError) {
      made.tell([])
      const field = (key: string) => fieldAt(input, key)
      answer.replaceChildren(
        refusal(
          outcome.error,
          (key) => field(key)?.label ?? key,
          (key, value) => shownNumber(field(key), value),
          (key, value) => made.set(key.split("."), value),
        ),
      )
    }
    const address =
      JSON.stringify(entered) === JSON.stringify(solver.example) ? `#/${room}/${name}` : `#/${room}/${name}/${packed(entered)}`
    if (location.hash !== address) history.replaceState(null, "", address)
  }
  /** A button for what the form does not show: an address of an earlier release may carry it. */
  function leaveOut(path: readonly Step[]) {
    if (path.length === 0 || valueAt(made.value(), path) === undefined) return null
    return el("button", { type: "button", class: "small", click: () => made.set(path, undefined) }, `Leave out: ${path.join(", ")}`)
  }
  const soon = settled(solve, 120)
  solve()

  const tools = el(
    "div",
    { class: "tools" },
    el("button", { type: "button", click: () => void showWorking() }, "Show the working"),
    el("button", { type: "button", click: () => void showCurves() }, "Show the curves"),
    el("button", { type: "button", click: () => void showWhatIf() }, "What if …"),
    el("button", { type: "button", click: (event) => void copyAddress(event.currentTarget as HTMLElement) }, "Copy this address"),
    el(
      "button",
      {
        type: "button",
        class: "quiet",
        click: () => {
          location.hash = `#/${room}/${name}`
          location.reload()
        },
      },
      "Start over",
    ),
  )

  async function showWorking() {
    const { showWorked } = await import("./worked.js")
    more.replaceChildren(showWorked(solver, made.value()))
    more.scrollIntoView({ block: "nearest" })
  }

  async function showCurves() {
    const { resultFigures } = await import("alula/figure")
    const outcome = solver.attempt(made.value())
    const pictures = outcome.ok ? resultFigures(outcome.value) : []
    more.replaceChildren(
      el("h2", {}, "Curves"),
      ...(pictures.length
        ? pictures.map(pictured)
        : [el("p", {}, outcome.ok ? "This answer holds no curve." : "There are curves once there is an answer.")]),
    )
    more.scrollIntoView({ block: "nearest" })
  }

  async function showWhatIf() {
    const [{ sweep }, { curve }] = await Promise.all([import("alula/study"), import("./curve.js")])
    const ins = numbersIn(input, made.value())
    const outs = numbersOut(solver.output as unknown as AnyOutFields)
    if (ins.length === 0 || outs.length === 0) return more.replaceChildren(el("p", {}, "There is no number to vary here."))
    const [inId, outId] = [newId(), newId()]
    const pick = (id: string, list: readonly Single[]) =>
      el("select", { id }, ...list.map((one, i) => el("option", { value: String(i) }, one.label)))
    const [chosenIn, chosenOut] = [pick(inId, ins), pick(outId, outs)]
    const picture = el("div", { class: "picture", "aria-live": "polite" })
    const draw = async () => {
      const [x, y] = [ins[Number(chosenIn.value)] as Single, outs[Number(chosenOut.value)] as Single]
      let si: unknown
      try {
        si = x.path.split(".").reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], solver.read(made.value() as object))
      } catch {
        return picture.replaceChildren(el("p", {}, "Mend the entries first."))
      }
      const here = typeof si === "number" ? si : null
      if (here === null) return
      const field = fieldAt(input, x.path) as { min?: number; max?: number; above?: number; below?: number; whole?: boolean }
      // what is asked for, or as near as the field allows
      const within = (value: number) =>
        Math.min(Number(field.max ?? field.below ?? value), Math.max(Number(field.min ?? field.above ?? value), value))
      const [from, to] = [within(here === 0 ? -1 : here - Math.abs(here) * 0.5), within(here === 0 ? 1 : here + Math.abs(here) * 0.5)]
      const count = 41
      const steps = Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1))
      const values = [...new Set(field.whole ? steps.map(Math.round) : steps)].filter((v) => v !== field.above && v !== field.below)
      try {
        const table = await sweep(solver as never, made.value() as never, { [x.path]: values } as never, { outputs: [y.path] } as never)
        const { inputs, outputs } = table as unknown as { inputs: Record<string, number[]>; outputs: Record<string, (number | null)[]> }
        picture.replaceChildren(curve({ ...x, values: inputs[x.path] ?? [] }, { ...y, values: outputs[y.path] ?? [] }, here))
      } catch (error) {
        picture.replaceChildren(el("p", { class: "fault" }, error instanceof Error ? error.message : "No picture of this."))
      }
    }
    for (const select of [chosenIn, chosenOut]) select.addEventListener("change", () => void draw())
    more.replaceChildren(
      el("h2", {}, "What if"),
      el("div", { class: "picks" }, el("label", { for: inId }, "Vary"), chosenIn, el("label", { for: outId }, "and see"), chosenOut),
      picture,
    )
    await draw()
    more.scrollIntoView({ block: "nearest" })
  }

  return el(
    "article",
    { class: "calculator" },
    el("h1", {}, solver.title),
    lost ? el("p", { class: "faults", role: "alert" }, "The entries in this address cannot be read: this is the example.") : null,
    el(
      "div",
      { class: "sides" },
      el("section", { "aria-label": "What is given" }, top, made.element),
      el("section", { "aria-label": "Answer" }, el("h2", {}, "Answer"), answer, tools, more),
    ),
  )
}

async function copyAddress(button: HTMLElement) {
  try {
    await navigator.clipboard.writeText(location.href)
    button.textContent = "Copied"
  } catch {
    button.textContent = "Copy it from the address bar"
  }
}

/** The description at a path, as far as groups lead. */
function fieldAt(fields: AnyFields, path: string): AnyField | undefined {
  return path.split(".").reduce<AnyField | undefined>((field, key, i) => {
    const within =
      i === 0
        ? fields
        : field?.kind === "group"
          ? (field as unknown as { fields: AnyFields }).fields
          : field?.kind === "list"
            ? ({ [key]: field.of } as AnyFields)
            : undefined
    return within?.[key]
  }, undefined)
}

const shownNumber = (field: AnyField | undefined, value: number) =>
  field && Object.hasOwn(kinds, field.kind) ? formatQuantity(field.kind as never, value) : formatNumber(value)
