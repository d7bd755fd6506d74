// Where crank and rod stand in one line the crank moves nothing: pins must carry what they carry a hair beside it.
import { describe, expect, it } from "vitest"
import { standardGravity } from "../../../src/linkage/index.js"
import { fourBarMechanism } from "../../../src/rig/mechanisms/four-bar.js"
import type { Mechanism, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { sliderCrankMechanism } from "../../../src/rig/mechanisms/slider-crank.js"
import { built } from "../members.js"
import { heldEffort } from "./crank-route.js"
import { stateAt } from "./second-route.js"

const down: Triple = [0.4, -standardGravity, 0.2]

/** Largest change of any pin force between two places, each held at rest but for the last digits of its effort. */
function leap(mechanism: Mechanism, there: number, beside: number, digits: number): number {
  const forces = (q: number, share: number) =>
    mechanism.reactions(q, heldEffort(stateAt(mechanism, q), down) * (1 + share * Number.EPSILON), down).flatMap((r) => r.force)
  const [a, b] = [forces(there, digits), forces(beside, 0)]
  return Math.max(...a.map((force, i) => (Number.isFinite(force) ? Math.abs(force - (b[i] as number)) : Number.POSITIVE_INFINITY)))
}

describe("pin forces at a dead centre of the crank", () => {
  it.each([0, 0.3, 1.1, Math.PI / 2, -2.4])(
    "slider-crank, its slide at %f rad: as 1 µrad beside it, whatever the last digits of the effort",
    (slideAngle) => {
      const crankMasses = [{ name: "horn", mass: 0.5, radius: 0.02 }]
      for (const startAngle of [0, Math.PI]) {
        const document = { slideAngle, crank: 0.02, coupler: 0.1, startAngle, sliderMass: 1.3, couplerMass: 0.1, crankMasses }
        const mechanism = built<Mechanism>(sliderCrankMechanism, document)
        for (const digits of [-8, -3, -1, 0, 1, 3, 8])
          for (const aside of [-1e-6, 1e-6]) expect(leap(mechanism, startAngle, startAngle + aside, digits)).toBeLessThan(1e-3)
      }
    },
  )
  it.each([0, 0.3, 1.1, Math.PI / 2, -2.4])(
    "slider-crank, its slide at %f rad: friction of the guide adds no more than beside it",
    (slideAngle) => {
      for (const startAngle of [0, Math.PI]) {
        const document = { slideAngle, crank: 0.02, coupler: 0.1, startAngle, sliderMass: 1.3, guideFriction: 5 }
        const mechanism = built<Mechanism>(sliderCrankMechanism, document)
        const largest = (q: number) => {
          const state = stateAt(mechanism, q)
          const forces = mechanism.reactions(q, heldEffort(state, down) + state.frictionDry, down)
          return Math.max(...forces.map((r) => Math.hypot(...r.force)))
        }
        const beside = Math.max(largest(startAngle - 1e-6), largest(startAngle + 1e-6))
        expect(largest(startAngle)).toBeLessThan(1.001 * beside)
      }
    },
  )
  it("four-bar: at both places where crank and coupler stand in one line", () => {
    const [ground, input, coupler, output] = [0.1, 0.03, 0.12, 0.08]
    for (const reach of [coupler + input, coupler - input]) {
      // the triangle ground, output, reach by the law of cosines; folded, the crank points away from the arm's pin
      const angle = Math.acos((ground ** 2 + reach ** 2 - output ** 2) / (2 * ground * reach)) + (reach < coupler ? Math.PI : 0)
      const mechanism = built<Mechanism>(fourBarMechanism, {
        hinge: { x: ground, y: 0 },
        length: 0.4,
        masses: [{ name: "wing", mass: 0.5, radius: 0.3 }],
        inputPivot: { x: 0, y: 0 },
        input,
        coupler,
        movingPivot: { radius: output, angle: 0.2 },
        startAngle: angle,
        inputMasses: [{ name: "horn", mass: 0.5, radius: 0.02, angle: 0.1 }],
        couplerMasses: [{ name: "rod", mass: 0.1, radius: 0.05 }],
      })
      for (const digits of [-8, -3, -1, 0, 1, 3, 8])
        for (const aside of [-1e-6, 1e-6]) expect(leap(mechanism, angle, angle + aside, digits)).toBeLessThan(1e-2)
    }
  })
})
