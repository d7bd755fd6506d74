// Faults planted in every demo rig: each check falls short on one in a field that it reads, and does not stir for any other.
import { describe, expect, it } from "vitest"
import { checks } from "../../src/rig/check/assess.js"
import type { Found, RigCheck } from "../../src/rig/check/check.js"
import { judged } from "../../src/rig/check/conditions.js"
import { told, verdictOf } from "../../src/rig/check/finding.js"
import type { RigSi } from "../../src/rig/whole/faults.js"
import { everything, put, shaken, valuesAt } from "../helpers/planted.js"
import { creatureNames, demoNames, members, rigSi, siOf } from "../helpers/rigs.js"
import { boom } from "./boom.js"

const rigs: ReadonlyMap<string, RigSi> = new Map([
  ...[...creatureNames, ...demoNames].map((name) => [name, rigSi(name)] as const),
  ["everything", everything()],
  ["boom", siOf(boom)],
])

type Fault = (rig: RigSi) => RigSi

/** Values put at every place of the document that a path names. */
const planted =
  (values: Readonly<Record<string, unknown>>): Fault =>
  (rig) =>
    Object.entries(values).reduce(
      (changed, [path, value]) => valuesAt(changed, path).reduce((one, at) => put(one, at, value), changed),
      rig,
    )

/** The same actuators rated lower on the same line of speed and current over force; other drives by their own rating. */
const rated =
  (share: number): Fault =>
  (rig) => ({
    ...rig,
    motions: rig.motions.map((one) => {
      const drive = one.drive as unknown as Record<string, number> & { type: string }
      if (drive.type !== "linear-actuator") return { ...one, drive: { ...one.drive, ratedTorque: 1e-5 } }
      const at = (key: string) => drive[key] as number
      const line = (none: string, full: string) => at(none) + share * (at(full) - at(none))
      return {
        ...one,
        drive: {
          ...one.drive,
          ratedForce: share * at("ratedForce"),
          ratedSpeed: line("noLoadSpeed", "ratedSpeed"),
          ratedCurrent: line("noLoadCurrent", "ratedCurrent"),
        },
      }
    }),
  })

/** A load of constant power on every bus. */
const loaded =
  (power: number): Fault =>
  (rig) => {
    const tree = rig.power
    if (!tree) return rig
    const loads = tree.buses.map(({ name }) => ({ type: "constant-power" as const, name: `kiln of ${name}`, bus: name, power }))
    return { ...rig, power: { ...tree, loads: [...tree.loads, ...loads] } }
  }

/** A controller on every bus that starts anew below so much. */
const receivers =
  (resetVoltage: number): Fault =>
  (rig) => {
    const tree = rig.power
    if (!tree) return rig
    const loads = tree.buses.map(({ name }) => ({
      type: "controller" as const,
      name: `box of ${name}`,
      bus: name,
      current: 0,
      resetVoltage,
    }))
    return { ...rig, power: { ...tree, loads: [...tree.loads, ...loads] } }
  }

/** All parts listed, so heavy together, and their centre moved. */
const burdened =
  (mass: number, moved: { readonly forward?: number; readonly left?: number } = {}): Fault =>
  (rig) => {
    const count = rig.parts.reduce((sum, part) => sum + part.count, 0)
    return { ...rig, parts: rig.parts.map((part) => ({ ...part, mass: mass / count, ...moved })) }
  }

/** Everything that moves, so many times as heavy. */
const heavier =
  (times: number): Fault =>
  (rig) =>
    ["masses[].mass", "tipMass", "armsMass"]
      .flatMap((key) => valuesAt(rig, `motions[].mechanisms[].${key}`))
      .reduce((one, at) => put(one, at, times * (at.reduce<unknown>((here, step) => (here as never)[step], one) as number)), rig)

/** Each motion told to be out and back again at once. */
const hurried: Fault = (rig) => ({
  ...rig,
  programme: rig.motions.flatMap(({ name: motion }) => [
    { at: 0, motion, to: 1 },
    { at: 0.001, motion, to: 0 },
  ]),
})

const unheld = planted({
  "motions[].drive.holdingForce": 0,
  "motions[].drive.holdingTorque": 0,
  "motions[].transmission[].leadAngle": 0.7,
})

