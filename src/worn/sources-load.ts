import type { Source } from "../solver/index.js"

// Body and segments

export const ANSUR: Source = {
  title: "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public files",
  by: "C. C. Gordon and others",
  edition: "NATICK/TR-15/007, 2014",
  where: "statistics of every measured person: mean, sample standard deviation, 5th, 50th and 95th percentile, correlation with stature",
  verified: "seen",
}
export const DE_LEVA: Source = {
  title: "Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters",
  by: "P. de Leva",
  edition: "J. Biomech. 29, 1996",
  where: "table 4: masses, centres and radii",
  verified: "seen",
}
/** Lengths of the samples' segments and their stature: other columns of the same tables. */
export const DE_LEVA_LENGTHS: Source = {
  ...DE_LEVA,
  where: "lengths of segments, the shank, mean stature of the samples",
  verified: "not-seen",
}
export const WINTER: Source = {
  title: "Biomechanics and Motor Control of Human Movement",
  by: "D. A. Winter",
  edition: "4th, 2009",
  where: "table 4.1",
  verified: "seen",
}
export const DRILLIS: Source = {
  title: "Body Segment Parameters, New York University report 1166-03 (reproduced by Winter, figure 4.1)",
  by: "R. Drillis, R. Contini",
  edition: "1966",
  where: "segment lengths as fractions of stature",
  verified: "not-seen",
}
export const DAVIDOVITS: Source = {
  title: "Biomechanics and Exercise Physiology",
  by: "A. T. Johnson (after Davidovits 1975)",
  edition: "1991",
  where: "section 2.2.1: centre of mass at 56 % of stature",
  verified: "seen",
}
export const AAOS: Source = {
  title: "Joint Handling: Method of Measuring and Recording",
  by: "American Academy of Orthopaedic Surgeons",
  edition: "1965",
  where: "elbow flexion 150°, shoulder horizontal extension 45°",
  verified: "not-seen",
}

// Load on the body

