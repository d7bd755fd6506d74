// A form built from a solver's own descriptions: nothing here knows any solver.
import { formatNumber, formatQuantity, inUnit, kinds, plainUnit, readableUnit, readQuantity } from "alula/quantity"
import type { AnyField, AnyFields, Issue } from "alula/solver"
import { el, newId } from "./dom.js"
import { type Entered, type Step, valueAt, withValue } from "./entered.js"
import { type Rule, readable, ruleText } from "./form-words.js"

/** A form: what it shows, what was entered, and where faults are told. */
export interface Form {
  readonly element: HTMLElement
  value(): unknown
  /** Puts another value in, as a button that mends something does. */
  set(path: readonly Step[], value: unknown): void
  /** Tells faults beside their fields; those without a field are returned. */
  tell(issues: readonly Issue[]): readonly Issue[]
}

type Kind = keyof typeof kinds
const isKind = (kind: string): kind is Kind => Object.hasOwn(kinds, kind)
const NUMBER = /^\s*([-+\u2212]?[\d.,/ \u00bc\u00bd\u00be]+(?:[eE][-+]?\d+)?)\s*(.*)$/

/** A form for fields, starting from a value. */
export function form(fields: AnyFields, either: readonly unknown[], start: unknown, changed: () => void): Form {
  let entered = start
  const slots = new Map<string, { readonly wrap: HTMLElement; readonly control: HTMLElement; readonly note: HTMLElement }>()
  const element = el("div", { class: "form" })

  const put = (path: readonly Step[], value: unknown) => {
    entered = withValue(entered, path, value)
    changed()
  }
  const rebuild = (focus?: string) => {
    const open = new Set([...element.querySelectorAll<HTMLDetailsElement>("details[open]")].map((d) => d.dataset.path))
    slots.clear()
    element.replaceChildren(...group(fields, either, []))
    for (const d of element.querySelectorAll<HTMLDetailsElement>("details")) if (open.has(d.dataset.path)) d.open = true
    if (focus) keepFocus(focus)
  }
  /** After a part was added or taken out, a keyboard goes on where it was. */
  const keepFocus = (place: string) => {
    const part = element.querySelector<HTMLElement>(`[data-path="${place}"]`)
    if (part instanceof HTMLDetailsElement) part.open = true
    const control = part?.querySelector<HTMLElement>(":scope > summary, :scope > .add") ?? slots.get(place)?.control
    control?.focus()
  }
  const restructure = (path: readonly Step[], value: unknown) => {
    put(path, value)
    rebuild(path.join("."))
  }

  /** A label, a control, what may be entered, and room for a fault. */
  function slot(path: readonly Step[], field: AnyField, control: HTMLElement, beside: HTMLElement | null, hint: string): HTMLElement {
    const [id, hintId, noteId] = [newId(), newId(), newId()]
    control.id = id
    control.setAttribute("aria-describedby", `${hintId} ${noteId}`)
    const note = el("p", { class: "fault", id: noteId })
    const wrap = el(
      "div",
      { class: "field" },
      el("label", { for: id }, field.label),
      el("div", { class: "entry" }, control, beside),
      el("p", { class: "hint", id: hintId }, [field.help, hint].filter(Boolean).join(" ")),
      note,
    )
    slots.set(path.join("."), { wrap, control, note })
    return wrap
  }

  const shownDefault = (field: AnyField): string => {
    const { default: value } = field
    if (value === undefined) return ""
    if (value === null || value === "") return "May be left out."
    if (typeof value === "object") return ""
    const text =
      typeof value === "number" && isKind(field.kind)
        ? formatQuantity(field.kind, value)
        : typeof value === "number"
          ? formatNumber(value)
          : value === true
            ? "yes"
            : value === false
              ? "no"
              : readable(String(value))
    return `Left out: ${text}.`
  }
  const range = (field: {
    readonly min?: unknown
    readonly max?: unknown
    readonly above?: unknown
    readonly below?: unknown
    readonly kind: string
  }) => {
    const shown = (limit: unknown) =>
      typeof limit === "number" ? (isKind(field.kind) ? formatQuantity(field.kind, limit) : formatNumber(limit)) : readable(String(limit))
    const low = field.above !== undefined ? `above ${shown(field.above)}` : field.min !== undefined ? shown(field.min) : null
    const high = field.below !== undefined ? `below ${shown(field.below)}` : field.max !== undefined ? shown(field.max) : null
    if (low === null || high === null) return ""
    return field.above !== undefined || field.below !== undefined
      ? `${low}, ${field.below !== undefined ? high : `up to ${high}`}.`
      : `${low} to ${high}.`
  }

  function quantity(path: readonly Step[], field: Extract<AnyField, { readonly symbol: string }>): HTMLElement {
    const kind = field.kind as Kind
    const raw = valueAt(entered, path)
    const units = Object.keys(kinds[kind].units)
    const shownUnit = readable
    let [text, unit] = ["", plainUnit(("unit" in field && field.unit) || usualUnit(field, kind))]
    if (typeof raw === "number") {
      const wished = plainUnit(("unit" in field && field.unit) || readableUnit(kind, raw))
      unit = units.includes(wished) ? wished : (units[0] as string)
      text = String(Number(inUnit(kind, raw, unit as never).toPrecision(12)))
    } else if (typeof raw === "string") {
      const match = NUMBER.exec(raw)
      const behind = plainUnit(match?.[2]?.trim() ?? "")
      if (match && units.includes(behind)) [text, unit] = [match[1]?.trim() ?? "", behind]
      else text = raw
    }
    if (!units.includes(unit)) unit = units[0] as string
    const box = el("input", { type: "text", inputmode: "decimal", autocomplete: "off", spellcheck: "false", value: text })
    const select = el(
      "select",
      { class: "unit", "aria-label": `Unit of ${field.label}` },
      ...units.map((one) => el("option", { value: one, selected: one === unit }, shownUnit(one))),
    )
    const spelled = () => {
      const value = box.value.trim()
      if (value === "") return undefined
      return /[a-z"'%°Ω\u00b5]/i.test(value.replace(/[eE][-+]?\d+$/, "")) ? value : `${value} ${select.value}`
    }
    box.addEventListener("input", () => put(path, spelled()))
    let before = unit
    select.addEventListener("change", () => {
      const si = readQuantity(kind, `${box.value} ${before}`)
      if (typeof si === "number" && box.value.trim()) box.value = String(Number(inUnit(kind, si, select.value as never).toPrecision(12)))
      before = select.value
      put(path, spelled())
    })
    return slot(
      path,
      field,
      box,
      units.length > 1 ? select : el("span", { class: "unit" }, shownUnit(unit)),
      [range(field), shownDefault(field)].filter(Boolean).join(" "),
    )
  }

  function plainNumber(path: readonly Step[], field: AnyField): HTMLElement {
    const raw = valueAt(entered, path)
    const box = el("input", {
      type: "text",
      inputmode: "decimal",
      autocomplete: "off",
      value: raw === null || raw === undefined ? "" : String(raw),
    })
    box.addEventListener("input", () => {
      const text = box.value.trim()
      put(path, text === "" ? undefined : Number.isNaN(Number(text)) ? text : Number(text))
    })
    return slot(path, field, box, null, [range(field as never), shownDefault(field)].filter(Boolean).join(" "))
  }

  function choice(path: readonly Step[], field: Extract<AnyField, { readonly kind: "choice" }>): HTMLElement {
    const raw = valueAt(entered, path)
    const optional = field.default !== undefined
    const select = el(
      "select",
      {},
      ...(optional || raw === undefined
        ? [el("option", { value: "", selected: raw === undefined || raw === null }, optional ? "left out" : "choose …")]
        : []),
      ...Object.entries(field.options).map(([value, label]) => el("option", { value, selected: value === raw }, label as string)),
    )
    select.addEventListener("change", () => put(path, select.value === "" ? undefined : select.value))
    const told =
      typeof field.default === "string" ? `Left out: ${field.options[field.default as never] ?? field.default}.` : shownDefault(field)
    return slot(path, field, select, null, told)
  }

  function flag(path: readonly Step[], field: AnyField): HTMLElement {
    const raw = valueAt(entered, path) ?? field.default
    const box = el("input", { type: "checkbox", checked: raw === true })
    box.addEventListener("change", () => put(path, box.checked))
    return slot(path, field, box, null, "")
  }

  function text(path: readonly Step[], field: AnyField): HTMLElement {
    const raw = valueAt(entered, path)
    const box = el("input", { type: "text", value: typeof raw === "string" ? raw : "" })
    box.addEventListener("input", () => put(path, box.value === "" ? undefined : box.value))
    return slot(path, field, box, null, shownDefault(field))
  }

  function list(path: readonly Step[], field: Extract<AnyField, { readonly kind: "list" }>): HTMLElement {
    const entries = (valueAt(entered, path) ?? []) as readonly unknown[]
    const isPlain = !["group", "variant", "list"].includes(field.of.kind)
    const add = el(
      "button",
      { type: "button", class: "small add", click: () => restructure(path, [...entries, blank(field.of, entries.at(-1))]) },
      `Add: ${field.of.label}`,
    )
    const items = entries.map((_, i) => {
      const at = [...path, i]
      const remove = el(
        "button",
        {
          type: "button",
          class: "small quiet",
          "aria-label": `Take out ${field.of.label} ${i + 1}`,
          click: () =>
            restructure(
              path,
              entries.filter((__, k) => k !== i),
            ),
        },
        "Take out",
      )
      const title = nameOf(entries[i]) ?? `${field.of.label} ${i + 1}`
      if (isPlain) return el("div", { class: "item" }, one(at, { ...field.of, label: `${field.of.label} ${i + 1}` }), remove)
      return folded(at, title, () => [...inside(at, field.of), remove], entries.length <= 3 && path.length < 2)
    })
    const section = el(
      "fieldset",
      { class: "list", "data-path": path.join(".") },
      el("legend", {}, field.label),
      note(path, field),
      ...items,
      entries.length < field.max ? add : null,
    )
    return section
  }

  /** A part that is built when it is first opened. */
  function folded(path: readonly Step[], title: string, holds: () => readonly HTMLElement[], isOpen: boolean): HTMLElement {
    const details = el("details", { "data-path": path.join("."), class: "part" }, el("summary", {}, title))
    const fill = () => {
      if (details.open && details.childElementCount === 1) details.append(...holds())
    }
    details.addEventListener("toggle", fill)
    if (isOpen) {
      details.open = true
      fill()
    }
    return details
  }

  /** Room for what is wrong with a part as a whole. */
  function note(path: readonly Step[], field: { readonly help?: string; readonly label: string }): HTMLElement {
    const fault = el("p", { class: "fault", tabindex: -1 })
    const wrap = el("div", {}, field.help ? el("p", { class: "hint" }, field.help) : null, fault)
    slots.set(path.join("."), { wrap, control: fault, note: fault })
    return wrap
  }

  function inside(path: readonly Step[], field: AnyField): readonly HTMLElement[] {
    if (field.kind === "group") {
      const { fields: within, either: rules = [] } = field as unknown as { fields: AnyFields; either?: readonly unknown[] }
      return [note(path, field), ...group(within, rules, path)]
    }
    if (field.kind === "variant") {
      const members = (
        field as unknown as { of: Readonly<Record<string, { label: string; fields: AnyFields; either?: readonly unknown[] }>> }
      ).of
      const type = (valueAt(entered, path) as Entered | undefined)?.type as string | undefined
      const select = el(
        "select",
        {},
        ...(type === undefined ? [el("option", { value: "", selected: true }, "choose …")] : []),
        ...Object.entries(members).map(([value, member]) => el("option", { value, selected: value === type }, member.label)),
      )
      select.addEventListener("change", () => {
        const kept = (valueAt(entered, path) ?? {}) as Record<string, unknown>
        const known = members[select.value]?.fields ?? {}
        restructure(path, { ...Object.fromEntries(Object.entries(kept).filter(([key]) => key in known)), type: select.value })
      })
      const member = type === undefined ? undefined : members[type]
      return [
        note(path, field),
        slot([...path, "type"], { kind: "text", label: "type", min: 1, max: 100 }, select, null, ""),
        ...(member ? group(member.fields, member.either ?? [], path) : []),
      ]
    }
    return [one(path, field)]
  }

  function one(path: readonly Step[], field: AnyField): HTMLElement {
    if (field.kind === "list") return list(path, field as never)
    if (field.kind === "group" || field.kind === "variant") {
      const isThere = valueAt(entered, path) !== undefined && valueAt(entered, path) !== null
      if (!isThere && field.default !== undefined)
        return el(
          "div",
          { class: "absent" },
          note(path, field),
          el("button", { type: "button", class: "small", click: () => restructure(path, {}) }, `State: ${field.label}`),
        )
      const remove =
        field.default !== undefined
          ? el("button", { type: "button", class: "small quiet", click: () => restructure(path, undefined) }, `Leave out: ${field.label}`)
          : null
      return folded(
        path,
        field.label,
        () => [...inside(path, field), ...(remove ? [remove] : [])],
        path.length < 2 && path.length > 0 && fieldsCount < 14,
      )
    }
    if (field.kind === "choice") return choice(path, field as never)
    if (field.kind === "flag") return flag(path, field)
    if (field.kind === "text") return text(path, field)
    return isKind(field.kind) ? quantity(path, field as never) : plainNumber(path, field)
  }

  function group(within: AnyFields, rules: readonly unknown[], path: readonly Step[]): HTMLElement[] {
    const told = (rules as readonly Rule[]).map((rule) => el("p", { class: "hint rule" }, ruleText(rule, within)))
    let heading = ""
    const shown = Object.entries(within).flatMap(([key, field]) => {
      const section = field.section ?? ""
      const before = section !== heading && section ? [el("h3", {}, section)] : []
      heading = section
      // what can have one value only is not asked
      if (field.kind === "number" && "min" in field && field.min !== undefined && field.min === field.max) return before
      return [...before, one([...path, key], field)]
    })
    return [...told, ...shown]
  }

  const fieldsCount = Object.keys(fields).length
  rebuild()
  return {
    element,
    value: () => entered,
    set(path, value) {
      put(path, value)
      rebuild(path.join("."))
    },
    tell(issues) {
      for (const { wrap, control, note: room } of slots.values()) {
        wrap.classList.remove("wrong")
        room.textContent = ""
        control.removeAttribute("aria-invalid")
      }
      return issues.filter((issue) => {
        // a fault of a field that is not shown is told at the part it lies in
        for (let n = issue.path.length; n > 0; n--) {
          const found = slots.get(issue.path.slice(0, n).join("."))
          if (!found) continue
          found.wrap.classList.add("wrong")
          for (let part = found.wrap.closest("details"); part; part = part.parentElement?.closest("details") ?? null) part.open = true
          found.note.textContent = [found.note.textContent, issue.message].filter(Boolean).join(" ")
          if (found.control !== found.note) found.control.setAttribute("aria-invalid", "true")
          return false
        }
        return true
      })
    },
  }
}

/** The unit in which a field is thought of: that of its default or limits, as far as they are written with one. */
function usualUnit(field: { readonly default?: unknown; readonly min?: unknown; readonly max?: unknown }, kind: Kind): string {
  const units = [field.default, field.min, field.max].flatMap((value) =>
    typeof value === "string" ? [plainUnit(NUMBER.exec(value)?.[2]?.trim() ?? "")] : [],
  )
  const given = typeof field.default === "number" && field.default !== 0 ? readableUnit(kind, field.default) : null
  return units.find((unit) => Object.hasOwn(kinds[kind].units, unit)) ?? given ?? kinds[kind].si
}

const nameOf = (value: unknown): string | null => {
  const name = (value as { name?: unknown } | null | undefined)?.name
  return typeof name === "string" && name ? name : null
}

/** A new entry of a list: like the one before, or empty. */
const blank = (field: AnyField, like: unknown): unknown =>
  like !== undefined
    ? structuredClone(like)
    : field.kind === "list"
      ? []
      : field.kind === "group" || field.kind === "variant"
        ? {}
        : field.kind === "choice"
          ? Object.keys(field.options)[0]
          : ""
