import {
  chebyshevPoints,
  type FourBarInput,
  fourBar,
  fourBarLimits,
  freudenstein,
  grashof,
  type MechanismInput,
  type PlanarLinkageInput,
  planarLinkage,
  scissor,
  servoPushrod,
  sliderCrank,
} from "../../src/linkage/index.js"
import type { Check } from "../helpers/references.js"
import { scissorMechanism } from "../linkage/scissor-mechanism.js"

type Numbers = Readonly<Record<string, number>>
type Row = Parameters<Check>[0]

const DEG = Math.PI / 180
const numbers = (inputs: Row) => inputs as Numbers
const deg = (angle: number) => angle / DEG
/** The angle's name nearest to the published one: angles are compared modulo a whole turn (or half a turn). */
const near = (angle: number, published: unknown, period = 360) =>
  deg(angle) - period * Math.round((deg(angle) - (published as number)) / period)
/** A length given in millimetres, inches or nothing (a pure proportion), in metres. */
const length = (inputs: Row, name: string): number => {
  const n = numbers(inputs)
  if (`${name}_mm` in n) return (n[`${name}_mm`] as number) / 1000
  if (`${name}_in` in n) return (n[`${name}_in`] as number) * 0.0254
  return (n[name] as number) / 1000
}
const links = (inputs: Row) => ({
  ground: length(inputs, "ground"),
  input: length(inputs, "input"),
  coupler: length(inputs, "coupler"),
  output: length(inputs, "output"),
})
const isCrossed = (inputs: Row) => String((inputs as Record<string, unknown>).assembly ?? "").includes("on the right")

/** Input of a four-bar row. */
function bar(inputs: Row, crossed = isCrossed(inputs)): FourBarInput {
  const n = numbers(inputs)
  const speed = n.input_speed_rad_s ?? (n.input_speed_rpm === undefined ? 0 : (n.input_speed_rpm * Math.PI) / 30)
  return {
    ...links(inputs),
    inputAngle: (n.input_angle_deg as number) * DEG,
    assembly: crossed ? "crossed" : "open",
    inputSpeed: speed,
    inputAcceleration: n.input_acceleration_rad_s2 ?? 0,
    pointRadius: n.coupler_point_radius_mm === undefined ? null : n.coupler_point_radius_mm / 1000,
    pointAngle: (n.coupler_point_angle_deg ?? 0) * DEG,
  }
}

/** Everything a four-bar row may ask for. */
const fourBarCheck =
  (crossed?: boolean): Check =>
  (inputs, { expected }) => {
    const out = fourBar(bar(inputs, crossed))
    return {
      coupler_angle_deg: near(out.couplerAngle, expected.coupler_angle_deg),
      output_angle_deg: near(out.outputAngle, expected.output_angle_deg),
      coupler_speed_rad_s: out.couplerSpeed,
      output_speed_rad_s: out.outputSpeed,
      coupler_acceleration_rad_s2: out.couplerAcceleration,
      output_acceleration_rad_s2: out.outputAcceleration,
      transmission_angle_acute_deg: deg(out.transmissionAngle),
      px_mm: (out.pointX ?? 0) * 1000,
      py_mm: (out.pointY ?? 0) * 1000,
      pvx_mm_s: (out.pointSpeedX ?? 0) * 1000,
      pvy_mm_s: (out.pointSpeedY ?? 0) * 1000,
    }
  }

const grashofCheck: Check = (inputs) => {
  const out = grashof(links(inputs))
  return {
    grashof_class: out.grashofClass,
    linkage_type: out.linkageType,
    input_full_rotation: out.inputTurns,
    output_full_rotation: out.outputTurns,
  }
}

const limitsCheck: Check = (inputs) => {
  const out = fourBarLimits(links(inputs))
  return {
    crank_angle_outer_deg: deg(out.deadOuter as number),
    crank_angle_inner_deg: deg(out.deadInner as number),
    output_swing_deg: deg(out.outputSwing),
    time_ratio: out.timeRatio,
    input_limit_coupler_output_extended_deg: deg(out.inputExtended as number),
    input_limit_coupler_output_folded_deg: deg(out.inputFolded as number),
    mu_crank_toward_output_deg: deg(out.couplerOutputToward as number),
    mu_crank_away_deg: deg(out.couplerOutputAway as number),
    worst_acute_transmission_deg: deg(out.minTransmissionAngle),
  }
}

/** Input of a slider-crank row. */
const sliderCheck =
  (branch: "open" | "crossed"): Check =>
  (inputs, { expected }) => {
    const n = numbers(inputs)
    const out = sliderCrank({
      crank: length(inputs, "crank"),
      coupler: length(inputs, "coupler"),
      offset: length(inputs, "offset"),
      crankAngle: (n.crank_angle_deg as number) * DEG,
      assembly: branch,
      crankSpeed: n.crank_speed_rad_s ?? 0,
    })
    return {
      coupler_angle_deg: near(out.couplerAngle, expected.coupler_angle_deg),
      slider_position_mm: out.position * 1000,
      slider_position_in: out.position / 0.0254,
      coupler_speed_rad_s: out.couplerSpeed,
    }
  }

