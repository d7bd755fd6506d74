import { describe, expect, it } from "vitest"
import { verdictOf } from "../../src/rig/assess/finding.js"
import { findings } from "../../src/rig/assess/index.js"
import { situationOf } from "../../src/rig/assess/situation.js"
import { assess, type RigDocument } from "../../src/rig/index.js"
import { InputError, type SiOf } from "../../src/solver/index.js"
import { replaced } from "../helpers/arbitrary.js"
import { demo, demoNames } from "../helpers/rigs.js"

type Si = SiOf<RigDocument>
type Path = readonly (string | number)[]

const at = (doc: unknown, path: Path): unknown => path.reduce((value, key) => (value as Record<string | number, unknown>)[key], doc)
const set = (doc: Si, path: Path, value: unknown): Si => replaced(doc, path, value) as Si
const scale =
  (...paths: Path[]) =>
  (doc: Si, f: number): Si =>
    paths.reduce((d, path) => set(d, path, (at(d, path) as number) * f), doc)
const without =
  (...path: Path) =>
  (doc: Si): Si =>
    set(doc, path, Array.isArray(at(doc, path)) ? [] : null)
const masses = (doc: Si, f: number): Si => ({
  ...doc,
  hinged: { ...doc.hinged!, masses: doc.hinged!.masses.map((m) => ({ ...m, mass: m.mass * f })) },
})
const speeds = scale(["hinged", "actuator", "noLoadSpeed"], ["hinged", "actuator", "ratedSpeed"])

interface Case {
  /** Demo rig the case starts from. */
  readonly rig?: string
  readonly prepare?: (doc: Si) => Si
  /** One knob: scaled far enough either way it passes through every verdict. */
  readonly vary: (doc: Si, f: number) => Si
  /** How finely the knob is turned; a band of a hundredth needs fine turning. */
  readonly step?: number
  /** Takes away what the check needs; null where the check needs nothing but its own subject and then does not apply. */
  readonly remove: (doc: Si) => Si
  /** Path named as missing, or null where the check no longer applies. */
  readonly missing: string | null
}

