/**
 * Moment of air on a flat flap that turns about its edge into the wind, N·m:
 * ½·ρ·C_d·w·∫(ω·x + V)²·x·dx over its depth R = ½·ρ·C_d·w·(ω²·R⁴/4 + 2·ω·V·R³/3 + V²·R²/2).
 *
 * Wind and motion add before squaring. Drag of a plate square to the flow, taken strip by strip; no
 * added mass, no gusts. Coefficients of 1.17 to 1.28 are published for plates square to the flow.
 *
 * @param density - air density ρ, kg/m³
 * @param coefficient - drag coefficient C_d
 * @param width - width w along the hinge, m
 * @param depth - depth R from hinge to far edge, m
 * @param speed - angular speed ω of the flap, rad/s
 * @param wind - wind V against it, m/s
 */
export function flapDragMoment(density: number, coefficient: number, width: number, depth: number, speed: number, wind: number): number {
  const reach = (speed ** 2 * depth ** 4) / 4 + (2 * speed * wind * depth ** 3) / 3 + (wind ** 2 * depth ** 2) / 2
  return (density * coefficient * width * reach) / 2
}
