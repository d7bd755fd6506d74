import { dutyCycle, hobbyServo } from "../../drive/index.js"
import { type HingeActuatorInput, hingeActuator, scissor, servoPushrod } from "../../linkage/index.js"
import { formatQuantity } from "../../quantity/index.js"
import type { Check } from "./checks.js"
import { atLeast, atMost, byMargin, findBy, lacking, onMove, peaksOf } from "./finding.js"
import type { Situation } from "./situation.js"

const hinged = (s: Situation) => s.rig.hinged !== null

function linkageInput(s: Situation): HingeActuatorInput {
  const arms = s.rig.hinged as NonNullable<Situation["rig"]["hinged"]>
  const { actuator, spring } = arms
  return {
    hinge: arms.hinge,
    fixedPivot: arms.fixedPivot,
    movingPivot: arms.movingPivot,
    axisOffset: arms.axisOffset,
    retractedLength: actuator.retractedLength,
    stroke: actuator.stroke,
    assembly: arms.assembly,
    masses: arms.masses.map(({ mass, radius, angle }) => ({ mass, radius, angle })),
    frameTilt: arms.frameTilt,
    springs: spring && [
      {
        fixedPivot: spring.fixedPivot,
        radius: spring.radius,
        angle: spring.angle,
        stiffness: spring.stiffness,
        freeLength: spring.freeLength,
      },
    ],
    holdingForce: actuator.holdingForce,
  }
}

const seconds = (t: number) => formatQuantity("time", t, "s")

/** Servo torque of a flap with its own inertia, N·m: peak of the linkage's torque and of harmonic motion through the travel. */
function flapTorque(s: Situation, peakTorque: number, flapTravel: number, ratio: number): number {
  const flaps = s.rig.flaps as NonNullable<Situation["rig"]["flaps"]>
  const { linkage } = flaps
  const gyration = flaps.radiusOfGyration ?? linkage.flapCentre
  // half a cosine through the travel: α = (A/2)·(π/T)²
  const acceleration = (flapTravel / 2) * (Math.PI / flaps.flapTime) ** 2
  return peakTorque + Math.abs(ratio) * linkage.flapMass * gyration ** 2 * acceleration
}

