import { type NoSolution, refuse, type SiOf } from "../../../solver/index.js"
import { statureFractions } from "../../body/data-segments.js"
import { bodyCentreShare, overturnFactor, usableFoot } from "../data-balance.js"
import { beaufortForce, pedestrianWind } from "../data-wind.js"
import type { Overturning, OverturningInput, OverturningRefusal } from "./types.js"

type Si = SiOf<OverturningInput>

const GRAVITY = 9.80665
/** A level reach of so small a share of the usable distance holds nothing. */
const LEAST = 1e-9

/** Length of the stance along the way the wearer would tip. */
export function baseOf(si: Si): number {
  return si.windFrom === "side" ? si.stanceWidth : si.footLength + si.stagger
}

/** From the weight's line to the edge of the feet, along the ground. */
export function edgeOf(si: Si): number {
  if (si.edgeDistance !== null) return si.edgeDistance
  const base = baseOf(si)
  if (si.windFrom === "side") return base / 2
  return si.windFrom === "front" ? si.heelShare * base + si.weightOffset : (1 - si.heelShare) * base - si.weightOffset
}

/** How far the ground under the feet falls towards the side tipped over, rad: the slope as seen, and what the unseen drop adds. */
export function groundOf(si: Si): { readonly slope: number; readonly drop: number } {
  return {
    slope: Math.atan(Math.tan(si.slope) * Math.cos(si.slopeDirection)),
    drop: si.stepHeight === null ? 0 : Math.atan(si.stepHeight / baseOf(si)),
  }
}

/** Where a push acts, above the ground: as given or the shoulders. */
export const pushHeightOf = (si: Si): number => si.pushHeight ?? statureFractions.shoulderHeight * si.stature

function centreOf(si: Si): number {
  const rig = si.rigCentreHeight ?? statureFractions.shoulderHeight * si.stature
  return (si.bodyMass * bodyCentreShare * si.stature + si.rigMass * rig) / (si.bodyMass + si.rigMass)
}

/** An inverted pendulum sways from a momentum as from a steady force of this times as much, 1/s. */
const swayOf = (centreHeight: number): number => Math.sqrt(GRAVITY / centreHeight)

/** Push and bump as one steady force; whoever bumps stops there, so that the wearer takes all the momentum. */
export const pushOf = (si: Si, centreHeight: number): number =>
  si.pushForce + swayOf(centreHeight) * (si.bumpMass ?? 0) * (si.bumpSpeed ?? 0)

/** Moments about one edge: what the weight holds, and levers of wind and push, m; what acts no higher than the edge tips nobody over it. */
interface Stance {
  readonly lever: number
  readonly windLever: number
  readonly pushLever: number
}

/**
 * On a slope that is seen the wearer stands plumb, so only the edge lies nearer and lower; an unseen drop tilts the whole body
 * with the feet.
 */
function stanceOn(si: Si, edge: number): Stance {
  const { slope, drop } = groundOf(si)
  const below = edge * Math.sin(slope + drop)
  return {
    lever: edge * Math.cos(slope + drop) - centreOf(si) * Math.sin(drop),
    windLever: Math.max(0, si.forceHeight * Math.cos(drop) + below),
    pushLever: Math.max(0, pushHeightOf(si) * Math.cos(drop) + below),
  }
}

/** Unseen drop at which the weight comes over an edge by itself. */
function dropLimit(si: Si, edge: number): number {
  const { slope } = groundOf(si)
  return (baseOf(si) * (edge * Math.cos(slope))) / (centreOf(si) + edge * Math.sin(slope))
}

