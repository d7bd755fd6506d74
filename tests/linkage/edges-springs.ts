import { bungee, gasSpring } from "../../src/linkage/index.js"
import type { Edges } from "../helpers/edges.js"

const byRoom = { progression: null, rodDiameter: "8 mm", stroke: "100 mm" }
const readings = (...rows: [string, string][]) => ({ readings: rows.map(([elongation, force]) => ({ elongation, force })) })

export const edges: Edges = {
  cautions: [
    { solver: gasSpring, code: "stored-energy", severity: "warning", shown: {}, notShown: null },
    { solver: gasSpring, code: "under-pressure", severity: "warning", shown: {}, notShown: null },
    { solver: gasSpring, code: "force-varies", severity: "note", shown: {}, notShown: null },
    {
      solver: gasSpring,
      code: "outside-range",
      severity: "caution",
      shown: { materialTemperature: -30.1 },
      notShown: { materialTemperature: -29.9 },
    },
    {
      solver: gasSpring,
      code: "outside-range",
      severity: "caution",
      shown: { materialTemperature: 80.1 },
      notShown: { materialTemperature: 79.9 },
    },
    { solver: gasSpring, code: "unusual-progression", severity: "note", shown: { progression: 1.195 }, notShown: { progression: 1.205 } },
    { solver: gasSpring, code: "unusual-progression", severity: "note", shown: { progression: 1.405 }, notShown: { progression: 1.395 } },
    // gas and friction together are F₁ + F_r: cold enough, their share of T/293 falls below the friction
    {
      solver: gasSpring,
      code: "sticks",
      severity: "warning",
      shown: { force: 1, compression: 0, frictionForce: 19 },
      notShown: { force: 1, compression: 0, frictionForce: 18.4 },
      apart: "far from the example: friction has to be many times the force",
    },
    { solver: bungee, code: "stored-energy", severity: "warning", shown: {}, notShown: null },
    { solver: bungee, code: "ages", severity: "note", shown: {}, notShown: null },
    { solver: bungee, code: "loss-unknown", severity: "note", shown: { lossShare: null }, notShown: { lossShare: 0 } },
    { solver: bungee, code: "over-stretched", severity: "warning", shown: { length: "801 mm" }, notShown: { length: "799 mm" } },
    // a higher limit of the maker's does not move what the trade allows, a lower one does
    {
      solver: bungee,
      code: "over-stretched",
      severity: "warning",
      shown: { length: "801 mm", elongationLimit: 3 },
      notShown: { length: "799 mm", elongationLimit: 3 },
    },
    {
      solver: bungee,
      code: "over-stretched",
      severity: "warning",
      shown: { elongationLimit: 0.4985 },
      notShown: { elongationLimit: 0.5015 },
    },
  ],
  refusals: [{ solver: bungee, code: "beyond-curve", refused: { length: "841 mm" }, answered: { length: "839 mm" } }],
  faults: [
    { solver: gasSpring, path: "compression", faulty: { compression: "100.1 mm" }, sound: { compression: "99.9 mm" } },
    // the rod takes 5.0265 cm³
    { solver: gasSpring, path: "gasVolume", faulty: { ...byRoom, gasVolume: "7.53 cm3" }, sound: { ...byRoom, gasVolume: "7.55 cm3" } },
    {
      solver: gasSpring,
      path: "extensionSpeed.low",
      faulty: { extensionSpeed: { low: 0.401, high: 0.4 } },
      sound: { extensionSpeed: { low: 0.399, high: 0.4 } },
    },
    { solver: gasSpring, path: "progression", faulty: { progression: undefined }, sound: {} },
    {
      solver: bungee,
      path: "readings.1.elongation",
      faulty: readings(["60 %", "22 N"], ["60 %", "42 N"]),
      sound: readings(["60 %", "22 N"], ["60.3 %", "42 N"]),
    },
    {
      solver: bungee,
      path: "readings.1.force",
      faulty: readings(["20 %", "42 N"], ["60 %", "41.9 N"]),
      sound: readings(["20 %", "42 N"], ["60 %", "42.1 N"]),
    },
  ],
  numbers: {
    "gasSpring.outside-range.coldest": () => -30,
    "gasSpring.outside-range.hottest": () => 80,
    "gasSpring.unusual-progression.low": () => 1.2,
    "gasSpring.unusual-progression.high": () => 1.4,
    "gasSpring.gasVolume.room": (si) => 1.5 * Math.PI * (si.rodDiameter / 2) ** 2 * si.stroke,
    "bungee.over-stretched.limit": (si) => 1 - Math.max(0, 1 - si.elongationLimit),
    "bungee.beyond-curve.shortBy": (si) => (si.length - si.slackLength) / si.slackLength - si.readings.at(-1).elongation,
    "bungee.beyond-curve.at.elongation": (si) => (si.length - si.slackLength) / si.slackLength,
    "bungee.beyond-curve.at.last": (si) => Math.max(...si.readings.map((r: { elongation: number }) => r.elongation)),
    "bungee.readings.1.elongation.elongation": (si) => si.readings[1].elongation,
    "bungee.readings.1.elongation.before": (si) => si.readings[0].elongation,
    "bungee.readings.1.force.force": (si) => si.readings[1].force,
    "bungee.readings.1.force.before": (si) => si.readings[0].force,
  },
}
