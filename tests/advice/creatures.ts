// Three creatures as documents, and each as the plain numbers that the independent model of tests/advice/synthetic.ts moves.
import { openCircuitVoltage } from "../../src/pack/index.js"
import type { Rig } from "../../src/rig/index.js"
import { exampleRig } from "../../src/rig/whole/example.js"

/** A build, in plain numbers. Names say what they are; everything a fault or a stray part can change. */
export interface Plant {
  // supply
  cellVolts: number
  series: number
  cellOhms: number
  celsius: number
  runOhms: number
  /** 0: no converter. */
  setVolts: number
  efficiency: number
  bankVolts: number
  bankLimit: number
  ownAmps: number
  loadAmps: number
  /** Unlisted: a wet plug across the drive's terminals, and a diode in the line. */
  leakOhms: number
  diodeVolts: number
  // drive, each of `drives`
  drives: number
  emf: number
  push: number
  winding: number
  frictionAmps: number
  idleAmps: number
  /** What a helping load asks of a screw that locks. */
  unlocking: number
  // what transmits
  drumRadius: number
  drumShare: number
  slack: number
  // what moves: one side's arm
  lever: number
  masses: readonly { readonly mass: number; readonly radius: number; readonly angle: number }[]
  massFactor: number
  hingeMoment: number
  tipFriction: number
  armLength: number
  /** Unlisted: friction that grows along the way, an elastic cloth, a bent arm. */
  growingFriction: number
  cloth: number
  bend: number
  blockedAt: number
}

/** How a creature is put together. */
export interface Creature {
  readonly rig: Rig
  readonly motion: string
  readonly plant: Plant
  readonly kind: "rod" | "winch" | "servo"
  /** Angles of the arm at both ends, and where its rod or line is fixed. */
  readonly from: number
  readonly to: number
  readonly fixed: readonly [number, number]
  readonly hinge: readonly [number, number]
  readonly pinAngle: number
  /** Uncertainty of its time, s. */
  readonly clock: number
  readonly step: number
  readonly source: string
  readonly bus: string
}

const copper = 1.7241e-8
/** Two-way resistance of copper of a gauge, with contacts. */
const runOf = (metres: number, awg: number, contacts: number, extra: number) => {
  const d = 0.127e-3 * 92 ** ((36 - awg) / 39)
  return (2 * metres * copper * (1 + 0.00393 * 5)) / ((Math.PI * d * d) / 4) + contacts * 0.005 + extra
}
/** Line through two points of a datasheet: volts, no-load speed and current, speed and current under a load. */
function motorOf(volts: number, v0: number, i0: number, load: number, v1: number, i1: number) {
  const winding = (volts * (1 - v1 / v0)) / (i1 - (v1 / v0) * i0)
  const emf = (volts - i0 * winding) / v0
  const push = load / (i1 - i0)
  return { winding, emf, push, frictionAmps: i0, unlocking: Math.max(0, 1 - (2 * push) / emf) }
}
const still = { leakOhms: 0, diodeVolts: 0, slack: 0, massFactor: 1, tipFriction: 0, growingFriction: 0, cloth: 0, bend: 0, blockedAt: 1 }
const nmc = openCircuitVoltage("nmc", 0.8)
export const rad = Math.PI / 180

const wings: Creature = {
  rig: exampleRig,
  motion: "wings",
  kind: "rod",
  // the angle at which both pivots are as far apart as the rod is long, retracted and extended
  from: angleAt([0, -0.19], [0.06, 0], 0.072, -25 * rad, 0.155),
  to: angleAt([0, -0.19], [0.06, 0], 0.072, -25 * rad, 0.255),
  fixed: [0, -0.19],
  hinge: [0.06, 0],
  pinAngle: -25 * rad,
  clock: 0.15,
  step: 0.01,
  source: "pack",
  bus: "actuators",
  plant: {
    ...still,
    cellVolts: nmc,
    series: 3,
    cellOhms: 0.045,
    celsius: 25,
    runOhms: runOf(1.1, 20, 6, 0.02),
    setVolts: 0,
    efficiency: 1,
    bankVolts: 0,
    bankLimit: 0,
    ownAmps: 0,
    loadAmps: 0,
    drives: 2,
    ...motorOf(12, 0.0116, 0.35, 75, 0.0095, 0.8),
    idleAmps: 0,
    drumRadius: 0,
    drumShare: 1,
    lever: 0.072,
    masses: [
      { mass: 0.26, radius: 0.45, angle: 0 },
      { mass: 0.24, radius: 0.56, angle: -6 * rad },
      { mass: 0.06, radius: 0.85, angle: 0 },
    ],
    hingeMoment: 0.15,
    armLength: 0.9,
  },
}

