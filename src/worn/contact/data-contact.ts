/** Regions of the body a moving part may strike. */
export type BodyRegion =
  | "skull-forehead"
  | "face"
  | "neck"
  | "back-shoulders"
  | "chest"
  | "abdomen"
  | "pelvis"
  | "upper-arm-elbow"
  | "forearm-wrist"
  | "hand-finger"
  | "thigh-knee"
  | "lower-leg"

/** What is published for one region. */
export interface ContactRegion {
  /** Permissible quasi-static (clamping) force, N. */
  readonly force: number
  /** Permissible transient force over the quasi-static one; null where the standard permits no contact. */
  readonly transient: number | null
  /** Permissible quasi-static pressure, Pa: the lowest of the region's measuring points. */
  readonly pressure: number
  /** Spring of the body, N/m. */
  readonly stiffness: number
  /** Effective mass of the body, kg. */
  readonly mass: number
}

const N_PER_CM2 = 1e4
const N_PER_MM = 1e3

/** Permissible quasi-static pressure by measuring point, N/cm² (ISO/TS 15066, table A.2, not verified). */
export const contactPressures = {
  "middle-of-forehead": 130,
  temple: 110,
  "masticatory-muscle": 110,
  "neck-muscle": 140,
  "seventh-neck-vertebra": 210,
  "shoulder-joint": 160,
  "fifth-lumbar-vertebra": 210,
  sternum: 120,
  "pectoral-muscle": 170,
  "abdominal-muscle": 140,
  "pelvic-bone": 210,
  deltoid: 190,
  humerus: 220,
  "radial-bone": 190,
  "forearm-muscle": 180,
  "back-of-hand-dominant": 200,
  "back-of-hand-other": 190,
  "thigh-muscle": 250,
  kneecap: 220,
  shin: 220,
  "calf-muscle": 210,
} as const

type PressurePoint = keyof typeof contactPressures
const region = (force: number, transient: number | null, stiffness: number, mass: number, ...points: PressurePoint[]): ContactRegion => ({
  force,
  transient,
  pressure: Math.min(...points.map((p) => contactPressures[p])) * N_PER_CM2,
  stiffness: stiffness * N_PER_MM,
  mass,
})

/** Permissible contact and body model by region (ISO/TS 15066, tables A.2 and A.3, not verified). */
export const contactRegions: Readonly<Record<BodyRegion, ContactRegion>> = {
  "skull-forehead": region(130, null, 150, 4.4, "middle-of-forehead", "temple"),
  face: region(65, null, 75, 4.4, "masticatory-muscle"),
  neck: region(150, 2, 50, 1.2, "neck-muscle", "seventh-neck-vertebra"),
  "back-shoulders": region(210, 2, 35, 40, "shoulder-joint", "fifth-lumbar-vertebra"),
  chest: region(140, 2, 25, 40, "sternum", "pectoral-muscle"),
  abdomen: region(110, 2, 10, 40, "abdominal-muscle"),
  pelvis: region(180, 2, 25, 40, "pelvic-bone"),
  "upper-arm-elbow": region(150, 2, 30, 3, "deltoid", "humerus"),
  "forearm-wrist": region(160, 2, 40, 2, "radial-bone", "forearm-muscle"),
  "hand-finger": region(140, 2, 75, 0.6, "back-of-hand-dominant", "back-of-hand-other"),
  "thigh-knee": region(220, 2, 50, 75, "thigh-muscle", "kneecap"),
  "lower-leg": region(130, 2, 60, 75, "shin", "calf-muscle"),
}

/** Regions that nothing may strike, whatever the force: the standard bars head and face, common practice the neck as well. */
export const noContact: readonly BodyRegion[] = ["skull-forehead", "face", "neck"]

/** Speed at which a walking person comes on, m/s (ISO 13855). */
export const walkingApproach = 1.6

/** Closing force limits of power-operated doors, a second opinion (EN 12453, 2017, not verified). */
export const doorForces = {
  /** N, gaps of 50 to 500 mm. */
  dynamic: 400,
  /** N, gaps above 500 mm. */
  dynamicWide: 1400,
  /** s the dynamic force may last. */
  dynamicTime: 0.75,
  /** N after that time. */
  static: 150,
} as const

/** Share of a foam pad's thickness that can be used before it turns hard: the lower end of the published 60 to 80 %. */
export const usableFoam = 0.6
