// Members of a library user's own: written as the rig's are, and handed to `rigWith`.
import type { Angle, Current, Length, Mass, MomentOfInertia, Ratio, Resistance } from "../../../src/quantity/index.js"
import type { Drive, DriveMember } from "../../../src/rig/drives/drive.js"
import type { Mechanism, MechanismMember } from "../../../src/rig/mechanisms/mechanism.js"
import type { Transmission, TransmissionMember } from "../../../src/rig/transmissions/transmission.js"
import { inconsistent, refuse, type SiOf } from "../../../src/solver/index.js"

/** A motor with a shaft, by its constants. */
export interface ShaftMotor {
  type: "shaft-motor"
  turn: Angle
  /** Torque for each ampere, N·m/A; its back voltage for each rad/s is the same over the gears' efficiency. */
  torqueConstant: number
  backEmfConstant: number
  windingResistance: Resistance
  frictionCurrent?: Current
  backwardEfficiency?: Ratio
  unlocking?: Ratio
  currentLimit?: Current | null
  inertia?: MomentOfInertia
}

export const shaftMotor: DriveMember<ShaftMotor> = {
  type: "shaft-motor",
  label: "motor with a shaft, by its constants",
  fields: {
    turn: { kind: "angle", symbol: "phi_w", label: "turn of its shaft", min: "1 deg", max: "36000 deg" },
    torqueConstant: { kind: "number", symbol: "k_w", label: "torque for each ampere", min: 1e-4, max: 100 },
    backEmfConstant: { kind: "number", symbol: "e_w", label: "voltage for each radian a second", min: 1e-4, max: 100 },
    windingResistance: { kind: "resistance", symbol: "R_w", label: "winding", min: 0.01, max: 1000 },
    frictionCurrent: { kind: "current", symbol: "I_w", label: "current without load", min: 0, max: 50, default: 0 },
    backwardEfficiency: { kind: "ratio", symbol: "eta_w", label: "share of a helping torque that comes back", min: 0, max: 1, default: 0 },
    unlocking: { kind: "ratio", symbol: "u_w", label: "share of a helping torque to be driven down", min: 0, max: 1, default: 0 },
    currentLimit: { kind: "current", symbol: "L_w", label: "limit of its driver", min: "1 mA", max: 100, default: null },
    inertia: { kind: "momentOfInertia", symbol: "J_w", label: "inertia at its shaft", min: 0, max: 100, default: 0 },
  },
  check: ({ backwardEfficiency, unlocking }) =>
    backwardEfficiency > 0 && unlocking > 0
      ? [inconsistent(["unlocking"], "both a share that comes back and one to be driven down", "one of them")]
      : [],
  build: (si: SiOf<ShaftMotor>): Drive => ({
    travel: "angle",
    low: 0,
    high: si.turn,
    effortConstant: si.torqueConstant,
    backEmfConstant: si.backEmfConstant,
    windingResistance: si.windingResistance,
    frictionCurrent: si.frictionCurrent,
    circuitCurrent: 0,
    lineAt: null,
    minVoltage: 0,
    inertia: si.inertia,
    currentLimit: si.currentLimit,
    backwardEfficiency: si.backwardEfficiency,
    unlocking: si.unlocking,
    holdingEffort: 0,
    ratedVoltage: 12,
    ratedEffort: null,
    control: "on-off",
    standbyCurrent: 0,
  }),
}

/** A motor that is turned down as a whole, once its fields are read. */
export interface TornMotor {
  type: "torn-motor"
  windingResistance: Resistance
}

export const tornMotor: DriveMember<TornMotor> = {
  type: "torn-motor",
  label: "motor with a torn winding",
  fields: {
    windingResistance: { kind: "resistance", symbol: "R_w", label: "winding", min: 0.01, max: 1000 },
  },
  build: ({ windingResistance }: SiOf<TornMotor>) =>
    refuse("torn-winding", "A winding of {windingResistance resistance} is torn.", windingResistance, {}, {}, { windingResistance }),
}

/** A gear pair, its output turning the other way where wanted. */
export interface PlainGear {
  type: "plain-gear"
  reduction: number
  turnsRound?: boolean
  efficiency?: Ratio
  inertia?: MomentOfInertia
}

export const plainGear: TransmissionMember<PlainGear> = {
  type: "plain-gear",
  label: "plain pair of gears",
  fields: {
    reduction: { kind: "number", symbol: "i_w", label: "turns in for one out", min: 0.01, max: 1000 },
    turnsRound: { kind: "flag", label: "turns the motion round", default: false },
    efficiency: { kind: "ratio", symbol: "eta_g", label: "efficiency", min: "10 %", max: 1, default: 1 },
    inertia: { kind: "momentOfInertia", symbol: "J_g", label: "inertia at its input", min: 0, max: 100, default: 0 },
  },
  build: (si: SiOf<PlainGear>): Transmission => {
    const ratio = (si.turnsRound ? -1 : 1) / si.reduction
    return {
      takes: "angle",
      gives: "angle",
      out: (travel) => ratio * travel,
      ratio: () => ratio,
      forward: si.efficiency,
      backward: si.efficiency,
      unlocking: 0,
      selfLocking: false,
      drag: 0,
      transmits: "both-ways",
      backlash: 0,
      compliance: 0,
      inertia: si.inertia,
      strength: null,
      kinks: [],
      low: Number.NEGATIVE_INFINITY,
      high: Number.POSITIVE_INFINITY,
    }
  },
}

/** A mass on a crank that is moved by a straight slide: passes its dead point where the crank lies along the slide. */
export interface SlideCrank {
  type: "slide-crank"
  crank: Length
  mass: Mass
  startLength: Length
}

/** Coordinate x: height of the crank's pin, which slides in a yoke; the mass hangs outward on the pin: r = (√(c² − x²), x). */
export const slideCrank: MechanismMember<SlideCrank> = {
  type: "slide-crank",
  label: "mass on a crank in a sliding yoke",
  fields: {
    crank: { kind: "length", symbol: "c_w", label: "crank", min: "1 mm", max: 2 },
    mass: { kind: "mass", symbol: "m_w", label: "mass", min: 0, max: 20 },
    startLength: { kind: "length", symbol: "x_w", label: "height of the pin at the start", min: -2, max: 2 },
  },
  check: ({ crank, startLength }) =>
    Math.abs(startLength) > crank ? [inconsistent(["startLength"], "a pin beyond the crank's circle", "no more than the crank")] : [],
  build: ({ crank, mass, startLength }: SiOf<SlideCrank>): Mechanism => {
    const out = (x: number) => Math.sqrt(crank * crank - x * x)
    return {
      travel: "length",
      start: startLength,
      low: -crank,
      high: crank,
      deadPoints: [-crank, crank],
      shows: "length",
      at(x, state) {
        const h = out(x)
        state.massX -= (mass * x) / h
        state.massY += mass
        state.inertia += (mass * crank * crank) / (h * h)
        state.inertiaSlope += (2 * mass * crank * crank * x) / h ** 4
      },
      pose(x) {
        const at = [out(x), x, 0] as const
        const rate = [-x / out(x), 1, 0] as const
        return {
          parts: [{ name: "crank", points: [[0, 0, 0], at], closed: false }],
          pins: [{ name: "pin", at }],
          tip: at,
          tipRate: rate,
          shown: x,
          mass,
          centre: at,
        }
      },
      reactions: () => [],
    }
  },
}
