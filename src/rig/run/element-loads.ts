// What each element of a transmission carries at its output, for its strength.
import type { Transmission } from "../transmissions/transmission.js"
import { atInput, type MotionModel, type Way } from "./motion-model.js"

/** Slopes of a chain at a travel of its input, and its output. */
function slopes(chain: readonly Transmission[], travel: number): { readonly out: number; readonly ratios: readonly number[] } {
  let out = travel
  const ratios = chain.map((element) => {
    const ratio = element.ratio(out)
    out = element.out(out)
    return ratio
  })
  return { out, ratios }
}

/** Walks from the output of a chain to its input, telling what each element carries. */
function inward(
  chain: readonly Transmission[],
  ratios: readonly number[],
  effort: number,
  carries: (index: number, effort: number) => void,
) {
  let e = effort
  for (let i = chain.length - 1; i >= 0; i--) {
    carries(i, e)
    e = atInput(chain[i] as Transmission, Math.abs(ratios[i] as number), e)
  }
  return e
}

/**
 * Tells the effort at the output of each element at a travel, on a way, right after `effortAt` was asked there: of the elements
 * that all mechanisms share (`part` −1), and of each mechanism's own.
 */
export function elementLoads(
  { chain, parts }: MotionModel,
  travel: number,
  way: Way,
  carries: (part: number, index: number, effort: number) => void,
): void {
  const common = slopes(chain, travel)
  const turned = (ratios: readonly number[]) => ratios.reduce((sign, r) => sign * Math.sign(r), 1)
  const dir = way * turned(common.ratios)
  let sum = 0
  parts.forEach((part, p) => {
    const own = slopes(part.own, common.out)
    const against = dir * turned(own.ratios) * part.sign * part.effort
    sum += part.count * inward(part.own, own.ratios, against, (i, e) => carries(p, i, e))
  })
  inward(chain, common.ratios, sum, (i, e) => carries(-1, i, e))
}