export const HALL: Source = {
  title: "Basic Biomechanics",
  by: "S. J. Hall",
  edition: "6th, 2012",
  where: "chapter 9: 15 % of body mass; problem 9.1: lever arm of the back muscles",
  verified: "seen",
}
export const HONG: Source = {
  title: "Gait and posture responses to backpack load during level walking in children",
  by: "Y. Hong, G.-P. Brueggemann",
  edition: "2000",
  where: "abstract: trunk lean unchanged to 15 %, raised at 20 %",
  verified: "seen",
}
export const CHILD_PACKS: Source = {
  title: "Backpack guidance for children: no more than 10 to 20 % of body mass",
  by: "American Academy of Pediatrics; American Occupational Therapy Association",
  edition: "2018",
  verified: "seen",
}
export const ADP_3_90: Source = {
  title: "ADP 3-90, Offense and Defense",
  by: "US Army",
  edition: "2019",
  where: "soldier load",
  verified: "seen",
}
export const FM_21_18: Source = {
  title: "FM 21-18, Foot Marches",
  by: "US Army",
  edition: "1990",
  where: "chapter 5",
  verified: "not-seen",
}
export const NASHNER: Source = {
  title: "Limits of stability of the standing adult",
  by: "after L. M. Nashner",
  where: "12.5° fore and aft, 16° side to side, in all",
  verified: "seen",
}
export const STRUBE: Source = {
  title: "The effect of military load carriage on postural sway, forward trunk lean, and pelvic girdle motion",
  by: "E. M. Strube and others",
  edition: "2017",
  where: "abstract: sway +16 to +52 % with 16 and 20 kg",
  verified: "seen",
}
export const ATTWELLS: Source = {
  title: "Influence of carrying heavy loads on soldiers' posture, movements and gait",
  by: "R. L. Attwells and others",
  edition: "Ergonomics 49, 2006",
  where: "abstract",
  verified: "seen",
}
export const HEAD_MASS: Source = {
  title: "Preliminary head-supported mass performance guidance for dismounted soldier environments",
  by: "A. M. Madison and others",
  edition: "Mil. Med. 188, 2023",
  where: "moment of 134 N·cm about the joint of head and neck",
  verified: "seen",
}
export const NIOSH_1981: Source = {
  title: "Work Practices Guide for Manual Lifting",
  by: "NIOSH",
  edition: "publication 81-122, 1981",
  where: "compression of the low back: 3400 N",
  verified: "not-seen",
}
export const CCIP_016: Source = {
  title: "A design guide for footfall induced vibration of structures, CCIP-016",
  by: "M. R. Willford, P. Young",
  edition: "2006",
  where: "table 4.3, walking, design values",
  verified: "not-seen",
}
export const PACE: Source = {
  title: "Frequency and velocity of people walking",
  by: "A. Pachi, T. Ji",
  edition: "The Structural Engineer 83(3), 2005",
  where: "abstract: 2.0 steps a second at 1.4 m/s on floors, 1.8 at 1.3 m/s on footbridges, 800 people unaware",
  verified: "seen",
}
export const BASE_MOTION: Source = {
  title: "Mechanical Vibrations",
  by: "S. S. Rao",
  edition: "5th, 2011",
  where: "section 3.6, harmonic motion of the base; example 3.4: 1.100964",
  verified: "not-seen",
}
export const FLEXIBLE_PACK: Source = {
  title: "Characterization of the mechanical properties of backpacks and their influence on the energetics of walking",
  by: "M. Foissac and others",
  edition: "J. Biomech. 42, 2009",
  where: "abstract: peaks of acceleration lower by 22 and 8 % when slow, forces and oxygen uptake higher at 5.2 and 6 km/h",
  verified: "seen",
}
export const ONE_HAND_BAG: Source = {
  title: "The response of the body when carrying a handbag",
  by: "C. Phonpichit, W. Chansirinukor, C. Akamanon",
  edition: "Work 55, 2016",
  where: "abstract: 13 women, 5, 7 and 10 % of body mass; one-sided for long above 10 % can cause problems",
  verified: "seen",
}
export const SHOULDER_BAGS: Source = {
  title: "Relationship between shoulder pain and weight of shoulder bags in young women",
  by: "A. P. V. Abdon and others",
  edition: "Motricidade 14, 2018",
  where: "abstract: 316 women; those in pain carried about 4.02 % of body mass",
  verified: "seen",
}

// Straps, cords and releases

export const MACIAS: Source = {
  title: "Asymmetric loads and pain associated with backpack carrying by children",
  by: "B. R. Macias and others",
  edition: "J. Pediatr. Orthop. 28, 2008",
  where: "abstract",
  verified: "seen",
}
export const LAFIANDRA: Source = {
  title: "The distribution of forces between the upper and lower back during load carriage",
  by: "M. LaFiandra, E. Harman",
  edition: "Med. Sci. Sports Exerc. 36, 2004",
  where: "abstract: about 30 % of the vertical force on the lower back",
  verified: "not-seen",
}
export const WETTENSCHWILER: Source = {
  title: "Validation of an instrumented dummy to assess mechanical aspects of discomfort during load carriage",
  by: "P. D. Wettenschwiler and others",
  edition: "PLoS ONE 12, e0180069, 2017",
  where: "abstract: hip belt tensions of 30, 60, 90 and 120 N",
  verified: "seen",
}
export const GOLRIZ: Source = {
  title: "The effect of shoulder strap width and load placement on shoulder-backpack interface pressure",
  by: "S. Golriz and others",
  edition: "2017",
  where: "abstract: widths of 5 to 8 cm under 20 kg",
  verified: "seen",
}
export const HOLEWIJN: Source = {
  title: "Physiological strain due to load carrying",
  by: "M. Holewijn",
  edition: "Eur. J. Appl. Physiol. 61, 1990",
  where: "abstract",
  verified: "seen",
}
export const CAPSTAN: Source = {
  title: "Capstan equation: tension of a band over a round surface with friction",
  by: "L. Euler, J. A. Eytelwein",
  verified: "seen",
}
export const EN_71_1: Source = {
  title: "EN 71-1, Safety of toys: mechanical and physical properties",
  by: "CEN",
  edition: "2005+A8:2009",
  where: "clause 5.4, as quoted: a cord that can form a loop at the neck parts at 25 N or less; later editions changed lengths",
  verified: "seen",
  read: "2026-11-28",
}

