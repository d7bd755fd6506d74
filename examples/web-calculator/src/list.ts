// The list of all calculators, by what they are about.
import rooms from "virtual:alula-catalogue"
import { el, newId } from "./dom.js"

export function list(): HTMLElement {
  const id = newId()
  const groups = rooms.map(({ room, heading, solvers }) => {
    const items = solvers.map(({ name, title }) => ({
      text: `${title} ${name}`.toLowerCase(),
      item: el("li", {}, el("a", { href: `#/${room}/${name}` }, title)),
    }))
    return { items, section: el("section", {}, el("h2", {}, heading), el("ul", {}, ...items.map((one) => one.item))) }
  })
  const count = el("p", { class: "hint", role: "status" })
  const box = el("input", { id, type: "search", autocomplete: "off" })
  box.addEventListener("input", () => {
    const words = box.value.toLowerCase().split(/\s+/).filter(Boolean)
    let found = 0
    for (const { items, section } of groups) {
      let here = 0
      for (const { text, item } of items) {
        item.hidden = !words.every((word) => text.includes(word))
        if (!item.hidden) here++
      }
      section.hidden = here === 0
      found += here
    }
    count.textContent = words.length ? `${found} found` : ""
  })
  return el(
    "div",
    { class: "all" },
    el("h1", {}, "What do you want to know?"),
    el(
      "p",
      {},
      "Wings, tails, fans, jaws: what moves them, what feeds them, what carries them. For the whole creature at once, see ",
      el("a", { href: "#/rig" }, "Whole creature"),
      ".",
    ),
    el("div", { class: "find" }, el("label", { for: id }, "Find"), box, count),
    el("div", { class: "rooms" }, ...groups.map((one) => one.section)),
  )
}
