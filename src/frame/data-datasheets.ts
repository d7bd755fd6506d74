/** Figures of one published sheet or table, in SI: Pa, kg/m³, °C, J/m for impact, fractions for per cent. */
export interface Datasheet {
  readonly label: string
  readonly source: string
  readonly figures: Readonly<Record<string, number>>
}

const psi = 4.4482216152605 / 0.0254 ** 2
const footPoundPerInch = (4.4482216152605 * 0.3048) / 0.0254
const fahrenheit = (t: number) => ((t - 32) * 5) / 9

/**
 * What makers' sheets and standards print, one entry a sheet. Sheets of one material differ by 3 to
 * 10 % and tensile differs from flexural: the ranges of `frameMaterials` are drawn from these.
 */
export const datasheets: Readonly<Record<string, Datasheet>> = {
  "abs-gp22": {
    label: "ABS general purpose injection grade",
    source: "Terluran GP-22 data sheet, BASF / IDES, ASTM values",
    figures: {
      density: 1040,
      tensileModulus: 341000 * psi,
      tensileYield: 6530 * psi,
      tensileBreak: 4930 * psi,
      flexuralModulus: 334000 * psi,
      flexuralStrength: 9430 * psi,
    },
  },
  "abs-gp35": {
    label: "ABS easy-flow grade (ISO values)",
    source: "Terluran GP-35 product data, BASF, ISO values",
    figures: { density: 1040, tensileModulus: 2.3e9, yield: 4.4e7, flexuralStrength: 6.5e7 },
  },
  "al-6061-t6-minimum": {
    label: "aluminium 6061-T6, regulatory minimum",
    source: "49 CFR 178.46 Specification 3AL seamless aluminum cylinders, US Department of Transportation, Table 2",
    figures: { minUltimate: 38000 * psi, minYield: 35000 * psi },
  },
  "al-6061-t6-typical": {
    label: "aluminium 6061-T6, typical",
    source: "Aluminum 6061-T6 material information, Aluminum Association typical values, reproduced by a fabricator, typical table",
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
  "aluminium-shigley-a5": {
    label: "aluminium alloys elastic constants",
    source: "Shigley's Mechanical Engineering Design, R. G. Budynas, J. K. Nisbett, 2015, Table A-5 (from memory)",
    figures: { modulus: 7.17e10, shearModulus: 2.69e10, poisson: 0.333 },
  },
  "cf-pultruded-tube": {
    label: "pultruded carbon fibre tube, minimum properties",
    source: "Technical material specifications, carbon tubes, Goodwinds, minimum properties",
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
    source: "Filament winding, carbon fibre types in composite tubes, Performance Composites, standard grade",
    figures: { modulus: 1.3e11, tensileStrength: 1.5e9, density: 1600 },
  },
  "chipboard-p2-10mm": {
    label: "chipboard type P2, 10 mm",
    source: "Particle boards technical data (EN 312 type P2), Swiss Krono, property table",
    figures: { density: 700, bendingStrength: 1.1e7, internalBondMin: 4e5 },
  },
  "chipboard-p2-16mm": {
    label: "chipboard type P2, 16 mm",
    source: "Particle boards technical data (EN 312 type P2), Swiss Krono, property table",
    figures: { density: 660, bendingStrength: 1.1e7, internalBondMin: 3.5e5 },
  },
  "chipboard-p2-18mm": {
    label: "chipboard type P2, 18 mm",
    source: "Particle boards technical data (EN 312 type P2), Swiss Krono, property table",
    figures: { density: 650, bendingStrength: 1.1e7, internalBondMin: 3.5e5 },
  },
  "chipboard-p2-22mm": {
    label: "chipboard type P2, 22 mm",
    source: "Particle boards technical data (EN 312 type P2), Swiss Krono, property table",
    figures: { density: 640, bendingStrength: 1.05e7, internalBondMin: 3e5 },
  },
  "chipboard-p2-modulus": {
    label: "chipboard type P2 modulus, 15-18 mm",
    source: "Technical specification, particle board, ETC Supply (EN 312 values), table",
    figures: { bendingModulus: 1.6e9 },
  },
  "eva-midsole-density": {
    label: "EVA midsole foam density range",
    source: "Creep of EVA foam from running shoe midsoles, N. J. Mills et al. (Cellular Polymers), introduction",
    figures: { densityMin: 200, densityMax: 300, testedDensity: 275 },
  },
  "hips-typical": {
    label: "high-impact polystyrene typical",
    source: "Polystyrene specifications, cutlery/plastics supplier table (ASTM), 2017, typical property table",
    figures: { density: 1040, tensileStrength: 4000 * psi, tensileModulus: 260000 * psi },
  },
  "mdf-en622-5-19-30mm": {
    label: "MDF, thickness over 19 to 30 mm",
    source: "MDF E1 technical data sheet (classification to EN 622-5), M. Kaindl, 2020, property table",
    figures: { bendingStrength: 1.8e7, bendingModulus: 2.1e9, internalBond: 5.5e5, minDensity: 700 },
  },
  "mdf-en622-5-6-9mm": {
    label: "MDF, thickness over 6 to 9 mm",
    source: "MDF E1 technical data sheet (classification to EN 622-5), M. Kaindl, 2020, property table",
    figures: { bendingStrength: 2.3e7, bendingModulus: 2.7e9, internalBond: 6.5e5, minDensity: 700 },
  },
  "osb-mill-1": {
    label: "oriented strandboard, mill 1",
    source: "Wood Handbook, chapter 12 (FPL-GTR-190), USDA Forest Products Laboratory, 2010, Table 12-3 oriented strandboard",
    figures: { density: 800, modulusParallel: 4.41e9, modulusPerpendicular: 2.89e9, ruptureParallel: 2.38e7, rupturePerpendicular: 2.42e7 },
  },
  "osb-mill-3": {
    label: "oriented strandboard, mill 3",
    source: "Wood Handbook, chapter 12 (FPL-GTR-190), USDA Forest Products Laboratory, 2010, Table 12-3 oriented strandboard",
    figures: { density: 680, modulusParallel: 5.75e9, modulusPerpendicular: 3.17e9, ruptureParallel: 3.2e7, rupturePerpendicular: 2.38e7 },
  },
  "osb-mill-7": {
    label: "oriented strandboard, mill 7",
    source: "Wood Handbook, chapter 12 (FPL-GTR-190), USDA Forest Products Laboratory, 2010, Table 12-3 oriented strandboard",
    figures: { density: 650, modulusParallel: 6.28e9, modulusPerpendicular: 2.03e9, ruptureParallel: 3.22e7, rupturePerpendicular: 3.04e7 },
  },
  "pc-2407": {
    label: "polycarbonate, low viscosity general purpose grade",
    source: "Makrolon 2407 data sheet, Covestro, ISO datasheet values",
    figures: {
      tensileModulus: 2.4e9,
      yieldStress: 6.6e7,
      yieldStrain: 0.06,
      flexuralModulus: 2.35e9,
      flexuralStrength: 9.8e7,
      flexuralStress35pct: 7.4e7,
    },
  },
  "pc-creep": {
    label: "polycarbonate tensile creep modulus",
    source: "Makrolon 2407 data sheet, Covestro, ISO 899-1, strain at most 0.5 %",
    figures: { creepModulus1h: 2.2e9, creepModulus1000h: 1.9e9, shortTermModulus: 2.4e9 },
  },
  "pc-stock": {
    label: "polycarbonate semi-finished stock",
    source: "Polycarbonate (PC) material table, KERN, material 2301",
    figures: { density: 1200, yield: 6.6e7, tensileModulus: 2.4e9, creepModulus1000h05pct: 1.9e9, ballHardness: 1.1e8 },
  },
  "petg-sheet": {
    label: "PETG sheet",
    source: "PETG sheet data, Nudec, property table (ISO 527/178)",
    figures: { density: 1270, tensileModulus: 2.2e9, tensileYield: 5.3e7, tensileBreak: 2.6e7, flexuralStrength: 7.9e7, hdt045MPa: 72 },
  },
  "petg-sheet-us": {
    label: "PETG sheet, ASTM values",
    source: "PETG sheets clear, Polydex Plastic, property list",
    figures: { density: 1270, tensileStrength: 7700 * psi, flexuralModulus: 310000 * psi, hdt264psi: fahrenheit(157) },
  },
  "pla-3d850-printed": {
    label: "PLA printed at 100 % infill, annealed",
    source: "Ingeo 3D850 technical data sheet, NatureWorks, printed part values (ASTM D638)",
    figures: { density: 1240, tensileYield: 5.1e7, tensileStrength: 5e7, tensileModulus: 2.315e9 },
  },
  "plywood-H200": {
    label: "plywood type H200",
    source: "Plywood mechanical properties (table), Journal of the Korean Wood Science and Technology 53(4), 2025, Table 3",
    figures: { modulus: 7.13469e9, rupture: 4.427e7 },
  },
  "plywood-H220": {
    label: "plywood type H220",
    source: "Plywood mechanical properties (table), Journal of the Korean Wood Science and Technology 53(4), 2025, Table 3",
    figures: { modulus: 7.33189e9, rupture: 4.719e7 },
  },
  "plywood-L220C": {
    label: "plywood type L220C",
    source: "Plywood mechanical properties (table), Journal of the Korean Wood Science and Technology 53(4), 2025, Table 3",
    figures: { modulus: 6.86096e9, rupture: 3.76e7 },
  },
  "plywood-S220C": {
    label: "plywood type S220C",
    source: "Plywood mechanical properties (table), Journal of the Korean Wood Science and Technology 53(4), 2025, Table 3",
    figures: { modulus: 8.97943e9, rupture: 6.574e7 },
  },
  "pmma-extruded": {
    label: "extruded acrylic sheet",
    source: "Physical properties for extruded acrylic sheet, plastics distributor knowledge base, property table, 0.250 in",
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
    source: "Acrylic data sheet, CCT Precision Machining, 2017, property table",
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
    source: "PVC pipe specifications, physical properties, GF Harvel (pipe maker), physical property table",
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
    source: "Mechanical properties of PVC pipe, plastics distributor knowledge base, property table",
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
    source:
      "ASTM D1784 Rigid PVC compounds, ASTM, 2011, cell limits: digits 1 PVC, 2 impact, 4 tensile, 5 modulus, 4 deflection temperature (from memory)",
    figures: { minTensile: 7000 * psi, minModulus: 400000 * psi, minIzod: 0.65 * footPoundPerInch, minDtul: fahrenheit(158) },
  },
  "steel-1018-cd": {
    label: "AISI 1018 cold-drawn steel",
    source: "Shigley's Mechanical Engineering Design, R. G. Budynas, J. K. Nisbett, 2015, Table A-20 (from memory)",
    figures: { ultimate: 4.4e8, yield: 3.7e8 },
  },
  "steel-1018-hr": {
    label: "AISI 1018 hot-rolled steel",
    source: "Shigley's Mechanical Engineering Design, R. G. Budynas, J. K. Nisbett, 2015, Table A-20 (from memory)",
    figures: { ultimate: 4e8, yield: 2.2e8 },
  },
  "steel-shigley-a5": {
    label: "carbon steel elastic constants",
    source: "Shigley's Mechanical Engineering Design, R. G. Budynas, J. K. Nisbett, 2015, Table A-5 (from memory)",
    figures: { modulus: 2.07e11, shearModulus: 7.93e10, poisson: 0.292 },
  },
}
