// Adjustables of the motions beside their drives: what transmits, masses, springs, pivots, spars and pins.
import { bolts } from "../../frame/index.js"
import { expand, namesAlong, valueAt } from "./paths.js"
import { choiceRow, type Ladder, numberRow, type Row, type Rung } from "./rows.js"
import { driveRows } from "./rows-drive.js"
import { TENTHS, TUBES, tellValue, WALLS } from "./steps.js"

const mechanism = "motions[].mechanisms[]"
const elements = ["motions[].transmission[]", `${mechanism}.transmission[]`]

type Names = readonly string[]
const named =
  (what: string) =>
  ([name = "it"]: Names) =>
    `${what} ${name}`
const within =
  (what: string) =>
  ([name = "it", whole]: Names) =>
    `${what} ${name}${whole ? ` of ${whole}` : ""}`

const ratioSteps = { times: [0.9, 0.8, 0.67, 0.5, 1.1, 1.25, 1.5, 2] }

/** Ratios of elements between drive and mechanism, and what they bear. */
const elementRows: readonly Row[] = elements.flatMap((at): Row[] => {
  const size = (name: string, field: string, what: string) =>
    numberRow({
      name,
      path: `${at}.${field}`,
      kind: "length",
      unit: "mm",
      of: named(what),
      steps: ratioSteps,
      work: "rebuilding",
      peaked: true,
    })
  const teeth = (name: string, field: string, what: string) =>
    numberRow({
      name,
      path: `${at}.${field}`,
      kind: "number",
      of: named(what),
      steps: ratioSteps,
      whole: true,
      work: "rebuilding",
      peaked: true,
    })
  const bears = (name: string, field: string, kind: "force" | "moment", what: string) =>
    numberRow({ name, path: `${at}.${field}`, kind, of: named(what), steps: { sizes: TENTHS, way: "up" }, work: "small part" })
  return [
    size("drum", "drumDiameter", "as the drum of"),
    size("driving-arm", "drivingArm", "as the driving arm of the lever of"),
    size("driven-arm", "drivenArm", "as the driven arm of the lever of"),
    size("crank", "crank", "as the crank of"),
    size("driving-pulley", "drivingDiameter", "as the driving pulley of"),
    size("driven-pulley", "drivenDiameter", "as the driven pulley of"),
    size("screw-pitch", "pitch", "as the pitch of the screw or chain of"),
    teeth("driving-teeth", "drivingTeeth", "teeth on the driving wheel of"),
    teeth("driven-teeth", "drivenTeeth", "teeth on the driven wheel of"),
    bears("line-strength", "lineStrength", "force", "as the strength of the line of"),
    bears("gear-strength", "maxTorque", "moment", "as the torque that the gears bear in"),
    bears("element-strength", "maxForce", "force", "as the force that the screw, crank or lever bears in"),
    bears("breaking-force", "breakingForce", "force", "as the breaking force of chain or cable of"),
  ]
})

const stageRows: readonly Row[] = ["motions[].drive.stages[]", ...elements.map((at) => `${at}.stages[]`)].map((at) =>
  numberRow({
    name: "stage-teeth",
    path: `${at}.drivenTeeth`,
    kind: "number",
    of: named("teeth on a driven gear of"),
    steps: ratioSteps,
    whole: true,
    work: "rebuilding",
    peaked: true,
  }),
)

const shift = [-0.04, -0.02, -0.01, 0.01, 0.02, 0.04]
const turn = [-20, -10, -5, 5, 10, 20].map((deg) => (deg * Math.PI) / 180)

