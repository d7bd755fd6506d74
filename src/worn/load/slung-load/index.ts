import { type NoSolution, refuse, type SiOf, type Solver, solver } from "../../../solver/index.js"
import { CAPSTAN, CHILD_PACKS, ONE_HAND_BAG, SHOULDER_BAGS } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import { lightWearer } from "../data-load.js"
import { slungShares, strapPressureLimit } from "../data-straps.js"
import { slungLoadCautions } from "./cautions.js"
import type { SlungLoad, SlungLoadCaution, SlungLoadInput, SlungLoadRefusal } from "./types.js"

export type { SlungLoad, SlungLoadInput } from "./types.js"

const GRAVITY = 9.80665
/** A nanometre inside the edge, so that rounding cannot refuse again what is offered as nearest. */
const INSIDE = 1e-9

function solve(si: SiOf<SlungLoadInput>): SlungLoad | NoSolution<SlungLoadRefusal> {
  const { bodyMass, rigMass, loadOffset, strapAngle, footSpacing } = si
  const weight = GRAVITY * rigMass
  const arm = Math.abs(loadOffset)
  const shift = (rigMass * arm) / (rigMass + bodyMass)
  if (shift > footSpacing / 2) {
    const most = ((rigMass + bodyMass) * footSpacing) / 2 / rigMass - INSIDE
    return refuse(
      "tips-sideways",
      "Upright, the weight of wearer and load falls {shortBy length mm} beside the foot: the wearer tips. Bring the load closer, make it lighter or stand with the feet further apart.",
      shift - footSpacing / 2,
      { loadOffset },
      {
        ...(most < arm ? { loadOffset: Math.sign(loadOffset) * most } : {}),
        ...(2 * shift + INSIDE <= 1.2 ? { footSpacing: 2 * shift + INSIDE } : {}),
      },
    )
  }
  const massShare = rigMass / bodyMass
  const shareLimit = bodyMass < lightWearer ? slungShares.complaints : slungShares.adult
  const tensionRatio = Math.exp(si.shoulderFriction * si.wrapAngle)
  const both = weight / Math.cos(strapAngle)
  const maxTension = (both * tensionRatio) / (1 + tensionRatio)
  const pressure = maxTension / (si.shoulderRadius * si.strapWidth)
  const pressureLimit = Math.min(si.pressureLimit, strapPressureLimit)
  const requiredFriction = Math.abs(Math.tan(si.shoulderSlope - strapAngle))
  const strapStays = requiredFriction <= si.shoulderFriction
  const sidewaysMoment = weight * arm
  const muscleForce = sidewaysMoment / si.muscleLeverArm
  return {
    massShare,
    shareLimit,
    maxMass: shareLimit * bodyMass,
    shareUtilisation: massShare / shareLimit,
    sidewaysMoment,
    muscleForce,
    addedCompression: weight + muscleForce,
    maxFootShare: 0.5 + shift / footSpacing,
    tension: both / 2,
    tensionRatio,
    maxTension,
    pressure,
    pressureLimit,
    pressureUtilisation: pressure / pressureLimit,
    hipPush: weight * Math.tan(strapAngle),
    requiredFriction,
    strapStays,
    withinLimits: massShare <= shareLimit && pressure <= pressureLimit && strapStays,
  }
}

