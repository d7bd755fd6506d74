/** Area per ampere of the 700-circular-mil rule, m²/A. */
const areaPerAmpere = 700 * (Math.PI / 4) * 25.4e-6 ** 2

/**
 * Current of a wire in a bundle or confined, by the rule of thumb of 700 circular mils per ampere, A
 * (Handbook of Electronic Tables and Formulas, copper wire table).
 */
export function bundledCurrent(area: number): number {
  return area / areaPerAmpere
}
