// Studies against the bare loop of kernels that they stand on.
import { moveTime } from "alula/rig"
import { optimize, sensitivity, uncertainty } from "alula/study"
import { voltageDrop } from "alula/wire"

const rig = moveTime.read(moveTime.example)
const run = voltageDrop.read(voltageDrop.example)
const spreads = { "hinged.hingeFriction": "± 20 %", "hinged.movingPivot.radius": "± 1 mm", "pack.cellResistance": "± 10 %" }
const moves = "study: 32 × rig.moveTime.si, a bare loop"
const drops = "study: 10 000 × wire.voltageDrop.si, a bare loop"
const repeat = (count, kernel, si) => () => {
  for (let i = 0; i < count; i++) kernel.si(si)
}

export const rows = [
  { name: moves, run: repeat(32, moveTime, rig) },
  {
    name: "study.uncertainty (32 samples of rig.moveTime)",
    run: () => uncertainty(moveTime, moveTime.example, spreads, { outputs: ["raiseTime"], samples: 31, within: 0, worst: false }),
    baseline: moves,
  },
  { name: drops, run: repeat(10_000, voltageDrop, run) },
  {
    name: "study.uncertainty (10 000 samples of wire.voltageDrop)",
    run: () =>
      uncertainty(
        voltageDrop,
        voltageDrop.example,
        { length: "± 1 %", current: "± 5 %" },
        { outputs: ["drop"], samples: 10_000, within: 0, worst: false },
      ),
    baseline: drops,
  },
  {
    name: "study.sensitivity (10 000 evaluations of wire.voltageDrop)",
    run: () => sensitivity(voltageDrop, voltageDrop.example, { outputs: ["drop"], vary: ["length", "current"], samples: 2500 }),
    baseline: drops,
  },
  {
    name: "study.optimize (10 000 evaluations of wire.voltageDrop)",
    run: () =>
      optimize(voltageDrop, voltageDrop.example, {
        vary: { length: { from: "1 m", to: "9 m" }, current: { from: "1 A", to: "9 A" } },
        minimize: ["drop"],
        budget: 10_000,
      }),
    baseline: drops,
  },
]
