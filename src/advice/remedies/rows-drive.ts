// Adjustables of drives: figures that go together when they are geared otherwise or take a stronger motor, strokes, holding, rests.
import { expand, namesAlong, valueAt } from "./paths.js"
import { figuresRow, type Ladder, numberRow, type Row, type Rung } from "./rows.js"
import { PAUSES, STROKES, TENTHS, tellValue } from "./steps.js"

const drive = "motions[].drive"

type Names = readonly string[]
const named =
  (what: string) =>
  ([name = "it"]: Names) =>
    `${what} ${name}`

const force = { kind: "force" } as const
const moment = { kind: "moment" } as const
const current = { kind: "current" } as const
const speed = { kind: "speed", unit: "mm/s" } as const
const turning = { kind: "angularSpeed", unit: "rpm" } as const
const time = { kind: "time", unit: "s" } as const

/** A drive's own figures: geared otherwise, or with a stronger motor. */
const figureRows: readonly Row[] = [
  figuresRow({
    name: "actuator-gearing",
    at: drive,
    type: "linear-actuator",
    figures: [
      { ...force, field: "ratedForce", by: 1 },
      { ...force, field: "holdingForce", by: 1 },
      { ...speed, field: "noLoadSpeed", by: -1 },
      { ...speed, field: "ratedSpeed", by: -1 },
    ],
    factors: [1.25, 1.5, 2, 3, 0.8, 0.67, 0.5],
    tells: ["ratedForce", "ratedSpeed"],
    of: named("as the rated force and speed of the actuator of"),
    work: "new part",
    peaked: true,
  }),
  figuresRow({
    name: "actuator-motor",
    at: drive,
    type: "linear-actuator",
    figures: [
      { ...force, field: "ratedForce", by: 1 },
      { ...force, field: "holdingForce", by: 1 },
      { ...current, field: "ratedCurrent", by: 1 },
      { ...current, field: "noLoadCurrent", by: 1 },
    ],
    factors: [1.25, 1.5, 2, 3],
    tells: ["ratedForce", "ratedCurrent"],
    of: named("as the rated force and current of the actuator of"),
    work: "new part",
  }),
  figuresRow({
    name: "gearmotor-gearing",
    at: drive,
    type: "gearmotor",
    figures: [
      { ...moment, field: "loadTorque", by: 1 },
      { ...moment, field: "ratedTorque", by: 1 },
      { ...moment, field: "holdingTorque", by: 1 },
      { ...turning, field: "noLoadSpeed", by: -1 },
      { ...turning, field: "loadSpeed", by: -1 },
    ],
    factors: [1.25, 1.5, 2, 3, 0.8, 0.67, 0.5],
    tells: ["ratedTorque", "noLoadSpeed"],
    of: named("as the rated torque and speed of the gearmotor of"),
    work: "new part",
    peaked: true,
  }),
  figuresRow({
    name: "gearmotor-motor",
    at: drive,
    type: "gearmotor",
    figures: [
      { ...moment, field: "loadTorque", by: 1 },
      { ...moment, field: "ratedTorque", by: 1 },
      { ...moment, field: "holdingTorque", by: 1 },
      { ...current, field: "loadCurrent", by: 1 },
      { ...current, field: "noLoadCurrent", by: 1 },
    ],
    factors: [1.25, 1.5, 2, 3],
    tells: ["loadTorque", "loadCurrent"],
    of: named("as the torque and current of the gearmotor of"),
    work: "new part",
  }),
  figuresRow({
    name: "servo-strength",
    at: drive,
    type: "hobby-servo",
    figures: [
      { ...moment, field: "firstStallTorque", by: 1 },
      { ...moment, field: "secondStallTorque", by: 1 },
      { ...moment, field: "holdingTorque", by: 1 },
      { ...current, field: "stallCurrent", by: 1 },
    ],
    factors: [1.25, 1.5, 2, 3],
    tells: ["firstStallTorque"],
    of: named("as the stall torque of the servo of"),
    work: "new part",
  }),
  figuresRow({
    name: "servo-speed",
    at: drive,
    type: "hobby-servo",
    figures: [
      { ...time, field: "firstTime", by: -1 },
      { ...time, field: "secondTime", by: -1 },
      { ...current, field: "stallCurrent", by: 1 },
    ],
    factors: [1.25, 1.5, 2],
    tells: ["firstTime"],
    of: named("for 60° of the servo of"),
    work: "new part",
  }),
  ...(["holdingForce", "holdingTorque"] as const).map((field) =>
    numberRow({
      name: "holding",
      path: `${drive}.${field}`,
      kind: field === "holdingForce" ? "force" : "moment",
      of: named("held without power, by a drive that locks or a brake, in"),
      steps: { sizes: TENTHS.filter((one) => one >= 0.01), way: "up", reach: 60 },
      work: "new part",
      absent: 0,
      // stages of its own may lock whatever nobody says
      when: ({ stages }) => !(Array.isArray(stages) && stages.length),
    }),
  ),
  numberRow({
    name: "drive-count",
    path: `${drive}.count`,
    kind: "number",
    of: named("like drives share the work of"),
    steps: { times: [2, 3] },
    work: "new part",
  }),
  numberRow({
    name: "driver-limit",
    path: `${drive}.currentLimit`,
    kind: "current",
    of: named("as the limit of the motor driver of"),
    steps: { sizes: TENTHS, way: "up" },
    work: "small part",
  }),
  strokeRow(),
  numberRow({
    name: "shaft-travel",
    path: `${drive}.travel`,
    kind: "angle",
    unit: "°",
    of: named("as the travel of the gearmotor of"),
    steps: { times: [1.05, 1.1, 1.2, 1.5, 0.95, 0.9, 0.8] },
    work: "setting",
  }),
  numberRow({
    name: "servo-travel",
    path: `${drive}.toAngle`,
    kind: "angle",
    unit: "°",
    of: named("as the far end of the servo of"),
    steps: { by: [5, 10, 15, 20, 30, -5, -10, -15, -20].map((deg) => (deg * Math.PI) / 180) },
    work: "setting",
  }),
]

