// A day on one charge: will the lantern moth's wings still rise at the night parade? (all names, parts and figures invented)
// A pack of three times two 18650 cells feeds two wing actuators and the lantern lights, from two in the afternoon.
import { airTravel, cellPack, chargeTime, genericCells, packSize, packUnderLoad, parallelSharing, runtime } from "alula/pack"

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
  cellCapacity: cell.cellCapacity,
  cellResistance: cell.cellResistance,
  interconnectResistance: "30 mohm",
}

heading("1. What the pack amounts to")
const pack = cellPack({ ...wiring, cellMaxCurrent: cell.cellMaxCurrent, cellMass: cell.cellMass, extraMass: "120 g" })
console.log(
  `${pack.cellCount} cells, ${pack.cutOffVoltage.toFixed(1)} to ${pack.fullVoltage.toFixed(1)} V, ${wattHours(pack.energy)}, ${pack.mass.toFixed(2)} kg, at most ${pack.maxCurrent.toFixed(1)} A`,
)
warn(pack)

heading("2. One raise of the wings: 45 W for 20 s")
for (const stateOfCharge of [1, 0.5, 0.15]) {
  const raise = packUnderLoad({ ...wiring, stateOfCharge, power: "45 W", cellMaxCurrent: cell.cellMaxCurrent })
  console.log(
    `${String(100 * stateOfCharge).padStart(3)} % left: ${raise.terminalVoltage.toFixed(2)} V at ${raise.current.toFixed(2)} A, sags ${raise.sag.toFixed(2)} V, ${(100 * raise.cellUtilisation).toFixed(0)} % of a cell's limit`,
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
  `lasts ${clock(day.runtime)}, ${day.rounds} raises; ends by ${day.endedBy} at ${day.endVoltage.toFixed(2)} V under ${day.endCurrent.toFixed(1)} A`,
)
console.log(`(nominal watt-hours over mean power would have promised ${clock(day.simpleRuntime)})`)
for (const load of day.pattern) console.log(`  ${load.name.padEnd(22)} ${wattHours(load.energy).padStart(8)}`)
console.log(`  ${"heat in the pack".padEnd(22)} ${wattHours(day.heat).padStart(8)}`)

heading("4. The same on a frosty night")
for (const cellTemperature of ["20 degC", "5 degC", "-5 degC"]) {
  const cold = runtime.attempt({ ...wiring, pattern, cellTemperature })
  console.log(`${cellTemperature.padStart(7)}: ${cold.ok ? clock(cold.value.runtime) : cold.error.message}`)
}

heading("5. A pack for the whole parade of seven hours, to go by air in the cabin")
const found = packSize.attempt({
  cells: Object.entries(genericCells).map(([name, one]) => ({ name, ...one })),
  minVoltage: "9 V",
  maxVoltage: "13 V",
  peakCurrent: "6 A",
  energy: (day.deliveredEnergy / day.runtime) * 7 * 3600,
  transportEnergyLimit: "100 Wh",
})
if (found.ok) {
  const { bestCell, series, parallel, candidates, rejected } = found.value
  console.log(
    `${bestCell}: ${series} in series, ${parallel} in parallel, ${candidates[0].mass.toFixed(2)} kg of cells, ${wattHours(candidates[0].energy)}`,
  )
  for (const other of candidates.slice(1, 4)) console.log(`  not ${other.series}S${other.parallel}P of ${other.name}: ${other.lostBy}`)
  for (const other of rejected.slice(0, 4)) console.log(`  not ${other.name}: ${other.reason}`)
} else console.log(found.error.message)
const flight = airTravel({ energy: pack.energy, carriedAs: "spare" })
console.log(`Flying with the pack of part 1: ${flight.verdict}`)

heading("6. Overnight: charge, and what joining a full and a half-empty string would do")
const night = chargeTime({ ...wiring, chargeCurrent: "2 A" })
console.log(
  `at least ${clock(night.minDuration)} at 2 A; by datasheets of such cells ${clock(night.likelyDuration.low)} to ${clock(night.likelyDuration.high)}`,
)
const string = { resistance: "0.24 ohm", capacity: cell.cellCapacity, maxChargeCurrent: cell.cellMaxChargeCurrent }
const joined = parallelSharing({
  strings: [
    { openCircuitVoltage: "12.5 V", ...string },
    { openCircuitVoltage: "11.1 V", ...string },
  ],
  voltageSpan: "2.7 V",
})
console.log(`${joined.maxStringChargeCurrent.toFixed(1)} A would flow from string to string with nothing plugged in`)
warn(joined)
