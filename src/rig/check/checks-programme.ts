// Checks of the programme: is each step over before the next one of the same motion begins?
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice } from "../../solver/index.js"
import { movingSteps } from "../run/situation.js"
import { blocked, type Found, type RigCheck } from "./check.js"
import type { Run } from "./conditions.js"

/** Checks of the programme. */
export const programmeChecks: readonly RigCheck[] = [
  {
    id: "programme-slot",
    title: "time between its steps",
    severity: "function",
    find: (rig) =>
      rig.motions.flatMap((motion, i): Found[] => {
        const steps = movingSteps(rig.rig).filter((step) => step.index === i && Number.isFinite(step.slot))
        if (steps.length === 0) return []
        const runs = rig.runs[i] as readonly Run[]
        if (runs.some((run) => run.stop))
          return [
            { subject: motion.name, result: blocked(`${motion.name} is stopped on its way: see there first.`, "passes", motion.name) },
          ]
        const takes = (way: 1 | -1) =>
          runs.filter((run) => run.way === way).reduce((a, b) => ((b.quick?.duration ?? 0) > (a.quick?.duration ?? 0) ? b : a))
        const tightest = steps.reduce((a, b) =>
          (takes(b.way).quick?.duration ?? 0) / b.slot > (takes(a.way).quick?.duration ?? 0) / a.slot ? b : a,
        )
        const run = takes(tightest.way)
        const value = run.quick?.duration ?? Number.NaN
        const shown = (time: number) => formatQuantity("time", time, "s")
        return [
          {
            subject: motion.name,
            result: {
              relation: "at-most",
              kind: "time",
              value,
              limit: tightest.slot,
              sentence: `${motion.name} takes ${shown(value)} for its whole way ${run.way === 1 ? "out" : "back"}; the step at ${shown(tightest.begin)} leaves it ${shown(tightest.slot)} before it has to move again.`,
              condition: run.condition,
              source: commonPractice,
            },
          },
        ]
      }),
  },
]
