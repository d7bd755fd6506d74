// Checks of spars, hinge pins and parts formed hot.
import { type BeamInput, beam, naturalFrequency, pinJoint } from "../../frame/index.js"
import { standardGravity } from "../../linkage/index.js"
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import { commonPractice, type Source } from "../../solver/index.js"
import { coolingTime, heatingTime, tubeBend } from "../../thermoform/index.js"
import { ridingMasses } from "../run/carrying.js"
import { coordinatesAt, type MotionModel } from "../run/motion-model.js"
import { ridePoint } from "../run/ride.js"
import type { RigSi } from "../whole/faults.js"
import { asked, blocked, type Found, lacking, type RigCheck } from "./check.js"
import type { Judged, Run } from "./conditions.js"
import type { Measured, NotMade } from "./finding.js"
import { POSED, RIDDEN } from "./paths.js"

type MotionSi = RigSi["motions"][number]
type Spar = NonNullable<MotionSi["spar"]>
interface MassAt {
  readonly mass: number
  readonly radius: number
}

/** Masses of the first mechanism that carries a list of them on an arm; empty where its masses are described otherwise. */
function armMasses(motion: MotionSi): readonly MassAt[] {
  for (const one of motion.mechanisms) {
    const { masses } = one as unknown as { readonly masses?: readonly MassAt[] }
    if (masses) return masses
  }
  return []
}

const levelCondition = "held level, with what walking adds where its handling says so"

/** A finding on the spar of each motion; masses beyond its end bear on its tip. */
function onSpars(rig: Judged, make: (spar: Spar, masses: readonly MassAt[], path: string) => Measured | NotMade): readonly Found[] {
  return rig.rig.motions.flatMap((motion, i): Found[] => {
    const own = armMasses(motion)
    if (!own.length) return []
    const masses = [...own, ...ridingMasses(rig.motions[i] as MotionModel)]
    const path = `motions[${i}].spar`
    if (!motion.spar) return [{ subject: motion.name, result: lacking(path, `Nothing says what the arms of ${motion.name} are made of.`) }]
    return [{ subject: motion.name, result: make(motion.spar, masses, path) }]
  })
}

const onTo = ({ length }: Spar, { radius }: MassAt) => Math.min(radius, length)

/** The spar level, a cantilever under all masses of its arm; a mass beyond its end brings its moment too. */
function sparInput(spar: Spar, masses: readonly MassAt[]): BeamInput {
  const { length, section, material, modulus, strength, materialTemperature, duration, handling } = spar
  const g = standardGravity
  return {
    length,
    support: "cantilever",
    section,
    material,
    modulus,
    strength,
    materialTemperature,
    duration,
    handling,
    forces: masses.filter((m) => m.radius > 0).map((m) => ({ force: m.mass * g, position: onTo(spar, m) })),
    moments: masses.filter((m) => m.radius > length).map((m) => ({ moment: -m.mass * g * (m.radius - length), position: length })),
    countsOwnWeight: true,
  }
}

/** Factor by which the spar's own frequency is kept above the steps; common practice, no source. */
const APART = 1.4