const freudensteinCheck: Check = (inputs) => {
  const n = inputs as unknown as { input_angles_deg: number[]; output_angles_deg: number[]; ground_mm: number }
  const out = freudenstein({
    ground: n.ground_mm / 1000,
    inputAngles: n.input_angles_deg.map((a) => a * DEG),
    outputAngles: n.output_angles_deg.map((a) => a * DEG),
  })
  return {
    K1: out.k1,
    K2: out.k2,
    K3: out.k3,
    input_mm: out.input * 1000,
    output_mm: out.output * 1000,
    coupler_mm: out.coupler * 1000,
  }
}

type XY = readonly [number, number]
const polar = (origin: XY, r: number, angle: number): XY => [origin[0] + r * Math.cos(angle), origin[1] + r * Math.sin(angle)]
const named = (points: Readonly<Record<string, XY>>) => Object.entries(points).map(([name, [x, y]]) => ({ name, x, y }))
/** Meeting point of two circles, left or right of the line between their centres: only to sketch a starting pose. */
function meet(a: XY, ra: number, b: XY, rb: number, side: "left" | "right"): XY {
  const f = Math.hypot(b[0] - a[0], b[1] - a[1])
  const u = (f * f + ra * ra - rb * rb) / (2 * f)
  const h = Math.sqrt(Math.max(0, ra * ra - u * u)) * (side === "left" ? 1 : -1)
  const [ex, ey] = [(b[0] - a[0]) / f, (b[1] - a[1]) / f]
  return [a[0] + u * ex - h * ey, a[1] + u * ey + h * ex]
}
/** A sketch is rough: every coordinate rounded, lengths given apart, so that Newton has work to do. */
const rough = ([x, y]: XY): XY => [Math.round(x * 500) / 500, Math.round(y * 500) / 500]

const answer = (input: PlanarLinkageInput) => {
  const out = planarLinkage(input)
  const by = <T extends { readonly name: string }>(list: readonly T[], name: string) => list.find((x) => x.name === name) as T
  return {
    out,
    point: (name: string) => by(out.points, name),
    bar: (name: string) => by(out.bars, name),
    slider: (name: string) => by(out.sliders, name),
    driver: (name: string) => by(out.drivers, name),
  }
}

/** A four-bar of bars, as planarLinkage data, its coupler pin left or right of the diagonal. */
function fourBarMechanism(inputs: Row): MechanismInput & { inputAngle: number } {
  const n = numbers(inputs)
  const { ground, input, coupler, output } = links(inputs)
  const inputAngle = (n.input_angle_deg as number) * DEG
  const a = polar([0, 0], input, inputAngle)
  const b = meet(a, coupler, [ground, 0], output, isCrossed(inputs) ? "right" : "left")
  return {
    inputAngle,
    pivots: named({ O: [0, 0], Q: [ground, 0] }),
    points: named({ A: rough(a), B: rough(b) }),
    bars: [
      { name: "input", from: "O", to: "A", length: input },
      { name: "coupler", from: "A", to: "B", length: coupler },
      { name: "output", from: "Q", to: "B", length: output },
    ],
    cranks: [{ name: "drive", from: "O", to: "A", start: inputAngle, speed: 1 }],
  }
}

const staticsCheck: Check = (inputs) => {
  const n = numbers(inputs)
  const { inputAngle, ...base } = fourBarMechanism(inputs)
  const [along, across] = polar([0, 0], (n.coupler_cg_radius_mm as number) / 1000, (n.coupler_cg_angle_deg as number) * DEG)
  const mechanism = answer({
    ...base,
    points: [...base.points, { name: "G", x: base.points[0]?.x as number, y: 0.001 }],
    carried: [{ point: "G", from: "A", to: "B", along, across }],
    loads: [{ point: "G", forceY: -(n.coupler_weight_N as number) }],
    torques: [{ from: "Q", to: "B", torque: (n.external_torque_on_output_N_mm as number) / 1000 }],
  })
  const pin = (bar: string, point: string) => mechanism.out.pins.find((p) => p.bar === bar && p.point === point)?.force
  const torque = mechanism.driver("drive").torque as number
  return {
    input_torque_N_mm: torque * 1000,
    output_over_input_speed: mechanism.bar("output").speed / mechanism.bar("input").speed,
    mechanical_advantage: fourBar({ ...bar(inputs), pointRadius: null, inputAngle }).mechanicalAdvantage,
    force_ground_on_input_N: pin("input", "O"),
    force_coupler_on_input_N: pin("input", "A"),
    force_output_on_coupler_N: pin("coupler", "B"),
    force_ground_on_output_N: pin("output", "Q"),
  }
}

