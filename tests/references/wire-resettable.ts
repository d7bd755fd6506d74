import { holdTables, resettableFuse } from "../../src/wire/index.js"
import type { Check } from "../helpers/references.js"

type Numbers = Readonly<Record<string, number>>
type Lists = Readonly<Record<string, readonly number[]>>
const part = { tripTime: 5, minResistance: 0.01, maxResistance: 0.05, maxVoltage: 30, sourceVoltage: 12, awg: 10 } as const
const solved = (more: object) => resettableFuse({ ...part, holdCurrent: 1, current: 0.01, ...more } as never)
const at = (celsius: number) => ({ minDeviceTemperature: celsius, maxDeviceTemperature: celsius })
const curve = (points: readonly (readonly [number, number])[]) => ({
  holdCurve: points.map(([temperature, share]) => ({ temperature, share })),
})

/** Trip and test current of a radial part where only its hold current is given: twice and five times. */
const radial: Check = (inputs) => {
  const { hold_A, hold_current_A } = inputs as Numbers
  const holdCurrent = hold_A ?? hold_current_A
  const trip = solved({ holdCurrent, ...at(23) }).tripLimit
  // the fault that trips within the printed time is the test current
  const within = (current: number) => (solved({ holdCurrent, ...at(23), faultCurrent: current }).tripDuration ?? 1e9) <= part.tripTime
  let [low, high] = [trip, 100 * trip]
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2
    if (within(mid)) high = mid
    else low = mid
  }
  return hold_A === undefined ? { trip_current_A: trip, test_current_A: high } : { trip_A: trip, test_A: high }
}
/** Hold currents at 40, 50 and 60 °C by the factors quoted. */
const quoted: Check = (inputs) => {
  const { hold_23degC_A: holdCurrent, factor_40degC, factor_50degC, factor_60degC } = inputs as Numbers
  const own = curve([
    [23, 1],
    [40, factor_40degC as number],
    [50, factor_50degC as number],
    [60, factor_60degC as number],
  ])
  const [a, b, c] = [40, 50, 60].map((celsius) => solved({ holdCurrent, ...own, ...at(celsius) }).holdLimit)
  return { hold_40degC_A: a, hold_50degC_A: b, hold_60degC_A: c }
}

/** Checks by row id. */
export const resettable: Record<string, Check> = {
  ...Object.fromEntries(["010", "025", "050", "075", "160", "250", "500", "900"].map((size) => [`ptc-mfr${size}`, radial] as const)),
  "fuse-ptc-mfr090": radial,
  "ptc-rxef005": radial,
  "ptc-rxef010": radial,
  "ptc-rxef017": radial,
  "ptc-mfr500-derating": quoted,
  "ptc-mfr600-derating": quoted,
  "ptc-mfr700-derating": quoted,
  "ptc-mfr800-derating": quoted,
  "ptc-mfrg500-derating": () =>
    Object.fromEntries(holdTables["radial-high-current"].slice(1).map(([celsius, share]) => [`fraction_${celsius}degC`, share])),
  "ptc-0zcj-derating-rest": () => ({ percent: holdTables.chip.map(([, share]) => 100 * share) }),
  "ptc-0zcj-required-rating": (inputs) => {
    const { current_A: current, percent_60degC } = inputs as Numbers
    const own = curve([
      [23, 1],
      [60, (percent_60degC as number) / 100],
    ])
    return { required_hold_23degC_A: solved({ current, ...own, ...at(60) }).requiredHoldCurrent }
  },
  "ptc-bbrf550-derating": () => ({ hold_A: holdTables["radial-99V"].map(([, share]) => 0.55 * share) }),
  "ptc-bbrf550-line": () => {
    // the line, against its own current at 23 °C
    const own = curve([-40, 85].map((celsius) => [celsius, (0.55 - 0.005 * (celsius - 20)) / 0.535] as const))
    const hold = (celsius: number) => solved({ holdCurrent: 0.535, ...own, ...at(celsius) }).holdLimit
    return { hold_minus40_A: hold(-40), hold_0_A: hold(0), hold_40_A: hold(40), hold_60_A: hold(60), hold_85_A: hold(85) }
  },
  "ptc-0805-trip-over-hold": (inputs) => {
    const { hold_A, r1max_ohm } = inputs as unknown as Lists
    const drop = (k: number) => solved({ holdCurrent: hold_A?.[k], current: hold_A?.[k], maxResistance: r1max_ohm?.[k] }).drop.high
    return { drop_V: [0, 1, 2].map(drop) }
  },
  "ptc-against-fuse-limits": () => ({
    ptc_interrupt_A: [39.9, 40, 40.1].filter((faultCurrent) => solved({ faultCurrent }).withinRating).at(-1),
  }),
}

const notKept = "a limit of the kind, not of a part; the part's own sheet is an input"

/** Why single values of these rows are left out. */
export const resettableWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "ptc-0805-trip-over-hold": { ratio: "a quotient of the inputs" },
  "ptc-against-fuse-limits": {
    ptc_strap_interrupt_A: notKept,
    ptc_voltage_max_V: notKept,
    ptc_hold_max_A: notKept,
    resistance_ratio: notKept,
    fuse_interrupt_max_A: "of one-time fuses",
  },
}
