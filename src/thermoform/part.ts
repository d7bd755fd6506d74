import { type Fields, type Issue, inconsistent, type SiOf } from "../solver/index.js"
import { plasticOptions } from "./data.js"
import type { HeatingTimeInput } from "./heating-time/types.js"

type PartKey = "shape" | "thickness" | "outsideDiameter" | "material" | "filling"
type PropertyKey = "conductivity" | "density" | "specificHeat"

/** Fields that say what is heated or cooled. */
export const partFields: Pick<Fields<HeatingTimeInput>, PartKey> = {
  shape: { kind: "choice", label: "form", options: { sheet: "sheet", rod: "round rod", tube: "tube or pipe" } },
  thickness: {
    kind: "length",
    symbol: "s_t",
    label: "thickness or wall",
    min: "0.1 mm",
    max: "100 mm",
    typical: ["1 mm", "10 mm"],
    default: null,
  },
  outsideDiameter: {
    kind: "length",
    symbol: "D",
    label: "outside diameter",
    min: "1 mm",
    max: "300 mm",
    typical: ["10 mm", "60 mm"],
    default: null,
  },
  material: { kind: "choice", label: "plastic", options: plasticOptions },
  filling: { kind: "choice", label: "filling", options: { empty: "empty", "dry-sand": "dry sand" }, default: "empty" },
}

/** Fields that stand in for the table's properties. */
export const propertyFields: Pick<Fields<HeatingTimeInput>, PropertyKey> = {
  conductivity: {
    kind: "thermalConductivity",
    symbol: "k_given",
    label: "conductivity",
    min: 0.01,
    max: 500,
    typical: [0.1, 0.5],
    default: null,
  },
  density: { kind: "density", symbol: "rho_given", label: "density", min: 20, max: 9000, typical: [900, 1500], default: null },
  specificHeat: {
    kind: "specificHeat",
    symbol: "c_given",
    label: "specific heat",
    min: 100,
    max: 10000,
    typical: [900, 2500],
    default: null,
  },
}

/** Sizes that do not go with the form. */
export function partFaults({ shape, thickness, outsideDiameter, filling }: Pick<SiOf<HeatingTimeInput>, PartKey>): Issue[] {
  const faults: Issue[] = []
  if (shape === "rod" && thickness !== null) faults.push(inconsistent(["thickness"], "a thickness", "no thickness for a rod"))
  if (shape !== "rod" && thickness === null)
    faults.push(inconsistent(["thickness"], "nothing", shape === "sheet" ? "the thickness of a sheet" : "the wall of a tube"))
  if (shape === "sheet" && outsideDiameter !== null) faults.push(inconsistent(["outsideDiameter"], "a diameter", "no diameter for a sheet"))
  if (shape !== "sheet" && outsideDiameter === null)
    faults.push(inconsistent(["outsideDiameter"], "nothing", shape === "rod" ? "the diameter of a rod" : "the outer diameter of a tube"))
  if (shape === "tube" && thickness !== null && outsideDiameter !== null && !(thickness < 0.49 * outsideDiameter))
    faults.push(
      inconsistent(
        ["thickness"],
        "a wall of {thickness length} in a tube of {outsideDiameter length}",
        "a wall thinner than 0.49 of the outer diameter",
        {
          thickness,
          outsideDiameter,
        },
      ),
    )
  if (shape !== "tube" && filling !== "empty") faults.push(inconsistent(["filling"], "a filling", "an empty filling, except in a tube"))
  return faults
}
