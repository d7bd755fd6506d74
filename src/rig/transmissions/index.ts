import { drum } from "./drum.js"

/** Every element of a transmission the rig knows; to add one, write its file and a line here. */
export const transmissions = { drum } as const
