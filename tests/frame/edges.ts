import {
  beam,
  bendingRod,
  column,
  continuousBeam,
  frameMaterials,
  handlingLoad,
  linearLimit,
  massProperties,
  naturalFrequency,
  pinJoint,
  pipes,
  sectionOf,
  tubeSection,
} from "../../src/frame/index.js"
import type { Edges, RefusalRow } from "../helpers/edges.js"

type Material = keyof typeof frameMaterials
// biome-ignore lint/suspicious/noExplicitAny: each computation knows the solver it belongs to
type Any = any

/** Temperatures up to which figures are given, °C: glass transition less 20 K, deflection under load, maker's limit, dry wood. */
const limits: Record<Material, number> = {
  "aluminium-6061": 100,
  steel: 200,
  "pvc-pipe": 60,
  abs: 77,
  petg: 69,
  polycarbonate: 115,
  acrylic: 71,
  hips: 70,
  "printed-pla": 50,
  "carbon-pultruded": 80,
  "carbon-wrapped": 80,
  "glass-pultruded": 80,
  softwood: 50,
  plywood: 50,
  mdf: 50,
  chipboard: 50,
  osb: 50,
}
const deflection: Partial<Record<Material, number>> = {
  "pvc-pipe": 70,
  abs: 77,
  petg: 69,
  polycarbonate: 128,
  acrylic: 71,
  hips: 70,
  "printed-pla": 55,
}

/** What creep leaves: straight between the points over the decimal logarithm of hours, from a tenth of an hour. */
function left(material: Material, seconds: number): number {
  const points = frameMaterials[material].creep
  if (!points) return 1
  const x = Math.log10(Math.max(seconds / 3600, 0.1))
  const k = Math.max(
    1,
    points.findIndex(([at]) => at >= x),
  )
  const [[x0, y0], [x1, y1]] = [points[k - 1], points[k]] as [readonly [number, number], readonly [number, number]]
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}

/** Least modulus at the temperature and after the duration: down to 900 N/mm² at the temperature of deflection. */
function softModulus(si: Any): number {
  const {
    material,
    materialTemperature: temperature,
    duration,
  } = si as { material: Material | null; materialTemperature: number; duration: number }
  const low = (si.modulus ?? (material && frameMaterials[material].modulus[0])) as number
  if (material === null) return low
  const hdt = deflection[material]
  const range = frameMaterials[material].modulus[0]
  const warm = hdt === undefined || temperature < 23 ? 1 : 1 + ((900e6 / range - 1) * (temperature - 23)) / (hdt - 23)
  return low * warm * left(material, duration)
}

const handled = { still: 1, walking: 1 + 0.56 + 0.09588 + 0.07908 + 0.0754, sudden: 2, stumble: 3 }
const factor = (si: Any) => handled[si.handling as keyof typeof handled]
/** Force at a load parameter of 100. */
const mostForce = (si: Any) => (100 * softModulus(si) * sectionOf(si.section).secondMoment) / si.length ** 2

/** Proof stresses of ISO 898-1 and ISO 3506-1, Pa. */
const proofs: Record<string, number> = { "4.6": 225e6, "5.6": 280e6, "8.8": 580e6, "10.9": 830e6, "A2-70": 450e6 }
const boltDiameters: Record<string, number> = { M3: 3e-3, M4: 4e-3, M5: 5e-3, M6: 6e-3, M8: 8e-3, M10: 10e-3 }
const inTheHole = (si: Any) => (si.bolt === null ? si.pinDiameter : boltDiameters[si.bolt])
const holedWidth = (si: Any) =>
  si.tube.pipe !== null
    ? pipes[si.tube.pipe as keyof typeof pipes].outsideDiameter
    : (si.tube.outsideDiameter ?? (si.hole === "outer-fibre" ? si.tube.width : si.tube.height))

