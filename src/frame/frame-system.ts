import { solveLinear } from "../numeric/index.js"
import { type BeamCouple, type BeamForce, type BeamProblem, type BeamSpread, beamCurve } from "./beam/curve.js"

/** A joint of a plane frame, m. */
export interface SystemNode {
  readonly x: number
  readonly y: number
}
/** A force along a member, N, positive towards its end. */
export interface AlongForce {
  readonly force: number
  readonly position: number
}
/** A straight member between two joints, with what loads it between them. */
export interface SystemMember {
  readonly from: number
  readonly to: number
  /** Bending stiffness E·I, N·m². */
  readonly bending: number
  /** Stretch for each newton and metre, 1/(E·A), 1/N; 0 for one that does not stretch. */
  readonly stretch: number
  /** Whether the member is free to turn against the joint. */
  readonly turnsAtFrom: boolean
  readonly turnsAtTo: boolean
  /** Loads across it, positive to the right of the way from start to end: downwards for a member that runs to the right. */
  readonly forces: readonly BeamForce[]
  readonly distributedLoads: readonly BeamSpread[]
  readonly couples: readonly BeamCouple[]
  readonly alongForces: readonly AlongForce[]
  readonly alongLoads: readonly BeamSpread[]
}
/** Ways in which a joint moves: to the right, up, and turning counter-clockwise. */
export type Way = 0 | 1 | 2
/** A support in one way; its flexibility is how far it gives for each newton (or newton metre), 0 where it is rigid. */
export interface SystemHold {
  readonly node: number
  readonly way: Way
  readonly flexibility: number
}
/** A plane frame with its loads, SI. */
export interface FrameSystem {
  readonly nodes: readonly SystemNode[]
  readonly members: readonly SystemMember[]
  readonly holds: readonly SystemHold[]
  /** Loads at the joints: to the right, up, counter-clockwise; none that turns a joint at which only ends free to turn meet. */
  readonly loads: readonly (readonly [number, number, number])[]
}

/** Forces at the ends of a member. */
export interface MemberEnds {
  /** Pull along it at its start and end, N; a push is negative. */
  readonly pullStart: number
  readonly pullEnd: number
  /** Bending moments at its start and end, N·m; positive where the side on the right of the way from start to end is stretched. */
  readonly momentStart: number
  readonly momentEnd: number
}
/** A solved frame. */
export interface SolvedFrame {
  /** How each joint moves, by way. */
  readonly moves: readonly (readonly [number, number, number])[]
  readonly ends: readonly MemberEnds[]
  /** What each hold exerts on the frame. */
  readonly reactions: readonly number[]
  /** A member as a beam of its own on two pinned ends, with the moments there. */
  stretchOf(member: number): BeamProblem
}

interface Shape {
  readonly length: number
  readonly cos: number
  readonly sin: number
}
const shapeOf = ({ nodes }: FrameSystem, { from, to }: SystemMember): Shape => {
  const [a, b] = [nodes[from] as SystemNode, nodes[to] as SystemNode]
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  return { length, cos: (b.x - a.x) / length, sin: (b.y - a.y) / length }
}

const sizeOf = ({ nodes }: FrameSystem) =>
  Math.max(...nodes.map((n) => Math.hypot(n.x - (nodes[0] as SystemNode).x, n.y - (nodes[0] as SystemNode).y)))

/** A joint that nothing holds against turning takes no part in the stiffness: only ends free to turn meet there. */
const turnsFreely = ({ members, holds }: FrameSystem, node: number) =>
  !holds.some((h) => h.node === node && h.way === 2) &&
  members.every((m) => (m.from !== node || m.turnsAtFrom) && (m.to !== node || m.turnsAtTo))

/** The joint that moves most, and the number of independent motions, where a frame is a mechanism. */
export interface Loose {
  readonly node: number
  readonly way: Way
  readonly motions: number
}

/**
 * Whether a frame of rigid members could move as it is held: the motions that stretch, bend and lift nothing, by elimination with
 * complete pivoting. It asks for geometry alone, so that soft springs do not look like missing supports.
 */
