import { readFileSync } from "node:fs"
import { diagnosis } from "alula/advice"
import { report } from "alula/report"
import { assessRig, move as moveOf, quickMove, readRig } from "alula/rig"

const fan = JSON.parse(readFileSync(new URL("../shared/rigs/nine-feather-fan.json", import.meta.url), "utf8"))
const [one, many] = [moveOf.read(moveOf.example), moveOf.read(fan)]
const [oneRig, manyRig] = [moveOf.example, fan].map(({ motion: _, ...rig }) => assessRig.read(rig))
const second = "rig.move.si (one motion, both ways, waterfall)"

const bank = readRig(readFileSync(new URL("../shared/rigs/lantern-moth-bank.json", import.meta.url), "utf8"))
const [moth, whole] = [moveOf.read(bank), assessRig.read(bank)]
const measured = diagnosis.read(diagnosis.example)
const base = "rig.move.si (the moth on a bank)"

export const rows = [
  { name: second, run: () => moveOf.si(one) },
  { name: "rig.move.si (nine feathers on a winch, a jaw beside)", run: () => moveOf.si(many), baseline: second },
  { name: "rig.quickMove", run: () => quickMove(one), baseline: second },
  { name: "rig.quickMove, rough", run: () => quickMove(one, { rough: true }), baseline: second },
  { name: "rig.assessRig.si (one motion)", run: () => assessRig.si(oneRig), baseline: second },
  { name: "rig.assessRig.si (fan and jaw)", run: () => assessRig.si(manyRig), baseline: second },
  { name: base, run: () => moveOf.si(moth) },
  { name: "rig.move (validated, sealed)", run: () => moveOf(bank), baseline: base },
  { name: "rig.assessRig.si (the moth on a bank)", run: () => assessRig.si(whole), baseline: base },
  { name: "rig.report (Markdown and page)", run: () => report(bank), baseline: base },
  { name: "rig.diagnosis.si (7 readings)", run: () => diagnosis.si(measured), baseline: base },
]
