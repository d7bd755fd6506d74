// Duty, strength and inertia: each value against a second computation, a planted change, a missing field.
import { describe, expect, it } from "vitest"
import { move, type Rig } from "../../src/rig/index.js"
import { creature } from "../helpers/rigs.js"
import { boom, changed, drive, finding, LEVEL, neck, type Path, rank, START, with_ } from "./boom.js"

/** Peak temperature rise of a lumped motor under a pattern that goes on for ever, heat of 1 K per time constant: small steps in time. */
function peakRise(run: number, rest: number, tau: number): number {
  let [rise, before] = [0, -1]
  // midpoint steps, until a round changes nothing
  const steps = (duration: number, heat: number) => {
    const n = Math.max(200, Math.ceil(duration / (tau / 2000)))
    const dt = duration / n
    for (let i = 0; i < n; i++) {
      const half = rise + ((heat - rise) / tau) * (dt / 2)
      rise += ((heat - half) / tau) * dt
    }
  }
  for (let round = 0; round < 4000 && Math.abs(rise - before) > 1e-9; round++) {
    before = rise
    if (rest > 0) steps(rest, 0)
    if (rest === 0) return 1
    steps(run, 1)
  }
  return rise
}

describe("duty of a drive", () => {
  const rated = { ratedDuty: "10 %", ratedRunDuration: "2 min", timeConstant: "10 min", ambientTemperature: "35 degC" }
  const legs = changed(creature("umbrella-legs"), ["motions", 0, "duty"], rated)
  const duty = (rig: Rig) => finding(rig, "duty", "front legs")
  it("comes to the temperature that small steps in time find", () => {
    const { cycleDuration, out, back } = move({ ...legs, motion: "front legs" })
    // the rating ends its runs at 80 °C in 25 °C, 120 s on and 1080 s off
    const heat = (80 - 25) / peakRise(120, 1080, 600)
    const share = Math.max(out.peakCurrent, back.peakCurrent) / 0.55
    // fifty moves in four hours
    const rise = heat * share ** 2 * peakRise(cycleDuration, (4 * 3600) / 50 - cycleDuration, 600)
    expect(Math.abs((duty(legs).value as number) / (35 + rise) - 1)).toBeLessThan(2e-3)
    expect(duty(legs)).toMatchObject({ verdict: "meets", limit: 80, relation: "at-most", severity: "function" })
    expect(duty(legs).utilisation).toBeCloseTo(((duty(legs).value as number) - 35) / 45, 10)
  })
  it("falls short where the costume is hot, the moves follow at once, or there is no time for them", () => {
    expect(duty(changed(legs, ["motions", 0, "duty", "ambientTemperature"], "78 degC")).verdict).toBe("falls short")
    expect(duty(changed(legs, ["motions", 0, "duty", "restDuration"], 0)).verdict).toBe("falls short")
    expect(duty(changed(legs, ["day", "moves"], 2000)).sentence).toMatch(/no time to rest/)
    expect(duty(changed(legs, ["motions", 0, "duty", "ratedRunDuration"], "2 s")).sentence).toMatch(/first run is too long/)
    expect(duty(changed(legs, ["budget", "price"], 1))).toEqual(duty(legs))
  })
  it("is marginal where the day asks for fewer moves than bring it to its limit", () => {
    const few = with_(legs, [["motions", 0, "duty", "restDuration"], 0], [["day", "moves"], 2])
    expect(duty(few)).toMatchObject({ verdict: "marginal", value: 80, limit: 80 })
    expect(duty(few).sentence).toMatch(/in a row it must rest, and the day asks for 2/)
  })
  it("names what is missing", () => {
    expect(finding(creature("umbrella-legs"), "duty", "hind legs").missing).toBe("motions[1].duty")
    expect(duty(changed(legs, ["day", "moves"], null)).missing).toBe("day.moves")
    expect(duty(changed(legs, ["day", "hours"], null)).missing).toBe("day.hours")
    expect(duty(with_(legs, [["motions", 0, "duty", "restDuration"], "5 min"], [["day", "moves"], null])).missing).toBe(null)
    const fan = changed(creature("nine-feather-fan"), ["motions", 0, "duty"], rated)
    expect(finding(changed(fan, ["motions", 0, "drive", "ratedTorque"], null), "duty", "fan").missing).toBe("motions[0].drive")
  })
})

