import { type Spread, uncertainty } from "../../src/study/index.js"
import type { LaterCheck } from "../helpers/references.js"
import { each, made } from "../study/functions.js"

type Function_ = (x: readonly number[]) => number

/** Mean and deviation of a function of spread numbers. */
async function spread(
  f: Function_,
  spreads: readonly Spread<number>[],
  samples = 2 ** 14,
  correlations: readonly (readonly [number, number, number])[] = [],
) {
  const { outputs } = await uncertainty(
    made(
      f,
      spreads.map(() => 1),
    ),
    { x: spreads.map(() => 1) },
    each(spreads.length, (i) => spreads[i] as Spread<number>),
    {
      outputs: ["f"],
      samples,
      within: 0,
      worst: false,
      correlations: correlations.map(([i, j, coefficient]) => ({ between: [`x.${i}`, `x.${j}`] as const, coefficient })),
    },
  )
  const [own] = outputs
  return { mean: own?.mean as number, deviation: own?.deviation as number }
}

const normal = (mean: number, deviation: number): Spread<number> => ({ type: "normal", mean, deviation })
const uniform = (low: number, high: number): Spread<number> => ({ type: "uniform", low, high })
const sum: Function_ = (x) => x.reduce((s, v) => s + v, 0)
const at = (x: readonly number[], i: number) => x[i] as number

const mismatch: LaterCheck = async ({ x1, x2, u }) => {
  const { mean, deviation } = await spread((x) => at(x, 0) ** 2 + at(x, 1) ** 2, [normal(x1, u), normal(x2, u)])
  return { mean_1e6: mean * 1e6, u_1e6: deviation * 1e6 }
}

export const uncertaintyChecks: Readonly<Record<string, LaterCheck>> = {
  "unc-s1-mass": async (given) => {
    const nominal = 100000
    const { mean, deviation } = await spread(
      ([ref, extra, air, weight, standard]) =>
        ((ref as number) + (extra as number)) *
          (1 + ((air as number) - given.nominal_air_kg_m3) * (1 / (weight as number) - 1 / (standard as number))) -
        nominal,
      [
        normal(given.m_ref_mg, given.u_m_ref_mg),
        normal(given.dm_ref_mg, given.u_dm_ref_mg),
        uniform(given.air_density_kg_m3[0], given.air_density_kg_m3[1]),
        uniform(given.weight_density_kg_m3[0], given.weight_density_kg_m3[1]),
        uniform(given.reference_density_kg_m3[0], given.reference_density_kg_m3[1]),
      ],
    )
    return { dm_mg: mean, u_true_mg: deviation }
  },
  "unc-s1-mismatch-000": mismatch,
  "unc-s1-mismatch-010": mismatch,
  "unc-s1-mismatch-050": mismatch,
  // length of an end gauge against a standard, to second order by itself: d + ls (1 − δα θ − α δθ)
  "unc-gum-h1-second-order": async (given) => {
    const parts = Math.hypot(...(given.u_d_parts_nm as number[]))
    const theta = Math.hypot(given.u_theta_mean_degC, given.theta_swing_degC / Math.SQRT2)
    const { deviation } = await spread(
      ([ls, d, alpha, dAlpha, warm, dWarm]) =>
        (ls as number) * (1 - (dAlpha as number) * (warm as number) - (alpha as number) * (dWarm as number)) + (d as number),
      [
        normal(given.ls_nm, given.u_ls_nm),
        normal(given.d_nm, parts),
        uniform(given.alpha_per_degC - given.alpha_half_width, given.alpha_per_degC + given.alpha_half_width),
        uniform(-given.dalpha_half_width, given.dalpha_half_width),
        normal(given.theta_mean_degC, theta),
        uniform(-given.dtheta_half_width_degC, given.dtheta_half_width_degC),
      ],
    )
    return { u_c_nm: deviation }
  },
  // the means and their covariance from the five readings, then the formula
  "unc-gum-h2": async (given) => {
    const sets = [given.voltage_V, (given.current_mA as number[]).map((i) => i / 1e3), given.phase_rad] as number[][]
    const mean = sets.map((set) => sum(set) / set.length)
    const covariance = (i: number, j: number) =>
      (sets[i] as number[]).reduce((s, v, k) => s + (v - (mean[i] as number)) * ((sets[j]?.[k] as number) - (mean[j] as number)), 0) / 20
    const u = [0, 1, 2].map((i) => Math.sqrt(covariance(i, i)))
    const spreads = mean.map((m, i) => normal(m, u[i] as number))
    const pairs = [
      [0, 1],
      [0, 2],
      [1, 2],
    ].map(
      ([i, j]) =>
        [
          i as number,
          j as number,
          covariance(i as number, j as number) / ((u[i as number] as number) * (u[j as number] as number)),
        ] as const,
    )
    const [r, x, z] = await Promise.all(
      [
        ([v, i, phi]: readonly number[]) => ((v as number) / (i as number)) * Math.cos(phi as number),
        ([v, i, phi]: readonly number[]) => ((v as number) / (i as number)) * Math.sin(phi as number),
        ([v, i]: readonly number[]) => (v as number) / (i as number),
      ].map((f) => spread(f, spreads, 2 ** 14, pairs)),
    )
    return { R_ohm: r?.mean, X_ohm: x?.mean, Z_ohm: z?.mean, u_R_ohm: r?.deviation, u_X_ohm: x?.deviation, u_Z_ohm: z?.deviation }
  },
}

const law = "what the law of propagation gives, which samples do not use"
const pairs = "correlations of results are not told"
export const uncertaintyWithout = {
  "unc-s1-mass": { u_first_order_mg: law },
  "unc-gum-h2": { r_RX: pairs, r_RZ: pairs, r_XZ: pairs },
}
