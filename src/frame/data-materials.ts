import { at, commonPractice, type Source } from "../solver/index.js"
import { pvcDerating } from "./data-derating.js"
import { EN_1995, SHIGLEY } from "./sources.js"
import {
  ABS_DENSITY,
  ABS_FIRST,
  ABS_SECOND,
  ACRYLIC_FIRST,
  ACRYLIC_SECOND,
  ALUMINIUM_MINIMUM,
  ALUMINIUM_TYPICAL,
  ASSUMED_CREEP,
  ASTM_D1784,
  CARBON_TUBE,
  CARBON_WOUND,
  CHIPBOARD_MODULUS,
  CHIPBOARD_SHEET,
  EN_312,
  GLASS_ROD,
  GLASS_ROD_75,
  HALF_OF_FIBRE,
  HIPS_FIRST,
  HIPS_RANGE,
  MDF_SHEET,
  NO_CREEP,
  OSB_DESIGN,
  OSB_MEASURED,
  PC_GRADE,
  PC_SHEET,
  PC_STOCK,
  PETG_FIRST,
  PETG_SECOND,
  PLA_GRADE,
  PLA_RANGE,
  PLYWOOD_BIRCH,
  PLYWOOD_TESTS,
  PVC_CREEP,
  PVC_FIRST,
  PVC_SECOND,
  SOFTWOOD_GRADES,
  WOOD_HANDBOOK,
} from "./sources-materials.js"

/** Materials a frame is made of. */
export type FrameMaterial =
  | "aluminium-6061"
  | "steel"
  | "pvc-pipe"
  | "abs"
  | "petg"
  | "polycarbonate"
  | "acrylic"
  | "hips"
  | "printed-pla"
  | "carbon-pultruded"
  | "carbon-wrapped"
  | "glass-pultruded"
  | "softwood"
  | "plywood"
  | "mdf"
  | "chipboard"
  | "osb"

type Range = readonly [low: number, high: number]

/** One frame material; ranges span the published figures, and calculations use their safe end. */
export interface FrameMaterialData {
  readonly label: string
  /** Young's modulus, Pa. */
  readonly modulus: Range
  /** Stress at which it yields or, where brittle, breaks; Pa. */
  readonly strength: Range
  /** Density, kg/m³. */
  readonly density: Range
  /** Poisson's ratio; null where the material differs along and across, so that none applies. */
  readonly poisson: number | null
  /** Shear strength, Pa; null where von Mises' yield/√3 applies. */
  readonly shear: number | null
  /** Splits along its fibres at holes and under clamps; no bearing strength is known. */
  readonly splits: boolean
  /** Breaks without yielding first. */
  readonly brittle: boolean
  /** Highest temperature it is calculated at, °C. */
  readonly limit: number
  /** Temperature of deflection under 1.8 MPa, °C: where the modulus has fallen to 900 MPa. */
  readonly hdt: number | null
  /** Strength against that at 23 °C by temperature (°C); null where it falls as the modulus does. */
  readonly derating: readonly (readonly [temperature: number, factor: number])[] | null
  /** Stiffness left after a load has stood, by the decimal logarithm of hours; null where it does not creep. */
  readonly creep: readonly (readonly [logHours: number, factor: number])[] | null
  /** Where the creep figures come from, or which assumption stands in for them. */
  readonly creepSource: Source
  /** Where its figures come from; the first is the one cautions name. */
  readonly sources: readonly [Source, ...Source[]]
}

/** From 0.1 h, straight over the logarithm of time, to half at 1000 h. */
const halved = [
  [-1, 1],
  [3, 0.5],
] as const

