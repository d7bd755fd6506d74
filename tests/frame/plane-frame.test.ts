import { describe, expect, it } from "vitest"
import { columnEnds, type PlaneFrameInput, planeFrame } from "../../src/frame/index.js"
import { clampedCount, stability } from "../../src/frame/plane-frame/buckling.js"
import { lehmer } from "../linkage/random.js"
import { elementPush, elementStiffness, leastEigenvalue, type Matrix, solveScaled, zeros } from "./elements.js"

type Random = ReturnType<typeof lehmer>
const PARTS = 8

/** Four slanted members on springs and supports, loaded in every way, own weight on; loads lie on eighths of the members. */
function randomFrame(random: Random) {
  const nodes = [0, 1, 2, 3].map((n) => ({ name: `n${n}`, x: 0.6 * n + random.real(-0.2, 0.2), y: random.real(-0.6, 0.6) }))
  const ends = [
    [0, 1],
    [2, 1],
    [2, 3],
    [3, 0],
  ] as const
  const members = ends.map(([a, b], i) => ({
    name: `m${i}`,
    from: `n${a}`,
    to: `n${b}`,
    startJoint: random.real(0, 1) < 0.3 ? ("pinned" as const) : ("rigid" as const),
    endJoint: i === 3 && random.real(0, 1) < 0.5 ? ("pinned" as const) : ("rigid" as const),
    section: { outsideDiameter: random.real(0.008, 0.02) },
    modulus: random.real(2e9, 2e10),
    strength: 5e7,
    density: random.real(500, 3000),
  }))
  const lengthOf = (i: number) => {
    const [a, b] = ends[i] as readonly [number, number]
    return Math.hypot(nodes[b]!.x - nodes[a]!.x, nodes[b]!.y - nodes[a]!.y)
  }
  const directions = ["down", "right", "across", "along"] as const
  const anyWay = () => directions[Math.floor(random.real(0, 3.999))]!
  const loads: NonNullable<PlaneFrameInput["loads"]>[number][] = members.flatMap((m, i) => [
    { type: "force" as const, member: m.name, force: random.real(-30, 30), position: lengthOf(i) / 4, direction: anyWay() },
    {
      type: "spread" as const,
      member: m.name,
      startLoad: random.real(-30, 30),
      endLoad: random.real(-30, 30),
      start: lengthOf(i) / 4,
      end: (3 * lengthOf(i)) / 4,
      direction: anyWay(),
    },
    { type: "moment" as const, member: m.name, moment: random.real(-3, 3), position: lengthOf(i) / 2 },
  ])
  loads.push({ type: "node", node: "n1", right: random.real(-20, 20), up: random.real(-20, 20), moment: random.real(-2, 2) })
  const supports: PlaneFrameInput["supports"] = [
    { type: "clamped", node: "n0" },
    { type: "roller", node: "n3", holds: random.real(0, 1) < 0.5 ? "sideways" : "up-down" },
    { type: "spring", node: "n2", sidewaysStiffness: 3000, turningStiffness: 40 },
  ]
  return { nodes, members, loads, supports } satisfies PlaneFrameInput
}
type Frame = ReturnType<typeof randomFrame>

