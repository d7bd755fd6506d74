import { gearmotorDrive } from "./gearmotor.js"
import { hobbyServoDrive } from "./hobby-servo.js"
import { linearActuatorDrive } from "./linear-actuator.js"

/** Every drive the rig knows; to add one, write its file and a line here. */
export const drives = { "linear-actuator": linearActuatorDrive, gearmotor: gearmotorDrive, "hobby-servo": hobbyServoDrive } as const
