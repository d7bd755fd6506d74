// Faults put into builds of the independent model, and how their diagnosis is judged.
import { weigh } from "../../src/advice/diagnose/answer.js"
import { asPlanned } from "../../src/advice/diagnose/built.js"
import { faultsOf } from "../../src/advice/diagnose/faults.js"
import { type ReadingSi, taken } from "../../src/advice/diagnose/predict.js"
import { scaled, strayings } from "../../src/advice/diagnose/straying.js"
import { noFault, singleFaults, taskOf } from "../../src/advice/diagnose/weigh.js"
import { diagnosis, type RigReading } from "../../src/advice/index.js"
import type { RigSi } from "../../src/rig/whole/faults.js"
import { type Creature, creatures, type Plant } from "./creatures.js"
import { random, readings, strayed } from "./synthetic.js"

/** One fault in a build. */
export interface Planted {
  /** `row@place`; another row that does the very same to every meter counts too. */
  readonly names: readonly string[]
  /** The build with it, by a number between 0 and 1 of how bad it is. */
  readonly plant: (p: Plant, u: number) => Plant
}

/** Faults of the table that a creature can have. */
export function listed({ rig, motion, source, bus, kind }: Creature): readonly Planted[] {
  const part = `${rig.motions[0]!.mechanisms[0]!.name} of ${motion}`
  const place = rig.motions[0]!.mechanisms[0]!.name === motion ? motion : part
  const found: Planted[] = [
    { names: [`contact@${bus}`, `thin-wire@${bus}`], plant: (p, u) => ({ ...p, runOhms: p.runOhms + 0.4 + 0.8 * u }) },
    { names: [`thin-wire@${bus}`, `contact@${bus}`], plant: (p, u) => ({ ...p, runOhms: p.runOhms * (6 + 6 * u) }) },
    {
      names: [`gritty-gearbox@${motion}`],
      plant: (p, u) => ({ ...p, frictionAmps: p.frictionAmps + ((0.1 + 0.15 * u) * (kind === "servo" ? 6 : 12)) / p.winding }),
    },
    { names: [`wrong-gearing@${motion}`], plant: (p, u) => ({ ...p, emf: p.emf * (1.35 + 0.5 * u), push: p.push * (1.35 + 0.5 * u) }) },
    {
      names: [`wrong-winding@${motion}`],
      plant: (p) => ({ ...p, emf: p.emf * 1.5, push: p.push * 1.5, winding: p.winding * 2.25, frictionAmps: p.frictionAmps / 1.5 }),
    },
    { names: [`drive-lead@${motion}`], plant: (p, u) => ({ ...p, winding: p.winding * (2 + 0.8 * u) }) },
    { names: [`extra-mass@${place}`], plant: (p, u) => ({ ...p, massFactor: p.massFactor * (1.25 + 0.5 * u) }) },
    { names: [`stiff-hinge@${place}`], plant: (p, u) => ({ ...p, tipFriction: p.tipFriction + 1 + 1.5 * u }) },
  ]
  if (rig.power!.sources[0]!.type === "cells") {
    found.push(
      { names: [`tired-cells@${source}`], plant: (p, u) => ({ ...p, cellOhms: p.cellOhms * (3 + 4 * u) }) },
      { names: [`low-charge@${source}`], plant: (p, u) => ({ ...p, cellVolts: p.cellVolts - 0.25 - 0.2 * u }) },
      { names: [`cold-cells@${source}`], plant: (p, u) => ({ ...p, celsius: p.celsius - 18 - 12 * u }) },
    )
    if (kind === "rod") found.push({ names: [`cell-missing@${source}`], plant: (p) => ({ ...p, series: p.series - 1 }) })
  } else found.push({ names: [`voltage-low@${source}`], plant: (p, u) => ({ ...p, bankVolts: p.bankVolts * (0.9 - 0.1 * u) }) })
  if (kind !== "servo")
    found.push({ names: [`wrong-pivot@${part}`], plant: (p, u) => ({ ...p, lever: p.lever * (u < 0.5 ? 0.88 : 1.12) }) })
  if (kind === "winch")
    found.push(
      { names: [`slips@drum of ${motion}`], plant: (p, u) => ({ ...p, drumRadius: p.drumRadius * (0.8 - 0.15 * u) }) },
      { names: [`stretched@${motion}`], plant: (p, u) => ({ ...p, slack: 0.15 + 0.15 * u }) },
      { names: [`element-friction@drum of ${motion}`], plant: (p, u) => ({ ...p, drumShare: 0.6 - 0.15 * u }) },
    )
  if (kind !== "rod")
    found.push(
      { names: [`converter-setting@${bus}`], plant: (p, u) => ({ ...p, setVolts: p.setVolts * (0.85 - 0.1 * u) }) },
      { names: [`converter-loss@${bus}`], plant: (p, u) => ({ ...p, efficiency: p.efficiency * (0.75 - 0.1 * u) }) },
    )
  return found
}

