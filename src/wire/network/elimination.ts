// Nodes of a network eliminated one after another, the fewest neighbours first: a star becomes a mesh.

/*
 * Conductances are kept as ties between nodes and ties to the fixed nodes, never as a diagonal: a node's own sum is added up
 * when its turn comes. So nothing is subtracted but what a load of constant power takes away, and milliohms and megohms may
 * meet. In a tree every node has one neighbour left when its turn comes: one sweep inwards and one outwards. Loops alone
 * bring further ties.
 */

/** In which order nodes go, and which ties there are when they do. */
export interface Elimination {
  /** Rows; a fixed node has none. */
  readonly rows: number
  /** Turn of each node, −1 for a fixed one. */
  readonly turn: Int32Array
  /** Ties of turn k to later turns: slots start[k] … start[k + 1] − 1, and the turn at their other end, ascending. */
  readonly start: Int32Array
  readonly other: Int32Array
  /** Own sum of each turn, its tie to fixed nodes, and the ties, after elimination. */
  readonly sum: Float64Array
  readonly ground: Float64Array
  readonly tie: Float64Array
  /** Scratch of the elimination. */
  readonly work: Float64Array
  readonly head: Int32Array
  readonly next: Int32Array
  readonly at: Int32Array
}

/** The order for a network whose nodes are tied in pairs, one after another; a node with nothing `up` of it is fixed. */
export function eliminationOf(nodes: number, up: Int32Array, pairs: Int32Array): Elimination {
  const near: number[][] = []
  for (let a = 0; a < nodes; a++) near.push([])
  const mark = new Int32Array(nodes).fill(-1)
  for (let n = 0; n < pairs.length; n += 2) {
    const a = pairs[n] as number
    const b = pairs[n + 1] as number
    if (a === b || up[a] === -1 || up[b] === -1) continue
    ;(near[a] as number[]).push(b)
    ;(near[b] as number[]).push(a)
  }
  // parallel ties are one
  near.forEach((list, a) => {
    let kept = 0
    for (const b of list) {
      if (mark[b] === a) continue
      mark[b] = a
      list[kept++] = b
    }
    list.length = kept
  })
  // nodes by number of neighbours, as doubly linked lists
  const [first, after, before] = [new Int32Array(nodes + 1).fill(-1), new Int32Array(nodes).fill(-1), new Int32Array(nodes).fill(-1)]
  const put = (node: number, degree: number) => {
    const then = first[degree] as number
    after[node] = then
    before[node] = -1
    if (then >= 0) before[then] = node
    first[degree] = node
  }
  const take = (node: number, degree: number) => {
    const b = before[node] as number
    const a = after[node] as number
    if (b >= 0) after[b] = a
    else first[degree] = a
    if (a >= 0) before[a] = b
  }
  let rows = 0
  for (let a = nodes - 1; a >= 0; a--)
    if (up[a] !== -1) {
      put(a, (near[a] as number[]).length)
      rows++
    }
  const turn = new Int32Array(nodes).fill(-1)
  const lists: number[][] = []
  mark.fill(-1)
  let least = 0
  for (let k = 0; k < rows; k++) {
    while (first[least] === -1) least++
    const node = first[least] as number
    const around = near[node] as number[]
    take(node, around.length)
    turn[node] = k
    lists.push(around)
    for (const b of around) {
      const list = near[b] as number[]
      take(b, list.length)
      const place = list.indexOf(node)
      const last = list.pop() as number
      if (place < list.length) list[place] = last
      if (around.length > 1) join(list, b, around, mark)
      put(b, list.length)
      least = Math.min(least, list.length)
    }
  }
  const start = new Int32Array(rows + 1)
  lists.forEach((list, k) => {
    start[k + 1] = (start[k] as number) + list.length
  })
  const other = new Int32Array(start[rows] as number)
  for (let k = 0; k < rows; k++) {
    const list = lists[k] as number[]
    for (let n = 0; n < list.length; n++) other[(start[k] as number) + n] = turn[list[n] as number] as number
    order(other, start[k] as number, start[k + 1] as number)
  }
  return {
    rows,
    turn,
    start,
    other,
    sum: new Float64Array(rows),
    ground: new Float64Array(rows),
    tie: new Float64Array(other.length),
    work: new Float64Array(rows),
    head: new Int32Array(rows),
    next: new Int32Array(rows),
    at: new Int32Array(rows),
  }
}

