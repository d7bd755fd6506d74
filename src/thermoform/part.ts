import { type Fields, type Issue, inconsistent, type SiOf } from "../solver/index.js"
import { plasticOptions } from "./data.js"
import type { HeatThroughInput } from "./heat-through/types.js"

type PartKey = "form" | "thickness" | "diameter" | "plastic" | "filling"
type PropertyKey = "conductivity" | "density" | "specificHeat"

/** Fields that say what is heated or cooled. */
export const partFields: Pick<Fields<HeatThroughInput>, PartKey> = {
  form: { kind: "choice", label: "form", options: { sheet: "sheet", rod: "round rod", tube: "tube or pipe" } },
  thickness: {
    kind: "length",
    symbol: "s_t",
    label: "thickness or wall",
    min: "0.1 mm",
    max: "100 mm",
    typical: ["1 mm", "10 mm"],
    default: null,
  },
  diameter: {
    kind: "length",
    symbol: "D",
    label: "outer diameter",
    min: "1 mm",
    max: "300 mm",
    typical: ["10 mm", "60 mm"],
    default: null,
  },
  plastic: { kind: "choice", label: "plastic", options: plasticOptions },
  filling: { kind: "choice", label: "filling", options: { empty: "empty", drySand: "dry sand" }, default: "empty" },
}

/** Fields that stand in for the table's properties. */
export const propertyFields: Pick<Fields<HeatThroughInput>, PropertyKey> = {
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
export function partFaults({ form, thickness, diameter, filling }: Pick<SiOf<HeatThroughInput>, PartKey>): Issue[] {
  const faults: Issue[] = []
  if (form === "rod" && thickness !== null) faults.push(inconsistent(["thickness"], "a thickness", "no thickness for a rod"))
  if (form !== "rod" && thickness === null)
    faults.push(inconsistent(["thickness"], "nothing", form === "sheet" ? "the thickness of a sheet" : "the wall of a tube"))
  if (form === "sheet" && diameter !== null) faults.push(inconsistent(["diameter"], "a diameter", "no diameter for a sheet"))
  if (form !== "sheet" && diameter === null)
    faults.push(inconsistent(["diameter"], "nothing", form === "rod" ? "the diameter of a rod" : "the outer diameter of a tube"))
  if (form === "tube" && thickness !== null && diameter !== null && !(thickness < 0.49 * diameter))
    faults.push(
      inconsistent(
        ["thickness"],
        "a wall of {thickness length} in a tube of {diameter length}",
        "a wall thinner than 0.49 of the outer diameter",
        {
          thickness,
          diameter,
        },
      ),
    )
  if (form !== "tube" && filling !== "empty") faults.push(inconsistent(["filling"], "a filling", "an empty filling, except in a tube"))
  return faults
}
