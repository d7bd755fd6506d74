import fc from "fast-check"
import { describe, expect, it } from "vitest"
import {
  type GearStage,
  type GearTrain,
  type GearTrainInput,
  gearTrain,
  type PlanetaryPath,
  type SpurStage,
} from "../../src/drive/index.js"
import { solveLinear } from "../../src/numeric/index.js"

const solved = (input: GearTrainInput): GearTrain => gearTrain.si(gearTrain.read(input)) as GearTrain
const near = (a: number | null, b: number, size = Math.abs(b)) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(1e-9 * size + 1e-12)
/** Evenly spread, both ends included: random doubles crowd round nought. */
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 13, numRuns: 150 }
const paths: readonly PlanetaryPath[] = [
  "sun-to-carrier",
  "carrier-to-sun",
  "ring-to-carrier",
  "carrier-to-ring",
  "sun-to-ring",
  "ring-to-sun",
]
const members = ["sun", "ring", "carrier"]
/** The root of a linear system, or a failed test. */
const root = (a: number[][], b: number[]) => {
  const x = solveLinear(a, b)
  if (!x) throw new Error("singular")
  return x as [number, number, number, number]
}

/**
 * A planetary set as a system: pitch points of sun and planet, and of planet and ring, move alike (Willis' relations, four
 * unknown speeds); then each gear as a free body, a mesh handing on η of the power that its driving gear gives it as seen
 * from the carrier.
 */
function planetarySystem(sun: number, ring: number, mesh: number, path: PlanetaryPath) {
  const planet = (ring - sun) / 2
  const [from, to] = path.split("-to-").map((m) => members.indexOf(m)) as [number, number]
  const held = 3 - from - to
  const unit = (k: number) => [0, 1, 2, 3].map((j) => (j === k ? 1 : 0))
  // order: sun, ring, carrier, planet
  const speeds = root([[sun, 0, -(sun + planet), planet], [0, ring, planet - ring, -planet], unit(from), unit(held)], [0, 0, 1, 0])
  const [s, r, c] = speeds
  for (const sunGives of [true, false]) {
    const e = sunGives ? mesh : 1 / mesh
    // unknown: forces at both meshes on the planet, and the torques from outside on the two shafts
    // sun: T_S = f1·z_S; planet: e·f1 = f2 (both turn it about its pin); ring: T_R = −e·f2·z_R; carrier: what is left
    const torque = (f1: number) => {
      const [ts, tr] = [f1 * sun, e * e * f1 * ring]
      return [ts, tr, -ts - tr]
    }
    const scale = 1 / (torque(1)[from] as number)
    const [ts, tr, tc] = torque(scale) as [number, number, number]
    if (ts * (s - c) >= 0 === sunGives || s === c) return { speeds: [s, r, c], torques: [ts, tr, tc], from, to, held }
  }
  throw new Error("no direction of power fits")
}

/** A tooth of a worm wheel as a free body: normal force and friction along the thread, both ways. */
function wormBody(lead: number, friction: number, pressure: number, drives: boolean) {
  // thread along the wheel's motion and round the worm; friction acts against the worm's sliding along the thread
  const f = drives ? friction : -friction
  const round = Math.cos(pressure) * Math.sin(lead) + f * Math.cos(lead)
  const along = Math.cos(pressure) * Math.cos(lead) - f * Math.sin(lead)
  // the wheel moves tan λ for one of the worm's circumference
  const [worm, wheel] = [round, along * Math.tan(lead)]
  return drives ? wheel / worm : worm / wheel
}

