// The sheet's tables as rows of words, so that page and Markdown tell the same.
import type { SheetCircuit, SheetContent, SheetPlate, SheetStep } from "./content.js"
import { amperes, cut, drilled, mass, price, shown } from "./words.js"

type Rows = readonly (readonly string[])[]

export const partRows = ({ parts }: SheetContent): Rows => parts.map((p) => [p.name, String(p.count), mass(p.mass), price(p.price)])
export const needRows = ({ needs }: SheetContent): Rows => needs.map((n) => [n.what, String(n.count), n.must, n.for])
export const cutRows = ({ cuts }: SheetContent): Rows => cuts.map((c) => [c.what, String(c.count), cut(c.length), c.of, c.measured])
export const holeRows = ({ holes }: SheetPlate): Rows =>
  holes.map(({ name, x, y, pin }, i) => [
    String(i + 1),
    name,
    drilled(x),
    drilled(y),
    drilled(Math.hypot(x, y)),
    pin === null ? "to its own pin" : `⌀ ${drilled(pin)}`,
  ])
export const wireRows = ({ wires }: SheetCircuit): Rows =>
  wires.map((w) => [w.mark, w.polarity, w.from, w.to, w.wire, w.length === null ? "as short as it reaches" : cut(w.length)])
export const readingRows = ({ readings }: SheetStep): Rows => readings.map((r) => [r.where, shown(r), ""])

/** How many of a plate, and how many of them turned round. */
export const countLine = ({ count, mirrored }: SheetPlate): string =>
  mirrored ? `${count} in all, ${mirrored} of them turned over (mirror image)` : `${count} in all`
export const fuseLine = ({ fuse, fuseBefore }: SheetCircuit): string => {
  if (fuse !== null) return `Fuse ${amperes(fuse)}, at the source's end of the plus wire.`
  if (fuseBefore) return `No fuse of its own: the ${amperes(fuseBefore.rating)} of ${fuseBefore.bus} has to protect this wire too.`
  return "The document names no fuse for this run: put one at its source, sized for the wire."
}
