// A line on a drum: a shaft's angle becomes a length wound in.
import type { Length, Ratio } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Transmission, TransmissionMember } from "./transmission.js"

/** A drum with one layer of line. */
export interface DrumElement {
  type: "drum"
  /** Diameter of the bare drum. [D; 3 mm to 1 m] */
  drumDiameter: Length
  /** Line [d; 0.1 to 50 mm] */
  lineDiameter: Length
  /** Share of the drum's effort that pulls the line. [eta; 30 to 100 %; default 95 %] */
  efficiency?: Ratio
}

function build(si: SiOf<DrumElement>): Transmission {
  const radius = (si.drumDiameter + si.lineDiameter) / 2
  return {
    takes: "angle",
    gives: "length",
    out: (travel) => radius * travel,
    ratio: () => radius,
    forward: si.efficiency,
    backward: si.efficiency,
    unlocking: 0,
    selfLocking: false,
    drag: 0,
    transmits: "pull-only",
    backlash: 0,
    compliance: 0,
    inertia: 0,
    strength: null,
    kinks: [],
    low: Number.NEGATIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
  }
}

/** A line wound on a drum; forward winds it in. */
export const drum: TransmissionMember<DrumElement> = {
  type: "drum",
  label: "line on a drum",
  fields: {
    drumDiameter: { kind: "length", symbol: "D", label: "bare drum", min: "3 mm", max: 1 },
    lineDiameter: { kind: "length", symbol: "d", label: "line", min: "0.1 mm", max: "50 mm" },
    efficiency: {
      kind: "ratio",
      symbol: "eta",
      label: "share of the drum's effort that pulls the line",
      min: "30 %",
      max: 1,
      default: 0.95,
    },
  },
  build,
}