/**
 * The six-link mechanism with an inverted slider: crank AB about A, rocker CF turned by the block at B, D on the rocker,
 * rod DE, E on a line across the rocker's pivot line at the offset from C.
 */
function marghitu(inputs: Row, rpm: number) {
  const n = numbers(inputs)
  const m = (key: string) => n[`${key}_m`] as number
  const crank = (n.crank_angle_deg as number) * DEG
  const b = polar([0, 0], m("AB"), crank)
  const c: XY = [-m("AC"), 0]
  const along = Math.atan2(b[1] - c[1], b[0] - c[0])
  const d = polar(c, m("CD"), along)
  const line = c[0] + m("slide_offset")
  const e: XY = [line, d[1] - Math.sqrt(m("DE") ** 2 - (line - d[0]) ** 2)]
  return answer({
    pivots: named({ A: [0, 0], C: c, S: [line, 0], T: [line, 1] }),
    points: named({ B: b, D: rough(d), E: rough(e), F: rough(polar(c, m("CF"), along)) }),
    bars: [
      { name: "crank", from: "A", to: "B" },
      { name: "rocker", from: "C", to: "D", length: m("CD") },
      { name: "rod", from: "D", to: "E", length: m("DE") },
    ],
    carried: [{ point: "F", from: "C", to: "D", along: m("CF"), across: 0 }],
    sliders: [
      { name: "block", point: "B", from: "C", to: "D", offset: 0 },
      { name: "output", point: "E", from: "S", to: "T", offset: 0 },
    ],
    cranks: [{ from: "A", to: "B", start: crank, speed: (rpm * Math.PI) / 30 }],
  })
}

/** An inverted slider-crank: rocker c from the output pivot to B, slide line at an angle through B and the crank pin. */
const invertedSlider: Check = (inputs, { expected }) => {
  const n = numbers(inputs)
  const [ground, crank, rocker] = [length(inputs, "ground"), length(inputs, "crank"), length(inputs, "rocker")]
  const gamma = (n.slider_angle_deg as number) * DEG
  const a = polar([0, 0], crank, (n.crank_angle_deg as number) * DEG)
  // sketched by hand from the published answer's neighbourhood, rounded to 5 degrees
  const angle = Math.round((expected.rocker_angle_deg as number) / 5) * 5 * DEG
  const q: XY = [ground, 0]
  const mechanism = answer({
    pivots: named({ O: [0, 0], Q: q }),
    points: named({ A: a, B: polar(q, rocker, angle), S: polar(polar(q, rocker, angle), rocker, angle + gamma) }),
    bars: [
      { name: "crank", from: "O", to: "A" },
      { name: "rocker", from: "Q", to: "B", length: rocker },
    ],
    carried: [{ point: "S", from: "Q", to: "B" }],
    sliders: [{ name: "block", point: "A", from: "B", to: "S", offset: 0 }],
    cranks: [{ from: "O", to: "A" }],
  })
  return {
    rocker_angle_deg: near(mechanism.bar("rocker").angle, expected.rocker_angle_deg),
    sliding_length_in: Math.abs(mechanism.slider("block").position) / 0.0254,
  }
}

const jansen: Check = (inputs) => {
  const n = numbers(inputs)
  const l = (key: string) => (n[`${key}_mm`] as number) / 1000
  const crank = (n.crank_angle_deg as number) * DEG
  const pin = polar([0, 0], l("m"), crank)
  const fixed: XY = [-l("a"), -l("l")]
  const upper = meet(pin, l("j"), fixed, l("b"), "right")
  const lower = meet(pin, l("k"), fixed, l("c"), "left")
  const left = meet(upper, l("e"), fixed, l("d"), "right")
  const knee = meet(left, l("f"), lower, l("g"), "right")
  const foot = meet(knee, l("h"), lower, l("i"), "right")
  const mechanism = answer({
    pivots: named({ O: [0, 0], P: fixed }),
    points: named({ pin, upper: rough(upper), lower: rough(lower), left: rough(left), knee: rough(knee), foot: rough(foot) }),
    bars: [
      ["O", "pin", "m"],
      ["pin", "upper", "j"],
      ["P", "upper", "b"],
      ["pin", "lower", "k"],
      ["P", "lower", "c"],
      ["upper", "left", "e"],
      ["P", "left", "d"],
      ["left", "knee", "f"],
      ["lower", "knee", "g"],
      ["knee", "foot", "h"],
      ["lower", "foot", "i"],
    ].map(([from, to, key]) => ({ from: from as string, to: to as string, length: l(key as string) })),
    cranks: [{ from: "O", to: "pin", start: crank }],
  })
  return Object.fromEntries(
    ["upper", "lower", "left", "knee", "foot"].flatMap((name) => [
      [`${name}_x_mm`, mechanism.point(name).x * 1000],
      [`${name}_y_mm`, mechanism.point(name).y * 1000],
    ]),
  )
}

