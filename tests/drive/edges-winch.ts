import { winch } from "../../src/drive/index.js"
import type { Edges } from "../helpers/edges.js"

// the example: 10 turns a layer, radii 15.75, 17.25 and 18.75 mm; 0.990 m, 1.084 m and 1.178 m of line in them; 2.4 m wound in
// leave from the third layer, 1.3 m from the second
const [R1, R2, R3] = [15.75e-3, 17.25e-3, 18.75e-3]
const full = 20 * Math.PI
const lines = (d: number) => 2 * d

export const edges: Edges = {
  cautions: [
    { code: "drawn-in", severity: "warning", solver: winch, shown: {}, notShown: null },
    { code: "pull-only", severity: "caution", solver: winch, shown: {}, notShown: null },
    // no brake, and 90 N · 18.75 mm · 0.95 = 1.603 N·m against the drag
    {
      code: "back-driven",
      severity: "warning",
      solver: winch,
      shown: { holdingTorque: undefined, dragTorque: 1.603 },
      notShown: { holdingTorque: undefined, dragTorque: 1.604 },
    },
    // 90 N · 18.75 mm = 1.6875 N·m
    { code: "back-driven", severity: "warning", solver: winch, shown: { holdingTorque: 1.687 }, notShown: { holdingTorque: 1.688 } },
    // and a quarter more: 2.109 N·m
    { code: "thin-holding-margin", severity: "warning", solver: winch, shown: { holdingTorque: 2.109 }, notShown: { holdingTorque: 2.11 } },
    {
      code: "thin-holding-margin",
      severity: "warning",
      solver: winch,
      shown: { holdingTorque: 1.688 },
      notShown: { holdingTorque: 1.687 },
    },
    {
      code: "strength-not-judged",
      severity: "note",
      solver: winch,
      shown: { lineStrength: undefined },
      notShown: {},
    },
    // D/d = 20: 91 % of the strength; 450 N and 900 N are five and ten pulls
    { code: "thin-line", severity: "warning", solver: winch, shown: { lineStrength: 494.4 }, notShown: { lineStrength: 494.6 } },
    { code: "thin-line", severity: "caution", solver: winch, shown: { lineStrength: 988.9 }, notShown: { lineStrength: 989.1 } },
    // 19.98 N·m · 0.95 / 17.25 mm = 1100.3 N, 1209.2 N of strength
    { code: "breaks-its-line", severity: "warning", solver: winch, shown: { lineStrength: 1209 }, notShown: { lineStrength: 1209.4 } },
    // two turns are 0.1979 m on the first layer, five 0.4948 m
    { code: "few-safety-turns", severity: "warning", solver: winch, shown: { travel: 2.2022 }, notShown: { travel: 2.202 } },
    { code: "few-safety-turns", severity: "caution", solver: winch, shown: { travel: 1.9053 }, notShown: { travel: 1.9051 } },
    // 17 · 1.5 mm = 25.5 mm; for fibre 7 · 1.5 mm
    { code: "small-drum", severity: "caution", solver: winch, shown: { drumDiameter: "25.49 mm" }, notShown: { drumDiameter: "25.51 mm" } },
    {
      code: "small-drum",
      severity: "caution",
      solver: winch,
      shown: { lineType: "fibre-rope", drumDiameter: "10.49 mm", flangeDiameter: undefined },
      notShown: { lineType: "fibre-rope", drumDiameter: "10.51 mm", flangeDiameter: undefined },
    },
    // 39 mm over the line, and one and a half lines to either side
    { code: "near-rim", severity: "caution", solver: winch, shown: { flangeDiameter: "43.4 mm" }, notShown: { flangeDiameter: "43.6 mm" } },
    {
      code: "uneven-layers",
      severity: "note",
      solver: winch,
      shown: { lineLength: full * R1 + 1e-4, travel: 0.5 },
      notShown: { lineLength: full * R1 - 1e-4, travel: 0.5 },
    },
  ],
  refusals: [
    // three layers fit below 39 mm
    {
      code: "does-not-fit",
      solver: winch,
      refused: { flangeDiameter: "39 mm", lineLength: full * (R1 + R2 + R3) + 1e-3 },
      answered: { flangeDiameter: "39 mm", lineLength: full * (R1 + R2 + R3) - 1e-3 },
    },
    // 90 N · 18.75 mm / 0.95 + 20 mN·m = 1.7963 N·m
    { code: "insufficient-torque", solver: winch, refused: { torque: 1.796 }, answered: { torque: 1.797 } },
  ],
  faults: [
    { path: "travel", solver: winch, faulty: { travel: 2.401 }, sound: { travel: 2.4 } },
    {
      path: "drumWidth",
      solver: winch,
      faulty: { drumWidth: "1.49 mm", lineLength: 1, flangeDiameter: undefined, travel: 0.5 },
      sound: { drumWidth: "1.5 mm", lineLength: 1, flangeDiameter: undefined, travel: 0.5 },
    },
    { path: "flangeDiameter", solver: winch, faulty: { flangeDiameter: "32.9 mm" }, sound: { flangeDiameter: "33.1 mm" } },
    { path: "turnsPerLayer", solver: winch, faulty: { turnsPerLayer: 10 }, sound: {} },
  ],
  numbers: {
    "winch.does-not-fit.at.capacity": (si) => {
      // layer by layer, while it lies below the rim
      let [length, radius] = [0, si.drumDiameter / 2 + si.lineDiameter / 2]
      const turns = si.turnsPerLayer ?? Math.floor(si.drumWidth / si.lineDiameter + 1e-9)
      while (2 * radius + si.lineDiameter <= si.flangeDiameter + 1e-10) {
        length += turns * 2 * Math.PI * radius
        radius += si.layerRise * si.lineDiameter
      }
      return length
    },
    "winch.does-not-fit.shortBy": (si) => si.lineLength - (edges.numbers["winch.does-not-fit.at.capacity"] as (si: unknown) => number)(si),
    "winch.insufficient-torque.at.outerLayer": (si) => lastLayer(si).layer,
    "winch.insufficient-torque.at.liftingPull": (si) => (Math.max(0, si.torque - si.dragTorque) * si.efficiency) / lastLayer(si).radius,
    "winch.insufficient-torque.shortBy": (si) => (si.pull * lastLayer(si).radius) / si.efficiency + si.dragTorque - si.torque,
    "winch.small-drum.ratio": (si) => (si.lineType === "wire-rope" ? 18 : 8),
    "winch.flangeDiameter.oneLayer": (si) => si.drumDiameter + lines(si.lineDiameter),
  },
}

/** The layer in which the line ends, turn by turn. */
function lastLayer(si: {
  drumDiameter: number
  lineDiameter: number
  layerRise: number
  lineLength: number
  turnsPerLayer: number | null
  drumWidth: number
}) {
  const turns = si.turnsPerLayer ?? Math.floor(si.drumWidth / si.lineDiameter + 1e-9)
  let [layer, radius, left] = [1, si.drumDiameter / 2 + si.lineDiameter / 2, si.lineLength]
  while (left > turns * 2 * Math.PI * radius * (1 + 1e-12)) {
    left -= turns * 2 * Math.PI * radius
    layer++
    radius += si.layerRise * si.lineDiameter
  }
  return { layer, radius }
}
