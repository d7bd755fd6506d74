import { pvcDerating } from "./material-factors.js"

/** Materials a frame is made of. */
export type FrameMaterial =
  | "aluminium6061"
  | "steel"
  | "pvcPipe"
  | "abs"
  | "petg"
  | "polycarbonate"
  | "acrylic"
  | "hips"
  | "printedPla"
  | "carbonPultruded"
  | "carbonWrapped"
  | "glassPultruded"
  | "softwood"
  | "plywood"
  | "mdf"
  | "chipboard"
  | "osb"

type Range = readonly [low: number, high: number]

/** One frame material; ranges span the published figures, and reckonings use their safe end. */
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
  /** Highest temperature it may be reckoned at, °C. */
  readonly limit: number
  /** Temperature of deflection under 1.8 MPa, °C: where the modulus has fallen to 900 MPa. */
  readonly hdt: number | null
  /** Strength against that at 23 °C by temperature (°C); null where it falls as the modulus does. */
  readonly derating: readonly (readonly [temperature: number, factor: number])[] | null
  /** Stiffness left after a load has stood, by the decimal logarithm of hours; null where it does not creep. */
  readonly creep: readonly (readonly [logHours: number, factor: number])[] | null
  /** Where the creep figures come from, or which assumption stands in for them. */
  readonly creepSource: string
  readonly source: string
}

const noCreep = "does not creep measurably at these temperatures: common practice, no source"
const assumedCreep = "no published creep figure found: half the stiffness left after 1000 h is assumed; common practice, no source"
/** From 0.1 h, straight over the logarithm of time, to half at 1000 h. */
const halved = [
  [-1, 1],
  [3, 0.5],
] as const

/** Materials with their sources; the sheets themselves are in {@link datasheets}. */
export const frameMaterials: Readonly<Record<FrameMaterial, FrameMaterialData>> = {
  aluminium6061: {
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
    creepSource: noCreep,
    source: "49 CFR 178.46, table 2 (minimum yield 35 000 psi); Aluminum Association typical values; limit from memory",
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
    creepSource: noCreep,
    source:
      "Shigley's Mechanical Engineering Design, 2015, tables A-5 (207 GPa) and A-20 (1018 hot-rolled to cold-drawn); modulus range 200 to 210 GPa and density: handbook values; all from memory",
  },
  pvcPipe: {
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
    creepSource:
      "creep data for rigid PVC is scarce: a line over log time from 0.1 h to 1750 of 3600 MPa at 50 years is assumed (ATV-DVWK-A 127, 2000, table 3, from memory)",
    source:
      "ASTM D1784, 2011, cell limits (from memory: 7000 psi, deflection temperature 158 °F); pipe makers' sheets for modulus and density",
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
    creepSource: assumedCreep,
    source: "two moulders' grade sheets; density and the lowest deflection temperature from the ABS (extrusion) sheet of Granta Design",
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
    creepSource: assumedCreep,
    source: "two sheet makers' property tables; deflection temperature 157 °F at 264 psi",
  },
  polycarbonate: {
    label: "polycarbonate",
    modulus: [2.35e9, 2.4e9],
    strength: [66e6, 66e6],
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
    creepSource: "grade sheet to ISO 899-1: creep modulus 2200 MPa at 1 h and 1900 MPa at 1000 h, strain at most 0.5 %",
    source: "grade and stock sheets (ISO values); lowest published deflection temperature 128 °C; limit 115 °C: common practice, no source",
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
    creepSource: assumedCreep,
    source: "two distributors' property tables; highest continuous temperature 71 °C taken as the deflection temperature, which is safe",
  },
  hips: {
    label: "high-impact polystyrene",
    modulus: [1.793e9, 1.793e9],
    strength: [27.58e6, 27.58e6],
    density: [1040, 1040],
    poisson: null,
    shear: null,
    splits: false,
    brittle: false,
    limit: 70,
    hdt: 70,
    derating: null,
    creep: halved,
    creepSource: assumedCreep,
    source: "supplier's typical values, 2017 (ASTM); deflection temperature 70 °C: common practice, no source",
  },
  printedPla: {
    label: "printed PLA, full infill, along the layers",
    modulus: [2.315e9, 2.315e9],
    strength: [50e6, 51e6],
    density: [1240, 1240],
    poisson: null,
    shear: null,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: 55,
    derating: null,
    creep: halved,
    creepSource: assumedCreep,
    source: "grade sheet, printed part values (ASTM D638), annealed; deflection temperature of plain PLA about 55 °C, from memory",
  },
  carbonPultruded: {
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
    creepSource: noCreep,
    source: "tube maker's minimum properties; limit 20 K below the glass transition of 100 °C: common practice, no source",
  },
  carbonWrapped: {
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
    creepSource: noCreep,
    source: "half of the figures along pultruded fibre, for the cross plies: common practice, no source",
  },
  glassPultruded: {
    label: "pultruded glass-fibre rod or tube, along the fibres",
    modulus: [20.6e9, 41.4e9],
    strength: [414e6, 827e6],
    density: [1900, 2000],
    poisson: null,
    shear: 20e6,
    splits: true,
    brittle: true,
    limit: 80,
    hdt: null,
    derating: null,
    creep: null,
    creepSource: noCreep,
    source: "pultruder's chart of typical rod properties (45 to 75 % fibre by weight); shear strength 20 MPa: common practice, no source",
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
    creepSource: "permanent deflection 1.8 times the first, reached here at 1000 h (EN 1995-1-1, 2004, table 3.2, k_def 0.8, from memory)",
    source: "EN 338, 2016, table 1, C16 lower and C24 upper figures, from memory; limit: common practice, no source",
  },
  plywood: {
    label: "plywood along the face grain",
    modulus: [6.861e9, 8.979e9],
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
    creepSource: assumedCreep,
    source:
      "Journal of the Korean Wood Science and Technology 53(4), 2025, table 3 (means of tests); density and shear: common practice, no source",
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
    creepSource: assumedCreep,
    source:
      "board maker's sheet to EN 622-5, 2020; internal bond taken for shear, which is safe; density upper end: common practice, no source",
  },
  chipboard: {
    label: "chipboard P2, 10 to 22 mm",
    modulus: [1.6e9, 1.6e9],
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
    creepSource: assumedCreep,
    source: "board makers' sheets to EN 312 type P2; internal bond taken for shear, which is safe",
  },
  osb: {
    label: "oriented strandboard, either direction",
    modulus: [2.03e9, 6.28e9],
    strength: [23.8e6, 32.2e6],
    density: [650, 800],
    poisson: null,
    shear: 0.3e6,
    splits: false,
    brittle: true,
    limit: 50,
    hdt: null,
    derating: null,
    creep: halved,
    creepSource: assumedCreep,
    source: "Wood Handbook (FPL-GTR-190), 2010, table 12-3, least and most of three mills; shear: common practice, no source",
  },
}
