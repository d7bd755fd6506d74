// A crank and rod: a shaft's angle becomes a travel along a line.
import { type SliderCrankGeometry, sliderAt, sliderCrank, sliderLimits } from "../../linkage/index.js"
import type { Angle, Force, Length, MomentOfInertia, Ratio } from "../../quantity/index.js"
import { inconsistent, isNoSolution, type SiOf } from "../../solver/index.js"
import { rigid, type TransmissionMember } from "./transmission.js"

/** A crank on the shaft, a rod, and a slide. */
export interface CrankElement {
  type: "crank"
  /** Crank, pivot to pin. [a; 1 mm to 2 m] */
  crank: Length
  /** Connecting rod, pin to pin. [b; 1 mm to 5 m] */
  coupler: Length
  /** Distance of the slide line from the shaft; positive above it. [c; −2 to 2 m; default 0] */
  offset?: Length
  /** Angle of the crank at the start, from the direction of the slide. [theta_0; −360° to 360°] */
  startAngle: Angle
  /** Side of the crank the slide is on: `open` towards its own direction. [open or crossed; default open] */
  assembly?: "open" | "crossed"
  /** Share of the shaft's effort that the pins and the slide let through, either way. [eta; 30 to 100 %] */
  efficiency: Ratio
  /** Moment of inertia of the crank. [J_c; 0 to 10 kg m²; default 0] */
  inertia?: MomentOfInertia
  /** Force along the slide that pins and rod may not pass. [F_max; 1 mN to 1000 kN; optional] */
  maxForce?: Force | null
}

const TURN = 2 * Math.PI

/** At a dead point the slide stands still: its slope there is the one so far inside its range, rad, which tells its sense. */
const INSIDE = 1e-12

/** Nearest limits below and above the start, as angles from it; what stands at a limit may only go on from it. */
function rangeOf(geometry: SliderCrankGeometry, start: number): readonly [number, number] {
  let [low, high] = [-TURN, TURN]
  for (const limit of sliderLimits(geometry)) {
    const ahead = limit - start - TURN * Math.floor((limit - start) / TURN)
    if (ahead > 1e-9) high = Math.min(high, ahead)
    low = Math.max(low, ahead > TURN - 1e-9 || ahead <= 1e-9 ? 0 : ahead - TURN)
  }
  return [low, high]
}

const reach = (si: SiOf<CrankElement>) => ({
  crank: si.crank,
  coupler: si.coupler,
  offset: si.offset,
  crankAngle: si.startAngle,
  assembly: si.assembly,
  crankSpeed: 0,
  crankAcceleration: 0,
  load: 0,
})

/** A crank; it works between the places where its slide turns back. */
export const crank: TransmissionMember<CrankElement> = {
  type: "crank",
  label: "crank and slide",
  fields: {
    crank: { kind: "length", symbol: "a", label: "crank", min: "1 mm", max: 2, typical: ["10 mm", "60 mm"] },
    coupler: { kind: "length", symbol: "b", label: "connecting rod", min: "1 mm", max: 5, typical: ["40 mm", "200 mm"] },
    offset: { kind: "length", symbol: "c", label: "offset of the slide line", min: -2, max: 2, typical: ["-20 mm", "20 mm"], default: 0 },
    startAngle: { kind: "angle", symbol: "theta_0", label: "crank angle at the start", min: "-360 deg", max: "360 deg" },
    assembly: { kind: "choice", label: "side of the slide", options: { open: "open", crossed: "crossed" }, default: "open" },
    efficiency: { kind: "ratio", symbol: "eta", label: "efficiency of pins and slide", min: 0.3, max: 1, typical: [0.8, 0.98], unit: "%" },
    inertia: { kind: "momentOfInertia", symbol: "J_c", label: "inertia of the crank", min: 0, max: 10, typical: [0, 1e-4], default: 0 },
    maxForce: {
      kind: "force",
      symbol: "F_max",
      label: "largest force along the slide",
      min: "1 mN",
      max: 1e6,
      typical: [50, 2000],
      default: null,
    },
  },
  check: ({ crank: radius, coupler, offset, startAngle, assembly }) =>
    // a rod as long as the crank folds back on it and leaves the slide at the shaft, however the crank turns
    radius === coupler && offset === 0 && Math.cos(startAngle) * (assembly === "open" ? 1 : -1) <= 0
      ? [
          inconsistent(["coupler"], "{coupler length}, as long as the crank and folded back on it", "a rod that moves the slide", {
            coupler,
          }),
        ]
      : [],
  build(si) {
    const closes = sliderCrank.si(reach(si))
    if (isNoSolution(closes)) return closes
    const { startAngle: start } = si
    const geometry: SliderCrankGeometry = { crank: si.crank, coupler: si.coupler, offset: si.offset, side: si.assembly === "open" ? 1 : -1 }
    const from = sliderAt(geometry, start).position
    const [low, high] = rangeOf(geometry, start)
    return {
      ...rigid,
      takes: "angle",
      gives: "length",
      out: (travel) => sliderAt(geometry, start + travel).position - from,
      ratio: (travel) => sliderAt(geometry, start + Math.min(high - INSIDE, Math.max(low + INSIDE, travel))).lever,
      forward: si.efficiency,
      backward: si.efficiency,
      transmits: "both-ways",
      inertia: si.inertia,
      strength: si.maxForce,
      low,
      high,
    }
  },
}
