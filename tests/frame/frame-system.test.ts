import { describe, expect, it } from "vitest"
import { beamCurve } from "../../src/frame/beam/curve.js"
import {
  type FrameSystem,
  looseness,
  type SolvedFrame,
  type SystemHold,
  type SystemMember,
  solveFrame,
} from "../../src/frame/frame-system.js"
import { lehmer } from "../linkage/random.js"
import { elementStiffness, solveScaled, zeros } from "./elements.js"

type Random = ReturnType<typeof lehmer>
type Vector = readonly [number, number, number]
const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)

/** A row of three slanted members and a fourth that closes it, some of them hinged to their joints, loaded in every way. */
function frame(random: Random, gives: boolean): FrameSystem {
  const nodes = [0, 1, 2, 3].map((n) => ({ x: 0.6 * n + random.real(-0.2, 0.2), y: random.real(-0.6, 0.6) }))
  const ends = [
    [0, 1],
    [2, 1],
    [2, 3],
    [3, 0],
  ] as const
  const members = ends.map(([from, to], i): SystemMember => {
    const [a, b] = [nodes[from]!, nodes[to]!]
    const at = (share: number) => share * Math.hypot(b.x - a.x, b.y - a.y)
    const spread = () => ({ startLoad: random.real(-40, 40), endLoad: random.real(-40, 40), start: at(0.25), end: at(0.75) })
    return {
      from,
      to,
      bending: random.real(20, 300),
      stretch: gives ? random.real(1e-6, 1e-3) : 0,
      turnsAtFrom: random.real(0, 1) < 0.3,
      turnsAtTo: i === 3 && random.real(0, 1) < 0.5,
      forces: [{ force: random.real(-50, 50), position: at(0.25) }],
      distributedLoads: [spread()],
      couples: [{ moment: random.real(-9, 9), position: at(0.5) }],
      alongForces: [{ force: random.real(-50, 50), position: at(0.75) }],
      alongLoads: [spread()],
    }
  })
  const soft = () => (random.real(0, 1) < 0.4 ? 0 : random.real(1e-6, 1e-3))
  const holds: SystemHold[] = [
    { node: 0, way: 0, flexibility: soft() },
    { node: 0, way: 1, flexibility: soft() },
    { node: 0, way: 2, flexibility: soft() },
    { node: 3, way: 1, flexibility: soft() },
    { node: 2, way: 0, flexibility: soft() },
    { node: 1, way: 2, flexibility: soft() },
  ]
  const turns = (n: number) =>
    holds.some((h) => h.node === n && h.way === 2) || members.some((m) => (m.from === n && !m.turnsAtFrom) || (m.to === n && !m.turnsAtTo))
  const loads = nodes.map((_, n) => [random.real(-50, 50), random.real(-50, 50), turns(n) ? random.real(-9, 9) : 0] as const)
  return { nodes, members, holds, loads }
}

/**
 * The same by plane elements between joints and quarters of members: their stiffness turned into place, a hinge as a turning of its own,
 * a support as a number on the diagonal or a freedom left out.
 */
