// What goes in and what comes out.
import type { SiOf } from "../../solver/index.js"
import type { LedRunInput } from "./line.js"

export type Si = SiOf<LedRunInput>