/** Materials with their sources; the sheets themselves are in {@link datasheets}. */
export const frameMaterials: Readonly<Record<FrameMaterial, FrameMaterialData>> = {
  "aluminium-6061": {
    label: "aluminium 6061-T6",
    modulus: [68.9e9, 71.7e9],
    strength: [241.3e6, 276e6],
    density: [2700, 2700],
    poisson: 0.33,
    shear: null,
    splits: false,
    brittle: false,
    limit: 100,
    hdt: null,
    derating: null,
    creep: null,
    creepSource: NO_CREEP,
    sources: [ALUMINIUM_MINIMUM, ALUMINIUM_TYPICAL, at(SHIGLEY, "table A-5")],
  },
  steel: {
    label: "mild steel",
    modulus: [200e9, 210e9],
    strength: [220e6, 370e6],
    density: [7850, 7850],
    poisson: 0.292,
    shear: null,
    splits: false,
    brittle: false,
    limit: 200,
    hdt: null,
    derating: null,
    creep: null,
    creepSource: NO_CREEP,
    sources: [at(SHIGLEY, "tables A-5 and A-20"), commonPractice],
  },
  "pvc-pipe": {
    label: "rigid PVC pipe (cell class 12454)",
    modulus: [2.482e9, 2.965e9],
    strength: [48.26e6, 51.37e6],
    density: [1400, 1420],
    poisson: 0.38,
    shear: null,
    splits: false,
    brittle: false,
    limit: 60,
    hdt: 70,
    derating: pvcDerating,
    creep: [
      [-1, 1],
      [Math.log10(438_000), 0.486],
    ],
    creepSource: PVC_CREEP,
    sources: [ASTM_D1784, PVC_FIRST, PVC_SECOND],
  },
  abs: {
    label: "ABS",
    modulus: [2.3e9, 2.352e9],
    strength: [44e6, 45.03e6],
    density: [1020, 1080],
    poisson: null,
    shear: null,
    splits: false,
    brittle: false,
    limit: 77,
    hdt: 77,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [ABS_FIRST, ABS_SECOND, ABS_DENSITY],
  },
  petg: {
    label: "PETG sheet",
    modulus: [2.137e9, 2.2e9],
    strength: [53e6, 53.1e6],
    density: [1270, 1270],
    poisson: null,
    shear: null,
    splits: false,
    brittle: false,
    limit: 69,
    hdt: 69,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [PETG_FIRST, PETG_SECOND],
  },
  polycarbonate: {
    label: "polycarbonate",
    modulus: [2.344e9, 2.4e9],
    strength: [57.9e6, 66e6],
    density: [1200, 1200],
    poisson: null,
    shear: null,
    splits: false,
    brittle: false,
    limit: 115,
    hdt: 128,
    derating: null,
    creep: [
      [-1, 1],
      [0, 2200 / 2400],
      [3, 1900 / 2400],
    ],
    creepSource: at(PC_GRADE, "ISO 899-1: 2200 N/mm² after 1 h, 1900 after 1000 h, strain at most 0.5 %"),
    sources: [PC_GRADE, PC_SHEET, PC_STOCK],
  },
  acrylic: {
    label: "acrylic sheet",
    modulus: [3.24e9, 3.3e9],
    strength: [60.67e6, 69e6],
    density: [1190, 1190],
    poisson: null,
    shear: null,
    splits: false,
    brittle: true,
    limit: 71,
    hdt: 71,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [ACRYLIC_FIRST, ACRYLIC_SECOND],
  },
  hips: {
    label: "high-impact polystyrene",
    modulus: [1.33e9, 2.627e9],
    strength: [17.09e6, 31.16e6],
    density: [1040, 1040],
    poisson: null,
    shear: null,
    splits: false,
    brittle: false,
    limit: 70,
    hdt: 70,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [HIPS_RANGE, HIPS_FIRST],
  },
  "printed-pla": {
    label: "printed PLA, full infill, along or across the layers",
    modulus: [2.315e9, 4e9],
    strength: [35e6, 65e6],
    density: [1240, 1240],
    poisson: null,
    shear: null,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: 55,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [PLA_RANGE, PLA_GRADE],
  },
  "carbon-pultruded": {
    label: "pultruded carbon tube or rod, along the fibres",
    modulus: [127e9, 134e9],
    strength: [1.37e9, 1.65e9],
    density: [1500, 1600],
    poisson: null,
    shear: 41.3e6,
    splits: true,
    brittle: true,
    limit: 80,
    hdt: null,
    derating: null,
    creep: null,
    creepSource: NO_CREEP,
    sources: [CARBON_TUBE, CARBON_WOUND],
  },
  "carbon-wrapped": {
    label: "roll-wrapped carbon tube, along its axis",
    modulus: [63.5e9, 67e9],
    strength: [685e6, 825e6],
    density: [1500, 1600],
    poisson: null,
    shear: 41.3e6,
    splits: true,
    brittle: true,
    limit: 80,
    hdt: null,
    derating: null,
    creep: null,
    creepSource: NO_CREEP,
    sources: [HALF_OF_FIBRE, CARBON_TUBE],
  },
  "glass-pultruded": {
    label: "pultruded glass-fibre rod or tube, along the fibres",
    modulus: [12.4e9, 41.4e9],
    strength: [172e6, 827e6],
    density: [1700, 2000],
    poisson: null,
    shear: 20e6,
    splits: true,
    brittle: true,
    limit: 80,
    hdt: null,
    derating: null,
    creep: null,
    creepSource: NO_CREEP,
    sources: [GLASS_ROD, GLASS_ROD_75],
  },
  softwood: {
    label: "softwood lath, grades C16 to C24",
    modulus: [5.4e9, 11e9],
    strength: [16e6, 24e6],
    density: [310, 420],
    poisson: null,
    shear: 3.2e6,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: null,
    derating: null,
    creep: [
      [-1, 1],
      [3, 1 / 1.8],
    ],
    creepSource: EN_1995,
    sources: [SOFTWOOD_GRADES],
  },
  plywood: {
    label: "plywood along the face grain",
    modulus: [6.861e9, 12.737e9],
    strength: [37.6e6, 65.74e6],
    density: [450, 700],
    poisson: null,
    shear: 2e6,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: null,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [PLYWOOD_TESTS, PLYWOOD_BIRCH, commonPractice],
  },
  mdf: {
    label: "MDF, 6 to 30 mm",
    modulus: [2.1e9, 2.7e9],
    strength: [18e6, 23e6],
    density: [700, 800],
    poisson: null,
    shear: 0.55e6,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: null,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [MDF_SHEET, commonPractice],
  },
  chipboard: {
    label: "chipboard P2, 10 to 22 mm",
    modulus: [1.5e9, 1.8e9],
    strength: [10.5e6, 11e6],
    density: [640, 700],
    poisson: null,
    shear: 0.3e6,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: null,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [CHIPBOARD_SHEET, EN_312, CHIPBOARD_MODULUS],
  },
  osb: {
    label: "oriented strandboard, either direction",
    modulus: [1.4e9, 6.28e9],
    strength: [7.4e6, 42.5e6],
    density: [590, 800],
    poisson: null,
    shear: 0.3e6,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: null,
    derating: null,
    creep: halved,
    creepSource: ASSUMED_CREEP,
    sources: [OSB_DESIGN, OSB_MEASURED, WOOD_HANDBOOK],
  },
}
