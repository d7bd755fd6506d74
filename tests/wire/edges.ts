import { conductor, fuseCoordination, harness, ledRun, sizeConductor, voltageDrop, wireHeating } from "../../src/wire/index.js"
import type { Edges } from "../helpers/edges.js"
import { areaOf, currentFor, inStillAir, largestFuse, perMetre, settles } from "./second.js"

const net = harness.example
const [source] = net.sources
const [fuse] = net.fuses as [NonNullable<typeof net.fuses>[number]]
const [out, back] = net.wires as [NonNullable<typeof net.wires>[number], NonNullable<typeof net.wires>[number]]
const [plug] = net.contacts as [NonNullable<typeof net.contacts>[number]]
const [motor] = net.currentLoads as [NonNullable<typeof net.currentLoads>[number]]
const [lantern] = net.powerLoads as [NonNullable<typeof net.powerLoads>[number]]
const fused = (rating: number) => ({ fuses: [{ ...fuse, rating }] })
const drawing = (current: number) => ({ currentLoads: [{ ...motor, current }] })
const alone = (power: number) => ({ currentLoads: [], resistanceLoads: [], powerLoads: [{ ...lantern, power }] })
const dead = { name: "l", from: "p", to: "0" }
const strip = { position: 0, voltage: 5, resistance: 0.04 }

// biome-ignore lint/suspicious/noExplicitAny: inputs and results of several solvers
type Any = any
const carried = (o: Any, name: string) => Math.abs(o.branches.find((b: Any) => b.name === name)?.current ?? 0)
/** Of some parts of a harness the one whose number is greatest, as that number. */
const most = <T>(list: readonly T[], of: (item: T) => number) => list.reduce((a, b) => (of(b) > of(a) ? b : a))
const fuseBy = (si: Any, o: Any, near: boolean): Any =>
  most(
    si.fuses.filter((f: Any) => !near || carried(o, f.name) <= f.rating),
    (f: Any) => carried(o, f.name) / f.rating,
  )
const contactBy = (si: Any, o: Any): Any =>
  most([...si.contacts, ...si.switches], (c: Any) => (c.rating === null ? 0 : carried(o, c.name) / c.rating))
const ratedInAir = (size: Any) => currentFor(size, inStillAir, 80)
const cmilCurrent = (size: Any) => areaOf(size) / ((Math.PI / 4) * 0.0254e-3 ** 2) / 700
const hottest = (si: Any, o: Any): Any => most(si.wires, (w: Any) => carried(o, w.name) / ratedInAir(w))
const thinnest = (si: Any, o: Any): Any => most(si.wires, (w: Any) => carried(o, w.name) / cmilCurrent(w))
/** The example harness has one fuse, ahead of both wires. */
const unguarded = (si: Any): Any => {
  const wire = si.wires.reduce((a: Any, b: Any) => (fuseFor(b) < fuseFor(a) ? b : a))
  return { fuse: si.fuses[0], wire }
}
const fuseFor = (size: Any) =>
  largestFuse({ awg: size.awg, area: size.area, metal: size.metal, stranding: size.stranding }, inStillAir, 80, 160)
const voltsOf = (o: Any) => o.nodes.flatMap((n: Any) => (n.voltage === null ? [] : [n.voltage]))

/** What the thickest size of a series bears. */
const thickest = (si: Any) => {
  const size = { awg: si.series === "awg" ? -3 : null, area: si.series === "awg" ? null : 16e-6, metal: si.metal, stranding: si.stranding }
  const rated = currentFor(size, si, si.rating)
  const hot = settles(size, si, si.current)
  const dropRatio = (si.current * perMetre(size, Math.min(hot, 300)) * si.conductors * si.length) / si.voltage
  return { size, rated, dropRatio }
}

/** Driving voltage and resistance that the one power load of the example net sees, its other loads off. */
const seen = (si: Any) => {
  const ohms =
    si.sources[0].resistance +
    si.fuses.reduce((s: number, f: Any) => s + f.resistance * f.hotFactor, 0) +
    si.switches.reduce((s: number, c: Any) => s + c.resistance, 0) +
    si.contacts.reduce((s: number, c: Any) => s + c.resistance, 0) +
    si.wires.reduce((s: number, w: Any) => s + perMetre(w, w.temperature) * w.length, 0)
  return { volts: si.sources[0].voltage, ohms }
}
const available = (si: Any) => {
  const { volts, ohms } = seen(si)
  return volts ** 2 / (4 * ohms)
}

