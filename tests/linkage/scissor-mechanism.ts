import type { PlanarLinkageInput } from "../../src/linkage/index.js"

/** A scissor array to build as bars and pins. */
export interface ScissorSketch {
  readonly cells: number
  readonly arm: number
  /** Arm angle from the base line, rad. */
  readonly angle: number
  /** Direction it extends in, from the x axis, rad. */
  readonly direction: number
  /** Weight at the tip and of all arms, N. */
  readonly tip: number
  readonly arms: number
  /** Force against the tip along the direction of extension, N. */
  readonly push?: number
  /** Which base joint stands still; the other slides towards it. */
  readonly held?: "lower" | "upper"
}

/**
 * The array as planarLinkage data: levels of joints L0, R0 … Ln, Rn, middles C0 …; base joint L0 stands
 * still, R0 slides. Driven by the spread between them.
 */
export function scissorMechanism(s: ScissorSketch): PlanarLinkageInput {
  const [along, aside] = [s.arm * Math.sin(s.angle), s.arm * Math.cos(s.angle)]
  const [e, f] = [
    [Math.cos(s.direction), Math.sin(s.direction)],
    // L0 is the joint that stands still; the other lies on the left of the direction where L0 is the lower one
    s.held === "upper" ? [Math.sin(s.direction), -Math.cos(s.direction)] : [-Math.sin(s.direction), Math.cos(s.direction)],
  ] as [[number, number], [number, number]]
  const at = (name: string, u: number, v: number) => ({
    name,
    x: u * along * e[0] + v * aside * f[0],
    y: u * along * e[1] + v * aside * f[1],
  })
  const levels = Array.from({ length: s.cells }, (_, i) => i)
  const tips = [`L${s.cells}`, `R${s.cells}`]
  return {
    pivots: [at("L0", 0, 0), at("guide", 0, 3)],
    points: [at("R0", 0, 1), ...levels.flatMap((i) => [at(`C${i}`, i + 0.5, 0.5), at(`L${i + 1}`, i + 1, 0), at(`R${i + 1}`, i + 1, 1)])],
    bars: levels.flatMap((i) => [
      { from: `L${i}`, to: `R${i + 1}` },
      { from: `R${i}`, to: `L${i + 1}` },
    ]),
    carried: levels.flatMap((i) => [
      { point: `C${i}`, from: `L${i}`, to: `R${i + 1}` },
      { point: `C${i}`, from: `R${i}`, to: `L${i + 1}` },
    ]),
    sliders: [{ point: "R0", from: "L0", to: "guide" }],
    actuators: [{ name: "spread", from: "L0", to: "R0", speed: 1 }],
    loads: [
      // tip load shared by the last two joints, arm weight by the middles
      ...tips.map((point) => ({ point, forceX: (-(s.push ?? 0) * e[0]) / 2, forceY: (-s.tip - (s.push ?? 0) * e[1]) / 2 })),
      ...levels.map((i) => ({ point: `C${i}`, forceY: -s.arms / s.cells })),
    ],
  }
}
