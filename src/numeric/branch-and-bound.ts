/** A minimisation for {@link branchAndBound}. */
export interface BoundedSearch<Box, Found> {
  /** Boxes that together hold every allowed point. */
  readonly boxes: readonly Box[]
  /** A value that no allowed point of the box goes below, or null where the box holds none. */
  bound(box: Box): number | null
  /** An allowed point of the box or near it, with its value, if one is at hand that beats `best`. */
  sample(box: Box, best: number): { readonly found: Found; readonly value: number } | null
  /** Parts that together cover the box. */
  split(box: Box): readonly Box[]
  /** Whether the box is too small to split in floating point: it is set aside with its bound. */
  isSmall?(box: Box): boolean
  /** Relative gap between best value and bound at which to stop. */
  readonly gap: number
  /** Most boxes to look at. */
  readonly budget: number
  /** Value that is good enough: the search ends once a point is that good, or proves that none is. */
  readonly target?: number
  /** An allowed point known beforehand. */
  readonly start?: { readonly found: Found; readonly value: number } | null
}

/** What {@link branchAndBound} found and what it proves. */
export interface Certified<Found> {
  readonly best: { readonly found: Found; readonly value: number } | null
  /** No allowed point has a value below this; +∞ where no box was left that could hold one. */
  readonly bound: number
  /** Search boxes tried. */
  readonly explored: number
  /** Whether the gap asked for was reached within the budget. */
  readonly isClosed: boolean
}

interface Entry<Box> {
  readonly box: Box
  readonly bound: number
}

function push<Box>(heap: Entry<Box>[], entry: Entry<Box>): void {
  let at = heap.length
  heap.push(entry)
  while (at > 0) {
    const up = (at - 1) >> 1
    const parent = heap[up] as Entry<Box>
    if (parent.bound <= entry.bound) break
    heap[at] = parent
    at = up
  }
  heap[at] = entry
}

function pop<Box>(heap: Entry<Box>[]): Entry<Box> {
  const top = heap[0] as Entry<Box>
  const last = heap.pop() as Entry<Box>
  const size = heap.length
  if (size === 0) return top
  let at = 0
  for (;;) {
    let down = 2 * at + 1
    if (down >= size) break
    if (down + 1 < size && (heap[down + 1] as Entry<Box>).bound < (heap[down] as Entry<Box>).bound) down++
    const child = heap[down] as Entry<Box>
    if (child.bound >= last.bound) break
    heap[at] = child
    at = down
  }
  heap[at] = last
  return top
}

/** Just above a value, so that a bound equal to it is still looked at. */
const nextUp = (value: number) => value + Math.abs(value) * Number.EPSILON + Number.MIN_VALUE

/**
 * Global minimum by branch and bound, best bound first: the answer comes with a bound that proves how
 * far from the minimum it can be (A. H. Land, A. G. Doig, Econometrica 28, 1960, 497–520).
 *
 * The proof is only as good as `bound`: it must never exceed the value of an allowed point in its box.
 */
export function branchAndBound<Box, Found>(search: BoundedSearch<Box, Found>): Certified<Found> {
  const heap: Entry<Box>[] = []
  let best = search.start ?? null
  // minimum bound among the boxes set aside: those that cannot beat the best by more than the gap, and the smallest
  let aside = Number.POSITIVE_INFINITY
  let explored = 0
  const { target } = search
  const enough = () => {
    const close = best === null ? Number.POSITIVE_INFINITY : best.value - search.gap * Math.abs(best.value)
    if (target === undefined) return close
    // with the target reached nothing is left to do; before that, only what may reach it is worth a look
    return best !== null && best.value <= target ? Number.NEGATIVE_INFINITY : Math.min(close, nextUp(target))
  }
  const admit = (box: Box, inherited: number) => {
    explored++
    const own = search.bound(box)
    if (own === null) return
    // a part allows nothing that its whole did not
    const bound = Math.max(own, inherited)
    const sample = search.sample(box, best === null ? Number.POSITIVE_INFINITY : best.value)
    if (sample !== null && (best === null || sample.value < best.value)) best = sample
    if (bound >= enough() || search.isSmall?.(box)) aside = Math.min(aside, bound)
    else push(heap, { box, bound })
  }
  for (const box of search.boxes) admit(box, Number.NEGATIVE_INFINITY)
  while (heap.length > 0 && explored < search.budget) {
    if ((heap[0] as Entry<Box>).bound >= enough()) break
    const { box, bound } = pop(heap)
    for (const part of search.split(box)) admit(part, bound)
  }
  const found = best as { readonly found: Found; readonly value: number } | null
  const bound = Math.min(heap[0]?.bound ?? Number.POSITIVE_INFINITY, aside, found?.value ?? Number.POSITIVE_INFINITY)
  return { best: found, bound, explored, isClosed: bound >= enough() }
}
