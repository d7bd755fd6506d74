// A line on a drum: a shaft's angle becomes a length wound in.
import { winch } from "../../drive/index.js"
import { LEAST_FACTOR } from "../../drive/winch/cautions.js"
import { input as winchFields } from "../../drive/winch/fields.js"
import { bentShareOf, coilOf, lengthOf, radiusOf, turnsOf } from "../../drive/winch/kernel.js"
import type { Force, Length, Moment, MomentOfInertia, Ratio } from "../../quantity/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { rigid, type Transmission, type TransmissionMember } from "./transmission.js"

/** A drum with its line. Without a width or turns in a layer all of the line counts as lying in one layer. */
export interface DrumElement {
  type: "drum"
  /** Diameter of the bare drum. [D; 3 mm to 1 m] */
  drumDiameter: Length
  /** Line [d; 0.1 to 50 mm] */
  lineDiameter: Length
  /** Width between the flanges. [W; 0.5 mm to 10 m; optional] */
  drumWidth?: Length | null
  /** Turns in one layer [n_g; whole 1 to 10000; optional] */
  turnsPerLayer?: number | null
  /** Rise of the radius from layer to layer against the line's diameter: 1 stacked, 0.866 nested in the gaps. [e; 0.8 to 1; default 1] */
  layerRise?: Ratio
  /** Line on the drum when it is wound in as far as it goes. [L; 10 mm to 500 m; optional] */
  lineLength?: Length | null
  /** Line paid out from there at the start of the motion. [s; 0 to 500 m; optional] */
  travel?: Length | null
  /** Diameter of the flanges. [D_f; 4 mm to 10 m; optional] */
  flangeDiameter?: Length | null
  /** Breaking force of the line, as its maker states it for the straight line. [F_b; 0.1 N to 10000 kN; optional] */
  lineStrength?: Force | null
  /** Wire rope loses strength round a small drum. [wire-rope or fibre-rope; optional] */
  lineType?: "wire-rope" | "fibre-rope" | null
  /** Share of the drum's effort that pulls the line. [eta; 30 to 100 %; default 95 %] */
  efficiency?: Ratio
  /** The same while the load pulls the line out; as winding in when left out. [eta_g; 5 to 100 %; optional] */
  backwardEfficiency?: Ratio | null
  /** Drag at the drum, load or none. [T_d; 0 to 100000 N m; default 0] */
  dragTorque?: Moment
  /** Moment of inertia of the drum. [J_d; 0 to 100 kg m²; default 0] */
  inertia?: MomentOfInertia
}

type Si = SiOf<DrumElement>
const TURN = 2 * Math.PI
/** Smallest travel that the domain's winch is asked with, m. */
const LEAST = 1e-3

/** The same line asked of the domain's winch, that tells its faults and whether it fits. */
const asked = (si: Si, lineLength: number, travel: number) => ({
  drumDiameter: si.drumDiameter,
  lineDiameter: si.lineDiameter,
  drumWidth: si.drumWidth,
  turnsPerLayer: si.turnsPerLayer,
  layerRise: si.layerRise,
  lineLength,
  travel: Math.max(travel, LEAST),
  flangeDiameter: si.flangeDiameter,
  lineType: si.lineType ?? "fibre-rope",
  pull: 1,
})

/** Travel, its slope and its kinks where the line lies in layers. */
function layers(si: Si, lineLength: number, travel: number): Pick<Transmission, "out" | "ratio" | "kinks" | "low" | "high"> {
  const coil = coilOf(si)
  const [start, end] = [turnsOf(coil, lineLength - travel), turnsOf(coil, lineLength)]
  const [low, high] = [-TURN * start, TURN * (end - start)]
  const outermost = Math.ceil(end / coil.turns) - 1
  const fullAt = (turns: number) => Math.min(Math.max(0, Math.floor(turns / coil.turns)), outermost)
  const woundAt = (turns: number) => {
    const full = fullAt(turns)
    return lengthOf(coil, full) + (turns - full * coil.turns) * TURN * radiusOf(coil, full + 1)
  }
  const atStart = woundAt(start)
  const kinks: number[] = []
  for (let full = 1; full <= outermost; full++) {
    const at = TURN * (full * coil.turns - start)
    if (at > low && at < high) kinks.push(at)
  }
  return {
    out: (angle) => woundAt(start + angle / TURN) - atStart,
    ratio: (angle) => radiusOf(coil, fullAt(start + angle / TURN) + 1),
    kinks,
    low,
    high,
  }
}

function oneLayer(si: Si): Pick<Transmission, "out" | "ratio"> {
  const radius = (si.drumDiameter + si.lineDiameter) / 2
  return { out: (travel) => radius * travel, ratio: () => radius }
}

const optional = <F extends object>(field: F): F & { readonly default: null } => ({ ...field, default: null })

/** A line wound on a drum; forward winds it in. */
export const drum: TransmissionMember<DrumElement> = {
  type: "drum",
  label: "line on a drum",
  fields: {
    drumDiameter: { kind: "length", symbol: "D", label: "bare drum", min: "3 mm", max: 1, typical: ["20 mm", "60 mm"] },
    lineDiameter: { kind: "length", symbol: "d", label: "line", min: "0.1 mm", max: "50 mm", typical: ["1 mm", "3 mm"] },
    drumWidth: winchFields.drumWidth,
    turnsPerLayer: winchFields.turnsPerLayer,
    layerRise: winchFields.layerRise,
    lineLength: optional(winchFields.lineLength),
    travel: { kind: "length", symbol: "s", label: "line paid out at the start", min: 0, max: 500, typical: [0.3, 1.5], default: null },
    flangeDiameter: winchFields.flangeDiameter,
    lineStrength: winchFields.lineStrength,
    lineType: optional(winchFields.lineType),
    efficiency: winchFields.efficiency,
    backwardEfficiency: winchFields.backwardEfficiency,
    dragTorque: winchFields.dragTorque,
    inertia: { kind: "momentOfInertia", symbol: "J_d", label: "inertia of the drum", min: 0, max: 100, typical: [0, 1e-4], default: 0 },
  },
  either: [
    { atMostOne: ["drumWidth", "turnsPerLayer"] },
    { together: ["lineLength", "travel"] },
    { given: "lineLength", needs: ["drumWidth", "turnsPerLayer"] },
    { given: "drumWidth", needs: ["lineLength"] },
    { given: "turnsPerLayer", needs: ["lineLength"] },
    { given: "flangeDiameter", needs: ["lineLength"] },
    { given: "lineStrength", needs: ["lineType"] },
  ],
  check: (si) => (si.lineLength === null || si.travel === null ? [] : domainFaults(winch, asked(si, si.lineLength, si.travel))),
  build(si) {
    const { lineLength, travel, lineStrength, lineType } = si
    const isLayered = lineLength !== null && travel !== null
    if (isLayered) {
      const fits = winch.si(winch.read(asked(si, lineLength, travel)))
      if (isNoSolution(fits)) return fits
    }
    const share = lineType === null ? null : bentShareOf({ ...si, lineType })
    return {
      ...rigid,
      takes: "angle",
      gives: "length",
      ...(isLayered ? layers(si, lineLength, travel) : oneLayer(si)),
      forward: si.efficiency,
      backward: si.backwardEfficiency ?? si.efficiency,
      drag: si.dragTorque,
      transmits: "pull-only",
      inertia: si.inertia,
      strength: lineStrength === null ? null : lineStrength * (share ?? 1),
      safetyFactor: LEAST_FACTOR,
    }
  },
}
