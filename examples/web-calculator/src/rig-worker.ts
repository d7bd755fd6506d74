// Assesses a whole creature away from the page, so that typing never waits; its build sheet is drawn when it is asked for.
import { remedies, withChanges } from "alula/advice"
import { stageFigures } from "alula/figure"
import { buildSheet, report } from "alula/report"
import { perform } from "alula/rig"
import { InputError } from "alula/solver"

/** Assessments made to find what mends it: about as long as somebody waits. */
const TRIES = 60

addEventListener(
  "message",
  ({
    data,
  }: MessageEvent<{
    readonly id: number
    readonly rig: object
    readonly sheet?: boolean
    readonly play?: boolean
    readonly mend?: boolean
  }>) => {
    const { id, rig, sheet, play, mend } = data
    try {
      if (sheet) return postMessage({ id, sheet: buildSheet(rig as never).html })
      if (play) {
        const played = perform(rig as never)
        return postMessage({ id, played: { events: played.events, figures: stageFigures(played) } })
      }
      if (mend) {
        const found = remedies(rig as never, { tries: TRIES })
        const ways = found.remedies.map(({ text, changes }) => ({ text, rig: withChanges(rig, changes) }))
        return postMessage({
          id,
          mended: { ways, unmended: found.unmended.map(({ title, subject, text }) => `${title} (${subject}): ${text}`) },
        })
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
