import type { Step } from "../../solver/index.js"
import { virtualWork } from "../sources.js"
import type { Si } from "./input.js"
import type { PlanarTrace } from "./kernel.js"
import type { Model } from "./model.js"
import type { PlanarLinkage } from "./output.js"
import { pointRates } from "./solve.js"

/** Forward route: work of all loads for a unit motion of each driver, at the end pose. */
function workOf({ model, pose, applied }: PlanarTrace): number[] {
  return model.drivers.map((_, k) => {
    const unit = pointRates(
      model,
      pose,
      model.drivers.map((_, i) => (i === k ? 1 : 0)),
    )
    return unit.reduce((sum, u, i) => sum + u * (applied[i] as number), 0)
  })
}

/** The working of planarLinkage, in order. */
export const planarFormulae: readonly Step<Si, PlanarLinkage, PlanarTrace>[] = [
  { symbol: "n_p", kind: "number", meaning: "moving points", given: (si) => si.points.length },
  { symbol: "n_b", kind: "number", meaning: "bars", given: (si) => si.bars.length },
  { symbol: "n_c", kind: "number", meaning: "carried points", given: (si) => si.carried.length },
  { symbol: "n_s", kind: "number", meaning: "sliders", given: (si) => si.sliders.length },
  { symbol: "f", meaning: "coordinates less constraints", is: "2 * n_p - n_b - 2 * n_c - n_s" },
  { symbol: "N_J", kind: "number", meaning: "largest row sum of the Jacobian", given: (_si, _out, { direct }) => direct as number },
  { symbol: "N_I", kind: "number", meaning: "largest row sum of its inverse", given: (_si, _out, { inverse }) => inverse as number },
  { symbol: "kappa", meaning: "distance from singular", is: "1 / (N_J * N_I)" },
  {
    symbol: "N_m",
    kind: "number",
    meaning: "both row sums multiplied at the pose nearest to singular",
    given: (_si, _out, { worst }) => (worst as PlanarTrace["worst"]).direct * (worst as PlanarTrace["worst"]).inverse,
  },
  { symbol: "kappa_m", meaning: "smallest distance from singular", is: "1 / N_m" },
  { symbol: "s_m", kind: "number", meaning: "share of the motion of that pose", given: (_si, out) => out.minConditioningShare },
  { symbol: "rho_p", kind: "length", meaning: "friction radius of the pins", is: "mu * d_p / 2" },
  {
    symbol: "N_f",
    kind: "number",
    meaning: "force times turning speed of all pins that rub, N/s",
    given: (_si, _out, { rubbing }) => rubbing as number,
  },
  { symbol: "P_f", meaning: "power lost in friction at the pins", is: "rho_p * (N_f * N / s)" },
  {
    symbol: "l_b",
    kind: "length",
    meaning: "length of each bar as given or sketched",
    given: (_si, _out, { model }) => (model as Model).rows.flatMap((row) => (row.kind === "bar" ? [row.length] : [])),
  },
  {
    symbol: "x_b",
    kind: "length",
    meaning: "each bar's run in x, solved",
    given: (_, out) => out.bars.map((b) => b.length * Math.cos(b.angle)),
  },
  {
    symbol: "y_b",
    kind: "length",
    meaning: "each bar's run in y, solved",
    given: (_, out) => out.bars.map((b) => b.length * Math.sin(b.angle)),
  },
  { left: "sum(x_b .* x_b) + sum(y_b .* y_b)", right: "sum(l_b .* l_b)", meaning: "every bar has its length" },
  {
    symbol: "Q",
    kind: "number",
    meaning: "effort of each driver, N·m or N",
    given: (_, out) => out.drivers.map((d) => d.torque ?? d.force ?? 0),
  },
  {
    symbol: "W",
    kind: "number",
    meaning: "work of loads, weights, inertia and friction per unit motion of each driver, N·m or N",
    given: (_si, _out, trace) => workOf(trace as PlanarTrace),
  },
  {
    left: "1 + sum(abs(Q)) + sum(Q)",
    right: "1 + sum(abs(Q)) - sum(W)",
    meaning: "virtual work of drivers and loads adds up to zero",
    source: virtualWork,
  },
]
