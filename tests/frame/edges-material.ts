import { beam, bendingRod, column, continuousBeam, naturalFrequency, pinJoint, tubeSection } from "../../src/frame/index.js"
import type { Band } from "../../src/solver/index.js"
import type { CautionRow, Change, Edges } from "../helpers/edges.js"
import { any } from "../helpers/working.js"

/** Solvers of several inputs, by what they share. */
const strong: readonly unknown[] = [beam, bendingRod, column, continuousBeam, naturalFrequency, pinJoint, tubeSection]
const stiff = strong.filter((solver) => solver !== pinJoint)
const needing = stiff.filter((solver) => solver !== tubeSection)
const judged = strong.filter((solver) => solver !== naturalFrequency)
const handled = judged.filter((solver) => solver !== tubeSection)

/** A tube's length belongs to its twist, which a plastic has no shear modulus for; the rod's own example is of carbon. */
const of = (solver: unknown, change: Change): Change => ({
  ...(solver === tubeSection ? { length: undefined } : {}),
  ...(solver === bendingRod ? { material: "aluminium-6061" } : {}),
  ...change,
})
/** What gives the example a safety factor, which is in proportion to its strength; a column's to what is left of its load. */
const safe = (solver: unknown, safety: number): Change => {
  if (solver === column) return { load: (300 * (column(column.example).safetyFactor?.low as number)) / safety }
  const { safetyFactor } = any(solver)({ ...any(solver).example, strength: "50 MPa" }) as unknown as {
    readonly safetyFactor: Band | number
  }
  return { strength: (safety / (typeof safetyFactor === "number" ? safetyFactor : safetyFactor.low)) * 50e6 }
}

const warm = (material: string, materialTemperature: number) => ({ material, materialTemperature })
const standing = (duration: number) => ({ material: "abs", duration })

/** Cautions that every member of a material shares. */
const materialRows = (solver: unknown): CautionRow[] =>
  (
    [
      ["welds-weaken", "note", {}, { material: "steel" }],
      ["warm-plastic", "caution", warm("abs", 23.1), warm("abs", 23)],
      ["cold-brittle", "caution", warm("abs", -0.001), warm("abs", 0)],
      ["cold-brittle", "caution", warm("plywood", -0.001), warm("plywood", 0)],
      ["creep", "caution", standing(0.001), standing(0)],
      ["creep", "note", standing(0), standing(0.001)],
      ["brittle", "caution", { material: "acrylic" }, { material: "abs" }],
      ["strength-above-published", "warning", { strength: "277 MPa" }, { strength: "276 MPa" }],
    ] as const
  ).map(([code, severity, shown, notShown]) => ({ solver, code, severity, shown: of(solver, shown), notShown: of(solver, notShown) }))

export const edges: Edges = {
  cautions: [
    ...strong.flatMap(materialRows),
    ...stiff.map(
      (solver): CautionRow => ({
        solver,
        code: "modulus-above-published",
        severity: "caution",
        shown: of(solver, { modulus: "71.8 GPa" }),
        notShown: of(solver, { modulus: "71.7 GPa" }),
      }),
    ),
    ...needing.map(
      (solver): CautionRow => ({
        solver,
        code: "no-material",
        severity: "caution",
        shown: { material: undefined, modulus: "69 GPa" },
        notShown: of(solver, { modulus: "69 GPa" }),
      }),
    ),
    ...judged.flatMap((solver): CautionRow[] => [
      { solver, code: "collapse", severity: "warning", shown: safe(solver, 0.996), notShown: safe(solver, 1.004) },
      { solver, code: "thin-margin", severity: "warning", shown: safe(solver, 2.99), notShown: safe(solver, 3.01) },
      { solver, code: "thin-margin", severity: "warning", shown: safe(solver, 1.004), notShown: safe(solver, 0.996) },
    ]),
    ...handled.map(
      (solver): CautionRow => ({
        solver,
        code: "standing-still",
        severity: "note",
        shown: { handling: "still" },
        notShown: { handling: "walking" },
      }),
    ),
  ],
  refusals: [],
  faults: [],
  numbers: {},
}
