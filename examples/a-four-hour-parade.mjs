// A four-hour night parade with the lantern moth on one wearer's back (troupe, names and figures are invented):
// what the body carries, how the straps press, when to rest, whether it is too warm, and how to put it on.
import { mkdirSync, writeFileSync } from "node:fs"
import {
  bodyDimension,
  carriedLoad,
  carriedLoadSideView,
  heatStress,
  liftLimit,
  metabolicRate,
  strapPressure,
  wearSchedule,
} from "alula/worn"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const hours = (s) => {
  const minutes = Math.round(s / 60)
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`
}
const deg = (rad) => `${((rad * 180) / Math.PI).toFixed(1)}°`
const percent = (x) => `${(100 * x).toFixed(0)} %`
/** Warnings and cautions of a result, one line each; the general one is printed once, at the end. */
const warn = (result) => {
  for (const c of result.cautions)
    if (c.severity !== "note" && c.code !== "take-it-off") console.log(`  ! ${c.message} [${c.source.title ?? c.source}]`)
}

// the smallest of the three who take turns
const wearer = { bodyMass: "58 kg", stature: "1.63 m" }
const moth = {
  ...wearer,
  rigMass: "6.5 kg",
  poses: [
    { name: "wings folded", forward: "-0.19 m", up: "1.16 m" },
    { name: "wings half open", forward: "-0.21 m", left: "0.01 m", up: "1.31 m" },
    { name: "wings raised", forward: "-0.23 m", left: "0.015 m", up: "1.52 m" },
  ],
}

heading("The load, pose by pose")
const carried = carriedLoad(moth)
console.log(
  `${percent(carried.massShare)} of body mass; ${carried.massMargin.toFixed(1)} kg left under ${percent(carried.shareLimit)}; peak force while walking ${carried.peakForce.toFixed(0)} N`,
)
for (const p of carried.poses)
  console.log(
    `  ${p.name.padEnd(16)} lean ${deg(p.trunkLean).padStart(5)} (tables: ${deg(p.minTrunkLean)} to ${deg(p.trunkLean)})   hips, straight ${Math.abs(p.hipMoment).toFixed(1).padStart(5)} N·m   low back, leaning ${Math.abs(p.backMomentLeaning).toFixed(1).padStart(4)} N·m`,
  )
console.log("  published guidance:")
for (const g of carried.guidance)
  console.log(`    ${percent(g.massShare).padStart(4)}  ${g.mass.toFixed(1).padStart(4)} kg  ${g.who}${g.exceeded ? ": exceeded" : ""}`)
warn(carried)

heading("The straps")
const straps = strapPressure({ rigMass: moth.rigMass, centreOffset: "0.12 m", strapWidth: "50 mm" })
console.log(
  `belt ${percent(straps.beltShare)} of the weight, one strap up to ${straps.maxTension.toFixed(0)} N, ${(straps.maxPressure / 1000).toFixed(1)} kPa against ${straps.pressureLimit / 1000} kPa; width to choose ${(1000 * straps.suggestedWidth).toFixed(0)} mm`,
)
const hips = bodyDimension({ sex: "female", dimension: "iliac-crest-height", percentile: "50 %", stature: wearer.stature })
console.log(
  `hip belt at about ${(1000 * hips.mean).toFixed(0)} ± ${(1000 * hips.standardDeviation).toFixed(0)} mm above the ground for this stature`,
)
warn(straps)

heading("What walking costs")
const pace = "0.8 m/s"
const walk = metabolicRate({ bodyMass: wearer.bodyMass, rigMass: moth.rigMass, walkingSpeed: pace })
for (const r of walk.readings)
  console.log(`  ${r.equation.padEnd(36)} ${r.metabolicRate.toFixed(0).padStart(4)} W${r.applies ? "" : "   outside its range"}`)
console.log(`  plan with ${walk.metabolicRate.toFixed(0)} W (${walk.met.toFixed(1)} MET)`)

heading("Four hours of parade")
const plan = [
  { name: "muster", activity: "standing", duration: "20 min" },
  { name: "first leg", activity: "walking", duration: "50 min", walkingSpeed: pace },
  { name: "moth on the stand", activity: "off", duration: "25 min" },
  { name: "dance in the square", activity: "stage", duration: "12 min", walkingSpeed: "0.5 m/s" },
  { name: "photographs", activity: "standing", duration: "18 min" },
  { name: "supper", activity: "off", duration: "30 min" },
  { name: "second leg", activity: "walking", duration: "60 min", walkingSpeed: pace },
  { name: "farewell", activity: "stage", duration: "10 min", walkingSpeed: "0.5 m/s" },
  { name: "way to the van", activity: "walking", duration: "15 min", walkingSpeed: pace },
]
const day = { bodyMass: wearer.bodyMass, rigMass: moth.rigMass, backMoment: carried.backMomentLeaning, plan }
const schedule = wearSchedule(day)
for (const p of schedule.plan)
  console.log(
    `  ${hours(p.startTime)}  ${p.name.padEnd(20)} ${p.metabolicRate.toFixed(0).padStart(4)} W  ${percent(p.capacityShare).padStart(5)} of capacity   strain ${percent(p.strain).padStart(5)} ${"▇".repeat(Math.round(10 * Math.min(p.strain, 3)))}`,
  )
if (schedule.firstLimit)
  console.log(
    `the limit is reached after ${hours(schedule.firstLimit.time)}, in '${schedule.firstLimit.during}', ${hours(schedule.firstLimit.wornDuration)} of it with the moth on`,
  )
console.log(`rests to put in: ${schedule.resting.count}, of ${hours(schedule.restDuration)}`)
for (const r of schedule.rests) console.log(`  at ${hours(r.time)}, in '${r.during}': moth off for ${hours(r.duration)}`)
console.log(
  schedule.maxRig.low
    ? `heaviest moth within the limits for the plan as it stands: ${schedule.maxRig.low.rigMass.toFixed(1)} kg (limited by ${schedule.maxRig.low.boundBy})`
    : "no moth is light enough for the plan as it stands",
)
if (schedule.maxRig.high) console.log(`by the more lenient limit: ${schedule.maxRig.high.rigMass.toFixed(1)} kg (the spread, not advice)`)
warn(schedule)

heading("Another plan: one more break, and back to the van without the moth")
const second = { name: "second leg", activity: "walking", duration: "45 min", walkingSpeed: pace }
const pause = { name: "lemonade", activity: "off", duration: "20 min" }
const last = { name: "way to the van, moth in its case", activity: "off", duration: "10 min" }
const better = plan.flatMap((p) => (p.name === "second leg" ? [second, pause] : p.name === "way to the van" ? [last] : [p]))
for (const mass of [5, 6.5, 8, 10]) {
  const one = wearSchedule({ ...day, rigMass: mass, backMoment: (carried.backMomentLeaning * mass) / 6.5, plan: better })
  console.log(
    `  ${mass} kg: maximum strain ${percent(one.peakStrain.high)}, extra rests ${one.resting.count}, ${hours(one.maxUnbrokenDuration)} at most in the hardest part`,
  )
  if (mass === 6.5 && one.maxRig.low)
    console.log(`         heaviest moth within the limits: ${one.maxRig.low.rigMass.toFixed(1)} kg, limited by ${one.maxRig.low.boundBy}`)
}

heading("A mild evening in foam and sheet")
const heat = heatStress({ metabolicRate: walk.metabolicRate, wetBulbTemperature: "12 degC", globeTemperature: "16 degC" })
console.log(
  `WBGT ${heat.wbgt.toFixed(1)} °C, as worn ${heat.effectiveWbgt.toFixed(1)} °C, limit ${heat.wbgtLimit.toFixed(1)} °C: ${percent(heat.workShare)} of each hour in the moth`,
)
warn(heat)

heading("Putting it on")
const lift = liftLimit({ rigMass: moth.rigMass, startHeight: "0.8 m", endHeight: "1.3 m", startReach: "0.45 m" })
console.log(
  `limit ${lift.massLimit.toFixed(1)} kg from a stand, lifting index ${lift.liftingIndex.toFixed(2)}, people ${lift.peopleCount ?? "more than three"}`,
)
warn(lift)

const out = new URL("../out/", import.meta.url)
mkdirSync(out, { recursive: true })
writeFileSync(new URL("four-hour-parade.svg", out), carriedLoadSideView(moth, "Lantern moth: load, lean and moments"))
console.log("\nSide view: out/four-hour-parade.svg")
console.log(carried.cautions[0].message)
