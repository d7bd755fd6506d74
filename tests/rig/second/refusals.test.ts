import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../../src/solver/index.js"
import { move } from "./kit.js"

type Doc = object

const G = 9.80665
/** An arm that a motor of 1 N·m/A and 2 Ω turns up from hanging 60° below level: 3 kg at 0.5 m, 14.7 N·m where it is level. */
const drive = {
  type: "shaft-motor",
  turn: 1.4,
  torqueConstant: 1,
  backEmfConstant: 1.2,
  windingResistance: 2,
  frictionCurrent: 0.25,
} as const
const arm = {
  name: "arm",
  type: "turned-arm",
  startAngle: -Math.PI / 3,
  length: 0.5,
  masses: [{ name: "lantern", mass: 3, radius: 0.5 }],
} as const
const needed = 3 * G * 0.5

const rig = (motion: object, power: object | null): Doc => ({
  version: 2,
  name: "Lantern mast",
  motions: [{ name: "mast", bus: power ? "stage" : null, drive, mechanisms: [arm], ...motion }],
  power,
})

const supply = (over: object = {}, buses: object[] = [{ name: "stage", from: "supply" }], loads: object[] = []) => ({
  sources: [{ type: "mains-supply", name: "supply", voltage: 24, currentLimit: 50, resistance: 0.5, ...over }],
  buses,
  loads,
})

function refusal(doc: Doc): NoSolutionError {
  const outcome = move.attempt(doc)
  if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error(outcome.ok ? "answered" : outcome.error.message)
  return outcome.error
}

/** The document with a value put at a dotted place. */
function put(doc: Doc, path: string, value: number): Doc {
  const copy = structuredClone(doc) as unknown as Record<string, unknown>
  const keys = path.split(".")
  const last = keys.pop() as string
  let at = copy
  for (const key of keys) at = at[key] as Record<string, unknown>
  at[last] = value
  return copy as unknown as Doc
}

const nearestWorks = (doc: Doc, { nearest }: NoSolutionError) => {
  for (const [path, value] of Object.entries(nearest)) expect(move.attempt(put(doc, path, value)).ok, `${path} = ${value}`).toBe(true)
}

describe("insufficient effort", () => {
  it("stops where the moment needed meets the stall on this supply, and tells the most that is needed from there on", () => {
    // stall: I = E/(R + R_s) = 24/2.5, less the friction current
    const doc = rig({}, supply({ voltage: 24 }))
    const stall = 24 / 2.5 - 0.25
    const { noSolution, at, shortBy, nearest, values } = refusal(doc)
    expect([noSolution, values.way]).toEqual(["insufficient-effort", "out"])
    // 14.7·cos θ = 9.35 on the way up
    expect(at.travel).toBeCloseTo(Math.PI / 3 - Math.acos(stall / needed), 9)
    expect(at.needed).toBeCloseTo(needed, 3)
    expect(at.available).toBeCloseTo(stall, 9)
    expect(shortBy).toBeCloseTo((at.needed as number) - stall, 9)
    expect(nearest["motions.0.drive.count"]).toBe(2)
    nearestWorks(doc, refusal(doc))
  })
  it("just enough passes, just too little does not", () => {
    const volts = (needed + 0.25) * 2.5
    expect(move.attempt(rig({}, supply({ voltage: volts * 1.0001 }))).ok).toBe(true)
    expect(refusal(rig({}, supply({ voltage: volts * 0.9999 }))).noSolution).toBe("insufficient-effort")
  })
  it("a driver's limit is what it gives, not the stall", () => {
    const { at, shortBy } = refusal(rig({ drive: { ...drive, currentLimit: 6 } }, supply({ voltage: 48 })))
    expect(at.available).toBeCloseTo(5.75, 9)
    expect(shortBy).toBeCloseTo(needed - 5.75, 3)
  })
  it("a rod's is told in newtons, with a shorter stroke up to the stop", () => {
    const doc = rig(
      {
        bus: null,
        drive: {
          type: "linear-actuator",
          retractedLength: 0.155,
          stroke: 0.1,
          ratedVoltage: 12,
          noLoadSpeed: 0.0116,
          noLoadCurrent: 0.35,
          ratedForce: 30,
          ratedSpeed: 0.0095,
          ratedCurrent: 0.8,
        },
        mechanisms: [
          {
            name: "wing",
            type: "hinge",
            length: 0.9,
            hinge: { x: 0.06, y: 0 },
            fixedPivot: { x: 0, y: -0.19 },
            movingPivot: { radius: 0.072, angle: -0.436 },
            masses: [{ name: "spar", mass: 3, radius: 0.45 }],
          },
        ],
      },
      null,
    )
    const found = refusal(doc)
    expect(found.noSolution).toBe("insufficient-effort")
    expect(found.message).toMatch(/ N from there on/)
    expect(found.shortBy).toBeGreaterThan(1)
    expect(found.nearest["motions.0.drive.stroke"]).toBeLessThan(0.1)
    expect(Object.keys(found.nearest).length).toBe(2)
    nearestWorks(doc, found)
  })
})

