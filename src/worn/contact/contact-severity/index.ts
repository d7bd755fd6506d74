import { inconsistent, optionsFrom, type SiOf, type Solver, solver } from "../../../solver/index.js"
import { approachSource, contactSource, doorForceSource, foamSource } from "../../sources-around.js"
import { contactRegions, noContact, usableFoam } from "../data-contact.js"
import { contactCautions } from "./cautions.js"
import { contactFormulae } from "./formulae.js"
import type { ContactSeverity, ContactSeverityCaution, ContactSeverityInput } from "./types.js"

export type { ContactSeverity, ContactSeverityInput } from "./types.js"

function movingPart(si: SiOf<ContactSeverityInput>): { readonly mass: number; readonly speed: number; readonly radius: number | null } {
  if (si.movingMass !== null) return { mass: si.movingMass, speed: si.movingSpeed as number, radius: si.strikeRadius }
  const [mass, length, swing] = [si.armMass as number, si.armLength as number, si.swingSpeed as number]
  const radius = si.strikeRadius ?? length
  return { mass: (mass * length ** 2) / (3 * radius ** 2), speed: swing * radius, radius }
}

function solve(si: SiOf<ContactSeverityInput>): ContactSeverity {
  const body = contactRegions[si.region]
  const part = movingPart(si)
  const contactSpeed = part.speed + si.approachSpeed
  const reducedMass = 1 / (1 / body.mass + 1 / part.mass)
  const contactEnergy = (reducedMass * contactSpeed ** 2) / 2
  const foam = si.paddingStiffness
  const stiffness = foam === null ? body.stiffness : 1 / (1 / body.stiffness + 1 / foam)
  const soft = Math.sqrt(2 * contactEnergy * stiffness)
  // force at which the padding is used up, and the energy body and padding hold by then
  const usable = Math.min(si.usablePaddingShare, usableFoam)
  const hardAt = foam === null ? 0 : foam * usable * (si.paddingThickness as number)
  const bottomed = foam !== null && soft > hardAt
  const left = contactEnergy - hardAt ** 2 / (2 * stiffness)
  const peakForce = bottomed ? Math.sqrt(hardAt ** 2 + 2 * body.stiffness * left) : soft
  const peakBareForce = Math.sqrt(2 * contactEnergy * body.stiffness)
  const transientLimit = body.transient === null ? null : body.transient * body.force
  const forceLimit = transientLimit ?? body.force
  // up to the limit the padding gives way first, then the bare body
  const soaked = foam === null ? forceLimit : Math.min(forceLimit, hardAt)
  const peakPressure = si.contactArea === null ? null : peakForce / si.contactArea
  const pressureLimit = (body.transient ?? 1) * body.pressure
  const clampingForce = si.peakDriveMoment === null || part.radius === null ? null : si.peakDriveMoment / part.radius
  const forceUtilisation = peakForce / forceLimit
  const pressureUtilisation = peakPressure === null ? null : peakPressure / pressureLimit
  const clampingUtilisation = clampingForce === null ? null : clampingForce / body.force
  const forbidden = noContact.includes(si.region)
  const utilisation = Math.max(forceUtilisation, pressureUtilisation ?? 0, clampingUtilisation ?? 0)
  return {
    contactSpeed,
    effectiveMass: part.mass,
    kineticEnergy: (part.mass * contactSpeed ** 2) / 2,
    reducedMass,
    contactEnergy,
    stiffness,
    peakForce,
    peakBareForce,
    paddingCompression: foam === null ? 0 : (bottomed ? hardAt : soft) / foam,
    bottomed,
    contactDuration: bottomed ? null : Math.PI * Math.sqrt(reducedMass / stiffness),
    transientLimit,
    clampingLimit: body.force,
    forceLimit,
    forceUtilisation,
    speedLimit: Math.sqrt((soaked ** 2 / stiffness + (forceLimit ** 2 - soaked ** 2) / body.stiffness) / reducedMass),
    energyLimit: forceLimit ** 2 / (2 * body.stiffness),
    peakPressure,
    pressureLimit,
    pressureUtilisation,
    clampingForce,
    clampingUtilisation,
    utilisation,
    requiredPaddingThickness: foam === null ? null : soft / foam / usable,
    forbidden,
    withinLimits: !forbidden && utilisation <= 1,
    verdict: forbidden
      ? "nothing may strike head, face or neck: keep the part away from them"
      : utilisation > 1
        ? "above a published limit of pain: slow down, lighten, pad or keep people away"
        : "within the limits for adult workers that were compared, which is no clearance",
  }
}

