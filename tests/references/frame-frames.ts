// Published frames of two and three members.
import { type PlaneFrameInput, planeFrame } from "../../src/frame/index.js"
import type { Check } from "../helpers/references.js"

/** A bar that hardly stretches, as the formulas have it; E·I in N·m². */
const bar = (EI: number) => ({ section: { secondMoment: EI / 2e11, area: 0.05, fibre: 0.01 }, modulus: 2e11, strength: 2e8 })
const portal = (span: number, height: number, EI: number, beamOverPost: number) =>
  ({
    nodes: [
      { name: "A", x: 0, y: 0 },
      { name: "B", x: 0, y: height },
      { name: "C", x: span, y: height },
      { name: "D", x: span, y: 0 },
    ],
    members: [
      { name: "left", from: "A", to: "B", ...bar(EI) },
      { name: "beam", from: "B", to: "C", ...bar(EI * beamOverPost) },
      { name: "right", from: "C", to: "D", ...bar(EI) },
    ],
    countsOwnWeight: false,
  }) satisfies Partial<PlaneFrameInput>
const pinned = (...nodes: string[]) => nodes.map((node) => ({ type: "pinned", node }) as const)
const spread = (load: number, end: number) => ({ type: "spread", member: "beam", startLoad: load, endLoad: load, start: 0, end }) as const

export const frames: Readonly<Record<string, Check>> = {
  "frame-portal-pinned-uniform": ({ load_N_per_m, span_m, height_m, beam_over_post }) => {
    const out = planeFrame({
      ...portal(span_m, height_m, 1000, beam_over_post),
      supports: pinned("A", "D"),
      loads: [spread(load_N_per_m, span_m)],
    })
    const [post, beam] = out.members
    return {
      R_N: out.supports[0]?.up,
      H_N: out.supports[0]?.right,
      corner_moment_N_m: Math.abs(post?.maxMoment as number),
      mid_moment_N_m: beam?.maxMoment,
    }
  },
  "frame-two-member-uniform": ({ load_N_per_m, span_m, height_m, beam_over_post }) => {
    const { nodes, members, countsOwnWeight } = portal(span_m, height_m, 1000, beam_over_post)
    const out = planeFrame({
      nodes: nodes.slice(0, 3),
      members: members.slice(0, 2),
      supports: pinned("A", "C"),
      loads: [spread(load_N_per_m, span_m)],
      countsOwnWeight,
    })
    const [foot, end] = out.supports
    return { RA_N: foot?.up, RC_N: end?.up, H_N: foot?.right, corner_moment_N_m: Math.abs(out.members[0]?.maxMoment as number) }
  },
  "frame-portal-pinned-sideways": ({ load_N, span_m, height_m }) => {
    const out = planeFrame({
      ...portal(span_m, height_m, 1000, 1),
      supports: pinned("A", "D"),
      loads: [{ type: "node", node: "B", right: load_N }],
    })
    const [left, right] = out.supports
    return {
      R_N: right?.up,
      H_N: -((left?.right as number) + (right?.right as number)) / 2,
      corner_moment_N_m: Math.abs(out.members[2]?.maxMoment as number),
    }
  },
  "frame-portal-roller-uniform": ({ load_N_per_m, span_m, height_m, EI_N_m2 }) => {
    const out = planeFrame({
      ...portal(span_m, height_m, EI_N_m2, 1),
      supports: [...pinned("A"), { type: "roller", node: "D" }],
      loads: [spread(load_N_per_m, span_m)],
    })
    return { R_N: out.supports[1]?.up, max_moment_N_m: out.members[1]?.maxMoment, roller_movement_m: out.nodes[3]?.right }
  },
}