/** A linear actuator of another stroke, longer by as much when retracted. */
function strokeRow(): Row {
  const name = "stroke"
  return {
    name,
    paths: [`${drive}.stroke`, `${drive}.retractedLength`],
    ladders: ({ si }) =>
      expand(si, drive).flatMap((path): Ladder[] => {
        const part = valueAt(si, path) as Readonly<Record<string, unknown>>
        const { stroke, retractedLength } = part
        if (typeof stroke !== "number" || typeof retractedLength !== "number") return []
        const shown = { kind: "length", unit: "mm" } as const
        const rung = (size: number): Rung => ({
          settings: [
            { path: `${path}.stroke`, value: tellValue(shown, size).value },
            { path: `${path}.retractedLength`, value: tellValue(shown, retractedLength + size - stroke).value },
          ],
          was: tellValue(shown, stroke).text,
          becomes: tellValue(shown, size).text,
        })
        const of = named("as the stroke, and as much more or less retracted, of the actuator of")(namesAlong(si, path))
        const sides = [
          STROKES.filter((one) => one > stroke + 1e-6).slice(0, 3),
          STROKES.filter((one) => one < stroke - 1e-6)
            .reverse()
            .slice(0, 3),
        ]
        return sides.filter((side) => side.length).map((side) => ({ name, of, work: "new part", peaked: true, rungs: side.map(rung) }))
      }),
  }
}

/** How a drive rests. */
const restRows: readonly Row[] = [
  numberRow({
    name: "duty-pause",
    path: "motions[].duty.restDuration",
    kind: "time",
    of: named("between two times out and back of"),
    steps: { sizes: PAUSES, way: "up" },
    work: "setting",
  }),
]

/** Adjustables of drives. */
export const driveRows: readonly Row[] = [...figureRows, ...restRows]