/** Checks of spars and pins. */
export const frameChecks: readonly RigCheck[] = [
  {
    id: "spar-strength",
    title: "strength of the spar",
    severity: "safety",
    reads: [...POSED, "motions[].spar"],
    worsens: { "motions[].spar.strength": "down", "motions[].spar.length": "up" },
    find: (rig) =>
      onSpars(rig, (spar, masses, path) =>
        asked(beam, sparInput(spar, masses), levelCondition, (out) =>
          out.safetyFactor === null
            ? lacking(`${path}.strength`, "Nothing says how strong the spar's material is: it cannot be told whether it breaks.")
            : {
                relation: "at-least",
                kind: "number",
                value: out.safetyFactor.low,
                limit: 2,
                sentence: `At worst the spar is stressed to ${formatQuantity("pressure", out.bendingStress as number)}: a safety factor of ${formatNumber(out.safetyFactor.low)} against yield or break.`,
                condition: levelCondition,
                source: commonPractice,
              },
        ),
      ),
  },
  {
    id: "spar-sag",
    title: "sag of the spar",
    severity: "wish",
    reads: [...POSED, "motions[].spar"],
    worsens: { "motions[].spar.sagLimit": "down", "motions[].spar.length": "up" },
    find: (rig) =>
      onSpars(rig, (spar, masses) =>
        asked(beam, { ...sparInput(spar, masses), handling: "still" }, "held level, at rest", ({ maxDeflection: { low, high } }) => ({
          relation: "at-most",
          kind: "length",
          value: Math.max(-low, high),
          limit: spar.sagLimit,
          sentence: `Held level the tip sags ${formatQuantity("length", Math.max(-low, high))}; ${formatQuantity("length", spar.sagLimit)} is acceptable.`,
          condition: "held level, at rest",
          source: { title: "the document", verified: "practice" },
        })),
      ),
  },
  {
    id: "spar-frequency",
    title: "spar in step with walking",
    severity: "function",
    reads: [...POSED, "motions[].spar"],
    worsens: { "motions[].spar.stepRate": "up", "motions[].spar.tipMass": "up", "motions[].spar.length": "up" },
    find: (rig) =>
      onSpars(rig, (spar, masses) => {
        const { length, section, material, modulus, strength, materialTemperature, duration, stepRate } = spar
        // masses along the spar swing with the cube of their place: brought to the tip they weigh that much less
        const tipMass = spar.tipMass + masses.reduce((sum, m) => sum + m.mass * (m.radius / length) ** 3, 0)
        return asked(
          naturalFrequency,
          { length, section, material, modulus, strength, materialTemperature, duration, tipMass, stepRate },
          "walking",
          (out) => ({
            // below the steps it would swing with every one of them, whatever the distance
            relation: "at-least",
            kind: "frequency",
            value: out.frequency.low,
            limit: APART * stepRate,
            sentence: `Left to itself the spar swings at ${formatQuantity("frequency", out.frequency.low)}, steps come at ${formatQuantity("frequency", stepRate)}: ${formatNumber(out.amplification)} times the shake of the shoulders reaches it.`,
            condition: "walking",
            source: { title: "Resonance of a damped oscillator; a factor of 1.4 apart is common practice", verified: "practice" },
          }),
        )
      }),
  },
  {
    id: "pin",
    title: "hinge pin",
    severity: "safety",
    reads: [...RIDDEN, "motions[].pin"],
    worsens: {},
    find: (rig) =>
      rig.motions.flatMap((motion, i): Found[] => {
        const { pin } = rig.rig.motions[i] as MotionSi
        if (!motion.parts.some((part) => part.mechanism.shows === "angle")) return []
        if (!pin)
          return [{ subject: motion.name, result: lacking(`motions[${i}].pin`, `Nothing says what the hinge pins of ${motion.name} are.`) }]
        const runs = rig.runs[i] as readonly Run[]
        if (runs.some((run) => run.stop))
          return [
            { subject: motion.name, result: blocked(`${motion.name} is stopped on its way: see there first.`, "passes", motion.name) },
          ]
        const { force, condition } = hingeForce(runs)
        return [
          {
            subject: motion.name,
            result: asked(pinJoint, { ...pin, force }, condition, (out) => ({
              relation: "at-least",
              kind: "number",
              value: out.safetyFactor,
              limit: 2,
              sentence: `With ${formatQuantity("force", force)} on it the joint has a safety factor of ${formatNumber(out.safetyFactor)}; ${out.governedBy} governs.`,
              condition,
              source: commonPractice,
            })),
          },
        ]
      }),
  },
]

