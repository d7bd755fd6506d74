import { referenceTests } from "../helpers/references.js"
import { roots, rootsWithout } from "./study-roots.js"
import { samplingChecks, samplingWithout } from "./study-sampling.js"
import { searchChecks, searchWithout } from "./study-search.js"
import { uncertaintyChecks, uncertaintyWithout } from "./study-uncertainty.js"

referenceTests(
  "study",
  { ...roots, ...samplingChecks, ...searchChecks, ...uncertaintyChecks },
  { ...rootsWithout, ...samplingWithout, ...searchWithout, ...uncertaintyWithout },
)