/** Angle of an arm whose moving pivot is a length from the fixed one, by halving; between its dead points. */
export function angleAt(
  fixed: readonly [number, number],
  hinge: readonly [number, number],
  radius: number,
  pin: number,
  length: number,
): number {
  const apart = (angle: number) =>
    Math.hypot(hinge[0] + radius * Math.cos(angle + pin) - fixed[0], hinge[1] + radius * Math.sin(angle + pin) - fixed[1])
  const line = Math.atan2(hinge[1] - fixed[1], hinge[0] - fixed[0])
  // shortest where the pivot points back at the fixed one, longest where it points away
  let [low, high] = [line - Math.PI - pin, line - pin]
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2
    if (apart(mid) < length) low = mid
    else high = mid
  }
  return low
}

export const winchFixed = [0, 0.3] as const
export const winchStart = -60 * rad
export const pinFrom = (angle: number) => Math.hypot(0.2 * Math.cos(angle) - winchFixed[0], 0.2 * Math.sin(angle) - winchFixed[1])
export const winchTurn = 280 * rad
const winchRadius = 0.0205

const heron: Creature = {
  motion: "neck",
  kind: "winch",
  from: winchStart,
  to: lineAngle(pinFrom(winchStart) - winchTurn * winchRadius),
  fixed: winchFixed,
  hinge: [0, 0],
  pinAngle: 0,
  clock: 0.06,
  step: 0.004,
  source: "bank",
  bus: "motor line",
  rig: {
    version: 2,
    name: "Marsh crane, a neck on a winch",
    note: "Invented rig, parts and figures of a small street-theatre troupe's night parade.",
    motions: [
      {
        name: "neck",
        bus: "motor line",
        drive: {
          type: "gearmotor",
          travel: "280 deg",
          ratedVoltage: "12 V",
          noLoadSpeed: "12 rpm",
          noLoadCurrent: "0.15 A",
          loadTorque: "1.5 N m",
          loadSpeed: "9 rpm",
          loadCurrent: "0.65 A",
          holdingTorque: "3 N m",
        },
        transmission: [{ type: "drum", drumDiameter: "40 mm", lineDiameter: "1 mm" }],
        mechanisms: [
          {
            name: "neck",
            type: "hinge",
            reversed: true,
            assembly: "clockwise",
            length: "600 mm",
            fixedPivot: { x: 0, y: "300 mm" },
            movingPivot: { radius: "200 mm", angle: 0 },
            startLength: pinFrom(winchStart),
            hingeFriction: "0.1 N m",
            masses: [
              { name: "neck", mass: "300 g", radius: "280 mm" },
              { name: "head", mass: "250 g", radius: "560 mm" },
            ],
          },
        ],
      },
    ],
    power: {
      sources: [{ type: "bank", name: "bank", voltage: "5 V", currentLimit: "3 A", energy: "30 Wh" }],
      buses: [
        {
          name: "motor line",
          from: "bank",
          run: { length: "0.6 m", awg: 20, contacts: 2 },
          converter: {
            outputVoltage: "12 V",
            efficiency: [{ outputCurrent: "0.5 A", efficiency: "88 %" }],
            quiescentCurrent: "20 mA",
            minInputVoltage: "2.7 V",
            maxInputVoltage: "20 V",
          },
        },
      ],
    },
  },
  plant: {
    ...still,
    cellVolts: 0,
    series: 0,
    cellOhms: 0.05,
    celsius: 25,
    runOhms: runOf(0.6, 20, 2, 0),
    setVolts: 12,
    efficiency: 0.88,
    bankVolts: 5,
    bankLimit: 3,
    ownAmps: 0.02,
    loadAmps: 0,
    drives: 1,
    ...motorOf(12, (12 * Math.PI) / 30, 0.15, 1.5, (9 * Math.PI) / 30, 0.65),
    idleAmps: 0,
    drumRadius: winchRadius,
    drumShare: 0.95,
    lever: 0.2,
    masses: [
      { mass: 0.3, radius: 0.28, angle: 0 },
      { mass: 0.25, radius: 0.56, angle: 0 },
    ],
    hingeMoment: 0.1,
    armLength: 0.6,
  },
}

