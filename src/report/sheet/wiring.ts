// The power tree wire by wire.
import type { Judged } from "../../rig/check/conditions.js"
import type { SheetCircuit, SheetWire } from "./content.js"
import { wireOf } from "./lists.js"

type Power = NonNullable<Judged["rig"]["power"]>
type BusSi = Power["buses"][number]

/** Whether a document puts a fuse, a switch, into a bus's run. */
export const hasFuse = (bus: BusSi): boolean => bus.fuseRating !== null || bus.fuseResistance > 0
export const hasSwitch = (bus: BusSi): boolean => bus.switchRating !== null || bus.switchResistance > 0

/** The nearest fuse on the way to a bus's own run, as far as it carries the same current. */
function fuseBefore(power: Power, bus: BusSi): SheetCircuit["fuseBefore"] {
  const before = power.buses.find((b) => b.name === bus.from)
  if (!before || before.converter) return null
  return before.fuseRating === null ? fuseBefore(power, before) : { bus: before.name, rating: before.fuseRating }
}

const OWN = "its own leads"

/** Wires of a power tree, bus by bus, in the order of the document. */
export function circuitsOf({ motions, power }: Judged["rig"]): SheetCircuit[] {
  if (!power) return []
  let number = 0
  const wire = (polarity: SheetWire["polarity"], from: string, to: string, size: string, length: number | null): SheetWire => ({
    mark: `W${++number}`,
    polarity,
    from,
    to,
    wire: size,
    length,
  })
  const feed = (bus: BusSi): SheetWire[] => {
    const size = bus.run ? wireOf(bus.run) : OWN
    const length = bus.run ? bus.run.length : null
    const end = bus.converter ? `${bus.name}: converter in` : bus.name
    const stations = [...(hasFuse(bus) ? [`${bus.name}: fuse`] : []), ...(hasSwitch(bus) ? [`${bus.name}: switch`] : [])]
    // the fuse sits at what it protects the wire from, so that the long wire is behind it
    const places = [bus.from, ...stations, end]
    const plus = places.slice(1).map((to, i) => wire("+", places[i] as string, to, size, i === places.length - 2 ? length : null))
    return [...plus, wire("−", bus.from, end, size, length)]
  }
  return power.buses.map((bus) => ({
    bus: bus.name,
    fuse: bus.fuseRating,
    fuseBefore: fuseBefore(power, bus),
    wires: [
      ...feed(bus),
      ...(bus.converter
        ? [wire("+", `${bus.name}: converter out`, bus.name, OWN, null), wire("−", `${bus.name}: converter out`, bus.name, OWN, null)]
        : []),
      ...motions.flatMap((motion) =>
        motion.bus !== bus.name
          ? []
          : Array.from({ length: motion.drive.count }, (_, i) => {
              const drive = motion.drive.count > 1 ? `${motion.name}: drive ${i + 1}` : `${motion.name}: drive`
              const through = motion.drive.type === "hobby-servo" ? drive : `${drive}, through its reversing switch or driver`
              return [
                wire("+", bus.name, through, OWN, null),
                wire("−", bus.name, through, OWN, null),
                ...(motion.drive.type === "hobby-servo" ? [wire("signal", "receiver or controller", drive, OWN, null)] : []),
              ]
            }).flat(),
      ),
      ...power.loads.flatMap((load) =>
        load.bus === bus.name ? [wire("+", bus.name, load.name, OWN, null), wire("−", bus.name, load.name, OWN, null)] : [],
      ),
    ],
  }))
}