const cells = "lantern-moth-cells"
const noArms = without("hinged")
const cases: Readonly<Record<string, Case>> = {
  swing: { vary: scale(["brief", "swing"]), remove: without("brief", "swing"), missing: "brief.swing" },
  "raise-time": { vary: scale(["brief", "raiseTime"]), remove: without("brief", "raiseTime"), missing: "brief.raiseTime" },
  "stage-time": { vary: scale(["brief", "stageTime"]), remove: without("brief", "stageTime"), missing: "brief.stageTime" },
  "peak-force": { vary: masses, remove: without("wiring"), missing: "wiring" },
  "stall-margin": { vary: masses, remove: without("pack"), missing: "pack" },
  "dead-point": { vary: scale(["hinged", "actuator", "stroke"]), remove: noArms, missing: null },
  "side-load": {
    prepare: (d) => set(d, ["hinged", "axisOffset"], 0.004),
    vary: scale(["hinged", "axisOffset"]),
    remove: noArms,
    missing: null,
  },
  holding: { vary: scale(["hinged", "actuator", "holdingForce"]), remove: noArms, missing: null },
  inertia: { vary: speeds, remove: without("wiring"), missing: "wiring" },
  duty: { vary: scale(["duty", "restDuration"]), remove: without("duty"), missing: "duty" },
  "spar-strength": { vary: masses, remove: without("spar"), missing: "spar" },
  "spar-sag": { vary: scale(["spar", "sagLimit"]), remove: without("spar"), missing: "spar" },
  "spar-frequency": { vary: scale(["spar", "tipMass"]), remove: without("spar"), missing: "spar" },
  pin: { vary: scale(["pin", "tube", "wall"]), remove: without("pin"), missing: "pin" },
  "bend-1": { vary: scale(["formed", 0, "bend", "radius"]), remove: without("formed"), missing: null },
  "heat-1": {
    vary: scale(["formed", 0, "heat", "sourceTemperature"]),
    remove: without("formed", 0, "heat", "thickness"),
    missing: "formed.0.heat.thickness",
  },
  "cell-current": { vary: scale(["pack", "cellCurrent"]), remove: without("pack", "cellCurrent"), missing: "pack.cellCurrent" },
  sag: { vary: scale(["pack", "cellResistance"]), remove: without("pack"), missing: "pack" },
  "source-limit": {
    rig: "lantern-moth-bank",
    prepare: (d) => set(d, ["converter", "inputCurrentLimit"], 40),
    vary: scale(["bank", "currentLimit"]),
    remove: without("bank"),
    missing: "pack",
  },
  "start-up": {
    rig: "lantern-moth-bank",
    // a bank whose own resistance does not stand in the way, so that only its limit does
    prepare: (d) =>
      [
        ["converter", "inputCurrentLimit"],
        ["bank", "resistance"],
        ["wiring", "switchResistance"],
        ["wiring", "fuseResistance"],
        ["wiring", "source", "contactResistance"],
        ["wiring", "source", "length"],
      ].reduce((doc, path, i) => set(doc, path, i === 0 ? 90 : 0.001), d),
    vary: scale(["bank", "currentLimit"]),
    remove: without("starting"),
    missing: "starting",
  },
  "converter-window": {
    rig: "ember-lizard-collar",
    vary: scale(["converter", "minInputVoltage"]),
    remove: without("pack"),
    missing: "pack",
  },
  "over-voltage": { step: 1.004, vary: scale(["hinged", "actuator", "ratedVoltage"]), remove: without("pack"), missing: "pack" },
  "day-energy": { vary: scale(["day", "hours"]), remove: without("day"), missing: "day" },
  flight: { vary: scale(["pack", "cellCapacity"]), remove: without("day"), missing: "day.flies" },
  "wire-drop": { vary: scale(["wiring", "dropLimit"]), remove: without("wiring"), missing: "wiring" },
  "wire-heat": {
    prepare: (d) => set(set(d, ["wiring", "source", "awg"], null), ["wiring", "source", "area"], 0.1e-6),
    vary: scale(["wiring", "source", "area"]),
    remove: without("wiring"),
    missing: "wiring",
  },
  fuse: { vary: scale(["wiring", "fuseRating"]), remove: without("wiring", "fuseRating"), missing: "wiring.fuseRating" },
  switch: { vary: scale(["wiring", "switchRating"]), remove: without("wiring", "switchRating"), missing: "wiring.switchRating" },
  "flap-torque": { rig: "ember-lizard-collar", vary: scale(["flaps", "linkage", "flapMass"]), remove: without("flaps"), missing: null },
  "flap-time": { rig: "ember-lizard-collar", vary: scale(["flaps", "flapTime"]), remove: without("flaps"), missing: null },
  "flap-supply": {
    rig: "ember-lizard-collar",
    vary: scale(["flaps", "supplyCurrent"]),
    remove: without("flaps", "supplyCurrent"),
    missing: "flaps.supplyCurrent",
  },
  lights: {
    rig: "ember-lizard-collar",
    vary: scale(["lights", "dimVoltage"]),
    remove: without("lights", "dimVoltage"),
    missing: "lights.dimVoltage",
  },
  "scissor-span": { rig: "reed-dragon-tail", vary: scale(["scissor", "span"]), remove: without("scissor"), missing: null },
  "scissor-force": { rig: "reed-dragon-tail", vary: scale(["scissor", "driverForce"]), remove: without("scissor"), missing: null },
  "scissor-droop": {
    rig: "reed-dragon-tail",
    vary: scale(["scissor", "droopLimit"]),
    remove: without("scissor", "droopLimit"),
    missing: "scissor.droopLimit",
  },
  "load-share": { vary: scale(["parts", 0, "mass"]), remove: without("wearer"), missing: "wearer" },
  lean: { vary: scale(["parts", 0, "forward"]), remove: without("mount"), missing: "mount" },
  "side-balance": {
    prepare: (d) => set(d, ["parts", 0, "left"], 0.1),
    vary: scale(["parts", 0, "left"]),
    remove: without("parts"),
    missing: "parts",
  },
  straps: { vary: scale(["straps", "strapWidth"]), remove: without("straps"), missing: "straps" },
  schedule: { vary: scale(["parts", 0, "mass"]), remove: without("schedule"), missing: "schedule" },
  "heat-stress": { vary: scale(["heat", "wetBulbTemperature"], ["heat", "globeTemperature"]), remove: without("heat"), missing: "heat" },
  "wind-holding": { vary: scale(["wind", "windSpeed"]), remove: without("wind"), missing: "wind" },
  "tip-over": { vary: scale(["wind", "windSpeed"]), remove: without("wearer"), missing: "wearer" },
  ways: { vary: scale(["venue", "own", 0, "width"]), remove: without("venue"), missing: "venue" },
  baggage: { vary: scale(["venue", "packed", "length"], ["venue", "packed", "mass"]), remove: without("venue", "packed"), missing: null },
  reach: { vary: scale(["reach", "forward"]), remove: without("reach"), missing: "reach" },
  pinch: { vary: scale(["pinch", "fixed", 0, "y2"]), remove: without("pinch"), missing: "pinch" },
  contact: {
    // the demo rigs strike at face height, where nothing is allowed
    prepare: (d) => set(set(d, ["contact", "approachSpeed"], 0.1), ["contact", "region"], "chest"),
    vary: scale(["contact", "approachSpeed"]),
    remove: without("contact"),
    missing: "contact",
  },
  mass: { vary: scale(["budget", "mass"]), remove: without("budget", "mass"), missing: "budget.mass" },
  price: { vary: scale(["budget", "price"]), remove: without("budget", "price"), missing: "budget.price" },
  "part-count": {
    vary: (d, f) => set(d, ["budget", "parts"], Math.max(1, Math.round(20 * f))),
    remove: without("budget", "parts"),
    missing: "budget.parts",
  },
}

