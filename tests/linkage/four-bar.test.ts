import {
  acosDependencies,
  addDependencies,
  bignumberDependencies,
  create,
  divideDependencies,
  multiplyDependencies,
  subtractDependencies,
} from "mathjs"
import { describe, expect, it } from "vitest"
import { fourBarPose, fourBarToggles, triangleAngle } from "../../src/linkage/four-bar/pose.js"
import { type FourBarInput, fourBar, fourBarLimits, grashof } from "../../src/linkage/index.js"
import { derivative } from "./difference.js"
import { highest } from "./highest.js"
import { apart, lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

const DEG = Math.PI / 180

describe("fourBar", () => {
  it("agrees with Freudenstein's half-angle solution, both branches, over random linkages near and far from toggles", () => {
    const random = lehmer(11)
    let [worst, worstAtToggle, met] = [0, 0, 0]
    for (let k = 0; k < 3000; k++) {
      const [d, a, b, c] = [random.real(0.02, 0.2), random.real(0.01, 0.2), random.real(0.02, 0.2), random.real(0.02, 0.2)]
      // every third input angle is put close to a toggle, where there is one
      const limits = fourBarLimits.attempt({ ground: d, input: a, coupler: b, output: c })
      const edge = limits.ok && k % 3 === 0 ? (limits.value.inputExtended ?? limits.value.inputFolded) : null
      const t2 = edge === null ? random.real(-Math.PI, Math.PI) : edge + random.sign() * 10 ** random.real(-9, -2)
      const pair = (["open", "crossed"] as const).map((branch) => fourBarPose(d, a, b, c, t2, branch))
      const [open, crossed] = pair
      if (open === undefined || crossed === undefined || typeof open === "number" || typeof crossed === "number") continue
      met++
      const [k1, k2, k3] = [d / a, d / c, (a * a - b * b + c * c + d * d) / (2 * a * c)]
      const A = Math.cos(t2) - k1 - k2 * Math.cos(t2) + k3
      const B = -2 * Math.sin(t2)
      const C = k1 - (k2 + 1) * Math.cos(t2) + k3
      const root = Math.sqrt(Math.max(0, B * B - 4 * A * C))
      const textbook = [2 * Math.atan2(-B - root, 2 * A), 2 * Math.atan2(-B + root, 2 * A)]
      const off = Math.max(apart(open.outputAngle, textbook[0] as number), apart(crossed.outputAngle, textbook[1] as number))
      const sine = Math.sin(open.transmissionAngle)
      // the textbook's root loses half its digits at a toggle and its leading coefficient can vanish
      const scale = Math.abs(A) < 1e-3 ? 1e-3 : 1
      if (sine > 0.05) worst = Math.max(worst, off * scale)
      else worstAtToggle = Math.max(worstAtToggle, off * sine * scale)
      // and the loop closes, whichever branch
      for (const pose of [open, crossed]) {
        const gap = Math.hypot(
          a * Math.cos(t2) + b * Math.cos(pose.couplerAngle) - c * Math.cos(pose.outputAngle) - d,
          a * Math.sin(t2) + b * Math.sin(pose.couplerAngle) - c * Math.sin(pose.outputAngle),
        )
        // half the digits go where the two circles only just touch
        expect(gap).toBeLessThan(sine > 1e-3 ? 1e-13 : 1e-9)
      }
    }
    expect(met).toBeGreaterThan(1600)
    expect(worst).toBeLessThan(1e-11)
    expect(worstAtToggle).toBeLessThan(1e-10)
  })

  it("has speeds and accelerations that central differences confirm", () => {
    const random = lehmer(5)
    let [worstSpeed, worstChange, met] = [0, 0, 0]
    for (let k = 0; k < 500; k++) {
      const [w, al] = [random.real(-5, 5), random.real(-10, 10)]
      const input: FourBarInput = {
        ground: random.real(0.05, 0.15),
        input: random.real(0.02, 0.1),
        coupler: random.real(0.05, 0.15),
        output: random.real(0.05, 0.15),
        inputAngle: random.real(-3, 3),
        assembly: random.sign() > 0 ? "open" : "crossed",
        inputSpeed: w,
        inputAcceleration: al,
        pointRadius: random.real(0, 0.2),
        pointAngle: random.real(-2, 2),
      }
      const now = fourBar.attempt(input)
      if (!now.ok || Math.sin(now.value.transmissionAngle) < 0.2) continue
      met++
      const at = (t: number) =>
        fourBar({ ...input, inputAngle: (input.inputAngle as number) + w * t + (al * t * t) / 2, inputSpeed: w + al * t })
      const v = now.value
      // angles relative to now, so that none wraps
      const turn = (angle: number, from: number) => Math.asin(Math.sin(angle - from))
      const places = derivative((t) => {
        const o = at(t)
        return [turn(o.couplerAngle, v.couplerAngle), turn(o.outputAngle, v.outputAngle), o.pointX as number, o.pointY as number]
      }, 2e-5)
      const speeds = derivative((t) => {
        const o = at(t)
        return [o.couplerSpeed, o.outputSpeed, o.pointSpeedX as number, o.pointSpeedY as number]
      }, 2e-5)
      const [speed, change] = [
        [v.couplerSpeed, v.outputSpeed, v.pointSpeedX, v.pointSpeedY],
        [v.couplerAcceleration, v.outputAcceleration, v.pointAccelerationX, v.pointAccelerationY],
      ] as [number[], number[]]
      for (const [i, value] of speed.entries())
        worstSpeed = Math.max(worstSpeed, Math.abs(value - (places[i] as number)) / (1 + Math.abs(w) + Math.abs(value)))
      for (const [i, value] of change.entries())
        worstChange = Math.max(worstChange, Math.abs(value - (speeds[i] as number)) / (1 + w * w + Math.abs(al) + Math.abs(value)))
    }
    expect(met).toBeGreaterThan(200)
    expect(worstSpeed).toBeLessThan(1e-7)
    expect(worstChange).toBeLessThan(1e-6)
  })

  it("keeps a parallelogram's coupler still to rounding", () => {
    const out = fourBar({
      ground: 0.07,
      input: 0.04,
      coupler: 0.07,
      output: 0.04,
      inputAngle: 63 * DEG,
      inputSpeed: 2,
      inputAcceleration: 1,
    })
    for (const value of [out.couplerAngle, out.couplerSpeed, out.couplerAcceleration]) expect(Math.abs(value)).toBeLessThan(1e-14)
  })

  it("has a mechanical advantage equal to free-body statics of the links", () => {
    const random = lehmer(17)
    let [worst, met] = [0, 0]
    for (let k = 0; k < 800; k++) {
      const input = {
        ground: 0.1,
        input: random.real(0.02, 0.1),
        coupler: random.real(0.05, 0.15),
        output: random.real(0.05, 0.15),
        inputAngle: random.real(-3, 3),
      }
      const out = fourBar.attempt(input)
      if (!out.ok || out.value.mechanicalAdvantage === null || Math.sin(out.value.transmissionAngle) < 0.05) continue
      met++
      // the coupler is a two-force member: its force's moment about each pivot
      const pose = fourBarPose(0.1, input.input, input.coupler, input.output, input.inputAngle, "open")
      if (typeof pose === "number") throw new Error("closed a moment ago")
      const { inputPin: A, outputPin: B } = pose
      const [ux, uy] = [(B.x - A.x) / input.coupler, (B.y - A.y) / input.coupler]
      const onOutput = (B.x - 0.1) * uy - B.y * ux
      const onInput = A.x * uy - A.y * ux
      worst = Math.max(worst, Math.abs((out.value.mechanicalAdvantage * onInput) / onOutput - 1))
    }
    expect(met).toBeGreaterThan(400)
    expect(worst).toBeLessThan(1e-8)
  })

  it("refuses by name, with how far off and what would work", () => {
    const far = fourBar.attempt({ ground: 0.1, input: 0.075, coupler: 0.045, output: 0.085, inputAngle: 120 * DEG })
    const refusal = refusalOf(far)
    expect(refusal.noSolution).toBe("cannot-close")
    const f = Math.hypot(0.1 - 0.075 * Math.cos(120 * DEG), 0.075 * Math.sin(120 * DEG))
    expect(refusal.shortBy).toBeCloseTo(f - 0.13, 12)
    expect(
      fourBar.attempt({ ground: 0.1, input: 0.075, coupler: 0.045, output: 0.085, inputAngle: refusal.nearest.inputAngle as number }).ok,
    ).toBe(true)
    const free = fourBar.attempt({ ground: 0.1, input: 0.1, coupler: 0.08, output: 0.08, inputAngle: 0 })
    expect(refusalOf(free).noSolution).toBe("indeterminate")
    const toggle = fourBar.attempt({ ground: 0.1, input: 0.1, coupler: 0.12, output: 0.08, inputAngle: Math.PI })
    expect(refusalOf(toggle).noSolution).toBe("dead-point")
  })

  it("says how far a dead point is from where the links close clear of it, as a scan finds", () => {
    // 3, 4, 5: square to the ground the input pin is 500 mm from the output pivot, as far as coupler and output reach together
    const links = { ground: 0.4, input: 0.3, coupler: 0.3, output: 0.2 }
    const at = Math.PI / 2
    const { noSolution, shortBy, nearest } = refusalOf(fourBar.attempt({ ...links, inputAngle: at }))
    expect(noSolution).toBe("dead-point")
    expect(Math.abs((nearest.inputAngle as number) - at)).toBeCloseTo(shortBy, 12)
    const answers = (off: number) => [at - off, at + off].some((inputAngle) => fourBar.attempt({ ...links, inputAngle }).ok)
    expect(answers(shortBy)).toBe(true)
    expect(shortBy).toBeLessThan(1e-3)
  })

  it("forgives rounding in proportion to the links, and nothing more", () => {
    // coupler and output 0.2 nm too short beside 200 m of links, and 0.4 nm
    expect(fourBarPose(100, 50, 30, 20 - 1e-10, 0, "open")).toBeTypeOf("object")
    expect(fourBarPose(100, 50, 30, 20 - 4e-10, 0, "open")).toBeCloseTo(4e-10, 13)
    // the input pin 0.1 nm from the output pivot leaves the output as free as on it
    expect(fourBarPose(100, 100, 50, 50, 1e-12, "open")).toBe(0)
    expect(fourBarPose(100, 100, 50, 50, 4e-12, "open")).toBeTypeOf("object")
  })

  it("offers the middle of what little an input can turn", () => {
    const links = { ground: 0.1, input: 0.1, coupler: 0.1, output: 1e-5 }
    for (const inputAngle of [0.2, 2]) {
      const { nearest } = refusalOf(fourBar.attempt({ ...links, inputAngle }))
      const at = (reach: number) => 2 * Math.asin(reach / 0.2)
      expect(nearest.inputAngle).toBeCloseTo((at(0.1 + 1e-5) + at(0.1 - 1e-5)) / 2, 9)
    }
  })

  it("forgives rounding of a triangle in one line and nothing more", () => {
    // cosines of 1 + 1e-13, 1 + 1e-11, −1 − 1e-13 and −1 − 1e-11 between two sides of 1
    expect(triangleAngle(1, 1 + 1e-6, 1e-6 - 1e-7)).toBe(0)
    expect(triangleAngle(1, 1 + 1e-5, 1e-5 - 1e-6)).toBeNull()
    expect(triangleAngle(1, 1, 2 + 1e-13)).toBe(Math.PI)
    expect(triangleAngle(1, 1, 2 + 1e-11)).toBeNull()
    expect(triangleAngle(1, 1, Number.NaN)).toBeNull()
  })

  it("keeps every digit of the places where its links come into line, as an arc cosine of 64 digits", () => {
    const functions = {
      ...acosDependencies,
      ...addDependencies,
      ...bignumberDependencies,
      ...divideDependencies,
      ...multiplyDependencies,
      ...subtractDependencies,
    }
    const { bignumber, acos, add, subtract, multiply, divide } = create(functions, { number: "BigNumber", precision: 64 })
    let worst = 0
    // exact: a whole number of 2⁻⁵²
    const exact = (length: number) => divide(bignumber(String(length * 2 ** 52)), bignumber(String(2 ** 52)))
    for (const gap of [10, 17, 24, 30, 36, 43].map((k) => 2 ** -k)) {
      // extended just short of the whole line, and folded just past the difference
      for (const [ground, input, coupler, output] of [
        [0.125, 0.03125, 0.09375 - gap, 0.0625],
        [0.125, 0.03125, 0.15625 + gap, 0.0625],
      ] as const) {
        const { extended, folded } = fourBarToggles(ground, input, coupler, output)
        const isExtended = coupler < ground
        const [d, a, b, c] = [ground, input, coupler, output].map(exact) as [never, never, never, never]
        const reach = isExtended ? add(b, c) : subtract(b, c)
        const squares = subtract(add(multiply(d, d), multiply(a, a)), multiply(reach, reach))
        const angle = Number(acos(divide(squares, multiply(multiply(2, d), a)) as never))
        const [is, from] = isExtended ? [extended as number, Math.PI] : [folded as number, 0]
        worst = Math.max(worst, Math.abs(is - angle) / Math.max(Math.abs(angle - from), isExtended ? 1e-3 : 0))
      }
    }
    expect(worst).toBeLessThan(1e-12)
  })

  it("keeps its digits where the input pin comes next to the output pivot: a kite's output stands at half the input and what the coupler adds", () => {
    for (const angle of [1e-3, 1e-6, 1e-9, -1e-9, 3e-11]) {
      const pose = fourBarPose(0.1, 0.1, 0.3, 0.3, angle, "open")
      if (typeof pose === "number") throw new Error("closes")
      // both equal links lean by what half the diagonal is of one; left of it for a positive angle
      const lean = Math.asin((0.1 * Math.sin(Math.abs(angle) / 2)) / 0.3)
      expect(Math.sin(pose.outputAngle - (angle / 2 + (angle > 0 ? lean : Math.PI + lean)))).toBeCloseTo(0, 14)
    }
  })
})

describe("grashof and fourBarLimits", () => {
  it("agree with a scan of where the linkage can be assembled", () => {
    const random = lehmer(3)
    const n = 1440
    let [met, worstSwing, worstTransmission] = [0, 0, 0]
    for (let k = 0; k < 120; k++) {
      const links = {
        ground: random.real(0.03, 0.12),
        input: random.real(0.02, 0.12),
        coupler: random.real(0.02, 0.12),
        output: random.real(0.03, 0.12),
      }
      const { ground: d, input: a, coupler: b, output: c } = links
      const kind = grashof.attempt(links)
      if (!kind.ok) {
        expect(2 * Math.max(d, a, b, c)).toBeGreaterThan(d + a + b + c)
        continue
      }
      met++
      const limits = fourBarLimits(links)
      const scan = (far: number, near: number) =>
        Array.from({ length: n }, (_, i) => fourBarPose(d, far, b, near, ((i + 0.5) * 2 * Math.PI) / n, "open"))
      const [input, output] = [scan(a, c), scan(c, a)]
      const whole = (poses: typeof input) => poses.every((p) => typeof p !== "number")
      expect(kind.value.inputTurns).toBe(whole(input))
      expect(kind.value.outputTurns).toBe(whole(output))
      // one assembly: half the closing angles where both ends are stopped, all of them otherwise
      const share = (poses: typeof input, both: boolean) =>
        (poses.filter((p) => typeof p !== "number").length * 2 * Math.PI) / n / (both ? 2 : 1)
      worstSwing = Math.max(
        worstSwing,
        Math.abs(limits.inputSwing - share(input, limits.inputExtended !== null && limits.inputFolded !== null)),
        Math.abs(limits.outputSwing - share(output, limits.outputOuter !== null && limits.outputInner !== null)),
      )
      const least = Math.min(...input.map((p) => (typeof p === "number" ? 2 : p.transmissionAngle)))
      expect(limits.minTransmissionAngle).toBeLessThanOrEqual(least + 1e-12)
      if (kind.value.inputTurns) worstTransmission = Math.max(worstTransmission, least - limits.minTransmissionAngle)
    }
    expect(met).toBeGreaterThan(70)
    expect(worstSwing).toBeLessThan((4 * Math.PI) / n + 1e-9)
    expect(worstTransmission).toBeLessThan(0.05)
  })

  it("puts the output's dead points where its speed is nothing", () => {
    const random = lehmer(29)
    let met = 0
    for (let k = 0; k < 500; k++) {
      const links = { ground: 0.1, input: random.real(0.02, 0.05), coupler: random.real(0.07, 0.13), output: random.real(0.07, 0.1) }
      const limits = fourBarLimits.attempt(links)
      if (!limits.ok || limits.value.timeRatio === null) continue
      met++
      for (const inputAngle of [limits.value.deadOuter, limits.value.deadInner]) {
        const out = fourBar({ ...links, inputAngle: inputAngle as number })
        expect(Math.abs(out.speedRatio)).toBeLessThan(1e-9)
        expect(out.mechanicalAdvantage).toBeNull()
      }
      const outputAt = (inputAngle: number) => fourBar({ ...links, inputAngle }).outputAngle
      const swing = highest(outputAt, 0, 2 * Math.PI, 180) + highest((angle) => -outputAt(angle), 0, 2 * Math.PI, 180)
      expect(swing).toBeGreaterThan(limits.value.outputSwing - 1e-5)
      expect(swing).toBeLessThan(limits.value.outputSwing + 1e-12)
      if (met > 10) break
    }
    expect(met).toBeGreaterThan(9)
  })

  it("name every type", () => {
    const type = (ground: number, input: number, coupler: number, output: number) => grashof({ ground, input, coupler, output }).linkageType
    expect(type(85, 60, 30, 70)).toBe("double-rocker")
    expect(type(70, 40, 70, 40)).toBe("change point")
    expect(refusalOf(grashof.attempt({ ground: 10, input: 1, coupler: 2, output: 3 })).shortBy).toBeCloseTo(4, 12)
  })
})
