// Whole rigs performed: against move where they are slow, against bodies with constraint forces, and against themselves.
import { describe, expect, it } from "vitest"
import { move } from "../../../src/rig/index.js"
import { asks, machineOf, stand } from "../../../src/rig/perform/machine.js"
import { effortAt, effortState } from "../../../src/rig/run/motion-model.js"
import { situation } from "../../../src/rig/run/situation.js"
import { creature } from "../../helpers/rigs.js"
import { constrainedArm } from "./constrained.js"
import { last, members, play, played, read } from "./kit.js"

it("motions mounted on motions are refused by their place: each would feel the other as it moves", () => {
  const faults = ["motions[1].on", "motions[3].on"]
  for (const fault of faults) expect(() => play(creature("marsh-heron"))).toThrow(fault)
})

describe.each(played)("%s", (name) => {
  const rig = creature(name)
  const out = play(rig)
  it("loses no energy, and answers the same at a hundredth of the tolerance", () => {
    expect(Math.abs(out.energy.residual)).toBeLessThan(1e-6)
    const finer = play(rig, 1e-10, 1e-11)
    expect(finer.events.map((e) => `${e.type} ${e.subject}`)).toEqual(out.events.map((e) => `${e.type} ${e.subject}`))
    out.steps.forEach((step, i) => {
      expect((step.duration ?? 0) / (finer.steps[i]?.duration ?? Number.NaN)).toBeCloseTo(1, 6)
    })
  })
  it("asks at rest what move asks, either way", () => {
    const at = situation(members, read(rig))
    const state = effortState()
    for (const motion of at.motions) {
      const machine = machineOf(motion)
      for (const way of [1, -1] as const)
        for (let i = 1; i < 8; i++) {
          const x = (motion.span * i) / 8
          effortAt(motion, x, way, at.around, state)
          stand(machine, x, at.around)
          asks(machine, motion.drive, 0, way, 0)
          expect(machine.output).toBeCloseTo(state.effort, 9)
        }
    }
  })
})

describe("slow motions", () => {
  it("take the time that move finds, to 1e-4: coming to speed is all that is between them", () => {
    const [wings] = move.example.motions
    if (wings?.drive.type !== "linear-actuator") throw new Error("the example's wings hang on an actuator")
    const rig = {
      ...move.example,
      power: null,
      motions: [{ ...wings, bus: null, drive: { ...wings.drive, noLoadSpeed: "2.32 mm/s", ratedSpeed: "1.9 mm/s" } }],
    } as typeof move.example
    const slow = move(rig)
    const [there, back] = play(rig).steps
    expect(slow.outDuration).toBeGreaterThan(40)
    expect(Math.abs((there?.duration ?? 0) / slow.outDuration - 1)).toBeLessThan(1e-4)
    expect(Math.abs((back?.duration ?? 0) / slow.backDuration - 1)).toBeLessThan(1e-4)
    expect(there?.quasiStatic).toBeCloseTo(slow.outDuration, 6)
  })
})

describe("a heavy arm on a rod", () => {
  it("moves as its bodies do, held together by constraint forces and stepped in time", () => {
    const arm = {
      length: 0.9,
      hinge: { x: 0.06, y: 0 },
      fixedPivot: { x: 0, y: -0.19 },
      movingPivot: { radius: 0.072, angle: -0.4363 },
      mass: 1.4,
      radius: 0.5,
      hingeFriction: 0.4,
    }
    const drive = {
      retractedLength: 0.155,
      stroke: 0.1,
      ratedVoltage: 12,
      noLoadSpeed: 0.12,
      noLoadCurrent: 0.5,
      ratedForce: 180,
      ratedSpeed: 0.09,
      ratedCurrent: 3,
      reflectedMass: 60,
    }
    const rig = {
      version: 2,
      name: "one heavy arm",
      motions: [
        {
          name: "arm",
          drive: { type: "linear-actuator", ...drive },
          mechanisms: [
            {
              name: "arm",
              type: "hinge",
              length: arm.length,
              hinge: arm.hinge,
              fixedPivot: arm.fixedPivot,
              movingPivot: arm.movingPivot,
              masses: [{ name: "load", mass: arm.mass, radius: arm.radius }],
              hingeFriction: arm.hingeFriction,
            },
          ],
        },
      ],
      programme: [{ at: 0, motion: "arm", to: 1 }],
      stage: { duration: 0.5 },
    }
    const out = play(rig, 1e-11, 1e-12)
    const other = constrainedArm(arm, drive, 0.5, 5000)
    expect(last(out.motions[0]?.travel ?? []) * drive.stroke).toBeCloseTo(other.travel, 8)
    expect(last(out.motions[0]?.speed ?? [])).toBeCloseTo(other.speed, 7)
    expect(Math.max(...(out.motions[0]?.force ?? []))).toBeCloseTo(other.peakForce, 1)
    expect(last(out.motions[0]?.force ?? [])).toBeCloseTo(other.force, 5)
  })
})
