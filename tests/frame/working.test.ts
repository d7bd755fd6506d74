import {
  beam,
  bendingRod,
  column,
  continuousBeam,
  handlingLoad,
  massProperties,
  memberSize,
  naturalFrequency,
  pinJoint,
  planeFrame,
  tubeSection,
} from "../../src/frame/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const box = { width: 0.03, height: 0.02, wall: 0.002 }
const lath = { width: 0.02, height: 0.04 }

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  ["box section", any(tubeSection), { ...box, material: "steel", moment: -20, torque: 5, shearForce: 40, axialForce: -300, length: 1 }],
  ["solid lath", any(tubeSection), { ...lath, material: "softwood", moment: 10, shearForce: 30 }],
  ["warm pipe that has stood", any(tubeSection), { pipe: "1", material: "pvc-pipe", moment: 15, materialTemperature: 45, duration: 28800 }],
  ["carbon tube in torsion", any(tubeSection), { outsideDiameter: 0.012, wall: 0.001, material: "carbon-pultruded", torque: 2, moment: 8 }],
  ["rod", any(tubeSection), { outsideDiameter: 0.008, modulus: 7e10, strength: 2e8, shearModulus: 2.6e10, torque: 3, length: 0.5 }],
  [
    "overhanging beam",
    any(beam),
    {
      length: 2,
      support: "simple",
      span: 1.4,
      section: lath,
      material: "softwood",
      forces: [
        { force: 30, position: 2 },
        { force: -10, position: 0.7 },
      ],
      distributedLoads: [{ startLoad: 0, endLoad: 30, start: 0.2, end: 1.2 }],
      duration: 3600,
    },
  ],
  [
    "beam of another shape",
    any(beam),
    {
      length: 1,
      support: "simple",
      section: { secondMoment: 1e-9, fibre: 0.01 },
      modulus: 7e10,
      strength: 2e8,
      forces: [{ force: 50, position: 0.3 }],
    },
  ],
  [
    "warm pipe as a beam",
    any(beam),
    { length: 0.8, support: "cantilever", section: { pipe: "3/4" }, material: "pvc-pipe", materialTemperature: 40 },
  ],
  [
    "lath on four supports, two of them springs",
    any(continuousBeam),
    {
      length: 3,
      section: lath,
      material: "softwood",
      supports: [
        { type: "pinned", position: 0.2 },
        { type: "spring", position: 1, stiffness: 800, turningStiffness: 40 },
        { type: "spring", position: 1.9, turningStiffness: 300 },
        { type: "clamped", position: 2.7 },
      ],
      forces: [
        { force: 30, position: 1.4 },
        { force: -10, position: 3 },
      ],
      distributedLoads: [{ startLoad: 0, endLoad: 30, start: 0.5, end: 2.2 }],
      duration: 3600,
    },
  ],
  ["flat strut", any(column), { length: 1.5, section: { width: 0.04, height: 0.005 }, material: "plywood", load: 20 }],
  [
    "clamped and free strut of foil",
    any(column),
    { length: 0.3, ends: "fixed-free", section: { outsideDiameter: 0.1, wall: 3e-5 }, material: "steel" },
  ],
  [
    "strut without a strength",
    any(column),
    { length: 1, section: { secondMoment: 1e-9, area: 1e-4 }, modulus: 7e10, endConstant: 2, load: 100 },
  ],
  [
    "plain pins in a plate",
    any(pinJoint),
    { force: 400, pins: 2, pinDiameter: 0.004, thickness: 0.003, strength: 3e7, edgeDistance: 0.01, shearPlanes: 1 },
  ],
  [
    "bolt through the sides of a lath",
    any(pinJoint),
    { force: 80, bolt: "M5", boltClass: "8.8", threadSheared: false, tube: lath, hole: "neutral-axis", material: "softwood" },
  ],
  [
    "bolt through carbon",
    any(pinJoint),
    { force: 80, bolt: "M4", tube: { outsideDiameter: 0.02, wall: 0.002 }, material: "carbon-wrapped" },
  ],
  [
    "clamp by force",
    any(pinJoint),
    { force: 80, bolt: "M4", tube: { pipe: "1" }, material: "pvc-pipe", clampWidth: 0.02, clampForce: 200 },
  ],
  [
    "column of whatever diameter it takes",
    any(memberSize),
    { member: { type: "column", length: 0.8, load: 90 }, search: { type: "round", wall: 0.001, material: "steel" }, handling: "stumble" },
  ],
  [
    "bar of whatever height it takes",
    any(memberSize),
    {
      member: { type: "beam", length: 0.8, support: "simple", forces: [{ force: 60, position: 0.3 }] },
      search: { type: "rectangular", width: 0.02, material: "softwood" },
      deflectionLimit: 0.004,
    },
  ],
  [
    "frame of bare figures and wood, on a roller and a spring",
    any(planeFrame),
    {
      nodes: [
        { name: "a", x: 0, y: 0 },
        { name: "b", x: 0.4, y: 0.7 },
        { name: "c", x: 1, y: 0.2 },
      ],
      members: [
        {
          name: "left",
          from: "a",
          to: "b",
          section: { secondMoment: 1e-8, fibre: 0.01, area: 2e-4 },
          modulus: 1e10,
          strength: 3e7,
          density: 600,
        },
        { name: "right", from: "b", to: "c", endJoint: "pinned", section: lath, material: "softwood" },
        {
          name: "tie",
          from: "a",
          to: "c",
          startJoint: "pinned",
          endJoint: "pinned",
          section: { outsideDiameter: 0.004 },
          material: "steel",
        },
      ],
      supports: [
        { type: "roller", node: "a", holds: "sideways" },
        { type: "spring", node: "a", upStiffness: 5000 },
        { type: "pinned", node: "c" },
      ],
      loads: [
        { type: "force", member: "right", force: 40, position: 0.3, direction: "across" },
        { type: "spread", member: "left", startLoad: -20, endLoad: 30, start: 0.1, end: 0.6, direction: "along" },
        { type: "node", node: "b", right: -5, up: -60, moment: 2 },
      ],
      handling: "stumble",
    },
  ],
  [
    "hinged wing on its actuator, masses along it",
    any(naturalFrequency),
    {
      length: 1.2,
      section: lath,
      material: "softwood",
      tipMass: 0.1,
      masses: [
        { mass: 0.3, position: 0.5 },
        { mass: 0.2, position: 0 },
      ],
      rootTurningStiffness: 300,
      rootStiffness: 2e4,
      actuator: { stiffness: 5e4, leverArm: 0.06 },
    },
  ],
  ["heavy tip", any(naturalFrequency), { length: 1, section: box, material: "glass-pultruded", tipMass: 5, addedMass: 0.1, stepRate: 1.5 }],
  [
    "rod bent far",
    any(bendingRod),
    { length: 1, section: { outsideDiameter: 0.004 }, material: "carbon-pultruded", force: 8, handling: "stumble" },
  ],
  ["fall", any(handlingLoad), { weight: 20, dropHeight: 0.1, staticDeflection: 0.004 }],
  [
    "slanting parts about a slanting axis",
    any(massProperties),
    {
      parts: [
        { mass: 1, x: 0.1, y: 0.2, z: 0.3, length: 0.5, width: 0.1, height: 0.02, directionX: 1, directionY: 2, directionZ: -1 },
        { mass: 0.4, x: -0.1, y: 0, z: 0.6, length: 0.3, outsideDiameter: 0.05, bore: 0.04, directionX: 0, directionZ: 1 },
      ],
      axisX: 0.2,
      axisDirectionX: 1,
      axisDirectionY: 1,
      axisDirectionZ: 0.5,
    },
  ],
]

workingTests(cases)
