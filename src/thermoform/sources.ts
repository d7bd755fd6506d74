import { commonPractice, type Source } from "../solver/index.js"

const seen = (title: string, more: Omit<Source, "title" | "verified"> = {}): Source => ({ title, ...more, verified: "seen" })
const notSeen = (title: string, more: Omit<Source, "title" | "verified"> = {}): Source => ({ title, ...more, verified: "not-seen" })

export const practice: Source = commonPractice

// heat conduction and standards
export const CARSLAW: Source = notSeen("Conduction of Heat in Solids", { by: "H. S. Carslaw and J. C. Jaeger", edition: "2nd, 1959" })
export const INCROPERA: Source = notSeen("Fundamentals of Heat and Mass Transfer", {
  by: "F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine",
  edition: "6th, 2007",
  where: "table 1.1",
})
export const CODATA: Source = notSeen("CODATA recommended values of the fundamental physical constants", { by: "NIST", edition: "2018" })
export const SUNLIGHT: Source = notSeen("ASTM G173, Standard tables for reference solar spectral irradiances", {
  by: "ASTM",
  edition: "2003",
})
export const HOT_CAR: Source = notSeen("Maximum vehicle cabin temperatures under different meteorological conditions", {
  by: "A. Grundstein, V. Meentemeyer, J. Dowd",
  edition: "Int. J. Biometeorol. 53, 2009",
})

// hazards
export const BURN_TIMES: Source = seen("Burn times in hot water, table after Moritz and Henriques (Am. J. Pathol. 23, 1947)", {
  by: "Shriners Burn Institute",
  where: "60 °C in 5 s or less",
})
export const HOT_SURFACES: Source = notSeen("ISO 13732-1, Ergonomics of the thermal environment, contact with hot surfaces", {
  by: "ISO",
  edition: "2006",
  where: "burn thresholds, contact of 1 min and longer; not for a tenth of the skin or vital areas of the face",
})
export const CHLORIDE_LIMIT: Source = seen("Three new IDLH profiles available from NIOSH", {
  by: "AIHA",
  edition: "24 July 2025",
  where: "hydrogen chloride: ceiling 5 ppm, dangerous to life at 45 ppm",
  read: "2026-11-28",
})
export const PVC_RESIN_SAFETY: Source = seen("Safety and handling of PVC resin", {
  by: "a PVC resin maker",
  where: "stability and reactivity: hydrogen chloride above 120 °C",
})
export const PVC_COMPOUND_SAFETY: Source = seen("Material safety data sheet: rigid PVC compounds, pellet and powder", {
  edition: "16 May 2008",
  where: "section 10: emissions also in normal operation, gathering where ventilation is poor",
})
export const PVC_FOAM_BOARD: Source = seen("Performance coefficient of PVC foam board", {
  by: "a PVC foam board maker",
  edition: "21 May 2019",
  where: "thermal performance: heat stability very poor, decomposition from 140 °C",
})
export const PVC_KINETICS: Source = notSeen(
  "Degradation and stabilization of poly(vinyl chloride) I, kinetics of the thermal degradation",
  {
    by: "R. Bacaloglu and M. Fisch",
    edition: "Polym. Degrad. Stab. 45, 1994, 301 to 313",
  },
)
export const PVC_STABILISERS: Source = seen("PVC stabilisers, technical note", {
  by: "Novista Group",
  where: "first paragraph: unstabilised resin degrades from 160 °C, browning, then blackening",
})
export const ACRYLIC_DEGRADATION: Source = seen("Thermal Degradation of Polymeric Materials", {
  by: "K. Pielichowski and J. Njuguna",
  edition: "2005",
  where: "5.7: weak links part at about 160 °C, chain ends at about 270 °C",
})
export const ACRYLIC_PROCESS: Source = seen("Acrylic process characteristics", {
  by: "an acrylic processor",
  where: "decomposition starts at 270 °C",
})
export const ABS_MELTING: Source = seen("ABS melting point, note", {
  by: "an ABS supplier",
  where: "decomposition line; styrene, acrylonitrile and butadiene traces appear while forming",
})
export const EVA_HEATED: Source = seen("Is EVA foam toxic when heated", {
  by: "an EVA foam seller",
  where: "vapours above its melting point, 80 to 120 °C",
})
export const POLYESTER_HEATED: Source = seen("Materials: polycaprolactone", {
  edition: "2013",
  where: "decomposition from 200 °C, carbon monoxide",
})
export const POLYESTER_STICKS: Source = seen("Sustained heating of polycaprolactone", { edition: "2008", where: "tacky at about 90 °C" })
export const FOAM_SAFETY: Source = notSeen("Safety data sheets of solvent-borne contact adhesives", {
  by: "the maker's datasheet for the adhesive used",
})

