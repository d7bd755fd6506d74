// Published frames of two and three members, roots that give, pins that bend, joints as makers make them.
import { fastening, naturalFrequency, type PlaneFrameInput, pinJoint, planeFrame } from "../../src/frame/index.js"
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
  "root-spring-frequency": ({ stiffness_ratio }) => {
    // E·I/L of 1000 N·m
    const boom = { length: 1, section: { secondMoment: 1e-8 }, modulus: 1e11, massPerLength: 0.5 } as const
    const rigid = naturalFrequency(boom).frequency.low
    const solved = (stiffness_ratio as number[]).map((k) => naturalFrequency({ ...boom, rootTurningStiffness: 1000 * k }))
    return { root: solved.map((out) => out.firstRoot.high), frequency_fraction: solved.map((out) => out.frequency.low / rigid) }
  },
  "frequency-hinged-free": () => {
    // a hinge that holds by a hundred-millionth of E·I/L
    const out = naturalFrequency({
      length: 1,
      section: { secondMoment: 1e-4 },
      modulus: 1e11,
      massPerLength: 50,
      rootTurningStiffness: 0.1,
    })
    return { root_squared: [out.firstRoot.high ** 2, out.secondRoot ** 2, out.thirdRoot ** 2] }
  },
  "pin-bending-en1993": ({ pin_diameter_mm, pin_yield_MPa, gamma_M0 }) => {
    const out = pinJoint({
      force: 5000,
      pinDiameter: pin_diameter_mm / 1000,
      pinStrength: pin_yield_MPa * 1e6,
      thickness: 0.016,
      cheekThickness: 0.01,
    })
    const [moment, stress] = [out.pinMoment as number, out.pinBendingStress as number]
    // what is left of the ellipse once shear is taken out
    const bent = 1 / Math.sqrt((out.pinBendingSafetyFactor as number) ** -2 - out.pinShearSafetyFactor ** -2)
    return { section_modulus_mm3: (moment / stress) * 1e9, bending_resistance_N_m: (bent * moment) / gamma_M0 }
  },
  "screw-withdrawal-spruce": ({ specific_gravity, diameter_in, length_in }) => ({
    withdrawal_lb:
      fastening({
        force: 1,
        joint: { type: "screwed", diameter: diameter_in * 0.0254, threadLength: length_in * 0.0254, woodDensity: 1000 * specific_gravity },
      }).capacity /
      (0.45359237 * 9.80665),
  }),
  "epoxy-shear-steel": () => ({
    shear_strength_MPa: fastening({ force: 1, joint: { type: "glued", material: "steel", overlap: 0.01, width: 0.1 } }).capacity / 1000,
  }),
  "cable-tie-strength": ({ width_mm }) => ({
    strength_kg: (width_mm as number[]).map(
      (w) => fastening({ force: 1, joint: { type: "tied", tieWidth: `${w} mm` as "9 mm" } }).capacity / 9.80665,
    ),
  }),
  "knot-strength": ({ cord_mm, knots }, { expected }) => {
    const [kilograms, shares] = [expected.cord_kg as number, expected.share as number[]]
    const strands = (knots as string[]).map(
      (knot) =>
        fastening({ force: 1, joint: { type: "lashed", turns: 1, cord: `${cord_mm} mm` as "3 mm", knot: knot as "bowline" } })
          .partStrength / 9.80665,
    )
    return { cord_kg: (strands[0] as number) / (shares[0] as number), share: strands.map((s) => s / kilograms) }
  },
}
