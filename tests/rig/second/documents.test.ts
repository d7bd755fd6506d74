import { Ajv2020 } from "ajv/dist/2020.js"
import { describe, expect, it } from "vitest"
import { exampleRig } from "../../../src/rig/whole/example.js"
import { InputError, NoSolutionError } from "../../../src/solver/index.js"
import { randomNumbers } from "../mechanisms/draw.js"
import { type kit, move } from "./kit.js"

const motor = {
  type: "shaft-motor",
  turn: "6 rad",
  torqueConstant: 1,
  backEmfConstant: 1.4,
  windingResistance: "1 ohm",
  frictionCurrent: "0.2 A",
} as const
const winch = { type: "drum", drumDiameter: "40 mm", lineDiameter: "1 mm" } as const
const feather = (name: string, startLength: string) =>
  ({
    name,
    type: "hinge",
    reversed: true,
    assembly: "clockwise",
    length: "0.8 m",
    startLength,
    fixedPivot: { x: "0 m", y: "0.4 m" },
    movingPivot: { radius: "0.25 m", angle: "0 deg" },
    masses: [{ name: "vane", mass: "150 g", radius: "0.4 m" }],
    hingeFriction: "0.02 N m",
  }) as const

/** A fan on a winch and a jaw on a motor of its own, on one pack behind a converter. */
const creature = {
  version: 2,
  name: "Reed heron",
  motions: [
    {
      name: "fan",
      bus: "stage",
      drive: motor,
      transmission: [winch],
      mechanisms: [feather("first feather", "0.55 m"), feather("second feather", "0.54 m")],
    },
    {
      name: "jaw",
      bus: "stage",
      drive: { ...motor, turn: "60 deg" },
      mechanisms: [
        {
          name: "jaw",
          type: "turned-arm",
          startAngle: "-50 deg",
          length: "0.2 m",
          count: 2,
          mirrored: true,
          transmission: [{ type: "plain-gear", reduction: 2 }],
          masses: [{ name: "lower jaw", mass: "200 g", radius: "0.1 m" }],
        },
      ],
    },
  ],
  power: {
    sources: [{ type: "cells", name: "pack", chemistry: "nmc", series: 5, parallel: 2, cellCapacity: "3 Ah", cellResistance: "40 mohm" }],
    buses: [
      { name: "box", from: "pack", run: { length: "0.4 m", awg: 18 }, fuseRating: "10 A" },
      {
        name: "stage",
        from: "box",
        converter: {
          outputVoltage: "12 V",
          minInputVoltage: "8 V",
          maxInputVoltage: "30 V",
          efficiency: [
            { outputCurrent: "0.5 A", efficiency: "90 %" },
            { outputCurrent: "4 A", efficiency: "86 %" },
          ],
        },
      },
    ],
    loads: [{ type: "lights", name: "eyes", bus: "stage", current: "0.2 A" }],
  },
}

type Path = readonly (string | number)[]
type Place = Record<string | number, unknown>

/** A copy with one place changed; `undefined` leaves it out. */
function changed(doc: object, path: Path, value: unknown): object {
  const copy = JSON.parse(JSON.stringify(doc)) as object
  let at = copy as Place
  for (const key of path.slice(0, -1)) at = at[key] as Place
  const last = path[path.length - 1] as string
  if (value === undefined) delete at[last]
  else at[last] = value
  return copy
}

const issuesOf = (doc: unknown) => {
  const outcome = move.attempt(doc as object)
  return !outcome.ok && outcome.error instanceof InputError ? outcome.error.issues : []
}

const again = <T extends object>(list: readonly T[], over: object = {}) => [...list, { ...(list[0] as T), ...over }]
const { power } = creature
const lead = (converter: object) => ({ ...power.buses[1], converter: { ...power.buses[1]?.converter, ...converter } })

