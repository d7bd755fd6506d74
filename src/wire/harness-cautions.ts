import { type Caution, caution, commonPractice, type SiOf } from "../solver/index.js"
import { areaOf, touchCaution } from "./conductor.js"
import { bladeFuse } from "./data.js"
import { guardedWires } from "./harness-guards.js"
import type { Harness, HarnessInput } from "./harness-types.js"
import { bundledCurrent } from "./limits.js"
import { wireCautions } from "./overload.js"
import { BLADE, CIRCULAR_MILS, CONNECTORS, FUSE_PLACE, FUSEOLOGY, KIRCHHOFF, LITHIUM_CHARGE } from "./sources.js"
import { guards, inAir, largestFuse, SHORT_LIMIT } from "./withstand.js"

type Si = SiOf<HarnessInput>

/** Wire a fuse may stand away from the positive pole, m. */
const FUSE_WITHIN = 0.18

/** First wire whose far end lies more than 18 cm of wire from a source's positive pole with no fuse or load between. */
function unfusedWire(si: Si): number | null {
  const away = new Map<string, number>(si.sources.map((s) => [s.positive, 0]))
  const links = [
    ...si.wires.map((w, wire) => ({ ...w, wire })),
    // nothing but a wire has length, so nothing but a wire can pass the limit
    ...[...si.contacts, ...si.switches].map((c) => ({ ...c, length: 0, wire: null })),
  ]
  for (let grown = true; grown; ) {
    grown = false
    for (const { wire, from, to, length } of links)
      for (const [near, far] of [
        [from, to],
        [to, from],
      ] as const) {
        const reach = (away.get(near) ?? Number.POSITIVE_INFINITY) + length
        if (!(reach < (away.get(far) ?? Number.POSITIVE_INFINITY))) continue
        if (reach > FUSE_WITHIN) return wire
        away.set(far, reach)
        grown = true
      }
  }
  return null
}

/** Cautions of fuses: what they carry, and whether they guard the wires behind them. */
function fuseCautions(si: Si, carried: (name: string) => number): Caution[] {
  const found: Caution[] = []
  si.fuses.forEach((fuse, i) => {
    const current = carried(fuse.name)
    if (!(current > 0.75 * fuse.rating)) return
    const over = current > fuse.rating
    found.push(
      caution(
        over ? "fuse-overloaded" : "fuse-near-rating",
        over ? "warning" : "caution",
        `Fuse '{given.fuses.${i}.name}' carries {carried current} of its {given.fuses.${i}.rating current}: above 75 % it may open in time, and it may also carry 135 % for many minutes while wires heat.` as string,
        FUSEOLOGY,
        { [`given.fuses.${i}.name`]: fuse.name, [`given.fuses.${i}.rating`]: fuse.rating, carried: current },
      ),
    )
  })
  // the weakest wire behind each fuse speaks for the others
  const weakest = new Map<number, { readonly wire: number; readonly most: number }>()
  const known = new Map<string, number>()
  const mostFor = (i: number) => {
    const wire = si.wires[i] as Si["wires"][number]
    const key = [areaOf(wire), wire.metal, wire.stranding].join()
    const most = known.get(key) ?? largestFuse(inAir(wire), SHORT_LIMIT)
    known.set(key, most)
    return most
  }
  for (const { wire, fuse } of guardedWires(si)) {
    const most = mostFor(wire)
    if (most < (weakest.get(fuse)?.most ?? Number.POSITIVE_INFINITY)) weakest.set(fuse, { wire, most })
  }
  for (const [i, { wire, most }] of weakest) {
    const fuse = si.fuses[i] as Si["fuses"][number]
    const size = si.wires[wire] as Si["wires"][number]
    const { long, overload } = guards(fuse.rating, inAir(size), SHORT_LIMIT)
    if (long && overload) continue
    found.push(
      caution(
        "fuse-above-wire",
        "warning",
        `Fuse '{given.fuses.${i}.name}' of {given.fuses.${i}.rating current} does not guard wire '{given.wires.${wire}.name}': it may let {longCurrent current} flow for many minutes. Even alone in still air at 25 °C with 80 °C insulation that wire takes a fuse of {largestFuse current} at most; in a bundle or under padding, less. Take a smaller fuse or a thicker wire.` as string,
        BLADE,
        {
          [`given.fuses.${i}.name`]: fuse.name,
          [`given.fuses.${i}.rating`]: fuse.rating,
          [`given.wires.${wire}.name`]: size.name,
          longCurrent: bladeFuse.longMultiple * fuse.rating,
          largestFuse: most,
        },
      ),
    )
  }
  return found
}

