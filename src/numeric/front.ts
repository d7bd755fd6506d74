import type { Judged } from "./asking.js"

/** Whether `a` is at least as good as `b` in everything and better in something; keeping the limits comes before any goal. */
export function dominates(a: Judged, b: Judged): boolean {
  if (a.violation !== b.violation) return a.violation < b.violation
  let better = false
  for (let k = 0; k < a.goals.length; k++) {
    const [x, y] = [a.goals[k] as number, b.goals[k] as number]
    if (x > y) return false
    if (x < y) better = true
  }
  return better
}

/** Those that none of the others is better than in everything; of equals the first. */
export function frontOf<T extends Judged>(all: readonly T[]): readonly T[] {
  const front: T[] = []
  const isAsGood = (a: Judged, b: Judged) => a.violation === b.violation && a.goals.every((v, k) => v <= (b.goals[k] as number))
  for (const one of all) {
    if (front.some((f) => dominates(f, one) || isAsGood(f, one))) continue
    for (let i = front.length - 1; i >= 0; i--) if (dominates(one, front[i] as T)) front.splice(i, 1)
    front.push(one)
  }
  return front
}

/** The best `size` of them: whole fronts first, then those that stand farthest from their neighbours (K. Deb et al., IEEE Trans. Evol. Comput. 6, 2002, 182–197). */
export function select<T extends Judged>(all: readonly T[], size: number): readonly T[] {
  const chosen: T[] = []
  let rest = [...all]
  while (rest.length > 0 && chosen.length < size) {
    const front = rest.filter((one) => !rest.some((other) => dominates(other, one)))
    rest = rest.filter((one) => !front.includes(one))
    const room = size - chosen.length
    if (front.length <= room) chosen.push(...front)
    else {
      // the most crowded one goes, again and again
      const kept = [...front]
      while (kept.length > room) {
        const gaps = crowding(kept)
        kept.splice(gaps.indexOf(Math.min(...gaps)), 1)
      }
      chosen.push(...kept)
    }
  }
  return chosen
}

/** How far each stands from its neighbours, over all goals; the ends are infinitely far. */
function crowding(front: readonly Judged[]): number[] {
  const gaps = front.map(() => 0)
  const goals = front[0]?.goals.length ?? 0
  for (let k = 0; k < goals; k++) {
    const value = (i: number) => front[i]?.goals[k] as number
    const order = front.map((_, i) => i).sort((i, j) => value(i) - value(j))
    const span = value(order[order.length - 1] as number) - value(order[0] as number)
    order.forEach((i, place) => {
      const isEnd = place === 0 || place === order.length - 1
      const gap = isEnd ? Number.POSITIVE_INFINITY : value(order[place + 1] as number) - value(order[place - 1] as number)
      gaps[i] = (gaps[i] as number) + (isEnd ? gap : span > 0 ? gap / span : 0)
    })
  }
  return gaps
}
