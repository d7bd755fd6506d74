import { moveTime } from "alula/rig"

const input = moveTime.read(moveTime.example)

export const rows = [
  { name: "rig.moveTime.si (both ways, curves, waterfall)", run: () => moveTime.si(input) },
  {
    name: "rig.moveTime (validated, sealed)",
    run: () => moveTime(moveTime.example),
    baseline: "rig.moveTime.si (both ways, curves, waterfall)",
  },
]
