// A small rig and shelves of invented parts for it, and how a choice is put into its document by hand.
import type { Catalogue, CataloguePart, Vary } from "../../src/advice/index.js"
import { seeded } from "../../src/numeric/random.js"
import { move, type Rig } from "../../src/rig/index.js"

const { motions, power } = move.example
const [wings] = motions
const [pack] = power?.sources ?? []
const [line] = power?.buses ?? []
if (!wings || pack?.type !== "cells" || !line?.run) throw new Error("the example moth has wings, a pack and a run")

/** The example moth with its parts listed: SI throughout. */
export const moth: Rig = {
  version: 2,
  name: "lantern moth (invented)",
  motions,
  power: { sources: [pack], buses: [{ ...line, limitAction: "hold" }] },
  wearer: { bodyMass: 62, stature: 1.7 },
  parts: [
    { name: "harness", mass: 1.4, price: 40, forward: -0.12, height: 1.2 },
    { name: "actuators", mass: 0.55, count: 2, price: 38, forward: -0.15, height: 1.25 },
    { name: "pack", mass: 0.3, price: 40, forward: -0.13, height: 1.05 },
  ],
  day: { hours: 7200, moves: 20 },
}

/** What may be changed: drive, cell, cells in series, wire, fuse. */
export const vary = (series: readonly number[]): readonly Vary[] => [
  { at: "motions[0].drive", family: "drive", part: "actuators" },
  { at: "power.sources[0]", family: "cell", part: "pack" },
  { at: "power.sources[0].series", values: series },
  { at: "power.buses[0].run", family: "wire", part: { forward: -0.13, height: 1.1 } },
  { at: "power.buses[0]", family: "fuse", part: { forward: -0.13, height: 1.05 } },
]

interface Chosen {
  readonly drive: CataloguePart
  readonly cell: CataloguePart
  readonly wire: CataloguePart
  readonly fuse: CataloguePart
  readonly series: number
}

const mass = (part: CataloguePart) => part.mass as number
const price = (part: CataloguePart) => part.price as number

/** A choice put into the document as a maker would write it. */
export function hand({ drive, cell, wire, fuse, series }: Chosen): Rig {
  const parallel = (pack as { readonly parallel: number }).parallel
  const length = 2 * 1.1
  return {
    ...moth,
    motions: [{ ...wings, drive: { count: 2, ...drive.writes } }],
    power: {
      sources: [{ type: "cells", name: "pack", series, parallel, ...cell.writes }],
      buses: [{ ...line, limitAction: "hold", run: { length: 1.1, contacts: 6, ...wire.writes }, ...fuse.writes }],
    },
    parts: [
      { name: "harness", mass: 1.4, price: 40, forward: -0.12, height: 1.2 },
      { name: drive.name, mass: mass(drive), price: price(drive), count: 2, forward: -0.15, height: 1.25 },
      { name: cell.name, mass: mass(cell), price: price(cell), count: series * parallel, forward: -0.13, height: 1.05 },
      { name: wire.name, mass: length * mass(wire), price: length * price(wire), forward: -0.13, height: 1.1 },
      { name: fuse.name, mass: mass(fuse), price: price(fuse), forward: -0.13, height: 1.05 },
    ],
  } as unknown as Rig
}

/** A shelf drawn at random: strong and weak, safe and unsafe, dear and cheap. */
export function shelfOf(seed: number): Catalogue {
  const random = seeded(seed)
  const between = (low: number, high: number) => low + (high - low) * random()
  const drive = (i: number): CataloguePart => {
    const noLoadSpeed = between(0.008, 0.02)
    const noLoadCurrent = between(0.2, 0.5)
    return {
      family: "drive",
      name: `drive ${i}`,
      mass: between(0.3, 0.6),
      price: Math.round(between(20, 60)),
      writes: {
        type: "linear-actuator",
        retractedLength: 0.155,
        stroke: 0.1,
        ratedVoltage: 12,
        noLoadSpeed,
        noLoadCurrent,
        ratedForce: between(45, 120),
        ratedSpeed: noLoadSpeed * between(0.75, 0.9),
        ratedCurrent: noLoadCurrent + between(0.4, 1),
        // some promise nothing without power
        ...(random() < 0.7 ? { holdingForce: between(100, 300) } : {}),
      },
    }
  }
  const cell = (i: number): CataloguePart => ({
    family: "cell",
    name: `cell ${i}`,
    mass: between(0.03, 0.07),
    price: Math.round(between(3, 9)),
    writes: {
      type: "cells",
      chemistry: random() < 0.8 ? "nmc" : "lfp",
      cellCapacity: between(3600, 12000),
      cellResistance: between(0.02, 0.12),
      ...(random() < 0.85 ? { cellCurrent: between(1, 8) } : {}),
    },
  })
  const wires = [18, 26].map(
    (awg, i): CataloguePart => ({
      family: "wire",
      name: `${awg} gauge`,
      mass: 0.012 / (i + 1),
      price: 1.2 / (i + 1),
      per: "metre",
      writes: { awg },
    }),
  )
  const fuses = [2, 10].map(
    (rating, i): CataloguePart => ({
      family: "fuse",
      name: `${rating} A`,
      mass: 0.002,
      price: 0.4 + 0.1 * i,
      writes: { fuseRating: rating },
    }),
  )
  return {
    version: 2,
    name: `shelf ${seed} (invented)`,
    parts: [...[0, 1, 2].map(drive), ...[0, 1].map(cell), ...wires, ...fuses],
  }
}