export function solve(si: Si): Overturning | NoSolution<OverturningRefusal> {
  const { gustFactor, walkingSpeed, windSpeed, safetyFactor } = si
  const weight = (si.bodyMass + si.rigMass) * GRAVITY
  const edgeDistance = edgeOf(si)
  const usableEdgeDistance = si.usableShare * edgeDistance
  const stance = stanceOn(si, usableEdgeDistance)
  if (!(stance.lever > LEAST * usableEdgeDistance)) {
    const most = dropLimit(si, usableEdgeDistance) * (1 - 1e-6)
    return refuse(
      "cannot-balance",
      "The drop under the feet tips the wearer by itself, without wind or push: the weight comes {shortBy length mm} past what the stance holds. Fill or mark the drop, take a wider stance, or keep to ground that falls by less than {nearest.stepHeight length mm}.",
      2 * LEAST * usableEdgeDistance - stance.lever,
      {},
      { stepHeight: most },
    )
  }
  const published = stanceOn(si, usableFoot * edgeDistance)
  const rigid = stanceOn(si, edgeDistance)
  const half = si.airDensity / 2
  const centreHeight = centreOf(si)
  const push = pushOf(si, centreHeight)
  const gustSpeed = gustFactor * windSpeed
  const air = gustSpeed + walkingSpeed
  const own = pedestrianWind.unbalancingGust ** -2
  const bodyUtilisation = own * air ** 2
  // walking alone may already be too much: then there is no wind to wait for and the answer is zero
  const meanOf = (speed: number) => Math.max(0, (speed - walkingSpeed) / gustFactor)
  const rigOf = (s: Stance) => half * si.dragArea * s.windLever
  const windFor = (s: Stance, factor: number) => {
    const held = weight * s.lever
    return held > 0 ? meanOf(Math.sqrt(Math.max(0, 1 - (factor * push * s.pushLever) / held) / (own + (factor * rigOf(s)) / held))) : 0
  }
  const pushFor = (s: Stance, factor: number) =>
    s.pushLever > 0 ? [Math.max(0, ((1 - bodyUtilisation) * weight * s.lever) / factor - rigOf(s) * air ** 2) / s.pushLever] : []
  const restoringMoment = weight * stance.lever
  const restoringMomentRigid = weight * rigid.lever
  const tipWindSpeed = windFor(stance, safetyFactor)
  const publishedTipWindSpeed = windFor(published, overturnFactor)
  const foldWindSpeed = Math.min(tipWindSpeed, publishedTipWindSpeed, pedestrianWind.unpleasant)
  const windMoment = rigOf(stance) * air ** 2
  const pushMoment = push * stance.pushLever
  const pushLimits = [...pushFor(stance, safetyFactor), ...pushFor(published, overturnFactor)]
  const pushForceLimit = pushLimits.length ? Math.min(...pushLimits) : null
  const rigidWind = rigOf(rigid)
  return {
    edgeDistance,
    usableEdgeDistance,
    leverArm: stance.lever,
    centreHeight,
    weight,
    gustSpeed,
    windMoment,
    bodyMoment: half * si.bodyDragArea * bodyCentreShare * si.stature * air ** 2,
    pushMoment,
    restoringMoment,
    restoringMomentRigid,
    rigUtilisation: windMoment / restoringMoment,
    rigUtilisationRigid: (rigidWind * air ** 2) / restoringMomentRigid,
    pushUtilisation: pushMoment / restoringMoment,
    bodyUtilisation,
    utilisation: bodyUtilisation + (safetyFactor * (windMoment + pushMoment)) / restoringMoment,
    fold: windSpeed >= foldWindSpeed,
    tipWindSpeed,
    publishedTipWindSpeed,
    tipWindSpeedRigid: rigidWind > 0 ? meanOf(Math.sqrt(restoringMomentRigid / rigidWind)) : null,
    bodyWindSpeed: meanOf(pedestrianWind.unbalancingGust),
    foldWindSpeed,
    foldBeaufort: beaufortForce(foldWindSpeed),
    requiredEdgeDistance: requiredEdge(si, half * si.dragArea * air ** 2, push, bodyUtilisation),
    pushForceLimit,
    bumpSpeedLimit:
      si.bumpMass === null || pushForceLimit === null
        ? null
        : Math.max(0, pushForceLimit - si.pushForce) / (swayOf(centreHeight) * si.bumpMass),
    stepHeightLimit: si.edgeDistance === null ? dropLimit(si, Math.min(si.usableShare, usableFoot) * edgeDistance) : null,
  }
}

/** Edge at which wind and push just use up the stance; what the edge adds to the levers is part of it. */
function requiredEdge(si: Si, drag: number, push: number, bodyUtilisation: number): number | null {
  const { slope, drop } = groundOf(si)
  const holds = (1 - bodyUtilisation) * (si.bodyMass + si.rigMass) * GRAVITY
  const gains = (force: number) => holds * Math.cos(slope + drop) - si.safetyFactor * force * Math.sin(slope + drop)
  if (!(bodyUtilisation < 1 && gains(drag + push) > 0)) return null
  const needed = (wind: number, pushed: number) =>
    (si.safetyFactor * (wind * si.forceHeight + pushed * pushHeightOf(si)) * Math.cos(drop) + holds * centreOf(si) * Math.sin(drop)) /
    (si.usableShare * gains(wind + pushed))
  // one that would pull back from below the edge counts for nothing, so whichever of them asks for the most edge
  return Math.max(needed(drag, push), needed(drag, 0), needed(0, push), needed(0, 0))
}
