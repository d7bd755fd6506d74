// Descriptions of a gas spring, and the faults between them.
import { bandField, type Fields, type Issue, inconsistent, type OutFields } from "../../solver/index.js"
import { rodVolume } from "./kernel.js"
import type { GasSpring, GasSpringInput, Si } from "./types.js"

export const gasSpringFields = (): Fields<GasSpringInput> => ({
  force: { kind: "force", symbol: "F_1", label: "force extended", min: 1, max: 1e5, typical: [50, 400] },
  stroke: { kind: "length", symbol: "s_1", label: "stroke", min: "1 mm", max: 5, typical: ["80 mm", "200 mm"] },
  compression: { kind: "length", symbol: "s", label: "compression", min: 0, max: 5, typical: ["5 mm", "80 mm"] },
  progression: { kind: "ratio", symbol: "p_1", label: "progression", min: 1, max: 3, typical: [1.1, 1.6], default: null },
  rodDiameter: {
    kind: "length",
    symbol: "d",
    label: "diameter of the rod",
    min: "0.5 mm",
    max: "200 mm",
    typical: ["4 mm", "10 mm"],
    default: null,
  },
  gasVolume: {
    kind: "volume",
    symbol: "V_0",
    label: "room of the gas, extended",
    min: "1 mm3",
    max: "100 L",
    typical: ["50 cm3", "90 cm3"],
    default: null,
  },
  frictionForce: { kind: "force", symbol: "F_r", label: "friction", min: 0, max: 1e4, typical: [0, 30], default: 0 },
  materialTemperature: {
    kind: "temperature",
    symbol: "T",
    label: "temperature of the gas",
    min: -60,
    max: 150,
    typical: [-10, 40],
    default: 20,
  },
  extensionSpeed: {
    kind: "group",
    label: "extension speed",
    fields: {
      low: { kind: "speed", symbol: "v_l", label: "slowest", min: "1 mm/s", max: 10, typical: [0.1, 0.2] },
      high: { kind: "speed", symbol: "v_h", label: "fastest", min: "1 mm/s", max: 10, typical: [0.3, 0.6] },
    },
    default: null,
  },
})

export const gasSpringEither = [{ exactlyOne: ["progression", ["rodDiameter", "gasVolume"]] }] as const

export const gasSpringOutput = (): OutFields<GasSpring> => ({
  transmits: { kind: "text", label: "transmits" },
  progression: { kind: "ratio", symbol: "p", label: "progression" },
  extendingForce: { kind: "force", symbol: "F_e", label: "force extending" },
  compressingForce: { kind: "force", symbol: "F_c", label: "force compressing" },
  forceExtended: { kind: "force", symbol: "F_1T", label: "force with the rod out" },
  forceCompressed: { kind: "force", symbol: "F_2T", label: "force to push the rod all in" },
  fastForce: { kind: "force", symbol: "F_f", label: "force compressing, at once" },
  stiffness: { kind: "forcePerLength", symbol: "k", label: "stiffness" },
  forcePerTemperature: { kind: "perTemperature", symbol: "f_T", label: "force gained by warmth" },
  storedEnergy: { kind: "energy", symbol: "W", label: "energy stored by the compression" },
  compressingWork: { kind: "energy", symbol: "W_c", label: "work to compress it" },
  returnedWork: { kind: "energy", symbol: "W_e", label: "work given back" },
  frictionWork: { kind: "energy", symbol: "W_f", label: "work lost, in and out" },
  extensionDuration: bandField("time", "time to extend over the stroke"),
})

export function gasSpringFaults(si: Si): Issue[] {
  const faults: Issue[] = []
  if (si.compression > si.stroke)
    faults.push(
      inconsistent(["compression"], "{compression length}", "at most the stroke, {stroke length}", {
        compression: si.compression,
        stroke: si.stroke,
      }),
    )
  if (si.progression === null && si.rodDiameter !== null && si.gasVolume !== null) {
    const room = 1.5 * rodVolume(si)
    if (!(si.gasVolume >= room))
      faults.push(
        inconsistent(
          ["gasVolume"],
          "{gasVolume volume cm³}",
          "at least {room volume cm³}: half as much again as the rod takes, which is a progression of 3",
          { gasVolume: si.gasVolume, room },
        ),
      )
  }
  if (si.extensionSpeed !== null && si.extensionSpeed.low > si.extensionSpeed.high)
    faults.push(
      inconsistent(["extensionSpeed", "low"], "{extensionSpeed.low speed m/s}", "at most the fastest, {extensionSpeed.high speed m/s}", {
        "extensionSpeed.low": si.extensionSpeed.low,
        "extensionSpeed.high": si.extensionSpeed.high,
      }),
    )
  return faults
}
