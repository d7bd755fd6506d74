// Published values of cables, ropes over pulleys and their losses: how each row is put to cable.
import { type CableConstruction, type CableInput, cable } from "../../src/drive/index.js"
import type { Check, RowInputs } from "../helpers/references.js"

const [DEG, LBF, INCH] = [Math.PI / 180, 4.4482216152605, 0.0254]
/** A cable of which only its ends' tensions are asked for. */
const plain = (force: number, route: CableInput["route"], own: Partial<CableInput> = {}) =>
  cable({ force, travel: 1, length: 1, diameter: 0.001, construction: "7x7-stainless", breakingForce: 1e8, route, ...own } as CableInput)
const bent = (friction: number, angle: number, radius = 0.1): CableInput["route"] => ({
  type: "sheath",
  friction,
  bends: [{ angle, radius }],
})

const ratios: Check = (n: RowInputs) =>
  Object.fromEntries((n.angles_deg as number[]).map((angle) => [`ratio_${angle}deg`, plain(1, bent(n.friction, angle * DEG)).pullingForce]))

/** Published names of constructions, by ours. */
const constructions: Record<string, CableConstruction> = {
  "1x7 galv": "1x7-galvanised",
  "1x19 galv": "1x19-galvanised",
  "7x7 galv": "7x7-galvanised",
  "7x19 galv": "7x19-galvanised",
  "1x19 302": "1x19-stainless",
  "7x7 302": "7x7-stainless",
  "7x19 302": "7x19-stainless",
}

export const cableChecks: Readonly<Record<string, Check>> = {
  ...Object.fromEntries(["0p15", "0p3", "0p4", "0p5", "0p6", "0p7"].map((f) => [`capstan-conduit-f${f}`, ratios])),
  "capstan-conduit-example": (n) => ({
    tension_out_lbf: plain(n.tension_in_lbf * LBF, bent(n.friction, n.angle_deg * DEG)).pullingForce / LBF,
  }),
  "bowden-two-materials-numeric": (n) =>
    Object.fromEntries(
      ["ptfe", "nylon", "bare_steel"].map((liner) => [
        `efficiency_${liner}`,
        plain(1, bent(n[`friction_${liner}`], n.angle_deg * DEG)).efficiency,
      ]),
    ),
  "bowden-deflection-formula": (n) => ({
    lost_motion_mm:
      plain(n.output_load_N, bent(0.1, Math.log(n.input_load_N / n.output_load_N) / 0.1), {
        length: n.length_mm / 1000,
        construction: null,
        area: n.core_area_mm2 * 1e-6,
        modulus: n.modulus_N_per_mm2 * 1e6,
      }).stretch * 1000,
  }),
  "wire-rope-g-factor-stretch": (n) => ({
    stretch_percent: plain(n.load_lbf * LBF, bent(0, 0), { diameter: n.diameter_in * INCH, construction: "7x19-galvanised" }).stretch * 100,
  }),
  "wire-rope-g-factors": (n) => ({
    g_factor: (n.constructions as string[]).map(
      (name) => plain(LBF, bent(0, 0), { diameter: INCH, construction: constructions[name] as CableConstruction }).stretch * 100,
    ),
  }),
  "wire-rope-sheave-efficiency": () => ({
    efficiency: plain(1, {
      type: "pulleys",
      pulleys: [{ angle: Math.PI, pulleyDiameter: 0.03, pinDiameter: 0.005, bearingFriction: 0 }],
    }).efficiency,
  }),
  // each part of the line is one span further from the lead line
  "tackle-pipeline-rules-4part": (n) => {
    const sheave = { angle: Math.PI, pulleyDiameter: 0.1, pinDiameter: 0.01, bearingFriction: 0, bendingLoss: 1 - n.sheave_efficiency }
    const { spans, pullingForce } = plain(1, { type: "pulleys", pulleys: Array.from({ length: n.parts }, () => sheave) })
    const advantage = spans.slice(0, n.parts).reduce((sum, span) => sum + span.pulling, 0) / pullingForce
    return { advantage, lead_line_lbf: n.load_lbf / advantage }
  },
  "tackle-static-4part": (n) => {
    const sheave = { angle: Math.PI, pulleyDiameter: 0.1, pinDiameter: 0.01, bearingFriction: 0, bendingLoss: 0 }
    const { spans, pullingForce } = plain(1, { type: "pulleys", pulleys: Array.from({ length: n.parts - 1 }, () => sheave) })
    return { lead_line_lbf: (n.load_lbf * pullingForce) / spans.reduce((sum, span) => sum + span.pulling, 0) }
  },
}