// forming temperatures
export const FORMING_TABLE: Source = notSeen("Technology of Thermoforming", {
  by: "J. L. Throne",
  edition: "1996",
  where: "forming-temperature table, ±6 K between handbooks",
})
export const FORMING_TABLE_ABS: Source = seen("Technology of Thermoforming", {
  by: "J. L. Throne",
  edition: "1996",
  where: "forming-temperature table, ABS row, as a supplier's page quotes it",
})
export const PIPE_BENDING: Source = seen("Bending clear PVC pipe", {
  by: "U.S. Plastic Corp., from a pipe maker's guidance",
  where: "225 to 275 °F, sharp bends 250 to 275 °F, support inside past 30°",
})
export const PVC_FOAM_GUIDE: Source = seen("Usage and fabrication guidelines: thermoforming", {
  by: "an expanded PVC panel maker",
  where: "bending from 250 °F, air ovens 260 to 280 °F; 30 to 50 s per mm, radius 3 and border 20 gauges, both sides from 5 to 10 mm",
})
export const PVC_FOAM_FORMING: Source = seen("Vacuum forming PVC foam sheet", {
  by: "a PVC foam sheet maker",
  edition: "22 April 2005",
  where: "PVC elastic from 115 to 130 °C, degrades at 180 °C; no drying, heaters on both sides",
})
export const ACRYLIC_FORMING: Source = seen("Forming cast and extruded acrylic sheet", {
  by: "U.S. Plastic Corp.",
  where: "cast 340 to 380 °F, extruded 290 to 320 °F; thermostats 75 °F out; fumes may explode",
})
export const ACRYLIC_BOOK: Source = seen("Handbook of Acrylics, as quoted by an aquarium maker", { where: "230 to 360 °F over all grades" })
export const ACRYLIC_SURFACE: Source = seen("Bulletin 137, Thermoforming", { by: "Aristech Surfaces", where: "surface limit 380 °F" })
export const CAST_ACRYLIC: Source = seen("Acrylic engineering plastic data", {
  by: "Stainless & Aluminium Services",
  where: "forming 160 to 180 °C, up to 2 % shrinkage after heating",
})
export const PC_FORMING: Source = seen("Guide to forming polycarbonate sheet", {
  by: "E. Grimes, IAPD Magazine",
  edition: "2002",
  where: "drape 350 to 370 °F, high temperature 370 to 415 °F",
})
export const PETG_FORMING: Source = seen("How do you thermoform Spectar copolyester (PETG sheet), frequently asked questions", {
  by: "Eastman Chemical",
  where: "heat the sheet to 275 to 310 °F, optimum 300 °F; no drying",
})
export const SPLINT_WATER: Source = seen("Answering your frequently asked questions", {
  by: "Orfit Industries",
  where: "water of 60 to 70 °C",
})

// properties
export const CRAWFORD: Source = seen("Plastics Engineering", { by: "R. J. Crawford", edition: "3rd, 1998", where: "table 1.8" })
export const CRAWFORD_FORMING: Source = notSeen("Plastics Engineering", {
  by: "R. J. Crawford",
  edition: "3rd, 1998",
  where: "4.4, example 4.7",
})
export const POLYMER_PAGES: Source = seen("Polymer material data pages", { by: "NETZSCH Analyzing & Testing" })
export const PROPERTY_CARDS: Source = seen("Material property cards", { by: "MakeItFrom.com" })
export const PLASTICS_TABLE: Source = seen("Thermal properties of plastic materials, table", { by: "a plastics data table" })
export const ABS_EXTRUSION: Source = seen("MaterialUniverse, ABS (extrusion) datasheet", { by: "Granta Design" })
export const ABS_SUPPLIER: Source = seen("The properties of ABS material", { by: "an ABS supplier", where: "property table" })
export const PVC_SHEET: Source = seen("Unplasticised polyvinyl chloride data sheet", { by: "AZoM", where: "article 770" })
export const PVC_PIPE: Source = seen("Properties of PVC and CPVC pipe", { by: "U.S. Plastic Corp.", where: "thermal section" })
export const PVC_FOAM_TABLE: Source = seen("PVC boards", {
  by: "CAMEO, Museum of Fine Arts Boston",
  where: "table: density, maximum service temperature, linear expansion",
})
export const PVC_FOAM_EXPANSION: Source = seen("What is the coefficient of thermal expansion of 18 mm PVC foam sheet", {
  by: "a PVC foam sheet maker",
  where: "70 to 150 × 10⁻⁶ per °C over all grades",
})
export const PETG_SHEET: Source = seen("PETG sheet technical data", {
  by: "a PETG sheet maker",
  where: "thermal properties; no pre-drying",
})
export const PET_SHEET: Source = seen("PET sheet data sheet", { by: "a PET sheet maker", where: "no continuous use over 65 °C" })
export const LINE_BENDING: Source = seen("Bending and thermoforming of plastics", { by: "PlexiSystem", where: "key terms" })
export const LINE_HEATER: Source = seen("Problem-free line bending of acrylic sheet", {
  by: "The Plastics Distributor and Fabricator",
  edition: "March/April 2000",
  where: "straight wire heater: sheet thicker than 1/8 in is turned over midway",
})
export const HDPE_REPORT: Source = seen("High-density polyethylene report", { edition: "2020", where: "thermophysical properties" })
export const UNFILLED_PLASTICS: Source = seen("The thermal conductivity of unfilled plastics", {
  by: "C-Therm",
  edition: "2019",
  where: "table from Electronics Cooling 7, 2001",
})
export const CONDUCTIVITY_TABLE: Source = seen("Thermal conductivity of polymers and plastics", { by: "Matmake", where: "table" })
export const HIPS_TABLE: Source = seen("Properties of high impact polystyrene", { by: "Matmake", where: "thermal properties" })
export const CONDENSED_MATTER: Source = seen("Springer Handbook of Condensed Matter and Materials Data", {
  by: "W. Martienssen and H. Warlimont",
  where: "table 3.3-6, polypropylene",
})
export const EVA_REVIEW: Source = seen("EVA foam review", { where: "0.05 to 0.25 g/cm³" })
export const POLYESTER_ENTRY: Source = seen("Polycaprolactone, encyclopaedia entry", { edition: "2024" })

