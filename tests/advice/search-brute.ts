import fc from "fast-check"
import type { Catalogue, SearchGoals } from "../../src/advice/index.js"
import { readCatalogue } from "../../src/advice/index.js"
import { chemistries } from "../../src/pack/index.js"
import { si } from "../../src/quantity/index.js"
import { moveTime, type RigDocument } from "../../src/rig/index.js"
import { movePoint, solveMove } from "../../src/rig/move/move.js"
import { raiseDirection, wholeMove } from "../../src/rig/move/summary.js"
import { isNoSolution, type SiOf } from "../../src/solver/index.js"
import { demo } from "../helpers/rigs.js"
import { currentFor, inStillAir, largestFuse } from "../wire/second.js"

/** A combination as plain enumeration finds it. */
export interface Plain {
  readonly key: string
  readonly price: number
  readonly mass: number
  readonly raiseTime: number
}

/** What plain enumeration makes of a catalogue. */
export interface Enumerated {
  readonly combinations: number
  readonly fit: readonly Plain[]
  /** Whether any figure lies so close to its limit that two ways of reckoning may differ. */
  readonly isOnEdge: boolean
}

/** Parts by name in one line. */
export function keyOf(choice: {
  actuator: string
  placement: string
  spring: string | null
  cell: string
  series: number
  parallel: number
  converter: string | null
  wire: string
}): string {
  const { actuator, placement, spring, cell, series, parallel, converter, wire } = choice
  return [actuator, placement, spring ?? "-", `${series}S${parallel}P`, cell, converter ?? "-", wire].join(" / ")
}

type Rig = SiOf<RigDocument>

/** Greatest force, force either way, total and source current of a move, on a grid finer than the search's. */
function peaks(rig: Rig, directions: readonly (1 | -1)[]): { force: number; held: number; used: number; drawn: number } {
  const { model } = wholeMove(rig)
  const { stroke } = model.arms.actuator
  const found = { force: Number.NEGATIVE_INFINITY, held: 0, used: 0, drawn: 0 }
  for (const direction of directions)
    for (let k = 0; k <= 640; k++) {
      const point = movePoint(model, (stroke * k) / 640, direction)
      if (!point) throw new Error("a solved move has every point")
      found.force = Math.max(found.force, point.force)
      found.held = Math.max(found.held, Math.abs(point.force))
      found.used = Math.max(found.used, point.current * model.arms.count)
      found.drawn = Math.max(found.drawn, point.supply.sourceCurrent)
    }
  return found
}

/** Angle between rod and lever by the cosine rule, rad. */
function rodAngle(arms: NonNullable<Rig["hinged"]>, angle: number): number {
  const { hinge, fixedPivot, movingPivot } = arms
  const rod = Math.hypot(
    hinge.x + movingPivot.radius * Math.cos(angle + arms.movingPivot.angle) - fixedPivot.x,
    hinge.y + movingPivot.radius * Math.sin(angle + arms.movingPivot.angle) - fixedPivot.y,
  )
  const base = Math.hypot(hinge.x - fixedPivot.x, hinge.y - fixedPivot.y)
  const corner = Math.acos((rod ** 2 + movingPivot.radius ** 2 - base ** 2) / (2 * rod * movingPivot.radius))
  return Math.min(corner, Math.PI - corner)
}

/**
 * Every combination in nested loops, each put into the rig and solved whole by moveTime's own solver; no
 * bounds, no tables, nothing shared between combinations.
 */
