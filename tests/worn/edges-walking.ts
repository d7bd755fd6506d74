import { walkingLoad } from "../../src/worn/index.js"
import type { Edges } from "../helpers/edges.js"

const hung = (stiffness: number) => ({ stiffness })

/** Thresholds of what is said about a load that bounces; stiffnesses found by bisection in another language. */
export const edges: Edges = {
  cautions: [
    { solver: walkingLoad, code: "take-it-off", severity: "warning", shown: {}, notShown: null },
    { solver: walkingLoad, code: "walking-only", severity: "note", shown: {}, notShown: null },
    // 1.1 times the trunk's own shake: 596.87 and 45273 N/m
    { solver: walkingLoad, code: "bounces-harder", severity: "warning", shown: hung(597.5), notShown: hung(596.5) },
    { solver: walkingLoad, code: "bounces-harder", severity: "warning", shown: hung(45200), notShown: hung(45350) },
    // the shake reaches the weight at 680.53 and 17392 N/m
    { solver: walkingLoad, code: "snatches", severity: "warning", shown: hung(681), notShown: hung(680) },
    { solver: walkingLoad, code: "snatches", severity: "warning", shown: hung(17380), notShown: hung(17405) },
    // 30 mm of travel at 1869.8 N/m
    { solver: walkingLoad, code: "hits-stops", severity: "warning", shown: hung(1869), notShown: hung(1871) },
  ],
  refusals: [],
  faults: [
    { solver: walkingLoad, path: "freeTravel", faulty: { stiffness: undefined }, sound: { stiffness: undefined, freeTravel: undefined } },
  ],
  numbers: {},
}
