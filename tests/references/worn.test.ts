import { referenceTests } from "../helpers/references.js"
import { aroundChecks, aroundWithout } from "./worn-around.js"
import { loadChecks, loadWithout } from "./worn-load.js"

referenceTests("worn", { ...loadChecks, ...aroundChecks }, { ...loadWithout, ...aroundWithout })
