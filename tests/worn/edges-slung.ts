import { slungLoad } from "../../src/worn/index.js"
import type { Change, Edges } from "../helpers/edges.js"

const row = (code: string, severity: "note" | "caution" | "warning", shown: Change, notShown: Change | null) => ({
  solver: slungLoad,
  code,
  severity,
  shown,
  notShown,
})
const degrees = (angle: number) => ({ strapAngle: `${angle} deg` })

/** Thresholds of what is said about a load on one shoulder. */
export const edges: Edges = {
  cautions: [
    row("take-it-off", "warning", {}, null),
    row("change-sides", "note", {}, null),
    // a tenth of 64 kg, and 4 % of 40 kg
    row("over-limit", "warning", { rigMass: 6.41 }, { rigMass: 6.39 }),
    row("over-limit", "warning", { bodyMass: 40, rigMass: 1.605 }, { bodyMass: 40, rigMass: 1.595 }),
    row("complaints", "caution", { rigMass: 2.57 }, { rigMass: 2.55 }),
    row("complaints", "caution", { rigMass: 6.39 }, { rigMass: 6.41 }),
    row("small-wearer", "warning", { bodyMass: 44.9 }, { bodyMass: 45 }),
    // 4 kg · 9.80665 · 0.7196/(60 mm · 14 kPa): 33.60 mm
    row("over-pressure", "warning", { strapWidth: 0.0335 }, { strapWidth: 0.0337 }),
    row("limit-raised", "warning", { pressureLimit: 14010 }, { pressureLimit: 14000 }),
    // tan 20° is 0.36397
    row("slides-off", "caution", { shoulderFriction: 0.3639 }, { shoulderFriction: 0.364 }),
    // tan(20° − δ) of 0.3: 3.301°; the same past the slope: 36.699°
    row("slides-off", "caution", degrees(3.29), degrees(3.31)),
    row("slides-to-neck", "warning", degrees(36.71), degrees(36.69)),
    // 5 % of 68 kg on a stance of 200 mm: 0.05 · 68 · 0.2/4 m
    row("lopsided", "caution", { loadOffset: 0.1702 }, { loadOffset: 0.1698 }),
    row("lopsided", "caution", { loadOffset: -0.1702 }, { loadOffset: -0.1698 }),
  ],
  refusals: [
    // half a stance of 100 mm for 68 kg: 425 mm with 8 kg on 60
    {
      solver: slungLoad,
      code: "tips-sideways",
      refused: { bodyMass: 60, rigMass: 8, footSpacing: 0.1, loadOffset: 0.426 },
      answered: { bodyMass: 60, rigMass: 8, footSpacing: 0.1, loadOffset: 0.424 },
    },
    {
      solver: slungLoad,
      code: "tips-sideways",
      refused: { bodyMass: 60, rigMass: 8, footSpacing: 0.1, loadOffset: -0.426 },
      answered: { bodyMass: 60, rigMass: 8, footSpacing: 0.1, loadOffset: -0.424 },
    },
  ],
  faults: [],
  numbers: {
    "slungLoad.small-wearer.light": () => 45,
    "slungLoad.tips-sideways.shortBy": (si) => (si.rigMass * Math.abs(si.loadOffset)) / (si.rigMass + si.bodyMass) - si.footSpacing / 2,
  },
}
