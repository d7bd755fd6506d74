import type { RigDocument } from "../../rig/document/document.js"
import type { SiOf } from "../../solver/index.js"

type Si = SiOf<RigDocument>

/** A rig as built: the document, and what its source lacks of the voltage the document gives it, V. */
export interface Built {
  readonly rig: Si
  readonly shortfall: number
}

/** A single thing that can be wrong with a built rig. */
export type FaultName =
  | "tiredCells"
  | "currentLimit"
  | "converterLoss"
  | "sourceContact"
  | "loadContact"
  | "extraMass"
  | "friction"
  | "wrongPivot"
  | "lowSupply"

/** One fault: what it is, how large it usually is, and the rig it makes. */
export interface Fault {
  readonly label: string
  /** What its parameter is, with unit, for a reader. */
  readonly parameter: string
  /** Kind of the parameter, `number` where plain. */
  readonly kind: "number" | "resistance" | "moment" | "length" | "voltage" | "ratio"
  /** Typical size, in SI: larger is less plausible, as a half-normal spread. Common practice, no source. */
  readonly usual: number
  /** Minimum and maximum size tried, SI. */
  readonly range: readonly [number, number]
  /** How often it is met among slow or sagging builds, against the others. Common practice, no source. */
  readonly prior: number
  /** Whether the rig has what the fault needs. */
  applies(rig: Si): boolean
  /** The rig with the fault; 0 is no fault. */
  apply(built: Built, size: number): Built
}

/** A fault that changes the document alone. */
const inDocument =
  (change: (rig: Si, size: number) => Si) =>
  (built: Built, size: number): Built => ({ ...built, rig: change(built.rig, size) })

function withArms(rig: Si, change: (arms: NonNullable<Si["hinged"]>) => Partial<NonNullable<Si["hinged"]>>): Si {
  return rig.hinged ? { ...rig, hinged: { ...rig.hinged, ...change(rig.hinged) } } : rig
}

/** The faults known, by name; sizes are added to, or multiply, what the document says. */
export const faults: Readonly<Record<FaultName, Fault>> = {
  tiredCells: {
    label: "tired or cold cells",
    parameter: "extra cell resistance over the stated one",
    kind: "number",
    usual: 1.2,
    range: [0, 8],
    prior: 1,
    applies: (rig) => rig.pack !== null,
    apply: inDocument((rig, size) =>
      rig.pack ? { ...rig, pack: { ...rig.pack, cellResistance: rig.pack.cellResistance * (1 + size) } } : rig,
    ),
  },
  currentLimit: {
    label: "bank or converter input gives less current than stated",
    parameter: "share of the current limit that is missing",
    kind: "ratio",
    usual: 0.25,
    range: [0, 0.7],
    prior: 1.2,
    applies: (rig) => rig.bank !== null || (rig.converter !== null && rig.converter.inputCurrentLimit !== null),
    apply: inDocument((rig, size) => ({
      ...rig,
      bank: rig.bank && { ...rig.bank, currentLimit: rig.bank.currentLimit * (1 - size) },
      converter: rig.converter && {
        ...rig.converter,
        inputCurrentLimit: rig.converter.inputCurrentLimit === null ? null : rig.converter.inputCurrentLimit * (1 - size),
      },
    })),
  },
  converterLoss: {
    label: "converter loses more than stated",
    parameter: "share of the converter's efficiency that is lost",
    kind: "ratio",
    usual: 0.15,
    range: [0, 0.6],
    prior: 0.8,
    applies: (rig) => rig.converter !== null,
    apply: inDocument((rig, size) =>
      rig.converter
        ? {
            ...rig,
            converter: {
              ...rig.converter,
              efficiency: rig.converter.efficiency.map((p) => ({ ...p, efficiency: p.efficiency * (1 - size) })),
            },
          }
        : rig,
    ),
  },
  sourceContact: {
    label: "thin wire or bad contact on the source side",
    parameter: "extra resistance",
    kind: "resistance",
    usual: 0.5,
    range: [0, 5],
    prior: 1.2,
    applies: (rig) => rig.wiring !== null,
    apply: inDocument((rig, size) =>
      rig.wiring ? { ...rig, wiring: { ...rig.wiring, switchResistance: rig.wiring.switchResistance + size } } : rig,
    ),
  },
  loadContact: {
    label: "thin wire or bad contact on the actuators' side",
    parameter: "extra resistance",
    kind: "resistance",
    usual: 0.8,
    range: [0, 6],
    prior: 1,
    applies: (rig) => rig.wiring?.load != null && rig.converter !== null,
    apply: inDocument((rig, size) => {
      const load = rig.wiring?.load
      return rig.wiring && load
        ? {
            ...rig,
            wiring: { ...rig.wiring, load: { ...load, contacts: 1, contactResistance: load.contacts * load.contactResistance + size } },
          }
        : rig
    }),
  },
  extraMass: {
    label: "arms heavier than planned",
    parameter: "extra mass",
    kind: "ratio",
    usual: 0.3,
    range: [0, 2],
    prior: 1.2,
    applies: (rig) => rig.hinged !== null,
    apply: inDocument((rig, size) => withArms(rig, (arms) => ({ masses: arms.masses.map((m) => ({ ...m, mass: m.mass * (1 + size) })) }))),
  },
  friction: {
    label: "friction in the hinges",
    parameter: "extra friction moment",
    kind: "moment",
    usual: 1,
    range: [0, 12],
    prior: 1,
    applies: (rig) => rig.hinged !== null,
    apply: inDocument((rig, size) => withArms(rig, (arms) => ({ hingeFriction: arms.hingeFriction + size }))),
  },
  wrongPivot: {
    label: "moving pivot nearer the hinge than planned, or farther",
    parameter: "offset",
    kind: "length",
    usual: 0.006,
    range: [-0.03, 0.03],
    prior: 0.8,
    applies: (rig) => rig.hinged !== null,
    apply: inDocument((rig, size) =>
      withArms(rig, (arms) => ({ movingPivot: { ...arms.movingPivot, radius: arms.movingPivot.radius + size } })),
    ),
  },
  lowSupply: {
    label: "source voltage lower than planned (discharged, or a cell fewer)",
    parameter: "missing voltage",
    kind: "voltage",
    usual: 0.8,
    range: [0, 5],
    prior: 1,
    applies: (rig) => rig.pack !== null || rig.bank !== null,
    apply: (built, size) => ({ ...built, shortfall: built.shortfall + size }),
  },
}
