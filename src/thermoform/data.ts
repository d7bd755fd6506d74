import type { Source } from "../solver/index.js"
import {
  ABS_EXTRUSION,
  ABS_MELTING,
  ABS_SUPPLIER,
  ACRYLIC_BOOK,
  ACRYLIC_COLD,
  ACRYLIC_DEGRADATION,
  ACRYLIC_FORMING,
  ACRYLIC_PROCESS,
  ACRYLIC_SHRINKAGE,
  ACRYLIC_SURFACE,
  CAST_ACRYLIC,
  CONDENSED_MATTER,
  CONDUCTIVITY_TABLE,
  CONDUIT_CURVATURE,
  CRAWFORD,
  EVA_HEATED,
  EVA_REVIEW,
  FORMING_TABLE,
  FORMING_TABLE_ABS,
  HDPE_REPORT,
  HIPS_TABLE,
  LINE_BENDING,
  MOULD_SHRINKAGE,
  MOULD_SHRINKAGE_2,
  ORTHOTIC_SHEET,
  PC_COLD,
  PC_FORMING,
  PC_SHRINKAGE,
  PET_SHEET,
  PETG_FORMING,
  PETG_SHEET,
  PIPE_BENDING,
  PIPE_CURVATURE,
  PLASTICS_TABLE,
  POLYESTER_ENTRY,
  POLYESTER_HEATED,
  POLYESTER_STICKS,
  POLYMER_PAGES,
  PROPERTY_CARDS,
  PVC_FOAM_BOARD,
  PVC_FOAM_EXPANSION,
  PVC_FOAM_FORMING,
  PVC_FOAM_GUIDE,
  PVC_FOAM_TABLE,
  PVC_PIPE,
  PVC_RESIN_SAFETY,
  PVC_SHEET,
  PVC_STABILISERS,
  practice,
  SPLINT_WATER,
  UNFILLED_PLASTICS,
} from "./sources.js"

/** A published figure with its spread: what sources or grades disagree by. */
export interface Figure {
  /** Usual. */
  readonly value: number
  /** Lowest published. */
  readonly low: number
  /** Highest published. */
  readonly high: number
  /** Of the limits of the window (`set`, `lower`, `upper`) the first is where the end on the safe side stands. */
  readonly sources: readonly Source[]
}

/** Plastics a maker forms by heat. */
export type Plastic =
  | "pvc"
  | "pvc-foam"
  | "pmma-cast"
  | "pmma-extruded"
  | "petg"
  | "abs"
  | "pc"
  | "hips"
  | "hdpe"
  | "pp"
  | "eva-foam"
  | "low-temp-polyester"

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
  /** Where vapours are known to be given off; null where no published onset was found. */
  readonly fume: Figure | null
  /** Where it chars or falls apart; null where no published onset was found. */
  readonly scorch: Figure | null
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
  /** Shrinkage of a sheet heated free, along the extrusion, fraction; growth is negative. */
  readonly shrinkage: Figure
  /** The same across the extrusion. */
  readonly shrinkageAcross: Figure
  /** What the shrinkage was published for: sheet heated free, or mouldings only. */
  readonly shrinkageOf: "sheet" | "mouldings"
  /** Largest outer-fibre strain for a bend made cold, where makers publish one. */
  readonly coldStrain: Figure | null
}

const figure = (value: number, low: number, high: number, ...sources: Source[]): Figure => ({ value, low, high, sources })

/** Amorphous: no melting. */
const GLASSY = figure(0, 0, 0, practice)

const moulded = (value: number, low: number, high: number, ...sources: Source[]) => {
  const shrinkage = figure(value, low, high, ...sources)
  return { shrinkage, shrinkageAcross: shrinkage, shrinkageOf: "mouldings" } as const
}

