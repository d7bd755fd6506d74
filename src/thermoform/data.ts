/** A published figure with its spread: what sources or grades disagree by. */
export interface Figure {
  /** Usual. */
  readonly value: number
  /** Lowest published. */
  readonly low: number
  /** Highest published. */
  readonly high: number
  /** Source. */
  readonly source: string
}

/** Plastics a maker forms by heat. */
export type Plastic = "pvc" | "pmmaCast" | "pmmaExtruded" | "petg" | "abs" | "pc" | "hips" | "hdpe" | "pp" | "evaFoam" | "lowTempPolyester"

/** What is known of one plastic; temperatures in °C, the rest in SI units. */
export interface PlasticData {
  readonly label: string
  /** Below this a bend holds its shape. */
  readonly set: Figure
  /** Coldest core that may be formed. */
  readonly lower: Figure
  /** Usual forming temperature. */
  readonly normal: Figure
  /** Hottest surface: blisters, sag, colour, gloss. */
  readonly upper: Figure
  /** Where vapours begin to be given off; ventilate from here. */
  readonly fume: Figure
  /** Where it chars or falls apart. */
  readonly scorch: Figure
  /** What the vapours are. */
  readonly fumes: string
  readonly conductivity: Figure
  readonly density: Figure
  readonly specificHeat: Figure
  /** Linear expansion, 1/K. */
  readonly expansion: Figure
  /** Deflection under load, 1.8 MPa (low) to 0.45 MPa (high). */
  readonly deflection: Figure
  /** Highest service temperature. */
  readonly service: Figure
  /** Glass transition, or melting point of the crystalline ones. */
  readonly transition: Figure
  /** Heat of melting taken up on the way to forming, J/kg; 0 for glassy plastics. */
  readonly melting: Figure
  /** Mould shrinkage, fraction. */
  readonly shrinkage: Figure
  /** Largest outer-fibre strain for a bend made cold, where makers publish one. */
  readonly coldStrain: Figure | null
}

const figure = (value: number, low: number, high: number, source: string): Figure => ({ value, low, high, source })

const HANDBOOK =
  "Throne, Technology of Thermoforming, 1996, and Florian, Practical Thermoforming, 1987: forming-temperature table (from memory, ±6 K)"
const PIPE = "Pipe maker's guidance on bending PVC pipe, reproduced by U.S. Plastic Corp. (225 to 275 °F; sharp bends 250 to 275 °F)"
const ACRYLIC = "U.S. Plastic Corp., Forming cast and extruded acrylic sheet (cast 340 to 380 °F, extruded 290 to 320 °F)"
const ACRYLIC_BOOK = "Handbook of Acrylics, as quoted by an aquarium maker (230 to 360 °F over all grades)"
const CRAWFORD = "R. J. Crawford, Plastics Engineering, 3rd ed., 1998, table 1.8"
const NETZSCH = "NETZSCH, Polymer material data pages"
const MAKEIT = "MakeItFrom.com, material property cards"
const GOODFELLOW = "Professional plastics data table, thermal properties"
const GRANTA = "Granta Design, MaterialUniverse ABS (extrusion) datasheet"
const AZOM = "AZoM, Unplasticised polyvinyl chloride, article 770"
const PVC_PIPE = "Properties of PVC and CPVC pipe, reproduced by U.S. Plastic Corp., thermal section"
const SHRINK = "Plastic Service Centers, Typical shrinkage values (injection moulding)"
const CAST = "Cast acrylic datasheet to ISO 306 and DIN 52612, Stainless & Aluminium Services"
const PC_WINDOW = "E. Grimes, Guide to forming polycarbonate sheet, IAPD Magazine, 2002"
const LTTP = "Orfit Industries, frequently asked questions (60 to 70 °C water); a Ljubljana thesis review gives 50 to 60 °C"
const PCL = "Encyclopaedia entry on polycaprolactone, 2024"
const MEMORY = "from memory"
const PRACTICE = "common practice, no source"

const GLASSY = figure(0, 0, 0, "amorphous: no melting")

