// Published values of gas springs and elastic cords: how each row is put to gasSpring and bungee.
import { bungee, gasSpring } from "../../src/linkage/index.js"
import type { Check } from "../helpers/references.js"

/** A cord that stays straight to ten times its slack length. */
const straight = (freeLength: number, rate: number, length: number) =>
  bungee({ slackLength: freeLength, length, readings: [{ elongation: 9, force: 9 * freeLength * rate }], elongationLimit: 9 })
/** Where something that rises meets nought, by halving. */
function meets(of: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high]
  for (let k = 0; k < 100; k++) {
    const middle = (a + b) / 2
    if (of(middle) < 0) a = middle
    else b = middle
  }
  return a
}

export const springChecks: Readonly<Record<string, Check>> = {
  "gas-spring-mid-stroke-numeric": (n) => ({
    force_N: gasSpring({
      force: n.force_extended_N,
      progression: n.progression,
      stroke: n.stroke_mm / 1000,
      compression: n.travel_mm / 1000,
    }).extendingForce,
  }),
  "gas-spring-progression-numeric": (n) => {
    const out = gasSpring({
      force: n.force_extended_N,
      stroke: n.stroke_mm / 1000,
      compression: n.stroke_mm / 1000,
      rodDiameter: n.rod_mm / 1000,
      gasVolume: ((Math.PI / 4) * n.tube_bore_mm ** 2 * n.gas_length_mm) / 1e9 - n.oil_cm3 / 1e6,
    })
    return {
      progression: out.progression,
      force_compressed_N: out.forceCompressed,
      force_adiabatic_N: out.fastForce,
      work_J: out.storedEnergy,
    }
  },
  "elastic-cord-two-slope-numeric": (n) => {
    const [L, knee, end] = [n.free_length_mm / 1000, n.knee_percent / 100, n.stretch_percent / 100]
    const atKnee = n.k1_N_per_mm * 1000 * L * knee
    const out = bungee({
      slackLength: L,
      length: L * (1 + end),
      readings: [
        { elongation: knee, force: atKnee },
        { elongation: 1, force: atKnee + n.k2_N_per_mm * 1000 * L * (1 - knee) },
      ],
    })
    return { force_N: out.force, energy_J: out.storedEnergy }
  },
  "bungee-static-40kg": (n) => ({
    length_m: meets(
      (length) => straight(n.free_length_m, n.rate_N_per_m, length).force - n.mass_kg * n.g_m_per_s2,
      n.free_length_m,
      9 * n.free_length_m,
    ),
  }),
  // a fall ends where the cord has taken the whole height's energy
  "bungee-rate-53kg": (n) => ({
    rate_N_per_m: meets((rate) => straight(n.free_length_m, rate, n.fall_m).storedEnergy - n.mass_kg * n.g_m_per_s2 * n.fall_m, 1, 1000),
  }),
  "bungee-giancoli-75kg": (n) => {
    const drop = meets(
      (length) => straight(n.free_length_m, n.rate_N_per_m, length).storedEnergy - n.mass_kg * n.g_m_per_s2 * length,
      2 * n.free_length_m,
      9 * n.free_length_m,
    )
    return { stretch_m: drop - n.free_length_m, total_drop_m: drop }
  },
  "bungee-msu-rate": (n) => {
    const rate = meets((k) => straight(n.free_length_m, k, n.fall_m).storedEnergy - n.mass_kg * n.g_m_per_s2 * n.fall_m, 1, 1000)
    return { rate_N_per_m: rate, peak_force_N: straight(n.free_length_m, rate, n.fall_m).force }
  },
}
