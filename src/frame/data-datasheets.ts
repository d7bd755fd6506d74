import { at } from "../solver/index.js"
import { boardSheets } from "./data-boards.js"
import type { Datasheet } from "./datasheet.js"
import { SHIGLEY } from "./sources.js"
import {
  ABS_FIRST,
  ABS_SECOND,
  ACRYLIC_FIRST,
  ACRYLIC_SECOND,
  ALUMINIUM_MINIMUM,
  ALUMINIUM_TYPICAL,
  ASTM_D1784,
  CARBON_TUBE,
  CARBON_WOUND,
  EVA_FOAM,
  GLASS_ROD,
  GLASS_ROD_75,
  HIPS_FIRST,
  HIPS_RANGE,
  PC_GRADE,
  PC_SHEET,
  PC_STOCK,
  PETG_FILAMENT,
  PETG_FIRST,
  PETG_SECOND,
  PLA_GRADE,
  PLA_RANGE,
  PVC_FIRST,
  PVC_SECOND,
} from "./sources-materials.js"

const psi = 4.4482216152605 / 0.0254 ** 2
const footPoundPerInch = (4.4482216152605 * 0.3048) / 0.0254
const fahrenheit = (t: number) => ((t - 32) * 5) / 9

/**
 * What makers' sheets and standards print, one entry a sheet. Sheets of one material differ by 3 to
 * 10 % and tensile differs from flexural: the ranges of `frameMaterials` are drawn from these.
 */
