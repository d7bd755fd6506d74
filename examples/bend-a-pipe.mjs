// A wing rib for the lantern moth, bent from plastic pipe round a jig (the troupe, its sizes and its oven are invented):
// the recipe in the order of the work, and the jig's edge as a picture to print at true scale.
import { mkdirSync, writeFileSync } from "node:fs"
import { formatQuantity } from "alula/quantity"
import {
  bendTemplate,
  bendTemplatePages,
  bendTemplateSvg,
  coolingTime,
  formingWindow,
  heatingTime,
  softening,
  tubeBend,
} from "alula/thermoform"

const pipe = { outsideDiameter: "26.7 mm", wall: "2.9 mm", material: "pvc" }
const rib = { radius: "420 mm", angle: "75 deg" }
const form = { shape: "tube", outsideDiameter: pipe.outsideDiameter, thickness: pipe.wall, material: pipe.material, filling: "dry-sand" }
const ovenError = "4 deltaC"
// warmer than the minimum, so that there is time to get it round the jig
const core = "121 degC"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const show = (kind, value, unit) => formatQuantity(kind, value, unit, 3)
const up = (seconds) => `${Math.ceil(seconds / 60)} min`
const down = (seconds) => `${Math.floor(seconds)} s`
const said = new Set()
/** Every caution once, the gravest first. */
const warn = (...results) => {
  const rank = { warning: 0, caution: 1, note: 2 }
  const fresh = results.flatMap((r) => r.cautions).filter((c) => !said.has(c.code) && said.add(c.code))
  for (const c of fresh.sort((a, b) => rank[a.severity] - rank[b.severity]))
    console.log(`  ${c.severity}: ${c.message}\n    [${c.source.title}]`)
}

heading("1. The plastic: between too cold and too hot")
const window = formingWindow({ material: pipe.material })
console.log(
  `Core at least ${window.window.low} °C, surface at most ${window.window.high} °C; published: lower ${window.lower.low} to ${window.lower.high} °C,`,
)
console.log(
  `usual ${window.normal.low} to ${window.normal.high} °C, upper ${window.upper.low} to ${window.upper.high} °C, vapours from ${window.fume.low} °C.`,
)
warn(window)

heading("2. The bend: what to cut, heat and set the jig to")
const bend = tubeBend({ ...pipe, ...rib, support: "filled", legA: "0.55 m", legB: "0.75 m" })
console.log(
  `Cut ${show("length", bend.cutLength, "mm")}; heat ${show("length", bend.heatedLength, "mm")}, of which the bend is ${show("length", bend.developedLength, "mm")}.`,
)
console.log(`The outside stretches ${show("ratio", bend.fibreStrain, "%")} and its wall thins to ${show("length", bend.outerWall, "mm")}.`)
console.log(
  `Minimum radius filled ${show("length", bend.minRadiusFilled, "mm")}, empty ${show("length", bend.minRadiusEmpty, "mm")}: ${bend.wideEnough ? "wide enough" : "too tight"}.`,
)
console.log(`Jig for ${show("angle", bend.jigAngle)}, centreline ${show("length", bend.jigRadius, "mm")}, to end at 75° after springback.`)
warn(bend)

heading("3. The oven: how hot and how long, full of dry sand")
const start = { ...form, heatSource: "oven", sourceTemperatureError: ovenError, coreTemperature: core }
const first = heatingTime({ ...start, sourceTemperature: window.window.high })
const heat = heatingTime({ ...start, sourceTemperature: first.advisedSourceTemperature })
console.log(
  `Set the air to ${show("temperature", first.advisedSourceTemperature)} (known to ±4 K): ready after ${up(first.advisedTime.low)} at the earliest, surely after ${up(first.advisedTime.high)}.`,
)
console.log(
  `At just that temperature ${up(heat.time)} (${up(heat.timeRange.low)} to ${up(heat.timeRange.high)} by the pipe's properties); the surface then is at ${show("temperature", heat.peakSurfaceTemperature)}.`,
)
const tooHot = heatingTime({ ...start, sourceTemperature: "210 degC" })
console.log(
  `No hotter than ${show("temperature", first.maxSourceTemperature)}, or a surface may be spoilt before the bore is ready; at 210 °C instead: ${tooHot.cautions[0].message}`,
)
warn(first)

heading("4. From the oven to the jig")
const cool = coolingTime({ ...form, formingTemperature: heat.peakSurfaceTemperature })
console.log(
  `Be in the jig within ${down(cool.plannedWorkingTime)}; hold at least ${up(cool.plannedHoldTime)} in still air, until ${show("temperature", cool.releaseTemperature)} all through.`,
)
warn(cool)

heading("5. The jig")
const jig = bendTemplate({ shape: "arc", outsideDiameter: pipe.outsideDiameter, ...rib, springback: bend.springback })
console.log(
  `Edge radius ${show("length", jig.minEdgeRadius, "mm")}, end to end ${show("length", jig.chord, "mm")}, ${show("length", jig.width, "mm")} by ${show("length", jig.height, "mm")}.`,
)
const out = new URL("../out/", import.meta.url)
mkdirSync(out, { recursive: true })
const template = { shape: "arc", outsideDiameter: pipe.outsideDiameter, ...rib, springback: bend.springback }
const title = "lantern moth, wing rib 3"
writeFileSync(new URL("wing-rib-template.svg", out), bendTemplateSvg(template, title))
const pages = bendTemplatePages(template, title)
for (const [i, page] of pages.entries()) writeFileSync(new URL(`wing-rib-page-${i + 1}.svg`, out), page)
console.log(`Template at true scale: out/wing-rib-template.svg, and on ${pages.length} sheets of A4: out/wing-rib-page-1.svg and on`)
warn(jig)

heading("6. Afterwards: left in the troupe's van in August")
const van = softening({ material: pipe.material, thickness: pipe.wall, place: "hot-car" })
console.log(
  `The rib settles near ${show("temperature", van.materialTemperature)}: ${van.verdict}${van.softeningTime === null ? "" : `, after ${down(van.softeningTime / 60).replace(" s", " min")}`}.`,
)
warn(van)
