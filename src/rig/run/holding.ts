// What a motion's drive has to hold while nothing drives it: friction may help, and is not counted on.
import type { Transmission } from "../transmissions/transmission.js"
import { effortAt, effortState, type MotionModel, placedParts, type Surroundings, staticHolds } from "./motion-model.js"

/** Effort that gets through a chain at rest: none where an element locks itself. */
function through(chain: readonly Transmission[], ratios: readonly number[], effort: number): number {
  let e = effort
  for (let i = chain.length - 1; i >= 0; i--) e = (chain[i] as Transmission).selfLocking ? 0 : e * (ratios[i] as number)
  return e
}

/** Travel's output and the slopes of a chain. */
function along(chain: readonly Transmission[], travel: number): { readonly out: number; readonly ratios: number[] } {
  let out = travel
  const ratios: number[] = []
  for (const element of chain) {
    ratios.push(element.ratio(out))
    out = element.out(out)
  }
  return { out, ratios }
}

/** Effort that one drive has to hold at rest at a travel, towards a growing travel; null where it cannot be posed. */
export function heldAt(model: MotionModel, travel: number, around: Surroundings): number | null {
  effortAt(model, travel, 1, around, scratch)
  if (scratch.trouble === "cannot-close" || scratch.trouble === "dead-point") return null
  const common = along(model.chain, travel)
  let sum = 0
  for (const part of placedParts(model, around)) {
    const own = along(part.own, common.out)
    sum += part.count * through(part.own, own.ratios, part.sign * staticHolds(part, part.start + part.sign * own.out, around))
  }
  return through(model.chain, common.ratios, sum) / model.drives
}

const scratch = effortState()

/** Places at which a motion is looked at for what it has to hold. */
export const HOLDS = 80

/** The largest effort that one drive has to hold at rest, and where; `trouble` where it cannot be posed. */
export function holdingEffort(
  model: MotionModel,
  around: Surroundings,
): { readonly effort: number; readonly travel: number; readonly trouble: boolean } {
  let [most, at, trouble] = [0, 0, false]
  for (let i = 0; i <= HOLDS; i++) {
    const travel = (model.span * i) / HOLDS
    const held = heldAt(model, travel, around)
    if (held === null) trouble = true
    else if (Math.abs(held) > most) [most, at] = [Math.abs(held), travel]
  }
  return { effort: most, travel: at, trouble }
}
