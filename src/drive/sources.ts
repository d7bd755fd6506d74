import type { Source } from "../solver/index.js"

/** Hughes and Drury on motors and drives. */
export const HUGHES: Source = { title: "Electric Motors and Drives", by: "A. Hughes, B. Drury", edition: "5th, 2019", verified: "not-seen" }

/** Budynas and Nisbett's handbook of machine design. */
export const SHIGLEY: Source = {
  title: "Shigley's Mechanical Engineering Design",
  by: "R. G. Budynas, J. K. Nisbett",
  edition: "10th, 2015",
  verified: "not-seen",
}

/** Copper's temperature coefficient. */
export const IEC_60028: Source = {
  title: "IEC 60028, International standard of resistance for copper",
  by: "IEC",
  edition: "1925",
  where: "clause 1",
  verified: "not-seen",
}

/** Ratings and duty types of electrical machines. */
export const IEC_60034: Source = {
  title: "IEC 60034-1, Rotating electrical machines: rating and performance",
  by: "IEC",
  edition: "2022",
  verified: "not-seen",
}

/** Thermal classes of insulation. */
export const IEC_60085: Source = {
  title: "IEC 60085, Electrical insulation: thermal evaluation and designation",
  by: "IEC",
  edition: "2007",
  verified: "not-seen",
}

/** Burn thresholds of hot surfaces. */
export const ISO_13732: Source = {
  title: "ISO 13732-1, Ergonomics of the thermal environment: contact with hot surfaces",
  by: "ISO",
  edition: "2006",
  verified: "not-seen",
  read: "2026-11-28",
}

/** Risk assessment and risk reduction for machinery. */
export const ISO_12100: Source = {
  title: "ISO 12100, Safety of machinery: general principles for design",
  by: "ISO",
  edition: "2010",
  verified: "not-seen",
  read: "2026-11-28",
}

/** Gaps that do not crush parts of the body. */
export const ISO_13854: Source = {
  title: "ISO 13854, Safety of machinery: minimum gaps to avoid crushing of parts of the human body",
  by: "ISO",
  edition: "2017",
  verified: "not-seen",
  read: "2026-11-28",
}

/** Makers' advice that a geared motor's currents bend away from the straight line. */
export const GEARMOTOR_SHEET: Source = {
  title: "37D metal gearmotors datasheet, compared with its own performance summary",
  edition: "revision 1.2, 2019",
  verified: "seen",
}

/** Bevan on gears and epicyclic trains. */
export const BEVAN: Source = { title: "The Theory of Machines", by: "T. Bevan", edition: "3rd, 1956", verified: "not-seen" }

/** Khurmi and Gupta on trains, belts and chains. */
export const KHURMI: Source = { title: "Theory of Machines", by: "R. S. Khurmi, J. K. Gupta", edition: "2005", verified: "not-seen" }

/** A gearmotor supplier on when worm gears lock. */
export const GEARMOTOR_FAQ: Source = {
  title: "FAQ for electric motors, gearmotors and frequency inverters",
  edition: "read 2026",
  verified: "seen",
}

/** Relations of triangular and trapezoidal moves. */
export const MOVE_PROFILES: Source = {
  title: "How to calculate velocity from triangular and trapezoidal move profiles",
  edition: "read 2026",
  verified: "seen",
}

/** Distance and time of ramps with limited jerk. */
export const S_CURVES: Source = {
  title: "Jerk-limited S-curve equations",
  edition: "read 2026",
  where: "verification table",
  verified: "seen",
}

/** Speed of machinery while people are within its reach. */
export const ISO_10218: Source = {
  title: "ISO 10218-1, Robotics: safety requirements",
  by: "ISO",
  edition: "2025",
  where: "reduced speed, 250 mm/s",
  verified: "not-seen",
}

/** A buffer maker on turning bodies that strike. */
export const ROTATIONAL_IMPACT: Source = {
  title: "Rotational impact: buffers for turning bodies",
  edition: "read 2026",
  where: "worked example, swing bridge",
  verified: "seen",
}

