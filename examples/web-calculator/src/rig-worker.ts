// Assesses a whole creature away from the page, so that typing never waits; its build sheet is drawn when it is asked for.
import { stageFigures } from "alula/figure"
import { buildSheet, report } from "alula/report"
import { perform } from "alula/rig"
import { InputError } from "alula/solver"

addEventListener(
  "message",
  ({ data }: MessageEvent<{ readonly id: number; readonly rig: object; readonly sheet?: boolean; readonly play?: boolean }>) => {
    const { id, rig, sheet, play } = data
    try {
      if (sheet) return postMessage({ id, sheet: buildSheet(rig as never).html })
      if (play) {
        const played = perform(rig as never)
        return postMessage({ id, played: { events: played.events, figures: stageFigures(played) } })
      }
      const { content, html, markdown } = report(rig as never)
      postMessage({ id, content, html, markdown })
    } catch (error) {
      postMessage(
        error instanceof InputError ? { id, issues: error.issues } : { id, failed: error instanceof Error ? error.message : String(error) },
      )
    }
  },
)
