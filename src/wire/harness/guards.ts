import type { SiOf } from "../../solver/index.js"
import type { HarnessInput } from "./types.js"

type Si = SiOf<HarnessInput>

/** What may flow at a place in a fault: the fuse that limits it (its number in the input), or none. */
interface Feed {
  readonly rating: number
  readonly fuse: number | null
}

interface Link {
  readonly ends: readonly [string, string]
  /** Its own limit; null for wires, contacts and switches. */
  readonly fuse: number | null
  readonly wire: number | null
}

/** A wire and the fuse that alone limits what a fault may drive through it. */
export interface Guarded {
  readonly wire: number
  readonly fuse: number
}

const smaller = (a: Feed, b: Feed) => (b.rating < a.rating ? b : a)

/** Every link by the node at either end; open switches count as closed, since they can be. */
function linksOf(si: Si): Map<string, { readonly link: Link; readonly far: string }[]> {
  const near = new Map<string, { readonly link: Link; readonly far: string }[]>()
  const add = (ends: readonly [string, string], wire: number | null, fuse: number | null) => {
    const link = { ends, wire, fuse }
    for (const [here, far] of [ends, [ends[1], ends[0]]] as const) near.set(here, [...(near.get(here) ?? []), { link, far }])
  }
  si.wires.forEach((w, i) => {
    add([w.from, w.to], i, null)
  })
  for (const c of [...si.contacts, ...si.switches]) add([c.from, c.to], null, null)
  si.fuses.forEach((f, i) => {
    add([f.from, f.to], null, i)
  })
  return near
}

/**
 * For each wire the largest fuse that alone limits what a fault drives through it. On the way out that is the fuse between it
 * and the pack's positive pole (the widest such way). On the way back a wire carries what a shorted load is fed, so the fuse
 * ahead of that load limits it. Wires that no fuse limits are left out: harness says of those that a fuse is missing.
 */
export function guardedWires(si: Si): Guarded[] {
  const links = linksOf(si)
  const fed = new Map<string, Feed>()
  const queue = si.sources.map((s) => s.positive)
  for (const pole of queue) fed.set(pole, { rating: Number.POSITIVE_INFINITY, fuse: null })
  for (let at = queue.shift(); at !== undefined; at = queue.shift())
    for (const { link, far } of links.get(at) ?? []) {
      const here = fed.get(at) as Feed
      const there = link.fuse === null ? here : smaller(here, { rating: si.fuses[link.fuse]?.fuseRating as number, fuse: link.fuse })
      if (!(there.rating > (fed.get(far)?.rating ?? 0))) continue
      fed.set(far, there)
      queue.push(far)
    }

  const found = new Map<number, Feed>()
  const note = (wire: number, feed: Feed) => {
    const known = found.get(wire)
    if (known === undefined || feed.rating > known.rating) found.set(wire, feed)
  }
  si.wires.forEach((w, i) => {
    const feed = fed.get(w.from)
    if (feed !== undefined) note(i, feed)
  })

  // the way back: from each load's return side to the nearest negative pole
  const back = new Map<string, { readonly link: Link; readonly towards: string } | null>()
  const order = si.sources.map((s) => s.negative)
  for (const pole of order) back.set(pole, null)
  for (let k = 0; k < order.length; k++)
    for (const { link, far } of links.get(order[k] as string) ?? [])
      if (!back.has(far) && !fed.has(far)) {
        back.set(far, { link, towards: order[k] as string })
        order.push(far)
      }
  for (const load of [...si.currentLoads, ...si.resistanceLoads, ...si.powerLoads]) {
    let feed = fed.get(load.from)
    for (let step = back.get(load.to); feed !== undefined && step; step = back.get(step.towards)) {
      const { fuse, wire } = step.link
      if (fuse !== null) feed = smaller(feed, { rating: si.fuses[fuse]?.fuseRating as number, fuse })
      else if (wire !== null) note(wire, feed)
    }
  }
  return [...found].flatMap(([wire, { fuse }]) => (fuse === null ? [] : [{ wire, fuse }])).sort((a, b) => a.wire - b.wire)
}