const watt2: Check = (inputs, { expected }) => {
  const n = numbers(inputs)
  const mm = (key: string) => (n[`${key}_mm`] as number) / 1000
  const t2 = (n.input_angle_deg as number) * DEG
  const [o4, o6]: [XY, XY] = [
    [mm("O4_x"), mm("O4_y")],
    [mm("O6_x"), mm("O6_y")],
  ]
  const a = polar([0, 0], mm("input"), t2)
  const b = meet(a, mm("coupler1"), o4, mm("rocker"), "left")
  const rocker = Math.atan2(b[1] - o4[1], b[0] - o4[0])
  const arm = (n.rocker_arm_offset_deg as number) * DEG
  const c = polar(o4, mm("rocker_second_arm"), rocker + arm)
  const e = meet(c, mm("coupler2"), o6, mm("output"), "left")
  const mechanism = answer({
    pivots: named({ O2: [0, 0], O4: o4, O6: o6 }),
    points: named({ A: rough(a), B: rough(b), C: rough(c), E: rough(e) }),
    bars: [
      { name: "input", from: "O2", to: "A", length: mm("input") },
      { name: "coupler1", from: "A", to: "B", length: mm("coupler1") },
      { name: "rocker", from: "O4", to: "B", length: mm("rocker") },
      { name: "coupler2", from: "C", to: "E", length: mm("coupler2") },
      { name: "output", from: "O6", to: "E", length: mm("output") },
    ],
    carried: [
      {
        point: "C",
        from: "O4",
        to: "B",
        along: mm("rocker_second_arm") * Math.cos(arm),
        across: mm("rocker_second_arm") * Math.sin(arm),
      },
    ],
    cranks: [{ from: "O2", to: "A", start: t2, speed: 1 }],
  })
  return {
    coupler1_angle_deg: near(mechanism.bar("coupler1").angle, expected.coupler1_angle_deg),
    rocker_angle_deg: near(mechanism.bar("rocker").angle, expected.rocker_angle_deg),
    coupler2_angle_deg: near(mechanism.bar("coupler2").angle, expected.coupler2_angle_deg),
    output_angle_deg: near(mechanism.bar("output").angle, expected.output_angle_deg),
    output_pin_x_mm: mechanism.point("E").x * 1000,
    output_pin_y_mm: mechanism.point("E").y * 1000,
    output_speed_ratio: mechanism.bar("output").speed,
  }
}

const watt1: Check = (inputs, { expected }) => {
  const n = numbers(inputs)
  const mm = (key: string) => (n[`${key}_mm`] as number) / 1000
  const t2 = (n.input_angle_deg as number) * DEG
  const o4: XY = [mm("ground"), 0]
  const a = polar([0, 0], mm("input"), t2)
  const b = meet(a, mm("coupler"), o4, mm("rocker"), "left")
  const t3 = Math.atan2(b[1] - a[1], b[0] - a[0])
  const t4 = Math.atan2(b[1] - o4[1], b[0] - o4[0])
  const angle = (key: string) => (n[`${key}_deg`] as number) * DEG
  const c = polar(a, mm("coupler_point_radius"), t3 + angle("coupler_point_angle"))
  const d = polar(o4, mm("rocker_point_radius"), t4 + angle("rocker_point_angle"))
  const e = meet(c, mm("link5"), d, mm("link6"), "left")
  const t6 = Math.atan2(e[1] - d[1], e[0] - d[0])
  const tip = polar(d, mm("tip_radius"), t6 + angle("tip_angle"))
  const place = (radius: string, at: string) => ({ along: mm(radius) * Math.cos(angle(at)), across: mm(radius) * Math.sin(angle(at)) })
  const mechanism = answer({
    pivots: named({ O2: [0, 0], O4: o4 }),
    points: named({ A: rough(a), B: rough(b), C: rough(c), D: rough(d), E: rough(e), tip: rough(tip) }),
    bars: [
      { name: "input", from: "O2", to: "A", length: mm("input") },
      { name: "coupler", from: "A", to: "B", length: mm("coupler") },
      { name: "rocker", from: "O4", to: "B", length: mm("rocker") },
      { name: "link5", from: "C", to: "E", length: mm("link5") },
      { name: "link6", from: "D", to: "E", length: mm("link6") },
    ],
    carried: [
      { point: "C", from: "A", to: "B", ...place("coupler_point_radius", "coupler_point_angle") },
      { point: "D", from: "O4", to: "B", ...place("rocker_point_radius", "rocker_point_angle") },
      { point: "tip", from: "D", to: "E", ...place("tip_radius", "tip_angle") },
    ],
    cranks: [{ from: "O2", to: "A", start: t2 }],
  })
  return {
    ...Object.fromEntries(
      ["coupler", "rocker", "link5", "link6"].map((k) => [`${k}_angle_deg`, near(mechanism.bar(k).angle, expected[`${k}_angle_deg`])]),
    ),
    tip_x_mm: mechanism.point("tip").x * 1000,
    tip_y_mm: mechanism.point("tip").y * 1000,
  }
}