export const BREAK_AWAY_CORDS: Source = {
  title: "Toy updates: cords that break off below 25 N are outside the rule for drawstrings on dressing-up clothes",
  by: "SGS",
  edition: "July 2020",
  where: "cords",
  verified: "seen",
  read: "2026-11-28",
}
export const CHILDREN_CORDS: Source = {
  title: "Cords and drawstrings on children's clothing (EN 14682)",
  by: "Tukes, Finnish Safety and Chemicals Agency",
  where:
    "up to 7 years and 134 cm: no cords at hood and neck; up to 14 years: no free ends at the neck; stage costumes are outside the rule",
  verified: "seen",
  read: "2026-11-28",
}
export const NECK_FORCE: Source = {
  title: "Measurement of force to obstruct the cervical arteries and distribution of tension exerted on a ligature in hanging",
  edition: "2009",
  where: "abstract: 6 kg for the carotid arteries, 7 kg for the vertebral",
  verified: "seen",
}
export const SKIN_FRICTION: Source = {
  title:
    "Evaluating the repeatability of friction coefficient measurements and tactile perceptions in skin–textile interactions across body regions",
  by: "M. Temel, A. A. Johnson, A. B. Lloyd",
  edition: "Tribology Letters 70, 2022",
  where: "abstract: cotton at rest on skin, 0.90 ± 0.19 on the chest, 0.31 ± 0.07 on the back of the forearm",
  verified: "seen",
}

// Cost of walking

export const PANDOLF: Source = {
  title: "Predicting energy expenditure with loads while standing or walking very slowly",
  by: "K. B. Pandolf, B. Givoni, R. F. Goldman",
  edition: "J. Appl. Physiol. 43, 1977",
  where: "equation",
  verified: "seen",
}
export const SANTEE: Source = {
  title: "Downhill correction to the load-carriage equation of Pandolf and others",
  by: "W. R. Santee and others",
  edition: "2001",
  where: "downhill correction",
  verified: "seen",
}
export const LOONEY_2019: Source = {
  title: "Estimating energy expenditure during level, uphill, and downhill walking",
  by: "D. P. Looney and others",
  edition: "Med. Sci. Sports Exerc. 51, 2019",
  where: "graded walking equation",
  verified: "seen",
}
export const LOONEY_2022: Source = {
  title: "Modeling the metabolic costs of heavy military backpacking",
  by: "D. P. Looney and others",
  edition: "Med. Sci. Sports Exerc. 54, 2022",
  where: "equations 2 and 4",
  verified: "seen",
}
export const ACSM: Source = {
  title: "ACSM's Guidelines for Exercise Testing and Prescription",
  by: "American College of Sports Medicine",
  edition: "9th, 2014 (equation as quoted in McArdle, Katch and Katch, Exercise Physiology, chapter 10)",
  where: "walking equation",
  verified: "seen",
}
export const LUDLOW: Source = {
  title: "Walking economy is predictably determined by speed, grade, and gravitational load",
  by: "L. W. Ludlow, P. G. Weyand",
  edition: "J. Appl. Physiol. 123, 2017",
  where: "table 4",
  verified: "seen",
}
export const GIVONI: Source = {
  title: "Biomechanics and Exercise Physiology",
  by: "A. T. Johnson (after B. Givoni and R. F. Goldman, 1971)",
  edition: "1991",
  where: "equation 5.5.1",
  verified: "seen",
}
export const TERRAIN: Source = {
  title: "Terrain coefficients for energy cost prediction",
  by: "R. G. Soule, R. F. Goldman",
  edition: "J. Appl. Physiol. 32, 1972 (reprinted in Johnson 1991, table 5.5.1)",
  where: "terrain factors",
  verified: "not-seen",
}
export const PLACEMENT: Source = {
  title: "Energy cost of loads carried on the head, hands, or feet",
  by: "R. G. Soule, R. F. Goldman",
  edition: "J. Appl. Physiol. 27, 1969 (reprinted in Johnson 1991, table 2.5.1)",
  where: "cost of a kilogram by where it is carried",
  verified: "seen",
}
export const PASSMORE: Source = {
  title: "Human energy expenditure",
  by: "R. Passmore, J. V. G. A. Durnin",
  edition: "Physiol. Rev. 35, 1955",
  where: "energy of walking by body mass, 36 to 91 kg",
  verified: "seen",
}