/** What is changed, where the fault is told, and words that must be in it. */
const faults: readonly (readonly [what: string, path: Path, value: unknown, at: string, words: readonly string[]])[] = [
  ["a motion's name twice", ["motions", 1, "name"], "fan", "motions[1].name", ['"fan"', "motion"]],
  [
    "a mechanism's name twice",
    ["motions", 0, "mechanisms", 1, "name"],
    "first feather",
    "motions[0].mechanisms[1].name",
    ['"first feather"'],
  ],
  ["a source's name twice", ["power", "sources"], again(power.sources), "power.sources[1].name", ['"pack"']],
  ["a bus's name twice", ["power", "buses"], again(power.buses), "power.buses[2].name", ['"box"']],
  ["a bus called as a source", ["power", "buses"], again(power.buses, { name: "pack" }), "power.buses[2].name", ['"pack"', "source"]],
  ["a bus from nowhere", ["power", "buses", 0, "from"], "pak", "power.buses[0].from", ['"pak"', '"pack"']],
  ["buses in a ring", ["power", "buses", 0, "from"], "stage", "power.buses[0].from", ['"stage"', "ends at a source"]],
  ["a bus from itself", ["power", "buses", 1, "from"], "stage", "power.buses[1].from", ['"stage"', "ends at a source"]],
  ["a load on no bus", ["power", "loads", 0, "bus"], "stag", "power.loads[0].bus", ['"stag"', '"stage"']],
  ["a drive on no bus", ["motions", 0, "bus"], "roof", "motions[0].bus", ['"roof"', '"box"', '"stage"']],
  [
    "a converter's limits the wrong way round",
    ["power", "buses", 1],
    lead({ maxInputVoltage: "7 V" }),
    "power.buses[1].converter.maxInputVoltage",
    ["7 V"],
  ],
  [
    "an efficiency curve that goes back",
    ["power", "buses", 1],
    lead({
      efficiency: [
        { outputCurrent: "2 A", efficiency: "90 %" },
        { outputCurrent: "1 A", efficiency: "80 %" },
      ],
    }),
    "power.buses[1].converter.efficiency[1].outputCurrent",
    ["1 A", "rise"],
  ],
  [
    "a drive's own fault",
    ["motions", 1, "drive"],
    { ...motor, backwardEfficiency: 0.2, unlocking: 0.2 },
    "motions[1].drive.unlocking",
    ["one of them"],
  ],
  ["a drive that is not built", ["motions", 1, "drive"], { ...motor, type: "torn-motor" }, "motions[1].drive", ["torn"]],
  [
    "a mechanism's own fault",
    ["motions", 0, "mechanisms", 0, "fixedPivot"],
    { x: 0, y: 0 },
    "motions[0].mechanisms[0].fixedPivot",
    ["hinge"],
  ],
  [
    "an element that takes what does not come",
    ["motions", 0, "transmission"],
    [winch, winch],
    "motions[0].transmission[1].type",
    ["an angle", "a length"],
  ],
  [
    "an element of a mechanism's own that takes what does not come",
    ["motions", 0, "mechanisms", 1, "transmission"],
    [{ type: "plain-gear", reduction: 2 }],
    "motions[0].mechanisms[1].transmission[0].type",
    ["an angle", "a length"],
  ],
  [
    "a mechanism moved by what does not come",
    ["motions", 0, "transmission"],
    [],
    "motions[0].mechanisms[0].type",
    ["a length", "an angle"],
  ],
  ["no place at the start", ["motions", 0, "mechanisms", 0, "startLength"], undefined, "motions[0].mechanisms[0].startLength", ["nothing"]],
  ["half of three mirrored", ["motions", 1, "mechanisms", 0, "count"], 3, "motions[1].mechanisms[0].count", ["3", "even"]],
  ["a motion that is not there", ["motion"], "tail", "motion", ['"tail"', '"fan"', '"jaw"']],
]

const textOf = (path: Path) => path.map((p, i) => (typeof p === "number" ? `[${p}]` : i ? `.${p}` : p)).join("")

describe("faults of a document, in its own words", () => {
  it("the creature itself has none, and both motions have a time", () => {
    for (const motion of ["fan", "jaw"]) expect(move({ ...creature, motion }).cycleDuration).toBeGreaterThan(0)
  })
  it.each(faults)("%s", (_, path, value, at, words) => {
    const found = issuesOf(changed(creature, path, value))
    expect(found.map((one) => textOf(one.path))).toContain(at)
    const message = found.find((one) => textOf(one.path) === at)?.message ?? ""
    for (const word of words) expect(message).toContain(word)
  })
  it("one fault alone is told once", () => {
    for (const [what, path, value, at] of faults) {
      const found = issuesOf(changed(creature, path, value)).filter((one) => textOf(one.path) === at)
      expect(found.length, what).toBe(1)
    }
  })
  it("a bus that hangs on a ring is not told to be in it", () => {
    const ring = changed(
      creature,
      ["power", "buses"],
      [...power.buses, { name: "one", from: "two" }, { name: "two", from: "one" }, { name: "tail", from: "two" }],
    )
    const found = issuesOf(ring)
    expect(found.map((one) => textOf(one.path))).toEqual(["power.buses[2].from", "power.buses[3].from"])
  })
  it("many at once, and those of fields with them", () => {
    const apart = [
      "a motion's name twice",
      "a load on no bus",
      "a drive on no bus",
      "half of three mirrored",
      "a bus from nowhere",
      "a mechanism's own fault",
    ]
    let doc: object = creature
    for (const [what, path, value] of faults) if (apart.includes(what)) doc = changed(doc, path, value)
    const told = issuesOf(doc).map((one) => textOf(one.path))
    for (const [what, , , at] of faults) if (apart.includes(what)) expect(told, what).toContain(at)
    expect(new Set(told).size).toBe(apart.length)
    const also = issuesOf(changed(doc, ["motions", 0, "drive", "turn"], "-3 rad")).map((one) => textOf(one.path))
    expect(also).toContain("motions[0].drive.turn")
  })
})

