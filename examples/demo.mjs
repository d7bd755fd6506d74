// The main job on the demo rigs: will each creature move in time, hold, last, be bearable, and what limits it.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs"
import { remedies } from "alula/advice"
import { buildSheet, report } from "alula/report"
import { move, rigWith } from "alula/rig"
import { starters } from "alula/starters"

const { read } = rigWith()
const of = (name) => readFileSync(new URL(`../shared/rigs/${name}.json`, import.meta.url), "utf8")
// the first four are written in version 1 of the document and brought to version 2 as they are read
const moths = ["lantern-moth-bank", "lantern-moth-cells", "ember-lizard-collar", "reed-dragon-tail"]
const creatures = ["nine-feather-fan", "four-bar-dragon", "umbrella-legs", "folding-skew-wing", "marsh-heron"]
const marks = { "falls short": "✗", marginal: "△", meets: "✓" }
const seconds = (t) => (t === null ? "stopped" : `${t < 1 ? Number(t.toPrecision(2)) : Number(t.toPrecision(3))} s`)
const out = new URL("../out/", import.meta.url)
mkdirSync(out, { recursive: true })

const answers = []
const rigs = [
  ...[...moths, ...creatures].map((name) => [name, read(of(name))]),
  // and the rigs that the command's `new` writes
  ...Object.entries(starters).map(([kind, { rig }]) => [`starter-${kind}`, rig]),
]
for (const [name, rig] of rigs) {
  console.log(`${rig.name}\n${"=".repeat(rig.name.length)}`)
  for (const { name: motion } of rig.motions) {
    const outcome = move.attempt({ ...rig, motion })
    if (!outcome.ok) {
      console.log(`  ${motion}: ${outcome.error.message}`)
      continue
    }
    const { outDuration, backDuration, limit, out: way } = outcome.value
    console.log(`  ${motion}: ${seconds(outDuration)} out, ${seconds(backDuration)} back; what costs most: ${limit}`)
    for (const { label, duration, saved } of way.waterfall)
      console.log(
        `    ${label.padEnd(40)} ${seconds(duration).padStart(8)}${saved > 0.005 ? `, ${seconds(saved)} saved by mending it alone` : ""}`,
      )
  }
  const found = remedies(rig)
  const { content, html, markdown } = report(rig, { remedies: found })
  for (const { findings } of content.subjects)
    for (const f of findings)
      if (f.verdict !== "meets")
        console.log(`  ${marks[f.verdict] ?? "?"} ${f.verdict.padEnd(16)} ${f.subject.padEnd(14)} ${f.title.padEnd(34)} ${f.sentence}`)
  writeFileSync(new URL(`${name}.html`, out), html)
  writeFileSync(new URL(`${name}-sheet.html`, out), buildSheet(rig).html)
  writeFileSync(new URL(`${name}.md`, out), markdown)
  writeFileSync(new URL(`${name}.json`, out), `${JSON.stringify(content, null, 2)}\n`)
  console.log()
  const times = content.motions.map((m) => `${m.name} ${seconds(m.out.duration)} out, ${seconds(m.back.duration)} back`).join("; ")
  const { first } = content
  const change = found.remedies.slice(0, 3).map(({ text }) => `  To change: ${text}`)
  const unmended = found.unmended.slice(0, 2).map(({ title, subject, text }) => `  ${title} (${subject}): ${text}`)
  answers.push(
    [
      `${rig.name}: ${content.answer}`,
      `  At worst: ${times}.`,
      `  ${first ? `First ${first.title} of ${first.subject}: ${first.shownLimit ? `${first.shownValue}, must be ${first.shownLimit}.` : first.sentence}` : "Nothing falls short."} Report: out/${name}.html`,
      ...change,
      ...unmended,
    ].join("\n"),
  )
}
console.log(answers.join("\n"))