const spur = fc.record({
  type: fc.constant("spur" as const),
  drivingTeeth: fc.integer({ min: 10, max: 60 }),
  drivenTeeth: fc.integer({ min: 10, max: 90 }),
  meshEfficiency: between(0.7, 1),
  pressureAngle: between(0.2, 0.5),
})
const planetary = fc.record({
  type: fc.constant("planetary" as const),
  drivingTeeth: fc.integer({ min: 18, max: 40 }),
  drivenTeeth: fc.integer({ min: 50, max: 120 }),
  path: fc.constantFrom(...paths),
  planets: fc.constant(3),
  meshEfficiency: between(0.7, 1),
})
const worm = fc.record({
  type: fc.constant("worm" as const),
  drivingTeeth: fc.integer({ min: 1, max: 4 }),
  drivenTeeth: fc.integer({ min: 20, max: 60 }),
  leadAngle: between(0.03, 0.5),
  friction: between(0, 0.2),
  pressureAngle: between(0.2, 0.5),
})
const more = { module: between(0.0005, 0.003), backlash: between(0, 0.02), inertia: between(0, 1e-3) }
const stage = fc.tuple(fc.oneof(spur, planetary, worm), fc.record(more)).map(([a, b]) => ({ ...a, ...b }) as GearStage)
const train = fc.record({
  stages: fc.array(stage, { minLength: 1, maxLength: 4 }),
  torque: between(-20, 20),
  dragTorque: between(0, 0.02),
  inputSpeed: between(1, 600),
  inputInertia: between(0, 1e-4),
  loadInertia: between(0, 1),
  tipRadius: between(0.1, 1),
})