export function enumerate(document: RigDocument, catalogue: Catalogue, goals: SearchGoals): Enumerated {
  const rig = moveTime.read(document)
  const parts = readCatalogue(catalogue)
  const number = (value: unknown) => value as number
  const fit: Plain[] = []
  let [combinations, isOnEdge] = [0, false]
  const keeps = (got: number, limit: number | null | undefined): boolean => {
    if (limit === null || limit === undefined) return true
    if (Math.abs(got - limit) < 1e-4 * Math.abs(limit)) isOnEdge = true
    return got <= limit
  }
  const arms = rig.hinged!
  const metres = 2 * (rig.wiring!.source.length + (rig.wiring!.load?.length ?? 0))
  for (const actuator of parts.actuators)
    for (const placement of parts.placements)
      for (const spring of [null, ...parts.springs])
        for (const cell of parts.cells)
          for (const series of goals.series!)
            for (const parallel of goals.parallel!)
              for (const converter of [null, ...parts.converters])
                for (const wire of parts.wires) {
                  combinations++
                  const size = { awg: wire.awg, area: wire.area }
                  const copper = { ...size, material: "copper" as const, stranding: "solid" }
                  const air = { ...inStillAir, ambientTemperature: rig.wiring!.ambientTemperature }
                  const borne = Math.min(currentFor(copper, air, rig.wiring!.insulation), wire.current ?? Number.POSITIVE_INFINITY)
                  const guardedBy = largestFuse(copper, air, rig.wiring!.insulation, 160)
                  const built: Rig = {
                    ...rig,
                    hinged: {
                      ...arms,
                      actuator,
                      spring,
                      fixedPivot: placement.fixedPivot,
                      movingPivot: placement.movingPivot,
                    },
                    bank: null,
                    pack: {
                      ...rig.pack!,
                      chemistry: cell.chemistry,
                      series,
                      parallel,
                      cellCapacity: cell.capacity,
                      cellResistance: cell.resistance,
                      cellCurrent: cell.current,
                    },
                    converter,
                    wiring: {
                      ...rig.wiring!,
                      source: { ...rig.wiring!.source, ...size },
                      load: rig.wiring!.load && { ...rig.wiring!.load, ...size },
                    },
                  }
                  const { model, chain } = wholeMove(built)
                  const up = raiseDirection(built)
                  const raise = solveMove(model, up)
                  if (isNoSolution(raise)) continue
                  const lower = solveMove(model, up === 1 ? -1 : 1)
                  if (isNoSolution(lower)) continue
                  const swing = Math.abs(raise.points.at(-1)!.angle - raise.points[0]!.angle)
                  const { force, held, used, drawn } = peaks(built, [1, -1])
                  const full = series * chemistries[cell.chemistry].cellFullVoltage
                  const charge = (raise.totals.source + lower.totals.source) / chain.openVoltage
                  const price =
                    arms.count * (actuator.price + placement.price + (spring?.price ?? 0)) +
                    series * parallel * cell.price +
                    (converter?.price ?? 0) +
                    metres * wire.pricePerMetre
                  const mass =
                    arms.count * (actuator.mass + placement.mass + (spring?.mass ?? 0)) +
                    series * parallel * cell.mass +
                    (converter?.mass ?? 0) +
                    metres * wire.linearDensity
                  const { frictionCurrent, forceConstant, windingResistance } = model.constants
                  /** Voltage left for motion when a move's greatest force grows by the stall factor. */
                  const spare = [raise, lower].map((_, i) => {
                    const own = peaks(built, [i === 0 ? up : up === 1 ? -1 : 1]).force
                    const amperes = frictionCurrent + ((goals.stallFactor ?? 1.3) * Math.max(0, own)) / forceConstant
                    return (model.circuit(amperes * arms.count)?.voltage ?? 0) - amperes * windingResistance
                  })
                  const checks = [
                    keeps(-swing, goals.swing === null || goals.swing === undefined ? null : -number(goals.swing)),
                    keeps(
                      si("angle", goals.rodAngle ?? "30 deg"),
                      Math.min(...raise.points.map((point) => rodAngle(built.hinged!, point.angle))),
                    ),
                    ...spare.map((volts) => keeps(-volts, 0) && volts > 0),
                    keeps(force, actuator.ratedForce * (goals.forceFactor ?? 1)),
                    keeps(held, goals.holds ? actuator.holdingForce : null),
                    keeps(converter ? converter.outputVoltage : full, (goals.voltageFactor ?? 1.1) * actuator.ratedVoltage),
                    keeps(full, converter?.maxInputVoltage),
                    keeps(raise.totals.time, goals.raiseTime as number | null | undefined),
                    keeps(raise.totals.time + lower.totals.time, goals.stageTime as number | null | undefined),
                    keeps(drawn / parallel, cell.current),
                    keeps(rig.wiring!.load ? Math.max(drawn, used) : drawn, borne),
                    keeps(drawn, rig.wiring!.fuseRating),
                    keeps(rig.wiring!.fuseRating ?? 0, Math.min(guardedBy, borne / 1.35)),
                    keeps(drawn, rig.wiring!.switchRating),
                    keeps((goals.moves ?? 0) * charge, parallel * cell.capacity * (1 - number(goals.reserve ?? 0.2))),
                    keeps(price, goals.price),
                    keeps(mass, goals.mass as number | null | undefined),
                  ]
                  if (checks.every(Boolean))
                    fit.push({
                      key: keyOf({
                        actuator: actuator.name,
                        placement: placement.name,
                        spring: spring?.name ?? null,
                        cell: cell.name,
                        series,
                        parallel,
                        converter: converter?.name ?? null,
                        wire: wire.name,
                      }),
                      price,
                      mass,
                      raiseTime: raise.totals.time,
                    })
                }
  return { combinations, fit, isOnEdge }
}

