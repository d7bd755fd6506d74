import { voltageDrop } from "alula/wire"

const three = { current: 4, length: 1.2, area: 5e-7 }
const si = voltageDrop.read(three)

export const rows = [
  { name: "solver: kernel of three numbers", run: () => voltageDrop.si(si) },
  { name: "solver: reading three numbers", run: () => voltageDrop.read(three), baseline: "solver: kernel of three numbers" },
  { name: "solver: a call with three numbers", run: () => voltageDrop(three), baseline: "solver: kernel of three numbers" },
]
