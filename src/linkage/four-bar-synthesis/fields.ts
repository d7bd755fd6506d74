// Descriptions of the task and of the linkages found.
import type { Fields, OutFields } from "../../solver/index.js"
import { LEAST_LIMIT } from "./kernel.js"
import type { FourBarSynthesis, FourBarSynthesisInput } from "./types.js"

/** Edges of a rectangle; `typical`: the usual ranges of left, right, bottom and top, mm. */
const region = (label: string, symbol: string, { typical }: { readonly typical: readonly (readonly [number, number])[] }) => {
  const edge = (name: string, place: string, i: number) => ({
    kind: "length" as const,
    symbol: `${place}_${symbol}`,
    label: `${label}, ${name}`,
    min: -20,
    max: 20,
    typical: typical[i]?.map((mm) => mm / 1000) as unknown as readonly [number, number],
  })
  return {
    kind: "group" as const,
    label,
    fields: {
      left: edge("minimum x", "l", 0),
      right: edge("maximum x", "r", 1),
      bottom: edge("minimum y", "b", 2),
      top: edge("maximum y", "t", 3),
    },
  }
}

/** Input of a synthesis. */
export const synthesisFields = (): Fields<FourBarSynthesisInput> => ({
  poses: {
    kind: "list",
    label: "poses of the coupler, in order",
    min: 2,
    max: 3,
    of: {
      kind: "group",
      label: "pose",
      fields: {
        x: { kind: "length", symbol: "x_p", label: "x of the coupler's origin", min: -20, max: 20, typical: [-0.1, 0.1] },
        y: { kind: "length", symbol: "y_p", label: "y of the coupler's origin", min: -20, max: 20, typical: [-0.1, 0.1] },
        angle: { kind: "angle", symbol: "alpha_p", label: "direction of the coupler's x axis", min: -7, max: 7, typical: [-1.5, 1.5] },
      },
    },
  },
  fixedPivotRegion: region("region of the fixed pivots", "f", {
    typical: [
      [-100, -60],
      [40, 80],
      [20, 60],
      [120, 160],
    ],
  }),
  movingPivotRegion: region("region of the pins, in the coupler's axes", "m", {
    typical: [
      [-120, -80],
      [100, 160],
      [-120, -80],
      [100, 160],
    ],
  }),
  step: { kind: "length", symbol: "s", label: "step between the pivots tried", min: "0.1 mm", max: 10, typical: ["25 mm", "50 mm"] },
  objective: {
    kind: "choice",
    label: "what makes a linkage the best",
    options: { "best-transmission": "largest minimum transmission angle", smallest: "smallest sum of the four lengths" },
    default: "best-transmission",
  },
  turns: {
    kind: "choice",
    label: "way the input link turns",
    options: { either: "either way", "counter-clockwise": "counter-clockwise", clockwise: "clockwise" },
    default: "either",
  },
  linkLengths: {
    kind: "group",
    label: "lengths allowed for every link",
    fields: {
      low: { kind: "length", symbol: "L_l", label: "shortest link allowed", min: "0.1 mm", max: 10, typical: ["5 mm", "20 mm"] },
      high: { kind: "length", symbol: "L_h", label: "longest link allowed", min: "1 mm", max: 20, typical: ["200 mm", "400 mm"] },
    },
    default: { low: "10 mm", high: "500 mm" },
  },
  transmissionLimit: {
    kind: "angle",
    symbol: "mu_l",
    label: "minimum transmission angle to keep",
    min: LEAST_LIMIT,
    max: "89 deg",
    typical: ["20 deg", "50 deg"],
    default: "40 deg",
  },
  listed: { kind: "number", symbol: "n_l", label: "linkages listed", whole: true, min: 1, max: 50, default: 5 },
})

const point = (label: string) => ({
  kind: "group" as const,
  label,
  fields: { x: { kind: "length" as const, label: "x" }, y: { kind: "length" as const, label: "y" } },
})

/** Result of a synthesis. */
export const synthesisOutput = (): OutFields<FourBarSynthesis> => ({
  minTransmissionAngle: { kind: "angle", symbol: "mu", label: "minimum transmission angle of the best" },
  size: { kind: "length", symbol: "L_s", label: "sum of its four lengths" },
  ground: { kind: "length", symbol: "d", label: "distance of its fixed pivots" },
  input: { kind: "length", symbol: "a", label: "its input link" },
  coupler: { kind: "length", symbol: "b", label: "its coupler, pin to pin" },
  output: { kind: "length", symbol: "c", label: "its output link" },
  inputTravel: { kind: "angle", symbol: "Delta", label: "turn of its input link" },
  solutions: {
    kind: "list",
    label: "linkages that pass, best first",
    of: {
      kind: "group",
      label: "linkage",
      fields: {
        inputPivot: point("fixed pivot of the input link"),
        outputPivot: point("fixed pivot of the output link"),
        inputPin: point("pin of the input link, in the coupler's axes"),
        outputPin: point("pin of the output link, in the coupler's axes"),
        ground: { kind: "length", label: "distance of the fixed pivots" },
        input: { kind: "length", label: "input link" },
        coupler: { kind: "length", label: "coupler" },
        output: { kind: "length", label: "output link" },
        branch: { kind: "text", label: "branch" },
        groundAngle: { kind: "angle", label: "direction from input pivot to output pivot" },
        inputAngles: { kind: "list", label: "input angles at the poses", of: { kind: "angle", label: "input angle" } },
        inputTravel: { kind: "angle", label: "turn of the input link" },
        minTransmissionAngle: { kind: "angle", label: "minimum transmission angle" },
        size: { kind: "length", label: "sum of the lengths" },
        pointRadius: { kind: "length", label: "coupler's origin from the input pin" },
        pointAngle: { kind: "angle", label: "coupler's origin from the coupler's line" },
        axisAngle: { kind: "angle", label: "coupler's x axis from the coupler's line" },
      },
    },
  },
  tried: {
    kind: "group",
    label: "what was tried",
    fields: {
      links: { kind: "number", label: "links" },
      pairs: { kind: "number", label: "pairs of links" },
      outOfLength: { kind: "number", label: "too short or too long" },
      changeBranch: { kind: "number", label: "change branch" },
      outOfOrder: { kind: "number", label: "out of order" },
      poorTransmission: { kind: "number", label: "below the transmission limit" },
      passed: { kind: "number", label: "pass" },
    },
  },
})
