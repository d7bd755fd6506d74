import { hinge } from "./hinge.js"
import { turnedArm } from "./turned-arm.js"

/** Every mechanism the rig knows; to add one, write its file and a line here. */
export const mechanisms = { hinge, "turned-arm": turnedArm } as const
