import { type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { areaOf, touchCaution } from "../conductor.js"
import { bladeFuse, FUSE_WITHIN } from "../data.js"
import { bundledCurrent } from "../limits.js"
import { wireCautions } from "../overload.js"
import { BLADE, CIRCULAR_MILS, CONNECTORS, FUSE_PLACE, FUSEOLOGY, KIRCHHOFF, LITHIUM_CHARGE } from "../sources.js"
import { inAir, largestFuse, ratedCurrentOf, SHORT_LIMIT, touchCurrentOf } from "../withstand.js"
import { guardedWires } from "./guards.js"
import type { Harness, HarnessCaution, HarnessInput } from "./types.js"

type Si = SiOf<HarnessInput>

/** Heat from which a small contact is too hot to touch, W. */
const WARM = 0.5

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

/** The worst of some things, by how far each is beyond its limit, and words that tell of the others; null where there are none. */
function worstOf<T>(things: readonly T[], beyond: (thing: T) => number): { readonly worst: T; readonly more: string } | null {
  const [first, ...rest] = things
  if (first === undefined) return null
  const worst = rest.reduce((a, b) => (beyond(b) > beyond(a) ? b : a), first)
  return { worst, more: rest.length > 0 ? ` (the worst of ${things.length})` : "" }
}

/** Cautions of fuses by what they carry. */
function fuseCautions(si: Si, carried: (name: string) => number): Caution<"fuse-near-rating" | "fuse-overloaded">[] {
  const found: Caution<"fuse-near-rating" | "fuse-overloaded">[] = []
  const share = (f: Si["fuses"][number]) => carried(f.name) / f.fuseRating
  const over = worstOf(
    si.fuses.filter((f) => share(f) > 1),
    share,
  )
  if (over)
    found.push(
      caution(
        "fuse-overloaded",
        "warning",
        "Fuse '{fuse}' carries {carried current} and is rated {rating current}{more}: it may also carry 135 % for many minutes while wires heat, and opens in the end. Find out why, before a larger fuse.",
        FUSEOLOGY,
        { fuse: over.worst.name, carried: carried(over.worst.name), rating: over.worst.fuseRating, more: over.more },
      ),
    )
  const near = worstOf(
    si.fuses.filter((f) => share(f) > 0.75 && share(f) <= 1),
    share,
  )
  if (near)
    found.push(
      caution(
        "fuse-near-rating",
        "caution",
        "Fuse '{fuse}' carries {carried current} of its {rating current}{more}: above 75 % it may open in time.",
        FUSEOLOGY,
        { fuse: near.worst.name, carried: carried(near.worst.name), rating: near.worst.fuseRating, more: near.more },
      ),
    )
  return found
}

/** The caution of a fuse that does not guard a wire behind it; the one furthest above what its wire takes speaks for all. */
function guardCautions(si: Si): Caution<"fuse-above-wire">[] {
  const known = new Map<string, number>()
  const mostFor = (wire: Si["wires"][number]) => {
    const key = [areaOf(wire), wire.material, wire.stranding].join()
    const most = known.get(key) ?? largestFuse(inAir(wire), SHORT_LIMIT)
    known.set(key, most)
    return most
  }
  const pairs = guardedWires(si).map(({ wire, fuse }) => {
    const [w, f] = [si.wires[wire] as Si["wires"][number], si.fuses[fuse] as Si["fuses"][number]]
    return { wire: w, fuse: f, most: mostFor(w) }
  })
  const found = worstOf(
    pairs.filter((p) => p.fuse.fuseRating > p.most),
    (p) => p.fuse.fuseRating / p.most,
  )
  if (!found) return []
  const { fuse, wire, most } = found.worst
  return [
    caution(
      "fuse-above-wire",
      "warning",
      "Fuse '{fuse}' of {rating current} does not guard wire '{wire}'{more}: it may let {longCurrent current} flow for many minutes. Even alone in still air at 25 °C with 80 °C insulation that wire takes a fuse of {largestFuse current} at most; in a bundle or under padding, less. Take a smaller fuse or a thicker wire.",
      BLADE,
      {
        fuse: fuse.name,
        rating: fuse.fuseRating,
        wire: wire.name,
        more: found.more,
        longCurrent: bladeFuse.longMultiple * fuse.fuseRating,
        largestFuse: most,
      },
    ),
  ]
}

/** Cautions of contacts and switches. */
function contactCautions(si: Si, out: Harness, carried: (name: string) => number): Caution<"hot-connector" | "warm-connector">[] {
  const contacts = [...si.contacts, ...si.switches]
  const heats = new Map(out.branches.map((b) => [b.name, b.heat]))
  const share = (c: (typeof contacts)[number]) => carried(c.name) / (c.ratedCurrent ?? Number.POSITIVE_INFINITY)
  const heat = (c: (typeof contacts)[number]) => heats.get(c.name) ?? 0
  const found: Caution<"hot-connector" | "warm-connector">[] = []
  const over = worstOf(
    contacts.filter((c) => share(c) > 1),
    share,
  )
  if (over)
    found.push(
      caution(
        "hot-connector",
        "warning",
        "Contact '{contact}' carries {carried current} and is rated {rating current}{more}: it heats, ages and can burn or melt. Use a larger one.",
        CONNECTORS,
        { contact: over.worst.name, carried: carried(over.worst.name), rating: over.worst.ratedCurrent as number, more: over.more },
      ),
    )
  const warm = worstOf(
    contacts.filter((c) => share(c) <= 1 && heat(c) > WARM),
    heat,
  )
  if (warm)
    found.push(
      caution(
        "warm-connector",
        "caution",
        "Contact '{contact}' gives off {heat power}{more}: a small connector gets too hot to touch, and its resistance rises as it ages.",
        commonPractice,
        { contact: warm.worst.name, heat: heat(warm.worst), more: warm.more },
      ),
    )
  return found
}

/** Hazards and limits of a harness. */
export function harnessCautions(si: Si, out: Harness): Caution<HarnessCaution>[] {
  const found: Caution<HarnessCaution>[] = []
  const byName = new Map(out.branches.map((b) => [b.name, Math.abs(b.current)]))
  const carried = (name: string) => byName.get(name) ?? 0
  const unfused = unfusedWire(si)
  if (unfused !== null)
    found.push(
      caution(
        "unfused-wire",
        "warning",
        "Wire '{wire}' leaves a source with no fuse ahead of it: a short in it burns along the wearer's body. Put the fuse within 18 cm of the positive pole, and have a qualified person check the build.",
        FUSE_PLACE,
        { wire: unfused },
      ),
    )
  found.push(...fuseCautions(si, carried), ...guardCautions(si), ...contactCautions(si, out, carried), ...wiresCautions(si, carried))
  const fedBack = worstOf(
    out.sources.filter((s) => s.current < -1e-9),
    (s) => -s.current,
  )
  if (fedBack)
    found.push(
      caution(
        "source-fed-back",
        "warning",
        "Source '{source}' is being fed {fedBack current} by another{more}: lithium cells charged this way have no charger watching them. Never join unequal packs directly.",
        LITHIUM_CHARGE,
        { source: fedBack.worst.name, fedBack: -fedBack.worst.current, more: fedBack.more },
      ),
    )
  const off = out.loads.filter((l) => !l.fed).map((l) => `'${l.name}'`)
  if (off.length > 0)
    found.push(caution("load-off", "note", "No closed path to a source: {which} off.", KIRCHHOFF, { which: off.join(", ") }))
  const reversed = worstOf(
    out.loads.filter((l) => l.fed && l.voltage < 0 && l.type !== "resistance"),
    (l) => -l.voltage,
  )
  if (reversed)
    found.push(
      caution("reversed-load", "warning", "Load '{load}' sees {seen voltage}{more}: its current cannot flow this way.", KIRCHHOFF, {
        load: reversed.worst.name,
        seen: reversed.worst.voltage,
        more: reversed.more,
      }),
    )
  const volts = out.nodes.flatMap((n) => (n.voltage === null ? [] : [n.voltage]))
  return [...found, ...touchCaution("highest", Math.max(...volts) - Math.min(...volts))]
}

/** Cautions of wires by what they carry: first what none bears even alone in still air, else what a bundle may not have. */
function wiresCautions(si: Si, carried: (name: string) => number): Caution<HarnessCaution>[] {
  const loaded = si.wires.map((w) => ({ ...w, current: carried(w.name) }))
  const known = new Map<string, { readonly rated: number; readonly touch: number }>()
  const knownOf = (w: (typeof loaded)[number]) => {
    const key = [areaOf(w), w.material, w.stranding].join()
    const found = known.get(key) ?? { rated: ratedCurrentOf(inAir(w)), touch: touchCurrentOf(inAir(w)) }
    known.set(key, found)
    return found
  }
  const share = (w: (typeof loaded)[number]) => w.current / knownOf(w).rated
  const over = worstOf(
    loaded.filter((w) => share(w) > 1),
    share,
  )
  if (over) return wireCautions(over.worst, "carried", over.worst.current, `wire '${over.worst.name}'${over.more}`)
  const heat = (w: (typeof loaded)[number]) => w.current / knownOf(w).touch
  const hot = worstOf(
    loaded.filter((w) => heat(w) > 1),
    heat,
  )
  const burns = hot ? wireCautions(hot.worst, "carried", hot.worst.current, `wire '${hot.worst.name}'${hot.more}`) : []
  const perMil = (w: (typeof loaded)[number]) => w.current / bundledCurrent(areaOf(w))
  const thin = worstOf(
    loaded.filter((w) => perMil(w) > 1),
    perMil,
  )
  if (!thin) return burns
  return [
    ...burns,
    caution(
      "thin-wire",
      "caution",
      "Wire '{wire}' carries {carried current}, more than 700 circular mils per ampere allow ({bundled current}){more}: check its temperature with wireHeating before it lies in a bundle or under padding.",
      CIRCULAR_MILS,
      { wire: thin.worst.name, carried: thin.worst.current, bundled: bundledCurrent(areaOf(thin.worst)), more: thin.more },
    ),
  ]
}
