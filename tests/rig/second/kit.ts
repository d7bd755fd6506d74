// The rig's verb over our members and those of the tests, taking documents of any form: most of them are wrong on purpose.
import type { Move } from "../../../src/rig/run/move-types.js"
import { rigWith } from "../../../src/rig/whole/rig-with.js"
import type { InputError, NoSolutionError } from "../../../src/solver/index.js"
import { plainGear, shaftMotor, slideCrank, tornMotor } from "./own-members.js"

export const kit = rigWith({ drives: [shaftMotor, tornMotor], transmissions: [plainGear], mechanisms: [slideCrank] })

interface AnyMove {
  (rig: object): Move
  attempt(rig: object): { readonly ok: true; readonly value: Move } | { readonly ok: false; readonly error: InputError | NoSolutionError }
  read(rig: object): object
  jsonSchema(): object
}

export const move = kit.move as unknown as AnyMove
