import { formatQuantity } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { fuseCoordination, ledRun, type WireHeatingInput, wireHeating } from "../../wire/index.js"
import type { RigDocument, RigRun } from "../document/document.js"
import type { Check } from "./checks.js"
import { atLeast, atMost, byMargin, type Found, findBy, lacking, onMove, peaksOf, worstOf } from "./finding.js"
import type { Situation } from "./situation.js"

type Wiring = NonNullable<SiOf<RigDocument>["wiring"]>

const watts = (p: number) => formatQuantity("power", p)
const amps = (i: number) => formatQuantity("current", i)
const degrees = (t: number) => formatQuantity("temperature", t)

/** Whether the rig's arms draw on a source this document describes. */
const driven = ({ rig }: Situation) => rig.hinged !== null

/** A run's wire at a current, in the air round it. */
const heating = (wiring: Wiring, { awg, area }: SiOf<RigRun>, current: number): WireHeatingInput => ({
  awg,
  area,
  current,
  ambientTemperature: wiring.ambientTemperature,
  insulationRating: wiring.insulation,
})

/** A finding of every run of wire, unless the air alone is too hot for them. */
function onRuns(wiring: Wiring, find: () => Found): Found {
  const { insulation, ambientTemperature } = wiring
  if (ambientTemperature < insulation) return find()
  const why = `The air round the wires is at ${degrees(ambientTemperature)} and their insulation is good to ${degrees(insulation)}: it bears no current at all there.`
  return byMargin(ambientTemperature, insulation, "temperature", -1, why, "the wire's datasheet")
}

/** Whether a run bears a current for good, by wireHeating's own verdict. */
function warmth(section: string, wiring: Wiring, run: SiOf<RigRun>, current: number): Found {
  return findBy(wireHeating, section, heating(wiring, run, current), (out) => {
    const margin = (wiring.insulation - out.conductorTemperature) / Math.max(wiring.insulation - wiring.ambientTemperature, 1)
    return byMargin(
      out.conductorTemperature,
      wiring.insulation,
      "temperature",
      out.bears ? Math.max(0, margin) : Math.min(-1e-9, margin),
      `If the maximum current flowed on and on the ${section === "wiring.load" ? "wire to the actuators" : "wire"} would reach ${degrees(out.conductorTemperature)}; its insulation is good to ${degrees(wiring.insulation)}.`,
      "the wire's datasheet",
    )
  })
}

/** Whether a fuse carries a current and protects a run's wire, by fuseCoordination's own verdict. */
function guarded(section: string, wiring: Wiring, run: SiOf<RigRun>, current: number, fuse: number): Found {
  const input = heating(wiring, run, current)
  return findBy(wireHeating, section, input, () =>
    findBy(fuseCoordination, "wiring", { ...input, fuseRating: fuse }, (out) => {
      // left between the load and the fuse, and between the fuse and the wire, whichever is less
      const margin = Math.min(fuse / out.minFuseRating - 1, 1 - fuse / out.maxFuseRating)
      return byMargin(
        fuse,
        out.minFuseRating,
        "current",
        out.coordinated ? Math.max(0, margin) : Math.min(-1e-9, margin),
        `A fuse from ${amps(out.minFuseRating)} to ${amps(out.maxFuseRating)} carries ${amps(current)} and protects ${section === "wiring.load" ? "the wire to the actuators" : "this wire"}; ${amps(fuse)} is fitted.`,
        "see alula/wire fuseCoordination",
      )
    }),
  )
}

/** Checks of wires, fuse, switch and lights. */
export const wiringChecks: readonly Check[] = [
  {
    id: "wire-drop",
    title: "voltage drop of wires and contacts",
    applies: driven,
    find: (s) =>
      onMove(s, (m) => {
        const chain = s.model()?.chain
        const limit = s.rig.wiring?.dropLimit
        if (!chain || limit === undefined) return lacking(s.moveLacks ?? "wiring")
        const { sourceCurrent, current } = peaksOf(m)
        const drop = sourceCurrent * chain.lineResistance + current * chain.loadResistance
        return atMost(
          drop / chain.openVoltage,
          limit,
          "ratio",
          `Wires, plugs, switch and fuse take ${formatQuantity("voltage", drop)} at worst, ${formatQuantity("ratio", drop / chain.openVoltage, "%")} of the source's.`,
        )
      }),
  },
  {
    id: "wire-heat",
    title: "conductor temperature",
    applies: driven,
    find: (s) =>
      onMove(s, (m) => {
        const { wiring } = s.rig
        if (!wiring) return lacking("wiring")
        const { sourceCurrent, current } = peaksOf(m)
        const { source, load } = wiring
        // the run behind a converter carries the actuators' own current
        return onRuns(wiring, () =>
          worstOf([
            warmth("wiring.source", wiring, source, sourceCurrent),
            ...(load ? [warmth("wiring.load", wiring, load, current)] : []),
          ]),
        )
      }),
  },
  {
    id: "fuse",
    title: "fuse coordination",
    applies: driven,
    find: (s) =>
      onMove(s, (m) => {
        const { wiring } = s.rig
        if (!wiring) return lacking("wiring")
        const fuse = wiring.fuseRating
        if (fuse === null) return lacking("wiring.fuseRating")
        const { sourceCurrent, current } = peaksOf(m)
        const { source, load } = wiring
        // without a converter the run to the actuators hangs on the same fuse
        return onRuns(wiring, () =>
          worstOf([
            guarded("wiring.source", wiring, source, sourceCurrent, fuse),
            ...(load && !s.rig.converter ? [guarded("wiring.load", wiring, load, current, fuse)] : []),
          ]),
        )
      }),
  },
  {
    id: "switch",
    title: "current rating of the switch",
    applies: driven,
    find: (s) => {
      const rating = s.rig.wiring?.switchRating ?? null
      if (rating === null) return lacking(s.rig.wiring ? "wiring.switchRating" : "wiring")
      return onMove(s, (m) => {
        const { sourceCurrent } = peaksOf(m)
        return atMost(
          sourceCurrent,
          rating,
          "current",
          `The switch breaks up to ${amps(sourceCurrent)}; it is rated for ${amps(rating)} of direct current (an alternating-current rating does not count).`,
          "the switch's datasheet",
        )
      })
    },
  },
  {
    id: "lights",
    title: "LED voltage drop",
    applies: ({ rig }) => rig.lights !== null,
    find: ({ rig }) => {
      const lights = rig.lights as NonNullable<typeof rig.lights>
      const limit = lights.dimVoltage
      if (limit === null) return lacking("lights.dimVoltage")
      return findBy(ledRun, "lights", lights, (out) =>
        atLeast(
          out.minVoltage,
          limit,
          "voltage",
          `Weakest, at ${formatQuantity("length", out.minVoltagePosition)} along, the lights still get ${formatQuantity("voltage", out.minVoltage)}; they take ${watts(out.loadPower)}.`,
          "the lights' datasheet",
        ),
      )
    },
  },
]
