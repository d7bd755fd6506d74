// The table that every ride reads against the motion itself, asked directly at places that the table never saw.
import { readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import { drives } from "../../src/rig/drives/index.js"
import { assessRig, move, quickMove, type Rig } from "../../src/rig/index.js"
import { mechanisms } from "../../src/rig/mechanisms/index.js"
import { effortIn, inertiaIn } from "../../src/rig/run/effort-curve.js"
import { effortAt, effortState, type MotionModel } from "../../src/rig/run/motion-model.js"
import { situation } from "../../src/rig/run/situation.js"
import { transmissions } from "../../src/rig/transmissions/index.js"
import type { RigSi } from "../../src/rig/whole/faults.js"

const members = { drives, transmissions, mechanisms }
const creatures = ["nine-feather-fan", "four-bar-dragon", "folding-skew-wing", "umbrella-legs"]

describe.each(creatures)("the table of efforts: %s", (name) => {
  const document = JSON.parse(readFileSync(new URL(`../../shared/rigs/${name}.json`, import.meta.url), "utf8"))
  const rig = assessRig.read(document) as unknown as RigSi
  it.each([48, 160])("is the motion's own effort and inertia, looked at %i times", (looks) => {
    const at = situation(members, rig, looks)
    const state = effortState()
    at.motions.forEach((motion: MotionModel, index) => {
      for (const way of [1, -1] as const) {
        const { table, maxEffort, minEffort } = at.curve(index, way)
        if (!table) throw new RangeError(`${motion.name} stops`)
        const places = Array.from({ length: 1999 }, (_, i) => (motion.span * (i + 0.37)) / 1999)
        const asked = places.map((x) => {
          effortAt(motion, x, way, at.around, state)
          return { effort: state.effort, inertia: state.inertia }
        })
        const heaviest = Math.max(...asked.map(({ inertia }) => inertia))
        places.forEach((x, i) => {
          expect(Math.abs(inertiaIn(table, x) - (asked[i]?.inertia as number))).toBeLessThan(1e-9 * heaviest)
        })
        const efforts = asked.map(({ effort }) => effort)
        const scale = Math.max(...efforts.map(Math.abs))
        places.forEach((x, i) => {
          expect(Math.abs(effortIn(table, x) - (efforts[i] as number)), `${motion.name} at ${x}`).toBeLessThan(1e-10 * scale)
        })
        expect(maxEffort).toBeGreaterThanOrEqual(Math.max(...efforts) - 1e-10 * scale)
        expect(minEffort).toBeLessThanOrEqual(Math.min(...efforts) + 1e-10 * scale)
        // and no more than the steepest slope between two places allows
        const steps = efforts.slice(1).map((e, i) => Math.abs(e - (efforts[i] as number)))
        expect(maxEffort).toBeLessThanOrEqual(Math.max(...efforts) + Math.max(...steps))
        expect(minEffort).toBeGreaterThanOrEqual(Math.min(...efforts) - Math.max(...steps))
      }
    })
  })
})

describe("a motion that asks for no effort at all", () => {
  it("takes its drive's own time, quick and whole", () => {
    const drive = {
      type: "gearmotor",
      travel: "90 deg",
      ratedVoltage: "12 V",
      noLoadSpeed: "20 rpm",
      loadTorque: "1 N m",
      loadSpeed: "10 rpm",
      loadCurrent: "1 A",
    }
    const weightless = { type: "slider-crank", name: "toy", crank: "10 mm", coupler: "40 mm", startAngle: "10 deg", sliderMass: "0.1 g" }
    const rig = { version: 2, name: "weightless", motions: [{ name: "toy", drive, mechanisms: [weightless] }] } as unknown as Rig
    // a quarter of a turn at twenty turns a minute
    const quick = quickMove(move.read(rig))
    expect(quick?.out.duration).toBeCloseTo(0.25 / (20 / 60), 9)
    expect(move(rig).outDuration).toBeCloseTo(0.25 / (20 / 60), 9)
  })
})
