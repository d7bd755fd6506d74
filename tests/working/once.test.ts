import { beforeEach, describe, expect, it, vi } from "vitest"
import { beam } from "../../src/frame/index.js"
import { planarLinkage, sweptEnvelope, tetheredFan } from "../../src/linkage/index.js"
import type { Solver } from "../../src/solver/index.js"
import { ledRun } from "../../src/wire/index.js"
import { workingOfSi } from "../../src/working/index.js"

const { runs, counting } = vi.hoisted(() => {
  const runs = { count: 0 }
  /** A module whose function of this name counts how often it is run. */
  const counting = async (real: Promise<object>, name: string) => {
    const whole = (await real) as Record<string, (...args: unknown[]) => unknown>
    return {
      ...whole,
      [name]: (...args: unknown[]) => {
        runs.count++
        return whole[name]?.(...args)
      },
    }
  }
  return { runs, counting }
})

vi.mock("../../src/frame/beam/curve.js", (real) => counting(real<object>(), "beamCurve"))
vi.mock("../../src/linkage/planar/motion.js", (real) => counting(real<object>(), "mechanismMotion"))
vi.mock("../../src/linkage/fan/tethered-fan/pose.js", (real) => counting(real<object>(), "fanAngles"))
vi.mock("../../src/wire/led-run/line.js", (real) => counting(real<object>(), "runOf"))

const solvers: Readonly<Record<string, Solver<never, object>>> = { beam, planarLinkage, sweptEnvelope, tetheredFan, ledRun } as never

describe.each(Object.entries(solvers))("%s", (_, solver) => {
  beforeEach(() => {
    runs.count = 0
  })
  const si = solver.read(solver.example)
  const within = (run: () => unknown) => {
    runs.count = 0
    run()
    return runs.count
  }

  it("is not solved again by its cautions or its working: the kernel hands on what it found", () => {
    const once = within(() => solver.si(si))
    expect(once).toBeGreaterThan(0)
    expect(within(() => solver(solver.example))).toBe(once)
    expect(within(() => workingOfSi(solver, si))).toBe(once)
  })
})
