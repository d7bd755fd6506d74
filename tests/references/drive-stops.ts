// Published values of end stops: how each row is put to endStop.
import { type EndStopInput, endStop } from "../../src/drive/index.js"
import type { Check } from "../helpers/references.js"

/** A mass in a straight line is an arm whose stop sits one metre out. */
const straight = (mass: number, speed: number, push: number, stop: EndStopInput["stop"]) =>
  endStop({ inertia: mass, speed, drivingTorque: push, stopRadius: 1, stop })

export const stopChecks: Record<string, Check> = {
  "impact-ace-example-1": (row) => {
    const out = endStop({
      inertia: row.mass_kg,
      speed: row.speed_m_per_s,
      stopRadius: 1,
      stop: { type: "absorber", stroke: row.stroke_m },
      strikeRate: row.cycles_per_hour / 3600,
    })
    return { energy_per_cycle_J: out.energy, energy_per_hour_J: out.meanHeat * 3600, effective_mass_kg: out.effectiveMass }
  },
  "impact-arm-stop-numeric": (row) => {
    const out = endStop({
      inertia: row.inertia_kg_m2,
      speed: row.speed_rad_per_s,
      drivingTorque: row.motor_torque_N_m,
      stopRadius: row.stop_radius_m,
      stop: { type: "spring", stiffness: row.stop_rate_N_per_m },
    })
    return { compression_mm: out.stoppingLength * 1000, peak_force_N: out.peakForce }
  },
  // a weight that falls on a helical spring: its speed from the drop, its weight still pushing
  "impact-som-sarkar-8-5": (row) => {
    const rate = (row.modulus_N_per_mm2 * row.wire_mm ** 4) / (64 * row.mean_radius_mm ** 3 * row.turns)
    const out = straight(row.weight_N / 9.81, Math.sqrt(2 * 9.81 * row.drop_m), row.weight_N, { type: "spring", stiffness: rate * 1000 })
    return {
      extension_cm: out.stoppingLength * 100,
      stress_N_per_mm2: (16 * out.peakForce * row.mean_radius_mm) / (Math.PI * row.wire_mm ** 3),
    }
  },
  // two wagons as the one mass that closes on the other, m1·m2/(m1 + m2), on their springs
  "impact-khurmi-3-20": (row) => {
    const mass = (row.m1_kg * row.m2_kg) / (row.m1_kg + row.m2_kg)
    const out = straight(mass, (row.u1_km_per_h - row.u2_km_per_h) / 3.6, 0, {
      type: "spring",
      stiffness: row.springs * row.spring_N_per_m,
    })
    return { compression_mm: out.stoppingLength * 1000 }
  },
  // two flywheels likewise, on a torsion spring
  "impact-khurmi-3-21": (row) => {
    const inertia = (row.ia_kg_m2 * row.ib_kg_m2) / (row.ia_kg_m2 + row.ib_kg_m2)
    const out = straight(inertia, (row.speed_a_rpm * Math.PI) / 30, 0, { type: "spring", stiffness: row.rate_N_m_per_rad })
    return { energy_J: out.energy, twist_deg: (out.stoppingLength * 180) / Math.PI }
  },
  "impact-rotational-swing-bridge": (row) => {
    const out = endStop({
      inertia: row.inertia_kg_m2,
      speed: row.speed_rad_per_s,
      drivingTorque: row.driving_torque_N_m,
      stopRadius: row.arm_radius_m,
      stop: { type: "absorber", stroke: row.stroke_m },
    })
    return { kinetic_energy_J: out.kineticEnergy, drive_energy_J: out.drivingWork, total_energy_J: out.energy }
  },
}

const notTwo = "endStop answers how the bodies close, not how they part"
/** Keys that a check leaves out, and why. */
export const stopWithout: Record<string, Record<string, string>> = {
  "impact-khurmi-3-20": Object.fromEntries(
    ["common_m_per_s", "v1_elastic_m_per_s", "v2_elastic_m_per_s", "v1_m_per_s", "v2_m_per_s", "loss_J"].map((key) => [key, notTwo]),
  ),
  "impact-khurmi-3-21": Object.fromEntries(["final_a_rpm", "final_b_rpm"].map((key) => [key, notTwo])),
}
