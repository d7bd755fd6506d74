// A day on one charge: will the lantern moth's wings still rise at the night parade? (all names, parts and figures invented)
// A pack of three times two 18650 cells feeds two wing actuators and the lantern lights, from two in the afternoon.
import { airTravel, cellPack, chargeTime, genericCells, packUnderLoad, parallelSharing, runtime, sizePack } from "alula/pack"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const wattHours = (joules) => `${(joules / 3600).toFixed(1)} Wh`
const clock = (seconds) => {
  const minutes = Math.round(seconds / 60)
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`
}
const warn = (result) => {
  for (const { severity, message } of result.cautions) if (severity === "warning") console.log(`  ! ${message}`)
}

const cell = genericCells["18650-standard"]
const wiring = {
  series: 3,
  parallel: 2,
  chemistry: cell.chemistry,
  capacity: cell.capacity,
  resistance: cell.resistance,
  linkResistance: "30 mohm",
}

heading("1. What the pack amounts to")
const pack = cellPack({ ...wiring, maxCurrent: cell.maxCurrent, cellMass: cell.cellMass, extraMass: "120 g" })
console.log(
  `${pack.cells} cells, ${pack.cutOffVoltage.toFixed(1)} to ${pack.fullVoltage.toFixed(1)} V, ${wattHours(pack.energy)}, ${pack.mass.toFixed(2)} kg, at most ${pack.maxCurrent.toFixed(1)} A`,
)
warn(pack)

heading("2. One raise of the wings: 45 W for 20 s")
for (const stateOfCharge of [1, 0.5, 0.15]) {
  const raise = packUnderLoad({ ...wiring, stateOfCharge, power: "45 W", maxCurrent: cell.maxCurrent })
  console.log(
    `${String(100 * stateOfCharge).padStart(3)} % left: ${raise.voltage.toFixed(2)} V at ${raise.current.toFixed(2)} A, sags ${raise.sag.toFixed(2)} V, ${(100 * raise.cellLoading).toFixed(0)} % of a cell's limit`,
  )
}

heading("3. The day: a raise and a lowering every five minutes, lights all the time")
const pattern = [
  { name: "raise the wings", duration: "20 s", power: "51 W" },
  { name: "wings up, lights", duration: "1 min", power: "6 W" },
  { name: "lower the wings", duration: "15 s", power: "26 W" },
  { name: "wings folded, lights", duration: "205 s", power: "6 W" },
]
const day = runtime({ ...wiring, pattern })
console.log(
  `lasts ${clock(day.runtime)}, ${day.rounds} raises; ends by ${day.ends} at ${day.endVoltage.toFixed(2)} V under ${day.endCurrent.toFixed(1)} A`,
)
console.log(`(nominal watt-hours over mean power would have promised ${clock(day.simpleEstimate)})`)
for (const load of day.loads) console.log(`  ${load.name.padEnd(22)} ${wattHours(load.energy).padStart(8)}`)
console.log(`  ${"heat in the pack".padEnd(22)} ${wattHours(day.heat).padStart(8)}`)

heading("4. The same on a frosty night")
for (const temperature of ["20 degC", "5 degC", "-5 degC"]) {
  const cold = runtime.attempt({ ...wiring, pattern, temperature })
  console.log(`${temperature.padStart(7)}: ${cold.ok ? clock(cold.value.runtime) : cold.error.message}`)
}

heading("5. A pack for the whole parade of seven hours, to go by air in the cabin")
const found = sizePack.attempt({
  cells: Object.entries(genericCells).map(([name, one]) => ({ name, ...one })),
  minVoltage: "9 V",
  maxVoltage: "13 V",
  current: "6 A",
  energy: (day.energy / day.runtime) * 7 * 3600,
  transportLimit: "100 Wh",
})
if (found.ok) {
  const { best, series, parallel, choices, losers } = found.value
  console.log(
    `${best}: ${series} in series, ${parallel} in parallel, ${choices[0].mass.toFixed(2)} kg of cells, ${wattHours(choices[0].energy)}`,
  )
  for (const other of choices.slice(1, 4)) console.log(`  not ${other.series}S${other.parallel}P of ${other.name}: ${other.lostBy}`)
  for (const other of losers.slice(0, 4)) console.log(`  not ${other.name}: ${other.reason}`)
} else console.log(found.error.message)
const flight = airTravel({ energy: pack.energy, carried: "spare" })
console.log(`Flying with the pack of part 1: ${flight.verdict}`)

heading("6. Overnight: charge, and what joining a full and a half-empty string would do")
const night = chargeTime({ ...wiring, chargeCurrent: "2 A" })
console.log(`at least ${clock(night.time)} at 2 A; by datasheets of such cells ${clock(night.likelyLeast)} to ${clock(night.likelyMost)}`)
const string = { resistance: "0.24 ohm", capacity: cell.capacity, maxChargeCurrent: cell.maxChargeCurrent }
const joined = parallelSharing({
  strings: [
    { openCircuitVoltage: "12.5 V", ...string },
    { openCircuitVoltage: "11.1 V", ...string },
  ],
  voltageSpan: "2.7 V",
})
console.log(`${joined.worstCharging.toFixed(1)} A would flow from string to string with nothing plugged in`)
warn(joined)
