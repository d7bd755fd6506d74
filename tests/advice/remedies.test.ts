// What to change: every remedy put into the document and assessed anew from nothing; faults planted in demo rigs; sizes by brute force.
import { describe, expect, it } from "vitest"
import { type Compromise, type Remedies, type Remedy, remedies, withChanges } from "../../src/advice/index.js"
import { isUnder, valueAt, withValue } from "../../src/advice/remedies/paths.js"
import { assessRig, type Rig, type RigFinding, rigWith } from "../../src/rig/index.js"
import { InputError } from "../../src/solver/index.js"
import { demo } from "../helpers/rigs.js"

const { read } = rigWith()
const planted = (name: string, ...values: readonly (readonly [string, unknown])[]): Rig =>
  values.reduce<Rig>((rig, [path, value]) => withValue(rig, path, value), read(demo(name)))

/** Order of verdicts as a reader has it; what hangs on a check that failed before it counts as failing. */
const order = ({ verdict, because, value }: RigFinding) =>
  verdict === "meets" ? 3 : verdict === "marginal" ? 2 : verdict === "falls short" || (because !== null && value === null) ? 0 : 1
const key = ({ id, subject }: { readonly id: string; readonly subject: string }) => `${id}: ${subject}`

/** What a changed document is worth, by an assessment of its own. */
function became(rig: Rig, remedy: Remedy, before = assessRig(rig).findings) {
  const after = assessRig(withChanges(rig, remedy.changes)).findings
  const of = (one: { readonly id: string; readonly subject: string }) => after.find((other) => key(other) === key(one))
  // a check of the whole tree names the bus that gives up: it is one finding, whatever its subject
  const like = (one: RigFinding) => of(one) ?? after.find((other) => other.id === one.id && !before.some((f) => key(f) === key(other)))
  return {
    worse: before.filter((one) => {
      const now = like(one)
      return now !== undefined && order(now) < order(one)
    }),
    mended: remedy.mends.map((one) => {
      const [was, now] = [before.find((f) => key(f) === key(one)), like(one as unknown as RigFinding)]
      return {
        was: was?.verdict,
        now: now?.verdict ?? "meets",
        better: was !== undefined && (now === undefined || order(now) > order(was)),
      }
    }),
  }
}

function holds(rig: Rig, { remedies: list, assessment, unmended }: Remedies): void {
  for (const remedy of list.slice(0, 3)) {
    const { worse, mended } = became(rig, remedy, assessment.findings)
    expect(worse.map(key), remedy.text).toEqual([])
    expect(remedy.mends.length, remedy.text).toBeGreaterThan(0)
    expect(mended.map(({ was, now }) => [was, now])).toEqual(remedy.mends.map(({ before, after }) => [before, after]))
    expect(
      mended.every(({ better }) => better),
      remedy.text,
    ).toBe(true)
    // told as tried: every value stands in the sentence
    for (const { was, becomes, of } of remedy.changes)
      for (const word of [was, becomes, of]) expect(remedy.text.toLowerCase()).toContain(word.toLowerCase())
  }
  // each finding that presses has its change, or is told as one that nothing mends
  for (const { verdict, change, id, subject } of assessment.findings) {
    if (verdict !== "falls short" && verdict !== "marginal") expect(change).toBeNull()
    else {
      const mends = list.find((one) => one.mends.some((m) => m.id === id && m.subject === subject))
      expect(change).toBe(mends?.text ?? unmended.find((one) => one.id === id && one.subject === subject)?.text)
      expect(change).not.toBeNull()
    }
  }
}

/** Faults planted in demo rigs, and paths of which any mends what the fault broke: the planted one or its equal. */
const faults: readonly (readonly [string, string, readonly (readonly [string, unknown])[], readonly string[]])[] = [
  ["a wire too thin", "lantern-moth-cells", [["power.buses[0].run.awg", 30]], ["power.buses[0].run.awg"]],
  ["a switch too small", "lantern-moth-cells", [["power.buses[0].switchRating", "1 A"]], ["power.buses[0].switchRating"]],
  ["a fuse too small", "umbrella-legs", [["power.buses[0].fuseRating", "1 A"]], ["power.buses[0].fuseRating"]],
  [
    "a foot so heavy that the leg stands still",
    "umbrella-legs",
    [["motions[1].mechanisms[0].masses[1].mass", "1.2 kg"]],
    ["motions[1].mechanisms[0].masses[1]", "motions[1].drive.ratedForce"],
  ],
  [
    "a worm that turns the wing half as far",
    "folding-skew-wing",
    [["motions[0].transmission[0].drivenTeeth", 40]],
    ["motions[0].transmission[0]"],
  ],
  [
    "a converter that needs more than the pack gives",
    "four-bar-dragon",
    [["power.buses[1].converter.minInputVoltage", "11 V"]],
    ["power.buses[1].converter.minInputVoltage", "power.sources[0].series"],
  ],
  [
    "a drum twice too large",
    "nine-feather-fan",
    [["motions[0].transmission[0].drumDiameter", "60 mm"]],
    ["motions[0].transmission[0].drumDiameter"],
  ],
]