const stephenson3: Check = (inputs, { expected }) => {
  const n = numbers(inputs)
  const mm = (key: string) => (n[`${key}_mm`] as number) / 1000
  const t2 = (n.input_angle_deg as number) * DEG
  const [o4, o6]: [XY, XY] = [
    [mm("ground"), 0],
    [mm("O6_x"), mm("O6_y")],
  ]
  const a = polar([0, 0], mm("input"), t2)
  const b = meet(a, mm("coupler"), o4, mm("output"), "left")
  const delta = (n.coupler_point_angle_deg as number) * DEG
  const p = polar(a, mm("coupler_point_radius"), Math.atan2(b[1] - a[1], b[0] - a[0]) + delta)
  const e = meet(p, mm("dyad_link"), o6, mm("dyad_rocker"), "right")
  const mechanism = answer({
    pivots: named({ O2: [0, 0], O4: o4, O6: o6 }),
    points: named({ A: rough(a), B: rough(b), P: rough(p), E: rough(e) }),
    bars: [
      { name: "input", from: "O2", to: "A", length: mm("input") },
      { name: "coupler", from: "A", to: "B", length: mm("coupler") },
      { name: "rocker", from: "O4", to: "B", length: mm("output") },
      { name: "dyad_link", from: "P", to: "E", length: mm("dyad_link") },
      { name: "dyad_rocker", from: "O6", to: "E", length: mm("dyad_rocker") },
    ],
    carried: [
      {
        point: "P",
        from: "A",
        to: "B",
        along: mm("coupler_point_radius") * Math.cos(delta),
        across: mm("coupler_point_radius") * Math.sin(delta),
      },
    ],
    cranks: [{ from: "O2", to: "A", start: t2 }],
  })
  return {
    ...Object.fromEntries(
      ["coupler", "rocker", "dyad_link", "dyad_rocker"].map((k) => [
        `${k}_angle_deg`,
        near(mechanism.bar(k).angle, expected[`${k}_angle_deg`]),
      ]),
    ),
    px_mm: mechanism.point("P").x * 1000,
    py_mm: mechanism.point("P").y * 1000,
  }
}

/** The in-line slider-crank with the middle of its rod, as planarLinkage data. */
function rodMiddle(inputs: Row) {
  const n = numbers(inputs)
  const [crank, rod] = [(n.crank_mm as number) / 1000, (n.rod_mm as number) / 1000]
  const a = polar([0, 0], crank, (n.crank_angle_from_inner_dead_centre_deg as number) * DEG)
  const x = a[0] + Math.sqrt(rod ** 2 - a[1] ** 2)
  return answer({
    pivots: named({ O: [0, 0], T: [1, 0] }),
    points: named({ A: a, P: [x, 0], M: [(a[0] + x) / 2, a[1] / 2] }),
    bars: [
      { name: "crank", from: "O", to: "A" },
      { name: "rod", from: "A", to: "P" },
    ],
    carried: [{ point: "M", from: "A", to: "P" }],
    sliders: [{ point: "P", from: "O", to: "T" }],
    cranks: [{ from: "O", to: "A", speed: ((n.speed_rpm as number) * Math.PI) / 30 }],
  })
}

/** The crank and slotted lever over a whole turn: extremes of the lever's angle from the line of centres. */
const quickReturn: Check = (inputs) => {
  const n = numbers(inputs)
  const [d, r, l] = [n.centre_distance_mm as number, n.crank_mm as number, n.lever_mm as number].map((v) => v / 1000) as [
    number,
    number,
    number,
  ]
  const steps = 360
  const out = planarLinkage({
    pivots: named({ C: [0, 0], L: [-d, 0] }),
    points: named({ B: [r, 0], E: [l - d, 0] }),
    bars: [
      { name: "crank", from: "C", to: "B" },
      { name: "lever", from: "L", to: "E" },
    ],
    sliders: [{ name: "slot", point: "B", from: "L", to: "E" }],
    cranks: [{ from: "C", to: "B", start: 0, end: 2 * Math.PI }],
    steps,
    trace: "E",
  })
  const angles = out.path.map((p) => Math.atan2(p.y, p.x + d))
  const [high, low] = [Math.max(...angles), Math.min(...angles)]
  const forward = (angles.indexOf(low) - angles.indexOf(high) + steps) % steps
  const heights = out.path.map((p) => p.y)
  return {
    half_swing_deg: deg((high - low) / 2),
    time_ratio: forward / (steps - forward),
    stroke_mm: (Math.max(...heights) - Math.min(...heights)) * 1000,
  }
}
// the lever goes up while the crank turns from one tangent point to the other the short way, down the long way
const quickReturnCheck: Check = (inputs, row) => {
  const out = quickReturn(inputs, row)
  const ratio = out.time_ratio as number
  return { ...out, time_ratio: Math.max(ratio, 1 / ratio) }
}

