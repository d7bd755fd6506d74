import { formatQuantity } from "../quantity/index.js"
import { type Caution, caution, type SiOf } from "../solver/index.js"
import { areaOf } from "./conductor.js"
import type { Harness, HarnessInput } from "./harness-types.js"
import { chassisCurrent } from "./limits.js"

type Si = SiOf<HarnessInput>

/** Wire a fuse may stand away from the positive pole, m. */
const FUSE_WITHIN = 0.18

/** First wire whose far end lies more than 18 cm of wire from a source's positive pole with no fuse or load between. */
function unfusedWire(si: Si): string | null {
  const away = new Map<string, number>(si.sources.map((s) => [s.positive, 0]))
  const links = [...si.wires, ...[...si.contacts, ...si.switches].map((c) => ({ ...c, length: 0 }))]
  for (let grown = true; grown; ) {
    grown = false
    for (const { name, from, to, length } of links)
      for (const [near, far] of [
        [from, to],
        [to, from],
      ] as const) {
        const reach = (away.get(near) ?? Number.POSITIVE_INFINITY) + length
        if (!(reach < (away.get(far) ?? Number.POSITIVE_INFINITY))) continue
        if (reach > FUSE_WITHIN) return name
        away.set(far, reach)
        grown = true
      }
  }
  return null
}

/** Hazards and limits of a harness. */
export function harnessCautions(si: Si, out: Harness): Caution[] {
  const found: Caution[] = []
  const unfused = unfusedWire(si)
  if (unfused !== null)
    found.push(
      caution(
        "unfused-wire",
        "warning",
        `Wire '${unfused}' leaves a source with no fuse ahead of it: a short in it burns along the wearer's body. Put the fuse within 18 cm of the positive pole, and have a qualified person check the build.`,
        "ABYC E-11, clause 11.10 (overcurrent protection within 7 in of the source; by way of suppliers' summaries)",
      ),
    )
  const current = (a: number) => formatQuantity("current", a)
  const branch = (name: string) => out.branches.find((b) => b.name === name)
  for (const fuse of si.fuses) {
    const carried = Math.abs(branch(fuse.name)?.current ?? 0)
    if (carried > 0.75 * fuse.rating)
      found.push(
        caution(
          carried > fuse.rating ? "fuse-overloaded" : "fuse-near-rating",
          carried > fuse.rating ? "warning" : "caution",
          `Fuse '${fuse.name}' carries ${current(carried)} of its ${current(fuse.rating)}: above 75 % it may open in time, and it may also carry 135 % for many minutes while wires heat.`,
          "Fuse characteristics, Fuseology, 2017 (75 % rerating); ISO 8820-3, 2015 (135 %; from memory)",
        ),
      )
  }
  for (const contact of [...si.contacts, ...si.switches]) {
    const state = branch(contact.name)
    const carried = Math.abs(state?.current ?? 0)
    if (contact.rating !== null && carried > contact.rating)
      found.push(
        caution(
          "hot-connector",
          "warning",
          `Contact '${contact.name}' carries ${current(carried)} and is rated ${current(contact.rating)}: it heats, ages and can burn or melt. Use a larger one.`,
          "IEC 60512-5-2, 2002 (current-temperature derating of connectors; from memory)",
        ),
      )
    else if ((state?.heat ?? 0) > 0.5)
      found.push(
        caution(
          "hot-connector",
          "caution",
          `Contact '${contact.name}' gives off ${formatQuantity("power", state?.heat ?? 0)}: a small connector gets too hot to touch, and its resistance rises as it ages.`,
        ),
      )
  }
  for (const wire of si.wires) {
    const carried = Math.abs(branch(wire.name)?.current ?? 0)
    if (carried > chassisCurrent(areaOf(wire)))
      found.push(
        caution(
          "thin-wire",
          "caution",
          `Wire '${wire.name}' carries ${current(carried)}, more than 700 circular mils per ampere allow (${current(chassisCurrent(areaOf(wire)))}): check its temperature with wireHeating before it lies in a bundle or under padding.`,
          "Handbook of Electronic Tables and Formulas (700 circular mils per ampere)",
        ),
      )
  }
  for (const s of out.supplies)
    if (s.current < -1e-9)
      found.push(
        caution(
          "source-fed-back",
          "warning",
          `Source '${s.name}' is being fed ${current(-s.current)} by another: lithium cells charged this way have no charger watching them. Never join unequal packs directly.`,
          "IEC 62133-2, 2017 (charging of lithium cells within stated limits; from memory)",
        ),
      )
  for (const l of out.loads)
    if (!l.fed)
      found.push(caution("load-off", "note", `Load '${l.name}' has no closed path to a source: it is off.`, "Kirchhoff's current law"))
  for (const l of out.loads)
    if (l.fed && l.voltage < 0 && l.type !== "resistance")
      found.push(
        caution(
          "reversed-load",
          "warning",
          `Load '${l.name}' sees ${formatQuantity("voltage", l.voltage)}: its current cannot flow this way.`,
          "Kirchhoff's voltage law",
        ),
      )
  return found
}
