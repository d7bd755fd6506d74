import { readFileSync } from "node:fs"
import { diagnosis } from "alula/advice"
import { report } from "alula/report"
import { assess, moveTime } from "alula/rig"

const bank = JSON.parse(readFileSync(new URL("../shared/rigs/lantern-moth-bank.json", import.meta.url), "utf8"))
const move = moveTime.read(bank)
const whole = assess.read(bank)
const measured = diagnosis.read(diagnosis.example)
const base = "rig.moveTime.si (both ways, curves, waterfall)"

export const rows = [
  { name: base, run: () => moveTime.si(move) },
  { name: "rig.moveTime (validated, sealed)", run: () => moveTime(bank), baseline: base },
  { name: "rig.assess.si (43 checks)", run: () => assess.si(whole), baseline: base },
  { name: "rig.report (Markdown and page)", run: () => report(bank), baseline: base },
  { name: "rig.diagnosis.si (7 readings)", run: () => diagnosis.si(measured), baseline: base },
]