describe("insufficient power tells how much the supply carries there", () => {
  it("a supply that trips", () => {
    const { noSolution, at, shortBy } = refusal(rig({}, supply({ voltage: 60, currentLimit: 9 })))
    expect(noSolution).toBe("insufficient-power")
    expect(at.asked).toBeCloseTo(needed + 0.25, 3)
    expect(at.available).toBeCloseTo(9, 9)
    expect(shortBy).toBeCloseTo((at.asked as number) - 9, 9)
    expect(at.travel).toBeCloseTo(Math.PI / 3 - Math.acos(8.75 / needed), 9)
  })
  it("a load of constant power on the same bus: the current at its fold, (E − 2·√(P·R))/R", () => {
    const loads = [{ type: "constant-power", name: "sound", bus: "stage", power: 120 }]
    const weak = supply({ voltage: 40, resistance: 1.2 }, undefined, loads)
    const { noSolution, at } = refusal(rig({ drive: { ...drive, windingResistance: 0.2 } }, weak))
    expect(noSolution).toBe("insufficient-power")
    expect(at.available).toBeCloseTo((40 - 2 * Math.sqrt(120 * 1.2)) / 1.2, 6)
  })
  it("loads alone that are too much leave nothing", () => {
    const loads = [{ type: "constant-power", name: "sound", bus: "stage", power: 1000 }]
    const { noSolution, at, shortBy } = refusal(rig({}, supply({ resistance: 1 }, undefined, loads)))
    expect([noSolution, at.available]).toEqual(["insufficient-power", 0])
    expect(shortBy).toBeCloseTo(at.asked as number, 12)
  })
  it("a converter past its output limit", () => {
    const box = {
      name: "stage",
      from: "supply",
      converter: {
        outputVoltage: 36,
        outputCurrentLimit: 10,
        efficiency: [{ outputCurrent: 1, efficiency: 0.9 }],
        minInputVoltage: 10,
        maxInputVoltage: 60,
      },
    }
    const { noSolution, at } = refusal(rig({}, supply({ voltage: 48, resistance: 0.05 }, [box])))
    expect(noSolution).toBe("insufficient-power")
    expect(at.available).toBeCloseTo(10, 9)
  })
})

describe("no supply, told in volts", () => {
  const box = (min: number, max: number) => ({
    name: "stage",
    from: "supply",
    converter: { outputVoltage: 36, efficiency: [{ outputCurrent: 1, efficiency: 0.9 }], minInputVoltage: min, maxInputVoltage: max },
  })
  it.each([
    ["too low", 30, 60, 6],
    ["too high", 5, 20, 4],
  ])("%s", (_, min, max, short) => {
    const { noSolution, shortBy, message } = refusal(rig({}, supply({}, [box(min, max)])))
    expect(noSolution).toBe("no-supply")
    expect(shortBy).toBeCloseTo(short, 12)
    expect(message).toContain("24 V")
  })
})

/** A winch that lifts an arm by a line from above. */
const winch = (over: object = {}, part: object = {}): object => ({
  drive: { ...drive, turn: 10 },
  transmission: [{ type: "drum", drumDiameter: 0.039, lineDiameter: 0.001, efficiency: 1 }],
  mechanisms: [
    {
      name: "feather",
      type: "hinge",
      reversed: true,
      assembly: "clockwise",
      length: 0.5,
      startLength: 0.6,
      fixedPivot: { x: 0, y: 0.4 },
      movingPivot: { radius: 0.3, angle: 0 },
      masses: [{ name: "vane", mass: 0.5, radius: 0.3 }],
      ...part,
    },
  ],
  ...over,
})

