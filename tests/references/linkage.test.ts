import { referenceTests } from "../helpers/references.js"
import { hingeChecks, hingeWithout } from "./linkage-hinge.js"

referenceTests("linkage", { ...hingeChecks }, hingeWithout)