export function looseness(system: FrameSystem): Loose | null {
  const { nodes, members, holds } = system
  const [columns, unit] = [3 * nodes.length, sizeOf(system)]
  const rows: number[][] = []
  const row = (entries: readonly (readonly [number, number])[]) => {
    const made = new Array<number>(columns).fill(0)
    for (const [k, v] of entries) made[k] = (made[k] as number) + v
    rows.push(made)
  }
  for (const m of members) {
    const { length, cos, sin } = shapeOf(system, m)
    const [a, b] = [3 * m.from, 3 * m.to]
    const k = unit / length
    row([
      [a, -cos * k],
      [a + 1, -sin * k],
      [b, cos * k],
      [b + 1, sin * k],
    ])
    const chord = [
      [a, -sin * k],
      [a + 1, cos * k],
      [b, sin * k],
      [b + 1, -cos * k],
    ] as const
    if (!m.turnsAtFrom) row([...chord, [a + 2, 1]])
    if (!m.turnsAtTo) row([...chord, [b + 2, 1]])
  }
  for (const h of holds) row([[3 * h.node + h.way, 1]])
  nodes.forEach((_, n) => {
    if (turnsFreely(system, n)) row([[3 * n + 2, 1]])
  })
  for (const r of rows) {
    const most = Math.max(...r.map(Math.abs))
    r.forEach((v, j) => {
      r[j] = v / most
    })
  }
  const order = Array.from({ length: columns }, (_, j) => j)
  let rank = 0
  while (rank < Math.min(rows.length, columns)) {
    let [best, i0, j0] = [1e-9, -1, -1]
    for (let i = rank; i < rows.length; i++)
      for (let j = rank; j < columns; j++) {
        const size = Math.abs((rows[i] as number[])[order[j] as number] as number)
        if (size > best) [best, i0, j0] = [size, i, j]
      }
    if (i0 < 0) break
    ;[rows[rank], rows[i0]] = [rows[i0] as number[], rows[rank] as number[]]
    ;[order[rank], order[j0]] = [order[j0] as number, order[rank] as number]
    const top = rows[rank] as number[]
    const lead = order[rank] as number
    for (let i = rank + 1; i < rows.length; i++) {
      const r = rows[i] as number[]
      const ratio = (r[lead] as number) / (top[lead] as number)
      if (ratio !== 0)
        for (let j = rank; j < columns; j++)
          r[order[j] as number] = (r[order[j] as number] as number) - ratio * (top[order[j] as number] as number)
    }
    rank++
  }
  if (rank === columns) return null
  const motion = new Array<number>(columns).fill(0)
  motion[order[rank] as number] = 1
  for (let i = rank - 1; i >= 0; i--) {
    const r = rows[i] as number[]
    let sum = 0
    for (let j = i + 1; j <= rank; j++) sum += (r[order[j] as number] as number) * (motion[order[j] as number] as number)
    motion[order[i] as number] = -sum / (r[order[i] as number] as number)
  }
  let most = 0
  motion.forEach((v, k) => {
    if (Math.abs(v) > Math.abs(motion[most] as number) * (1 + 1e-9)) most = k
  })
  return { node: Math.floor(most / 3), way: (most % 3) as Way, motions: columns - rank }
}

/** Reactions of a member on two pinned ends under its own loads, the slopes there, and what its loads along it add up to. */
function between(member: SystemMember, length: number) {
  const { forces, distributedLoads, couples, alongForces, alongLoads } = member
  const curve = beamCurve({ length, span: length, stiffness: member.bending, forces, distributedLoads, couples })
  let [along, turning] = [0, 0]
  for (const { force, position } of alongForces) {
    along += force
    turning += force * position
  }
  for (const { startLoad, endLoad, start, end } of alongLoads) {
    const reach = end - start
    along += ((startLoad + endLoad) / 2) * reach
    turning += ((startLoad + endLoad) / 2) * reach * start + (startLoad / 6 + endLoad / 3) * reach ** 2
  }
  return {
    startUp: curve.reactionStart,
    endUp: curve.reactionEnd as number,
    slopeStart: curve.at(0, 1).slope,
    slopeEnd: curve.at(length, -1).slope,
    along,
    stretched: turning * member.stretch,
  }
}

/**
 * Solves a plane frame exactly: for every joint the balance of forces, for every member how its ends move against one another under
 * its end forces and its own loads in closed form, for every support what it gives. Joint motions, member end forces and reactions are
 * unknown together, so that members and supports that do not give at all lose no digits. For frames that {@link looseness} finds none in.
 */
