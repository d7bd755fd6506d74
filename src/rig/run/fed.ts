// What a motion's feed makes of an effort, tabulated once: the supply is then asked no more on a ride.
import { type Piecewise, piecewise } from "../../numeric/index.js"
import { atEffort, type Ride } from "./ride.js"

/** Rate, current and voltage of one drive over the effort that it gives, in this order. */
const parts = ["rate", "current", "voltage"] as const

/** Last coefficients that are let go. */
const LET_GO = 1e-13
/** Efforts that differ by less than this share of the largest, or are all zero to this, are as good as one. */
const ALIKE = 1e-9
const ZERO = 1e-100

/** The table of a ride over every effort that its motion asks for; null where the feed gives out on one of them, or they are as good as one. */
export function fedTable(one: Ride): Piecewise | null {
  const { curve } = one
  if (!curve?.table) return null
  const { minEffort, maxEffort } = curve
  if (!(maxEffort - minEffort > ALIKE * Math.max(Math.abs(minEffort), Math.abs(maxEffort), ZERO))) return null
  const fits = piecewise(
    (effort, out) => {
      const { rate, current, voltage, trouble, form } = atFormless(one, effort)
      if (trouble !== "none") return -1
      out[0] = rate
      out[1] = current
      out[2] = voltage
      return form
    },
    minEffort,
    maxEffort,
    // a drive that is helped has another efficiency than one that is loaded
    { nodes: NODES, relative: parts.map(() => LET_GO), floor: parts.map(() => 0), splits: [0], most: 600 },
  )
  return fits.failed === null && fits.rest <= 1 ? fits : null
}

const NODES = 16

/** The state of a ride at an effort, whatever form its mechanisms have. */
function atFormless(one: Ride, effort: number) {
  one.effort.form = 0
  return atEffort(one, effort)
}
