// Which page an address shows.
import { el } from "./dom.js"
import { list } from "./list.js"

const main = document.getElementById("main") as HTMLElement
let asked = 0

async function pageOf(address: string): Promise<readonly [title: string, page: HTMLElement]> {
  const [room = "", name = "", start = null] = address.replace(/^#?\/?/, "").split("/")
  if (room === "") return ["Calculators", list()]
  if (room === "rig") return ["Whole creature", (await import("./rig.js")).rigPage()]
  const [{ solverAt }, { calculator }] = await Promise.all([import("./rooms.js"), import("./calculator.js")])
  const solver = await solverAt(room, name)
  if (!solver)
    return ["Not found", el("div", {}, el("h1", {}, "There is no such page"), el("p", {}, el("a", { href: "#/" }, "All calculators")))]
  return [solver.title, calculator(room, name, solver, start)]
}

async function show(isFirst: boolean) {
  const mine = ++asked
  try {
    const [title, page] = await pageOf(location.hash)
    if (mine !== asked) return
    document.title = `${title} · Alula`
    main.replaceChildren(page)
    if (!isFirst) {
      main.focus({ preventScroll: true })
      scrollTo(0, 0)
    }
  } catch (error) {
    main.replaceChildren(el("h1", {}, "This page did not load"), el("p", {}, error instanceof Error ? error.message : String(error)))
  }
}

addEventListener("hashchange", () => void show(false))
void show(true)

// without a network the files kept at the first visit serve
if ("serviceWorker" in navigator && import.meta.env.MODE === "production" && location.protocol.startsWith("http"))
  void navigator.serviceWorker.register("./keep.js").catch(() => undefined)