export function solveFrame(system: FrameSystem): SolvedFrame {
  const { nodes, members, holds, loads } = system
  const shapes = members.map((m) => shapeOf(system, m))
  const own = members.map((m, i) => between(m, (shapes[i] as Shape).length))
  const [firstMember, firstHold] = [3 * nodes.length, 3 * nodes.length + 3 * members.length]
  const size = firstHold + holds.length
  // units in which motions and forces are of one size: lengths by the frame's, flexibilities by the softest's of members and supports
  const unit = sizeOf(system)
  const lengthOf = (i: number) => (shapes[i] as Shape).length
  const softest = Math.max(
    ...members.map((m, i) => m.stretch * lengthOf(i)),
    // how a member bends that both joints let turn is its own affair
    ...members.map((m, i) => (m.turnsAtFrom && m.turnsAtTo ? 0 : (lengthOf(i) * unit ** 2) / m.bending)),
    ...holds.map((h) => h.flexibility * (h.way === 2 ? unit ** 2 : 1)),
  )
  const give = softest > 0 ? softest : 1
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  const right = new Array<number>(size).fill(0)
  const put = (i: number, j: number, v: number) => {
    const row = matrix[i] as number[]
    row[j] = (row[j] as number) + v
  }
  const load = (i: number, v: number) => {
    right[i] = (right[i] as number) + v
  }
  loads.forEach(([x, y, turn], n) => {
    load(3 * n, x)
    load(3 * n + 1, y)
    load(3 * n + 2, turn / unit)
  })
  members.forEach((m, i) => {
    const { length, cos, sin } = shapes[i] as Shape
    const { startUp, endUp, slopeStart, slopeEnd, along, stretched } = own[i] as ReturnType<typeof between>
    const [a, b, e] = [3 * m.from, 3 * m.to, firstMember + 3 * i]
    const k = unit / length
    // what the joints exert on the member's ends: at the start the pull there (the end's and the loads along it), at both what keeps it up
    put(a, e, -cos)
    put(a + 1, e, -sin)
    put(b, e, cos)
    put(b + 1, e, sin)
    load(a, along * cos + startUp * sin)
    load(a + 1, along * sin - startUp * cos)
    load(b, endUp * sin)
    load(b + 1, -endUp * cos)
    for (const [moment, sign] of [
      [e + 1, -1],
      [e + 2, 1],
    ] as const) {
      put(a, moment, -sin * sign * k)
      put(a + 1, moment, cos * sign * k)
      put(b, moment, sin * sign * k)
      put(b + 1, moment, -cos * sign * k)
    }
    put(a + 2, e + 1, -1)
    put(b + 2, e + 2, 1)
    // stretch
    put(e, a, -cos)
    put(e, a + 1, -sin)
    put(e, b, cos)
    put(e, b + 1, sin)
    put(e, e, (-length * m.stretch) / give)
    right[e] = stretched / give
    // turning of its ends against the line between them
    const bend = (length * unit ** 2) / (6 * m.bending) / give
    const turn = (row: number, node: number, released: boolean, signs: readonly [number, number], slope: number) => {
      if (released) return put(row, row, 1)
      put(row, node + 2, 1)
      put(row, a, -sin * k)
      put(row, a + 1, cos * k)
      put(row, b, sin * k)
      put(row, b + 1, -cos * k)
      put(row, e + 1, signs[0] * bend)
      put(row, e + 2, signs[1] * bend)
      right[row] = (-slope * unit) / give
    }
    turn(e + 1, a, m.turnsAtFrom, [2, 1], slopeStart)
    turn(e + 2, b, m.turnsAtTo, [-1, -2], slopeEnd)
  })
  holds.forEach((h, i) => {
    const [row, moved] = [firstHold + i, 3 * h.node + h.way]
    put(moved, row, -1)
    put(row, moved, 1)
    put(row, row, (h.flexibility * (h.way === 2 ? unit ** 2 : 1)) / give)
  })
  nodes.forEach((_, n) => {
    if (turnsFreely(system, n)) put(3 * n + 2, 3 * n + 2, 1)
  })
  matrix.forEach((row, i) => {
    const most = Math.max(...row.map(Math.abs))
    row.forEach((v, j) => {
      row[j] = v / most
    })
    right[i] = (right[i] as number) / most
  })
  const solved = solveLinear(matrix, right, 0)
  if (solved === null) throw new Error("a frame that cannot move has one answer")
  const found = (k: number) => solved[k] as number
  const moves = nodes.map((_, n) => [found(3 * n) * give, found(3 * n + 1) * give, (found(3 * n + 2) * give) / unit] as const)
  const ends = members.map((_, i): MemberEnds => {
    const pullEnd = found(firstMember + 3 * i)
    return {
      pullStart: pullEnd + (own[i] as ReturnType<typeof between>).along,
      pullEnd,
      momentStart: found(firstMember + 3 * i + 1) * unit,
      momentEnd: found(firstMember + 3 * i + 2) * unit,
    }
  })
  return {
    moves,
    ends,
    reactions: holds.map((h, i) => found(firstHold + i) * (h.way === 2 ? unit : 1)),
    stretchOf: (i) => {
      const [m, { length, cos, sin }, { momentStart, momentEnd }] = [members[i] as SystemMember, shapes[i] as Shape, ends[i] as MemberEnds]
      const across = (n: number) => {
        const [x, y] = moves[n] as readonly [number, number, number]
        return x * sin - y * cos
      }
      return {
        length,
        span: length,
        stiffness: m.bending,
        forces: m.forces,
        distributedLoads: m.distributedLoads,
        couples: [{ moment: momentStart, position: 0 }, ...m.couples, { moment: -momentEnd, position: length }],
        settled: [across(m.from), across(m.to)],
      }
    },
  }
}