// Endurance and rest

export const FREY_LAW_2010: Source = {
  title: "Endurance time is joint-specific: a modelling and meta-analysis investigation",
  by: "L. A. Frey Law, K. G. Avin",
  edition: "Ergonomics 53, 2010",
  where: "power models by joint",
  verified: "not-seen",
}
export const FREY_LAW_2012: Source = {
  title:
    "A three-compartment muscle fatigue model accurately predicts joint-specific maximum endurance times for sustained isometric tasks",
  by: "L. A. Frey-Law, J. M. Looft, J. Heitsman",
  edition: "J. Biomech. 45, 2012",
  where: "recovery rate of the trunk",
  verified: "not-seen",
}
export const KAMON: Source = {
  title: "Biomechanics and Exercise Physiology",
  by: "A. T. Johnson (after E. Kamon 1981)",
  edition: "1991",
  where: "equations 2.6.1 to 2.6.4, table 2.2.2",
  verified: "seen",
}
export const EL_AHRACHE: Source = {
  title: "Percentile values for determining maximum endurance times for static muscular work",
  by: "K. El ahrache, D. Imbeau, B. Farbos",
  edition: "Int. J. Ind. Ergon. 36, 2006",
  where: "models compared, Rohmert 1960 among them",
  verified: "not-seen",
}
export const ROHMERT_1973: Source = {
  title: "Problems of determination of rest allowances",
  by: "W. Rohmert",
  edition: "Applied Ergonomics 4, 1973",
  where: "rest after a static hold",
  verified: "not-seen",
}
export const NIOSH_1993: Source = {
  title: "Revised NIOSH equation for the design and evaluation of manual lifting tasks",
  by: "T. R. Waters and others",
  edition: "Ergonomics 36, 1993",
  where: "energy criterion: 50, 40 and 33 % of the aerobic capacity for 1, 2 and 8 h",
  verified: "not-seen",
}

// Lifting

export const NIOSH_1994: Source = {
  title: "Applications manual for the revised NIOSH lifting equation",
  by: "T. R. Waters, V. Putz-Anderson, A. Garg",
  edition: "publication 94-110, 1994",
  where: "sections 1.2 and 1.3",
  verified: "seen",
}
/** Tables of the manual that were not compared with it. */
export const NIOSH_TABLES: Source = { ...NIOSH_1994, where: "table 5 (up to 2 and 8 h) and table 7", verified: "not-seen" }
export const ISO_11228_1: Source = {
  title: "ISO 11228-1, Ergonomics: manual handling, lifting, lowering and carrying",
  by: "ISO",
  edition: "2021",
  where: "reference masses by sex and age",
  verified: "not-seen",
}
export const TEAM_LIFTS: Source = {
  title: "Manual handling: Manual Handling Operations Regulations 1992, guidance on regulations (L23)",
  by: "Health and Safety Executive",
  where: "paragraphs 119 and 120: two people two thirds, three people half of the sum of what they manage singly",
  verified: "seen",
}
