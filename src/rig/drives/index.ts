import { linearActuatorDrive } from "./linear-actuator.js"

/** Every drive the rig knows; to add one, write its file and a line here. */
export const drives = { "linear-actuator": linearActuatorDrive } as const
