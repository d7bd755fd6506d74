// Drive and pack: one call of each solver, and the two long ones: a day's pattern and a catalogue.
import {
  beltDrive,
  chainDrive,
  dcMotor,
  dutyCycle,
  endStop,
  gearmotor,
  gearTrain,
  hobbyServo,
  linearActuator,
  motionProfile,
  powerScrew,
  winch,
} from "alula/drive"
import {
  airTravel,
  cellPack,
  chargeTime,
  genericCells,
  packHealth,
  packSize,
  packUnderLoad,
  parallelSharing,
  peukert,
  powerBank,
  runtime,
} from "alula/pack"

const solvers = {
  "drive.linearActuator": linearActuator,
  "drive.dcMotor": dcMotor,
  "drive.powerScrew": powerScrew,
  "drive.gearTrain": gearTrain,
  "drive.motionProfile": motionProfile,
  "drive.endStop": endStop,
  "drive.gearmotor": gearmotor,
  "drive.hobbyServo": hobbyServo,
  "drive.dutyCycle": dutyCycle,
  "drive.winch": winch,
  "drive.beltDrive": beltDrive,
  "drive.chainDrive": chainDrive,
  "pack.cellPack": cellPack,
  "pack.packHealth": packHealth,
  "pack.packUnderLoad": packUnderLoad,
  "pack.parallelSharing": parallelSharing,
  "pack.chargeTime": chargeTime,
  "pack.powerBank": powerBank,
  "pack.peukert": peukert,
  "pack.airTravel": airTravel,
}
const { cellCapacity, cellResistance } = genericCells["18650-standard"]
const pack = { series: 3, parallel: 2, cellCapacity, cellResistance }
// a raise and a lowering every five minutes: some hundred rounds until empty
const day = runtime.read({
  ...pack,
  pattern: [
    { duration: "20 s", power: "51 W" },
    { duration: "1 min", power: "6 W" },
    { duration: "15 s", power: "26 W" },
    { duration: "205 s", power: "6 W" },
  ],
})
// ten times a second: followed by its mean
const flicker = runtime.read({ ...pack, pattern: [{ duration: "0.05 s", power: "30 W" }, { duration: "0.05 s" }] })
const catalogue = Array.from({ length: 100 }, (_, i) => {
  const [name, cell] = Object.entries(genericCells)[i % Object.keys(genericCells).length]
  return { name: `${name} ${i}`, ...cell, cellCapacity: cell.cellCapacity * (1 + 0.003 * i) }
})
const wanted = packSize.read({
  cells: catalogue,
  minVoltage: "9 V",
  maxVoltage: "15 V",
  peakCurrent: "8 A",
  energy: "60 Wh",
  transportEnergyLimit: "100 Wh",
})

export const rows = [
  ...Object.entries(solvers).map(([name, solver]) => {
    const si = solver.read(solver.example)
    return { name: `${name}.si`, run: () => solver.si(si) }
  }),
  { name: "pack.runtime, a day's pattern (.si)", run: () => runtime.si(day) },
  { name: "pack.runtime, ten rounds a second (.si)", run: () => runtime.si(flicker), baseline: "pack.runtime, a day's pattern (.si)" },
  { name: "pack.packSize, catalogue of 100 cells (.si)", run: () => packSize.si(wanted) },
]
