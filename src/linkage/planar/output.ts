import type { OutFields } from "../../solver/index.js"

/** Result of `planarLinkage`, at the end of the motion unless said otherwise. */
export interface PlanarLinkage {
  /** Degrees of freedom without drivers [f] */
  readonly mobility: number
  /** How far from singular: 1/(‖J‖·‖J⁻¹‖) in the row-sum norm; 1 is best, 0 singular. [kappa; as a fraction] */
  readonly conditioning: number
  /** The same at the pose of the motion nearest to singular. [kappa_m; as a fraction] */
  readonly minConditioning: number
  /** Where on the way that pose lies: 0 start, 1 end. [s_m; as a fraction] */
  readonly minConditioningShare: number
  /** Power that friction at the pins takes. [P_f; W] */
  readonly frictionLoss: number
  /** Every point at the end of the motion; lengths m, speeds m/s, accelerations m/s². [list] */
  readonly points: readonly {
    /** Name [text] */
    readonly name: string
    /** X [m] */
    readonly x: number
    /** Y [m] */
    readonly y: number
    /** Speed x [m/s] */
    readonly speedX: number
    /** Speed y [m/s] */
    readonly speedY: number
    /** Acceleration x [m/s²] */
    readonly accelerationX: number
    /** Acceleration y [m/s²] */
    readonly accelerationY: number
  }[]
  /** Every bar; angles rad, speeds rad/s, accelerations rad/s². [list] */
  readonly bars: readonly {
    /** Name [text] */
    readonly name: string
    /** Direction from `from` to `to`. [rad] */
    readonly angle: number
    /** Speed [rad/s] */
    readonly speed: number
    /** Acceleration [rad/s²] */
    readonly acceleration: number
    /** Pin to pin. [m] */
    readonly length: number
  }[]
  /** Every slider; positions m, speeds m/s. [list] */
  readonly sliders: readonly {
    /** Name [text] */
    readonly name: string
    /** Distance along the line from its first point. [m] */
    readonly position: number
    /** Speed [m/s] */
    readonly speed: number
    /** Acceleration [m/s²] */
    readonly acceleration: number
    /** Force of the line on the point, to the left of the line. [N] */
    readonly sideForce: number
  }[]
  /** Every driver: its setting (rad or m) and its effort. [list] */
  readonly drivers: readonly {
    /** Name [text] */
    readonly name: string
    /** Angle [rad] */
    readonly angle: number | null
    /** Length [m] */
    readonly length: number | null
    /** Torque the driver exerts against the loads; positive with rising angle. [N m] */
    readonly torque: number | null
    /** Force the driver exerts against the loads; positive pushes. [N] */
    readonly force: number | null
  }[]
  /** Force of each pin on each bar. [list] */
  readonly pins: readonly {
    /** Bar [text] */
    readonly bar: string
    /** Point [text] */
    readonly point: string
    /** Force x [N] */
    readonly forceX: number
    /** Force y [N] */
    readonly forceY: number
    /** Force [N] */
    readonly force: number
  }[]
  /** Largest force of each pin on each bar over the whole motion. [list] */
  readonly pinPeaks: readonly {
    /** Bar [text] */
    readonly bar: string
    /** Point [text] */
    readonly point: string
    /** Largest force [N] */
    readonly force: number
    /** Where on the way: 0 start, 1 end. [as a fraction] */
    readonly share: number
  }[]
  /** Largest pull and push along each bar, at either of its ends, over the whole motion. [list] */
  readonly barPeaks: readonly {
    /** Name [text] */
    readonly name: string
    /** Largest pull [N] */
    readonly tension: number
    /** Where on the way: 0 start, 1 end. [as a fraction] */
    readonly tensionShare: number
    /** Largest push: what the bar must stand without buckling. [N] */
    readonly compression: number
    /** Where on the way: 0 start, 1 end. [as a fraction] */
    readonly compressionShare: number
  }[]
  /** Largest side force of each slider over the whole motion. [list] */
  readonly sliderPeaks: readonly {
    /** Name [text] */
    readonly name: string
    /** Largest side force, to either side. [N] */
    readonly sideForce: number
    /** Where on the way: 0 start, 1 end. [as a fraction] */
    readonly share: number
  }[]
  /** Largest effort of each driver over the whole motion, whichever way it works. [list] */
  readonly driverPeaks: readonly {
    /** Name [text] */
    readonly name: string
    /** Torque [N m] */
    readonly torque: number | null
    /** Force [N] */
    readonly force: number | null
    /** Where on the way: 0 start, 1 end. [as a fraction] */
    readonly share: number
  }[]
  /** Path of the traced point, start to end. [list] */
  readonly path: readonly {
    /** X [m] */
    readonly x: number
    /** Y [m] */
    readonly y: number
  }[]
  /** Effort of every driver at every step, start to end. [list] */
  readonly efforts: readonly {
    /** Step [number] */
    readonly step: number
    /** Driver [text] */
    readonly driver: string
    /** Torque [N m] */
    readonly torque: number | null
    /** Force [N] */
    readonly force: number | null
  }[]
  /** Newton steps taken over the whole motion. [number] */
  readonly iterations: number
  /** Largest constraint error [m] */
  readonly residual: number
}