/** Whether one choice dominates another, raise times told apart in steps. */
export function dominates(a: Omit<Plain, "key">, b: Omit<Plain, "key">, step: number): boolean {
  const figures = ({ price, mass, raiseTime }: Omit<Plain, "key">) => [
    Math.round(price * 1e6),
    Math.round(mass * 1e9),
    Math.round(raiseTime / step),
  ]
  const [x, y] = [figures(a), figures(b)]
  return x.every((v, i) => v <= y[i]!) && x.some((v, i) => v < y[i]!)
}

/** What is left when everything dominated is struck out, pair by pair. */
export function undominated(all: readonly Plain[], step: number): readonly Plain[] {
  return all.filter((one) => !all.some((other) => dominates(other, one, step)))
}

const pick = <T>(...values: readonly T[]) => fc.constantFrom(...values)
const mm = (from: number, to: number) => fc.integer({ min: from, max: to }).map((v) => `${v} mm` as const)
/** Some parts with names; now and then the same part twice, so that equal choices occur. */
function shelf<T extends object>(of: fc.Arbitrary<T>, word: string, min: number, max: number): fc.Arbitrary<(T & { name: string })[]> {
  return fc
    .tuple(fc.array(of, { minLength: min, maxLength: max }), fc.boolean())
    .map(([list, isTwice]) =>
      (isTwice && list[0] && list.length < max ? [...list, list[0]] : list).map((part, i) => ({ ...part, name: `${word} ${i}` })),
    )
}