describe("strength of a transmission", () => {
  const line: Path = ["motions", 0, "transmission", 0]
  const fan = with_(creature("nine-feather-fan"), [[...line, "lineStrength"], "400 N"], [[...line, "lineType"], "fibre-rope"])
  it("carries the line's pull that statics of each feather's triangle give", () => {
    // hinge, fixed pivot 120 mm above it and the line's end on the feather: the line closes the triangle
    const feathers: readonly (readonly [radius: number, start: number])[] = [
      [149.1, 253.07],
      [95.4, 202.58],
      [71.5, 180.71],
      [58.3, 168.87],
      [50.2, 161.71],
      [44.9, 157.07],
      [41.6, 154.2],
      [39.6, 152.48],
      [38.6, 151.61],
    ]
    const pull = (wound: number) =>
      feathers.reduce((sum, [radius, start]) => {
        const [r, d, l] = [radius / 1000, 0.12, start / 1000 - wound]
        const between = Math.acos((r * r + d * d - l * l) / (2 * r * d))
        const lever = (d * r * Math.sin(between)) / l
        const weight = 9.80665 * (0.042 * 0.34 + 0.008 * 0.7) * Math.sin(between)
        return sum + (weight + 0.005) / lever
      }, 0)
    const winds = (((254.3 * Math.PI) / 180) * 0.0315) / 2
    const most = Math.max(...Array.from({ length: 2001 }, (_, k) => pull((winds * k) / 2000)))
    const found = finding(fan, "strength", "fan")
    expect(Math.abs((found.value as number) / most - 1)).toBeLessThan(1e-3)
    // five times the pull: shared/references/drive.json, factors for hoisting
    expect(found).toMatchObject({ verdict: "meets", limit: 80, relation: "at-most", severity: "safety" })
    expect(found.utilisation).toBeCloseTo(most / 80, 3)
  })
  it("falls short with a thinner line, and knows nothing of the purse", () => {
    expect(finding(changed(fan, [...line, "lineStrength"], "200 N"), "strength", "fan").verdict).toBe("falls short")
    expect(finding(changed(fan, ["budget", "price"], 1), "strength", "fan")).toEqual(finding(fan, "strength", "fan"))
  })
  it("carries most however the wearer stands, upright as well as leaning", () => {
    const spur = [{ type: "gear", stages: [{ type: "spur", drivingTeeth: 20, drivenTeeth: 20, meshEfficiency: 1 }], maxTorque: "9 N m" }]
    // from level to upright: leaning out takes the head's weight off its lever, or puts the whole of it on
    const raised = with_(boom, [neck("startAngle"), "20 deg"], [drive("travel"), "40 deg"], [["motions", 0, "transmission"], spur])
    const lever = (lean: number) =>
      Math.max(...Array.from({ length: 4001 }, (_, k) => LEVEL * Math.cos(((20 + k / 100) * Math.PI) / 180 + (lean * Math.PI) / 180)))
    for (const lean of [-30, 30]) {
      const found = finding(changed(raised, ["posture"], { leanLeft: `${lean} deg` }), "strength", "boom")
      expect(Math.abs((found.value as number) / Math.max(lever(-30), lever(0), lever(30)) - 1)).toBeLessThan(1e-6)
    }
  })
  it("names the field of the element that states nothing", () => {
    expect(finding(creature("nine-feather-fan"), "strength", "fan").missing).toBe("motions[0].transmission[0].lineStrength")
    expect(finding(creature("folding-skew-wing"), "strength", "fold").missing).toBe("motions[0].transmission[0].maxTorque")
  })
  it("carries one boom's moment in a boom's own gears, and all of them in shared ones, each drive its share", () => {
    const gears = (maxTorque: string | null) => [
      { type: "gear", stages: [{ type: "spur", drivingTeeth: 20, drivenTeeth: 20, meshEfficiency: 1 }], maxTorque },
    ]
    const two = with_(boom, [["motions", 0, "mechanisms", 0, "count"], 2], [drive("currentLimit"), null])
    const slow = changed(two, drive("travel"), "80 deg")
    const reversed = changed(slow, ["motions", 0, "mechanisms", 0, "reversed"], true)
    const own = changed(reversed, ["motions", 0, "mechanisms", 0, "transmission"], gears("10 N m"))
    // so quick that its inertia counts: what it carries is told, and no promise made of it
    expect(finding(own, "strength", "boom")).toMatchObject({ verdict: "cannot be judged", because: "inertia: boom", limit: 10 })
    expect(finding(own, "strength", "boom").value).toBeCloseTo(LEVEL, 3)
    // the boom comes to level upright: leaning as stated, whichever way, hides nothing of that
    for (const leanLeft of ["25 deg", "-25 deg"])
      expect(finding(changed(own, ["posture"], { leanLeft }), "strength", "boom").value).toBeCloseTo(LEVEL, 3)
    const shared = changed(reversed, ["motions", 0, "transmission"], gears("10 N m"))
    expect(finding(shared, "strength", "boom").value).toBeCloseTo(2 * LEVEL, 3)
    expect(finding(shared, "strength", "boom").verdict).toBe("falls short")
    const both = changed(shared, ["motions", 0, "mechanisms", 0, "transmission"], gears(null))
    // what is known and fails is told before what is not known
    expect(finding(both, "strength", "boom").verdict).toBe("falls short")
  })
})

