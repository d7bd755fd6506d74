import { referenceTests } from "../helpers/references.js"
import { roots, rootsWithout } from "./study-roots.js"

referenceTests("study", { ...roots }, { ...rootsWithout })
