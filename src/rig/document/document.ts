import type { Chemistry } from "../../pack/index.js"
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
} from "../../quantity/index.js"
import type { RigSections } from "./sections.js"

/** A point in the plane the mechanism moves in: x away from the body's middle, y up. */
export interface RigPoint {
  /** Hinge, outward or fixed pivot, outward or spring's fixed end, outward [−5 to 5 m] */
  x: Length
  /** Hinge, upward or fixed pivot, upward or spring's fixed end, upward [−5 to 5 m] */
  y: Length
}

/** A mass on a moving arm. */
export interface ArmMass {
  /** What it is. [text of 1 to 100 characters] */
  name: string
  /** Mass [m_i; 0.1 g to 50 kg] */
  mass: Mass
  /** Distance from the hinge [r_i; 0 to 5 m] */
  radius: Length
  /** Angle from the arm's own direction. [phi_i; −360° to 360°; default 0] */
  angle?: Angle
}

/** An extension spring or elastic cord between the frame and the arm, to help the actuator. */
export interface HelperSpring {
  /** Stiffness [k_s; 0.01 N/m to 1000 N/mm] */
  stiffness: ForcePerLength
  /** Length at which it pulls nothing. [L_s; 0 to 5 m] */
  freeLength: Length
  /** Where it is fixed to the frame. [group] */
  fixedPivot: RigPoint
  /** Distance of its arm end from the hinge. [r_s; 1 mm to 5 m] */
  radius: Length
  /** Angle of its arm end from the arm's own direction. [phi_s; −360° to 360°; default 0] */
  angle?: Angle
}

/** A linear actuator by its datasheet. */
export interface RigActuator {
  /** Distance between its pins when retracted. [L_0; 1 mm to 3 m] */
  retractedLength: Length
  /** Stroke [S; 1 mm to 2 m] */
  stroke: Length
  /** Rated voltage [V_r; 10 mV to 100 V] */
  ratedVoltage: Voltage
  /** Speed without load [v_0; 0.01 mm/s to 2 m/s] */
  noLoadSpeed: Speed
  /** Current without load [I_0; 0 to 50 A] */
  noLoadCurrent: Current
  /** Rated force [F_r; 1 mN to 20 kN] */
  ratedForce: Force
  /** Speed at rated force [v_r; 0.01 mm/s to 2 m/s] */
  ratedSpeed: Speed
  /** Current at rated force [I_r; 0.1 mA to 100 A] */
  ratedCurrent: Current
  /** Force it holds without power; 0 where the screw does not lock itself. [F_hold; 0 to 50 kN; default 0] */
  holdingForce?: Force
}

/** A pivot on the arm, seen from the hinge. */
export interface RigMovingPivot {
  /** Distance from the hinge. [r_p; 1 mm to 2 m] */
  radius: Length
  /** Angle from the arm's own direction. [phi_p; −360° to 360°] */
  angle: Angle
}

/** Like arms on hinges, each moved by one linear actuator, all fed together. */
export interface HingedArms {
  /** How many like arms (a pair of wings: 2). [n; whole 1 to 16; default 1] */
  count?: number
  /** Hinge [group] */
  hinge: RigPoint
  /** Fixed pivot of the actuator. [group] */
  fixedPivot: RigPoint
  /** Moving pivot of the actuator, on the arm. [group] */
  movingPivot: RigMovingPivot
  /** Distance by which the rod axis misses its fixed pivot. [e; 0 to 200 mm; default 0] */
  axisOffset?: Length
  /**
   * Side of the line hinge–fixed pivot the moving pivot is on: counter-clockwise (extension raises) or clockwise.
   * [counter-clockwise or clockwise; default counter-clockwise]
   */
  assembly?: "counter-clockwise" | "clockwise"
  /** Actuator position at which the arms are up. [extended or retracted; default extended] */
  raised?: "extended" | "retracted"
  /** Masses on one arm [list of 1 to 60] */
  masses: readonly ArmMass[]
  /** Friction moment of the hinge, whichever way it moves. [M_f; 0 to 100 N m; default 0] */
  hingeFriction?: Moment
  /** Lean of the frame in the plane of motion, counter-clockwise. [beta; −90° to 90°; default 0] */
  frameTilt?: Angle
  /** Helper spring [group; optional] */
  spring?: HelperSpring | null
  /** Linear actuator [group] */
  actuator: RigActuator
}

/** Loose cells in series and parallel. */
export interface RigPack {
  /** Chemistry [nmc, lfp, lco, nimh, alkaline or lead] */
  chemistry: Chemistry
  /** Cells in series [N_s; whole 1 to 30] */
  series: number
  /** Strings in parallel [N_p; whole 1 to 50] */
  parallel: number
  /** Rated charge of one cell. [Q_c; 1 mAh to 200 Ah] */
  cellCapacity: Charge
  /** Direct-current resistance of one cell over minutes, not the 1 kHz figure. [R_c; 0 to 10 Ω] */
  cellResistance: Resistance
  /** Charge left at the moment of the move. [z; 0 to 1; default 0.8] */
  stateOfCharge?: Ratio
  /** Holders, welds and protection circuit together. [R_x; 0 to 10 Ω; default 0] */
  extraResistance?: Resistance
  /** Temperature of the cells: cold ones sag more. [T_c; −20 to 60 °C; default 25 °C] */
  temperature?: Temperature
  /** Maximum current of one cell [I_c; 0.1 mA to 200 A; optional] */
  cellCurrent?: Current | null
}