describe("energy of motion", () => {
  const slow = changed(boom, drive("backEmfConstant"), 40)
  it("against the energy moved is as the motor's line and the boom's circle give it", () => {
    // stiffly fed but for the plug's 0.1 Ω, which all the current passes
    const rates = (way: 1 | -1) =>
      Array.from({ length: 2001 }, (_, k) => {
        const angle = -START + (START * k) / 2000
        const current = 0.1 + (way === 1 ? (LEVEL * Math.cos(angle)) / 40 : 0)
        return { current, rate: (12 - current * 1.6) / 40 }
      })
    const shares = ([1, -1] as const).map((way) => {
      const places = rates(way)
      const fastest = Math.max(...places.map((p) => p.rate))
      const drawn = places.slice(1).reduce((sum, p) => sum + ((12 * p.current) / p.rate) * (START / 2000), 0)
      return (0.64 * fastest ** 2) / 2 / Math.max(drawn, LEVEL * Math.sin(START))
    })
    const found = finding(slow, "inertia", "boom")
    expect(Math.abs((found.value as number) / Math.max(...shares) - 1)).toBeLessThan(3e-3)
    expect(found).toMatchObject({ verdict: "meets", limit: 0.05, relation: "at-most", missing: null })
  })
  it("counts the posture in which it is most", () => {
    const lean = (leanLeft: string) => finding(changed(slow, ["posture"], { leanLeft }), "inertia", "boom").value as number
    expect(lean("25 deg")).toBeCloseTo(lean("-25 deg"), 9)
    expect(lean("25 deg")).toBeGreaterThanOrEqual(finding(slow, "inertia", "boom").value as number)
  })
  it("above a twentieth is outside of what is calculated, and says so", () => {
    const quick = finding(boom, "inertia", "boom")
    expect(quick.verdict).toBe("cannot be judged")
    expect(quick.sentence).toMatch(/% of the energy moved in it, more than 5 %/)
    expect(finding(changed(slow, drive("rotorInertia"), "60 kg m2"), "inertia", "boom").verdict).toBe("cannot be judged")
    expect(finding(changed(slow, ["wind", "windSpeed"], "9 m/s"), "inertia", "boom")).toEqual(finding(slow, "inertia", "boom"))
  })
})

describe("along what is declared to worsen a check, no verdict rises", () => {
  const legs = changed(creature("umbrella-legs"), ["motions", 0, "duty"], { ratedDuty: "10 %", ratedRunDuration: "2 min" })
  const sweeps: readonly (readonly [string, Rig, Path, readonly unknown[]])[] = [
    ["duty", legs, ["day", "moves"], [1, 50, 200, 400, 600, 900, 2000]],
    ["duty", with_(legs, [["motions", 0, "duty", "restDuration"], "5 s"]), ["day", "moves"], [1, 3, 10, 100, 900]],
    ["duty", legs, ["day", "hours"], ["10 h", "4 h", "1 h", "20 min", "10 min"]],
    ["duty", legs, ["motions", 0, "duty", "ambientTemperature"], ["0 degC", "30 degC", "60 degC", "78 degC"]],
    [
      "duty",
      with_(legs, [["motions", 0, "duty", "restDuration"], "5 s"]),
      ["motions", 0, "duty", "ratedDuty"],
      ["80 %", "20 %", "5 %", "1 %"],
    ],
  ]
  it.each(sweeps)("%s, case %#", (id, rig, path, values) => {
    const ranks = values.map((value) => rank(finding(changed(rig, path, value), id)))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    expect(new Set(ranks).size).toBeGreaterThan(1)
  })
})
