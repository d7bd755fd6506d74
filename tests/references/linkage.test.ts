import { referenceTests } from "../helpers/references.js"
import { camChecks, camWithout } from "./linkage-cams.js"
import { furtherChecks, furtherWithout } from "./linkage-further.js"
import { hingeChecks, hingeWithout } from "./linkage-hinge.js"
import { latchChecks } from "./linkage-latches.js"
import { mechanismChecks, mechanismWithout } from "./linkage-mechanisms.js"
import { spaceChecks } from "./linkage-space.js"
import { synthesisChecks } from "./linkage-synthesis.js"

referenceTests(
  "linkage",
  { ...hingeChecks, ...mechanismChecks, ...furtherChecks, ...synthesisChecks, ...spaceChecks, ...camChecks, ...latchChecks },
  { ...hingeWithout, ...mechanismWithout, ...furtherWithout, ...camWithout },
)
