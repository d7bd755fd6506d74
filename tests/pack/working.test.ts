import {
  airTravel,
  cellPack,
  chargeTime,
  packUnderLoad,
  parallelSharing,
  peukert,
  powerBank,
  runtime,
  sizePack,
} from "../../src/pack/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const pack = { series: 4, parallel: 3, capacity: 12000, resistance: 0.04, linkResistance: 0.02 }
const named = { name: "A", capacity: 9360, resistance: 0.05, cellMass: 0.048, maxCurrent: 7.8 }
const needs = { minVoltage: 9, maxVoltage: 15, current: 8, energy: 144000 }

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  [
    "cold LFP",
    any(cellPack),
    { ...pack, chemistry: "lfp", temperature: -10, maxCurrent: 9.9, maxChargeCurrent: 3.3, cellMass: 0.09, cellPrice: 5 },
  ],
  [
    "hot cobalt",
    any(cellPack),
    { ...pack, chemistry: "lco", temperature: 50, maxCurrent: 9.9, cutOffVoltage: 3.1, extraMass: 0.2, cellMass: 0.05 },
  ],
  ["nickel", any(cellPack), { ...pack, chemistry: "nimh", temperature: 40, maxCurrent: 5, maxChargeCurrent: 4 }],
  ["lead, one weak group", any(cellPack), { ...pack, series: 2, chemistry: "lead", temperature: 0, groupCapacities: [36000, 30000] }],
  ["alkaline", any(cellPack), { ...pack, chemistry: "alkaline", temperature: 5 }],
  ["own voltages", any(cellPack), { ...pack, nominalVoltage: 3.3, fullVoltage: 4.1 }],
  [
    "nickel under a current",
    any(packUnderLoad),
    { ...pack, chemistry: "nimh", current: 4, temperature: 5, maxCurrent: 8, stateOfCharge: 0.3 },
  ],
  ["lead under a resistor", any(packUnderLoad), { ...pack, chemistry: "lead", loadResistance: 3, temperature: 40 }],
  ["cobalt under a power", any(packUnderLoad), { ...pack, chemistry: "lco", power: 60, stateOfCharge: 0.9, cutOffVoltage: 3.2 }],
  ["measured voltage", any(packUnderLoad), { ...pack, openCircuitVoltage: 15.1, power: 30 }],
  ["no resistance", any(packUnderLoad), { ...pack, resistance: 0, linkResistance: 0, current: 2, maxCurrent: 5, temperature: 50 }],
  ["lead charge", any(chargeTime), { ...pack, chemistry: "lead", chargeCurrent: 3, startCharge: 0.2 }],
  ["nickel charge", any(chargeTime), { ...pack, chemistry: "nimh", chargeCurrent: 2, startCharge: 0.4 }],
  ["LFP charge to less", any(chargeTime), { ...pack, chemistry: "lfp", chargeCurrent: 4, chargeVoltage: 3.5, endCurrent: 0.3 }],
  ["cold cobalt charge", any(chargeTime), { ...pack, chemistry: "lco", chargeCurrent: 1, temperature: 3, startCharge: 0.5 }],
  ["charge over the limit", any(chargeTime), { ...pack, chargeCurrent: 30 }],
  [
    "three strings, no load",
    any(parallelSharing),
    { current: 0, strings: [11.8, 12.3, 12.1].map((u, i) => ({ openCircuitVoltage: u, resistance: 0.05 * (i + 1), capacity: 9000 })) },
  ],
  [
    "strings on a resistor",
    any(parallelSharing),
    {
      current: null,
      loadResistance: 2,
      strings: [12, 12.5].map((u) => ({ openCircuitVoltage: u, resistance: 0.1, capacity: 7200 })),
      after: 3,
    },
  ],
  ["exponent given", any(peukert), { capacity: 36000, ratedTime: 36000, current: 4, exponent: 1.2 }],
  ["exponent from two ratings", any(peukert), { capacity: 36000, current: 10, secondCapacity: 25000, secondTime: 3600 }],
  ["straight from the port, current", any(powerBank), { capacity: 36000, current: 1.5, portVoltage: 9 }],
  ["step-up, current", any(powerBank), { capacity: 36000, current: 0.4, loadVoltage: 12, stepUpEfficiency: 0.8 }],
  ["step-up, power", any(powerBank), { capacity: 36000, power: 6, loadVoltage: 12, bankEfficiency: 0.8, cellVoltage: 3.6 }],
  ["idle bank", any(powerBank), { capacity: 36000, current: 0.02 }],
  [
    "cold rounds",
    any(runtime),
    {
      ...pack,
      temperature: 2,
      pattern: [
        { current: 3, duration: 60 },
        { power: 10, duration: 120 },
      ],
    },
  ],
  [
    "lead on a resistor",
    any(runtime),
    { ...pack, chemistry: "lead", pattern: [{ loadResistance: 4, duration: 600 }], startCharge: 0.8, maxCurrent: 10 },
  ],
  ["nickel", any(runtime), { ...pack, chemistry: "nimh", pattern: [{ power: 8 }], cutOffVoltage: 1.05, temperature: -5 }],
  [
    "cold, by price",
    any(sizePack),
    {
      ...needs,
      cells: [
        { ...named, cellPrice: 3 },
        { ...named, name: "B", capacity: 14400, cellPrice: 4 },
      ],
      temperature: 2,
      rankBy: "cost",
    },
  ],
  [
    "LFP against sag",
    any(sizePack),
    { ...needs, current: 30, energy: 36000, cells: [{ ...named, chemistry: "lfp", maxCurrent: 30 }], lowCharge: 0.1 },
  ],
  [
    "nickel, all of it used",
    any(sizePack),
    { ...needs, cells: [{ ...named, chemistry: "nimh", cutOffVoltage: 1.1 }], usableShare: 1, temperature: 40 },
  ],
  [
    "lead, by number",
    any(sizePack),
    {
      ...needs,
      current: 20,
      cells: [{ ...named, chemistry: "lead", maxCurrent: 30, capacity: 18000, resistance: 0.005 }],
      temperature: 10,
      rankBy: "cells",
    },
  ],
  ["lithium metal", any(airTravel), { kind: "lithium-metal", lithiumMass: 0.001, count: 4 }],
]

workingTests(cases)