/** A USB battery bank: cells with a regulator that this document need not know. */
export interface RigBank {
  /** Voltage at the socket [V_b; 10 mV to 60 V; default 5 V] */
  voltage?: Voltage
  /** Maximum current it gives. [I_b; 0.1 mA to 50 A] */
  currentLimit: Current
  /** Resistance of socket, plug and regulator. [R_b; 0 to 10 Ω; default 50 mΩ] */
  resistance?: Resistance
  /** Energy it gives at its socket on one charge. [E_b; 3.6 J to 2 kWh] */
  energy: Energy
}

/** One point of an efficiency curve. */
export interface RigEfficiencyPoint {
  /** Output current [I_e; 0 to 100 A] */
  outputCurrent: Current
  /** Efficiency [eta_e; 1 to 100 %] */
  efficiency: Ratio
}

/** A voltage converter between source and actuators. */
export interface RigConverter {
  /** Output voltage [V_o; 10 mV to 100 V] */
  outputVoltage: Voltage
  /** Input current limit [I_il; 0.1 mA to 100 A; optional] */
  inputCurrentLimit?: Current | null
  /** Output current limit [I_ol; 0.1 mA to 100 A; optional] */
  outputCurrentLimit?: Current | null
  /** Efficiency over output current [list of 1 to 40] */
  efficiency: readonly RigEfficiencyPoint[]
  /** Own current without load [I_q; 0 to 5 A; default 0] */
  quiescentCurrent?: Current
  /** Minimum input voltage [V_in_min; 0 to 100 V] */
  minInputVoltage: Voltage
  /** Maximum input voltage [V_in_max; 10 mV to 100 V] */
  maxInputVoltage: Voltage
}

/** A run of wire out and back, with its contacts. */
export interface RigRun {
  /** Length one way [0 to 50 m] */
  length: Length
  /** Wire gauge (AWG) [whole −3 to 40; optional] */
  awg?: number | null
  /** Cross-section [0.0001 to 1000 mm²; optional] */
  area?: Area | null
  /** Contacts in the path [whole 0 to 100; default 0] */
  contacts?: number
  /** Resistance of one contact [0 to 10 Ω; default 5 mΩ] */
  contactResistance?: Resistance
  /** Wire temperature [−50 to 200 °C; default 25 °C] */
  temperature?: Temperature
}

/** Wires, switch and fuse. */
export interface RigWiring {
  /** From the cells to the converter, or to the actuators where there is no converter. [group] */
  source: RigRun
  /** From the converter to the actuators. [group; optional] */
  load?: RigRun | null
  /** Switch resistance [R_sw; 0 to 10 Ω; default 10 mΩ] */
  switchResistance?: Resistance
  /** Fuse resistance, hot [R_fu; 0 to 10 Ω; default 0] */
  fuseResistance?: Resistance
  /** Fuse rating [I_fu; 0.1 mA to 200 A; optional] */
  fuseRating?: Current | null
  /** Direct current the switch is rated for [I_sw; 0.1 mA to 200 A; optional] */
  switchRating?: Current | null
  /** Share of the source voltage that wires and contacts may take. [u_max; 0.01 to 100 %; default 5 %] */
  dropLimit?: Ratio
  /** Temperature the insulation is rated for [T_ins; 40 to 260 °C; default 70 °C] */
  insulation?: Temperature
  /** Air round the wires; inside padding or a costume, the air in there. [T_wa; −40 to 100 °C; default 25 °C] */
  ambientTemperature?: Temperature
}

/** What the maker wants of it. */
export interface RigBrief {
  /** Time on stage in which the arms go up and come down again. [t_stage; 1 ms to 1 d; optional] */
  stageTime?: Time | null
  /** Time the raise alone may take. [t_raise; 1 ms to 1 h; optional] */
  raiseTime?: Time | null
  /** Swing wanted [theta_w; 0.01° to 360°; optional] */
  swing?: Angle | null
}

/** A whole wearable: one JSON document that every check reads. */
export interface RigDocument extends RigSections {
  /** Version of the document's form: 1. [n_doc; whole 1 to 1] */
  version: number
  /** Name of the rig [text of 1 to 100 characters] */
  name: string
  /** Note [text of 0 to 5000 characters; default empty] */
  note?: string
  /** Arms on hinges [group; optional] */
  hinged?: HingedArms | null
  /** Cell pack [group; optional] */
  pack?: RigPack | null
  /** USB battery bank [group; optional] */
  bank?: RigBank | null
  /** Converter [group; optional] */
  converter?: RigConverter | null
  /** Wires, switch and fuse [group; optional] */
  wiring?: RigWiring | null
  /** What is wanted [group; optional] */
  brief?: RigBrief | null
}
