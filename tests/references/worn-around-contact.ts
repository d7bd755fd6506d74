import { type BodyRegion, contactPressures, contactRegions, doorForces } from "../../src/worn/contact/data-contact.js"
import { contactSeverity, pinchGap } from "../../src/worn/index.js"
import type { Check } from "../helpers/references.js"

const regions = Object.keys(contactRegions) as BodyRegion[]
const perMm = 1000

const force: Check = ({ body_region }) => {
  const out = contactSeverity({ region: body_region, movingMass: 1, movingSpeed: 1 })
  return {
    quasi_static_force_N: out.clampingLimit,
    transient_multiplier: out.transientLimit === null ? "not permitted" : out.transientLimit / out.clampingLimit,
  }
}
const model: Check = ({ body_region }) => {
  const { stiffness, mass } = contactRegions[body_region as BodyRegion]
  return { spring_N_per_mm: stiffness / perMm, effective_mass_kg: mass }
}
const energy =
  (region: BodyRegion): Check =>
  (i) => {
    const out = contactSeverity({ region, movingMass: 1, movingSpeed: 1 })
    // the row's own force and spring must be the region's, or the energy proves nothing
    if (out.transientLimit !== i.transient_force_N || contactRegions[region].stiffness !== i.spring_N_per_mm * perMm) return {}
    return { energy_J: out.energyLimit }
  }
const pressure: Check = ({ location }) => ({ pressure_N_per_cm2: contactPressures[location as keyof typeof contactPressures] })

const crushGap: Check = ({ body_part }) => {
  const found = pinchGap(pinchGap.example).parts.find(({ part }) => part === body_part)
  return { min_gap_mm: (found?.minGap as number) * 1000 }
}

/** Contact and crushing rows. */
export const contactChecks: Readonly<Record<string, Check>> = {
  ...Object.fromEntries(regions.map((r) => [`contact-force-${r}`, force])),
  ...Object.fromEntries(regions.map((r) => [`contact-model-${r}`, model])),
  ...Object.fromEntries(
    (["abdomen", "back-shoulders", "chest", "forearm-wrist", "pelvis", "thigh-knee", "upper-arm-elbow"] as const).map((r) => [
      `contact-energy-${r}`,
      energy(r),
    ]),
  ),
  // the other hand's back has no row of its own
  ...Object.fromEntries(
    Object.keys(contactPressures)
      .filter((p) => p !== "back-of-hand-other")
      .map((p) => [`contact-pressure-${p}`, pressure]),
  ),
  ...Object.fromEntries(["arm", "body", "finger", "foot", "hand-wrist-fist", "head", "toes"].map((p) => [`gap-${p}`, crushGap])),
  "contact-speed-chest": (i) => {
    // a machine's effective mass: half its moving mass and the load it carries
    const out = contactSeverity({ region: "chest", movingMass: i.moving_mass_kg / 2 + i.payload_kg, movingSpeed: 1 })
    return { reduced_mass_kg: out.reducedMass, speed_m_s: out.speedLimit, energy_J: out.energyLimit }
  },
  "contact-tip-effective-mass": (i) => {
    const out = contactSeverity({
      region: "face",
      armMass: i.arm_mass_kg,
      armLength: i.length_m,
      swingSpeed: i.speed_rad_s,
      strikeRadius: i.strike_radius_m,
    })
    return {
      effective_mass_kg: out.effectiveMass,
      kinetic_energy_J: out.kineticEnergy,
      tip_speed_m_s: out.contactSpeed,
      peak_force_N: out.peakForce,
    }
  },
  "contact-tip-padded": (i) => {
    const out = contactSeverity({
      region: "face",
      movingMass: i.effective_mass_kg,
      movingSpeed: i.tip_speed_m_s,
      paddingStiffness: i.foam_N_per_mm * perMm,
      paddingThickness: "40 mm",
    })
    return {
      series_stiffness_N_per_m: out.stiffness,
      peak_force_N: out.peakForce,
      foam_compression_mm: out.paddingCompression * 1000,
    }
  },
  "pinch-en12453-time-window": (i) => ({
    static_window_s: i.total_s - doorForces.dynamicTime,
    static_force_max_N: doorForces.static,
  }),
  "door-force-limits": () => ({
    dynamic_force_N: doorForces.dynamic,
    dynamic_duration_s: doorForces.dynamicTime,
    static_force_N: doorForces.static,
    dynamic_force_wide_gap_N: doorForces.dynamicWide,
  }),
}
