import { expect } from "vitest"
import {
  type CellPack,
  cellPack,
  type PackUnderLoad,
  type ParallelSharing,
  packUnderLoad,
  parallelSharing,
  type Runtime,
  runtime,
} from "../../src/pack/index.js"
import { isNoSolution, type NoSolution, type Solver } from "../../src/solver/index.js"

/** Numbers of a row's inputs; a list reads as numbers too. */
export const at = (inputs: object, key: string): number => {
  const value = (inputs as Record<string, unknown>)[key]
  expect(typeof value, key).toBe("number")
  return value as number
}
export const list = (inputs: object, key: string): readonly number[] => {
  const value = (inputs as Record<string, unknown>)[key]
  expect(Array.isArray(value), key).toBe(true)
  return value as readonly number[]
}

/** Answer of a solver, or the refusal as a failure. */
export function answer<In, Out extends object>(solver: Solver<In, Out>, input: object): Out {
  const out: Out | NoSolution = solver.si(solver.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}

/** A pack from a row's cell: voltages in V, capacity in Ah. */
export function pack(series: number, parallel: number, cellNominalVoltage: number, ampereHours: number, more: object = {}): CellPack {
  return answer(cellPack, { series, parallel, cellNominalVoltage, cellCapacity: ampereHours * 3600, cellResistance: 0, ...more })
}

/** A source of known emf and resistance under a load. */
export function source(emf: number, cellResistance: number, load: object): PackUnderLoad {
  return answer(packUnderLoad, { series: 1, parallel: 1, cellCapacity: 3600, cellResistance, openCircuitVoltage: emf, ...load })
}

/** Strings of known emf and resistance in parallel. */
export function strings(emf: readonly number[], resistance: readonly number[], load: object): ParallelSharing {
  return answer(parallelSharing, {
    strings: emf.map((openCircuitVoltage, k) => ({ openCircuitVoltage, resistance: resistance[k], capacity: 3600 })),
    ...load,
  })
}

/** A curve point by point. */
export function curve(charges: readonly number[], voltages: readonly number[]) {
  return charges.map((stateOfCharge, i) => ({ stateOfCharge, voltage: voltages[i] as number }))
}

/** A source of one voltage: a curve that rises by a millionth, symmetrically. */
export const level = (voltage: number) => curve([0, 1], [voltage * (1 - 1e-6), voltage * (1 + 1e-6)])

/** A discharge of one cell (or of the pack named in `more`) under one load. */
export function run(ampereHours: number, cellResistance: number, load: object, more: object = {}): Runtime {
  return answer(runtime, {
    series: 1,
    parallel: 1,
    cellCapacity: ampereHours * 3600,
    cellResistance,
    cellCutOffVoltage: 0.001,
    pattern: [load],
    ...more,
  })
}
