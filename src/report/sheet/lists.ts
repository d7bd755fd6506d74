// What to buy and what to cut.
import { frameMaterials } from "../../frame/data-materials.js"
import { evenThreads, type FanGeometry } from "../../linkage/index.js"
import { chemistries } from "../../pack/index.js"
import { formatQuantity, type Kind } from "../../quantity/index.js"
import type { Judged } from "../../rig/check/conditions.js"
import type { RigFormedPart } from "../../rig/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { plastics } from "../../thermoform/data.js"
import { tubeBend } from "../../thermoform/index.js"
import type { SheetBend, SheetCut, SheetNeed, SheetPart } from "./content.js"
import { rodsOf } from "./drilling.js"

type Rig = Judged["rig"]
type MotionSi = Rig["motions"][number]

/** A quantity as people read it. */
const q = (kind: Kind, value: number) => formatQuantity(kind, value)
const said = (...words: readonly (string | null | false)[]) => words.filter((word) => word).join(", ")

/** Wire size of a run. */
export const wireOf = ({ awg, area }: { readonly awg: number | null; readonly area: number | null }): string =>
  awg === null ? (area === null ? "" : q("area", area)) : awg > 0 ? `AWG ${awg}` : `AWG ${1 - awg}/0`

/** Parts that the document lists. */
export const partsOf = ({ parts }: Rig): SheetPart[] =>
  parts.map(({ name, count, mass, price }) => ({ name, count, mass, price: price > 0 ? price : null }))

interface Section {
  readonly outsideDiameter: number | null
  readonly width: number | null
  readonly height: number | null
  readonly wall: number | null
  readonly pipe: string | null
}

/** A tube or bar in words. */
function sectionOf({ pipe, outsideDiameter, width, height, wall }: Section): string {
  const size = pipe
    ? `pipe ${pipe}`
    : outsideDiameter !== null
      ? `⌀ ${q("length", outsideDiameter)}`
      : width !== null && height !== null
        ? `${q("length", width)} × ${q("length", height)}`
        : "as drawn"
  return said(size, wall !== null && `wall ${q("length", wall)}`)
}

const materialOf = (material: string | null) =>
  material === null
    ? "material as chosen"
    : ((frameMaterials as Readonly<Record<string, { readonly label: string }>>)[material]?.label ?? material)

/** What a drive must be able to do. */
function driveNeed({ name, drive }: MotionSi): SheetNeed {
  const d = drive as unknown as Readonly<Record<string, number | null>> & { readonly type: string; readonly count: number }
  const of = (key: string, kind: Kind, before: string) => (typeof d[key] === "number" ? `${before} ${q(kind, d[key])}` : null)
  const must =
    d.type === "linear-actuator"
      ? said(
          of("ratedVoltage", "voltage", "rated"),
          of("ratedForce", "force", "force"),
          of("stroke", "length", "stroke"),
          of("retractedLength", "length", "retracted"),
          of("ratedCurrent", "current", "at"),
        )
      : d.type === "gearmotor"
        ? said(
            of("ratedVoltage", "voltage", "rated"),
            of("loadTorque", "moment", "torque"),
            of("loadSpeed", "angularSpeed", "at"),
            of("loadCurrent", "current", "drawing"),
            of("holdingTorque", "moment", "holding without power"),
          )
        : d.type === "hobby-servo"
          ? said(
              of("firstVoltage", "voltage", "at"),
              of("firstStallTorque", "moment", "stall torque"),
              of("firstTime", "time", "60° in"),
              of("stallCurrent", "current", "stall current"),
            )
          : "as the document states"
  return { what: d.type.replace("-", " "), count: d.count, must, for: name }
}

/** What to buy by what it has to be able to do. */
export function needsOf({ motions, power }: Rig): SheetNeed[] {
  const pins = motions.flatMap(({ name, pin, mechanisms }): SheetNeed[] => {
    if (!pin) return []
    const count = mechanisms.reduce((sum, one) => sum + one.count, 0) * pin.pins
    const must = pin.bolt ? `${pin.bolt}, class ${pin.boltClass}` : pin.pinDiameter === null ? "" : `⌀ ${q("length", pin.pinDiameter)}`
    return [{ what: "hinge pin", count, must, for: name }]
  })
  const sources = (power?.sources ?? []).map((s): SheetNeed => {
    if (s.type === "cells")
      return {
        what: `cell, ${chemistries[s.chemistry].label}`,
        count: s.series * s.parallel,
        must: said(
          q("charge", s.cellCapacity),
          s.cellCurrent !== null && `at least ${q("current", s.cellCurrent)}`,
          `${s.series} in series, ${s.parallel} in parallel`,
        ),
        for: s.name,
      }
    return {
      what: s.type === "bank" ? "USB battery bank" : "plugged-in supply",
      count: 1,
      must: said(q("voltage", s.voltage), `at least ${q("current", s.currentLimit)}`, s.type === "bank" && q("energy", s.energy)),
      for: s.name,
    }
  })
  const buses = (power?.buses ?? []).flatMap((bus): SheetNeed[] => [
    ...(bus.fuseRating === null ? [] : [{ what: "fuse with holder", count: 1, must: q("current", bus.fuseRating), for: bus.name }]),
    ...(bus.switchRating === null
      ? []
      : [{ what: "switch", count: 1, must: `direct current, at least ${q("current", bus.switchRating)}`, for: bus.name }]),
    ...(bus.converter
      ? [
          {
            what: "converter",
            count: 1,
            must: said(
              `in ${q("voltage", bus.converter.minInputVoltage)} to ${q("voltage", bus.converter.maxInputVoltage)}`,
              `out ${q("voltage", bus.converter.outputVoltage)}`,
              bus.converter.outputCurrentLimit !== null && `up to ${q("current", bus.converter.outputCurrentLimit)}`,
            ),
            for: bus.name,
          },
        ]
      : []),
    ...(bus.run && bus.run.length > 0
      ? [
          {
            what: "wire, plus and minus",
            count: 2,
            must: `${wireOf(bus.run)}, ${q("length", bus.run.length)} each, insulation for ${q("temperature", bus.run.insulation)}`,
            for: bus.name,
          },
        ]
      : []),
  ])
  return [...motions.map(driveNeed), ...pins, ...sources, ...buses]
}

