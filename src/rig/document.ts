import type { Chemistry } from "../pack/index.js"
import type {
  Angle,
  Area,
  Charge,
  Current,
  Energy,
  Force,
  ForcePerLength,
  Length,
  Mass,
  Moment,
  Ratio,
  Resistance,
  Speed,
  Temperature,
  Time,
  Voltage,
} from "../quantity/index.js"
import type { RigSections } from "./sections.js"

/** A point in the plane the mechanism moves in: x away from the body's middle, y up. */
export interface RigPoint {
  /** Outward. */
  x: Length
  /** Upward. */
  y: Length
}

/** A mass on a moving arm. */
export interface ArmMass {
  /** What it is. */
  name: string
  /** Mass. */
  mass: Mass
  /** Distance from the hinge. */
  radius: Length
  /** Angle from the arm's own direction. */
  angle?: Angle
}

/** An extension spring or elastic cord between the frame and the arm, to help the actuator. */
export interface HelperSpring {
  /** Stiffness. */
  stiffness: ForcePerLength
  /** Length at which it pulls nothing. */
  freeLength: Length
  /** Where it is fixed to the frame. */
  anchor: RigPoint
  /** Distance of its arm end from the hinge. */
  radius: Length
  /** Angle of its arm end from the arm's own direction. */
  angle?: Angle
}

/** A linear actuator by its datasheet. */
export interface RigActuator {
  /** Distance between its pins when drawn in. */
  retractedLength: Length
  /** Stroke. */
  stroke: Length
  /** Rated voltage. */
  ratedVoltage: Voltage
  /** Speed without load. */
  noLoadSpeed: Speed
  /** Current without load. */
  noLoadCurrent: Current
  /** Rated force. */
  ratedForce: Force
  /** Speed at rated force. */
  ratedSpeed: Speed
  /** Current at rated force. */
  ratedCurrent: Current
  /** Force it holds without power; 0 where the screw does not lock itself. */
  holdingForce?: Force
}

/** Like arms on hinges, each moved by one linear actuator, all fed together. */
export interface HingedArms {
  /** How many like arms (a pair of wings: 2). */
  count?: number
  /** Hinge. */
  hinge: RigPoint
  /** Fixed anchor of the actuator. */
  anchor: RigPoint
  /** Distance of the moving anchor from the hinge. */
  pinRadius: Length
  /** Angle from the arm's own direction to the moving anchor. */
  pinAngle: Angle
  /** Distance by which the rod axis misses its fixed anchor. */
  axisOffset?: Length
  /** Side of the line hinge–anchor the moving anchor is on: counter-clockwise (extension raises) or clockwise. */
  assembly?: "counterClockwise" | "clockwise"
  /** Actuator position at which the arms are up. */
  raised?: "extended" | "retracted"
  /** Masses on one arm. */
  masses: readonly ArmMass[]
  /** Friction moment of the hinge, whichever way it moves. */
  hingeFriction?: Moment
  /** Lean of the frame in the plane of motion, counter-clockwise. */
  lean?: Angle
  /** Helper spring. */
  spring?: HelperSpring | null
  /** Linear actuator. */
  actuator: RigActuator
}

/** Loose cells in series and parallel. */
export interface RigPack {
  /** Chemistry. */
  chemistry: Chemistry
  /** Cells in series. */
  series: number
  /** Strings in parallel. */
  parallel: number
  /** Rated charge of one cell. */
  cellCapacity: Charge
  /** Direct-current resistance of one cell over minutes, not the 1 kHz figure. */
  cellResistance: Resistance
  /** Charge left at the moment of the move. */
  stateOfCharge?: Ratio
  /** Holders, welds and protection circuit together. */
  extraResistance?: Resistance
  /** Temperature of the cells: cold ones sag more. */
  temperature?: Temperature
  /** Greatest current of one cell. */
  cellCurrent?: Current | null
}

/** A USB battery bank: cells with a regulator that this document need not know. */
export interface RigBank {
  /** Voltage at its socket. */
  voltage?: Voltage
  /** Greatest current it gives. */
  currentLimit: Current
  /** Resistance of socket, plug and regulator. */
  resistance?: Resistance
  /** Energy it gives at its socket on one charge. */
  energy: Energy
}

/** One point of an efficiency curve. */
export interface EfficiencyPoint {
  /** Output current. */
  load: Current
  /** Efficiency. */
  efficiency: Ratio
}

/** A voltage converter between source and actuators. */
export interface RigConverter {
  /** Output voltage. */
  outputVoltage: Voltage
  /** Input current limit. */
  inputCurrentLimit?: Current | null
  /** Output current limit. */
  outputCurrentLimit?: Current | null
  /** Efficiency over output current. */
  efficiency: readonly EfficiencyPoint[]
  /** Own current without load. */
  quiescentCurrent?: Current
  /** Least input voltage. */
  minimumInput: Voltage
  /** Greatest input voltage. */
  maximumInput: Voltage
}

/** A run of wire out and back, with its contacts. */
export interface RigRun {
  /** Length one way. */
  length: Length
  /** Wire gauge (AWG). */
  awg?: number | null
  /** Cross-section. */
  area?: Area | null
  /** Contacts in the path. */
  contacts?: number
  /** Resistance of one contact. */
  contactResistance?: Resistance
  /** Wire temperature. */
  temperature?: Temperature
}

/** Wires, switch and fuse. */
export interface RigWiring {
  /** From the cells to the converter, or to the actuators where there is no converter. */
  source: RigRun
  /** From the converter to the actuators. */
  load?: RigRun | null
  /** Switch resistance. */
  switchResistance?: Resistance
  /** Fuse resistance, hot. */
  fuseResistance?: Resistance
  /** Fuse rating. */
  fuseRating?: Current | null
  /** Direct current the switch is rated for. */
  switchRating?: Current | null
  /** Share of the source voltage that wires and contacts may take. */
  dropLimit?: Ratio
  /** Temperature the insulation is rated for. */
  insulation?: Temperature
}

/** What the maker wants of it. */
export interface RigBrief {
  /** Time on stage in which the arms go up and come down again. */
  stageTime?: Time | null
  /** Time the raise alone may take. */
  raiseTime?: Time | null
  /** Swing wanted. */
  swing?: Angle | null
}

/** A whole wearable: one JSON document that every check reads. */
export interface RigDocument extends RigSections {
  /** Version of the document's form: 1. */
  version: number
  /** Name of the rig. */
  name: string
  /** Note. */
  note?: string
  /** Arms on hinges. */
  hinged?: HingedArms | null
  /** Cell pack. */
  pack?: RigPack | null
  /** USB battery bank. */
  bank?: RigBank | null
  /** Converter. */
  converter?: RigConverter | null
  /** Wires, switch and fuse. */
  wiring?: RigWiring | null
  /** What is wanted. */
  brief?: RigBrief | null
}
