import { type Caution, caution } from "../solver/index.js"

/** What every answer about a wearer says: what it is not, and when to stop. */
export const takeItOff: Caution<"take-it-off"> = caution(
  "take-it-off",
  "warning",
  "An estimate, not a medical or safety clearance: it knows nothing of this wearer's health, training or heat. Pain, numbness, tingling, dizziness or breathlessness means take it off at once. Fit a quick release that the wearer can work alone with either hand, and try it with the full load on; ask a doctor or physiotherapist where there is any doubt, and plan for the smallest wearer.",
)
