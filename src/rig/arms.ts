import { type HingeGeometry, hingeAngleAt, hingeLengthAt, hingeLeverAt } from "../linkage/index.js"
import type { SiOf } from "../solver/index.js"
import type { HingedArms } from "./document.js"

/** Standard gravity, m/s² (exact; CGPM 1901). */
export const GRAVITY = 9.80665

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

/** Mechanics of one of a rig's arms. */
export function armModel(arms: SiOf<HingedArms>): ArmModel {
  const { hinge, anchor, pinRadius, pinAngle, axisOffset, assembly, masses, lean, spring, actuator } = arms
  const geometry: HingeGeometry = { hinge, base: anchor, pinRadius, pinAngle, axisOffset }
  const branch = assembly === "counterClockwise" ? 1 : -1
  // gravity acts on the sum of m·r, a single vector in the arm
  let [along, across, inertia] = [0, 0, 0]
  for (const { mass, radius, angle } of masses) {
    along += mass * radius * Math.cos(angle)
    across += mass * radius * Math.sin(angle)
    inertia += mass * radius ** 2
  }
  const pull: HingeGeometry | null = spring && {
    hinge,
    base: spring.anchor,
    pinRadius: spring.radius,
    pinAngle: spring.angle,
    axisOffset: 0,
  }
  const springStretchAt = (angle: number) => (spring && pull ? Math.max(0, hingeLengthAt(pull, angle) - spring.freeLength) : 0)
  return {
    geometry,
    inertia,
    angleAt: (stroke) => hingeAngleAt(geometry, actuator.retractedLength + stroke, branch),
    leverAt: (angle) => hingeLeverAt(geometry, angle),
    springStretchAt,
    energyAt: (angle) => {
      const turned = angle + lean
      const lifted = GRAVITY * (along * Math.sin(turned) + across * Math.cos(turned))
      return lifted + (spring ? (spring.stiffness * springStretchAt(angle) ** 2) / 2 : 0)
    },
    momentAt: (angle) => {
      const turned = angle + lean
      const weight = GRAVITY * (along * Math.cos(turned) - across * Math.sin(turned))
      const stretch = springStretchAt(angle)
      return weight + (spring && pull && stretch > 0 ? spring.stiffness * stretch * hingeLeverAt(pull, angle) : 0)
    },
  }
}