/** Cautions of contacts and switches. */
function contactCautions(si: Si, out: Harness, carried: (name: string) => number): Caution[] {
  const found: Caution[] = []
  for (const list of ["contacts", "switches"] as const)
    si[list].forEach((contact, i) => {
      const current = carried(contact.name)
      const at = out.branches.findIndex((b) => b.name === contact.name)
      const heat = out.branches[at]?.heat ?? 0
      const name = `given.${list}.${i}`
      if (contact.rating !== null && current > contact.rating)
        found.push(
          caution(
            "hot-connector",
            "warning",
            `Contact '{${name}.name}' carries {carried current} and is rated {${name}.rating current}: it heats, ages and can burn or melt. Use a larger one.` as string,
            CONNECTORS,
            { [`${name}.name`]: contact.name, [`${name}.rating`]: contact.rating, carried: current },
          ),
        )
      else if (heat > 0.5)
        found.push(
          caution(
            "warm-connector",
            "caution",
            `Contact '{${name}.name}' gives off {branches.${at}.heat power}: a small connector gets too hot to touch, and its resistance rises as it ages.` as string,
            commonPractice,
            { [`${name}.name`]: contact.name, [`branches.${at}.heat`]: heat },
          ),
        )
    })
  return found
}

/** Hazards and limits of a harness. */
export function harnessCautions(si: Si, out: Harness): Caution[] {
  const found: Caution[] = []
  const byName = new Map(out.branches.map((b) => [b.name, Math.abs(b.current)]))
  const carried = (name: string) => byName.get(name) ?? 0
  const unfused = unfusedWire(si)
  if (unfused !== null) {
    const path = `given.wires.${unfused}.name`
    found.push(
      caution(
        "unfused-wire",
        "warning",
        `Wire '{${path}}' leaves a source with no fuse ahead of it: a short in it burns along the wearer's body. Put the fuse within 18 cm of the positive pole, and have a qualified person check the build.` as string,
        FUSE_PLACE,
        { [path]: (si.wires[unfused] as Si["wires"][number]).name },
      ),
    )
  }
  found.push(...fuseCautions(si, carried), ...contactCautions(si, out, carried))
  si.wires.forEach((wire, i) => {
    const current = carried(wire.name)
    const path = `given.wires.${i}.name`
    const burning = wireCautions(wire, "carried", current, { path, name: wire.name })
    if (burning.length > 0) found.push(...burning.filter((b) => !found.some((f) => f.code === "fumes" && b.code === "fumes")))
    else if (current > bundledCurrent(areaOf(wire)))
      found.push(
        caution(
          "thin-wire",
          "caution",
          `Wire '{${path}}' carries {carried current}, more than 700 circular mils per ampere allow ({bundled current}): check its temperature with wireHeating before it lies in a bundle or under padding.` as string,
          CIRCULAR_MILS,
          { [path]: wire.name, carried: current, bundled: bundledCurrent(areaOf(wire)) },
        ),
      )
  })
  out.supplies.forEach((s, i) => {
    if (!(s.current < -1e-9)) return
    found.push(
      caution(
        "source-fed-back",
        "warning",
        `Source '{supplies.${i}.name}' is being fed {fedBack current} by another: lithium cells charged this way have no charger watching them. Never join unequal packs directly.` as string,
        LITHIUM_CHARGE,
        { [`supplies.${i}.name`]: s.name, fedBack: -s.current },
      ),
    )
  })
  out.loads.forEach((l, i) => {
    if (!l.fed)
      found.push(
        caution("load-off", "note", `Load '{loads.${i}.name}' has no closed path to a source: it is off.` as string, KIRCHHOFF, {
          [`loads.${i}.name`]: l.name,
        }),
      )
    else if (l.voltage < 0 && l.type !== "resistance")
      found.push(
        caution(
          "reversed-load",
          "warning",
          `Load '{loads.${i}.name}' sees {loads.${i}.voltage voltage}: its current cannot flow this way.` as string,
          KIRCHHOFF,
          { [`loads.${i}.name`]: l.name, [`loads.${i}.voltage`]: l.voltage },
        ),
      )
  })
  const volts = out.nodes.flatMap((n) => (n.voltage === null ? [] : [n.voltage]))
  return [...found, ...touchCaution("highest", Math.max(...volts) - Math.min(...volts))]
}