/** Every place of a document. */
function placesOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path]
  return [
    ...(path.length ? [path] : []),
    ...Object.entries(value).flatMap(([k, v]) => placesOf(v, [...path, Array.isArray(value) ? Number(k) : k])),
  ]
}

const numbersIn = (value: unknown): number[] =>
  typeof value === "number" ? [value] : typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : []

describe("400 documents with something wrong in them", () => {
  const odd = [
    null,
    undefined,
    0,
    -1,
    1e-9,
    1e9,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    "",
    "fan",
    "stage",
    "box",
    "pack",
    "12",
    "1 m",
    "-3 A",
    [],
    {},
    true,
    "__proto__",
    "constructor",
  ]
  it("an answer, one InputError or one NoSolutionError, and never a number that is none", () => {
    const random = randomNumbers(2000)
    const pick = <T>(list: readonly T[]) => list[Math.floor(random() * list.length)] as T
    const counts = { answered: 0, faulty: 0, refused: 0 }
    for (let n = 0; n < 400; n++) {
      const base: object = n % 2 ? creature : exampleRig
      let doc: object = n % 4 < 2 ? { ...base, motion: n % 4 ? "jaw" : null } : base
      for (let k = 0; k <= n % 3; k++) {
        const places = placesOf(doc)
        const path = pick(places)
        let value: unknown = random() < 0.4 ? pick(odd) : undefined
        if (value === undefined && random() < 0.7) {
          // another value from the same document, or its own made larger or smaller
          const other = pick(places)
          value = other.reduce<unknown>((at, key) => (at as Place)[key], doc)
          const own = path.reduce<unknown>((at, key) => (at as Place)[key], doc)
          if (typeof own === "string" && /^-?[\d.]+ /.test(own) && random() < 0.6)
            value = own.replace(/^-?[\d.]+/, (digits) => String(Number(digits) * 10 ** (4 * random() - 2)))
        }
        doc = changed(doc, path, value)
      }
      let outcome: ReturnType<typeof move.attempt>
      try {
        outcome = move.attempt(doc)
      } catch (error) {
        throw new Error(`${(error as Error).stack} by ${JSON.stringify(doc)}`)
      }
      if (outcome.ok) {
        counts.answered++
        for (const number of numbersIn(outcome.value)) if (!Number.isFinite(number)) throw new Error(`${number} for ${JSON.stringify(doc)}`)
      } else if (outcome.error instanceof NoSolutionError) {
        counts.refused++
        if (!(outcome.error.shortBy > 0)) throw new Error(`short by ${outcome.error.shortBy} for ${JSON.stringify(doc)}`)
      } else {
        counts.faulty++
        expect(outcome.error).toBeInstanceOf(InputError)
      }
    }
    expect(
      Object.values(counts).every((c) => c > 2),
      JSON.stringify(counts),
    ).toBe(true)
  })
})

describe("members of a library user's own", () => {
  it("are read with their units and defaults, moved and refused by name", () => {
    const read = move.read(creature) as unknown as { motions: { drive: Record<string, unknown> }[] }
    expect(read.motions[0]?.drive).toMatchObject({
      type: "shaft-motor",
      turn: 6,
      windingResistance: 1,
      backwardEfficiency: 0,
      currentLimit: null,
    })
    const unknown = changed(creature, ["motions", 0, "drive", "type"], "shaft-moter")
    expect(issuesOf(unknown)[0]?.message).toContain("shaft-motor")
  })
  it("stand in the JSON Schema, as strict as the reader", () => {
    const takes = new Ajv2020({ strict: false }).compile(move.jsonSchema() as object)
    expect(takes(creature)).toBe(true)
    expect(takes(changed(creature, ["motions", 0, "drive", "turn"], undefined))).toBe(false)
    expect(takes(changed(creature, ["motions", 0, "drive", "torqueConstant"], 0))).toBe(false)
    expect(takes(changed(creature, ["motions", 0, "drive", "shaft"], 1))).toBe(false)
    expect(takes(changed(creature, ["motions", 0, "drive", "type"], "linear-actuator"))).toBe(false)
    expect(takes(changed(creature, ["motions", 0, "transmission"], [{ type: "plain-gear", reduction: 3 }]))).toBe(true)
  })
  it("are typed", () => {
    type DriveOf = Parameters<typeof kit.move>[0]["motions"][number]["drive"]
    const right: DriveOf = { type: "shaft-motor", turn: 1, torqueConstant: 1, backEmfConstant: 1, windingResistance: 1 }
    // @ts-expect-error a drive without its turn
    const noTurn: DriveOf = { type: "shaft-motor", torqueConstant: 1, backEmfConstant: 1, windingResistance: 1 }
    // @ts-expect-error a type that nobody added
    const unknown: DriveOf["type"] = "steam-engine"
    expect([right.type, noTurn.type, unknown]).toEqual(["shaft-motor", "shaft-motor", "steam-engine"])
  })
})
