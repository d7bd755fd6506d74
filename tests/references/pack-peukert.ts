import { peukert, peukertExponent } from "../../src/pack/index.js"
import type { Check } from "../helpers/references.js"
import { answer, at, list } from "./pack-helpers.js"

const HOUR = 3600

const rated = (input: object) => answer(peukert, input)
/** Checks by row id. */
export const peukerts: Record<string, Check> = {
  "pb-pack-leadacid-exponent-1p3ah": (inputs) => {
    const [times, amounts] = [list(inputs, "time_h"), list(inputs, "capacity_Ah")]
    const input = { capacity: 1.3 * HOUR, ratedDuration: 20 * HOUR, secondCapacity: 0.85 * HOUR, secondDuration: HOUR }
    const predicted = (k: number) => rated({ ...input, current: (amounts[k] as number) / (times[k] as number) }).duration / HOUR
    return {
      peukert_exponent: rated({ ...input, current: 1 }).exponent,
      predicted_10h_point_h: predicted(1),
      predicted_5h_point_h: predicted(2),
    }
  },
  "pb-pack-leadacid-rate-table": (inputs) => ({
    current_A: list(inputs, "time_h").map(
      (t, k) =>
        rated({ capacity: (list(inputs, "capacity_Ah")[k] as number) * HOUR, ratedDuration: t * HOUR, current: 1, exponent: 1.2 })
          .ratedCurrent,
    ),
  }),
  "pb-pack-peukert-exponent-lfp": twoDischarges,
  "pb-pack-peukert-exponent-nmc": twoDischarges,
  "runtime-peukert-liion-nmc": (inputs) => {
    const [q1, q2] = [at(inputs, "q_C20_Ah"), at(inputs, "q_2C_Ah")]
    return { peukert_k: peukertExponent(q1, q1, q2, q2 / at(inputs, "current_ratio")) }
  },
  "pb-pack-peukert-rated-form": (inputs) => {
    const out = rated({
      capacity: at(inputs, "rated_capacity_Ah") * HOUR,
      ratedDuration: at(inputs, "rated_time_h") * HOUR,
      current: at(inputs, "current_A"),
      exponent: at(inputs, "k"),
    })
    return { time_h: out.duration / HOUR, time_min: out.duration / 60 }
  },
  "pb-pack-peukert-rated-identity": (inputs) => {
    const input = {
      capacity: at(inputs, "rated_capacity_Ah") * HOUR,
      ratedDuration: at(inputs, "rated_time_h") * HOUR,
      exponent: at(inputs, "k"),
    }
    const at10 = rated({ ...input, current: 10 })
    return {
      time_h: rated({ ...input, current: at(inputs, "current_A") }).duration / HOUR,
      time_at_10A_h: at10.duration / HOUR,
      charge_at_10A_Ah: at10.deliveredCharge / HOUR,
    }
  },
  "pb-pack-peukert-simple-form": (inputs) => ({
    time_h: oneAmpere(at(inputs, "peukert_capacity_Ah"), at(inputs, "k"), at(inputs, "current_A")),
  }),
  "peukert-agm-exponents": (inputs) => {
    const [currents, times] = [list(inputs, "current_A"), list(inputs, "time_h")]
    const charge = (k: number) => (currents[k] as number) * (times[k] as number)
    return { peukert_k: [1, 2, 3].map((k) => peukertExponent(charge(0), times[0] as number, charge(k), times[k] as number)) }
  },
  "peukert-naive-10A": (inputs) => {
    const hours = oneAmpere(at(inputs, "capacity_Ah"), at(inputs, "peukert_k"), at(inputs, "current_A"))
    return { i_to_k: at(inputs, "capacity_Ah") / hours, naive_form_h: hours }
  },
  "peukert-naive-form-trap": (inputs) => ({
    naive_form_h: oneAmpere(at(inputs, "capacity_Ah"), at(inputs, "peukert_k"), at(inputs, "current_A")),
    rated_form_h:
      rated({
        capacity: at(inputs, "capacity_Ah") * HOUR,
        ratedDuration: at(inputs, "rated_hours_h") * HOUR,
        exponent: at(inputs, "peukert_k"),
        current: at(inputs, "current_A"),
      }).duration / HOUR,
  }),
  "peukert-rated-form-10A": (inputs) => {
    const out = rated({
      capacity: at(inputs, "capacity_Ah") * HOUR,
      ratedDuration: at(inputs, "rated_hours_h") * HOUR,
      exponent: at(inputs, "peukert_k"),
      current: at(inputs, "current_A"),
    })
    return { runtime_h: out.duration / HOUR, delivered_Ah: out.deliveredCharge / HOUR }
  },
  "peukert-shifted-form-equivalence": (inputs) => {
    const hours =
      rated({
        capacity: at(inputs, "C_Ah") * HOUR,
        ratedDuration: at(inputs, "R_h") * HOUR,
        exponent: at(inputs, "n"),
        current: at(inputs, "I_A"),
      }).duration / HOUR
    return { form1_h: hours, form2_h: hours }
  },
  "peukert-sla40-exponent": (inputs) => {
    const [times, amounts] = [list(inputs, "time_h"), list(inputs, "capacity_Ah")]
    const k = (i: number) => peukertExponent(amounts[0] as number, times[0] as number, amounts[i] as number, times[i] as number)
    return { peukert_k_20_10: k(1), peukert_k_20_5: k(2), peukert_k_20_1: k(3) }
  },
}

/** The form t = C/I^k: its capacity is the one at 1 A, that is, rated for as many hours as ampere-hours. */
function oneAmpere(ampereHours: number, exponent: number, current: number): number {
  return answer(peukert, { capacity: ampereHours * HOUR, ratedDuration: ampereHours * HOUR, exponent, current }).duration / HOUR
}
function twoDischarges(inputs: object) {
  const [i1, t1, i2, t2] = [at(inputs, "current1_A"), at(inputs, "time1_h"), at(inputs, "current2_A"), at(inputs, "time2_h")]
  return { peukert_exponent: peukertExponent(i1 * t1, t1, i2 * t2, t2) }
}
