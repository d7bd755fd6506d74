// Which wire is thick enough for the lantern moth's tail lights, and how far could it run? Troupe, wires and prices are invented.
import { formatQuantity } from "alula/quantity"
import { solveFor, sweep } from "alula/study"
import { voltageDrop } from "alula/wire"

const heading = (text) => console.log(`\n${text}\n${"─".repeat(text.length)}`)
const volts = (value) => formatQuantity("voltage", value)
const metres = (value) => formatQuantity("length", value)

// from the belt pack to the lights at the tip of the tail, there and back in one twin wire
const tail = { current: "2.5 A", length: "3.2 m", awg: 20, sourceVoltage: "12 V", conductorTemperature: 40 }
// the reels in the store room: gauge, and an invented price for a metre
const reels = [
  { awg: 24, price: 0.4 },
  { awg: 22, price: 0.55 },
  { awg: 20, price: 0.8 },
  { awg: 18, price: 1.1 },
  { awg: 16, price: 1.7 },
  { awg: 14, price: 2.6 },
]
const gauges = reels.map(({ awg }) => awg)

heading("Which reel loses at most 0.6 V on the way to the tail?")
const thick = await solveFor(voltageDrop, tail, { vary: "awg", among: gauges, target: { output: "drop", atMost: "0.6 V" } })
for (const { value, output } of thick.hits)
  console.log(`AWG ${value}: ${volts(output)} lost, ${reels.find((r) => r.awg === value)?.price} a metre`)
const [thinnest] = thick.hits
if (thinnest) console.log(`The thinnest that will do: AWG ${thinnest.value}`)
else console.log(`None of them; nearest is AWG ${thick.nearest?.value} with ${volts(thick.nearest?.output ?? 0)}`)

heading("And at most 20 mV?")
const none = await solveFor(voltageDrop, tail, { vary: "awg", among: gauges, target: { output: "drop", atMost: "20 mV" } })
console.log(`${none.hits.length || "None"} of them; nearest is AWG ${none.nearest?.value} with ${volts(none.nearest?.output ?? 0)}`)

heading("How long may each run be before 0.6 V is lost?")
for (const awg of gauges) {
  const far = await solveFor(
    voltageDrop,
    { ...tail, awg },
    { vary: "length", among: { from: "10 cm", to: "40 m" }, target: { output: "drop", equals: "0.6 V" } },
  )
  console.log(`AWG ${awg}: ${far.hits.map((hit) => metres(hit.value)).join(", ") || "longer than was looked for"}`)
}

heading("The same as a table, for a spreadsheet")
const table = await sweep(
  voltageDrop,
  tail,
  { awg: [20, 18, 16], length: { from: "2 m", to: "4 m", count: 3 } },
  { outputs: ["drop", "loadVoltage"] },
)
console.log(table.csv().trim())
console.log(
  "\nA voltage that is kept says nothing of heat or fuses: ask voltageDrop, wireHeating and fuseCoordination with the wire chosen, and read their cautions.",
)