function elements({ nodes, members, holds, loads }: FrameSystem) {
  let size = 3 * nodes.length
  const stiffness: {
    readonly places: readonly number[]
    readonly own: number[][]
    readonly turned: number[][]
    readonly worth: number[]
  }[] = []
  const inner: number[][] = []
  const joined = members.map((m) => {
    const [a, b] = [nodes[m.from]!, nodes[m.to]!]
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    const [c, s] = [(b.x - a.x) / length, (b.y - a.y) / length]
    const freedoms = [0, 1, 2, 3, 4].map((k) => {
      if (k > 0 && k < 4) return [size++, size++, size++]
      const n = 3 * (k === 0 ? m.from : m.to)
      return [n, n + 1, (k === 0 ? m.turnsAtFrom : m.turnsAtTo) ? size++ : n + 2]
    })
    inner.push(freedoms[1]!, freedoms[2]!, freedoms[3]!)
    const h = length / 4
    const bend = elementStiffness(h)
    return [0, 1, 2, 3].map((k) => {
      const own = zeros(6)
      for (const [i, p] of [1, 2, 4, 5].entries()) for (const [j, q] of [1, 2, 4, 5].entries()) own[p]![q] = bend[i]![j]! * m.bending
      for (const [p, q] of [
        [0, 3],
        [3, 0],
      ] as const) {
        own[p]![p] = 1 / (m.stretch * h)
        own[p]![q] = -1 / (m.stretch * h)
      }
      const turn = zeros(6)
      for (const o of [0, 3]) {
        turn[o]![o] = c
        turn[o]![o + 1] = s
        turn[o + 1]![o] = -s
        turn[o + 1]![o + 1] = c
        turn[o + 2]![o + 2] = 1
      }
      // a load that varies straight along the element, as forces and moments at its ends that do the same work
      const worth = new Array<number>(6).fill(0)
      const of = (load: SystemMember["alongLoads"][number], x: number) =>
        load.startLoad + ((load.endLoad - load.startLoad) * (x - load.start)) / (load.end - load.start)
      const carries = k === 1 || k === 2
      for (const q of carries ? m.distributedLoads : []) {
        const [u, w] = [of(q, k * h), of(q, (k + 1) * h)]
        worth[1]! -= (h * (7 * u + 3 * w)) / 20
        worth[2]! -= (h * h * (3 * u + 2 * w)) / 60
        worth[4]! -= (h * (3 * u + 7 * w)) / 20
        worth[5]! += (h * h * (2 * u + 3 * w)) / 60
      }
      for (const q of carries ? m.alongLoads : []) {
        const [u, w] = [of(q, k * h), of(q, (k + 1) * h)]
        worth[0]! += (h * (2 * u + w)) / 6
        worth[3]! += (h * (u + 2 * w)) / 6
      }
      const one = { places: [...freedoms[k]!, ...freedoms[k + 1]!], own, turned: turn, worth }
      stiffness.push(one)
      return one
    })
  })
  const whole = zeros(size)
  const load = new Array<number>(size).fill(0)
  for (const { places, own, turned, worth } of stiffness) {
    const half = own.map((row) => turned[0]!.map((_, j) => sum(row.map((v, k) => v * turned[k]![j]!))))
    places.forEach((p, i) => {
      load[p]! += sum(worth.map((v, k) => v * turned[k]![i]!))
      places.forEach((q, j) => {
        whole[p]![q]! += sum(half.map((row, k) => turned[k]![i]! * row[j]!))
      })
    })
  }
  loads.forEach((l, n) => {
    l.forEach((v, way) => {
      load[3 * n + way]! += v
    })
  })
  members.forEach((m, i) => {
    const [a, b] = [nodes[m.from]!, nodes[m.to]!]
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    const [c, s] = [(b.x - a.x) / length, (b.y - a.y) / length]
    const [first, second, third] = [inner[3 * i]!, inner[3 * i + 1]!, inner[3 * i + 2]!]
    load[first[0]!]! += m.forces[0]!.force * s
    load[first[1]!]! -= m.forces[0]!.force * c
    load[second[2]!]! -= m.couples[0]!.moment
    load[third[0]!]! += m.alongForces[0]!.force * c
    load[third[1]!]! += m.alongForces[0]!.force * s
  })
  const free: number[] = []
  for (let k = 0; k < size; k++) {
    const held = holds.find((h) => 3 * h.node + h.way === k)
    if (held && held.flexibility > 0) whole[k]![k]! += 1 / held.flexibility
    // a turning that only hinges meet at has no stiffness
    if (held?.flexibility !== 0 && whole[k]![k]! > 0) free.push(k)
  }
  const moved = new Array<number>(size).fill(0)
  solveScaled(
    free.map((k) => free.map((j) => whole[k]![j]!)),
    free.map((k) => load[k]!),
  ).forEach((v, i) => {
    moved[free[i]!] = v
  })
  const endForces = ({ places, own, turned, worth }: (typeof stiffness)[number]) => {
    const local = turned.map((row) => sum(row.map((v, k) => v * moved[places[k]!]!)))
    return own.map((row, i) => sum(row.map((v, k) => v * local[k]!)) - worth[i]!)
  }
  return {
    moved,
    ends: joined.map((parts) => {
      const [first, last] = [endForces(parts[0]!), endForces(parts[3]!)]
      return { pullStart: -first[0]!, pullEnd: last[3]!, momentStart: -first[2]!, momentEnd: last[5]! }
    }),
    innerOf: (member: number) => [0, 1, 2].map((k) => inner[3 * member + k]!.map((p) => moved[p]!)),
  }
}

