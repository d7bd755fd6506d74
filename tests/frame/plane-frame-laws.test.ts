import { describe, expect, it } from "vitest"
import { drawPlaneFrame, type PlaneFrameInput, planeFrame } from "../../src/frame/index.js"

const largest = (list: readonly number[]) => Math.max(...list.map(Math.abs))

describe("planeFrame", () => {
  const tube = { section: { outsideDiameter: "20 mm", wall: "1.5 mm" }, material: "aluminium-6061" } as const
  const square = (supports: PlaneFrameInput["supports"], joint: "rigid" | "pinned" = "rigid"): PlaneFrameInput => ({
    nodes: [
      { name: "a", x: 0, y: 0 },
      { name: "b", x: 0, y: 1 },
      { name: "c", x: 1, y: 1 },
      { name: "d", x: 1, y: 0 },
    ],
    members: [
      { name: "left", from: "a", to: "b", startJoint: joint, endJoint: joint, ...tube },
      { name: "top", from: "b", to: "c", startJoint: joint, endJoint: joint, ...tube },
      { name: "right", from: "c", to: "d", startJoint: joint, endJoint: joint, ...tube },
    ],
    supports,
    loads: [{ type: "node", node: "b", right: 10 }],
  })
  const refusal = (input: PlaneFrameInput) => {
    const outcome = planeFrame.attempt(input)
    return !outcome.ok && "noSolution" in outcome.error ? outcome.error : null
  }
  const both = [
    { type: "pinned", node: "a" },
    { type: "pinned", node: "d" },
  ] as const

  it("refuses what can move, and says which node and how", () => {
    expect(refusal(square(both))).toBeNull()
    expect(refusal(square(both, "pinned"))?.values).toMatchObject({ move: "slide sideways" })
    expect(refusal(square([{ type: "pinned", node: "a" }]))?.shortBy).toBe(1)
    expect(refusal(square([{ type: "roller", node: "a" }]))?.shortBy).toBe(2)
    expect(
      refusal(
        square([
          { type: "roller", node: "a" },
          { type: "roller", node: "d" },
        ]),
      )?.values,
    ).toMatchObject({ move: "slide sideways" })
  })

  it("is the same frame turned end for end, mirrored, and with its members drawn the other way round", () => {
    const one = planeFrame(square(both))
    const back = square(both)
    const turned = planeFrame({ ...back, members: back.members.map((m) => ({ ...m, from: m.to, to: m.from })) })
    one.members.forEach((m, i) => {
      const other = turned.members[i]!
      for (const key of ["maxPull", "maxPush", "maxShearForce", "maxDeflection", "stress"] as const)
        expect(other[key]).toBeCloseTo(m[key], 6)
      expect(Math.abs(other.maxMoment)).toBeCloseTo(Math.abs(m.maxMoment), 9)
    })
    const mirrored = planeFrame({
      ...back,
      nodes: back.nodes.map((n) => ({ ...n, x: -(n.x as number) })),
      loads: [{ type: "node", node: "b", right: -10 }],
    })
    mirrored.nodes.forEach((n, i) => {
      expect(n.right).toBeCloseTo(-one.nodes[i]!.right, 12)
      expect(n.up).toBeCloseTo(one.nodes[i]!.up, 12)
    })
    expect(mirrored.stability?.bucklingFactor).toBeCloseTo(one.stability?.bucklingFactor as number, 4)
  })

  it("takes every material at whichever end of its range gives more", () => {
    const mixed = (materials: readonly ["glass-pultruded" | number, "softwood" | number]): PlaneFrameInput => {
      const of = (m: string | number) =>
        typeof m === "number" ? { modulus: m, strength: 1e8, density: 1 } : { material: m as "softwood", density: 1 }
      const base = square(both)
      return {
        ...base,
        members: base.members.map((m, i) => ({
          ...m,
          material: null,
          section: { outsideDiameter: 0.02 },
          ...of(materials[i === 1 ? 0 : 1]),
        })),
      }
    }
    const out = planeFrame(mixed(["glass-pultruded", "softwood"]))
    const corners = [12.4e9, 41.4e9].flatMap((a) => [5.4e9, 11e9].map((b) => planeFrame(mixed([a, b]))))
    out.members.forEach((m, i) => {
      expect(Math.abs(m.maxMoment)).toBeCloseTo(largest(corners.map((c) => c.members[i]!.maxMoment)), 9)
      expect(m.maxPush).toBeCloseTo(Math.max(...corners.map((c) => c.members[i]!.maxPush)), 9)
    })
    expect(out.maxDisplacement).toBeCloseTo(Math.max(...corners.map((c) => c.maxDisplacement)), 12)
    expect(out.stability?.bucklingFactor).toBeCloseTo(Math.min(...corners.map((c) => c.stability?.bucklingFactor as number)), 6)
    // movements and reactions are those of the softest
    expect(out.nodes[1]?.right).toBeCloseTo(corners[0]!.nodes[1]!.right, 12)
    expect(out.supports[0]?.up).toBeCloseTo(corners[0]!.supports[0]!.up as number, 9)
  })

  it("a truss of pinned bars only pulls and pushes, as the balance of its nodes says", () => {
    const out = planeFrame({
      nodes: [
        { name: "wall", x: 0, y: 0 },
        { name: "hook", x: 0, y: 0.6 },
        { name: "tip", x: 0.8, y: 0.6 },
      ],
      members: [
        { name: "tie", from: "hook", to: "tip", startJoint: "pinned", endJoint: "pinned", ...tube },
        { name: "strut", from: "wall", to: "tip", startJoint: "pinned", endJoint: "pinned", ...tube },
      ],
      supports: [
        { type: "pinned", node: "wall" },
        { type: "pinned", node: "hook" },
      ],
      loads: [{ type: "node", node: "tip", up: -30 }],
      countsOwnWeight: false,
    })
    // 3-4-5: the strut takes 30·5/3, the tie 30·4/3
    expect(out.members.map((m) => [m.maxPull, m.maxPush])).toEqual([
      [expect.closeTo(40, 9), 0],
      [0, expect.closeTo(50, 9)],
    ])
    expect(out.nodes[2]?.turn).toBeNull()
    expect(out.members.every((m) => Math.abs(m.maxMoment) < 1e-9)).toBe(true)
    const I = (Math.PI * (0.02 ** 4 - 0.017 ** 4)) / 64
    expect(out.stability?.bucklingFactor).toBeCloseTo((Math.PI ** 2 * 68.9e9 * I) / 50, 3)
  })

  it("a slanted row of slender members buckles as Euler's mast, however many, or is refused as too unlike", () => {
    const [angle, each, area, modulus, load] = [0.52, 0.4, 1e-4, 7e10, 1e-3]
    for (const count of [1, 12, 25, 39]) {
      const row = (unlike: number): PlaneFrameInput => ({
        nodes: Array.from({ length: count + 1 }, (_, i) => ({
          name: `${i}`,
          x: -8 + i * each * Math.cos(angle),
          y: -8 + i * each * Math.sin(angle),
        })),
        members: Array.from({ length: count }, (_, i) => ({
          ...{ name: `${i}`, from: `${i}`, to: `${i + 1}`, modulus, strength: 2e8 },
          section: { secondMoment: (each ** 2 * area) / 3 / unlike, area, fibre: 0.01 },
        })),
        supports: [{ type: "clamped", node: "0" }],
        loads: [{ type: "node", node: `${count}`, right: -load * Math.cos(angle), up: -load * Math.sin(angle) }],
        countsOwnWeight: false,
      })
      // a thousandth of the sum that rounding in 53 digits leaves, over the cube of the count
      const most = Math.min(1e10, (1e-3 * 2 ** 52) / count ** 3)
      const out = planeFrame(row(most * 0.99))
      const euler = ((Math.PI / (2 * count * each)) ** 2 * modulus * ((each ** 2 * area) / 3 / most / 0.99)) / load
      expect(Math.abs((out.stability?.bucklingFactor as number) / euler - 1), `${count} members`).toBeLessThan(5e-3)
      const refused = planeFrame.attempt(row(most * 1.01))
      expect(!refused.ok && "issues" in refused.error && refused.error.issues.map((i) => i.path.join("."))).toEqual(["members"])
    }
  })

  it("a frame that only hangs does not buckle", () => {
    const out = planeFrame({
      nodes: [
        { name: "hook", x: 0, y: 0 },
        { name: "lantern", x: 0, y: -1 },
      ],
      members: [{ name: "rod", from: "hook", to: "lantern", ...tube }],
      supports: [{ type: "clamped", node: "hook" }],
      loads: [{ type: "node", node: "lantern", up: -20 }],
    })
    expect(out.stability).toBeNull()
    expect(out.members[0]?.maxPull).toBeCloseTo(20 + out.weight, 9)
    expect(out.members[0]?.maxPush).toBe(0)
  })

  it("draws members by name, supports and loads, safe inside a page, and nothing of what is refused", () => {
    const picture = drawPlaneFrame(planeFrame.read(planeFrame.example)) as string
    for (const { name } of planeFrame.example.members) expect(picture).toContain(`>${name}<`)
    expect(picture).not.toMatch(/NaN|undefined|Infinity/)
    const odd = square(both)
    const named = drawPlaneFrame(planeFrame.read({ ...odd, members: odd.members.map((m) => ({ ...m, name: `<${m.name}>` })) })) as string
    expect(named).not.toContain("<left>")
    expect(drawPlaneFrame(planeFrame.read(square(both, "pinned")))).toBeNull()
  })

  it("draws moments on the side that is stretched: below a bar that sags", () => {
    const bar: PlaneFrameInput = {
      nodes: [
        { name: "a", x: 0, y: 0 },
        { name: "b", x: 1, y: 0 },
      ],
      members: [{ name: "bar", from: "a", to: "b", ...tube }],
      supports: [
        { type: "pinned", node: "a" },
        { type: "roller", node: "b" },
      ],
      loads: [{ type: "force", member: "bar", force: 10, position: 0.5 }],
    }
    expect(planeFrame(bar).members[0]?.maxMoment).toBeGreaterThan(0)
    const filled = (drawPlaneFrame(planeFrame.read(bar)) as string).match(/<path d="([^"]+)" fill="#2a7f62"/)?.[1] as string
    const ys = filled.match(/[ML][^MLZ]+/g)?.map((p) => Number(p.split(" ")[1])) as number[]
    // down the page is more
    expect(Math.max(...ys)).toBeGreaterThan((ys[0] as number) + 20)
    expect(Math.min(...ys)).toBeCloseTo(ys[0] as number, 3)
  })
})