/** Checks of arms, flaps and scissors: do they move as far, as fast and as surely as wanted. */
export const moveChecks: readonly Check[] = [
  {
    id: "mechanism",
    title: "a moving part is described",
    applies: ({ rig }) => !rig.hinged && !rig.flaps && !rig.scissor,
    find: () => lacking("hinged", "no arms, flaps or scissor array are in the document"),
  },
  {
    id: "swing",
    title: "swing of the arms",
    applies: hinged,
    find: (s) => {
      const wanted = s.rig.brief?.swing ?? null
      if (wanted === null) return lacking("brief.swing")
      return findBy(hingeActuator, "hinged", linkageInput(s), (out) =>
        atLeast(
          out.swing,
          wanted,
          "angle",
          `The arms swing ${formatQuantity("angle", out.swing)}; ${formatQuantity("angle", wanted)} is wanted.`,
          "the brief",
        ),
      )
    },
  },
  {
    id: "raise-time",
    title: "time up",
    applies: hinged,
    find: (s) => {
      const wanted = s.rig.brief?.raiseTime ?? null
      if (wanted === null) return lacking("brief.raiseTime")
      return onMove(s, (m) => atMost(m.raiseTime, wanted, "time", `${m.why} ${seconds(wanted)} is wanted.`, "the brief"))
    },
  },
  {
    id: "stage-time",
    title: "raise and lowering time on stage",
    applies: hinged,
    find: (s) => {
      const wanted = s.rig.brief?.stageTime ?? null
      if (wanted === null) return lacking("brief.stageTime")
      return onMove(s, (m) =>
        atMost(
          m.cycleTime,
          wanted,
          "time",
          `Up takes ${seconds(m.raiseTime)} and down ${seconds(m.lowerTime)}; the stage gives ${seconds(wanted)}.`,
          "the brief",
        ),
      )
    },
  },
  {
    id: "peak-force",
    title: "force at each rod",
    applies: hinged,
    find: (s) =>
      onMove(s, (m) => {
        const rated = (s.rig.hinged as NonNullable<typeof s.rig.hinged>).actuator.ratedForce
        const { force, forceAngle } = peaksOf(m)
        return atMost(
          force,
          rated,
          "force",
          `Each rod needs ${formatQuantity("force", force)} at worst (${formatQuantity("angle", forceAngle)}); it is rated for ${formatQuantity("force", rated)}.`,
          "the actuator's datasheet",
        )
      }),
  },
  {
    id: "stall-margin",
    title: "stall force margin",
    applies: hinged,
    find: (s) =>
      onMove(s, (m) => {
        const most = s.stall() as number
        // gusts, cold grease and a tired pack all come on top
        return atLeast(
          most,
          1.3 * Math.max(peaksOf(m).force, 1e-9),
          "force",
          `On this supply the rod stalls at ${formatQuantity("force", most)}; 1.3 times the maximum load is asked for.`,
        )
      }),
  },
  {
    id: "dead-point",
    title: "transmission angle",
    applies: hinged,
    find: (s) =>
      findBy(hingeActuator, "hinged", linkageInput(s), (out) => {
        const least = (30 * Math.PI) / 180
        return atLeast(
          out.minTransmissionAngle,
          least,
          "angle",
          `Nearest to a dead point the rod meets its lever at ${formatQuantity("angle", out.minTransmissionAngle)}; below 30° forces grow and small errors of build matter.`,
        )
      }),
  },
  {
    id: "side-load",
    title: "side load on the rod",
    applies: hinged,
    find: (s) => {
      const { ratedForce } = (s.rig.hinged as NonNullable<typeof s.rig.hinged>).actuator
      return findBy(hingeActuator, "hinged", linkageInput(s), (out) =>
        atMost(
          out.sideLoad,
          0.05 * ratedForce,
          "force",
          `The rod is pushed sideways with ${formatQuantity("force", out.sideLoad)}; small actuators are made for next to none.`,
        ),
      )
    },
  },
  {
    id: "holding",
    title: "holds without power",
    applies: hinged,
    find: (s) => {
      const { holdingForce } = (s.rig.hinged as NonNullable<typeof s.rig.hinged>).actuator
      return findBy(hingeActuator, "hinged", linkageInput(s), (out) =>
        atLeast(
          holdingForce,
          Math.max(out.requiredHoldingForce, 1e-9),
          "force",
          `Standing still each rod carries up to ${formatQuantity("force", out.requiredHoldingForce)}; without power it holds ${formatQuantity("force", holdingForce)}.`,
          "the actuator's datasheet",
        ),
      )
    },
  },
  {
    id: "inertia",
    title: "inertia negligible (quasi-static model valid)",
    applies: hinged,
    find: (s) =>
      onMove(s, (m) =>
        atMost(
          Math.max(m.raise.inertiaShare, m.lower.inertiaShare),
          0.05,
          "ratio",
          "Energy of motion against the energy moved; where it is not small the times are not good.",
          "limit case of the equation of motion",
        ),
      ),
  },
  {
    id: "duty",
    title: "duty of the actuators",
    applies: hinged,
    find: (s) => {
      const { duty } = s.rig
      if (!duty) return lacking("duty")
      return onMove(s, (m) => {
        const rated = (s.rig.hinged as NonNullable<typeof s.rig.hinged>).actuator.ratedCurrent
        const share = peaksOf(m).current / (s.rig.hinged as NonNullable<typeof s.rig.hinged>).count / rated
        return findBy(dutyCycle, "duty", { ...duty, runDuration: m.cycleTime, currentUtilisation: share }, (out) => {
          const limit = duty.temperatureLimit
          const room = duty.ambientTemperature
          return byMargin(
            out.peakTemperature,
            limit,
            "temperature",
            // a run longer than the maker allows fails, however cool the model finds it
            out.runsBeforeRest === 0 ? -1 : (limit - out.peakTemperature) / Math.max(limit - room, 1),
            out.runsBeforeRest === null
              ? "The windings stay below their limit however often the move is made."
              : `After ${out.runsBeforeRest} moves in a row the actuators must rest.`,
            "the actuator's datasheet (duty rating)",
          )
        })
      })
    },
  },
  {
    id: "flap-torque",
    title: "servo torque",
    applies: ({ rig }) => rig.flaps !== null,
    find: (s) => {
      const flaps = s.rig.flaps as NonNullable<typeof s.rig.flaps>
      return findBy(servoPushrod, "flaps.linkage", flaps.linkage, (out) => {
        const torque = flapTorque(s, out.peakTorque, out.flapSwing, out.ratio)
        return findBy(hobbyServo, "flaps.servo", { ...flaps.servo, terminalVoltage: flaps.voltage, torque, angle: null }, (servo) =>
          atMost(
            torque,
            servo.holdingTorque,
            "moment",
            `The servo needs ${formatQuantity("moment", torque)} at worst, its own flap's inertia included; it holds ${formatQuantity("moment", servo.holdingTorque)} for long.`,
            "the servo's datasheet, and a holding share that is common practice",
          ),
        )
      })
    },
  },
  {
    id: "flap-time",
    title: "travel time of a flap",
    applies: ({ rig }) => rig.flaps !== null,
    find: (s) => {
      const flaps = s.rig.flaps as NonNullable<typeof s.rig.flaps>
      return findBy(servoPushrod, "flaps.linkage", flaps.linkage, (out) => {
        const torque = flapTorque(s, out.peakTorque, out.flapSwing, out.ratio)
        const { minServoAngle, maxServoAngle } = flaps.linkage
        const angle = Math.abs(maxServoAngle - minServoAngle)
        return findBy(hobbyServo, "flaps.servo", { ...flaps.servo, terminalVoltage: flaps.voltage, torque, angle }, (servo) =>
          atMost(
            servo.moveDuration as number,
            flaps.flapTime,
            "time",
            `Through its travel the servo takes ${formatQuantity("time", servo.moveDuration as number)}; ${formatQuantity("time", flaps.flapTime)} is wanted.`,
            "the document",
          ),
        )
      })
    },
  },
  {
    id: "flap-supply",
    title: "servo supply current",
    applies: ({ rig }) => rig.flaps !== null,
    find: (s) => {
      const flaps = s.rig.flaps as NonNullable<typeof s.rig.flaps>
      const limit = flaps.supplyCurrent
      if (limit === null) return lacking("flaps.supplyCurrent")
      return findBy(hobbyServo, "flaps.servo", { ...flaps.servo, terminalVoltage: flaps.voltage, torque: 0, angle: null }, (servo) =>
        servo.stallCurrent === null
          ? lacking("flaps.servo.stallCurrent")
          : atMost(
              flaps.count * servo.stallCurrent,
              limit,
              "current",
              `If all ${flaps.count} servos are held they draw ${formatQuantity("current", flaps.count * servo.stallCurrent)}; their supply gives ${formatQuantity("current", limit)}.`,
              "the servo's datasheet (stall current)",
            ),
      )
    },
  },
  {
    id: "scissor-span",
    title: "span of the scissor array",
    applies: ({ rig }) => rig.scissor !== null,
    find: (s) => {
      const { array, span } = s.rig.scissor as NonNullable<typeof s.rig.scissor>
      return findBy(scissor, "scissor.array", array, (out) =>
        atLeast(
          out.spanExtended,
          span,
          "length",
          `Extended it spans ${formatQuantity("length", out.spanExtended)} (folded ${formatQuantity("length", out.spanFolded)}); ${formatQuantity("length", span)} is wanted.`,
          "the document",
        ),
      )
    },
  },
  {
    id: "scissor-force",
    title: "driver force of the scissor array",
    applies: ({ rig }) => rig.scissor !== null,
    find: (s) => {
      const { array, driverForce } = s.rig.scissor as NonNullable<typeof s.rig.scissor>
      return findBy(scissor, "scissor.array", array, (out) =>
        atLeast(
          driverForce,
          1.3 * Math.max(out.peakForce, 1e-9),
          "force",
          `The driver meets ${formatQuantity("force", out.peakForce)} at worst; 1.3 times that is asked of its ${formatQuantity("force", driverForce)}.`,
        ),
      )
    },
  },
  {
    id: "scissor-droop",
    title: "droop of the scissor array",
    applies: ({ rig }) => rig.scissor !== null,
    find: (s) => {
      const { array, droopLimit } = s.rig.scissor as NonNullable<typeof s.rig.scissor>
      if (droopLimit === null) return lacking("scissor.droopLimit")
      return findBy(scissor, "scissor.array", array, (out) =>
        atMost(
          Math.abs(out.droop),
          droopLimit,
          "length",
          `Play in the pins lets the tip droop ${formatQuantity("length", Math.abs(out.droop))}.`,
          "the document",
        ),
      )
    },
  },
]