/** Faults that the table has not. */
export const unlisted: Readonly<Record<string, (p: Plant, u: number) => Plant>> = {
  "rubs more and more towards the end": (p, u) => ({ ...p, growingFriction: 4 + 8 * u }),
  "an elastic cloth pulls it down": (p, u) => ({ ...p, cloth: 1 + u }),
  "a bent arm": (p, u) => ({ ...p, bend: (0.5 + 0.4 * u) * (u < 0.5 ? -1 : 1) }),
  "a wet plug across the drive": (p, u) => ({ ...p, leakOhms: (12 / (0.4 + 0.5 * u)) * (p.setVolts === 6 ? 0.5 : 1) }),
  "shorted turns in the winding": (p, u) => ({
    ...p,
    winding: p.winding * (0.5 - 0.1 * u),
    emf: p.emf * (0.75 - 0.1 * u),
    push: p.push * (0.65 - 0.1 * u),
    frictionAmps: p.frictionAmps + 0.2 + 0.2 * u,
  }),
  "a diode in the line": (p, u) => ({ ...p, diodeVolts: 0.5 + 0.4 * u }),
}

/** Faults that keep a build from coming through. */
export function stalling({ rig, motion }: Creature): readonly Planted[] {
  const part = `${rig.motions[0]!.mechanisms[0]!.name} of ${motion}`
  const place = rig.motions[0]!.mechanisms[0]!.name === motion ? motion : part
  return [
    {
      names: [`stiff-hinge@${place}`],
      plant: (p, u) => ({
        ...p,
        tipFriction: ((0.9 + 0.8 * u) * (p.push * 11 * p.drives)) / p.winding / p.armLength / (p.drumRadius ? 7 : p.lever ? 15 : 2.2),
      }),
    },
    { names: [`extra-mass@${place}`], plant: (p, u) => ({ ...p, massFactor: 5 + 2 * u }) },
    {
      names: [`gritty-gearbox@${motion}`],
      plant: (p, u) => ({ ...p, frictionAmps: ((0.85 + 0.15 * u) * (p.setVolts || 11.5)) / p.winding }),
    },
  ]
}

/** What a maker reads of a build of good parts with something done to it; null where it only stops on its way back. */
export const readOf = (creature: Creature, plant: (p: Plant) => Plant, even: () => number): RigReading[] | null =>
  readings(creature, plant(strayed(creature.plant, even)), even)

/** The readings' own task, for what an answer does not tell. */
export function taskFor(creature: Creature, list: readonly RigReading[]) {
  const si = diagnosis.read({ rig: creature.rig, readings: list })
  const planned = asPlanned(si.rig as unknown as RigSi)
  return taskOf(planned, taken(si.readings as readonly ReadingSi[], planned), scaled(strayings(planned), 1), faultsOf(planned))
}

/** How far exact readings of an exact build are from the plan, and from the nearest single fault, in standard deviations. */
export function farness(creature: Creature, plant: (p: Plant) => Plant, fromSingles: boolean): number {
  const exact = readings(creature, plant(creature.plant), () => 0, 0)
  if (!exact) return 0
  const task = taskFor(creature, exact)
  const misfits = fromSingles ? singleFaults(task).map((one) => one.misfit) : [noFault(task).misfit]
  return Math.sqrt(Math.min(...misfits))
}

export const outcomeOf = (creature: Creature, list: readonly RigReading[]) => weigh(taskFor(creature, list))
export { creatures, random }
