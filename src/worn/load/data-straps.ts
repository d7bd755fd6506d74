import type { Source } from "../../solver/index.js"
import { CAPSTAN, EN_71_1, GOLRIZ, HOLEWIJN, LAFIANDRA, MACIAS, WETTENSCHWILER } from "../sources-load.js"

/** 1 mmHg in Pa. */
export const mmHg = 133.322

/** Skin pressure at which blood flow under a strap stops, Pa: 30 mmHg (Macias and others 2008). */
export const occlusionPressure = 30 * mmHg

/** Working limit for a strap worn for hours, Pa. Common practice; no primary source confirms it. */
export const strapPressureLimit = 14000

/** Share of the weight that the hips took in a framed pack with a belt (LaFiandra and Harman 2004). */
export const hipBeltShare = 0.3

/** Pressure under the right and left shoulder strap, mmHg, ten children of 12 to 14 years, at 10, 20 and 30 % of body mass. */
export const childStraps = { share: [0.1, 0.2, 0.3], right: [98, 153, 170], left: [46, 92, 90] } as const

/** Share of the more loaded shoulder that follows, mean of the three loads: straps do not share evenly. */
export const heavierShoulder = 0.65

/** Strap widths compared under 20 kg on a manikin, m, and the one with the minimum pressure. */
export const testedWidths = { widths: [0.05, 0.06, 0.07, 0.08], best: 0.08 } as const

/** Belt tensions that were compared, N. */
export const testedBeltTensions = { low: 30, high: 120 } as const

/** Pull at which a cord or strap near the throat must part, N: the rule for toys. */
export const throatRelease = 25

/** Force round the neck at which both carotid arteries closed, N: 6 kgf (2009). */
export const arteryForce = 6 * 9.80665

/** Friction at rest of cotton on skin, means of the back of the forearm and of the chest, lowest and highest of six places (Temel and others 2022). */
export const skinFriction = { low: 0.31, high: 0.9 } as const

/** Stature up to which children's clothing may have no cords at hood and neck, m (EN 14682). */
export const youngStature = 1.34

/** Share of body mass on one side: published as too much for long (Phonpichit and others), and carried by those in pain (Abdon and others). */
export const slungShares = { adult: 0.1, complaints: 0.04 } as const

/** Sources on straps. */
export const strapSources: readonly Source[] = [MACIAS, LAFIANDRA, WETTENSCHWILER, GOLRIZ, HOLEWIJN, CAPSTAN, EN_71_1]