export const datasheets: Readonly<Record<string, Datasheet>> = {
  ...boardSheets,
  "abs-first": {
    label: "ABS general purpose injection grade",
    source: ABS_FIRST,
    figures: {
      density: 1040,
      tensileModulus: 341000 * psi,
      tensileYield: 6530 * psi,
      tensileBreak: 4930 * psi,
      flexuralModulus: 334000 * psi,
      flexuralStrength: 9430 * psi,
    },
  },
  "abs-second": {
    label: "ABS easy-flow grade (ISO values)",
    source: ABS_SECOND,
    figures: { density: 1040, tensileModulus: 2.3e9, yield: 4.4e7, flexuralStrength: 6.5e7 },
  },
  "al-6061-t6-minimum": {
    label: "aluminium 6061-T6, regulatory minimum",
    source: ALUMINIUM_MINIMUM,
    figures: { minUltimate: 38000 * psi, minYield: 35000 * psi },
  },
  "al-6061-t6-typical": {
    label: "aluminium 6061-T6, typical",
    source: ALUMINIUM_TYPICAL,
    figures: {
      density: 2700,
      modulus: 6.89e10,
      tensileYield: 2.76e8,
      ultimate: 3.1e8,
      shearStrength: 2.07e8,
      fatigue5e8: 9.65e7,
      poisson: 0.33,
    },
  },
  "aluminium-elastic": {
    label: "aluminium alloys elastic constants",
    source: at(SHIGLEY, "table A-5"),
    figures: { modulus: 7.17e10, shearModulus: 2.69e10, poisson: 0.333 },
  },
  "cf-pultruded-tube": {
    label: "pultruded carbon fibre tube, minimum properties",
    source: CARBON_TUBE,
    figures: {
      tensileStrength: 1.65e9,
      tensileModulus: 1.34e11,
      flexuralStrength: 1.37e9,
      flexuralModulus: 1.27e11,
      shearStrength: 4.13e7,
      density: 1500,
      fibreVolume: 0.6,
      glassTransition: 100,
    },
  },
  "cf-ud-filament-wound": {
    label: "unidirectional standard carbon/epoxy at 60 % fibre",
    source: CARBON_WOUND,
    figures: { modulus: 1.3e11, tensileStrength: 1.5e9, density: 1600 },
  },
  "eva-midsole-density": {
    label: "EVA midsole foam density range",
    source: EVA_FOAM,
    figures: { densityMin: 200, densityMax: 300, testedDensity: 275 },
  },
  "glass-profile": {
    label: "pultruded glass-fibre and mat profile, lengthwise",
    source: GLASS_ROD,
    figures: {
      minTensile: 172e6,
      maxTensile: 290e6,
      minModulus: 13.1e9,
      maxModulus: 18.6e9,
      minFlexural: 200e6,
      maxFlexural: 441e6,
      minFlexuralModulus: 12.4e9,
      maxFlexuralModulus: 14.4e9,
      minDensity: 1700,
      maxDensity: 1800,
    },
  },
  "glass-rod": {
    label: "pultruded glass-fibre rod, 45 to 75 % fibre",
    source: GLASS_ROD,
    figures: {
      minTensile: 414e6,
      maxTensile: 827e6,
      minModulus: 20.6e9,
      maxModulus: 41.4e9,
      minFlexural: 414e6,
      maxFlexural: 827e6,
      minDensity: 1900,
      maxDensity: 2000,
      maxService: 100,
      bendDiameterOverRod: 80,
    },
  },
  "glass-rod-75": {
    label: "pultruded glass-fibre rod, 75 % fibre",
    source: GLASS_ROD_75,
    figures: { tensile: 120e3 * psi, modulus: 6e6 * psi, compressive: 70e3 * psi, density: 2000, expansion: 5.3e-6 },
  },
  "hips-range": {
    label: "high-impact polystyrene, range of grades",
    source: HIPS_RANGE,
    figures: {
      minTensile: 2480 * psi,
      maxTensile: 4520 * psi,
      minFlexuralModulus: 193000 * psi,
      maxFlexuralModulus: 381000 * psi,
      minDtul: fahrenheit(160),
      maxDtul: fahrenheit(189),
    },
  },
  "hips-typical": {
    label: "high-impact polystyrene typical",
    source: HIPS_FIRST,
    figures: { density: 1040, tensileStrength: 4000 * psi, tensileModulus: 260000 * psi },
  },
  "pc-creep": {
    label: "polycarbonate tensile creep modulus",
    source: at(PC_GRADE, "ISO 899-1, strain at most 0.5 %"),
    figures: { creepModulus1h: 2.2e9, creepModulus1000h: 1.9e9, shortTermModulus: 2.4e9 },
  },
  "pc-grade": {
    label: "polycarbonate, low viscosity general purpose grade",
    source: PC_GRADE,
    figures: {
      tensileModulus: 2.4e9,
      yieldStress: 6.6e7,
      yieldStrain: 0.06,
      flexuralModulus: 2.35e9,
      flexuralStrength: 9.8e7,
      flexuralStress35pct: 7.4e7,
    },
  },
  "pc-sheet": {
    label: "polycarbonate sheet, ASTM values",
    source: PC_SHEET,
    figures: { tensileYield: 8400 * psi, tensileModulus: 340000 * psi, flexuralModulus: 340000 * psi, dtul264psi: fahrenheit(275) },
  },
  "pc-stock": {
    label: "polycarbonate semi-finished stock",
    source: PC_STOCK,
    figures: { density: 1200, yield: 6.6e7, tensileModulus: 2.4e9, creepModulus1000h05pct: 1.9e9, ballHardness: 1.1e8 },
  },
  "petg-filament": {
    label: "PETG printing filament, bulk values",
    source: PETG_FILAMENT,
    figures: { tensile: 50e6, modulus: 2e9, density: 1270, glassTransition: 71 },
  },
  "petg-sheet": {
    label: "PETG sheet",
    source: PETG_FIRST,
    figures: { density: 1270, tensileModulus: 2.2e9, tensileYield: 5.3e7, tensileBreak: 2.6e7, flexuralStrength: 7.9e7, hdt045MPa: 72 },
  },
  "petg-sheet-us": {
    label: "PETG sheet, ASTM values",
    source: PETG_SECOND,
    figures: { density: 1270, tensileStrength: 7700 * psi, flexuralModulus: 310000 * psi, hdt264psi: fahrenheit(157) },
  },
  "pla-printed": {
    label: "PLA printed at 100 % infill, annealed",
    source: PLA_GRADE,
    figures: { density: 1240, tensileYield: 5.1e7, tensileStrength: 5e7, tensileModulus: 2.315e9 },
  },
  "pla-range": {
    label: "PLA as printed, along and across the layers",
    source: PLA_RANGE,
    figures: { minAlong: 50e6, maxAlong: 65e6, minAcross: 35e6, maxAcross: 45e6, minModulus: 3e9, maxModulus: 4e9 },
  },
  "pmma-extruded": {
    label: "extruded acrylic sheet",
    source: ACRYLIC_FIRST,
    figures: {
      density: 1190,
      tensileStrength: 6.9e7,
      flexuralStrength: 1.17e8,
      flexuralModulus: 3.3e9,
      compressive: 1.17e8,
      maxContinuous: 71,
    },
  },
  "pmma-second": {
    label: "acrylic stock shapes",
    source: ACRYLIC_SECOND,
    figures: {
      density: 1190,
      tensileStrength: 8800 * psi,
      tensileModulus: 470000 * psi,
      flexuralStrength: 14200 * psi,
      compressive10pct: 13700 * psi,
    },
  },
  "pvc-12454-first": {
    label: "rigid PVC pipe compound, cell class 12454",
    source: PVC_FIRST,
    figures: {
      density: 1400,
      tensileStrength: 7450 * psi,
      tensileModulus: 420000 * psi,
      flexuralStrength: 14450 * psi,
      flexuralModulus: 360000 * psi,
      compressiveStrength: 9600 * psi,
      poisson: 0.41,
      maxService: fahrenheit(140),
      heatDeflection264psi: fahrenheit(170),
    },
  },
  "pvc-12454-second": {
    label: "rigid PVC pipe compound, second maker",
    source: PVC_SECOND,
    figures: {
      density: 1400,
      tensileStrength: 7200 * psi,
      tensileModulus: 430000 * psi,
      compressiveStrength: 9500 * psi,
      flexuralStrength: 13000 * psi,
      poisson: 0.38,
    },
  },
  "pvc-d1784-12454-minimum": {
    label: "ASTM D1784 cell class 12454 minimum values",
    source: ASTM_D1784,
    figures: { minTensile: 7000 * psi, minModulus: 400000 * psi, minIzod: 0.65 * footPoundPerInch, minDtul: fahrenheit(158) },
  },
  "steel-1018-cd": {
    label: "AISI 1018 cold-drawn steel",
    source: at(SHIGLEY, "table A-20"),
    figures: { ultimate: 4.4e8, yield: 3.7e8 },
  },
  "steel-1018-hr": {
    label: "AISI 1018 hot-rolled steel",
    source: at(SHIGLEY, "table A-20"),
    figures: { ultimate: 4e8, yield: 2.2e8 },
  },
  "steel-elastic": {
    label: "carbon steel elastic constants",
    source: at(SHIGLEY, "table A-5"),
    figures: { modulus: 2.07e11, shearModulus: 7.93e10, poisson: 0.292 },
  },
}
