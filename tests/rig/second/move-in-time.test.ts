import { describe, expect, it } from "vitest"
import { exampleRig } from "../../../src/rig/whole/example.js"
import { NoSolutionError } from "../../../src/solver/index.js"
import { randomNumbers } from "../mechanisms/draw.js"
import {
  behind,
  behindStep,
  type DrivePart,
  type Hung,
  type MotionPart,
  mostAmps,
  type Part,
  packOf,
  ratedOf,
  runOhms,
  type Stepped,
  step,
  type Volts,
  vertical,
} from "./bodies.js"
import { move } from "./kit.js"

/** What `move` says of one way: its seconds, or what halts it and where. */
function ways(rig: object): { out: Stepped | null; back: Stepped | null } {
  try {
    const found = move(rig)
    return { out: { duration: found.outDuration }, back: { duration: found.backDuration } }
  } catch (error) {
    if (!(error instanceof NoSolutionError)) throw error
    const stop = { halt: error.noSolution, travel: error.at.travel as number } as Stepped
    return error.values.way === "out" ? { out: stop, back: null } : { out: null, back: stop }
  }
}

/** Holds one way of `move` to the stepped one. */
function agrees(got: Stepped | null, wanted: Stepped, span: number, what: string): void {
  if (got === null) return
  if ("duration" in wanted) {
    expect(got, what).toHaveProperty("duration")
    const found = (got as { duration: number }).duration
    expect(Math.abs(found / wanted.duration - 1), `${what}: ${found} s against ${wanted.duration} s`).toBeLessThan(1e-5)
  } else {
    expect(got, what).toMatchObject({ halt: wanted.halt })
    expect(Math.abs((got as { travel: number }).travel - wanted.travel), `${what}: place`).toBeLessThan(1e-6 * span)
  }
}

/** Both ways, whichever `move` answers; true where both have a time. */
function holds(rig: object, motion: MotionPart, up: readonly [number, number, number], volts: Volts, what: string): boolean {
  const { out, back } = ways(rig)
  const [first, second] = [step(motion, 1, up, volts), step(motion, -1, up, volts)]
  const span = motion.drive.type === "shaft-motor" ? motion.drive.turn : motion.drive.stroke
  // the way out is judged first: only where it passes is the way back told
  if ("halt" in first) {
    expect(out, `${what}: halts on its way out by the second route, ${first.halt}`).not.toBeNull()
    agrees(out, first, span, `${what}, out`)
    return false
  }
  if (out !== null) agrees(out, first, span, `${what}, out`)
  agrees(back, second, span, `${what}, back`)
  return "duration" in second
}

const none: Hung = { amps: 0, siemens: 0, watts: 0 }

/** The moth's actuator and wing in SI. */
const actuator: DrivePart = {
  type: "linear-actuator",
  count: 2,
  retractedLength: 0.155,
  stroke: 0.1,
  ratedVoltage: 12,
  noLoadSpeed: 0.0116,
  noLoadCurrent: 0.35,
  ratedForce: 75,
  ratedSpeed: 0.0095,
  ratedCurrent: 0.8,
}
const wing: Part = {
  name: "wing",
  type: "hinge",
  count: 2,
  mirrored: true,
  length: 0.9,
  hinge: { x: 0.06, y: 0 },
  fixedPivot: { x: 0, y: -0.19 },
  movingPivot: { radius: 0.072, angle: (-25 * Math.PI) / 180 },
  masses: [
    { name: "spar", mass: 0.26, radius: 0.45 },
    { name: "ribs and skin", mass: 0.24, radius: 0.56, angle: (-6 * Math.PI) / 180 },
    { name: "lanterns", mass: 0.06, radius: 0.85 },
  ],
  hingeFriction: 0.15,
}

