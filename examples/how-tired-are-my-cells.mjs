// The lantern moth's old packs before the season (all names and figures invented): two readings each, a timed discharge, and
// what that leaves of the night. A bulb of known current and a meter of the workshop are all it takes.
import { packHealth, runtime } from "alula/pack"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const percent = (share) => `${(share * 100).toFixed(0)} %`
const milliohms = (ohms) => `${(ohms * 1000).toFixed(0)} mΩ`

const bench = {
  series: 4,
  parallel: 2,
  chemistry: "nmc",
  cellTemperature: 21,
  interconnectResistance: "18 mohm",
  ratedCellCapacity: "2.6 Ah",
  newCellResistance: "48 mohm",
  voltageUncertainty: "10 mV",
  currentUncertainty: 0.02,
}
// light load for 10 s, heavy load for 1 s, and hours until the circuit cut off
const packs = [
  { name: "Left hind wing", lightCurrent: "1 A", lightVoltage: "15.52 V", heavyCurrent: "5 A", heavyVoltage: "15.01 V", hours: 4.9 },
  { name: "Feelers", lightCurrent: "1 A", lightVoltage: "15.47 V", heavyCurrent: "5 A", heavyVoltage: "14.78 V", hours: 4.15 },
  {
    name: "Spare of three summers",
    lightCurrent: "1 A",
    lightVoltage: "15.21 V",
    heavyCurrent: "5 A",
    heavyVoltage: "13.87 V",
    hours: 3.4,
  },
]
const night = [
  { name: "beat", duration: "40 s", power: "38 W" },
  { name: "glow", duration: "6 min", power: "9 W" },
]

for (const { name, hours, ...loads } of packs) {
  const told = packHealth({ ...bench, ...loads, dischargeCurrent: "1 A", dischargeDuration: `${hours} h` })
  heading(`${name}: ${told.verdict}`)
  console.log(
    `resistance ${milliohms(told.resistance)} ± ${milliohms(told.resistanceUncertainty)}, ${told.resistanceRatio.toFixed(1)} times new`,
  )
  console.log(`capacity ${percent(told.capacityShare)} ± ${percent(told.capacityShareUncertainty)} of the printed one`)
  const { series, parallel, chemistry, interconnectResistance } = bench
  const { cellCapacity, cellResistance } = told
  const left = runtime({ series, parallel, chemistry, interconnectResistance, cellCapacity, cellResistance, pattern: night })
  console.log(`the night lasts ${(left.runtime / 3600).toFixed(1)} h on it, ended by: ${left.endedBy}`)
  for (const { severity, message } of told.cautions) console.log(`${severity}: ${message}`)
}
