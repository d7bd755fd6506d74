// Checks of the programme: is each step over before the next one of the same motion begins?
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice } from "../../solver/index.js"
import { type MovingStep, movingSteps } from "../run/situation.js"
import type { RigCheck } from "./check.js"
import { onSlowMotions, wayWord, worstBy } from "./checks-motion.js"
import { RIDDEN } from "./paths.js"

/** Checks of the programme. */
export const programmeChecks: readonly RigCheck[] = [
  {
    id: "programme-slot",
    title: "time between its steps",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) =>
      onSlowMotions(rig, (motion, i, runs) => {
        const steps = movingSteps(rig.rig).filter((step) => step.index === i && Number.isFinite(step.slot))
        if (steps.length === 0) return null
        const longest = (way: 1 | -1) =>
          worstBy(
            runs.filter((run) => run.way === way),
            (run) => run.quick?.duration ?? 0,
          )
        const share = (step: MovingStep) => (longest(step.way).quick?.duration ?? 0) / step.slot
        const tightest = steps.reduce((a, b) => (share(b) > share(a) ? b : a))
        const run = longest(tightest.way)
        const value = run.quick?.duration ?? Number.NaN
        const shown = (time: number) => formatQuantity("time", time, "s")
        return {
          relation: "at-most",
          kind: "time",
          value,
          limit: tightest.slot,
          sentence: `${motion.name} takes ${shown(value)} for its whole way ${wayWord(run)}; the step at ${shown(tightest.begin)} leaves it ${shown(tightest.slot)} before it has to move again.`,
          condition: run.condition,
          source: commonPractice,
        }
      }),
  },
]
