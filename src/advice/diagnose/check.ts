// Faults between readings and the rig they were taken on: names that lead nowhere, and what that rig has none of.
import { formatQuantity } from "../../quantity/index.js"
import { buildMotion, type RigSi, rigFaults } from "../../rig/whole/faults.js"
import { type Issue, issue, type Path } from "../../solver/index.js"
import { members } from "./built.js"
import type { ReadingSi } from "./predict.js"

const oneOf = (names: readonly string[]) => (names.length ? `one of ${names.map((n) => `"${n}"`).join(", ")}` : "none: the rig has none")

const under = (one: Issue, path: Path): Issue => ({ ...one, ...issue(one.code, [...path, ...one.path], one.received, one.expected) })

/** Cells are at home as warm as the document says; without any, a room is. */
const homeOf = ({ power }: RigSi) => Math.max(...(power?.sources ?? []).map((one) => (one.type === "cells" ? one.temperature : -40)), -40)
const ROOM = 20

/** All faults of a rig and its readings. */
export function readingFaults(rig: RigSi, readings: readonly ReadingSi[]): Issue[] {
  return [
    ...rigFaults(members, rig).map((one) => under(one, ["rig"])),
    ...readings.flatMap((one, i) => faultsOfOne(rig, one, ["readings", i])),
  ]
}

/** What the first part of a motion shows; null where it cannot be built. */
const showsOf = (motion: RigSi["motions"][number]) => buildMotion(members, motion, []).parts[0]?.mechanism?.shows ?? null

const hasPair = ({ mechanisms }: RigSi["motions"][number]) => mechanisms.length > 1 || mechanisms.some((one) => one.count > 1)

function faultsOfOne(rig: RigSi, reading: ReadingSi, path: Path): Issue[] {
  const { motions, power } = rig
  const found: Issue[] = []
  const names = motions.map((m) => m.name)
  const wrong = (field: string, name: string, list: readonly string[]) => {
    if (!list.includes(name)) found.push(issue("inconsistent", [...path, field], `"${name}"`, oneOf(list)))
  }
  if ("motion" in reading && reading.motion !== null) wrong("motion", reading.motion, names)
  const sources = power?.sources.map((s) => s.name) ?? []
  const buses = power?.buses.map((b) => b.name) ?? []
  const cells = power?.sources.filter((s) => s.type === "cells").map((s) => s.name) ?? []
  const motion = "motion" in reading ? (motions.find((m) => m.name === reading.motion) ?? motions[0]) : undefined
  const shows = motion && showsOf(motion)
  const asks = (expected: string) => found.push(issue("inconsistent", path, `type "${reading.type}"`, expected))
  switch (reading.type) {
    case "swing":
      if (shows === "length") asks('a change of length, type "reach": this motion shows a length')
      break
    case "reach":
      if (shows === "angle") asks('an angle, type "swing": this motion shows an angle')
      break
    case "stops-at":
      if (reading.angle !== null && shows === "length") asks("the stroke or the share of its way: this motion shows a length")
      break
    case "one-side-slower":
      if (motion && !hasPair(motion)) asks("a motion with two sides: this one has a single part")
      break
    case "wrong-way":
      if (motion && reading.what === "one-of-a-pair" && !hasPair(motion)) asks("a motion with two sides: this one has a single part")
      break
    case "slow-in-the-cold": {
      const cells = homeOf(rig)
      const home = cells > -40 ? cells : ROOM
      if (reading.temperature >= home)
        found.push(
          issue(
            "inconsistent",
            [...path, "temperature"],
            formatQuantity("temperature", reading.temperature),
            `colder than at home, ${formatQuantity("temperature", home)}`,
          ),
        )
      break
    }
    case "voltage":
      wrong("at", reading.at, [...sources, ...buses])
      break
    case "voltage-drop":
      wrong("along", reading.along, buses)
      break
    case "current":
      if (reading.at !== null) wrong("at", reading.at, [...sources, ...buses])
      break
    case "cell-resistance":
    case "cell-temperature":
      wrong("source", reading.source, cells)
      break
    case "force":
      if (reading.mechanism !== null) wrong("mechanism", reading.mechanism, motion?.mechanisms.map((m) => m.name) ?? [])
      break
    case "warm":
      wrong(
        "at",
        reading.at,
        reading.part === "drive"
          ? names
          : reading.part === "source"
            ? sources
            : reading.part === "converter"
              ? (power?.buses.filter((b) => b.converter).map((b) => b.name) ?? [])
              : buses,
      )
      break
    default:
  }
  return found
}
