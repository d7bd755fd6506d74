// What goes in and what comes out.
import type { Angle, Length, Mass, Moment } from "../../../quantity/index.js"
import type { SiOf, Transmits } from "../../../solver/index.js"

/** Input of {@link tetheredFan}. */
export interface TetheredFanInput {
  /** Number of vanes, the driven one included. [n_v; whole 2 to 60] */
  vanes: number
  /** Pivot to tip [R; 1 mm to 10 m] */
  length: Length
  /** Pivot to where the blade begins. [R_0; 0 to 10 m; default 0] */
  rootDistance?: Length
  /** Width of the blade at its root. [w_0; 0 to 2 m] */
  rootWidth: Length
  /** Width of the blade at its tip. [w_1; 0 to 2 m] */
  tipWidth: Length
  /** Mass of one vane [m_v; 0 to 50 kg] */
  mass: Mass
  /** Pivot to the centre of gravity of one vane. [c; 0 to 10 m] */
  centre: Length
  /** Distance between neighbouring pivots; 0 where all share one. [p; 0 to 1 m; default 0] */
  pitch?: Length
  /** Direction from the first pivot to the last. [psi; −401.07° to 401.07°; default 0] */
  pitchAngle?: Angle
  /** Pivot to the thread's end on each vane. [rho; 1 mm to 10 m] */
  attachRadius: Length
  /** Angle of the driven vane when folded. [theta_f; −401.07° to 401.07°] */
  foldedAngle: Angle
  /** How much lower each next vane rests when folded. [delta; 0 to 28.6479°; default 0] */
  foldedStep?: Angle
  /** Angle of the driven vane when open. [theta_o; −401.07° to 401.07°] */
  openAngle: Angle
  /** Angle between first and last vane when open, for even thread lengths. [sigma; 0.1° to 343.775°] */
  span: Angle
  /** Length of each thread, from the driven vane on; even spread where left out. [list of 1 to 59, each t_g, 0 to 10 m; optional] */
  threads?: readonly Length[] | null
  /** Angle of the driven vane at which the pose is wanted; open where left out. [theta_d; −401.07° to 401.07°; optional] */
  driverAngle?: Angle | null
  /** Moment by which elastic draws each tethered vane back, besides its weight. [M_r; 0 to 100 N m; default 0] */
  returnMoment?: Moment
  /** Lean of the wearer; positive turns the frame counter-clockwise. [lambda; −183.346° to 183.346°; default 0] */
  frameTilt?: Angle
  /** Overlap wanted at the tips when open. [w_o; 0 to 1 m; default 0] */
  overlap?: Length
}

/** Result of {@link tetheredFan}. */
export interface TetheredFan {
  /** Threads draw the vanes open; weight and elastic draw them back: `pull-only`. [text] */
  readonly transmits: Transmits
  /** Angle between neighbours when spread evenly. [alpha; rad] */
  readonly step: number
  /** Thread lengths [list, each t, m] */
  readonly threads: readonly number[]
  /** Angle of each vane at the chosen driver angle. [list, each theta, rad] */
  readonly angles: readonly number[]
  /** Gap at the root between neighbours there; negative where they overlap. [list, each m] */
  readonly rootGaps: readonly number[]
  /** Gap at the tip between neighbours there; negative where they overlap. [list, each m] */
  readonly tipGaps: readonly number[]
  /** Tension of each thread there; 0 where slack, negative where it would have to push. [list, each T, N] */
  readonly tensions: readonly number[]
  /** Largest root gap [s_0; m] */
  readonly maxRootGap: number
  /** Largest tip gap [s_1; m] */
  readonly maxTipGap: number
  /** Moment to hold the driven vane there, against its and its followers' weight. [M_d; N m] */
  readonly driverMoment: number
  /** Largest moment at the driven vane over the sweep, of 513 even poses. [M_p; N m] */
  readonly peakDriverMoment: number
  /** Driver angle at which it is needed. [theta_p; rad] */
  readonly peakDriverAngle: number
  /** Mass of all vanes. [m_t; kg] */
  readonly totalMass: number
  /** Moment of the whole fan's weight about the first pivot there, clockwise. [M_t; N m] */
  readonly fanMoment: number
  /** Whether every taut thread pulls over the whole sweep; if not, some vanes fall forward. [yes or no] */
  readonly staysTaut: boolean
  /** What covers the open span. [group] */
  readonly cover: {
    /**
     * Fewest vanes of this shape, on a row of pivots as long as this one, that overlap as wanted at the tips; null
     * where 200 do not. [number]
     */
    readonly vanes: number | null
    /** Tip gap with that many. [m] */
    readonly tipGap: number | null
  }
  /** Poses over the driver's sweep. [list] */
  readonly sweep: readonly FanPose[]
}

/** Reasons for which {@link tetheredFan} refuses. */
export type TetheredFanRefusal = "thread-too-short"

/** Hazards and limits of validity that go with an answer of {@link tetheredFan}. */
export type TetheredFanCaution = "falls-unpowered" | "gaps-at-tips" | "pinch" | "short-threads" | "vanes-fall-forward"

/** One pose of the sweep. */
export interface FanPose {
  /** Angle of the driven vane. [rad] */
  readonly driverAngle: number
  /** Angle of each vane. [list, each rad] */
  readonly angles: readonly number[]
  /** Threads that are taut. [number] */
  readonly taut: number
  /** Moment at the driven vane [N m] */
  readonly driverMoment: number
}

export type Si = SiOf<TetheredFanInput>

/** What the kernel found on its way, for the formulae. */
export interface FanTrace {
  /** Which threads are taut at the chosen pose. */
  readonly taut: readonly boolean[]
  /** Moment at the driven vane at its peak, with its sign. */
  readonly peakMoment: number
}
