// The members that a document of a search may name: our own.
import { drives } from "../../rig/drives/index.js"
import { mechanisms } from "../../rig/mechanisms/index.js"
import { transmissions } from "../../rig/transmissions/index.js"
import type { Members } from "../../rig/whole/fields.js"

export const members: Members = { drives, transmissions, mechanisms } as unknown as Members
