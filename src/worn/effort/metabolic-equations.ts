/**
 * The published equations for the cost of standing and walking, each as printed: masses in kg, speed in m/s, grade as a
 * ratio (the sources print per cent), powers in W or W/kg, oxygen in mL/(kg·min). Samples and ranges are in
 * `metabolicSamples`.
 */

/** Pandolf 1977, W: standing and walking, level and uphill. */
export function pandolf(body: number, load: number, speed: number, grade = 0, terrain = 1): number {
  return 1.5 * body + 2 * (body + load) * (load / body) ** 2 + terrain * (body + load) * (1.5 * speed ** 2 + 35 * speed * grade)
}

/** Santee's correction, W, taken from {@link pandolf} when walking downhill (grade negative, signed in both terms). */
export function santee(body: number, load: number, speed: number, grade: number, terrain = 1): number {
  const percent = 100 * grade
  const total = body + load
  return terrain * ((percent * total * speed) / 3.5 - (total * (percent + 6) ** 2) / body + (25 - speed ** 2))
}

/** Looney and others 2019, standing and graded walking, W per kg of mass moved. */
export function looney2019(speed: number, grade = 0): number {
  const percent = 100 * grade
  return 1.44 + 1.94 * speed ** 0.43 + 0.24 * speed ** 4 + 0.34 * speed * percent * (1 - 1.05 ** (1 - 1.1 ** (percent + 32)))
}

/** Looney and others 2022, backpacking on the level, W per kg of BODY mass; `ratio` is load over body mass, `rest` the standing rate in W/kg. */
export function looney2022(ratio: number, speed: number, rest: number, terrain = 1): number {
  return rest + (0.19 + terrain * (1.78 * speed ** 0.58 + 0.27 * speed ** 4)) * (1 + 1.96 * ratio ** 1.36)
}

/** ACSM walking, mL of oxygen per kg and minute. */
export function acsmWalking(speed: number, grade = 0): number {
  return 3.5 + 6 * speed + 108 * speed * grade
}

/** Minimum mechanics, mL of oxygen per kg of TOTAL mass and minute above rest; downhill is 0.73 of the level. */
export function minimumMechanics(speed: number, grade = 0): number {
  if (grade < 0) return 0.73 * minimumMechanics(speed)
  const percent = 100 * grade
  return 0.32 * percent + 3.28 + (1 + 0.19 * percent) * 2.66 * speed ** 2
}

/** Supine rest that goes with {@link minimumMechanics}, mL of oxygen per kg of body mass and minute. */
export const supineRest = 3.05

/** Givoni and Goldman, metabolic rate in W for a total weight in N, from 0.7 m/s; heat is this less the climbing power. */
export function givoniGoldman(weight: number, speed: number, grade = 0, terrain = 1): number {
  const above = speed - 0.7
  return 0.1 * terrain * weight * (2.7 + 3.2 * above ** 1.65 + 100 * grade * (0.23 + 0.29 * above))
}