/**
 * A load slung from one shoulder: share of body mass, moments sideways, pressure under the strap, and whether the strap stays.
 *
 * Formula: load m on body mass m_w, its centre x beside the spine. Moment W·x about the spine, held by muscles at arm e of the
 * other side: F = W·x/e, adding W + F to the back's compression. Upright the common centre lies m·x/(m + m_w) aside of the
 * spine, so that one foot carries ½ + m·x/((m + m_w)·b) of all weight with the feet b apart. The strap leads both its ends down at δ
 * to the vertical: 2·T·cos δ = W, the load rests on the hip with W·tan δ; friction shifts at most a ratio k = e^(μ·θ) between
 * its ends, so the tighter holds W/cos δ · k/(1 + k), pressing with T/(r·w). Across the strap a shoulder that slopes by σ needs a friction
 * of |tan(σ − δ)|: below it the strap slides down, or up to the neck where δ is more than σ. Valid for a trunk held upright, at rest.
 *
 * **Inputs**
 * - `bodyMass`: body mass [m_w; 20 to 300 kg]
 * - `rigMass`: rig mass [m_r; 10 g to 150 kg]
 * - `loadOffset`: load's centre beside the spine [x; −800 to 800 mm]
 * - `strapAngle`: strap across the body, from the vertical [delta; 0 to 60°; default 0]
 * - `shoulderSlope`: slope of the shoulder [sigma; 0 to 45°; default 20°]
 * - `strapWidth`: width of the strap [w; 5 to 200 mm]
 * - `shoulderRadius`: radius of the shoulder [r; 20 to 150 mm; default 60 mm]
 * - `wrapAngle`: wrap around the shoulder [theta; 0 to 180°; default 180°]
 * - `shoulderFriction`: friction over the shoulder [mu; 0 to 1; default 0.3]
 * - `muscleLeverArm`: lever arm of the muscles, sideways [e; 30 to 200 mm; default 60 mm]
 * - `footSpacing`: distance between the feet [b; 50 mm to 1.2 m; default 200 mm]
 * - `pressureLimit`: pressure limit [p_l; 1 to 100 kPa; default 14 kPa]
 *
 * **Results**
 *
 * `massShare`: share of body mass [q; as a fraction]; `shareLimit`: share that counts as the limit [q_a; as a
 * fraction]; `maxMass`: maximum mass by that share [m_a; kg]; `shareUtilisation`: utilisation of the mass limit [q_m;
 * as a fraction]; `sidewaysMoment`: moment sideways [M; N m]; `muscleForce`: pull of the muscles [F; N];
 * `addedCompression`: compression added to the low back [C; N]; `maxFootShare`: share of the more loaded foot [q_f; as
 * a fraction]; `tension`: tension of one end, no friction [T; N]; `tensionRatio`: friction's ratio of tensions [k];
 * `maxTension`: maximum tension [T_m; N]; `pressure`: maximum pressure [p; Pa]; `pressureLimit`: limit that counts
 * [p_a; Pa]; `pressureUtilisation`: utilisation of the pressure limit [q_p; as a fraction]; `hipPush`: push on the hip
 * [H; N]; `requiredFriction`: required friction across the strap [mu_n]; `strapStays`: strap stays where it lies [yes
 * or no]; `withinLimits`: within every limit compared [yes or no].
 *
 * **Symbols of the working**
 *
 * W_0: weight of the load [N]; x_s: common centre aside of the spine [m].
 *
 * **Sources**
 * - C. Phonpichit, W. Chansirinukor, C. Akamanon: The response of the body when carrying a handbag, Work 55, 2016,
 *   abstract: 13 women, 5, 7 and 10 % of body mass; one-sided for long above 10 % can cause problems
 * - A. P. V. Abdon and others: Relationship between shoulder pain and weight of shoulder bags in young women,
 *   Motricidade 14, 2018, abstract: 316 women; those in pain carried about 4.02 % of body mass
 * - American Academy of Pediatrics; American Occupational Therapy Association: Backpack guidance for children: no more
 *   than 10 to 20 % of body mass, 2018
 * - L. Euler, J. A. Eytelwein: Capstan equation: tension of a band over a round surface with friction
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `tips-sideways` with an offset and a stance that hold
 * @example
 * ```ts
 * import { slungLoad } from 'alula/worn'
 * const lanternBag = slungLoad({ bodyMass: '64 kg', rigMass: '4 kg', loadOffset: '0.2 m', strapWidth: '50 mm' })
 * lanternBag.massShare // => 0.0625
 * lanternBag.sidewaysMoment // => 7.845
 * lanternBag.strapStays // => false
 * ```
 */
export const slungLoad: Solver<SlungLoadInput, SlungLoad, SlungLoadRefusal, SlungLoadCaution> = /* @__PURE__ */ solver<
  SlungLoadInput,
  SlungLoad,
  SlungLoadRefusal,
  SlungLoadCaution
