import { type BeltDriveInput, beltDrive } from "../../src/drive/index.js"
import type { SiOf } from "../../src/solver/index.js"
import type { Edges } from "../helpers/edges.js"

const flat = (change: object = {}) => ({
  belt: { type: "flat", drivingDiameter: "20 mm", drivenDiameter: "60 mm", friction: 0.3, ...change },
})
const toothed = (change: object) => ({ belt: { type: "toothed", pitch: "3 mm", drivingTeeth: 20, drivenTeeth: 48, ...change } })
/** Pull that strands of this pretension carry, by marching round the wrap. */
function carries(si: SiOf<BeltDriveInput>): { pull: number; maxPull: number } {
  const { belt } = si
  const [r1, r2] =
    belt.type === "toothed"
      ? [(belt.pitch * belt.drivingTeeth) / 2 / Math.PI, (belt.pitch * belt.drivenTeeth) / 2 / Math.PI]
      : [belt.drivingDiameter / 2, belt.drivenDiameter / 2]
  const speed = (si.inputSpeed ?? 0) * r1
  const left = Math.max(0, si.pretension - si.linearDensity * speed * speed)
  const pull = Math.abs(si.torque) / r2
  if (belt.type === "toothed") return { pull, maxPull: 2 * left }
  const wrap =
    "crossed" in belt && belt.crossed
      ? Math.PI + 2 * Math.asin((r1 + r2) / si.centreDistance)
      : 2 * Math.acos(Math.abs(r2 - r1) / si.centreDistance)
  const grip = Math.exp((belt.friction * wrap) / ("grooveAngle" in belt ? Math.sin(belt.grooveAngle / 2) : 1))
  // slack and tight from their sum and their ratio
  const slack = (2 * left) / (1 + grip)
  return { pull, maxPull: slack * grip - slack }
}

export const edges: Edges = {
  cautions: [
    { code: "drawn-in", severity: "warning", solver: beltDrive, shown: {}, notShown: null },
    { code: "strength-not-judged", severity: "note", solver: beltDrive, shown: {}, notShown: null },
    { code: "back-driven", severity: "warning", solver: beltDrive, shown: { torque: 1e-4 }, notShown: { torque: 0 } },
    // 0.7 of 2·(60 N − 0.02 · (0.3 m/s)²) on 22.92 mm: 1.925 N·m
    { code: "near-slip", severity: "caution", solver: beltDrive, shown: { torque: 1.926 }, notShown: { torque: 1.925 } },
    // 120° on the smaller pulley: 2·asin(20 mm / C) = 60° at C = 40 mm, which the radii just allow
    {
      code: "little-wrap",
      severity: "caution",
      solver: beltDrive,
      shown: { ...flat({ drivingDiameter: "10 mm", drivenDiameter: "90 mm" }), centreDistance: "79.9 mm", torque: 0 },
      notShown: { ...flat({ drivingDiameter: "10 mm", drivenDiameter: "90 mm" }), centreDistance: "80.1 mm", torque: 0 },
    },
    // 12 teeth and a half turn are six; a driven pulley of one tooth more takes a little of it
    {
      code: "few-teeth-in-mesh",
      severity: "caution",
      solver: beltDrive,
      shown: { ...toothed({ drivingTeeth: 12, drivenTeeth: 13 }), torque: 0 },
      notShown: { ...toothed({ drivingTeeth: 12, drivenTeeth: 12 }), torque: 0 },
    },
  ],
  refusals: [
    { code: "skips", solver: beltDrive, refused: { torque: 2.7502 }, answered: { torque: 2.7501 } },
    // 2 · 60 N · (e^(0.3·θ) − 1)/(e^(0.3·θ) + 1), θ = 180° − 2·asin(20/140): 48.46 N, on 30 mm
    { code: "slips", solver: beltDrive, refused: { ...flat(), torque: 1.454 }, answered: { ...flat(), torque: 1.4535 } },
  ],
  faults: [
    // both pulleys: 60 mm · 1.001 of radii
    {
      path: "centreDistance",
      solver: beltDrive,
      faulty: { ...flat(), centreDistance: "40 mm", torque: 0 },
      sound: { ...flat(), centreDistance: "40.1 mm", torque: 0 },
    },
  ],
  numbers: {
    "beltDrive.skips.at.pull": (si) => carries(si).pull,
    "beltDrive.skips.at.maxPull": (si) => carries(si).maxPull,
    "beltDrive.skips.shortBy": (si) => carries(si).pull - carries(si).maxPull,
    "beltDrive.slips.at.pull": (si) => carries(si).pull,
    "beltDrive.slips.at.maxPull": (si) => carries(si).maxPull,
    "beltDrive.slips.shortBy": (si) => carries(si).pull - carries(si).maxPull,
    "beltDrive.centreDistance.radii": (si) =>
      si.belt.type === "toothed"
        ? (si.belt.pitch * (si.belt.drivingTeeth + si.belt.drivenTeeth)) / 2 / Math.PI
        : (si.belt.drivingDiameter + si.belt.drivenDiameter) / 2,
  },
}