/** Reasons for which {@link planarLinkage} refuses. */
export type PlanarLinkageRefusal = MotionRefusal | "jammed"

/** Reasons for which a mechanism has no motion. */
export type MotionRefusal = "cannot-close" | "dead-point" | "over-constrained" | "singular" | "under-constrained"

/** Hazards and limits of validity that go with an answer of {@link planarLinkage}. */
export type PlanarLinkageCaution = "falls-unpowered" | "near-singular" | "pinch"

const share = { kind: "ratio", label: "where on the way" } as const

/** Descriptions of the result. */
export const planarOutput: OutFields<PlanarLinkage> = {
  mobility: { kind: "number", symbol: "f", label: "degrees of freedom without drivers" },
  conditioning: { kind: "ratio", symbol: "kappa", label: "distance from singular", unit: "x" },
  minConditioning: { kind: "ratio", symbol: "kappa_m", label: "smallest distance from singular on the way", unit: "x" },
  minConditioningShare: { kind: "ratio", symbol: "s_m", label: "where on the way that is" },
  frictionLoss: { kind: "power", symbol: "P_f", label: "power lost in friction at the pins" },
  points: {
    kind: "list",
    label: "points",
    of: {
      kind: "group",
      label: "point",
      fields: {
        name: { kind: "text", label: "name" },
        x: { kind: "length", label: "x" },
        y: { kind: "length", label: "y" },
        speedX: { kind: "speed", label: "speed x" },
        speedY: { kind: "speed", label: "speed y" },
        accelerationX: { kind: "acceleration", label: "acceleration x" },
        accelerationY: { kind: "acceleration", label: "acceleration y" },
      },
    },
  },
  bars: {
    kind: "list",
    label: "bars",
    of: {
      kind: "group",
      label: "bar",
      fields: {
        name: { kind: "text", label: "name" },
        angle: { kind: "angle", label: "angle" },
        speed: { kind: "angularSpeed", label: "speed" },
        acceleration: { kind: "angularAcceleration", label: "acceleration" },
        length: { kind: "length", label: "length" },
      },
    },
  },
  sliders: {
    kind: "list",
    label: "sliders",
    of: {
      kind: "group",
      label: "slider",
      fields: {
        name: { kind: "text", label: "name" },
        position: { kind: "length", label: "position" },
        speed: { kind: "speed", label: "speed" },
        acceleration: { kind: "acceleration", label: "acceleration" },
        sideForce: { kind: "force", label: "side force" },
      },
    },
  },
  drivers: {
    kind: "list",
    label: "drivers",
    of: {
      kind: "group",
      label: "driver",
      fields: {
        name: { kind: "text", label: "name" },
        angle: { kind: "angle", label: "angle" },
        length: { kind: "length", label: "length" },
        torque: { kind: "moment", label: "torque" },
        force: { kind: "force", label: "force" },
      },
    },
  },
  pins: {
    kind: "list",
    label: "force of the pins on the bars",
    of: {
      kind: "group",
      label: "pin",
      fields: {
        bar: { kind: "text", label: "bar" },
        point: { kind: "text", label: "point" },
        forceX: { kind: "force", label: "force x" },
        forceY: { kind: "force", label: "force y" },
        force: { kind: "force", label: "force" },
      },
    },
  },
  pinPeaks: {
    kind: "list",
    label: "largest force of the pins on the bars",
    of: {
      kind: "group",
      label: "pin",
      fields: {
        bar: { kind: "text", label: "bar" },
        point: { kind: "text", label: "point" },
        force: { kind: "force", label: "largest force" },
        share,
      },
    },
  },
  barPeaks: {
    kind: "list",
    label: "largest pull and push of the bars",
    of: {
      kind: "group",
      label: "bar",
      fields: {
        name: { kind: "text", label: "name" },
        tension: { kind: "force", label: "largest pull" },
        tensionShare: share,
        compression: { kind: "force", label: "largest push" },
        compressionShare: share,
      },
    },
  },
  sliderPeaks: {
    kind: "list",
    label: "largest side force of the sliders",
    of: {
      kind: "group",
      label: "slider",
      fields: { name: { kind: "text", label: "name" }, sideForce: { kind: "force", label: "largest side force" }, share },
    },
  },
  driverPeaks: {
    kind: "list",
    label: "largest driver effort",
    of: {
      kind: "group",
      label: "driver",
      fields: {
        name: { kind: "text", label: "name" },
        torque: { kind: "moment", label: "torque" },
        force: { kind: "force", label: "force" },
        share,
      },
    },
  },
  path: {
    kind: "list",
    label: "path",
    of: { kind: "group", label: "place", fields: { x: { kind: "length", label: "x" }, y: { kind: "length", label: "y" } } },
  },
  efforts: {
    kind: "list",
    label: "driver effort over the motion",
    of: {
      kind: "group",
      label: "effort",
      fields: {
        step: { kind: "number", label: "step" },
        driver: { kind: "text", label: "driver" },
        torque: { kind: "moment", label: "torque" },
        force: { kind: "force", label: "force" },
      },
    },
  },
  iterations: { kind: "number", label: "iterations" },
  residual: { kind: "length", label: "largest constraint error" },
}