export const edges: Edges = {
  cautions: [
    { code: "hot-conductor", severity: "warning", solver: conductor, shown: { temperature: 70.1 }, notShown: { temperature: 70 } },
    { code: "hot-conductor", severity: "warning", solver: voltageDrop, shown: { temperature: 70.1 }, notShown: { temperature: 70 } },
    { code: "hot-conductor", severity: "warning", solver: wireHeating, shown: { current: 11.25 }, notShown: { current: 11.15 } },
    {
      code: "stranded",
      severity: "note",
      solver: conductor,
      shown: { awg: undefined, area: "1 mm2" },
      notShown: { awg: undefined, area: "1 mm2", stranding: "stranded" },
    },
    { code: "aluminium-ends", severity: "warning", solver: conductor, shown: { metal: "aluminium" }, notShown: { metal: "copper" } },
    { code: "aluminium-ends", severity: "warning", solver: sizeConductor, shown: { metal: "aluminium" }, notShown: { metal: "copper" } },

    { code: "no-such-current", severity: "warning", solver: voltageDrop, shown: { current: 150.2 }, notShown: { current: 150.0 } },
    { code: "wire-overloaded", severity: "warning", solver: voltageDrop, shown: { current: 13.2 }, notShown: { current: 13.15 } },
    { code: "wire-burns", severity: "warning", solver: voltageDrop, shown: { current: 27.8 }, notShown: { current: 27.7 } },
    {
      code: "wire-burns",
      severity: "warning",
      solver: voltageDrop,
      shown: { awg: 30, current: 7.28 },
      notShown: { awg: 30, current: 7.24 },
    },
    { code: "fumes", severity: "warning", solver: voltageDrop, shown: { current: 27.8 }, notShown: { current: 27.7 } },
    { code: "touch-voltage", severity: "warning", solver: voltageDrop, shown: { voltage: 30.1 }, notShown: { voltage: 30 } },
    { code: "touch-voltage", severity: "warning", solver: sizeConductor, shown: { voltage: 30.1 }, notShown: { voltage: 30 } },

    { code: "no-fuse", severity: "warning", solver: sizeConductor, shown: { fuse: null }, notShown: { fuse: "7.5 A" } },
    { code: "touch-temperature", severity: "warning", solver: sizeConductor, shown: { ambient: 41.1 }, notShown: { ambient: 41 } },
    {
      code: "thin",
      severity: "note",
      solver: sizeConductor,
      shown: { current: 0.5, fuse: null, length: 2.625 },
      notShown: { current: 0.5, fuse: null, length: 2.64 },
    },
    { code: "limit-raised", severity: "caution", solver: sizeConductor, shown: { faultLimit: 160.5 }, notShown: { faultLimit: 160 } },
    { code: "limit-raised", severity: "caution", solver: wireHeating, shown: { faultLimit: 160.5 }, notShown: { faultLimit: 160 } },
    { code: "limit-raised", severity: "caution", solver: fuseCoordination, shown: { faultLimit: 160.5 }, notShown: { faultLimit: 160 } },

    { code: "over-rating", severity: "warning", solver: wireHeating, shown: { current: 12.55 }, notShown: { current: 12.53 } },
    { code: "fumes", severity: "warning", solver: wireHeating, shown: { current: 19.85 }, notShown: { current: 19.83 } },
    { code: "touch-temperature", severity: "warning", solver: wireHeating, shown: { current: 6.48 }, notShown: { current: 6.47 } },
    {
      code: "touch-temperature",
      severity: "warning",
      solver: wireHeating,
      shown: { arrangement: "padding", ambient: -20, current: 2.94 },
      notShown: { arrangement: "padding", ambient: -20, current: 2.925 },
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

    { code: "fuse-ahead", severity: "warning", solver: fuseCoordination, shown: { fromPole: 0.181 }, notShown: { fromPole: 0.18 } },
    { code: "fuse-ahead", severity: "warning", solver: fuseCoordination, shown: { fromPole: null }, notShown: { fromPole: 0.18 } },
    { code: "wire-unprotected", severity: "warning", solver: fuseCoordination, shown: { fuse: 8.15 }, notShown: { fuse: 8.145 } },
    {
      code: "wire-unprotected",
      severity: "warning",
      solver: fuseCoordination,
      shown: { wireRating: null, fuse: 9.76 },
      notShown: { wireRating: null, fuse: 9.75 },
    },
    { code: "fuse-too-small", severity: "caution", solver: fuseCoordination, shown: { fuse: 5.33 }, notShown: { fuse: 5.34 } },
    { code: "overload-burns", severity: "warning", solver: fuseCoordination, shown: { fuse: 15.15 }, notShown: { fuse: 15.1 } },
    {
      code: "overload-burns",
      severity: "warning",
      solver: fuseCoordination,
      shown: { awg: 28, fuse: 3.68 },
      notShown: { awg: 28, fuse: 3.66 },
    },
    {
      code: "nuisance",
      severity: "caution",
      solver: fuseCoordination,
      shown: { meltingIntegral: 33.5 },
      notShown: { meltingIntegral: 33.53 },
    },
    { code: "slow-fuse", severity: "warning", solver: fuseCoordination, shown: { fuse: 40.1 }, notShown: { fuse: 40 } },

    { code: "fuse-overloaded", severity: "warning", solver: harness, shown: fused(2.89), notShown: fused(2.91) },
    { code: "fuse-near-rating", severity: "caution", solver: harness, shown: fused(3.86), notShown: fused(3.87) },
    { code: "fuse-near-rating", severity: "caution", solver: harness, shown: fused(2.91), notShown: fused(2.89) },
    { code: "fuse-above-wire", severity: "warning", solver: harness, shown: fused(9.8), notShown: fused(9.75) },
    {
      code: "hot-connector",
      severity: "warning",
      solver: harness,
      shown: { contacts: [{ ...plug, rating: 0.898 }] },
      notShown: { contacts: [{ ...plug, rating: 0.9 }] },
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
      shown: { sources: [source, { ...source, name: "other", voltage: 12.4 }] },
      notShown: { sources: [source, { ...source, name: "other", voltage: 12.45 }] },
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
      shown: { sources: [{ ...source, voltage: 30.2 }] },
      notShown: { sources: [{ ...source, voltage: 30.1 }] },
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
    {
      code: "wire-burns",
      severity: "warning",
      solver: ledRun,
      shown: { length: 0.1, current: 21.1 },
      notShown: { length: 0.1, current: 21 },
    },
    {
      code: "feed-back",
      severity: "warning",
      solver: ledRun,
      shown: { feeds: [strip, { position: 4, voltage: 4.39, resistance: 0.04 }] },
      notShown: { feeds: [strip, { position: 4, voltage: 4.4, resistance: 0.04 }] },
    },
    {
      code: "fuse-each-feed",
      severity: "warning",
      solver: ledRun,
      shown: { feeds: [strip, { position: 4, voltage: 5, resistance: 0 }] },
      notShown: { feeds: [strip] },
    },
    {
      code: "touch-voltage",
      severity: "warning",
      solver: ledRun,
      shown: { feeds: [{ ...strip, voltage: 30.1 }] },
      notShown: { feeds: [{ ...strip, voltage: 30 }] },
    },
  ],
  refusals: [
    { code: "too-hot", solver: wireHeating, refused: { current: 27.6 }, answered: { current: 27.5 } },
    { code: "no-size", solver: sizeConductor, refused: { length: 275 }, answered: { length: 274 } },
    { code: "no-size", solver: sizeConductor, refused: { fuse: 303.2 }, answered: { fuse: 303 } },
    {
      code: "no-size",
      solver: sizeConductor,
      refused: { fuse: null, length: 0.001, current: 409.3 },
      answered: { fuse: null, length: 0.001, current: 409 },
    },
    { code: "no-voltage", solver: ledRun, refused: { current: 19.86 }, answered: { current: 19.84 } },
    {
      code: "no-resistance",
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
      code: "no-voltage",
      solver: harness,
      refused: { ...alone(6), powerLoads: [{ ...lantern, from: "b", to: "c" }] },
      answered: { ...alone(6), powerLoads: [{ ...lantern, from: "c", to: "b" }] },
      noNearest: "the load has to be turned round",
      apart: "turning a load round changes both its ends",
    },
    {
      code: "power-beyond-source",
      solver: harness,
      refused: alone(246),
      answered: alone(244.5),
      noNearest: "powers lie in a list; the sentence says how much there is in these proportions",
    },
  ],
  faults: [
    { path: "area", solver: conductor, faulty: { area: "0.5 mm2" }, sound: {} },
    { path: "awg", solver: conductor, faulty: { awg: undefined }, sound: {} },
    {
      path: "metal",
      solver: conductor,
      faulty: { awg: undefined, area: "1 mm2", stranding: "class5", metal: "aluminium" },
      sound: { awg: undefined, area: "1 mm2", stranding: "class5", metal: "copper" },
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
    { path: "wires", solver: sizeConductor, faulty: { wires: 2 }, sound: { wires: 1 } },
    { path: "rating", solver: wireHeating, faulty: { rating: 30 }, sound: { rating: 30.1 } },
    {
      path: "rating",
      solver: wireHeating,
      faulty: { arrangement: "padding", ambient: 20, rating: 35 },
      sound: { arrangement: "padding", ambient: 20, rating: 35.1 },
    },
    {
      path: "faultLimit",
      solver: fuseCoordination,
      faulty: { initialTemperature: 160 },
      sound: { initialTemperature: 159.5 },
    },
    {
      path: "stranding",
      solver: sizeConductor,
      faulty: { stranding: "class5", series: "awg" },
      sound: { stranding: "class5", series: "metric" },
    },
    {
      path: "stranding",
      solver: sizeConductor,
      faulty: { series: "metric", metal: "aluminium", stranding: "class2" },
      sound: { series: "metric", metal: "copper", stranding: "class2" },
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
    { path: "track", solver: ledRun, faulty: { track: 0.05 }, sound: {} },
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
    "ledRun.wire-overloaded.ratedInAir": ratedInAir,
    "ledRun.wire-overloaded.settles": (si, o) => settles(si, inStillAir, o.greatestCurrent),
    "ledRun.wire-burns.ratedInAir": ratedInAir,
    "ledRun.thin-wire.bundled": cmilCurrent,
    "ledRun.feed-back.fedBack": (_, o) => Math.max(...o.feeds.map((f: Any) => -f.current)),
    "ledRun.feed-back.position": (_, o) => (most(o.feeds as Any[], (f) => -f.current) as Any).position,
    "ledRun.touch-voltage.highest": (si) => Math.max(...si.feeds.map((f: Any) => f.voltage)),
    // one feed, the far end: E − R·I − I·r·L/2 for an even load
    "ledRun.no-voltage.shortBy": (si) => ledShort(si),
    "ledRun.no-voltage.at.position": (si) => ledLowest(si).position,
    "ledRun.feeds.0.position.position": () => 4.01,
    "ledRun.feeds.1.position.position": () => 3,
    "wireHeating.too-hot.shortBy": (si) => si.current - currentFor(si, si, si.rating),
    "sizeConductor.no-size.at.area": (si) => areaOf(thickest(si).size as Any),
    "sizeConductor.no-size.ratedCurrent": (si) => thickest(si).rated,
    "sizeConductor.no-size.dropRatio": (si) => thickest(si).dropRatio,
    "sizeConductor.no-size.shortBy": (si) => {
      const { size, rated, dropRatio } = thickest(si)
      if (rated < si.current) return si.current - rated
      const fits = si.fuse === null ? Number.POSITIVE_INFINITY : largestFuse(size as Any, si, si.rating, Math.max(si.rating, si.faultLimit))
      return si.fuse > fits ? si.fuse - fits : dropRatio - si.greatestDrop
    },
    "harness.fuse-overloaded.carried": (si, o) => carried(o, fuseBy(si, o, false).name),
    "harness.fuse-overloaded.rating": (si, o) => fuseBy(si, o, false).rating,
    "harness.fuse-near-rating.carried": (si, o) => carried(o, fuseBy(si, o, true).name),
    "harness.fuse-near-rating.rating": (si, o) => fuseBy(si, o, true).rating,
    "harness.fuse-above-wire.rating": (si) => unguarded(si).fuse.rating,
    "harness.fuse-above-wire.longCurrent": (si) => unguarded(si).fuse.rating * 1.35,
    "harness.fuse-above-wire.largestFuse": (si) => fuseFor(unguarded(si).wire),
    "harness.hot-connector.carried": (si, o) => carried(o, contactBy(si, o).name),
    "harness.hot-connector.rating": (si, o) => contactBy(si, o).rating,
    "harness.warm-connector.heat": (si, o) => {
      const cool = [...si.contacts, ...si.switches].filter((c: Any) => c.rating === null || carried(o, c.name) <= c.rating)
      return Math.max(...cool.map((c: Any) => (carried(o, c.name) ? c.resistance * carried(o, c.name) ** 2 : 0)))
    },
    "harness.thin-wire.carried": (si, o) => carried(o, thinnest(si, o).name),
    "harness.thin-wire.bundled": (si, o) => cmilCurrent(thinnest(si, o)),
    "harness.wire-overloaded.carried": (si, o) => carried(o, hottest(si, o).name),
    "harness.wire-overloaded.ratedInAir": (si, o) => ratedInAir(hottest(si, o)),
    "harness.wire-overloaded.settles": (si, o) => settles(hottest(si, o), inStillAir, carried(o, hottest(si, o).name)),
    "harness.wire-burns.carried": (si, o) => carried(o, hottest(si, o).name),
    "harness.wire-burns.ratedInAir": (si, o) => ratedInAir(hottest(si, o)),
    "harness.source-fed-back.fedBack": (_, o) => Math.max(...o.supplies.map((s: Any) => -s.current)),
    "harness.reversed-load.seen": (_, o) =>
      Math.min(...o.loads.filter((l: Any) => l.type !== "resistance" && l.fed).map((l: Any) => l.voltage)),
    "harness.touch-voltage.highest": (_, o) => Math.max(...voltsOf(o)) - Math.min(...voltsOf(o)),
    "harness.no-resistance.shortBy": () => 0.001,
    "harness.loads-in-series.shortBy": (si) => seriesShort(si),
    "harness.no-voltage.shortBy": (si) => seen(si).volts,
    "harness.power-beyond-source.shortBy": (si) => si.powerLoads[0].power - available(si),
    "harness.power-beyond-source.at.power": (si) => si.powerLoads.reduce((s: number, l: Any) => s + l.power, 0),
    "harness.power-beyond-source.at.available": available,
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
    (si.track === null
      ? perMetre(si, si.temperature)
      : si.track *
        (perMetre(si.awg === null && si.area === null ? { ...si, awg: 20 } : si, si.temperature) /
          perMetre(si.awg === null && si.area === null ? { ...si, awg: 20 } : si, 20)))
  const lights = Array.from({ length: si.sections ?? 0 }, (_, k) => ((k + 1) * si.length) / si.sections)
  // a light at distance s from the feed costs I·r·s up to its own place; the far end feels them all
  const fall = (side: number, length: number) =>
    si.sections === null
      ? (r * (si.current / si.length) * length ** 2) / 2
      : lights
          .map((x) => (x - feed.position) * side)
          .filter((s) => s > 0)
          .reduce((v, s) => v + (r * s * si.current) / si.sections, 0)
  const [left, right] = [fall(-1, feed.position), fall(1, si.length - feed.position)]
  const volts = feed.voltage - feed.resistance * si.current - Math.max(left, right)
  const ends = si.sections === null ? [0, si.length] : [lights[0] as number, si.length]
  return { volts, position: right >= left ? (ends[1] as number) : (ends[0] as number) }
}
const ledShort = (si: Any) => -ledLowest(si).volts
