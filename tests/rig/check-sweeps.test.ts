// Along each path that a check declares it worsens, its verdict never gets better, on any demo rig.
import { expect, it } from "vitest"
import { checks, judgedAfter } from "../../src/rig/check/assess.js"
import { readsAny } from "../../src/rig/check/check.js"
import { type Judged, judged } from "../../src/rig/check/conditions.js"
import { told, verdictOf } from "../../src/rig/check/finding.js"
import { RIDDEN } from "../../src/rig/check/paths.js"
import type { RigSi } from "../../src/rig/whole/faults.js"
import { type At, everything, put, valuesAt } from "../helpers/planted.js"
import { creatureNames, demoNames, members, rigSi, siOf } from "../helpers/rigs.js"
import { boom, with_ } from "./boom.js"

/** Values over which a path is swept, SI, from well below to well above any of the demo rigs. */
const RANGES: Readonly<Record<string, readonly [number, number]>> = {
  "motions[].wanted.duration": [0.1, 300],
  "motions[].wanted.backDuration": [0.1, 300],
  "motions[].wanted.swing": [0.05, 7],
  "motions[].wanted.span": [0.05, 20],
  "motions[].drive.ratedTorque": [0.05, 50],
  "motions[].drive.holdingForce": [1, 5000],
  "motions[].drive.holdingTorque": [0.01, 200],
  "motions[].duty.ambientTemperature": [-20, 70],
  "motions[].duty.ratedDuty": [0.005, 1],
  "motions[].duty.restDuration": [1, 20000],
  "motions[].spar.strength": [1e6, 1e9],
  "motions[].spar.length": [0.3, 15],
  "motions[].spar.sagLimit": [1e-4, 1],
  "motions[].spar.stepRate": [0.5, 4],
  "motions[].spar.tipMass": [0.001, 20],
  "motions[].transmission[].maxTorque": [0.01, 100],
  "motions[].transmission[].lineStrength": [1, 5000],
  "formed[].bend.radius": [0.02, 1],
  "power.sources[].cellCurrent": [0.01, 50],
  "power.sources[].sleepCurrent": [1e-4, 1],
  "power.sources[].voltage": [1, 60],
  "power.sources[].series": [1, 30],
  "power.sources[].cellCapacity": [300, 1e6],
  "power.sources[].energy": [1000, 7e6],
  "power.buses[].converter.outputVoltage": [1, 100],
  "power.buses[].fuseRating": [0.1, 60],
  "power.buses[].switchRating": [0.05, 50],
  "power.buses[].run.insulation": [40, 260],
  "power.buses[].run.dropLimit": [1e-4, 1],
  "power.loads[].resetVoltage": [0.5, 60],
  "day.moves": [1, 10000],
  "day.hours": [60, 170000],
  "day.reserve": [0, 0.9],
  "wind.windSpeed": [0.2, 30],
  "wind.gustFactor": [1, 3],
  "wind.walkingSpeed": [0, 3],
  "wind.airDensity": [0.9, 1.5],
  "wind.dragCoefficient": [0.2, 4],
  "contact.approachSpeed": [0, 3],
  "parts[].mass": [0.01, 30],
  "parts[].count": [1, 300],
  "parts[].price": [0.1, 3000],
  "straps.strapWidth": [0.01, 0.15],
  "straps.pressureLimit": [1000, 2e5],
  "heat.wetBulbTemperature": [5, 32],
  "heat.globeTemperature": [10, 60],
  "venue.allowance": [0, 0.5],
  "venue.packed.length": [0.1, 3],
  "venue.packed.width": [0.1, 3],
  "venue.packed.height": [0.1, 3],
  "venue.packed.mass": [0.5, 60],
  "budget.mass": [0.1, 60],
  "budget.price": [1, 5000],
  "budget.parts": [1, 300],
}
const WHOLE = ["power.sources[].series", "day.moves", "parts[].count", "budget.parts"]
/** Steps of a sweep: fewer where all motions have to be ridden anew for each. */
const stepsOf = (path: string) => (readsAny({ reads: RIDDEN }, [path]) ? 6 : 12)

/** Values from good to bad, as evenly in proportion as they go. */
function sweep(path: string, way: "up" | "down"): readonly number[] {
  const [low, high] = RANGES[path] as readonly [number, number]
  const steps = stepsOf(path)
  const values = Array.from({ length: steps }, (_, k) => {
    const share = k / (steps - 1)
    const value = low > 0 ? low * (high / low) ** share : low + (high - low) * share
    return WHOLE.includes(path) ? Math.round(value) : value
  })
  return way === "up" ? values : values.reverse()
}

const SPAR = { length: "1 m", section: { outsideDiameter: "16 mm", wall: "1 mm" }, material: "aluminium-6061", sagLimit: "40 mm" }

/** Parts are alike to every check: the first stands for all. */
const isFirstPart = (at: At) => at[0] !== "parts" || at[1] === 0

const order = ["meets", "marginal", "falls short"]
const rigs: readonly (readonly [string, RigSi])[] = [
  ...[...creatureNames, ...demoNames].map((name) => [name, rigSi(name)] as const),
  ["everything", everything()],
  [
    "boom",
    siOf(
      with_(
        boom,
        [["motions", 0, "spar"], SPAR],
        [["power", "buses", 0, "run"], { length: "1 m", awg: 30 }],
        [["day", "moves"], 400],
        [["motions", 0, "drive", "ratedTorque"], "4 N m"],
      ),
    ),
  ],
]
const before = new Map<RigSi, Judged>(rigs.map(([, rig]) => [rig, judged(members, rig)]))

const rows = checks.flatMap((check) => Object.entries(check.worsens).map(([path, way]) => ({ id: check.id, path, way, check })))

it.each(rows)("$id never gets better with $path going $way", ({ check, path, way }) => {
  const seen = new Set<string>()
  for (const [name, rig] of rigs)
    for (const at of valuesAt(rig, path).filter(isFirstPart)) {
      const worst = new Map<string, number>()
      for (const value of sweep(path, way)) {
        const found = check.find(judgedAfter(members, before.get(rig) as Judged, put(rig, at, value), [path]))
        for (const { subject, result } of found) {
          if ("verdict" in result) {
            seen.add(result.verdict)
            continue
          }
          const verdict = verdictOf(told(result))
          seen.add(verdict)
          const rank = order.indexOf(verdict)
          expect(rank, `${name}: ${subject} at ${at.join(".")} ${value}`).toBeGreaterThanOrEqual(worst.get(subject) ?? 0)
          worst.set(subject, rank)
        }
      }
    }
  expect([...seen], "a sweep that changes no verdict shows nothing").toContain("falls short")
  expect(seen.size).toBeGreaterThan(1)
})
