import { collar } from "./collar.js"
import { fan } from "./fan.js"
import { jaw } from "./jaw.js"
import { skirt } from "./skirt.js"
import type { Starter, StarterKind } from "./starter.js"
import { tail } from "./tail.js"
import { wings } from "./wings.js"

/**
 * Rigs to begin with, by kind of creature: invented, with typical parts, each deep enough to be judged as a whole.
 *
 * @example
 * ```ts
 * import { starters } from 'alula/starters'
 * starters.tail.rig.motions[0].name // => 'tail'
 * ```
 */
export const starters: Readonly<Record<StarterKind, Starter>> = { wings, tail, fan, jaw, collar, skirt }