/** Adds to the neighbours of `b` those of `around` that it does not have. */
function join(list: number[], b: number, around: readonly number[], mark: Int32Array): void {
  if (list.length + around.length < 8) {
    for (const c of around) if (c !== b && !list.includes(c)) list.push(c)
    return
  }
  for (const c of list) mark[c] = b
  for (const c of around) if (c !== b && mark[c] !== b) list.push(c)
  // another round may mark with the same name
  for (const c of list) mark[c] = -1
}

/** Sorts a stretch; nearly all have one or two entries. */
function order(list: Int32Array, begin: number, end: number): void {
  if (end - begin > 16) list.subarray(begin, end).sort()
  else
    for (let n = begin + 1; n < end; n++) {
      const own = list[n] as number
      let at = n
      for (; at > begin && (list[at - 1] as number) > own; at--) list[at] = list[at - 1] as number
      list[at] = own
    }
}

/** Slot of the tie between two rows. */
export function slotOf({ start, other }: Elimination, a: number, b: number): number {
  const early = Math.min(a, b)
  const late = Math.max(a, b)
  let low = start[early] as number
  let high = (start[early + 1] as number) - 1
  while (low < high) {
    const mid = (low + high) >> 1
    if ((other[mid] as number) < late) low = mid + 1
    else high = mid
  }
  return low
}

/** Eliminates every node of the ties given; false where a sum is not positive: the network does not hold its voltage there. */
export function eliminate(e: Elimination, ground: Float64Array, ties: Float64Array): boolean {
  const { rows, start, other, sum, tie, work, head, next, at } = e
  head.fill(-1)
  for (let k = 0; k < rows; k++) {
    const [begin, end] = [start[k] as number, start[k + 1] as number]
    for (let s = begin; s < end; s++) work[other[s] as number] = ties[s] as number
    let toGround = ground[k] as number
    for (let a = head[k] as number; a !== -1; ) {
      const [then, p, last] = [next[a] as number, at[a] as number, start[a + 1] as number]
      const part = (tie[p] as number) / (sum[a] as number)
      toGround += part * (e.ground[a] as number)
      for (let s = p + 1; s < last; s++) {
        const c = other[s] as number
        work[c] = (work[c] as number) + part * (tie[s] as number)
      }
      if (p + 1 < last) {
        at[a] = p + 1
        const c = other[p + 1] as number
        next[a] = head[c] as number
        head[c] = a
      }
      a = then
    }
    let whole = toGround
    for (let s = begin; s < end; s++) {
      const g = work[other[s] as number] as number
      tie[s] = g
      whole += g
    }
    if (!(whole > 0)) return false
    e.ground[k] = toGround
    sum[k] = whole
    if (begin < end) {
      at[k] = begin
      const c = other[begin] as number
      next[k] = head[c] as number
      head[c] = k
    }
  }
  return true
}

/** Currents into the rows become their voltages, in place. */
export function backSubstitute({ rows, start, other, sum, tie }: Elimination, x: Float64Array): void {
  for (let k = 0; k < rows; k++) {
    const share = (x[k] as number) / (sum[k] as number)
    x[k] = share
    for (let s = start[k] as number; s < (start[k + 1] as number); s++) {
      const c = other[s] as number
      x[c] = (x[c] as number) + (tie[s] as number) * share
    }
  }
  for (let k = rows - 1; k >= 0; k--) {
    let pull = 0
    for (let s = start[k] as number; s < (start[k + 1] as number); s++) pull += (tie[s] as number) * (x[other[s] as number] as number)
    x[k] = (x[k] as number) + pull / (sum[k] as number)
  }
}
