// Speeds, torques, play and inertia of a gear train, stage by stage, in SI.
import type { SiOf } from "../../solver/index.js"
import type { GearStageResult, GearTrain, GearTrainInput, PlanetaryPath } from "./types.js"

type Si = SiOf<GearTrainInput>
/** A stage in SI. */
export type StageSi = Si["stages"][number]
type PlanetarySi = Extract<StageSi, { type: "planetary" }>
type WormSi = Extract<StageSi, { type: "worm" }>

/** Friction that can be left in service of what a handbook or datasheet gives. */
const LEFT_IN_SERVICE = 0.5

/** Teeth of the planet that fits between sun and ring. */
export const planetTeeth = (stage: PlanetarySi): number => (stage.drivenTeeth - stage.drivingTeeth) / 2

interface Pair {
  readonly ratio: number
  readonly efficiency: number
}
/** Ring over sun teeth k and the efficiency of both meshes with the carrier held, to ratio and efficiency of each path (Willis). */
const paths: Readonly<Record<PlanetaryPath, (k: number, meshes: number) => Pair>> = {
  "sun-to-carrier": (k, e) => ({ ratio: 1 + k, efficiency: (1 + k * e) / (1 + k) }),
  "carrier-to-sun": (k, e) => ({ ratio: 1 / (1 + k), efficiency: (1 + k) / (1 + k / e) }),
  "ring-to-carrier": (k, e) => ({ ratio: (k + 1) / k, efficiency: (k + e) / (k + 1) }),
  "carrier-to-ring": (k, e) => ({ ratio: k / (k + 1), efficiency: (k + 1) / (k + 1 / e) }),
  "sun-to-ring": (k, e) => ({ ratio: k, efficiency: e }),
  "ring-to-sun": (k, e) => ({ ratio: 1 / k, efficiency: e }),
}
const turned = (path: PlanetaryPath): PlanetaryPath => path.split("-to-").reverse().join("-to-") as PlanetaryPath

/** Friction of a worm, as given or from its efficiency. */
export function wormFriction({ leadAngle, friction, wormEfficiency, pressureAngle }: WormSi): number {
  if (friction !== null) return friction
  const [slope, efficiency] = [Math.tan(leadAngle), wormEfficiency as number]
  return (Math.cos(pressureAngle) * (1 - efficiency)) / (efficiency / slope + slope)
}

/** Efficiency of a worm driving its wheel, and of the wheel driving the worm: below zero, it locks. */
export function wormEfficiencies(stage: WormSi, friction: number): { readonly forward: number; readonly backward: number } {
  const [slope, flank] = [Math.tan(stage.leadAngle), Math.cos(stage.pressureAngle)]
  return {
    forward: (flank - friction * slope) / (flank + friction / slope),
    backward: (flank - friction / slope) / (flank + friction * slope),
  }
}

interface Stage extends Pair {
  readonly backward: number
  /** Whether it still locks with half of its friction. */
  readonly holds: boolean
  /** −1 where its output turns the other way. */
  readonly sense: 1 | -1
}

function stageOf(si: StageSi): Stage {
  if (si.type === "worm") {
    const friction = wormFriction(si)
    const { forward, backward } = wormEfficiencies(si, friction)
    const holds = wormEfficiencies(si, LEFT_IN_SERVICE * friction).backward < 0
    return { ratio: si.drivenTeeth / si.drivingTeeth, efficiency: forward, backward, holds, sense: 1 }
  }
  if (si.type === "spur")
    return {
      ratio: si.drivenTeeth / si.drivingTeeth,
      efficiency: si.meshEfficiency,
      backward: si.meshEfficiency,
      holds: false,
      sense: -1,
    }
  const [k, meshes] = [si.drivenTeeth / si.drivingTeeth, si.meshEfficiency ** 2]
  const sense = si.path === "sun-to-ring" || si.path === "ring-to-sun" ? -1 : 1
  return { ...paths[si.path](k, meshes), backward: paths[turned(si.path)](k, meshes).efficiency, holds: false, sense }
}

/** Torque at a stage's driving shaft for one at its driven shaft; friction always takes its part. */
const drivingTorque = (stage: Stage, driven: number): number =>
  (driven / stage.ratio) * (driven < 0 ? stage.backward : 1 / stage.efficiency)

/** Forces at the teeth of a stage, where its module is known. */
function forces(si: StageSi, driving: number, driven: number, held: number): Pick<GearStageResult, "toothForce" | "shaftForce"> {
  if (si.module === null) return { toothForce: null, shaftForce: null }
  const force = (torque: number, teeth: number) => Math.abs(torque) / ((si.module as number) * (teeth / 2))
  if (si.type === "planetary") {
    const [from, , to] = si.path.split("-")
    const sun = from === "sun" ? driving : to === "sun" ? driven : held
    return { toothForce: force(sun, si.drivingTeeth) / si.planets, shaftForce: null }
  }
  const toothForce = force(driven, si.drivenTeeth)
  return { toothForce, shaftForce: si.type === "spur" ? toothForce / Math.cos(si.pressureAngle) : null }
}

