import { brent, theRoot } from "../numeric/index.js"

/** Prandtl number of air near room temperature (Incropera et al., 2007, table A.4: 0.707 at 300 K). */
export const airPrandtl: number = 707 / 1000
/** Stefan–Boltzmann constant, W/(m²·K⁴) (CODATA 2018, exact to the digits given). */
export const stefanBoltzmann = 5.670374419e-8

/**
 * Surface heat transfer of a horizontal cylinder in still air, convection and radiation, W/(m²·K).
 *
 * Convection: S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18, 1975, 1049. Air at the film
 * temperature and 101 325 Pa: conductivity 0.0263·(T/300 K)^0.865 W/(m·K) (a fit to Incropera et al.,
 * Fundamentals of Heat and Mass Transfer, 2007, table A.4, within 1 % from 250 to 450 K), viscosity by
 * Sutherland's formula (F. M. White, Viscous Fluid Flow, table 1-2).
 */
export function surfaceCoefficient(diameter: number, ambient: number, rise: number, emissivity: number): number {
  const [ta, ts] = [ambient + 273.15, ambient + 273.15 + rise]
  const tf = ta + rise / 2
  const conductivity = 0.0263 * (tf / 300) ** 0.865
  const viscosity = 1.716e-5 * (tf / 273.15) ** 1.5 * ((273.15 + 110.4) / (tf + 110.4))
  const nu = viscosity / (101325 / (287.05 * tf))
  const rayleigh = (9.80665 * rise * diameter ** 3 * airPrandtl) / (tf * nu ** 2)
  const nusselt = (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / airPrandtl) ** (9 / 16)) ** (8 / 27)) ** 2
  return (nusselt * conductivity) / diameter + emissivity * stefanBoltzmann * (ts ** 2 + ta ** 2) * (ts + ta)
}

/** A heated wire, one of `wires` alike, as thermal resistances for one metre of it. */
export interface HeatPath {
  /** Outer diameter of the wire, or of the bundle it lies in, m. */
  readonly outerDiameter: number
  /** Wires that share the outer surface. */
  readonly wires: number
  /** From conductor to outer surface for one wire's heat, K·m/W. */
  readonly inner: number
  /** From outer surface to the surroundings for all wires' heat, K·m/W; null where the surface is in free air. */
  readonly outer: number | null
  /** Where the wire would lie without current: the air, or the skin under padding, °C. */
  readonly ambient: number
  readonly emissivity: number
}

/** Heat per length of one wire, W/m, at conductor temperature T: base·(1 + α·(T − 20 °C)). */
export interface WireHeat {
  /** I²·r₂₀, W/m. */
  readonly base: number
  readonly alpha: number
}

const shed = (path: HeatPath, rise: number) =>
  path.outer === null
    ? Math.PI * path.outerDiameter * surfaceCoefficient(path.outerDiameter, path.ambient, rise, path.emissivity) * rise
    : rise / path.outer

/** Steady rises of surface and conductor over the surroundings, K; null where there is none below 1000 K (thermal runaway). */
export function steadyRise(
  path: HeatPath,
  heat: WireHeat,
): { surface: number; conductor: number; iterations: number; residual: number } | null {
  const gain = 1 - heat.base * heat.alpha * path.inner
  if (!(gain > 0)) return null
  const given = (surface: number) => (heat.base * (1 + heat.alpha * (path.ambient + surface - 20))) / gain
  const root = brent((surface) => shed(path, surface) - path.wires * given(surface), 0, 1000, 1e-18)
  if (root === null) return null
  const made = path.wires * given(root.x)
  return {
    surface: root.x,
    conductor: root.x + given(root.x) * path.inner,
    iterations: root.iterations,
    residual: made === 0 ? 0 : Math.abs(root.residual) / made,
  }
}

/** Heat per length of one wire, W/m, that holds its outer surface `rise` over its surroundings for good. */
export const heatAtSurface = (path: HeatPath, rise: number): number => (rise > 0 ? shed(path, rise) / path.wires : 0)

/** Heat per length of one wire, W/m, that holds its conductor `rise` over its surroundings for good. */
export function heatAtRise(path: HeatPath, rise: number): number {
  if (!(rise > 0)) return 0
  if (path.inner === 0) return shed(path, rise) / path.wires
  // at no surface rise all would flow outwards through the inside, at the full rise nothing: the ends always bracket
  const surplus = (surface: number) => shed(path, surface) - (path.wires * (rise - surface)) / path.inner
  return (rise - theRoot(surplus, 0, rise, 1e-18, "temperature of a wire's surface").x) / path.inner
}
