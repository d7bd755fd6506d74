// The page of a whole creature: start from one, change it by subject, and see what it does while typing.
import type { ReportContent } from "alula/report"
import { assessRig } from "alula/rig"
import { type AnyFields, InputError, type Issue } from "alula/solver"
import { type StarterKind, starters } from "alula/starters"
import { type Drawn, el, newId, pictured, settled } from "./dom.js"
import { form } from "./form.js"

interface Told {
  readonly id: number
  readonly content?: ReportContent
  readonly html?: string
  readonly markdown?: string
  readonly issues?: readonly Issue[]
  readonly failed?: string
  readonly sheet?: string
  readonly mended?: { readonly ways: readonly { readonly text: string; readonly rig: object }[]; readonly unmended: readonly string[] }
  readonly played?: { readonly events: readonly { readonly time: number; readonly sentence: string }[]; readonly figures: readonly Drawn[] }
}

/** What comes first on the page; the rest follows as described. */
const FIRST = ["name", "note", "motions", "power", "programme", "day", "posture", "wearer", "parts"]
const inOrder = (fields: AnyFields): AnyFields =>
  Object.fromEntries(
    [...FIRST, ...Object.keys(fields).filter((key) => !FIRST.includes(key))].flatMap((key) => (fields[key] ? [[key, fields[key]]] : [])),
  )
const marks: Readonly<Record<string, string>> = {
  "falls short": "✗",
  marginal: "≈",
  meets: "✓",
  "not enough data": "?",
  "cannot be judged": "?",
}

export function rigPage(): HTMLElement {
  const worker = new Worker(new URL("./rig-worker.ts", import.meta.url), { type: "module" })
  const [answer, problems, editor] = [
    el("div", { class: "answer", "aria-live": "polite", tabindex: -1 }),
    el("div", { class: "faults", role: "alert" }),
    el("div", {}),
  ]
  const stage = el("div", { "aria-live": "polite" })
  let asked = 0
  let last: Told | null = null
  let made: ReturnType<typeof form> | null = null

  const ask = () => {
    last = null
    // found for what stood here before
    stage.replaceChildren()
    if (made) worker.postMessage({ id: ++asked, rig: made.value() })
    answer.classList.add("stale")
  }
  const soon = settled(ask, 250)
  worker.addEventListener("error", () => problems.replaceChildren(el("p", {}, "It cannot be worked out here: load the page again.")))
  worker.addEventListener("message", ({ data }: MessageEvent<Told>) => {
    if (data.sheet !== undefined) return save(`${nameOf()}-build-sheet.html`, "text/html", data.sheet)
    if (data.played) {
      const { events, figures } = data.played
      stage.replaceChildren(
        el("h2", {}, "In time"),
        el("ul", { class: "checks" }, ...events.map(({ sentence }) => el("li", {}, sentence))),
        ...figures.map(pictured),
      )
      return stage.scrollIntoView({ block: "nearest" })
    }
    if (data.id !== asked) return
    if (data.mended) return showMended(data.mended)
    // what stands there while entries are wrong is the answer to others
    answer.classList.toggle("stale", !data.content)
    const rest = made?.tell(data.issues ?? []) ?? []
    problems.replaceChildren(
      ...(data.issues?.length
        ? [el("p", {}, `${data.issues.length} ${data.issues.length === 1 ? "entry needs" : "entries need"} another look.`)]
        : []),
      ...rest.map((issue) => el("p", {}, issue.message)),
      ...(data.failed ? [el("p", {}, data.failed)] : []),
    )
    if (data.content) {
      last = data
      answer.replaceChildren(...answerOf(data.content, data.html ?? ""))
    }
  })

  /** What would mend it, each a button that puts it into the document. */
  function showMended({ ways, unmended }: NonNullable<Told["mended"]>) {
    const take = (rig: object) => {
      open(rig)
      stage.replaceChildren()
      answer.focus()
    }
    stage.replaceChildren(
      el("h2", {}, "What would mend it"),
      ...(ways.length + unmended.length === 0 ? [el("p", {}, "Nothing falls short or comes close to its limit.")] : []),
      el(
        "ul",
        { class: "checks" },
        ...ways.map(({ text, rig }) =>
          el("li", {}, `${text} `, el("button", { type: "button", class: "small", click: () => take(rig) }, "Take it")),
        ),
        ...unmended.map((text) => el("li", {}, text)),
      ),
      el("p", { class: "hint" }, "Advice by calculation, not a clearance: try each change slowly and with a helper first."),
    )
    stage.scrollIntoView({ block: "nearest" })
  }

  const open = (document: object) => {
    made = form(inOrder(assessRig.input as unknown as AnyFields), assessRig.either, document, soon)
    editor.replaceChildren(made.element)
    answer.replaceChildren(el("p", { class: "waiting" }, "Working it out …"))
    ask()
  }

  const [startId, fileId] = [newId(), newId()]
  const kinds = Object.keys(starters) as StarterKind[]
  const start = el("select", { id: startId }, ...kinds.map((kind) => el("option", { value: kind }, kind)))
  const openStart = () => open(structuredClone(starters[start.value as StarterKind].rig))
  start.addEventListener("change", openStart)
  const file = el("input", { id: fileId, type: "file", accept: "application/json,.json,.jsonc" })
  file.addEventListener("change", () => {
    void (async () => {
      const text = await file.files?.[0]?.text()
      file.value = ""
      if (text === undefined) return
      try {
        const { readRigDocument } = await import("./rig-document.js")
        open(readRigDocument(text))
      } catch (error) {
        const lines = error instanceof InputError ? error.issues.map(({ message }) => message) : ["This file is no creature's document."]
        problems.replaceChildren(...["The file was not opened:", ...lines].map((line) => el("p", {}, line)))
        problems.scrollIntoView({ block: "nearest" })
      }
    })()
  })
  const save = (name: string, type: string, text: string | undefined) => {
    if (text === undefined) return
    const address = URL.createObjectURL(new Blob([text], { type }))
    el("a", { href: address, download: name }).click()
    setTimeout(() => URL.revokeObjectURL(address), 1000)
  }
  const nameOf = () =>
    String((made?.value() as { name?: string } | undefined)?.name ?? "creature")
      .replace(/[^\p{L}\p{N}_-]+/gu, "-")
      .toLowerCase()
  const saveReport = () => {
    if (last) return save(`${nameOf()}.html`, "text/html", last.html)
    problems.append(el("p", {}, "There is a report once there is an answer to what stands here."))
    problems.scrollIntoView({ block: "nearest" })
  }
  const lookForMends = () => {
    if (!made) return
    stage.replaceChildren(el("p", { class: "waiting" }, "Trying changes, each on the whole creature …"))
    worker.postMessage({ id: asked, rig: made.value(), mend: true })
  }
  openStart()

  return el(
    "article",
    { class: "calculator rig" },
    el("h1", {}, "Whole creature"),
    el(
      "div",
      { class: "bar" },
      el("label", { for: startId }, "Start from"),
      start,
      el("label", { for: fileId }, "or open a file"),
      file,
      el(
        "button",
        {
          type: "button",
          click: () => save(`${nameOf()}.json`, "application/json", made ? JSON.stringify(made.value(), null, 2) : undefined),
        },
        "Save the document",
      ),
      el("button", { type: "button", click: saveReport }, "Save the report"),
      el("button", { type: "button", click: lookForMends }, "What would mend it?"),
      el(
        "button",
        { type: "button", click: () => made && worker.postMessage({ id: asked, rig: made.value(), play: true }) },
        "Play it in time",
      ),
      el(
        "button",
        { type: "button", click: () => made && worker.postMessage({ id: asked, rig: made.value(), sheet: true }) },
        "Save the build sheet",
      ),
    ),
    el(
      "div",
      { class: "sides" },
      el("section", { "aria-label": "Answer" }, answer, stage),
      el("section", { "aria-label": "The creature" }, problems, editor),
    ),
  )
}

