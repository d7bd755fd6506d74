// A roller chain on two sprockets.
import { LEAST_FACTOR } from "../../drive/chain-drive/cautions.js"
import { input as chainFields } from "../../drive/chain-drive/fields.js"
import { kernel as chainOf } from "../../drive/chain-drive/kernel.js"
import { chainDrive } from "../../drive/index.js"
import type { Force, Length, Ratio } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { rigid, type TransmissionMember } from "./transmission.js"

/** A roller chain. */
export interface ChainElement {
  type: "chain"
  /** Distance from pin to pin. [p; 2 to 150 mm] */
  pitch: Length
  /** Teeth of the driving sprocket [z_1; whole 6 to 300] */
  drivingTeeth: number
  /** Teeth of the driven sprocket [z_2; whole 6 to 300] */
  drivenTeeth: number
  /** Distance between the shafts. [C; 10 mm to 50 m] */
  centreDistance: Length
  /** Jolts as a multiple of the steady pull: 1 smooth, 1.5 with starts and stops, 2 with blows. [K; 1 to 5; default 1.5] */
  shockFactor?: number
  /** Force at which the chain breaks, by its standard or its maker. [F_b; 1 N to 100000 kN; optional] */
  breakingForce?: Force | null
  /** Share of the work that joints, teeth and bearings leave. [eta; 50 to 100 %; default 96 %] */
  efficiency?: Ratio
  /** The same where the load drives; as the other way when left out. [eta_g; 30 to 100 %; optional] */
  backwardEfficiency?: Ratio | null
}

const asked = (si: SiOf<ChainElement>) => ({
  pitch: si.pitch,
  drivingTeeth: si.drivingTeeth,
  drivenTeeth: si.drivenTeeth,
  centreDistance: si.centreDistance,
  shockFactor: si.shockFactor,
  breakingForce: si.breakingForce,
  efficiency: si.efficiency,
  backwardEfficiency: si.backwardEfficiency,
  torque: 1,
  inputSpeed: null,
  linearDensity: 0,
})

/** A chain, its corners averaged out. */
export const chain: TransmissionMember<ChainElement> = {
  type: "chain",
  label: "roller chain on two sprockets",
  fields: {
    pitch: chainFields.pitch,
    drivingTeeth: chainFields.drivingTeeth,
    drivenTeeth: chainFields.drivenTeeth,
    centreDistance: chainFields.centreDistance,
    shockFactor: chainFields.shockFactor,
    breakingForce: chainFields.breakingForce,
    efficiency: chainFields.efficiency,
    backwardEfficiency: chainFields.backwardEfficiency,
  },
  check: (si) => domainFaults(chainDrive, asked(si)),
  build(si) {
    const out = chainOf(asked(si))
    const ratio = 1 / out.ratio
    return {
      ...rigid,
      takes: "angle",
      gives: "angle",
      out: (travel) => ratio * travel,
      ratio: () => ratio,
      forward: si.efficiency,
      backward: si.backwardEfficiency ?? si.efficiency,
      transmits: out.transmits,
      // its tension is that of one newton metre
      strength: si.breakingForce === null ? null : si.breakingForce / out.workingTension,
      safetyFactor: LEAST_FACTOR,
    }
  },
}