/** What every joint is left with: its load, its holds, and what its members' ends exert on it, each a free body in balance. */
function leftOver(system: FrameSystem, { ends, reactions }: SolvedFrame): { readonly left: number; readonly size: number } {
  const joints = system.loads.map((l) => [...l])
  let size = 1
  const add = (n: number, way: number, v: number) => {
    joints[n]![way]! += v
    size = Math.max(size, Math.abs(v))
  }
  system.holds.forEach((h, i) => {
    add(h.node, h.way, reactions[i]!)
  })
  system.members.forEach((m, i) => {
    const [a, b] = [system.nodes[m.from]!, system.nodes[m.to]!]
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    const [c, s] = [(b.x - a.x) / length, (b.y - a.y) / length]
    const { pullStart, pullEnd, momentStart, momentEnd } = ends[i]!
    const [force, spread, along] = [m.forces[0]!, m.distributedLoads[0]!, m.alongLoads[0]!]
    const resultant = (q: typeof spread) => ((q.startLoad + q.endLoad) / 2) * (q.end - q.start)
    const centre = (q: typeof spread) => resultant(q) * q.start + (q.startLoad / 6 + q.endLoad / 3) * (q.end - q.start) ** 2
    // moments about its start, clockwise: the end must hold up what the loads, couple and end moments ask for
    const endLeft = (force.force * force.position + centre(spread) + m.couples[0]!.moment + momentStart - momentEnd) / length
    const startLeft = force.force + resultant(spread) - endLeft
    size = Math.max(size, Math.abs(pullStart - pullEnd - m.alongForces[0]!.force - resultant(along)) * 1e12)
    add(m.from, 0, pullStart * c + startLeft * s)
    add(m.from, 1, pullStart * s - startLeft * c)
    add(m.to, 0, -pullEnd * c + endLeft * s)
    add(m.to, 1, -pullEnd * s - endLeft * c)
    add(m.from, 2, momentStart)
    add(m.to, 2, -momentEnd)
  })
  return { left: Math.max(...joints.flat().map(Math.abs)), size }
}

describe("a plane frame of slanted, hinged members loaded across and along", () => {
  it("moves, pulls and bends as plane elements do", () => {
    const random = lehmer(5)
    let hinged = 0
    for (let k = 0; k < 40; k++) {
      const system = frame(random, true)
      expect(looseness(system)).toBeNull()
      const [found, known] = [solveFrame(system), elements(system)]
      hinged += system.members.filter((m) => m.turnsAtFrom || m.turnsAtTo).length
      const most = Math.max(...known.moved.map(Math.abs))
      found.moves.forEach((move: Vector, n) => {
        // how far a joint turns that only hinges meet at is nobody's
        const turns = system.members.some((m) => (m.from === n && !m.turnsAtFrom) || (m.to === n && !m.turnsAtTo))
        for (const way of turns ? [0, 1, 2] : [0, 1]) expect(Math.abs(move[way]! - known.moved[3 * n + way]!)).toBeLessThan(1e-7 * most)
      })
      const force = Math.max(...known.ends.flatMap((e) => Object.values(e).map(Math.abs)))
      found.ends.forEach((end, i) => {
        for (const key of ["pullStart", "pullEnd", "momentStart", "momentEnd"] as const)
          expect(Math.abs(end[key] - known.ends[i]![key])).toBeLessThan(1e-6 * force)
        const m = system.members[i]!
        const [a, b] = [system.nodes[m.from]!, system.nodes[m.to]!]
        const length = Math.hypot(b.x - a.x, b.y - a.y)
        const curve = beamCurve(found.stretchOf(i))
        known.innerOf(i).forEach(([x, y], quarter) => {
          const across = (x! * (b.y - a.y) - y! * (b.x - a.x)) / length
          expect(Math.abs(curve.at(((quarter + 1) * length) / 4).deflection - across)).toBeLessThan(1e-7 * most)
        })
      })
    }
    expect(hinged).toBeGreaterThan(30)
  })

  it("leaves every joint in balance, and keeps lengths where members do not stretch and holds do not give", () => {
    const random = lehmer(6)
    for (let k = 0; k < 40; k++) {
      const system = frame(random, k % 2 === 0)
      const found = solveFrame(system)
      const { left, size } = leftOver(system, found)
      expect(left).toBeLessThan(1e-9 * size)
      const most = Math.max(...found.moves.flat().map(Math.abs))
      system.holds.forEach((h, i) => {
        expect(Math.abs(found.moves[h.node]![h.way] + h.flexibility * found.reactions[i]!)).toBeLessThan(1e-9 * most)
      })
      for (const m of k % 2 === 0 ? [] : system.members) {
        const [a, b, from, to] = [system.nodes[m.from]!, system.nodes[m.to]!, found.moves[m.from]!, found.moves[m.to]!]
        const longer = ((to[0] - from[0]) * (b.x - a.x) + (to[1] - from[1]) * (b.y - a.y)) / Math.hypot(b.x - a.x, b.y - a.y)
        expect(Math.abs(longer)).toBeLessThan(1e-9 * most)
      }
    }
  })

  it("is loose by as many motions as its holds and hinges leave", () => {
    const whole = { ...frame(lehmer(7), true), holds: [] }
    const members = whole.members.map((m) => ({ ...m, turnsAtFrom: false, turnsAtTo: false }))
    expect(looseness({ ...whole, members })?.motions).toBe(3)
    // four bars pinned into a ring swing as a four-bar besides
    const pinned = members.map((m) => ({ ...m, turnsAtFrom: true, turnsAtTo: true }))
    expect(looseness({ ...whole, members: pinned })?.motions).toBe(4)
  })
})
