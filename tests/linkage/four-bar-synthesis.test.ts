import { describe, expect, it } from "vitest"
import {
  type FourBarSynthesisInput,
  fourBar,
  fourBarSynthesis,
  fourBarSynthesisPicture,
  planarLinkage,
  poseSvg,
  poseText,
  type SynthesisedFourBar,
} from "../../src/linkage/index.js"
import { apart, lehmer } from "./random.js"
import { bruteForce, type Point, type Task, turned } from "./synthesis-brute.js"

/** A random task with a few pivots to try. */
function taskOf(random: ReturnType<typeof lehmer>, poses: 2 | 3, change: Partial<FourBarSynthesisInput> = {}): Task {
  const turn = random.sign()
  let [x, y, angle] = [0, 0, random.real(-0.5, 0.5)]
  const places = Array.from({ length: poses }, () => {
    const pose = { x, y, angle }
    x += random.real(0.01, 0.06)
    y += random.real(-0.03, 0.05)
    angle += turn * random.real(0.15, 0.7)
    return pose
  })
  const [left, bottom] = [random.real(-0.1, 0), random.real(-0.15, 0.05)]
  return {
    poses: places,
    fixedPivotRegion: { left, right: left + 0.12, bottom, top: bottom + (poses === 2 ? 0.03 : 0.12) },
    movingPivotRegion: { left: -0.12, right: 0.12, bottom: -0.12, top: 0.12 },
    step: poses === 2 ? 0.04 : 0.02,
    linkLengths: { low: 0.01, high: 0.4 },
    transmissionLimit: 0.3,
    listed: 6,
    ...change,
  } as Task
}

/** Where a linkage found puts the coupler at an input angle, by the position solver. */
function poseBy(found: SynthesisedFourBar, inputAngle: number): Point & { angle: number } {
  const { ground, input, coupler, output, branch, pointRadius, pointAngle, groundAngle, axisAngle, inputPivot } = found
  const at = fourBar({ ground, input, coupler, output, inputAngle, assembly: branch, pointRadius, pointAngle })
  const point = turned({ x: at.pointX as number, y: at.pointY as number }, groundAngle)
  return { x: inputPivot.x + point.x, y: inputPivot.y + point.y, angle: at.couplerAngle + groundAngle + axisAngle }
}

describe("every linkage returned", () => {
  it.each([2, 3] as const)("reaches its %i poses in order on one branch, by fourBar", (poses) => {
    const random = lehmer(poses)
    let [met, worst] = [0, 0]
    for (let k = 0; k < 40; k++) {
      const task = taskOf(random, poses)
      const outcome = fourBarSynthesis.attempt(task)
      if (!outcome.ok) continue
      for (const found of outcome.value.solutions) {
        met++
        const sense = Math.sign(found.inputTravel)
        found.inputAngles.forEach((angle, i) => {
          if (i > 0) expect(sense * (angle - (found.inputAngles[i - 1] as number))).toBeGreaterThan(0)
          const wanted = task.poses[i] as Task["poses"][number]
          const reached = poseBy(found, angle)
          worst = Math.max(worst, Math.hypot(reached.x - wanted.x, reached.y - wanted.y), apart(reached.angle, wanted.angle))
        })
        expect(Math.abs(found.inputTravel)).toBeLessThanOrEqual(2 * Math.PI)
      }
    }
    expect(met).toBeGreaterThan(30)
    expect(worst).toBeLessThan(1e-9)
  })

  it("is driven from pose to pose without being taken apart, by planarLinkage", () => {
    const random = lehmer(77)
    let [met, worst] = [0, 0]
    for (let k = 0; k < 40 && met < 12; k++) {
      const task = taskOf(random, 3, { listed: 1 })
      const outcome = fourBarSynthesis.attempt(task)
      if (!outcome.ok) continue
      met++
      const found = outcome.value.solutions[0] as SynthesisedFourBar
      const place = (pose: Task["poses"][number], pin: Point) => {
        const { x, y } = turned(pin, pose.angle)
        return { x: pose.x + x, y: pose.y + y }
      }
      const [first] = task.poses as [Task["poses"][number]]
      const angles = found.inputAngles.map((angle) => angle + found.groundAngle)
      for (const i of [1, 2]) {
        const moved = planarLinkage({
          pivots: [
            { name: "O", ...found.inputPivot },
            { name: "Q", ...found.outputPivot },
          ],
          points: [
            { name: "A", ...place(first, found.inputPin) },
            { name: "B", ...place(first, found.outputPin) },
          ],
          bars: [
            { from: "O", to: "A" },
            { from: "A", to: "B" },
            { from: "Q", to: "B" },
          ],
          cranks: [{ from: "O", to: "A", start: angles[0] as number, end: angles[i] as number }],
        })
        const pose = task.poses[i] as Task["poses"][number]
        for (const [name, pin] of [
          ["A", found.inputPin],
          ["B", found.outputPin],
        ] as const) {
          const at = moved.points.find((p) => p.name === name) as Point
          const wanted = place(pose, pin)
          worst = Math.max(worst, Math.hypot(at.x - wanted.x, at.y - wanted.y))
        }
      }
    }
    expect(met).toBeGreaterThan(8)
    expect(worst).toBeLessThan(1e-9)
  })
})

