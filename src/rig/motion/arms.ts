import {
  gravityMomentAt,
  type HingeGeometry,
  type HingeSpring,
  hingeAngleAt,
  hingeLeverAt,
  springAt,
  springEnergy,
  standardGravity,
} from "../../linkage/index.js"
import type { SiOf } from "../../solver/index.js"
import type { HingedArms } from "../document/document.js"

/** The mechanics of one arm, SI: geometry, energy and moment by arm angle. */
export interface ArmModel {
  readonly geometry: HingeGeometry
  /** Arm angle at a rod position (stroke), rad; null where it cannot close. */
  angleAt(stroke: number): number | null
  /** dL/dθ at an arm angle, m. */
  leverAt(angle: number): number
  /** Potential energy of masses and spring, J. */
  energyAt(angle: number): number
  /** dU/dθ: moment that must be held at rest, N·m. */
  momentAt(angle: number): number
  /** Length of the helper spring beyond its free length, m; 0 where slack or absent. */
  springStretchAt(angle: number): number
  /** Moment of inertia about the hinge, kg·m². */
  readonly inertia: number
}

/** Mechanics of one of a rig's arms, by the linkage's own kernels. */
export function armModel(arms: SiOf<HingedArms>): ArmModel {
  const { hinge, fixedPivot, movingPivot, axisOffset, assembly, masses, frameTilt, actuator } = arms
  const geometry: HingeGeometry = { hinge, fixedPivot, movingPivot, axisOffset }
  const branch = assembly === "counter-clockwise" ? 1 : -1
  const spring: HingeSpring | null = arms.spring && { ...arms.spring, fixedPivot: arms.spring.fixedPivot, preload: 0, pullsOnly: true }
  return {
    geometry,
    inertia: masses.reduce((sum, m) => sum + m.mass * m.radius ** 2, 0),
    angleAt: (stroke) => hingeAngleAt(geometry, actuator.retractedLength + stroke, branch),
    leverAt: (angle) => hingeLeverAt(geometry, angle),
    springStretchAt: (angle) => (spring ? Math.max(0, springAt(hinge, spring, angle).length - spring.freeLength) : 0),
    energyAt: (angle) => {
      let lifted = 0
      for (const m of masses) lifted += m.mass * m.radius * Math.sin(angle + m.angle + frameTilt)
      return standardGravity * lifted + (spring ? springEnergy(spring, springAt(hinge, spring, angle).length) : 0)
    },
    // the weights turn the arm down, the spring up
    momentAt: (angle) => gravityMomentAt(masses, angle, frameTilt) - (spring ? springAt(hinge, spring, angle).moment : 0),
  }
}
