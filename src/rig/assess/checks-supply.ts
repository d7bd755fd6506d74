import { startUp } from "../../converter/index.js"
import { theRoot } from "../../numeric/index.js"
import { airTravel, chemistries, openCircuitVoltage, runtime } from "../../pack/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { isNoSolution } from "../../solver/index.js"
import { always, type Check } from "./checks.js"
import { atLeast, atMost, byMargin, type Found, findBy, lacking, onMove, peaksOf, refused } from "./finding.js"
import type { Situation } from "./situation.js"

const amps = (i: number) => formatQuantity("current", i)

/** What holds a voltage down, in words. */
const binding: Readonly<Record<string, string>> = {
  "input-current": "the input current limit",
  "input-voltage": "the converter's minimum input voltage",
  "output-current": "the output current limit",
  "source-current": "the source's current limit",
  "source-power": "the source's maximum power",
}

/** Whether the rig's arms draw on a source this document describes. */
const driven = ({ rig }: Situation) => rig.hinged !== null

/** Energy of one raise and lowering, and the mean power while moving; nothing where nothing on hinges moves. */
function moving(s: Situation): { readonly energy: number; readonly time: number } | Found {
  if (!s.rig.hinged) return { energy: 0, time: 0 }
  const move = s.move()
  if (move === null) return lacking(s.moveLacks as string)
  if (isNoSolution(move)) return refused(move)
  return { energy: move.raise.energy.source + move.lower.energy.source, time: move.cycleTime }
}

const isFound = (value: object): value is Found => "margin" in value

