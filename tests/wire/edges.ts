import { conductor, conductorSize, fuseCoordination, harness, ledRun, voltageDrop, wireHeating } from "../../src/wire/index.js"
import type { Edges } from "../helpers/edges.js"
import { areaOf, currentFor, flow, inStillAir, largestFuse, perMetre, settles } from "./second.js"

const net = harness.example
const [source] = net.sources
const [fuse] = net.fuses as [NonNullable<typeof net.fuses>[number]]
const [out, back] = net.wires as [NonNullable<typeof net.wires>[number], NonNullable<typeof net.wires>[number]]
const [plug] = net.contacts as [NonNullable<typeof net.contacts>[number]]
const [motor] = net.currentLoads as [NonNullable<typeof net.currentLoads>[number]]
const [lantern] = net.powerLoads as [NonNullable<typeof net.powerLoads>[number]]
const fused = (rating: number) => ({ fuses: [{ ...fuse, fuseRating: rating }] })
const drawing = (current: number) => ({ currentLoads: [{ ...motor, current }] })
const alone = (power: number) => ({ currentLoads: [], resistanceLoads: [], powerLoads: [{ ...lantern, power }] })
const dead = { name: "l", from: "p", to: "0" }
const strip = { position: 0, sourceVoltage: 5, feederResistance: 0.04 }

// biome-ignore lint/suspicious/noExplicitAny: inputs and results of several solvers
type Any = any
const carried = (o: Any, name: string) => Math.abs(o.branches.find((b: Any) => b.name === name)?.current ?? 0)
/** Of some parts of a harness the one whose number is greatest, as that number. */
const most = <T>(list: readonly T[], of: (item: T) => number) => list.reduce((a, b) => (of(b) > of(a) ? b : a))
const fuseBy = (si: Any, o: Any, near: boolean): Any =>
  most(
    si.fuses.filter((f: Any) => !near || carried(o, f.name) <= f.fuseRating),
    (f: Any) => carried(o, f.name) / f.fuseRating,
  )
const contactBy = (si: Any, o: Any): Any =>
  most([...si.contacts, ...si.switches], (c: Any) => (c.ratedCurrent === null ? 0 : carried(o, c.name) / c.ratedCurrent))
const ratedInAir = (size: Any) => currentFor(size, inStillAir, 80)
const surfaceAt = (size: Any, place: Any, current: number) => flow(size, place, settles(size, place, current)).surface
const cmilCurrent = (size: Any) => areaOf(size) / ((Math.PI / 4) * 0.0254e-3 ** 2) / 700
const hottest = (si: Any, o: Any): Any => most(si.wires, (w: Any) => carried(o, w.name) / ratedInAir(w))
const thinnest = (si: Any, o: Any): Any => most(si.wires, (w: Any) => carried(o, w.name) / cmilCurrent(w))
/** The example harness has one fuse, ahead of both wires. */
const unguarded = (si: Any): Any => {
  const wire = si.wires.reduce((a: Any, b: Any) => (fuseFor(b) < fuseFor(a) ? b : a))
  return { fuse: si.fuses[0], wire }
}
const fuseFor = (size: Any) =>
  largestFuse({ awg: size.awg, area: size.area, material: size.material, stranding: size.stranding }, inStillAir, 80, 160)
const voltsOf = (o: Any) => o.nodes.flatMap((n: Any) => (n.voltage === null ? [] : [n.voltage]))

/** What the thickest size of a series bears. */
const thickest = (si: Any) => {
  const size = {
    awg: si.sizeSystem === "awg" ? -3 : null,
    area: si.sizeSystem === "awg" ? null : 16e-6,
    material: si.material,
    stranding: si.stranding,
  }
  const rated = currentFor(size, si, si.insulationRating)
  const hot = settles(size, si, si.current)
  const dropRatio = (si.current * perMetre(size, Math.min(hot, 300)) * si.conductors * si.length) / si.sourceVoltage
  return { size, rated, dropRatio }
}

