// The working of an answer, for the screen and the printer.
import type { Solver } from "alula/solver"
import { working, workingText } from "alula/working"
import { el } from "./dom.js"

/** The working of what was entered, or why there is none yet. */
export function showWorked(solver: Solver<object, object>, entered: unknown): HTMLElement {
  try {
    return el(
      "section",
      { class: "worked", "aria-label": "Working" },
      el("h2", {}, "Working"),
      el("pre", { tabindex: 0 }, workingText(working(solver, entered as object))),
      el("button", { type: "button", click: () => print() }, "Print"),
    )
  } catch {
    return el("p", {}, "There is a working once there is an answer.")
  }
}