/** The largest force on any pin of a motion, over its runs. */
function hingeForce(runs: readonly Run[]): { readonly force: number; readonly condition: string } {
  let [force, condition] = [0, ""]
  for (const run of runs) {
    const { motion } = run.ride
    for (let k = 0; k <= 40; k++) {
      const travel = (motion.span * k) / 40
      ridePoint(run.ride, travel)
      const q = coordinatesAt(motion, travel)
      motion.parts.forEach((part, i) => {
        const { lift } = run.ride.around
        const { x, y, z } = part.frame
        const down = ([x, y, z] as const).map((axis) => -(axis[0] * lift[0] + axis[1] * lift[1] + axis[2] * lift[2])) as [
          number,
          number,
          number,
        ]
        for (const { force: f } of part.mechanism.reactions(q[i] as number, part.effort, down)) {
          const size = Math.hypot(...f)
          if (size > force) [force, condition] = [size, `${run.way === 1 ? "out" : "back"}, ${run.condition}`]
        }
      })
    }
  }
  return { force, condition }
}

/** Checks of each part formed hot. */
export const formingChecks: readonly RigCheck[] = [
  {
    id: "bend",
    title: "bend",
    severity: "function",
    reads: ["formed[].name", "formed[].bend"],
    worsens: { "formed[].bend.radius": "down" },
    find: (rig) =>
      rig.rig.formed.map((part): Found => {
        const { radius, support } = part.bend
        return {
          subject: part.name,
          result: asked(tubeBend, part.bend, `bent ${support === "filled" ? "with sand in it" : "empty"}`, (out) => {
            const limit = support === "filled" ? out.minRadiusFilled : out.minRadiusEmpty
            return {
              relation: "at-least",
              kind: "length",
              value: radius,
              limit,
              sentence: `Bent to ${formatQuantity("length", radius)} ${support === "filled" ? "with sand in it" : "empty"}; below ${formatQuantity("length", limit)} it kinks. Jig: radius ${formatQuantity("length", out.jigRadius)}, heated length ${formatQuantity("length", out.heatedLength)}.`,
              condition: `bent ${support === "filled" ? "with sand in it" : "empty"}`,
              source: compared("tubeBend"),
            }
          }),
        }
      }),
  },
  {
    id: "heating",
    title: "heating",
    severity: "safety",
    reads: ["formed[].name", "formed[].heat"],
    worsens: {},
    find: (rig) =>
      rig.rig.formed.map((part): Found => {
        const { sourceTemperature, ambientTemperature, material, shape, thickness, outsideDiameter } = part.heat
        return {
          subject: part.name,
          result: asked(heatingTime, part.heat, "by the slowest spread of the material's data", (out) => {
            // the solver advises a source no hotter than this where it can name one
            const limit = Math.min(out.maxSourceTemperature ?? Number.POSITIVE_INFINITY, out.surfaceTemperatureLimit)
            const cooling = coolingTime.attempt({ material, shape, thickness, outsideDiameter })
            const working = cooling.ok
              ? ` Out of the heat it can be worked for ${formatQuantity("time", cooling.value.plannedWorkingTime)} and is held in the jig for ${formatQuantity("time", cooling.value.plannedHoldTime)}.`
              : ""
            return {
              relation: "at-most",
              kind: "temperature",
              value: sourceTemperature,
              limit,
              reference: ambientTemperature,
              permitted: !out.overheatsFirst && sourceTemperature <= limit,
              sentence: `At ${formatQuantity("temperature", sourceTemperature)} it is warm through after ${formatQuantity("time", out.timeRange.low)} to ${formatQuantity("time", out.timeRange.high)}${out.overheatsFirst ? ", but its surface passes its upper limit first" : ""}.${working}`,
              condition: "by the slowest spread of the material's data",
              source: compared("heatingTime"),
            }
          }),
        }
      }),
  },
]

const compared = (solver: string): Source => ({ title: `published values, compared in alula/thermoform ${solver}`, verified: "practice" })
