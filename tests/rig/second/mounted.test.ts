// Motions mounted on motions, by free bodies: every mass placed in space by rotations of its own, energies differenced over each
// motion's travel; and the same creature written as plain motions, the wrist's place and weight worked out by hand.
import { describe, expect, it } from "vitest"
import { drives } from "../../../src/rig/drives/index.js"
import { assessRig, move, quickMove, type Rig } from "../../../src/rig/index.js"
import { mechanisms } from "../../../src/rig/mechanisms/index.js"
import { effortAt, effortState } from "../../../src/rig/run/motion-model.js"
import { situation } from "../../../src/rig/run/situation.js"
import { standsFor } from "../../../src/rig/run/slowest.js"
import { transmissions } from "../../../src/rig/transmissions/index.js"
import type { RigSi } from "../../../src/rig/whole/faults.js"
import { InputError, type NoSolutionError } from "../../../src/solver/index.js"
import { drawMechanisms, members as drawn, placesIn, randomNumbers } from "../mechanisms/draw.js"

const members = { drives, transmissions, mechanisms } as never
type V = readonly number[]
const add = (a: V, b: V, k = 1): V => a.map((v, i) => v + k * (b[i] as number))
const dot = (a: V, b: V) => a.reduce((sum, v, i) => sum + v * (b[i] as number), 0)
const cross = ([a, b, c]: V, [d, e, f]: V): V => [
  (b as number) * (f as number) - (c as number) * (e as number),
  (c as number) * (d as number) - (a as number) * (f as number),
  (a as number) * (e as number) - (b as number) * (d as number),
]
/** Turned about an axis of any length, by a quaternion. */
const turned = (v: V, axis: V, angle: number): V => {
  const n = Math.sin(angle / 2) / Math.sqrt(dot(axis, axis))
  const [w, u] = [Math.cos(angle / 2), axis.map((k) => k * n)]
  const t = cross(u, v).map((k) => 2 * k)
  return add(add(v, t, w), cross(u, t))
}

interface Mount {
  readonly forward: number
  readonly left: number
  readonly height: number
  readonly heading: number
  readonly tilt: number
}
/** A point of a mechanism's own plane in the wearer's axes. */
const fromOwn = (m: Mount, p: V): V => {
  const x = turned([1, 0, 0], [0, 0, 1], m.heading)
  const y = turned([0, 0, 1], x, m.tilt)
  const z = cross(x, y)
  return add(add(add([m.forward, m.left, m.height], x, p[0]), y, p[1]), z, p[2])
}

const motor = { type: "gearmotor", ratedVoltage: 12, noLoadSpeed: 3, noLoadCurrent: 0.1, loadTorque: 60, loadSpeed: 2, loadCurrent: 20 }
const read = (rig: object) => assessRig.read(rig as never) as unknown as RigSi
const near = (got: number, wanted: number, scale: number, what: string) =>
  expect(Math.abs(got - wanted), `${what}: ${got} against ${wanted}`).toBeLessThan(2e-7 * scale)
const slope = (f: (t: number) => number, h: number) => (8 * (f(h) - f(-h)) - (f(2 * h) - f(-2 * h))) / (12 * h)

/** One motion of the drawn creatures: a mechanism, where it sits, and how far its drive turns. */
interface Drawn {
  readonly si: Record<string, unknown>
  readonly mount: Mount
  readonly turn: number
}

/** Where the masses of the upper motions are, each at its own travel: arms by quaternions about hinges that are themselves carried. */
function placesOf(
  chain: readonly Drawn[],
  at: readonly number[],
  angleOf: (k: number, travel: number) => number,
): { mass: number; at: V }[] {
  const carry = (k: number, point: V): V => {
    let p = point
    for (let i = k; i >= 0; i--) {
      const { si, mount } = chain[i] as Drawn
      const h = si.hinge as { x: number; y: number; z?: number }
      const axis = si.axis as { x: number; y: number; z: number } | undefined
      const hinge = fromOwn(mount, [h.x, h.y, h.z ?? 0])
      const tip = fromOwn(mount, [h.x + (axis?.x ?? 0), h.y + (axis?.y ?? 0), (h.z ?? 0) + (axis?.z ?? 1)])
      p = add(hinge, turned(add(p, hinge, -1), add(tip, hinge, -1), angleOf(i, at[i] as number)))
    }
    return p
  }
  return chain.flatMap(({ si, mount }, k) =>
    (si.masses as { mass: number; radius?: number; angle?: number; x?: number; y?: number; z?: number }[]).map((m) => {
      const h = si.hinge as { x: number; y: number }
      const flat = m.radius !== undefined
      const own = flat
        ? [h.x + (m.radius as number) * Math.cos(m.angle as number), h.y + (m.radius as number) * Math.sin(m.angle as number), 0]
        : [m.x as number, m.y as number, m.z as number]
      return { mass: m.mass, at: carry(k, fromOwn(mount, own)) }
    }),
  )
}

