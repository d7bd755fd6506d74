import fc from "fast-check"
import { type HingeGeometry, type HingeLoads, hingeLengthRange } from "../../src/linkage/index.js"
import { between } from "./uniform.js"

const point = (reach: number) => fc.record({ x: between(-reach, reach), y: between(-reach, reach) })

/** Arms of every proportion, and how far along its free range the actuator stands. */
export const geometries: fc.Arbitrary<{ g: HingeGeometry; share: number; branch: 1 | -1 }> = fc
  .record({
    hinge: point(0.3),
    fixedPivot: point(0.5),
    movingPivot: fc.record({ radius: between(0.01, 0.4), angle: between(-3, 3) }),
    axisOffset: between(0, 0.005),
    share: between(0.02, 0.98),
    branch: fc.constantFrom<1 | -1>(1, -1),
  })
  .filter(({ hinge, fixedPivot: base }) => Math.hypot(base.x - hinge.x, base.y - hinge.y) > 0.01)
  .map(({ share, branch, ...g }) => ({ g, share, branch }))

/** What such arms carry. */
export const loads: fc.Arbitrary<HingeLoads> = fc.record({
  masses: fc.array(fc.record({ mass: between(0, 3), radius: between(0, 1), angle: between(-1, 1) }), { minLength: 1, maxLength: 3 }),
  springs: fc.array(
    fc.record({
      fixedPivot: point(0.4),
      radius: between(0.01, 0.2),
      angle: between(-2, 2),
      stiffness: between(0, 500),
      freeLength: between(0, 0.3),
      preload: between(0, 5),
      pullsOnly: fc.boolean(),
    }),
    { maxLength: 2 },
  ),
  frameTilt: between(-1, 1),
  frictionRadius: between(0, 0.002),
  loadFactor: between(0, 2),
  gust: fc.record({ force: between(-30, 30), radius: between(0, 1) }),
  bearingLoad: between(0, 60),
})

/** Length at a share of the free range. */
export const lengthOf = (g: HingeGeometry, share: number) => {
  const { shortest, longest } = hingeLengthRange(g)
  return shortest + share * (longest - shortest)
}
