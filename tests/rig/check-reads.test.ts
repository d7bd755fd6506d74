// What each check reads of a document: declared, true, and enough to judge anew after a change.
import { describe, expect, it } from "vitest"
import { checks, findingsAfter, findingsOf } from "../../src/rig/check/assess.js"
import { readsAny } from "../../src/rig/check/check.js"
import { judged } from "../../src/rig/check/conditions.js"
import type { RigSi } from "../../src/rig/whole/faults.js"
import { everything } from "../helpers/planted.js"
import { isWithin, recording } from "../helpers/recording.js"
import { creatureNames, demoNames, members, rigSi } from "../helpers/rigs.js"

// the charges of a pack are copies of it, a posture one of the whole rig: copying is no reading
const copied = ["", "power.sources[]"]
// with wings and wrists on them: what carries and is carried is looked at wherever a pose is
const whole = everything()
const mounted = { ...whole, motions: [...whole.motions, ...rigSi("marsh-heron").motions.map((one) => ({ ...one, bus: "plain line" }))] }
const rigs: readonly RigSi[] = [...[...creatureNames, ...demoNames].map(rigSi), whole, mounted]

const touchedBy = new Map<string, { readonly touched: Set<string>; readonly carried: Set<string> }>()
for (const rig of rigs)
  for (const { id, reads, find } of checks) {
    const { read, touched, carried } = recording(rig, { whole: reads, copied })
    find(judged(members, read))
    const all = touchedBy.get(id) ?? { touched: new Set(), carried: new Set() }
    for (const path of touched) all.touched.add(path)
    for (const path of carried) all.carried.add(path)
    touchedBy.set(id, all)
  }

it.each(checks.map(({ id, reads }) => [id, reads] as const))("%s declares what it looks at, no less and no more", (id, reads) => {
  const { touched, carried } = touchedBy.get(id) ?? { touched: new Set<string>(), carried: new Set<string>() }
  // a section left out is looked at where its fields are
  const undeclared = [...touched].filter((path) => !reads.some((one) => isWithin(path, one) || isWithin(one, path)))
  const idle = reads.filter((one) => ![...touched, ...carried].some((path) => isWithin(path, one)))
  expect({ undeclared, idle }).toEqual({ undeclared: [], idle: [] })
})

describe("judged anew after a change", () => {
  // as if from the start, but only what reads the change is looked at again
  const fan = rigSi("nine-feather-fan")
  const before = findingsOf(members, fan)
  const power = fan.power as NonNullable<RigSi["power"]>
  const changes: readonly (readonly [path: string, rig: RigSi])[] = [
    ["budget.price", { ...fan, budget: { ...(fan.budget as NonNullable<RigSi["budget"]>), price: 20 } }],
    [
      "power.buses[0].fuseRating",
      { ...fan, power: { ...power, buses: power.buses.map((bus, i) => (i ? bus : { ...bus, fuseRating: 0.5 })) } },
    ],
    [
      "motions[0].drive",
      { ...fan, motions: fan.motions.map((one, i) => (i ? one : { ...one, drive: { ...one.drive, holdingTorque: 0.1 } })) },
    ],
    ["parts", { ...fan, parts: [] }],
  ]
  it.each(changes)("of %s", (path, rig) => {
    const anew = findingsOf(members, rig)
    const after = findingsAfter(members, before, rig, [path])
    expect(after.findings).toEqual(anew.findings)
    expect(after.raised.map(({ caution, by }) => [caution, by.map(({ id }) => id)])).toEqual(
      anew.raised.map(({ caution, by }) => [caution, by.map(({ id }) => id)]),
    )
    expect(anew.findings).not.toEqual(before.findings)
    expect(checks.filter((check) => !readsAny(check, [path])).length).toBeGreaterThan(3)
  })
  it("a check that looks at straps rides no motion", () => {
    const at = judged(members, fan)
    const asked: string[] = []
    const watched = new Proxy(at, {
      get(of, key) {
        asked.push(String(key))
        return Reflect.get(of, key)
      },
    })
    checks.find(({ id }) => id === "straps")?.find(watched)
    expect(asked).not.toContain("runs")
    expect(asked).not.toContain("situations")
  })
})
