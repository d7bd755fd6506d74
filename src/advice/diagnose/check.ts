// Faults between readings and the rig they were taken on: names that lead nowhere, and what that rig has none of.
import { type RigSi, rigFaults } from "../../rig/whole/faults.js"
import { type Issue, issue, type Path } from "../../solver/index.js"
import { members } from "./built.js"
import type { ReadingSi } from "./predict.js"

const oneOf = (names: readonly string[]) => (names.length ? `one of ${names.map((n) => `"${n}"`).join(", ")}` : "none: the rig has none")

const under = (one: Issue, path: Path): Issue => ({ ...one, ...issue(one.code, [...path, ...one.path], one.received, one.expected) })

/** All faults of a rig and its readings. */
export function readingFaults(rig: RigSi, readings: readonly ReadingSi[]): Issue[] {
  return [
    ...rigFaults(members, rig).map((one) => under(one, ["rig"])),
    ...readings.flatMap((one, i) => faultsOfOne(rig, one, ["readings", i])),
  ]
}

function faultsOfOne({ motions, power }: RigSi, reading: ReadingSi, path: Path): Issue[] {
  const found: Issue[] = []
  const names = motions.map((m) => m.name)
  const wrong = (field: string, name: string, list: readonly string[]) => {
    if (!list.includes(name)) found.push(issue("inconsistent", [...path, field], `"${name}"`, oneOf(list)))
  }
  if ("motion" in reading && reading.motion !== null) wrong("motion", reading.motion, names)
  const sources = power?.sources.map((s) => s.name) ?? []
  const buses = power?.buses.map((b) => b.name) ?? []
  const cells = power?.sources.filter((s) => s.type === "cells").map((s) => s.name) ?? []
  switch (reading.type) {
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
    case "force": {
      const motion = motions.find((m) => m.name === reading.motion) ?? motions[0]
      if (reading.mechanism !== null) wrong("mechanism", reading.mechanism, motion?.mechanisms.map((m) => m.name) ?? [])
      break
    }
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
