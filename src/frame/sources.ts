import type { Source } from "../solver/index.js"

/** Gere and Goodno on stress, bending, torsion and impact. */
export const GERE: Source = { title: "Mechanics of Materials", by: "J. M. Gere, B. J. Goodno", edition: "7th, 2009", verified: "seen" }

/** Timoshenko and Gere on shear deflection. */
export const TIMOSHENKO_GERE: Source = {
  title: "Mechanics of Materials",
  by: "S. P. Timoshenko, J. M. Gere",
  edition: "1972",
  verified: "not-seen",
}

/** Timoshenko and Goodier on torsion of bars. */
export const ELASTICITY: Source = {
  title: "Theory of Elasticity",
  by: "S. P. Timoshenko, J. N. Goodier",
  edition: "3rd, 1970",
  where: "article 109",
  verified: "not-seen",
}

/** Torsion of thin closed tubes. */
export const BREDT: Source = {
  title: "Kritische Bemerkungen zur Drehungselastizität",
  by: "R. Bredt",
  edition: "Zeitschrift des Vereines deutscher Ingenieure 40, 1896",
  where: "pages 785-790",
  verified: "not-seen",
}

/** Singularity functions for beams. */
export const MACAULAY: Source = {
  title: "Note on the deflection of beams",
  by: "W. H. Macaulay",
  edition: "Messenger of Mathematics 48, 1919",
  where: "pages 129-130",
  verified: "not-seen",
}

/** Tabulated shapes of rods bent far. */
export const MATTIASSON: Source = {
  title: "Numerical results from large deflection beam and frame problems analysed by elliptic integrals",
  by: "K. Mattiasson",
  edition: "Int. J. Numer. Meth. Eng. 17, 1981",
  where: "pages 145-153",
  verified: "not-seen",
}

/** Rods bent far, derived. */
export const FRISCH_FAY: Source = { title: "Flexible Bars", by: "R. Frisch-Fay", edition: "1962", where: "chapter 2", verified: "not-seen" }

/** Budynas and Nisbett's handbook of machine design. */
export const SHIGLEY: Source = {
  title: "Shigley's Mechanical Engineering Design",
  by: "R. G. Budynas, J. K. Nisbett",
  edition: "10th, 2015",
  verified: "not-seen",
}

/** Knock-down factors of thin round walls. */
export const SP_8007: Source = {
  title: "Buckling of thin-walled circular cylinders",
  by: "NASA",
  edition: "SP-8007, 1968",
  where: "section 4",
  verified: "not-seen",
}

/** Forces of walking people. */
export const FOOTFALL: Source = {
  title: "A design guide for footfall induced vibration of structures",
  by: "M. R. Willford, P. Young",
  edition: "CCIP-016, 2006",
  where: "table 4.3",
  verified: "not-seen",
}

/** Frequency equations of bars. */
export const BLEVINS: Source = {
  title: "Formulas for Natural Frequency and Mode Shape",
  by: "R. D. Blevins",
  edition: "1979",
  where: "tables 8-1 and 8-8",
  verified: "not-seen",
}

/** Forced vibration. */
export const THOMSON: Source = {
  title: "Theory of Vibration with Applications",
  by: "W. T. Thomson",
  edition: "5th, 1998",
  where: "chapter 3",
  verified: "not-seen",
}

/** Moments of inertia of bodies. */
export const MERIAM: Source = {
  title: "Engineering Mechanics: Dynamics",
  by: "J. L. Meriam, L. G. Kraige",
  edition: "7th, 2012",
  where: "appendix B, table D/4",
  verified: "not-seen",
}

/** Beams over several supports and frames with bending joints. */
export const HIBBELER_STRUCTURES: Source = {
  title: "Structural Analysis",
  by: "R. C. Hibbeler",
  edition: "8th, 2012",
  verified: "not-seen",
}