function lineAngle(length: number): number {
  let [low, high] = [winchStart, Math.PI / 2]
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2
    if (pinFrom(mid) > length) low = mid
    else high = mid
  }
  return low
}

const servoLine = (volts: number, torque: number, seconds: number, stall: number, idle: number) => {
  const winding = volts / (stall - idle)
  return { winding, push: torque / (stall - idle), emf: (volts * seconds) / (Math.PI / 3), frictionAmps: 0, unlocking: 0 }
}

const jaw: Creature = {
  motion: "jaw",
  kind: "servo",
  from: -70 * rad,
  to: 50 * rad,
  fixed: [0, 0],
  hinge: [0, 0],
  pinAngle: 0,
  clock: 0.02,
  step: 0.001,
  source: "pack",
  bus: "jaw line",
  rig: {
    version: 2,
    name: "Pike of lantern paper, a jaw on a servo",
    note: "Invented rig, parts and figures of a small street-theatre troupe's night parade.",
    motions: [
      {
        name: "jaw",
        bus: "jaw line",
        drive: {
          type: "hobby-servo",
          fromAngle: "-60 deg",
          toAngle: "60 deg",
          firstVoltage: "6 V",
          firstStallTorque: "2.4 N m",
          firstTime: "0.3 s",
          stallCurrent: "2.6 A",
          idleCurrent: "10 mA",
          holdingTorque: "1 N m",
        },
        mechanisms: [
          {
            name: "lower jaw",
            type: "turned-arm",
            startAngle: "-70 deg",
            length: "350 mm",
            hingeFriction: "0.05 N m",
            masses: [
              { name: "jaw", mass: "220 g", radius: "180 mm" },
              { name: "teeth", mass: "80 g", radius: "320 mm" },
            ],
          },
        ],
      },
    ],
    power: {
      sources: [
        { type: "cells", name: "pack", chemistry: "nmc", series: 2, parallel: 1, cellCapacity: "2.5 Ah", cellResistance: "60 mohm" },
      ],
      buses: [
        {
          name: "jaw line",
          from: "pack",
          run: { length: "0.8 m", awg: 22, contacts: 4 },
          fuseRating: "3 A",
          converter: {
            outputVoltage: "6 V",
            outputCurrentLimit: "3 A",
            efficiency: [{ outputCurrent: "1 A", efficiency: "90 %" }],
            quiescentCurrent: "10 mA",
            minInputVoltage: "6.2 V",
            maxInputVoltage: "24 V",
          },
        },
      ],
      loads: [{ type: "controller", name: "receiver", bus: "jaw line", current: "80 mA", resetVoltage: "4 V" }],
    },
  },
  plant: {
    ...still,
    cellVolts: nmc,
    series: 2,
    cellOhms: 0.06,
    celsius: 25,
    runOhms: runOf(0.8, 22, 4, 0),
    setVolts: 6,
    efficiency: 0.9,
    bankVolts: 0,
    bankLimit: 0,
    ownAmps: 0.01,
    loadAmps: 0.08,
    drives: 1,
    ...servoLine(6, 2.4, 0.3, 2.6, 0.01),
    idleAmps: 0.01,
    drumRadius: 0,
    drumShare: 1,
    lever: 0,
    masses: [
      { mass: 0.22, radius: 0.18, angle: 0 },
      { mass: 0.08, radius: 0.32, angle: 0 },
    ],
    hingeMoment: 0.05,
    armLength: 0.35,
  },
}

/** The creatures whose builds are diagnosed. */
export const creatures = { wings, heron, jaw } as const
