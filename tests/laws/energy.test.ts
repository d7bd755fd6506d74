// Work in is work out and losses, in both directions, for every element of a drive.
import fc from "fast-check"
import { describe, expect, it } from "vitest"
import type { AnyFields } from "../../src/solver/index.js"
import { inputs } from "../helpers/arbitrary.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"

/** What the balances below ask of inputs and answers. */
type Name =
  | "inputPower"
  | "outputPower"
  | "heat"
  | "inputTorque"
  | "outputSpeed"
  | "frictionHeat"
  | "workIn"
  | "workOut"
  | "frictionWork"
  | "returnedWork"
  | "pullingForce"
  | "payingOutForce"
  | "loadWork"
  | "raiseWork"
  | "lowerWork"
  | "raiseLoss"
  | "lowerLoss"
  | "lead"
  | "leadAngle"
  | "raiseTorque"
  | "lowerTorque"
  | "efficiency"
  | "kineticEnergy"
  | "drivingWork"
  | "energy"
  | "meanForce"
  | "stoppingLength"
  | "compressingWork"
  | "storedEnergy"
  | "returnedEnergy"
  | "collarDiameter"
  | "collarFriction"
  | "compression"
  | "current"
  | "electricalPower"
  | "flankAngle"
  | "force"
  | "frictionForce"
  | "gearHeat"
  | "inputSpeed"
  | "lossShare"
  | "mechanicalPower"
  | "motorFrictionHeat"
  | "screwEfficiency"
  | "speed"
  | "terminalVoltage"
  | "torque"
  | "travel"
  | "windingHeat"
/** Inputs and answers in SI: each balance takes what its own solver has. */
type Values = Readonly<Record<Name, number>> & { readonly threadFriction: number | null }
/** One balance: what goes in, what comes out, what is lost, and whether the load drives. */
interface Balance {
  readonly put: number
  readonly got: number
  readonly losses: readonly number[]
  readonly backward: boolean
  /** Work that passes, where it cancels from what is put in. */
  readonly carried?: number
  /** The same work told twice: each pair must be equal. */
  readonly same?: readonly (readonly [number, number])[]
}
interface Element {
  /** What an input is made to have before it is tried; `turn` is the number of the run. */
  readonly given?: (input: Readonly<Record<string, unknown>>, turn: number) => Record<string, unknown>
  readonly balances: (si: Values, out: Values) => readonly Balance[]
}

/** Every other run the load drives, so that both directions are met. */
const turned = (key: string) => (input: Readonly<Record<string, unknown>>, turn: number) => ({
  [key]: (turn % 2 === 0 ? 1 : -1) * Math.abs(input[key] as number),
})
const running = (input: Readonly<Record<string, unknown>>, turn: number) => ({
  ...turned("torque")(input, turn),
  inputSpeed: (input.inputSpeed as number | undefined) || 12,
})
/** A shaft in and a shaft out, at given speeds. */
const shafts: Element = {
  given: running,
  balances: ({ torque, inputSpeed }, { inputPower, outputPower, heat, inputTorque, outputSpeed }) => [
    {
      put: inputPower,
      got: outputPower,
      losses: [heat],
      backward: torque < 0,
      same: [
        [inputPower, inputTorque * inputSpeed],
        [outputPower, torque * outputSpeed],
      ],
    },
  ],
}

