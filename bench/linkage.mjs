import { fourBar, planarLinkage, scissor, sweptEnvelope } from "alula/linkage"

const wing = fourBar.read(fourBar.example)
const [crank] = planarLinkage.example.cranks
const data = planarLinkage.read({ ...planarLinkage.example, cranks: [{ ...crank, end: null }], steps: 0 })
const turn = planarLinkage.read(planarLinkage.example)
const tail = scissor.read(scissor.example)
const room = sweptEnvelope.read(sweptEnvelope.example)

export const rows = [
  { name: "linkage.fourBar.si (one pose, speeds and accelerations)", run: () => fourBar.si(wing) },
  {
    name: "linkage.fourBar (validated, sealed)",
    run: () => fourBar(fourBar.example),
    baseline: "linkage.fourBar.si (one pose, speeds and accelerations)",
  },
  {
    name: "linkage.planarLinkage.si (one pose, forces too)",
    run: () => planarLinkage.si(data),
    baseline: "linkage.fourBar.si (one pose, speeds and accelerations)",
  },
  { name: "linkage.planarLinkage.si (nine poses along a branch)", run: () => planarLinkage.si(turn) },
  { name: "linkage.scissor.si", run: () => scissor.si(tail) },
  { name: "linkage.sweptEnvelope.si (17 poses)", run: () => sweptEnvelope.si(room) },
]