/** One check's finding on a document, or undefined where it does not apply. */
const finding = (doc: Si, id: string) => findings(doc, id)[0]?.found

describe("every check meets, is marginal, falls short and lacks data", () => {
  it.each(Object.entries(cases))("%s", (id, { rig = cells, prepare, vary, step = 1.025, remove, missing }) => {
    const base = assess.read(demo(rig))
    const start = prepare ? prepare(base) : base
    const seen = new Map<string, string>()
    // from the document's own value outwards, both ways, until all three verdicts have been met
    for (let i = 0; i <= 260 && seen.size < 3; i++)
      for (const f of [step ** i, step ** -i]) {
        const found = finding(vary(start, f), id)
        if (!found || found.missing !== null) continue
        const verdict = verdictOf(found)
        if (!seen.has(verdict)) seen.set(verdict, found.why)
        expect(found.why.length).toBeGreaterThan(10)
        expect(found.source.length).toBeGreaterThan(5)
        expect(found.why).not.toMatch(/NaN|undefined|Infinity/)
      }
    expect([...seen.keys()].sort()).toEqual(["falls short", "marginal", "meets"])
    const lacking = finding(remove(start), id)
    if (missing === null) expect(lacking).toBeUndefined()
    else {
      expect(verdictOf(lacking!)).toBe("not enough data")
      expect(lacking!.missing).toBe(missing)
    }
  })
  it("leaves no check without a case", () => {
    const ids = new Set(demoNames.flatMap((name) => findings(assess.read(demo(name))).map(({ check }) => check.id)))
    expect([...ids].filter((id) => !cases[id]).sort()).toEqual([])
  })
  it("asks for a mechanism where there is none", () => {
    const bare = finding(assess.read({ version: 1, name: "an idea" }), "mechanism")
    expect(bare!.missing).toBe("hinged")
  })
})