/**
 * How hard a moving part strikes a person: speed, energy, peak force and pressure against published limits, with
 * padding, and the force on someone caught.
 *
 * Formula: an even arm of mass m and length L that strikes at radius r acts as m_e = m·L²/(3·r²) at v = ω·r + v_a. With
 * the body region's mass m_H and spring k_H: μ = 1/(1/m_H + 1/m_e), E = ½·μ·v², k = 1/(1/k_H + 1/k_p), F = √(2·E·k) =
 * v·√(μ·k). Where that uses up the padding (F > F_p = k_p·s·t) the rest meets the bare body: F = √(F_p² + 2·k_H·(E −
 * F_p²/(2·k))). Limits: clamping force F_q, transient 2·F_q; nothing may strike head, face or neck, whatever the
 * number, energy F²/(2·k_H). Here m and m_e are in kg, L, r, t (padding thickness) in m, ω in rad/s, v_a is the
 * person's own approach, k_p the padding's stiffness, s its usable share. Body model and limits are for adults at work,
 * blunt contact, head-on.
 *
 * **Inputs**
 * - `region`: body region struck [one of 12 words]
 * - `armMass`: mass of the arm [m_a; 1 g to 100 kg; optional]
 * - `armLength`: length of the arm [L; 10 mm to 10 m; optional]
 * - `swingSpeed`: swing speed [omega; 0 to 477.465 rpm; optional]
 * - `strikeRadius`: distance from hinge to contact [r_s; 10 mm to 10 m; optional]
 * - `movingMass`: moving mass [m_m; 1 g to 1000 kg; optional]
 * - `movingSpeed`: speed of the moving mass [v_m; 0 to 50 m/s; optional]
 * - `approachSpeed`: approach speed of the person [v_a; 0 to 10 m/s; default 0]
 * - `paddingStiffness`: stiffness of the padding [k_p; 0.001 to 1000 N/mm; optional]
 * - `paddingThickness`: thickness of the padding [t_p; 0.1 mm to 1 m; optional]
 * - `usablePaddingShare`: usable share of the padding [s_p; 0.01 to 1; default 0.6]
 * - `contactArea`: area of contact [A_c; 0.01 mm² to 1 m²; optional]
 * - `peakDriveMoment`: peak moment of the drive [M_d; 0 to 100000 N m; optional]
 * - exactly one of `armMass` with `armLength` with `swingSpeed` and `movingMass` with `movingSpeed`
 * - `paddingStiffness` and `paddingThickness` only together
 * - `peakDriveMoment` only beside `strikeRadius` or `armLength`
 *
 * **Results**
 *
 * `contactSpeed`: speed of the contact [v; m/s]; `effectiveMass`: mass acting at the contact [m_e; kg];
 * `kineticEnergy`: kinetic energy [E_k; J]; `reducedMass`: reduced mass [mu; kg]; `contactEnergy`: energy into the
 * contact [E; J]; `stiffness`: stiffness of body and padding [k; N/m]; `peakForce`: peak force [F; N];
 * `peakBareForce`: peak force without padding [F_b; N]; `paddingCompression`: compression of the padding [x_p; m];
 * `bottomed`: padding used up [yes or no]; `contactDuration`: time of the contact [t_c; s]; `transientLimit`:
 * transient limit [F_t; N]; `clampingLimit`: clamping limit [F_q; N]; `forceLimit`: force limit that governs [F_l; N];
 * `forceUtilisation`: utilisation of the force limit [r_F; as a fraction]; `speedLimit`: speed of contact at the limit
 * [v_l; m/s]; `energyLimit`: energy at the limit, bare [E_l; J]; `peakPressure`: peak mean pressure [p; Pa];
 * `pressureLimit`: pressure limit [p_l; Pa]; `pressureUtilisation`: utilisation of the pressure limit [r_p; as a
 * fraction]; `clampingForce`: force on someone caught [F_c; N]; `clampingUtilisation`: utilisation of the clamping
 * limit [r_c; as a fraction]; `utilisation`: utilisation of the limit that governs [r; as a fraction];
 * `requiredPaddingThickness`: minimum padding thickness [t_n; m]; `forbidden`: no contact allowed [yes or no];
 * `withinLimits`: within every limit compared [yes or no]; `verdict`: what the comparison says [text].
 *
 * **Symbols of the working**
 *
 * m_H: effective mass of the region [kg]; k_H: spring of the region [N/m]; j: transient over clamping limit, 1 where
 * no transient contact is permitted; p_q: clamping limit of pressure [Pa]; r_r: radius of the contact, the tip [m];
 * s_u: usable share of the padding, no more than published; F_p: force at which the padding is used up [N]; F_m: part
 * of the limit met without padding [N].
 *
 * **Sources**
 * - ISO: ISO/TS 15066, Robots and robotic devices: collaborative robots, 2016, since carried into ISO 10218-2:2025,
 *   tables A.2 (force, pressure), A.3 (body model), A.4 (energy) (not verified against the document)
 * - CEN: EN 12453, Industrial, commercial and garage doors and gates: safety in use of power operated doors,
 *   2017+A1:2021, force limitation table (not verified against the document)
 * - L. J. Gibson, M. F. Ashby: Cellular Solids: Structure and Properties, 2nd edition, 1997, chapter 5: foams stiffen
 *   sharply near 60 to 80 % compression (not verified against the document)
 * - ISO: ISO 13855, Positioning of safeguards with respect to the approach of the human body, 2024, walking speed 1600
 *   mm/s
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { contactSeverity } from 'alula/worn'
 * const tip = contactSeverity({ region: 'chest', armMass: '0.8 kg', armLength: '0.9 m', swingSpeed: '2 rad/s' })
 * tip.contactSpeed // => 1.8
 * tip.peakForce // => 146.5
 * tip.forceUtilisation // => 0.523
 * ```
 */
