import { readFileSync } from "node:fs"
import { readCatalogue, search } from "alula/advice"
import { moveTime } from "alula/rig"

const read = (path) => JSON.parse(readFileSync(new URL(`../shared/${path}.json`, import.meta.url), "utf8"))
const rig = read("rigs/lantern-moth-cells")
const parts = read("catalogue/lantern-moth")
const few = {
  ...parts,
  actuators: parts.actuators.slice(0, 4),
  placements: parts.placements.slice(0, 4),
  springs: parts.springs.slice(0, 2),
  cells: parts.cells.slice(0, 3),
  converters: parts.converters.slice(0, 2),
}
const one = moveTime.read(moveTime.example)
const baseline = "rig.moveTime.si (one combination solved whole)"

export const rows = [
  { name: baseline, run: () => moveTime.si(one) },
  { name: "rig.readCatalogue (43 parts)", run: () => readCatalogue(parts), baseline },
  {
    name: "rig.search (15 552 combinations)",
    run: () => search(rig, few, { series: [2, 3, 4], parallel: [1, 2], moves: 40 }),
    baseline,
  },
  {
    name: "rig.search (71 280 combinations)",
    run: () =>
      search(rig, { ...few, placements: parts.placements, springs: parts.springs }, { series: [2, 3, 4], parallel: [1, 2], moves: 40 }),
    baseline,
  },
]