/** Plastics with their figures, each with sources and spread. */
export const plastics: Readonly<Record<Plastic, PlasticData>> = {
  pvc: {
    label: "rigid PVC (pipe, sheet)",
    set: figure(70, 67, 77, PVC_SHEET, PVC_PIPE),
    lower: figure(104, 104, 107.2, PIPE_BENDING, FORMING_TABLE),
    normal: figure(135, 121.1, 138, PIPE_BENDING, FORMING_TABLE),
    upper: figure(154, 135, 154, PIPE_BENDING, FORMING_TABLE),
    fume: figure(120, 120, 160, PVC_RESIN_SAFETY, PVC_STABILISERS),
    scorch: figure(160, 160, 180, PVC_STABILISERS),
    fumes: "hydrogen chloride, poisonous and corrosive",
    conductivity: figure(0.16, 0.12, 0.29, CRAWFORD, POLYMER_PAGES, UNFILLED_PLASTICS),
    density: figure(1400, 1380, 1550, POLYMER_PAGES, PVC_SHEET),
    specificHeat: figure(1000, 900, 1050, PVC_PIPE, CRAWFORD),
    expansion: figure(60e-6, 52e-6, 80e-6, POLYMER_PAGES, PVC_PIPE),
    deflection: figure(70, 67, 77, PVC_SHEET, PVC_PIPE),
    service: figure(50, 50, 60, PVC_SHEET),
    transition: figure(85, 80, 90, POLYMER_PAGES),
    melting: GLASSY,
    ...moulded(0.004, 0.002, 0.004, MOULD_SHRINKAGE, PVC_SHEET, MOULD_SHRINKAGE_2),
    coldStrain: figure(1 / 600, 1 / 600, 1 / 500, CONDUIT_CURVATURE, PIPE_CURVATURE),
  },
  "pvc-foam": {
    label: "expanded (foamed) PVC sheet",
    // a board still serves at its makers' highest service temperature; solid PVC deflects under load a little above
    set: figure(67, 55, 70, PVC_FOAM_TABLE, PVC_SHEET),
    lower: figure(121.1, 115, 121.1, PVC_FOAM_GUIDE, PVC_FOAM_FORMING),
    normal: figure(130, 115, 137.8, PVC_FOAM_FORMING, PVC_FOAM_GUIDE),
    // the guide goes on to 350 °F for the sheet, past where PVC falls apart: its oven's 280 °F and solid PVC's 275 °F are kept
    upper: figure(137.8, 135, 137.8, PIPE_BENDING, PVC_FOAM_GUIDE),
    fume: figure(120, 120, 160, PVC_RESIN_SAFETY, PVC_STABILISERS),
    scorch: figure(160, 140, 180, PVC_FOAM_BOARD, PVC_STABILISERS, PVC_FOAM_FORMING),
    fumes: "hydrogen chloride, poisonous and corrosive",
    conductivity: figure(0.08, 0.06, 0.12, practice),
    density: figure(600, 500, 900, PVC_FOAM_TABLE),
    // per mass as solid PVC: the gas weighs nothing
    specificHeat: figure(1000, 900, 1050, PVC_PIPE, CRAWFORD),
    expansion: figure(70e-6, 50e-6, 150e-6, PVC_FOAM_TABLE, PVC_FOAM_EXPANSION),
    deflection: figure(65, 60, 70, practice),
    service: figure(55, 55, 60, PVC_FOAM_TABLE),
    transition: figure(85, 80, 90, POLYMER_PAGES),
    melting: GLASSY,
    ...moulded(0.004, 0.002, 0.004, MOULD_SHRINKAGE, PVC_SHEET, MOULD_SHRINKAGE_2),
    coldStrain: null,
  },
  "pmma-cast": {
    label: "acrylic sheet, cast",
    set: figure(85, 80, 91, FORMING_TABLE),
    lower: figure(149, 149, 160, CAST_ACRYLIC, FORMING_TABLE),
    normal: figure(177, 171, 180, FORMING_TABLE, ACRYLIC_FORMING),
    upper: figure(193, 180, 193, CAST_ACRYLIC, ACRYLIC_SURFACE, ACRYLIC_BOOK),
    fume: figure(160, 160, 182, ACRYLIC_DEGRADATION),
    scorch: figure(270, 260, 280, ACRYLIC_PROCESS, ACRYLIC_DEGRADATION),
    fumes: "methyl methacrylate, irritant and flammable",
    conductivity: figure(0.19, 0.17, 0.2, CAST_ACRYLIC, CRAWFORD, UNFILLED_PLASTICS),
    density: figure(1190, 1180, 1190, CAST_ACRYLIC, CRAWFORD),
    specificHeat: figure(1460, 1460, 1500, CAST_ACRYLIC, CRAWFORD),
    expansion: figure(75e-6, 70e-6, 80e-6, CAST_ACRYLIC, CRAWFORD),
    deflection: figure(95, 90, 105, practice),
    service: figure(70, 50, 80, CRAWFORD, practice),
    transition: figure(105, 105, 110, CRAWFORD, POLYMER_PAGES),
    melting: GLASSY,
    shrinkage: figure(0.02, 0.01, 0.02, CAST_ACRYLIC, ACRYLIC_SHRINKAGE),
    shrinkageAcross: figure(0.02, 0.01, 0.02, CAST_ACRYLIC, ACRYLIC_SHRINKAGE),
    shrinkageOf: "sheet",
    coldStrain: figure(1 / 660, 1 / 660, 1 / 480, ACRYLIC_COLD),
  },
  "pmma-extruded": {
    label: "acrylic sheet, extruded",
    set: figure(80, 75, 85, practice),
    lower: figure(140, 130, 145, practice, ACRYLIC_FORMING),
    normal: figure(150, 143, 160, ACRYLIC_FORMING),
    upper: figure(165, 160, 182, ACRYLIC_FORMING, ACRYLIC_BOOK),
    fume: figure(160, 160, 182, ACRYLIC_DEGRADATION),
    scorch: figure(270, 260, 280, ACRYLIC_PROCESS, ACRYLIC_DEGRADATION),
    fumes: "methyl methacrylate, irritant and flammable",
    conductivity: figure(0.19, 0.17, 0.2, CAST_ACRYLIC, CRAWFORD, UNFILLED_PLASTICS),
    density: figure(1190, 1180, 1190, CAST_ACRYLIC, CRAWFORD),
    specificHeat: figure(1460, 1460, 1500, CAST_ACRYLIC, CRAWFORD),
    expansion: figure(75e-6, 70e-6, 80e-6, CAST_ACRYLIC, CRAWFORD),
    deflection: figure(90, 85, 100, practice),
    service: figure(65, 50, 75, CRAWFORD, practice),
    transition: figure(105, 100, 110, CRAWFORD, POLYMER_PAGES),
    melting: GLASSY,
    shrinkage: figure(0.03, 0.005, 0.03, ACRYLIC_SHRINKAGE),
    // it grows, but by how much is uncertain: the blank is cut as if it kept its width
    shrinkageAcross: figure(-0.005, -0.005, 0, ACRYLIC_SHRINKAGE),
    shrinkageOf: "sheet",
    coldStrain: figure(1 / 660, 1 / 660, 1 / 660, ACRYLIC_COLD),
  },
  petg: {
    label: "PETG sheet",
    set: figure(70, 69, 73, PROPERTY_CARDS),
    lower: figure(121, 121, 135, PETG_FORMING, FORMING_TABLE),
    normal: figure(148.9, 135, 154.4, PETG_FORMING),
    upper: figure(166, 154.4, 172, PETG_FORMING, FORMING_TABLE),
    fume: null,
    scorch: null,
    fumes: "traces of acetaldehyde",
    conductivity: figure(0.2, 0.15, 0.29, CRAWFORD, PROPERTY_CARDS, UNFILLED_PLASTICS),
    density: figure(1270, 1260, 1280, PETG_SHEET),
    specificHeat: figure(1200, 1000, 1300, PROPERTY_CARDS, CRAWFORD),
    expansion: figure(68e-6, 68e-6, 90e-6, PROPERTY_CARDS, PETG_SHEET, CRAWFORD),
    deflection: figure(70, 69, 73, PROPERTY_CARDS, PETG_SHEET),
    service: figure(60, 55, 65, PET_SHEET, practice),
    transition: figure(80, 75, 81, PROPERTY_CARDS, LINE_BENDING, CRAWFORD),
    melting: GLASSY,
    ...moulded(0.005, 0.003, 0.005, MOULD_SHRINKAGE),
    coldStrain: null,
  },
  abs: {
    label: "ABS sheet",
    set: figure(85, 77, 89, ABS_EXTRUSION, FORMING_TABLE_ABS, PLASTICS_TABLE),
    lower: figure(127, 127, 138, FORMING_TABLE_ABS),
    normal: figure(149, 143, 154, FORMING_TABLE_ABS),
    upper: figure(182, 176, 188, FORMING_TABLE_ABS),
    fume: figure(127, 127, 149, ABS_MELTING),
    scorch: figure(240, 240, 260, ABS_MELTING),
    fumes: "styrene and traces of acrylonitrile and butadiene",
    conductivity: figure(0.2, 0.14, 0.34, CRAWFORD, PLASTICS_TABLE, ABS_EXTRUSION, UNFILLED_PLASTICS, CONDUCTIVITY_TABLE),
    density: figure(1040, 1020, 1080, CRAWFORD, ABS_EXTRUSION),
    specificHeat: figure(1400, 1300, 1470, CRAWFORD, ABS_SUPPLIER),
    expansion: figure(95e-6, 80e-6, 101e-6, CRAWFORD, ABS_SUPPLIER, PLASTICS_TABLE),
    deflection: figure(89, 77, 113, ABS_EXTRUSION, PLASTICS_TABLE),
    service: figure(60, 60, 100, ABS_SUPPLIER, CRAWFORD, PLASTICS_TABLE),
    transition: figure(105, 88, 120, ABS_EXTRUSION, CRAWFORD),
    melting: GLASSY,
    ...moulded(0.006, 0.0035, 0.007, MOULD_SHRINKAGE, MOULD_SHRINKAGE_2),
    coldStrain: null,
  },
  pc: {
    label: "polycarbonate sheet",
    set: figure(138, 128, 144, PLASTICS_TABLE, FORMING_TABLE),
    lower: figure(168, 168, 176.7, PC_FORMING, FORMING_TABLE),
    normal: figure(187.8, 176.7, 191, FORMING_TABLE, PC_FORMING),
    upper: figure(204, 204, 212.8, FORMING_TABLE, PC_FORMING),
    fume: null,
    scorch: null,
    fumes: "traces of phenol",
    conductivity: figure(0.2, 0.19, 0.22, POLYMER_PAGES, PLASTICS_TABLE),
    density: figure(1200, 1150, 1240, POLYMER_PAGES, CRAWFORD),
    specificHeat: figure(1200, 1170, 1500, POLYMER_PAGES, CRAWFORD, PLASTICS_TABLE),
    expansion: figure(65e-6, 65e-6, 70e-6, CRAWFORD, PLASTICS_TABLE),
    deflection: figure(135, 128, 140, PLASTICS_TABLE),
    service: figure(120, 115, 130, PLASTICS_TABLE, CRAWFORD),
    transition: figure(147, 140, 150, POLYMER_PAGES, CRAWFORD, LINE_BENDING),
    melting: GLASSY,
    shrinkage: figure(0.035, 0.005, 0.05, PC_SHRINKAGE, MOULD_SHRINKAGE),
    // published along the sheet only; across it less, from the mouldings' figure up
    shrinkageAcross: figure(0.01, 0.005, 0.05, PC_SHRINKAGE, MOULD_SHRINKAGE, MOULD_SHRINKAGE_2),
    shrinkageOf: "sheet",
    coldStrain: figure(1 / 200, 1 / 200, 1 / 200, PC_COLD),
  },
  hips: {
    label: "high-impact polystyrene sheet",
    set: figure(85, 79, 91, FORMING_TABLE),
    lower: figure(127, 121, 133, FORMING_TABLE),
    normal: figure(149, 143, 155, FORMING_TABLE),
    upper: figure(182, 176, 188, FORMING_TABLE),
    fume: null,
    scorch: null,
    fumes: "styrene",
    conductivity: figure(0.16, 0.1, 0.22, CRAWFORD, PROPERTY_CARDS, HIPS_TABLE, UNFILLED_PLASTICS),
    density: figure(1050, 1000, 1060, CRAWFORD, HIPS_TABLE, PROPERTY_CARDS),
    specificHeat: figure(1300, 1250, 1400, CRAWFORD, HIPS_TABLE, PROPERTY_CARDS),
    expansion: figure(80e-6, 80e-6, 90e-6, CRAWFORD, HIPS_TABLE),
    deflection: figure(80, 75, 90, practice),
    service: figure(55, 50, 70, CRAWFORD, practice),
    transition: figure(100, 95, 100, CRAWFORD, PROPERTY_CARDS),
    melting: GLASSY,
    ...moulded(0.005, 0.003, 0.006, MOULD_SHRINKAGE, MOULD_SHRINKAGE_2),
    coldStrain: null,
  },
  hdpe: {
    label: "high-density polyethylene sheet",
    set: figure(82, 76, 88, FORMING_TABLE),
    lower: figure(127, 127, 135, FORMING_TABLE),
    normal: figure(140, 135, 146, FORMING_TABLE),
    upper: figure(166, 166, 182, FORMING_TABLE),
    fume: null,
    scorch: null,
    fumes: "waxy smoke",
    conductivity: figure(0.45, 0.33, 0.53, UNFILLED_PLASTICS, POLYMER_PAGES, CONDUCTIVITY_TABLE),
    density: figure(950, 930, 970, CRAWFORD, POLYMER_PAGES, HDPE_REPORT),
    specificHeat: figure(2200, 1330, 2700, CRAWFORD, POLYMER_PAGES, HDPE_REPORT),
    expansion: figure(220e-6, 200e-6, 250e-6, POLYMER_PAGES),
    deflection: figure(60, 45, 80, practice),
    service: figure(60, 55, 80, CRAWFORD, practice),
    transition: figure(133, 125, 135, POLYMER_PAGES),
    melting: figure(201e3, 178.6e3, 220e3, POLYMER_PAGES, HDPE_REPORT),
    ...moulded(0.025, 0.015, 0.03, MOULD_SHRINKAGE, MOULD_SHRINKAGE_2),
    coldStrain: null,
  },
  pp: {
    label: "polypropylene sheet",
    set: figure(88, 82, 94, FORMING_TABLE),
    lower: figure(143, 143, 149, FORMING_TABLE),
    normal: figure(157, 154, 163, FORMING_TABLE),
    upper: figure(166, 165, 168, FORMING_TABLE),
    fume: null,
    scorch: figure(350, 320, 350, PROPERTY_CARDS, practice),
    fumes: "waxy smoke",
    conductivity: figure(0.17, 0.1, 0.22, PROPERTY_CARDS, UNFILLED_PLASTICS, CONDENSED_MATTER),
    density: figure(905, 895, 920, CRAWFORD, practice),
    specificHeat: figure(1900, 1680, 2350, PROPERTY_CARDS, CONDENSED_MATTER),
    expansion: figure(100e-6, 90e-6, 150e-6, CRAWFORD, PROPERTY_CARDS, practice),
    deflection: figure(73, 73, 110, PROPERTY_CARDS),
    service: figure(80, 70, 100, CRAWFORD, practice),
    transition: figure(162, 160, 170, PROPERTY_CARDS),
    // part of about 100 J/g, taken up below the melting point
    melting: figure(60e3, 40e3, 100e3, practice),
    ...moulded(0.02, 0.01, 0.03, MOULD_SHRINKAGE, MOULD_SHRINKAGE_2, ORTHOTIC_SHEET),
    coldStrain: null,
  },
  "eva-foam": {
    label: "EVA foam sheet",
    set: figure(50, 45, 61, practice),
    lower: figure(95, 90, 100, practice),
    normal: figure(115, 105, 125, practice),
    upper: figure(145, 135, 155, practice),
    fume: figure(80, 80, 120, EVA_HEATED),
    scorch: null,
    fumes: "acetic acid and blowing-agent traces such as formamide",
    conductivity: figure(0.045, 0.035, 0.06, practice),
    density: figure(100, 50, 250, EVA_REVIEW),
    specificHeat: figure(2100, 1800, 2400, practice),
    expansion: figure(150e-6, 100e-6, 250e-6, practice),
    deflection: figure(45, 40, 55, practice),
    service: figure(50, 40, 60, practice),
    transition: figure(75, 61, 95, practice),
    melting: figure(40e3, 20e3, 60e3, practice),
    shrinkage: figure(0.03, 0.01, 0.06, practice),
    shrinkageAcross: figure(0.03, 0.01, 0.06, practice),
    shrinkageOf: "sheet",
    coldStrain: null,
  },
  "low-temp-polyester": {
    label: "low-temperature polyester (polycaprolactone)",
    set: figure(40, 35, 45, practice),
    lower: figure(60, 58, 62, practice, POLYESTER_ENTRY, SPLINT_WATER),
    normal: figure(65, 60, 70, SPLINT_WATER),
    upper: figure(80, 75, 90, practice, POLYESTER_STICKS),
    fume: null,
    scorch: figure(200, 200, 250, POLYESTER_HEATED),
    fumes: "caprolactone",
    conductivity: figure(0.2, 0.15, 0.25, practice),
    density: figure(1145, 1100, 1150, POLYESTER_ENTRY),
    specificHeat: figure(1900, 1700, 2100, practice),
    expansion: figure(160e-6, 150e-6, 180e-6, practice),
    deflection: figure(45, 40, 55, practice),
    service: figure(40, 35, 45, practice),
    transition: figure(60, 58, 62, POLYESTER_ENTRY),
    melting: figure(70e3, 55e3, 80e3, practice),
    shrinkage: figure(0.01, 0.005, 0.02, practice),
    shrinkageAcross: figure(0.01, 0.005, 0.02, practice),
    shrinkageOf: "sheet",
    coldStrain: null,
  },
}

/** Choice options of a plastic field. */
export const plasticOptions: Readonly<Record<Plastic, string>> = Object.fromEntries(
  Object.entries(plastics).map(([key, { label }]) => [key, label]),
) as Record<Plastic, string>
