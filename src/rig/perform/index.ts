// The verb that plays a rig through its programme, in time.
import { type AnyFields, type Fields, type Issue, issue, type SiOf, type Solver, solver } from "../../solver/index.js"
import { drives } from "../drives/index.js"
import { mechanisms } from "../mechanisms/index.js"
import { FOOTFALL, MOTION, MOTORS } from "../sources.js"
import { transmissions } from "../transmissions/index.js"
import type { Typed } from "../whole/document.js"
import { rigFaults } from "../whole/faults.js"
import { type Members, rigFields } from "../whole/fields.js"
import { performCautions } from "./cautions.js"
import { examplePerformance } from "./example.js"
import { performOutput, stageField } from "./fields.js"
import { solvePerform } from "./solve.js"
import type { Perform, PerformCaution, PerformInput, PerformRefusal, PerformSi } from "./types.js"

/** Motions mounted on motions are not played: each would feel the other as it moves, and here every motion stands on the body. */
const mountedFaults = ({ motions }: PerformSi): Issue[] =>
  motions.flatMap(({ on }, i) =>
    on === null
      ? []
      : [issue("inconsistent", ["motions", i, "on"], `"${on}"`, "no motion: only motions on the body are played, ask move or assessRig")],
  )

/** The verb over a set of members. */
export function makePerform(members: Members): Solver<PerformInput<Typed, Typed, Typed>, Perform, PerformRefusal, PerformCaution> {
  type Input = PerformInput<Typed, Typed, Typed>
  const si = (rig: SiOf<Input>) => rig as unknown as PerformSi
  return solver<Input, Perform, PerformRefusal, PerformCaution>(
    "perform",
    "What happens on stage, second by second, with everything moving at once",
    (rig) => solvePerform(members, si(rig)),
    () => ({
      // each member's fields were checked against its interface where it is written
      input: { ...rigFields(members), stage: stageField } as AnyFields as unknown as Fields<Input>,
      output: performOutput,
      example: examplePerformance,
      formulae: [
        { solved: "t_all", meaning: "time followed: until everything rests, or as long as asked" },
        {
          symbol: "h",
          kind: "time",
          meaning: "time from each place of the traces to the next",
          given: (_, { times }) => times.map((time, i) => time - (times[i - 1] ?? 0)),
        },
        { left: "sum(h)", right: "t_all", meaning: "the traces run from the start to the end" },
        { symbol: "E_s", kind: "energy", meaning: "energy from the sources", given: (_, { energy }) => energy.source },
        {
          symbol: "E_p",
          kind: "energy",
          meaning: "where it went: from the sources' inside to what is still in motion",
          given: (_, { energy: { source: _s, residual: _r, ...parts } }) => Object.values(parts),
        },
        { left: "sum(E_p)", right: "E_s", meaning: "all of it is found again", within: 1e-6 },
      ],
      sources: [MOTORS, MOTION, FOOTFALL],
      check: (rig) => [...rigFaults(members, si(rig)), ...mountedFaults(si(rig))],
      cautions: (rig, out) => performCautions(members, si(rig), out),
    }),
  )
}

/**
 * What happens on stage, second by second, with everything moving at once.
 *
 * Each motion is one mass on its drive's coordinate x: I(x)·a + ½·I′(x)·v² + what weights, springs, wind and steps ask +
 * friction = what its motor gives, k_V·i, with i = (d·V − k_V·v)/R and V from the power tree while everything draws at once
 * (d: share of the voltage that its driver puts on, negative the other way round; inductance left out). Efforts go through the
 * elements of the transmission as they do in `move`, those of inertia too. Friction sticks: a motion stands still until the
 * effort passes it. Switches at its place cut an on-off or ramped drive, which then runs on until friction or its stop holds
 * it; a servo gives all it has until it is within 3° of its place. Cells empty as they are drawn from, sources and converters
 * past their limit do what the document says (left out: switch off and try again), a controller under its voltage starts anew
 * and the motions on its source stop meanwhile. Without a programme every motion goes out at once, and all go back when they are out.
 *
 * Valid with stiff members and lines that stay taut (a caution says when one goes slack), windings near their datasheet's
 * temperature and cells whose voltage answers at once; play in gears is left out. A drive without an inertia is followed with
 * what brings a motor to speed in a millisecond.
 *
 * **Inputs**
 * - `wearer`: wearer [group; optional]
 * - `parts`: parts carried, moving masses left out [list of 0 to 300; default none]
 * - `formed`: parts formed hot [list of 0 to 60; default none]
 * - `straps`: straps [group; optional]
 * - `schedule`: the day's wearing [group; optional]
 * - `heat`: heat [group; optional]
 * - `wind`: wind on one arm [group; optional]
 * - `stance`: stance [group; optional]
 * - `venue`: where it has to go [group; optional]
 * - `reach`: switch [group; optional]
 * - `contact`: if an arm strikes somebody [group; optional]
 * - `budget`: what may be spent [group; optional]
 * - `version`: document version [n_doc; whole 2 to 2]
 * - `name`: name of the rig [text of 1 to 100 characters]
 * - `note`: note [text of 0 to 5000 characters; default empty]
 * - `motions`: motions [list of 1 to 40]
 * - `power`: power [group; optional]
 * - `day`: the day out [group; optional, with a default of its own]
 * - `programme`: what moves when [list of 0 to 200; default none]
 * - `posture`: how the wearer leans [group; optional, with a default of its own]
 * - `stage`: how it is played [group; optional, with a default of its own]
 *
 * **Results**
 *
 * `duration`: time followed [t_all; s]; `times`: times [list, each s]; `motions`: motions [list]; `buses`: buses
 * [list]; `sources`: sources [list]; `events`: what happens [list]; `steps`: steps of the programme [list]; `energy`:
 * energy [group]; `evaluations`: times that the state's slope was asked for [number].
 *
 * **Symbols of the working**
 *
 * h: time from each place of the traces to the next [s]; E_s: energy from the sources [J]; E_p: where it went: from
 * the sources' inside to what is still in motion [J].
 *
 * **Sources**
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th edition, 2019, chapter 3 (brushed motor: V = E + I·R, E ∝
 *   speed, torque ∝ current) (not verified against the document)
 * - Limit case of the equation of motion
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3
 *   (first harmonic) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the document
 * @throws NoSolutionError where a mechanism cannot stand at its start, or what happens takes more steps than are followed
 * @example
 * ```ts
 * import { perform } from 'alula/rig'
 * const show = perform(perform.example)
 * show.events.map((event) => event.type).includes('strikes') // => true
 * show.steps.length // => 2
 * Math.abs(show.energy.residual) < 1e-6 // => true
 * ```
 */
export const perform: Solver<PerformInput, Perform, PerformRefusal, PerformCaution> = /* @__PURE__ */ makePerform({
  drives,
  transmissions,
  mechanisms,
} as unknown as Members) as unknown as Solver<PerformInput, Perform, PerformRefusal, PerformCaution>
