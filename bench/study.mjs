// Studies against the bare loop of kernels that they stand on.
import { move } from "alula/rig"
import { optimize, sensitivity, uncertainty } from "alula/study"
import { voltageDrop } from "alula/wire"

const rig = move.read(move.example)
const run = voltageDrop.read(voltageDrop.example)
const spreads = { "motions.0.mechanisms.0.hingeFriction": "± 20 %", "power.sources.0.cellResistance": "± 10 %" }
const moves = "study: 32 × rig.move.si, a bare loop"
const drops = "study: 10 000 × wire.voltageDrop.si, a bare loop"
const repeat = (count, kernel, si) => () => {
  for (let i = 0; i < count; i++) kernel.si(si)
}

export const rows = [
  { name: moves, run: repeat(32, move, rig) },
  {
    name: "study.uncertainty (32 samples of rig.move)",
    run: () => uncertainty(move, move.example, spreads, { outputs: ["outDuration"], samples: 31, within: 0, worst: false }),
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
