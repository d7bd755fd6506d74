import type { Current, Length, Mass, Power, Resistance, Time, Voltage } from "../../src/quantity/index.js"
import { inconsistent, type Solver, solver } from "../../src/solver/index.js"

/** A light told apart by its type. */
export type Light =
  | { type: "bulb"; power: Power }
  | { type: "strip"; length: Length; perMetre: Power; cutAt?: Length | null; cutEvery?: Length | null }
  | { type: "flame"; wicks: number }

export interface LampInput {
  /** What is lit by. */
  light: Light
  /** Further lights. */
  others?: readonly Light[]
  /** Its hook. */
  hook?: { type: "ring"; diameter: Length } | { type: "strap"; width: Length } | null
  current?: Current | null
  power?: Power | null
  resistance?: Resistance | null
  /** An effort, or two that make one. */
  duty?: number | null
  on?: Time | null
  period?: Time | null
  front?: Length | null
  back?: Length | null
  oil?: Mass | null
  gas?: Mass | null
  low?: Voltage | null
  high?: Voltage | null
  /** Says something only beside a low or a high voltage, or front and back. */
  hysteresis?: number | null
  /** A wall that carries it. */
  wall: { name: string; thickness: Length; wood?: Mass | null; stone?: Mass | null }
}

const lights = {
  bulb: { label: "a bulb", fields: { power: { kind: "power", symbol: "P_b", label: "power", min: 0, max: 100 } } },
  strip: {
    label: "a strip",
    fields: {
      length: { kind: "length", symbol: "L", label: "length", above: 0, max: 10 },
      perMetre: { kind: "power", symbol: "P_m", label: "power of a metre", min: 0, max: 50 },
      cutAt: { kind: "length", symbol: "c", label: "cut at", min: 0, max: 10, default: null },
      cutEvery: { kind: "length", symbol: "d", label: "cut every", min: 0, max: 1, default: null },
    },
    either: [{ atMostOne: ["cutAt", "cutEvery"] }],
  },
  flame: { label: "a flame", fields: { wicks: { kind: "number", symbol: "w", label: "wicks", whole: true, min: 1, max: 9 } } },
} as const

/** A solver made for these tests, with every rule between fields and a variant at every place one can stand. */
export const lamp: Solver<LampInput, { readonly lit: boolean }> = solver<LampInput, { readonly lit: boolean }>(
  "lamp",
  "Whether a lamp is lit",
  () => ({ lit: true }),
  () => ({
    input: {
      light: { kind: "variant", label: "light", of: lights },
      others: { kind: "list", label: "others", min: 0, max: 3, of: { kind: "variant", label: "light", of: lights }, default: [] },
      hook: {
        kind: "variant",
        label: "hook",
        of: {
          ring: { label: "a ring", fields: { diameter: { kind: "length", symbol: "D", label: "diameter", above: 0, max: 1 } } },
          strap: { label: "a strap", fields: { width: { kind: "length", symbol: "b", label: "width", above: 0, max: 1 } } },
        },
        default: null,
      },
      current: { kind: "current", symbol: "I", label: "current", min: 0, max: 10, default: null },
      power: { kind: "power", symbol: "P", label: "power", min: 0, max: 100, default: null },
      resistance: { kind: "resistance", symbol: "R", label: "resistance", above: 0, max: 100, default: null },
      duty: { kind: "number", symbol: "k", label: "duty", min: 0, max: 1, default: null },
      on: { kind: "time", symbol: "t_1", label: "time on", min: 0, max: 10, default: null },
      period: { kind: "time", symbol: "t_2", label: "period", above: 0, max: 20, default: null },
      front: { kind: "length", symbol: "f", label: "front", min: 0, max: 3, default: null },
      back: { kind: "length", symbol: "r", label: "back", min: 0, max: 3, default: null },
      oil: { kind: "mass", symbol: "m_o", label: "oil", min: 0, max: 3, default: null },
      gas: { kind: "mass", symbol: "m_g", label: "gas", min: 0, max: 3, default: null },
      low: { kind: "voltage", symbol: "U_1", label: "low", min: 0, max: 30, default: null },
      high: { kind: "voltage", symbol: "U_2", label: "high", min: 0, max: 30, default: null },
      hysteresis: { kind: "number", symbol: "h", label: "hysteresis", min: 0, max: 1, default: null },
      wall: {
        kind: "group",
        label: "wall",
        fields: {
          name: { kind: "text", label: "name", min: 1, max: 8 },
          thickness: { kind: "length", symbol: "w_t", label: "thickness", above: 0, max: 1 },
          wood: { kind: "mass", symbol: "m_w", label: "wood", min: 0, max: 99, default: null },
          stone: { kind: "mass", symbol: "m_s", label: "stone", min: 0, max: 99, default: null },
        },
        either: [{ exactlyOne: ["wood", "stone"] }],
      },
    },
    either: [
      { exactlyOne: ["current", "power", "resistance"] },
      { exactlyOne: ["duty", ["on", "period"]] },
      { together: ["front", "back"] },
      { atMostOne: ["oil", "gas"] },
      { atLeastOne: ["low", "high"] },
      { given: "hysteresis", needs: [["low", "high"], "oil"] },
    ],
    output: { lit: { kind: "flag", label: "lit" } },
    example: {
      light: { type: "strip", length: "2 m", perMetre: "10 W" },
      current: "2 A",
      duty: 0.5,
      low: "3 V",
      wall: { name: "gate", thickness: "30 mm", wood: "3 kg" },
    },
    formulae: [],
    sources: [{ title: "made for a test", verified: "practice" }],
    check: ({ on, period, light }) => [
      ...(on !== null && period !== null && on > period
        ? [inconsistent(["on"], "{on time}", "at most {period time}", { on, period })]
        : []),
      ...(light.type === "strip" && light.cutAt !== null && light.cutAt > light.length
        ? [inconsistent(["light", "cutAt"], "a cut beyond the end", "a cut on the strip")]
        : []),
    ],
  }),
)