describe("three motions one on another, in space", () => {
  const random = randomNumbers(5)
  const between = (a: number, b: number) => a + (b - a) * random()
  const arms = drawn.filter(([type]) => type === "turned-arm" || type === "skew-hinge")
  const chains = Array.from({ length: 6 }, (_, n) =>
    Array.from({ length: 3 }, (_, k): Drawn => {
      const [, member] = arms[Math.floor(random() * arms.length)] as (typeof arms)[number]
      const found = drawMechanisms(member, 1, 31 * n + k + 1).found[0]
      const mount = { forward: between(-1, 1), left: between(-1, 1), height: between(0, 2), heading: between(-3, 3), tilt: between(-3, 3) }
      return { si: { ...found?.si, type: member.type, springs: [], panels: [], hingeFriction: 0 }, mount, turn: between(0.5, 2) }
    }),
  )
  it.each(chains.map((chain, n) => ({ chain, n })))("holds each against weight, with inertia: $n", ({ chain }) => {
    const names = ["root", "middle", "last"]
    const rig = read({
      version: 2,
      name: "lantern stalk",
      posture: { leanForward: 0.2, leanLeft: -0.3 },
      motions: chain.map(({ si, mount, turn }, k) => ({
        name: names[k],
        ...(k ? { on: names[k - 1] } : {}),
        drive: { ...motor, travel: turn },
        mechanisms: [{ name: "arm", ...si, mount }],
      })),
    })
    const angleOf = (k: number, travel: number) => ((chain[k]?.si.startAngle as number) ?? 0) + travel
    // plumb, square to what is level seen from the side and from behind
    const u = cross([Math.cos(0.2), 0, Math.sin(0.2)], [0, Math.cos(-0.3), Math.sin(-0.3)])
    const up = u.map((v) => v / Math.sqrt(dot(u, u)))
    for (let k = 0; k < 3; k++)
      for (const { stand } of standsFor(rig, k)) {
        const at = situation(members, rig, 4, stand)
        const travel = (chain[k]?.turn as number) * 0.37
        const travels = (t: number) => chain.map(({ turn }, i) => (i === k ? travel + t : turn * (stand?.[i] ?? 0)))
        const placed = (t: number) => placesOf(chain, travels(t), angleOf)
        const energy = (t: number) => placed(t).reduce((sum, m) => sum + 9.80665 * m.mass * dot(m.at, up), 0)
        const h = 1e-3
        const [a, b, c, d] = [placed(h), placed(-h), placed(2 * h), placed(-2 * h)]
        const pick = (list: typeof a, i: number, axis: number) => (list[i] as { at: V }).at[axis] as number
        const speeds = a.map((_, i) =>
          [0, 1, 2].map((k3) => (8 * (pick(a, i, k3) - pick(b, i, k3)) - (pick(c, i, k3) - pick(d, i, k3))) / (12 * h)),
        )
        const inertia = placed(0).reduce((sum, m, i) => sum + m.mass * dot(speeds[i] as V, speeds[i] as V), 0)
        const state = effortState()
        effortAt(at.motions[k] as (typeof at.motions)[number], travel, 1, at.around, state)
        const size = placed(0).reduce((sum, m) => sum + 10 * m.mass, 0)
        near(state.effort, slope(energy, 1e-3), size, `${names[k]}, held`)
        near(state.inertia, inertia, inertia, `${names[k]}, inertia`)
      }
  })
})