/** Plastics with their figures, each with source and spread. */
export const plastics: Readonly<Record<Plastic, PlasticData>> = {
  pvc: {
    label: "rigid PVC (pipe, sheet)",
    set: figure(70, 67, 77, `${AZOM}; ${PVC_PIPE} (deflection temperatures)`),
    lower: figure(104, 104, 107.2, `${HANDBOOK}; ${PIPE}`),
    normal: figure(135, 121.1, 138, `${PIPE}; ${HANDBOOK}`),
    upper: figure(154, 135, 154, `${PIPE} (low end); ${HANDBOOK} (high end)`),
    fume: figure(
      140,
      140,
      160,
      "PVC stabilisers technical note, Novista Group (unstabilised onset 160 °C; stabilised parts age from about 140 °C)",
    ),
    scorch: figure(160, 160, 180, "PVC stabilisers technical note, Novista Group (dehydrochlorination, browning then blackening)"),
    fumes: "hydrogen chloride, poisonous and corrosive",
    conductivity: figure(0.16, 0.13, 0.29, `${NETZSCH}, PVC-U; ${PVC_PIPE} (0.147)`),
    density: figure(1400, 1380, 1550, `${NETZSCH}, PVC-U; ${AZOM}`),
    specificHeat: figure(1000, 900, 1050, `${PVC_PIPE} (0.25 cal/(g·K)); low end ${MEMORY}`),
    expansion: figure(60e-6, 52e-6, 80e-6, `${NETZSCH}, PVC-U; ${PVC_PIPE}`),
    deflection: figure(70, 67, 77, `${AZOM}; ${PVC_PIPE}`),
    service: figure(50, 50, 60, AZOM),
    transition: figure(85, 80, 90, `${NETZSCH}, PVC-U`),
    melting: GLASSY,
    shrinkage: figure(0.004, 0.002, 0.004, `${SHRINK}; ${AZOM}`),
    coldStrain: figure(
      1 / 600,
      1 / 600,
      1 / 500,
      "PVC conduit makers' bulletin on curvature (300 diameters); 250 diameters at 800 psi is Uni-Bell/AWWA practice",
    ),
  },
  pmmaCast: {
    label: "acrylic sheet, cast",
    set: figure(85, 80, 91, HANDBOOK),
    lower: figure(149, 149, 160, `${HANDBOOK}; ${CAST} (forming from 160 °C)`),
    normal: figure(177, 171, 180, `${HANDBOOK}; ${ACRYLIC}`),
    upper: figure(193, 180, 193, `Aristech Surfaces, Bulletin 137 (380 °F surface limit); ${CAST} (180 °C); ${ACRYLIC_BOOK} (182 °C)`),
    fume: figure(165, 165, 182, `weak links may release monomer from about 165 °C (Kashiwagi 1986, ${MEMORY})`),
    scorch: figure(270, 260, 280, "Acrylic processor notes (decomposition starts at 270 °C)"),
    fumes: "methyl methacrylate, irritant and flammable",
    conductivity: figure(0.19, 0.19, 0.2, `${CAST}; ${CRAWFORD}`),
    density: figure(1190, 1180, 1190, `${CAST}; ${CRAWFORD}`),
    specificHeat: figure(1460, 1460, 1500, `${CAST}; ${CRAWFORD}`),
    expansion: figure(75e-6, 70e-6, 80e-6, `${CAST}; ${CRAWFORD}`),
    deflection: figure(95, 90, 105, MEMORY),
    service: figure(70, 50, 80, `${CRAWFORD} (50 °C); makers' 70 to 80 °C ${MEMORY}`),
    transition: figure(105, 105, 110, `${CRAWFORD}; ${NETZSCH}, PMMA`),
    melting: GLASSY,
    shrinkage: figure(0.02, 0.01, 0.02, `${CAST} (up to 2 % after heating)`),
    coldStrain: figure(
      1 / 660,
      1 / 660,
      1 / 480,
      "Makers' minimum cold-formed radius of acrylic sheet, 330 thicknesses (impact grade 240)",
    ),
  },
  pmmaExtruded: {
    label: "acrylic sheet, extruded",
    set: figure(80, 75, 85, `a little below cast, ${MEMORY}`),
    lower: figure(140, 130, 145, `${ACRYLIC}; 20 to 30 K below cast, ${MEMORY}`),
    normal: figure(150, 143, 160, ACRYLIC),
    upper: figure(165, 160, 182, `${ACRYLIC}; ${ACRYLIC_BOOK}`),
    fume: figure(165, 165, 182, `weak links may release monomer from about 165 °C (Kashiwagi 1986, ${MEMORY})`),
    scorch: figure(270, 260, 280, "Acrylic processor notes (decomposition starts at 270 °C)"),
    fumes: "methyl methacrylate, irritant and flammable",
    conductivity: figure(0.19, 0.19, 0.2, `${CAST}; ${CRAWFORD}`),
    density: figure(1190, 1180, 1190, `${CAST}; ${CRAWFORD}`),
    specificHeat: figure(1460, 1460, 1500, `${CAST}; ${CRAWFORD}`),
    expansion: figure(75e-6, 70e-6, 80e-6, `${CAST}; ${CRAWFORD}`),
    deflection: figure(90, 85, 100, MEMORY),
    service: figure(65, 50, 75, `${CRAWFORD} (50 °C); ${MEMORY}`),
    transition: figure(105, 100, 110, `${CRAWFORD}; ${NETZSCH}, PMMA`),
    melting: GLASSY,
    shrinkage: figure(0.03, 0.005, 0.06, `along the extrusion; across it grows by about 0.5 %: ${PRACTICE}`),
    coldStrain: figure(1 / 660, 1 / 660, 1 / 660, "Makers' minimum cold-formed radius of acrylic sheet, 330 thicknesses"),
  },
  petg: {
    label: "PETG sheet",
    set: figure(70, 69, 73, `${MAKEIT} (deflection temperatures)`),
    lower: figure(121, 121, 127, HANDBOOK),
    normal: figure(145, 135, 149, HANDBOOK),
    upper: figure(166, 160, 172, HANDBOOK),
    fume: figure(166, 160, 200, MEMORY),
    scorch: figure(270, 250, 300, MEMORY),
    fumes: "traces of acetaldehyde",
    conductivity: figure(0.2, 0.19, 0.29, `${CRAWFORD}, PET; ${MAKEIT}`),
    density: figure(1270, 1260, 1280, "PETG sheet maker's data via Knowde"),
    specificHeat: figure(1200, 1000, 1300, `${MAKEIT}; ${CRAWFORD}, PET`),
    expansion: figure(68e-6, 68e-6, 90e-6, `${MAKEIT}; PETG sheet maker's data via Knowde; ${CRAWFORD}, PET`),
    deflection: figure(70, 69, 73, `${MAKEIT}; PETG sheet maker's data via Knowde`),
    service: figure(60, 55, 65, MEMORY),
    transition: figure(80, 75, 81, `${MAKEIT}; PlexiSystem encyclopaedia; ${CRAWFORD}, PET`),
    melting: GLASSY,
    shrinkage: figure(0.005, 0.003, 0.005, `${SHRINK}, amorphous PET`),
    coldStrain: null,
  },
  abs: {
    label: "ABS sheet",
    set: figure(85, 77, 89, `${HANDBOOK}; ${GRANTA} and ${GOODFELLOW} (deflection temperatures)`),
    lower: figure(127, 127, 138, `${HANDBOOK} (orienting from 138 °C)`),
    normal: figure(149, 143, 154, HANDBOOK),
    upper: figure(182, 176, 188, HANDBOOK),
    fume: figure(127, 127, 149, "Supplier's ABS note (styrene, acrylonitrile and butadiene traces appear while forming)"),
    scorch: figure(240, 240, 260, "Supplier's ABS note (decomposition begins)"),
    fumes: "styrene and traces of acrylonitrile and butadiene",
    conductivity: figure(0.2, 0.17, 0.25, `${CRAWFORD}; ${GOODFELLOW}; ${GRANTA}`),
    density: figure(1040, 1020, 1080, `${CRAWFORD}; ${GRANTA}`),
    specificHeat: figure(1400, 1300, 1470, `${CRAWFORD}; ABS supplier's property table`),
    expansion: figure(95e-6, 90e-6, 101e-6, `${CRAWFORD}; ABS supplier's property table`),
    deflection: figure(89, 77, 113, `${GRANTA}; ${GOODFELLOW}`),
    service: figure(60, 60, 70, `ABS supplier's property table; ${CRAWFORD}`),
    transition: figure(105, 88, 120, `${GRANTA}; ${CRAWFORD}`),
    melting: GLASSY,
    shrinkage: figure(0.006, 0.005, 0.007, SHRINK),
    coldStrain: null,
  },
  pc: {
    label: "polycarbonate sheet",
    set: figure(138, 128, 144, `${HANDBOOK}; ${GOODFELLOW} (deflection temperatures)`),
    lower: figure(168, 168, 176.7, `${HANDBOOK}; ${PC_WINDOW} (drape forming from 177 °C)`),
    normal: figure(187.8, 176.7, 191, `${HANDBOOK}; ${PC_WINDOW}`),
    upper: figure(204, 204, 212.8, `${HANDBOOK}; ${PC_WINDOW}`),
    fume: figure(204, 200, 230, MEMORY),
    scorch: figure(320, 300, 400, `onset ${MEMORY}; mass-loss peak 480 to 535 °C in ${NETZSCH}`),
    fumes: "traces of phenol",
    conductivity: figure(0.2, 0.19, 0.22, `${NETZSCH}, PC; ${GOODFELLOW}`),
    density: figure(1200, 1150, 1240, `${NETZSCH}, PC; ${CRAWFORD}`),
    specificHeat: figure(1200, 1170, 1500, `${NETZSCH}, PC; ${CRAWFORD}; ${GOODFELLOW}`),
    expansion: figure(65e-6, 65e-6, 70e-6, `${CRAWFORD}; high end ${MEMORY}`),
    deflection: figure(135, 128, 140, GOODFELLOW),
    service: figure(120, 115, 125, `${CRAWFORD}; low end ${MEMORY}`),
    transition: figure(147, 140, 150, `${NETZSCH}, PC; ${CRAWFORD}; PlexiSystem encyclopaedia`),
    melting: GLASSY,
    shrinkage: figure(0.006, 0.005, 0.007, SHRINK),
    coldStrain: figure(1 / 200, 1 / 200, 1 / 200, "U.S. Plastic Corp., Forming polycarbonate sheets (100 thicknesses)"),
  },
  hips: {
    label: "high-impact polystyrene sheet",
    set: figure(85, 79, 91, HANDBOOK),
    lower: figure(127, 121, 133, HANDBOOK),
    normal: figure(149, 143, 155, HANDBOOK),
    upper: figure(182, 176, 188, HANDBOOK),
    fume: figure(127, 121, 149, `styrene odour while forming, ${PRACTICE}`),
    scorch: figure(280, 250, 300, MEMORY),
    fumes: "styrene",
    conductivity: figure(0.16, 0.15, 0.18, `${CRAWFORD}, polystyrene; high end ${MEMORY}`),
    density: figure(1050, 1040, 1060, `${CRAWFORD}, polystyrene`),
    specificHeat: figure(1300, 1300, 1400, `${CRAWFORD}, polystyrene; high end ${MEMORY}`),
    expansion: figure(80e-6, 80e-6, 90e-6, `${CRAWFORD}, polystyrene; high end ${MEMORY}`),
    deflection: figure(80, 75, 90, MEMORY),
    service: figure(55, 50, 70, `${CRAWFORD}, polystyrene; ${MEMORY}`),
    transition: figure(100, 95, 100, `${CRAWFORD}, polystyrene`),
    melting: GLASSY,
    shrinkage: figure(0.005, 0.003, 0.006, SHRINK),
    coldStrain: null,
  },
  hdpe: {
    label: "high-density polyethylene sheet",
    set: figure(82, 76, 88, HANDBOOK),
    lower: figure(127, 127, 135, HANDBOOK),
    normal: figure(140, 135, 146, HANDBOOK),
    upper: figure(166, 166, 182, `handbooks disagree, 166 or 182 °C, ${MEMORY}`),
    fume: figure(182, 166, 200, MEMORY),
    scorch: figure(300, 280, 340, MEMORY),
    fumes: "waxy smoke",
    conductivity: figure(0.45, 0.33, 0.53, `${NETZSCH}, PE-HD`),
    density: figure(950, 940, 965, MEMORY),
    specificHeat: figure(2200, 1800, 2700, `${NETZSCH}, PE-HD`),
    expansion: figure(220e-6, 200e-6, 250e-6, `${NETZSCH}, PE-HD`),
    deflection: figure(60, 45, 80, MEMORY),
    service: figure(60, 55, 80, MEMORY),
    transition: figure(133, 125, 135, `${NETZSCH}, PE-HD (melting)`),
    melting: figure(201e3, 180e3, 220e3, `${NETZSCH}, PE-HD (201 J/g measured; spread ${MEMORY})`),
    shrinkage: figure(0.025, 0.015, 0.03, SHRINK),
    coldStrain: null,
  },
  pp: {
    label: "polypropylene sheet",
    set: figure(88, 82, 94, HANDBOOK),
    lower: figure(143, 143, 149, HANDBOOK),
    normal: figure(157, 154, 163, HANDBOOK),
    upper: figure(166, 165, 168, HANDBOOK),
    fume: figure(190, 166, 220, MEMORY),
    scorch: figure(350, 320, 350, `${MAKEIT}; low end ${MEMORY}`),
    fumes: "waxy smoke",
    conductivity: figure(0.17, 0.15, 0.22, `${MAKEIT}; high end ${MEMORY}`),
    density: figure(905, 895, 920, MEMORY),
    specificHeat: figure(1900, 1700, 2000, `${MAKEIT}; spread ${MEMORY}`),
    expansion: figure(100e-6, 90e-6, 150e-6, `${MAKEIT}; high end ${MEMORY}`),
    deflection: figure(73, 73, 110, MAKEIT),
    service: figure(80, 70, 100, MEMORY),
    transition: figure(162, 160, 170, `${MAKEIT} (melting)`),
    melting: figure(60e3, 40e3, 100e3, `part of about 100 J/g taken up below the melting point, ${MEMORY}`),
    shrinkage: figure(
      0.02,
      0.01,
      0.03,
      `${SHRINK}; S. Spaulding et al., Lab Safety, Tools, and Techniques in Prosthetics and Orthotics (1.0 to 2.5 %)`,
    ),
    coldStrain: null,
  },
  evaFoam: {
    label: "EVA foam sheet",
    set: figure(50, 45, 61, `below the Vicat range of EVA, 61 to 76 °C by grade; ${MEMORY}`),
    lower: figure(95, 90, 100, PRACTICE),
    normal: figure(115, 105, 125, PRACTICE),
    upper: figure(145, 135, 155, `cells collapse and the skin shines; ${PRACTICE}`),
    fume: figure(180, 160, 200, `acetic acid and blowing-agent traces, ${MEMORY}`),
    scorch: figure(220, 200, 250, `acetic acid released, ${MEMORY}`),
    fumes: "acetic acid and blowing-agent traces such as formamide",
    conductivity: figure(0.045, 0.035, 0.06, MEMORY),
    density: figure(100, 50, 250, "EVA foam review (0.05 to 0.25 g/cm³)"),
    specificHeat: figure(2100, 1800, 2400, MEMORY),
    expansion: figure(150e-6, 100e-6, 250e-6, MEMORY),
    deflection: figure(45, 40, 55, MEMORY),
    service: figure(50, 40, 60, MEMORY),
    transition: figure(75, 61, 95, `Vicat 61 to 76 °C by grade; melting ${MEMORY}`),
    melting: figure(40e3, 20e3, 60e3, MEMORY),
    shrinkage: figure(0.03, 0.01, 0.06, PRACTICE),
    coldStrain: null,
  },
  lowTempPolyester: {
    label: "low-temperature polyester (polycaprolactone)",
    set: figure(40, 35, 45, `crystallises slowly below, ${MEMORY}`),
    lower: figure(60, 58, 62, `${PCL}; ${LTTP}`),
    normal: figure(65, 60, 70, LTTP),
    upper: figure(80, 75, 90, `too soft and sticky to handle, ${PRACTICE}`),
    fume: figure(180, 150, 200, MEMORY),
    scorch: figure(200, 200, 250, MEMORY),
    fumes: "caprolactone",
    conductivity: figure(0.2, 0.15, 0.25, MEMORY),
    density: figure(1145, 1100, 1150, PCL),
    specificHeat: figure(1900, 1700, 2100, MEMORY),
    expansion: figure(160e-6, 150e-6, 180e-6, MEMORY),
    deflection: figure(45, 40, 55, MEMORY),
    service: figure(40, 35, 45, MEMORY),
    transition: figure(60, 58, 62, `${PCL} (melting)`),
    melting: figure(70e3, 55e3, 80e3, MEMORY),
    shrinkage: figure(0.01, 0.005, 0.02, MEMORY),
    coldStrain: null,
  },
}

/** Choice options of a plastic field. */
export const plasticOptions: Readonly<Record<Plastic, string>> = Object.fromEntries(
  Object.entries(plastics).map(([key, { label }]) => [key, label]),
) as Record<Plastic, string>