describe("the example and demo rigs, stepped in time", () => {
  const wings: MotionPart = { name: "wings", drive: actuator, mechanisms: [wing] }
  it("the moth of the example, on its pack", () => {
    const pack = packOf({ chemistry: "nmc", series: 3, parallel: 1, cellResistance: 0.045 })
    const ohms = pack.ohms + runOhms({ length: 1.1, awg: 20, contacts: 6 }) + 0.02
    expect(holds(exampleRig, wings, [0, 0, 1], (amps) => behind(pack.open, ohms, amps, none), "example")).toBe(true)
  })
  it("the moth on two strings of three cells, and on a bank with a step-up", () => {
    const motion = { ...wings, bus: "actuators" }
    const run = { length: 1.1, awg: 20, contacts: 6, contactResistance: 0.008 }
    const cells = { chemistry: "nmc", series: 3, parallel: 2, cellResistance: 0.06, stateOfCharge: 0.4, extraResistance: 0.04 } as const
    const pack = packOf(cells)
    const onCells = {
      version: 2,
      name: "Lantern moth, forewings on two strings of three cells",
      motions: [motion],
      power: {
        sources: [{ type: "cells", name: "pack", cellCapacity: 2.6 * 3600, ...cells }],
        buses: [{ name: "actuators", from: "pack", run, switchResistance: 0.02, fuseResistance: 0.025, fuseRating: 4, switchRating: 5 }],
      },
    }
    const ohms = pack.ohms + runOhms(run) + 0.045
    expect(holds(onCells, wings, [0, 0, 1], (amps) => behind(pack.open, ohms, amps, none), "cells")).toBe(true)

    const efficiency = [
      [0.1, 0.8],
      [0.5, 0.9],
      [1.5, 0.87],
      [3, 0.82],
    ].map(([outputCurrent, efficiency]) => ({ outputCurrent: outputCurrent as number, efficiency: efficiency as number }))
    const lead = { length: 0.3, awg: 22, contacts: 2, contactResistance: 0.015 }
    const onBank = {
      ...onCells,
      power: {
        sources: [{ type: "bank", name: "bank", voltage: 5, currentLimit: 2.4, resistance: 0.06, energy: 35 * 3600 }],
        buses: [
          {
            name: "step-up",
            from: "bank",
            run: lead,
            switchResistance: 0.02,
            fuseResistance: 0.04,
            fuseRating: 4,
            converter: {
              outputVoltage: 12,
              inputCurrentLimit: 4,
              efficiency,
              quiescentCurrent: 0.015,
              minInputVoltage: 3.5,
              maxInputVoltage: 11,
            },
          },
          { name: "actuators", from: "step-up", run },
        ],
      },
    }
    const spec = { output: 12, efficiency, idle: 0.015, least: 3.5, most: 2.4 }
    const volts: Volts = (amps) => behindStep(5, 0.06 + runOhms(lead) + 0.06, spec, runOhms(run), amps, none)
    expect(holds(onBank, wings, [0, 0, 1], volts, "bank")).toBe(true)
  })
})

