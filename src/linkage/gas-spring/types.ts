// What gasSpring takes and gives back.
import type { Force, Length, Ratio, Speed, Temperature, Volume } from "../../quantity/index.js"
import type { Band, SiOf, Transmits } from "../../solver/index.js"

/** Speed at which a gas spring pushes its rod out by itself, as its maker states it. */
export interface ExtensionSpeed {
  /** Slowest [v_l; 1 mm/s to 10 m/s] */
  low: Speed
  /** Fastest [v_h; 1 mm/s to 10 m/s] */
  high: Speed
}

/** Input of {@link gasSpring}. */
export interface GasSpringInput {
  /** Force with the rod out, read while it extends, at 20 °C: F1 of the datasheet. [F_1; 1 N to 100 kN] */
  force: Force
  /** Stroke [s_1; 1 mm to 5 m] */
  stroke: Length
  /** How far the rod is pushed in. [s; 0 to 5 m] */
  compression: Length
  /** Force at the end of the stroke over that at its start: F2/F1 of the datasheet. [p_1; 1 to 3; optional] */
  progression?: Ratio | null
  /** Diameter of the rod [d; 0.5 to 200 mm; optional] */
  rodDiameter?: Length | null
  /** Room of the gas with the rod out, oil taken off. [V_0; 1 mm³ to 100 L; optional] */
  gasVolume?: Volume | null
  /** Friction of seal and rod: half of what the forces compressing and extending differ by. [F_r; 0 to 10 kN; default 0] */
  frictionForce?: Force
  /** Temperature of the gas. [T; −60 to 150 °C; default 20 °C] */
  materialTemperature?: Temperature
  /** Extension speed [group; optional] */
  extensionSpeed?: ExtensionSpeed | null
}

/** Result of {@link gasSpring}. */
export interface GasSpring {
  /** Its rod only ever pushes out: `push-only`. [text] */
  readonly transmits: Transmits
  /** F2/F1, as given or from rod and room. [p; as a fraction] */
  readonly progression: number
  /** Force extending [F_e; N] */
  readonly extendingForce: number
  /** Force compressing [F_c; N] */
  readonly compressingForce: number
  /** Force with the rod out [F_1T; N] */
  readonly forceExtended: number
  /** Force to push the rod all in [F_2T; N] */
  readonly forceCompressed: number
  /** Force compressing, at once [F_f; N] */
  readonly fastForce: number
  /** Stiffness [k; N/m] */
  readonly stiffness: number
  /** Force gained by warmth [f_T; 1/K] */
  readonly forcePerTemperature: number
  /** Energy stored by the compression [W; J] */
  readonly storedEnergy: number
  /** Work to compress it [W_c; J] */
  readonly compressingWork: number
  /** Work given back [W_e; J] */
  readonly returnedWork: number
  /** Work lost, in and out [W_f; J] */
  readonly frictionWork: number
  /** Time to extend over the stroke, at the fastest and slowest speed of its datasheet; null where none is given. [s] */
  readonly extensionDuration: Band | null
}

/** Hazards and limits of validity that go with an answer of {@link gasSpring}. */
export type GasSpringCaution = "stored-energy" | "under-pressure" | "force-varies" | "outside-range" | "unusual-progression" | "sticks"

export type Si = SiOf<GasSpringInput>
