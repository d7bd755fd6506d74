import { type Caution, caution, commonPractice, type Source } from "../solver/index.js"

/** The caution that every result someone could read as a safety clearance carries. */
export function notClearance(covers: string, leavesOut: string, source: Source = commonPractice): Caution<"not-a-clearance"> {
  return caution(
    "not-a-clearance",
    "warning",
    "An estimate of {covers}, not a clearance to go ahead: it does not cover {leavesOut}. Local codes, the event's safety officer and qualified people decide. Fit a quick release that either hand works; pain, numbness, dizziness or breathlessness means take it off at once, and so does any doubt.",
    source,
    { covers, leavesOut },
  )
}