/** A random source, what hangs on it, and the voltage it leaves: with or without a converter, other motions, lights, heaters. */
function drawnSupply(random: () => number, rated: number, others: number, amps: number): { power: object; volts: Volts } {
  const between = (a: number, b: number) => a + (b - a) * random()
  const [inside, lead, far] = [between(0.02, 0.15), between(0.02, 0.2), between(0.02, 0.2)]
  const step = random() < 0.5
  const open = rated * (step ? between(0.8, 2) : between(0.95, 1.15))
  const hung: Hung = {
    amps: random() < 0.5 ? between(0.05, 0.4) : 0,
    siemens: random() < 0.4 ? 1 / between(20, 80) : 0,
    watts: random() < 0.4 ? between(0.3, 3) : 0,
  }
  const loads: object[] = []
  if (hung.amps) loads.push({ type: "lights", name: "lanterns", bus: "stage", current: hung.amps })
  if (hung.siemens) loads.push({ type: "resistive", name: "warmer", bus: "stage", resistance: 1 / hung.siemens })
  if (hung.watts) loads.push({ type: "constant-power", name: "sound", bus: "stage", power: hung.watts })
  const source = { type: "mains-supply", name: "supply", voltage: open, currentLimit: 150, resistance: inside }
  const side = { name: "side", from: "supply", switchResistance: 0.1 }
  if (!step)
    return {
      power: { sources: [source], buses: [{ name: "stage", from: "supply", switchResistance: lead }, side], loads },
      volts: (i) => behind(open - inside * others, inside + lead, i, hung),
    }
  const efficiency = [
    { outputCurrent: 0.2, efficiency: between(0.75, 0.85) },
    { outputCurrent: between(0.5, 2), efficiency: between(0.88, 0.95) },
    { outputCurrent: 6, efficiency: between(0.8, 0.88) },
  ]
  const spec = {
    output: rated,
    efficiency,
    idle: between(0, 0.03),
    least: rated * 0.4,
    most: random() < 0.3 && hung.watts === 0 ? Math.max(0.05, (between(0.8, 1.3) * rated * (amps + hung.amps)) / 0.85 / open) : null,
  }
  const converter = {
    outputVoltage: rated,
    inputCurrentLimit: spec.most,
    efficiency,
    quiescentCurrent: spec.idle,
    minInputVoltage: spec.least,
    maxInputVoltage: 60,
  }
  return {
    power: {
      sources: [source],
      buses: [
        { name: "box", from: "supply", switchResistance: lead, converter },
        { name: "stage", from: "box", fuseResistance: far },
        side,
      ],
      loads,
    },
    volts: (i) => behindStep(open - inside * others, inside + lead, spec, far, i, hung),
  }
}

const between = (random: () => number, a: number, b: number) => a + (b - a) * random()

function drawnMasses(random: () => number, heavy: number) {
  return Array.from({ length: 1 + Math.floor(random() * 3) }, (_, i) => ({
    name: `lantern ${i}`,
    mass: heavy * between(random, 0.05, 0.4),
    radius: between(random, 0.1, 0.8),
    angle: between(random, -0.3, 0.3),
  }))
}

const drawnMount = (random: () => number) => ({ heading: between(random, -3, 3), tilt: random() < 0.5 ? 0 : between(random, -0.6, 0.6) })

/** Actuators that lift hinged arms, some helped by cords. */
function onActuators(random: () => number): MotionPart {
  const drive = { ...actuator, count: 1 + Math.floor(random() * 3), backwardEfficiency: random() < 0.5 ? 0 : between(random, 0.05, 0.4) }
  const mechanisms = Array.from({ length: 1 + Math.floor(random() * 2) }, (_, i): Part => {
    const mirrored = random() < 0.6
    return {
      ...wing,
      name: `wing ${i}`,
      mirrored,
      count: mirrored ? 2 : 1 + Math.floor(random() * 2),
      mount: drawnMount(random),
      masses: drawnMasses(random, 0.8),
      axisOffset: random() < 0.5 ? 0 : between(random, 0, 0.01),
      fixedPivot: { x: between(random, -0.02, 0.02), y: between(random, -0.2, -0.18) },
      movingPivot: { radius: between(random, 0.068, 0.08), angle: between(random, -0.6, -0.2) },
      hingeFriction: between(random, 0, 0.3),
      springs:
        random() < 0.5
          ? [{ stiffness: between(random, 20, 250), freeLength: between(random, 0.1, 0.25), fixedPivot: { x: 0, y: 0.35 }, radius: 0.25 }]
          : [],
    }
  })
  return { name: "wings", bus: "stage", drive, mechanisms }
}

const motor = (random: () => number): DrivePart => {
  const helped = random()
  const torqueConstant = between(random, 0.6, 1.5)
  return {
    type: "shaft-motor",
    count: 1 + Math.floor(random() * 2),
    turn: between(random, 0.6, 1.5),
    torqueConstant,
    backEmfConstant: torqueConstant * between(random, 1.1, 2),
    windingResistance: between(random, 0.4, 1.5),
    frictionCurrent: between(random, 0.05, 0.4),
    backwardEfficiency: helped < 0.4 ? between(random, 0.1, 0.7) : 0,
    unlocking: helped > 0.7 ? between(random, 0.05, 0.3) : 0,
  }
}