/** Parts to bend by a template. */
export function bendsOf({ formed }: Rig): SheetBend[] {
  return formed.flatMap((part): SheetBend[] => {
    const { name, bend } = part as unknown as SiOf<RigFormedPart>
    const out = tubeBend.si(bend)
    if (isNoSolution(out)) return []
    const { jigAngle, jigRadius, springback, heatedLength, cutLength } = out
    const { outsideDiameter, radius, angle, material } = bend
    return [
      {
        name,
        outsideDiameter,
        radius,
        angle,
        jigAngle,
        jigRadius,
        springback,
        heatedLength,
        cutLength,
        material: plastics[material].label,
      },
    ]
  })
}

/** Lengths of a motion's cables, lines and threads. */
function linesOf({ name, transmission, mechanisms }: MotionSi): SheetCut[] {
  const elements = [
    ...transmission.map((element) => ({ element, count: 1 })),
    ...mechanisms.flatMap((one) => one.transmission.map((element) => ({ element, count: one.count }))),
  ]
  const cables = elements.flatMap(({ element, count }): SheetCut[] => {
    const e = element as unknown as { readonly type: string; readonly length?: number; readonly lineLength?: number | null }
    const length = e.type === "drum" ? e.lineLength : e.type === "cable" || e.type === "antagonist" ? e.length : null
    if (!length) return []
    return [
      {
        what: e.type === "drum" ? "line on the drum" : "cable",
        count: count * (e.type === "antagonist" ? 2 : 1),
        length,
        of: name,
        measured: "end to end, terminals to be added",
      },
    ]
  })
  const threads = mechanisms.flatMap((one): SheetCut[] => {
    if (one.type !== "fan") return []
    const fan = one as unknown as FanGeometry & {
      readonly threads: readonly number[] | null
      readonly openAngle: number
      readonly span: number
    }
    const lengths = fan.threads ?? evenThreads(fan, fan.openAngle, fan.span / (fan.vanes - 1))
    return lengths.map((length, i) => ({
      what: `thread ${i + 1}, ${one.name}`,
      count: one.count,
      length,
      of: name,
      measured: "knot to knot, taut",
    }))
  })
  return [...cables, ...threads]
}

/** Pieces to cut. */
export function cutsOf(judged: Judged): SheetCut[] {
  const { motions, power } = judged.rig
  const spars = motions.flatMap(({ name, spar, mechanisms }): SheetCut[] => {
    if (!spar) return []
    const arms = mechanisms.reduce((sum, one) => sum + one.count * ((one as unknown as { readonly vanes?: number }).vanes ?? 1), 0)
    return [
      {
        what: `spar, ${materialOf(spar.material)}, ${sectionOf(spar.section as unknown as Section)}`,
        count: arms,
        length: spar.length,
        of: name,
        measured: "from hinge to end; add what the hinge needs behind its pin",
      },
    ]
  })
  const tubes = bendsOf(judged.rig).flatMap((bend): SheetCut[] =>
    bend.cutLength === null
      ? []
      : [
          {
            what: `tube, ${bend.name}, ⌀ ${q("length", bend.outsideDiameter)}`,
            count: 1,
            length: bend.cutLength,
            of: bend.name,
            measured: "straight, before bending",
          },
        ],
  )
  const wires = (power?.buses ?? []).flatMap((bus): SheetCut[] =>
    bus.run && bus.run.length > 0
      ? [{ what: `wire ${wireOf(bus.run)}`, count: 2, length: bus.run.length, of: bus.name, measured: "as laid; add what the ends need" }]
      : [],
  )
  return [...spars, ...rodsOf(judged), ...motions.flatMap(linesOf), ...tubes, ...wires]
}
