// Every publication that the rig's own solvers cite, written once.
import type { Source } from "../solver/index.js"

export const MACHINERY_SAFETY: Source = {
  title: "ISO 12100, Safety of machinery: general principles for design",
  edition: "2010",
  where: "clause 6.2.2 (crushing and shearing hazards)",
  verified: "not-seen",
}

export const METERS: Source = {
  title: "IEC 61010-2-033, Hand-held meters",
  edition: "2019",
  verified: "not-seen",
}

export const PORTABLE_CELLS: Source = {
  title: "IEC 62133-2, Safety of portable sealed lithium cells and batteries",
  edition: "2017",
  where: "annex A",
  verified: "not-seen",
}

export const BLADE_FUSES: Source = {
  title: "ISO 8820-1, Road vehicles: fuse-links",
  edition: "2014",
  verified: "not-seen",
}

export const MOTORS: Source = {
  title: "Electric Motors and Drives",
  by: "A. Hughes, B. Drury",
  edition: "5th edition, 2019",
  where: "chapter 3 (brushed motor: V = E + I·R, E ∝ speed, torque ∝ current)",
  verified: "not-seen",
}

export const SCREWS: Source = {
  title: "Shigley's Mechanical Engineering Design",
  by: "R. G. Budynas, J. K. Nisbett",
  edition: "11th edition, 2020",
  where: "chapter 8 (power screws)",
  verified: "not-seen",
}

export const CONTACT_LIMITS: Source = {
  title: "ISO/TS 15066, Robots and robotic devices: collaborative robots",
  edition: "2016",
  where: "table A.2",
  verified: "not-seen",
}

export const REDUCED_SPEED: Source = {
  title: "ISO 10218-1, Robotics: safety requirements, part 1: industrial robots",
  edition: "2025",
  where: "reduced speed, 250 mm/s",
  verified: "not-seen",
}

export const FOOTFALL: Source = {
  title: "A design guide for footfall induced vibration of structures",
  by: "M. R. Willford, P. Young",
  edition: "CCIP-016, 2006",
  where: "table 4.3 (first harmonic)",
  verified: "not-seen",
}

export const CRUSH_GAPS: Source = {
  title: "ISO 13854, Minimum gaps to avoid crushing of parts of the human body",
  edition: "2017",
  where: "table 1",
  verified: "not-seen",
}

export const FITTING: Source = {
  title: "Numerical Recipes",
  by: "W. H. Press and others",
  edition: "3rd edition, 2007",
  where: "chapter 15 (χ² fitting, maximum likelihood with priors)",
  verified: "not-seen",
}

export const MOTION: Source = { title: "Limit case of the equation of motion", verified: "practice" }

export const EACH_CHECK: Source = {
  title: "Each check's own: see the source beside its limit, and the solver it calls",
  verified: "practice",
}
