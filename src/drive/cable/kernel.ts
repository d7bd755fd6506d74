// Tension along a cable, pulling and paying out, and what follows from it.
import { interpolate } from "../../numeric/index.js"
import { type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { bentStrength } from "../winch/data.js"
import { cableConstructions } from "./data.js"
import type { Cable, CableInput, CableRefusal, CableSpan } from "./types.js"

type Si = SiOf<CableInput>
const LBF_PER_IN2 = 4.4482216152605 / 0.0254 ** 2

/** Axial stiffness E·A, N. */
export const axialStiffness = (si: Si): number =>
  si.construction === null
    ? (si.modulus as number) * (si.area as number)
    : (100 / cableConstructions[si.construction].stretchFactor) * LBF_PER_IN2 * si.diameter ** 2

/** Tensions on either side of a pulley in balance: pull and load a chord apart on its rim, the bearing rubbing under both. */
function pulleyRatio(angle: number, grip: number): number {
  const q = (2 * (grip * Math.sin(angle / 2)) ** 2) / ((1 - grip) * (1 + grip))
  return 1 + q + Math.sqrt(q * (q + 2))
}

/** Each bend: how far it turns, its radius, the tension before it over that behind it. */
export function bendsOf({ route }: Si): { angle: number; radius: number; ratio: number }[] {
  if (route.type === "sheath") return route.bends.map(({ angle, radius }) => ({ angle, radius, ratio: Math.exp(route.friction * angle) }))
  return route.pulleys.map((p) => ({
    angle: p.angle,
    radius: p.pulleyDiameter / 2,
    ratio: pulleyRatio(p.angle, (p.bearingFriction * p.pinDiameter) / p.pulleyDiameter) / (1 - p.bendingLoss),
  }))
}

export function kernel(si: Si): Cable | NoSolution<CableRefusal> {
  const { force, travel, length, route } = si
  const bends = bendsOf(si)
  const spans: CableSpan[] = [{ turned: 0, pulling: force, payingOut: force }]
  for (const { angle, ratio } of bends) {
    const { turned, pulling, payingOut } = spans.at(-1) as CableSpan
    spans.push({ turned: turned + angle, pulling: pulling * ratio, payingOut: payingOut / ratio })
  }
  const { turned, pulling, payingOut } = spans.at(-1) as CableSpan
  const minRadius = Math.min(...bends.map((b) => b.radius))
  const bendRatio = (2 * minRadius) / si.diameter
  const strengthShare = interpolate(bentStrength, bendRatio)
  const strength = si.breakingForce * strengthShare
  if (!(pulling < strength))
    return refuse(
      "breaks",
      "The drive would have to pull with {pulling force}, {shortBy force} more than the {strength force} at which the cable breaks in its tightest bend. Bend it less, take less friction or a stronger cable, or pull less.",
      Math.max(pulling - strength, 1e-6 * strength),
      { pulling, strength },
      { force: (0.999 * force * strength) / pulling, breakingForce: (1.001 * pulling) / strengthShare },
    )
  const sheathRate = route.type === "sheath" ? route.sheathRate : null
  const bore = route.type === "sheath" ? route.sheathBore : null
  const [own, sheath] = [length / axialStiffness(si), sheathRate === null ? 0 : 1 / sheathRate]
  const [meanPulling, meanPayingOut] = [(force + pulling) / 2, (force + payingOut) / 2]
  const lostMotion = meanPulling * (own + sheath)
  return {
    transmits: "pull-only",
    turnedAngle: turned,
    pullingForce: pulling,
    payingOutForce: payingOut,
    efficiency: force / pulling,
    backwardEfficiency: payingOut / force,
    stretch: meanPulling * own,
    sheathShortening: sheathRate === null ? null : meanPulling * sheath,
    lostMotion,
    driveTravel: travel + lostMotion + (bore === null ? 0 : turned * (bore - si.diameter)),
    reversalLoss: (meanPulling - meanPayingOut) * (own + sheath),
    slackPlay: bore === null ? null : turned * (bore - si.diameter),
    workIn: pulling * travel,
    workOut: force * travel,
    frictionWork: (pulling - force) * travel,
    returnedWork: payingOut * travel,
    storedEnergy: (pulling ** 2 * (own + sheath)) / 2,
    minRadius,
    bendRatio,
    strengthShare,
    safetyFactor: strength / pulling,
    bendUtilisation: si.minBendRadius === null ? null : si.minBendRadius / minRadius,
    spans,
  }
}
