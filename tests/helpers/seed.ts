import fc from "fast-check"

// The same inputs every time, so that a red build means a changed line; WIDE=1 draws new ones at each run.
// A failure is told as drawn: shrinking one of a whole rig takes the better part of an hour.
fc.configureGlobal({ endOnFailure: true, ...(process.env.WIDE ? {} : { seed: 20261125 }) })
