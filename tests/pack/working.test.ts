import {
  airTravel,
  cellPack,
  chargeTime,
  packSize,
  packUnderLoad,
  parallelSharing,
  peukert,
  powerBank,
  runtime,
} from "../../src/pack/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const pack = { series: 4, parallel: 3, cellCapacity: 12000, cellResistance: 0.04, interconnectResistance: 0.02 }
const named = { name: "A", cellCapacity: 9360, cellResistance: 0.05, cellMass: 0.048, cellMaxCurrent: 7.8 }
const needs = { minVoltage: 9, maxVoltage: 15, peakCurrent: 8, energy: 144000 }

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  [
    "cold LFP",
    any(cellPack),
    { ...pack, chemistry: "lfp", cellTemperature: -10, cellMaxCurrent: 9.9, cellMaxChargeCurrent: 3.3, cellMass: 0.09, cellPrice: 5 },
  ],
  [
    "hot cobalt",
    any(cellPack),
    { ...pack, chemistry: "lco", cellTemperature: 50, cellMaxCurrent: 9.9, cellCutOffVoltage: 3.1, extraMass: 0.2, cellMass: 0.05 },
  ],
  ["nickel", any(cellPack), { ...pack, chemistry: "nimh", cellTemperature: 40, cellMaxCurrent: 5, cellMaxChargeCurrent: 4 }],
  ["lead, one weak group", any(cellPack), { ...pack, series: 2, chemistry: "lead", cellTemperature: 0, groupCapacities: [36000, 30000] }],
  ["alkaline", any(cellPack), { ...pack, chemistry: "alkaline", cellTemperature: 5 }],
  ["own voltages", any(cellPack), { ...pack, cellNominalVoltage: 3.3, cellFullVoltage: 4.1 }],
  [
    "nickel under a current",
    any(packUnderLoad),
    { ...pack, chemistry: "nimh", current: 4, cellTemperature: 5, cellMaxCurrent: 8, stateOfCharge: 0.3 },
  ],
  ["lead under a resistor", any(packUnderLoad), { ...pack, chemistry: "lead", loadResistance: 3, cellTemperature: 40 }],
  ["cobalt under a power", any(packUnderLoad), { ...pack, chemistry: "lco", power: 60, stateOfCharge: 0.9, cellCutOffVoltage: 3.2 }],
  ["measured voltage", any(packUnderLoad), { ...pack, openCircuitVoltage: 15.1, power: 30 }],
  [
    "no resistance",
    any(packUnderLoad),
    { ...pack, cellResistance: 0, interconnectResistance: 0, current: 2, cellMaxCurrent: 5, cellTemperature: 50 },
  ],
  ["lead charge", any(chargeTime), { ...pack, chemistry: "lead", chargeCurrent: 3, startStateOfCharge: 0.2 }],
  ["nickel charge", any(chargeTime), { ...pack, chemistry: "nimh", chargeCurrent: 2, startStateOfCharge: 0.4 }],
  ["LFP charge to less", any(chargeTime), { ...pack, chemistry: "lfp", chargeCurrent: 4, cellChargeVoltage: 3.5, terminationCurrent: 0.3 }],
  ["cold cobalt charge", any(chargeTime), { ...pack, chemistry: "lco", chargeCurrent: 1, cellTemperature: 3, startStateOfCharge: 0.5 }],
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
      laterTime: 3,
    },
  ],
  ["exponent given", any(peukert), { capacity: 36000, ratedDuration: 36000, current: 4, exponent: 1.2 }],
  ["exponent from two ratings", any(peukert), { capacity: 36000, current: 10, secondCapacity: 25000, secondDuration: 3600 }],
  ["straight from the port, current", any(powerBank), { ratedCapacity: 36000, current: 1.5, terminalVoltage: 9 }],
  ["step-up, current", any(powerBank), { ratedCapacity: 36000, current: 0.4, loadVoltage: 12, boostEfficiency: 0.8 }],
  ["step-up, power", any(powerBank), { ratedCapacity: 36000, power: 6, loadVoltage: 12, bankEfficiency: 0.8, cellNominalVoltage: 3.6 }],
  ["idle bank", any(powerBank), { ratedCapacity: 36000, current: 0.02 }],
  [
    "cold rounds",
    any(runtime),
    {
      ...pack,
      cellTemperature: 2,
      pattern: [
        { current: 3, duration: 60 },
        { power: 10, duration: 120 },
      ],
    },
  ],
  [
    "lead on a resistor",
    any(runtime),
    { ...pack, chemistry: "lead", pattern: [{ loadResistance: 4, duration: 600 }], startStateOfCharge: 0.8, cellMaxCurrent: 10 },
  ],
  ["nickel", any(runtime), { ...pack, chemistry: "nimh", pattern: [{ power: 8 }], cellCutOffVoltage: 1.05, cellTemperature: -5 }],
  [
    "cold, by price",
    any(packSize),
    {
      ...needs,
      cells: [
        { ...named, cellPrice: 3 },
        { ...named, name: "B", cellCapacity: 14400, cellPrice: 4 },
      ],
      cellTemperature: 2,
      rankBy: "price",
    },
  ],
  [
    "LFP against sag",
    any(packSize),
    { ...needs, peakCurrent: 30, energy: 36000, cells: [{ ...named, chemistry: "lfp", cellMaxCurrent: 30 }], minStateOfCharge: 0.1 },
  ],
  [
    "nickel, all of it used",
    any(packSize),
    { ...needs, cells: [{ ...named, chemistry: "nimh", cellCutOffVoltage: 1.1 }], usableShare: 1, cellTemperature: 40 },
  ],
  [
    "lead, by number",
    any(packSize),
    {
      ...needs,
      peakCurrent: 20,
      cells: [{ ...named, chemistry: "lead", cellMaxCurrent: 30, cellCapacity: 18000, cellResistance: 0.005 }],
      cellTemperature: 10,
      rankBy: "cells",
    },
  ],
  ["lithium metal", any(airTravel), { type: "lithium-metal", lithiumMass: 0.001, count: 4 }],
]

workingTests(cases)
