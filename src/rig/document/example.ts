import moth from "../../../shared/rigs/lantern-moth-cells.json" with { type: "json" }
import type { RigDocument } from "./document.js"

/** The lantern moth on two strings of three cells: the rig solvers' example. Invented parts. */
export const demoRig: RigDocument = moth as RigDocument