describe("slack, dead points and ends of travel", () => {
  it("a line goes slack on the way back where friction holds the arm: the pull that lacks at worst, in newtons", () => {
    expect(move.attempt(rig(winch(), null)).ok).toBe(true)
    // weight pulls the arm back with 1.47 N·m·cos θ, steepest at level: 2 N·m of friction hold it everywhere
    const { noSolution, values, shortBy } = refusal(rig(winch({}, { hingeFriction: 2 }), null))
    expect([noSolution, values.way]).toEqual(["slack", "back"])
    expect(shortBy).toBeGreaterThan(1)
  })
  it("a dip between looks: slack on a two-thousandth of the way is seen", () => {
    // weight against a cord: the line's pull dips to its least on the way; friction is set so that it just dips below nothing
    const part = { springs: [{ stiffness: 15, freeLength: 0.2, fixedPivot: { x: 0.1, y: 0.45 }, radius: 0.25 }] }
    const passes = (friction: number) => move.attempt(rig(winch({}, { ...part, hingeFriction: friction }), null))
    let [low, high] = [0, 2]
    for (let k = 0; k < 45; k++) {
      const mid = (low + high) / 2
      if (passes(mid).ok) low = mid
      else high = mid
    }
    // the pull about the least is a parabola: a little more friction opens a narrow gap, and it is found at every step
    for (const more of [1e-9, 1e-8, 1e-7, 1e-6, 1e-5]) {
      const outcome = passes(low * (1 + more) + 1e-12)
      expect(outcome.ok, `friction ${more} above the threshold`).toBe(false)
    }
  })
  it("a dead point is not passed, wherever the looks fall", () => {
    const crank = (turn: number, startLength = -0.05) =>
      rig(
        {
          drive: { ...drive, turn },
          transmission: [{ type: "drum", drumDiameter: 0.039, lineDiameter: 0.001, efficiency: 1 }],
          mechanisms: [{ name: "crank", type: "slide-crank", crank: 0.1, mass: 0.001, startLength }],
        },
        null,
      )
    expect(move.attempt(crank(3)).ok).toBe(true)
    const { noSolution, at, shortBy } = refusal(crank(9.3))
    // the pin is at the top of its circle after (0.1 + 0.05)/0.02 rad
    expect(["dead-point", "cannot-close"]).toContain(noSolution)
    expect(at.travel).toBeLessThanOrEqual(7.5 + 1e-9)
    expect(shortBy).toBeGreaterThan(1.8 - 1e-6)
  })
  it("what cannot follow tells how much of the travel is left, and the stroke that is left of it", () => {
    const long = {
      drive: {
        type: "linear-actuator",
        retractedLength: 0.155,
        stroke: 0.2,
        ratedVoltage: 12,
        noLoadSpeed: 0.0116,
        noLoadCurrent: 0.35,
        ratedForce: 75,
        ratedSpeed: 0.0095,
        ratedCurrent: 0.8,
      },
      mechanisms: [
        {
          name: "wing",
          type: "hinge",
          length: 0.9,
          hinge: { x: 0, y: 0 },
          fixedPivot: { x: 0, y: -0.2 },
          movingPivot: { radius: 0.08, angle: 0 },
          masses: [{ name: "spar", mass: 0.01, radius: 0.1 }],
        },
      ],
    }
    const doc = rig({ bus: null, ...long }, null)
    const { noSolution, at, shortBy, nearest } = refusal(doc)
    expect(["cannot-close", "insufficient-effort", "dead-point"]).toContain(noSolution)
    // the pins lie in line at 280 mm: 125 mm of the 200 mm
    expect(at.travel).toBeLessThan(0.125 + 1e-9)
    expect(at.travel).toBeGreaterThan(0.1249)
    if (noSolution === "cannot-close") expect(shortBy).toBeCloseTo(0.075, 3)
    expect(nearest["motions.0.drive.stroke"]).toBeLessThan(0.125)
    nearestWorks(doc, refusal(doc))
  })
  it("the first stop on the way is told, not the worst", () => {
    // two arms: one needs most at level, 60° on; the other, longer, when it comes to level 20° on
    const two = [
      {
        ...arm,
        name: "early",
        startAngle: (-20 * Math.PI) / 180,
        masses: [{ name: "lantern", mass: 2.2, radius: 0.5 }],
        transmission: [{ type: "plain-gear", reduction: 0.3 }],
      },
      { ...arm, name: "late" },
    ]
    const doc = rig({ mechanisms: two }, supply({ voltage: 60, currentLimit: 32 }))
    const found = refusal(doc)
    // scanned in fine steps by hand: sum of weights against the limit, each through its own lever
    const asked = (x: number) => 0.25 + (2.2 * G * 0.5 * Math.cos(-0.349066 + x / 0.3)) / 0.3 + needed * Math.cos(-Math.PI / 3 + x)
    let x = 0
    while (asked(x) <= 32 && x < 1.4) x += 1e-5
    expect(found.noSolution).toBe("insufficient-power")
    expect(Math.abs((found.at.travel as number) - x)).toBeLessThan(2e-5)
  })
})

describe("inertia counts what turns with the drive", () => {
  it("a gear's own wheel as well as the arm behind it", () => {
    const geared = (inertia: number) =>
      move(rig({ drive: { ...drive, turn: 1 }, transmission: [{ type: "plain-gear", reduction: 4, inertia }] }, null)).out.inertiaShare
    const bare = geared(0)
    // the wheel turns at its input: an inertia equal to that of the arm seen there doubles the share
    const seen = (3 * 0.5 ** 2) / 16
    expect(geared(seen) / bare).toBeCloseTo(2, 6)
  })
})
