import type { Datasheet } from "./datasheet.js"
import {
  CHIPBOARD_MODULUS,
  CHIPBOARD_SHEET,
  EN_312,
  MDF_SHEET,
  OSB_DESIGN,
  OSB_MEASURED,
  PLYWOOD_BIRCH,
  PLYWOOD_TESTS,
  WOOD_HANDBOOK,
} from "./sources-materials.js"

/** What sheets and tables of boards print. */
export const boardSheets: Readonly<Record<string, Datasheet>> = {
  "chipboard-en312-p2": {
    label: "chipboard type P2, minimum modulus to 13 mm and to 25 mm",
    source: EN_312,
    figures: { modulusTo13mm: 1.8e9, modulusTo25mm: 1.5e9 },
  },
  "chipboard-p2-10mm": {
    label: "chipboard type P2, 10 mm",
    source: CHIPBOARD_SHEET,
    figures: { density: 700, bendingStrength: 1.1e7, internalBondMin: 4e5 },
  },
  "chipboard-p2-16mm": {
    label: "chipboard type P2, 16 mm",
    source: CHIPBOARD_SHEET,
    figures: { density: 660, bendingStrength: 1.1e7, internalBondMin: 3.5e5 },
  },
  "chipboard-p2-18mm": {
    label: "chipboard type P2, 18 mm",
    source: CHIPBOARD_SHEET,
    figures: { density: 650, bendingStrength: 1.1e7, internalBondMin: 3.5e5 },
  },
  "chipboard-p2-22mm": {
    label: "chipboard type P2, 22 mm",
    source: CHIPBOARD_SHEET,
    figures: { density: 640, bendingStrength: 1.05e7, internalBondMin: 3e5 },
  },
  "chipboard-p2-modulus": {
    label: "chipboard type P2 modulus, 15-18 mm",
    source: CHIPBOARD_MODULUS,
    figures: { bendingModulus: 1.6e9 },
  },
  "mdf-en622-5-19-30mm": {
    label: "MDF, thickness over 19 to 30 mm",
    source: MDF_SHEET,
    figures: { bendingStrength: 1.8e7, bendingModulus: 2.1e9, internalBond: 5.5e5, minDensity: 700 },
  },
  "mdf-en622-5-6-9mm": {
    label: "MDF, thickness over 6 to 9 mm",
    source: MDF_SHEET,
    figures: { bendingStrength: 2.3e7, bendingModulus: 2.7e9, internalBond: 6.5e5, minDensity: 700 },
  },
  "osb-3-design": {
    label: "oriented strandboard OSB/3, over 18 to 25 mm: characteristic values across, minimum modulus of the factory",
    source: OSB_DESIGN,
    figures: { bendingMinor: 7.4e6, planarShear: 1e6, modulusMinor: 1.98e9, minModulusMinor: 1.4e9 },
  },
  "osb-measured": {
    label: "oriented strandboard, ten products measured",
    source: OSB_MEASURED,
    figures: {
      minBendingMajor: 21.5e6,
      maxBendingMajor: 42.5e6,
      minBendingMinor: 11.1e6,
      maxBendingMinor: 22.6e6,
      minModulusMajor: 3.758e9,
      maxModulusMajor: 5.683e9,
      minModulusMinor: 1.819e9,
      maxModulusMinor: 2.962e9,
      minDensity: 590,
      maxDensity: 680,
    },
  },
  "osb-mill-1": {
    label: "oriented strandboard, mill 1",
    source: WOOD_HANDBOOK,
    figures: { density: 800, modulusParallel: 4.41e9, modulusPerpendicular: 2.89e9, ruptureParallel: 2.38e7, rupturePerpendicular: 2.42e7 },
  },
  "osb-mill-3": {
    label: "oriented strandboard, mill 3",
    source: WOOD_HANDBOOK,
    figures: { density: 680, modulusParallel: 5.75e9, modulusPerpendicular: 3.17e9, ruptureParallel: 3.2e7, rupturePerpendicular: 2.38e7 },
  },
  "osb-mill-7": {
    label: "oriented strandboard, mill 7",
    source: WOOD_HANDBOOK,
    figures: { density: 650, modulusParallel: 6.28e9, modulusPerpendicular: 2.03e9, ruptureParallel: 3.22e7, rupturePerpendicular: 3.04e7 },
  },
  "plywood-birch": {
    label: "birch plywood along the face grain, 6.5 to 18 mm",
    source: PLYWOOD_BIRCH,
    figures: {
      bending6p5mm: 50.9e6,
      bending9mm: 45.6e6,
      bending12mm: 42.9e6,
      bending18mm: 40.2e6,
      modulus6p5mm: 12.737e9,
      modulus9mm: 11.395e9,
      modulus12mm: 10.719e9,
      modulus18mm: 10.048e9,
    },
  },
  "plywood-first": {
    label: "plywood, first of four types tested",
    source: PLYWOOD_TESTS,
    figures: { modulus: 7.13469e9, rupture: 4.427e7 },
  },
  "plywood-fourth": {
    label: "plywood, fourth of four types tested",
    source: PLYWOOD_TESTS,
    figures: { modulus: 8.97943e9, rupture: 6.574e7 },
  },
  "plywood-second": {
    label: "plywood, second of four types tested",
    source: PLYWOOD_TESTS,
    figures: { modulus: 7.33189e9, rupture: 4.719e7 },
  },
  "plywood-third": {
    label: "plywood, third of four types tested",
    source: PLYWOOD_TESTS,
    figures: { modulus: 6.86096e9, rupture: 3.76e7 },
  },
}