describe("remedies", () => {
  it.each(faults)(
    "of %s (%s): the planted change or its equal is among the first three, and what is told holds",
    (_, name, values, equals) => {
      const rig = planted(name, ...values)
      const sound = assessRig(read(demo(name))).findings
      const broken = assessRig(rig).findings.filter(
        (one) => one.verdict === "falls short" && sound.some((other) => key(other) === key(one) && other.verdict !== "falls short"),
      )
      expect(broken.length).toBeGreaterThan(0)
      const found = remedies(rig)
      const first = found.remedies.slice(0, 3)
      const fits = first.filter(
        ({ changes, mends }) =>
          changes.some(({ settings }) => settings.some(({ path }) => equals.some((one) => isUnder(path, one)))) &&
          mends.some((m) => broken.some((b) => key(b) === key(m))),
      )
      expect(fits.length, found.remedies.map(({ text }) => text).join("\n")).toBeGreaterThan(0)
      expect(found.tried).toBeLessThanOrEqual(300)
      holds(rig, found)
    },
  )

  it("takes the nearest size that is sold: by trying every gauge, from nothing", () => {
    const rig = planted("lantern-moth-cells", ["power.buses[0].run.awg", 30])
    const { remedies: list } = remedies(rig, { allowed: ["power.buses[].run.awg"] })
    const verdicts = (awg: number) => assessRig(withValue(rig, "power.buses[0].run.awg", awg)).findings
    const now = assessRig(rig).findings
    for (const { mends, changes } of list) {
      const all = (awg: number) =>
        mends.every((one) => {
          const [a, b] = [now, verdicts(awg)].map((some) => some.find((f) => key(f) === key(one))) as [RigFinding, RigFinding]
          return order(b) > order(a)
        })
      const thinnest = [28, 26, 24, 22, 20, 18, 16].find(all)
      expect(changes[0]?.settings[0]?.value).toBe(thinnest)
    }
    expect(list.length).toBeGreaterThan(0)
  })

  it("mends by two changes what none mends alone: a larger fuse that only a thicker wire allows", () => {
    const rig = planted("lantern-moth-cells", ["power.buses[0].run.awg", 34], ["power.buses[0].fuseRating", "1 A"])
    const allowed = ["power.buses[0].run.awg", "power.buses[0].fuseRating"]
    const found = remedies(rig, { allowed })
    const pair = found.remedies.find(({ mends }) => mends.some(({ id }) => id === "fuse-carries"))
    expect(pair?.changes.map(({ name }) => name).sort()).toEqual(["fuse", "wire-gauge"])
    expect(became(rig, pair as Remedy).worse).toEqual([])
    // alone each of the two falls short: by brute force over every size
    for (const fuse of [2, 3, 4, 5]) {
      const alone = assessRig(withValue(rig, "power.buses[0].fuseRating", fuse)).findings.find(({ id }) => id === "fuse-protects")
      expect(alone?.verdict).toBe("falls short")
    }
  })

  it("says so where nothing mends, with the nearest and what it lacks", () => {
    const rig = planted("lantern-moth-cells", ["power.buses[0].run.awg", 30])
    const { remedies: list, unmended, assessment } = remedies(rig, { allowed: [{ path: "power.buses[0].run.length", min: 1 }] })
    expect(list).toEqual([])
    const drop = unmended.find(({ id }) => id === "drop")
    expect(drop?.text).toMatch(/nothing/)
    expect(assessment.findings.find(({ id }) => id === "drop")?.change).toBe(drop?.text)
    // nothing within the limits: 0.88 m lies below 1 m
    const nearer = remedies(rig, { allowed: ["power.buses[0].run.length"] }).unmended.find(({ id }) => id === "drop")
    expect(nearer?.text).toContain("0.44 m instead of 1.1 m")
  })

  it("tells what mends at a cost, and the cost: a pack a cell short, whose missing cell brings the drives to their rated voltage", () => {
    const rig = planted("folding-skew-wing", ["power.sources[0].series", 2])
    const { remedies: list, compromises, assessment } = remedies(rig, { allowed: ["power.sources[0].series"] })
    expect(list).toEqual([])
    const cell = compromises[0] as Compromise
    expect(cell.changes[0]?.settings).toEqual([{ path: "power.sources[0].series", value: 3 }])
    expect(cell.mends.map(({ id }) => id)).toEqual(expect.arrayContaining(["duration-out", "duration-back"]))
    // all that is worse is told, each no worse than close to its limit and none of it safety
    const { worse } = became(rig, cell, assessment.findings)
    expect(cell.costs.map(key).sort()).toEqual(worse.map(key).sort())
    expect(worse.length).toBeGreaterThan(0)
    const after = assessRig(withChanges(rig, cell.changes)).findings
    for (const cost of cell.costs) {
      const now = after.find((one) => key(one) === key(cost))
      expect([now?.verdict, now?.severity]).toEqual(["marginal", "function"])
      expect(cell.text).toContain(`but then ${cost.title} (${cost.subject}) comes close to its limit`)
    }
  })

  it("changes only what may be changed", () => {
    const rig = planted("umbrella-legs", ["power.buses[0].run.awg", 28])
    for (const { changes } of remedies(rig, { allowed: ["power.sources"] }).remedies)
      for (const { settings } of changes) for (const { path } of settings) expect(path).toMatch(/^power\.sources/)
  })

  it("tells the price of the catalogue and puts the part into the list of those carried", () => {
    const rig = planted("lantern-moth-cells", ["power.buses[0].run.awg", 30])
    const [wire] = remedies(rig, { allowed: ["power.buses[0].run.awg"], catalogue: { wires: [{ awg: 24, pricePerMetre: 1.5 }] } }).remedies
    const length = valueAt(assessRig.read(rig), "power.buses[0].run.length") as number
    expect(wire?.price).toBeCloseTo(2 * length * 1.5, 9)
    expect(wire?.text).toMatch(/, about 3\.3\.$/)
    const heavy = planted("lantern-moth-cells", ["motions[0].mechanisms[0].masses[2].mass", "400 g"])
    const present = heavy.motions[0]?.drive
    const drive = { ...present, ratedForce: "113 N", ratedCurrent: "1.2 A" } as NonNullable<typeof present>
    const drives = [{ name: "stout actuator", price: 60, mass: "0.6 kg" as const, replaces: "actuators", drive }]
    const { remedies: list } = remedies(heavy, { allowed: ["motions[0].drive", "parts"], catalogue: { drives } })
    const swap = list.find(({ changes }) => changes[0]?.becomes === "stout actuator") as Remedy
    expect(swap.price).toBe(2 * (60 - 38))
    const { parts = [] } = withChanges(heavy, swap.changes)
    expect(parts.find(({ name }) => name === "actuators")).toMatchObject({ price: 60, mass: 0.6, count: 2 })
    expect(became(heavy, swap).worse).toEqual([])
  })

  it("tells every fault of options and catalogue at once, and refuses a kit of another making", () => {
    const rig = read(demo("folding-skew-wing"))
    const fault = (run: () => unknown) => {
      try {
        run()
      } catch (error) {
        if (error instanceof InputError) return error.issues.map(({ path }) => path.join("."))
      }
      return null
    }
    expect(fault(() => remedies(rig, { tries: 301 }))).toEqual(["tries"])
    expect(fault(() => remedies(rig, { tries: 1.5, alowed: [] } as object))).toEqual(["tries", "alowed"])
    expect(fault(() => remedies(rig, { allowed: ["motions[0].drive", "power.bus[]", { path: "motions", min: 2, max: 1 }] }))).toEqual([
      "allowed.1",
      "allowed.2.max",
    ])
    const catalogue = { wires: [{ awg: 20 }], drives: [{ name: "x", drive: { type: "gearmotor", travel: "1 rev" } }] }
    expect(fault(() => remedies(rig, { catalogue } as object))?.every((path) => path.startsWith("catalogue."))).toBe(true)
    expect(() => remedies(rig, {}, { assess: { ...assessRig } } as never)).toThrow(TypeError)
    expect(remedies(rig, { tries: 3 })).toMatchObject({ tried: 3, complete: false })
  })
})