describe("assess", () => {
  it.each(demoNames)("%s is assessed without gaps", (name) => {
    const result = assess(demo(name))
    expect(result.findings.filter((f) => f.verdict === "not enough data").map((f) => `${f.check}: ${f.missing}`)).toEqual([])
    expect(result.findings.length).toBe(result.fallsShort + result.marginal + result.meets)
    expect(result.findings.length).toBeGreaterThanOrEqual(15)
  })
  it("puts first what threatens most", () => {
    const { findings: list } = assess(demo("lantern-moth-bank"))
    const rank = ["falls short", "marginal", "not enough data", "meets"]
    const ranks = list.map((f) => rank.indexOf(f.verdict))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    const margins = list.filter((f) => f.verdict === "falls short").map((f) => f.margin!)
    expect(margins).toEqual([...margins].sort((a, b) => a - b))
  })
  it("a stall makes the checks of the move fall short with the reason, and no other", () => {
    const doc = demo(cells)
    const heavy = { ...doc, hinged: { ...doc.hinged!, masses: [{ name: "anvil", mass: "15 kg" as const, radius: "0.8 m" as const }] } }
    const list = assess(heavy).findings
    expect(list.find((f) => f.check === "raise-time")).toMatchObject({ verdict: "falls short", margin: -1 })
    expect(list.find((f) => f.check === "raise-time")!.why).toContain("stalls at")
    expect(list.find((f) => f.check === "price")!.verdict).toBe("meets")
  })
  it("says so where the day is too short for its moves", () => {
    const doc = assess.read(demo(cells))
    const found = finding({ ...doc, day: { ...doc.day!, moves: 1000 } }, "day-energy")!
    expect(verdictOf(found)).toBe("falls short")
    expect(found.why).toMatch(/1000 moves alone take .* the day has 4 h/)
  })
  it("reckons wind on an arm past the vertical as on its mirror image before it", () => {
    const doc = assess.read(demo(cells))
    // turning moving anchor and masses one way and the arm the other leaves the same arm, named from another line
    const turned = (by: number): Si => ({
      ...doc,
      hinged: {
        ...doc.hinged!,
        movingPivot: { ...doc.hinged!.movingPivot, angle: doc.hinged!.movingPivot.angle - by },
        masses: doc.hinged!.masses.map((m) => ({ ...m, angle: m.angle - by })),
      },
    })
    const before = finding(turned(0.5), "tip-over")!
    const raised = situationOf(doc).ends()![1]
    const past = finding(turned(Math.PI - 2 * raised - 0.5), "tip-over")!
    expect(before.missing).toBeNull()
    expect(situationOf(turned(Math.PI - 2 * raised - 0.5)).ends()![1]).toBeGreaterThan(Math.PI / 2)
    expect(past.value! / before.value!).toBeCloseTo(1, 9)
  })
  it("takes partial documents and refuses wrong ones whole", () => {
    const { pack, ...rest } = demo(cells)
    expect(pack).toBeDefined()
    expect(assess(rest as RigDocument).findings.find((f) => f.check === "raise-time")).toMatchObject({
      verdict: "not enough data",
      missing: "pack",
    })
    const outcome = assess.attempt({ ...rest, wearer: { bodyMass: "68 km", stature: "1.7 m" }, wnd: {} })
    if (outcome.ok || !(outcome.error instanceof InputError)) throw new Error("expected an InputError")
    expect(outcome.error.issues.map((i) => i.path.join("."))).toEqual(["wearer.bodyMass", "wnd"])
    expect(outcome.error.message).toContain("did you mean 'wind'?")
  })
  it("never reads as permission", () => {
    expect(assess(demo(cells)).cautions[0]!.message).toMatch(/not a clearance.*take it off/)
  })
})