/** Small catalogues around the demo rig, with goals that some of it meets. */
export const smallCatalogues: fc.Arbitrary<{ catalogue: Catalogue; goals: SearchGoals; rig: RigDocument }> = fc.record({
  rig: pick(null, null, 3.5, 8).map((fuseRating) => openRig({ wiring: { ...demo("lantern-moth-cells").wiring!, fuseRating } })),
  catalogue: fc.record({
    version: fc.constant(1),
    name: fc.constant("random shelf"),
    actuators: shelf(
      fc
        .record({
          retractedLength: mm(150, 168),
          stroke: mm(80, 104),
          ratedVoltage: pick(6, 12),
          noLoadSpeed: fc.integer({ min: 8, max: 30 }),
          noLoadCurrent: pick(0.2, 0.5),
          ratedForce: pick(60, 100, 150, 200),
          droop: pick(0.7, 0.85),
          extra: pick(0.4, 1.3),
          price: fc.integer({ min: 20, max: 60 }),
          grams: fc.integer({ min: 300, max: 600 }),
          holdingForce: pick(80, 400),
        })
        .map(({ droop, extra, grams, noLoadSpeed, ...rest }) => ({
          ...rest,
          noLoadSpeed: noLoadSpeed / 1000,
          ratedSpeed: (noLoadSpeed / 1000) * droop,
          ratedCurrent: rest.noLoadCurrent + extra,
          mass: grams / 1000,
        })),
      "actuator",
      1,
      2,
    ),
    placements: shelf(
      fc.record({
        fixedPivot: fc.record({ x: mm(-15, 15), y: mm(-210, -180) }),
        movingPivot: fc.record({ radius: mm(66, 95), angle: pick("-25 deg" as const, "-32 deg" as const, "-18 deg" as const) }),
        price: pick(0, 6),
        mass: pick(0, 0.06),
      }),
      "place",
      1,
      2,
    ),
    springs: shelf(
      fc.record({
        stiffness: pick(120, 300),
        freeLength: pick("200 mm" as const, "270 mm" as const),
        fixedPivot: fc.constant({ x: "60 mm" as const, y: "200 mm" as const }),
        radius: fc.constant("180 mm" as const),
        price: pick(0, 4),
        mass: pick(0, 0.04),
      }),
      "spring",
      0,
      1,
    ),
    cells: shelf(
      fc.record({
        chemistry: pick("nmc" as const, "lfp" as const),
        capacity: pick("0.9 Ah" as const, "2.6 Ah" as const),
        resistance: pick(0, 0.03, 0.09),
        current: pick(null, 2.5, 8),
        price: fc.integer({ min: 2, max: 8 }),
        mass: pick(0.02, 0.048),
      }),
      "cell",
      1,
      2,
    ),
    converters: shelf(
      fc.record({
        outputVoltage: pick(6, 12, 13),
        inputCurrentLimit: pick(null, 1.8, 4, 9),
        outputCurrentLimit: pick(null, 3),
        efficiency: pick(
          [{ outputCurrent: 0.1, efficiency: 0.9 }],
          [
            { outputCurrent: 0.1, efficiency: 0.75 },
            { outputCurrent: 0.8, efficiency: 0.92 },
            { outputCurrent: 1.4, efficiency: 0.86 },
            { outputCurrent: 3, efficiency: 0.8 },
          ],
        ),
        quiescentCurrent: pick(0, 0.02),
        minInputVoltage: pick(3, 6.5),
        maxInputVoltage: pick(11, 26),
        price: fc.integer({ min: 4, max: 12 }),
        mass: pick(0.02, 0.05),
      }),
      "converter",
      0,
      2,
    ),
    wires: shelf(
      fc.record({
        awg: pick(16, 20, 24),
        linearDensity: pick(0.004, 0.012),
        pricePerMetre: pick(0.4, 0.8, 1.3),
        current: pick(null, 3, 6),
      }),
      "wire",
      1,
      2,
    ),
  }),
  goals: fc.record({
    series: pick([3], [2, 3], [1, 4], [2, 5]),
    parallel: pick([1], [1, 2]),
    raiseTime: pick(null, null, 7, 12),
    stageTime: pick(null, null, null, 20),
    swing: pick(null, null, 1.1, 1.4),
    moves: pick(null, null, 20, 120),
    reserve: pick(null, 0.3),
    price: pick(null, null, null, 130),
    mass: pick(null, null, null, 1.4),
    voltageFactor: pick(1.1, 1.4),
    forceFactor: pick(1, 1, 0.8),
    stallFactor: pick(1, 1.3),
    rodAngle: pick<SearchGoals["rodAngle"] & {}>(0, "30 deg"),
    holds: pick(false, false, false, true),
  }),
})

/** The demo rig without a fuse, brief and day left out so that the goals alone speak. */
export function openRig(extra: Partial<RigDocument> = {}): RigDocument {
  const { day: _day, ...rest } = demo("lantern-moth-cells")
  return { ...rest, wiring: { ...rest.wiring!, fuseRating: null }, brief: null, ...extra }
}
