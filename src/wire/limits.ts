/** Area per ampere of the 700-circular-mil rule, m²/A: a rule of thumb for wire in small bundles. */
const areaPerAmpere = 700 * (Math.PI / 4) * 25.4e-6 ** 2

/**
 * Current of a wire by 700 circular mils per ampere, A.
 * Handbook of Electronic Tables and Formulas, copper wire table (700 cmil/A).
 */
export function chassisCurrent(area: number): number {
  return area / areaPerAmpere
}
