// Faults of a document between its fields: names that lead nowhere, chains that do not fit, what members say of themselves.
import { type Issue, isNoSolution, issue, type NoSolution, type SiOf } from "../../solver/index.js"
import type { Drive, Travel } from "../drives/drive.js"
import type { Mechanism } from "../mechanisms/mechanism.js"
import type { Transmission } from "../transmissions/transmission.js"
import type { Rig, Typed } from "./document.js"
import type { Members } from "./fields.js"

type Path = readonly (string | number)[]

/** A document in SI, whichever members it names. */
export type RigSi = SiOf<Rig<Typed, Typed, Typed>>

/** Names that stand twice in one list. */
function twice(names: readonly string[], path: Path, label: string): Issue[] {
  return names.flatMap((name, i) =>
    names.indexOf(name) < i
      ? [issue("inconsistent", [...path, i, "name"], `"${name}" a second time`, `a name of its own for each ${label}`)]
      : [],
  )
}

/** Faults of the power tree. */
function powerFaults(rig: RigSi): Issue[] {
  const { power } = rig
  if (!power) return []
  const found: Issue[] = []
  const sources = power.sources.map((s) => s.name)
  const buses = power.buses.map((b) => b.name)
  found.push(...twice(sources, ["power", "sources"], "source"), ...twice(buses, ["power", "buses"], "bus"))
  buses.forEach((bus, i) => {
    if (sources.includes(bus))
      found.push(issue("inconsistent", ["power", "buses", i, "name"], `"${bus}", a source's name`, "a name of its own"))
  })
  power.buses.forEach((bus, i) => {
    const at = ["power", "buses", i]
    if (!sources.includes(bus.from) && !buses.includes(bus.from))
      found.push(
        issue("inconsistent", [...at, "from"], `"${bus.from}"`, `one of ${[...sources, ...buses].map((n) => `"${n}"`).join(", ")}`),
      )
    const seen = new Set<string>()
    let here: string | undefined = bus.name
    while (here !== undefined && buses.includes(here) && !seen.has(here)) {
      seen.add(here)
      here = power.buses[buses.indexOf(here)]?.from
    }
    // one that only hangs on a ring is not told: the ring's own buses are
    if (here === bus.name)
      found.push(issue("inconsistent", [...at, "from"], `"${bus.from}", which leads back to this bus`, "a way that ends at a source"))
    const { converter } = bus
    if (!converter) return
    if (!(converter.minInputVoltage < converter.maxInputVoltage))
      found.push(
        issue(
          "inconsistent",
          [...at, "converter", "maxInputVoltage"],
          `${converter.maxInputVoltage} V`,
          "more than the minimum input voltage",
        ),
      )
    converter.efficiency.forEach((point, k) => {
      const last = converter.efficiency[k - 1]
      if (last && !(point.outputCurrent > last.outputCurrent))
        found.push(
          issue(
            "inconsistent",
            [...at, "converter", "efficiency", k, "outputCurrent"],
            `${point.outputCurrent} A`,
            "output currents that rise from point to point",
          ),
        )
    })
  })
  power.loads.forEach((load, i) => {
    if (!buses.includes(load.bus))
      found.push(
        issue("inconsistent", ["power", "loads", i, "bus"], `"${load.bus}"`, `one of ${buses.map((n) => `"${n}"`).join(", ") || "no bus"}`),
      )
  })
  return found
}

/** A motion's members, built; what could not be built is null, its faults are told. */
export interface BuiltMotion {
  readonly drive: Drive | null
  readonly chain: readonly (Transmission | null)[]
  readonly parts: readonly { readonly mechanism: Mechanism | null; readonly own: readonly (Transmission | null)[] }[]
  readonly faults: readonly Issue[]
}

interface AnyMember<R> {
  check?(si: never): readonly Issue[]
  build(si: never): R | NoSolution
}

/** Builds one member, or tells its faults at its place in the document. */
function built<R extends object>(members: Readonly<Record<string, AnyMember<R>>>, si: Typed, path: Path, found: Issue[]): R | null {
  const member = members[si.type]
  if (!member) return null
  const faults = member.check?.(si as never) ?? []
  found.push(...faults.map((fault) => ({ ...fault, ...issue(fault.code, [...path, ...fault.path], fault.received, fault.expected) })))
  if (faults.length) return null
  const out = member.build(si as never)
  if (!isNoSolution(out)) return out as R
  found.push(issue("inconsistent", path, "parts that do not work together", out.message))
  return null
}

const word: Readonly<Record<Travel, string>> = { length: "a length", angle: "an angle" }

/** Whether what comes out of a chain goes into what follows. */
function fits(from: Travel, chain: readonly (Transmission | null)[], path: Path, found: Issue[]): Travel | null {
  let now: Travel | null = from
  for (const [i, element] of chain.entries()) {
    if (element && now && element.takes !== now)
      found.push(
        issue(
          "inconsistent",
          [...path, i, "type"],
          `an element that takes ${word[element.takes]}`,
          `one that takes ${word[now]}, which is what comes before it`,
        ),
      )
    now = element ? element.gives : null
  }
  return now
}