/** A shaft that turns arms, geared each in its own way and turned round by some. */
function onShaft(random: () => number): MotionPart {
  const mechanisms = Array.from(
    { length: 1 + Math.floor(random() * 3) },
    (_, i): Part => ({
      name: `feather ${i}`,
      type: "turned-arm",
      count: 1 + Math.floor(random() * 3),
      reversed: random() < 0.3,
      length: 0.8,
      startAngle: between(random, -1.5, 1),
      mount: drawnMount(random),
      masses: drawnMasses(random, 0.5),
      hingeFriction: between(random, 0, 0.1),
      springs: random() < 0.4 ? [{ stiffness: between(random, 5, 60), freeLength: 0.1, fixedPivot: { x: 0.1, y: 0.3 }, radius: 0.2 }] : [],
      transmission:
        random() < 0.6
          ? [{ type: "plain-gear", reduction: between(random, 0.7, 3), turnsRound: random() < 0.5, efficiency: between(random, 0.7, 1) }]
          : [],
    }),
  )
  return {
    name: "fan",
    bus: "stage",
    drive: motor(random),
    transmission:
      random() < 0.5 ? [{ type: "plain-gear", reduction: between(random, 1, 3), turnsRound: random() < 0.5, efficiency: 0.9 }] : [],
    mechanisms,
  }
}

/** A winch whose lines pull feathers up by their hinges; weight alone takes them back, or a cord that is stronger helps up. */
function onWinch(random: () => number): MotionPart {
  const mechanisms = Array.from({ length: 2 + Math.floor(random() * 2) }, (_, i): Part => {
    const fixedPivot = { x: 0, y: between(random, 0.3, 0.45) }
    const radius = between(random, 0.2, 0.3)
    const startAngle = between(random, -0.9, -0.5)
    return {
      name: `feather ${i}`,
      type: "hinge",
      reversed: true,
      assembly: "clockwise",
      length: 0.8,
      startLength: Math.hypot(radius * Math.cos(startAngle), radius * Math.sin(startAngle) - fixedPivot.y),
      fixedPivot,
      movingPivot: { radius, angle: 0 },
      masses: drawnMasses(random, 0.5),
      hingeFriction: between(random, 0, 0.08),
      springs:
        random() < 0.5
          ? [{ stiffness: between(random, 2, 25), freeLength: 0.2, fixedPivot: { x: 0, y: 0.4 }, radius: between(random, 0.2, 0.4) }]
          : [],
    }
  })
  const drive = { ...motor(random), turn: between(random, 4, 7) } as DrivePart
  return { name: "winch", bus: "stage", drive, transmission: [{ type: "drum", drumDiameter: 0.04, lineDiameter: 0.001 }], mechanisms }
}

describe("drawn rigs, stepped in time", () => {
  const kinds = { actuators: onActuators, shaft: onShaft, winch: onWinch }
  for (const [kind, draw] of Object.entries(kinds))
    it(`${kind}: 17 drawn`, () => {
      const random = randomNumbers(kind.length)
      let timed = 0
      for (let n = 0; n < 17; n++) {
        const motion = draw(random)
        const lean =
          random() < 0.5
            ? { leanForward: between(random, -0.4, 0.4), leanLeft: between(random, -0.4, 0.4) }
            : { leanForward: 0, leanLeft: 0 }
        const up = vertical(lean.leanForward, lean.leanLeft)
        const beside: MotionPart[] = random() < 0.4 ? [{ ...onActuators(random), name: "tail", bus: "side" }] : []
        const others = beside.reduce((sum, m) => sum + mostAmps(m, up), 0)
        const { power, volts } = drawnSupply(random, ratedOf(motion), others, mostAmps(motion, up))
        const rig = { version: 2, name: `drawn ${kind} ${n}`, motions: [motion, ...beside], power, posture: lean }
        if (holds(rig, motion, up, volts, `${kind} ${n}`)) timed++
      }
      expect(timed, "both ways timed").toBeGreaterThan(5)
    })
})