/** Shigley's end constants: theory by the exact roots, conservative and recommended. */
const endConstants: Record<string, readonly [theory: number, design: number, recommended: number]> = {
  "pinned-pinned": [1, 1, 1],
  "fixed-free": [0.25, 0.25, 0.25],
  "fixed-pinned": [2.046, 1, 1.2],
  "fixed-fixed": [4, 1, 1.2],
}
const ends = (si: Any, k: 0 | 1 | 2) => endConstants[si.ends]?.[k] as number

/** Where an answer passes a value, by halving; it must be below at `low` and above at `high`, or the other way round. */
function passes(answer: (x: number) => number, wanted: number, low: number, high: number): number {
  let [a, b] = [low, high]
  const rises = answer(b) > wanted
  for (let i = 0; i < 60; i++) {
    const mid = (a + b) / 2
    if (answer(mid) > wanted === rises) b = mid
    else a = mid
  }
  return (a + b) / 2
}

const alone = { material: undefined, modulus: "69 GPa" } as const
const noLoads = { forces: [], distributedLoads: [], moments: [] }
const example = beam(beam.example)
// the safety factor goes with the strength: σ and τ stay
const perStrength = (example.safetyFactor?.low as number) / (example.strength as number)
const strengthFor = (safety: number) => safety / perStrength
const sags = beam({ ...beam.example, modulus: "60 GPa" })
const modulusFor = (ratio: number) => (sags.maxDeflection.high / (ratio * (linearLimit / 3) * 0.9)) * 60e9
const springs = passes((force) => bendingRod({ ...bendingRod.example, force }).tipSlope.high, 0.5, 1, 150)
const shakes = passes((stepRate) => naturalFrequency({ ...naturalFrequency.example, stepRate }).amplification, 2, 0.5, 4)
const slow = naturalFrequency({ ...naturalFrequency.example, tipMass: 1.5 }).frequency.low
/** E·I/L of the example: a root as stiff as the member. */
const asStiff = (68.9e9 * (Math.PI / 64) * (0.016 ** 4 - 0.014 ** 4)) / 0.9
/** Force at which a 6 mm bolt of class 4.6 between cheeks of 5 mm, round the tube's two walls, is bent to 0.8 of its proof stress. */
const bentBolt = (0.8 * 225e6 * (Math.PI / 32) * ((4 * 20.1e-6) / Math.PI) ** 1.5 * 8) / (0.003 + 2 * 0.005) / handled.walking
const thin = { outsideDiameter: "40 mm", wall: "0.2 mm" } as const
const thinWall = tubeSection({ ...tubeSection.example, ...thin, moment: 1, torque: 0 })
const folds = (thinWall.bendingBucklingStress as number) / 3 / thinWall.bendingStress
const pin = { bolt: undefined, tighteningTorque: undefined, edgeDistance: undefined }
const square = { outsideDiameter: undefined, width: "20 mm", height: "20 mm" }
const bar = (length: number) => [{ mass: 1, x: 0, y: 0, z: 0, length }]
const part = (more: object) => ({ parts: [{ mass: 1, x: 0, y: 0, z: 0, ...more }] })
const force = (at: number) => ({ forces: [{ force: "12 N", position: at }] })
const moment = (at: number) => ({ moments: [{ moment: "1.5 N m", position: at }] })
const spread = (start: number, end: number) => ({ distributedLoads: [{ startLoad: "20 N/m", endLoad: "5 N/m", start, end }] })
const stillOrFall = "a fall stands in the place of the steps"
const fall = { stepRate: undefined, dropHeight: 0.1, staticDeflection: 0.01 }

const tooHot: readonly RefusalRow[] = [beam, bendingRod, column, continuousBeam, naturalFrequency, tubeSection, pinJoint].map((solver) => ({
  code: "too-hot",
  solver,
  refused: { material: "abs", materialTemperature: 77.1, ...(solver === tubeSection ? { length: undefined } : {}) },
  answered: { material: "abs", materialTemperature: 77, ...(solver === tubeSection ? { length: undefined } : {}) },
}))