describe("what every kind of arm carries", () => {
  const carriers = drawn.filter(([, m]) => drawMechanisms(m, 1, 3).found[0]?.mechanism.carries)
  it("arms, vanes and segments carry; a slide or a scissor array says that it does not", () => {
    expect(carriers.map(([type]) => type).sort()).toEqual(
      ["fan", "folding-chain", "four-bar", "hinge", "pushrod", "skew-hinge", "skew-hinge-rod", "turned-arm"].sort(),
    )
  })
  it.each(carriers)("%s goes where its tip and pins go", (_, member) => {
    const random = randomNumbers(9)
    for (const { mechanism, si } of drawMechanisms(member, 6, 17).found)
      for (const q of placesIn(mechanism, 3, random)) {
        const moving = mechanism.carries?.(q)
        if (!moving) throw new Error("nothing is carried")
        const { frame, turn, rate, turnBend, rateBend } = moving
        const size = Math.abs(mechanism.high - mechanism.low)
        const h = Number.isFinite(size) ? 1e-5 * size : 1e-4
        const pose = mechanism.pose(q)
        // the tip keeps its place on the part, and its speed is the part's
        const own = (at: number) => {
          const f = mechanism.carries?.(at)?.frame as typeof frame
          const away = add(mechanism.pose(at).tip, f.at, -1)
          return [dot(f.x, away), dot(f.y, away), dot(f.z, away)]
        }
        const [a, b] = [own(q), own(q + h)]
        for (const i of [0, 1, 2]) near(a[i] as number, b[i] as number, 1, "tip on the part")
        // where it shows 0 its own frame is the mechanism's: straight outward, or before any swing
        const h0 = si.hinge as { x: number; y: number }
        const segments = si.segments as { length: number }[] | undefined
        const out = (si.length as number | undefined) ?? segments?.reduce((sum, s) => sum + s.length, 0)
        const tip = si.tip as { x: number; y: number; z: number } | undefined
        const zero = tip ? [tip.x, tip.y, tip.z] : [h0.x + (out as number), h0.y, 0]
        for (const i of [0, 1, 2]) near(a[i] as number, zero[i] as number, 1, "tip where it shows 0")
        const tipRate = add(rate, cross(turn, add(pose.tip, frame.at, -1)))
        for (const i of [0, 1, 2]) near(tipRate[i] as number, pose.tipRate[i] as number, 1 + Math.hypot(...pose.tipRate), "tip's speed")
        // slopes by differences of what was just held
        const of = (t: number) => mechanism.carries?.(q + t) as NonNullable<typeof moving>
        const bend = (pick: (m: NonNullable<typeof moving>) => V, i: number) => slope((t) => pick(of(t))[i] as number, h)
        for (const i of [0, 1, 2] as const) {
          const steep = 1 + Math.hypot(...turnBend) + Math.hypot(...rateBend)
          expect(Math.abs(bend((m) => m.turn, i) - turnBend[i])).toBeLessThan(1e-5 * steep)
          expect(Math.abs(bend((m) => m.rate, i) - rateBend[i])).toBeLessThan(1e-5 * steep)
        }
      }
  })
})

// the troupe's heron, small: an upper wing from hanging to level, a fore wing that swings on its end
const upper = { hinge: [0.1, 1.4], length: 0.45, from: (-80 * Math.PI) / 180, turn: 1.3, masses: [[0.3, 0.25]] } as const
const fore = {
  length: 0.4,
  from: (-120 * Math.PI) / 180,
  turn: 1.7,
  masses: [
    [0.12, 0.2],
    [0.05, 0.35],
  ],
} as const
const motorFor = (travel: number) => ({
  ...motor,
  loadTorque: 6,
  loadSpeed: 0.3,
  loadCurrent: 2,
  noLoadSpeed: 0.4,
  travel,
  holdingTorque: 3,
})
const armOf = (
  name: string,
  masses: readonly (readonly [number, number, number?])[],
  length: number,
  startAngle: number,
  mount: object,
) => ({
  name,
  type: "turned-arm",
  length,
  startAngle,
  count: 2,
  mirrored: true,
  mount,
  masses: masses.map(([mass, radius, angle = 0], i) => ({ name: `mass ${i}`, mass, radius, angle })),
})
const place = (left: number, height: number) => ({ left, height })
const heron = (over: object = {}): Rig =>
  ({
    version: 2,
    name: "Small heron",
    motions: [
      {
        name: "wings",
        drive: { ...motorFor(upper.turn), count: 2 },
        mechanisms: [armOf("upper wing", upper.masses, upper.length, upper.from, place(...upper.hinge))],
      },
      {
        name: "wrists",
        on: "wings",
        drive: { ...motorFor(fore.turn), count: 2 },
        // on the end of the upper wing, as it is said while that stands straight out
        mechanisms: [armOf("fore wing", fore.masses, fore.length, fore.from, place(upper.hinge[0] + upper.length, upper.hinge[1]))],
        ...over,
      },
    ],
  }) as unknown as Rig