/** The same by plane elements of an eighth of each member: movements, reactions, and the forces at the ends of every element. */
function elements({ nodes, members, loads, supports }: Frame) {
  const index = (name: string) => nodes.findIndex((n) => n.name === name)
  let size = 3 * nodes.length
  const parts = members.map((m) => {
    const [a, b] = [nodes[index(m.from)]!, nodes[index(m.to)]!]
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    const [c, s] = [(b.x - a.x) / length, (b.y - a.y) / length]
    const D = m.section.outsideDiameter
    const [area, second] = [(Math.PI * D ** 2) / 4, (Math.PI * D ** 4) / 64]
    const freedoms = Array.from({ length: PARTS + 1 }, (_, k) => {
      if (k > 0 && k < PARTS) return [size++, size++, size++]
      const n = 3 * index(k === 0 ? m.from : m.to)
      return [n, n + 1, (k === 0 ? m.startJoint : m.endJoint) === "pinned" ? size++ : n + 2]
    })
    return { m, length, c, s, area, second, freedoms }
  })
  const whole = zeros(size)
  const load = new Array<number>(size).fill(0)
  const add = (k: number, v: number) => {
    load[k]! += v
  }
  const built = parts.flatMap(({ m, length, c, s, area, second, freedoms }) => {
    const h = length / PARTS
    const own = zeros(6)
    const bend = elementStiffness(h)
    for (const [i, p] of [1, 2, 4, 5].entries()) for (const [j, q] of [1, 2, 4, 5].entries()) own[p]![q] = bend[i]![j]! * m.modulus * second
    for (const [p, q] of [
      [0, 3],
      [3, 0],
    ] as const) {
      own[p]![p] = (m.modulus * area) / h
      own[p]![q] = (-m.modulus * area) / h
    }
    const turn = zeros(6)
    for (const k of [0, 3]) {
      turn[k]![k] = c
      turn[k]![k + 1] = s
      turn[k + 1]![k] = -s
      turn[k + 1]![k + 1] = c
      turn[k + 2]![k + 2] = 1
    }
    // loads per length along and across (to the left), straight over each element
    const vector = (direction: string): readonly [number, number] =>
      direction === "down" ? [-s, -c] : direction === "right" ? [c, -s] : direction === "across" ? [0, -1] : [1, 0]
    const weight = (m.density * Math.PI * m.section.outsideDiameter ** 2 * 9.80665) / 4
    return Array.from({ length: PARTS }, (_, k) => {
      const places = [...freedoms[k]!, ...freedoms[k + 1]!]
      const worth = new Array<number>(6).fill(0)
      const spread = (along: readonly [number, number], across: readonly [number, number]) => {
        worth[0]! += (h * (2 * along[0] + along[1])) / 6
        worth[3]! += (h * (along[0] + 2 * along[1])) / 6
        worth[1]! += (h * (7 * across[0] + 3 * across[1])) / 20
        worth[2]! += (h * h * (3 * across[0] + 2 * across[1])) / 60
        worth[4]! += (h * (3 * across[0] + 7 * across[1])) / 20
        worth[5]! += (-h * h * (2 * across[0] + 3 * across[1])) / 60
      }
      const [da, dn] = vector("down")
      spread([weight * da, weight * da], [weight * dn, weight * dn])
      for (const l of loads)
        if (l.type === "spread" && l.member === m.name && k >= PARTS / 4 && k < (3 * PARTS) / 4) {
          const at = (x: number) =>
            (l.startLoad as number) + (((l.endLoad as number) - (l.startLoad as number)) * (x - length / 4)) / (length / 2)
          const [a, n] = vector(l.direction as string)
          const [q, r] = [at(k * h), at((k + 1) * h)]
          spread([q * a, r * a], [q * n, r * n])
        }
      for (let i = 0; i < 6; i++) {
        add(
          places[i]!,
          turn.reduce((sum, row, r) => sum + row[i]! * worth[r]!, 0),
        )
        for (let j = 0; j < 6; j++) {
          let sum = 0
          for (let p = 0; p < 6; p++) for (let q = 0; q < 6; q++) sum += turn[p]![i]! * own[p]![q]! * turn[q]![j]!
          whole[places[i]!]![places[j]!]! += sum
        }
      }
      return { places, own, turn, worth, member: m.name }
    })
  })
  for (const l of loads) {
    if (l.type === "node") {
      const n = 3 * index(l.node)
      add(n, l.right as number)
      add(n + 1, l.up as number)
      add(n + 2, l.moment as number)
      continue
    }
    if (l.type === "spread") continue
    const { c, s, length, freedoms } = parts.find((p) => p.m.name === l.member)!
    const here = freedoms[Math.round((PARTS * (l.position as number)) / length)]!
    if (l.type === "moment") add(here[2]!, l.moment as number)
    else {
      const f = l.force as number
      const [x, y] = l.direction === "down" ? [0, -1] : l.direction === "right" ? [1, 0] : l.direction === "across" ? [s, -c] : [c, s]
      add(here[0]!, f * x!)
      add(here[1]!, f * y!)
    }
  }
  const held = new Set<number>()
  const stiffness = whole.map((row) => [...row])
  for (const support of supports) {
    const n = 3 * index(support.node)
    if (support.type === "clamped") for (const k of [0, 1, 2]) held.add(n + k)
    if (support.type === "roller") held.add(support.holds === "sideways" ? n : n + 1)
    if (support.type === "spring") {
      stiffness[n]![n]! += support.sidewaysStiffness as number
      stiffness[n + 2]![n + 2]! += support.turningStiffness as number
    }
  }
  const free = load.map((_, k) => k).filter((k) => !held.has(k) && stiffness[k]![k]! > 0)
  const moved = new Array<number>(size).fill(0)
  solveScaled(
    free.map((k) => free.map((j) => stiffness[k]![j]!)),
    free.map((k) => load[k]!),
  ).forEach((v, i) => {
    moved[free[i]!] = v
  })
  const ends = built.map(({ places, own, turn, worth, member }) => {
    const local = turn.map((row) => row.reduce((sum, v, k) => sum + v * moved[places[k]!]!, 0))
    const f = own.map((row, i) => row.reduce((sum, v, k) => sum + v * local[k]!, 0) - worth[i]!)
    // pull, shear and moment (the right of the way stretched) at start and end
    return { member, pull: [-f[0]!, f[3]!], shear: [f[1]!, -f[4]!], moment: [-f[2]!, f[5]!], across: [local[1]!, local[4]!] }
  })
  return {
    moved,
    of: (member: string) => ends.filter((e) => e.member === member),
    reaction: (node: string, way: number) => {
      const k = 3 * index(node) + way
      return whole[k]!.reduce((sum, v, j) => sum + v * moved[j]!, 0) - load[k]!
    },
  }
}

