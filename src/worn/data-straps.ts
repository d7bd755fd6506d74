import type { Source } from "../solver/index.js"

/** 1 mmHg in Pa. */
export const mmHg = 133.322

/** Skin pressure at which blood flow under a strap stops, Pa: 30 mmHg (Macias and others 2008). */
export const occlusionPressure = 30 * mmHg

/** Working limit for a strap worn for hours, Pa. Common practice; no primary source confirms it. */
export const strapPressureLimit = 14000

/** Share of the weight that the hips took in a framed pack with a belt (Lafiandra and Harman 2004; not confirmed). */
export const hipBeltShare = 0.3

/** Pressure under the right and left shoulder strap, mmHg, ten children of 12 to 14 years, at 10, 20 and 30 % of body mass. */
export const childStraps = { share: [0.1, 0.2, 0.3], right: [98, 153, 170], left: [46, 92, 90] } as const

/** Share of the more loaded shoulder that follows, mean of the three loads: straps do not share evenly. */
export const heavierShoulder = 0.65

/** Strap widths compared under 20 kg on a manikin, m, and the one with the least pressure. */
export const testedWidths = { widths: [0.05, 0.06, 0.07, 0.08], best: 0.08 } as const

/** Sources on straps. */
export const strapSources: readonly Source[] = [
  {
    title: "Asymmetric loads and pain associated with backpack carrying by children",
    by: "B. R. Macias and others",
    edition: "J. Pediatr. Orthop. 28, 2008",
    where: "abstract",
  },
  {
    title: "The distribution of forces between the upper and lower back during load carriage",
    by: "M. Lafiandra, E. Harman",
    edition: "2004",
    where: "abstract (from memory)",
  },
  {
    title: "Mechanical predictors of discomfort during load carriage",
    by: "P. D. Wettenschwiler and others",
    edition: "PLoS ONE 10, 2015",
    where: "abstract: belt tension 30 to 120 N",
  },
  {
    title: "The effect of shoulder strap width and load placement on shoulder-backpack interface pressure",
    edition: "2017",
    where: "abstract",
  },
  { title: "Physiological strain due to load carrying", by: "M. Holewijn", edition: "Eur. J. Appl. Physiol. 61, 1990", where: "abstract" },
]