export const edges: Edges = {
  cautions: [
    {
      code: "collapse",
      severity: "warning",
      solver: beam,
      shown: { strength: strengthFor(0.996) },
      notShown: { strength: strengthFor(1.004) },
    },
    {
      code: "thin-margin",
      severity: "warning",
      solver: beam,
      shown: { strength: strengthFor(2.99) },
      notShown: { strength: strengthFor(3.01) },
    },
    {
      code: "thin-margin",
      severity: "warning",
      solver: beam,
      shown: { strength: strengthFor(1.004) },
      notShown: { strength: strengthFor(0.996) },
    },
    {
      code: "bends-far",
      severity: "caution",
      solver: beam,
      shown: { modulus: modulusFor(1.004) },
      notShown: { modulus: modulusFor(0.996) },
    },
    {
      code: "short-beam",
      severity: "note",
      solver: beam,
      shown: { ...noLoads, length: 0.199 },
      notShown: { ...noLoads, length: 0.2005 },
    },
    {
      code: "lifts-off",
      severity: "caution",
      solver: beam,
      shown: { ...noLoads, ...force(0.9), countsOwnWeight: false, support: "simple", span: 0.895 },
      notShown: { ...noLoads, ...force(0.9), countsOwnWeight: false, support: "simple", span: 0.9 },
    },
    { code: "standing-still", severity: "note", solver: beam, shown: { handling: "still" }, notShown: {} },
    { code: "weight-unknown", severity: "note", solver: beam, shown: alone, notShown: { ...alone, countsOwnWeight: false } },
    { code: "weight-unknown", severity: "note", solver: beam, shown: alone, notShown: { ...alone, density: 2700 } },
    {
      code: "stress-unknown",
      severity: "caution",
      solver: beam,
      shown: { section: { secondMoment: "4000 mm4" } },
      notShown: { section: { secondMoment: "4000 mm4", fibre: "10 mm" } },
    },
    { code: "tip-load-only", severity: "note", solver: bendingRod, shown: {}, notShown: null },
    {
      code: "springs-back",
      severity: "warning",
      solver: bendingRod,
      shown: { force: springs * 1.004 },
      notShown: { force: springs * 0.996 },
    },
    { code: "straight-and-central", severity: "note", solver: column, shown: {}, notShown: null },
    { code: "euler-only", severity: "caution", solver: column, shown: alone, notShown: { ...alone, strength: "240 MPa" } },
    { code: "counted-as-turning", severity: "note", solver: column, shown: { ends: "fixed-fixed" }, notShown: {} },
    {
      code: "counted-as-turning",
      severity: "note",
      solver: column,
      shown: { ends: "fixed-pinned" },
      notShown: { ends: "fixed-pinned", endConstant: 1.2 },
    },
    { code: "beyond-theory", severity: "warning", solver: column, shown: { endConstant: 1.005 }, notShown: { endConstant: 1 } },
    {
      code: "beyond-theory",
      severity: "warning",
      solver: column,
      shown: { ends: "fixed-free", endConstant: 0.251 },
      notShown: { ends: "fixed-free", endConstant: 0.25 },
    },
    {
      code: "stiff-ends",
      severity: "caution",
      solver: column,
      shown: { ends: "fixed-fixed", endConstant: 1.005 },
      notShown: { ends: "fixed-fixed", endConstant: 1 },
    },
    { code: "brittle-column", severity: "warning", solver: column, shown: { material: "acrylic" }, notShown: { material: "abs" } },
    { code: "elastic-catch", severity: "note", solver: handlingLoad, shown: fall, notShown: {}, apart: stillOrFall },
    { code: "steady-walking", severity: "note", solver: handlingLoad, shown: {}, notShown: fall, apart: stillOrFall },
    { code: "point-parts", severity: "note", solver: massProperties, shown: { parts: bar(0) }, notShown: { parts: bar(0.0005) } },
    { code: "rigid-root", severity: "note", solver: naturalFrequency, shown: {}, notShown: { rootTurningStiffness: "500 N m/rad" } },
    {
      code: "rigid-root",
      severity: "note",
      solver: naturalFrequency,
      shown: {},
      notShown: { actuator: { stiffness: "100 N/mm", leverArm: "50 mm" } },
    },
    {
      code: "soft-root",
      severity: "caution",
      solver: naturalFrequency,
      shown: { rootTurningStiffness: asStiff * 0.996 },
      notShown: { rootTurningStiffness: asStiff * 1.004 },
    },
    {
      code: "bare",
      severity: "note",
      solver: naturalFrequency,
      shown: { addedMass: 0, tipMass: 0 },
      notShown: { addedMass: 0, tipMass: 0, masses: [{ mass: 0.1, position: 0.5 }] },
    },
    {
      code: "shaken-by-steps",
      severity: "warning",
      solver: naturalFrequency,
      shown: { stepRate: shakes * 1.004 },
      notShown: { stepRate: shakes * 0.996 },
    },
    {
      code: "slower-than-steps",
      severity: "caution",
      solver: naturalFrequency,
      shown: { tipMass: 1.5, stepRate: slow * 1.004 },
      notShown: { tipMass: 1.5, stepRate: slow * 0.996 },
    },
    {
      code: "bare",
      severity: "note",
      solver: naturalFrequency,
      shown: { addedMass: 0, tipMass: 0 },
      notShown: { addedMass: 0, tipMass: 0.0005 },
    },
    {
      code: "fibres-split",
      severity: "warning",
      solver: pinJoint,
      shown: { material: "carbon-pultruded" },
      notShown: {},
    },
    {
      code: "member-unknown",
      severity: "caution",
      solver: pinJoint,
      shown: { material: undefined },
      notShown: { material: undefined, strength: "200 MPa" },
    },
    {
      code: "wide-hole",
      severity: "caution",
      solver: pinJoint,
      shown: { ...pin, pinDiameter: "6.68 mm" },
      notShown: { ...pin, pinDiameter: "6.65 mm" },
    },
    { code: "edge-distance", severity: "note", solver: pinJoint, shown: { edgeDistance: undefined }, notShown: {} },
    {
      code: "near-the-edge",
      severity: "warning",
      solver: pinJoint,
      shown: { edgeDistance: "7.18 mm" },
      notShown: { edgeDistance: "7.21 mm" },
    },
    {
      code: "pin-bending-unjudged",
      severity: "note",
      solver: pinJoint,
      shown: {},
      notShown: { cheekThickness: "5 mm" },
    },
    {
      code: "pin-bending-unjudged",
      severity: "note",
      solver: pinJoint,
      shown: { shearPlanes: 1 },
      notShown: { cheekThickness: "5 mm" },
      apart: "a pin held on one side has no cheeks",
    },
    {
      code: "pin-stays-bent",
      severity: "caution",
      solver: pinJoint,
      shown: { cheekThickness: "5 mm", force: bentBolt * 1.004 },
      notShown: { cheekThickness: "5 mm", force: bentBolt * 0.996 },
    },
    { code: "clamp-force-scatter", severity: "note", solver: pinJoint, shown: {}, notShown: { tighteningTorque: undefined } },
    {
      code: "min-wall",
      severity: "note",
      solver: tubeSection,
      shown: { outsideDiameter: undefined, wall: undefined, pipe: "1/2" },
      notShown: {},
      apart: "a pipe takes the place of diameter and wall",
    },
    {
      code: "wall-buckling",
      severity: "warning",
      solver: tubeSection,
      shown: { ...thin, torque: 0, moment: folds * 1.004 },
      notShown: { ...thin, torque: 0, moment: folds * 0.996 },
    },
    {
      code: "wall-buckling",
      severity: "warning",
      solver: tubeSection,
      shown: { ...thin, torque: 0, moment: -folds * 1.004 },
      notShown: { ...thin, torque: 0, moment: -folds * 0.996 },
    },
    {
      code: "thick-wall",
      severity: "note",
      solver: tubeSection,
      shown: { ...square, wall: "2.01 mm" },
      notShown: { ...square, wall: "1.995 mm" },
    },
  ],
  refusals: [
    ...tooHot,
    { code: "hangs-down", solver: bendingRod, refused: { force: 197.5 }, answered: { force: 196.5 } },
    {
      code: "does-not-fit",
      solver: pinJoint,
      refused: { ...pin, pinDiameter: "14.62 mm" },
      answered: { ...pin, pinDiameter: "14.55 mm" },
    },
    {
      code: "does-not-fit",
      solver: pinJoint,
      refused: { bolt: "M10", edgeDistance: undefined, clampWidth: undefined, tube: { outsideDiameter: "14.08 mm", wall: "1.5 mm" } },
      answered: { bolt: "M10", edgeDistance: undefined, clampWidth: undefined, tube: { outsideDiameter: "14.16 mm", wall: "1.5 mm" } },
      noNearest: "bolts come in sizes, not in diameters",
    },
  ],
  faults: [
    {
      path: "section.outsideDiameter",
      solver: beam,
      faulty: { section: { outsideDiameter: "20 mm", pipe: "1/2" } },
      sound: { section: { outsideDiameter: "20 mm" } },
    },
    {
      path: "outsideDiameter",
      solver: tubeSection,
      faulty: { pipe: "1/2" },
      sound: {},
    },
    {
      path: "section.height",
      solver: beam,
      faulty: { section: { width: "20 mm" } },
      sound: { section: { width: "20 mm", height: "20 mm" } },
    },
    {
      path: "section.width",
      solver: column,
      faulty: { section: { height: "20 mm" } },
      sound: { section: { width: "20 mm", height: "20 mm" } },
    },
    {
      path: "section.wall",
      solver: beam,
      faulty: { section: { pipe: "1/2", wall: "1 mm" } },
      sound: { section: { pipe: "1/2" } },
    },
    {
      path: "section.wall",
      solver: beam,
      faulty: { section: { outsideDiameter: 0.02, wall: 0.01 } },
      sound: { section: { outsideDiameter: 0.02, wall: 0.00995 } },
    },
    {
      path: "wall",
      solver: tubeSection,
      faulty: { outsideDiameter: undefined, width: 0.03, height: 0.02, wall: 0.01 },
      sound: { outsideDiameter: undefined, width: 0.03, height: 0.02, wall: 0.00995 },
    },
    {
      path: "wall",
      solver: tubeSection,
      faulty: { outsideDiameter: undefined, width: 0.02, height: 0.03, wall: 0.01 },
      sound: { outsideDiameter: undefined, width: 0.02, height: 0.03, wall: 0.00995 },
    },
    {
      path: "section.fibre",
      solver: beam,
      faulty: { section: { outsideDiameter: 0.02, fibre: 0.01 } },
      sound: { section: { outsideDiameter: 0.02 } },
    },
    {
      path: "section.area",
      solver: beam,
      faulty: { section: { outsideDiameter: 0.02, area: 1e-4 } },
      sound: { section: { outsideDiameter: 0.02 } },
    },
    { path: "material", solver: beam, faulty: { material: undefined }, sound: {} },
    { path: "span", solver: beam, faulty: { span: 0.5 }, sound: {} },
    { path: "span", solver: beam, faulty: { support: "simple", span: 0.901 }, sound: { support: "simple", span: 0.9 } },
    { path: "forces.0.position", solver: beam, faulty: force(0.901), sound: force(0.9) },
    { path: "moments.0.position", solver: beam, faulty: moment(0.901), sound: moment(0.9) },
    { path: "distributedLoads.0.end", solver: beam, faulty: spread(0.1, 0.901), sound: spread(0.1, 0.9) },
    { path: "distributedLoads.0.end", solver: beam, faulty: spread(0.5, 0.5), sound: spread(0.5, 0.501) },
    {
      path: "section.area",
      solver: column,
      faulty: { section: { secondMoment: "4000 mm4" } },
      sound: { section: { secondMoment: "4000 mm4", area: "87 mm2" } },
    },
    { path: "dropHeight", solver: handlingLoad, faulty: { dropHeight: 0.1 }, sound: {} },
    { path: "stepRate", solver: handlingLoad, faulty: { stepRate: undefined }, sound: {} },
    {
      path: "staticDeflection",
      solver: handlingLoad,
      faulty: { stepRate: undefined, dropHeight: 0.1 },
      sound: fall,
    },
    {
      path: "dropHeight",
      solver: handlingLoad,
      faulty: { stepRate: undefined, staticDeflection: 0.01 },
      sound: fall,
    },
    { path: "axisDirectionX", solver: massProperties, faulty: { axisDirectionY: 0 }, sound: { axisDirectionY: 0.0005 } },
    { path: "parts.0.directionX", solver: massProperties, faulty: part({ directionX: 0 }), sound: part({ directionX: 0.0005 }) },
    {
      path: "parts.0.outsideDiameter",
      solver: massProperties,
      faulty: part({ outsideDiameter: 0.1, width: 0.0005 }),
      sound: part({ outsideDiameter: 0.1 }),
    },
    {
      path: "parts.0.outsideDiameter",
      solver: massProperties,
      faulty: part({ outsideDiameter: 0.1, height: 0.0005 }),
      sound: part({ outsideDiameter: 0.1 }),
    },
    {
      path: "parts.0.bore",
      solver: massProperties,
      faulty: part({ outsideDiameter: 0.1, bore: 0.1 }),
      sound: part({ outsideDiameter: 0.1, bore: 0.0995 }),
    },
    {
      path: "massPerLength",
      solver: naturalFrequency,
      faulty: { ...alone, addedMass: 0 },
      sound: { ...alone, addedMass: 0.0005 },
    },
    { path: "pinDiameter", solver: pinJoint, faulty: { pinDiameter: "6 mm" }, sound: {} },
    { path: "bolt", solver: pinJoint, faulty: { bolt: undefined }, sound: {} },
    {
      path: "thickness",
      solver: pinJoint,
      faulty: { tube: undefined, clampWidth: undefined },
      sound: { tube: undefined, clampWidth: undefined, thickness: "3 mm" },
    },
    {
      path: "cheekThickness",
      solver: pinJoint,
      faulty: { cheekThickness: "5 mm", shearPlanes: 1 },
      sound: { cheekThickness: "5 mm", shearPlanes: 2 },
    },
    { path: "gap", solver: pinJoint, faulty: { gap: "0.5 mm" }, sound: { gap: 0 } },
    {
      path: "masses.0.position",
      solver: naturalFrequency,
      faulty: { masses: [{ mass: 0.1, position: 0.901 }] },
      sound: { masses: [{ mass: 0.1, position: 0.9 }] },
    },
    { path: "clampForce", solver: pinJoint, faulty: { clampForce: "10 N" }, sound: {} },
    {
      path: "clampWidth",
      solver: pinJoint,
      faulty: { tube: { outsideDiameter: "20 mm" } },
      sound: { tube: { outsideDiameter: "20 mm", wall: "1.5 mm" } },
    },
    {
      path: "tighteningTorque",
      solver: pinJoint,
      faulty: { bolt: undefined, pinDiameter: "6 mm" },
      sound: { bolt: undefined, pinDiameter: "6 mm", tighteningTorque: undefined },
    },
    { path: "edgeDistance", solver: pinJoint, faulty: { edgeDistance: "3.05 mm" }, sound: { edgeDistance: "3.07 mm" } },
    { path: "shearModulus", solver: tubeSection, faulty: { material: "abs" }, sound: { material: "abs", shearModulus: "0.8 GPa" } },
  ],
  numbers: {
    "beam.bends-far.deflection": (_, out) => Math.max(Math.abs(out.maxDeflection.low), Math.abs(out.maxDeflection.high)),
    ...Object.fromEntries(
      ["beam", "bendingRod", "column", "continuousBeam", "naturalFrequency", "pinJoint", "tubeSection"].flatMap(
        (name): [string, (si: Any) => number][] => [
          [`${name}.too-hot.shortBy`, (si) => si.materialTemperature - limits[si.material as Material]],
          [`${name}.too-hot.at.limit`, (si) => limits[si.material as Material]],
          [`${name}.warm-plastic.deflectsAt`, (si) => deflection[si.material as Material] as number],
          [`${name}.creep.left`, (si) => left(si.material, si.duration)],
          [`${name}.strength-above-published.published`, (si) => frameMaterials[si.material as Material].strength[1]],
          [`${name}.modulus-above-published.published`, (si) => frameMaterials[si.material as Material].modulus[1]],
          [`${name}.standing-still.walking`, () => handled.walking],
          [`${name}.standing-still.stumble`, () => handled.stumble],
        ],
      ),
    ),
    "beam.lifts-off.pull": (_, out) => -Math.min(out.reactionStart, out.reactionEnd),
    "beam.section.outsideDiameter.count": () => 2,
    "tubeSection.outsideDiameter.count": () => 2,
    "beam.section.wall.wall": (si) => si.section.wall,
    "beam.section.wall.narrow": (si) => si.section.outsideDiameter,
    "tubeSection.wall.narrow": (si) => Math.min(si.width, si.height),
    "beam.span.place": (si) => si.span,
    "beam.forces.0.position.place": (si) => si.forces[0].position,
    "beam.moments.0.position.place": (si) => si.moments[0].position,
    "beam.distributedLoads.0.end.place": (si) => si.distributedLoads[0].end,
    "beam.distributedLoads.0.end.end": (si) => si.distributedLoads[0].end,
    "beam.distributedLoads.0.end.start": (si) => si.distributedLoads[0].start,
    "bendingRod.hangs-down.shortBy": (si) => si.force * factor(si) - mostForce(si) * (1 - 1e-9),
    "bendingRod.hangs-down.at.force": (si) => si.force * factor(si),
    "bendingRod.hangs-down.at.most": mostForce,
    "column.counted-as-turning.theory": (si) => ends(si, 0),
    "column.counted-as-turning.recommended": (si) => ends(si, 2),
    "column.beyond-theory.theory": (si) => ends(si, 0),
    "column.stiff-ends.design": (si) => ends(si, 1),
    "column.stiff-ends.recommended": (si) => ends(si, 2),
    "massProperties.parts.0.bore.bore": (si) => si.parts[0].bore,
    "massProperties.parts.0.bore.outsideDiameter": (si) => si.parts[0].outsideDiameter,
    "pinJoint.does-not-fit.shortBy": (si) => inTheHole(si) - holedWidth(si) / 3,
    "pinJoint.does-not-fit.at.pinDiameter": inTheHole,
    "pinJoint.does-not-fit.at.width": holedWidth,
    "pinJoint.edgeDistance.hole": inTheHole,
    "pinJoint.pin-stays-bent.limit": (si) => 0.8 * (si.bolt === null ? si.pinStrength : proofs[si.boltClass]),
    "naturalFrequency.masses.0.position.place": (si) => si.masses[0].position,
    "tubeSection.wall-buckling.used": (_, out) =>
      Math.max(out.bendingStress / out.bendingBucklingStress, out.axialStress / out.axialBucklingStress),
  },
}