const largest = (list: readonly number[]) => Math.max(...list.map(Math.abs))

describe("planeFrame against other routes", () => {
  it("agrees with plane elements in movements, reactions and peaks, loads and own weight in every direction", () => {
    const random = lehmer(11)
    let checked = 0
    for (let run = 0; run < 9; run++) {
      const input = randomFrame(random)
      const out = planeFrame(input)
      const fe = elements(input)
      const far = largest(fe.moved)
      const size = largest(out.members.flatMap((m) => [m.maxPull, m.maxPush, m.maxShearForce]))
      out.nodes.forEach((n, i) => {
        for (const [way, v] of [n.right, n.up].entries()) expect(Math.abs(v - fe.moved[3 * i + way]!)).toBeLessThan(1e-6 * far)
        if (n.turn !== null) expect(Math.abs(n.turn - fe.moved[3 * i + 2]!)).toBeLessThan(1e-6 * far)
      })
      for (const s of out.supports)
        for (const [way, v] of [s.right, s.up, s.moment].entries())
          if (v !== null) expect(Math.abs(v - fe.reaction(s.node, way))).toBeLessThan(1e-5 * size)
      for (const m of out.members) {
        const own = fe.of(m.name)
        const [pull, shear, moment] = [own.flatMap((e) => e.pull), own.flatMap((e) => e.shear), own.flatMap((e) => e.moment)]
        // elements meet every kink, so that only what their own load adds between their ends can be more
        const within = 6e-2 * size
        for (const [told, found] of [
          [m.maxPull, Math.max(0, ...pull)],
          [m.maxPush, Math.max(0, ...pull.map((p) => -p))],
          [m.maxShearForce, largest(shear)],
          [Math.abs(m.maxMoment), largest(moment)],
        ] as const) {
          expect(told).toBeGreaterThanOrEqual(found - 1e-5 * size)
          expect(told).toBeLessThanOrEqual(found + within)
          if (Math.abs(told - found) < 1e-5 * size) checked++
        }
        expect(m.maxDeflection).toBeGreaterThanOrEqual(largest(own.flatMap((e) => e.across)) * (1 - 1e-6))
        const D = input.members.find((one) => one.name === m.name)!.section.outsideDiameter
        const [area, modulus] = [(Math.PI * D ** 2) / 4, (Math.PI * D ** 3) / 32]
        const stress = Math.max(m.maxPull, m.maxPush) / area + Math.abs(m.maxMoment) / modulus
        expect(m.stress / stress).toBeCloseTo(1, 9)
        const sheared = (4 * m.maxShearForce) / (3 * area)
        expect((m.safetyFactor as number) * Math.max(stress / 5e7, (sheared * Math.sqrt(3)) / 5e7)).toBeCloseTo(1, 9)
      }
      expect(out.safetyFactor).toBe(Math.min(...out.members.map((m) => m.safetyFactor as number)))
      expect(out.members.find((m) => m.name === out.weakest)?.safetyFactor).toBe(out.safetyFactor)
    }
    // most peaks lie at the ends of elements: there the two agree to the last digits
    expect(checked).toBeGreaterThan(90)
  })

  const steel = { section: { outsideDiameter: 0.012 }, modulus: 2e11, strength: 2e8 } as const
  const EI = (2e11 * Math.PI * 0.012 ** 4) / 64

  it("buckles as published for single columns, by its ends", () => {
    const column = (supports: PlaneFrameInput["supports"]) =>
      (planeFrame({
        nodes: [
          { name: "foot", x: 0, y: 0 },
          { name: "top", x: 0, y: 2 },
        ],
        members: [{ name: "column", from: "foot", to: "top", ...steel }],
        supports,
        loads: [{ type: "node", node: "top", up: -100 }],
        countsOwnWeight: false,
      }).stability?.bucklingFactor as number) *
      ((100 * 4) / EI / Math.PI ** 2)
    const top = { type: "roller", node: "top", holds: "sideways" } as const
    const turn = { type: "spring", node: "top", turningStiffness: 1e9 } as const
    expect(column([{ type: "pinned", node: "foot" }, top])).toBeCloseTo(columnEnds["pinned-pinned"].theory, 9)
    expect(column([{ type: "clamped", node: "foot" }])).toBeCloseTo(columnEnds["fixed-free"].theory, 9)
    expect(column([{ type: "clamped", node: "foot" }, top])).toBeCloseTo(columnEnds["fixed-pinned"].theory, 3)
    expect(column([{ type: "clamped", node: "foot" }, top, turn])).toBeCloseTo(columnEnds["fixed-fixed"].theory, 4)
  })

  it("a mast that weighs: 7.837·E·I/L³ of its own weight (A. G. Greenhill, 1881), taken at its full weight all along", () => {
    const out = planeFrame({
      nodes: [
        { name: "foot", x: 0, y: 0 },
        { name: "top", x: 0, y: 3 },
      ],
      members: [{ name: "mast", from: "foot", to: "top", ...steel, density: 7850 }],
      supports: [{ type: "clamped", node: "foot" }],
    })
    const real = (7.837 * EI) / 9 / out.weight
    // Euler's 2.467 for a push all along: safe by three
    expect(out.stability?.bucklingFactor).toBeCloseTo((Math.PI ** 2 * EI) / 4 / 9 / out.weight, 6)
    expect(out.stability?.bucklingFactor as number).toBeLessThan(real)
  })

  it("portals buckle as elements with geometric stiffness do, swaying and held", () => {
    const random = lehmer(12)
    for (let run = 0; run < 6; run++) {
      const [height, span, foot] = [random.real(0.5, 2), random.real(0.4, 2), run % 2 ? "pinned" : "clamped"] as const
      const [left, right] = [random.real(50, 300), random.real(50, 300)]
      const nodes = [
        { name: "a", x: 0, y: 0 },
        { name: "b", x: 0, y: height },
        { name: "c", x: span, y: height },
        { name: "d", x: span, y: 0 },
      ]
      const held = run % 3 === 0
      const out = planeFrame({
        nodes,
        members: [
          { name: "l", from: "a", to: "b", ...steel },
          { name: "t", from: "b", to: "c", ...steel },
          { name: "r", from: "c", to: "d", ...steel },
        ],
        supports: [
          { type: foot, node: "a" },
          { type: foot, node: "d" },
          ...(held ? [{ type: "roller", node: "b", holds: "sideways" } as const] : []),
        ],
        loads: [
          { type: "node", node: "b", up: -left },
          { type: "node", node: "c", up: -right },
        ],
        countsOwnWeight: false,
      })
      // eight elements a member; posts along y, the beam along x; stretch left out: both posts sway by one freedom
      const n = 6
      const sway = 0
      let size = 1
      const turnA = foot === "pinned" ? size++ : -1
      const turnD = foot === "pinned" ? size++ : -1
      const [turnB, turnC] = [size++, size++]
      const chain = (start: readonly [number, number], end: readonly [number, number]) =>
        Array.from({ length: n + 1 }, (_, k) => (k === 0 ? start : k === n ? end : ([size++, size++] as const)))
      // -1 is held; counter-clockwise turns, movement to the left of the way up: minus the sway
      const posts = [chain([-1, turnA], [sway, turnB]), chain([-1, turnD], [sway, turnC])]
      const beam = chain([-1, turnB], [-1, turnC])
      const [k, g]: [Matrix, Matrix] = [zeros(size), zeros(size)]
      const put = (m: Matrix, places: readonly number[], own: Matrix, by: number) => {
        places.forEach((p, i) => {
          places.forEach((q, j) => {
            if (p >= 0 && q >= 0) m[p]![q]! += by * own[i]![j]!
          })
        })
      }
      const over = (at: readonly (readonly [number, number])[], length: number, push: number) => {
        for (let e = 0; e < n; e++) {
          put(k, [...at[e]!, ...at[e + 1]!], elementStiffness(length / n), EI)
          if (push > 0) put(g, [...at[e]!, ...at[e + 1]!], elementPush(length / n), push)
        }
      }
      over(posts[0]!, height, left)
      over(posts[1]!, height, right)
      over(beam, span, 0)
      if (held) k[sway]![sway]! += 1e12
      const factor = leastEigenvalue(k, g)
      expect((out.stability?.bucklingFactor as number) / factor).toBeCloseTo(1, 2)
    }
  })

  it("stability functions: series and closed form join, push and pull, and a straight bar is 4 and 2", () => {
    for (const p of [0.05, -0.05]) {
      const [inside, outside] = [stability(p * (1 - 1e-12)), stability(p * (1 + 1e-12))]
      expect(inside.near / outside.near).toBeCloseTo(1, 9)
      expect(inside.far / outside.far).toBeCloseTo(1, 9)
    }
    expect(stability(0)).toEqual({ near: 4, far: 2 })
    // clamped and pinned: the near stiffness less far²/near vanishes at tan φ = φ
    const { near, far } = stability(4.493409457909064 ** 2)
    expect(near / far).toBeCloseTo(0, 9)
    // φ = 2π, 8.9868, 4π, 15.4505
    expect([39.4, 39.5, 80.7, 80.8, 157.8, 158, 238.6, 238.8].map(clampedCount)).toEqual([0, 1, 1, 2, 2, 3, 3, 4])
  })
})
