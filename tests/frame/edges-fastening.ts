import { fastening } from "../../src/frame/index.js"
import type { CautionRow, Change, Edges } from "../helpers/edges.js"

const { example } = fastening
const joint = (of: object, more: Change = {}): Change => ({ joint: of, ...more })
const glued = (more: Change = {}) => joint({ type: "glued", material: "steel", overlap: "20 mm", width: "30 mm", ...more })
const screwed = (more: Change = {}, force = 50) =>
  joint({ type: "screwed", screws: 2, diameter: "4 mm", threadLength: "25 mm", ...more }, { force, handling: "still" })
const tied = (ties: number) => joint({ type: "tied", ties, tieWidth: "3.6 mm" })
/** Six strands of 200 kg at three quarters, walking; the factor is 1 plus the four harmonics at 2.4 steps a second. */
const safe = (factor: number): Change => ({ force: (6 * 0.75 * 200 * 9.80665) / 1.81036 / factor })
/** Allowable load of two screws of 4 mm with 25 mm of thread in wood of 310 kg/m³: 2850 pounds to the square inch. */
const allowable = 2 * ((2850 * 0.45359237 * 9.80665) / 0.0254 ** 2) * 0.31 ** 2 * 0.004 * 0.025

const rows: readonly (readonly [string, CautionRow["severity"], Change, Change])[] = [
  ["collapse", "warning", safe(0.996), safe(1.004)],
  ["thin-margin", "warning", safe(2.99), safe(3.01)],
  ["thin-margin", "warning", safe(1.004), safe(0.996)],
  ["above-allowable", "warning", screwed({}, allowable * 1.004), screwed({}, allowable * 0.996)],
  ["end-grain", "caution", screwed({ grain: "end" }), screwed({ grain: "side" })],
  ["long-overlap", "caution", glued({ overlap: "25.1 mm" }), glued({ overlap: "25 mm" })],
  ["glue-not-tested-there", "warning", glued({ materialTemperature: 35.1 }), glued({ materialTemperature: 35 })],
  ["glue-not-tested-there", "warning", glued({ materialTemperature: -7.05 }), glued({ materialTemperature: -7 })],
  ["uneven-share", "caution", tied(2), tied(1)],
  ["standing-still", "note", { handling: "still" }, { handling: "walking" }],
]
const always: readonly (readonly [string, CautionRow["severity"], Change, Change])[] = [
  ["glue-surface", "note", glued(), {}],
  ["peel", "caution", glued(), {}],
  ["pulls-out-only", "note", joint({ type: "screwed", diameter: "4 mm", threadLength: "25 mm" }), {}],
  ["slides", "note", { joint: example.joint }, glued()],
  ["slides", "note", tied(1), glued()],
  ["nylon-ages", "note", { joint: example.joint }, glued()],
]

export const edges: Edges = {
  cautions: [...[...rows, ...always].map(([code, severity, shown, notShown]) => ({ solver: fastening, code, severity, shown, notShown }))],
  refusals: [],
  faults: [],
  numbers: {
    "fastening.standing-still.walking": () => 1 + 0.56 + 0.09588 + 0.07908 + 0.0754,
    "fastening.standing-still.stumble": () => 3,
    "fastening.glue-not-tested-there.low": () => -7,
    "fastening.glue-not-tested-there.high": () => 35,
  },
}
