import { standardGravity } from "../../linkage/index.js"
import { armModel } from "../../rig/motion/arms.js"
import { constantsOf } from "../../rig/move/move.js"
import { quickMove } from "../../rig/move/quick.js"
import { raiseDirection } from "../../rig/move/summary.js"
import { circuitOf, supplyChain } from "../../rig/power/circuit.js"
import type { Built } from "./faults.js"

/** What can be measured on a built rig. */
export type MeasureName =
  | "raiseTime"
  | "lowerTime"
  | "swing"
  | "restVoltage"
  | "sourceSag"
  | "sourceDrop"
  | "loadDrop"
  | "actuatorVoltage"
  | "actuatorCurrent"
  | "sourceCurrent"
  | "tipForceUp"
  | "tipForceDown"

/** Parts that can be felt to be warm. */
export type WarmPart = "source" | "wires" | "converter" | "actuators"

/** One measure: how it is taken, and what it costs to take. */
export interface Measure {
  readonly label: string
  readonly kind: "time" | "angle" | "voltage" | "current" | "force"
  readonly how: string
  /** Uncertainty of an ordinary tool, SI; common practice, no source. */
  readonly usual: number
  /** Whether it also strays with the parts' datasheets; a voltage difference does not. */
  readonly strays: boolean
  /** Trouble it takes: 1 needs nothing but a phone, 2 a cheap meter, 3 a meter and opening the circuit. */
  readonly effort: number
}

/** The measures known, by name. */
export const measures: Readonly<Record<MeasureName, Measure>> = {
  raiseTime: { label: "time up", kind: "time", how: "film one raise and count the seconds", usual: 0.2, strays: true, effort: 1 },
  lowerTime: { label: "time down", kind: "time", how: "film one lowering and count the seconds", usual: 0.2, strays: true, effort: 1 },
  swing: {
    label: "swing",
    kind: "angle",
    how: "photograph both ends square on and measure the angle",
    usual: 0.026,
    strays: false,
    effort: 1,
  },
  restVoltage: {
    label: "source voltage at rest",
    kind: "voltage",
    how: "voltmeter across the source with everything still",
    usual: 0.05,
    strays: false,
    effort: 2,
  },
  sourceSag: {
    label: "sag of the source while raising",
    kind: "voltage",
    how: "voltmeter across the source's own terminals, at rest less during a raise",
    usual: 0.02,
    strays: false,
    effort: 2,
  },
  sourceDrop: {
    label: "voltage lost between source and converter (or actuators) while raising",
    kind: "voltage",
    how: "voltmeter at both ends of that run during a raise, the difference",
    usual: 0.02,
    strays: false,
    effort: 2,
  },
  loadDrop: {
    label: "voltage lost between converter and actuators while raising",
    kind: "voltage",
    how: "voltmeter at both ends of that run during a raise, the difference",
    usual: 0.02,
    strays: false,
    effort: 2,
  },
  actuatorVoltage: {
    label: "voltage at the actuators while raising",
    kind: "voltage",
    how: "voltmeter across the actuator's leads during a raise",
    usual: 0.05,
    strays: false,
    effort: 2,
  },
  actuatorCurrent: {
    label: "current of all actuators while raising",
    kind: "current",
    how: "clamp meter or meter in line before the actuators during a raise",
    usual: 0.03,
    strays: true,
    effort: 3,
  },
  sourceCurrent: {
    label: "current from the source while raising",
    kind: "current",
    how: "meter in line after the source during a raise",
    usual: 0.03,
    strays: true,
    effort: 3,
  },
  tipForceUp: {
    label: "force at the tip to lift the level arm",
    kind: "force",
    how: "unpin the rod, lift the tip slowly through level with a luggage scale",
    usual: 0.3,
    strays: true,
    effort: 1.5,
  },
  tipForceDown: {
    label: "force at the tip to let the level arm down",
    kind: "force",
    how: "unpin the rod, let the tip sink slowly through level on a luggage scale",
    usual: 0.3,
    strays: true,
    effort: 1.5,
  },
}

/** What a built rig would show, SI; null for a measure it does not have. */
export interface Showing {
  readonly values: Readonly<Record<MeasureName, number>>
  /** Heat of each part over one raise, J. */
  readonly heat: Readonly<Record<WarmPart, number>>
}

/** Predicts every measure of a built rig; null where it stalls or cannot move. */
export function showing(built: Built): Showing | null {
  const { rig, shortfall } = built
  const arms = rig.hinged
  if (!arms) return null
  const whole = supplyChain(rig)
  const chain = { ...whole, openVoltage: whole.openVoltage - shortfall }
  const arm = armModel(arms)
  const model = { arms, arm, constants: constantsOf(arms), circuit: circuitOf(chain), breaks: [] }
  const up = raiseDirection(rig)
  const raise = quickMove(model, up)
  const lower = quickMove(model, up === 1 ? -1 : 1)
  if (!raise || !lower) return null
  const tip = Math.max(...arms.masses.map((m) => m.radius))
  // level arm: the moment of weight alone, as the scale meets it with rod and spring off
  const level = standardGravity * arms.masses.reduce((sum, m) => sum + m.mass * m.radius * Math.cos(m.angle + arms.frameTilt), 0)
  return {
    values: {
      raiseTime: raise.time,
      lowerTime: lower.time,
      swing: Math.abs(raise.to - raise.from),
      restVoltage: chain.openVoltage,
      sourceSag: raise.meanSourceCurrent * chain.sourceResistance,
      sourceDrop: raise.meanSourceCurrent * (chain.lineResistance + (chain.converter ? 0 : chain.loadResistance)),
      loadDrop: chain.converter ? raise.meanCurrent * chain.loadResistance : 0,
      actuatorVoltage: raise.meanVoltage,
      actuatorCurrent: raise.meanCurrent,
      sourceCurrent: raise.meanSourceCurrent,
      tipForceUp: tip > 0 ? (level + arms.hingeFriction) / tip : 0,
      tipForceDown: tip > 0 ? (level - arms.hingeFriction) / tip : 0,
    },
    heat: {
      source: raise.sourceLoss,
      wires: raise.lineLoss + raise.loadLineLoss,
      converter: raise.converterLoss,
      actuators: raise.winding,
    },
  }
}
