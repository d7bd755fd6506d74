// Hazards and limits of an elastic cord.
import { type Caution, caution, commonPractice } from "../../solver/index.js"
import { storedEnergySource } from "../sources.js"
import type { Bungee, BungeeCaution, Si } from "./types.js"

/** Elongation in use that the trade allows elastic cord: twice its slack length. */
const USUAL_LIMIT = 1

export function bungeeCautions(si: Si, out: Bungee) {
  const limit = Math.min(USUAL_LIMIT, si.elongationLimit)
  return [
    caution(
      "stored-energy",
      "warning",
      "Stretched it holds {storedEnergy energy}: a hook, knot or cord that lets go flies back, and eyes have been lost to such cords. Close every end so that it cannot slip off, put a tether beside it, wear eye protection, and never stretch it towards a face.",
      storedEnergySource,
      { storedEnergy: out.storedEnergy },
    ),
    caution(
      "ages",
      "note",
      "Elastic cord is stiffer on its first pulls than later, softens with warmth, creeps, and loses force in sun and use: take its readings after some pulls, measure it again before each season, and renew it when threads show.",
    ),
    ...(si.lossShare === null
      ? [
          caution(
            "loss-unknown",
            "note",
            "It gives back less than was put in; how much less is not given. Weigh it on the way back as well: between a tenth and a third is usually lost.",
          ),
        ]
      : []),
    ...(out.elongation > limit
      ? [
          caution(
            "over-stretched",
            "warning",
            "It is stretched by {elongation ratio %}; {limit ratio %} is as far as it should go in use, the smaller of what its maker allows and twice its slack length. Past that it ages fast and breaks without warning: use a longer cord.",
            commonPractice,
            { elongation: out.elongation, limit },
          ),
        ]
      : []),
  ] satisfies Caution<BungeeCaution>[]
}