/** The wrists alone while the wings stand at an angle: their joint is there, and straight out is turned. */
const wristsAt = (wing: number): Rig => {
  const [left, height] = [upper.hinge[0] + upper.length * Math.cos(wing), upper.hinge[1] + upper.length * Math.sin(wing)]
  const mechanisms = [armOf("fore wing", fore.masses, fore.length, fore.from + wing, place(left, height))]
  return {
    version: 2,
    name: "wrists",
    motions: [{ name: "wrists", drive: { ...motorFor(fore.turn), count: 2 }, mechanisms }],
  } as unknown as Rig
}
/** The wings alone with the fore wing's masses fixed to them where they are at an angle of the wrist. */
const wingsWith = (wrist: number): Rig => {
  const far = fore.masses.map(([mass, r]): [number, number, number] => {
    const [x, y] = [upper.length + r * Math.cos(wrist), r * Math.sin(wrist)]
    return [mass, Math.hypot(x, y), Math.atan2(y, x)]
  })
  const mechanisms = [armOf("upper wing", [...upper.masses, ...far], upper.length, upper.from, place(...upper.hinge))]
  return {
    version: 2,
    name: "wings",
    motions: [{ name: "wings", drive: { ...motorFor(upper.turn), count: 2 }, mechanisms }],
  } as unknown as Rig
}
const cycle = (rig: Rig, motion: string) => move({ ...rig, motion }).cycleDuration

describe("a wrist on a wing, against the same as plain motions", () => {
  const wrists = [wristsAt(upper.from), wristsAt(upper.from + upper.turn)]
  const wings = [wingsWith(fore.from), wingsWith(fore.from + fore.turn)]
  it.each([
    ["wrists", wrists, ["wings at the start of its travel", "wings at the end of its travel"]],
    ["wings", wings, ["wrists at the start of its travel", "wrists at the end of its travel"]],
  ] as const)("%s are as slow as at the harder end of the other's travel", (motion, plain, names) => {
    const found = move({ ...heron(), motion })
    const times = plain.map((rig) => cycle(rig, motion))
    expect(Math.abs(found.cycleDuration - Math.max(...times))).toBeLessThan(1e-9 * found.cycleDuration)
    expect(Math.abs((times[0] as number) - (times[1] as number))).toBeGreaterThan(1e-3 * found.cycleDuration)
    expect(found.condition).toBe(names[times.indexOf(Math.max(...times))])
    const quick = quickMove(move.read({ ...heron(), motion }))
    expect(Math.abs((quick?.out.duration ?? 0) + (quick?.back.duration ?? 0) - found.cycleDuration)).toBeLessThan(
      1e-8 * found.cycleDuration,
    )
  })
  it("what has to be held without power, and how hard it falls, is the worst of both ends", () => {
    const findings = assessRig({ ...heron(), contact: { region: "upper-arm-elbow" } } as unknown as Rig).findings
    for (const [motion, plain] of [
      ["wrists", wrists],
      ["wings", wings],
    ] as const)
      for (const id of ["holds-unpowered", "inertia"]) {
        const of = (list: typeof findings) => list.find((f) => f.id === id && f.subject === motion)?.value as number
        const worst = Math.max(...plain.map((rig) => of(assessRig(rig).findings)))
        expect(worst).toBeGreaterThan(0)
        expect(Math.abs(of(findings) / worst - 1), `${id} of ${motion}`).toBeLessThan(1e-6)
      }
  })
  it("masses are counted once: the mass of all worn is that of both arms and the parts", () => {
    const parts = [{ name: "frame", mass: 2, forward: 0, height: 1 }]
    const found = assessRig({ ...heron(), parts, budget: { mass: 9 } } as unknown as Rig).findings.find((f) => f.id === "mass")
    const sum = 2 + 2 * [...upper.masses, ...fore.masses].reduce((all, [m]) => all + m, 0)
    expect(found?.value).toBeCloseTo(sum, 12)
  })
})