/** Builds a motion and tells what is wrong with it, in the document's own words. */
export function buildMotion(members: Members, motion: RigSi["motions"][number], at: Path): BuiltMotion {
  const found: Issue[] = []
  const drive = built<Drive>(members.drives, motion.drive, [...at, "drive"], found)
  const elements = (list: readonly Typed[], path: Path) =>
    list.map((one, i) => built<Transmission>(members.transmissions, one, [...path, i], found))
  const chain = elements(motion.transmission, [...at, "transmission"])
  const given = drive ? fits(drive.travel, chain, [...at, "transmission"], found) : null
  const parts = motion.mechanisms.map((one, i) => {
    const path = [...at, "mechanisms", i]
    const own = elements(one.transmission, [...path, "transmission"])
    const mechanism = built<Mechanism>(members.mechanisms, one, path, found)
    const arrives = given ? fits(given, own, [...path, "transmission"], found) : null
    if (mechanism && arrives && mechanism.travel !== arrives)
      found.push(
        issue(
          "inconsistent",
          [...path, "type"],
          `a mechanism moved by ${word[mechanism.travel]}`,
          `one moved by ${word[arrives]}, which is what drive and transmission give`,
        ),
      )
    if (mechanism && mechanism.start === null && drive !== null && (chain.length + own.length > 0 || drive.travel !== mechanism.travel))
      found.push(
        issue(
          "missing",
          [...path, mechanism.travel === "length" ? "startLength" : "startAngle"],
          "nothing",
          "where it stands at the start: a transmission between drive and mechanism leaves that open",
        ),
      )
    if (one.mirrored && one.count % 2 !== 0)
      found.push(issue("inconsistent", [...path, "count"], `${one.count}`, "an even count where half of them are mirrored"))
    return { mechanism, own }
  })
  return { drive, chain, parts, faults: found }
}

/** Most motions one on another, and most that are carried at all: each is judged at both ends of every other one's travel. */
const LEVELS = 3
const CARRIED = 4

/** Faults of motions that are mounted on motions. */
function mountFaults({ motions }: RigSi, built: readonly BuiltMotion[]): Issue[] {
  const names = motions.map((one) => one.name)
  const mounted = motions.flatMap(({ on }, i) => (on === null ? [] : [i]))
  const found = mounted.flatMap((i): Issue[] => {
    const { name, on, onMechanism } = motions[i] as RigSi["motions"][number]
    const fault = (field: string, received: string, expected: string) => [issue("inconsistent", ["motions", i, field], received, expected)]
    const list = (of: readonly string[]) => of.map((n) => `"${n}"`).join(", ") || "no other motion"
    const carrier = names.indexOf(on ?? "")
    if (carrier < 0) return fault("on", `"${on}"`, `one of ${list(names.filter((n) => n !== name))}`)
    const way = [i]
    for (let here = carrier; here >= 0 && !way.includes(here); here = names.indexOf(motions[here]?.on ?? "")) way.push(here)
    const last = motions[way[way.length - 1] as number]?.on ?? null
    // one that only hangs on a ring is not told: the ring's own motions are
    if (last === name) return fault("on", `"${on}", which is carried by this motion`, "a way that ends at the body")
    if (last !== null && names.includes(last)) return []
    if (way.length > LEVELS) return fault("on", `the ${way.length}th motion one on another`, `at most ${LEVELS}, from the body on`)
    const { mechanisms } = motions[carrier] as RigSi["motions"][number]
    const own = onMechanism === null ? 0 : mechanisms.findIndex((one) => one.name === onMechanism)
    if (own < 0) return fault("onMechanism", `"${onMechanism}"`, `one of ${list(mechanisms.map((one) => one.name))}`)
    const mechanism = built[carrier]?.parts[own]?.mechanism
    return mechanism && !mechanism.carries
      ? fault(
          onMechanism === null ? "on" : "onMechanism",
          `"${mechanisms[own]?.name}", a ${mechanisms[own]?.type}, which nothing can be mounted on`,
          "an arm, a vane or a segment",
        )
      : []
  })
  const over = mounted[CARRIED]
  if (over !== undefined && found.length === 0)
    found.push(
      issue(
        "inconsistent",
        ["motions", over, "on"],
        `${mounted.length} motions mounted on others`,
        `at most ${CARRIED} of a rig's motions`,
      ),
    )
  return found
}

function programmeFaults({ motions, programme }: RigSi): Issue[] {
  const names = motions.map((one) => one.name)
  return programme.flatMap(({ motion, at }, i): Issue[] => {
    if (!names.includes(motion))
      return [issue("inconsistent", ["programme", i, "motion"], `"${motion}"`, `one of ${names.map((n) => `"${n}"`).join(", ")}`)]
    const same = programme.findIndex((step) => step.motion === motion && step.at === at)
    if (same < i) return [issue("inconsistent", ["programme", i, "at"], `${at} s, at which step ${same} moves it too`, "another time")]
    return []
  })
}

/** Every fault of a document that its fields alone do not show. */
export function rigFaults(members: Members, rig: RigSi): Issue[] {
  const found = [
    ...twice(
      rig.motions.map((m) => m.name),
      ["motions"],
      "motion",
    ),
    ...powerFaults(rig),
    ...programmeFaults(rig),
  ]
  const built = rig.motions.map((motion, i) => buildMotion(members, motion, ["motions", i]))
  found.push(...mountFaults(rig, built))
  rig.motions.forEach((motion, i) => {
    const path = ["motions", i]
    found.push(...(built[i]?.faults ?? []))
    found.push(
      ...twice(
        motion.mechanisms.map((m) => m.name),
        [...path, "mechanisms"],
        "mechanism",
      ),
    )
    const buses = rig.power?.buses.map((b) => b.name) ?? []
    if (motion.bus !== null && rig.power && !buses.includes(motion.bus))
      found.push(issue("inconsistent", [...path, "bus"], `"${motion.bus}"`, `one of ${buses.map((n) => `"${n}"`).join(", ")}`))
  })
  return found
}