const pantograph: Check = (inputs) => {
  const n = numbers(inputs)
  const k = n.ratio as number
  const p: XY = [(n.px_mm as number) / 1000, (n.py_mm as number) / 1000]
  const [vx, vy] = [(n.pvx_mm_s as number) / 1000, (n.pvy_mm_s as number) / 1000]
  // long arms O-E and E-Q, short bars D-P and P-F make the parallelogram D-P-F-E
  const arm = 0.12
  const q: XY = [k * p[0], k * p[1]]
  const e = meet([0, 0], arm, q, arm, "left")
  const d: XY = [e[0] / k, e[1] / k]
  const f: XY = [p[0] + e[0] - d[0], p[1] + e[1] - d[1]]
  const [g, h]: [XY, XY] = [
    [0.2, 0.2],
    [-0.1, 0.3],
  ]
  const rate = (from: XY) => ((p[0] - from[0]) * vx + (p[1] - from[1]) * vy) / Math.hypot(p[0] - from[0], p[1] - from[1])
  const mechanism = answer({
    pivots: named({ O: [0, 0], G: g, H: h }),
    points: named({ E: e, D: d, P: p, F: f, Q: q }),
    bars: [
      { from: "O", to: "E" },
      { from: "E", to: "Q" },
      { from: "D", to: "P" },
      { from: "P", to: "F" },
    ],
    carried: [
      { point: "D", from: "O", to: "E" },
      { point: "F", from: "E", to: "Q" },
    ],
    actuators: [
      { name: "g", from: "G", to: "P", speed: rate(g) },
      { name: "h", from: "H", to: "P", speed: rate(h) },
    ],
    loads: [{ point: "Q", forceX: n.output_force_N as number }],
  })
  // both drivers' forces put together are what holds P
  const push = (name: string, from: XY): XY => {
    const force = mechanism.driver(name).force as number
    const r = Math.hypot(p[0] - from[0], p[1] - from[1])
    return [(force * (p[0] - from[0])) / r, (force * (p[1] - from[1])) / r]
  }
  const [a, b] = [push("g", g), push("h", h)]
  const output = mechanism.point("Q")
  return {
    qx_mm: output.x * 1000,
    qy_mm: output.y * 1000,
    qvx_mm_s: output.speedX * 1000,
    qvy_mm_s: output.speedY * 1000,
    input_force_N: Math.hypot(a[0] + b[0], a[1] + b[1]),
  }
}

/** The flap's air moment as the servo meets it: a parallelogram of horns, so that flap and servo turn alike. */
const flapDragCheck: Check = (inputs) => {
  const n = numbers(inputs)
  const out = servoPushrod({
    pivotDistance: 0.1,
    servoHorn: 0.02,
    flapHorn: 0.02,
    flapWidth: n.chord_m as number,
    flapDepth: n.span_m as number,
    servoSpeed: n.speed_rad_s as number,
    windSpeed: n.wind_m_s ?? 0,
    dragCoefficient: n.drag_coefficient as number,
    airDensity: n.air_density_kg_m3 as number,
  })
  return { drag_torque_N_m: out.peakTorque }
}

