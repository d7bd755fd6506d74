import fc from "fast-check"

// The same inputs every time, so that a red build means a changed line; WIDE=1 draws new ones at each run.
if (!process.env.WIDE) fc.configureGlobal({ seed: 20261125 })