/** Smaller and larger gear of a spur pair, or of sun and planet. */
export function externalPair(si: StageSi): readonly [small: number, large: number] {
  const other = si.type === "planetary" ? planetTeeth(si) : si.drivenTeeth
  return [Math.min(si.drivingTeeth, other), Math.max(si.drivingTeeth, other)]
}

/** Fewest teeth of the smaller of two standard full-depth gears, before the tips of the larger dig below its base circle. */
function fewestTeeth(si: StageSi): number | null {
  if (si.type === "worm" || si.pressureAngle < Math.PI / 18) return null
  const [small, large] = externalPair(si)
  const g = small / large
  return Math.ceil((2 * g) / (Math.sqrt(1 + g * (g + 2) * Math.sin(si.pressureAngle) ** 2) - 1) - 1e-9)
}

/** Torques from the output to the input, then what follows from them. */
export function solve(si: Si): GearTrain {
  const stages = si.stages.map(stageOf)
  const results: GearStageResult[] = []
  let [torque, following] = [si.torque, 1]
  for (let k = stages.length - 1; k >= 0; k--) {
    const [given, stage] = [si.stages[k] as StageSi, stages[k] as Stage]
    const driving = drivingTorque(stage, torque)
    const held = stage.sense * torque - driving
    results.unshift({
      ratio: stage.ratio,
      efficiency: stage.efficiency,
      backwardEfficiency: stage.backward,
      drivingTorque: driving,
      drivenTorque: torque,
      heldTorque: given.type === "planetary" ? held : null,
      ...forces(given, driving, torque, held),
      fewestTeeth: fewestTeeth(given),
      backlashShare: given.backlash / following,
    })
    torque = driving
    following *= stage.ratio
  }
  const ratio = following
  const backlash = results.reduce((sum, r) => sum + r.backlashShare, 0)
  const locksAtFriction = stages.some((s) => s.backward <= 0)
  const backwardEfficiency = locksAtFriction ? null : stages.reduce((product, s) => product * s.backward, 1)
  const inputTorque = torque + si.dragTorque
  const returnTorque = stages.reduceRight((driven, stage) => drivingTorque(stage, driven), -si.torque) + si.dragTorque
  const crossed = si.stages.some((s) => s.type === "worm")
  const sense = stages.reduce((product, s) => product * s.sense, 1)
  let [inertiaAtInput, before] = [si.inputInertia, 1]
  stages.forEach((stage, k) => {
    before *= stage.ratio
    inertiaAtInput += (si.stages[k] as StageSi).inertia / before ** 2
  })
  inertiaAtInput += si.loadInertia / ratio ** 2
  const outputSpeed = si.inputSpeed === null ? null : si.inputSpeed / ratio
  const inputPower = si.inputSpeed === null ? null : inputTorque * si.inputSpeed
  const outputPower = outputSpeed === null ? null : si.torque * outputSpeed
  return {
    transmits: "both-ways",
    ratio,
    reverses: crossed ? null : sense < 0,
    efficiency: stages.reduce((product, s) => product * s.efficiency, 1),
    backwardEfficiency,
    locksAtFriction,
    selfLocking: stages.some((s) => s.holds),
    inputTorque,
    returnTorque,
    backDriveTorque: backwardEfficiency === null ? null : (si.dragTorque * ratio) / backwardEfficiency,
    housingTorque: crossed ? null : sense * si.torque - inputTorque,
    inertiaAtInput,
    inertiaAtOutput: inertiaAtInput * ratio ** 2,
    backlash,
    tipPlay: si.tipRadius === null ? null : backlash * si.tipRadius,
    outputSpeed,
    inputPower,
    outputPower,
    heat: inputPower === null || outputPower === null ? null : inputPower - outputPower,
    stages: results.map((r) => ({ ...r, backlashShare: backlash > 0 ? r.backlashShare / backlash : 0 })),
  }
}

/** Torque that each stage lets through, against one without loss: by the way that power flows in it. */
export const letThrough = (out: Pick<GearTrain, "stages">): number[] =>
  out.stages.map((s) => (s.drivenTorque < 0 ? s.backwardEfficiency : 1 / s.efficiency))

/** The same with the motion reversed: what flowed in flows out, until a stage locks and has to be driven. */
export function letThroughReturning(si: Pick<Si, "torque">, out: Pick<GearTrain, "stages">): number[] {
  let driven = -si.torque
  const fromLast = [...out.stages].reverse().map((s) => {
    const share = driven < 0 ? s.backwardEfficiency : 1 / s.efficiency
    driven *= share
    return share
  })
  return fromLast.reverse()
}

/** Turns of the input for one turn of each stage's output. */
export function whollyFrom(out: Pick<GearTrain, "stages">): number[] {
  let before = 1
  return out.stages.map((s) => {
    before *= s.ratio
    return before
  })
}