/** Buckling of members and frames. */
export const TIMOSHENKO_STABILITY: Source = {
  title: "Theory of Elastic Stability",
  by: "S. P. Timoshenko, J. M. Gere",
  edition: "2nd, 1961",
  where: "chapter 2 (bars and frames)",
  verified: "not-seen",
}

/** Counting the buckling loads of a frame. */
export const WITTRICK_WILLIAMS: Source = {
  title: "A general algorithm for computing natural frequencies of elastic structures",
  by: "W. H. Wittrick, F. W. Williams",
  edition: "Quart. J. Mech. Appl. Math. 24, 1971",
  where: "pages 263-284",
  verified: "not-seen",
}

/** Steel structures, when sway counts. */
export const EN_1993_1: Source = {
  title: "EN 1993-1-1, Design of steel structures: general rules",
  by: "CEN",
  edition: "2005",
  where: "clause 5.2.1",
  verified: "not-seen",
}

/** Rings under opposite loads. */
export const ROARK: Source = {
  title: "Roark's Formulas for Stress and Strain",
  by: "W. C. Young, R. G. Budynas",
  edition: "8th, 2012",
  where: "table 9.2, case 1",
  verified: "not-seen",
}

/** Safety factors by what is known of load and material. */
export const VIDOSIC: Source = { title: "Machine Design Projects", by: "J. P. Vidosic", edition: "1957", verified: "not-seen" }

/** Strength classes and stress areas of bolts. */
export const ISO_898: Source = {
  title: "ISO 898-1, Mechanical properties of fasteners: bolts, screws and studs",
  by: "ISO",
  edition: "2009",
  verified: "seen",
}

/** Coarse threads. */
export const ISO_261: Source = {
  title: "ISO 261, ISO general purpose metric screw threads: general plan",
  by: "ISO",
  edition: "1998",
  where: "table 2",
  verified: "not-seen",
}

/** Stainless bolts. */
export const ISO_3506: Source = {
  title: "ISO 3506-1, Mechanical properties of corrosion-resistant stainless steel fasteners",
  by: "ISO",
  edition: "2020",
  where: "table 3",
  verified: "not-seen",
}

/** Bolts in shear, edge distances. */
export const EN_1993: Source = {
  title: "EN 1993-1-8, Design of steel structures: joints",
  by: "CEN",
  edition: "2005",
  verified: "not-seen",
}

/** Creep of timber. */
export const EN_1995: Source = {
  title: "EN 1995-1-1, Design of timber structures",
  by: "CEN",
  edition: "2004",
  where: "table 3.2 (deformation factor 0.8)",
  verified: "not-seen",
}

/** The test of deflection under load. */
export const ISO_75: Source = {
  title: "ISO 75-1, Plastics: determination of temperature of deflection under load",
  by: "ISO",
  edition: "2020",
  where: "clause 3",
  verified: "not-seen",
}

/** Welded aluminium. */
export const ALUMINUM_MANUAL: Source = {
  title: "Aluminum Design Manual",
  by: "Aluminum Association",
  edition: "2015",
  where: "table A.4.3",
  verified: "not-seen",
}

/** Steel pipe sizes. */
export const ASME_B36_10: Source = {
  title: "ASME B36.10M, Welded and seamless wrought steel pipe",
  by: "ASME",
  edition: "2018",
  where: "table of dimensions and weights",
  verified: "not-seen",
}

/** PVC pipe sizes and tolerances. */
export const ASTM_D1785: Source = {
  title: "ASTM D1785, Poly(vinyl chloride) plastic pipe, schedules 40, 80 and 120",
  by: "ASTM",
  edition: "2015",
  where: "tables 1 and 2",
  verified: "seen",
}

/** Pressure a PVC pipe stands when warm. */
export const PIPE_DERATING: Source = {
  title: "Industrial PVC pipe: temperature derating of schedule 40 and 80",
  by: "pipe maker",
  verified: "seen",
}
