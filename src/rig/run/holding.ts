// What a motion's drive has to hold while nothing drives it: friction may help, and is not counted on.
import type { Transmission } from "../transmissions/transmission.js"
import { effortAt, effortState, type MotionModel, type Surroundings, staticHolds } from "./motion-model.js"

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

/** The largest effort that one drive has to hold at rest, and where; `trouble` where it cannot be posed. */
export function holdingEffort(
  model: MotionModel,
  around: Surroundings,
): { readonly effort: number; readonly travel: number; readonly trouble: boolean } {
  const state = effortState()
  let [most, at, trouble] = [0, 0, false]
  const looks = 80
  for (let i = 0; i <= looks; i++) {
    const travel = (model.span * i) / looks
    effortAt(model, travel, 1, around, state)
    if (state.trouble === "cannot-close" || state.trouble === "dead-point") {
      trouble = true
      continue
    }
    const common = along(model.chain, travel)
    let sum = 0
    for (const part of model.parts) {
      const own = along(part.own, common.out)
      sum += part.count * through(part.own, own.ratios, part.sign * staticHolds(part, part.start + part.sign * own.out, around))
    }
    const effort = Math.abs(through(model.chain, common.ratios, sum)) / model.drives
    if (effort > most) [most, at] = [effort, travel]
  }
  return { effort: most, travel: at, trouble }
}