/** A fault that each check must see; of several the first that it tells, since a harder one may stop the motion before. */
const faults: Readonly<Record<string, readonly Fault[]>> = {
  passes: [heavier(1000)],
  "duration-out": [planted({ "motions[].wanted.duration": 1e-3 })],
  "duration-back": [planted({ "motions[].wanted.duration": 1e-3, "motions[].wanted.backDuration": 1e-3 })],
  "rated-effort": [rated(0.05)],
  swing: [planted({ "motions[].wanted.swing": 600 })],
  span: [planted({ "motions[].wanted.span": 100 })],
  "holds-unpowered": [unheld],
  "programme-slot": [hurried],
  duty: [planted({ "day.moves": 10000 })],
  strength: [planted({ "motions[].transmission[].maxTorque": 1e-4, "motions[].transmission[].lineStrength": 0.1 })],
  // from one that still moves off with too little to spare to one that is stopped
  starts: [1.3, 2, 3, 4, 5, 6, 8, 10, 1000].map(heavier),
  inrush: [receivers(60)],
  "wind-holding": [planted({ "wind.windSpeed": 40, "wind.dragCoefficient": 4 })],
  "power-lost": [(rig) => ({ ...unheld(rig), contact: planted({ "contact.region": "face" })(everything()).contact })],
  "spar-strength": [planted({ "motions[].spar.strength": 1e6 })],
  "spar-sag": [planted({ "motions[].spar.sagLimit": 1e-4 })],
  "spar-frequency": [planted({ "motions[].spar.tipMass": 20 })],
  "packed-size": [planted({ "venue.packed.length": 2 })],
  "start-together": [receivers(60)],
  pin: [planted({ "motions[].pin.bolt": null, "motions[].pin.pinDiameter": 1e-4 })],
  bend: [planted({ "formed[].bend.radius": 0.03 })],
  heating: [planted({ "formed[].heat.sourceTemperature": 250 })],
  "supply-carries": [loaded(1000)],
  "source-current": [planted({ "power.sources[].cellCurrent": 1e-4, "power.sources[].currentLimit": 1e-3 })],
  "bank-sleep": [planted({ "power.sources[].sleepCurrent": 50 })],
  "converter-limit": [planted({ "power.buses[].converter.outputCurrentLimit": 0.01 })],
  "over-voltage": [planted({ "power.sources[].voltage": 60, "power.sources[].series": 30, "power.buses[].converter.outputVoltage": 100 })],
  "controller-voltage": [planted({ "power.loads[].resetVoltage": 60 })],
  "wire-heat": [planted({ "power.buses[].run.ambientTemperature": 90, "power.buses[].run.insulation": 60 })],
  "fuse-carries": [planted({ "power.buses[].fuseRating": 1e-3 })],
  "fuse-protects": [planted({ "power.buses[].fuseRating": 200 })],
  "switch-current": [planted({ "power.buses[].switchRating": 1e-4 })],
  drop: [
    planted({ "power.buses[].run.dropLimit": 1e-4 }),
    planted({ "power.buses[].run.length": 50, "power.buses[].run.dropLimit": 1e-4 }),
  ],
  "day-energy": [planted({ "power.sources[].cellCapacity": 3.6, "power.sources[].energy": 3.6 })],
  flight: [planted({ "power.sources[].cellCapacity": 720000, "power.sources[].energy": 7.2e6 })],
  "load-share": [burdened(40)],
  lean: [burdened(25, { forward: 0.8 })],
  "side-balance": [burdened(25, { left: 0.5 })],
  straps: [planted({ "straps.pressureLimit": 1000 })],
  schedule: [burdened(40)],
  "heat-stress": [planted({ "heat.wetBulbTemperature": 34, "heat.globeTemperature": 60 })],
  "tip-over": [planted({ "wind.windSpeed": 40 })],
  ways: [planted({ "venue.own": [{ name: "cat flap", type: "door", width: 0.2, height: 0.3 }] })],
  reach: [planted({ "reach.forward": 1.5, "reach.outward": 1.5 })],
  contact: [planted({ "contact.region": "face" })],
  mass: [planted({ "budget.mass": 1e-4 })],
  price: [planted({ "budget.price": 0.01 })],
  "part-count": [planted({ "budget.parts": 1 })],
}

/** Checks without a fault of their own here, and why. */
const elsewhere: Readonly<Record<string, string>> = {
  "converter-window": "a voltage outside the window leaves the supply without a state: told by supply-carries",
  "driver-current": "a current beyond the driver's limit stops the motion: told by passes",
  inertia: "cannot be judged where it is not small, never falls short",
  "returned-current": "creatures.test.ts: no demo rig sends current back",
  pinch: "checks-gaps.test.ts: a gap is no field",
}

const verdictOfFound = ({ result }: Found) => ("verdict" in result ? result.verdict : verdictOf(told(result)))
const find = (check: RigCheck, rig: RigSi) => check.find(judged(members, rig))
const passed = (one: Found) => ["meets", "marginal"].includes(verdictOfFound(one))
const short = (one: Found) => verdictOfFound(one) === "falls short"
/** Told already by a check that falls short before it. */
const folded = ({ result }: Found) => "verdict" in result && result.because !== null

describe("a fault planted in a field that it reads", () => {
  it("is known for every check", () => {
    expect(checks.map(({ id }) => id).sort()).toEqual([...Object.keys(faults), ...Object.keys(elsewhere)].sort())
  })
  it.each(checks.filter(({ id }) => faults[id]).map((check) => [check.id, check] as const))("makes %s fall short", (id, check) => {
    let seen = 0
    for (const [name, rig] of rigs) {
      const before = find(check, rig).filter(passed)
      const after = (faults[id] ?? []).flatMap((fault) => find(check, fault(rig)))
      seen += after.filter(short).length
      // where a supply gives up it is told of the bus, not of the whole
      const shown = after.filter((one) => short(one) || folded(one)).map(({ subject }) => (id === "supply-carries" ? "power" : subject))
      for (const { subject } of before) expect(shown, `${name}: ${subject}`).toContain(subject)
    }
    expect(seen, "on some rig").toBeGreaterThan(0)
  })
})

describe("faults in everything that it does not read", () => {
  it.each(checks.map((check) => [check.id, check] as const))("leave %s as it was", (_, check) => {
    for (const [name, rig] of rigs) {
      const other = shaken(rig, check.reads, rigs.get("everything") as RigSi)
      expect(check.find(judged(members, other)), name).toEqual(check.find(judged(members, rig)))
    }
  })
})