const elements: Readonly<Record<string, Element>> = {
  "drive.beltDrive": shafts,
  "drive.chainDrive": shafts,
  "drive.gearTrain": shafts,
  "drive.gearmotor": {
    given: turned("torque"),
    balances: ({ torque, terminalVoltage }, out) => {
      const { electricalPower, mechanicalPower, windingHeat, motorFrictionHeat, gearHeat, speed, current } = out
      return [
        {
          put: electricalPower,
          got: mechanicalPower,
          losses: [windingHeat, motorFrictionHeat, gearHeat],
          backward: torque < 0,
          same: [
            [electricalPower, terminalVoltage * current],
            [mechanicalPower, torque * speed],
          ],
        },
      ]
    },
  },
  "drive.dcMotor": {
    // a motor alone is never driven by its load here: gearmotor is
    balances: ({ torque, terminalVoltage }, { electricalPower, mechanicalPower, windingHeat, frictionHeat, speed, current }) => [
      {
        put: electricalPower,
        got: mechanicalPower,
        losses: [windingHeat, frictionHeat],
        backward: false,
        same: [
          [electricalPower, terminalVoltage * current],
          [mechanicalPower, torque * speed],
        ],
      },
    ],
  },
  "drive.linearActuator": {
    given: turned("force"),
    balances: ({ force, terminalVoltage }, { electricalPower, mechanicalPower, windingHeat, frictionHeat, speed, current }) => [
      {
        put: electricalPower,
        got: mechanicalPower,
        losses: [windingHeat, frictionHeat],
        backward: force < 0,
        same: [
          [electricalPower, terminalVoltage * current],
          [mechanicalPower, force * speed],
        ],
      },
    ],
  },
  "drive.cable": {
    balances: ({ force, travel }, { workIn, workOut, frictionWork, returnedWork, pullingForce, payingOutForce }) => [
      {
        put: workIn,
        got: workOut,
        losses: [frictionWork],
        backward: false,
        same: [
          [workIn, pullingForce * travel],
          [workOut, force * travel],
        ],
      },
      // paying out, the far end drives
      {
        put: force * travel,
        got: returnedWork,
        losses: [workOut - returnedWork],
        backward: true,
        same: [[returnedWork, payingOutForce * travel]],
      },
    ],
  },
  "drive.winch": {
    balances: (_, { loadWork, raiseWork, lowerWork, raiseLoss, lowerLoss }) => [
      { put: raiseWork, got: loadWork, losses: [raiseLoss], backward: false },
      // paying out, the load and the drum's own drive put in what is lost
      { put: loadWork + lowerWork, got: 0, losses: [lowerLoss], backward: true, carried: loadWork },
    ],
  },
  "drive.powerScrew": {
    balances: (si, { lead, leadAngle, raiseTorque, lowerTorque, efficiency }) => {
      const { force, flankAngle, threadFriction, screwEfficiency, collarFriction, collarDiameter } = si
      const lifted = force * lead
      const collar = Math.PI * collarFriction * force * collarDiameter
      // the flank's normal force rubs along the thread; a lifting efficiency loses the same both ways
      const rubs = (threadFriction ?? 0) / Math.cos(flankAngle / 2)
      const slides = lead / Math.sin(leadAngle)
      const thread = (sense: number) =>
        threadFriction === null
          ? lifted / screwEfficiency - lifted
          : (rubs * force * slides) / (Math.cos(leadAngle) - sense * rubs * Math.sin(leadAngle))
      return [
        {
          put: 2 * Math.PI * raiseTorque,
          got: lifted,
          losses: [thread(1), collar],
          backward: false,
          same: [[efficiency * 2 * Math.PI * raiseTorque, lifted]],
        },
        { put: lifted + 2 * Math.PI * lowerTorque, got: 0, losses: [thread(-1), collar], backward: true, carried: lifted },
      ]
    },
  },
  "drive.endStop": {
    balances: (_, { kineticEnergy, drivingWork, energy, meanForce, stoppingLength }) => [
      { put: kineticEnergy + drivingWork, got: energy, losses: [], backward: true, same: [[energy, meanForce * stoppingLength]] },
    ],
  },
  "linkage.gasSpring": {
    balances: ({ frictionForce, compression }, { compressingWork, storedEnergy, returnedWork, frictionWork }) => [
      { put: compressingWork, got: storedEnergy, losses: [frictionForce * compression], backward: false },
      { put: storedEnergy, got: returnedWork, losses: [frictionWork - frictionForce * compression], backward: true },
    ],
  },
  "linkage.bungee": {
    given: (input) => ({ lossShare: (input.lossShare as number | undefined) ?? 0.2 }),
    balances: ({ lossShare }, { storedEnergy, returnedEnergy }) => [
      { put: storedEnergy, got: returnedEnergy, losses: [storedEnergy * lossShare], backward: true },
    ],
  },
}
/** Elements and solvers of the drive that hand no work on, or nothing of it that they tell. */
const without: Readonly<Record<string, string>> = {
  "drive.hobbyServo": "its datasheet tells no current under load that a balance could be struck with",
  "drive.motionProfile": "it asks a torque of a drive and loses nothing itself",
  "drive.dutyCycle": "it adds up heat of a motor over time",
}

it("goes over every solver of the drive", () => {
  const drive = solvers.map(({ id }) => id).filter((id) => id.startsWith("drive."))
  expect(drive.filter((id) => !(id in elements) && !(id in without))).toEqual([])
})

/** Directions in which an element is met: a stop, a cord and a motor alone know one. */
const ways = (id: string) => (["drive.endStop", "linkage.bungee"].includes(id) ? [1] : id === "drive.dcMotor" ? [0] : [0, 1])

describe.each(Object.entries(elements))("energy: %s", (id, { given, balances }) => {
  const solver = solvers.find((s) => s.id === id)?.solver as AnySolver
  it("puts in what comes out and is lost, with the load against it and driving", () => {
    const met = [0, 0]
    let turn = 0
    fc.assert(
      fc.property(inputs(solver.input as AnyFields, solver.read(solver.example) as Record<string, unknown>, solver.either), (drawn) => {
        const input = { ...drawn, ...given?.(drawn, turn++) }
        const outcome = solver.attempt(input)
        if (!outcome.ok) return
        // two points of a datasheet may disagree by their rounding, by which a motor seems to gain: the answer says so itself
        const rounded = outcome.value.cautions.some((c) => c.code === "datasheet-rounding")
        for (const { put, got, losses, backward, carried = 0, same = [] } of balances(
          solver.read(input) as Values,
          outcome.value as unknown as Values,
        )) {
          const size = Math.max(1e-280, carried, Math.abs(put), Math.abs(got), ...losses.map(Math.abs))
          const lost = losses.reduce((a, b) => a + b, 0)
          expect(Math.abs(put - got - lost), `${put} in, ${got} out, ${lost} lost`).toBeLessThanOrEqual(1e-9 * size)
          if (!rounded) for (const loss of losses) expect(loss, "a loss").toBeGreaterThanOrEqual(-1e-9 * size)
          for (const [a, b] of same) expect(Math.abs(a - b), `${a} and ${b}`).toBeLessThanOrEqual(1e-9 * size)
          met[Number(backward)] = (met[Number(backward)] as number) + 1
        }
      }),
      { seed: 13, numRuns: 200, endOnFailure: true },
    )
    for (const way of ways(id)) expect(met[way], `${id}, ${way === 0 ? "load against it" : "load driving"}`).toBeGreaterThan(30)
  })
})