describe("motions that hang together and move fast", () => {
  // a quick small motor without load to speak of: motion is all the energy there is
  const fast = (travel: number) => ({
    ...motorFor(travel),
    count: 2,
    noLoadSpeed: 90,
    loadSpeed: 60,
    loadTorque: 0.6,
    loadCurrent: 6,
    noLoadCurrent: 0.1,
  })
  const rig = (programme: readonly object[]): Rig => {
    const plain = heron() as unknown as { motions: { drive: object }[] }
    const turns = [upper.turn, fore.turn]
    return {
      ...plain,
      programme,
      motions: plain.motions.map((m, i) => ({
        ...m,
        drive: fast(turns[i] as number),
        transmission: [{ type: "gear", stages: [{ type: "spur", drivingTeeth: 10, drivenTeeth: 100 }] }],
      })),
    } as unknown as Rig
  }
  it("are refused where they may move at once, and answered one after the other", () => {
    const refused = move.attempt({ ...rig([]), motion: "wrists" })
    expect(refused.ok ? "passes" : refused.error.message).toContain("hang together")
    if (!refused.ok) expect((refused.error as NoSolutionError).noSolution).toBe("coupled")
    const apart = [
      { at: 0, motion: "wings", to: 1 },
      { at: 60, motion: "wrists", to: 1 },
      { at: 120, motion: "wrists", to: 0 },
      { at: 180, motion: "wings", to: 0 },
    ]
    expect(move.attempt({ ...rig(apart), motion: "wrists" }).ok).toBe(true)
  })
})

describe("faults of what carries", () => {
  const faults = (motions: readonly object[]) => {
    try {
      move({ version: 2, name: "x", motions } as never)
    } catch (error) {
      if (error instanceof InputError) return error.issues.map((i) => `${i.path.join(".")}: ${i.received}; ${i.expected}`)
      throw error
    }
    return []
  }
  const arm = (name: string, on?: string, extra: object = {}) => ({
    name,
    ...(on ? { on } : {}),
    drive: motorFor(1),
    mechanisms: [armOf("arm", [[0.1, 0.1]], 0.2, 0, {})],
    ...extra,
  })
  it.each([
    ["an unknown carrier", [arm("a"), arm("b", "c")], 'motions.1.on: "c"; one of "a"'],
    ["itself", [arm("a", "a")], 'motions.0.on: "a", which is carried by this motion; a way that ends at the body'],
    ["a ring", [arm("a", "b"), arm("b", "a")], 'motions.0.on: "b", which is carried by this motion; a way that ends at the body'],
    [
      "four levels",
      [arm("a"), arm("b", "a"), arm("c", "b"), arm("d", "c")],
      "motions.3.on: the 4th motion one on another; at most 3, from the body on",
    ],
    [
      "five carried",
      [arm("a"), ...["b", "c", "d", "e", "f"].map((n) => arm(n, "a"))],
      "motions.5.on: 5 motions mounted on others; at most 4 of a rig's motions",
    ],
    ["an unknown mechanism", [arm("a"), arm("b", "a", { onMechanism: "leg" })], 'motions.1.onMechanism: "leg"; one of "arm"'],
    ["a mechanism of the body", [arm("a", undefined, { onMechanism: "arm" })], "motions.0.onMechanism: onMechanism alone"],
  ])("%s is told by its place", (_, motions, told) => {
    expect(
      faults(motions).some((one) => one.startsWith(told)),
      faults(motions).join("\n"),
    ).toBe(true)
  })
  it("a slide carries nothing", () => {
    const slide = { name: "slide", type: "slider-crank", crank: 0.02, coupler: 0.1, startAngle: 0.2, sliderMass: 0.1 }
    const told = faults([{ name: "a", drive: motorFor(1), mechanisms: [slide] }, arm("b", "a")])
    expect(told).toEqual(['motions.1.on: "slide", a slider-crank, which nothing can be mounted on; an arm, a vane or a segment'])
  })
})
