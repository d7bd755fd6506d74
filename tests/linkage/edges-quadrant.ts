import { type CableQuadrantInput, cableQuadrant } from "../../src/linkage/index.js"
import type { SiOf } from "../../src/solver/index.js"
import type { Edges } from "../helpers/edges.js"

const second = { type: "cable", radius: "50 mm", stiffness: "60 N/mm", wrap: "20 deg", rimAngle: "200 deg" }
const spring = { type: "spring", radius: "50 mm", springRate: "500 N/m" }

/**
 * Pretension at which the looser cable just carries nothing: the drive held, the quadrant is turned until its moments balance, at
 * many angles, both ways.
 */
function needed(si: SiOf<CableQuadrantInput>): number {
  const back = si.returnedBy
  const rho = (si.pinFriction * si.pinDiameter) / 2
  const weight = 9.80665 * si.masses.reduce((sum, m) => sum + m.mass, 0)
  const asks = (turned: number) => {
    const q = si.startAngle + turned
    const moment = si.masses.reduce((sum, m) => sum + 9.80665 * m.mass * m.radius * Math.cos(q + m.angle + si.frameTilt), si.loadMoment)
    let most = 0
    for (const sense of [1, -1]) {
      const asked = moment + sense * (si.opposingMoment + rho * weight)
      const pulls = (pretension: number): [number, number] => {
        if (back.type === "spring") {
          const pull = pretension + back.springRate * back.radius * turned
          return [asked + pull * (back.radius + sense * rho), pull]
        }
        // (p + k1·r1·x)·(r1 ∓ ρ) − (p·r1/r2 − k2·r2·x)·(r2 ± ρ) = asked, for x
        const [one, two] = [si.radius - sense * rho, back.radius + sense * rho]
        const x =
          (asked - pretension * one + ((pretension * si.radius) / back.radius) * two) /
          (si.cableStiffness * si.radius * one + back.stiffness * back.radius * two)
        return [pretension + si.cableStiffness * si.radius * x, (pretension * si.radius) / back.radius - back.stiffness * back.radius * x]
      }
      // both pulls grow evenly with the pretension: where the line between two of them meets nought
      const [slack, taut] = [pulls(0), pulls(1000)]
      for (const k of [0, 1] as const) most = Math.max(most, (-1000 * slack[k]) / (taut[k] - slack[k]))
    }
    return most
  }
  const step = si.travel / 1000
  const places = Array.from({ length: 1001 }, (_, k) => k * step)
  const worst = places.reduce((best, place) => (asks(place) > asks(best) ? place : best))
  let [low, high] = [Math.max(0, worst - step), Math.min(si.travel, worst + step)]
  for (let k = 0; k < 80; k++) {
    const [one, two] = [low + (high - low) / 3, high - (high - low) / 3]
    if (asks(one) > asks(two)) high = two
    else low = one
  }
  return Math.max(asks(0), asks(si.travel), asks((low + high) / 2))
}

export const edges: Edges = {
  cautions: [
    { solver: cableQuadrant, code: "pinch", severity: "warning", shown: {}, notShown: null },
    { solver: cableQuadrant, code: "falls-unpowered", severity: "warning", shown: {}, notShown: null },
    { solver: cableQuadrant, code: "stored-energy", severity: "warning", shown: {}, notShown: null },
    // 60° of travel leave ten
    { solver: cableQuadrant, code: "little-wrap", severity: "caution", shown: { wrap: "69.9 deg" }, notShown: { wrap: "70.1 deg" } },
    {
      solver: cableQuadrant,
      code: "little-wrap",
      severity: "caution",
      shown: { returnedBy: { ...second, rimAngle: "89.9 deg" } },
      notShown: { returnedBy: { ...second, rimAngle: "90.1 deg" } },
    },
    {
      solver: cableQuadrant,
      code: "retension",
      severity: "note",
      shown: {},
      notShown: { returnedBy: spring },
    },
  ],
  refusals: [
    { solver: cableQuadrant, code: "runs-off-rim", refused: { wrap: "59.9 deg" }, answered: { wrap: "60.1 deg" } },
    {
      solver: cableQuadrant,
      code: "runs-off-rim",
      refused: { returnedBy: { ...second, rimAngle: "79.9 deg" } },
      answered: { returnedBy: { ...second, rimAngle: "80.1 deg" } },
    },
    { solver: cableQuadrant, code: "goes-slack", refused: { pretension: 28.8 }, answered: { pretension: 28.85 } },
  ],
  faults: [
    {
      solver: cableQuadrant,
      path: "pinDiameter",
      faulty: { pinDiameter: "100 mm", pinFriction: 0 },
      sound: { pinDiameter: "99.9 mm", pinFriction: 0 },
    },
  ],
  numbers: {
    "cableQuadrant.runs-off-rim.shortBy": (si) =>
      Math.max(si.travel - si.wrap, si.returnedBy.type === "cable" ? si.returnedBy.wrap + si.travel - si.returnedBy.rimAngle : 0),
    "cableQuadrant.goes-slack.shortBy": (si) => needed(si) - si.pretension,
    "cableQuadrant.goes-slack.at.required": needed,
    "cableQuadrant.little-wrap.left": (si) =>
      Math.min(si.wrap - si.travel, si.returnedBy.type === "cable" ? si.returnedBy.rimAngle - si.returnedBy.wrap - si.travel : 1e9),
    "cableQuadrant.pinDiameter.across": (si) => 2 * Math.min(si.radius, si.returnedBy.radius),
  },
}