>("slungLoad", "Load slung from one shoulder", solve, () => ({
  input: {
    bodyMass: wearerFields.bodyMass,
    rigMass: wearerFields.rigMass,
    loadOffset: { kind: "length", symbol: "x", label: "load's centre beside the spine", min: -0.8, max: 0.8, typical: [0.15, 0.3] },
    strapAngle: {
      kind: "angle",
      symbol: "delta",
      label: "strap across the body, from the vertical",
      min: 0,
      max: "60°",
      typical: [0, "40°"],
      default: 0,
    },
    shoulderSlope: {
      kind: "angle",
      symbol: "sigma",
      label: "slope of the shoulder",
      min: 0,
      max: "45°",
      typical: ["12°", "28°"],
      default: "20°",
    },
    strapWidth: { kind: "length", symbol: "w", label: "width of the strap", min: "5 mm", max: "200 mm", typical: ["25 mm", "80 mm"] },
    shoulderRadius: {
      kind: "length",
      symbol: "r",
      label: "radius of the shoulder",
      min: "20 mm",
      max: "150 mm",
      typical: ["40 mm", "80 mm"],
      default: "60 mm",
    },
    wrapAngle: {
      kind: "angle",
      symbol: "theta",
      label: "wrap around the shoulder",
      min: 0,
      max: "180°",
      typical: ["120°", "180°"],
      default: "180°",
    },
    shoulderFriction: {
      kind: "number",
      symbol: "mu",
      label: "friction over the shoulder",
      min: 0,
      max: 1,
      typical: [0.1, 0.6],
      default: 0.3,
    },
    muscleLeverArm: {
      kind: "length",
      symbol: "e",
      label: "lever arm of the muscles, sideways",
      min: "30 mm",
      max: "200 mm",
      typical: ["50 mm", "120 mm"],
      default: "60 mm",
    },
    footSpacing: {
      kind: "length",
      symbol: "b",
      label: "distance between the feet",
      min: 0.05,
      max: 1.2,
      typical: [0.15, 0.4],
      default: 0.2,
    },
    pressureLimit: {
      kind: "pressure",
      symbol: "p_l",
      label: "pressure limit",
      min: 1000,
      max: 100000,
      typical: [4000, 14000],
      default: strapPressureLimit,
    },
  },
  output: {
    massShare: { kind: "ratio", symbol: "q", label: "share of body mass", unit: "%" },
    shareLimit: { kind: "ratio", symbol: "q_a", label: "share that counts as the limit", unit: "%" },
    maxMass: { kind: "mass", symbol: "m_a", label: "maximum mass by that share" },
    shareUtilisation: { kind: "ratio", symbol: "q_m", label: "utilisation of the mass limit", unit: "%" },
    sidewaysMoment: { kind: "moment", symbol: "M", label: "moment sideways" },
    muscleForce: { kind: "force", symbol: "F", label: "pull of the muscles" },
    addedCompression: { kind: "force", symbol: "C", label: "compression added to the low back" },
    maxFootShare: { kind: "ratio", symbol: "q_f", label: "share of the more loaded foot", unit: "%" },
    tension: { kind: "force", symbol: "T", label: "tension of one end, no friction" },
    tensionRatio: { kind: "number", symbol: "k", label: "friction's ratio of tensions" },
    maxTension: { kind: "force", symbol: "T_m", label: "maximum tension" },
    pressure: { kind: "pressure", symbol: "p", label: "maximum pressure", unit: "kPa" },
    pressureLimit: { kind: "pressure", symbol: "p_a", label: "limit that counts", unit: "kPa" },
    pressureUtilisation: { kind: "ratio", symbol: "q_p", label: "utilisation of the pressure limit", unit: "%" },
    hipPush: { kind: "force", symbol: "H", label: "push on the hip" },
    requiredFriction: { kind: "number", symbol: "mu_n", label: "required friction across the strap" },
    strapStays: { kind: "flag", label: "strap stays where it lies" },
    withinLimits: { kind: "flag", label: "within every limit compared" },
  },
  example: { bodyMass: "64 kg", rigMass: "4 kg", loadOffset: "0.2 m", strapWidth: "50 mm" },
  formulae: [
    { symbol: "W_0", kind: "force", meaning: "weight of the load", is: "m_r * (9.80665 m/s^2)" },
    { symbol: "q", meaning: "load over body mass", is: "m_r / m_w" },
    { symbol: "q_a", meaning: "adults", is: "0.1", when: "m_w >= 45 kg", source: ONE_HAND_BAG },
    { symbol: "q_a", meaning: "children and very light adults", is: "0.04", when: "m_w < 45 kg", source: SHOULDER_BAGS },
    { symbol: "m_a", meaning: "mass by that share", is: "q_a * m_w" },
    { symbol: "q_m", meaning: "share against its limit", is: "q / q_a" },
    { symbol: "M", meaning: "about the spine", is: "W_0 * abs(x)" },
    { symbol: "F", meaning: "muscles of the other side", is: "M / e" },
    { symbol: "C", meaning: "load and muscles", is: "W_0 + F" },
    { symbol: "x_s", kind: "length", meaning: "common centre aside of the spine", is: "m_r * abs(x) / (m_r + m_w)" },
    { symbol: "q_f", meaning: "moments about the other foot", is: "1 / 2 + x_s / b" },
    { symbol: "T", meaning: "both ends carry the weight", is: "W_0 / cos(delta) / 2" },
    { symbol: "k", meaning: "capstan ratio over the shoulder", is: "exp(mu * theta)", source: CAPSTAN },
    { symbol: "T_m", meaning: "tighter end", is: "2 * T * k / (1 + k)" },
    { symbol: "p", meaning: "tension over radius and width", is: "T_m / (r * w)" },
    { symbol: "p_a", meaning: "limit that counts, at most the usual one", is: "min(p_l, 14 kPa)" },
    { symbol: "q_p", meaning: "pressure against its limit", is: "p / p_a" },
    { symbol: "H", meaning: "level pull of the strap", is: "W_0 * tan(delta)" },
    { symbol: "mu_n", meaning: "pull to the slope's square", is: "abs(tan(sigma - delta))" },
  ],
  sources: [ONE_HAND_BAG, SHOULDER_BAGS, CHILD_PACKS, CAPSTAN],
  cautions: slungLoadCautions,
}))