export const contactSeverity: Solver<ContactSeverityInput, ContactSeverity, never, ContactSeverityCaution> = /* @__PURE__ */ solver<
  ContactSeverityInput,
  ContactSeverity,
  never,
  ContactSeverityCaution
>("contactSeverity", "How hard a moving part strikes someone", solve, () => ({
  input: {
    region: { kind: "choice", label: "body region struck", options: optionsFrom(contactRegions, (key) => key.replaceAll("-", " ")) },
    armMass: { kind: "mass", symbol: "m_a", label: "mass of the arm", min: 0.001, max: 100, typical: [0.1, 5], default: null },
    armLength: { kind: "length", symbol: "L", label: "length of the arm", min: 0.01, max: 10, typical: [0.2, 2], default: null },
    swingSpeed: { kind: "angularSpeed", symbol: "omega", label: "swing speed", min: 0, max: 50, typical: [0.2, 5], default: null },
    strikeRadius: {
      kind: "length",
      symbol: "r_s",
      label: "distance from hinge to contact",
      min: 0.01,
      max: 10,
      typical: [0.1, 2],
      default: null,
    },
    movingMass: { kind: "mass", symbol: "m_m", label: "moving mass", min: 0.001, max: 1000, typical: [0.1, 10], default: null },
    movingSpeed: { kind: "speed", symbol: "v_m", label: "speed of the moving mass", min: 0, max: 50, typical: [0.1, 3], default: null },
    approachSpeed: {
      kind: "speed",
      symbol: "v_a",
      label: "approach speed of the person",
      min: 0,
      max: 10,
      typical: [0, 1.6],
      default: 0,
    },
    paddingStiffness: {
      kind: "forcePerLength",
      symbol: "k_p",
      label: "stiffness of the padding",
      min: "0.001 N/mm",
      max: "1000 N/mm",
      typical: ["0.5 N/mm", "20 N/mm"],
      default: null,
    },
    paddingThickness: {
      kind: "length",
      symbol: "t_p",
      label: "thickness of the padding",
      min: "0.1 mm",
      max: 1,
      typical: ["5 mm", "60 mm"],
      default: null,
    },
    usablePaddingShare: {
      kind: "ratio",
      symbol: "s_p",
      label: "usable share of the padding",
      min: 0.01,
      max: 1,
      typical: [0.4, 0.8],
      default: usableFoam,
    },
    contactArea: {
      kind: "area",
      symbol: "A_c",
      label: "area of contact",
      min: "0.01 mm2",
      max: 1,
      typical: ["1 cm2", "50 cm2"],
      default: null,
    },
    peakDriveMoment: {
      kind: "moment",
      symbol: "M_d",
      label: "peak moment of the drive",
      min: 0,
      max: 1e5,
      typical: [1, 50],
      default: null,
    },
  },
  output: {
    contactSpeed: { kind: "speed", symbol: "v", label: "speed of the contact" },
    effectiveMass: { kind: "mass", symbol: "m_e", label: "mass acting at the contact" },
    kineticEnergy: { kind: "energy", symbol: "E_k", label: "kinetic energy" },
    reducedMass: { kind: "mass", symbol: "mu", label: "reduced mass" },
    contactEnergy: { kind: "energy", symbol: "E", label: "energy into the contact" },
    stiffness: { kind: "forcePerLength", symbol: "k", label: "stiffness of body and padding", unit: "N/mm" },
    peakForce: { kind: "force", symbol: "F", label: "peak force" },
    peakBareForce: { kind: "force", symbol: "F_b", label: "peak force without padding" },
    paddingCompression: { kind: "length", symbol: "x_p", label: "compression of the padding" },
    bottomed: { kind: "flag", label: "padding used up" },
    contactDuration: { kind: "time", symbol: "t_c", label: "time of the contact" },
    transientLimit: { kind: "force", symbol: "F_t", label: "transient limit" },
    clampingLimit: { kind: "force", symbol: "F_q", label: "clamping limit" },
    forceLimit: { kind: "force", symbol: "F_l", label: "force limit that governs" },
    forceUtilisation: { kind: "ratio", symbol: "r_F", label: "utilisation of the force limit", unit: "%" },
    speedLimit: { kind: "speed", symbol: "v_l", label: "speed of contact at the limit" },
    energyLimit: { kind: "energy", symbol: "E_l", label: "energy at the limit, bare" },
    peakPressure: { kind: "pressure", symbol: "p", label: "peak mean pressure" },
    pressureLimit: { kind: "pressure", symbol: "p_l", label: "pressure limit" },
    pressureUtilisation: { kind: "ratio", symbol: "r_p", label: "utilisation of the pressure limit", unit: "%" },
    clampingForce: { kind: "force", symbol: "F_c", label: "force on someone caught" },
    clampingUtilisation: { kind: "ratio", symbol: "r_c", label: "utilisation of the clamping limit", unit: "%" },
    utilisation: { kind: "ratio", symbol: "r", label: "utilisation of the limit that governs", unit: "%" },
    requiredPaddingThickness: { kind: "length", symbol: "t_n", label: "minimum padding thickness" },
    forbidden: { kind: "flag", label: "no contact allowed" },
    withinLimits: { kind: "flag", label: "within every limit compared" },
    verdict: { kind: "text", label: "what the comparison says" },
  },
  example: { region: "chest", armMass: "0.8 kg", armLength: "0.9 m", swingSpeed: "2 rad/s" },
  formulae: contactFormulae,
  sources: [contactSource, doorForceSource, foamSource, approachSource],
  either: [
    {
      exactlyOne: [
        ["armMass", "armLength", "swingSpeed"],
        ["movingMass", "movingSpeed"],
      ],
    },
    { together: ["paddingStiffness", "paddingThickness"] },
    // the moment is turned into a force at the place that strikes
    { given: "peakDriveMoment", needs: ["strikeRadius", "armLength"] },
  ],
  check: (si) => {
    if (si.armLength !== null && si.strikeRadius !== null && si.strikeRadius > si.armLength)
      return [
        inconsistent(
          ["strikeRadius"],
          "a place {strikeRadius length} from the hinge, beyond the tip",
          "no more than the arm's {armLength length}",
          { strikeRadius: si.strikeRadius, armLength: si.armLength },
        ),
      ]
    return []
  },
  cautions: contactCautions,
}))
