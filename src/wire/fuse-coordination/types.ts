// What goes in and what comes out.
import type { SiOf } from "../../solver/index.js"
import type { FuseCoordinationInput } from "./fields.js"

export type Si = SiOf<FuseCoordinationInput>
