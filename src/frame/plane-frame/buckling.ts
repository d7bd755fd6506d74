// The load factor at which a frame buckles in its plane: buckling loads are counted (W. H. Wittrick, F. W. Williams, 1971) in the exact
// stiffness of members under push or pull.
import type { FrameSystem } from "../frame-system.js"

/** End stiffnesses s (near) and r (far) of a member, times its length over E·I, under a push p = P·L²/(E·I); negative for a pull. */
export function stability(p: number): { readonly near: number; readonly far: number } {
  // by its power series where the terms would cancel
  if (Math.abs(p) < 0.05)
    return {
      near: 4 - (2 * p) / 15 - (11 * p ** 2) / 6300 - p ** 3 / 27000,
      far: 2 + p / 30 + (13 * p ** 2) / 12600 + (11 * p ** 3) / 378000,
    }
  const phi = Math.sqrt(Math.abs(p))
  if (p > 0) {
    const [s, c] = [Math.sin(phi), Math.cos(phi)]
    const below = 2 - 2 * c - phi * s
    return { near: (phi * (s - phi * c)) / below, far: (phi * (phi - s)) / below }
  }
  const [t, one] = [Math.tanh(phi), 1 / Math.cosh(phi)]
  const below = 2 * one - 2 + phi * t
  return { near: (phi * (phi - t)) / below, far: (phi * (t - phi * one)) / below }
}

/** How many loads between clamped ends a member has buckled under at p = P·L²/(E·I): φ = 2π·k, and tan(φ/2) = φ/2. */
export function clampedCount(p: number): number {
  if (!(p > 0)) return 0
  const half = Math.sqrt(p) / 2
  const turns = Math.floor(half / Math.PI)
  const rest = half - turns * Math.PI
  return turns + (turns === 0 ? 0 : turns - 1 + (rest >= Math.PI / 2 || Math.tan(rest) > half ? 1 : 0))
}

/** Negative pivots of a symmetric matrix, which is used up. */
function negativePivots(rows: number[][]): number {
  let count = 0
  const n = rows.length
  for (let k = 0; k < n; k++) {
    const top = rows[k] as number[]
    const pivot = (top[k] as number) === 0 ? Number.MIN_VALUE : (top[k] as number)
    if (pivot < 0) count++
    for (let i = k + 1; i < n; i++) {
      const ratio = (top[i] as number) / pivot
      if (ratio === 0) continue
      const row = rows[i] as number[]
      for (let j = i; j < n; j++) row[j] = (row[j] as number) - ratio * (top[j] as number)
    }
  }
  return count
}

/** How many buckling loads lie below `factor` times the pushes (N, negative for a pull) of the members. */
function countBelow(system: FrameSystem, pushes: readonly number[], factor: number): number {
  const { nodes, members, holds } = system
  const rigid = new Set(holds.filter((h) => h.flexibility === 0).map((h) => 3 * h.node + h.way))
  let size = 3 * nodes.length
  const places = members.map((m) => {
    const turn = (node: number, free: boolean) => (free ? size++ : 3 * node + 2)
    return [3 * m.from, 3 * m.from + 1, turn(m.from, m.turnsAtFrom), 3 * m.to, 3 * m.to + 1, turn(m.to, m.turnsAtTo)] as const
  })
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  const put = (i: number, j: number, v: number) => {
    const row = matrix[i] as number[]
    row[j] = (row[j] as number) + v
  }
  let clamped = 0
  members.forEach((m, i) => {
    const [a, b] = [nodes[m.from], nodes[m.to]] as [(typeof nodes)[number], (typeof nodes)[number]]
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    const [c, s] = [(b.x - a.x) / length, (b.y - a.y) / length]
    const p = (factor * (pushes[i] as number) * length ** 2) / m.bending
    clamped += clampedCount(p)
    const { near, far } = stability(p)
    const k = m.bending / length
    const [across, turn] = [(k * (2 * (near + far) - p)) / length ** 2, (k * (near + far)) / length]
    const along = 1 / (m.stretch * length)
    // along, across (to the left of the way) and turning of each end
    const own = [
      [along, 0, 0, -along, 0, 0],
      [0, across, turn, 0, -across, turn],
      [0, turn, k * near, 0, -turn, k * far],
      [-along, 0, 0, along, 0, 0],
      [0, -across, -turn, 0, across, -turn],
      [0, turn, k * far, 0, -turn, k * near],
    ]
    const turned = [
      [c, s, 0, 0, 0, 0],
      [-s, c, 0, 0, 0, 0],
      [0, 0, 1, 0, 0, 0],
      [0, 0, 0, c, s, 0],
      [0, 0, 0, -s, c, 0],
      [0, 0, 0, 0, 0, 1],
    ]
    const half = own.map((row) => [0, 1, 2, 3, 4, 5].map((q) => row.reduce((sum, v, r) => sum + v * (turned[r]?.[q] as number), 0)))
    places[i]?.forEach((row, g) => {
      places[i]?.forEach((column, h) => {
        put(
          row,
          column,
          turned.reduce((sum, t, r) => sum + (t[g] as number) * (half[r]?.[h] as number), 0),
        )
      })
    })
  })
  for (const h of holds) if (h.flexibility > 0) put(3 * h.node + h.way, 3 * h.node + h.way, 1 / h.flexibility)
  // a turning that only ends free to turn meet at has no stiffness at all
  const free = matrix.flatMap((row, i) => (rigid.has(i) || row.every((v) => v === 0) ? [] : [i]))
  return clamped + negativePivots(free.map((i) => free.map((j) => (matrix[i] as number[])[j] as number)))
}

/** Factor on all loads at which the frame buckles in its plane; null where no member is pushed by more than rounding. */
export function bucklingFactor(system: FrameSystem, pushes: readonly number[], rounding: number): number | null {
  const lengthOf = ({ from, to }: FrameSystem["members"][number]) => {
    const [a, b] = [system.nodes[from], system.nodes[to]] as [(typeof system.nodes)[number], (typeof system.nodes)[number]]
    return Math.hypot(b.x - a.x, b.y - a.y)
  }
  const kept = pushes.map((p) => (Math.abs(p) > rounding ? p : 0))
  // between clamped ends each member would buckle at 4·π²·E·I/L²: the frame does so no later
  let high = Math.min(
    ...system.members.map((m, i) => {
      const push = kept[i] as number
      return push > 0 ? (4.001 * Math.PI ** 2 * m.bending) / lengthOf(m) ** 2 / push : Number.POSITIVE_INFINITY
    }),
  )
  if (!Number.isFinite(high)) return null
  let low = 0
  for (let step = 0; step < 200 && high - low > 1e-11 * high; step++) {
    const middle = (low + high) / 2
    if (countBelow(system, kept, middle) > 0) high = middle
    else low = middle
  }
  return high
}
