// The main job on the demo rigs: will it move in time, hold, last, be bearable, and what limits it.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs"
import { report } from "alula/report"
import { assess, moveText } from "alula/rig"

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
