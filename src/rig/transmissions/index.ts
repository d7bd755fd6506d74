import { antagonist } from "./antagonist.js"
import { belt } from "./belt.js"
import { cable } from "./cable.js"
import { chain } from "./chain.js"
import { crank } from "./crank.js"
import { drum } from "./drum.js"
import { gear } from "./gear.js"
import { lever } from "./lever.js"
import { screw } from "./screw.js"
import { worm } from "./worm.js"

/** Every element of a transmission the rig knows; to add one, write its file and a line here. */
export const transmissions = { gear, worm, screw, belt, chain, drum, cable, antagonist, crank, lever } as const
