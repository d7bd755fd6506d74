import { type Caution, caution } from "../solver/index.js"
import { throatRelease } from "./load/data-straps.js"
import { EN_71_1 } from "./sources-load.js"

/** What every answer about a wearer says: what it is not, and when to stop. */
export const takeItOff: Caution<"take-it-off"> = caution(
  "take-it-off",
  "warning",
  "An estimate, not a medical or safety clearance: it knows nothing of this wearer's health, training or heat. Pain, numbness, tingling, dizziness or breathlessness means take it off at once. Fit a quick release that the wearer can work alone with either hand, and try it with the full load on; ask a doctor or physiotherapist where there is any doubt, and plan for the smallest wearer.",
)

/** What every answer about a band worn says of necks. */
export const throat: Caution<"throat"> = caution(
  "throat",
  "warning",
  "No strap, collar, cord or cape may lie across the throat or close round the neck. Whatever has to pass near it parts by itself under a pull of {throatRelease force N} or less (the rule for toys), at a breakaway that cannot be knotted or sewn shut; try it with a spring balance.",
  EN_71_1,
  { throatRelease },
)