describe("gearTrain", () => {
  it("a planetary stage turns, balances and loses as a linear system of its gears, whatever drives and is held", () => {
    fc.assert(
      fc.property(planetary, between(0.1, 10), (s, torque) => {
        if ((s.drivenTeeth - s.drivingTeeth) % 2 !== 0) return
        const body = planetarySystem(s.drivingTeeth, s.drivenTeeth, s.meshEfficiency, s.path)
        const [out] = solved({ stages: [{ ...s, module: 0.001 }], torque }).stages
        if (!out) throw new Error("a stage is missing")
        const speed = body.speeds[body.to] as number
        near(out.ratio, 1 / Math.abs(speed))
        expect(solved({ stages: [s], torque }).reverses).toBe(speed < 0)
        const given = body.torques[body.to] as number
        near(out.efficiency, -given * speed)
        // scaled to the torque of the load
        const scale = torque / Math.abs(given)
        near(out.drivingTorque, scale)
        near(out.heldTorque, (body.torques[body.held] as number) * scale, torque * 100)
        near(out.toothForce, (Math.abs(body.torques[0] as number) * scale) / 0.001 / (s.drivingTeeth / 2) / 3)
        // driven back, the power goes the other way through the same gears
        const [a, b] = s.path.split("-to-") as [string, string]
        const back = planetarySystem(s.drivingTeeth, s.drivenTeeth, s.meshEfficiency, `${b}-to-${a}` as PlanetaryPath)
        near(out.backwardEfficiency, -(back.torques[back.to] as number) * (back.speeds[back.to] as number))
      }),
      seeded,
    )
  })

  it("a worm's thread pushes as a free body with friction, driving and driven, and by its efficiency as by its friction", () => {
    fc.assert(
      fc.property(worm, between(0.5, 20), (s, torque) => {
        const out = solved({ stages: [s], torque })
        near(out.efficiency, wormBody(s.leadAngle, s.friction, s.pressureAngle, true))
        const back = wormBody(s.leadAngle, s.friction, s.pressureAngle, false)
        near(out.stages[0]?.backwardEfficiency as number, back, 1)
        expect(out.locksAtFriction).toBe(back <= 0)
        expect(out.selfLocking).toBe(wormBody(s.leadAngle, s.friction / 2, s.pressureAngle, false) < 0)
        expect(out.reverses).toBeNull()
        const byEfficiency = solved({ stages: [{ ...s, friction: null, wormEfficiency: out.efficiency }], torque })
        near(byEfficiency.stages[0]?.backwardEfficiency as number, back, 10)
      }),
      seeded,
    )
  })

  it("puts as much in as comes out and is lost, with the load against it and helping, and every loss is one", () => {
    let [helped, locked] = [0, 0]
    fc.assert(
      fc.property(train, (input) => {
        const out = solved(input)
        const { inputPower, outputPower, heat } = out as { inputPower: number; outputPower: number; heat: number }
        // stage by stage: each shaft's speed from the teeth, each stage's loss from its own torques
        let [speed, lost] = [input.inputSpeed, input.dragTorque * input.inputSpeed]
        const size = Math.max(...out.stages.map((s) => Math.abs(s.drivingTorque))) * input.inputSpeed + lost
        for (const s of out.stages) {
          const loss = s.drivingTorque * speed - s.drivenTorque * (speed / s.ratio)
          expect(loss).toBeGreaterThanOrEqual(-1e-12 * size - 1e-300)
          lost += loss
          speed /= s.ratio
        }
        near(out.outputSpeed, speed)
        near(outputPower, input.torque * speed, size)
        near(inputPower, out.inputTorque * input.inputSpeed, size)
        near(heat, lost, size)
        near(inputPower, outputPower + heat, size)
        out.stages.forEach((s, k) => {
          near(out.stages[k + 1]?.drivingTorque ?? input.torque, s.drivenTorque)
        })
        near(out.inputTorque, (out.stages[0]?.drivingTorque as number) + input.dragTorque, size)
        if (input.torque < 0) helped++
        if (input.torque < 0 && out.locksAtFriction) {
          locked++
          // the last stage that locks has to be driven
          expect(out.stages.some((s) => s.drivingTorque >= 0 && s.drivenTorque < 0)).toBe(true)
        }
        if (out.backDriveTorque !== null && out.backwardEfficiency !== null) {
          // that torque, helping, just leaves nothing to do at the input
          near(solved({ ...input, torque: -out.backDriveTorque }).inputTorque, 0, 1)
          near(
            out.backwardEfficiency,
            out.stages.reduce((p, s) => p * s.backwardEfficiency, 1),
          )
        } else expect(out.locksAtFriction).toBe(true)
      }),
      seeded,
    )
    expect(
      [helped, locked].every((n) => n > 8),
      `${helped} ${locked}`,
    ).toBe(true)
  })

  it("is the mirror image of itself: a train turned end for end loses forwards what it lost backwards", () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(spur, planetary), { minLength: 1, maxLength: 4 }), (stages) => {
        const turned = [...stages]
          .reverse()
          .map((s) =>
            s.type === "spur"
              ? { ...s, drivingTeeth: s.drivenTeeth, drivenTeeth: s.drivingTeeth }
              : { ...s, path: s.path.split("-to-").reverse().join("-to-") as PlanetaryPath },
          )
        const [a, b] = [solved({ stages, torque: 1 }), solved({ stages: turned, torque: 1 })]
        near(a.ratio * b.ratio, 1)
        near(a.backwardEfficiency, b.efficiency)
        near(a.efficiency, b.backwardEfficiency as number)
        expect(a.reverses).toBe(b.reverses)
      }),
      seeded,
    )
  })

  it("carries its inertia as the same kinetic energy, its play as turns of each shaft, and its housing as a body in balance", () => {
    fc.assert(
      fc.property(train, (input) => {
        const out = solved(input)
        let [energy, speed] = [(input.inputInertia * 1 ** 2) / 2, 1]
        const loose: number[] = []
        input.stages.forEach((s, k) => {
          speed /= out.stages[k]?.ratio as number
          energy += ((s.inertia as number) * speed ** 2) / 2
          loose.push(s.backlash as number)
        })
        energy += (input.loadInertia * speed ** 2) / 2
        near(out.inertiaAtInput / 2, energy)
        near((out.inertiaAtOutput * speed ** 2) / 2, energy)
        // the input held, each stage's play is turned down by the stages behind it
        const each = loose.map((play, k) => out.stages.slice(k + 1).reduce((angle, s) => angle / s.ratio, play))
        const play = each.reduce((a, b) => a + b, 0)
        near(out.backlash, play)
        near(out.tipPlay, play * input.tipRadius)
        each.forEach((part, k) => {
          near(out.stages[k]?.backlashShare as number, play > 0 ? part / play : 0, 1)
        })
        if (out.reverses !== null) {
          // torques from outside on the whole: the motor's, the load's against the output, the mounting's
          const load = out.reverses ? input.torque : -input.torque
          near(out.inputTorque + load + (out.housingTorque as number), 0, Math.abs(input.torque) + Math.abs(out.inputTorque))
        } else expect(out.housingTorque).toBeNull()
      }),
      seeded,
    )
  })

  it("loads the teeth of a pair with what turns its wheel, and its shafts with that and the separating force", () => {
    fc.assert(
      fc.property(fc.oneof(spur, worm), between(-20, 20), between(0.0005, 0.003), (s, torque, module) => {
        const [out] = solved({ stages: [{ ...s, module }], torque }).stages
        near((out?.toothForce as number) * ((module * s.drivenTeeth) / 2), Math.abs(torque))
        if (s.type === "worm") expect(out?.shaftForce).toBeNull()
        else near(out?.shaftForce as number, Math.hypot(out?.toothForce as number, (out?.toothForce as number) * Math.tan(s.pressureAngle)))
      }),
      seeded,
    )
    expect(solved({ stages: [{ type: "spur", drivingTeeth: 20, drivenTeeth: 40 }], torque: 1 }).stages[0]?.toothForce).toBeNull()
  })

  it("digs out no base circle: the fewest teeth are those whose mate's tip still meets the line of action", () => {
    let [dug, free] = [0, 0]
    fc.assert(
      fc.property(fc.integer({ min: 12, max: 400 }), fc.integer({ min: 6, max: 30 }), between(Math.PI / 18, 0.5), (large, small, alpha) => {
        if (small > large) return
        const stage = { type: "spur" as const, drivingTeeth: large, drivenTeeth: small, pressureAngle: alpha }
        const { cautions } = gearTrain({ stages: [stage], torque: 1 })
        // the large gear's tip circle against the far end of the line of action, tangent to both base circles
        const end = Math.hypot((large / 2) * Math.cos(alpha), ((small + large) / 2) * Math.sin(alpha))
        if (Math.abs(large / 2 + 1 - end) < 1e-9) return
        const digs = large / 2 + 1 > end
        expect(cautions.some((c) => c.code === "undercut")).toBe(digs)
        if (digs) dug++
        else free++
      }),
      seeded,
    )
    expect(Math.min(dug, free)).toBeGreaterThan(20)
  })

  it("names its limits: no undercut below 10°, a worm has none, equal wheels of 20° need 13 teeth", () => {
    const of = (stage: GearStage) => solved({ stages: [stage], torque: 1 }).stages[0]?.fewestTeeth
    const fewest = (change: Partial<SpurStage>) => of({ type: "spur", drivingTeeth: 20, drivenTeeth: 20, ...change })
    expect(fewest({})).toBe(13)
    expect(fewest({ pressureAngle: "9.9 deg" })).toBeNull()
    expect(fewest({ pressureAngle: "10.1 deg" })).not.toBeNull()
    expect(of({ type: "worm", drivingTeeth: 1, drivenTeeth: 20, leadAngle: 0.1, friction: 0.1 })).toBeNull()
  })

  it("tells of a stage only what its own type asks", () => {
    const told = (stage: object) => {
      const outcome = gearTrain.attempt({ stages: [stage], torque: 1 })
      return outcome.ok || !("issues" in outcome.error)
        ? []
        : outcome.error.issues.map((i) => `${i.path.slice(2).join(".")} ${i.code}`).sort()
    }
    expect(told({ type: "spur" })).toEqual(["drivenTeeth missing", "drivingTeeth missing"])
    expect(told({ type: "worm", drivingTeeth: 1, drivenTeeth: 30 })).toContain("leadAngle missing")
    expect(told({ type: "planetary", drivingTeeth: 12, drivenTeeth: 48, leadAngle: "4 deg" })).toEqual(["leadAngle unknown-key"])
  })

  it("asks of the motion reversed what the same load asks as a helping one, and the reverse", () => {
    fc.assert(
      fc.property(train, (input) => {
        const out = solved(input)
        near(out.returnTorque, solved({ ...input, torque: -input.torque }).inputTorque, 1e3)
        // out and back under one load nothing is won
        expect(out.inputTorque + out.returnTorque).toBeGreaterThanOrEqual(-1e-9)
        expect(out.transmits).toBe("both-ways")
      }),
      seeded,
    )
  })

  it("never calls self-locking what a gearbox supplier's bands leave in doubt (locked below 45 %, worm-selflock-bands)", () => {
    fc.assert(
      fc.property(worm, (s) => {
        const out = solved({ stages: [s], torque: 1 })
        if (out.selfLocking) expect(out.efficiency).toBeLessThan(0.45)
      }),
      seeded,
    )
  })
})