/** The answer: does it work, how long, what first, what could hurt; one picture; then every check by what it is about. */
function answerOf(content: ReportContent, html: string): HTMLElement[] {
  const page = new DOMParser().parseFromString(html, "text/html")
  const picture = page.querySelector("svg")
  // the report's own style, kept to its picture
  const frame = el("div", { class: "frame" })
  if (picture)
    frame
      .attachShadow({ mode: "open" })
      .append(
        ...[...page.querySelectorAll("style")].map((one) => el("style", {}, (one.textContent ?? "").replaceAll(":root", ":host"))),
        document.importNode(picture, true),
      )
  const seconds = (value: number | null) => (value === null ? "does not get there" : `${Number(value.toPrecision(2))} s`)
  const way = (name: string, one: ReportContent["motions"][number]["out"]) =>
    `${name} ${one.certain ? "" : "about "}${seconds(one.duration)}${one.wanted === null ? "" : ` (wanted: ${seconds(one.wanted)})`}`
  return [
    el("p", { class: `state ${content.state}` }, content.answer),
    el(
      "ul",
      { class: "times" },
      ...content.motions.map((motion) =>
        el("li", {}, el("strong", {}, motion.name), `: ${way("out", motion.out)}, ${way("back", motion.back)}`),
      ),
    ),
    ...(content.first
      ? [el("p", {}, el("strong", {}, "Mend first: "), `${content.first.title} (${content.first.subject}). ${content.first.sentence}`)]
      : []),
    ...(content.hazards.length
      ? [
          el("h2", {}, "What could hurt somebody"),
          el("ul", { class: "checks" }, ...content.hazards.map((f) => el("li", {}, `${f.title} (${f.subject}): ${f.sentence}`))),
        ]
      : []),
    ...(picture ? [el("figure", {}, frame)] : []),
    el("h2", {}, "Every check"),
    ...content.subjects.map(({ subject, findings }) =>
      el(
        "details",
        { class: "part", open: findings.some((f) => f.verdict === "falls short") },
        el("summary", {}, `${subject}: ${summary(findings)}`),
        el(
          "ul",
          { class: "checks" },
          ...findings.map((f) =>
            el(
              "li",
              { class: f.verdict.replaceAll(" ", "-") },
              el("span", { class: "mark", "aria-hidden": "true" }, marks[f.verdict] ?? ""),
              el("strong", {}, `${f.title}: ${f.verdict}. `),
              f.sentence,
            ),
          ),
        ),
      ),
    ),
    el(
      "details",
      { class: "part" },
      el("summary", {}, `Cautions (${content.cautions.length})`),
      el(
        "ul",
        { class: "cautions" },
        ...content.cautions.map((c) => el("li", { class: c.severity }, c.message, el("span", { class: "source" }, ` ${c.source}`))),
      ),
    ),
  ]
}

function summary(findings: ReportContent["subjects"][number]["findings"]): string {
  const count = (verdict: string) => findings.filter((f) => f.verdict === verdict).length
  const open = count("not enough data") + count("cannot be judged")
  return [
    [count("falls short"), "short"],
    [count("marginal"), "close"],
    [open, "open"],
    [count("meets"), "met"],
  ]
    .filter(([n]) => n)
    .map(([n, word]) => `${n} ${word}`)
    .join(", ")
}
