import { readFileSync } from "node:fs"
import type { Catalogue, SearchGoals } from "../../src/advice/index.js"
import { demo } from "../helpers/rigs.js"

/** The demo catalogue. */
export const shelf = JSON.parse(readFileSync(new URL("../../shared/catalogue/lantern-moth.json", import.meta.url), "utf8")) as Catalogue
/** The first few of each of its lists: some tens of thousands of combinations. */
export const short: Catalogue = {
  ...shelf,
  actuators: shelf.actuators.slice(0, 4),
  placements: shelf.placements!.slice(0, 4),
  springs: shelf.springs!.slice(0, 2),
  cells: shelf.cells.slice(0, 3),
  converters: shelf.converters!.slice(0, 2),
}
export const wings = demo("lantern-moth-cells")
export const goals: SearchGoals = { series: [2, 3, 4], parallel: [1, 2], moves: 40 }