/**
 * Voltage and resistance that the one power load of the example net sees (Thévenin): the steady currents drop their share in the
 * lead, and the warmers behind the plug divide what is left.
 */
const seen = (si: Any) => {
  const total = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
  const lead = total([
    si.sources[0].sourceResistance,
    ...si.fuses.map((f: Any) => f.resistance * f.hotFactor),
    ...si.switches.map((c: Any) => c.resistance),
    ...si.wires.map((w: Any) => perMetre(w, w.conductorTemperature) * w.length),
  ])
  const plugged = lead + total(si.contacts.map((c: Any) => c.resistance))
  const warmers = total(si.resistanceLoads.map((l: Any) => 1 / l.resistance))
  const left = si.sources[0].sourceVoltage - lead * total(si.currentLoads.map((l: Any) => l.current))
  return { volts: left / (1 + plugged * warmers), ohms: plugged / (1 + plugged * warmers) }
}
const available = (si: Any) => {
  const { volts, ohms } = seen(si)
  return volts ** 2 / (4 * ohms)
}

export const edges: Edges = {
  cautions: [
    {
      code: "hot-conductor",
      severity: "warning",
      solver: conductor,
      shown: { conductorTemperature: 70.1 },
      notShown: { conductorTemperature: 70 },
    },
    {
      code: "hot-conductor",
      severity: "warning",
      solver: voltageDrop,
      shown: { conductorTemperature: 70.1 },
      notShown: { conductorTemperature: 70 },
    },
    { code: "hot-conductor", severity: "warning", solver: wireHeating, shown: { current: 11.25 }, notShown: { current: 11.15 } },
    {
      code: "stranded",
      severity: "note",
      solver: conductor,
      shown: { awg: undefined, area: "1 mm2" },
      notShown: { awg: undefined, area: "1 mm2", stranding: "stranded" },
    },
    { code: "aluminium-ends", severity: "warning", solver: conductor, shown: { material: "aluminium" }, notShown: { material: "copper" } },
    {
      code: "aluminium-ends",
      severity: "warning",
      solver: conductorSize,
      shown: { material: "aluminium" },
      notShown: { material: "copper" },
    },

    ...[voltageDrop, wireHeating].map((solver) => ({
      code: "aluminium-ends",
      severity: "warning" as const,
      solver,
      shown: { material: "aluminium" },
      notShown: { material: "copper" },
    })),
    {
      code: "stranded",
      severity: "note",
      solver: voltageDrop,
      shown: { awg: undefined, area: "1 mm2" },
      notShown: { awg: undefined, area: "1 mm2", stranding: "stranded" },
    },
    {
      code: "stranded",
      severity: "note",
      solver: conductorSize,
      shown: { sizeSystem: "metric" },
      notShown: { sizeSystem: "metric", stranding: "class5" },
    },
    {
      code: "hot-conductor",
      severity: "warning",
      solver: conductorSize,
      shown: { current: 0.001, ambientTemperature: 70.1 },
      notShown: { current: 0.001, ambientTemperature: 69.9 },
    },
    { code: "insufficient-current", severity: "warning", solver: voltageDrop, shown: { current: 150.2 }, notShown: { current: 150.0 } },
    { code: "wire-overloaded", severity: "warning", solver: voltageDrop, shown: { current: 13.2 }, notShown: { current: 13.15 } },
    { code: "wire-burns", severity: "warning", solver: voltageDrop, shown: { current: 27.8 }, notShown: { current: 27.7 } },
    {
      code: "wire-burns",
      severity: "warning",
      solver: voltageDrop,
      shown: { awg: 30, current: 7.28 },
      notShown: { awg: 30, current: 7.24 },
    },
    { code: "burns", severity: "warning", solver: voltageDrop, shown: { current: 7.72 }, notShown: { current: 7.71 } },
    { code: "burns", severity: "warning", solver: fuseCoordination, shown: { current: 7.72 }, notShown: { current: 7.71 } },
    { code: "burns", severity: "warning", solver: harness, shown: drawing(6.81), notShown: drawing(6.8) },
    {
      code: "burns",
      severity: "warning",
      solver: ledRun,
      shown: { length: 0.1, current: 5.94 },
      notShown: { length: 0.1, current: 5.93 },
    },
    { code: "fumes", severity: "warning", solver: voltageDrop, shown: { current: 27.8 }, notShown: { current: 27.7 } },
    { code: "touch-voltage", severity: "warning", solver: voltageDrop, shown: { sourceVoltage: 30.1 }, notShown: { sourceVoltage: 30 } },
    { code: "touch-voltage", severity: "warning", solver: conductorSize, shown: { sourceVoltage: 30.1 }, notShown: { sourceVoltage: 30 } },

    { code: "unfused-wire", severity: "warning", solver: conductorSize, shown: { fuseRating: null }, notShown: { fuseRating: "7.5 A" } },
    {
      code: "burns",
      severity: "warning",
      solver: conductorSize,
      shown: { ambientTemperature: 41.1 },
      notShown: { ambientTemperature: 41 },
    },
    {
      code: "thin-wire",
      severity: "note",
      solver: conductorSize,
      shown: { current: 0.5, fuseRating: null, length: 2.625 },
      notShown: { current: 0.5, fuseRating: null, length: 2.64 },
    },
    {
      code: "limit-raised",
      severity: "caution",
      solver: conductorSize,
      shown: { faultTemperatureLimit: 160.5 },
      notShown: { faultTemperatureLimit: 160 },
    },
    {
      code: "limit-raised",
      severity: "caution",
      solver: wireHeating,
      shown: { faultTemperatureLimit: 160.5 },
      notShown: { faultTemperatureLimit: 160 },
    },
    {
      code: "limit-raised",
      severity: "caution",
      solver: fuseCoordination,
      shown: { faultTemperatureLimit: 160.5 },
      notShown: { faultTemperatureLimit: 160 },
    },

    { code: "over-rating", severity: "warning", solver: wireHeating, shown: { current: 12.55 }, notShown: { current: 12.53 } },
    { code: "fumes", severity: "warning", solver: wireHeating, shown: { current: 19.85 }, notShown: { current: 19.83 } },
    { code: "burns", severity: "warning", solver: wireHeating, shown: { current: 6.48 }, notShown: { current: 6.47 } },
    {
      code: "burns",
      severity: "warning",
      solver: wireHeating,
      shown: { arrangement: "padding", ambientTemperature: -20, current: 2.94 },
      notShown: { arrangement: "padding", ambientTemperature: -20, current: 2.925 },
    },
    { code: "one-sided", severity: "note", solver: wireHeating, shown: { arrangement: "padding" }, notShown: { arrangement: "bundle" } },
    {
      code: "bundle-model",
      severity: "note",
      solver: wireHeating,
      shown: { arrangement: "bundle", wires: 2 },
      notShown: { arrangement: "bundle", wires: 1 },
    },
    { code: "outside-range", severity: "note", solver: wireHeating, shown: { current: 22.45 }, notShown: { current: 22.4 } },
    { code: "not-adiabatic", severity: "note", solver: wireHeating, shown: { faultCurrent: 31.1 }, notShown: { faultCurrent: 31.15 } },

    {
      code: "fuse-ahead",
      severity: "warning",
      solver: fuseCoordination,
      shown: { unfusedLength: 0.181 },
      notShown: { unfusedLength: 0.18 },
    },
    {
      code: "fuse-ahead",
      severity: "warning",
      solver: fuseCoordination,
      shown: { unfusedLength: null },
      notShown: { unfusedLength: 0.18 },
    },
    {
      code: "wire-unprotected",
      severity: "warning",
      solver: fuseCoordination,
      shown: { fuseRating: 8.15 },
      notShown: { fuseRating: 8.145 },
    },
    {
      code: "wire-unprotected",
      severity: "warning",
      solver: fuseCoordination,
      shown: { datasheetAmpacity: null, fuseRating: 9.76 },
      notShown: { datasheetAmpacity: null, fuseRating: 9.75 },
    },
    { code: "fuse-too-small", severity: "caution", solver: fuseCoordination, shown: { fuseRating: 5.33 }, notShown: { fuseRating: 5.34 } },
    { code: "overload-burns", severity: "warning", solver: fuseCoordination, shown: { fuseRating: 15.15 }, notShown: { fuseRating: 15.1 } },
    {
      code: "overload-burns",
      severity: "warning",
      solver: fuseCoordination,
      shown: { awg: 28, fuseRating: 3.68 },
      notShown: { awg: 28, fuseRating: 3.66 },
    },
    {
      code: "nuisance",
      severity: "caution",
      solver: fuseCoordination,
      shown: { meltingIntegral: 33.5 },
      notShown: { meltingIntegral: 33.53 },
    },
    { code: "slow-fuse", severity: "warning", solver: fuseCoordination, shown: { fuseRating: 40.1 }, notShown: { fuseRating: 40 } },

    { code: "fuse-overloaded", severity: "warning", solver: harness, shown: fused(2.89), notShown: fused(2.91) },
    { code: "fuse-near-rating", severity: "caution", solver: harness, shown: fused(3.86), notShown: fused(3.87) },
    { code: "fuse-near-rating", severity: "caution", solver: harness, shown: fused(2.91), notShown: fused(2.89) },
    { code: "fuse-above-wire", severity: "warning", solver: harness, shown: fused(9.8), notShown: fused(9.75) },
    {
      code: "hot-connector",
      severity: "warning",
      solver: harness,
      shown: { contacts: [{ ...plug, ratedCurrent: 0.898 }] },
      notShown: { contacts: [{ ...plug, ratedCurrent: 0.9 }] },
    },
    {
      code: "warm-connector",
      severity: "caution",
      solver: harness,
      shown: { contacts: [{ ...plug, resistance: 0.613 }] },
      notShown: { contacts: [{ ...plug, resistance: 0.611 }] },
    },
    { code: "thin-wire", severity: "caution", solver: harness, shown: drawing(0.563), notShown: drawing(0.561) },
    { code: "wire-overloaded", severity: "warning", solver: harness, shown: drawing(12.3), notShown: drawing(12.2) },
    { code: "wire-burns", severity: "warning", solver: harness, shown: drawing(26.8), notShown: drawing(26.7) },
    { code: "fumes", severity: "warning", solver: harness, shown: drawing(26.8), notShown: drawing(26.7) },
    {
      code: "unfused-wire",
      severity: "warning",
      solver: harness,
      shown: { wires: [{ ...out, from: "p", length: 0.1805 }, back] },
      notShown: { wires: [{ ...out, from: "p", length: 0.1795 }, back] },
    },
    {
      code: "source-fed-back",
      severity: "warning",
      solver: harness,
      shown: { sources: [source, { ...source, name: "other", sourceVoltage: 12.4 }] },
      notShown: { sources: [source, { ...source, name: "other", sourceVoltage: 12.45 }] },
    },
    {
      code: "load-off",
      severity: "note",
      solver: harness,
      shown: { switches: [{ name: "switch", from: "f", to: "s", closed: false }] },
      notShown: { switches: [{ name: "switch", from: "f", to: "s", closed: true }] },
    },
    {
      code: "reversed-load",
      severity: "warning",
      solver: harness,
      shown: { ...drawing(80.5), powerLoads: [] },
      notShown: { ...drawing(80), powerLoads: [] },
    },
    {
      code: "touch-voltage",
      severity: "warning",
      solver: harness,
      shown: { sources: [{ ...source, sourceVoltage: 30.2 }] },
      notShown: { sources: [{ ...source, sourceVoltage: 30.1 }] },
    },

    { code: "constant-current", severity: "note", solver: ledRun, shown: { current: 0.995 }, notShown: { current: 0.99 } },
    { code: "dim", severity: "caution", solver: ledRun, shown: { current: 1.99 }, notShown: { current: 1.98 } },
    { code: "thin-wire", severity: "caution", solver: ledRun, shown: { current: 0.92 }, notShown: { current: 0.915 } },
    {
      code: "wire-overloaded",
      severity: "warning",
      solver: ledRun,
      shown: { length: 0.1, current: 10.1 },
      notShown: { length: 0.1, current: 10.02 },
    },
    ...["wire-burns", "fumes"].map((code) => ({
      code,
      severity: "warning" as const,
      solver: ledRun,
      shown: { length: 0.1, current: 21.1 },
      notShown: { length: 0.1, current: 21 },
    })),
    {
      code: "source-fed-back",
      severity: "warning",
      solver: ledRun,
      shown: { feeds: [strip, { position: 4, sourceVoltage: 4.39, feederResistance: 0.04 }] },
      notShown: { feeds: [strip, { position: 4, sourceVoltage: 4.4, feederResistance: 0.04 }] },
    },
    {
      code: "fuse-each-feed",
      severity: "warning",
      solver: ledRun,
      shown: { feeds: [strip, { position: 4, sourceVoltage: 5, feederResistance: 0 }] },
      notShown: { feeds: [strip] },
    },
    {
      code: "touch-voltage",
      severity: "warning",
      solver: ledRun,
      shown: { feeds: [{ ...strip, sourceVoltage: 30.1 }] },
      notShown: { feeds: [{ ...strip, sourceVoltage: 30 }] },
    },
  ],
  refusals: [
    { code: "thermal-runaway", solver: wireHeating, refused: { current: 27.6 }, answered: { current: 27.5 } },
    { code: "no-candidate", solver: conductorSize, refused: { length: 275 }, answered: { length: 274 } },
    { code: "no-candidate", solver: conductorSize, refused: { fuseRating: 303.2 }, answered: { fuseRating: 303 } },
    {
      code: "no-candidate",
      solver: conductorSize,
      refused: { fuseRating: null, length: 0.001, current: 409.3 },
      answered: { fuseRating: null, length: 0.001, current: 409 },
    },
    { code: "insufficient-voltage", solver: ledRun, refused: { current: 19.86 }, answered: { current: 19.84 } },
    {
      code: "short-circuit",
      solver: harness,
      refused: {
        sources: [source],
        contacts: [
          { ...dead, name: "bar", resistance: 0 },
          { ...dead, name: "bridge", from: "0", to: "p", resistance: 0 },
        ],
      },
      answered: {
        sources: [source],
        contacts: [
          { ...dead, name: "bar", resistance: 0 },
          { ...dead, name: "bridge", from: "0", to: "p", resistance: 0.001 },
        ],
      },
      noNearest: "any resistance at all would do; which of the loop's parts has it only the maker can say",
    },
    {
      code: "loads-in-series",
      solver: harness,
      refused: {
        currentLoads: [
          { name: "a", from: "c", to: "m", current: 1 },
          { name: "b", from: "m", to: "b", current: 0.5 },
        ],
      },
      answered: {
        currentLoads: [
          { name: "a", from: "c", to: "b", current: 1 },
          { name: "b", from: "c", to: "b", current: 0.5 },
        ],
      },
      noNearest: "it is a wiring, not a number, that has to change",
      apart: "both loads have to leave the node between them",
    },
    {
      code: "reversed",
      solver: harness,
      refused: { ...alone(6), powerLoads: [{ ...lantern, from: "b", to: "c" }] },
      answered: { ...alone(6), powerLoads: [{ ...lantern, from: "c", to: "b" }] },
      noNearest: "the load has to be turned round",
      apart: "turning a load round changes both its ends",
    },
    {
      // 6 W need a voltage of their own long before there is none: a billionth of a watt does not
      code: "insufficient-voltage",
      solver: harness,
      refused: { ...alone(1e-9), ...drawing(80.3) },
      answered: { ...alone(1e-9), ...drawing(80.27) },
      noNearest: "currents lie in a list; the sentence says how much voltage is lacking",
    },
    {
      code: "insufficient-power",
      solver: harness,
      refused: alone(246),
      answered: alone(244.5),
    },
  ],
  faults: [
    { path: "area", solver: conductor, faulty: { area: "0.5 mm2" }, sound: {} },
    { path: "awg", solver: conductor, faulty: { awg: undefined }, sound: {} },
    {
      path: "material",
      solver: conductor,
      faulty: { awg: undefined, area: "1 mm2", stranding: "class5", material: "aluminium" },
      sound: { awg: undefined, area: "1 mm2", stranding: "class5", material: "copper" },
    },
    {
      path: "area",
      solver: conductor,
      faulty: { awg: undefined, area: "1.01 mm2", stranding: "class5" },
      sound: { awg: undefined, area: "1 mm2", stranding: "class5" },
    },
    { path: "awg", solver: conductor, faulty: { awg: 20, stranding: "class2" }, sound: { awg: 20, stranding: "stranded" } },
    { path: "area", solver: voltageDrop, faulty: { area: "0.5 mm2" }, sound: {} },
    { path: "area", solver: wireHeating, faulty: { area: "0.5 mm2" }, sound: {} },
    { path: "area", solver: fuseCoordination, faulty: { area: "0.5 mm2" }, sound: {} },
    { path: "wires", solver: wireHeating, faulty: { wires: 2 }, sound: { wires: 1 } },
    { path: "wires", solver: fuseCoordination, faulty: { wires: 2 }, sound: { wires: 1 } },
    { path: "wires", solver: conductorSize, faulty: { wires: 2 }, sound: { wires: 1 } },
    { path: "insulationRating", solver: wireHeating, faulty: { insulationRating: 30 }, sound: { insulationRating: 30.1 } },
    {
      path: "insulationRating",
      solver: wireHeating,
      faulty: { arrangement: "padding", ambientTemperature: 20, insulationRating: 35 },
      sound: { arrangement: "padding", ambientTemperature: 20, insulationRating: 35.1 },
    },
    {
      path: "faultTemperatureLimit",
      solver: fuseCoordination,
      faulty: { initialConductorTemperature: 160 },
      sound: { initialConductorTemperature: 159.5 },
    },
    {
      path: "stranding",
      solver: conductorSize,
      faulty: { stranding: "class5", sizeSystem: "awg" },
      sound: { stranding: "class5", sizeSystem: "metric" },
    },
    {
      path: "stranding",
      solver: conductorSize,
      faulty: { sizeSystem: "metric", material: "aluminium", stranding: "class2" },
      sound: { sizeSystem: "metric", material: "copper", stranding: "class2" },
    },
    {
      path: "contacts.0.name",
      solver: harness,
      faulty: { contacts: [{ ...plug, name: "switch" }].map((c) => ({ ...c, name: "out" })) },
      sound: { contacts: [{ ...plug, name: "plug" }] },
    },
    {
      path: "contacts.0.to",
      solver: harness,
      faulty: { contacts: [{ ...plug, to: "a" }] },
      sound: { contacts: [{ ...plug, to: "c" }] },
    },
    {
      path: "sources.0.negative",
      solver: harness,
      faulty: { sources: [{ ...source, negative: "p" }] },
      sound: { sources: [{ ...source, negative: "0" }] },
    },
    {
      path: "wires.1.awg",
      solver: harness,
      faulty: { wires: [out, { ...back, stranding: "class5" }] },
      sound: { wires: [out, { ...back, stranding: "stranded" }] },
    },
    {
      path: "currentLoads",
      solver: harness,
      faulty: { currentLoads: [], powerLoads: [], resistanceLoads: [] },
      sound: { currentLoads: [motor], powerLoads: [], resistanceLoads: [] },
    },
    { path: "ground", solver: harness, faulty: { ground: "nowhere" }, sound: { ground: "0" } },
    { path: "trackResistance", solver: ledRun, faulty: { trackResistance: 0.05 }, sound: {} },
    {
      path: "feeds.0.position",
      solver: ledRun,
      faulty: { feeds: [{ ...strip, position: 4.01 }] },
      sound: { feeds: [{ ...strip, position: 4 }] },
    },
    {
      path: "feeds.1.position",
      solver: ledRun,
      faulty: {
        feeds: [
          { ...strip, position: 3 },
          { ...strip, position: 3 },
        ],
      },
      sound: {
        feeds: [
          { ...strip, position: 3 },
          { ...strip, position: 3.01 },
        ],
      },
    },
  ],
  numbers: {
    "voltageDrop.wire-overloaded.ratedInAir": ratedInAir,
    "voltageDrop.wire-overloaded.settles": (si) => settles(si, inStillAir, si.current),
    "voltageDrop.wire-burns.ratedInAir": ratedInAir,
    "voltageDrop.burns.surface": (si) => surfaceAt(si, inStillAir, si.current),
    "fuseCoordination.burns.surface": (si) => surfaceAt(si, si, si.current),
    "ledRun.burns.surface": (si, o) => surfaceAt(si, inStillAir, o.maxCurrent),
    "harness.burns.carried": (si, o) => carried(o, hottest(si, o).name),
    "harness.burns.surface": (si, o) => surfaceAt(hottest(si, o), inStillAir, carried(o, hottest(si, o).name)),
    "ledRun.wire-overloaded.ratedInAir": ratedInAir,
    "ledRun.wire-overloaded.settles": (si, o) => settles(si, inStillAir, o.maxCurrent),
    "ledRun.wire-burns.ratedInAir": ratedInAir,
    "ledRun.thin-wire.bundled": cmilCurrent,
    "ledRun.source-fed-back.fedBack": (_, o) => Math.max(...o.feeds.map((f: Any) => -f.current)),
    "ledRun.source-fed-back.position": (_, o) => (most(o.feeds as Any[], (f) => -f.current) as Any).position,
    "ledRun.touch-voltage.highest": (si) => Math.max(...si.feeds.map((f: Any) => f.sourceVoltage)),
    // one feed, the far end: E − R·I − I·r·L/2 for an even load
    "ledRun.insufficient-voltage.shortBy": (si) => ledShort(si),
    "ledRun.insufficient-voltage.at.position": (si) => ledLowest(si).position,
    "ledRun.feeds.0.position.position": () => 4.01,
    "ledRun.feeds.1.position.position": () => 3,
    "wireHeating.thermal-runaway.shortBy": (si) => si.current - currentFor(si, si, si.insulationRating),
    "conductorSize.no-candidate.at.area": (si) => areaOf(thickest(si).size as Any),
    "conductorSize.no-candidate.ampacity": (si) => thickest(si).rated,
    "conductorSize.no-candidate.dropShare": (si) => thickest(si).dropRatio,
    "conductorSize.no-candidate.shortBy": (si) => {
      const { size, rated, dropRatio } = thickest(si)
      if (rated < si.current) return si.current - rated
      const fits =
        si.fuseRating === null
          ? Number.POSITIVE_INFINITY
          : largestFuse(size as Any, si, si.insulationRating, Math.max(si.insulationRating, si.faultTemperatureLimit))
      return si.fuseRating > fits ? si.fuseRating - fits : dropRatio - si.dropLimit
    },
    "harness.fuse-overloaded.carried": (si, o) => carried(o, fuseBy(si, o, false).name),
    "harness.fuse-overloaded.rating": (si, o) => fuseBy(si, o, false).fuseRating,
    "harness.fuse-near-rating.carried": (si, o) => carried(o, fuseBy(si, o, true).name),
    "harness.fuse-near-rating.rating": (si, o) => fuseBy(si, o, true).fuseRating,
    "harness.fuse-above-wire.rating": (si) => unguarded(si).fuse.fuseRating,
    "harness.fuse-above-wire.longCurrent": (si) => unguarded(si).fuse.fuseRating * 1.35,
    "harness.fuse-above-wire.largestFuse": (si) => fuseFor(unguarded(si).wire),
    "harness.hot-connector.carried": (si, o) => carried(o, contactBy(si, o).name),
    "harness.hot-connector.rating": (si, o) => contactBy(si, o).ratedCurrent,
    "harness.warm-connector.heat": (si, o) => {
      const cool = [...si.contacts, ...si.switches].filter((c: Any) => c.ratedCurrent === null || carried(o, c.name) <= c.ratedCurrent)
      return Math.max(...cool.map((c: Any) => (carried(o, c.name) ? c.resistance * carried(o, c.name) ** 2 : 0)))
    },
    "harness.thin-wire.carried": (si, o) => carried(o, thinnest(si, o).name),
    "harness.thin-wire.bundled": (si, o) => cmilCurrent(thinnest(si, o)),
    "harness.wire-overloaded.carried": (si, o) => carried(o, hottest(si, o).name),
    "harness.wire-overloaded.ratedInAir": (si, o) => ratedInAir(hottest(si, o)),
    "harness.wire-overloaded.settles": (si, o) => settles(hottest(si, o), inStillAir, carried(o, hottest(si, o).name)),
    "harness.wire-burns.carried": (si, o) => carried(o, hottest(si, o).name),
    "harness.wire-burns.ratedInAir": (si, o) => ratedInAir(hottest(si, o)),
    "harness.source-fed-back.fedBack": (_, o) => Math.max(...o.sources.map((s: Any) => -s.current)),
    "harness.reversed-load.seen": (_, o) =>
      Math.min(...o.loads.filter((l: Any) => l.type !== "resistance" && l.fed).map((l: Any) => l.voltage)),
    "harness.touch-voltage.highest": (_, o) => Math.max(...voltsOf(o)) - Math.min(...voltsOf(o)),
    "harness.short-circuit.shortBy": () => 0.001,
    "harness.loads-in-series.shortBy": (si) => seriesShort(si),
    "harness.reversed.shortBy": (si) => seen({ ...si, currentLoads: [] }).volts,
    "harness.insufficient-voltage.shortBy": (si) => -seen(si).volts,
    "harness.insufficient-power.shortBy": (si) => si.powerShare * si.powerLoads[0].power - available(si),
    "harness.insufficient-power.at.power": (si) => si.powerLoads.reduce((s: number, l: Any) => s + l.power * si.powerShare, 0),
    "harness.insufficient-power.at.available": available,
  },
}

