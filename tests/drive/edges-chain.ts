import { chainDrive } from "../../src/drive/index.js"
import type { Edges } from "../helpers/edges.js"

// 34 teeth of 6.35 mm: radius 34.41 mm, 34.26 mm at the corners; 8 N·m pull 233.5 N, half as much again with jolts, 0.2 N by speed
const pull = (8 * 1.5) / ((6.35e-3 / 2 / Math.sin(Math.PI / 34)) * Math.cos(Math.PI / 34)) + 0.14 * (17 * 6.35e-3 * 2) ** 2
// outside radii, where teeth touch
const tips = (6.35e-3 / 2) * (1.2 + 1 / Math.tan(Math.PI / 17) + 1 / Math.tan(Math.PI / 34))
const few = (drivingTeeth: number) => ({ drivingTeeth, drivenTeeth: 18 })

export const edges: Edges = {
  cautions: [
    { code: "drawn-in", severity: "warning", solver: chainDrive, shown: {}, notShown: null },
    { code: "back-driven", severity: "warning", solver: chainDrive, shown: { torque: -1e-4 }, notShown: { torque: 0 } },
    { code: "strength-not-judged", severity: "note", solver: chainDrive, shown: { breakingForce: undefined }, notShown: {} },
    {
      code: "thin-chain",
      severity: "warning",
      solver: chainDrive,
      shown: { breakingForce: 6.999 * pull },
      notShown: { breakingForce: 7.001 * pull },
    },
    { code: "few-teeth", severity: "note", solver: chainDrive, shown: few(16), notShown: few(17) },
    { code: "few-teeth", severity: "note", solver: chainDrive, shown: few(11), notShown: few(10) },
    { code: "few-teeth", severity: "caution", solver: chainDrive, shown: few(10), notShown: few(11) },
    {
      code: "few-teeth",
      severity: "caution",
      solver: chainDrive,
      shown: { drivenTeeth: 10 },
      notShown: { drivenTeeth: 11 },
    },
    // 6.35 mm / sin 2° = 181.95 mm and 17 teeth 34.56 mm: 60° of half wrap at twice their half difference, 147.4 mm
    {
      code: "little-wrap",
      severity: "caution",
      solver: chainDrive,
      shown: { drivenTeeth: 90, centreDistance: "147.3 mm" },
      notShown: { drivenTeeth: 90, centreDistance: "147.5 mm" },
    },
  ],
  refusals: [],
  faults: [
    {
      path: "centreDistance",
      solver: chainDrive,
      faulty: { centreDistance: tips * 0.999 },
      sound: { centreDistance: tips * 1.001 },
    },
  ],
  numbers: {
    "chainDrive.centreDistance.tips": (si) =>
      [si.drivingTeeth, si.drivenTeeth].reduce((sum, z) => sum + (si.pitch / 2) * (0.6 + Math.cos(Math.PI / z) / Math.sin(Math.PI / z)), 0),
  },
}
