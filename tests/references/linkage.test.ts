import { referenceTests } from "../helpers/references.js"
import { furtherChecks, furtherWithout } from "./linkage-further.js"
import { hingeChecks, hingeWithout } from "./linkage-hinge.js"
import { mechanismChecks, mechanismWithout } from "./linkage-mechanisms.js"
import { synthesisChecks } from "./linkage-synthesis.js"

referenceTests(
  "linkage",
  { ...hingeChecks, ...mechanismChecks, ...furtherChecks, ...synthesisChecks },
  { ...hingeWithout, ...mechanismWithout, ...furtherWithout },
)