function seriesShort(si: Any): number {
  const [a, b] = si.currentLoads
  return Math.abs(a.current - b.current)
}

/** The lowest voltage of a run with one feed, from the sum over what lies beyond each stretch, and where it is. */
function ledLowest(si: Any): { volts: number; position: number } {
  const [feed] = si.feeds
  const r =
    2 *
    (si.trackResistance === null
      ? perMetre(si, si.conductorTemperature)
      : si.trackResistance *
        (perMetre(si.awg === null && si.area === null ? { ...si, awg: 20 } : si, si.conductorTemperature) /
          perMetre(si.awg === null && si.area === null ? { ...si, awg: 20 } : si, 20)))
  const lights = Array.from({ length: si.lightCount ?? 0 }, (_, k) => ((k + 1) * si.length) / si.lightCount)
  // a light at distance s from the feed costs I·r·s up to its own place; the far end feels them all
  const fall = (side: number, length: number) =>
    si.lightCount === null
      ? (r * (si.current / si.length) * length ** 2) / 2
      : lights
          .map((x) => (x - feed.position) * side)
          .filter((s) => s > 0)
          .reduce((v, s) => v + (r * s * si.current) / si.lightCount, 0)
  const [left, right] = [fall(-1, feed.position), fall(1, si.length - feed.position)]
  const volts = feed.sourceVoltage - feed.feederResistance * si.current - Math.max(left, right)
  const ends = si.lightCount === null ? [0, si.length] : [lights[0] as number, si.length]
  return { volts, position: right >= left ? (ends[1] as number) : (ends[0] as number) }
}
const ledShort = (si: Any) => -ledLowest(si).volts