/** Published checks of the mechanisms, by row id. */
export const mechanismChecks: Readonly<Record<string, Check>> = {
  "chebyshev-spacing-3": (inputs) => {
    const n = numbers(inputs)
    const [x1, x2, x3] = chebyshevPoints(n.start as number, n.end as number, n.count as number)
    return { x1, x2, x3 }
  },
  "chebyshev-straight-line": (inputs) => {
    const n = numbers(inputs)
    const middle = (angle: number) =>
      fourBar({
        ground: length(inputs, "ground"),
        input: length(inputs, "crank"),
        coupler: length(inputs, "coupler"),
        output: length(inputs, "other_crank"),
        inputAngle: angle * DEG,
        assembly: "crossed",
        pointRadius: length(inputs, "coupler") / 2,
      })
    const [mid, test] = [middle(n.input_angle_mid_deg as number), middle(n.input_angle_test_deg as number)]
    return {
      mid_x_at_symmetric_mm: (mid.pointX as number) * 1000,
      mid_y_at_symmetric_mm: (mid.pointY as number) * 1000,
      mid_x_at_test_mm: (test.pointX as number) * 1000,
      mid_y_at_test_mm: (test.pointY as number) * 1000,
    }
  },
  "coriolis-marghitu-5-2": (inputs) => {
    const n = numbers(inputs)
    const angle = (n.angle_deg as number) * DEG
    const r = n.r_m as number
    const mechanism = answer({
      pivots: named({ O: [0, 0] }),
      points: named({ E: polar([0, 0], 2, angle), P: polar([0, 0], r, angle) }),
      bars: [{ name: "line", from: "O", to: "E" }],
      sliders: [{ point: "P", from: "O", to: "E" }],
      cranks: [{ from: "O", to: "E", start: angle, speed: n.speed_rad_s as number, acceleration: n.acceleration_rad_s2 as number }],
      actuators: [{ from: "O", to: "P", start: r, speed: n.rdot_m_s as number, acceleration: n.rddot_m_s2 as number }],
    })
    const p = mechanism.point("P")
    return {
      vx_m_s: p.speedX,
      vy_m_s: p.speedY,
      ax_m_s2: p.accelerationX,
      ay_m_s2: p.accelerationY,
      a_magnitude_m_s2: Math.hypot(p.accelerationX, p.accelerationY),
    }
  },
  "deadpoints-norton-links": limitsCheck,
  "deadpoints-wing": limitsCheck,
  "flap-drag-torque": flapDragCheck,
  "flap-drag-torque-wind": flapDragCheck,
  "fourbar-khurmi-7-1": fourBarCheck(),
  "fourbar-norton-4-1-crossed": fourBarCheck(true),
  "fourbar-norton-4-1-open": fourBarCheck(),
  "fourbar-norton-6-7-velocity": fourBarCheck(),
  "fourbar-norton-7-1-acceleration": fourBarCheck(),
  "fourbar-norton-p4-row-a-open": fourBarCheck(),
  "fourbar-norton-p4-row-e-crossed": fourBarCheck(true),
  "fourbar-norton-p4-row-e-open": fourBarCheck(),
  "fourbar-norton-p4-row-i-crossed": fourBarCheck(true),
  "fourbar-norton-p4-row-i-open": fourBarCheck(),
  "fourbar-norton-p4-row-m-crossed": fourBarCheck(true),
  "fourbar-norton-p4-row-m-open": fourBarCheck(),
  "fourbar-norton-p6-row-a-crossed": fourBarCheck(true),
  "fourbar-norton-p6-row-a-open": fourBarCheck(),
  "fourbar-num-crank-rocker-1": fourBarCheck(),
  "fourbar-num-crank-rocker-2": fourBarCheck(),
  "fourbar-num-crank-rocker-crossed": fourBarCheck(),
  "fourbar-num-double-crank": fourBarCheck(),
  "fourbar-num-double-rocker": fourBarCheck(),
  "fourbar-num-near-toggle": fourBarCheck(),
  "fourbar-num-parallelogram": fourBarCheck(),
  "fourbar-num-triple-rocker": fourBarCheck(),
  "fourbar-num-wing-fold": fourBarCheck(),
  "fourbar-statics-1": staticsCheck,
  "fourbar-statics-2": staticsCheck,
  "fourbar-statics-3": staticsCheck,
  "freudenstein-1": freudensteinCheck,
  "freudenstein-2": freudensteinCheck,
  "grashof-1": grashofCheck,
  "grashof-2": grashofCheck,
  "grashof-3": grashofCheck,
  "grashof-5": grashofCheck,
  "grashof-7": grashofCheck,
  "inverted-slider-marghitu-5-5-acceleration": (inputs) => {
    const mechanism = marghitu(inputs, numbers(inputs).crank_speed_rpm as number)
    const block = mechanism.slider("block")
    return {
      rocker_acceleration_rad_s2: mechanism.bar("rocker").acceleration,
      sliding_acceleration_magnitude_m_s2: Math.abs(block.acceleration),
      coriolis_m_s2: Math.abs(2 * mechanism.bar("rocker").speed * block.speed),
    }
  },
  "inverted-slider-marghitu-5-5-velocity": (inputs) => {
    const mechanism = marghitu(inputs, numbers(inputs).crank_speed_rpm as number)
    return {
      rocker_speed_rad_s: mechanism.bar("rocker").speed,
      sliding_speed_magnitude_m_s: Math.abs(mechanism.slider("block").speed),
    }
  },
  "inverted-slider-norton-p4-row-a": invertedSlider,
  "inverted-slider-norton-p4-row-c": invertedSlider,
  "inverted-slider-norton-p4-row-e": invertedSlider,
  "jansen-leg-0": jansen,
  "jansen-leg-90": jansen,
  "jansen-leg-200": jansen,
  "pantograph-ratio": pantograph,
  "quick-return-khurmi-5-2": quickReturnCheck,
  "scissor-jack-hibbeler-11-2": (inputs) => {
    const n = numbers(inputs)
    const angle = (n.link_angle_deg as number) * DEG
    const out = scissor({ cells: 2, armLength: 0.3, foldedAngle: angle, extendedAngle: angle + 0.1, push: n.load_N as number })
    return { screw_force_N: out.forceFolded }
  },
  "scissor-oblique-actuator": (inputs) => {
    const n = numbers(inputs)
    const stages = n.stages as number
    const mechanism = answer({
      ...scissorMechanism({
        cells: stages,
        arm: (n.link_length_mm as number) / 1000,
        angle: (n.link_angle_deg as number) * DEG,
        direction: Math.PI / 2,
        tip: n.load_N as number,
        arms: n.mechanism_weight_N as number,
        held: "upper",
      }),
      cranks: [],
      actuators: [{ name: "oblique", from: "L0", to: "C1", speed: 1 }],
    })
    return {
      actuator_length_mm: (mechanism.driver("oblique").length as number) * 1000,
      // the arm turns as the actuator lengthens: the inverse of its speed for a unit rate
      dL_dangle_mm_per_rad: 1000 / mechanism.bar("L0-R1").speed,
      actuator_force_N: mechanism.driver("oblique").force,
    }
  },
  "scissor-n-stage": (inputs) => {
    const n = numbers(inputs)
    const angle = (n.link_angle_deg as number) * DEG
    const out = scissor({
      cells: n.stages as number,
      armLength: (n.link_length_mm as number) / 1000,
      foldedAngle: angle,
      extendedAngle: angle + 0.1,
      tipMass: (n.load_N as number) / 9.80665,
      armsMass: (n.mechanism_weight_N as number) / 9.80665,
    })
    return {
      height_mm: out.spanFolded * 1000,
      spread_mm: out.spreadFolded * 1000,
      extension_per_unit_closing: out.ratioFolded,
      actuator_force_N: out.forceFolded,
    }
  },
  "sixbar-marghitu-5-3-angles": (inputs, { expected }) => {
    const mechanism = marghitu(inputs, 0)
    return {
      rocker_angle_deg: near(mechanism.bar("rocker").angle, expected.rocker_angle_deg, 180),
      rod_angle_deg: near(mechanism.bar("rod").angle, expected.rod_angle_deg, 180),
    }
  },
  "sixbar-marghitu-5-5-output-velocity": (inputs) => {
    const mechanism = marghitu(inputs, numbers(inputs).crank_speed_rpm as number)
    const f = mechanism.point("F")
    return {
      rod_speed_rad_s: mechanism.bar("rod").speed,
      // printed as a size: with D and F moving down the output goes down too
      slider_speed_m_s: Math.abs(mechanism.slider("output").speed),
      vF_x_m_s: f.speedX,
      vF_y_m_s: f.speedY,
    }
  },
  "sixbar-stephenson3-40": stephenson3,
  "sixbar-watt1-80": watt1,
  "sixbar-watt1-140": watt1,
  "sixbar-watt2-50": watt2,
  "sixbar-watt2-160": watt2,
  "sixbar-watt2-275": watt2,
  "slidercrank-khurmi-8-1-acc": (inputs) => {
    const mechanism = rodMiddle(inputs)
    const m = mechanism.point("M")
    return {
      midpoint_acceleration_m_s2: Math.hypot(m.accelerationX, m.accelerationY),
      rod_angular_acceleration_rad_s2: Math.abs(mechanism.bar("rod").acceleration),
    }
  },
  "slidercrank-khurmi-8-1-vel": (inputs) => {
    const mechanism = rodMiddle(inputs)
    const m = mechanism.point("M")
    return { midpoint_velocity_m_s: Math.hypot(m.speedX, m.speedY), rod_angular_speed_rad_s: Math.abs(mechanism.bar("rod").speed) }
  },
  "slidercrank-norton-4-2-crossed": sliderCheck("crossed"),
  "slidercrank-norton-4-2-open": sliderCheck("open"),
  "slidercrank-norton-6-8-w3": sliderCheck("open"),
  "slidercrank-norton-p4-row-a-crossed": sliderCheck("crossed"),
  "slidercrank-norton-p4-row-a-open": sliderCheck("open"),
  "slidercrank-norton-p4-row-c-crossed": sliderCheck("crossed"),
  "slidercrank-norton-p4-row-c-open": sliderCheck("open"),
  "slidercrank-norton-p4-row-g-open": sliderCheck("open"),
  "toggle-limits-double-rocker": limitsCheck,
  "toggle-limits-triple-rocker": limitsCheck,
  "transmission-extremes-norton-links": limitsCheck,
  "virtual-work-hibbeler-11-1": (inputs) => {
    const n = numbers(inputs)
    const [link, cable] = [(n.link_angle_deg as number) * DEG, (n.cable_angle_deg as number) * DEG]
    const p = polar([0, 0], 1, link)
    const mechanism = answer({
      pivots: named({ O: [0, 0], K: [p[0] - Math.cos(cable), p[1] + Math.sin(cable)] }),
      points: named({ P: p }),
      bars: [{ from: "O", to: "P" }],
      actuators: [{ name: "cable", from: "K", to: "P" }],
      loads: [{ point: "P", forceY: -(n.weight_lb as number) }],
    })
    // a pull is negative; any unit of force serves, the ratio is what counts
    return { cable_tension_lb: -(mechanism.driver("cable").force as number) }
  },
}

/** Expected keys that a check leaves out, and why. */
export const mechanismWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "fourbar-num-parallelogram": {
    coupler_speed_rad_s: "an exact zero under a relative tolerance allows no rounding; held to 1e-14 in tests/linkage/four-bar.test.ts",
    coupler_acceleration_rad_s2:
      "an exact zero under a relative tolerance allows no rounding; held to 1e-14 in tests/linkage/four-bar.test.ts",
  },
}
