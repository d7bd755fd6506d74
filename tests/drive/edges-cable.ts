import { type CableInput, cable } from "../../src/drive/index.js"
import type { SiOf } from "../../src/solver/index.js"
import type { Edges } from "../helpers/edges.js"

const bends = [
  { angle: "90 deg", radius: "120 mm" },
  { angle: "60 deg", radius: "90 mm" },
]
const sheath = (change: object) => ({
  route: { type: "sheath", friction: 0.1, bends, sheathRate: "150 N/mm", sheathBore: "2 mm", ...change },
})
const pulley = { angle: "180 deg", pulleyDiameter: "40 mm", pinDiameter: "5 mm", bearingFriction: 0.1 }
const pulleys = (change: object) => ({ route: { type: "pulleys", pulleys: [{ ...pulley, ...change }] } })

/** Ratio of tensions over a pulley: the larger root of x² − 2·b·x + 1 = 0. */
function over(angle: number, grip: number): number {
  const b = (1 - grip ** 2 * Math.cos(angle)) / (1 - grip ** 2)
  return b + Math.sqrt(Math.max(0, b ** 2 - 1))
}
const pull = ({ force, route }: SiOf<CableInput>): number =>
  route.type === "sheath"
    ? route.bends.reduce((tension, bend) => tension * Math.E ** (route.friction * bend.angle), force)
    : route.pulleys.reduce(
        (tension, p) => (tension * over(p.angle, (p.bearingFriction * p.pinDiameter) / p.pulleyDiameter)) / (1 - p.bendingLoss),
        force,
      )
/** Breaking force in the tightest bend, by the sheave table. */
function strength({ breakingForce, diameter, route }: SiOf<CableInput>): number {
  const across = route.type === "sheath" ? route.bends.map((b) => 2 * b.radius) : route.pulleys.map((p) => p.pulleyDiameter)
  const ratio = Math.min(40, ...across.map((length) => length / diameter))
  const [at, percent] = [
    [1, 2, 4, 6, 8, 10, 15, 20, 30, 40],
    [50, 65, 75, 79, 83, 86, 89, 91, 93, 95],
  ] as [number[], number[]]
  const k = Math.max(
    1,
    at.findIndex((a) => a >= ratio),
  )
  const [a, b, p, q] = [at[k - 1], at[k], percent[k - 1], percent[k]] as [number, number, number, number]
  return (breakingForce * (p + ((q - p) * (ratio - a)) / (b - a))) / 100
}

export const edges: Edges = {
  cautions: [
    { solver: cable, code: "stored-energy", severity: "warning", shown: {}, notShown: null },
    { solver: cable, code: "pull-only", severity: "note", shown: {}, notShown: null },
    {
      solver: cable,
      code: "pinch",
      severity: "warning",
      shown: pulleys({}),
      notShown: {},
    },
    {
      solver: cable,
      code: "sheath-stops",
      severity: "caution",
      shown: {},
      notShown: pulleys({}),
    },
    { solver: cable, code: "sheath-rigid", severity: "note", shown: sheath({ sheathRate: null }), notShown: sheath({}) },
    // 60·e^(0.1·2.618) = 77.96 N, five times that over the 95 % left at 120 diameters
    { solver: cable, code: "thin-margin", severity: "warning", shown: { breakingForce: 410.2 }, notShown: { breakingForce: 410.5 } },
    { solver: cable, code: "over-bent", severity: "warning", shown: { minBendRadius: "90.1 mm" }, notShown: { minBendRadius: "89.9 mm" } },
    {
      solver: cable,
      code: "tight-bend",
      severity: "caution",
      shown: pulleys({ pulleyDiameter: "17.99 mm" }),
      notShown: pulleys({ pulleyDiameter: "18.01 mm" }),
    },
    // half is left where e^(μ·150°) is two: μ = ln 2/2.618
    { solver: cable, code: "large-loss", severity: "caution", shown: sheath({ friction: 0.2649 }), notShown: sheath({ friction: 0.2646 }) },
  ],
  refusals: [{ solver: cable, code: "breaks", refused: { breakingForce: 82.0 }, answered: { breakingForce: 82.1 } }],
  faults: [
    // a circle of 1.5 mm has 1.767 mm²
    {
      solver: cable,
      path: "area",
      faulty: { construction: null, modulus: "100 GPa", area: "1.768 mm2" },
      sound: { construction: null, modulus: "100 GPa", area: "1.767 mm2" },
    },
    { solver: cable, path: "route.sheathBore", faulty: sheath({ sheathBore: "1.5 mm" }), sound: sheath({ sheathBore: "1.505 mm" }) },
    {
      solver: cable,
      path: "route.bends.0.radius",
      faulty: sheath({ bends: [{ angle: 1, radius: "0.745 mm" }] }),
      sound: sheath({ bends: [{ angle: 1, radius: "0.75 mm" }] }),
    },
    {
      solver: cable,
      path: "route.pulleys.0.pulleyDiameter",
      faulty: pulleys({ pulleyDiameter: "1.49 mm", pinDiameter: "1 mm" }),
      sound: pulleys({ pulleyDiameter: "1.5 mm", pinDiameter: "1 mm" }),
    },
    {
      solver: cable,
      path: "route.pulleys.0.pinDiameter",
      faulty: pulleys({ pinDiameter: "40 mm" }),
      sound: pulleys({ pinDiameter: "39.9 mm" }),
    },
    { solver: cable, path: "construction", faulty: { construction: undefined }, sound: {} },
  ],
  numbers: {
    "cable.breaks.shortBy": (si) => pull(si) - strength(si),
    "cable.breaks.at.pulling": pull,
    "cable.breaks.at.strength": strength,
    "cable.thin-margin.usual": () => 5,
    "cable.tight-bend.ends": () => 12,
    "cable.area.round": (si) => Math.PI * (si.diameter / 2) ** 2,
    "cable.route.bends.0.radius.across": (si) => 2 * si.route.bends[0].radius,
    "cable.route.pulleys.0.pulleyDiameter.across": (si) => si.route.pulleys[0].pulleyDiameter,
    "cable.route.pulleys.0.pinDiameter.pin": (si) => si.route.pulleys[0].pinDiameter,
    "cable.route.pulleys.0.pinDiameter.pulley": (si) => si.route.pulleys[0].pulleyDiameter,
  },
}