// shrinkage, drying, cold bends
export const MOULD_SHRINKAGE: Source = seen("Typical shrinkage values", { by: "Plastic Service Centers", where: "injection moulding" })
export const MOULD_SHRINKAGE_2: Source = seen("Resin mold shrink-rate chart", { by: "Techni-Mold", where: "injection moulding" })
export const ORTHOTIC_SHEET: Source = seen("Lab Safety, Tools, and Techniques in Prosthetics and Orthotics", {
  by: "S. Spaulding, A. Barizo, S. Kapp, B. Roehr",
  where: "polypropylene, 1.0 to 2.5 %",
})
export const ACRYLIC_SHRINKAGE: Source = seen("Shrinkage (acrylic sheet notes)", {
  by: "Ultra Acrylics",
  edition: "2006",
  where: "continuous sheet to 3 % along, growing to 0.5 % across; cell cast to 1.5 %; 24 h at 80 °C dries most sheets",
})
export const PC_SHRINKAGE: Source = seen("Low temperature thermoforming", {
  by: "HighLine Polycarbonate",
  where: "2 to 5 % in the machine direction, less than 1 % on order",
})
export const PC_DRYING: Source = seen("Drying polycarbonate sheet", { by: "HighLine Polycarbonate", edition: "2012" })
export const PC_DRYING_TABLE: Source = seen("PALSUN user manual", { by: "Palram", where: "p. 32, typical pre-drying time" })
export const CONDUIT_CURVATURE: Source = seen("Technical bulletin on PVC pipe curvature", {
  by: "PVC conduit makers",
  where: "300 diameters",
})
export const PIPE_CURVATURE: Source = notSeen("PVC pipe bend radius rule, 250 diameters at 800 psi", { by: "Uni-Bell and AWWA practice" })
export const ACRYLIC_COLD: Source = seen("Minimum cold formed radius of acrylic sheet", {
  by: "a sheet maker",
  where: "330 thicknesses, impact grade 240",
})
export const PC_COLD: Source = seen("Forming polycarbonate sheets", { by: "U.S. Plastic Corp.", where: "cold bend radii, 100 thicknesses" })

// bends
export const HAND_BENDING: Source = seen("Bending conduit/tubing using hand benders", {
  by: "B. Bamford, Albany Technical College",
  edition: "2012",
  where: "PVC: 60° relaxes to 30°",
})
export const SAND_BENDING: Source = seen("Using heat to bend PVC pipe, as quoted on a forum", {
  by: "Practical Sailor",
  where: "hot sand, five diameters, 30 min in the jig",
})
export const BRAZIER: Source = notSeen("On the flexure of thin cylindrical shells and other thin sections", {
  by: "L. G. Brazier",
  edition: "Proc. R. Soc. A 116, 1927",
})
export const CONDUIT_CODE: Source = notSeen("National Electrical Code (NFPA 70)", {
  by: "NFPA",
  where: "chapter 9 table 2, to which 352.24 refers",
})
export const CONDUIT_HEATER: Source = seen("PVC conduit heater, operating instructions", { where: "additional bending information, p. 8" })
export const CONDUIT_CHART: Source = seen("Electrical conduit bending chart", { where: "minimum bending radius of one-shot bends" })
export const DOME: Source = notSeen("A theory of the plastic bulging of a metal diaphragm by lateral pressure", {
  by: "R. Hill",
  edition: "Phil. Mag. 41, 1950",
})
export const DRAW_RATIOS: Source = seen("Wall thickness and material draw ratio; Thermoforming wall thickness guide", {
  by: "two forming firms",
})