describe("against brute force", () => {
  it.each([
    [3, false],
    [3, true],
    [2, false],
    [2, true],
  ] as const)("misses no better linkage of its region and step (%i poses, smallest: %s)", (poses, smallest) => {
    const random = lehmer(100 + poses + Number(smallest))
    let answered = 0
    for (let k = 0; k < (poses === 2 ? 4 : 5); k++) {
      const task = taskOf(random, poses, { objective: smallest ? "smallest" : "best-transmission" })
      const outcome = fourBarSynthesis.attempt(task)
      const brute = bruteForce(task, smallest)
      if (!outcome.ok) {
        expect(brute === null || brute.near > 0).toBe(true)
        continue
      }
      answered++
      const { tried, size, minTransmissionAngle } = outcome.value
      expect(Math.abs(tried.passed - (brute?.passed ?? 0))).toBeLessThanOrEqual(brute?.near ?? 0)
      // steps of 0.02 rad may miss the very least by a hair
      if (smallest) expect(size).toBeCloseTo(brute?.best as number, brute?.near ? 1 : 9)
      else {
        expect(minTransmissionAngle).toBeLessThanOrEqual((brute?.best as number) + 1e-9)
        expect(minTransmissionAngle).toBeGreaterThan((brute?.best as number) - 2e-3)
      }
    }
    expect(answered).toBeGreaterThan(1)
  })
})

describe("symmetries", () => {
  const base: Task = { ...fourBarSynthesis.read(fourBarSynthesis.example), listed: 3 } as unknown as Task
  const best = (task: FourBarSynthesisInput) => fourBarSynthesis(task).solutions[0] as SynthesisedFourBar

  it("mirrors with its task, the branch and the turn changed over", () => {
    const flip = ({ left, right, bottom, top }: Task["fixedPivotRegion"]) => ({ left, right, bottom: -top, top: -bottom })
    const mirrored = best({
      ...base,
      poses: base.poses.map((p) => ({ x: p.x, y: -p.y, angle: -p.angle })),
      fixedPivotRegion: flip(base.fixedPivotRegion),
      movingPivotRegion: flip(base.movingPivotRegion),
    })
    const plain = best(base)
    expect(mirrored.minTransmissionAngle).toBeCloseTo(plain.minTransmissionAngle, 12)
    expect(mirrored.inputTravel).toBeCloseTo(-plain.inputTravel, 12)
    expect(mirrored.inputPivot.y).toBeCloseTo(-plain.inputPivot.y, 12)
    expect(mirrored.branch).not.toBe(plain.branch)
  })

  it("runs the same way back with its poses in the opposite order", () => {
    const [there, back] = [best(base), best({ ...base, poses: [...base.poses].reverse() })]
    expect(back.minTransmissionAngle).toBeCloseTo(there.minTransmissionAngle, 12)
    expect(back.inputTravel).toBeCloseTo(-there.inputTravel, 12)
  })

  it("turns only the way asked for, and lists the best first, as many as asked", () => {
    for (const [turns, sense] of [
      ["clockwise", -1],
      ["counter-clockwise", 1],
    ] as const) {
      const { solutions } = fourBarSynthesis({ ...base, turns, transmissionLimit: 0.2, listed: 4 })
      expect(solutions.every((s) => Math.sign(s.inputTravel) === sense)).toBe(true)
      expect(solutions).toHaveLength(4)
    }
    const { solutions } = fourBarSynthesis({ ...base, objective: "smallest", listed: 8 })
    const sizes = solutions.map((s) => s.size)
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b))
    const angles = fourBarSynthesis({ ...base, listed: 8 }).solutions.map((s) => s.minTransmissionAngle)
    expect(angles).toEqual([...angles].sort((a, b) => b - a))
  })
})

it("draws the linkage at its poses, as SVG and as text", () => {
  const picture = fourBarSynthesisPicture(fourBarSynthesis.read(fourBarSynthesis.example), fourBarSynthesis(fourBarSynthesis.example))
  expect(picture.lines).toHaveLength(4)
  const drawn = poseSvg(picture)
  expect(drawn.match(/<path /g)).toHaveLength(4)
  expect(drawn.match(/<circle /g)).toHaveLength(2)
  expect(drawn).toContain('aria-label="Four-bar through its poses"')
  const rows = poseText(picture, 60, 20).split("\n")
  expect(rows).toHaveLength(22)
  expect(rows.join("").match(/O/g)).toHaveLength(2)
  expect(Math.max(...rows.slice(1, -1).map((row) => row.length))).toBeLessThanOrEqual(60)
})