/** Checks of cells, converter, start and the day's energy. */
export const supplyChecks: readonly Check[] = [
  {
    id: "cell-current",
    title: "cell current",
    applies: (s) => driven(s) && s.rig.bank === null,
    find: (s) => {
      const { pack } = s.rig
      if (!pack) return lacking("pack")
      const limit = pack.cellCurrent
      if (limit === null) return lacking("pack.cellCurrent")
      return onMove(s, (m) => {
        const each = peaksOf(m).sourceCurrent / pack.parallel
        return atMost(
          each,
          limit,
          "current",
          `Each cell gives up to ${amps(each)}; it is rated for ${amps(limit)}.`,
          "the cell's datasheet",
        )
      })
    },
  },
  {
    id: "sag",
    title: "voltage sag of the source",
    applies: driven,
    find: (s) =>
      onMove(s, (m) => {
        const chain = s.model()?.chain
        if (!chain) return lacking(s.moveLacks as string)
        const share = (peaksOf(m).sourceCurrent * chain.sourceResistance) / chain.openVoltage
        return atMost(
          share,
          0.1,
          "ratio",
          `Under load the source's own resistance takes ${formatQuantity("ratio", share, "%")} of its voltage; above a tenth the move slows and cells warm.`,
        )
      }),
  },
  {
    id: "source-limit",
    title: "supply current limit",
    applies: (s) => driven(s) && (s.rig.bank !== null || s.rig.converter !== null),
    find: (s) =>
      onMove(s, (m) => {
        const { bank, converter } = s.rig
        const peaks = peaksOf(m)
        const { limitedShare: share, limitedBy } = m.lower.limitedShare > m.raise.limitedShare ? m.lower : m.raise
        const inputs = [bank?.currentLimit ?? null, converter?.inputCurrentLimit ?? null].filter((limit) => limit !== null)
        const used = [
          ...inputs.map((limit) => ({ current: peaks.sourceCurrent, limit })),
          ...(converter?.outputCurrentLimit ? [{ current: peaks.current, limit: converter.outputCurrentLimit }] : []),
        ]
        if (!used.length) return lacking("converter.inputCurrentLimit")
        const nearest = used.reduce((x, y) => (y.current / y.limit > x.current / x.limit ? y : x))
        const why =
          share > 0
            ? `For ${formatQuantity("ratio", share, "%")} of the move ${binding[limitedBy] ?? "a limit"} holds the voltage down.`
            : `At most ${amps(nearest.current)} of ${amps(nearest.limit)} is drawn: no limit binds.`
        return byMargin(
          nearest.current,
          nearest.limit,
          "current",
          share > 0 ? -share : Math.max(0, 1 - nearest.current / nearest.limit),
          why,
          "the datasheets of converter and bank",
        )
      }),
  },
  {
    id: "start-up",
    title: "start-up current",
    applies: driven,
    find: (s) => {
      const { starting, converter } = s.rig
      if (!starting) return lacking("starting")
      return onMove(s, (m) => {
        const whole = s.model()
        if (!whole) return lacking(s.moveLacks as string)
        const { chain, model } = whole
        const { constants, arms } = model
        const first = m.raise.curve[0] as (typeof m.raise.curve)[number]
        const { motorSpeed, ...rest } = starting
        // the rod's motor as a rotary one: its back-EMF at the stated speed, its load by the current it draws
        const backEmf = (arms.actuator.ratedVoltage - constants.frictionCurrent * constants.windingResistance) / motorSpeed
        const sourceVoltage = converter ? converter.outputVoltage : chain.openVoltage
        const sourceResistance = converter ? chain.loadResistance : chain.sourceResistance + chain.lineResistance + chain.loadResistance
        // standing still the motors are a resistance: where a limit binds, the supply gives them this much
        const standing = constants.windingResistance / arms.count
        const free = sourceVoltage / (standing + sourceResistance)
        const held = theRoot(
          (current) => (model.circuit(current)?.voltage ?? 0) - current * standing,
          0,
          free * (1 + 1e-9),
          1e-9,
          "current of the motors standing still",
        ).x
        const limit =
          converter || chain.sourceLimit !== null
            ? held < free * 0.999
              ? held
              : chain.sourceLimit !== null && !converter
                ? chain.sourceLimit
                : null
            : null
        const input = {
          ...rest,
          sourceVoltage,
          sourceResistance,
          currentLimit: limit,
          motors: arms.count,
          windingResistance: constants.windingResistance,
          backEmfConstant: backEmf,
          loadTorque: backEmf * first.current,
        }
        return findBy(startUp, "starting", input, (out) => {
          const reset = starting.resetVoltage
          const clear = limit === null ? 1 : 1 - out.inrushCurrent / limit
          const margin =
            !out.starts || out.resets === true
              ? -1
              : out.outcome === "starts"
                ? Math.min(Math.max(clear, 0.1), reset === null ? 1 : out.minVoltage / reset - 1)
                : 0.05
          const how = out.starts
            ? out.outcome === "starts"
              ? "They start freely"
              : "They start, but only against the limit"
            : "They never start"
          return byMargin(
            out.inrushCurrent,
            limit ?? out.inrushCurrent,
            "current",
            margin,
            `${how}: standing still they would draw ${amps(out.inrushCurrent)} and pull the supply to ${formatQuantity("voltage", out.minVoltage)}${out.resets ? ", where something else resets" : ""}.`,
            "see alula/converter startUp",
          )
        })
      })
    },
  },
  {
    id: "converter-window",
    title: "converter input voltage",
    applies: ({ rig }) => rig.converter !== null,
    find: ({ rig }) => {
      const converter = rig.converter as NonNullable<typeof rig.converter>
      const { pack, bank } = rig
      if (!pack && !bank) return lacking("pack")
      const [low, high] = pack
        ? [pack.series * chemistries[pack.chemistry].cellCutOffVoltage, pack.series * chemistries[pack.chemistry].cellFullVoltage]
        : [bank?.voltage as number, bank?.voltage as number]
      const room = Math.min(low - converter.minInputVoltage, converter.maxInputVoltage - high)
      const span = converter.maxInputVoltage - converter.minInputVoltage
      return byMargin(
        low,
        converter.minInputVoltage,
        "voltage",
        (2 * room) / span,
        `The source runs from ${formatQuantity("voltage", low)} to ${formatQuantity("voltage", high)}; the converter takes ${formatQuantity("voltage", converter.minInputVoltage)} to ${formatQuantity("voltage", converter.maxInputVoltage)}.`,
        "the converter's datasheet",
      )
    },
  },
  {
    id: "over-voltage",
    title: "supply voltage at the actuators",
    applies: driven,
    find: ({ rig }) => {
      const { ratedVoltage } = (rig.hinged as NonNullable<typeof rig.hinged>).actuator
      const { pack, bank, converter } = rig
      if (!pack && !bank && !converter) return lacking("pack")
      const most = converter
        ? converter.outputVoltage
        : pack
          ? pack.series * openCircuitVoltage(pack.chemistry, 1)
          : (bank?.voltage as number)
      // the same factor that the search keeps to by default
      const limit = 1.1 * ratedVoltage
      return byMargin(
        most,
        limit,
        "voltage",
        (limit - most) / (0.1 * ratedVoltage),
        `Fresh, the supply gives ${formatQuantity("voltage", most)} to actuators rated ${formatQuantity("voltage", ratedVoltage)}; up to a tenth more is usual.`,
      )
    },
  },
  {
    id: "day-energy",
    title: "energy for the day",
    applies: always,
    find: (s) => {
      const { day, pack, bank } = s.rig
      if (!day) return lacking("day")
      const one = moving(s)
      if (isFound(one)) return one
      const busy = day.moves * one.time
      if (busy > day.hours)
        return byMargin(
          busy,
          day.hours,
          "time",
          1 - busy / day.hours,
          `${day.moves} moves alone take ${formatQuantity("time", busy)}; the day has ${formatQuantity("time", day.hours)}.`,
          "the document",
        )
      const moves = day.moves * one.energy
      const still = day.standby * (day.hours - busy)
      const needed = moves + still
      const text = `${day.moves} moves take ${formatQuantity("energy", moves)} and standing by ${formatQuantity("energy", still)}`
      if (bank)
        return atMost(
          needed,
          bank.energy * (1 - day.reserve),
          "energy",
          `${text}; the bank gives ${formatQuantity("energy", bank.energy)}, of which ${formatQuantity("ratio", day.reserve, "%")} is kept.`,
          "the document",
        )
      if (!pack) return lacking("pack")
      if (!(needed > 0)) return lacking("day.standby", "nothing draws on the pack: neither moves nor standing power are given")
      // the day's mean power, the pack followed to its cut-off
      const pattern = [{ name: "the day", duration: day.hours, power: needed / day.hours }]
      const cells = {
        series: pack.series,
        parallel: pack.parallel,
        chemistry: pack.chemistry,
        cellCapacity: pack.cellCapacity,
        cellResistance: pack.cellResistance,
        interconnectResistance: pack.extraResistance,
      }
      return findBy(runtime, "pack", { ...cells, pattern }, (out) =>
        atLeast(
          out.runtime * (1 - day.reserve),
          day.hours,
          "time",
          `${text}: with a full pack that lasts ${formatQuantity("time", out.runtime)}, ${formatQuantity("ratio", day.reserve, "%")} kept in reserve.`,
          "the document",
        ),
      )
    },
  },
  {
    id: "flight",
    title: "air travel with the pack",
    applies: ({ rig }) => rig.day === null || rig.day.flies,
    find: ({ rig }) => {
      if (!rig.day) return lacking("day.flies")
      const { pack, bank } = rig
      if (!pack && !bank) return lacking("pack")
      const chemistry = pack ? chemistries[pack.chemistry] : null
      const nominalVoltage = pack && chemistry ? pack.series * chemistry.cellNominalVoltage : 0
      const capacity = pack ? pack.parallel * pack.cellCapacity : 0
      const energy = bank ? bank.energy : nominalVoltage * capacity
      const other = pack?.chemistry === "lead" ? "lead" : pack?.chemistry === "nimh" ? "nickel" : "dry"
      const type = chemistry === null || chemistry.lithiumIon ? "lithium-ion" : other
      // a bank's first purpose is to power something else: a spare, wherever it is fitted
      const carriedAs = bank ? "power-bank" : "in-device"
      return findBy(
        airTravel,
        "pack",
        type === "lead" ? { type, nominalVoltage, capacity, carriedAs } : { type, energy, carriedAs },
        (out) => {
          if (type !== "lithium-ion")
            return byMargin(
              energy,
              100 * 3600,
              "energy",
              out.rule === "free" ? 1 : -1,
              out.verdict,
              `air travel rules, read ${out.rulesReadOn}`,
            )
          return atMost(
            energy,
            100 * 3600,
            "energy",
            out.verdict,
            `IATA Dangerous Goods Regulations, table 2.3.A (100 Wh without approval, read ${out.rulesReadOn})`,
          )
        },
      )
    },
  },
]
