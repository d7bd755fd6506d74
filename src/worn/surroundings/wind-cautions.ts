import { type Caution, caution } from "../../solver/index.js"
import { gustSafetySource, melbourneSource } from "../sources-around.js"
import { pedestrianWind } from "./data-wind.js"

/** What `gustCautions` can say. */
export type GustCaution = "dangerous-gust" | "unbalancing-gust"

/** What a gust does to people on foot even without a panel. */
export function gustCautions(gustSpeed: number): Caution<GustCaution>[] {
  if (gustSpeed >= pedestrianWind.melbourneGust)
    return [
      caution(
        "dangerous-gust",
        "warning",
        "Gusts of {gustSpeed speed m/s}: from 20 m/s they are dangerous to anybody on foot, even without a panel. Stay indoors, folded.",
        melbourneSource,
        { gustSpeed },
      ),
    ]
  if (gustSpeed >= pedestrianWind.unbalancingGust)
    return [
      caution(
        "unbalancing-gust",
        "warning",
        "Gusts of {gustSpeed speed m/s}: from 15 m/s they throw frail people off balance, even without a panel. Stay indoors, folded.",
        gustSafetySource,
        { gustSpeed },
      ),
    ]
  return []
}
