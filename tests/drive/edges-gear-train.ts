import { gearTrain } from "../../src/drive/index.js"
import type { Edges } from "../helpers/edges.js"

const planetary = { type: "planetary", drivingTeeth: 12, drivenTeeth: 48, module: "0.5 mm", backlash: "0.5 deg" }
const worm = { type: "worm", drivingTeeth: 1, drivenTeeth: 30, leadAngle: "4 deg", friction: 0.1, module: "1 mm", backlash: "0.3 deg" }
const spur = { type: "spur", drivingTeeth: 20, drivenTeeth: 60 }
const only = (stage: object, change: object = {}) => ({ stages: [{ ...stage, ...change }] })
const first = (change: object) => ({ stages: [{ ...planetary, ...change }, worm] })
const second = (change: object) => ({ stages: [planetary, { ...worm, ...change }] })

export const edges: Edges = {
  cautions: [
    { code: "drawn-in", severity: "warning", solver: gearTrain, shown: {}, notShown: null },
    { code: "strength-not-judged", severity: "note", solver: gearTrain, shown: {}, notShown: null },
    // a worm of 4° and cos 20° locks above tan 4°·cos 20° = 0.06571
    {
      code: "back-driven",
      severity: "warning",
      solver: gearTrain,
      shown: second({ friction: 0.0655 }),
      notShown: second({ friction: 0.0659 }),
    },
    // with half of it left, above 0.13142
    {
      code: "thin-holding-margin",
      severity: "warning",
      solver: gearTrain,
      shown: second({ friction: 0.1311 }),
      notShown: second({ friction: 0.1317 }),
    },
    {
      code: "thin-holding-margin",
      severity: "warning",
      solver: gearTrain,
      shown: second({ friction: 0.0659 }),
      notShown: second({ friction: 0.0655 }),
    },
    {
      code: "worm-start",
      severity: "caution",
      solver: gearTrain,
      shown: { stages: [spur, worm] },
      notShown: { stages: [spur] },
    },
    // 20° gears of 3:1 mesh from 15 teeth on (Bevan, example 4 of chapter 10)
    {
      code: "undercut",
      severity: "note",
      solver: gearTrain,
      shown: only(spur, { drivingTeeth: 14, drivenTeeth: 43 }),
      notShown: only(spur, { drivingTeeth: 15, drivenTeeth: 43 }),
    },
    {
      code: "uneven-planets",
      severity: "note",
      solver: gearTrain,
      shown: first({ drivenTeeth: 50 }),
      notShown: first({ drivenTeeth: 48 }),
      apart: "the next ring that fits three planets is two teeth away",
    },
    {
      code: "uneven-planets",
      severity: "note",
      solver: gearTrain,
      shown: only(planetary, { drivingTeeth: 13, drivenTeeth: 50, planets: 1 }),
      notShown: only(planetary, { drivingTeeth: 13, drivenTeeth: 49, planets: 1 }),
    },
  ],
  refusals: [],
  faults: [
    { path: "stages.1.wormEfficiency", solver: gearTrain, faulty: second({ wormEfficiency: 0.4 }), sound: second({}) },
    { path: "stages.1.friction", solver: gearTrain, faulty: second({ friction: undefined }), sound: second({}) },
    { path: "stages.0.drivenTeeth", solver: gearTrain, faulty: first({ drivenTeeth: 14 }), sound: first({ drivenTeeth: 15 }) },
    // a sun of 12 and planets of 18: sin(180°/5)·30 = 17.6, below the 20 that their tips need
    { path: "stages.0.planets", solver: gearTrain, faulty: first({ planets: 5 }), sound: first({ planets: 4 }) },
  ],
  numbers: {
    "gearTrain.stages.0.drivenTeeth.ring": (si) => si.stages[0].drivenTeeth,
    "gearTrain.stages.0.drivenTeeth.sun": (si) => si.stages[0].drivingTeeth,
    "gearTrain.stages.0.planets.planets": (si) => si.stages[0].planets,
    "gearTrain.stages.0.planets.sun": (si) => si.stages[0].drivingTeeth,
  },
}