/** Masses, springs, pivots and friction of what moves. */
const mechanismRows: readonly Row[] = [
  numberRow({
    name: "moving-mass",
    path: `${mechanism}.masses[].mass`,
    kind: "mass",
    unit: "g",
    of: within("for"),
    steps: { times: [0.9, 0.8, 0.7, 0.5, 0.3] },
    work: "rebuilding",
  }),
  numberRow({
    name: "mass-place",
    path: `${mechanism}.masses[].radius`,
    kind: "length",
    unit: "mm",
    of: within("from the hinge for"),
    steps: { times: [0.9, 0.8, 0.6] },
    work: "rebuilding",
  }),
  ...(["tipMass", "sliderMass", "rodMass", "couplerMass", "armsMass"] as const).map((field) =>
    numberRow({
      name: "moving-mass",
      path: `${mechanism}.${field}`,
      kind: "mass",
      unit: "g",
      of: named(
        {
          tipMass: "at the tip of",
          sliderMass: "for the slider of",
          rodMass: "for the rod of",
          couplerMass: "for the rod of",
          armsMass: "for all arms of",
        }[field],
      ),
      steps: { times: [0.9, 0.8, 0.7, 0.5] },
      work: "rebuilding",
    }),
  ),
  numberRow({
    name: "spring-stiffness",
    path: `${mechanism}.springs[].stiffness`,
    kind: "forcePerLength",
    unit: "N/mm",
    of: named("as the stiffness of the helper spring of"),
    steps: { times: [1.25, 1.5, 2, 3, 5, 0.8, 0.67, 0.5] },
    work: "small part",
    peaked: true,
  }),
  numberRow({
    name: "spring-free-length",
    path: `${mechanism}.springs[].freeLength`,
    kind: "length",
    unit: "mm",
    of: named("as the free length of the helper spring of"),
    steps: { times: [0.95, 0.9, 0.8, 0.6, 1.05, 1.1, 1.2] },
    work: "small part",
    peaked: true,
  }),
  numberRow({
    name: "spring-attachment",
    path: `${mechanism}.springs[].radius`,
    kind: "length",
    unit: "mm",
    of: named("from the hinge to the helper spring of"),
    steps: { times: [1.1, 1.25, 1.5, 0.9, 0.75] },
    work: "rebuilding",
    peaked: true,
  }),
  numberRow({
    name: "moving-pivot",
    path: `${mechanism}.movingPivot.radius`,
    kind: "length",
    unit: "mm",
    of: named("from the hinge to the moving pivot of"),
    steps: { times: [1.1, 1.2, 1.4, 0.9, 0.8, 0.7] },
    work: "rebuilding",
    peaked: true,
  }),
  numberRow({
    name: "moving-pivot",
    path: `${mechanism}.movingPivot.angle`,
    kind: "angle",
    unit: "°",
    of: named("from the arm to the moving pivot of"),
    steps: { by: turn },
    work: "rebuilding",
    peaked: true,
  }),
  ...(["x", "y", "z"] as const).flatMap((axis) => [
    numberRow({
      name: "fixed-pivot",
      path: `${mechanism}.fixedPivot.${axis}`,
      kind: "length",
      unit: "mm",
      of: named(`${{ x: "outward", y: "upward", z: "square to both" }[axis]} as the fixed pivot of`),
      steps: { by: shift },
      work: "rebuilding",
      peaked: true,
    }),
  ]),
  numberRow({
    name: "hinge-friction",
    path: `${mechanism}.hingeFriction`,
    kind: "moment",
    of: named("of friction in the hinge of"),
    steps: { times: [0.5, 0.2] },
    work: "small part",
  }),
  numberRow({
    name: "arm-length",
    path: `${mechanism}.length`,
    kind: "length",
    unit: "mm",
    of: named("as the length of"),
    steps: { times: [0.95, 0.9, 0.8, 0.7] },
    work: "rebuilding",
  }),
]

/** Spar and pin of a motion. */
const frameRows: readonly Row[] = [
  tubeRow("spar-tube", "motions[].spar.section", "as the tube of the spar of"),
  choiceRow({
    name: "pin-bolt",
    path: "motions[].pin.bolt",
    order: Object.keys(bolts),
    of: named("as the hinge pin of"),
    work: "small part",
  }),
  numberRow({
    name: "edge-distance",
    path: "motions[].pin.edgeDistance",
    kind: "length",
    unit: "mm",
    of: named("from the hole to the end of the tube in"),
    steps: { times: [1.25, 1.5, 2, 3] },
    work: "rebuilding",
  }),
]

/** A tube of stock: every diameter with its wall, then thicker walls. */
function tubeRow(name: string, at: string, what: string): Row {
  return {
    name,
    paths: [`${at}.outsideDiameter`, `${at}.wall`],
    ladders: ({ si }) =>
      expand(si, at).flatMap((path): Ladder[] => {
        const { outsideDiameter, wall } = (valueAt(si, path) ?? {}) as Readonly<Record<string, unknown>>
        if (typeof outsideDiameter !== "number" || typeof wall !== "number") return []
        const shown = { kind: "length", unit: "mm" } as const
        const text = (d: number, w: number) => `${tellValue(shown, d).text} by ${tellValue(shown, w).text} tube`
        const rung = (d: number, w: number): Rung => ({
          settings: [
            { path: `${path}.outsideDiameter`, value: tellValue(shown, d).value },
            { path: `${path}.wall`, value: tellValue(shown, w).value },
          ],
          was: text(outsideDiameter, wall),
          becomes: text(d, w),
        })
        const of = `${named(what)(namesAlong(si, path))}, its masses left as stated`
        const wider = TUBES.filter((d) => d > outsideDiameter + 1e-6).slice(0, 5)
        const thicker = WALLS.filter((w) => w > wall + 1e-6 && 2 * w < outsideDiameter).slice(0, 3)
        const ladders = [wider.map((d) => rung(d, wall)), thicker.map((w) => rung(outsideDiameter, w))]
        return ladders.filter((rungs) => rungs.length).map((rungs) => ({ name, of, work: "rebuilding", peaked: false, rungs }))
      }),
  }
}

/** Adjustables of the motions. */
export const motionRows: readonly Row[] = [...driveRows, ...elementRows, ...stageRows, ...mechanismRows, ...frameRows]