/** Energy, drive work and force of shock absorbers. */
export const ABSORBER_FORMULAE: Source = {
  title: "Calculation bases for the design of industrial shock absorbers",
  edition: "read 2026",
  verified: "seen",
}

/** A maker of stage winches on drum and rope diameters. */
export const WINCH_RATIOS: Source = {
  title: "What is the D/d ratio and how is it calculated?",
  edition: "read 2026",
  where: "18 for loads, 22 for people",
  verified: "seen",
}

/** A rigger's handbook on sheaves for fibre rope and wire. */
export const RIGGING: Source = { title: "The Complete Rigger's Apprentice", by: "B. Toss", edition: "1998", verified: "not-seen" }

/** Strength of wire rope bent over a sheave. */
export const SHEAVE_SIZE: Source = { title: "Sheave size and wire rope strength", edition: "read 2026", verified: "seen" }

/** American rules for cranes, also where winches are judged. */
export const OSHA_CRANES: Source = {
  title: "29 CFR 1910.179, Overhead and gantry cranes",
  by: "OSHA",
  edition: "2026",
  verified: "not-seen",
  read: "2026-11-29",
}

/** A rule of turns that stay on a drum. */
export const ALBERTA_OHS: Source = {
  title: "Occupational Health and Safety Code, part 21 Rigging",
  by: "Alberta",
  edition: "2009",
  where: "section 299, rope wound on a drum",
  verified: "seen",
  read: "2026-11-29",
}

/** A rule of safety factors of hoisting ropes. */
export const HOISTING_ROPES: Source = {
  title: "Code of Virginia, section 45.1-161.154, Hoisting ropes",
  by: "Virginia",
  edition: "read 2026",
  where: "5 for materials, 10 for people",
  verified: "seen",
  read: "2026-11-29",
}

/** Safety of power-driven winches. */
export const EN_14492: Source = {
  title: "EN 14492-1, Cranes: power driven winches and hoists, part 1: power driven winches",
  by: "CEN",
  edition: "2006",
  verified: "not-seen",
  read: "2026-11-29",
}

/** Backlash and stretch of control cables in their sheaths. */
export const CABLE_LOST_MOTION: Source = {
  title: "Accounting for lost motion",
  by: "W. Steuernagel",
  edition: "Machine Design, 2007",
  where: "backlash, deflection",
  verified: "seen",
}

/** Elastic stretch of small wire cables by how they are laid. */
export const CABLE_STRETCH: Source = { title: "Wire rope stretch", edition: "read 2026", where: "G factor table", verified: "seen" }

/** How long wire rope lasts over sheaves. */
export const SHEAVE_FATIGUE: Source = {
  title: "How sheave size affects wire rope strength",
  edition: "read 2026",
  where: "bending life factors",
  verified: "seen",
}

/** Loss of wire rope over a sheave on rolling bearings. */
export const SHEAVE_EFFICIENCY: Source = { title: "Efficiency of the rope", edition: "read 2026", where: "per sheave", verified: "seen" }

/** Working load of wire rope: a fifth of its breaking load. */
export const ROPE_WORKING_LOAD: Source = {
  title: "Wire rope strength",
  edition: "read 2026",
  where: "minimum breaking strength and safe load",
  verified: "seen",
}

/** A primer on toothed belts. */
export const TIMING_BELTS: Source = {
  title: "The world of timing belts",
  edition: "read 2026",
  where: "teeth in mesh, from six on without loss",
  verified: "not-seen",
}

/** Selection of roller chain drives. */
export const ISO_10823: Source = {
  title: "ISO 10823, Guidelines for the selection of roller chain drives",
  by: "ISO",
  edition: "2004",
  where: "sprockets, centre distance and number of links",
  verified: "not-seen",
}

/** Safety factors of roller chains by speed. */
export const CHAIN_FACTORS: Source = {
  title: "A Textbook of Machine Design",
  by: "R. S. Khurmi, J. K. Gupta",
  edition: "2005",
  where: "table 21.5, roller chains: from 7 at 50 rev/min on",
  verified: "not-seen",
}
