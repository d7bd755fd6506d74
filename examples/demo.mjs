// The main job on the demo rigs: will it move in time, hold, last, be bearable, and what limits it.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs"
import { report } from "alula/report"
import { assess, assessRig, move, moveText } from "alula/rig"

const read = (name) => JSON.parse(readFileSync(new URL(`../shared/rigs/${name}.json`, import.meta.url), "utf8"))
const rigs = ["lantern-moth-bank", "lantern-moth-cells", "ember-lizard-collar", "reed-dragon-tail"]
const marks = { "falls short": "✗", marginal: "△", "not enough data": "?", meets: "✓" }
const out = new URL("../out/", import.meta.url)
mkdirSync(out, { recursive: true })

for (const name of rigs) {
  const rig = read(name)
  if (rig.hinged) console.log(`${moveText(rig)}\n`)
  else console.log(`${rig.name}\n${"=".repeat(rig.name.length)}`)
  const { summary, findings } = assess(rig)
  console.log(`Assessment: ${summary}`)
  for (const f of findings)
    console.log(
      `  ${marks[f.verdict]} ${f.verdict.padEnd(12)} ${f.title.padEnd(36)} ${f.shownValue.padStart(9)} / ${f.shownLimit.padEnd(9)} ${f.verdict === "meets" ? "" : f.why}`.trimEnd(),
    )
  const { html, markdown } = report(rig)
  writeFileSync(new URL(`${name}.html`, out), html)
  writeFileSync(new URL(`${name}.md`, out), markdown)
  console.log(`Report with pictures: out/${name}.html\n`)
}

// Creatures of other make, written in version 2 of the document: several motions on one supply.
const creatures = ["nine-feather-fan", "four-bar-dragon", "umbrella-legs", "folding-skew-wing"]
const seconds = (t) => `${t < 1 ? Number(t.toPrecision(2)) : Number(t.toPrecision(3))} s`
for (const name of creatures) {
  const rig = read(name)
  console.log(`${rig.name}\n${"=".repeat(rig.name.length)}`)
  for (const { name: motion } of rig.motions) {
    const { outDuration, backDuration, limit, out } = move({ ...rig, motion })
    console.log(`  ${motion}: ${seconds(outDuration)} out, ${seconds(backDuration)} back; what costs most: ${limit}`)
    for (const { label, duration, saved } of out.waterfall)
      console.log(
        `    ${label.padEnd(40)} ${seconds(duration).padStart(8)}${saved > 0.005 ? `, ${seconds(saved)} saved by mending it alone` : ""}`,
      )
  }
  const { summary, findings } = assessRig(rig)
  console.log(`Assessment: ${summary}`)
  for (const f of findings)
    if (f.verdict !== "meets")
      console.log(`  ${marks[f.verdict] ?? "?"} ${f.verdict.padEnd(16)} ${f.subject.padEnd(14)} ${f.title.padEnd(34)} ${f.sentence}`)
  console.log()
}
